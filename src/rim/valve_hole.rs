//! The hole in the rim for the valve.

use crate::units::{self, Length};
use crate::{Citation, Toleranced};

/// The hole in the rim that a valve sits in, which the valve must be made for. Source: ETRTO and TRA, from memory.
///
/// ```
/// use beadseat::{rim::ValveHole, units::mm};
/// assert_eq!(ValveHole::Small.diameter().nominal(), mm(11.3));
/// assert!((ValveHole::Large.diameter().max() - mm(16.1)).abs() < mm(1e-9));
/// assert!(ValveHole::Small.citation().is_from_memory());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum ValveHole {
    /// 11.3 mm.
    Small,
    /// 15.7 mm.
    Large,
}

impl ValveHole {
    /// The diameter: up to 0.4 mm more, never less.
    pub fn diameter(self) -> Toleranced<Length> {
        let least = units::mm(match self {
            Self::Small => 11.3,
            Self::Large => 15.7,
        });
        Toleranced::ordered(least, least, least + units::mm(0.4))
    }

    /// The source.
    pub const fn citation(self) -> Citation {
        Citation::VALVE_HOLE
    }
}
