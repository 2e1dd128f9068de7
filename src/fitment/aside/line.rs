//! The verdict of a report of its own, in a line.

use core::fmt;

use crate::fitment::check::Verdict;
use crate::fitment::report::Report;
use crate::text::Name;

/// The verdict of a report with what decides it, or that it is not complete.
pub(in crate::fitment) struct InALine<'a>(pub(in crate::fitment) &'a Report);

impl fmt::Display for InALine<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let overall = self.0.overall();
        write!(f, "{overall}")?;
        match self.0.by_gravity(overall).next().filter(|_| overall != Verdict::Within) {
            Some(check) => write!(f, ", {}", Name(check.id().name())),
            None if overall == Verdict::Marginal => f.write_str(", not everything is known"),
            None => Ok(()),
        }
    }
}
