//! A box of positions.

/// Steer, travel, travel of the other wheel, and two variables of the piece.
pub(super) const VARIABLES: usize = 5;
pub(super) const STEER: usize = 0;
pub(super) const TRAVEL: usize = 1;
pub(super) const OTHER: usize = 2;
pub(super) const S: usize = 3;
pub(super) const T: usize = 4;

/// Ranges of the variables: middle and half-width.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cell {
    pub(super) middle: [f64; VARIABLES],
    pub(super) half: [f64; VARIABLES],
}
