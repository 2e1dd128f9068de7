//! Reading and writing of designations: one byte scanner behind every parser, one error, one buffer.

mod error;
mod messages;
#[cfg(feature = "serde")]
mod refused;
#[cfg(feature = "serde")]
mod serial;
mod word;
mod worded;
mod write;

pub(crate) use error::is_plain;
pub use error::{Excerpt, Field, MarkedText, ParseError, ParseErrorKind};
pub(crate) use messages::messages;
#[cfg(feature = "serde")]
pub(crate) use refused::{bounded, unknown_field, unknown_variant};
#[cfg(feature = "serde")]
pub(crate) use serial::{FromText, FromWord};
#[cfg(feature = "serde")]
pub(crate) use word::Listed;
pub(crate) use word::Name;
pub use word::UnknownWord;
pub(crate) use worded::worded;
pub(crate) use write::Text;

use core::num::NonZeroU32;

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
/// user input, and `inline`, so that the position stays in registers.
#[derive(Clone, Copy)]
pub(crate) struct Scanner<'a> {
    bytes: &'a [u8],
    at: usize,
    /// The byte at `at`; 0 at the end (and for NUL, which no grammar has). It is as wide as `at` so that
    /// a copy of the scanner carries no padding along.
    byte: usize,
}

impl<'a> Scanner<'a> {
    #[inline]
    pub(crate) const fn new(text: &'a str) -> Self {
        let mut scanner = Self { bytes: text.as_bytes(), at: 0, byte: 0 };
        scanner.step(0);
        scanner
    }

    /// Steps over leading white space; behind it there must be something.
    #[inline]
    pub(crate) const fn begin(&mut self) -> Result<(), ParseError> {
        if self.bytes.len() > LONGEST {
            return Err(too_long(self.bytes));
        }
        self.skip_space();
        if self.byte == 0 && self.at_end() {
            return Err(ParseError::new(Empty, Field::Text, 0, self.bytes.len()));
        }
        Ok(())
    }

    #[inline(always)]
    pub(crate) const fn at(&self) -> usize {
        self.at
    }

    #[inline(always)]
    pub(crate) const fn at_end(&self) -> bool {
        self.at >= self.bytes.len()
    }

    /// The byte at `ahead` from here; 0 past the end.
    #[inline(always)]
    const fn ahead(&self, ahead: usize) -> u8 {
        let at = self.at + ahead;
        if at < self.bytes.len() { self.bytes[at] } else { 0 }
    }

    /// Steps over `width` bytes, which the caller has seen.
    #[inline(always)]
    pub(crate) const fn step(&mut self, width: usize) {
        self.byte = self.ahead(width) as usize;
        self.at += width;
    }

    /// Returns to where [`Scanner::at`] was `at`.
    #[inline(always)]
    pub(crate) const fn back_to(&mut self, at: usize) {
        self.at = at;
        self.step(0);
    }

    /// The byte here as it stands; 0 at the end.
    #[inline(always)]
    pub(crate) const fn byte(&self) -> u8 {
        self.byte as u8
    }

    /// The byte at `ahead` from here in upper case; 0 past the end.
    #[inline]
    pub(crate) const fn peek(&self, ahead: usize) -> u8 {
        if ahead == 0 { self.byte().to_ascii_uppercase() } else { self.ahead(ahead).to_ascii_uppercase() }
    }

    #[inline(always)]
    pub(crate) const fn at_digit(&self) -> bool {
        self.digit() <= 9
    }

    /// Whether a lower-case letter is here: the case counts in a mark of type approval.
    pub(crate) const fn at_lower_case(&self) -> bool {
        self.byte().is_ascii_lowercase()
    }

    /// The value of the digit here; more than 9 if there is none.
    #[inline(always)]
    const fn digit(&self) -> usize {
        self.byte.wrapping_sub(b'0' as usize)
    }

