//! The section, read back at its scale: obstacles where the plane cuts them, and what stands inside a wheel.

use beadseat::draw::Scene;
use beadseat::fitment::space::CornerAtRest;
use beadseat::scenario::Scenario;
use beadseat::sweep::{Corner, Obstacle, Obstacles, Point, Profile, RimSection, TireSection};
use beadseat::tire::condition::VehicleSide;
use beadseat::units::{deg, mm};
use proptest::prelude::*;
use roxmltree::{Document, Node};

use crate::sheet::{called, coordinates, elements, is_listed, missing, texts};

/// A rectangle: least and most.
type Extent = [[f64; 2]; 2];

const NOTHING: Extent = [[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]];

fn hold([least, most]: &mut Extent, point: [f64; 2], around: f64) {
    for i in 0..2 {
        least[i] = least[i].min(point[i] - around);
        most[i] = most[i].max(point[i] + around);
    }
}

/// A section read back: its lines in millimetres of the vehicle, outboard to the right and downward.
struct Section<'a> {
    nodes: Vec<Node<'a, 'a>>,
    scale: f64,
    /// Where the spindle meets the hub face.
    origin: [f64; 2],
}

impl<'a> Section<'a> {
    /// From where the new tire is and how large: the only outline of many points in a wide line.
    fn of(document: &'a Document<'a>, profile: &Profile) -> Self {
        let nodes: Vec<Node<'_, '_>> = document.root_element().children().filter(Node::is_element).collect();
        let mut extent = NOTHING;
        for node in nodes.iter().filter(|node| node.attribute("stroke-width") == Some("0.5")) {
            let points = coordinates(node);
            if points.len() >= 12 {
                points.into_iter().for_each(|point| hold(&mut extent, point, 0.0));
            }
        }
        let [least, most] = extent;
        let radius = 0.5 * mm_of(profile.overall_diameter());
        let scale = 2.0 * radius / (most[1] - least[1]);
        let middle = [0, 1].map(|i| 0.5 * (least[i] + most[i]));
        let origin = [middle[0] - mm_of(profile.rim_centre()) / scale, middle[1]];
        Self { nodes, scale, origin }
    }

    fn lines(&self, node: &Node<'_, '_>) -> Vec<[f64; 2]> {
        let at = |point: [f64; 2]| [0, 1].map(|i| (point[i] - self.origin[i]) * self.scale);
        coordinates(node).into_iter().map(at).collect()
    }

    /// What is drawn of obstacles: in narrow lines, behind the last leader and before the wheel.
    fn cuts(&self) -> Vec<[f64; 2]> {
        let wheel = |node: &&Node<'_, '_>| node.attribute("stroke-width") == Some("0.5");
        let until = self.nodes.iter().position(|node| wheel(&node)).unwrap();
        let from = self.nodes[..until].iter().rposition(|node| node.tag_name().name() == "circle").unwrap();
        self.nodes[from..until]
            .iter()
            .filter(|node| node.tag_name().name() == "path" && node.attribute("stroke") == Some("#000"))
            .filter(|node| node.attribute("stroke-dasharray").is_none())
            .flat_map(|node| self.lines(node))
            .collect()
    }

    /// Whether a straight line is drawn between two points, or a part of it that is cut off at a window.
    fn has_line(&self, from: [f64; 2], to: [f64; 2]) -> bool {
        let near = |a: [f64; 2], b: [f64; 2]| (0..2).all(|i| (a[i] - b[i]).abs() < 0.03 * self.scale);
        self.nodes.iter().filter(|node| node.tag_name().name() == "path").any(|node| {
            let ends = self.lines(node);
            ends.len() == 2
                && (near(ends[0], from) && near(ends[1], to) || near(ends[0], to) && near(ends[1], from))
        })
    }
}

fn mm_of(length: beadseat::uom::si::f64::Length) -> f64 {
    length.get::<beadseat::uom::si::length::millimeter>()
}

/// A body as it is thought of here: places all over it, and how thick it is about them.
#[derive(Clone, Debug)]
struct Body {
    obstacle: Obstacle,
    places: Vec<[f64; 3]>,
    radius: f64,
}

fn between(a: [f64; 3], b: [f64; 3], share: f64) -> [f64; 3] {
    core::array::from_fn(|i| a[i] + share * (b[i] - a[i]))
}

