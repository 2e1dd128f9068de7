//! What a tire's size, its service description and the words beside them say.

use crate::Citation;
use crate::marking::fact_value::FactValue;
use crate::marking::kind::Marking;
use crate::marking::term::Term;
use crate::rim::SeatTaper;
use crate::tire::{
    Formation, ServiceDescription, Tire, TireSize,
    sidewall::{LineContradiction, MoldedLimit, SidewallLine, SidewallMarks},
};

pub(super) const SIZE: &[Term] = &[
    Term::Family,
    Term::Class,
    Term::SectionWidth,
    Term::AspectRatio,
    Term::Construction,
    Term::RimDiameter,
];
pub(super) const SERVICE: &[Term] = &[
    Term::LoadIndexSingle,
    Term::LoadIndexDual,
    Term::LoadSingle,
    Term::LoadDual,
    Term::SpeedSymbol,
    Term::Speed,
];
pub(super) const DIMENSIONS: &[Term] = &[
    Term::LoadVersion,
    Term::LoadRange,
    Term::OverallDiameter,
    Term::SectionHeight,
    Term::MeasuringRim,
    Term::SectionWidthOnMeasuringRim,
    Term::RimWidthRange,
    Term::RollingCircumference,
    Term::RevolutionsPerKm,
];
pub(super) const LIMITS: &[Term] = &[
    Term::MaxLoad,
    Term::MaxLoadDual,
    Term::LoadPressure,
    Term::LoadPressureDual,
    Term::MaxPressure,
    Term::MaxSpeed,
];
pub(super) const BESIDE: &[Term] = &[Term::Marks, Term::MudAndSnow, Term::SevereSnow, Term::Tubeless];

/// The source of a fact that depends on the size; nothing where the term itself tells it.
pub(super) fn source(marking: &Marking, term: Term) -> Option<Citation> {
    let size = match marking {
        Marking::Tire(tire) => tire.size(),
        Marking::SidewallLine(line) => line.tire().size(),
        _ => return None,
    };
    let is_listed = size.listing().is_some();
    match term {
        Term::OverallDiameter => Some(size.overall_diameter_citation()),
        Term::SectionHeight if is_listed => Some(Citation::LISTED_DIMENSIONS),
        Term::MeasuringRim if is_listed => Some(Citation::LISTED_DIMENSIONS),
        Term::MeasuringRim => Some(Citation::MEASURING_RIM),
        Term::SectionWidthOnMeasuringRim if is_listed => Some(Citation::LISTED_DIMENSIONS),
        Term::SectionWidthOnMeasuringRim => Some(Citation::SECTION_WIDTH),
        Term::RimWidthRange => rim_widths(&size).map(|range| range.citation()),
        Term::RollingCircumference | Term::RevolutionsPerKm => {
            size.rolling().map(|rolling| rolling.citation())
        }
        _ => None,
    }
}

fn rim_widths(size: &TireSize) -> Option<crate::tire::RimRange> {
    size.permitted_rim_range().or_else(|| size.estimated_rim_range())
}

pub(super) fn of_tire(tire: Tire, term: Term, n: usize) -> Option<FactValue<'static>> {
    let size = tire.size();
    match term {
        Term::LoadVersion => tire.load_version().map(FactValue::LoadVersion),
        Term::LoadRange => tire.load_range().map(|range| FactValue::Letter(range.letter())),
        Term::Contradictions => contradiction(tire.into(), n),
        _ => of_service(tire.service(), term).or_else(|| of_size(&size, term)),
    }
}

fn contradiction(line: SidewallLine, n: usize) -> Option<FactValue<'static>> {
    line.contradictions().nth(n).map(|it: LineContradiction| FactValue::Word(it.text()))
}

