//! What to measure next: the facts that would settle what a report could not assess.

use core::fmt;

use super::input::{Input, InputPath, Missing};
use super::preparation::{Preparation, Tool};
use crate::fitment::check::{Check, Position, Verdict};
use crate::fitment::report::Report;

/// Facts at their places, as bits of [`Input`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Facts([u128; Position::ALL.len()]);

impl Facts {
    const fn add(&mut self, input: Input, place: Position) {
        self.0[place as usize] |= 1 << input as u32;
    }

    const fn has(&self, input: Input, place: Position) -> bool {
        self.0[place as usize] & 1 << input as u32 != 0
    }

    fn join(self, other: Self) -> Self {
        let mut all = self;
        all.0.iter_mut().zip(other.0).for_each(|(bits, more)| *bits |= more);
        all
    }

    fn less(self, taken: &Self) -> Self {
        let mut left = self;
        left.0.iter_mut().zip(taken.0).for_each(|(bits, taken)| *bits &= !taken);
        left
    }

    fn count(&self) -> u32 {
        self.0.iter().map(|bits| bits.count_ones()).sum()
    }

    /// Each of them, in the order of inputs and then of places.
    fn iter(self) -> impl Iterator<Item = (Input, Position)> {
        let places = |&input| Position::ALL.iter().map(move |&place| (input, place));
        Input::ALL.iter().flat_map(places).filter(move |&(input, place)| self.has(input, place))
    }
}

/// The inputs whose key has a mark in it.
const fn marked(mark: u8) -> u128 {
    let (mut inputs, mut n) = (0, 0);
    while n < Input::ALL.len() {
        let key = Input::ALL[n].key().as_bytes();
        let mut at = 0;
        while at < key.len() {
            if key[at] == mark {
                inputs |= 1 << n;
            }
            at += 1;
        }
        n += 1;
    }
    inputs
}

/// What each end of an axle has, each axle, and the vehicle once.
const OF_AN_END: u128 = marked(b'#');
const OF_AN_AXLE: u128 = marked(b'*') & !OF_AN_END;
const OF_THE_VEHICLE: u128 = !marked(b'*');

impl Report {
    /// What a finding lacks, each fact at its place.
    fn facts_for(&self, check: &Check) -> Facts {
        let Missing(missing) = check.lacks();
        let mut facts = Facts::default();
        let mut put = |place: Position, inputs| facts.0[place as usize] |= missing & inputs;
        put(Position::Vehicle, OF_THE_VEHICLE);
        if check.position() != Position::Vehicle {
            put(check.position(), OF_AN_END);
            put(check.position().axle(), OF_AN_AXLE);
        } else if missing & !OF_THE_VEHICLE != 0 {
            // Whichever axle lacks it; if neither says so, the vehicle has to stand for both.
            let [front, rear] = [Position::Front, Position::Rear].map(|axle| self.lacking_on(axle));
            put(Position::Front, front);
            put(Position::Rear, rear);
            put(Position::Vehicle, !(front | rear));
        }
        facts
    }

    /// The facts of an axle that its own findings lack.
    fn lacking_on(&self, axle: Position) -> u128 {
        let on_axle = self.lacking().filter(|(_, c)| c.position().axle() == axle);
        on_axle.fold(0, |all, (_, check)| all | check.lacks().0 & OF_AN_AXLE)
    }

    /// The findings that were not assessed, by row.
    fn lacking(&self) -> impl Iterator<Item = (usize, &Check)> {
        self.findings().enumerate().filter(|(_, c)| c.verdict() == Verdict::NotAssessed)
    }

