//! What is stamped on a wheel.

use core::num::NonZeroU32;

use crate::order::ordered;
use crate::rim::{Contour, Hump, RimDiameter, RimWidth};
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};
use crate::wheel::{BoltCircle, Bore, Inset, bolt_circle};

/// The size of a wheel: rim width, contour, nominal diameter, hump.
///
/// # Syntax
/// ```text
/// size   = width [ contour ] ( "x" | "-" ) diameter [ hump ]
///        | millimetres "TR" millimetres [ hump ]
/// ```
/// `x` is a one-piece rim, `-` a rim of several pieces (ISO 3911, from memory). The contour may also stand
/// before the width (`J7x16`). A text with the diameter first (`16x7J`) is read too: the contour stands
/// beside the width, and without one the smaller number is the width; an `H` at the end is the hump. Rims in
/// millimetres have `TR` between width and diameter (from memory).
///
/// The contours H, P, S, T and V stand on rims from 5 in and code 16 on. A rim of several pieces without a contour
/// has its canonical width with a fraction, `6 1/2-20`, as no tire has.
///
/// `Ord` is by diameter code, with those in millimetres last, then by width, then by the letters of contour and
/// hump, those without first, and last by the number of pieces.
///
/// Accepted: `7Jx16 H2`, `7 J × 16`, `6 1/2Jx15`, `8.25x22.5`, `16x7`, `150 TR 390 FH`. Refused: `7Jx16.2`,
/// `7x7`, `150x16`.
///
/// ```
/// use beadseat::wheel::WheelSize;
/// let size: WheelSize = "16 x 7 J".parse()?;
/// assert_eq!(size.to_string(), "7Jx16");
/// assert_eq!(size.width().to_string(), "7");
/// assert_eq!("J 7x16".parse(), Ok(size));
/// assert_eq!("150 tr 390 fh".parse::<WheelSize>()?.to_string(), "150TR390 FH");
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
    /// Some size, to be replaced.
    pub(super) const ANY: Self = crate::literal!(WheelSize, "7x16");

    #[inline]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let (width, diameter, multi_piece);
        let mut contour = Contour::scan_before_width(scanner);
        if contour.is_none() && tri!(Self::diameter_comes_first(*scanner)) {
            diameter = tri!(RimDiameter::scan(scanner));
            multi_piece = tri!(Self::scan_separator(scanner));
            width = tri!(RimWidth::scan(scanner));
            let at = scanner.at();
            contour = Self::scan_contour(scanner);
            // Behind all of a size `H` is the hump.
            if matches!(contour, Some(Contour::H)) {
                scanner.back_to(at);
                contour = None;
            }
        } else {
            width = tri!(RimWidth::scan(scanner));
            if width.millimetres().is_some() {
                return Self::scan_millimetric(scanner, width, start);
            }
            if contour.is_none() {
                contour = Self::scan_contour(scanner);
            }
            multi_piece = tri!(Self::scan_separator(scanner));
            diameter = tri!(RimDiameter::scan(scanner));
        }
        if diameter.is_in_millimetres() || width.millimetres().is_some() {
            return Err(scanner.range(Field::RimDiameter, start));
        }
        // A road rim is never as wide as it is high.
        if width.quarters() * 10 >= diameter.tenths() * 4 {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::RimWidth, start));
        }
        if let Some(contour) = contour {
            let is_truck = width.quarters() >= 20 && diameter.tenths() >= 160;
            if contour.is_of_trucks() && !is_truck {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::Contour, start));
            }
        }
        let hump = Self::scan_hump(scanner);
        Ok(Self { diameter, width, contour, hump, multi_piece })
    }

    /// `TR` and the diameter, behind a width in millimetres.
    #[cold]
    const fn scan_millimetric(
        scanner: &mut Scanner<'_>,
        width: RimWidth,
        start: usize,
    ) -> Result<Self, ParseError> {
        scanner.skip_space();
        if !scanner.eat_str("TR") {
            return Err(scanner.missing(Field::RimDiameter));
        }
        scanner.skip_space();
        let at = scanner.at();
        let diameter = tri!(RimDiameter::scan(scanner));
        if !diameter.is_in_millimetres() {
            return Err(scanner.range(Field::RimDiameter, at));
        }
        if matches!(width.millimetres(), Some(width) if width >= diameter.whole_mm()) {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::RimWidth, start));
        }
        let hump = Self::scan_hump(scanner);
        Ok(Self { diameter, width, contour: None, hump, multi_piece: false })
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
        match self.contour {
            Some(contour) => {
                self.width.write(text);
                contour.write(text);
            }
            // With a point it could be a tire.
            None if self.multi_piece => self.width.write_fraction(text),
            None => self.width.write(text),
        }
        match (self.width.millimetres(), self.multi_piece) {
            (Some(_), _) => text.str("TR"),
            (None, true) => text.byte(b'-'),
            (None, false) => text.byte(b'x'),
        };
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

