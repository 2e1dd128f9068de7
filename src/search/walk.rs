//! The walk over the lattice, from one candidate to the next.

use core::ops::Range;

use super::candidate::Candidate;
use super::choice::{Choice, Choices};
use super::lattice::{self, Lattice, RimWidths};
use super::needs::{self, Needs};
use super::reach::{self, Both};
use super::wishes::{Keep, Wishes};

use crate::fitment::space::{InsetRange, RangeEnd};
use crate::fitment::{
    Change, CheckId, Conditions, DependsOn, Limits, Position, Report, Setup, Setups, Trial, Tried, Verdict,
    assess, fails_alone, fails_together,
};
use crate::tire::{ServiceDescription, Tire, TireSize};
use crate::units::{in_mm, in_ratio, mm};
use crate::vehicle::{Axle, Vehicle};
use crate::wheel::{Inset, Wheel};

/// The thicknesses of spacers that are tried behind wheels that stay, in millimetres; the first is none. Common
/// practice, no source.
const SPACERS: [f64; 9] = [0.0, 3.0, 5.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0];

/// A search for all that fits a vehicle in place of its original setup.
///
/// An axle is chosen for if it has an original setup. New wheels are alike on both axles; where wheels or tires stay,
/// each axle keeps its own.
#[derive(Clone, Copy, Debug)]
pub struct Search<'a> {
    pub(super) vehicle: &'a Vehicle,
    pub(super) original: &'a Setups,
    pub(super) conditions: &'a Conditions,
    pub(super) limits: &'a Limits,
    pub(super) wishes: &'a Wishes,
}

impl<'a> Search<'a> {
    /// Over a vehicle and what its maker put on it, as it is used, by limits, for what is wished.
    pub const fn new(
        vehicle: &'a Vehicle,
        original: &'a Setups,
        conditions: &'a Conditions,
        limits: &'a Limits,
        wishes: &'a Wishes,
    ) -> Self {
        Self { vehicle, original, conditions, limits, wishes }
    }

    /// What an assessment says of setups, on the vehicle or on one that is changed.
    pub(super) fn report(&self, vehicle: &Vehicle, proposed: Setups) -> Report {
        let change = Change { original: *self.original, proposed };
        assess(vehicle, &change, self.conditions, self.limits)
    }

    /// With snow tires, where they are wished for.
    fn in_season(&self, setup: Setup) -> Setup {
        if self.wishes.winter() { setup.with_snow(true) } else { setup }
    }

    fn lattice(&self) -> Lattice {
        let any = self.original.front.or(self.original.rear);
        let size = any.map_or(crate::literal!(TireSize, "205/55R16"), |setup| setup.tire().size());
        Lattice::of(size, self.vehicle.kind())
    }

    /// How many tires are walked, each with all rims or spacers; one where the tires stay.
    pub fn sizes(&self) -> u32 {
        if self.wishes.keep() == Keep::Tires { 1 } else { self.lattice().sizes() }
    }

    /// How many points the lattice has: each size on each rim width. Where it has rims with seats of 15° these are the quarter
    /// inches, of which rims with seats of 5° have every other one only.
    pub fn points(&self) -> u64 {
        u64::from(self.sizes()) * u64::from(self.beside())
    }

    /// How many points each size has.
    fn beside(&self) -> u32 {
        match self.wishes.keep() {
            Keep::Wheels if self.wishes.spacers() => SPACERS.len() as u32,
            Keep::Wheels => 1,
            Keep::Nothing | Keep::Tires => self.rim_widths().count(),
        }
    }

    /// The widths of rim that tires are tried on.
    fn rim_widths(&self) -> RimWidths {
        let originals = self.original.front.iter().chain(&self.original.rear);
        let of_own = originals.map(|setup| RimWidths::on(setup.tire().size().rim_diameter()));
        let of_own = of_own.filter(|_| self.wishes.keep() == Keep::Tires).reduce(RimWidths::or);
        of_own.unwrap_or_else(|| self.lattice().rim_widths())
    }

