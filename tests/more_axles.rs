//! Axles beside the front and the rear one: each is judged by itself, and counts for the whole.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use beadseat::fitment::{CheckId, Position, Verdict};
use beadseat::scenario::Scenario;
use scenario::{SHIPPED, spelled_out};
use serde_json::{Value, json};

fn read(document: &Value) -> Scenario {
    serde_json::from_value(document.clone()).unwrap_or_else(|error| panic!("{error}: {document}"))
}

fn written(scenario: &Scenario) -> Value {
    serde_json::to_value(scenario.document(&scenario.assess())).unwrap()
}

/// With a further axle that is the rear one again.
fn with_rear_again(name: &str) -> Value {
    let mut document = spelled_out(name);
    let driven = matches!(document["vehicle"]["drive"].as_str(), Some("rear" | "all"));
    document["more_axles"] = json!([{
        "name": "the last one",
        "axle": document["vehicle"]["rear"],
        "original": document["original"]["rear"],
        "proposed": document["proposed"]["rear"],
        "driven": driven,
    }]);
    document
}

#[test]
fn an_axle_like_the_rear_one_is_judged_like_it() {
    let mut compared = 0;
    for name in SHIPPED {
        let scenario = read(&with_rear_again(name));
        let report = scenario.assess();
        assert_eq!(report, read(&spelled_out(name)).assess(), "{name}");
        let further = *scenario.more_axles().next().unwrap().report();
        for &id in CheckId::ALL {
            for place in [Position::Rear, Position::RearLeft, Position::RearRight] {
                // A further axle is never the only one, which alone is asked how it steers.
                let found = further.get(id, place);
                if found.is_none() && id == CheckId::ScrubRadius {
                    continue;
                }
                assert_eq!(found, report.get(id, place), "{name}: {id}");
                compared += usize::from(found.is_some());
            }
            assert_eq!(further.get(id, Position::Front), None, "{name}: {id}");
        }
        assert!(further.pressures().eq(report.pressures().filter(|at| at.position() == Position::Rear)));
        assert_eq!(read(&serde_json::to_value(&scenario).unwrap()), scenario, "{name}");
    }
    assert!(compared > 150, "{compared}");
}

#[test]
fn the_worst_of_the_axles_is_said_of_the_whole() {
    let name = "field-survey-wagon";
    let whole = with_rear_again(name);
    let before = written(&read(&whole));
    assert_eq!([&before["overall"], &before["more_axles"][0]["overall"]], ["within", "within"]);
    assert_eq!(written(&read(&spelled_out(name))).get("more_axles"), None);

    let cases = [
        // What is patched, the verdict on the whole, whether it is complete.
        ("/more_axles/0/axle/max_load_kg", json!(9000), "beyond", true),
        ("/more_axles/0/axle/hub/bolt_circle", json!("5x120"), "beyond", true),
        ("/more_axles/0/axle", Value::Null, "marginal", false),
        ("/more_axles/0/proposed", Value::Null, "marginal", false),
        ("/more_axles/0/proposed/tire", json!("225/45-17 94W"), "beyond", true),
    ];
    for (pointer, value, overall, complete) in cases {
        let mut document = whole.clone();
        *document.pointer_mut(pointer).unwrap() = value;
        let scenario = read(&document);
        let json = written(&scenario);
        assert_eq!((&json["overall"], &json["complete"]), (&json!(overall), &json!(complete)), "{pointer}");
        assert_eq!(json["more_axles"][0]["overall"], overall, "{pointer}");
        assert_eq!(json["checks"], before["checks"], "{pointer}");
        let report = scenario.assess();
        let document = scenario.document(&report);
        let (text, summary) = (document.to_string(), document.summary().to_string());
        let line = format!("\nFurther axles: the last one {overall}");
        assert!(text.contains(&line) && text.contains("\nFurther axle\n  the last one: "), "{text}");
        assert!(summary.contains(&format!("\nMore axles  the last one {overall}")), "{summary}");
        assert!(summary.lines().count() <= 15, "{summary}");
        assert!(text.lines().chain(summary.lines()).all(|line| line.chars().count() <= 80), "{text}");
    }
}

#[test]
fn what_is_assumed_makes_no_further_axle_better_than_marginal() {
    let mut document = with_rear_again("field-survey-wagon");
    let verdict = |document: &Value, id| {
        let scenario = read(document);
        let report = *scenario.more_axles().next().unwrap().report();
        report.get(id, Position::Rear).unwrap().verdict()
    };
    let cases = [
        ("vehicle.top_speed_kmh", CheckId::SpeedSymbol),
        ("more_axles[0].axle.max_load_kg", CheckId::TireLoad),
        ("more_axles[0].axle.hub", CheckId::BoltCircle),
        ("more_axles[0].proposed.wheel_rating_kg", CheckId::WheelLoad),
    ];
    for (of, id) in cases {
        document["sources"] = Value::Null;
        assert_eq!(verdict(&document, id), Verdict::Within, "{of}");
        document["sources"] = json!([{ "of": of, "from": "assumed" }]);
        assert_eq!(verdict(&document, id), Verdict::Marginal, "{of}");
    }
}

#[test]
fn a_file_says_what_is_wrong_with_its_axles() {
    let axle = |name: &str| json!({ "name": name, "axle": { "max_load_kg": 900 } });
    let cases = [
        (json!([axle(" ")]), "needs a name"),
        (json!([axle("a"), axle("a")]), "two further axles are named"),
        (json!([{ "axle": { "max_load_kg": 900 } }]), "missing field `name`"),
        (json!([axle("a"), axle("b"), axle("c"), axle("d"), axle("e")]), "more than 4 further axles"),
        (json!([{ "name": "a", "colour": 1 }]), "unknown field `colour`"),
        (json!({}), "a list of further axles"),
    ];
    for (axles, wrong) in cases {
        let mut document = spelled_out("field-survey-wagon");
        document["more_axles"] = axles;
        let error = serde_json::from_value::<Scenario>(document).unwrap_err().to_string();
        assert!(error.contains(wrong), "{error}");
    }
}
