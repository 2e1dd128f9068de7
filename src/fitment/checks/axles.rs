//! Do front and rear still belong together?

use super::definition::{Definition, DependsOn, Harm, Run};
use crate::Citation;
use crate::Toleranced;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Check, CheckId, Reason, Verdict};
use crate::fitment::facts::SetupFacts;
use crate::fitment::finding::{Finding, Found, Why, at_most};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::{End, Teller};
use crate::text::Name;
use crate::units::{self, in_mm};
use crate::vehicle::Drive;

pub(super) const AXLE_MATCH: Definition =
    Definition::new(CheckId::AxleMatch, Harm::Practice, Run::Vehicle(axle_match), DependsOn::Size)
        .by_dimensions();

fn axle_match(axles: &[Option<Case<'_>>; 2]) -> Found {
    let [Some(front), Some(rear)] = axles else {
        // Only a trailer has but one; of another vehicle, one was not described.
        if let Some(case) = axles.iter().flatten().next() {
            need!(_kind = case.vehicle.kind() => Kind);
            case.proposed()?;
        }
        return Ok(Finding::not_applicable(Reason::OneAxle));
    };
    let (old_front, new_front) = front.both()?;
    let (old_rear, new_rear) = rear.both()?;
    let tire = |setup: &SetupFacts<'_>| (setup.tire(), setup.is_snow());
    if [old_front, old_rear].map(tire) == [new_front, new_rear].map(tire) {
        return Ok(Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL));
    }
    if new_front.tire().size().structure() != new_rear.tire().size().structure() {
        return Ok(Finding::new(Verdict::Beyond, Reason::StructuresMixed, Citation::MIXED_AXLES));
    }

    let ratio = |front: &SetupFacts<'_>, rear: &SetupFacts<'_>| {
        Some(in_mm(front.circumference()?.nominal()) / in_mm(rear.circumference()?.nominal()))
    };
    need!(
        old = ratio(old_front, old_rear) => OriginalDimensions,
        new = ratio(new_front, new_rear) => TireDimensions,
    );
    // Whichever axle grows against the other.
    let change = (new / old).max(old / new) - 1.0;
    let mut finding = ratio_kept(front, change)?;
    if new_front.is_snow() != new_rear.is_snow() {
        if finding.limit.is_none() {
            finding.citation = Citation::MIXED_AXLES;
        }
        finding = finding.marginal_if(Verdict::Within, Reason::SeasonsMixed);
    }
    Ok(finding)
}

/// Holds a change of the ratio of circumferences against what compares the axles.
fn ratio_kept(case: &Case<'_>, change: f64) -> Found {
    if change == 0.0 {
        return Ok(Finding::new(Verdict::Within, Reason::AxlesMatch, Citation::CIRCUMFERENCE_RATIO));
    }
    need!(drive = case.vehicle.drive() => Drive);
    let limit = if drive == Drive::All {
        case.limits.circumference_all_wheel_drive()
    } else {
        need!(stability = case.vehicle.stability_control() => StabilityControl);
        if !stability {
            return Ok(Finding::new(Verdict::Within, Reason::RatioFree, Citation::CIRCUMFERENCE_RATIO));
        }
        case.limits.circumference_stability()
    };
    let why = Why::either(Reason::AxlesMatch, Reason::RatioChanged);
    Ok(at_most(Toleranced::exact(units::ratio(change)), limit.value(), Value::Ratio, why, limit.citation()))
}

pub(in crate::fitment) fn tell_axle_match(
    axles: &[Option<Case<'_>>; 2],
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let [Some(front), Some(rear)] = axles else { return None };
    let [(old_front, new_front), (old_rear, new_rear)] = [front.both().ok()?, rear.both().ok()?];
    for (place, setup) in [("front", new_front), ("rear", new_rear)] {
        let size = setup.tire().size();
        let season = if setup.is_snow() { "snow tire" } else { "no snow tire" };
        let words = format_args!("{}, {season}", Name(size.structure().name()));
        tell.words(format_args!("{place} {size}"), words, Citation::MIXED_AXLES);
    }
    check.measured()?;
    let Bound::AtMost(most) = check.limit()? else { return None };
    told::value(tell, format_args!("greatest change of the ratio"), most, check.citation());
    let turn = |setup, whose: &str, place: &str, tell: &mut Teller<'_>| {
        let turn = told::circumference(setup, whose, End::Nominal, tell)?;
        let name = format_args!("the same, {place}");
        Some(tell.worked(name, ("{0}", &[turn]), turn, "mm", None))
    };
    let old_front = turn(old_front, told::ORIGINAL, "front", tell)?;
    let old_rear = turn(old_rear, told::ORIGINAL, "rear", tell)?;
    let new_front = turn(new_front, told::PROPOSED, "front", tell)?;
    let new_rear = turn(new_rear, told::PROPOSED, "rear", tell)?;
    let mut ratio = |when: &str, front: f64, rear: f64| {
        tell.worked(format_args!("ratio {when}"), ("{0} / {1}", &[front, rear]), front / rear, "", None)
    };
    let (old, new) = (ratio("before", old_front, old_rear), ratio("after", new_front, new_rear));
    let change = ((new / old).max(old / new) - 1.0) * 100.0;
    let form = ("(max({0} / {1}, {1} / {0}) − 1) × 100", &[new, old][..]);
    tell.worked(format_args!("change of the ratio"), form, change, "%", None);
    Some(())
}
