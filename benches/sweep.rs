//! Swept clearance of invented corners with eight obstacles each, certified to a tenth of a millimetre, beside
//! the grid of positions that would prove as much.

#[path = "sweep/seeded.rs"]
mod seeded;

use core::hint::black_box;
use std::time::{Duration, Instant};

use beadseat::sweep::{Effort, ObstacleError};
use beadseat::units::mm;
use seeded::Scene;

const CORNERS: usize = 400;
const RUNS: usize = 5;

fn share(sorted: &[f64], share: f64) -> f64 {
    sorted[((sorted.len() - 1) as f64 * share).round() as usize]
}

/// Places of a grid whose Lipschitz bound leaves a tenth of a millimetre: each of the `n` variables that move
/// may lose a tenth over `n`, half a step either way.
fn grid(scene: &Scene) -> f64 {
    // From the steering axis to the obstacle, and the speed of travel with camber and toe.
    let (axis, heave) = (350.0, 1.1);
    scene
        .extents
        .iter()
        .map(|&[along, across]| {
            let spans = [
                scene.steer.to_radians() * axis,
                scene.travel * heave,
                if scene.beam { 0.25 * scene.travel } else { 0.0 },
                along,
                across,
            ];
            let moving = spans.iter().filter(|&&span| span > 0.0).count() as f64;
            spans.iter().filter(|&&span| span > 0.0).map(|span| span * moving / 0.2).product::<f64>()
        })
        .sum()
}

fn main() -> Result<(), ObstacleError> {
    let scenes = seeded::scenes(CORNERS)?;
    let effort = Effort::default();
    let mut times = Vec::new();
    let mut works = Vec::new();
    let mut open = 0;
    for scene in &scenes {
        let mut runs = [Duration::MAX; RUNS];
        for run in &mut runs {
            let start = Instant::now();
            let swept = black_box(scene).corner.clearance(&scene.profile, &scene.around, effort)?;
            *run = start.elapsed();
            open += usize::from(!swept.is_some_and(|swept| swept.is_within_tolerance()));
            works.push(swept.map_or(0.0, |swept| f64::from(swept.work())));
        }
        runs.sort();
        times.push(runs[RUNS / 2].as_secs_f64() * 1e6);
    }
    if std::env::var_os("SWEEP_EACH").is_some() {
        for (number, (scene, time)) in scenes.iter().zip(&times).enumerate() {
            let swept = scene.corner.clearance(&scene.profile, &scene.around, effort)?;
            if let Some(swept) = swept {
                println!(
                    "{number}: {time:.0} µs, {:.2} mm, obstacle {}, steered {}, beam {}",
                    1000.0 * swept.upper().value,
                    swept.obstacle(),
                    scene.steer > 0.0,
                    scene.beam
                );
            }
        }
    }
    times.sort_by(f64::total_cmp);
    let mut grids: Vec<f64> = scenes.iter().map(grid).collect();
    grids.sort_by(f64::total_cmp);
    println!(
        "{CORNERS} corners of 8 obstacles to {:.1} mm, median of {RUNS} runs each",
        1000.0 * mm(0.1).value
    );
    println!(
        "median {:.0} µs, 90 % {:.0} µs, 99 % {:.0} µs, worst {:.0} µs; {} not closed",
        share(&times, 0.5),
        share(&times, 0.9),
        share(&times, 0.99),
        share(&times, 1.0),
        open / RUNS
    );
    works.sort_by(f64::total_cmp);
    println!(
        "boxes: median {:.0}, 99 % {:.0}, worst {:.0}",
        share(&works, 0.5),
        share(&works, 0.99),
        share(&works, 1.0)
    );
    println!("a grid with the same guarantee has {:.1e} places (median)", share(&grids, 0.5));
    Ok(())
}
