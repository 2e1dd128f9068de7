//! The room that measured gaps and limits leave on an axle, for a wheel and tire still to be chosen.

use core::fmt;

use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{CheckId, Input, Missing, Position, Verdict};
use crate::fitment::checks::clearance::{Assembly, Gap, Side, original_radius};
use crate::fitment::checks::geometry::{judge_track, max_track_growth, track_growth};
use crate::fitment::facts::{AxleFacts, SetupFacts, half_rim, half_tire};
use crate::fitment::finding::no_more;
use crate::fitment::{Limits, Setup};
use crate::units::{Length, in_mm};
use crate::vehicle::Vehicle;
use crate::wheel::{Inset, Wheel};

/// What was measured around the original wheel of an axle, asked the other way round: not whether a wheel
/// and tire fit, but how large they may be and where they may stand.
///
/// It answers as the checks of an assessment do, at their worst case: what it gives is what they find
/// inside, and a hundredth of a millimetre more is not. Findings have exceptions it does not know. Unless the
/// limit is the caller's, the unchanged original is inside whatever it measures; and where the rim stands out
/// further than its tire, or the gaps were measured beside an under-inflated one, a check that is inside is called
/// marginal ([`Reason::FlangeAssumed`](crate::fitment::Reason::FlangeAssumed),
/// [`Reason::MeasuredSoft`](crate::fitment::Reason::MeasuredSoft)), and so is every check of a wheel whose inset follows
/// from its backspacing ([`Reason::InsetAssumed`](crate::fitment::Reason::InsetAssumed)).
///
/// What it does not look at stays to be judged: load, brake, scrub radius, lock and jounce.
///
/// ```
/// use beadseat::fitment::{CheckId, Limits, Setup};
/// use beadseat::fitment::space::AvailableSpace;
/// use beadseat::{units::mm, vehicle::{Axle, Kind, MeasuredTire, Space, Vehicle}};
/// let measured = MeasuredTire::new().with_width(mm(213.0))?.with_diameter(mm(629.0))?;
/// let space = Space::new().with_inner_clearance(mm(18.0))?.with_outer_clearance(mm(30.0))?
///     .with_upper_clearance(mm(55.0))?.with_measured_tire(measured);
/// let front = Axle::new().with_track(mm(1538.0))?.with_space(space);
/// let wagon = Vehicle::new(Kind::Passenger).with_front(front);
/// let original = Setup::new("205/55R16 91V".parse()?, "6.5Jx16 ET46".parse()?);
/// let limits = Limits::default();
/// let room = AvailableSpace::front(&wagon, original, &limits);
///
/// // 629 mm and twice what 55 mm have above the 6.35 mm that must stay.
/// assert!((room.max_diameter()? - mm(726.3)).abs() < mm(1e-9));
/// // Inboard 152.5 mm were taken up and 11.65 mm are left, 42 mm of which the inset takes.
/// let widest = room.max_width(&"7.5Jx17 ET42".parse()?, mm(0.0))?.ok_or("the rim touches")?;
/// assert!((widest.value() - mm(244.3)).abs() < mm(1e-9));
/// assert_eq!(widest.check(), Some(CheckId::InnerClearance));
/// // A new 225/45R17 is 234 mm wide at most: 117 and 47.15 mm inboard.
/// let insets = room.insets(&Setup::new("225/45R17 94W XL".parse()?, "7.5Jx17".parse()?))?.ok_or("none")?;
/// assert_eq!(insets.max().value().to_string(), "ET47.15");
/// assert_eq!(insets.min().value().to_string(), "ET32.85");
/// assert_eq!(insets.min().check(), Some(CheckId::OuterClearance));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AvailableSpace<'a> {
    vehicle: &'a Vehicle,
    place: Position,
    original: Setup,
    limits: &'a Limits,
}

impl<'a> AvailableSpace<'a> {
    /// On the front axle, whose gaps were measured with this setup on it.
    pub const fn front(vehicle: &'a Vehicle, original: Setup, limits: &'a Limits) -> Self {
        Self { vehicle, place: Position::Front, original, limits }
    }

    /// On the rear axle, or the only one of a trailer.
    pub const fn rear(vehicle: &'a Vehicle, original: Setup, limits: &'a Limits) -> Self {
        Self { vehicle, place: Position::Rear, original, limits }
    }

