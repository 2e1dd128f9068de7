//! Stiffness, loaded radius, rolling, gearing, speedometer and odometer.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use std::ops::RangeInclusive;

use beadseat::tire::{
    Formation, Tire, TireSize,
    inflation::InflationModel,
    rolling::{
        Gearing, Rolling, Speedometer, SpeedometerLaw, StiffnessError, VerticalStiffness,
        axle_ratio_to_restore, effective_axle_ratio, true_distance,
    },
};
use beadseat::units::{bar, inches, kg, kmh, kpa, meters, mm, mph, percent, ratio, rpm};
use beadseat::uom::si::f64::{Length, Velocity};
use beadseat::uom::si::{
    force::newton,
    frequency::{cycle_per_minute, hertz},
    length::{inch, kilometer, millimeter},
    pressure::kilopascal,
    ratio::{percent as percents, ratio as ratios},
    velocity::{kilometer_per_hour, mile_per_hour},
};
use beadseat::{Citation, Toleranced};
use common::{Tally, number_of, numbers, rows};

/// Newtons in a kilogram-force.
const KGF: f64 = 9.806_65;

/// The rows do not round the section height to the millimetre, as the regulations do.
fn stiffness(width: f64, aspect: f64, rim_mm: f64, pressure: f64) -> VerticalStiffness {
    let diameter = Toleranced::exact(mm(rim_mm + 2.0 * width * aspect / 100.0));
    VerticalStiffness::from_dimensions(mm(width), percent(aspect), diameter, kpa(pressure)).unwrap()
}

fn n_per_mm(stiffness: VerticalStiffness) -> f64 {
    (stiffness.stiffness().nominal() * mm(1.0)).get::<newton>()
}

fn rolling(circumference: Length) -> Rolling {
    Rolling::from_circumference(Toleranced::exact(circumference)).unwrap()
}

/// Rolling circumference in proportion to a diameter: only the ratio counts.
fn of_diameter(diameter: Length) -> Rolling {
    rolling(diameter * 3.05)
}

/// Diameter without the rounding of the regulations, as the rows have it.
fn unrounded(size: &str) -> Length {
    let [width, aspect, rim] = numbers(&size.replace(['/', 'R'], " "))[..] else { panic!("{size}") };
    inches(rim) + mm(2.0 * width * aspect / 100.0)
}

/// The change of circumference of a row `205/55R16 -> 225/45R17`.
fn change_of_sizes(sizes: &str) -> f64 {
    let (old, new) = sizes.split_once(" -> ").unwrap();
    of_diameter(unrounded(new)).relative_to(&of_diameter(unrounded(old))).get::<ratios>()
}

const CONDITIONS: &str = "temperature, altitude, hydroplaning, see pressure_conditions.rs";
const CONTACT: &str = "footprint and contact pressure, which are not computed";
const BIAS_AIRCRAFT: &str = "bias-ply aircraft tires, not for belted car tires";
const DISCOURAGED: &str = "the row itself says not to use it";

