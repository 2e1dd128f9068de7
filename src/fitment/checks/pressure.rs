//! Are the intended pressures enough, and not too much?

use super::load::{factors, law, load_speed, missing_for_law};
use crate::Citation;
use crate::fitment::Setup;
use crate::fitment::case::{Case, is_passenger, need, same_tire};
use crate::fitment::check::{Input, Missing, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, no_more};
use crate::fitment::reading::{Bound, Reading};
use crate::tire::{SpeedSymbol, Tire};
use crate::units::{self, Pressure, in_kpa, in_ratio};

/// The largest pressure permitted, whose word that is, and whether it is the tire's own.
struct Permitted {
    most: Option<Pressure>,
    citation: Citation,
    tire_is_known: bool,
}

/// Molded maximum of the tire, else that of its speed symbol; the wheel's where it is less.
fn permitted(setup: &Setup) -> Permitted {
    let tire = setup.max_pressure().or_else(|| class_maximum(&setup.tire()));
    let by_tire = if setup.max_pressure().is_some() {
        Citation::MAXIMUM_PRESSURE_GIVEN
    } else {
        Citation::MAXIMUM_PRESSURE
    };
    let (most, citation) = match (tire, setup.wheel_max_pressure()) {
        (Some(tire), Some(wheel)) if wheel < tire => (Some(wheel), Citation::MAXIMUM_PRESSURE_GIVEN),
        (None, Some(wheel)) => (Some(wheel), Citation::MAXIMUM_PRESSURE_GIVEN),
        (tire, _) => (tire, by_tire),
    };
    Permitted { most, citation, tire_is_known: setup.max_pressure().is_some() }
}

/// Crolla (ed.) 2009, p. 296: 320 kPa for Q to T, 350 kPa for H to W and ZR. U stands between and is
/// taken with the lower, Y with the higher.
fn class_maximum(tire: &Tire) -> Option<Pressure> {
    let symbol = tire.service().filter(|_| is_passenger(tire))?.speed();
    match symbol {
        SpeedSymbol::Q | SpeedSymbol::R | SpeedSymbol::S | SpeedSymbol::T | SpeedSymbol::U => {
            Some(units::kpa(320.0))
        }
        _ if symbol >= SpeedSymbol::H => Some(units::kpa(350.0)),
        _ => None,
    }
}

/// The pressures of a setup: for normal use, and for full load and high speed.
fn intended(setup: &Setup) -> Option<(Pressure, Pressure)> {
    let normal = setup.pressure()?;
    Some((normal, setup.pressure_full_load().unwrap_or(normal)))
}

/// Whether two pressures are one on any gauge.
fn same_pressure(a: Pressure, b: Pressure) -> bool {
    (in_kpa(a) - in_kpa(b)).abs() < 0.5
}

/// The original tire at the maker's own pressures: the placard settles it.
fn is_on_placard(case: &Case<'_>, setup: &Setup, normal: Pressure, full: Pressure) -> bool {
    let (Some(original), Some(placard)) = (case.original, case.axle.placard()) else { return false };
    let placard_full = case.axle.placard_full_load().unwrap_or(placard);
    same_tire(&original, setup) && same_pressure(normal, placard) && same_pressure(full, placard_full)
}

pub(super) fn inflation(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let found = by_law_or_placard(case, &setup)?;
    // What the law of load finds too little, the placard of the unchanged tire may yet allow.
    let unchanged = case.original.is_some_and(|original| same_tire(&original, &setup));
    let by_law = found.reason != Reason::PressureTooHigh;
    if unchanged && by_law && found.verdict == Verdict::Beyond && case.axle.placard().is_none() {
        return Err(Input::Placard.into());
    }
    Ok(found)
}

fn by_law_or_placard(case: &Case<'_>, setup: &Setup) -> Found {
    need!(pressures = intended(setup) => Pressure);
    let (normal, full) = pressures;
    let highest = if full > normal { full } else { normal };
    let permitted = permitted(setup);
    if let Some(most) = permitted.most.filter(|&most| !no_more(in_kpa(highest), in_kpa(most))) {
        return Ok(Finding::new(Verdict::Beyond, Reason::PressureTooHigh, permitted.citation)
            .reading(Reading::Pressure(highest), Bound::AtMost(Reading::Pressure(most))));
    }
    if is_on_placard(case, setup, normal, full) {
        return Ok(Finding::new(Verdict::Within, Reason::PressureOnPlacard, Citation::PLACARD)
            .reading(Reading::Pressure(normal), Bound::Equals(Reading::Pressure(normal))));
    }

    let tire = setup.tire();
    need!(max_load = case.axle.max_load() => MaxLoad, speed = load_speed(case, setup) => TopSpeed);
    need!(rule = tire.at_speed(speed) => LoadIndex);
    need!(speed_share = rule.load_share() => LoadAtSpeed, extra = rule.pressure_increase() => PressureAtSpeed);
    let law = law(case, setup).map_err(missing_for_law)?;
    let factors = factors(case, setup)?;
    let load = case.share(max_load, &tire) / (factors.capacity * in_ratio(speed_share));
    let Ok(for_load) = law.pressure_for(load) else {
        return Ok(Finding::new(Verdict::Beyond, Reason::LoadAboveIndex, law.model().citation())
            .reading(Reading::Mass(law.reference_load()), Bound::AtLeast(Reading::Mass(load))));
    };
    let need_full = for_load + extra + factors.towing_pressure;

    // One pressure for everything carries the normal load if it carries the greatest.
    let need_normal = if setup.pressure_full_load().is_some() {
        need!(normal_load = case.axle.normal_load() => NormalLoad);
        let load = case.share(normal_load, &tire) / factors.capacity;
        law.pressure_for(load).map_err(|_| Missing::from(Input::NormalLoad))?
    } else {
        need_full
    };

    // The pair with less to spare governs.
    let normal_governs = normal - need_normal < full - need_full;
    let (pressure, least, reason) = if normal_governs {
        (normal, need_normal, Reason::PressureTooLowNormal)
    } else {
        (full, need_full, Reason::PressureTooLowFull)
    };
    let bound = match permitted.most {
        Some(most) if most >= least => Bound::Between(Reading::Pressure(least), Reading::Pressure(most)),
        _ => Bound::AtLeast(Reading::Pressure(least)),
    };
    let (verdict, reason) = if !no_more(in_kpa(least), in_kpa(pressure)) {
        (Verdict::Beyond, reason)
    } else if law.reference_citation() == Citation::REFERENCE_PRESSURE_RANGE {
        (Verdict::Marginal, Reason::PressureByLetter)
    } else if !permitted.tire_is_known && !no_more(in_kpa(highest), in_kpa(law.reference_pressure())) {
        (Verdict::Marginal, Reason::PressureAboveReference)
    } else {
        (Verdict::Within, Reason::PressureEnough)
    };
    Ok(Finding::new(verdict, reason, law.model().citation()).reading(Reading::Pressure(pressure), bound))
}
