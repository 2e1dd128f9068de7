//! The tire: its designation, and what it implies.
//!
//! A tire is described by its **size** (`205/55R16`), its **service description** (`91V`: how much it
//! carries and how fast) and marks of how it is built (`XL`, `LRE`). Everything else follows from these
//! by the formulas and tables of the standards, each named where it stands.

mod coined;
pub mod condition;
mod designation;
mod dimensions;
mod earthmover;
pub mod energy_label;
mod formation;
pub mod grading;
pub mod identification;
pub mod inflation;
mod load_index;
mod load_version;
mod rim_match;
pub mod rolling;
mod service;
pub mod sidewall;
mod size;
mod speed_symbol;

pub use designation::Tire;
pub use earthmover::OffRoadCode;
pub use formation::Formation;
pub use load_index::LoadIndex;
pub use load_version::{LoadRange, LoadVersion};
pub use rim_match::{RimRange, RimRangeBasis};
pub use service::ServiceDescription;
pub use size::{
    AlphaNumeric, Flotation, FullProfile, Metric, Numeric, SizeClass, SizeSpeedLetter, Structure, TireSize,
};
pub use speed_symbol::SpeedSymbol;
