//! Bolt circles on the bench: measured, identified, and told from their near misses.

mod circle_fit;
mod dual_drilling;
mod five_hole_rule;
mod identify;
mod measured_circle;
mod near_miss;

pub use circle_fit::{CircleFit, FitError};
pub use dual_drilling::DualDrilling;
pub use five_hole_rule::FiveHoleRule;
pub(crate) use identify::NEAR_MISS;
pub use identify::{Candidate, Identified};
pub use measured_circle::MeasuredCircle;
pub use near_miss::NearMiss;
