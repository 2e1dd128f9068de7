//! Rolling circumference and what follows from it.

use super::{Structure, TireSize};
use crate::units::{self, Length, Velocity, in_kmh};
use crate::{Citation, OutOfRange, Toleranced};

/// The distance a tire rolls in one turn, and its inverse.
///
/// It is neither `π·D` nor `2π` times the loaded radius: a belted tire rolls about 3 % less than the one
/// and 5 % more than the other.
///
/// ```
/// use beadseat::{tire::TireSize, units::kmh, uom::si::length::millimeter};
/// let rolling = TireSize::parse("205/55R16")?.rolling();
/// let c = rolling.circumference();
/// assert!((c.nominal().get::<millimeter>() - 1927.6).abs() < 1e-9);
/// assert!(rolling.circumference_at(kmh(180.0))?.nominal() > c.nominal());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rolling {
    circumference: Toleranced<Length>,
}

/// Growth of the rolling circumference over that at 60 km/h, in percent, by speed. Source: WdK 107,
/// from memory.
const GROWTH: [(f64, f64); 7] =
    [(60.0, 0.0), (90.0, 0.1), (120.0, 0.2), (150.0, 0.4), (180.0, 0.7), (210.0, 1.1), (240.0, 1.6)];

impl Rolling {
    /// Rolling circumference at 60 km/h: `3.05·D` radial, `2.99·D` otherwise. Source: ETRTO, from
    /// memory.
    pub const fn circumference(&self) -> Toleranced<Length> {
        self.circumference
    }

    /// Rolling circumference at a speed from 60 to 240 km/h, linear between the rows of WdK 107 (from
    /// memory).
    ///
    /// # Errors
    /// Outside that range.
    pub fn circumference_at(&self, speed: Velocity) -> Result<Toleranced<Length>, OutOfRange> {
        let v = OutOfRange::check("speed", in_kmh(speed), "km/h", 60.0, 240.0)?;
        let mut percent = 0.0;
        for pair in GROWTH.windows(2) {
            if let [(v0, k0), (v1, k1)] = *pair {
                if v > v0 {
                    percent = k0 + (k1 - k0) * (v.min(v1) - v0) / (v1 - v0);
                }
            }
        }
        Ok(self.circumference * (1.0 + percent / 100.0))
    }

    /// Turns a kilometre at 60 km/h.
    ///
    /// ```
    /// let rolling = beadseat::tire::TireSize::parse("205/55R16")?.rolling();
    /// assert_eq!(rolling.revolutions_per_km().round(), 519.0);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn revolutions_per_km(&self) -> f64 {
        1e6 / units::in_mm(self.circumference.nominal())
    }

    /// The source of [`Rolling::circumference`].
    ///
    /// ```
    /// let rolling = beadseat::tire::TireSize::parse("205/55R16")?.rolling();
    /// assert!(rolling.citation().is_from_memory());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn citation(&self) -> Citation {
        Citation::ROLLING_CIRCUMFERENCE
    }
}

impl TireSize {
    /// How far the tire rolls in a turn.
    pub fn rolling(&self) -> Rolling {
        let factor = match self.structure() {
            Structure::Radial => 3.05,
            Structure::Diagonal | Structure::BiasBelted => 2.99,
        };
        Rolling { circumference: self.overall_diameter() * factor }
    }
}
