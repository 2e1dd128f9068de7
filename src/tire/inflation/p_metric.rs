//! The load of a P-metric tire from its dimensions.

use crate::tire::{LoadIndex, Metric, inflation::InflationModel};
use crate::units::{self, Mass, Pressure, in_kg, in_kpa};
use crate::{Citation, OutOfRange};

/// The load of a standard-load P-metric size by an engineer's published reconstruction of the TRA
/// formula, a general guide only: `L = 6.67·10⁻⁵·P^0.5·Sd^1.39·(Dr + Sd)` in kg, kPa and mm.
///
/// `Sd = (0.34848 + 0.6497·A)·S70`, `A` the aspect ratio as a fraction, `S70` the section width on a rim
/// of 70 % of it, `Dr` the nominal rim diameter. What is molded on the tire overrides it, and its exponent
/// asks for less pressure than the [law](super::InflationModel::PMetric) that a tire is judged by.
///
/// ```
/// use beadseat::{tire::{LoadIndex, TireSize}, units::kpa, uom::si::mass::kilogram};
/// let TireSize::Metric(size) = TireSize::parse("P225/60R16")? else { unreachable!() };
/// let formula = size.p_metric_formula().ok_or("not a P-metric size it is made for")?;
/// assert!((formula.load_at(kpa(240.0))?.get::<kilogram>() - 721.26).abs() < 0.01);
/// assert_eq!(formula.load_index(), LoadIndex::new(97));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PMetricFormula {
    /// kg at 1 kPa.
    factor: f64,
}

/// The pressures the formula is used at, kPa: the floor is that of the law beside it.
const LEAST_KPA: f64 = 150.0;
const REFERENCE_KPA: f64 = 240.0;

/// From here up the nominal width is that on a rim of 70 % of it.
const LEAST_ASPECT: u8 = 50;

impl PMetricFormula {
    /// The load at a cold pressure.
    ///
    /// # Errors
    /// Outside 150 to 240 kPa.
    pub fn load_at(&self, pressure: Pressure) -> Result<Mass, OutOfRange> {
        let kpa = OutOfRange::check("inflation pressure", in_kpa(pressure), "kPa", LEAST_KPA, REFERENCE_KPA)?;
        Ok(units::kg(self.factor * libm::sqrt(kpa)))
    }

    /// The least cold pressure for a load; never below 150 kPa.
    ///
    /// # Errors
    /// For a load above that at 240 kPa, or not above zero.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::{kg, kpa}};
    /// let TireSize::Metric(size) = TireSize::parse("P225/60R16")? else { unreachable!() };
    /// let formula = size.p_metric_formula().ok_or("not a P-metric size it is made for")?;
    /// assert!(formula.pressure_for(kg(690.0))? < kpa(220.0));
    /// assert!(formula.pressure_for(kg(722.0)).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn pressure_for(&self, load: Mass) -> Result<Pressure, OutOfRange> {
        let most = self.factor * libm::sqrt(REFERENCE_KPA);
        let root = OutOfRange::check("load", in_kg(load), "kg", f64::MIN_POSITIVE, most)? / self.factor;
        Ok(units::kpa((root * root).max(LEAST_KPA)))
    }

    /// The load index whose load is nearest to that at 240 kPa.
    pub fn load_index(&self) -> Option<LoadIndex> {
        let load = self.factor * libm::sqrt(REFERENCE_KPA);
        let above = LoadIndex::min_for(units::kg(load))?;
        let below = above.number().checked_sub(1).and_then(LoadIndex::new);
        Some(match below {
            Some(below) if load - in_kg(below.load()) < in_kg(above.load()) - load => below,
            _ => above,
        })
    }

    /// The source of the formula.
    pub const fn citation(&self) -> Citation {
        Citation::LOAD_AT_PRESSURE_P_FORMULA
    }
}

impl Metric {
    /// The published load formula for this size; `None` but for P-metric sizes of aspect ratio 50 and
    /// more, whose nominal width is the one the formula asks for.
    ///
    /// ```
    /// use beadseat::tire::Metric;
    /// assert!(Metric::parse("P215/65R15")?.p_metric_formula().is_some());
    /// assert!(Metric::parse("P245/45R17")?.p_metric_formula().is_none());
    /// assert!(Metric::parse("215/65R15")?.p_metric_formula().is_none());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn p_metric_formula(&self) -> Option<PMetricFormula> {
        let has_formula = self.class().rules().laws.contains(&InflationModel::PMetricFormula);
        if !has_formula || self.aspect_ratio() < LEAST_ASPECT {
            return None;
        }
        let aspect = f64::from(self.aspect_ratio()) / 100.0;
        let rim = f64::from(self.rim_diameter().whole_mm());
        Some(PMetricFormula { factor: at_one_kpa(aspect, f64::from(self.width_mm()), rim) })
    }
}

/// The load at 1 kPa, in kg, of an aspect ratio as a fraction, a width and a rim diameter in mm.
pub(super) fn at_one_kpa(aspect: f64, width: f64, rim: f64) -> f64 {
    let sd = (0.348_48 + 0.6497 * aspect) * width;
    6.67e-5 * libm::pow(sd, 1.39) * (rim + sd)
}
