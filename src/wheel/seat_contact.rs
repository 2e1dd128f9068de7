//! Where a bolt head or nut rubs on its seat.

use super::Seat;
use crate::units::{self, Length, in_mm};
use crate::{Citation, OutOfRange};

/// The ring on which a bolt head or nut bears on the wheel, and the lever of its friction.
///
/// The friction of a seat acts at the mean radius `rm` of the contact. A cone or a ball also wedges: its
/// contact force is larger than the preload, which is the same as a longer lever:
///
/// | seat | lever `rb` |
/// |---|---|
/// | cone of included angle `A` | `rm/sin(A/2)`: twice `rm` at 60° |
/// | ball of radius `R` | `rm/√(1 − (rm/R)²)` |
/// | flat, shank (its washer face) | `rm` |
///
/// Derived from ISO 16047 and Shigley, *Mechanical Engineering Design*, from memory.
///
/// ```
/// use beadseat::{units::mm, wheel::{Seat, tightening::SeatContact}};
/// let cone = SeatContact::ring(Seat::Cone60, mm(13.0), mm(20.0))?;
/// assert!((cone.mean_radius() - mm(8.25)).abs() < mm(1e-9));
/// assert!((cone.friction_lever() - mm(16.5)).abs() < mm(1e-9));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeatContact {
    seat: Seat,
    mean_radius_mm: f64,
    lever_mm: f64,
}

/// Nearer than this share of its radius to its equator, a ball jams instead of sliding.
const MOST_OF_BALL: f64 = 0.99;

impl SeatContact {
    /// From the inner and outer diameter of the contact; its mean radius is half the mean of the two, which
    /// is right for faces that have worn in. Even pressure would put it a few percent further out.
    ///
    /// # Errors
    /// Diameters outside 2 to 200 mm, an outer one below the inner one, or either on a ball above 0.99 of
    /// its diameter.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::{Seat, tightening::SeatContact}};
    /// assert!(SeatContact::ring(Seat::Flat, mm(23.0), mm(13.0)).is_err());
    /// ```
    pub fn ring(seat: Seat, inner_diameter: Length, outer_diameter: Length) -> Result<Self, OutOfRange> {
        let most = 2.0 * Self::max_radius(seat);
        let inner = OutOfRange::check("inner contact diameter", in_mm(inner_diameter), "mm", 2.0, most)?;
        let outer = OutOfRange::check("outer contact diameter", in_mm(outer_diameter), "mm", inner, most)?;
        Ok(Self::new(seat, (inner + outer) / 4.0))
    }

    /// From the radius of a contact that is narrow, as the line where a ball touches its socket.
    ///
    /// # Errors
    /// Outside 1 to 100 mm, or on a ball above 0.99 of its radius.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::{Seat, tightening::SeatContact}};
    /// let ball = SeatContact::circle(Seat::BallR14, mm(9.5))?;
    /// assert!((ball.friction_lever() - mm(12.933363)).abs() < mm(1e-6));
    /// assert!(SeatContact::circle(Seat::BallR14, mm(14.0)).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn circle(seat: Seat, radius: Length) -> Result<Self, OutOfRange> {
        let most = Self::max_radius(seat);
        Ok(Self::new(seat, OutOfRange::check("contact radius", in_mm(radius), "mm", 1.0, most)?))
    }

    fn max_radius(seat: Seat) -> f64 {
        seat.ball_radius().map_or(100.0, |radius| MOST_OF_BALL * in_mm(radius))
    }

    fn new(seat: Seat, mean_radius_mm: f64) -> Self {
        // How much of the contact force points along the fastener.
        let along = if let Some(angle) = seat.cone_angle() {
            libm::sin(angle.value / 2.0)
        } else if let Some(radius) = seat.ball_radius() {
            let share = mean_radius_mm / in_mm(radius);
            libm::sqrt(1.0 - share * share)
        } else {
            1.0
        };
        Self { seat, mean_radius_mm, lever_mm: mean_radius_mm / along }
    }

    /// The shape of the seat.
    pub const fn seat(&self) -> Seat {
        self.seat
    }

    /// The mean radius of the contact.
    pub const fn mean_radius(&self) -> Length {
        units::mm(self.mean_radius_mm)
    }

    /// The lever `rb` at which the friction of the seat resists turning.
    pub const fn friction_lever(&self) -> Length {
        units::mm(self.lever_mm)
    }

    /// The source of the levers.
    pub const fn citation(&self) -> Citation {
        Citation::TIGHTENING_TORQUE
    }
}
