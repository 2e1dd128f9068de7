//! Age of a tire on a day that the caller names.

use jiff::civil::Date;
use jiff::{Span, Unit};

use super::{DateCode, ManufactureWeek};

/// The week molded on the tire lies after the day it was to be judged on: the code is misread, or the
/// number has another reading, or the day is wrong.
///
/// ```
/// use beadseat::tire::identification::DateCode;
/// let error = DateCode::parse("3197")?.age_on(jiff::civil::date(2026, 11, 25)).unwrap_err();
/// assert_eq!(error.to_string(), "week 31 of 2097 is in the future");
/// assert_eq!(error.week().year(), 2097);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
#[error("week {} of {} is in the future", .week.week(), .week.year())]
pub struct FutureDate {
    week: ManufactureWeek,
}

impl FutureDate {
    /// The week that is to come.
    pub const fn week(&self) -> ManufactureWeek {
        self.week
    }
}

/// How old a tire is: a span, because a week has seven days and a digit may mean several decades.
///
/// ```
/// use beadseat::tire::identification::DateCode;
/// let age = DateCode::parse("0516")?.age_on(jiff::civil::date(2026, 6, 1))?;
/// assert_eq!((age.min().get_years(), age.max().get_years()), (10, 10));
/// assert_eq!(age.is_over(10), Some(true));
/// // A digit leaves the decade open, and so the span is wide.
/// let age = DateCode::parse("317")?.age_on(jiff::civil::date(2026, 11, 25))?;
/// assert_eq!((age.min().get_years(), age.max().get_years()), (29, 49));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Age {
    made_first: Date,
    made_last: Date,
    on: Date,
}

impl DateCode {
    /// The age on a day. Weeks after that day are left out if an earlier one is possible. With feature
    /// `jiff`.
    ///
    /// # Errors
    /// If every week the code may mean begins after the day.
    pub fn age_on(self, day: Date) -> Result<Age, FutureDate> {
        let mut age: Option<Age> = None;
        let mut future = None;
        for week in self.candidates() {
            if week.first_day() > day {
                future = Some(week);
                continue;
            }
            let made_last = age.map_or(week.last_day().min(day), |age| age.made_last);
            age = Some(Age { made_first: week.first_day(), made_last, on: day });
        }
        match (age, future) {
            (Some(age), _) => Ok(age),
            (None, Some(week)) => Err(FutureDate { week }),
            // Never: a date code has a candidate.
            (None, None) => Ok(Age { made_first: day, made_last: day, on: day }),
        }
    }
}

impl Age {
    /// The earliest day it can have been made on.
    pub const fn made_first(&self) -> Date {
        self.made_first
    }

    /// The latest day it can have been made on.
    pub const fn made_last(&self) -> Date {
        self.made_last
    }

    /// The day the age is counted to.
    pub const fn on(&self) -> Date {
        self.on
    }

    /// The least age, in years, months and days: from the latest day.
    pub fn min(&self) -> Span {
        // Both days are in the range of `Date`, so the difference is.
        self.made_last.until((Unit::Year, self.on)).unwrap_or_default()
    }

    /// The greatest age, in years, months and days: from the earliest day.
    pub fn max(&self) -> Span {
        self.made_first.until((Unit::Year, self.on)).unwrap_or_default()
    }

    /// Whether it is more than so many years old; `None` if that depends on the day of the week it was
    /// made or on the decade.
    ///
    /// ```
    /// use beadseat::tire::identification::DateCode;
    /// let code = DateCode::parse("0516")?; // 31 January to 6 February 2016
    /// let over = |day| code.age_on(day).map(|age| age.is_over(10));
    /// assert_eq!(over(jiff::civil::date(2026, 1, 31))?, Some(false)); // ten years, and not a day more
    /// assert_eq!(over(jiff::civil::date(2026, 2, 1))?, None);
    /// assert_eq!(over(jiff::civil::date(2026, 2, 7))?, Some(true));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn is_over(&self, years: u8) -> Option<bool> {
        let over = |made: Date| made.saturating_add(Span::new().years(years)) < self.on;
        match (over(self.made_last), over(self.made_first)) {
            (true, _) => Some(true),
            (false, false) => Some(false),
            (false, true) => None,
        }
    }
}
