//! What is stamped on a wheel.

use super::{BoltCircle, Bore, Inset};
use crate::rim::{Contour, Hump, RimDiameter, RimWidth, SeatTaper};
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};

/// The size of a wheel: rim width, contour, nominal diameter, hump.
///
/// # Syntax
/// ```text
/// size = width [ contour ] ( "x" | "-" ) diameter [ hump ]
/// ```
/// `x` is a one-piece rim, `-` a rim of several pieces. A text with the diameter first (`16x7J`) is read
/// too: the contour stands beside the width, and without one the smaller number is the width.
///
/// Accepted: `7Jx16 H2`, `7 J × 16`, `6 1/2Jx15`, `8.25x22.5`, `16x7`. Refused: `7Jx16.2`, `7x7`.
///
/// ```
/// use beadseat::wheel::WheelSize;
/// let size: WheelSize = "16 x 7 J".parse()?;
/// assert_eq!(size.to_string(), "7Jx16");
/// assert_eq!(size.width().to_string(), "7");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct WheelSize {
    diameter: RimDiameter,
    width: RimWidth,
    contour: Option<Contour>,
    hump: Option<Hump>,
    multi_piece: bool,
}

impl WheelSize {
    #[inline]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let (width, diameter, contour, multi_piece);
        if tri!(Self::diameter_comes_first(*scanner)) {
            diameter = tri!(RimDiameter::scan(scanner));
            multi_piece = tri!(Self::scan_separator(scanner));
            width = tri!(RimWidth::scan(scanner));
            contour = Self::scan_contour(scanner);
        } else {
            width = tri!(RimWidth::scan(scanner));
            contour = Self::scan_contour(scanner);
            multi_piece = tri!(Self::scan_separator(scanner));
            diameter = tri!(RimDiameter::scan(scanner));
        }
        if matches!(diameter.seat_taper(), SeatTaper::Millimetric) {
            return Err(scanner.range(Field::RimDiameter, start));
        }
        // A road rim is never as wide as it is high.
        if width.quarters() * 10 >= diameter.tenths() * 4 {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::RimWidth, start));
        }
        let hump = Self::scan_hump(scanner);
        Ok(Self { diameter, width, contour, hump, multi_piece })
    }

    #[inline]
    const fn diameter_comes_first(mut ahead: Scanner<'_>) -> Result<bool, ParseError> {
        let first = tri!(ahead.decimal(Field::RimWidth, 3));
        ahead.skip_space();
        if !ahead.eat_times() {
            return Ok(false);
        }
        ahead.skip_space();
        let second = tri!(ahead.decimal(Field::RimDiameter, 3));
        Ok(second < first)
    }

    #[inline]
    const fn scan_contour(scanner: &mut Scanner<'_>) -> Option<Contour> {
        let at = scanner.at();
        scanner.skip_space();
        if let Ok(contour) = Contour::scan(scanner) {
            return Some(contour);
        }
        scanner.back_to(at);
        None
    }

    #[inline]
    const fn scan_hump(scanner: &mut Scanner<'_>) -> Option<Hump> {
        let at = scanner.at();
        scanner.skip_space();
        if let Ok(hump) = Hump::scan(scanner) {
            return Some(hump);
        }
        scanner.back_to(at);
        None
    }

    /// `x` is one piece (false), `-` several (true).
    #[inline]
    const fn scan_separator(scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        scanner.skip_space();
        let multi_piece = if scanner.eat_times() {
            false
        } else if scanner.eat(b'-') {
            true
        } else {
            return Err(scanner.missing(Field::RimDiameter));
        };
        scanner.skip_space();
        Ok(multi_piece)
    }

    #[inline]
    pub(crate) fn write(&self, text: &mut Text) {
        self.width.write(text);
        if let Some(contour) = self.contour {
            contour.write(text);
        }
        text.byte(if self.multi_piece { b'-' } else { b'x' });
        self.diameter.write(text);
        if let Some(hump) = self.hump {
            text.byte(b' ');
            hump.write(text);
        }
    }

    /// The rim width.
    pub const fn width(&self) -> RimWidth {
        self.width
    }

    /// The nominal rim diameter.
    pub const fn diameter(&self) -> RimDiameter {
        self.diameter
    }

    /// The contour, if stamped.
    pub const fn contour(&self) -> Option<Contour> {
        self.contour
    }

    /// The humps, if stamped.
    pub const fn hump(&self) -> Option<Hump> {
        self.hump
    }

    /// Whether the rim is made of several pieces. Source: ISO 3911, from memory.
    ///
    /// ```
    /// use beadseat::wheel::WheelSize;
    /// assert!(WheelSize::parse("7.0-20")?.is_multi_piece());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_multi_piece(&self) -> bool {
        self.multi_piece
    }
}

