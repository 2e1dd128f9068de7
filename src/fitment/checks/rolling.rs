//! What the driven wheels tell the speedometer, the odometer and the gearbox.

use super::definition::{Definition, DependsOn, Harm, Run};
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Check, CheckId, Input, Missing, Position, Reason, Verdict};
use crate::fitment::facts::{AxleFacts, SetupFacts};
use crate::fitment::finding::{Finding, Found, Why, no_more};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::{End, Teller};
use crate::tire::rolling::SpeedometerLaw;
use crate::units::{self, in_kmh, in_mm, in_percent, in_ratio};
use crate::vehicle::{Drive, Kind};
use crate::{Citation, Toleranced};

pub(in crate::fitment) fn is_driven(axle: &AxleFacts<'_>, drive: Drive) -> bool {
    matches!(
        (drive, axle.place),
        (Drive::All, _) | (Drive::Front, Position::Front) | (Drive::Rear, Position::Rear)
    )
}

/// Over-read of the speedometer after the change, as shares of true speed: least, nominal, greatest over
/// the tolerance of the new tire, or over the over-reads the original may have.
#[derive(Clone, Copy)]
struct OverRead {
    least: f64,
    nominal: Option<f64>,
    greatest: f64,
    /// Whether the size of the tire stays.
    unchanged: bool,
}

/// The law for a kind of vehicle.
///
/// It is judged at 40, 80 and 120 km/h and at top speed; the share that the law allows falls with speed, so
/// that top speed is where it is tightest and the others need no look.
const fn law_for(kind: Kind) -> SpeedometerLaw {
    match kind {
        Kind::Motorcycle => SpeedometerLaw::UnR39Motorcycle,
        _ => SpeedometerLaw::UnR39,
    }
}

/// The true speed behind an indication, of the one there was behind it before: a turn of the wheel by a turn of the
/// original's, over the tolerance of the new tire. A size that stays changes nothing.
pub(in crate::fitment) fn true_speed_share(
    original: &SetupFacts<'_>,
    proposed: &SetupFacts<'_>,
) -> Result<Toleranced<f64>, Missing> {
    need!(old = original.circumference() => OriginalDimensions, new = proposed.circumference() => TireDimensions);
    Ok(if original.tire().size() == proposed.tire().size() {
        Toleranced::exact(1.0)
    } else {
        new.map(|new| in_mm(new) / in_mm(old.nominal()))
    })
}

#[inline(always)]
fn over_read(case: &Case<'_>, legal: f64) -> Result<OverRead, Missing> {
    let (original, proposed) = case.both()?;
    let x = true_speed_share(original, proposed)?;
    let unchanged = original.tire().size() == proposed.tire().size();
    let after = |before: f64, x: f64| (1.0 + before) / x - 1.0;
    Ok(match case.vehicle.over_read().map(in_ratio) {
        Some(before) => OverRead {
            least: after(before, x.max()),
            nominal: Some(after(before, x.nominal())),
            greatest: after(before, x.min()),
            unchanged,
        },
        // The original was legal: its over-read was from nothing to the greatest legal one.
        None => {
            OverRead { least: after(0.0, x.max()), nominal: None, greatest: after(legal, x.min()), unchanged }
        }
    })
}

pub(super) const SPEEDOMETER: Definition =
    Definition::new(CheckId::Speedometer, Harm::Law, Run::Vehicle(speedometer), DependsOn::Size)
        .by_dimensions();

