//! Physical quantities, and short constructors for the units of the trade.
//!
//! Whatever is computed is a [`uom`] quantity over `f64`; read it in the unit you want with `get`. A
//! stamped size never lives in one: it is kept exactly by the type that read it.
//!
//! ```
//! use beadseat::units::{inches, mm, psi};
//! use beadseat::uom::si::{length::millimeter, pressure::kilopascal};
//! assert!((inches(4.5).get::<millimeter>() - 114.3).abs() < 1e-9);
//! assert!((psi(36.0).get::<kilopascal>() - 248.211).abs() < 1e-3);
//! assert!(mm(205.0) < inches(8.1));
//! ```

use core::marker::PhantomData;

pub use uom::si::f64::ThermodynamicTemperature as Temperature;
pub use uom::si::f64::{
    Angle, Area, Energy, Force, Frequency, Length, Mass, MassDensity, MomentOfInertia, Pressure, Ratio, Time,
    Torque, Velocity,
};

/// A force for each unit of length. `uom` names no unit of it: multiply it by a length and read the force,
/// as [`n_per_mm`] shows.
pub type Stiffness = uom::si::f64::RadiantExposure;

/// A force on each unit of area inside a part: the same quantity as a pressure.
pub type Stress = Pressure;

macro_rules! unit {
    ($(#[$doc:meta])* $name:ident, $read:ident: $quantity:ident = $value:ident => $si:expr, $si_value:ident => $back:expr) => {
        $(#[$doc])*
        pub const fn $name($value: f64) -> $quantity {
            $quantity { dimension: PhantomData, units: PhantomData, value: $si }
        }
        #[doc = concat!(
            "The number of a quantity in the unit of [`", stringify!($name), "`].\n\n```\nuse beadseat::units::{",
            stringify!($name), ", ", stringify!($read), "};\nassert!((", stringify!($read), "(", stringify!($name),
            "(2.5)) - 2.5).abs() < 1e-12);\n```",
        )]
        pub const fn $read(quantity: $quantity) -> f64 {
            let $si_value = quantity.value;
            $back
        }
    };
}

