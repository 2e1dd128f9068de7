//! Units in keys: `track_mm`, of which a file may also say `track_in`.
//!
//! A quantity is written in the unit of its own key. It may be read in any other unit of this table; a key that means
//! something as it stands (`rim_range_in`) is never taken for another.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;
use core::marker::PhantomData;

use serde::Deserialize;
use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};

use crate::text::unknown_field;
use crate::units::{
    bar, in_bar, in_inches, in_kg, in_kmh, in_kpa, in_lb, in_lbf_ft, in_mm, in_mph, in_nm, in_psi, inches,
    kg, kmh, kpa, lb, lbf_ft, mm, mph, nm, psi,
};

/// A unit that a key may end in instead of the unit it is written in.
#[derive(Debug)]
pub(crate) struct OtherUnit {
    pub(crate) suffix: &'static str,
    /// The end of the key it is written with.
    pub(crate) written: &'static str,
    to_written: fn(f64) -> f64,
    pub(crate) from_written: fn(f64) -> f64,
}

macro_rules! other_units {
    ($($suffix:literal for $written:literal: $make:ident $read:ident, $make_written:ident $read_written:ident;)*) => {
        /// Every one.
        pub(crate) const OTHER_UNITS: &[OtherUnit] = &[$(OtherUnit {
            suffix: $suffix,
            written: $written,
            to_written: |number| $read_written($make(number)),
            from_written: |number| $read($make_written(number)),
        },)*];
    };
}

other_units! {
    "_in" for "_mm": inches in_inches, mm in_mm;
    "_psi" for "_kpa": psi in_psi, kpa in_kpa;
    "_bar" for "_kpa": bar in_bar, kpa in_kpa;
    "_lb" for "_kg": lb in_lb, kg in_kg;
    "_mph" for "_kmh": mph in_mph, kmh in_kmh;
    "_ftlb" for "_nm": lbf_ft in_lbf_ft, nm in_nm;
}

/// A key of an object, as it is written, and what makes its numbers those of its own unit.
pub(crate) struct Key {
    pub(crate) name: &'static str,
    unit: Option<&'static OtherUnit>,
}

impl Key {
    /// Which of the known keys one is.
    fn of(key: &str, known: &[&'static str]) -> Option<Self> {
        let itself = known.iter().find(|&&name| name == key).map(|&name| Self { name, unit: None });
        let elsewhere = || {
            OTHER_UNITS.iter().find_map(|unit| {
                let base = key.strip_suffix(unit.suffix)?;
                let name = known.iter().find(|name| name.strip_suffix(unit.written) == Some(base))?;
                Some(Self { name, unit: Some(unit) })
            })
        };
        itself.or_else(elsewhere)
    }

    /// The value of the key in its own unit.
    pub(crate) fn value<'de, A: MapAccess<'de>, T: Deserialize<'de>>(
        &self,
        map: &mut A,
    ) -> Result<T, A::Error> {
        self.value_by(map, PhantomData)
    }

    /// The same by what reads it.
    pub(crate) fn value_by<'de, A: MapAccess<'de>, S: DeserializeSeed<'de>>(
        &self,
        map: &mut A,
        seed: S,
    ) -> Result<S::Value, A::Error> {
        match self.unit {
            Some(unit) => map.next_value_seed(Converted { of: seed, by: unit.to_written }),
            None => map.next_value_seed(seed),
        }
    }
}

/// The keys that an object gave so far.
#[derive(Default)]
pub(crate) struct Given(Vec<(&'static str, String)>);

impl Given {
    /// Which of the known keys comes next.
    ///
    /// # Errors
    /// A key that is not known, or whose value is there already, be it in another unit.
    pub(crate) fn key<E: Error>(&mut self, text: String, known: &'static [&'static str]) -> Result<Key, E> {
        let key = Key::of(&text, known).ok_or_else(|| unknown_field(&text, known))?;
        match self.0.iter().find(|(name, _)| *name == key.name) {
            Some((name, before)) if *before == text => Err(E::duplicate_field(name)),
            Some((_, before)) => Err(E::custom(format!("`{before}` and `{text}` say the same in two units"))),
            None => {
                self.0.push((key.name, text));
                Ok(key)
            }
        }
    }
}

/// A reader of numbers of another unit, in lists too.
struct Converted<T> {
    of: T,
    by: fn(f64) -> f64,
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for Converted<S> {
    type Value = S::Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<S::Value, D::Error> {
        self.of.deserialize(Converted { of: deserializer, by: self.by })
    }
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Converted<D> {
    type Error = D::Error;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
        self.of.deserialize_any(Converted { of: visitor, by: self.by })
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct
        newtype_struct seq tuple tuple_struct map struct enum identifier ignored_any
    }
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Converted<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.of.expecting(f)
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<V::Value, E> {
        self.of.visit_f64((self.by)(number))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<V::Value, E> {
        self.visit_f64(number as f64)
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<V::Value, E> {
        self.visit_f64(number as f64)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<V::Value, A::Error> {
        self.of.visit_seq(Converted { of: list, by: self.by })
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Converted<A> {
    type Error = A::Error;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.of.next_element_seed(Converted { of: seed, by: self.by })
    }

    fn size_hint(&self) -> Option<usize> {
        self.of.size_hint()
    }
}
