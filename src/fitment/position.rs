//! Where on a vehicle.

use crate::record::words;
use crate::tire::condition::VehicleSide;

words! {
    /// What a finding is about.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::Position::Front.name(), "front");
    /// ```
    Position {
        /// The vehicle as a whole.
        Vehicle = "vehicle",
        /// The front axle as a whole.
        Front = "front",
        /// The rear axle as a whole.
        Rear = "rear",
        /// The left end of the front axle.
        FrontLeft = "front_left",
        /// The right end of the front axle.
        FrontRight = "front_right",
        /// The left end of the rear axle.
        RearLeft = "rear_left",
        /// The right end of the rear axle.
        RearRight = "rear_right",
        /// The spare wheel where it stands in for a wheel of the front axle.
        SpareAtFront = "spare_at_front",
        /// The spare wheel where it stands in for a wheel of the rear axle.
        SpareAtRear = "spare_at_rear",
    }
}

impl Position {
    /// One end of an axle; the vehicle as a whole has none.
    pub(crate) const fn end(self, side: VehicleSide) -> Self {
        match (self, side) {
            (Self::Front, VehicleSide::Left) => Self::FrontLeft,
            (Self::Front, VehicleSide::Right) => Self::FrontRight,
            (Self::Rear, VehicleSide::Left) => Self::RearLeft,
            (Self::Rear, VehicleSide::Right) => Self::RearRight,
            (other, _) => other,
        }
    }

    /// The axle of an end; an axle, the vehicle and a spare wheel as they are.
    ///
    /// ```
    /// use beadseat::fitment::Position;
    /// assert_eq!(Position::RearLeft.axle(), Position::Rear);
    /// assert_eq!(Position::Front.axle(), Position::Front);
    /// ```
    pub const fn axle(self) -> Self {
        match self {
            Self::FrontLeft | Self::FrontRight => Self::Front,
            Self::RearLeft | Self::RearRight => Self::Rear,
            other => other,
        }
    }

    /// The axle, and which end of it; nothing for the vehicle.
    pub(super) const fn axle_and_end(self) -> Option<(&'static str, Option<&'static str>)> {
        Some(match self {
            Self::Vehicle => return None,
            Self::Front => ("front", None),
            Self::Rear => ("rear", None),
            Self::FrontLeft => ("front", Some("left")),
            Self::FrontRight => ("front", Some("right")),
            Self::RearLeft => ("rear", Some("left")),
            Self::RearRight => ("rear", Some("right")),
            Self::SpareAtFront => ("front", None),
            Self::SpareAtRear => ("rear", None),
        })
    }

    /// The place of the spare wheel on an axle; on nothing else it can stand.
    pub(super) const fn spare(self) -> Option<Self> {
        match self {
            Self::Front => Some(Self::SpareAtFront),
            Self::Rear => Some(Self::SpareAtRear),
            _ => None,
        }
    }

    /// Whether it is that of the spare wheel.
    pub(super) const fn is_spare(self) -> bool {
        matches!(self, Self::SpareAtFront | Self::SpareAtRear)
    }

    /// Whether it belongs to the front axle.
    pub(super) const fn is_at_front(self) -> bool {
        matches!(self, Self::Front | Self::FrontLeft | Self::FrontRight | Self::SpareAtFront)
    }
}
