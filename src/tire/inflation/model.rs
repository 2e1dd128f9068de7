//! The laws of load and pressure, each with the domain it holds in.

use crate::tire::LoadVersion;
use crate::units::{self, Angle, Pressure, Velocity, in_deg, in_kmh, in_kpa};
use crate::{Citation, OutOfRange};

/// No pressure above this is read, kPa.
pub(super) const MOST_KPA: f64 = 1200.0;

/// Which law relates load and pressure: `Q = Qref·(P/Pref)^n`.
///
/// | law | n | reference pressure | holds from | up to |
/// |---|---|---|---|---|
/// | `MetricPassenger` | 0.8 | 250 kPa; XL and HL 290 | 150 kPa | 160 km/h, 2° |
/// | `PMetric` | 0.8 | 240 kPa; XL 280 | 150 kPa | 160 km/h, 2° |
/// | `PMetricFormula` | 0.5 | 240 kPa; XL 280 | 150 kPa | 160 km/h, 2° |
/// | `LightTruck` | 0.7 | by load range | 240 kPa | |
/// | `Commercial` | 0.8 | stated | 150 kPa | |
/// | `Trailer` | | by load range | the reference pressure | |
/// | `Temporary` | | 420 kPa | 420 kPa, or the stated pressure | |
///
/// Where the table says nothing of speed and camber the source says nothing either.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum InflationModel {
    /// Metric passenger: exponent 0.8, from 150 kPa, up to 160 km/h and 2° of camber. Proved against
    /// every published cell of Crolla (ed.) 2009, Fig. 10.1-15. The HL reference pressure is from
    /// memory.
    MetricPassenger,
    /// P-metric: exponent 0.8 on the TRA reference pressure. The published formula has 0.5; 0.8 is the
    /// one that asks for more pressure. From memory.
    PMetric,
    /// P-metric by the exponent 0.5 of the published formula, for comparison: it asks for less pressure
    /// than [`InflationModel::PMetric`], so it is never chosen unasked.
    PMetricFormula,
    /// LT-metric: exponent 0.7, from 240 kPa, fitted to one published chart.
    LightTruck,
    /// Commercial and truck: exponent 0.8, from memory; the reference pressure must be stated.
    Commercial,
    /// Trailer tire, `ST`: its load index at the reference pressure of its load range, or at the pressure
    /// molded on it. No law below that pressure is known, so none is used.
    Trailer,
    /// Temporary spare, `T`: its load index at 420 kPa (from memory), or at the pressure molded on it. No
    /// law below that pressure is known, so none is used.
    Temporary,
}

/// Where a law of load and pressure holds. Outside it, it refuses to answer.
///
/// ```
/// use beadseat::{tire::inflation::InflationModel, units::{deg, kmh, kpa}};
/// let domain = InflationModel::MetricPassenger.domain();
/// assert!(domain.admits(kpa(220.0), kmh(160.0), deg(-2.0)).is_ok());
/// assert!(domain.admits(kpa(140.0), kmh(160.0), deg(0.0)).is_err());
/// assert!(domain.admits(kpa(220.0), kmh(190.0), deg(0.0)).is_err());
/// assert!(domain.admits(kpa(220.0), kmh(100.0), deg(2.5)).is_err());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InflationDomain {
    least: Pressure,
    top_speed: Option<Velocity>,
    most_camber: Option<Angle>,
}

impl InflationDomain {
    /// The same from another lowest pressure.
    pub(super) const fn starting_at(self, least: Pressure) -> Self {
        Self { least, ..self }
    }

    /// The lowest cold pressure.
    pub const fn min_pressure(&self) -> Pressure {
        self.least
    }

    /// The highest cold pressure that is read; above its reference pressure no tire carries more.
    pub const fn max_pressure(&self) -> Pressure {
        units::kpa(MOST_KPA)
    }

    /// The highest speed, where the source states one. A faster vehicle needs
    /// [`Tire::at_speed`](crate::tire::Tire::at_speed) too.
    pub const fn top_speed(&self) -> Option<Velocity> {
        self.top_speed
    }

