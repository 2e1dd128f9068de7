//! No fact of a scenario is accepted and ignored: every key has a pair of scenarios that differ only in it and whose
//! reports differ.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use std::collections::BTreeSet;

use beadseat::scenario::Scenario;
use scenario::spelled_out;
use serde_json::{Map, Value, json};

/// They say which vehicle or axle it is and nothing about it.
const IDENTITIES: [&str; 2] = ["vehicle.name", "more_axles[].name"];

/// Objects of one type that stand in several places: the axles, what is on them, the tires on their ends.
const TWINS: [(&str, &str); 12] = [
    ("more_axles[].axle.", "vehicle.axle."),
    ("more_axles[].original.", "setup."),
    ("more_axles[].proposed.", "setup."),
    ("vehicle.front", "vehicle.axle"),
    ("vehicle.rear", "vehicle.axle"),
    ("original.front", "setup"),
    ("original.rear", "setup"),
    ("proposed.front", "setup"),
    ("proposed.rear", "setup"),
    ("spare.", "setup."),
    (".left.", ".end."),
    (".right.", ".end."),
];

/// A path by the names of its types.
fn by_type(path: &str) -> String {
    TWINS.iter().fold(path.into(), |path: String, (place, of_type)| path.replace(place, of_type))
}

fn root(path: &str) -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// The keys of an object, in the words of the error about one that it does not know; nothing for what is no object.
fn keys_of(path: &[String]) -> Option<Vec<String>> {
    let unknown = json!({ "no such key": 0 });
    let document = path.iter().rev().fold(unknown, |value, key| match key.strip_suffix("[]") {
        Some(key) => json!({ key: [value] }),
        None => json!({ key: value }),
    });
    let error = serde_json::from_value::<Scenario>(document).unwrap_err().to_string();
    let (_, expected) = error.split_once("unknown field `no such key`, expected ")?;
    // Every other piece stands in backticks.
    Some(expected.split('`').skip(1).step_by(2).map(String::from).collect())
}

/// Every key that is no object itself.
fn accepted_keys() -> BTreeSet<String> {
    let (mut open, mut found) = (vec![Vec::new()], BTreeSet::new());
    while let Some(object) = open.pop() {
        for key in keys_of(&object).unwrap() {
            let at = |last: String| object.iter().cloned().chain([last]).collect::<Vec<_>>();
            let nested =
                [at(key.clone()), at(format!("{key}[]"))].into_iter().find(|at| keys_of(at).is_some());
            match nested {
                Some(nested) => open.push(nested),
                None => drop(found.insert(by_type(&at(key).join(".")))),
            }
        }
    }
    found
}

/// The key at a JSON pointer.
fn key_at(pointer: &str) -> String {
    let path = pointer.strip_prefix('/').unwrap().split('/').fold(String::new(), |path, key| {
        match (key.parse::<usize>(), path.is_empty()) {
            (Ok(_), _) => path + "[]",
            (Err(_), true) => key.into(),
            (Err(_), false) => path + "." + key,
        }
    });
    by_type(&path)
}

/// Sets, or with `null` removes, the value at a JSON pointer; the objects on the way to it need not be there.
fn set(document: &mut Value, pointer: &str, value: &Value) {
    let (parents, key) = pointer.rsplit_once('/').unwrap();
    let parent = parents.split('/').skip(1).fold(document, |at, key| match key.parse::<usize>() {
        Ok(index) => &mut at[index],
        Err(_) => &mut at[key],
    });
    if value.is_null() {
        parent
            .as_object_mut()
            .unwrap()
            .remove(key)
            .unwrap_or_else(|| panic!("nothing to remove at {pointer}"));
    } else {
        parent[key] = value.clone();
    }
}

/// Front and rear exchanged.
fn reversed(mut document: Value) -> Value {
    for part in ["vehicle", "original", "proposed"] {
        let axles = document[part].as_object_mut().unwrap();
        let [front, rear] = ["front", "rear"].map(|axle| axles.remove(axle));
        axles.extend(rear.map(|rear| ("front".into(), rear)));
        axles.extend(front.map(|front| ("rear".into(), front)));
    }
    let drive = &mut document["vehicle"]["drive"];
    match drive.as_str() {
        Some("front") => *drive = "rear".into(),
        Some("rear") => *drive = "front".into(),
        _ => {}
    }
    document
}

