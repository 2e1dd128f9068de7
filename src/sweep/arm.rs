//! An arm between the body and the knuckle.

use super::obstacle::{Point, SHORTEST_ARM};
use super::span::Span;
use super::vector::{Turn, Vector, sub};
use crate::OutOfRange;

/// The arm's end rises by the travel `z`: `sin θ = (height + z)/length`, `θ` its angle over the horizontal. So
/// `θ' = 1/(length·cos θ)` and `θ'' = sin θ/(length²·cos³ θ)`, both largest at an end of the travel.
#[derive(Clone, Copy, Debug)]
pub(super) struct Arm {
    pub(super) pivot: Vector,
    length: f64,
    height: f64,
    /// `θ` at ride height.
    rest: f64,
    /// −1 for an arm whose pivot is outboard of its end: it turns the other way.
    sign: f64,
    /// Bounds of `θ'` and `θ''` over the travel.
    pub(super) rate: f64,
    pub(super) acceleration: f64,
}

impl Arm {
    /// # Errors
    /// If it is shorter than [`SHORTEST_ARM`] seen from the front, or the travel needs more than 0.95 of the arm's length in height (72°): no arm stands so steep.
    pub(super) fn new(pivot: Point, end: Point, travel: Span) -> Result<Self, OutOfRange> {
        let [_, outboard, height] = sub(end.0, pivot.0);
        let length = libm::hypot(outboard, height);
        OutOfRange::check("length of an arm", length, "mm", SHORTEST_ARM, 20_000.0)?;
        let most = 0.95 * length;
        for z in [travel.least, 0.0, travel.most] {
            OutOfRange::check("height of an arm's end over its pivot", height + z, "mm", -most, most)?;
        }
        let sin = (height + travel.least).abs().max((height + travel.most).abs()) / length;
        let cos = libm::sqrt(1.0 - sin * sin);
        Ok(Self {
            pivot: pivot.0,
            length,
            height,
            rest: libm::asin(height / length),
            sign: if outboard < 0.0 { -1.0 } else { 1.0 },
            rate: 1.0 / (length * cos),
            acceleration: sin / (length * length * cos * cos * cos),
        })
    }

    /// The turn about the X axis at a travel, and its rate.
    pub(super) fn turn(&self, travel: f64) -> (Turn, f64) {
        let sin = (self.height + travel) / self.length;
        let cos = libm::sqrt(1.0 - sin * sin);
        let angle = self.sign * (libm::asin(sin) - self.rest);
        (Turn::by(angle), self.sign / (self.length * cos))
    }
}
