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
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Error {
    /// A text that is no such designation.
    Parse(ParseError),
    /// A text that is no such word.
    Word(UnknownWord),
    /// A quantity outside what is accepted.
    OutOfRange(OutOfRange),
    /// Load and pressure that could not be related.
    Inflation(InflationError),
    /// A stiffness that is not known.
    Stiffness(StiffnessError),
    /// A rim whose barrel is not known.
    Barrel(BarrelError),
    /// A centring ring that cannot be.
    Ring(RingError),
    /// A body around a wheel that cannot be.
    Obstacle(ObstacleError),
    /// A wear that tells nothing.
    Wear(WearError),
    /// A tire that is yet to be made.
    #[cfg(feature = "jiff")]
    FutureDate(FutureDate),
}

crate::text::messages! {
    Error {} passes {
        Parse(ParseError),
        Word(UnknownWord),
        OutOfRange(OutOfRange),
        Inflation(InflationError),
        Stiffness(StiffnessError),
        Barrel(BarrelError),
        Ring(RingError),
        Obstacle(ObstacleError),
        Wear(WearError),
        #[cfg(feature = "jiff")] FutureDate(FutureDate),
    }
}
