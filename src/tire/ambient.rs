//! Cold pressure at another temperature and altitude.

use crate::units::{self, Length, Pressure, Temperature, in_celsius, in_kpa, in_meters};
use crate::{Citation, OutOfRange};

/// Gauge pressures that are read, kPa.
const MOST_KPA: f64 = 1200.0;

/// Pressure of the standard atmosphere at sea level, kPa.
const SEA_LEVEL_KPA: f64 = 101.325;

/// The pressure of the air around at an altitude, in the troposphere of the international standard
/// atmosphere: `101.325·(1 − 2.25577·10⁻⁵·h)^5.25588` kPa, `h` in metres.
///
/// # Errors
/// Outside −500 to 11 000 m.
///
/// ```
/// use beadseat::{tire::inflation::atmospheric_pressure, units::meters, uom::si::pressure::kilopascal};
/// assert_eq!(atmospheric_pressure(meters(0.0))?.get::<kilopascal>(), 101.325);
/// assert!((atmospheric_pressure(meters(1500.0))?.get::<kilopascal>() - 84.56).abs() < 0.01);
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
pub fn atmospheric_pressure(altitude: Length) -> Result<Pressure, OutOfRange> {
    let h = OutOfRange::check("altitude", in_meters(altitude), "m", -500.0, 11_000.0)?;
    Ok(units::kpa(SEA_LEVEL_KPA * libm::pow(1.0 - 2.255_77e-5 * h, 5.255_88)))
}

/// Where a tire is: the temperature of the air in it, and the altitude.
///
/// A *cold* tire has the temperature of its surroundings: it has stood for hours, or rolled no further
/// than to the pump. **Never bleed a hot tire**: the pressure it has gained by running belongs to it, and
/// it would be too soft when it has cooled.
///
/// ```
/// use beadseat::{tire::inflation::Ambient, units::{celsius, kpa, meters}, uom::si::pressure::kilopascal};
/// let garage = Ambient::at_sea_level(celsius(20.0))?;
/// let winter = Ambient::at_sea_level(celsius(-10.0))?;
/// // What 230 kPa set in the garage will read outdoors …
/// let outdoors = garage.pressure_on_moving_to(&winter, kpa(230.0))?;
/// assert!((outdoors.get::<kilopascal>() - 196.1).abs() < 0.1);
/// // … and what to set in the garage so that it reads 230 kPa there.
/// let to_set = winter.pressure_on_moving_to(&garage, kpa(230.0))?;
/// assert!((to_set.get::<kilopascal>() - 267.8).abs() < 0.1);
/// // A mountain road takes the counter-pressure away.
/// let pass = Ambient::new(celsius(20.0), meters(2000.0))?;
/// assert!(garage.pressure_on_moving_to(&pass, kpa(230.0))? > kpa(250.0));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ambient {
    temperature: Temperature,
    atmosphere: Pressure,
}

impl Ambient {
    /// At a temperature and altitude.
    ///
    /// # Errors
    /// Outside −60 to 150 °C, or −500 to 11 000 m.
    pub fn new(temperature: Temperature, altitude: Length) -> Result<Self, OutOfRange> {
        OutOfRange::check("temperature", in_celsius(temperature), "°C", -60.0, 150.0)?;
        Ok(Self { temperature, atmosphere: atmospheric_pressure(altitude)? })
    }

    /// At a temperature and sea level.
    ///
    /// # Errors
    /// Outside −60 to 150 °C.
    pub fn at_sea_level(temperature: Temperature) -> Result<Self, OutOfRange> {
        Self::new(temperature, units::meters(0.0))
    }

    /// The pressure of the air around.
    ///
    /// ```
    /// use beadseat::{tire::inflation::Ambient, units::{celsius, kpa}};
    /// assert_eq!(Ambient::at_sea_level(celsius(15.0))?.atmospheric_pressure(), kpa(101.325));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub const fn atmospheric_pressure(&self) -> Pressure {
        self.atmosphere
    }

    /// The gauge pressure that a tire set here will show there: `(p + pa)·T₂/T₁ − pa₂`, absolute
    /// temperatures, constant volume.
    ///
    /// # Errors
    /// For a pressure outside 0 to 1200 kPa.
    pub fn pressure_on_moving_to(&self, there: &Self, here_shown: Pressure) -> Result<Pressure, OutOfRange> {
        let gauge = OutOfRange::check("inflation pressure", in_kpa(here_shown), "kPa", 0.0, MOST_KPA)?;
        let warmer = there.temperature.value / self.temperature.value;
        Ok(units::kpa((gauge + in_kpa(self.atmosphere)) * warmer - in_kpa(there.atmosphere)))
    }

    /// The source of [`Ambient::pressure_on_moving_to`]; that of the air around is
    /// [`Citation::ATMOSPHERE`].
    pub const fn citation(&self) -> Citation {
        Citation::GAS_LAW
    }
}
