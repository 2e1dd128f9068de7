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

#[cfg(feature = "serde")]
mod assumed;
mod case;
mod caution;
mod check;
mod checks;
pub mod comparison;
mod conditions;
pub mod derivation;
mod document;
mod effect;
mod facts;
mod field_of_law;
mod finding;
mod layout;
mod limits;
pub mod measure;
pub mod moves;
#[cfg(feature = "alloc")]
mod parts;
mod position;
pub mod pressures;
mod print;
#[cfg(feature = "serde")]
mod provenance;
mod report;
mod rule_scope;
#[cfg(feature = "serde")]
mod serial;
mod setup;
mod severity;
mod sheet;
pub mod space;
mod spare;
mod summary;
mod todo;
mod told;
mod trial;
mod value;

pub use crate::unit_system::UnitSystem;
pub use caution::Caution;
pub use check::{Check, CheckId, Reason, Verdict};
pub(crate) use checks::DependsOn;
pub use conditions::{Conditions, Day, TractionClass};
pub use document::Document;
pub use effect::{Effect, EffectId};
pub use field_of_law::FieldOfLaw;
pub use limits::{Limit, LimitSet, Limits};
#[cfg(feature = "alloc")]
pub(crate) use parts::{Parts, Span, Windows};
pub use position::Position;
pub use print::{Body, Headline};
#[cfg(feature = "serde")]
pub(crate) use provenance::Basis;
#[cfg(feature = "serde")]
pub use provenance::{Origin, Provenance};
pub use report::Report;
pub use rule_scope::RuleScope;
pub use setup::{Change, Fasteners, Setup, Setups, TireInUse};
pub use sheet::Sheet;
pub use spare::SpareWheel;
pub use summary::Summary;
pub use todo::Todo;
pub(crate) use trial::{Trial, Tried, fails_alone, fails_together, share_left};
pub use value::{Bound, Value};

use core::ops::ControlFlow;

use crate::vehicle::{Kind, Vehicle};
use case::Case;
use checks::{Definition, Run};
use facts::{AxleFacts, SIDES, SetupFacts};
use finding::Found;
use space::Approach;

