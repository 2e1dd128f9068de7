//! A sidewall line is read alike in any order of its marks.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::tire::SidewallLine;
use proptest::prelude::*;
use proptest::sample::subsequence;

/// A size with marks that may all stand beside it.
const LINES: [(&str, &[&str]); 7] = [
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
];

fn shuffled() -> impl Strategy<Value = (String, String)> {
    (0..LINES.len()).prop_flat_map(|n| {
        let (size, marks) = LINES[n];
        subsequence(marks.to_vec(), 0..=marks.len()).prop_flat_map(move |some| {
            let ordered = [&[size], &some[..]].concat().join(" ");
            Just(some)
                .prop_shuffle()
                .prop_map(move |other| (ordered.clone(), [&[size], &other[..]].concat().join(" ")))
        })
    })
}

proptest! {
    #[test]
    fn the_order_of_marks_does_not_matter((one, other) in shuffled()) {
        let line: SidewallLine = one.parse().unwrap();
        prop_assert_eq!(other.parse::<SidewallLine>(), Ok(line), "{}", other);
        prop_assert_eq!(line.to_string().parse::<SidewallLine>(), Ok(line));
    }

    #[test]
    fn hostile_lines_never_panic((one, _) in shuffled(), at in any::<prop::sample::Index>(), wild in "\\PC{0,3}") {
        let mut chars: Vec<char> = one.chars().collect();
        let at = at.index(chars.len());
        chars.splice(at..=at, wild.chars());
        let text: String = chars.into_iter().collect();
        match text.parse::<SidewallLine>() {
            Ok(line) => prop_assert_eq!(line.to_string().parse::<SidewallLine>(), Ok(line)),
            Err(error) => prop_assert!(text.get(error.span()).is_some()),
        }
    }
}
