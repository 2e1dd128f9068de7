//! How people write the parts of a wheel, where they do not write as it is stamped.

use crate::exact::Exact;
use crate::text::{Field, ParseError, Scanner, tri};
use crate::wheel::{BoltCircle, Seat, Thread};

/// `ET45` is as it is stamped.
#[inline]
pub(super) const fn is_stamped_inset(mut scanner: Scanner<'_>) -> bool {
    scanner.eat_str("ET") && scanner.at_digit()
}

/// What stands behind a number. It tells what the number is of, so that the number is not read to learn that.
#[derive(Clone, Copy)]
pub(super) struct Behind<'a> {
    /// Whether the number has more than one digit, or a point.
    is_long: bool,
    has_point: bool,
    /// What touches it, in upper case.
    touching: u8,
    /// What stands behind it and white space.
    next: Scanner<'a>,
}

impl<'a> Behind<'a> {
    /// What stands behind the number here.
    #[inline]
    pub(super) const fn number(mut scanner: Scanner<'a>) -> Self {
        let at = scanner.at();
        scanner.skip_digits();
        let has_point = scanner.is_at(b'.') || scanner.is_at(b',');
        if has_point {
            scanner.step(1);
            scanner.skip_digits();
        }
        let is_long = scanner.at() - at > 1;
        let touching = scanner.peek(0);
        scanner.skip_space();
        Self { is_long, has_point, touching, next: scanner }
    }

    /// Whether it may be of a part that a [`Wheel`](crate::wheel::Wheel) has not: a date, a load, an approval.
    #[inline]
    pub(super) const fn may_be_own_part(&self) -> bool {
        !self.has_point
            && (matches!(self.touching, b'/' | b'-' | b'R') || matches!(self.next.peek(0), b'K' | b'L'))
    }

    /// Whether it may be of a phrase, rather than stamped as it stands.
    #[inline]
    pub(super) const fn may_be_phrase(&self) -> bool {
        match self.next.peek(0) {
            // Of a fraction behind the diameter, or a diameter that comes first.
            b'/' | b'-' => true,
            b'X' | b'*' | 0xC3 => self.is_long || has_fraction(self.next),
            b'0'..=b'9' => {
                let mut ahead = self.next;
                ahead.skip_digits();
                ahead.is_at(b'/')
            }
            b'+' | 0 => false,
            // Millimetres, rather than a maximum.
            b'M' => self.next.peek(1) == b'M',
            _ => true,
        }
    }

    /// Whether it is a number of holes, with a multiplication sign or the like.
    #[inline]
    pub(super) const fn is_count(&self) -> bool {
        let mut next = self.next;
        !self.has_point && (matches!(self.touching, b'-' | b'/') || next.eat_times())
    }
}

/// Whether a fraction or its unit stands behind the sign and number here.
const fn has_fraction(mut ahead: Scanner<'_>) -> bool {
    if !ahead.eat_times() {
        ahead.step(1);
    }
    ahead.skip_space();
    if ahead.at_digit() {
        ahead.skip_digits();
        if ahead.is_point(ahead.at()) {
            ahead.step(1);
            ahead.skip_digits();
        }
        if !ahead.eat(b'-') {
            ahead.skip_space();
        }
        if ahead.peek(0) == b'I' {
            return ahead.eat_word("INCH") || ahead.eat_word("INCHES");
        }
        // The first byte of `½`.
        if ahead.byte() == 0xC2 {
            return true;
        }
        let at = ahead.at();
        ahead.skip_digits();
        return ahead.at() > at && ahead.is_at(b'/');
    }
    // `5-on-4.5`.
    ahead.peek(0).is_ascii_alphabetic()
}

/// Below so many, a number without a unit is inches.
const INCHES_BELOW: i64 = 20_000_000;

