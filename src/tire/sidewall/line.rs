//! Everything that stands on a sidewall behind the size, in any order.

pub(super) mod contradiction;
mod limit;

pub use limit::MoldedLimit;

use crate::molded::{self, MoldedLoad, MoldedPressure, MoldedSpeed};
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};
use crate::tire::designation::Mark;
use crate::tire::load_version::is_ply_rating;
use crate::tire::sidewall::set::MarkSet;
use crate::tire::{
    Formation, LoadRange, LoadVersion, ServiceDescription, SpeedSymbol, Tire, TireSize,
    sidewall::SidewallMark,
};

/// A line of a sidewall: the tire, and what else is molded beside its size.
///
/// # Syntax
/// ```text
/// line = size { service | version | range | mark | limit }
/// ```
/// A mark is one of [`SidewallMark::WORDS`], of which ten may stand, a limit a [`MoldedLimit`]. In any order,
/// each at most once, but for two service descriptions: the second is the one in a circle,
/// another load at another speed. It stands behind the first, in brackets or without: `104/102R (97T)`. But
/// `(94Y)` is above 300 km/h here too, first or second, and so is of motorcycles `(58W)` above 270 km/h.
///
/// The canonical form is in the order above, marks in the order of their table.
///
/// ```
/// use beadseat::{MoldedLoad, tire::sidewall::SidewallLine, units::kpa};
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
    load_pressure_dual: Option<MoldedPressure>,
    max_pressure: Option<MoldedPressure>,
    max_speed: Option<MoldedSpeed>,
    /// A version or range that the tire's family does not have.
    stray_version: Option<LoadVersion>,
    stray_range: Option<LoadRange>,
    marks: MarkSet,
}

/// So many that the longest canonical form can be read again.
const MOST_MARKS: u32 = 10;