#[test]
fn stiffness_rows() {
    let mut tally = Tally::of("vertical stiffness");
    for row in &rows("mechanics_worked.csv") {
        let (id, inputs) = (&row["id"], &row["inputs"]);
        let Some(number) = id.strip_prefix("CS-") else { continue };
        let common = |pressure| stiffness(205.0, 55.0, 406.4, pressure);
        match number {
            "01" | "03" => {
                assert_eq!(number_of(inputs, "DR"), 406.4, "{row}");
                row.rounds_to("expected", n_per_mm(common(number_of(inputs, "P"))) / KGF);
            }
            "02" => row.rounds_to("expected", n_per_mm(common(number_of(inputs, "P")))),
            "06" => row.rounds_to("expected", n_per_mm(stiffness(225.0, 60.0, 406.4, 240.0))),
            "07" => row.rounds_to("expected", n_per_mm(stiffness(225.0, 45.0, 431.8, 250.0)) / KGF),
            "08" => row.rounds_to("expected", n_per_mm(stiffness(225.0, 45.0, 431.8, 250.0))),
            "17" => row.rounds_to("expected", n_per_mm(stiffness(205.0, 60.0, 381.0, 220.0))),
            "10" => {
                let sinks = common(250.0).deflection(kg(615.0)).unwrap();
                row.rounds_to("expected", sinks.nominal().get::<millimeter>());
            }
            "11" => {
                let radius = common(250.0).loaded_radius(kg(615.0)).unwrap();
                row.rounds_to("expected", radius.nominal().get::<millimeter>());
            }
            "12" => row.rounds_to("expected", n_per_mm(common(200.0)) / n_per_mm(common(250.0))),
            // The pressure at which the same deflection carries 0.8 of the load.
            "15" => {
                let share = n_per_mm(common(row.number("expected"))) / n_per_mm(common(250.0));
                assert!((share - number_of(inputs, "L/L0")).abs() < 1e-8, "{share} for {row}");
            }
            "13" | "14" => {
                let tire: Tire = "P205/55R16 89S".parse().unwrap();
                let model =
                    if number == "13" { InflationModel::PMetric } else { InflationModel::PMetricFormula };
                let law = tire.inflation_by(model, Formation::Single, Some(kpa(250.0))).unwrap();
                let share = law.load_at(kpa(200.0)).unwrap() / law.reference_load();
                row.rounds_to("expected", share.get::<ratios>());
            }
            "16" => {
                let law =
                    "205/55R16 91V".parse::<Tire>().unwrap().inflation(Formation::Single, None).unwrap();
                assert_eq!(law.reference_pressure(), bar(2.5));
                let pressure = law.pressure_for(law.reference_load() * number_of(inputs, "L/L0")).unwrap();
                row.rounds_to("expected", pressure.get::<kilopascal>());
            }
            _ => {
                let reason = match number {
                    "09" => DISCOURAGED,
                    "18" | "20" | "21" | "22" => CONTACT,
                    "25" | "26" | "27" | "28" | "29" | "30" => BIAS_AIRCRAFT,
                    _ => CONDITIONS,
                };
                tally.left(id, reason);
                continue;
            }
        }
        tally.checked(row);
    }
    tally.close(14, &[(CONDITIONS, 23), (CONTACT, 4), (BIAS_AIRCRAFT, 6), (DISCOURAGED, 1)]);
}

const DIMENSIONS: &str = "diameters and the factor of the rolling circumference, see dimensions.rs";
const LOADED_AS_ROLLING: &str = "the loaded radius taken for the rolling one, which is about 5 % short";
const PLAIN_GEOMETRY: &str = "a circle and its radius, which need no type";

