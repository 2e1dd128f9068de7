//! What was meant by a key or a word that is not known.

use alloc::string::String;
use alloc::vec::Vec;

/// The nearest of some words: with two letters in five wrong at most, or as a part of the other; of each only what is
/// told apart by.
pub(super) fn nearest(
    word: &str,
    known: impl Iterator<Item = &'static str>,
    told_by: impl Fn(&str) -> &str,
) -> Option<&'static str> {
    /// Longer than any word of a file.
    const LONGEST: usize = 60;
    if word.len() > LONGEST {
        return None;
    }
    let plain = |word: &str| -> String {
        told_by(word).chars().filter(char::is_ascii_alphanumeric).map(|c| c.to_ascii_lowercase()).collect()
    };
    let wanted = plain(word);
    let far = |known: &str| {
        let known = plain(known);
        let shorter = wanted.len().min(known.len());
        let is_part = shorter >= 4 && (known.contains(&*wanted) || wanted.contains(&*known));
        let steps = distance(wanted.as_bytes(), known.as_bytes());
        (is_part || 5 * steps <= 2 * shorter).then_some(steps)
    };
    known.filter_map(|known| Some((far(known)?, known))).min_by_key(|(far, _)| *far).map(|(_, known)| known)
}

/// How many letters must be put in, left out or changed.
fn distance(a: &[u8], b: &[u8]) -> usize {
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (n, letter) in a.iter().enumerate() {
        let mut before = n;
        let mut left = n + 1;
        if let Some(first) = row.first_mut() {
            *first = left;
        }
        for (cell, other) in row.iter_mut().skip(1).zip(b) {
            left = (before + usize::from(letter != other)).min(*cell + 1).min(left + 1);
            before = core::mem::replace(cell, left);
        }
    }
    row.last().copied().unwrap_or_default()
}
