#![doc = include_str!("../README.md")]
#![no_std]
#![forbid(unsafe_code)]

#[cfg(feature = "alloc")]
extern crate alloc;
#[cfg(feature = "std")]
extern crate std;

mod citation;
mod exact;
pub mod rim;
mod text;
pub mod tire;
mod toleranced;
pub mod units;
pub mod wheel;

pub use citation::{Citation, Status, sources};
pub use text::{Field, ParseError, ParseErrorKind, Shown};
pub use toleranced::Toleranced;
pub use units::OutOfRange;
pub use uom;
