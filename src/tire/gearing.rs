//! Engine speed, road speed and axle ratio.

use super::Rolling;
use crate::units::{self, Frequency, Ratio, Velocity, in_kmh, in_mm, in_ratio, in_rpm};
use crate::{Citation, OutOfRange};

/// The ratios between engine and driven wheels, and the slip of the tire.
///
/// `v = 0.06·n·C·(1 − s)/(ig·ia)`: `v` in km/h, `n` in turns a minute, `C` the rolling circumference in
/// metres, `ig` and `ia` the ratios of gear and axle, `s` the slip. Source: Crolla (ed.) 2009, p. 296.
///
/// ```
/// use beadseat::{tire::{rolling::Gearing, TireSize}, units::{kmh, percent, ratio, rpm}};
/// let fifth = Gearing::new(ratio(0.85), ratio(3.94))?.with_slip(percent(2.0))?;
/// let rolling = TireSize::parse("205/55R16")?.rolling().ok_or("not known")?;
/// let n = fifth.engine_speed(&rolling, kmh(100.0));
/// assert!(n > rpm(2950.0) && n < rpm(2960.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gearing {
    gear: f64,
    axle: f64,
    slip: f64,
}

impl Gearing {
    /// A gear and an axle ratio: engine turns for each turn of the wheel, as their product.
    ///
    /// # Errors
    /// Outside 0.1 to 100 each.
    pub fn new(gear: Ratio, axle: Ratio) -> Result<Self, OutOfRange> {
        let gear = OutOfRange::check("gear ratio", in_ratio(gear), "", 0.1, 100.0)?;
        let axle = OutOfRange::check("axle ratio", in_ratio(axle), "", 0.1, 100.0)?;
        Ok(Self { gear, axle, slip: 0.0 })
    }

    /// With a slip of the driven tires: 2 % is usual in a high gear, more in a low one.
    ///
    /// # Errors
    /// Outside 0 to 50 %.
    pub fn with_slip(mut self, slip: Ratio) -> Result<Self, OutOfRange> {
        self.slip = OutOfRange::check("slip", units::in_percent(slip), "%", 0.0, 50.0)? / 100.0;
        Ok(self)
    }

    /// Metres on the road for each turn of the engine.
    fn advance(&self, rolling: &Rolling) -> f64 {
        in_mm(rolling.circumference().nominal()) / 1000.0 * (1.0 - self.slip) / (self.gear * self.axle)
    }

    /// The engine speed at a road speed.
    pub fn engine_speed(&self, rolling: &Rolling, speed: Velocity) -> Frequency {
        units::rpm(in_kmh(speed) / (0.06 * self.advance(rolling)))
    }

    /// The road speed at an engine speed.
    ///
    /// ```
    /// use beadseat::{tire::{rolling::Gearing, TireSize}, units::{kmh, ratio, rpm}};
    /// let first = Gearing::new(ratio(3.5), ratio(3.94))?;
    /// let v = first.road_speed(&TireSize::parse("205/55R16")?.rolling().ok_or("not known")?, rpm(6000.0));
    /// assert!(v > kmh(50.0) && v < kmh(51.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn road_speed(&self, rolling: &Rolling, engine_speed: Frequency) -> Velocity {
        units::kmh(0.06 * in_rpm(engine_speed) * self.advance(rolling))
    }

    /// The source of the formula.
    pub const fn citation(&self) -> Citation {
        Citation::ENGINE_SPEED
    }
}

/// The axle ratio that would have the original gearing's effect: what larger tires do to it. `change` is
/// [`Rolling::relative_to`].
///
/// ```
/// use beadseat::{tire::rolling::effective_axle_ratio, units::ratio};
/// let felt = effective_axle_ratio(ratio(3.73), ratio(33.0 / 29.0));
/// assert!((felt.value - 3.278).abs() < 0.001);
/// ```
pub fn effective_axle_ratio(axle: Ratio, change: Ratio) -> Ratio {
    axle / change
}

/// The axle ratio that restores the original gearing on the new tires. `change` is
/// [`Rolling::relative_to`].
///
/// ```
/// use beadseat::{tire::rolling::axle_ratio_to_restore, units::ratio};
/// let to_fit = axle_ratio_to_restore(ratio(3.73), ratio(33.0 / 29.0));
/// assert!((to_fit.value - 4.244).abs() < 0.001);
/// ```
pub fn axle_ratio_to_restore(axle: Ratio, change: Ratio) -> Ratio {
    axle * change
}
