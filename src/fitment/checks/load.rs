//! Are tires and wheels strong and fast enough?

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::case::{Case, both_of, need, same_tire};
use crate::fitment::check::{Check, CheckId, Input, Reason, Verdict};
use crate::fitment::facts::{Law, SetupFacts};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_best, at_least, at_most, no_more};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::Teller;
use crate::tire::SizeSpeedLetter;
use crate::tire::inflation::factors::TOWING_SHARE;
use crate::units::{self, Mass, in_kg, in_mm, in_ratio};
use crate::{Citation, Toleranced};

pub(super) const TIRE_LOAD: Definition =
    Definition::new(CheckId::TireLoad, Harm::Overload, Run::Axle(tire_load), DependsOn::Purchase).vital();

fn tire_load(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let service = setup.tire().service().ok_or(Input::LoadIndex.into());
    let ((load, unknown), service) = both_of(case.greatest_load, service)?;
    let (factors, at_speed) = (&setup.factors, &setup.at_speed);
    let mut missing = unknown.and(factors.missing).and(at_speed.load_missing);
    if case.vehicle.kind().is_none() {
        missing.add(Input::Kind);
    }
    // No tire carries more in a pair than alone.
    let index = missing.or(setup.index, Input::DualLoadIndex, service.single());
    let share = setup.share(case, load);
    let mut capacity = index.load() * factors.capacity * at_speed.load_share;
    let mut citation = if at_speed.load_share < 1.0 { at_speed.load_citation } else { factors.citation };
    if !no_more(in_kg(share), in_kg(capacity)) && setup.allows_towing_allowance {
        capacity *= TOWING_SHARE;
        citation = Citation::TOWING;
    }
    let why = Why::either(Reason::LoadCarried, Reason::LoadNotCarried);
    at_best(at_least(Toleranced::exact(capacity), share, Value::Mass, why, citation), missing)
}

/// What is missing for the law of the original tire, where it would be another input for the proposed one.
fn missing_for_original(of_proposed: Input) -> Input {
    match of_proposed {
        Input::ReferencePressure | Input::LoadAtPressure => Input::OriginalReferencePressure,
        _ => Input::OriginalLoadIndex,
    }
}

/// What an original carries at the pressure of the placard, where that is known, and by one law only.
pub(super) fn carried_at_placard(original: &SetupFacts<'_>) -> Option<Mass> {
    let law = original.law.as_ref().ok().filter(|law| law.lower().is_none())?;
    let (load, missing) = law.at_placard?;
    missing.is_none().then_some(load)
}

/// Judges by a law. Where the letter of a load range leaves two reference pressures, a finding is within or
/// beyond only if both agree. One that rests on a letter alone is never better than marginal, and one that
/// rests on a remembered pressure never worse.
pub(super) fn by_law(law: &Law, judge: impl Fn(&Law) -> Found) -> Found {
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

pub(super) const TIRE_LOAD_VS_ORIGINAL: Definition = Definition::new(
    CheckId::TireLoadVsOriginal,
    Harm::Law,
    Run::Axle(tire_load_vs_original),
    DependsOn::Purchase,
)
.of(Rules::Kind);

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
    if proposed.tire().service().is_some() {
        need!(_own = proposed.index => DualLoadIndex);
    }
    need!(old = original.index => OriginalLoadIndex, new = proposed.index => LoadIndex);
    let lower = new < old;
    if lower && !case.limits.allows_lower_load_index() {
        return Ok(Finding::new(Verdict::Beyond, Reason::LoadIndexLower, Citation::ORIGINAL)
            .reading(Value::LoadIndex(new), Bound::AtLeast(Value::LoadIndex(old))));
    }
    need!(_placard = case.axle.placard() => Placard, pressure = proposed.pressure() => Pressure);
    let why = Why::either(
        if lower { Reason::CapacityKeptLowerIndex } else { Reason::CapacityKept },
        Reason::CapacityLost,
    );
    let old = original.law.as_ref().map_err(|&of_proposed| missing_for_original(of_proposed))?;
    let new = proposed.law.as_ref().map_err(|&input| input)?;
    by_law(old, |old| {
        need!(at_placard = old.at_placard => Placard);
        let (least, missing) = at_placard;
        if !missing.is_none() {
            return Err(missing);
        }
        by_law(new, |new| {
            let (carried, missing) = new.capacity(pressure);
            let citation = new.model().citation();
            at_best(at_least(Toleranced::exact(carried), least, Value::Mass, why, citation), missing)
        })
    })
}

