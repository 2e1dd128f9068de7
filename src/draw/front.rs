//! The section through the spindle, seen from the front: outboard to the right.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::callout::{COLUMN, Callout};
use super::detail::Nearest;
use super::flat::{Extent, Flat, along, circle, sub};
use super::lettering::{self, SIZE, figure};
use super::outline::{Seen, half, section};
use super::paper::{Frame, Line, Paper};
use super::scene::{AT_REST, Figure, MARGIN, ROOM, Scene, in_words};
use super::sheet::SIDES;
use crate::fitment::UnitSystem;
use crate::sweep::{Point, Profile};
use crate::units::{Length, in_mm, mm};

/// How far beside the view the dimension line of the overall diameter stands.
const COLUMN_OF_DIAMETER: f64 = 5.0;

/// Everything is in the wheel frame, so that camber tilts the surroundings and not the wheel.
pub(super) struct Front<'a> {
    after: &'a Profile,
    before: Option<&'a Profile>,
    half_after: Vec<Flat>,
    half_before: Vec<Flat>,
    obstacles: Vec<Seen>,
    axis: Option<[Flat; 2]>,
    nearest: Option<Nearest>,
    window: Extent,
    callouts: Vec<Callout>,
    units: UnitSystem,
}

impl<'a> Front<'a> {
    pub(super) fn new(scene: &Scene<'a>) -> Self {
        let stance = scene.corner.wheel_pose(AT_REST);
        let see = |point: Point| {
            let [axial, up, _] = stance.along_and_across(point);
            [in_mm(axial), -in_mm(up)]
        };
        let middle = [in_mm(scene.after.rim_centre()), 0.0];
        let mut window = Extent::NOTHING;
        for profile in [Some(scene.after), scene.before].into_iter().flatten() {
            let (centre, radius) = (in_mm(profile.rim_centre()), 0.5 * in_mm(profile.overall_diameter()));
            let half = 0.5 * in_mm(profile.section_width()).max(in_mm(profile.rim_width()));
            window.hold_all(&[[centre - half, -radius], [centre + half, radius]]);
        }
        window.hold([0.0, 0.0], 0.0);
        let room = window.widened(ROOM);

        let obstacles: Vec<Seen> =
            scene.obstacles.iter().map(|obstacle| Seen::new(obstacle, middle, see)).collect();
        obstacles.iter().for_each(|obstacle| obstacle.hold(&mut window, &room));
        let nearest = Nearest::new(scene);
        if let Some(nearest) = &nearest {
            window.hold(nearest.point, nearest.thickness.min(60.0));
            window.hold(nearest.surface, 0.0);
        }
        window = window.widened(MARGIN);
        let axis = scene.corner.steering_axis().map(|axis| {
            let [top, bottom] = [window.least[1] - 100.0, window.most[1] + 100.0];
            [see(axis.at_height(mm(-top))), see(axis.at_height(mm(-bottom)))]
        });

        let mut front = Self {
            after: scene.after,
            before: scene.before,
            half_after: half(scene.after),
            half_before: scene.before.map(half).unwrap_or_default(),
            obstacles,
            axis,
            nearest,
            window,
            callouts: Vec::new(),
            units: scene.units,
        };
        front.callouts = front.name(scene);
        front
    }

    fn name(&self, scene: &Scene<'a>) -> Vec<Callout> {
        let mut callouts = scene.names(&self.obstacles);
        let mut add = |at: Flat, lines: &[&str]| {
            callouts.push(Callout::new(at, lines.iter().map(|&line| String::from(line)).collect()));
        };
        add([0.0, -self.hub_face()], &["hub face"]);
        add([self.window.most[0], 0.0], &["spindle"]);
        if let Some(piece) = self.axis.and_then(|axis| self.window.clip(&axis).into_iter().next()) {
            // A little below the upper edge, off the corner of the view.
            add(along(piece[0], sub(piece[1], piece[0]), 0.04), &["steering axis"]);
        }
        if let (Some(swept), Some(nearest)) = (scene.swept, &self.nearest) {
            let mut lines = scene.clearance(swept);
            lines.extend(lettering::lines(&in_words(&swept.pose(), scene.units), SIZE, COLUMN, 3));
            callouts.push(Callout::new(nearest.middle(), lines));
        }
        let diameter = self.was(self.after.overall_diameter(), self.before.map(Profile::overall_diameter));
        // Above the spindle, where the dimension line is.
        let at = [0.0, -0.45 * in_mm(self.after.overall_diameter())];
        callouts.push(Callout::name(at, &format!("Ø{diameter}")).beside(COLUMN_OF_DIAMETER));
        callouts
    }

