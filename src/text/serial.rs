//! Designations and words from files.

use core::fmt;
use core::marker::PhantomData;
use core::str::FromStr;

use serde::de::{Error, Visitor};

use super::word::Listed;
use super::{ParseError, UnknownWord};

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
