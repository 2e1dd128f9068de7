//! Loads, pressures and speeds as they stand on tires and wheels: numbers with units.

use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, tri};
use crate::units::{self, Mass, Pressure, Velocity, in_kg, in_kmh, in_kpa};

/// A load as it is molded, with its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum MoldedLoad {
    /// A load molded in kilograms.
    Kilograms(u16),
    /// A load molded in pounds.
    Pounds(u16),
}

impl MoldedLoad {
    /// The load as a quantity, which carries its unit.
    ///
    /// ```
    /// use beadseat::{MoldedLoad, units::lb};
    /// assert_eq!(MoldedLoad::Pounds(3195).load(), lb(3195.0));
    /// ```
    pub const fn load(self) -> Mass {
        match self {
            Self::Kilograms(kg) => units::kg(kg as f64),
            Self::Pounds(lb) => units::lb(lb as f64),
        }
    }

    /// A load, and behind it the same in brackets in the other unit.
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let load = tri!(Self::scan_one(scanner));
        if let Some(inner) = open(scanner) {
            *scanner = inner;
            let other = tri!(Self::scan_one(scanner));
            tri!(close(scanner, Field::MaximumLoad));
            // Yearbooks round pounds to 5 and 10, so up to 10 lb and a kilogram may lie between.
            let (a, b) = (in_kg(load.load()), in_kg(other.load()));
            if a - b > 5.6 || b - a > 5.6 {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::MaximumLoad, start));
            }
        }
        Ok(load)
    }

    const fn scan_one(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let at = scanner.at();
        let number = tri!(scanner.whole(Field::MaximumLoad));
        if number < 45 {
            return Err(scanner.range(Field::MaximumLoad, at));
        }
        scanner.skip_space();
        match Self::scan_unit(scanner, number) {
            Some(load) => Ok(load),
            None => Err(scanner.missing(Field::MaximumLoad)),
        }
    }

    /// The unit of a number.
    #[inline]
    pub(crate) const fn scan_unit(scanner: &mut Scanner<'_>, number: u16) -> Option<Self> {
        if scanner.eat_word("KG") || scanner.eat_word("KGS") {
            Some(Self::Kilograms(number))
        } else if scanner.eat_word("LBS") || scanner.eat_word("LB") {
            scanner.eat(b'.');
            Some(Self::Pounds(number))
        } else {
            None
        }
    }

    pub(crate) fn write(self, text: &mut Text) {
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
    /// A pressure molded in kilopascals.
    Kilopascals(u16),
    /// Pounds a square inch.
    Psi(u16),
    /// Hundredths of a bar.
    Bar(u16),
    /// Hundredths of a kilopond a square centimetre, the technical atmosphere: molded as `kp/cm²`, `kg/cm²` or, above
    /// the air's own, `atü`.
    TechnicalAtmospheres(u16),
}

impl MoldedPressure {
    /// The pressure as a quantity, which carries its unit.
    ///
    /// ```
    /// use beadseat::{MoldedPressure, units::kpa};
    /// assert_eq!(MoldedPressure::Kilopascals(300).pressure(), kpa(300.0));
    /// ```
    pub const fn pressure(self) -> Pressure {
        match self {
            Self::Kilopascals(kpa) => units::kpa(kpa as f64),
            Self::Psi(psi) => units::psi(psi as f64),
            Self::Bar(hundredths) => units::kpa(hundredths as f64),
            // 1 kp/cm² is 98.0665 kPa by definition.
            Self::TechnicalAtmospheres(hundredths) => units::kpa(hundredths as f64 * 0.980_665),
        }
    }

