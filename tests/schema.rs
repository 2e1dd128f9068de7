//! The schema of a scenario file says what its reader says, and units in keys are read.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use beadseat::scenario::{Scenario, schema};
use beadseat::units::{in_kg, in_kmh, in_kpa, in_mm, in_nm, inches, lb, lbf_ft, mph, psi};
use scenario::spelled_out;
use serde_json::{Map, Value, json};

const SCENARIOS: [&str; 3] = ["field-survey-wagon", "one-tonne-panel-van", "rangers-pickup"];

fn written() -> Value {
    serde_json::to_value(schema()).unwrap()
}

fn reads(document: &Value) -> Result<Scenario, String> {
    serde_json::from_value(document.clone()).map_err(|error| error.to_string())
}

/// Whether a value is what a schema says: the keywords that ours has, and a panic at any other.
fn is_valid(root: &Value, schema: &Value, value: &Value) -> bool {
    let any = |list: &Value| list.as_array().unwrap().iter().filter(|one| is_valid(root, one, value)).count();
    let rules = schema.as_object().unwrap().iter();
    let object = value.as_object();
    rules.map(|(rule, of)| (rule.as_str(), of)).all(|(rule, of)| match rule {
        "$schema" | "$defs" => true,
        "$ref" => {
            let at = of.as_str().unwrap().strip_prefix('#').unwrap();
            is_valid(root, root.pointer(at).unwrap(), value)
        }
        "type" => {
            let is = |kind: &Value| match kind.as_str().unwrap() {
                "object" => value.is_object(),
                "array" => value.is_array(),
                "string" => value.is_string(),
                "boolean" => value.is_boolean(),
                "number" => value.is_number(),
                "integer" => value.is_u64(),
                other => panic!("{other}"),
            };
            of.as_array().map_or_else(|| is(of), |kinds| kinds.iter().any(is))
        }
        // Of an amount, the only one there is.
        "pattern" => {
            assert_eq!(of, "^\\s*[-+\u{2212}]?[0-9\u{bc}-\u{be}]");
            value.as_str().is_none_or(|text| {
                let text = text.trim_start();
                let number = text.strip_prefix(['-', '+', '\u{2212}']).unwrap_or(text);
                number.starts_with(|c: char| c.is_ascii_digit() || ('\u{bc}'..='\u{be}').contains(&c))
            })
        }
        "enum" => of.as_array().unwrap().contains(value),
        "minimum" => value.as_f64().is_none_or(|number| number >= of.as_f64().unwrap()),
        "maximum" => value.as_f64().is_none_or(|number| number <= of.as_f64().unwrap()),
        "minItems" => value.as_array().is_none_or(|list| list.len() as u64 >= of.as_u64().unwrap()),
        "maxItems" => value.as_array().is_none_or(|list| list.len() as u64 <= of.as_u64().unwrap()),
        "items" => value.as_array().is_none_or(|list| list.iter().all(|one| is_valid(root, of, one))),
        "properties" => object.is_none_or(|object| {
            object.iter().all(|(key, value)| of.get(key).is_none_or(|of| is_valid(root, of, value)))
        }),
        "additionalProperties" => {
            assert_eq!(of, false);
            object.is_none_or(|object| object.keys().all(|key| schema["properties"].get(key).is_some()))
        }
        "required" => {
            let wanted = of.as_array().unwrap().iter().map(|key| key.as_str().unwrap());
            object.is_none_or(|object| wanted.into_iter().all(|key| object.contains_key(key)))
        }
        "allOf" => any(of) == of.as_array().unwrap().len(),
        "anyOf" => any(of) > 0,
        "oneOf" => any(of) == 1,
        "not" => !is_valid(root, of, value),
        other => panic!("{other}"),
    })
}

fn accepts(root: &Value, document: &Value) -> bool {
    is_valid(root, root, document)
}

