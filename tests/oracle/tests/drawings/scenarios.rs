//! Every corner of the invented vehicles, of vehicles of which little is known, and of what is left of either when
//! something is taken away: each is drawn, and its figures are those of the report.

use beadseat::draw::Scene;
use beadseat::fitment::moves::MoveId;
use beadseat::fitment::space::{CornerAtRest, GapKind, SweptCorner};
use beadseat::fitment::{CheckId, Position, Reason, UnitSystem, Value};
use beadseat::scenario::Scenario;
use beadseat::tire::condition::VehicleSide;
use beadseat::units::mm;
use roxmltree::Document;

use crate::sheet::{Lettering, hold, is_column, texts};

/// Nothing but four designations, with insets and without.
const BARE: [&str; 2] = [
    r#"{ "vehicle": {},
         "original": { "front": { "tire": "205/55R16", "wheel": "6.5Jx16 ET46" }, "rear": "same" },
         "proposed": { "front": { "tire": "225/45R17", "wheel": "7.5Jx17 ET42" }, "rear": "same" } }"#,
    r#"{ "vehicle": { "kind": "passenger" },
         "original": { "front": { "tire": "205/55R16", "wheel": "6.5Jx16" }, "rear": "same" },
         "proposed": { "front": { "tire": "225/45R17", "wheel": "7.5Jx17" }, "rear": "same" } }"#,
];

/// Of every invented vehicle, and of those of which little is known.
fn files() -> Vec<String> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/scenarios");
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    assert!(files.len() >= 7);
    let read = |path: &std::path::PathBuf| std::fs::read_to_string(path).unwrap();
    files.iter().map(read).chain(BARE.map(str::to_owned)).collect()
}

const CORNERS: [(Position, VehicleSide); 4] = [
    (Position::FrontLeft, VehicleSide::Left),
    (Position::FrontRight, VehicleSide::Right),
    (Position::RearLeft, VehicleSide::Left),
    (Position::RearRight, VehicleSide::Right),
];

/// A corner as it is drawn, with the texts of its sheet one behind the other.
fn draw(
    scenario: &Scenario,
    (place, side): (Position, VehicleSide),
    units: UnitSystem,
) -> (String, CornerAtRest) {
    let (vehicle, change, report) = (scenario.vehicle(), scenario.change(), scenario.assess());
    let is_rear = matches!(place, Position::RearLeft | Position::RearRight);
    let at_rest = if is_rear { CornerAtRest::rear } else { CornerAtRest::front };
    let corner = at_rest(vehicle, change, &report, side).unwrap();
    assert_eq!(corner.position(), place);
    let moving = if is_rear { SweptCorner::rear } else { SweptCorner::front };
    let moving = moving(vehicle, change, scenario.limits(), side).ok();
    let labels: Vec<&str> = corner.bodies().map(|body| body.name()).collect();
    let mut scene = Scene::at_rest(&corner).with_labels(&labels).in_units(units);
    if let Some(moving) = &moving {
        scene = scene.moving(moving.corner());
    }
    let worst = report.approaches().find(|approach| approach.position() == place);
    let nearest = worst.and_then(|worst| moving.as_ref()?.nearest_at(&worst));
    assert_eq!(nearest.is_some(), worst.is_some(), "{place:?}");
    if let (Some(nearest), Some(worst)) = (&nearest, worst) {
        // No position is nearer than the worst case, and this is that position.
        assert!(worst.lower() <= nearest.lower(), "{place:?}");
        scene = scene.with_swept(nearest).with_least_clearance(worst.lower());
    }
    let sheet = scene.sheet().to_string();
    hold(&sheet, 2, labels.len()).unwrap();
    (sheet, corner)
}

fn said(texts: &[Lettering<'_>]) -> String {
    texts.iter().map(|text| text.text).collect::<Vec<_>>().join(" ")
}

/// A length as a report prints it, without its unit.
fn figure(value: Value) -> String {
    let told = value.to_string();
    told.split(' ').next().unwrap().replace('-', "−")
}

fn move_name(id: MoveId) -> Option<&'static str> {
    Some(match id {
        MoveId::Inset => "inset ",
        MoveId::Backspacing => "backspacing ",
        MoveId::RimOuterFace => "rim outer face ",
        MoveId::RimInnerFace => "rim inner face ",
        MoveId::TireOuterFace => "tire outer face ",
        MoveId::TireInnerFace => "tire inner face ",
        MoveId::SectionWidth => "width ",
        MoveId::SectionHeight => "section height ",
        MoveId::OverallDiameter => "Ø",
        MoveId::RideHeight => "hub above the road ",
        // No lengths of a corner.
        _ => return None,
    })
}

