//! Bolt circles from a caliper, near misses and dual drilling against worked rows.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]
#![allow(clippy::disallowed_methods, reason = "another library than the one that is tested")]

mod common;

use beadseat::Toleranced;
use beadseat::units::{deg, mm};
use beadseat::uom::si::f64::Length;
use beadseat::uom::si::length::millimeter;
use beadseat::wheel::{
    BoltCircle, HoleCentre,
    drilling::{CircleFit, DualDrilling, FitError, FiveHoleRule, Identified, MeasuredCircle, NearMiss},
};
use common::{Row, check_wheel_rows, number_of, numbers, rows};

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn exact(millimetres: f64) -> Toleranced<Length> {
    Toleranced::exact(mm(millimetres))
}

fn within(millimetres: f64, off: f64) -> Toleranced<Length> {
    Toleranced::within(mm(millimetres), mm(off))
}

fn circle(text: &str) -> BoltCircle {
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

#[track_caller]
fn length_near(row: &Row, computed: Length) {
    assert_eq!(&row["unit"], "mm", "{row}");
    row.rounds_to("value", in_mm(computed));
}

/// Rows computed in double precision from the definitions of geometry, printed to six decimals.
#[test]
fn worked_rows() {
    check_wheel_rows(
        "bolt circles, worked rows",
        &[
            ("G6", 24, five_hole_rule),
            ("G7", 12, edges),
            ("G8", 5, from_bore),
            ("G9", 6, three_points),
            ("G9s", 10, area_or_diameter),
            ("G10", 9, uncertainty_of_a_chord),
            ("G10b", 6, uncertainty_from_the_bore),
            ("G10c", 5, uncertainty_of_points),
            ("G11", 66, coordinates),
            ("G12", 68, near_miss),
            ("G13", 8, dual_drilling),
        ],
        455,
    );
}

fn area_or_diameter(row: &Row) {
    match &row["quantity"] {
        "area" => area(row),
        _ => length_near(row, sides(row, 0.0).diameter()),
    }
}

fn five_hole_rule(row: &Row) {
    let (diameter, hole) = (number_of(&row["inputs"], "D"), number_of(&row["inputs"], "h"));
    let holes = circle(&format!("5x{diameter}"));
    let rule = FiveHoleRule::on(&holes, mm(hole)).unwrap();
    match &row["quantity"] {
        "C2" => length_near(row, holes.chord(2).unwrap()),
        "C2+h/2" => length_near(row, rule.reading()),
        "error" => length_near(row, rule.error()),
        "h for zero error" => length_near(row, rule.exact_for_hole()),
        _ => panic!("{row}"),
    }
}

fn edges(row: &Row) {
    let inputs = &row["inputs"];
    let (count, apart) = (number_of(inputs, "n") as u8, number_of(inputs, "k") as u8);
    let (length, hole) = (exact(number_of(inputs, "L")), exact(number_of(inputs, "h")));
    let measured = if inputs.contains("outer") {
        MeasuredCircle::over_outer_edges(count, apart, length, hole)
    } else if inputs.contains("inner") {
        MeasuredCircle::between_inner_edges(count, apart, length, hole)
    } else {
        MeasuredCircle::between_centres(count, apart, length)
    }
    .unwrap();
    match &row["quantity"] {
        "D" => length_near(row, measured.diameter()),
        // Of which the diameter is made: the chord of that diameter is the row's again.
        "C" => {
            let sine = (std::f64::consts::PI * f64::from(apart) / f64::from(count)).sin();
            length_near(row, measured.diameter() * sine);
        }
        _ => panic!("{row}"),
    }
}

fn from_bore(row: &Row) {
    let inputs = &row["inputs"];
    let of = |key| exact(number_of(inputs, key));
    let [bore, length, hole] = [of("b"), of("L"), of("h")];
    let measured = match inputs.split_once(' ').unwrap().0 {
        "m" | "hub" => MeasuredCircle::from_bore(5, bore, length, hole),
        "q" => MeasuredCircle::from_bore_to_far_edge(5, bore, length, hole),
        "v" => MeasuredCircle::across_bore(5, bore, length, hole),
        other => panic!("{other}"),
    };
    length_near(row, measured.unwrap().diameter());
}

fn three_points(row: &Row) {
    let centres: Vec<_> =
        numbers(&row["inputs"]).chunks(2).map(|pair| HoleCentre::new(mm(pair[0]), mm(pair[1]))).collect();
    let fit = CircleFit::through(&centres, mm(0.0)).unwrap();
    match &row["quantity"] {
        "D" => length_near(row, fit.diameter()),
        "xc" => length_near(row, fit.centre().x()),
        "yc" => length_near(row, fit.centre().y()),
        _ => panic!("{row}"),
    }
    assert!(fit.worst_hole_off() < mm(1e-9), "{row}");
}

fn sides(row: &Row, off: f64) -> MeasuredCircle {
    let of = |key| within(number_of(&row["inputs"], key), off);
    MeasuredCircle::from_three_sides(5, [of("a"), of("b"), of("c")]).unwrap()
}

/// `D = abc / (2K)`, and so `K = abc / (2D)`.
fn area(row: &Row) {
    let [a, b, c] = ["a", "b", "c"].map(|key| number_of(&row["inputs"], key));
    assert_eq!(&row["unit"], "mm2", "{row}");
    row.rounds_to("value", a * b * c / (2.0 * in_mm(sides(row, 0.0).diameter())));
}

fn uncertainty_of_a_chord(row: &Row) {
    let inputs = &row["inputs"];
    let (count, apart) = (number_of(inputs, "n") as u8, number_of(inputs, "k") as u8);
    let off = number_of(inputs, "dC");
    let chord = circle(&format!("{count}x120")).chord(apart).unwrap();
    let measured = MeasuredCircle::between_centres(count, apart, Toleranced::within(chord, mm(off))).unwrap();
    length_near(row, measured.max_uncertainty());
    length_near(row, measured.typical_uncertainty());
}

fn uncertainty_from_the_bore(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let (bore, gap, hole) = (within(66.6, of("db")), within(15.45, of("dm")), within(14.5, of("dh")));
    let measured = MeasuredCircle::from_bore(5, bore, gap, hole).unwrap();
    match &row["quantity"] {
        "worst" => length_near(row, measured.max_uncertainty()),
        "rss" => length_near(row, measured.typical_uncertainty()),
        _ => panic!("{row}"),
    }
}

/// The row's error is radial and the same for every hole: the likely one of a coordinate is.
fn uncertainty_of_points(row: &Row) {
    let [count, holes @ ..] = &numbers(&row["inputs"])[..] else { panic!("{row}") };
    let all: Vec<_> = circle(&format!("{count}x120")).centres(deg(17.0)).collect();
    let centres: Vec<_> = holes.iter().map(|&hole| all[hole as usize]).collect();
    let fit = CircleFit::through(&centres, mm(1.0)).unwrap();
    row.rounds_to("value", in_mm(fit.typical_uncertainty()));
}

fn coordinates(row: &Row) {
    let (_, case) = row["id"].split_once('.').unwrap();
    let (pattern, hole) = case.rsplit_once('.').unwrap();
    let first = deg(number_of(&row["inputs"], "t0"));
    let centre = circle(pattern).centres(first).nth(hole.parse().unwrap()).unwrap();
    match &row["quantity"] {
        "x" => length_near(row, centre.x()),
        "y" => length_near(row, centre.y()),
        _ => panic!("{row}"),
    }
}

fn near_miss(row: &Row) {
    let (a, b) = row["inputs"].split_once(" vs ").unwrap();
    let miss = NearMiss::of(circle(a), circle(b)).unwrap();
    match &row["quantity"] {
        "per-hole radial (centred)" => length_near(row, miss.centred()),
        "worst hole (one seated)" => length_near(row, miss.worst_hole()),
        "eccentricity (one seated)" => length_near(row, miss.eccentricity()),
        "C1 difference" => length_near(row, miss.between_neighbours()),
        _ => panic!("{row}"),
    }
    assert!(circle(a).near_misses().any(|near| near == circle(b)), "{row}");
}

fn dual_drilling(row: &Row) {
    let [count, first, second, a, b] = numbers(&row["inputs"])[..] else { panic!("{row}") };
    let of = |diameter| circle(&format!("{count}x{diameter}"));
    let drilling = DualDrilling::new(of(first), of(second)).unwrap();
    match &row["quantity"] {
        "L" => length_near(row, drilling.between_neighbours()),
        "wall" => length_near(row, drilling.wall(mm(a), mm(b))),
        _ => panic!("{row}"),
    }
}

#[test]
fn the_standard_circles_are_in_order_and_differ() {
    let order = |c: &BoltCircle| (c.count(), (in_mm(c.diameter()) * 100.0).round() as u32);
    assert!(BoltCircle::STANDARD.windows(2).all(|pair| order(&pair[0]) < order(&pair[1])));
    assert!(BoltCircle::STANDARD.iter().all(BoltCircle::is_standard));
    // Every pattern that the worked rows name.
    let mut named = 0;
    for row in rows("wheel_worked.csv").iter().filter(|row| row["id"].starts_with("G5p.")) {
        let circle: BoltCircle = row["id"].strip_prefix("G5p.").unwrap().parse().unwrap();
        assert!(circle.is_standard(), "{circle}");
        named += 1;
    }
    assert_eq!(named, 67);
}

#[test]
fn what_no_circle_goes_through_is_refused() {
    let at = |x: f64, y: f64| HoleCentre::new(mm(x), mm(y));
    let fit = |points: &[HoleCentre]| CircleFit::through(points, mm(0.1));
    assert_eq!(fit(&[]), Err(FitError::Points));
    assert_eq!(fit(&[at(0.0, 0.0), at(1.0, 1.0)]), Err(FitError::Points));
    assert_eq!(fit(&[at(0.0, 0.0); 13]), Err(FitError::Points));
    assert_eq!(fit(&[at(0.0, 0.0), at(50.0, f64::NAN), at(0.0, 50.0)]), Err(FitError::Points));
    assert_eq!(fit(&[at(0.0, 0.0), at(50.0, f64::INFINITY), at(0.0, 50.0)]), Err(FitError::Points));
    assert_eq!(fit(&[at(7.0, 7.0); 3]), Err(FitError::OnALine));
    assert_eq!(fit(&[at(7.0, 7.0), at(7.0, 7.0), at(50.0, 7.0)]), Err(FitError::OnALine));
    assert_eq!(
        fit(&[at(0.0, 0.0), at(50.0, 50.0), at(100.0, 100.0), at(20.0, 20.0)]),
        Err(FitError::OnALine)
    );
}

#[test]
fn measurements_that_cannot_be_are_refused() {
    let chord = |count, apart, value| {
        MeasuredCircle::between_centres(count, apart, exact(value)).map_err(|error| error.to_string())
    };
    assert_eq!(chord(2, 1, 80.0), Err("number of holes 2 is not in 3 to 12".to_owned()));
    assert_eq!(chord(13, 1, 80.0), Err("number of holes 13 is not in 3 to 12".to_owned()));
    assert_eq!(chord(5, 0, 80.0), Err("steps between the holes 0 is not in 1 to 4".to_owned()));
    assert_eq!(chord(4, 2, 59.9), Err("bolt circle 59.9 mm is not in 60 to 600 mm".to_owned()));
    assert_eq!(chord(4, 2, f64::NAN), Err("bolt circle NaN mm is not in 60 to 600 mm".to_owned()));
    assert!(MeasuredCircle::between_centres(4, 2, Toleranced::within(mm(100.0), mm(f64::NAN))).is_err());
    assert!(MeasuredCircle::from_three_sides(4, [exact(50.0), exact(50.0), exact(100.0)]).is_err());
    assert!(MeasuredCircle::from_three_sides(4, [exact(-50.0), exact(50.0), exact(60.0)]).is_err());
    assert!(MeasuredCircle::from_three_sides(4, [exact(f64::NAN), exact(50.0), exact(60.0)]).is_err());
}

#[test]
fn near_pairs_are_both_named_where_a_tape_cannot_tell_them() {
    for (a, b) in [
        ("5x112", "5x114.3"),
        ("5x114.3", "5x115"),
        ("4x98", "4x100"),
        ("5x120", "5x120.65"),
        ("6x135", "6x139.7"),
    ] {
        let (a, b) = (circle(a), circle(b));
        let between = (a.diameter() + b.diameter()) / 2.0;
        let apart = a.count() / 2;
        let chord = between * (std::f64::consts::PI * f64::from(apart) / f64::from(a.count())).sin();
        let off = (b.diameter() - a.diameter()) / 2.0;
        let rough =
            MeasuredCircle::between_centres(a.count(), apart, Toleranced::within(chord, off)).unwrap();
        let rough = Identified::from(rough);
        assert!(rough.is_ambiguous(), "{a} {b}");
        assert!([a, b].iter().all(|circle| rough.compatible().any(|c| c.circle() == *circle)), "{a} {b}");
        assert_eq!(rough.only(), None);
    }
}
