//! A rod between the knuckle and a rack.
//!
//! Its outer end `A` is fixed to the knuckle: in the wheel frame it stays at `w_A`. Its inner end `B` slides across
//! the vehicle by `y` so that the rod keeps its length `L`. With `q` from where `B` is at rest to `A` in the body,
//! `p` its part fore-and-aft and up, and `m² = L² − p²`: `y = q_y ∓ m`, so `y' = A'·u`, `u` of length `L/m`. A
//! place of the rod at the share `σ` of its length is at `w = (1 − σ)·w_A + σ·w_B(δ, z)` in the wheel frame, so
//! that all of its motion is `σ` times that of `B`.
//!
//! **Bounds.** With `|A_δ| ≤ ρ_A`, its distance from the steering axis, and `|A_z| ≤ h`, the speed of the hub and what
//! camber and toe turn: `|y_i| ≤ |A_i|·L/m` and `|y_ij| ≤ |A_ij|·L/m + |A_i|·|A_j|·L²/m³`, `m` at its least in the box.
//! `w_B` is a point that moves by `y` past which the wheel steers, travels and tips, as any of the body:
//! `|w_B,δ| ≤ ρ_B + |y_δ|`, `|w_B,δδ| ≤ ρ_B + 2·|y_δ| + |y_δδ|`, and so on. `|w_B − w_A| = L`. The distance falls by no
//! more than its derivatives in the middle and half of these second ones make it fall; what camber and toe turn
//! counts with its bound, not with its derivative.

use super::cell::{Cell, S, STEER, TRAVEL, VARIABLES};
use super::corner::Corner;
use super::obstacle::{Point, SHORTEST_ROD};
use super::profile::Reach;
use super::tangent::{Speeds, Tangent};
use super::vector::{Turn, Vector, add, cross, dot, length, scale, sub};
use crate::OutOfRange;

#[derive(Clone, Copy, Debug)]
pub(super) struct Rod {
    outer: Vector,
    inner: Vector,
    length: f64,
    /// −1 for a rod whose inner end is outboard of its outer one.
    sign: f64,
    /// Of the outer end, along the wheel's axes: it stays there.
    in_wheel: Vector,
}

/// A straight part of a rod, with the shares of its length at the middle of the part and from there to its end.
#[derive(Clone, Copy, Debug)]
pub(super) struct PartOfRod {
    rod: Rod,
    middle: f64,
    half: f64,
}

/// Where a part of a rod is in one position: in the wheel frame along the spindle, up and forward across it.
pub(super) struct RodPoint {
    /// The place of the part that was asked for, and its share of the rod's length.
    point: Vector,
    share: f64,
    /// From the outer end to the inner one.
    way: Vector,
    /// Derivatives of the inner end, but for what camber and toe turn.
    by_steer: Vector,
    by_travel: Vector,
    /// Distances of the ends from the steering axis, and of the inner one from the hub.
    outer_radius: f64,
    inner_radius: f64,
    from_hub: f64,
    /// `|p|`.
    aside: f64,
}

impl Rod {
    /// Of a rod with these ends at ride height, wheels straight ahead.
    ///
    /// # Errors
    /// If it is shorter than [`SHORTEST_ROD`], if steer and travel take the outer end so far fore-and-aft or up that it could be more than 0.95 of the
    /// rod's length from where the inner end slides, or if the axle is a beam, whose rod joins two knuckles.
    pub(super) fn new(outer: Point, inner: Point, corner: &Corner) -> Result<Self, OutOfRange> {
        let (outer, inner) = (outer.0, inner.0);
        let way = sub(outer, inner);
        let size = OutOfRange::check("length of a tie rod", length(way), "mm", SHORTEST_ROD, 20_000.0)?;
        let rod = Self {
            outer,
            inner,
            length: size,
            sign: if way[1] < 0.0 { -1.0 } else { 1.0 },
            in_wheel: corner.axes(0.0).map(|axis| dot(outer, axis)),
        };
        let (through, axis) = corner.axis_or_upright();
        let around = length(cross(axis, sub(outer, through)));
        let steer = corner.steer.most.max(-corner.steer.least);
        let travel = corner.travel.most.max(-corner.travel.least);
        let tilt = corner.tilt_rate() * length(outer);
        let around = around + tilt * travel;
        let most =
            libm::hypot(way[0], way[2]) + around * steer + (length(corner.hub_by_travel()) + tilt) * travel;
        let allowed = if corner.beam.is_some() { 0.0 } else { 0.95 * rod.length };
        OutOfRange::check("a tie rod's outer end off the line of its rack", most, "mm", 0.0, allowed)?;
        Ok(rod)
    }

