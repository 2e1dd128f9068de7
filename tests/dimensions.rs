//! Dimensions of tires against published and remembered rows.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::Citation;
use beadseat::rim::RimWidth;
use beadseat::tire::{RimRangeBasis, SizeClass, Structure, TireSize};
use beadseat::units::kmh;
use beadseat::uom::si::f64::Length;
use beadseat::uom::si::length::millimeter;
use common::{Row, Tally, numbers, rows};

fn size(text: &str) -> TireSize {
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn rim(text: &str) -> RimWidth {
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn in_inches(width: RimWidth) -> f64 {
    f64::from(width.quarters()) / 4.0
}

#[test]
fn section_width_on_the_measuring_rim() {
    let mut tally = Tally::of("section width on the measuring rim");
    for row in &rows("section_width_memory.csv") {
        let (size, measuring) = (size(&row["size"]), rim(&row["measuring_rim_in"]));
        assert_eq!(size.measuring_rim(), Some(measuring), "{row}");
        row.near("section_width_mm", in_mm(size.section_width_on(measuring).unwrap().nominal()), 1e-9);
        tally.checked(row);
    }
    tally.close(18, &[]);
}

/// Estimated less published width, printed unless zero.
#[track_caller]
fn rim_residual(row: &Row, column: &str, size: TireSize) -> f64 {
    let range = size.estimated_rim_range().unwrap();
    assert_eq!(range.basis(), RimRangeBasis::Estimate, "{row}");
    let estimate = if column == "min_rim_in" { range.min() } else { range.max() };
    let residual = in_inches(estimate) - row.number(column);
    if residual != 0.0 {
        println!("    {size} {column} {} estimated {estimate}, {residual:+} in", &row[column]);
    }
    residual
}

#[test]
fn rim_ranges_confirmed() {
    let mut tally = Tally::of("rim ranges, confirmed");
    const SHARED: &str = "designations of tractor tires that others share, so no table can be told by them";
    let (mut minima, mut maxima, mut agricultural, mut sheet) = (0, 0, 0, 0);
    for row in &rows("rim_ranges_confirmed.csv") {
        let of_tractors = row["source"].contains("tractor tyres");
        match &row["designation"] {
            name @ "7.50-16; 7.50-18" => {
                for size in name.split("; ").map(size) {
                    assert_eq!((size.class(), size.permitted_rim_range()), (SizeClass::Unstated, None));
                }
                tally.left(name, SHARED);
                continue;
            }
            // One width in two contours, which is no range.
            name @ "215/90-15C" => {
                let size = size(name);
                assert_eq!(size.measuring_rim(), Some(rim(&row["measuring_rim_in"])), "{row}");
                let range = size.estimated_rim_range().unwrap();
                assert!(range.contains(rim(&row["min_rim_in"])) && range.contains(rim(&row["max_rim_in"])));
                tally.checked(row);
                continue;
            }
            _ => {}
        }
        for designation in row["designation"].split("; ") {
            let size = size(designation);
            assert_eq!(size.to_string(), designation, "{row}");
            assert_eq!(size.class() == SizeClass::Agricultural, of_tractors, "{row}");
            if of_tractors || row["source"].contains("truck-tyre table") {
                let range =
                    size.permitted_rim_range().unwrap_or_else(|| panic!("{size} is not listed: {row}"));
                assert_eq!(range.basis(), RimRangeBasis::Standard);
                row.near("min_rim_in", in_inches(range.min()), 0.0);
                row.near("max_rim_in", in_inches(range.max()), 0.0);
                assert_eq!(size.estimated_rim_range(), None, "{row}");
                agricultural += usize::from(of_tractors);
                if of_tractors {
                    // No rule or table for any other dimension was seen.
                    assert_eq!(
                        (size.overall_diameter_nominal(), size.measuring_rim()),
                        (None, None),
                        "{row}"
                    );
                } else {
                    assert_eq!(size.measuring_rim(), Some(rim(&row["measuring_rim_in"])), "{row}");
                }
                continue;
            }
            if row["source"].contains("size sheet") {
                assert_eq!(size.permitted_rim_range(), None, "no standard: {row}");
                assert_eq!(rim_residual(row, "min_rim_in", size), 0.0, "{row}");
                assert_eq!(rim_residual(row, "max_rim_in", size), 0.0, "{row}");
                let citation = size.estimated_rim_range().unwrap().citation();
                assert_eq!(citation, Citation::RIM_RANGE_TRUCK_SHEET, "{row}");
                if row["certainty"].starts_with("secondary") {
                    assert!(citation.clause().contains(designation), "said to be at second hand: {row}");
                }
                sheet += 1;
                continue;
            }
            assert_eq!(rim_residual(row, "min_rim_in", size), 0.0, "{row}");
            minima += 1;
            if !row["max_rim_in"].is_empty() {
                assert_eq!(rim_residual(row, "max_rim_in", size), 0.0, "{row}");
                maxima += 1;
            } else {
                let (_, bound) = row["as_printed"].split_once("max >= ").unwrap();
                let max = in_inches(size.estimated_rim_range().unwrap().max());
                assert!(max >= numbers(bound)[0], "{max} in for {row}");
            }
        }
        tally.checked(row);
    }
    assert_eq!((minima, maxima, agricultural), (15, 9, 90), "sizes with a minimum, a maximum, of tractors");
    assert_eq!(sheet, 28, "sizes of the sheet");
    tally.close(94, &[(SHARED, 1)]);
}

#[test]
fn rim_ranges_from_memory() {
    let mut tally = Tally::of("rim ranges, remembered");
    let mut off = 0;
    for row in &rows("rim_width_range_memory.csv") {
        // The range does not depend on the rim diameter.
        let size = size(&format!("{}R16", &row["size"]));
        for column in ["min_rim_in", "max_rim_in"] {
            let residual = rim_residual(row, column, size);
            let allowed = if row.number("aspect_ratio") >= 75.0 { 0.0 } else { 0.5 };
            assert!(residual.abs() <= allowed, "{residual} in, {column} of {row}");
            off += usize::from(residual != 0.0);
        }
        tally.checked(row);
    }
    tally.close(56, &[]);
    assert_eq!(off, 3, "bounds of 112 that are half an inch off");
}

#[test]
fn rules_of_the_regulations() {
    let mut tally = Tally::of("dimensions, rules");
    for row in &rows("dimension_rules.csv") {
        let size = size(&row["designation"]);
        let width = || size.section_width_on(rim(&row["rim_in"])).unwrap();
        let (diameter, snow) = (size.overall_diameter().unwrap(), size.overall_diameter_snow().unwrap());
        let range = size.estimated_rim_range();
        let computed = match &row["quantity"] {
            "width_mm" => in_mm(width().nominal()),
            "width_max_share" => in_mm(width().max()) / in_mm(width().nominal()),
            "width_min_share" => in_mm(width().min()) / in_mm(width().nominal()),
            "height_mm" => in_mm(size.section_height().unwrap()),
            "diameter_mm" => in_mm(diameter.nominal()),
            "diameter_max_mm" => in_mm(diameter.max()),
            "diameter_min_mm" => in_mm(diameter.min()),
            "snow_diameter_max_mm" => in_mm(snow.max()),
            "snow_diameter_min_mm" => in_mm(snow.min()),
            "measuring_rim_in" => in_inches(size.measuring_rim().unwrap()),
            "rim_min_in" => in_inches(range.unwrap().min()),
            "rim_max_in" => in_inches(range.unwrap().max()),
            _ => panic!("a new kind of row: {row}"),
        };
        row.near("value", computed, 1e-9);
        tally.checked(row);
    }
    tally.close(28, &[]);
}

#[test]
fn no_rim_rule_for_truck_sizes() {
    for text in ["295/80R22.5", "385/65R22.5", "225/70R19.5"] {
        assert_eq!(size(text).measuring_rim(), None, "{text}");
        let listed = size(text).estimated_rim_range().unwrap();
        assert_eq!(listed.citation(), Citation::RIM_RANGE_TRUCK_SHEET, "{text}");
    }
    for text in ["305/75R22.5", "275/80R22.5", "12R24.5"] {
        assert_eq!(size(text).measuring_rim(), None, "{text}");
        assert_eq!(size(text).estimated_rim_range(), None, "{text}");
    }
}

#[test]
fn rolling_growth() {
    let mut tally = Tally::of("growth of the rolling circumference");
    let rolling = size("205/55R16").rolling().unwrap();
    for row in &rows("rolling_growth.csv") {
        let at_speed = rolling.circumference_at(kmh(row.number("km_h"))).unwrap();
        for (grown, still) in [
            (at_speed.min(), rolling.circumference().min()),
            (at_speed.nominal(), rolling.circumference().nominal()),
            (at_speed.max(), rolling.circumference().max()),
        ] {
            row.near("percent", 100.0 * (in_mm(grown) / in_mm(still) - 1.0), 1e-9);
        }
        tally.checked(row);
    }
    tally.close(8, &[]);
}

const NOT_LISTED: &str = "no diameter in the row, or none in the tables that the crate has";

#[test]
fn published_dimensions() {
    let mut tally = Tally::of("published dimensions");
    for row in &rows("published_dims.csv") {
        let size = size(&row["designation"]);
        let (Some(diameter), Ok(printed)) =
            (size.overall_diameter(), row["overall_diameter_mm"].parse::<f64>())
        else {
            tally.left(&row["designation"], NOT_LISTED);
            continue;
        };
        let diameter = in_mm(diameter.nominal());
        let [percent] = numbers(row["od_tol"].trim_start_matches("+-"))[..] else { panic!("{row}") };
        row.near("overall_diameter_mm", diameter, printed * percent / 100.0);

        let Some(measuring) = size.measuring_rim() else { panic!("{row}") };
        if !row["measuring_rim_in"].is_empty() {
            assert_eq!(measuring, rim(&row["measuring_rim_in"]), "{row}");
        }
        assert!(row["as_printed"].starts_with("SW is 'not more than'"), "{row}");
        let width = in_mm(size.section_width_on(measuring).unwrap().nominal());
        assert!(width <= row.number("section_width_mm"), "{width} mm wide: {row}");
        println!(
            "    {size}: diameter {:+} mm of {printed}, width {:+} mm of at most {}",
            diameter - printed,
            width - row.number("section_width_mm"),
            &row["section_width_mm"],
        );
        tally.checked(row);
    }
    tally.close(10, &[(NOT_LISTED, 6)]);
}

/// The bounds of `d + 2H` for the rounding of `d` and of `H` to the millimetre.
const ROUNDING_MM: f64 = 0.5 + 2.0 * 0.5;

const ROLLING: &str = "rolling radius, speedometer, gearing: another topic";
const CONTACT: &str = "contact, stiffness, temperature: another topic";
const CLEARANCE: &str = "clearance and limits: another topic";
const WEAR: &str = "wear, grades, inertia: another topic";

/// 406 + 2 · 127 mm, which a radial and a diagonal tire can both have.
const DIAMETER_660: [&str; 2] = ["195/65R16", "195/65-16"];

#[test]
fn worked_dimensions() {
    let mut tally = Tally::of("dimensions, worked rows");
    let common_size = size("205/55R16");
    for row in &rows("mechanics_worked.csv") {
        match &row["id"] {
            // 205 mm is the width on the theoretical rim; the crate has its own theoretical rim, so
            // that what can be held is the change from rim to rim, of two widths rounded to the mm.
            "FT-10" => {
                let [nominal, from, to] = numbers(&row["inputs"])[..] else { panic!("{row}") };
                assert_eq!((nominal, from, to), (205.0, 6.5, 7.5), "{row}");
                let on = |width| in_mm(common_size.section_width_on(rim(width)).unwrap().nominal());
                row.near("expected", nominal + on("7.5") - on("6.5"), 1.0);
            }
            "FT-12" => {
                let width = common_size.section_width_on(rim("6.5")).unwrap();
                let nominal = number_behind(row, "S=");
                row.near("expected", nominal * in_mm(width.max()) / in_mm(width.nominal()), 1e-9);
            }
            "FT-13" => row.near("expected", in_mm(common_size.overall_diameter().unwrap().max()), 1e-9),
            "FT-14" => row.near("expected", in_mm(common_size.overall_diameter().unwrap().min()), 1e-9),
            "RL-01" | "RL-02" | "RL-03" => {
                let diameter = in_mm(size(&row["inputs"]).overall_diameter().unwrap().nominal());
                println!("    {}: {:+.2} mm by rounding", &row["inputs"], diameter - row.number("expected"));
                row.near("expected", diameter, ROUNDING_MM);
            }
            "RL-07" => {
                let bias = size(DIAMETER_660[1]);
                assert_eq!(bias.structure(), Structure::Diagonal);
                assert_eq!(
                    in_mm(bias.overall_diameter().unwrap().nominal()),
                    number_behind(row, "OD="),
                    "{row}"
                );
                row.near("expected", in_mm(bias.rolling().unwrap().circumference().nominal()), 1e-9);
            }
            "RL-09" | "RL-10" => {
                let size = size(DIAMETER_660[usize::from(&row["id"] == "RL-10")]);
                let circumference = size.rolling().unwrap().circumference().nominal();
                let round = size.overall_diameter().unwrap().nominal() * std::f64::consts::PI;
                row.rounds_to("expected", in_mm(circumference) / in_mm(round));
            }
            // The row turns on 631.9 mm, the crate on the rounded 632 mm.
            "RL-16" => {
                let turns = common_size.rolling().unwrap().revolutions_per_km();
                row.rounds_to("expected", turns * 632.0 / 631.9);
            }
            // See wheel.rs.
            "FT-01" | "FT-03" | "FT-04" | "FT-06" | "FT-07" => continue,
            id => {
                let reason = match id.split('-').next() {
                    Some("LP") => continue, // see inflation.rs
                    Some("RL") => ROLLING,
                    Some("CS") => CONTACT,
                    Some("FT") => CLEARANCE,
                    Some("WI") => WEAR,
                    _ => panic!("a new kind of row: {row}"),
                };
                tally.left(id, reason);
                continue;
            }
        }
        tally.checked(row);
    }
    tally.close(11, &[(ROLLING, 31), (CONTACT, 48), (CLEARANCE, 32), (WEAR, 28)]);
}

#[track_caller]
fn number_behind(row: &Row, key: &str) -> f64 {
    common::number_of(&row["inputs"], key.trim_end_matches('='))
}
