//! Everything that stands on a sidewall behind the size, in any order.

use super::{
    InSizeSpeed, LoadRange, LoadVersion, Mark, ServiceDescription, SpeedSymbol, Tire, TireSize, is_ply_rating,
};
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};
use crate::units::{self, Mass, Pressure, in_kg, in_kpa, in_lb, in_psi};

/// A load as it is molded, with its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum MoldedLoad {
    /// Kilograms.
    Kilograms(u16),
    /// Pounds.
    Pounds(u16),
}

impl MoldedLoad {
    /// The load.
    ///
    /// ```
    /// use beadseat::{tire::MoldedLoad, units::lb};
    /// assert_eq!(MoldedLoad::Pounds(3195).load(), lb(3195.0));
    /// ```
    pub const fn load(self) -> Mass {
        match self {
            Self::Kilograms(kg) => units::kg(kg as f64),
            Self::Pounds(lb) => units::lb(lb as f64),
        }
    }

    fn write(self, text: &mut Text) {
        match self {
            Self::Kilograms(kg) => text.whole(u32::from(kg)).str(" kg"),
            Self::Pounds(lb) => text.whole(u32::from(lb)).str(" lb"),
        };
    }
}

/// A pressure as it is molded, with its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum MoldedPressure {
    /// Kilopascals.
    Kilopascals(u16),
    /// Pounds a square inch.
    Psi(u16),
}

impl MoldedPressure {
    /// The pressure.
    ///
    /// ```
    /// use beadseat::{tire::MoldedPressure, units::kpa};
    /// assert_eq!(MoldedPressure::Kilopascals(300).pressure(), kpa(300.0));
    /// ```
    pub const fn pressure(self) -> Pressure {
        match self {
            Self::Kilopascals(kpa) => units::kpa(kpa as f64),
            Self::Psi(psi) => units::psi(psi as f64),
        }
    }

    fn write(self, text: &mut Text) {
        match self {
            Self::Kilopascals(kpa) => text.whole(u32::from(kpa)).str(" kPa"),
            Self::Psi(psi) => text.whole(u32::from(psi)).str(" psi"),
        };
    }
}

