//! Judging a change of wheels and tires.
//!
//! [`assess`] takes a vehicle, what was on it and what is to go on, how it is used and which limits
//! apply, and answers with a [`Report`]: every check with its measured value, limit, margin, verdict,
//! reason and source. What it lacks an input for is [`Verdict::NotAssessed`] and says which.
//!
//! ```
//! use beadseat::fitment::{Change, CheckId, Conditions, Limits, Position, Setup, Setups, Verdict, assess};
//! use beadseat::{units::kmh, vehicle::{Axle, Hub, Vehicle}};
//! let hub = Hub::new().with_bolt_circle("5x112".parse()?);
//! let wagon = Vehicle::unknown().with_top_speed(kmh(205.0))?.with_front(Axle::new().with_hub(hub));
//! let setup = |tire: &str, wheel: &str| Ok::<_, beadseat::ParseError>(Setups {
//!     front: Some(Setup::new(tire.parse()?, wheel.parse()?)),
//!     rear: None,
//! });
//! let change = Change {
//!     original: setup("205/55R16 91V", "6.5Jx16 ET46 5x112")?,
//!     proposed: setup("225/45R17 94W XL", "7.5Jx17 ET42 5x114.3")?,
//! };
//! let report = assess(&wagon, &change, &Conditions::default(), &Limits::default());
//! let holes = report.get(CheckId::BoltCircle, Position::Front).ok_or("no such check")?;
//! assert_eq!(holes.verdict(), Verdict::Beyond);
//! assert_eq!(
//!     holes.to_string(),
//!     "front bolt_circle: beyond, 5x114.3 (equal to 5x112): a near miss: every hole is off by half the \
//!      difference; it seems to go on and does not seat",
//! );
//! assert!(!report.is_complete());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod approach;
mod available_space;
mod case;
mod check;
mod checks;
mod conditions;
mod finding;
mod limits;
mod measure;
mod pressures;
mod print;
mod report;
#[cfg(feature = "serde")]
mod serial;
mod setup;
mod swept_corner;
mod value;

pub use approach::Approach;
pub use available_space::{AvailableSpace, InsetRange, MissingFacts, RangeEnd};
pub use check::{Check, CheckId, Input, InputPath, Position, Reason, Verdict};
pub use conditions::{Conditions, Day, TractionClass};
pub use limits::{Limit, LimitSet, Limits};
pub use measure::{Measurement, Measurements, Preparation, Tool};
pub use pressures::{Assumes, Needed, PressureBasis, Pressures};
pub use print::{Body, Headline};
pub use report::{Caution, Effect, EffectId, Report};
pub use setup::{Change, Fasteners, Setup, Setups, TireInUse};
pub use swept_corner::SweptCorner;
pub use value::{Bound, Value};

use crate::tire::condition::VehicleSide;
use crate::vehicle::{Kind, Vehicle};
use case::Case;
use checks::Run;

const SIDES: [VehicleSide; 2] = [VehicleSide::Left, VehicleSide::Right];

/// Judges a change. Allocates nothing and cannot fail: what cannot be judged is said in the report.
///
/// It needs less than 32 KB of stack in a release build, whatever is swept, with the [`Report`] it returns.
///
/// Every vehicle has two axles, whether they are described or not, but for a trailer, which has those that
/// are; where nothing is known of the kind, an axle counts that is described or has a setup.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, Limits, Setups, Verdict, assess};
/// use beadseat::vehicle::Vehicle;
/// let nothing = Setups { front: None, rear: None };
/// let change = Change { original: nothing, proposed: nothing };
/// let report = assess(&Vehicle::unknown(), &change, &Conditions::default(), &Limits::default());
/// assert!(report.checks().all(|c| c.verdict() == Verdict::NotAssessed));
/// assert_eq!(report.overall(), Verdict::Marginal);
/// ```
pub fn assess(vehicle: &Vehicle, change: &Change, conditions: &Conditions, limits: &Limits) -> Report {
    // Made when compiled: made here, its rows would stand on the stack twice.
    const NOTHING_YET: Report = Report::new();
    let mut report = NOTHING_YET;
    let case = |place| Case::new(place, vehicle, change.on(place), conditions, limits);
    let [front, rear] = [Position::Front, Position::Rear].map(case);
    let two_axles = vehicle.kind().is_some_and(|kind| kind != Kind::Trailer);
    let known =
        |described: bool, case: &Case<'_>| described || case.original.is_some() || case.proposed.is_some();
    let has_rear = two_axles || known(vehicle.rear_axle().is_some(), &rear);
    let has_front = two_axles || known(vehicle.front_axle().is_some(), &front) || !has_rear;
    let axles = [has_front.then_some(&front), has_rear.then_some(&rear)];

    for case in axles.into_iter().flatten() {
        let steered = case.place == Position::Front || case.axle.steering().is_some() || !has_front;
        for definition in &checks::DEFINITIONS {
            let check = match definition.run {
                Run::Axle(check) => check,
                Run::SteeredAxle(check) if steered => check,
                _ => continue,
            };
            let found = case.by_rules(definition, || check(case));
            report.push(&case.finish(definition.id, case.place, found));
        }
        for definition in &checks::DEFINITIONS {
            match definition.run {
                Run::BothEnds => {
                    let swept = case.car_rules().map_or_else(checks::not_swept, |()| checks::swept(case));
                    for (place, swept) in case.ends().zip(swept) {
                        report.push(&case.finish(definition.id, place, swept.found));
                        report.push_approach(swept.nearest.map(|nearest| nearest.at(place)));
                    }
                }
                Run::End(check) => {
                    let at = |side| case.by_rules(definition, || check(case, side));
                    if case.is_motorcycle() {
                        let [left, right] = SIDES.map(at);
                        let either = finding::of_either_side(left, right);
                        report.push(&case.finish(definition.id, case.place, either));
                    } else {
                        for (place, side) in case.ends().zip(SIDES) {
                            report.push(&case.finish(definition.id, place, at(side)));
                        }
                    }
                }
                Run::Axle(_) | Run::SteeredAxle(_) | Run::Vehicle(_) => {}
            }
        }
        checks::cautions(case, &mut report);
        report.push_pressures(
            checks::pressures(case).filter(|_| vehicle.kind().is_some_and(|kind| kind != Kind::Motorcycle)),
        );
    }
    for definition in &checks::DEFINITIONS {
        if let Run::Vehicle(check) = definition.run {
            let found = check(&axles);
            let remembered = axles.into_iter().flatten().find(|case| case.dimensions_are_remembered());
            report.push(&remembered.unwrap_or(&front).finish(definition.id, Position::Vehicle, found));
        }
    }
    checks::effects(&axles, &mut report);
    if checks::treads_are_uneven(&axles) {
        report.caution(Caution::UnevenTread);
    }

    for caution in [Caution::Placard, Caution::LocalLaw, Caution::Seating, Caution::ColdPressure] {
        report.caution(caution);
    }
    if !axles.into_iter().flatten().all(Case::has_spindle_hub) {
        report.caution(Caution::Retorque);
    }
    if vehicle.kind() != Some(Kind::Trailer) && front.is_towing() {
        report.caution(Caution::Towing);
    }
    report
}
