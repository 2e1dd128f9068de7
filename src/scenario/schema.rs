//! The shape of a scenario file for other programs: a JSON Schema from the tables that it is read by.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use serde::ser::{Serialize, SerializeMap, Serializer};

use crate::file::{Content, Entry, Object, Quantity, Unit, without_unit};

/// The shape of a scenario file, as JSON Schema (draft 2020-12): which keys each object has and needs, which words,
/// numbers and lists stand behind them, and the units a key may end in. A quantity may be a text with its unit, and
/// behind a key without a unit it must. It is written by any serde format.
///
/// What it refuses is no scenario. What it accepts may still be refused: it does not read designations, and knows
/// nothing of values that contradict each other.
///
/// ```
/// let schema = serde_json::to_value(beadseat::scenario::schema())?;
/// assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
/// assert_eq!(schema["$defs"]["Axle"]["properties"]["track_mm"]["maximum"], 3000.0);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Clone, Copy)]
pub struct Schema(&'static Object);

impl Schema {
    /// Of a file that is read as this object.
    pub(super) const fn of(object: &'static Object) -> Self {
        Self(object)
    }
}

impl core::fmt::Debug for Schema {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_tuple("Schema").field(&self.0.name).finish()
    }
}

impl Serialize for Schema {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut objects = Vec::new();
        gather(self.0, &mut objects);
        let mut map = serializer.serialize_map(Some(3))?;
        map.serialize_entry("$schema", "https://json-schema.org/draft/2020-12/schema")?;
        map.serialize_entry("$ref", &path(self.0))?;
        map.serialize_entry("$defs", &Definitions(&objects))?;
        map.end()
    }
}

fn path(object: &Object) -> String {
    format!("#/$defs/{}", object.name)
}

/// An object and all that stand in it, each once.
fn gather(object: &'static Object, objects: &mut Vec<&'static Object>) {
    if objects.iter().any(|known| known.name == object.name) {
        return;
    }
    objects.push(object);
    for entry in object.entries {
        if let Some(inner) = inner(&entry.content) {
            gather(inner, objects);
        }
    }
}

fn inner(content: &Content) -> Option<&'static Object> {
    match content {
        Content::Object(object) | Content::SameOr(object) => Some(object),
        Content::List { of, .. } => inner(of),
        _ => None,
    }
}

struct Definitions<'a>(&'a [&'static Object]);

impl Serialize for Definitions<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|object| (object.name, Definition(object))))
    }
}

struct Definition(&'static Object);

impl Serialize for Definition {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Object { entries, one_of, .. } = self.0;
        let needed = entries.iter().filter(|entry| entry.is_needed);
        let any_unit: Vec<_> = needed.map(|entry| AnyOf(keys(entry, entries).map(Needs).collect())).collect();
        let one_unit: Vec<_> = entries.iter().flat_map(|entry| pairs(entry, entries)).collect();
        let one_of: Vec<_> = entries
            .iter()
            .filter(|entry| one_of.contains(&entry.key))
            .flat_map(|entry| keys(entry, entries))
            .map(Needs)
            .collect();
        let lists = [any_unit.is_empty(), one_unit.is_empty(), one_of.is_empty()];
        let mut map = serializer.serialize_map(Some(3 + lists.into_iter().filter(|empty| !empty).count()))?;
        map.serialize_entry("type", "object")?;
        map.serialize_entry("properties", &Properties(entries))?;
        map.serialize_entry("additionalProperties", &false)?;
        if !any_unit.is_empty() {
            map.serialize_entry("allOf", &any_unit)?;
        }
        if !one_unit.is_empty() {
            map.serialize_entry("not", &AnyOf(one_unit))?;
        }
        if !one_of.is_empty() {
            map.serialize_entry("oneOf", &one_of)?;
        }
        map.end()
    }
}

