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

mod aside;
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
pub use caution::Caution;
pub use check::{Check, CheckId, Reason, Verdict};
pub(crate) use checks::DependsOn;
pub use conditions::{Conditions, Day, TractionClass};
pub use document::Document;
pub use effect::{Effect, EffectId};
pub use field_of_law::FieldOfLaw;
#[cfg(feature = "serde")]
pub(crate) use further::AxleTold;
#[cfg(feature = "serde")]
pub use further::FurtherAxle;
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

use core::ops::ControlFlow;

use crate::vehicle::{Kind, Vehicle};
use case::Case;
use judge::{judge, with_axles};
use space::Approach;

/// Judges a change. Allocates nothing and cannot fail: what cannot be judged is said in the report.
///
/// It needs at most 32 KiB of stack (31.8 measured on x86-64) in a release build, whatever is swept, with the
/// [`Report`] it returns.
///
/// Every vehicle has two axles, whether they are described or not, but for a trailer, which has those that
/// are; where nothing is known of the kind, an axle counts that is described or has a setup.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, Limits, Setups, Verdict, assess};
/// use beadseat::vehicle::Vehicle;
/// let nothing = Setups { front: None, rear: None };
/// let change = Change { original: nothing, proposed: nothing };
/// let report = assess(&Vehicle::unknown(), &change, &Conditions::default(), &Limits::default());
/// assert!(report.checks().all(|c| c.verdict() == Verdict::NotAssessed));
/// assert_eq!(report.overall(), Verdict::Marginal);
/// ```
pub fn assess(vehicle: &Vehicle, change: &Change, conditions: &Conditions, limits: &Limits) -> Report {
    // Made when compiled: made here, its rows would stand on the stack twice.
    const NOTHING_YET: Report = Report::new();
    let mut report = NOTHING_YET;
    report.name_own_source(limits.own_source());
    report.name_rules(RuleScope::new(limits.set(), conditions.date(), vehicle.kind()));
    with_axles(vehicle, change, conditions, limits, |axles| {
        let _: ControlFlow<()> = judge(
            axles,
            |_| true,
            |definition, place, found, nearest| {
                report.push(finding::finish(definition.id, place, found));
                if let Some(nearest) = nearest {
                    report.push_approach(nearest.at(place));
                }
                ControlFlow::Continue(())
            },
        );
        let cases = || axles.iter().flatten();
        for case in cases() {
            let is_here = |approach: &Approach| approach.position().axle() == case.place;
            let swept = report.approaches().filter(is_here).count();
            caution::cautions(case, swept, |caution| report.caution(caution));
            let has_tables = vehicle.kind().is_some_and(|kind| kind != Kind::Motorcycle);
            if let Some(pressures) = has_tables.then(|| checks::pressures(case)).flatten() {
                report.push_pressures(pressures);
            }
        }
        checks::effects(axles, |effect| report.push_effect(effect));
        if checks::treads_are_uneven(axles) {
            report.caution(Caution::UnevenTread);
        }
        if !cases().all(Case::has_spindle_hub) {
            report.caution(Caution::Retorque);
        }
        if vehicle.kind() != Some(Kind::Trailer) && cases().any(|case| case.is_towing()) {
            report.caution(Caution::Towing);
        }
    });
    for caution in [Caution::Placard, Caution::LocalLaw, Caution::Seating, Caution::ColdPressure] {
        report.caution(caution);
    }
    report
}

impl Change {
    /// Judges the change on a vehicle, in ordinary use and by the default limits; [`assess`] takes
    /// others.
    ///
    /// ```
    /// use beadseat::fitment::{Change, Setup, Verdict};
    /// use beadseat::vehicle::{Kind, Vehicle};
    /// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx16")?];
    /// let report = Change::front(old, new).assess(&Vehicle::new(Kind::Passenger));
    /// assert_eq!(report.overall(), Verdict::Beyond); // a tire of 17 in on a wheel of 16
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn assess(&self, vehicle: &Vehicle) -> Report {
        assess(vehicle, self, &Conditions::default(), &Limits::default())
    }
}
