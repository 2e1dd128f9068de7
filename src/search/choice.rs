//! What goes on an axle, and whether such a tire can be bought.

use core::cmp::Ordering;
use core::fmt;

use super::needs::Needs;
use crate::Citation;
use crate::fitment::space::InsetRange;
use crate::fitment::{Position, Setup, Setups, Trial};
use crate::record::words;
use crate::rim::SeatTaper;
use crate::tire::{Formation, LoadIndex, RimRange, Tire, TireSize};
use crate::units::in_mm;

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
    place: Position,
    setup: Setup,
    insets: InsetRange,
    needs: Needs,
    listed: Option<Citation>,
    expected: Option<LoadIndex>,
    expectation: Expectation,
    is_approved: bool,
    rim_off: u16,
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
/// from three quarters of the nominal width; in quarter inches. With seats of 15° from the nearer of the narrowest and the
/// widest rim that a table or a sheet prints, if one has the tire: the measuring rim by rule is of half inches, which such
/// rims seldom are.
fn rim_off(setup: &Setup) -> u16 {
    let (size, width) = (setup.tire().size(), setup.wheel().size().width().quarters());
    let middle = || rims(&size).map(|range| (range.min().quarters() + range.max().quarters()) / 2);
    let by_width = || Some(libm::round(in_mm(size.nominal_width()?) * USUAL_RIM / 25.4 * 4.0) as u16);
    let usual = || size.measuring_rim().map(|rim| rim.quarters()).or_else(middle).or_else(by_width);
    let has_steep_seats = size.rim_diameter().seat_taper() == SeatTaper::FifteenDegree;
    let printed = rims(&size).filter(|_| has_steep_seats);
    let ends = printed.map(|range| [range.min(), range.max()].map(|end| end.quarters().abs_diff(width)));
    match ends {
        Some([narrowest, widest]) => narrowest.min(widest),
        None => usual().map_or(0, |usual| usual.abs_diff(width)),
    }
}

/// How far apart sizes are: nominal widths and overall diameters in millimetres, and ten for each inch of the rim diameter.
fn apart(a: &TireSize, b: &TireSize) -> u16 {
    let width = |size: &TireSize| size.nominal_width().map_or(0.0, in_mm);
    let diameter = |size: &TireSize| size.overall_diameter_nominal().map_or(0.0, in_mm);
    let off = |of: &dyn Fn(&TireSize) -> f64| libm::fabs(of(a) - of(b)) as u16;
    let rims = a.rim_diameter().whole_mm().abs_diff(b.rim_diameter().whole_mm());
    off(&width) + off(&diameter) + (u32::from(rims) * 10 / 25) as u16
}

/// What goes on each axle at a point of the lattice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Choices {
    /// The number of the point.
    pub(super) number: u64,
    /// The front axle, the rear one.
    pub(super) on: [Option<Choice>; 2],
}

impl Choices {
    pub(super) fn iter(&self) -> impl Iterator<Item = &Choice> {
        self.on.iter().flatten()
    }

    pub(super) fn setups(&self) -> Setups {
        let [front, rear] = self.on.map(|choice| choice.map(|choice| choice.setup));
        Setups { front, rear }
    }

    pub(super) fn is_listed(&self) -> bool {
        self.iter().all(|choice| choice.listed.is_some())
    }

    pub(super) fn is_on_approved_rims(&self) -> bool {
        self.iter().all(|choice| choice.is_approved)
    }

    /// Of the tire of which it is known least well.
    pub(super) fn expectation(&self) -> Expectation {
        self.iter().map(|choice| choice.expectation).min().unwrap_or(Expectation::NotKnown)
    }

    /// How far the rims are from the measuring rims of their tires, in quarter inches.
    pub(super) fn rim_off(&self) -> u32 {
        self.iter().map(|choice| u32::from(choice.rim_off)).sum()
    }

    /// How far the sizes are from those of the original.
    pub(super) fn apart(&self) -> u32 {
        self.iter().map(|choice| u32::from(choice.apart)).sum()
    }
}

impl fmt::Display for Choices {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut last: Option<(_, _)> = None;
        for choice in self.iter() {
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
}
