//! An axle beside the front and the rear one, judged in a report of its own.

mod judged;
pub(super) mod line;
mod print;

use alloc::string::String;

use super::derivation::Derivations;
use super::provenance::Basis;
use super::report::Report;
use super::setup::{Change, Setup};
use super::{Conditions, Limits};
use crate::vehicle::{Axle, Vehicle};

/// What is told of an axle beside the front and the rear one.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct AxleTold {
    pub(crate) name: String,
    pub(crate) axle: Axle,
    pub(crate) original: Option<Setup>,
    pub(crate) proposed: Option<Setup>,
    /// Nothing where it is not told: then it is no pass for a check that asks.
    pub(crate) is_driven: Option<bool>,
}

/// An axle beside the front and the rear one, judged in a report of its own: a tag axle, a second steered one, one of a
/// trailer that differs from the others.
///
/// It is judged as the rear axle is, by the kind, the speeds, the use and the limits of the vehicle; its findings stand at
/// [`Position::Rear`](super::Position::Rear), [`RearLeft`](super::Position::RearLeft) and
/// [`RearRight`](super::Position::RearRight). How it goes with the others is
/// [`CheckId::AxleMatch`](super::CheckId::AxleMatch), at [`Position::Vehicle`](super::Position::Vehicle): the graver of what
/// is found beside each other axle of the vehicle, front, rear and further ones. Two axles that the engine drives are held
/// against each other as with four-wheel drive; where it is not told whether an axle is driven, that is not assessed.
/// Axles of a group that are equal and share one load are told by [`Axle::axles`] instead.
///
/// ```
/// use beadseat::{fitment::Verdict, scenario::Scenario};
/// let scenario: Scenario = serde_json::from_str(r#"{
///     "vehicle": { "kind": "truck" }, "original": {}, "proposed": {},
///     "more_axles": [{ "name": "lift axle", "axle": { "max_load_kg": 9000 },
///                      "proposed": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30" } }]
/// }"#)?;
/// let axle = scenario.more_axles().next().ok_or("none")?;
/// assert_eq!((axle.name(), axle.report().overall()), ("lift axle", Verdict::Beyond));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct FurtherAxle {
    name: String,
    /// The axle in whose company it is judged.
    beside: Option<String>,
    is_driven: Option<bool>,
    vehicle: Vehicle,
    change: Change,
    conditions: Conditions,
    limits: Limits,
    report: Report,
    basis: Basis,
}

impl FurtherAxle {
    /// What it is called, as it stands in the file; show it through [`Excerpt`](crate::Excerpt).
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The other axle of the vehicle with which it goes worst, as that is called: the one that
    /// [`CheckId::AxleMatch`](super::CheckId::AxleMatch) is of; nothing where it is the only one.
    ///
    /// ```
    /// use beadseat::scenario::Scenario;
    /// let scenario: Scenario = serde_json::from_str(r#"{ "vehicle": { "kind": "truck" }, "original": {}, "proposed": {},
    ///     "more_axles": [{ "name": "tag axle", "axle": { "max_load_kg": 7500 } }] }"#)?;
    /// assert_eq!(scenario.more_axles().next().and_then(|axle| axle.beside()), Some("front"));
    /// # Ok::<(), serde_json::Error>(())
    /// ```
    pub fn beside(&self) -> Option<&str> {
        self.beside.as_deref()
    }

    /// The findings on it.
    pub const fn report(&self) -> &Report {
        &self.report
    }

    /// How the numbers of its report came about.
    ///
    /// ```
    /// use beadseat::{fitment::{CheckId, derivation::Subject}, scenario::Scenario};
    /// let scenario: Scenario = serde_json::from_str(r#"{
    ///     "vehicle": { "kind": "truck", "top_speed_kmh": 90 }, "original": {}, "proposed": {},
    ///     "more_axles": [{ "name": "lift axle", "axle": { "max_load_kg": 9000 },
    ///                      "proposed": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30" } }]
    /// }"#)?;
    /// let axle = scenario.more_axles().next().ok_or("none")?;
    /// let text = axle.derivations().explain(Subject::Check(CheckId::WheelLoad)).to_string();
    /// assert!(text.contains("more_axles[0].proposed.wheel_rating_kg"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn derivations(&self) -> Derivations<'_> {
        Derivations::new(&self.vehicle, &self.change, &self.conditions, &self.limits).of_further(&self.report)
    }

    pub(super) const fn vehicle(&self) -> &Vehicle {
        &self.vehicle
    }

    pub(super) const fn change(&self) -> &Change {
        &self.change
    }

    pub(super) const fn basis(&self) -> &Basis {
        &self.basis
    }

    /// Whether another is the same axle of the same vehicle, whatever goes on it.
    pub(super) fn is_same_axle(&self, other: &Self) -> bool {
        let is_built_alike = self.vehicle.rear() == other.vehicle.rear() && self.is_driven == other.is_driven;
        self.name == other.name && is_built_alike && self.change.original.rear == other.change.original.rear
    }

    /// With the report as it is where something is assumed, and what rests on it.
    pub(crate) fn resting_on_assumptions(mut self, basis: Basis, without: &Report) -> Self {
        self.report.hold_back(without);
        self.basis = basis;
        self
    }
}