unit! {
    /// A length in millimetres.
    ///
    /// ```
    /// use beadseat::{units::mm, uom::si::length::meter};
    /// assert_eq!(mm(1538.0).get::<meter>(), 1.538);
    /// ```
    mm, in_mm: Length = x => x / 1000.0, v => v * 1000.0
}
unit! {
    /// A length in metres, as of altitude.
    ///
    /// ```
    /// use beadseat::{units::meters, uom::si::length::kilometer};
    /// assert_eq!(meters(1500.0).get::<kilometer>(), 1.5);
    /// ```
    meters, in_meters: Length = x => x, v => v
}
unit! {
    /// An area in square millimetres.
    ///
    /// ```
    /// use beadseat::{units::mm2, uom::si::area::square_centimeter};
    /// assert!((mm2(250.0).get::<square_centimeter>() - 2.5).abs() < 1e-12);
    /// ```
    mm2, in_mm2: Area = x => x / 1e6, v => v * 1e6
}
unit! {
    /// A length in inches; 1 in is 25.4 mm exactly.
    ///
    /// ```
    /// use beadseat::{units::inches, uom::si::length::meter};
    /// assert_eq!(inches(10.0).get::<meter>(), 0.254);
    /// ```
    inches, in_inches: Length = x => x * 25.4 / 1000.0, v => v * 1000.0 / 25.4
}
unit! {
    /// A gauge pressure in kilopascals.
    ///
    /// ```
    /// use beadseat::units::{bar, kpa};
    /// assert_eq!(kpa(250.0), bar(2.5));
    /// ```
    kpa, in_kpa: Pressure = x => x * 1000.0, v => v / 1000.0
}
unit! {
    /// A gauge pressure in bar; 1 bar is 100 kPa.
    ///
    /// ```
    /// use beadseat::{units::bar, uom::si::pressure::kilopascal};
    /// assert_eq!(bar(2.9).get::<kilopascal>(), 290.0);
    /// ```
    bar, in_bar: Pressure = x => x * 100_000.0, v => v / 100_000.0
}
unit! {
    /// A gauge pressure in pounds a square inch; 1 psi is 6.894 757 293 168 kPa.
    ///
    /// ```
    /// use beadseat::{units::psi, uom::si::pressure::kilopascal};
    /// assert!((psi(80.0).get::<kilopascal>() - 551.58).abs() < 0.01);
    /// ```
    psi, in_psi: Pressure = x => x * 6_894.757_293_168, v => v / 6_894.757_293_168
}
unit! {
    /// A speed in kilometres an hour.
    ///
    /// ```
    /// use beadseat::{units::kmh, uom::si::velocity::meter_per_second};
    /// assert_eq!(kmh(36.0).get::<meter_per_second>(), 10.0);
    /// ```
    kmh, in_kmh: Velocity = x => x / 3.6, v => v * 3.6
}
unit! {
    /// A speed in miles an hour; 1 mph is 1.609 344 km/h exactly.
    ///
    /// ```
    /// use beadseat::{units::mph, uom::si::velocity::kilometer_per_hour};
    /// assert!((mph(100.0).get::<kilometer_per_hour>() - 160.9344).abs() < 1e-9);
    /// ```
    mph, in_mph: Velocity = x => x * 0.447_04, v => v / 0.447_04
}
unit! {
    /// A mass in kilograms. The trade calls it a load, and so do we.
    ///
    /// ```
    /// use beadseat::{units::kg, uom::si::mass::gram};
    /// assert_eq!(kg(0.5).get::<gram>(), 500.0);
    /// ```
    kg, in_kg: Mass = x => x, v => v
}
unit! {
    /// A mass in pounds; 1 lb is 0.453 592 37 kg exactly.
    ///
    /// ```
    /// use beadseat::{units::lb, uom::si::mass::kilogram};
    /// assert_eq!(lb(100.0).get::<kilogram>(), 45.359237);
    /// ```
    lb, in_lb: Mass = x => x * 0.453_592_37, v => v / 0.453_592_37
}
unit! {
    /// A torque in newton metres.
    ///
    /// ```
    /// use beadseat::{units::nm, uom::si::torque::newton_meter};
    /// assert_eq!(nm(120.0).get::<newton_meter>(), 120.0);
    /// ```
    nm, in_nm: Torque = x => x, v => v
}
unit! {
    /// A torque in pound-force feet; 1 lbf·ft is 1.355 817 948 331 4 N·m.
    ///
    /// ```
    /// use beadseat::{units::lbf_ft, uom::si::torque::newton_meter};
    /// assert!((lbf_ft(100.0).get::<newton_meter>() - 135.581795).abs() < 1e-6);
    /// ```
    lbf_ft, in_lbf_ft: Torque = x => x * 1.355_817_948_331_4, v => v / 1.355_817_948_331_4
}
unit! {
    /// A force in newtons.
    ///
    /// ```
    /// use beadseat::units::{kilonewtons, newtons};
    /// assert_eq!(newtons(40_000.0), kilonewtons(40.0));
    /// ```
    newtons, in_newtons: Force = x => x, v => v
}
unit! {
    /// A force in kilonewtons, as of clamp loads.
    ///
    /// ```
    /// use beadseat::{units::kilonewtons, uom::si::force::newton};
    /// assert_eq!(kilonewtons(72.5).get::<newton>(), 72_500.0);
    /// ```
    kilonewtons, in_kilonewtons: Force = x => x * 1000.0, v => v / 1000.0
}
unit! {
    /// A stress in megapascals, which are newtons a square millimetre.
    ///
    /// ```
    /// use beadseat::{units::{megapascals, mm2}, uom::si::force::newton};
    /// assert!(((megapascals(830.0) * mm2(100.0)).get::<newton>() - 83_000.0).abs() < 1e-9);
    /// ```
    megapascals, in_megapascals: Stress = x => x * 1e6, v => v / 1e6
}
unit! {
    /// A stress in thousands of pounds a square inch; 1 ksi is 6.894 757 293 168 MPa.
    ///
    /// ```
    /// use beadseat::{units::ksi, uom::si::pressure::megapascal};
    /// assert!((ksi(120.0).get::<megapascal>() - 827.371).abs() < 1e-3);
    /// ```
    ksi, in_ksi: Stress = x => x * 6_894_757.293_168, v => v / 6_894_757.293_168
}
unit! {
    /// A stiffness in newtons a millimetre.
    ///
    /// ```
    /// use beadseat::{units::{mm, n_per_mm}, uom::si::force::newton};
    /// assert!(((n_per_mm(256.0) * mm(10.0)).get::<newton>() - 2560.0).abs() < 1e-9);
    /// ```
    n_per_mm, in_n_per_mm: Stiffness = x => x * 1000.0, v => v / 1000.0
}
unit! {
    /// A rate of turning in turns a minute.
    ///
    /// ```
    /// use beadseat::{units::rpm, uom::si::frequency::hertz};
    /// assert_eq!(rpm(3000.0).get::<hertz>(), 50.0);
    /// ```
    rpm, in_rpm: Frequency = x => x / 60.0, v => v * 60.0
}
unit! {
    /// A temperature in degrees Celsius.
    ///
    /// ```
    /// use beadseat::{units::celsius, uom::si::thermodynamic_temperature::kelvin};
    /// assert_eq!(celsius(20.0).get::<kelvin>(), 293.15);
    /// ```
    celsius, in_celsius: Temperature = x => x + 273.15, v => v - 273.15
}
unit! {
    /// A temperature in degrees Fahrenheit; 32 °F is 0 °C, and 1 °F is 5/9 K.
    ///
    /// ```
    /// use beadseat::{units::fahrenheit, uom::si::thermodynamic_temperature::kelvin};
    /// assert!((fahrenheit(68.0).get::<kelvin>() - 293.15).abs() < 1e-9);
    /// ```
    fahrenheit, in_fahrenheit: Temperature = x => (x - 32.0) / 1.8 + 273.15, v => (v - 273.15) * 1.8 + 32.0
}
unit! {
    /// An angle in degrees.
    ///
    /// ```
    /// use beadseat::{units::deg, uom::si::angle::radian};
    /// assert!((deg(180.0).get::<radian>() - core::f64::consts::PI).abs() < 1e-12);
    /// ```
    deg, in_deg: Angle = x => x.to_radians(), v => v.to_degrees()
}
unit! {
    /// An angle in radians.
    ///
    /// ```
    /// use beadseat::units::{deg, rad};
    /// assert!((rad(core::f64::consts::PI) - deg(180.0)).abs() < deg(1e-12));
    /// ```
    rad, in_rad: Angle = x => x, v => v
}
unit! {
    /// A time in years of the Gregorian calendar: 365.2425 days.
    ///
    /// ```
    /// use beadseat::{units::years, uom::si::time::day};
    /// assert!((years(4.0).get::<day>() - 1460.97).abs() < 1e-9);
    /// ```
    years, in_years: Time = x => x * 31_556_952.0, v => v / 31_556_952.0
}
unit! {
    /// A share of a hundred.
    ///
    /// ```
    /// use beadseat::{units::percent, uom::si::ratio::ratio};
    /// assert_eq!(percent(94.0).get::<ratio>(), 0.94);
    /// ```
    percent, in_percent: Ratio = x => x / 100.0, v => v * 100.0
}
unit! {
    /// A bare ratio, without a unit.
    ///
    /// ```
    /// use beadseat::units::{percent, ratio};
    /// assert_eq!(ratio(0.5), percent(50.0));
    /// ```
    ratio, in_ratio: Ratio = x => x, v => v
}
unit! {
    /// A moment of inertia in kilogram square metres.
    ///
    /// ```
    /// use beadseat::{units::kg_m2, uom::si::moment_of_inertia::kilogram_square_meter};
    /// assert_eq!(kg_m2(0.9).get::<kilogram_square_meter>(), 0.9);
    /// ```
    kg_m2, in_kg_m2: MomentOfInertia = x => x, v => v
}
unit! {
    /// A density in kilograms a cubic metre.
    ///
    /// ```
    /// use beadseat::{units::kg_per_m3, uom::si::mass_density::gram_per_cubic_centimeter};
    /// assert!((kg_per_m3(2700.0).get::<gram_per_cubic_centimeter>() - 2.7).abs() < 1e-12);
    /// ```
    kg_per_m3, in_kg_per_m3: MassDensity = x => x, v => v
}