    /// The greatest camber either way, where the source states one. More of it needs
    /// [`camber_load_factor`](crate::tire::inflation::camber_load_factor) too.
    pub const fn max_camber(&self) -> Option<Angle> {
        self.most_camber
    }

    /// Whether the law holds at a cold pressure, speed and camber.
    ///
    /// # Errors
    /// The first of them that lies outside.
    ///
    /// ```
    /// use beadseat::{tire::inflation::InflationModel, units::{deg, kmh, kpa}};
    /// let error = InflationModel::LightTruck.domain().admits(kpa(200.0), kmh(90.0), deg(0.0)).unwrap_err();
    /// assert_eq!(error.to_string(), "inflation pressure 200 kPa is not in 240 to 1200 kPa");
    /// ```
    pub fn admits(&self, pressure: Pressure, speed: Velocity, camber: Angle) -> Result<(), OutOfRange> {
        OutOfRange::check("inflation pressure", in_kpa(pressure), "kPa", in_kpa(self.least), MOST_KPA)?;
        let top = self.top_speed.map_or(f64::MAX, in_kmh);
        OutOfRange::check("speed", in_kmh(speed), "km/h", 0.0, top)?;
        let most = self.most_camber.map_or(90.0, in_deg);
        OutOfRange::check("camber", in_deg(camber), "deg", -most, most)?;
        Ok(())
    }
}

impl InflationModel {
    /// Every law of load and pressure here.
    ///
    /// ```
    /// use beadseat::tire::{inflation::InflationModel, SizeClass};
    /// let laws = InflationModel::ALL.iter().filter(|law| law.holds_for(SizeClass::PMetric));
    /// assert_eq!(laws.count(), 2);
    /// ```
    pub const ALL: &[Self] = &[
        Self::MetricPassenger,
        Self::PMetric,
        Self::PMetricFormula,
        Self::LightTruck,
        Self::Commercial,
        Self::Trailer,
        Self::Temporary,
    ];

    /// The share of the load index that a share of the reference pressure carries: `(P/Pref)^n`.
    pub(super) fn load_share(self, pressure_share: f64) -> f64 {
        match self {
            Self::PMetricFormula => libm::sqrt(pressure_share),
            Self::LightTruck => libm::pow(pressure_share, 0.7),
            Self::MetricPassenger | Self::PMetric | Self::Commercial | Self::Trailer | Self::Temporary => {
                libm::pow(pressure_share, 0.8)
            }
        }
    }

    /// The share of the reference pressure that carries a share of the load index: `(Q/Qref)^(1/n)`.
    pub(super) fn pressure_share(self, load_share: f64) -> f64 {
        match self {
            Self::PMetricFormula => load_share * load_share,
            Self::LightTruck => libm::pow(load_share, 1.0 / 0.7),
            // 1/0.8 is one and a quarter.
            Self::MetricPassenger | Self::PMetric | Self::Commercial | Self::Trailer | Self::Temporary => {
                load_share * libm::sqrt(libm::sqrt(load_share))
            }
        }
    }

    /// The load of a pressure and the pressure of a load as they are written, of reference load and pressure, what
    /// is asked, and the least pressure.
    pub(super) const fn forms(self) -> [&'static str; 2] {
        match self {
            Self::PMetricFormula => ["{0} × min(1, {2} / {1})^0.5", "max({1} × ({2} / {0})^(1 / 0.5), {3})"],
            Self::LightTruck => ["{0} × min(1, {2} / {1})^0.7", "max({1} × ({2} / {0})^(1 / 0.7), {3})"],
            Self::MetricPassenger | Self::PMetric | Self::Commercial | Self::Trailer | Self::Temporary => {
                ["{0} × min(1, {2} / {1})^0.8", "max({1} × ({2} / {0})^(1 / 0.8), {3})"]
            }
        }
    }

    /// The lowest pressure that the law knows of, kPa.
    pub(super) const fn floor_kpa(self) -> f64 {
        match self {
            Self::LightTruck => 240.0,
            _ => 150.0,
        }
    }

