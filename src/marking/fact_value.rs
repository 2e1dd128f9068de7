//! A value of a fact, with its unit.

use core::fmt;

use crate::Toleranced;
use crate::decimals::Decimals;
use crate::rim::{RimDiameter, RimWidth};
use crate::tire::{LoadVersion, RimRange, ServiceDescription, SpeedSymbol, sidewall::SidewallMark};
use crate::unit_system::UnitSystem;
use crate::units::{self, Angle, Area, Length, Mass, Pressure, Ratio, Velocity};
use crate::wheel::{BoltCircle, Seat, Thread, WheelDate};

/// A value of a fact: a quantity, a count, a word, or a designation.
///
/// ```
/// use beadseat::{UnitSystem, marking::FactValue, units::{kpa, mm}};
/// let pressure = FactValue::Pressure(kpa(250.0));
/// assert_eq!(pressure.told_in(UnitSystem::Both).to_string(), "250 kPa (2.5 bar) = 36 psi");
/// assert_eq!(FactValue::Length(mm(57.1)).told_in(UnitSystem::Us).to_string(), "2.25 in");
/// assert_eq!(FactValue::Length(mm(57.1)).number(), Some(57.1));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum FactValue<'a> {
    /// A length that is stated, in mm.
    Length(Length),
    /// A length that follows from others, in mm; a tenth is what it is worth.
    Computed(Length),
    /// A computed length with its limits where they are known, in mm.
    Range {
        /// The least that it can be.
        min: Option<Length>,
        /// What it is by its nominal values.
        nominal: Option<Length>,
        /// The most that it can be.
        max: Option<Length>,
    },
    /// A load, in kg.
    Mass(Mass),
    /// A cold pressure, in kPa.
    Pressure(Pressure),
    /// A speed, in km/h.
    Velocity(Velocity),
    /// An angle, in degrees.
    Angle(Angle),
    /// An area, in mm².
    Area(Area),
    /// A bare ratio, without a unit.
    Ratio(Ratio),
    /// A number without a unit, of which a tenth is known.
    Number(f64),
    /// A count or a code, without a unit.
    Whole(u32),
    /// A load as it is printed, in lb.
    Pounds(u32),
    /// A speed as it is printed, in mph.
    MilesPerHour(u16),
    /// A level of sound, in dB.
    Decibels(u8),
    /// Whether something is so.
    Is(bool),
    /// A word of the trade, or letters of the marking.
    Word(&'a str),
    /// A single letter or class.
    Letter(char),
    /// A rim width code, in inches.
    RimWidth(RimWidth),
    /// A rim diameter code, in inches.
    RimDiameter(RimDiameter),
    /// Rim widths from the least to the greatest, in inches, and what the range rests on.
    RimWidths(RimRange),
    /// A load version, as a designation.
    LoadVersion(LoadVersion),
    /// A speed symbol, as a designation.
    SpeedSymbol(SpeedSymbol),
    /// Load indices with speed symbol.
    Service(ServiceDescription),
    /// A mark of a sidewall.
    Mark(SidewallMark),
    /// A bolt circle, as a designation.
    BoltCircle(BoltCircle),
    /// A thread, as a designation.
    Thread(Thread),
    /// A seat, as a designation.
    Seat(Seat),
    /// When a wheel was made.
    Made(WheelDate),
    /// A day of the Gregorian calendar.
    Day {
        /// The year, of four digits.
        year: u16,
        /// The month, from 1 to 12.
        month: u8,
        /// The day of the month, from 1.
        day: u8,
    },
    /// A regulation of the United Nations, by its number.
    UnRegulation(u8),
    /// An approval of a wheel: the country's number, if it stands there, and its own.
    Approval {
        /// The number of the country.
        country: Option<u8>,
        /// The number of the approval.
        number: u32,
    },
}

impl FactValue<'_> {
    /// A computed length with both its limits.
    pub(super) fn span(length: Toleranced<Length>) -> Self {
        let [min, nominal, max] = [length.min(), length.nominal(), length.max()].map(Some);
        Self::Range { min, nominal, max }
    }

    /// The number in the unit that the key of its [`Term`](super::Term) ends in, where it is a number, without what the
    /// conversion of units leaves behind the sixth decimal.
    pub fn number(&self) -> Option<f64> {
        let number = match *self {
            Self::Length(length) | Self::Computed(length) => units::in_mm(length),
            Self::Mass(mass) => units::in_kg(mass),
            Self::Pressure(pressure) => units::in_kpa(pressure),
            Self::Velocity(speed) => units::in_kmh(speed),
            Self::Angle(angle) => units::in_deg(angle),
            Self::Area(area) => units::in_mm2(area),
            Self::Ratio(ratio) => units::in_ratio(ratio),
            Self::Number(number) => number,
            Self::Whole(count) | Self::Pounds(count) => f64::from(count),
            Self::MilesPerHour(speed) => f64::from(speed),
            Self::Decibels(level) => f64::from(level),
            Self::RimWidth(width) => width.inches(),
            Self::RimDiameter(diameter) => f64::from(diameter.tenths()) / 10.0,
            _ => return None,
        };
        Some(undusted(number))
    }

    /// The value for people, rounded to what it is worth. The codes of rims are inches in every country.
    pub fn told_in(self, units: UnitSystem) -> impl fmt::Display {
        Told(self, units)
    }
}

/// A number without the dust of unit conversion.
pub(super) fn undusted(number: f64) -> f64 {
    libm::round(number * 1e6) / 1e6
}

