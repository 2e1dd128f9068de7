//! How deep the hub face stands behind the inner edge of a rim.

use core::num::NonZeroU32;

use super::phrase;
use crate::OutOfRange;
use crate::exact::Exact;
use crate::rim::RimWidth;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{Length, in_mm, mm};
use crate::wheel::Inset;

/// The backspacing of a wheel: from the mounting face to a straightedge over the inner flange. The inset follows from
/// it with a width of the flange, which is why a wheel that states it has no exact inset.
///
/// # Syntax
/// ```text
/// backspacing = word number [ "mm" | "cm" | "in" | '"' ] | number [ unit ] word
/// word        = "BS" | "B/S" | "backspace" | "backspacing" | "back space" | "back spacing"
/// ```
/// 25 to 400 mm; without a unit below 20 as inches, which may have a fraction. Canonical in millimetres. `Ord` is by
/// length.
///
/// ```
/// use beadseat::{rim::RimWidth, units::mm, wheel::Backspacing};
/// let backspacing: Backspacing = "4 1/2\" backspacing".parse()?;
/// assert_eq!(backspacing.to_string(), "BS 114.3");
/// assert_eq!(backspacing, "BS 4.5".parse()?);
/// // 114.3 − 177.8 / 2 − 12.7
/// let inset = backspacing.inset(RimWidth::parse("7")?, mm(12.7))?;
/// assert_eq!(inset.to_string(), "ET12.7");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Backspacing(
    /// Nanometres; never zero, so that an absent one takes no room.
    NonZeroU32,
);

/// What it is called, longer spellings first.
const WORDS: &[&str] = &["BACK SPACING", "BACK SPACE", "B/S", "BS"];

impl Backspacing {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let named = phrase::eat_word_before_number(scanner, WORDS);
        let at = scanner.at();
        let length = tri!(phrase::scan_length(scanner, Field::Backspacing, 25, 400)).nm();
        if !named {
            scanner.skip_space();
            if !scanner.eat_any(WORDS) {
                return Err(scanner.missing(Field::Backspacing));
            }
        }
        match NonZeroU32::new(length as u32) {
            Some(nanometres) => Ok(Self(nanometres)),
            None => Err(scanner.range(Field::Backspacing, at)),
        }
    }

    /// Whether one begins here with its word.
    pub(super) const fn is_named(scanner: &Scanner<'_>) -> bool {
        let mut ahead = *scanner;
        scanner.peek(0) == b'B' && phrase::eat_word_before_number(&mut ahead, WORDS)
    }

    pub(crate) fn write(&self, text: &mut Text) {
        text.str("BS ");
        Exact::from_nm(self.0.get() as i32).write_mm(text);
    }

    /// The nearest backspacing to a length.
    ///
    /// # Errors
    /// Outside 25 to 400 mm.
    ///
    /// ```
    /// use beadseat::{units::inches, wheel::Backspacing};
    /// assert_eq!(Backspacing::from_length(inches(4.5))?.to_string(), "BS 114.3");
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn from_length(length: Length) -> Result<Self, OutOfRange> {
        let told = in_mm(length);
        let out_of_range =
            OutOfRange { what: "backspacing", value: told, unit: "mm", least: 25.0, most: 400.0 };
        let told = OutOfRange::check("backspacing", told, "mm", 25.0, 400.0)?;
        let nanometres = Exact::nearest(mm(told)).and_then(|exact| NonZeroU32::new(exact.nm() as u32));
        nanometres.map(Self).ok_or(out_of_range)
    }

    /// The backspacing as a length.
    pub const fn length(&self) -> Length {
        Exact::from_nm(self.0.get() as i32).length()
    }

    /// The inset of a rim of a width with flanges of a width.
    ///
    /// # Errors
    /// If it comes out beyond ± 300 mm.
    pub fn inset(&self, width: RimWidth, flange: Length) -> Result<Inset, OutOfRange> {
        Inset::from_backspacing(width, self.length(), flange)
    }
}

designation!(Backspacing in "beadseat::wheel", "backspace 115 mm" => "BS 115", wrong "BS 22 in");
