//! One error over all that the crate refuses with.

use crate::sweep::ObstacleError;
#[cfg(feature = "jiff")]
use crate::tire::identification::FutureDate;
use crate::tire::{condition::WearError, inflation::InflationError, rolling::StiffnessError};
use crate::wheel::{BarrelError, RingError};
use crate::{OutOfRange, ParseError, UnknownWord};

/// Whatever a function of the crate refuses with: for `?` in a program that does several things.
///
/// ```
/// use beadseat::prelude::*;
/// fn front_axle(load: f64, holes: &str) -> Result<Axle, beadseat::Error> {
///     let hub = Hub::new().with_bolt_circle(holes.parse()?);
///     Ok(Axle::new().with_hub(hub).with_max_load(kg(load))?)
/// }
/// assert!(front_axle(1060.0, "5x112").is_ok());
/// assert!(matches!(front_axle(1060.0, "5x1x2"), Err(beadseat::Error::Parse(_))));
/// assert_eq!(front_axle(-1.0, "5x112").unwrap_err().to_string(), "max_load_kg -1 kg is not in 10 to 60000 kg");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// A text that is no such designation.
    #[error(transparent)]
    Parse(#[from] ParseError),
    /// A text that is no such word.
    #[error(transparent)]
    Word(#[from] UnknownWord),
    /// A quantity outside what is accepted.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// Load and pressure that could not be related.
    #[error(transparent)]
    Inflation(#[from] InflationError),
    /// A stiffness that is not known.
    #[error(transparent)]
    Stiffness(#[from] StiffnessError),
    /// A rim whose barrel is not known.
    #[error(transparent)]
    Barrel(#[from] BarrelError),
    /// A centring ring that cannot be.
    #[error(transparent)]
    Ring(#[from] RingError),
    /// A body around a wheel that cannot be.
    #[error(transparent)]
    Obstacle(#[from] ObstacleError),
    /// A wear that tells nothing.
    #[error(transparent)]
    Wear(#[from] WearError),
    /// A tire that is yet to be made.
    #[cfg(feature = "jiff")]
    #[error(transparent)]
    FutureDate(#[from] FutureDate),
}
