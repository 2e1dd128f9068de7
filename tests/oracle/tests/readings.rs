//! Laws of the door for people, over texts made of what the trade writes: what is shown reads back as the same reading,
//! suggestions read, errors lie inside the text, and no date or number is read without its evidence.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::Marking;
use beadseat::marking::{readings, suggestions};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use proptest::test_runner::TestCaseError;

const ROWS: &str = include_str!("../../cases/readings.csv");

/// The texts of the rows, with doubled quotes made single.
fn rows() -> Vec<String> {
    ROWS.lines()
        .skip(1)
        .map(|line| match line.strip_prefix('"') {
            Some(quoted) => quoted.split("\",").next().unwrap_or_default().replace("\"\"", "\""),
            None => line.split(',').next().unwrap_or_default().to_owned(),
        })
        .collect()
}

/// What stands in markings, and between its parts.
const PIECES: [&str; 84] = [
    "205",
    "55",
    "16",
    "7",
    "8",
    "9",
    "5",
    "4",
    "112",
    "114.3",
    "57.1",
    "6.00",
    "10.50",
    "31",
    "22.5",
    "45",
    "91",
    "104",
    "102",
    "3521",
    "2725",
    "1",
    "2",
    "1/2",
    "4 1/2",
    "½",
    "14",
    "1.5",
    "20",
    "60",
    "13",
    "400",
    "71",
    "615",
    "R",
    "ZR",
    "D",
    "-",
    "x",
    "/",
    " ",
    "  ",
    ".",
    ",",
    "\"",
    "+",
    "J",
    "JJ",
    "H2",
    "ET",
    "IS",
    "CB",
    "BS",
    "PCD",
    "LK",
    "M",
    "M/C",
    "LT",
    "C",
    "P",
    "V",
    "H",
    "XL",
    "DOT",
    "TIN",
    "DATE",
    "WEEK",
    "KW",
    "W",
    "offset",
    "on",
    "lug",
    "cone",
    "ball",
    "acorn",
    "UNF",
    "kg",
    "psi",
    "bar",
    "MAX LOAD",
    "MAX PRESS",
    "M+S",
    "A",
    "TIRE",
];

fn of_pieces() -> impl Strategy<Value = String> {
    prop::collection::vec(select(&PIECES[..]), 1..9).prop_map(|pieces| pieces.concat())
}

fn spaced_pieces() -> impl Strategy<Value = String> {
    prop::collection::vec(select(&PIECES[..]), 1..7).prop_map(|pieces| pieces.join(" "))
}

/// A row with a piece of it taken out or replaced.
fn mutated() -> impl Strategy<Value = String> {
    let text = (any::<Index>()).prop_map(|at| at.get(&rows()).clone());
    (text, any::<Index>(), 0_usize..3, select(&PIECES[..])).prop_map(|(text, at, cut, piece)| {
        let mut chars: Vec<char> = text.chars().collect();
        let at = at.index(chars.len().max(1)).min(chars.len());
        let end = (at + cut).min(chars.len());
        chars.splice(at..end, piece.chars());
        chars.into_iter().collect()
    })
}

fn letters_and_digits() -> impl Strategy<Value = String> {
    "[A-Z0-9]{1,5}[ -]?[A-Z0-9]{0,6}[ -]?[0-9]{0,5}"
}

fn any_text() -> impl Strategy<Value = String> {
    prop_oneof![of_pieces(), spaced_pieces(), mutated(), letters_and_digits(), "\\PC{0,12}"]
}

/// Whether a text has what makes four digits a date, or symbols a number.
fn has_evidence(text: &str) -> bool {
    let upper = text.to_ascii_uppercase();
    let words = ["DOT", "TIN", "DATE", "WEEK", "WK", "KW", "MFG", "MANUFACTURED", "-W"];
    let with_w = upper.trim_start().trim_start_matches(['"', '\'']).starts_with('W');
    words.iter().any(|word| upper.contains(word)) || with_w
}

fn holds(text: &str) -> Result<(), TestCaseError> {
    match readings(text) {
        Ok(all) => {
            for reading in all.iter() {
                let shown = reading.marking().to_string();
                prop_assert_eq!(
                    shown.parse::<Marking>(),
                    Ok(reading.marking()),
                    "{:?} shown as {:?}",
                    text,
                    shown
                );
                prop_assert!(!all.are_several() || reading.when().is_some());
            }
            let best = all.best();
            let symbols = text.bytes().filter(u8::is_ascii_alphanumeric).count();
            match best.marking().kind() {
                // Without a word it is doubted, and four digits or all 13 symbols.
                "date_code" if !has_evidence(text) => {
                    prop_assert!(best.when().is_some() && symbols == 4, "{:?}", text)
                }
                "tin" if !has_evidence(text) => {
                    prop_assert!(best.when().is_some() && symbols == 13, "{:?}", text)
                }
                _ => {}
            }
            prop_assert_eq!(suggestions(text).count(), 0);
        }
        Err(error) => {
            prop_assert!(text.get(error.span()).is_some(), "{:?} of {:?}", error.span(), text);
            let near: Vec<_> = suggestions(text).collect();
            prop_assert!(near.len() <= 3);
            for near in near {
                prop_assert!(readings(near.as_str()).is_ok(), "{:?} suggests {:?}", text, near);
            }
        }
    }
    Ok(())
}

proptest! {
    #[test]
    fn whatever_is_written_is_read_alike_again_or_refused(text in any_text()) {
        holds(&text)?;
    }

    #[test]
    fn a_mutated_row_is_read_alike_again_or_refused(text in mutated()) {
        holds(&text)?;
    }
}