    /// The value of the digit here, stepped over.
    #[inline(always)]
    const fn eat_digit(&mut self) -> Option<usize> {
        let digit = self.digit();
        if digit > 9 {
            return None;
        }
        self.step(1);
        Some(digit)
    }

    #[inline(always)]
    pub(crate) const fn skip_digits(&mut self) {
        while self.at_digit() {
            self.step(1);
        }
    }

    /// Steps over white space; true if there was any.
    #[inline(always)]
    pub(crate) const fn skip_space(&mut self) -> bool {
        if self.byte().is_ascii_graphic() {
            return false;
        }
        let start = self.at;
        // Most often there is one space or none.
        self.eat(b' ');
        if !self.byte().is_ascii_graphic() && !self.at_end() {
            self.step(space_width(self.bytes, self.at));
        }
        self.at > start
    }

    /// Whether `byte` is here; an upper-case letter stands for both cases.
    #[inline(always)]
    pub(crate) const fn is_at(&self, byte: u8) -> bool {
        self.byte() | case(byte) == byte | case(byte)
    }

    /// Whether this is the beginning, or white space stands before it.
    pub(crate) const fn is_apart(&self) -> bool {
        self.at == 0 || !self.bytes[self.at - 1].is_ascii_graphic()
    }

    /// Whether a decimal point or comma stands at a place.
    pub(crate) const fn is_point(&self, at: usize) -> bool {
        at < self.bytes.len() && matches!(self.bytes[at], b'.' | b',')
    }

    /// Steps over `byte` (an upper-case letter stands for both cases) if it is here.
    #[inline(always)]
    pub(crate) const fn eat(&mut self, byte: u8) -> bool {
        let here = self.is_at(byte);
        if here {
            self.step(1);
        }
        here
    }

    /// Whether a word given in upper case stands here.
    #[inline]
    const fn at_str(&self, word: &[u8]) -> bool {
        let mut i = 0;
        while i < word.len() {
            let byte = if i == 0 { self.byte() } else { self.ahead(i) };
            if byte | case(word[i]) != word[i] | case(word[i]) {
                return false;
            }
            i += 1;
        }
        true
    }

    /// Steps over a word given in upper case if all of it is here.
    #[inline]
    pub(crate) const fn eat_str(&mut self, word: &str) -> bool {
        let here = self.at_str(word.as_bytes());
        if here {
            self.step(word.len());
        }
        here
    }

    /// As [`Scanner::eat_str`], but no letter may follow.
    #[inline]
    pub(crate) const fn eat_word(&mut self, word: &str) -> bool {
        let here = self.at_str(word.as_bytes()) && !self.ahead(word.len()).is_ascii_alphabetic();
        if here {
            self.step(word.len());
        }
        here
    }

    /// As [`Scanner::eat_word`], but no digit may follow either.
    #[inline(always)]
    pub(crate) const fn eat_alone(&mut self, word: &str) -> bool {
        let here = self.at_str(word.as_bytes()) && !self.ahead(word.len()).is_ascii_alphanumeric();
        if here {
            self.step(word.len());
        }
        here
    }

    /// Whether a word stands alone somewhere behind.
    #[cold]
    pub(crate) const fn has_alone(mut self, word: &str) -> bool {
        while !self.at_end() {
            if self.is_apart() && self.eat_alone(word) {
                return true;
            }
            self.step(1);
        }
        false
    }

    /// As [`Scanner::eat_alone`], but the `X` of a multiplication sign may follow.
    #[inline]
    pub(crate) const fn eat_mark(&mut self, word: &str) -> bool {
        let here = self.at_str(word.as_bytes())
            && (self.peek(word.len()) == b'X' || !self.ahead(word.len()).is_ascii_alphanumeric());
        if here {
            self.step(word.len());
        }
        here
    }

    /// Whether the first letter of a word given in upper case stands here: most words are ruled out by it.
    #[inline(always)]
    pub(crate) const fn begins(&self, word: &str) -> bool {
        self.is_at(word.as_bytes()[0])
    }

