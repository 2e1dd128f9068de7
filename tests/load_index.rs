//! The load index against published tables.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::tire::{LoadIndex, LoadRange, ServiceDescription, SizeClass, SpeedSymbol, Tire, TireSize};
use beadseat::units::{kg, kmh};
use beadseat::uom::si::{mass::kilogram, pressure::psi, ratio::ratio, velocity::kilometer_per_hour};
use common::{Row, Tally, numbers, rows};

fn kilograms(index: u16) -> f64 {
    LoadIndex::new(index).unwrap().load().get::<kilogram>()
}

#[test]
fn table() {
    let (mut loads, mut pounds) = (Tally::of("load index, kg"), Tally::of("load index, printed pounds"));
    for (number, row) in rows("load_index.csv").iter().enumerate() {
        let index: LoadIndex = row["li"].parse().unwrap();
        assert_eq!(usize::from(index.number()), number, "{row}");
        assert_eq!(index.to_string(), row["li"], "{row}");
        row.near("kg", index.load().get::<kilogram>(), 1e-9);
        loads.checked(row);
        if row["lb_published"].is_empty() {
            pounds.left(&row["li"], "no printed pounds");
        } else {
            row.near("lb_published", f64::from(index.printed_pounds()), 0.0);
            pounds.checked(row);
        }
    }
    loads.close(280, &[]);
    pounds.close(76, &[("no printed pounds", 204)]);
    assert!("280".parse::<LoadIndex>().is_err());
}

#[test]
fn steps_are_even() {
    let all: Vec<f64> = LoadIndex::all().map(|index| index.load().get::<kilogram>()).collect();
    let steps: Vec<f64> = all.windows(2).map(|pair| 100.0 * (pair[1] / pair[0] - 1.0)).collect();
    assert_eq!(steps.len(), 279);
    let outside: Vec<usize> = (0..steps.len()).filter(|&at| !(2.35..=3.65).contains(&steps[at])).collect();
    assert_eq!(outside, [66], "300 to 307 kg is the one step outside");
    assert!((2.33..2.34).contains(&steps[66]), "{} %", steps[66]);
}

#[test]
fn eighty_steps_are_a_decade() {
    let mut tally = Tally::of("load index, exceptions from the decade rule");
    let exceptions = rows("load_index_decade_exceptions.csv");
    for row in &exceptions {
        let (low, high) = (row.number("li") as u16, row.number("li_decade") as u16);
        assert_eq!(low + 80, high, "{row}");
        row.near("kg", kilograms(low), 1e-9);
        row.near("kg_decade", kilograms(high), 1e-9);
        tally.checked(row);
    }
    tally.close(10, &[]);

    let not_tenfold: Vec<f64> = (0..200)
        .filter(|&low| (kilograms(low + 80) - 10.0 * kilograms(low)).abs() > 1e-6)
        .map(f64::from)
        .collect();
    assert_eq!(not_tenfold, exceptions.iter().map(|row| row.number("li")).collect::<Vec<_>>());
}

/// A second list. Where it differs, it is not ten times the mass of the index 80 steps away, and ours is.
#[test]
fn a_second_list() {
    const OUT_OF_SERIES: &str = "a mass that is not in the series of ten times for 80 steps";
    let mut tally = Tally::of("load index, a second list");
    for row in &rows("load_index_open_data.csv") {
        let index = row.number("load_index") as u16;
        let (ours, theirs) = (kilograms(index), row.number("mass_kg"));
        if matches!(index, 1 | 169 | 203 | 275) {
            let series = if index < 80 { kilograms(index + 80) / 10.0 } else { 10.0 * kilograms(index - 80) };
            assert!((ours - series).abs() < 1e-9 && (theirs - series).abs() > 1e-3, "{row}");
            tally.left(&format!("{index}: {theirs}"), OUT_OF_SERIES);
            continue;
        }
        row.near("mass_kg", ours, 1e-9);
        tally.checked(row);
    }
    tally.close(276, &[(OUT_OF_SERIES, 4)]);
}

const MOTORCYCLE: &str = "motorcycle sizes and their speeds";
const COMMERCIAL: &str = "load against speed of commercial tires";
const TOWING: &str = "towing";
const ON_TRUCK: &str = "passenger tire on a light truck";

