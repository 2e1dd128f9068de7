//! A corner at ride height, straight ahead, which two setups are enough for.

use super::available_space::MissingFacts;
use super::corner::{Around, on_axle};
use crate::fitment::case::Case;
use crate::fitment::check::{Check, CheckId, Position, Reason};
use crate::fitment::checks::clearance::{Assembly, Side, original_radius};
use crate::fitment::checks::swept;
use crate::fitment::facts::SetupFacts;
use crate::fitment::moves::{Move, Moves};
use crate::fitment::value::Value;
use crate::fitment::{Change, Limits, Report};
use crate::sweep::{Corner, Obstacles, Profile};
use crate::tire::condition::VehicleSide;
use crate::units::{Length, mm};
use crate::vehicle::{BodyKind, Brake, EndGap, Vehicle};

/// One end of an axle at ride height, wheels straight ahead, with what was measured around it: wheels before and after,
/// gaps, bodies, brake, spokes, spacer and guard. For whoever wants to draw it.
///
/// It needs the dimensions of both setups and nothing of the vehicle; whatever else is known is in it. Without the inset
/// of either wheel, as of a motorcycle, both stand about the middles of their rims, and nothing that is measured from
/// the hub is in it. Outlines and bodies are at nominal size; a tire whose width on its rim no rule tells is as wide as
/// it is called.
///
/// ```
/// use beadseat::fitment::{Change, Setup, space::CornerAtRest};
/// use beadseat::{tire::condition::VehicleSide, vehicle::Vehicle};
/// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16 ET46")?, Setup::parse("225/45R17", "7.5Jx17 ET42")?];
/// let (nothing, change) = (Vehicle::unknown(), Change::front(old, new));
/// let report = change.assess(&nothing);
/// let corner = CornerAtRest::front(&nothing, &change, &report, VehicleSide::Left)?;
/// assert!(corner.is_placed() && corner.gaps().next().is_none());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct CornerAtRest {
    place: Position,
    corner: Corner,
    before: Profile,
    after: Profile,
    inner: Option<[Profile; 2]>,
    pair_gap: Option<Length>,
    is_placed: bool,
    around: Around,
    gaps: [Option<MeasuredGap>; 3],
    guard: Option<Length>,
    brake: Option<Brake>,
    spoke_back: Option<Length>,
    spacer: Option<Length>,
    moves: Moves,
}

impl CornerAtRest {
    /// Of one end of the front axle, with what a report of the same change says of its gaps.
    ///
    /// # Errors
    /// The facts that are not known: a setup or its dimensions.
    pub fn front(
        vehicle: &Vehicle,
        change: &Change,
        report: &Report,
        side: VehicleSide,
    ) -> Result<Self, MissingFacts> {
        Self::of(vehicle, change, report, Position::Front, side)
    }

    /// Of one end of the rear axle, or the only one of a trailer, with what a report of the same change says of its gaps.
    ///
    /// # Errors
    /// The facts that are not known: a setup or its dimensions.
    pub fn rear(
        vehicle: &Vehicle,
        change: &Change,
        report: &Report,
        side: VehicleSide,
    ) -> Result<Self, MissingFacts> {
        Self::of(vehicle, change, report, Position::Rear, side)
    }

    fn of(
        vehicle: &Vehicle,
        change: &Change,
        report: &Report,
        place: Position,
        side: VehicleSide,
    ) -> Result<Self, MissingFacts> {
        on_axle(vehicle, change, &Limits::default(), place, |case| {
            let (original, proposed) = case.both()?;
            let centres = original.centres.zip(proposed.centres);
            let is_placed = centres.is_some();
            let [old, new] = centres.map_or_else(Default::default, |(old, new)| [old.outer, new.outer]);
            // A body whose place is not known is not drawn.
            let known = if is_placed { Around::of(case, original, side).ok() } else { None };
            let spacing = if case.is_dual { mm(0.0) } else { proposed.hub_spacing() };
            let gaps = GapKind::ALL.map(|kind| {
                MeasuredGap::of(kind, side, case, original, report).filter(|gap| is_placed || gap.is_above())
            });
            Ok(Self {
                place: place.end(side),
                corner: swept::at_rest(case)?,
                before: swept::profile_at(original, old)?,
                after: swept::profile_at(proposed, new)?,
                inner: match centres {
                    Some((old, new)) if case.is_dual => Some([
                        swept::profile_at(original, old.inner)?,
                        swept::profile_at(proposed, new.inner)?,
                    ]),
                    _ => None,
                },
                pair_gap: report.get(CheckId::DualSpacing, case.place).and_then(length),
                is_placed,
                around: known.unwrap_or(Around::nothing()),
                gaps,
                guard: guard(case, side, original).filter(|_| is_placed),
                brake: case.axle.brake().filter(|_| is_placed),
                spoke_back: proposed.spoke_back().filter(|_| is_placed).map(|back| back + spacing),
                spacer: Some(spacing).filter(|&spacing| is_placed && spacing > mm(0.0)),
                moves: Moves::of(vehicle, change),
            })
        })
    }

    /// The end of an axle that it is.
    pub const fn position(&self) -> Position {
        self.place
    }

    /// The wheel at ride height, which does not move.
    pub const fn corner(&self) -> &Corner {
        &self.corner
    }

    /// Outline of the original tire on its rim, of a pair the outer one.
    pub const fn before(&self) -> &Profile {
        &self.before
    }

    /// Outline of the proposed tire on its rim, of a pair the outer one.
    pub const fn after(&self) -> &Profile {
        &self.after
    }

    /// The inner wheels of a pair, before and after; none of single wheels.
    pub fn inner(&self) -> Option<[&Profile; 2]> {
        self.inner.as_ref().map(|inner| inner.each_ref())
    }

