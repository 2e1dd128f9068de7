//! Every family of tire sizes: round trip, and no text of two families.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::tire::{AlphaNumeric, Flotation, FullProfile, Metric, Numeric, SizeClass, TireSize};
use proptest::prelude::*;
use proptest::sample::select;

const STRUCTURES: &[&str] = &["R", "-", "B", "SR", "HR", "VR", "ZR", "RF", "ZRF"];
const RIMS: &[&str] = &["8", "10", "13", "15", "16", "17.5", "22.5", "24"];

fn metric() -> impl Strategy<Value = String> {
    let marks = select(
        &[("", ""), ("P", ""), ("T", ""), ("ST", ""), ("HL", ""), ("LT", ""), ("", "C"), ("", "CP")][..],
    );
    let common = (marks, 9_u16..=48, 4_u16..=19, select(STRUCTURES), select(RIMS)).prop_map(
        |((prefix, suffix), width, aspect, structure, rim)| {
            format!("{prefix}{}/{}{structure}{rim}{suffix}", 10 * width + 5, 5 * aspect)
        },
    );
    let motorcycle = (5_u16..=33, 4_u16..=20, select(STRUCTURES), select(RIMS)).prop_map(
        |(width, aspect, structure, rim)| format!("{}/{}{structure}{rim} M/C", 10 * width, 5 * aspect),
    );
    let millimetric = (10_u16..=49, 10_u16..=19, select(STRUCTURES), 60_u16..=100).prop_map(
        |(width, aspect, structure, rim)| format!("{}/{}{structure}{}", 10 * width, 5 * aspect, 5 * rim),
    );
    let half_inch =
        (10_u16..=49, 4_u16..=19, select(STRUCTURES), select(&["17.5", "19.5", "22.5", "24.5"][..]))
            .prop_map(|(width, aspect, structure, rim)| {
                format!("{}/{}{structure}{rim}", 10 * width, 5 * aspect)
            });
    prop_oneof![common, motorcycle, millimetric, half_inch]
}

fn no_aspect() -> impl Strategy<Value = String> {
    let plain = (25_u16..=61, select(STRUCTURES), select(RIMS), select(&["", "C", "LT"][..]))
        .prop_map(|(width, structure, rim, suffix)| format!("{}{structure}{rim}{suffix}", 5 * width));
    let with_inches = (25_u16..=61, select(RIMS), 500_u16..=899).prop_map(|(width, rim, inches)| {
        format!("{}-{rim}/{}.{:02}-{rim}", 5 * width, inches / 100, inches % 100)
    });
    prop_oneof![plain, with_inches]
}

/// Sizes of tractors, written in millimetres and in inches.
fn agricultural() -> impl Strategy<Value = String> {
    let codes = prop_oneof![
        select(&["24", "25", "26", "28", "30"][..]).prop_map(str::to_owned),
        (16_u16..=27).prop_map(|half| (2 * half).to_string()),
    ];
    let metric = (24_u16..=125, 10_u16..=19, select(&["R", "-"][..]), codes.clone())
        .prop_filter("such sizes on code 25 are of earthmovers", |(width, aspect, _, rim)| {
            rim != "25" || *width < 39 || *aspect < 13
        })
        .prop_map(|(width, aspect, structure, rim)| format!("{}/{}{structure}{rim}", 10 * width, 5 * aspect));
    let inches = (8_u16..=29, 0_u16..=9, select(&["R", "-"][..]), codes)
        .prop_filter("earthmover sizes have code 25", |(.., rim)| rim != "25")
        .prop_map(|(whole, tenth, structure, rim)| format!("{whole}.{tenth}{structure}{rim}"));
    prop_oneof![metric, inches]
}

