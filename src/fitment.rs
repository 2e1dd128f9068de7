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
mod facts;
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

use core::ops::ControlFlow;

use crate::vehicle::{Kind, Vehicle};
use case::Case;
use checks::{Definition, Run, SweptEnd};
use facts::{AxleFacts, SetupFacts};

/// Judges a change. Allocates nothing and cannot fail: what cannot be judged is said in the report.
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
    let mut report = Report::new();
    with_axles(vehicle, change, conditions, limits, |axles| {
        let _: ControlFlow<()> = judge(
            axles,
            |_| true,
            |case, definition, place, end| {
                report.push(&finding::finish(definition.id, place, case.settle(definition, end.found)));
                if end.nearest.is_some() {
                    report.push_approach(end.nearest.map(|nearest| nearest.at(place)));
                }
                ControlFlow::Continue(())
            },
        );
        let cases = || axles.iter().flatten();
        for case in cases() {
            checks::cautions(case, &mut report);
            let has_tables = vehicle.kind().is_some_and(|kind| kind != Kind::Motorcycle);
            report.push_pressures(checks::pressures(case).filter(|_| has_tables));
        }
        checks::effects(axles, &mut report);
        if checks::treads_are_uneven(axles) {
            report.caution(Caution::UnevenTread);
        }
        if !cases().all(Case::has_spindle_hub) {
            report.caution(Caution::Retorque);
        }
        if vehicle.kind() != Some(Kind::Trailer) && cases().any(|case| case.is_towing()) {
            report.caution(Caution::Towing);
        }
    });
    for caution in [Caution::Placard, Caution::LocalLaw, Caution::Seating, Caution::ColdPressure] {
        report.caution(caution);
    }
    report
}

/// The verdict on the whole of a change, which is that of [`assess`]'s report: [`Report::overall`].
///
/// It makes no report and ends at the first finding that is beyond. What moves is swept last, only if nothing else
/// is beyond: without bodies around the wheels it costs a small part of an assessment.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, Limits, Setup, Verdict, verdict};
/// use beadseat::vehicle::{Kind, Vehicle};
/// let car = Vehicle::new(Kind::Passenger);
/// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx16")?];
/// let of = |change| verdict(&car, &change, &Conditions::default(), &Limits::default());
/// assert_eq!(of(Change::front(old, new)), Verdict::Beyond); // a tire of 17 in on a wheel of 16
/// assert_eq!(of(Change::front(old, old)), Verdict::Marginal); // much is not known
/// # Ok::<(), beadseat::ParseError>(())
/// ```
pub fn verdict(vehicle: &Vehicle, change: &Change, conditions: &Conditions, limits: &Limits) -> Verdict {
    let mut worst = Verdict::Within;
    let mut hear = |case: &Case<'_>, definition: &Definition, _: Position, end: SweptEnd| {
        let verdict = match case.settle(definition, end.found) {
            Ok(finding) => finding.verdict,
            Err(_) if definition.is_vital => Verdict::Marginal,
            Err(_) => return ControlFlow::Continue(()),
        };
        if verdict.gravity() > worst.gravity() {
            worst = verdict;
        }
        if worst == Verdict::Beyond { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    };
    let is_dear = |run| matches!(run, Run::BothEnds);
    with_axles(vehicle, change, conditions, limits, |axles| {
        if judge(axles, |run| !is_dear(run), &mut hear).is_continue() {
            let _: ControlFlow<()> = judge(axles, is_dear, &mut hear);
        }
    });
    worst
}

/// Gives the axles that a vehicle has, each with its facts.
fn with_axles(
    vehicle: &Vehicle,
    change: &Change,
    conditions: &Conditions,
    limits: &Limits,
    work: impl FnOnce(&[Option<Case<'_>>; 2]),
) {
    let places = [Position::Front, Position::Rear];
    let axles = places.map(|place| AxleFacts::new(place, vehicle, conditions, limits));
    let facts = axles
        .each_ref()
        .map(|axle| change.on(axle.place).map(|setup| setup.map(|setup| SetupFacts::new(setup, axle))));
    let two_axles = vehicle.kind().is_some_and(|kind| kind != Kind::Trailer);
    let known =
        |axle: Option<&_>, setups: &[Option<_>; 2]| axle.is_some() || setups.iter().any(Option::is_some);
    let [of_front, of_rear] = &facts;
    let has_rear = two_axles || known(vehicle.rear_axle(), of_rear);
    let has_front = two_axles || known(vehicle.front_axle(), of_front) || !has_rear;
    let [front, rear] = &axles;
    work(&[
        has_front.then(|| Case::new(front, of_front.each_ref().map(Option::as_ref))),
        has_rear.then(|| Case::new(rear, of_rear.each_ref().map(Option::as_ref))),
    ]);
}

/// Makes the findings that are asked for, in the order of a report, until whoever hears them has heard enough.
fn judge(
    axles: &[Option<Case<'_>>; 2],
    asked: impl Fn(Run) -> bool,
    mut hear: impl FnMut(&Case<'_>, &Definition, Position, SweptEnd) -> ControlFlow<()>,
) -> ControlFlow<()> {
    let definitions = || checks::DEFINITIONS.iter().filter(|definition| asked(definition.run));
    for case in axles.iter().flatten() {
        let steered = case.place == Position::Front || case.axle.steering().is_some() || axles[0].is_none();
        for definition in definitions() {
            let check = match definition.run {
                Run::Axle(check) => check,
                Run::SteeredAxle(check) if steered => check,
                _ => continue,
            };
            hear(case, definition, case.place, case.by_rules(definition, || check(case)).into())?;
        }
        let [left, right] = case.ends();
        for definition in definitions() {
            let found = match definition.run {
                Run::BothEnds => case.car_rules().map_or_else(checks::not_swept, |()| checks::swept(case)),
                Run::End(check) => {
                    let at = |(_, side)| case.by_rules(definition, || check(case, side));
                    if left.0 == right.0 {
                        let either = finding::of_either_side(at(left), at(right));
                        hear(case, definition, left.0, either.into())?;
                        continue;
                    }
                    [left, right].map(|end| at(end).into())
                }
                Run::Axle(_) | Run::SteeredAxle(_) | Run::Vehicle(_) => continue,
            };
            let ends = if left.0 == right.0 { 1 } else { 2 };
            for ((place, _), found) in [left, right].into_iter().zip(found).take(ends) {
                hear(case, definition, place, found)?;
            }
        }
    }
    let of_memory = |case: &&Case<'_>| case.dimensions_are_remembered();
    for definition in definitions() {
        if let Run::Vehicle(check) = definition.run {
            let cases = || axles.iter().flatten();
            if let Some(case) = cases().find(of_memory).or(cases().next()) {
                hear(case, definition, Position::Vehicle, check(axles).into())?;
            }
        }
    }
    ControlFlow::Continue(())
}
