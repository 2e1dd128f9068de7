//! Rim width.

use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// A rim width code: the width between the flanges in inches, in quarters.
///
/// # Syntax
/// `6`, `6.5`, `6,5`, `6.50`, `6 1/2`, `6J` is not one (the letter is the [`Contour`](super::Contour)).
/// `Ord` is by width.
///
/// ```
/// use beadseat::rim::RimWidth;
/// assert_eq!(RimWidth::parse("6 1/2")?, RimWidth::parse("6,50")?);
/// assert!(RimWidth::parse("6.6").is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RimWidth {
    quarters: u8,
}

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
        Some(Self { quarters: quarters as u8 })
    }

    /// Half inches nearest to a width in mm, kept in the range that is read.
    pub(crate) fn nearest_half(mm: f64) -> Self {
        let halves = libm::floor(mm / 12.7 + 0.5);
        let quarters = (2.0 * halves).clamp(f64::from(Self::LEAST), f64::from(Self::MOST));
        Self { quarters: quarters as u8 }
    }

    #[inline]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let thousandths = tri!(scanner.decimal(Field::RimWidth, 3));
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

    /// ` 1/2`, `-1/4`, ` 3/4` behind whole inches, in quarters.
    #[inline]
    const fn scan_fraction(scanner: &mut Scanner<'_>) -> i64 {
        let mut ahead = *scanner;
        if !ahead.eat(b'-') {
            ahead.skip_space();
        }
        let quarters = if ahead.eat_str("1/2") {
            2
        } else if ahead.eat_str("1/4") {
            1
        } else if ahead.eat_str("3/4") {
            3
        } else {
            return 0;
        };
        *scanner = ahead;
        quarters
    }

    #[inline]
    pub(crate) fn write(self, text: &mut Text) {
        text.millionths(i64::from(self.quarters) * 250_000);
    }

    /// The width in quarter inches: 26 for 6.5 in.
    ///
    /// ```
    /// use beadseat::rim::RimWidth;
    /// assert_eq!(RimWidth::parse("6.5")?.quarters(), 26);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn quarters(self) -> u16 {
        self.quarters as u16
    }

    /// The width between the flanges.
    ///
    /// ```
    /// use beadseat::{rim::RimWidth, units::inches};
    /// assert_eq!(RimWidth::parse("6.5")?.length(), inches(6.5));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn length(self) -> Length {
        units::inches(self.quarters as f64 / 4.0)
    }
}

designation!(RimWidth in "beadseat::rim", "5 1/2" => "5.5", wrong "1.5");
