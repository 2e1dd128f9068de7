//! How near one piece of an obstacle is to a wheel in one position, and how much nearer it can be around it.
//!
//! A *box* is a range of five variables: steer `δ`, travel `z` of this wheel and of the other one of a beam
//! axle, and two along the piece (`s`, `t`). The piece's point in the wheel frame is `w = C(z)ᵀ·(c +
//! A(−δ)·(Rx(−φ)·(p − h) − c))`: travel `h` undone, then the roll `φ` of a beam axle, steer `A` about a point
//! `c` of the steering axis, camber and toe `C`. Its clearance is `f = D(a, r)`, `a` and `r` being its place
//! along the spindle and its distance from it, `D` the profile's distance.
//!
//! **First order.** `D` is 1-Lipschitz and so are `a` and `r` together, so `f` falls by no more than `w`
//! moves: over a box by no more than `Σ Lᵢ·hᵢ`, `hᵢ` the half-widths, `Lᵢ` the greatest speed of `w` as
//! variable `i` changes. For steer that is `ρ`, the greatest distance from the steering axis; for travel
//! the speed of the point past the knuckle, and the turning of camber, toe and roll on the distance they
//! act at. For the turning of `C` that is the lesser of the point's distance from the hub and the farthest
//! place of the profile: what approaches is the nearest place of either.
//!
//! **Second order.** `D` is the least of two convex distances; each lies over its tangent, `D(w) ≥ D(w₀) +
//! g·((a, r) − (a₀, r₀))`. `a` is linear in `w`. `r` is convex in `w`, so it lies over its tangent, which is the
//! side that counts if `g` points away from the spindle; if it points to it, `r` lies under its tangent plus
//! `|Δw|²/(2·r₀)`, from `√(1 + x) ≤ 1 + x/2`. So `f ≥ f₀ + n·Δw − …`, `n` the unit vector `g` stands for. Steer
//! alone turns the point on a circle: `n·Δw = α·(cos θ − 1) + β·sin θ`, `β` the slope and `α` the share of `n`
//! along the lever from the axis, whose least is found with `cos θ ≥ 1 − θ²/2` or `1 − cos θ ≥ θ²/2·(1 −
//! h²/12)`. What the other variables move is turned by steer by at most `θ` times as much of it as is across
//! the axis. The rest is Taylor's: `n·Δw ≥ −Σ |∂ᵢf|·hᵢ − ½·Σ Mᵢⱼ·hᵢ·hⱼ`, `Mᵢⱼ` bounds of second derivatives over the
//! box. So what is lost falls with the square of the box.
//!
//! **Depth.** Nothing is deeper in a part than its deepest place.
//!
//! All hold always; the greatest is taken.

use super::arm::Arm;
use super::corner::{Corner, Span};
use super::obstacle::{Carrier, Obstacle, Point, Shape};
use super::profile::{Place, Profile, Reach, place};
use super::vector::{Turn, Vector, X, add, cross, dot, length, scale, sub};
use crate::OutOfRange;

/// Steer, travel, travel of the other wheel, and two variables of the piece.
pub(super) const VARIABLES: usize = 5;
const STEER: usize = 0;
const TRAVEL: usize = 1;
const OTHER: usize = 2;
const S: usize = 3;
const T: usize = 4;

/// Ranges of the variables: middle and half-width.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cell {
    pub(super) middle: [f64; VARIABLES],
    pub(super) half: [f64; VARIABLES],
}

/// A part of an obstacle with two variables.
#[derive(Clone, Copy, Debug)]
pub(super) enum Piece {
    /// From the middle `s` times along: `s` from −1 to 1.
    Line { middle: Vector, half: Vector },
    /// Polar: `s` the radius, `t` the angle.
    Disc { centre: Vector, across: [Vector; 2], radius: f64 },
}

impl Piece {
    /// The pieces of an obstacle.
    pub(super) fn of(obstacle: &Obstacle, number: usize) -> Option<Self> {
        match obstacle.shape {
            Shape::Chain { points, count } if number < count.max(2) - 1 => {
                let (from, to) = (points[number], points[(number + 1).min(count - 1)]);
                Some(Self::Line { middle: scale(add(from, to), 0.5), half: scale(sub(to, from), 0.5) })
            }
            Shape::Disc { centre, across, radius } if number == 0 => {
                Some(Self::Disc { centre, across, radius })
            }
            _ => None,
        }
    }

