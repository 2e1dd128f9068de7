//! Uniform tire quality grading: treadwear, traction, temperature.

use crate::text::ParseErrorKind::Ambiguous;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length, Ratio, Velocity, in_inches, in_mph, in_percent, in_ratio};
use crate::{Citation, OutOfRange, rim::RimDiameter};

/// A treadwear grade: a multiple of 20, where 100 is the control tire.
///
/// A tire graded 150 wears one and a half times as well as the control on the test course (49 CFR
/// 575.104, figure 2). On the road, habit, service, surface and climate decide. Makers assign the
/// number themselves, so it compares tires of one maker better than tires of two.
///
/// # Syntax
/// Digits, `20` to `9980` in steps of 20. `Ord` is by wear life.
///
/// ```
/// use beadseat::{tire::grading::TreadwearGrade, units::ratio};
/// let (low, high) = (TreadwearGrade::parse("200")?, TreadwearGrade::parse("300")?);
/// assert_eq!(high.life_against(low), ratio(1.5));
/// assert!(TreadwearGrade::parse("210").is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TreadwearGrade {
    number: u16,
}

/// Grades are multiples of this. Source: 49 CFR 575.104(d)(2)(i), as an agency letter has it.
const STEP: u16 = 20;
/// The projected mileage that is 100 percent. Source: 49 CFR 575.104(e)(2)(ix), as an agency letter has it.
const CONTROL_MILES: f64 = 30_000.0;
const INCHES_PER_MILE: f64 = 63_360.0;

impl TreadwearGrade {
    /// The grade with this number, if it is one.
    ///
    /// ```
    /// use beadseat::tire::grading::TreadwearGrade;
    /// assert_eq!(TreadwearGrade::new(400).map(|grade| grade.number()), Some(400));
    /// assert_eq!(TreadwearGrade::new(0), None);
    /// ```
    pub const fn new(number: u16) -> Option<Self> {
        if number == 0 || number > 9980 || number % STEP != 0 { None } else { Some(Self { number }) }
    }

    /// The grade that a measured percentage of the control earns: the nearest lower multiple of 20.
    /// Source: 49 CFR 575.104(d)(2)(i), as an agency letter has it.
    ///
    /// # Errors
    /// Below 20 and from 10 000 percent.
    ///
    /// ```
    /// use beadseat::{tire::grading::TreadwearGrade, units::percent};
    /// assert_eq!(TreadwearGrade::earned_by(percent(219.0))?.number(), 200);
    /// assert_eq!(TreadwearGrade::earned_by(percent(220.0))?.number(), 220);
    /// assert!(TreadwearGrade::earned_by(percent(19.9)).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn earned_by(of_control: Ratio) -> Result<Self, OutOfRange> {
        // A whole percentage may come back from a ratio a hair low, and is still the whole one.
        let percent = in_percent(of_control) * (1.0 + 1e-12);
        OutOfRange::check("treadwear of the control", percent, "%", f64::from(STEP), 9999.0)?;
        Ok(Self { number: percent as u16 / STEP * STEP })
    }

    /// The grade that a projected mileage earns, where 30 000 miles are 100. Source: 49 CFR
    /// 575.104(e)(2)(ix), as an agency letter has it.
    ///
    /// # Errors
    /// As [`TreadwearGrade::earned_by`].
    ///
    /// ```
    /// use beadseat::{tire::grading::TreadwearGrade, uom::si::{f64::Length, length::mile}};
    /// let grade = TreadwearGrade::earned_by_mileage(Length::new::<mile>(65_700.0))?;
    /// assert_eq!(grade.number(), 200);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn earned_by_mileage(projected: Length) -> Result<Self, OutOfRange> {
        Self::earned_by(units::ratio(in_inches(projected) / INCHES_PER_MILE / CONTROL_MILES))
    }

    /// The number as it is molded.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::grading::TreadwearGrade::parse("400")?.number(), 400);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn number(self) -> u16 {
        self.number
    }

    /// Wear life on the test course against that of the control.
    ///
    /// ```
    /// use beadseat::{tire::grading::TreadwearGrade, units::ratio};
    /// assert_eq!(TreadwearGrade::parse("160")?.life_of_control(), ratio(1.6));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn life_of_control(self) -> Ratio {
        units::percent(self.number as f64)
    }

    /// Wear life on the test course against that of another tire.
    ///
    /// ```
    /// use beadseat::{tire::grading::TreadwearGrade, units::ratio};
    /// assert_eq!(TreadwearGrade::parse("400")?.life_against(TreadwearGrade::parse("500")?), ratio(0.8));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn life_against(self, other: Self) -> Ratio {
        units::ratio(self.number as f64 / other.number as f64)
    }

    /// What the number means is laid down here; how it is rounded, in [`Citation::TREADWEAR_ROUNDING`].
    ///
    /// ```
    /// use beadseat::{Citation, tire::grading::TreadwearGrade};
    /// assert_eq!(TreadwearGrade::parse("400")?.citation(), Citation::TREADWEAR_GRADE);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn citation(self) -> Citation {
        Citation::TREADWEAR_GRADE
    }

    pub(super) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        match Self::new(tri!(scanner.whole(Field::Treadwear))) {
            Some(grade) => Ok(grade),
            None => Err(scanner.range(Field::Treadwear, start)),
        }
    }

    pub(super) fn write(self, text: &mut Text) {
        text.whole(u32::from(self.number));
    }
}

