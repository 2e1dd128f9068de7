//! The facts an assessment needs, how to come by them, and which to measure next.
//!
//! An [`Input`] is a fact: where it goes in a scenario, how it is taken, with which [`Tool`] and what [`Preparation`]
//! of the vehicle. [`Report::measurements`](super::Report::measurements) lists those that are missing, the one that
//! settles most first.

mod input;
mod measurement;
mod preparation;

pub(crate) use input::Keys;
pub(super) use input::Missing;
pub use input::{Input, InputPath};
pub use measurement::{Measurement, Measurements};
pub use preparation::{Preparation, Tool};
