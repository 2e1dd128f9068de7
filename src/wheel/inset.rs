//! Where the rim stands beside the hub face.
//!
//! Everything here is measured along the spindle, positive outboard, from the hub face.

use super::phrase;
use crate::exact::Exact;
use crate::rim::RimWidth;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length, in_mm};
use crate::{OutOfRange, Toleranced};

/// The inset of a wheel: how far the middle of the rim lies inboard of the mounting face. Negative is
/// outset. The everyday word is *offset*.
///
/// # Syntax
/// `ET45`, `ET 45`, `ET-12`, `IS45`, `OS12` (outset), `+45`, `-12`; millimetres, −300 to 300. Canonical
/// `ET45`. `Ord` is by inset.
///
/// ```
/// use beadseat::{rim::RimWidth, units::mm, wheel::Inset};
/// let inset: Inset = "ET45".parse()?;
/// assert_eq!("OS 12,5".parse::<Inset>()?.to_string(), "ET-12.5");
/// // Backspacing is measured over the flange, so it needs the flange width: 82.55 + 45 + 12.7.
/// let backspacing = inset.backspacing(RimWidth::parse("6.5")?, mm(12.7));
/// assert!((backspacing - mm(140.25)).abs() < mm(1e-9));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[doc(alias = "offset")]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Inset(Exact);

impl Inset {
    /// Whether an inset begins here.
    pub(crate) const fn is_next(scanner: &Scanner<'_>) -> bool {
        matches!(
            (scanner.peek(0), scanner.peek(1)),
            (b'E', b'T') | (b'I', b'S') | (b'O', b'S') | (b'+' | b'-', b'0'..=b'9')
        ) || (scanner.peek(0) == 0xE2 && scanner.peek(1) == 0x88 && scanner.peek(2) == 0x92)
    }

    #[inline]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let outset = scanner.eat_str("OS");
        if !outset {
            let _ = scanner.eat_str("ET") || scanner.eat_str("IS");
        }
        scanner.skip_space();
        // U+2212 is the minus of a printed page.
        let negative = scanner.eat(b'-') || scanner.eat_str("\u{2212}");
        if !negative {
            scanner.eat(b'+');
        }
        scanner.skip_space();
        let size = tri!(Exact::scan_mm(scanner, Field::Inset, 0, 300)).nm();
        let mut ahead = *scanner;
        ahead.skip_space();
        if ahead.eat_word("MM") {
            *scanner = ahead;
        }
        Ok(Self(Exact::from_nm(if negative != outset { -size } else { size })))
    }

    /// A number as people write an inset, behind its word or before it: `offset 35`, `35 offset`, `zero offset`.
    pub(super) const fn scan_phrase(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut ahead = *scanner;
        if phrase::eat_zero_offset(&mut ahead) {
            *scanner = ahead;
            return Some(Self(Exact::from_nm(0)));
        }
        let outset = phrase::eat_inset_word(&mut ahead);
        // The strict form reads the sign, the number and its unit.
        let Ok(mut inset) = Self::scan(&mut ahead) else { return None };
        match outset {
            Some(outset) => {
                if outset {
                    inset = Self(Exact::from_nm(-inset.0.nm()));
                }
            }
            None => match phrase::eat_inset_word_behind(&mut ahead) {
                Some(true) => inset = Self(Exact::from_nm(-inset.0.nm())),
                Some(false) => {}
                None => return None,
            },
        }
        *scanner = ahead;
        Some(inset)
    }

    #[inline]
    pub(crate) fn write(&self, text: &mut Text) {
        text.str("ET");
        self.0.write_mm(text);
    }

    /// The inset as a length.
    pub const fn length(&self) -> Length {
        self.0.length()
    }

    /// The nearest inset to a length.
    ///
    /// # Errors
    /// Outside ± 300 mm.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Inset};
    /// assert_eq!(Inset::from_length(mm(-44.0))?.to_string(), "ET-44");
    /// assert!(Inset::from_length(mm(f64::NAN)).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn from_length(length: Length) -> Result<Self, OutOfRange> {
        let mm = OutOfRange::check("inset", in_mm(length), "mm", -300.0, 300.0)?;
        Ok(Self(Exact::nearest(units::mm(mm)).unwrap_or(Exact::from_nm(0))))
    }

    /// The inset of so many nanometres, no more than 300 million.
    #[cfg(feature = "alloc")]
    pub(crate) const fn from_nm(nm: i32) -> Self {
        Self(Exact::from_nm(nm))
    }

    /// The inset in nanometres.
    #[cfg(feature = "alloc")]
    pub(crate) const fn nm(self) -> i32 {
        self.0.nm()
    }

    /// The inset of so many hundredths of a millimetre, no more than 30 000.
    pub(crate) const fn from_hundredths(hundredths: i32) -> Self {
        Self(Exact::from_nm(hundredths * 10_000))
    }

    /// The hundredths of a millimetre at or below it.
    pub(crate) const fn hundredths(self) -> i32 {
        self.0.nm().div_euclid(10_000)
    }

    /// Hub face to inner rim edge, `W/2 + e + f`, for a flange `f` wide.
    pub fn backspacing(&self, width: RimWidth, flange: Length) -> Length {
        width.length() / 2.0 + self.length() + flange
    }

    /// Hub face to outer rim edge, `W/2 − e + f`.
    ///
    /// ```
    /// use beadseat::{rim::RimWidth, units::mm, wheel::Inset};
    /// let frontspacing = Inset::parse("ET45")?.frontspacing(RimWidth::parse("6.5")?, mm(12.7));
    /// assert!((frontspacing - mm(50.25)).abs() < mm(1e-9));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn frontspacing(&self, width: RimWidth, flange: Length) -> Length {
        width.length() / 2.0 - self.length() + flange
    }

    /// The inset of a wheel whose backspacing was measured.
    ///
    /// # Errors
    /// If it comes out beyond ± 300 mm.
    ///
    /// ```
    /// use beadseat::{rim::RimWidth, units::{inches, mm}, wheel::Inset};
    /// let inset = Inset::from_backspacing(RimWidth::parse("9")?, inches(3.5), mm(12.7))?;
    /// assert_eq!(inset.to_string(), "ET-38.1");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_backspacing(
        width: RimWidth,
        backspacing: Length,
        flange: Length,
    ) -> Result<Self, OutOfRange> {
        Self::from_length(backspacing - width.length() / 2.0 - flange)
    }
}