/// What is found, as `kind id@place` with its figures, and the document behind a limit: a reason, a caution and a measurement to be made are no finding.
fn findings(document: &Value) -> Result<Map<String, Value>, String> {
    const FIGURES: [&str; 6] = ["verdict", "measured", "nominal", "limit", "margin", "source"];
    let read: Scenario = serde_json::from_value(document.clone()).map_err(|error| error.to_string())?;
    let report = serde_json::to_value(read.document(&read.assess())).unwrap();
    let further = report["more_axles"].as_array().into_iter().flatten();
    let further = further.flat_map(|axle| axle["checks"].as_array().unwrap()).map(|row| {
        let name = format!("{}@further", row["id"].as_str().unwrap());
        (name, FIGURES.iter().map(|figure| row[figure].clone()).collect())
    });
    let of_spare = report["spare"]["axles"].as_array().into_iter().flatten();
    let reports = || core::iter::once(&report).chain(of_spare.clone());
    let rows = |kind: &str| {
        reports().filter_map(|report| report[kind].as_array()).flatten().cloned().collect::<Vec<_>>()
    };
    let at = |row: &Value, name: &str| format!("{name}@{}", row["where"].as_str().unwrap());
    let by_id = |row: &Value| at(row, row["id"].as_str().unwrap());
    let checks = rows("checks")
        .into_iter()
        .map(|row| (by_id(&row), FIGURES.iter().map(|figure| row[figure].clone()).collect()));
    let effects = rows("effects").into_iter().map(|row| (by_id(&row), json!([row["before"], row["after"]])));
    let pressures = rows("pressures").into_iter().map(|row| (at(&row, "pressures"), row));
    let approaches = rows("approaches").into_iter().map(|row| (at(&row, "approach"), row));
    let sources =
        rows("sources").into_iter().map(|row| (format!("source@{}", row["of"].as_str().unwrap()), row));
    Ok(checks.chain(further).chain(effects).chain(pressures).chain(approaches).chain(sources).collect())
}

/// Whether a finding differs between two scenarios; if not, what else does.
fn expect(differs: &str, a: &Value, b: &Value) -> Result<(), String> {
    let (a, b) = (findings(a)?, findings(b)?);
    if a.get(differs) != b.get(differs) {
        return Ok(());
    }
    let others: BTreeSet<_> = a.keys().chain(b.keys()).filter(|&name| a.get(name) != b.get(name)).collect();
    Err(format!("{differs} is the same, {others:?} differ"))
}

struct Pair {
    pointer: String,
    a: Value,
    b: Value,
    differs: String,
    /// Whether the same holds with front and rear exchanged.
    either_axle: bool,
}

fn pairs() -> Vec<Pair> {
    let mut rows = csv::Reader::from_path(root("tests/cases/keys.csv")).unwrap();
    let pair = |row: csv::StringRecord| {
        let [pointer, name, patches, a, b, differs, axles, why] =
            row.iter().collect::<Vec<_>>().try_into().unwrap();
        assert!(!why.is_empty(), "{pointer}");
        let mut document = spelled_out(name);
        let patches: Map<String, Value> = serde_json::from_str(patches).unwrap();
        for (pointer, value) in &patches {
            set(&mut document, pointer, value);
        }
        let [a, b] = [a, b].map(|value| {
            let value: Value = serde_json::from_str(value).unwrap();
            // Both are told: that a key is there at all is not what it says.
            assert!(!value.is_null(), "{pointer}");
            let mut document = document.clone();
            set(&mut document, pointer, &value);
            document
        });
        let either_axle = match axles {
            "either" => true,
            "front" | "rear" => false,
            other => panic!("{pointer}: {other}"),
        };
        Pair { pointer: pointer.into(), a, b, differs: differs.into(), either_axle }
    };
    rows.records().map(|row| pair(row.unwrap())).collect()
}

#[test]
fn every_key_has_a_pair_and_every_pair_a_key() {
    let mut accepted = accepted_keys();
    for identity in IDENTITIES {
        accepted.remove(identity);
    }
    let paired: BTreeSet<_> = pairs().iter().map(|pair| key_at(&pair.pointer)).collect();
    let without: Vec<_> = accepted.difference(&paired).collect();
    let unknown: Vec<_> = paired.difference(&accepted).collect();
    assert!(without.is_empty() && unknown.is_empty(), "no pair: {without:#?}\nno key: {unknown:#?}");
}

