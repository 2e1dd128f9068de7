//! The facts of a marking, row by row: what people are told in either unit, and where it is laid down. The values of the
//! table are worked out from the definitions in its last column, not by the crate.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use std::collections::BTreeSet;

use beadseat::marking::{Fact, Term, readings};
use beadseat::{Marking, UnitSystem};

fn table(name: &str) -> Vec<Vec<String>> {
    let path = format!("{}/tests/cases/{name}", env!("CARGO_MANIFEST_DIR"));
    let mut reader = csv::Reader::from_path(path).expect("the file can be opened");
    reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect()
}

#[test]
fn every_row_is_told_as_it_says() {
    let mut wrong = Vec::new();
    let rows = table("facts.csv");
    assert!(rows.len() >= 60);
    for row in rows {
        let [text, key, metric, us, source, why] = &row[..] else { panic!("{row:?}") };
        assert!(!why.is_empty());
        let marking = Marking::parse(text).expect(text);
        let fact = marking.facts().find(|fact| fact.term().key() == key).expect(key);
        let told = |units| fact.told_in(units).to_string();
        let found = fact.source().map(|source| source.to_string()).unwrap_or_default();
        let is_from = if source.is_empty() { found.is_empty() } else { found.starts_with(source) };
        if (&told(UnitSystem::Metric), &told(UnitSystem::Us)) != (metric, us) || !is_from {
            wrong.push(format!(
                "{text} {key}: {:?} {:?} {found:?}",
                told(UnitSystem::Metric),
                told(UnitSystem::Us)
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Of every reading of every text: no key twice, a value and its source or neither, no value that shows nothing, numbers
/// that are numbers, and one value at most but where several may be.
#[test]
fn facts_of_every_reading_hold_together() {
    let mut told: BTreeSet<&str> = BTreeSet::new();
    for row in table("readings.csv") {
        let Ok(all) = readings(&row[0]) else { continue };
        for reading in all.iter() {
            let marking = reading.marking();
            let facts: Vec<Fact<'_>> = marking.facts().collect();
            assert!(!facts.is_empty(), "{marking} says nothing");
            let keys: BTreeSet<&str> = facts.iter().map(|fact| fact.term().key()).collect();
            assert_eq!(keys.len(), facts.len(), "{marking}");
            for fact in facts {
                let (term, values) = (fact.term(), fact.values().collect::<Vec<_>>());
                assert_eq!(fact.value(), values.first().copied());
                assert!(values.len() <= 1 || term.is_many(), "{marking} {}", term.key());
                assert_eq!(fact.source().is_some(), !values.is_empty(), "{marking} {}", term.key());
                for value in values {
                    told.insert(term.key());
                    assert!(value.number().is_none_or(f64::is_finite));
                    for &units in UnitSystem::ALL {
                        assert!(!value.told_in(units).to_string().is_empty(), "{marking} {}", term.key());
                    }
                }
            }
        }
    }
    let untold: Vec<_> = Term::ALL.iter().filter(|term| !told.contains(term.key())).collect();
    assert!(untold.is_empty(), "no text tells {untold:?}");
}

/// What is measured from the least to the greatest is told in that order.
#[test]
fn ranges_are_in_order() {
    use beadseat::marking::FactValue;
    let mut ranges = 0;
    for row in table("readings.csv") {
        let Ok(all) = readings(&row[0]) else { continue };
        for reading in all.iter() {
            for fact in reading.marking().facts() {
                match fact.value() {
                    Some(FactValue::Range { min, nominal, max }) => {
                        ranges += 1;
                        let known: Vec<_> = [min, nominal, max].into_iter().flatten().collect();
                        assert!(known.is_sorted(), "{} {}", reading.marking(), fact.term().key());
                    }
                    Some(FactValue::RimWidths(range)) => assert!(range.min() <= range.max()),
                    _ => {}
                }
            }
        }
    }
    assert!(ranges > 200);
}
