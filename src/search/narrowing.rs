//! The fact that would narrow a search most.

use super::candidate::Candidate;
use super::walk::Search;
use crate::fitment::measure::{Input, InputPath};
use crate::fitment::{Check, CheckId, Position};

/// The fact that would narrow a search most, and how far.
///
/// Of every candidate, the checks that were not judged and that may take one candidate away and leave another are looked
/// at: of size, of where the wheel stands, of all that moves, and of the brake. The fact is the one that would settle the
/// most of them by itself, the [vital](CheckId::is_vital) ones before the others; of equals, the one that would settle more
/// of them together with other facts; then the first in the order of [`Input::ALL`], front before rear. What only makers
/// know is not asked for.
///
/// ```
/// use beadseat::prelude::*;
/// use beadseat::search::{Best, Search, Wishes};
/// // Nothing but what stands on the tires and wheels.
/// let car = Vehicle::new(Kind::Passenger);
/// let original = Setups::both(Setup::parse("205/55R16 91V", "6.5Jx16 ET46 5x112 57.1")?);
/// let (conditions, limits, wishes) = (Conditions::default(), Limits::default(), Wishes::new());
/// let search = Search::new(&car, &original, &conditions, &limits, &wishes);
/// let mut best = Best::<5>::new();
/// best.extend(search.candidates());
/// let narrowing = search.narrowing(best.iter()).ok_or("all is judged")?;
/// assert_eq!(narrowing.path().to_string(), "vehicle.front.space.inner_clearance_mm");
/// assert_eq!(narrowing.settles(), 5);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Narrowing {
    path: InputPath,
    input: Input,
    worth: Worth,
}

/// How many checks of candidates a fact settles: vital ones by itself, others by itself, vital ones with other facts,
/// others with other facts.
type Worth = [u32; 4];

impl Narrowing {
    /// Where it goes in a scenario.
    pub const fn path(&self) -> InputPath {
        self.path
    }

    /// What is to be taken; how is [`Input::how`].
    pub const fn input(&self) -> Input {
        self.input
    }

    /// How many checks of the candidates it settles by itself.
    pub const fn settles(&self) -> u32 {
        let [vital, others, ..] = self.worth;
        vital + others
    }
}

/// Whether a check may take one candidate away and leave another.
fn narrows(id: CheckId) -> bool {
    id.depends_on().tells_apart() || id == CheckId::BrakeClearance
}

impl Search<'_> {
    /// The fact that would narrow the search most, by candidates that were found: the best few will do. Nothing where all
    /// that could tell one from another is judged.
    pub fn narrowing<'c>(&self, found: impl IntoIterator<Item = &'c Candidate>) -> Option<Narrowing> {
        let mut worths = [[Worth::default(); Position::ALL.len()]; Input::ALL.len()];
        for candidate in found {
            let report = self.report(self.vehicle, candidate.setups());
            for fact in report.measurements() {
                let of_input = worths.get_mut(fact.input() as usize);
                let Some(worth) = of_input.and_then(|of| of.get_mut(fact.position() as usize)) else {
                    continue;
                };
                let mut count = |check: Check, [vital, other]: [usize; 2]| {
                    let to = if check.id().is_vital() { vital } else { other };
                    if let Some(counted) = worth.get_mut(to).filter(|_| narrows(check.id())) {
                        *counted += 1;
                    }
                };
                fact.settles_alone().for_each(|check| count(check, [0, 1]));
                fact.settles_with_others().for_each(|check| count(check, [2, 3]));
            }
        }
        let mut best: Option<Narrowing> = None;
        for (&input, of_input) in Input::ALL.iter().zip(worths) {
            for (&place, worth) in Position::ALL.iter().zip(of_input) {
                if worth > best.map_or(Worth::default(), |best| best.worth) {
                    best = Some(Narrowing { path: input.at(place), input, worth });
                }
            }
        }
        best
    }
}
