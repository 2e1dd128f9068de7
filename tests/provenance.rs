//! Where values come from: what rests on what is assumed, held against the same scenario without those values.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use beadseat::fitment::{Check, CheckId, Reason, Report, Verdict};
use beadseat::scenario::Scenario;
use scenario::{SHIPPED, read, spelled_out};
use serde_json::{Map, Value, json};

/// A scenario in which it is told of some places where their values come from.
fn told(document: &Value, from: &str, of: &[&str]) -> Value {
    let mut document = document.clone();
    document["sources"] = of.iter().map(|of| json!({ "of": of, "from": from })).collect();
    document
}

/// The places of all values, and of the objects in which they stand, as JSON pointers.
fn places(value: &Value, at: &str, all: &mut Vec<String>) {
    for (key, inner) in value.as_object().into_iter().flatten() {
        let place = format!("{at}/{key}");
        places(inner, &place, all);
        if let Some(items) = inner.as_array().filter(|items| items.iter().any(Value::is_object)) {
            all.extend((0..items.len()).map(|n| format!("{place}/{n}")));
        }
        all.push(place);
    }
}

fn key_of(pointer: &str) -> String {
    pointer.strip_prefix('/').unwrap().replace('/', ".")
}

/// The same document without what stands at a place; what cannot be without it goes too, and so do the bodies beside one.
fn without(document: &Value, pointer: &str) -> Value {
    let mut document = document.clone();
    let (parent, key) = pointer.rsplit_once('/').unwrap();
    match document.pointer_mut(parent).unwrap() {
        Value::Array(bodies) => bodies.clear(),
        Value::Object(object) => {
            object.remove(key).unwrap();
            let whole = match key {
                "tire" | "wheel" => true,
                "thickness_mm" => parent.ends_with("adaptor"),
                _ => false,
            };
            if whole {
                return without(&document, parent);
            }
        }
        other => panic!("{pointer} stands in {other}"),
    }
    for part in ["vehicle", "original", "proposed"] {
        let object = document.as_object_mut().unwrap();
        object.entry(part).or_insert_with(|| Value::Object(Map::new()));
    }
    document
}

/// A finding as it must be, told by what it is with a value and without it.
fn expected(with: Check, without: Option<Check>) -> (Verdict, Reason) {
    match (with.verdict(), without) {
        (verdict, Some(without)) if without == with => (verdict, with.reason()),
        (Verdict::Within, _) => (Verdict::Marginal, Reason::Assumed),
        (Verdict::NotApplicable, Some(without)) => (without.verdict(), without.reason()),
        (verdict, _) => (verdict, with.reason()),
    }
}

/// The finding of the same check; of a gap, on whichever end of the axle it is narrower.
fn same_in(report: &Report, check: &Check) -> Option<Check> {
    let gaps =
        [CheckId::OuterClearance, CheckId::InnerClearance, CheckId::UpperClearance, CheckId::WheelGuard];
    let is_same = |other: &Check| {
        other.id() == check.id()
            && (other.position() == check.position()
                || gaps.contains(&check.id()) && other.position().axle() == check.position().axle())
    };
    report.checks().find(is_same)
}

/// Every shipped scenario, and one whose gaps differ from end to end.
fn documents() -> Vec<(String, Value)> {
    let mut all: Vec<_> = SHIPPED.iter().map(|name| ((*name).to_owned(), spelled_out(name))).collect();
    let mut uneven = spelled_out("field-survey-wagon");
    uneven["vehicle"]["front"]["space"]["left"] =
        json!({ "outer_clearance_mm": 25, "inner_clearance_mm": 30, "guard_overhang_mm": 20 });
    uneven["vehicle"]["front"]["space"]["right"] = json!({ "upper_clearance_mm": 40 });
    all.push(("the wagon with uneven gaps".into(), uneven));
    all
}