ordered!(WheelSize, |size| (
    size.diameter,
    size.width,
    size.contour.map(Contour::mark),
    size.hump.map(Hump::mark),
    size.multi_piece,
));
designation!(WheelSize in "beadseat::wheel", "6 1/2 J × 16 h2" => "6.5Jx16 H2", wrong "7Jx16.2");

/// A wheel: size, inset, bolt circle, centre bore.
///
/// # Syntax
/// ```text
/// wheel   = size { inset | circles | bore }        each at most once, in any order
/// circles = bolt circle [ "/" ( diameter | bolt circle | bore ) ]
/// ```
/// A wheel that is drilled for two circles has the second behind a stroke, `5x100/114.3`, or beside the
/// first, `5x100 5x114.3`; both have as many holes. A number behind the stroke that is at most 0.86 of the circle is
/// the bore, `5x112/66.6`, and another smaller one is refused as ambiguous: `5x120/5x112` says which it is. The
/// canonical form is in that order. See [`WheelSize`],
/// [`Inset`], [`BoltCircle`], [`Bore`].
///
/// `Ord` is by size, inset, bolt circle, bore and second circle; what is not stamped comes first.
///
/// A bolt circle that is not smaller than the rim, or a bore that is not smaller than the bolt circle, is refused.
///
/// ```
/// use beadseat::wheel::Wheel;
/// let wheel: Wheel = "7Jx16 H2 57.1 5×112 ET45".parse()?;
/// assert_eq!(wheel.to_string(), "7Jx16 H2 ET45 5x112 57.1");
/// assert_eq!(wheel.bolt_circle(), Some("5x112".parse()?));
/// assert!("7Jx16 ET45 ET40".parse::<Wheel>().is_err());
/// assert!("7Jx16 5x112 114".parse::<Wheel>().is_err());
/// let drilled_twice: Wheel = "6Jx15 4x100 4x4.5in ET38".parse()?;
/// assert_eq!(drilled_twice.to_string(), "6Jx15 ET38 4x100/114.3");
/// assert_eq!(drilled_twice.second_bolt_circle(), Some("4x114.3".parse()?));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Wheel {
    size: WheelSize,
    inset: Option<Inset>,
    bolt_circle: Option<BoltCircle>,
    bore: Option<Bore>,
    /// The diameter of a second circle, in nanometres.
    second: Option<NonZeroU32>,
}

