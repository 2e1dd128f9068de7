//! Where the values come from that a change is judged by.

use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use super::check::{Check, Verdict};
use super::conditions::Day;
use super::report::Report;
use crate::record::words;
use crate::text::Excerpt;

words! {
    /// How a value came to be known.
    ///
    /// ```
    /// use beadseat::fitment::Origin;
    /// assert_eq!("assumed".parse(), Ok(Origin::Assumed));
    /// ```
    Origin {
        /// It was measured on this vehicle, tire or wheel.
        Measured = "measured",
        /// It stands in a certificate or in a maker's data.
        Certificate = "certificate",
        /// It stands on the vehicle maker's placard, or is molded or stamped on the part.
        Placard = "placard",
        /// Nobody looked: it is taken to be so. What rests on it is never better than marginal.
        Assumed = "assumed",
    }
}

/// Where one value of a scenario comes from: how it came to be known, on which day and by whom.
///
/// ```
/// use beadseat::fitment::{Day, Origin, Provenance};
/// let gap = Provenance::new("vehicle.front.space.upper_clearance_mm", Origin::Measured)
///     .on(Day::parse("2026-11-02")?)
///     .by("the workshop");
/// assert_eq!(gap.to_string(), "vehicle.front.space.upper_clearance_mm: measured, 2026-11-02, the workshop");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Provenance {
    of: String,
    from: Origin,
    on: Option<Day>,
    by: Option<String>,
}

impl Provenance {
    /// Of the value at a place of a scenario, or of all that stands there: `proposed.front` is the whole setup.
    pub fn new(of: impl Into<String>, from: Origin) -> Self {
        Self { of: of.into(), from, on: None, by: None }
    }

    /// With the day on which it was found.
    #[must_use]
    pub fn on(self, day: Day) -> Self {
        Self { on: Some(day), ..self }
    }

    /// With the name of the person or document that says so; show it through [`Excerpt`].
    #[must_use]
    pub fn by(self, by: impl Into<String>) -> Self {
        Self { by: Some(by.into()), ..self }
    }

    /// The place of the value, by the keys that lead to it.
    pub fn of(&self) -> &str {
        &self.of
    }

    /// How it came to be known.
    pub const fn from(&self) -> Origin {
        self.from
    }

    /// On which day it was found, if that is told.
    pub const fn day(&self) -> Option<Day> {
        self.on
    }

    /// Who or what says so, if that is told.
    pub fn witness(&self) -> Option<&str> {
        self.by.as_deref()
    }

    /// Whether nobody looked, so that what rests on it is never better than marginal.
    pub fn is_assumed(&self) -> bool {
        self.from == Origin::Assumed
    }

    /// The same of a place that is written otherwise.
    pub(crate) fn at(self, of: String) -> Self {
        Self { of, ..self }
    }
}

impl fmt::Display for Provenance {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", Excerpt(&self.of), self.from)?;
        if let Some(day) = self.on {
            write!(f, ", {day}")?;
        }
        match &self.by {
            Some(by) => write!(f, ", {}", Excerpt(by)),
            None => Ok(()),
        }
    }
}

/// Where the values of a scenario come from, and which findings rest on each that is assumed.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Basis {
    list: Vec<Provenance>,
    /// For each of the list the findings that rest on it, as bits of the rows of a report.
    rests: Vec<u128>,
}

impl Basis {
    /// Of values of which it is not yet worked out what rests on them.
    pub(crate) const fn told(list: Vec<Provenance>) -> Self {
        Self { list, rests: Vec::new() }
    }

    /// With the findings that are others in a report that knows nothing of one of the values that are assumed, or of all
    /// of them.
    pub(crate) fn with_rests(
        &self,
        report: impl Fn(&mut dyn Iterator<Item = &Provenance>) -> Report,
    ) -> Self {
        let mut rests = alloc::vec![0; self.list.len()];
        let assumed = || self.list.iter().enumerate().filter(|(_, value)| value.is_assumed());
        if assumed().next().is_some() {
            let (whole, mut alone) = (report(&mut core::iter::empty()), 0);
            let of_all = whole.rows_unlike(&report(&mut self.assumed()));
            for (n, value) in assumed() {
                rests[n] = whole.rows_unlike(&report(&mut core::iter::once(value)));
                alone |= rests[n];
            }
            // Where one assumption can stand in for another, a finding rests on them together.
            assumed().for_each(|(n, _)| rests[n] |= of_all & !alone);
        }
        Self { list: self.list.clone(), rests }
    }

    /// Every value of which it is told where it comes from.
    pub(crate) fn list(&self) -> &[Provenance] {
        &self.list
    }

    /// Those that are assumed.
    pub(crate) fn assumed(&self) -> impl Iterator<Item = &Provenance> {
        self.list.iter().filter(|value| value.is_assumed())
    }

    /// The assumed values that a finding of a report rests on.
    pub(super) fn under<'a>(
        &'a self,
        report: &Report,
        check: &Check,
    ) -> impl Iterator<Item = &'a Provenance> {
        let row = report.findings().position(|other| other.id == check.id && other.place == check.place);
        let is_answer = !matches!(check.verdict, Verdict::NotAssessed | Verdict::NotApplicable);
        let bit = row.filter(|_| is_answer).map_or(0, |row| 1_u128 << row);
        self.list.iter().zip(&self.rests).filter(move |(_, rows)| **rows & bit != 0).map(|(value, _)| value)
    }
}
