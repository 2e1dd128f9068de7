//! The axles beside the front and the rear one as they stand in a file.

use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use serde::de::{Deserialize, Deserializer, Error, SeqAccess, Visitor};
use serde::ser::{Serialize, SerializeMap, Serializer};

use crate::file::{Content, Forgotten, Path, Shaped};
use crate::fitment::{FurtherAxle, Setup};
use crate::record::read_as_object;
use crate::text::{Excerpt, bounded};
use crate::vehicle::Axle;

/// As many as a scenario may hold.
const MOST: usize = 4;

read_as_object! {
    /// A further axle as it stands in a file.
    struct Further
    needs {
        /// What you call the axle.
        name: String = "name";
    }
    {
        /// The axle as its maker built it, and what was measured on it.
        axle: Axle = "axle";
        /// What its maker put on it.
        original: Setup = "original";
        /// What is to go on.
        proposed: Setup = "proposed";
        /// Whether the engine drives it; not if not said.
        driven: bool = "driven";
    }
}

/// All of them.
pub(super) struct FurtherList(pub(super) Vec<FurtherAxle>);

impl Shaped for FurtherList {
    const CONTENT: Content = Content::List { of: &Further::CONTENT, least: 0, most: MOST };
}

impl<'de> Deserialize<'de> for FurtherList {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Each;
        impl<'de> Visitor<'de> for Each {
            type Value = FurtherList;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a list of further axles")
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<FurtherList, A::Error> {
                let mut all: Vec<FurtherAxle> = Vec::new();
                while let Some(OrBlank(axle)) = list.next_element()? {
                    let Some(axle) = axle else { continue };
                    if all.len() == MOST {
                        return Err(A::Error::custom(format_args!("more than {MOST} further axles")));
                    }
                    if axle.name.trim().is_empty() {
                        return Err(A::Error::custom("a further axle needs a name"));
                    }
                    if all.iter().any(|before| before.name == axle.name) {
                        let name = Excerpt(&axle.name);
                        return Err(A::Error::custom(format_args!("two further axles are named {name}")));
                    }
                    all.push(axle);
                }
                Ok(FurtherList(all))
            }
        }
        deserializer.deserialize_seq(Each).map_err(bounded)
    }
}

/// An axle, or nothing in an object of nothing but `null`.
struct OrBlank(Option<FurtherAxle>);

impl<'de> Deserialize<'de> for OrBlank {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(Self(Further::read(deserializer)?.map(|Further { name, axle, original, proposed, driven }| {
            let axle = axle.unwrap_or(Axle::new());
            FurtherAxle { name, axle, original, proposed, is_driven: driven, assumed: 0 }
        })))
    }
}

/// Leaves out what stands at a place: of all axles, of one by its number, or in one. Their names stay.
pub(super) fn forget(axles: &mut [FurtherAxle], rest: Option<Path<'_>>) -> Forgotten {
    let Some((number, rest)) = rest.map(Path::split) else {
        axles.iter_mut().for_each(forget_all);
        return if axles.is_empty() { Forgotten::Nothing } else { Forgotten::Done };
    };
    let Some(further) = number.parse().ok().and_then(|number: usize| axles.get_mut(number)) else {
        return Forgotten::Nothing;
    };
    let Some((key, rest)) = rest.map(Path::split) else {
        forget_all(further);
        return Forgotten::Done;
    };
    match (key, rest) {
        ("axle", Some(rest)) => further.axle.forget(rest),
        ("axle", None) => {
            further.axle = Axle::new();
            Forgotten::Done
        }
        ("original", rest) => Forgotten::of(&mut further.original, rest),
        ("proposed", rest) => Forgotten::of(&mut further.proposed, rest),
        ("driven", rest) => Forgotten::nothing_else(|| further.is_driven.take().is_some(), rest),
        _ => Forgotten::Nothing,
    }
}

fn forget_all(further: &mut FurtherAxle) {
    (further.axle, further.original, further.proposed, further.is_driven) = (Axle::new(), None, None, None);
}

/// As it stands in a file.
impl Serialize for FurtherAxle {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
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