    /// One tire on one wheel for each axle that is chosen for, with what is known of the hub and what it must be bought
    /// with where it does not say so itself; with the least that could be bought, where nothing would do.
    pub fn completed(&self, tire: Tire, wheel: Wheel) -> Setups {
        let candidates = self.part(0..0);
        let of = |trial: Option<&Trial<'_>>| {
            let (trial, axle) = (trial?, trial?.axle());
            let hub = axle.hub();
            let wheel = wheel
                .or_as_bought(hub.and_then(|hub| hub.bolt_circle()), hub.and_then(|h| h.spigot()?.bore()));
            let setup = self.in_season(for_hub(Setup::new(tire, wheel), axle));
            Some(needs::bought(trial, axle, setup, Keep::Nothing).setup)
        };
        let [front, rear] = candidates.trials();
        Setups { front: of(front), rear: of(rear) }
    }

    /// All that fits, in the order of the lattice.
    pub fn candidates(&self) -> Candidates<'a> {
        self.part(0..self.sizes())
    }

    /// All that fits of a range of sizes, so that a search can be split or its progress told.
    pub fn part(&self, sizes: Range<u32>) -> Candidates<'a> {
        let Self { vehicle, original, conditions, limits, .. } = *self;
        // An axle without an original is not chosen for.
        let is_chosen = |trial: &Trial<'_>| trial.original().is_some();
        let [front, rear] = Trial::of_vehicle(vehicle, original, conditions, limits);
        Candidates {
            front: front.filter(is_chosen),
            rear: rear.filter(is_chosen),
            search: *self,
            lattice: self.lattice(),
            rim_widths: self.rim_widths(),
            points: self.beside(),
            sizes,
            beside: 0,
            stage: Stage::From(None),
            given: [false; PLACES],
            fallen: [0; CheckId::ALL.len()],
            tried: 0,
        }
    }
}

/// What a [`Search`] finds, one candidate after the other.
pub struct Candidates<'a> {
    search: Search<'a>,
    pub(super) front: Option<Trial<'a>>,
    pub(super) rear: Option<Trial<'a>>,
    lattice: Lattice,
    rim_widths: RimWidths,
    /// How many each size has.
    points: u32,
    sizes: Range<u32>,
    beside: u32,
    stage: Stage,
    /// Which of the places where the original's wheels stand lie in an interval of this point that was given.
    given: [bool; PLACES],
    fallen: [u32; CheckId::ALL.len()],
    tried: u64,
}

impl core::fmt::Debug for Candidates<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("Candidates").field("sizes", &self.sizes).field("beside", &self.beside).finish()
    }
}

/// What of a point is looked at next.
#[derive(Clone, Copy)]
enum Stage {
    /// Its insets, from one on if there was an interval before.
    From(Option<Inset>),
    /// The places where the original's wheels stand, by their number: what does not change there may be excused where
    /// a change to it would not be.
    AsBuilt(usize),
}

/// Where the original's wheels stand: each at its own inset, all at the front's, all at the rear's.
const PLACES: usize = 3;

/// Why a point gives no candidate.
pub(super) struct Rejected {
    /// The check that is beyond; none where nobody wished for it, or there is no such thing.
    by: Option<CheckId>,
    /// Whether all points of the size give none.
    whole_size: bool,
}

impl Rejected {
    const UNWANTED: Self = Self { by: None, whole_size: false };
    const SIZE_UNWANTED: Self = Self { by: None, whole_size: true };

    pub(super) const fn by(check: CheckId) -> Self {
        Self::by_end(Some(check))
    }

    pub(super) const fn whole_size(check: CheckId) -> Self {
        Self { by: Some(check), whole_size: true }
    }

    /// By what ends a range, which may be nothing.
    const fn by_end(check: Option<CheckId>) -> Self {
        Self { by: check, whole_size: false }
    }
}