    /// The share of its length, from the outer end, at a point of it.
    pub(super) fn share(&self, point: Vector) -> f64 {
        let way = sub(self.inner, self.outer);
        dot(sub(point, self.outer), way) / dot(way, way)
    }

    /// Where the ends are in the body: the outer one on the knuckle, the inner one slid.
    pub(super) fn ends(&self, corner: &Corner, steer: Turn, z: f64) -> [Vector; 2] {
        let (through, axis) = corner.axis_or_upright();
        let arm = steer.about(axis, sub(corner.of_wheel(self.in_wheel, z), through));
        let outer = add(corner.hub(z), add(through, arm));
        let [x, y, height] = sub(outer, self.inner);
        let across = libm::sqrt(self.length * self.length - x * x - height * height);
        [outer, add(self.inner, [0.0, y - self.sign * across, 0.0])]
    }
}

impl PartOfRod {
    /// # Errors
    /// Those of [`Rod::new`].
    pub(super) fn new(
        outer: Point,
        inner: Point,
        corner: &Corner,
        middle: Vector,
        half: Vector,
    ) -> Result<Self, OutOfRange> {
        let rod = Rod::new(outer, inner, corner)?;
        let share = rod.share(middle);
        Ok(Self { rod, middle: share, half: rod.share(add(middle, half)) - share })
    }

    pub(super) fn at(&self, corner: &Corner, at: &[f64; VARIABLES]) -> RodPoint {
        let (rod, z) = (&self.rod, at[TRAVEL]);
        let steer = Turn::by(at[STEER]);
        let (through, axis) = corner.axis_or_upright();
        let [outer, inner] = rod.ends(corner, steer, z);
        let hub = add(corner.hub(z), through);
        let q = sub(outer, rod.inner);
        let aside = libm::hypot(q[0], q[2]);
        let across = libm::sqrt(rod.length * rod.length - aside * aside);
        let u = [rod.sign * q[0] / across, 1.0, rod.sign * q[2] / across];
        let hub_by_travel = corner.hub_by_travel();
        let arm_by_steer = cross(axis, sub(outer, hub));
        let back = |v: Vector| steer.back().about(axis, v);
        let from_axis = back(sub(inner, hub));
        let place = add(through, from_axis);
        let by_steer = sub(back([0.0, dot(arm_by_steer, u), 0.0]), cross(axis, from_axis));
        let by_travel = back(sub([0.0, dot(hub_by_travel, u), 0.0], hub_by_travel));
        let axes = corner.axes(z);
        let in_wheel = |v: Vector| axes.map(|axis| dot(v, axis));
        let share = self.middle + self.half * at[S];
        let inner = in_wheel(place);
        RodPoint {
            point: between(rod.in_wheel, inner, share),
            share,
            way: sub(inner, rod.in_wheel),
            by_steer: in_wheel(by_steer),
            by_travel: in_wheel(by_travel),
            outer_radius: length(arm_by_steer),
            inner_radius: length(cross(axis, from_axis)),
            from_hub: length(place),
            aside,
        }
    }

