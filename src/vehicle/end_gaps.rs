//! Gaps that differ from one end of an axle to the other.

use crate::record::record;
use crate::tire::condition::VehicleSide;
use crate::units::Length;

record! {
    /// Gaps measured on one end of an axle, where they differ from those of the other.
    ///
    /// ```
    /// use beadseat::{units::mm, vehicle::{EndGaps, Space}};
    /// let left = EndGaps::new().with_outer_clearance(mm(21.0))?;
    /// let space = Space::new().with_outer_clearance(mm(30.0))?.with_left(left);
    /// assert_eq!(space.left().and_then(|left| left.outer_clearance()), Some(mm(21.0)));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    #[derive(Copy)]
    EndGaps {
        /// Least gap inboard of tire and rim on this end.
        inner_clearance / with_inner_clearance: Length = "inner_clearance_mm" [mm in_mm "mm" 0 to 500];
        /// Least gap outboard on this end.
        outer_clearance / with_outer_clearance: Length = "outer_clearance_mm" [mm in_mm "mm" -100 to 500];
        /// How far the wheel guard stands outboard of the sidewall on this end.
        guard_overhang / with_guard_overhang: Length = "guard_overhang_mm" [mm in_mm "mm" -100 to 300];
        /// Least gap above the tread on this end.
        upper_clearance / with_upper_clearance: Length = "upper_clearance_mm" [mm in_mm "mm" 0 to 800];
    }
}

/// A gap that is measured on both ends of an axle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum EndGap {
    Inner,
    Outer,
    Guard,
    Upper,
}

impl EndGaps {
    pub(super) const fn gap(&self, kind: EndGap) -> Option<Length> {
        match kind {
            EndGap::Inner => self.inner_clearance(),
            EndGap::Outer => self.outer_clearance(),
            EndGap::Guard => self.guard_overhang(),
            EndGap::Upper => self.upper_clearance(),
        }
    }
}

/// The narrower of the gaps on both ends of an axle. The wheels are the same, so that what fits there fits on the other
/// end too.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Narrower {
    pub(crate) gap: Length,
    /// The end that it was measured on, where the other has more.
    pub(crate) end: Option<VehicleSide>,
    /// Whether the gap of the other end is known.
    pub(crate) is_other_known: bool,
}

impl Narrower {
    pub(super) fn of(left: Option<Length>, right: Option<Length>) -> Option<Self> {
        use VehicleSide::{Left, Right};
        let (gap, end, is_other_known) = match (left, right) {
            (Some(left), Some(right)) if left < right => (left, Some(Left), true),
            (Some(left), Some(right)) if right < left => (right, Some(Right), true),
            (Some(both), Some(_)) => (both, None, true),
            (Some(left), None) => (left, Some(Left), false),
            (None, Some(right)) => (right, Some(Right), false),
            (None, None) => return None,
        };
        Some(Self { gap, end, is_other_known })
    }
}
