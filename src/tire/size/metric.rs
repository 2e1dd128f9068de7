//! Metric sizes: section width, aspect ratio, structure, rim.

use super::key::SizeKey;
use super::structure::{StructureMark, marked};
use super::{SizeClass, Structure};
use crate::order::ordered;
use crate::rim::{RimDiameter, SeatTaper};
use crate::text::ParseErrorKind::OutOfRange;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// A metric tire size. `Ord` is by rim diameter, width, aspect ratio, structure and marks.
///
/// # Syntax
/// ```text
/// size      = [ "P" | "LT" | "HL" | "T" | "ST" ] width "/" aspect structure rim [ "C" | "CP" | "M/C" ]
/// structure = [ "S" | "H" | "V" | "Z" ] "R" [ "F" ] | "D" | "-" | "B"
/// ```
/// White space may stand between any two parts, and instead of the stroke; lower case is read; a
/// trailing `LT` is read as the prefix.
///
/// Width: 95 to 495 mm ending in 5; on half-inch and millimetric rims and for `M/C` in 0 too, and for
/// `M/C` from 50 mm. Aspect ratio: 20 to 95, and for `M/C` 100, in steps of 5. A size without mark on a
/// half-inch rim is a truck size.
///
/// A size without mark on a whole-inch rim whose width ends in 0 is agricultural: 240 to 1250 mm, aspect
/// ratio 65 to 95, on rim codes of 24 to 54 from 50, structure `R`, `D` or `-`. One of 50 to 190 mm with `-`,
/// `D` or `B` on rim codes of 10 to 23 is a motorcycle's, whose `M/C` is often left away; where it is radial,
/// `M/C` must stand, lest a mistyped passenger size be read so. Passenger widths end in 5, and between those
/// of motorcycles and of tractors lies a gap. Common practice, no source.
///
/// Accepted: `205/55R16`, `P205/55 ZR 16`, `195/65-15`, `LT245/75R17`, `195/70R15C`, `HL245/40R19`,
/// `295/80R22.5`, `T125/70D16`, `ST205/75R15`, `225/75R16CP`, `220/55R390`, `120/70ZR17 M/C`,
/// `710/55-30`, `340/65R42`, `100/90-19`. Refused: `206/55R16`, `240/40R18`, `180/65R15`, `205/55/16`,
/// `205/55R27`, `205/55R32`.
///
/// ```
/// use beadseat::{tire::Metric, units::mm};
/// let size: Metric = "205/55R16".parse()?;
/// assert_eq!(size.nominal_width(), mm(205.0));
/// assert_eq!(size.aspect_ratio(), 55);
/// assert_eq!(size.section_height(), mm(113.0));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Metric {
    width_mm: u16,
    rim: RimDiameter,
    aspect: u8,
    class: SizeClass,
    mark: StructureMark,
}

impl Metric {
    #[inline(always)]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let mut prefix = None;
        if !scanner.at_digit() {
            prefix = Self::scan_prefix(scanner);
            scanner.skip_space();
        }

        let width_at = scanner.at();
        let width_mm = tri!(scanner.whole(Field::SectionWidth));
        let width_end = scanner.at();
        let width_error = ParseError::new(OutOfRange, Field::SectionWidth, width_at, width_end);
        if !is_step_of_five(width_mm, 50, 1250) {
            return Err(width_error);
        }

        if !scanner.eat(b'/') {
            if !scanner.skip_space() {
                return Err(scanner.missing(Field::AspectRatio));
            }
            scanner.eat(b'/');
        }
        scanner.skip_space();
        let aspect_at = scanner.at();
        let aspect = tri!(scanner.whole(Field::AspectRatio));
        if !is_step_of_five(aspect, 20, 100) {
            return Err(scanner.range(Field::AspectRatio, aspect_at));
        }
        let aspect_error = scanner.range(Field::AspectRatio, aspect_at);

        scanner.skip_space();
        let mark = tri!(StructureMark::scan(scanner));
        scanner.skip_space();
        let rim_at = scanner.at();
        let rim = tri!(RimDiameter::scan_any(scanner));
        let rim_error = scanner.range(Field::RimDiameter, rim_at);
        // A multiple of five ends in 0 if it is even.
        let ends_in_0 = width_mm % 2 == 0;

