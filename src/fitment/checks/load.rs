//! Are tires and wheels strong and fast enough?

use super::definition::{Definition, Harm, Rules, Run};
use crate::fitment::Setup;
use crate::fitment::case::{Case, both_of, is_passenger, need, same_tire};
use crate::fitment::check::{CheckId, Input, Missing, Position, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_best, at_least, at_most, no_more};
use crate::fitment::value::{Bound, Value};
use crate::tire::inflation::factors::{ELSEWHERE, TOWING_SHARE, TOWING_TOP_KMH};
use crate::tire::{
    SizeSpeedLetter, Tire,
    inflation::{Inflation, InflationError, camber_load_factor},
};
use crate::units::{self, Mass, Pressure, Velocity, in_kg, in_kmh, in_mm, in_ratio};
use crate::vehicle::Kind;
use crate::{Citation, Toleranced};

/// The factors on the load index that do not depend on speed: camber, and whether the tire is out of its
/// class. One that is not known counts at its best, and its input is missing.
pub(super) struct Factors {
    /// On the load that counts against the tire's capacity.
    pub(super) capacity: f64,
    /// The most particular rule that was applied.
    pub(super) citation: Citation,
    pub(super) missing: Missing,
}

pub(super) fn factors(case: &Case<'_>, setup: &Setup) -> Factors {
    let tire = setup.tire();
    let mut result = Factors { capacity: 1.0, citation: Citation::AXLE_SHARE, missing: Missing::default() };
    if case.is_dual() && is_passenger(&tire) {
        result.citation = Citation::DUAL_PASSENGER;
    }
    // The rule beyond 2° is for passenger tires, and ends at 4°.
    let greatest = units::deg(4.0);
    let camber = case.axle.camber().unwrap_or_default().abs();
    let share = camber_load_factor(camber.min(greatest)).map_or(1.0, in_ratio);
    if share < 1.0 && (!is_passenger(&tire) || camber > greatest) {
        result.missing.add(Input::LoadAtCamber);
    }
    if share < 1.0 && is_passenger(&tire) {
        result.capacity *= share;
        result.citation = Citation::CAMBER;
    }
    let elsewhere = result.missing.or(factor_elsewhere(case, setup), Input::Kind, 1.0);
    if elsewhere > 1.0 {
        result.capacity /= elsewhere;
        result.citation = Citation::PASSENGER_TIRE_ON_TRUCK;
    }
    result
}