/// The places of all that stands in a document.
fn places(value: &Value, at: &str, found: &mut Vec<String>) {
    found.push(at.into());
    match value {
        Value::Object(object) => {
            object.iter().for_each(|(key, value)| places(value, &format!("{at}/{key}"), found))
        }
        Value::Array(list) => {
            list.iter().enumerate().for_each(|(n, value)| places(value, &format!("{at}/{n}"), found));
        }
        _ => {}
    }
}

fn all_places(document: &Value) -> Vec<String> {
    let mut found = Vec::new();
    places(document, "", &mut found);
    found
}

/// The documents that are one step away from another: something of the wrong kind, left out, put in.
fn neighbours(document: &Value) -> impl Iterator<Item = (String, Value)> {
    let others = [
        json!(null),
        json!([]),
        json!({}),
        json!("no such word"),
        json!(true),
        json!(-1e4),
        json!(1e6),
        json!(0.5),
    ];
    all_places(document).into_iter().flat_map(move |place| {
        let with = |value: &Value| {
            let mut changed = document.clone();
            *changed.pointer_mut(&place).unwrap() = value.clone();
            (format!("{place} = {value}"), changed)
        };
        let mut list: Vec<_> = others.iter().map(with).collect();
        if document.pointer(&place).unwrap().is_object() {
            let mut changed = document.clone();
            changed.pointer_mut(&place).unwrap()["no such key"] = json!(1);
            list.push((format!("{place} with a key"), changed));
        }
        if let Some((parent, key)) = place.rsplit_once('/') {
            let mut changed = document.clone();
            if let Some(object) = changed.pointer_mut(parent).unwrap().as_object_mut() {
                object.remove(key);
                list.push((format!("without {place}"), changed));
            }
        }
        list
    })
}

#[test]
fn every_scenario_is_valid() {
    let schema = written();
    for name in SCENARIOS {
        let path = format!("{}/examples/scenarios/{name}.json", env!("CARGO_MANIFEST_DIR"));
        let file: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
        assert!(accepts(&schema, &file), "{name}");
        assert!(accepts(&schema, &spelled_out(name)), "{name}");
        let read = reads(&file).unwrap();
        assert!(accepts(&schema, &serde_json::to_value(&read).unwrap()), "{name}");
    }
}

/// What no schema of this kind says: what a designation is, what one value asks of another.
fn is_beyond_a_schema(change: &str, error: &str) -> bool {
    let is_text = change.ends_with("\"no such word\"") && !error.contains("unknown variant");
    let is_of_a_body = change.contains("/obstacles/")
        && ["missing field", "belong to a gap", "a rod", "coincide", "is not in"]
            .iter()
            .any(|text| error.contains(text));
    is_text || is_of_a_body || error.contains("rim widths") || error.contains("is the same as `front`")
}

#[test]
fn the_schema_refuses_what_the_reader_refuses_and_nothing_else() {
    let schema = written();
    let (mut refused, mut beyond) = (0, 0);
    for (change, document) in
        SCENARIOS.iter().flat_map(|name| neighbours(&spelled_out(name)).collect::<Vec<_>>())
    {
        match (reads(&document), accepts(&schema, &document)) {
            (Ok(_), true) => {}
            (Ok(_), false) => panic!("{change}: is read, and not valid"),
            (Err(_), false) => refused += 1,
            (Err(error), true) => {
                assert!(is_beyond_a_schema(&change, &error), "{change}: valid, and {error}");
                beyond += 1;
            }
        }
    }
    assert!(refused > 3000 && beyond < refused / 10, "{refused} refused, {beyond} not said");
}

/// The keys of an object in the words of the reader's error about one that it does not know.
fn keys_in_words(document: &Value) -> Vec<String> {
    let error = reads(document).unwrap_err();
    let (_, expected) = error.split_once("unknown field `no such key`, expected ").unwrap();
    expected.split('`').skip(1).step_by(2).map(String::from).collect()
}

