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

/// The day that is `past` days after 1 January of a year.
pub(crate) const fn nth_day(mut year: u16, past: u16) -> Civil {
    let (mut month, mut day) = (1, past + 1);
    loop {
        let length = days_in(year, month);
        if day <= length {
            return (year, month as u8, day as u8);
        }
        day -= length;
        month += 1;
        if month > 12 {
            (year, month) = (year + 1, 1);
        }
    }
}

/// How many days of the year lie before a day.
const fn day_of_year((year, month, day): Civil) -> u16 {
    let (mut days, mut m) = (day as u16 - 1, 1);
    while m < month as u16 {
        days += days_in(year, m);
        m += 1;
    }
    days
}

/// Years from one day to a later one: whole ones to the last anniversary, and from there the share of the
/// year that has passed, so that an anniversary is a whole number. 29 February has its anniversary on the
/// 28th where there is none. `None` if the days are in the other order.
pub(crate) fn years_between(from: Civil, to: Civil) -> Option<f64> {
    if to < from {
        return None;
    }
    let anniversary = |year: u16| {
        let (_, month, day) = from;
        (year, month, day.min(days_in(year, u16::from(month)) as u8))
    };
    let last = if anniversary(to.0) <= to { to.0 } else { to.0 - 1 };
    let length_of = |year| if is_leap(year) { 366 } else { 365 };
    let days = |from: Civil, to: Civil| {
        let year_ends = if to.0 > from.0 { length_of(from.0) } else { 0 };
        f64::from(day_of_year(to) + year_ends - day_of_year(from))
    };
    let (since, whole) = (anniversary(last), anniversary(last + 1));
    Some(f64::from(last - from.0) + days(since, to) / days(since, whole))
}
