//! The rim: what a tire and a wheel must agree on.
//!
//! The *rim* is the part of the wheel the tire sits on. Its nominal diameter is a **code**: a 16 in rim
//! does not measure 16 in anywhere, and the seat it gives the tire depends on its family. Its width is
//! measured between the flanges and is also a code.

mod contour;
mod diameter;
mod drop_centre;
mod valve_hole;
mod width;

pub use contour::{Contour, Hump, RimSeries};
pub(crate) use diameter::CodeOf;
pub use diameter::{RimDiameter, SeatTaper};
pub use drop_centre::DropCentre;
pub use valve_hole::ValveHole;
pub use width::RimWidth;
