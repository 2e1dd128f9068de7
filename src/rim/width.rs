//! Rim width.

use crate::Citation;
use crate::step::Teller;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// A rim width code: the width between the flanges in inches, in quarters; of millimetric rims, in
/// millimetres.
///
/// # Syntax
/// `6`, `6.5`, `6,5`, `6.50`, `6 1/2`; from 100 on, millimetres in steps of 5, as `150`; and `1.60`, `1.85` and `2.15` of
/// motorcycles (from memory). `6J` is not one (the letter is the [`Contour`](super::Contour)). `Ord` is by width.
///
/// ```
/// use beadseat::rim::RimWidth;
/// assert_eq!(RimWidth::parse("6 1/2")?, RimWidth::parse("6,50")?);
/// assert!(RimWidth::parse("6.6").is_err());
/// assert!(RimWidth::parse("150")? < RimWidth::parse("6")?);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RimWidth {
    /// Of a millimetre: both a quarter inch and a millimetre are whole numbers of them. Of the widths that are neither,
    /// the nearest.
    twentieths: u16,
}

/// Widths of motorcycles that are no quarters of an inch, in hundredths of it.
const ODD: [u16; 3] = [160, 185, 215];

/// The nearest twentieths of a millimetre.
const fn odd_twentieths(hundredths: u16) -> u16 {
    ((hundredths as u32 * 508 + 50) / 100) as u16
}

/// A quarter inch.
const QUARTER: u16 = 127;
const MILLIMETRE: u16 = 20;

impl RimWidth {
    /// The widths that are read: 2 to 48 in, from 20 in on for agricultural tires.
    const LEAST: u16 = 2 * 4;
    const MOST: u16 = 48 * 4;

