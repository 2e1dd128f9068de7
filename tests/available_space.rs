//! The room beside and above a wheel: rows worked by hand, what it lacks, and where it stops short of a report.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::fitment::measure::Input;
use beadseat::fitment::space::AvailableSpace;
use beadseat::fitment::{CheckId, Position, Reason, Setup, Verdict};
use beadseat::scenario::Scenario;
use beadseat::units::{Length, mm};
use beadseat::uom::si::length::millimeter;
use serde_json::{Map, Value, json};

/// The wagon with some facts set, or with `null` removed.
fn wagon(patches: &Value) -> Scenario {
    let path =
        std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/scenarios/field-survey-wagon.json");
    let mut document: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    for (pointer, value) in patches.as_object().unwrap() {
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        let parent: &mut Map<String, Value> = document.pointer_mut(parent).unwrap().as_object_mut().unwrap();
        match value {
            Value::Null => drop(parent.remove(key).unwrap()),
            value => drop(parent.insert(key.into(), value.clone())),
        }
    }
    serde_json::from_value(document).unwrap()
}

fn room(scenario: &Scenario) -> AvailableSpace<'_> {
    AvailableSpace::front(scenario.vehicle(), scenario.change().original.front.unwrap(), scenario.limits())
}

fn setup(tire: &str, wheel: &str, spacer: f64) -> Setup {
    Setup::new(tire.parse().unwrap(), wheel.parse().unwrap()).with_spacer(mm(spacer)).unwrap()
}

fn close(a: Length, millimetres: f64) -> bool {
    (a.get::<millimeter>() - millimetres).abs() < 1e-9
}

/// The original is 213 mm wide at ET46: 152.5 mm inboard and 60.5 mm outboard of the hub face. Of 18 and 30 mm,
/// 6.35 must stay and 1.5 may be wrong: 162.65 and 82.65 mm at most.
#[test]
fn widths_worked_by_hand() {
    let rows = [
        (json!({}), "7.5Jx17 ET42", 0.0, Some((241.3, CheckId::InnerClearance))),
        (json!({}), "7.5Jx17 ET30", 0.0, Some((225.3, CheckId::OuterClearance))),
        (json!({}), "7.5Jx17 ET47", 5.0, Some((241.3, CheckId::InnerClearance))),
        // 9 in and two flanges of 13 mm are 254.6 mm, more than twice the 120.65 mm inboard.
        (json!({}), "9Jx17 ET42", 0.0, None),
        (json!({ "/limits/clearance_mm": 10 }), "7.5Jx17 ET42", 0.0, Some((234.0, CheckId::InnerClearance))),
        // Less than the limit was left before: none of it may go.
        (
            json!({ "/vehicle/front/space/inner_clearance_mm": 4 }),
            "6.5Jx16 ET40",
            0.0,
            Some((222.0, CheckId::InnerClearance)),
        ),
    ];
    for (patches, wheel, hub_spacing, expected) in &rows {
        let widest = room(&wagon(patches)).max_width(&wheel.parse().unwrap(), mm(*hub_spacing)).unwrap();
        let is = widest.map(|end| (end.value(), end.check().unwrap()));
        let same = match (is, expected) {
            (Some((width, check)), Some((expected, by))) => close(width, *expected) && check == *by,
            (is, expected) => is.is_none() && expected.is_none(),
        };
        assert!(same, "{patches} {wheel}: {is:?}, not {expected:?}");
    }
    assert_eq!(rows.len(), 6);
}

#[test]
fn diameters_worked_by_hand() {
    let rows = [
        // 629 mm as measured, and twice what 55 mm leave over 6.35 and 1.5.
        (json!({}), 723.3),
        (json!({ "/vehicle/front/space/uncertainty_mm": null }), 726.3),
        (json!({ "/limits/clearance_mm": 0 }), 736.0),
        // Not measured: a 205/55R16 is 625.22 mm at least; worn by 9 - 6.5 mm, 5 mm less.
        (json!({ "/vehicle/front/space/measured_tire": null }), 719.52),
        (json!({ "/vehicle/front/space/measured_tire": { "tread_depth_mm": 6.5 } }), 714.52),
    ];
    for (patches, expected) in &rows {
        let largest = room(&wagon(patches)).max_diameter().unwrap();
        assert!(close(largest, *expected), "{patches}: {largest:?}, not {expected}");
    }
    assert_eq!(rows.len(), 5);
}

