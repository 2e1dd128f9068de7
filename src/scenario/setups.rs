//! Setups as they stand in a file.

use core::fmt;

use serde::Deserialize;
use serde::de::value::MapAccessDeserializer;
use serde::de::{Deserializer, Error, MapAccess, Visitor};

use crate::file::{Content, Forgotten, Path, Shaped};
use crate::fitment::{Setup, Setups};
use crate::record::read_as_object;
use crate::text::{bounded, unknown_variant};

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

    fn forget(&mut self, path: Path<'_>) -> Forgotten {
        let (key, rest) = path.split();
        match key {
            "front" => Forgotten::of(&mut self.front, rest),
            "rear" => Forgotten::of(&mut self.rear, rest),
            _ => Forgotten::Nothing,
        }
    }
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
