//! The plan in one position, seen from above: as first-angle projection puts it below the view from the front, forward
//! is down, and below that from the rear, up.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::callout::Callout;
use super::flat::{Extent, Flat, along, circle, direction};
use super::lettering::SIZE;
use super::outline::{Drawn, Seen, from_above, plan};
use super::paper::{Frame, Line, Paper, Set};
use super::scene::{AT_REST, Figure, MARGIN, ROOM, Scene, in_words};
use crate::fitment::UnitSystem;
use crate::sweep::{Obstacle, Pose, WheelPose};
use crate::units::{deg, in_deg, in_mm, in_rad, mm, rad};

pub(super) struct Plan {
    pose: Pose,
    /// Of each wheel.
    after: Vec<Vec<Flat>>,
    before: Vec<Vec<Flat>>,
    straight: Vec<Vec<Flat>>,
    /// The middle planes, and the face of the hub, as lines.
    middles: Vec<[Flat; 2]>,
    hub_face: Option<[Flat; 2]>,
    obstacles: Vec<Seen>,
    axis: Option<Axis>,
    nearest: Option<Nearest>,
    window: Extent,
    callouts: Vec<Callout>,
    units: UnitSystem,
    flipped: [bool; 2],
}

/// The steering axis from below to above the wheel, where it passes the hub's height, and the sides of the
/// steer angle from there.
struct Axis {
    ends: [Flat; 2],
    at: Flat,
    sides: [Flat; 2],
    /// Of the arc between the sides, at its middle.
    between: Flat,
    radius: f64,
}

struct Nearest {
    place: Flat,
    point: Flat,
    thickness: f64,
}

impl Plan {
    pub(super) fn new(scene: &Scene<'_>) -> Self {
        let pose = scene.pose();
        let (stance, rest) = (scene.corner.wheel_pose(pose), scene.corner.wheel_pose(AT_REST));
        let wheels: Vec<Drawn<'_>> = scene.wheels().iter().map(Drawn::new).collect();
        let see = |stance: &WheelPose| {
            let outline = |wheel: &Drawn<'_>| from_above(wheel.after.0, &wheel.after.1, stance);
            wheels.iter().map(outline).collect::<Vec<_>>()
        };
        let (after, straight) = (see(&stance), see(&rest));
        let before: Vec<Vec<Flat>> = wheels
            .iter()
            .filter_map(|wheel| wheel.before.as_ref())
            .map(|(before, half)| from_above(before, half, &stance))
            .collect();
        let mut window = Extent::NOTHING;
        [&after, &straight, &before].into_iter().flatten().for_each(|outline| window.hold_all(outline));
        let room = window.widened(ROOM);

        let radius = 0.5 * in_mm(scene.after.overall_diameter());
        let centre = scene.after.rim_centre();
        let ahead =
            |stance: &WheelPose, axial, radial: f64| plan(stance.of_wheel(axial, mm(radial), deg(90.0)));
        let wheel = ahead(&stance, centre, 0.0);
        let see = |obstacle: &Obstacle| {
            let carrier = obstacle.carrier();
            // An arm that cannot reach so far is in no sweep; it is shown where it was measured.
            Seen::new(obstacle, wheel, |point| plan(stance.carried(carrier, point).unwrap_or(point)))
        };
        let obstacles: Vec<Seen> = scene.obstacles.iter().map(see).collect();
        obstacles.iter().for_each(|obstacle| obstacle.hold(&mut window, &room));

        let axis = scene.corner.steering_axis().map(|axis| {
            let at = |up: f64| plan(axis.at_height(mm(up)));
            let sides = [&rest, &stance]
                .map(|stance| direction(ahead(stance, mm(0.0), 0.0), ahead(stance, mm(0.0), 1.0)));
            let mut between = [sides[0][0] + sides[1][0], sides[0][1] + sides[1][1]];
            between = direction([0.0, 0.0], between);
            Axis { ends: [at(-radius), at(radius)], at: at(0.0), sides, between, radius: 0.6 * radius }
        });
        if let Some(axis) = &axis {
            window.hold(axis.at, 0.0);
            axis.sides.iter().for_each(|&side| window.hold(along(axis.at, side, axis.radius), 0.0));
        }
        let face = scene.half_hub();
        let hub_face = scene.is_placed().then(|| [-face, face].map(|along| ahead(&stance, mm(0.0), along)));
        window.hold_all(hub_face.as_slice().as_flattened());
        let nearest = Nearest::new(scene, &stance);
        if let Some(nearest) = &nearest {
            window.hold(nearest.point, nearest.thickness.min(60.0));
        }
        window = window.widened(MARGIN);
        let over = 1.04 * radius;
        let mut made = Self {
            pose,
            after,
            before,
            straight,
            middles: wheels
                .iter()
                .map(|wheel| [-over, over].map(|radial| ahead(&stance, wheel.after.0.rim_centre(), radial)))
                .collect(),
            hub_face,
            obstacles,
            axis,
            nearest,
            window,
            callouts: Vec::new(),
            units: scene.units,
            flipped: [scene.is_outboard_left(), scene.is_from_rear()],
        };
        made.callouts = made.name(scene);
        made
    }

