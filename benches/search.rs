//! The search of an invented wagon with bodies around its wheels; the three columns that a screen compares; and how many
//! setups a second a stock is judged, for lists of several shapes and the vehicles of the invented scenarios.

use core::hint::black_box;
use std::time::Instant;

use beadseat::fitment::{Position, Setup, Setups, Verdict, verdict};
use beadseat::scenario::Scenario;
use beadseat::search::{Best, Columns, Pair, Screen, Search, Stock, Wishes};
use beadseat::units::{Length, mm};
use serde::Deserialize;

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

/// Numbers in no order, the same on every run.
struct Any(u64);

impl Any {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % end
    }

    fn of<T: Copy>(&mut self, some: &[T]) -> T {
        some[self.below(some.len())]
    }
}

/// A shop's tires and wheels around what a vehicle has: tires of widths and aspect ratios near the original's with a
/// pressure, wheels of its bolt circle and of others.
struct Shop {
    tires: Vec<Setup>,
    wheels: Vec<Setup>,
}

impl Shop {
    /// `codes` are the rim diameters beside the original's, `prefix` and `behind` what tires have before their width and
    /// behind their size, `contour` what stands behind the width of a rim.
    fn around(vehicle: &Vehicle, tires: usize, wheels: usize) -> Self {
        let mut any = Any(1);
        let Vehicle {
            prefix,
            widths,
            aspects,
            rims,
            behind,
            rim_widths,
            contour,
            insets,
            drillings,
            pressures,
            ..
        } = *vehicle;
        let mut shop = Self { tires: Vec::new(), wheels: Vec::new() };
        while shop.tires.len() < tires {
            let (width, aspect, rim) = (any.of(widths), any.of(aspects), any.of(rims));
            let tire = format!("{prefix}{width}/{aspect}R{rim} {}", any.of(behind));
            let setup = Setup::parse(&tire, "6.5Jx16")
                .ok()
                .map(|setup| setup.with_pressure(beadseat::units::kpa(any.of(pressures))));
            shop.tires.extend(setup.and_then(Result::ok));
        }
        while shop.wheels.len() < wheels {
            let inset = insets.start + any.below(insets.len()) as i32;
            let wheel =
                format!("{}{contour}x{} ET{inset} {}", any.of(rim_widths), any.of(rims), any.of(drillings));
            let setup = Setup::parse("205/55R16", &wheel)
                .ok()
                .map(|setup| setup.with_wheel_rating(beadseat::units::kg(any.of(&[900.0, 1250.0, 3550.0]))));
            shop.wheels.extend(setup.and_then(Result::ok));
        }
        shop
    }

    fn rows(&self, rows: usize) -> Vec<Pair> {
        let mut any = Any(2);
        let mut pair =
            || Pair { tire: any.below(self.tires.len()) as u32, wheel: any.below(self.wheels.len()) as u32 };
        (0..rows).map(|_| pair()).collect()
    }
}

struct Vehicle {
    name: &'static str,
    scenario: &'static str,
    prefix: &'static str,
    widths: &'static [u32],
    aspects: &'static [u32],
    rims: &'static [&'static str],
    behind: &'static [&'static str],
    rim_widths: &'static [&'static str],
    contour: &'static str,
    insets: std::ops::Range<i32>,
    drillings: &'static [&'static str],
    pressures: &'static [f64],
}
