//! Rims against reference rows: diameters, widths, flanges, wells and seats.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::Toleranced;
use beadseat::rim::{Contour, DropCentre, RimDiameter, RimWidth, SeatTaper, ValveHole};
use beadseat::units::mm;
use beadseat::uom::si::angle::degree;
use beadseat::uom::si::f64::Length;
use beadseat::uom::si::length::{inch, millimeter};
use beadseat::uom::si::pressure::psi;
use beadseat::wheel::{Inset, RimEdges, Valve};
use common::{Tally, numbers, rows};

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn rim(inches: &str) -> RimWidth {
    inches.parse().unwrap_or_else(|error| panic!("{inches}: {error}"))
}

/// Rims of a row such as `3J (codes 14-21)` or `4.50B and wider`: its ends, where it has them.
fn rims_of(text: &str) -> Vec<(Contour, RimWidth, RimDiameter)> {
    let at = text.find(|c: char| c.is_ascii_uppercase()).unwrap();
    let (width, behind) = (rim(&text[..at]), &text[at + 1..]);
    let contour: Contour = text[at..=at].parse().unwrap();
    let mut widths = vec![width];
    if behind.contains("and wider") {
        widths.push(RimWidth::from_quarters(width.quarters() + 1).unwrap());
        widths.push(rim("12"));
    }
    let mut codes: Vec<f64> = numbers(&behind.replace('-', " "));
    if codes.is_empty() {
        codes = vec![13.0, 22.0];
    }
    let code = |code: f64| -> RimDiameter { code.to_string().parse().unwrap() };
    widths.iter().flat_map(|width| codes.iter().map(move |c| (contour, *width, code(*c)))).collect()
}

const NOT_TO_BE_USED: &str = "a figure that the row itself says not to use";
const NO_VALUE: &str = "no value in the row, or one not to be tested against";

