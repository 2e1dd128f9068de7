//! Axles beside the front and the rear one: each is judged by itself, and counts for the whole.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use beadseat::fitment::comparison::{Comparison, Ground};
use beadseat::fitment::derivation::Subject;
use beadseat::fitment::{CheckId, Position, UnitSystem, Verdict};
use beadseat::scenario::Scenario;
use scenario::{SHIPPED, shipped, spelled_out};
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
        (json!([{ "name": null }, axle("a")]), "stands before this one: take it out"),
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

/// A truck with two driven axles behind: as one of them turns otherwise, they work against each other.
#[test]
fn a_driven_axle_is_held_against_the_other_driven_one() {
    let mut document = spelled_out("timber-truck-with-tag-axle");
    document["vehicle"]["stability_control"] = json!(false);
    let larger = json!("315/80R22.5 156/150L");
    document["more_axles"][0]["proposed"]["tire"] = larger;
    let found = |document: &Value| {
        let scenario = read(document);
        let axle = scenario.more_axles().next().unwrap();
        let json = written(&scenario)["more_axles"][0].clone();
        let check = axle.report().get(CheckId::AxleMatch, Position::Vehicle).unwrap();
        let todo = json["checks"].as_array().unwrap().iter().find(|row| row["id"] == "axle_match").unwrap();
        (check.verdict(), axle.beside().unwrap().to_owned(), todo["todo"].as_str().unwrap().to_owned())
    };
    assert_eq!(found(&document).0, Verdict::Within, "nothing drives it, and nothing compares it");
    document["more_axles"][0]["driven"] = json!(true);
    let (verdict, beside, _) = found(&document);
    assert_eq!((verdict, beside.as_str()), (Verdict::Beyond, "rear"));
    document["more_axles"][0]["driven"] = Value::Null;
    let (verdict, _, todo) = found(&document);
    assert_eq!(verdict, Verdict::NotAssessed);
    assert!(todo.contains("more_axles[0].driven"), "{todo}");
    // Two further axles are held against each other too.
    document["more_axles"][0]["driven"] = json!(true);
    document["more_axles"][0]["proposed"] = document["proposed"]["rear"].clone();
    let mut last = document["more_axles"][0].clone();
    last["name"] = json!("last axle");
    last["proposed"]["tire"] = json!("315/80R22.5 156/150L");
    document["vehicle"]["drive"] = json!("front");
    document["proposed"]["front"] = document["original"]["front"].clone();
    document["more_axles"].as_array_mut().unwrap().push(last);
    assert_eq!(found(&document).0, Verdict::Beyond);
}

