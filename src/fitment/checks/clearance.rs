//! What is left of the measured gaps, at ride height and straight ahead.

use crate::fitment::Setup;
use crate::fitment::case::{Case, is_passenger, need};
use crate::fitment::check::{Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, at_least};
use crate::fitment::reading::{Bound, Reading};
use crate::rim::Contour;
use crate::units::{self, Length};
use crate::vehicle::MeasuredTire;
use crate::{Citation, Toleranced};

/// Which way a gap is measured.
#[derive(Clone, Copy)]
enum Side {
    Outboard,
    Inboard,
}

pub(super) fn outer(case: &Case<'_>) -> Found {
    need!(gap = case.axle.gaps().and_then(|s| s.outer_clearance()) => OuterClearance);
    lateral(case, gap, Side::Outboard)
}

pub(super) fn inner(case: &Case<'_>) -> Found {
    need!(gap = case.axle.gaps().and_then(|s| s.inner_clearance()) => InnerClearance);
    lateral(case, gap, Side::Inboard)
}

/// Half the width of a tire on its rim.
fn half_tire(setup: &Setup, measured: Option<Length>) -> Option<Toleranced<Length>> {
    match measured {
        Some(width) => Some(Toleranced::exact(width) * 0.5),
        None => Some(setup.tire().size().section_width_on(setup.wheel().size().width())? * 0.5),
    }
}

/// Half the width of a rim over its flanges; a contour that is not known is taken as J.
fn half_rim(setup: &Setup) -> Toleranced<Length> {
    let size = setup.wheel().size();
    Toleranced::exact(size.width().length() / 2.0) + size.contour().unwrap_or(Contour::J).flange_width()
}

/// The tire that was on when the gaps were measured.
fn measured_tire(case: &Case<'_>) -> Option<MeasuredTire> {
    case.axle.gaps()?.measured_tire()
}

/// Where the assembly ends on a side, from the hub face outward on that side.
fn reach(
    centres: (Length, Length),
    tire: Toleranced<Length>,
    rim: Toleranced<Length>,
    side: Side,
) -> Toleranced<Length> {
    let centre = match side {
        Side::Outboard => centres.0,
        Side::Inboard => -centres.1,
    };
    let half = Toleranced::ordered(
        tire.min().max(rim.min()),
        tire.nominal().max(rim.nominal()),
        tire.max().max(rim.max()),
    );
    Toleranced::exact(centre) + half
}

fn lateral(case: &Case<'_>, gap: Length, side: Side) -> Found {
    let (original, proposed) = case.both()?;
    let measured = measured_tire(case).and_then(|m| m.width());
    need!(
        old_centres = case.rim_centres(&original) => OriginalInset,
        new_centres = case.rim_centres(&proposed) => WheelInset,
        old_tire = half_tire(&original, measured) => OriginalDimensions,
        tire = half_tire(&proposed, None) => TireDimensions,
    );
    let rim = half_rim(&proposed);
    let old = reach(old_centres, old_tire, half_rim(&original), side);
    let new = reach(new_centres, tire, rim, side);
    let mut finding = left(case, gap, new - old, &original, &proposed);
    // The flanges are the least of the standard and shop habit, not measured.
    let rim_decides = rim.nominal() > tire.nominal() || rim.max() > tire.max();
    if rim_decides && finding.reason != Reason::Unchanged {
        finding = finding.marginal_if(Verdict::Within, Reason::FlangeAssumed);
    }
    Ok(finding)
}

/// The radius of the tire that the gap was measured with.
///
/// Of a worn tire whose diameter was not measured, only the least is known: that of a new one less the
/// deepest tread it can have lost.
fn measured_radius(original: &Setup, measured: Option<MeasuredTire>) -> Option<Toleranced<Length>> {
    let depth = measured.and_then(|m| m.tread_depth());
    if let Some(diameter) = measured.and_then(|m| m.diameter()) {
        return Some(Toleranced::exact(diameter) * 0.5);
    }
    let new = original.tire().size().overall_diameter()? * 0.5;
    Some(match depth {
        Some(depth) => {
            let deepest = if is_passenger(&original.tire()) { NEW_TREAD_CAR } else { NEW_TREAD_OTHER };
            let worn = units::mm((deepest - units::in_mm(depth)).max(0.0));
            Toleranced::ordered(new.min() - worn, new.nominal(), new.max())
        }
        None => new,
    })
}

/// Deepest tread of a new tire, mm: common practice, no source ([`Citation::NEW_TREAD`]).
const NEW_TREAD_CAR: f64 = 9.0;
const NEW_TREAD_OTHER: f64 = 18.0;

pub(super) fn upper(case: &Case<'_>) -> Found {
    need!(gap = case.axle.gaps().and_then(|s| s.upper_clearance()) => UpperClearance);
    let (original, proposed) = case.both()?;
    let size = proposed.tire().size();
    let largest = if proposed.is_snow() { size.overall_diameter_snow() } else { size.overall_diameter() };
    need!(old = measured_radius(&original, measured_tire(case)) => OriginalDimensions, new = largest => TireDimensions);
    let new = new * 0.5;
    Ok(left(case, gap, new - old, &original, &proposed))
}

/// The gap less the growth, held against the smaller of the limit and what there was.
fn left(
    case: &Case<'_>,
    gap: Length,
    growth: Toleranced<Length>,
    original: &Setup,
    proposed: &Setup,
) -> Finding {
    let limit = case.limits.clearance();
    let (least, citation) =
        if gap < limit.value() { (gap, Citation::ORIGINAL) } else { (limit.value(), limit.citation()) };
    let uncertainty = case.axle.gaps().and_then(|s| s.uncertainty()).unwrap_or_default();
    let same_body = same_body(original, proposed);
    if same_body && measured_tire(case).is_none() {
        return Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL)
            .reading(Reading::Length(gap), Bound::AtLeast(Reading::Length(least)));
    }
    let finding =
        at_least(Toleranced::within(gap, uncertainty) - growth, least, Reading::Length, PLAIN, citation);
    // A new tire of the same size where a smaller one was measured is no change of what was built.
    if same_body { finding.marginal_if(Verdict::Beyond, Reason::LargerOfSameSize) } else { finding }
}

/// Whether nothing changes that takes up room.
fn same_body(a: &Setup, b: &Setup) -> bool {
    a.tire().size() == b.tire().size()
        && a.wheel() == b.wheel()
        && a.standoff() == b.standoff()
        && a.is_snow() == b.is_snow()
}
