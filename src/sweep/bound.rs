//! How near one piece of an obstacle is to a wheel in one position, and how much nearer it can be around it.
//!
//! A *box* is a range of five variables: steer `δ`, travel `z` of this wheel and of the other one of a beam
//! axle, and two along the piece. The piece's point in the wheel frame is `w = C(z)ᵀ·(c + A(−δ)·(v − c))`: `v`
//! with travel and the roll of a beam axle undone, steer `A` about a point `c` of the steering axis, camber and
//! toe `C`. Its clearance is `f = D(a, r)`, `a` and `r` its place along the spindle and its distance from it, `D` the
//! profile's distance. `h` are half the widths of the box, `w₀` its middle.
//!
//! **First order.** `D` is 1-Lipschitz and so are `a` and `r` together, so `f` falls by no more than `w`
//! moves: by at most `Σ Lᵢ·hᵢ`, `Lᵢ` the greatest speed of `w` as variable `i` changes. For steer that is the
//! greatest distance `ρ` from the steering axis in the box; for travel the speed of the point past the
//! knuckle, and the turning of camber and toe on what they turn. That is the lesser of the point's distance from
//! the hub and the farthest place of the profile: turning one about the other, the nearest place of
//! either comes nearer by no more than it moves.
//!
//! **Tangent.** `D` is the least of two convex distances; each lies over its tangent, so `f ≥ f₀ + n·(w − w₀) − E`,
//! `n` the unit vector of the gradient in space. `a` is linear in `w`. `r` is convex in `w` and lies over its own
//! tangent, which is the side that counts if `n` points away from the spindle: then `E = 0`. If it points to
//! the spindle, `r ≤ r₀ + e·Δw + |Δw|²/(2·r₀)`, from `√(1 + x) ≤ 1 + x/2`, and `E` is the share of `n` in `e` times
//! the last term. What is left is to bound `n·(w − w₀)`:
//! - with `v` moved along its derivatives in the middle, steer turns it on a circle, and `n·(w − w₀)` is linear in all
//!   variables but steer, so it is least at a corner of theirs; there it is `fall + α·(cos θ − 1) + β·sin θ`, `α`
//!   and `β` the shares of `n` along and across the lever from the axis, least by `1 − cos θ ≤ θ²/2` or
//!   `1 − cos θ ≥ θ²/2·(1 − h²/12)`;
//! - `v` departs from its derivatives by at most `½·Σ Mᵢⱼ·hᵢ·hⱼ`, `Mᵢⱼ` bounds of its second derivatives (roll, the
//!   swing of an arm, the angle round a disc), and turning that adds at most `θ` times as much;
//! - `C` turns by at most `ω·hz`, `ω` the sum of both rates: beside its linear part that is at most `½·(ω·hz)²` of
//!   the point's distance from the hub, and `ω·hz` times what the point moves.
//!
//! What is lost falls with the square of the box.
//!
//! **Depth.** Nothing is deeper in a part than its deepest place.
//!
//! All hold always; the greatest is taken. What is not a number proves nothing.

use super::cell::{Cell, OTHER, S, STEER, T, TRAVEL, VARIABLES};
use super::motion::{Motion, Placed};
use super::obstacle::Piece;
use super::profile::Reach;
use super::tangent::{Speeds, Tangent, known};
use super::vector::{add, cross, dot, length, scale, sub};

/// A box: value in its middle, a lower bound over all of it, and which way it falls.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounded {
    pub(super) value: f64,
    pub(super) lower: f64,
    pub(super) slope: [f64; VARIABLES],
    /// What each variable may contribute to the fall, for choosing where to cut.
    pub(super) weight: [f64; VARIABLES],
}

