//! A scenario file: a vehicle, its original setup and a proposed one, how it is used and the limits.
//!
//! Any self-describing serde format will do; JSON is what the examples read. Every key that is a
//! quantity ends in its unit. In place of `_mm`, `_kpa`, `_kg`, `_kmh` and `_nm` it may end in `_in`, `_psi` or `_bar`,
//! `_lb`, `_mph` and `_ftlb`; what is written is metric. A quantity may also be a text with its unit, under a key without
//! one: `"track": "60 1/2 in"`, `"pressure": "2,2 bar"`, `"torque": "90 ft-lb"`; a number alone is refused there.
//! What is not known is left out, or `null`; so is an object with nothing but `null` in it. A key that begins with `?` is
//! a question, whose text is passed over: [`Template`] writes all of them. Common words are understood where they have
//! one meaning (`rwd`, `car`, `conical`, `yes`). Unknown
//! keys, keys given twice, be it in two units, arrays instead of objects and values out of range are errors, and the
//! error arises where the value stands, so that a deserializer that tracks places (`serde_path_to_error`) can name it.
//! [`schema`] is the same for other programs.
//!
//! What is written reads back as the same scenario. Numbers of up to 15 digits do so by any parser, longer ones by one
//! that reads them exactly (of `serde_json`, with its feature `float_roundtrip`).
//!
//! ```
//! use beadseat::{fitment::Verdict, scenario::Scenario};
//! let scenario: Scenario = serde_json::from_str(r#"{
//!     "vehicle": { "name": "a demonstration trailer", "kind": "trailer", "drive": "none",
//!                  "rear": { "max_load_kg": 900, "axles": 1, "hub": { "bolt_circle": "4x100" } } },
//!     "original": { "rear": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30 4x100" } },
//!     "proposed": { "rear": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30 4x98" } }
//! }"#)?;
//! assert_eq!(scenario.name(), Some("a demonstration trailer"));
//! assert_eq!(scenario.assess().overall(), Verdict::Beyond); // the holes
//! # Ok::<(), serde_json::Error>(())
//! ```
//!
//! # The objects
//!
//! The keys of each object are the fields of the type it is read into, with the unit behind them:
//!
//! | object | type |
//! |---|---|
//! | `vehicle` | [`Vehicle`], and `name` |
//! | `vehicle.front`, `vehicle.rear` | [`Axle`](crate::vehicle::Axle): `max_load_kg`, `normal_load_kg`, `track_mm`, `placard_kpa`, … |
//! | `….hub` | [`Hub`](crate::vehicle::Hub): `bolt_circle`, `spigot_mm`, `spigot_height_mm`, `thread`, `seat`, `fastening`, `stud_length_mm` |
//! | `….steering`, `….travel`, `….space`, `….brake` | the types of [`vehicle`](crate::vehicle) |
//! | `original`, `proposed` | [`Setups`]: `front`, and `rear`, which may be `"same"` |
//! | `….front`, `….rear` | [`Setup`]: `tire` and `wheel`, and what is known beside them |
//! | `….adaptor` of a setup | [`Adaptor`](crate::wheel::Adaptor): `thickness_mm`, `hub_bolt_circle`, `hub_bore`, `wheel_bolt_circle`, `wheel_spigot_mm`, … |
//! | `….left`, `….right` of a setup | [`TireInUse`](crate::fitment::TireInUse): `date_code`, `tread_mm`, `arrow`, `facing_out`, `unmarked` |
//! | `use` | [`Conditions`]: `date`, `towing`, `top_speed_kmh` |
//! | `limits` | [`Limits`]: `set`, and the caller's own limits, with the document they stand in as `source` |

mod schema;
mod template;

pub use schema::Schema;
pub use template::Template;

use alloc::string::String;
use core::fmt;

use serde::de::value::MapAccessDeserializer;
use serde::de::{DeserializeSeed, Deserializer, Error, IntoDeserializer, MapAccess, Visitor};
use serde::ser::{SerializeMap, Serializer};
use serde::{Deserialize, Serialize};

