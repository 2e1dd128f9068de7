//! The wheel: its designation, where its rim stands, and how it meets the hub.

mod bolt_circle;
mod bore;
mod designation;
mod fastener;
mod inset;

pub use bolt_circle::BoltCircle;
pub use bore::{Bore, Spigot};
pub use designation::{Wheel, WheelSize};
pub use fastener::{FastenerKind, Pitch, PropertyClass, Seat, Thread};
pub use inset::{Inset, RimEdges};
