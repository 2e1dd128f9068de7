//! Vectors of three, in millimetres unless they are directions.

pub(super) use crate::vector::{add, dot, scale, sub};

pub(super) type Vector = [f64; 3];

pub(super) const X: Vector = [1.0, 0.0, 0.0];

pub(super) fn cross(a: Vector, b: Vector) -> Vector {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

pub(super) fn length(a: Vector) -> f64 {
    libm::sqrt(dot(a, a))
}

/// A turn by an angle: its sine and cosine.
#[derive(Clone, Copy, Debug)]
pub(super) struct Turn {
    pub(super) sin: f64,
    pub(super) cos: f64,
}

impl Turn {
    pub(super) const NONE: Self = Self { sin: 0.0, cos: 1.0 };

    pub(super) fn by(angle: f64) -> Self {
        let (sin, cos) = libm::sincos(angle);
        Self { sin, cos }
    }

    pub(super) fn back(self) -> Self {
        Self { sin: -self.sin, cos: self.cos }
    }

    /// Turns a vector about the X axis, Y towards Z.
    pub(super) fn about_x(self, v: Vector) -> Vector {
        [v[0], self.cos * v[1] - self.sin * v[2], self.sin * v[1] + self.cos * v[2]]
    }

    /// Turns a vector about a unit axis, right-handed.
    pub(super) fn about(self, axis: Vector, v: Vector) -> Vector {
        let along = scale(axis, dot(axis, v) * (1.0 - self.cos));
        add(add(scale(v, self.cos), scale(cross(axis, v), self.sin)), along)
    }
}
