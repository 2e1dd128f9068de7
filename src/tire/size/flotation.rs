//! Sizes by overall diameter and section width in inches.

use super::inch::Inches;
use super::key::SizeKey;
use super::structure::{StructureMark, marked};
use super::{SizeClass, Structure};
use crate::order::ordered;
use crate::rim::{CodeOf, RimDiameter};
use crate::text::ParseErrorKind::Contradiction;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// A size by overall diameter × section width: high-flotation light trucks with `LT`, and without it
/// agricultural, industrial, off-road and garden tires, with `AT` those of all-terrain vehicles. `Ord` is by rim
/// diameter, width, overall diameter, structure and mark.
///
/// # Syntax
/// ```text
/// size = [ "AT" ] overall "x" width structure rim [ "LT" ]
/// ```
/// Overall diameter 7 to 75 in and more than the rim's, width 3 to 45 in. A leading `LT` is read as the
/// suffix, and an `AT` behind as the prefix. Without a mark the rim may have a code of tractors or implements, and
/// without `R` one of lawn and garden. Decimals are not part of the designation: `33x12.5R15LT` equals `33x12.50R15LT`. Canonical is a
/// width with two decimals, or none if it is whole, as sidewalls print it: common practice, no source.
///
/// Accepted: `31x10.50R15LT`, `35X12.50R20LT`, `18x9.50-8`, `18x9.5-8`, `25x8-12`, `AT25x8-12`,
/// `13x5.00-6`, `66x43.00-25`. Refused: `15x10-15`, `13x5.00R6`, `AT31x10.50-15LT`.
///
/// ```
/// use beadseat::{tire::{SizeClass, TireSize}, units::inches};
/// let size: TireSize = "35X12,50 R 20 lt".parse()?;
/// assert_eq!((size.to_string().as_str(), size.class()), ("35x12.50R20LT", SizeClass::LightTruck));
/// assert_eq!("18x9.5-8".parse::<TireSize>()?.overall_diameter_nominal(), Some(inches(18.0)));
/// assert_eq!("33x12.5R15LT".parse::<TireSize>()?.to_string(), "33x12.50R15LT");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Flotation {
    overall: Inches,
    width: Inches,
    rim: RimDiameter,
    mark: StructureMark,
    class: SizeClass,
}

impl Flotation {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let prefix = if scanner.eat_str("LT") {
            Some(SizeClass::LightTruck)
        } else if scanner.eat_str("AT") {
            Some(SizeClass::AllTerrain)
        } else {
            None
        };
        scanner.skip_space();
        let overall = tri!(Inches::scan(scanner, Field::OverallDiameter, 700, 7500)).shortest();
        scanner.skip_space();
        if !scanner.eat_times() {
            return Err(scanner.missing(Field::SectionWidth));
        }
        scanner.skip_space();
        let width = tri!(Inches::scan(scanner, Field::SectionWidth, 300, 4500)).two_or_none();
        scanner.skip_space();
        let mark = tri!(StructureMark::scan(scanner));
        scanner.skip_space();
        let rim_at = scanner.at();
        let rim = tri!(RimDiameter::scan_any(scanner));
        let rim_error = scanner.range(Field::RimDiameter, rim_at);
        if rim.is_in_millimetres() {
            return Err(rim_error);
        }
        if rim.tenths() * 10 >= overall.hundredths() {
            return Err(scanner.error(Contradiction, Field::OverallDiameter, start));
        }
        scanner.skip_space();
        let suffix = if scanner.eat_alone("LT") {
            Some(SizeClass::LightTruck)
        } else if scanner.eat_alone("AT") {
            Some(SizeClass::AllTerrain)
        } else {
            None
        };
        let class = match (prefix, suffix) {
            (None, None) => SizeClass::OffRoad,
            (Some(class), None) | (None, Some(class)) => class,
            (Some(before), Some(behind)) if before as u8 == behind as u8 => before,
            _ => return Err(scanner.error(Contradiction, Field::Family, start)),
        };
        if rim.is_of_the_road() {
            return Ok(Self { overall, width, rim, mark, class });
        }
        let has_rim = match rim.of() {
            CodeOf::Road => true,
            CodeOf::Small => {
                !matches!((class, mark.structure()), (SizeClass::LightTruck, _) | (_, Structure::Radial))
            }
            CodeOf::Implement | CodeOf::Agricultural => matches!(class, SizeClass::OffRoad),
            CodeOf::Earthmover => false,
        };
        if has_rim { Ok(Self { overall, width, rim, mark, class }) } else { Err(rim_error) }
    }

    pub(super) const fn key(&self, family: SizeKey) -> SizeKey {
        let key = self.width.key(self.overall.key(family));
        self.mark.key(key.and(self.rim.tenths() as u64, 13).and(self.class as u64, SizeClass::BITS))
    }

    pub(crate) fn write(&self, text: &mut Text) {
        if matches!(self.class, SizeClass::AllTerrain) {
            text.str("AT");
        }
        self.overall.write(text);
        text.byte(b'x');
        self.width.write(text);
        self.mark.write(text);
        self.rim.write(text);
        if matches!(self.class, SizeClass::LightTruck) {
            text.str("LT");
        }
    }

    /// The same as a light truck's.
    pub(super) const fn with_light_truck(self) -> Option<Self> {
        match self.class {
            SizeClass::OffRoad if self.rim.is_of_the_road() => {
                Some(Self { class: SizeClass::LightTruck, ..self })
            }
            _ => None,
        }
    }

    /// Which rules the size follows.
    pub const fn class(&self) -> SizeClass {
        self.class
    }

    /// The overall diameter that is molded.
    pub const fn stated_diameter(&self) -> Length {
        units::inches(self.overall.hundredths() as f64 / 100.0)
    }

    pub(super) const fn width_hundredths(&self) -> u16 {
        self.width.hundredths()
    }

    /// The section width that is molded.
    pub const fn nominal_width(&self) -> Length {
        units::inches(self.width.hundredths() as f64 / 100.0)
    }
}

marked!(Flotation);
ordered!(Flotation, |size| (size.rim, size.width, size.overall, size.mark, size.class as u8));
designation!(Flotation in "beadseat::tire", "LT31 X 10.50 R 15" => "31x10.50R15LT", wrong "15x10-15");