/// EU 458/2011: rear passenger tires of cars and light goods vehicles, towing, never above 100 km/h.
pub(super) fn allows_towing_allowance(case: &Case<'_>, tire: &Tire) -> bool {
    case.limits.allows_towing_allowance()
        && case.is_towing()
        && matches!(case.vehicle.kind(), Some(Kind::Passenger | Kind::Multipurpose | Kind::Truck))
        && case.place == Position::Rear
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

/// What the top speed asks of a tire. What is not known of it counts at its best, and is missing.
#[derive(Clone, Copy)]
pub(super) struct AtSpeed {
    pub(super) load_share: f64,
    pub(super) load_citation: Citation,
    pub(super) extra: Pressure,
    pub(super) pressure_citation: Citation,
    /// Of the share of load.
    pub(super) load_missing: Missing,
    /// Of the pressure.
    pub(super) pressure_missing: Missing,
}

pub(super) fn at_speed(case: &Case<'_>, setup: &Setup) -> AtSpeed {
    let (mut load_missing, mut pressure_missing) = (Missing::default(), Missing::default());
    let rule = load_speed(case, setup).map(|speed| setup.tire().at_speed(speed));
    let (whole, none) = (units::percent(100.0), units::kpa(0.0));
    let (share, extra) = match rule {
        None => {
            (load_missing.or(None, Input::TopSpeed, whole), pressure_missing.or(None, Input::TopSpeed, none))
        }
        Some(None) => (
            load_missing.or(None, Input::LoadIndex, whole),
            pressure_missing.or(None, Input::LoadIndex, none),
        ),
        Some(Some(rule)) => (
            load_missing.or(rule.load_share(), Input::LoadAtSpeed, whole),
            pressure_missing.or(rule.pressure_increase(), Input::PressureAtSpeed, none),
        ),
    };
    let rule = rule.flatten();
    AtSpeed {
        load_share: in_ratio(share),
        load_citation: rule.map_or(Citation::SPEED_LOAD, |rule| rule.load_citation()),
        extra,
        pressure_citation: rule.map_or(Citation::SPEED_PRESSURE, |rule| rule.pressure_citation()),
        load_missing,
        pressure_missing,
    }
}

pub(super) const TIRE_LOAD: Definition =
    Definition::new(CheckId::TireLoad, Harm::Overload, Run::Axle(tire_load)).vital();

fn tire_load(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let tire = setup.tire();
    let service = tire.service().ok_or(Input::LoadIndex.into());
    let ((load, unknown), service) = both_of(case.greatest_load(), service)?;
    let factors = factors(case, setup);
    let at_speed = at_speed(case, setup);
    let mut missing = unknown.and(factors.missing).and(at_speed.load_missing);
    if case.vehicle.kind().is_none() {
        missing.add(Input::Kind);
    }
    // No tire carries more in a pair than alone.
    let index = missing.or(service.index(case.formation(&tire)), Input::DualLoadIndex, service.single());
    let share = case.share(load, &tire);
    let mut capacity = index.load() * factors.capacity * at_speed.load_share;
    let mut citation = if at_speed.load_share < 1.0 { at_speed.load_citation } else { factors.citation };
    if !no_more(in_kg(share), in_kg(capacity)) && allows_towing_allowance(case, &tire) {
        capacity *= TOWING_SHARE;
        citation = Citation::TOWING;
    }
    let why = Why::either(Reason::LoadCarried, Reason::LoadNotCarried);
    at_best(at_least(Toleranced::exact(capacity), share, Value::Mass, why, citation), missing)
}

/// The law of load and pressure for a setup on this axle; what is missing is named by the caller.
pub(super) fn law(case: &Case<'_>, setup: &Setup) -> Result<Inflation, InflationError> {
    setup.tire().inflation(case.formation(&setup.tire()), setup.reference_pressure())
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

/// The most that a setup's tire carries at a pressure on this vehicle, and what keeps it from being known.
fn capacity(case: &Case<'_>, setup: &Setup, law: &Inflation, pressure: Pressure) -> (Mass, Missing) {
    let mut missing = Missing::default();
    let factor = missing.or(factor_elsewhere(case, setup), Input::Kind, 1.0);
    // Below the least pressure of the law a tire carries less than there.
    let load = law.load_at(pressure).unwrap_or_else(|_| {
        missing.add(Input::LoadAtPressure);
        law.load_at(law.min_pressure()).unwrap_or(law.reference_load())
    });
    (load / factor, missing)
}

/// What an original carries, where that is known, and by one pressure only.
pub(super) fn carried_at(case: &Case<'_>, setup: &Setup, pressure: Pressure) -> Option<Mass> {
    let law = law(case, setup).ok().filter(|law| law.lower().is_none())?;
    let (load, missing) = capacity(case, setup, &law, pressure);
    missing.is_none().then_some(load)
}

/// Judges by a law. Where the letter of a load range leaves two reference pressures, a finding is within or
/// beyond only if both agree. One that rests on a letter alone is never better than marginal, and one that
/// rests on a remembered pressure never worse.
pub(super) fn by_law(law: &Inflation, judge: impl Fn(&Inflation) -> Found) -> Found {
    let mut finding = judge(law)?;
    if let Some(lower) = law.lower() {
        let other = judge(&lower)?;
        let agreed = finding.verdict == other.verdict;
        let same_cause = finding.reason == other.reason;
        // What is beyond by both is shown against the bound that it breaks by less.
        finding = if agreed && finding.verdict == Verdict::Beyond {
            if finding.is_tighter_than(&other) { other } else { finding }
        } else {
            finding.graver(other, other.is_tighter_than(&finding))
        };
        if !agreed {
            (finding.verdict, finding.reason) = (Verdict::Marginal, Reason::PressureOfTwo);
        } else if finding.verdict == Verdict::Beyond && !same_cause {
            finding.reason = Reason::PressureWrongByBoth;
        }
    }
    if !law.is_by_letter() {
        return Ok(finding);
    }
    // No reference pressure makes a tire carry more than its load index.
    if law.reference_citation().is_from_memory() && finding.reason != Reason::LoadAboveIndex {
        finding = finding.marginal_if(Verdict::Beyond, Reason::FromMemoryOnly);
    }
    Ok(finding.marginal_if(Verdict::Within, Reason::PressureByLetter))
}

pub(super) const TIRE_LOAD_VS_ORIGINAL: Definition =
    Definition::new(CheckId::TireLoadVsOriginal, Harm::Law, Run::Axle(tire_load_vs_original)).of(Rules::Kind);

fn tire_load_vs_original(case: &Case<'_>) -> Found {
    let (original, proposed) = case.both()?;
    if same_tire(original, proposed) {
        // It carries no less at no less pressure, whatever its law. At the pressure it was at nothing changes, though
        // it may be less than the maker asked for.
        need!(placard = case.axle.placard() => Placard, pressure = proposed.pressure() => Pressure);
        let why = Why::either(Reason::CapacityKept, Reason::CapacityLost);
        let kept = at_least(Toleranced::exact(pressure), placard, Value::Pressure, why, Citation::PLACARD);
        let unchanged = original.pressure() == Some(pressure);
        return Ok(if unchanged {
            kept.marginal_if(Verdict::Beyond, Reason::UnchangedBelowPlacard)
        } else {
            kept
        });
    }
    let index = |setup: &Setup| setup.tire().service()?.index(case.formation(&setup.tire()));
    if proposed.tire().service().is_some() {
        need!(_own = index(proposed) => DualLoadIndex);
    }
    need!(old = index(original) => OriginalLoadIndex, new = index(proposed) => LoadIndex);
    let lower = new < old;
    if lower && !case.limits.allows_lower_load_index() {
        return Ok(Finding::new(Verdict::Beyond, Reason::LoadIndexLower, Citation::ORIGINAL)
            .reading(Value::LoadIndex(new), Bound::AtLeast(Value::LoadIndex(old))));
    }
    need!(placard = case.axle.placard() => Placard, pressure = proposed.pressure() => Pressure);
    let why = Why::either(
        if lower { Reason::CapacityKeptLowerIndex } else { Reason::CapacityKept },
        Reason::CapacityLost,
    );
    let old = law(case, original).map_err(missing_for_original)?;
    let new = law(case, proposed).map_err(missing_for_law)?;
    by_law(&old, |old| {
        let (least, missing) = capacity(case, original, old, placard);
        if !missing.is_none() {
            return Err(missing);
        }
        by_law(&new, |new| {
            let (carried, missing) = capacity(case, proposed, new, pressure);
            let citation = new.model().citation();
            at_best(at_least(Toleranced::exact(carried), least, Value::Mass, why, citation), missing)
        })
    })
}

pub(super) const LOAD_RESERVE: Definition =
    Definition::new(CheckId::LoadReserve, Harm::Law, Run::Axle(load_reserve)).of(Rules::Kind);

fn load_reserve(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let tire = setup.tire();
    need!(load = case.axle.normal_load() => NormalLoad, placard = case.axle.placard() => Placard);
    let law = law(case, setup).map_err(missing_for_law)?;
    let limit = case.limits.load_reserve();
    let share = case.share(load, &tire) * factor_elsewhere(case, setup).unwrap_or(1.0);
    if !no_more(in_kg(share), in_kg(law.reference_load())) {
        let why = Why::either(Reason::LoadCarried, Reason::LoadAboveIndex);
        let index = Toleranced::exact(law.reference_load());
        return Ok(at_least(index, share, Value::Mass, why, law.model().citation()));
    }
    by_law(&law, |law| {
        let (capacity, missing) = capacity(case, setup, law, placard);
        let taken = case.share(load, &tire) / capacity;
        let why = Why::either(Reason::ReservePresent, Reason::ReserveMissing);
        let finding = at_most(Toleranced::exact(taken), limit.value(), Value::Ratio, why, limit.citation());
        // The law knows passenger tires only; elsewhere a thin reserve breaks good practice.
        let is_law = case.limits.load_reserve_is_law() && is_passenger(&tire);
        let thin = !is_law && no_more(in_ratio(taken), 1.0);
        let finding = if thin { finding.marginal_if(Verdict::Beyond, Reason::ReserveThin) } else { finding };
        at_best(finding, missing)
    })
}

pub(super) const SPEED_SYMBOL: Definition =
    Definition::new(CheckId::SpeedSymbol, Harm::Overload, Run::Axle(speed_symbol)).vital();

fn speed_symbol(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    need!(top = case.own_top_speed() => TopSpeed);
    let tire = setup.tire();
    // Above an open-ended mark only the maker knows.
    let in_size = |kmh, open_ended| (units::kmh(kmh), open_ended, Citation::SPEED_IN_SIZE);
    let (speed, open_ended, citation) = match (tire.service(), tire.size().size_speed_letter()) {
        (Some(service), _) => {
            (service.speed().speed(), service.speed().is_open_ended(), Citation::SPEED_SYMBOL)
        }
        (None, Some(SizeSpeedLetter::S)) => in_size(180.0, false),
        (None, Some(SizeSpeedLetter::H)) => in_size(210.0, false),
        (None, Some(SizeSpeedLetter::V)) => in_size(210.0, true),
        (None, Some(SizeSpeedLetter::Z)) => in_size(240.0, true),
        (None, None) => return Err(Input::LoadIndex.into()),
    };
    if open_ended && top > speed {
        return Err(Input::LoadAtSpeed.into());
    }
    let why = Why::either(Reason::FastEnough, Reason::TooSlow);
    let finding = at_least(Toleranced::exact(speed), top, Value::Velocity, why, citation);
    match case.limits.snow_speed_floor() {
        Some(floor) if finding.verdict == Verdict::Beyond && setup.is_snow() => {
            let why = Why::either(Reason::SnowFloor, Reason::TooSlow);
            Ok(at_least(Toleranced::exact(speed), floor.value(), Value::Velocity, why, floor.citation()))
        }
        _ => Ok(finding),
    }
}

pub(super) const WHEEL_LOAD: Definition =
    Definition::new(CheckId::WheelLoad, Harm::Overload, Run::Axle(wheel_load)).vital();

fn wheel_load(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    // Neither bears more than the weaker of the two.
    let of_adaptor = setup.adaptor().map(|adaptor| adaptor.rating());
    let rating = setup.wheel_rating().or(of_adaptor.flatten()).ok_or(Input::WheelRating.into());
    let ((load, mut missing), rating) = both_of(case.greatest_load(), rating)?;
    let share: Mass = load / case.wheels();
    let mut rating = missing.or(setup.wheel_rating(), Input::WheelRating, rating);
    if case.vehicle.kind().is_none() {
        missing.add(Input::Kind);
    }
    // A larger tire bends the wheel with a longer lever: what it then bears, only its maker knows.
    if let Some(largest) = setup.wheel_rating_diameter() {
        let diameter =
            missing.or(setup.tire().size().overall_diameter_nominal(), Input::TireDimensions, largest);
        if !no_more(in_mm(diameter), in_mm(largest)) {
            missing.add(Input::WheelRatingAtDiameter);
        }
    }
    let mut why = Why { within: Reason::WheelCarries, beyond: Reason::WheelOverloaded, ..PLAIN };
    if let Some(of_adaptor) = of_adaptor {
        let of_adaptor = missing.or(of_adaptor, Input::AdaptorRating, rating);
        if of_adaptor < rating || setup.wheel_rating().is_none() {
            (rating, why.beyond) = (of_adaptor, Reason::AdaptorOverloaded);
        }
    }
    let finding = at_least(Toleranced::exact(rating), share, Value::Mass, why, Citation::WHEEL_RATING);
    at_best(finding, missing)
}
