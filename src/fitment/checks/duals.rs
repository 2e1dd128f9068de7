//! Do the tires of a pair keep apart?

use super::definition::{Definition, DependsOn, Harm, Run};
use crate::fitment::case::{Case, need};
use crate::fitment::check::{CheckId, Reason, Verdict};
use crate::fitment::facts::SetupFacts;
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_least, no_more};
use crate::fitment::value::Value;
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
