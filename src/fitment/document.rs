//! A report with what it is about: what a person is handed.

use core::fmt;

use super::caution::Caution;
#[cfg(feature = "serde")]
use super::check::Reason;
use super::check::{Check, CheckId, Verdict};
#[cfg(feature = "serde")]
use super::further::FurtherAxle;
use super::moves::Moves;
use super::position::Position;
#[cfg(feature = "serde")]
use super::provenance::{Basis, Provenance};
use super::report::Report;
use super::spare::SpareWheel;
use super::todo::Todo;
use super::{Change, Setup, Setups};
use crate::unit_system::UnitSystem;
use crate::vehicle::Vehicle;

/// A report with the vehicle and the change that it judges.
///
/// `Display` lays it out for a terminal: the verdict first, then the setups, what moves, and the findings. With
/// `serde` it is one object.
///
/// ```
/// use beadseat::fitment::{Change, Document, Setup};
/// use beadseat::vehicle::{Kind, Vehicle};
/// let car = Vehicle::new(Kind::Passenger);
/// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16 ET46")?, Setup::parse("225/45R17", "7.5Jx17 ET42")?];
/// let change = Change::all_round(old, new);
/// let report = change.assess(&car);
/// let text = Document::new(&report, &car, &change).with_name("an invented car").to_string();
/// assert!(text.contains("outer face of rim       49.25 mm    65.95 mm  16.7 mm further out"));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Document<'a> {
    report: &'a Report,
    vehicle: &'a Vehicle,
    change: &'a Change,
    spare: Option<SpareWheel<'a>>,
    name: Option<&'a str>,
    units: UnitSystem,
    #[cfg(feature = "serde")]
    basis: Option<&'a Basis>,
    #[cfg(feature = "serde")]
    further: &'a [FurtherAxle],
}

impl<'a> Document<'a> {
    /// Of a report on a change of a vehicle.
    pub const fn new(report: &'a Report, vehicle: &'a Vehicle, change: &'a Change) -> Self {
        Self {
            report,
            vehicle,
            change,
            spare: None,
            name: None,
            units: UnitSystem::Metric,
            #[cfg(feature = "serde")]
            basis: None,
            #[cfg(feature = "serde")]
            further: &[],
        }
    }

    /// With what the vehicle is called.
    pub const fn with_name(self, name: &'a str) -> Self {
        Self { name: Some(name), ..self }
    }

    /// With where its values come from.
    #[cfg(feature = "serde")]
    pub(crate) const fn with_basis(self, basis: &'a Basis) -> Self {
        Self { basis: Some(basis), ..self }
    }

    /// With the spare wheel that the vehicle carries: what is said of it stands beside the report.
    pub const fn with_spare(self, spare: SpareWheel<'a>) -> Self {
        Self { spare: Some(spare), ..self }
    }

    /// With the further axles of the vehicle: what is said of each stands beside the report.
    #[cfg(feature = "serde")]
    pub(crate) const fn with_further(self, further: &'a [FurtherAxle]) -> Self {
        Self { further, ..self }
    }

