//! The shape of a scenario file for other programs: a JSON Schema from the tables that it is read by.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use serde::ser::{Serialize, SerializeMap, Serializer};

use crate::file::{Content, Entry, OTHER_UNITS, Object, OtherUnit};

/// The shape of a scenario file, as JSON Schema (draft 2020-12): which keys each object has and needs, which words,
/// numbers and lists stand behind them, and the units a key may end in. It is written by any serde format.
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
        let any_unit: Vec<_> = needed.map(|entry| AnyOf(keys(entry).map(Needs).collect())).collect();
        let one_unit: Vec<_> = entries.iter().flat_map(pairs).collect();
        let one_of: Vec<_> =
            entries.iter().filter(|entry| one_of.contains(&entry.key)).flat_map(keys).map(Needs).collect();
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

/// A key in each of its units, its own first.
fn keys(entry: &Entry) -> impl Iterator<Item = [String; 1]> + Clone {
    let itself = core::iter::once([entry.key.into()]);
    itself.chain(other_units(entry).map(|(key, _)| [key]))
}

/// Two units of one key.
fn pairs(entry: &'static Entry) -> Vec<Needs<2>> {
    let keys: Vec<_> = keys(entry).collect();
    let pair = |(n, one): (usize, &[String; 1])| {
        let one = one[0].clone();
        keys.iter().skip(n + 1).map(move |[other]| Needs([one.clone(), other.clone()])).collect::<Vec<_>>()
    };
    keys.iter().enumerate().flat_map(pair).collect()
}

/// The same key in other units.
fn other_units(entry: &Entry) -> impl Iterator<Item = (String, &'static OtherUnit)> + Clone {
    let (key, is_number) = (entry.key, is_of_numbers(&entry.content));
    OTHER_UNITS
        .iter()
        .filter(move |_| is_number)
        .filter_map(move |unit| Some((format!("{}{}", key.strip_suffix(unit.written)?, unit.suffix), unit)))
}

fn is_of_numbers(content: &Content) -> bool {
    match content {
        Content::Number { .. } => true,
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
        let in_units = |entry: &'static Entry| {
            let of = |unit| Property { content: entry.content, unit };
            let others = other_units(entry).map(move |(key, unit)| (key, of(Some(unit))));
            core::iter::once((entry.key.into(), of(None))).chain(others)
        };
        serializer.collect_map(self.0.iter().flat_map(in_units))
    }
}

/// What stands behind a key, of a unit that is not its own.
#[derive(Clone, Copy)]
struct Property {
    content: Content,
    unit: Option<&'static OtherUnit>,
}

impl Serialize for Property {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let in_unit = |number| self.unit.map_or(number, |unit| (unit.from_written)(number));
        let entries = match self.content {
            Content::Number { .. } | Content::Whole { .. } => 3,
            Content::List { .. } => 4,
            _ => 1,
        };
        let mut map = serializer.serialize_map(Some(entries))?;
        match self.content {
            Content::Flag => map.serialize_entry("type", "boolean")?,
            Content::Text => map.serialize_entry("type", "string")?,
            Content::Words(words) => map.serialize_entry("enum", words)?,
            Content::Number { least, most } => {
                map.serialize_entry("type", "number")?;
                map.serialize_entry("minimum", &in_unit(least))?;
                map.serialize_entry("maximum", &in_unit(most))?;
            }
            Content::Whole { least, most } => {
                map.serialize_entry("type", "integer")?;
                map.serialize_entry("minimum", &least)?;
                map.serialize_entry("maximum", &most)?;
            }
            Content::List { of, least, most } => {
                map.serialize_entry("type", "array")?;
                map.serialize_entry("items", &Self { content: *of, unit: self.unit })?;
                map.serialize_entry("minItems", &least)?;
                map.serialize_entry("maxItems", &most)?;
            }
            Content::Object(object) => map.serialize_entry("$ref", &path(object))?,
            Content::SameOr(object) => {
                let either = [Content::Words(&["same"]), Content::Object(object)];
                map.serialize_entry("anyOf", &either.map(|content| Self { content, unit: None }))?;
            }
        }
        map.end()
    }
}