#[test]
fn every_key_of_the_reader_is_in_the_schema_and_needs_no_other() {
    const PLACES: [(&str, &str); 14] = [
        ("ScenarioFile", ""),
        ("NamedVehicle", "/vehicle"),
        ("Axle", "/vehicle/front"),
        ("Hub", "/vehicle/front/hub"),
        ("Steering", "/vehicle/front/steering"),
        ("Travel", "/vehicle/front/travel"),
        ("Space", "/vehicle/front/space"),
        ("Body", "/vehicle/front/space/obstacles/0"),
        ("Brake", "/vehicle/front/brake"),
        ("SetupsFile", "/original"),
        ("Setup", "/original/front"),
        ("Fasteners", "/proposed/front/fasteners"),
        ("Conditions", "/use"),
        ("Limits", "/limits"),
    ];
    const ELSEWHERE: [&str; 3] = ["Adaptor", "TireInUse", "MeasuredTire"];
    let schema = written();
    let mut own = 0;
    for (name, place) in PLACES {
        let mut document = spelled_out("field-survey-wagon");
        document.pointer_mut(place).unwrap()["no such key"] = json!(0);
        let properties = schema["$defs"][name]["properties"].as_object().unwrap();
        let keys = keys_in_words(&document);
        for key in &keys {
            assert!(properties.contains_key(key), "{name}: {key}");
        }
        // The others are the same quantities in other units; the name is read beside the vehicle.
        let others = properties.keys().filter(|&key| !keys.contains(key) && key != "name");
        let others: Vec<_> = others.collect();
        let units = ["_in", "_psi", "_bar", "_lb", "_mph", "_ftlb"];
        let is_without_unit = |other: &str| {
            let ends = ["mm", "kpa", "kg", "kmh", "nm", "deg", "percent", "years", "turns", "in"];
            ends.iter().any(|end| keys.contains(&format!("{other}_{end}")))
        };
        let is_known = |key: &&&String| units.iter().any(|unit| key.ends_with(unit)) || is_without_unit(key);
        assert!(others.iter().all(|key| is_known(&key)), "{name}: {others:?}");
        own += keys.len();
    }
    assert!(own > 130, "{own}");
    let names: Vec<_> = schema["$defs"].as_object().unwrap().keys().map(String::as_str).collect();
    let known: Vec<_> = PLACES.map(|(name, _)| name).into_iter().chain(ELSEWHERE).collect();
    assert!(names.iter().all(|name| known.contains(name)) && names.len() == known.len(), "{names:?}");
}

/// The ends of a key in two units, and the number of the second.
type Unit = (&'static str, &'static str, fn(f64) -> f64);

/// Every quantity in another unit.
fn in_other_units(value: &Value) -> Value {
    const UNITS: [Unit; 5] = [
        ("_mm", "_in", |mm| mm / in_mm(inches(1.0))),
        ("_kpa", "_psi", |kpa| kpa / in_kpa(psi(1.0))),
        ("_kg", "_lb", |kg| kg / in_kg(lb(1.0))),
        ("_kmh", "_mph", |kmh| kmh / in_kmh(mph(1.0))),
        ("_nm", "_ftlb", |nm| nm / in_nm(lbf_ft(1.0))),
    ];
    fn scaled(value: &Value, by: fn(f64) -> f64) -> Value {
        match value {
            Value::Array(list) => list.iter().map(|value| scaled(value, by)).collect(),
            number => json!(by(number.as_f64().unwrap())),
        }
    }
    match value {
        Value::Object(object) => {
            let entry = |(key, value): (&String, &Value)| {
                let unit = UNITS.iter().find_map(|(from, to, by)| Some((key.strip_suffix(from)?, to, *by)));
                match unit {
                    Some((base, to, by)) => (format!("{base}{to}"), scaled(value, by)),
                    None => (key.clone(), in_other_units(value)),
                }
            };
            Value::Object(object.iter().map(entry).collect::<Map<_, _>>())
        }
        Value::Array(list) => list.iter().map(in_other_units).collect(),
        other => other.clone(),
    }
}

