//! Two proposals for one vehicle side by side: what differs between them, verdict by verdict.

#[cfg(feature = "serde")]
mod further;
mod print;
#[cfg(feature = "serde")]
mod serial;

use core::cmp::Ordering;

use super::check::{Check, CheckId, Position, Verdict};
use super::document::Document;
use super::moves::{Move, MoveId};
use super::pressures::Pressures;
use super::space::Approach;
use super::{Conditions, Limits};
use crate::record::words;

words! {
    /// What two proposals for one vehicle have in common, by its key in a scenario file.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::comparison::Ground::Conditions.name(), "use");
    /// ```
    Ground {
        /// The vehicle as its maker built it, and what was measured on it.
        Vehicle = "vehicle",
        /// What its maker put on it.
        Original = "original",
        /// Its axles beside the front and the rear one, but for what is proposed for them.
        MoreAxles = "more_axles",
        /// How it is used.
        Conditions = "use",
        /// The limits that it is held against.
        Limits = "limits",
        /// Where its values come from, but for those of what is proposed.
        Sources = "sources",
    }
}

/// A proposal as it was judged: its report with all that it rests on.
#[derive(Clone, Copy, Debug)]
pub struct Proposal<'a> {
    document: Document<'a>,
    conditions: &'a Conditions,
    limits: &'a Limits,
}

impl<'a> Document<'a> {
    /// With the use and the limits that its report was made under, to be held against another.
    pub const fn under(self, conditions: &'a Conditions, limits: &'a Limits) -> Proposal<'a> {
        Proposal { document: self, conditions, limits }
    }
}

/// Something found of both proposals, or of one of them alone.
///
/// ```
/// use beadseat::fitment::comparison::Pair;
/// assert!(Pair::Both(1, 2).differs() && Pair::First(1).differs() && !Pair::Both(1, 1).differs());
/// assert_eq!(Pair::Both(1, 2).swapped(), Pair::Both(2, 1));
/// assert_eq!((Pair::Second(3).first(), Pair::Second(3).second()), (None, Some(&3)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(clippy::exhaustive_enums, reason = "there is no other way")]
pub enum Pair<T> {
    /// Of both, the first proposal's in front.
    Both(T, T),
    /// Of the first proposal alone.
    First(T),
    /// Of the second proposal alone.
    Second(T),
}

impl<T> Pair<T> {
    /// That of the first proposal, if it has one.
    pub const fn first(&self) -> Option<&T> {
        match self {
            Self::Both(first, _) | Self::First(first) => Some(first),
            Self::Second(_) => None,
        }
    }

    /// That of the second proposal, if it has one.
    pub const fn second(&self) -> Option<&T> {
        match self {
            Self::Both(_, second) | Self::Second(second) => Some(second),
            Self::First(_) => None,
        }
    }

    /// One of the two, for what both have in common.
    const fn either(&self) -> &T {
        match self {
            Self::Both(found, _) | Self::First(found) | Self::Second(found) => found,
        }
    }

    /// The same with the two exchanged.
    pub fn swapped(self) -> Self {
        match self {
            Self::Both(first, second) => Self::Both(second, first),
            Self::First(first) => Self::Second(first),
            Self::Second(second) => Self::First(second),
        }
    }

    fn each(&self) -> [Option<&T>; 2] {
        [self.first(), self.second()]
    }

    /// Whether two things asked of them are not the same.
    fn differs_by<V: PartialEq>(&self, ask: impl Fn(&T) -> V) -> bool {
        let [first, second] = self.each().map(|found| found.map(&ask));
        first != second
    }

    fn of(first: Option<T>, second: Option<T>) -> Option<Self> {
        match (first, second) {
            (Some(first), Some(second)) => Some(Self::Both(first, second)),
            (first, second) => first.map(Self::First).or(second.map(Self::Second)),
        }
    }

    /// Pairs what two lists have: that of the first in its order, then what only the second has.
    fn all<I: Iterator<Item = T>>(
        [first, second]: [impl Fn() -> I + Copy; 2],
        same: impl Fn(&T, &T) -> bool + Copy,
    ) -> impl Iterator<Item = Self> {
        let of_first = first().map(move |found| match second().find(|other| same(&found, other)) {
            Some(other) => Self::Both(found, other),
            None => Self::First(found),
        });
        let of_second = second().filter(move |found| !first().any(|other| same(found, &other)));
        of_first.chain(of_second.map(Self::Second))
    }
}

