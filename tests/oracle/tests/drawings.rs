//! Drawings read back by a general-purpose XML library: well formed, on A4 with its margin, in letters that can be read,
//! with every obstacle, nothing that is not a number, no text over another and no leader across one.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]
#![allow(clippy::disallowed_methods, reason = "an oracle of its own")]

#[path = "drawings/scenarios.rs"]
mod scenarios;
#[path = "drawings/section.rs"]
mod section;
#[path = "drawings/sheet.rs"]
mod sheet;

use beadseat::draw::Scene;
use beadseat::sweep::{
    Carrier, ContactPatch, Corner, Effort, Obstacle, Obstacles, Point, Profile, RimSection, SteeringAxis,
    TireSection,
};
use beadseat::units::{deg, mm};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use sheet::hold;

fn points(around: f64) -> impl Strategy<Value = Point> {
    let coordinate = -around..around;
    (coordinate.clone(), coordinate.clone(), coordinate)
        .prop_map(|(x, y, z)| Point::new(mm(x), mm(y), mm(z)).unwrap())
}

fn obstacles(around: f64) -> impl Strategy<Value = Obstacle> {
    let shape = (0..4, prop::collection::vec(points(around), 8), 2..=8_usize, 0.0..200.0);
    let size = (prop_oneof![Just(0.0), 0.0..80.0], prop_oneof![Just(0.0), 0.0..30.0], 0..4);
    (shape, size).prop_filter_map(
        "points coincide",
        |((kind, points, count, disc), (radius, off, carrier))| {
            let obstacle = match kind {
                0 => Obstacle::point(points[0]),
                1 => Obstacle::polyline(&points[..count]).ok()?,
                2 => Obstacle::disc(points[0], points[1], mm(disc)).ok()?,
                _ => Obstacle::arch_lip(points[0], points[1], points[2]).ok()?,
            };
            let carrier = match carrier {
                0 => Carrier::Body,
                1 => Carrier::Knuckle,
                2 => Carrier::Unsprung,
                _ => Carrier::Arm { pivot: points[3], end: points[4] },
            };
            let obstacle = obstacle.with_radius(mm(radius)).ok()?.with_uncertainty(mm(off)).ok()?;
            obstacle.carried_by(carrier).ok()
        },
    )
}

fn profiles() -> impl Strategy<Value = Profile> {
    (-500.0..500.0, 10.0..200.0, 100.0..400.0, 0.3..1.0, 0.6..2.9, 6.0..300.0, 0.0..40.0).prop_map(
        |(centre, half_rim, flange, barrel, wide, high, growth): (f64, f64, f64, f64, f64, f64, f64)| {
            let rim = RimSection::new(mm(centre), mm(half_rim), mm(flange), mm(flange * barrel)).unwrap();
            let tire = TireSection::new(mm((half_rim * wide).clamp(10.0, 500.0)), mm(flange + high)).unwrap();
            let profile = Profile::new(rim, tire).unwrap();
            profile.grown(mm(growth)).unwrap_or(profile)
        },
    )
}

fn corners() -> impl Strategy<Value = Corner> {
    let lean = (-4.0..25.0, -8.0..20.0, -100.0..200.0, -80.0..120.0);
    let moves = (prop::option::of((lean, 0.0..75.0, 0.0..75.0)), 0.0..300.0, 0.0..300.0, -14.0..14.0);
    (moves, prop::option::of(500.0..3000.0)).prop_map(|((steering, jounce, rebound, camber), track)| {
        let mut corner = Corner::new().with_camber(deg(camber)).unwrap();
        corner = corner.travelling(mm(jounce), mm(rebound)).unwrap();
        if let Some(((inclination, caster, scrub, trail), inner, outer)) = steering {
            let patch = ContactPatch::under(mm(-40.0), mm(300.0), deg(camber)).unwrap();
            let axis = SteeringAxis::from_ground(patch, deg(inclination), deg(caster), mm(scrub), mm(trail))
                .unwrap();
            corner = corner.steered(axis, deg(inner), deg(outer)).unwrap();
        }
        track.map_or(corner, |track| corner.on_beam_axle(mm(track)).unwrap())
    })
}

fn scene(
    corner: &Corner,
    [before, after]: &[Profile; 2],
    list: &[Obstacle],
    labels: &[String],
    has_before: bool,
    views: bool,
) -> Result<(), TestCaseError> {
    let mut around = Obstacles::new();
    for &obstacle in list {
        around.push(obstacle).unwrap();
    }
    let labels: Vec<&str> = labels.iter().map(String::as_str).collect();
    let heading = labels.join(" ");
    let effort = Effort::new(mm(5.0), 300).unwrap();
    let swept = corner.clearance(after, &around, effort).unwrap_or(None);
    let mut scene = Scene::new(corner, after, &around).with_labels(&labels).with_heading(&heading);
    if has_before {
        scene = scene.with_before(before);
    }
    if let Some(swept) = &swept {
        scene = scene.with_swept(swept);
    }
    // A drawing of nothing is none: half of the fewest coordinates that 100 000 scenes had.
    prop_assert!(hold(&scene.sheet().to_string(), 2, list.len())? > 150);
    if views {
        prop_assert!(hold(&scene.front_view().to_string(), 1, list.len())? > 135);
        prop_assert!(hold(&scene.plan_view_at_lock().to_string(), 1, list.len())? > 75);
    }
    Ok(())
}

proptest! {
    #[test]
    fn every_scene_is_well_formed_and_on_its_paper(
        corner in corners(),
        profiles in [profiles(), profiles()],
        list in prop::collection::vec(prop_oneof![obstacles(600.0), obstacles(5000.0)], 0..=3),
        labels in prop::collection::vec(any::<String>(), 0..=4),
        has_before in any::<bool>(),
    ) {
        scene(&corner, &profiles, &list, &labels, has_before, false)?;
    }
}

/// A scene of sixteen takes as long as many of three, so an eighth of the cases.
#[test]
fn sixteen_obstacles_find_room() {
    let cases = Config::default().cases / 8;
    let mut runner = TestRunner::new(Config { failure_persistence: None, ..Config::with_cases(cases) });
    let scenes = (
        corners(),
        [profiles(), profiles()],
        prop::collection::vec(obstacles(450.0), 16),
        prop::collection::vec("[ -~]{0,60}", 16),
    );
    let held = |(corner, profiles, list, labels): (_, _, Vec<_>, Vec<_>)| {
        scene(&corner, &profiles, &list, &labels, true, true)
    };
    runner.run(&scenes, held).unwrap();
}
