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

/// Says which vehicle it is and nothing about it.
const IDENTITY: &str = "vehicle.name";

/// Objects of one type that stand in several places: the axles, what is on them, the tires on their ends.
const TWINS: [(&str, &str); 8] = [
    ("vehicle.front", "vehicle.axle"),
    ("vehicle.rear", "vehicle.axle"),
    ("original.front", "setup"),
    ("original.rear", "setup"),
    ("proposed.front", "setup"),
    ("proposed.rear", "setup"),
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
    let (parents, key) = pointer.strip_prefix('/').unwrap().rsplit_once('/').unwrap();
    let parent = parents.split('/').fold(document, |at, key| match key.parse::<usize>() {
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
    let report = serde_json::to_value(read.assess()).unwrap();
    let rows = |kind: &str| report[kind].as_array().unwrap().clone();
    let at = |row: &Value, name: &str| format!("{name}@{}", row["where"].as_str().unwrap());
    let by_id = |row: &Value| at(row, row["id"].as_str().unwrap());
    let checks = rows("checks")
        .into_iter()
        .map(|row| (by_id(&row), FIGURES.iter().map(|figure| row[figure].clone()).collect()));
    let effects = rows("effects").into_iter().map(|row| (by_id(&row), json!([row["before"], row["after"]])));
    let pressures = rows("pressures").into_iter().map(|row| (at(&row, "pressures"), row));
    let approaches = rows("approaches").into_iter().map(|row| (at(&row, "approach"), row));
    Ok(checks.chain(effects).chain(pressures).chain(approaches).collect())
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
    accepted.remove(IDENTITY);
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
        let differs = match differs.contains("@front") {
            true => differs.replace("@front", "@rear"),
            false => differs.replace("@rear", "@front"),
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
