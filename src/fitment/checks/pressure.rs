//! Are the intended pressures enough, and not too much?

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use super::load::{by_law, carried_at_placard};
use crate::Citation;
use crate::fitment::case::{Case, need, same_tire};
use crate::fitment::check::{Check, CheckId, Input, Missing, Reason, Verdict};
use crate::fitment::facts::{AtSpeed, Law, SetupFacts, load_speed};
use crate::fitment::finding::{Finding, Found, at_best, no_more};
use crate::fitment::pressures::{Assumes, Needed, Pressures};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::Teller;
use crate::tire::inflation::Inflation;
use crate::tire::inflation::factors::{TOWING_KPA, TOWING_SHARE};
use crate::units::{self, Mass, Pressure, in_kg, in_kpa};

/// A pressure that must not be exceeded, and whose word that is.
#[derive(Clone, Copy)]
struct Ceiling {
    most: Pressure,
    citation: Citation,
}

impl Ceiling {
    fn lower(self, other: Option<Self>) -> Self {
        other.filter(|other| other.most < self.most).unwrap_or(self)
    }

    fn is_broken_by(&self, pressure: Pressure) -> bool {
        !no_more(in_kpa(pressure), in_kpa(self.most))
    }

    fn broken(&self, pressure: Pressure) -> Finding {
        Finding::new(Verdict::Beyond, Reason::PressureTooHigh, self.citation)
            .reading(Value::Pressure(pressure), Bound::AtMost(Value::Pressure(self.most)))
    }
}

/// What is molded on the tire, marked on the wheel or known of the valve: the least of them.
#[inline(always)]
fn stated_ceiling(setup: &SetupFacts<'_>) -> Option<Ceiling> {
    let ceiling = |most: Option<Pressure>, citation| most.map(|most| Ceiling { most, citation });
    let given = Citation::MAXIMUM_PRESSURE_GIVEN;
    let of_valve = setup.valve().and_then(|valve| valve.max_pressure());
    [
        ceiling(setup.max_pressure(), given),
        ceiling(setup.wheel_max_pressure(), given),
        ceiling(of_valve, Citation::VALVE_PRESSURE),
    ]
    .into_iter()
    .flatten()
    .reduce(|a, b| a.lower(Some(b)))
}

/// What a tire of no molded maximum bears by its speed symbol: a rule for passenger tires.
fn symbol_ceiling(setup: &SetupFacts<'_>) -> Option<Ceiling> {
    let most = setup.tire().max_cold_pressure().filter(|_| setup.max_pressure().is_none())?;
    Some(Ceiling { most, citation: Citation::MAXIMUM_PRESSURE })
}

/// The least of what is stated and what the speed symbol tells.
fn permitted(setup: &SetupFacts<'_>) -> Option<Ceiling> {
    let by_symbol = symbol_ceiling(setup);
    stated_ceiling(setup).map(|stated| stated.lower(by_symbol)).or(by_symbol)
}

/// How far above its reference pressure a tire of no molded maximum and no rule of its own may be: common
/// practice, no source.
const OVER_REFERENCE: f64 = 1.10;

/// What a tire of no molded maximum bears by its class. Never less than the regulations ask for.
#[inline(always)]
fn class_ceiling(setup: &SetupFacts<'_>, law: &Inflation, asked: Pressure) -> Option<Ceiling> {
    if setup.max_pressure().is_some() {
        return None;
    }
    let reference = law.reference_pressure();
    let practice =
        Ceiling { most: reference * OVER_REFERENCE, citation: Citation::MAXIMUM_PRESSURE_PRACTICE };
    let ceiling = symbol_ceiling(setup).unwrap_or(practice);
    Some(Ceiling { most: ceiling.most.max(asked), ..ceiling })
}

/// The pressures of a setup.
#[derive(Clone, Copy)]
struct Intended {
    /// For normal use. Where only the other is known, whatever that carries.
    normal: Option<Pressure>,
    /// For full load and high speed.
    full: Pressure,
}

impl Intended {
    fn of(setup: &SetupFacts<'_>) -> Result<Self, Missing> {
        need!(full = setup.pressure_full_load().or(setup.pressure()) => Pressure);
        Ok(Self { normal: setup.pressure(), full })
    }

