//! A tire as it is designated.

use super::earthmover::EarthmoverMarks;
use super::load_version::is_ply_rating;
use super::{LoadRange, LoadVersion, OffRoadCode, ServiceDescription, SpeedSymbol, TireSize};
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};

/// A tire: size, service description, load version, load range.
///
/// # Syntax
/// ```text
/// tire = size { service | version | range | stars | codes | class }      each at most once, in any order
/// stars = "*" | "**" | "***"
/// codes = code [ "/" code ]
/// class = "M/C" | "LT"
/// ```
/// `XL`, `LL` and `HL` belong to sizes of cars and motorcycles, a load range or ply rating to all but metric sizes
/// of cars, and either may be said twice in two ways; of `LT`, `ST` and half-inch sizes its letter may stand
/// alone, or behind a stroke, common practice. Stars and codes ([`OffRoadCode`]) stand beside sizes of earthmovers, and
/// from 10 in and rim code 20 beside those by section width that do not say what they are. `M/C`, and of sizes without
/// an aspect ratio in millimetres `LT`, belongs to the size and is read behind all else too. The canonical form is
/// size, service description, version, range, stars, codes.
///
/// `Ord` is by size, then by service description, version, range, stars and codes; what is not given comes first.
///
/// Accepted: `205/55R16 91V`, `205/55 ZR16 (94Y) XL`, `LT245/75R17 121/118S LRE`, `LT245/75R17 121/118S E`,
/// `HL245/40R19 101Y XL`, `120/70ZR17M/C (58W)`, `100/90-19 57H M/C`, `26.5R25 ** L-3`. Refused: `205/55R16 91V 91V`, `205/55ZR16 (91W)`, `LT245/75R17 XL`.
///
/// ```
/// use beadseat::{tire::Tire, units::kg};
/// let tire: Tire = "225/45 r17 94w extra load".parse()?;
/// assert_eq!(tire.to_string(), "225/45R17 94W XL");
/// assert_eq!(tire.service().map(|s| s.single().load()), Some(kg(670.0)));
/// assert!("LT245/75R17 XL".parse::<Tire>().is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Tire {
    pub(super) size: TireSize,
    pub(super) service: Option<ServiceDescription>,
    pub(super) version: Option<LoadVersion>,
    pub(super) range: Option<LoadRange>,
    pub(super) earthmover: EarthmoverMarks,
}

impl Tire {
    /// A size with nothing beside it.
    #[inline(always)]
    pub(crate) const fn of_size(size: TireSize) -> Self {
        Self { size, service: None, version: None, range: None, earthmover: EarthmoverMarks::NONE }
    }

