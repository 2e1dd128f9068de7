//! How the knuckle stands at each travel, before it steers and rolls.

use super::corner::Corner;
use super::vector::{Turn, Vector, add, cross, dot, scale};
use crate::units::{self, Length, in_mm};

impl Corner {
    /// A point of the steering axis and its direction; upright through the hub where none steers.
    pub(super) fn axis_or_upright(&self) -> (Vector, Vector) {
        self.axis.map_or(([0.0; 3], [0.0, 0.0, 1.0]), |axis| (axis.through, axis.direction))
    }

    /// Where travel takes the hub of an independent wheel.
    pub(super) const fn hub(&self, z: f64) -> Vector {
        [0.0, self.lateral_gain * z, z]
    }

    /// Its derivative in travel.
    pub(super) const fn hub_by_travel(&self) -> Vector {
        [0.0, self.lateral_gain, 1.0]
    }

    /// A bound of how camber and toe turn the knuckle for each millimetre of travel.
    pub(super) fn tilt_rate(&self) -> f64 {
        self.camber_gain.abs() + self.toe_gain.abs()
    }

    /// Outboard along the spindle, up across it, and forward across both, before the knuckle moves.
    pub(super) fn axes(&self, z: f64) -> [Vector; 3] {
        let (spindle, [down, _]) = spindle(self.camber + self.camber_gain * z, self.toe + self.toe_gain * z);
        let up = scale(down, -1.0);
        [spindle, up, cross(spindle, up)]
    }

    /// A point of the knuckle, tipped by what camber and toe gain.
    pub(super) fn tipped(&self, point: Vector, z: f64) -> Vector {
        self.of_wheel(self.axes(0.0).map(|axis| dot(point, axis)), z)
    }

    /// A point of the wheel, told along its axes, before the knuckle moves.
    pub(super) fn of_wheel(&self, [outboard, up, forward]: Vector, z: f64) -> Vector {
        let [by_outboard, by_up, by_forward] = self.axes(z);
        add(add(scale(by_outboard, outboard), scale(by_up, up)), scale(by_forward, forward))
    }

    /// How far outboard of the hub face a plane across the spindle is at ride height, so far ahead of the hub and
    /// above it. The plane is told by where the spindle meets it, outboard along the spindle; it leans with
    /// camber and toe.
    ///
    /// ```
    /// use beadseat::{sweep::Corner, units::{deg, mm}};
    /// let leaning = Corner::new().with_camber(deg(-2.0))?; // the top inboard
    /// let sidewall = leaning.outboard_across_spindle(mm(60.0), mm(0.0), mm(200.0));
    /// assert!((sidewall - mm(60.0 / 0.999391 - 200.0 * 0.034921)).abs() < mm(1e-3));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn outboard_across_spindle(&self, axial: Length, forward: Length, up: Length) -> Length {
        let (spindle, _) = spindle(self.camber, self.toe);
        units::mm((in_mm(axial) - in_mm(forward) * spindle[0] - in_mm(up) * spindle[2]) / spindle[1])
    }
}

/// The spindle's direction, and its changes with camber and toe.
pub(super) fn spindle(camber: f64, toe: f64) -> (Vector, [Vector; 2]) {
    let (camber, toe) = (Turn::by(camber), Turn::by(toe));
    // Outboard, tipped down by camber, then turned forward by toe: its front comes inboard.
    let spindle = [toe.sin * camber.cos, toe.cos * camber.cos, -camber.sin];
    let by_camber = [-toe.sin * camber.sin, -toe.cos * camber.sin, -camber.cos];
    let by_toe = [toe.cos * camber.cos, -toe.sin * camber.cos, 0.0];
    (spindle, [by_camber, by_toe])
}
