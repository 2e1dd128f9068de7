//! A report of its own beside the main one: of a spare wheel on an axle, of a further axle.

pub(super) mod line;
pub(super) mod print;
