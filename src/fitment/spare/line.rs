//! The verdict on a spare wheel in a line.

use core::fmt;

use super::SpareWheel;
use crate::fitment::aside::line::InALine;

/// The verdict on a spare wheel on each axle, in a line.
pub(in crate::fitment) struct SpareLine<'a>(pub(in crate::fitment) SpareWheel<'a>);

impl fmt::Display for SpareLine<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, (axle, report)) in self.0.reports().enumerate() {
            write!(f, "{}{axle} {}", if n == 0 { "" } else { "; " }, InALine(&report))?;
        }
        Ok(())
    }
}
