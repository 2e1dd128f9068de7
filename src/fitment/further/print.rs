//! What is said of further axles, for a terminal.

use core::fmt;

use super::{AxleReport, FurtherAxles};
use crate::fitment::apart::{print_findings, print_measurements};
use crate::fitment::document::Written;
use crate::fitment::layout::wrapped;
use crate::fitment::moves;
use crate::fitment::report::Report;
use crate::text::Excerpt;
use crate::unit_system::UnitSystem;

impl FurtherAxles<'_> {
    /// Prints each axle: what was on it and goes on, what moves, the verdict, what decides, what was not judged. Of the
    /// cautions only those that the report on the others does not say.
    pub(in crate::fitment) fn print(
        self,
        f: &mut fmt::Formatter<'_>,
        units: UnitSystem,
        others: &Report,
    ) -> fmt::Result {
        self.judged().try_for_each(|axle| print_one(f, &axle, units, others))
    }
}

fn print_one(
    f: &mut fmt::Formatter<'_>,
    axle: &AxleReport<'_>,
    units: UnitSystem,
    others: &Report,
) -> fmt::Result {
    let (document, report) = (axle.document(units), axle.report());
    writeln!(f, "\nFurther axle")?;
    write!(f, "  ")?;
    wrapped(f, 2, format_args!("{}: {}", Excerpt(axle.name()), report.overall()))?;
    for (title, setup) in ["from", "to"].into_iter().zip(axle.setups()) {
        write!(f, "  {title:<5}")?;
        match setup {
            Some(setup) => wrapped(f, 7, Written(setup))?,
            None => writeln!(f, "not given")?,
        }
    }
    moves::print_of_axle(f, axle.moves(), units)?;
    print_findings(f, &document)?;
    for caution in report.cautions().filter(|caution| others.cautions().all(|said| said != *caution)) {
        write!(f, "  * ")?;
        wrapped(f, 4, caution.text())?;
    }
    print_measurements(f, report)
}