impl Wheel {
    #[inline]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let mut wheel = Self::of_size(tri!(WheelSize::scan(scanner)));
        while tri!(wheel.scan_part(scanner)) {}
        wheel.checked(scanner, start)
    }

    /// The same, if the bore is inside the holes, and these inside the rim.
    #[inline]
    pub(super) const fn checked(self, scanner: &Scanner<'_>, start: usize) -> Result<Self, ParseError> {
        const NANOMETRES: u32 = 1_000_000;
        let rim = self.size.diameter.whole_mm() as u32 * NANOMETRES;
        let (mut least, mut most) = (rim, 0);
        if let Some(first) = self.bolt_circle {
            (least, most) = (first.nanometres(), first.nanometres());
            if let Some(second) = self.second {
                let second = second.get();
                if second < least { least = second } else { most = second }
            }
        }
        if most >= rim {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::BoltCircle, start));
        }
        match self.bore {
            Some(bore) if bore.nanometres() >= least => {
                Err(scanner.error(ParseErrorKind::Contradiction, Field::Bore, start))
            }
            _ => Ok(self),
        }
    }

    /// The same with another size.
    pub(super) const fn with_size(self, size: WheelSize) -> Self {
        Self { size, ..self }
    }

    pub(super) const fn of_size(size: WheelSize) -> Self {
        Self { size, inset: None, bolt_circle: None, bore: None, second: None }
    }

    /// What may stand beside the size; false where nothing more of it does.
    #[inline]
    pub(super) const fn scan_part(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        scanner.skip_space();
        // A sign without a space is no inset: `25x8-12` is a tire.
        if Inset::is_next(scanner) && (scanner.is_apart() || scanner.byte().is_ascii_alphabetic()) {
            if self.inset.is_some() {
                return Ok(false);
            }
            self.inset = Some(tri!(Inset::scan(scanner)));
        } else if bolt_circle::is_next(scanner) {
            return self.scan_circle(scanner);
        } else if Bore::is_next(scanner) {
            if self.bore.is_some() {
                return Ok(false);
            }
            self.bore = Some(tri!(Bore::scan(scanner)));
        } else {
            return Ok(false);
        }
        Ok(true)
    }

    /// A first circle with a second behind a stroke, or a second.
    const fn scan_circle(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        let at = scanner.at();
        let second = match (self.bolt_circle, self.second) {
            (Some(first), None) => {
                let second = tri!(BoltCircle::scan(scanner));
                tri!(first.differs_in_diameter_only(second, scanner, at))
            }
            (Some(_), Some(_)) => return Ok(false),
            (None, _) => {
                let first = tri!(BoltCircle::scan(scanner));
                self.bolt_circle = Some(first);
                let mut ahead = *scanner;
                ahead.skip_space();
                if !ahead.eat(b'/') {
                    return Ok(true);
                }
                *scanner = ahead;
                scanner.skip_space();
                let mut behind = *scanner;
                if let Some(bore) = tri!(scan_bore_behind(first, &mut behind, at)) {
                    if self.bore.is_some() {
                        return Ok(false);
                    }
                    *scanner = behind;
                    self.bore = Some(bore);
                    return Ok(true);
                }
                tri!(first.scan_second(scanner))
            }
        };
        self.second = NonZeroU32::new(second.nanometres());
        Ok(true)
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
        if let Some(second) = self.second_bolt_circle() {
            text.byte(b'/');
            // A smaller number alone would be a bore.
            if self.bolt_circle.is_some_and(|first| second.nanometres() < first.nanometres()) {
                second.write(text);
            } else {
                second.write_diameter(text);
            }
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

    /// The same with the holes and the bore of a hub where it says nothing of them and they belong on it.
    pub(crate) fn or_as_bought(self, holes: Option<BoltCircle>, bore: Option<Bore>) -> Self {
        let wheel = Self { bolt_circle: self.bolt_circle.or(holes), bore: self.bore.or(bore), ..self };
        // Read again, so that no wheel is made which cannot be.
        let mut text = Text::new();
        wheel.write(&mut text);
        Self::parse(text.as_str()).unwrap_or(self)
    }

    /// The same with another inset.
    pub(crate) const fn with_inset(self, inset: Inset) -> Self {
        Self { inset: Some(inset), ..self }
    }

    /// The bolt circle, if stamped.
    pub const fn bolt_circle(&self) -> Option<BoltCircle> {
        self.bolt_circle
    }

    /// The second bolt circle of a wheel that is drilled for two.
    ///
    /// ```
    /// use beadseat::wheel::Wheel;
    /// let wheel = Wheel::parse("6.5Jx15 5x100/114.3")?;
    /// assert_eq!(wheel.second_bolt_circle(), Some("5x114.3".parse()?));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn second_bolt_circle(&self) -> Option<BoltCircle> {
        match (self.bolt_circle, self.second) {
            (Some(first), Some(nanometres)) => Some(first.with_diameter(nanometres.get())),
            _ => None,
        }
    }

    /// The centre bore, if stamped.
    pub const fn bore(&self) -> Option<Bore> {
        self.bore
    }
}

/// The bore behind the stroke of a bolt circle that began at `at`, if a bare number so small stands here.
///
/// # Errors
/// For a number that could be a bore or a second circle.
const fn scan_bore_behind(
    circle: BoltCircle,
    scanner: &mut Scanner<'_>,
    at: usize,
) -> Result<Option<Bore>, ParseError> {
    if bolt_circle::is_next(scanner) {
        return Ok(None);
    }
    match Bore::scan(scanner) {
        Ok(bore) if bore.is_inside(circle) => Ok(Some(bore)),
        Ok(bore) if bore.nanometres() < circle.nanometres() => {
            Err(scanner.error(ParseErrorKind::Ambiguous, Field::BoltCircle, at))
        }
        _ => Ok(None),
    }
}

designation!(Wheel in "beadseat::wheel", "7 j x 16 h2 et 45" => "7Jx16 H2 ET45", wrong "7Jx16 ET45 5x112 4x100");