#[test]
fn rims() {
    let mut tally = Tally::of("rims");
    for row in &rows("rim_dims.csv") {
        let (code, quantity) = (&row["code_or_contour"], &row["quantity"]);
        let diameter = || code.parse::<RimDiameter>().unwrap_or_else(|error| panic!("{error}: {row}"));
        match (&row["table"], quantity) {
            ("specified_rim_diameter", "D") => {
                let taper = match &row["rim_type"] {
                    "5DC" => SeatTaper::FiveDegree,
                    "15DC" => SeatTaper::FifteenDegree,
                    _ => panic!("{row}"),
                };
                let specified = diameter().specified_on(taper).unwrap();
                if code != "15" {
                    assert_eq!(diameter().specified(), Some(specified), "{row}");
                }
                row.near("value_mm", in_mm(specified.nominal()), 1e-9);
                if row["tolerance_mm"].is_empty() {
                    assert_eq!(
                        (specified.min(), specified.max()),
                        (specified.nominal(), specified.nominal())
                    );
                } else {
                    row.near("tolerance_mm", in_mm(specified.max() - specified.nominal()), 1e-9);
                    row.near("tolerance_mm", in_mm(specified.nominal() - specified.min()), 1e-9);
                }
            }
            // Inch tables round to a thousandth of an inch.
            ("specified_rim_diameter_inch", "D_in") => {
                let specified = diameter().specified().unwrap();
                row.near("value_mm", specified.nominal().get::<inch>(), 0.001);
                row.rounds_to("tolerance_mm", (specified.max() - specified.nominal()).get::<inch>());
            }
            ("nominal_rim_diameter_for_tyre_size", "d") => {
                row.near("value_mm", in_mm(diameter().nominal()), 1e-9);
            }
            ("rim_width", "A_exact") => row.near("value_mm", in_mm(rim(code).length()), 1e-9),
            ("flange", "B_flange_width_min") => {
                let contour: Contour = code.parse().unwrap();
                row.near("value_mm", in_mm(contour.flange_width().min()), 1e-9);
            }
            ("overall_width", "OW_minus_A_min") => {
                let contour: Contour = code.parse().unwrap();
                let (width, inset) = (rim("7"), Inset::from_length(mm(0.0)).unwrap());
                let edges = RimEdges::of(width, inset, mm(0.0), contour.flange_width());
                let overall: Toleranced<Length> = edges.outer() - edges.inner();
                row.near("value_mm", in_mm(overall.min() - width.length()), 1e-9);
            }
            ("flange", "G_flange_height") if &row["rim_type"] == "15DC" => {
                let height = SeatTaper::FifteenDegree.flange_height().unwrap();
                row.near("value_mm", in_mm(height), 1e-9);
            }
            ("flange", "G_flange_height") => {
                let height = code.parse::<Contour>().unwrap().flange_height().unwrap();
                row.near("value_mm", in_mm(height.nominal()), 1e-9);
                row.near("tolerance_mm", in_mm(height.max() - height.nominal()), 1e-9);
                row.near("tolerance_mm", in_mm(height.nominal() - height.min()), 1e-9);
            }
            ("flange", "R2_flange_radius_min") => {
                let radius = code.parse::<Contour>().unwrap().flange_radius().unwrap();
                row.near("value_mm", in_mm(radius), 1e-9);
            }
            ("flange", depth) if depth.starts_with("H_well_depth_min") => {
                let contour: Contour = code.parse().unwrap();
                let codes = if depth.ends_with("(code>=22)") { ["22", "26"] } else { ["13", "21"] };
                for code in codes {
                    let depth = contour.well_depth(code.parse().unwrap(), rim("6")).unwrap();
                    row.near("value_mm", in_mm(depth), 1e-9);
                }
            }
            ("flange_old", "G_flange_height") => {
                let contour: Contour = code.parse().unwrap();
                let printed = row.number("value_mm");
                // An older figure of a catalogue lies inside the tolerance of the standard.
                if let Some(height) = contour.flange_height() {
                    assert!(in_mm(height.min()) <= printed && printed <= in_mm(height.max()), "{row}");
                    assert_eq!(contour.rough_flange_height(), None, "{row}");
                } else if row.certainty() == "secondary-doubtful" {
                    tally.left(&format!("flange {code}"), NOT_TO_BE_USED);
                    continue;
                } else {
                    let (height, citation) = contour.rough_flange_height().unwrap();
                    row.near("value_mm", in_mm(height), 1e-9);
                    let remembered = row.certainty().starts_with("memory");
                    assert_eq!(citation.is_from_memory(), remembered, "{row}");
                }
            }
            ("contour", quantity) => {
                for (contour, width, code) in rims_of(code) {
                    let seats = DropCentre::of(contour, width, code);
                    let seats = seats.unwrap_or_else(|| panic!("{width} {code}: {row}"));
                    let length = match quantity {
                        "P_bead_seat_width_min" => seats.seat_width(),
                        "P1_bead_seat_width_min" => seats.seat_width_p1(),
                        "L_well_width_min" => seats.well_width(),
                        "M_well_position_max" => seats.well_position(),
                        _ => panic!("{row}"),
                    };
                    row.near("value_mm", in_mm(length), 1e-9);
                }
            }
            ("seat", "bead_seat_angle_deg") => {
                let taper = match &row["rim_type"] {
                    "5DC" => SeatTaper::FiveDegree,
                    "15DC" => SeatTaper::FifteenDegree,
                    _ => panic!("{row}"),
                };
                let angle = taper.angle().unwrap();
                row.near("value_mm", angle.nominal().get::<degree>(), 1e-9);
                row.near("tolerance_mm", (angle.max() - angle.nominal()).get::<degree>(), 1e-9);
                row.near("tolerance_mm", (angle.nominal() - angle.min()).get::<degree>(), 1e-9);
            }
            ("rim_width", "A_rounded_0.5") => row.near("value_mm", in_mm(rim(code).tabulated()), 1e-9),
            ("rim_width" | "hump", _) => {
                tally.left(&format!("{} {code} {quantity}", &row["table"]), NO_VALUE);
                continue;
            }
            ("valve_hole", "diameter") => {
                let hole = if code == "small" { ValveHole::Small } else { ValveHole::Large }.diameter();
                // The row's diameter is the least one; what is printed as the nominal lies within its tolerance.
                row.near("value_mm", in_mm(hole.min()), 1e-9);
                assert_eq!(&row["tolerance_mm"], "+0.4/0", "{row}");
                assert!((in_mm(hole.max() - hole.min()) - 0.4).abs() < 1e-9, "{row}");
                assert!(hole.min() < hole.nominal() && hole.nominal() < hole.max(), "{row}");
            }
            _ => panic!("a new kind of row: {row}"),
        }
        tally.checked(row);
    }
    let left = [(NOT_TO_BE_USED, 1), (NO_VALUE, 3)];
    tally.close(175, &left);
}

#[test]
fn valves() {
    let mut tally = Tally::of("valves");
    for row in &rows("valves_tra.csv") {
        let hole = match &row["hole_in"] {
            "0.453" => ValveHole::Small,
            "0.625" => ValveHole::Large,
            _ => panic!("{row}"),
        };
        row.near("hole_in", hole.diameter().nominal().get::<inch>(), 1e-12);
        let valve = if row["tr_no"].ends_with("HP") { Valve::SnapInHigh } else { Valve::SnapIn };
        let greatest = valve.max_pressure_in(hole).unwrap();
        row.rounds_to("max_psi", greatest.get::<psi>());
        assert!(valve.max_pressure().unwrap() <= greatest, "no kind bears more than its weakest: {row}");
        tally.checked(row);
    }
    tally.close(11, &[]);
    assert_eq!(Valve::Metal.max_pressure(), None);
    assert!(
        [ValveHole::Small, ValveHole::Large].iter().all(|&hole| Valve::Metal.max_pressure_in(hole).is_none())
    );
}

/// Shop habit beside the least widths of the standard: common practice, no source.
#[test]
fn usual_flanges() {
    for contour in ["B", "J", "JJ", "K"] {
        let flange = contour.parse::<Contour>().unwrap().flange_width();
        assert_eq!((flange.nominal(), flange.max()), (mm(12.7), mm(13.0)), "{contour}");
    }
}
