//! Everything that is stamped or cast on a wheel, in any order.

use core::num::NonZeroU32;

use super::phrase::Behind;
use super::{phrase, size_phrase};
use crate::molded::MoldedLoad;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::wheel::{Seat, Thread, Wheel, WheelSize, bolt_circle};

/// When a wheel was made, as it is stamped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum WheelDate {
    /// `03/2021`, as UN R124 asks for month and year.
    Month {
        /// The month, from 1 to 12.
        month: u8,
        /// The year, from 1950 to 2099.
        year: u16,
    },
    /// `W23/2021` or `2021-W23`: week and year.
    Week {
        /// The week, from 1 to 53.
        week: u8,
        /// The year, from 1950 to 2099.
        year: u16,
    },
}

impl WheelDate {
    const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let by_week = scanner.eat(b'W');
        let mut number = tri!(scanner.whole(Field::WheelDate));
        let year;
        let mut week = by_week;
        if !by_week && scanner.eat(b'-') {
            year = number;
            if !scanner.eat(b'W') {
                return Err(scanner.missing(Field::WheelDate));
            }
            week = true;
            number = tri!(scanner.whole(Field::WheelDate));
        } else {
            if !scanner.eat(b'/') {
                return Err(scanner.missing(Field::WheelDate));
            }
            year = tri!(scanner.whole(Field::WheelDate));
        }
        let most = if week { 53 } else { 12 };
        if year < 1950 || year > 2099 || number < 1 || number > most {
            return Err(scanner.range(Field::WheelDate, start));
        }
        let number = number as u8;
        Ok(if week { Self::Week { week: number, year } } else { Self::Month { month: number, year } })
    }

    /// Whether one begins here: digits, a stroke and a year of four digits, or the week of a year.
    const fn is_next(scanner: &Scanner<'_>) -> bool {
        let mut ahead = *scanner;
        let by_week = ahead.eat(b'W');
        let at = ahead.at();
        ahead.skip_digits();
        let digits = ahead.at() - at;
        if digits == 4 && !by_week {
            return ahead.eat(b'-') && ahead.is_at(b'W');
        }
        if digits == 0 || digits > 2 || !ahead.eat(b'/') {
            return false;
        }
        let at = ahead.at();
        ahead.skip_digits();
        ahead.at() - at == 4
    }

    fn write(self, text: &mut Text) {
        let (number, year) = match self {
            Self::Month { month, year } => (month, year),
            Self::Week { week, year } => {
                text.byte(b'W');
                (week, year)
            }
        };
        text.byte(b'0' + number / 10).byte(b'0' + number % 10).byte(b'/').whole(u32::from(year));
    }
}

