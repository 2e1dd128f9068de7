//! Sizes by overall diameter and section width in inches.

use super::SizeClass;
use super::inch::Inches;
use super::key::SizeKey;
use super::structure::{StructureMark, marked};
use crate::order::ordered;
use crate::rim::RimDiameter;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// A size by overall diameter × section width: high-flotation light trucks with `LT`, and without it
/// agricultural, industrial and off-road tires. `Ord` is by rim diameter, width, overall diameter, structure and
/// suffix.
///
/// # Syntax
/// ```text
/// size = overall "x" width structure rim [ "LT" ]
/// ```
/// Overall diameter 10 to 60 in and more than the rim's, width 3 to 30 in. A leading `LT` is read as the
/// suffix. Decimals are not part of the designation: `33x12.5R15LT` equals `33x12.50R15LT`. Canonical is a
/// width with two decimals, or none if it is whole, as sidewalls print it: common practice, no source.
///
/// Accepted: `31x10.50R15LT`, `35X12.50R20LT`, `18x9.50-8`, `18x9.5-8`, `25x8-12`. Refused: `15x10-15`.
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
    light_truck: bool,
}

impl Flotation {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let prefix = scanner.eat_str("LT");
        scanner.skip_space();
        let overall = tri!(Inches::scan(scanner, Field::OverallDiameter, 1000, 6000)).shortest();
        scanner.skip_space();
        if !scanner.eat_times() {
            return Err(scanner.missing(Field::SectionWidth));
        }
        scanner.skip_space();
        let width = tri!(Inches::scan(scanner, Field::SectionWidth, 300, 3000)).two_or_none();
        scanner.skip_space();
        let mark = tri!(StructureMark::scan(scanner));
        scanner.skip_space();
        let rim = tri!(RimDiameter::scan_inches(scanner));
        if rim.tenths() * 10 >= overall.hundredths() {
            return Err(scanner.error(crate::ParseErrorKind::Contradiction, Field::OverallDiameter, start));
        }
        scanner.skip_space();
        let suffix = scanner.eat_alone("LT");
        Ok(Self { overall, width, rim, mark, light_truck: prefix || suffix })
    }

    pub(super) const fn key(&self, family: SizeKey) -> SizeKey {
        let key = self.width.key(self.overall.key(family));
        self.mark.key(key.and(self.rim.tenths() as u64, 13).and(self.light_truck as u64, 1))
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.overall.write(text);
        text.byte(b'x');
        self.width.write(text);
        self.mark.write(text);
        self.rim.write(text);
        if self.light_truck {
            text.str("LT");
        }
    }

    /// Which rules the size follows.
    pub const fn class(&self) -> SizeClass {
        if self.light_truck { SizeClass::LightTruck } else { SizeClass::OffRoad }
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
ordered!(Flotation, |size| (size.rim, size.width, size.overall, size.mark, size.light_truck));
designation!(Flotation in "beadseat::tire", "LT31 X 10.50 R 15" => "31x10.50R15LT", wrong "15x10-15");