/// Sizes of implements, earthmovers, garden and all-terrain machines, and of heavier tractors and trucks.
fn rare() -> impl Strategy<Value = String> {
    let flexion = (
        select(&["IF", "VF"][..]),
        40_u16..=280,
        4_u16..=22,
        select(&["15", "20", "26.5", "30", "30.5", "42", "54"][..]),
    )
        .prop_map(|(prefix, width, aspect, rim)| format!("{prefix}{}/{}R{rim}", 5 * width, 5 * aspect));
    let implement = (
        18_u16..=100,
        4_u16..=19,
        select(&["R", "-"][..]),
        select(&["15.3", "15.5", "16.1", "26.5", "30.5"][..]),
    )
        .prop_map(|(width, aspect, structure, rim)| format!("{}/{}{structure}{rim}", 10 * width, 5 * aspect));
    let wide = (50_u16..=100, 4_u16..=19, select(&["R", "-"][..]), select(&["17.5", "22.5"][..]))
        .prop_map(|(width, aspect, structure, rim)| format!("{}/{}{structure}{rim}", 10 * width, 5 * aspect));
    let low = (inches(5, 29), select(&["R", "-"][..]), select(&["14", "15", "16.1", "17"][..]))
        .prop_map(|(width, structure, rim)| format!("{width}L{structure}{rim}"));
    let by_aspect = (50_u16..=250, 8_u16..=19, select(&["12", "15.3", "16.1", "18"][..]))
        .prop_map(|(tenths, aspect, rim)| format!("{}.{}/{}-{rim}", tenths / 10, tenths % 10, 5 * aspect));
    let earthmover =
        (inches(10, 59), select(&["", "/65", "/90"][..]), select(&["R", "-"][..]), select(EARTHMOVER))
            .prop_map(|(width, aspect, structure, rim)| format!("{width}{aspect}{structure}{rim}"))
            .prop_filter("60 in at most, and from 50 on millimetres with an aspect ratio", |text| {
                !text.contains('/') || text.as_bytes()[0] < b'5'
            });
    let metric_earthmover = (77_u16..=200, 13_u16..=19, select(&["R", "-"][..]), select(EARTHMOVER))
        .prop_map(|(width, aspect, structure, rim)| format!("{}/{}{structure}{rim}", 5 * width, 5 * aspect));
    let two_widths = (30_u16..=130, 30_u16..=130, select(&["4", "6", "8", "13"][..]))
        .prop_filter("two widths, and small ones on small rims", |(a, b, rim)| {
            a != b && (*a <= 70 || !["4", "6"].contains(rim))
        })
        .prop_map(|(a, b, rim)| {
            let [a, b] = [a, b.min(127)].map(|tenths| format!("{}.{}0", tenths / 10, tenths % 10));
            format!("{a}/{b}-{rim}")
        });
    let small = (200_u16..=700, select(&["4", "5", "6", "7"][..]))
        .prop_map(|(hundredths, rim)| format!("{}.{:02}-{rim}", hundredths / 100, hundredths % 100));
    let garden = (select(&["", "AT"][..]), 11_u16..=20, 3_u16..=12, select(&["4", "5", "6", "7"][..]))
        .prop_map(|(prefix, overall, width, rim)| format!("{prefix}{overall}x{width}-{rim}"));
    let small_metric = (16_u16..=40, 4_u16..=22, select(&["4", "5", "6", "7"][..]))
        .prop_map(|(width, aspect, rim)| format!("{}/{}-{rim}", 5 * width, 5 * aspect));
    let all_terrain = (20_u16..=34, 7_u16..=14, select(STRUCTURES), select(&["8", "10", "12"][..]))
        .prop_map(|(overall, width, structure, rim)| format!("AT{overall}x{width}{structure}{rim}"));
    let heavy =
        prop_oneof![
            (10_u16..=49, 4_u16..=19, select(&["17.5", "19.5"][..]))
                .prop_map(|(width, aspect, rim)| format!("{}/{}R{rim}HC", 10 * width, 5 * aspect)),
            (7_u16..=12, select(&["R", "-"][..]))
                .prop_map(|(width, structure)| format!("{width}{structure}17.5HC")),
        ];
    let lettered = prop_oneof![
        (200_u16..=510, select(&["S", "H", "V", "HB"][..]), 16_u16..=21, select(&["", " M/C"][..])).prop_map(
            |(width, letter, rim, suffix)| format!("{}.{:02}{letter}{rim}{suffix}", width / 100, width % 100)
        ),
        (520_u16..=800, select(&["S", "H"][..]), 12_u16..=15).prop_map(|(width, letter, rim)| format!(
            "{}.{:02}{letter}{rim}",
            width / 100,
            width % 100
        )),
        (5_u16..=19, 4_u16..=20, select(&["S", "H", "V", "VB"][..]), 10_u16..=23).prop_map(
            |(width, aspect, letter, rim)| format!("{}/{}{letter}{rim} M/C", 10 * width, 5 * aspect)
        ),
    ];
    prop_oneof![
        flexion.boxed(),
        implement.boxed(),
        wide.boxed(),
        low.boxed(),
        by_aspect.boxed(),
        earthmover.boxed(),
        metric_earthmover.boxed(),
        two_widths.boxed(),
        small.boxed(),
        garden.boxed(),
        small_metric.boxed(),
        all_terrain.boxed(),
        heavy.boxed(),
        lettered.boxed(),
    ]
}

const EARTHMOVER: &[&str] = &["25", "29", "33", "35", "39", "45", "49", "51", "57", "63"];

