//! Setups that are tried on an axle: what they fail wherever their wheels stand, and the insets at which they pass.

use super::case::Case;
use super::check::{CheckId, Position, Reason, Verdict};
use super::checks::brake::max_barrel;
use super::checks::clearance::{Assembly, Side};
use super::checks::geometry::diameter_window;
use super::checks::swept::{self, Slack};
use super::checks::{DEFINITIONS, Definition, DependsOn, Run, pressures};
use super::conditions::Conditions;
use super::facts::{AxleFacts, SetupFacts, half_rim, half_tire, is_passenger};
use super::finding::{Finding, Found, no_more};
use super::judge::{axles_of, of_axle};
use super::limits::Limits;
use super::pressures::Pressures;
use super::space::InsetRange;
use super::value::{Bound, Value};
use super::{Setup, Setups};
use crate::tire::{Formation, Tire};
use crate::units::{Length, Mass, Pressure, in_mm, mm};
use crate::vehicle::{Axle, EndGap, Vehicle};
use crate::wheel::{Inset, WheelSize};

/// The definitions of the checks that depend on something.
fn of(what: DependsOn) -> impl Iterator<Item = &'static Definition> {
    DEFINITIONS.iter().filter(move |definition| definition.depends_on == what)
}

/// The most that a length which is left is measured by, in millimetres: as much as the strictest rule of clearance asks
/// for, that of British Columbia. The ride height that is left of what a limit allows is not worth less for the limit
/// being high.
const AMPLE: f64 = 25.0;

/// A margin as a share of the limit, or of one unit where the limit is less, or of 25 mm where that of a length is more.
pub(crate) fn share_left(measured: Value, limit: Bound) -> Option<f64> {
    let bound = limit.nearer_to(measured)?.abs().max(1.0);
    let of_length = matches!(measured, Value::Length(_));
    Some(limit.margin(measured)? / if of_length { bound.min(AMPLE) } else { bound })
}

/// An axle with what its maker built on it.
pub(crate) struct Trial<'a> {
    pub(super) on: AxleFacts<'a>,
    pub(super) original: Option<SetupFacts<'a>>,
    /// Whether this axle is the only one, so that it steers or not as a first axle does.
    pub(super) is_only: bool,
    /// Whether the original clears everything throughout, so that nothing is excused because of it.
    pub(super) original_clears: bool,
}

impl<'a> Trial<'a> {
    /// The axles that a vehicle has, the front one and the rear one.
    pub(crate) fn of_vehicle(
        vehicle: &'a Vehicle,
        original: &'a Setups,
        conditions: &'a Conditions,
        limits: &'a Limits,
    ) -> [Option<Self>; 2] {
        let originals = [original.front.as_ref(), original.rear.as_ref()];
        let [front, rear] = axles_of(vehicle, originals.map(|original| original.is_some()));
        let axle = |place, original, is_only| {
            let on = AxleFacts::new(place, vehicle, conditions, limits);
            let original = SetupFacts::of(original, &on);
            let mut axle = Self { on, original, is_only, original_clears: false };
            let slack = swept::slack(&axle.case(axle.original.as_ref()));
            axle.original_clears = slack.is_ok_and(|slack| !slack.is_near);
            axle
        };
        let [of_front, of_rear] = originals;
        [
            front.then(|| axle(Position::Front, of_front, !rear)),
            rear.then(|| axle(Position::Rear, of_rear, !front)),
        ]
    }

