//! What follows from how far a tire rolls in a turn: gearing, speedometer, stiffness, aquaplaning.

mod circumference;
mod gearing;
mod hydroplaning;
mod speedometer;
mod stiffness;

pub use circumference::Rolling;
pub use gearing::{Gearing, axle_ratio_to_restore, effective_axle_ratio};
pub use hydroplaning::hydroplaning_onset;
pub use speedometer::{Speedometer, SpeedometerLaw, true_distance};
pub use stiffness::{StiffnessError, VerticalStiffness};
