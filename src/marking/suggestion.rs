//! The nearest texts that can be read, where one cannot.

use core::fmt;

use super::door::readings;
use super::kind::Marking;
use crate::text::Text;
use crate::wheel::BoltCircle;

/// A text that can be read, near one that cannot.
///
/// ```
/// let near: Vec<_> = beadseat::marking::suggestions("205 55 16").collect();
/// assert_eq!(near[0].as_str(), "205/55R16");
/// assert_eq!(near[0].presumes(), Some("a radial tire"));
/// ```
#[derive(Clone, Copy)]
pub struct Suggestion {
    text: Text,
    presumes: Option<&'static str>,
}

impl Suggestion {
    /// The text that is suggested.
    pub fn as_str(&self) -> &str {
        self.text.as_str()
    }

    /// What it takes for granted, if anything.
    pub const fn presumes(&self) -> Option<&'static str> {
        self.presumes
    }
}

impl fmt::Display for Suggestion {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

impl fmt::Debug for Suggestion {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Suggestion({self})")
    }
}

/// The most that are answered.
const MOST: usize = 3;
/// Longer texts are not near anything that could be told.
const LONGEST: usize = 64;

/// The nearest texts that can be read, best first: at most three, each of which reads.
///
/// Nothing is suggested for a text that can be read, or is longer than 64 bytes. What is tried is bounded: separators,
/// look-alikes of letters and digits, lost points, `M/C`, a word that is missing in front or too much at either end.
///
/// ```
/// use beadseat::marking::suggestions;
/// let first = |text| suggestions(text).next().map(|near| near.to_string());
/// assert_eq!(first("2O5/SSR16 91V").as_deref(), Some("205/55R16 91V"));
/// assert_eq!(first("560-15").as_deref(), Some("5.60-15"));
/// assert_eq!(first("120/70ZR17 58W").as_deref(), Some("120/70ZR17 M/C 58W"));
/// assert_eq!(first("205/55R16"), None);
/// ```
pub fn suggestions(text: &str) -> impl Iterator<Item = Suggestion> + use<> {
    let mut found = Found([None; MOST]);
    if text.len() <= LONGEST && readings(text).is_err() {
        let inner = text.trim().trim_end_matches(['.', ',', ';', ':', '!', '?']);
        found.search(inner.trim_matches(['"', '\'']));
    }
    found.0.into_iter().flatten()
}

/// What a suggestion takes for granted.
const RADIAL: &str = "a radial tire";
const DIAGONAL: &str = "a cross-ply tire";
const MOTORCYCLE: &str = "a motorcycle tire";
const LOOKALIKES: &str = "that letters and digits which look alike were taken for each other";
const POINT: &str = "that a decimal point was lost";
const LESS: &str = "that the other words do not belong to it";
const WORD: &str = "that its word was left away";

struct Found([Option<Suggestion>; MOST]);

impl Found {
    fn is_empty(&self) -> bool {
        self.0[0].is_none()
    }

    fn is_full(&self) -> bool {
        self.0[MOST - 1].is_some()
    }

    fn search(&mut self, text: &str) {
        let plain = with_plain_signs(text);
        if plain.as_str() != text {
            self.offer(&plain, None);
        }
        let text = plain.as_str();
        self.separate(text);
        self.mark_motorcycle(text);
        for letters in
            [&["Oo0", "Il1"][..], &["Oo0", "Il1", "S5"], &["Oo0Qq0", "Il1", "Ss5", "Bb8", "Gg6", "Zz2"]]
        {
            let digits = with_digits(text, letters);
            if self.is_empty() && digits.as_str() != text {
                self.offer_sized(&digits, Some(LOOKALIKES));
                self.separate(digits.as_str());
            }
        }
        let letters = with_letters(text);
        if self.is_empty() && letters.as_str() != text {
            self.offer(&letters, Some(LOOKALIKES));
        }
        // The further ones only where none is nearer.
        for further in [Self::insert_points, Self::add_words, Self::leave_words_out] {
            if self.is_empty() {
                further(self, text);
            }
        }
    }