    /// With something that goes on it.
    pub(super) fn case<'t>(&'t self, proposed: Option<&'t SetupFacts<'t>>) -> Case<'t> {
        Case::new(&self.on, [self.original.as_ref(), proposed])
    }

    pub(crate) fn axle(&self) -> &'a Axle {
        self.on.axle
    }

    pub(crate) fn original(&self) -> Option<&Setup> {
        self.original.as_deref()
    }

    pub(crate) fn is_dual(&self) -> bool {
        self.on.is_dual
    }

    pub(crate) fn place(&self) -> Position {
        self.on.place
    }

    /// How a tire is fitted here, as its load index has it.
    pub(crate) fn formation(&self, tire: &Tire) -> Formation {
        self.on.formation(is_passenger(tire))
    }

    /// What one wheel carries of the greatest load, where that is known.
    pub(crate) fn wheel_share(&self) -> Option<Mass> {
        let (load, _) = self.on.greatest_load.ok()?;
        Some(load / self.on.wheels)
    }

    /// The least inside radius of a barrel over the brake, no more than a rim of a size may have, and the least that the
    /// back of the spokes stands out, as far as the brake was measured.
    pub(crate) fn around_brake(&self, size: &WheelSize) -> [Option<Length>; 2] {
        let (brake, room) = (self.on.axle.brake(), self.on.limits.brake_clearance().value());
        let whole = |length: Length| mm(libm::ceil(in_mm(length + room)));
        let most = max_barrel(size);
        let barrel = brake.and_then(|b| b.envelope_radius()).map(whole).filter(|&barrel| barrel <= most);
        [barrel, brake.and_then(|b| b.caliper_face()).map(whole)]
    }

    /// Half the width of a setup, how far its middle stands out, and its overall diameter, at nominal size, where it may
    /// be told by them: they are known and from no remembered row, and it is not of the original's size.
    pub(crate) fn measures(&self, setup: &Setup) -> Option<[Length; 3]> {
        let original = self.original.as_ref()?;
        let size = setup.tire().size();
        if self.on.is_dual || original.is_remembered || original.tire().size() == size {
            return None;
        }
        let half_width = half_tire(setup)?.nominal().max(half_rim(&setup.wheel().size()).nominal());
        let middle = self.on.centres(setup.wheel().inset_or_assumed()?, setup.hub_spacing()).middle();
        let diameter = size.overall_diameter_nominal()?;
        (!size.rests_on_remembered_row()).then_some([half_width, middle, diameter])
    }

    /// A setup on this axle.
    pub(crate) fn tried<'t>(&'t self, proposed: &'t Setup) -> Tried<'t> {
        Tried { on: self, facts: SetupFacts::new(proposed, &self.on), spacing: proposed.hub_spacing() }
    }
}

/// A setup on an axle.
pub(crate) struct Tried<'t> {
    on: &'t Trial<'t>,
    facts: SetupFacts<'t>,
    spacing: Length,
}