        let class = match (prefix, Self::scan_suffix(scanner)) {
            (None, None) => match rim.seat_taper() {
                SeatTaper::FifteenDegree => SizeClass::Truck,
                SeatTaper::FiveDegree if ends_in_0 => {
                    let class = SizeClass::Agricultural;
                    let size = Self { width_mm, rim, aspect: aspect as u8, class, mark };
                    if size.can_be_agricultural() {
                        return Ok(size);
                    }
                    if !size.can_be_motorcycle() {
                        return Err(width_error);
                    }
                    SizeClass::Motorcycle
                }
                SeatTaper::FiveDegree | SeatTaper::Millimetric => SizeClass::Passenger,
            },
            (Some(class), None) | (None, Some(class)) => class,
            (Some(_), Some(_)) => {
                return Err(scanner.error(crate::ParseErrorKind::Contradiction, Field::Family, start));
            }
        };
        let motorcycle = matches!(class, SizeClass::Motorcycle);
        let round_width = motorcycle || !matches!(rim.seat_taper(), SeatTaper::FiveDegree);
        let too_narrow = width_mm < 95 && !motorcycle;
        if too_narrow || width_mm > 495 || (ends_in_0 && !round_width) {
            return Err(width_error);
        }
        if rim.is_agricultural() {
            return Err(rim_error);
        }
        if aspect == 100 && !motorcycle {
            return Err(aspect_error);
        }
        Ok(Self { width_mm, rim, aspect: aspect as u8, class, mark })
    }

    /// Whether an unmarked size with a width ending in 0 is a tractor's, and cannot be a motorcycle's.
    const fn can_be_agricultural(&self) -> bool {
        let least_aspect = if self.rim.tenths() < 240 { 65 } else { 50 };
        self.width_mm >= 240 && self.aspect >= least_aspect && self.aspect <= 95 && self.mark.is_plain()
    }

    /// Whether an unmarked size with a width ending in 0 is a motorcycle's, and cannot be a car's mistyped.
    const fn can_be_motorcycle(&self) -> bool {
        let rim = self.rim.tenths();
        self.width_mm <= 190 && rim >= 100 && rim <= 230 && !matches!(self.mark.structure, Structure::Radial)
    }

    #[inline(always)]
    const fn scan_prefix(scanner: &mut Scanner<'_>) -> Option<SizeClass> {
        if scanner.eat(b'P') {
            Some(SizeClass::PMetric)
        } else if scanner.eat_str("LT") {
            Some(SizeClass::LightTruck)
        } else if scanner.eat_str("HL") {
            Some(SizeClass::HighLoad)
        } else if scanner.eat_str("ST") {
            Some(SizeClass::Trailer)
        } else if scanner.eat(b'T') {
            Some(SizeClass::Temporary)
        } else {
            None
        }
    }

    /// `C`, `CP`, `M/C` or a trailing `LT`, each a word of its own.
    #[inline(always)]
    const fn scan_suffix(scanner: &mut Scanner<'_>) -> Option<SizeClass> {
        scanner.skip_space();
        if scanner.at_digit() || scanner.at_end() {
            None
        } else if scanner.eat_alone("C") {
            Some(SizeClass::Commercial)
        } else if scanner.eat_alone("CP") {
            Some(SizeClass::Camper)
        } else if scanner.eat_alone("LT") {
            Some(SizeClass::LightTruck)
        } else if scanner.eat_alone("M/C") {
            Some(SizeClass::Motorcycle)
        } else {
            None
        }
    }

    pub(super) const fn key(&self, family: SizeKey) -> SizeKey {
        let key = family.and(self.width_mm as u64, 11).and(self.aspect as u64, 7);
        self.mark.key(key.and(self.rim.tenths() as u64, 13).and(self.class as u64, 4))
    }

    pub(crate) fn write(&self, text: &mut Text) {
        let rules = self.class.rules();
        text.str(rules.prefix);
        text.whole(u32::from(self.width_mm)).byte(b'/').whole(u32::from(self.aspect));
        self.mark.write(text);
        self.rim.write(text);
        text.str(rules.suffix);
    }

    pub(crate) const fn family(&self) -> &'static str {
        match (self.class, self.rim.seat_taper()) {
            (SizeClass::Passenger, SeatTaper::Millimetric) => "metric_rim",
            (class, _) => class.rules().metric_family,
        }
    }

    pub(crate) const fn with_high_load(self) -> Option<Self> {
        match self.class.rules().with_high_load {
            Some(class) => Some(Self { class, ..self }),
            None => None,
        }
    }

    /// Which rules the size follows.
    pub const fn class(&self) -> SizeClass {
        self.class
    }

    /// The nominal section width `S1` that is molded; the tire is this wide only on its theoretical rim.
    pub const fn nominal_width(&self) -> Length {
        units::mm(self.width_mm as f64)
    }

    pub(crate) const fn width_mm(&self) -> u16 {
        self.width_mm
    }

    /// The aspect ratio: section height as a percentage of the nominal section width.
    pub const fn aspect_ratio(&self) -> u8 {
        self.aspect
    }

    /// The section height `H = S1·Ra/100`, rounded half up to the millimetre. Source: UN R30 and R54,
    /// §6.1.2, from memory.
    ///
    /// ```
    /// use beadseat::{tire::Metric, units::mm};
    /// assert_eq!(Metric::parse("195/70R15C")?.section_height(), mm(137.0)); // 136.5
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn section_height(&self) -> Length {
        units::mm(self.height_mm() as f64)
    }

    pub(crate) const fn height_mm(&self) -> u16 {
        ((self.width_mm as u32 * self.aspect as u32 + 50) / 100) as u16
    }

    /// Whether the structure is marked `RF`: a tire that can be driven on for a while without air.
    ///
    /// ```
    /// assert!(beadseat::tire::Metric::parse("205/55RF16")?.is_run_flat());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_run_flat(&self) -> bool {
        self.mark.run_flat
    }
}

/// Whether a value is one of a series in steps of five.
#[inline(always)]
const fn is_step_of_five(value: u16, least: u16, most: u16) -> bool {
    // 0xCCCD is the inverse of 5 modulo 2¹⁶: it makes a multiple of five its fifth, and anything else a
    // number above all of those.
    let fifth = value.wrapping_mul(0xCCCD);
    least / 5 <= fifth && fifth <= most / 5
}

marked!(Metric);
ordered!(Metric, |size| (size.rim, size.width_mm, size.aspect, size.mark, size.class as u8));
designation!(Metric in "beadseat::tire", "245/75R17 LT" => "LT245/75R17", wrong "P195/70R15C");
