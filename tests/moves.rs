//! What a change moves, by hand-made rows of five kinds of vehicle, and as it is printed.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use std::path::Path;

use beadseat::Count;
use beadseat::fitment::moves::{MoveId, Moves};
use beadseat::fitment::{Change, Document, Position, Setup, Value};
use beadseat::units::{in_kmh, in_mm, kmh, mm};
use beadseat::vehicle::{Axle, Vehicle};

fn number(value: Value) -> f64 {
    match value {
        Value::Length(length) => in_mm(length),
        Value::Velocity(speed) => in_kmh(speed),
        other => panic!("{other} is neither a length nor a speed"),
    }
}

fn numbers(cell: &str) -> Vec<f64> {
    cell.split_whitespace().map(|word| word.parse().unwrap()).collect()
}

fn setup(cell: &str) -> Setup {
    let (tire, wheel) = cell.split_once(" | ").unwrap();
    Setup::parse(tire, wheel).unwrap_or_else(|error| panic!("{cell}: {error}"))
}

fn vehicle([kind, drive, wheels, top]: [&str; 4], place: Position) -> Vehicle {
    let mut vehicle = Vehicle::unknown();
    if let Ok(kind) = kind.parse() {
        vehicle = vehicle.with_kind(kind);
    }
    if let Ok(drive) = drive.parse() {
        vehicle = vehicle.with_drive(drive);
    }
    if let Ok(top) = top.parse() {
        vehicle = vehicle.with_top_speed(kmh(top)).unwrap();
    }
    let Some(wheels) = wheels.parse().ok().and_then(Count::new) else { return vehicle };
    let axle = Axle::new().with_wheels_per_side(wheels);
    match place {
        Position::Front => vehicle.with_front(axle),
        _ => vehicle.with_rear(axle),
    }
}

#[test]
fn every_move_goes_as_its_row_says() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases/moves.csv");
    let mut rows = 0;
    for row in csv::Reader::from_path(path).unwrap().records() {
        let row = row.unwrap();
        let [case, kind, drive, wheels, top, place, original, proposed, id, before, after, source] =
            row.iter().collect::<Vec<_>>().try_into().unwrap();
        let case = format!("{case}, {id} [{source}]");
        let place: Position = place.parse().unwrap();
        let [old, new] = [original, proposed].map(setup);
        let change = if place == Position::Front { Change::front(old, new) } else { Change::rear(old, new) };
        let id: MoveId = id.parse().unwrap();
        let moves = Moves::of(&vehicle([kind, drive, wheels, top], place), &change);
        let found: Vec<_> = moves.iter().filter(|m| m.id() == id && m.position() == place).collect();
        let close = |is: &[f64], should: &[f64]| {
            is.len() == should.len() && is.iter().zip(should).all(|(a, b)| (a - b).abs() < 1e-6)
        };
        let is_before: Vec<f64> = found.iter().filter_map(|m| m.before().map(number)).collect();
        let is_after: Vec<f64> = found.iter().filter_map(|m| m.after().map(number)).collect();
        assert!(close(&is_before, &numbers(before)), "{case}: before {is_before:?}");
        assert!(close(&is_after, &numbers(after)), "{case}: after {is_after:?}");
        for found in found {
            let nominal = [found.before(), found.after()].map(|value| value.map(number));
            let change = nominal[0].zip(nominal[1]).map(|(before, after)| after - before);
            let is = found.change().map(number);
            assert!(
                (is.unwrap_or(0.0) - change.unwrap_or(0.0)).abs() < 1e-9 && is.is_some() == change.is_some(),
                "{case}"
            );
        }
        rows += 1;
    }
    assert_eq!(rows, 30);
}

/// Both spacer and span, which a row has no room for.
#[test]
fn a_spacer_moves_every_face_and_no_inset() {
    let old = setup("205/55R16 | 6.5Jx16 ET46");
    let new = old.with_spacer(mm(5.0)).unwrap();
    let moves = Moves::of(&Vehicle::unknown(), &Change::front(old, new));
    for found in moves.iter() {
        let moved = match found.id() {
            MoveId::RimOuterFace | MoveId::RimInnerFace | MoveId::TireOuterFace | MoveId::TireInnerFace => {
                "5 mm further out"
            }
            _ => "unchanged",
        };
        assert!(found.to_string().ends_with(moved), "{found}");
    }
    let diameter = moves.iter().find(|m| m.id() == MoveId::OverallDiameter).unwrap();
    let (least, most) = diameter.after_span().unwrap();
    assert_eq!([least, most].map(|value| value.to_string()), ["625.22 mm", "641.04 mm"]);
}

/// Axles that move alike stand once; the block is made for 80 columns.
#[test]
fn what_moves_is_said_before_what_was_found() {
    let [old, new] = ["205/55R16 | 6.5Jx16 ET46", "225/45R17 | 7.5Jx17 ET42"].map(setup);
    let vehicle = Vehicle::unknown();
    let text = |change: Change| {
        let report = change.assess(&vehicle);
        Document::new(&report, &vehicle, &change).to_string()
    };
    let both = text(Change::all_round(old, new));
    let (_, block) = both.split_once("\nWhat moves").unwrap();
    let block = block.split_once("\n\n").unwrap().0;
    assert_eq!(block.lines().count(), 1 + 1 + 14 + 2, "{block}");
    assert!(block.lines().all(|line| line.chars().count() <= 80), "{block}");
    assert!(block.contains("\nfront and rear "), "{block}");
    for line in [
        "  inset                      46 mm       42 mm  4 mm less",
        "  outer face of rim       49.25 mm    65.95 mm  16.7 mm further out",
        "  overall diameter          632 mm      634 mm  2 mm larger",
        "    as made, most        641.04 mm   642.08 mm",
        "  true speed, as shown     40 km/h  40.13 km/h  0.13 km/h faster",
    ] {
        assert!(block.lines().any(|found| found == line), "no {line:?} in\n{block}");
    }
    let one = text(Change { original: Change::front(old, new).original, ..Change::all_round(old, new) });
    assert!(one.contains("\nfront  ") && one.contains("\nrear  "), "{one}");
    assert!(one.contains("before it is not known"), "{one}");
}
