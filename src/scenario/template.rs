//! A scenario that is not filled in: every key, with its question beside it.

use alloc::format;
use alloc::string::String;

use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};

use crate::file::{Content, Entry, Object, Quantity};
use crate::fitment::measure::Input;
use crate::vehicle::Kind;

/// A scenario of a kind of vehicle in which nothing is told yet, ready to be filled in.
///
/// It has every key that a file may hold, in the order of the objects: each is `null`, and before it stands its question
/// under the same key with a `?` in front. It is written by any serde format, from the tables that a scenario is read by. What
/// is left `null` is not known; questions are passed over, and may stay.
///
/// ```
/// use beadseat::{scenario::{Scenario, Template}, vehicle::Kind};
/// let text = serde_json::to_string_pretty(&Template::new(Kind::Trailer))?;
/// assert!(text.contains(r#""?track_mm": "Distance between the middles of the contact patches"#));
/// let filled = text.replacen(r#""track_mm": null"#, r#""track_mm": "1.53 m""#, 1);
/// assert!(serde_json::from_str::<Scenario>(&filled).is_err()); // the units are mm, in, cm and ft
/// let filled = text.replacen(r#""track_mm": null"#, r#""track": "60 1/2 in""#, 1);
/// let scenario: Scenario = serde_json::from_str(&filled)?;
/// assert_eq!(scenario.vehicle().kind(), Some(Kind::Trailer));
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Template {
    object: &'static Object,
    kind: Kind,
}

impl Template {
    /// Of the keys of a file, for a kind of vehicle.
    pub(super) const fn of(object: &'static Object, kind: Kind) -> Self {
        Self { object, kind }
    }
}

impl Serialize for Template {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Blank { object: self.object, path: String::new(), kind: self.kind }.serialize(serializer)
    }
}

/// An object with its questions, at a place by which the inputs of checks are named.
struct Blank {
    object: &'static Object,
    path: String,
    kind: Kind,
}

impl Serialize for Blank {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let of_this_kind = |entry: &&Entry| !(self.kind == Kind::Trailer && entry.key == "front");
        let mut map = serializer.serialize_map(None)?;
        for entry in self.object.entries.iter().filter(of_this_kind) {
            let path = self.path_of(entry.key);
            map.serialize_entry(&format!("?{}", entry.key), &question(entry, &path))?;
            if path == "vehicle.kind" {
                map.serialize_entry(entry.key, &self.kind)?;
                continue;
            }
            let blank = |object| Self { object, path: path.clone(), kind: self.kind };
            match entry.content {
                Content::Object(object) | Content::SameOr(object) => {
                    map.serialize_entry(entry.key, &blank(object))?;
                }
                Content::List { of: Content::Object(object), .. } => {
                    map.serialize_entry(entry.key, &[blank(object)])?;
                }
                _ => map.serialize_entry(entry.key, &())?,
            }
        }
        map.end()
    }
}

impl Blank {
    /// The path of a key, in which `*` stands for an axle and `#` for an end.
    fn path_of(&self, key: &str) -> String {
        let key = match key {
            "front" | "rear" => "*",
            "left" | "right" => "#",
            other => other,
        };
        if self.path.is_empty() { key.into() } else { format!("{}.{key}", self.path) }
    }
}

/// What is asked for, how to come by it, and how it is written.
fn question(entry: &Entry, path: &str) -> String {
    let mut text = String::from(entry.about.trim());
    if let Some(input) = Input::ALL.iter().find(|input| input.key() == path) {
        text += &format!(" How: {}.", input.how());
    }
    match (&entry.content, Quantity::of(entry.key)) {
        (Content::Words(words), _) => text += &format!(" One of: {}.", words.join(", ")),
        (Content::Flag, _) => text += " yes or no.",
        (Content::Number { .. } | Content::Whole { .. } | Content::List { .. }, Some((quantity, base))) => {
            text += &format!(" In {}", quantity.units.first().map_or("", |unit| unit.name));
            if let [_, other, ..] = quantity.units {
                text += &format!("; or as `{base}` in a text with its unit, as \"2.5 {}\"", other.name);
            }
            text += ".";
        }
        _ => {}
    }
    text
}
