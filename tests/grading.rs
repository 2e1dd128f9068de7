//! Grades against the rows of `tests/reference/`.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::rim::RimDiameter;
use beadseat::tire::grading::{Grading, GradingExemption, TemperatureGrade, TractionGrade, TreadwearGrade};
use beadseat::units::{mph, percent, ratio};
use beadseat::{Citation, Field, ParseErrorKind, sources};
use common::{Tally, rows};

/// The coefficients in `asphalt > 0.54 and concrete > 0.38`.
fn coefficients(text: &str) -> (f64, f64) {
    let numbers: Vec<f64> = text.split(' ').filter_map(|word| word.parse().ok()).collect();
    (numbers[0], numbers[1])
}

#[test]
fn every_row_of_the_rule_holds() {
    const HAIR: f64 = 1e-9;
    let traction = |a: f64, c: f64| TractionGrade::earned_by(ratio(a), ratio(c)).unwrap();
    const SAID: &str = "said in the documentation, not computed";
    let mut tally = Tally::of("grades");
    for row in &rows("utqg.csv") {
        let value = &row["value"];
        match &row["item"] {
            "treadwear_control" => {
                assert_eq!(TreadwearGrade::parse(value).unwrap().life_of_control(), ratio(1.0))
            }
            "treadwear_ratio" => {
                assert_eq!(TreadwearGrade::new(160).unwrap().life_of_control(), percent(160.0));
            }
            "treadwear_step" => {
                let step: u16 = value.parse().unwrap();
                assert!((1..10_000).all(|n| TreadwearGrade::new(n).is_some() == (n % step == 0)));
            }
            "treadwear_digits" => assert!(TreadwearGrade::new(1000).is_some()),
            "treadwear_base" => {
                let miles: f64 = value.split(" miles").next().unwrap().replace(' ', "").parse().unwrap();
                let projected = beadseat::units::inches(63_360.0) * miles;
                assert_eq!(TreadwearGrade::earned_by_mileage(projected).unwrap().number(), 100);
            }
            item @ ("traction_AA" | "traction_A" | "traction_B") => {
                let (a, c) = coefficients(value);
                let grade = *[TractionGrade::AA, TractionGrade::A, TractionGrade::B]
                    .iter()
                    .find(|grade| item == format!("traction_{}", grade.name()))
                    .unwrap();
                assert_eq!(grade.exceeds(), Some((ratio(a), ratio(c))));
                assert_eq!(traction(a + HAIR, c + HAIR), grade);
                assert!(traction(a, c + HAIR) < grade && traction(a + HAIR, c) < grade);
            }
            "traction_C" => {
                let (a, c) = coefficients(value);
                assert_eq!((traction(a, 1.0), traction(1.0, c)), (TractionGrade::C, TractionGrade::C));
                assert_eq!(TractionGrade::C.exceeds(), None);
            }
            "temperature_A" => {
                assert_eq!(TemperatureGrade::A.endured_speed(), mph(115.0));
                assert_eq!(TemperatureGrade::A.wheel_turns_per_minute(), 575);
            }
            "temperature_B" => {
                assert_eq!(TemperatureGrade::B.wheel_turns_per_minute(), 500);
                assert_eq!(TemperatureGrade::earned_by(mph(114.9)), Some(TemperatureGrade::B));
            }
            "temperature_C" => {
                assert_eq!(TemperatureGrade::earned_by(mph(99.9)), Some(TemperatureGrade::C));
            }
            "temperature_C_minimum_speed" => {
                assert_eq!(TemperatureGrade::C.endured_speed(), mph(85.0));
                assert_eq!(TemperatureGrade::earned_by(mph(84.9)), None);
            }
            "temperature_rpm_to_mph" => assert_eq!(TemperatureGrade::C.wheel_turns_per_minute(), 85 * 5),
            "format_molded" => assert_eq!(Grading::parse(value).unwrap().to_string(), "200 A A"),
            "format_order" => assert_eq!(Grading::parse("300 A A").unwrap().treadwear().number(), 300),
            "format_grade_set_treadwear" => assert!(TreadwearGrade::new(0).is_none()),
            "format_grade_set_traction" => {
                for grade in value.split('|') {
                    let text = format!("300 {grade} B");
                    assert_eq!(Grading::parse(&text).unwrap().traction().name(), grade);
                }
            }
            "format_grade_set_temperature" => {
                for grade in value.split('|') {
                    let text = format!("300 AA {grade}");
                    assert_eq!(Grading::parse(&text).unwrap().temperature().name(), grade);
                }
                assert!(Grading::parse("300 A AA").is_err());
            }
            "scope_exempt_rim" => {
                let exempt = |code: &str| GradingExemption::of_rim(RimDiameter::parse(code).unwrap());
                assert_eq!(exempt("12"), Some(GradingExemption::SmallRim));
                assert_eq!(exempt("13"), None);
            }
            "scope_exempt_limited" => {
                assert!(GradingExemption::of_production(15_000, 35_000, 10_000).is_some());
                for over in [(15_001, 35_000, 10_000), (15_000, 35_001, 10_000), (15_000, 35_000, 10_001)] {
                    assert!(GradingExemption::of_production(over.0, over.1, over.2).is_none());
                }
            }
            // Kinds of tire, how the tests are run, and what the numbers are not good for: said in the
            // documentation, not computed.
            "scope_applies"
            | "scope_exempt_deep_tread"
            | "scope_exempt_spare"
            | "scope_not_lt"
            | "treadwear_not_cross_brand"
            | "treadwear_test"
            | "treadwear_base_course_wear_rate"
            | "traction_AA_added"
            | "traction_test"
            | "temperature_wheel_diameter"
            | "temperature_validity" => {
                tally.left(&row["item"], SAID);
                continue;
            }
            other => panic!("a row without a test: {other}"),
        }
        tally.checked(row);
    }
    tally.close(21, &[(SAID, 11)]);
}

