//! The door for people: whatever they write, in every way it can be read.

use super::evidence::recognise;
use super::kind::Marking;
use super::reading::Readings;
use crate::text::{ParseError, Text, as_text};
use crate::tire::identification::ManufactureWeek;

/// Every reading of a text, best first.
///
/// The library reads no clock: without a word, four digits are possibly a date if their week is not after week 47 of
/// 2026, when this edition was made. [`readings_as_of`] takes the week from the caller.
///
/// # Errors
/// That of the kind which the text resembles most; [`suggestions`](super::suggestions) answers the nearest texts that can
/// be read.
///
/// ```
/// use beadseat::marking::readings;
/// let of = |text| readings(text).map(|all| {
///     all.iter().map(|reading| reading.marking().to_string()).collect::<Vec<_>>()
/// });
/// assert_eq!(of("9x8")?, ["8x9", "9x203.2"]);
/// assert_eq!(of("7.0-20")?, ["WHEEL 7-20", "TIRE 7.0-20"]);
/// let date = readings("2725")?.best();
/// assert!(date.marking().kind() == "date_code" && date.when().is_some());
/// assert!(readings("2740").is_err()); // yet to come
/// # Ok::<(), beadseat::ParseError>(())
/// ```
pub fn readings(text: &str) -> Result<Readings, ParseError> {
    recognise(text, ManufactureWeek::EDITION)
}

/// The same where the present is another week, up to which a date may lie.
///
/// # Errors
/// As [`readings`].
///
/// ```
/// use beadseat::{marking::readings_as_of, tire::identification::ManufactureWeek};
/// let week = |week, year| ManufactureWeek::new(week, year).ok_or("no such week");
/// assert!(readings_as_of("2727", week(30, 2027)?).is_ok());
/// assert!(readings_as_of("2725", week(26, 2025)?).is_err());
/// # Ok::<(), &str>(())
/// ```
pub fn readings_as_of(text: &str, present: ManufactureWeek) -> Result<Readings, ParseError> {
    recognise(text, present)
}

/// Words that say what follows them, tried in turn.
const WORDS: [&str; 8] =
    ["TIRE ", "WHEEL ", "PCD ", "THREAD ", "LOAD INDEX ", "SPEED SYMBOL ", "LABEL ", "TIN "];

impl Marking {
    /// The best reading of a text; [`readings`] says whether there are others, and what decides.
    ///
    /// # Errors
    /// As [`readings`].
    ///
    /// ```
    /// use beadseat::Marking;
    /// assert_eq!(Marking::parse("6x139,7")?.to_string(), "6x139.7");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn parse(text: &str) -> Result<Self, ParseError> {
        readings(text).map(|all| all.best().marking())
    }

    /// Its plain text, with the word in front without which it would be read as something else.
    fn write(&self, text: &mut Text) {
        let mut plain = Text::new();
        self.write_plain(&mut plain);
        let reads_back = |text: &str| Self::parse(text) == Ok(*self);
        if !reads_back(plain.as_str()) {
            for word in WORDS {
                let mut named = Text::new();
                named.str(word).str(plain.as_str());
                if reads_back(named.as_str()) {
                    text.str(named.as_str());
                    return;
                }
            }
        }
        text.str(plain.as_str());
    }
}

as_text!(Marking);
