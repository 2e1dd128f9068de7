//! Marks of type approval: the E in a circle and what stands beside it.

use crate::Citation;
use crate::text::ParseErrorKind::OutOfRange;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};

/// Who approved a tire.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum ApprovalAuthority {
    /// Capital E in a circle: approved to a UN regulation.
    UnitedNations,
    /// Small e in a rectangle: approved to the EU directive 92/23/EEC, on older tires; worth the same.
    EuropeanUnion,
}

/// The stage of the limits an approval of sound or rolling resistance was made to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum ApprovalStage {
    /// No stage is molded.
    NotTold,
    /// `1`: the first stage.
    First,
    /// `2`: the second stage.
    Second,
}

/// The number of an approval: its value, and how many digits it is molded with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
struct Number {
    value: u32,
    digits: u8,
}

/// A mark of type approval.
///
/// # Syntax
/// ```text
/// approval = "E" | "e"  country [ number [ suffix ] ]
/// suffix   = [ "S" [ stage ] ] [ "W" ] [ "R" [ stage ] ]         stage = "1" | "2"
/// ```
/// Country 1 to 99, which brackets may surround with its letter; number of 4 to 8 digits; white space or
/// a hyphen between the parts. **The case of the first letter counts**, here alone: `E` is the UN's, `e`
/// the EU's.
///
/// Accepted: `E2 024567 S1WR1`, `e4 0224806-S`, `(E11) 0212345`, `E4`. Refused: `E0`, `E2 12`,
/// `E2 024567 X`. The canonical form has a space between the parts.
///
/// The first two digits are the series of amendments of the regulation, which happens to tell the
/// regulations apart; [`ApprovalMark::regulation`]. `S` is rolling sound, `W` grip in the wet, `R`
/// rolling resistance: approvals to UN R117. Source: trade guides to approval marks.
///
/// ```
/// use beadseat::tire::sidewall::{ApprovalMark, ApprovalStage};
/// let mark: ApprovalMark = "E2 024567 S1WR1".parse()?;
/// assert_eq!((mark.country(), mark.regulation()), (Some("France"), Some("UN R30")));
/// assert_eq!(mark.rolling_sound(), Some(ApprovalStage::First));
/// assert!(mark.is_approved_for_wet_grip());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ApprovalMark {
    authority: ApprovalAuthority,
    country: u8,
    number: Option<Number>,
    sound: Option<ApprovalStage>,
    wet_grip: bool,
    resistance: Option<ApprovalStage>,
}

/// Numbers of countries. The first six were read in trade notes, the others are from memory.
const COUNTRIES: &[(u8, &str)] = &[
    (2, "France"),
    (4, "Netherlands"),
    (8, "Czech Republic"),
    (11, "United Kingdom"),
    (19, "Romania"),
    (20, "Poland"),
    (1, "Germany"),
    (3, "Italy"),
    (5, "Sweden"),
    (6, "Belgium"),
    (7, "Hungary"),
    (9, "Spain"),
    (12, "Austria"),
    (13, "Luxembourg"),
    (43, "Japan"),
];
const READ: usize = 6;

impl ApprovalMark {
    /// Whether such a mark begins here.
    pub(super) const fn is_at(scanner: &Scanner<'_>) -> bool {
        let letter = if scanner.peek(0) == b'(' { 1 } else { 0 };
        scanner.peek(letter) == b'E' && scanner.peek(letter + 1).is_ascii_digit()
    }

    pub(super) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        const FIELD: Field = Field::ApprovalMark;
        let circled = scanner.eat(b'(');
        let authority = if scanner.at_lower_case() {
            ApprovalAuthority::EuropeanUnion
        } else {
            ApprovalAuthority::UnitedNations
        };
        if !scanner.eat(b'E') {
            return Err(scanner.missing(FIELD));
        }
        let start = scanner.at();
        let country = tri!(scanner.whole(FIELD));
        if country < 1 || country > 99 {
            return Err(scanner.range(FIELD, start));
        }
        if circled && !scanner.eat(b')') {
            return Err(scanner.missing(FIELD));
        }
        let mut mark = Self {
            authority,
            country: country as u8,
            number: None,
            sound: None,
            wet_grip: false,
            resistance: None,
        };
        let mut ahead = *scanner;
        skip_separator(&mut ahead);
        if !ahead.at_digit() {
            return Ok(mark);
        }
        *scanner = ahead;
        mark.number = Some(tri!(Number::scan(scanner)));