impl<T: PartialEq> Pair<T> {
    /// Whether the two are not the same in everything.
    pub fn differs(&self) -> bool {
        let [first, second] = self.each();
        first != second
    }
}

impl Pair<Check> {
    /// Which question the findings answer.
    pub const fn id(&self) -> CheckId {
        self.either().id
    }

    /// What was checked: an axle, its end, or the whole vehicle.
    pub const fn position(&self) -> Position {
        self.either().place
    }

    /// Whether the verdicts are not the same.
    pub fn verdict_differs(&self) -> bool {
        self.differs_by(|check| check.verdict)
    }

    /// Whether what was measured is not the same.
    pub fn measured_differs(&self) -> bool {
        self.differs_by(Check::measured)
    }

    /// Whether the margins are not the same.
    pub fn margin_differs(&self) -> bool {
        self.differs_by(Check::margin_number)
    }

    /// By the graver of the two: its verdict, what is at stake, how far outside; then by name and place.
    fn by_severity(&self, other: &Self) -> Ordering {
        let verdict = |pair: &Self| {
            let ranks = pair.each().into_iter().flatten().map(|check| match check.verdict {
                Verdict::Beyond => 0_u8,
                Verdict::Marginal => 1,
                Verdict::NotAssessed => 2,
                Verdict::Within => 3,
                Verdict::NotApplicable => 4,
            });
            ranks.min()
        };
        let margin = |pair: &Self| {
            let margins = pair.each().into_iter().flatten().map(Check::relative_margin);
            margins.fold(f64::INFINITY, f64::min)
        };
        let harm = |pair: &Self| pair.id().definition().harm;
        verdict(self)
            .cmp(&verdict(other))
            .then_with(|| harm(self).cmp(&harm(other)))
            .then_with(|| margin(self).total_cmp(&margin(other)))
            .then_with(|| (self.id() as u8).cmp(&(other.id() as u8)))
            .then_with(|| (self.position() as u8).cmp(&(other.position() as u8)))
    }
}

impl Pair<Move> {
    /// What it is that moves.
    pub const fn id(&self) -> MoveId {
        self.either().id()
    }

    /// The axle on which it moves.
    pub const fn position(&self) -> Position {
        self.either().position()
    }
}

impl Pair<Pressures> {
    /// The axle that the pressures are for.
    pub const fn position(&self) -> Position {
        self.either().position()
    }
}

/// Two proposals held against each other. `Display` lays them out for a terminal of 80 columns: what else differs
/// between them first, then what differs of what was found.
///
/// ```
/// use beadseat::fitment::{Change, CheckId, Conditions, Document, Limits, Setup, Verdict};
/// use beadseat::fitment::comparison::Comparison;
/// use beadseat::vehicle::{Kind, Vehicle};
/// let car = Vehicle::new(Kind::Passenger);
/// let (conditions, limits) = (Conditions::default(), Limits::default());
/// let old = Setup::parse("205/55R16", "6.5Jx16 ET46")?;
/// let changes = [("225/45R17", "7.5Jx17 ET42"), ("225/45R17", "7.5Jx16 ET42")]
///     .map(|(tire, wheel)| Setup::parse(tire, wheel).map(|new| Change::front(old, new)));
/// let [a, b] = changes;
/// let (a, b) = (a?, b?);
/// let [of_a, of_b] = [&a, &b].map(|change| change.assess(&car));
/// let proposals = [(&of_a, &a), (&of_b, &b)]
///     .map(|(report, change)| Document::new(report, &car, change).under(&conditions, &limits));
/// let comparison = Comparison::new(proposals);
/// assert_eq!(comparison.differs_in().count(), 0); // one vehicle, one use, one law
/// let gravest = comparison.checks().next().ok_or("nothing was found")?;
/// assert_eq!(gravest.id(), CheckId::BeadDiameter);
/// assert_eq!(gravest.second().map(|check| check.verdict()), Some(Verdict::Beyond));
/// assert!(gravest.verdict_differs());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Comparison<'a> {
    proposals: [Proposal<'a>; 2],
    keys: &'a [&'a str],
}

