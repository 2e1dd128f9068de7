//! The date of manufacture: a week, and a year or its last digit.

use crate::Citation;
use crate::calendar::{self, Civil};
use crate::step::Teller;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};

/// Part 574 began in May 1971 (from memory): the first week with a day in that month.
const FIRST: (u16, u8) = (1971, 17);
/// Dates of three digits ended where 2 July 2000 begins (from memory): the week before it.
const LAST_OF_THREE_DIGITS: (u16, u8) = (2000, 26);
const LAST_YEAR: u16 = 2099;
/// Days that ISO weeks begin before those of the rule, in years that begin on a Monday to Thursday.
const ISO_BEFORE: i16 = 6;

/// A week of the calendar that date codes count in.
///
/// Week 01 is the first full week of the year and weeks run from Sunday to Saturday, so week 01 begins
/// on the first Sunday of January, and the days before it belong to the last week of the year before.
/// The last week is 52, or 53 where the year begins on a Sunday or is a leap year that begins on a
/// Saturday. `Ord` is by time.
///
/// **Not every maker counts so.** Some date their tires by ISO 8601 weeks, which run from Monday: the
/// tire was then made up to six days before or one day after the week this type answers. A week 53 that only
/// ISO 8601 has can be of such a maker alone: [`is_iso_only`](Self::is_iso_only) tells it, and its days are those of
/// ISO 8601. Source: 49 CFR 574.5; that weeks run from Sunday to Saturday is from memory; ISO 8601 by its
/// definition.
///
/// ```
/// use beadseat::tire::identification::ManufactureWeek;
/// let week = ManufactureWeek::new(53, 2017).ok_or("no such week")?;
/// assert_eq!((week.year(), week.week()), (2017, 53));
/// assert!(ManufactureWeek::new(53, 2016).is_none());
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ManufactureWeek {
    year: u16,
    week: u8,
}

/// The weekday of 1 January, 0 for Sunday, by the rule of Gauss.
const fn january_first(year: u16) -> u8 {
    let before = year as u32 - 1;
    ((1 + 5 * (before % 4) + 4 * (before % 100) + 6 * (before % 400)) % 7) as u8
}

impl ManufactureWeek {
    /// The week in which this edition of the library was made, which reads no clock: where nothing but four digits
    /// stands, a later week is no date.
    ///
    /// ```
    /// use beadseat::tire::identification::ManufactureWeek;
    /// assert_eq!(Some(ManufactureWeek::EDITION), ManufactureWeek::new(47, 2026));
    /// ```
    pub const EDITION: Self = Self { year: 2026, week: 47 };

    /// The week, if its year has it by the rule or by ISO 8601; from May 1971, when identification numbers began, to
    /// 2099.
    ///
    /// ```
    /// use beadseat::tire::identification::ManufactureWeek;
    /// assert!(ManufactureWeek::new(1, 2018).is_some());
    /// assert!(ManufactureWeek::new(0, 2018).is_none());
    /// assert!(ManufactureWeek::new(1, 2100).is_none());
    /// ```
    pub const fn new(week: u8, year: u16) -> Option<Self> {
        let most = if Self::has_iso_53(year) { 53 } else { Self::weeks_in(year) };
        if year < FIRST.0 || year > LAST_YEAR || week < 1 || week > most {
            return None;
        }
        if year == FIRST.0 && week < FIRST.1 { None } else { Some(Self { year, week }) }
    }

    /// How many weeks a year has by this rule, 52 or 53; any year from 1.
    ///
    /// ```
    /// use beadseat::tire::identification::ManufactureWeek;
    /// assert_eq!(ManufactureWeek::weeks_in(2017), 53);
    /// assert_eq!(ManufactureWeek::weeks_in(2020), 52);
    /// ```
    pub const fn weeks_in(year: u16) -> u8 {
        match january_first(if year == 0 { 400 } else { year }) {
            0 => 53,
            6 if calendar::is_leap(year) => 53,
            _ => 52,
        }
    }

