//! What changes in diameter, track and steering.

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::Limit;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Check, CheckId, Missing, Reason, Verdict};
use crate::fitment::facts::Centres;
use crate::fitment::finding::{Finding, Found, PLAIN, at_most, no_more};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::{End, Teller};
use crate::units::{self, Angle, Length, Ratio, in_mm, in_percent};
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
    #[inline(always)]
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

impl TwoSided {
    /// Tells how much an original diameter may change on either side, in percent of it.
    fn tell_of_diameter(case: &Case<'_>, old: Length, tell: &mut Teller<'_>) {
        let limits = case.limits;
        let Self { loss, growth } = Self::of_diameter(case, old);
        let sides = [
            ("greatest loss", loss, limits.diameter_loss_share(), "0 − {0}", "0 − {0} / {1} × 100", -1.0),
            ("greatest growth", growth, limits.diameter_growth_share(), "{0}", "{0} / {1} × 100", 1.0),
        ];
        for (what, most, share, of_share, of_length, sign) in sides {
            if most == share_of(old, share) {
                let share =
                    tell.given(format_args!("{what}"), in_percent(share.value()), "%", share.citation());
                tell.worked(
                    format_args!("{what}, with its sign"),
                    (of_share, &[share]),
                    sign * share,
                    "%",
                    None,
                );
            } else {
                let length = told::limit(tell, what, most);
                let (numbers, share) = ([length, in_mm(old)], sign * length / in_mm(old) * 100.0);
                let name = format_args!("{what}, in percent of the original");
                tell.worked(name, (of_length, &numbers), share, "%", most.citation());
            }
        }
    }
}

pub(in crate::fitment) fn tell_overall_diameter(case: &Case<'_>, tell: &mut Teller<'_>) -> Option<()> {
    let (old, new) = told_diameters(case, tell)?;
    TwoSided::tell_of_diameter(case, units::mm(old), tell);
    let name = format_args!("change of overall diameter");
    tell.worked(name, ("({0} − {1}) / {1} × 100", &[new, old]), (new - old) / old * 100.0, "%", None);
    Some(())
}

/// Nominal diameters, the original one first.
fn told_diameters(case: &Case<'_>, tell: &mut Teller<'_>) -> Option<(f64, f64)> {
    let (original, proposed) = case.both().ok()?;
    let old = told::diameter(original, told::ORIGINAL, End::Nominal, false, tell)?;
    Some((old, told::diameter(proposed, told::PROPOSED, End::Nominal, false, tell)?))
}

pub(in crate::fitment) fn tell_ride_height(case: &Case<'_>, tell: &mut Teller<'_>) -> Option<()> {
    let most = Limit::new(case.limits.own_ride_height_change()?, Citation::CALLER);
    let most = told::limit(tell, "greatest change of height", most);
    tell.worked(format_args!("the same of a loss"), ("0 − {0}", &[most]), -most, "mm", None);
    let (old, new) = told_diameters(case, tell)?;
    tell.worked(
        format_args!("change of height"),
        ("({0} − {1}) / 2", &[new, old]),
        (new - old) / 2.0,
        "mm",
        None,
    );
    Some(())
}

pub(in crate::fitment) fn tell_track(case: &Case<'_>, check: &Check, tell: &mut Teller<'_>) -> Option<()> {
    let (original, proposed) = case.both().ok()?;
    let limits = case.limits;
    if let (Some(Bound::AtMost(Value::Length(most))), source) = (check.limit(), check.citation()) {
        let is = |limit: Limit<Length>| limit.value() == most && Some(limit.citation()) == source;
        match (
            limits.track_growth().filter(|&limit| is(limit)),
            limits.track_growth_share(),
            case.axle.track(),
        ) {
            (Some(length), ..) => {
                told::limit(tell, "greatest growth of track", length);
            }
            (None, Some(share), Some(track)) => {
                let track = told::measured(tell, "track", track);
                let percent = in_percent(share.value());
                tell.given(
                    format_args!("share of it that the track may grow"),
                    percent,
                    "%",
                    share.citation(),
                );
                let form = ("{0} × {1} / 100", &[track, percent][..]);
                tell.worked(format_args!("greatest growth of track"), form, in_mm(most), "mm", source);
            }
            _ => {
                told::nothing(tell, limits.track_growth_share()?.citation());
            }
        }
    }
    let old = told::middle(case, original, told::ORIGINAL, tell)?;
    let new = told::middle(case, proposed, told::PROPOSED, tell)?;
    let name = format_args!("growth of track");
    tell.worked(name, ("2 × ({0} − {1})", &[new, old]), 2.0 * (new - old), "mm", None);
    Some(())
}

pub(in crate::fitment) fn tell_scrub_radius(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let (original, proposed) = case.both().ok()?;
    let steering = case.axle.steering()?;
    let scrub = told::measured(tell, "scrub radius before", steering.scrub_radius()?);
    let old = told::middle(case, original, told::ORIGINAL, tell)?;
    let new = told::middle(case, proposed, told::PROPOSED, tell)?;
    let (old_diameter, new_diameter) = told_diameters(case, tell)?;
    let camber = units::in_deg(case.axle.camber().unwrap_or_default());
    let inclination = units::in_deg(steering.kingpin_inclination()?);
    tell.given(format_args!("kingpin inclination"), inclination, "deg", None);
    tell.given(format_args!("camber"), camber, "deg", None);
    told::nothing(tell, Citation::SCRUB);
    let Value::Length(after) = check.measured()? else { return None };
    let form = "{0} + ({1} − {2}) × cos({3} + {4}) / cos({3}) − ({5} − {6}) / 2 × (tan({3}) + tan({4}))";
    let numbers = [scrub, new, old, inclination, camber, new_diameter, old_diameter];
    tell.worked(format_args!("scrub radius after"), (form, &numbers), in_mm(after), "mm", Citation::SCRUB);
    Some(())
}
