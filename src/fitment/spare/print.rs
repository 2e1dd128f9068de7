//! What is said of a spare wheel, for a terminal.

use core::fmt;

use crate::fitment::aside;
use crate::fitment::caution::Caution;
use crate::fitment::document::{Document, Written};
use crate::fitment::layout::wrapped;

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
            writeln!(f, "- at {axle}: {}", report.overall())?;
            aside::print::print(f, &document, |place| place, |caution| caution == Caution::TemporarySpare)?;
        }
        if self.is_spare_open() {
            writeln!(f, "- not judged on the axles beside front and rear")?;
        }
        Ok(())
    }
}
