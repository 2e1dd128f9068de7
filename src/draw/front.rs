//! The section through the spindle: of a front wheel seen from the front, of a rear wheel from the rear.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::beside::Beside;
use super::callout::{COLUMN, Callout};
use super::cut::Cut;
use super::detail::Nearest;
use super::dimension::{BESIDE, Dimensions};
use super::flat::{Extent, Flat, along, circle, sub};
use super::lettering::{self, SIZE, figure};
use super::outline::{Drawn, section};
use super::paper::{Frame, Line, Paper, Section};
use super::scene::{AT_REST, Figure, MARGIN, ROOM, Scene, in_words};
use super::sheet::SIDES;
use crate::sweep::Point;
use crate::units::in_mm;

/// Everything is in the wheel frame, so that camber tilts the surroundings and not the wheel.
pub(super) struct Front<'a> {
    scene: Scene<'a>,
    wheels: Vec<Drawn<'a>>,
    /// What the plane cuts, each with its number.
    cuts: Vec<(usize, Cut)>,
    axis: Option<[Flat; 2]>,
    nearest: Option<Nearest>,
    beside: Beside,
    dimensions: Dimensions,
    window: Extent,
    callouts: Vec<Callout>,
    notes: Vec<String>,
}

impl<'a> Front<'a> {
    pub(super) fn new(scene: &Scene<'a>) -> Self {
        let stance = scene.corner.wheel_pose(AT_REST);
        let see = |point: Point| {
            let [axial, up, forward] = stance.along_and_across(point);
            [in_mm(axial), -in_mm(up), in_mm(forward)]
        };
        let flat = |point: Point| {
            let [right, down, _] = see(point);
            [right, down]
        };
        let wheels = scene.wheels();
        let mut window = Extent::NOTHING;
        for profile in wheels.iter().flat_map(|wheel| [Some(wheel.after), wheel.before]).flatten() {
            let (centre, radius) = (in_mm(profile.rim_centre()), 0.5 * in_mm(profile.overall_diameter()));
            let half = 0.5 * in_mm(profile.section_width()).max(in_mm(profile.rim_width()));
            window.hold_all(&[[centre - half, -radius], [centre + half, radius]]);
        }
        if scene.is_placed() {
            window.hold([0.0, 0.0], 0.0);
        }
        let room = window.widened(ROOM);

        let middle = [in_mm(scene.after.rim_centre()), 0.0];
        let cut = |(number, obstacle)| Some((number, Cut::new(obstacle, middle, see)?));
        let cuts: Vec<(usize, Cut)> = scene.obstacles.iter().enumerate().filter_map(cut).collect();
        cuts.iter().for_each(|(_, cut)| cut.hold(&mut window, &room));
        let beside = Beside::new(scene);
        beside.points().for_each(|point| window.hold(point, 0.0));
        let nearest = Nearest::new(scene);
        if let Some(nearest) = &nearest {
            window.hold(nearest.point, nearest.thickness.min(60.0));
            window.hold(nearest.surface, 0.0);
        }
        window = window.widened(MARGIN);
        let axis = scene.corner.steering_axis().map(|axis| {
            let [top, bottom] = [window.least[1] - 100.0, window.most[1] + 100.0];
            [-top, -bottom].map(|up| flat(axis.at_height(crate::units::mm(up))))
        });

        let (dimensions, mut callouts) = Dimensions::new(scene);
        callouts.extend(beside.callouts.iter().cloned());
        let mut front = Self {
            scene: *scene,
            wheels: wheels.iter().map(Drawn::new).collect(),
            cuts,
            axis,
            nearest,
            beside,
            dimensions,
            window,
            callouts,
            notes: Vec::new(),
        };
        front.name();
        front.notes = front.notes();
        front
    }

    fn name(&mut self) {
        let (scene, half_hub) = (&self.scene, self.scene.half_hub());
        let mut add = |at: Flat, lines: &[&str]| {
            self.callouts.push(Callout::new(at, lines.iter().map(|&line| String::from(line)).collect()));
        };
        if scene.is_placed() {
            add([0.0, -half_hub], &["hub face"]);
        }
        add([self.window.most[0], 0.0], &["spindle"]);
        if let Some(piece) = self.axis.and_then(|axis| self.window.clip(&axis).into_iter().next()) {
            // A little below the upper edge, off the corner of the view.
            add(along(piece[0], sub(piece[1], piece[0]), 0.04), &["steering axis"]);
        }
        let names = self.cuts.iter().map(|(number, cut)| Callout::name(cut.nearest, &scene.label(*number)));
        self.callouts.extend(names);
        if let (Some(swept), Some(nearest)) = (scene.swept, &self.nearest) {
            let mut lines = scene.clearance(swept);
            lines.extend(lettering::lines(&in_words(&swept.pose(), scene.units), SIZE, COLUMN, 3));
            self.callouts.push(Callout::new(nearest.middle(), lines));
        }
    }

