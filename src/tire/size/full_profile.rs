//! Metric sizes without an aspect ratio: the 82 series.

use super::SizeClass;
use super::inch::Inches;
use super::key::SizeKey;
use super::structure::{StructureMark, marked};
use crate::order::ordered;
use crate::rim::RimDiameter;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// A metric size that names no aspect ratio, which then is about 82. `Ord` is by rim diameter, width, structure
/// and marks.
///
/// # Syntax
/// ```text
/// size = width structure rim [ "/" inches "-" rim ] [ "C" | "LT" ]
/// ```
/// White space may stand between any two parts. Width 125 to 305 mm in steps of 5. Early sizes carry their
/// inch size too (`155-13/6.15-13`), with two decimals. Their dimensions stand in a table; of a size that is not listed they
/// are not known.
///
/// Accepted: `155R13`, `165SR15`, `185R14C`, `155-13/6.15-13`. Refused: `156R13`, `155-13/6.15-14`.
///
/// ```
/// use beadseat::{tire::TireSize, units::mm};
/// let size: TireSize = "155 r 13".parse()?;
/// assert_eq!(size.to_string(), "155R13");
/// assert_eq!(size.overall_diameter().map(|d| d.nominal()), Some(mm(578.0))); // UN R30 Annex 5, from memory
/// assert_eq!("305R13".parse::<TireSize>()?.overall_diameter(), None);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct FullProfile {
    width_mm: u16,
    rim: RimDiameter,
    mark: StructureMark,
    class: SizeClass,
    inches: Option<Inches>,
}

impl FullProfile {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let at = scanner.at();
        let width_mm = tri!(scanner.whole(Field::SectionWidth));
        if width_mm < 125 || width_mm > 305 || width_mm % 5 != 0 {
            return Err(scanner.range(Field::SectionWidth, at));
        }
        scanner.skip_space();
        let mark = tri!(StructureMark::scan(scanner));
        scanner.skip_space();
        let rim = tri!(RimDiameter::scan(scanner));
        scanner.skip_space();
        let mut inches = None;
        if scanner.eat(b'/') {
            scanner.skip_space();
            inches = Some(tri!(Inches::scan(scanner, Field::SectionWidth, 500, 900)).two());
            scanner.skip_space();
            if !scanner.eat(b'-') {
                return Err(scanner.missing(Field::Structure));
            }
            scanner.skip_space();
            let at = scanner.at();
            if tri!(RimDiameter::scan(scanner)).tenths() != rim.tenths() {
                return Err(scanner.error(crate::ParseErrorKind::Contradiction, Field::RimDiameter, at));
            }
        }
        scanner.skip_space();
        let class = if scanner.eat_alone("C") {
            SizeClass::Commercial
        } else if scanner.eat_alone("LT") {
            SizeClass::LightTruck
        } else {
            SizeClass::Passenger
        };
        Ok(Self { width_mm, rim, mark, class, inches })
    }

    pub(super) const fn key(&self, family: SizeKey) -> SizeKey {
        let key = family.and(self.width_mm as u64, 9);
        let key = match self.inches {
            None => key.and(0, 15),
            Some(inches) => inches.key(key),
        };
        self.mark.key(key.and(self.rim.tenths() as u64, 13).and(self.class as u64, SizeClass::BITS))
    }

    pub(crate) fn write(&self, text: &mut Text) {
        text.whole(u32::from(self.width_mm));
        self.mark.write(text);
        self.rim.write(text);
        if let Some(inches) = self.inches {
            text.byte(b'/');
            inches.write(text);
            text.byte(b'-');
            self.rim.write(text);
        }
        text.str(match self.class {
            SizeClass::Commercial => "C",
            SizeClass::LightTruck => "LT",
            _ => "",
        });
    }

    /// The same as a light truck's.
    pub(super) const fn with_light_truck(self) -> Option<Self> {
        match self.class {
            SizeClass::Passenger => Some(Self { class: SizeClass::LightTruck, ..self }),
            _ => None,
        }
    }

    /// Which rules the size follows.
    pub const fn class(&self) -> SizeClass {
        self.class
    }

    pub(super) const fn width_mm(&self) -> u16 {
        self.width_mm
    }

    /// The nominal section width that is molded.
    pub const fn nominal_width(&self) -> Length {
        units::mm(self.width_mm as f64)
    }
}

marked!(FullProfile);
ordered!(FullProfile, |size| (size.rim, size.width_mm, size.mark, size.class as u8, size.inches));
designation!(FullProfile in "beadseat::tire", "165 sr 15" => "165SR15", wrong "156R13");