    fn spans(&self) -> [Span; 2] {
        match self {
            Self::Line { half, .. } if dot(*half, *half) == 0.0 => [Span::AT_REST; 2],
            Self::Line { .. } => [Span { least: -1.0, most: 1.0 }, Span::AT_REST],
            Self::Disc { radius, .. } => {
                let turn = if *radius > 0.0 { core::f64::consts::TAU } else { 0.0 };
                [Span { least: 0.0, most: *radius }, Span { least: 0.0, most: turn }]
            }
        }
    }

    /// The point and its derivatives.
    fn at(&self, s: f64, t: f64) -> (Vector, Vector, Vector) {
        match *self {
            Self::Line { middle, half } => (add(middle, scale(half, s)), half, [0.0; 3]),
            Self::Disc { centre, across, .. } => {
                let turn = Turn::by(t);
                let out = add(scale(across[0], turn.cos), scale(across[1], turn.sin));
                let round = add(scale(across[0], -turn.sin * s), scale(across[1], turn.cos * s));
                (add(centre, scale(out, s)), out, round)
            }
        }
    }
}

/// A piece, and how it and the wheel move past each other.
#[derive(Clone, Copy, Debug)]
pub(super) struct Motion<'a> {
    corner: &'a Corner,
    profile: &'a Profile,
    piece: Piece,
    arm: Option<Arm>,
    /// Whether travel moves the piece past the knuckle.
    heaves: bool,
    /// Roll for each millimetre of the difference of travel, past the piece.
    roll_rate: f64,
    /// What the piece's own radius and the like take off every distance.
    thickness: f64,
    axis: (Vector, Vector),
    /// Spindle at ride height; it changes if `tilt_rate`, the bound of its turning for each millimetre, is
    /// not zero.
    spindle: Vector,
    tilt_rate: f64,
    farthest: f64,
    pub(super) whole: Cell,
}

/// A box: value in its middle, a lower bound over all of it, and which way it falls.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounded {
    pub(super) value: f64,
    pub(super) lower: f64,
    pub(super) slope: [f64; VARIABLES],
    /// What each variable may contribute to the fall, for choosing where to cut.
    pub(super) weight: [f64; VARIABLES],
}

/// Where a piece is in the wheel frame, and what its derivatives need.
struct Placed {
    /// After undoing travel and roll.
    before_steer: Vector,
    steer: Turn,
    roll_angle: f64,
    /// From the steering axis's point, after undoing steer.
    arm: Vector,
    place: Vector,
    spindle: Vector,
    /// Change of the spindle for each millimetre.
    spindle_change: Vector,
    a: f64,
    r: f64,
    outward: Vector,
    /// Derivatives of the piece's point in all but steer, before steer is undone.
    by_travel: Vector,
    by_other: Vector,
    by_s: Vector,
    by_t: Vector,
    /// Speed of the point in travel past the hub, without roll.
    heave: f64,
    /// From the pivot line of a control arm.
    arm_radius: f64,
}

