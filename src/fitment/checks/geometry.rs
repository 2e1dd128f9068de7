//! What changes in diameter, track and steering.

use crate::fitment::Limit;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, at_most, no_more};
use crate::fitment::reading::{Bound, Reading};
use crate::units::{self, Angle, Length, in_mm};
use crate::wheel::{SteeringLean, track_change};
use crate::{Citation, Status, Toleranced};

/// The limit on one side, of one given as a share and one given as a length: the smaller, but a share
/// that is common practice yields to anybody's length.
fn tighter(share: Option<(Length, Citation)>, length: Option<Limit<Length>>) -> Option<(Length, Citation)> {
    let length = length.map(|l| (l.value(), l.citation()));
    match (share, length) {
        (Some(share), Some(length)) => {
            let yields = share.1.status() == Status::CommonPractice;
            Some(if yields || length.0 < share.0 { length } else { share })
        }
        (share, length) => share.or(length),
    }
}

pub(super) fn overall_diameter(case: &Case<'_>) -> Found {
    let (original, proposed) = case.both()?;
    need!(
        old = original.tire().size().overall_diameter_nominal() => OriginalDimensions,
        new = proposed.tire().size().overall_diameter_nominal() => TireDimensions,
    );
    let share = case.limits.diameter_share().map(|l| (old * l.value(), l.citation()));
    let growth = tighter(share, case.limits.diameter_growth());
    let loss = tighter(share, case.limits.diameter_loss());

    let change = new - old;
    let percent = |length: Length| Reading::Ratio(length / old);
    let measured = percent(change);
    // The bound on the side of the change owns it.
    let side = if change.value >= 0.0 { growth } else { loss };
    let citation = side.map_or(Citation::DIAMETER_CHANGE, |(_, c)| c);
    let inside = side.is_none_or(|(most, _)| in_mm(change).abs() <= in_mm(most) + 1e-9);
    let (verdict, reason) =
        if old == new { (Verdict::Within, Reason::Unchanged) } else { PLAIN.judge(inside, inside) };
    let bound = match (loss, growth) {
        (Some((loss, _)), Some((growth, _))) => Bound::Between(percent(-loss), percent(growth)),
        (Some((loss, _)), None) => Bound::AtLeast(percent(-loss)),
        (None, Some((growth, _))) => Bound::AtMost(percent(growth)),
        (None, None) => return Ok(Finding::new(verdict, reason, citation)),
    };
    Ok(Finding::new(verdict, reason, citation).reading(measured, bound))
}

pub(super) fn track(case: &Case<'_>) -> Found {
    let (original, proposed) = case.both()?;
    need!(old = case.side_centre(&original) => OriginalInset, new = case.side_centre(&proposed) => WheelInset);
    // Both sides of the axle move alike, and furthest when upright.
    let growth = Toleranced::exact(track_change(new - old, new - old, Angle::default()));
    let (share, length) = (case.limits.track_growth_share(), case.limits.track_growth());
    // A length that is exceeded decides by itself, whatever the track is.
    if let Some(most) = length.filter(|l| !no_more(in_mm(growth.max()), in_mm(l.value()))) {
        return Ok(at_most(growth, most.value(), Reading::Length, PLAIN, most.citation()));
    }
    let share = match share {
        Some(limit) => {
            need!(track = case.axle.track() => Track);
            Some((track * limit.value(), limit.citation()))
        }
        None => None,
    };
    let Some((most, citation)) = tighter(share, length) else {
        return Ok(Finding::new(Verdict::Within, Reason::Inside, Citation::TRACK_GROWTH));
    };
    Ok(at_most(growth, most, Reading::Length, PLAIN, citation))
}

pub(super) fn scrub_radius(case: &Case<'_>) -> Found {
    let (original, proposed) = case.both()?;
    need!(
        old = case.side_centre(&original) => OriginalInset,
        new = case.side_centre(&proposed) => WheelInset,
        axis = case.axle.steering().and_then(|s| s.scrub_radius().zip(s.kingpin_inclination())) => SteeringAxis,
    );
    let (scrub, inclination) = axis;
    let camber = case.axle.camber().unwrap_or_default();
    need!(lean = SteeringLean::new(inclination, camber).ok() => SteeringAxis);
    need!(
        old_diameter = original.tire().size().overall_diameter_nominal() => OriginalDimensions,
        new_diameter = proposed.tire().size().overall_diameter_nominal() => TireDimensions,
    );
    let rise = (new_diameter - old_diameter) / 2.0;
    let after = scrub + lean.scrub_change(new - old, rise);
    let none = Reading::Length(units::mm(0.0));
    let (bound, reversed) = if scrub.value < 0.0 {
        (Bound::AtMost(none), after.value > 0.0)
    } else {
        (Bound::AtLeast(none), after.value < 0.0)
    };
    let (verdict, reason) = if reversed {
        (Verdict::Marginal, Reason::ScrubReversed)
    } else {
        (Verdict::Within, Reason::ScrubKept)
    };
    Ok(Finding::new(verdict, reason, lean.citation()).reading(Reading::Length(after), bound))
}
