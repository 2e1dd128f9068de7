//! The verdict on further axles in a line.

use core::fmt;

use super::FurtherAxle;
use crate::fitment::aside::line::InALine;
use crate::fitment::check::Verdict;
use crate::text::Excerpt;

/// The verdict on each further axle, the gravest first.
pub(in crate::fitment) struct FurtherLine<'a>(pub(in crate::fitment) &'a [FurtherAxle]);

impl fmt::Display for FurtherLine<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut between = "";
        for verdict in [Verdict::Beyond, Verdict::Marginal, Verdict::Within] {
            for axle in self.0.iter().filter(|axle| axle.report().overall() == verdict) {
                write!(f, "{between}{} {}", Excerpt(axle.name()), InALine(axle.report()))?;
                between = "; ";
            }
        }
        Ok(())
    }
}
