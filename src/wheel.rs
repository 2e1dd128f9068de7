//! The wheel: its designation, where its rim stands, and how it meets the hub.

mod bolt_circle;
mod designation;
mod fastener;
mod inset;

pub use bolt_circle::BoltCircle;
pub use designation::{Bore, Wheel, WheelSize};
pub use fastener::{FastenerKind, Pitch, Seat, Thread};
pub use inset::{Inset, RimEdges};
