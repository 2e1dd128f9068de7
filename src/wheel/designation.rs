//! What is stamped on a wheel.

use core::num::NonZeroU32;

use super::phrase;
use crate::Toleranced;
use crate::order::ordered;
use crate::rim::{CodeOf, Contour, Hump, RimDiameter, RimSeries, RimWidth, SeatTaper};
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};
use crate::units::{self, Length};
use crate::wheel::{Backspacing, BoltCircle, Bore, Inset, bolt_circle};

/// The size of a wheel: rim width, contour, nominal diameter, hump.
///
/// # Syntax
/// ```text
/// size   = [ series ] width [ contour ] ( "x" | "-" ) diameter [ hump ]
///        | millimetres "TR" millimetres [ hump ]
///        | width "-" diameter "/" flange
/// series = "W" | "DW" | "MT" | "WM"
/// flange = 1 to 6 in, in tenths
/// ```
/// `x` is a one-piece rim, `-` a rim of several pieces (ISO 3911, from memory). The contour may also stand
/// before the width (`J7x16`). A text with the diameter first (`16x7J`) is read too: the contour stands
/// beside the width, and without one the smaller number is the width; an `H` at the end is the hump. Rims in
/// millimetres have `TR` between width and diameter (from memory); `150x390 TR` is read too. Inch signs may stand behind
/// the numbers (`17" x 8"`), and between `J` or `JJ` and the diameter nothing (`8J17`).
///
/// [`RimSeries`] stand with `x`: `W` and `DW` on rims of tractors and implements too, `MT` and `WM` on rims of
/// motorcycles, code 8 to 23, whose diameter may stand first: `17M/CxMT2.50`. Rims of earthmovers name the height of
/// their flange, and may be as wide as they are high, on codes from 20 on. Rims of implements have `x`.
///
/// The contours H, P, S, T and V stand on rims from 5 in and code 16 on. A rim of several pieces without a contour
/// has its canonical width with a fraction, `6 1/2-20`, as no tire has.
///
/// `Ord` is by diameter code, with those in millimetres last, then by width, then by the letters of contour and
/// hump, those without first, by the number of pieces and series, and last by the flange.
///
/// Accepted: `7Jx16 H2`, `7 J × 16`, `6 1/2Jx15`, `8.25x22.5`, `16x7`, `150 TR 390 FH`, `MT2.50x17`, `WM2x18`, `W15Lx28`,
/// `17.00-25/1.7`, `17" x 8"`, `8J17`. Refused: `7Jx16.2`, `7x7`, `150x16`, `WM7x18`, `MT3-17`, `7K17`, `17.00x25/1.7`.
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
    build: Build,
    /// Of the height, in inches; 0 where none is stamped.
    flange_tenths: u8,
}

/// Of how many pieces, and of which series one of one piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
enum Build {
    OnePiece,
    MultiPiece,
    Series(RimSeries),
}

impl Build {
    const fn place(self) -> u8 {
        match self {
            Self::OnePiece => 0,
            Self::MultiPiece => 1,
            Self::Series(series) => 2 + series as u8,
        }
    }
}

/// An inch sign behind a number.
#[inline(always)]
const fn skip_inch_sign(scanner: &mut Scanner<'_>) {
    let next = if scanner.byte() == b' ' { scanner.peek(1) } else { scanner.byte() };
    if matches!(next, b'"' | b'\t'..=b' ' | b'i' | b'I' | 0x80..) {
        // A copy goes there by reference, so that the scanner itself need not be in memory.
        let mut ahead = *scanner;
        if scan_inch_sign(&mut ahead) {
            *scanner = ahead;
        }
    }
}

#[inline(never)]
const fn scan_inch_sign(scanner: &mut Scanner<'_>) -> bool {
    scanner.skip_space();
    scanner.eat(b'"')
        || scanner.eat_str("\u{2033}")
        || scanner.eat_str("\u{201d}")
        || scanner.eat_mark("IN")
        || scanner.eat_mark("INCH")
}

impl WheelSize {
    /// Some size, to be replaced.
    pub(super) const ANY: Self = crate::literal!(WheelSize, "7x16");

