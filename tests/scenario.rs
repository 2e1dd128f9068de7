//! Scenario files that are wrong: each is refused with its place.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "../examples/common/mod.rs"]
mod common;

use serde_json::{Value, json};

fn wagon() -> Value {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/scenarios/field-survey-wagon.json");
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// The wagon with the value at a pointer replaced, on one line.
fn with(pointer: &str, value: Value) -> String {
    let mut document = wagon();
    let (parent, key) = pointer.rsplit_once('/').unwrap();
    document.pointer_mut(parent).unwrap().as_object_mut().unwrap().insert(key.into(), value);
    document.to_string()
}

fn without(pointer: &str) -> String {
    let mut document = wagon();
    let (parent, key) = pointer.rsplit_once('/').unwrap();
    document.pointer_mut(parent).unwrap().as_object_mut().unwrap().remove(key).unwrap();
    document.to_string()
}

#[track_caller]
fn refused(text: &str, place: &str, message: &str) {
    let error = common::parse_scenario(text).expect_err("was accepted").to_string();
    assert!(error.starts_with(&format!("at {place}, line 1, column ")), "{error}");
    assert!(error.contains(message), "{error}");
    assert!(error.chars().count() < 300, "{error}");
    assert!(!error.chars().any(char::is_control), "{error}");
}

#[test]
fn a_good_one_is_read() {
    assert!(common::parse_scenario(&wagon().to_string()).is_ok());
}

#[test]
fn missing_field() {
    refused(&without("/proposed/front/tire"), "proposed.front", "missing field `tire`");
    refused(&without("/vehicle"), ".", "missing field `vehicle`");
}

#[test]
fn unknown_field() {
    refused(&with("/vehicle/front/max_load_t", json!(1)), "vehicle.front", "unknown field `max_load_t`");
    refused(&with("/vehicle/front/max_load_in", json!(1)), "vehicle.front", "unknown field `max_load_in`");
    refused(
        &with("/vehicle/front/hub/bolt_circle_in", json!(1)),
        "vehicle.front.hub",
        "unknown field `bolt_circle_in`",
    );
    refused(&with("/colour", json!("red")), ".", "unknown field `colour`");
    refused(&with("/limits/speed", json!(1)), "limits", "unknown field `speed`");
}

#[test]
fn field_given_twice() {
    refused(r#"{"use": {"towing": true, "towing": false}}"#, "use", "duplicate field `towing`");
    refused(r#"{"vehicle": {"name": "a", "name": "b"}}"#, "vehicle", "duplicate field `name`");
    refused(r#"{"vehicle": {}, "vehicle": {}}"#, ".", "duplicate field `vehicle`");
}

#[test]
fn one_quantity_in_two_units() {
    let both = "`max_load_kg` and `max_load_lb` say the same in two units";
    refused(&with("/vehicle/front/max_load_lb", json!(2000)), "vehicle.front", both);
    let both = "`pressure_psi` and `pressure_kpa` say the same in two units";
    refused(r#"{"proposed": {"front": {"pressure_psi": 36, "pressure_kpa": 250}}}"#, "proposed.front", both);
    let both = "`pressure_psi` and `pressure_bar` say the same in two units";
    refused(r#"{"proposed": {"front": {"pressure_psi": 36, "pressure_bar": 2.5}}}"#, "proposed.front", both);
    let twice = "duplicate field `pressure_kpa`";
    refused(r#"{"proposed": {"front": {"pressure_psi": 36, "pressure_psi": 36}}}"#, "proposed.front", twice);
}

#[test]
fn out_of_range_in_another_unit() {
    let text = r#"{"vehicle": {"front": {"track_in": 200}}}"#;
    refused(text, "vehicle.front.track_in", "track_mm 5080 mm is not in 500 to 3000 mm");
    refused(&text.replace("200", "\"wide\""), "vehicle.front.track_in", "invalid type: string");
    let spigot = r#"{"vehicle": {"front": {"hub": {"spigot_in": 0.5}}}}"#;
    refused(spigot, "vehicle.front.hub.spigot_in", "spigot_mm 12.7 mm is not in 20 to 400 mm");
}

#[test]
fn negative_load() {
    let text = with("/vehicle/front/max_load_kg", json!(-1060));
    refused(&text, "vehicle.front.max_load_kg", "max_load_kg -1060 kg is not in 10 to 60000 kg");
}

#[test]
fn not_a_number() {
    let text = with("/vehicle/front/max_load_kg", json!(1060)).replacen("1060", "NaN", 1);
    refused(&text, "vehicle.front.max_load_kg", "expected value");
    let text = with("/vehicle/front/max_load_kg", json!(1060)).replacen("1060", "1e999", 1);
    refused(&text, "vehicle.front.max_load_kg", "number out of range");
    refused(&with("/vehicle/front/max_load_kg", json!("heavy")), "vehicle.front.max_load_kg", "invalid type");
}

#[test]
fn bolt_circle_that_cannot_be() {
    let text = with("/vehicle/front/hub/bolt_circle", json!("5x57"));
    refused(&text, "vehicle.front.hub.bolt_circle", "bolt circle is out of range");
    let text = with("/proposed/front/wheel", json!("7Jx17 ET42 5x57"));
    refused(&text, "proposed.front.wheel", "bolt circle is out of range");
}

#[test]
fn positional_array_for_an_object() {
    refused(
        &with("/vehicle/front/hub", json!(["5x112", 57.1])),
        "vehicle.front.hub",
        "invalid type: sequence",
    );
    refused(
        &with("/proposed/front", json!(["205/55R16", "6.5Jx16"])),
        "proposed.front",
        "invalid type: sequence",
    );
    refused("[1, 2]", ".", "invalid type: sequence");
}

#[test]
fn trailing_text() {
    let text = wagon().to_string() + " {}";
    refused(&text, "end of file", "trailing characters");
}

#[test]
fn larger_than_one_mebibyte() {
    let path = std::env::temp_dir().join(format!("beadseat-large-{}.json", std::process::id()));
    std::fs::write(&path, wagon().to_string() + &" ".repeat(1 << 20)).unwrap();
    let error = common::read_scenario(path.to_str().unwrap()).unwrap_err();
    std::fs::remove_file(&path).unwrap();
    assert!(error.ends_with("larger than 1 MiB"), "{error}");
}

#[test]
fn file_that_is_not_there_or_not_text() {
    assert!(common::read_scenario("no such file.json").is_err());
    let path = std::env::temp_dir().join(format!("beadseat-bytes-{}.json", std::process::id()));
    std::fs::write(&path, [0xff, 0xfe, b'{']).unwrap();
    let error = common::read_scenario(path.to_str().unwrap()).unwrap_err();
    std::fs::remove_file(&path).unwrap();
    assert!(error.contains("UTF-8"), "{error}");
}

#[test]
fn same_as_nothing() {
    let text = without("/proposed/front");
    refused(&text, "proposed", "`rear` is the same as `front`, which is not there");
    refused(&with("/proposed/rear", json!("likewise")), "proposed.rear", "unknown variant `likewise`");
}

#[test]
fn words_and_counts_that_are_not_known() {
    refused(&with("/vehicle/kind", json!("tank")), "vehicle.kind", "unknown variant `tank`");
    refused(
        &with("/vehicle/front/wheels_per_side", json!(3)),
        "vehicle.front.wheels_per_side",
        "a count from 1 to 2",
    );
    refused(&with("/vehicle/front/axles", json!(0)), "vehicle.front.axles", "a count from 1 to 4");
    refused(&with("/limits/set", json!("everywhere")), "limits.set", "unknown variant `everywhere`");
    refused(&with("/use/date", json!("2026-02-30")), "use.date", "day is out of range");
}

#[test]
fn rim_ranges_that_cannot_be() {
    for range in [json!([8.5, 7.0]), json!([7.1, 8.5]), json!([7.0]), json!([0, 300]), json!([-7, 8])] {
        refused(&with("/proposed/front/rim_range_in", range), "proposed.front.rim_range_in", "");
    }
}

#[test]
fn what_is_echoed_is_cut_and_escaped() {
    let hostile = "\u{1b}[31m\u{202e}".repeat(100);
    refused(&with("/vehicle/kind", json!(hostile)), "vehicle.kind", "unknown variant");
    let text = with(&format!("/vehicle/{}", "k".repeat(5000)), json!(1));
    refused(&text, "vehicle", "unknown field `kkk");

    let mut scenario = wagon();
    scenario["vehicle"]["name"] = json!(hostile);
    let scenario = common::parse_scenario(&scenario.to_string()).unwrap();
    let shown = beadseat::Excerpt(scenario.name().unwrap()).to_string();
    assert!(
        shown.chars().count() <= 121 && !shown.contains('\u{1b}') && !shown.contains('\u{202e}'),
        "{shown}"
    );
}

/// Every place of a scenario where a key, a word or a value of a kind stands.
const PLACES: &[&str] = &[
    "/vehicle",
    "/vehicle/kind",
    "/vehicle/front",
    "/vehicle/front/max_load_kg",
    "/vehicle/front/axles",
    "/vehicle/front/hub",
    "/vehicle/front/hub/spigot_mm",
    "/vehicle/front/hub/bolt_circle",
    "/vehicle/front/steering",
    "/vehicle/front/space/obstacles",
    "/vehicle/front/space/obstacles/0",
    "/vehicle/front/space/obstacles/0/points_mm",
    "/vehicle/front/space/obstacles/0/points_mm/0",
    "/vehicle/front/space/obstacles/0/points_mm/0/0",
    "/vehicle/front/space/obstacles/0/what",
    "/original",
    "/original/front",
    "/original/front/tire",
    "/proposed/front/rim_range_in",
    "/proposed/rear",
    "/use",
    "/use/towing",
    "/use/date",
    "/limits",
    "/limits/set",
];

/// The pickup with a value at a place, which may be new to its object.
fn pickup_with(place: &str, value: Value) -> Value {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/scenarios/rangers-pickup.json");
    let mut document: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    document["limits"] = json!({});
    let (parent, key) = place.rsplit_once('/').unwrap();
    match document.pointer_mut(parent).unwrap_or_else(|| panic!("no {parent}")) {
        Value::Object(object) => drop(object.insert(key.to_owned(), value)),
        list => list[key.parse::<usize>().unwrap()] = value,
    }
    document
}

/// The library itself, whatever reads with it.
#[track_caller]
fn bounded_and_escaped(document: Value) {
    let error = serde_json::from_value::<beadseat::scenario::Scenario>(document).expect_err("was accepted");
    let message = error.to_string();
    assert!(message.len() < 5000, "{} bytes: {}", message.len(), &message[..200]);
    assert!(!message.chars().any(|c| char::is_control(c) || c == '\u{202e}'), "{message:?}");
}

#[test]
fn errors_of_the_library_are_bounded_and_escaped() {
    const LONG: usize = 10_000_000;
    for place in PLACES {
        bounded_and_escaped(pickup_with(place, json!("x".repeat(LONG))));
        bounded_and_escaped(pickup_with(place, json!("\u{1b}[31m\u{202e}\n\0")));
        bounded_and_escaped(pickup_with(place, json!({ "k".repeat(LONG): 1 })));
        bounded_and_escaped(pickup_with(place, json!({ "\u{1b}[31m\u{202e}\n\0": 1 })));
    }
    for object in ["", "/vehicle", "/vehicle/front", "/original", "/original/front", "/use", "/limits"] {
        bounded_and_escaped(pickup_with(&format!("{object}/{}", "k".repeat(LONG)), json!(1)));
    }
}

#[test]
fn an_unknown_key_is_cut_and_what_is_known_stands_behind_it() {
    let read =
        |document| serde_json::from_value::<beadseat::scenario::Scenario>(document).unwrap_err().to_string();
    for (place, known) in [("", "`proposed`"), ("/original", "`rear`"), ("/vehicle/front/hub", "`spigot_mm`")]
    {
        let message = read(pickup_with(&format!("{place}/{}", "k".repeat(10_000_000)), json!(1)));
        let cut = format!("unknown field `{}…`, expected ", "k".repeat(120));
        assert!(message.starts_with(&cut) && message.contains(known), "{message}");
    }
    for (place, known) in [("/vehicle/kind", "`trailer`"), ("/proposed/rear", "`same`")] {
        let message = read(pickup_with(place, json!(format!("\u{1b}\u{202e}{}", "w".repeat(10_000_000)))));
        let cut = format!("unknown variant `\u{fffd}\u{fffd}{}…`, expected ", "w".repeat(118));
        assert!(message.starts_with(&cut) && message.contains(known), "{message}");
    }
}

#[test]
fn a_backspacing_and_what_the_wheel_says_agree() {
    let told = |wheel: &str, backspacing: Value| {
        let mut document = wagon();
        document["proposed"]["front"]["wheel"] = json!(wheel);
        document["proposed"]["front"]["backspacing_mm"] = backspacing;
        document.to_string()
    };
    // 7.5 in of width and a flange of 11 to 13 mm: 150 mm make 41.75 to 43.75 mm, and an eighth of an inch is forgiven.
    for inset in ["ET38.6", "ET42", "ET46.9"] {
        let read = common::parse_scenario(&told(&format!("7.5Jx17 {inset}"), json!(150))).unwrap();
        let wheel = read.change().proposed.front.unwrap().wheel();
        assert_eq!(wheel.to_string(), format!("7.5Jx17 {inset}"));
    }
    for inset in ["ET38.5", "ET47", "ET-42"] {
        let message = format!("inset {inset} and backspacing BS 150 contradict each other");
        refused(&told(&format!("7.5Jx17 {inset}"), json!(150)), "proposed.front", &message);
    }
    let read = common::parse_scenario(&told("7.5Jx17", json!("150 mm"))).unwrap();
    assert_eq!(read.change().proposed.front.unwrap().wheel().to_string(), "7.5Jx17 BS 150");
    assert!(common::parse_scenario(&told("7.5Jx17 BS 5.9in", json!(150))).is_ok());
    let message = "backspacing BS 150 contradicts that of the wheel, 7.5Jx17 BS 127";
    refused(&told("7.5Jx17 BS 5in", json!(150)), "proposed.front", message);
    refused(&told("7.5Jx17", json!(20)), "proposed.front.backspacing_mm", "is not in 25 to 400 mm");
    refused(&told("4Jx17", json!(390)), "proposed.front", "inset 326.5 mm is not in -300 to 300 mm");
}

/// A wheel that stays is off by as much before and after, but not from what it moves beside.
#[test]
fn what_moves_beside_a_wheel_told_by_its_backspacing_is_never_within() {
    use beadseat::fitment::{CheckId, Position, Reason, Verdict};
    let mut document = wagon();
    for setups in ["original", "proposed"] {
        document[setups]["front"]["tire"] = json!("205/55R16 91V");
        document[setups]["front"]["wheel"] = json!("6.5Jx16 H2 BS 141.25mm 5x112 57.1");
    }
    let report = common::parse_scenario(&document.to_string()).unwrap().assess();
    let of = |id, place| report.get(id, place).map(|check| (check.verdict(), check.reason()));
    assert_eq!(of(CheckId::Track, Position::Front), Some((Verdict::Within, Reason::Inside)));
    let swept = of(CheckId::SweptClearance, Position::FrontLeft);
    assert_eq!(swept, Some((Verdict::Marginal, Reason::InsetAssumed)));
    assert!(report.to_string().contains("flange of 12.7 mm"));
}
