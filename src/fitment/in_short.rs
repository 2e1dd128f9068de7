//! The verdict of a report in a few words.

use core::fmt;

use super::check::Verdict;
use super::report::Report;
use crate::text::Name;

/// The verdict with what decides it, for a line.
pub(super) struct InShort<'a>(pub(super) &'a Report);

impl fmt::Display for InShort<'_> {
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
