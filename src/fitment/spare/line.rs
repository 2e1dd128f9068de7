//! The verdict on a spare wheel in a line.

use core::fmt;

use super::SpareWheel;
use crate::fitment::check::Verdict;
use crate::text::Name;

/// The verdict on a spare wheel on each axle, in a line.
pub(in crate::fitment) struct SpareLine<'a>(pub(in crate::fitment) SpareWheel<'a>);

impl fmt::Display for SpareLine<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, (axle, report)) in self.0.reports().enumerate() {
            let overall = report.overall();
            write!(f, "{}{axle} {overall}", if n == 0 { "" } else { "; " })?;
            match report.by_gravity(overall).next().filter(|_| overall != Verdict::Within) {
                Some(check) => write!(f, ", {}", Name(check.id().name()))?,
                None if overall == Verdict::Marginal => f.write_str(", not everything is known")?,
                None => {}
            }
        }
        Ok(())
    }
}
