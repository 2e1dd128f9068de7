//! The parts of a setup, judged each for itself: a tire on whatever wheel, a wheel under whatever tire, and the two
//! together wherever they stand. Put together they say what the verdict on the whole says.

use core::ops::ControlFlow;

use super::case::Case;
use super::check::{CheckId, Position, Verdict};
use super::checks::{DEFINITIONS, Definition, not_swept, swept};
use super::conditions::Conditions;
use super::facts::SetupFacts;
use super::finding::Found;
use super::judge::{judge_axle, judge_vehicle, of_axle};
use super::limits::Limits;
use super::space::Approach;
use super::trial::Trial;
use super::{Change, Setup, Setups};
use crate::units::in_mm;
use crate::vehicle::Vehicle;
use crate::wheel::Inset;

/// What of a setup a check looks at.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Part {
    /// The tire.
    Tire,
    /// The wheel.
    Wheel,
    /// The tire and the rim it is on, wherever they stand.
    Rim,
    /// These and where they stand: the graver, the further in or out.
    Place,
    /// These and what moves.
    Movement,
}

/// What a check looks at, of a setup that is not the original's size on the original's wheel: of such a one, what does
/// not change is excused.
const fn part_of(id: CheckId, setup: &Setup) -> Part {
    match id {
        CheckId::TireLoad
        | CheckId::TireLoadVsOriginal
        | CheckId::LoadReserve
        | CheckId::SpeedSymbol
        | CheckId::OverallDiameter
        | CheckId::Speedometer
        | CheckId::AxleMatch
        | CheckId::UpperClearance
        | CheckId::RideHeight
        | CheckId::GroundClearance
        | CheckId::TireAge
        | CheckId::Tread
        | CheckId::Mounting => Part::Tire,
        CheckId::BoltCircle
        | CheckId::CentreBore
        | CheckId::FastenerThread
        | CheckId::FastenerSeat
        | CheckId::ThreadEngagement
        | CheckId::BrakeClearance => Part::Wheel,
        // A rating that holds up to a diameter asks for the tire.
        CheckId::WheelLoad if setup.wheel_rating_diameter().is_none() => Part::Wheel,
        CheckId::WheelLoad
        | CheckId::BeadDiameter
        | CheckId::RimWidth
        | CheckId::RimContour
        | CheckId::Inflation => Part::Rim,
        CheckId::Track
        | CheckId::ScrubRadius
        | CheckId::OuterClearance
        | CheckId::InnerClearance
        | CheckId::DualSpacing
        | CheckId::WheelGuard
        | CheckId::ChainClearance => Part::Place,
        CheckId::SweptClearance => Part::Movement,
    }
}

/// What a certified clearance may be off at one place and at another, in millimetres; many times what it is.
const UNSURE: f64 = 0.5;

/// The furthest that an inset can be written, in nanometres.
const LAST: i32 = 300_000_000;

/// Insets from one to another, in nanometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Span {
    least: i32,
    most: i32,
}

impl Span {
    pub(crate) const WHOLE: Self = Self { least: -LAST, most: LAST };

    const fn around(inset: Inset, nm: i32) -> Self {
        let at = inset.nm();
        Self { least: at.saturating_sub(nm), most: at.saturating_add(nm) }
    }

    pub(crate) const fn contains(self, inset: Inset) -> bool {
        self.least <= inset.nm() && inset.nm() <= self.most
    }

    /// Both as one, where they overlap.
    pub(crate) fn joined(self, other: Self) -> Option<Self> {
        let overlap = self.least.max(other.least) <= self.most.min(other.most);
        overlap.then(|| Self { least: self.least.min(other.least), most: self.most.max(other.most) })
    }

    fn and(self, other: Self) -> Self {
        Self { least: self.least.max(other.least), most: self.most.min(other.most) }
    }
}

/// The verdict on a tire on a rim over all insets, but for what moves: wherever it stands, and between which insets it is
/// no graver than that, and no graver than marginal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Windows {
    wherever: Verdict,
    as_good: Span,
    fits: Span,
}

