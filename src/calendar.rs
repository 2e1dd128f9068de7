//! The Gregorian calendar, as far as dates on tires need it.

/// Year, month, day.
pub(crate) type Civil = (u16, u8, u8);

pub(crate) const fn is_leap(year: u16) -> bool {
    year % 4 == 0 && (year % 100 != 0 || year % 400 == 0)
}

/// How many days a month has, 1 for January; 0 if there is no such month.
pub(crate) const fn days_in(year: u16, month: u16) -> u16 {
    match month {
        2 if is_leap(year) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => 0,
    }
}

const fn days_of(year: u16) -> u16 {
    365 + is_leap(year) as u16
}

/// How many days of the year lie before March.
const fn before_march(year: u16) -> u16 {
    59 + is_leap(year) as u16
}

/// How many days lie between 1 March and the first of a month that is so many months later: five months have 153
/// days, beginning anywhere where 31 and 30 take turns.
const fn since_march(months: u16) -> u16 {
    (153 * months + 2) / 5
}

/// The day that is `past` days after 1 January of a year.
pub(crate) const fn nth_day(mut year: u16, mut past: u16) -> Civil {
    while past >= days_of(year) {
        past -= days_of(year);
        year += 1;
    }
    if past < 31 {
        return (year, 1, past as u8 + 1);
    }
    if past < before_march(year) {
        return (year, 2, past as u8 - 30);
    }
    let past = past - before_march(year);
    let months = (5 * past + 2) / 153;
    (year, months as u8 + 3, (past - since_march(months)) as u8 + 1)
}

/// How many days of the year lie before a day.
const fn day_of_year((year, month, day): Civil) -> u16 {
    let before = match month as u16 {
        month @ 3.. => before_march(year) + since_march(month - 3),
        month => 31 * (month - 1),
    };
    before + day as u16 - 1
}

/// Years from one day to a later one: whole ones to the last anniversary, and from there the share of the
/// year that has passed, so that an anniversary is a whole number. 29 February has its anniversary on the
/// 28th where there is none. `None` if the days are in the other order.
pub(crate) fn years_between(from: Civil, to: Civil) -> Option<f64> {
    let [years, days, of] = years_and_days(from, to)?;
    Some(years + days / of)
}

/// The same as whole years, days since the last anniversary, and the days of the year that began there.
#[inline(always)]
pub(crate) fn years_and_days(from: Civil, to: Civil) -> Option<[f64; 3]> {
    if to < from {
        return None;
    }
    let anniversary = |year: u16| {
        let (_, month, day) = from;
        (year, month, day.min(days_in(year, u16::from(month)) as u8))
    };
    let last = if anniversary(to.0) <= to { to.0 } else { to.0 - 1 };
    let days = |from: Civil, to: Civil| {
        let year_ends = if to.0 > from.0 { days_of(from.0) } else { 0 };
        f64::from(day_of_year(to) + year_ends - day_of_year(from))
    };
    let (since, whole) = (anniversary(last), anniversary(last + 1));
    Some([f64::from(last - from.0), days(since, to), days(since, whole)])
}