#[test]
fn rolling_rows() {
    let mut tally = Tally::of("rolling, gearing, speedometer");
    let r39 = SpeedometerLaw::UnR39;
    let exact = Speedometer::new(r39).with_over_read(percent(0.0)).unwrap();
    for row in &rows("mechanics_worked.csv") {
        let (id, inputs) = (&row["id"], &row["inputs"]);
        let Some(number) = id.strip_prefix("RL-") else { continue };
        match number {
            // The note takes 63360/π as 20168.
            "13" | "14" => {
                let [diameter, radius] = ["OD", "SLR"].map(|key| inches(number_of(inputs, key)));
                let rolling = Rolling::from_loaded_radius(diameter, radius).unwrap();
                row.near("expected", rolling.revolutions_per_mile(), 0.01);
                assert_eq!(rolling.citation(), Citation::ROLLING_BY_LOADED_RADIUS);
            }
            "15" => {
                let one_turn = rolling(inches(40.0) * std::f64::consts::PI);
                row.rounds_to("expected", one_turn.revolutions_per_mile() * 40.0);
            }
            "23" => {
                let (r, sinks) = (number_of(inputs, "r"), number_of(inputs, "deflection"));
                // A load that sinks it so far.
                let k = stiffness(205.0, 55.0, 2.0 * r - 225.5, 250.0);
                let load = kg(n_per_mm(k) * sinks / KGF);
                row.near("expected", k.rolling_radius(load).unwrap().nominal().get::<millimeter>(), 1e-9);
            }
            "26" | "27" | "28" | "29" => {
                let v = numbers(inputs)[0];
                row.near("expected", r39.shown_at(kmh(v)).unwrap().end().get::<kilometer_per_hour>(), 1e-9);
            }
            "31" => {
                let shown = r39.shown_at(kmh(100.0)).unwrap();
                row.near("expected", shown.start().get::<kilometer_per_hour>(), 1e-9);
            }
            "32" => {
                let meter = exact.with_change(ratio(656.8 / 631.9)).unwrap();
                row.rounds_to("expected", only(meter.true_at(kmh(100.0)).unwrap()));
            }
            "33" => {
                let meter = exact.with_change(ratio(656.8 / 631.9)).unwrap();
                row.rounds_to("expected", only(meter.shown_at(kmh(100.0)).unwrap()));
                assert_eq!(meter.is_legal_at(kmh(100.0)), Ok(Some(false)), "{row}");
            }
            "34" | "35" => row.rounds_to("expected", 100.0 * (change_of_sizes(inputs) - 1.0)),
            "36" => {
                let meter = Speedometer::new(r39).with_over_read(percent(5.0)).unwrap();
                let changes = meter.legal_changes(kmh(100.0)).unwrap().unwrap();
                row.near("expected", changes.end().get::<percents>() - 100.0, 1e-9);
            }
            "37" => {
                let meter = Speedometer::new(r39).with_over_read(percent(5.0)).unwrap();
                let changes = meter.legal_changes(kmh(100.0)).unwrap().unwrap();
                row.rounds_to("expected", changes.start().get::<percents>() - 100.0);
            }
            "38" => {
                let covered = true_distance(meters(1_000_000.0), ratio(634.3 / 631.9));
                row.rounds_to("expected", covered.get::<kilometer>());
            }
            "40" => {
                let shown = SpeedometerLaw::UsCommercial.shown_at(mph(50.0)).unwrap();
                row.near("expected", (*shown.end() - mph(50.0)).get::<mile_per_hour>(), 1e-9);
                row.near("expected", (mph(50.0) - *shown.start()).get::<mile_per_hour>(), 1e-9);
            }
            "42" => {
                let [gear, axle, slip] = ["ig", "if", "s"].map(|key| ratio(number_of(inputs, key)));
                let gearing = Gearing::new(gear, axle).unwrap().with_slip(slip).unwrap();
                let rolling = rolling(meters(number_of(inputs, "CR")));
                let engine = gearing.engine_speed(&rolling, kmh(number_of(inputs, "v")));
                row.rounds_to("expected", engine.get::<cycle_per_minute>());
                let back = gearing.road_speed(&rolling, engine).get::<kilometer_per_hour>();
                assert!((back - 100.0).abs() < 1e-9, "{row}");
            }
            // The radius that belongs to engine and road speed: 168 of the row is 168.068.
            "45" => {
                let gearing = Gearing::new(ratio(number_of(inputs, "gear")), ratio(1.0)).unwrap();
                let rolling = rolling(inches(row.number("expected")) * (2.0 * std::f64::consts::PI));
                let v = gearing.road_speed(&rolling, rpm(number_of(inputs, "rpm"))).get::<mile_per_hour>();
                assert!((v / number_of(inputs, "mph") - 1.0).abs() < 0.0005, "{v} for {row}");
                let radius = rolling.effective_radius().nominal().get::<inch>();
                row.near("expected", radius, 1e-9);
            }
            // 2652.58 of the row has six digits.
            "46" => {
                let gearing = Gearing::new(ratio(number_of(inputs, "gear")), ratio(1.0)).unwrap();
                let rolling = rolling(mm(row.number("expected")) * (2.0 * std::f64::consts::PI));
                let v = gearing.road_speed(&rolling, rpm(number_of(inputs, "rpm")));
                let v = v.get::<kilometer_per_hour>();
                assert!((v / number_of(inputs, "kmh") - 1.0).abs() < 2e-6, "{v} for {row}");
            }
            "47" | "48" => {
                let change = of_diameter(inches(33.0)).relative_to(&of_diameter(inches(29.0)));
                let by = if number == "47" { effective_axle_ratio } else { axle_ratio_to_restore };
                row.rounds_to("expected", by(ratio(3.73), change).get::<ratios>());
            }
            "49" => {
                let rolling = rolling(meters(number_of(inputs, "CR")));
                row.rounds_to("expected", rolling.turns_at(kmh(number_of(inputs, "v"))).get::<hertz>());
            }
            "53" => {
                let mismatch = rolling(inches(78.25)).relative_to(&rolling(inches(78.0)));
                row.rounds_to("expected", mismatch.get::<percents>() - 100.0);
            }
            _ => {
                let reason = match number {
                    "01" | "02" | "03" | "07" | "09" | "10" | "16" => DIMENSIONS,
                    "18" | "19" | "20" => LOADED_AS_ROLLING,
                    "22" => DISCOURAGED,
                    "04" | "50" | "52" => PLAIN_GEOMETRY,
                    _ => panic!("a new kind of row: {row}"),
                };
                tally.left(id, reason);
                continue;
            }
        }
        tally.checked(row);
    }
    tally.close(24, &[(DIMENSIONS, 7), (LOADED_AS_ROLLING, 3), (DISCOURAGED, 1), (PLAIN_GEOMETRY, 3)]);
}