    fn name(&self, scene: &Scene<'_>) -> Vec<Callout> {
        let name = |(number, seen): (usize, &Seen)| Callout::name(seen.nearest, &scene.label(number));
        let mut callouts: Vec<Callout> = self.obstacles.iter().enumerate().map(name).collect();
        let mut add = |at: Flat, lines: Vec<String>| callouts.push(Callout::new(at, lines));
        if let Some([end, _]) = self.hub_face {
            add(end, Vec::from([String::from("hub face")]));
        }
        if let Some(axis) = &self.axis {
            let lines = ["steering axis,", "at hub height"].map(String::from);
            add(axis.at, Vec::from(lines));
            if self.is_turned() {
                let steer = format!("steer {}°", in_deg(self.pose.steer()).abs().round());
                add(along(axis.at, axis.between, axis.radius), Vec::from([steer]));
            }
        }
        if let (Some(swept), Some(nearest)) = (scene.swept, &self.nearest) {
            add(nearest.place, scene.clearance(swept));
        }
        callouts
    }

    fn is_turned(&self) -> bool {
        in_deg(self.pose.steer()).abs() >= 0.5
    }
}

impl Nearest {
    fn new(scene: &Scene<'_>, stance: &WheelPose) -> Option<Self> {
        let (swept, now, thickness) = scene.nearest()?;
        let [_, up, forward] = stance.along_and_across(now);
        let around = rad(libm::atan2(in_mm(forward), in_mm(up)));
        let place = stance.of_wheel(swept.profile_point().axial(), swept.profile_point().radial(), around);
        Some(Self { place: plan(place), point: plan(now), thickness })
    }
}

impl Figure for Plan {
    fn title(&self) -> String {
        format!("Plan from above, {}", in_words(&self.pose, self.units))
    }

    fn window(&self) -> Extent {
        self.window
    }

    fn flipped(&self) -> [bool; 2] {
        self.flipped
    }

    fn callouts(&self) -> &[Callout] {
        &self.callouts
    }

    /// The arrow of direction.
    fn margin(&self) -> Flat {
        [0.0, 11.0]
    }

    fn draw(&self, frame: &Frame, paper: &mut Paper) {
        self.obstacles.iter().for_each(|obstacle| obstacle.draw(frame, paper));
        frame.lines(paper, Line::Before, &self.before);
        if self.pose != AT_REST {
            frame.lines(paper, Line::Other, &self.straight);
        }
        self.middles.iter().for_each(|middle| frame.line(paper, Line::Centre, middle));
        self.hub_face.iter().for_each(|face| frame.line(paper, Line::Thin, face));
        frame.lines(paper, Line::Edge, &self.after);
        if let Some(axis) = &self.axis {
            frame.line(paper, Line::Centre, &axis.ends);
            paper.cross(frame.at(axis.at), 1.6);
            if self.is_turned() {
                axis.draw(frame, paper, in_rad(self.pose.steer()).abs());
            }
        }
        if let Some(nearest) = &self.nearest {
            frame.line(paper, Line::Other, &circle(nearest.point, nearest.thickness));
            frame.line(paper, Line::Thin, &[nearest.place, nearest.point]);
            paper.cross(frame.at(nearest.point), 0.9);
        }
        let window = frame.on_paper();
        let [left, bottom] = [window.least[0] + 2.0, window.most[1]];
        let (from, to) = if frame.flipped[1] { (10.0, 2.0) } else { (2.0, 10.0) };
        paper.line(Line::Thin, &[[left, bottom + from], [left, bottom + to]]);
        paper.arrow([left, bottom + to], [0.0, (to - from) / 8.0]);
        paper.text([left + 2.0, bottom + 7.5], Set::Start, SIZE, "forward");
    }
}

impl Axis {
    /// The steer angle: its sides, and the arc between them with arrows.
    fn draw(&self, frame: &Frame, paper: &mut Paper, steer: f64) {
        for side in self.sides {
            let end = along(self.at, side, self.radius + frame.size(3.0));
            frame.line(paper, Line::Thin, &[self.at, end]);
        }
        let [from, to] = self.sides;
        // Seen from above the angle is not quite that about a leaning axis.
        let angle = libm::atan2(from[0] * to[1] - from[1] * to[0], from[0] * to[0] + from[1] * to[1]);
        let arc: Vec<Flat> = (0..=24)
            .map(|i| {
                let (sin, cos) = libm::sincos(angle * f64::from(i) / 24.0);
                let way = [from[0] * cos - from[1] * sin, from[0] * sin + from[1] * cos];
                along(self.at, way, self.radius)
            })
            .collect();
        frame.line(paper, Line::Thin, &arc);
        if steer * self.radius / frame.scale > 6.0 {
            let ends = [[arc[1], arc[0]], [arc[23], arc[24]]];
            for [before, tip] in ends {
                let [before, tip] = [before, tip].map(|end| frame.at(end));
                paper.arrow(tip, direction(before, tip));
            }
        }
    }
}
