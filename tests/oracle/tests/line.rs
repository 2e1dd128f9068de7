//! A sidewall line is read alike in any order of its marks, and so is what is stamped on a wheel.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use std::fmt::{Debug, Display};
use std::str::FromStr;

use beadseat::tire::sidewall::SidewallLine;
use beadseat::wheel::WheelStamp;
use beadseat::{Marking, ParseError};
use proptest::prelude::*;
use proptest::sample::subsequence;
use proptest::test_runner::TestCaseError;

/// A size with marks that may all stand beside it.
const LINES: [(&str, &[&str]); 10] = [
    (
        "205/55R16",
        &["91V", "XL", "M+S", "3PMSF", "TUBELESS", "MAX LOAD 615 kg (1356 lb)", "MAX PRESS 340 kPa"],
    ),
    (
        "LT245/75R17",
        &["121/118S", "LRE", "M+S", "TUBELESS", "MAX LOAD 1450 kg AT 550 kPa", "MAX PRESS 80 psi"],
    ),
    ("195/70R15C", &["104/102R", "8PR", "M+S", "TUBE TYPE", "MAX LOAD DUAL 850 kg"]),
    ("11R22.5", &["148/145L", "16PR", "TUBELESS"]),
    ("T125/70D16", &["96M", "MAX SPEED 80 KM/H (50 MPH)", "MAX PRESS 420 kPa"]),
    ("710/55R30", &["153D", "40 km/h MAX", "TL", "MAX LOAD 3650 kg"]),
    ("155R13", &["78S", "REINFORCED", "TL"]),
    ("120/70ZR17 M/C", &["(58W)", "TL", "ROTATION", "RADIAL"]),
    (
        "LT245/75R17",
        &[
            "E",
            "121/118S",
            "MUD AND SNOW",
            "STEEL BELTED RADIAL",
            "POR",
            "MAX LOAD SINGLE 3195 LBS AT 80 PSI COLD",
            "MAX LOAD DUAL 2910 LBS. @ 75 PSI",
        ],
    ),
    ("100/90-19", &["57V", "TT", "TWI", "OUTSIDE", "MAX. PERMISSIBLE INFLATION PRESSURE 280 kPa"]),
];

/// The same of wheels, where the size too may stand anywhere.
const STAMPS: [(&str, &[&str]); 4] = [
    (
        "7.5Jx17 H2",
        &["ET42", "5x112", "66.6", "MAX LOAD 690 kg (1521 lb)", "03/2021", "JWL", "VIA", "MADE IN UTOPIA"],
    ),
    ("6 1/2Jx15", &["+38", "4x100/114,3", "CB 57.1", "1190 LBS", "W23/2019", "E13 124R-001234", "KBA 45678"]),
    ("8.25x22.5", &["ET168", "10x335", "281", "LOAD 4750 kg", "2017-W05", "SAE J2530", "DOT"]),
    ("150 TR 390 FH", &["OS 12", "4x4.25in", "JWL-T", "124R 42", "made in south utopia"]),
];

fn shuffled_of(
    lines: &'static [(&'static str, &'static [&'static str])],
    size_first: bool,
) -> impl Strategy<Value = (String, String)> {
    (0..lines.len()).prop_flat_map(move |n| {
        let (size, marks) = lines[n];
        subsequence(marks.to_vec(), 0..=marks.len()).prop_flat_map(move |some| {
            let ordered = [&[size], &some[..]].concat().join(" ");
            let (fixed, free) =
                if size_first { (vec![size], some) } else { (vec![], [&[size], &some[..]].concat()) };
            Just(free)
                .prop_shuffle()
                .prop_map(move |other| (ordered.clone(), [&fixed[..], &other].concat().join(" ")))
        })
    })
}

fn shuffled() -> impl Strategy<Value = (String, String)> {
    shuffled_of(&LINES, true)
}

fn stamps() -> impl Strategy<Value = (String, String)> {
    shuffled_of(&STAMPS, false)
}

fn order_does_not_matter<T>(one: &str, other: &str) -> Result<(), TestCaseError>
where
    T: FromStr<Err = ParseError> + Display + Debug + PartialEq + Copy,
{
    let line: T =
        one.parse().map_err(|error: ParseError| TestCaseError::fail(error.show(one).to_string()))?;
    prop_assert_eq!(other.parse::<T>(), Ok(line), "{}", other);
    prop_assert_eq!(line.to_string().parse::<T>(), Ok(line), "{}", line);
    let marking: Marking =
        one.parse().map_err(|error: ParseError| TestCaseError::fail(error.show(one).to_string()))?;
    prop_assert_eq!(marking.to_string(), line.to_string());
    prop_assert_eq!(marking.to_string().parse::<Marking>(), Ok(marking), "{}", marking);
    Ok(())
}

/// Reads a text with a piece of it replaced.
fn hostile<T>(one: &str, at: prop::sample::Index, wild: &str) -> Result<(), TestCaseError>
where
    T: FromStr<Err = ParseError> + Display + Debug + PartialEq + Copy,
{
    let mut chars: Vec<char> = one.chars().collect();
    let at = at.index(chars.len());
    chars.splice(at..=at, wild.chars());
    let text: String = chars.into_iter().collect();
    match text.parse::<T>() {
        Ok(line) => prop_assert_eq!(line.to_string().parse::<T>(), Ok(line), "{:?} is {}", text, line),
        Err(error) => prop_assert!(text.get(error.span()).is_some()),
    }
    Ok(())
}

proptest! {
    #[test]
    fn the_order_of_marks_does_not_matter((one, other) in shuffled()) {
        order_does_not_matter::<SidewallLine>(&one, &other)?;
    }

    #[test]
    fn the_order_of_stamps_does_not_matter((one, other) in stamps()) {
        order_does_not_matter::<WheelStamp>(&one, &other)?;
    }

    #[test]
    fn hostile_lines_never_panic((one, _) in shuffled(), at in any::<prop::sample::Index>(), wild in "\\PC{0,3}") {
        hostile::<SidewallLine>(&one, at, &wild)?;
    }

    #[test]
    fn hostile_stamps_never_panic((one, _) in stamps(), at in any::<prop::sample::Index>(), wild in "\\PC{0,3}") {
        hostile::<WheelStamp>(&one, at, &wild)?;
    }

    /// Letters and digits where others were, which come closest to another meaning.
    #[test]
    fn nearly_right_stamps_are_read_alike_again((one, _) in stamps(), at in any::<prop::sample::Index>(), wild in "[A-Z0-9 /x.+-]{0,2}") {
        hostile::<WheelStamp>(&one, at, &wild)?;
    }
}
