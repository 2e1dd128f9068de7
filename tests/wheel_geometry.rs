//! Track, scrub radius, centring ring, imbalance and barrel against worked rows.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::rim::{Contour, DropCentre, RimDiameter, RimWidth, SeatTaper};
use beadseat::units::{deg, kg, kmh, mm, percent};
use beadseat::uom::si::f64::{Length, Ratio};
use beadseat::uom::si::force::newton;
use beadseat::uom::si::length::millimeter;
use beadseat::uom::si::mass::gram;
use beadseat::uom::si::ratio::percent as in_percent;
use beadseat::wheel::{
    Barrel, BarrelError, Bore, CentringRing, Inset, RimEdges, RingError, Spigot, WheelSize,
    position::{SteeringGeometry, max_inset_change, track_change},
    rotation::Imbalance,
};
use beadseat::{Citation, Toleranced};
use common::{Row, Tally, check_wheel_rows, number_of, numbers, rows, value_of};

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

#[test]
fn worked_rows() {
    check_wheel_rows(
        "track, scrub radius, ring, imbalance, barrel, worked rows",
        &[
            ("G3", 24, track),
            ("G4", 8, scrub_after),
            ("G4a", 5, scrub_from_hub),
            ("G14", 20, ring),
            ("G15", 12, imbalance),
            ("G17", 24, barrel),
        ],
        581,
    );
}

fn track(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let (track, moved) = (mm(of("T")), mm(of("d")));
    let change = track_change(moved, moved, deg(of("camber")));
    match &row["quantity"] {
        "dT" => row.rounds_to("value", in_mm(change)),
        "T_new" => row.rounds_to("value", in_mm(track + change)),
        "dT/T" => {
            let share: Ratio = change / track;
            row.rounds_to("value", share.get::<in_percent>());
        }
        // The rows take upright wheels here, whatever their camber.
        "d_max at +2%" => row.rounds_to("value", in_mm(max_inset_change(track * percent(2.0)))),
        _ => panic!("{row}"),
    }
}

fn scrub_after(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let lean = SteeringGeometry::new(deg(of("kpi")), deg(of("camber"))).unwrap();
    let change = lean.scrub_change(mm(of("d")), mm(of("h2") - of("h1")));
    match &row["quantity"] {
        "delta" => row.rounds_to("value", in_mm(change)),
        "rs2" => row.rounds_to("value", of("rs1") + in_mm(change)),
        _ => panic!("{row}"),
    }
}

fn scrub_from_hub(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let lean = SteeringGeometry::new(deg(of("kpi")), deg(of("camber"))).unwrap();
    assert_eq!(&row["quantity"], "rs", "{row}");
    row.rounds_to("value", in_mm(lean.scrub_radius(mm(of("c")), mm(of("h")))));
}

fn ring(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let bore = Bore::parse(value_of(&row["inputs"], "B")).unwrap();
    let spigot = Spigot::from_length(mm(of("d"))).unwrap();
    let ring = CentringRing::between(bore, spigot, mm(of("jo")), mm(of("ji"))).unwrap();
    let length = match &row["quantity"] {
        "t" => ring.wall(),
        "OD" => ring.outer_diameter(),
        "ID" => ring.inner_diameter(),
        "ecc with ring" => ring.eccentricity(),
        "TIR without ring" => spigot.run_out_in(bore).unwrap(),
        _ => panic!("{row}"),
    };
    row.rounds_to("value", in_mm(length));
}

fn imbalance(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let imbalance = Imbalance::of(kg(of("m")), mm(of("e"))).unwrap();
    let weight = imbalance.weight_at(mm(200.0)).unwrap().get::<gram>();
    let radius = mm(1000.0 * of("r"));
    let force = imbalance.force_at(kmh(of("v")), radius).unwrap().get::<newton>();
    match &row["quantity"] {
        "U" => row.rounds_to("value", 200.0 * weight),
        // F = U·ω², with U in kg·m.
        "omega" => {
            let omega = row.number("value");
            let unit = 200.0 * weight / 1e6;
            assert!((force / (unit * omega * omega) - 1.0).abs() < 1e-7, "{force} N for {row}");
        }
        "F" => row.rounds_to("value", force),
        _ => panic!("{row}"),
    }
}

