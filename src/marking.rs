//! Whatever was read off a tire or a wheel, as people write it: all readings with what decides between them,
//! suggestions where nothing reads, and no reading without evidence.

mod approval;
mod date;
mod door;
mod evidence;
mod kind;
mod reading;
mod suggestion;

pub use approval::{Approval, RegulationApproval};
pub use door::{readings, readings_as_of};
pub use kind::Marking;
pub use reading::{Reading, Readings};
pub use suggestion::{Suggestion, suggestions};