/// Steps over a word with its colon, if it is one of some and a number stands behind it; digits may touch the word.
pub(super) const fn eat_word_before_number(scanner: &mut Scanner<'_>, words: &[&str]) -> bool {
    let mut i = 0;
    while i < words.len() {
        let mut ahead = *scanner;
        if ahead.begins(words[i]) && (ahead.eat_spelled(words[i]) || ahead.eat_str(words[i])) {
            ahead.skip_colon();
            if ahead.at_digit() || matches!(ahead.byte(), b'+' | b'-') || ahead.eat_str("\u{2212}") {
                ahead = *scanner;
                let _ = ahead.eat_spelled(words[i]) || ahead.eat_str(words[i]);
                ahead.skip_colon();
                *scanner = ahead;
                return true;
            }
        }
        i += 1;
    }
    false
}

/// Whether a unit of inches stands here, behind white space or not.
pub(super) const fn is_at_inches(scanner: &Scanner<'_>) -> bool {
    let mut ahead = *scanner;
    ahead.skip_space();
    eat_inches(&mut ahead)
}

/// Steps over a unit of inches.
pub(crate) const fn eat_inches(scanner: &mut Scanner<'_>) -> bool {
    scanner.eat_word("INCHES")
        || scanner.eat_word("INCH")
        || scanner.eat_word("IN")
        || scanner.eat(b'"')
        || scanner.eat_str("\u{2033}")
        || scanner.eat_str("\u{201d}")
        || scanner.eat_str("''")
}

/// A fraction behind whole inches, in millionths: `1/2`, `-1/2`, `½`.
pub(crate) const fn scan_fraction(scanner: &mut Scanner<'_>) -> Option<i64> {
    let mut ahead = *scanner;
    if !ahead.eat(b'-') {
        ahead.skip_space();
    }
    let millionths = if ahead.eat_str("\u{bd}") {
        500_000
    } else if ahead.eat_str("\u{bc}") {
        250_000
    } else if ahead.eat_str("\u{be}") {
        750_000
    } else {
        let (Ok(numerator), true) = (ahead.whole(Field::Text), ahead.eat(b'/')) else { return None };
        let Ok(denominator @ (2 | 4 | 8 | 16 | 32)) = ahead.whole(Field::Text) else { return None };
        // What goes on with threads to the inch is a thread.
        if numerator == 0 || numerator >= denominator || ahead.is_at(b'-') {
            return None;
        }
        1_000_000 / denominator as i64 * numerator as i64
    };
    *scanner = ahead;
    Some(millionths)
}

/// A length in inches, whole or with a fraction, or in millimetres: by its unit, or else by its size.
pub(super) const fn scan_length(
    scanner: &mut Scanner<'_>,
    field: Field,
    least_mm: i64,
    most_mm: i64,
) -> Result<Exact, ParseError> {
    let at = scanner.at();
    let mut number = tri!(scanner.decimal(field, 6));
    let mut fraction = false;
    if number % 1_000_000 == 0 && number < INCHES_BELOW {
        if let Some(millionths) = scan_fraction(scanner) {
            number += millionths;
            fraction = true;
        }
    }
    let mut ahead = *scanner;
    ahead.skip_space();
    let length = if eat_inches(&mut ahead) {
        Exact::from_inch_millionths(number)
    } else if ahead.eat_word("MM") && !fraction {
        Some(Exact::from_nm(if number < 2_000_000_000 { number as i32 } else { 0 }))
    } else if ahead.eat_word("CM") && !fraction {
        Some(Exact::from_nm(if number < 200_000_000 { number as i32 * 10 } else { 0 }))
    } else {
        ahead = *scanner;
        if number < INCHES_BELOW {
            Exact::from_inch_millionths(number)
        } else {
            Some(Exact::from_nm(if number < 2_000_000_000 { number as i32 } else { 0 }))
        }
    };
    *scanner = ahead;
    match length {
        Some(length)
            if length.nm() as i64 >= least_mm * 1_000_000 && length.nm() as i64 <= most_mm * 1_000_000 =>
        {
            Ok(length)
        }
        _ => Err(scanner.range(field, at)),
    }
}

