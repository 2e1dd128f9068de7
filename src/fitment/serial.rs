//! A report as structured output.

use serde::ser::{Serialize, SerializeMap, Serializer};

use super::Setup;
use super::check::{Check, Verdict};
use super::document::{Document, Written};
use super::effect::Effect;
use super::further::FurtherAxle;
use super::measure::{Keys, Measurement, Preparation};
use super::moves::Move;
use super::position::Position;
use super::pressures::{Needed, Pressures};
use super::report::Report;
use super::rule_scope::RuleScope;
use super::space::{Approach, part_name};
use super::spare::SpareWheel;
use super::value::{Bound, Value};
use crate::OwnSource;
use crate::record::tidy;
use crate::units::{in_deg, in_kpa, in_mm};

/// A number in the reading's unit, or a designation as text.
struct Shown(Value);

impl Serialize for Shown {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match (self.0, self.0.number()) {
            (_, Some(number)) => serializer.serialize_f64(tidy(number)),
            (Value::LoadIndex(index), None) => serializer.collect_str(&index),
            (other, None) => serializer.collect_str(&other),
        }
    }
}

struct Limit(Bound);

impl Serialize for Limit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(1))?;
        match self.0 {
            Bound::AtMost(most) => map.serialize_entry("at_most", &Shown(most))?,
            Bound::AtLeast(least) => map.serialize_entry("at_least", &Shown(least))?,
            Bound::Between(least, most) => map.serialize_entry("between", &(Shown(least), Shown(most)))?,
            Bound::Equals(other) => map.serialize_entry("equal_to", &Shown(other))?,
        }
        map.end()
    }
}

/// `reason`, and the keys of the missing inputs behind it, if there are any.
struct Why<'a>(&'a Check, Keys);

impl core::fmt::Display for Why<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.0.reason().text())?;
        for (n, input) in self.0.missing().enumerate() {
            write!(f, "{}{}", if n == 0 { ": " } else { ", " }, input.at(self.0.position()).by(self.1))?;
        }
        Ok(())
    }
}

impl Serialize for Why<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0.missing().next() {
            None => serializer.serialize_str(self.0.reason().text()),
            Some(_) => serializer.collect_str(self),
        }
    }
}

impl Serialize for Check {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Sourced(self, None, Keys::OF_TWO_AXLES).serialize(serializer)
    }
}

/// A finding with the document that the caller named, where the limit is its own.
struct Sourced<'a>(&'a Check, Option<OwnSource>, Keys);

impl<'a> Sourced<'a> {
    fn of(report: &Report, check: &'a Check) -> Self {
        let document = check.citation().and_then(|citation| report.document_of(citation));
        Self(check, document, report.keys())
    }

    fn entries(&self) -> usize {
        13 + usize::from(self.1.is_some())
    }
}

impl Serialize for Sourced<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.entries()))?;
        write_check(&mut map, self)?;
        map.end()
    }
}

fn write_check<M: SerializeMap>(
    map: &mut M,
    Sourced(check, document, keys): &Sourced<'_>,
) -> Result<(), M::Error> {
    map.serialize_entry("id", &check.id())?;
    map.serialize_entry("where", &check.position())?;
    map.serialize_entry("verdict", &check.verdict())?;
    map.serialize_entry("measured", &check.measured().map(Shown))?;
    map.serialize_entry("nominal", &check.nominal().map(Shown))?;
    map.serialize_entry("limit", &check.limit().map(Limit))?;
    map.serialize_entry("margin", &check.margin_number().map(tidy))?;
    map.serialize_entry("unit", &check.measured().map(|r| r.unit()).filter(|u| !u.is_empty()))?;
    map.serialize_entry("reason_id", check.reason().id())?;
    map.serialize_entry("reason", &Why(check, *keys))?;
    map.serialize_entry("citation", &check.citation().map(Text))?;
    map.serialize_entry("status", &check.citation().map(|c| c.status().name()))?;
    map.serialize_entry("from_memory", &check.citation().map(|c| c.is_from_memory()))?;
    match document {
        Some(document) => map.serialize_entry("source", document),
        None => Ok(()),
    }
}

/// A finding with what to do about it.
pub(super) struct Advised<'a>(pub(super) &'a Document<'a>, pub(super) &'a Check);

impl Serialize for Advised<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let sourced = Sourced::of(self.0.report(), self.1);
        let assumed = || self.0.assumed(self.1).map(|value| value.of());
        let is_any = assumed().next().is_some();
        let mut map = serializer.serialize_map(Some(1 + sourced.entries() + usize::from(is_any)))?;
        write_check(&mut map, &sourced)?;
        map.serialize_entry("todo", &Text(self.0.advice(self.1)))?;
        if is_any {
            map.serialize_entry("assumed", &Each(assumed))?;
        }
        map.end()
    }
}

/// Anything as its text.
pub(super) struct Text<T>(pub(super) T);

impl<T: core::fmt::Display> Serialize for Text<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

