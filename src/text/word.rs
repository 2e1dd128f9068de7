//! Words: the names of the variants of an enum, as they stand in files.

use core::fmt;

/// A text that is none of the words of an enum. It knows which words there are.
///
/// It is `Copy` and never allocates.
///
/// ```
/// use beadseat::tire::Structure;
/// let error = "crossed".parse::<Structure>().unwrap_err();
/// assert_eq!(error.allowed(), ["radial", "diagonal", "bias_belted"]);
/// assert_eq!(error.to_string(), "none of the words `radial`, `diagonal`, `bias_belted`");
/// assert_eq!("radial".parse(), Ok(Structure::Radial));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
#[error("none of the words {}", Listed(.words))]
pub struct UnknownWord {
    words: &'static [&'static str],
}

impl UnknownWord {
    pub(crate) const fn of(words: &'static [&'static str]) -> Self {
        Self { words }
    }

    /// The words that are read, letter by letter as they stand here.
    pub const fn allowed(self) -> &'static [&'static str] {
        self.words
    }
}

/// Words in a row.
pub(crate) struct Listed<'a>(pub(crate) &'a [&'a str]);

impl fmt::Display for Listed<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, word) in self.0.iter().enumerate() {
            write!(f, "{}`{word}`", if n == 0 { "" } else { ", " })?;
        }
        Ok(())
    }
}

/// Gives an enum with `const fn name(self)` what reads its names, and nothing else: `FromStr` and, with the
/// feature, serde.
macro_rules! worded {
    ($name:ident [$($variant:ident)*]) => {
        impl core::str::FromStr for $name {
            type Err = crate::UnknownWord;

            fn from_str(word: &str) -> Result<Self, Self::Err> {
                const WORDS: &[&str] = &[$($name::$variant.name(),)*];
                let mut all = [$(Self::$variant,)*].into_iter();
                all.find(|known| known.name() == word).ok_or(crate::UnknownWord::of(WORDS))
            }
        }

        #[cfg(feature = "serde")]
        impl crate::file::Shaped for $name {
            const CONTENT: crate::file::Content = crate::file::Content::Words(&[$($name::$variant.name(),)*]);
        }

        #[cfg(feature = "serde")]
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.name())
            }
        }

        #[cfg(feature = "serde")]
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                const WORDS: &[&str] = &[$($name::$variant.name(),)*];
                deserializer.deserialize_str(crate::text::FromWord::new(WORDS))
            }
        }
    };
}
pub(crate) use worded;