    /// Whether ISO 8601 gives the year a week 53: it begins on a Thursday, or is a leap year that begins on a
    /// Wednesday. The rule then has none.
    const fn has_iso_53(year: u16) -> bool {
        let first = january_first(if year == 0 { 400 } else { year });
        first == 4 || first == 3 && calendar::is_leap(year)
    }

    /// Whether it is a week 53 that ISO 8601 has and the rule has not: a maker who counts ISO weeks dated the tire,
    /// or the code is misread or false.
    ///
    /// ```
    /// use beadseat::tire::identification::ManufactureWeek;
    /// assert!(ManufactureWeek::new(53, 2020).is_some_and(|week| week.is_iso_only()));
    /// assert!(ManufactureWeek::new(53, 2017).is_some_and(|week| !week.is_iso_only()));
    /// ```
    pub const fn is_iso_only(self) -> bool {
        self.week > Self::weeks_in(self.year)
    }

    /// The year the week is counted in; its last days may lie in the next.
    ///
    /// ```
    /// use beadseat::tire::identification::ManufactureWeek;
    /// assert_eq!(ManufactureWeek::new(52, 2015).map(|w| w.year()), Some(2015));
    /// ```
    pub const fn year(self) -> u16 {
        self.year
    }

    /// The number of the week, 1 to 53.
    ///
    /// ```
    /// use beadseat::tire::identification::ManufactureWeek;
    /// assert_eq!(ManufactureWeek::new(52, 2015).map(|w| w.week()), Some(52));
    /// ```
    pub const fn week(self) -> u8 {
        self.week
    }
}

impl ManufactureWeek {
    /// The day of January on which week 01 begins.
    const fn first_sunday(year: u16) -> u16 {
        1 + (7 - january_first(year) as u16) % 7
    }

    /// Days from 1 January to the first of the week: a Sunday, but the Monday of a week that only ISO 8601 has.
    const fn first(self) -> i16 {
        let sunday = (Self::first_sunday(self.year) - 1 + 7 * (self.week as u16 - 1)) as i16;
        if self.is_iso_only() { sunday - ISO_BEFORE } else { sunday }
    }

    /// The day so many days after 1 January; before it, of December.
    const fn day(self, past: i16) -> Civil {
        match past {
            0.. => calendar::nth_day(self.year, past as u16),
            _ => (self.year - 1, 12, (32 + past) as u8),
        }
    }

    /// The first and the last day of the week.
    pub(crate) const fn days(self) -> [Civil; 2] {
        [self.day(self.first()), self.day(self.first() + 6)]
    }

    /// The first day of the week by the rule or by ISO 8601, whichever is earlier. ISO weeks of a year that begins on
    /// a Monday to Thursday begin six days before those of the rule, and of others a day after.
    const fn first_possible_day(self) -> Civil {
        let iso_is_earlier = matches!(january_first(self.year), 1..=4) && !self.is_iso_only();
        self.day(if iso_is_earlier { self.first() - ISO_BEFORE } else { self.first() })
    }
}

#[cfg(feature = "jiff")]
const fn civil((year, month, day): Civil) -> jiff::civil::Date {
    // At most 2100-01-03, and a day that its month has.
    jiff::civil::date(year as i16, month as i8, day as i8)
}

#[cfg(feature = "jiff")]
impl ManufactureWeek {
    /// The Sunday on which the week begins, or the Monday if [only ISO 8601 has it](Self::is_iso_only). With feature
    /// `jiff`.
    ///
    /// ```
    /// use beadseat::tire::identification::ManufactureWeek;
    /// let week = ManufactureWeek::new(9, 2020).ok_or("no such week")?;
    /// assert_eq!(week.first_day(), jiff::civil::date(2020, 3, 1));
    /// # Ok::<(), &str>(())
    /// ```
    pub const fn first_day(self) -> jiff::civil::Date {
        civil(self.days()[0])
    }

