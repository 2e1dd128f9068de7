//! A document that a caller names for its own limits: which text is one, and where a report shows it.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use beadseat::fitment::Limits;
use beadseat::scenario::Scenario;
use beadseat::{OwnSource, ParseErrorKind};
use scenario::spelled_out;
use serde_json::{Value, json};

const NAMED: &str = "Yard handbook, sheet 7";

/// The wagon, whose growth of track and ground clearance are the caller's own limits.
fn wagon(limits: &Value) -> Scenario {
    let mut document = spelled_out("field-survey-wagon");
    let own = document["limits"].as_object_mut().unwrap();
    own.extend(limits.as_object().unwrap().clone());
    serde_json::from_value(document).unwrap()
}

fn checks(scenario: &Scenario) -> Vec<Value> {
    serde_json::to_value(scenario.assess()).unwrap()["checks"].as_array().unwrap().clone()
}

#[test]
fn which_text_names_a_document() {
    use ParseErrorKind::{Empty, OutOfRange, TooLong};
    let longest = "x".repeat(64);
    for text in ["7", NAMED, "Prüfblatt 12, §3 (±2 %)", &longest] {
        assert_eq!(text.parse::<OwnSource>().unwrap().as_str(), text);
        assert_eq!(text.parse::<OwnSource>().unwrap().to_string(), text);
    }
    let too_long = "x".repeat(65);
    let far_too_long = "é".repeat(5000);
    let rows = [
        ("", Empty, 0..0),
        (" \u{a0}", Empty, 0..0),
        (" sheet", OutOfRange, 0..1),
        ("sheet 7 ", OutOfRange, 7..8),
        ("a\nb", OutOfRange, 1..2),
        ("a\u{1b}[31m", OutOfRange, 1..2),
        ("van\u{202e}", OutOfRange, 3..6),
        ("\u{feff}a", OutOfRange, 0..3),
        (&too_long, TooLong, 64..65),
        (&far_too_long, TooLong, 64..255),
    ];
    for (text, kind, span) in rows {
        let error = text.parse::<OwnSource>().unwrap_err();
        assert_eq!((error.kind(), error.span()), (kind, span), "{text:?}");
    }
}

#[test]
fn a_file_that_names_no_document_is_refused_where_it_stands() {
    for wrong in [json!(""), json!("a\nb"), json!("x".repeat(65)), json!("x".repeat(100_000)), json!(7)] {
        let mut document = spelled_out("field-survey-wagon");
        document["limits"]["source"] = wrong;
        let text = document.to_string();
        let error =
            serde_path_to_error::deserialize::<_, Scenario>(&mut serde_json::Deserializer::from_str(&text))
                .unwrap_err();
        assert_eq!(error.path().to_string(), "limits.source");
        assert!(error.to_string().len() < 300, "{error}");
    }
}

#[test]
fn a_report_names_it_with_the_limits_of_the_caller_and_no_others() {
    let named = wagon(&json!({ "source": NAMED }));
    assert_eq!(named.limits().own_source().unwrap().as_str(), NAMED);
    let unnamed = wagon(&json!({}));
    let mut owned = 0;
    for (with, without) in checks(&named).into_iter().zip(checks(&unnamed)) {
        let is_own = with["citation"] == "the caller's own limit, as given";
        owned += usize::from(is_own);
        assert_eq!(with.get("source"), is_own.then_some(&json!(NAMED)), "{with}");
        // Nothing else changes.
        assert_eq!(without.get("source"), None);
        let mut rest = with;
        rest.as_object_mut().unwrap().remove("source");
        assert_eq!(rest, without);
    }
    assert_eq!(owned, 4, "track and ground clearance of two axles");

    let (with, without) = (named.assess().to_string(), unnamed.assess().to_string());
    let said = |text: &str| text.lines().filter(|line| line.contains("the caller's own limit")).count();
    assert_eq!((said(&with), said(&without)), (1, 1));
    assert!(with.contains(&format!("the caller's own limit: {NAMED}\n")), "{with}");
    assert!(!without.contains(NAMED));
    assert!(without.contains("the caller's own limit, as given\n"));
}

/// Where the limit decides, beside the reason too.
#[test]
fn a_finding_spelled_out_names_it() {
    let text = wagon(&json!({ "source": NAMED, "track_change_percent": 0.2 })).assess().to_string();
    let decides = text.split("\nFindings").next().unwrap();
    let joined = decides.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(joined.contains(&format!("— the caller's own limit: {NAMED}")), "{decides}");
    for line in text.lines() {
        assert!(line.chars().count() <= 100, "{line}");
    }
}

#[test]
fn without_a_limit_of_the_caller_it_is_not_shown() {
    let scenario = {
        let mut document = spelled_out("field-survey-wagon");
        document["limits"] = json!({ "source": NAMED });
        serde_json::from_value::<Scenario>(document).unwrap()
    };
    assert!(checks(&scenario).iter().all(|check| check.get("source").is_none()));
    assert!(!scenario.assess().to_string().contains(NAMED));
}

#[test]
fn it_survives_being_written_and_read() {
    let limits = Limits::default().with_own_source(NAMED.parse().unwrap());
    let written = serde_json::to_value(limits).unwrap();
    assert_eq!(written, json!({ "set": "default", "source": NAMED }));
    assert_eq!(serde_json::from_value::<Limits>(written).unwrap(), limits);
}
