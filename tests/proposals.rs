//! Two proposals for one vehicle side by side, against the reports on each.
#![cfg(all(feature = "jiff", feature = "serde", feature = "svg"))]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/program.rs"]
mod program;
#[path = "common/scenario.rs"]
mod scenario;

use std::path::PathBuf;

use beadseat::fitment::comparison::{Comparison, Ground, Pair};
use beadseat::fitment::{Report, UnitSystem, Verdict};
use program::run;
use scenario::{SHIPPED, read, shipped};
use serde_json::{Value, json};

/// The wagon with other values at JSON pointers.
fn wagon_with(values: &[(&str, Value)]) -> Value {
    let mut document = shipped("field-survey-wagon");
    for (pointer, value) in values {
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        document.pointer_mut(parent).unwrap().as_object_mut().unwrap().insert(key.into(), value.clone());
    }
    document
}

/// What is said of a comparison.
fn compared<T>(
    documents: [&Value; 2],
    units: UnitSystem,
    say: impl Fn(Comparison<'_>, [&Report; 2]) -> T,
) -> T {
    let [a, b] = documents.map(read);
    let [of_a, of_b] = [a.assess(), b.assess()];
    let proposals = [(&a, &of_a), (&b, &of_b)].map(|(scenario, report)| {
        scenario.document(report).in_units(units).under(scenario.conditions(), scenario.limits())
    });
    say(Comparison::new(proposals), [&of_a, &of_b])
}

/// Pairs of scenarios: a shipped one with itself and with every other, and the wagon with other proposals.
fn pairs() -> Vec<[Value; 2]> {
    let all = SHIPPED.map(shipped);
    let mut pairs: Vec<_> = all.iter().flat_map(|a| all.iter().map(|b| [a.clone(), b.clone()])).collect();
    let wagon = shipped("field-survey-wagon");
    for other in [
        ("/proposed/front/tire", json!("235/45R17 94W")),
        ("/proposed/front/wheel", json!("8Jx17 H2 ET30 5x114.3 66.6")),
        ("/proposed/rear", json!(wagon["original"]["front"])),
        ("/proposed", json!({ "rear": wagon["proposed"]["front"] })),
        ("/vehicle/front/hub", json!(null)),
    ] {
        pairs.push([wagon.clone(), wagon_with(&[other])]);
    }
    pairs
}

#[test]
fn a_thing_held_against_itself_differs_in_nothing() {
    for name in SHIPPED {
        let document = shipped(name);
        compared([&document, &document], UnitSystem::Metric, |comparison, _| {
            assert_eq!(comparison.differs_in().count(), 0);
            assert!(comparison.checks().all(|pair| !pair.differs() && matches!(pair, Pair::Both(..))));
            assert!(comparison.moves().all(|pair| !pair.differs()));
            assert!(comparison.pressures().all(|pair| !pair.differs()));
            let text = comparison.to_string();
            assert!(text.contains("Nothing that was found differs.") && !text.contains("Caution:"), "{text}");
        });
    }
}

#[test]
fn exchanging_the_two_exchanges_the_columns() {
    for [a, b] in pairs() {
        let of = |documents| {
            compared(documents, UnitSystem::Metric, |comparison, _| {
                let differs: Vec<_> = comparison.differs_in().collect();
                (comparison.checks().collect::<Vec<_>>(), comparison.pressures().collect::<Vec<_>>(), differs)
            })
        };
        let (checks, pressures, differs) = of([&a, &b]);
        let (checks_back, pressures_back, differs_back) = of([&b, &a]);
        assert_eq!(checks, checks_back.into_iter().map(Pair::swapped).collect::<Vec<_>>());
        assert_eq!(pressures, pressures_back.into_iter().map(Pair::swapped).collect::<Vec<_>>());
        assert_eq!(differs, differs_back);
    }
}

#[test]
fn every_finding_of_either_report_appears_once_the_gravest_first() {
    for [a, b] in &pairs() {
        compared([a, b], UnitSystem::Metric, |comparison, reports| {
            let checks: Vec<_> = comparison.checks().collect();
            for (side, report) in reports.into_iter().enumerate() {
                let of_side =
                    |pair: &Pair<_>| if side == 0 { pair.first().copied() } else { pair.second().copied() };
                let found: Vec<_> = checks.iter().filter_map(of_side).collect();
                assert_eq!(found.len(), report.checks().count());
                assert!(
                    report.checks().all(|check| found.iter().filter(|other| **other == check).count() == 1)
                );
                let moved = comparison.moves().filter_map(|pair| match side {
                    0 => pair.first().copied(),
                    _ => pair.second().copied(),
                });
                let scenario = read([a, b][side]);
                let document = scenario.document(report);
                assert_eq!(moved.count(), document.moves().iter().count());
            }
            for pair in &checks {
                if let Pair::Both(a, b) = pair {
                    assert_eq!((a.id(), a.position()), (b.id(), b.position()));
                }
            }
            let order = [
                Verdict::Beyond,
                Verdict::Marginal,
                Verdict::NotAssessed,
                Verdict::Within,
                Verdict::NotApplicable,
            ];
            let rank = |pair: &Pair<beadseat::fitment::Check>| {
                let verdicts =
                    [pair.first(), pair.second()].into_iter().flatten().map(|check| check.verdict());
                verdicts.map(|verdict| order.iter().position(|other| *other == verdict)).min()
            };
            assert!(checks.windows(2).all(|pair| rank(&pair[0]) <= rank(&pair[1])));
        });
    }
}

#[test]
fn figures_are_those_of_each_report() {
    for [a, b] in &pairs() {
        let json =
            compared([a, b], UnitSystem::Metric, |comparison, _| serde_json::to_value(comparison).unwrap());
        for (whose, document) in [("a", a), ("b", b)] {
            let scenario = read(document);
            let report = scenario.assess();
            let alone = serde_json::to_value(scenario.document(&report)).unwrap();
            for list in ["checks", "moves", "approaches", "pressures"] {
                let of_pairs: Vec<_> = json[list]
                    .as_array()
                    .unwrap()
                    .iter()
                    .map(|pair| &pair[whose])
                    .filter(|v| !v.is_null())
                    .collect();
                let listed = alone[list].as_array().unwrap();
                assert_eq!(of_pairs.len(), listed.len(), "{list}");
                assert!(listed.iter().all(|row| of_pairs.contains(&row)), "{list}");
            }
            for key in ["overall", "complete", "setups"] {
                assert_eq!(json[key][whose], alone[key]);
            }
            assert_eq!(json["names"][whose], alone["name"]);
            let cautions: Vec<_> = json["cautions"].as_array().unwrap().iter().collect();
            let own = cautions.iter().filter(|row| row[whose] == true).map(|row| row["caution"].clone());
            assert_eq!(own.collect::<Vec<_>>(), *alone["cautions"].as_array().unwrap());
        }
    }
}

#[test]
fn the_text_keeps_80_columns_and_cuts_nothing() {
    for [a, b] in &pairs() {
        for units in [UnitSystem::Metric, UnitSystem::Us, UnitSystem::Both] {
            let text = compared([a, b], units, |comparison, _| comparison.to_string());
            for line in text.lines() {
                assert!(line.chars().count() <= 80 && !line.ends_with(' '), "{line:?} in\n{text}");
            }
        }
    }
}

/// What differs besides is said first, by its object in a program and by its key in the example.
#[test]
fn what_differs_besides_is_said_first() {
    let sources = |of: &str| json!([{ "of": of, "from": "measured" }]);
    let rows: [(&str, Value, Option<Ground>); 8] = [
        ("/sources", sources("vehicle.front.max_load_kg"), Some(Ground::Sources)),
        ("/sources", sources("proposed.front.tire"), None),
        ("/vehicle/front/max_load_kg", json!(1000), Some(Ground::Vehicle)),
        ("/original/front/pressure_kpa", json!(220), Some(Ground::Original)),
        ("/use/towing", json!(true), Some(Ground::Conditions)),
        ("/limits/track_change_percent", json!(1.0), Some(Ground::Limits)),
        ("/proposed/front/tire", json!("215/45R17 91W XL"), None),
        ("/vehicle/name", json!("the same wagon, called otherwise"), None),
    ];
    let base = wagon_with(&[("/limits", json!({ "set": "default" }))]);
    let path = |name: &str, document: &Value| -> PathBuf {
        let path = std::env::temp_dir().join(format!("beadseat-{}-{name}.json", std::process::id()));
        std::fs::write(&path, document.to_string()).unwrap();
        path
    };
    let first = path("first", &base);
    for (pointer, value, ground) in rows {
        let mut other = base.clone();
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        other.pointer_mut(parent).unwrap().as_object_mut().unwrap().insert(key.into(), value);
        compared([&base, &other], UnitSystem::Metric, |comparison, _| {
            assert!(comparison.differs_in().eq(ground), "{pointer}");
        });
        let second = path("second", &other);
        let said = |flags: &[&str]| {
            let output =
                run("assess", &[&[first.to_str().unwrap(), second.to_str().unwrap()], flags].concat(), "");
            assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
            String::from_utf8(output.stdout).unwrap()
        };
        let json: Value = serde_json::from_str(&said(&["--json"])).unwrap();
        let dotted = pointer[1..].replace('/', ".");
        let keys: Vec<&str> =
            json["differs_in"].as_array().unwrap().iter().map(|key| key.as_str().unwrap()).collect();
        // The rear axle of the wagon has the setup of the front one.
        let also = dotted.replace("front", "rear");
        match ground {
            Some(_) => assert!(keys.contains(&dotted.as_str()), "{keys:?}"),
            None => assert_eq!(keys, Vec::<&str>::new()),
        }
        assert!(keys.iter().all(|key| *key == dotted || *key == also), "{keys:?}");
        for flags in [&[][..], &["--markdown"], &["--csv"]] {
            let text = said(flags);
            let told = dotted.replace('_', if flags == ["--markdown"] { "\\_" } else { "_" });
            assert_eq!(text.contains(&told), ground.is_some(), "{pointer} {flags:?}\n{text}");
            let cautioned = text.contains("not two proposals for one vehicle");
            assert_eq!(cautioned, ground.is_some() && flags != ["--csv"], "{pointer} {flags:?}");
        }
        std::fs::remove_file(second).unwrap();
    }
    std::fs::remove_file(first).unwrap();
}

#[test]
fn a_spreadsheet_and_a_page_hold_every_pair() {
    let [wagon, van] =
        ["field-survey-wagon", "one-tonne-panel-van"].map(|name| format!("examples/scenarios/{name}.json"));
    let said = |flag: &str| {
        let output = run("assess", &[&wagon, &van, flag], "");
        assert_eq!(output.status.code(), Some(0));
        String::from_utf8(output.stdout).unwrap()
    };
    let json: Value = serde_json::from_str(&said("--json")).unwrap();
    let count = |key: &str| json[key].as_array().unwrap().len();
    let sheet = said("--csv");
    let rows: Vec<_> =
        csv::Reader::from_reader(sheet.as_bytes()).into_records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), count("differs_in") + count("moves") + count("checks"));
    let page = said("--markdown");
    assert!(page.starts_with("# Two proposals side by side\n"));
    let rows = page.lines().filter(|line| line.starts_with("| ")).count();
    let tables = page.lines().filter(|line| line.starts_with("| ---")).count();
    let differing = json["moves"].as_array().unwrap().iter().filter(|pair| pair["differs"] == true).count();
    let setups =
        ["a", "b"].map(|whose| json["setups"][whose].as_array().unwrap().len()).iter().sum::<usize>();
    assert_eq!(rows, 2 * tables + setups + count("checks") + differing);
    for flags in [&["--summary"][..], &["--explain", "tire_load"], &["--lines"], &["--json", "--csv"]] {
        let output = run("assess", &[&[wagon.as_str(), &van], flags].concat(), "");
        assert_eq!(output.status.code(), Some(2), "{flags:?}");
        assert!(!output.stderr.is_empty() && output.stdout.is_empty(), "{flags:?}");
    }
    let output = run("assess", &[&wagon, "no such file.json"], "");
    assert!(String::from_utf8_lossy(&output.stderr).starts_with("no such file.json: "));
}