fn barrel(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let code = value_of(&row["inputs"], "code");
    // All rows are of contour J, wide enough that the deeper well of code 22 applies.
    let size = WheelSize::parse(&format!("5Jx{code}")).unwrap();
    let height = Contour::J.flange_height().unwrap();
    assert_eq!(height.nominal(), mm(of("G")), "{row}");
    let depth = Contour::J.well_depth(size.diameter(), size.width()).unwrap();
    assert_eq!(depth, mm(of("H")), "{row}");

    let thickness = Toleranced::exact(mm(of("t")));
    let standard = Barrel::of_standard(&size, thickness).unwrap();
    let measured = Barrel::of_measured(size.diameter(), height, Toleranced::exact(depth), thickness).unwrap();
    assert!(standard.is_largest() && !measured.is_largest());
    for barrel in [standard, measured] {
        let diameter = match &row["quantity"] {
            "D" => barrel.seat(),
            "D_flange" => barrel.over_flanges(),
            "clear under seat" => barrel.under_seat(),
            "clear at well" => {
                let radius = barrel.brake_envelope_radius();
                assert!((radius.nominal() * 2.0 - barrel.at_well().nominal()).abs() < mm(1e-9));
                barrel.at_well()
            }
            _ => panic!("{row}"),
        };
        row.rounds_to("value", in_mm(diameter.nominal()));
        // ± 0.4 mm of the seat, and ± 1 mm of each flange over it.
        let tolerance = if &row["quantity"] == "D_flange" { 2.4 } else { 0.4 };
        assert!((in_mm(diameter.max() - diameter.nominal()) - tolerance).abs() < 1e-9, "{row}");
        assert!((in_mm(diameter.nominal() - diameter.min()) - tolerance).abs() < 1e-9, "{row}");
    }
}

#[test]
fn changes_of_steering_and_track() {
    let mut tally = Tally::of("track limit and scrub radius, worked rows");
    let inset = |text: &str| Inset::parse(text.trim_start_matches("stock ")).unwrap();
    let edges = |inset: Inset| {
        let width = RimWidth::parse("7").unwrap();
        RimEdges::of(width, inset, mm(0.0), Contour::J.flange_width())
    };
    for row in &rows("mechanics_worked.csv") {
        let inputs = &row["inputs"];
        let upright = |inclination| SteeringGeometry::new(deg(inclination), deg(0.0)).unwrap();
        match &row["id"] {
            "FT-08" | "FT-09" => {
                let limit = if &row["id"] == "FT-08" { mm(26.0) } else { mm(25.0) };
                let least = Inset::from_length(inset(inputs).length() - max_inset_change(limit)).unwrap();
                row.rounds_to("expected", in_mm(least.length()));
            }
            "FT-18" => {
                let (from, to) = inputs.split_once("->").unwrap();
                let moved = edges(inset(to)).centre() - edges(inset(from)).centre();
                row.near("expected", in_mm(upright(13.0).scrub_change(moved, mm(0.0))), 1e-9);
            }
            "FT-19" => {
                let [rise, inclination] = numbers(inputs)[..] else { panic!("{row}") };
                row.rounds_to("expected", in_mm(upright(inclination).scrub_change(mm(0.0), mm(rise))));
            }
            "FT-20" => {
                let of = |key| number_of(inputs, key);
                let change = upright(of("KPI")).scrub_change(mm(-of("dET")), mm(of("dR")));
                row.rounds_to("expected", of("r0") + in_mm(change));
            }
            _ => continue, // see wheel.rs and dimensions.rs
        }
        tally.checked(row);
    }
    tally.close(5, &[]);
}

#[test]
fn a_barrel_that_is_not_known_is_not_made_up() {
    let metal = Toleranced::exact(mm(5.0));
    for (size, known) in [
        ("6Jx15", true),
        ("4.5Bx13", true),
        ("6Kx16", true),
        ("6x15", false),
        ("6JJx15", false),
        ("8Lx15", false),
        ("8.25x22.5", false),
        ("6Jx16.5", false),
    ] {
        let barrel = Barrel::of_standard(&WheelSize::parse(size).unwrap(), metal);
        assert_eq!(barrel.is_ok(), known, "{size}");
        match barrel {
            Ok(barrel) => assert_eq!(barrel.citation(), Citation::RIM_CONTOUR),
            Err(error) => assert_eq!(error, BarrelError::NotKnown),
        }
    }
    let of = |code, height, depth, metal| {
        let exact = |value| Toleranced::exact(mm(value));
        Barrel::of_measured(RimDiameter::parse(code).unwrap(), exact(height), exact(depth), exact(metal))
    };
    assert_eq!(of("390", 17.5, 17.3, 4.0), Err(BarrelError::NotKnown));
    assert_eq!(of("16", 17.5, 20.0, 4.0).unwrap().citation(), Citation::RIM_MEASURED);
    for bad in [f64::NAN, f64::INFINITY, -1.0, 0.0, 61.0] {
        assert!(matches!(of("16", bad, 17.3, 4.0), Err(BarrelError::OutOfRange(_))), "height {bad}");
        assert!(matches!(of("16", 17.5, bad, 4.0), Err(BarrelError::OutOfRange(_))), "depth {bad}");
        assert!(matches!(of("16", 17.5, 17.3, bad), Err(BarrelError::OutOfRange(_))), "metal {bad}");
    }
}

