//! Names beside a view: two columns of them, in the order of what they point at, so that none covers another.

use alloc::string::String;
use alloc::vec::Vec;

use super::flat::{Flat, sub};
use super::lettering::{LEADING, SIZE, cut, lines};
use super::paper::{Frame, Line, Paper, Set};
use crate::vector::area;

/// Width of a column.
pub(super) const COLUMN: f64 = 43.0;

/// From a column to the view.
pub(super) const SHELF: f64 = 2.0;

/// How texts stand in a column.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spacing {
    /// From one text to the next.
    gap: f64,
    /// Lines of a name, at most: two or one.
    lines: usize,
}

/// Wide, and close for where there are many.
pub(super) const SPACINGS: [Spacing; 2] = [Spacing { gap: 1.6, lines: 2 }, Spacing { gap: 0.5, lines: 1 }];

/// A text and what it points at: a point in millimetres of the vehicle, or what is level with it beside the view.
#[derive(Clone, Debug)]
pub(super) struct Callout {
    at: Flat,
    beside: Option<f64>,
    lines: Vec<String>,
    is_name: bool,
}

impl Callout {
    pub(super) fn new(at: Flat, lines: Vec<String>) -> Self {
        Self { at, beside: None, lines, is_name: false }
    }

    /// The name of something, which may be shortened.
    pub(super) fn name(at: Flat, name: &str) -> Self {
        Self { is_name: true, ..Self::new(at, lines(name, SIZE, COLUMN, SPACINGS[0].lines)) }
    }

    /// Of something that is drawn so far to the right of the view on paper.
    pub(super) fn beside(self, off: f64) -> Self {
        Self { beside: Some(off), ..self }
    }

    fn height(&self) -> f64 {
        self.lines.len() as f64 * LEADING
    }

    fn tip(&self, frame: &Frame) -> Flat {
        let [right, down] = frame.at(self.at);
        [self.beside.map_or(right, |off| frame.on_paper().most[0] + off), down]
    }

    fn fitted(mut self, spacing: Spacing) -> Self {
        if self.is_name && self.lines.len() > spacing.lines {
            self.lines = Vec::from([cut(&self.lines.join(" "), SIZE, COLUMN)]);
        }
        self
    }
}

/// A column of them beside a view.
pub(super) struct Column {
    callouts: Vec<Callout>,
    spacing: Spacing,
}

fn need(callouts: &[Callout], spacing: Spacing) -> f64 {
    callouts.iter().map(|callout| callout.height() + spacing.gap).sum()
}

/// Parts them into a left and a right column at the middle of a view on paper; where one is too long for the room and
/// the other is not, those nearest to the middle change sides.
pub(super) fn columns(callouts: &[Callout], frame: &Frame, room: f64, spacing: Spacing) -> [Column; 2] {
    let mut callouts: Vec<Callout> = callouts.iter().map(|callout| callout.clone().fitted(spacing)).collect();
    let by = |i: usize| move |a: &Callout, b: &Callout| a.tip(frame)[i].total_cmp(&b.tip(frame)[i]);
    callouts.sort_by(by(0));
    let middle = frame.on_paper().middle()[0];
    let need = |some: &[Callout]| need(some, spacing);
    let mut cut = callouts.iter().filter(|callout| callout.tip(frame)[0] < middle).count();
    while cut > 0 && need(&callouts[..cut]) > room && need(&callouts[cut - 1..]) <= room {
        cut -= 1;
    }
    while cut < callouts.len() && need(&callouts[cut..]) > room && need(&callouts[..=cut]) <= room {
        cut += 1;
    }
    let right = callouts.split_off(cut);
    [callouts, right].map(|mut callouts| {
        callouts.sort_by(by(1));
        Column { callouts, spacing }
    })
}

impl Column {
    /// How much height it needs.
    pub(super) fn need(&self) -> f64 {
        need(&self.callouts, self.spacing)
    }

    /// Where each text begins: as near to the height of its point as those above and below it leave room for.
    fn places(&self, frame: &Frame, [top, bottom]: [f64; 2]) -> Vec<f64> {
        let gap = self.spacing.gap;
        let mut places: Vec<f64> = Vec::new();
        let mut free = top;
        for callout in &self.callouts {
            let place = free.max(callout.tip(frame)[1] - 0.5 * callout.height());
            places.push(place);
            free = place + callout.height() + gap;
        }
        let mut most = bottom;
        for (place, callout) in places.iter_mut().zip(&self.callouts).rev() {
            *place = place.min(most - callout.height());
            most = *place - gap;
        }
        places
    }

    /// Where leaders start: past the edge of the column, at the middle of each text.
    fn starts(&self, places: &[f64], shelf: f64) -> Vec<Flat> {
        let start = |(callout, place): (&Callout, &f64)| [shelf, place + 0.5 * callout.height()];
        self.callouts.iter().zip(places).map(start).collect()
    }

    /// Exchanges neighbours until no leader crosses the next. Uncrossing shortens leaders, so that it ends; a round
    /// for each text is as many as it is given.
    fn uncross(&mut self, frame: &Frame, shelf: f64, rows: [f64; 2]) {
        for _ in 0..self.callouts.len() {
            let mut crossed = false;
            for upper in 1..self.callouts.len() {
                let starts = self.starts(&self.places(frame, rows), shelf);
                let [a, b] = [upper - 1, upper].map(|i| (starts[i], self.callouts[i].tip(frame)));
                if cross(a, b) {
                    self.callouts.swap(upper - 1, upper);
                    crossed = true;
                }
            }
            if !crossed {
                break;
            }
        }
    }

    /// Writes texts that end, on the left, or begin, on the right, at an edge.
    pub(super) fn write(mut self, paper: &mut Paper, frame: &Frame, edge: f64, left: bool, rows: [f64; 2]) {
        let (set, away) = if left { (Set::End, 1.0) } else { (Set::Start, -1.0) };
        let shelf = edge + SHELF * away;
        self.uncross(frame, shelf, rows);
        let places = self.places(frame, rows);
        let starts = self.starts(&places, shelf);
        for ((callout, place), start) in self.callouts.iter().zip(places).zip(starts) {
            for (row, text) in callout.lines.iter().enumerate() {
                paper.text([edge, place + (row as f64 + 0.75) * LEADING], set, SIZE, text);
            }
            let end = callout.tip(frame);
            paper.line(Line::Thin, &[[edge + 0.8 * away, start[1]], start, end]);
            paper.dot(end);
        }
    }
}

/// Whether two straight pieces cross.
fn cross(a: (Flat, Flat), b: (Flat, Flat)) -> bool {
    let side = |(from, to): (Flat, Flat), point: Flat| area(sub(to, from), sub(point, from)) > 0.0;
    side(a, b.0) != side(a, b.1) && side(b, a.0) != side(b, a.1)
}