fn of_size(size: &TireSize, term: Term) -> Option<FactValue<'static>> {
    Some(match term {
        Term::Family => FactValue::Word(size.family()),
        Term::Class => FactValue::Word(size.class().name()),
        Term::SectionWidth => FactValue::Length(size.nominal_width()?),
        Term::AspectRatio => match size {
            TireSize::Metric(metric) => FactValue::Whole(u32::from(metric.aspect_ratio())),
            _ => return None,
        },
        Term::Construction => FactValue::Word(size.structure().name()),
        // One of millimetres is in the canonical text.
        Term::RimDiameter if size.rim_diameter().seat_taper() == SeatTaper::Millimetric => return None,
        Term::RimDiameter => FactValue::RimDiameter(size.rim_diameter()),
        Term::OverallDiameter => match size.overall_diameter() {
            Some(span) => FactValue::span(span),
            None => {
                FactValue::Range { min: None, nominal: Some(size.overall_diameter_nominal()?), max: None }
            }
        },
        Term::SectionHeight => FactValue::Computed(size.section_height()?),
        Term::MeasuringRim => FactValue::RimWidth(size.measuring_rim()?),
        Term::SectionWidthOnMeasuringRim => {
            FactValue::Computed(size.section_width_on(size.measuring_rim()?)?.nominal())
        }
        Term::RimWidthRange => FactValue::RimWidths(rim_widths(size)?),
        Term::RollingCircumference => FactValue::Computed(size.rolling()?.circumference().nominal()),
        Term::RevolutionsPerKm => FactValue::Number(size.rolling()?.revolutions_per_km()),
        _ => return None,
    })
}

pub(super) fn of_service(service: Option<ServiceDescription>, term: Term) -> Option<FactValue<'static>> {
    let service = service?;
    Some(match term {
        Term::LoadIndexSingle => FactValue::Whole(u32::from(service.single().number())),
        Term::LoadIndexDual => FactValue::Whole(u32::from(service.dual()?.number())),
        Term::LoadSingle => FactValue::Mass(service.single().load()),
        Term::LoadDual => FactValue::Mass(service.dual()?.load()),
        Term::SpeedSymbol => FactValue::SpeedSymbol(service.speed()),
        Term::Speed => FactValue::Velocity(service.speed().speed()),
        _ => return None,
    })
}

pub(super) fn of_line(line: SidewallLine, term: Term, n: usize) -> Option<FactValue<'static>> {
    Some(match term {
        Term::SecondService => FactValue::Service(line.second_service()?),
        Term::MaxLoad => FactValue::Mass(line.max_load()?.load()),
        Term::MaxLoadDual => FactValue::Mass(line.max_load_dual()?.load()),
        Term::LoadPressure => FactValue::Pressure(line.load_pressure()?.pressure()),
        Term::LoadPressureDual => FactValue::Pressure(line.load_pressure_dual()?.pressure()),
        Term::MaxPressure => FactValue::Pressure(line.max_pressure()?.pressure()),
        Term::MaxSpeed => FactValue::Velocity(line.max_speed()?.speed()),
        Term::Marks => FactValue::Mark(line.marks().nth(n)?),
        Term::MudAndSnow => FactValue::Is(line.is_mud_and_snow()),
        Term::SevereSnow => FactValue::Is(line.is_for_severe_snow()),
        Term::Tubeless => FactValue::Is(line.is_tubeless()?),
        Term::Contradictions => return contradiction(line, n),
        _ => return of_tire(line.tire(), term, n),
    })
}

pub(super) fn of_marks(marks: SidewallMarks, term: Term, n: usize) -> Option<FactValue<'static>> {
    match term {
        Term::LoadVersion => marks.version().map(FactValue::LoadVersion),
        Term::LoadRange => marks.range().map(|range| FactValue::Letter(range.letter())),
        Term::Marks => marks.words().nth(n).map(FactValue::Mark),
        _ => of_service(marks.service(), term).or_else(|| of_limits(marks.limits(), term)),
    }
}

pub(super) fn of_limits(
    mut limits: impl Iterator<Item = MoldedLimit>,
    term: Term,
) -> Option<FactValue<'static>> {
    use Formation::{Dual, Single};
    limits.find_map(|limit| match (limit, term) {
        (MoldedLimit::Load { formation: Single, load, .. }, Term::MaxLoad)
        | (MoldedLimit::Load { formation: Dual, load, .. }, Term::MaxLoadDual) => {
            Some(FactValue::Mass(load.load()))
        }
        (MoldedLimit::Load { formation: Single, at, .. }, Term::LoadPressure)
        | (MoldedLimit::Load { formation: Dual, at, .. }, Term::LoadPressureDual) => {
            at.map(|at| FactValue::Pressure(at.pressure()))
        }
        (MoldedLimit::Pressure(pressure), Term::MaxPressure) => {
            Some(FactValue::Pressure(pressure.pressure()))
        }
        (MoldedLimit::Speed(speed), Term::MaxSpeed) => Some(FactValue::Velocity(speed.speed())),
        _ => None,
    })
}
