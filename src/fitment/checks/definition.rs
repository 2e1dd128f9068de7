//! What a check is: one definition, where its code stands.

use crate::fitment::case::Case;
use crate::fitment::check::{CheckId, Verdict};
use crate::fitment::finding::Found;
use crate::tire::condition::VehicleSide;
use crate::vehicle::EndGap;

pub(super) use super::depends_on::DependsOn;
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
    /// Every axle, by the gap of the end that has less of it, where its finding stands.
    Gap(EndGap, fn(&Case<'_>) -> Found),
    /// Every axle that steers.
    SteeredAxle(fn(&Case<'_>) -> Found),
    /// Each end of every axle.
    End(fn(&Case<'_>, VehicleSide) -> Found),
    /// Both ends of every axle at once: the swept clearance.
    BothEnds,
    /// Front and rear together.
    Vehicle(fn(&[Option<Case<'_>>; 2]) -> Found),
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
    /// A finding of this check as it stands on an axle.
    pub(in crate::fitment) fn settled<'f>(&self, case: &Case<'_>, found: &'f mut Found) -> &'f Found {
        case.settled(self.depends_on, self.is_by_dimensions, found)
    }

    /// What a finding of this check counts for in the verdict on the whole: what is vital and not assessed makes that
    /// marginal, as a report that is not complete is never within.
    #[inline(always)]
    pub(in crate::fitment) fn weight(&self, found: &Found) -> Verdict {
        match found {
            Ok(finding) => finding.verdict,
            Err(_) if self.is_vital => Verdict::Marginal,
            Err(_) => Verdict::NotAssessed,
        }
    }

    pub(super) const fn new(id: CheckId, harm: Harm, run: Run, depends_on: DependsOn) -> Self {
        Self { id, harm, run, depends_on, is_vital: false, rules: Rules::Any, is_by_dimensions: false }
    }

    pub(super) const fn vital(self) -> Self {
        Self { is_vital: true, ..self }
    }

    pub(super) const fn of(self, rules: Rules) -> Self {
        Self { rules, ..self }
    }

    /// Whether its finding stands on the end of an axle that has less of a gap.
    pub(in crate::fitment) const fn is_by_gap(&self) -> bool {
        matches!(self.run, Run::Gap(..))
    }

    pub(super) const fn by_dimensions(self) -> Self {
        Self { is_by_dimensions: true, ..self }
    }
}
