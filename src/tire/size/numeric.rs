//! Numeric sizes: section width in inches.

use super::SizeClass;
use super::inch::Inches;
use super::key::SizeKey;
use super::structure::{StructureMark, marked};
use crate::order::ordered;
use crate::rim::{RimDiameter, SeatTaper};
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// A size by section width in inches: cross-ply cars, light trucks, trucks, motorcycles. `Ord` is by rim diameter,
/// width, aspect ratio, structure and suffix.
///
/// # Syntax
/// ```text
/// size = inches [ "/" aspect ] structure rim [ "C" | "LT" | "L" | "M/C" ]
/// ```
/// White space may stand between any two parts. 1.5 to 30 in with up to two decimals, which are part of the
/// designation: `9.5-16` is agricultural and `9.50-16` is not, `11R20` is not `11.00R20`. Before `C`, `LT` and
/// `M/C` one decimal is read as two, `7.5R16C` as `7.50R16C`. Common practice, no source. Dimensions stand in tables; of a size that is not listed they are not known. On a half-inch
/// rim it is a truck size; without suffix on another, the class is that of the table that lists it.
///
/// A width with one decimal on a rim of an even code from 24 to 54, without aspect ratio and suffix, is
/// agricultural: truck widths have two decimals or none, and earthmover sizes have code 25. Common practice,
/// no source.
///
/// Accepted: `6.00-16`, `7.50R16C`, `8.25R20`, `11R22.5`, `5.60-15`, `10/70R22.5`, `8.00-16.5LT`,
/// `4.00-18 M/C`, `6.00-15L`, `20.8-38`. Refused: `6.005-16`, `6.00-38`, `6.00-390`.
///
/// ```
/// use beadseat::{tire::TireSize, units::mm};
/// let size: TireSize = "11 r 22,5".parse()?;
/// assert_eq!(size.to_string(), "11R22.5");
/// assert_eq!(size.overall_diameter().map(|d| d.nominal()), Some(mm(1050.0))); // UN R54 Annex 5, from memory
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Numeric {
    width: Inches,
    rim: RimDiameter,
    mark: StructureMark,
    /// 0 where none is molded.
    aspect: u8,
    suffix: Suffix,
}

/// What stands behind the rim.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
enum Suffix {
    None,
    Commercial,
    LightTruck,
    L,
    Motorcycle,
}

impl Numeric {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        // Three digits are millimetres, whatever they begin with.
        let start = scanner.at();
        let mut digits = *scanner;
        digits.skip_digits();
        if digits.at() - start > 2 {
            return Err(digits.range(Field::SectionWidth, start));
        }
        let width = tri!(Inches::scan(scanner, Field::SectionWidth, 150, 3000));
        scanner.skip_space();
        let mut aspect = 0;
        if scanner.eat(b'/') {
            scanner.skip_space();
            let at = scanner.at();
            aspect = tri!(scanner.whole(Field::AspectRatio));
            if aspect < 50 || aspect > 95 || aspect % 5 != 0 {
                return Err(scanner.range(Field::AspectRatio, at));
            }
        }
        scanner.skip_space();
        let mark = tri!(StructureMark::scan(scanner));
        scanner.skip_space();
        let rim_at = scanner.at();
        let rim = tri!(RimDiameter::scan_any(scanner));
        let rim_error = scanner.range(Field::RimDiameter, rim_at);
        scanner.skip_space();
        let suffix = if scanner.eat_alone("C") {
            Suffix::Commercial
        } else if scanner.eat_alone("LT") {
            Suffix::LightTruck
        } else if scanner.eat_alone("L") {
            Suffix::L
        } else if scanner.eat_alone("M/C") {
            Suffix::Motorcycle
        } else {
            Suffix::None
        };
        // Only agricultural tires have one decimal, and what stands behind the rim says that it is none.
        let width = match suffix {
            Suffix::Commercial | Suffix::LightTruck | Suffix::Motorcycle => width.two_for_one(),
            Suffix::None | Suffix::L => width,
        };
        let size = Self { width, rim, mark, aspect: aspect as u8, suffix };
        if rim.is_in_millimetres() || rim.is_agricultural() && !size.is_agricultural() {
            Err(rim_error)
        } else {
            Ok(size)
        }
    }

    pub(super) const fn key(&self, family: SizeKey) -> SizeKey {
        let key = self.width.key(family).and(self.aspect as u64, 7);
        self.mark.key(key.and(self.rim.tenths() as u64, 13).and(self.suffix as u64, 3))
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.width.write(text);
        if self.aspect > 0 {
            text.byte(b'/').whole(u32::from(self.aspect));
        }
        self.mark.write(text);
        self.rim.write(text);
        text.str(match self.suffix {
            Suffix::None => "",
            Suffix::Commercial => "C",
            Suffix::LightTruck => "LT",
            Suffix::L => "L",
            Suffix::Motorcycle => " M/C",
        });
    }

    pub(super) const fn is_told_from_rim(&self) -> bool {
        self.width.decimals() == 2
            || matches!(self.rim.seat_taper(), SeatTaper::FifteenDegree)
            || self.is_agricultural()
    }

    const fn is_agricultural(&self) -> bool {
        matches!(self.suffix, Suffix::None)
            && self.width.decimals() == 1
            && self.aspect == 0
            && self.mark.is_plain()
            && self.rim.tenths() >= 240
            && self.rim.tenths() % 20 == 0
    }

    /// Which rules the size follows, as far as its marks say.
    pub const fn class(&self) -> SizeClass {
        match (self.suffix, self.rim.seat_taper()) {
            (Suffix::Commercial, _) => SizeClass::Commercial,
            (Suffix::LightTruck, _) => SizeClass::LightTruck,
            (Suffix::Motorcycle, _) => SizeClass::Motorcycle,
            (_, SeatTaper::FifteenDegree) => SizeClass::Truck,
            _ if self.is_agricultural() => SizeClass::Agricultural,
            _ => SizeClass::Unstated,
        }
    }

    pub(super) const fn width_hundredths(&self) -> u16 {
        self.width.hundredths()
    }

    /// The section width that is molded.
    pub const fn nominal_width(&self) -> Length {
        units::inches(self.width.hundredths() as f64 / 100.0)
    }
}

marked!(Numeric);
ordered!(Numeric, |size| (size.rim, size.width, size.aspect, size.mark, size.suffix));
designation!(Numeric in "beadseat::tire", "7,50 r 16 c" => "7.50R16C", wrong "0.50-16");