#[track_caller]
fn only(speeds: RangeInclusive<Velocity>) -> f64 {
    assert_eq!(speeds.start(), speeds.end(), "the over-read is known, so there is one answer");
    speeds.start().get::<kilometer_per_hour>()
}

const OTHER_SIZE: &str = "no loaded radius in the row, or a size that is not read";

/// Published loaded radii lie in the span that the estimate is made of.
#[test]
fn published_loaded_radii() {
    let mut tally = Tally::of("static loaded radius");
    for row in &rows("published_dims.csv") {
        let (Ok(size), Some(radius)) =
            (row["designation"].parse::<TireSize>(), row["static_loaded_radius_mm"].parse::<f64>().ok())
        else {
            tally.left(&row["designation"], OTHER_SIZE);
            continue;
        };
        let Some(estimate) = size.loaded_radius_estimate() else {
            tally.left(&row["designation"], OTHER_SIZE);
            continue;
        };
        assert!(estimate.min() < mm(radius) && mm(radius) < estimate.max(), "{row}");
        tally.checked(row);
    }
    tally.close(10, &[(OTHER_SIZE, 6)]);
}

#[test]
fn an_unknown_over_read_gives_an_interval() {
    let unknown = Speedometer::new(SpeedometerLaw::UnR39);
    // On the original tires the original is legal, whatever it shows.
    assert_eq!(unknown.is_legal_at(kmh(100.0)), Ok(Some(true)));
    assert_eq!(unknown.with_change(percent(100.1)).unwrap().is_legal_at(kmh(100.0)), Ok(None));
    assert_eq!(unknown.with_change(percent(99.9)).unwrap().is_legal_at(kmh(100.0)), Ok(None));
    // 14 % is all that the law leaves at 100 km/h, on either side.
    assert_eq!(unknown.with_change(percent(120.0)).unwrap().is_legal_at(kmh(100.0)), Ok(Some(false)));
    assert_eq!(unknown.with_change(percent(85.0)).unwrap().is_legal_at(kmh(100.0)), Ok(Some(false)));
    assert_eq!(unknown.legal_changes(kmh(100.0)), Ok(None));

    let shown = unknown.with_change(percent(103.0)).unwrap().shown_at(kmh(103.0)).unwrap();
    assert!((*shown.start() - kmh(100.0)).abs() < kmh(1e-9));
    assert!((*shown.end() - kmh(114.0)).abs() < kmh(1e-9));
    let truly = unknown.true_at(kmh(114.0)).unwrap();
    assert!((*truly.start() - kmh(100.0)).abs() < kmh(1e-9) && *truly.end() == kmh(114.0));
    // It never runs backwards.
    assert_eq!(*unknown.true_at(kmh(3.0)).unwrap().start(), kmh(0.0));
}