/// Inches with none, one or two decimals.
fn inches(least: u16, most: u16) -> impl Strategy<Value = String> {
    (least..=most, 0_usize..=2, 0_u16..=99).prop_map(|(whole, decimals, rest)| match decimals {
        0 => whole.to_string(),
        1 => format!("{whole}.{}", rest / 10),
        _ => format!("{whole}.{rest:02}"),
    })
}

fn numeric() -> impl Strategy<Value = String> {
    let aspect = select(&["", "/70", "/80"][..]);
    let suffix = select(&["", "C", "LT", "L", " M/C"][..]);
    (inches(2, 29), aspect, select(STRUCTURES), select(RIMS), suffix).prop_map(
        |(width, aspect, structure, rim, suffix)| {
            let one_decimal = width.split_once('.').is_some_and(|(_, decimals)| decimals.len() == 1);
            let zero = if one_decimal && matches!(suffix, "C" | "LT" | " M/C") { "0" } else { "" };
            format!("{width}{zero}{aspect}{structure}{rim}{suffix}")
        },
    )
}

/// A number in the fewest decimals.
fn shortest(number: &str) -> &str {
    if number.contains('.') { number.trim_end_matches('0').trim_end_matches('.') } else { number }
}

/// A number with two decimals, or none if it is whole.
fn two_or_none(number: &str) -> String {
    match shortest(number).split_once('.') {
        Some((whole, decimals)) => format!("{whole}.{decimals:0<2}"),
        None => shortest(number).to_owned(),
    }
}

fn flotation() -> impl Strategy<Value = String> {
    (inches(25, 59), inches(3, 29), select(STRUCTURES), select(RIMS), select(&["", "LT"][..])).prop_map(
        |(overall, width, structure, rim, suffix)| {
            format!("{}x{}{structure}{rim}{suffix}", shortest(&overall), two_or_none(&width))
        },
    )
}

fn alpha_numeric() -> impl Strategy<Value = String> {
    let car = (
        select(&["A", "E", "G", "H", "L", "N"][..]),
        select(&["R", ""][..]),
        select(&["60", "70", "78"][..]),
        select(RIMS),
        select(&["", "LT"][..]),
    )
        .prop_map(|(letter, radial, aspect, rim, suffix)| format!("{letter}{radial}{aspect}-{rim}{suffix}"));
    let motorcycle = (
        select(&["H", "M", "N", "P", "T", "V"][..]),
        select(&["85", "90"][..]),
        select(&["-", "B"][..]),
        select(RIMS),
    )
        .prop_map(|(letter, aspect, separator, rim)| format!("M{letter}{aspect}{separator}{rim}"));
    prop_oneof![car, motorcycle]
}

fn any_family() -> impl Strategy<Value = String> {
    prop_oneof![metric(), no_aspect(), numeric(), flotation(), alpha_numeric(), agricultural(), rare()]
}

/// The parts of a canonical text, longest first: marks of letters, numbers, strokes.
const MARKS: &[&str] = &[
    "ZRF", "M/C", "SR", "HR", "VR", "ZR", "RF", "LT", "HL", "ST", "CP", "IF", "VF", "AT", "HC", "VB", "HB",
    "/", "-", "x",
];

fn parts(text: &str) -> Vec<&str> {
    let (mut parts, mut rest) = (Vec::new(), text);
    while !rest.is_empty() {
        let digits = rest.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(rest.len());
        let mark = MARKS.iter().find(|mark| rest.starts_with(**mark)).map_or(1, |mark| mark.len());
        let (part, behind) = rest.split_at(digits.max(mark));
        parts.push(part);
        rest = behind.trim_start();
    }
    parts
}

/// In how many families a text can be read.
fn readings(text: &str) -> Vec<TireSize> {
    [
        text.parse::<Metric>().ok().map(TireSize::from),
        text.parse::<FullProfile>().ok().map(TireSize::from),
        text.parse::<Numeric>().ok().map(TireSize::from),
        text.parse::<Flotation>().ok().map(TireSize::from),
        text.parse::<AlphaNumeric>().ok().map(TireSize::from),
    ]
    .into_iter()
    .flatten()
    .collect()
}

