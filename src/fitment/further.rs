//! Axles beside the front and the rear one, each judged by itself.

pub(super) mod line;
mod print;
mod shown;

use alloc::string::String;

use super::assess::assess;
use super::check::{CheckId, Reason, Verdict};
use super::conditions::Conditions;
use super::judge::has_axles;
use super::limits::Limits;
use super::moves::{Move, Moves};
use super::position::Position;
use super::provenance::Basis;
use super::report::Report;
use super::setup::{Change, Setup};
use crate::vehicle::{Axle, Drive, Vehicle};

/// An axle beside the front and the rear one, with what was on it and what is to go on.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct FurtherAxle {
    pub(crate) name: String,
    pub(crate) axle: Axle,
    pub(crate) original: Option<Setup>,
    pub(crate) proposed: Option<Setup>,
    pub(crate) is_driven: Option<bool>,
    /// The findings that rest on what is assumed, as bits of the rows of its report.
    pub(crate) assumed: u128,
}

/// The further axles of a vehicle, with all that they are judged by.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FurtherAxles<'a> {
    pub(crate) list: &'a [FurtherAxle],
    pub(crate) vehicle: &'a Vehicle,
    pub(crate) change: &'a Change,
    pub(crate) conditions: &'a Conditions,
    pub(crate) limits: &'a Limits,
    pub(crate) basis: &'a Basis,
}

/// What is found on an axle beside the front and the rear one of a vehicle.
///
/// It is judged as a rear axle is, in a [`Report`] of its own, whose findings stand at [`Position::Further`] and its ends.
/// Its tires are matched ([`CheckId::AxleMatch`]) with those of the rear axle where the engine drives both, and with those of
/// the front axle otherwise; a trailer without a front axle has its rear one in the place of that.
///
/// ```
/// use beadseat::{fitment::{CheckId, Position, Verdict}, scenario::Scenario};
/// let scenario: Scenario = serde_json::from_str(r#"{
///     "vehicle": { "kind": "truck" }, "original": {}, "proposed": {},
///     "more_axles": [{ "name": "lift axle", "axle": { "max_load_kg": 9000 },
///                      "proposed": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30" } }]
/// }"#)?;
/// let axle = scenario.more_axles().next().ok_or("none")?;
/// let load = axle.report().get(CheckId::TireLoad, Position::Further).ok_or("not judged")?;
/// assert_eq!((axle.name(), load.verdict()), ("lift axle", Verdict::Beyond));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct AxleReport<'a> {
    name: &'a str,
    vehicle: Vehicle,
    change: Change,
    conditions: &'a Conditions,
    limits: &'a Limits,
    basis: &'a Basis,
    number: usize,
    report: Report,
}

impl AxleReport<'_> {
    /// What the axle is called, as it stands in the file; show it through [`Excerpt`](crate::Excerpt).
    pub const fn name(&self) -> &str {
        self.name
    }

    /// What was found on it: the findings of an axle, and how it matches another.
    pub const fn report(&self) -> &Report {
        &self.report
    }

    /// What moves on it.
    pub fn moves(&self) -> impl Iterator<Item = Move> + use<> {
        Moves::of_further(&self.vehicle, &self.change)
    }

    /// What was on it, and what is to go on.
    pub(super) const fn setups(&self) -> [Option<&Setup>; 2] {
        self.change.on(Position::Further)
    }
}

impl<'a> FurtherAxles<'a> {
    /// Each axle, judged in the place of the rear one.
    pub(crate) fn judged(self) -> impl Iterator<Item = AxleReport<'a>> {
        self.list.iter().enumerate().map(move |(number, further)| {
            let (vehicle, change) = self.with(further);
            let mut report = assess(&vehicle, &change, self.conditions, self.limits);
            report.keep_rear();
            for (row, check) in report.findings_mut().enumerate() {
                let is_better = matches!(check.verdict, Verdict::Within | Verdict::NotApplicable);
                if further.assumed & 1 << row != 0 && is_better {
                    (check.verdict, check.reason) = (Verdict::Marginal, Reason::Assumed);
                }
            }
            let Self { conditions, limits, basis, .. } = self;
            AxleReport { name: &further.name, vehicle, change, conditions, limits, basis, number, report }
        })
    }

    /// The vehicle with the axle in the place of the rear one, behind that which its tires are to match.
    fn with(self, further: &FurtherAxle) -> (Vehicle, Change) {
        let (mut vehicle, mut change) = (self.vehicle.clone(), *self.change);
        let [has_front, _] = has_axles(&vehicle, &change);
        let is_driven = further.is_driven == Some(true);
        let is_rear_driven = vehicle.drive().is_some_and(|drive| matches!(drive, Drive::Rear | Drive::All));
        if !has_front || is_driven && is_rear_driven {
            vehicle = vehicle.reversed();
            change = Change { original: change.original.reversed(), proposed: change.proposed.reversed() };
        }
        if let Some(drive) = vehicle.drive() {
            vehicle = vehicle.with_drive(match (drive, is_driven) {
                (Drive::Front | Drive::All, true) => Drive::All,
                (Drive::Front | Drive::All, false) => Drive::Front,
                (Drive::Rear | Drive::None, true) => Drive::Rear,
                (Drive::Rear | Drive::None, false) => Drive::None,
            });
        }
        (change.original.rear, change.proposed.rear) = (further.original, further.proposed);
        (vehicle.with_rear(further.axle.clone()), change)
    }

    /// The worst verdict on any of them.
    pub(super) fn overall(self) -> Verdict {
        self.judged().map(|axle| axle.report.overall()).fold(Verdict::Within, Verdict::graver)
    }

    /// Whether every vital check of each of them was assessed, or does not apply.
    pub(super) fn is_complete(self) -> bool {
        self.judged().all(|axle| axle.report.is_complete())
    }
}

impl Report {
    /// Leaves out what was not found on the rear axle, and calls that a further one; how it matches the other stays.
    fn keep_rear(&mut self) {
        self.replace(|place, id| {
            let is_kept = place.axle() == Position::Rear || id == Some(CheckId::AxleMatch);
            is_kept.then(|| place.further())
        });
    }
}