    fn highest(self) -> Pressure {
        self.normal.map_or(self.full, |normal| normal.max(self.full))
    }

    fn lowest(self) -> Pressure {
        self.normal.map_or(self.full, |normal| normal.min(self.full))
    }
}

/// The maker's pressures for the original tire on this axle, if that is what is proposed. They do not settle
/// more load than the load index allows.
fn placards_of_same_tire(case: &Case<'_>, setup: &SetupFacts<'_>) -> Option<(Pressure, Pressure)> {
    let placard = case.axle.placard()?;
    let same = case.original.is_some_and(|original| same_tire(original, setup));
    (same && !needs_towing_allowance(case, setup))
        .then(|| (placard, case.axle.placard_full_load().unwrap_or(placard)))
}

/// Whether the greatest load is above what the load index allows without a trailer, and within what towing does.
fn needs_towing_allowance(case: &Case<'_>, setup: &SetupFacts<'_>) -> bool {
    if !setup.allows_towing_allowance {
        return false;
    }
    let Some((greatest, index)) = GreatestLoad::of(case, setup).ok().zip(setup.index) else { return false };
    !no_more(in_kg(greatest.load), in_kg(index.load()))
}

/// The greatest load on a tire.
struct GreatestLoad {
    /// Referred to the load index at top speed and camber.
    load: Mass,
    at_speed: AtSpeed,
    /// What is not known of the factors and was taken at its best.
    missing: Missing,
}

impl GreatestLoad {
    fn of(case: &Case<'_>, setup: &SetupFacts<'_>) -> Result<Self, Missing> {
        let (greatest, unknown) = case.greatest_load?;
        let (factors, at_speed) = (&setup.factors, setup.at_speed);
        let load = setup.share(case, greatest) / (factors.capacity * at_speed.load_share);
        let missing = unknown.and(factors.missing).and(at_speed.load_missing).and(at_speed.pressure_missing);
        Ok(Self { load, at_speed, missing })
    }
}

/// What a load asks of the tire, referred to its load index, and of its pressure.
#[derive(Clone, Copy)]
struct Need {
    load: Mass,
    /// The least pressure for the load alone; none if no pressure carries it.
    for_load: Option<Pressure>,
    /// What a regulation adds to it for speed and towing.
    additions: Pressure,
    /// Whose rule the addition is, where there is one.
    citation: Option<Citation>,
    /// What is not known and was taken at its best.
    missing: Missing,
}

impl Need {
    /// Of a load to which nothing is added.
    fn of_load(law: &Inflation, load: Mass, missing: Missing) -> Self {
        let for_load = law.pressure_for(load).ok();
        Self { load, for_load, additions: units::kpa(0.0), citation: None, missing }
    }

    fn pressure(&self) -> Option<Pressure> {
        self.for_load.map(|for_load| for_load + self.additions)
    }

    /// Whether the law says no less than this: only a floor that is a rule of the class decides.
    fn is_below_the_law(&self, law: &Inflation) -> bool {
        !law.floor_is_rule() && self.for_load.is_some_and(|for_load| for_load <= law.min_pressure())
    }

    /// The answer for a report.
    fn needed(&self, law: &Inflation) -> Needed {
        match self.pressure() {
            None => Needed::NoPressure,
            Some(_) if !self.missing.is_none() || self.is_below_the_law(law) => Needed::NotKnown,
            Some(least) => Needed::AtLeast(least),
        }
    }

    /// Holds a pressure against it.
    fn held(&self, law: &Inflation, pressure: Pressure, too_low: Reason) -> Found {
        let citation = self.citation.unwrap_or(law.model().citation());
        let Some(least) = self.pressure() else {
            let short = Finding::new(Verdict::Beyond, Reason::LoadAboveIndex, law.model().citation());
            let index = Value::Mass(law.reference_load());
            return Ok(short.reading(index, Bound::AtLeast(Value::Mass(self.load))));
        };
        let (verdict, reason) = if no_more(in_kpa(least), in_kpa(pressure)) {
            (Verdict::Within, Reason::PressureEnough)
        } else if self.is_below_the_law(law) {
            return Err(self.missing.and(Input::LoadAtPressure.into()));
        } else {
            (Verdict::Beyond, too_low)
        };
        let finding = Finding::new(verdict, reason, citation)
            .reading(Value::Pressure(pressure), Bound::AtLeast(Value::Pressure(least)));
        at_best(finding, self.missing)
    }
}

