//! Flat figures: outlines, clipping, hatching. Points are `[right, down]`.

use alloc::vec::Vec;
use core::f64::consts::TAU;

pub(super) use crate::vector::{Flat, dot, sub};
use crate::vector::{add, area, scale};

pub(super) fn along(from: Flat, way: Flat, by: f64) -> Flat {
    add(from, scale(way, by))
}

/// The direction from one point to another; to the right if they coincide.
pub(super) fn direction(from: Flat, to: Flat) -> Flat {
    let d = sub(to, from);
    let length = libm::hypot(d[0], d[1]);
    if length > 1e-9 { [d[0] / length, d[1] / length] } else { [1.0, 0.0] }
}

/// A rectangle that grows around what is put into it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Extent {
    pub(super) least: Flat,
    pub(super) most: Flat,
}

impl Extent {
    pub(super) const NOTHING: Self = Self { least: [f64::INFINITY; 2], most: [f64::NEG_INFINITY; 2] };

    pub(super) fn hold(&mut self, point: Flat, around: f64) {
        for (i, at) in point.into_iter().enumerate() {
            self.least[i] = self.least[i].min(at - around);
            self.most[i] = self.most[i].max(at + around);
        }
    }

    /// The same, wider on every side.
    pub(super) fn widened(mut self, by: f64) -> Self {
        self.hold(self.least, by);
        self.hold(self.most, by);
        self
    }

    pub(super) fn hold_all(&mut self, points: &[Flat]) {
        points.iter().for_each(|&point| self.hold(point, 0.0));
    }

    pub(super) fn size(&self) -> Flat {
        sub(self.most, self.least)
    }

    pub(super) fn middle(&self) -> Flat {
        [0.5 * (self.least[0] + self.most[0]), 0.5 * (self.least[1] + self.most[1])]
    }

    pub(super) fn holds(&self, point: Flat) -> bool {
        (0..2).all(|i| self.least[i] <= point[i] && point[i] <= self.most[i])
    }

    /// The nearest point inside.
    pub(super) fn nearest(&self, point: Flat) -> Flat {
        core::array::from_fn(|i| point[i].max(self.least[i]).min(self.most[i]))
    }

    /// What of a straight piece is inside.
    fn cut(&self, from: Flat, to: Flat) -> Option<[Flat; 2]> {
        let way = sub(to, from);
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for i in 0..2 {
            for (step, room) in [(-way[i], from[i] - self.least[i]), (way[i], self.most[i] - from[i])] {
                if step == 0.0 && room < 0.0 {
                    return None;
                } else if step < 0.0 {
                    enters = enters.max(room / step);
                } else if step > 0.0 {
                    leaves = leaves.min(room / step);
                }
            }
        }
        (enters <= leaves).then(|| [along(from, way, enters), along(from, way, leaves)])
    }

    /// What of a line through several points is inside, in pieces.
    pub(super) fn clip(&self, line: &[Flat]) -> Vec<Vec<Flat>> {
        let mut pieces: Vec<Vec<Flat>> = Vec::new();
        let mut open = false;
        for pair in line.windows(2) {
            let Some([from, to]) = self.cut(pair[0], pair[1]) else {
                open = false;
                continue;
            };
            match pieces.last_mut() {
                Some(piece) if open && from == pair[0] => piece.push(to),
                _ => pieces.push(Vec::from([from, to])),
            }
            open = to == pair[1] || self.holds(pair[1]);
        }
        pieces
    }
}

/// Directions around a circle that outlines are drawn with.
const DIRECTIONS: usize = 180;

fn directions() -> impl Iterator<Item = Flat> {
    (0..DIRECTIONS).map(|i| {
        let (sin, cos) = libm::sincos(TAU * i as f64 / DIRECTIONS as f64);
        [cos, sin]
    })
}

/// The convex outline that reaches as far as `reach` says in every direction, closed.
pub(super) fn convex(reach: impl Fn(Flat) -> Flat) -> Vec<Flat> {
    closed(directions().map(reach))
}

/// A circle, closed.
pub(super) fn circle(centre: Flat, radius: f64) -> Vec<Flat> {
    convex(|n| along(centre, n, radius))
}

fn closed(points: impl Iterator<Item = Flat>) -> Vec<Flat> {
    let mut outline: Vec<Flat> = points.collect();
    outline.extend(outline.first().copied());
    outline
}

/// The outline of a chain of points thickened by a radius, in pieces: round each straight piece, but for what
/// lies within another.
pub(super) fn thickened(chain: &[Flat], radius: f64, step: f64) -> Vec<Vec<Flat>> {
    let ends: Vec<[Flat; 2]> = match chain {
        [only] => Vec::from([[*only, *only]]),
        _ => chain.windows(2).map(|pair| [pair[0], pair[1]]).collect(),
    };
    let mut pieces = Vec::new();
    for (number, &[from, to]) in ends.iter().enumerate() {
        let outline = convex(|n| {
            let farther = if dot(n, to) > dot(n, from) { to } else { from };
            along(farther, n, radius)
        });
        let hidden = |point: Flat| {
            ends.iter()
                .enumerate()
                .any(|(other, &[a, b])| other != number && apart(point, a, b) < radius - 1e-3 * step)
        };
        pieces.extend(visible(&outline, step, hidden));
    }
    pieces
}

