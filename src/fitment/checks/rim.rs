//! Does the tire belong on the rim?

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::Citation;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Check, CheckId, Input, Reason, Verdict};
use crate::fitment::finding::{Finding, Found};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::rim::{Hump, RimWidth, SeatTaper};
use crate::step::Teller;
use crate::text::Name;
use crate::tire::{RimRange, RimRangeBasis, Structure, TireSize};
use crate::units::in_mm;
use crate::wheel::WheelSize;

pub(super) const BEAD_DIAMETER: Definition =
    Definition::new(CheckId::BeadDiameter, Harm::ComesOff, Run::Axle(bead_diameter), DependsOn::Pair).vital();

fn bead_diameter(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let (tire, rim) = (setup.tire().size().rim_diameter(), setup.wheel().size().diameter());
    let other = of_other_vehicles(setup.tire().size(), setup.wheel().size());
    let (verdict, reason) = if tire == rim && !other {
        (Verdict::Within, Reason::DiametersAgree)
    } else if tire == rim || tire.seat_taper() != rim.seat_taper() {
        (Verdict::Beyond, Reason::SeatsDiffer)
    } else {
        (Verdict::Beyond, Reason::DiametersDiffer)
    };
    Ok(Finding::new(verdict, reason, Citation::DESIGNATION)
        .reading(Value::RimDiameter(rim), Bound::Equals(Value::RimDiameter(tire))))
}

/// Whether the rim is of a series that no tire of such a class is made for: a car's on one of motorcycles, tractors or
/// earthmovers, or any but a motorcycle's on one of motorcycles. Common practice, no source.
fn of_other_vehicles(tire: TireSize, rim: WheelSize) -> bool {
    let named = rim.series().is_some() || rim.flange_height().is_some();
    let of_motorcycles = rim.series().is_some_and(|series| series.is_of_motorcycles());
    let rules = tire.rules();
    named && rules.is_passenger || of_motorcycles && !rules.may_be_of_motorcycles
}

pub(super) const RIM_WIDTH: Definition =
    Definition::new(CheckId::RimWidth, Harm::ComesOff, Run::Axle(rim_width), DependsOn::Pair)
        .vital()
        .of(Rules::Kind);

fn rim_width(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let tire = setup.tire().size();
    let width = setup.wheel().size().width();
    if case.original.is_some_and(|o| o.tire().size() == tire && o.wheel().size().width() == width) {
        let width = Value::RimWidth(width);
        return Ok(Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL)
            .reading(width, Bound::Equals(width)));
    }
    let range = setup.rim_range().or_else(|| tire.permitted_rim_range());
    let Some(range) = range.or_else(|| tire.estimated_rim_range()) else {
        return impossible(tire, width).ok_or(Input::RimRange.into());
    };
    let (verdict, reason) = if range.basis() != RimRangeBasis::Estimate {
        match (range.basis() == RimRangeBasis::Maker, range.contains(width)) {
            (true, true) => (Verdict::Within, Reason::RimInMakersRange),
            (true, false) => (Verdict::Beyond, Reason::RimOutsideMakersRange),
            (false, true) => (Verdict::Within, Reason::RimInStandardsRange),
            (false, false) => (Verdict::Beyond, Reason::RimOutsideStandardsRange),
        }
    } else if Some(width) == tire.measuring_rim() || inside_by(&range, width.quarters()) >= HALF_INCH {
        (Verdict::Within, Reason::RimWellInEstimate)
    } else if inside_by(&range, width.quarters()) >= -HALF_INCH {
        (Verdict::Marginal, Reason::RimNearEndOfEstimate)
    } else {
        (Verdict::Beyond, Reason::RimOutsideEstimate)
    };
    let bound = Bound::Between(Value::RimWidth(range.min()), Value::RimWidth(range.max()));
    Ok(Finding::new(verdict, reason, range.citation()).reading(Value::RimWidth(width), bound))
}

/// A rim on which no tire of its width goes, where no range is known. The rim that a table measures the tire on
/// is none.
fn impossible(tire: TireSize, width: RimWidth) -> Option<Finding> {
    let nominal = tire.nominal_width().filter(|_| tire.measuring_rim() != Some(width))?;
    let (least, most) = tire.rules().possible_rim;
    let bound = Bound::Between(Value::Length(nominal * least), Value::Length(nominal * most));
    let finding = Finding::new(Verdict::Beyond, Reason::RimImpossible, Citation::RIM_SANITY)
        .reading(Value::Length(width.length()), bound);
    finding.is_outside().then_some(finding)
}

