//! What is left of the measured gaps, at ride height and straight ahead.

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use super::effects::MONITOR_SHARE;
use crate::fitment::Setup;
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{Check, CheckId, Input, Missing, Reason, Verdict};
use crate::fitment::facts::{Centres, SetupFacts};
use crate::fitment::finding::{Finding, Found, PLAIN, at_best, at_least, least_or_as_built, no_more};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::{End, Teller};
use crate::units::{self, Length, in_kpa};
use crate::vehicle::{EndGap, MeasuredTire};
use crate::{Citation, Toleranced};

/// Which way a gap is measured.
#[derive(Clone, Copy)]
pub(in crate::fitment) enum Side {
    Outboard,
    Inboard,
}

pub(super) const OUTER_CLEARANCE: Definition =
    Definition::new(CheckId::OuterClearance, Harm::Contact, Run::Gap(EndGap::Outer, outer), DependsOn::Inset)
        .vital()
        .of(Rules::Cars)
        .by_dimensions();

fn outer(case: &Case<'_>) -> Found {
    lateral(case, Side::Outboard)
}

pub(super) const INNER_CLEARANCE: Definition =
    Definition::new(CheckId::InnerClearance, Harm::Contact, Run::Gap(EndGap::Inner, inner), DependsOn::Inset)
        .vital()
        .of(Rules::Cars)
        .by_dimensions();

fn inner(case: &Case<'_>) -> Found {
    lateral(case, Side::Inboard)
}

/// A measured gap, and how much of it must be left: the limit, or what there was if that is less.
pub(in crate::fitment) struct Gap {
    measured: Length,
    uncertainty: Length,
    least: Length,
    citation: Citation,
    /// The gap of the other end, if that is not known.
    lacking: Option<Input>,
}

impl Gap {
    fn new(case: &Case<'_>, kind: EndGap, input: Input) -> Result<Self, Missing> {
        let narrower = case.axle.space().and_then(|space| space.narrower(kind)).ok_or(input)?;
        let built = Some(Toleranced::exact(narrower.gap));
        let (least, citation) = least_or_as_built(case.limits.clearance(), built);
        let lacking = (!narrower.is_other_known).then_some(input);
        Ok(Self { measured: narrower.gap, uncertainty: case.gap_uncertainty(), least, citation, lacking })
    }

    /// On the end of the axle with less of it.
    pub(in crate::fitment) fn beside(case: &Case<'_>, side: Side) -> Result<Self, Missing> {
        match side {
            Side::Outboard => Self::new(case, EndGap::Outer, Input::OuterClearance),
            Side::Inboard => Self::new(case, EndGap::Inner, Input::InnerClearance),
        }
    }

    /// The same above the tire.
    pub(in crate::fitment) fn above(case: &Case<'_>) -> Result<Self, Missing> {
        Self::new(case, EndGap::Upper, Input::UpperClearance)
    }

    /// The same, if it is known of both ends.
    pub(in crate::fitment) fn of_both_ends(self) -> Result<Self, Missing> {
        self.lacking.map_or(Ok(self), |input| Err(input.into()))
    }

    /// What is lacking of the other end.
    fn missing(&self) -> Missing {
        self.lacking.map_or_else(Missing::default, Missing::from)
    }

    /// As it was measured.
    fn now(&self) -> Toleranced<Length> {
        Toleranced::within(self.measured, self.uncertainty)
    }

    /// What a change from old to new leaves of it.
    fn left(&self, old: Toleranced<Length>, new: Toleranced<Length>) -> Toleranced<Length> {
        self.now() - (new - old)
    }

    /// Holds what is left of it against the least that must be.
    fn hold(&self, left: Toleranced<Length>) -> Finding {
        at_least(left, self.least, Value::Length, PLAIN, self.citation)
    }

    /// Both at once.
    pub(in crate::fitment) fn judge(&self, old: Toleranced<Length>, new: Toleranced<Length>) -> Finding {
        self.hold(self.left(old, new))
    }

