//! Setups that do not fit, but for one change.

use core::cmp::{Ordering, Reverse};
use core::fmt;
use core::ops::Range;

use super::choice::{Choice, Choices};
use super::needs::{self, Needs};
use super::reach::Both;
use super::remedy::Remedy;
use super::walk::{Candidates, Rejected, Search, together, tried};
use super::wishes::Keep;
use crate::fitment::space::{InsetRange, RangeEnd};
use crate::fitment::{CheckId, DependsOn, Setup, Setups};
use crate::wheel::Inset;

/// A setup that is beyond a check, and the cheapest single change with which an assessment finds it beyond none.
///
/// What a change costs is the order in which [`Remedy`] has them, and of one kind, how much of it: pressure costs nothing,
/// then come a ring, a spacer and longer fasteners, then other tires and other wheels, and last what is cut into the body.
/// Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NearMiss {
    choices: Choices,
    fails: CheckId,
    remedy: Remedy,
    cost: u8,
}

impl NearMiss {
    /// Its number in the lattice.
    pub const fn number(&self) -> u64 {
        self.choices.number
    }

    /// What goes on each axle, the front one first, without the change.
    pub fn choices(&self) -> impl Iterator<Item = &Choice> {
        self.choices.iter()
    }

    /// The setups without the change, which an assessment finds beyond a check.
    pub fn setups(&self) -> Setups {
        self.choices.setups()
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
            let choices = &miss.choices;
            let bought = (choices.expectation(), choices.is_listed(), choices.is_on_approved_rims());
            (bought, Reverse((miss.cost, choices.rim_off(), choices.number)))
        };
        place(self).cmp(&place(other))
    }
}

/// As a [`Candidate`](super::Candidate) is shown.
impl fmt::Display for NearMiss {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.choices.fmt(f)
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
                Err(rejected) => self.candidates.step_over(&rejected),
            }
        }
        None
    }
}

impl NearMisses<'_> {
    fn of_new_wheels(&self) -> Result<Option<NearMiss>, Rejected> {
        let setups = self.candidates.setups()?;
        let away = self.candidates.away(&setups);
        let mut both: Both<'_> = tried(&away);
        let fails = |what| both.iter().flatten().find_map(|tried| tried.fails(what));
        // Beyond away from where the original stands, where nothing is excused: no rim brings such a size near.
        if let Some(check) = fails(DependsOn::Size).or_else(|| together(&both)) {
            return Err(Rejected::whole_size(check));
        }
        if fails(DependsOn::Pair).is_some() {
            return Ok(None);
        }
        let mut range = InsetRange::WHOLE;
        for tried in both.iter_mut().flatten() {
            let own = tried.insets_but_outboard().map_err(Rejected::by)?;
            let Some(common) = self.candidates.wished(tried, own)?.and(range) else { return Ok(None) };
            range = common;
        }
        // As far inboard as it may stand, so that as little as may be is in the way.
        let at = Inset::from_hundredths(range.max().value().hundredths().div_euclid(100) * 100);
        let fits = both.iter_mut().flatten().try_fold(range, |range, tried| tried.outboard(range));
        if !range.contains(at) || fits.is_some() {
            return Ok(None);
        }
        let bought = self.candidates.bought(&setups).map_err(Rejected::by)?;
        let choices = bought.map(|bought| bought.map(|(setup, needs)| (setup.at(at), needs)));
        Ok(self.admitted(&choices, |remedy| matches!(remedy, Remedy::Lip(_))))
    }

    fn of_wheels_that_stay(&self) -> Result<Option<NearMiss>, Rejected> {
        let setups = self.candidates.setups()?;
        if self.candidates.has_spacer() {
            return Ok(None);
        }
        let keep = self.candidates.wishes().keep();
        let choices = core::array::from_fn(|n| {
            let (trial, setup) = self.candidates.trial(n).zip(*setups.get(n)?)?;
            let bought = needs::bought(trial, trial.axle(), setup, keep);
            Some((bought.setup, bought.needs))
        });
        Ok(self.admitted(&choices, |_| true))
    }

    /// The near miss of setups, if they are beyond something and one of the changes admits them.
    fn admitted(
        &self,
        choices: &[Option<(Setup, Needs)>; 2],
        may: impl Fn(&Remedy) -> bool,
    ) -> Option<NearMiss> {
        let [front, rear] = choices.map(|choice| Some(choice?.0));
        let (fails, remedy, cost) = self.candidates.search().admitting(&Setups { front, rear }, may)?;
        let on = core::array::from_fn(|n| {
            let (trial, (setup, needs)) = self.candidates.trial(n).zip(*choices.get(n)?)?;
            let only = RangeEnd::new(setup.wheel().inset_or_assumed()?, Some(fails));
            Some(Choice::new(trial, setup, InsetRange::between(only, only), needs))
        });
        Some(NearMiss { choices: Choices { number: self.candidates.number(), on }, fails, remedy, cost })
    }
}