/// How the quantity of a key is spelled.
#[derive(Clone, Copy)]
enum Spelling {
    /// As the key is written, or of no unit at all.
    Own,
    /// With another unit at the end of the key.
    InUnit(&'static Unit),
    /// Without a unit in the key, which the text must tell.
    AsText,
}

/// A key in each of its spellings, its own first.
fn spellings(
    entry: &'static Entry,
    beside: &'static [Entry],
) -> impl Iterator<Item = (String, Spelling)> + Clone {
    let quantity = Quantity::of(entry.key).filter(|_| is_of_numbers(&entry.content));
    let other = quantity.into_iter().flat_map(|(quantity, base)| {
        let units = quantity.units.iter().skip(1).filter(|unit| !unit.suffix.is_empty());
        units.map(move |unit| (format!("{base}{}", unit.suffix), Spelling::InUnit(unit)))
    });
    let without = quantity.and_then(|(_, base)| {
        let keys = beside.iter().map(|entry| entry.key);
        without_unit(base, keys).map(|_| (base.into(), Spelling::AsText))
    });
    core::iter::once((entry.key.into(), Spelling::Own)).chain(other).chain(without)
}

fn keys(entry: &'static Entry, beside: &'static [Entry]) -> impl Iterator<Item = [String; 1]> + Clone {
    spellings(entry, beside).map(|(key, _)| [key])
}

/// Two spellings of one key.
fn pairs(entry: &'static Entry, beside: &'static [Entry]) -> Vec<Needs<2>> {
    let keys: Vec<_> = keys(entry, beside).collect();
    let pair = |(n, one): (usize, &[String; 1])| {
        let one = one[0].clone();
        keys.iter().skip(n + 1).map(move |[other]| Needs([one.clone(), other.clone()])).collect::<Vec<_>>()
    };
    keys.iter().enumerate().flat_map(pair).collect()
}

fn is_of_numbers(content: &Content) -> bool {
    match content {
        Content::Number { .. } | Content::Whole { .. } => true,
        Content::List { of, .. } => is_of_numbers(of),
        _ => false,
    }
}

/// That keys are there.
struct Needs<const N: usize>([String; N]);

impl<const N: usize> Serialize for Needs<N> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map([("required", self.0.as_slice())])
    }
}

struct AnyOf<T>(Vec<T>);

impl<T: Serialize> Serialize for AnyOf<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map([("anyOf", &self.0)])
    }
}

struct Properties(&'static [Entry]);

impl Serialize for Properties {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let of = |entry: &'static Entry| {
            let is_quantity = Quantity::of(entry.key).is_some();
            let property = move |spelling| Property { content: entry.content, spelling, is_quantity };
            spellings(entry, self.0).map(move |(key, spelling)| (key, property(spelling)))
        };
        serializer.collect_map(self.0.iter().flat_map(of))
    }
}

/// A text with a number and a unit; which units, no schema says.
const AMOUNT: &str = "^\\s*[-+\u{2212}]?[0-9\u{bc}-\u{be}]";

/// What stands behind a key.
#[derive(Clone, Copy)]
struct Property {
    content: Content,
    spelling: Spelling,
    is_quantity: bool,
}

impl Property {
    /// A number in a range, or a text in its place.
    fn number<S: Serializer>(&self, serializer: S, kind: &str, ends: [f64; 2]) -> Result<S::Ok, S::Error> {
        let ends = ends.map(|end| match self.spelling {
            Spelling::InUnit(unit) => (unit.from_written)(end),
            _ => end,
        });
        let is_text_only = matches!(self.spelling, Spelling::AsText);
        let mut map = serializer
            .serialize_map(Some(1 + usize::from(self.is_quantity) + if is_text_only { 0 } else { 2 }))?;
        match (self.is_quantity, is_text_only) {
            (_, true) => map.serialize_entry("type", "string")?,
            (true, false) => map.serialize_entry("type", &[kind, "string"])?,
            (false, false) => map.serialize_entry("type", kind)?,
        }
        if !is_text_only {
            let [least, most] = ends;
            if kind == "integer" {
                map.serialize_entry("minimum", &(least as u8))?;
                map.serialize_entry("maximum", &(most as u8))?;
            } else {
                map.serialize_entry("minimum", &least)?;
                map.serialize_entry("maximum", &most)?;
            }
        }
        if self.is_quantity {
            map.serialize_entry("pattern", AMOUNT)?;
        }
        map.end()
    }
}

impl Serialize for Property {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.content {
            Content::Number { least, most } => return self.number(serializer, "number", [least, most]),
            Content::Whole { least, most } => {
                return self.number(serializer, "integer", [least, most].map(f64::from));
            }
            _ => {}
        }
        let mut map = serializer.serialize_map(Some(if matches!(self.content, Content::List { .. }) {
            4
        } else {
            1
        }))?;
        match self.content {
            Content::Number { .. } | Content::Whole { .. } => {}
            Content::Flag => map.serialize_entry("type", "boolean")?,
            Content::Text => map.serialize_entry("type", "string")?,
            Content::Words(words) => map.serialize_entry("enum", words)?,
            Content::List { of, least, most } => {
                map.serialize_entry("type", "array")?;
                map.serialize_entry("items", &Self { content: *of, ..*self })?;
                map.serialize_entry("minItems", &least)?;
                map.serialize_entry("maxItems", &most)?;
            }
            Content::Object(object) => map.serialize_entry("$ref", &path(object))?,
            Content::SameOr(object) => {
                let either = [Content::Words(&["same"]), Content::Object(object)];
                map.serialize_entry("anyOf", &either.map(|content| Self { content, ..*self }))?;
            }
        }
        map.end()
    }
}
