//! Everything that stands on a sidewall behind the size, in any order.

mod contradiction;

pub use contradiction::LineContradiction;

use super::{LoadRange, LoadVersion, Mark, ServiceDescription, SpeedSymbol, Tire, TireSize, is_ply_rating};
use crate::molded::{self, MoldedLoad, MoldedPressure, MoldedSpeed};
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};

/// A line of a sidewall: the tire, and what else is molded beside its size.
///
/// # Syntax
/// ```text
/// line     = size { service | version | range | mark | load | pressure | speed }
/// mark     = "M+S" | "3PMSF" | "TUBELESS" | "TUBE TYPE"
/// load     = "MAX" "LOAD" [ "SINGLE" | "DUAL" ] number ( "kg" | "lb" ) [ "(" number unit ")" ] [ "AT" number … ]
/// pressure = "MAX" ( "PRESS" | "PRESSURE" ) number ( "kPa" | "psi" ) [ "(" number unit ")" ]
/// speed    = "MAX" [ "SPEED" ] number ( "km/h" | "mph" ) [ "(" number unit ")" ], or "MAX" behind the number
/// ```
/// In any order, each at most once, but for two service descriptions: the second is the one in a circle,
/// another load at another speed. It stands behind the first, in brackets or without: `104/102R (97T)`. But
/// `(94Y)` is above 300 km/h here too, first or second.
///
/// Of a load, pressure or speed in both units the first is kept, and the second must say the same within
/// what rounding and the yearbooks' grids explain. The canonical form is in the order above.
///
/// ```
/// use beadseat::{MoldedLoad, tire::SidewallLine, units::kpa};
/// let line: SidewallLine =
///     "LT245/75R17 TUBELESS LRE 121/118S M+S MAX LOAD SINGLE 1450 kg (3195 LBS) AT 550 kPa (80 PSI)".parse()?;
/// assert_eq!(line.to_string(), "LT245/75R17 121/118S LRE M+S TUBELESS MAX LOAD 1450 kg AT 550 kPa");
/// assert_eq!(line.max_load(), Some(MoldedLoad::Kilograms(1450)));
/// assert_eq!(line.load_pressure().map(|p| p.pressure()), Some(kpa(550.0)));
/// assert_eq!(line.contradictions().count(), 0);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct SidewallLine {
    tire: Tire,
    second: Option<ServiceDescription>,
    max_load: Option<MoldedLoad>,
    max_load_dual: Option<MoldedLoad>,
    load_pressure: Option<MoldedPressure>,
    max_pressure: Option<MoldedPressure>,
    max_speed: Option<MoldedSpeed>,
    /// A version or range that the tire's family does not have.
    stray_version: Option<LoadVersion>,
    stray_range: Option<LoadRange>,
    marks: u8,
}

const MUD_AND_SNOW: u8 = 1;
const SEVERE_SNOW: u8 = 2;
const TUBELESS: u8 = 4;
const TUBE_TYPE: u8 = 8;

/// Marks that are one word or two, in the canonical order.
const MARKS: [(u8, &str); 4] =
    [(MUD_AND_SNOW, "M+S"), (SEVERE_SNOW, "3PMSF"), (TUBELESS, "TUBELESS"), (TUBE_TYPE, "TUBE TYPE")];