/// Points, chains, plates and arcs about the plane, some of them in it. Forward, outboard, up.
fn bodies() -> impl Strategy<Value = Body> {
    let near = || [-180.0..180.0_f64, -330.0..330.0, -430.0..430.0];
    let thickness = prop_oneof![Just(0.0), 2.0..60.0_f64];
    (0..5, prop::collection::vec(near(), 2..5), thickness, 5.0..150.0_f64).prop_filter_map(
        "points coincide",
        |(kind, mut points, radius, size)| {
            let at = |p: [f64; 3]| Point::new(mm(p[0]), mm(p[1]), mm(p[2])).unwrap();
            let mut places = Vec::new();
            let shape = match kind {
                0 => {
                    places.push(points[0]);
                    Obstacle::point(at(points[0]))
                }
                // An outline as a tape measures it, in the plane.
                1 => {
                    points.iter_mut().for_each(|point| point[0] = 0.0);
                    chain(&points, &mut places);
                    Obstacle::polyline(&points.iter().copied().map(at).collect::<Vec<_>>()).ok()?
                }
                2 => {
                    chain(&points, &mut places);
                    Obstacle::polyline(&points.iter().copied().map(at).collect::<Vec<_>>()).ok()?
                }
                // An arc about a line that leans out of the plane, from one place of a circle over another to a third.
                3 => {
                    // Some of them in the plane.
                    let lean = if size > 120.0 { 90.0 } else { 0.3 * size };
                    let (sin, cos) = f64::to_radians(lean).sin_cos();
                    if size > 120.0 {
                        points[0][0] = 0.0;
                    }
                    let (centre, radius) = (points[0], 4.0 * size);
                    let on = |around: f64| -> [f64; 3] {
                        let (up, along) = around.sin_cos();
                        [
                            centre[0] + radius * along * cos,
                            centre[1] + radius * along * sin,
                            centre[2] + radius * up,
                        ]
                    };
                    let (from, to) = (0.01 * points[1][2], 3.0 + 0.005 * points[1][1]);
                    places.extend((0..=20_000).map(|i| on(from + (to - from) * f64::from(i) / 20_000.0)));
                    let [first, over, last] = [from, 0.5 * (from + to), to].map(|around| at(on(around)));
                    (to - from).abs().clamp(0.2, 6.0).eq(&(to - from)).then_some(())?;
                    Obstacle::arch_lip(first, over, last).ok()?
                }
                // A plate that faces forward and up, by a seventh of a turn from either.
                _ => {
                    let lean = size.to_radians();
                    let axis = [lean.cos(), 0.0, lean.sin()];
                    let across = [[0.0, 1.0, 0.0], [-lean.sin(), 0.0, lean.cos()]];
                    let centre = points[0];
                    let mut place = |far: f64, (sin, cos): (f64, f64)| {
                        places.push(core::array::from_fn(|i| {
                            centre[i] + far * (across[0][i] * cos + across[1][i] * sin)
                        }));
                    };
                    // Where a chord ends is on the edge.
                    (0..36_000).for_each(|turn| place(size, (f64::from(turn) * 0.01).to_radians().sin_cos()));
                    for turn in 0..360 {
                        let turn = f64::from(turn).to_radians().sin_cos();
                        for share in 0..=100 {
                            let far = size * f64::from(share) / 100.0;
                            place(far, turn);
                        }
                    }
                    let on_axis = core::array::from_fn(|i| centre[i] + 50.0 * axis[i]);
                    Obstacle::disc(at(centre), at(on_axis), mm(size)).ok()?
                }
            };
            let obstacle = shape.with_radius(mm(radius)).ok()?;
            Some(Body { obstacle, places, radius })
        },
    )
}

fn chain(points: &[[f64; 3]], places: &mut Vec<[f64; 3]>) {
    for pair in points.windows(2) {
        places.extend((0..=3000).map(|i| between(pair[0], pair[1], f64::from(i) / 3000.0)));
    }
}