fn hold(what: &str, plain: &Report, less: &Report, assumed: &Report) -> usize {
    assert_eq!(plain.checks().count(), assumed.checks().count(), "{what}");
    let mut capped = 0;
    for (with, found) in plain.checks().zip(assumed.checks()) {
        let wanted = expected(with, same_in(less, &with));
        assert_eq!((found.verdict(), found.reason()), wanted, "{what}: {} {}", with.position(), with.id());
        assert_eq!((found.id(), found.position()), (with.id(), with.position()));
        if found.verdict() != Verdict::NotAssessed && found.verdict() != Verdict::NotApplicable {
            assert_eq!(
                (found.measured(), found.limit(), found.margin()),
                (with.measured(), with.limit(), with.margin())
            );
        }
        capped += usize::from(found.verdict() != with.verdict());
    }
    assert!(assumed.overall() != Verdict::Within || capped == 0, "{what}");
    capped
}

#[test]
fn every_value_that_is_assumed_caps_what_would_be_another_finding_without_it() {
    for (name, document) in documents() {
        let plain = read(&document).assess();
        let mut all = Vec::new();
        places(&document, "", &mut all);
        let mut capped = 0;
        for pointer in all.iter().filter(|pointer| *pointer != "/vehicle/name") {
            let mut less = without(&document, pointer);
            // An equal setup behind is the same one.
            for part in ["original", "proposed"] {
                let inside = pointer.strip_prefix(&format!("/{part}/front"));
                if let Some(inside) = inside.filter(|_| document[part]["front"] == document[part]["rear"]) {
                    less = without(&less, &format!("/{part}/rear{inside}"));
                }
            }
            let less = read(&less).assess();
            let assumed = read(&told(&document, "assumed", &[&key_of(pointer)])).assess();
            capped += hold(&format!("{name} {pointer}"), &plain, &less, &assumed);
            if !pointer.starts_with("/proposed") {
                let scenario = read(&told(&document, "assumed", &[&key_of(pointer)]));
                assert_eq!(scenario.assess_proposed(scenario.change().proposed), assumed, "{name} {pointer}");
            }
            let measured = read(&told(&document, "measured", &[&key_of(pointer)])).assess();
            assert_eq!(plain, measured, "{name} {pointer}");
        }
        assert!(capped > 20, "{name}: {capped}");
    }
}

#[test]
fn everything_assumed_leaves_nothing_inside_but_what_needs_no_value() {
    for name in SHIPPED {
        let document = spelled_out(name);
        let all: Vec<_> = ["vehicle", "original", "proposed", "use", "limits"]
            .into_iter()
            .filter(|part| document[part].as_object().is_some_and(|part| !part.is_empty()))
            .collect();
        let scenario = read(&told(&document, "assumed", &all));
        let report = scenario.assess();
        let shown = scenario.document(&report);
        for check in report.checks() {
            assert_ne!(check.verdict(), Verdict::Within, "{name}: {check}");
            let rests = shown.assumed(&check).count();
            let is_answer = matches!(check.verdict(), Verdict::Marginal | Verdict::Beyond);
            assert_eq!(rests > 0, is_answer, "{name}: {check}");
        }
    }
}

