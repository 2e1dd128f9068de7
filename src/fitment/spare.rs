//! A spare wheel, judged on every axle that it may be put on.

mod judged;
pub(super) mod line;
mod print;

use super::{Change, Conditions, Limits, Position, Setup};
use crate::vehicle::Vehicle;

/// A spare wheel that a vehicle carries, with the change that it is carried for.
///
/// It may have to stand in for any wheel, so it is judged on each axle by itself, in a [`Report`](super::Report) of its own: whether it
/// carries its share there, is fast enough, fits hub, fasteners and brake, and keeps the gaps that were measured. It is
/// held against the tire of the proposed setup, beside which it runs (of the original one, where nothing else goes on), and against the original setup, with which the gaps
/// were measured. Without fasteners of its own, the hub's hold it. On an axle with pairs, all wheels of the pair are taken
/// for spares.
///
/// What does not matter for the way to a repair is not asked: speedometer, track, scrub radius, what the original carried.
/// A rotation arrow that runs the wrong way round on one side is marginal for so long (common practice, no source). A temporary spare (`T125/70D16`)
/// is held to 80 km/h ([`Citation::SPARE_SPEED`](crate::Citation::SPARE_SPEED)) and to the 420 kPa of its
/// [law](crate::tire::inflation::InflationModel::Temporary).
///
/// ```
/// use beadseat::fitment::{Change, CheckId, Conditions, Limits, Position, Setup, SpareWheel, Verdict};
/// use beadseat::vehicle::{Axle, Hub, Kind, Vehicle};
/// let hub = Hub::new().with_bolt_circle("5x112".parse()?);
/// let car = Vehicle::new(Kind::Passenger).with_front(Axle::new().with_hub(hub));
/// let setup = Setup::parse("205/55R16 91V", "6.5Jx16 ET46 5x112")?;
/// let spare = Setup::parse("T125/70D16 96M", "4Jx16 ET20 5x114.3")?;
/// let change = Change::all_round(setup, setup);
/// let (conditions, limits) = (Conditions::default(), Limits::default());
/// let spare = SpareWheel::new(&spare, &car, &change, &conditions, &limits);
/// let at_front = spare.on(Position::Front).ok_or("no front axle")?;
/// let holes = at_front.get(CheckId::BoltCircle, Position::SpareAtFront).ok_or("no such check")?;
/// assert_eq!(holes.verdict(), Verdict::Beyond);
/// assert_eq!(spare.overall(), Verdict::Beyond);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct SpareWheel<'a> {
    setup: &'a Setup,
    vehicle: &'a Vehicle,
    change: &'a Change,
    conditions: &'a Conditions,
    limits: &'a Limits,
    /// The findings that rest on what is assumed, in front and behind, as bits of the rows of a report.
    assumed: [u128; 2],
}

impl<'a> SpareWheel<'a> {
    /// Of a setup that is carried along. What is known of its tire stands on its left or its right, or on both alike.
    pub const fn new(
        setup: &'a Setup,
        vehicle: &'a Vehicle,
        change: &'a Change,
        conditions: &'a Conditions,
        limits: &'a Limits,
    ) -> Self {
        Self { setup, vehicle, change, conditions, limits, assumed: [0; 2] }
    }

    /// With the findings that rest on what is assumed, in front and behind: they are never better than marginal.
    #[cfg(feature = "serde")]
    pub(crate) const fn resting_on_assumptions(self, assumed: [u128; 2]) -> Self {
        Self { assumed, ..self }
    }

    /// What is carried along.
    pub const fn setup(&self) -> &'a Setup {
        self.setup
    }

    /// The change as it is with the spare on an axle.
    pub(super) fn change_on(&self, axle: Position) -> Change {
        let mut change = *self.change;
        let mounted = Some(self.setup.on_either_end());
        if axle.is_at_front() {
            change.proposed.front = mounted;
        } else {
            change.proposed.rear = mounted;
        }
        change
    }

    /// The vehicle that carries it.
    pub(super) const fn vehicle(&self) -> &'a Vehicle {
        self.vehicle
    }
}