    /// The axles beside the front and the rear one, each judged in a report of its own.
    #[cfg(feature = "serde")]
    pub const fn further(&self) -> &'a [FurtherAxle] {
        self.further
    }

    /// Printed in other units; for programs it stays metric.
    pub const fn in_units(self, units: UnitSystem) -> Self {
        Self { units, ..self }
    }

    pub(super) const fn units(&self) -> UnitSystem {
        self.units
    }

    /// What the vehicle is called.
    pub const fn name(&self) -> Option<&'a str> {
        self.name
    }

    /// The report that it is made of.
    pub const fn report(&self) -> &'a Report {
        self.report
    }

    pub(super) const fn vehicle(&self) -> &'a Vehicle {
        self.vehicle
    }

    pub(super) const fn change(&self) -> &'a Change {
        self.change
    }

    /// The spare wheel that is carried along.
    pub const fn spare(&self) -> Option<SpareWheel<'a>> {
        self.spare
    }

    /// The verdict on the whole: the worst of the report and of what is said of further axles and of the spare wheel.
    pub fn overall(&self) -> Verdict {
        self.overall_on_axles().graver(self.overall_of_spare())
    }

    /// Whether every vital check was assessed, or does not apply: on every axle, and of the spare wheel, which is not
    /// judged on axles beside front and rear.
    pub fn is_complete(&self) -> bool {
        self.is_complete_on_axles() && self.is_complete_of_spare()
    }

    /// Whether the vehicle has axles that its spare wheel is not judged on: those beside front and rear.
    pub(super) fn is_spare_open(&self) -> bool {
        self.spare.is_some() && self.reports().nth(1).is_some()
    }

    /// The verdict on the spare wheel, if there is one: at best marginal where there are axles that it is not judged on.
    pub(super) fn overall_of_spare(&self) -> Verdict {
        let open = if self.is_spare_open() { Verdict::Marginal } else { Verdict::Within };
        self.spare.map_or(open, |spare| spare.overall().graver(open))
    }

    /// Whether all that is vital of the spare wheel was judged, on every axle.
    pub(super) fn is_complete_of_spare(&self) -> bool {
        self.spare.is_none_or(|spare| spare.is_complete()) && !self.is_spare_open()
    }

    /// The verdict on all axles, the spare wheel aside.
    pub(super) fn overall_on_axles(&self) -> Verdict {
        self.reports().map(|(_, report)| report.overall()).fold(Verdict::Within, Verdict::graver)
    }

    /// Whether a caution applies on any axle.
    pub(super) fn has_caution(&self, caution: Caution) -> bool {
        self.reports().any(|(_, report)| report.cautions().any(|other| other == caution))
    }

    /// Whether every vital check was assessed, or does not apply, on every axle.
    pub(super) fn is_complete_on_axles(&self) -> bool {
        self.reports().all(|(_, report)| report.is_complete())
    }

    /// Its report, and those on further axles with their names.
    #[cfg(feature = "serde")]
    pub(super) fn reports(&self) -> impl Iterator<Item = (Option<&'a str>, &'a Report)> + use<'a> {
        let further = self.further.iter().map(|axle| (Some(axle.name()), axle.report()));
        core::iter::once((None, self.report)).chain(further)
    }

    #[cfg(not(feature = "serde"))]
    pub(super) fn reports(&self) -> impl Iterator<Item = (Option<&'a str>, &'a Report)> + use<'a> {
        core::iter::once((None, self.report))
    }

    /// What the change moves.
    pub fn moves(&self) -> Moves {
        if self.report.keys().is_of_further() {
            let behind = |setups: Setups| Setups { front: None, ..setups };
            let (original, proposed) = (behind(self.change.original), behind(self.change.proposed));
            return Moves::of(self.vehicle, &Change { original, proposed });
        }
        Moves::of(self.vehicle, self.change)
    }

    /// What to do about one of the report's findings.
    pub fn todo(&self, check: &Check) -> Todo {
        let axle = check.position().axle();
        let [_, proposed] = self.change.on(axle);
        let pressures = self.report.pressures().find(|pressures| pressures.position() == axle);
        let is_swept = check.id() == CheckId::SweptClearance;
        let nearest = self.report.approaches().find(|near| is_swept && near.position() == check.position());
        Todo::new(check, self.vehicle, proposed, pressures.as_ref(), nearest.as_ref())
            .in_units(self.units)
            .by_keys(self.report.keys())
    }

    /// Where the values come from that it is judged by, as far as that is told.
    #[cfg(feature = "serde")]
    pub fn provenance(&self) -> &'a [Provenance] {
        self.basis.map_or(&[], Basis::list)
    }

    /// The values that are assumed and that one of the report's findings would be another without.
    #[cfg(feature = "serde")]
    pub fn assumed(&self, check: &Check) -> impl Iterator<Item = &'a Provenance> {
        self.basis.into_iter().flat_map(|basis| basis.under(self.report, check))
    }

    /// Whether what is known besides what is proposed comes from elsewhere than that of another.
    #[cfg(feature = "serde")]
    pub(super) fn rests_elsewhere(&self, other: &Self) -> bool {
        let besides = |document: &Self| {
            // Of a further axle, what is proposed stands behind its number.
            let part = |of: &'a str| of.split('.').find(|part| !part.starts_with("more_axles"));
            document.provenance().iter().filter(move |value| part(value.of()) != Some("proposed"))
        };
        !besides(self).eq(besides(other))
    }

    #[cfg(not(feature = "serde"))]
    pub(super) const fn rests_elsewhere(&self, _: &Self) -> bool {
        false
    }

    /// Whether another has the same axles beside front and rear, in whatever order, but for what is proposed.
    #[cfg(feature = "serde")]
    pub(super) fn has_same_axles(&self, other: &Self) -> bool {
        let has =
            |document: &Self, axle: &FurtherAxle| document.further.iter().any(|own| own.is_same_axle(axle));
        self.further.len() == other.further.len() && self.further.iter().all(|axle| has(other, axle))
    }

    #[cfg(not(feature = "serde"))]
    pub(super) const fn has_same_axles(&self, _: &Self) -> bool {
        true
    }

    /// Whether a value of the setup that is proposed for an axle is assumed; what is said in front holds for the same
    /// setup behind, unless something is said of that.
    #[cfg(feature = "serde")]
    pub(super) fn is_assumed(&self, place: Position, key: &str) -> bool {
        let told = |path: [&str; 3]| {
            let is_of = move |value: &&Provenance| {
                let mut path = path.into_iter();
                value.of().split('.').all(|part| path.next() == Some(part))
            };
            self.provenance().iter().find(is_of)
        };
        let value = match self.report.keys().further_at(place) {
            Some(number) => {
                let axle = alloc::format!("more_axles[{number}]");
                told([&axle, "proposed", key]).or_else(|| told(["more_axles", "", ""]))
            }
            None => {
                let proposed = &self.change.proposed;
                let in_front = (proposed.front == proposed.rear).then_some(Position::Front);
                let on = |place: Position| told(["proposed", place.name(), key]);
                on(place).or_else(|| on(in_front?))
            }
        };
        value.is_some_and(Provenance::is_assumed)
    }

    #[cfg(not(feature = "serde"))]
    pub(super) const fn is_assumed(&self, _: Position, _: &str) -> bool {
        false
    }

    /// What to do about one of the report's findings, and what to confirm of it.
    pub(super) const fn advice<'b>(&'b self, check: &'b Check) -> Advice<'b> {
        Advice(self, check)
    }

    /// Whether two findings are the same but for their place, with the same to do about them.
    pub(super) fn is_alike(&self, a: &Check, b: &Check) -> bool {
        a.id() == b.id() && self.todo(a).is_that_of(&self.todo(b)) && self.rest_on_the_same(a, b)
    }

    #[cfg(feature = "serde")]
    fn rest_on_the_same(&self, a: &Check, b: &Check) -> bool {
        self.assumed(a).eq(self.assumed(b))
    }

    #[cfg(not(feature = "serde"))]
    fn rest_on_the_same(&self, _: &Check, _: &Check) -> bool {
        true
    }

    /// What was on an axle and what is to go on, if either is told.
    #[cfg(feature = "serde")]
    pub(super) fn setups_at(&self, axle: Position) -> Option<[Option<&'a Setup>; 2]> {
        self.setups().find(|(place, _)| *place == axle).map(|(_, setups)| setups)
    }

    /// What was on each axle and what is to go on, of the axles that have either.
    pub(super) fn setups(&self) -> impl Iterator<Item = (Position, [Option<&'a Setup>; 2])> + use<'a> {
        let change = self.change;
        [Position::Front, Position::Rear]
            .into_iter()
            .map(|place| (place, change.on(place)))
            .filter(|(_, setups)| setups.iter().any(Option::is_some))
    }
}

/// What to do about a finding, and which of the values that it rests on are to be confirmed.
pub(super) struct Advice<'a>(&'a Document<'a>, &'a Check);

impl fmt::Display for Advice<'_> {
    #[cfg(feature = "serde")]
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(document, check) = self;
        let todo = document.todo(check);
        let mut title = if check.reason() == Reason::Assumed {
            "confirm what is assumed:"
        } else {
            write!(f, "{todo}")?;
            "; confirm what is assumed:"
        };
        for value in document.assumed(check) {
            write!(f, "{title} {}", value.of())?;
            title = ",";
        }
        Ok(())
    }

    #[cfg(not(feature = "serde"))]
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.todo(self.1).fmt(f)
    }
}

/// A tire on a wheel, by what is written on them.
pub(super) struct Written<'a>(pub(super) &'a Setup);

impl fmt::Display for Written<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} on {}", self.0.tire(), self.0.wheel())
    }
}
