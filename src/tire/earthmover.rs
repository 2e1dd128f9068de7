//! What stands beside sizes of earthmovers: strength in stars, and codes of service.

use core::num::NonZeroU8;

use crate::text::{Field, ParseError, Scanner, Text, designation};

/// What an off-the-road tire is made for, and how deep its tread is: `L-3`.
///
/// # Syntax
/// ```text
/// code = ( "C" | "E" | "G" | "L" ) [ "-" ] number [ "S" ]
/// ```
/// `C` compactors 1 and 2, `E` earthmovers 1 to 7, `G` graders 1 to 4, `L` loaders and dozers 1 to 5. An `S` is a smooth
/// tread, of `L-3` to `L-5`. `Ord` is by letter, number and `S`. Source: TRA, codes of off-the-road tires, from memory.
///
/// ```
/// use beadseat::tire::OffRoadCode;
/// let code: OffRoadCode = "l5s".parse()?;
/// assert_eq!(code.to_string(), "L-5S");
/// assert_eq!((code.letter(), code.number(), code.is_smooth()), ('L', 5, true));
/// assert!("G-5".parse::<OffRoadCode>().is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct OffRoadCode {
    /// Letter in two bits, number in three, `S` in one; the number is never 0.
    packed: NonZeroU8,
}

/// Letters, and the greatest number of each.
const LETTERS: [(u8, u8); 4] = [(b'C', 2), (b'E', 7), (b'G', 4), (b'L', 5)];

impl OffRoadCode {
    /// As many bits as a code takes.
    const BITS: u32 = 6;

    const fn of_bits(bits: u8) -> Option<Self> {
        match NonZeroU8::new(bits & ((1 << Self::BITS) - 1)) {
            Some(packed) => Some(Self { packed }),
            None => None,
        }
    }

    /// Whether a code begins here.
    const fn is_next(scanner: &Scanner<'_>) -> bool {
        let number = if scanner.peek(1) == b'-' { scanner.peek(2) } else { scanner.peek(1) };
        matches!(scanner.peek(0), b'C' | b'E' | b'G' | b'L') && number.is_ascii_digit()
    }

    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let mut letter = 0;
        while letter < LETTERS.len() && !scanner.eat(LETTERS[letter].0) {
            letter += 1;
        }
        if letter == LETTERS.len() {
            return Err(scanner.missing(Field::EarthmoverMark));
        }
        scanner.eat(b'-');
        let number = match scanner.whole(Field::EarthmoverMark) {
            Ok(number) => number,
            Err(error) => return Err(error),
        };
        let smooth = scanner.eat(b'S');
        let has_smooth = LETTERS[letter].0 == b'L' && number >= 3;
        if number < 1
            || number > LETTERS[letter].1 as u16
            || smooth && !has_smooth
            || scanner.peek(0).is_ascii_alphanumeric()
        {
            return Err(scanner.range(Field::EarthmoverMark, start));
        }
        match Self::of_bits((letter as u8) << 4 | (number as u8) << 1 | smooth as u8) {
            Some(code) => Ok(code),
            None => Err(scanner.range(Field::EarthmoverMark, start)),
        }
    }

    pub(crate) fn write(&self, text: &mut Text) {
        text.byte(self.letter() as u8).byte(b'-').byte(b'0' + self.number());
        if self.is_smooth() {
            text.byte(b'S');
        }
    }

    /// `C`, `E`, `G` or `L`.
    pub const fn letter(self) -> char {
        LETTERS[(self.packed.get() >> 4 & 3) as usize].0 as char
    }

    /// The number: the higher, the deeper the tread.
    pub const fn number(self) -> u8 {
        self.packed.get() >> 1 & 7
    }

    /// Whether the tread is smooth.
    pub const fn is_smooth(self) -> bool {
        self.packed.get() & 1 == 1
    }
}

designation!(OffRoadCode in "beadseat::tire", "e3" => "E-3", wrong "L-6");

/// Stars and codes beside a size of earthmovers, packed; `Ord` is by stars, then by the codes.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) struct EarthmoverMarks(u16);

impl EarthmoverMarks {
    pub(super) const NONE: Self = Self(0);

    pub(super) const fn is_empty(self) -> bool {
        self.0 == 0
    }

    const STARS: u32 = 2 * OffRoadCode::BITS;

    /// Takes what is here; false if nothing of it is.
    ///
    /// # Errors
    /// For more than three stars, for a code that is none, and for what was said already.
    pub(super) const fn scan(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        let start = scanner.at();
        let mut stars = 0_u16;
        while scanner.eat(b'*') || scanner.eat_str("★") {
            stars += 1;
        }
        if stars > 0 {
            if stars > 3 || self.stars() > 0 {
                return Err(scanner.range(Field::EarthmoverMark, start));
            }
            self.0 |= stars << Self::STARS;
            return Ok(true);
        }
        if !OffRoadCode::is_next(scanner) {
            return Ok(false);
        }
        if self.code(0).is_some() {
            return Err(scanner.range(Field::EarthmoverMark, start));
        }
        let first = match OffRoadCode::scan(scanner) {
            Ok(code) => code,
            Err(error) => return Err(error),
        };
        self.0 |= (first.packed.get() as u16) << OffRoadCode::BITS;
        if scanner.eat(b'/') {
            let second = match OffRoadCode::scan(scanner) {
                Ok(code) => code,
                Err(error) => return Err(error),
            };
            self.0 |= second.packed.get() as u16;
        }
        Ok(true)
    }

    #[inline]
    pub(super) fn write(self, text: &mut Text) {
        if self != Self::NONE {
            self.write_some(text);
        }
    }

    #[cold]
    fn write_some(self, text: &mut Text) {
        if self.stars() > 0 {
            text.byte(b' ');
        }
        for _ in 0..self.stars() {
            text.byte(b'*');
        }
        let separators = [b' ', b'/'];
        for (code, separator) in [self.code(0), self.code(1)].into_iter().flatten().zip(separators) {
            text.byte(separator);
            code.write(text);
        }
    }

    pub(super) const fn stars(self) -> u8 {
        (self.0 >> Self::STARS) as u8
    }

    /// The first code for 0, the second for 1.
    pub(super) const fn code(self, place: u32) -> Option<OffRoadCode> {
        OffRoadCode::of_bits((self.0 >> (OffRoadCode::BITS * (1 - place))) as u8)
    }
}

impl core::fmt::Debug for EarthmoverMarks {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_list().entry(&self.stars()).entry(&self.code(0)).entry(&self.code(1)).finish()
    }
}
