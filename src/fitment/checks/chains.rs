//! Is there room for a traction device on the driven wheels?

use super::clearance::{GapChange, of_gap};
use super::definition::{Definition, DependsOn, Harm, Run};
use super::rolling::is_driven;
use crate::Citation;
use crate::fitment::Limit;
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{Check, CheckId, Reason};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_best, at_least};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::Teller;
use crate::units::in_mm;

pub(super) const CHAIN_CLEARANCE: Definition =
    Definition::new(CheckId::ChainClearance, Harm::Contact, Run::Axle(chain_clearance), DependsOn::Inset)
        .by_dimensions();

/// What is left above and inboard of the tire against what the stated class of device asks for.
fn chain_clearance(case: &Case<'_>) -> Found {
    case.proposed()?;
    let Some(class) = case.conditions.traction_device() else {
        return Ok(Finding::not_applicable(Reason::NoDevice));
    };
    need!(drive = case.vehicle.drive() => Drive);
    if !is_driven(case, drive) {
        return Ok(Finding::not_applicable(Reason::NotDriven));
    }
    let (tread, sidewall) = class.room();
    let why = Why { within: Reason::DeviceFits, beyond: Reason::DeviceDoesNotFit, ..PLAIN };
    let held = |left, least| at_least(left, least, Value::Length, why, Citation::TRACTION_DEVICE);
    let (above, inboard) = both_of(GapChange::above(case), GapChange::inboard(case))?;
    let missing = above.missing().and(inboard.missing());
    let (above, inboard) = (above.left(), inboard.left());
    let inboard_is_tighter = inboard.min() - sidewall < above.min() - tread;
    at_best(of_gap(case, held(above, tread).graver(held(inboard, sidewall), inboard_is_tighter)), missing)
}

pub(in crate::fitment) fn tell_chain_clearance(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let (tread, sidewall) = case.conditions.traction_device()?.room();
    let above = GapChange::above(case).ok()?.left().min();
    let is_of = |least| check.limit() == Some(Bound::AtLeast(Value::Length(least)));
    let is_above = is_of(tread) && told::is_measured(check, in_mm(above));
    let least = if is_above { tread } else { sidewall };
    let name = "room that the device needs";
    told::limit(tell, name, Limit::new(least, Citation::TRACTION_DEVICE));
    GapChange::tell_gap(case, is_above, tell)
}