    /// The Saturday on which the week ends, or the Sunday if [only ISO 8601 has it](Self::is_iso_only). With feature
    /// `jiff`.
    ///
    /// ```
    /// use beadseat::tire::identification::ManufactureWeek;
    /// let week = ManufactureWeek::new(52, 2015).ok_or("no such week")?;
    /// assert_eq!(week.last_day(), jiff::civil::date(2016, 1, 2));
    /// # Ok::<(), &str>(())
    /// ```
    pub const fn last_day(self) -> jiff::civil::Date {
        civil(self.days()[1])
    }

    /// The week a day belongs to by the rule; `None` before May 1971 and after 2099. With feature `jiff`.
    ///
    /// ```
    /// use beadseat::tire::identification::ManufactureWeek;
    /// let week = ManufactureWeek::containing(jiff::civil::date(2015, 1, 1));
    /// assert_eq!(week, ManufactureWeek::new(52, 2014));
    /// ```
    pub fn containing(day: jiff::civil::Date) -> Option<Self> {
        let year = u16::try_from(day.year()).ok()?;
        let of_year = day.day_of_year().unsigned_abs();
        match of_year.checked_sub(Self::first_sunday(year.max(1))) {
            Some(past) => Self::new((past / 7 + 1) as u8, year),
            None => Self::new(Self::weeks_in(year.checked_sub(1)?), year - 1),
        }
    }
}

/// How the year is molded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
enum CodedYear {
    /// Two digits, of 2000 to 2099.
    TwoDigits(u8),
    /// The last digit, of a year before mid 2000.
    LastDigit(u8),
}

/// The date group of an identification number: `0118` is week 01 of 2018, `317` week 31 of a year that
/// ends in 7.
///
/// Three digits were molded until mid 2000, and the year digit came back every ten years. Which decade
/// it is cannot be read from the digit, so all that are possible are kept: [`DateCode::candidates`]
/// answers them, newest first. The agency's view was to take the newest; an owner manual says not to
/// use the tire at all. Week 53 may leave only one decade.
///
/// Week 53 of a year that has it by ISO 8601 alone (2004, 2009, 2015, 2020, 2026 …) is read, with the doubt that
/// [`ManufactureWeek::is_iso_only`] tells. Of three digits, only weeks of the rule are.
///
/// A code may name a week that is yet to come: the library reads no clock. Compare the candidates with
/// the week of a day you know, or, with feature `jiff`, ask `DateCode::age_on`.
///
/// # Syntax
/// ```text
/// date = week year       week two digits, year two digits or one
/// ```
/// Accepted: `0118`, `5317`, `5320`, `317`. Refused: `0017`, `5316` (2016 has 52 weeks by either rule), `01/18`,
/// `18`.
///
/// Source: 49 CFR 574.5 as amended on 8 July 1999 for four digits; NHTSA interpretation 12375wkm (1996)
/// for three; their last day, and Part 574's first, from memory.
///
/// ```
/// use beadseat::tire::identification::DateCode;
/// let date: DateCode = "317".parse()?;
/// let years: Vec<u16> = date.candidates().map(|week| week.year()).collect();
/// assert_eq!((date.manufacture_week(), years), (31, vec![1997, 1987, 1977]));
/// assert_eq!(DateCode::parse("535")?.manufacture_year(), Some(1995)); // no other had a week 53
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct DateCode {
    week: u8,
    year: CodedYear,
}

/// The decades a last digit may belong to, newest first.
const DECADES: [u16; 4] = [2000, 1990, 1980, 1970];

impl DateCode {
    /// The code of four digits for a week of 2000 to 2099.
    ///
    /// ```
    /// use beadseat::tire::identification::DateCode;
    /// assert_eq!(DateCode::new(1, 2018).map(|d| d.to_string()).as_deref(), Some("0118"));
    /// assert_eq!(DateCode::new(53, 2016), None);
    /// ```
    pub const fn new(week: u8, year: u16) -> Option<Self> {
        match ManufactureWeek::new(week, year) {
            Some(_) if year >= 2000 => Some(Self { week, year: CodedYear::TwoDigits((year - 2000) as u8) }),
            _ => None,
        }
    }