    /// Steps over a spelling in which a space stands for a space, a hyphen or nothing; no letter or digit may follow.
    pub(crate) const fn eat_spelled(&mut self, spelling: &str) -> bool {
        let mut ahead = *self;
        let spelling = spelling.as_bytes();
        let mut i = 0;
        while i < spelling.len() {
            if spelling[i] == b' ' {
                let _ = ahead.skip_space() || ahead.eat(b'-');
            } else if !ahead.eat(spelling[i]) {
                return false;
            }
            i += 1;
        }
        if ahead.peek(0).is_ascii_alphanumeric() {
            return false;
        }
        *self = ahead;
        true
    }

    /// Steps over the first of some [spellings](Self::eat_spelled) that stands here.
    pub(crate) const fn eat_any(&mut self, spellings: &[&str]) -> bool {
        let mut i = 0;
        while i < spellings.len() {
            if self.begins(spellings[i]) && self.eat_spelled(spellings[i]) {
                return true;
            }
            i += 1;
        }
        false
    }

    /// Steps over what may stand between a word and what it names: `:`, `=`, a point, and white space.
    pub(crate) const fn skip_colon(&mut self) {
        self.skip_space();
        if self.eat(b':') || self.eat(b'=') || self.eat(b'.') {
            self.skip_space();
        }
    }

    /// Steps over a word given in upper case, and white space, if a digit stands behind them.
    pub(crate) const fn eat_before_digit(&mut self, word: &str) -> bool {
        let mut ahead = *self;
        if !ahead.eat_str(word) {
            return false;
        }
        ahead.skip_space();
        let here = ahead.at_digit();
        if here {
            *self = ahead;
        }
        here
    }

    /// A multiplication sign: `x`, `X`, `*` or `×`.
    #[inline]
    pub(crate) const fn eat_times(&mut self) -> bool {
        self.eat(b'X') || self.eat(b'*') || self.eat_str("×")
    }

    /// A whole number of at most four digits, or an error about `field`.
    #[inline(always)]
    pub(crate) const fn whole(&mut self, field: Field) -> Result<u16, ParseError> {
        let start = self.at;
        let mut value = 0;
        let mut left = 4;
        while let Some(digit) = self.eat_digit() {
            if left == 0 {
                self.skip_digits();
                return Err(self.range(field, start));
            }
            value = value * 10 + digit;
            left -= 1;
        }
        if left == 4 { Err(self.missing(field)) } else { Ok(value as u16) }
    }

    /// A number of at most so many digits, not all of them zero: of an approval or a permit.
    pub(crate) const fn number(&mut self, field: Field, most: usize) -> Result<NonZeroU32, ParseError> {
        let start = self.at;
        let mut number = 0;
        while self.at_digit() && self.at - start < most {
            number = number * 10 + self.digit() as u32;
            self.step(1);
        }
        if self.at == start {
            return Err(self.missing(field));
        }
        match NonZeroU32::new(number) {
            Some(number) if !self.at_digit() => Ok(number),
            _ => {
                self.skip_digits();
                Err(self.range(field, start))
            }
        }
    }

    /// A decimal number in units of its last place, the `places`-th: up to four digits, then behind a
    /// point or comma up to `places` (at most six) decimals and any number of zeros.
    #[inline(always)]
    pub(crate) const fn decimal(&mut self, field: Field, places: u32) -> Result<i64, ParseError> {
        let start = self.at;
        let mut value = tri!(self.whole(field)) as i64;
        let mut missing = places as usize;
        if matches!(self.byte(), b'.' | b',') && self.ahead(1).is_ascii_digit() {
            self.step(1);
            while let Some(digit) = self.eat_digit() {
                if missing > 0 {
                    value = value * 10 + digit as i64;
                    missing -= 1;
                } else if digit != 0 {
                    self.skip_digits();
                    return Err(self.error(TooPrecise, field, start));
                }
            }
        }
        Ok(value * POWERS[missing])
    }