proptest! {
    /// What is drawn of an obstacle is what the plane through spindle and plumb line cuts of it; what the plane does not
    /// reach is not drawn there, and said to be in the plan.
    #[test]
    fn obstacles_are_drawn_where_the_plane_cuts_them(body in bodies(), camber in -8.0..8.0_f64) {
        let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0)).unwrap();
        let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0)).unwrap()).unwrap();
        let corner = Corner::new().with_camber(deg(camber)).unwrap();
        let mut around = Obstacles::new();
        around.push(body.obstacle).unwrap();
        let drawing = Scene::new(&corner, &profile, &around).front_view().to_string();
        let document = Document::parse(&drawing).unwrap();
        let texts = texts(&document);
        let (is_called, told) = (called(&texts, 1) == 1, missing(&texts));
        prop_assert_eq!(is_called, !is_listed(&told, 1), "{}", told);

        // Camber leans the spindle down outboard; the plane holds both, so that what is ahead stays ahead.
        let (sin, cos) = camber.to_radians().sin_cos();
        let seen = |[_, y, z]: [f64; 3]| [y * cos - z * sin, -(y * sin + z * cos)];
        let near = body.places.iter().map(|place| place[0].abs()).fold(f64::INFINITY, f64::min);
        // A tape is no nearer than a millimetre.
        let reach = body.radius.max(1.0);
        prop_assume!((near - reach).abs() > 0.3);
        prop_assert_eq!(is_called, near < reach);
        let section = Section::of(&document, &profile);
        let drawn = section.cuts();
        prop_assert_eq!(is_called, !drawn.is_empty());
        if !is_called {
            return Ok(());
        }
        let mut expected = NOTHING;
        for place in body.places.iter().filter(|place| place[0].abs() <= reach) {
            let thick = (body.radius.powi(2) - place[0].powi(2)).max(0.0).sqrt();
            hold(&mut expected, seen(*place), if body.radius < 1.0 { body.radius } else { thick });
        }
        let mut found = NOTHING;
        drawn.into_iter().for_each(|point| hold(&mut found, point, 0.0));
        // A cross stands for what is too small to be seen.
        let small = (0..2).all(|i| expected[1][i] - expected[0][i] < 1.1 * section.scale);
        let off = if small { 1.4 } else { 0.2 } * section.scale + 1.0;
        // The view shows the wheel and 60 mm around it; what is farther is cut off.
        let room = [[-153.0 - 60.0, -316.0 - 60.0], [61.0 + 60.0, 316.0 + 60.0]];
        for i in 0..2 {
            let [least, most] = [found[0][i], found[1][i]];
            prop_assert!(least >= expected[0][i] - off && most <= expected[1][i] + off, "{found:?} {expected:?}");
            if expected[0][i] >= room[0][i] && expected[1][i] <= room[1][i] && !is_cut_off(&expected, &room, 1 - i) {
                prop_assert!(least <= expected[0][i] + off && most >= expected[1][i] - off, "{found:?} {expected:?}");
            }
        }
    }
}

/// Whether a body goes beyond the room around the wheel in a direction.
fn is_cut_off(extent: &Extent, room: &Extent, i: usize) -> bool {
    extent[0][i] < room[0][i] || extent[1][i] > room[1][i]
}

/// Brake and spokes of the wagon, where its scenario says they are; of a wheel on a spacer, what moves with it.
#[test]
fn brake_spokes_and_spacer_stand_where_they_were_measured() {
    let wagon = include_str!("../../../../examples/scenarios/field-survey-wagon.json");
    for (spacer, inset) in [(0.0, 42.0), (15.0, 42.0)] {
        let mut file: serde_json::Value = serde_json::from_str(wagon).unwrap();
        file["proposed"]["front"]["spacer_mm"] = spacer.into();
        let scenario: Scenario = serde_json::from_value(file).unwrap();
        let report = scenario.assess();
        let corner =
            CornerAtRest::front(scenario.vehicle(), scenario.change(), &report, VehicleSide::Left).unwrap();
        let drawing = Scene::at_rest(&corner).front_view().to_string();
        let document = Document::parse(&drawing).unwrap();
        let section = Section::of(&document, corner.after());
        // Half of 7.5 in and a flange of the scenario's rim inboard of its middle.
        let inner_edge = mm_of(corner.after().rim_centre()) - 0.5 * mm_of(corner.after().rim_width());
        assert!((mm_of(corner.after().rim_centre()) - (spacer - inset)).abs() < 1e-9);
        for side in [-1.0, 1.0] {
            for radius in [178.0, 0.5 * 312.0] {
                assert!(section.has_line([inner_edge, side * radius], [38.0, side * radius]), "{radius}");
            }
            assert!(section.has_line([38.0, side * 0.6 * 178.0], [38.0, side * 178.0]));
            assert!(section.has_line([spacer + 46.0, side * 0.5 * 194.0], [spacer + 46.0, side * 194.0]));
        }
        // 26 mm outboard of a tire of 213 mm whose rim stood 46 mm inboard.
        let guard = 0.5 * 213.0 - 46.0 + 26.0;
        let radius = 0.5 * mm_of(corner.after().overall_diameter());
        assert!(section.has_line([guard, -radius - 25.0], [guard, -0.85 * radius]));
        let said: Vec<&str> =
            elements(&document.root_element(), "text").filter_map(|node| node.text()).collect();
        for text in ["brake, radius 178", "disc Ø312", "caliper face 38", "wheel guard"] {
            assert!(said.contains(&text), "{text} in {said:?}");
        }
        assert_eq!(said.contains(&"spacer 15"), spacer > 0.0);
        assert!(said.contains(&format!("back of spokes {}", spacer + 46.0).as_str()));
    }
}