    #[inline]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        if !scanner.at_digit() {
            let mut behind = *scanner;
            if let Some(series) = RimSeries::scan_before_width(&mut behind) {
                let size = Self::scan_series(&mut behind, series, None, start);
                *scanner = behind;
                return size;
            }
        }
        let (width, diameter, diameter_error, multi_piece);
        let mut contour = Contour::scan_before_width(scanner);
        if contour.is_none() && tri!(Self::diameter_comes_first(*scanner)) {
            diameter = tri!(RimDiameter::scan_any(scanner));
            diameter_error = scanner.range(Field::RimDiameter, start);
            skip_inch_sign(scanner);
            let mut behind = *scanner;
            if let Some(series) = Self::scan_series_behind(&mut behind) {
                let size = Self::scan_series(&mut behind, series, Some(diameter), start);
                *scanner = behind;
                return size;
            }
            multi_piece = tri!(Self::scan_separator(scanner));
            width = tri!(RimWidth::scan(scanner));
            if width.millimetres().is_some() && diameter.is_in_millimetres() {
                return Self::of_millimetric(scanner, width, diameter, start);
            }
            skip_inch_sign(scanner);
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
            skip_inch_sign(scanner);
            if contour.is_none() {
                contour = Self::scan_contour(scanner);
            }
            let joined = match contour {
                None => Contour::scan_before_diameter(scanner),
                Some(Contour::J | Contour::Jj) => {
                    scanner.skip_space();
                    if scanner.at_digit() { contour } else { None }
                }
                Some(_) => None,
            };
            if joined.is_some() {
                contour = joined;
                multi_piece = false;
            } else {
                multi_piece = tri!(Self::scan_separator(scanner));
            }
            let at = scanner.at();
            diameter = tri!(RimDiameter::scan_any(scanner));
            diameter_error = scanner.range(Field::RimDiameter, at);
            skip_inch_sign(scanner);
        }
        if diameter.is_in_millimetres() || width.millimetres().is_some() {
            return Err(scanner.range(Field::RimDiameter, start));
        }
        let mut size =
            Self { diameter, width, contour, hump: None, build: Build::OnePiece, flange_tenths: 0 };
        if multi_piece {
            size.build = Build::MultiPiece;
            let mut behind = *scanner;
            behind.skip_space();
            if behind.is_at(b'/') {
                let size = size.scan_flange(&mut behind, start);
                *scanner = behind;
                return size;
            }
        }
        let has_code = match diameter.of() {
            CodeOf::Road => true,
            CodeOf::Implement => !multi_piece,
            CodeOf::Small | CodeOf::Agricultural | CodeOf::Earthmover => false,
        };
        if !has_code {
            return Err(diameter_error);
        }
        size = tri!(size.can_be(scanner, start));
        size.hump = Self::scan_hump(scanner);
        Ok(size)
    }

    /// A rim of one piece for the road, if there is such a one.
    #[inline]
    pub(super) const fn of(
        width: RimWidth,
        contour: Option<Contour>,
        diameter: RimDiameter,
        scanner: &Scanner<'_>,
        start: usize,
    ) -> Result<Self, ParseError> {
        if diameter.is_in_millimetres()
            || width.millimetres().is_some()
            || !matches!(diameter.of(), CodeOf::Road)
        {
            return Err(scanner.range(Field::RimDiameter, start));
        }
        let build = Build::OnePiece;
        Self { diameter, width, contour, hump: None, build, flange_tenths: 0 }.can_be(scanner, start)
    }

    /// The same, if there is such a rim.
    #[inline]
    const fn can_be(self, scanner: &Scanner<'_>, start: usize) -> Result<Self, ParseError> {
        let Self { width, diameter, .. } = self;
        // A road rim is never as wide as it is high.
        if width.quarters() * 10 >= diameter.tenths() * 4 {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::RimWidth, start));
        }
        if let Some(contour) = self.contour {
            let is_truck = width.quarters() >= 20 && diameter.tenths() >= 160;
            let has_steep_seats = matches!(diameter.seat_taper(), SeatTaper::FifteenDegree);
            if contour.is_of_trucks() && !is_truck || matches!(contour, Contour::Hc) && !has_steep_seats {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::Contour, start));
            }
        }
        Ok(self)
    }

    /// The height of the flange, behind all of a rim of earthmovers.
    #[cold]
    const fn scan_flange(self, scanner: &mut Scanner<'_>, start: usize) -> Result<Self, ParseError> {
        if !matches!(self.diameter.of(), CodeOf::Road | CodeOf::Earthmover) || self.diameter.tenths() < 200 {
            return Err(scanner.range(Field::RimDiameter, start));
        }
        scanner.step(1);
        scanner.skip_space();
        let at = scanner.at();
        let tenths = tri!(scanner.decimal(Field::FlangeHeight, 1));
        if tenths < 10 || tenths > 60 {
            return Err(scanner.range(Field::FlangeHeight, at));
        }
        if self.contour.is_some() || self.width.quarters() < 20 {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::FlangeHeight, start));
        }
        Ok(Self { flange_tenths: tenths as u8, ..self })
    }

    /// `M/C` and a series of motorcycles behind the diameter and `x`.
    #[inline(never)]
    const fn scan_series_behind(scanner: &mut Scanner<'_>) -> Option<RimSeries> {
        scanner.skip_space();
        scanner.eat_mark("M/C");
        scanner.skip_space();
        if !scanner.eat_times() {
            return None;
        }
        scanner.skip_space();
        if scanner.at_digit() { None } else { RimSeries::scan_before_width(scanner) }
    }

    /// What stands behind a series, and the diameter too where it did not stand in front.
    #[cold]
    const fn scan_series(
        scanner: &mut Scanner<'_>,
        series: RimSeries,
        diameter: Option<RimDiameter>,
        start: usize,
    ) -> Result<Self, ParseError> {
        let width = tri!(series.scan_width(scanner));
        let motorcycle = series.is_of_motorcycles();
        let contour = if motorcycle { None } else { Self::scan_contour(scanner) };
        let diameter = match diameter {
            Some(diameter) => diameter,
            None => {
                if tri!(Self::scan_separator(scanner)) {
                    return Err(scanner.error(ParseErrorKind::Contradiction, Field::RimSeries, start));
                }
                let diameter = tri!(RimDiameter::scan_any(scanner));
                let at = scanner.at();
                scanner.skip_space();
                if !motorcycle || !scanner.eat_alone("M/C") {
                    scanner.back_to(at);
                }
                diameter
            }
        };
        let has_code = match diameter.of() {
            CodeOf::Road => !motorcycle || diameter.tenths() <= 230,
            CodeOf::Implement | CodeOf::Agricultural => !motorcycle,
            CodeOf::Small | CodeOf::Earthmover => false,
        };
        if !has_code || diameter.is_in_millimetres() {
            return Err(scanner.range(Field::RimDiameter, start));
        }
        if width.millimetres().is_some() || width.quarters() * 10 >= diameter.tenths() * 4 {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::RimWidth, start));
        }
        if matches!(series, RimSeries::MotorcycleTube) && width.quarters() > 12 {
            return Err(scanner.range(Field::RimWidth, start));
        }
        let build = Build::Series(series);
        Ok(Self { diameter, width, contour, hump: None, build, flange_tenths: 0 })
    }

    /// The same with a hump or without.
    pub(super) const fn with_hump(self, hump: Option<Hump>) -> Self {
        Self { hump, ..self }
    }

    /// `TR` and the diameter, behind a width in millimetres.
    #[cold]
    const fn scan_millimetric(
        scanner: &mut Scanner<'_>,
        width: RimWidth,
        start: usize,
    ) -> Result<Self, ParseError> {
        scanner.skip_space();
        let behind = scanner.eat_times();
        if !behind && !scanner.eat_str("TR") {
            return Err(scanner.missing(Field::RimDiameter));
        }
        scanner.skip_space();
        let at = scanner.at();
        let diameter = tri!(RimDiameter::scan(scanner));
        if !diameter.is_in_millimetres() {
            return Err(scanner.range(Field::RimDiameter, if behind { start } else { at }));
        }
        if behind {
            return Self::of_millimetric(scanner, width, diameter, start);
        }
        Self::of_millimetres(scanner, width, diameter, start)
    }

    /// Both in millimetres, and behind them `TR`: `150x390 TR`, `365 x 150 TR`.
    #[cold]
    const fn of_millimetric(
        scanner: &mut Scanner<'_>,
        width: RimWidth,
        diameter: RimDiameter,
        start: usize,
    ) -> Result<Self, ParseError> {
        scanner.skip_space();
        if !scanner.eat_alone("TR") {
            return Err(scanner.missing(Field::RimDiameter));
        }
        Self::of_millimetres(scanner, width, diameter, start)
    }

    const fn of_millimetres(
        scanner: &mut Scanner<'_>,
        width: RimWidth,
        diameter: RimDiameter,
        start: usize,
    ) -> Result<Self, ParseError> {
        if matches!(width.millimetres(), Some(width) if width >= diameter.whole_mm()) {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::RimWidth, start));
        }
        let hump = Self::scan_hump(scanner);
        Ok(Self { diameter, width, contour: None, hump, build: Build::OnePiece, flange_tenths: 0 })
    }

    #[inline]
    const fn diameter_comes_first(mut ahead: Scanner<'_>) -> Result<bool, ParseError> {
        let mut sign = ahead;
        sign.skip_digits();
        // Most often a contour touches the width.
        if matches!(sign.byte(), b'J' | b'j') {
            return Ok(false);
        }
        let first = tri!(ahead.decimal(Field::RimWidth, 3));
        skip_inch_sign(&mut ahead);
        ahead.skip_space();
        if ahead.is_at(b'M') {
            return Ok(Self::scan_series_behind(&mut ahead).is_some());
        }
        if !ahead.eat_times() {
            return Ok(false);
        }
        ahead.skip_space();
        if !ahead.at_digit() && RimSeries::scan_before_width(&mut ahead).is_some() {
            return Ok(true);
        }
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
        if let Build::Series(series) = self.build {
            series.write(text);
        }
        match (self.build, self.contour) {
            (Build::Series(RimSeries::MotorcycleTube), _) => match RimSeries::number_of(self.width) {
                Some(number) => {
                    text.whole(u32::from(number));
                }
                None => self.width.write_hundredths(text),
            },
            (Build::Series(RimSeries::MotorcycleTubeless), _) => self.width.write_hundredths(text),
            (_, Some(contour)) => {
                self.width.write(text);
                contour.write(text);
            }
            _ if self.flange_tenths > 0 => self.width.write_hundredths(text),
            // With a point it could be a tire.
            (Build::MultiPiece, None) => self.width.write_fraction(text),
            (_, None) => self.width.write(text),
        }
        match (self.width.millimetres(), self.is_multi_piece()) {
            (Some(_), _) => text.str("TR"),
            (None, true) => text.byte(b'-'),
            (None, false) => text.byte(b'x'),
        };
        self.diameter.write(text);
        if self.flange_tenths > 0 {
            text.byte(b'/').millionths(i64::from(self.flange_tenths) * 100_000);
        }
        if let Some(hump) = self.hump {
            text.byte(b' ');
            hump.write(text);
        }
    }

    /// The rim width code: inches between the flanges.
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
        matches!(self.build, Build::MultiPiece)
    }

    /// The series of a rim that is not of cars, if stamped.
    ///
    /// ```
    /// use beadseat::{rim::{RimSeries, RimWidth}, wheel::WheelSize};
    /// let rim = WheelSize::parse("WM2x18")?;
    /// assert_eq!(rim.series(), Some(RimSeries::MotorcycleTube));
    /// assert_eq!(rim.width(), RimWidth::parse("1.85")?);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn series(&self) -> Option<RimSeries> {
        match self.build {
            Build::Series(series) => Some(series),
            Build::OnePiece | Build::MultiPiece => None,
        }
    }

    /// The height of the flange that a rim of earthmovers names.
    ///
    /// ```
    /// use beadseat::{units::inches, wheel::WheelSize};
    /// assert_eq!(WheelSize::parse("17.00-25/1.7")?.flange_height(), Some(inches(1.7)));
    /// assert_eq!(WheelSize::parse("7Jx16")?.flange_height(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn flange_height(&self) -> Option<Length> {
        match self.flange_tenths {
            0 => None,
            tenths => Some(units::inches(tenths as f64 / 10.0)),
        }
    }
}

