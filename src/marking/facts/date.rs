//! When a tire was made.

use crate::calendar::Civil;
use crate::marking::fact_value::FactValue;
use crate::marking::term::Term;
use crate::tire::identification::{DateCode, ManufactureWeek};

pub(super) const TERMS: &[Term] = &[
    Term::ManufactureWeek,
    Term::ManufactureYear,
    Term::FirstDay,
    Term::LastDay,
    Term::DecadeAmbiguous,
    Term::PossibleYears,
];

/// A fact of a date, or of a number that has none.
pub(super) fn of_date(code: Option<DateCode>, term: Term, n: usize) -> Option<FactValue<'static>> {
    let weeks = || code.into_iter().flat_map(DateCode::candidates);
    // Days are known only where the year is.
    let only = || weeks().next().filter(|_| weeks().nth(1).is_none());
    let year = |week: ManufactureWeek| FactValue::Whole(u32::from(week.year()));
    let day = |(year, month, day): Civil| FactValue::Day { year, month, day };
    match term {
        Term::ManufactureWeek => code.map(|code| FactValue::Whole(u32::from(code.manufacture_week()))),
        Term::ManufactureYear => only().map(year),
        Term::FirstDay => only().map(|week| day(week.days()[0])),
        Term::LastDay => only().map(|week| day(week.days()[1])),
        Term::DecadeAmbiguous => code.map(|code| FactValue::Is(code.is_decade_ambiguous())),
        Term::PossibleYears => weeks().nth(n).map(year),
        _ => None,
    }
}