impl Tried<'_> {
    fn case(&self) -> Case<'_> {
        self.on.case(Some(&self.facts))
    }

    /// What a check of an axle finds, where it is made on this one.
    fn found(&self, case: &Case<'_>, definition: &Definition) -> Option<Found> {
        of_axle(case, self.on.is_only, definition)
    }

    fn finding_of(&self, id: CheckId) -> Option<Finding> {
        self.found(&self.case(), &DEFINITIONS[id as usize])?.ok()
    }

    /// The verdict of one check of an axle; not assessed where it is of something else.
    pub(crate) fn verdict_of(&self, id: CheckId) -> Verdict {
        self.finding_of(id).map_or(Verdict::NotAssessed, |finding| finding.verdict)
    }

    /// The least pressure that is asked for where the intended ones are too low, and whether for full load alone.
    pub(crate) fn asks_for_pressure(&self) -> Option<(Pressure, bool)> {
        let finding = self.finding_of(CheckId::Inflation).filter(|f| f.verdict == Verdict::Beyond)?;
        let (Some(Value::Pressure(_)), Some(Bound::AtLeast(Value::Pressure(least)))) =
            (finding.measured, finding.limit)
        else {
            return None;
        };
        Some((least, finding.reason == Reason::PressureTooLowFull))
    }

    /// The first check of the axle that depends on something and is beyond.
    pub(crate) fn fails(&self, what: DependsOn) -> Option<CheckId> {
        let case = self.case();
        let beyond = |definition: &&Definition| {
            let found = self.found(&case, definition);
            matches!(found, Some(Ok(finding)) if finding.verdict == Verdict::Beyond)
        };
        of(what).find(beyond).map(|definition| definition.id)
    }

    pub(crate) fn pressures(&self) -> Option<Pressures> {
        pressures(&self.case())
    }

    /// Puts the wheel where one of an inset stands.
    fn stand_at(&mut self, inset: Inset) {
        self.facts.centres = Some(self.on.on.centres(inset, self.spacing));
    }

    /// The insets at which no check that depends on where the wheel stands at rest is beyond, or the first check that
    /// leaves none.
    ///
    /// The wheel must not be the original one, whose unchanged body is excused: its own inset does not count.
    pub(crate) fn insets(&mut self) -> Result<InsetRange, CheckId> {
        self.insets_by(|_| true)
    }

    /// The same as if nothing stood outboard.
    pub(crate) fn insets_but_outboard(&mut self) -> Result<InsetRange, CheckId> {
        self.insets_by(|id| id != CheckId::OuterClearance)
    }

    /// What is left of insets where there is room outboard.
    pub(crate) fn outboard(&mut self, range: InsetRange) -> Option<InsetRange> {
        self.narrowed(range, &DEFINITIONS[CheckId::OuterClearance as usize])
    }

    fn insets_by(&mut self, counts: impl Fn(CheckId) -> bool) -> Result<InsetRange, CheckId> {
        let mut definitions = of(DependsOn::Inset).filter(|definition| counts(definition.id));
        definitions.try_fold(InsetRange::WHOLE, |range, definition| {
            self.narrowed(range, definition).ok_or(definition.id)
        })
    }

    /// What is left of insets where a check is not beyond.
    fn narrowed(&mut self, range: InsetRange, definition: &Definition) -> Option<InsetRange> {
        range.within(definition.id, |inset| {
            self.stand_at(inset);
            let found = self.found(&self.case(), definition);
            !matches!(found, Some(Ok(finding)) if finding.verdict == Verdict::Beyond)
        })
    }

    /// How far from the hub face a wheel and its tire may reach outboard and inboard and its middle stand out, at nominal
    /// size, and between which overall diameters, before a check is beyond; as this setup shows. What nothing limits is
    /// infinite.
    pub(crate) fn windows(&mut self) -> [Length; 5] {
        let far = mm(f64::INFINITY);
        let [mut least, mut most] = [-far, far];
        if let Some((a, b)) = diameter_window(&self.case()) {
            // The last bits of arithmetic are forgiven by the check.
            (least, most) = (a - mm(0.01), b + mm(0.01));
        }
        let Some(half) = self.half_width().filter(|_| !self.on.on.is_dual) else {
            return [far, far, far, least, most];
        };
        let spacing = self.spacing;
        let mut furthest = |id: CheckId| {
            let range = self.narrowed(InsetRange::WHOLE, &DEFINITIONS[id as usize])?;
            let [least, most] = [range.min(), range.max()];
            // One step of a hundredth is not told from the next.
            let end = if least.check().is_some() { Some(-least.value().length()) } else { None };
            end.or(most.check().map(|_| most.value().length())).map(|end| end + mm(0.02))
        };
        let outboard = furthest(CheckId::OuterClearance).map_or(far, |end| end + spacing + half);
        let inboard = furthest(CheckId::InnerClearance).map_or(far, |end| end - spacing + half);
        let middle = furthest(CheckId::Track).map_or(far, |end| end + spacing);
        [outboard, inboard, middle, least, most]
    }

    fn half_width(&self) -> Option<Length> {
        Some(self.facts.half_tire?.nominal().max(self.facts.half_rim.nominal()))
    }

    /// What is left of a range where the scrub radius does not change its sign, as far as that is known.
    pub(crate) fn keeping_scrub(&mut self, range: InsetRange) -> Option<InsetRange> {
        let keeps = |inset| {
            self.stand_at(inset);
            let found = self.found(&self.case(), &DEFINITIONS[CheckId::ScrubRadius as usize]);
            !matches!(found, Some(Ok(finding)) if finding.reason == Reason::ScrubReversed)
        };
        range.within(CheckId::ScrubRadius, keeps)
    }

    /// What is left of a range where the outer face stands no further inboard than so much of the guard, or where
    /// that was not measured, of what is outboard.
    pub(crate) fn flush_within(&mut self, range: InsetRange, most: Length) -> Option<InsetRange> {
        let space = self.on.on.axle.space();
        let guard = space.and_then(|space| space.narrower(EndGap::Guard)).map(|narrower| narrower.gap);
        let check = if guard.is_some() { CheckId::WheelGuard } else { CheckId::OuterClearance };
        let gap =
            guard.or(space.and_then(|space| space.narrower(EndGap::Outer)).map(|narrower| narrower.gap));
        let original = self.on.original.as_ref();
        let old = original.and_then(|original| Assembly::original(&self.case(), original).ok());
        let known = gap.zip(old).zip(self.facts.half_tire);
        let ((gap, old), half_tire) = known?;
        let half_rim = self.facts.half_rim;
        let (on, spacing) = (&self.on.on, self.spacing);
        range.within(check, |inset| {
            let new = Assembly { centres: on.centres(inset, spacing), half_tire, half_rim };
            let grown = new.reach(Side::Outboard).nominal() - old.reach(Side::Outboard).nominal();
            no_more(in_mm(gap - grown), in_mm(most))
        })
    }

    /// The least share of a limit that is left by the checks which depend on where the wheel stands at rest; nothing
    /// where none of them is assessed.
    pub(crate) fn least_share_at(&mut self, inset: Inset) -> Option<f64> {
        self.stand_at(inset);
        let case = self.case();
        of(DependsOn::Inset)
            .filter_map(|definition| {
                let finding = self.found(&case, definition)?.ok()?;
                share_left(finding.measured?, finding.limit?)
            })
            .reduce(f64::min)
    }

    /// Whether the wheel touches something that moves or beside which it moves, at an inset, and how far the inset may
    /// change at least before that does; nothing where it cannot be said.
    pub(crate) fn movement_at(&mut self, inset: Inset) -> Option<Movement> {
        self.stand_at(inset);
        let case = self.case();
        case.car_rules().ok()?;
        let Slack { left, is_near, is_beyond, is_in_doubt } = swept::slack(&case).ok()?;
        let stays = if !is_beyond && !is_near {
            left
        } else if is_beyond && self.on.original_clears && !is_in_doubt {
            -left
        } else {
            Length::default()
        };
        Some(Movement { is_beyond, stays })
    }

    /// Whether anything is known to stand around the axle.
    pub(crate) fn has_surroundings(&self) -> bool {
        self.on.on.axle.surroundings().next().is_some()
    }
}

