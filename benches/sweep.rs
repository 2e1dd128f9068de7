//! Swept clearance of invented corners with eight obstacles each, certified to a tenth of a millimetre, beside
//! the grid of positions that would prove as much.

#[path = "sweep/invented.rs"]
mod invented;

use core::hint::black_box;
use std::time::{Duration, Instant};

use beadseat::sweep::{Effort, ObstacleError};
use beadseat::units::mm;
use invented::Scene;

const CORNERS: usize = 400;
const RUNS: usize = 5;

fn share(sorted: &[f64], share: f64) -> f64 {
    sorted[((sorted.len() - 1) as f64 * share).round() as usize]
}

fn sorted(mut values: Vec<f64>) -> Vec<f64> {
    values.sort_by(f64::total_cmp);
    values
}

/// Places of a grid that proves a tenth of a millimetre by the greatest speeds alone: each of the `n` variables
/// that move may lose a tenth over `n`, half a step either way.
fn grid(scene: &Scene) -> f64 {
    // Obstacles are about so far from the steering axis, and pass the knuckle at about this much of travel.
    let (axis, heave) = (350.0, 1.1);
    let obstacles = scene.extents.iter().zip(&scene.moves).map(|(&[along, round], &moves)| {
        let wheel = [
            scene.steer.to_radians() * axis,
            scene.travel * heave,
            if scene.beam { 0.25 * scene.travel } else { 0.0 },
        ];
        let wheel = if moves { wheel } else { [0.0; 3] };
        let spans = wheel.into_iter().chain([along, round]).filter(|&span| span > 0.0);
        let count = spans.clone().count() as f64;
        spans.map(|span| 1.0 + span * count / 0.2).product::<f64>()
    });
    obstacles.sum()
}

/// Seconds for the distance of one place from a profile.
fn seconds_a_place(scene: &Scene) -> f64 {
    const PLACES: u32 = 1_000_000;
    let start = Instant::now();
    for i in 0..PLACES {
        let i = f64::from(i);
        black_box(scene.profile.distance(mm(black_box(i * 3e-4 - 200.0)), mm(i * 4e-4)));
    }
    start.elapsed().as_secs_f64() / f64::from(PLACES)
}

fn main() -> Result<(), ObstacleError> {
    let scenes = invented::scenes(CORNERS)?;
    let effort = Effort::default();
    let (mut times, mut works, mut open) = (Vec::new(), Vec::new(), 0);
    for scene in &scenes {
        let mut runs = [Duration::MAX; RUNS];
        for run in &mut runs {
            let start = Instant::now();
            black_box(black_box(scene).corner.clearance(&scene.profile, &scene.around, effort)?);
            *run = start.elapsed();
        }
        runs.sort();
        times.push(runs[RUNS / 2].as_secs_f64() * 1e6);
        let swept = scene.corner.clearance(&scene.profile, &scene.around, effort)?;
        works.push(swept.map_or(0.0, |swept| f64::from(swept.work())));
        open += usize::from(!swept.is_some_and(|swept| swept.is_within_tolerance()));
    }
    let (times, works) = (sorted(times), sorted(works));
    let grids = sorted(scenes.iter().map(grid).collect());
    let a_place = seconds_a_place(&scenes[0]);

    println!(
        "swept clearance, {CORNERS} corners of 8 obstacles, certified to 0.1 mm, median of {RUNS} runs each"
    );
    for (name, at) in [("median", 0.5), ("90 %", 0.9), ("99 %", 0.99), ("worst", 1.0)] {
        println!("  {name:>6}: {:6.0} µs, {:5.0} boxes", share(&times, at), share(&works, at));
    }
    println!("  {open} not closed within the work allowed");
    println!(
        "a grid with the same guarantee: {:.1e} places (median); at {:.0} ns for the distance alone, {:.1} hours",
        share(&grids, 0.5),
        a_place * 1e9,
        share(&grids, 0.5) * a_place / 3600.0
    );
    Ok(())
}