/// What the greatest load needs at top speed.
#[inline(always)]
fn full_load_need(case: &Case<'_>, setup: &SetupFacts<'_>, law: &Inflation) -> Result<Need, Missing> {
    let GreatestLoad { load, at_speed, missing } = GreatestLoad::of(case, setup)?;
    let mut need = Need {
        additions: at_speed.extra,
        citation: (at_speed.extra.value > 0.0).then_some(at_speed.pressure_citation),
        ..Need::of_load(law, load, missing)
    };
    // Up to the load index towing asks for nothing but itself. Above it, for the pressure of the full index, or
    // the placard's if that is more, and 20 kPa.
    let index = law.reference_load();
    if need.for_load.is_none()
        && setup.allows_towing_allowance
        && no_more(in_kg(load), in_kg(index) * TOWING_SHARE)
    {
        let for_index = law.reference_pressure();
        let placard = need.missing.or(case.axle.placard(), Input::Placard, for_index);
        let more = (placard - for_index - at_speed.extra).max(units::kpa(0.0));
        need.for_load = Some(for_index);
        need.additions = at_speed.extra + more + units::kpa(TOWING_KPA);
        need.citation = Some(Citation::TOWING);
    }
    Ok(need)
}

/// What the normal load needs.
#[inline(always)]
fn normal_load_need(case: &Case<'_>, setup: &SetupFacts<'_>, law: &Inflation) -> Result<Need, Missing> {
    need!(normal_load = case.axle.normal_load() => NormalLoad);
    let load = setup.share(case, normal_load) / setup.factors.capacity;
    Ok(Need::of_load(law, load, setup.factors.missing))
}

/// The pressures a setup needs, each where its inputs are known.
pub(in crate::fitment) fn pressures(case: &Case<'_>) -> Option<Pressures> {
    let setup = case.proposed?;
    let law = setup.law.as_ref().ok();
    let needed = |need: fn(&Case<'_>, &SetupFacts<'_>, &Inflation) -> Result<Need, Missing>| {
        law.and_then(|law| Some(need(case, setup, law).ok()?.needed(law))).unwrap_or(Needed::NotKnown)
    };
    let as_original = || {
        let (law, original) = law.zip(case.original)?;
        let carried = carried_at_placard(original)?;
        // The proposed tire may count for less than its index, as the original does in that load.
        let load = carried * setup.elsewhere?;
        Some(Need::of_load(law, load, Missing::default()).needed(law))
    };
    Some(Pressures::new(
        case.place,
        [needed(normal_load_need), needed(full_load_need), as_original().unwrap_or(Needed::NotKnown)],
        permitted(setup).map(|ceiling| ceiling.most),
        law.map(|law| Assumes::of(law)),
    ))
}

pub(super) const INFLATION: Definition =
    Definition::new(CheckId::Inflation, Harm::Overload, Run::Axle(inflation), DependsOn::Purchase)
        .vital()
        .of(Rules::Kind);

fn inflation(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let intended = Intended::of(setup)?;
    // The pressure for full load alone settles what is too much or too little for that, and no more.
    let unknown = intended.normal.map_or(Input::Pressure.into(), |_| Missing::default());
    at_best(of_pressures(case, setup, intended).map_err(|missing| missing.and(unknown))?, unknown)
}

