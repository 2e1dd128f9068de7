//! What a wheel off its centre does at speed.

use crate::units::{self, Force, Length, Mass, Velocity, in_kg, in_kmh, in_mm};
use crate::{Citation, OutOfRange};

/// The imbalance of a mass whose centre is off the axis it turns about: `U = m·e`.
///
/// It is a mass times a length; the trade says it as the [weight](Imbalance::weight_at) that would cure it
/// on the rim.
///
/// ```
/// use beadseat::{units::{kg, kmh, mm}, uom::si::{force::newton, mass::gram}, wheel::rotation::Imbalance};
/// // A wheel with its tire, hung a tenth of a millimetre off centre.
/// let imbalance = Imbalance::of(kg(20.0), mm(0.1))?;
/// assert!((imbalance.weight_at(mm(200.0))?.get::<gram>() - 10.0).abs() < 1e-9);
/// assert!((imbalance.force_at(kmh(100.0), mm(310.0))?.get::<newton>() - 16.06).abs() < 0.01);
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Imbalance {
    /// kg·m
    moment: f64,
}

impl Imbalance {
    /// Of a mass at an eccentricity: a wheel off centre, or a balance weight at its radius.
    ///
    /// # Errors
    /// Outside 0.001 to 2000 kg, and 0 to 1500 mm.
    pub fn of(mass: Mass, eccentricity: Length) -> Result<Self, OutOfRange> {
        let mass = OutOfRange::check("mass", in_kg(mass), "kg", 0.001, 2000.0)?;
        let e = OutOfRange::check("eccentricity", in_mm(eccentricity), "mm", 0.0, 1500.0)?;
        Ok(Self { moment: mass * e / 1000.0 })
    }

    /// The weight that balances it at a radius.
    ///
    /// # Errors
    /// Outside 50 to 1500 mm.
    pub fn weight_at(&self, radius: Length) -> Result<Mass, OutOfRange> {
        let r = OutOfRange::check("radius", in_mm(radius), "mm", 50.0, 1500.0)?;
        Ok(units::kg(self.moment / (r / 1000.0)))
    }

    /// The force that turns with the wheel at a road speed, `U·ω²` with `ω = v/r` of the rolling radius: it
    /// grows with the square of the speed.
    ///
    /// # Errors
    /// Outside 0 to 500 km/h, and 50 to 1500 mm.
    pub fn force_at(&self, speed: Velocity, rolling_radius: Length) -> Result<Force, OutOfRange> {
        let v = OutOfRange::check("speed", in_kmh(speed), "km/h", 0.0, 500.0)? / 3.6;
        let r = OutOfRange::check("rolling radius", in_mm(rolling_radius), "mm", 50.0, 1500.0)? / 1000.0;
        let omega = v / r;
        Ok(units::base(self.moment * omega * omega))
    }

    /// The source of the formulas.
    pub const fn citation(&self) -> Citation {
        Citation::IMBALANCE
    }
}
