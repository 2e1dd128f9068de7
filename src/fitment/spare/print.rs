//! What is said of a spare wheel, for a terminal.

use core::fmt::{self, Write};

use crate::fitment::caution::Caution;
use crate::fitment::check::{CheckId, Position, Verdict};
use crate::fitment::document::{Document, Written};
use crate::fitment::layout::{Wrap, wrapped};
use crate::fitment::print::not_judged;
use crate::fitment::report::Report;
use crate::text::Name;

impl Document<'_> {
    /// Prints the spare wheel on each axle: the verdict, what decides, what is inside, what was not judged.
    pub(in crate::fitment) fn print_spare(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Some(spare) = self.spare() else { return Ok(()) };
        writeln!(f, "\nSpare wheel")?;
        write!(f, "  ")?;
        wrapped(f, 2, Written(spare.setup()))?;
        for (axle, report) in spare.reports() {
            let change = spare.change_on(axle);
            let document = Document::new(&report, spare.vehicle(), &change).in_units(self.units());
            print_on(f, axle, &report, &document)?;
        }
        Ok(())
    }
}

fn print_on(
    f: &mut fmt::Formatter<'_>,
    axle: Position,
    report: &Report,
    document: &Document<'_>,
) -> fmt::Result {
    let body = document.body();
    writeln!(f, "- at {axle}: {}", report.overall())?;
    let mut number = 0;
    for verdict in [Verdict::Beyond, Verdict::Marginal] {
        for finding in body.findings(verdict) {
            number += 1;
            body.spell_out(f, number, finding)?;
        }
    }
    let within = body.findings(Verdict::Within).map(|(_, check)| check.id());
    names(f, "within", within)?;
    names(f, "not judged", not_judged(report))?;
    for caution in report.cautions().filter(|&caution| caution == Caution::TemporarySpare) {
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
