//! What is left under the vehicle.

use super::clearance::{original_radius, proposed_radius, same_body, tell_original_radius};
use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::Limit;
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{Check, CheckId, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_least};
use crate::fitment::told;
use crate::fitment::value::Value;
use crate::step::{End, Teller};
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

pub(in crate::fitment) fn tell_ground_clearance(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let (original, proposed) = case.both().ok()?;
    let old = tell_original_radius(case, original, End::Most, tell)?;
    let new = told::radius(proposed, told::PROPOSED, End::Least, false, tell)?;
    check.measured()?;
    told::limit(
        tell,
        "least ground clearance",
        Limit::new(case.limits.own_ground_clearance()?, Citation::CALLER),
    );
    let before = told::measured(tell, "ground clearance before", case.axle.ground_clearance()?);
    let form = ("{0} + {1} − {2}", &[before, new, old][..]);
    tell.worked(format_args!("least ground clearance that is left"), form, before + new - old, "mm", None);
    Some(())
}
