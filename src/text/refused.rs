//! Errors about what stands in a file and has no meaning there.
//!
//! What comes from outside goes into a message through [`Excerpt`] only.

use alloc::string::ToString;

use serde::de::Error;

use super::Excerpt;

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
