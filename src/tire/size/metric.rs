//! Metric sizes: section width, aspect ratio, structure, rim.

use super::key::SizeKey;
use super::structure::{StructureMark, marked};
use super::{SizeClass, Structure};
use crate::order::ordered;
use crate::rim::{CodeOf, RimDiameter, SeatTaper};
use crate::text::ParseErrorKind::{Missing, OutOfRange};
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// A metric tire size. `Ord` is by rim diameter, width, aspect ratio, structure and marks.
///
/// # Syntax
/// ```text
/// size      = [ prefix ] width "/" aspect structure rim [ "C" | "CP" | "HC" | "M/C" ]
/// prefix    = "P" | "LT" | "HL" | "T" | "ST" | "IF" | "VF"
/// structure = [ "S" | "H" | "V" | "Z" ] "R" [ "F" ] | "D" | "-" | "B" | ( "S" | "H" | "V" ) [ "B" ]
/// ```
/// White space may stand between any two parts, and instead of the stroke; lower case is read; a
/// trailing `LT` is read as the prefix.
///
/// Width: 95 to 495 mm ending in 5; on half-inch and millimetric rims and for `M/C` in 0 too, and for
/// `M/C` from 50 mm. Aspect ratio: 20 to 95, and for `M/C` 100, in steps of 5. A radial size without mark on a
/// half-inch rim is a truck size, for which alone `HC` may stand. A speed letter without `R` is of cross-ply
/// motorcycle tires, `110/90H18`.
///
/// A size without mark on a whole-inch rim whose width ends in 0 is agricultural: 240 to 1250 mm, aspect
/// ratio 65 to 95, on rim codes of 24 to 54 from 50, structure `R`, `D` or `-`. One of 50 to 190 mm with `-`,
/// `D` or `B`, or a speed letter alone, on rim codes of 10 to 23 is a motorcycle's, whose `M/C` is often left away;
/// where it is radial, `M/C` must stand, if behind a service description, lest a mistyped passenger size be read so. Passenger widths end in 5, and
/// between those of motorcycles and of tractors lies a gap. `IF` and `VF` are radials of 200 to 1400 mm and aspect
/// ratios to 110.
///
/// Of implements are sizes on rims of implements, 180 to 1000 mm; those that are not radial on a half-inch rim from
/// 240 mm, and any from 500 mm on one; and those that are not radial from 400 mm with an aspect ratio of 40 to 60 on
/// codes 15 to 22. Of earthmovers are sizes on rims of earthmovers, and on code 25 from 385 mm and an aspect ratio of
/// 65. Of all-terrain and garden machines are those that are not radial on rim codes of 4 to 7, to 200 mm. Common
/// practice, no source.
///
/// Accepted: `205/55R16`, `P205/55 ZR 16`, `195/65-15`, `LT245/75R17`, `195/70R15C`, `HL245/40R19`,
/// `295/80R22.5`, `T125/70D16`, `ST205/75R15`, `225/75R16CP`, `220/55R390`, `120/70ZR17 M/C`,
/// `710/55-30`, `340/65R42`, `100/90-19`, `110/90H18`, `IF710/70R42`, `400/60-15.5`, `600/50-22.5`, `750/65R25`,
/// `145/70-6`, `225/70R17.5HC`. Refused: `206/55R16`, `240/40R18`, `180/65R15`, `205/55/16`,
/// `205/55R27`, `205/55R32`, `205/55H16`, `IF710/70-42`.
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
        if !is_step_of_five(width_mm, 50, 1400) {
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
        if !is_step_of_five(aspect, 20, 110) {
            return Err(scanner.range(Field::AspectRatio, aspect_at));
        }
        let aspect_error = scanner.range(Field::AspectRatio, aspect_at);

        scanner.skip_space();
        let mark = tri!(StructureMark::scan_any(scanner));
        let mark_end = scanner.at();
        scanner.skip_space();
        let rim_at = scanner.at();
        let rim = tri!(RimDiameter::scan_any(scanner));
        let rim_error = scanner.range(Field::RimDiameter, rim_at);
        // A multiple of five ends in 0 if it is even.
        let ends_in_0 = width_mm % 2 == 0;

        let size = Self { width_mm, rim, aspect: aspect as u8, class: SizeClass::Passenger, mark };
        let class = match (prefix, Self::scan_suffix(scanner)) {
            (None, None) if !ends_in_0 && rim.is_usual() => {
                return if width_mm < 95 || width_mm > 495 {
                    Err(width_error)
                } else if aspect > 95 {
                    Err(aspect_error)
                } else if mark.is_lettered_cross() {
                    Err(missing_structure(mark_end))
                } else {
                    Ok(size)
                };
            }
            (None, None) if rim.is_steep_of_the_road() && mark.is_radial() && width_mm <= 495 => {
                SizeClass::Truck
            }
            (None, None) => {
                let size = Self { class: size.unmarked_class(*scanner), ..size };
                if size.class.rules().is_of_the_road {
                    size.class
                } else {
                    return Ok(size);
                }
            }
            (Some(class), None) | (None, Some(class)) => class,
            (Some(_), Some(_)) => {
                return Err(scanner.error(crate::ParseErrorKind::Contradiction, Field::Family, start));
            }
        };
        let size = Self { class, ..size };
        let motorcycle = matches!(class, SizeClass::Motorcycle);
        match class {
            SizeClass::ImprovedFlexion | SizeClass::VeryHighFlexion => {
                return match size.flexion_misfit() {
                    None => Ok(size),
                    Some(Field::Structure) => Err(missing_structure(mark_end)),
                    Some(Field::RimDiameter) => Err(rim_error),
                    Some(_) => Err(width_error),
                };
            }
            SizeClass::HeavyCommercial if !rim.is_steep_of_the_road() => return Err(rim_error),
            _ => {}
        }
        let round_width = motorcycle || !matches!(rim.seat_taper(), SeatTaper::FiveDegree);
        let too_narrow = width_mm < 95 && !motorcycle;
        if too_narrow || width_mm > 495 || (ends_in_0 && !round_width) {
            return Err(width_error);
        }
        if !rim.is_of_the_road() {
            return Err(rim_error);
        }
        if aspect > 95 && (aspect > 100 || !motorcycle) {
            return Err(aspect_error);
        }
        if mark.is_lettered_cross() && !motorcycle {
            return Err(missing_structure(mark_end));
        }
        Ok(size)
    }

    #[cold]
    const fn flexion_misfit(&self) -> Option<Field> {
        if self.width_mm < 200 {
            return Some(Field::SectionWidth);
        }
        if !matches!(self.mark.structure(), Structure::Radial) || !self.mark.is_plain() {
            return Some(Field::Structure);
        }
        let of_tractors = match self.rim.of() {
            CodeOf::Road => !self.rim.is_in_millimetres() && self.rim.tenths() >= 150,
            CodeOf::Implement | CodeOf::Agricultural => true,
            CodeOf::Small | CodeOf::Earthmover => false,
        };
        if of_tractors { None } else { Some(Field::RimDiameter) }
    }

    /// The class of a size without a mark that is not plainly a passenger size: what else has such a size, else
    /// passenger.
    #[cold]
    #[inline(never)]
    const fn unmarked_class(&self, behind: Scanner<'_>) -> SizeClass {
        let &Self { width_mm, rim, aspect, mark, .. } = self;
        let cross = !matches!(mark.structure(), Structure::Radial);
        let plain = mark.is_plain();
        let ends_in_0 = width_mm % 2 == 0;
        match (rim.of(), rim.seat_taper()) {
            (CodeOf::Small, _) if cross && plain && width_mm >= 80 && width_mm <= 200 => SizeClass::OffRoad,
            (CodeOf::Implement, _)
                if plain && ends_in_0 && width_mm >= 180 && width_mm <= 1000 && aspect <= 95 =>
            {
                SizeClass::Implement
            }
            (CodeOf::Earthmover, _) if plain && self.can_be_earthmover() => SizeClass::Earthmover,
            (CodeOf::Agricultural, _) if ends_in_0 && self.can_be_agricultural() => SizeClass::Agricultural,
            (CodeOf::Road, SeatTaper::FifteenDegree) => {
                let wide = width_mm >= 500 || cross && width_mm >= 240;
                if wide && plain && width_mm <= 1000 && aspect <= 95 {
                    SizeClass::Implement
                } else {
                    SizeClass::Truck
                }
            }
            (CodeOf::Road, SeatTaper::FiveDegree) => {
                let on_25 = rim.tenths() == RimDiameter::CODE_25.tenths();
                if on_25 && plain && self.can_be_earthmover() {
                    SizeClass::Earthmover
                } else if ends_in_0 && self.can_be_agricultural() {
                    SizeClass::Agricultural
                } else if ends_in_0 && plain && self.can_be_wide_implement() {
                    SizeClass::Implement
                } else if ends_in_0 && (self.can_be_motorcycle() || behind.has_alone("M/C")) {
                    SizeClass::Motorcycle
                } else {
                    SizeClass::Passenger
                }
            }
            _ => SizeClass::Passenger,
        }
    }

    /// Whether an unmarked size with a width ending in 0 is a tractor's, and cannot be a motorcycle's.
    const fn can_be_agricultural(&self) -> bool {
        let least_aspect = if self.rim.tenths() < 240 { 65 } else { 50 };
        self.width_mm >= 240
            && self.width_mm <= 1250
            && self.aspect >= least_aspect
            && self.aspect <= 95
            && self.mark.is_plain()
    }

    /// Whether an unmarked size on a rim of earthmovers is theirs.
    const fn can_be_earthmover(&self) -> bool {
        self.width_mm >= 385 && self.width_mm <= 1000 && self.aspect >= 65 && self.aspect <= 95
    }

    /// Whether an unmarked size with a width ending in 0 is a low one of implements, and cannot be a car's mistyped.
    const fn can_be_wide_implement(&self) -> bool {
        let rim = self.rim.tenths();
        let cross = !matches!(self.mark.structure(), Structure::Radial);
        let low = self.aspect >= 40 && self.aspect <= 60;
        cross && low && self.width_mm >= 400 && self.width_mm <= 1000 && rim >= 150 && rim <= 220
    }

    /// Whether an unmarked size with a width ending in 0 is a motorcycle's, and cannot be a car's mistyped.
    const fn can_be_motorcycle(&self) -> bool {
        let rim = self.rim.tenths();
        self.width_mm <= 190
            && rim >= 100
            && rim <= 230
            && !matches!(self.mark.structure(), Structure::Radial)
    }

    #[inline(always)]
    const fn scan_prefix(scanner: &mut Scanner<'_>) -> Option<SizeClass> {
        match scanner.peek(0) {
            b'P' if scanner.eat(b'P') => Some(SizeClass::PMetric),
            b'L' if scanner.eat_str("LT") => Some(SizeClass::LightTruck),
            b'H' if scanner.eat_str("HL") => Some(SizeClass::HighLoad),
            b'S' if scanner.eat_str("ST") => Some(SizeClass::Trailer),
            b'T' if scanner.eat(b'T') => Some(SizeClass::Temporary),
            b'I' if scanner.eat_str("IF") => Some(SizeClass::ImprovedFlexion),
            b'V' if scanner.eat_str("VF") => Some(SizeClass::VeryHighFlexion),
            _ => None,
        }
    }

    /// `C`, `CP`, `HC`, `M/C` or a trailing `LT`, each a word of its own; `C-1` is a code of earthmovers.
    #[inline(always)]
    const fn scan_suffix(scanner: &mut Scanner<'_>) -> Option<SizeClass> {
        scanner.skip_space();
        let code = scanner.is_at(b'C') && scanner.peek(1) == b'-';
        if scanner.at_digit() || scanner.at_end() || code {
            None
        } else if scanner.eat_alone("C") {
            Some(SizeClass::Commercial)
        } else if scanner.eat_alone("CP") {
            Some(SizeClass::Camper)
        } else if scanner.eat_alone("LT") {
            Some(SizeClass::LightTruck)
        } else if scanner.eat_alone("M/C") {
            Some(SizeClass::Motorcycle)
        } else if scanner.eat_alone("HC") {
            Some(SizeClass::HeavyCommercial)
        } else {
            None
        }
    }

    pub(super) const fn key(&self, family: SizeKey) -> SizeKey {
        let key = family.and(self.width_mm as u64, 11).and(self.aspect as u64, 7);
        self.mark.key(key.and(self.rim.tenths() as u64, 13).and(self.class as u64, SizeClass::BITS))
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
        self.mark.is_run_flat()
    }
}

/// The `R` was due at a place, where a digit stands.
#[cold]
const fn missing_structure(at: usize) -> ParseError {
    ParseError::new(Missing, Field::Structure, at, at + 1)
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
