//! Words: the names of the variants of an enum, as they stand in files.

use core::fmt;

use super::write::Text;

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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct UnknownWord {
    words: &'static [&'static str],
}

impl fmt::Display for UnknownWord {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "none of the words {}", Listed(self.words))
    }
}

impl core::error::Error for UnknownWord {}

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

/// The name of a check or a body for reading: `bolt circle`.
pub(crate) struct Name(pub(crate) &'static str);

impl fmt::Display for Name {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut text = Text::new();
        for byte in self.0.bytes() {
            text.byte(if byte == b'_' { b' ' } else { byte });
        }
        f.pad(text.as_str())
    }
}
