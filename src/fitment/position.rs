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

    /// The axle of an end; an axle and the vehicle as they are.
    pub(crate) const fn axle(self) -> Self {
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
        })
    }
}
