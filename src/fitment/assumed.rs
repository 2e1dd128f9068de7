//! What a finding is worth that rests on an assumption.

use super::check::{Check, Reason, Verdict};
use super::report::Report;

impl Report {
    /// The findings that are others in a report of the same change, as bits of their rows.
    pub(crate) fn rows_unlike(&self, other: &Self) -> u128 {
        let rows = self.findings().enumerate();
        rows.filter(|(_, check)| other.get(check.id, check.place) != Some(**check))
            .fold(0, |rows, (row, _)| rows | 1 << row)
    }

    /// The finding of the same check on the same axle, of a gap that is narrower on the other end or on neither.
    fn of_axle(&self, check: &Check) -> Option<Check> {
        let is_same = |other: &Check| other.id == check.id && other.place.axle() == check.place.axle();
        self.findings().copied().find(|other| check.id.definition().is_by_gap() && is_same(other))
    }

    /// Holds back what rests on values that are assumed, of which the other report knows nothing.
    ///
    /// A finding that is another without them rests on them, and is never better than marginal. What does not apply only
    /// because of them is as the other report has it.
    pub(crate) fn hold_back(&mut self, other: &Self) {
        for check in self.findings_mut() {
            let without = other.get(check.id, check.place).or_else(|| other.of_axle(check));
            if without != Some(*check) {
                match check.verdict {
                    Verdict::Within => {
                        *check = Check { verdict: Verdict::Marginal, reason: Reason::Assumed, ..*check };
                    }
                    Verdict::NotApplicable => *check = without.unwrap_or(*check),
                    Verdict::Marginal | Verdict::Beyond | Verdict::NotAssessed => {}
                }
            }
        }
    }
}