    /// Half the length the hub face is drawn with.
    fn hub_face(&self) -> f64 {
        0.5 * in_mm(self.after.barrel_radius())
    }

    fn wheel(&self, frame: &Frame, paper: &mut Paper) {
        let profile = self.after;
        let [barrel, flange] = [profile.barrel_radius(), profile.flange_radius()].map(in_mm);
        let top = 0.5 * in_mm(profile.overall_diameter());
        for above in [true, false] {
            if let Some(before) = self.before {
                let top = in_mm(before.overall_diameter());
                frame.line(paper, Line::Before, &section(before, &self.half_before, [0.0, top], above));
            }
            let on_paper = |outline: Vec<Flat>| -> Vec<Flat> {
                outline.into_iter().map(|point| frame.at(point)).collect()
            };
            let tire = on_paper(section(profile, &self.half_after, [flange, top], above));
            let rim = on_paper(section(profile, &self.half_after, [barrel, flange], above));
            paper.hatch(&tire, 2.4, true);
            paper.hatch(&rim, 1.2, false);
            paper.line(Line::Edge, &rim);
            paper.line(Line::Edge, &tire);
        }
    }

    /// A figure, and what it was.
    fn was(&self, now: Length, before: Option<Length>) -> String {
        match before {
            Some(before) => format!("{} (was {})", figure(now, self.units), figure(before, self.units)),
            None => figure(now, self.units),
        }
    }

    fn dimensions(&self, frame: &Frame, paper: &mut Paper) {
        let centre = in_mm(self.after.rim_centre());
        let half = 0.5 * in_mm(self.after.section_width());
        let radius = 0.5 * in_mm(self.after.overall_diameter());
        let bottom = frame.on_paper().most[1];

        // What is drawn between them, on paper.
        let mut drawn = Extent::NOTHING;
        drawn.hold_all(&[centre - half, centre + half, 0.0].map(|x| frame.at([x, 0.0])));
        let clear = [drawn.least[0] - 4.0, drawn.most[0] + 4.0];

        // From hub face to the middle of the rim.
        let row = bottom + 5.0;
        let [face, rim] = [[0.0, self.hub_face()], [centre, radius]].map(|point| frame.at(point));
        let name = if centre > 0.0 { "outset" } else { "inset" };
        let off = |profile: &Profile| if centre > 0.0 { profile.rim_centre() } else { -profile.rim_centre() };
        let text = format!("{name} {}", self.was(off(self.after), self.before.map(off)));
        paper.line(Line::Thin, &[face, [face[0], row + 1.2]]);
        paper.line(Line::Thin, &[[rim[0], rim[1] + 1.0], [rim[0], row + 1.2]]);
        level(paper, [rim[0].min(face[0]), rim[0].max(face[0])], row, clear, &text);

        let row = bottom + 11.5;
        let widest = in_mm(self.after.widest_radius());
        let sides = [centre - half, centre + half].map(|x| frame.at([x, widest]));
        for side in sides {
            paper.line(Line::Thin, &[[side[0], side[1] + 1.0], [side[0], row + 1.2]]);
        }
        let text = self.was(self.after.section_width(), self.before.map(Profile::section_width));
        level(paper, sides.map(|side| side[0]), row, clear, &text);

        let column = frame.on_paper().most[0] + COLUMN_OF_DIAMETER;
        let ends = [-radius, radius].map(|z| frame.at([centre, z]));
        for end in ends {
            paper.line(Line::Thin, &[[end[0] + 1.0, end[1]], [column + 1.2, end[1]]]);
        }
        paper.span([column, ends[0][1]], [column, ends[1][1]]);
    }
}