#[test]
fn laws_of_speedometers_at_their_limits() {
    let motorcycle = SpeedometerLaw::UnR39Motorcycle;
    assert!(motorcycle.citation().is_from_memory());
    assert!((*motorcycle.shown_at(kmh(100.0)).unwrap().end() - kmh(118.0)).abs() < kmh(1e-9));
    for (over_read, legal) in [(0.0, true), (-0.01, false), (14.0, true), (14.01, false)] {
        let meter = Speedometer::new(SpeedometerLaw::UnR39).with_over_read(percent(over_read)).unwrap();
        assert_eq!(meter.is_legal_at(kmh(100.0)), Ok(Some(legal)), "{over_read}");
    }
    let us = SpeedometerLaw::UsCommercial;
    for (speed, inside) in [(79.9, false), (80.0, true), (80.46, true), (80.5, false), (100.0, false)] {
        assert_eq!(us.shown_at(kmh(speed)).is_ok(), inside, "{speed}");
        assert_eq!(us.max_over_read(kmh(speed)).is_ok(), inside, "{speed}");
    }
    for (over_read, legal) in [(-10.0, true), (-10.01, false), (10.0, true), (10.01, false)] {
        let meter = Speedometer::new(us).with_over_read(percent(over_read)).unwrap();
        assert_eq!(meter.is_legal_at(kmh(80.0)), Ok(Some(legal)), "{over_read}");
    }
    assert!((us.max_over_read(kmh(80.0)).unwrap().get::<percents>() - 10.0).abs() < 1e-9);
    assert!(Speedometer::new(us).true_at(kmh(80.0)).is_err(), "the law says nothing of shown speeds");
    for law in [SpeedometerLaw::UnR39, motorcycle] {
        for speed in [0.9, 600.1, -100.0, f64::NAN] {
            assert!(law.shown_at(kmh(speed)).is_err(), "{speed}");
            assert!(Speedometer::new(law).shown_at(kmh(speed)).is_err(), "{speed}");
            assert!(Speedometer::new(law).true_at(kmh(speed)).is_err(), "{speed}");
        }
        assert!(law.max_over_read(kmh(40.0)).unwrap() > law.max_over_read(kmh(120.0)).unwrap());
    }
    for (over_read, inside) in [(-20.0, true), (-20.1, false), (30.0, true), (30.1, false), (f64::NAN, false)]
    {
        let meter = Speedometer::new(SpeedometerLaw::UnR39).with_over_read(percent(over_read));
        assert_eq!(meter.is_ok(), inside, "{over_read}");
    }
    for (change, inside) in [(50.0, true), (49.9, false), (200.0, true), (200.1, false), (f64::NAN, false)] {
        let meter = Speedometer::new(SpeedometerLaw::UnR39).with_change(percent(change));
        assert_eq!(meter.is_ok(), inside, "{change}");
    }
}

#[test]
fn stiffness_refuses_what_the_formula_is_not_made_for() {
    for (text, known) in [
        ("205/55R16", true),
        ("HL245/40R19", true),
        ("LT245/75R17", true),
        ("195/70R15C", true),
        ("195/65-15", false),
        ("185/80B14", false),
        ("295/80R22.5", false),
    ] {
        let found = text.parse::<TireSize>().unwrap().vertical_stiffness(kpa(250.0));
        assert_eq!(found.is_ok(), known, "{text}");
        if let Err(error) = found {
            assert_eq!(error, StiffnessError::OtherTire, "{text}");
        }
    }
    let size: TireSize = "205/55R16".parse().unwrap();
    for (pressure, inside) in
        [(100.0, true), (99.9, false), (1200.0, true), (1200.1, false), (f64::NAN, false)]
    {
        assert_eq!(size.vertical_stiffness(kpa(pressure)).is_ok(), inside, "{pressure}");
    }
    let stiffness = size.vertical_stiffness(kpa(250.0)).unwrap();
    for load in [0.0, -1.0, 3000.0, f64::NAN] {
        assert!(stiffness.deflection(kg(load)).is_err(), "{load}");
        assert!(stiffness.loaded_radius(kg(load)).is_err(), "{load}");
        assert!(stiffness.rolling_radius(kg(load)).is_err(), "{load}");
    }
}