/// The least diameter of the rims of road vehicles: 10 in.
const LEAST_RIM: i32 = 254_000_000;

/// Whether a text counts holes, and does not say on what diameter: `5 lug`, `6 holes`.
pub(crate) fn counts_holes(text: &str) -> bool {
    let mut scanner = Scanner::new(text);
    if scanner.begin().is_err() || !scanner.at_digit() {
        return false;
    }
    let count = scanner.whole(Field::HoleCount);
    scanner.skip_space();
    let wordy = scanner.peek(1).is_ascii_alphabetic() || scanner.is_at(b'-');
    matches!(count, Ok(3..=12)) && wordy && eat_holes(&mut scanner) && scanner.finish().is_ok()
}

/// What a bolt circle is called.
const CIRCLES: &[&str] = &["BOLT CIRCLE", "BOLT PATTERN", "LUG PATTERN", "LOCHKREIS", "PCD", "LK", "BC"];

/// Steps over the word of a bolt circle, if a number stands behind it.
pub(super) const fn eat_circle_word(scanner: &mut Scanner<'_>) -> bool {
    matches!(scanner.peek(0), b'B' | b'L' | b'P') && eat_word_before_number(scanner, CIRCLES)
}

/// The same behind the numbers.
#[inline]
pub(super) const fn eat_circle_word_behind(scanner: &mut Scanner<'_>) {
    let mut ahead = *scanner;
    ahead.skip_space();
    if matches!(ahead.peek(0), b'B' | b'L' | b'P') && eat_word_behind(&mut ahead) {
        *scanner = ahead;
    }
}

#[inline(never)]
const fn eat_word_behind(scanner: &mut Scanner<'_>) -> bool {
    // Before a number it is the next one's.
    let mut next = *scanner;
    !eat_word_before_number(&mut next, CIRCLES) && scanner.eat_any(CIRCLES)
}

/// `holes`, `lug` and the like behind their number.
const fn eat_holes(scanner: &mut Scanner<'_>) -> bool {
    let mut ahead = *scanner;
    let dash = ahead.eat(b'-');
    if !dash {
        ahead.skip_space();
    }
    let here = ahead
        .eat_any(&["HOLES", "HOLE", "LUGS", "LUG", "BOLTS", "BOLT", "STUDS", "STUD", "H", "LOCH"])
        || ahead.eat_mark("H");
    if here {
        *scanner = ahead;
    }
    here
}

/// A bolt circle as people say it: `5 on 4 1/2`, `5 lug 112`, `5x4 1/2"`, `112x5`, `114.3 mm 5 holes`. None where the
/// strict form or nothing stands.
pub(super) const fn scan_circle(scanner: &mut Scanner<'_>, named: bool) -> Option<BoltCircle> {
    let mut ahead = *scanner;
    if !ahead.at_digit() {
        return None;
    }
    if let Some(circle) = scan_diameter_first(*scanner, named) {
        *scanner = circle.1;
        return Some(circle.0);
    }
    let Ok(count @ 3..=12) = ahead.whole(Field::HoleCount) else { return None };
    let holes = eat_holes(&mut ahead);
    ahead.skip_space();
    let by = ahead.eat_word("BY");
    let on = if by || ahead.eat_word("ON") {
        ahead.skip_space();
        true
    } else if ahead.eat_str("-ON-") {
        true
    } else {
        let strict = ahead.eat_times() || ahead.eat(b'-');
        ahead.skip_space();
        strict || holes
    };
    if !on || !ahead.at_digit() {
        return None;
    }
    let at = ahead.at();
    let Ok(diameter) = scan_length(&mut ahead, Field::BoltCircle, 60, 600) else { return None };
    // `8 by 17` is a wheel: whole inches from ten on, of which no unit is told.
    let digits = ahead.at() - at == 2;
    if by && !named && !holes && digits && diameter.nm() >= LEAST_RIM {
        return None;
    }
    *scanner = ahead;
    BoltCircle::of(count as u8, diameter)
}

