//! Metric sizes: section width, aspect ratio, structure, rim.

use super::{InSizeSpeed, Structure};
use crate::rim::{RimDiameter, SeatTaper};
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// Which rules a metric size follows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum MetricClass {
    /// No prefix: passenger tire after ISO 4000-1 and UN R30.
    Passenger,
    /// `HL`: passenger tire for high loads.
    HighLoad,
    /// `P`: passenger tire after the TRA yearbook.
    PMetric,
    /// `LT`: light truck tire after the TRA yearbook.
    LightTruck,
    /// `C` behind the rim: light commercial tire after UN R54.
    Commercial,
    /// No prefix, on a 15° rim: truck or bus tire after UN R54.
    Truck,
}

impl MetricClass {
    /// A stable name: `metric`, `high_load`, `p_metric`, `lt_metric`, `commercial`, `truck_metric`.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::MetricClass::LightTruck.name(), "lt_metric");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Self::Passenger => "metric",
            Self::HighLoad => "high_load",
            Self::PMetric => "p_metric",
            Self::LightTruck => "lt_metric",
            Self::Commercial => "commercial",
            Self::Truck => "truck_metric",
        }
    }

    /// Whether tires of this class are passenger car tires, to which the passenger rules apply.
    ///
    /// ```
    /// use beadseat::tire::MetricClass;
    /// assert!(MetricClass::PMetric.is_passenger() && !MetricClass::LightTruck.is_passenger());
    /// ```
    pub const fn is_passenger(self) -> bool {
        matches!(self, Self::Passenger | Self::HighLoad | Self::PMetric)
    }
}