use crate::file::{Content, Entry, Object, Shaped};
use crate::fitment::derivation::Derivations;
use crate::fitment::{Change, Conditions, Document, Limits, Report, Setup, Setups, assess};
use crate::record::read_as_object;
use crate::text::{bounded, unknown_variant};
use crate::vehicle::{Kind, Vehicle};

impl Template {
    /// Of a kind of vehicle; a trailer has no front axle.
    pub const fn new(kind: Kind) -> Self {
        Self::of(ScenarioFile::OBJECT, kind)
    }
}

/// What a scenario file holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario {
    name: Option<String>,
    vehicle: Vehicle,
    change: Change,
    conditions: Conditions,
    limits: Limits,
}

impl Scenario {
    /// A scenario put together in a program.
    ///
    /// ```
    /// use beadseat::{fitment::{Change, Conditions, Limits, Setups}, scenario::Scenario, vehicle::Vehicle};
    /// let nothing = Setups { front: None, rear: None };
    /// let change = Change { original: nothing, proposed: nothing };
    /// let scenario = Scenario::new(Vehicle::unknown(), change, Conditions::default(), Limits::default());
    /// assert_eq!(scenario.name(), None);
    /// ```
    pub const fn new(vehicle: Vehicle, change: Change, conditions: Conditions, limits: Limits) -> Self {
        Self { name: None, vehicle, change, conditions, limits }
    }

    /// The name of the vehicle, as it stands in the file; show it through [`Excerpt`](crate::Excerpt).
    pub fn name(&self) -> Option<&str> {
        self.name.as_deref()
    }

    /// The vehicle that the change is made to.
    pub const fn vehicle(&self) -> &Vehicle {
        &self.vehicle
    }

    /// Original and proposed setups.
    pub const fn change(&self) -> &Change {
        &self.change
    }

    /// How it is used.
    pub const fn conditions(&self) -> &Conditions {
        &self.conditions
    }

    /// The limits that the change is held against.
    pub const fn limits(&self) -> &Limits {
        &self.limits
    }

    /// Judges the change on the vehicle, as [`assess`] does.
    pub fn assess(&self) -> Report {
        assess(&self.vehicle, &self.change, &self.conditions, &self.limits)
    }

    /// How the numbers of its report came about.
    pub const fn derivations(&self) -> Derivations<'_> {
        Derivations::new(&self.vehicle, &self.change, &self.conditions, &self.limits)
    }

    /// Its report with the vehicle, its setups and what moves.
    pub fn document<'a>(&'a self, report: &'a Report) -> Document<'a> {
        let document = Document::new(report, &self.vehicle, &self.change);
        match &self.name {
            Some(name) => document.with_name(name),
            None => document,
        }
    }
}

read_as_object! {
    /// Setups as they stand in a file.
    struct SetupsFile
    needs {}
    {
        /// What is on the front axle.
        front: Setup = "front";
        /// What is on the rear axle, or the only one of a trailer; `"same"` as on the front one.
        rear: RearSetup = "rear";
    }
}

impl Shaped for Setups {
    const CONTENT: Content = SetupsFile::CONTENT;
}

impl<'de> Deserialize<'de> for Setups {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let SetupsFile { front, rear } = SetupsFile::deserialize(deserializer)?;
        if front.is_none() && matches!(rear, Some(RearSetup(None))) {
            return Err(D::Error::custom("`rear` is the same as `front`, which is not there"));
        }
        Ok(Self { front, rear: rear.and_then(|RearSetup(own)| own.or(front)) })
    }
}

/// An object, or nothing for `"same"`.
struct RearSetup(Option<Setup>);

impl Shaped for RearSetup {
    const CONTENT: Content = Content::SameOr(Setup::OBJECT);

    fn read<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Self>, D::Error> {
        struct SameOrObject;
        impl<'de> Visitor<'de> for SameOrObject {
            type Value = Option<RearSetup>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("`\"same\"` or an object with a setup")
            }

            fn visit_str<E: Error>(self, text: &str) -> Result<Self::Value, E> {
                match text {
                    "same" => Ok(Some(RearSetup(None))),
                    _ => Err(unknown_variant(text, &["same"])),
                }
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
                let setup = Setup::read(MapAccessDeserializer::new(map))?;
                Ok(setup.map(|setup| RearSetup(Some(setup))))
            }
        }
        deserializer.deserialize_any(SameOrObject).map_err(bounded)
    }
}

