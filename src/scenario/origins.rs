//! What a scenario says of where its values come from.

use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use serde::de::{Error as _, SeqAccess, Visitor};
use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::file::{Content, Shaped};
use crate::fitment::{Day, Origin, Provenance};
use crate::record::read_as_object;
use crate::text::{Excerpt, bounded};

/// Why a scenario cannot take what is said of where its values come from.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, Limits, Origin, Provenance, Setups};
/// use beadseat::{scenario::Scenario, vehicle::Vehicle};
/// let nothing = Setups { front: None, rear: None };
/// let change = Change { original: nothing, proposed: nothing };
/// let scenario = Scenario::new(Vehicle::unknown(), change, Conditions::default(), Limits::default());
/// let of = |place| [Provenance::new(place, Origin::Assumed)];
/// let error = scenario.clone().with_provenance(of("vehicle.kinds")).unwrap_err();
/// assert_eq!(error.to_string(), "`vehicle.kinds`: there is no key `kinds` here, is `kind` meant?");
/// let error = scenario.with_provenance(of("vehicle.kind")).unwrap_err();
/// assert_eq!(error.to_string(), "`vehicle.kind`: nothing is told there");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ProvenanceError {
    pub(super) of: String,
    pub(super) problem: Problem,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Problem {
    NoKey { key: String, near: Option<&'static str> },
    NothingThere,
    Twice { by: String },
    TooMany,
}

impl fmt::Display for ProvenanceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "`{}`: ", Excerpt(&self.of))?;
        match &self.problem {
            Problem::NoKey { key, near } => {
                write!(f, "there is no key `{}` here", Excerpt(key))?;
                near.map_or(Ok(()), |near| write!(f, ", is `{near}` meant?"))
            }
            Problem::NothingThere => f.write_str("nothing is told there"),
            Problem::Twice { by } => write!(f, "told already, in `{}`", Excerpt(by)),
            Problem::TooMany => write!(f, "more than {MOST} are told"),
        }
    }
}

impl core::error::Error for ProvenanceError {}

/// Each that is assumed costs a judgement of the change.
pub(super) const MOST: usize = 256;

/// Whether one place is another, or lies in it.
pub(super) fn is_in(place: &str, other: &str) -> bool {
    place.strip_prefix(other).is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
}

read_as_object! {
    /// Where a value comes from, as it stands in a file.
    struct Source
    needs {
        /// The place of the value by the keys that lead to it, as `vehicle.front.track_mm`; an object stands for all in it.
        of: String = "of";
        /// How it came to be known; what rests on what is assumed is never better than marginal.
        from: Origin = "from";
    }
    {
        /// The day on which it was found.
        on: Day = "on";
        /// Who or what says so.
        by: String = "by";
    }
}

/// All that a file says of where its values come from.
pub(super) struct Sources(pub(super) Vec<Provenance>);

impl Shaped for Sources {
    const CONTENT: Content = Content::List { of: &Source::CONTENT, least: 0, most: MOST };
}

impl<'de> Deserialize<'de> for Sources {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Each;
        impl<'de> Visitor<'de> for Each {
            type Value = Sources;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a list of where values come from")
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Sources, A::Error> {
                let mut all = Vec::new();
                while let Some(OrBlank(source)) = list.next_element()? {
                    if all.len() == MOST {
                        return Err(A::Error::custom(format_args!("more than {MOST} are told")));
                    }
                    all.extend(source);
                }
                Ok(Sources(all))
            }
        }
        deserializer.deserialize_seq(Each).map_err(bounded)
    }
}

/// A source, or nothing in an object of nothing but `null`.
struct OrBlank(Option<Provenance>);

impl<'de> Deserialize<'de> for OrBlank {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(Self(Source::read(deserializer)?.map(|Source { of, from, on, by }| {
            let told = Provenance::new(of, from);
            let told = on.map_or(told.clone(), |day| told.on(day));
            by.map_or(told.clone(), |by| told.by(by))
        })))
    }
}

/// As it stands in a file.
impl Serialize for Provenance {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let told = 2 + usize::from(self.day().is_some()) + usize::from(self.witness().is_some());
        let mut map = serializer.serialize_map(Some(told))?;
        map.serialize_entry("of", self.of())?;
        map.serialize_entry("from", &self.from())?;
        if let Some(day) = self.day() {
            map.serialize_entry("on", &day)?;
        }
        if let Some(by) = self.witness() {
            map.serialize_entry("by", by)?;
        }
        map.end()
    }
}
