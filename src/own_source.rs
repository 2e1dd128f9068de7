//! A document that a caller names as the source of its own limits.

use crate::text::{Field, ParseError, ParseErrorKind, Text, as_text, is_plain};

/// Bytes of the longest name.
const CAPACITY: usize = 64;

/// The name of a document in which a caller's own limits stand: 1 to 64 bytes of plain text, held in place.
///
/// Plain text has no control characters and none of the invisible ones that turn or join text, and no space at either
/// end. What the document says is the caller's word: nobody has looked it up.
///
/// ```
/// use beadseat::{OwnSource, fitment::Limits, units::percent};
/// let handbook: OwnSource = "Yard handbook, sheet 7".parse()?;
/// let limits = Limits::default().with_own_source(handbook).with_own_diameter_share(percent(2.0))?;
/// assert_eq!(limits.own_source().map(|d| d.to_string()).as_deref(), Some("Yard handbook, sheet 7"));
/// assert!(OwnSource::parse("two\nlines").is_err());
/// # Ok::<(), beadseat::Error>(())
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct OwnSource {
    bytes: [u8; CAPACITY],
    len: u8,
}

impl OwnSource {
    /// Reads a name as it is written; nothing is cut or replaced.
    ///
    /// # Errors
    /// A [`ParseError`] about [`Field::OwnSource`], with the place: text that is empty, longer than 64 bytes, not plain,
    /// or has a space at either end.
    ///
    /// ```
    /// use beadseat::{OwnSource, ParseErrorKind};
    /// assert_eq!(OwnSource::parse("Sheet 7")?.as_str(), "Sheet 7");
    /// assert_eq!(OwnSource::parse("").unwrap_err().kind(), ParseErrorKind::Empty);
    /// assert_eq!(OwnSource::parse(&"x".repeat(65)).unwrap_err().kind(), ParseErrorKind::TooLong);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn parse(text: &str) -> Result<Self, ParseError> {
        let error = |kind, start, end| ParseError::new(kind, Field::OwnSource, start, end);
        let mut bytes = [0; CAPACITY];
        let Some(place) = bytes.get_mut(..text.len()) else {
            return Err(error(ParseErrorKind::TooLong, CAPACITY, text.len().min(usize::from(u8::MAX))));
        };
        if text.trim().is_empty() {
            return Err(error(ParseErrorKind::Empty, 0, 0));
        }
        let last = text.char_indices().next_back().map_or(0, |(at, _)| at);
        let is_wrong =
            |&(at, c): &(usize, char)| !is_plain(c) || (at == 0 || at == last) && c.is_whitespace();
        if let Some((at, c)) = text.char_indices().find(is_wrong) {
            return Err(error(ParseErrorKind::OutOfRange, at, at + c.len_utf8()));
        }
        place.copy_from_slice(text.as_bytes());
        Ok(Self { bytes, len: text.len() as u8 })
    }

    /// The name as text.
    pub fn as_str(&self) -> &str {
        // Only whole strings are ever written, so this is never the empty fallback.
        let name = self.bytes.get(..usize::from(self.len)).unwrap_or_default();
        core::str::from_utf8(name).unwrap_or_default()
    }

    fn write(&self, text: &mut Text) {
        text.str(self.as_str());
    }
}

as_text!(OwnSource);

impl core::fmt::Debug for OwnSource {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_tuple("OwnSource").field(&self.as_str()).finish()
    }
}