#[test]
fn the_spread_of_the_stiffness_reaches_the_radius() {
    let size: TireSize = "205/55R16".parse().unwrap();
    let k = size.vertical_stiffness(kpa(250.0)).unwrap();
    assert!(k.citation().is_from_memory());
    assert!(((k.stiffness().min() / k.stiffness().nominal()).get::<ratios>() - 0.85).abs() < 1e-12);
    assert!(((k.stiffness().max() / k.stiffness().nominal()).get::<ratios>() - 1.15).abs() < 1e-12);
    let sinks = k.deflection(kg(615.0)).unwrap();
    assert!(((sinks.max() / sinks.nominal()).get::<ratios>() - 1.0 / 0.85).abs() < 1e-12);
    let radius = k.loaded_radius(kg(615.0)).unwrap();
    let diameter = size.overall_diameter().unwrap();
    assert!((radius.min() - (diameter.min() / 2.0 - sinks.max())).abs() < mm(1e-9));
    assert!((radius.max() - (diameter.max() / 2.0 - sinks.min())).abs() < mm(1e-9));
    // The figure of data books for this size, from memory.
    assert!(radius.min() < mm(291.0) && mm(293.0) < radius.max());
}

#[test]
fn three_radii_are_in_their_order() {
    for text in ["205/55R16", "225/45R17", "LT245/75R17", "195/70R15C"] {
        let size: TireSize = text.parse().unwrap();
        let (free, rolls) =
            (size.overall_diameter().unwrap() * 0.5, size.rolling().unwrap().effective_radius());
        let loaded = size.loaded_radius_estimate().unwrap();
        assert!(loaded.nominal() < rolls.nominal() && rolls.nominal() < free.nominal(), "{text}");
    }
}

#[test]
fn rolling_refuses_what_no_tire_rolls() {
    for (length, inside) in
        [(500.0, true), (499.9, false), (6000.0, true), (6000.1, false), (f64::NAN, false)]
    {
        assert_eq!(Rolling::from_circumference(Toleranced::exact(mm(length))).is_ok(), inside, "{length}");
    }
    for (radius, inside) in [(20.65, true), (20.7, false), (15.5, true), (15.4, false), (f64::NAN, false)] {
        assert_eq!(Rolling::from_loaded_radius(inches(41.3), inches(radius)).is_ok(), inside, "{radius}");
    }
    let given = rolling(mm(1931.0));
    assert_eq!(given.citation(), Citation::ROLLING_GIVEN);
    assert!(given.circumference_at(kmh(180.0)).unwrap().nominal() > mm(1944.0));
}

#[test]
fn gearing_refuses_what_no_gearbox_has() {
    for (gear, inside) in [(0.1, true), (0.09, false), (100.0, true), (100.1, false), (f64::NAN, false)] {
        assert_eq!(Gearing::new(ratio(gear), ratio(3.0)).is_ok(), inside, "{gear}");
        assert_eq!(Gearing::new(ratio(3.0), ratio(gear)).is_ok(), inside, "{gear}");
    }
    let gearing = Gearing::new(ratio(1.0), ratio(4.0)).unwrap();
    for (slip, inside) in [(0.0, true), (-0.1, false), (50.0, true), (50.1, false), (f64::NAN, false)] {
        assert_eq!(gearing.with_slip(percent(slip)).is_ok(), inside, "{slip}");
    }
    assert_eq!(gearing.citation(), Citation::ENGINE_SPEED);
}
