//! How high the vehicle stands, and what is left under it.

use crate::fitment::case::{Case, need};
use crate::fitment::check::{Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_least};
use crate::fitment::reading::{Bound, Reading};
use crate::units::in_mm;
use crate::{Citation, Toleranced};

/// The change against the caller's limit, or against half of what the diameter may change.
pub(super) fn ride_height(case: &Case<'_>) -> Found {
    let (old, new) = case.diameters()?;
    let rise = (new - old) / 2.0;
    let diameter = case.limits.diameter_share().map(|limit| (old * limit.value() / 2.0, limit.citation()));
    let own = case.limits.own_ride_height_change().map(|most| (most, Citation::CALLER));
    let Some((most, citation)) = own.or(diameter) else {
        return Ok(Finding::new(Verdict::Within, Reason::Inside, Citation::DIAMETER_CHANGE));
    };
    let inside = in_mm(rise).abs() <= in_mm(most) + 1e-9;
    let (verdict, reason) =
        if in_mm(rise) == 0.0 { (Verdict::Within, Reason::Unchanged) } else { PLAIN.judge(inside, inside) };
    let bound = Bound::Between(Reading::Length(-most), Reading::Length(most));
    Ok(Finding::new(verdict, reason, citation).reading(Reading::Length(rise), bound))
}

/// What is left between the ground and the lowest thing beside the wheels.
pub(super) fn ground_clearance(case: &Case<'_>) -> Found {
    let (old, new) = case.diameters()?;
    let rise = (new - old) / 2.0;
    if in_mm(rise) >= 0.0 {
        return Ok(Finding::new(Verdict::Within, Reason::GroundClearanceKept, Citation::ORIGINAL));
    }
    need!(
        before = case.axle.ground_clearance() => GroundClearance,
        least = case.limits.own_ground_clearance() => LeastGroundClearance,
    );
    let why = Why { within: Reason::GroundClearanceLeft, beyond: Reason::GroundClearanceGone, ..PLAIN };
    Ok(at_least(Toleranced::exact(before + rise), least, Reading::Length, why, Citation::CALLER))
}