#[test]
fn what_differs_only_in_a_key_differs_in_what_is_found() {
    let wrong = pairs().into_iter().filter_map(|Pair { pointer, a, b, differs, .. }| {
        Some(format!("{pointer}: {}", expect(&differs, &a, &b).err()?))
    });
    let wrong: Vec<_> = wrong.collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_key_counts_on_either_axle() {
    let wrong = pairs().into_iter().filter(|pair| pair.either_axle).filter_map(|pair| {
        let Pair { pointer, a, b, differs, .. } = pair;
        let differs = match differs.contains("front") {
            true => differs.replace("front", "rear"),
            false => differs.replace("rear", "front"),
        };
        Some(format!("{pointer} reversed: {}", expect(&differs, &reversed(a), &reversed(b)).err()?))
    });
    let wrong: Vec<_> = wrong.collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The other way round: nothing changes a finding that the check does not name. Of a vehicle that keeps its tires, which
/// were not alike in front and behind, whatever else is told of what was on its axle.
#[test]
fn a_match_of_tires_is_not_changed_by_what_is_not_theirs() {
    const NAMED: [&str; 2] = ["tire", "snow"];
    let mut kept = spelled_out("field-survey-wagon");
    set(&mut kept, "/original/rear/tire", &json!("205/55-16 91V"));
    kept["proposed"] = kept["original"].clone();
    let of = |document: &Value| findings(document).unwrap()["axle_match@vehicle"].clone();
    let (before, mut told) = (of(&kept), 0);
    for Pair { pointer, a, b, .. } in pairs() {
        let Some(key) = pointer.strip_prefix("/proposed/front/").and_then(|rest| rest.split('/').next())
        else {
            continue;
        };
        for document in [a, b].iter().filter(|_| !NAMED.contains(&key)) {
            let mut changed = kept.clone();
            let Some(value) = document["proposed"]["front"].get(key) else { panic!("{pointer}") };
            set(&mut changed, &format!("/original/front/{key}"), value);
            assert_eq!(of(&changed), before, "{key}: {value}");
            told += 1;
        }
    }
    assert!(told > 60, "{told}");
}

/// The end of a key, and each unit of its quantity with what one of it is in the unit of the key.
type Units = (&'static str, &'static [(&'static str, &'static str, f64)]);

/// By definition, but for those of the pound a square inch and the pound-foot, which follow from the pound, the foot and
/// the standard fall.
const UNITS: [Units; 10] = [
    ("_mm", &[("_mm", "mm", 1.0), ("_in", "in", 25.4), ("", "cm", 10.0), ("", "ft", 304.8)]),
    (
        "_kpa",
        &[
            ("_kpa", "kPa", 1.0),
            ("_psi", "psi", 0.453_592_37 * 9.806_65 / (25.4 * 25.4) * 1000.0),
            ("_bar", "bar", 100.0),
            ("", "kp/cm²", 98.0665),
        ],
    ),
    ("_kg", &[("_kg", "kg", 1.0), ("_lb", "lb", 0.453_592_37)]),
    ("_kmh", &[("_kmh", "km/h", 1.0), ("_mph", "mph", 1.609_344)]),
    ("_nm", &[("_nm", "N·m", 1.0), ("_ftlb", "ft-lb", 0.453_592_37 * 9.806_65 * 0.3048)]),
    ("_deg", &[("_deg", "°", 1.0)]),
    ("_percent", &[("_percent", "%", 1.0)]),
    ("_years", &[("_years", "years", 1.0)]),
    ("_turns", &[("_turns", "turns", 1.0)]),
    ("_in", &[("_in", "in", 1.0)]),
];

/// Every number of a value, by what makes another value of it.
fn each_number(value: &Value, make: &dyn Fn(f64) -> Value) -> Value {
    match value {
        Value::Array(list) => list.iter().map(|value| each_number(value, make)).collect(),
        number => make(number.as_f64().unwrap()),
    }
}

/// Whether two values are the same but for what conversion rounds.
fn is_near(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Array(a), Value::Array(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| is_near(a, b))
        }
        (Value::Number(a), Value::Number(b)) => {
            let [a, b] = [a, b].map(|number| number.as_f64().unwrap());
            (a - b).abs() <= 1e-9 * b.abs().max(1.0)
        }
        _ => a == b,
    }
}

#[test]
fn a_quantity_in_any_of_its_units_finds_the_same() {
    let (mut spelled, mut keys) = (0, BTreeSet::new());
    for Pair { pointer, a: document, .. } in pairs() {
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        let Some((end, units)) = UNITS.iter().find(|(end, _)| key.ends_with(end)) else { continue };
        let base = key.strip_suffix(end).unwrap();
        let number = document.pointer(&pointer).unwrap();
        for (suffix, unit, one) in *units {
            let text = each_number(number, &|number| json!(format!("{} {unit}", number / one)));
            let in_key = each_number(number, &|number| json!(number / one));
            let is_told_apart = base == "track_change";
            let spellings = [
                (!is_told_apart).then(|| (base.to_owned(), text.clone())),
                (!suffix.is_empty()).then(|| (format!("{base}{suffix}"), text)),
                (!suffix.is_empty() && *end != "_years").then(|| (format!("{base}{suffix}"), in_key)),
            ];
            for (spelling, value) in spellings.into_iter().flatten() {
                let mut other = document.clone();
                let object = other.pointer_mut(parent).unwrap().as_object_mut().unwrap();
                object.remove(key).unwrap();
                object.insert(spelling.clone(), value.clone());
                let read: Scenario = serde_json::from_value(other.clone())
                    .unwrap_or_else(|error| panic!("{pointer} as {spelling}: {error}"));
                let read = serde_json::to_value(read).unwrap().pointer(&pointer).unwrap_or(number).clone();
                assert!(is_near(&read, number), "{pointer} as {spelling}: {value} is {read}");
                // The very number, for what is the same as another is equal to it to the last digit.
                let mut same = document.clone();
                *same.pointer_mut(&pointer).unwrap() = read;
                assert_eq!(
                    findings(&other).unwrap(),
                    findings(&same).unwrap(),
                    "{pointer} as {spelling}: {value}"
                );
                spelled += 1;
            }
        }
        keys.insert(key_at(&pointer));
    }
    let of_quantities: BTreeSet<_> =
        accepted_keys().into_iter().filter(|key| UNITS.iter().any(|(end, _)| key.ends_with(end))).collect();
    assert_eq!(keys, of_quantities);
    assert!(spelled > 600, "{spelled}");
}