    /// Three numbers with anything between them, or seven digits, as a metric size.
    fn separate(&mut self, text: &str) {
        let Some(numbers) = Numbers::of(text) else { return self.separate_two(text) };
        let Numbers { prefix, width, aspect, structure, rim, rest } = numbers;
        let mut offer = |structure: &str, suffix: &str, presumes| {
            let mut size = Text::new();
            size.str(prefix).str(width).byte(b'/').str(aspect).str(structure);
            // The point of a half-inch code may be lost.
            match rim.as_bytes() {
                [tens @ b'1' | tens @ b'2', ones, b'5'] => size.byte(*tens).byte(*ones).str(".5"),
                _ => size.str(rim),
            };
            size.str(suffix).str(rest);
            self.offer(&size, presumes)
        };
        if !structure.is_empty() {
            let _ = offer(structure, "", None) || offer(structure, " M/C", Some(MOTORCYCLE));
            return;
        }
        let _ = offer("R", "", Some(RADIAL))
            || offer("-", "", Some(DIAGONAL)) | offer("R", " M/C", Some(MOTORCYCLE));
    }

    /// `155x13`, `165 13`: a metric size without an aspect ratio.
    fn separate_two(&mut self, text: &str) {
        let is_digit = |c: char| c.is_ascii_digit();
        let Some((width, behind)) = text.split_at_checked(3) else { return };
        let behind = behind.trim_start_matches([' ', 'x', 'X', '-']);
        let (Some(rim), Some(rest)) = (behind.get(..2), behind.get(2..)) else { return };
        if width.chars().all(is_digit)
            && rim.chars().all(is_digit)
            && !rest.starts_with(|c| is_digit(c) || c == '.')
        {
            let mut size = Text::new();
            size.str(width).byte(b'R').str(rim).str(rest);
            self.offer_sized(&size, Some(RADIAL));
        }
    }

    /// `M/C` behind the rim code of a metric size.
    fn mark_motorcycle(&mut self, text: &str) {
        let bytes = text.as_bytes();
        let Some(stroke) = text.find('/') else { return };
        // Widths of cars end in 5.
        if stroke == 0 || bytes.get(stroke - 1) != Some(&b'0') {
            return;
        }
        let is_letter = |at: usize| {
            bytes.get(at).is_some_and(|byte| byte.is_ascii_alphabetic() || matches!(byte, b'-' | b' '))
        };
        let is_digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
        let mut at = stroke + 1;
        for class in [&is_digit as &dyn Fn(usize) -> bool, &is_letter, &is_digit] {
            let start = at;
            while class(at) && at - start < 4 {
                at += 1;
            }
            if at == start {
                return;
            }
        }
        let (Some(size), Some(rest)) = (text.get(..at), text.get(at..)) else { return };
        let mut marked = Text::new();
        marked.str(size).str(" M/C").str(rest);
        self.offer(&marked, Some(MOTORCYCLE));
    }