impl Windows {
    const OPEN: Self = Self { wherever: Verdict::Within, as_good: Span::WHOLE, fits: Span::WHOLE };

    /// The verdict at an inset; that of a wheel without one is the same wherever it stands.
    pub(crate) const fn at(&self, inset: Option<Inset>) -> Verdict {
        match inset {
            Some(inset) if !self.fits.contains(inset) => Verdict::Beyond,
            Some(inset) if !self.as_good.contains(inset) => self.wherever.graver(Verdict::Marginal),
            _ => self.wherever,
        }
    }
}

/// A vehicle with what its maker built on it, each worked out once.
pub(crate) struct Parts<'a> {
    change: Change,
    axles: [Option<Trial<'a>>; 2],
}

/// Keeps the gravest weight of findings, and ends at one that is beyond.
fn gravest(
    work: impl FnOnce(
        &mut dyn FnMut(&Definition, Position, &Found, Option<&Approach>) -> ControlFlow<()>,
    ) -> ControlFlow<()>,
) -> Verdict {
    let mut worst = Verdict::Within;
    let _: ControlFlow<()> = work(&mut |definition, _, found, _| {
        worst = worst.graver(definition.weight(found));
        if worst == Verdict::Beyond { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    });
    worst
}

impl Trial<'_> {
    fn judge(&self, case: &Case<'_>, asked: impl Fn(CheckId) -> bool) -> Verdict {
        gravest(|hear| judge_axle(case, self.is_only, |definition| asked(definition.id), hear))
    }

    fn judge_part(&self, setup: &Setup, part: Part) -> Verdict {
        let proposed = SetupFacts::new(setup, &self.on);
        self.judge(&self.case(Some(&proposed)), |id| part_of(id, setup) == part)
    }

    /// The verdict on what moves, and by how many nanometres a wheel may be moved at least before that changes.
    fn movement(&self, case: &Case<'_>) -> (Verdict, i32) {
        let definition = CheckId::SweptClearance.definition();
        let swept = case.car_rules().map_or_else(not_swept, |()| swept(case));
        let (mut worst, mut stays) = (Verdict::Within, f64::INFINITY);
        for mut end in swept {
            worst = worst.graver(definition.weight(definition.settled(case, &mut end.found)));
            let holds = self.original_clears || !end.steady.if_original_clears;
            stays = stays.min(if holds { in_mm(end.steady.by) } else { 0.0 });
        }
        (worst, ((stays - UNSURE).clamp(0.0, 600.0) * 1e6) as i32)
    }

    fn windows(&self, setup: &Setup) -> Windows {
        let mut proposed = SetupFacts::new(setup, &self.on);
        let mut windows = Windows::OPEN;
        windows.wherever = self.judge(&self.case(Some(&proposed)), |id| part_of(id, setup) == Part::Rim);
        if windows.wherever == Verdict::Beyond {
            return windows;
        }
        if proposed.centres.is_none() {
            let of_place = self.judge(&self.case(Some(&proposed)), |id| part_of(id, setup) == Part::Place);
            windows.wherever = windows.wherever.graver(of_place);
            return windows;
        }
        let spacing = setup.hub_spacing();
        for definition in DEFINITIONS.iter().filter(|d| part_of(d.id, setup) == Part::Place) {
            let find = |nm| {
                proposed.centres = Some(self.on.centres(Inset::from_nm(nm), spacing));
                of_axle(&self.case(Some(&proposed)), self.is_only, definition)
            };
            if !narrow(&mut windows, definition, find) {
                break;
            }
        }
        windows
    }
}