    /// The code of three digits for a week of some year before mid 2000 that ends in `digit`.
    ///
    /// ```
    /// use beadseat::tire::identification::DateCode;
    /// assert_eq!(DateCode::of_year_digit(3, 1).map(|d| d.to_string()).as_deref(), Some("031"));
    /// assert_eq!(DateCode::of_year_digit(53, 6), None);
    /// ```
    pub const fn of_year_digit(week: u8, digit: u8) -> Option<Self> {
        if digit > 9 {
            return None;
        }
        let code = Self { week, year: CodedYear::LastDigit(digit) };
        let mut decade = 0;
        while decade < DECADES.len() {
            if code.candidate(decade).is_some() {
                return Some(code);
            }
            decade += 1;
        }
        None
    }

    /// The week in the `n`th of the decades it may belong to.
    const fn candidate(self, n: usize) -> Option<ManufactureWeek> {
        match self.year {
            CodedYear::TwoDigits(year) if n == 0 => ManufactureWeek::new(self.week, 2000 + year as u16),
            CodedYear::TwoDigits(_) => None,
            CodedYear::LastDigit(digit) => {
                let year = DECADES[n] + digit as u16;
                if year > LAST_OF_THREE_DIGITS.0
                    || year == LAST_OF_THREE_DIGITS.0 && self.week > LAST_OF_THREE_DIGITS.1
                {
                    return None;
                }
                match ManufactureWeek::new(self.week, year) {
                    Some(week) if !week.is_iso_only() => Some(week),
                    _ => None,
                }
            }
        }
    }

    /// The code of so many digits with a value, if there is one.
    pub(crate) const fn of_value(value: u16, digits: usize) -> Option<Self> {
        match digits {
            3 => Self::of_year_digit((value / 10) as u8, (value % 10) as u8),
            4 => Self::new((value / 100) as u8, 2000 + value % 100),
            _ => None,
        }
    }

    /// The code that three or four digits are, if they are one.
    pub(super) const fn of_digits(digits: &[u8]) -> Option<Self> {
        let mut value = 0;
        let mut i = 0;
        while i < digits.len() {
            if !digits[i].is_ascii_digit() {
                return None;
            }
            value = value * 10 + (digits[i] - b'0') as u16;
            i += 1;
        }
        Self::of_value(value, digits.len())
    }

