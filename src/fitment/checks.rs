//! The checks, one file a family.

pub(super) mod axles;
mod beside;
pub(super) mod brake;
pub(super) mod chains;
pub(super) mod clearance;
pub(super) mod condition;
mod definition;
mod depends_on;
pub(super) mod duals;
pub(super) mod effects;
pub(super) mod engagement;
pub(super) mod fasteners;
pub(super) mod geometry;
pub(super) mod guard;
pub(super) mod hub;
pub(super) mod load;
pub(super) mod pressure;
pub(super) mod ride;
pub(super) mod rim;
pub(super) mod rolling;
mod rules;
pub(super) mod seats;
pub(super) mod swept;

use super::check::CheckId;

/// Every check, in the order of [`CheckId`] and of the report.
pub(super) static DEFINITIONS: [Definition; CheckId::ALL.len()] = [
    rim::BEAD_DIAMETER,
    rim::RIM_WIDTH,
    load::TIRE_LOAD,
    load::TIRE_LOAD_VS_ORIGINAL,
    pressure::INFLATION,
    load::LOAD_RESERVE,
    load::SPEED_SYMBOL,
    load::WHEEL_LOAD,
    geometry::OVERALL_DIAMETER,
    rolling::SPEEDOMETER,
    axles::AXLE_MATCH,
    rim::RIM_CONTOUR,
    hub::BOLT_CIRCLE,
    hub::CENTRE_BORE,
    fasteners::FASTENER_THREAD,
    seats::FASTENER_SEAT,
    engagement::THREAD_ENGAGEMENT,
    brake::BRAKE_CLEARANCE,
    geometry::TRACK,
    geometry::SCRUB_RADIUS,
    clearance::OUTER_CLEARANCE,
    clearance::INNER_CLEARANCE,
    clearance::UPPER_CLEARANCE,
    geometry::RIDE_HEIGHT,
    ride::GROUND_CLEARANCE,
    duals::DUAL_SPACING,
    guard::WHEEL_GUARD,
    chains::CHAIN_CLEARANCE,
    swept::SWEPT_CLEARANCE,
    condition::TIRE_AGE,
    condition::TREAD,
    condition::MOUNTING,
];

/// Findings of a report: of every check as many as it can have on a vehicle.
pub(super) const ROWS: usize = {
    let (mut at, mut rows) = (0, 0);
    while at < DEFINITIONS.len() {
        assert!(DEFINITIONS[at].id as usize == at, "a definition is not in the place of its name");
        rows += match DEFINITIONS[at].run {
            Run::Axle(_) | Run::Gap(..) | Run::SteeredAxle(_) => 2,
            Run::End(_) | Run::BothEnds => 4,
            Run::Vehicle(_) => 1,
        };
        at += 1;
    }
    rows
};

impl CheckId {
    /// What the check is.
    pub(super) const fn definition(self) -> &'static Definition {
        &DEFINITIONS[self as usize]
    }

    /// Whether a report is complete only when this check is assessed, or does not apply, on every axle.
    ///
    /// ```
    /// use beadseat::fitment::CheckId;
    /// assert!(CheckId::TireLoad.is_vital() && !CheckId::Track.is_vital());
    /// ```
    pub const fn is_vital(self) -> bool {
        self.definition().is_vital
    }

    /// What the check depends on, of what a search chooses.
    pub(crate) const fn depends_on(self) -> DependsOn {
        self.definition().depends_on
    }
}

pub(super) use beside::beside;
pub(super) use condition::treads_are_uneven;
pub(super) use definition::{Definition, Harm, Run};
pub(crate) use depends_on::DependsOn;
pub(super) use effects::effects;
pub(super) use pressure::pressures;
pub(super) use rules::Rules;
pub(super) use swept::{ends as swept, not_swept};
