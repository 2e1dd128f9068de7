//! Two proposals as one object.

use serde::ser::{Serialize, SerializeMap, Serializer};

use super::{Comparison, Pair};
use crate::fitment::Caution;
use crate::fitment::check::{Check, Position, Verdict};
use crate::fitment::document::{Document, Written};
use crate::fitment::further::FurtherAxle;
use crate::fitment::moves::Move;
use crate::fitment::pressures::Pressures;
use crate::fitment::serial::{Advised, Each, OnAxle, SCHEMA, Text};
use crate::fitment::space::Approach;

/// `a` and `b`.
struct OfEach<T>([T; 2]);

impl<T: Serialize> Serialize for OfEach<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(2))?;
        map.serialize_entry("a", &self.0[0])?;
        map.serialize_entry("b", &self.0[1])?;
        map.end()
    }
}

/// What was found of both, each as the report on it alone has it.
struct Beside<'a, I: Serialize, P: Serialize, T>(Option<I>, P, bool, [Option<&'a T>; 2]);

impl<I: Serialize, P: Serialize, T: Serialize> Serialize for Beside<'_, I, P, T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self(id, place, differs, [first, second]) = self;
        let mut map = serializer.serialize_map(Some(4 + usize::from(id.is_some())))?;
        if let Some(id) = id {
            map.serialize_entry("id", id)?;
        }
        map.serialize_entry("where", place)?;
        map.serialize_entry("differs", differs)?;
        map.serialize_entry("a", first)?;
        map.serialize_entry("b", second)?;
        map.end()
    }
}

/// A caution with the proposals that it is for.
struct For(Caution, [bool; 2]);

impl Serialize for For {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(3))?;
        map.serialize_entry("caution", self.0.text())?;
        map.serialize_entry("a", &self.1[0])?;
        map.serialize_entry("b", &self.1[1])?;
        map.end()
    }
}

/// A pair of findings, with what to do about each.
struct Checks<'a>([Document<'a>; 2], Pair<Check>);

impl Serialize for Checks<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let [of_a, of_b] = &self.0;
        let first = self.1.first().map(|check| Advised(of_a, check));
        let second = self.1.second().map(|check| Advised(of_b, check));
        let both = [first.as_ref(), second.as_ref()];
        Beside(Some(self.1.id()), self.1.position(), self.1.differs(), both).serialize(serializer)
    }
}

impl Serialize for Comparison<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let documents = self.documents();
        let setups = documents
            .map(|document| Each(move || document.setups().map(|(place, setups)| OnAxle(place, setups))));
        let moves = Each(|| self.moves().map(Moved));
        let mut map = serializer.serialize_map(Some(12 + usize::from(self.further().next().is_some())))?;
        map.serialize_entry("schema", &SCHEMA)?;
        map.serialize_entry("names", &OfEach(documents.map(|document| document.name())))?;
        map.serialize_entry("differs_in", &Each(|| self.differing_keys()))?;
        map.serialize_entry("overall", &OfEach(documents.map(|document| document.overall_on_axles())))?;
        map.serialize_entry("complete", &OfEach(documents.map(|document| document.is_complete_on_axles())))?;
        map.serialize_entry("setups", &OfEach(setups))?;
        map.serialize_entry("sources", &OfEach(documents.map(|document| document.provenance())))?;
        map.serialize_entry("checks", &Each(|| self.checks().map(|pair| Checks(documents, pair))))?;
        map.serialize_entry("moves", &moves)?;
        map.serialize_entry("approaches", &Each(|| self.approaches().map(Near)))?;
        map.serialize_entry("pressures", &Each(|| self.pressures().map(Needs)))?;
        map.serialize_entry(
            "cautions",
            &Each(|| {
                let of = move |caution| For(caution, documents.map(|document| document.has_caution(caution)));
                Caution::ALL.iter().copied().map(of).filter(|found| found.1 != [false; 2])
            }),
        )?;
        if self.further().next().is_some() {
            map.serialize_entry("more_axles", &Each(|| self.further().map(|pair| OnFurther(self, pair))))?;
        }
        map.end()
    }
}

/// What was found on an axle beside front and rear; what only one proposal has is held against nothing.
struct OnFurther<'a>(&'a Comparison<'a>, Pair<&'a FurtherAxle>);

impl Serialize for OnFurther<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self(comparison, pair) = self;
        let of_each =
            |ask: fn(&FurtherAxle) -> Verdict| OfEach(pair.each().map(|axle| axle.map(|axle| ask(axle))));
        let is_complete = OfEach(pair.each().map(|axle| axle.map(|axle| axle.report().is_complete())));
        let after =
            pair.each().map(|axle| axle.and_then(|axle| axle.document().change().on(Position::Rear)[1]));
        let compared = match pair {
            Pair::Both(first, second) => Some(comparison.on_further([first, second])),
            Pair::First(_) | Pair::Second(_) => None,
        };
        let mut map = serializer.serialize_map(Some(if compared.is_some() { 8 } else { 4 }))?;
        map.serialize_entry("name", pair.either().name())?;
        map.serialize_entry("overall", &of_each(|axle| axle.report().overall()))?;
        map.serialize_entry("complete", &is_complete)?;
        map.serialize_entry("after", &OfEach(after.map(|setup| setup.map(|setup| Text(Written(setup))))))?;
        if let Some(compared) = &compared {
            let documents = compared.documents();
            let moves = || compared.moves().filter(|pair| pair.position() == Position::Rear);
            map.serialize_entry("checks", &Each(|| compared.checks().map(|pair| Checks(documents, pair))))?;
            map.serialize_entry("moves", &Each(|| moves().map(Moved)))?;
            map.serialize_entry("approaches", &Each(|| compared.approaches().map(Near)))?;
            map.serialize_entry("pressures", &Each(|| compared.pressures().map(Needs)))?;
        }
        map.end()
    }
}

/// A pair of moves.
struct Moved(Pair<Move>);

impl Serialize for Moved {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Beside(Some(self.0.id()), self.0.position(), self.0.differs(), self.0.each()).serialize(serializer)
    }
}

/// A pair of nearest approaches; they have no name.
struct Near(Pair<Approach>);

impl Serialize for Near {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let place = self.0.either().position();
        Beside(None::<&str>, place, self.0.differs(), self.0.each()).serialize(serializer)
    }
}

/// A pair of pressures; they have no name.
struct Needs(Pair<Pressures>);

impl Serialize for Needs {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Beside(None::<&str>, self.0.position(), self.0.differs(), self.0.each()).serialize(serializer)
    }
}
