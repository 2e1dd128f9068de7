//! Load indices of sizes against what is expected of them.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use std::collections::BTreeMap;

use beadseat::Citation;
use beadseat::tire::Tire;
use common::{Tally, rows};

/// What is expected of a size that is coined is its remembered index, and the estimate by its dimensions alone lies little
/// above the index and never below.
#[test]
fn sizes_bear_what_is_expected() {
    let mut tally = Tally::of("load indices of sizes");
    let mut apart: BTreeMap<&str, (i32, i32)> = BTreeMap::new();
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
        assert!(row.certainty() == "memory" || estimate - index <= 3, "{row}: {estimate}");
        tally.checked(row);
    }
    // As the documentation of the estimate has it.
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
