//! Reading and writing of designations: one byte scanner behind every parser, one error, one buffer.

mod error;
mod write;

pub use error::{Echo, Field, ParseError, ParseErrorKind, Shown};
pub(crate) use write::Text;

use ParseErrorKind::{Empty, Missing, TooLong, TooPrecise, Trailing};

/// The longest text any parser reads, in bytes.
pub(crate) const LONGEST: usize = 255;

/// `?` for `const fn`.
macro_rules! tri {
    ($result:expr) => {
        match $result {
            Ok(value) => value,
            Err(error) => return Err(error),
        }
    };
}
pub(crate) use tri;

/// A position in a text. Every method is `const`, so that a literal is read by the code that reads
/// user input.
#[derive(Clone, Copy)]
pub(crate) struct Scanner<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl<'a> Scanner<'a> {
    /// Begins behind leading white space.
    pub(crate) const fn new(text: &'a str) -> Result<Self, ParseError> {
        let bytes = text.as_bytes();
        if bytes.len() > LONGEST {
            let mut end = LONGEST;
            while bytes[end] & 0xC0 == 0x80 {
                end -= 1;
            }
            return Err(ParseError::new(TooLong, Field::Text, 0, end));
        }
        let mut scanner = Self { bytes, at: 0 };
        scanner.skip_space();
        if scanner.at_end() {
            return Err(ParseError::new(Empty, Field::Text, 0, bytes.len()));
        }
        Ok(scanner)
    }

    pub(crate) const fn at(&self) -> usize {
        self.at
    }

    pub(crate) const fn at_end(&self) -> bool {
        self.at >= self.bytes.len()
    }

    /// The byte at `ahead` from here in upper case; 0 past the end (and for NUL, which no grammar has).
    pub(crate) const fn peek(&self, ahead: usize) -> u8 {
        let at = self.at + ahead;
        if at < self.bytes.len() { self.bytes[at].to_ascii_uppercase() } else { 0 }
    }

    pub(crate) const fn at_digit(&self) -> bool {
        self.peek(0).is_ascii_digit()
    }

    /// Whether a lower-case letter is here: the case counts in a mark of type approval.
    pub(crate) const fn at_lower_case(&self) -> bool {
        self.at < self.bytes.len() && self.bytes[self.at].is_ascii_lowercase()
    }

    /// Width in bytes of the white space here: ASCII, no-break (narrow or not), and thin spaces.
    const fn space_width(&self) -> usize {
        match self.peek(0) {
            b' ' | b'\t' | b'\n' | b'\r' => 1,
            0xC2 if self.peek(1) == 0xA0 => 2,
            0xE2 if self.peek(1) == 0x80 && matches!(self.peek(2), 0x89 | 0xAF) => 3,
            _ => 0,
        }
    }

    /// Steps over white space; true if there was any.
    pub(crate) const fn skip_space(&mut self) -> bool {
        let start = self.at;
        loop {
            match self.space_width() {
                0 => return self.at > start,
                width => self.at += width,
            }
        }
    }

    /// Steps over `byte` (an upper-case letter stands for both cases) if it is here.
    pub(crate) const fn eat(&mut self, byte: u8) -> bool {
        let here = self.peek(0) == byte;
        if here {
            self.at += 1;
        }
        here
    }

    /// Steps over a word given in upper case if all of it is here.
    pub(crate) const fn eat_str(&mut self, word: &str) -> bool {
        let word = word.as_bytes();
        let mut i = 0;
        while i < word.len() {
            if self.peek(i) != word[i] {
                return false;
            }
            i += 1;
        }
        self.at += word.len();
        true
    }

    /// As [`Scanner::eat_str`], but no letter may follow.
    pub(crate) const fn eat_word(&mut self, word: &str) -> bool {
        if self.peek(word.len()).is_ascii_alphabetic() { false } else { self.eat_str(word) }
    }

    /// A multiplication sign: `x`, `X`, `*` or `×`.
    pub(crate) const fn eat_times(&mut self) -> bool {
        if self.eat(b'X') || self.eat(b'*') {
            true
        } else if self.peek(0) == 0xC3 && self.peek(1) == 0x97 {
            self.at += 2;
            true
        } else {
            false
        }
    }

    /// A whole number of at most four digits, or an error about `field`.
    pub(crate) const fn whole(&mut self, field: Field) -> Result<u16, ParseError> {
        let start = self.at;
        let mut value = 0;
        while self.at_digit() {
            if self.at - start >= 4 {
                while self.at_digit() {
                    self.at += 1;
                }
                return Err(self.range(field, start));
            }
            value = value * 10 + (self.peek(0) - b'0') as u16;
            self.at += 1;
        }
        if self.at == start { Err(self.missing(field)) } else { Ok(value) }
    }

    /// A number in millionths: up to four digits, then up to `places` (at most six) decimals behind a
    /// point or comma.
    pub(crate) const fn millionths(&mut self, field: Field, places: u32) -> Result<i64, ParseError> {
        let start = self.at;
        let mut value = tri!(self.whole(field)) as i64 * 1_000_000;
        if matches!(self.peek(0), b'.' | b',') && self.peek(1).is_ascii_digit() {
            self.at += 1;
            let mut worth = 1_000_000;
            let mut kept = 0;
            while self.at_digit() {
                let digit = (self.peek(0) - b'0') as i64;
                if kept < places {
                    worth /= 10;
                    value += digit * worth;
                    kept += 1;
                } else if digit != 0 {
                    while self.at_digit() {
                        self.at += 1;
                    }
                    return Err(ParseError::new(TooPrecise, field, start, self.at));
                }
                self.at += 1;
            }
        }
        Ok(value)
    }

