//! What other wheels do to the track.

use crate::units::{Angle, Length};

/// How much the track grows when the middles of the rims of an axle move outboard by `left` and `right`
/// along their spindles, at a camber: `(left + right)·cos γ`. Negative if it shrinks.
///
/// How far a rim moves is the difference of two [`RimEdges::centre`](super::RimEdges::centre)s. Source:
/// derived, the geometry of the axle.
///
/// ```
/// use beadseat::{units::{deg, mm}, wheel::position::track_change};
/// assert_eq!(track_change(mm(10.0), mm(10.0), deg(0.0)), mm(20.0));
/// assert!((track_change(mm(10.0), mm(10.0), deg(-1.5)) - mm(19.993)).abs() < mm(0.001));
/// ```
pub fn track_change(left: Length, right: Length, camber: Angle) -> Length {
    (left + right) * libm::cos(camber.value)
}

/// How far outboard both rims of an axle may move for a growth of the track: half of it each. Wheels with
/// camber may move a little further.
///
/// ```
/// use beadseat::{units::mm, wheel::{Inset, position::max_inset_change}};
/// // A limit of +26 mm on wheels of inset 45.
/// let least = Inset::from_length(Inset::parse("ET45")?.length() - max_inset_change(mm(26.0)))?;
/// assert_eq!(least.to_string(), "ET32");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn max_inset_change(track_growth: Length) -> Length {
    track_growth / 2.0
}
