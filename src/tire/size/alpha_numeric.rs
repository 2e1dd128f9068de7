//! Sizes by load letter.

use super::key::SizeKey;
use super::{SizeClass, Structure};
use crate::order::ordered;
use crate::rim::RimDiameter;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};

/// A size by load letter and aspect ratio: US cars and light trucks of the 1970s, and motorcycles with `M`.
/// `Ord` is by rim diameter, letter, aspect ratio, structure and marks.
///
/// # Syntax
/// ```text
/// size = [ "M" ] letter [ "R" ] aspect ( "-" | "B" ) rim [ "LT" | "M/C" ]
/// ```
/// White space may stand between any two parts. Letters A to N without I and K, and of motorcycles H to
/// V. Dimensions stand in tables; of a size that is not listed they are not known. `MR` is a radial of
/// letter M, but in the 85 and 90 series the R of a motorcycle. `M/C` may stand behind a size that begins
/// with the `M` of motorcycles, of which it says no more, and is not written.
///
/// Accepted: `ER78-14`, `AR 60 - 8`, `H78-15`, `L60-15`, `G78-15LT`, `MT90B16`, `MT90B16 M/C`, `MH90-21`.
/// Refused: `I78-14`, `E77-14`, `H78-15 M/C`.
///
/// ```
/// use beadseat::tire::{SizeClass, Structure, TireSize};
/// let size: TireSize = "er78-14".parse()?;
/// assert_eq!((size.to_string().as_str(), size.structure()), ("ER78-14", Structure::Radial));
/// let motorcycle: TireSize = "MT90B16 M/C".parse()?;
/// assert_eq!((motorcycle.to_string().as_str(), motorcycle.class()), ("MT90B16", SizeClass::Motorcycle));
/// assert!("H78-15 M/C".parse::<TireSize>().is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct AlphaNumeric {
    letter: u8,
    aspect: u8,
    rim: RimDiameter,
    structure: Structure,
    class: SizeClass,
}

impl AlphaNumeric {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let at = scanner.at();
        let motorcycle = Self::is_of_a_motorcycle(*scanner);
        if motorcycle {
            scanner.step(1);
            scanner.skip_space();
        }
        let letter = scanner.peek(0);
        let of_a_car = matches!(letter, b'A'..=b'H' | b'J' | b'L'..=b'N');
        let of_a_motorcycle = motorcycle && matches!(letter, b'P'..=b'V');
        if !of_a_car && !of_a_motorcycle {
            return Err(scanner.missing(Field::LoadLetter));
        }
        scanner.step(1);
        scanner.skip_space();
        let radial = scanner.eat(b'R');
        scanner.skip_space();
        if !scanner.at_digit() {
            return Err(scanner.missing(Field::AspectRatio));
        }
        let aspect_at = scanner.at();
        let aspect = tri!(scanner.whole(Field::AspectRatio));
        if !matches!(aspect, 50 | 55 | 60 | 65 | 70 | 75 | 78 | 80 | 85 | 90) {
            return Err(scanner.range(Field::AspectRatio, aspect_at));
        }
        scanner.skip_space();
        let belted = scanner.eat(b'B');
        if !belted && !scanner.eat(b'-') {
            return Err(scanner.missing(Field::Structure));
        }
        if belted && radial {
            return Err(scanner.error(crate::ParseErrorKind::Contradiction, Field::Structure, at));
        }
        scanner.skip_space();
        let rim = tri!(RimDiameter::scan_inches(scanner));
        scanner.skip_space();
        let class = if motorcycle {
            scanner.eat_alone("M/C");
            SizeClass::Motorcycle
        } else if scanner.eat_alone("LT") {
            SizeClass::LightTruck
        } else {
            SizeClass::Passenger
        };
        let structure = match (radial, belted) {
            (true, _) => Structure::Radial,
            (_, true) => Structure::BiasBelted,
            _ => Structure::Diagonal,
        };
        Ok(Self { letter, aspect: aspect as u8, rim, structure, class })
    }

    /// `M` before another letter. `MR` is a radial of letter M, but in the 85 and 90 series, which only
    /// motorcycles have.
    const fn is_of_a_motorcycle(mut ahead: Scanner<'_>) -> bool {
        if !ahead.eat(b'M') {
            return false;
        }
        ahead.skip_space();
        if !ahead.eat(b'R') {
            return ahead.peek(0).is_ascii_alphabetic();
        }
        ahead.skip_space();
        matches!((ahead.peek(0), ahead.peek(1)), (b'8', b'5') | (b'9', b'0'))
    }

    pub(super) const fn key(&self, family: SizeKey) -> SizeKey {
        let key =
            family.and(self.letter as u64, 8).and(self.aspect as u64, 7).and(self.rim.tenths() as u64, 13);
        key.and(self.structure as u64, 2).and(self.class as u64, SizeClass::BITS)
    }

    pub(crate) fn write(&self, text: &mut Text) {
        if matches!(self.class, SizeClass::Motorcycle) {
            text.byte(b'M');
        }
        text.byte(self.letter);
        if matches!(self.structure, Structure::Radial) {
            text.byte(b'R');
        }
        text.whole(u32::from(self.aspect));
        text.byte(if matches!(self.structure, Structure::BiasBelted) { b'B' } else { b'-' });
        self.rim.write(text);
        if matches!(self.class, SizeClass::LightTruck) {
            text.str("LT");
        }
    }

    /// Which rules the size follows.
    pub const fn class(&self) -> SizeClass {
        self.class
    }

    /// The load letter: the further in the alphabet, the larger and stronger.
    pub const fn load_letter(&self) -> char {
        self.letter as char
    }

    /// The aspect ratio: section height as a percentage of section width.
    pub const fn aspect_ratio(&self) -> u8 {
        self.aspect
    }

    /// The nominal rim diameter.
    pub const fn rim_diameter(&self) -> RimDiameter {
        self.rim
    }

    /// The structure of the tire: radial, diagonal or bias-belted.
    pub const fn structure(&self) -> Structure {
        self.structure
    }

    /// The same size as a diagonal, under which tables list it.
    pub(crate) const fn as_diagonal(self) -> Self {
        Self { structure: Structure::Diagonal, ..self }
    }
}

ordered!(AlphaNumeric, |size| (size.rim, size.letter, size.aspect, size.structure as u8, size.class as u8));
designation!(AlphaNumeric in "beadseat::tire", "h78 - 15" => "H78-15", wrong "I78-14");
