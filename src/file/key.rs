//! Keys of an object, and their values in the unit of their own: `track_mm`, `track_in`, or `track` with its unit in a text.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt;
use core::marker::PhantomData;

use serde::Deserialize;
use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Unexpected, Visitor};

use super::amount::{self, NoAmount};
use super::near;
use super::shape::Shaped;
use super::units::{QUANTITIES, Quantity, Unit};
use super::words::Question;
use crate::text::{Excerpt, Listed, unknown_field};

/// Which quantity a key has no unit for: a text must tell it.
pub(crate) fn without_unit(
    key: &str,
    known: impl Iterator<Item = &'static str> + Clone,
) -> Option<&'static str> {
    let mut named = known.filter(|known| Quantity::of(known).is_some_and(|(_, base)| base == key));
    // Two quantities of one name are told apart by their units alone.
    named.next().filter(|_| named.next().is_none())
}

/// A key of an object, and what makes its numbers those of its own unit.
pub(crate) struct Key {
    pub(crate) name: &'static str,
    /// The quantity, and the unit in which the key is; nothing where it has none.
    of: Option<(&'static Quantity, Option<&'static Unit>)>,
}

impl Key {
    /// Which of the known keys one is.
    pub(super) fn among(key: &str, known: impl Iterator<Item = &'static str> + Clone) -> Option<Self> {
        if let Some(name) = known.clone().find(|&name| name == key) {
            let of = Quantity::of(name).map(|(quantity, _)| (quantity, quantity.units.first()));
            return Some(Self { name, of });
        }
        let elsewhere = known.clone().find_map(|name| {
            let (quantity, base) = Quantity::of(name)?;
            let suffix = key.strip_prefix(base)?;
            let unit = quantity.units.iter().find(|unit| !suffix.is_empty() && unit.suffix == suffix)?;
            Some(Self { name, of: Some((quantity, Some(unit))) })
        });
        elsewhere.or_else(|| {
            let name = without_unit(key, known)?;
            Some(Self { name, of: Some((Quantity::of(name)?.0, None)) })
        })
    }

    /// The value of the key in its own unit; nothing where it is `null`, or an object of nothing else.
    pub(crate) fn value<'de, A: MapAccess<'de>, T: Shaped + Deserialize<'de>>(
        &self,
        map: &mut A,
    ) -> Result<Option<T>, A::Error> {
        self.value_by(map, Known(PhantomData)).map(Option::flatten)
    }

    /// The same by what reads it; nothing where it is `null`.
    pub(crate) fn value_by<'de, A: MapAccess<'de>, S: DeserializeSeed<'de>>(
        &self,
        map: &mut A,
        seed: S,
    ) -> Result<Option<S::Value>, A::Error> {
        match self.of {
            Some((quantity, unit)) => {
                map.next_value_seed(OrNull(Measured { of: seed, key: self.name, quantity, unit }))
            }
            None => map.next_value_seed(OrNull(seed)),
        }
    }
}

/// A value as its type reads it.
struct Known<T>(PhantomData<T>);

impl<'de, T: Shaped + Deserialize<'de>> DeserializeSeed<'de> for Known<T> {
    type Value = Option<T>;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Option<T>, D::Error> {
        T::read(deserializer)
    }
}

/// A value, or nothing where it is `null`.
struct OrNull<S>(S);

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for OrNull<S> {
    type Value = Option<S::Value>;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Self::Value, D::Error> {
        deserializer.deserialize_option(self)
    }
}

impl<'de, S: DeserializeSeed<'de>> Visitor<'de> for OrNull<S> {
    type Value = Option<S::Value>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value, or `null` where it is not known")
    }

    fn visit_none<E: Error>(self) -> Result<Self::Value, E> {
        Ok(None)
    }

    fn visit_unit<E: Error>(self) -> Result<Self::Value, E> {
        Ok(None)
    }

    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<Self::Value, D::Error> {
        self.0.deserialize(deserializer).map(Some)
    }
}

/// The keys that an object gave so far.
#[derive(Default)]
pub(crate) struct Given {
    keys: Vec<(&'static str, String)>,
    has_questions: bool,
}

impl Given {
    /// Whether there is any key, be it a question.
    pub(crate) fn is_anything(&self) -> bool {
        !self.keys.is_empty() || self.has_questions
    }

    /// Passes over a key that is a question, which begins with `?`; false where it is none.
    pub(crate) fn pass_question<'de, A: MapAccess<'de>>(
        &mut self,
        text: &str,
        map: &mut A,
    ) -> Result<bool, A::Error> {
        let is_question = text.starts_with('?');
        if is_question {
            map.next_value::<Question>()?;
            self.has_questions = true;
        }
        Ok(is_question)
    }