/// A line of a sidewall: the tire, and what else is molded beside its size.
///
/// # Syntax
/// ```text
/// line     = size { service | version | range | "M+S" | "3PMSF" | "TUBELESS" | "TUBE TYPE" | load | pressure }
/// load     = "MAX" "LOAD" [ "SINGLE" | "DUAL" ] number ( "kg" | "lb" ) [ "(" number unit ")" ] [ "AT" number … ]
/// pressure = "MAX" ( "PRESS" | "PRESSURE" ) number ( "kPa" | "psi" ) [ "(" number unit ")" ]
/// ```
/// In any order, each at most once, but for two service descriptions: the second is the one in a circle.
/// Of a load or pressure in both units the first is kept, and the second must say the same within what
/// rounding and the yearbooks' grids explain. The canonical form is in the order above.
///
/// ```
/// use beadseat::{tire::{MoldedLoad, SidewallLine}, units::kpa};
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
                self.second = Some(tri!(ServiceDescription::scan(scanner)));
            }
            None => return Ok(false),
        }
        Ok(true)
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
            let load = tri!(Self::scan_load(scanner));
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
            let pressure = tri!(Self::scan_pressure(scanner));
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
        if !(scanner.eat_word("PRESSURE") || scanner.eat_word("PRESS")) {
            return Err(scanner.missing(Field::MaximumLoad));
        }
        scanner.eat(b'.');
        scanner.skip_space();
        let pressure = tri!(Self::scan_pressure(scanner));
        if self.max_pressure.is_some() {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::MaximumPressure, at));
        }
        self.max_pressure = Some(pressure);
        Ok(())
    }

    const fn scan_load(scanner: &mut Scanner<'_>) -> Result<MoldedLoad, ParseError> {
        let start = scanner.at();
        let load = tri!(Self::scan_one_load(scanner));
        if let Some(inner) = open(scanner) {
            *scanner = inner;
            let other = tri!(Self::scan_one_load(scanner));
            tri!(close(scanner, Field::MaximumLoad));
            // Yearbooks round pounds to 5 and 10, so up to 10 lb and a kilogram may lie between.
            let (a, b) = (in_kg(load.load()), in_kg(other.load()));
            if a - b > 5.6 || b - a > 5.6 {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::MaximumLoad, start));
            }
        }
        Ok(load)
    }

    const fn scan_one_load(scanner: &mut Scanner<'_>) -> Result<MoldedLoad, ParseError> {
        let at = scanner.at();
        let number = tri!(scanner.whole(Field::MaximumLoad));
        if number < 45 {
            return Err(scanner.range(Field::MaximumLoad, at));
        }
        scanner.skip_space();
        if scanner.eat_word("KG") {
            Ok(MoldedLoad::Kilograms(number))
        } else if scanner.eat_word("LBS") || scanner.eat_word("LB") {
            Ok(MoldedLoad::Pounds(number))
        } else {
            Err(scanner.missing(Field::MaximumLoad))
        }
    }

    const fn scan_pressure(scanner: &mut Scanner<'_>) -> Result<MoldedPressure, ParseError> {
        let start = scanner.at();
        let pressure = tri!(Self::scan_one_pressure(scanner));
        if let Some(inner) = open(scanner) {
            *scanner = inner;
            let other = tri!(Self::scan_one_pressure(scanner));
            tri!(close(scanner, Field::MaximumPressure));
            // Pounds a square inch are whole, kilopascals in tens: up to 1 psi and 5 kPa may lie between.
            let (a, b) = (in_kpa(pressure.pressure()), in_kpa(other.pressure()));
            if a - b > 12.0 || b - a > 12.0 {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::MaximumPressure, start));
            }
        }
        let behind = scanner.at();
        scanner.skip_space();
        if !scanner.eat_word("COLD") {
            scanner.back_to(behind);
        }
        Ok(pressure)
    }

    const fn scan_one_pressure(scanner: &mut Scanner<'_>) -> Result<MoldedPressure, ParseError> {
        let at = scanner.at();
        let number = tri!(scanner.whole(Field::MaximumPressure));
        if number < 10 || number > 1500 {
            return Err(scanner.range(Field::MaximumPressure, at));
        }
        scanner.skip_space();
        if scanner.eat_word("KPA") {
            Ok(MoldedPressure::Kilopascals(number))
        } else if scanner.eat_word("PSI") {
            Ok(MoldedPressure::Psi(number))
        } else {
            Err(scanner.missing(Field::MaximumPressure))
        }
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
    }

    /// The tire.
    pub const fn tire(&self) -> Tire {
        self.tire
    }

    /// The service description in a circle: another load at another speed.
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

    /// What cannot all be true in the line.
    ///
    /// ```
    /// use beadseat::tire::{LineContradiction, SidewallLine};
    /// let line: SidewallLine = "205/55ZR16 91V MAX LOAD 670 kg".parse()?;
    /// let found: Vec<_> = line.contradictions().collect();
    /// assert_eq!(found, [LineContradiction::SpeedBelowSize, LineContradiction::LoadAgainstIndex]);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn contradictions(&self) -> impl Iterator<Item = LineContradiction> + use<> {
        let line = *self;
        LineContradiction::ALL.iter().copied().filter(move |&c| line.has(c))
    }

    fn has(&self, contradiction: LineContradiction) -> bool {
        let service = self.tire.service;
        let differs = |molded: Option<MoldedLoad>, index: Option<super::LoadIndex>| match (molded, index) {
            (Some(MoldedLoad::Kilograms(kg)), Some(index)) => {
                (f64::from(kg) - in_kg(index.load())).abs() > 1.0
            }
            // The yearbooks' pounds lie on a grid of 5 or 10.
            (Some(MoldedLoad::Pounds(lb)), Some(index)) => (f64::from(lb) - in_lb(index.load())).abs() > 10.0,
            _ => false,
        };
        match contradiction {
            LineContradiction::SpeedBelowSize => {
                match (self.tire.size.in_size_speed(), service.map(|s| s.speed())) {
                    (Some(InSizeSpeed::Z), Some(speed)) => speed <= SpeedSymbol::V,
                    (Some(InSizeSpeed::V), Some(speed)) => speed <= SpeedSymbol::H,
                    (Some(InSizeSpeed::H), Some(speed)) => speed < SpeedSymbol::H,
                    (Some(InSizeSpeed::S), Some(speed)) => speed < SpeedSymbol::S,
                    _ => false,
                }
            }
            LineContradiction::VersionOfOtherFamily => self.stray_version.is_some(),
            LineContradiction::RangeOfOtherFamily => self.stray_range.is_some(),
            LineContradiction::LoadAgainstIndex => differs(self.max_load, service.map(|s| s.single())),
            LineContradiction::DualLoadAgainstIndex => {
                differs(self.max_load_dual, service.and_then(|s| s.dual()))
            }
            LineContradiction::DualLoadAboveSingle => self
                .max_load
                .zip(self.max_load_dual)
                .is_some_and(|(single, dual)| dual.load() > single.load()),
            LineContradiction::RangeAgainstPressure => {
                let default = self.tire.range.and_then(LoadRange::lt_reference_pressure);
                let metric = matches!(self.tire.size, TireSize::Metric(_));
                default.zip(self.load_pressure).is_some_and(|(default, molded)| {
                    metric && (in_psi(default) - in_psi(molded.pressure())).abs() > 3.0
                })
            }
            LineContradiction::PressureBelowReference => self
                .load_pressure
                .zip(self.max_pressure)
                .is_some_and(|(at, most)| in_kpa(at.pressure()) > in_kpa(most.pressure()) + 5.0),
            LineContradiction::TubelessAndTubeType => {
                self.marks & (TUBELESS | TUBE_TYPE) == TUBELESS | TUBE_TYPE
            }
            LineContradiction::LightAndReinforced => {
                self.tire.version == Some(LoadVersion::Light)
                    && self.tire.load_version() == Some(LoadVersion::High)
            }
        }
    }
}