    /// The gap between the tires of a pair, the figure of the report; nothing where that is not judged, and of single
    /// wheels.
    pub const fn pair_gap(&self) -> Option<Length> {
        self.pair_gap
    }

    /// Whether it is known where the wheels stand: both insets are.
    pub const fn is_placed(&self) -> bool {
        self.is_placed
    }

    /// What stands around the wheel.
    pub const fn around(&self) -> &Obstacles {
        &self.around.obstacles
    }

    /// What each of those is, in the same order.
    pub fn bodies(&self) -> impl Iterator<Item = BodyKind> {
        self.around.bodies()
    }

    /// The gaps that were measured.
    pub fn gaps(&self) -> impl Iterator<Item = MeasuredGap> {
        self.gaps.iter().flatten().copied()
    }

    /// How far outboard of the hub face the wheel guard stands at least.
    pub const fn guard(&self) -> Option<Length> {
        self.guard
    }

    /// The brake, as far as it was measured.
    pub const fn brake(&self) -> Option<Brake> {
        self.brake
    }

    /// How far outboard of the hub face the back of the proposed wheel's spokes stands.
    pub const fn spoke_back(&self) -> Option<Length> {
        self.spoke_back
    }

    /// What lies between hub and proposed wheel; none between the wheels of a pair.
    pub const fn spacer(&self) -> Option<Length> {
        self.spacer
    }

    /// What the change moves on this axle.
    pub fn moves(&self) -> impl Iterator<Item = Move> {
        self.moves.on(self.place.axle())
    }
}

/// The length that a finding measures.
fn length(check: Check) -> Option<Length> {
    match check.measured()? {
        Value::Length(length) => Some(length),
        _ => None,
    }
}

/// Where the guard stands: beside the tire that was on when it was measured.
fn guard(case: &Case<'_>, side: VehicleSide, original: &SetupFacts<'_>) -> Option<Length> {
    let overhang = case.axle.space()?.gap_on(side, EndGap::Guard)?;
    let present = Assembly::original(case, original).ok()?;
    Some(present.centres.outer + present.half_tire.nominal() + overhang)
}

/// Which gap beside a wheel was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum GapKind {
    /// The gap outboard of the wheel, straight out.
    Outer,
    /// The gap inboard of tire and rim.
    Inner,
    /// The gap above the tread.
    Upper,
}

impl GapKind {
    const ALL: [Self; 3] = [Self::Outer, Self::Inner, Self::Upper];

    /// The check that judges what is left of it.
    pub const fn check(self) -> CheckId {
        match self {
            Self::Outer => CheckId::OuterClearance,
            Self::Inner => CheckId::InnerClearance,
            Self::Upper => CheckId::UpperClearance,
        }
    }
}

/// A gap that was measured beside the original wheel, where it ends, and what a report says is left of it.
///
/// ```
/// use beadseat::{fitment::space::{CornerAtRest, GapKind}, scenario::Scenario, tire::condition::VehicleSide, units::mm};
/// let text = std::fs::read_to_string("examples/scenarios/field-survey-wagon.json")?;
/// let scenario: Scenario = serde_json::from_str(&text)?;
/// let report = scenario.assess();
/// let corner = CornerAtRest::front(scenario.vehicle(), scenario.change(), &report, VehicleSide::Left)?;
/// let outer = corner.gaps().find(|gap| gap.kind() == GapKind::Outer).ok_or("not measured")?;
/// // 30 mm outboard of a tire of 213 mm whose rim stands 46 mm inboard of the hub face.
/// assert_eq!((outer.measured(), outer.end()), (mm(30.0), mm(90.5)));
/// assert!(outer.left().is_some_and(|left| left < mm(30.0)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredGap {
    kind: GapKind,
    measured: Length,
    end: Length,
    left: Option<Length>,
    is_unchanged: bool,
}

impl MeasuredGap {
    fn of(
        kind: GapKind,
        end_of_axle: VehicleSide,
        case: &Case<'_>,
        original: &SetupFacts<'_>,
        report: &Report,
    ) -> Option<Self> {
        let space = case.axle.space()?;
        let reach = |side| Some(Assembly::original(case, original).ok()?.reach(side).nominal());
        let (on_end, end) = match kind {
            GapKind::Outer => (EndGap::Outer, reach(Side::Outboard)?),
            GapKind::Inner => (EndGap::Inner, reach(Side::Inboard)?),
            GapKind::Upper => (EndGap::Upper, original_radius(case, original).ok()?.nominal()),
        };
        let measured = space.gap_on(end_of_axle, on_end)?;
        // A report tells what is left on the narrower end; on the other there is as much more as was measured there.
        let more = measured - space.narrower(on_end)?.gap;
        let check = report.get(kind.check(), case.narrower_end(on_end));
        let left = check.and_then(length).map(|left| left + more);
        let end = if kind == GapKind::Inner { -(end + measured) } else { end + measured };
        let is_unchanged = check.is_some_and(|check| check.reason() == Reason::Unchanged);
        Some(Self { kind, measured, end, left, is_unchanged })
    }

    const fn is_above(&self) -> bool {
        matches!(self.kind, GapKind::Upper)
    }

    /// Which gap it is.
    pub const fn kind(&self) -> GapKind {
        self.kind
    }

    /// As it was measured beside the original wheel.
    pub const fn measured(&self) -> Length {
        self.measured
    }

    /// How far outboard of the hub face it ends, or how far above the hub.
    pub const fn end(&self) -> Length {
        self.end
    }

    /// What is left of it at worst, the figure of the report; nothing where that is not judged.
    pub const fn left(&self) -> Option<Length> {
        self.left
    }

    /// Whether nothing changes that takes up room.
    pub const fn is_unchanged(&self) -> bool {
        self.is_unchanged
    }
}
