//! What is said in a report of its own, for a terminal.

use core::fmt::{self, Write};

use crate::fitment::caution::Caution;
use crate::fitment::check::{CheckId, Verdict};
use crate::fitment::document::Document;
use crate::fitment::layout::{Wrap, wrapped};
use crate::fitment::print::not_judged;
use crate::text::Name;

/// Prints what decides, what is inside, what was not judged, the cautions that are asked for and what to find out; a
/// finding stands at its place as it is called there.
pub(in crate::fitment) fn print<'a>(
    f: &mut fmt::Formatter<'_>,
    document: &Document<'_>,
    called: impl Fn(&'static str) -> &'a str,
    is_told: impl Fn(Caution) -> bool,
) -> fmt::Result {
    let (body, report) = (document.body(), document.report());
    let mut number = 0;
    for verdict in [Verdict::Beyond, Verdict::Marginal] {
        for (place, check) in body.findings(verdict) {
            number += 1;
            body.spell_out(f, number, (called(place), check))?;
        }
    }
    let within = body.findings(Verdict::Within).map(|(_, check)| check.id());
    names(f, "within", within)?;
    names(f, "not judged", not_judged(report))?;
    for caution in report.cautions().filter(|&caution| is_told(caution)) {
        write!(f, "  * ")?;
        wrapped(f, 4, caution.text())?;
    }
    for wanted in report.measurements() {
        write!(f, "     ")?;
        wrapped(f, 5, format_args!("find out {wanted}"))?;
    }
    Ok(())
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
