//! What a drawing or a report says of a profile: its main dimensions, and how wide it is at each radius.

use super::Profile;
use crate::units::{self, Length, in_mm};

/// Its main dimensions.
///
/// ```
/// use beadseat::{sweep::{Profile, RimSection, TireSection}, units::mm};
/// let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
/// let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
/// assert_eq!(profile.rim_centre(), mm(-46.0));
/// assert_eq!((profile.section_width(), profile.overall_diameter()), (mm(214.0), mm(632.0)));
/// assert_eq!((profile.rim_width(), profile.barrel_radius()), (mm(188.0), mm(185.0)));
/// assert_eq!(profile.flange_radius(), mm(220.0));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
impl Profile {
    /// How far the middle of the rim is outboard of the hub face.
    pub const fn rim_centre(&self) -> Length {
        units::mm(self.centre)
    }

    /// The greatest width of the tire.
    pub fn section_width(&self) -> Length {
        units::mm(2.0 * (self.widest[0] + self.growth))
    }

    /// The diameter over the middle of the tread.
    pub fn overall_diameter(&self) -> Length {
        units::mm(2.0 * (self.tire.outside_radius + self.growth))
    }

    /// The width of the rim over its flanges.
    pub fn rim_width(&self) -> Length {
        units::mm(2.0 * (self.rim.half_width + self.growth))
    }

    /// The inside radius of the barrel.
    pub fn barrel_radius(&self) -> Length {
        units::mm(self.rim.bottom - self.growth)
    }

    /// The radius at which the tire leaves the flange.
    pub const fn flange_radius(&self) -> Length {
        units::mm(self.flange)
    }

    /// The radius at which the tire is widest.
    pub const fn widest_radius(&self) -> Length {
        units::mm(self.widest[1])
    }

    /// Half the width of what is at a radius, tire and rim; none inside the barrel and beyond the tread.
    ///
    /// ```
    /// use beadseat::{sweep::{Profile, RimSection, TireSection}, units::mm};
    /// let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
    /// let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
    /// let half = profile.half_width_at(mm(200.0)).ok_or("rim")?;
    /// assert!((half - mm(94.0)).abs() < mm(1e-6));
    /// assert_eq!(profile.half_width_at(mm(184.0)), None);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn half_width_at(&self, radius: Length) -> Option<Length> {
        let r = in_mm(radius);
        // Each part is convex and the same left and right, so that all of it is between two sides.
        let inside = |x: f64| self.reaches(self.centre + x, r).iter().any(|part| part.distance <= 1e-9);
        if r.is_nan() || !inside(0.0) {
            return None;
        }
        let (mut within, mut without) = (0.0, self.farthest() + self.centre.abs() + 1.0);
        for _ in 0..44 {
            let middle = 0.5 * (within + without);
            if inside(middle) { within = middle } else { without = middle }
        }
        Some(units::mm(within))
    }
}
