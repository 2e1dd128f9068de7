//! The checks, one file a family.

mod axles;
mod brake;
mod chains;
pub(super) mod clearance;
mod condition;
mod definition;
mod duals;
mod effects;
mod engagement;
pub(super) mod geometry;
mod guard;
mod hub;
mod load;
mod pressure;
mod ride;
mod rim;
mod rolling;
pub(super) mod swept;

use super::case::Case;
use super::check::CheckId;
use super::report::{Caution, Report};
use crate::units::Pressure;
use crate::vehicle::Fastening;
use crate::wheel::Valve;

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
    hub::FASTENER_THREAD,
    hub::FASTENER_SEAT,
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

const _: () = {
    let (mut at, mut rows) = (0, 0);
    while at < DEFINITIONS.len() {
        assert!(DEFINITIONS[at].id as usize == at, "a definition is not in the place of its name");
        rows += match DEFINITIONS[at].run {
            Run::Axle(_) | Run::SteeredAxle(_) => 2,
            Run::End(_) | Run::BothEnds => 4,
            Run::Vehicle(_) => 1,
        };
        at += 1;
    }
    assert!(rows <= Report::ROWS);
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
}

pub(super) use condition::treads_are_uneven;
pub(super) use definition::{Definition, Harm, Rules, Run};
pub(super) use effects::effects;
pub(super) use pressure::pressures;
pub(super) use swept::{ends as swept, not_swept};

/// The cautions that an axle's setup calls for.
pub(super) fn cautions(case: &Case<'_>, report: &mut Report) {
    let Some(proposed) = case.proposed else { return };
    if proposed.tire().size().rim_diameter() != proposed.wheel().size().diameter() {
        report.caution(Caution::NeverMount);
    }
    if proposed.wheel().size().is_multi_piece() {
        report.caution(Caution::MultiPiece);
    }
    let moved = case.original.is_some_and(|original| original.centres != proposed.centres);
    let spaced = proposed.hub_spacing().value > 0.0;
    if moved || spaced {
        report.caution(Caution::Bearings);
    }
    if spaced {
        report.caution(Caution::SpacerThread);
    }
    let bolted = case.axle.hub().and_then(|hub| hub.fastening()) == Some(Fastening::Bolt);
    if bolted && (spaced || proposed.fasteners().is_some()) {
        report.caution(Caution::Bottoming);
    }
    if proposed.adaptor().is_some() {
        report.caution(Caution::Adaptor);
    }
    if case.axle.camber().is_none() && proposed.is_passenger {
        report.caution(Caution::CamberAssumed);
    }
    let highest = proposed.pressure().into_iter().chain(proposed.pressure_full_load()).reduce(Pressure::max);
    let of_snap_in = Valve::SnapIn.max_pressure();
    if proposed.valve().is_none() && highest.zip(of_snap_in).is_some_and(|(highest, most)| highest > most) {
        report.caution(Caution::Valve);
    }
    let swept = report.approaches().filter(|approach| approach.position().axle() == case.place).count();
    if swept > 0 {
        report.caution(Caution::AsDescribed);
    }
    if swept < 2 && case.axle.gaps().is_some() {
        report.caution(Caution::StaticOnly);
    }
}