#[test]
fn rims_outside_the_table_of_seats_have_no_row() {
    let row = |contour, width, code| {
        DropCentre::of(contour, RimWidth::parse(width).unwrap(), RimDiameter::parse(code).unwrap())
    };
    for (contour, width, code, known) in [
        (Contour::B, "3", "13", true),
        (Contour::B, "3", "14", false),
        (Contour::B, "3.25", "13", false),
        (Contour::B, "3.5", "14", true),
        (Contour::J, "3", "13", false),
        (Contour::J, "3", "14", true),
        (Contour::J, "3", "21", true),
        (Contour::J, "3", "22", false),
        (Contour::J, "4.25", "15", false),
        (Contour::J, "12", "20", true),
        (Contour::J, "8", "22.5", false),
        (Contour::K, "5.75", "16", false),
        (Contour::K, "6", "15", false),
        (Contour::K, "9", "16", true),
        (Contour::Jj, "8", "18", false),
    ] {
        assert_eq!(row(contour, width, code).is_some(), known, "{width} {contour} {code}");
    }
    assert_eq!(SeatTaper::Millimetric.flange_height(), None);
}

#[test]
fn rings_at_the_bound() {
    let spigot = Spigot::from_length(mm(57.1)).unwrap();
    let ring = |bore: &str, outer, inner| {
        CentringRing::between(Bore::parse(bore).unwrap(), spigot, mm(outer), mm(inner))
    };
    assert!(ring("57.31", 0.1, 0.1).is_ok());
    assert_eq!(ring("57.29", 0.1, 0.1), Err(RingError::NoRoom));
    assert_eq!(ring("57.1", 0.0, 0.0), Err(RingError::NoRoom));
    assert_eq!(ring("50", 0.0, 0.0), Err(RingError::NoRoom));
    assert!(ring("66.6", 0.0, 1.0).is_ok());
    for bad in [f64::NAN, f64::INFINITY, -0.001, 1.001] {
        assert!(matches!(ring("66.6", bad, 0.1), Err(RingError::OutOfRange(_))), "{bad}");
        assert!(matches!(ring("66.6", 0.1, bad), Err(RingError::OutOfRange(_))), "{bad}");
    }
    let bore = |text| Bore::parse(text).unwrap();
    assert_eq!(spigot.eccentricity_in(bore("57.1")), Some(mm(0.0)));
    assert_eq!(spigot.run_out_in(bore("57.0")), None);
}

#[test]
fn hostile_inputs_of_imbalance_and_steering() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0, 1e300] {
        assert!(Imbalance::of(kg(bad), mm(1.0)).is_err(), "{bad}");
        assert!(Imbalance::of(kg(20.0), mm(bad)).is_err(), "{bad}");
        let imbalance = Imbalance::of(kg(20.0), mm(1.0)).unwrap();
        assert!(imbalance.weight_at(mm(bad)).is_err(), "{bad}");
        assert!(imbalance.force_at(kmh(bad), mm(300.0)).is_err(), "{bad}");
        assert!(imbalance.force_at(kmh(100.0), mm(bad)).is_err(), "{bad}");
    }
    let u = Imbalance::of(kg(20.0), mm(1500.0)).unwrap();
    assert!(Imbalance::of(kg(20.0), mm(1500.01)).is_err());
    for radius in [50.0, 1500.0] {
        assert!(u.weight_at(mm(radius)).is_ok() && u.force_at(kmh(500.0), mm(radius)).is_ok());
        let outside = if radius < 100.0 { radius - 0.01 } else { radius + 0.01 };
        assert!(u.weight_at(mm(outside)).is_err() && u.force_at(kmh(500.0), mm(outside)).is_err());
    }
    assert!(u.force_at(kmh(500.01), mm(300.0)).is_err());
    for (inclination, camber) in [(f64::NAN, 0.0), (-5.1, 0.0), (30.1, 0.0), (10.0, 15.1), (10.0, f64::NAN)] {
        assert!(SteeringGeometry::new(deg(inclination), deg(camber)).is_err(), "{inclination} {camber}");
    }
    assert!(SteeringGeometry::new(deg(-5.0), deg(-15.0)).is_ok());
    assert!(SteeringGeometry::new(deg(30.0), deg(15.0)).is_ok());
}