impl<'a> Motion<'a> {
    /// # Errors
    /// For an arm too short for the travel.
    pub(super) fn new(
        corner: &'a Corner,
        profile: &'a Profile,
        obstacle: &Obstacle,
        piece: Piece,
    ) -> Result<Self, OutOfRange> {
        let arm = match obstacle.carrier {
            Carrier::Arm { pivot, end } => Some(Arm::new(pivot, end, corner.travel)?),
            _ => None,
        };
        let (steers, heaves) = match obstacle.carrier {
            Carrier::Knuckle => (false, false),
            Carrier::Travels => (true, false),
            Carrier::Body | Carrier::Arm { .. } => (true, true),
        };
        let tilt_rate = if steers { corner.camber_gain.abs() + corner.toe_gain.abs() } else { 0.0 };
        let roll_rate = if heaves { corner.beam.map_or(0.0, |track| 1.0 / track) } else { 0.0 };
        let steer = if steers && corner.axis.is_some() { corner.steer } else { Span::AT_REST };
        let travel = if heaves || tilt_rate > 0.0 { corner.travel } else { Span::AT_REST };
        let other = if roll_rate > 0.0 { corner.other } else { Span::AT_REST };
        let [s, t] = piece.spans();
        let spans = [steer, travel, other, s, t];
        Ok(Self {
            corner,
            profile,
            piece,
            arm,
            heaves,
            roll_rate,
            thickness: obstacle.radius + obstacle.uncertainty,
            axis: corner.axis.map_or(([0.0; 3], [0.0, 0.0, 1.0]), |axis| (axis.through, axis.direction)),
            spindle: spindle(corner.camber, corner.toe).0,
            tilt_rate,
            farthest: profile.farthest(),
            whole: Cell { middle: spans.map(Span::middle), half: spans.map(Span::half) },
        })
    }

    fn placed(&self, at: &[f64; VARIABLES]) -> Placed {
        let [steer, z, other, s, t] = *at;
        let (mut point, mut by_s, mut by_t) = self.piece.at(s, t);
        let mut by_travel = [0.0; 3];
        let mut arm_radius = 0.0;
        if let Some(arm) = &self.arm {
            let (turn, rate) = arm.turn(z);
            let from_pivot = turn.about_x(sub(point, arm.pivot));
            point = add(arm.pivot, from_pivot);
            let across = cross(X, from_pivot);
            arm_radius = length(across);
            by_travel = scale(across, rate);
            by_s = turn.about_x(by_s);
            by_t = turn.about_x(by_t);
        }
        let mut roll_angle = 0.0;
        if self.heaves {
            let mut hub = [0.0, self.corner.lateral_gain * z, z];
            let mut hub_by_travel = [0.0, self.corner.lateral_gain, 1.0];
            if self.roll_rate > 0.0 {
                roll_angle = (z - other) * self.roll_rate;
                hub[1] -= 0.25 * roll_angle * (z - other);
                hub_by_travel[1] -= 0.5 * roll_angle;
            }
            point = sub(point, hub);
            by_travel = sub(by_travel, hub_by_travel);
        }
        let heave = length(by_travel);
        let mut by_other = [0.0; 3];
        if self.roll_rate > 0.0 {
            let back = Turn::by(-roll_angle);
            point = back.about_x(point);
            let rolling = scale(cross(X, point), self.roll_rate);
            by_travel = sub(back.about_x(by_travel), rolling);
            by_other = add(back.about_x([0.0, -0.5 * roll_angle, 0.0]), rolling);
            by_s = back.about_x(by_s);
            by_t = back.about_x(by_t);
        }
        let before_steer = point;
        let steer = if steer == 0.0 { Turn::NONE } else { Turn::by(steer) };
        let (through, direction) = self.axis;
        let arm = steer.back().about(direction, sub(before_steer, through));
        let place = add(through, arm);
        let (spindle, spindle_change) = if self.tilt_rate > 0.0 {
            let (camber, toe) = (self.corner.camber_gain, self.corner.toe_gain);
            let (spindle, [by_camber, by_toe]) =
                spindle(self.corner.camber + camber * z, self.corner.toe + toe * z);
            (spindle, add(scale(by_camber, camber), scale(by_toe, toe)))
        } else {
            (self.spindle, [0.0; 3])
        };
        let a = dot(place, spindle);
        let out = sub(place, scale(spindle, a));
        let r = length(out);
        let outward = if r > 0.0 { scale(out, 1.0 / r) } else { [0.0; 3] };
        Placed {
            before_steer,
            steer,
            roll_angle,
            arm,
            place,
            spindle,
            spindle_change,
            a,
            r,
            outward,
            by_travel,
            by_other,
            heave,
            by_s,
            by_t,
            arm_radius,
        }
    }