#[test]
fn an_axle_is_on_the_sheet_in_explanations_and_in_comparisons() {
    let mut document = spelled_out("timber-truck-with-tag-axle");
    document["sources"] = json!([{ "of": "more_axles[0].proposed.pressure_kpa", "from": "assumed" }]);
    let scenario = read(&document);
    let report = scenario.assess();
    let whole = scenario.document(&report);
    let sheet = whole.sheet().to_string();
    let of_axle = sheet.split("\nAxle: tag axle\n").nth(1).unwrap();
    assert!(of_axle.contains("\n  tag axle left ") && of_axle.contains("\n  tag axle right "), "{sheet}");
    assert!(of_axle.contains("780 kPa (assumed, confirm it)"), "{sheet}");
    assert!(sheet.contains("says BEYOND"), "{sheet}");
    assert!(sheet.lines().all(|line| line.chars().count() <= 80), "{sheet}");

    let axle = scenario.more_axles().next().unwrap();
    for check in axle.report().checks() {
        let told = axle.derivations().check(check.id(), check.position(), &mut |_| {});
        assert_eq!(told.and_then(|told| told.measured()), check.measured(), "{check}");
    }
    let all: String = Subject::all().map(|subject| axle.derivations().explain(subject).to_string()).collect();
    assert!(all.contains("rear tire load (finding)") && !all.contains("front tire load"), "{all}");
    assert!(all.contains("more_axles[0].axle.travel") && !all.contains("vehicle.rear"), "{all}");

    let mut other = document.clone();
    other["more_axles"][0]["proposed"]["pressure_kpa"] = json!(900);
    let second = read(&other);
    let of_second = second.assess();
    let proposals = [
        whole.under(scenario.conditions(), scenario.limits()),
        second.document(&of_second).under(second.conditions(), second.limits()),
    ];
    let comparison = Comparison::new(proposals);
    assert_eq!(comparison.differs_in().count(), 0);
    let text = comparison.to_string();
    let of_axle = text.split("\nFurther axle: tag axle\n").nth(1).unwrap();
    assert!(of_axle.contains("inflation             beyond"), "{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    let json = serde_json::to_value(comparison).unwrap();
    let of_axle = &json["more_axles"][0];
    assert_eq!([&of_axle["overall"]["a"], &of_axle["overall"]["b"]], ["beyond", "marginal"]);
    let differing = of_axle["checks"].as_array().unwrap().iter().filter(|pair| pair["differs"] == true);
    assert!(differing.clone().any(|pair| pair["id"] == "inflation"), "{of_axle}");
    // Another axle under the name, or none, is another vehicle.
    other["more_axles"][0]["axle"]["max_load_kg"] = json!(7000);
    assert_eq!(differences(&document, &other), [Ground::MoreAxles]);
    other["more_axles"] = json!([]);
    assert_eq!(differences(&document, &other), [Ground::MoreAxles]);
}

fn differences(a: &Value, b: &Value) -> Vec<Ground> {
    let without_sources = |document: &Value| {
        let mut document = document.clone();
        document["sources"] = Value::Null;
        read(&document)
    };
    let scenarios = [a, b].map(without_sources);
    let reports = scenarios.each_ref().map(Scenario::assess);
    let proposal = |n: usize| {
        let scenario = &scenarios[n];
        scenario.document(&reports[n]).under(scenario.conditions(), scenario.limits())
    };
    Comparison::new([proposal(0), proposal(1)]).differs_in().collect()
}

#[test]
fn the_shortest_of_every_report_has_room_for_its_axles() {
    for name in SHIPPED {
        for document in [shipped(name), with_rear_again(name)] {
            let scenario = read(&document);
            let report = scenario.assess();
            for units in UnitSystem::ALL {
                let summary = scenario.document(&report).in_units(*units).summary().to_string();
                assert!(summary.lines().count() <= 15, "{name}: {summary}");
                assert!(summary.lines().all(|line| line.chars().count() <= 80), "{name}: {summary}");
                for axle in scenario.more_axles() {
                    assert!(summary.contains(&format!("More axles  {}", axle.name())), "{summary}");
                }
            }
        }
    }
}

/// What is patched on a further axle is found there and nowhere else, and what is said of the vehicle holds there too.
#[test]
fn pairs_gaps_and_loads_are_those_of_the_axle() {
    let document = spelled_out("timber-truck-with-tag-axle");
    let before = written(&read(&document));
    let cases = [
        ("/more_axles/0/axle/wheels_per_side", json!(2), "dual_spacing"),
        ("/more_axles/0/axle/space/outer_clearance_mm", json!(5), "outer_clearance"),
        ("/more_axles/0/axle/max_load_kg", json!(9000), "tire_load"),
        ("/more_axles/0/proposed/wheel_rating_kg", json!(3000), "wheel_load"),
        (
            "/more_axles/0/axle/steering",
            json!({ "scrub_radius_mm": 10, "kingpin_inclination_deg": 8 }),
            "scrub_radius",
        ),
        ("/vehicle/top_speed_kmh", json!(130), "speed_symbol"),
    ];
    for (pointer, value, id) in cases {
        let mut document = document.clone();
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        document.pointer_mut(parent).unwrap()[key] = value;
        let after = written(&read(&document));
        let of = |report: &Value| {
            let rows = report["more_axles"][0]["checks"].as_array().unwrap().iter();
            rows.filter(|row| row["id"] == id).cloned().collect::<Vec<_>>()
        };
        assert_ne!(of(&after), of(&before), "{pointer}");
        if pointer.starts_with("/more_axles") {
            assert_eq!(after["checks"], before["checks"], "{pointer}");
        }
    }
}

/// The spare wheel is judged in front and behind; on an axle beside them it is not, and nothing reads as if it were.
#[test]
fn a_spare_wheel_is_open_on_further_axles() {
    let mut document = with_rear_again("field-survey-wagon");
    document["spare"] = document["proposed"]["front"].clone();
    for key in ["tire_mass_kg", "wheel_mass_kg"] {
        document["spare"].as_object_mut().unwrap().remove(key);
    }
    let with = written(&read(&document));
    document.as_object_mut().unwrap().remove("more_axles");
    let without = written(&read(&document));
    assert_eq!((&without["overall"], &without["complete"]), (&json!("within"), &json!(true)));
    assert_eq!((&with["overall"], &with["complete"]), (&json!("marginal"), &json!(false)));
    assert_eq!((&with["spare"]["overall"], &with["spare"]["complete"]), (&json!("marginal"), &json!(false)));
    assert_eq!(with["spare"]["overall_without"], "within");
    document = with_rear_again("field-survey-wagon");
    document["spare"] = json!({ "tire": "225/45R17 94W XL", "wheel": "7.5Jx17 ET42 5x112 66.6" });
    let scenario = read(&document);
    let text = scenario.document(&scenario.assess()).to_string();
    assert!(text.replace('\n', " ").contains("not judged on further axles"), "{text}");
    assert!(text.contains("\n- not judged on the axles beside front and rear\n"), "{text}");
}