#[test]
fn a_finding_names_the_values_that_it_rests_on() {
    let document = spelled_out("field-survey-wagon");
    let document = told(&document, "assumed", &["vehicle.top_speed_kmh", "vehicle.front.track_mm"]);
    let scenario = read(&document);
    let report = scenario.assess();
    let shown = serde_json::to_value(scenario.document(&report)).unwrap();
    let of = |id: &str, place: &str| {
        let checks = shown["checks"].as_array().unwrap();
        checks.iter().find(|check| check["id"] == id && check["where"] == place).unwrap().clone()
    };
    let speed = of("speed_symbol", "front");
    assert_eq!(speed["assumed"], json!(["vehicle.top_speed_kmh"]));
    assert_eq!(speed["todo"], "confirm what is assumed: vehicle.top_speed_kmh");
    assert_eq!(of("track", "front")["assumed"], json!(["vehicle.front.track_mm"]));
    assert_eq!(of("bolt_circle", "front")["assumed"], Value::Null);
    assert_eq!(shown["sources"], document["sources"]);
    let text = scenario.document(&report).to_string();
    assert!(text.contains("  * vehicle.front.track_mm: assumed\n"), "{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    let again: Value = serde_json::to_value(&scenario).unwrap();
    assert_eq!(again["sources"], document["sources"]);
    assert_eq!(read(&again), scenario);
}

#[test]
fn what_is_said_of_the_setup_behind_counts_for_it_alone() {
    let mut document = spelled_out("field-survey-wagon");
    document["proposed"]["rear"] = document["proposed"]["front"].clone();
    let told = |of: &[(&str, &str)]| {
        let mut document = document.clone();
        document["sources"] = of.iter().map(|(of, from)| json!({ "of": of, "from": from })).collect();
        read(&document)
    };
    let front = ("proposed.front.wheel_rating_kg", "assumed");
    for (of, rests) in [(&[front][..], 2), (&[front, ("proposed.rear.wheel_rating_kg", "certificate")], 1)] {
        let scenario = told(of);
        let report = scenario.assess();
        let shown = scenario.document(&report);
        let found: Vec<_> = report.checks().filter(|check| check.id() == CheckId::WheelLoad).collect();
        assert_eq!(found.iter().filter(|check| check.reason() == Reason::Assumed).count(), rests);
        assert_eq!(found.iter().filter(|check| shown.assumed(check).next().is_some()).count(), rests);
    }
}

#[test]
fn assumptions_that_stand_in_for_each_other_are_told_together() {
    let mut document = spelled_out("field-survey-wagon");
    document["proposed"]["front"]["max_kpa"] = json!(350);
    let [both, one] = [&["vehicle.front", "proposed.front"][..], &["vehicle.front"][..]]
        .map(|of| read(&told(&document, "assumed", of)).assess());
    for (two, one) in both.checks().zip(one.checks()) {
        let rank = |verdict| match verdict {
            Verdict::Within => 0,
            Verdict::Marginal => 1,
            _ => 2,
        };
        assert!(rank(two.verdict()) >= rank(one.verdict()), "{two} is better than {one}");
    }
}

#[test]
fn what_names_no_value_is_refused_with_the_place_and_what_was_meant() {
    let document = spelled_out("field-survey-wagon");
    for (of, words) in [
        (
            json!(["vehicle.front.trak_mm"]),
            "`vehicle.front.trak_mm`: there is no key `trak_mm` here, is `track_mm` meant?",
        ),
        (json!(["vehicle.front.track_mm.x"]), "`vehicle.front.track_mm.x`: there is no key `x` here"),
        (
            json!(["vehicle.front.hub.stud_length_mm"]),
            "`vehicle.front.hub.stud_length_mm`: nothing is told there",
        ),
        (
            json!(["vehicle.front.space.obstacles[40]"]),
            "`vehicle.front.space.obstacles[40]`: there is no key `40` here",
        ),
        (json!(["vehicle.name"]), "`vehicle.name`: nothing is told there"),
        (json!([""]), "``: there is no key `` here"),
        (json!(["..."]), "`...`: there is no key `` here"),
        (json!(["sources"]), "`sources`: nothing is told there"),
        (
            json!(["vehicle.top_speed_kmh", "vehicle.top_speed_mph"]),
            "`vehicle.top_speed_mph`: told already, in `vehicle.top_speed_kmh`",
        ),
        (
            json!(["vehicle.front", "vehicle.front.track_mm"]),
            "`vehicle.front.track_mm`: told already, in `vehicle.front`",
        ),
        (
            json!(["vehicle.front.track_mm", "vehicle"]),
            "`vehicle`: told already, in `vehicle.front.track_mm`",
        ),
    ] {
        let of: Vec<&str> = of.as_array().unwrap().iter().map(|of| of.as_str().unwrap()).collect();
        let error = serde_json::from_value::<Scenario>(told(&document, "assumed", &of)).unwrap_err();
        assert_eq!(error.to_string(), format!("sources: {words}"));
    }
    let mut wrong = document;
    wrong["sources"] = json!([{ "of": "vehicle.kind", "from": "guessed" }]);
    let error = serde_json::from_value::<Scenario>(wrong.clone()).unwrap_err().to_string();
    assert!(error.contains("expected one of `measured`, `certificate`, `placard`, `assumed`"), "{error}");
    wrong["sources"] = json!([{ "of": null, "from": null }, { "?of": "which", "of": null }]);
    assert!(read(&wrong).provenance().is_empty());
}