    const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let value = tri!(scanner.whole(Field::DateCode));
        match Self::of_value(value, scanner.at() - start) {
            Some(code) => Ok(code),
            None => Err(scanner.range(Field::DateCode, start)),
        }
    }

    pub(crate) fn write(self, text: &mut Text) {
        let mut digits = |value: u8| {
            text.byte(b'0' + value / 10).byte(b'0' + value % 10);
        };
        digits(self.week);
        match self.year {
            CodedYear::TwoDigits(year) => digits(year),
            CodedYear::LastDigit(digit) => {
                text.byte(b'0' + digit);
            }
        }
    }

    /// The number of the week, 1 to 53.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::identification::DateCode::parse("5317")?.manufacture_week(), 53);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn manufacture_week(self) -> u8 {
        self.week
    }

    /// The year, where only one is possible.
    ///
    /// ```
    /// use beadseat::tire::identification::DateCode;
    /// assert_eq!(DateCode::parse("0118")?.manufacture_year(), Some(2018));
    /// assert_eq!(DateCode::parse("031")?.manufacture_year(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn manufacture_year(self) -> Option<u16> {
        let mut candidates = self.candidates();
        let newest = candidates.next()?;
        candidates.next().is_none().then_some(newest.year)
    }

    /// Every week the code may mean, newest first; at least one.
    ///
    /// ```
    /// use beadseat::tire::identification::DateCode;
    /// let years: Vec<u16> = DateCode::parse("031")?.candidates().map(|week| week.year()).collect();
    /// assert_eq!(years, [1991, 1981]); // identification numbers began later in 1971
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn candidates(self) -> impl DoubleEndedIterator<Item = ManufactureWeek> + Clone {
        (0..DECADES.len()).filter_map(move |n| self.candidate(n))
    }

    /// The least and the greatest age in years on a day, over the days of the week and the decades it may
    /// mean; 0 where the week is yet to come by the rule and not by ISO 8601. `None` if it is to come by both.
    pub(crate) fn years_on(self, day: Civil) -> Option<(f64, f64)> {
        let mut made = self.candidates().filter(|week| week.first_possible_day() <= day);
        let newest = made.next()?;
        let [oldest, _] = made.next_back().unwrap_or(newest).days();
        let [_, newest] = newest.days();
        let age = |made: Civil| calendar::years_between(made.min(day), day);
        age(newest).zip(age(oldest))
    }

    /// Tells how the greatest age of [`DateCode::years_on`] comes about.
    pub(crate) fn tell_age(self, day: Civil, tell: &mut Teller<'_>) -> Option<f64> {
        let mut made = self.candidates().filter(|week| week.first_possible_day() <= day);
        let newest = made.next()?;
        let [first, _] = made.next_back().unwrap_or(newest).days();
        let [years, days, of] = calendar::years_and_days(first.min(day), day)?;
        let (y, m, d) = first.min(day);
        let name = "first day of the earliest week that the date code may mean";
        tell.words(format_args!("{name}"), format_args!("{y}-{m:02}-{d:02}"), Citation::DATE_CODE);
        tell.words(
            format_args!("day of the report"),
            format_args!("{}-{:02}-{:02}", day.0, day.1, day.2),
            None,
        );
        tell.given(format_args!("whole years between them"), years, "years", Citation::DATE_CODE);
        tell.given(format_args!("days since the last anniversary"), days, "days", Citation::DATE_CODE);
        tell.given(format_args!("days of the year that began there"), of, "days", Citation::DATE_CODE);
        let form = ("{0} + {1} / {2}", &[years, days, of][..]);
        Some(tell.worked(format_args!("greatest age"), form, years + days / of, "years", None))
    }

    /// Whether a week that is yet to come begins no more than seven days after a day.
    pub(crate) fn is_at_most_a_week_after(self, day: Civil) -> bool {
        self.candidates().any(|week| week.day(week.first() - 7) <= day)
    }

    /// Whether the week it means is one that [ISO 8601 has and the rule has not](ManufactureWeek::is_iso_only).
    ///
    /// ```
    /// use beadseat::tire::identification::DateCode;
    /// assert!(DateCode::parse("5320")?.is_iso_only());
    /// assert!(!DateCode::parse("5317")?.is_iso_only() && !DateCode::parse("5220")?.is_iso_only());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_iso_only(self) -> bool {
        // Of three digits no candidate is.
        matches!(self.candidate(0), Some(week) if week.is_iso_only())
    }

    /// Whether more than one decade is possible.
    ///
    /// ```
    /// use beadseat::tire::identification::DateCode;
    /// assert!(DateCode::parse("317")?.is_decade_ambiguous());
    /// assert!(!DateCode::parse("535")?.is_decade_ambiguous());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn is_decade_ambiguous(self) -> bool {
        self.candidates().nth(1).is_some()
    }

    /// Whether the code has three digits: the tire was made before mid 2000, and is too old to use
    /// whichever decade it was. Source: a vehicle owner manual.
    ///
    /// ```
    /// use beadseat::tire::identification::DateCode;
    /// assert!(DateCode::parse("535")?.has_three_digits());
    /// assert!(!DateCode::parse("0100")?.has_three_digits());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn has_three_digits(self) -> bool {
        matches!(self.year, CodedYear::LastDigit(_))
    }
}

designation!(DateCode in "beadseat::tire::identification", " 0118" => "0118", wrong "5316");