    /// Answers, or says where what is lacking belongs.
    fn answer<T>(
        &self,
        find: impl FnOnce(&Case<'_>, &SetupFacts<'_>) -> Result<T, Missing>,
    ) -> Result<T, MissingFacts> {
        let axle = AxleFacts::in_any_use(self.place, self.vehicle, self.limits);
        let original = SetupFacts::new(&self.original, &axle);
        let case = Case::new(&axle, [Some(&original), None]);
        case.car_rules()
            .and_then(|()| find(&case, &original))
            .map_err(|missing| MissingFacts { missing, place: self.place })
    }

    /// The largest overall diameter, its tolerance included, that upper clearance allows: to be compared
    /// with the greatest of [`overall_diameter`](crate::tire::TireSize::overall_diameter), and for snow
    /// tires of [`overall_diameter_snow`](crate::tire::TireSize::overall_diameter_snow).
    ///
    /// # Errors
    /// Without the gap, the kind of vehicle, or the dimensions of the original tire.
    pub fn max_diameter(&self) -> Result<Length, MissingFacts> {
        self.answer(|case, original| {
            let (gap, radius) =
                both_of(Gap::above(case).and_then(Gap::of_both_ends), original_radius(case, original))?;
            Ok(gap.furthest(radius) * 2.0)
        })
    }

    /// The largest section width, its tolerance included, that outer and inner clearance allow on a wheel
    /// that spacers and adaptors hold this far off the hub: to be compared with the greatest of
    /// [`section_width_on`](crate::tire::TireSize::section_width_on). Nothing if already the rim comes too
    /// close; a contour that is not known is taken as J.
    ///
    /// # Errors
    /// Without one of the gaps, the kind of vehicle, the inset of either wheel, or the dimensions of the
    /// original tire.
    pub fn max_width(
        &self,
        wheel: &Wheel,
        hub_spacing: Length,
    ) -> Result<Option<RangeEnd<Length>>, MissingFacts> {
        self.answer(|case, original| {
            let inset = || {
                need!(inset = wheel.inset_or_assumed() => WheelInset);
                Ok(inset)
            };
            let (inset, beside) = both_of(inset(), beside(case, original))?;
            let (original, outer, inner) = beside;
            let centres = case.centres(inset, hub_spacing);
            let half = |gap: &Gap, side| gap.furthest(original.reach(side)) - centres.toward(side);
            let outboard = half(&outer, Side::Outboard);
            let inboard = half(&inner, Side::Inboard);
            let (half, check) = if inboard < outboard {
                (inboard, CheckId::InnerClearance)
            } else {
                (outboard, CheckId::OuterClearance)
            };
            let rim_fits = no_more(in_mm(half_rim(&wheel.size()).max()), in_mm(half));
            Ok(rim_fits.then_some(RangeEnd { value: half * 2.0, check: Some(check) }))
        })
    }

    /// The insets at which a setup keeps outer clearance, inner clearance and track, in steps of 0.01 mm;
    /// the inset of its own wheel does not count. Nothing if there are none.
    ///
    /// # Errors
    /// Without one of the gaps, the kind of vehicle, the track where a share of it is the limit, the inset
    /// of the original wheel, or the dimensions of either tire.
    pub fn insets(&self, proposed: &Setup) -> Result<Option<InsetRange>, MissingFacts> {
        self.answer(|case, original| {
            let width = || {
                need!(width = half_tire(proposed) => TireDimensions);
                Ok(width)
            };
            let known = both_of(beside(case, original), both_of(max_track_growth(case), width()))?;
            let ((original, outer, inner), (most_growth, half_tire)) = known;
            let assembly = |inset| Assembly {
                centres: case.centres(inset, proposed.hub_spacing()),
                half_tire,
                half_rim: half_rim(&proposed.wheel().size()),
            };
            let clears = |gap: &Gap, side, inset| {
                gap.judge(original.reach(side), assembly(inset).reach(side)).verdict == Verdict::Within
            };
            let keeps_track = |inset| {
                let growth = track_growth(original.centres, assembly(inset).centres);
                judge_track(growth, most_growth).verdict == Verdict::Within
            };
            Ok(InsetRange::WHOLE
                .within(CheckId::OuterClearance, |inset| clears(&outer, Side::Outboard, inset))
                .and_then(|r| r.within(CheckId::InnerClearance, |inset| clears(&inner, Side::Inboard, inset)))
                .and_then(|r| r.within(CheckId::Track, keeps_track)))
        })
    }
}

/// The original where it stands, and the gaps outboard and inboard of it.
fn beside(case: &Case<'_>, original: &SetupFacts<'_>) -> Result<(Assembly, Gap, Gap), Missing> {
    let gap = |side| Gap::beside(case, side).and_then(Gap::of_both_ends);
    let gaps = both_of(gap(Side::Outboard), gap(Side::Inboard));
    let (original, (outer, inner)) = both_of(Assembly::original(case, original), gaps)?;
    Ok((original, outer, inner))
}

