//! Drawings read back by a general-purpose XML library: well formed, on A4 with its margin, in letters that can be read,
//! with every obstacle, nothing that is not a number, no text over another and no leader across one.

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
    // A4 upright: ISO 216 (from memory).
    for (name, value) in [("viewBox", "0 0 210 297"), ("width", "210mm"), ("height", "297mm")] {
        prop_assert_eq!(root.attribute(name), Some(value));
    }
    let mut seen = 0;
    for node in root.descendants().filter(Node::is_element) {
        for [x, y] in coordinates(&node) {
            let inside = (MARGIN..=210.0 - MARGIN).contains(&x) && (MARGIN..=297.0 - MARGIN).contains(&y);
            prop_assert!(inside, "{:?} at {x} {y}", node.tag_name().name());
            for value in [x, y] {
                prop_assert!((value * 100.0 - (value * 100.0).round()).abs() < 1e-6, "{value}");
            }
            seen += 1;
        }
    }
    let texts: Vec<Lettering<'_>> = elements(&root, "text").map(|node| Lettering::of(&node)).collect();
    for number in 1..=obstacles {
        let name = number.to_string();
        let is_named = |text: &&Lettering<'_>| {
            is_column(text.at[0]) && !text.is_centred && text.text.split(' ').next() == Some(&name)
        };
        let count = texts.iter().filter(is_named).count();
        prop_assert!(count >= views, "{number}: {count}");
    }
    for (i, a) in texts.iter().enumerate() {
        prop_assert!(a.size >= LEAST_SIZE, "{a:?}");
        for j in 0..2 {
            prop_assert!(a.least[j] >= MARGIN && a.most[j] <= [210.0, 297.0][j] - MARGIN, "{a:?}");
        }
        for b in &texts[i + 1..] {
            let apart = (0..2).any(|j| a.most[j] <= b.least[j] || b.most[j] <= a.least[j]);
            prop_assert!(apart, "{a:?} {b:?}");
        }
    }
    for leader in elements(&root, "path").map(|node| coordinates(&node)) {
        let is_leader = (2..=3).contains(&leader.len()) && [53.8, 156.2].contains(&leader[0][0]);
        for (pair, text) in leader.windows(2).flat_map(|pair| texts.iter().map(move |text| (pair, text))) {
            prop_assert!(!(is_leader && text.is_crossed_by(pair[0], pair[1])), "{leader:?} {text:?}");
        }
    }
    Ok(seen)
}

/// What a printer leaves white on every side, and the least size of letters, whose capitals are then 2.5 mm high: common
/// practice, no source.
const MARGIN: f64 = 10.0;
const LEAST_SIZE: f64 = 3.5;

fn elements<'a>(root: &Node<'a, 'a>, name: &'static str) -> impl Iterator<Item = Node<'a, 'a>> {
    root.descendants().filter(move |node| node.is_element() && node.tag_name().name() == name)
}

/// A text and the box of its capitals.
#[derive(Debug)]
struct Lettering<'a> {
    text: &'a str,
    at: [f64; 2],
    size: f64,
    is_centred: bool,
    least: [f64; 2],
    most: [f64; 2],
}

impl<'a> Lettering<'a> {
    fn of(node: &Node<'a, 'a>) -> Self {
        let (x, y, size) = (number(node, "x"), number(node, "y"), number(node, "font-size"));
        let text = node.text().unwrap_or("");
        let long = width(text) * size;
        let anchor = node.attribute("text-anchor").unwrap();
        let from = match anchor {
            "start" => 0.0,
            "middle" => -0.5 * long,
            "end" => -long,
            other => unreachable!("{other}"),
        };
        let (least, most) = ([x + from, y - 0.7 * size], [x + from + long, y]);
        assert_eq!(node.attribute("transform"), None, "texts are level");
        Self { text, at: [x, y], size, is_centred: anchor == "middle", least, most }
    }

    /// Whether a straight piece passes through the box.
    fn is_crossed_by(&self, from: [f64; 2], to: [f64; 2]) -> bool {
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for i in 0..2 {
            let way = to[i] - from[i];
            if way == 0.0 {
                if from[i] < self.least[i] || from[i] > self.most[i] {
                    return false;
                }
                continue;
            }
            let [a, b] = [(self.least[i] - from[i]) / way, (self.most[i] - from[i]) / way];
            enters = enters.max(a.min(b));
            leaves = leaves.min(a.max(b));
        }
        enters < leaves
    }
}

/// How wide a text is at size one in a common sans-serif letter: its published widths, from memory; what is not in them
/// half as wide as high.
fn width(text: &str) -> f64 {
    let wide = |c: char| match c {
        'i' | 'j' | 'l' | '\'' => 0.222,
        ' ' | '.' | ',' | ':' | ';' | 'f' | 't' | 'I' | '!' | '/' | '[' | ']' => 0.278,
        'r' | '(' | ')' | '-' => 0.333,
        'm' | 'M' => 0.833,
        'w' | 'C' | 'D' | 'H' | 'N' | 'R' | 'U' => 0.722,
        'A' | 'B' | 'E' | 'K' | 'P' | 'S' | 'V' | 'X' | 'Y' => 0.667,
        'G' | 'O' | 'Q' | 'Ø' => 0.778,
        '+' | '−' | '=' => 0.584,
        '0'..='9' | 'a' | 'b' | 'd' | 'e' | 'g' | 'h' | 'n' | 'o' | 'p' | 'q' | 'u' => 0.556,
        _ => 0.5,
    };
    text.chars().map(wide).sum()
}

fn is_column(x: f64) -> bool {
    x == 53.0 || x == 157.0
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

/// Of every invented vehicle.
fn scenarios() -> impl Iterator<Item = Scenario> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/scenarios");
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    assert!(files.len() >= 7);
    files.into_iter().map(|path| serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap())
}

/// Every corner of the invented vehicles, as their scenarios describe it.
#[test]
fn the_corners_of_the_scenarios_are_drawn_as_they_are_surveyed() {
    let mut called = 0;
    for scenario in scenarios() {
        let report = scenario.assess();
        for (of_axle, side, place) in [
            (SweptCorner::front as fn(_, _, _, _) -> _, VehicleSide::Left, Position::FrontLeft),
            (SweptCorner::front, VehicleSide::Right, Position::FrontRight),
            (SweptCorner::rear, VehicleSide::Left, Position::RearLeft),
            (SweptCorner::rear, VehicleSide::Right, Position::RearRight),
        ] {
            let survey: Result<SweptCorner, _> =
                of_axle(scenario.vehicle(), scenario.change(), scenario.limits(), side);
            let Ok(survey) = survey else { continue };
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
    assert_eq!(called, 12);
}
