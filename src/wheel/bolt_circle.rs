//! The circle through the centres of the fastener holes.

use core::num::NonZeroU8;

use crate::exact::Exact;
use crate::order::ordered;
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};
use crate::units::{self, Angle, Length};

/// A number of holes on a circle: `5x114.3`.
///
/// # Syntax
/// ```text
/// bolt circle = count ( "x" | "-" | "/" ) diameter [ "mm" | "in" | '"' ]
/// ```
/// 3 to 12 holes. Without a unit, a diameter below 20 is inches and one from 60 to 600 is millimetres;
/// anything else is refused. So are, behind a stroke, whole inches without a unit and a count that begins with 0,
/// which could be a month and a year. Inches and millimetres are held exactly, so equal circles are equal
/// however they were written. Canonical in millimetres. `Ord` is by count, then by diameter.
///
/// Accepted: `5x112`, `5×114,3`, `5 x 4.5in`, `6x5.5"`, `4-100`, `5/4.5`. Refused: `5x57`, `2x100`, `13x112`,
/// `03/12`.
///
/// ```
/// use beadseat::{literal, units::mm, uom::si::length::millimeter, wheel::BoltCircle};
/// let holes = literal!(BoltCircle, "5x4.5in");
/// assert_eq!(holes, "5×114,3".parse()?);
/// assert_eq!(holes.to_string(), "5x114.3");
/// let adjacent = holes.chord(1).ok_or("no such hole")?;
/// assert!((adjacent.get::<millimeter>() - 67.183854).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct BoltCircle {
    diameter: Exact,
    /// Never zero, so that an absent bolt circle takes no room in a wheel.
    count: NonZeroU8,
}

impl BoltCircle {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let at = scanner.at();
        let zero = scanner.is_at(b'0');
        let count = tri!(scanner.whole(Field::HoleCount));
        if count < 3 || count > 12 {
            return Err(scanner.range(Field::HoleCount, at));
        }
        scanner.skip_space();
        let stroke = scanner.eat(b'/');
        if !(stroke || scanner.eat_times() || scanner.eat(b'-')) {
            return Err(scanner.missing(Field::BoltCircle));
        }
        scanner.skip_space();
        if stroke && (zero || is_of_whole_inches(*scanner)) {
            tri!(scanner.whole(Field::BoltCircle));
            return Err(scanner.error(ParseErrorKind::Ambiguous, Field::BoltCircle, at));
        }
        let diameter = tri!(Self::scan_diameter(scanner));
        match NonZeroU8::new(count as u8) {
            Some(count) => Ok(Self { diameter, count }),
            None => Err(scanner.range(Field::HoleCount, at)),
        }
    }

    /// So many holes on a diameter that is in range.
    pub(super) const fn of(count: u8, diameter: Exact) -> Option<Self> {
        match NonZeroU8::new(count) {
            Some(count) => Some(Self { diameter, count }),
            None => None,
        }
    }

    /// Another circle with as many holes behind a stroke: `/114.3`, `/5x114.3`.
    pub(crate) const fn scan_second(self, scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        scanner.skip_space();
        let at = scanner.at();
        if is_next(scanner) {
            let second = tri!(Self::scan(scanner));
            return self.differs_in_diameter_only(second, scanner, at);
        }
        let diameter = tri!(Self::scan_diameter(scanner));
        self.differs_in_diameter_only(Self { diameter, count: self.count }, scanner, at)
    }

    /// A second circle, if it can be one.
    pub(crate) const fn differs_in_diameter_only(
        self,
        second: Self,
        scanner: &Scanner<'_>,
        at: usize,
    ) -> Result<Self, ParseError> {
        if self.count() != second.count() || self.diameter.nm() == second.diameter.nm() {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::BoltCircle, at));
        }
        Ok(second)
    }

    /// The same with another diameter, in nanometres, that was a circle's.
    pub(crate) const fn with_diameter(self, nanometres: u32) -> Self {
        Self { diameter: Exact::from_nm(nanometres as i32), count: self.count }
    }

    /// The diameter in nanometres.
    pub(crate) const fn nanometres(self) -> u32 {
        self.diameter.nm() as u32
    }

    pub(crate) fn write_diameter(&self, text: &mut Text) {
        self.diameter.write_mm(text);
    }

    const fn scan_diameter(scanner: &mut Scanner<'_>) -> Result<Exact, ParseError> {
        let at = scanner.at();
        let number = tri!(scanner.decimal(Field::BoltCircle, 6));
        let end = *scanner;
        let diameter = match Self::scan_unit(scanner, number) {
            Some(true) if number % 100 != 0 => {
                return Err(end.error(ParseErrorKind::TooPrecise, Field::BoltCircle, at));
            }
            Some(true) => Exact::from_inch_millionths(number),
            Some(false) if number >= 60_000_000 && number <= 600_000_000 => {
                Some(Exact::from_nm(number as i32))
            }
            _ => None,
        };
        match diameter {
            Some(diameter) if diameter.nm() >= 60_000_000 && diameter.nm() <= 600_000_000 => Ok(diameter),
            _ => Err(end.range(Field::BoltCircle, at)),
        }
    }

    /// Whether the number is inches, from its unit or its size; `None` where that cannot be said.
    const fn scan_unit(scanner: &mut Scanner<'_>, number: i64) -> Option<bool> {
        let mut ahead = *scanner;
        ahead.skip_space();
        let inches = if ahead.eat_word("IN") || ahead.eat(b'"') || ahead.eat_str("\u{2033}") {
            true
        } else if ahead.eat_word("MM") {
            false
        } else if number < 20_000_000 {
            return Some(true);
        } else if number >= 60_000_000 {
            return Some(false);
        } else {
            return None;
        };
        *scanner = ahead;
        Some(inches)
    }

    pub(crate) fn write(&self, text: &mut Text) {
        text.whole(u32::from(self.count.get())).byte(b'x');
        self.diameter.write_mm(text);
    }

    /// How many holes the circle has.
    pub const fn count(&self) -> u8 {
        self.count.get()
    }

    /// The diameter of the circle through the hole centres.
    pub const fn diameter(&self) -> Length {
        self.diameter.length()
    }

    /// The distance between the centres of two holes `apart` steps from each other,
    /// `C = D·sin(kπ/n)`; `None` for 0 and from `count` on.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::BoltCircle};
    /// let holes = BoltCircle::parse("6x139.7")?;
    /// let opposite = holes.chord(3).ok_or("no such hole")?;
    /// assert!((opposite - mm(139.7)).abs() < mm(1e-9));
    /// assert_eq!(holes.chord(6), None);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn chord(&self, apart: u8) -> Option<Length> {
        if apart == 0 || apart >= self.count() {
            return None;
        }
        let angle = core::f64::consts::PI * f64::from(apart) / f64::from(self.count());
        Some(self.diameter() * libm::sin(angle))
    }

    /// The centres of all holes, for a drawing or a drilling program: `x` to the right, `y` up, the centre of
    /// the circle at the origin, the first hole at an angle from `x` and the others counter-clockwise.
    ///
    /// ```
    /// use beadseat::{units::{deg, mm}, wheel::BoltCircle};
    /// let holes: Vec<_> = BoltCircle::parse("5x112")?.centres(deg(90.0)).collect();
    /// assert!(holes[0].x().abs() < mm(1e-9) && (holes[0].y() - mm(56.0)).abs() < mm(1e-9));
    /// assert!((holes[2].x() - mm(-32.915974)).abs() < mm(1e-6));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn centres(&self, first: Angle) -> impl ExactSizeIterator<Item = HoleCentre> + use<> {
        let (count, radius) = (self.count(), self.diameter() / 2.0);
        (0..count).map(move |n| {
            let angle = units::in_rad(first) + 2.0 * core::f64::consts::PI * f64::from(n) / f64::from(count);
            HoleCentre::new(radius * libm::cos(angle), radius * libm::sin(angle))
        })
    }

    /// The longest distance between two hole centres.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::BoltCircle};
    /// assert!((BoltCircle::parse("4x100")?.longest_chord() - mm(100.0)).abs() < mm(1e-9));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn longest_chord(&self) -> Length {
        // Half way round there always is a hole: counts start at three.
        self.chord(self.count() / 2).unwrap_or(self.diameter())
    }
}

