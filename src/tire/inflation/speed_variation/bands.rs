//! The US practice for radial truck tires: loads by bands of speed, each with more pressure.

use crate::record::words;
use crate::units::{self, Pressure, Ratio, Velocity, at_most};
use crate::{Citation, OutOfRange};

words! {
    /// Which radial truck sizes a column of the table is for.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::inflation::TruckSizes::Conventional.name(), "conventional");
    /// ```
    TruckSizes {
        /// Sizes with an aspect ratio (`295/75R22.5`), and wide base.
        MetricAndWideBase = "metric_and_wide_base",
        /// Sizes by inches (`11R22.5`, `10.00R20`) that are not wide base.
        Conventional = "conventional",
    }
}

/// What a radial truck tire may carry in a band of speed, and how much more pressure it then needs.
///
/// The bands are of whole miles an hour; what lies between two of them belongs to the faster, which allows
/// less. They allow more than the load index at low speed, and less above the rating of a tire for 65 mph.
/// Ask only where the tire's maker and the wheel's allow it: nothing applies them by itself. From memory of
/// a TRA table that makers' data books reprint; above 65 mph with doubt.
///
/// ```
/// use beadseat::tire::inflation::{TruckSizes, TruckSpeedBand};
/// use beadseat::units::{mph, percent, psi};
/// let yard = TruckSpeedBand::at(TruckSizes::Conventional, mph(15.0))?;
/// assert_eq!((yard.load_share(), yard.pressure_increase()), (percent(132.0), psi(15.0)));
/// assert!(TruckSpeedBand::at(TruckSizes::Conventional, mph(51.0)).is_err());
/// assert!(yard.citation().is_from_memory());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct TruckSpeedBand {
    /// Tenths of a mile an hour.
    up_to: u16,
    /// Percent more than the load index.
    change: i16,
    psi: u8,
}

const fn band(up_to: u16, change: i16, psi: u8) -> TruckSpeedBand {
    TruckSpeedBand { up_to, change, psi }
}

/// Creep to 2.5, then 5, 10, 20, 30, 40 and 50 mph.
static METRIC_AND_WIDE_BASE: [TruckSpeedBand; 7] = [
    band(25, 55, 20),
    band(50, 45, 20),
    band(100, 25, 20),
    band(200, 17, 15),
    band(300, 12, 10),
    band(400, 9, 0),
    band(500, 7, 0),
];
static CONVENTIONAL: [TruckSpeedBand; 7] = [
    band(25, 115, 30),
    band(50, 85, 30),
    band(100, 60, 30),
    band(200, 32, 15),
    band(300, 24, 10),
    band(400, 16, 0),
    band(500, 9, 0),
];

/// From 65 mph, the rating, where nothing changes yet: up to 70 and 75 mph.
static FROM_65_MPH: [TruckSpeedBand; 3] = [band(650, 0, 0), band(700, -4, 5), band(750, -12, 5)];

impl TruckSpeedBand {
    /// The band of a speed up to 50 mph; a tire that barely moves creeps, and one that stands is
    /// [another matter](TruckSpeedBand::stationary).
    ///
    /// # Errors
    /// Below zero and above 50 mph.
    pub fn at(sizes: TruckSizes, speed: Velocity) -> Result<Self, OutOfRange> {
        let bands = match sizes {
            TruckSizes::MetricAndWideBase => &METRIC_AND_WIDE_BASE,
            TruckSizes::Conventional => &CONVENTIONAL,
        };
        Self::among(bands, 0.0, speed)
    }

    /// The band of a speed above 65 mph of a tire that is rated for 65 mph, at which it carries its load
    /// index. Remembered with doubt.
    ///
    /// # Errors
    /// Below 65 mph and above 75 mph.
    ///
    /// ```
    /// use beadseat::{tire::inflation::TruckSpeedBand, units::{mph, percent}};
    /// assert_eq!(TruckSpeedBand::above_65_mph(mph(70.0))?.load_share(), percent(96.0));
    /// assert!(TruckSpeedBand::above_65_mph(mph(76.0)).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn above_65_mph(speed: Velocity) -> Result<Self, OutOfRange> {
        Self::among(&FROM_65_MPH, 65.0, speed)
    }

    /// The first band that reaches to a speed.
    fn among<const BANDS: usize>(
        bands: &[Self; BANDS],
        least_mph: f64,
        speed: Velocity,
    ) -> Result<Self, OutOfRange> {
        let fastest = bands[BANDS - 1];
        let mph = OutOfRange::check("speed", units::in_mph(speed), "mph", least_mph, fastest.most_mph())?;
        Ok(*bands.iter().find(|band| at_most(mph, band.most_mph())).unwrap_or(&fastest))
    }

    fn most_mph(&self) -> f64 {
        f64::from(self.up_to) / 10.0
    }

    /// Creeping over a short way, as on a scale or a lift.
    ///
    /// ```
    /// use beadseat::{tire::inflation::{TruckSizes, TruckSpeedBand}, units::percent};
    /// let lift = TruckSpeedBand::short_move(TruckSizes::MetricAndWideBase);
    /// assert_eq!(lift.load_share(), percent(175.0));
    /// ```
    pub const fn short_move(sizes: TruckSizes) -> Self {
        match sizes {
            TruckSizes::MetricAndWideBase => band(25, 75, 30),
            TruckSizes::Conventional => band(25, 140, 40),
        }
    }

    /// The band of a truck that stands still.
    ///
    /// ```
    /// use beadseat::{tire::inflation::{TruckSizes, TruckSpeedBand}, units::{mph, percent}};
    /// let jacked = TruckSpeedBand::stationary(TruckSizes::Conventional);
    /// assert_eq!((jacked.load_share(), jacked.max_speed()), (percent(285.0), mph(0.0)));
    /// ```
    pub const fn stationary(sizes: TruckSizes) -> Self {
        match sizes {
            TruckSizes::MetricAndWideBase => band(0, 105, 30),
            TruckSizes::Conventional => band(0, 185, 40),
        }
    }

    /// The share of the load index.
    pub fn load_share(&self) -> Ratio {
        units::percent(f64::from(100 + self.change))
    }

    /// What goes on top of the cold pressure that the load would need at the tire's own speed; never above
    /// what wheel and tire permit.
    pub fn pressure_increase(&self) -> Pressure {
        units::psi(f64::from(self.psi))
    }

    /// The fastest of the band.
    pub fn max_speed(&self) -> Velocity {
        units::mph(self.most_mph())
    }

    /// The source of the band.
    pub const fn citation(&self) -> Citation {
        Citation::SPEED_VARIATION_TRUCK
    }
}