designation!(TreadwearGrade in "beadseat::tire::grading", "0340" => "340", wrong "219");

/// A traction grade: wet grip of a locked wheel at 40 mph, braking straight ahead.
///
/// It says nothing of cornering, acceleration, hydroplaning or peak grip. `Ord` is by grip.
///
/// | grade | on asphalt | | on concrete |
/// |---|---|---|---|
/// | AA | above 0.54 | and | above 0.38 |
/// | A | above 0.47 | and | above 0.35 |
/// | B | above 0.38 | and | above 0.26 |
/// | C | 0.38 or less | or | 0.26 or less |
///
/// Source: 49 CFR 575.104(d)(2)(ii); AA since 9 March 1998 (61 FR 47437). Some trade pages say "at
/// least" for "above"; the rule says above.
///
/// ```
/// use beadseat::tire::grading::TractionGrade;
/// assert!(TractionGrade::C < TractionGrade::B && TractionGrade::A < TractionGrade::AA);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum TractionGrade {
    /// May have poor traction.
    C,
    /// Above 0.38 and 0.26.
    B,
    /// Above 0.47 and 0.35.
    A,
    /// Above 0.54 and 0.38.
    AA,
}

impl TractionGrade {
    /// Every one, best first.
    ///
    /// ```
    /// use beadseat::tire::grading::TractionGrade;
    /// assert_eq!(TractionGrade::ALL.first(), Some(&TractionGrade::AA));
    /// ```
    pub const ALL: &[Self] = &[Self::AA, Self::A, Self::B, Self::C];

    /// A grade of one letter.
    pub(super) const fn scan_letter(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let grade = match scanner.peek(0) {
            b'A' => Self::A,
            b'B' => Self::B,
            b'C' => Self::C,
            _ => return Err(scanner.missing(Field::Traction)),
        };
        scanner.step(1);
        Ok(grade)
    }

    /// The coefficients on asphalt and on concrete that the tire exceeds; `None` for C, which has no
    /// floor.
    ///
    /// ```
    /// use beadseat::{tire::grading::TractionGrade, units::ratio};
    /// assert_eq!(TractionGrade::AA.exceeds(), Some((ratio(0.54), ratio(0.38))));
    /// assert_eq!(TractionGrade::C.exceeds(), None);
    /// ```
    pub const fn exceeds(self) -> Option<(Ratio, Ratio)> {
        let (asphalt, concrete) = match self {
            Self::AA => (0.54, 0.38),
            Self::A => (0.47, 0.35),
            Self::B => (0.38, 0.26),
            Self::C => return None,
        };
        Some((units::ratio(asphalt), units::ratio(concrete)))
    }

