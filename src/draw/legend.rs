//! What the lines mean, and how long a length is.

use alloc::format;
use alloc::vec::Vec;

use super::flat::Flat;
use super::lettering::{LEADING, SIZE};
use super::paper::{Line, Paper, Section, Set};
use crate::fitment::UnitSystem;

/// Height of both on paper, and of an enlarged detail beside them.
pub(super) const HEIGHT: f64 = 38.0;

/// From the first column to the second.
const SECOND: f64 = 73.0;

/// From row to row.
const ROW: f64 = LEADING + 0.6;

/// Length of a sample.
const SAMPLE: f64 = 14.0;

const LINES: [(Line, &str); 6] = [
    (Line::Edge, "outline after the change"),
    (Line::Before, "outline before the change"),
    (Line::Other, "another position, brake"),
    (Line::Centre, "centre line, steering axis"),
    (Line::Thin, "obstacle, dimension, hub face"),
    (Line::Uncertain, "how far an obstacle may be off"),
];

/// Draws the legend with its upper left corner at a point.
pub(super) fn draw(paper: &mut Paper, at: Flat, scale: f64, units: UnitSystem) {
    let second = at[0] + SECOND;
    for (row, (line, name)) in LINES.into_iter().enumerate() {
        let y = at[1] + (row as f64 + 0.5) * ROW;
        paper.line(line, &[[at[0], y], [at[0] + SAMPLE, y]]);
        paper.text([at[0] + SAMPLE + 2.0, y + 0.35 * SIZE], Set::Start, SIZE, name);
    }
    let sections =
        [(Section::Tire, "tire, cut"), (Section::Rim, "rim, cut"), (Section::Obstacle, "obstacle, cut")];
    for (row, (of, name)) in sections.into_iter().enumerate() {
        let y = at[1] + (row as f64 + 0.5) * ROW;
        let (low, high) = (y - 1.8, y + 1.8);
        let (left, right) = (second, second + SAMPLE);
        let sample: Vec<Flat> =
            Vec::from([[left, low], [right, low], [right, high], [left, high], [left, low]]);
        paper.hatch(&sample, of);
        paper.line(if row < 2 { Line::Edge } else { Line::Thin }, &sample);
        paper.text([right + 2.0, y + 0.35 * SIZE], Set::Start, SIZE, name);
    }
    let y = at[1] + 3.6 * ROW;
    let lengths = match units {
        UnitSystem::Metric => "Lengths in millimetres. Outlines",
        UnitSystem::Us => "Lengths in inches. Outlines",
        UnitSystem::Both => "Lengths in mm [inches]. Outlines",
    };
    let rest = ["are the envelopes that clear-", "ance is reckoned with."];
    for (row, text) in core::iter::once(lengths).chain(rest).enumerate() {
        paper.text([second, y + (row as f64 + 0.35) * LEADING], Set::Start, SIZE, text);
    }
    bar(paper, [second, at[1] + HEIGHT - 8.0], scale);
}

/// A bar of a round length, cut in five.
fn bar(paper: &mut Paper, at: Flat, scale: f64) {
    const LENGTHS: [u32; 9] = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000];
    let length = LENGTHS.into_iter().find(|&length| f64::from(length) / scale >= 15.0).unwrap_or(10_000);
    let long = f64::from(length) / scale;
    for part in 0..5 {
        let [from, to] = [part, part + 1].map(|i| at[0] + long * f64::from(i) / 5.0);
        let line = if part % 2 == 0 { Line::Edge } else { Line::Thin };
        let down = if part % 2 == 0 { 0.6 } else { 1.2 };
        paper.line(
            line,
            &[[from, at[1]], [to, at[1]], [to, at[1] + down], [from, at[1] + down], [from, at[1]]],
        );
    }
    paper.text([at[0], at[1] + 5.0], Set::Middle, SIZE, "0");
    paper.text([at[0] + long, at[1] + 5.0], Set::Middle, SIZE, &format!("{length} mm"));
    paper.text([at[0] + long + 8.0, at[1] + 2.0], Set::Start, SIZE, &format!("scale 1:{scale}"));
}
