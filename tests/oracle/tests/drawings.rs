//! Drawings read back by a general-purpose XML library: well formed, with every obstacle, nothing that is not a
//! number or off the paper, and no call-out over another.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::draw::Scene;
use beadseat::fitment::Position;
use beadseat::fitment::space::SweptCorner;
use beadseat::scenario::Scenario;
use beadseat::sweep::{
    Carrier, ContactPatch, Corner, Effort, Obstacle, Obstacles, Point, Profile, RimSection, SteeringAxis,
    TireSection,
};
use beadseat::tire::condition::VehicleSide;
use beadseat::units::{deg, mm};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use roxmltree::{Document, Node};

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

fn number(node: &Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).unwrap().parse().unwrap()
}

/// All coordinates of an element, as pairs.
fn coordinates(node: &Node<'_, '_>) -> Vec<[f64; 2]> {
    let pairs = |text: &str| -> Vec<[f64; 2]> {
        let numbers: Vec<f64> =
            text.split([' ', ',', 'M', 'L']).filter(|s| !s.is_empty()).map(|s| s.parse().unwrap()).collect();
        assert_eq!(numbers.len() % 2, 0);
        numbers.chunks(2).map(|pair| [pair[0], pair[1]]).collect()
    };
    match node.tag_name().name() {
        "path" => pairs(node.attribute("d").unwrap()),
        "polygon" => pairs(node.attribute("points").unwrap()),
        "circle" => vec![[number(node, "cx"), number(node, "cy")]],
        "text" => vec![[number(node, "x"), number(node, "y")]],
        "rect" if node.attribute("x").is_some() => {
            let [x, y] = [number(node, "x"), number(node, "y")];
            vec![[x, y], [x + number(node, "width"), y + number(node, "height")]]
        }
        "svg" | "title" | "rect" => Vec::new(),
        other => unreachable!("{other}"),
    }
}

/// Reads a drawing and holds it to what must be true of every one. Returns how many coordinates it had.
fn hold(drawing: &str, views: usize, obstacles: usize) -> Result<usize, TestCaseError> {
    let document = Document::parse(drawing).map_err(|error| TestCaseError::fail(error.to_string()))?;
    let root = document.root_element();
    prop_assert_eq!(root.tag_name().namespace(), Some("http://www.w3.org/2000/svg"));
    let box_: Vec<f64> =
        root.attribute("viewBox").unwrap().split(' ').map(|number| number.parse().unwrap()).collect();
    let [_, _, width, height] = box_[..] else { return Err(TestCaseError::fail("viewBox")) };
    let mut seen = 0;
    for node in root.descendants().filter(Node::is_element) {
        for [x, y] in coordinates(&node) {
            let inside = (0.0..=width).contains(&x) && (0.0..=height).contains(&y);
            prop_assert!(inside, "{:?} at {x} {y} of {width} {height}", node.tag_name().name());
            for value in [x, y] {
                prop_assert!((value * 100.0 - (value * 100.0).round()).abs() < 1e-6, "{value}");
            }
            seen += 1;
        }
    }
    // The columns of names; figures of dimensions stand about the middle of their lines, wherever that is.
    let texts: Vec<(f64, f64, &str)> = root
        .descendants()
        .filter(|node| node.tag_name().name() == "text" && node.is_element())
        .filter(|node| node.attribute("text-anchor") != Some("middle"))
        .map(|node| (number(&node, "x"), number(&node, "y"), node.text().unwrap_or("")))
        .collect();
    for number in 1..=obstacles {
        let name = number.to_string();
        let count = texts
            .iter()
            .filter(|(x, _, text)| is_column(*x) && text.split(' ').next() == Some(&name))
            .count();
        prop_assert!(count >= views, "{number}: {count}");
    }
    // Lines of one column do not touch.
    for (i, a) in texts.iter().enumerate() {
        for b in &texts[i + 1..] {
            let apart = a.0 != b.0 || !is_column(a.0) || (a.1 - b.1).abs() >= 4.1;
            prop_assert!(apart, "{a:?} {b:?}");
        }
    }
    Ok(seen)
}

fn is_column(x: f64) -> bool {
    x == 49.0 || x == 161.0
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

/// Every corner of the invented vehicles, as their scenarios describe it.
#[test]
fn the_corners_of_the_scenarios_are_drawn_as_they_are_surveyed() {
    let texts = [
        include_str!("../../../examples/scenarios/field-survey-wagon.json"),
        include_str!("../../../examples/scenarios/one-tonne-panel-van.json"),
        include_str!("../../../examples/scenarios/rangers-pickup.json"),
    ];
    let mut called = 0;
    for text in texts {
        let scenario: Scenario = serde_json::from_str(text).unwrap();
        let report = scenario.assess();
        for (of_axle, side, place) in [
            (SweptCorner::front as fn(_, _, _, _) -> _, VehicleSide::Left, Position::FrontLeft),
            (SweptCorner::front, VehicleSide::Right, Position::FrontRight),
            (SweptCorner::rear, VehicleSide::Left, Position::RearLeft),
            (SweptCorner::rear, VehicleSide::Right, Position::RearRight),
        ] {
            let survey: SweptCorner =
                of_axle(scenario.vehicle(), scenario.change(), scenario.limits(), side).unwrap();
            let labels: Vec<&str> = survey.bodies().map(|body| body.name()).collect();
            let mut scene = Scene::new(survey.corner(), survey.after(), survey.around())
                .with_before(survey.before())
                .with_labels(&labels);
            let nearest = survey.nearest();
            // An end with nothing around it was not assessed either, and no other.
            let assessed = report.approaches().find(|approach| approach.position() == place);
            assert_eq!(nearest.is_some(), assessed.is_some(), "{place:?}");
            if let (Some(nearest), Some(worst)) = (&nearest, assessed) {
                assert!(worst.lower() <= nearest.lower(), "{place:?}");
                scene = scene.with_swept(nearest);
                called += 1;
            }
            hold(&scene.sheet().to_string(), 2, labels.len()).unwrap();
        }
    }
    assert_eq!(called, 8);
}
