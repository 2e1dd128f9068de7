//! A setup that fits, with how well, what was not judged, and what it must be bought with.

use core::cmp::Ordering;
use core::fmt;

use super::needs::Needs;
use crate::Citation;
use crate::fitment::space::InsetRange;
use crate::fitment::{Check, CheckId, Position, Report, Setup, Setups, Trial, Value, Verdict, share_left};
use crate::record::words;
use crate::tire::{Formation, LoadIndex, RimRange, Tire, TireSize};
use crate::units::in_mm;

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

words! {
    /// Whether a tire can be expected to bear what is asked of it, by its size.
    ///
    /// `Ord` is by how well it is known that it does.
    ///
    /// ```
    /// use beadseat::search::Expectation;
    /// assert!(Expectation::Meets > Expectation::NotKnown && Expectation::NotKnown > Expectation::Exceeds);
    /// ```
    Expectation {
        /// More is asked of it than tires of the size, load version and load range can be expected to bear: it will
        /// hardly be found.
        Exceeds = "exceeds",
        /// Nothing is known of the load, or of what the size bears.
        NotKnown = "not_known",
        /// Tires of the size can be expected to bear as much.
        Meets = "meets",
    }
}

impl PartialOrd for Expectation {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Expectation {
    fn cmp(&self, other: &Self) -> Ordering {
        (*self as u8).cmp(&(*other as u8))
    }
}

/// What goes on one axle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    pub(super) place: Position,
    setup: Setup,
    insets: InsetRange,
    needs: Needs,
    listed: Option<Citation>,
    expected: Option<LoadIndex>,
    expectation: Expectation,
    pub(super) is_approved: bool,
    pub(super) rim_off: u16,
    apart: u16,
}

impl Choice {
    pub(super) fn new(trial: &Trial<'_>, setup: Setup, insets: InsetRange, needs: Needs) -> Self {
        let (tire, old) = (setup.tire(), trial.original().map(|original| original.tire()));
        let size = tire.size();
        let same_size = old.filter(|old| old.size() == size);
        let index = |tire: Tire, formation| tire.service()?.index(formation);
        // The original bears what it bears, whatever is expected of its size.
        let of_original = |formation| index(same_size?, formation);
        let expected = tire.expected_load_index().max(of_original(Formation::Single));
        let formation = trial.formation(&tire);
        // No tire bears more in a pair than alone; how much less, only the original tells.
        let in_formation = if formation == Formation::Single { expected } else { of_original(formation) };
        let expectation = match index(tire, formation) {
            Some(asked) if in_formation.is_some_and(|most| asked <= most) => Expectation::Meets,
            Some(asked) if expected.is_some_and(|most| asked > most) => Expectation::Exceeds,
            _ => Expectation::NotKnown,
        };
        Self {
            listed: size.listed_in().or(same_size.map(|_| Citation::ORIGINAL)),
            is_approved: rims(&size).is_some_and(|range| range.contains(setup.wheel().size().width())),
            rim_off: rim_off(&setup),
            apart: old.map_or(0, |old| apart(&size, &old.size())),
            place: trial.place(),
            setup,
            insets,
            needs,
            expected,
            expectation,
        }
    }

    /// The axle that it is on.
    pub const fn position(&self) -> Position {
        self.place
    }

    /// The setup that was judged: the wheel at the best inset, with what it must be bought with.
    pub const fn setup(&self) -> &Setup {
        &self.setup
    }

    /// The insets at which no check is beyond, with the check that ends them at either end.
    pub const fn insets(&self) -> InsetRange {
        self.insets
    }

    /// What it must be bought with.
    pub const fn needs(&self) -> &Needs {
        &self.needs
    }

    /// The list that has the size of the tire: one [of the crate's](crate::tire::TireSize::listed_in), or the original
    /// equipment. `None` where it is of the lattice only, and may never have been coined.
    pub const fn listed_in(&self) -> Option<Citation> {
        self.listed
    }

    /// The highest load index to be [expected](Tire::expected_load_index) of such a tire fitted singly, or that of the
    /// original fitted singly if it is of the same size and more.
    pub const fn expected_load_index(&self) -> Option<LoadIndex> {
        self.expected
    }

    /// Whether the needed load index can be expected of such a tire. Of pairs that is known only where the original of the
    /// same size has as much in a pair, or where more is needed than such a tire bears fitted singly.
    pub const fn expectation(&self) -> Expectation {
        self.expectation
    }
}

