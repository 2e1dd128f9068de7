//! What is found on a further axle, with what it is about: to print it, and to tell how its numbers came about.

use super::AxleReport;
use crate::fitment::derivation::{Derivations, Explanation, Subject};
use crate::fitment::document::Document;
use crate::unit_system::UnitSystem;

impl AxleReport<'_> {
    /// Everything about a subject to print, as far as it was found on this axle.
    pub const fn explain(&self, subject: Subject) -> Explanation<'_> {
        let Self { name, vehicle, change, conditions, limits, .. } = self;
        Derivations::new(vehicle, change, conditions, limits).explain(subject).of_axle(name)
    }

    pub(in crate::fitment) const fn document(&self, units: UnitSystem) -> Document<'_> {
        Document::new(&self.report, &self.vehicle, &self.change)
            .of_axle(self.number, self.basis)
            .in_units(units)
    }
}