fn speedometer(axles: &[Option<Case<'_>>; 2]) -> Found {
    let mut worst: Option<(Finding, f64)> = None;
    for case in axles.iter().flatten() {
        need!(drive = case.vehicle.drive() => Drive);
        if drive == Drive::None {
            need!(kind = case.vehicle.kind() => Kind);
            if kind != Kind::Trailer {
                return Err(Input::Drive.into());
            }
            return Ok(Finding::not_applicable(Reason::NoSpeedometer));
        }
        if is_driven(case, drive) {
            let (finding, room) = axle_speedometer(case)?;
            let better = worst.as_ref().is_some_and(|(w, least)| {
                (w.verdict.gravity(), -least) >= (finding.verdict.gravity(), -room)
            });
            if !better {
                worst = Some((finding, room));
            }
        }
    }
    // Without one, the driven axle is not among those given.
    worst.map(|(finding, _)| finding).ok_or(Input::ProposedSetup.into())
}

/// The finding for one driven axle, and the room it leaves on its tighter side.
#[inline(always)]
fn axle_speedometer(case: &Case<'_>) -> Result<(Finding, f64), Missing> {
    need!(kind = case.vehicle.kind() => Kind, top_speed = case.vehicle.top_speed() => TopSpeed);
    let law = law_for(kind);
    let legal = in_ratio(law.max_over_read(top_speed).map_err(|_| Missing::from(Input::TopSpeed))?);
    let over = over_read(case, legal)?;
    let under = !no_more(0.0, over.least);
    let beyond = !no_more(over.greatest, legal);
    // The side with less room is shown.
    let worst = if over.least < legal - over.greatest { over.least } else { over.greatest };
    let bound = Bound::Between(Value::Ratio(units::ratio(0.0)), Value::Ratio(units::ratio(legal)));
    let (verdict, reason) = match over.nominal {
        Some(nominal) => Why {
            within: Reason::SpeedometerLegal,
            marginal: Reason::SpeedometerUncertain,
            beyond: if nominal < 0.0 { Reason::SpeedometerUnder } else { Reason::SpeedometerOver },
        }
        .judge(no_more(0.0, nominal) && no_more(nominal, legal), !under && !beyond),
        None if !under && !beyond => (Verdict::Within, Reason::SpeedometerLegal),
        None if !no_more(over.least, legal) => (Verdict::Beyond, Reason::SpeedometerOver),
        None if !no_more(0.0, over.greatest) => (Verdict::Beyond, Reason::SpeedometerUnder),
        None => (Verdict::Marginal, Reason::SpeedometerUnknownOverRead),
    };
    // What was illegal before the change is not the change's doing.
    let verdict = if over.unchanged && verdict == Verdict::Beyond { Verdict::Marginal } else { verdict };
    let finding =
        Finding::new(verdict, reason, law.citation()).reading(Value::Ratio(units::ratio(worst)), bound);
    Ok((finding, worst.min(legal - worst)))
}

pub(in crate::fitment) fn tell_speedometer(
    axles: &[Option<Case<'_>>; 2],
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let driven = |case: &&Case<'_>| case.vehicle.drive().is_some_and(|drive| is_driven(case, drive));
    let case = axles.iter().flatten().filter(driven).find(|case| {
        let finding = axle_speedometer(case).ok();
        finding.is_some_and(|(finding, _)| {
            finding.measured == check.measured() && finding.reason == check.reason()
        })
    })?;
    let (original, proposed) = case.both().ok()?;
    tell.given(format_args!("least legal over-read"), 0.0, "%", check.citation());
    let legal = law_for(case.vehicle.kind()?).tell_max_over_read(in_kmh(case.vehicle.top_speed()?), tell)?;
    let over = over_read(case, legal / 100.0).ok()?;
    let is_least = told::is_measured(check, over.least * 100.0);
    let before = match case.vehicle.over_read() {
        Some(before) => tell.given(format_args!("over-read before"), in_percent(before), "%", None),
        None if is_least => {
            tell.given(format_args!("least legal over-read before"), 0.0, "%", check.citation())
        }
        None => legal,
    };
    let share =
        tell_true_speed_share(original, proposed, if is_least { End::Most } else { End::Least }, tell)?;
    let after = if is_least { over.least } else { over.greatest } * 100.0;
    let word = if is_least { "least" } else { "greatest" };
    let form = ("((1 + {0} / 100) / {1} − 1) × 100", &[before, share][..]);
    tell.worked(format_args!("{word} over-read after"), form, after, "%", check.citation());
    Some(())
}

/// Tells how one end of [`true_speed_share`] comes about.
pub(in crate::fitment) fn tell_true_speed_share(
    original: &SetupFacts<'_>,
    proposed: &SetupFacts<'_>,
    end: End,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    if original.tire().size() == proposed.tire().size() {
        let name = format_args!("true speed behind an indication, of that before: the size stays");
        return Some(tell.given(name, 1.0, "", Citation::DESIGNATION));
    }
    let old = told::circumference(original, told::ORIGINAL, End::Nominal, tell)?;
    let new = told::circumference(proposed, told::PROPOSED, end, tell)?;
    let name = format_args!("{}true speed behind an indication, of that before", end.word());
    Some(tell.worked(name, ("{0} / {1}", &[new, old]), new / old, "", None))
}
