//! The torque and recheck sheet: what is given stands on it, what is not is blank, and no number is invented.
#![cfg(all(feature = "jiff", feature = "serde", feature = "svg"))]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/program.rs"]
mod program;
#[path = "common/scenario.rs"]
mod scenario;

use beadseat::fitment::UnitSystem;
use beadseat::scenario::Scenario;
use program::run;
use scenario::shipped;
use serde_json::{Value, json};

fn root(path: &str) -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

fn four_designations() -> Value {
    let setups =
        |tire: &str, wheel: &str| json!({ "front": { "tire": tire, "wheel": wheel }, "rear": "same" });
    json!({
        "vehicle": { "kind": "passenger" },
        "original": setups("195/65R15 91H", "6Jx15"),
        "proposed": setups("205/55R16 91V", "6.5Jx16"),
    })
}

fn sheet_in(document: &Value, units: UnitSystem) -> [String; 2] {
    let scenario: Scenario = serde_json::from_value(document.clone()).unwrap();
    let report = scenario.assess();
    let sheet = scenario.document(&report).in_units(units).sheet();
    [sheet.to_string(), sheet.in_markdown().to_string()]
}

fn sheet(document: &Value) -> String {
    let [text, _] = sheet_in(document, UnitSystem::Metric);
    text
}

/// A scenario with other values at JSON pointers.
fn with(mut document: Value, values: &[(&str, Value)]) -> Value {
    for (pointer, value) in values {
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        document.pointer_mut(parent).unwrap().as_object_mut().unwrap().insert(key.into(), value.clone());
    }
    document
}

fn scenarios() -> Vec<(&'static str, Value)> {
    let adaptor = json!({ "thickness_mm": 25, "hub_bolt_circle": "5x112", "wheel_bolt_circle": "4x100",
        "thread": "M12x1.5", "fastener_kind": "nut" });
    let wagon = || shipped("field-survey-wagon");
    vec![
        ("four-designations", four_designations()),
        (
            "wagon-with-torque",
            with(wagon(), &[("/proposed/front/torque_nm", json!(123.4)), ("/proposed/rear", json!("same"))]),
        ),
        (
            "truck-on-duals",
            with(shipped("regional-truck-on-duals"), &[("/proposed/rear/torque_nm", json!(600))]),
        ),
        ("motorcycle", shipped("parish-courier-motorcycle")),
        (
            "trailer-on-three-axles",
            with(shipped("tandem-boat-trailer"), &[("/vehicle/rear/axles", json!(2))]),
        ),
        ("wagon-on-adaptors", with(wagon(), &[("/proposed/front/adaptor", adaptor)])),
        (
            "wagon-that-does-not-go-on",
            with(wagon(), &[("/proposed/front/wheel", json!("7.5Jx17 ET42 4x100"))]),
        ),
        ("nothing-proposed", with(four_designations(), &[("/proposed", json!({}))])),
        ("no-vehicle", with(four_designations(), &[("/vehicle", json!({}))])),
    ]
}

/// Run with `BLESS=1` to write the golden sheets anew, and read the difference.
#[test]
fn sheets_are_as_they_were() {
    for (name, document) in &scenarios()[..5] {
        for (kind, text) in ["txt", "md"].into_iter().zip(sheet_in(document, UnitSystem::Metric)) {
            let path = root("tests/golden").join(format!("sheet-{name}.{kind}"));
            if std::env::var_os("BLESS").is_some() {
                std::fs::write(&path, &text).unwrap();
            }
            assert!(
                std::fs::read_to_string(&path).unwrap() == text,
                "{name}.{kind} changed; BLESS=1 rewrites it"
            );
        }
    }
}

#[test]
fn the_sheet_keeps_80_columns_and_ends_no_line_with_a_space() {
    for (name, document) in scenarios() {
        for units in [UnitSystem::Metric, UnitSystem::Us, UnitSystem::Both] {
            let [text, page] = sheet_in(&document, units);
            assert!(
                text.lines().all(|line| line.chars().count() <= 80 && !line.ends_with(' ')),
                "{name}\n{text}"
            );
            for caution in ["say goes before", "clean and dry", "licensed", "common practice, no source"] {
                let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
                assert!(flat(&text).contains(caution) && flat(&page).contains(caution), "{name}: {caution}");
            }
        }
    }
}

fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || c == '.'))
        .filter_map(|word| word.trim_matches('.').parse().ok())
        .collect()
}

fn fields<'a>(text: &'a str, name: &str) -> Vec<&'a str> {
    text.lines().filter_map(|line| line.trim_start().strip_prefix(name)).map(str::trim).collect()
}

#[test]
fn every_stage_is_its_share_of_the_torque_that_is_given() {
    let mut told = 0;
    for torque in [10.0, 110.0, 123.4, 600.0, 1000.0] {
        for name in ["field-survey-wagon", "regional-truck-on-duals", "tandem-boat-trailer"] {
            let document = with(shipped(name), &[("/proposed/front/torque_nm", json!(torque))]);
            let text = sheet(&document);
            let [stages, given] = ["Stages", "Torque"].map(|name| fields(&text, name));
            let stages: Vec<Vec<f64>> =
                stages.iter().map(|line| numbers(line)).filter(|n| n.len() == 6).collect();
            assert!(
                !stages.is_empty()
                    && given.iter().any(|line| line.starts_with(&format!("{torque} N·m, as given")))
            );
            for stage in stages {
                assert_eq!([stage[0], stage[2], stage[4]], [30.0, 60.0, 100.0]);
                for (share, torque_of) in [(stage[0], stage[1]), (stage[2], stage[3]), (stage[4], stage[5])] {
                    assert!((torque_of - torque * share / 100.0).abs() < 0.005 + 1e-9, "{stage:?}");
                }
                told += 1;
            }
        }
    }
    assert!(told >= 15);
}

#[test]
fn the_order_visits_each_fastener_once() {
    for count in 3..=12_u32 {
        let wheel = json!(format!("7.5Jx17 ET42 {count}x150"));
        let document = with(
            four_designations(),
            &[("/proposed/front/wheel", wheel), ("/proposed/front/tire", json!("225/45R17 94W XL"))],
        );
        let text = sheet(&document);
        let order = fields(&text, "Order")[0];
        let (holes, _) = order.split_once(" of the holes").unwrap();
        let mut holes: Vec<u32> = holes.split(' ').map(|hole| hole.parse().unwrap()).collect();
        holes.sort_unstable();
        assert!(holes.into_iter().eq(1..=count), "{text}");
        assert!(fields(&text, "Held by")[0].starts_with(&format!("{count} fasteners")));
    }
}

/// Every number is that of the scenario, of the practice, or of the order, but for those of the cautions.
#[test]
fn no_number_is_invented() {
    for (name, document) in scenarios() {
        let mut known = numbers(&document.to_string());
        known.extend([30.0, 60.0, 100.0, 50.0]);
        known.extend((1..=12).map(f64::from));
        for whose in ["front", "rear"] {
            if let Some(torque) = document["proposed"][whose]["torque_nm"].as_f64() {
                known.extend([0.3, 0.6].map(|share| (torque * share * 100.0).round() / 100.0));
            }
        }
        let [text, page] = sheet_in(&document, UnitSystem::Metric);
        for text in [text, page] {
            let (own, _) = text.split_once("Cautions").unwrap();
            for number in numbers(own) {
                assert!(known.contains(&number), "{name}: {number} in\n{own}");
            }
        }
    }
}

