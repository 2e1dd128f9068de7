//! What is stamped on a wheel: its size, and where and how it is fastened.

use core::num::NonZeroU32;

use super::phrase;
use crate::Toleranced;
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};
use crate::units::Length;
use crate::wheel::{Backspacing, BoltCircle, Bore, Inset, WheelSize, bolt_circle};

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
        let rim = self.size.diameter().whole_mm() as u32 * NANOMETRES;
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

    /// The same without inset or backspacing.
    #[cfg(feature = "serde")]
    pub(crate) const fn without_place(self) -> Self {
        Self { place: None, ..self }
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