/// Standard acceleration of free fall, m/s², exact by definition.
pub(crate) const FREE_FALL: f64 = 9.806_65;

/// A quantity of any kind from its value in the SI base unit, as it was stored.
pub(crate) const fn base<D: uom::si::Dimension + ?Sized>(
    value: f64,
) -> uom::si::Quantity<D, uom::si::SI<f64>, f64> {
    uom::si::Quantity { dimension: PhantomData, units: PhantomData, value }
}

/// Why a quantity was refused: what it was for, its value, and what would have been accepted.
///
/// ```
/// use beadseat::units::kpa;
/// let tire: beadseat::tire::Tire = "205/55R16 91V".parse()?;
/// let error = tire.load_capacity(kpa(90.0)).unwrap_err();
/// assert_eq!(error.to_string(), "inflation pressure 90 kPa is not in 150 to 1200 kPa");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    pub(crate) what: &'static str,
    pub(crate) value: f64,
    pub(crate) unit: &'static str,
    pub(crate) least: f64,
    pub(crate) most: f64,
}

impl core::fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let Self { what, value, least, most, .. } = self;
        let unit = Behind(self.unit);
        write!(f, "{what} {value}{unit} is not in {least} to {most}{unit}")
    }
}

impl core::error::Error for OutOfRange {}

/// A unit behind a number; a count has none.
struct Behind<'a>(&'a str);

impl core::fmt::Display for Behind<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        if self.0.is_empty() { Ok(()) } else { write!(f, " {}", self.0) }
    }
}

impl OutOfRange {
    /// What the quantity was for.
    pub const fn what(&self) -> &'static str {
        self.what
    }

    /// `value` if it lies in the closed range, and a bound if only the conversion of units put it beyond;
    /// not if it is not a number.
    pub(crate) fn check(
        what: &'static str,
        value: f64,
        unit: &'static str,
        least: f64,
        most: f64,
    ) -> Result<f64, Self> {
        if at_most(least, value) && at_most(value, most) {
            Ok(value.max(least).min(most))
        } else {
            Err(Self { what, value, unit, least, most })
        }
    }
}

/// `value <= bound`, but for what the conversion of units may have rounded: 240 km/h made into metres a
/// second and back is 240.000 000 000 000 03 km/h.
pub(crate) fn at_most(value: f64, bound: f64) -> bool {
    const ROUND_OFF: f64 = 1e-12;
    value <= bound + ROUND_OFF * bound.abs()
}
