//! What is said of a report that stands beside that on the whole: on a spare wheel, on a further axle.

use core::fmt::{self, Write};

use super::check::{CheckId, Verdict};
use super::document::Document;
use super::layout::{Wrap, wrapped};
use super::print::not_judged;
use super::report::Report;
use crate::text::Name;

/// Prints the findings: what is beyond and marginal in full, what is within and not judged by its name.
pub(super) fn print_findings(f: &mut fmt::Formatter<'_>, document: &Document<'_>) -> fmt::Result {
    let (report, body) = (document.report(), document.body());
    let mut number = 0;
    for verdict in [Verdict::Beyond, Verdict::Marginal] {
        for finding in body.findings(verdict) {
            number += 1;
            body.spell_out(f, number, finding)?;
        }
    }
    names(f, "within", body.findings(Verdict::Within).map(|(_, check)| check.id()))?;
    names(f, "not judged", not_judged(report))
}

/// Prints what would settle what was not judged.
pub(super) fn print_measurements(f: &mut fmt::Formatter<'_>, report: &Report) -> fmt::Result {
    report.measurements().try_for_each(|wanted| {
        write!(f, "     ")?;
        wrapped(f, 5, format_args!("find out {wanted}"))
    })
}

fn names(f: &mut fmt::Formatter<'_>, title: &str, ids: impl Iterator<Item = CheckId>) -> fmt::Result {
    let mut ids = ids.peekable();
    if ids.peek().is_none() {
        return Ok(());
    }
    write!(f, "     ")?;
    let mut wrap = Wrap::new(f, 5);
    write!(wrap, "{title}:")?;
    for (n, id) in ids.enumerate() {
        write!(wrap, "{} {}", if n == 0 { "" } else { "," }, Name(id.name()))?;
    }
    wrap.end()
}
