//! The hole in the rim for the valve.

use crate::units::{self, Length};
use crate::{Citation, Toleranced};

/// The hole in the rim that a valve sits in, which the valve must be made for. Source: the nominal diameter
/// from a TRA valve table; least and greatest as ETRTO has them, from memory.
///
/// ```
/// use beadseat::{rim::ValveHole, units::{inches, mm}};
/// let small = ValveHole::Small.diameter();
/// assert_eq!(small.nominal(), inches(0.453)); // 11.5 mm
/// assert_eq!(small.min(), mm(11.3));
/// assert!((ValveHole::Large.diameter().max() - mm(16.1)).abs() < mm(1e-9));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum ValveHole {
    /// .453 in, 11.5 mm.
    Small,
    /// .625 in, 15.9 mm.
    Large,
}

impl ValveHole {
    /// The diameter, and what a hole may measure.
    pub fn diameter(self) -> Toleranced<Length> {
        let (least, nominal) = match self {
            Self::Small => (units::mm(11.3), units::inches(0.453)),
            Self::Large => (units::mm(15.7), units::inches(0.625)),
        };
        Toleranced::ordered(least, nominal, least + units::mm(0.4))
    }

    /// The source of the diameters.
    pub const fn citation(self) -> Citation {
        Citation::VALVE_HOLE
    }
}
