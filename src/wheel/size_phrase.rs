//! A wheel size as people write it, where they do not write it as it is stamped.

use super::phrase;
use crate::rim::{Contour, Hump, RimDiameter, RimWidth};
use crate::text::Scanner;
use crate::wheel::WheelSize;

/// The least rim of road vehicles, in tenths of an inch: from there on `by` is of a rim.
const LEAST_RIM: u16 = 100;

/// A size with quotes, with words, or without a sign behind its contour: `17" x 8"`, `8J17`, `17 in by 8 in`.
pub(super) const fn scan(scanner: &mut Scanner<'_>) -> Option<WheelSize> {
    let mut ahead = *scanner;
    if !ahead.at_digit() {
        return None;
    }
    let start = ahead.at();
    // The diameter first: a whole code, then a width that is smaller.
    let mut first = ahead;
    let diameter_first = match (RimDiameter::scan(&mut first), RimWidth::scan(&mut ahead)) {
        (_, Err(_)) => return None,
        (Ok(code), Ok(_)) => Some(code),
        (Err(_), Ok(_)) => None,
    };
    let mut quoted = eat_spaced_inches(&mut ahead);
    let contour = scan_contour(&mut ahead);
    ahead.skip_space();
    let by = ahead.eat_word("BY");
    let times = by || ahead.eat_times();
    ahead.skip_space();
    // Without a sign only the contours of cars tell a rim; `7.0D20` is a tire.
    let told = times || matches!(contour, Some(Contour::J | Contour::Jj | Contour::Jk | Contour::K));
    if !told || !ahead.at_digit() {
        return None;
    }
    let mut second = ahead;
    if contour.is_none() {
        if let (Some(diameter), Ok(width)) = (diameter_first, RimWidth::scan(&mut second)) {
            if width.quarters() * 10 < diameter.tenths() * 4 && width.millimetres().is_none() {
                quoted |= eat_spaced_inches(&mut second) || by && diameter.tenths() >= LEAST_RIM;
                let contour = scan_contour(&mut second);
                let hump = scan_hump(&mut second);
                let size = WheelSize::of(width, contour, diameter, &second, start);
                return match size {
                    Ok(size) if quoted => {
                        *scanner = second;
                        Some(size.with_hump(hump))
                    }
                    _ => None,
                };
            }
        }
    }
    let mut width_at = *scanner;
    let (Ok(width), Ok(diameter)) = (RimWidth::scan(&mut width_at), RimDiameter::scan(&mut ahead)) else {
        return None;
    };
    quoted |= eat_spaced_inches(&mut ahead) || by && diameter.tenths() >= LEAST_RIM;
    let hump = scan_hump(&mut ahead);
    // What goes on with letters or digits is something else.
    if ahead.peek(0).is_ascii_alphanumeric() || times && !quoted {
        return None;
    }
    match WheelSize::of(width, contour, diameter, &ahead, start) {
        Ok(size) => {
            *scanner = ahead;
            Some(size.with_hump(hump))
        }
        Err(_) => None,
    }
}

const fn eat_spaced_inches(scanner: &mut Scanner<'_>) -> bool {
    let mut ahead = *scanner;
    ahead.skip_space();
    let here = phrase::eat_inches(&mut ahead);
    if here {
        *scanner = ahead;
    }
    here
}

/// A contour that a digit may touch.
const fn scan_contour(scanner: &mut Scanner<'_>) -> Option<Contour> {
    let mut ahead = *scanner;
    ahead.skip_space();
    let contour = match Contour::scan_before_width(&mut ahead) {
        Some(contour) => Some(contour),
        None => match Contour::scan(&mut ahead) {
            Ok(contour) => Some(contour),
            Err(_) => None,
        },
    };
    if contour.is_some() {
        *scanner = ahead;
    }
    contour
}

const fn scan_hump(scanner: &mut Scanner<'_>) -> Option<Hump> {
    let mut ahead = *scanner;
    ahead.skip_space();
    match Hump::scan(&mut ahead) {
        Ok(hump) => {
            *scanner = ahead;
            Some(hump)
        }
        Err(_) => None,
    }
}
