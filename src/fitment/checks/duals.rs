//! Do the tires of a pair keep apart?

use super::definition::{Definition, DependsOn, Harm, Run};
use crate::fitment::Limit;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Check, CheckId, Reason, Verdict};
use crate::fitment::facts::SetupFacts;
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_least, no_more};
use crate::fitment::told;
use crate::fitment::value::Value;
use crate::step::{End, Teller};
use crate::units::{Length, in_mm};
use crate::{Citation, Toleranced};

pub(super) const DUAL_SPACING: Definition =
    Definition::new(CheckId::DualSpacing, Harm::Contact, Run::Axle(dual_spacing), DependsOn::Inset)
        .vital()
        .by_dimensions();

fn dual_spacing(case: &Case<'_>) -> Found {
    let proposed = case.proposed()?;
    if !case.is_dual {
        return Ok(Finding::not_applicable(Reason::SingleWheels));
    }
    need!(centres = proposed.centres => WheelInset, half = proposed.half_tire => TireDimensions);
    let gap = Toleranced::exact(centres.outer - centres.inner) - half * 2.0;
    let original_gap = case.original.and_then(nominal_gap);
    let is_as_built = original_gap.is_some_and(|built| no_more(in_mm(built), in_mm(gap.nominal())));
    let held = |least, why, citation, reason| {
        let finding = at_least(gap, least, Value::Length, why, citation);
        // What is no nearer than it was built is not the change's doing.
        if is_as_built { finding.marginal_if(Verdict::Beyond, reason) } else { finding }
    };
    if let Some(least) = case.limits.own_dual_gap() {
        let why = Why { within: Reason::DualsApart, beyond: Reason::DualsTooNear, ..PLAIN };
        return Ok(held(least, why, Citation::CALLER, Reason::DualsTooNear));
    }
    if no_more(in_mm(gap.nominal()), 0.0) {
        let why = Why { beyond: Reason::DualsTouch, ..PLAIN };
        return Ok(held(Length::default(), why, Citation::DUAL_SPACING, Reason::DualsTouch));
    }
    // Without the maker's figure, what was built is the measure: nominal against nominal.
    need!(built = original_gap => OriginalSetup);
    let why = Why { within: Reason::DualsAsBuilt, beyond: Reason::DualsNearer, ..PLAIN };
    let gap = Toleranced::exact(gap.nominal());
    let finding = at_least(gap, built, Value::Length, why, Citation::DUAL_SPACING);
    Ok(finding.marginal_if(Verdict::Beyond, Reason::DualsNearer))
}

fn nominal_gap(setup: &SetupFacts<'_>) -> Option<Length> {
    let centres = setup.centres?;
    Some(centres.outer - centres.inner - setup.half_tire?.nominal() * 2.0)
}

pub(in crate::fitment) fn tell_dual_spacing(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let setup = case.proposed?;
    let (worst, nominal) = (End::Most, End::Nominal);
    let is_own = case.limits.own_dual_gap().is_some();
    let is_as_built = !is_own && !matches!(check.reason(), Reason::DualsTouch);
    check.measured()?;
    if let Some(least) = case.limits.own_dual_gap() {
        told::limit(tell, "least gap between the tires", Limit::new(least, Citation::CALLER));
    } else if is_as_built {
        tell_gap(case, case.original?, told::ORIGINAL, nominal, tell)?;
    } else {
        told::nothing(tell, Citation::DUAL_SPACING);
    }
    tell_gap(case, setup, told::PROPOSED, if is_as_built { nominal } else { worst }, tell)
}

fn tell_gap(
    case: &Case<'_>,
    setup: &SetupFacts<'_>,
    whose: &str,
    end: End,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let half = told::half_tire(setup, whose, end, tell)?;
    let outer = told::centre(case, setup, whose, true, tell)?;
    let inner = told::centre(case, setup, whose, false, tell)?;
    let form = ("{0} − {1} − 2 × {2}", &[outer, inner, half][..]);
    tell.worked(format_args!("gap between the {whose} tires"), form, outer - inner - 2.0 * half, "mm", None);
    Some(())
}
