//! The facts of a marking: what it says and what follows from it, term by term.

mod date;
mod tire;
mod wheel;

use core::fmt;

use super::approval::Approval;
use super::fact_value::FactValue;
use super::kind::Marking;
use super::term::Term;
use crate::Citation;
use crate::tire::grading::Grade;
use crate::tire::{Formation, sidewall::MoldedLimit};
use crate::unit_system::UnitSystem;

/// One fact of a marking: a term, and what the marking says of it.
///
/// ```
/// use beadseat::{Citation, Marking, UnitSystem, marking::{FactValue, Term}, units::in_kg};
/// let tire = Marking::parse("205/55R16 91V")?;
/// let load = tire.facts().find(|fact| fact.term() == Term::LoadSingle).ok_or("no load")?;
/// assert_eq!(load.told_in(UnitSystem::Both).to_string(), "615 kg = 1356 lb");
/// assert_eq!(load.source(), Some(Citation::LOAD_INDEX));
/// assert!(matches!(load.value(), Some(FactValue::Mass(load)) if in_kg(load) == 615.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Fact<'a> {
    marking: &'a Marking,
    term: Term,
}

impl<'a> Fact<'a> {
    /// What the fact is about.
    pub const fn term(&self) -> Term {
        self.term
    }

    /// Its value, the first if it has several; nothing if the marking does not tell it.
    pub fn value(&self) -> Option<FactValue<'a>> {
        nth(self.marking, self.term, 0)
    }

    /// All its values, of which most facts have one.
    ///
    /// ```
    /// use beadseat::{Marking, UnitSystem, marking::Term};
    /// let date = Marking::parse("DATE 317")?;
    /// let years = date.facts().find(|fact| fact.term() == Term::PossibleYears).ok_or("no years")?;
    /// assert_eq!(years.values().count(), 3);
    /// assert_eq!(years.told_in(UnitSystem::Metric).to_string(), "1997; 1987; 1977");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn values(&self) -> impl Iterator<Item = FactValue<'a>> + use<'a> {
        let Self { marking, term } = *self;
        (0..).map_while(move |n| nth(marking, term, n))
    }

    /// Where it is laid down, or what it was computed by; nothing if the marking does not tell it.
    ///
    /// ```
    /// use beadseat::{Citation, Marking, marking::Term};
    /// let source = |text: &str, term| {
    ///     Marking::parse(text).map(|of| of.facts().find(|fact| fact.term() == term).and_then(|fact| fact.source()))
    /// };
    /// assert_eq!(source("205/55R16 91V", Term::OverallDiameter)?, Some(Citation::OVERALL_DIAMETER));
    /// assert_eq!(source("205/55R16", Term::LoadSingle)?, None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn source(&self) -> Option<Citation> {
        self.value()?;
        tire::source(self.marking, self.term).or(match self.marking {
            Marking::IdentificationNumber(number) if !date::TERMS.contains(&self.term) => {
                Some(number.form().citation())
            }
            Marking::SidewallMark(mark) => Some(mark.citation()),
            _ => self.term.source(),
        })
    }

    /// Its values for people, one behind another.
    pub fn told_in(&self, units: UnitSystem) -> impl fmt::Display + use<'a> {
        Told { fact: *self, units }
    }
}

struct Told<'a> {
    fact: Fact<'a>,
    units: UnitSystem,
}

impl fmt::Display for Told<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (nth, value) in self.fact.values().enumerate() {
            let between = if nth == 0 { "" } else { "; " };
            write!(f, "{between}{}", value.told_in(self.units))?;
        }
        Ok(())
    }
}

impl Marking {
    /// The facts of the marking in the order people ask for them: every term of its kind, told or not. Allocates nothing;
    /// each value is worked out when it is asked for.
    ///
    /// ```
    /// use beadseat::{Marking, UnitSystem};
    /// let holes = Marking::parse("5 on 4 1/2")?;
    /// let told: Vec<_> = holes
    ///     .facts()
    ///     .map(|fact| format!("{}: {}", fact.term().name(), fact.told_in(UnitSystem::Metric)))
    ///     .collect();
    /// assert_eq!(told, ["count: 5", "diameter: 114.3 mm", "adjacent: 67.2 mm", "longest chord: 108.7 mm"]);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn facts(&self) -> impl Iterator<Item = Fact<'_>> {
        groups(self).iter().copied().flatten().map(|&term| Fact { marking: self, term })
    }
}

