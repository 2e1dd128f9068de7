//! Designations and words from files, and errors about what else stands there.
//!
//! What comes from outside goes into a message through [`Excerpt`] only.

use alloc::string::ToString;
use core::fmt;
use core::marker::PhantomData;
use core::str::FromStr;

use serde::de::{Error, Visitor};

use super::word::Listed;
use super::{Excerpt, ParseError, UnknownWord};

/// A key that no object has at its place.
pub(crate) fn unknown_field<E: Error>(key: &str, known: &'static [&'static str]) -> E {
    E::unknown_field(&Excerpt(key).to_string(), known)
}

/// A word that none is at its place.
pub(crate) fn unknown_variant<E: Error>(word: &str, known: &'static [&'static str]) -> E {
    E::unknown_variant(&Excerpt(word).to_string(), known)
}

/// An error with a message of bounded length: where a text stands in place of a number or an object, formats
/// repeat all of it.
pub(crate) fn bounded<E: Error>(error: E) -> E {
    /// Longer than any message of this crate, with the keys of the largest object.
    const LONGEST: usize = 4096;
    let message = error.to_string();
    if message.len() > LONGEST { E::custom(Excerpt(&message)) } else { error }
}

/// Reads a designation from a string of any serde format.
pub(crate) struct FromText<T>(pub(crate) PhantomData<T>);

impl<T: FromStr<Err = ParseError>> Visitor<'_> for FromText<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a designation as text")
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
        text.parse().or_else(|error| match crate::file::designation(text) {
            Some(found) => found.map_err(E::custom),
            None => Err(E::custom(error)),
        })
    }
}

/// Reads one of some words from a string of any serde format.
pub(crate) struct FromWord<T> {
    words: &'static [&'static str],
    kind: PhantomData<T>,
}

impl<T> FromWord<T> {
    pub(crate) const fn new(words: &'static [&'static str]) -> Self {
        Self { words, kind: PhantomData }
    }
}

impl<T: FromStr<Err = UnknownWord>> Visitor<'_> for FromWord<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "one of {}", Listed(self.words))
    }

    fn visit_str<E: Error>(self, word: &str) -> Result<T, E> {
        word.parse().or_else(|_| crate::file::word(word, self.words))
    }
}