macro_rules! wheel_marks {
    ($($(#[$doc:meta])* $variant:ident = $bit:literal, $mark:literal, [$($other:literal)*], $meaning:literal;)*) => {
        /// A mark of a standard or an authority on a wheel. What each stands for is from memory.
        ///
        /// ```
        /// use beadseat::wheel::{WheelMark, WheelStamp};
        /// let stamp = WheelStamp::parse("7Jx16 JWL VIA")?;
        /// assert!(stamp.has(WheelMark::Jwl) && !stamp.has(WheelMark::Dot));
        /// assert!(WheelMark::Via.meaning().contains("inspection"));
        /// # Ok::<(), beadseat::ParseError>(())
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum WheelMark { $($(#[$doc])* $variant,)* }

        impl WheelMark {
            /// Every one, in the canonical order.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// The letters, as they are stamped.
            ///
            /// ```
            /// assert_eq!(beadseat::wheel::WheelMark::JwlT.mark(), "JWL-T");
            /// ```
            pub const fn mark(self) -> &'static str {
                match self { $(Self::$variant => $mark,)* }
            }

            /// What it stands for.
            pub const fn meaning(self) -> &'static str {
                match self { $(Self::$variant => $meaning,)* }
            }

            const fn bit(self) -> u8 {
                match self { $(Self::$variant => $bit,)* }
            }

            const fn scan(scanner: &mut Scanner<'_>) -> Option<Self> {
                $(if scanner.begins($mark) && scanner.eat_alone($mark)
                    $(|| scanner.begins($other) && scanner.eat_alone($other))*
                {
                    return Some(Self::$variant);
                })*
                None
            }
        }
    };
}

wheel_marks! {
    /// `JWL-T`: wheel of a truck or bus, by the standard of Japan.
    JwlT = 1, "JWL-T", ["JWLT"], "light alloy wheel of a truck or bus to the technical standard of Japan";
    /// `JWL`: wheel of a car, by the standard of Japan.
    Jwl = 2, "JWL", [], "light alloy wheel of a car to the technical standard of Japan";
    /// `VIA`: registered with the inspection association of Japan.
    Via = 4, "VIA", [], "registered with the vehicle inspection association of Japan, which tests for JWL";
    /// `DOT`: certified by its maker for the US.
    Dot = 8, "DOT", [], "the maker certifies the wheel for the federal standards of the US";
    /// `SAE J2530`: aftermarket wheel tested to that standard.
    J2530 = 16, "SAE J2530", ["SAEJ2530" "J2530"], "aftermarket wheel tested to SAE J2530";
}

/// Longest name of a country that is read.
const ORIGIN: usize = 14;

/// What is stamped or cast on a wheel.
///
/// # Syntax
/// ```text
/// stamp    = part { part }      in any order, each at most once; the size must be among them
/// part     = size | inset | backspacing | circles | bore | load | date | approval | permit | mark | origin
///          | thread | seat
/// load     = [ "MAX" ] [ "LOAD" ] number ( "kg" | "lb" ) [ "(" number unit ")" ]
/// date     = month "/" year | "W" week "/" year | year "-W" week       the year with four digits
/// approval = [ "E" country ] "124R" [ "-" ] number                     UN R124, from memory
/// permit   = ( "KBA" | "ABE" ) [ "-" ] [ "NR" ] number                                              German type permit, from memory
/// mark     = "JWL" | "JWL-T" | "VIA" | "DOT" | "SAE J2530"
/// origin   = "MADE IN" name of up to 14 letters
/// ```
/// Size, inset, circles and bore are those of a [`Wheel`], which is the canonical beginning, and are read in the
/// words of the trade too: `17" x 8"`, `8J17`, `offset 35`, `zero offset`, `5 on 4 1/2`, `5 lug 112`, `112x5`,
/// `LK 5/112`, `57.1 mm centre bore`. Commas may stand between parts. Of a load in both units the first is kept. Two numbers with `x` between them are a size if the second is a rim
/// diameter of 10 in or more, and a bolt circle otherwise.
///
/// ```
/// use beadseat::{MoldedLoad, wheel::{WheelDate, WheelStamp}};
/// let stamp: WheelStamp =
///     "JWL VIA MAX LOAD 690 KG 5x112 7,5J×17H2 03/2021 ET42 made in Utopia 66.6".parse()?;
/// assert_eq!(
///     stamp.to_string(),
///     "7.5Jx17 H2 ET42 5x112 66.6 690 kg 03/2021 JWL VIA MADE IN UTOPIA",
/// );
/// assert_eq!(stamp.load(), Some(MoldedLoad::Kilograms(690)));
/// assert_eq!(stamp.date(), Some(WheelDate::Month { month: 3, year: 2021 }));
/// assert!("ET45 5x112 57.1".parse::<WheelStamp>().is_err()); // no size
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct WheelStamp {
    wheel: Wheel,
    load: Option<MoldedLoad>,
    date: Option<WheelDate>,
    /// Number in the lower 24 bits, country above.
    approval: Option<NonZeroU32>,
    permit: Option<NonZeroU32>,
    marks: u8,
    /// Upper-case letters and spaces, then zeros.
    origin: [u8; ORIGIN],
    seat: Option<Seat>,
    thread: Option<Thread>,
}

const _: () = assert!(size_of::<WheelStamp>() <= 80);

/// What is read of a wheel, with its size or without.
#[derive(Clone, Copy)]
pub(crate) struct Parts {
    pub(crate) size: Option<WheelSize>,
    /// With some size.
    pub(crate) stamp: WheelStamp,
    /// Whether the bore is a number without its word.
    pub(crate) bare_bore: bool,
    /// Whether the angle of the seat was not told.
    pub(crate) presumed_seat: bool,
}

impl Parts {
    pub(crate) const NONE: Self =
        Self { size: None, stamp: WheelStamp::NONE, bare_bore: false, presumed_seat: false };

    /// Whether any part was read.
    pub(crate) const fn is_anything(&self) -> bool {
        let wheel = self.stamp.wheel;
        self.stamp.is_more_than_a_wheel()
            || wheel.inset().is_some()
            || wheel.backspacing().is_some()
            || wheel.bolt_circle().is_some()
            || wheel.bore().is_some()
    }

    /// All of a text.
    ///
    /// # Errors
    /// Where something stands that is no part.
    pub(crate) const fn parse(text: &str) -> Result<Self, ParseError> {
        let mut scanner = Scanner::new(text);
        tri!(scanner.begin());
        let parts = tri!(Self::scan(&mut scanner));
        tri!(scanner.finish());
        Ok(parts)
    }

    const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let mut parts = Self::NONE;
        loop {
            scanner.skip_space();
            if scanner.at_end() {
                break;
            }
            if parts.size.is_none() {
                if let Some(found) = scan_size(scanner) {
                    parts.size = Some(found);
                    continue;
                }
            }
            if !tri!(parts.scan_part(scanner)) {
                // In a list, commas and the like stand between.
                let mut ahead = *scanner;
                let listed = ahead.at() > start
                    && (ahead.eat(b',')
                        || ahead.eat(b';')
                        || ahead.eat(b'&')
                        || ahead.eat(b'|')
                        || ahead.eat_word("AND"));
                ahead.skip_space();
                if !listed || ahead.at_end() {
                    break;
                }
                *scanner = ahead;
            }
        }
        if let Some(size) = parts.size {
            parts.stamp.wheel = tri!(parts.stamp.wheel.with_size(size).checked(scanner, start));
        }
        Ok(parts)
    }

    #[inline]
    const fn scan_part(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        if scanner.at_digit() { self.scan_number(scanner) } else { self.scan_word(scanner) }
    }

    /// A part that begins with a number.
    const fn scan_number(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        let behind = Behind::number(*scanner);
        if behind.may_be_own_part() {
            if let Some(read) = tri!(self.stamp.scan_own_part(scanner)) {
                return Ok(read);
            }
        }
        if behind.may_be_phrase() && tri!(self.scan_phrase(scanner)) {
            return Ok(true);
        }
        let had_bore = self.stamp.wheel.bore().is_some();
        let read = tri!(self.stamp.wheel.scan_number(scanner, behind.is_count()));
        self.bare_bore |= !had_bore && self.stamp.wheel.bore().is_some();
        if read {
            phrase::eat_circle_word_behind(scanner);
        }
        Ok(read)
    }

    /// A part that begins with its word or sign.
    const fn scan_word(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        if !phrase::is_stamped_inset(*scanner) {
            if let Some(read) = tri!(self.stamp.scan_own_part(scanner)) {
                return Ok(read);
            }
            if tri!(self.scan_phrase(scanner)) {
                return Ok(true);
            }
        }
        let read = tri!(self.stamp.wheel.scan_word(scanner));
        if read {
            phrase::eat_circle_word_behind(scanner);
        }
        Ok(read)
    }

    /// A part as people write it, where it is not as it is stamped; false where there is none.
    #[inline(never)]
    const fn scan_phrase(&mut self, scanner: &mut Scanner<'_>) -> Result<bool, ParseError> {
        if self.stamp.seat.is_none() {
            if let Some(phrase) = phrase::scan_seat(scanner) {
                self.stamp.seat = Some(phrase.seat);
                self.presumed_seat = phrase.presumed;
                return Ok(true);
            }
        }
        if self.stamp.thread.is_none() {
            if let Some(thread) = phrase::scan_thread(scanner) {
                self.stamp.thread = Some(thread);
                return Ok(true);
            }
        }
        let (mut ahead, mut wheel) = (*scanner, self.stamp.wheel);
        match wheel.scan_phrase(&mut ahead) {
            Ok(true) => {
                *scanner = ahead;
                self.stamp.wheel = wheel;
                Ok(true)
            }
            Err(error) if !scanner.at_digit() => Err(error),
            _ => Ok(false),
        }
    }
}

impl WheelStamp {
    const NONE: Self = Self {
        wheel: Wheel::of_size(WheelSize::ANY),
        load: None,
        date: None,
        approval: None,
        permit: None,
        marks: 0,
        origin: [0; ORIGIN],
        seat: None,
        thread: None,
    };

    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let parts = tri!(Parts::scan(scanner));
        match parts.size {
            Some(_) => Ok(parts.stamp),
            None => Err(scanner.missing(Field::RimWidth)),
        }
    }

    /// A part that a [`Wheel`] has not; false where one of its kind has been, and none where there is none.
    const fn scan_own_part(&mut self, scanner: &mut Scanner<'_>) -> Result<Option<bool>, ParseError> {
        let start = scanner.at();
        let repeated = match scanner.peek(0) {
            b'0'..=b'9' | b'W' if WheelDate::is_next(scanner) => {
                replace(&mut self.date, tri!(WheelDate::scan(scanner)))
            }
            b'0'..=b'9' | b'L' | b'M' if eat_before_load(scanner) => {
                replace(&mut self.load, tri!(MoldedLoad::scan(scanner)))
            }
            b'1' | b'E' => match tri!(scan_approval(scanner)) {
                Some(number) => replace(&mut self.approval, number),
                None => return Ok(None),
            },
            b'K' | b'A' if eat_permit(scanner) => {
                replace(&mut self.permit, tri!(scanner.number(Field::ApprovalMark, 6)))
            }
            b'M' if scanner.eat_word("MADE") => {
                scanner.skip_space();
                if !scanner.eat_word("IN") {
                    return Err(scanner.missing(Field::Origin));
                }
                scanner.skip_space();
                let repeated = self.origin[0] != 0;
                self.origin = tri!(scan_origin(scanner));
                repeated
            }
            _ => match WheelMark::scan(scanner) {
                Some(mark) => {
                    let repeated = self.has(mark);
                    self.marks |= mark.bit();
                    repeated
                }
                None => return Ok(None),
            },
        };
        if repeated {
            scanner.back_to(start);
        }
        Ok(Some(!repeated))
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.wheel.write(text);
        if let Some(load) = self.load {
            text.byte(b' ');
            load.write(text);
        }
        if let Some(date) = self.date {
            text.byte(b' ');
            date.write(text);
        }
        if let Some((country, number)) = self.approval() {
            text.byte(b' ');
            if let Some(country) = country {
                text.byte(b'E').whole(u32::from(country)).byte(b' ');
            }
            text.str("124R-").whole(number);
        }
        if let Some(permit) = self.permit {
            text.str(" KBA ").whole(permit.get());
        }
        for mark in WheelMark::ALL.iter().filter(|mark| self.has(**mark)) {
            text.byte(b' ').str(mark.mark());
        }
        if let Some(origin) = self.origin() {
            text.str(" MADE IN ").str(origin);
        }
        if let Some(thread) = self.thread {
            thread.write(text.byte(b' '));
        }
        if let Some(seat) = self.seat {
            seat.write(text.byte(b' '));
        }
    }

    /// The thread of its fasteners, if it is told.
    pub const fn thread(&self) -> Option<Thread> {
        self.thread
    }

    /// The seat of its fasteners, if it is told. A cone whose angle is not told is one of 60°: common practice, no
    /// source.
    ///
    /// ```
    /// use beadseat::wheel::{Seat, WheelStamp};
    /// let stamp = WheelStamp::parse("17x8 offset 35 5 on 4 1/2 CB 72.6 M12x1.5 acorn")?;
    /// assert_eq!(stamp.to_string(), "8x17 ET35 5x114.3 72.6 M12x1.5 cone 60");
    /// assert_eq!(stamp.seat(), Some(Seat::Cone60));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn seat(&self) -> Option<Seat> {
        self.seat
    }

    /// Size, inset, bolt circles and bore.
    pub const fn wheel(&self) -> Wheel {
        self.wheel
    }

    /// The load it is rated for.
    pub const fn load(&self) -> Option<MoldedLoad> {
        self.load
    }

    /// When it was made.
    pub const fn date(&self) -> Option<WheelDate> {
        self.date
    }

    /// The country, if it stands there, and the number of its approval under UN R124.
    ///
    /// ```
    /// use beadseat::wheel::WheelStamp;
    /// let stamp = WheelStamp::parse("7Jx16 E13 124R-000123 KBA 45678")?;
    /// assert_eq!(stamp.approval(), Some((Some(13), 123)));
    /// assert_eq!(stamp.permit(), Some(45678));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn approval(&self) -> Option<(Option<u8>, u32)> {
        match self.approval {
            Some(bits) => {
                let country = (bits.get() >> 24) as u8;
                Some((if country == 0 { None } else { Some(country) }, bits.get() & 0x00FF_FFFF))
            }
            None => None,
        }
    }

    /// The number of its German type permit.
    pub const fn permit(&self) -> Option<u32> {
        match self.permit {
            Some(number) => Some(number.get()),
            None => None,
        }
    }

    /// Whether it bears a mark.
    pub const fn has(&self, mark: WheelMark) -> bool {
        self.marks & mark.bit() != 0
    }

    /// The country it was made in, in capitals.
    ///
    /// ```
    /// use beadseat::wheel::WheelStamp;
    /// assert_eq!(WheelStamp::parse("Made in Utopia 7Jx16")?.origin(), Some("UTOPIA"));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn origin(&self) -> Option<&str> {
        let len = self.origin.iter().position(|&byte| byte == 0).unwrap_or(ORIGIN);
        let letters = self.origin.get(..len).filter(|letters| !letters.is_empty())?;
        core::str::from_utf8(letters).ok()
    }

    /// Whether there is a part that a [`Wheel`] has not, but for seat and thread.
    pub(crate) const fn has_own_part(&self) -> bool {
        self.load.is_some()
            || self.date.is_some()
            || self.approval.is_some()
            || self.permit.is_some()
            || self.marks != 0
            || self.origin[0] != 0
    }

    /// Whether there is more than a [`Wheel`].
    pub(crate) const fn is_more_than_a_wheel(&self) -> bool {
        self.has_own_part() || self.seat.is_some() || self.thread.is_some()
    }
}

