//! What is measured is written as it was read: every kind of quantity, to its last digit.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::fitment::{Change, Conditions, Limits, Setups};
use beadseat::scenario::Scenario;
use beadseat::units::{Length, inches, lb, mph, psi, rad};
use beadseat::vehicle::{Axle, Vehicle};
use proptest::prelude::*;
use proptest::sample::select;
use serde_json::{Value, json};

/// Where a number stands in the pickup's scenario, and what it may be: every unit, and every shape that numbers
/// stand in.
const PLACES: &[(&str, f64, f64)] = &[
    ("/vehicle/top_speed_kmh", 5.0, 500.0),
    ("/vehicle/speedometer_over_read_percent", -10.0, 20.0),
    ("/vehicle/front/max_load_kg", 10.0, 60_000.0),
    ("/vehicle/front/track_mm", 500.0, 3000.0),
    ("/vehicle/front/placard_kpa", 50.0, 1200.0),
    ("/vehicle/front/steering/kingpin_inclination_deg", -5.0, 30.0),
    ("/vehicle/front/steering/lock_inner_deg", 0.0, 75.0),
    ("/vehicle/front/steering/scrub_radius_mm", -200.0, 300.0),
    ("/vehicle/front/hub/spigot_mm", 20.0, 300.0),
    ("/vehicle/front/space/obstacles/0/points_mm/0/0", -1000.0, 1000.0),
    ("/vehicle/front/space/obstacles/0/points_mm/1/1", -1000.0, 1000.0),
    ("/vehicle/front/space/obstacles/0/radius_mm", 0.0, 300.0),
    ("/vehicle/front/space/obstacles/1/pivot_mm/2", -1000.0, 1000.0),
    ("/vehicle/front/space/obstacles/2/uncertainty_mm", 0.0, 100.0),
    ("/proposed/front/wheel_rating_kg", 10.0, 20_000.0),
    ("/proposed/front/spacer_mm", 0.0, 200.0),
    ("/proposed/front/left/tread_mm", 0.0, 40.0),
    ("/limits/track_change_percent", 0.0, 50.0),
    ("/limits/engagement_turns", 1.0, 30.0),
    ("/limits/snow_speed_floor_kmh", 50.0, 300.0),
];

/// A format that writes how many entries a map has before it: whoever announces a wrong number cannot be read back.
#[test]
fn a_format_with_lengths_reads_back_what_was_written() {
    for name in ["field-survey-wagon", "one-tonne-panel-van", "rangers-pickup"] {
        let path = format!("{}/../../examples/scenarios/{name}.json", env!("CARGO_MANIFEST_DIR"));
        let mut document: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
        // Not every finding has an entry for the document behind the caller's own limits.
        document["limits"]["source"] = json!("Sheet 7");
        let scenario: Scenario = serde_json::from_value(document).unwrap();
        let packed = rmp_serde::to_vec_named(&scenario).unwrap();
        assert_eq!(rmp_serde::from_slice::<Scenario>(&packed).unwrap(), scenario, "{name}");
        let report = scenario.assess();
        let unpacked: Value = rmp_serde::from_slice(&rmp_serde::to_vec_named(&report).unwrap()).unwrap();
        assert_eq!(unpacked, serde_json::to_value(report).unwrap(), "{name}");
    }
}

fn pickup() -> Value {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/scenarios/rangers-pickup.json");
    let mut document: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    document["limits"] =
        json!({ "track_change_percent": 2, "engagement_turns": 6, "snow_speed_floor_kmh": 160 });
    document
}

fn with(place: &str, number: f64) -> Value {
    let mut document = pickup();
    *document.pointer_mut(place).unwrap_or_else(|| panic!("no {place}")) = json!(number);
    document
}

/// A place, and a number between its bounds with so many decimals.
fn measured(decimals: i32) -> impl Strategy<Value = ((&'static str, f64, f64), f64)> {
    let decimal = move |(place, least, most): (&'static str, f64, f64)| {
        let steps = (0..decimals).fold(1.0, |steps, _| 10.0 * steps);
        let numbers = ((least * steps) as i64..=(most * steps) as i64).prop_map(move |n| n as f64 / steps);
        (Just((place, least, most)), numbers)
    };
    select(PLACES).prop_flat_map(decimal)
}

fn read(document: &Value) -> Scenario {
    serde_json::from_str(&document.to_string()).unwrap_or_else(|error| panic!("{error}: {document}"))
}

fn written(scenario: &Scenario) -> Value {
    serde_json::to_value(scenario).unwrap()
}

/// A unit, what one of it is in the unit of the key, and the end of a key in it.
type Unit = (&'static str, f64, &'static str);

/// The units of a number's key.
fn units(place: &str) -> &'static [Unit] {
    const UNITS: &[(&str, &[Unit])] = &[
        (
            "_mm",
            &[
                ("mm", 1.0, "_mm"),
                ("in", 25.4, "_in"),
                ("\u{2033}", 25.4, "_in"),
                ("cm", 10.0, ""),
                ("ft", 304.8, ""),
            ],
        ),
        (
            "_kpa",
            &[
                ("kPa", 1.0, "_kpa"),
                ("psi", 6.894_757_293_168, "_psi"),
                ("bar", 100.0, "_bar"),
                ("atü", 98.0665, ""),
            ],
        ),
        ("_kg", &[("kg", 1.0, "_kg"), ("lb", 0.453_592_37, "_lb"), ("LBS.", 0.453_592_37, "_lb")]),
        ("_kmh", &[("km/h", 1.0, "_kmh"), ("mph", 1.609_344, "_mph")]),
        ("_deg", &[("°", 1.0, "_deg"), ("degrees", 1.0, "_deg")]),
        ("_percent", &[("%", 1.0, "_percent")]),
        ("_turns", &[("turns", 1.0, "_turns")]),
    ];
    UNITS.iter().find(|(end, _)| place.ends_with(end)).map_or(&[], |(_, units)| units)
}

