//! Axles beside the front and the rear one: each is judged by itself, and counts for the whole.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use beadseat::fitment::comparison::Comparison;
use beadseat::fitment::derivation::Subject;
use beadseat::fitment::{Check, CheckId, Position, Report, Value as Figure, Verdict};
use beadseat::scenario::Scenario;
use beadseat::units::in_percent;
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

/// Places of the rear axle, and the same of a further one.
const PLACES: [(Position, Position); 3] = [
    (Position::Rear, Position::Further),
    (Position::RearLeft, Position::FurtherLeft),
    (Position::RearRight, Position::FurtherRight),
];

#[test]
fn an_axle_like_the_rear_one_is_judged_like_it() {
    let mut compared = 0;
    for name in SHIPPED {
        let scenario = read(&with_rear_again(name));
        let report = scenario.assess();
        assert_eq!(report, read(&spelled_out(name)).assess(), "{name}");
        let further = scenario.more_axles().next().unwrap();
        let further = further.report();
        for &id in CheckId::ALL {
            for (rear, place) in PLACES {
                // A further axle is never the only one, which alone is asked how it steers.
                let found = further.get(id, place);
                if found.is_none() && id == CheckId::ScrubRadius {
                    continue;
                }
                let told = |check: Check| {
                    (check.verdict(), check.reason(), check.measured(), check.limit(), check.citation())
                };
                assert_eq!(found.map(told), report.get(id, rear).map(told), "{name}: {id}");
                compared += usize::from(found.is_some());
            }
            assert_eq!(further.get(id, Position::Front), None, "{name}: {id}");
        }
        let needed = |report: &Report, place| {
            report.pressures().find(|at| at.position() == place).map(|at| at.normal_load())
        };
        assert_eq!(needed(further, Position::Further), needed(&report, Position::Rear), "{name}");
        let approaches = further.approaches().map(|at| at.lower());
        let of_rear = report.approaches().filter(|at| PLACES.iter().any(|(rear, _)| *rear == at.position()));
        assert!(approaches.eq(of_rear.map(|at| at.lower())), "{name}");
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
        let axle = scenario.more_axles().next().unwrap();
        axle.report().get(id, Position::Further).unwrap().verdict()
    };
    let cases = [
        ("vehicle.top_speed_kmh", CheckId::SpeedSymbol),
        ("more_axles[0].axle.max_load_kg", CheckId::TireLoad),
        ("more_axles[0].axle.hub", CheckId::BoltCircle),
        ("more_axles[0].proposed.wheel_rating_kg", CheckId::WheelLoad),
        ("more_axles[0].axle", CheckId::CentreBore),
        ("more_axles[0]", CheckId::CentreBore),
        ("more_axles", CheckId::CentreBore),
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

#[test]
fn every_number_on_a_further_axle_is_explained_as_on_the_rear_one() {
    let mut explained = 0;
    for name in SHIPPED {
        let scenario = read(&with_rear_again(name));
        let axle = scenario.more_axles().next().unwrap();
        for subject in Subject::all() {
            // How two axles match is told of the front axle and the other one.
            if matches!(
                subject,
                Subject::Check(CheckId::AxleMatch | CheckId::ScrubRadius) | Subject::Effect(_)
            ) {
                continue;
            }
            let rear = scenario.derivations().explain(subject).at(Position::Rear).to_string();
            let further = axle.explain(subject).to_string();
            assert_eq!(further, rear.replace("rear_", "rear ").replace("rear ", "the last one "), "{name}");
            explained += usize::from(!further.is_empty());
        }
    }
    assert!(explained > 200, "{explained}");
}

/// Driven by the same engine, the rear axle and the one behind it must turn alike.
#[test]
fn tires_of_driven_axles_are_matched_with_each_other() {
    let truck = |driven: bool, tire: &str| {
        let mut document = with_rear_again("regional-truck-on-duals");
        document["more_axles"][0]["driven"] = json!(driven);
        document["more_axles"][0]["proposed"]["tire"] = json!(tire);
        let scenario = read(&document);
        let axle = scenario.more_axles().next().unwrap();
        let found = axle.report().get(CheckId::AxleMatch, Position::Vehicle).unwrap();
        (found.verdict(), found.measured())
    };
    // The same size as on the axle in front of it.
    assert_eq!(truck(true, "315/70R22.5 154/150L").0, Verdict::Within);
    // 4.2 % larger than those of the axle in front of it.
    let (verdict, measured) = truck(true, "315/80R22.5 156/150L");
    assert_eq!(verdict, Verdict::Beyond);
    let Some(Figure::Ratio(share)) = measured else { panic!("{measured:?}") };
    assert!((in_percent(share) - 6.0).abs() < 2.5, "{share:?}");
    // Towed along, nothing compares it but a stability control, of which nothing is known.
    assert_eq!(truck(false, "315/80R22.5 156/150L").0, Verdict::NotAssessed);
}

#[test]
fn the_order_of_the_axles_changes_nothing() {
    let mut document = with_rear_again("one-tonne-panel-van");
    let mut other = document["more_axles"][0].clone();
    other["name"] = json!("another");
    other["axle"]["max_load_kg"] = json!(9000);
    let mut reversed = document.clone();
    document["more_axles"].as_array_mut().unwrap().push(other.clone());
    reversed["more_axles"].as_array_mut().unwrap().insert(0, other);
    let [one, two] = [document, reversed].map(|document| written(&read(&document)));
    assert_eq!(
        (&one["overall"], &one["complete"], &one["checks"]),
        (&two["overall"], &two["complete"], &two["checks"])
    );
    assert_eq!(one["more_axles"][0], two["more_axles"][1]);
    assert_eq!(one["more_axles"][1], two["more_axles"][0]);
    assert_eq!(one["overall"], "beyond");
}

#[test]
fn a_sheet_and_a_comparison_have_the_further_axles() {
    let mut document = with_rear_again("field-survey-wagon");
    document["more_axles"][0]["proposed"]["torque_nm"] = json!(118);
    document["sources"] = json!([{ "of": "more_axles[0].proposed.torque_nm", "from": "assumed" }]);
    let scenario = read(&document);
    let report = scenario.assess();
    let sheet = scenario.document(&report).sheet().to_string();
    assert!(sheet.contains("\nAxle: the last one\n") && sheet.contains("further left "), "{sheet}");
    assert!(sheet.contains("118 N·m, assumed, confirm it"), "{sheet}");
    document["more_axles"][0]["axle"]["max_load_kg"] = json!(9000);
    let other = read(&document);
    let reports = [report, other.assess()];
    let [a, b] = [(&scenario, &reports[0]), (&other, &reports[1])]
        .map(|(scenario, report)| scenario.document(report).under(scenario.conditions(), scenario.limits()));
    let compared = Comparison::new([a, b]);
    let json = serde_json::to_value(compared).unwrap();
    assert_eq!(json["overall"], json!({ "a": "within", "b": "beyond" }));
    assert_eq!(json["more_axles"]["b"][0]["overall"], "beyond");
    let text = compared.to_string();
    assert!(text.contains("\n   further axles: the last one beyond, tire load\n"), "{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
}

/// What is missing is named by the key at which it would stand.
#[test]
fn what_is_missing_of_a_further_axle_is_asked_for_there() {
    let mut document = with_rear_again("field-survey-wagon");
    document["more_axles"][0]["axle"]["max_load_kg"] = Value::Null;
    document["more_axles"][0]["axle"]["normal_load_kg"] = Value::Null;
    let json = written(&read(&document));
    let load = json["more_axles"][0]["checks"].as_array().unwrap().iter();
    let load = load.clone().find(|check| check["id"] == "tire_load").unwrap();
    assert_eq!(load["todo"], "find out more_axles[].axle.max_load_kg");
    assert_eq!(json["complete"], false);
    let moves = json["more_axles"][0]["moves"].as_array().unwrap();
    assert!(!moves.is_empty() && moves.iter().all(|found| found["where"] == "further"));
}
