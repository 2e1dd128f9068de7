//! Whatever was read off a tire or a wheel.

use crate::Citation;
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, as_text};
use crate::tire::{
    LoadIndex, ServiceDescription, SpeedSymbol, Tire,
    grading::{Grade, Grading},
    identification::{DateCode, IdentificationNumber},
    sidewall::{LineContradiction, MoldedLimit, SidewallLine, SidewallMark},
};
use crate::wheel::{BoltCircle, Thread, Wheel, WheelSize, WheelStamp};

/// A marking of any kind, recognised by its form.
///
/// # Recognition
/// A text is read in every way there is. Where two ways succeed, a rule decides:
///
/// * `7x16` could be seven holes on a 16 in circle. A text that is a wheel size and a bolt circle is a
///   wheel if it names a rim diameter of 10 in or more, else a bolt circle: `7x16` and `5x10` are
///   wheels, `8x6.5` is a bolt circle.
/// * A rim of several pieces and a cross-ply tire are both written with a dash, and a contour tells them apart.
///   Without one it is a tire if the width has two decimals, if the rim code is a half inch (those rims are of one
///   piece), or if it is agricultural, and else a wheel: `6.00-16`, `11-22.5` and `9.5-24` are tires, `7.0-20`,
///   `8-16` and `6.00E-16` wheels. Common practice, no source. A `D` in place of the dash is a tire's, `7.0D20`.
/// * Up to three digits without a leading zero are a load index if there is one; `0118` and `317` are
///   dates of manufacture.
/// * `A`, `B` and `C` alone are speed symbols, not grades; a single mark such as `TWI` comes before an
///   identification number, which is what is left, if it has a date, does not begin like a rim size and is not of
///   digits alone, or else says `DOT`: `205 55 16` is refused.
///
/// Where none succeeds, the error is that of the reading that came furthest; of a wheel that contradicts itself, that
/// of the wheel. In files a marking is its canonical text.
///
/// ```
/// use beadseat::Marking;
/// for (text, kind) in [
///     ("205/55R16 91V", "tire"),
///     ("7Jx16 H2 ET45", "wheel"),
///     ("7x16", "wheel"),
///     ("690 kg 7x16 JWL", "wheel"),
///     ("25x8-12", "tire"),
///     ("6.00-16", "tire"),
///     ("11-22.5", "tire"),
///     ("9.5-24", "tire"),
///     ("7.0-20", "wheel"),
///     ("7.0D20", "tire"),
///     ("8x6.5", "bolt_circle"),
///     ("5x114.3", "bolt_circle"),
///     ("M14x1.5", "thread"),
///     ("91V", "service_description"),
///     ("91", "load_index"),
///     ("V", "speed_symbol"),
///     ("DOT 1AB 2C3D4E 2725", "tin"),
///     ("TREADWEAR 400 TRACTION AA TEMPERATURE A", "grading"),
///     ("TRACTION AA", "grading"),
///     ("MAX LOAD 615 kg (1356 LBS)", "molded_limit"),
///     ("M+S", "sidewall_mark"),
/// ] {
///     assert_eq!(text.parse::<Marking>()?.kind(), kind, "{text}");
/// }
/// let error = "205/55R31".parse::<Marking>().unwrap_err();
/// assert_eq!(error.span(), 7..9);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Marking {
    /// A tire size, with service description and how it is built.
    Tire(Tire),
    /// A tire size with more beside it: maximum load and pressure, marks of winter and of tubes, or a mark of
    /// another family.
    SidewallLine(SidewallLine),
    /// A wheel size, with what stands beside it.
    Wheel(Wheel),
    /// A wheel with more stamped on it: load, date, marks, origin.
    WheelStamp(WheelStamp),
    /// A bolt circle alone.
    BoltCircle(BoltCircle),
    /// A screw thread alone, as of a wheel bolt.
    Thread(Thread),
    /// Load index and speed symbol without a size.
    ServiceDescription(ServiceDescription),
    /// A load index alone.
    LoadIndex(LoadIndex),
    /// A speed symbol alone.
    SpeedSymbol(SpeedSymbol),
    /// A tire identification number, or a part of one.
    IdentificationNumber(IdentificationNumber),
    /// The date group of an identification number with three digits, as before mid 2000.
    DateCode(DateCode),
    /// A quality grading: treadwear, traction and temperature.
    Grading(Grading),
    /// One of the grades alone.
    Grade(Grade),
    /// A molded maximum without a size: of load, pressure or speed.
    MoldedLimit(MoldedLimit),
    /// A single mark of a sidewall.
    SidewallMark(SidewallMark),
}

/// From this code on, what could be a rim diameter is one; in tenths of an inch.
const SURELY_A_RIM: u16 = 100;