/// In kilopascals; `null` for what is not known, `"none"` where no pressure carries the load.
impl Serialize for Needed {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::NotKnown => serializer.serialize_none(),
            Self::NoPressure => serializer.serialize_str("none"),
            Self::AtLeast(pressure) => serializer.serialize_f64(tidy(in_kpa(*pressure))),
        }
    }
}

impl Serialize for Pressures {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let permitted = self.permitted().map(|pressure| tidy(in_kpa(pressure)));
        let mut map = serializer.serialize_map(Some(7))?;
        map.serialize_entry("where", &self.position())?;
        map.serialize_entry("normal_load_kpa", &self.normal_load())?;
        map.serialize_entry("full_load_kpa", &self.full_load())?;
        map.serialize_entry("as_original_kpa", &self.as_original())?;
        map.serialize_entry("permitted_kpa", &permitted)?;
        map.serialize_entry("governs", &self.governs())?;
        map.serialize_entry("assumes", &self.assumes())?;
        map.end()
    }
}

impl Serialize for Approach {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(7))?;
        map.serialize_entry("where", &self.position())?;
        map.serialize_entry("body", &self.body())?;
        map.serialize_entry("part", part_name(self.part()))?;
        map.serialize_entry("lower_mm", &tidy(in_mm(self.lower())))?;
        map.serialize_entry("upper_mm", &tidy(in_mm(self.upper())))?;
        map.serialize_entry("steer_deg", &tidy(in_deg(self.steer())))?;
        map.serialize_entry("travel_mm", &tidy(in_mm(self.travel())))?;
        map.end()
    }
}

impl Serialize for Effect {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(6))?;
        map.serialize_entry("id", &self.id())?;
        map.serialize_entry("where", &self.position())?;
        map.serialize_entry("before", &Shown(self.before()))?;
        map.serialize_entry("after", &Shown(self.after()))?;
        map.serialize_entry("unit", self.before().unit())?;
        map.serialize_entry("caution", self.id().caution())?;
        map.end()
    }
}

/// A finding by its name and place.
struct Named(Check);

impl Serialize for Named {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(2))?;
        map.serialize_entry("id", &self.0.id())?;
        map.serialize_entry("where", &self.0.position())?;
        map.end()
    }
}

impl Serialize for Measurement<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(8))?;
        map.serialize_entry("input", &Text(self.path()))?;
        map.serialize_entry("where", &self.position())?;
        map.serialize_entry("how", self.input().how())?;
        map.serialize_entry("tools", self.tools())?;
        map.serialize_entry("wheel_off", &(self.access() == Preparation::WheelOff))?;
        map.serialize_entry("safety", &self.access().safety())?;
        map.serialize_entry("settles", &Each(|| self.settles_alone().map(Named)))?;
        map.serialize_entry("settles_with_others", &Each(|| self.settles_with_others().map(Named)))?;
        map.end()
    }
}

impl Serialize for RuleScope {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(3))?;
        map.serialize_entry("set", &self.set())?;
        map.serialize_entry("as_of", &self.as_of())?;
        map.serialize_entry("not_held", &Each(|| self.not_held()))?;
        map.end()
    }
}

/// A sequence from an iterator that can be made again.
pub(super) struct Each<F>(pub(super) F);

impl<F: Fn() -> I, I: Iterator<Item: Serialize>> Serialize for Each<F> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.0())
    }
}

/// The number of the shape of a written report: it grows when a key changes its meaning or goes.
pub(super) const SCHEMA: u32 = 2;

impl Serialize for Report {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(10))?;
        write_verdict(&mut map, self.overall(), self.is_complete())?;
        map.serialize_entry("checks", &Each(|| self.findings().map(|check| Sourced::of(self, check))))?;
        write_more(&mut map, self)?;
        map.end()
    }
}

fn write_verdict<M: SerializeMap>(map: &mut M, overall: Verdict, is_complete: bool) -> Result<(), M::Error> {
    map.serialize_entry("schema", &SCHEMA)?;
    map.serialize_entry("overall", &overall)?;
    map.serialize_entry("complete", &is_complete)
}

fn write_more<M: SerializeMap>(map: &mut M, report: &Report) -> Result<(), M::Error> {
    map.serialize_entry("rules", &report.rules())?;
    map.serialize_entry("approaches", &Each(|| report.approaches()))?;
    map.serialize_entry("pressures", &Each(|| report.pressures()))?;
    map.serialize_entry("effects", &Each(|| report.effects()))?;
    map.serialize_entry("cautions", &Each(|| report.cautions().map(|c| c.text())))?;
    map.serialize_entry("measurements", &Each(|| report.measurements()))
}

/// What was on an axle, and what is to go on.
pub(super) struct OnAxle<'a>(pub(super) Position, pub(super) [Option<&'a Setup>; 2]);

impl Serialize for OnAxle<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let [before, after] = self.1.map(|setup| setup.map(|setup| Text(Written(setup))));
        let mut map = serializer.serialize_map(Some(3))?;
        map.serialize_entry("where", &self.0)?;
        map.serialize_entry("before", &before)?;
        map.serialize_entry("after", &after)?;
        map.end()
    }
}