/// `112x5`, `114.3 / 5`, `112 mm 5 holes`: what no rim is, since none is so narrow and so large.
const fn scan_diameter_first<'a>(mut ahead: Scanner<'a>, named: bool) -> Option<(BoltCircle, Scanner<'a>)> {
    let Ok(number @ 60_000_000..) = ahead.decimal(Field::BoltCircle, 6) else { return None };
    if number > 600_000_000 {
        return None;
    }
    let diameter = Exact::from_nm(number as i32);
    ahead.skip_space();
    if ahead.eat_word("MM") {
        ahead.skip_space();
    }
    let times = ahead.eat_times() || ahead.eat(b'/');
    ahead.skip_space();
    let Ok(count @ 3..=12) = ahead.whole(Field::HoleCount) else { return None };
    let decimal = ahead.is_point(ahead.at()) && ahead.peek(1).is_ascii_digit();
    let holes = eat_holes(&mut ahead);
    if decimal || ahead.peek(0).is_ascii_alphanumeric() || !(holes || times) {
        return None;
    }
    match BoltCircle::of(count as u8, diameter) {
        // `145x10` is no wheel of ten holes, but an old tire.
        Some(circle) if holes || named || count <= 6 || is_made(circle) => Some((circle, ahead)),
        _ => None,
    }
}

const fn is_made(circle: BoltCircle) -> bool {
    let mut i = 0;
    while i < BoltCircle::STANDARD.len() {
        let made = BoltCircle::STANDARD[i];
        if made.count() == circle.count() && made.nanometres() == circle.nanometres() {
            return true;
        }
        i += 1;
    }
    false
}

/// What an inset is called, and an outset.
const INSETS: &[&str] = &["OFFSET", "INSET", "EINPRESSTIEFE", "ET", "IS"];
const OUTSETS: &[&str] = &["OUTSET", "OS"];

/// Steps over a word of an inset with its number behind; whether it is of an outset. None where there is none, or where
/// the strict form stands.
pub(super) const fn eat_inset_word(scanner: &mut Scanner<'_>) -> Option<bool> {
    if !matches!(scanner.peek(0), b'O' | b'I' | b'E') {
        return None;
    }
    if eat_word_before_number(scanner, INSETS) {
        Some(false)
    } else if eat_word_before_number(scanner, OUTSETS) {
        Some(true)
    } else {
        None
    }
}

/// The same behind the number.
pub(super) const fn eat_inset_word_behind(scanner: &mut Scanner<'_>) -> Option<bool> {
    scanner.skip_space();
    if scanner.eat_any(INSETS) {
        Some(false)
    } else if scanner.eat_any(OUTSETS) {
        Some(true)
    } else {
        None
    }
}

/// `zero offset`.
pub(super) const fn eat_zero_offset(scanner: &mut Scanner<'_>) -> bool {
    scanner.peek(0) == b'Z' && (scanner.eat_spelled("ZERO OFFSET") || scanner.eat_spelled("ZERO INSET"))
}

/// What a centre bore is called.
const BORES: &[&str] = &[
    "CENTRE BORE",
    "CENTER BORE",
    "HUB BORE",
    "BORE",
    "NABENBOHRUNG",
    "MITTENLOCH",
    "MLB",
    "NB",
    "ML",
    "CB",
    "HB",
    "\u{d8}",
    "\u{f8}",
    "\u{2300}",
];

/// Steps over the word of a bore with its number behind.
pub(super) const fn eat_bore_word(scanner: &mut Scanner<'_>) -> bool {
    matches!(scanner.peek(0), b'B' | b'C' | b'H' | b'M' | b'N' | 0xC3 | 0xE2)
        && eat_word_before_number(scanner, BORES)
}

