//! How a piece of an obstacle and a wheel move past each other.

use super::arm::Arm;
use super::cell::{Cell, S, T, VARIABLES};
use super::corner::Corner;
use super::knuckle::spindle;
use super::obstacle::{Carrier, Obstacle, Piece, Point};
use super::profile::{Profile, ProfilePoint, place};
use super::rod::{PartOfRod, Rod, between};
use super::span::Span;
use super::tangent::known;
use super::vector::{Turn, Vector, X, add, cross, dot, length, scale, sub};
use super::wheel_pose::WheelPose;
use crate::OutOfRange;

impl WheelPose {
    /// A point that was measured at ride height, where its carrier has taken it.
    ///
    /// # Errors
    /// For an arm too short for the travel, or a rod for how far its end moves.
    pub fn carried(&self, carrier: Carrier, point: Point) -> Result<Point, OutOfRange> {
        Ok(Point(match carrier {
            Carrier::Body => point.0,
            // It tips and turns as the wheel does.
            Carrier::Knuckle => self.moved(self.corner.tipped(point.0, self.travel)),
            Carrier::Unsprung => self.risen(point.0),
            Carrier::Arm { pivot, end } => {
                let arm = Arm::new(pivot, end, Span::at(self.travel))?;
                let (turn, _) = arm.turn(self.travel);
                add(arm.pivot, turn.about_x(sub(point.0, arm.pivot)))
            }
            Carrier::Rod { outer, inner } => {
                let rod = Rod::new(outer, inner, &self.corner)?;
                let [outer, inner] = rod.ends(&self.corner, self.steer, self.travel);
                between(outer, inner, rod.share(point.0))
            }
        }))
    }
}

/// A piece, and how it and the wheel move past each other.
#[derive(Clone, Copy, Debug)]
pub(super) struct Motion<'a> {
    pub(super) corner: &'a Corner,
    pub(super) profile: &'a Profile,
    pub(super) piece: Piece,
    pub(super) arm: Option<Arm>,
    pub(super) rod: Option<PartOfRod>,
    /// Whether travel moves the piece past the knuckle.
    pub(super) heaves: bool,
    /// Roll for each millimetre of the difference of travel, past the piece.
    pub(super) roll_rate: f64,
    /// What the piece's own radius and the like take off every distance.
    pub(super) thickness: f64,
    pub(super) axis: (Vector, Vector),
    /// Spindle at ride height; it changes if `tilt_rate`, the bound of its turning for each millimetre, is
    /// not zero.
    pub(super) spindle: Vector,
    pub(super) tilt_rate: f64,
    pub(super) farthest: f64,
    pub(super) whole: Cell,
}

/// Where a piece is in the wheel frame, and what its derivatives need.
pub(super) struct Placed {
    /// After undoing travel and roll.
    pub(super) before_steer: Vector,
    pub(super) steer: Turn,
    pub(super) roll_angle: f64,
    /// From the steering axis's point, after undoing steer.
    pub(super) arm: Vector,
    pub(super) place: Vector,
    pub(super) spindle: Vector,
    /// Change of the spindle for each millimetre.
    pub(super) spindle_change: Vector,
    pub(super) a: f64,
    pub(super) r: f64,
    pub(super) outward: Vector,
    /// Derivatives of the piece's point in all but steer, before steer is undone.
    pub(super) by_travel: Vector,
    pub(super) by_other: Vector,
    pub(super) by_s: Vector,
    pub(super) by_t: Vector,
    /// Speed of the point in travel past the hub, without roll.
    pub(super) heave: f64,
    /// From the pivot line of a control arm.
    pub(super) arm_radius: f64,
}

impl<'a> Motion<'a> {
    /// # Errors
    /// For an arm too short for the travel, or a rod for how far its end moves.
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
        let rod = match (obstacle.carrier, piece) {
            (Carrier::Rod { outer, inner }, Piece::Line { middle, half }) => {
                Some(PartOfRod::new(outer, inner, corner, middle, half)?)
            }
            _ => None,
        };
        let (steers, heaves) = match obstacle.carrier {
            Carrier::Knuckle => (false, false),
            Carrier::Unsprung => (true, false),
            Carrier::Body | Carrier::Arm { .. } | Carrier::Rod { .. } => (true, true),
        };
        let tilt_rate = if steers { corner.tilt_rate() } else { 0.0 };
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
            rod,
            heaves,
            roll_rate,
            thickness: obstacle.radius + obstacle.uncertainty,
            axis: corner.axis_or_upright(),
            spindle: spindle(corner.camber, corner.toe).0,
            tilt_rate,
            farthest: profile.farthest(),
            whole: Cell { middle: spans.map(Span::middle), half: spans.map(Span::half) },
        })
    }

    pub(super) fn placed(&self, at: &[f64; VARIABLES]) -> Placed {
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
            let mut hub = self.corner.hub(z);
            let mut hub_by_travel = self.corner.hub_by_travel();
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
    pub(super) fn value(&self, at: &[f64; VARIABLES]) -> (f64, ProfilePoint) {
        let (a, r) = match &self.rod {
            Some(rod) => rod.at(self.corner, at).along_and_from_spindle(),
            None => {
                let placed = self.placed(at);
                (placed.a, placed.r)
            }
        };
        let [rim, tire] = self.profile.reaches(a, r);
        let reach = if rim.distance < tire.distance { rim } else { tire };
        (known(reach.distance - self.thickness), place(&reach, a, r))
    }

    /// The point of the piece, where it is at ride height.
    pub(super) fn point(&self, at: &[f64; VARIABLES]) -> Point {
        Point(self.piece.at(at[S], at[T]).0)
    }
}