    /// Which of the known keys comes next.
    ///
    /// # Errors
    /// A key that is not known, or whose value is there already, be it in another unit.
    pub(crate) fn key<E: Error>(&mut self, text: String, known: &'static [&'static str]) -> Result<Key, E> {
        let key = Key::among(&text, known.iter().copied()).ok_or_else(|| unknown_key(&text, known))?;
        match self.keys.iter().find(|(name, _)| *name == key.name) {
            Some((name, before)) if *before == text => Err(E::duplicate_field(name)),
            Some((_, before)) => Err(E::custom(format!("`{before}` and `{text}` say the same in two units"))),
            None => {
                self.keys.push((key.name, text));
                Ok(key)
            }
        }
    }
}

/// A reader of numbers of a quantity, in lists too.
struct Measured<T> {
    of: T,
    key: &'static str,
    quantity: &'static Quantity,
    unit: Option<&'static Unit>,
}

impl<T> Measured<T> {
    fn around<U>(&self, of: U) -> Measured<U> {
        Measured { of, key: self.key, quantity: self.quantity, unit: self.unit }
    }

    /// A number in the unit of the key, in that which it is written in.
    fn number<E: Error>(&self, number: f64) -> Result<f64, E> {
        match self.unit {
            Some(unit) => Ok((unit.to_written)(number)),
            None => Err(E::custom(format_args!(
                "{number} has no unit: {}, in a text such as \"{number} {}\" or in the key, as `{}`",
                self.quantity.names(),
                self.quantity.units.first().map_or("", |unit| unit.name),
                self.key,
            ))),
        }
    }

    /// The number of a text, in the unit that its own key is written in.
    fn text<E: Error>(&self, text: &str) -> Result<f64, E> {
        let (number, unit) = amount::read(text, self.quantity).map_err(|error| match error {
            NoAmount::NoNumber => {
                E::invalid_type(Unexpected::Str(&Excerpt(text).to_string()), &Wanted(self.quantity))
            }
            NoAmount::Wrong(words) => E::custom(words),
        })?;
        match self.unit {
            Some(of_key) if of_key.name != unit.name => Err(E::custom(format_args!(
                "`{}` is in {}, and the key says {}: end the key in no unit, as `{}`",
                Excerpt(text),
                unit.name,
                of_key.name,
                self.key.strip_suffix(self.quantity.written).unwrap_or(self.key),
            ))),
            _ => Ok((unit.to_written)(number)),
        }
    }
}

/// What may stand for a quantity.
struct Wanted(&'static Quantity);

impl serde::de::Expected for Wanted {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "a number, or a text of a number and its unit: {}", self.0.names())
    }
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for Measured<S> {
    type Value = S::Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<S::Value, D::Error> {
        let wrapped = self.around(deserializer);
        self.of.deserialize(wrapped)
    }
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Measured<D> {
    type Error = D::Error;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
        let visitor = self.around(visitor);
        self.of.deserialize_any(visitor)
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct
        newtype_struct seq tuple tuple_struct map struct enum identifier ignored_any
    }
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Measured<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.of.expecting(f)
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<V::Value, E> {
        visit(self.number(number)?, self.of)
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<V::Value, E> {
        self.visit_f64(number as f64)
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<V::Value, E> {
        self.visit_f64(number as f64)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<V::Value, E> {
        visit(self.text(text)?, self.of)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<V::Value, A::Error> {
        let list = self.around(list);
        self.of.visit_seq(list)
    }
}

/// A number as its kind is visited: a whole one may be a count.
fn visit<'de, V: Visitor<'de>, E: Error>(number: f64, visitor: V) -> Result<V::Value, E> {
    const EXACT: f64 = 9_007_199_254_740_992.0;
    if (0.0..EXACT).contains(&number) && libm::trunc(number) == number && number.is_sign_positive() {
        visitor.visit_u64(number as u64)
    } else {
        visitor.visit_f64(number)
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Measured<A> {
    type Error = A::Error;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        let seed = self.around(seed);
        self.of.next_element_seed(seed)
    }

    fn size_hint(&self) -> Option<usize> {
        self.of.size_hint()
    }
}

/// An error about a key that no object has at its place: which key is nearest, and which there are.
fn unknown_key<E: Error>(key: &str, known: &'static [&'static str]) -> E {
    let same_name: Vec<_> = known
        .iter()
        .filter(|known| Quantity::of(known).is_some_and(|(_, base)| base == key))
        .map(|key| format!("`{key}`"))
        .collect();
    if !same_name.is_empty() {
        return E::custom(format_args!(
            "unknown field `{}`: say which, {}",
            Excerpt(key),
            same_name.join(" or ")
        ));
    }
    match near::nearest(key, known.iter().copied(), bare) {
        Some(near) => E::custom(format_args!(
            "unknown field `{}`, is `{near}` meant? expected one of {}",
            Excerpt(key),
            Listed(known),
        )),
        None => unknown_field(key, known),
    }
}

/// A key without the unit behind it.
pub(super) fn bare(key: &str) -> &str {
    let mut units =
        QUANTITIES.iter().flat_map(|quantity| quantity.units).filter(|unit| !unit.suffix.is_empty());
    units.find_map(|unit| key.strip_suffix(unit.suffix)).unwrap_or(key)
}
