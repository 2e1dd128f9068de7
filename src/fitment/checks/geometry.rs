//! What changes in diameter, track and steering.

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::Limit;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{CheckId, Missing, Reason, Verdict};
use crate::fitment::facts::Centres;
use crate::fitment::finding::{Finding, Found, PLAIN, at_most, no_more};
use crate::fitment::value::{Bound, Value};
use crate::units::{self, Angle, Length, Ratio, in_mm};
use crate::wheel::position::{SteeringGeometry, track_change};
use crate::{Citation, Status, Toleranced};

/// The limit on one side, of one given as a share and one given as a length: the smaller, but a share
/// that is common practice yields to anybody's length.
fn tighter(share: Limit<Length>, length: Option<Limit<Length>>) -> Limit<Length> {
    let is_practice = share.citation().status() == Status::CommonPractice;
    length.filter(|length| is_practice || length.value() < share.value()).unwrap_or(share)
}

/// The overall diameters that are not beyond, where that of the original is known.
pub(in crate::fitment) fn diameter_window(case: &Case<'_>) -> Option<(Length, Length)> {
    case.vehicle.kind()?;
    let old = case.original?.nominal_diameter?;
    let TwoSided { loss, growth } = TwoSided::of_diameter(case, old);
    Some((old - loss.value(), old + growth.value()))
}

/// A share of a length as a length.
fn share_of(whole: Length, share: Limit<Ratio>) -> Limit<Length> {
    Limit::new(whole * share.value(), share.citation())
}

/// The most that something may shrink and grow, each by whose word.
struct TwoSided {
    loss: Limit<Length>,
    growth: Limit<Length>,
}

impl TwoSided {
    /// Of the overall diameter of an original.
    fn of_diameter(case: &Case<'_>, old: Length) -> Self {
        let limits = case.limits;
        Self {
            loss: tighter(share_of(old, limits.diameter_loss_share()), limits.diameter_loss()),
            growth: tighter(share_of(old, limits.diameter_growth_share()), limits.diameter_growth()),
        }
    }

    /// The limit on the side of the change owns it.
    fn judge(&self, change: Length, wrap: impl Fn(Length) -> Value) -> Finding {
        let most = if change.value >= 0.0 { self.growth } else { self.loss };
        let inside = in_mm(change).abs() <= in_mm(most.value()) + 1e-9;
        let (verdict, reason) = if in_mm(change) == 0.0 {
            (Verdict::Within, Reason::Unchanged)
        } else {
            PLAIN.judge(inside, inside)
        };
        let bound = Bound::Between(wrap(-self.loss.value()), wrap(self.growth.value()));
        Finding::new(verdict, reason, most.citation()).reading(wrap(change), bound)
    }
}

pub(super) const OVERALL_DIAMETER: Definition =
    Definition::new(CheckId::OverallDiameter, Harm::Practice, Run::Axle(overall_diameter), DependsOn::Size)
        .of(Rules::Kind)
        .by_dimensions();

fn overall_diameter(case: &Case<'_>) -> Found {
    let (old, new) = case.diameters()?;
    Ok(TwoSided::of_diameter(case, old).judge(new - old, |length| Value::Ratio(length / old)))
}

pub(super) const RIDE_HEIGHT: Definition =
    Definition::new(CheckId::RideHeight, Harm::Practice, Run::Axle(ride_height), DependsOn::Size)
        .by_dimensions();

/// How the vehicle stands is a move; it is judged only where the caller limits it.
fn ride_height(case: &Case<'_>) -> Found {
    case.proposed()?;
    let Some(most) = case.limits.own_ride_height_change() else {
        return Ok(Finding::not_applicable(Reason::HeightFree));
    };
    let (old, new) = case.diameters()?;
    let own = Limit::new(most, Citation::CALLER);
    Ok(TwoSided { loss: own, growth: own }.judge((new - old) / 2.0, Value::Length))
}

/// How much an axle's track grows with the middles of its wheels: both sides move alike, and furthest when
/// upright.
pub(in crate::fitment) fn track_growth(old: Centres, new: Centres) -> Toleranced<Length> {
    let moved = new.middle() - old.middle();
    Toleranced::exact(track_change(moved, moved, Angle::default()))
}

/// The most that the track may grow, and by whose word; nothing where nobody limits it.
pub(in crate::fitment) fn max_track_growth(case: &Case<'_>) -> Result<Option<Limit<Length>>, Missing> {
    let length = case.limits.track_growth();
    let Some(share) = case.limits.track_growth_share() else { return Ok(length) };
    need!(track = case.axle.track() => Track);
    Ok(Some(tighter(share_of(track, share), length)))
}

/// Holds the growth of the track against the most it may be.
pub(in crate::fitment) fn judge_track(growth: Toleranced<Length>, most: Option<Limit<Length>>) -> Finding {
    match most {
        Some(most) => at_most(growth, most.value(), Value::Length, PLAIN, most.citation()),
        None => Finding::new(Verdict::Within, Reason::Inside, Citation::TRACK_GROWTH),
    }
}

pub(super) const TRACK: Definition =
    Definition::new(CheckId::Track, Harm::Practice, Run::Axle(track), DependsOn::Inset).of(Rules::Kind);

fn track(case: &Case<'_>) -> Found {
    let (original, proposed) = case.both()?;
    if case.is_motorcycle() {
        return Ok(Finding::not_applicable(Reason::NoTrack));
    }
    need!(old = original.centres => OriginalInset, new = proposed.centres => WheelInset);
    let growth = track_growth(old, new);
    // A length that is exceeded decides by itself, whatever the track is.
    let length = case.limits.track_growth();
    if length.is_some_and(|most| !no_more(in_mm(growth.max()), in_mm(most.value()))) {
        return Ok(judge_track(growth, length));
    }
    let most = match (max_track_growth(case), case.limits.track_growth_share()) {
        // A track that does not grow is inside any share of itself.
        (Err(_), Some(share)) if no_more(in_mm(growth.max()), 0.0) => {
            Some(Limit::new(Length::default(), share.citation()))
        }
        (most, _) => most?,
    };
    Ok(judge_track(growth, most))
}

pub(super) const SCRUB_RADIUS: Definition =
    Definition::new(CheckId::ScrubRadius, Harm::Practice, Run::SteeredAxle(scrub_radius), DependsOn::Inset)
        .of(Rules::Kind);

fn scrub_radius(case: &Case<'_>) -> Found {
    let (original, proposed) = case.both()?;
    if case.is_motorcycle() {
        return Ok(Finding::not_applicable(Reason::NoTrack));
    }
    if case.is_trailer() && case.axle.steering().is_none() {
        return Ok(Finding::not_applicable(Reason::NotSteered));
    }
    need!(
        old = original.centres => OriginalInset,
        new = proposed.centres => WheelInset,
        axis = case.axle.steering().and_then(|s| s.scrub_radius().zip(s.kingpin_inclination())) => SteeringAxis,
    );
    let (scrub, inclination) = axis;
    let camber = case.axle.camber().unwrap_or_default();
    need!(lean = SteeringGeometry::new(inclination, camber).ok() => SteeringAxis);
    let (old_diameter, new_diameter) = case.diameters()?;
    let rise = (new_diameter - old_diameter) / 2.0;
    let after = scrub + lean.scrub_change(new.middle() - old.middle(), rise);
    let none = Value::Length(units::mm(0.0));
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
    Ok(Finding::new(verdict, reason, lean.citation()).reading(Value::Length(after), bound))
}