    /// How fast a place of the rod can move past the wheel in a box, and what its motion bends.
    pub(super) fn speeds(&self, corner: &Corner, at: &RodPoint, cell: &Cell) -> Speeds {
        let rod = &self.rod;
        let spread = self.half.abs() * cell.half[S];
        let share = at.share.abs() + spread;
        let (h_steer, h_travel) = (cell.half[STEER], cell.half[TRAVEL]);
        let tilt = corner.tilt_rate();
        let hub = length(corner.hub_by_travel());
        // Of the outer end in the body.
        let tipping = tilt * length(rod.outer);
        let outer_steer = at.outer_radius + tipping * h_travel;
        let outer_travel = hub + tipping;
        let aside = at.aside + outer_steer * h_steer + outer_travel * h_travel;
        // No position is so far aside; see `new`.
        let aside = aside.min(0.95 * rod.length);
        let across = libm::sqrt(rod.length * rod.length - aside * aside);
        let (k, bend) = (rod.length / across, rod.length * rod.length / (across * across * across));
        // Of what the inner end slides.
        let (slide_steer, slide_travel) = (outer_steer * k, outer_travel * k);
        let slide_steer_steer = outer_steer * k + outer_steer * outer_steer * bend;
        let slide_steer_travel = tipping * k + outer_steer * outer_travel * bend;
        let slide_travel_travel = tilt * tipping * k + outer_travel * outer_travel * bend;
        // Of the inner end past the wheel.
        let radius = at.inner_radius + slide_steer * h_steer + (slide_travel + hub) * h_travel;
        let steer = radius + slide_steer;
        let past = hub + slide_travel;
        let from_hub = at.from_hub + steer * h_steer + past * h_travel;
        let travel = past + tilt * from_hub;
        let steer_steer = radius + 2.0 * slide_steer + slide_steer_steer;
        let steer_travel = past + slide_steer_travel + tilt * steer;
        let travel_travel = slide_travel_travel + 2.0 * tilt * past + tilt * tilt * from_hub;
        let not_in_slope = tilt * from_hub + tipping * k;
        let along = self.half.abs() * rod.length;
        let mixed = 0.5 * share * steer_travel * h_steer * h_travel;
        let by_steer = 0.5 * spread * steer * h_steer;
        let by_travel = 0.5 * spread * travel * h_travel;
        let mut bends = [0.0; VARIABLES];
        bends[STEER] = 0.5 * share * steer_steer * h_steer * h_steer + mixed + by_steer;
        bends[TRAVEL] = 0.5 * share * travel_travel * h_travel * h_travel
            + mixed
            + by_travel
            + share * not_in_slope * h_travel;
        bends[S] = by_steer + by_travel;
        let mut distance = [0.0; VARIABLES];
        (distance[STEER], distance[TRAVEL], distance[S]) = (share * steer, share * travel, along);
        let moved = (0..VARIABLES).map(|i| distance[i] * cell.half[i]).sum();
        Speeds { distance, moved, bends }
    }

    /// The derivatives of the distance, but for what camber and toe turn.
    pub(super) fn tangent(&self, at: &RodPoint, reach: &Reach) -> Tangent {
        let [_, up, forward] = at.point;
        let r = libm::hypot(up, forward);
        let out = if r > 0.0 { reach.out / r } else { 0.0 };
        let gradient = [reach.along, out * up, out * forward];
        let mut slope = [0.0; VARIABLES];
        slope[STEER] = at.share * dot(gradient, at.by_steer);
        slope[TRAVEL] = at.share * dot(gradient, at.by_travel);
        slope[S] = self.half * dot(gradient, at.way);
        let mut turns = [0.0; VARIABLES];
        turns[STEER] = slope[STEER];
        Tangent { slope, levers: [0.0; VARIABLES], turns }
    }
}

impl RodPoint {
    pub(super) fn along_and_from_spindle(&self) -> (f64, f64) {
        let [along, up, forward] = self.point;
        (along, libm::hypot(up, forward))
    }
}

/// From the outer end so far to the inner one.
pub(super) fn between(outer: Vector, inner: Vector, share: f64) -> Vector {
    add(outer, scale(sub(inner, outer), share))
}
