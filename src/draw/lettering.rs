//! Text on a drawing: what may stand there, how wide it is, how it is broken into lines.

use alloc::string::String;
use alloc::vec::Vec;

use crate::fitment::{UnitSystem, Value};
use crate::text::is_plain;
use crate::units::Length;

/// Height of the letters' body, in millimetres on paper; capitals are 0.7 of it.
pub(super) const SIZE: f64 = 3.5;

/// From line to line.
pub(super) const LEADING: f64 = 4.2;

/// About how wide a text is in a common sans-serif letter, from above.
pub(super) fn width(text: &str, size: f64) -> f64 {
    let ems: f64 = text
        .chars()
        .map(|c| match c {
            'i' | 'j' | 'l' | 'I' | '.' | ',' | ':' | ';' | '\'' | '|' | '!' | ' ' => 0.35,
            'f' | 'r' | 't' | '(' | ')' | '-' | '/' | '"' => 0.45,
            'm' | 'w' | 'M' | 'W' | '@' | '%' | '—' | '…' => 1.0,
            'A'..='Z' | '&' | '+' | '−' | '±' | 'Ø' | '<' | '>' | '=' | '≥' => 0.84,
            '!'..='~' | '°' => 0.64,
            _ => 1.05,
        })
        .sum();
    ems * size
}

/// The text on one line: what may not be shown becomes a blank, and blanks in a row become one.
pub(super) fn clean(text: &str) -> String {
    let mut cleaned = String::new();
    for c in text.chars().take(MOST_READ) {
        let c = if is_plain(c) && !c.is_whitespace() { c } else { ' ' };
        if c != ' ' || !(cleaned.is_empty() || cleaned.ends_with(' ')) {
            cleaned.push(c);
        }
    }
    cleaned.truncate(cleaned.trim_end().len());
    cleaned
}

/// Characters of a text that are looked at.
const MOST_READ: usize = 400;

/// Breaks a cleaned text into at most so many lines of a width; what is left over ends in an ellipsis.
pub(super) fn lines(text: &str, size: f64, room: f64, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in text.split(' ') {
        let mut word = word;
        loop {
            let joined = if line.is_empty() { String::from(word) } else { alloc::format!("{line} {word}") };
            if width(&joined, size) <= room {
                line = joined;
                break;
            }
            if !line.is_empty() {
                lines.push(core::mem::take(&mut line));
                continue;
            }
            // A word longer than the line.
            let fits = word
                .char_indices()
                .map(|(at, c)| at + c.len_utf8())
                .take_while(|&end| width(&word[..end], size) <= room)
                .last();
            let Some(fits) = fits else { break };
            lines.push(String::from(&word[..fits]));
            word = &word[fits..];
        }
        if lines.len() > most {
            break;
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    if lines.len() > most {
        lines.truncate(most);
        if let Some(last) = lines.last_mut() {
            *last = cut(last, size, room);
        }
    }
    lines
}

/// As much of a text as one line of a width holds, if that is not all of it, and an ellipsis.
pub(super) fn cut(text: &str, size: f64, room: f64) -> String {
    let mut cut = String::from(text);
    while width(&cut, size) + size > room && cut.pop().is_some() {}
    cut.truncate(cut.trim_end().len());
    cut.push('…');
    cut
}

/// A length as the report rounds it, with the minus sign of print, without its unit, which the legend names: of two
/// units the second in brackets.
pub(super) fn figure(length: Length, units: UnitSystem) -> String {
    let bare = |units| {
        let told = alloc::format!("{}", Value::Length(length).told_in(units));
        told.split(' ').next().unwrap_or_default().replace('-', "−")
    };
    match units {
        UnitSystem::Both => alloc::format!("{} [{}]", bare(UnitSystem::Metric), bare(UnitSystem::Us)),
        one => bare(one),
    }
}

/// The same with its unit, whatever the units are.
pub(super) fn measure(length: Length, units: UnitSystem) -> String {
    alloc::format!("{}", Value::Length(length).told_in(units)).replace('-', "−")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::mm;

    #[test]
    fn text_is_cleaned_and_broken() {
        assert_eq!(clean("  a\u{0}\n\tb\u{202E}c \u{1b} "), "a b c");
        assert_eq!(clean("\u{FFFF}"), "");
        assert_eq!(clean("a\u{FFF9}b\u{E0041}"), "a b");
        assert_eq!(lines("", SIZE, 30.0, 2), Vec::<String>::new());
        assert_eq!(lines("spring seat", SIZE, 30.0, 2), ["spring seat"]);
        let two = lines("damper body at its lower end and more and more of it", SIZE, 30.0, 2);
        assert_eq!(two.len(), 2);
        assert!(two[1].ends_with('…'));
        let long = lines(&"x".repeat(300), SIZE, 30.0, 3);
        assert!(long.len() == 3 && long.iter().all(|line| width(line, SIZE) <= 30.0 + SIZE));
        // Narrower than a letter: nothing, but no end without end.
        assert!(lines("abc", SIZE, 0.5, 3).is_empty());
    }

    #[test]
    fn figures_are_those_of_a_report() {
        let told = |length, units| figure(mm(length), units);
        assert_eq!(told(-0.004, UnitSystem::Metric), "0");
        assert_eq!(told(-3.25, UnitSystem::Metric), "−3.25");
        assert_eq!(told(-3.256, UnitSystem::Metric), "−3.26");
        assert_eq!(told(214.0, UnitSystem::Metric), "214");
        assert_eq!(told(-6.35, UnitSystem::Us), "−0.25");
        assert_eq!(told(6.35, UnitSystem::Both), "6.35 [0.25]");
        assert_eq!(measure(mm(6.35), UnitSystem::Us), "0.25 in");
    }
}