#[test]
fn every_wheel_has_its_row_and_what_is_not_given_its_blank() {
    let rows =
        |text: &str| text.lines().filter(|line| line.contains("  [ ]  ") || line.contains("  -  ")).count();
    for (name, document) in scenarios() {
        let text = sheet(&document);
        let wheels = match name {
            "truck-on-duals" | "trailer-on-three-axles" => 2 + 4,
            "motorcycle" => 2,
            "nothing-proposed" => 0,
            // Each wheel has two joints.
            "wagon-on-adaptors" => 2 * 4,
            _ => 4,
        };
        assert_eq!(rows(&text), wheels, "{name}\n{text}");
        let has_torque = |whose: &str| document["proposed"][whose]["torque_nm"].is_number();
        let is_blank = !["front", "rear"].into_iter().all(has_torque) && name != "nothing-proposed";
        let told = text.contains("the maker's torque: ask") || name == "wagon-with-torque";
        assert!(!is_blank || told, "{name}\n{text}");
    }
    let text = |name: &str| sheet(&scenarios().into_iter().find(|(other, _)| *other == name).unwrap().1);
    assert!(text("motorcycle").contains("a spindle: no star and no stages"));
    assert!(
        fields(&text("motorcycle"), "Order").is_empty() && fields(&text("motorcycle"), "Stages").is_empty()
    );
    assert!(text("wagon-that-does-not-go-on").contains("none: 4 holes do not go on 5, do not fit it"));
    assert!(text("wagon-that-does-not-go-on").contains("says BEYOND: do not fit it like this"));
    assert!(
        text("truck-on-duals").contains("rear right, inner")
            && text("truck-on-duals").contains("one set of nuts")
    );
    assert!(text("trailer-on-three-axles").contains("rear left, axle 2"));
    assert!(text("wagon-on-adaptors").contains("front left: adaptor on hub"));
    assert!(text("nothing-proposed").contains("No setup is proposed."));
    let us = &sheet_in(&four_designations(), UnitSystem::Us)[0];
    assert!(us.contains("________ lbf·ft") && us.contains("set, psi"), "{us}");
}

/// What nobody looked at is said to be assumed, where it stands.
#[test]
fn an_assumed_torque_or_pressure_is_to_be_confirmed() {
    let document = |of: &str| {
        let values = [
            ("/proposed/front/torque_nm", json!(140)),
            ("/proposed/rear", json!("same")),
            ("/sources", json!([{ "of": of, "from": "assumed" }])),
        ];
        with(shipped("field-survey-wagon"), &values)
    };
    let count = |of: &str, told: &str| sheet(&document(of)).matches(told).count();
    // The same setup is behind.
    let torque = "140 N·m, assumed, confirm it;";
    for (of, torques, pressures) in [
        ("proposed.front.torque_nm", 2, 0),
        ("proposed.front", 2, 4),
        ("proposed", 2, 4),
        ("proposed.front.pressure_full_load_kpa", 0, 2),
        ("proposed.rear.torque_nm", 1, 0),
        ("proposed.front.wheel_rating_kg", 0, 0),
        ("vehicle.front.max_load_kg", 0, 0),
    ] {
        assert_eq!((count(of, torque), count(of, "(assumed, confirm it)")), (torques, pressures), "{of}");
        assert_eq!(count(of, "140 N·m, as given;"), 2 - torques, "{of}");
    }
}

#[test]
fn the_example_prints_it() {
    let truck = "examples/scenarios/regional-truck-on-duals.json";
    let said = |flags: &[&str]| {
        let output = run("assess", &[&[truck], flags].concat(), "");
        assert_eq!(output.status.code(), Some(0));
        String::from_utf8(output.stdout).unwrap()
    };
    let [text, page] = sheet_in(&shipped("regional-truck-on-duals"), UnitSystem::Metric);
    assert_eq!(said(&["--sheet"]), text);
    assert_eq!(said(&["--sheet", "--markdown"]), page);
    assert_eq!(
        said(&["--sheet", "--units", "us"]),
        sheet_in(&shipped("regional-truck-on-duals"), UnitSystem::Us)[0]
    );
    assert_eq!(run("assess", &[truck, truck, "--sheet"], "").status.code(), Some(2));
    assert_eq!(run("assess", &[truck, "--sheet", "--json"], "").status.code(), Some(2));
    // A name cannot become a mark of the page.
    let named = with(four_designations(), &[("/vehicle/name", json!("*a* | <b> [c](d)\n# e"))]);
    assert!(sheet_in(&named, UnitSystem::Metric)[1].contains("\\*a\\* \\| \\<b\\> \\[c\\](d)\u{fffd}\\# e"));
}