/// A level dimension line, its figure in it or, if it is too short, on a shelf beside what is drawn: to the right, or
/// where the paper ends before, to the left.
fn level(paper: &mut Paper, ends: [f64; 2], row: f64, clear: [f64; 2], text: &str) {
    let wide = lettering::width(text, SIZE);
    paper.span([ends[0], row], [ends[1], row]);
    let middle = if ends[1] - ends[0] > wide + 7.0 {
        0.5 * (ends[0] + ends[1])
    } else {
        let [left, right] = [clear[0].min(ends[0] - 2.0), clear[1].max(ends[1] + 2.0)];
        let (end, start, away) =
            if right + wide + 1.0 <= SIDES[1] { (ends[1], right, 1.0) } else { (ends[0], left, -1.0) };
        paper.line(Line::Thin, &[[end, row], [start, row]]);
        start + away * (0.6 + 0.5 * wide)
    };
    paper.figure([middle, row], text);
}

impl Nearest {
    fn new(scene: &Scene<'_>) -> Option<Self> {
        let (swept, now, thickness) = scene.nearest()?;
        let stance = scene.corner.wheel_pose(swept.pose());
        let [axial, up, _] = stance.along_and_across(now);
        let (_, radial) = stance.in_wheel(now);
        let side = if in_mm(up) < 0.0 { 1.0 } else { -1.0 };
        let place = [in_mm(swept.profile_point().axial()), side * in_mm(swept.profile_point().radial())];
        let point = [in_mm(axial), side * in_mm(radial)];
        let gap = in_mm(swept.upper());
        let whole = gap + thickness;
        let share = if whole.abs() > 1e-6 { gap / whole } else { 0.0 };
        let figure = figure(scene.least.unwrap_or(swept.upper()), scene.units);
        Some(Self { place, surface: along(place, sub(point, place), share), point, thickness, gap, figure })
    }
}

impl Figure for Front<'_> {
    fn title(&self) -> String {
        String::from("Section through the spindle, straight ahead at ride height, from the front")
    }

    fn window(&self) -> Extent {
        self.window
    }

    fn callouts(&self) -> &[Callout] {
        &self.callouts
    }

    /// The dimensions below and to the right.
    fn margin(&self) -> Flat {
        [8.0, 15.0]
    }

    fn draw_detail(&self, corner: Flat, paper: &mut Paper) {
        if let Some(nearest) = &self.nearest {
            let before = self.before.map(|before| (before, &self.half_before[..]));
            nearest.detail(paper, corner, (self.after, &self.half_after), before);
        }
    }

    fn draw(&self, frame: &Frame, paper: &mut Paper) {
        self.obstacles.iter().for_each(|obstacle| obstacle.draw(frame, paper));
        self.wheel(frame, paper);
        let window = &self.window;
        let centre = in_mm(self.after.rim_centre());
        let over = 0.5 * in_mm(self.after.overall_diameter()) + frame.size(3.0);
        frame.line(paper, Line::Centre, &[[window.least[0], 0.0], [window.most[0], 0.0]]);
        frame.line(paper, Line::Centre, &[[centre, -over], [centre, over]]);
        frame.line(paper, Line::Thin, &[[0.0, -self.hub_face()], [0.0, self.hub_face()]]);
        if let Some(axis) = &self.axis {
            frame.line(paper, Line::Centre, axis);
        }
        self.dimensions(frame, paper);
        if let Some(nearest) = &self.nearest {
            frame.line(paper, Line::Other, &circle(nearest.point, nearest.thickness));
            paper.cross(frame.at(nearest.point), 0.9);
            paper.span(frame.at(nearest.place), frame.at(nearest.surface));
        }
    }
}
