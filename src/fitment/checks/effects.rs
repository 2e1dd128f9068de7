//! What a change brings that no limit judges.

use super::rolling::is_driven;
use crate::Citation;
use crate::fitment::case::Case;
use crate::fitment::effect::{Effect, EffectId};
use crate::fitment::facts::SetupFacts;
use crate::fitment::told;
use crate::fitment::value::Value;
use crate::step::{End, Teller};
use crate::tire::rolling::hydroplaning_onset;
use crate::units::{self, Mass};
use crate::wheel::rotation::RotatingPart;

/// Gearing and odometer of the driven axle, the front one if both are driven; and of each axle what the
/// wheels weigh when the vehicle speeds up, when water lifts the tires, and what a pressure monitor warns of.
pub(in crate::fitment) fn effects(axles: &[Option<Case<'_>>; 2], mut note: impl FnMut(Effect)) {
    rolling(axles, &mut note);
    for case in axles.iter().flatten() {
        let Ok((original, proposed)) = case.both() else { continue };
        let mut effect = |id, before: Option<Value>, after: Option<Value>| {
            if let Some((before, after)) = before.zip(after).filter(|(before, after)| before != after) {
                note(Effect { id, place: case.place, before, after });
            }
        };
        let felt = |setup: &SetupFacts<'_>| Some(Value::Mass(equivalent_mass(setup)?));
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

fn rolling(axles: &[Option<Case<'_>>; 2], note: &mut impl FnMut(Effect)) {
    let driven = |case: &&Case<'_>| case.vehicle.drive().is_some_and(|drive| is_driven(case, drive));
    let Some(case) = axles.iter().flatten().filter(driven).find(|case| case.both().is_ok()) else { return };
    let Ok((original, proposed)) = case.both() else { return };
    let Some((before, after)) = original.circumference().zip(proposed.circumference()) else { return };
    let (before, after) = (before.nominal(), after.nominal());
    note(Effect {
        id: EffectId::Gearing,
        place: case.place,
        before: Value::Length(before),
        after: Value::Length(after),
    });
    note(Effect {
        id: EffectId::Odometer,
        place: case.place,
        before: Value::Ratio(units::percent(100.0)),
        after: Value::Ratio(after / before),
    });
}

/// What one wheel with its tire adds to the vehicle's mass by turning, from the masses that are given: the
/// tire spread evenly from the seat to the tread, the wheel from its middle to the seat.
fn equivalent_mass(setup: &SetupFacts<'_>) -> Option<Mass> {
    let rim = setup.wheel().size().diameter();
    let (seat, outer) = (rim.nominal() / 2.0, setup.nominal_diameter? / 2.0);
    let tire = RotatingPart::annulus(setup.tire_mass()?, seat, outer).ok()?;
    let wheel = RotatingPart::annulus(setup.wheel_mass()?, units::mm(0.0), seat).ok()?;
    let rolling = setup.circumference()?.nominal() / (2.0 * core::f64::consts::PI);
    Some((tire + wheel).rolling_on(rolling).ok()?.equivalent_mass())
}

/// Tells how an effect on an axle comes about: first as it is before the change, then as it is after it.
pub(in crate::fitment) fn tell_effect(
    axles: &[Option<Case<'_>>; 2],
    effect: &Effect,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let case = axles.iter().flatten().find(|case| case.place == effect.place)?;
    let (original, proposed) = case.both().ok()?;
    let setups = [(original, told::ORIGINAL), (proposed, told::PROPOSED)];
    let pressures = || Some([(case.axle.placard()?, "placard"), (proposed.pressure()?, "intended pressure")]);
    match effect.id() {
        EffectId::Gearing => {
            for (setup, whose) in setups {
                told::circumference(setup, whose, End::Nominal, tell)?;
            }
        }
        EffectId::Odometer => {
            let before = told::circumference(original, told::ORIGINAL, End::Nominal, tell)?;
            let after = told::circumference(proposed, told::PROPOSED, End::Nominal, tell)?;
            tell.given(format_args!("true distance before"), 100.0, "%", Citation::DESIGNATION);
            let form = ("{0} / {1} × 100", &[after, before][..]);
            tell.worked(format_args!("true distance after"), form, after / before * 100.0, "%", None);
        }
        EffectId::RotatingInertia => {
            for (setup, whose) in setups {
                tell_equivalent_mass(setup, whose, tell)?;
            }
        }
        EffectId::Hydroplaning => {
            for (pressure, what) in pressures()? {
                let onset = units::in_kmh(hydroplaning_onset(pressure).ok()?);
                let kpa = told::pressure(tell, what, pressure, None);
                let form = ("9 × 1.852 × √({0} / 6.894757293168)", &[kpa][..]);
                let name = format_args!("onset at the {what}");
                tell.worked(name, form, onset, "km/h", Citation::HYDROPLANING);
            }
        }
        EffectId::PressureMonitoring => {
            for (pressure, what) in pressures()? {
                let kpa = told::pressure(tell, what, pressure, None);
                let name = format_args!("pressure of the warning by the {what}, 49 CFR 571.138 S4.2");
                tell.worked(name, ("{0} × 0.75", &[kpa]), kpa * MONITOR_SHARE, "kPa", None);
            }
        }
    }
    Some(())
}

/// Tells how what a wheel adds by turning comes about.
fn tell_equivalent_mass(setup: &SetupFacts<'_>, whose: &str, tell: &mut Teller<'_>) -> Option<()> {
    let mass = units::in_kg(equivalent_mass(setup)?);
    let [tire, wheel] = [setup.tire_mass()?, setup.wheel_mass()?].map(units::in_kg);
    tell.given(format_args!("mass of the {whose} tire"), tire, "kg", None);
    tell.given(format_args!("mass of the {whose} wheel"), wheel, "kg", None);
    let seat = units::in_mm(setup.wheel().size().diameter().nominal());
    tell.given(format_args!("nominal rim diameter"), seat, "mm", Citation::DESIGNATION);
    let turn = told::circumference(setup, whose, End::Nominal, tell)?;
    let outer = units::in_mm(setup.nominal_diameter?);
    let form = "0.5 × ({0} × (({2} / 2)^2 + ({3} / 2)^2) + {1} × ({2} / 2)^2) / ({4} / (2 × π))^2";
    let name = format_args!("mass that the {whose} wheel adds by turning");
    tell.worked(name, (form, &[tire, wheel, seat, outer, turn]), mass, "kg", Citation::ROTATING_INERTIA);
    Some(())
}