/// The outline of several convex outlines together, in pieces: what of each is not within another.
pub(super) fn union(parts: &[Vec<Flat>], step: f64) -> Vec<Vec<Flat>> {
    let mut pieces = Vec::new();
    for (number, part) in parts.iter().enumerate() {
        let hidden = |point: Flat| {
            parts
                .iter()
                .enumerate()
                .any(|(other, part)| other != number && is_within(point, part, 1e-3 * step))
        };
        pieces.extend(visible(part, step, hidden));
    }
    pieces
}

/// Whether a point is within a convex outline by more than a margin.
fn is_within(point: Flat, outline: &[Flat], margin: f64) -> bool {
    let mut sides = outline.windows(2).map(|pair| (sub(pair[1], pair[0]), sub(point, pair[0]))).peekable();
    sides.peek().is_some()
        && sides.all(|(side, at)| {
            let long = libm::hypot(side[0], side[1]);
            long < 1e-9 || area(side, at) > margin * long
        })
}

/// The point of a straight piece that is nearest to another.
pub(super) fn nearest_on(from: Flat, to: Flat, point: Flat) -> Flat {
    let way = sub(to, from);
    let size = dot(way, way);
    let share = if size > 0.0 { (dot(sub(point, from), way) / size).clamp(0.0, 1.0) } else { 0.0 };
    along(from, way, share)
}

/// The distance of a point from a straight piece.
fn apart(point: Flat, from: Flat, to: Flat) -> f64 {
    let [right, down] = sub(point, nearest_on(from, to, point));
    libm::hypot(right, down)
}

/// The parts of a line that are not hidden, to within a step.
fn visible(line: &[Flat], step: f64, hidden: impl Fn(Flat) -> bool) -> Vec<Vec<Flat>> {
    let mut pieces: Vec<Vec<Flat>> = Vec::new();
    let mut open = false;
    for pair in line.windows(2) {
        let way = sub(pair[1], pair[0]);
        let parts = (libm::hypot(way[0], way[1]) / step).ceil().clamp(1.0, 4000.0) as usize;
        for i in 0..parts {
            let [from, to] = [i, i + 1].map(|i| along(pair[0], way, i as f64 / parts as f64));
            if hidden(from) || hidden(to) {
                open = false;
            } else if let (true, Some(piece)) = (open, pieces.last_mut()) {
                piece.push(to);
            } else {
                pieces.push(Vec::from([from, to]));
                open = true;
            }
        }
    }
    pieces
}

/// Leaves out points that are on the straight line between their neighbours.
pub(super) fn plain(line: &[Flat]) -> Vec<Flat> {
    const STRAIGHT: f64 = 0.004;
    let mut kept: Vec<Flat> = Vec::new();
    for &point in line {
        if let [.., before, last] = kept[..] {
            let ahead = dot(sub(point, last), sub(last, before)) >= 0.0;
            if ahead && apart(last, before, point) < STRAIGHT {
                kept.pop();
            }
        }
        if kept.last().is_none_or(|&last| apart(last, point, point) >= STRAIGHT) {
            kept.push(point);
        }
    }
    kept
}

/// Parallel lines across the inside of an outline, at an angle of 45° falling or rising to the right.
pub(super) fn hatching(outline: &[Flat], spacing: f64, rising: bool) -> Vec<[Flat; 2]> {
    let across = if rising { [0.5_f64, 0.5] } else { [0.5, -0.5] }.map(|x| x * core::f64::consts::SQRT_2);
    let way = [-across[1], across[0]];
    let (least, most) = outline.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), &point| {
        (least.min(dot(point, across)), most.max(dot(point, across)))
    });
    let mut lines = Vec::new();
    // Off the points of an outline that is the same left and right.
    let mut at = (least / spacing).floor() * spacing + 0.371 * spacing;
    while at < most {
        let mut crossings: Vec<f64> = outline
            .windows(2)
            .filter_map(|pair| {
                let [a, b] = [pair[0], pair[1]].map(|point| dot(point, across) - at);
                ((a < 0.0) != (b < 0.0)).then(|| {
                    let [from, to] = [pair[0], pair[1]].map(|point| dot(point, way));
                    from + (to - from) * a / (a - b)
                })
            })
            .collect();
        crossings.sort_by(f64::total_cmp);
        for pair in crossings.chunks_exact(2) {
            let [from, to] =
                [pair[0], pair[1]].map(|t| [across[0] * at + way[0] * t, across[1] * at + way[1] * t]);
            if pair[1] - pair[0] > 0.2 {
                lines.push([from, to]);
            }
        }
        at += spacing;
    }
    lines
}
