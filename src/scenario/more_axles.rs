//! The axles beside the front and the rear one as they stand in a file.

use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use serde::de::{Deserialize, Deserializer, Error, SeqAccess, Visitor};
use serde::ser::{Serialize, SerializeMap, Serializer};

use crate::file::{Content, Forgotten, Path, Shaped};
use crate::fitment::{AxleTold, Setup};
use crate::record::read_as_object;
use crate::text::{Excerpt, bounded};
use crate::vehicle::Axle;

/// As many as a scenario may hold.
const MOST: usize = 4;

/// As long as a name may be, so that a table has room for it.
const LONGEST_NAME: usize = 24;

read_as_object! {
    /// An axle beside the front and the rear one, as it stands in a file.
    struct FurtherAxle
    needs {
        /// What you call the axle, in up to 24 characters.
        name: String = "name";
    }
    {
        /// The axle as its maker built it, and what was measured on it.
        axle: Axle = "axle";
        /// What its maker put on it.
        original: Setup = "original";
        /// What is to go on.
        proposed: Setup = "proposed";
        /// Whether the engine drives it.
        driven: bool = "driven";
    }
}

/// All of them.
pub(super) struct MoreAxles(pub(super) Vec<AxleTold>);

impl Shaped for MoreAxles {
    const CONTENT: Content = Content::List { of: &FurtherAxle::CONTENT, least: 0, most: MOST };
}

impl<'de> Deserialize<'de> for MoreAxles {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Each;
        impl<'de> Visitor<'de> for Each {
            type Value = MoreAxles;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a list of further axles")
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<MoreAxles, A::Error> {
                let mut all: Vec<AxleTold> = Vec::new();
                let mut is_after_blank = false;
                while let Some(OrBlank(axle)) = list.next_element()? {
                    let Some(axle) = axle else {
                        is_after_blank = true;
                        continue;
                    };
                    // The number of an axle is its place in the list.
                    if is_after_blank {
                        let what = "an entry of which nothing is told stands before this one: take it out";
                        return Err(A::Error::custom(what));
                    }
                    if all.len() == MOST {
                        return Err(A::Error::custom(format_args!("more than {MOST} further axles")));
                    }
                    refuse_name(&axle.name, &all)?;
                    all.push(axle);
                }
                Ok(MoreAxles(all))
            }
        }
        deserializer.deserialize_seq(Each).map_err(bounded)
    }
}

/// A name tells an axle from the others.
fn refuse_name<E: Error>(name: &str, before: &[AxleTold]) -> Result<(), E> {
    let shown = Excerpt(name);
    if name.trim().is_empty() {
        return Err(E::custom("a further axle needs a name"));
    }
    if name.chars().count() > LONGEST_NAME {
        return Err(E::custom(format_args!("a name of more than {LONGEST_NAME} characters: {shown}")));
    }
    if matches!(name, "front" | "rear") {
        return Err(E::custom(format_args!(
            "{shown} is an axle of the vehicle: give a further one another name"
        )));
    }
    if before.iter().any(|axle| axle.name == name) {
        return Err(E::custom(format_args!("two further axles are named {shown}")));
    }
    Ok(())
}

/// An axle, or nothing in an object of nothing but `null`.
struct OrBlank(Option<AxleTold>);

impl<'de> Deserialize<'de> for OrBlank {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(Self(FurtherAxle::read(deserializer)?.map(
            |FurtherAxle { name, axle, original, proposed, driven }| AxleTold {
                name,
                axle: axle.unwrap_or(Axle::new()),
                original,
                proposed,
                is_driven: driven,
            },
        )))
    }
}

/// Leaves out what stands at a place behind the number of an axle.
pub(super) fn forget(axles: &mut [AxleTold], rest: Option<Path<'_>>) -> Forgotten {
    let blank = |told: &mut AxleTold| {
        let name = core::mem::take(&mut told.name);
        *told = AxleTold { name, axle: Axle::new(), original: None, proposed: None, is_driven: None };
    };
    let Some((number, path)) = rest.map(Path::split) else {
        axles.iter_mut().for_each(blank);
        return if axles.is_empty() { Forgotten::Nothing } else { Forgotten::Done };
    };
    let Some(told) = number.parse().ok().and_then(|number: usize| axles.get_mut(number)) else {
        return Forgotten::Nothing;
    };
    let Some(path) = path else {
        blank(told);
        return Forgotten::Done;
    };
    match path.split() {
        ("axle", Some(rest)) => told.axle.forget(rest),
        ("axle", None) => {
            told.axle = Axle::new();
            Forgotten::Done
        }
        ("original", rest) => Forgotten::of(&mut told.original, rest),
        ("proposed", rest) => Forgotten::of(&mut told.proposed, rest),
        ("driven", rest) => Forgotten::nothing_else(|| told.is_driven.take().is_some(), rest),
        _ => Forgotten::Nothing,
    }
}

/// As it stands in a file.
impl Serialize for AxleTold {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let told = [self.original.is_some(), self.proposed.is_some(), self.is_driven.is_some()];
        let mut map = serializer.serialize_map(Some(2 + told.into_iter().filter(|told| *told).count()))?;
        map.serialize_entry("name", &self.name)?;
        map.serialize_entry("axle", &self.axle)?;
        if let Some(original) = &self.original {
            map.serialize_entry("original", original)?;
        }
        if let Some(proposed) = &self.proposed {
            map.serialize_entry("proposed", proposed)?;
        }
        if let Some(driven) = self.is_driven {
            map.serialize_entry("driven", &driven)?;
        }
        map.end()
    }
}