    /// The grade that two adjusted coefficients of friction earn: the best whose floors both exceed.
    ///
    /// # Errors
    /// For a coefficient outside 0 to 2.
    ///
    /// ```
    /// use beadseat::{tire::grading::TractionGrade, units::ratio};
    /// assert_eq!(TractionGrade::earned_by(ratio(0.48), ratio(0.36))?, TractionGrade::A);
    /// assert_eq!(TractionGrade::earned_by(ratio(0.54), ratio(0.50))?, TractionGrade::A);
    /// assert_eq!(TractionGrade::earned_by(ratio(0.60), ratio(0.26))?, TractionGrade::C);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn earned_by(asphalt: Ratio, concrete: Ratio) -> Result<Self, OutOfRange> {
        OutOfRange::check("traction on asphalt", in_ratio(asphalt), "", 0.0, 2.0)?;
        OutOfRange::check("traction on concrete", in_ratio(concrete), "", 0.0, 2.0)?;
        let earns = |grade: &Self| match grade.exceeds() {
            Some((on_asphalt, on_concrete)) => asphalt > on_asphalt && concrete > on_concrete,
            None => true,
        };
        Ok([Self::AA, Self::A, Self::B].into_iter().find(earns).unwrap_or(Self::C))
    }

    /// Where the grade is laid down.
    ///
    /// ```
    /// use beadseat::{Citation, tire::grading::TractionGrade};
    /// assert_eq!(TractionGrade::A.citation(), Citation::TRACTION_GRADE);
    /// ```
    pub const fn citation(self) -> Citation {
        Citation::TRACTION_GRADE
    }

    /// As it is molded.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::grading::TractionGrade::AA.name(), "AA");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Self::AA => "AA",
            Self::A => "A",
            Self::B => "B",
            Self::C => "C",
        }
    }
}

crate::text::worded!(TractionGrade [AA A B C]);

/// A temperature grade: the speed the tire endured for half an hour on the laboratory wheel.
///
/// It holds for a tire that is properly inflated and not overloaded: speed, underinflation and load,
/// alone or together, cause heat and failure. `Ord` is by speed.
///
/// | grade | endures | turns of the wheel |
/// |---|---|---|
/// | A | 115 mph | 575 /min |
/// | B | 100 mph | 500 /min |
/// | C | 85 mph, the legal minimum | 425 /min |
///
/// The wheel is 1/300 mile around (67.23 in across, from memory), so a turn a minute is 0.2 mph. Source:
/// 49 CFR 575.104(d)(2)(iii) and a published explanation of it.
///
/// ```
/// use beadseat::{tire::grading::TemperatureGrade, units::mph};
/// assert_eq!(TemperatureGrade::B.endured_speed(), mph(100.0));
/// assert!(TemperatureGrade::C < TemperatureGrade::A);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum TemperatureGrade {
    /// 85 mph: what every passenger tire must endure.
    C,
    /// B: endures 100 mph.
    B,
    /// A: endures 115 mph.
    A,
}

/// Circumference of the test wheel times 60 minutes: mph for each turn a minute.
const MPH_PER_TURN_A_MINUTE: f64 = 60.0 / 300.0;

impl TemperatureGrade {
    /// Every one, best first.
    ///
    /// ```
    /// use beadseat::tire::grading::TemperatureGrade;
    /// assert_eq!(TemperatureGrade::ALL.first(), Some(&TemperatureGrade::A));
    /// ```
    pub const ALL: &[Self] = &[Self::A, Self::B, Self::C];