impl SidewallLine {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let size = tri!(TireSize::scan(scanner));
        Self::scan_behind(size, scanner)
    }

    /// What stands behind a size.
    pub(super) const fn scan_behind(size: TireSize, scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let mut line = Self::of(Tire::of_size(size));
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
        if let Some(mark) = Self::scan_usual_mark(scanner) {
            return self.take_mark(mark, scanner, at);
        }
        if MoldedLimit::is_next(scanner) {
            let limit = tri!(MoldedLimit::scan(scanner));
            return match self.take_limit(limit) {
                Ok(()) => Ok(true),
                Err(field) => Err(scanner.error(ParseErrorKind::Contradiction, field, at)),
            };
        }
        let size = self.tire.size;
        match tri!(self.tire.scan_mark(scanner, version_given)) {
            Some(Mark::Version(version)) if !size.has_load_version() => self.stray_version = Some(version),
            Some(Mark::Range(range)) if !size.has_load_range() => {
                if matches!(self.stray_range, Some(other) if !other.is(range)) {
                    return Err(scanner.error(ParseErrorKind::Contradiction, Field::LoadRange, at));
                }
                self.stray_range = Some(range);
            }
            Some(mark) => self.tire.take(mark),
            None if (scanner.at_digit() && !is_ply_rating(*scanner)) || scanner.is_at(b'(') => {
                if self.second.is_some() {
                    return Err(scanner.error(ParseErrorKind::Contradiction, Field::LoadIndex, at));
                }
                self.second = Some(tri!(self.scan_second(scanner)));
            }
            None => {
                return match tri!(SidewallMark::scan_word(scanner)) {
                    Some(mark) => self.take_mark(mark, scanner, at),
                    None => Ok(false),
                };
            }
        }
        Ok(true)
    }

    const fn take_mark(
        &mut self,
        mark: SidewallMark,
        scanner: &Scanner<'_>,
        at: usize,
    ) -> Result<bool, ParseError> {
        if self.marks.contains(mark) {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::SidewallMark, at));
        }
        if self.marks.len() == MOST_MARKS {
            return Err(scanner.range(Field::SidewallMark, at));
        }
        self.marks.insert(mark);
        Ok(true)
    }

    /// Keeps a limit; the field of one that is there already.
    const fn take_limit(&mut self, limit: MoldedLimit) -> Result<(), Field> {
        match limit {
            MoldedLimit::Load { formation, load, at } => {
                let (of_load, of_pressure) = match formation {
                    Formation::Single => (&mut self.max_load, &mut self.load_pressure),
                    Formation::Dual => (&mut self.max_load_dual, &mut self.load_pressure_dual),
                };
                if of_load.is_some() {
                    return Err(Field::MaximumLoad);
                }
                (*of_load, *of_pressure) = (Some(load), at);
            }
            MoldedLimit::Pressure(_) if self.max_pressure.is_some() => return Err(Field::MaximumPressure),
            MoldedLimit::Pressure(pressure) => self.max_pressure = Some(pressure),
            MoldedLimit::Speed(_) if self.max_speed.is_some() => return Err(Field::MaximumSpeed),
            MoldedLimit::Speed(speed) => self.max_speed = Some(speed),
        }
        Ok(())
    }

    /// All limits, in the canonical order.
    pub(super) fn limits(&self) -> impl Iterator<Item = MoldedLimit> + use<> {
        let load = |formation, load: Option<MoldedLoad>, at| {
            load.map(|load| MoldedLimit::Load { formation, load, at })
        };
        [
            load(Formation::Single, self.max_load, self.load_pressure),
            load(Formation::Dual, self.max_load_dual, self.load_pressure_dual),
            self.max_pressure.map(MoldedLimit::Pressure),
            self.max_speed.map(MoldedLimit::Speed),
        ]
        .into_iter()
        .flatten()
    }

    /// The service description in a circle. Brackets stand for the circle, but where they belong to the symbol.
    const fn scan_second(&self, scanner: &mut Scanner<'_>) -> Result<ServiceDescription, ParseError> {
        let open_w = self.tire.size.has_open_w();
        if let Some(mut inside) = molded::open(scanner) {
            match ServiceDescription::scan(&mut inside) {
                Ok(service)
                    if !(matches!(service.speed(), SpeedSymbol::Y | SpeedSymbol::AboveY)
                        || open_w && matches!(service.speed(), SpeedSymbol::W)) =>
                {
                    *scanner = inside;
                    tri!(molded::close(scanner, Field::SpeedSymbol));
                    return Ok(service);
                }
                _ => {}
            }
        }
        match tri!(self.tire.scan_service(scanner)) {
            Some(service) => Ok(service),
            None => Err(scanner.missing(Field::LoadIndex)),
        }
    }

    /// The marks that stand on most tires, without a look at the whole table.
    const fn scan_usual_mark(scanner: &mut Scanner<'_>) -> Option<SidewallMark> {
        match scanner.peek(0) {
            b'M' if scanner.eat_alone("M+S") || scanner.eat_alone("M&S") || scanner.eat_alone("M/S") => {
                Some(SidewallMark::MudAndSnow)
            }
            b'3' if scanner.eat_alone("3PMSF") => Some(SidewallMark::SevereSnow),
            b'T' if scanner.eat_alone("TUBELESS") || scanner.eat_alone("TL") => Some(SidewallMark::Tubeless),
            b'T' if scanner.eat_alone("TUBE TYPE") || scanner.eat_alone("TT") => Some(SidewallMark::TubeType),
            _ => None,
        }
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.tire.size.write(text);
        self.write_parts(text, " ");
    }

    /// What stands behind the size.
    pub(super) fn write_behind(&self, text: &mut Text) {
        self.write_parts(text, "");
    }

    fn write_parts(&self, text: &mut Text, before: &'static str) {
        let mut before = before;
        let mut next = |text: &mut Text| {
            text.str(before);
            before = " ";
        };
        for service in [self.tire.service, self.second].into_iter().flatten() {
            next(text);
            service.write(text);
        }
        for version in [self.tire.version, self.stray_version].into_iter().flatten() {
            next(text);
            version.write(text);
        }
        for range in [self.tire.range, self.stray_range].into_iter().flatten() {
            next(text);
            range.write(text);
        }
        self.tire.earthmover.write(text);
        for mark in self.marks.iter() {
            next(text);
            mark.write(text);
        }
        for limit in self.limits() {
            next(text);
            limit.write(text);
        }
    }

    /// Whether nothing but maxima stands behind the size.
    pub(super) const fn has_only_limits(&self) -> bool {
        self.tire.service.is_none()
            && self.given_version().is_none()
            && self.given_range().is_none()
            && self.marks.len() == 0
    }

    /// Whether nothing stands beside the tire.
    pub(crate) const fn is_bare(&self) -> bool {
        self.second.is_none()
            && self.max_load.is_none()
            && self.max_load_dual.is_none()
            && self.max_pressure.is_none()
            && self.max_speed.is_none()
            && self.stray_version.is_none()
            && self.stray_range.is_none()
            && self.marks.len() == 0
    }

    /// The load version, be it one that the family of the size has or not.
    pub(super) const fn given_version(&self) -> Option<LoadVersion> {
        match self.tire.version {
            None => self.stray_version,
            version => version,
        }
    }

    /// The load range, be it one that the family of the size has or not.
    pub(super) const fn given_range(&self) -> Option<LoadRange> {
        match self.tire.range {
            None => self.stray_range,
            range => range,
        }
    }

    /// The tire that the line describes.
    pub const fn tire(&self) -> Tire {
        self.tire
    }

    /// The service description in a circle: another load at another speed.
    ///
    /// ```
    /// use beadseat::tire::{ServiceDescription, sidewall::SidewallLine};
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

    /// The pressure molded beside the maximum load: the reference pressure. Beside that of a pair, if it stands
    /// beside that alone.
    pub const fn load_pressure(&self) -> Option<MoldedPressure> {
        match self.load_pressure {
            None => self.load_pressure_dual,
            single => single,
        }
    }

    /// The pressure molded beside the maximum load of a tire of a pair.
    ///
    /// ```
    /// use beadseat::{MoldedPressure, tire::sidewall::SidewallLine};
    /// let line = SidewallLine::parse("LT245/75R17 MAX LOAD 3195 lb AT 80 psi MAX LOAD DUAL 2910 lb AT 75 psi")?;
    /// assert_eq!(line.load_pressure(), Some(MoldedPressure::Psi(80)));
    /// assert_eq!(line.load_pressure_dual(), Some(MoldedPressure::Psi(75)));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn load_pressure_dual(&self) -> Option<MoldedPressure> {
        self.load_pressure_dual
    }

    /// The maximum pressure molded by itself.
    pub const fn max_pressure(&self) -> Option<MoldedPressure> {
        self.max_pressure
    }

    /// The maximum speed molded by itself, as on temporary spares.
    ///
    /// ```
    /// use beadseat::{MoldedSpeed, tire::sidewall::SidewallLine};
    /// let line = SidewallLine::parse("T125/70D16 96M MAX SPEED 80 KM/H (50 MPH)")?;
    /// assert_eq!(line.max_speed(), Some(MoldedSpeed::KilometresPerHour(80)));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn max_speed(&self) -> Option<MoldedSpeed> {
        self.max_speed
    }

    /// The marks of [`SidewallMark::WORDS`] that stand in the line, in the order of their table.
    ///
    /// ```
    /// use beadseat::tire::sidewall::{SidewallLine, SidewallMark};
    /// let line = SidewallLine::parse("205/55R16 91V RADIAL TUBELESS M+S")?;
    /// let marks: Vec<_> = line.marks().collect();
    /// assert_eq!(marks, [SidewallMark::MudAndSnow, SidewallMark::Tubeless, SidewallMark::Radial]);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn marks(&self) -> impl Iterator<Item = SidewallMark> + use<> {
        self.marks.iter()
    }

    /// Whether it is marked M+S.
    pub const fn is_mud_and_snow(&self) -> bool {
        self.marks.contains(SidewallMark::MudAndSnow)
    }

    /// Whether it bears the three-peak mountain with snowflake.
    pub const fn is_for_severe_snow(&self) -> bool {
        self.marks.contains(SidewallMark::SevereSnow)
    }

    /// Whether it is marked TUBELESS (true) or TUBE TYPE (false).
    ///
    /// ```
    /// use beadseat::tire::sidewall::SidewallLine;
    /// assert_eq!(SidewallLine::parse("8.25R20 TUBE TYPE")?.is_tubeless(), Some(false));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_tubeless(&self) -> Option<bool> {
        let (tubeless, tube) = (SidewallMark::Tubeless, SidewallMark::TubeType);
        match (self.marks.contains(tubeless), self.marks.contains(tube)) {
            (true, false) => Some(true),
            (false, true) => Some(false),
            _ => None,
        }
    }
}

impl SidewallLine {
    /// A tire with nothing more beside it.
    const fn of(tire: Tire) -> Self {
        Self {
            tire,
            second: None,
            max_load: None,
            max_load_dual: None,
            load_pressure: None,
            load_pressure_dual: None,
            max_pressure: None,
            max_speed: None,
            stray_version: None,
            stray_range: None,
            marks: MarkSet::new(),
        }
    }
}

impl From<Tire> for SidewallLine {
    /// A line of a tire and nothing more.
    fn from(tire: Tire) -> Self {
        Self::of(tire)
    }
}

designation!(SidewallLine in "beadseat::tire::sidewall", "205/55R16 M+S XL 94V" => "205/55R16 94V XL M+S", wrong "205/55R16 91V WIDE");