    /// A point in each of the numbers in turn.
    fn insert_points(&mut self, text: &str) {
        const MOST_NUMBERS: usize = 6;
        // `560-15`, `700x16`: width in hundredths of an inch.
        if let (Some((width, rim)), true) =
            (text.split_once(['-', 'x', 'X']), text.bytes().next().is_some_and(|byte| byte.is_ascii_digit()))
        {
            if let (Some(inches), Some(hundredths)) =
                (width.get(..width.len().saturating_sub(2)), width.get(width.len().saturating_sub(2)..))
            {
                if matches!(width.len(), 3 | 4) && width.bytes().all(|byte| byte.is_ascii_digit()) {
                    let mut size = Text::new();
                    size.str(inches).byte(b'.').str(hundredths).byte(b'-').str(rim);
                    self.offer(&size, Some(POINT));
                }
            }
        }
        let (bytes, mut at) = (text.as_bytes(), 0);
        for _ in 0..MOST_NUMBERS {
            while bytes.get(at).is_some_and(|byte| !byte.is_ascii_digit()) {
                at += 1;
            }
            let start = at;
            while bytes.get(at).is_some_and(u8::is_ascii_digit) {
                at += 1;
            }
            // No width before a stroke lost a point.
            if bytes.get(at) == Some(&b'/') {
                continue;
            }
            let has_point = bytes.get(at) == Some(&b'.') || start > 0 && bytes.get(start - 1) == Some(&b'.');
            let is_year = matches!(bytes.get(start..at), Some([b'1', b'9', _, _] | [b'2', b'0', _, _]));
            if !(2..=4).contains(&(at - start)) || has_point || is_year {
                continue;
            }
            for decimals in 1..if start == 0 && at == 3 { 3 } else { 2 } {
                let (Some(before), Some(behind)) = (text.get(..at - decimals), text.get(at - decimals..))
                else {
                    return;
                };
                let mut pointed = Text::new();
                pointed.str(before).byte(b'.').str(behind);
                self.offer_made(&pointed);
            }
        }
    }

