//! Whether a torque is what wheel fasteners of a thread usually get.

use super::Thread;
use crate::units::{Torque, in_nm};
use crate::{Citation, literal};

/// The torques that makers of vehicles and wheels usually state for a thread, to catch a figure in the
/// wrong unit, off by a digit or meant for another thread.
///
/// Common practice, no source. **It recommends nothing**: a torque inside the band can be wrong for the
/// wheel and one outside it right; the vehicle or wheel maker's figure rules.
///
/// ```
/// use beadseat::{literal, units::{lbf_ft, nm}, wheel::{Thread, tightening::TorqueBand}};
/// let band = TorqueBand::of(literal!(Thread, "M14x1.5")).ok_or("no band is known")?;
/// assert!(band.holds(nm(140.0)));
/// assert!(!band.holds(lbf_ft(140.0))); // the same figure in the wrong unit
/// assert_eq!(TorqueBand::of(literal!(Thread, "M18x1.5")), None);
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TorqueBand {
    least_nm: f64,
    most_nm: f64,
}

const BANDS: &[(Thread, f64, f64)] = &[
    (literal!(Thread, "M10x1.25"), 61.0, 75.0),
    (literal!(Thread, "M12x1.5"), 80.0, 120.0),
    (literal!(Thread, "M12x1.25"), 80.0, 120.0),
    (literal!(Thread, "M14x1.5"), 120.0, 180.0),
    (literal!(Thread, "M14x1.25"), 120.0, 180.0),
    // Oiled, on heavy trucks.
    (literal!(Thread, "M22x1.5"), 610.0, 678.0),
    (literal!(Thread, "7/16-20"), 75.0, 108.0),
    (literal!(Thread, "1/2-20"), 100.0, 135.0),
    (literal!(Thread, "9/16-18"), 183.0, 197.0),
    (literal!(Thread, "5/8-18"), 169.0, 183.0),
];

impl TorqueBand {
    /// The band of a thread; `None` where no habit is known.
    pub fn of(thread: Thread) -> Option<Self> {
        let &(_, least_nm, most_nm) = BANDS.iter().find(|(of, ..)| *of == thread)?;
        Some(Self { least_nm, most_nm })
    }

    /// Whether a torque, rounded to whole newton metres as the band is, lies in it, its ends included.
    ///
    /// ```
    /// use beadseat::{literal, units::lbf_ft, wheel::{Thread, tightening::TorqueBand}};
    /// let band = TorqueBand::of(literal!(Thread, "5/8-18")).ok_or("no band is known")?;
    /// assert!(band.holds(lbf_ft(135.0))); // 183.04 N·m, and the band ends at 183
    /// # Ok::<(), &str>(())
    /// ```
    pub fn holds(&self, torque: Torque) -> bool {
        let torque = libm::round(in_nm(torque));
        self.least_nm <= torque && torque <= self.most_nm
    }

    /// The source of the band, which is a habit.
    pub const fn citation(&self) -> Citation {
        Citation::TORQUE_BAND
    }
}
