//! Facts for programs, in any serde format.

use serde::ser::{Serialize, SerializeMap, Serializer};

use super::fact_value::{FactValue, Plain, undusted};
use super::facts::Fact;
use crate::units::{self, Length};
use crate::wheel::WheelDate;

/// A whole number where it is one.
struct Bare(f64);

impl Serialize for Bare {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let whole = self.0 as i64;
        if whole as f64 == self.0 {
            serializer.serialize_i64(whole)
        } else {
            serializer.serialize_f64(self.0)
        }
    }
}

/// A fact is its value in the unit of its key: a sequence where it may have several, nothing where it is not told.
///
/// ```
/// use beadseat::{Marking, marking::Term};
/// let line = Marking::parse("205/55R16 91V M+S 3PMSF")?;
/// let json = |term| {
///     let fact = line.facts().find(|fact| fact.term() == term);
///     serde_json::to_string(&fact)
/// };
/// assert_eq!(json(Term::RimWidthRange)?, r#"{"min":5.5,"max":7.5,"basis":"estimate"}"#);
/// assert_eq!(json(Term::Marks)?, r#"["M+S","3PMSF"]"#);
/// assert_eq!(json(Term::LoadDual)?, "null");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
impl Serialize for Fact<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.value() {
            _ if self.term().is_many() => serializer.collect_seq(self.values()),
            Some(value) => value.serialize(serializer),
            None => serializer.serialize_none(),
        }
    }
}

impl Serialize for FactValue<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if let Some(number) = self.number() {
            return Bare(number).serialize(serializer);
        }
        let length = |length: Option<Length>| length.map(|length| Bare(undusted(units::in_mm(length))));
        match *self {
            Self::Range { min, nominal, max } => {
                let all = [("min", length(min)), ("nominal", length(nominal)), ("max", length(max))];
                serializer.collect_map(all)
            }
            Self::RimWidths(range) => {
                let mut map = serializer.serialize_map(Some(3))?;
                map.serialize_entry("min", &Bare(range.min().inches()))?;
                map.serialize_entry("max", &Bare(range.max().inches()))?;
                map.serialize_entry("basis", range.basis().name())?;
                map.end()
            }
            Self::Made(WheelDate::Month { month, year }) => {
                serializer.collect_map([("month", u16::from(month)), ("year", year)])
            }
            Self::Made(WheelDate::Week { week, year }) => {
                serializer.collect_map([("week", u16::from(week)), ("year", year)])
            }
            Self::Approval { country, number } => {
                serializer.collect_seq([country.map(u32::from), Some(number)])
            }
            Self::Is(is) => serializer.serialize_bool(is),
            _ => serializer.collect_str(&Plain(*self)),
        }
    }
}