pub(super) const LOAD_RESERVE: Definition =
    Definition::new(CheckId::LoadReserve, Harm::Law, Run::Axle(load_reserve), DependsOn::Purchase)
        .of(Rules::Kind);

fn load_reserve(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    need!(load = case.axle.normal_load() => NormalLoad, _placard = case.axle.placard() => Placard);
    let law = setup.law.as_ref().map_err(|&input| input)?;
    let limit = case.limits.load_reserve();
    let share = setup.share(case, load) * setup.elsewhere.unwrap_or(1.0);
    if !no_more(in_kg(share), in_kg(law.reference_load())) {
        let why = Why::either(Reason::LoadCarried, Reason::LoadAboveIndex);
        let index = Toleranced::exact(law.reference_load());
        return Ok(at_least(index, share, Value::Mass, why, law.model().citation()));
    }
    by_law(law, |law| {
        need!(at_placard = law.at_placard => Placard);
        let (capacity, missing) = at_placard;
        let taken = setup.share(case, load) / capacity;
        let why = Why::either(Reason::ReservePresent, Reason::ReserveMissing);
        let finding = at_most(Toleranced::exact(taken), limit.value(), Value::Ratio, why, limit.citation());
        // The law knows passenger tires only; elsewhere a thin reserve breaks good practice.
        let is_law = case.limits.load_reserve_is_law() && setup.is_passenger;
        let thin = !is_law && no_more(in_ratio(taken), 1.0);
        let finding = if thin { finding.marginal_if(Verdict::Beyond, Reason::ReserveThin) } else { finding };
        at_best(finding, missing)
    })
}

pub(super) const SPEED_SYMBOL: Definition =
    Definition::new(CheckId::SpeedSymbol, Harm::Overload, Run::Axle(speed_symbol), DependsOn::Purchase)
        .vital();

