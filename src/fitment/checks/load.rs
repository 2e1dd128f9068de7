//! Are tires and wheels strong and fast enough?

use crate::fitment::Setup;
use crate::fitment::case::{Case, is_passenger, need, same_tire};
use crate::fitment::check::{Input, Missing, Place, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_least, at_most, no_more};
use crate::fitment::reading::{Bound, Reading};
use crate::tire::use_factors::{ELSEWHERE, TOWING_KPA, TOWING_SHARE, TOWING_TOP_KMH};
use crate::tire::{InSizeSpeed, Inflation, InflationError, Tire, camber_load_factor};
use crate::units::{self, Mass, Pressure, Velocity, in_kmh, in_ratio};
use crate::vehicle::Kind;
use crate::{Citation, Toleranced};

/// The factors on the load index: camber, use, and whether the tire is out of its class.
pub(super) struct Factors {
    /// On the load that counts against the tire's capacity.
    pub(super) capacity: f64,
    /// The most particular rule that was applied.
    pub(super) citation: Citation,
}

/// The factors that do not depend on speed.
pub(super) fn factors(case: &Case<'_>, setup: &Setup) -> Result<Factors, Missing> {
    let tire = setup.tire();
    let mut result = Factors { capacity: 1.0, citation: Citation::AXLE_SHARE };
    if case.is_dual() && is_passenger(&tire) {
        result.citation = Citation::DUAL_PASSENGER;
    }
    if let Some(camber) = case.axle.camber() {
        let share = in_ratio(camber_load_factor(camber).map_err(|_| Missing::from(Input::LoadAtCamber))?);
        // The rule beyond 2° is for passenger tires.
        if share < 1.0 && !is_passenger(&tire) {
            return Err(Input::LoadAtCamber.into());
        }
        if share < 1.0 {
            result.capacity *= share;
            result.citation = Citation::CAMBER;
        }
    }
    need!(elsewhere = factor_elsewhere(case, setup) => Kind);
    if elsewhere > 1.0 {
        result.capacity /= elsewhere;
        result.citation = Citation::PASSENGER_TIRE_ON_TRUCK;
    }
    Ok(result)
}

/// What towing allows on the greatest load, and the extra pressure it asks for.
pub(super) fn towing_allowance(case: &Case<'_>, tire: &Tire) -> Option<(f64, Pressure)> {
    allows_towing_allowance(case, tire).then(|| (TOWING_SHARE, units::kpa(TOWING_KPA)))
}

/// EU 458/2011: rear passenger tires of cars and light goods vehicles, towing, never above 100 km/h.
fn allows_towing_allowance(case: &Case<'_>, tire: &Tire) -> bool {
    case.limits.allows_towing_allowance()
        && case.is_towing()
        && matches!(case.vehicle.kind(), Some(Kind::Passenger | Kind::Multipurpose | Kind::Truck))
        && case.place == Place::Rear
        && is_passenger(tire)
        && case.speed_in_use().is_some_and(|v| no_more(in_kmh(v), TOWING_TOP_KMH))
}

/// The speed at which the load is asked of the tire: the top speed in use, or that of a snow tire which
/// the caller's jurisdiction lets be slower.
pub(super) fn load_speed(case: &Case<'_>, setup: &Setup) -> Option<Velocity> {
    let speed = case.speed_in_use()?;
    let floor = case.limits.snow_speed_floor().filter(|_| setup.is_snow());
    Some(match (floor, setup.tire().service().map(|s| s.speed().speed())) {
        (Some(floor), Some(symbol)) if floor.value() <= symbol && symbol < speed => symbol,
        _ => speed,
    })
}

pub(super) fn tire_load(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let tire = setup.tire();
    need!(
        load = case.axle.max_load() => MaxLoad,
        speed = load_speed(case, setup) => TopSpeed,
        service = tire.service() => LoadIndex,
    );
    need!(index = service.index(case.fitting(&tire)) => DualLoadIndex, rule = tire.at_speed(speed) => LoadIndex);
    need!(speed_share = rule.load_share() => LoadAtSpeed);
    let factors = factors(case, setup)?;
    let speed_share = in_ratio(speed_share);
    let mut capacity = index.load() * factors.capacity * speed_share;
    let mut citation = if speed_share < 1.0 { rule.load_citation() } else { factors.citation };
    if let Some((towing, _)) = towing_allowance(case, &tire) {
        capacity *= towing;
        citation = Citation::TOWING;
    }
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
        InflationError::NoLaw | InflationError::OtherFamily => Input::LoadAtPressure,
        InflationError::NoReferencePressure | InflationError::OutOfRange(_) => Input::ReferencePressure,
    }
}

/// The same for the original tire.
fn missing_for_original(error: InflationError) -> Input {
    match missing_for_law(error) {
        Input::ReferencePressure | Input::LoadAtPressure => Input::OriginalReferencePressure,
        _ => Input::OriginalLoadIndex,
    }
}

/// What divides a tire's capacity because of the vehicle it is on: 1.10, or 1.
pub(super) fn factor_elsewhere(case: &Case<'_>, setup: &Setup) -> Option<f64> {
    Some(if case.is_passenger_tire_elsewhere(&setup.tire())? { ELSEWHERE } else { 1.0 })
}

/// What a setup's tire carries at a pressure on this vehicle.
fn capacity(case: &Case<'_>, setup: &Setup, law: &Inflation, pressure: Pressure) -> Result<Mass, Missing> {
    need!(factor = factor_elsewhere(case, setup) => Kind);
    let load = law.load_at(pressure).map_err(|_| Missing::from(Input::LoadAtPressure))?;
    Ok(load / factor)
}