fn of_pressures(case: &Case<'_>, setup: &SetupFacts<'_>, intended: Intended) -> Found {
    let highest = intended.highest();
    if let Some(ceiling) = stated_ceiling(setup).filter(|ceiling| ceiling.is_broken_by(highest)) {
        return Ok(ceiling.broken(highest));
    }

    let placards = placards_of_same_tire(case, setup);
    let on_placard = placards.is_some_and(|(placard, placard_full)| {
        let normal_is = intended.normal.is_none_or(|normal| no_more(in_kpa(placard), in_kpa(normal)));
        normal_is && no_more(in_kpa(placard_full), in_kpa(intended.full))
    });
    let settled = |verdict, reason| {
        let normal = intended.normal.unwrap_or(intended.full);
        let placard = placards.map_or(normal, |(placard, _)| placard);
        Finding::new(verdict, reason, Citation::PLACARD)
            .reading(Value::Pressure(normal), Bound::AtLeast(Value::Pressure(placard)))
    };
    // The maker's own pressures are no higher than the maker's own pressures.
    let of_maker = placards
        .is_some_and(|(placard, placard_full)| no_more(in_kpa(highest), in_kpa(placard.max(placard_full))));
    if on_placard && of_maker {
        return Ok(settled(Verdict::Within, Reason::PressureOnPlacard));
    }
    let law = match (&setup.law, symbol_ceiling(setup)) {
        (Ok(law), _) => law,
        // A ceiling that needs no law.
        (Err(_), Some(ceiling)) if ceiling.is_broken_by(highest) => return Ok(ceiling.broken(highest)),
        (Err(_), _) if on_placard && setup.max_pressure().is_some() => {
            return Ok(settled(Verdict::Within, Reason::PressureOnPlacard));
        }
        (Err(_), _) if on_placard => return Ok(settled(Verdict::Marginal, Reason::PressureAbovePlacard)),
        (&Err(missing), _) => return Err(missing.into()),
    };

    let found = by_law(law, |law| {
        let full_need = full_load_need(case, setup, law);
        let reference = law.reference_pressure();
        let asked = full_need.ok().and_then(|need| need.pressure()).unwrap_or(reference).max(reference);
        let most = class_ceiling(setup, law, asked);
        if let Some(ceiling) = most.filter(|ceiling| ceiling.is_broken_by(highest)) {
            return Ok(ceiling.broken(highest));
        }
        let enough = if on_placard {
            settled(Verdict::Within, Reason::PressureOnPlacard)
        } else {
            enough(case, setup, law, full_need, intended)?
        };
        let is_above = most.is_some() && !no_more(in_kpa(highest), in_kpa(asked));
        if is_above && enough.verdict == Verdict::Within {
            let bound = Bound::AtMost(Value::Pressure(asked));
            return Ok(Finding::new(
                Verdict::Marginal,
                Reason::PressureAboveReference,
                law.reference_citation(),
            )
            .reading(Value::Pressure(highest), bound));
        }
        Ok(enough)
    })?;
    // The maker's placard settles the original tire, whatever its reference pressure is thought to be.
    if on_placard && found.reason == Reason::PressureByLetter {
        return Ok(settled(Verdict::Within, Reason::PressureOnPlacard));
    }
    // What the law of load finds too little, the placard of the unchanged tire may yet allow.
    let unchanged = case.original.is_some_and(|original| same_tire(original, setup));
    let by_law = found.reason != Reason::PressureTooHigh;
    if unchanged && by_law && found.verdict == Verdict::Beyond && case.axle.placard().is_none() {
        return Err(Input::Placard.into());
    }
    Ok(found)
}

/// Holds the pressures against what the loads need: each pressure its own load, or one pressure the greatest.
/// The pair with less to spare is shown.
fn enough(
    case: &Case<'_>,
    setup: &SetupFacts<'_>,
    law: &Inflation,
    full_need: Result<Need, Missing>,
    intended: Intended,
) -> Found {
    let (lowest, floor) = (intended.lowest(), law.min_pressure());
    if law.floor_is_rule() && !no_more(in_kpa(floor), in_kpa(lowest)) {
        let short = Finding::new(Verdict::Beyond, Reason::PressureBelowFloor, law.model().citation());
        return Ok(short.reading(Value::Pressure(lowest), Bound::AtLeast(Value::Pressure(floor))));
    }
    let full_held = full_need.and_then(|need| need.held(law, intended.full, Reason::PressureTooLowFull));
    // One pressure for everything carries the normal load if it carries the greatest.
    if setup.pressure_full_load().is_none() && full_held.is_ok() {
        return full_held.map(|finding| up_to_permitted(setup, finding));
    }
    let normal_held = intended.normal.ok_or(Input::Pressure.into()).and_then(|normal| {
        normal_load_need(case, setup, law)?.held(law, normal, Reason::PressureTooLowNormal)
    });
    let finding = match (full_held, normal_held) {
        (Ok(a), Ok(b)) => a.graver(b, b.is_tighter_than(&a)),
        // What one of them decides, the other cannot mend.
        (Ok(only), Err(_)) | (Err(_), Ok(only)) if only.verdict == Verdict::Beyond => only,
        (Err(missing), Err(_)) if setup.pressure_full_load().is_none() => return Err(missing),
        (Err(a), Err(b)) => return Err(a.and(b)),
        (Err(missing), Ok(_)) | (Ok(_), Err(missing)) => return Err(missing),
    };
    Ok(up_to_permitted(setup, finding))
}

