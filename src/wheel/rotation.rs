//! The wheel as it turns: its inertia and its imbalance.

mod imbalance;
mod inertia;

pub use imbalance::Imbalance;
pub use inertia::{RollingPart, RotatingPart, acceleration_ratio};
