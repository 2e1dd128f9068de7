//! Is there room for a traction device on the driven wheels?

use super::clearance::{inner, upper};
use super::rolling::is_driven;
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_least};
use crate::fitment::reading::Reading;
use crate::units::{Length, mm};
use crate::{Citation, Toleranced};

/// What is left above and inboard of the tire against what the stated class of device asks for.
pub(super) fn chain_clearance(case: &Case<'_>) -> Found {
    case.proposed()?;
    let Some(class) = case.conditions.traction_device() else {
        return Ok(Finding::new(Verdict::Within, Reason::NoDevice, Citation::TRACTION_DEVICE));
    };
    need!(drive = case.vehicle.drive() => Drive);
    if !is_driven(case, drive) {
        return Ok(Finding::new(Verdict::Within, Reason::NotDriven, Citation::TRACTION_DEVICE));
    }
    let (tread, sidewall) = class.room();
    let why = Why { within: Reason::DeviceFits, beyond: Reason::DeviceDoesNotFit, ..PLAIN };
    let held = |gap: &Finding, least: Length| {
        let length = |reading: Option<Reading>| match reading {
            Some(Reading::Length(length)) => Some(length),
            _ => None,
        };
        let worst = length(gap.measured).unwrap_or(mm(0.0));
        let nominal = length(gap.nominal).unwrap_or(worst);
        let left = Toleranced::ordered(worst, nominal, nominal);
        at_least(left, least, Reading::Length, why, Citation::TRACTION_DEVICE)
    };
    let (above, inboard) = both_of(upper(case), inner(case))?;
    let (above, inboard) = (held(&above, tread), held(&inboard, sidewall));
    let margin = |finding: &Finding, least: Length| match finding.measured {
        Some(Reading::Length(left)) => left - least,
        _ => mm(0.0),
    };
    let inboard_is_tighter = margin(&inboard, sidewall) < margin(&above, tread);
    Ok(above.graver(inboard, inboard_is_tighter))
}
