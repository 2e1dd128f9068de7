//! The schema of a scenario file says what its reader says, and units in keys are read.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use beadseat::fitment::moves::Moves;
use beadseat::fitment::{Change, Setups, Verdict};
use beadseat::scenario::{Scenario, Template, schema};
use beadseat::units::{in_kg, in_kmh, in_kpa, in_mm, in_nm, inches, lb, lbf_ft, mph, psi};
use beadseat::vehicle::{Kind, Vehicle};
use scenario::{SHIPPED, shipped, spelled_out};
use serde_json::{Map, Value, json};

const NOTHING: Setups = Setups { front: None, rear: None };

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
        "$schema" | "$defs" | "description" => true,
        "$ref" => {
            let at = of.as_str().unwrap().strip_prefix('#').unwrap();
            is_valid(root, root.pointer(at).unwrap(), value)
        }
        "type" => {
            let is = |kind: &Value| match kind.as_str().unwrap() {
                "object" => value.is_object(),
                "array" => value.is_array(),
                "string" => value.is_string(),
                "null" => value.is_null(),
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
        // Of questions, the only one there is.
        "patternProperties" => object.is_none_or(|object| {
            let questions = object.iter().filter(|(key, _)| key.starts_with('?'));
            questions.into_iter().all(|(_, value)| is_valid(root, &of["^\\?"], value))
        }),
        "additionalProperties" => object.is_none_or(|object| {
            let is_known = |key: &str| schema["properties"].get(key).is_some() || key.starts_with('?');
            let mut others = object.iter().filter(|(key, _)| !is_known(key));
            others.all(|(_, value)| *of != json!(false) && is_valid(root, of, value))
        }),
        "minProperties" => object.is_none_or(|object| object.len() as u64 >= of.as_u64().unwrap()),
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
    for name in SHIPPED {
        let file = shipped(name);
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
        SHIPPED.iter().flat_map(|name| neighbours(&spelled_out(name)).collect::<Vec<_>>())
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
    const PLACES: [(&str, &str); 16] = [
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
        ("Source", "/sources/0"),
        ("FurtherAxle", "/more_axles/0"),
    ];
    const ELSEWHERE: [&str; 5] = ["Adaptor", "TireInUse", "MeasuredTire", "EndGaps", "Blank"];
    let schema = written();
    let mut own = 0;
    for (name, place) in PLACES {
        let mut document = spelled_out("field-survey-wagon");
        document["sources"] = json!([{ "of": "vehicle.kind", "from": "placard" }]);
        document["more_axles"] = json!([{ "name": "tag axle" }]);
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
    for name in SHIPPED {
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

/// The keys of an object's table, in the schema: those that are written so, with what they are.
fn written_keys(schema: &Value, object: &str) -> Vec<String> {
    let units = ["_in", "_psi", "_bar", "_lb", "_mph", "_ftlb"];
    let properties = schema["$defs"][object]["properties"].as_object().unwrap();
    let is_other = |key: &str| {
        let has = |end: &str| properties.contains_key(&format!("{key}{end}"));
        let ends = ["_mm", "_kpa", "_kg", "_kmh", "_nm", "_deg", "_percent", "_years", "_turns"];
        let in_unit = units.iter().filter_map(|unit| key.strip_suffix(unit));
        let is_in_unit = in_unit
            .into_iter()
            .any(|base| ends.iter().any(|end| properties.contains_key(&format!("{base}{end}"))));
        is_in_unit || ends.into_iter().chain(["_in"]).any(has)
    };
    properties.keys().filter(|key| !is_other(key)).cloned().collect()
}

#[test]
fn a_template_asks_for_every_key_and_tells_nothing() {
    let schema = written();
    for &kind in Kind::ALL {
        let template = serde_json::to_value(Template::new(kind)).unwrap();
        assert!(accepts(&schema, &template), "{kind}");
        let report = reads(&template).unwrap_or_else(|error| panic!("{kind}: {error}")).assess();
        let of_kind = Scenario::new(
            Vehicle::new(kind),
            Change { original: NOTHING, proposed: NOTHING },
            Default::default(),
            Default::default(),
        );
        assert_eq!(report, of_kind.assess(), "{kind}: something is told by nothing");
        let is_open = |verdict| matches!(verdict, Verdict::NotAssessed | Verdict::NotApplicable);
        assert!(report.checks().all(|check| is_open(check.verdict())), "{kind}");
        // Objects of every type, each with its keys and the question of each.
        let axle = if kind == Kind::Trailer { "rear" } else { "front" };
        let at = |path: &str| {
            template.pointer(&path.replace('*', axle)).unwrap_or_else(|| panic!("{kind}: {path}")).clone()
        };
        for (object, path) in [
            ("ScenarioFile", ""),
            ("NamedVehicle", "/vehicle"),
            ("Axle", "/vehicle/*"),
            ("Hub", "/vehicle/*/hub"),
            ("Steering", "/vehicle/*/steering"),
            ("Travel", "/vehicle/*/travel"),
            ("Space", "/vehicle/*/space"),
            ("MeasuredTire", "/vehicle/*/space/measured_tire"),
            ("Body", "/vehicle/*/space/obstacles/0"),
            ("Brake", "/vehicle/*/brake"),
            ("SetupsFile", "/proposed"),
            ("Setup", "/proposed/*"),
            ("Setup", "/original/*"),
            ("Fasteners", "/proposed/*/fasteners"),
            ("Adaptor", "/proposed/*/adaptor"),
            ("TireInUse", "/proposed/*/left"),
            ("TireInUse", "/proposed/*/right"),
            ("Conditions", "/use"),
            ("Limits", "/limits"),
            ("FurtherAxle", "/more_axles/0"),
            ("Axle", "/more_axles/0/axle"),
            ("Setup", "/more_axles/0/proposed"),
        ] {
            let asked = at(path);
            for key in written_keys(&schema, object) {
                if kind == Kind::Trailer && key == "front" {
                    continue;
                }
                assert!(asked.get(&key).is_some(), "{kind}: {path}: {key}");
                let question =
                    asked[format!("?{key}")].as_str().unwrap_or_else(|| panic!("no question: {path} {key}"));
                assert!(question.len() > 10, "{path} {key}: {question}");
            }
        }
    }
}

/// What is told in a template counts, and where nothing else is, four designations are an answer.
#[test]
fn four_designations_in_a_template_are_an_answer() {
    for (kind, axle, old, new, duals) in [
        (
            Kind::Passenger,
            "front",
            ["205/55R16 91V", "6.5Jx16 ET46"],
            ["225/45R17 94W", "7.5Jx17 ET42"],
            false,
        ),
        (Kind::Trailer, "rear", ["155/80R13 79T", "4.5Jx13 ET30"], ["165/70R13 79T", "5Jx13 ET30"], false),
        (
            Kind::Truck,
            "rear",
            ["295/80R22.5 152/148M", "8.25x22.5 ET160"],
            ["315/80R22.5 156/150L", "9.00x22.5 ET175"],
            true,
        ),
        (Kind::Motorcycle, "front", ["110/80-17 57H", "MT2.75x17"], ["120/70-17 58H", "MT3.50x17"], false),
    ] {
        let mut document = serde_json::to_value(Template::new(kind)).unwrap();
        for (setups, [tire, wheel]) in [("original", old), ("proposed", new)] {
            document[setups][axle]["tire"] = json!(tire);
            document[setups][axle]["wheel"] = json!(wheel);
        }
        if duals {
            document["vehicle"]["rear"]["wheels_per_side"] = json!(2);
        }
        assert!(accepts(&written(), &document), "{kind}");
        let scenario = reads(&document).unwrap_or_else(|error| panic!("{kind}: {error}"));
        let report = scenario.assess();
        let moved = Moves::of(scenario.vehicle(), scenario.change()).iter().count();
        let judged = report
            .checks()
            .filter(|check| matches!(check.verdict(), Verdict::Within | Verdict::Marginal | Verdict::Beyond))
            .count();
        assert!(moved >= 5 && judged >= 2, "{kind}: {moved} moves, {judged} findings");
        // Half of a setup is not passed over, and no answer is taken for a question.
        document["proposed"][axle]["wheel"] = json!(null);
        assert!(reads(&document).unwrap_err().contains("missing field `wheel`"), "{kind}");
        document["proposed"][axle]["wheel"] = json!(new[1]);
        document["vehicle"]["?top_speed_kmh"] = json!(180);
        let error = reads(&document).unwrap_err();
        assert!(error.contains("the answer goes at the key without `?`"), "{kind}: {error}");
    }
}

/// Text of a key or a word of people: what it is read as, or asked.
#[test]
fn common_words_are_understood_or_answered() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases/words.csv");
    let mut rows = csv::Reader::from_path(path).unwrap();
    let mut count = 0;
    for row in rows.records() {
        let row = row.unwrap();
        let [place, value, outcome, why] = [0, 1, 2, 3].map(|n| &row[n]);
        assert!(!why.is_empty());
        let mut document = spelled_out("field-survey-wagon");
        let (parent, key) = place.rsplit_once('/').unwrap();
        let object = document.pointer_mut(parent).unwrap().as_object_mut().unwrap();
        object.insert(key.into(), serde_json::from_str(value).unwrap());
        match outcome.strip_prefix("error: ") {
            Some(wanted) => {
                let error = reads(&document).expect_err(place);
                let at = error.find(wanted).unwrap_or_else(|| panic!("{place} {value}: {error}"));
                assert!(at + wanted.len() <= 120, "{place} {value}: cut before {wanted}");
            }
            None => {
                let read = serde_json::to_value(
                    reads(&document).unwrap_or_else(|error| panic!("{place} {value}: {error}")),
                )
                .unwrap();
                let wanted: Value = serde_json::from_str(outcome).unwrap();
                assert_eq!(read.pointer(place), Some(&wanted), "{place} {value}");
                // In capitals and with a hyphen they are read too.
                if !value.contains(|c: char| c.is_uppercase() || c == '-') {
                    assert!(accepts(&written(), &document), "{place} {value}");
                }
            }
        }
        count += 1;
    }
    assert!(count > 40, "{count}");
}
