//! Where a wheel and what is carried along with it are in one position.

use super::corner::{Corner, Pose};
use super::obstacle::Point;
use super::span::Span;
use super::vector::{Turn, Vector, add, dot, scale, sub};
use crate::units::{self, Angle, Length, in_mm, in_rad};

/// A corner standing in one [`Pose`]: what was measured at ride height, and where it is now.
///
/// ```
/// use beadseat::{sweep::{Carrier, Corner, Point, Pose}, units::{deg, mm}};
/// let raised = Corner::new().wheel_pose(Pose::new(deg(0.0), mm(40.0)));
/// let ball_joint = Point::new(mm(0.0), mm(-90.0), mm(-120.0))?;
/// let now = raised.carried(Carrier::Knuckle, ball_joint)?;
/// assert_eq!((now.outboard(), now.up()), (mm(-90.0), mm(-80.0)));
/// let (axial, radial) = raised.in_wheel(now);
/// assert_eq!((axial, radial), (mm(-90.0), mm(120.0)));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct WheelPose {
    pub(super) corner: Corner,
    hub: Vector,
    roll: Turn,
    pub(super) steer: Turn,
    /// Outboard along the spindle, up across it, and forward across both: in the knuckle, before it moves.
    axes: [Vector; 3],
    pub(super) travel: f64,
}

impl Corner {
    /// How it stands in a position.
    pub fn wheel_pose(&self, pose: Pose) -> WheelPose {
        let (z, other) = (in_mm(pose.travel()), in_mm(pose.other_travel()));
        let roll = self.beam.map_or(0.0, |track| (z - other) / track);
        WheelPose {
            corner: Self {
                steer: Span::at(in_rad(pose.steer())),
                travel: Span::at(z),
                other: Span::at(other),
                ..*self
            },
            hub: sub(self.hub(z), [0.0, 0.25 * roll * (z - other), 0.0]),
            roll: if roll == 0.0 { Turn::NONE } else { Turn::by(roll) },
            steer: Turn::by(in_rad(pose.steer())),
            axes: self.axes(z),
            travel: z,
        }
    }
}

impl WheelPose {
    /// A point of the wheel: how far outboard along the spindle, how far from it, and at what angle around
    /// it, from the top forward.
    pub fn of_wheel(&self, axial: Length, radial: Length, around: Angle) -> Point {
        let (sin, cos) = libm::sincos(in_rad(around));
        let [outboard, up, forward] = self.axes;
        let out = add(scale(up, cos), scale(forward, sin));
        Point(self.moved(add(scale(outboard, in_mm(axial)), scale(out, in_mm(radial)))))
    }

    /// Where a point of the body is in the wheel frame: along the spindle, and the distance from it.
    pub fn in_wheel(&self, point: Point) -> (Length, Length) {
        let [axial, up, forward] = self.along_and_across(point);
        (axial, units::mm(libm::hypot(in_mm(up), in_mm(forward))))
    }

    /// Where a point of the body is along the spindle, and across it up and forward.
    pub fn along_and_across(&self, point: Point) -> [Length; 3] {
        let (through, direction) = self.corner.axis_or_upright();
        let unrolled = self.roll.back().about_x(sub(point.0, self.hub));
        let straight = self.steer.back().about(direction, sub(unrolled, through));
        let place = add(through, straight);
        self.axes.map(|axis| units::mm(dot(place, axis)))
    }

    /// What turns and travels with the wheel.
    pub(super) fn moved(&self, point: Vector) -> Vector {
        let (through, direction) = self.corner.axis_or_upright();
        self.risen(add(through, self.steer.about(direction, sub(point, through))))
    }

    pub(super) fn risen(&self, point: Vector) -> Vector {
        add(self.hub, self.roll.about_x(point))
    }
}