    pub(super) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let grade = match scanner.peek(0) {
            b'A' => Self::A,
            b'B' => Self::B,
            b'C' => Self::C,
            _ => return Err(scanner.missing(Field::Temperature)),
        };
        scanner.step(1);
        if scanner.peek(0).is_ascii_alphabetic() {
            while scanner.peek(0).is_ascii_alphabetic() {
                scanner.step(1);
            }
            return Err(scanner.range(Field::Temperature, start));
        }
        Ok(grade)
    }

    const fn mph(self) -> f64 {
        match self {
            Self::A => 115.0,
            Self::B => 100.0,
            Self::C => 85.0,
        }
    }

    /// The speed endured for half an hour.
    ///
    /// ```
    /// use beadseat::{tire::grading::TemperatureGrade, units::mph};
    /// assert_eq!(TemperatureGrade::A.endured_speed(), mph(115.0));
    /// ```
    pub const fn endured_speed(self) -> Velocity {
        units::mph(self.mph())
    }

    /// The turns of the test wheel a minute at that speed.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::grading::TemperatureGrade::A.wheel_turns_per_minute(), 575);
    /// ```
    pub fn wheel_turns_per_minute(self) -> u16 {
        libm::round(self.mph() / MPH_PER_TURN_A_MINUTE) as u16
    }

    /// The grade that the fastest half hour a tire survived earns; `None` below 85 mph, where it may not
    /// be sold as a passenger tire, and for what is no finite speed.
    ///
    /// ```
    /// use beadseat::{tire::grading::TemperatureGrade, units::mph};
    /// assert_eq!(TemperatureGrade::earned_by(mph(114.0)), Some(TemperatureGrade::B));
    /// assert_eq!(TemperatureGrade::earned_by(mph(80.0)), None);
    /// ```
    pub fn earned_by(endured: Velocity) -> Option<Self> {
        let endured = in_mph(endured) * (1.0 + 1e-12);
        let earns = |grade: &Self| endured.is_finite() && endured >= grade.mph();
        [Self::A, Self::B, Self::C].into_iter().find(earns)
    }

    /// Where the grade is laid down.
    ///
    /// ```
    /// use beadseat::{Citation, tire::grading::TemperatureGrade};
    /// assert_eq!(TemperatureGrade::A.citation(), Citation::TEMPERATURE_GRADE);
    /// ```
    pub const fn citation(self) -> Citation {
        Citation::TEMPERATURE_GRADE
    }

    /// As it is molded.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::grading::TemperatureGrade::B.name(), "B");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::B => "B",
            Self::C => "C",
        }
    }
}

crate::text::worded!(TemperatureGrade [A B C]);

/// The grades molded on a passenger car tire: `400 AA A`.
///
/// # Syntax
/// ```text
/// grading   = [ "UTQG" ] [ "TREADWEAR" ] number [ "TRACTION" ] traction [ "TEMPERATURE" ] temperature
/// traction  = "AA" | "A" | "B" | "C"          temperature = "A" | "B" | "C"
/// ```
/// White space, `/`, `-`, `,` and `:` may stand between any two parts. Without any, the letters are read
/// where there is one way to: `400AAA` is AA and A, `400AB` is A and B. `400AA` and `400 AA` are refused
/// as ambiguous, for the temperature grade may be what was left out.
///
/// Accepted: `TREADWEAR 400 TRACTION AA TEMPERATURE A`, `400 AA A`, `400/A/B`, `utqg 400aaa`. Refused:
/// `410 A A`, `400 AA AA`, `400 D A`, `400 A`. The canonical form is `400 AA A`.
///
/// ```
/// use beadseat::tire::grading::{Grading, TemperatureGrade, TractionGrade};
/// let grading: Grading = "Treadwear 400 Traction AA Temperature A".parse()?;
/// assert_eq!(grading.to_string(), "400 AA A");
/// assert_eq!(grading.traction(), TractionGrade::AA);
/// assert_eq!(grading.temperature(), TemperatureGrade::A);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Grading {
    treadwear: TreadwearGrade,
    traction: TractionGrade,
    temperature: TemperatureGrade,
}

/// The words of the grades, and what people shorten them to.
pub(super) const TREADWEAR: &[&str] = &["TREADWEAR", "TREAD WEAR", "TW"];
pub(super) const TRACTION: &[&str] = &["TRACTION", "TRACT", "TRAC", "TR"];
pub(super) const TEMPERATURE: &[&str] = &["TEMPERATURE", "TEMP", "TE"];

/// Steps over one of the words of a grade.
pub(super) const fn eat_grade(scanner: &mut Scanner<'_>, words: &[&str]) -> bool {
    scanner.eat_word(words[0]) || scanner.eat_any(words)
}

/// Steps over what may stand between two parts.
pub(super) const fn skip_separator(scanner: &mut Scanner<'_>) {
    loop {
        let mark = matches!(scanner.peek(0), b'/' | b'-' | b',' | b':');
        if !(scanner.skip_space() || mark && scanner.eat(scanner.peek(0))) {
            return;
        }
    }
}

