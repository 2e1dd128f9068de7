//! Dates of manufacture as people write them.

use crate::text::{Field, ParseError, Scanner};
use crate::tire::identification::{DateCode, ManufactureWeek};

/// Whether one of the weeks that a code may mean is not after another.
pub(super) fn is_past(code: DateCode, present: ManufactureWeek) -> bool {
    code.candidates().any(|week| week <= present)
}

/// The longest of two numbers: `03/2021`.
const LONGEST: usize = 7;

/// Two numbers of digits and a stroke, a point or a dash between them.
fn parted(text: &str) -> Option<(&str, u8, &str)> {
    if text.len() > LONGEST {
        return None;
    }
    let at = text.find(['/', '.', '-'])?;
    let (first, second) = (text.get(..at)?, text.get(at + 1..)?);
    let are_digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    (are_digits(first) && are_digits(second)).then_some((first, text.as_bytes()[at], second))
}

fn is_year(digits: &str) -> bool {
    matches!(digits.parse(), Ok(1950..=2099_u16)) && digits.len() == 4
}

/// Whether a number of a month or a week stands beside a year of four digits: `03/2021`, `2021-03`.
pub(super) fn is_year_beside_number(text: &str) -> bool {
    let is_small = |digits: &str| digits.len() <= 2 && matches!(digits.parse(), Ok(1..=53_u16));
    parted(text).is_some_and(|(first, _, second)| {
        is_year(first) && is_small(second) || is_small(first) && is_year(second)
    })
}

/// Whether two numbers with a stroke between them may be a date that no word tells: `17/25`, `03/12`.
pub(super) fn is_two_numbers(text: &str) -> bool {
    parted(text).is_some_and(|(first, sign, second)| sign == b'/' && first.len() <= 2 && second.len() == 2)
}

/// Whether what is read as a week may be a month: twelve and below, with its year apart, and no word of a week.
pub(super) fn may_be_month(text: &str) -> bool {
    parted(text).is_some_and(|(first, _, second)| {
        let (number, other) = if is_year(first) { (second, first) } else { (first, second) };
        matches!(number.parse(), Ok(1..=12_u16)) && (is_year(other) || other.len() == 2)
    })
}

const WEEKS: &[&str] = &["WEEK", "WK", "KW", "W"];

/// A date whose evidence stands elsewhere: `2725`, `317`, `27/25`, `week 27 2025`, `W27/2025`, `2025-W27`.
pub(super) fn parse(text: &str) -> Result<DateCode, ParseError> {
    let mut scanner = Scanner::new(text);
    scanner.begin()?;
    let code = scan(&mut scanner)?;
    scanner.finish()?;
    Ok(code)
}

fn scan(scanner: &mut Scanner<'_>) -> Result<DateCode, ParseError> {
    const FIELD: Field = Field::DateCode;
    let start = scanner.at();
    let named = eat_week(scanner);
    let at = scanner.at();
    let first = scanner.whole(FIELD)?;
    let digits = scanner.at() - at;
    let mut ahead = *scanner;
    skip_separator(&mut ahead);
    let year_first = digits == 4 && eat_week(&mut ahead);
    if !ahead.at_digit() {
        let code = if named { None } else { DateCode::of_value(first, digits) };
        return code.ok_or(scanner.range(FIELD, start));
    }
    // In two groups, as the digits of a code may be molded or typed.
    let at = ahead.at();
    let second = ahead.whole(FIELD)?;
    let second_digits = ahead.at() - at;
    let (week, year) = match (digits, second_digits) {
        (4, 1 | 2) if year_first => (second, first),
        (1 | 2, 4) => (first, second),
        (1 | 2, 2) => (first, 2000 + second),
        _ => return Err(ahead.range(FIELD, start)),
    };
    *scanner = ahead;
    let code = if week <= 53 { DateCode::new(week as u8, year) } else { None };
    code.ok_or(scanner.range(FIELD, start))
}

/// Whether a date with its word and its year stands here: `week 27 2025`, `KW 27/25`, `W27/2025`, `2025-W27`.
pub(super) fn is_written_out(scanner: &Scanner<'_>) -> bool {
    let mut ahead = *scanner;
    let letter = ahead.peek(0) == b'W' && ahead.peek(1).is_ascii_digit();
    if ahead.at_digit() {
        return matches!(ahead.whole(Field::DateCode), Ok(1950..=2099))
            && ahead.eat(b'-')
            && ahead.is_at(b'W');
    }
    if !eat_week(&mut ahead) || !ahead.at_digit() {
        return false;
    }
    ahead.skip_digits();
    skip_separator(&mut ahead);
    let at = ahead.at();
    ahead.skip_digits();
    matches!((letter, ahead.at() - at), (_, 4) | (false, 2))
}

fn eat_week(scanner: &mut Scanner<'_>) -> bool {
    let here = scanner.eat_any(WEEKS)
        || (scanner.peek(0) == b'W' && scanner.peek(1).is_ascii_digit() && scanner.eat(b'W'))
        || (scanner.peek(0) == b'K' && scanner.peek(2).is_ascii_digit() && scanner.eat_str("KW"));
    if here {
        scanner.skip_colon();
    }
    here
}

fn skip_separator(scanner: &mut Scanner<'_>) {
    scanner.skip_space();
    let _ = scanner.eat(b'/')
        || scanner.eat(b'-')
        || scanner.eat(b'.')
        || scanner.eat(b',')
        || scanner.eat_word("OF");
    scanner.skip_space();
}
