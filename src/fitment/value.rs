//! What a check measured, and what it was held against.

use core::fmt;

use crate::decimals::Decimals;
use crate::rim::{RimDiameter, RimWidth};
use crate::tire::{LoadIndex, SpeedSymbol};
use crate::unit_system::UnitSystem;
use crate::units::{self, Length, Mass, Pressure, Ratio, Time, Torque, Velocity};
use crate::wheel::{BoltCircle, Seat, Thread};

/// A value as a check reads it: a quantity, or a designation that equals another or does not.
///
/// ```
/// use beadseat::{fitment::Value, units::mm};
/// assert_eq!(Value::Length(mm(6.35)).to_string(), "6.35 mm");
/// assert_eq!(Value::BoltCircle("5x112".parse()?).to_string(), "5x112");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Value {
    /// A length, in mm.
    Length(Length),
    /// A load, in kg.
    Mass(Mass),
    /// A cold pressure, in kPa.
    Pressure(Pressure),
    /// A speed, in km/h.
    Velocity(Velocity),
    /// A share, in %.
    Ratio(Ratio),
    /// A time, in years.
    Time(Time),
    /// A torque, in N·m.
    Torque(Torque),
    /// A rim width code, in inches.
    RimWidth(RimWidth),
    /// A rim diameter code, in inches.
    RimDiameter(RimDiameter),
    /// A load index, without a unit.
    LoadIndex(LoadIndex),
    /// A speed symbol, without a unit.
    SpeedSymbol(SpeedSymbol),
    /// A bolt circle, as a designation.
    BoltCircle(BoltCircle),
    /// A thread, as a designation.
    Thread(Thread),
    /// A fastener seat, as a designation.
    Seat(Seat),
}

impl Value {
    /// The number in the unit of [`Value::unit`], where it is a number.
    pub(crate) fn number(self) -> Option<f64> {
        Some(match self {
            Self::Length(q) => units::in_mm(q),
            Self::Mass(q) => units::in_kg(q),
            Self::Pressure(q) => units::in_kpa(q),
            Self::Velocity(q) => units::in_kmh(q),
            Self::Ratio(q) => units::in_percent(q),
            Self::Time(q) => units::in_years(q),
            Self::Torque(q) => units::in_nm(q),
            Self::RimWidth(w) => w.inches(),
            Self::RimDiameter(d) => f64::from(d.tenths()) / 10.0,
            Self::LoadIndex(_)
            | Self::SpeedSymbol(_)
            | Self::BoltCircle(_)
            | Self::Thread(_)
            | Self::Seat(_) => {
                return None;
            }
        })
    }

    /// A number in the unit of this reading; of a code, in the length or ratio it stands for.
    pub(crate) fn of_same_kind(self, number: f64) -> Self {
        match self {
            Self::Mass(_) => Self::Mass(units::kg(number)),
            Self::Pressure(_) => Self::Pressure(units::kpa(number)),
            Self::Velocity(_) => Self::Velocity(units::kmh(number)),
            Self::Ratio(_) => Self::Ratio(units::percent(number)),
            Self::Time(_) => Self::Time(units::years(number)),
            Self::Torque(_) => Self::Torque(units::nm(number)),
            Self::RimWidth(_) | Self::RimDiameter(_) => Self::Length(units::inches(number)),
            _ => Self::Length(units::mm(number)),
        }
    }

    /// The value in other units.
    ///
    /// ```
    /// use beadseat::{fitment::{UnitSystem, Value}, units::kpa};
    /// assert_eq!(Value::Pressure(kpa(250.0)).told_in(UnitSystem::Both).to_string(), "250 kPa (36.26 psi)");
    /// ```
    pub fn told_in(self, units: UnitSystem) -> impl fmt::Display + use<> {
        In(self, units)
    }

    /// The unit: `mm`, `kg`, `kPa`, `km/h`, `%`, `years`, `N·m`, `in`, or nothing for a designation.
    ///
    /// ```
    /// use beadseat::{fitment::Value, units::kpa};
    /// assert_eq!(Value::Pressure(kpa(250.0)).unit(), "kPa");
    /// ```
    pub const fn unit(&self) -> &'static str {
        match self {
            Self::Length(_) => "mm",
            Self::Mass(_) => "kg",
            Self::Pressure(_) => "kPa",
            Self::Velocity(_) => "km/h",
            Self::Ratio(_) => "%",
            Self::Time(_) => "years",
            Self::Torque(_) => "N·m",
            Self::RimWidth(_) | Self::RimDiameter(_) => "in",
            Self::LoadIndex(_)
            | Self::SpeedSymbol(_)
            | Self::BoltCircle(_)
            | Self::Thread(_)
            | Self::Seat(_) => "",
        }
    }
}