    /// The value is not one that `field` may take; it was read from `start` to here.
    pub(crate) const fn range(&self, field: Field, start: usize) -> ParseError {
        self.error(ParseErrorKind::OutOfRange, field, start)
    }

    /// `field` was due here.
    pub(crate) const fn missing(&self, field: Field) -> ParseError {
        ParseError::new(Missing, field, self.at, self.at + self.char_width())
    }

    /// An error about what was read from `start` to here.
    pub(crate) const fn error(&self, kind: ParseErrorKind, field: Field, start: usize) -> ParseError {
        ParseError::new(kind, field, start, self.at)
    }

    /// Width in bytes of the character here, 0 at the end.
    const fn char_width(&self) -> usize {
        match self.peek(0) {
            _ if self.at_end() => 0,
            0xC0..=0xDF => 2,
            0xE0..=0xEF => 3,
            0xF0..=0xFF => 4,
            _ => 1,
        }
    }

    /// Nothing but white space may be left.
    pub(crate) const fn finish(mut self) -> Result<(), ParseError> {
        self.skip_space();
        if self.at_end() {
            Ok(())
        } else {
            Err(ParseError::new(Trailing, Field::Text, self.at, self.bytes.len()))
        }
    }
}

/// Gives a type with `const fn scan(&mut Scanner) -> Result<Self, ParseError>` and
/// `fn write(&self, &mut Text)` everything a designation has: `parse`, `FromStr`, `TryFrom<&str>`,
/// `Display` and, with the feature, serde as its canonical string.
macro_rules! designation {
    ($type:ident in $path:literal, $typed:literal => $canonical:literal, wrong $wrong:literal) => {
        crate::text::designation!($type in $path, $typed => $canonical, wrong $wrong, by scan);
    };
    ($type:ident in $path:literal, $typed:literal => $canonical:literal, wrong $wrong:literal, by $scan:ident) => {
        impl $type {
            #[doc = concat!("Reads a whole text, as `FromStr` does, and in `const` too.")]
            ///
            /// # Errors
            /// A [`ParseError`](crate::ParseError) with the place of the first thing that does not fit.
            ///
            /// ```
            #[doc = concat!("use ", $path, "::", stringify!($type), ";")]
            #[doc = concat!("assert_eq!(", stringify!($type), "::parse(\"", $typed, "\")?.to_string(), \"", $canonical, "\");")]
            #[doc = concat!("assert!(", stringify!($type), "::parse(\"", $wrong, "\").is_err());")]
            /// # Ok::<(), beadseat::ParseError>(())
            /// ```
            pub const fn parse(text: &str) -> Result<Self, crate::text::ParseError> {
                let mut scanner = crate::text::tri!(crate::text::Scanner::new(text));
                let value = crate::text::tri!(Self::$scan(&mut scanner));
                crate::text::tri!(scanner.finish());
                Ok(value)
            }
        }

        impl core::str::FromStr for $type {
            type Err = crate::text::ParseError;
            fn from_str(text: &str) -> Result<Self, Self::Err> {
                Self::parse(text)
            }
        }

        impl TryFrom<&str> for $type {
            type Error = crate::text::ParseError;
            fn try_from(text: &str) -> Result<Self, Self::Error> {
                Self::parse(text)
            }
        }

        impl core::fmt::Display for $type {
            fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                let mut text = crate::text::Text::new();
                self.write(&mut text);
                f.pad(text.as_str())
            }
        }

        #[cfg(feature = "serde")]
        impl serde::Serialize for $type {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let mut text = crate::text::Text::new();
                self.write(&mut text);
                serializer.serialize_str(text.as_str())
            }
        }

        #[cfg(feature = "serde")]
        impl<'de> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                deserializer.deserialize_str(crate::text::FromText(core::marker::PhantomData))
            }
        }
    };
}
pub(crate) use designation;

/// Reads a designation from a string of any serde format.
#[cfg(feature = "serde")]
pub(crate) struct FromText<T>(pub(crate) core::marker::PhantomData<T>);

#[cfg(feature = "serde")]
impl<T: core::str::FromStr<Err = ParseError>> serde::de::Visitor<'_> for FromText<T> {
    type Value = T;

    fn expecting(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str("a designation as text")
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<T, E> {
        text.parse().map_err(|error: ParseError| E::custom(error))
    }
}

/// A designation written in the source, checked when it is compiled.
///
/// ```
/// use beadseat::{literal, tire::TireSize, wheel::BoltCircle};
/// const HOLES: BoltCircle = literal!(BoltCircle, "5x114.3");
/// const SIZE: TireSize = literal!(TireSize, "205/55R16");
/// assert_eq!(HOLES, "5x4.5in".parse()?);
/// assert_eq!(SIZE.to_string(), "205/55R16");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
///
/// A wrong one does not compile:
///
/// ```compile_fail,E0080
/// use beadseat::{literal, wheel::BoltCircle};
/// let holes = literal!(BoltCircle, "5x57");
/// ```
#[macro_export]
macro_rules! literal {
    ($type:ty, $text:expr) => {{
        const VALUE: $type = match <$type>::parse($text) {
            Ok(value) => value,
            Err(error) => error.fail(),
        };
        VALUE
    }};
}
