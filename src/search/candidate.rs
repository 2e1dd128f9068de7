//! A setup that fits, with how well, what was not judged, and what it must be bought with.

use core::fmt;

use super::choice::{Choice, Choices, Expectation};
use crate::fitment::{Check, CheckId, Position, Report, Setups, Value, Verdict, share_left};

/// A set of checks.
///
/// ```
/// use beadseat::{fitment::CheckId, search::Checks};
/// let mut some = Checks::default();
/// some.add(CheckId::Tread);
/// assert!(some.has(CheckId::Tread) && some.iter().count() == 1);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Checks(u64);

const _: () = assert!(CheckId::ALL.len() <= 64);

impl Checks {
    /// Puts a check in.
    pub const fn add(&mut self, id: CheckId) {
        self.0 |= 1 << id as u32;
    }

    /// Whether a check is in it.
    pub const fn has(&self, id: CheckId) -> bool {
        self.0 & 1 << id as u32 != 0
    }

    /// Each, in the order of a report.
    pub fn iter(self) -> impl Iterator<Item = CheckId> {
        CheckId::ALL.iter().copied().filter(move |&id| self.has(id))
    }
}

/// What one check leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Margin {
    check: CheckId,
    place: Position,
    value: Value,
    share: f64,
}

impl Margin {
    fn of(check: &Check) -> Option<Self> {
        let share = share_left(check.measured()?, check.limit()?)?;
        Some(Self { check: check.id(), place: check.position(), value: check.margin()?, share })
    }

    /// The check that it is of.
    pub const fn check(&self) -> CheckId {
        self.check
    }

    /// Where on the vehicle it is.
    pub const fn position(&self) -> Position {
        self.place
    }

    /// How far inside the limit, at the worst of every tolerance; negative where only the nominal is inside.
    pub const fn value(&self) -> Value {
        self.value
    }

    /// The same as a share of the limit, or of one unit of the value where the limit is less, or of 25 mm where that of a
    /// length is more.
    pub const fn share(&self) -> f64 {
        self.share
    }
}

/// In files with its check, its place, its value and the unit of that.
#[cfg(feature = "serde")]
impl serde::Serialize for Margin {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        use serde::ser::SerializeMap;
        let mut map = serializer.serialize_map(Some(4))?;
        map.serialize_entry("id", &self.check)?;
        map.serialize_entry("where", &self.place)?;
        map.serialize_entry("value", &self.value.number().map(crate::record::tidy))?;
        map.serialize_entry("unit", self.value.unit())?;
        map.end()
    }
}

/// How many margins a candidate keeps.
const MARGINS: usize = 4;

/// A setup that is not beyond any check that could be judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate {
    choices: Choices,
    verdict: Verdict,
    is_complete: bool,
    not_judged: Checks,
    margins: [Option<Margin>; MARGINS],
}

impl Candidate {
    pub(super) fn new(choices: Choices, report: &Report) -> Self {
        let mut candidate = Self {
            choices,
            verdict: report.overall(),
            is_complete: report.is_complete(),
            not_judged: Checks::default(),
            margins: [None; MARGINS],
        };
        for check in report.checks() {
            if check.verdict() == Verdict::NotAssessed {
                candidate.not_judged.add(check.id());
            }
            if check.id().depends_on().tells_apart() {
                if let Some(margin) = Margin::of(&check) {
                    candidate.keep(margin);
                }
            }
        }
        candidate
    }

    /// Keeps a margin if it is among the least.
    fn keep(&mut self, mut margin: Margin) {
        for place in &mut self.margins {
            match place {
                Some(kept) if kept.share <= margin.share => {}
                Some(kept) => core::mem::swap(kept, &mut margin),
                None => {
                    *place = Some(margin);
                    return;
                }
            }
        }
    }

    /// Its number in the lattice.
    pub const fn number(&self) -> u64 {
        self.choices.number
    }

    /// What goes on each axle, the front one first.
    pub fn choices(&self) -> impl Iterator<Item = &Choice> {
        self.choices.iter()
    }

    /// The setups that were judged.
    pub fn setups(&self) -> Setups {
        self.choices.setups()
    }

    /// Whether the sizes of all its tires stand in a [list](Choice::listed_in).
    pub fn is_listed(&self) -> bool {
        self.choices.is_listed()
    }

    /// Whether all its tires are approved for their rims, by the table or the estimate that there is of each.
    pub fn is_on_approved_rims(&self) -> bool {
        self.choices.is_on_approved_rims()
    }

    /// Whether the needed load indices can be expected of its tires: of the one of which it is known least well.
    pub fn expectation(&self) -> Expectation {
        self.choices.expectation()
    }

    /// How far its rims are from the measuring rims of their tires, in quarter inches.
    pub(super) fn rim_off(&self) -> u32 {
        self.choices.rim_off()
    }

    /// How far its sizes are from those of the original.
    pub(super) fn apart(&self) -> u32 {
        self.choices.apart()
    }

    /// What an assessment says of the whole: within, or marginal.
    pub const fn verdict(&self) -> Verdict {
        self.verdict
    }

    /// Whether every vital check was judged.
    pub const fn is_complete(&self) -> bool {
        self.is_complete
    }

    /// The checks that were not judged at one place at least. They have not been passed.
    pub const fn not_judged(&self) -> Checks {
        self.not_judged
    }

    /// The least margins, the least first, of the checks of diameter, track, steering and space. The others ask for what
    /// is bought, which is chosen to be just enough.
    pub fn margins(&self) -> impl Iterator<Item = Margin> {
        self.margins.iter().flatten().copied()
    }
}

/// `225/45R17 91V on 7.5Jx17 H2 ET42 5x112 57.1`, and both axles where they differ.
impl fmt::Display for Candidate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.choices.fmt(f)
    }
}
