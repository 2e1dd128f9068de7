//! What is left under the vehicle.

use super::clearance::{original_radius, proposed_radius, same_body};
use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{CheckId, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_least};
use crate::fitment::value::Value;
use crate::units::in_mm;
use crate::{Citation, Toleranced};

pub(super) const GROUND_CLEARANCE: Definition =
    Definition::new(CheckId::GroundClearance, Harm::Contact, Run::Axle(ground_clearance), DependsOn::Size)
        .of(Rules::Kind)
        .by_dimensions();

/// What is left between the ground and the lowest thing beside the wheels.
fn ground_clearance(case: &Case<'_>) -> Found {
    let (original, proposed) = case.both()?;
    let (old, new) = both_of(original_radius(case, original), proposed_radius(proposed))?;
    let rise = new - old;
    if same_body(original, proposed) || in_mm(rise.min()) >= 0.0 {
        return Ok(Finding::new(Verdict::Within, Reason::GroundClearanceKept, Citation::ORIGINAL));
    }
    need!(
        before = case.axle.ground_clearance() => GroundClearance,
        least = case.limits.own_ground_clearance() => LeastGroundClearance,
    );
    let why = Why { within: Reason::GroundClearanceLeft, beyond: Reason::GroundClearanceGone, ..PLAIN };
    Ok(at_least(Toleranced::exact(before) + rise, least, Value::Length, why, Citation::CALLER))
}