    /// The facts that would settle what was not assessed, each once, the one that settles most first.
    ///
    /// Each is the one that, with those before it, settles the most findings that those before it do not;
    /// of equals, the first in the order of [`Input::ALL`], then of [`Position::ALL`]. A finding counts as
    /// settled when all it lacks is in the list. What only makers know ([`Preparation::Elsewhere`]) is not; a
    /// check that lacks such a fact names it in [`Check::missing`].
    ///
    /// One fact given may show that another is lacking, so assess again.
    ///
    /// ```
    /// use beadseat::fitment::{Change, Conditions, Limits, Setup, Setups, assess};
    /// use beadseat::fitment::measure::Input;
    /// use beadseat::vehicle::Vehicle;
    /// let setups = Setups::both(Setup::new("205/55R16 91V".parse()?, "6.5Jx16 ET46".parse()?));
    /// let change = Change { original: setups, proposed: setups };
    /// let report = assess(&Vehicle::unknown(), &change, &Conditions::default(), &Limits::default());
    /// let first = report.measurements().next().ok_or("nothing is missing")?;
    /// assert_eq!(first.input(), Input::Kind);
    /// assert!(first.settles_alone().count() > 20);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn measurements(&self) -> Measurements<'_> {
        Measurements { report: self, taken: Facts::default() }
    }

    /// What is lacking that no measurement gives.
    pub(crate) fn known_to_makers(&self) -> impl Iterator<Item = Measurement<'_>> {
        self.all_facts()
            .iter()
            .filter(|(input, _)| input.access() == Preparation::Elsewhere)
            .map(|(input, place)| self.measurement(input, place))
    }

    /// Everything that is lacking.
    fn all_facts(&self) -> Facts {
        self.lacking().fold(Facts::default(), |all, (_, check)| all.join(self.facts_for(check)))
    }

    fn measurement(&self, input: Input, place: Position) -> Measurement<'_> {
        let mut measurement = Measurement { report: self, input, place, alone: 0, with_others: 0 };
        for (row, check) in self.lacking() {
            let facts = self.facts_for(check);
            match facts.count() {
                _ if !facts.has(input, place) => {}
                1 => measurement.alone |= 1 << row,
                _ => measurement.with_others |= 1 << row,
            }
        }
        measurement
    }
}

const _: () = assert!(Report::ROWS <= 128);

/// The list of [`Report::measurements`]; it allocates nothing.
#[derive(Clone, Debug)]
pub struct Measurements<'a> {
    report: &'a Report,
    taken: Facts,
}

impl<'a> Iterator for Measurements<'a> {
    type Item = Measurement<'a>;

    fn next(&mut self) -> Option<Measurement<'a>> {
        let mut left = Facts::default();
        // How many findings wait for this fact and for nothing else.
        let mut settles = [[0_u8; u128::BITS as usize]; Position::ALL.len()];
        for (_, check) in self.report.lacking() {
            let facts = self.report.facts_for(check).less(&self.taken);
            left = left.join(facts);
            if facts.count() == 1 {
                let of_places = settles.iter_mut().zip(facts.0);
                of_places.filter(|(_, bits)| *bits != 0).for_each(|(of_place, bits)| {
                    of_place[bits.trailing_zeros() as usize] += 1;
                });
            }
        }
        let mut best: Option<(u8, (Input, Position))> = None;
        for fact in left.iter().filter(|(input, _)| input.access() != Preparation::Elsewhere) {
            let (input, place) = fact;
            let gain = settles[place as usize][input as usize];
            if best.is_none_or(|(most, _)| gain > most) {
                best = Some((gain, fact));
            }
        }
        let (_, (input, place)) = best?;
        self.taken.add(input, place);
        Some(self.report.measurement(input, place))
    }
}

/// One fact to be taken, and what it is for.
///
/// `Display` is its path in a scenario and how to come by it.
#[derive(Clone, Copy)]
pub struct Measurement<'a> {
    report: &'a Report,
    input: Input,
    place: Position,
    /// Rows of the report.
    alone: u128,
    with_others: u128,
}

impl<'a> Measurement<'a> {
    /// What is to be taken; how is [`Input::how`].
    pub const fn input(&self) -> Input {
        self.input
    }

    /// Where: an axle, an end of one, or the vehicle for what it has once (and, rarely, for what each of
    /// its axles has).
    pub const fn position(&self) -> Position {
        self.place
    }

    /// Where it goes in a scenario.
    pub const fn path(&self) -> InputPath {
        self.input.at(self.place).by(self.report.keys())
    }

    /// What it is taken with, if more than eyes and knowledge.
    pub const fn tools(&self) -> &'static [Tool] {
        self.input.tools()
    }

    /// What must be done to the vehicle for it; [`Preparation::safety`] says what to see to first.
    pub const fn access(&self) -> Preparation {
        self.input.access()
    }

    /// The findings that lack nothing else.
    pub fn settles_alone(&self) -> impl Iterator<Item = Check> + use<'a> {
        self.rows(self.alone)
    }

    /// The findings that lack this and something else besides.
    pub fn settles_with_others(&self) -> impl Iterator<Item = Check> + use<'a> {
        self.rows(self.with_others)
    }

    fn rows(&self, bits: u128) -> impl Iterator<Item = Check> + use<'a> {
        self.report.checks().enumerate().filter(move |(row, _)| bits & 1 << row != 0).map(|(_, check)| check)
    }
}

impl fmt::Debug for Measurement<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("Measurement").field(&self.input).field(&self.place).finish()
    }
}

impl fmt::Display for Measurement<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.path(), self.input.how())
    }
}
