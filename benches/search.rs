//! The search of an invented wagon with bodies around its wheels; the three columns that a screen compares; and how many
//! setups a second a stock is judged, for lists of several shapes and the vehicles of the invented scenarios.

#[path = "search/shop.rs"]
mod shop;

use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

use beadseat::fitment::{Change, Position, Setups, Verdict, verdict};
use beadseat::scenario::Scenario;
use beadseat::search::{Best, Columns, Pair, Screen, Search, Stock, Wishes};
use beadseat::units::{Length, mm};
use serde::Deserialize;
use shop::{OF_CARS, OF_PICKUPS, OF_TRUCKS, Range, Shop};

const RUNS: usize = 3;

/// The least of some runs, in seconds.
fn seconds(mut work: impl FnMut()) -> f64 {
    let once = |_| {
        let start = Instant::now();
        work();
        start.elapsed().as_secs_f64()
    };
    (0..RUNS).map(once).fold(f64::INFINITY, f64::min)
}

fn main() -> Result<(), Box<dyn Error>> {
    let wagon = include_str!("../examples/scenarios/field-survey-wagon.json");
    let swept = serde_json::from_str(wagon)?;
    let mut document: serde_json::Value = serde_json::from_str(wagon)?;
    for axle in ["front", "rear"] {
        if let Some(space) = document["vehicle"][axle]["space"].as_object_mut() {
            space.remove("obstacles");
        }
    }
    let bare = Scenario::deserialize(&document)?;
    let pickup = serde_json::from_str(include_str!("../examples/scenarios/rangers-pickup.json"))?;
    let truck = serde_json::from_str(include_str!("../examples/scenarios/regional-truck-on-duals.json"))?;

    search("wagon, all swept", &swept);
    search("truck on duals", &truck);
    columns(&bare);
    for (name, scenario, range) in [
        ("wagon", &bare, OF_CARS),
        ("wagon with bodies", &swept, OF_CARS),
        ("pickup with bodies", &pickup, OF_PICKUPS),
        ("truck on duals", &truck, OF_TRUCKS),
    ] {
        stock(name, scenario, &range);
    }
    Ok(())
}

/// The whole search of a vehicle.
fn search(name: &str, scenario: &Scenario) {
    let (original, wishes) = (scenario.change().original, Wishes::new());
    let search =
        Search::new(scenario.vehicle(), &original, scenario.conditions(), scenario.limits(), &wishes);
    let mut found = 0;
    let whole = seconds(|| {
        let mut best = Best::<10>::new();
        found = 0;
        for candidate in search.candidates() {
            found += 1;
            best.offer(candidate);
        }
        black_box(&best);
    });
    println!("whole search, {name}: {whole:.3} s, {found} candidates of {} points", search.points());
}

/// The columns of a screen, in memory and block by block.
fn columns(scenario: &Scenario) {
    let (original, wishes) = (scenario.change().original, Wishes::new());
    let screen = Screen::of(Search::new(
        scenario.vehicle(),
        &original,
        scenario.conditions(),
        scenario.limits(),
        &wishes,
    ));
    let shop = Shop::with(&OF_CARS, 1000, 60_000);
    let rows: Vec<[Length; 3]> =
        shop.pairs(20_000).iter().filter_map(|pair| measures(&screen, &shop, *pair)).collect();
    let column = |n: usize, of: usize| -> Vec<Length> {
        rows.iter().cycle().take(n).map(|row| row.get(of).copied().unwrap_or(mm(0.0))).collect()
    };
    for n in [1_000_000, 10_000_000] {
        let [half_width, middle, diameter] = [0, 1, 2].map(|of| column(n, of));
        let columns = Columns { half_width: &half_width, middle: &middle, diameter: &diameter };
        let mut answers = vec![false; n];
        let mut admitted = 0;
        let taken = seconds(|| admitted = screen.admits(Position::Front, black_box(&columns), &mut answers));
        println!(
            "columns, {n} rows in memory: {:.0} million a second, {admitted} admitted",
            n as f64 / taken / 1e6
        );
    }
    // Ten thousand rows again and again: memory stays the same.
    let block = [0, 1, 2].map(|of| column(10_000, of));
    let columns = Columns { half_width: &block[0], middle: &block[1], diameter: &block[2] };
    let mut answers = [false; 10_000];
    for n in [1_000_000_usize, 10_000_000, 100_000_000] {
        let taken = seconds(|| {
            for _ in 0..n / 10_000 {
                black_box(screen.admits(Position::Front, black_box(&columns), &mut answers));
            }
        });
        println!("columns, {n} rows in blocks: {:.0} million a second", n as f64 / taken / 1e6);
    }
}

