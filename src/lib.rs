#![doc = include_str!("../README.md")]
#![no_std]
#![forbid(unsafe_code)]
#![cfg_attr(docsrs, feature(doc_cfg))]
// An enum may grow, unless it says that it is closed.
#![warn(clippy::exhaustive_enums)]

#[cfg(feature = "alloc")]
extern crate alloc;
#[cfg(feature = "std")]
extern crate std;

mod calendar;
mod citation;
mod decimals;
#[cfg(feature = "svg")]
pub mod draw;
mod error;
mod exact;
#[cfg(feature = "serde")]
mod file;
pub mod fitment;
pub mod marking;
mod molded;
mod order;
mod own_source;
pub mod prelude;
mod record;
pub mod rim;
#[cfg(feature = "serde")]
pub mod scenario;
pub mod search;
mod step;
pub mod sweep;
mod text;
pub mod tire;
mod toleranced;
mod unit_system;
pub mod units;
mod vector;
pub mod vehicle;
pub mod wheel;

pub use citation::{Citation, Status, sources};
pub use error::Error;
pub use marking::Marking;
pub use molded::{MoldedLoad, MoldedPressure, MoldedSpeed};
pub use own_source::OwnSource;
pub use record::Count;
pub use text::{Excerpt, Field, MarkedText, ParseError, ParseErrorKind, UnknownWord};
pub use toleranced::Toleranced;
pub use unit_system::UnitSystem;
pub use units::OutOfRange;
pub use uom;
