//! An axle beside the front and the rear one is judged as the rear one is.

use beadseat::fitment::{Change, CheckId, Conditions, Limits, Position, Report, TractionClass, Verdict};
use beadseat::scenario::Scenario;
use beadseat::vehicle::Vehicle;
use proptest::prelude::*;
use serde_json::{Value, json};

fn written(vehicle: Vehicle, change: Change, limits: Limits) -> Value {
    let day =
        Conditions::new().with_date("2026-11-25".parse().unwrap()).with_traction_device(TractionClass::S);
    serde_json::to_value(Scenario::new(vehicle, change, day, limits)).unwrap()
}

fn read(document: &Value) -> Scenario {
    serde_json::from_value(document.clone()).unwrap_or_else(|error| panic!("{error}: {document}"))
}

/// An axle of a document, as a further one.
fn again(document: &Value, axle: &str, name: &str) -> Value {
    let setup = |which: &str| match &document[which][axle] {
        Value::String(_) => document[which]["front"].clone(),
        own => own.clone(),
    };
    let drive = document["vehicle"]["drive"].as_str();
    let mut further = json!({ "name": name });
    for (key, value) in [
        ("axle", document["vehicle"][axle].clone()),
        ("original", setup("original")),
        ("proposed", setup("proposed")),
        ("driven", drive.map(|drive| drive == axle || drive == "all").into()),
    ] {
        if !value.is_null() {
            further[key] = value;
        }
    }
    further
}

fn has(report: &Report, axle: Position) -> bool {
    report.get(CheckId::BeadDiameter, axle).is_some()
}

proptest! {
    #[test]
    fn an_axle_like_the_rear_one_is_judged_like_it(
        vehicle in super::vehicle(),
        change in super::change(),
        limits in super::limits(),
    ) {
        let mut document = written(vehicle, change, limits);
        let alone = read(&document);
        document["more_axles"] = json!([]);
        prop_assert_eq!(&read(&document), &alone);
        document["more_axles"] = json!([again(&document, "rear", "the last one")]);
        let scenario = read(&document);
        let report = scenario.assess();
        prop_assert_eq!(report, alone.assess());
        if has(&report, Position::Rear) {
            let further = scenario.more_axles().next().unwrap();
            for &id in CheckId::ALL {
                for place in [Position::Rear, Position::RearLeft, Position::RearRight] {
                    let found = further.report().get(id, place);
                    // A further axle is never the only one, which alone is asked how it steers.
                    if found.is_some() || id != CheckId::ScrubRadius {
                        prop_assert_eq!(found, report.get(id, place), "{}", id);
                    }
                }
            }
            if has(&report, Position::Front) {
                let found = further.report().get(CheckId::AxleMatch, Position::Vehicle);
                prop_assert_eq!(found, report.get(CheckId::AxleMatch, Position::Vehicle), "beside {:?}", further.beside());
            }
            let pressures = report.pressures().filter(|found| found.position() == Position::Rear);
            prop_assert!(further.report().pressures().eq(pressures));
        }
    }

    #[test]
    fn the_whole_is_as_the_worst_axle_in_whatever_order(
        vehicle in super::vehicle(),
        [change, other] in [super::change(), super::change()],
        limits in super::limits(),
    ) {
        let elsewhere = written(vehicle.clone(), other, limits);
        let mut document = written(vehicle, change, limits);
        let mut axles = vec![again(&document, "front", "a"), again(&elsewhere, "rear", "b"), again(&elsewhere, "front", "c")];
        let mut seen = Vec::new();
        for _ in 0..3 {
            axles.rotate_left(1);
            document["more_axles"] = axles.clone().into();
            let scenario = read(&document);
            let report = scenario.assess();
            let whole = scenario.document(&report);
            let further = || scenario.more_axles().map(|axle| axle.report());
            let worst = further().map(|report| report.overall()).fold(report.overall(), |a, b| {
                if a == Verdict::Beyond || b == Verdict::Beyond { Verdict::Beyond }
                else if a == Verdict::Within { b } else { a }
            });
            prop_assert_eq!(whole.overall(), worst);
            prop_assert_eq!(whole.is_complete(), report.is_complete() && further().all(|report| report.is_complete()));
            let mut each: Vec<_> = scenario.more_axles().map(|axle| {
                let checks: Vec<_> = axle.report().checks().map(|check| (check.id(), check.position(), check.verdict(), check.measured())).collect();
                (axle.name().to_owned(), checks)
            }).collect();
            each.sort_by(|a, b| a.0.cmp(&b.0));
            seen.push((whole.overall(), whole.is_complete(), each));
        }
        prop_assert_eq!(&seen[0], &seen[1]);
        prop_assert_eq!(&seen[1], &seen[2]);
    }
}
