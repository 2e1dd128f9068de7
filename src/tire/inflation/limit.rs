//! The highest cold pressure of a tire.

use crate::tire::{SpeedSymbol, Tire};
use crate::units::{self, Pressure};

impl Tire {
    /// The highest cold pressure of a passenger tire by its speed symbol, where the tire itself does not
    /// say: 320 kPa from Q to T, 350 kPa from H. U stands between and is taken with the lower, Y with the
    /// higher. `None` for other tires, slower symbols, and without a service description.
    ///
    /// What is molded on the tire governs, and neither is a recommendation. Source: Crolla (ed.) 2009,
    /// p. 296.
    ///
    /// ```
    /// use beadseat::{tire::Tire, units::kpa};
    /// assert_eq!(Tire::parse("205/55R16 91T")?.greatest_cold_pressure(), Some(kpa(320.0)));
    /// assert_eq!(Tire::parse("205/55R16 91V")?.greatest_cold_pressure(), Some(kpa(350.0)));
    /// assert_eq!(Tire::parse("195/70R15C 104/102R")?.greatest_cold_pressure(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn greatest_cold_pressure(&self) -> Option<Pressure> {
        let symbol = self.service().filter(|_| self.size().class().is_passenger())?.speed();
        match symbol {
            SpeedSymbol::Q | SpeedSymbol::R | SpeedSymbol::S | SpeedSymbol::T | SpeedSymbol::U => {
                Some(units::kpa(320.0))
            }
            _ if symbol >= SpeedSymbol::H => Some(units::kpa(350.0)),
            _ => None,
        }
    }
}
