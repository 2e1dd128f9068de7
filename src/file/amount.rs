//! An amount as people write it: a number, whole or with a fraction, and its unit.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::units::{Quantity, Unit};
use crate::text::{Excerpt, Scanner};
use crate::wheel::phrase::scan_fraction;

/// Why a text is no amount of a quantity.
pub(super) enum NoAmount {
    /// It does not begin with a number.
    NoNumber,
    /// What is wrong with it, in words.
    Wrong(String),
}

/// The number of a text, and its unit, which must be one of the quantity.
pub(super) fn read(text: &str, quantity: &'static Quantity) -> Result<(f64, &'static Unit), NoAmount> {
    let mut scanner = Scanner::new(text);
    scanner.begin().map_err(|_| NoAmount::NoNumber)?;
    let is_negative = scanner.eat(b'-') || scanner.eat_str("\u{2212}");
    if !is_negative {
        scanner.eat(b'+');
    }
    let mut number = scan_number(&mut scanner, text)?;
    let mut unit = scan_unit(&mut scanner, text, quantity)?;
    if unit.name == "ft" && !scanner.at_end() {
        let (inches, of) = (scan_number(&mut scanner, text)?, scan_unit(&mut scanner, text, quantity)?);
        if of.name != "in" || inches >= 12.0 {
            return Err(wrong(text, "is not so many feet and inches"));
        }
        (number, unit) = (12.0 * number + inches, of);
    }
    if scanner.finish().is_err() {
        return Err(wrong(text, "goes on behind its unit"));
    }
    Ok((if is_negative { -number } else { number }, unit))
}

fn wrong(text: &str, why: &str) -> NoAmount {
    NoAmount::Wrong(format!("`{}` {why}", Excerpt(text)))
}

/// Digits with a point or a comma, or with a fraction of an inch behind them, or such a fraction alone.
fn scan_number(scanner: &mut Scanner<'_>, text: &str) -> Result<f64, NoAmount> {
    scanner.skip_space();
    if let Some(millionths) = scan_fraction(scanner) {
        return Ok(millionths as f64 / 1e6);
    }
    let start = scanner.at();
    scanner.skip_digits();
    let point = scanner.at();
    if point == start {
        return Err(NoAmount::NoNumber);
    }
    if scanner.is_point(point) {
        scanner.step(1);
        scanner.skip_digits();
        let decimals = scanner.at() - point - 1;
        if decimals == 0 || scanner.is_point(scanner.at()) {
            return Err(wrong(text, "is not one number"));
        }
        if decimals == 3 && text.as_bytes().get(point) == Some(&b',') {
            return Err(wrong(
                text,
                "may be thousands or decimals: write it without the comma, or with a point",
            ));
        }
    }
    let digits = text.get(start..scanner.at()).unwrap_or_default().replace(',', ".");
    let number: f64 = digits.parse().map_err(|_| NoAmount::NoNumber)?;
    let fraction = if scanner.at() == point { scan_fraction(scanner) } else { None };
    Ok(number + fraction.unwrap_or(0) as f64 / 1e6)
}

fn scan_unit(
    scanner: &mut Scanner<'_>,
    text: &str,
    quantity: &'static Quantity,
) -> Result<&'static Unit, NoAmount> {
    scanner.skip_space();
    for unit in quantity.units {
        let mut ahead = *scanner;
        if (unit.eat)(&mut ahead) {
            *scanner = ahead;
            scanner.skip_space();
            return Ok(unit);
        }
    }
    let why = if scanner.at_end() { "has no unit" } else { "has another unit than is meant here" };
    Err(wrong(text, &format!("{why}: {}", quantity.names())))
}

impl Quantity {
    /// Its units, as an error names them.
    pub(super) fn names(&self) -> String {
        let names: Vec<&str> = self.units.iter().map(|unit| unit.name).collect();
        match names.split_last() {
            Some((last, [])) => format!("{last} is meant"),
            Some((last, others)) => format!("{} or {last} is meant", others.join(", ")),
            None => String::new(),
        }
    }
}
