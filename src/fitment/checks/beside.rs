//! Does a spare wheel belong beside the tire that it runs with?

use super::rolling::is_driven;
use crate::Citation;
use crate::Toleranced;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Input, Reason, Verdict};
use crate::fitment::facts::SetupFacts;
use crate::fitment::finding::{Finding, Found, Why, at_most, no_more};
use crate::fitment::value::Value;
use crate::units::{self, in_mm, in_ratio};
use crate::vehicle::{Drive, Kind};

/// Holds the spare on an axle against the tire at the other end of it.
///
/// A difference of circumference is held to what is asked of front and rear: a differential and the control systems
/// compare wheels of one axle as they do axles. A temporary spare differs by design, and is marginal for it, as is any
/// where nothing compares the wheels; but not where all wheels are driven.
pub(in crate::fitment) fn beside(case: &Case<'_>, partner: Option<&SetupFacts<'_>>) -> Found {
    let spare = case.proposed()?;
    let partner = partner.ok_or(Input::OriginalSetup)?;
    let [own, its] = [spare, partner].map(|setup| setup.tire().size());
    if own == its {
        return Ok(Finding::new(Verdict::Within, Reason::SpareOfOneSize, Citation::DESIGNATION));
    }
    let is_temporary = own.rules().speed_of_use_kmh.is_some();
    if own.structure() != its.structure() && !is_temporary {
        return Ok(Finding::new(Verdict::Beyond, Reason::SpareStructure, Citation::SPARE_BESIDE));
    }
    if case.is_dual {
        return Ok(Finding::new(Verdict::Beyond, Reason::SpareInPair, Citation::SPARE_BESIDE));
    }
    need!(kind = case.vehicle.kind() => Kind);
    let is_trailer = kind == Kind::Trailer;
    need!(
        own = spare.circumference() => TireDimensions,
        its = partner.circumference() => TireDimensions,
        drive = if is_trailer { Some(Drive::None) } else { case.vehicle.drive() } => Drive,
    );
    let ratio = in_mm(own.nominal()) / in_mm(its.nominal());
    let difference = ratio.max(1.0 / ratio) - 1.0;
    let held = |limit: crate::fitment::Limit<_>| {
        let why = Why::either(Reason::SpareTurnsAlike, Reason::SpareTurnsOtherwise);
        let difference = Toleranced::exact(units::ratio(difference));
        at_most(difference, limit.value(), Value::Ratio, why, limit.citation())
    };
    let of_drive = case.limits.circumference_all_wheel_drive();
    if drive == Drive::All {
        return Ok(held(of_drive));
    }
    let is_driven_apart = is_driven(case, drive) && !no_more(difference, in_ratio(of_drive.value()));
    need!(stability = if is_trailer { Some(false) } else { case.vehicle.stability_control() } => StabilityControl);
    let mut finding = held(case.limits.circumference_stability());
    if is_temporary {
        finding = finding.marginal_if(Verdict::Beyond, Reason::SpareTemporary);
    }
    if !stability {
        finding = finding.marginal_if(Verdict::Beyond, Reason::SpareOtherSize);
    }
    Ok(if is_driven_apart {
        finding.marginal_if(Verdict::Within, Reason::SpareOnDrivenAxle)
    } else {
        finding
    })
}
