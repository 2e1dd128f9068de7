//! How the vehicle will be used.

use crate::calendar::days_in;
use crate::record::{record, words};
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length, Velocity};

/// A day, written as ISO 8601 does: `2026-11-25`.
///
/// The crate reads no clock, so an assessment that depends on the day is told it. It is only kept here;
/// with feature `jiff` it converts to a civil date for arithmetic. `Ord` is by time.
///
/// ```
/// use beadseat::fitment::Day;
/// assert!(Day::parse("2026-11-25")? > Day::parse("2024-02-29")?);
/// assert!(Day::parse("2023-02-29").is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day {
    year: u16,
    month: u8,
    day: u8,
}

impl Day {
    const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let at = scanner.at();
        let year = tri!(scanner.whole(Field::Day));
        if !scanner.eat(b'-') {
            return Err(scanner.missing(Field::Day));
        }
        let month = tri!(scanner.whole(Field::Day));
        if !scanner.eat(b'-') {
            return Err(scanner.missing(Field::Day));
        }
        let day = tri!(scanner.whole(Field::Day));
        if year < 1900 || day == 0 || day > days_in(year, month) {
            return Err(scanner.range(Field::Day, at));
        }
        Ok(Self { year, month: month as u8, day: day as u8 })
    }

    fn write(&self, text: &mut Text) {
        text.whole(u32::from(self.year));
        for part in [self.month, self.day] {
            text.byte(b'-').byte(b'0' + part / 10).byte(b'0' + part % 10);
        }
    }

    /// The year, the month and the day, in that order.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::Day::parse("2026-11-25")?.parts(), (2026, 11, 25));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn parts(self) -> (u16, u8, u8) {
        (self.year, self.month, self.day)
    }
}

#[cfg(feature = "jiff")]
impl TryFrom<Day> for jiff::civil::Date {
    type Error = jiff::Error;
    fn try_from(day: Day) -> Result<Self, Self::Error> {
        Self::new(day.year as i16, day.month as i8, day.day as i8)
    }
}

designation!(Day in "beadseat::fitment", "2026-11-05" => "2026-11-05", wrong "2026-13-01");

words! {
    /// A class of traction device (chains and the like) by the room it needs beside the tire. Source:
    /// [`Citation::TRACTION_DEVICE`](crate::Citation::TRACTION_DEVICE).
    ///
    /// ```
    /// use beadseat::{fitment::TractionClass, units::mm};
    /// assert_eq!(TractionClass::S.room(), (mm(37.0), mm(15.0)));
    /// ```
    TractionClass {
        /// For vehicles with little room.
        S = "s",
        /// For vehicles with ordinary room.
        U = "u",
        /// For light trucks with much room.
        W = "w",
    }
}

impl TractionClass {
    /// The room it needs above the tread and beside the sidewall.
    pub const fn room(self) -> (Length, Length) {
        match self {
            Self::S => (units::mm(37.0), units::mm(15.0)),
            Self::U => (units::mm(50.0), units::mm(23.0)),
            Self::W => (units::mm(63.5), units::mm(38.1)),
        }
    }
}

record! {
    /// How the vehicle will be used, where that differs from what its maker assumed.
    ///
    /// ```
    /// use beadseat::{fitment::Conditions, units::kmh};
    /// let towing = Conditions::new().with_towing(true).with_top_speed(kmh(100.0))?;
    /// assert_eq!(towing.towing(), Some(true));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    #[derive(Copy)]
    Conditions {
        /// The day for which the assessment is made.
        date / with_date: Day = "date";
        /// Whether a trailer is towed.
        towing / with_towing: bool = "towing";
        /// The class of traction device to be used on the driven wheels.
        traction_device / with_traction_device: TractionClass = "traction_device";
        /// The speed that will never be exceeded. It lowers the load share and pressure asked of the
        /// tires; the speed symbol asked for stays the vehicle's.
        top_speed / with_top_speed: Velocity = "top_speed_kmh" [kmh in_kmh "km/h" 5 to 500];
    }
}

impl Default for Conditions {
    fn default() -> Self {
        Self::new()
    }
}
