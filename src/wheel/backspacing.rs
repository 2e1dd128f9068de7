//! How deep the hub face stands behind the inner edge of a rim.

use core::num::NonZeroU32;

use super::phrase;
use crate::OutOfRange;
use crate::exact::Exact;
use crate::rim::RimWidth;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{Length, at_most, in_mm, mm};
use crate::wheel::{Inset, Wheel};

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

/// Why a wheel cannot have a backspacing: what else is told of it contradicts it.
///
/// ```
/// use beadseat::wheel::{Backspacing, Wheel};
/// let wheel = Wheel::parse("7Jx17 ET45")?;
/// let error = wheel.with_backspacing(Backspacing::parse("BS 4.5in")?).unwrap_err();
/// assert_eq!(
///     error.to_string(),
///     "inset ET45 and backspacing BS 114.3 contradict each other: with flanges of 11 to 13 mm it makes an inset of 12.4 to 14.4 mm",
/// );
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum BackspacingError {
    /// The inset of the wheel is none that follows from it with any usual flange.
    Inset {
        /// The wheel, with its inset.
        wheel: Wheel,
        /// What does not agree with it.
        backspacing: Backspacing,
    },
    /// The wheel is stamped with another.
    Stamped {
        /// The wheel, with the backspacing it is stamped with.
        wheel: Wheel,
        /// What does not agree with it.
        backspacing: Backspacing,
    },
    /// The inset that follows is beyond ± 300 mm, or the backspacing itself is none.
    OutOfRange(OutOfRange),
}

impl core::fmt::Display for BackspacingError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Inset { wheel, backspacing } => {
                let Some(inset) = wheel.inset() else {
                    return write!(f, "{backspacing} contradicts the inset");
                };
                let (flange, made) = (wheel.size().flange_width(), wheel.size().inset_by(*backspacing));
                let tenths = |length: Length| libm::round(in_mm(length) * 10.0) / 10.0;
                write!(
                    f,
                    "inset {inset} and backspacing {backspacing} contradict each other: with flanges of {} to {} mm it \
                     makes an inset of {} to {} mm",
                    tenths(flange.min()),
                    tenths(flange.max()),
                    tenths(made.min()),
                    tenths(made.max()),
                )
            }
            Self::Stamped { wheel, backspacing } => {
                write!(f, "backspacing {backspacing} contradicts that of the wheel, {wheel}")
            }
            Self::OutOfRange(error) => error.fmt(f),
        }
    }
}

impl core::error::Error for BackspacingError {}

impl From<OutOfRange> for BackspacingError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}

/// To what backspacing is told: an eighth of an inch. Common practice, no source.
const TOLD_TO: Length = mm(3.175);

impl Wheel {
    /// The same with its backspacing, as of a wheel on which no inset is stamped. Of a wheel that has an inset it stays:
    /// the two must agree within the span of flange widths and an eighth of an inch, to which backspacing is told
    /// (common practice, no source).
    ///
    /// # Errors
    /// If it contradicts the inset or the backspacing of the wheel, or makes an inset beyond ± 300 mm.
    ///
    /// ```
    /// use beadseat::wheel::{Backspacing, Wheel};
    /// let backspacing = Backspacing::parse("BS 4.5in")?;
    /// assert_eq!(Wheel::parse("7Jx17")?.with_backspacing(backspacing)?.to_string(), "7Jx17 BS 114.3");
    /// assert_eq!(Wheel::parse("7Jx17 ET13")?.with_backspacing(backspacing)?.to_string(), "7Jx17 ET13");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn with_backspacing(self, backspacing: Backspacing) -> Result<Self, BackspacingError> {
        if let Some(inset) = self.inset() {
            let made = self.size().inset_by(backspacing);
            let agrees = at_most(in_mm(made.min() - TOLD_TO), in_mm(inset.length()))
                && at_most(in_mm(inset.length()), in_mm(made.max() + TOLD_TO));
            return if agrees { Ok(self) } else { Err(BackspacingError::Inset { wheel: self, backspacing }) };
        }
        if let Some(stamped) = self.backspacing() {
            let apart = in_mm((stamped.length() - backspacing.length()).abs());
            let agrees = at_most(apart, in_mm(TOLD_TO));
            return if agrees {
                Ok(self)
            } else {
                Err(BackspacingError::Stamped { wheel: self, backspacing })
            };
        }
        Inset::from_length(self.size().inset_by(backspacing).nominal())?;
        Ok(self.standing_at(backspacing))
    }
}

designation!(Backspacing in "beadseat::wheel", "backspace 115 mm" => "BS 115", wrong "BS 22 in");
