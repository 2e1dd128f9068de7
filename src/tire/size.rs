//! Tire size designations.

mod metric;

pub use metric::{Metric, MetricClass};

use crate::rim::RimDiameter;
use crate::text::{ParseError, Scanner, Text, designation, tri};

/// How the cords of the casing run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Structure {
    /// `R`: cords at right angles to the beads, under a belt.
    Radial,
    /// `D` or `-`: cords crossing from bead to bead.
    Diagonal,
    /// `B`: crossing cords under a belt.
    BiasBelted,
}

impl Structure {
    /// A stable name: `radial`, `diagonal`, `bias_belted`.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::Structure::Radial.name(), "radial");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Self::Radial => "radial",
            Self::Diagonal => "diagonal",
            Self::BiasBelted => "bias_belted",
        }
    }
}

/// A speed letter inside the size, in front of the structure: `205/55 ZR 16`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum InSizeSpeed {
    /// `S`: up to 180 km/h. From memory.
    S,
    /// `H`: up to 210 km/h. From memory.
    H,
    /// `V`: above 210 km/h. From memory.
    V,
    /// `Z`: above 240 km/h; with a service description, that says how fast.
    Z,
}

/// A tire size, of any family.
///
/// # Syntax
/// That of its family; see [`Metric`]. Nothing may follow the size: a text with a service description
/// is a [`Tire`](super::Tire).
///
/// ```
/// use beadseat::tire::{MetricClass, TireSize};
/// let size: TireSize = "lt245/75 r 17".parse()?;
/// assert_eq!(size.to_string(), "LT245/75R17");
/// let TireSize::Metric(metric) = size else { unreachable!() };
/// assert_eq!(metric.class(), MetricClass::LightTruck);
/// assert!("205/55R16 91V".parse::<TireSize>().is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum TireSize {
    /// Section width and aspect ratio, in millimetres and percent.
    Metric(Metric),
}

impl TireSize {
    #[inline(always)]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        Ok(Self::Metric(tri!(Metric::scan(scanner))))
    }

    #[inline]
    pub(crate) fn write(&self, text: &mut Text) {
        match self {
            Self::Metric(size) => size.write(text),
        }
    }

    /// The same size for high loads, if it is one that can be.
    pub(crate) const fn with_high_load(self) -> Option<Self> {
        match self {
            Self::Metric(size) => match size.with_high_load() {
                Some(size) => Some(Self::Metric(size)),
                None => None,
            },
        }
    }

    /// The family the designation is written in.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::TireSize::parse("195/70R15C")?.family(), "commercial");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn family(&self) -> &'static str {
        match self {
            Self::Metric(size) => size.class().name(),
        }
    }

    /// The nominal rim diameter, which the wheel's must equal.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::TireSize::parse("205/55R16")?.rim_diameter().to_string(), "16");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn rim_diameter(&self) -> RimDiameter {
        match self {
            Self::Metric(size) => size.rim_diameter(),
        }
    }

    /// The structure.
    ///
    /// ```
    /// use beadseat::tire::{Structure, TireSize};
    /// assert_eq!(TireSize::parse("195/65-15")?.structure(), Structure::Diagonal);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn structure(&self) -> Structure {
        match self {
            Self::Metric(size) => size.structure(),
        }
    }

    /// The speed letter inside the size, if it has one.
    ///
    /// ```
    /// use beadseat::tire::{InSizeSpeed, TireSize};
    /// assert_eq!(TireSize::parse("205/55ZR16")?.in_size_speed(), Some(InSizeSpeed::Z));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn in_size_speed(&self) -> Option<InSizeSpeed> {
        match self {
            Self::Metric(size) => size.in_size_speed(),
        }
    }
}

impl From<Metric> for TireSize {
    fn from(size: Metric) -> Self {
        Self::Metric(size)
    }
}

designation!(TireSize in "beadseat::tire", "205 / 55 zr 16" => "205/55ZR16", wrong "205/56R16");
