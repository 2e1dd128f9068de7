//! The one change that would admit a setup which does not fit.

use core::fmt;

use super::walk::Search;
use crate::fitment::{CheckId, DependsOn, Position, Setup, Setups, Verdict};
use crate::tire::{LoadIndex, ServiceDescription};
use crate::units::{Length, Mass, Pressure, in_kg, in_kpa, in_mm, kg, kpa, mm};
use crate::vehicle::{Axle, Vehicle};

/// One change to a setup, or to the vehicle around it, on the axles where something is beyond.
///
/// `Display` says what to do.
///
/// ```
/// use beadseat::{search::Remedy, units::mm};
/// assert_eq!(Remedy::Spacer(mm(5.0)).to_string(), "a spacer of 5 mm");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Remedy {
    /// More pressure, in the tire as it is.
    Pressure(Pressure),
    /// A centring ring in the bore.
    Ring,
    /// A spacer, or one so much thicker.
    Spacer(Length),
    /// Fasteners with so much more thread.
    LongerFasteners(Length),
    /// A tire of a load index so many higher.
    LoadIndex(u16),
    /// A wheel of a higher rating.
    WheelRating(Mass),
    /// So much of the lip or of what else stands outboard, taken away.
    Lip(Length),
}

/// What is tried, the cheapest first: what costs nothing, what costs a part, what costs other tires or wheels, what cuts
/// into the body. Common practice, no source.
const TRIED: [Remedy; 32] = [
    Remedy::Pressure(kpa(10.0)),
    Remedy::Pressure(kpa(20.0)),
    Remedy::Pressure(kpa(30.0)),
    Remedy::Pressure(kpa(50.0)),
    Remedy::Ring,
    Remedy::Spacer(mm(3.0)),
    Remedy::Spacer(mm(5.0)),
    Remedy::Spacer(mm(8.0)),
    Remedy::Spacer(mm(10.0)),
    Remedy::Spacer(mm(12.0)),
    Remedy::Spacer(mm(15.0)),
    Remedy::Spacer(mm(20.0)),
    Remedy::LongerFasteners(mm(2.0)),
    Remedy::LongerFasteners(mm(5.0)),
    Remedy::LongerFasteners(mm(10.0)),
    Remedy::LoadIndex(1),
    Remedy::LoadIndex(2),
    Remedy::LoadIndex(3),
    Remedy::LoadIndex(4),
    Remedy::LoadIndex(6),
    Remedy::LoadIndex(8),
    Remedy::WheelRating(kg(25.0)),
    Remedy::WheelRating(kg(50.0)),
    Remedy::WheelRating(kg(75.0)),
    Remedy::WheelRating(kg(100.0)),
    Remedy::WheelRating(kg(150.0)),
    Remedy::WheelRating(kg(200.0)),
    Remedy::Lip(mm(2.0)),
    Remedy::Lip(mm(4.0)),
    Remedy::Lip(mm(6.0)),
    Remedy::Lip(mm(8.0)),
    Remedy::Lip(mm(10.0)),
];

impl Remedy {
    /// A setup with the change; nothing where it has no such thing, or where the change is the vehicle's.
    fn of_setup(self, setup: &Setup) -> Option<Setup> {
        match self {
            Self::Pressure(more) => {
                let raised = setup.with_pressure(setup.pressure()? + more).ok()?;
                match raised.pressure_full_load() {
                    Some(full) => raised.with_pressure_full_load(full + more).ok(),
                    None => Some(raised),
                }
            }
            Self::Ring => (setup.ring() != Some(true)).then(|| setup.with_ring(true)),
            Self::Spacer(more) => setup.with_spacer(setup.spacer().unwrap_or_default() + more).ok(),
            Self::LongerFasteners(more) => {
                let fasteners = setup.fasteners()?;
                let longer = fasteners.with_usable_length(fasteners.usable_length()? + more).ok()?;
                Some(setup.with_fasteners(longer))
            }
            Self::LoadIndex(more) => {
                let service = setup.tire().service()?;
                let higher = |index: LoadIndex| LoadIndex::new(index.number() + more);
                let dual = match service.dual() {
                    Some(dual) => Some(higher(dual)?),
                    None => None,
                };
                let service = ServiceDescription::new(higher(service.single())?, dual, service.speed())?;
                Some(setup.called(setup.tire().with_service(service)))
            }
            Self::WheelRating(more) => setup.with_wheel_rating(setup.wheel_rating()? + more).ok(),
            Self::Lip(_) => None,
        }
    }