/// The same, where it is known.
pub(super) fn carried_at(case: &Case<'_>, setup: &Setup, pressure: Pressure) -> Option<Mass> {
    let law = law(case, setup).ok().filter(|law| !is_understated(law))?;
    capacity(case, setup, &law, pressure).ok()
}

/// A finding that rests on the default of a load range letter is never better than marginal; and where the
/// letter stands for two pressures, what the higher is too little for is not known.
pub(super) fn by_letter(law: &Inflation, finding: Finding) -> Found {
    if is_understated(law) && finding.verdict == Verdict::Beyond {
        return Err(Input::ReferencePressure.into());
    }
    Ok(if law.is_by_letter() {
        finding.marginal_if(Verdict::Within, Reason::PressureByLetter)
    } else {
        finding
    })
}

/// Whether the default of the law makes an original carry less than it may: not something to compare with.
fn is_understated(law: &Inflation) -> bool {
    law.reference_citation() == Citation::REFERENCE_PRESSURE_FLOTATION
}

pub(super) fn tire_load_vs_original(case: &Case<'_>) -> Found {
    let (original, proposed) = case.both()?;
    if original == proposed {
        return Ok(Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL));
    }
    let index = |setup: &Setup| setup.tire().service()?.index(case.fitting(&setup.tire()));
    need!(
        old = index(original) => OriginalLoadIndex,
        new = index(proposed) => LoadIndex,
        placard = case.axle.placard() => Placard,
        pressure = proposed.pressure() => Pressure,
    );
    let lower = new < old;
    if lower && !case.limits.allows_lower_load_index() {
        return Ok(Finding::new(Verdict::Beyond, Reason::LoadIndexLower, Citation::ORIGINAL)
            .reading(Reading::LoadIndex(new), Bound::AtLeast(Reading::LoadIndex(old))));
    }
    let why = Why::either(
        if lower { Reason::CapacityKeptLowerIndex } else { Reason::CapacityKept },
        Reason::CapacityLost,
    );
    // The same tire carries no less at no less pressure, whatever its law.
    if same_tire(original, proposed) {
        return Ok(at_least(Toleranced::exact(pressure), placard, Reading::Pressure, why, Citation::PLACARD));
    }
    let old = law(case, original).map_err(missing_for_original)?;
    if is_understated(&old) {
        return Err(Input::OriginalReferencePressure.into());
    }
    let new = law(case, proposed).map_err(missing_for_law)?;
    let least = capacity(case, original, &old, placard)?;
    let carried = capacity(case, proposed, &new, pressure)?;
    let finding = at_least(Toleranced::exact(carried), least, Reading::Mass, why, new.model().citation());
    by_letter(&old, by_letter(&new, finding)?)
}

pub(super) fn load_reserve(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let tire = setup.tire();
    need!(load = case.axle.normal_load() => NormalLoad, placard = case.axle.placard() => Placard);
    let law = law(case, setup).map_err(missing_for_law)?;
    let limit = case.limits.load_reserve();
    let taken = case.share(load, &tire) / capacity(case, setup, &law, placard)?;
    let why = Why::either(Reason::ReservePresent, Reason::ReserveMissing);
    let mut finding = at_most(Toleranced::exact(taken), limit.value(), Reading::Ratio, why, limit.citation());
    // The law knows passenger tires only; elsewhere a thin reserve breaks good practice.
    let is_law = case.limits.load_reserve_is_law() && is_passenger(&tire);
    if !is_law && no_more(in_ratio(taken), 1.0) {
        finding = finding.marginal_if(Verdict::Beyond, Reason::ReserveThin);
    }
    by_letter(&law, finding)
}

pub(super) fn speed_symbol(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    need!(top = case.vehicle.top_speed() => TopSpeed);
    let tire = setup.tire();
    // Above an open-ended mark only the maker knows.
    let in_size = |kmh, open_ended| (units::kmh(kmh), open_ended, Citation::SPEED_IN_SIZE);
    let (speed, open_ended, citation) = match (tire.service(), tire.size().in_size_speed()) {
        (Some(service), _) => {
            (service.speed().speed(), service.speed().is_open_ended(), Citation::SPEED_SYMBOL)
        }
        (None, Some(InSizeSpeed::S)) => in_size(180.0, false),
        (None, Some(InSizeSpeed::H)) => in_size(210.0, false),
        (None, Some(InSizeSpeed::V)) => in_size(210.0, true),
        (None, Some(InSizeSpeed::Z)) => in_size(240.0, true),
        (None, None) => return Err(Input::LoadIndex.into()),
    };
    if open_ended && top > speed {
        return Err(Input::LoadAtSpeed.into());
    }
    let why = Why::either(Reason::FastEnough, Reason::TooSlow);
    let finding = at_least(Toleranced::exact(speed), top, Reading::Velocity, why, citation);
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
    let share: Mass = load / case.wheels();
    let mut rating = rating;
    let mut why = Why { within: Reason::WheelCarries, beyond: Reason::WheelOverloaded, ..PLAIN };
    if let Some(adaptor) = setup.adaptor() {
        need!(of_adaptor = adaptor.rating() => AdaptorRating);
        if of_adaptor < rating {
            (rating, why.beyond) = (of_adaptor, Reason::AdaptorOverloaded);
        }
    }
    Ok(at_least(Toleranced::exact(rating), share, Reading::Mass, why, Citation::WHEEL_RATING))
}