#[test]
fn the_marking_cases_hold() {
    let mut tally = Tally::of("marking cases of grades");
    for row in rows("marking_cases.csv") {
        let Some(case) = row["input"].strip_prefix("UTQG") else { continue };
        let expected = &row["expected"];
        if let Some(case) = case.strip_prefix(": asphalt") {
            let (a, c) = coefficients(case);
            let grade = TractionGrade::earned_by(ratio(a), ratio(c)).unwrap();
            assert_eq!(grade.name(), expected.split(' ').next().unwrap());
        } else if case == " treadwear 150 versus 100" {
            // 150 is not a grade; 300 against 200 is the same.
            let life = TreadwearGrade::new(300).unwrap().life_against(TreadwearGrade::new(200).unwrap());
            assert_eq!(life, ratio(1.5));
            assert!(expected.starts_with("1.5 times"));
        } else if let Some(raw) = case.strip_prefix(" raw percentage ") {
            let grade = TreadwearGrade::earned_by(percent(raw.parse().unwrap())).unwrap();
            assert!(expected.starts_with(&grade.to_string()), "{raw}");
        } else if let Some(text) = case.strip_prefix(" read ") {
            assert_eq!(Grading::parse(text.trim_matches('"')).unwrap().to_string(), expected);
        } else {
            // A kind of tire, not computed: `GradingExemption::Spare`.
            assert_eq!((case, expected), (" on a T-type spare", "not required"));
            continue;
        }
        tally.checked(&row);
    }
    tally.close(8, &[]);
}

#[test]
fn every_multiple_of_the_step_earns_itself() {
    for n in (20..10_000).step_by(20) {
        let earned = |p: f64| TreadwearGrade::earned_by(percent(p)).unwrap().number();
        assert_eq!(earned(f64::from(n)), n);
        assert_eq!(earned(f64::from(n) + 18.9), n);
    }
    for wrong in [f64::NAN, f64::INFINITY, -20.0, 19.999, 10_000.0] {
        assert!(TreadwearGrade::earned_by(percent(wrong)).is_err(), "{wrong}");
    }
    for wrong in [f64::NAN, -0.1, 2.1] {
        assert!(TractionGrade::earned_by(ratio(wrong), ratio(0.5)).is_err(), "{wrong}");
        assert!(TractionGrade::earned_by(ratio(0.5), ratio(wrong)).is_err(), "{wrong}");
    }
    for nonsense in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -115.0] {
        assert_eq!(TemperatureGrade::earned_by(mph(nonsense)), None);
    }
}

#[test]
fn spellings_are_read() {
    for text in [
        "400 AA A",
        "400AAA",
        "400 AAA",
        "400/AA/A",
        "400-AA-A",
        "utqg: 400, aa, a",
        "TREADWEAR 400 AA A",
        "Treadwear:400 Traction:AA Temperature:A",
        "400 traction aa temperature a",
        " 400\u{a0}AA\u{a0}A ",
    ] {
        assert_eq!(Grading::parse(text).unwrap().to_string(), "400 AA A", "{text}");
    }
    assert_eq!(Grading::parse("400AB").unwrap().to_string(), "400 A B");
    assert_eq!(Grading::parse("400AAB").unwrap().to_string(), "400 AA B");
    assert_eq!(Grading::parse("60 C C").unwrap().to_string(), "60 C C");
}

#[track_caller]
fn refuses(text: &str, kind: ParseErrorKind, field: Field, part: &str) {
    let error = Grading::parse(text).unwrap_err();
    assert_eq!((error.kind(), error.field(), &text[error.span()]), (kind, field, part), "{text}");
}

#[test]
fn an_error_names_the_grade_and_the_place() {
    use ParseErrorKind::{Ambiguous, Missing, OutOfRange, Trailing};
    refuses("410 A A", OutOfRange, Field::Treadwear, "410");
    refuses("0 A A", OutOfRange, Field::Treadwear, "0");
    refuses("12340 A A", OutOfRange, Field::Treadwear, "12340");
    refuses("TREADWEAR", Missing, Field::Treadwear, "");
    refuses("400", Missing, Field::Traction, "");
    refuses("400 D A", Missing, Field::Traction, "D");
    refuses("400 A", Missing, Field::Temperature, "");
    refuses("400 AA", Ambiguous, Field::Traction, "AA");
    refuses("400AA -", Ambiguous, Field::Traction, "AA -");
    refuses("400 B AA", OutOfRange, Field::Temperature, "AA");
    refuses("400 AA AA", OutOfRange, Field::Temperature, "AA");
    refuses("400 TRACTION A TEMPERATURE ALL", OutOfRange, Field::Temperature, "ALL");
    refuses("400 A A 91V", Trailing, Field::Text, "91V");
}

#[test]
fn a_grading_is_small_and_its_sources_are_listed() {
    assert_eq!(size_of::<Grading>(), 4);
    let remembered: Vec<bool> = [
        Citation::GRADING_SCOPE,
        Citation::TREADWEAR_GRADE,
        Citation::TREADWEAR_ROUNDING,
        Citation::TRACTION_GRADE,
        Citation::TEMPERATURE_GRADE,
    ]
    .map(|citation| {
        assert!(sources().any(|source| source == citation));
        citation.is_from_memory()
    })
    .to_vec();
    assert_eq!(remembered, [false; 5]);
}
