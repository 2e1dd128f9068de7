//! What a wheel guard must cover.

use crate::Citation;
use crate::units::{Angle, Length, deg, mm};

/// The arc about the hub over which a wheel guard must cover the tread, and what else may stand out there.
///
/// Source: EU 1009/2010 and ADR 42 ([`Citation::WHEEL_GUARD_EU`], [`Citation::WHEEL_GUARD_AU`],
/// [`Citation::PROJECTION`]).
///
/// ```
/// use beadseat::{units::{deg, mm}, vehicle::GuardZone};
/// assert_eq!((GuardZone::AHEAD, GuardZone::BEHIND), (deg(30.0), deg(50.0)));
/// assert_eq!(GuardZone::REAR_EDGE_ABOVE_AXLE, mm(150.0));
/// assert_eq!(GuardZone::citation().document(), "EU 1009/2010");
/// ```
#[derive(Clone, Copy, Debug)]
pub struct GuardZone(());

impl GuardZone {
    /// From the plumb line through the hub forward.
    pub const AHEAD: Angle = deg(30.0);

    /// From the plumb line through the hub backward.
    pub const BEHIND: Angle = deg(50.0);

    /// The rear edge of the guard is no higher than this above the axle.
    pub const REAR_EDGE_ABOVE_AXLE: Length = mm(150.0);

    /// What covers of hub and nuts may stand out of the body above the axle.
    pub const COVER_PROTRUSION: Length = mm(30.0);

    /// The source of the arc and the edge.
    pub const fn citation() -> Citation {
        Citation::WHEEL_GUARD_EU
    }
}
