//! The checks, one file a family.

mod axles;
mod brake;
mod chains;
pub(super) mod clearance;
mod condition;
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
use super::finding::Found;
use super::report::{Caution, Report};
use crate::tire::VehicleSide;
use crate::units::Pressure;
use crate::vehicle::Fastening;
use crate::wheel::Valve;

type AxleCheck = fn(&Case<'_>) -> Found;
type EndCheck = fn(&Case<'_>, VehicleSide) -> Found;
type VehicleCheck = fn(&[Option<&Case<'_>>; 2]) -> Found;

/// What is asked of every axle, in the order of the report.
pub(super) const OF_AN_AXLE: &[(CheckId, AxleCheck)] = &[
    (CheckId::BeadDiameter, rim::bead_diameter),
    (CheckId::RimWidth, rim::rim_width),
    (CheckId::TireLoad, load::tire_load),
    (CheckId::TireLoadVsOriginal, load::tire_load_vs_original),
    (CheckId::Inflation, pressure::inflation),
    (CheckId::LoadReserve, load::load_reserve),
    (CheckId::SpeedSymbol, load::speed_symbol),
    (CheckId::WheelLoad, load::wheel_load),
    (CheckId::OverallDiameter, geometry::overall_diameter),
    (CheckId::RimContour, rim::rim_contour),
    (CheckId::BoltCircle, hub::bolt_circle),
    (CheckId::CentreBore, hub::centre_bore),
    (CheckId::FastenerThread, hub::fastener_thread),
    (CheckId::FastenerSeat, hub::fastener_seat),
    (CheckId::ThreadEngagement, engagement::thread_engagement),
    (CheckId::BrakeClearance, brake::brake_clearance),
    (CheckId::Track, geometry::track),
    (CheckId::ScrubRadius, geometry::scrub_radius),
    (CheckId::OuterClearance, clearance::outer),
    (CheckId::InnerClearance, clearance::inner),
    (CheckId::UpperClearance, clearance::upper),
    (CheckId::RideHeight, geometry::ride_height),
    (CheckId::GroundClearance, ride::ground_clearance),
    (CheckId::DualSpacing, duals::dual_spacing),
    (CheckId::WheelGuard, guard::wheel_guard),
    (CheckId::ChainClearance, chains::chain_clearance),
];

/// What depends on the kind of vehicle: without it, nothing is judged.
pub(super) const OF_A_KIND: &[CheckId] = &[
    CheckId::RimWidth,
    CheckId::RimContour,
    CheckId::TireLoadVsOriginal,
    CheckId::Inflation,
    CheckId::LoadReserve,
    CheckId::OverallDiameter,
    CheckId::Track,
    CheckId::ScrubRadius,
    CheckId::OuterClearance,
    CheckId::InnerClearance,
    CheckId::UpperClearance,
    CheckId::GroundClearance,
    CheckId::WheelGuard,
];

/// What is judged by the rules and dimensions of car and truck tires, which motorcycles do not have.
pub(super) const OF_CAR_RULES: &[CheckId] =
    &[CheckId::RimContour, CheckId::OuterClearance, CheckId::InnerClearance, CheckId::WheelGuard];

/// What is judged by the dimensions of tires: one known from a remembered table alone makes no change beyond.
pub(super) const OF_DIMENSIONS: &[CheckId] = &[
    CheckId::OverallDiameter,
    CheckId::Speedometer,
    CheckId::AxleMatch,
    CheckId::OuterClearance,
    CheckId::InnerClearance,
    CheckId::UpperClearance,
    CheckId::SweptClearance,
    CheckId::RideHeight,
    CheckId::GroundClearance,
    CheckId::DualSpacing,
    CheckId::WheelGuard,
    CheckId::ChainClearance,
];

/// What is asked of each end of every axle.
pub(super) const OF_AN_END: &[(CheckId, EndCheck)] = &[
    (CheckId::TireAge, condition::tire_age),
    (CheckId::Tread, condition::tread),
    (CheckId::Mounting, condition::mounting),
];

/// What is asked of front and rear together.
pub(super) const OF_THE_VEHICLE: &[(CheckId, VehicleCheck)] =
    &[(CheckId::Speedometer, rolling::speedometer), (CheckId::AxleMatch, axles::axle_match)];

const _: () = {
    // The swept clearance of both ends is found at once.
    assert!(OF_AN_AXLE.len() + OF_AN_END.len() + 1 + OF_THE_VEHICLE.len() == CheckId::ALL.len());
    assert!(2 * OF_AN_AXLE.len() + 4 * (OF_AN_END.len() + 1) + OF_THE_VEHICLE.len() <= Report::ROWS);
};

pub(super) use condition::treads_are_uneven;
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
    let moved =
        case.original.is_some_and(|original| case.rim_centres(original) != case.rim_centres(proposed));
    let spaced = proposed.standoff().value > 0.0;
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
    if case.axle.camber().is_none() && super::case::is_passenger(&proposed.tire()) {
        report.caution(Caution::CamberAssumed);
    }
    let highest = proposed.pressure().into_iter().chain(proposed.pressure_full_load()).reduce(Pressure::max);
    let of_snap_in = Valve::SnapIn.greatest_pressure();
    if proposed.valve().is_none() && highest.zip(of_snap_in).is_some_and(|(highest, most)| highest > most) {
        report.caution(Caution::Valve);
    }
    let swept = report.approaches().filter(|approach| approach.place().axle() == case.place).count();
    if swept > 0 {
        report.caution(Caution::AsDescribed);
    }
    if swept < 2 && case.axle.gaps().is_some() {
        report.caution(Caution::StaticOnly);
    }
}
