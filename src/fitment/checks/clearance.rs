//! What is left of the measured gaps, at ride height and straight ahead.

use crate::fitment::Setup;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, at_least};
use crate::fitment::reading::{Bound, Reading};
use crate::rim::Contour;
use crate::units::{self, Length};
use crate::vehicle::{MeasuredTire, Space};
use crate::{Citation, Toleranced};

/// Which way a gap is measured.
#[derive(Clone, Copy)]
enum Side {
    Outboard,
    Inboard,
}

pub(super) fn outer(case: &Case<'_>) -> Found {
    need!(gap = case.axle.space().and_then(|s| s.outer_clearance()) => OuterClearance);
    lateral(case, gap, Side::Outboard)
}

pub(super) fn inner(case: &Case<'_>) -> Found {
    need!(gap = case.axle.space().and_then(|s| s.inner_clearance()) => InnerClearance);
    lateral(case, gap, Side::Inboard)
}

/// Half the width of tire or rim, whichever is wider.
fn half_width(setup: &Setup, measured: Option<Length>) -> Toleranced<Length> {
    let size = setup.wheel().size();
    let tire = match measured {
        Some(width) => Toleranced::exact(width),
        None => setup.tire().size().section_width_on(size.width()),
    } * 0.5;
    let flange = size.contour().unwrap_or(Contour::J).flange_width();
    let rim = Toleranced::exact(size.width().length() / 2.0) + flange;
    let wider = |a: Length, b: Length| if a < b { b } else { a };
    Toleranced::ordered(
        wider(tire.min(), rim.min()),
        wider(tire.nominal(), rim.nominal()),
        wider(tire.max(), rim.max()),
    )
}

/// Where the assembly ends on a side, from the hub face outward on that side.
fn reach(setup: &Setup, side: Side, measured: Option<Length>) -> Option<Toleranced<Length>> {
    let centre = setup.rim_centre()?;
    let centre = match side {
        Side::Outboard => centre,
        Side::Inboard => -centre,
    };
    Some(Toleranced::exact(centre) + half_width(setup, measured))
}

fn lateral(case: &Case<'_>, gap: Length, side: Side) -> Found {
    let (original, proposed) = case.both()?;
    let measured = case.axle.space().and_then(|s| s.measured_tire());
    need!(
        old = reach(&original, side, measured.and_then(|m| m.width())) => OriginalInset,
        new = reach(&proposed, side, None) => WheelInset,
    );
    Ok(left(case, gap, new - old, &original, &proposed))
}

/// Tread depth of a new tire where only the depth of a worn one is known: common practice, no source.
const NEW_TREAD_MM: f64 = 8.0;

/// The radius of the tire that the gap was measured with.
fn measured_radius(original: &Setup, measured: Option<MeasuredTire>) -> Toleranced<Length> {
    let new = original.tire().size().overall_diameter();
    match measured.map(|m| (m.diameter(), m.tread_depth())) {
        Some((Some(diameter), _)) => Toleranced::exact(diameter) * 0.5,
        Some((None, Some(depth))) => {
            let worn = units::mm((NEW_TREAD_MM - units::in_mm(depth)).max(0.0));
            new * 0.5 - Toleranced::exact(worn)
        }
        _ => new * 0.5,
    }
}

pub(super) fn upper(case: &Case<'_>) -> Found {
    need!(gap = case.axle.space().and_then(|s| s.upper_clearance()) => UpperClearance);
    let (original, proposed) = case.both()?;
    let size = proposed.tire().size();
    let new = if proposed.is_snow() { size.overall_diameter_snow() } else { size.overall_diameter() } * 0.5;
    let old = measured_radius(&original, case.axle.space().and_then(|s| s.measured_tire()));
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
    let space = case.axle.space();
    let limit = case.limits.clearance();
    let (least, citation) =
        if gap < limit.value() { (gap, Citation::ORIGINAL) } else { (limit.value(), limit.citation()) };
    let same = same_body(original, proposed) && space.and_then(|s| s.measured_tire()).is_none();
    if same {
        return Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL)
            .reading(Reading::Length(gap), Bound::AtLeast(Reading::Length(least)));
    }
    let uncertainty = space.and_then(|s: Space| s.uncertainty()).unwrap_or_default();
    at_least(Toleranced::within(gap, uncertainty) - growth, least, Reading::Length, PLAIN, citation)
}

/// Whether nothing changes that takes up room.
fn same_body(a: &Setup, b: &Setup) -> bool {
    a.tire().size() == b.tire().size()
        && a.wheel() == b.wheel()
        && a.spacer().unwrap_or_default() == b.spacer().unwrap_or_default()
        && a.is_snow() == b.is_snow()
}