/// A 225/45R17 on 7.5 in is 225 mm and at most 4 % wider: 117 mm each way.
#[test]
fn insets_worked_by_hand() {
    use CheckId::{InnerClearance, OuterClearance, Track};
    let wide = json!({ "/vehicle/front/space/outer_clearance_mm": 60 });
    let with = |key: &str, value: Value| {
        let mut patches = wide.clone();
        patches.as_object_mut().unwrap().insert(key.into(), value);
        patches
    };
    let rows = [
        (json!({}), 0.0, Some((("ET34.35", Some(OuterClearance)), ("ET45.65", Some(InnerClearance))))),
        (json!({}), 5.0, Some((("ET39.35", Some(OuterClearance)), ("ET50.65", Some(InnerClearance))))),
        // 2 % of 1538 mm, half on each side.
        (wide.clone(), 0.0, Some((("ET30.62", Some(Track)), ("ET45.65", Some(InnerClearance))))),
        (
            with("/limits", json!({ "set": "south_australia" })),
            0.0,
            Some((("ET33", Some(Track)), ("ET45.65", Some(InnerClearance)))),
        ),
        (
            with("/limits/track_change_mm", json!(10)),
            0.0,
            Some((("ET41", Some(Track)), ("ET45.65", Some(InnerClearance)))),
        ),
        // In pairs a larger inset takes room on both sides: outboard from 152.5 + 22.15 mm too, which is more.
        (
            json!({ "/vehicle/front/wheels_per_side": 2 }),
            0.0,
            Some((("ET-300", None), ("ET45.65", Some(InnerClearance)))),
        ),
        (json!({ "/vehicle/front/space/outer_clearance_mm": 8 }), 0.0, None),
    ];
    for (patches, spacer, expected) in &rows {
        let found = room(&wagon(patches)).insets(&setup("225/45R17 94W XL", "7.5Jx17", *spacer)).unwrap();
        let is = found.map(|r| [r.min(), r.max()].map(|end| (end.value().to_string(), end.check())));
        let expected =
            expected.map(|(least, most)| [least, most].map(|(inset, check)| (inset.to_string(), check)));
        assert_eq!(is, expected, "{patches}");
    }
    assert_eq!(rows.len(), 7);
}

#[test]
fn what_is_lacking_is_named() {
    use Input::{
        InnerClearance, Kind, MotorcycleRules, OriginalDimensions, OriginalInset, OuterClearance, Track,
        UpperClearance,
    };
    let space = |key: &str| json!({ (format!("/vehicle/front/space/{key}_clearance_mm")): null });
    // Of diameter, width, insets.
    let rows: [(Value, [&[Input]; 3]); 9] = [
        (json!({}), [&[], &[], &[]]),
        (json!({ "/vehicle/kind": null }), [&[Kind], &[Kind], &[Kind]]),
        (
            json!({ "/vehicle/kind": "motorcycle" }),
            [&[MotorcycleRules], &[MotorcycleRules], &[MotorcycleRules]],
        ),
        (space("upper"), [&[UpperClearance], &[], &[]]),
        (space("inner"), [&[], &[InnerClearance], &[InnerClearance]]),
        (space("outer"), [&[], &[OuterClearance], &[OuterClearance]]),
        (json!({ "/vehicle/front/track_mm": null }), [&[], &[], &[Track]]),
        (json!({ "/original/front/wheel": "6.5Jx16" }), [&[], &[OriginalInset], &[OriginalInset]]),
        (
            json!({ "/vehicle/front/space": {}, "/vehicle/front/track_mm": null, "/original/front/tire": "600/70R34" }),
            [
                &[UpperClearance, OriginalDimensions],
                &[InnerClearance, OuterClearance, OriginalDimensions],
                &[Track, InnerClearance, OuterClearance, OriginalDimensions],
            ],
        ),
    ];
    for (patches, expected) in &rows {
        let scenario = wagon(patches);
        let room = room(&scenario);
        let proposed = setup("225/45R17 94W XL", "7.5Jx17 ET42", 0.0);
        let lacking = [
            room.max_diameter().err(),
            room.max_width(&proposed.wheel(), mm(0.0)).err(),
            room.insets(&proposed).err(),
        ];
        for (lacking, expected) in lacking.iter().zip(expected) {
            let inputs: Vec<Input> = lacking.iter().flat_map(|l| l.inputs()).collect();
            assert_eq!(inputs, *expected, "{patches}");
            assert!(lacking.is_none_or(|l| l.position() == Position::Front));
        }
    }
    let scenario = wagon(&json!({}));
    let room = room(&scenario);
    let no_inset = room.max_width(&"7.5Jx17".parse().unwrap(), mm(0.0)).unwrap_err();
    assert_eq!(no_inset.inputs().collect::<Vec<_>>(), [Input::WheelInset]);
    assert_eq!(no_inset.to_string(), "not known: proposed.front.wheel (inset)");
}

/// A room is for something new; the report knows that the original fitted.
#[test]
fn the_unchanged_original_is_kept_though_its_tolerance_is_not() {
    let patches = json!({
        "/vehicle/front/space/measured_tire": null,
        "/vehicle/front/space/inner_clearance_mm": 7,
        "/vehicle/front/space/outer_clearance_mm": 7,
        "/proposed/front": { "tire": "205/55R16 91V", "wheel": "6.5Jx16 H2 ET46 5x112 57.1" },
    });
    let scenario = wagon(&patches);
    let check = scenario.assess().get(CheckId::InnerClearance, Position::Front).unwrap();
    assert_eq!((check.verdict(), check.reason()), (Verdict::Within, Reason::Unchanged));
    assert_eq!(room(&scenario).insets(&scenario.change().proposed.front.unwrap()), Ok(None));
}