    /// The other way round: how far what is new may reach for [`Gap::judge`] to find it inside, worst case
    /// included.
    pub(in crate::fitment) fn furthest(&self, old: Toleranced<Length>) -> Length {
        // In this order a larger gap never leaves less, not even in the last bit.
        old.min() + (self.measured - self.least - self.uncertainty)
    }
}

/// The tire that was on when the gaps were measured.
fn measured_tire(case: &Case<'_>) -> Option<MeasuredTire> {
    case.axle.space()?.measured_tire()
}

/// Whether that tire was under-inflated, by what a pressure monitor must warn of: a gap beside it is not the one
/// beside the tire as it runs, which is fuller. Without a placard nobody can say.
fn is_measured_soft(case: &Case<'_>) -> bool {
    let pressures = measured_tire(case).and_then(|tire| tire.pressure()).zip(case.axle.placard());
    pressures.is_some_and(|(pressure, placard)| no_more(in_kpa(pressure), in_kpa(placard) * MONITOR_SHARE))
}

/// A finding that rests on a measured gap: beside an under-inflated tire it is never better than marginal.
pub(super) fn of_gap(case: &Case<'_>, finding: Finding) -> Finding {
    if is_measured_soft(case) { finding.marginal_if(Verdict::Within, Reason::MeasuredSoft) } else { finding }
}

/// A wheel with its tire, or a pair of them, where it stands.
pub(in crate::fitment) struct Assembly {
    pub(in crate::fitment) centres: Centres,
    pub(in crate::fitment) half_tire: Toleranced<Length>,
    pub(in crate::fitment) half_rim: Toleranced<Length>,
}

impl Assembly {
    /// With the tire that was on when the gaps were measured.
    pub(in crate::fitment) fn original(case: &Case<'_>, setup: &SetupFacts<'_>) -> Result<Self, Missing> {
        let width = measured_tire(case).and_then(|measured| measured.width());
        let measured = width.map(|width| Toleranced::exact(width) * 0.5);
        need!(
            centres = setup.centres => OriginalInset,
            half_tire = measured.or(setup.half_tire) => OriginalDimensions,
        );
        Ok(Self { centres, half_tire, half_rim: setup.half_rim })
    }

    pub(super) fn proposed(setup: &SetupFacts<'_>) -> Result<Self, Missing> {
        need!(
            centres = setup.centres => WheelInset,
            half_tire = setup.half_tire => TireDimensions,
        );
        Ok(Self { centres, half_tire, half_rim: setup.half_rim })
    }

    /// Where it ends on a side, from the hub face outward on that side.
    pub(in crate::fitment) fn reach(&self, side: Side) -> Toleranced<Length> {
        let (tire, rim) = (self.half_tire, self.half_rim);
        let half = Toleranced::ordered(
            tire.min().max(rim.min()),
            tire.nominal().max(rim.nominal()),
            tire.max().max(rim.max()),
        );
        Toleranced::exact(self.centres.toward(side)) + half
    }

    /// Whether the rim stands out further than the tire, or may.
    fn is_led_by_rim(&self) -> bool {
        let (tire, rim) = (self.half_tire, self.half_rim);
        rim.nominal() > tire.nominal() || rim.max() > tire.max()
    }
}

impl Centres {
    /// The middle of the rim on a side, from the hub face outward on that side.
    pub(in crate::fitment) fn toward(self, side: Side) -> Length {
        match side {
            Side::Outboard => self.outer,
            Side::Inboard => -self.inner,
        }
    }
}

/// A gap, and what a change makes of it.
pub(super) struct GapChange {
    gap: Gap,
    old: Toleranced<Length>,
    new: Toleranced<Length>,
    /// Nothing changes that takes up room.
    same_body: bool,
    /// The tire that the gap was measured with was measured too.
    tire_measured: bool,
}