/// Narrows windows to where a check of the place is no graver; false where it is beyond wherever they stand.
fn narrow(
    windows: &mut Windows,
    definition: &Definition,
    mut find: impl FnMut(i32) -> Option<Found>,
) -> bool {
    let [Some(first), Some(last)] = [find(-LAST), find(LAST)] else { return true };
    let [at_first, at_last] = [&first, &last].map(|found| Verdict::Within.graver(definition.weight(found)));
    for threshold in [Verdict::Marginal, Verdict::Beyond] {
        let is_over = |verdict: Verdict| verdict.graver(threshold) == verdict;
        if is_over(at_first) == is_over(at_last) {
            if is_over(at_first) {
                windows.wherever = windows.wherever.graver(threshold);
            }
            continue;
        }
        let mut is_over_at = |nm| {
            let found = find(nm);
            found.is_some_and(|found| is_over(Verdict::Within.graver(definition.weight(&found))))
        };
        let hint = where_margin_ends([&first, &last], threshold);
        let (low, high) = edge(is_over(at_first), hint, &mut is_over_at);
        let inside = if is_over(at_first) {
            Span { least: high, most: LAST }
        } else {
            Span { least: -LAST, most: low }
        };
        let window = if threshold == Verdict::Beyond { &mut windows.fits } else { &mut windows.as_good };
        *window = window.and(inside);
    }
    windows.wherever != Verdict::Beyond
}

/// Where the margin of two findings at either end ends, which is linear between them: a guess.
fn where_margin_ends([first, last]: [&Found; 2], threshold: Verdict) -> Option<i32> {
    let margin = |found: &Found| {
        let finding = found.as_ref().ok()?;
        let nominal = finding.nominal.filter(|_| threshold == Verdict::Beyond);
        finding.limit?.margin(nominal.or(finding.measured)?)
    };
    let (a, b) = (margin(first)?, margin(last)?);
    let share = a / (a - b);
    (0.0..=1.0).contains(&share).then(|| (f64::from(-LAST) + share * 2.0 * f64::from(LAST)) as i32)
}

/// The last inset that is as the first one, and the one behind it, from a guess.
fn edge(at_first: bool, hint: Option<i32>, is_over_at: &mut impl FnMut(i32) -> bool) -> (i32, i32) {
    const NEAR: i32 = 4;
    let (mut low, mut high) = (-LAST, LAST);
    if let Some(hint) = hint {
        for at in [hint - NEAR, hint + NEAR] {
            let at = at.clamp(-LAST, LAST);
            if low < at && at < high {
                if is_over_at(at) == at_first { low = at } else { high = at }
            }
        }
    }
    while high - low > 1 {
        let middle = low + (high - low) / 2;
        if is_over_at(middle) == at_first { low = middle } else { high = middle }
    }
    (low, high)
}

impl<'a> Parts<'a> {
    pub(crate) fn new(
        vehicle: &'a Vehicle,
        original: &'a Setups,
        conditions: &'a Conditions,
        limits: &'a Limits,
    ) -> Self {
        let axles = Trial::of_vehicle(vehicle, original, conditions, limits);
        Self { change: Change { original: *original, proposed: *original }, axles }
    }

