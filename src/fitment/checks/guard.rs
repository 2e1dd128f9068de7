//! Does the wheel guard still cover the tire?

use super::clearance::{Assembly, Side, of_gap, tell_left};
use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{Check, CheckId, Input, Missing, Reason, Verdict};
use crate::fitment::finding::{Found, PLAIN, Why, at_best, at_least};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::Teller;
use crate::units::Length;
use crate::vehicle::EndGap;
use crate::{Citation, Toleranced};

pub(super) const WHEEL_GUARD: Definition =
    Definition::new(CheckId::WheelGuard, Harm::Law, Run::Gap(EndGap::Guard, wheel_guard), DependsOn::Inset)
        .of(Rules::Cars)
        .by_dimensions();

/// The guard must cover the tire over the arc from 30° ahead of the hub to 50° behind: law in the European
/// Union and Australia, elsewhere good practice.
fn wheel_guard(case: &Case<'_>) -> Found {
    need!(narrower = case.axle.space().and_then(|space| space.narrower(EndGap::Guard)) => GuardOverhang);
    let overhang = narrower.gap;
    let missing = if narrower.is_other_known { Missing::default() } else { Input::GuardOverhang.into() };
    let (original, proposed) = case.both()?;
    let (old, new) = both_of(Assembly::original(case, original), Assembly::proposed(proposed))?;
    let uncertainty = case.gap_uncertainty();
    let left =
        Toleranced::within(overhang, uncertainty) - (new.reach(Side::Outboard) - old.reach(Side::Outboard));
    let law = case.limits.set().cover_law();
    // A guard that covered less than all of the original tire is not the change's doing.
    let least = if overhang < Length::default() { overhang } else { Length::default() };
    let why = Why { within: Reason::GuardCovers, beyond: Reason::GuardTooNarrow, ..PLAIN };
    let citation = law.unwrap_or(Citation::WHEEL_GUARD);
    let finding = of_gap(case, at_least(left, least, Value::Length, why, citation));
    let unchanged = original.wheel() == proposed.wheel()
        && original.tire().size() == proposed.tire().size()
        && original.hub_spacing() == proposed.hub_spacing();
    let finding = if law.is_some() && !unchanged {
        finding
    } else {
        finding.marginal_if(Verdict::Beyond, Reason::GuardTooNarrow)
    };
    // It is not vital: what is marginal on the end that is known must not be lost for what is not known of the other.
    if finding.verdict == Verdict::Within { at_best(finding, missing) } else { Ok(finding) }
}

pub(in crate::fitment) fn tell_wheel_guard(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let overhang = case.axle.space()?.narrower(EndGap::Guard)?.gap;
    let Bound::AtLeast(least) = check.limit()? else { return None };
    told::value(tell, format_args!("least cover, none or what there was"), least, check.citation());
    let growth = Assembly::tell_growth(case, Side::Outboard, tell)?;
    tell_left(("cover of the guard beyond the wheel", overhang), case, Some(growth), tell);
    Some(())
}