    /// A pressure, and behind it the same in brackets in the other unit, then perhaps `COLD`.
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let pressure = tri!(Self::scan_one(scanner));
        if let Some(inner) = open(scanner) {
            *scanner = inner;
            let other = tri!(Self::scan_one(scanner));
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

    const fn scan_one(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        const LEAST_KPA: f64 = 10.0;
        const MOST_KPA: f64 = 1500.0;
        let at = scanner.at();
        let hundredths = tri!(scanner.decimal(Field::MaximumPressure, 2));
        let end = *scanner;
        scanner.skip_space();
        let whole = hundredths % 100 == 0;
        let number = (hundredths / 100) as u16;
        let short = if hundredths < 10_000 { hundredths as u16 } else { 0 };
        let pressure = match Self::scan_unit(scanner, number, short) {
            Some(pressure @ (Self::Kilopascals(_) | Self::Psi(_))) => {
                if !whole || number < 10 || number > 1500 {
                    return Err(end.range(Field::MaximumPressure, at));
                }
                return Ok(pressure);
            }
            Some(pressure) => pressure,
            None => return Err(scanner.missing(Field::MaximumPressure)),
        };
        let kpa = in_kpa(pressure.pressure());
        if kpa < LEAST_KPA || kpa > MOST_KPA {
            return Err(end.range(Field::MaximumPressure, at));
        }
        Ok(pressure)
    }

    /// The unit of a number, which is told whole and in hundredths.
    #[inline]
    pub(crate) const fn scan_unit(scanner: &mut Scanner<'_>, whole: u16, hundredths: u16) -> Option<Self> {
        if scanner.eat_word("KPA") {
            Some(Self::Kilopascals(whole))
        } else if scanner.eat_word("PSI") {
            Some(Self::Psi(whole))
        } else if scanner.eat_word("BAR") {
            Some(Self::Bar(hundredths))
        } else if scanner.eat_str("KP/CM") || scanner.eat_str("KGF/CM") || scanner.eat_str("KG/CM") {
            if scanner.eat_str("\u{b2}") || scanner.eat(b'2') {
                Some(Self::TechnicalAtmospheres(hundredths))
            } else {
                None
            }
        } else if scanner.eat_str("AT\u{fc}")
            || scanner.eat_str("AT\u{dc}")
            || scanner.eat_word("ATU")
            || scanner.eat_word("ATUE")
        {
            Some(Self::TechnicalAtmospheres(hundredths))
        } else {
            None
        }
    }

    pub(crate) fn write(self, text: &mut Text) {
        match self {
            Self::Kilopascals(kpa) => text.whole(u32::from(kpa)).str(" kPa"),
            Self::Psi(psi) => text.whole(u32::from(psi)).str(" psi"),
            Self::Bar(hundredths) => text.millionths(i64::from(hundredths) * 10_000).str(" bar"),
            Self::TechnicalAtmospheres(hundredths) => {
                text.millionths(i64::from(hundredths) * 10_000).str(" kp/cm2")
            }
        };
    }
}

/// A maximum speed as it is molded, with its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum MoldedSpeed {
    /// A speed molded in kilometres an hour.
    KilometresPerHour(u16),
    /// A speed molded in miles an hour.
    MilesPerHour(u16),
}

impl MoldedSpeed {
    /// The speed as a quantity, which carries its unit.
    ///
    /// ```
    /// use beadseat::{MoldedSpeed, units::kmh, uom::si::velocity::mile_per_hour};
    /// assert_eq!(MoldedSpeed::KilometresPerHour(80).speed(), kmh(80.0));
    /// assert!((MoldedSpeed::MilesPerHour(50).speed().get::<mile_per_hour>() - 50.0).abs() < 1e-9);
    /// ```
    pub const fn speed(self) -> Velocity {
        match self {
            Self::KilometresPerHour(kmh) => units::kmh(kmh as f64),
            Self::MilesPerHour(mph) => units::mph(mph as f64),
        }
    }

    /// Whether a number with a unit of speed stands here.
    pub(crate) const fn is_next(scanner: &Scanner<'_>) -> bool {
        let mut ahead = *scanner;
        ahead.skip_digits();
        ahead.skip_space();
        matches!(ahead.peek(0), b'K' | b'M') && Self::scan_unit(&mut ahead, 0).is_some()
    }

    pub(crate) const fn scan_unit(scanner: &mut Scanner<'_>, number: u16) -> Option<Self> {
        if scanner.eat_word("KM/H") || scanner.eat_word("KMH") || scanner.eat_word("KPH") {
            Some(Self::KilometresPerHour(number))
        } else if scanner.eat_word("MPH") {
            Some(Self::MilesPerHour(number))
        } else {
            None
        }
    }

    /// A speed, and behind it the same in brackets in the other unit.
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let speed = tri!(Self::scan_one(scanner));
        if let Some(inner) = open(scanner) {
            *scanner = inner;
            let other = tri!(Self::scan_one(scanner));
            tri!(close(scanner, Field::MaximumSpeed));
            // Both are whole, and charts round miles by up to four.
            let (a, b) = (in_kmh(speed.speed()), in_kmh(other.speed()));
            if a - b > 7.0 || b - a > 7.0 {
                return Err(scanner.error(ParseErrorKind::Contradiction, Field::MaximumSpeed, start));
            }
        }
        Ok(speed)
    }

    const fn scan_one(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let at = scanner.at();
        let number = tri!(scanner.whole(Field::MaximumSpeed));
        if number < 3 || number > 500 {
            return Err(scanner.range(Field::MaximumSpeed, at));
        }
        scanner.skip_space();
        match Self::scan_unit(scanner, number) {
            Some(speed) => Ok(speed),
            None => Err(scanner.missing(Field::MaximumSpeed)),
        }
    }

    pub(crate) fn write(self, text: &mut Text) {
        match self {
            Self::KilometresPerHour(kmh) => text.whole(u32::from(kmh)).str(" km/h"),
            Self::MilesPerHour(mph) => text.whole(u32::from(mph)).str(" mph"),
        };
    }
}

/// `(` behind optional white space.
pub(crate) const fn open<'a>(scanner: &Scanner<'a>) -> Option<Scanner<'a>> {
    let mut ahead = *scanner;
    ahead.skip_space();
    if !ahead.eat(b'(') {
        return None;
    }
    ahead.skip_space();
    Some(ahead)
}

pub(crate) const fn close(scanner: &mut Scanner<'_>, field: Field) -> Result<(), ParseError> {
    scanner.skip_space();
    if scanner.eat(b')') { Ok(()) } else { Err(scanner.missing(field)) }
}
