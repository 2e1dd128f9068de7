//! Setups that do not fit, but for one change.

use core::cmp::{Ordering, Reverse};
use core::fmt;
use core::ops::Range;

use super::candidate::{Choice, write_choices};
use super::needs;
use super::reach::Both;
use super::remedy::Remedy;
use super::walk::{Candidates, Search};
use super::wishes::Keep;
use crate::fitment::space::{InsetRange, RangeEnd};
use crate::fitment::{CheckId, DependsOn, Setup, Setups, Trial};
use crate::wheel::Inset;

/// A setup that is beyond a check, and the cheapest single change with which an assessment finds it beyond none.
///
/// What a change costs is the order in which [`Remedy`] has them, and of one kind, how much of it: pressure costs nothing,
/// then come a ring, a spacer and longer fasteners, then other tires and other wheels, and last what is cut into the body.
/// Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NearMiss {
    number: u64,
    front: Option<Choice>,
    rear: Option<Choice>,
    fails: CheckId,
    remedy: Remedy,
    cost: u8,
}

impl NearMiss {
    /// Its number in the lattice.
    pub const fn number(&self) -> u64 {
        self.number
    }

    /// What goes on each axle, the front one first, without the change.
    pub fn choices(&self) -> impl Iterator<Item = &Choice> {
        self.front.iter().chain(&self.rear)
    }

    /// The setups without the change, which an assessment finds beyond a check.
    pub fn setups(&self) -> Setups {
        let setup = |choice: Option<Choice>| choice.map(|choice| *choice.setup());
        Setups { front: setup(self.front), rear: setup(self.rear) }
    }

    /// The gravest check that it is beyond.
    pub const fn fails(&self) -> CheckId {
        self.fails
    }

    /// The change that admits it.
    pub const fn remedy(&self) -> Remedy {
        self.remedy
    }

    /// `Greater` where a builder would rather hear of this one: of tires that can be
    /// [expected](Choice::expectation) to bear what is asked of them, then of listed sizes, then of approved rims, then of
    /// the change that costs less, then of rims nearer to the measuring rims; of equals the first in the lattice.
    pub fn compare(&self, other: &Self) -> Ordering {
        let place = |miss: &Self| {
            let expectation = miss.choices().map(Choice::expectation).min();
            let is_listed = miss.choices().all(|choice| choice.listed_in().is_some());
            let is_approved = miss.choices().all(|choice| choice.is_approved);
            let rim_off: u32 = miss.choices().map(|choice| u32::from(choice.rim_off)).sum();
            (expectation, is_listed, is_approved, Reverse((miss.cost, rim_off, miss.number)))
        };
        place(self).cmp(&place(other))
    }
}

/// As a [`Candidate`](super::Candidate) is shown.
impl fmt::Display for NearMiss {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write_choices(f, self.choices())
    }
}

/// What a [`Search`] nearly finds, one after the other in the order of the lattice. It allocates nothing but copies of a
/// vehicle that has bodies around its wheels, where less of the lip is tried.
pub struct NearMisses<'a> {
    candidates: Candidates<'a>,
}

impl fmt::Debug for NearMisses<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("NearMisses").field("candidates", &self.candidates).finish()
    }
}

impl<'a> Search<'a> {
    /// The setups that do not fit but would with one change.
    ///
    /// New wheels are looked at where nothing but the gap outboard is in their way, as far inboard as they may stand: a
    /// spacer would be another inset, and all else is bought to suit. Wheels that stay are looked at with every tire for
    /// them and without spacers, with every change that there is.
    ///
    /// ```
    /// use beadseat::prelude::*;
    /// use beadseat::search::{Keep, Remedy, Search, Wishes};
    /// use beadseat::vehicle::Space;
    /// let space = Space::new().with_inner_clearance(mm(9.0))?.with_outer_clearance(mm(40.0))?;
    /// let front = Axle::new().with_track(mm(1538.0))?.with_space(space);
    /// let car = Vehicle::new(Kind::Passenger).with_front(front);
    /// let original = Setups { front: Some(Setup::parse("205/55R16 91V", "6.5Jx16 ET46")?), rear: None };
    /// let wishes = Wishes::new().with_keep(Keep::Wheels);
    /// let (conditions, limits) = (Conditions::default(), Limits::default());
    /// let search = Search::new(&car, &original, &conditions, &limits, &wishes);
    /// let near = search.near_misses().max_by(|a, b| a.compare(b)).ok_or("nothing is near")?;
    /// assert!(matches!(near.remedy(), Remedy::Spacer(_)) && near.fails() == CheckId::InnerClearance);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn near_misses(&self) -> NearMisses<'a> {
        self.near_misses_of(0..self.sizes())
    }

    /// Those of a range of sizes, so that the walk can be split or its progress told, as by [`Search::part`].
    pub fn near_misses_of(&self, sizes: Range<u32>) -> NearMisses<'a> {
        NearMisses { candidates: self.part(sizes) }
    }
}