ordered!(WheelSize, |size| (
    size.diameter,
    size.width,
    size.contour.map(Contour::mark),
    size.hump.map(Hump::mark),
    size.build.place(),
    size.flange_tenths,
));
designation!(WheelSize in "beadseat::wheel", "6 1/2 J × 16 h2" => "6.5Jx16 H2", wrong "7Jx16.2");

impl WheelSize {
    /// What each flange adds to the width of the rim; of a contour that is not known, what J adds.
    pub(crate) fn flange_width(&self) -> Toleranced<Length> {
        self.contour().unwrap_or(Contour::J).flange_width()
    }

    /// The inset of a backspacing, as far as the width of the flange leaves it open.
    pub(crate) fn inset_by(&self, backspacing: Backspacing) -> Toleranced<Length> {
        Toleranced::exact(backspacing.length() - self.width().length() / 2.0) - self.flange_width()
    }
}

/// A wheel: size, inset, bolt circle, centre bore.
///
/// # Syntax
/// ```text
/// wheel   = size { inset | backspacing | circles | bore }   each at most once, in any order; inset or backspacing
/// circles = bolt circle [ "/" ( diameter | bolt circle | bore ) ]
/// ```
/// A wheel that is drilled for two circles has the second behind a stroke, `5x100/114.3`, or beside the
/// first, `5x100 5x114.3`; both have as many holes. A number behind the stroke that is at most 0.86 of the circle is
/// the bore, `5x112/66.6`, and another smaller one is refused as ambiguous: `5x120/5x112` says which it is. The
/// canonical form is in that order. See [`WheelSize`],
/// [`Inset`], [`Backspacing`], [`BoltCircle`], [`Bore`].
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
    place: Option<Place>,
    bolt_circle: Option<BoltCircle>,
    bore: Option<Bore>,
    /// The diameter of a second circle, in nanometres.
    second: Option<NonZeroU32>,
}