fn speed_symbol(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    need!(top = case.own_top_speed => TopSpeed);
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
    Definition::new(CheckId::WheelLoad, Harm::Overload, Run::Axle(wheel_load), DependsOn::Purchase).vital();

fn wheel_load(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    // Neither bears more than the weaker of the two.
    let of_adaptor = setup.adaptor().map(|adaptor| adaptor.rating());
    let rating = setup.wheel_rating().or(of_adaptor.flatten()).ok_or(Input::WheelRating.into());
    let ((load, mut missing), rating) = both_of(case.greatest_load, rating)?;
    let share: Mass = load / case.wheels;
    let mut rating = missing.or(setup.wheel_rating(), Input::WheelRating, rating);
    if case.vehicle.kind().is_none() {
        missing.add(Input::Kind);
    }
    // A larger tire bends the wheel with a longer lever: what it then bears, only its maker knows.
    if let Some(largest) = setup.wheel_rating_diameter() {
        let diameter = missing.or(setup.nominal_diameter, Input::TireDimensions, largest);
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

pub(in crate::fitment) fn tell_tire_load(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let setup = case.proposed?;
    let load = told::greatest_load(case, tell)?;
    told::share(case, setup, load, tell);
    let index = setup.index.unwrap_or(setup.tire().service()?.single());
    let load = in_kg(index.load());
    let factor = told::factor(case, setup, tell);
    let speed = told::speed_share(case, setup, tell);
    tell.given(format_args!("load of the load index {index}"), load, "kg", Citation::LOAD_INDEX);
    let capacity = load * factor * speed / 100.0;
    let source = check.citation().filter(|&source| source != Citation::TOWING);
    let name = format_args!("load that the tire carries");
    let carries =
        tell.worked(name, ("{0} × {1} × {2} / 100", &[load, factor, speed]), capacity, "kg", source);
    if !told::is_measured(check, carries) {
        let towing = carries * TOWING_SHARE;
        let name = format_args!("load that it carries while towing");
        tell.worked(name, ("{0} × 1.15", &[carries]), towing, "kg", Citation::TOWING);
    }
    Some(())
}

pub(in crate::fitment) fn tell_tire_load_vs_original(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let (original, proposed) = case.both().ok()?;
    match check.measured()? {
        Value::Pressure(_) => {
            let held = ("pressure of the placard", Some(Citation::PLACARD));
            told::as_given(check, [held, ("intended pressure of the same tire", None)], tell)
        }
        Value::Mass(_) => {
            // Of two pressures that a letter may mean, the pair that the finding shows.
            let shown = |law: &Law, pressure, number: Option<Value>| {
                let lower = law.lower();
                let load = |law: &Law| in_kg(law.capacity(pressure).0);
                let is_it =
                    |law: &Law| number.and_then(Value::number).is_some_and(|n| told::is_same(load(law), n));
                if is_it(law) { *law } else { lower.filter(is_it).unwrap_or(*law) }
            };
            let (placard, pressure) = (case.axle.placard()?, proposed.pressure()?);
            let Bound::AtLeast(least) = check.limit()? else { return None };
            let (old, new) = (original.law.as_ref().ok()?, proposed.law.as_ref().ok()?);
            told::capacity(&shown(old, placard, Some(least)), placard, told::ORIGINAL, tell)?;
            told::capacity(&shown(new, pressure, check.measured()), pressure, told::PROPOSED, tell)?;
            Some(())
        }
        _ => {
            let of_index = Some(Citation::DESIGNATION);
            told::as_given(check, [("load index of the original", of_index), ("load index", of_index)], tell)
        }
    }
}

pub(in crate::fitment) fn tell_load_reserve(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let setup = case.proposed?;
    let law = setup.law.as_ref().ok()?;
    let load = told::normal_load(case, tell)?;
    let share = told::share(case, setup, load, tell);
    let Value::Ratio(taken) = check.measured()? else {
        let elsewhere = setup.elsewhere.unwrap_or(1.0);
        if elsewhere > 1.0 {
            let name =
                format_args!("share that counts against the index of a passenger tire on such a vehicle");
            let source = Citation::PASSENGER_TIRE_ON_TRUCK;
            tell.worked(name, ("{0} × 1.10", &[share]), share * elsewhere, "kg", source);
        }
        let name = format_args!("load of the load index");
        tell.given(name, in_kg(law.reference_load()), "kg", Citation::LOAD_INDEX);
        return Some(());
    };
    let limit = case.limits.load_reserve();
    tell.given(
        format_args!("most that may be taken"),
        units::in_percent(limit.value()),
        "%",
        limit.citation(),
    );
    let taken_by = |law: &Law| law.at_placard.map(|(capacity, _)| share / in_kg(capacity));
    let is_shown = |law: &Law| taken_by(law).is_some_and(|by| told::is_same(by, in_ratio(taken)));
    let law = if is_shown(law) { *law } else { law.lower().filter(is_shown).unwrap_or(*law) };
    let capacity = told::capacity(&law, case.axle.placard()?, told::PROPOSED, tell)?;
    let name = format_args!("share of it that the normal load takes");
    tell.worked(
        name,
        ("{0} / {1} × 100", &[share, capacity]),
        share / capacity * 100.0,
        "%",
        limit.citation(),
    );
    Some(())
}

pub(in crate::fitment) fn tell_speed_symbol(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let tire = case.proposed?.tire();
    let source = if tire.service().is_some() { Citation::SPEED_SYMBOL } else { Citation::SPEED_IN_SIZE };
    let floor = case.limits.snow_speed_floor();
    let held =
        match floor.filter(|floor| check.limit() == Some(Bound::AtLeast(Value::Velocity(floor.value())))) {
            Some(floor) => ("least speed of a snow tire", Some(floor.citation())),
            None => ("speed that the vehicle can reach", None),
        };
    told::as_given(check, [held, ("speed that the tire is made for", Some(source))], tell)
}

pub(in crate::fitment) fn tell_wheel_load(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let (load, wheels) = (told::greatest_load(case, tell)?, told::wheels(case, tell));
    let name = format_args!("share of one wheel");
    tell.worked(name, ("{0} / {1}", &[load, wheels]), load / wheels, "kg", Citation::WHEEL_RATING);
    let of_adaptor = check.reason() == Reason::AdaptorOverloaded;
    let rated = if of_adaptor {
        "load that the adaptor is rated for"
    } else {
        "least load that wheel and adaptor are rated for"
    };
    told::value(tell, format_args!("{rated}"), check.measured()?, None);
    Some(())
}
