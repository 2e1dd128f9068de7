//! Every setup that fits a vehicle.
//!
//! [`Search`] walks a lattice of sizes and rims and gives each pair that can stand on the vehicle, with the *interval of
//! inset* in which no check is beyond, what ends it at either end, the best whole millimetre in it, what the tire and
//! wheel must be bought with, and what was not judged. It allocates nothing. [`Best`] keeps the best of them.
//!
//! What it gives is beyond nothing, and what an assessment of each inset of a lattice accepts lies in what it gives: random
//! vehicles show it, nothing proves it. What is left out may still fit with another thing bought than is tried here. The
//! sizes are those that the grammar can write, whether anybody makes them or not.
//!
//! ```
//! use beadseat::prelude::*;
//! use beadseat::search::{Best, Search, Wishes};
//! use beadseat::vehicle::Space;
//! // A vehicle of which three gaps are known.
//! let space = Space::new().with_inner_clearance(mm(18.0))?.with_outer_clearance(mm(30.0))?.with_upper_clearance(mm(55.0))?;
//! let front = Axle::new().with_space(space);
//! let car = Vehicle::new(Kind::Passenger).with_front(front);
//! let original = Setups { front: Some(Setup::parse("205/55R16 91V", "6.5Jx16 ET46 5x112 57.1")?), rear: None };
//! let (conditions, limits, wishes) = (Conditions::default(), Limits::default(), Wishes::new());
//! let search = Search::new(&car, &original, &conditions, &limits, &wishes);
//! let mut best = Best::<5>::new();
//! best.extend(search.candidates());
//! let first = best.iter().next().ok_or("nothing fits")?;
//! let choice = first.choices().next().ok_or("no axle")?;
//! assert!(choice.insets().min().value() <= choice.insets().max().value());
//! // The load was not judged, and is said not to be.
//! assert!(first.not_judged().has(CheckId::TireLoad));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod best;
mod candidate;
mod choice;
mod lattice;
mod narrowing;
mod near_miss;
mod needs;
mod reach;
mod remedy;
mod screen;
mod staggered;
#[cfg(feature = "alloc")]
mod stock;
mod walk;
mod wishes;

pub use best::{Best, LeastMargin, Likely, Score};
pub use candidate::{Candidate, Checks, Margin};
pub use choice::{Choice, Expectation};
pub use narrowing::Narrowing;
pub use near_miss::{NearMiss, NearMisses};
pub use needs::Needs;
pub use remedy::Remedy;
pub use screen::{Columns, Screen};
#[cfg(feature = "alloc")]
#[cfg_attr(docsrs, doc(cfg(feature = "alloc")))]
pub use stock::{Pair, Stock};
pub use walk::{Candidates, Search};
pub use wishes::{Keep, Wishes};
