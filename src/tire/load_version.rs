//! Load version and load range: how the casing is built for its load.

use core::num::NonZeroU8;

use crate::text::{Field, ParseError, Scanner, Text, designation};
use crate::units::{self, Pressure};

/// The load version of a passenger tire.
///
/// # Syntax
/// `XL`, `EXTRA LOAD`, `REINFORCED` or its short forms `REINF` and `RNF`; `LL`; `HL` (which the canonical form of a size
/// carries in front). `Ord` is by load.
///
/// ```
/// use beadseat::tire::LoadVersion;
/// assert_eq!("Extra Load".parse::<LoadVersion>()?, LoadVersion::Extra);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum LoadVersion {
    /// LL: light load, below that of a standard tire.
    Light,
    /// XL: extra load, also molded EXTRA LOAD or REINFORCED.
    Extra,
    /// HL: high load, more than XL at the same reference pressure.
    High,
}

impl LoadVersion {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        match scanner.peek(0) {
            b'X' if scanner.eat_word("XL") => Ok(Self::Extra),
            b'R' if scanner.eat_word("REINFORCED") || scanner.eat_word("RNF") => Ok(Self::Extra),
            b'R' if scanner.eat_word("REINF") => {
                scanner.eat(b'.');
                Ok(Self::Extra)
            }
            b'E' => {
                let mut ahead = *scanner;
                if ahead.eat_word("EXTRA") && ahead.skip_space() && ahead.eat_word("LOAD") {
                    *scanner = ahead;
                    return Ok(Self::Extra);
                }
                Err(scanner.missing(Field::LoadVersion))
            }
            b'L' if scanner.eat_word("LL") => Ok(Self::Light),
            b'H' if scanner.eat_word("HL") => Ok(Self::High),
            _ => Err(scanner.missing(Field::LoadVersion)),
        }
    }

    #[inline]
    pub(crate) fn write(self, text: &mut Text) {
        text.str(match self {
            Self::Light => "LL",
            Self::Extra => "XL",
            Self::High => "HL",
        });
    }
}

designation!(LoadVersion in "beadseat::tire", "Reinforced" => "XL", wrong "XXL");

/// The load range of a light truck or commercial tire, by letter or ply rating.
///
/// # Syntax
/// `LRE`, `LOAD RANGE E`, `10PR`, `10 PLY` or `10 PLY RATING`; canonical `LRE`. `Ord` is by strength.
///
/// Source of the pairs: a dealer article quoting the TRA yearbook of 2010.
///
/// ```
/// use beadseat::tire::LoadRange;
/// let e: LoadRange = "load range e".parse()?;
/// assert_eq!(e, "10PR".parse()?);
/// assert_eq!((e.letter(), e.ply_rating()), ('E', 10));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LoadRange {
    /// Half the ply rating: one more than the place in [`LETTERS`].
    half: NonZeroU8,
}

/// Letters of ply ratings 2, 4, 6 … 24. I and K are not used.
const LETTERS: &[u8; 12] = b"ABCDEFGHJLMN";

impl LoadRange {
    /// Of 1 to 12.
    const fn of_half(half: u16) -> Self {
        match NonZeroU8::new(half as u8) {
            Some(half) => Self { half },
            None => Self { half: NonZeroU8::MIN },
        }
    }