proptest! {
    #[test]
    fn canonical_texts_are_fixed_points_of_one_family(text in any_family()) {
        let size: TireSize = text.parse().map_err(|error: beadseat::ParseError| TestCaseError::fail(error.show(&text).to_string()))?;
        prop_assert_eq!(size.to_string(), text.clone());
        prop_assert_eq!(readings(&text), vec![size]);
    }

    #[test]
    fn lower_case_reads_the_same(text in any_family()) {
        prop_assert_eq!(text.to_lowercase().parse::<TireSize>(), text.parse::<TireSize>());
    }

    #[test]
    fn white_space_between_the_parts_reads_the_same(
        text in any_family(),
        gaps in prop::collection::vec(select(&["", " ", "\u{a0}", "  "][..]), 12),
    ) {
        let spaced: String =
            parts(&text).iter().zip(gaps.iter().cycle()).flat_map(|(part, gap)| [*part, *gap]).collect();
        prop_assert_eq!(spaced.parse::<TireSize>(), text.parse::<TireSize>(), "{}", spaced);
        prop_assert_eq!(readings(&spaced), readings(&text), "{}", spaced);
    }

    #[test]
    fn decimals_of_sizes_by_overall_diameter_say_nothing(
        overall in inches(25, 59), width in inches(3, 29), rest in select(&["R15LT", "-12", "R16.5LT"][..]),
    ) {
        let as_typed = format!("{overall}x{width}{rest}").parse::<TireSize>();
        let canonical = format!("{}x{}{rest}", shortest(&overall), two_or_none(&width));
        prop_assert!(as_typed.is_ok());
        prop_assert_eq!(as_typed.map(|size| size.to_string()), Ok(canonical.clone()));
        prop_assert_eq!(as_typed, canonical.parse());
        prop_assert_eq!(as_typed, format!("{}x{}{rest}", shortest(&overall), shortest(&width)).parse());
    }

    /// The letter in front of a motorcycle's size says already what `M/C` says, and of a car's contradicts it.
    #[test]
    fn a_load_letter_beside_the_mark_of_motorcycles(text in alpha_numeric()) {
        let size: TireSize = text.parse().unwrap();
        let marked = format!("{text} M/C").parse::<TireSize>();
        prop_assert_eq!(marked.ok(), (size.class() == SizeClass::Motorcycle).then_some(size));
    }

    #[test]
    fn what_is_known_of_a_size_is_in_order(text in any_family()) {
        let size: TireSize = text.parse().unwrap();
        if let Some(d) = size.overall_diameter() {
            prop_assert!(d.min() <= d.nominal() && d.nominal() <= d.max());
            prop_assert_eq!(size.overall_diameter_nominal(), Some(d.nominal()));
        }
        if let Some(width) = size.measuring_rim().and_then(|rim| size.section_width_on(rim)) {
            prop_assert!(width.min() <= width.nominal() && width.nominal() <= width.max());
        }
        let permitted = size.permitted_rim_range();
        prop_assert!(permitted.is_none_or(|range| range.min() <= range.max()));
        prop_assert!(permitted.is_none() || size.estimated_rim_range().is_none());
        let _ = (size.family(), size.class(), size.estimated_rim_range(), size.rolling());
    }

    /// A size of a tractor is one by its own marks alone, and nothing that is not known of it is answered.
    #[test]
    fn agricultural_sizes_are_apart(
        text in agricultural(),
        mark in select(&["P", "LT", "HL", "T", "ST"][..]),
        suffix in select(&["C", "CP", "LT"][..]),
    ) {
        let size: TireSize = text.parse().unwrap();
        prop_assert_eq!(size.class(), SizeClass::Agricultural);
        prop_assert!(size.family().starts_with("agricultural"));
        prop_assert_eq!(size.overall_diameter_nominal(), None);
        prop_assert_eq!((size.measuring_rim(), size.estimated_rim_range()), (None, None));
        prop_assert!(size.rolling().is_none());
        let marked = format!("{mark}{text}");
        prop_assert!(marked.parse::<TireSize>().is_err(), "{}", marked);
        let suffixed = format!("{text}{suffix}");
        if let Ok(other) = suffixed.parse::<TireSize>() {
            prop_assert!(other.class() != SizeClass::Agricultural);
        }
    }

    #[test]
    fn sizes_of_cars_are_never_agricultural(text in prop_oneof![metric(), no_aspect(), flotation(), alpha_numeric()]) {
        prop_assert!(text.parse::<TireSize>().unwrap().class() != SizeClass::Agricultural);
    }

    #[test]
    fn mutated_texts_are_refused_or_of_one_family(text in any_family(), at in any::<prop::sample::Index>(), wild in "[ -~]{0,2}") {
        let at = at.index(text.len());
        let text = format!("{}{wild}{}", &text[..at], &text[at + 1..]);
        match text.parse::<TireSize>() {
            Ok(size) => {
                prop_assert_eq!(size.to_string().parse::<TireSize>(), Ok(size));
                prop_assert_eq!(readings(&text), vec![size]);
            }
            Err(error) => {
                prop_assert!(text.get(error.span()).is_some());
                prop_assert_eq!(readings(&text), vec![], "{}", text);
            }
        }
    }
}