/// A metric tire size.
///
/// # Syntax
/// ```text
/// size      = [ "P" | "LT" | "HL" ] width "/" aspect structure rim [ "C" ]
/// structure = [ "S" | "H" | "V" | "Z" ] "R" [ "F" ] | "D" | "-" | "B"
/// ```
/// White space may stand between any two parts, and instead of the stroke; lower case is read; a
/// trailing `LT` is read as the prefix. Width: 95 to 495 mm in steps of 5. Aspect ratio: 20 to 95 in
/// steps of 5. A size without prefix on a half-inch rim is a truck size.
///
/// Accepted: `205/55R16`, `P205/55 ZR 16`, `195/65-15`, `LT245/75R17`, `195/70R15C`, `HL245/40R19`,
/// `295/80R22.5`. Refused: `206/55R16`, `205/55/16`, `205/55R27`.
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
    class: MetricClass,
    structure: Structure,
    speed: Option<InSizeSpeed>,
    run_flat: bool,
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

        let at = scanner.at();
        let width_mm = tri!(scanner.whole(Field::SectionWidth));
        if !is_step_of_five(width_mm, 95, 495) {
            return Err(scanner.range(Field::SectionWidth, at));
        }

        if !scanner.eat(b'/') {
            if !scanner.skip_space() {
                return Err(scanner.missing(Field::AspectRatio));
            }
            scanner.eat(b'/');
        }
        scanner.skip_space();
        let at = scanner.at();
        let aspect = tri!(scanner.whole(Field::AspectRatio));
        if !is_step_of_five(aspect, 20, 95) {
            return Err(scanner.range(Field::AspectRatio, at));
        }

        let (structure, speed) = if scanner.eat(b'R') {
            (Structure::Radial, None)
        } else {
            scanner.skip_space();
            tri!(Self::scan_structure(scanner))
        };
        let run_flat = matches!(structure, Structure::Radial) && scanner.eat(b'F');
        scanner.skip_space();
        let rim = tri!(RimDiameter::scan(scanner));

        let class = match (prefix, Self::scan_suffix(scanner)) {
            (None, None) => match rim.seat_taper() {
                SeatTaper::FiveDegree => MetricClass::Passenger,
                SeatTaper::FifteenDegree => MetricClass::Truck,
            },
            (Some(class), None) | (None, Some(class)) => class,
            (Some(_), Some(_)) => {
                return Err(scanner.error(crate::ParseErrorKind::Contradiction, Field::Text, start));
            }
        };
        Ok(Self { width_mm, rim, aspect: aspect as u8, class, structure, speed, run_flat })
    }

    #[inline(always)]
    const fn scan_prefix(scanner: &mut Scanner<'_>) -> Option<MetricClass> {
        if scanner.eat(b'P') {
            Some(MetricClass::PMetric)
        } else if scanner.eat_str("LT") {
            Some(MetricClass::LightTruck)
        } else if scanner.eat_str("HL") {
            Some(MetricClass::HighLoad)
        } else {
            None
        }
    }

    /// The structure but its `F`, and the speed letter in front of it.
    #[inline(always)]
    const fn scan_structure(
        scanner: &mut Scanner<'_>,
    ) -> Result<(Structure, Option<InSizeSpeed>), ParseError> {
        let speed = match scanner.peek(0) {
            b'R' => None,
            b'Z' => Some(InSizeSpeed::Z),
            b'S' => Some(InSizeSpeed::S),
            b'H' => Some(InSizeSpeed::H),
            b'V' => Some(InSizeSpeed::V),
            b'-' | b'D' => {
                scanner.step(1);
                return Ok((Structure::Diagonal, None));
            }
            b'B' => {
                scanner.step(1);
                return Ok((Structure::BiasBelted, None));
            }
            _ => return Err(scanner.missing(Field::Structure)),
        };
        if speed.is_some() {
            scanner.step(1);
        }
        if scanner.eat(b'R') {
            Ok((Structure::Radial, speed))
        } else {
            Err(scanner.missing(Field::Structure))
        }
    }

    /// `C` or a trailing `LT`, each a word of its own.
    #[inline(always)]
    const fn scan_suffix(scanner: &mut Scanner<'_>) -> Option<MetricClass> {
        scanner.skip_space();
        if scanner.eat_alone("C") {
            Some(MetricClass::Commercial)
        } else if scanner.eat_alone("LT") {
            Some(MetricClass::LightTruck)
        } else {
            None
        }
    }

    #[inline]
    pub(crate) fn write(&self, text: &mut Text) {
        match self.class {
            MetricClass::PMetric => _ = text.str("P"),
            MetricClass::LightTruck => _ = text.str("LT"),
            MetricClass::HighLoad => _ = text.str("HL"),
            MetricClass::Passenger | MetricClass::Commercial | MetricClass::Truck => {}
        }
        text.whole(u32::from(self.width_mm)).byte(b'/').whole(u32::from(self.aspect));
        if let Some(speed) = self.speed {
            text.byte(match speed {
                InSizeSpeed::S => b'S',
                InSizeSpeed::H => b'H',
                InSizeSpeed::V => b'V',
                InSizeSpeed::Z => b'Z',
            });
        }
        text.byte(match self.structure {
            Structure::Radial => b'R',
            Structure::Diagonal => b'-',
            Structure::BiasBelted => b'B',
        });
        if self.run_flat {
            text.byte(b'F');
        }
        self.rim.write(text);
        if matches!(self.class, MetricClass::Commercial) {
            text.byte(b'C');
        }
    }

    pub(crate) const fn with_high_load(self) -> Option<Self> {
        match self.class {
            MetricClass::Passenger | MetricClass::HighLoad => {
                Some(Self { class: MetricClass::HighLoad, ..self })
            }
            _ => None,
        }
    }

    /// Which rules the size follows.
    pub const fn class(&self) -> MetricClass {
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

    /// The nominal rim diameter.
    pub const fn rim_diameter(&self) -> RimDiameter {
        self.rim
    }

    /// The structure.
    pub const fn structure(&self) -> Structure {
        self.structure
    }

    /// The speed letter inside the size.
    pub const fn in_size_speed(&self) -> Option<InSizeSpeed> {
        self.speed
    }

    /// Whether the structure is marked `RF`: a tire that can be driven on for a while without air.
    ///
    /// ```
    /// assert!(beadseat::tire::Metric::parse("205/55RF16")?.is_run_flat());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_run_flat(&self) -> bool {
        self.run_flat
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

designation!(Metric in "beadseat::tire", "245/75R17 LT" => "LT245/75R17", wrong "P195/70R15C");