    /// The axle of a number, if something goes on it: it has an original setup.
    fn chosen(&self, n: usize) -> Option<&Trial<'a>> {
        self.axles.get(n)?.as_ref().filter(|axle| axle.original.is_some())
    }

    pub(crate) fn is_chosen(&self, n: usize) -> bool {
        self.chosen(n).is_some()
    }

    pub(crate) fn original(&self, n: usize) -> Option<&Setup> {
        self.chosen(n)?.original.as_deref()
    }

    /// Whether anything stands around a wheel of an axle.
    pub(crate) fn has_surroundings(&self, n: usize) -> bool {
        self.chosen(n).is_some_and(|axle| axle.on.axle.surroundings().next().is_some())
    }

    /// The verdict on the axles that nothing goes on.
    pub(crate) fn of_the_rest(&self) -> Verdict {
        let rest = self.axles.iter().flatten().filter(|axle| axle.original.is_none());
        rest.map(|axle| axle.judge(&axle.case(None), |_| true)).fold(Verdict::Within, Verdict::graver)
    }

    /// The verdict on a tire on one axle, whatever wheel it is on.
    pub(crate) fn of_tire(&self, n: usize, tire: &Setup) -> Verdict {
        self.chosen(n)
            .map_or(Verdict::Within, |axle| axle.judge_part(&self.beside_the_original(n, *tire), Part::Tire))
    }

    /// A tire on a wheel that is not the original.
    fn beside_the_original(&self, n: usize, tire: Setup) -> Setup {
        let wheel = self.original(n).map_or(tire, |original| original.at(self.away()));
        tire.on_wheel_of(&wheel)
    }

    /// The verdict on front and rear together, each with its tire.
    pub(crate) fn of_tires(&self, tires: [&Setup; 2]) -> Verdict {
        let setups: [_; 2] = core::array::from_fn(|n| {
            tires.get(n).filter(|_| self.is_chosen(n)).map(|tire| self.beside_the_original(n, **tire))
        });
        let facts: [_; 2] = core::array::from_fn(|n| {
            let axle = self.axles.get(n)?.as_ref()?;
            Some(SetupFacts::new(setups.get(n)?.as_ref()?, &axle.on))
        });
        let case = |n: usize| Some(self.axles.get(n)?.as_ref()?.case(facts.get(n)?.as_ref()));
        let cases = [case(0), case(1)];
        gravest(|hear| judge_vehicle(&cases, |_| true, hear))
    }

    /// The verdict on a wheel on one axle, whatever tire is on it.
    pub(crate) fn of_wheel(&self, n: usize, wheel: &Setup) -> Verdict {
        let of = |axle: &Trial<'_>| {
            let tire = axle.original.as_deref().unwrap_or(wheel);
            axle.judge_part(&tire.on_wheel_of(wheel), Part::Wheel)
        };
        self.chosen(n).map_or(Verdict::Within, of)
    }

    /// What a tire meets of a wheel.
    pub(crate) fn rim(&self, wheel: &Setup) -> Setup {
        wheel.bare(self.away(), self.has_surroundings(0) || self.has_surroundings(1))
    }

    /// An inset at which no original stands.
    fn away(&self) -> Inset {
        let original = |n| self.original(n).and_then(|setup| setup.wheel().inset());
        let stands = [original(0), original(1)];
        let mut places = [LAST, -LAST, 0].into_iter().map(Inset::from_nm);
        places.find(|place| !stands.contains(&Some(*place))).unwrap_or(Inset::from_nm(LAST))
    }

    /// Over all insets, the verdict on a tire on a rim.
    pub(crate) fn of_pair(&self, n: usize, tire: &Setup, rim: &Setup) -> Windows {
        self.chosen(n).map_or(Windows::OPEN, |axle| axle.windows(&tire.on_wheel_of(rim)))
    }

    /// The verdict on a tire on a rim where it stands, but for what moves.
    pub(crate) fn of_pair_where_it_stands(&self, n: usize, setup: &Setup) -> Verdict {
        let Some(axle) = self.chosen(n) else { return Verdict::Within };
        let proposed = SetupFacts::new(setup, &axle.on);
        axle.judge(&axle.case(Some(&proposed)), |id| matches!(part_of(id, setup), Part::Rim | Part::Place))
    }

    /// The verdict on what moves, and between which insets it is the same at least.
    pub(crate) fn of_movement(&self, n: usize, setup: &Setup) -> (Verdict, Span) {
        let Some(axle) = self.chosen(n) else { return (Verdict::Within, Span::WHOLE) };
        let proposed = SetupFacts::new(setup, &axle.on);
        let (verdict, stays) = axle.movement(&axle.case(Some(&proposed)));
        let around = |inset| Span::around(inset, stays);
        (verdict, setup.wheel().inset_or_assumed().map_or(Span::WHOLE, around))
    }

    /// The verdict on the whole of what goes on.
    pub(crate) fn of_all(&self, proposed: Setups) -> Verdict {
        let Some(on) = self.axles.iter().flatten().next().map(|axle| &axle.on) else {
            return Verdict::NotAssessed;
        };
        super::verdict(on.vehicle, &Change { proposed, ..self.change }, on.conditions, on.limits)
    }
}
