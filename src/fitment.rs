//! Judging a change of wheels and tires.
//!
//! [`assess`] takes a vehicle, what was on it and what is to go on, how it is used and which limits
//! apply, and answers with a [`Report`]: every check with its measured value, limit, margin, verdict,
//! reason and source. What it lacks an input for is [`Verdict::NotAssessed`] and says which.
//!
//! ```
//! use beadseat::fitment::{Change, CheckId, Conditions, Limits, Place, Setup, Setups, Verdict, assess};
//! use beadseat::{units::kmh, vehicle::{Axle, Hub, Vehicle}};
//! let hub = Hub::new().with_bolt_circle("5x112".parse()?);
//! let wagon = Vehicle::new().with_top_speed(kmh(205.0))?.with_front(Axle::new().with_hub(hub));
//! let setup = |tire: &str, wheel: &str| Ok::<_, beadseat::ParseError>(Setups {
//!     front: Some(Setup::new(tire.parse()?, wheel.parse()?)),
//!     rear: None,
//! });
//! let change = Change {
//!     original: setup("205/55R16 91V", "6.5Jx16 ET46 5x112")?,
//!     proposed: setup("225/45R17 94W XL", "7.5Jx17 ET42 5x114.3")?,
//! };
//! let report = assess(&wagon, &change, &Conditions::default(), &Limits::default());
//! let holes = report.get(CheckId::BoltCircle, Place::Front).ok_or("no such check")?;
//! assert_eq!(holes.verdict(), Verdict::Beyond);
//! assert_eq!(
//!     holes.to_string(),
//!     "front bolt_circle: beyond, 5x114.3 (equal to 5x112): a near miss: every hole is off by half the \
//!      difference; it seems to go on and does not seat",
//! );
//! assert!(!report.is_complete());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod case;
mod check;
mod checks;
mod conditions;
mod finding;
mod limits;
mod print;
mod reading;
mod report;
#[cfg(feature = "serde")]
mod serial;
mod setup;

pub use check::{Check, CheckId, Input, Place, Reason, Verdict};
pub use conditions::{Conditions, Day};
pub use limits::{Limit, LimitSet, Limits};
pub use reading::{Bound, Reading};
pub use report::{Caution, Effect, EffectId, Report};
pub use setup::{Change, Fasteners, Setup, Setups};

use crate::vehicle::{Axle, Kind, Vehicle};
use case::Case;

/// Judges a change. Allocates nothing and cannot fail: what cannot be judged is said in the report.
///
/// An axle is judged if the vehicle has it or a setup is proposed for it; a vehicle without either is
/// judged as if it had a front axle of which nothing is known.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, Limits, Setups, Verdict, assess};
/// use beadseat::vehicle::Vehicle;
/// let nothing = Setups { front: None, rear: None };
/// let change = Change { original: nothing, proposed: nothing };
/// let report = assess(&Vehicle::new(), &change, &Conditions::default(), &Limits::default());
/// assert!(report.checks().all(|c| c.verdict() == Verdict::NotAssessed));
/// assert_eq!(report.overall(), Verdict::Marginal);
/// ```
pub fn assess(vehicle: &Vehicle, change: &Change, conditions: &Conditions, limits: &Limits) -> Report {
    let mut report = Report::new();
    let case = |place, axle: Option<Axle>, original: Option<Setup>, proposed: Option<Setup>| Case {
        place,
        axle: axle.unwrap_or(Axle::new()),
        original,
        proposed,
        vehicle,
        conditions,
        limits,
    };
    let front = case(Place::Front, vehicle.front(), change.original.front, change.proposed.front);
    let rear = case(Place::Rear, vehicle.rear(), change.original.rear, change.proposed.rear);
    let has_rear = vehicle.rear().is_some() || rear.proposed.is_some();
    let has_front = vehicle.front().is_some() || front.proposed.is_some() || !has_rear;
    let both = has_front && has_rear;

    for (present, case) in [(has_front, &front), (has_rear, &rear)] {
        if present {
            for &(id, check) in checks::OF_AN_AXLE {
                let steered = case.place == Place::Front || case.axle.steering().is_some() || !has_front;
                if id != CheckId::ScrubRadius || steered {
                    report.push(&finding::finish(id, case.place, check(case)));
                }
            }
            checks::cautions(case, &mut report);
        }
    }
    for &(id, check) in checks::OF_THE_VEHICLE {
        let axles = if both {
            [Some(&front), Some(&rear)]
        } else if has_front {
            [Some(&front), None]
        } else {
            [Some(&rear), None]
        };
        report.push(&finding::finish(id, Place::Vehicle, check(&axles)));
    }
    checks::effects(&front, &rear, &mut report);

    for caution in
        [Caution::Placard, Caution::LocalLaw, Caution::Seating, Caution::Retorque, Caution::ColdPressure]
    {
        report.caution(caution);
    }
    if vehicle.kind() != Some(Kind::Trailer) && front.is_towing() {
        report.caution(Caution::Towing);
    }
    report
}
