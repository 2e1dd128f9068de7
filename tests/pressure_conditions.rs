//! Cold pressure at another temperature and altitude, and the onset of hydroplaning.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::Citation;
use beadseat::tire::{
    inflation::{Ambient, atmospheric_pressure},
    rolling::hydroplaning_onset,
};
use beadseat::units::{celsius, fahrenheit, kpa, meters, psi};
use beadseat::uom::si::f64::{Length, Pressure};
use beadseat::uom::si::{
    length::foot,
    pressure::kilopascal,
    velocity::{kilometer_per_hour, knot, meter_per_second, mile_per_hour},
};
use common::{Tally, number_of, numbers, rows};

fn at_sea_level(degrees: f64, scale: &str) -> Ambient {
    let temperature = if scale == "F" { fahrenheit(degrees) } else { celsius(degrees) };
    Ambient::at_sea_level(temperature).unwrap()
}

/// `uom` has seven digits of the pound a square inch; the rows have more.
fn in_psi(pressure: Pressure) -> f64 {
    pressure.get::<kilopascal>() / psi(1.0).get::<kilopascal>()
}

/// The pressure after a change of temperature written `20 C -> 10 C`.
fn after(inputs: &str, pressure: Pressure) -> Pressure {
    let (_, change) = inputs.split_once("; ").unwrap();
    let [from, scale, "->", to, _] = change.split(' ').collect::<Vec<_>>()[..] else { panic!("{inputs}") };
    let [from, to] = [from, to].map(|degrees| at_sea_level(degrees.parse().unwrap(), scale));
    from.pressure_on_moving_to(&to, pressure).unwrap()
}

const STIFFNESS: &str = "stiffness and contact, see rolling_stiffness.rs";
const OTHER_COEFFICIENT: &str = "hydroplaning by another coefficient or footprint, which is not the one used";
const WARM_TIRE: &str = "one cell of a table of warm tires, of which the others are not known";

#[test]
fn worked_rows() {
    let mut tally = Tally::of("temperature, altitude, hydroplaning");
    for row in &rows("mechanics_worked.csv") {
        let (id, inputs) = (&row["id"], &row["inputs"]);
        let Some(number) = id.strip_prefix("CS-") else { continue };
        let onset = |pressure| hydroplaning_onset(pressure).unwrap();
        match number {
            "31" | "32" | "33" | "36" => {
                row.rounds_to("expected", onset(psi(number_of(inputs, "p"))).get::<knot>());
            }
            // 10.35 of the row is 10.357.
            "37" => {
                let computed = onset(psi(number_of(inputs, "p"))).get::<mile_per_hour>();
                row.near("expected", computed, 0.001 * computed);
            }
            // The row was computed with seven digits of the pound a square inch.
            "38" => {
                let computed = onset(kpa(number_of(inputs, "p"))).get::<kilometer_per_hour>();
                row.near("expected", computed, 1e-7 * computed);
            }
            "39" => row.rounds_to("expected", onset(kpa(100.0)).get::<kilometer_per_hour>() / 10.0),
            "40" => row.rounds_to("expected", onset(kpa(100.0)).get::<meter_per_second>() / 10.0),
            "47" => row.rounds_to("expected", after(inputs, kpa(220.0)).get::<kilopascal>()),
            "48" => row.rounds_to("expected", (after(inputs, kpa(220.0)) - kpa(220.0)).get::<kilopascal>()),
            "49" => {
                let computed = in_psi(after(inputs, psi(32.0)) - psi(32.0));
                row.rounds_to("expected", computed);
            }
            "51" | "53" => {
                let computed = in_psi(after(inputs, psi(number_of(inputs, "p1"))));
                row.rounds_to("expected", computed);
            }
            "54" => {
                let (temperature, altitude) = (celsius(20.0), Length::new::<foot>(6000.0));
                let here = Ambient::at_sea_level(temperature).unwrap();
                let there = Ambient::new(temperature, altitude).unwrap();
                let computed = here.pressure_on_moving_to(&there, psi(32.0)).unwrap();
                row.rounds_to("expected", in_psi(computed));
            }
            "55" | "56" | "57" => {
                let altitude = Length::new::<foot>(numbers(inputs)[0]);
                let computed = in_psi(atmospheric_pressure(altitude).unwrap());
                row.rounds_to("expected", computed);
                let (_, unrounded) = row["source"].split_once("formula ").unwrap();
                assert!((computed - numbers(unrounded)[0]).abs() < 1e-6, "{computed} for {row}");
            }
            "59" => {
                let here = at_sea_level(20.0, "C");
                let there = Ambient::new(celsius(5.0), meters(1500.0)).unwrap();
                let computed = here.pressure_on_moving_to(&there, kpa(220.0)).unwrap();
                row.rounds_to("expected", computed.get::<kilopascal>());
            }
            _ => {
                let reason = match number {
                    "41" | "44" | "45" | "46" => OTHER_COEFFICIENT,
                    "60" => WARM_TIRE,
                    _ => STIFFNESS,
                };
                tally.left(id, reason);
                continue;
            }
        }
        tally.checked(row);
    }
    tally.close(18, &[(STIFFNESS, 25), (OTHER_COEFFICIENT, 4), (WARM_TIRE, 1)]);
}

#[test]
fn what_lies_outside_is_refused() {
    for (height, inside) in
        [(-500.0, true), (-501.0, false), (11_000.0, true), (11_001.0, false), (f64::NAN, false)]
    {
        assert_eq!(atmospheric_pressure(meters(height)).is_ok(), inside, "{height}");
        assert_eq!(Ambient::new(celsius(20.0), meters(height)).is_ok(), inside, "{height}");
    }
    for (degrees, inside) in [(-60.0, true), (-61.0, false), (150.0, true), (151.0, false), (f64::NAN, false)]
    {
        assert_eq!(Ambient::at_sea_level(celsius(degrees)).is_ok(), inside, "{degrees}");
    }
    let here = at_sea_level(20.0, "C");
    for (pressure, inside) in [(0.0, true), (-1.0, false), (1200.0, true), (1201.0, false), (f64::NAN, false)]
    {
        assert_eq!(here.pressure_on_moving_to(&here, kpa(pressure)).is_ok(), inside, "{pressure}");
    }
    for (pressure, inside) in
        [(50.0, true), (49.9, false), (1200.0, true), (1200.1, false), (f64::NAN, false)]
    {
        assert_eq!(hydroplaning_onset(kpa(pressure)).is_ok(), inside, "{pressure}");
    }
}

#[test]
fn the_same_surroundings_change_nothing_and_a_closed_tire_that_cools_is_sucked_in() {
    let here = at_sea_level(20.0, "C");
    let same = here.pressure_on_moving_to(&here, kpa(230.0)).unwrap();
    assert!((same - kpa(230.0)).abs() < kpa(1e-9));
    let colder = here.pressure_on_moving_to(&at_sea_level(-40.0, "C"), kpa(0.0)).unwrap();
    assert!(colder < kpa(0.0), "{colder:?}");
}

#[test]
fn sources_are_named() {
    assert_eq!(at_sea_level(0.0, "C").citation(), Citation::GAS_LAW);
    assert!(!Citation::HYDROPLANING.is_from_memory());
    assert!(!Citation::ATMOSPHERE.is_from_memory());
}
