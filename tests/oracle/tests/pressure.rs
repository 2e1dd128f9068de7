//! Laws of pressure and load, of load and speed, of temperature, stiffness, gearing and speedometers.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::Toleranced;
use beadseat::rim::RimDiameter;
use beadseat::tire::{
    Formation, LoadIndex, Metric, SizeClass, SizeSpeedLetter, SpeedSymbol, Tire, TireSize,
    inflation::{
        Ambient, Inflation, InflationModel, SpeedVariation, camber_load_factor, camber_pressure_factor,
    },
    rolling::{Gearing, Rolling, Speedometer, SpeedometerLaw, hydroplaning_onset},
};
use beadseat::units::{celsius, deg, kg, kmh, kpa, meters, mm, percent, ratio, rpm};
use beadseat::uom::si::f64::{Length, Pressure};
use beadseat::uom::si::{
    frequency::cycle_per_minute,
    length::millimeter,
    mass::kilogram,
    pressure::kilopascal,
    ratio::{percent as percents, ratio as ratios},
    velocity::kilometer_per_hour,
};
use proptest::prelude::*;
use proptest::sample::select;

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * b.abs()
}

fn in_kpa(pressure: Pressure) -> f64 {
    pressure.get::<kilopascal>()
}

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn between(low: f64, high: f64, share: f64) -> f64 {
    (low + (high - low) * share).clamp(low, high)
}

/// A law of every model, with its own or a stated reference pressure.
fn law() -> impl Strategy<Value = Inflation> {
    (select(InflationModel::ALL), 60_u16..=180, prop::option::of(240.0..=900.0)).prop_map(
        |(model, index, stated)| {
            let stated = stated.or((model.reference_pressure(None).is_none()).then_some(550.0));
            model.law(LoadIndex::new(index).unwrap(), stated.map(kpa)).unwrap()
        },
    )
}

fn p_metric() -> impl Strategy<Value = Metric> {
    (29_u16..=60, 10_u8..=19, 13_u8..=22).prop_map(|(width, aspect, rim)| {
        format!("P{}/{}R{rim}", (width | 1) * 5, aspect * 5).parse().unwrap()
    })
}

/// Every column of every table, with the speed up to which it is rated.
fn variations() -> Vec<(SpeedVariation, f64)> {
    let mut all = Vec::new();
    for &symbol in SpeedSymbol::ALL {
        let rims = ["8", "12", "13", "18"].map(|rim| rim.parse::<RimDiameter>().unwrap());
        let found = [80, 121, 122, 170]
            .map(|index| SpeedVariation::commercial(LoadIndex::new(index).unwrap(), symbol))
            .into_iter()
            .chain(rims.map(|rim| SpeedVariation::motorcycle(rim, symbol)))
            .chain([None, Some(SizeSpeedLetter::V)].map(|mark| SpeedVariation::motorcycle_fast(symbol, mark)))
            .chain([SpeedVariation::agricultural(symbol)]);
        let rated = symbol.speed().get::<kilometer_per_hour>();
        all.extend(found.flatten().map(|variation| (variation, rated)));
    }
    all
}

fn radial() -> impl Strategy<Value = TireSize> {
    (select(&["", "P", "HL", "LT"][..]), 31_u16..=65, 5_u8..=17, 13_u8..=22).prop_map(
        |(prefix, width, aspect, rim)| {
            format!("{prefix}{}/{}R{rim}", (width | 1) * 5, aspect * 5).parse().unwrap()
        },
    )
}

fn surroundings() -> impl Strategy<Value = Ambient> {
    (-60.0..=60.0, -500.0..=5000.0).prop_map(|(t, h)| Ambient::new(celsius(t), meters(h)).unwrap())
}

fn meter() -> impl Strategy<Value = Speedometer> {
    let laws = [SpeedometerLaw::UnR39, SpeedometerLaw::UnR39Motorcycle];
    (select(laws.to_vec()), prop::option::of(-5.0..=15.0), 80.0..=125.0).prop_map(
        |(law, over_read, change)| {
            let meter = Speedometer::new(law).with_change(percent(change)).unwrap();
            over_read.map_or(meter, |e| meter.with_over_read(percent(e)).unwrap())
        },
    )
}

