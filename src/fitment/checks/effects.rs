//! What a change brings that no limit judges.

use super::rolling::{circumference, is_driven};
use crate::fitment::Setup;
use crate::fitment::case::Case;
use crate::fitment::report::{Effect, EffectId, Report};
use crate::fitment::value::Value;
use crate::tire::rolling::hydroplaning_onset;
use crate::units::{self, Mass};
use crate::wheel::rotation::RotatingPart;

/// Gearing and odometer of the driven axle, the front one if both are driven; and of each axle what the
/// wheels weigh when the vehicle speeds up, when water lifts the tires, and what a pressure monitor warns of.
pub(in crate::fitment) fn effects(axles: &[Option<&Case<'_>>; 2], report: &mut Report) {
    rolling(axles, report);
    for case in axles.iter().flatten() {
        let Ok((original, proposed)) = case.both() else { continue };
        let mut effect = |id, before: Option<Value>, after: Option<Value>| {
            if let Some((before, after)) = before.zip(after).filter(|(before, after)| before != after) {
                report.push_effect(&Effect { id, place: case.place, before, after });
            }
        };
        let felt = |setup: &Setup| Some(Value::Mass(equivalent_mass(setup)?));
        effect(EffectId::RotatingInertia, felt(original), felt(proposed));
        let (before, after) = (case.axle.placard(), proposed.pressure());
        let onset = |pressure| Some(Value::Velocity(hydroplaning_onset(pressure).ok()?));
        effect(EffectId::Hydroplaning, before.and_then(onset), after.and_then(onset));
        let warned = |pressure| Value::Pressure(pressure * MONITOR_SHARE);
        effect(EffectId::PressureMonitoring, before.map(warned), after.map(warned));
    }
}

/// Monitors warn at the latest a quarter below the placard. Source: 49 CFR 571.138 S4.2.
pub(super) const MONITOR_SHARE: f64 = 0.75;

fn rolling(axles: &[Option<&Case<'_>>; 2], report: &mut Report) {
    let driven = |case: &&&Case<'_>| case.vehicle.drive().is_some_and(|drive| is_driven(case, drive));
    let Some(case) = axles.iter().flatten().filter(driven).find(|case| case.both().is_ok()) else { return };
    let Ok((original, proposed)) = case.both() else { return };
    let Some((before, after)) = circumference(original).zip(circumference(proposed)) else { return };
    let (before, after) = (before.nominal(), after.nominal());
    report.push_effect(&Effect {
        id: EffectId::Gearing,
        place: case.place,
        before: Value::Length(before),
        after: Value::Length(after),
    });
    report.push_effect(&Effect {
        id: EffectId::Odometer,
        place: case.place,
        before: Value::Ratio(units::percent(100.0)),
        after: Value::Ratio(after / before),
    });
}

/// What one wheel with its tire adds to the vehicle's mass by turning, from the masses that are given: the
/// tire spread evenly from the seat to the tread, the wheel from its middle to the seat.
fn equivalent_mass(setup: &Setup) -> Option<Mass> {
    let (size, rim) = (setup.tire().size(), setup.wheel().size().diameter());
    let (seat, outer) = (rim.nominal() / 2.0, size.overall_diameter_nominal()? / 2.0);
    let tire = RotatingPart::annulus(setup.tire_mass()?, seat, outer).ok()?;
    let wheel = RotatingPart::annulus(setup.wheel_mass()?, units::mm(0.0), seat).ok()?;
    let rolling = circumference(setup)?.nominal() / (2.0 * core::f64::consts::PI);
    Some((tire + wheel).rolling_on(rolling).ok()?.equivalent_mass())
}
