//! The scrub radius, and what other wheels do to it.

use crate::units::{Angle, Length, in_deg};
use crate::{Citation, OutOfRange};

/// How the steering axis and the wheel lean, seen from the front: what the scrub radius follows from.
///
/// The *scrub radius* is the distance at the ground from the steering axis to the middle of the contact
/// patch, positive outboard. The wheel steers and pulls about it.
///
/// ```
/// use beadseat::{units::{deg, mm}, wheel::position::SteeringGeometry};
/// let lean = SteeringGeometry::new(deg(13.0), deg(0.0))?;
/// // The rim 15 mm further out, the hub no higher.
/// assert!((lean.scrub_change(mm(15.0), mm(0.0)) - mm(15.0)).abs() < mm(1e-9));
/// // The same wheel on a larger tire: the axis meets the ground further out.
/// assert!(lean.scrub_change(mm(0.0), mm(12.0)) < mm(-2.7));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteeringGeometry {
    inclination: Angle,
    camber: Angle,
}

impl SteeringGeometry {
    /// Of a kingpin inclination, top inboard, and a camber, top outboard.
    ///
    /// # Errors
    /// Outside −5° to 30°, and ± 15°.
    pub fn new(kingpin_inclination: Angle, camber: Angle) -> Result<Self, OutOfRange> {
        OutOfRange::check("kingpin inclination", in_deg(kingpin_inclination), "deg", -5.0, 30.0)?;
        OutOfRange::check("camber", in_deg(camber), "deg", -15.0, 15.0)?;
        Ok(Self { inclination: kingpin_inclination, camber })
    }

    /// `tan σ + tan γ`: how much further out the axis meets the ground, for each millimetre of hub height.
    fn slope(&self) -> f64 {
        libm::tan(self.inclination.value) + libm::tan(self.camber.value)
    }

    /// The change of the scrub radius, `d·cos(γ + σ)/cos σ − Δh·(tan σ + tan γ)`, when the middle of the rim
    /// moves outboard by `d` along the spindle and the hub rises by `Δh`, which is the growth of the loaded
    /// radius.
    pub fn scrub_change(&self, centre_move: Length, rise: Length) -> Length {
        let (sigma, gamma) = (self.inclination.value, self.camber.value);
        centre_move * (libm::cos(gamma + sigma) / libm::cos(sigma)) - rise * self.slope()
    }

    /// The scrub radius, `c − h·(tan σ + tan γ)`, from what can be measured at the hub: how far outboard of
    /// the steering axis the middle of the rim is, level with the hub, and how high the hub is.
    ///
    /// ```
    /// use beadseat::{units::{deg, mm}, wheel::position::SteeringGeometry};
    /// let lean = SteeringGeometry::new(deg(9.0), deg(0.0))?;
    /// assert!((lean.scrub_radius(mm(110.0), mm(350.0)) - mm(54.565)).abs() < mm(0.001));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn scrub_radius(&self, hub_distance: Length, hub_height: Length) -> Length {
        hub_distance - hub_height * self.slope()
    }

    /// The source of the formulas.
    pub const fn citation(&self) -> Citation {
        Citation::SCRUB
    }
}
