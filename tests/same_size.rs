//! One size, however its decimals were typed, is one value; and what only looks like it is another.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use std::hash::{BuildHasher, RandomState};
use std::path::Path;

use beadseat::tire::TireSize;
use beadseat::units::mm;
use beadseat::wheel::{Wheel, WheelSize};

fn size(text: &str) -> TireSize {
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

#[test]
fn decimals_that_say_nothing_are_not_kept() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases/same_size.csv");
    let hasher = RandomState::new();
    let mut reader = csv::Reader::from_path(path).unwrap();
    let mut rows = 0;
    for row in reader.records().map(|row| row.unwrap()) {
        let [typed, canonical, same, other] = [0, 1, 2, 3].map(|n| row.get(n).unwrap());
        let (read, same_read) = (size(typed), size(same));
        assert_eq!(read.to_string(), canonical, "{row:?}");
        assert_eq!(read, same_read, "{row:?}");
        assert_eq!(hasher.hash_one(read), hasher.hash_one(same_read), "{row:?}");
        assert_eq!(size(canonical), read, "{row:?}");
        assert_ne!(read, size(other), "{row:?}");
        rows += 1;
    }
    assert_eq!(rows, 15);
}

#[test]
fn what_a_table_lists_is_found_however_it_is_typed() {
    // UN R54 Annex 5, from memory.
    for (typed, diameter) in [("33x12.5R15LT", 826.0), ("33x12.50R15LT", 826.0), ("31x10.5R15LT", 775.0)] {
        assert_eq!(size(typed).overall_diameter().map(|d| d.nominal()), Some(mm(diameter)), "{typed}");
    }
}

#[test]
fn decimals_of_a_rim_say_nothing() {
    for (typed, canonical) in [("6.0Jx16", "6Jx16"), ("6Jx16.0", "6Jx16"), ("6.50Jx16", "6.5Jx16")] {
        assert_eq!(WheelSize::parse(typed), WheelSize::parse(canonical));
        assert_eq!(WheelSize::parse(typed).unwrap().to_string(), canonical);
    }
    let wheel = Wheel::parse("7Jx16 ET45.0 5x112.00 57.10").unwrap();
    assert_eq!(Wheel::parse("7Jx16 ET45 5x112 57.1"), Ok(wheel));
    assert_eq!(wheel.to_string(), "7Jx16 ET45 5x112 57.1");
}
