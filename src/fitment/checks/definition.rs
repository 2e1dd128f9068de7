//! What a check is: one definition, where its code stands.

use crate::fitment::case::Case;
use crate::fitment::check::CheckId;
use crate::fitment::finding::Found;
use crate::tire::condition::VehicleSide;

pub(super) use super::rules::Rules;

/// What is at stake where a check is beyond, the worst first: the order of a report.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::fitment) enum Harm {
    /// It cannot be mounted, or can come off.
    ComesOff,
    /// It bears more or goes faster than it is made for.
    Overload,
    /// It touches something.
    Contact,
    /// A law is broken.
    Law,
    /// Common practice is left.
    Practice,
}

/// What a check looks at.
#[derive(Clone, Copy)]
pub(in crate::fitment) enum Run {
    /// Every axle.
    Axle(fn(&Case<'_>) -> Found),
    /// Every axle that steers.
    SteeredAxle(fn(&Case<'_>) -> Found),
    /// Each end of every axle.
    End(fn(&Case<'_>, VehicleSide) -> Found),
    /// Both ends of every axle at once: the swept clearance.
    BothEnds,
    /// Front and rear together.
    Vehicle(fn(&[Option<Case<'_>>; 2]) -> Found),
}

/// What a check depends on, of what a search chooses.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum DependsOn {
    /// The size of the tire.
    Size,
    /// The tire, its rim and the hub.
    Pair,
    /// What is asked for when they are bought: load index, speed symbol, pressure, rating.
    Purchase,
    /// Where the wheel stands; it begins or ceases to be beyond once over all insets, if ever.
    Inset,
    /// Where the wheel stands, with all that moves.
    Movement,
    /// The very tires.
    Wear,
}

impl DependsOn {
    /// Whether it tells one candidate from another: the others ask what is bought to be just enough.
    pub(crate) const fn tells_apart(self) -> bool {
        match self {
            Self::Size | Self::Inset | Self::Movement => true,
            Self::Pair | Self::Purchase | Self::Wear => false,
        }
    }
}

/// A check: its name, what is at stake, whose rules, and the function that finds out.
#[derive(Clone, Copy)]
pub(in crate::fitment) struct Definition {
    pub(in crate::fitment) id: CheckId,
    pub(in crate::fitment) harm: Harm,
    pub(in crate::fitment) run: Run,
    pub(in crate::fitment) depends_on: DependsOn,
    /// A report is complete only with it.
    pub(in crate::fitment) is_vital: bool,
    pub(in crate::fitment) rules: Rules,
    /// It is judged by the dimensions of tires: one known from a remembered table alone makes no change beyond.
    pub(in crate::fitment) is_by_dimensions: bool,
}

impl Definition {
    pub(super) const fn new(id: CheckId, harm: Harm, run: Run, depends_on: DependsOn) -> Self {
        Self { id, harm, run, depends_on, is_vital: false, rules: Rules::Any, is_by_dimensions: false }
    }

    pub(super) const fn vital(self) -> Self {
        Self { is_vital: true, ..self }
    }

    pub(super) const fn of(self, rules: Rules) -> Self {
        Self { rules, ..self }
    }

    pub(super) const fn by_dimensions(self) -> Self {
        Self { is_by_dimensions: true, ..self }
    }
}
