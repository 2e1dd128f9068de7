//! The size of a wheel, as it is stamped.

use crate::Toleranced;
use crate::order::ordered;
use crate::rim::{CodeOf, Contour, Hump, RimDiameter, RimSeries, RimWidth, SeatTaper};
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};
use crate::units::{self, Length};
use crate::wheel::Backspacing;

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
