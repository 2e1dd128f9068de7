//! A spare wheel on each axle, case by case, and what must hold of any.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use beadseat::fitment::{CheckId, Position, Setup, Verdict};
use beadseat::scenario::Scenario;
use scenario::{SHIPPED, read, shipped};
use serde_json::{Map, Value, json};

fn root(path: &str) -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// Sets the value at a JSON pointer, or with `null` takes it away.
fn patch(document: &mut Value, pointer: &str, value: &Value) {
    let (parent, key) = pointer.rsplit_once('/').unwrap();
    let parent = document.pointer_mut(parent).unwrap().as_object_mut().unwrap();
    if value.is_null() {
        parent.remove(key).unwrap();
    } else {
        parent.insert(key.into(), value.clone());
    }
}

/// What is written of a scenario for programs.
fn written(scenario: &Scenario) -> Value {
    serde_json::to_value(scenario.document(&scenario.assess())).unwrap()
}

#[test]
fn every_case_comes_out_as_its_source_says() {
    let mut rows = csv::Reader::from_path(root("tests/cases/spare.csv")).unwrap();
    let (mut checked, mut wrong) = (0, Vec::new());
    for row in rows.records() {
        let row = row.unwrap();
        let [case, name, patches, id, place, verdict, measured, reason, source] =
            row.iter().collect::<Vec<_>>().try_into().unwrap();
        assert!(!source.is_empty(), "{case}");
        let mut document = shipped(name);
        for (pointer, value) in &serde_json::from_str::<Map<String, Value>>(patches).unwrap() {
            patch(&mut document, pointer, value);
        }
        let report = written(&read(&document));
        let axles = report["spare"]["axles"].as_array().unwrap().iter();
        let check = axles
            .flat_map(|axle| axle["checks"].as_array().unwrap())
            .find(|check| check["id"] == id && check["where"] == place)
            .unwrap_or_else(|| panic!("{case}: no such check"));
        let is = |number: f64| {
            measured.parse().is_ok_and(|should: f64| (number - should).abs() < 1e-6 * should.abs().max(1.0))
        };
        let same = match &check["measured"] {
            // A case of which no figure is told is about its verdict.
            _ if measured.is_empty() => true,
            Value::Number(number) => is(number.as_f64().unwrap()),
            other => other == measured,
        };
        if check["verdict"] != verdict || !same || !check["reason"].as_str().unwrap().contains(reason) {
            wrong.push(format!("{case}: {check}"));
        }
        checked += 1;
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(checked > 30, "{checked}");
}

/// The same setup carried along as a spare is found on its axle what it was found when it was proposed, but for what is
/// found of each end.
#[test]
fn a_spare_like_what_is_on_the_axle_is_judged_like_it() {
    let mut compared = 0;
    for name in SHIPPED {
        let scenario = read(&shipped(name));
        let report = scenario.assess();
        let proposed = scenario.change().proposed;
        for (axle, setup) in [(Position::Front, proposed.front), (Position::Rear, proposed.rear)] {
            let Some(setup) = setup else { continue };
            let carrying = scenario.clone().with_spare(setup);
            let spare = carrying.spare().unwrap();
            let on = spare.on(axle).unwrap();
            let place = if axle == Position::Front { Position::SpareAtFront } else { Position::SpareAtRear };
            for &id in CheckId::ALL {
                let (Some(own), Some(of_spare)) = (report.get(id, axle), on.get(id, place)) else { continue };
                let figures = |check: beadseat::fitment::Check| {
                    (check.verdict(), check.reason(), check.measured(), check.limit(), check.citation())
                };
                assert_eq!(figures(of_spare), figures(own), "{name}: {id} at {axle}");
                compared += 1;
            }
            let beside = on.get(CheckId::AxleMatch, place).unwrap();
            assert_eq!(beside.verdict(), Verdict::Within, "{name}");
            assert!(
                CheckId::ALL.iter().filter(|id| id.is_vital()).all(|&id| on.get(id, place).is_some()),
                "{name}"
            );
        }
    }
    assert!(compared > 150, "{compared}");
}

#[test]
fn the_worst_is_said_of_the_whole_and_the_change_stays_what_it_was() {
    let setup = Setup::parse("T125/70D16 96M", "4Jx16 ET20 5x114.3 57.1").unwrap();
    let alone = read(&shipped("field-survey-wagon"));
    let carrying = alone.clone().with_spare(setup);
    let report = carrying.assess();
    assert_eq!(report, alone.assess());
    assert_eq!(report.overall(), Verdict::Within);
    let document = carrying.document(&report);
    assert_eq!(document.overall(), Verdict::Beyond);
    assert!(!document.is_complete());
    let json = written(&carrying);
    assert_eq!(
        [&json["overall"], &json["spare"]["overall"], &json["spare"]["overall_without"]],
        ["beyond", "beyond", "within"]
    );
    assert_eq!(written(&alone).get("spare"), None);

    let text = document.to_string();
    assert!(text.starts_with("WITHIN: every limit"), "{text}");
    let line = "Spare wheel: front beyond, bolt circle; rear beyond, bolt circle.";
    assert!(text.lines().any(|found| found == line), "{text}");
    assert!(text.contains("  1. spare at front bolt circle: 5x114.3, must be equal to 5x112"), "{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    let summary = document.summary().to_string();
    assert!(
        summary.contains("\nSpare wheel front beyond, bolt circle; rear beyond, bolt circle\n"),
        "{summary}"
    );
    assert!(
        summary.lines().count() <= 15 && summary.lines().all(|line| line.chars().count() <= 80),
        "{summary}"
    );
}

#[test]
fn a_file_says_what_is_wrong_with_its_spare() {
    let with = |spare: Value| {
        let mut document = shipped("field-survey-wagon");
        document["spare"] = spare;
        serde_json::from_value::<Scenario>(document)
    };
    let whole = json!({ "tire": "T125/70D16 96M", "wheel": "4Jx16" });
    let read = with(whole.clone()).unwrap();
    assert_eq!(
        serde_json::to_value(&read).unwrap()["spare"],
        json!({ "tire": "T125/70-16 96M", "wheel": "4Jx16" })
    );
    assert_eq!(serde_json::from_value::<Scenario>(serde_json::to_value(&read).unwrap()).unwrap(), read);
    let mut weighed = whole;
    weighed["tire_mass_kg"] = 9.into();
    let error = with(weighed).unwrap_err().to_string();
    assert!(error.contains("leave its masses out"), "{error}");
    assert!(with(json!({ "tire": "T125/70D16" })).unwrap_err().to_string().contains("missing field `wheel`"));
    assert!(with(Value::Null).unwrap().spare().is_none());
}

#[test]
fn what_is_assumed_of_a_spare_makes_it_marginal_at_best() {
    let mut document = shipped("field-survey-wagon");
    document["spare"] =
        json!({ "tire": "225/45R17 94W XL", "wheel": "6Jx17 ET42 5x112 57.1", "wheel_rating_kg": 700 });
    let verdict = |document: &Value, id| {
        let on = read(document).spare().unwrap().on(Position::Rear).unwrap();
        on.get(id, Position::SpareAtRear).unwrap().verdict()
    };
    assert_eq!(verdict(&document, CheckId::WheelLoad), Verdict::Within);
    assert_eq!(verdict(&document, CheckId::BoltCircle), Verdict::Within);
    document["sources"] = json!([{ "of": "spare.wheel_rating_kg", "from": "assumed" }]);
    assert_eq!(verdict(&document, CheckId::WheelLoad), Verdict::Marginal);
    assert_eq!(verdict(&document, CheckId::BoltCircle), Verdict::Within);
    document["sources"] = json!([{ "of": "vehicle.rear.hub", "from": "assumed" }]);
    assert_eq!(verdict(&document, CheckId::WheelLoad), Verdict::Within);
    assert_eq!(verdict(&document, CheckId::BoltCircle), Verdict::Marginal);
}
