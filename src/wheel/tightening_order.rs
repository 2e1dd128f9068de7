//! In which order, in which steps and how often wheel fasteners are tightened.

use core::ops::RangeInclusive;

use super::BoltCircle;
use crate::units::{Length, Torque, meters};
use crate::{Citation, OutOfRange};

/// The order in which the fasteners of a wheel are tightened, so that it seats evenly. Holes are numbered
/// from 1 round the circle. Common practice, no source:
///
/// - **Odd count, the star.** From each fastener to the one most nearly opposite: of `n`, `(n − 1)/2`
///   places on. The order of 5 is 1, 3, 5, 2, 4.
/// - **Even count, the cross.** Always a pair of opposite ones, and the lines through the pairs are taken
///   in turn: at right angles where their number is even, as a star where it is odd. The order of 8 is
///   1, 5, 3, 7, 2, 6, 4, 8; that of 6 is 1, 4, 2, 5, 3, 6.
///
/// From five fasteners on, no two in a row are neighbours.
///
/// ```
/// use beadseat::{literal, wheel::{BoltCircle, tightening::TighteningOrder}};
/// let order = TighteningOrder::of(literal!(BoltCircle, "5x112"));
/// assert!(order.holes().eq([1, 3, 5, 2, 4]));
/// assert!(TighteningOrder::new(10)?.holes().eq([1, 6, 3, 8, 5, 10, 7, 2, 9, 4]));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct TighteningOrder {
    count: u8,
}

impl TighteningOrder {
    /// The order for a bolt circle.
    pub const fn of(holes: BoltCircle) -> Self {
        Self { count: holes.count() }
    }

    /// The order for a number of fasteners.
    ///
    /// # Errors
    /// Outside 3 to 12.
    ///
    /// ```
    /// assert!(beadseat::wheel::tightening::TighteningOrder::new(2).is_err());
    /// ```
    pub fn new(count: u8) -> Result<Self, OutOfRange> {
        OutOfRange::check("number of fasteners", f64::from(count), "", 3.0, 12.0)?;
        Ok(Self { count })
    }

    /// The holes in the order in which their fasteners are tightened, each once.
    pub fn holes(self) -> impl ExactSizeIterator<Item = u8> {
        (0..self.count).map(move |step| self.place(step) + 1)
    }

    /// The place round the circle, from 0, that is taken at a step, from 0.
    const fn place(self, step: u8) -> u8 {
        let n = self.count;
        if n % 2 == 1 {
            return step * (n / 2) % n;
        }
        let (lines, line) = (n / 2, step / 2);
        let first = if lines % 2 == 1 { line * (lines / 2) } else { line / 2 + line % 2 * (lines / 2) };
        (first + step % 2 * lines) % n
    }

    /// The source of the order, which is a habit.
    pub const fn citation(self) -> Citation {
        Citation::TIGHTENING_PRACTICE
    }
}

/// The torques of the three rounds in which the fasteners are brought to a torque: 30, 60 and 100 % of it,
/// the first with the wheel off the ground. Common practice, no source.
///
/// ```
/// use beadseat::{units::nm, wheel::tightening::torque_stages};
/// let [snug, half, full] = torque_stages(nm(140.0));
/// assert!((snug - nm(42.0)).abs() < nm(1e-9) && (half - nm(84.0)).abs() < nm(1e-9));
/// assert_eq!(full, nm(140.0));
/// ```
pub fn torque_stages(torque: Torque) -> [Torque; 3] {
    [torque * 0.3, torque * 0.6, torque]
}

/// How far to drive before the torque is checked again, because a new joint settles: 50 to 100 km. A
/// caution, not a proof that it holds until then. Common practice, no source.
///
/// ```
/// use beadseat::{units::meters, wheel::tightening::recheck_distance};
/// assert!(recheck_distance().contains(&meters(80_000.0)));
/// ```
pub const fn recheck_distance() -> RangeInclusive<Length> {
    meters(50_000.0)..=meters(100_000.0)
}