impl Marking {
    /// Reads a marking of any kind, by its form.
    ///
    /// # Errors
    /// That of the reading which came furthest.
    ///
    /// ```
    /// use beadseat::Marking;
    /// assert_eq!(Marking::parse("6x139,7")?.to_string(), "6x139.7");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn parse(text: &str) -> Result<Self, ParseError> {
        let wheel = Wheel::parse(text);
        if let Ok(wheel) = wheel {
            let size = wheel.size();
            if size.is_multi_piece() && size.contour().is_none() {
                match Tire::parse(text) {
                    Ok(tire) if tire.size().is_told_from_rim() => return Ok(Self::Tire(tire)),
                    _ => {}
                }
            }
        }
        let mut furthest = match (wheel, BoltCircle::parse(text)) {
            (Ok(wheel), Ok(holes)) => {
                return Ok(if wheel.size().diameter().tenths() >= SURELY_A_RIM {
                    Self::Wheel(wheel)
                } else {
                    Self::BoltCircle(holes)
                });
            }
            (Ok(wheel), Err(_)) => return Ok(Self::Wheel(wheel)),
            (Err(_), Ok(holes)) => return Ok(Self::BoltCircle(holes)),
            (Err(a), Err(b)) => further(a, b),
        };
        match LoadIndex::parse(text) {
            Ok(index) => return Ok(Self::LoadIndex(index)),
            Err(error) => furthest = further(furthest, error),
        }
        // A word that begins with the letter of a speed is not for that reason nearly a speed symbol, nor a number
        // a service description.
        if let Ok(symbol) = SpeedSymbol::parse(text) {
            return Ok(Self::SpeedSymbol(symbol));
        }
        if let Ok(service) = ServiceDescription::parse(text) {
            return Ok(Self::ServiceDescription(service));
        }
        match Thread::parse(text) {
            Ok(thread) => return Ok(Self::Thread(thread)),
            Err(error) => furthest = further(furthest, error),
        }
        match Tire::parse(text) {
            Ok(tire) => return Ok(Self::Tire(tire)),
            Err(error) => furthest = further(furthest, error),
        }
        match SidewallLine::parse(text) {
            Ok(line) => return Ok(Self::SidewallLine(line)),
            Err(error) => furthest = further(furthest, error),
        }
        let stamp = WheelStamp::parse(text);
        match stamp {
            Ok(stamp) if stamp.is_more_than_a_wheel() => return Ok(Self::WheelStamp(stamp)),
            Ok(stamp) => return Ok(Self::Wheel(stamp.wheel())),
            Err(error) => furthest = further(furthest, error),
        }
        match Grading::parse(text) {
            Ok(grading) => return Ok(Self::Grading(grading)),
            // A number with a digit behind a stroke is no grading for that.
            Err(error) if at_digit(text, error) => {}
            Err(error) => furthest = further(furthest, error),
        }
        match Grade::parse(text) {
            Ok(grade) => return Ok(Self::Grade(grade)),
            Err(error) => furthest = further(furthest, error),
        }
        match MoldedLimit::parse(text) {
            Ok(limit) => return Ok(Self::MoldedLimit(limit)),
            // A number without a unit of speed is no limit for that.
            Err(_) if begins_with_digit(text) => {}
            Err(error) => furthest = further(furthest, error),
        }
        match SidewallMark::parse(text) {
            Ok(mark) => return Ok(Self::SidewallMark(mark)),
            Err(error) => furthest = further(furthest, error),
        }
        let claims = claims_identification(text);
        // A wheel that contradicts itself is still a wheel.
        match (wheel, stamp) {
            (Err(error), _) if contradicts(error, claims) => return Err(error),
            (_, Err(error)) if contradicts(error, claims) => return Err(error),
            _ => {}
        }
        // Almost any letters and digits begin like an identification number, so that its error says
        // something only where the text claims to be one.
        match IdentificationNumber::parse(text) {
            Err(error) if claims => Err(error),
            Ok(number) if !claims && (could_be_a_size(text) || number.date().is_none()) => Err(furthest),
            Ok(number) => Ok(Self::IdentificationNumber(number)),
            Err(_) => match DateCode::parse(text) {
                Ok(date) => Ok(Self::DateCode(date)),
                Err(_) => Err(furthest),
            },
        }
    }

    /// A stable name of the kind: `tire`, `wheel`, `bolt_circle`, `thread`, `service_description`, `load_index`,
    /// `speed_symbol`, `tin`, `grading`, `molded_limit`, `sidewall_mark`.
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::Tire(_) | Self::SidewallLine(_) => "tire",
            Self::Wheel(_) | Self::WheelStamp(_) => "wheel",
            Self::BoltCircle(_) => "bolt_circle",
            Self::Thread(_) => "thread",
            Self::ServiceDescription(_) => "service_description",
            Self::LoadIndex(_) => "load_index",
            Self::SpeedSymbol(_) => "speed_symbol",
            Self::IdentificationNumber(_) | Self::DateCode(_) => "tin",
            Self::Grading(_) | Self::Grade(_) => "grading",
            Self::MoldedLimit(_) => "molded_limit",
            Self::SidewallMark(_) => "sidewall_mark",
        }
    }

    /// What cannot all be true of a tire that it names; of anything else nothing.
    ///
    /// ```
    /// use beadseat::{Marking, tire::sidewall::LineContradiction};
    /// let slow = Marking::parse("205/55ZR16 91V")?;
    /// assert_eq!(slow.contradictions().collect::<Vec<_>>(), [LineContradiction::SpeedBelowSize]);
    /// assert_eq!(Marking::parse("5x112")?.contradictions().count(), 0);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn contradictions(&self) -> impl Iterator<Item = LineContradiction> + use<> {
        let line = match *self {
            Self::Tire(tire) => Some(tire.into()),
            Self::SidewallLine(line) => Some(line),
            _ => None,
        };
        line.into_iter().flat_map(|line: SidewallLine| line.contradictions())
    }

    /// What kind of marking it is, in words.
    ///
    /// ```
    /// use beadseat::Marking;
    /// assert_eq!(Marking::parse("H")?.meaning(), "a speed symbol: the speed a tire is made for");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn meaning(&self) -> &'static str {
        match self {
            Self::Tire(_) | Self::SidewallLine(_) => {
                "a tire: its size, what it carries and how fast, and how it is built"
            }
            Self::Wheel(_) | Self::WheelStamp(_) => {
                "a wheel: its rim, where the rim stands, and how it meets the hub"
            }
            Self::BoltCircle(_) => "a bolt circle: how many fastener holes, on what diameter",
            Self::Thread(_) => "a screw thread: its outer diameter and its pitch",
            Self::ServiceDescription(_) => "a service description: the load of one tire, and at which speed",
            Self::LoadIndex(_) => "a load index: the load of one tire, as a number from a table",
            Self::SpeedSymbol(_) => "a speed symbol: the speed a tire is made for",
            Self::DateCode(_) => "a date of manufacture: week, and last digit of the year, before mid 2000",
            Self::IdentificationNumber(_) => "a tire identification number: who made it, and in which week",
            Self::Grading(_) => "grades of wear, wet traction and heat in a test, for comparing tires",
            Self::Grade(Grade::Treadwear(_)) => "a grade of wear in a test, against a control tire of 100",
            Self::Grade(Grade::Traction(_)) => "a grade of braking straight ahead on wet pavement",
            Self::Grade(Grade::Temperature(_)) => "a grade of the heat endured at speed in a laboratory",
            Self::MoldedLimit(_) => "the most that the tire may bear",
            Self::SidewallMark(mark) => mark.meaning(),
        }
    }

    /// What it means when tires or wheels are chosen.
    ///
    /// ```
    /// use beadseat::Marking;
    /// assert!(Marking::parse("5x112")?.for_choice().contains("exactly"));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn for_choice(&self) -> &'static str {
        match self {
            Self::Tire(_) | Self::SidewallLine(_) => {
                "the rim diameter must be the wheel's exactly; load and speed must cover the vehicle's; the rim width \
                 must be approved"
            }
            Self::Wheel(_) | Self::WheelStamp(_) => {
                "diameter, holes and bore must be the tire's and the hub's; width, inset and rating decide fit and \
                 strength"
            }
            Self::BoltCircle(_) => "it must be the hub's exactly: near misses seem to fit and do not seat",
            Self::Thread(_) => "fastener and hub must have the same, or the thread strips",
            Self::ServiceDescription(_) => {
                "load at the right pressure and speed must both cover the vehicle's; not below the original's"
            }
            Self::LoadIndex(_) => {
                "with the pressure it must carry the axle's share; not below the original's"
            }
            Self::SpeedSymbol(_) => "not below the vehicle's top speed, unless local law excepts snow tires",
            Self::DateCode(_) => "more than 25 years old: not for the road",
            Self::IdentificationNumber(number) if matches!(number.date(), Some(date) if date.is_iso_only()) => {
                "only a maker who counts ISO weeks has that week 53: else the date is misread or false"
            }
            Self::IdentificationNumber(_) => "tells the age; ask for the recall lists by it",
            Self::Grade(Grade::Treadwear(_)) => {
                "compares tires of one maker fairly, of different makers loosely"
            }
            Self::Grade(Grade::Traction(_)) => "AA grips best; says nothing of cornering or of deep water",
            Self::Grade(Grade::Temperature(_)) => {
                "C is the legal minimum; holds for a tire that is neither soft nor overloaded"
            }
            Self::MoldedLimit(MoldedLimit::Pressure(_)) => {
                "not the pressure to inflate to: that is on the vehicle's placard"
            }
            Self::MoldedLimit(_) => "a limit, not advice: the vehicle's placard says how to load and inflate",
            Self::Grading(_) => "compares tires of one maker fairly, of different makers loosely",
            Self::SidewallMark(mark) => mark.for_choice(),
        }
    }

    /// Where its meaning is laid down.
    ///
    /// ```
    /// use beadseat::{Citation, Marking};
    /// assert_eq!(Marking::parse("91")?.citation(), Citation::LOAD_INDEX);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn citation(&self) -> Citation {
        match self {
            Self::Tire(_) | Self::SidewallLine(_) => Citation::OVERALL_DIAMETER,
            Self::Wheel(_) | Self::WheelStamp(_) => Citation::RIM_SPECIFIED,
            Self::BoltCircle(_) => Citation::DESIGNATION,
            Self::Thread(_) => Citation::THREAD_STRESS_AREA,
            Self::ServiceDescription(_) | Self::LoadIndex(_) => Citation::LOAD_INDEX,
            Self::SpeedSymbol(_) => Citation::SPEED_SYMBOL,
            Self::DateCode(_) => Citation::DATE_CODE,
            Self::IdentificationNumber(number) => number.form().citation(),
            Self::Grading(grading) => grading.traction().citation(),
            Self::Grade(grade) => grade.citation(),
            Self::MoldedLimit(_) => Citation::MOLDED_LIMIT,
            Self::SidewallMark(mark) => mark.citation(),
        }
    }

    fn write(&self, text: &mut Text) {
        match self {
            Self::Tire(x) => x.write(text),
            Self::SidewallLine(x) => x.write(text),
            Self::Wheel(x) => x.write(text),
            Self::WheelStamp(x) => x.write(text),
            Self::BoltCircle(x) => x.write(text),
            Self::Thread(x) => x.write(text),
            Self::ServiceDescription(x) => x.write(text),
            Self::LoadIndex(x) => x.write(text),
            Self::SpeedSymbol(x) => x.write(text),
            Self::DateCode(x) => x.write(text),
            Self::IdentificationNumber(x) => {
                let mut number = Text::new();
                x.write(&mut number);
                if could_be_a_size(number.as_str()) {
                    text.str("DOT ");
                }
                text.str(number.as_str());
            }
            Self::Grading(x) => x.write(text),
            Self::Grade(x) => x.write(text),
            Self::MoldedLimit(x) => x.write(text),
            Self::SidewallMark(x) => x.write(text),
        }
    }
}

