//! Whatever was read off a tire or a wheel, as people write it: all readings with what decides between them,
//! suggestions where nothing reads, no reading without evidence, and the facts of what was read.

mod approval;
mod date;
mod door;
mod evidence;
mod fact_value;
mod facts;
mod kind;
mod reading;
#[cfg(feature = "serde")]
mod serial;
mod suggestion;
mod term;

pub use approval::{Approval, RegulationApproval};
pub use door::{readings, readings_as_of};
pub use fact_value::FactValue;
pub use facts::Fact;
pub use kind::Marking;
pub use reading::{Reading, Readings};
pub use suggestion::{Suggestion, suggestions};
pub use term::Term;