/// A size, if one stands here rather than a bolt circle.
const fn scan_size(scanner: &mut Scanner<'_>) -> Option<WheelSize> {
    const SURELY_A_RIM: u16 = 100;
    let mut ahead = *scanner;
    match WheelSize::scan(&mut ahead) {
        // What a unit stands behind is not all of a size.
        Ok(size) if !phrase::is_at_inches(&ahead) => {
            // `8x6.5` is a bolt circle in inches.
            let small = size.diameter().tenths() < SURELY_A_RIM;
            if small && size.contour().is_none() && bolt_circle::is_next(scanner) {
                return None;
            }
            *scanner = ahead;
            Some(size)
        }
        _ => size_phrase::scan(scanner),
    }
}

/// Steps over the word of a German type permit.
const fn eat_permit(scanner: &mut Scanner<'_>) -> bool {
    let here = scanner.eat_word("KBA") || scanner.eat_word("ABE");
    if here {
        scanner.skip_space();
        let mut ahead = *scanner;
        ahead.eat(b'-');
        if ahead.eat_word("NR") || ahead.eat_word("NO") {
            *scanner = ahead;
        }
        scanner.skip_colon();
    }
    here
}

/// Puts a value in the place of another; whether there was one.
const fn replace<T: Copy>(place: &mut Option<T>, value: T) -> bool {
    place.replace(value).is_some()
}

