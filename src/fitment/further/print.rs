//! What is said of further axles, for a terminal.

use core::fmt;

use super::FurtherAxle;
use crate::fitment::aside;
use crate::fitment::document::{Document, Written};
use crate::fitment::layout::wrapped;
use crate::fitment::position::Position;
use crate::text::Excerpt;

impl FurtherAxle {
    /// Its report with the axle, its setups and what moves there.
    pub(in crate::fitment) fn document(&self) -> Document<'_> {
        Document::new(self.report(), self.vehicle(), self.change())
            .with_basis(self.basis())
            .with_name(self.name())
    }
}

impl Document<'_> {
    /// Prints each further axle: what was on it and goes on, the verdict, what decides, what was not judged; of the
    /// cautions only those that the report on front and rear does not say.
    pub(in crate::fitment) fn print_further(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for axle in self.further() {
            let document = axle.document().in_units(self.units());
            writeln!(f, "\nFurther axle")?;
            f.write_str("  ")?;
            wrapped(f, 2, format_args!("{}: {}", Excerpt(axle.name()), axle.report().overall()))?;
            for (title, setup) in ["from", "to"].into_iter().zip(axle.change().on(Position::Rear)) {
                write!(f, "  {title:<5}")?;
                match setup {
                    Some(setup) => wrapped(f, 7, Written(setup))?,
                    None => writeln!(f, "not given")?,
                }
            }
            let called = |place| called(place, axle.beside());
            aside::print::print(f, &document, called, |caution| {
                self.report().cautions().all(|said| said != caution)
            })?;
        }
        Ok(())
    }
}

/// A place of an axle that stands by itself, or beside another.
fn called<'a>(place: &'static str, beside: Option<&'a str>) -> &'a str {
    match place {
        "rear" => "axle",
        "rear both" => "both ends",
        "rear left" => "left end",
        "rear right" => "right end",
        "vehicle" => beside.unwrap_or(place),
        other => other,
    }
}
