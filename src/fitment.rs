//! Judging a change of wheels and tires.
//!
//! [`assess`] takes a vehicle, what was on it and what is to go on, how it is used and which limits
//! apply, and answers with a [`Report`]: every check with its measured value, limit, margin, verdict,
//! reason and source. What it lacks an input for is [`Verdict::NotAssessed`] and says which.
//!
//! ```
//! use beadseat::fitment::{Change, CheckId, Conditions, Limits, Position, Setup, Setups, Verdict, assess};
//! use beadseat::{units::kmh, vehicle::{Axle, Hub, Vehicle}};
//! let hub = Hub::new().with_bolt_circle("5x112".parse()?);
//! let wagon = Vehicle::unknown().with_top_speed(kmh(205.0))?.with_front(Axle::new().with_hub(hub));
//! let setup = |tire: &str, wheel: &str| Ok::<_, beadseat::ParseError>(Setups {
//!     front: Some(Setup::new(tire.parse()?, wheel.parse()?)),
//!     rear: None,
//! });
//! let change = Change {
//!     original: setup("205/55R16 91V", "6.5Jx16 ET46 5x112")?,
//!     proposed: setup("225/45R17 94W XL", "7.5Jx17 ET42 5x114.3")?,
//! };
//! let report = assess(&wagon, &change, &Conditions::default(), &Limits::default());
//! let holes = report.get(CheckId::BoltCircle, Position::Front).ok_or("no such check")?;
//! assert_eq!(holes.verdict(), Verdict::Beyond);
//! assert_eq!(
//!     holes.to_string(),
//!     "front bolt_circle: beyond, 5x114.3 (equal to 5x112): a near miss: every hole is off by half the \
//!      difference; it seems to go on and does not seat",
//! );
//! assert!(!report.is_complete());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod apart;
mod assess;
#[cfg(feature = "serde")]
mod assumed;
mod case;
mod caution;
mod check;
mod checks;
pub mod comparison;
mod conditions;
pub mod derivation;
mod document;
mod effect;
mod facts;
mod field_of_law;
mod finding;
#[cfg(feature = "serde")]
mod further;
mod in_short;
mod judge;
mod layout;
mod limits;
pub mod measure;
pub mod moves;
#[cfg(feature = "alloc")]
mod parts;
mod position;
pub mod pressures;
mod print;
#[cfg(feature = "serde")]
mod provenance;
mod report;
mod rule_scope;
#[cfg(feature = "serde")]
mod serial;
mod setup;
mod severity;
mod sheet;
pub mod space;
mod spare;
mod summary;
mod todo;
mod told;
mod trial;
mod value;

pub use crate::unit_system::UnitSystem;
pub use assess::assess;
pub use caution::Caution;
pub use check::{Check, CheckId, Reason, Verdict};
pub(crate) use checks::DependsOn;
pub use conditions::{Conditions, Day, TractionClass};
pub use document::Document;
pub use effect::{Effect, EffectId};
pub use field_of_law::FieldOfLaw;
#[cfg(feature = "serde")]
pub use further::AxleReport;
#[cfg(feature = "serde")]
pub(crate) use further::{FurtherAxle, FurtherAxles};
pub use judge::verdict;
pub use limits::{Limit, LimitSet, Limits};
#[cfg(feature = "alloc")]
pub(crate) use parts::{Parts, Span, Windows};
pub use position::Position;
pub use print::{Body, Headline};
#[cfg(feature = "serde")]
pub(crate) use provenance::Basis;
#[cfg(feature = "serde")]
pub use provenance::{Origin, Provenance};
pub use report::Report;
pub use rule_scope::RuleScope;
pub use setup::{Change, Fasteners, Setup, Setups, TireInUse};
pub use sheet::Sheet;
pub use spare::SpareWheel;
pub use summary::Summary;
pub use todo::Todo;
pub(crate) use trial::{Trial, Tried, fails_alone, fails_together, share_left};
pub use value::{Bound, Value};
