//! The highest cold pressure of a tire.

use crate::tire::{SpeedSymbol, Tire};
use crate::units::{self, Pressure};

impl Tire {
    /// The highest cold pressure of a passenger tire by its speed symbol, where the tire itself does not
    /// say: 320 kPa from Q to T, 350 kPa from H. U stands between and is taken with the lower, Y with the
    /// higher, and what is slower than Q or not given with the higher too, above which no passenger tire goes.
    /// `None` for other tires, temporary spares among them.
    ///
    /// What is molded on the tire governs, and neither is a recommendation. Source: Crolla (ed.) 2009,
    /// p. 296.
    ///
    /// ```
    /// use beadseat::{tire::Tire, units::kpa};
    /// assert_eq!(Tire::parse("205/55R16 91T")?.max_cold_pressure(), Some(kpa(320.0)));
    /// assert_eq!(Tire::parse("205/55R16 91V")?.max_cold_pressure(), Some(kpa(350.0)));
    /// assert_eq!(Tire::parse("195/70R15C 104/102R")?.max_cold_pressure(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn max_cold_pressure(&self) -> Option<Pressure> {
        if !self.size().rules().has_pressure_limit_by_symbol {
            return None;
        }
        Some(units::kpa(match self.service().map(|service| service.speed()) {
            Some(SpeedSymbol::Q | SpeedSymbol::R | SpeedSymbol::S | SpeedSymbol::T | SpeedSymbol::U) => 320.0,
            _ => 350.0,
        }))
    }
}