/// Whether the digits here are a hole count, that is, followed by a multiplication sign or the like.
pub(super) const fn is_next(scanner: &Scanner<'_>) -> bool {
    let mut ahead = *scanner;
    if !ahead.at_digit() {
        return false;
    }
    ahead.skip_digits();
    if ahead.peek(0) == b'-' || ahead.peek(0) == b'/' {
        return true;
    }
    ahead.skip_space();
    ahead.eat_times()
}

/// The centre of a hole in a drawing of the mounting face.
///
/// ```
/// use beadseat::{units::mm, wheel::HoleCentre};
/// let hole = HoleCentre::new(mm(3.0), mm(4.0));
/// assert_eq!((hole.x(), hole.y()), (mm(3.0), mm(4.0)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoleCentre {
    x: Length,
    y: Length,
}

impl HoleCentre {
    /// The centre of a hole at its coordinates.
    pub const fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }

    /// How far it lies to the right of the wheel's centre.
    pub const fn x(&self) -> Length {
        self.x
    }

    /// How far it lies above the wheel's centre.
    pub const fn y(&self) -> Length {
        self.y
    }
}

/// Whether a whole number below 20 stands here, without decimals or a unit.
const fn is_of_whole_inches(mut scanner: Scanner<'_>) -> bool {
    let at = scanner.at();
    let tens = scanner.byte();
    scanner.skip_digits();
    let digits = scanner.at() - at;
    let decimals = matches!(scanner.peek(0), b'.' | b',') && scanner.peek(1).is_ascii_digit();
    scanner.skip_space();
    let unit = scanner.eat_word("IN") || scanner.is_at(b'"') || scanner.eat_str("\u{2033}");
    (digits == 1 || digits == 2 && tens < b'2') && !decimals && !unit
}

ordered!(BoltCircle, |circle| (circle.count, circle.diameter));
designation!(BoltCircle in "beadseat::wheel", "5 X 4.75\\\"" => "5x120.65", wrong "5x57");