    /// The clearance at one place of all variables, and where on the profile.
    pub(super) fn value(&self, at: &[f64; VARIABLES]) -> (f64, Place) {
        let placed = self.placed(at);
        let [rim, tire] = self.profile.reaches(placed.a, placed.r);
        let reach = if rim.distance < tire.distance { rim } else { tire };
        (reach.distance - self.thickness, place(&reach, placed.a, placed.r))
    }

    /// The point of the piece, where it is at ride height.
    pub(super) fn point(&self, at: &[f64; VARIABLES]) -> Point {
        Point(self.piece.at(at[S], at[T]).0)
    }

    /// Bounds a box. Where the first order already shows that it is not below `enough`, nothing more is asked.
    pub(super) fn bound(&self, cell: &Cell, enough: f64) -> Bounded {
        let at = self.placed(&cell.middle);
        let speeds = self.speeds(&at, cell);
        let h = &cell.half;
        let [mut near, mut far] = self.profile.reaches(at.a, at.r);
        if far.distance < near.distance {
            (near, far) = (far, near);
        }
        let value = near.distance - self.thickness;
        let first_order: f64 = (0..VARIABLES).map(|i| speeds.distance[i] * h[i]).sum();
        let mut bounded =
            Bounded { value, lower: value - first_order, slope: [0.0; VARIABLES], weight: [0.0; VARIABLES] };
        if bounded.lower >= enough {
            return bounded;
        }
        let bends = speeds.bends(h);
        bounded.lower = f64::INFINITY;
        for (nearest, reach) in [(true, near), (false, far)] {
            let value = reach.distance - self.thickness;
            let least = (value - first_order).max(reach.deepest - self.thickness);
            if least >= bounded.lower {
                continue;
            }
            let gradient = add(scale(at.spindle, reach.along), scale(at.outward, reach.out));
            let slope = self.slope(&at, &reach, gradient);
            if nearest {
                bounded.slope = slope;
            }
            let axis = self.axis.1;
            let lever = dot(gradient, at.arm) - dot(gradient, axis) * dot(axis, at.arm);
            let mut falls = bends;
            falls[STEER] += fall_in_steer(slope[STEER].abs(), lever, h[STEER]);
            for i in TRAVEL..VARIABLES {
                falls[i] += slope[i].abs() * h[i];
            }
            let turning =
                if reach.out < 0.0 { -reach.out * (speeds.moved / (2.0 * at.r)).min(2.0) } else { 0.0 };
            let fall = falls.iter().sum::<f64>() + turning * speeds.moved;
            let lower = least.max(value - fall);
            if lower < bounded.lower {
                bounded.lower = lower;
                for i in 0..VARIABLES {
                    let straight = speeds.distance[i] * h[i];
                    bounded.weight[i] = (falls[i] + turning * straight).min(straight);
                }
            }
        }
        bounded
    }

    /// How the distance changes with each variable.
    fn slope(&self, at: &Placed, reach: &Reach, gradient: Vector) -> [f64; VARIABLES] {
        let (_, axis) = self.axis;
        let before_steer = at.steer.about(axis, gradient);
        let tilting = dot(at.spindle_change, at.outward) * (reach.along * at.r - reach.out * at.a);
        [
            -dot(gradient, cross(axis, at.arm)),
            dot(before_steer, at.by_travel) + tilting,
            dot(before_steer, at.by_other),
            dot(before_steer, at.by_s),
            dot(before_steer, at.by_t),
        ]
    }