/// Judges a change. Allocates nothing and cannot fail: what cannot be judged is said in the report.
///
/// It needs at most 32 KiB of stack (31.8 measured on x86-64) in a release build, whatever is swept, with the
/// [`Report`] it returns.
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
    report.name_own_source(limits.own_source());
    report.name_rules(RuleScope::new(limits.set(), conditions.date(), vehicle.kind()));
    with_axles(vehicle, change, conditions, limits, |axles| {
        let _: ControlFlow<()> = judge(
            axles,
            |_| true,
            |definition, place, found, nearest| {
                report.push(finding::finish(definition.id, place, found));
                if let Some(nearest) = nearest {
                    report.push_approach(nearest.at(place));
                }
                ControlFlow::Continue(())
            },
        );
        let cases = || axles.iter().flatten();
        for case in cases() {
            let is_here = |approach: &Approach| approach.position().axle() == case.place;
            let swept = report.approaches().filter(is_here).count();
            caution::cautions(case, swept, |caution| report.caution(caution));
            let has_tables = vehicle.kind().is_some_and(|kind| kind != Kind::Motorcycle);
            if let Some(pressures) = has_tables.then(|| checks::pressures(case)).flatten() {
                report.push_pressures(pressures);
            }
        }
        checks::effects(axles, |effect| report.push_effect(effect));
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

/// The verdict on the whole of a change: what [`assess`] calls [`Report::overall`].
///
/// It makes the same findings, keeps none, makes no report, and ends at the first that is beyond. What moves is swept
/// last, and only if nothing else is beyond. A change that is not beyond needs every check, and takes about two
/// thirds of the time of [`assess`].
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
    let mut hear = |definition: &Definition, _: Position, found: &Found, _: Option<&Approach>| {
        let weight = definition.weight(found);
        if weight.gravity() > worst.gravity() {
            worst = weight;
            if worst == Verdict::Beyond {
                return ControlFlow::Break(());
            }
        }
        ControlFlow::Continue(())
    };
    let is_dear = |definition: &Definition| matches!(definition.run, Run::BothEnds);
    with_axles(vehicle, change, conditions, limits, |axles| {
        let anything_around = axles.iter().flatten().any(|case| case.axle.surroundings().next().is_some());
        if judge(axles, |check| !is_dear(check), &mut hear).is_continue() && anything_around {
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
    let front = AxleFacts::new(Position::Front, vehicle, conditions, limits);
    let rear = AxleFacts::new(Position::Rear, vehicle, conditions, limits);
    let [of_front, of_rear] = [&front, &rear].map(|axle| change.on(axle.place));
    let [has_front, has_rear] = has_axles(vehicle, change);
    on_axle(&front, of_front, |front| {
        on_axle(&rear, of_rear, |rear| work(&[has_front.then_some(front), has_rear.then_some(rear)]));
    });
}

/// Whether a vehicle has a front axle and a rear one.
fn has_axles(vehicle: &Vehicle, change: &Change) -> [bool; 2] {
    axles_of(
        vehicle,
        [Position::Front, Position::Rear].map(|place| change.on(place).iter().any(Option::is_some)),
    )
}

/// The same where it is known which of them have a setup.
fn axles_of(vehicle: &Vehicle, has_setup: [bool; 2]) -> [bool; 2] {
    let two_axles = vehicle.kind().is_some_and(|kind| kind != Kind::Trailer);
    let has_rear = two_axles || vehicle.rear().is_some() || has_setup[1];
    [two_axles || vehicle.front().is_some() || has_setup[0] || !has_rear, has_rear]
}

/// Gives an axle with the facts of its setups, where they are made: they are too large to move about.
fn on_axle(axle: &AxleFacts<'_>, [original, proposed]: [Option<&Setup>; 2], work: impl FnOnce(Case<'_>)) {
    let original = SetupFacts::of(original, axle);
    let proposed = SetupFacts::of(proposed, axle);
    work(Case::new(axle, [original.as_ref(), proposed.as_ref()]));
}

/// Makes the findings that are asked for, in the order of a report, until whoever hears them has heard enough.
fn judge(
    axles: &[Option<Case<'_>>; 2],
    asked: impl Fn(&Definition) -> bool,
    mut hear: impl FnMut(&Definition, Position, &Found, Option<&Approach>) -> ControlFlow<()>,
) -> ControlFlow<()> {
    for case in axles.iter().flatten() {
        judge_axle(case, axles[0].is_none(), &asked, &mut hear)?;
    }
    judge_vehicle(axles, &asked, &mut hear)
}

/// Makes the findings of one axle; the only one steers as a first does.
#[inline(always)]
fn judge_axle(
    case: &Case<'_>,
    is_only: bool,
    asked: impl Fn(&Definition) -> bool,
    mut hear: impl FnMut(&Definition, Position, &Found, Option<&Approach>) -> ControlFlow<()>,
) -> ControlFlow<()> {
    let definitions = || checks::DEFINITIONS.iter().filter(|definition| asked(definition));
    let steered = case.place == Position::Front || case.axle.steering().is_some() || is_only;
    for definition in definitions() {
        let check = match definition.run {
            Run::Axle(check) => check,
            Run::SteeredAxle(check) if steered => check,
            _ => continue,
        };
        let mut found = case.by_rules(definition.rules, || check(case));
        hear(definition, case.place, definition.settled(case, &mut found), None)?;
    }
    for definition in definitions() {
        match definition.run {
            Run::BothEnds => {
                let swept = case.car_rules().map_or_else(checks::not_swept, |()| checks::swept(case));
                for ((place, _), mut swept) in case.ends().zip(swept) {
                    let found = definition.settled(case, &mut swept.found);
                    hear(definition, place, found, swept.nearest.as_ref())?;
                }
            }
            Run::End(check) if case.is_motorcycle() => {
                let [left, right] = SIDES.map(|side| case.by_rules(definition.rules, || check(case, side)));
                let mut either = finding::of_either_side(left, right);
                hear(definition, case.place, definition.settled(case, &mut either), None)?;
            }
            Run::End(check) => {
                for (place, side) in case.ends() {
                    let mut found = case.by_rules(definition.rules, || check(case, side));
                    hear(definition, place, definition.settled(case, &mut found), None)?;
                }
            }
            Run::Axle(_) | Run::SteeredAxle(_) | Run::Vehicle(_) => {}
        }
    }
    ControlFlow::Continue(())
}

/// Makes the findings of front and rear together.
#[inline(always)]
fn judge_vehicle(
    axles: &[Option<Case<'_>>; 2],
    asked: impl Fn(&Definition) -> bool,
    mut hear: impl FnMut(&Definition, Position, &Found, Option<&Approach>) -> ControlFlow<()>,
) -> ControlFlow<()> {
    let cases = || axles.iter().flatten();
    let Some(case) = cases().find(|case| case.is_remembered).or(cases().next()) else {
        return ControlFlow::Continue(());
    };
    for definition in checks::DEFINITIONS.iter().filter(|definition| asked(definition)) {
        if let Run::Vehicle(check) = definition.run {
            let mut found = check(axles);
            hear(definition, Position::Vehicle, definition.settled(case, &mut found), None)?;
        }
    }
    ControlFlow::Continue(())
}

impl Change {
    /// Judges the change on a vehicle, in ordinary use and by the default limits; [`assess`] takes
    /// others.
    ///
    /// ```
    /// use beadseat::fitment::{Change, Setup, Verdict};
    /// use beadseat::vehicle::{Kind, Vehicle};
    /// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx16")?];
    /// let report = Change::front(old, new).assess(&Vehicle::new(Kind::Passenger));
    /// assert_eq!(report.overall(), Verdict::Beyond); // a tire of 17 in on a wheel of 16
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn assess(&self, vehicle: &Vehicle) -> Report {
        assess(vehicle, self, &Conditions::default(), &Limits::default())
    }
}