        let mut ahead = *scanner;
        skip_separator(&mut ahead);
        let start = ahead.at();
        if ahead.eat(b'S') {
            mark.sound = Some(ApprovalStage::scan(&mut ahead));
        }
        mark.wet_grip = ahead.eat(b'W');
        if ahead.eat(b'R') {
            mark.resistance = Some(ApprovalStage::scan(&mut ahead));
        }
        if ahead.at() > start {
            if ahead.peek(0).is_ascii_alphanumeric() {
                ahead.eat(ahead.peek(0));
                return Err(ahead.error(OutOfRange, FIELD, start));
            }
            *scanner = ahead;
        }
        Ok(mark)
    }

    pub(crate) fn write(&self, text: &mut Text) {
        text.byte(match self.authority {
            ApprovalAuthority::UnitedNations => b'E',
            ApprovalAuthority::EuropeanUnion => b'e',
        });
        text.whole(u32::from(self.country));
        if let Some(number) = self.number {
            text.byte(b' ');
            number.write(text);
        }
        if self.sound.is_some() || self.wet_grip || self.resistance.is_some() {
            text.byte(b' ');
        }
        if let Some(stage) = self.sound {
            stage.write(text.byte(b'S'));
        }
        if self.wet_grip {
            text.byte(b'W');
        }
        if let Some(stage) = self.resistance {
            stage.write(text.byte(b'R'));
        }
    }

    /// The authority that approved the tire.
    ///
    /// ```
    /// use beadseat::tire::sidewall::{ApprovalAuthority, ApprovalMark};
    /// assert_eq!(ApprovalMark::parse("e4")?.authority(), ApprovalAuthority::EuropeanUnion);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn authority(&self) -> ApprovalAuthority {
        self.authority
    }

    /// The number of the country whose authority granted it.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::sidewall::ApprovalMark::parse("E11")?.country_number(), 11);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn country_number(&self) -> u8 {
        self.country
    }

    /// The country, of the numbers we know; [`country_citation`](Self::country_citation) says how.
    ///
    /// ```
    /// use beadseat::tire::sidewall::ApprovalMark;
    /// assert_eq!(ApprovalMark::parse("E11")?.country(), Some("United Kingdom"));
    /// assert_eq!(ApprovalMark::parse("E99")?.country(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn country(&self) -> Option<&'static str> {
        COUNTRIES.iter().find(|row| row.0 == self.country).map(|row| row.1)
    }

    /// The source of [`country`](Self::country).
    ///
    /// ```
    /// use beadseat::tire::sidewall::ApprovalMark;
    /// assert!(!ApprovalMark::parse("E2")?.country_citation().is_from_memory());
    /// assert!(ApprovalMark::parse("E1")?.country_citation().is_from_memory());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn country_citation(&self) -> Citation {
        match COUNTRIES.iter().position(|row| row.0 == self.country) {
            Some(place) if place < READ => Citation::APPROVAL_MARK,
            _ => Citation::APPROVAL_COUNTRY,
        }
    }

    /// The series of amendments of the regulation: the first two digits of the number.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::sidewall::ApprovalMark::parse("E2 024567")?.series(), Some(2));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn series(&self) -> Option<u8> {
        match self.number {
            Some(number) => Some((number.value / 10_u32.pow(number.digits as u32 - 2)) as u8),
            None => None,
        }
    }

    /// The regulation its series points to: 02 is UN R30 (passenger), 00 is UN R54 (commercial).
    ///
    /// It is a pointer, not proof: a number with `S`, `W` or `R` may be of UN R117, which has a series 02
    /// too.
    ///
    /// ```
    /// use beadseat::tire::sidewall::ApprovalMark;
    /// assert_eq!(ApprovalMark::parse("E4 001234")?.regulation(), Some("UN R54"));
    /// assert_eq!(ApprovalMark::parse("E4")?.regulation(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn regulation(&self) -> Option<&'static str> {
        match self.series() {
            Some(2) => Some("UN R30"),
            Some(0) => Some("UN R54"),
            _ => None,
        }
    }

    /// `S`: approved for rolling sound, to this stage of the limits.
    ///
    /// ```
    /// use beadseat::tire::sidewall::{ApprovalMark, ApprovalStage};
    /// let mark = ApprovalMark::parse("e4 0224806-S")?;
    /// assert_eq!(mark.rolling_sound(), Some(ApprovalStage::NotTold));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn rolling_sound(&self) -> Option<ApprovalStage> {
        self.sound
    }

    /// `W`: approved for grip in the wet.
    ///
    /// ```
    /// use beadseat::tire::sidewall::ApprovalMark;
    /// assert!(!ApprovalMark::parse("e4 0224806-S")?.is_approved_for_wet_grip());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_approved_for_wet_grip(&self) -> bool {
        self.wet_grip
    }

    /// `R`: approved for rolling resistance, to this stage of the limits.
    ///
    /// ```
    /// use beadseat::tire::sidewall::{ApprovalMark, ApprovalStage};
    /// let mark = ApprovalMark::parse("E2 024567 S2WR2")?;
    /// assert_eq!(mark.rolling_resistance(), Some(ApprovalStage::Second));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn rolling_resistance(&self) -> Option<ApprovalStage> {
        self.resistance
    }
}

const fn skip_separator(scanner: &mut Scanner<'_>) {
    scanner.skip_space();
    if scanner.eat(b'-') {
        scanner.skip_space();
    }
}

impl Number {
    const LEAST: usize = 4;
    const MOST: usize = 8;

    const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let (mut value, mut digits): (u32, usize) = (0, 0);
        while scanner.at_digit() {
            // A number that is too long is refused below, whatever came of its value.
            value = value.wrapping_mul(10).wrapping_add((scanner.peek(0) - b'0') as u32);
            scanner.eat(scanner.peek(0));
            digits += 1;
            // The series of amendments may stand apart.
            if digits == 2 && scanner.is_at(b' ') && scanner.peek(1).is_ascii_digit() {
                scanner.skip_space();
            }
        }
        if digits < Self::LEAST || digits > Self::MOST {
            return Err(scanner.range(Field::ApprovalMark, start));
        }
        Ok(Self { value, digits: digits as u8 })
    }

    fn write(self, text: &mut Text) {
        let mut worth = 10_u32.pow(u32::from(self.digits) - 1);
        while worth > 0 {
            text.byte(b'0' + (self.value / worth % 10) as u8);
            worth /= 10;
        }
    }
}

impl ApprovalStage {
    const fn scan(scanner: &mut Scanner<'_>) -> Self {
        if scanner.eat(b'1') {
            Self::First
        } else if scanner.eat(b'2') {
            Self::Second
        } else {
            Self::NotTold
        }
    }

    fn write(self, text: &mut Text) {
        match self {
            Self::NotTold => {}
            Self::First => {
                text.byte(b'1');
            }
            Self::Second => {
                text.byte(b'2');
            }
        }
    }
}

designation!(ApprovalMark in "beadseat::tire::sidewall", "(e4) 0224806-s" => "e4 0224806 S", wrong "E2 12");