proptest! {
    #[test]
    fn load_and_pressure_are_monotone_and_inverse(law in law(), a in 0.0..=1.0, b in 0.0..=1.0) {
        let [least, reference] = [law.min_pressure(), law.reference_pressure()].map(in_kpa);
        let [low, high] = if a <= b { [a, b] } else { [b, a] }.map(|share| between(least, reference, share));
        let [less, more] = [low, high].map(|pressure| law.load_at(kpa(pressure)).unwrap());
        prop_assert!(less <= more && more <= law.reference_load());
        let [back, back_high] = [less, more].map(|load| in_kpa(law.pressure_for(load).unwrap()));
        prop_assert!(back <= back_high);
        prop_assert!(near(back, low), "{low} kPa and back: {back}");
        let again = law.load_at(kpa(back)).unwrap().get::<kilogram>();
        prop_assert!(near(again, less.get::<kilogram>()));
    }

    #[test]
    fn equal_load_is_carried(old in law(), new in law(), share in 0.0..=1.0) {
        let at = kpa(between(in_kpa(old.min_pressure()), in_kpa(old.reference_pressure()), share));
        let load = old.load_at(at).unwrap();
        match new.pressure_carrying_same_load(&old, at) {
            Ok(pressure) => prop_assert!(new.load_at(pressure).unwrap() >= load * (1.0 - 1e-9)),
            Err(_) => prop_assert!(load > new.reference_load()),
        }
    }

    #[test]
    fn only_tires_of_a_family_have_its_laws(size in radial(), kilopascals in 420.0..=900.0) {
        let tire: Tire = format!("{size} 100S").parse().unwrap();
        let TireSize::Metric(metric) = size else { unreachable!() };
        for &model in InflationModel::ALL {
            let law = tire.inflation_by(model, Formation::Single, Some(kpa(kilopascals)));
            prop_assert_eq!(law.is_ok(), model.holds_for(metric.class()));
        }
    }

    #[test]
    fn the_p_metric_formula_is_inverse_and_monotone(size in p_metric(), a in 150.0..=240.0, b in 150.0..=240.0) {
        prop_assert_eq!(size.class(), SizeClass::PMetric);
        let formula = size.p_metric_formula().unwrap();
        let [low, high] = [f64::min(a, b), f64::max(a, b)].map(|p| formula.load_at(kpa(p)).unwrap());
        prop_assert!(low <= high);
        prop_assert!(near(in_kpa(formula.pressure_for(low).unwrap()), f64::min(a, b)));
        // No other load index is nearer.
        let most = formula.load_at(kpa(240.0)).unwrap();
        let off = |index: LoadIndex| (index.load() - most).get::<kilogram>().abs();
        let nearest = formula.load_index().unwrap();
        prop_assert!(LoadIndex::all().all(|index| off(nearest) <= off(index)));
    }

    #[test]
    fn camber_takes_load_or_asks_for_pressure(camber in -4.0..=4.0) {
        let share = camber_load_factor(deg(camber)).unwrap().get::<ratios>();
        let pressure = camber_pressure_factor(deg(camber)).unwrap().get::<ratios>();
        prop_assert!(share <= 1.0 && pressure >= 1.0);
        // share^5 · pressure^4 = 1, the law of exponent 0.8.
        let power = |x: f64, n: usize| (0..n).fold(1.0, |product, _| product * x);
        prop_assert!(near(power(share, 5) * power(pressure, 4), 1.0));
    }

    #[test]
    fn tables_never_rise_with_speed(a in 0.0..=1.0, b in 0.0..=1.0) {
        for (variation, rated) in variations() {
            let ends = [variation.rows().next(), variation.rows().last()];
            let [first, last] = ends.map(|row| row.unwrap().0.get::<kilometer_per_hour>());
            let [slow, fast] =
                if a <= b { [a, b] } else { [b, a] }.map(|share| between(first, last, share));
            let [more, less] = [slow, fast].map(|v| variation.load_share(kmh(v)).unwrap().get::<percents>());
            prop_assert!(less <= more + 1e-9, "{more} % at {slow} km/h, {less} % at {fast} km/h");
            // Never less than the load index up to the rated speed, but for the fast motorcycle tires,
            // whose symbols say so; never more of it above.
            let is_fast = variation.citation() == beadseat::Citation::SPEED_VARIATION_MOTORCYCLE_FAST;
            prop_assert!(is_fast || fast > rated || less >= 100.0 - 1e-9);
            prop_assert!(slow < rated || more <= 100.0 + 1e-9, "{more} % at {slow} of {rated} km/h");
        }
    }

    #[test]
    fn there_and_back_the_pressure_is_the_same(here in surroundings(), there in surroundings(), gauge in 150.0..=600.0) {
        let moved = here.pressure_on_moving_to(&there, kpa(gauge)).unwrap();
        let back = there.pressure_on_moving_to(&here, moved).unwrap();
        prop_assert!(near(in_kpa(back), gauge), "{gauge} kPa and back: {}", in_kpa(back));
    }

    #[test]
    fn warmer_and_higher_is_more(t in -60.0..=100.0, dt in 0.1..=50.0, h in 0.0..=5000.0, dh in 1.0..=5000.0, gauge in 0.0..=1000.0) {
        let at = |t, h| Ambient::new(celsius(t), meters(h)).unwrap();
        let here = at(t, h);
        prop_assert!(here.pressure_on_moving_to(&at(t + dt, h), kpa(gauge)).unwrap() > kpa(gauge));
        prop_assert!(here.pressure_on_moving_to(&at(t, h + dh), kpa(gauge)).unwrap() > kpa(gauge));
    }

    #[test]
    fn four_times_the_pressure_floats_at_twice_the_speed(p in 50.0..=300.0) {
        let [once, four] = [p, 4.0 * p].map(|p| hydroplaning_onset(kpa(p)).unwrap().get::<kilometer_per_hour>());
        prop_assert!(near(2.0 * once, four));
    }

    #[test]
    fn more_load_sinks_further_and_more_pressure_less(size in radial(), load in 100.0..=500.0, more in 1.0..=200.0, p in 150.0..=400.0) {
        let k = size.vertical_stiffness(kpa(p)).unwrap();
        let harder = size.vertical_stiffness(kpa(p + 50.0)).unwrap();
        prop_assume!(harder.deflection(kg(load + more)).is_ok() && k.deflection(kg(load + more)).is_ok());
        let sinks = k.deflection(kg(load)).unwrap();
        prop_assert!(sinks.min() < sinks.nominal() && sinks.nominal() < sinks.max());
        prop_assert!(k.deflection(kg(load + more)).unwrap().nominal() > sinks.nominal());
        prop_assert!(harder.deflection(kg(load)).unwrap().nominal() < sinks.nominal());
        let (loaded, rolls) = (k.loaded_radius(kg(load)).unwrap(), k.rolling_radius(kg(load)).unwrap());
        prop_assert!(loaded.min() <= loaded.nominal() && loaded.nominal() <= loaded.max());
        prop_assert!(loaded.nominal() < rolls.nominal());
        prop_assert!(near(in_mm(loaded.nominal() + sinks.nominal()) * 2.0, in_mm(size.overall_diameter().unwrap().nominal())));
    }

    #[test]
    fn engine_and_road_speed_are_inverse(gear in 0.5..=5.0, axle in 2.0..=6.0, slip in 0.0..=10.0, c in 1500.0..=3500.0, v in 1.0..=300.0) {
        let gearing = Gearing::new(ratio(gear), ratio(axle)).unwrap().with_slip(percent(slip)).unwrap();
        let rolling = Rolling::from_circumference(Toleranced::exact(mm(c))).unwrap();
        let engine = gearing.engine_speed(&rolling, kmh(v));
        prop_assert!(near(gearing.road_speed(&rolling, engine).get::<kilometer_per_hour>(), v));
        let turns = engine.get::<cycle_per_minute>();
        prop_assert!(near(gearing.engine_speed(&rolling, gearing.road_speed(&rolling, rpm(turns))).get::<cycle_per_minute>(), turns));
        // Without slip the wheel turns as often as the engine, over the ratios.
        let free = Gearing::new(ratio(gear), ratio(axle)).unwrap().engine_speed(&rolling, kmh(v));
        prop_assert!(near(free.get::<cycle_per_minute>(), rolling.turns_at(kmh(v)).get::<cycle_per_minute>() * gear * axle));
    }

    #[test]
    fn what_is_shown_and_what_is_true_are_inverse(meter in meter(), v in 20.0..=250.0) {
        let shown = meter.shown_at(kmh(v)).unwrap();
        prop_assert!(shown.start() <= shown.end());
        for shown in [*shown.start(), *shown.end()] {
            let truly = meter.true_at(shown).unwrap();
            let [least, most] = [truly.start(), truly.end()].map(|v| v.get::<kilometer_per_hour>());
            prop_assert!(least <= v * (1.0 + 1e-9) && v * (1.0 - 1e-9) <= most);
        }
        let low = meter.true_at(*shown.end()).unwrap().start().get::<kilometer_per_hour>();
        let high = meter.true_at(*shown.start()).unwrap().end().get::<kilometer_per_hour>();
        prop_assert!(near(low, v) && near(high, v), "{v} km/h, and back {low} to {high}");
    }

    #[test]
    fn a_change_within_the_legal_ones_is_legal(over_read in -5.0..=15.0, v in 20.0..=250.0, change in 80.0..=125.0) {
        let meter = Speedometer::new(SpeedometerLaw::UnR39).with_over_read(percent(over_read)).unwrap();
        let legal = meter.legal_changes(kmh(v)).unwrap().unwrap();
        // Not on the edge itself.
        let [low, high] = [*legal.start(), *legal.end()].map(|x| x.get::<percents>());
        prop_assume!([low, high].iter().all(|edge| f64::abs(change - edge) > 1e-6));
        let changed = meter.with_change(percent(change)).unwrap();
        prop_assert_eq!(changed.is_legal_at(kmh(v)), Ok(Some(legal.contains(&percent(change)))));
    }

    #[test]
    fn an_unmeasured_speedometer_is_judged_as_all_it_may_be(v in 40.0..=250.0, change in 80.0..=125.0, share in 0.0..=1.0) {
        let law = SpeedometerLaw::UnR39;
        let unknown = Speedometer::new(law).with_change(percent(change)).unwrap();
        // An over-read that was legal at the speed the original tires would have.
        let most = law.max_over_read(kmh(v) / (change / 100.0)).unwrap();
        let known = unknown.with_over_read(most * share).unwrap();
        let shown = *known.shown_at(kmh(v)).unwrap().start();
        let all = unknown.shown_at(kmh(v)).unwrap();
        prop_assert!(*all.start() <= shown * (1.0 + 1e-9) && shown * (1.0 - 1e-9) <= *all.end());
        if let Some(legal) = unknown.is_legal_at(kmh(v)).unwrap() {
            prop_assert_eq!(known.is_legal_at(kmh(v)), Ok(Some(legal)));
        }
    }
}
