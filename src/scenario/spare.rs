//! A spare wheel as it stands in a file.

use serde::de::{Deserialize, Deserializer, Error};

use crate::file::{Content, Shaped};
use crate::fitment::Setup;

/// A setup that is carried along: nothing is done with what it weighs.
pub(super) struct Carried(pub(super) Setup);

impl Shaped for Carried {
    const CONTENT: Content = Setup::CONTENT;

    fn read<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Self>, D::Error> {
        let Some(setup) = Setup::read(deserializer)? else { return Ok(None) };
        if setup.tire_mass().or(setup.wheel_mass()).is_some() {
            return Err(D::Error::custom(
                "nothing depends on what a spare wheel weighs: leave its masses out",
            ));
        }
        Ok(Some(Self(setup)))
    }
}

impl<'de> Deserialize<'de> for Carried {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::read(deserializer)?.ok_or_else(|| D::Error::missing_field("tire"))
    }
}
