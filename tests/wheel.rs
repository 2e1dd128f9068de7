//! Offsets, rim edges and bolt circles against worked rows.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::rim::RimWidth;
use beadseat::units::{inches, mm};
use beadseat::uom::si::f64::Length;
use beadseat::uom::si::length::{inch, millimeter};
use beadseat::wheel::{BoltCircle, Inset, RimEdges, Seat, WheelSize};
use beadseat::{ParseErrorKind, Toleranced};
use common::{Row, Tally, number_of, numbers, rows, value_of};

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn rim(inches: &str) -> RimWidth {
    inches.trim_end_matches("in").parse().unwrap_or_else(|error| panic!("{inches}: {error}"))
}

fn inset(millimetres: &str) -> Inset {
    let millimetres = millimetres.trim_end_matches("mm");
    format!("ET{millimetres}").parse().unwrap_or_else(|error| panic!("{millimetres}: {error}"))
}

fn circle(count: f64, diameter: impl std::fmt::Display) -> BoltCircle {
    let text = format!("{count}x{diameter}");
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

#[track_caller]
fn length_near(row: &Row, computed: Length) {
    match &row["unit"] {
        "mm" => row.rounds_to("value", in_mm(computed)),
        "in" => row.rounds_to("value", computed.get::<inch>()),
        unit => panic!("unit {unit} of {row}"),
    }
}

#[test]
fn worked_rows() {
    let mut tally = Tally::of("wheel, worked rows");
    let mut by_group = std::collections::BTreeMap::<String, usize>::new();
    // Rows that the tests of other files take, which count them again.
    let mut elsewhere = [0; 4];
    for row in &rows("wheel_worked.csv") {
        let (group, case) = row["id"].split_once('.').unwrap_or_else(|| panic!("{row}"));
        match group {
            "G1" => offset(row),
            "G1i" => offset_from_backspacing(row),
            "G2" => edges(row),
            "G5" => chord_factor(row),
            "G5i" => diameter_from_chord(row),
            "G5p" => chord(row, case),
            "G16" => inches_to_mm(row),
            "G16m" => mm_to_inches(row),
            "G6" | "G7" | "G8" | "G9" | "G9s" | "G10" | "G10b" | "G10c" | "G11" | "G12" | "G13" => {
                elsewhere[0] += 1; // bolt_circle.rs
                continue;
            }
            "C1" | "C2" | "C3" | "C4" | "C4r" | "C5" => {
                elsewhere[1] += 1; // wheel_strength.rs
                continue;
            }
            "G3" | "G4" | "G4a" | "G14" | "G15" | "G17" => {
                elsewhere[2] += 1; // wheel_geometry.rs
                continue;
            }
            "FA" | "FE" | "FJ" | "FK" | "FL" | "FT" | "FU" | "FY" => {
                elsewhere[3] += 1; // fastener.rs
                continue;
            }
            _ => panic!("no test takes {row}"),
        }
        *by_group.entry(group.to_owned()).or_default() += 1;
        tally.checked(row);
    }
    println!("{by_group:?}");
    let expected =
        [("G1", 35), ("G1i", 6), ("G2", 18), ("G5", 36), ("G5i", 8), ("G5p", 67), ("G16", 6), ("G16m", 14)];
    for (group, count) in expected {
        assert_eq!(by_group.get(group), Some(&count), "{group}");
    }
    assert_eq!(elsewhere, [219, 47, 93, 125]);
    tally.close(190, &[]);
}

fn offset(row: &Row) {
    let inputs = &row["inputs"];
    let (width, inset) = (rim(value_of(inputs, "W")), inset(value_of(inputs, "e")));
    let flange = mm(number_of(inputs, "f"));
    let (back, front) = (inset.backspacing(width, flange), inset.frontspacing(width, flange));
    let edges = RimEdges::of(width, inset, mm(0.0), Toleranced::exact(flange));
    let overall = (edges.outer() - edges.inner()).nominal();
    match &row["quantity"] {
        "BS" => {
            length_near(row, back);
            length_near(row, -edges.inner().nominal());
        }
        "FS" => {
            length_near(row, front);
            length_near(row, edges.outer().nominal());
        }
        "OW" => length_near(row, overall),
        _ => panic!("{row}"),
    }
    assert_eq!(Inset::from_backspacing(width, back, flange), Ok(inset), "{row}");
}

fn offset_from_backspacing(row: &Row) {
    let inputs = &row["inputs"];
    let (width, flange) = (rim(value_of(inputs, "W")), mm(number_of(inputs, "f")));
    let inset = Inset::from_backspacing(width, inches(number_of(inputs, "BS")), flange).unwrap();
    match &row["quantity"] {
        "e" => length_near(row, inset.length()),
        "FS" => length_near(row, inset.frontspacing(width, flange)),
        _ => panic!("{row}"),
    }
}

/// What the middle, the outer and the inner edge of the rim move by from one wheel to another.
fn moved(from: RimEdges, to: RimEdges) -> [Length; 3] {
    let change = from.change_to(&to);
    [change.centre(), change.outboard(), change.inboard()]
}

fn edges(row: &Row) {
    let inputs = &row["inputs"];
    let of = |n: u8| {
        let key = |letter: &str| format!("{letter}{n}");
        RimEdges::of(
            rim(value_of(inputs, &key("W"))),
            inset(value_of(inputs, &key("e"))),
            mm(number_of(inputs, &key("s"))),
            Toleranced::exact(mm(12.7)),
        )
    };
    let [centre, outboard, inboard] = moved(of(1), of(2));
    match &row["quantity"] {
        "d" => length_near(row, centre),
        "D_out" => length_near(row, outboard),
        "D_in" => length_near(row, inboard),
        _ => panic!("{row}"),
    }
}

fn chord_factor(row: &Row) {
    let (count, apart) = (number_of(&row["inputs"], "n"), number_of(&row["inputs"], "k"));
    let holes = circle(count, 100);
    let factor = in_mm(holes.chord(apart as u8).unwrap()) / in_mm(holes.diameter());
    match &row["quantity"] {
        "sin(k*pi/n)" => row.rounds_to("value", factor),
        "1/sin" => row.rounds_to("value", 1.0 / factor),
        _ => panic!("{row}"),
    }
}

/// The diameter is printed to the millionth of a millimetre, which a bolt circle holds exactly: its
/// chord is the measured one again.
fn diameter_from_chord(row: &Row) {
    let inputs = &row["inputs"];
    let holes = circle(number_of(inputs, "n"), row["value"].trim_end_matches('0'));
    assert_eq!(in_mm(holes.diameter()), row.number("value"), "{row}");
    let chord = in_mm(holes.chord(number_of(inputs, "k") as u8).unwrap());
    let measured = number_of(inputs, "C");
    assert!((chord - measured).abs() < 0.5e-6, "{chord} mm for {row}");
}

fn chord(row: &Row, case: &str) {
    let holes: BoltCircle = case.parse().unwrap();
    assert_eq!(f64::from(holes.count()), number_of(&row["inputs"], "n"), "{row}");
    assert_eq!(in_mm(holes.diameter()), number_of(&row["inputs"], "D"), "{row}");
    let apart: u8 = row["quantity"].strip_prefix('C').unwrap().parse().unwrap();
    length_near(row, holes.chord(apart).unwrap());
    if apart == holes.count() / 2 {
        length_near(row, holes.longest_chord());
    }
}

fn inches_to_mm(row: &Row) {
    let inputs = &row["inputs"];
    let [number] = numbers(inputs)[..] else { panic!("{row}") };
    length_near(row, inches(number));
    let text = format!("5x{inputs}");
    let decimals = inputs.trim_end_matches(" in").split_once('.').map_or(0, |(_, decimals)| decimals.len());
    if decimals > 4 {
        let error = text.parse::<BoltCircle>().unwrap_err();
        assert_eq!(error.kind(), ParseErrorKind::TooPrecise, "finer than the exact lengths: {row}");
    } else {
        assert_eq!(text.parse(), Ok(circle(5.0, &row["value"])), "{row}");
    }
}

fn mm_to_inches(row: &Row) {
    let [number] = numbers(&row["inputs"])[..] else { panic!("{row}") };
    length_near(row, circle(5.0, number).diameter());
    length_near(row, mm(number));
}

/// `6.5J ET45` and the like.
fn wheel(text: &str, spacer: f64) -> RimEdges {
    let (width, inset) = text.split_once(' ').unwrap();
    let size: WheelSize = format!("{width}x16").parse().unwrap();
    RimEdges::of(size.width(), inset.parse().unwrap(), mm(spacer), Toleranced::exact(mm(12.7)))
}

#[test]
fn changes_of_a_wheel() {
    let mut tally = Tally::of("rim edges, worked rows");
    for row in &rows("mechanics_worked.csv") {
        let inputs = &row["inputs"];
        let from_to = || {
            let (from, to) = inputs.split_once(" -> ").unwrap();
            moved(wheel(from, 0.0), wheel(to, 0.0))
        };
        let change = match &row["id"] {
            "FT-01" | "FT-03" => from_to()[1],
            "FT-04" => from_to()[2],
            "FT-06" => {
                let (fitted, spacer) = inputs.split_once(" + ").unwrap();
                moved(wheel(fitted, 0.0), wheel(fitted, numbers(spacer)[0]))[2]
            }
            "FT-07" => {
                let (from, to) = inputs.trim_end_matches(" both sides").split_once(" -> ").unwrap();
                let [from, to] = [from, to].map(|inset| wheel(&format!("7J {inset}"), 0.0));
                moved(from, to)[0] * 2.0
            }
            _ => continue,
        };
        row.near("expected", in_mm(change), 1e-9);
        tally.checked(row);
    }
    tally.close(5, &[]);
}

#[test]
fn cones_and_balls_centre_and_flats_do_not() {
    for seat in Seat::ALL {
        let text = seat.to_string();
        if text.starts_with("cone") || text.starts_with("ball") {
            assert!(seat.is_centring(), "{seat}");
        }
        if text == "flat" {
            assert!(!seat.is_centring(), "{seat}");
        }
    }
    assert_eq!(Seat::ALL.len(), 9);
}
