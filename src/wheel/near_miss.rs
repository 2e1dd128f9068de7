//! What becomes of a wheel whose holes are not the hub's.

use super::BoltCircle;
use crate::units::Length;

/// A wheel on a hub with as many holes on another diameter.
///
/// However it is put on, it does not seat: in the middle, every hole is off by half the difference; with
/// one fastener seated, the wheel stands off centre by that half and runs out by the difference, and the
/// worst hole is off by about the whole of it. Bolts bend, seats are cut, the clamp load is lost. There is
/// no difference that is close enough. Source: geometry.
///
/// ```
/// use beadseat::{literal, units::mm, wheel::{BoltCircle, drilling::NearMiss}};
/// let miss = NearMiss::of(literal!(BoltCircle, "5x112"), literal!(BoltCircle, "5x114.3")).ok_or("other count")?;
/// assert!((miss.centred() - mm(1.15)).abs() < mm(1e-9));
/// assert!((miss.worst_hole() - mm(2.187430)).abs() < mm(1e-6));
/// assert!((miss.run_out() - mm(2.3)).abs() < mm(1e-9));
/// assert_eq!(NearMiss::of(literal!(BoltCircle, "5x112"), literal!(BoltCircle, "4x112")), None);
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NearMiss {
    count: u8,
    difference: Length,
}

impl NearMiss {
    /// Of a wheel and a hub; `None` if they have different numbers of holes, so that the wheel cannot even
    /// be put on.
    pub fn of(wheel: BoltCircle, hub: BoltCircle) -> Option<Self> {
        let difference = (wheel.diameter() - hub.diameter()).abs();
        (wheel.count() == hub.count()).then_some(Self { count: wheel.count(), difference })
    }

    /// The difference of the diameters.
    pub const fn difference(&self) -> Length {
        self.difference
    }

    /// How far every hole is off its fastener, radially, with the wheel in the middle of the hub.
    pub fn centred(&self) -> Length {
        self.difference / 2.0
    }

    /// How far the wheel stands off centre when one fastener is seated.
    ///
    /// ```
    /// use beadseat::{literal, units::mm, wheel::{BoltCircle, drilling::NearMiss}};
    /// let miss = NearMiss::of(literal!(BoltCircle, "4x98"), literal!(BoltCircle, "4x100")).ok_or("other count")?;
    /// assert!((miss.eccentricity() - mm(1.0)).abs() < mm(1e-9));
    /// # Ok::<(), &str>(())
    /// ```
    pub fn eccentricity(&self) -> Length {
        self.difference / 2.0
    }

    /// How far the wheel then runs out, high point to low point.
    pub fn run_out(&self) -> Length {
        self.difference
    }

    /// How far the worst hole is then off its fastener: the one furthest round, `Δ·sin(kπ/n)` with
    /// `k = ⌊n/2⌋`.
    pub fn worst_hole(&self) -> Length {
        let opposite = f64::from(self.count / 2) / f64::from(self.count);
        self.difference * libm::sin(core::f64::consts::PI * opposite)
    }

    /// How much the distance between neighbouring holes differs: what a caliper must be able to tell.
    ///
    /// ```
    /// use beadseat::{literal, units::mm, wheel::{BoltCircle, drilling::NearMiss}};
    /// let miss = NearMiss::of(literal!(BoltCircle, "5x114.3"), literal!(BoltCircle, "5x115")).ok_or("other count")?;
    /// assert!((miss.between_neighbours() - mm(0.411450)).abs() < mm(1e-6));
    /// # Ok::<(), &str>(())
    /// ```
    pub fn between_neighbours(&self) -> Length {
        self.difference * libm::sin(core::f64::consts::PI / f64::from(self.count))
    }
}