    /// The greatest speeds and second derivatives over a box.
    fn speeds(&self, at: &Placed, cell: &Cell) -> Speeds {
        let h = &cell.half;
        let (size_s, size_t, polar) = match self.piece {
            Piece::Line { half, .. } => (length(half), 0.0, 0.0),
            Piece::Disc { .. } => (1.0, cell.middle[S] + h[S], 1.0),
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
        // Speeds past the knuckle: all of each, and what of it is across the steering axis.
        let axis = self.axis.1;
        let more = [
            travel_travel * h[TRAVEL] + travel_other * h[OTHER] + (arm_rate + roll) * spread,
            travel_other * h[TRAVEL] + other_other * h[OTHER] + roll * spread,
            size_s * turned,
        ];
        let travel = length(at.by_travel) + more[0];
        let other = length(at.by_other) + more[1];
        let across = [
            length(cross(axis, at.by_travel)) + more[0],
            length(cross(axis, at.by_other)) + more[1],
            if polar > 0.0 { size_s } else { length(cross(axis, at.by_s)) + more[2] },
            size_t,
        ];
        let carried = travel * h[TRAVEL] + other * h[OTHER] + spread;
        let carried_across: f64 = across.iter().zip(&h[TRAVEL..]).map(|(speed, h)| speed * h).sum();
        let steer = length(cross(axis, at.arm)) + carried_across;
        let from_hub_steered = length(at.place) + steer * h[STEER] + carried;
        let tilting = tilt * from_hub_steered.min(self.farthest);
        Speeds {
            distance: [steer, travel + tilting, other, size_s, size_t],
            across: [across[0] + tilt * steer, across[1], across[2], across[3]],
            moved: steer * h[STEER] + tilt * from_hub_steered * h[TRAVEL] + carried,
            spread,
            turning: [arm_rate + roll + tilt, roll],
            travel_travel: travel_travel + tilt * (2.0 * travel + tilt * from_hub_steered),
            travel_other: travel_other + tilt * other,
            other_other,
            polar,
        }
    }
}

/// Bounds over a box.
struct Speeds {
    /// Of the distance, for each variable.
    distance: [f64; VARIABLES],
    /// Second derivatives in steer and each other variable.
    across: [f64; VARIABLES - 1],
    /// How far the point moves from its place in the middle.
    moved: f64,
    /// How far `s` and `t` alone move it.
    spread: f64,
    /// Angles a line of the piece turns by, for each millimetre of the two travels.
    turning: [f64; 2],
    travel_travel: f64,
    travel_other: f64,
    other_other: f64,
    /// One if `s` and `t` are polar.
    polar: f64,
}

impl Speeds {
    /// `½·Σ Mᵢⱼ·hᵢ·hⱼ` for each `i`, but for steer with itself.
    fn bends(&self, h: &[f64; VARIABLES]) -> [f64; VARIABLES] {
        let [_, _, _, size_s, size_t] = self.distance;
        let [travel, other, s, t] = self.across;
        let [by_travel, by_other] = self.turning;
        let turned = by_travel * h[TRAVEL] + by_other * h[OTHER];
        let sums = [
            travel * h[TRAVEL] + other * h[OTHER] + s * h[S] + t * h[T],
            travel * h[STEER]
                + self.travel_travel * h[TRAVEL]
                + self.travel_other * h[OTHER]
                + by_travel * self.spread,
            other * h[STEER]
                + self.travel_other * h[TRAVEL]
                + self.other_other * h[OTHER]
                + by_other * self.spread,
            s * h[STEER] + size_s * turned + self.polar * h[T],
            t * h[STEER] + size_t * turned + self.polar * (h[S] + size_t * h[T]),
        ];
        core::array::from_fn(|i| 0.5 * h[i] * sums[i])
    }
}

/// The most that `lever·(1 − cos θ) − slope·sin θ` can be for `|θ| ≤ half`.
fn fall_in_steer(slope: f64, lever: f64, half: f64) -> f64 {
    if lever >= 0.0 {
        return slope * half + 0.5 * lever * half * half;
    }
    let rise = -lever * (1.0 - half * half / 12.0);
    if slope >= rise * half { slope * half - 0.5 * rise * half * half } else { slope * slope / (2.0 * rise) }
}

/// The spindle's direction, and its changes with camber and toe.
fn spindle(camber: f64, toe: f64) -> (Vector, [Vector; 2]) {
    let (camber, toe) = (Turn::by(camber), Turn::by(toe));
    // Outboard, tipped down by camber, then turned forward by toe: its front comes inboard.
    let spindle = [toe.sin * camber.cos, toe.cos * camber.cos, -camber.sin];
    let by_camber = [-toe.sin * camber.sin, -toe.cos * camber.sin, -camber.cos];
    let by_toe = [toe.cos * camber.cos, -toe.sin * camber.cos, 0.0];
    (spindle, [by_camber, by_toe])
}