impl Iterator for Candidates<'_> {
    type Item = Candidate;

    fn next(&mut self) -> Option<Candidate> {
        while self.sizes.start < self.sizes.end {
            match self.stage {
                Stage::From(inset) => match self.examine(inset) {
                    Ok((candidate, rest)) => {
                        self.tried += u64::from(inset.is_none());
                        self.give(&candidate);
                        self.stage = rest.map_or(Stage::AsBuilt(0), |rest| Stage::From(Some(rest)));
                        return Some(candidate);
                    }
                    Err(rejected) => {
                        self.stage = Stage::AsBuilt(0);
                        if inset.is_none() {
                            self.count(&rejected);
                        }
                    }
                },
                Stage::AsBuilt(place) => {
                    let Some(is_given) = self.given.get(place) else {
                        self.step();
                        continue;
                    };
                    let found = if *is_given { None } else { self.as_built(place) };
                    self.stage = Stage::AsBuilt(place + 1);
                    if found.is_some() {
                        return found;
                    }
                }
            }
        }
        None
    }
}

impl<'a> Candidates<'a> {
    /// How many sizes are left to walk.
    pub fn sizes_left(&self) -> u32 {
        self.sizes.end - self.sizes.start
    }

    /// How many points were looked at so far, whether they gave anything or fell: those of a size that nobody wished for are
    /// passed over.
    pub fn tried(&self) -> u64 {
        self.tried
    }

    /// The checks at which points fell so far, each with how many: the first one of each point.
    pub fn fallen(&self) -> impl Iterator<Item = (CheckId, u32)> {
        CheckId::ALL.iter().copied().zip(self.fallen).filter(|(_, points)| *points > 0)
    }

    fn count(&mut self, rejected: &Rejected) {
        let points = if rejected.whole_size { self.points - self.beside } else { 1 };
        if let Some(fallen) = rejected.by.and_then(|check| self.fallen.get_mut(check as usize)) {
            *fallen += points;
        }
        let is_passed_over = rejected.by.is_none() && rejected.whole_size;
        self.tried += if is_passed_over { 0 } else { u64::from(points) };
        self.beside += points - 1;
    }

    /// Whether any point is left.
    pub(super) fn is_at_a_point(&self) -> bool {
        self.sizes.start < self.sizes.end
    }