/// Shows the most that is stated beside the least that is needed.
fn up_to_permitted(setup: &SetupFacts<'_>, finding: Finding) -> Finding {
    match (finding.verdict, finding.measured, finding.limit) {
        (Verdict::Within, Some(measured), Some(Bound::AtLeast(least))) => {
            let most = permitted(setup).map(|ceiling| Value::Pressure(ceiling.most));
            let fits = |most: &Value| least.number() <= most.number() && measured.number() <= most.number();
            match most.filter(fits) {
                Some(most) => finding.reading(measured, Bound::Between(least, most)),
                None => finding,
            }
        }
        _ => finding,
    }
}

pub(in crate::fitment) fn tell_inflation(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let setup = case.proposed?;
    match check.limit()? {
        Bound::AtMost(most) => tell_most(case, setup, check, most, tell)?,
        Bound::AtLeast(least) => tell_least(case, setup, check, least, tell)?,
        Bound::Between(least, most) => {
            tell_least(case, setup, check, least, tell)?;
            let source = permitted(setup)?.citation;
            told::value(tell, format_args!("most pressure that is permitted"), most, source);
        }
        Bound::Equals(_) => return None,
    }
    let (what, source) = match check.measured()? {
        Value::Mass(_) => ("load of the load index", Some(Citation::LOAD_INDEX)),
        _ => ("intended pressure", None),
    };
    told::value(tell, format_args!("{what}"), check.measured()?, source);
    Some(())
}

/// The laws that a finding may rest on: where a letter leaves two pressures, both.
fn laws(setup: &SetupFacts<'_>) -> impl Iterator<Item = Law> {
    let law = setup.law.ok();
    law.into_iter().chain(law.and_then(|law| law.lower()))
}

/// Tells how the most that a pressure may be comes about.
fn tell_most(
    case: &Case<'_>,
    setup: &SetupFacts<'_>,
    check: &Check,
    most: Value,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let is_it = |pressure: Pressure| most.number().is_some_and(|most| told::is_same(in_kpa(pressure), most));
    let stated = [stated_ceiling(setup), symbol_ceiling(setup)].into_iter().flatten();
    let mut stated =
        stated.filter(|ceiling| check.reason() == Reason::PressureTooHigh && is_it(ceiling.most));
    if let Some(ceiling) = stated.next() {
        told::pressure(tell, "most pressure that is permitted", ceiling.most, Some(ceiling.citation));
        return Some(());
    }
    let asked_by = |law: &Inflation| {
        let need = full_load_need(case, setup, law).ok().and_then(|need| need.pressure());
        need.unwrap_or(law.reference_pressure()).max(law.reference_pressure())
    };
    let is_ceiling =
        |law: &Inflation| class_ceiling(setup, law, asked_by(law)).is_some_and(|most| is_it(most.most));
    let law = laws(setup).find(|law| is_it(asked_by(law)) || is_ceiling(law))?;
    let is_asked = is_it(asked_by(&law));
    let need = full_load_need(case, setup, &law).ok().filter(|need| need.pressure().is_some());
    let need = need.and_then(|_| tell_need(case, setup, &law, true, tell));
    let source = law.reference_citation();
    let reference = told::pressure(
        tell,
        "pressure that the load index is carried at",
        law.reference_pressure(),
        Some(source),
    );
    let asked = match need {
        Some(need) => {
            let form = ("max({0}, {1})", &[need, reference][..]);
            tell.worked(format_args!("most that the load asks for"), form, need.max(reference), "kPa", None)
        }
        None => reference,
    };
    if is_asked {
        return Some(());
    }
    let name = format_args!("most pressure of a tire of no molded maximum");
    let most = most.number()?;
    match symbol_ceiling(setup) {
        Some(ceiling) => {
            let symbol =
                told::pressure(tell, "most by the speed symbol", ceiling.most, Some(ceiling.citation));
            tell.worked(name, ("max({0}, {1})", &[symbol, asked]), most, "kPa", ceiling.citation);
        }
        None => {
            let form = ("max({0} × 1.10, {1})", &[reference, asked][..]);
            tell.worked(name, form, most, "kPa", Citation::MAXIMUM_PRESSURE_PRACTICE);
        }
    }
    Some(())
}