    /// A width of `quarters` quarter inches, if it is from 2 to 48 in.
    ///
    /// ```
    /// use beadseat::rim::RimWidth;
    /// assert_eq!(RimWidth::from_quarters(26), Some(RimWidth::parse("6.5")?));
    /// assert_eq!(RimWidth::from_quarters(7), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn from_quarters(quarters: u16) -> Option<Self> {
        if quarters < Self::LEAST || quarters > Self::MOST {
            return None;
        }
        Some(Self { twentieths: quarters * QUARTER })
    }

    /// Half inches nearest to a width in mm, kept in the range that is read.
    pub(crate) fn nearest_half(mm: f64) -> Self {
        let halves = libm::floor(mm / 12.7 + 0.5);
        let quarters = (2.0 * halves).clamp(f64::from(Self::LEAST), f64::from(Self::MOST));
        Self { twentieths: quarters as u16 * QUARTER }
    }

    #[inline]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let thousandths = tri!(scanner.decimal(Field::RimWidth, 3));
        if thousandths >= 100_000 {
            if thousandths > 300_000 || thousandths % 5_000 != 0 {
                return Err(scanner.range(Field::RimWidth, start));
            }
            return Ok(Self { twentieths: (thousandths / 1000) as u16 * MILLIMETRE });
        }
        let mut i = 0;
        while i < ODD.len() && thousandths % 250 != 0 {
            if thousandths == ODD[i] as i64 * 10 {
                return Ok(Self { twentieths: odd_twentieths(ODD[i]) });
            }
            i += 1;
        }
        let mut quarters = thousandths / 250;
        if thousandths % 250 != 0 {
            return Err(scanner.range(Field::RimWidth, start));
        }
        if thousandths % 1000 == 0 {
            quarters += Self::scan_fraction(scanner);
        }
        match Self::from_quarters(quarters as u16) {
            Some(width) => Ok(width),
            None => Err(scanner.range(Field::RimWidth, start)),
        }
    }

    /// ` 1/2`, `-1/4`, ` 3/4` or `½` behind whole inches, in quarters.
    #[inline]
    const fn scan_fraction(scanner: &mut Scanner<'_>) -> i64 {
        let mut ahead = *scanner;
        if !ahead.eat(b'-') {
            ahead.skip_space();
        }
        let quarters = if ahead.eat_str("1/2") || ahead.eat_str("\u{bd}") {
            2
        } else if ahead.eat_str("1/4") || ahead.eat_str("\u{bc}") {
            1
        } else if ahead.eat_str("3/4") || ahead.eat_str("\u{be}") {
            3
        } else {
            return 0;
        };
        *scanner = ahead;
        quarters
    }

    #[inline]
    pub(crate) fn write(self, text: &mut Text) {
        match (self.millimetres(), self.odd()) {
            (Some(millimetres), _) => text.whole(u32::from(millimetres)),
            (None, Some(hundredths)) => text.millionths(i64::from(hundredths) * 10_000),
            (None, None) => text.millionths(i64::from(self.twentieths / QUARTER) * 250_000),
        };
    }

    /// As [`RimWidth::write`], with two decimals.
    #[cold]
    pub(crate) fn write_hundredths(self, text: &mut Text) {
        let hundredths = u32::from(self.odd().unwrap_or(self.quarters() * 25));
        text.whole(hundredths / 100).byte(b'.');
        text.byte(b'0' + (hundredths / 10 % 10) as u8).byte(b'0' + (hundredths % 10) as u8);
    }

    /// Hundredths of an inch, of a width that is no quarters of it.
    const fn odd(self) -> Option<u16> {
        let mut i = 0;
        while i < ODD.len() && self.twentieths % QUARTER != 0 {
            if self.twentieths == odd_twentieths(ODD[i]) {
                return Some(ODD[i]);
            }
            i += 1;
        }
        None
    }

    /// As [`RimWidth::write`], with quarters as a fraction.
    #[cold]
    pub(crate) fn write_fraction(self, text: &mut Text) {
        let fraction = match self.quarters() % 4 {
            _ if self.twentieths % QUARTER != 0 => return self.write(text),
            0 => return self.write(text),
            1 => " 1/4",
            2 => " 1/2",
            _ => " 3/4",
        };
        text.whole(u32::from(self.quarters() / 4)).str(fraction);
    }

    /// Whole millimetres, of the width of a millimetric rim. (No whole number of them from 100 to 300 in
    /// steps of 5 is a whole number of quarter inches.)
    ///
    /// ```
    /// use beadseat::rim::RimWidth;
    /// assert_eq!(RimWidth::parse("150")?.millimetres(), Some(150));
    /// assert_eq!(RimWidth::parse("6")?.millimetres(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn millimetres(self) -> Option<u16> {
        const LEAST: u16 = 100 * MILLIMETRE;
        if self.twentieths % QUARTER == 0 || self.twentieths < LEAST {
            None
        } else {
            Some(self.twentieths / MILLIMETRE)
        }
    }

    /// The width between the flanges as rim tables print it: to the nearest half millimetre. Source: ETRTO tables,
    /// from memory ([`Citation::RIM_TABLE_WIDTH`](crate::Citation::RIM_TABLE_WIDTH)). The crate computes with
    /// [`RimWidth::length`].
    ///
    /// ```
    /// use beadseat::{rim::RimWidth, units::mm};
    /// assert_eq!(RimWidth::parse("6.5")?.tabulated(), mm(165.0));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn tabulated(self) -> Length {
        const HALF_MILLIMETRE: u16 = MILLIMETRE / 2;
        let halves = (self.twentieths + HALF_MILLIMETRE / 2) / HALF_MILLIMETRE;
        units::mm(halves as f64 / 2.0)
    }

    /// The width in quarter inches: 26 for 6.5 in; of a millimetric rim and of an odd
    /// width of motorcycles, the nearest.
    ///
    /// ```
    /// use beadseat::rim::RimWidth;
    /// assert_eq!(RimWidth::parse("6.5")?.quarters(), 26);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn quarters(self) -> u16 {
        (self.twentieths + QUARTER / 2) / QUARTER
    }

    pub(crate) const fn mm(self) -> f64 {
        match self.odd() {
            Some(hundredths) => hundredths as f64 * 0.254,
            None => self.twentieths as f64 / MILLIMETRE as f64,
        }
    }

    /// In inches.
    pub(crate) const fn inches(self) -> f64 {
        match self.odd() {
            Some(hundredths) => hundredths as f64 / 100.0,
            None => self.twentieths as f64 / (4 * QUARTER) as f64,
        }
    }

    /// The width between the flanges.
    ///
    /// ```
    /// use beadseat::{rim::RimWidth, units::{inches, mm}};
    /// assert_eq!(RimWidth::parse("6.5")?.length(), inches(6.5));
    /// assert_eq!(RimWidth::parse("150")?.length(), mm(150.0));
    /// assert_eq!(RimWidth::parse("1.85")?.length(), inches(1.85));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn length(self) -> Length {
        match self.millimetres() {
            Some(millimetres) => units::mm(millimetres as f64),
            None => units::inches(self.inches()),
        }
    }

    /// Tells how wide it is in mm.
    pub(crate) fn tell_length(self, tell: &mut Teller<'_>) -> f64 {
        if let Some(millimetres) = self.millimetres() {
            let name = format_args!("rim width");
            return tell.given(name, f64::from(millimetres), "mm", Citation::DESIGNATION);
        }
        let inches = tell.given(format_args!("rim width code"), self.inches(), "in", Citation::DESIGNATION);
        tell.worked(format_args!("rim width A"), ("{0} × 25.4", &[inches]), self.mm(), "mm", None)
    }
}

designation!(RimWidth in "beadseat::rim", "5 1/2" => "5.5", wrong "1.5");