/// What was found of a wheel that moves.
pub(crate) struct Movement {
    pub(crate) is_beyond: bool,
    /// How far the inset may change, either way, and the same be found.
    pub(crate) stays: Length,
}

/// The first check of front and rear together that is beyond.
pub(crate) fn fails_together(front: &Tried<'_>, rear: &Tried<'_>) -> Option<CheckId> {
    let cases = [Some(front.case()), Some(rear.case())];
    let case = cases.iter().flatten().find(|case| case.is_remembered).or(cases[0].as_ref())?;
    of_vehicle(&cases, case)
}

/// The same where only one axle has a setup; the other, where the vehicle has one, has nothing on it.
pub(crate) fn fails_alone(only: &Tried<'_>) -> Option<CheckId> {
    let (on, case) = (&only.on.on, only.case());
    let other = if on.place == Position::Front { Position::Rear } else { Position::Front };
    let bare = AxleFacts::new(other, on.vehicle, on.conditions, on.limits);
    let other = (!only.on.is_only).then(|| Case::new(&bare, [None, None]));
    let cases = if on.place == Position::Front { [Some(case), other] } else { [other, Some(case)] };
    of_vehicle(&cases, &case)
}

fn of_vehicle(cases: &[Option<Case<'_>>; 2], any: &Case<'_>) -> Option<CheckId> {
    let mut definitions = DEFINITIONS.iter();
    definitions.find_map(|definition| {
        let Run::Vehicle(check) = definition.run else { return None };
        let mut found = check(cases);
        let found = definition.settled(any, &mut found);
        matches!(found, Ok(finding) if finding.verdict == Verdict::Beyond).then_some(definition.id)
    })
}
