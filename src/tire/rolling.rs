//! Rolling circumference and what follows from it.

use super::{Structure, TireSize};
use crate::units::{self, Frequency, Length, Ratio, Velocity, in_kmh};
use crate::{Citation, OutOfRange, Toleranced};

/// The distance a tire rolls in one turn, and its inverse.
///
/// It is neither `π·D` nor `2π` times the loaded radius: a belted tire rolls about 3 % less than the one
/// and 5 % more than the other.
///
/// ```
/// use beadseat::{tire::TireSize, units::kmh, uom::si::length::millimeter};
/// let rolling = TireSize::parse("205/55R16")?.rolling().ok_or("not known")?;
/// let c = rolling.circumference();
/// assert!((c.nominal().get::<millimeter>() - 1927.6).abs() < 1e-9);
/// assert!(rolling.circumference_at(kmh(180.0))?.nominal() > c.nominal());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rolling {
    circumference: Toleranced<Length>,
    citation: Citation,
}

/// How much of the deflection shortens the diameter that a tire rolls on, in the note to truck dealers.
const DEFLECTION_SHARE: f64 = 0.8;

/// Growth of the rolling circumference over that at 60 km/h, in percent, by speed. Source: WdK 107,
/// from memory.
const GROWTH: [(f64, f64); 7] =
    [(60.0, 0.0), (90.0, 0.1), (120.0, 0.2), (150.0, 0.4), (180.0, 0.7), (210.0, 1.1), (240.0, 1.6)];

impl Rolling {
    /// From a rolling circumference that the tire's maker gives or that was measured: several turns on the
    /// road, divided.
    ///
    /// # Errors
    /// Outside 0.5 to 6 m.
    ///
    /// ```
    /// use beadseat::{Toleranced, tire::rolling::Rolling, units::mm};
    /// let measured = Rolling::from_circumference(Toleranced::within(mm(1931.0), mm(3.0)))?;
    /// assert!((measured.revolutions_per_mile() - 833.4).abs() < 0.1);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn from_circumference(circumference: Toleranced<Length>) -> Result<Self, OutOfRange> {
        for length in [circumference.min(), circumference.nominal(), circumference.max()] {
            OutOfRange::check("rolling circumference", units::in_mm(length), "mm", 500.0, 6000.0)?;
        }
        Ok(Self { circumference, citation: Citation::ROLLING_GIVEN })
    }

    /// From the overall diameter and static loaded radius of a truck tire's data sheet:
    /// `C = π·(D − 0.8·(D/2 − r))`, within about 1.5 %. Source: a technical note to truck dealers.
    ///
    /// # Errors
    /// For a loaded radius outside three quarters of half the diameter to all of it, and a circumference
    /// outside 0.5 to 6 m.
    ///
    /// ```
    /// use beadseat::{tire::rolling::Rolling, units::inches};
    /// let rolling = Rolling::from_loaded_radius(inches(41.3), inches(19.3))?;
    /// assert!((rolling.revolutions_per_mile() - 501.44).abs() < 0.01);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn from_loaded_radius(diameter: Length, loaded_radius: Length) -> Result<Self, OutOfRange> {
        let (d, r) = (units::in_mm(diameter), units::in_mm(loaded_radius));
        let free = d / 2.0;
        OutOfRange::check("static loaded radius", r, "mm", 0.75 * free, free)?;
        let c = core::f64::consts::PI * (d - DEFLECTION_SHARE * (free - r));
        let rolling = Self::from_circumference(Toleranced::within(units::mm(c), units::mm(0.015 * c)))?;
        Ok(Self { citation: Citation::ROLLING_BY_LOADED_RADIUS, ..rolling })
    }

    /// Rolling circumference at 60 km/h: of a size, `3.05·D` radial, `2.99·D` otherwise (ETRTO, as a
    /// secondary text has it).
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
    /// let rolling = beadseat::tire::TireSize::parse("205/55R16")?.rolling().ok_or("not known")?;
    /// assert_eq!(rolling.revolutions_per_km().round(), 519.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn revolutions_per_km(&self) -> f64 {
        1e6 / units::in_mm(self.circumference.nominal())
    }

    /// Turns a mile at 60 km/h, as US data books print it.
    ///
    /// ```
    /// let rolling = beadseat::tire::TireSize::parse("205/55R16")?.rolling().ok_or("not known")?;
    /// assert_eq!(rolling.revolutions_per_mile().round(), 835.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn revolutions_per_mile(&self) -> f64 {
        self.revolutions_per_km() * 1.609_344
    }

    /// The effective rolling radius `C/2π`: between the free and the loaded radius.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::mm};
    /// let size = TireSize::parse("205/55R16")?;
    /// let radius = size.rolling().ok_or("not known")?.effective_radius().nominal();
    /// assert!(radius < size.overall_diameter().ok_or("not known")?.nominal() / 2.0);
    /// assert!(radius > size.loaded_radius_estimate().ok_or("not known")?.max());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn effective_radius(&self) -> Toleranced<Length> {
        self.circumference * (0.5 / core::f64::consts::PI)
    }

    /// How often the wheel turns at a speed, by the circumference at 60 km/h.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::kmh, uom::si::frequency::hertz};
    /// let rolling = TireSize::parse("205/55R16")?.rolling().ok_or("not known")?;
    /// assert!((rolling.turns_at(kmh(100.0)).get::<hertz>() - 14.41).abs() < 0.01);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn turns_at(&self, speed: Velocity) -> Frequency {
        speed / self.circumference.nominal()
    }

    /// The nominal circumference as a share of another's: `x` of the speedometer, odometer and gearing.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::percent};
    /// let (old, new) = (TireSize::parse("205/55R16")?, TireSize::parse("225/50R17")?);
    /// assert!(new.rolling().ok_or("not known")?.relative_to(&old.rolling().ok_or("not known")?) > percent(103.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn relative_to(&self, original: &Self) -> Ratio {
        self.circumference.nominal() / original.circumference.nominal()
    }

    /// The source of [`Rolling::circumference`].
    ///
    /// ```
    /// let rolling = beadseat::tire::TireSize::parse("205/55R16")?.rolling().ok_or("not known")?;
    /// assert_eq!(rolling.citation(), beadseat::Citation::ROLLING_CIRCUMFERENCE);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn citation(&self) -> Citation {
        self.citation
    }
}

impl TireSize {
    /// How far the tire rolls in a turn; `None` where its [diameter](TireSize::overall_diameter) is not known.
    pub fn rolling(&self) -> Option<Rolling> {
        let factor = match self.structure() {
            Structure::Radial => 3.05,
            Structure::Diagonal | Structure::BiasBelted => 2.99,
        };
        Some(Rolling {
            circumference: self.overall_diameter()? * factor,
            citation: Citation::ROLLING_CIRCUMFERENCE,
        })
    }
}
