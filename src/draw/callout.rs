//! Names beside a view: two columns of them, in the order of what they point at, so that none covers another.

use alloc::string::String;
use alloc::vec::Vec;

use super::flat::{Flat, sub};
use super::lettering::{LEADING, SIZE};
use super::paper::{Frame, Line, Paper, Set};
use crate::vector::area;

/// Width of a column.
pub(super) const COLUMN: f64 = 43.0;

/// From one text to the next.
const GAP: f64 = 1.6;

/// From a column to the view.
pub(super) const SHELF: f64 = 2.0;

/// A text and what it points at, in millimetres of the vehicle.
#[derive(Clone, Debug)]
pub(super) struct Callout {
    pub(super) at: Flat,
    pub(super) lines: Vec<String>,
}

impl Callout {
    fn height(&self) -> f64 {
        self.lines.len() as f64 * LEADING
    }
}

/// How much height a column of them needs.
pub(super) fn need(column: &[Callout]) -> f64 {
    column.iter().map(|callout| callout.height() + GAP).sum()
}

/// Parts them into a left and a right column at the middle; where one is too long for the room and the other
/// is not, those nearest to the middle change sides.
pub(super) fn columns(mut callouts: Vec<Callout>, middle: f64, room: f64) -> [Vec<Callout>; 2] {
    callouts.sort_by(|a, b| a.at[0].total_cmp(&b.at[0]));
    let mut cut = callouts.iter().filter(|callout| callout.at[0] < middle).count();
    while cut > 0 && need(&callouts[..cut]) > room && need(&callouts[cut - 1..]) <= room {
        cut -= 1;
    }
    while cut < callouts.len() && need(&callouts[cut..]) > room && need(&callouts[..=cut]) <= room {
        cut += 1;
    }
    let right = callouts.split_off(cut);
    let mut both = [callouts, right];
    for column in &mut both {
        column.sort_by(|a, b| a.at[1].total_cmp(&b.at[1]));
    }
    both
}

/// Where each text of a column begins: as near to the height of its point as those above and below it leave
/// room for.
fn places(frame: &Frame, column: &[Callout], [top, bottom]: [f64; 2]) -> Vec<f64> {
    let mut places: Vec<f64> = Vec::new();
    let mut free = top;
    for callout in column {
        let place = free.max(frame.at(callout.at)[1] - 0.5 * callout.height());
        places.push(place);
        free = place + callout.height() + GAP;
    }
    let mut most = bottom;
    for (place, callout) in places.iter_mut().zip(column).rev() {
        *place = place.min(most - callout.height());
        most = *place - GAP;
    }
    places
}

/// Where leaders start: past the edge of the column, at the middle of each text.
fn starts(column: &[Callout], places: &[f64], shelf: f64) -> Vec<Flat> {
    column.iter().zip(places).map(|(callout, place)| [shelf, place + 0.5 * callout.height()]).collect()
}

/// Exchanges neighbours until no leader crosses the next. Uncrossing shortens leaders, so that it ends; a round
/// for each text is as many as it is given.
fn uncross(frame: &Frame, column: &mut [Callout], shelf: f64, rows: [f64; 2]) {
    for _ in 0..column.len() {
        let mut crossed = false;
        for upper in 1..column.len() {
            let starts = starts(column, &places(frame, column, rows), shelf);
            let [a, b] = [upper - 1, upper].map(|i| (starts[i], frame.at(column[i].at)));
            if cross(a, b) {
                column.swap(upper - 1, upper);
                crossed = true;
            }
        }
        if !crossed {
            break;
        }
    }
}

/// Whether two straight pieces cross.
fn cross(a: (Flat, Flat), b: (Flat, Flat)) -> bool {
    let side = |(from, to): (Flat, Flat), point: Flat| area(sub(to, from), sub(point, from)) > 0.0;
    side(a, b.0) != side(a, b.1) && side(b, a.0) != side(b, a.1)
}

/// Writes a column of texts that end, on the left, or begin, on the right, at an edge.
pub(super) fn write(
    paper: &mut Paper,
    frame: &Frame,
    column: &mut [Callout],
    edge: f64,
    left: bool,
    rows: [f64; 2],
) {
    let (set, away) = if left { (Set::End, 1.0) } else { (Set::Start, -1.0) };
    let shelf = edge + SHELF * away;
    uncross(frame, column, shelf, rows);
    let places = places(frame, column, rows);
    let starts = starts(column, &places, shelf);
    for ((callout, place), start) in column.iter().zip(places).zip(starts) {
        for (row, text) in callout.lines.iter().enumerate() {
            paper.text([edge, place + (row as f64 + 0.75) * LEADING], set, SIZE, text);
        }
        let end = frame.at(callout.at);
        paper.line(Line::Thin, &[[edge + 0.8 * away, start[1]], start, end]);
        paper.dot(end);
    }
}
