//! The further axles of two proposals, each beside that of the same name.

use super::{Comparison, Pair};
use crate::fitment::document::Document;
use crate::fitment::further::FurtherAxle;

impl<'a> Comparison<'a> {
    /// The axles beside the front and the rear one, those of one name together: of both proposals the first's order.
    pub fn further(&self) -> impl Iterator<Item = Pair<&'a FurtherAxle>> + use<'a> {
        let lists = self.documents().map(|document| move || document.further().iter());
        Pair::all(lists, |a, b| a.name() == b.name())
    }

    /// What was found on two axles of one name, held against each other.
    pub(super) fn on_further(&self, [first, second]: [&'a FurtherAxle; 2]) -> Self {
        let mut on = Self::new(self.proposals);
        for (proposal, axle) in on.proposals.iter_mut().zip([first, second]) {
            let document: Document<'a> = axle.document();
            proposal.document = document.in_units(proposal.document.units());
        }
        on
    }
}
