//! The search of an invented wagon with bodies around its wheels, and how many setups a screen judges a second.

use core::hint::black_box;
use std::time::Instant;

use beadseat::fitment::{Position, Setup, Setups, Verdict};
use beadseat::scenario::Scenario;
use beadseat::search::{Best, Columns, Screen, Search, Wishes};
use beadseat::units::{Length, mm};

const RUNS: usize = 5;

/// The least of some runs, in seconds.
fn seconds(mut work: impl FnMut()) -> f64 {
    let once = |_| {
        let start = Instant::now();
        work();
        start.elapsed().as_secs_f64()
    };
    (0..RUNS).map(once).fold(f64::INFINITY, f64::min)
}

/// Setups in no order around the original's size, most of which do not fit.
fn list(rows: usize) -> Vec<Setups> {
    let mut state = 1_u64;
    let mut below = |end: u64| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) % end
    };
    let mut list = Vec::with_capacity(rows);
    while list.len() < rows {
        let (width, aspect, rim) = (185 + 10 * below(8), 35 + 5 * below(7), 15 + below(5));
        let tire = format!("{width}/{aspect}R{rim} 95V");
        let wheel = format!("{}Jx{rim} H2 ET{} 5x112 57.1", 6 + below(4), 15 + below(50));
        if let Ok(setup) = Setup::parse(&tire, &wheel) {
            list.push(Setups::both(setup));
        }
    }
    list
}

fn main() {
    let text = include_str!("../examples/scenarios/field-survey-wagon.json");
    let Ok(scenario) = serde_json::from_str::<Scenario>(text) else {
        eprintln!("the scenario cannot be read");
        return;
    };
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
    println!(
        "whole search of the wagon, all swept: {whole:.3} s, {found} candidates of {} points",
        search.points()
    );

    let screen = Screen::of(search);
    let setups = list(20_000);
    let rows: Vec<[Length; 3]> =
        setups.iter().filter_map(|setups| screen.measures(Position::Front, &setups.front?)).collect();
    let column = |n: usize, of: usize| -> Vec<Length> {
        rows.iter().cycle().take(n).map(|row| row.get(of).copied().unwrap_or(mm(0.0))).collect()
    };
    for million in [1, 10] {
        let n = million * 1_000_000;
        let [half_width, middle, diameter] = [column(n, 0), column(n, 1), column(n, 2)];
        let columns = Columns { half_width: &half_width, middle: &middle, diameter: &diameter };
        let mut answers = vec![false; n];
        let mut admitted = 0;
        let taken = seconds(|| admitted = screen.admits(Position::Front, black_box(&columns), &mut answers));
        println!(
            "first stage, {n} rows in memory: {:.0} million a second, {admitted} admitted",
            n as f64 / taken / 1e6
        );
    }
    // Ten thousand rows again and again: memory stays the same.
    let block = [column(10_000, 0), column(10_000, 1), column(10_000, 2)];
    let columns = Columns { half_width: &block[0], middle: &block[1], diameter: &block[2] };
    let mut answers = [false; 10_000];
    for n in [1_000_000_usize, 10_000_000, 100_000_000] {
        let taken = seconds(|| {
            for _ in 0..n / 10_000 {
                black_box(screen.admits(Position::Front, black_box(&columns), &mut answers));
            }
        });
        println!("first stage, {n} rows in blocks: {:.0} million a second", n as f64 / taken / 1e6);
    }
    let mut verdicts = vec![Verdict::NotAssessed; setups.len()];
    let taken = seconds(|| screen.judge(black_box(&setups), &mut verdicts));
    let beyond = verdicts.iter().filter(|verdict| **verdict == Verdict::Beyond).count();
    println!(
        "judged in bulk: {:.3} million a second, {beyond} of {} beyond",
        setups.len() as f64 / taken / 1e6,
        setups.len()
    );
}