/// The same behind the number.
pub(super) const fn eat_bore_word_behind(scanner: &mut Scanner<'_>) -> bool {
    scanner.skip_space();
    scanner.eat_any(BORES)
}

/// A seat in the trade's words, where the strict form does not stand: the angle of a cone that is not told is 60°.
/// Common practice, no source; the reader must say that it is presumed.
pub(super) const fn scan_seat(scanner: &mut Scanner<'_>) -> Option<SeatPhrase> {
    let mut ahead = *scanner;
    ahead.eat(b'R');
    let before = if ahead.at_digit() {
        let Ok(number) = ahead.whole(Field::Seat) else { return None };
        let _ = ahead.eat_str("°") || ahead.eat_word("MM");
        ahead.skip_space();
        let _ = ahead.eat_any(&["DEGREES", "DEGREE", "DEG"]);
        ahead.skip_space();
        Some(number)
    } else {
        ahead = *scanner;
        None
    };
    let shape = if ahead.eat_any(&["ACORN", "CONICAL", "CONE", "TAPERED", "TAPER"]) {
        b'C'
    } else if ahead.eat_any(&["SPHERICAL", "BALL", "RADIUS"]) {
        b'B'
    } else if before.is_none() && ahead.eat_any(&["FLAT"]) {
        b'F'
    } else if before.is_none() && ahead.eat_any(&["MAG", "SHANK"]) {
        b'S'
    } else {
        return None;
    };
    let mut behind = ahead;
    behind.skip_space();
    if behind.eat_any(&["LUG NUTS", "LUG NUT", "LUG", "NUTS", "NUT", "BOLTS", "BOLT", "SEAT"]) {
        ahead = behind;
        behind.skip_space();
        if behind.eat_any(&["SEAT"]) {
            ahead = behind;
        }
    }
    // Strict from here on: a number behind the shape.
    let mut number = before;
    if number.is_none() && matches!(shape, b'C' | b'B') {
        let mut behind = ahead;
        behind.skip_space();
        behind.eat(b'R');
        if behind.at_digit() {
            let at = behind.at();
            if let Ok(value) = behind.whole(Field::Seat) {
                let _ = behind.eat_str("°") || behind.eat_word("MM");
                let told = behind.at() > at && !behind.peek(0).is_ascii_alphanumeric();
                behind.skip_space();
                let _ = behind.eat_any(&["DEGREES", "DEGREE", "DEG"]);
                behind.skip_space();
                let _ = behind.eat_any(&["SEAT"]);
                if told && (Seat::of_cone(value).is_some() || Seat::of_ball(value).is_some()) {
                    number = Some(value);
                    ahead = behind;
                }
            }
        }
    }
    let (seat, presumed) = match (shape, number) {
        (b'C', Some(angle)) => (Seat::of_cone(angle), false),
        (b'C', None) => (Some(Seat::Cone60), true),
        (b'B', Some(radius)) => (Seat::of_ball(radius), false),
        (b'B', None) => (None, false),
        (b'F', _) => (Some(Seat::Flat), false),
        _ => (Some(Seat::Shank), false),
    };
    match seat {
        Some(seat) => {
            *scanner = ahead;
            Some(SeatPhrase { seat, presumed })
        }
        None => None,
    }
}

/// A seat, and whether its angle was presumed.
#[derive(Clone, Copy)]
pub(super) struct SeatPhrase {
    pub(super) seat: Seat,
    pub(super) presumed: bool,
}

/// A thread: strict, or in the trade's words.
pub(super) const fn scan_thread(scanner: &mut Scanner<'_>) -> Option<Thread> {
    let mut ahead = *scanner;
    if let Ok(thread) = Thread::scan(&mut ahead) {
        if !ahead.peek(0).is_ascii_alphanumeric() {
            *scanner = ahead;
            ahead.skip_space();
            if ahead.eat_word("TPI") {
                *scanner = ahead;
            }
            return Some(thread);
        }
    }
    Thread::scan_phrase(scanner)
}
