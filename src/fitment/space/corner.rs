//! One end of an axle with its setups and what stands around it.

use crate::fitment::Change;
use crate::fitment::case::Case;
use crate::fitment::check::{Missing, Position};
use crate::fitment::checks::swept::{self, Size};
use crate::fitment::facts::{AxleFacts, SetupFacts};
use crate::fitment::judge;
use crate::fitment::limits::Limits;
use crate::sweep::{MAX_OBSTACLES, Obstacles};
use crate::tire::condition::VehicleSide;
use crate::vehicle::{BodyKind, Vehicle};

use super::available_space::MissingFacts;

/// What is found on an axle with what was on it and what is to go on, or where what is lacking belongs.
pub(super) fn on_axle<T>(
    vehicle: &Vehicle,
    change: &Change,
    limits: &Limits,
    place: Position,
    find: impl FnOnce(&Case<'_>) -> Result<T, Missing>,
) -> Result<T, MissingFacts> {
    let axle = AxleFacts::in_any_use(place, vehicle, limits);
    let found = judge::on_axle(&axle, change.on(place), |case| find(&case));
    found.map_err(|missing| MissingFacts::new(missing, place))
}

/// What stands around one end, and what each of it is, in the same order.
#[derive(Clone, Copy, Debug)]
pub(super) struct Around {
    pub(super) obstacles: Obstacles,
    bodies: [Option<BodyKind>; MAX_OBSTACLES],
}

impl Around {
    pub(super) const fn nothing() -> Self {
        Self { obstacles: Obstacles::new(), bodies: [None; MAX_OBSTACLES] }
    }

    /// At nominal size.
    pub(super) fn of(case: &Case<'_>, original: &SetupFacts<'_>, side: VehicleSide) -> Result<Self, Missing> {
        let mut around = Self::nothing();
        swept::place(&mut around.obstacles, case, original, side, Size::Nominal)?;
        for (place, body) in around.bodies.iter_mut().zip(swept::bodies_on(case, side)) {
            *place = Some(body.kind());
        }
        Ok(around)
    }

    pub(super) fn bodies(&self) -> impl Iterator<Item = BodyKind> {
        self.bodies.iter().flatten().copied()
    }
}