    /// Whether a ply rating or load range begins here, be it one that exists or not.
    pub(crate) const fn is_next(scanner: &Scanner<'_>) -> bool {
        scanner.at_digit() || (scanner.peek(0) == b'L' && matches!(scanner.peek(1), b'R' | b'O'))
    }

    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        if scanner.at_digit() {
            let rating = match scanner.whole(Field::LoadRange) {
                Ok(rating) => rating,
                Err(error) => return Err(error),
            };
            scanner.skip_space();
            if scanner.eat_word("PLY") {
                let mut ahead = *scanner;
                ahead.skip_space();
                if ahead.eat_word("RATING") || ahead.eat_word("RATED") {
                    *scanner = ahead;
                }
            } else if !scanner.eat_word("PR") {
                return Err(scanner.missing(Field::LoadRange));
            }
            if rating % 2 != 0 || rating < 2 || rating > 24 {
                return Err(scanner.range(Field::LoadRange, start));
            }
            return Ok(Self::of_half(rating / 2));
        }
        let mut ahead = *scanner;
        if ahead.eat_word("LOAD") && ahead.skip_space() && ahead.eat_word("RANGE") {
            ahead.skip_space();
        } else {
            ahead = *scanner;
            if !ahead.eat_str("LR") {
                return Err(scanner.missing(Field::LoadRange));
            }
            ahead.skip_space();
        }
        match Self::of_letter(ahead.peek(0)) {
            Some(range) if !ahead.peek(1).is_ascii_alphanumeric() => {
                ahead.step(1);
                *scanner = ahead;
                Ok(range)
            }
            _ => Err(ahead.missing(Field::LoadRange)),
        }
    }

    const fn of_letter(letter: u8) -> Option<Self> {
        match letter {
            b'A'..=b'H' => Some(Self::of_half((letter - b'A') as u16 + 1)),
            b'J' => Some(Self::of_half(9)),
            b'L'..=b'N' => Some(Self::of_half((letter - b'L') as u16 + 10)),
            _ => None,
        }
    }

    pub(super) const fn is(self, other: Self) -> bool {
        self.half.get() == other.half.get()
    }

    /// A letter by itself, perhaps behind a stroke; not M, which is of winter marks more often.
    pub(super) const fn scan_letter(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut ahead = *scanner;
        ahead.eat(b'/');
        let range = Self::of_letter(ahead.peek(0));
        if range.is_none() || ahead.is_at(b'M') {
            return None;
        }
        ahead.step(1);
        if !ahead.at_end() && !ahead.skip_space() {
            return None;
        }
        *scanner = ahead;
        range
    }

    #[inline]
    pub(crate) fn write(self, text: &mut Text) {
        text.str("LR").byte(self.letter() as u8);
    }

    /// The letter of the load range.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::LoadRange::parse("18PR")?.letter(), 'J');
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn letter(self) -> char {
        LETTERS[self.half.get() as usize - 1] as char
    }

    /// The ply rating: a measure of strength, not a count of plies.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::LoadRange::parse("LRC")?.ply_rating(), 6);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn ply_rating(self) -> u8 {
        2 * self.half.get()
    }

    /// The cold pressure at which an LT-metric tire of this range carries its load index.
    ///
    /// The letter alone does not fix it: sizes by overall diameter have
    /// [others](LoadRange::flotation_reference_pressures). It is a default for want of the figure molded on
    /// the tire. Source: dealer guide (B to F); G from memory.
    ///
    /// ```
    /// use beadseat::{tire::LoadRange, units::kpa};
    /// assert_eq!(LoadRange::parse("LRE")?.lt_reference_pressure(), Some(kpa(550.0)));
    /// assert_eq!(LoadRange::parse("LRN")?.lt_reference_pressure(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn lt_reference_pressure(self) -> Option<Pressure> {
        Some(units::kpa(match self.letter() {
            'B' => 240.0,
            'C' => 350.0,
            'D' => 450.0,
            'E' => 550.0,
            'F' => 650.0,
            'G' => 760.0,
            _ => return None,
        }))
    }

    /// The two cold pressures that the letter stands for on an LT size by overall diameter, the lower first:
    /// which of them depends on the size, large ones have the lower.
    ///
    /// Where the tire does not say, the higher is the default: it makes the same load ask for more
    /// pressure, never for less. It is no advice to inflate so far; the figure molded on the tire is the
    /// limit. Source: dealer article quoting the TRA yearbook of 2010.
    ///
    /// ```
    /// use beadseat::{tire::{Formation, LoadRange, Tire}, units::kpa};
    /// let d = LoadRange::parse("LRD")?;
    /// assert_eq!(d.flotation_reference_pressures(), Some((kpa(340.0), kpa(450.0))));
    /// let law = Tire::parse("35x12.50R17LT 121Q LRD")?.inflation(Formation::Single, None)?;
    /// assert_eq!(law.reference_pressure(), kpa(450.0));
    /// assert!(LoadRange::parse("LRB")?.flotation_reference_pressures().is_none());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn flotation_reference_pressures(self) -> Option<(Pressure, Pressure)> {
        let (lower, higher) = match self.letter() {
            'C' => (240.0, 380.0),
            'D' => (340.0, 450.0),
            'E' => (450.0, 550.0),
            _ => return None,
        };
        Some((units::kpa(lower), units::kpa(higher)))
    }

    /// The cold pressure at which an ST trailer tire of this range carries its load index: a default for
    /// want of the figure molded on the tire.
    ///
    /// Source: dealer guide (B to D); E to G from memory of the TRA yearbook, H with doubt.
    ///
    /// ```
    /// use beadseat::{tire::{Formation, LoadRange, Tire}, units::{kg, kpa}};
    /// assert_eq!(LoadRange::parse("LRD")?.st_reference_pressure(), Some(kpa(450.0)));
    /// assert_eq!(LoadRange::parse("LRJ")?.st_reference_pressure(), None);
    /// let law = Tire::parse("ST205/75R15 107M LRD")?.inflation(Formation::Single, None)?;
    /// assert_eq!(law.load_at(kpa(450.0))?, kg(975.0));
    /// assert!(law.load_at(kpa(400.0)).is_err()); // no law of trailer tires is known
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn st_reference_pressure(self) -> Option<Pressure> {
        match self.letter() {
            'H' => Some(units::kpa(860.0)),
            _ => self.lt_reference_pressure(),
        }
    }
}

/// Whether the digits here are a ply rating rather than a load index.
pub(super) const fn is_ply_rating(mut scanner: Scanner<'_>) -> bool {
    if !scanner.at_digit() {
        return false;
    }
    scanner.skip_digits();
    are_plies(&scanner)
}

/// Whether the number before is one of plies.
#[inline(always)]
pub(super) const fn are_plies(scanner: &Scanner<'_>) -> bool {
    if scanner.byte().is_ascii_graphic() && !scanner.is_at(b'P') {
        return false;
    }
    // A copy goes there by reference, so that the scanner itself need not be in memory.
    let mut ahead = *scanner;
    eat_plies(&mut ahead)
}

#[cold]
#[inline(never)]
const fn eat_plies(scanner: &mut Scanner<'_>) -> bool {
    scanner.skip_space();
    scanner.eat_word("PR") || scanner.eat_word("PLY")
}

designation!(LoadRange in "beadseat::tire", "10 ply" => "LRE", wrong "LRI");