impl<'de> Deserialize<'de> for RearSetup {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::read(deserializer)?.ok_or_else(|| D::Error::missing_field("tire"))
    }
}

/// A vehicle with its name, which the domain type does not keep.
struct Named {
    name: Option<String>,
    vehicle: Vehicle,
}

/// Passes every entry of a map on, but for `name`.
struct AllButName<'a, A> {
    map: A,
    name: &'a mut Option<String>,
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for AllButName<'_, A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, A::Error> {
        while let Some(key) = self.map.next_key::<String>()? {
            if key != "name" {
                return seed.deserialize(key.into_deserializer()).map(Some);
            }
            if self.name.is_some() {
                return Err(A::Error::duplicate_field("name"));
            }
            *self.name = self.map.next_value()?;
        }
        Ok(None)
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, A::Error> {
        self.map.next_value_seed(seed)
    }
}

impl Shaped for Named {
    const CONTENT: Content =
        Content::Object(&Object { name: "NamedVehicle", entries: &NAMED_VEHICLE, one_of: &[] });
}

const NAMED_VEHICLE: [Entry; 1 + Vehicle::OBJECT.entries.len()] = {
    let mut entries = [Entry::optional("name", Content::Text, " What you call the vehicle.");
        1 + Vehicle::OBJECT.entries.len()];
    let mut number = 1;
    while number < entries.len() {
        entries[number] = Vehicle::OBJECT.entries[number - 1];
        number += 1;
    }
    entries
};

impl<'de> Deserialize<'de> for Named {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reader;
        impl<'de> Visitor<'de> for Reader {
            type Value = Named;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("an object with the facts of a Vehicle")
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Named, A::Error> {
                let mut name = None;
                let map = MapAccessDeserializer::new(AllButName { map, name: &mut name });
                Ok(Named { vehicle: Vehicle::deserialize(map)?, name })
            }
        }
        deserializer.deserialize_map(Reader).map_err(bounded)
    }
}

read_as_object! {
    /// A scenario as it stands in a file.
    struct ScenarioFile
    needs {
        /// The vehicle as its maker built it, and what was measured on it.
        vehicle: Named = "vehicle";
        /// What its maker put on it.
        original: Setups = "original";
        /// What is to go on.
        proposed: Setups = "proposed";
    }
    {
        /// How it is used.
        conditions: Conditions = "use";
        /// The limits that the change is held against; without them, those of common practice.
        limits: Limits = "limits";
    }
}

impl<'de> Deserialize<'de> for Scenario {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let file = ScenarioFile::deserialize(deserializer)?;
        let change = Change { original: file.original, proposed: file.proposed };
        let Named { name, vehicle } = file.vehicle;
        let (conditions, limits) = (file.conditions.unwrap_or_default(), file.limits.unwrap_or_default());
        Ok(Self { name, vehicle, change, conditions, limits })
    }
}

impl Serialize for Scenario {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        /// The vehicle with its name in front.
        struct Named<'a>(&'a Scenario);
        impl Serialize for Named<'_> {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let named = usize::from(self.0.name().is_some());
                let mut map = serializer.serialize_map(Some(named + self.0.vehicle.entries()))?;
                if let Some(name) = self.0.name() {
                    map.serialize_entry("name", name)?;
                }
                self.0.vehicle.write_entries(&mut map)?;
                map.end()
            }
        }
        let mut map = serializer.serialize_map(Some(5))?;
        map.serialize_entry("vehicle", &Named(self))?;
        map.serialize_entry("original", &self.change.original)?;
        map.serialize_entry("proposed", &self.change.proposed)?;
        map.serialize_entry("use", &self.conditions)?;
        map.serialize_entry("limits", &self.limits)?;
        map.end()
    }
}

/// The schema of the file that [`Scenario`] is read from.
///
/// ```
/// let text = serde_json::to_string_pretty(&beadseat::scenario::schema())?;
/// assert!(text.contains("bolt_circle"));
/// # Ok::<(), serde_json::Error>(())
/// ```
pub const fn schema() -> Schema {
    Schema::of(ScenarioFile::OBJECT)
}
