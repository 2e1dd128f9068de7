//! How much stack an assessment needs, the sweep included.
//!
//! Without `unsafe` nobody can look at a stack, but a thread that has too little of it ends its process. So a process
//! of its own tries a thread of each size, and the least that serves is what was needed.
#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use std::hint::black_box;
use std::process::Command;
use std::thread::Builder;

use beadseat::scenario::Scenario;
use serde_json::{Value, json};

/// What is promised of a release build.
const PROMISED: usize = 32 * 1024;

/// The same of the crate as it is optimised under test.
const UNDER_TEST: usize = 48 * 1024;

/// Of known size, to take off what a thread needs for itself.
const KNOWN: usize = 64 * 1024;

/// How close the least size is sought.
const STEP: usize = 16;

/// Tells the child what to try: `assess` or `nothing`, and the size.
const WHAT: &str = "BEADSEAT_STACK_OF";

fn example(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

/// Every carrier, every shape, and a wheel so much wider that each body is asked whether it was touched before.
fn crowded() -> Value {
    let mut wagon = example(include_str!("../examples/scenarios/field-survey-wagon.json"));
    let at = |up: i32| json!([[320, -150, up], [0, -160, up], [-320, -150, up]]);
    let mut bodies = vec![
        json!({ "what": "arch_lip", "arc_mm": [[360, 20, 60], [0, 15, 330], [-350, 20, 80]] }),
        json!({ "what": "spring_seat", "disc_mm": [[0, -150, 330], [0, -155, 380]], "disc_radius_mm": 70 }),
        json!({ "what": "tie_rod", "points_mm": [[-110, -480, -60], [-90, -140, -70]], "radius_mm": 12 }),
        json!({ "what": "control_arm", "points_mm": [[0, -420, -60], [0, -90, -100]], "radius_mm": 15,
                "carrier": "arm", "pivot_mm": [0, -430, -60], "end_mm": [0, -90, -100] }),
        json!({ "what": "strut_tube", "gap_mm": 2, "gap_side": "inner", "height_mm": 290, "uncertainty_mm": 2 }),
    ];
    bodies.extend(
        (0..11).map(|n| json!({ "what": "frame_rail", "points_mm": at(20 * n), "uncertainty_mm": 3 })),
    );
    for axle in ["front", "rear"] {
        wagon["vehicle"][axle]["space"]["obstacles"] = json!(bodies);
        wagon["proposed"][axle] = json!({ "tire": "255/40R18 99W XL", "wheel": "9Jx18 ET25 5x112 66.6" });
    }
    wagon
}

fn scenarios() -> Vec<Scenario> {
    [
        example(include_str!("../examples/scenarios/field-survey-wagon.json")),
        example(include_str!("../examples/scenarios/one-tonne-panel-van.json")),
        example(include_str!("../examples/scenarios/rangers-pickup.json")),
        crowded(),
    ]
    .into_iter()
    .map(|scenario| serde_json::from_value(scenario).unwrap())
    .collect()
}

#[inline(never)]
fn assess(scenarios: &[Scenario]) {
    for scenario in scenarios {
        let report = scenario.assess();
        black_box(&report);
    }
}

#[inline(never)]
fn nothing(_: &[Scenario]) {
    let known = [0_u8; KNOWN];
    black_box(&known);
}

/// In the child: does it in a thread of that size, or dies.
fn try_it(what: &str, size: usize) {
    let scenarios = scenarios();
    let work = if what == "assess" { assess } else { nothing };
    Builder::new().stack_size(size).spawn(move || work(&scenarios)).unwrap().join().unwrap();
}

/// The least size of a thread that serves.
fn least(what: &str) -> usize {
    let serves = |size: usize| {
        let mut child = Command::new(std::env::current_exe().unwrap());
        child.env(WHAT, format!("{what} {size}")).args(["--exact", "an_assessment_needs_little_stack"]);
        child.output().unwrap().status.success()
    };
    let (mut short, mut enough) = (STEP, 512 * 1024);
    assert!(serves(enough));
    while enough - short > STEP {
        let middle = short.midpoint(enough);
        if serves(middle) { enough = middle } else { short = middle }
    }
    enough
}

#[test]
fn an_assessment_needs_little_stack() {
    if let Ok(order) = std::env::var(WHAT) {
        let (what, size) = order.split_once(' ').unwrap();
        return try_it(what, size.parse().unwrap());
    }
    let of_thread = least("nothing").saturating_sub(KNOWN);
    let needed = least("assess") - of_thread;
    println!("{needed} bytes, beside {of_thread} of the thread");
    let most = if cfg!(debug_assertions) { UNDER_TEST } else { PROMISED };
    assert!(needed > size_of::<beadseat::fitment::Report>() && needed <= most, "{needed} bytes");
}