    /// Where the law holds.
    ///
    /// ```
    /// use beadseat::{tire::inflation::InflationModel, units::{kmh, kpa}};
    /// assert_eq!(InflationModel::PMetric.domain().top_speed(), Some(kmh(160.0)));
    /// assert_eq!(InflationModel::Temporary.domain().min_pressure(), kpa(420.0));
    /// ```
    pub const fn domain(self) -> InflationDomain {
        let (top_speed, most_camber) = match self {
            Self::MetricPassenger | Self::PMetric | Self::PMetricFormula => {
                (Some(units::kmh(160.0)), Some(units::deg(2.0)))
            }
            Self::LightTruck | Self::Commercial | Self::Trailer | Self::Temporary => (None, None),
        };
        let least = match self {
            Self::Temporary => TEMPORARY_KPA,
            Self::Trailer => LEAST_TRAILER_KPA,
            _ => self.floor_kpa(),
        };
        InflationDomain { least: units::kpa(least), top_speed, most_camber }
    }

    /// The reference pressure of a load version, where the law fixes it. Light truck and trailer tires have
    /// one for each [`LoadRange`](crate::tire::LoadRange), as a default; commercial tires none.
    ///
    /// ```
    /// use beadseat::{tire::{inflation::InflationModel, LoadVersion}, units::kpa};
    /// let metric = InflationModel::MetricPassenger;
    /// assert_eq!(metric.reference_pressure(None), Some(kpa(250.0)));
    /// assert_eq!(metric.reference_pressure(Some(LoadVersion::High)), Some(kpa(290.0)));
    /// assert_eq!(InflationModel::Temporary.reference_pressure(None), Some(kpa(420.0)));
    /// ```
    pub const fn reference_pressure(self, version: Option<LoadVersion>) -> Option<Pressure> {
        Some(units::kpa(match (self, version) {
            (Self::MetricPassenger, None) => 250.0,
            (Self::MetricPassenger, Some(LoadVersion::Extra | LoadVersion::High)) => 290.0,
            (Self::MetricPassenger, Some(LoadVersion::Light)) => return None,
            (Self::PMetric | Self::PMetricFormula, Some(LoadVersion::Extra)) => 280.0,
            (Self::PMetric | Self::PMetricFormula, _) => 240.0,
            (Self::Temporary, _) => TEMPORARY_KPA,
            (Self::LightTruck | Self::Commercial | Self::Trailer, _) => return None,
        }))
    }

    /// The source of [`InflationModel::reference_pressure`].
    pub(super) const fn reference_citation(self) -> Citation {
        match self {
            Self::Temporary => Citation::LOAD_AT_PRESSURE_TEMPORARY,
            _ => Citation::REFERENCE_PRESSURE,
        }
    }

    /// The source of the law.
    ///
    /// ```
    /// use beadseat::{Citation, tire::inflation::InflationModel};
    /// assert_eq!(InflationModel::MetricPassenger.citation(), Citation::LOAD_AT_PRESSURE);
    /// ```
    pub const fn citation(self) -> Citation {
        match self {
            Self::MetricPassenger => Citation::LOAD_AT_PRESSURE,
            Self::PMetric => Citation::LOAD_AT_PRESSURE_P,
            Self::PMetricFormula => Citation::LOAD_AT_PRESSURE_P_FORMULA,
            Self::LightTruck => Citation::LOAD_AT_PRESSURE_LT,
            Self::Commercial => Citation::LOAD_AT_PRESSURE_COMMERCIAL,
            Self::Trailer => Citation::LOAD_AT_PRESSURE_TRAILER,
            Self::Temporary => Citation::LOAD_AT_PRESSURE_TEMPORARY,
        }
    }
}

/// The reference pressure of the weakest trailer tires, load range B, kPa.
const LEAST_TRAILER_KPA: f64 = 240.0;

/// Pressure of a temporary spare, kPa: UN R30 and TRA practice, from memory.
const TEMPORARY_KPA: f64 = 420.0;