    #[inline(always)]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let mut tire = Self::of_size(tri!(TireSize::scan(scanner)));
        let mut version_given = false;
        loop {
            scanner.skip_space();
            if scanner.at_end() {
                return Ok(tire);
            }
            if tire.service.is_none() && (scanner.at_digit() || scanner.is_at(b'(')) {
                if let Some(service) = tri!(tire.scan_service(scanner)) {
                    tire.service = Some(service);
                    continue;
                }
            }
            // A copy goes there by reference, so that the scanner itself need not be in memory.
            let mut rest = *scanner;
            let taken = tire.scan_other_mark(&mut rest, &mut version_given);
            *scanner = rest;
            if !tri!(taken) {
                return Ok(tire);
            }
        }
    }

    /// Takes a mark other than a service description; false if none is here.
    #[inline(never)]
    const fn scan_other_mark(
        &mut self,
        scanner: &mut Scanner<'_>,
        version_given: &mut bool,
    ) -> Result<bool, ParseError> {
        let at = scanner.at();
        match tri!(self.scan_mark(scanner, version_given)) {
            Some(Mark::Range(_)) if !self.size.has_load_range() => {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::LoadRange, at));
            }
            Some(Mark::Version(_)) if !self.size.has_load_version() => {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::LoadVersion, at));
            }
            Some(mark) => self.take(mark),
            None => return Ok(false),
        }
        Ok(true)
    }

    /// One mark that a tire has but for its size; none if something else or nothing is here.
    pub(super) const fn scan_mark(
        &self,
        scanner: &mut Scanner<'_>,
        version_given: &mut bool,
    ) -> Result<Option<Mark>, ParseError> {
        let at = scanner.at();
        if scanner.at_digit() || scanner.is_at(b'(') {
            if self.service.is_some() {
                if !is_ply_rating(*scanner) {
                    return Ok(None);
                }
            } else if let Some(service) = tri!(self.scan_service(scanner)) {
                return Ok(Some(Mark::Service(service)));
            }
        }
        let letter = if self.size.has_range_letter() { LoadRange::scan_letter(scanner) } else { None };
        if letter.is_some() || LoadRange::is_next(scanner) {
            let range = match letter {
                Some(range) => range,
                None => tri!(LoadRange::scan(scanner)),
            };
            if matches!(self.range, Some(other) if !other.is(range)) {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::LoadRange, at));
            }
            return Ok(Some(Mark::Range(range)));
        }
        if let Ok(version) = LoadVersion::scan(scanner) {
            let impossible = matches!(version, LoadVersion::High) && self.size.with_high_load().is_none();
            // The same said twice is no contradiction.
            let again = matches!(self.version, Some(given) if given as u8 == version as u8);
            if *version_given && !again || impossible {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::LoadVersion, at));
            }
            *version_given = true;
            return Ok(Some(Mark::Version(version)));
        }
        if matches!(scanner.peek(0), b'*' | b'C' | b'E' | b'G' | b'L' | b'M' | 0x80..) {
            let mut behind = *scanner;
            let mark = self.scan_rare_mark(&mut behind);
            *scanner = behind;
            return mark;
        }
        Ok(None)
    }

    /// Stars and codes of earthmovers, or the class of the size behind it.
    #[cold]
    #[inline(never)]
    const fn scan_rare_mark(&self, scanner: &mut Scanner<'_>) -> Result<Option<Mark>, ParseError> {
        if self.size.has_earthmover_marks() {
            let mut marks = self.earthmover;
            if tri!(marks.scan(scanner)) {
                return Ok(Some(Mark::Earthmover(marks)));
            }
        }
        let mut behind = *scanner;
        match self.size.with_class_behind(&mut behind) {
            Some(size) => {
                *scanner = behind;
                Ok(Some(Mark::Class(size)))
            }
            None => Ok(None),
        }
    }

    /// A service description that a tire of this size can have: `(W)` is of motorcycles. None where a ply rating is.
    #[inline(always)]
    pub(super) const fn scan_service(
        &self,
        scanner: &mut Scanner<'_>,
    ) -> Result<Option<ServiceDescription>, ParseError> {
        let at = scanner.at();
        let service = tri!(ServiceDescription::scan_but_plies(scanner));
        if let Some(service) = service {
            if matches!(service.speed(), SpeedSymbol::AboveW) && !self.size.has_open_w() {
                return Err(scanner.range(Field::SpeedSymbol, at));
            }
        }
        Ok(service)
    }

    /// Keeps a mark that its family has.
    pub(super) const fn take(&mut self, mark: Mark) {
        match mark {
            Mark::Service(service) => self.service = Some(service),
            Mark::Range(range) => self.range = Some(range),
            Mark::Version(LoadVersion::High) => {
                if let Some(size) = self.size.with_high_load() {
                    self.size = size;
                }
            }
            Mark::Version(version) => self.version = Some(version),
            Mark::Earthmover(marks) => self.earthmover = marks,
            Mark::Class(size) => self.size = size,
        }
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.size.write(text);
        if let Some(service) = self.service {
            text.byte(b' ');
            service.write(text);
        }
        if let Some(version) = self.version {
            text.byte(b' ');
            version.write(text);
        }
        if let Some(range) = self.range {
            text.byte(b' ');
            range.write(text);
        }
        self.earthmover.write(text);
    }

    /// Whether nothing stands beside the size.
    pub(in crate::tire) const fn is_bare(&self) -> bool {
        self.service.is_none() && self.version.is_none() && self.range.is_none() && self.earthmover.is_empty()
    }

    /// The same with a service description.
    pub(crate) const fn with_service(self, service: ServiceDescription) -> Self {
        Self { service: Some(service), ..self }
    }

    /// The same in another load version; as it is where the size has none.
    pub(crate) const fn with_load_version(self, version: LoadVersion) -> Self {
        match (version, self.size.with_high_load()) {
            (LoadVersion::High, Some(size)) => Self { size, version: None, ..self },
            (LoadVersion::High, None) => self,
            _ if self.size.has_load_version() => Self { version: Some(version), ..self },
            _ => self,
        }
    }

    /// The same of another load range; as it is where the size has none.
    pub(crate) const fn with_load_range(self, range: LoadRange) -> Self {
        if self.size.has_load_range() { Self { range: Some(range), ..self } } else { self }
    }

    /// The size of the tire.
    pub const fn size(&self) -> TireSize {
        self.size
    }

    /// The service description, if it was given.
    pub const fn service(&self) -> Option<ServiceDescription> {
        self.service
    }

    /// The load version: `HL` where the size has the prefix, whatever stands beside it.
    ///
    /// ```
    /// use beadseat::tire::{LoadVersion, Tire};
    /// assert_eq!(Tire::parse("HL245/40R19 101Y XL")?.load_version(), Some(LoadVersion::High));
    /// assert_eq!(Tire::parse("205/55R16 91V")?.load_version(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn load_version(&self) -> Option<LoadVersion> {
        match self.size.version() {
            None => self.version,
            version => version,
        }
    }

    /// The load range, if it was given.
    pub const fn load_range(&self) -> Option<LoadRange> {
        self.range
    }

    /// How many stars stand beside a size of earthmovers, 0 to 3: the strength of a radial, as a ply rating is of
    /// others. No pressures that they stand for were seen. From memory of the TRA yearbook.
    ///
    /// ```
    /// use beadseat::tire::Tire;
    /// assert_eq!(Tire::parse("26.5R25 ** L-3")?.stars(), 2);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn stars(&self) -> u8 {
        self.earthmover.stars()
    }

    /// What a tire of earthmovers is made for: one code, or two.
    ///
    /// ```
    /// use beadseat::tire::{OffRoadCode, Tire};
    /// let tire = Tire::parse("23.5R25 * E3/L3")?;
    /// assert_eq!(tire.to_string(), "23.5R25 * E-3/L-3");
    /// let codes: Vec<_> = tire.off_road_codes().collect();
    /// assert_eq!(codes, [OffRoadCode::parse("E-3")?, OffRoadCode::parse("L-3")?]);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn off_road_codes(&self) -> impl Iterator<Item = OffRoadCode> + use<> {
        let marks = self.earthmover;
        [marks.code(0), marks.code(1)].into_iter().flatten()
    }
}

/// What stands behind a size.
pub(super) enum Mark {
    Service(ServiceDescription),
    Version(LoadVersion),
    Range(LoadRange),
    Earthmover(EarthmoverMarks),
    /// `M/C` or `LT` behind: the size that it makes.
    Class(TireSize),
}

designation!(Tire in "beadseat::tire", "205/55 r16 91 v" => "205/55R16 91V", wrong "205/55R16 91V 94V");
