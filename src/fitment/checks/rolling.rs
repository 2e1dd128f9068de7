//! What the driven wheels tell the speedometer, the odometer and the gearbox.

use crate::Citation;
use crate::fitment::Setup;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Input, Missing, Place, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, Why, no_more};
use crate::fitment::reading::{Bound, Reading};
use crate::fitment::report::{Effect, EffectId, Report};
use crate::units::{self, Length, in_kmh, in_mm, in_ratio};
use crate::vehicle::{Drive, Kind};

/// Rolling circumference of a setup's new tire.
pub(super) fn circumference(setup: &Setup) -> crate::Toleranced<Length> {
    setup.tire().size().rolling().circumference()
}

fn is_driven(case: &Case<'_>, drive: Drive) -> bool {
    matches!((drive, case.place), (Drive::All, _) | (Drive::Front, Place::Front) | (Drive::Rear, Place::Rear))
}

/// Over-read of the speedometer after the change, as shares of true speed: least, nominal, greatest over
/// the tolerance of the new tire, or over the over-reads the original may have.
#[derive(Clone, Copy)]
struct OverRead {
    least: f64,
    nominal: Option<f64>,
    greatest: f64,
}

/// UN R39 §5.3 at the speed where its upper side is tightest: the highest judged.
fn greatest_legal(case: &Case<'_>) -> (f64, Citation) {
    // 40, 80 and 120 km/h and the top speed are judged, as far as the vehicle reaches them; the share
    // 10 % + 4 km/h falls with speed, so the last one rules.
    let fastest = case.vehicle.top_speed().map_or(120.0, in_kmh);
    let (constant, citation) = match case.vehicle.kind() {
        Some(Kind::Motorcycle) => (8.0, Citation::SPEEDOMETER_MOTORCYCLE),
        _ => (4.0, Citation::SPEEDOMETER),
    };
    (0.1 + constant / fastest, citation)
}

fn over_read(case: &Case<'_>, legal: f64) -> Result<OverRead, Missing> {
    let (original, proposed) = case.both()?;
    let (old, new) = (circumference(&original), circumference(&proposed));
    let unchanged = original.tire().size() == proposed.tire().size();
    let ratio = |new: Length| if unchanged { 1.0 } else { in_mm(new) / in_mm(old.nominal()) };
    let after = |before: f64, x: f64| (1.0 + before) / x - 1.0;
    Ok(match case.vehicle.over_read().map(in_ratio) {
        Some(before) => OverRead {
            least: after(before, ratio(new.max())),
            nominal: Some(after(before, ratio(new.nominal()))),
            greatest: after(before, ratio(new.min())),
        },
        // The original was legal: its over-read was from nothing to the greatest legal one.
        None => OverRead {
            least: after(0.0, ratio(new.nominal())),
            nominal: None,
            greatest: after(legal, ratio(new.nominal())),
        },
    })
}

pub(super) fn speedometer(axles: &[Option<&Case<'_>>; 2]) -> Found {
    let mut findings = [None, None];
    for (case, slot) in axles.iter().flatten().zip(&mut findings) {
        need!(drive = case.vehicle.drive() => Drive);
        if drive == Drive::None {
            return Ok(Finding::new(Verdict::Within, Reason::NoSpeedometer, Citation::SPEEDOMETER));
        }
        if is_driven(case, drive) {
            *slot = Some(axle_speedometer(case)?);
        }
    }
    let [a, b] = findings;
    match (a, b) {
        (Some(a), Some(b)) => Ok(if b.verdict > a.verdict { b } else { a }),
        (Some(one), None) | (None, Some(one)) => Ok(one),
        // The driven axle is not one of those given.
        (None, None) => Err(Input::ProposedSetup.into()),
    }
}

fn axle_speedometer(case: &Case<'_>) -> Found {
    let (legal, citation) = greatest_legal(case);
    let over = over_read(case, legal)?;
    let under = !no_more(0.0, over.least);
    let beyond = !no_more(over.greatest, legal);
    // The side with less room is shown.
    let worst = if over.least < legal - over.greatest { over.least } else { over.greatest };
    let bound = Bound::Between(Reading::Ratio(units::ratio(0.0)), Reading::Ratio(units::ratio(legal)));
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
    Ok(Finding::new(verdict, reason, citation).reading(Reading::Ratio(units::ratio(worst)), bound))
}

/// Gearing and odometer of the driven axle, the front one if both are driven.
pub(in crate::fitment) fn effects(front: &Case<'_>, rear: &Case<'_>, report: &mut Report) {
    let Some(drive) = front.vehicle.drive() else { return };
    let Some(case) = [front, rear].into_iter().find(|case| is_driven(case, drive) && case.both().is_ok())
    else {
        return;
    };
    let Ok((original, proposed)) = case.both() else { return };
    let (before, after) = (circumference(&original).nominal(), circumference(&proposed).nominal());
    report.push_effect(&Effect {
        id: EffectId::Gearing,
        place: case.place,
        before: Reading::Length(before),
        after: Reading::Length(after),
    });
    report.push_effect(&Effect {
        id: EffectId::Odometer,
        place: case.place,
        before: Reading::Ratio(units::percent(100.0)),
        after: Reading::Ratio(after / before),
    });
}