impl<'a> Comparison<'a> {
    /// Of two proposals, which should be for one vehicle: [`Comparison::differs_in`] says whether they are.
    pub const fn new(proposals: [Proposal<'a>; 2]) -> Self {
        Self { proposals, keys: &[] }
    }

    /// With the keys in which they differ, where the caller knows them better than by their object:
    /// `vehicle.front.max_load_kg`. An object that differs and of which no key is named is named itself.
    pub const fn naming(self, keys: &'a [&'a str]) -> Self {
        Self { keys, ..self }
    }

    fn documents(&self) -> [Document<'a>; 2] {
        self.proposals.map(|proposal| proposal.document)
    }

    /// What differs besides what is proposed: then they are not two proposals for one vehicle.
    pub fn differs_in(&self) -> impl Iterator<Item = Ground> + use<> {
        let [a, b] = &self.proposals;
        let originals = [a, b].map(|proposal| &proposal.document.change().original);
        let differs = [
            (Ground::Vehicle, a.document.vehicle() != b.document.vehicle()),
            (Ground::Original, originals[0] != originals[1]),
            (Ground::MoreAxles, !a.document.has_same_axles(&b.document)),
            (Ground::Conditions, a.conditions != b.conditions),
            (Ground::Limits, a.limits != b.limits),
            (Ground::Sources, a.document.rests_elsewhere(&b.document)),
        ];
        differs.into_iter().filter_map(|(ground, differs)| differs.then_some(ground))
    }

    /// The keys of what differs besides: those that were named, else the objects.
    fn differing_keys(&self) -> impl Iterator<Item = &'a str> + use<'a> {
        let keys = self.keys;
        self.differs_in().flat_map(move |ground| {
            let is_of = move |key: &str| {
                key.strip_prefix(ground.name())
                    .is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
            };
            let own = keys.iter().copied().filter(move |key| is_of(key));
            let whole = (!keys.iter().any(|key| is_of(key))).then_some(ground.name());
            own.chain(whole)
        })
    }

    /// Every finding of either report, once: what decides first, by the graver of the two.
    pub fn checks(&self) -> impl Iterator<Item = Pair<Check>> + use<'a> {
        let reports = self.documents().map(|document| document.report());
        let mut last: Option<Pair<Check>> = None;
        core::iter::from_fn(move || {
            let same = |a: &Check, b: &Check| (a.id, a.place) == (b.id, b.place);
            let all = Pair::all(reports.map(|report| move || report.checks()), same);
            let left = all.filter(|pair| last.is_none_or(|last| pair.by_severity(&last).is_gt()));
            last = left.min_by(Pair::by_severity);
            last
        })
    }

    /// Everything that either proposal moves, once: the front axle first.
    pub fn moves(&self) -> impl Iterator<Item = Pair<Move>> + use<> {
        let [a, b] = self.documents().map(|document| document.moves());
        // A true speed is that at an indication.
        let same = |a: &Move, b: &Move| {
            let is_one = (a.id(), a.position()) == (b.id(), b.position());
            is_one && (a.id() != MoveId::TrueSpeed || a.before() == b.before())
        };
        let [front, rear] = [Position::Front, Position::Rear];
        [front, rear].into_iter().flat_map(|place| MoveId::ALL.iter().map(move |&id| (place, id))).flat_map(
            move |(place, id)| {
                let mut given = 0;
                core::iter::from_fn(move || {
                    given += 1;
                    let is_one = |found: &Move| (found.position(), found.id()) == (place, id);
                    Pair::all([&a, &b].map(|moves| move || moves.iter().filter(is_one)), same).nth(given - 1)
                })
            },
        )
    }

    /// The pressures that the proposals need, by axle.
    pub fn pressures(&self) -> impl Iterator<Item = Pair<Pressures>> + use<'a> {
        let reports = self.documents().map(|document| document.report());
        [Position::Front, Position::Rear].into_iter().filter_map(move |place| {
            let [first, second] = reports.map(|report| report.pressures().find(|p| p.position() == place));
            Pair::of(first, second)
        })
    }

    /// The nearest approach of each wheel to what stands around it, where either report has one.
    pub fn approaches(&self) -> impl Iterator<Item = Pair<Approach>> + use<'a> {
        let reports = self.documents().map(|document| document.report());
        let ends = [Position::FrontLeft, Position::FrontRight, Position::RearLeft, Position::RearRight];
        ends.into_iter().filter_map(move |place| {
            let [first, second] =
                reports.map(|report| report.approaches().find(|found| found.position() == place));
            Pair::of(first, second)
        })
    }
}
