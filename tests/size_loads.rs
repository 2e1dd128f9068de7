//! Load indices of sizes against what is expected of them.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use std::collections::BTreeMap;

use beadseat::Citation;
use beadseat::tire::{LoadIndex, Tire};
use common::{Tally, rows};

/// The load in whole kilograms that a source states, if it states one. An index that is worked out from it was not seen: it
/// is seen only where the load is that of the index.
fn stated_load(source: &str) -> Option<u32> {
    let words: Vec<_> = source.split_whitespace().collect();
    let stated = words.windows(2).find_map(|pair| {
        let kg = match pair[1] {
            "kg" => 1.0,
            "lb" => 0.453_592_37,
            _ => return None,
        };
        Some(pair[0].parse::<f64>().ok()? * kg)
    });
    stated.map(|kg| kg.round() as u32)
}

/// The load of an index, in whole kilograms.
fn load_kg(index: u16) -> u32 {
    let load = LoadIndex::new(index).unwrap().load();
    load.get::<beadseat::uom::si::mass::kilogram>().round() as u32
}

/// What is expected of a size that is coined is its remembered index, and the estimate by its dimensions alone lies little
/// above the index and never below.
#[test]
fn sizes_bear_what_is_expected() {
    let mut tally = Tally::of("load indices of sizes");
    let mut apart: BTreeMap<&str, (i32, i32)> = BTreeMap::new();
    let mut seen = 0;
    for row in &rows("size_loads.csv") {
        let text = format!("{} {} {}", &row["size"], &row["load_version"], &row["load_range"]);
        let tire = Tire::parse(text.trim()).unwrap_or_else(|error| panic!("{row}: {error}"));
        let index = row.number("load_index") as i32;
        let estimate = i32::from(tire.estimated_load_index().unwrap_or_else(|| panic!("{row}")).number());
        let (least, most) = apart.entry(tire.size().family()).or_insert((i32::MAX, i32::MIN));
        (*least, *most) = ((*least).min(estimate - index), (*most).max(estimate - index));
        let expected = i32::from(tire.expected_load_index().unwrap().number());
        if tire.size().class().is_passenger() && &row["size"] != "HL245/40R19" {
            assert_eq!(expected, index, "{row}");
            assert_eq!(tire.size().listed_in(), Some(Citation::COINED_SIZES), "{row}");
        }
        // Of a weaker load range than the one remembered it follows from that of the stronger one.
        assert!((index - 1..=estimate).contains(&expected), "{row}: {expected}");
        if row.certainty() != "memory" {
            seen += 1;
            assert!(estimate - index <= 3, "{row}: {estimate}");
            assert!(stated_load(&row["source"]).is_none_or(|kg| kg == load_kg(index as u16)), "{row}");
        }
        tally.checked(row);
    }
    // As the documentation of the estimate has it.
    assert_eq!(seen, 6);
    let documented = [
        ("commercial", 10),
        ("flotation", 10),
        ("high_load", 1),
        ("lt_metric", 13),
        ("metric", 5),
        ("motorcycle_metric", 11),
        ("p_metric", 1),
        ("trailer", 3),
        ("truck_metric", 18),
    ];
    assert!(apart.values().all(|(least, _)| *least >= 0), "{apart:?}");
    assert!(apart.iter().map(|(family, (_, most))| (*family, *most)).eq(documented), "{apart:?}");
    tally.close(526, &[]);
}