impl GapChange {
    fn of(
        case: &Case<'_>,
        gap: Gap,
        (old, new): (Toleranced<Length>, Toleranced<Length>),
        (original, proposed): (&Setup, &Setup),
    ) -> Self {
        let same_body = same_body(original, proposed);
        let sized = |m: MeasuredTire| m.width().or(m.diameter()).or(m.tread_depth()).is_some();
        Self { gap, old, new, same_body, tire_measured: measured_tire(case).is_some_and(sized) }
    }

    pub(super) fn above(case: &Case<'_>) -> Result<Self, Missing> {
        let gap = Gap::above(case)?;
        let (original, proposed) = case.both()?;
        let radii = both_of(original_radius(case, original), proposed_radius(proposed))?;
        Ok(Self::of(case, gap, radii, (original, proposed)))
    }

    /// With the proposed assembly.
    #[inline]
    fn beside(case: &Case<'_>, side: Side) -> Result<(Self, Assembly), Missing> {
        let gap = Gap::beside(case, side)?;
        let (original, proposed) = case.both()?;
        let (old, new) = both_of(Assembly::original(case, original), Assembly::proposed(proposed))?;
        let reach = (old.reach(side), new.reach(side));
        Ok((Self::of(case, gap, reach, (original, proposed)), new))
    }

    pub(super) fn inboard(case: &Case<'_>) -> Result<Self, Missing> {
        Ok(Self::beside(case, Side::Inboard)?.0)
    }

    pub(super) fn missing(&self) -> Missing {
        self.gap.missing()
    }

    fn is_unchanged(&self) -> bool {
        self.same_body && !self.tire_measured
    }

    /// What is left.
    pub(super) fn left(&self) -> Toleranced<Length> {
        if self.is_unchanged() { self.gap.now() } else { self.gap.left(self.old, self.new) }
    }

    fn judge(&self, case: &Case<'_>) -> Finding {
        let gap = &self.gap;
        let finding = of_gap(case, gap.hold(self.left()));
        // What the maker built is no fault of a change, but a caller's own limit stands.
        if gap.citation == Citation::CALLER {
            return finding;
        }
        if self.is_unchanged() {
            // Even what touches.
            let as_built = gap.least.min(gap.measured);
            return Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL)
                .reading(Value::Length(gap.measured), Bound::AtLeast(Value::Length(as_built)));
        }
        // A new tire of the same size where a smaller one was measured is no change of what was built.
        if self.same_body { finding.marginal_if(Verdict::Beyond, Reason::LargerOfSameSize) } else { finding }
    }
}

fn lateral(case: &Case<'_>, side: Side) -> Found {
    let (change, new) = GapChange::beside(case, side)?;
    let finding = change.judge(case);
    // The flanges are the least of the standard and shop habit, not measured.
    let is_by_flange = new.is_led_by_rim() && finding.reason != Reason::Unchanged;
    let finding =
        if is_by_flange { finding.marginal_if(Verdict::Within, Reason::FlangeAssumed) } else { finding };
    at_best(finding, change.gap.missing())
}

/// The radius of the tire that the gap was measured with.
///
/// Of a worn tire whose diameter was not measured, only the least is known: that of a new one less the
/// deepest tread it can have lost.
fn measured_radius(case: &Case<'_>, original: &SetupFacts<'_>) -> Option<Toleranced<Length>> {
    let measured = measured_tire(case);
    let depth = measured.and_then(|m| m.tread_depth());
    if let Some(diameter) = measured.and_then(|m| m.diameter()) {
        return Some(Toleranced::exact(diameter) * 0.5);
    }
    let new = original.diameter? * 0.5;
    Some(match depth {
        Some(depth) => {
            let deepest = original.tire().size().rules().new_tread_mm;
            let worn = units::mm((deepest - units::in_mm(depth)).max(0.0));
            Toleranced::ordered(new.min() - worn, new.nominal(), new.max())
        }
        None => new,
    })
}