/// A value in the units that are asked for.
struct Told<'a>(FactValue<'a>, UnitSystem);

/// A number in one unit, and in the other.
struct Twice {
    metric: (f64, u8, &'static str),
    us: (f64, u8, &'static str),
    /// Bar beside the kilopascals.
    bar: Option<f64>,
}

impl Twice {
    fn of(value: &FactValue<'_>) -> Option<Self> {
        let metric = value.number()?;
        let (metric, us, bar) = match *value {
            FactValue::Length(length) => ((metric, 2, "mm"), (units::in_inches(length), 2, "in"), None),
            FactValue::Computed(length) => ((metric, 1, "mm"), (units::in_inches(length), 2, "in"), None),
            FactValue::Mass(mass) => ((metric, 0, "kg"), (units::in_lb(mass), 0, "lb"), None),
            FactValue::Velocity(speed) => ((metric, 0, "km/h"), (units::in_mph(speed), 0, "mph"), None),
            FactValue::Area(area) => {
                ((metric, 1, "mm²"), (units::in_mm2(area) / (25.4 * 25.4), 4, "in²"), None)
            }
            FactValue::Pressure(pressure) => {
                ((metric, 0, "kPa"), (units::in_psi(pressure), 0, "psi"), Some(metric / 100.0))
            }
            _ => return None,
        };
        Some(Self { metric, us, bar })
    }
}

impl fmt::Display for Told<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(value, units) = self;
        if let Some(Twice { metric, us, bar }) = Twice::of(value) {
            if *units != UnitSystem::Us {
                write!(f, "{} {}", Decimals(metric.0, metric.1), metric.2)?;
                if let Some(bar) = bar {
                    write!(f, " ({} bar)", Decimals(bar, 2))?;
                }
            }
            if *units == UnitSystem::Both {
                f.write_str(" = ")?;
            }
            if *units != UnitSystem::Metric {
                write!(f, "{} {}", Decimals(us.0, us.1), us.2)?;
            }
            return Ok(());
        }
        match *value {
            FactValue::Range { min, nominal, max } => {
                let known = [("min", min), ("nominal", nominal), ("max", max)];
                let known = known.iter().filter_map(|(word, length)| Some((word, (*length)?)));
                for (nth, (word, length)) in known.enumerate() {
                    let between = if nth == 0 { "" } else { ", " };
                    write!(f, "{between}{word} {}", Told(FactValue::Computed(length), *units))?;
                }
                Ok(())
            }
            FactValue::RimWidth(width) => write!(f, "{}", Code(width.inches(), *units)),
            FactValue::RimDiameter(diameter) => {
                write!(f, "{}", Code(f64::from(diameter.tenths()) / 10.0, *units))
            }
            FactValue::RimWidths(range) => {
                let (min, max) = (Code(range.min().inches(), *units), Code(range.max().inches(), *units));
                write!(f, "min {min}, max {max}, basis {}", range.basis())
            }
            FactValue::Angle(_) => write!(f, "{}°", Decimals(value.number().unwrap_or_default(), 1)),
            FactValue::Ratio(_) => write!(f, "{}", Decimals(value.number().unwrap_or_default(), 2)),
            FactValue::Number(number) => write!(f, "{}", Decimals(number, 1)),
            FactValue::Whole(count) => write!(f, "{count}"),
            FactValue::Pounds(pounds) => write!(f, "{pounds} lb"),
            FactValue::MilesPerHour(speed) => write!(f, "{speed} mph"),
            FactValue::Decibels(level) => write!(f, "{level} dB"),
            FactValue::Is(is) => f.write_str(if is { "yes" } else { "no" }),
            FactValue::Made(WheelDate::Month { month, year }) => write!(f, "month {month}, year {year}"),
            FactValue::Made(WheelDate::Week { week, year }) => write!(f, "week {week}, year {year}"),
            FactValue::Approval { country: Some(country), number } => write!(f, "E{country} {number}"),
            FactValue::Approval { country: None, number } => write!(f, "{number}"),
            _ => write!(f, "{}", Plain(*value)),
        }
    }
}

/// The code of a rim in inches, and what that is in millimetres.
struct Code(f64, UnitSystem);

impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} in", Decimals(self.0, 2))?;
        if self.1 == UnitSystem::Us { Ok(()) } else { write!(f, " = {} mm", Decimals(self.0 * 25.4, 1)) }
    }
}

/// What is a word or a designation, as itself.
pub(super) struct Plain<'a>(pub(super) FactValue<'a>);

impl fmt::Display for Plain<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            FactValue::Word(word) => f.write_str(word),
            FactValue::Letter(letter) => write!(f, "{letter}"),
            FactValue::LoadVersion(version) => write!(f, "{version}"),
            FactValue::SpeedSymbol(symbol) => write!(f, "{symbol}"),
            FactValue::Service(service) => write!(f, "{service}"),
            FactValue::Mark(mark) => write!(f, "{mark}"),
            FactValue::BoltCircle(circle) => write!(f, "{circle}"),
            FactValue::Thread(thread) => write!(f, "{thread}"),
            FactValue::Seat(seat) => write!(f, "{seat}"),
            FactValue::Day { year, month, day } => write!(f, "{year:04}-{month:02}-{day:02}"),
            FactValue::UnRegulation(number) => write!(f, "UN R{number}"),
            _ => Ok(()),
        }
    }
}
