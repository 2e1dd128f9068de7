//! The shape of a scenario file for other programs: a JSON Schema from the tables that it is read by.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};

use crate::file::{Content, Entry, Object, Quantity, Unit, others, without_unit};

/// The shape of a scenario file, as JSON Schema (draft 2020-12): which keys each object has and needs, which words,
/// numbers and lists stand behind them, and the units a key may end in. A quantity may be a text with its unit, and
/// behind a key without a unit it must. It is written by any serde format.
///
/// What it refuses is no scenario, but for words in capitals or with a hyphen, which are read as well. What it accepts may still be refused: it does not read designations, and knows
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
        let mut map = serializer.serialize_map(Some(self.0.len() + 1))?;
        for object in self.0 {
            map.serialize_entry(object.name, &Definition(object))?;
        }
        map.serialize_entry(BLANK, &Blank)?;
        map.end()
    }
}

/// An object that is not filled in.
const BLANK: &str = "Blank";

struct Blank;

impl Serialize for Blank {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(4))?;
        map.serialize_entry("type", "object")?;
        map.serialize_entry("minProperties", &1)?;
        map.serialize_entry("patternProperties", &Questions)?;
        map.serialize_entry("additionalProperties", &Choice(&[Kind::Null, Kind::Blank, Kind::Blanks]))?;
        map.end()
    }
}

/// A key that begins with `?` is a question.
struct Questions;

impl Serialize for Questions {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map([("^\\?", Kind::Text)])
    }
}

/// What a place may hold.
#[derive(Clone, Copy)]
enum Kind {
    Null,
    Text,
    Blank,
    Blanks,
    Same,
    Object(&'static Object),
}

impl Serialize for Kind {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let blank = format!("#/$defs/{BLANK}");
        match self {
            Self::Null => serializer.collect_map([("type", "null")]),
            Self::Text => serializer.collect_map([("type", "string")]),
            Self::Blank => serializer.collect_map([("$ref", blank)]),
            Self::Blanks => {
                let mut map = serializer.serialize_map(Some(3))?;
                map.serialize_entry("type", "array")?;
                map.serialize_entry("minItems", &1)?;
                map.serialize_entry("items", &Self::Blank)?;
                map.end()
            }
            Self::Same => serializer.collect_map([("enum", ["same"])]),
            Self::Object(object) => serializer.collect_map([("$ref", path(object))]),
        }
    }
}

struct Choice<'a>(&'a [Kind]);

impl Serialize for Choice<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map([("anyOf", self.0)])
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
            .map(NeedsKnown)
            .collect();
        let lists = [any_unit.is_empty(), one_unit.is_empty(), one_of.is_empty()];
        let mut map = serializer.serialize_map(Some(4 + lists.into_iter().filter(|empty| !empty).count()))?;
        map.serialize_entry("type", "object")?;
        map.serialize_entry("properties", &Properties(entries))?;
        map.serialize_entry("patternProperties", &Questions)?;
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

/// That a key is there, and not `null`.
struct NeedsKnown([String; 1]);

impl Serialize for NeedsKnown {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        struct Not(Kind);
        impl Serialize for Not {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_map([("not", self.0)])
            }
        }
        struct Known<'a>(&'a str);
        impl Serialize for Known<'_> {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_map([(self.0, Not(Kind::Null))])
            }
        }
        let [key] = &self.0;
        let mut map = serializer.serialize_map(Some(2))?;
        map.serialize_entry("required", &self.0)?;
        map.serialize_entry("properties", &Known(key))?;
        map.end()
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
            let property = move |spelling| Property {
                content: entry.content,
                about: entry.about.trim(),
                spelling,
                is_quantity,
                may_be_null: !entry.is_needed,
            };
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
    about: &'static str,
    spelling: Spelling,
    is_quantity: bool,
    may_be_null: bool,
}

impl Property {
    /// The kinds of value that it may be.
    fn kinds<M: SerializeMap>(&self, map: &mut M, own: &'static str) -> Result<(), M::Error> {
        let is_text_only = self.is_quantity && matches!(self.spelling, Spelling::AsText);
        let is_amount =
            matches!(self.content, Content::Number { .. } | Content::Whole { .. }) && self.is_quantity;
        let own = Some(own).filter(|_| !(is_text_only && is_amount));
        let kinds =
            own.into_iter().chain(is_amount.then_some("string")).chain(self.may_be_null.then_some("null"));
        let kinds: Vec<_> = kinds.collect();
        match kinds.as_slice() {
            [only] => map.serialize_entry("type", only),
            several => map.serialize_entry("type", several),
        }
    }

    /// A range of numbers; of a text that must tell its unit, none.
    fn ends<M: SerializeMap, T: Serialize>(&self, map: &mut M, ends: [T; 2]) -> Result<(), M::Error> {
        if !matches!(self.spelling, Spelling::AsText) {
            let [least, most] = ends;
            map.serialize_entry("minimum", &least)?;
            map.serialize_entry("maximum", &most)?;
        }
        if self.is_quantity {
            map.serialize_entry("pattern", AMOUNT)?;
        }
        Ok(())
    }
}

impl Serialize for Property {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        if !self.about.is_empty() {
            map.serialize_entry("description", self.about)?;
        }
        match self.content {
            Content::Number { least, most } => {
                self.kinds(&mut map, "number")?;
                let in_unit = |end| match self.spelling {
                    Spelling::InUnit(unit) => (unit.from_written)(end),
                    _ => end,
                };
                self.ends(&mut map, [least, most].map(in_unit))?;
            }
            Content::Whole { least, most } => {
                self.kinds(&mut map, "integer")?;
                self.ends(&mut map, [least, most])?;
            }
            Content::Flag => {
                let words: Vec<_> =
                    [Word::Flag(true), Word::Flag(false), Word::Is("yes"), Word::Is("no")].into();
                map.serialize_entry("enum", &self.or_null(words))?;
            }
            Content::Text => self.kinds(&mut map, "string")?,
            Content::Words(words) => {
                let said = words.iter().copied().chain(others(words));
                map.serialize_entry("enum", &self.or_null(said.map(Word::Is).collect()))?;
            }
            Content::List { of, least, most } => {
                self.kinds(&mut map, "array")?;
                match of {
                    Content::Object(object) => {
                        map.serialize_entry("items", &Choice(&[Kind::Object(object), Kind::Blank]))?;
                    }
                    of => {
                        let item = Self { content: *of, about: "", may_be_null: false, ..*self };
                        map.serialize_entry("items", &item)?;
                    }
                }
                map.serialize_entry("minItems", &least)?;
                map.serialize_entry("maxItems", &most)?;
            }
            Content::Object(object) if !self.may_be_null => map.serialize_entry("$ref", &path(object))?,
            Content::Object(object) => {
                map.serialize_entry("anyOf", &[Kind::Object(object), Kind::Null, Kind::Blank])?;
            }
            Content::SameOr(object) => {
                let kinds = [Kind::Same, Kind::Object(object), Kind::Null, Kind::Blank];
                map.serialize_entry("anyOf", &kinds)?;
            }
        }
        map.end()
    }
}

/// One of some values.
#[derive(Serialize)]
#[serde(untagged)]
enum Word {
    Is(&'static str),
    Flag(bool),
    Null,
}

impl Property {
    fn or_null(&self, mut words: Vec<Word>) -> Vec<Word> {
        words.extend(self.may_be_null.then_some(Word::Null));
        words
    }
}
