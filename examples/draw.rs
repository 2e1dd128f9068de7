//! Draws one corner of a scenario, before and after its change: `draw SCENARIO.json [front|rear] [left|right]`.
//!
//! Writes an SVG sheet to the standard output, of the front left corner unless told otherwise. At its head is
//! what the assessment says of that corner over all its checks. The least clearance is that of the report, at worst;
//! outlines and their figures are at nominal size. Exit code 0 whatever the verdict, 2 if the scenario cannot be read or does
//! not say enough to draw.

mod common;

use std::process::ExitCode;

use beadseat::draw::Scene;
use beadseat::fitment::space::{Approach, SweptCorner};
use beadseat::fitment::{Position, Report, Verdict};
use beadseat::scenario::Scenario;
use beadseat::tire::condition::VehicleSide;
use beadseat::vehicle::BodyKind;

fn main() -> ExitCode {
    let (mut is_rear, mut is_right, mut files) = (false, false, Vec::new());
    for argument in std::env::args().skip(1) {
        match argument.as_str() {
            "front" => is_rear = false,
            "rear" => is_rear = true,
            "left" => is_right = false,
            "right" => is_right = true,
            _ => files.push(argument),
        }
    }
    let [file] = files.as_slice() else {
        eprintln!("usage: draw SCENARIO.json [front|rear] [left|right]");
        return ExitCode::from(2);
    };
    common::answer(file, |scenario| draw(scenario, is_rear, is_right))
}

fn draw(scenario: &Scenario, is_rear: bool, is_right: bool) -> Result<String, String> {
    let place = match (is_rear, is_right) {
        (false, false) => Position::FrontLeft,
        (false, true) => Position::FrontRight,
        (true, false) => Position::RearLeft,
        (true, true) => Position::RearRight,
    };
    let side = if is_right { VehicleSide::Right } else { VehicleSide::Left };
    let of_axle = if is_rear { SweptCorner::rear } else { SweptCorner::front };
    let survey =
        of_axle(scenario.vehicle(), scenario.change(), scenario.limits(), side).map_err(|lacking| {
            format!("the {} corner cannot be drawn: {lacking}", common::plain(place.name()))
        })?;
    let bodies: Vec<String> = survey.bodies().map(name_of).collect();
    let labels: Vec<&str> = bodies.iter().map(String::as_str).collect();
    let report = scenario.assess();
    let heading = heading(scenario, &report, place);
    let nearest = survey.nearest();
    let mut scene = Scene::new(survey.corner(), survey.after(), survey.around())
        .with_before(survey.before())
        .with_labels(&labels)
        .with_heading(&heading);
    if let Some(nearest) = &nearest {
        scene = scene.with_swept(nearest);
        // One gap has one figure: that which the report holds against its limit.
        let drawn = survey.bodies().nth(nearest.obstacle());
        if let Some(worst) = nearest_at(&report, place).filter(|worst| Some(worst.body()) == drawn) {
            scene = scene.with_least_clearance(worst.lower());
        }
    }
    Ok(scene.sheet().to_string() + "\n")
}

fn name_of(body: BodyKind) -> String {
    match body {
        BodyKind::Other => "another body".into(),
        body => common::plain(body.name()),
    }
}

/// Which corner, its verdict over all its checks and what decides it, the nearest approach, and which vehicle.
fn heading(scenario: &Scenario, report: &Report, place: Position) -> String {
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
        text += &format!(". At worst {nearest}");
    }
    format!("{text}. {}", scenario.name().unwrap_or("Vehicle without a name"))
}

fn nearest_at(report: &Report, place: Position) -> Option<Approach> {
    report.approaches().find(|nearest| nearest.position() == place)
}
