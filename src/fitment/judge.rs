//! Judging axle by axle: which findings there are, in which order they are made, and what they come to.

use core::ops::ControlFlow;

use super::case::Case;
use super::check::Verdict;
use super::checks::{self, Definition, Run};
use super::conditions::Conditions;
use super::facts::{AxleFacts, SIDES, SetupFacts};
use super::finding::{self, Found};
use super::limits::Limits;
use super::position::Position;
use super::setup::{Change, Setup};
use super::space::Approach;
use crate::vehicle::{Kind, Vehicle};

/// The verdict on the whole of a change: what [`assess`](super::assess) calls [`Report::overall`](super::Report::overall).
///
/// It makes the same findings, keeps none, makes no report, and ends at the first that is beyond. What moves is swept
/// last, and only if nothing else is beyond. A change that is not beyond needs every check, and takes about two
/// thirds of the time of [`assess`](super::assess).
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
pub(super) fn with_axles(
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
pub(super) fn has_axles(vehicle: &Vehicle, change: &Change) -> [bool; 2] {
    axles_of(
        vehicle,
        [Position::Front, Position::Rear].map(|place| change.on(place).iter().any(Option::is_some)),
    )
}

/// The same where it is known which of them have a setup.
pub(super) fn axles_of(vehicle: &Vehicle, has_setup: [bool; 2]) -> [bool; 2] {
    let two_axles = vehicle.kind().is_some_and(|kind| kind != Kind::Trailer);
    let has_rear = two_axles || vehicle.rear().is_some() || has_setup[1];
    [two_axles || vehicle.front().is_some() || has_setup[0] || !has_rear, has_rear]
}

/// Gives an axle with the facts of its setups, where they are made: they are too large to move about.
#[inline(always)]
pub(super) fn on_axle<T>(
    axle: &AxleFacts<'_>,
    [original, proposed]: [Option<&Setup>; 2],
    work: impl FnOnce(Case<'_>) -> T,
) -> T {
    let original = SetupFacts::of(original, axle);
    let proposed = SetupFacts::of(proposed, axle);
    work(Case::new(axle, [original.as_ref(), proposed.as_ref()]))
}

/// Makes the findings that are asked for, in the order of a report, until whoever hears them has heard enough.
pub(super) fn judge(
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
pub(super) fn judge_axle(
    case: &Case<'_>,
    is_only: bool,
    asked: impl Fn(&Definition) -> bool,
    mut hear: impl FnMut(&Definition, Position, &Found, Option<&Approach>) -> ControlFlow<()>,
) -> ControlFlow<()> {
    let definitions = || checks::DEFINITIONS.iter().filter(|definition| asked(definition));
    let steered = steers(case, is_only);
    for definition in definitions() {
        let (check, place) = match definition.run {
            Run::Axle(check) => (check, case.place),
            Run::Gap(gap, check) => (check, case.narrower_end(gap)),
            Run::SteeredAxle(check) if steered => (check, case.place),
            _ => continue,
        };
        let mut found = case.by_rules(definition.rules, || check(case));
        hear(definition, place, definition.settled(case, &mut found), None)?;
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
            Run::Axle(_) | Run::Gap(..) | Run::SteeredAxle(_) | Run::Vehicle(_) => {}
        }
    }
    ControlFlow::Continue(())
}

/// What a check of an axle as a whole finds, where it is made on this one; the only axle steers as a first does.
#[inline]
pub(super) fn of_axle(case: &Case<'_>, is_only: bool, definition: &Definition) -> Option<Found> {
    let check = match definition.run {
        Run::Axle(check) | Run::Gap(_, check) => check,
        Run::SteeredAxle(check) if steers(case, is_only) => check,
        Run::SteeredAxle(_) | Run::End(_) | Run::BothEnds | Run::Vehicle(_) => return None,
    };
    let mut found = case.by_rules(definition.rules, || check(case));
    definition.settled(case, &mut found);
    Some(found)
}

/// Whether an axle steers, the front one or any that it is said of; the only one does as a first does.
#[inline(always)]
fn steers(case: &Case<'_>, is_only: bool) -> bool {
    case.place == Position::Front || case.axle.steering().is_some() || is_only
}

/// Makes the findings of front and rear together.
#[inline(always)]
pub(super) fn judge_vehicle(
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
