//! Draws one corner of a scenario, before and after its change: `draw SCENARIO.json
//! [front|rear] [left|right] [--units metric|us|both]`.
//!
//! Writes an SVG sheet, upright A4, to the standard output, of the front left corner unless told otherwise. At its head is
//! what the assessment says of that corner over all its checks. The least clearance is that of the report, at worst;
//! outlines and their figures are at nominal size. Exit code 0 whatever the verdict, 2 if the scenario cannot be read or does
//! not say enough to draw.

mod common;

use std::process::ExitCode;

use beadseat::draw::Scene;
use beadseat::fitment::space::{Approach, CornerAtRest, SweptCorner};
use beadseat::fitment::{Position, Report, UnitSystem, Verdict};
use beadseat::scenario::Scenario;
use beadseat::tire::condition::VehicleSide;
use beadseat::vehicle::{BodyKind, Kind};
use common::Arguments;

const HELP: &str = "\
draw SCENARIO.json [front|rear] [left|right] [--units metric|us|both]

Draws one corner before and after a change as an SVG sheet that prints on A4, the front left one unless told otherwise: a
section through the spindle and the plan where the wheel comes nearest to what stands around it. At its head is the verdict of the
corner over all its checks. The axles beside front and rear are not drawn.

  --units    what figures are in: metric, us, or both

Exit code 0 whatever the verdict, 2 where the scenario cannot be read or does not say enough to draw.
";

fn main() -> ExitCode {
    let Arguments { flags, words, units } = match Arguments::read(HELP) {
        Ok(arguments) => arguments,
        Err(code) => return code,
    };
    let (mut is_rear, mut is_right, mut files) = (false, false, Vec::new());
    for word in words {
        match word.as_str() {
            "front" => is_rear = false,
            "rear" => is_rear = true,
            "left" => is_right = false,
            "right" => is_right = true,
            _ => files.push(word),
        }
    }
    let ([file], []) = (files.as_slice(), flags.as_slice()) else { return common::misuse(HELP) };
    common::answer(file, |scenario| draw(scenario, is_rear, is_right, units))
}

fn draw(scenario: &Scenario, is_rear: bool, is_right: bool, units: UnitSystem) -> Result<String, String> {
    let place = match (is_rear, is_right) {
        (false, false) => Position::FrontLeft,
        (false, true) => Position::FrontRight,
        (true, false) => Position::RearLeft,
        (true, true) => Position::RearRight,
    };
    let side = if is_right { VehicleSide::Right } else { VehicleSide::Left };
    let (vehicle, change, report) = (scenario.vehicle(), scenario.change(), scenario.assess());
    let at_rest = if is_rear { CornerAtRest::rear } else { CornerAtRest::front };
    let corner = at_rest(vehicle, change, &report, side).map_err(|lacking| {
        format!("the {} corner cannot be drawn: {lacking}", common::plain(place.name()))
    })?;
    let bodies: Vec<String> = corner.bodies().map(name_of).collect();
    let labels: Vec<&str> = bodies.iter().map(String::as_str).collect();
    // The wheels of a motorcycle are of no side.
    let is_single = vehicle.kind() == Some(Kind::Motorcycle);
    let called = match (is_single, is_rear) {
        (true, true) => Position::Rear,
        (true, false) => Position::Front,
        _ => place,
    };
    let heading = heading(&report, called, units);
    let mut scene = Scene::at_rest(&corner)
        .with_labels(&labels)
        .with_name(scenario.name().unwrap_or("Vehicle without a name"))
        .with_heading(&heading)
        .in_units(units);
    // How it moves, where that is known.
    let of_axle = if is_rear { SweptCorner::rear } else { SweptCorner::front };
    let moving = of_axle(vehicle, change, scenario.limits(), side).ok();
    if let Some(moving) = &moving {
        scene = scene.moving(moving.corner());
    }
    // One gap has one figure and one position: those which the report holds against its limit.
    let worst = nearest_at(&report, place);
    let nearest = worst.and_then(|worst| moving.as_ref()?.nearest_at(&worst));
    if let (Some(nearest), Some(worst)) = (&nearest, worst) {
        scene = scene.with_swept(nearest).with_least_clearance(worst.lower());
    }
    Ok(scene.sheet().to_string() + "\n")
}

fn name_of(body: BodyKind) -> String {
    match body {
        BodyKind::Other => "another body".into(),
        body => common::plain(body.name()),
    }
}

/// Which corner, its verdict over all its checks and what decides it, and the nearest approach.
fn heading(report: &Report, place: Position, units: UnitSystem) -> String {
    let verdict = report.verdict_at(place);
    let mut text = format!("{}, {}", common::plain(place.name()), common::plain(verdict.name()));
    let decides = report.at(place).find(|check| check.verdict() == verdict && verdict != Verdict::Within);
    let not_judged = report.at(place).find(|check| check.verdict() == Verdict::NotAssessed);
    if let Some(check) = decides {
        text += &format!(" by {}: {}", common::plain(check.id().name()), check.reason().text());
    } else if let Some(check) = not_judged {
        text += &format!(", {} not assessed", common::plain(check.id().name()));
    }
    if let Some(nearest) = nearest_at(report, place) {
        text += &format!(". At worst {}", nearest.told_in(units));
    }
    text
}

fn nearest_at(report: &Report, place: Position) -> Option<Approach> {
    report.approaches().find(|nearest| nearest.position() == place)
}
