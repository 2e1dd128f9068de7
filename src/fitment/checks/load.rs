//! Are tires and wheels strong and fast enough?

use crate::fitment::case::{Case, is_passenger, need, same_tire};
use crate::fitment::check::{Input, Missing, Place, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_least, at_most, no_more};
use crate::fitment::reading::{Bound, Reading};
use crate::fitment::{Limits, Setup};
use crate::tire::{Fitting, InSizeSpeed, Inflation, InflationError, Tire, camber_load_factor};
use crate::units::{self, Mass, Pressure, Velocity, in_kmh, in_ratio};
use crate::{Citation, Toleranced};

/// What divides the capacity of a passenger tire on another vehicle: 49 CFR 571.110 S4.2.2.
pub(super) const ELSEWHERE: f64 = 1.10;

/// The factors on the load index: camber, use, and whether the tire is out of its class.
pub(super) struct Factors {
    /// On the load that counts against the tire's capacity.
    pub(super) capacity: f64,
    /// Extra pressure that the towing allowance asks for.
    pub(super) towing_pressure: Pressure,
    /// The most particular rule that was applied.
    pub(super) citation: Citation,
}

/// The factors that do not depend on speed.
pub(super) fn factors(case: &Case<'_>, setup: &Setup) -> Result<Factors, Missing> {
    let tire = setup.tire();
    let mut result =
        Factors { capacity: 1.0, towing_pressure: units::kpa(0.0), citation: Citation::AXLE_SHARE };
    if case.is_dual() && is_passenger(&tire) {
        result.citation = Citation::DUAL_PASSENGER;
    }
    if let (Some(camber), true) = (case.axle.camber(), is_passenger(&tire)) {
        let share = in_ratio(camber_load_factor(camber).map_err(|_| Missing::from(Input::LoadAtCamber))?);
        if share < 1.0 {
            result.capacity *= share;
            result.citation = Citation::CAMBER;
        }
    }
    need!(elsewhere = case.is_passenger_tire_elsewhere(&tire) => Kind);
    if elsewhere {
        result.capacity /= ELSEWHERE;
        result.citation = Citation::PASSENGER_TIRE_ON_TRUCK;
    }
    if allows_towing_allowance(case, case.limits, &tire) {
        result.capacity *= 1.15;
        result.towing_pressure = units::kpa(20.0);
        result.citation = Citation::TOWING;
    }
    Ok(result)
}

/// EU 458/2011: rear passenger tires, towing, never above 100 km/h.
fn allows_towing_allowance(case: &Case<'_>, limits: &Limits, tire: &Tire) -> bool {
    limits.allows_towing_allowance()
        && case.is_towing()
        && case.place == Place::Rear
        && is_passenger(tire)
        && case.speed_in_use().is_some_and(|v| no_more(in_kmh(v), 100.0))
}

/// The speed at which the load is asked of the tire: the top speed in use, or that of a snow tire which
/// the caller's jurisdiction lets be slower.
pub(super) fn load_speed(case: &Case<'_>, setup: &Setup) -> Option<Velocity> {
    let speed = case.speed_in_use()?;
    Some(match (case.limits.snow_speed_floor(), setup.tire().service()) {
        (Some(_), Some(service)) if setup.is_snow() && service.speed().speed() < speed => {
            service.speed().speed()
        }
        _ => speed,
    })
}

pub(super) fn tire_load(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let tire = setup.tire();
    need!(
        load = case.axle.max_load() => MaxLoad,
        speed = load_speed(case, &setup) => TopSpeed,
        service = tire.service() => LoadIndex,
    );
    let needed_index = match case.fitting(&tire) {
        Fitting::Single => Some(service.single()),
        Fitting::Dual => service.dual(),
    };
    need!(index = needed_index => DualLoadIndex, rule = tire.at_speed(speed) => LoadIndex);
    need!(speed_share = rule.load_share() => LoadAtSpeed);
    let factors = factors(case, &setup)?;
    let speed_share = in_ratio(speed_share);
    let capacity = index.load() * factors.capacity * speed_share;
    let citation = if speed_share < 1.0 { rule.load_citation() } else { factors.citation };
    Ok(at_least(
        Toleranced::exact(capacity),
        case.share(load, &tire),
        Reading::Mass,
        Why::either(Reason::LoadCarried, Reason::LoadNotCarried),
        citation,
    ))
}

/// The law of load and pressure for a setup on this axle; what is missing is named by the caller.
pub(super) fn law(case: &Case<'_>, setup: &Setup) -> Result<Inflation, InflationError> {
    setup.tire().inflation(case.fitting(&setup.tire()), setup.reference_pressure())
}

/// The input that would settle why there is no law for the proposed tire.
pub(super) fn missing_for_law(error: InflationError) -> Input {
    match error {
        InflationError::NoLoadIndex => Input::LoadIndex,
        InflationError::NoDualLoadIndex => Input::DualLoadIndex,
        InflationError::NoReferencePressure | InflationError::OutOfRange(_) => Input::ReferencePressure,
    }
}

/// The same for the original tire.
fn missing_for_original(error: InflationError) -> Input {
    match missing_for_law(error) {
        Input::ReferencePressure => Input::OriginalReferencePressure,
        _ => Input::OriginalLoadIndex,
    }
}