    /// The value is not one that `field` may take; it was read from `start` to here.
    #[inline(always)]
    pub(crate) const fn range(&self, field: Field, start: usize) -> ParseError {
        self.error(ParseErrorKind::OutOfRange, field, start)
    }

    /// `field` was due here.
    #[inline(always)]
    pub(crate) const fn missing(&self, field: Field) -> ParseError {
        ParseError::new(Missing, field, self.at, self.at + self.char_width())
    }

    /// Width in bytes of the character here, 0 at the end.
    #[inline(always)]
    const fn char_width(&self) -> usize {
        if self.byte().is_ascii() {
            return if self.at_end() { 0 } else { 1 };
        }
        match self.byte() {
            0xE0..=0xEF => 3,
            0xF0..=0xFF => 4,
            _ => 2,
        }
    }

    /// An error about what was read from `start` to here.
    #[inline(always)]
    pub(crate) const fn error(&self, kind: ParseErrorKind, field: Field, start: usize) -> ParseError {
        ParseError::new(kind, field, start, self.at)
    }

    /// Nothing but white space may be left.
    #[inline]
    pub(crate) const fn finish(mut self) -> Result<(), ParseError> {
        if self.at_end() {
            return Ok(());
        }
        self.skip_space();
        if self.at_end() {
            Ok(())
        } else {
            Err(ParseError::new(Trailing, Field::Text, self.at, self.bytes.len()))
        }
    }
}

/// Powers of ten by their exponent.
const POWERS: [i64; 7] = [1, 10, 100, 1000, 10_000, 100_000, 1_000_000];

/// The error of a text with too many bytes, up to a place between two characters.
#[cold]
#[inline(never)]
const fn too_long(bytes: &[u8]) -> ParseError {
    let mut end = LONGEST;
    while bytes[end] & 0xC0 == 0x80 {
        end -= 1;
    }
    ParseError::new(TooLong, Field::Text, 0, end)
}

/// Width in bytes of the white space at `at`: ASCII, no-break (narrow or not), and thin spaces.
#[cold]
#[inline(never)]
const fn space_width(bytes: &[u8], at: usize) -> usize {
    let mut end = at;
    loop {
        let (_, rest) = bytes.split_at(end);
        end += match rest {
            [b' ' | b'\t' | b'\n' | b'\r', ..] => 1,
            [0xC2, 0xA0, ..] => 2,
            [0xE2, 0x80, 0x89 | 0xAF, ..] => 3,
            _ => return end - at,
        };
    }
}

/// The bit by which the two cases of a letter differ; none if `byte` is not an upper-case letter.
#[inline(always)]
const fn case(byte: u8) -> u8 {
    if byte.is_ascii_uppercase() { 0x20 } else { 0 }
}

/// Gives a type with `const fn scan(&mut Scanner) -> Result<Self, ParseError>` and
/// `fn write(&self, &mut Text)` everything a designation has: `parse`, and what [`as_text`] gives.
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
                let mut scanner = crate::text::Scanner::new(text);
                crate::text::tri!(scanner.begin());
                let value = crate::text::tri!(Self::$scan(&mut scanner));
                crate::text::tri!(scanner.finish());
                Ok(value)
            }
        }

        crate::text::as_text!($type);
    };
}
pub(crate) use designation;

/// Gives a type with `const fn parse(&str)` and `fn write(&self, &mut Text)` the traits of a designation:
/// `FromStr`, `TryFrom` of strings, `Display` and, with the feature, serde as its canonical string.
macro_rules! as_text {
    ($type:ident) => {
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

        #[cfg(feature = "alloc")]
        impl TryFrom<alloc::string::String> for $type {
            type Error = crate::text::ParseError;
            fn try_from(text: alloc::string::String) -> Result<Self, Self::Error> {
                Self::parse(&text)
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
        impl crate::file::Shaped for $type {
            const CONTENT: crate::file::Content = crate::file::Content::Text;
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
pub(crate) use as_text;

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