/// Steps over the words of a load to its number; false where neither they nor a number with its unit stand.
const fn eat_before_load(scanner: &mut Scanner<'_>) -> bool {
    let mut ahead = *scanner;
    if ahead.at_digit() {
        ahead.skip_digits();
        ahead.skip_space();
        return ahead.eat_word("KG") || ahead.eat_word("LB") || ahead.eat_word("LBS");
    }
    let mut named = ahead.eat_word("MAX");
    if named {
        ahead.eat(b'.');
        ahead.skip_space();
    }
    if ahead.eat_word("LOAD") {
        named = true;
        ahead.eat(b':');
        ahead.skip_space();
    }
    if named {
        *scanner = ahead;
    }
    named
}

/// `E13 124R-001234`, or without the country.
const fn scan_approval(scanner: &mut Scanner<'_>) -> Result<Option<NonZeroU32>, ParseError> {
    let mut ahead = *scanner;
    let mut country = 0;
    if ahead.eat(b'E') && ahead.at_digit() {
        let at = ahead.at();
        country = match ahead.whole(Field::ApprovalMark) {
            Ok(country) if country >= 1 && country <= 99 => country,
            _ => return Err(ahead.range(Field::ApprovalMark, at)),
        };
        ahead.skip_space();
    } else {
        ahead = *scanner;
    }
    if !ahead.eat_str("124R") {
        return Ok(None);
    }
    *scanner = ahead;
    scanner.skip_space();
    scanner.eat(b'-');
    scanner.skip_space();
    let number = tri!(scanner.number(Field::ApprovalMark, 7));
    Ok(NonZeroU32::new((country as u32) << 24 | number.get()))
}