impl Motion<'_> {
    /// Bounds a box. Where the first order already shows that it is not below `enough`, nothing more is asked.
    pub(super) fn bound(&self, cell: &Cell, enough: f64) -> Bounded {
        match &self.rod {
            Some(rod) => {
                let at = rod.at(self.corner, &cell.middle);
                let speeds = rod.speeds(self.corner, &at, cell);
                let place = at.along_and_from_spindle();
                self.bound_at(place, &speeds, cell, enough, |reach| rod.tangent(&at, reach))
            }
            None => {
                let at = self.placed(&cell.middle);
                let speeds = self.speeds(&at, cell);
                self.bound_at((at.a, at.r), &speeds, cell, enough, |reach| self.tangent(&at, reach))
            }
        }
    }

    fn bound_at(
        &self,
        (a, r): (f64, f64),
        speeds: &Speeds,
        cell: &Cell,
        enough: f64,
        tangent: impl Fn(&Reach) -> Tangent,
    ) -> Bounded {
        let h = &cell.half;
        let [mut near, mut far] = self.profile.reaches(a, r);
        if far.distance < near.distance {
            (near, far) = (far, near);
        }
        let value = known(near.distance - self.thickness);
        let first_order: f64 = (0..VARIABLES).map(|i| speeds.distance[i] * h[i]).sum();
        let mut bounded =
            Bounded { value, lower: value - first_order, slope: [0.0; VARIABLES], weight: [0.0; VARIABLES] };
        if bounded.lower >= enough {
            return bounded;
        }
        let bends = speeds.bends;
        bounded.lower = f64::INFINITY;
        for (nearest, reach) in [(true, near), (false, far)] {
            let value = reach.distance - self.thickness;
            let least = (value - first_order).max(reach.deepest - self.thickness);
            if least >= bounded.lower {
                continue;
            }
            let tangent = tangent(&reach);
            if nearest {
                bounded.slope = tangent.slope;
            }
            let turning =
                if reach.out < 0.0 { -reach.out * (speeds.moved / (2.0 * r)).min(2.0) } else { 0.0 };
            let fall = tangent.fall(h) + bends.iter().sum::<f64>() + turning * speeds.moved;
            let lower = known(least.max(value - fall));
            if lower < bounded.lower {
                bounded.lower = lower;
                let falls = tangent.falls(h);
                for i in 0..VARIABLES {
                    let straight = speeds.distance[i] * h[i];
                    bounded.weight[i] = (falls[i] + bends[i] + turning * straight).min(straight);
                }
            }
        }
        bounded
    }

    fn tangent(&self, at: &Placed, reach: &Reach) -> Tangent {
        let gradient = add(scale(at.spindle, reach.along), scale(at.outward, reach.out));
        let (through, axis) = self.axis;
        // Before steer is undone.
        let gradient = at.steer.about(axis, gradient);
        let across = sub(gradient, scale(axis, dot(gradient, axis)));
        let round = cross(axis, gradient);
        let lever = sub(at.before_steer, through);
        let tilting = dot(at.spindle_change, at.outward) * (reach.along * at.r - reach.out * at.a);
        let moves = [lever, at.by_travel, at.by_other, at.by_s, at.by_t];
        let mut slope = moves.map(|v| dot(gradient, v));
        let levers = moves.map(|v| dot(across, v));
        let turns = moves.map(|v| dot(round, v));
        slope[STEER] = turns[STEER];
        slope[TRAVEL] += tilting;
        Tangent { slope, levers, turns }
    }

    /// The greatest speeds and second derivatives over a box.
    fn speeds(&self, at: &Placed, cell: &Cell) -> Speeds {
        let h = &cell.half;
        let (size_s, size_t, polar) = match self.piece {
            Piece::Line { half, .. } => (length(half), 0.0, 0.0),
            Piece::Round { .. } => (1.0, cell.middle[S] + h[S], 1.0),
        };
        let spread = size_s * h[S] + size_t * h[T];
        let (roll, tilt) = (self.roll_rate, self.tilt_rate);
        // The hub moves inboard by (z − z₂)²/(4·track).
        let shortening = 0.5 * roll;
        let (arm_rate, arm_pull) = match &self.arm {
            Some(arm) => (arm.rate, (at.arm_radius + spread) * (arm.rate * arm.rate + arm.acceleration)),
            None => (0.0, 0.0),
        };
        // Past the hub, without roll.
        let heave =
            at.heave + (arm_pull + shortening) * h[TRAVEL] + shortening * h[OTHER] + arm_rate * spread;
        let aside = 0.5 * at.roll_angle.abs() + shortening * (h[TRAVEL] + h[OTHER]);
        let from_hub = length(at.before_steer) + heave * h[TRAVEL] + aside * h[OTHER] + spread;
        // Second derivatives past the knuckle.
        let travel_travel = arm_pull + shortening + roll * (2.0 * heave + roll * from_hub);
        let travel_other = shortening + roll * (heave + aside + roll * from_hub);
        let other_other = shortening + roll * (2.0 * aside + roll * from_hub);
        let turned = (arm_rate + roll) * h[TRAVEL] + roll * h[OTHER];
        let axis = self.axis.1;
        // How far those speeds change over the box, from their values in the middle.
        let more = [
            travel_travel * h[TRAVEL] + travel_other * h[OTHER] + (arm_rate + roll) * spread,
            travel_other * h[TRAVEL] + other_other * h[OTHER] + roll * spread,
            size_s * turned + polar * h[T],
            size_t * turned + polar * (h[S] + size_t * h[T]),
        ];
        let travel = length(at.by_travel) + more[0];
        let other = length(at.by_other) + more[1];
        let carried = travel * h[TRAVEL] + other * h[OTHER] + spread;
        let steer = length(cross(axis, at.arm)) + carried;
        let from_hub_steered = length(at.place) + steer * h[STEER] + carried;
        let tilting = tilt * from_hub_steered.min(self.farthest);
        let distance = [steer, travel + tilting, other, size_s, size_t];
        Speeds {
            distance,
            moved: steer * h[STEER] + tilt * from_hub_steered * h[TRAVEL] + carried,
            bends: bends(&distance, &more, tilt, from_hub_steered, h),
        }
    }
}

/// What is bent otherwise than by steer, shared among the variables, `more` being how far the speeds in all but
/// steer change over the box. Of what the others move the point, `½·Σ moreᵢ·hᵢ` is not in a straight line, and
/// steer turns that by at most `h`. Tilting turns the spindle by at most `tilt·hz`, which moves a point that itself
/// moves by `m` by `tilt·hz·m` more, and bends by `½·(tilt·hz)²` of its distance from the hub.
fn bends(
    distance: &[f64; VARIABLES],
    more: &[f64; VARIABLES - 1],
    tilting: f64,
    from_hub: f64,
    h: &[f64; VARIABLES],
) -> [f64; VARIABLES] {
    let tilt = tilting * h[TRAVEL];
    let steered = 0.5 * (1.0 + h[STEER]);
    let mut bends = [0.0; VARIABLES];
    for i in TRAVEL..VARIABLES {
        bends[i] = steered * more[i - 1] * h[i];
    }
    for (bend, (speed, h)) in bends.iter_mut().zip(distance.iter().zip(h)) {
        *bend += tilt * speed * h;
    }
    bends[TRAVEL] += 0.5 * tilt * tilt * from_hub;
    bends
}
