//! The judgement of an axle beside the front and the rear one.

use alloc::string::String;
use core::ops::ControlFlow;

use super::{AxleTold, FurtherAxle};
use crate::file::{Path, Shaped};
use crate::fitment::assess;
use crate::fitment::caution::Caution;
use crate::fitment::check::{Check, CheckId, Position, Verdict};
use crate::fitment::checks::{Definition, treads_are_uneven};
use crate::fitment::conditions::Conditions;
use crate::fitment::finding::finish;
use crate::fitment::judge::{has_axles, judge_vehicle, with_axles};
use crate::fitment::limits::Limits;
use crate::fitment::measure::Keys;
use crate::fitment::provenance::Basis;
use crate::fitment::setup::{Change, Setup, Setups};
use crate::vehicle::{Axle, Drive, Vehicle};

/// An axle as it stands beside another.
#[derive(Clone, Copy)]
struct Beside<'a> {
    name: &'a str,
    axle: Option<&'a Axle>,
    setups: [Option<&'a Setup>; 2],
    is_driven: Option<bool>,
}

impl<'a> Beside<'a> {
    fn of_further(told: &'a AxleTold) -> Self {
        let setups = [&told.original, &told.proposed].map(Option::as_ref);
        Self { name: &told.name, axle: Some(&told.axle), setups, is_driven: told.is_driven }
    }

    /// The front and the rear axle, as far as the vehicle has them.
    fn of_vehicle(vehicle: &'a Vehicle, change: &'a Change) -> impl Iterator<Item = Self> {
        let is_driven = |drives: fn(Drive) -> bool| vehicle.drive().map(drives);
        let front = Self {
            name: Position::Front.name(),
            axle: vehicle.front(),
            setups: change.on(Position::Front),
            is_driven: is_driven(|drive| matches!(drive, Drive::Front | Drive::All)),
        };
        let rear = Self {
            name: Position::Rear.name(),
            axle: vehicle.rear(),
            setups: change.on(Position::Rear),
            is_driven: is_driven(|drive| matches!(drive, Drive::Rear | Drive::All)),
        };
        [front, rear]
            .into_iter()
            .zip(has_axles(vehicle, change))
            .filter_map(|(axle, has)| has.then_some(axle))
    }
}

/// What drives two axles of a vehicle; nothing where that rests on what is not told.
const fn drive_of(ahead: Option<bool>, behind: Option<bool>) -> Option<Drive> {
    match (ahead, behind) {
        (Some(true), Some(true)) => Some(Drive::All),
        (Some(true), Some(false)) => Some(Drive::Front),
        (Some(false), Some(true)) => Some(Drive::Rear),
        // Whatever is driven ahead, they are not driven together.
        (Some(false) | None, Some(false)) => Some(Drive::None),
        (_, None) | (None, Some(true)) => None,
    }
}

impl FurtherAxle {
    /// Judges one of the further axles of a vehicle, in the place of the rear axle behind the one of the others that it
    /// goes worst with.
    pub(crate) fn judge(
        told: &[AxleTold],
        number: usize,
        (vehicle, change): (&Vehicle, &Change),
        conditions: &Conditions,
        limits: &Limits,
    ) -> Option<Self> {
        let own = told.get(number)?;
        let further = told.iter().enumerate().filter(|(other, _)| *other != number);
        let others =
            Beside::of_vehicle(vehicle, change).chain(further.map(|(_, told)| Beside::of_further(told)));
        let mut is_uneven = false;
        let mut worst: Option<(Check, &str, (Vehicle, Change))> = None;
        for other in others {
            let pair = own.behind(Some(other), vehicle);
            with_axles(&pair.0, &pair.1, conditions, limits, |axles| {
                is_uneven |= treads_are_uneven(axles);
                let is_asked = |definition: &Definition| definition.id == CheckId::AxleMatch;
                let _: ControlFlow<()> = judge_vehicle(axles, is_asked, |definition, place, found, _| {
                    let check = finish(definition.id, place, found);
                    if worst.as_ref().is_none_or(|(before, ..)| is_graver(&check, before)) {
                        worst = Some((check, other.name, pair.clone()));
                    }
                    ControlFlow::Continue(())
                });
            });
        }
        let (vehicle_told, name) = (vehicle.drive().is_some(), own.name.clone());
        let beside = worst.as_ref().map(|(_, name, _)| String::from(*name));
        let (vehicle, change) = worst.map_or_else(|| own.behind(None, vehicle), |(.., pair)| pair);
        let mut report = assess(&vehicle, &change, conditions, limits);
        report.keep_rear();
        report.name_keys(Keys::of_further(number, vehicle_told && own.is_driven.is_none()));
        if is_uneven {
            report.caution(Caution::UnevenTread);
        }
        let (is_driven, conditions, limits, basis) = (own.is_driven, *conditions, *limits, Basis::default());
        Some(Self { name, beside, is_driven, vehicle, change, conditions, limits, report, basis })
    }
}

impl AxleTold {
    /// The vehicle as it has this axle behind another.
    fn behind(&self, other: Option<Beside<'_>>, vehicle: &Vehicle) -> (Vehicle, Change) {
        let mut pair = vehicle.clone().with_rear(self.axle.clone());
        pair.forget(Path::new("front"));
        let ahead = other.map_or([None; 2], |other| other.setups.map(Option::<&Setup>::copied));
        if let Some(axle) = other.and_then(|other| other.axle) {
            pair = pair.with_front(axle.clone());
        }
        // Of a vehicle that the engine does not drive, no axle is.
        let is_driven = self.is_driven.or((vehicle.drive() == Some(Drive::None)).then_some(false));
        pair.forget(Path::new("drive"));
        if let Some(drive) = drive_of(other.map_or(Some(false), |other| other.is_driven), is_driven) {
            pair = pair.with_drive(drive);
        }
        let original = Setups { front: ahead[0], rear: self.original };
        let proposed = Setups { front: ahead[1], rear: self.proposed };
        (pair, Change { original, proposed })
    }
}

/// Whether a finding of two axles goes before another: what is not known goes before what is inside, figures before words.
fn is_graver(check: &Check, before: &Check) -> bool {
    let rank = |check: &Check| match check.verdict() {
        Verdict::Beyond => 4,
        Verdict::Marginal => 3,
        Verdict::NotAssessed => 2,
        Verdict::Within => 1,
        Verdict::NotApplicable => 0,
    };
    let order = |check: &Check| (rank(check), check.measured().is_some());
    order(check) > order(before)
        || order(check) == order(before) && check.relative_margin() < before.relative_margin()
}