designation!(WheelSize in "beadseat::wheel", "6 1/2 J × 16 h2" => "6.5Jx16 H2", wrong "7Jx16.2");

/// A wheel: size, inset, bolt circle, centre bore.
///
/// # Syntax
/// ```text
/// wheel = size { inset | bolt circle | bore }      each at most once, in any order
/// ```
/// The canonical form is in that order. See [`WheelSize`], [`Inset`], [`BoltCircle`], [`Bore`].
///
/// ```
/// use beadseat::wheel::Wheel;
/// let wheel: Wheel = "7Jx16 H2 57.1 5×112 ET45".parse()?;
/// assert_eq!(wheel.to_string(), "7Jx16 H2 ET45 5x112 57.1");
/// assert_eq!(wheel.bolt_circle(), Some("5x112".parse()?));
/// assert!("7Jx16 ET45 ET40".parse::<Wheel>().is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Wheel {
    size: WheelSize,
    inset: Option<Inset>,
    bolt_circle: Option<BoltCircle>,
    bore: Option<Bore>,
}

impl Wheel {
    #[inline]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let size = tri!(WheelSize::scan(scanner));
        let mut wheel = Self { size, inset: None, bolt_circle: None, bore: None };
        loop {
            scanner.skip_space();
            if Inset::is_next(scanner) {
                if wheel.inset.is_some() {
                    return Ok(wheel);
                }
                wheel.inset = Some(tri!(Inset::scan(scanner)));
            } else if scanner.at_digit() || scanner.peek(0) == b'C' {
                if is_bolt_circle(*scanner) {
                    if wheel.bolt_circle.is_some() {
                        return Ok(wheel);
                    }
                    wheel.bolt_circle = Some(tri!(BoltCircle::scan(scanner)));
                } else {
                    if wheel.bore.is_some() {
                        return Ok(wheel);
                    }
                    wheel.bore = Some(tri!(Bore::scan(scanner)));
                }
            } else {
                return Ok(wheel);
            }
        }
    }

    #[inline]
    pub(crate) fn write(&self, text: &mut Text) {
        self.size.write(text);
        if let Some(inset) = self.inset {
            text.byte(b' ');
            inset.write(text);
        }
        if let Some(bolt_circle) = self.bolt_circle {
            text.byte(b' ');
            bolt_circle.write(text);
        }
        if let Some(bore) = self.bore {
            text.byte(b' ');
            bore.write(text);
        }
    }

    /// Width, contour, diameter, hump.
    pub const fn size(&self) -> WheelSize {
        self.size
    }

    /// The inset, if stamped.
    pub const fn inset(&self) -> Option<Inset> {
        self.inset
    }

    /// The bolt circle, if stamped.
    pub const fn bolt_circle(&self) -> Option<BoltCircle> {
        self.bolt_circle
    }

    /// The centre bore, if stamped.
    pub const fn bore(&self) -> Option<Bore> {
        self.bore
    }
}

/// Whether the digits here are a hole count, that is, followed by a multiplication sign or the like.
const fn is_bolt_circle(mut ahead: Scanner<'_>) -> bool {
    ahead.skip_digits();
    if ahead.peek(0) == b'-' || ahead.peek(0) == b'/' {
        return true;
    }
    ahead.skip_space();
    ahead.eat_times()
}

designation!(Wheel in "beadseat::wheel", "7 j x 16 h2 et 45" => "7Jx16 H2 ET45", wrong "7Jx16 ET45 5x112 5x100");