#[test]
fn worked_cases() {
    let mut tally = Tally::of("load and speed, worked cases");
    for row in &rows("load_speed_cases.csv") {
        let input = &row["input"];
        let n = numbers(input);
        if let Some(rest) = input.strip_prefix("load index ") {
            let (index, quantity) = rest.split_once(" -> ").unwrap();
            let index: LoadIndex = index.parse().unwrap();
            match quantity {
                "mass" => row.near("expected", index.load().get::<kilogram>(), 1e-9),
                "printed pounds" | "pounds" => {
                    row.near("expected", f64::from(index.printed_pounds()), 0.0);
                }
                _ => panic!("{row}"),
            }
        } else if input.starts_with("minimum load index at 240 km/h on V") {
            let [speed, axle, tires] = n[..] else { panic!("{row}") };
            let share = load_share("91V", speed);
            least(row, axle / tires / share);
        } else if input.starts_with("minimum load index, axle ") {
            let [axle, tires, each] = n[..] else { panic!("{row}") };
            assert_eq!(axle / tires, each, "{row}");
            least(row, each);
        } else if input.starts_with("minimum load index for ") {
            least(row, n[0]);
        } else if let Some(rest) = input.strip_prefix("passenger ") {
            let (service, _) = rest.split_once(' ').unwrap();
            let index = service.parse::<ServiceDescription>().unwrap().single();
            let load = index.load().get::<kilogram>() * load_share(service, n[1]);
            row.near("expected", load, 1e-9);
        } else if let Some(rest) = input.strip_prefix("service description ") {
            service_description(row, rest);
        } else if input == "HL245/40R19 101Y -> mass" {
            let tire: Tire = "HL245/40R19 101Y".parse().unwrap();
            let TireSize::Metric(size) = tire.size() else { panic!("{row}") };
            assert_eq!(size.class(), SizeClass::HighLoad, "{row}");
            row.near("expected", tire.service().unwrap().single().load().get::<kilogram>(), 1e-9);
        } else if input == "XL 98 -> mass; HL 101 over XL 98" {
            let (mass, gain) = row["expected"].split_once("; ").unwrap();
            assert_eq!(kilograms(98), mass.parse::<f64>().unwrap(), "{row}");
            assert_eq!(format!("{:.2}", kilograms(101) / kilograms(98)), gain, "{row}");
        } else if input.starts_with("load range E -> ") {
            let (plies, pressure) = row["expected"].split_once("; ").unwrap();
            let range: LoadRange = "LRE".parse().unwrap();
            assert_eq!(range.ply_rating().to_string(), plies, "{row}");
            let reference = range.lt_reference_pressure().unwrap().get::<psi>();
            assert_eq!(format!("{reference:.0}"), pressure, "{row}");
        } else if input == "speed symbol H -> km/h" {
            row.near("expected", SpeedSymbol::H.speed().get::<kilometer_per_hour>(), 1e-9);
        } else {
            let reason = match input.split(' ').next() {
                Some("motorcycle") => MOTORCYCLE,
                Some("commercial") => COMMERCIAL,
                Some("rear") => TOWING,
                Some("P-metric") => ON_TRUCK,
                _ => panic!("a new kind of row: {row}"),
            };
            tally.left(input, reason);
            continue;
        }
        tally.checked(row);
    }
    tally.close(40, &[(MOTORCYCLE, 5), (COMMERCIAL, 8), (TOWING, 1), (ON_TRUCK, 1)]);
}

/// The lowest index is the expected one, and the one below it carries less.
#[track_caller]
fn least(row: &Row, load: f64) {
    let index = LoadIndex::min_for(kg(load)).unwrap();
    row.near("expected", f64::from(index.number()), 0.0);
    assert!(index.load() >= kg(load) && kilograms(index.number() - 1) < load, "{row}");
}

fn load_share(service: &str, speed: f64) -> f64 {
    let tire: Tire = format!("225/45R17 {service}").parse().unwrap();
    tire.at_speed(kmh(speed)).unwrap().load_share().unwrap().get::<ratio>()
}

#[track_caller]
fn service_description(row: &Row, rest: &str) {
    let (service, what) = rest.split_once(", ").unwrap();
    let service: ServiceDescription = service.parse().unwrap();
    let single = service.single().load().get::<kilogram>();
    let dual = service.dual().unwrap().load().get::<kilogram>();
    match what {
        "dual, per tyre" => row.near("expected", dual, 1e-9),
        "axle with 4 tyres" => row.near("expected", 4.0 * dual, 1e-9),
        "single" => row.near("expected", single, 1e-9),
        "dual/single ratio" => row.rounds_to("expected", dual / single),
        _ => panic!("{row}"),
    }
}

#[test]
fn least_index_at_the_ends() {
    assert_eq!(LoadIndex::min_for(kg(0.0)), LoadIndex::new(0));
    assert_eq!(LoadIndex::min_for(kg(136_000.0)), LoadIndex::new(279));
    assert_eq!(LoadIndex::min_for(kg(136_000.1)), None);
    assert_eq!(LoadIndex::min_for(kg(-0.0)), LoadIndex::new(0));
    for nonsense in [f64::INFINITY, f64::NAN, f64::NEG_INFINITY, -530.0, -f64::MIN_POSITIVE] {
        assert_eq!(LoadIndex::min_for(kg(nonsense)), None, "{nonsense} kg");
    }
}