    /// What the section does not show.
    fn notes(&self) -> Vec<String> {
        let wide = SIDES[1] - SIDES[0];
        let mut notes = Vec::new();
        let count = self.scene.obstacles.iter().count();
        let missing: Vec<usize> =
            (0..count).filter(|number| self.cuts.iter().all(|(cut, _)| cut != number)).collect();
        if !missing.is_empty() {
            let said = |names: Vec<String>| format!("Not in this plane, see the plan: {}", names.join(", "));
            let names = said(missing.iter().map(|&number| self.scene.label(number)).collect());
            let mut lines = lettering::lines(&names, SIZE, wide, 3);
            if lines.len() > 2 {
                let numbers = said(missing.iter().map(|number| format!("{}", number + 1)).collect());
                lines = lettering::lines(&numbers, SIZE, wide, 2);
            }
            notes.extend(lines);
        }
        if !self.scene.is_placed() {
            const UNPLACED: &str = "An inset is not known: the wheels stand about the middles of their rims, and what is measured from \
                the hub is not drawn.";
            notes.extend(lettering::lines(UNPLACED, SIZE, wide, 2));
        }
        notes
    }

    fn wheel(frame: &Frame, paper: &mut Paper, wheel: &Drawn<'_>) {
        let (profile, half) = &wheel.after;
        let [barrel, flange] = [profile.barrel_radius(), profile.flange_radius()].map(in_mm);
        let top = 0.5 * in_mm(profile.overall_diameter());
        for above in [true, false] {
            if let Some((before, half)) = &wheel.before {
                let top = in_mm(before.overall_diameter());
                frame.line(paper, Line::Before, &section(before, half, [0.0, top], above));
            }
            let on_paper = |outline: Vec<Flat>| -> Vec<Flat> {
                outline.into_iter().map(|point| frame.at(point)).collect()
            };
            let tire = on_paper(section(profile, half, [flange, top], above));
            let rim = on_paper(section(profile, half, [barrel, flange], above));
            paper.hatch(&tire, Section::Tire);
            paper.hatch(&rim, Section::Rim);
            paper.line(Line::Edge, &rim);
            paper.line(Line::Edge, &tire);
        }
        let (centre, over) = (in_mm(profile.rim_centre()), top + frame.size(3.0));
        frame.line(paper, Line::Centre, &[[centre, -over], [centre, over]]);
    }
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
        let from = if self.scene.is_from_rear() { "rear" } else { "front" };
        format!("Section through the spindle, straight ahead at ride height, from the {from}")
    }

    fn window(&self) -> Extent {
        self.window
    }

    fn flipped(&self) -> [bool; 2] {
        [self.scene.is_outboard_left(), false]
    }

    fn callouts(&self) -> &[Callout] {
        &self.callouts
    }

    fn notes(&self) -> &[String] {
        &self.notes
    }

    /// The dimensions below and to the right.
    fn margin(&self) -> Flat {
        [BESIDE, self.dimensions.height()]
    }

    fn draw_detail(&self, corner: Flat, paper: &mut Paper) {
        if let Some(nearest) = &self.nearest {
            nearest.detail(paper, corner, self.flipped(), &self.wheels);
        }
    }

    fn draw(&self, frame: &Frame, paper: &mut Paper) {
        self.cuts.iter().for_each(|(_, cut)| cut.draw(frame, paper));
        self.wheels.iter().for_each(|wheel| Self::wheel(frame, paper, wheel));
        let window = &self.window;
        frame.line(paper, Line::Centre, &[[window.least[0], 0.0], [window.most[0], 0.0]]);
        if self.scene.is_placed() {
            frame.line(paper, Line::Thin, &[[0.0, -self.scene.half_hub()], [0.0, self.scene.half_hub()]]);
        }
        if let Some(axis) = &self.axis {
            frame.line(paper, Line::Centre, axis);
        }
        self.beside.draw(frame, paper);
        self.dimensions.draw(frame, paper);
        if let Some(nearest) = &self.nearest {
            frame.line(paper, Line::Other, &circle(nearest.point, nearest.thickness));
            paper.cross(frame.at(nearest.point), 0.9);
            paper.span(frame.at(nearest.place), frame.at(nearest.surface));
        }
    }
}