impl Serialize for Move {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let span = |span: Option<(Value, Value)>| span.map(|(least, most)| (Shown(least), Shown(most)));
        let unit = self.before().or(self.after()).map(|value| value.unit());
        let mut map = serializer.serialize_map(Some(9))?;
        map.serialize_entry("id", &self.id())?;
        map.serialize_entry("where", &self.position())?;
        map.serialize_entry("before", &self.before().map(Shown))?;
        map.serialize_entry("after", &self.after().map(Shown))?;
        map.serialize_entry("change", &self.change().map(Shown))?;
        map.serialize_entry("unit", &unit)?;
        map.serialize_entry("before_span", &span(self.before_span()))?;
        map.serialize_entry("after_span", &span(self.after_span()))?;
        map.serialize_entry("from_memory", &self.is_from_memory())?;
        map.end()
    }
}

/// The report, with what it is about and what moves.
impl Serialize for Document<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let moves = self.moves();
        let is_told = !self.provenance().is_empty();
        let spare = self.spare();
        let further = self.further();
        let beside = usize::from(spare.is_some()) + usize::from(!further.is_empty());
        let entries = 13 + usize::from(is_told) + beside;
        let mut map = serializer.serialize_map(Some(entries))?;
        write_verdict(&mut map, self.overall(), self.is_complete())?;
        map.serialize_entry("name", &self.name())?;
        map.serialize_entry("setups", &Each(|| self.setups().map(|(place, setups)| OnAxle(place, setups))))?;
        map.serialize_entry("moves", &Each(|| moves.iter()))?;
        map.serialize_entry("checks", &Each(|| self.report().findings().map(|check| Advised(self, check))))?;
        write_more(&mut map, self.report())?;
        if is_told {
            map.serialize_entry("sources", self.provenance())?;
        }
        if let Some(spare) = spare {
            map.serialize_entry("spare", &OfSpare(self, spare))?;
        }
        if !further.is_empty() {
            map.serialize_entry("more_axles", &Each(|| further.iter().map(OfFurther)))?;
        }
        map.end()
    }
}

/// What is said of a further axle, under its name.
struct OfFurther<'a>(&'a FurtherAxle);

impl Serialize for OfFurther<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let (document, report) = (self.0.document(), self.0.report());
        let (setups, moves) = (document.setups_at(Position::Rear), document.moves());
        let mut map = serializer.serialize_map(Some(12))?;
        map.serialize_entry("name", self.0.name())?;
        map.serialize_entry("beside", &self.0.beside())?;
        map.serialize_entry("overall", &report.overall())?;
        map.serialize_entry("complete", &report.is_complete())?;
        map.serialize_entry(
            "setups",
            &Each(|| setups.map(|setups| OnAxle(Position::Rear, setups)).into_iter()),
        )?;
        map.serialize_entry("moves", &Each(|| moves.on(Position::Rear)))?;
        map.serialize_entry("checks", &Each(|| report.findings().map(|check| Advised(&document, check))))?;
        map.serialize_entry("approaches", &Each(|| report.approaches()))?;
        map.serialize_entry("pressures", &Each(|| report.pressures()))?;
        map.serialize_entry("effects", &Each(|| report.effects()))?;
        map.serialize_entry("cautions", &Each(|| report.cautions().map(|c| c.text())))?;
        map.serialize_entry("measurements", &Each(|| report.measurements()))?;
        map.end()
    }
}

/// What is said of the spare wheel, and the verdict on the change without it.
struct OfSpare<'a>(&'a Document<'a>, SpareWheel<'a>);

impl Serialize for OfSpare<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self(document, spare) = *self;
        let mut map = serializer.serialize_map(Some(5))?;
        map.serialize_entry("setup", &Text(Written(spare.setup())))?;
        map.serialize_entry("overall", &document.overall_of_spare())?;
        map.serialize_entry("complete", &document.is_complete_of_spare())?;
        map.serialize_entry("overall_without", &document.overall_on_axles())?;
        map.serialize_entry(
            "axles",
            &Each(|| spare.reports().map(|(axle, report)| OnItsAxle(spare, axle, report))),
        )?;
        map.end()
    }
}

/// The report on the spare wheel on an axle.
struct OnItsAxle<'a>(SpareWheel<'a>, Position, Report);

impl Serialize for OnItsAxle<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self(spare, axle, report) = self;
        let change = spare.change_on(*axle);
        let document = Document::new(report, spare.vehicle(), &change);
        let mut map = serializer.serialize_map(Some(8))?;
        map.serialize_entry("where", &axle.spare())?;
        map.serialize_entry("overall", &report.overall())?;
        map.serialize_entry("complete", &report.is_complete())?;
        map.serialize_entry("checks", &Each(|| report.findings().map(|check| Advised(&document, check))))?;
        map.serialize_entry("approaches", &Each(|| report.approaches()))?;
        map.serialize_entry("pressures", &Each(|| report.pressures()))?;
        map.serialize_entry("cautions", &Each(|| report.cautions().map(|c| c.text())))?;
        map.serialize_entry("measurements", &Each(|| report.measurements()))?;
        map.end()
    }
}