/// How a bolt circle may be written.
#[derive(Clone, Copy)]
enum Form {
    Stamped,
    Phrase,
    /// As a phrase, with its word in front.
    Named,
}

/// Where the rim stands beside the hub face, as it is stamped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
enum Place {
    Inset(Inset),
    Backspacing(Backspacing),
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

    pub(crate) const fn of_size(size: WheelSize) -> Self {
        Self { size, place: None, bolt_circle: None, bore: None, second: None }
    }

    /// What may stand beside the size; false where nothing more of it does.
    #[inline]
    const fn scan_part(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        scanner.skip_space();
        if scanner.at_digit() {
            self.scan_number(scanner, bolt_circle::is_next(scanner))
        } else {
            self.scan_word(scanner)
        }
    }

    /// A part that begins with a number: of holes, or else a bore.
    #[inline]
    pub(super) const fn scan_number(
        &mut self,
        scanner: &mut Scanner<'_>,
        is_count: bool,
    ) -> Result<bool, ParseError> {
        if is_count { self.scan_circle(scanner, Form::Stamped) } else { self.scan_bore(scanner) }
    }

    /// A part that begins with its word or sign.
    pub(super) const fn scan_word(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        // A sign without a space is no inset: `25x8-12` is a tire.
        let place = if Inset::is_next(scanner) && (scanner.is_apart() || scanner.byte().is_ascii_alphabetic())
        {
            if self.place.is_some() {
                return Ok(false);
            }
            Place::Inset(tri!(Inset::scan(scanner)))
        } else if Backspacing::is_named(scanner) {
            if self.place.is_some() {
                return Ok(false);
            }
            Place::Backspacing(tri!(Backspacing::scan(scanner)))
        } else if Bore::is_next(scanner) {
            return self.scan_bore(scanner);
        } else {
            return Ok(false);
        };
        self.place = Some(place);
        Ok(true)
    }