impl Grading {
    /// A grading of the three grades.
    ///
    /// ```
    /// use beadseat::tire::grading::{Grading, TemperatureGrade, TractionGrade, TreadwearGrade};
    /// let grading = Grading::new(TreadwearGrade::parse("300")?, TractionGrade::A, TemperatureGrade::B);
    /// assert_eq!(grading, Grading::parse("300 A B")?);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn new(
        treadwear: TreadwearGrade,
        traction: TractionGrade,
        temperature: TemperatureGrade,
    ) -> Self {
        Self { treadwear, traction, temperature }
    }

    pub(super) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if scanner.eat_word("UTQG") {
            skip_separator(scanner);
        }
        if eat_grade(scanner, TREADWEAR) {
            skip_separator(scanner);
        }
        let treadwear = tri!(TreadwearGrade::scan(scanner));
        skip_separator(scanner);
        if eat_grade(scanner, TRACTION) {
            skip_separator(scanner);
        }
        let start = scanner.at();
        let mut traction = tri!(TractionGrade::scan_letter(scanner));
        if matches!(traction, TractionGrade::A) && scanner.peek(0) == b'A' {
            let mut ahead = *scanner;
            ahead.eat(b'A');
            skip_separator(&mut ahead);
            if ahead.at_end() {
                return Err(ahead.error(Ambiguous, Field::Traction, start));
            }
            scanner.eat(b'A');
            traction = TractionGrade::AA;
        }
        skip_separator(scanner);
        if eat_grade(scanner, TEMPERATURE) {
            skip_separator(scanner);
        }
        let temperature = tri!(TemperatureGrade::scan(scanner));
        Ok(Self { treadwear, traction, temperature })
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.treadwear.write(text);
        text.byte(b' ').str(self.traction.name()).byte(b' ').str(self.temperature.name());
    }

    /// The grade of tread wear.
    pub const fn treadwear(self) -> TreadwearGrade {
        self.treadwear
    }

    /// The grade of traction on wet pavement.
    pub const fn traction(self) -> TractionGrade {
        self.traction
    }

    /// The grade of temperature at speed.
    pub const fn temperature(self) -> TemperatureGrade {
        self.temperature
    }
}

designation!(Grading in "beadseat::tire::grading", "400aaa" => "400 AA A", wrong "400 AA");

/// Why a tire need not be graded. Grades are required on new pneumatic tires of passenger cars only.
///
/// Source: 49 CFR 575.104(c).
///
/// ```
/// use beadseat::{rim::RimDiameter, tire::grading::GradingExemption};
/// let small = GradingExemption::of_rim(RimDiameter::parse("12")?);
/// assert_eq!(small, Some(GradingExemption::SmallRim));
/// assert_eq!(GradingExemption::of_rim(RimDiameter::parse("13")?), None);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum GradingExemption {
    /// Deep-tread, winter-type snow tires.
    DeepTread,
    /// Space-saver or temporary-use spares.
    Spare,
    /// A nominal rim diameter of 12 in or less.
    SmallRim,
    /// Few are made; see [`GradingExemption::of_production`].
    LimitedProduction,
    /// Not a passenger car tire: light truck, trailer, motorcycle.
    NotPassenger,
}

impl GradingExemption {
    /// [`GradingExemption::SmallRim`], if the rim is small.
    pub const fn of_rim(rim: RimDiameter) -> Option<Self> {
        if rim.tenths() <= 120 { Some(Self::SmallRim) } else { None }
    }

    /// [`GradingExemption::LimitedProduction`], if all three hold: at most 15 000 tires a year of the
    /// design and size, by the maker and by the brand's owner; at most 35 000 a year of all such tires;
    /// and no vehicle made or imported in more than 10 000 units recommends the size.
    ///
    /// ```
    /// use beadseat::tire::grading::GradingExemption;
    /// assert!(GradingExemption::of_production(15_000, 35_000, 10_000).is_some());
    /// assert!(GradingExemption::of_production(15_000, 35_000, 10_001).is_none());
    /// ```
    pub const fn of_production(
        of_design_and_size: u32,
        of_all_such: u32,
        of_largest_vehicle_that_recommends_it: u32,
    ) -> Option<Self> {
        if of_design_and_size <= 15_000
            && of_all_such <= 35_000
            && of_largest_vehicle_that_recommends_it <= 10_000
        {
            Some(Self::LimitedProduction)
        } else {
            None
        }
    }

    /// Where it is laid down.
    ///
    /// ```
    /// use beadseat::{Citation, tire::grading::GradingExemption};
    /// assert_eq!(GradingExemption::Spare.citation(), Citation::GRADING_SCOPE);
    /// ```
    pub const fn citation(self) -> Citation {
        Citation::GRADING_SCOPE
    }
}
