//! Families that stand on few vehicles, row by row: what is read, as what, and what only looks like it.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use std::collections::BTreeMap;
use std::fmt::Display;
use std::path::Path;
use std::str::FromStr;

use beadseat::ParseError;
use beadseat::rim::RimSeries;
use beadseat::tire::sidewall::SidewallLine;
use beadseat::tire::{ServiceDescription, Tire, TireSize};
use beadseat::uom::si::length::inch;
use beadseat::wheel::Wheel;

/// The canonical text and what it is, or the part that does not fit.
fn read<T: Display + FromStr<Err = ParseError>>(text: &str, what: fn(&T) -> String) -> (String, String) {
    match text.parse::<T>() {
        Ok(value) => {
            let canonical = value.to_string();
            let again = canonical.parse::<T>().map(|again| (again.to_string(), what(&again)));
            assert_eq!(again, Ok((canonical.clone(), what(&value))), "{text}");
            (canonical, what(&value))
        }
        Err(error) => {
            assert!(text.get(error.span()).is_some(), "{text}");
            (format!("!{}", error.field().name()), String::new())
        }
    }
}

#[test]
fn rare_families() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases/rare_families.csv");
    let mut counts: BTreeMap<(String, bool), u32> = BTreeMap::new();
    let mut wrong = Vec::new();
    for row in csv::Reader::from_path(path).unwrap().records().map(|row| row.unwrap()) {
        let [kind, typed, outcome, what] = [0, 1, 2, 3].map(|n| row.get(n).unwrap());
        let found = match kind {
            "size" => read::<TireSize>(typed, |size| size.class().name().to_owned()),
            "tire" => read::<Tire>(typed, |tire| tire.size().class().name().to_owned()),
            "line" => read::<SidewallLine>(typed, |line| line.tire().size().class().name().to_owned()),
            "wheel" => read::<Wheel>(typed, |wheel| {
                let series = wheel.size().series().map_or("", RimSeries::mark);
                let flange =
                    wheel.size().flange_height().map(|height| format!("/{:.2}", height.get::<inch>()));
                let flange = flange.map(|text| text.trim_end_matches('0').trim_end_matches('.').to_owned());
                format!("{series}{}", flange.unwrap_or_default())
            }),
            "service" => read::<ServiceDescription>(typed, |service| {
                let second = service.second().map(|(index, speed)| format!("+{index}{speed}"));
                format!("{}{}{}", service.single(), service.speed(), second.unwrap_or_default())
            }),
            _ => panic!("{row:?}"),
        };
        if found != (outcome.to_owned(), what.to_owned()) {
            wrong.push(format!("{found:?} of {row:?}"));
        }
        *counts.entry((kind.to_owned(), outcome.starts_with('!'))).or_default() += 1;
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    println!("{counts:?}");
}
