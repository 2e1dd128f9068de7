//! The part of a size between the widths and the rim: structure, in-size speed letter, run-flat mark.

use super::key::SizeKey;
use crate::order::ordered;
use crate::record::words;
use crate::text::{Field, ParseError, Scanner, Text, tri};

words! {
    /// How the cords of the casing run.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::Structure::Radial.name(), "radial");
    /// ```
    Structure {
        /// `R`: cords at right angles to the beads, under a belt.
        Radial = "radial",
        /// `D` or `-`: cords crossing from bead to bead.
        Diagonal = "diagonal",
        /// `B`: crossing cords under a belt.
        BiasBelted = "bias_belted",
    }
}

/// A speed letter inside the size, in front of the structure: `205/55 ZR 16`. `Ord` is by speed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum SizeSpeedLetter {
    /// `S`: up to 180 km/h. From memory.
    S,
    /// `H`: up to 210 km/h. From memory.
    H,
    /// `V`: above 210 km/h. From memory.
    V,
    /// `Z`: above 240 km/h; with a service description, that says how fast.
    Z,
}

/// Structure with what is molded around its letter, in a byte.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(super) struct StructureMark(u8);

impl StructureMark {
    const RUN_FLAT: u8 = 1;
    /// Above it the speed letter, one more than its number, and above that the structure.
    const SPEED: u32 = 1;
    const STRUCTURE: u32 = 4;

    pub(super) const fn plain(structure: Structure) -> Self {
        Self((structure as u8) << Self::STRUCTURE)
    }

    #[inline(always)]
    const fn with_speed(self, speed: SizeSpeedLetter) -> Self {
        Self(self.0 | (speed as u8 + 1) << Self::SPEED)
    }

    /// A radial, run-flat with an `F`.
    #[inline(always)]
    const fn scan_radial(scanner: &mut Scanner<'_>) -> Self {
        let run_flat = if scanner.eat(b'F') { Self::RUN_FLAT } else { 0 };
        Self(Self::plain(Structure::Radial).0 | run_flat)
    }

    #[inline(always)]
    pub(super) const fn structure(self) -> Structure {
        match self.0 >> Self::STRUCTURE {
            0 => Structure::Radial,
            1 => Structure::Diagonal,
            _ => Structure::BiasBelted,
        }
    }

    #[inline(always)]
    pub(super) const fn speed(self) -> Option<SizeSpeedLetter> {
        match self.0 >> Self::SPEED & 7 {
            1 => Some(SizeSpeedLetter::S),
            2 => Some(SizeSpeedLetter::H),
            3 => Some(SizeSpeedLetter::V),
            4 => Some(SizeSpeedLetter::Z),
            _ => None,
        }
    }

    pub(super) const fn is_run_flat(self) -> bool {
        self.0 & Self::RUN_FLAT != 0
    }

    /// ```text
    /// structure = [ "S" | "H" | "V" | "Z" ] "R" [ "F" ] | "D" | "-" | "B"
    /// ```
    #[inline(always)]
    pub(super) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let mark = tri!(Self::scan_any(scanner));
        if mark.is_lettered_cross() { Err(scanner.missing(Field::Structure)) } else { Ok(mark) }
    }

    /// The same, or a speed letter in place of the dash or in front of `B`, as old cross-ply tires have it:
    /// ```text
    /// any = structure | ( "S" | "H" | "V" ) [ "B" ]
    /// ```
    #[inline(always)]
    pub(super) const fn scan_any(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if scanner.eat(b'R') {
            return Ok(Self::scan_radial(scanner));
        }
        let speed = match scanner.peek(0) {
            b'Z' => SizeSpeedLetter::Z,
            b'S' => SizeSpeedLetter::S,
            b'H' => SizeSpeedLetter::H,
            b'V' => SizeSpeedLetter::V,
            b'-' | b'D' => {
                scanner.step(1);
                return Ok(Self::plain(Structure::Diagonal));
            }
            b'B' => {
                scanner.step(1);
                return Ok(Self::plain(Structure::BiasBelted));
            }
            _ => return Err(scanner.missing(Field::Structure)),
        };
        scanner.step(1);
        if scanner.eat(b'R') {
            Ok(Self::scan_radial(scanner).with_speed(speed))
        } else {
            // A copy goes there by reference, so that the scanner itself need not be in memory.
            let mut behind = *scanner;
            let mark = Self::scan_cross(&mut behind, speed);
            *scanner = behind;
            mark
        }
    }

    #[cold]
    #[inline(never)]
    const fn scan_cross(scanner: &mut Scanner<'_>, speed: SizeSpeedLetter) -> Result<Self, ParseError> {
        let mut ahead = *scanner;
        let structure = if ahead.eat(b'B') { Structure::BiasBelted } else { Structure::Diagonal };
        ahead.skip_space();
        if matches!(speed, SizeSpeedLetter::Z) || !ahead.at_digit() {
            return Err(scanner.missing(Field::Structure));
        }
        *scanner = ahead;
        Ok(Self::plain(structure).with_speed(speed))
    }

    /// Whether it is a speed letter without the `R` of a radial.
    #[inline(always)]
    pub(super) const fn is_lettered_cross(self) -> bool {
        self.speed().is_some() && !self.is_radial()
    }

    /// Appended to the key of what comes before it.
    #[inline(always)]
    pub(super) const fn key(self, before: SizeKey) -> SizeKey {
        before.and(self.0 as u64, 6)
    }

    #[inline(always)]
    pub(super) const fn is_radial(self) -> bool {
        self.0 >> Self::STRUCTURE == 0
    }

    /// Whether it is `R`, `D` or `-` and nothing more.
    pub(super) const fn is_plain(self) -> bool {
        matches!(self.structure(), Structure::Radial | Structure::Diagonal) && self.0 & 0xF == 0
    }

    pub(super) fn write(self, text: &mut Text) {
        text.str(match self.speed() {
            None => "",
            Some(SizeSpeedLetter::S) => "S",
            Some(SizeSpeedLetter::H) => "H",
            Some(SizeSpeedLetter::V) => "V",
            Some(SizeSpeedLetter::Z) => "Z",
        });
        text.str(match self.structure() {
            Structure::Radial if self.is_run_flat() => "RF",
            Structure::Radial => "R",
            Structure::Diagonal if self.speed().is_some() => "",
            Structure::Diagonal => "-",
            Structure::BiasBelted => "B",
        });
    }
}

impl core::fmt::Debug for StructureMark {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_list().entry(&self.structure()).entry(&self.speed()).entry(&self.is_run_flat()).finish()
    }
}

ordered!(StructureMark, |mark| (mark.structure() as u8, mark.speed(), mark.is_run_flat()));

/// What sizes with a rim behind a [`StructureMark`] answer alike.
macro_rules! marked {
    ($family:ident) => {
        impl $family {
            pub(super) const fn with_mark(self, mark: StructureMark) -> Self {
                Self { mark, ..self }
            }

            /// The nominal rim diameter.
            pub const fn rim_diameter(&self) -> RimDiameter {
                self.rim
            }

            /// The structure of the tire: radial, diagonal or bias-belted.
            pub const fn structure(&self) -> crate::tire::Structure {
                self.mark.structure()
            }

            /// The speed letter inside the size.
            pub const fn size_speed_letter(&self) -> Option<crate::tire::SizeSpeedLetter> {
                self.mark.speed()
            }
        }
    };
}
pub(super) use marked;