/// The rims that a size is approved for, by a table or by estimate.
fn rims(size: &TireSize) -> Option<RimRange> {
    size.permitted_rim_range().or_else(|| size.estimated_rim_range())
}

/// The rim of a tire of which nothing else is known, as a share of its nominal width: common practice, no source.
const USUAL_RIM: f64 = 0.75;

/// How far a rim is from the measuring rim of its tire, or where that is not known from the middle of the approved rims, or
/// from three quarters of the nominal width; in quarter inches.
fn rim_off(setup: &Setup) -> u16 {
    let (size, width) = (setup.tire().size(), setup.wheel().size().width().quarters());
    let middle = || rims(&size).map(|range| (range.min().quarters() + range.max().quarters()) / 2);
    let by_width = || Some(libm::round(in_mm(size.nominal_width()?) * USUAL_RIM / 25.4 * 4.0) as u16);
    let usual = size.measuring_rim().map(|rim| rim.quarters()).or_else(middle).or_else(by_width);
    usual.map_or(0, |usual| usual.abs_diff(width))
}

/// How far apart sizes are: nominal widths and overall diameters in millimetres, and ten for each inch of the rim diameter.
fn apart(a: &TireSize, b: &TireSize) -> u16 {
    let width = |size: &TireSize| size.nominal_width().map_or(0.0, in_mm);
    let diameter = |size: &TireSize| size.overall_diameter_nominal().map_or(0.0, in_mm);
    let off = |of: &dyn Fn(&TireSize) -> f64| libm::fabs(of(a) - of(b)) as u16;
    let rims = a.rim_diameter().whole_mm().abs_diff(b.rim_diameter().whole_mm());
    off(&width) + off(&diameter) + (u32::from(rims) * 10 / 25) as u16
}

/// A setup that is not beyond any check that could be judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate {
    number: u64,
    front: Option<Choice>,
    rear: Option<Choice>,
    verdict: Verdict,
    is_complete: bool,
    not_judged: Checks,
    margins: [Option<Margin>; MARGINS],
}

impl Candidate {
    pub(super) fn new(number: u64, front: Option<Choice>, rear: Option<Choice>, report: &Report) -> Self {
        let mut candidate = Self {
            number,
            front,
            rear,
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
        self.number
    }

    /// What goes on each axle, the front one first.
    pub fn choices(&self) -> impl Iterator<Item = &Choice> {
        self.front.iter().chain(&self.rear)
    }

    /// The setups that were judged.
    pub fn setups(&self) -> Setups {
        let setup = |choice: Option<Choice>| choice.map(|choice| choice.setup);
        Setups { front: setup(self.front), rear: setup(self.rear) }
    }

    /// Whether the sizes of all its tires stand in a [list](Choice::listed_in).
    pub fn is_listed(&self) -> bool {
        self.choices().all(|choice| choice.listed.is_some())
    }

    /// Whether all its tires are approved for their rims, by the table or the estimate that there is of each.
    pub fn is_on_approved_rims(&self) -> bool {
        self.choices().all(|choice| choice.is_approved)
    }

    /// Whether the needed load indices can be expected of its tires: of the one of which it is known least well.
    pub fn expectation(&self) -> Expectation {
        self.choices().map(|choice| choice.expectation).min().unwrap_or(Expectation::NotKnown)
    }

    /// How far its rims are from the measuring rims of their tires, in quarter inches.
    pub(super) fn rim_off(&self) -> u32 {
        self.choices().map(|choice| u32::from(choice.rim_off)).sum()
    }

    /// How far its sizes are from those of the original.
    pub(super) fn apart(&self) -> u32 {
        self.choices().map(|choice| u32::from(choice.apart)).sum()
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
        write_choices(f, self.choices())
    }
}

pub(super) fn write_choices<'c>(
    f: &mut fmt::Formatter<'_>,
    choices: impl Iterator<Item = &'c Choice>,
) -> fmt::Result {
    let mut last: Option<(_, _)> = None;
    for choice in choices {
        let both = (choice.setup.tire(), choice.setup.wheel());
        if last == Some(both) {
            continue;
        }
        if last.is_some() {
            f.write_str("; ")?;
        }
        write!(f, "{} on {}", both.0, both.1)?;
        last = Some(both);
    }
    Ok(())
}
