//! Condition of a tire that is in use: tread, wear, age, and how it is mounted.

mod age_limit;
mod mounting;
mod tread;
mod wear;

pub use age_limit::AgeLimit;
pub use mounting::{ArrowTurn, Mounting, MountingFinding, Remedy, SideFacingOut, VehicleSide};
pub use tread::{DepthFinding, SpreadLimit, TreadLimit, rear_deeper_by, tread_spread};
pub use wear::{WearError, WearRate};