impl Value {
    /// The number in the other units, how many decimals it is told with, and the unit; nothing of what has one unit only.
    pub(super) fn in_us(self) -> Option<(f64, u8, &'static str)> {
        Some(match self {
            // A hundredth of a millimetre is less than a thousandth of an inch.
            Self::Length(q) => (units::in_inches(q), 3, "in"),
            Self::Mass(q) => (units::in_lb(q), 2, "lb"),
            Self::Pressure(q) => (units::in_psi(q), 2, "psi"),
            Self::Velocity(q) => (units::in_mph(q), 2, "mph"),
            Self::Torque(q) => (units::in_lbf_ft(q), 2, "lbf·ft"),
            Self::Ratio(_)
            | Self::Time(_)
            | Self::RimWidth(_)
            | Self::RimDiameter(_)
            | Self::LoadIndex(_)
            | Self::SpeedSymbol(_)
            | Self::BoltCircle(_)
            | Self::Thread(_)
            | Self::Seat(_) => return None,
        })
    }
}

/// A value or a bound in the units that are asked for.
pub(super) struct In<T>(pub(super) T, pub(super) UnitSystem);

impl fmt::Display for In<Value> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.1, self.0.in_us()) {
            (UnitSystem::Metric, _) | (_, None) => self.0.fmt(f),
            (UnitSystem::Us, Some((number, decimals, unit))) => {
                write!(f, "{} {unit}", Decimals(number, decimals))
            }
            (UnitSystem::Both, Some((number, decimals, unit))) => {
                write!(f, "{} ({} {unit})", self.0, Decimals(number, decimals))
            }
        }
    }
}

impl fmt::Display for In<Bound> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(bound, units) = *self;
        match bound {
            Bound::AtMost(most) => write!(f, "at most {}", In(most, units)),
            Bound::AtLeast(least) => write!(f, "at least {}", In(least, units)),
            Bound::Equals(same) => write!(f, "equal to {}", In(same, units)),
            Bound::Between(least, most) => match (units, least.in_us().zip(most.in_us())) {
                (UnitSystem::Metric, _) | (_, None) => bound.fmt(f),
                (UnitSystem::Us, Some(((least, decimals, unit), (most, ..)))) => {
                    write!(f, "{} to {} {unit}", Decimals(least, decimals), Decimals(most, decimals))
                }
                (UnitSystem::Both, Some(_)) => write!(f, "{bound} ({})", In(bound, UnitSystem::Us)),
            },
        }
    }
}

/// A number for people: two decimals at most, no trailing zeros, no negative zero.
pub(crate) struct Rounded(pub(crate) f64);

impl Rounded {
    pub(crate) fn is_positive(&self) -> bool {
        libm::round(self.0 * 100.0) > 0.0
    }
}

impl fmt::Display for Rounded {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Decimals(self.0, 2).fmt(f)
    }
}

impl fmt::Display for Value {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::RimWidth(w) => write!(f, "{w} {}", if w.millimetres().is_some() { "mm" } else { "in" }),
            Self::RimDiameter(d) => write!(f, "{d} in"),
            Self::LoadIndex(li) => write!(f, "LI {li}"),
            Self::SpeedSymbol(s) => write!(f, "{s}"),
            Self::BoltCircle(b) => write!(f, "{b}"),
            Self::Thread(t) => write!(f, "{t}"),
            Self::Seat(s) => write!(f, "{s}"),
            Self::Length(_)
            | Self::Mass(_)
            | Self::Pressure(_)
            | Self::Velocity(_)
            | Self::Ratio(_)
            | Self::Time(_)
            | Self::Torque(_) => {
                write!(f, "{} {}", Rounded(self.number().unwrap_or_default()), self.unit())
            }
        }
    }
}

/// What a reading is held against.
///
/// ```
/// use beadseat::{fitment::{Bound, Value}, units::mm};
/// let bound = Bound::AtLeast(Value::Length(mm(6.35)));
/// assert_eq!(bound.to_string(), "at least 6.35 mm");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Bound {
    /// No more than this.
    AtMost(Value),
    /// No less than this.
    AtLeast(Value),
    /// From the first to the second.
    Between(Value, Value),
    /// The same value or designation.
    Equals(Value),
}

impl Bound {
    /// The number of the bound that a value is nearer to.
    pub(super) fn nearer_to(self, value: Value) -> Option<f64> {
        match self {
            Self::AtMost(bound) | Self::AtLeast(bound) | Self::Equals(bound) => bound.number(),
            Self::Between(least, most) => {
                let (value, least, most) = (value.number()?, least.number()?, most.number()?);
                Some(if value - least < most - value { least } else { most })
            }
        }
    }

    /// How far inside a value is, to the nearer bound, in its unit; negative outside. Nothing for what only
    /// agrees or does not.
    pub(super) fn margin(self, value: Value) -> Option<f64> {
        let value = value.number()?;
        match self {
            Self::AtMost(most) => Some(most.number()? - value),
            Self::AtLeast(least) => Some(value - least.number()?),
            Self::Between(least, most) => Some((value - least.number()?).min(most.number()? - value)),
            Self::Equals(_) => None,
        }
    }
}

impl fmt::Display for Bound {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::AtMost(r) => write!(f, "at most {r}"),
            Self::AtLeast(r) => write!(f, "at least {r}"),
            Self::Between(a, b) => match (a.number(), b.unit()) {
                (Some(a), unit) if !unit.is_empty() => write!(f, "{} to {b}", Rounded(a)),
                _ => write!(f, "{a} to {b}"),
            },
            Self::Equals(r) => write!(f, "equal to {r}"),
        }
    }
}
