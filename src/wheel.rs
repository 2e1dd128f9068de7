//! The wheel: its designation, where its rim stands, how it meets the hub, what it carries.

mod adaptor;
mod backspacing;
mod barrel;
mod bolt_circle;
mod bore;
mod designation;
pub mod drilling;
mod fastener;
mod inset;
pub(crate) mod phrase;
pub mod position;
mod rating;
mod ring;
pub mod rotation;
mod seat;
mod size_phrase;
mod stamp;
pub mod strength;
mod thread;
pub mod tightening;
mod valve;

pub use adaptor::{Adaptor, Thickness};
pub use backspacing::{Backspacing, BackspacingError};
pub use barrel::{Barrel, BarrelError};
pub use bolt_circle::{BoltCircle, HoleCentre};
pub use bore::{Bore, Spigot};
pub use designation::{Wheel, WheelSize};
pub use fastener::{FastenerKind, PropertyClass};
pub use inset::{EdgeChange, Inset, RimEdges};
pub use rating::WheelLoad;
pub use ring::{CentringRing, RingError};
pub use seat::Seat;
pub(crate) use stamp::Parts;
pub use stamp::{WheelDate, WheelMark, WheelStamp};
pub use thread::{Pitch, Thread};
pub use valve::Valve;