designation!(SidewallLine in "beadseat::tire", "205/55R16 M+S XL 94V" => "205/55R16 94V XL M+S", wrong "205/55R16 91V WIDE");

/// `(` behind optional white space.
const fn open<'a>(scanner: &Scanner<'a>) -> Option<Scanner<'a>> {
    let mut ahead = *scanner;
    ahead.skip_space();
    if !ahead.eat(b'(') {
        return None;
    }
    ahead.skip_space();
    Some(ahead)
}

const fn close(scanner: &mut Scanner<'_>, field: Field) -> Result<(), ParseError> {
    scanner.skip_space();
    if scanner.eat(b')') { Ok(()) } else { Err(scanner.missing(field)) }
}

macro_rules! contradictions {
    ($($variant:ident = $text:literal,)*) => {
        /// Two things on one sidewall that cannot both be true.
        ///
        /// ```
        /// use beadseat::tire::LineContradiction;
        /// assert!(LineContradiction::SpeedBelowSize.text().contains("ZR"));
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum LineContradiction { $(#[doc = concat!($text, ".")] $variant,)* }

        impl LineContradiction {
            /// Every one.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// What is wrong, in a sentence.
            pub const fn text(self) -> &'static str {
                match self { $(Self::$variant => $text,)* }
            }
        }
    };
}

contradictions! {
    SpeedBelowSize = "the letter inside the size (ZR, VR, HR, SR) promises more speed than the speed symbol",
    VersionOfOtherFamily = "XL, LL and HL belong to passenger sizes, not to this family",
    RangeOfOtherFamily = "a load range or ply rating belongs to LT, C and truck sizes, not to this family",
    LoadAgainstIndex = "the molded maximum load is not the load of the load index",
    DualLoadAgainstIndex = "the molded maximum load for pairs is not the load of the second load index",
    DualLoadAboveSingle = "the maximum load of a tire in a pair is above that of a single one",
    RangeAgainstPressure = "the pressure beside the maximum load is not the one the load range stands for on this size",
    PressureBelowReference = "the maximum pressure is below the pressure of the maximum load",
    TubelessAndTubeType = "TUBELESS and TUBE TYPE exclude each other",
    LightAndReinforced = "LL and HL exclude each other",
}