/// Whether a text begins as only an identification number does.
const fn claims_identification(text: &str) -> bool {
    let mut scanner = Scanner::new(text);
    scanner.begin().is_ok() && scanner.eat_str("DOT")
}

/// Whether a text was read as a wheel until it contradicted itself; of one that claims to be an identification
/// number, past its size.
const fn contradicts(error: ParseError, claims_identification: bool) -> bool {
    matches!(error.kind(), ParseErrorKind::Contradiction)
        && (!claims_identification || matches!(error.field(), Field::BoltCircle | Field::Bore))
}

/// Whether a text begins like a rim, or is of more digits than a date has, and nothing else.
const fn could_be_a_size(text: &str) -> bool {
    let mut scanner = Scanner::new(text);
    scanner.begin().is_ok() && WheelSize::scan(&mut scanner).is_ok() || is_of_digits(text.as_bytes())
}

const fn is_of_digits(text: &[u8]) -> bool {
    const OF_A_DATE: u8 = 4;
    let (mut at, mut digits) = (0, 0);
    while at < text.len() {
        if text[at].is_ascii_alphabetic() {
            return false;
        }
        if text[at].is_ascii_digit() {
            digits += 1;
        }
        at += 1;
    }
    digits > OF_A_DATE
}

const fn begins_with_digit(text: &str) -> bool {
    let mut scanner = Scanner::new(text);
    scanner.begin().is_ok() && scanner.at_digit()
}

/// Whether an error stands at a digit.
const fn at_digit(text: &str, error: ParseError) -> bool {
    let at = error.span().start;
    at < text.len() && text.as_bytes()[at].is_ascii_digit()
}

/// The error that begins later; if they begin together, the longer, which has read more, or else the second.
const fn further(a: ParseError, b: ParseError) -> ParseError {
    let (of_a, of_b) = (a.span(), b.span());
    if of_a.start > of_b.start || of_a.start == of_b.start && of_a.end > of_b.end { a } else { b }
}

as_text!(Marking);