/// The dimensions are what the report says moves, and what is left of the gaps.
#[test]
fn every_corner_is_drawn_with_the_figures_of_its_report() {
    let (mut moved, mut left, mut swept, mut pairs) = (0, 0, 0, 0);
    for text in files() {
        let scenario: Scenario = serde_json::from_str(&text).unwrap();
        let report = scenario.assess();
        for corner in CORNERS {
            let (sheet, rest) = draw(&scenario, corner, UnitSystem::Metric);
            let document = Document::parse(&sheet).unwrap();
            let said = said(&texts(&document));
            for found in rest.moves() {
                let (Some(name), Some(after)) = (move_name(found.id()), found.after()) else { continue };
                let was =
                    found.before().map(|before| format!(" (was {})", figure(before))).unwrap_or_default();
                let told = format!("{name}{}{was}", figure(after));
                let is_of_hub =
                    matches!(found.id(), MoveId::Inset | MoveId::Backspacing) || name.ends_with("face ");
                assert_eq!(said.contains(&told), rest.is_placed() || !is_of_hub, "{told} in {said}");
                moved += 1;
            }
            let axle = if matches!(corner.0, Position::FrontLeft | Position::FrontRight) {
                Position::Front
            } else {
                Position::Rear
            };
            for gap in rest.gaps() {
                let name = match gap.kind() {
                    GapKind::Outer => "outer gap ",
                    GapKind::Inner => "inner gap ",
                    _ => "gap above ",
                };
                let check = report.get(gap.kind().check(), axle).unwrap();
                let told = match check.measured() {
                    Some(measured) if check.reason() == Reason::Unchanged => figure(measured) + ", unchanged",
                    Some(measured) => figure(measured) + " at worst",
                    None => format!("was {}, not judged", figure(Value::Length(gap.measured()))),
                };
                assert!(said.contains(&format!("{name}{told}")), "{name}{told} in {said}");
                left += 1;
            }
            // The gap between the tires of a pair.
            let spacing = report.get(CheckId::DualSpacing, axle).and_then(|check| check.measured());
            let told = spacing.map(|gap| format!("between the tires {}", figure(gap)));
            assert_eq!(said.contains("between the tires"), told.is_some(), "{said}");
            assert!(told.is_none_or(|told| said.contains(&told)), "{said}");
            pairs += usize::from(spacing.is_some());
            if let Some(worst) = report.approaches().find(|approach| approach.position() == corner.0) {
                let told = format!("least clearance {} mm at worst, ", figure(Value::Length(worst.lower())));
                assert_eq!(said.matches(&told).count(), 2, "{told} in {said}");
                swept += 1;
            }
        }
    }
    assert!(moved >= 300 && left >= 60 && swept >= 12 && pairs >= 2, "{moved} {left} {swept} {pairs}");
}

/// What is left of a gap is that of the end with less of it, and on the other as much more as was measured there.
#[test]
fn each_end_is_drawn_with_its_own_gap() {
    let mut scenario: serde_json::Value = serde_json::from_str(&files()[0]).unwrap();
    let even: Scenario = serde_json::from_value(scenario.clone()).unwrap();
    let even = even.assess().get(CheckId::OuterClearance, Position::Front).and_then(|gap| gap.measured());
    let Some(Value::Length(on_right)) = even else { panic!("{even:?}") };
    let [on_left, on_right] = [on_right - mm(6.0), on_right].map(|left| figure(Value::Length(left)));
    scenario["vehicle"]["front"]["space"]["left"] = serde_json::json!({ "outer_clearance_mm": 24 });
    let scenario: Scenario = serde_json::from_value(scenario).unwrap();
    for (corner, told) in [
        (CORNERS[0], format!("outer gap {on_left} at worst (was 24)")),
        (CORNERS[1], format!("outer gap {on_right} at worst (was 30)")),
    ] {
        let (sheet, _) = draw(&scenario, corner, UnitSystem::Metric);
        let said = said(&texts(&Document::parse(&sheet).unwrap()));
        assert!(said.contains(&told), "{told} in {said}");
    }
}

