//! A vehicle with its name, as it stands in a file.

use alloc::string::String;
use core::fmt;

use serde::Deserialize;
use serde::de::value::MapAccessDeserializer;
use serde::de::{DeserializeSeed, Deserializer, Error, IntoDeserializer, MapAccess, Visitor};

use crate::file::{Content, Entry, Object, Shaped};
use crate::text::bounded;
use crate::vehicle::Vehicle;

/// A vehicle with its name, which the domain type does not keep.
pub(super) struct Named {
    pub(super) name: Option<String>,
    pub(super) vehicle: Vehicle,
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