    /// The word that says what a number or a shape is.
    fn add_words(&mut self, text: &str) {
        const LONGEST_PART: usize = 24;
        if text.len() > LONGEST_PART {
            return;
        }
        let of = |before: &str, text: &str, behind: &str| {
            let mut named = Text::new();
            named.str(before).str(text).str(behind);
            named
        };
        let number = text.trim_start_matches(|c: char| !c.is_ascii_digit());
        let word = text.get(..text.len() - number.len()).unwrap_or_default().trim();
        let is_circle = word.is_empty()
            || ["PCD", "LK", "PCD:", "BOLT CIRCLE", "BC"]
                .iter()
                .any(|known| word.eq_ignore_ascii_case(known));
        if is_circle
            && !number.is_empty()
            && number.bytes().all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b','))
        {
            for count in ["5x", "4x", "6x", "8x", "10x"] {
                let circle = of(count, number, "");
                let is_made = |text: &str| BoltCircle::parse(text).is_ok_and(|circle| circle.is_standard());
                if is_made(circle.as_str()) {
                    self.offer(&circle, None);
                }
            }
        }
        let letters = text.bytes().filter(u8::is_ascii_alphabetic).count();
        if word.is_empty() {
            let has_point = text.contains(['.', ',']);
            for before in ["CB ", "MAX LOAD ", "MAX PRESS ", "MAX SPEED ", "TREADWEAR "] {
                let fits = match before {
                    "CB " => has_point,
                    "TREADWEAR " => text.len() == 3,
                    _ => true,
                };
                if fits {
                    self.offer(&of(before, text, ""), Some(WORD));
                }
            }
        }
        if text.bytes().all(|byte| byte.is_ascii_digit()) && text.len() == 3 {
            self.offer(&of("DATE ", text, ""), Some(WORD));
        }
        let has_word = text.split(|c: char| !c.is_ascii_alphabetic()).any(|letters| letters.len() > 4);
        let is_number = text.bytes().all(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b' ' | b'-'));
        let last = text.split([' ', '-']).next_back().unwrap_or_default().len();
        if letters >= 2
            && !has_word
            && is_number
            && (last == 4 || last >= 8)
            && text.bytes().rev().take(4).all(|byte| byte.is_ascii_digit())
        {
            self.offer_past_number(&of("DOT ", text, ""));
        }
        if let Some(rest) = text.get(..3).filter(|word| word.eq_ignore_ascii_case("max")).and(text.get(3..)) {
            for before in ["MAX LOAD", "MAX PRESS", "MAX SPEED"] {
                self.offer(&of(before, rest, ""), Some(WORD));
            }
        }
        let pitches = ["x1.5", "x1.25", "x2"];
        let radii = [" R13", " R12", " R14"];
        let is_thread = word.eq_ignore_ascii_case("m");
        for behind in if is_thread { pitches } else { radii } {
            if is_thread || number.is_empty() {
                self.offer(&of("", text, behind), None);
            }
        }
    }

    /// The longest run of words that is a tire, a wheel or what tells itself as well.
    fn leave_words_out(&mut self, text: &str) {
        const MOST_WORDS: usize = 8;
        let words = || text.split_ascii_whitespace().take(MOST_WORDS);
        let count = words().count();
        for left in 1..count {
            for from in 0..=left {
                let mut part = Text::new();
                for word in words().skip(from).take(count - left) {
                    if !part.as_str().is_empty() {
                        part.byte(b' ');
                    }
                    part.str(word.trim_end_matches([',', ';']));
                }
                let is_whole = readings(part.as_str()).is_ok_and(|all| {
                    matches!(all.best().marking().kind(), "tire" | "wheel" | "tin" | "molded_limit")
                });
                if is_whole && self.offer(&part, Some(LESS)) {
                    return;
                }
            }
        }
    }

    /// Keeps a text that reads as a tire, a wheel or a part of one, and not as a number that could be anything.
    fn offer_sized(&mut self, text: &Text, presumes: Option<&'static str>) -> bool {
        match readings(text.as_str()) {
            Ok(all)
                if !matches!(
                    all.best().marking().kind(),
                    "load_index" | "speed_symbol" | "date_code" | "seat" | "sidewall_mark"
                ) =>
            {
                self.offer(text, presumes)
            }
            _ => false,
        }
    }

    /// Keeps a text with a point put in, if what it makes is made.
    fn offer_made(&mut self, text: &Text) {
        let Ok(all) = readings(text.as_str()) else { return };
        let is_made = match all.best().marking() {
            Marking::BoltCircle(circle) => circle.is_standard(),
            Marking::DualDrilling(drilling) => drilling.circles().iter().all(BoltCircle::is_standard),
            Marking::Wheel(wheel) => [wheel.bolt_circle(), wheel.second_bolt_circle()]
                .iter()
                .flatten()
                .all(BoltCircle::is_standard),
            _ => true,
        };
        if is_made {
            self.offer_sized(text, Some(POINT));
        }
    }

    fn offer_past_number(&mut self, text: &Text) {
        if readings(text.as_str()).is_ok_and(|all| all.best().when().is_none()) {
            self.offer(text, Some(WORD));
        }
    }

    /// Keeps a text that reads.
    fn offer(&mut self, text: &Text, presumes: Option<&'static str>) -> bool {
        if self.is_full() || readings(text.as_str()).is_err() {
            return false;
        }
        if self.0.iter().flatten().any(|known| known.as_str() == text.as_str()) {
            return true;
        }
        if let Some(place) = self.0.iter_mut().find(|place| place.is_none()) {
            *place = Some(Suggestion { text: *text, presumes });
        }
        true
    }
}

/// The numbers of a metric size with whatever stands between them.
struct Numbers<'a> {
    prefix: &'a str,
    width: &'a str,
    aspect: &'a str,
    structure: &'a str,
    rim: &'a str,
    rest: &'a str,
}

