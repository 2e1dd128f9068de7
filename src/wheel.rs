//! The wheel: its designation, where its rim stands, and how it meets the hub.

mod adaptor;
mod bolt_circle;
mod bore;
mod circle_fit;
mod designation;
mod dual_drilling;
mod fastener;
mod five_hole_rule;
mod identify;
mod inset;
mod measured_circle;
mod near_miss;

pub use adaptor::{Adaptor, Thickness};
pub use bolt_circle::{BoltCircle, HoleCentre};
pub use bore::{Bore, Spigot};
pub use circle_fit::{CircleFit, FitError};
pub use designation::{Wheel, WheelSize};
pub use dual_drilling::DualDrilling;
pub use fastener::{FastenerKind, Pitch, PropertyClass, Seat, Thread};
pub use five_hole_rule::FiveHoleRule;
pub(crate) use identify::NEAR_MISS;
pub use identify::{Candidate, Identified};
pub use inset::{Inset, RimEdges};
pub use measured_circle::MeasuredCircle;
pub use near_miss::NearMiss;