/// Tells how the least that a pressure may be comes about.
fn tell_least(
    case: &Case<'_>,
    setup: &SetupFacts<'_>,
    check: &Check,
    least: Value,
    tell: &mut Teller<'_>,
) -> Option<()> {
    if check.citation() == Some(Citation::PLACARD) {
        told::value(tell, format_args!("pressure of the placard"), least, Citation::PLACARD);
        return Some(());
    }
    if check.reason() == Reason::PressureBelowFloor {
        told::value(tell, format_args!("least pressure of such a tire"), least, check.citation());
        return Some(());
    }
    let least_number = least.number()?;
    let is_it = |need: &Need| match least {
        Value::Mass(_) => need.pressure().is_none() && told::is_same(in_kg(need.load), least_number),
        _ => need.pressure().is_some_and(|pressure| told::is_same(in_kpa(pressure), least_number)),
    };
    for law in laws(setup) {
        for (need, is_full) in
            [(full_load_need(case, setup, &law), true), (normal_load_need(case, setup, &law), false)]
        {
            if need.is_ok_and(|need| is_it(&need)) {
                if let Value::Mass(_) = least {
                    tell_needed_load(case, setup, is_full, tell)?;
                } else {
                    tell_need(case, setup, &law, is_full, tell)?;
                }
                return Some(());
            }
        }
    }
    None
}

/// Tells how a load that is referred to the load index comes about.
fn tell_needed_load(
    case: &Case<'_>,
    setup: &SetupFacts<'_>,
    is_full: bool,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    let load = if is_full { told::greatest_load(case, tell) } else { told::normal_load(case, tell) }?;
    let share = told::share(case, setup, load, tell);
    let factor = told::factor(case, setup, tell);
    let name = format_args!("load that the load index must stand for");
    if !is_full {
        return Some(tell.worked(name, ("{0} / {1}", &[share, factor]), share / factor, "kg", None));
    }
    let speed = told::speed_share(case, setup, tell);
    let form = ("{0} / ({1} × {2} / 100)", &[share, factor, speed][..]);
    Some(tell.worked(name, form, share / (factor * speed / 100.0), "kg", None))
}

/// Tells how the pressure that a load needs comes about.
fn tell_need(
    case: &Case<'_>,
    setup: &SetupFacts<'_>,
    law: &Inflation,
    is_full: bool,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    let load = tell_needed_load(case, setup, is_full, tell)?;
    let need =
        if is_full { full_load_need(case, setup, law) } else { normal_load_need(case, setup, law) }.ok()?;
    let least = in_kpa(need.pressure()?);
    let extra = |tell: &mut Teller<'_>| {
        let speed = load_speed(case, setup).map(units::in_kmh);
        let told = speed.and_then(|kmh| setup.tire().tell_pressure_at_speed(kmh, tell));
        told.unwrap_or_else(|| {
            let none = setup.at_speed.extra;
            told::pressure(
                tell,
                "pressure to add for speed, at best",
                none,
                Some(setup.at_speed.pressure_citation),
            )
        })
    };
    if need.citation == Some(Citation::TOWING) {
        law.tell_reference(told::PROPOSED, tell);
        let reference = in_kpa(law.reference_pressure());
        let extra = extra(tell);
        let placard = case.axle.placard().unwrap_or(law.reference_pressure());
        let placard =
            told::pressure(tell, "pressure of the placard, or the same", placard, Some(Citation::PLACARD));
        let form = ("{0} + {1} + max({2} − {0} − {1}, 0) + 20", &[reference, extra, placard][..]);
        return Some(tell.worked(
            format_args!("least pressure while towing"),
            form,
            least,
            "kPa",
            Citation::TOWING,
        ));
    }
    let for_load = law.tell_pressure_for(units::kg(load), tell)?;
    if !is_full {
        return Some(for_load);
    }
    let extra = extra(tell);
    let form = ("{0} + {1}", &[for_load, extra][..]);
    Some(tell.worked(format_args!("least pressure at that speed"), form, least, "kPa", need.citation))
}