    pub(super) const fn search(&self) -> &Search<'a> {
        &self.search
    }

    pub(super) const fn wishes(&self) -> &'a Wishes {
        self.search.wishes
    }

    /// Whether this point is one of a spacer behind wheels that stay.
    pub(super) const fn has_spacer(&self) -> bool {
        self.beside > 0
    }

    /// Goes on to the next point that may give something.
    pub(super) fn step_over(&mut self, rejected: &Rejected) {
        if rejected.whole_size {
            self.beside = self.points;
        }
        self.step();
    }

    /// The axles that are chosen for: the front one, the rear one.
    pub(super) fn trial(&self, n: usize) -> Option<&Trial<'a>> {
        self.trials().get(n).copied().flatten()
    }

    /// Setups, each with its axle.
    fn with_trials(&self, setups: &[Option<Setup>; 2]) -> [Option<(&Trial<'a>, Setup)>; 2] {
        core::array::from_fn(|n| self.trial(n).zip(setups.get(n).copied().flatten()))
    }

    /// The same away from the inset of the original, so that no change is taken for none.
    pub(super) fn away(&self, setups: &[Option<Setup>; 2]) -> [Option<(&Trial<'a>, Setup)>; 2] {
        self.with_trials(setups).map(|on| {
            let (trial, setup) = on?;
            Some((trial, away(&setup, trial.original()?)))
        })
    }

    pub(super) fn step(&mut self) {
        (self.stage, self.given) = (Stage::From(None), [false; PLACES]);
        self.beside += 1;
        if self.beside >= self.points {
            self.beside = 0;
            self.sizes.start += 1;
        }
    }

    /// The setup of this point on an axle, without what it must be bought with; at an inset only where its wheel stays.
    fn setup(&self, trial: &Trial<'_>, size: Option<TireSize>) -> Option<Setup> {
        let original = trial.original()?;
        let wishes = self.search.wishes;
        let tire = size.map_or(original.tire(), Tire::of_size);
        let setup = match wishes.keep() {
            Keep::Wheels => {
                let spacer = *SPACERS.get(self.beside as usize)?;
                let own = original.spacer().unwrap_or_default();
                let setup = original.with_another_tire(tire);
                if spacer > 0.0 { setup.with_spacer(own + mm(spacer)).ok()? } else { setup }
            }
            Keep::Nothing | Keep::Tires => {
                let hub = trial.axle().hub();
                let diameter = tire.size().rim_diameter();
                let (holes, spigot) = (hub.and_then(|h| h.bolt_circle()), hub.and_then(|h| h.spigot()));
                let wheel =
                    lattice::wheel(self.rim_widths.get(self.beside, diameter)?, diameter, holes, spigot)?;
                let setup =
                    if size.is_some() { Setup::new(tire, wheel) } else { original.with_another_wheel(wheel) };
                for_hub(setup, trial.axle())
            }
        };
        Some(self.search.in_season(setup))
    }

    /// Whether a size is wished for on an axle.
    fn is_wanted(&self, trial: &Trial<'_>, size: TireSize) -> bool {
        let wishes = self.search.wishes;
        let original = trial.original();
        let kept = original.filter(|_| wishes.keep() == Keep::Wheels).map(|o| o.wheel().size().diameter());
        let is_diameter = |only| size.rim_diameter() == only;
        let near = || {
            let within = wishes.diameter_within()?;
            let (new, old) =
                (size.overall_diameter_nominal()?, original?.tire().size().overall_diameter_nominal()?);
            Some((in_mm(new) / in_mm(old) - 1.0).abs() <= in_ratio(within))
        };
        wishes.rim_diameter().is_none_or(is_diameter)
            && kept.is_none_or(is_diameter)
            && wishes.least_width().is_none_or(|least| size.nominal_width().is_some_and(|w| w >= least))
            && (wishes.diameter_within().is_none() || near() == Some(true))
    }

    pub(super) fn number(&self) -> u64 {
        u64::from(self.sizes.start) * u64::from(self.points) + u64::from(self.beside)
    }

    fn size(&self) -> Result<Option<TireSize>, Rejected> {
        match self.search.wishes.keep() {
            Keep::Tires => Ok(None),
            Keep::Nothing | Keep::Wheels => {
                self.lattice.size(self.sizes.start).map(Some).ok_or(Rejected::SIZE_UNWANTED)
            }
        }
    }

    fn trials(&self) -> [Option<&Trial<'a>>; 2] {
        [self.front.as_ref(), self.rear.as_ref()]
    }

    /// The setups of this point, without what they must be bought with.
    pub(super) fn setups(&self) -> Result<[Option<Setup>; 2], Rejected> {
        let size = self.size()?;
        let mut setups = [None; 2];
        for (place, trial) in setups.iter_mut().zip(self.trials()) {
            let Some(trial) = trial else { continue };
            if size.is_some_and(|size| !self.is_wanted(trial, size)) {
                return Err(Rejected::SIZE_UNWANTED);
            }
            *place = Some(self.setup(trial, size).ok_or(Rejected::UNWANTED)?);
        }
        Ok(setups)
    }

    /// Whether a size is what an axle had: of such a one, the rim of the original may be excused.
    fn is_original_size(&self, setups: &[Option<Setup>; 2]) -> bool {
        let pairs = self.trials().into_iter().zip(setups);
        pairs.into_iter().any(|(trial, setup)| {
            let original = trial.and_then(Trial::original);
            original.zip(setup.as_ref()).is_some_and(|(o, s)| o.tire().size() == s.tire().size())
        })
    }

    /// The setups with what they must be bought with; new tires are alike on both axles.
    pub(super) fn bought(&self, setups: &[Option<Setup>; 2]) -> Result<[Option<(Setup, Needs)>; 2], CheckId> {
        let buy = |setups: [Option<Setup>; 2]| {
            let mut bought = [None; 2];
            for ((place, trial), setup) in bought.iter_mut().zip(self.trials()).zip(setups) {
                if let (Some(trial), Some(setup)) = (trial, setup) {
                    *place =
                        Some(needs::bought(trial, trial.axle(), setup, self.search.wishes.keep()).passed()?);
                }
            }
            Ok(bought)
        };
        let bought: [Option<(Setup, Needs)>; 2] = buy(*setups)?;
        let [Some((front, of_front)), Some((rear, of_rear))] = bought else { return Ok(bought) };
        let (front, rear) = (front.tire(), rear.tire());
        let (Some((a, b)), Keep::Nothing) = (front.service().zip(rear.service()), self.search.wishes.keep())
        else {
            return Ok(bought);
        };
        if front == rear {
            return Ok(bought);
        }
        let dual = a.dual().into_iter().chain(b.dual()).max();
        let single = a.single().max(b.single());
        let Some(service) = ServiceDescription::new(single, dual, a.speed().max(b.speed())) else {
            return Ok(bought);
        };
        let strength = |tire: &Tire| (tire.load_version(), tire.load_range());
        let stronger = if strength(&rear) > strength(&front) { rear } else { front };
        let with = |tire: Tire| {
            let tire = tire.with_service(service);
            let alike = |setup: &Option<Setup>| setup.map(|s| s.called(tire));
            let mut again = buy([alike(&setups[0]), alike(&setups[1])])?;
            for ((place, trial), needs) in again.iter_mut().zip(self.trials()).zip([of_front, of_rear]) {
                if let (Some((_, own)), Some(trial)) = (place, trial) {
                    own.as_alike(&needs, trial, &tire);
                }
            }
            Ok(again)
        };
        // What is stronger asks for more pressure, which the other axle may not have.
        with(stronger).or_else(|_| with(setups[0].map_or(front, |setup| setup.tire())))
    }

    /// The candidate of setups at their insets, if an assessment agrees.
    fn confirmed(
        &self,
        bought: &[Option<(Setup, Needs)>; 2],
        insets: [Option<InsetRange>; 2],
    ) -> Result<Candidate, Rejected> {
        let on = core::array::from_fn(|n| {
            let ((setup, needs), insets) = (*bought.get(n)?).zip(*insets.get(n)?)?;
            Some(Choice::new(self.trial(n)?, setup, insets, needs))
        });
        let choices = Choices { number: self.number(), on };
        let report = self.search.report(self.search.vehicle, choices.setups());
        if report.overall() == Verdict::Beyond {
            let beyond = report.by_severity().next().map(|check| check.id());
            return Err(Rejected::by_end(beyond));
        }
        Ok(Candidate::new(choices, &report))
    }

    /// The first candidate of this point whose insets do not lie below one, and where the rest begins.
    fn examine(&self, from: Option<Inset>) -> Result<(Candidate, Option<Inset>), Rejected> {
        let setups = self.setups()?;
        let keeps_wheels = self.search.wishes.keep() == Keep::Wheels;
        let away = self.away(&setups);
        let own = self.with_trials(&setups);
        let fixed: Both<'_> = tried(if keeps_wheels { &own } else { &away });
        let of_size = self.is_original_size(&setups);
        let by_size =
            |check| if keeps_wheels || of_size { Rejected::by(check) } else { Rejected::whole_size(check) };
        let fails = |what| fixed.iter().flatten().find_map(|tried: &Tried<'_>| tried.fails(what));
        if let Some(check) = fails(DependsOn::Size).or_else(|| together(&fixed)) {
            return Err(by_size(check));
        }
        if let Some(check) = fails(DependsOn::Pair) {
            return Err(Rejected::by(check));
        }
        let mut both: Both<'_> = tried(&away);
        if keeps_wheels {
            return self.examine_kept(&setups, &mut both);
        }
        let mut range: Option<InsetRange> = None;
        for tried in both.iter_mut().flatten() {
            let own = tried_insets(tried)?;
            let own = self.wished(tried, own)?;
            range = Some(match range {
                Some(other) => other.and(own).ok_or_else(|| Rejected::by_end(conflict(other, own)))?,
                None => own,
            });
        }
        let mut range = range.ok_or(Rejected::UNWANTED)?;
        let bought = self.bought(&setups).map_err(Rejected::by)?;
        if let Some(from) = from {
            range = InsetRange::between(RangeEnd::new(from, Some(CheckId::SweptClearance)), range.max());
        }
        let with_needs = self.away(&bought.map(|bought| Some(bought?.0)));
        let mut moving: Both<'_> = tried(&with_needs);
        let near = setups_near(&self.trials());
        loop {
            let swept = || Rejected::by(CheckId::SweptClearance);
            let run = reach::first_run(&mut moving, range).ok_or_else(swept)?;
            let rest = (run.max().value() < range.max().value())
                .then(|| Inset::from_hundredths(run.max().value().hundredths() + 1));
            let Some(best) = reach::best(&mut both, run, near) else {
                let Some(rest) = rest else { return Err(narrow(run)) };
                range = InsetRange::between(RangeEnd::new(rest, Some(CheckId::SweptClearance)), range.max());
                continue;
            };
            let at_best = bought.map(|bought| bought.map(|(setup, needs)| (setup.at(best), needs)));
            let insets = bought.map(|bought| bought.map(|_| run));
            return Ok((self.confirmed(&at_best, insets)?, rest));
        }
    }

    /// The candidate of wheels that stay, each at its own inset.
    fn examine_kept(
        &self,
        setups: &[Option<Setup>; 2],
        both: &mut Both<'_>,
    ) -> Result<(Candidate, Option<Inset>), Rejected> {
        for (tried, setup) in both.iter_mut().zip(setups) {
            let (Some(tried), Some(inset)) =
                (tried.as_mut(), setup.as_ref().and_then(|s| s.wheel().inset_or_assumed()))
            else {
                continue;
            };
            let range = tried_insets(tried)?;
            let range = self.wished(tried, range)?;
            if !range.contains(inset) {
                let end = if inset < range.min().value() { range.min() } else { range.max() };
                return Err(Rejected::by_end(end.check()));
            }
        }
        self.kept(setups).map(|candidate| (candidate, None))
    }

    /// The candidate of setups whose insets are their own.
    fn kept(&self, setups: &[Option<Setup>; 2]) -> Result<Candidate, Rejected> {
        let bought = self.bought(setups).map_err(Rejected::by)?;
        let only = |setup: &Setup| {
            let inset = RangeEnd::new(setup.wheel().inset_or_assumed()?, None);
            Some(InsetRange::between(inset, inset))
        };
        let insets = bought.map(|bought| bought.and_then(|(setup, _)| only(&setup)));
        if insets.iter().zip(&bought).any(|(insets, bought)| insets.is_none() && bought.is_some()) {
            return Err(Rejected::UNWANTED);
        }
        self.confirmed(&bought, insets)
    }

    pub(super) fn wished(&self, tried: &mut Tried<'_>, range: InsetRange) -> Result<InsetRange, Rejected> {
        let wishes = self.search.wishes;
        let mut range = range;
        if let Some(most) = wishes.flush_within() {
            range = tried.flush_within(range, most).ok_or(Rejected::UNWANTED)?;
        }
        if wishes.keeps_scrub() {
            range = tried.keeping_scrub(range).ok_or(Rejected::by(CheckId::ScrubRadius))?;
        }
        Ok(range)
    }

    /// The insets of one of the places where the original's wheels stand; nothing where it is told by another already.
    fn original_insets(&self, place: usize) -> Option<[Option<Inset>; 2]> {
        let own = self.trials().map(|trial| trial?.original()?.wheel().inset_or_assumed());
        let only_own = self.search.wishes.keep() == Keep::Wheels || own[0] == own[1];
        match (place, own) {
            (0, _) => Some(own),
            (1, [Some(front), Some(_)]) if !only_own => Some([Some(front); 2]),
            (2, [Some(_), Some(rear)]) if !only_own => Some([Some(rear); 2]),
            _ => None,
        }
    }

    /// The setups of this point at one of those places, if a wheel of the original's size comes to stand where the
    /// original's stood.
    fn built(&self, place: usize) -> Option<[Option<Setup>; 2]> {
        let setups = self.setups().ok()?;
        let insets = self.original_insets(place)?;
        let mut built = [None; 2];
        let mut is_any_same = false;
        for (((to, trial), setup), inset) in built.iter_mut().zip(self.trials()).zip(setups).zip(insets) {
            let (Some(trial), Some(setup)) = (trial, setup) else { continue };
            let original = trial.original()?;
            let setup = setup.at(inset?);
            is_any_same |= setup.wheel().size() == original.wheel().size()
                && inset == original.wheel().inset_or_assumed()
                && setup.hub_spacing() == original.hub_spacing();
            *to = Some(setup);
        }
        is_any_same.then_some(built)
    }

    fn as_built(&self, place: usize) -> Option<Candidate> {
        let built = self.built(place)?;
        let fails = |(trial, setup): (Option<&Trial<'_>>, &Option<Setup>)| {
            let (Some(trial), Some(setup)) = (trial, setup) else { return false };
            let tried = trial.tried(setup);
            [DependsOn::Size, DependsOn::Pair, DependsOn::Inset]
                .into_iter()
                .any(|what| tried.fails(what).is_some())
        };
        // An assessment says the same, but of what moves as well, which takes longest.
        if self.trials().into_iter().zip(&built).any(fails) {
            return None;
        }
        self.kept(&built).ok()
    }

    /// Keeps in mind which of those places lie in the interval of a candidate.
    fn give(&mut self, candidate: &Candidate) {
        for place in 0..PLACES {
            let Some(insets) = self.original_insets(place) else { continue };
            let lies = candidate.choices().all(|choice| {
                let own = insets[usize::from(choice.position() == Position::Rear)];
                own.is_some_and(|inset| choice.insets().contains(inset))
            });
            if let Some(given) = self.given.get_mut(place) {
                *given |= lies;
            }
        }
    }
}

/// A setup of new wheels, with the seat of the hub that they go on.
fn for_hub(setup: Setup, axle: &Axle) -> Setup {
    axle.hub().and_then(|hub| hub.seat()).map_or(setup, |seat| setup.with_seat(seat))
}

/// A setup where another does not stand.
pub(super) fn away(setup: &Setup, from: &Setup) -> Setup {
    let far = Inset::from_hundredths(30_000);
    let is_there = from.wheel().inset_or_assumed() == Some(far);
    setup.at(if is_there { Inset::from_hundredths(-30_000) } else { far })
}

/// The inset of the original, or none to speak of.
fn setups_near(trials: &[Option<&Trial<'_>>; 2]) -> Inset {
    let mut originals = trials.iter().flatten().filter_map(|trial| trial.original());
    originals.find_map(|original| original.wheel().inset_or_assumed()).unwrap_or(Inset::from_hundredths(0))
}

/// Setups as they are tried on their axles.
pub(super) fn tried<'t>(on: &'t [Option<(&'t Trial<'_>, Setup)>; 2]) -> Both<'t> {
    core::array::from_fn(|n| on.get(n)?.as_ref().map(|(trial, setup)| trial.tried(setup)))
}

/// The first check of the vehicle as a whole that is beyond.
pub(super) fn together(both: &Both<'_>) -> Option<CheckId> {
    match both {
        [Some(front), Some(rear)] => fails_together(front, rear),
        [Some(only), None] | [None, Some(only)] => fails_alone(only),
        [None, None] => None,
    }
}

fn tried_insets(tried: &mut Tried<'_>) -> Result<InsetRange, Rejected> {
    tried.insets().map_err(Rejected::by)
}

/// The check that leaves nothing in common of two ranges.
fn conflict(a: InsetRange, b: InsetRange) -> Option<CheckId> {
    if a.max().value() < b.min().value() { a.max().check() } else { a.min().check() }
}

/// A range without a whole millimetre fell at what ends it.
fn narrow(range: InsetRange) -> Rejected {
    Rejected::by_end(range.max().check().or(range.min().check()))
}