impl SidewallLine {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let size = tri!(TireSize::scan(scanner));
        let mut line = Self {
            tire: Tire { size, service: None, version: None, range: None },
            second: None,
            max_load: None,
            max_load_dual: None,
            load_pressure: None,
            max_pressure: None,
            max_speed: None,
            stray_version: None,
            stray_range: None,
            marks: 0,
        };
        let mut version_given = false;
        loop {
            scanner.skip_space();
            if scanner.at_end() || !tri!(line.scan_part(scanner, &mut version_given)) {
                return Ok(line);
            }
        }
    }

    /// One mark; false if none is here.
    const fn scan_part(
        &mut self,
        scanner: &mut Scanner<'_>,
        version_given: &mut bool,
    ) -> Result<bool, ParseError> {
        let at = scanner.at();
        if let Some(mark) = Self::scan_mark(scanner) {
            if self.marks & mark != 0 {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::SidewallMark, at));
            }
            self.marks |= mark;
            return Ok(true);
        }
        if scanner.eat_word("MAX") {
            tri!(self.scan_maximum(scanner));
            return Ok(true);
        }
        if scanner.at_digit() && MoldedSpeed::is_next(scanner) {
            tri!(self.scan_speed(scanner));
            scanner.skip_space();
            return if scanner.eat_word("MAX") {
                Ok(true)
            } else {
                Err(scanner.missing(Field::MaximumSpeed))
            };
        }
        let passenger = self.tire.size.is_marked_passenger();
        match tri!(self.tire.scan_mark(scanner, version_given)) {
            Some(Mark::Version(version)) if !passenger => self.stray_version = Some(version),
            Some(Mark::Range(range)) if passenger => {
                if self.stray_range.is_some() {
                    return Err(scanner.error(ParseErrorKind::Contradiction, Field::LoadRange, at));
                }
                self.stray_range = Some(range);
            }
            Some(mark) => self.tire.take(mark),
            None if (scanner.at_digit() && !is_ply_rating(*scanner)) || scanner.is_at(b'(') => {
                if self.second.is_some() {
                    return Err(scanner.error(ParseErrorKind::Contradiction, Field::LoadIndex, at));
                }
                self.second = Some(tri!(Self::scan_second(scanner)));
            }
            None => return Ok(false),
        }
        Ok(true)
    }

    /// The service description in a circle. Brackets stand for the circle, but around the Y of more than
    /// 300 km/h.
    const fn scan_second(scanner: &mut Scanner<'_>) -> Result<ServiceDescription, ParseError> {
        if let Some(mut inside) = molded::open(scanner) {
            match ServiceDescription::scan(&mut inside) {
                Ok(service) if !matches!(service.speed(), SpeedSymbol::Y | SpeedSymbol::AboveY) => {
                    *scanner = inside;
                    tri!(molded::close(scanner, Field::SpeedSymbol));
                    return Ok(service);
                }
                _ => {}
            }
        }
        ServiceDescription::scan(scanner)
    }

    const fn scan_mark(scanner: &mut Scanner<'_>) -> Option<u8> {
        match scanner.peek(0) {
            b'M' if scanner.eat_alone("M+S") || scanner.eat_alone("M&S") || scanner.eat_alone("M/S") => {
                Some(MUD_AND_SNOW)
            }
            b'3' if scanner.eat_alone("3PMSF") => Some(SEVERE_SNOW),
            b'T' if scanner.eat_alone("TUBELESS") || scanner.eat_alone("TL") => Some(TUBELESS),
            b'T' if scanner.eat_alone("TUBE TYPE") || scanner.eat_alone("TT") => Some(TUBE_TYPE),
            _ => None,
        }
    }

    /// What stands behind `MAX`.
    const fn scan_maximum(&mut self, scanner: &mut Scanner<'_>) -> Result<(), ParseError> {
        scanner.eat(b'.');
        scanner.skip_space();
        let at = scanner.at();
        if scanner.eat_word("LOAD") {
            scanner.skip_space();
            let dual = scanner.eat_word("DUAL");
            if !dual {
                scanner.eat_word("SINGLE");
            }
            scanner.skip_space();
            let load = tri!(MoldedLoad::scan(scanner));
            let place = if dual { &mut self.max_load_dual } else { &mut self.max_load };
            if place.is_some() {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::MaximumLoad, at));
            }
            *place = Some(load);
            let behind = scanner.at();
            scanner.skip_space();
            if !scanner.eat_word("AT") {
                scanner.back_to(behind);
                return Ok(());
            }
            scanner.skip_space();
            let at = scanner.at();
            let pressure = tri!(MoldedPressure::scan(scanner));
            // Single and dual load are molded at one pressure or at two; the first is kept.
            match self.load_pressure {
                Some(_) if !dual => {
                    return Err(scanner.error(ParseErrorKind::Contradiction, Field::MaximumPressure, at));
                }
                Some(_) => {}
                None => self.load_pressure = Some(pressure),
            }
            return Ok(());
        }
        if scanner.at_digit() || scanner.eat_word("SPEED") {
            scanner.skip_space();
            return self.scan_speed(scanner);
        }
        if !(scanner.eat_word("PRESSURE") || scanner.eat_word("PRESS")) {
            return Err(scanner.missing(Field::MaximumLoad));
        }
        scanner.eat(b'.');
        scanner.skip_space();
        let pressure = tri!(MoldedPressure::scan(scanner));
        if self.max_pressure.is_some() {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::MaximumPressure, at));
        }
        self.max_pressure = Some(pressure);
        Ok(())
    }

    const fn scan_speed(&mut self, scanner: &mut Scanner<'_>) -> Result<(), ParseError> {
        let at = scanner.at();
        let speed = tri!(MoldedSpeed::scan(scanner));
        if self.max_speed.is_some() {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::MaximumSpeed, at));
        }
        self.max_speed = Some(speed);
        Ok(())
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.tire.size.write(text);
        for service in [self.tire.service, self.second].into_iter().flatten() {
            text.byte(b' ');
            service.write(text);
        }
        for version in [self.tire.version, self.stray_version].into_iter().flatten() {
            text.byte(b' ');
            version.write(text);
        }
        for range in [self.tire.range, self.stray_range].into_iter().flatten() {
            text.byte(b' ');
            range.write(text);
        }
        for (bit, mark) in MARKS {
            if self.marks & bit != 0 {
                text.byte(b' ').str(mark);
            }
        }
        for (label, load) in [(" MAX LOAD ", self.max_load), (" MAX LOAD DUAL ", self.max_load_dual)] {
            if let Some(load) = load {
                text.str(label);
                load.write(text);
                // The pressure belongs to the first load that stands.
                let first = label == " MAX LOAD " || self.max_load.is_none();
                if let Some(pressure) = self.load_pressure.filter(|_| first) {
                    text.str(" AT ");
                    pressure.write(text);
                }
            }
        }
        if let Some(pressure) = self.max_pressure {
            text.str(" MAX PRESS ");
            pressure.write(text);
        }
        if let Some(speed) = self.max_speed {
            text.str(" MAX SPEED ");
            speed.write(text);
        }
    }

    /// The tire.
    pub const fn tire(&self) -> Tire {
        self.tire
    }

    /// The service description in a circle: another load at another speed.
    ///
    /// ```
    /// use beadseat::tire::{ServiceDescription, SidewallLine};
    /// let line = SidewallLine::parse("225/75R16C 121/120R (116T)")?;
    /// assert_eq!(line.second_service(), Some(ServiceDescription::parse("116T")?));
    /// assert_eq!(line.to_string(), "225/75R16C 121/120R 116T");
    /// let line = SidewallLine::parse("245/40ZR19 98W (98Y)")?;
    /// assert!(line.second_service().is_some_and(|s| s.speed().is_open_ended()));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn second_service(&self) -> Option<ServiceDescription> {
        self.second
    }

    /// The maximum load molded for a single tire.
    pub const fn max_load(&self) -> Option<MoldedLoad> {
        self.max_load
    }

    /// The maximum load molded for a tire of a pair.
    pub const fn max_load_dual(&self) -> Option<MoldedLoad> {
        self.max_load_dual
    }

    /// The pressure molded beside the maximum load: the reference pressure.
    pub const fn load_pressure(&self) -> Option<MoldedPressure> {
        self.load_pressure
    }

    /// The maximum pressure molded by itself.
    pub const fn max_pressure(&self) -> Option<MoldedPressure> {
        self.max_pressure
    }

    /// The maximum speed molded by itself, as on temporary spares.
    ///
    /// ```
    /// use beadseat::{MoldedSpeed, tire::SidewallLine};
    /// let line = SidewallLine::parse("T125/70D16 96M MAX SPEED 80 KM/H (50 MPH)")?;
    /// assert_eq!(line.max_speed(), Some(MoldedSpeed::KilometresPerHour(80)));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn max_speed(&self) -> Option<MoldedSpeed> {
        self.max_speed
    }

    /// Whether it is marked M+S.
    pub const fn is_mud_and_snow(&self) -> bool {
        self.marks & MUD_AND_SNOW != 0
    }

    /// Whether it bears the three-peak mountain with snowflake.
    pub const fn is_for_severe_snow(&self) -> bool {
        self.marks & SEVERE_SNOW != 0
    }

    /// Whether it is marked TUBELESS (true) or TUBE TYPE (false).
    ///
    /// ```
    /// use beadseat::tire::SidewallLine;
    /// assert_eq!(SidewallLine::parse("8.25R20 TUBE TYPE")?.is_tubeless(), Some(false));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_tubeless(&self) -> Option<bool> {
        match (self.marks & TUBELESS != 0, self.marks & TUBE_TYPE != 0) {
            (true, false) => Some(true),
            (false, true) => Some(false),
            _ => None,
        }
    }
}

designation!(SidewallLine in "beadseat::tire", "205/55R16 M+S XL 94V" => "205/55R16 94V XL M+S", wrong "205/55R16 91V WIDE");
