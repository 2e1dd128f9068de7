//! Sizes whose dimensions stand in tables, row by row, and other published rows as residuals.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use std::collections::BTreeSet;

use beadseat::Toleranced;
use beadseat::tire::{Structure, TireSize};
use beadseat::units::Length;
use beadseat::uom::si::length::{inch, millimeter};
use common::{Row, Tally, numbers, rows};

fn size(row: &Row) -> TireSize {
    let text = &row["designation"];
    let size: TireSize =
        text.parse().unwrap_or_else(|error: beadseat::ParseError| panic!("{}: {row}", error.show(text)));
    assert_eq!(size.to_string(), *text, "{row}");
    size
}

/// Diameter and section width on the measuring rim.
fn spans(size: TireSize) -> [Toleranced<Length>; 2] {
    let width = size.measuring_rim().and_then(|rim| size.section_width_on(rim));
    [size.overall_diameter().expect("a diameter"), width.expect("a width")]
}

/// The same with limits, by the regulation's shares, of what a row prints.
fn spans_of(row: &Row, size: TireSize) -> [[f64; 3]; 2] {
    let (diameter, width) = (row.number("outer_diameter_mm"), row.number("section_width_mm"));
    let d = row.number("nominal_rim_diameter_mm");
    let (b, wider) = if size.structure() == Structure::Radial { (1.04, 1.04) } else { (1.08, 1.06) };
    [[d + (diameter - d) * 0.97, diameter, d + (diameter - d) * b], [width * 0.96, width, width * wider]]
}

/// Nominal diameter and section width on the measuring rim, mm.
fn dimensions(size: TireSize) -> (f64, Option<f64>) {
    let diameter = size.overall_diameter_nominal().expect("a diameter").get::<millimeter>();
    let width = size.measuring_rim().and_then(|rim| size.section_width_on(rim));
    (diameter.round(), width.map(|w| w.nominal().get::<millimeter>().round()))
}

#[test]
fn un_r30_annex_5_from_memory() {
    let mut tally = Tally::of("UN R30 Annex 5");
    let (mut by_formula, mut furthest) = (0, 0.0_f64);
    for row in &rows("r30_annex5.csv") {
        let size = size(row);
        let (diameter, width) = dimensions(size);
        let has_aspect = matches!(size, TireSize::Metric(_));
        assert_eq!(size.rests_on_remembered_row(), !has_aspect, "{row}");
        // Old 60 and 70 series: made near the formula today, so that the row is held by the span alone.
        for (span, [least, printed, most]) in spans(size).into_iter().zip(spans_of(row, size)) {
            let [min, nominal, max] = [span.min(), span.nominal(), span.max()].map(|d| d.get::<millimeter>());
            assert!(min <= least + 1e-9 && most <= max + 1e-9, "{min} to {max}: {row}");
            assert!(has_aspect || nominal.round() == printed, "{nominal}: {row}");
            assert!(has_aspect || (min - least).abs() < 1e-9 && (max - most).abs() < 1e-9, "{row}");
        }
        if has_aspect {
            let [width_mm, aspect] = numbers(&row["designation"])[..2] else { panic!("{row}") };
            let height = ((width_mm * aspect + 50.0) / 100.0).floor();
            let formula = row.number("nominal_rim_diameter_mm") + 2.0 * height;
            let rim = size.measuring_rim().expect("listed").length().get::<millimeter>();
            let on_rim = (width_mm + 0.4 * (rim - 0.7 * width_mm) + 0.5).floor();
            assert_eq!((diameter, width), (formula, Some(on_rim)), "{row}");
            furthest = furthest.max((formula - row.number("outer_diameter_mm")).abs());
            by_formula += 1;
        }
        tally.checked(row);
    }
    assert_eq!((by_formula, furthest), (54, 8.0), "sizes by the formula, mm from the row at most");
    tally.close(145, &[]);
}

#[test]
fn un_r54_annex_5_from_memory() {
    let mut tally = Tally::of("UN R54 Annex 5");
    let (mut radial, mut diagonal) = (0, 0);
    for row in &rows("r54_annex5.csv") {
        let listed = size(row);
        let text = listed.to_string();
        // One line of the table is for both structures.
        let other = |from, to| text.replacen(from, to, 1).parse::<TireSize>().expect("the other structure");
        let both = match listed {
            // A load letter carries its R elsewhere.
            TireSize::AlphaNumeric(size) => [other("78", "R78"), size.into()],
            _ if listed.structure() == Structure::Radial => [listed, other("R", "-")],
            _ => [other("-", "R"), listed],
        };
        for (size, structure) in both.into_iter().zip(["radial", "diagonal"]) {
            let Ok(printed) = row[&format!("outer_diameter_{structure}_mm")].parse::<f64>() else { continue };
            let (diameter, width) = dimensions(size);
            assert!(size.rests_on_remembered_row(), "{size}: {row}");
            assert_eq!(diameter, printed, "{size}: {row}");
            assert_eq!(width, Some(row.number(&format!("section_width_{structure}_mm"))), "{size}: {row}");
            *if structure == "radial" { &mut radial } else { &mut diagonal } += 1;
        }
        tally.checked(row);
    }
    assert_eq!((radial, diagonal), (109, 51), "sizes compared by structure");
    tally.close(109, &[]);
}