/// A pressure below all that the law knows.
pub(super) fn too_low(law: &Inflation, pressure: Pressure) -> Option<Finding> {
    (pressure < law.least_pressure()).then(|| {
        Finding::new(Verdict::Beyond, Reason::PressureTooLowNormal, law.model().citation())
            .reading(Reading::Pressure(pressure), Bound::AtLeast(Reading::Pressure(law.least_pressure())))
    })
}

pub(super) fn tire_load_vs_original(case: &Case<'_>) -> Found {
    let (original, proposed) = case.both()?;
    if original == proposed {
        return Ok(Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL));
    }
    need!(
        old = original.tire().service() => OriginalLoadIndex,
        new = proposed.tire().service() => LoadIndex,
        placard = case.axle.placard() => Placard,
        pressure = proposed.pressure() => Pressure,
    );
    let lower = new.single() < old.single();
    if lower && !case.limits.allows_lower_load_index() {
        return Ok(Finding::new(Verdict::Beyond, Reason::LoadIndexLower, Citation::ORIGINAL)
            .reading(Reading::LoadIndex(new.single()), Bound::AtLeast(Reading::LoadIndex(old.single()))));
    }
    let why = Why::either(
        if lower { Reason::CapacityKeptLowerIndex } else { Reason::CapacityKept },
        Reason::CapacityLost,
    );
    // The same tire carries no less at no less pressure, whatever its law.
    if same_tire(&original, &proposed) {
        return Ok(at_least(Toleranced::exact(pressure), placard, Reading::Pressure, why, Citation::PLACARD));
    }
    let old = law(case, &original).map_err(missing_for_original)?;
    let new = law(case, &proposed).map_err(missing_for_law)?;
    let least = old.load_at(placard).map_err(|_| Missing::from(Input::Placard))?;
    if let Some(finding) = too_low(&new, pressure) {
        return Ok(finding);
    }
    let capacity = new.load_at(pressure).map_err(|_| Missing::from(Input::Pressure))?;
    Ok(at_least(Toleranced::exact(capacity), least, Reading::Mass, why, new.model().citation()))
}

pub(super) fn load_reserve(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let tire = setup.tire();
    need!(
        load = case.axle.normal_load() => NormalLoad,
        pressure = setup.pressure() => Pressure,
        elsewhere = case.is_passenger_tire_elsewhere(&tire) => Kind,
    );
    let law = law(case, &setup).map_err(missing_for_law)?;
    if let Some(finding) = too_low(&law, pressure) {
        return Ok(finding);
    }
    let mut capacity = law.load_at(pressure).map_err(|_| Missing::from(Input::Pressure))?;
    if elsewhere {
        capacity /= ELSEWHERE;
    }
    let limit = case.limits.load_reserve();
    let taken = case.share(load, &tire) / capacity;
    // Only the law, or the caller, makes this more than good practice, and the law knows passenger tires.
    let is_law = match limit.citation() {
        Citation::LOAD_RESERVE => is_passenger(&tire),
        Citation::LOAD_RESERVE_PRACTICE => false,
        _ => true,
    };
    let why = Why::either(Reason::ReservePresent, Reason::ReserveMissing);
    let mut finding = at_most(Toleranced::exact(taken), limit.value(), Reading::Ratio, why, limit.citation());
    if finding.verdict == Verdict::Beyond && !is_law && no_more(in_ratio(taken), 1.0) {
        (finding.verdict, finding.reason) = (Verdict::Marginal, Reason::ReserveThin);
    }
    Ok(finding)
}

pub(super) fn speed_symbol(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    need!(top = case.vehicle.top_speed() => TopSpeed);
    let tire = setup.tire();
    // Above an open-ended mark only the maker knows.
    let (speed, open_ended) = match (tire.service(), tire.size().in_size_speed()) {
        (Some(service), _) => (service.speed().speed(), service.speed().is_open_ended()),
        (None, Some(InSizeSpeed::S)) => (units::kmh(180.0), false),
        (None, Some(InSizeSpeed::H)) => (units::kmh(210.0), false),
        (None, Some(InSizeSpeed::V)) => (units::kmh(210.0), true),
        (None, Some(InSizeSpeed::Z)) => (units::kmh(240.0), true),
        (None, None) => return Err(Input::LoadIndex.into()),
    };
    if open_ended && top > speed {
        return Err(Input::LoadAtSpeed.into());
    }
    let why = Why::either(Reason::FastEnough, Reason::TooSlow);
    let finding = at_least(Toleranced::exact(speed), top, Reading::Velocity, why, Citation::SPEED_SYMBOL);
    match case.limits.snow_speed_floor() {
        Some(floor) if finding.verdict == Verdict::Beyond && setup.is_snow() => {
            let why = Why::either(Reason::SnowFloor, Reason::TooSlow);
            Ok(at_least(Toleranced::exact(speed), floor.value(), Reading::Velocity, why, floor.citation()))
        }
        _ => Ok(finding),
    }
}

pub(super) fn wheel_load(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    need!(load = case.axle.max_load() => MaxLoad, rating = setup.wheel_rating() => WheelRating);
    let share: Mass = load / f64::from(case.axle.tires());
    let why = Why { within: Reason::WheelCarries, beyond: Reason::WheelOverloaded, ..PLAIN };
    Ok(at_least(Toleranced::exact(rating), share, Reading::Mass, why, Citation::WHEEL_RATING))
}