impl<'a> Numbers<'a> {
    fn of(text: &'a str) -> Option<Self> {
        let (prefix, text) = text.split_at(text.find(|c: char| c.is_ascii_digit())?);
        let prefix = prefix.trim_end_matches([' ', '-']);
        if prefix.len() > 2 {
            return None;
        }
        let digits =
            |text: &'a str| text.split_at(text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len()));
        let (first, behind) = digits(text);
        let is_between =
            |c: char| matches!(c, ' ' | '/' | '-' | '.' | ',' | '_' | '*' | 'x' | 'X' | ':' | '+');
        let (width, aspect, behind) = match first.len() {
            // All glued, or the first two.
            7 | 8 => {
                let (width, rest) = first.split_at(3);
                let (aspect, rim) = rest.split_at(2);
                return Some(Self { prefix, width, aspect, structure: "", rim, rest: behind });
            }
            5 => {
                let (width, aspect) = first.split_at(3);
                (width, aspect, behind)
            }
            3 => {
                let (aspect, behind) = digits(behind.trim_start_matches(is_between));
                (first, aspect, behind)
            }
            _ => return None,
        };
        if !matches!(aspect.len(), 2 | 3) {
            return None;
        }
        let behind = behind.trim_start_matches(is_between);
        let letters = behind.find(|c: char| !c.is_ascii_alphabetic())?;
        let (structure, behind) = behind.split_at(letters);
        let behind = behind.trim_start_matches(is_between);
        let end = behind.find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(behind.len());
        let (rim, rest) = behind.split_at(end);
        if structure.len() > 3 || !matches!(rim.len(), 2..=4) {
            return None;
        }
        Some(Self { prefix, width, aspect, structure, rim, rest })
    }
}

/// Dashes, strokes and commas that are typed for one another, each as its plain sign.
fn with_plain_signs(text: &str) -> Text {
    let mut plain = Text::new();
    let mut space = true;
    for c in text.chars() {
        match c {
            '\u{2010}'..='\u{2015}' | '\u{2212}' => plain.byte(b'-'),
            '\\' | '|' | '\u{2044}' | '\u{2215}' => plain.byte(b'/'),
            '\u{b7}' | '\u{2024}' => plain.byte(b'.'),
            ';' | '_' if !space => plain.byte(b' '),
            '\u{ff10}'..='\u{ff19}' => plain.byte((c as u32 - 0xFF10) as u8 + b'0'),
            c if c.is_whitespace() && space => continue,
            c if c.is_whitespace() => plain.byte(b' '),
            c => plain.str(c.encode_utf8(&mut [0; 4])),
        };
        space = c.is_whitespace();
    }
    // A comma before a space parts words.
    let mut parted = Text::new();
    let mut chars = plain.as_str().chars().peekable();
    while let Some(c) = chars.next() {
        if c != ',' || chars.peek() != Some(&' ') {
            parted.str(c.encode_utf8(&mut [0; 4]));
        }
    }
    parted
}

/// Letters that stand in a number as the digits they look like: each of some strings ends in its digit. One at the end
/// of a word stays, which a speed symbol does.
fn with_digits(text: &str, lookalikes: &[&str]) -> Text {
    let mut mapped = Text::new();
    let mut in_number = true;
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        let digit = lookalikes.iter().find_map(|all| {
            let (letters, digit) = all.split_at(all.len() - 1);
            letters.contains(c).then_some(digit)
        });
        let at_end = chars.peek().is_none_or(|next| next.is_whitespace());
        let is_plain = matches!(c, 'O' | 'o' | 'l' | 'I');
        match digit {
            Some(digit) if in_number && (!at_end || is_plain) => mapped.str(digit),
            _ => {
                // Letters that a number stands behind.
                in_number = c.is_ascii_digit()
                    || matches!(c, '/' | '.' | ',' | 'x' | 'X' | '-' | 'R' | 'r' | 'J' | 'j' | 'M' | 'm');
                mapped.str(c.encode_utf8(&mut [0; 4]))
            }
        };
    }
    mapped
}

/// Digits that stand in a word as the letters they look like.
fn with_letters(text: &str) -> Text {
    let mut mapped = Text::new();
    let mut before = ' ';
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        let touches = (before.is_ascii_alphabetic() || before == '+')
            && chars.peek().is_none_or(|next| !next.is_ascii_digit() || matches!(next, '0' | '1' | '5'));
        let letter = match c {
            '0' => 'O',
            '1' => 'I',
            '5' => 'S',
            c => c,
        };
        let c = if touches { letter } else { c };
        mapped.str(c.encode_utf8(&mut [0; 4]));
        before = c;
    }
    mapped
}