    /// Whether the change has anything to do with a check.
    fn may_help(self, id: CheckId) -> bool {
        match (self, id.depends_on()) {
            (_, DependsOn::Size | DependsOn::Wear) => false,
            (Self::Pressure(_) | Self::LoadIndex(_) | Self::WheelRating(_), on) => on == DependsOn::Purchase,
            (Self::Ring | Self::LongerFasteners(_), on) => on == DependsOn::Pair,
            (Self::Spacer(_), on) => on != DependsOn::Purchase,
            (Self::Lip(_), on) => matches!(on, DependsOn::Inset | DependsOn::Movement),
        }
    }

    /// An axle with the change; nothing where the change is the setup's.
    fn of_axle(self, axle: &Axle) -> Option<Axle> {
        let Self::Lip(less) = self else { return None };
        let wider = axle.space()?.wider_outboard(less)?;
        Some(axle.clone().with_space(wider))
    }
}

impl fmt::Display for Remedy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Pressure(more) => write!(f, "{} kPa more", libm::round(in_kpa(*more))),
            Self::Ring => f.write_str("a centring ring"),
            Self::Spacer(more) => write!(f, "a spacer of {} mm", libm::round(in_mm(*more))),
            Self::LongerFasteners(more) => {
                write!(f, "fasteners with {} mm more of thread", libm::round(in_mm(*more)))
            }
            Self::LoadIndex(1) => f.write_str("one load index more"),
            Self::LoadIndex(more) => write!(f, "{more} load indices more"),
            Self::WheelRating(more) => {
                write!(f, "a wheel rated {} kg more", libm::round(in_kg(*more)))
            }
            Self::Lip(less) => write!(f, "{} mm of the lip away", libm::round(in_mm(*less))),
        }
    }
}

impl Search<'_> {
    /// The cheapest single change that admits setups which do not fit, on the axles where something is beyond, as an
    /// assessment finds; nothing where they fit, or where no one change does.
    pub fn what_would(&self, setups: &Setups) -> Option<Remedy> {
        self.admitting(setups, |_| true).map(|(_, remedy, _)| remedy)
    }

    /// The gravest check that setups are beyond, the cheapest of the changes allowed that admits them, and its place in
    /// the order of cost.
    pub(super) fn admitting(
        &self,
        setups: &Setups,
        may: impl Fn(&Remedy) -> bool,
    ) -> Option<(CheckId, Remedy, u8)> {
        let report = self.report(self.vehicle, *setups);
        let beyond = || report.checks().filter(|check| check.verdict() == Verdict::Beyond);
        let gravest = report.by_severity().find(|check| check.verdict() == Verdict::Beyond)?;
        let is_beyond = |axle: Position| beyond().any(|check| check.position().axle() == axle);
        let on = [Position::Front, Position::Rear].map(is_beyond);
        if on == [false; 2] {
            return None;
        }
        let admits = |remedy: &Remedy| {
            may(remedy)
                && beyond().all(|check| remedy.may_help(check.id()))
                && self.is_admitted(setups, on, *remedy)
        };
        // Where the most of the lip does not do, less of it does not.
        let mut lip_does = None;
        let most_lip =
            || TRIED.iter().rev().find(|remedy| matches!(remedy, Remedy::Lip(_))).is_some_and(admits);
        let mut tried = (0_u8..).zip(TRIED);
        let (cost, remedy) = tried.find(|(_, remedy)| match remedy {
            Remedy::Lip(_) => *lip_does.get_or_insert_with(most_lip) && admits(remedy),
            _ => admits(remedy),
        })?;
        Some((gravest.id(), remedy, cost))
    }

    /// Whether setups with a change on some axles, front and rear, are beyond nothing.
    fn is_admitted(&self, setups: &Setups, [front, rear]: [bool; 2], remedy: Remedy) -> bool {
        let mut changed = *setups;
        let mut cut: Option<Vehicle> = None;
        let mut anything = false;
        for (is_here, setup, is_front) in
            [(front, &mut changed.front, true), (rear, &mut changed.rear, false)]
        {
            let Some(own) = setup.filter(|_| is_here) else { continue };
            if let Some(new) = remedy.of_setup(&own) {
                (*setup, anything) = (Some(new), true);
            }
            let axle = if is_front { self.vehicle.front() } else { self.vehicle.rear() };
            if let Some(new) = axle.and_then(|axle| remedy.of_axle(axle)) {
                anything = true;
                let vehicle = cut.unwrap_or_else(|| self.vehicle.clone());
                cut = Some(if is_front { vehicle.with_front(new) } else { vehicle.with_rear(new) });
            }
        }
        anything && self.report(cut.as_ref().unwrap_or(self.vehicle), changed).overall() != Verdict::Beyond
    }
}