const DATE: &[Term] = date::TERMS;
const SERVICE: &[Term] = tire::SERVICE;
const LIMITS: &[Term] = tire::LIMITS;

/// The terms of a kind, in groups that kinds share.
fn groups(marking: &Marking) -> &'static [&'static [Term]] {
    use Term::*;
    match marking {
        Marking::Tire(_) => &[tire::SIZE, SERVICE, tire::DIMENSIONS, &[Contradictions]],
        Marking::SidewallLine(_) => &[
            tire::SIZE,
            SERVICE,
            tire::DIMENSIONS,
            &[SecondService],
            LIMITS,
            tire::BESIDE,
            &[Contradictions],
        ],
        Marking::Wheel(_) => &[wheel::WHEEL],
        Marking::WheelStamp(_) => &[wheel::WHEEL, wheel::STAMP],
        Marking::BoltCircle(_) => &[&[Count, Diameter, Adjacent, LongestChord]],
        Marking::Thread(_) => &[&[Major, Pitch, StressArea]],
        Marking::ServiceDescription(_) => &[SERVICE],
        Marking::LoadIndex(_) => &[&[IndexLoad, PrintedPounds]],
        Marking::SpeedSymbol(_) => &[&[SymbolSpeed, PrintedMph]],
        Marking::IdentificationNumber(_) => &[&[Form, Plant], DATE, &[Retread, Ambiguous]],
        Marking::DateCode(_) => &[DATE],
        Marking::Inset(_) => &[&[Inset]],
        Marking::Backspacing(_) => &[&[Backspacing]],
        Marking::Bore(_) => &[&[Bore]],
        Marking::Seat(_) => &[&[ConeAngle, BallRadius, Centring]],
        Marking::DualDrilling(_) => &[&[Count, Diameters, BetweenNeighbours]],
        Marking::Label(_) => &[&[FuelEfficiency, WetGrip, Sound, NoiseClass]],
        Marking::Approval(Approval::Mark(_)) => &[&[CountryNumber, Country, Regulation]],
        Marking::Approval(Approval::Regulation(_)) => &[&[CountryNumber, Regulation, Number]],
        Marking::Approval(Approval::Permit(_)) => &[&[Number]],
        Marking::Grading(_) => &[&[Treadwear, Traction, Temperature]],
        Marking::Grade(Grade::Treadwear(_)) => &[&[LifeOfControl]],
        Marking::Grade(Grade::Traction(_)) => &[&[FrictionOnAsphalt, FrictionOnConcrete]],
        Marking::Grade(Grade::Temperature(_)) => &[&[Endured]],
        Marking::MoldedLimit(MoldedLimit::Load { formation: Formation::Dual, .. }) => {
            &[&[MaxLoadDual, LoadPressureDual]]
        }
        Marking::MoldedLimit(MoldedLimit::Load { .. }) => &[&[MaxLoad, LoadPressure]],
        Marking::MoldedLimit(MoldedLimit::Pressure(_)) => &[&[MaxPressure]],
        Marking::MoldedLimit(MoldedLimit::Speed(_)) => &[&[MaxSpeed]],
        Marking::SidewallMark(_) => &[&[Topic]],
        Marking::SidewallMarks(_) => &[SERVICE, &[LoadVersion, LoadRange, Marks], LIMITS],
    }
}