    const fn scan_bore(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        if self.bore.is_some() {
            return Ok(false);
        }
        self.bore = Some(tri!(Bore::scan(scanner)));
        Ok(true)
    }

    /// One part as people write it, where it is not as it is stamped; false where there is none.
    pub(super) const fn scan_phrase(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        let mut ahead = *scanner;
        if phrase::eat_circle_word(&mut ahead) {
            // A diameter alone.
            let mut number = ahead;
            if let (Ok(60_000_000..), true) = (number.decimal(Field::BoltCircle, 6), ahead.at_digit()) {
                number.skip_space();
                if number.at_end() {
                    return Err(number.missing(Field::HoleCount));
                }
            }
            let found = tri!(self.scan_circle(&mut ahead, Form::Named));
            if found {
                phrase::eat_circle_word_behind(&mut ahead);
                *scanner = ahead;
            }
            return Ok(found);
        }
        if self.place.is_none() {
            let mut ahead = *scanner;
            if let Ok(backspacing) = Backspacing::scan(&mut ahead) {
                *scanner = ahead;
                self.place = Some(Place::Backspacing(backspacing));
                return Ok(true);
            }
            if let Some(inset) = Inset::scan_phrase(scanner) {
                self.place = Some(Place::Inset(inset));
                return Ok(true);
            }
        }
        if self.bore.is_none() {
            if let Some(bore) = Bore::scan_phrase(scanner) {
                self.bore = Some(bore);
                return Ok(true);
            }
        }
        let mut ahead = *scanner;
        if phrase::scan_circle(&mut ahead, false).is_some() || bolt_circle::is_next(scanner) {
            let found = tri!(self.scan_circle(scanner, Form::Phrase));
            if found {
                phrase::eat_circle_word_behind(scanner);
            }
            return Ok(found);
        }
        Ok(false)
    }