designation!(Inset in "beadseat::wheel", "is 38,5" => "ET38.5", wrong "ET301");

/// The edges of a mounted rim, outboard of the hub face.
///
/// ```
/// use beadseat::{rim::{Contour, RimWidth}, units::mm, wheel::{Inset, RimEdges}};
/// let edges = RimEdges::of(RimWidth::parse("7")?, Inset::parse("ET45")?, mm(5.0), Contour::J.flange_width());
/// assert!((edges.centre() - mm(-40.0)).abs() < mm(1e-9));
/// assert!((edges.outer().nominal() - mm(61.6)).abs() < mm(1e-9));
/// assert!((edges.inner().nominal() - mm(-141.6)).abs() < mm(1e-9));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RimEdges {
    centre: Length,
    half: Toleranced<Length>,
}

impl RimEdges {
    /// Edges of a rim of a width and inset behind a spacer, with flanges of a width.
    pub fn of(width: RimWidth, inset: Inset, spacer: Length, flange: Toleranced<Length>) -> Self {
        Self { centre: spacer - inset.length(), half: Toleranced::exact(width.length() / 2.0) + flange }
    }

    /// The middle of the rim, `s − e`.
    pub const fn centre(&self) -> Length {
        self.centre
    }

    /// The outer edge, `s − e + W/2 + f`.
    pub fn outer(&self) -> Toleranced<Length> {
        Toleranced::exact(self.centre) + self.half
    }

    /// The inner edge, `s − e − W/2 − f`.
    pub fn inner(&self) -> Toleranced<Length> {
        Toleranced::exact(self.centre) - self.half
    }

    /// What moves from these edges to others, at nominal flanges.
    ///
    /// ```
    /// use beadseat::{rim::{Contour, RimWidth}, units::mm, wheel::{Inset, RimEdges}};
    /// let edges = |width: &str, inset: &str| Ok::<_, beadseat::ParseError>(RimEdges::of(
    ///     RimWidth::parse(width)?, Inset::parse(inset)?, mm(0.0), Contour::J.flange_width(),
    /// ));
    /// let change = edges("6.5", "ET45")?.change_to(&edges("8", "ET35")?);
    /// assert!((change.centre() - mm(10.0)).abs() < mm(1e-9));
    /// assert!((change.outboard() - mm(29.05)).abs() < mm(1e-9));
    /// assert!((change.inboard() - mm(9.05)).abs() < mm(1e-9));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn change_to(&self, other: &Self) -> EdgeChange {
        EdgeChange {
            centre: other.centre() - self.centre(),
            outboard: other.outer().nominal() - self.outer().nominal(),
            inboard: self.inner().nominal() - other.inner().nominal(),
        }
    }
}

/// How far the rim of a wheel moves and grows from one wheel to another: `d = Δs − Δe`, outboard
/// `ΔW/2 + d`, inboard `ΔW/2 − d`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeChange {
    centre: Length,
    outboard: Length,
    inboard: Length,
}

impl EdgeChange {
    /// How far the middle moves outboard.
    pub const fn centre(&self) -> Length {
        self.centre
    }

    /// How much further outboard the outer edge is.
    pub const fn outboard(&self) -> Length {
        self.outboard
    }

    /// How much further inboard the inner edge is.
    pub const fn inboard(&self) -> Length {
        self.inboard
    }
}
