//! The valve in the rim, and the pressure it bears.

use crate::Citation;
use crate::record::words;
use crate::rim::ValveHole;
use crate::units::{Pressure, kpa};

words! {
    /// What kind of valve a rim has.
    ///
    /// ```
    /// use beadseat::{units::kpa, wheel::Valve};
    /// assert_eq!(Valve::SnapIn.name(), "snap_in");
    /// assert_eq!(Valve::SnapIn.max_pressure(), Some(kpa(450.0)));
    /// assert_eq!(Valve::Metal.max_pressure(), None);
    /// ```
    Valve {
        /// A rubber valve pulled into its hole.
        SnapIn = "snap_in",
        /// A valve pulled into its hole as the rubber one is, made for high pressure.
        SnapInHigh = "snap_in_high",
        /// A metal valve clamped in its hole.
        Metal = "metal",
    }
}

impl Valve {
    /// The greatest pressure that a valve of this kind bears, whatever its hole. `None` where no limit of the
    /// kind is known. Source: TRA valve table, in psi; given in whole tens of kilopascals.
    pub fn max_pressure(self) -> Option<Pressure> {
        // Of a high-pressure valve the one for the small hole bears less; where the hole is not known, that protects.
        self.max_pressure_in(ValveHole::Small)
    }

    /// The same for a valve made for a hole.
    ///
    /// ```
    /// use beadseat::{rim::ValveHole, units::kpa, wheel::Valve};
    /// assert_eq!(Valve::SnapInHigh.max_pressure_in(ValveHole::Small), Some(kpa(550.0)));
    /// assert_eq!(Valve::SnapInHigh.max_pressure_in(ValveHole::Large), Some(kpa(690.0)));
    /// ```
    pub fn max_pressure_in(self, hole: ValveHole) -> Option<Pressure> {
        match (self, hole) {
            (Self::SnapIn, _) => Some(kpa(450.0)),
            (Self::SnapInHigh, ValveHole::Small) => Some(kpa(550.0)),
            (Self::SnapInHigh, ValveHole::Large) => Some(kpa(690.0)),
            (Self::Metal, _) => None,
        }
    }

    /// The source of the pressures.
    pub const fn citation(self) -> Citation {
        Citation::VALVE_PRESSURE
    }
}