#[test]
fn a_scenario_in_other_units_is_the_same_scenario() {
    let schema = written();
    for name in SCENARIOS {
        let metric = spelled_out(name);
        let other = in_other_units(&metric);
        let left =
            all_places(&other).into_iter().filter(|place| place.ends_with("_mm") || place.ends_with("_kpa"));
        assert_eq!(left.count(), 0);
        assert!(accepts(&schema, &other), "{name}");
        let [metric, other] = [&metric, &other].map(|document| reads(document).unwrap());
        // Written in the same keys, with numbers that differ by what conversion rounds.
        let [a, b] = [&metric, &other].map(|scenario| serde_json::to_value(scenario).unwrap());
        assert_eq!(all_places(&a), all_places(&b), "{name}");
        for place in all_places(&a) {
            let [a, b] = [&a, &b].map(|value| value.pointer(&place).unwrap());
            match (a.as_f64(), b.as_f64()) {
                (Some(a), Some(b)) => assert!((a - b).abs() <= 1e-12 * a.abs().max(1.0), "{place}: {a} {b}"),
                _ => assert!(a == b || a.is_object() || a.is_array(), "{place}"),
            }
        }
        assert_eq!(metric.assess().overall(), other.assess().overall());
    }
}

/// The wagon with a value at a place; what says the same in another spelling goes.
fn wagon_with(place: &str, value: Value, own: &str) -> Value {
    let mut document = spelled_out("field-survey-wagon");
    let (parent, key) = place.rsplit_once('/').unwrap();
    let object = document.pointer_mut(parent).unwrap().as_object_mut().unwrap();
    object.remove(own);
    object.insert(key.into(), value);
    document
}

#[test]
fn an_amount_with_its_unit_is_the_number_of_its_key() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases/amounts.csv");
    let mut rows = csv::Reader::from_path(path).unwrap();
    let (mut read, mut refused) = (0, 0);
    for row in rows.records() {
        let row = row.unwrap();
        let [place, value, outcome, why] = [0, 1, 2, 3].map(|n| &row[n]);
        assert!(!why.is_empty());
        let value: Value = serde_json::from_str(value).unwrap();
        let (parent, key) = place.rsplit_once('/').unwrap();
        let Some((own, number)) = outcome.split_once('=') else {
            let wanted = outcome.strip_prefix("error: ").unwrap();
            let own =
                if key == "track_change" { "track_change_percent".into() } else { key.replace("_in", "_mm") };
            let mut document = wagon_with(place, value, &own);
            for end in ["_mm", "_kpa", "_kg"] {
                document.pointer_mut(parent).unwrap().as_object_mut().unwrap().remove(&format!("{key}{end}"));
            }
            let error = reads(&document).expect_err(place);
            assert!(error.contains(wanted), "{place}: {error}");
            refused += 1;
            continue;
        };
        let document = wagon_with(place, value, own);
        assert!(accepts(&written(), &document), "{place}: {why}");
        let [of_text, of_number] =
            [document, wagon_with(&format!("{parent}/{own}"), serde_json::from_str(number).unwrap(), own)]
                .map(|document| {
                    serde_json::to_value(reads(&document).unwrap_or_else(|error| panic!("{place}: {error}")))
                        .unwrap()
                });
        let at = format!("{parent}/{own}");
        let [a, b] = [&of_text, &of_number].map(|value| value.pointer(&at).unwrap_or_else(|| panic!("{at}")));
        match (a.as_f64(), b.as_f64()) {
            (Some(a), Some(b)) => assert!((a - b).abs() <= 1e-9 * b.abs(), "{place}: {a} {b}"),
            _ => assert_eq!(a, b, "{place}"),
        }
        read += 1;
    }
    assert!(read > 35 && refused > 12, "{read} {refused}");
}
