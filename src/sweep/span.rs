//! From one number to another.

/// A range, and where in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Span {
    pub(super) least: f64,
    pub(super) most: f64,
}

impl Span {
    pub(super) const AT_REST: Self = Self { least: 0.0, most: 0.0 };

    pub(super) const fn at(value: f64) -> Self {
        Self { least: value, most: value }
    }

    pub(super) fn middle(self) -> f64 {
        0.5 * (self.least + self.most)
    }

    pub(super) fn half(self) -> f64 {
        0.5 * (self.most - self.least)
    }
}
