//! Rotation arrow and marked side against the side of the vehicle.

use crate::record::words;

words! {
    /// The side of the vehicle, seen by its driver.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::condition::VehicleSide::Left.name(), "left");
    /// ```
    VehicleSide {
        /// The left side of the vehicle.
        Left = "left",
        /// The right side of the vehicle.
        Right = "right",
    }
}

impl VehicleSide {
    /// The other side of the vehicle.
    ///
    /// ```
    /// use beadseat::tire::condition::VehicleSide;
    /// assert_eq!(VehicleSide::Left.opposite(), VehicleSide::Right);
    /// ```
    pub const fn opposite(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

words! {
    /// The way an arrow runs round the wheel, for someone who stands beside the vehicle and looks at it.
    ///
    /// ```
    /// use beadseat::tire::condition::{ArrowTurn, VehicleSide};
    /// assert_eq!(ArrowTurn::rolling_forward(VehicleSide::Left), ArrowTurn::CounterClockwise);
    /// ```
    ArrowTurn {
        /// As the hands of a clock.
        Clockwise = "clockwise",
        /// Against the hands of a clock.
        CounterClockwise = "counter_clockwise",
    }
}

impl ArrowTurn {
    /// The way a wheel turns when the vehicle goes forward. The tread moves forward at the top, and the
    /// front of the vehicle is to the left of someone who looks at its left side.
    pub const fn rolling_forward(side: VehicleSide) -> Self {
        match side {
            VehicleSide::Left => Self::CounterClockwise,
            VehicleSide::Right => Self::Clockwise,
        }
    }

    /// The way it runs in a mirror, and so for someone who looks from the other side.
    ///
    /// ```
    /// use beadseat::tire::condition::ArrowTurn;
    /// assert_eq!(ArrowTurn::Clockwise.mirrored(), ArrowTurn::CounterClockwise);
    /// ```
    pub const fn mirrored(self) -> Self {
        match self {
            Self::Clockwise => Self::CounterClockwise,
            Self::CounterClockwise => Self::Clockwise,
        }
    }
}

words! {
    /// What is molded on the side of the tire that faces out.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::condition::SideFacingOut::Inside.name(), "inside");
    /// ```
    SideFacingOut {
        /// `OUTSIDE`, as it should be.
        Outside = "outside",
        /// `INSIDE` faces out, which is wrong.
        Inside = "inside",
    }
}

/// How a tire sits on its wheel, as far as its marks tell.
///
/// ```
/// use beadseat::tire::condition::{ArrowTurn, Mounting, Remedy, SideFacingOut, VehicleSide};
/// let tire = Mounting::new(Some(ArrowTurn::Clockwise), Some(SideFacingOut::Outside));
/// assert_eq!(tire.on(VehicleSide::Right).is_right(), Some(true));
/// assert_eq!(tire.on(VehicleSide::Left).remedy(), Some(Remedy::ChangeSide));
/// assert_eq!(Mounting::new(None, None).on(VehicleSide::Left).is_right(), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Mounting {
    arrow: Option<ArrowTurn>,
    facing_out: Option<SideFacingOut>,
}

impl Mounting {
    /// `None` for a mark that the tire does not have.
    pub const fn new(arrow: Option<ArrowTurn>, facing_out: Option<SideFacingOut>) -> Self {
        Self { arrow, facing_out }
    }

    /// The way the rotation arrow turns, if there is one.
    pub const fn arrow(self) -> Option<ArrowTurn> {
        self.arrow
    }

    /// The side that faces out.
    pub const fn facing_out(self) -> Option<SideFacingOut> {
        self.facing_out
    }

    /// Holds the marks against a side of the vehicle, front or rear alike.
    pub const fn on(self, side: VehicleSide) -> MountingFinding {
        let arrow_is_right = match self.arrow {
            Some(arrow) => Some(arrow as u8 == ArrowTurn::rolling_forward(side) as u8),
            None => None,
        };
        let side_is_right = match self.facing_out {
            Some(facing_out) => Some(matches!(facing_out, SideFacingOut::Outside)),
            None => None,
        };
        MountingFinding { arrow_is_right, side_is_right }
    }
}

/// What sets a tire right that is mounted wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Remedy {
    /// Put the wheel on the other side of the vehicle. A tire without a marked side may be turned on its
    /// rim instead.
    ChangeSide,
    /// Turn the tire on its rim.
    TurnOnRim,
    /// Turn it on its rim, which turns its arrow too, and put the wheel on the other side.
    TurnOnRimAndChangeSide,
}

/// The marks of a tire against the side of the vehicle it is on.
///
/// ```
/// use beadseat::tire::condition::{ArrowTurn, Mounting, Remedy, SideFacingOut, VehicleSide};
/// // The arrow is right, but only because the tire is inside out.
/// let found = Mounting::new(Some(ArrowTurn::Clockwise), Some(SideFacingOut::Inside)).on(VehicleSide::Right);
/// assert_eq!((found.arrow_is_right(), found.side_is_right()), (Some(true), Some(false)));
/// assert_eq!(found.remedy(), Some(Remedy::TurnOnRimAndChangeSide));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct MountingFinding {
    arrow_is_right: Option<bool>,
    side_is_right: Option<bool>,
}

impl MountingFinding {
    /// Whether the arrow points the way the wheel turns; `None` without an arrow.
    pub const fn arrow_is_right(self) -> Option<bool> {
        self.arrow_is_right
    }

    /// Whether the side for it faces out; `None` without a marked side.
    pub const fn side_is_right(self) -> Option<bool> {
        self.side_is_right
    }

    /// Whether all marks are right; `None` if there is none.
    ///
    /// ```
    /// use beadseat::tire::condition::{Mounting, SideFacingOut, VehicleSide};
    /// let tire = Mounting::new(None, Some(SideFacingOut::Inside));
    /// assert_eq!(tire.on(VehicleSide::Left).is_right(), Some(false));
    /// ```
    pub const fn is_right(self) -> Option<bool> {
        match (self.arrow_is_right, self.side_is_right) {
            (Some(arrow), Some(side)) => Some(arrow && side),
            (Some(one), None) | (None, Some(one)) => Some(one),
            (None, None) => None,
        }
    }

    /// What sets it right, if it is wrong.
    ///
    /// ```
    /// use beadseat::tire::condition::{ArrowTurn, Mounting, Remedy, SideFacingOut, VehicleSide};
    /// // Both are wrong: turning the tire on its rim sets both right.
    /// let tire = Mounting::new(Some(ArrowTurn::Clockwise), Some(SideFacingOut::Inside));
    /// assert_eq!(tire.on(VehicleSide::Left).remedy(), Some(Remedy::TurnOnRim));
    /// ```
    pub const fn remedy(self) -> Option<Remedy> {
        match (self.side_is_right, self.arrow_is_right) {
            (Some(false), Some(true)) => Some(Remedy::TurnOnRimAndChangeSide),
            (Some(false), Some(false) | None) => Some(Remedy::TurnOnRim),
            (Some(true) | None, Some(false)) => Some(Remedy::ChangeSide),
            (Some(true) | None, Some(true) | None) => None,
        }
    }
}