/// The value of a term by its place; of most there is one.
fn nth(marking: &Marking, term: Term, n: usize) -> Option<FactValue<'_>> {
    if n > 0 && !term.is_many() {
        return None;
    }
    match marking {
        Marking::Tire(tire) => tire::of_tire(*tire, term, n),
        Marking::SidewallLine(line) => tire::of_line(*line, term, n),
        Marking::ServiceDescription(service) => tire::of_service(Some(*service), term),
        Marking::MoldedLimit(limit) => tire::of_limits(core::iter::once(*limit), term),
        Marking::SidewallMarks(marks) => tire::of_marks(*marks, term, n),
        Marking::Wheel(wheel) => wheel::of_wheel(wheel, term),
        Marking::WheelStamp(stamp) => wheel::of_stamp(stamp, term, n),
        Marking::DateCode(code) => date::of_date(Some(*code), term, n),
        Marking::IdentificationNumber(number) => Some(match term {
            Term::Form => FactValue::Word(number.form().name()),
            Term::Plant => FactValue::Word(number.plant()?),
            Term::Retread => FactValue::Is(number.form().is_retread()),
            Term::Ambiguous => FactValue::Is(number.is_ambiguous()),
            _ => return date::of_date(number.date(), term, n),
        }),
        _ => of_one(marking, term).or_else(|| wheel::of_part(marking, term, n)),
    }
}

/// Markings of few facts, each of which is read off.
fn of_one(marking: &Marking, term: Term) -> Option<FactValue<'_>> {
    use FactValue as Value;
    Some(match (marking, term) {
        (Marking::LoadIndex(index), Term::IndexLoad) => Value::Mass(index.load()),
        (Marking::LoadIndex(index), Term::PrintedPounds) => Value::Pounds(index.printed_pounds()),
        (Marking::SpeedSymbol(symbol), Term::SymbolSpeed) => Value::Velocity(symbol.speed()),
        (Marking::SpeedSymbol(symbol), Term::PrintedMph) => Value::MilesPerHour(symbol.printed_mph()),
        (Marking::SidewallMark(mark), Term::Topic) => Value::Word(mark.topic().name()),
        (Marking::Grading(grading), Term::Treadwear) => Value::Whole(u32::from(grading.treadwear().number())),
        (Marking::Grading(grading), Term::Traction) => Value::Word(grading.traction().name()),
        (Marking::Grading(grading), Term::Temperature) => Value::Word(grading.temperature().name()),
        (Marking::Grade(Grade::Treadwear(grade)), Term::LifeOfControl) => {
            Value::Ratio(grade.life_of_control())
        }
        (Marking::Grade(Grade::Traction(grade)), Term::FrictionOnAsphalt) => Value::Ratio(grade.exceeds()?.0),
        (Marking::Grade(Grade::Traction(grade)), Term::FrictionOnConcrete) => {
            Value::Ratio(grade.exceeds()?.1)
        }
        (Marking::Grade(Grade::Temperature(grade)), Term::Endured) => Value::Velocity(grade.endured_speed()),
        (Marking::Label(label), Term::FuelEfficiency) => Value::Letter(label.fuel_efficiency()),
        (Marking::Label(label), Term::WetGrip) => Value::Letter(label.wet_grip()),
        (Marking::Label(label), Term::Sound) => Value::Decibels(label.sound().decibels()),
        (Marking::Label(label), Term::NoiseClass) => Value::Word(label.noise()?.name()),
        (Marking::Approval(Approval::Mark(mark)), Term::CountryNumber) => {
            Value::Whole(u32::from(mark.country_number()))
        }
        (Marking::Approval(Approval::Mark(mark)), Term::Country) => Value::Word(mark.country()?),
        (Marking::Approval(Approval::Mark(mark)), Term::Regulation) => Value::Word(mark.regulation()?),
        (Marking::Approval(Approval::Regulation(approval)), Term::CountryNumber) => {
            Value::Whole(u32::from(approval.country_number()?))
        }
        (Marking::Approval(Approval::Regulation(approval)), Term::Regulation) => {
            Value::UnRegulation(approval.regulation())
        }
        (Marking::Approval(Approval::Regulation(approval)), Term::Number) => Value::Whole(approval.number()?),
        (Marking::Approval(Approval::Permit(number)), Term::Number) => Value::Whole(*number),
        _ => return None,
    })
}