#[test]
fn un_r75_annex_5_from_memory_with_doubt() {
    let mut tally = Tally::of("UN R75 Annex 5");
    for row in &rows("r75_annex5.csv") {
        assert!(size(row).rests_on_remembered_row(), "{row}");
        let diameter = size(row).overall_diameter().unwrap_or_else(|| panic!("not listed: {row}"));
        for (mm, column) in [
            (diameter.min(), "outer_diameter_min_mm"),
            (diameter.nominal(), "outer_diameter_design_mm"),
            (diameter.max(), "outer_diameter_max_mm"),
        ] {
            assert_eq!(mm.get::<millimeter>().round(), row.number(column), "{row}");
        }
        tally.checked(row);
    }
    tally.close(16, &[]);
}

/// Every size without aspect ratio in millimetres, or nearly: what rests on a row is what the documents list.
#[test]
fn no_other_size_rests_on_a_row() {
    let mut listed = BTreeSet::new();
    for row in rows("r30_annex5.csv").iter().filter(|row| !matches!(size(row), TireSize::Metric(_))) {
        listed.insert(size(row).to_string());
    }
    for row in &rows("r54_annex5.csv") {
        let text = size(row).to_string();
        let (radial, diagonal) = match text.as_bytes() {
            [b'A'..=b'Z', ..] => (text.replacen("78", "R78", 1), text.clone()),
            _ => (text.replacen('-', "R", 1), text.replacen('R', "-", 1)),
        };
        listed.insert(radial);
        if !row["outer_diameter_diagonal_mm"].is_empty() {
            listed.insert(diagonal);
        }
    }
    for row in &rows("r75_annex5.csv") {
        listed.insert(size(row).to_string());
    }

    let millimetres = (125..=305).step_by(5).map(|mm| mm.to_string());
    let inches = (400..=2000).step_by(5).flat_map(|hundredths| {
        let inches = f64::from(hundredths) / 100.0;
        [format!("{inches}"), format!("{inches:.1}"), format!("{inches:.2}")]
    });
    let low = ["10/70", "11/70", "12/70", "13/70", "10/75"].map(str::to_owned);
    let flotation = (20..=40).flat_map(|overall| {
        (14..=32).flat_map(move |half| {
            let width = f64::from(half) / 2.0;
            [format!("{overall}x{width:.1}"), format!("{overall}x{width:.2}")]
        })
    });
    let letters = ('A'..='V').flat_map(|letter| {
        [78, 85, 90].into_iter().flat_map(move |aspect| {
            [format!("{letter}{aspect}"), format!("{letter}R{aspect}"), format!("M{letter}{aspect}")]
        })
    });
    let widths: Vec<_> = millimetres.chain(inches).chain(low).chain(flotation).chain(letters).collect();
    let rims: Vec<_> =
        (8..=24).map(|code| code.to_string()).chain((16..=24).map(|code| format!("{code}.5"))).collect();
    let mut found = BTreeSet::new();
    for (width, rim) in widths.iter().flat_map(|width| rims.iter().map(move |rim| (width, rim))) {
        for (structure, suffix) in ["R", "-"]
            .into_iter()
            .flat_map(|structure| ["", "C", "LT", "L"].map(|suffix| (structure, suffix)))
        {
            let text = format!("{width}{structure}{rim}{suffix}");
            if let Some(size) = text.parse::<TireSize>().ok().filter(TireSize::rests_on_remembered_row) {
                found.insert(size.to_string());
            }
        }
    }
    // Early sizes carry their inches too, which the texts above do not.
    listed.retain(|text| !text.contains("/6.") && !text.contains("/7."));
    assert_eq!(found, listed);
    assert_eq!(found.len(), 259);
}

const NOT_LISTED: &str = "no table or rule that the crate has gives a diameter";

/// Published diameters beside the crate's, as a table of residuals.
#[test]
fn other_published_rows() {
    let mut tally = Tally::of("GOST R 52899 and FMVSS 109");
    let mut residuals = Vec::new();
    for row in &rows("gost52899_tableA1.csv") {
        let size = size(row);
        let Some(diameter) = size.overall_diameter_nominal() else {
            tally.left(&row["designation"], NOT_LISTED);
            continue;
        };
        let residual = diameter.get::<millimeter>().round() - row.number("outer_diameter_mm");
        println!("    {size}: {residual:+} mm of {}", &row["outer_diameter_mm"]);
        residuals.push(residual);
        tally.checked(row);
    }
    // The standard prints ± 1 %: 215/90-15C and 6.50-16C lie beyond it.
    assert_eq!(residuals, [3.0, -5.0, 0.0, -8.0, -12.0, -6.0]);
    for row in &rows("fmvss109_appendix_a.csv") {
        let size = size(row);
        let (Some(diameter), Some(rim)) = (size.overall_diameter(), size.measuring_rim()) else {
            tally.left(&row["designation"], NOT_LISTED);
            continue;
        };
        // The size factor is section width and diameter together; the row gives its least.
        let Ok(least) = row["min_size_factor_in"].parse::<f64>() else {
            tally.left(&row["designation"], "no size factor in the row");
            continue;
        };
        let width = size.section_width_on(rim).expect("listed").nominal();
        let factor = (diameter.nominal() + width).get::<inch>();
        println!(
            "    {size}: size factor {factor:.2} in, at least {least} ({:+.1} mm)",
            (factor - least) * 25.4
        );
        assert!(factor >= least, "{row}");
        tally.checked(row);
    }
    tally.close(8, &[(NOT_LISTED, 9)]);
}
