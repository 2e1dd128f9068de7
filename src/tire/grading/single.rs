//! One grade by itself.

use super::whole::{
    TEMPERATURE, TRACTION, TREADWEAR, TemperatureGrade, TractionGrade, TreadwearGrade, eat_grade,
    skip_separator,
};
use crate::Citation;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};

/// One of the three grades by itself, under its word: on many tires they stand in lines of their own.
///
/// # Syntax
/// ```text
/// grade = "TREADWEAR" number | "TRACTION" ( "AA" | "A" | "B" | "C" ) | "TEMPERATURE" ( "A" | "B" | "C" )
/// ```
/// Without its word a grade is a number or a letter that could be anything, and is refused.
///
/// ```
/// use beadseat::tire::grading::{Grade, TractionGrade, TreadwearGrade};
/// assert_eq!(Grade::parse("Traction: AA")?, Grade::Traction(TractionGrade::AA));
/// assert_eq!(TreadwearGrade::new(400).map(Grade::Treadwear), Some(Grade::parse("treadwear 400")?));
/// assert!(Grade::parse("400").is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Grade {
    /// Grade of wear of the tread.
    Treadwear(TreadwearGrade),
    /// Of braking on wet pavement.
    Traction(TractionGrade),
    /// Of heat at speed.
    Temperature(TemperatureGrade),
}

impl Grade {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if eat_grade(scanner, TREADWEAR) {
            skip_separator(scanner);
            return Ok(Self::Treadwear(tri!(TreadwearGrade::scan(scanner))));
        }
        let traction = eat_grade(scanner, TRACTION);
        if !traction && !eat_grade(scanner, TEMPERATURE) {
            return Err(scanner.missing(Field::Treadwear));
        }
        skip_separator(scanner);
        if !traction {
            return Ok(Self::Temperature(tri!(TemperatureGrade::scan(scanner))));
        }
        let both = scanner.eat_alone("AA");
        let grade = if both { TractionGrade::AA } else { tri!(TractionGrade::scan_letter(scanner)) };
        Ok(Self::Traction(grade))
    }

    pub(crate) fn write(self, text: &mut Text) {
        match self {
            Self::Treadwear(grade) => {
                text.str("TREADWEAR ");
                grade.write(text);
            }
            Self::Traction(grade) => {
                text.str("TRACTION ").str(grade.name());
            }
            Self::Temperature(grade) => {
                text.str("TEMPERATURE ").str(grade.name());
            }
        }
    }

    /// Where it is laid down.
    ///
    /// ```
    /// use beadseat::{Citation, tire::grading::Grade};
    /// assert_eq!(Grade::parse("temperature B")?.citation(), Citation::TEMPERATURE_GRADE);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn citation(self) -> Citation {
        match self {
            Self::Treadwear(grade) => grade.citation(),
            Self::Traction(grade) => grade.citation(),
            Self::Temperature(grade) => grade.citation(),
        }
    }
}

designation!(Grade in "beadseat::tire::grading", "traction aa" => "TRACTION AA", wrong "AA");
