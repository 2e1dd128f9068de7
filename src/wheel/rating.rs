//! What a wheel carries of an axle, against what it is rated for.

use crate::units::{self, Mass, Ratio, in_kg};
use crate::{Citation, Count, OutOfRange};

/// The static load on one wheel: an equal share of what its axle, or group of axles, carries.
///
/// The rating of a wheel, in kg or lb, is cast or stamped on it. Source of the rule: SAE J2530, a rating of
/// at least half the static load of the heaviest axle.
///
/// ```
/// use beadseat::{Count, units::{kg, percent}, wheel::WheelLoad};
/// let duals = WheelLoad::of_axle(kg(2000.0), Count::new(4).ok_or("count")?)?;
/// assert_eq!(duals.load(), kg(500.0));
/// assert!((duals.margin(kg(520.0)) - percent(4.0)).abs() < percent(1e-9));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelLoad(Mass);

impl WheelLoad {
    /// The load on each of the wheels that share an axle's greatest static load.
    ///
    /// # Errors
    /// Outside 10 to 60 000 kg.
    pub fn of_axle(axle: Mass, wheels: Count<16>) -> Result<Self, OutOfRange> {
        let axle = OutOfRange::check("axle load", in_kg(axle), "kg", 10.0, 60_000.0)?;
        Ok(Self(units::kg(axle / f64::from(wheels.get()))))
    }

    /// The load on one wheel.
    pub const fn load(&self) -> Mass {
        self.0
    }

    /// What a rating is above the load, as a share of the load; negative if the wheel is overloaded.
    ///
    /// ```
    /// use beadseat::{Count, units::{kg, ratio}, wheel::WheelLoad};
    /// let share = WheelLoad::of_axle(kg(1380.0), Count::new(2).ok_or("count")?)?;
    /// assert_eq!(share.margin(kg(690.0)), ratio(0.0));
    /// assert!(share.margin(kg(689.0)) < ratio(0.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn margin(&self, rating: Mass) -> Ratio {
        (rating - self.0) / self.0
    }

    /// The source of the rule.
    pub const fn citation(&self) -> Citation {
        Citation::WHEEL_RATING
    }
}