proptest! {
    /// A text with any unit of its quantity, under the key without a unit and under the key of that unit.
    #[test]
    fn an_amount_in_a_text_is_the_number_in_its_unit(
        ((place, ..), number) in (0..=4).prop_flat_map(measured), which in any::<prop::sample::Index>(), comma in any::<bool>(),
    ) {
        let units = units(place);
        prop_assume!(!units.is_empty());
        let (unit, one, end) = units[which.index(units.len())];
        let mut text = format!("{} {unit}", number / one);
        let decimals = text.split_once('.').map_or(0, |(_, behind)| behind.bytes().take_while(u8::is_ascii_digit).count());
        if comma && decimals != 3 {
            text = text.replacen('.', ",", 1);
        }
        let (parent, key) = place.rsplit_once('/').unwrap();
        let base = key.rsplit_once('_').unwrap().0;
        let metric = written(&read(&with(place, number)));
        let keys = [base.to_owned(), if end.is_empty() { base.to_owned() } else { format!("{base}{end}") }];
        for spelling in keys.into_iter().filter(|key| key != "track_change") {
            let mut document = with(place, number);
            let object = document.pointer_mut(parent).and_then(Value::as_object_mut).unwrap();
            object.remove(key);
            object.insert(spelling.clone(), json!(text));
            let other = written(&read(&document));
            let [a, b] = [&other, &metric].map(|value| value.pointer(place).and_then(Value::as_f64).unwrap());
            prop_assert!((a - b).abs() <= 1e-9 * b.abs().max(1e-3), "{} {}: {} {}", spelling, text, a, b);
            // No other unit is read there.
            let object = document.pointer_mut(parent).and_then(Value::as_object_mut).unwrap();
            object.insert(spelling.clone(), json!(format!("{number}")));
            prop_assert!(serde_json::from_value::<Scenario>(document).is_err(), "{}", spelling);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, ..ProptestConfig::default() })]

    #[test]
    fn a_decimal_keeps_its_digits(
        ((place, ..), number) in (0..=6).prop_flat_map(measured),
    ) {
        let scenario = read(&with(place, number));
        let document = written(&scenario);
        let back = document.pointer(place).and_then(Value::as_f64).unwrap();
        prop_assert_eq!(back.to_string(), number.to_string(), "{}", place);
        let again = read(&document);
        prop_assert_eq!(&again, &scenario, "{} {}", place, number);
        prop_assert_eq!(written(&again).to_string(), document.to_string());
    }

    /// Decimals beyond the sixth, and then as many as there are. A stamped length is held to the nanometre.
    #[test]
    fn any_number_is_the_same_quantity_again(
        ((place, ..), number) in (7..=12).prop_flat_map(measured), ulps in 0_u64..1000,
    ) {
        let number = f64::from_bits(number.to_bits() - ulps * u64::from(number.abs() > 1.0));
        let Ok(scenario) = serde_json::from_str::<Scenario>(&with(place, number).to_string()) else { return Ok(()) };
        let document = written(&scenario);
        let again = read(&document);
        prop_assert_eq!(&again, &scenario, "{} {:?}", place, number);
        prop_assert_eq!(written(&again).to_string(), document.to_string());
        if ulps == 0 && !place.ends_with("spigot_mm") {
            let back = document.pointer(place).and_then(Value::as_f64).unwrap();
            prop_assert_eq!(back.to_string(), number.to_string(), "{}", place);
        }
    }

    /// What a program computes in another unit comes back within the last bit, and then stays.
    #[test]
    fn a_computed_quantity_settles_at_once(
        track in 20.0..110.0_f64, pressure in 10.0..170.0_f64, load in 100.0..9000.0_f64, speed in 10.0..300.0_f64,
        camber in -0.2..0.2_f64,
    ) {
        let axle = Axle::new()
            .with_track(inches(track)).unwrap()
            .with_placard(psi(pressure)).unwrap()
            .with_max_load(lb(load)).unwrap()
            .with_camber(rad(camber)).unwrap();
        let vehicle = Vehicle::unknown().with_front(axle).with_top_speed(mph(speed)).unwrap();
        let nothing = Setups { front: None, rear: None };
        let change = Change { original: nothing, proposed: nothing };
        let scenario = Scenario::new(vehicle, change, Conditions::default(), Limits::default());
        let again = read(&written(&scenario));
        fn of(scenario: &Scenario) -> &Axle {
            scenario.vehicle().front().unwrap()
        }
        let track = |scenario: &Scenario| of(scenario).track().unwrap();
        let apart: Length = track(&again) - track(&scenario);
        prop_assert!(apart.value.abs() <= track(&scenario).value * f64::EPSILON);
        prop_assert_eq!(of(&again).max_load(), of(&scenario).max_load());
        let apart = of(&again).placard().unwrap() - of(&scenario).placard().unwrap();
        prop_assert!(apart.value.abs() <= of(&scenario).placard().unwrap().value * f64::EPSILON);
        prop_assert_eq!(&read(&written(&again)), &again);
        prop_assert_eq!(written(&again).to_string(), written(&scenario).to_string());
    }
}