/// Letters, and single spaces between words of which none begins another part.
const fn scan_origin(scanner: &mut Scanner<'_>) -> Result<[u8; ORIGIN], ParseError> {
    let start = scanner.at();
    let mut origin = [0; ORIGIN];
    let mut len = 0;
    // A word belongs to the name unless it is a part of its own.
    let mut ahead = *scanner;
    while len + 1 < ORIGIN && (is_word_of_a_name(&ahead) || len == 0 && is_initial_of_a_name(&ahead)) {
        *scanner = ahead;
        if len > 0 {
            origin[len] = b' ';
            len += 1;
        }
        while scanner.byte().is_ascii_alphabetic() {
            if len == ORIGIN {
                return Err(scanner.range(Field::Origin, start));
            }
            origin[len] = scanner.byte().to_ascii_uppercase();
            len += 1;
            scanner.step(1);
        }
        ahead = *scanner;
        if !ahead.skip_space() {
            break;
        }
    }
    if len == 0 { Err(scanner.missing(Field::Origin)) } else { Ok(origin) }
}

/// One letter before a word of a name, as in `W GERMANY`.
const fn is_initial_of_a_name(scanner: &Scanner<'_>) -> bool {
    let mut ahead = *scanner;
    let is_letter = ahead.byte().is_ascii_alphabetic();
    ahead.step(1);
    is_letter && ahead.skip_space() && is_word_of_a_name(&ahead)
}

/// Two letters or more, and no word that another part begins with.
const fn is_word_of_a_name(scanner: &Scanner<'_>) -> bool {
    let mut ahead = *scanner;
    if !scanner.peek(0).is_ascii_alphabetic() || !scanner.peek(1).is_ascii_alphabetic() {
        return false;
    }
    let mut letters = 0;
    while scanner.peek(letters).is_ascii_alphabetic() {
        letters += 1;
    }
    // A letter and then a digit, as in `ET45`.
    if scanner.peek(letters).is_ascii_digit() {
        return false;
    }
    !(crate::wheel::Inset::is_next(scanner) && letters == 2
        || WheelMark::scan(&mut ahead).is_some()
        || ahead.eat_word("SAE")
        || ahead.eat_word("MAX")
        || ahead.eat_word("LOAD")
        || eat_permit(&mut ahead)
        || ahead.eat_word("MADE")
        || ahead.eat_word("CB"))
}

designation!(WheelStamp in "beadseat::wheel", "5x112 690 kg 7jx16 w23/2021" => "7Jx16 5x112 690 kg W23/2021", wrong "5x112 690 kg");