impl Iterator for NearMisses<'_> {
    type Item = NearMiss;

    fn next(&mut self) -> Option<NearMiss> {
        while self.candidates.is_at_a_point() {
            let keeps_wheels = self.candidates.wishes().keep() == Keep::Wheels;
            let found = if keeps_wheels { self.of_wheels_that_stay() } else { self.of_new_wheels() };
            match found {
                Ok(found) => {
                    self.candidates.step();
                    if found.is_some() {
                        return found;
                    }
                }
                Err(WholeSize) => self.candidates.step_size(),
            }
        }
        None
    }
}

/// No rim brings a size near.
struct WholeSize;

impl NearMisses<'_> {
    fn of_new_wheels(&self) -> Result<Option<NearMiss>, WholeSize> {
        let Ok(setups) = self.candidates.setups() else { return Err(WholeSize) };
        let away = self.candidates.away(&setups);
        let mut both: Both<'_> = [0, 1].map(|n| {
            let (trial, setup) = away.get(n)?.as_ref()?;
            Some(trial.tried(setup))
        });
        let fails = |what| both.iter().flatten().find_map(|tried| tried.fails(what));
        if fails(DependsOn::Size).is_some() || self.candidates.fails_together(&both) {
            return Err(WholeSize);
        }
        if fails(DependsOn::Pair).is_some() {
            return Ok(None);
        }
        let mut range = InsetRange::WHOLE;
        let mut is_near = false;
        for tried in both.iter_mut().flatten() {
            is_near |= tried.insets().is_err();
            let own = tried.insets_but_outboard().ok();
            let Some(both) = own.and_then(|own| self.candidates.wished(tried, own).ok()?.and(range)) else {
                return Ok(None);
            };
            range = both;
        }
        // As far inboard as it may stand, so that as little as may be is in the way.
        let at = Inset::from_hundredths(range.max().value().hundredths().div_euclid(100) * 100);
        if !range.contains(at) || (!is_near && self.fits_outboard(&mut both, range)) {
            return Ok(None);
        }
        let Ok(bought) = self.candidates.bought(&setups) else { return Ok(None) };
        let choices = [0, 1].map(|n| {
            let (setup, needs) = (*bought.get(n)?)?;
            Some((setup.at(at), needs))
        });
        Ok(self.admitted(choices, |remedy| matches!(remedy, Remedy::Lip(_))))
    }

    /// Whether there is room outboard for all axles at one inset.
    fn fits_outboard(&self, both: &mut Both<'_>, range: InsetRange) -> bool {
        let mut range = Some(range);
        for tried in both.iter_mut().flatten() {
            range = tried.insets().ok().zip(range).and_then(|(own, range)| own.and(range));
        }
        range.is_some()
    }

    fn of_wheels_that_stay(&self) -> Result<Option<NearMiss>, WholeSize> {
        let Ok(setups) = self.candidates.setups() else { return Err(WholeSize) };
        if self.candidates.has_spacer() {
            return Ok(None);
        }
        let keep = self.candidates.wishes().keep();
        let choices = [0, 1].map(|n| {
            let (trial, setup): (&Trial<'_>, Setup) = self.candidates.trial(n).zip(*setups.get(n)?)?;
            let bought = needs::bought(trial, trial.axle(), setup, keep);
            Some((bought.setup, bought.needs))
        });
        Ok(self.admitted(choices, |_| true))
    }

    /// The near miss of setups, if they are beyond something and one of the changes admits them.
    fn admitted(
        &self,
        choices: [Option<(Setup, needs::Needs)>; 2],
        may: impl Fn(&Remedy) -> bool,
    ) -> Option<NearMiss> {
        let [front, rear] = choices.map(|choice| Some(choice?.0));
        let (fails, remedy, cost) = self.candidates.search().admitting(&Setups { front, rear }, may)?;
        let choice = |n: usize| {
            let (trial, (setup, needs)) = self.candidates.trial(n).zip(*choices.get(n)?)?;
            let only = RangeEnd::new(setup.wheel().inset_or_assumed()?, Some(fails));
            Some(Choice::new(trial, setup, InsetRange::between(only, only), needs))
        };
        let [front, rear] = [choice(0), choice(1)];
        Some(NearMiss { number: self.candidates.number(), front, rear, fails, remedy, cost })
    }
}
