//! Are the intended pressures enough, and not too much?

use super::load::{
    by_letter, carried_at, factor_elsewhere, factors, law, load_speed, missing_for_law, towing_allowance,
};
use crate::Citation;
use crate::fitment::Setup;
use crate::fitment::case::{Case, need, same_tire};
use crate::fitment::check::{Input, Missing, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, no_more};
use crate::fitment::pressures::Pressures;
use crate::fitment::reading::{Bound, Reading};
use crate::tire::Inflation;
use crate::units::{self, Mass, Pressure, in_kpa, in_ratio};

/// The largest pressure permitted, whose word that is, and whether it is the tire's own.
struct Permitted {
    most: Option<Pressure>,
    citation: Citation,
    tire_is_known: bool,
}

/// Molded maximum of the tire, else that of its speed symbol; the wheel's where it is less.
fn permitted(setup: &Setup) -> Permitted {
    let tire = setup.max_pressure().or_else(|| setup.tire().greatest_cold_pressure());
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

/// The pressures of a setup: for normal use, and for full load and high speed.
fn intended(setup: &Setup) -> Option<(Pressure, Pressure)> {
    let normal = setup.pressure()?;
    Some((normal, setup.pressure_full_load().unwrap_or(normal)))
}

/// The original tire at no less than the maker's own pressures: the placard settles it. Not where more
/// load than the maker allowed for is asked of it.
fn is_on_placard(case: &Case<'_>, setup: &Setup, normal: Pressure, full: Pressure) -> bool {
    let (Some(original), Some(placard)) = (case.original, case.axle.placard()) else { return false };
    let placard_full = case.axle.placard_full_load().unwrap_or(placard);
    let reached = |pressure, least| no_more(in_kpa(least), in_kpa(pressure));
    same_tire(original, setup)
        && reached(normal, placard)
        && reached(full, placard_full)
        && towing_allowance(case, &setup.tire()).is_none()
}

pub(super) fn inflation(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let found = by_law_or_placard(case, setup)?;
    // What the law of load finds too little, the placard of the unchanged tire may yet allow.
    let unchanged = case.original.is_some_and(|original| same_tire(original, setup));
    let by_law = found.reason != Reason::PressureTooHigh;
    if unchanged && by_law && found.verdict == Verdict::Beyond && case.axle.placard().is_none() {
        return Err(Input::Placard.into());
    }
    Ok(found)
}

/// What a load asks of the tire, referred to its load index, and of its pressure.
#[derive(Clone, Copy)]
struct Need {
    load: Mass,
    /// The least pressure for the load; none if no pressure carries it.
    for_load: Option<Pressure>,
    /// What speed and towing add to it.
    extra: Pressure,
    /// Whose rule the addition for speed is, where there is one.
    citation: Option<Citation>,
}

/// What the greatest load needs at top speed.
fn full_load_need(case: &Case<'_>, setup: &Setup, law: &Inflation) -> Result<Need, Missing> {
    let tire = setup.tire();
    need!(max_load = case.axle.max_load() => MaxLoad, speed = load_speed(case, setup) => TopSpeed);
    need!(rule = tire.at_speed(speed) => LoadIndex);
    need!(speed_share = rule.load_share() => LoadAtSpeed, extra = rule.pressure_increase() => PressureAtSpeed);
    let factors = factors(case, setup)?;
    let (towing, towing_pressure) = towing_allowance(case, &tire).unwrap_or((1.0, units::kpa(0.0)));
    let load = case.share(max_load, &tire) / (factors.capacity * in_ratio(speed_share) * towing);
    Ok(Need {
        load,
        for_load: law.pressure_for(load).ok(),
        extra: extra + towing_pressure,
        citation: (extra.value > 0.0).then(|| rule.pressure_citation()),
    })
}

/// What the normal load needs.
fn normal_load_need(case: &Case<'_>, setup: &Setup, law: &Inflation) -> Result<Need, Missing> {
    need!(normal_load = case.axle.normal_load() => NormalLoad);
    let load = case.share(normal_load, &setup.tire()) / factors(case, setup)?.capacity;
    Ok(Need { load, for_load: law.pressure_for(load).ok(), extra: units::kpa(0.0), citation: None })
}

/// The pressures a setup needs, each where its inputs are known.
pub(in crate::fitment) fn pressures(case: &Case<'_>) -> Option<Pressures> {
    let setup = case.proposed?;
    let law = law(case, setup).ok();
    let none_carries_it = units::kpa(f64::INFINITY);
    let need = |need: Result<Need, Missing>| {
        need.ok().map(|need| need.for_load.map_or(none_carries_it, |for_load| for_load + need.extra))
    };
    let as_original = case.original.zip(case.axle.placard()).and_then(|(original, placard)| {
        let load = carried_at(case, original, placard)?;
        // The proposed tire may count for less than its index, as the original does in that load.
        Some(law?.pressure_for(load * factor_elsewhere(case, setup)?).unwrap_or(none_carries_it))
    });
    Some(Pressures::new(
        case.place,
        law.and_then(|law| need(normal_load_need(case, setup, &law))),
        law.and_then(|law| need(full_load_need(case, setup, &law))),
        as_original,
        permitted(setup).most,
    ))
}

fn by_law_or_placard(case: &Case<'_>, setup: &Setup) -> Found {
    need!(pressures = intended(setup) => Pressure);
    let (normal, full) = pressures;
    let highest = full.max(normal);
    let permitted = permitted(setup);
    if let Some(most) = permitted.most.filter(|&most| !no_more(in_kpa(highest), in_kpa(most))) {
        return Ok(Finding::new(Verdict::Beyond, Reason::PressureTooHigh, permitted.citation)
            .reading(Reading::Pressure(highest), Bound::AtMost(Reading::Pressure(most))));
    }
    if is_on_placard(case, setup, normal, full) {
        let placard = case.axle.placard().unwrap_or(normal);
        return Ok(Finding::new(Verdict::Within, Reason::PressureOnPlacard, Citation::PLACARD)
            .reading(Reading::Pressure(normal), Bound::AtLeast(Reading::Pressure(placard))));
    }

    let law = law(case, setup).map_err(missing_for_law)?;
    let full_need = full_load_need(case, setup, &law)?;
    // One pressure for everything carries the normal load if it carries the greatest.
    let normal_need = match setup.pressure_full_load() {
        Some(_) => normal_load_need(case, setup, &law)?,
        None => full_need,
    };
    let (Some(for_full), Some(for_normal)) = (full_need.for_load, normal_need.for_load) else {
        let load = full_need.load.max(normal_need.load);
        return Ok(Finding::new(Verdict::Beyond, Reason::LoadAboveIndex, law.model().citation())
            .reading(Reading::Mass(law.reference_load()), Bound::AtLeast(Reading::Mass(load))));
    };
    let (need_full, need_normal) = (for_full + full_need.extra, for_normal + normal_need.extra);

    // The pair with less to spare governs.
    let normal_governs = normal - need_normal < full - need_full;
    let (pressure, least, for_load, reason) = if normal_governs {
        (normal, need_normal, for_normal, Reason::PressureTooLowNormal)
    } else {
        (full, need_full, for_full, Reason::PressureTooLowFull)
    };
    let citation = match full_need.citation {
        Some(citation) if !normal_governs => citation,
        _ => law.model().citation(),
    };
    if !no_more(in_kpa(least), in_kpa(pressure)) {
        // A load so small that the law's least pressure carries it: what less would do, nobody knows.
        if for_load <= law.least_pressure() {
            return Err(Input::LoadAtPressure.into());
        }
        let short = Finding::new(Verdict::Beyond, reason, citation)
            .reading(Reading::Pressure(pressure), Bound::AtLeast(Reading::Pressure(least)));
        return by_letter(&law, short);
    }
    if !permitted.tire_is_known && !no_more(in_kpa(highest), in_kpa(law.reference_pressure())) {
        let reference = Bound::AtMost(Reading::Pressure(law.reference_pressure()));
        return Ok(Finding::new(Verdict::Marginal, Reason::PressureAboveReference, law.reference_citation())
            .reading(Reading::Pressure(highest), reference));
    }
    let bound = match permitted.most {
        Some(most) if most >= least => Bound::Between(Reading::Pressure(least), Reading::Pressure(most)),
        _ => Bound::AtLeast(Reading::Pressure(least)),
    };
    let enough = Finding::new(Verdict::Within, Reason::PressureEnough, citation);
    by_letter(&law, enough.reading(Reading::Pressure(pressure), bound))
}