/// The same for a check.
pub(in crate::fitment) fn original_radius(
    case: &Case<'_>,
    original: &SetupFacts<'_>,
) -> Result<Toleranced<Length>, Missing> {
    need!(radius = measured_radius(case, original) => OriginalDimensions);
    Ok(radius)
}

pub(super) fn proposed_radius(proposed: &SetupFacts<'_>) -> Result<Toleranced<Length>, Missing> {
    need!(diameter = proposed.largest_diameter => TireDimensions);
    Ok(diameter * 0.5)
}

pub(super) const UPPER_CLEARANCE: Definition =
    Definition::new(CheckId::UpperClearance, Harm::Contact, Run::Gap(EndGap::Upper, upper), DependsOn::Size)
        .vital()
        .of(Rules::Kind)
        .by_dimensions();

fn upper(case: &Case<'_>) -> Found {
    let change = GapChange::above(case)?;
    at_best(change.judge(case), change.gap.missing())
}

/// Whether nothing changes that takes up room.
pub(super) fn same_body(a: &Setup, b: &Setup) -> bool {
    a.tire().size() == b.tire().size()
        && a.wheel() == b.wheel()
        && a.hub_spacing() == b.hub_spacing()
        && a.is_snow() == b.is_snow()
}

impl Assembly {
    /// Tells how far what stands there ends on a side, at one end of its span.
    fn tell_reach(
        case: &Case<'_>,
        (setup, whose): (&SetupFacts<'_>, &str),
        side: Side,
        end: End,
        tell: &mut Teller<'_>,
    ) -> Option<f64> {
        let width = measured_tire(case).and_then(|tire| tire.width()).filter(|_| whose == told::ORIGINAL);
        let tire = match width {
            Some(width) => {
                let width =
                    told::measured(tell, "width of the tire that was on when the gap was measured", width);
                told::half(tell, width, format_args!("half of the width of that tire"))
            }
            None => told::half_tire(setup, whose, end, tell)?,
        };
        let rim = told::half_rim(setup, whose, end, tell);
        let is_outer = matches!(side, Side::Outboard);
        let centre = told::centre(case, setup, whose, is_outer, tell)?;
        let (form, toward, what) = match side {
            Side::Outboard => ("{0} + max({1}, {2})", centre, "outboard"),
            Side::Inboard => ("max({1}, {2}) − {0}", -centre, "inboard"),
        };
        let name = format_args!("{}reach of the {whose} wheel {what} of the hub face", end.word());
        Some(tell.worked(name, (form, &[centre, tire, rim]), toward + tire.max(rim), "mm", None))
    }

    /// Tells how far a proposed wheel reaches at most beyond the least of the original one.
    pub(super) fn tell_growth(case: &Case<'_>, side: Side, tell: &mut Teller<'_>) -> Option<[f64; 2]> {
        let (original, proposed) = case.both().ok()?;
        let old = Self::tell_reach(case, (original, told::ORIGINAL), side, End::Least, tell)?;
        let new = Self::tell_reach(case, (proposed, told::PROPOSED), side, End::Most, tell)?;
        Some([old, new])
    }
}

/// Tells the gap and by how much it may be off, and works out what is left at worst.
pub(super) fn tell_left(
    gap: (&str, Length),
    case: &Case<'_>,
    growth: Option<[f64; 2]>,
    tell: &mut Teller<'_>,
) -> f64 {
    let measured = told::measured(tell, gap.0, gap.1);
    let off = told::measured(tell, "what that may be off", case.gap_uncertainty());
    let name = format_args!("least that is left");
    match growth {
        Some([old, new]) => {
            let left = measured - off - (new - old);
            tell.worked(name, ("{0} − {1} − ({2} − {3})", &[measured, off, new, old]), left, "mm", None)
        }
        None => tell.worked(name, ("{0} − {1}", &[measured, off]), measured - off, "mm", None),
    }
}

impl GapChange {
    /// Tells how a finding of it comes about.
    fn tell(
        &self,
        case: &Case<'_>,
        check: &Check,
        name: &str,
        growth: impl FnOnce(&mut Teller<'_>) -> Option<[f64; 2]>,
        tell: &mut Teller<'_>,
    ) -> Option<()> {
        let gap = self.gap.measured;
        let Bound::AtLeast(least) = check.limit()? else { return None };
        if check.reason() == Reason::Unchanged {
            told::value(tell, format_args!("least gap, or what there was"), least, check.citation());
            told::measured(tell, name, gap);
            return Some(());
        }
        told::value(tell, format_args!("least that must be left"), least, check.citation());
        let growth = if self.is_unchanged() { None } else { Some(growth(tell)?) };
        tell_left((name, gap), case, growth, tell);
        Some(())
    }

    /// Tells what is left of a gap above or inboard of the tire.
    pub(super) fn tell_gap(case: &Case<'_>, is_above: bool, tell: &mut Teller<'_>) -> Option<()> {
        let (change, name) = if is_above {
            (Self::above(case).ok()?, "gap above the tire")
        } else {
            (Self::inboard(case).ok()?, "gap inboard of the wheel")
        };
        let growth = match change.is_unchanged() {
            true => None,
            false if is_above => Some(tell_radii(case, tell)?),
            false => Some(Assembly::tell_growth(case, Side::Inboard, tell)?),
        };
        tell_left((name, change.gap.measured), case, growth, tell);
        Some(())
    }
}

fn tell_lateral(case: &Case<'_>, check: &Check, side: Side, name: &str, tell: &mut Teller<'_>) -> Option<()> {
    let (change, _) = GapChange::beside(case, side).ok()?;
    change.tell(case, check, name, |tell| Assembly::tell_growth(case, side, tell), tell)
}

pub(in crate::fitment) fn tell_outer_clearance(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    tell_lateral(case, check, Side::Outboard, "gap outboard of the wheel", tell)
}

pub(in crate::fitment) fn tell_inner_clearance(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    tell_lateral(case, check, Side::Inboard, "gap inboard of the wheel", tell)
}

pub(in crate::fitment) fn tell_upper_clearance(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let change = GapChange::above(case).ok()?;
    change.tell(case, check, "gap above the tire", |tell| tell_radii(case, tell), tell)
}

/// The least radius of the tire that the gap was measured with, and the largest of the proposed one.
fn tell_radii(case: &Case<'_>, tell: &mut Teller<'_>) -> Option<[f64; 2]> {
    let (original, proposed) = case.both().ok()?;
    let old = tell_original_radius(case, original, End::Least, tell)?;
    Some([old, told::radius(proposed, told::PROPOSED, End::Most, true, tell)?])
}

/// Tells how one end of [`original_radius`] comes about.
pub(super) fn tell_original_radius(
    case: &Case<'_>,
    original: &SetupFacts<'_>,
    end: End,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    let measured = measured_tire(case);
    if let Some(diameter) = measured.and_then(|tire| tire.diameter()) {
        let diameter = told::measured(tell, "diameter of the tire that was on", diameter);
        return Some(told::half(tell, diameter, format_args!("its radius")));
    }
    let new = told::radius(original, told::ORIGINAL, end, false, tell)?;
    let Some(depth) = measured.and_then(|tire| tire.tread_depth()).filter(|_| end == End::Least) else {
        return Some(new);
    };
    let deepest = original.tire().size().rules().new_tread_mm;
    tell.given(format_args!("tread of a new tire"), deepest, "mm", Citation::NEW_TREAD);
    let depth = told::measured(tell, "tread of the tire that was on", depth);
    let worn = new - (deepest - depth).max(0.0);
    let form = ("{0} − max({1} − {2}, 0)", &[new, deepest, depth][..]);
    Some(tell.worked(format_args!("its least radius"), form, worn, "mm", Citation::NEW_TREAD))
}
