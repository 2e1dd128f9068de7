//! The verdict on further axles in a line.

use alloc::vec::Vec;
use core::cmp::Reverse;
use core::fmt;

use super::FurtherAxles;
use crate::fitment::in_short::InShort;
use crate::text::Excerpt;

/// The verdict on each further axle, in a line, the gravest first.
pub(in crate::fitment) struct FurtherLine<'a>(pub(in crate::fitment) FurtherAxles<'a>);

impl fmt::Display for FurtherLine<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut axles: Vec<_> = self.0.judged().collect();
        axles.sort_by_key(|axle| Reverse(axle.report().overall().gravity()));
        for (n, axle) in axles.iter().enumerate() {
            let (name, report) = (Excerpt(axle.name()), InShort(axle.report()));
            write!(f, "{}{name} {report}", if n == 0 { "" } else { "; " })?;
        }
        Ok(())
    }
}
