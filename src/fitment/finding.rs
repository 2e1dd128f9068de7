//! From a measured value and a limit to a verdict.

use super::Limit;
use super::check::{Check, CheckId, Missing, Outcome, Position, Reason, Verdict};
use super::value::{Bound, Value};
use crate::units::Length;
use crate::{Citation, Toleranced};

/// What a check found, before it is told its name and place.
#[derive(Clone, Copy)]
pub(super) struct Finding {
    pub(super) verdict: Verdict,
    pub(super) reason: Reason,
    pub(super) citation: Citation,
    pub(super) measured: Option<Value>,
    pub(super) nominal: Option<Value>,
    pub(super) limit: Option<Bound>,
}

pub(super) type Found = Result<Finding, Missing>;

impl Finding {
    pub(super) const fn new(verdict: Verdict, reason: Reason, citation: Citation) -> Self {
        Self { verdict, reason, citation, measured: None, nominal: None, limit: None }
    }

    /// The question does not arise, for a stated reason.
    pub(super) const fn not_applicable(reason: Reason) -> Self {
        Self::new(Verdict::NotApplicable, reason, Citation::DESIGNATION)
    }

    pub(super) const fn reading(mut self, measured: Value, limit: Bound) -> Self {
        self.measured = Some(measured);
        self.limit = Some(limit);
        self
    }

    pub(super) const fn nominal(mut self, nominal: Value) -> Self {
        self.nominal = Some(nominal);
        self
    }

    /// Makes one verdict marginal, for a reason.
    pub(super) fn marginal_if(mut self, verdict: Verdict, reason: Reason) -> Self {
        if self.verdict == verdict {
            (self.verdict, self.reason) = (Verdict::Marginal, reason);
        }
        self
    }

    /// Whether it has less to spare than another of the same question.
    pub(super) fn is_tighter_than(&self, other: &Self) -> bool {
        match (self.margin(), other.margin()) {
            (Some(own), Some(its)) => own < its,
            _ => false,
        }
    }

    /// Whether the measured value lies outside its bound.
    pub(super) fn is_outside(&self) -> bool {
        self.margin().is_some_and(|margin| !no_more(0.0, margin))
    }

    fn margin(&self) -> Option<f64> {
        self.limit?.margin(self.measured?)
    }

    /// The graver of two findings; of two as grave the other, if it is tighter.
    pub(super) fn graver(self, other: Self, other_is_tighter: bool) -> Self {
        let (own, its) = (self.verdict.gravity(), other.verdict.gravity());
        let replaces = its > own || its == own && other_is_tighter;
        if replaces { other } else { self }
    }
}

/// Of what is described from the left, from the right, or from both sides, the graver finding.
pub(super) fn of_either_side(left: Found, right: Found) -> Found {
    match (left, right) {
        (Ok(left), Ok(right)) => {
            let as_tight = !left.is_tighter_than(&right) && (right.reason as u8) < left.reason as u8;
            Ok(left.graver(right, right.is_tighter_than(&left) || as_tight))
        }
        (Ok(only), Err(_)) | (Err(_), Ok(only)) => Ok(only),
        (Err(missing), Err(_)) => Err(missing),
    }
}

/// A finding made with whatever is not known at its best. It stands only if even that is beyond: then the
/// missing inputs cannot mend it.
pub(super) fn at_best(finding: Finding, missing: Missing) -> Found {
    if missing.is_none() || finding.verdict == Verdict::Beyond { Ok(finding) } else { Err(missing) }
}

pub(super) fn finish(id: CheckId, place: Position, found: &Found) -> Check {
    let (finding, outcome) = match found {
        Ok(finding) => match finding.measured.zip(finding.limit) {
            Some((worst, limit)) => (*finding, Outcome::Measured { worst, nominal: finding.nominal, limit }),
            None => (*finding, Outcome::Stated),
        },
        Err(missing) => {
            let finding = Finding::new(Verdict::NotAssessed, Reason::InputMissing, Citation::DESIGNATION);
            (finding, Outcome::Missing(*missing))
        }
    };
    let Finding { verdict, reason, citation, .. } = finding;
    Check { id, place, verdict, reason, citation, outcome }
}

/// `a <= b`, with the last bits of arithmetic forgiven: a value at its limit is inside.
pub(super) fn no_more(a: f64, b: f64) -> bool {
    a <= b + 1e-9 * b.abs().max(1.0)
}

/// Why a value is inside, inside at nominal only, or outside.
#[derive(Clone, Copy)]
pub(super) struct Why {
    pub(super) within: Reason,
    pub(super) marginal: Reason,
    pub(super) beyond: Reason,
}

pub(super) const PLAIN: Why =
    Why { within: Reason::Inside, marginal: Reason::InsideAtNominalOnly, beyond: Reason::Outside };

impl Why {
    /// For a value without tolerance.
    pub(super) const fn either(within: Reason, beyond: Reason) -> Self {
        Self { within, marginal: within, beyond }
    }

    /// Inside at nominal and at the worst case, at nominal only, or not at all.
    pub(super) fn judge(self, nominal: bool, worst: bool) -> (Verdict, Reason) {
        match (nominal, worst) {
            (true, true) => (Verdict::Within, self.within),
            (true, false) => (Verdict::Marginal, self.marginal),
            (false, _) => (Verdict::Beyond, self.beyond),
        }
    }
}

/// The least something may be, and by whose word: less than asked for if the maker built it with less, and yet
/// with some. A caller's own limit stands.
pub(super) fn least_or_as_built(
    least: Limit<Length>,
    built: Option<Toleranced<Length>>,
) -> (Length, Citation) {
    let yields = |built: &Toleranced<Length>| {
        least.citation() != Citation::CALLER
            && built.min() > Length::default()
            && built.nominal() < least.value()
    };
    match built.filter(yields) {
        Some(built) => (built.min(), Citation::ORIGINAL),
        None => (least.value(), least.citation()),
    }
}

fn number(value: Value) -> f64 {
    value.number().unwrap_or(f64::NAN)
}

/// A worst and a nominal value held against a bound; the nominal one is shown where it differs.
fn judged(
    [worst, nominal]: [Value; 2],
    differ: bool,
    inside: impl Fn(Value) -> bool,
    why: Why,
    citation: Citation,
) -> Finding {
    let at_worst = inside(worst);
    let (verdict, reason) = why.judge(if differ { inside(nominal) } else { at_worst }, at_worst);
    let finding = Finding::new(verdict, reason, citation);
    if differ { finding.nominal(nominal) } else { finding }
}

/// Holds a value against the least it may be.
pub(super) fn at_least<Q: Copy + PartialOrd>(
    value: Toleranced<Q>,
    least: Q,
    wrap: fn(Q) -> Value,
    why: Why,
    citation: Citation,
) -> Finding {
    let [worst, least] = [value.min(), least].map(wrap);
    let bound = number(least);
    let inside = |value| no_more(bound, number(value));
    judged([worst, wrap(value.nominal())], value.min() != value.nominal(), inside, why, citation)
        .reading(worst, Bound::AtLeast(least))
}

/// Holds a value against the most it may be.
pub(super) fn at_most<Q: Copy + PartialOrd>(
    value: Toleranced<Q>,
    most: Q,
    wrap: fn(Q) -> Value,
    why: Why,
    citation: Citation,
) -> Finding {
    let [worst, most] = [value.max(), most].map(wrap);
    let bound = number(most);
    let inside = |value| no_more(number(value), bound);
    judged([worst, wrap(value.nominal())], value.max() != value.nominal(), inside, why, citation)
        .reading(worst, Bound::AtMost(most))
}