    /// A bolt circle, as it is stamped or as people write it.
    const fn scan_any_circle(scanner: &mut Scanner<'_>, form: Form) -> Result<BoltCircle, ParseError> {
        if !matches!(form, Form::Stamped) {
            if let Some(circle) = phrase::scan_circle(scanner, matches!(form, Form::Named)) {
                return Ok(circle);
            }
        }
        BoltCircle::scan(scanner)
    }

    /// A first circle with a second behind a stroke, or a second.
    const fn scan_circle(&mut self, scanner: &mut Scanner<'_>, form: Form) -> Result<bool, ParseError> {
        let at = scanner.at();
        let second = match (self.bolt_circle, self.second) {
            (Some(first), None) => {
                let second = tri!(Self::scan_any_circle(scanner, form));
                tri!(first.differs_in_diameter_only(second, scanner, at))
            }
            (Some(_), Some(_)) => return Ok(false),
            (None, _) => {
                let first = tri!(Self::scan_any_circle(scanner, form));
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
        match self.place {
            Some(Place::Inset(inset)) => inset.write(text.byte(b' ')),
            Some(Place::Backspacing(backspacing)) => backspacing.write(text.byte(b' ')),
            None => {}
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
        match self.place {
            Some(Place::Inset(inset)) => Some(inset),
            _ => None,
        }
    }

    /// The backspacing, if that is stamped in place of the inset.
    ///
    /// ```
    /// use beadseat::wheel::Wheel;
    /// let wheel = Wheel::parse("15x8J BS 4.5in 5x4.5in")?;
    /// assert_eq!(wheel.to_string(), "8Jx15 BS 114.3 5x114.3");
    /// assert!(wheel.backspacing().is_some() && wheel.inset().is_none());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn backspacing(&self) -> Option<Backspacing> {
        match self.place {
            Some(Place::Backspacing(backspacing)) => Some(backspacing),
            _ => None,
        }
    }

    /// The same with the holes and the bore of a hub where it says nothing of them and they belong on it.
    pub(crate) fn or_as_bought(self, holes: Option<BoltCircle>, bore: Option<Bore>) -> Self {
        let wheel = Self { bolt_circle: self.bolt_circle.or(holes), bore: self.bore.or(bore), ..self };
        // Read again, so that no wheel is made which cannot be.
        let mut text = Text::new();
        wheel.write(&mut text);
        Self::parse(text.as_str()).unwrap_or(self)
    }

    /// The inset that is stamped, or that follows from the backspacing with flanges of nominal width, which is assumed:
    /// 12.7 mm, common practice, no source. Nothing where neither is told.
    ///
    /// ```
    /// use beadseat::wheel::Wheel;
    /// // 114.3 − 177.8 / 2 − 12.7
    /// assert_eq!(Wheel::parse("7Jx17 BS 4.5in")?.inset_or_assumed(), Some("ET12.7".parse()?));
    /// assert_eq!(Wheel::parse("7Jx17 ET45")?.inset_or_assumed(), Some("ET45".parse()?));
    /// assert_eq!(Wheel::parse("7Jx17")?.inset_or_assumed(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn inset_or_assumed(&self) -> Option<Inset> {
        match self.place? {
            Place::Inset(inset) => Some(inset),
            Place::Backspacing(backspacing) => {
                Inset::from_length(self.size.inset_by(backspacing).nominal()).ok()
            }
        }
    }

    /// The inset between the least and the most that the width of the flanges may make of a backspacing; one that is
    /// stamped has no span. Nothing where neither is told.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Wheel};
    /// let span = Wheel::parse("7Jx17 BS 4.5in")?.inset_span().ok_or("not told")?;
    /// assert!((span.min() - mm(12.4)).abs() < mm(1e-9) && (span.max() - mm(14.4)).abs() < mm(1e-9));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn inset_span(&self) -> Option<Toleranced<Length>> {
        Some(match self.place? {
            Place::Inset(inset) => Toleranced::exact(inset.length()),
            Place::Backspacing(backspacing) => self.size.inset_by(backspacing),
        })
    }

    /// The same with a backspacing and no inset.
    pub(super) const fn standing_at(self, backspacing: Backspacing) -> Self {
        Self { place: Some(Place::Backspacing(backspacing)), ..self }
    }

    /// The same with another inset.
    pub(crate) const fn with_inset(self, inset: Inset) -> Self {
        Self { place: Some(Place::Inset(inset)), ..self }
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