/// One end of what fits, and the check that sets it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RangeEnd<Q> {
    value: Q,
    check: Option<CheckId>,
}

impl<Q: Copy> RangeEnd<Q> {
    pub(crate) const fn new(value: Q, check: Option<CheckId>) -> Self {
        Self { value, check }
    }

    /// The last value that fits.
    pub const fn value(&self) -> Q {
        self.value
    }

    /// The check that the next step would break; nothing where no check ends it, but what can be written
    /// down does: ±300 mm of inset.
    pub const fn check(&self) -> Option<CheckId> {
        self.check
    }
}

/// The insets from one to another, in steps of 0.01 mm.
///
/// ```
/// use beadseat::fitment::{Limits, Position, Setup};
/// use beadseat::fitment::space::{AvailableSpace, MissingFacts};
/// use beadseat::vehicle::Vehicle;
/// let setup = Setup::new("205/55R16 91V".parse()?, "6.5Jx16 ET46".parse()?);
/// let unknown: MissingFacts = AvailableSpace::rear(&Vehicle::unknown(), setup, &Limits::default()).insets(&setup).unwrap_err();
/// assert_eq!(unknown.to_string(), "not known: vehicle.kind");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InsetRange {
    least: RangeEnd<Inset>,
    most: RangeEnd<Inset>,
}

impl InsetRange {
    /// In hundredths of a millimetre.
    const LAST: i32 = 30_000;

    pub(crate) const WHOLE: Self = Self {
        least: RangeEnd { value: Inset::from_hundredths(-Self::LAST), check: None },
        most: RangeEnd { value: Inset::from_hundredths(Self::LAST), check: None },
    };

    /// From one end to another.
    pub(crate) const fn between(least: RangeEnd<Inset>, most: RangeEnd<Inset>) -> Self {
        Self { least, most }
    }

    /// What it has in common with another.
    pub(crate) fn and(self, other: Self) -> Option<Self> {
        let least = if other.least.value > self.least.value { other.least } else { self.least };
        let most = if other.most.value < self.most.value { other.most } else { self.most };
        (least.value <= most.value).then_some(Self { least, most })
    }

    /// The least inset: the furthest outboard, of single wheels.
    pub const fn min(&self) -> RangeEnd<Inset> {
        self.least
    }

    /// The greatest inset: the furthest inboard, of single wheels.
    pub const fn max(&self) -> RangeEnd<Inset> {
        self.most
    }

    /// Whether an inset lies between them.
    pub fn contains(&self, inset: Inset) -> bool {
        self.least.value <= inset && inset <= self.most.value
    }

    /// What is left of it where a check holds that begins or ceases to hold once over all insets, if ever.
    pub(in crate::fitment) fn within(
        mut self,
        check: CheckId,
        mut holds: impl FnMut(Inset) -> bool,
    ) -> Option<Self> {
        let mut holds_at = |step| holds(Inset::from_hundredths(step));
        let (first, last) = (holds_at(-Self::LAST), holds_at(Self::LAST));
        if first == last {
            return first.then_some(self);
        }
        let (mut low, mut high) = (-Self::LAST, Self::LAST);
        while high - low > 1 {
            let middle = low + (high - low) / 2;
            if holds_at(middle) == first { low = middle } else { high = middle }
        }
        let end = |step| RangeEnd { value: Inset::from_hundredths(step), check: Some(check) };
        let (low, high) = (end(low), end(high));
        if first && low.value < self.most.value {
            self.most = low;
        } else if last && high.value > self.least.value {
            self.least = high;
        }
        (self.least.value <= self.most.value).then_some(self)
    }
}

/// The facts without which an [`AvailableSpace`] or a [`SweptCorner`](super::SweptCorner) cannot answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct MissingFacts {
    missing: Missing,
    place: Position,
}

impl MissingFacts {
    pub(in crate::fitment) const fn new(missing: Missing, place: Position) -> Self {
        Self { missing, place }
    }

    /// The inputs that are not known.
    pub fn inputs(&self) -> impl Iterator<Item = Input> + use<> {
        self.missing.inputs()
    }

    /// The axle whose inputs are not known.
    pub const fn position(&self) -> Position {
        self.place
    }
}

impl fmt::Display for MissingFacts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, input) in self.inputs().enumerate() {
            write!(f, "{}{}", if n == 0 { "not known: " } else { ", " }, input.at(self.place))?;
        }
        Ok(())
    }
}

impl core::error::Error for MissingFacts {}