pub(super) const RIM_CONTOUR: Definition =
    Definition::new(CheckId::RimContour, Harm::ComesOff, Run::Axle(rim_contour), DependsOn::Pair)
        .of(Rules::Cars);

/// Does the rim hold the beads of such a tire?
fn rim_contour(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let (tire, rim) = (setup.tire().size(), setup.wheel().size());
    let finding = |verdict, reason| Ok(Finding::new(verdict, reason, Citation::RIM_HUMP));
    let run_flat = |size: TireSize| matches!(size, TireSize::Metric(size) if size.is_run_flat());
    let kind = |size: TireSize| (size.structure(), run_flat(size));
    if case.original.is_some_and(|o| o.wheel().size() == rim && kind(o.tire().size()) == kind(tire)) {
        return Ok(Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL));
    }
    if rim.diameter().seat_taper() == SeatTaper::FifteenDegree {
        return finding(Verdict::Within, Reason::SteepSeatHolds);
    }
    if tire.structure() != Structure::Radial {
        return finding(Verdict::Within, Reason::DiagonalNeedsNoHump);
    }
    if rim.is_multi_piece() {
        return finding(Verdict::Marginal, Reason::TubeTypeRim);
    }
    if rim.hump().is_none() {
        // A contour without a hump behind it was read off a rim without; nothing at all was not read.
        need!(_contour = rim.contour() => WheelContour);
        return finding(Verdict::Marginal, Reason::NoHump);
    }
    if run_flat(tire) && !matches!(rim.hump(), Some(Hump::Eh | Hump::Eh2 | Hump::Eh2Plus)) {
        return finding(Verdict::Marginal, Reason::ExtendedHumpAdvised);
    }
    finding(Verdict::Within, Reason::HumpsHold)
}

/// In quarters of an inch, as rim widths are counted.
const HALF_INCH: i32 = 2;

fn inside_by(range: &RimRange, quarters: u16) -> i32 {
    let quarters = i32::from(quarters);
    (quarters - i32::from(range.min().quarters())).min(i32::from(range.max().quarters()) - quarters)
}

pub(in crate::fitment) fn tell_bead_diameter(check: &Check, tell: &mut Teller<'_>) -> Option<()> {
    told::as_stamped(check, ["rim diameter code on the tire", "rim diameter code on the wheel"], tell)
}

pub(in crate::fitment) fn tell_rim_width(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let setup = case.proposed?;
    let (tire, width) = (setup.tire().size(), setup.wheel().size().width());
    if check.reason() == Reason::RimImpossible {
        let (nominal, (least, most)) = (in_mm(tire.nominal_width()?), tire.rules().possible_rim);
        tell.given(format_args!("nominal width of {tire}"), nominal, "mm", Citation::DESIGNATION);
        for (word, share) in [("least", least), ("greatest", most)] {
            let name = format_args!("{word} share of it that a rim is wide");
            tell.given(name, share, "", Citation::RIM_SANITY);
            let name = format_args!("{word} width of a rim");
            tell.worked(name, ("{0} × {1}", &[nominal, share]), nominal * share, "mm", Citation::RIM_SANITY);
        }
        width.tell_length(tell);
        return Some(());
    }
    let range = check.citation();
    told::as_given(
        check,
        [("rim width code", range), ("rim width code on the wheel", Some(Citation::DESIGNATION))],
        tell,
    )
}

pub(in crate::fitment) fn tell_rim_contour(case: &Case<'_>, tell: &mut Teller<'_>) -> Option<()> {
    let setup = case.proposed?;
    let (tire, rim) = (setup.tire().size(), setup.wheel().size());
    let said = Citation::DESIGNATION;
    tell.words(format_args!("structure of {tire}"), format_args!("{}", Name(tire.structure().name())), said);
    tell.words(
        format_args!("hump of the rim {rim}"),
        format_args!("{}", rim.hump().map_or("none stamped", |_| "stamped")),
        said,
    );
    Some(())
}