/// A front wheel is seen from the front, a rear wheel from the rear, each on the side of the vehicle that it is on.
#[test]
fn every_corner_is_seen_from_its_own_end_of_the_vehicle() {
    let scenario: Scenario = serde_json::from_str(&files()[0]).unwrap();
    for (corner, end, outboard, is_forward_down) in [
        (CORNERS[0], "front", 157.0, true),
        (CORNERS[1], "front", 53.0, true),
        (CORNERS[2], "rear", 53.0, false),
        (CORNERS[3], "rear", 157.0, false),
    ] {
        let (sheet, rest) = draw(&scenario, corner, UnitSystem::Metric);
        let document = Document::parse(&sheet).unwrap();
        let texts = texts(&document);
        assert!(said(&texts).contains(&format!("at ride height, from the {end} ")));
        let lip = 1 + rest.bodies().position(|body| body.name() == "arch_lip").unwrap();
        let lips: Vec<f64> = texts
            .iter()
            .filter(|text| is_column(text.at[0]) && text.text == format!("{lip} arch_lip"))
            .map(|text| text.at[0])
            .collect();
        assert_eq!(lips, [outboard; 2], "{corner:?}");
        // The arrow that stands before its word.
        let word = sheet.find(">forward<").unwrap();
        let arrow = sheet[..word].rfind("<polygon").unwrap();
        let points = sheet[arrow..].split('"').nth(1).unwrap();
        let down: Vec<f64> =
            points.split(' ').map(|point| point.split_once(',').unwrap().1.parse().unwrap()).collect();
        assert_eq!(down[0] > down[1], is_forward_down, "{corner:?}");
    }
}

/// Keys without which less is known.
const REMOVALS: [&[&str]; 12] = [
    &["vehicle", "front", "steering"],
    &["vehicle", "front", "travel"],
    &["vehicle", "rear", "travel"],
    &["vehicle", "rear", "axle_type"],
    &["vehicle", "front", "space", "inner_clearance_mm"],
    &["vehicle", "front", "space", "obstacles"],
    &["vehicle", "front", "brake", "envelope_radius_mm"],
    &["vehicle", "front", "brake", "caliper_face_mm"],
    &["vehicle", "kind"],
    &["vehicle", "front"],
    &["vehicle", "rear"],
    &["proposed", "front", "barrel_radius_mm"],
];

#[test]
fn what_is_not_known_is_not_drawn_and_the_rest_is() {
    let mut drawn = 0;
    for text in files() {
        let whole: serde_json::Value = serde_json::from_str(&text).unwrap();
        for keys in REMOVALS {
            let mut less = whole.clone();
            let (last, path) = keys.split_last().unwrap();
            let place = path.iter().try_fold(&mut less, |place, key| place.get_mut(key));
            let removed = place.and_then(|place| place.as_object_mut()?.remove(*last));
            let Some(_) = removed else { continue };
            let scenario: Scenario = serde_json::from_value(less).unwrap();
            for corner in CORNERS {
                draw(&scenario, corner, UnitSystem::Both);
                drawn += 1;
            }
        }
        // A spacer, and the spokes behind it.
        let mut more = whole.clone();
        if let Some(front) = more["proposed"]["front"].as_object_mut() {
            front.insert("spacer_mm".into(), 15.into());
            front.insert("spoke_back_mm".into(), 40.into());
        }
        let scenario: Scenario = serde_json::from_value(more).unwrap();
        for corner in CORNERS {
            draw(&scenario, corner, UnitSystem::Us);
            drawn += 1;
        }
    }
    assert!(drawn >= 200, "{drawn}");
}

/// What was measured from the hub has no place where it is not known where the wheels stand.
#[test]
fn without_an_inset_nothing_of_the_hub_is_drawn() {
    let mut scenario: serde_json::Value = serde_json::from_str(&files()[0]).unwrap();
    let of_hub = ["wheel guard", "caliper face", "outer gap", "inner gap", "brake, radius", "Ø312"];
    for (wheel, is_drawn) in [("7.5Jx17 H2 ET42 5x112 57.1", true), ("7.5Jx17 H2 5x112 57.1", false)] {
        scenario["proposed"]["front"]["wheel"] = wheel.into();
        let (sheet, _) =
            draw(&serde_json::from_value(scenario.clone()).unwrap(), CORNERS[0], UnitSystem::Metric);
        let document = Document::parse(&sheet).unwrap();
        let said = said(&texts(&document));
        for name in of_hub {
            assert_eq!(said.contains(name), is_drawn, "{name}: {said}");
        }
        assert!(said.contains("gap above"), "{said}");
    }
}

/// How wide a tire is called is no figure beside how wide another is.
#[test]
fn a_width_by_name_stands_beside_no_width_by_rule() {
    let setup = |tire: &str, wheel: &str| serde_json::json!({ "front": { "tire": tire, "wheel": wheel } });
    let (by_rule, by_name) = (setup("205/55R16", "6.5Jx16"), setup("150/70R17 M/C", "4.00x17"));
    for (original, told) in
        [(by_rule, "nominal width 150 "), (by_name.clone(), "nominal width 150 (was 150) ")]
    {
        let scenario = serde_json::json!({ "vehicle": {}, "original": original, "proposed": by_name });
        let (sheet, _) = draw(&serde_json::from_value(scenario).unwrap(), CORNERS[0], UnitSystem::Metric);
        let document = Document::parse(&sheet).unwrap();
        let said = said(&texts(&document));
        assert!(said.contains(told), "{told}: {said}");
    }
}