fn measures(screen: &Screen<'_>, shop: &Shop, pair: Pair) -> Option<[Length; 3]> {
    let (tire, wheel) = (shop.tires.get(pair.tire as usize)?, shop.wheels.get(pair.wheel as usize)?);
    screen.measures(Position::Front, &tire.on_wheel_of(wheel))
}

/// Lists of a vehicle: few tires and wheels often, and each once.
fn stock(name: &str, scenario: &Scenario, range: &Range) {
    let (original, wishes) = (scenario.change().original, Wishes::new());
    let search =
        Search::new(scenario.vehicle(), &original, scenario.conditions(), scenario.limits(), &wishes);
    let tell = |what: &str, rows: usize, taken: f64, verdicts: &[Verdict]| {
        let beyond = verdicts.iter().filter(|verdict| **verdict == Verdict::Beyond).count();
        let share = 100.0 * beyond as f64 / verdicts.len() as f64;
        println!("{name}, {what}: {:.3} million a second, {share:.1} % beyond", rows as f64 / taken / 1e6);
    };

    // A thousand tires, and a thousand rims and drillings at sixty insets, in any order.
    let shop = Shop::with(range, 1000, 60_000);
    let mut prepared = None;
    let taken = seconds(|| prepared = Some(Stock::new(search, &shop.tires, &shop.wheels)));
    println!("{name}, 1000 tires and 60000 wheels prepared: {taken:.3} s");
    for n in [1_000_000, 10_000_000] {
        let rows = shop.pairs(n);
        let mut verdicts = vec![Verdict::NotAssessed; n];
        let start = Instant::now();
        let mut stock = Stock::new(search, &shop.tires, &shop.wheels);
        stock.judge(black_box(&rows), &mut verdicts);
        tell(&format!("{n} pairs, prepared for them"), n, start.elapsed().as_secs_f64(), &verdicts);
        let taken = seconds(|| stock.judge(black_box(&rows), &mut verdicts));
        tell(&format!("{n} pairs, again"), n, taken, &verdicts);
    }

    // What goes on: those whose wheels fit the hub, which leaves most to be judged.
    let rows = shop.pairs(1_000_000);
    let mut stock = Stock::new(search, &shop.tires, &shop.wheels);
    let mut verdicts = vec![Verdict::NotAssessed; rows.len()];
    stock.judge(&rows, &mut verdicts);
    let fitting: Vec<Pair> =
        rows.iter().zip(&verdicts).filter(|(_, v)| **v != Verdict::Beyond).map(|(pair, _)| *pair).collect();
    let again: Vec<Pair> = fitting.iter().copied().cycle().take(1_000_000).collect();
    let taken = seconds(|| stock.judge(black_box(&again), &mut verdicts));
    tell("those that fit", again.len(), taken, &verdicts);
    let start = Instant::now();
    stock.judge_in_parallel(black_box(&rows), &mut verdicts);
    tell("1000000 pairs on all cores", rows.len(), start.elapsed().as_secs_f64(), &verdicts);

    // Each tire and each wheel once, and one by one.
    let shop = Shop::with(range, 100_000, 100_000);
    let rows = shop.each_once();
    let mut verdicts = vec![Verdict::NotAssessed; rows.len()];
    let taken =
        seconds(|| Stock::new(search, &shop.tires, &shop.wheels).judge(black_box(&rows), &mut verdicts));
    tell("100000 pairs of which none comes twice", rows.len(), taken, &verdicts);
    let few = rows.len() / 50;
    let taken = seconds(|| {
        for (answer, pair) in verdicts.iter_mut().zip(&rows).take(few) {
            let setup = shop.tires[pair.tire as usize].on_wheel_of(&shop.wheels[pair.wheel as usize]);
            let proposed =
                Setups { front: original.front.map(|_| setup), rear: original.rear.map(|_| setup) };
            let change = Change { original, proposed };
            *answer =
                verdict(scenario.vehicle(), black_box(&change), scenario.conditions(), scenario.limits());
        }
    });
    tell("the same one by one", few, taken, &verdicts[..few]);
}
