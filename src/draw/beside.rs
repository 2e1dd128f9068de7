//! What is measured beside and inside a wheel: gaps, brake, spokes, spacer and guard.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::callout::Callout;
use super::flat::Flat;
use super::lettering::figure;
use super::paper::{Frame, Line, Paper, Section};
use super::scene::Scene;
use crate::fitment::space::{CornerAtRest, GapKind, MeasuredGap};
use crate::sweep::Profile;
use crate::units::in_mm;

/// Lines of one type, spans of gaps, and a spacer, with what they are called.
#[derive(Default)]
pub(super) struct Beside {
    lines: Vec<(Line, [Flat; 2])>,
    spans: Vec<[Flat; 2]>,
    spacer: Option<Vec<Flat>>,
    pub(super) callouts: Vec<Callout>,
}

impl Beside {
    pub(super) fn new(scene: &Scene<'_>) -> Self {
        let mut made = Self::default();
        if let Some(rest) = scene.rest {
            rest.gaps().for_each(|gap| made.gap(scene, &gap));
            made.pair(scene, rest);
            made.guard(scene, rest);
            made.brake(scene, rest);
            made.wheel(scene, rest);
        }
        made
    }

    /// All that a view must hold.
    pub(super) fn points(&self) -> impl Iterator<Item = Flat> {
        self.lines.iter().map(|(_, line)| line).chain(&self.spans).flatten().copied()
    }

    fn call(&mut self, scene: &Scene<'_>, at: Flat, text: &str) {
        self.callouts.push(Callout::new(at, scene.in_column(text)));
    }

    /// A gap from the new wheel to where the old one left it.
    fn gap(&mut self, scene: &Scene<'_>, gap: &MeasuredGap) {
        let wheels = scene.wheels();
        let wheel = match gap.kind() {
            GapKind::Inner => wheels.last(),
            _ => wheels.first(),
        };
        let profile = wheel.map_or(scene.after, |wheel| wheel.after);
        let (centre, end) = (in_mm(profile.rim_centre()), in_mm(gap.end()));
        let half = 0.5 * in_mm(profile.section_width()).max(in_mm(profile.rim_width()));
        let (radius, widest) = (0.5 * in_mm(profile.overall_diameter()), in_mm(profile.widest_radius()));
        let (line, span, name) = match gap.kind() {
            GapKind::Upper => (
                [[centre - half, -end], [centre + half, -end]],
                [[centre, -radius], [centre, -end]],
                "gap above",
            ),
            kind => {
                let (way, name) =
                    if kind == GapKind::Outer { (1.0, "outer gap") } else { (-1.0, "inner gap") };
                let line = [[end, -radius], [end, -0.6 * radius]];
                (line, [[centre + way * half, -widest], [end, -widest]], name)
            }
        };
        self.lines.push((Line::Thin, line));
        self.spans.push(span);
        let measured = figure(gap.measured(), scene.units);
        let text = match gap.left() {
            _ if gap.is_unchanged() => format!("{name} {measured}, unchanged"),
            Some(left) => format!("{name} {} at worst (was {measured})", figure(left, scene.units)),
            None => format!("{name} was {measured}, not judged"),
        };
        self.call(scene, [0, 1].map(|i| 0.5 * (span[0][i] + span[1][i])), &text);
    }

    /// The gap between the tires of a pair, where they are widest.
    fn pair(&mut self, scene: &Scene<'_>, rest: &CornerAtRest) {
        let Some((gap, [_, inner])) = rest.pair_gap().zip(rest.inner()) else { return };
        let half = |profile: &Profile| 0.5 * in_mm(profile.section_width());
        let from = in_mm(inner.rim_centre()) + half(inner);
        let to = in_mm(scene.after.rim_centre()) - half(scene.after);
        let up = -in_mm(inner.widest_radius());
        self.spans.push([[from, up], [to, up]]);
        let text = format!("between the tires {}", figure(gap, scene.units));
        self.call(scene, [0.5 * (from + to), up], &text);
    }

    fn guard(&mut self, scene: &Scene<'_>, rest: &CornerAtRest) {
        let Some(guard) = rest.guard().map(in_mm) else { return };
        let radius = 0.5 * in_mm(scene.after.overall_diameter());
        let top = -radius - 25.0;
        self.lines.push((Line::Thin, [[guard, top], [guard, -0.85 * radius]]));
        self.call(scene, [guard, top + 8.0], "wheel guard");
    }

    /// Disc, envelope and face of the brake, as far as each was measured. How far they reach inboard is not, so that
    /// they are open there.
    fn brake(&mut self, scene: &Scene<'_>, rest: &CornerAtRest) {
        let Some(brake) = rest.brake() else { return };
        let inner = scene.wheels().last().map_or(scene.after, |wheel| wheel.after);
        let from = in_mm(inner.rim_centre()) - 0.5 * in_mm(inner.rim_width());
        let face = brake.caliper_face().map(in_mm);
        let [disc, envelope] =
            [brake.disc().map(|disc| disc * 0.5), brake.envelope_radius()].map(|r| r.map(in_mm));
        let to = face.unwrap_or(0.0);
        let most = envelope.or(disc).unwrap_or(in_mm(inner.barrel_radius()));
        for side in [-1.0, 1.0] {
            for radius in [disc, envelope].into_iter().flatten() {
                self.lines.push((Line::Other, [[from, side * radius], [to, side * radius]]));
            }
            if let Some(face) = face {
                self.lines.push((Line::Other, [[face, side * 0.6 * most], [face, side * most]]));
            }
        }
        let at = |share: f64| from + share * (to - from);
        if let Some(radius) = brake.envelope_radius() {
            let text = format!("brake, radius {}", figure(radius, scene.units));
            self.call(scene, [at(0.3), in_mm(radius)], &text);
        }
        if let (Some(diameter), Some(radius)) = (brake.disc(), disc) {
            self.call(scene, [at(0.15), radius], &format!("disc Ø{}", figure(diameter, scene.units)));
        }
        if let Some(length) = brake.caliper_face() {
            let text = format!("caliper face {}", figure(length, scene.units));
            self.call(scene, [in_mm(length), 0.8 * most], &text);
        }
    }

    /// What belongs to the proposed wheel: the back of its spokes, and its spacer.
    fn wheel(&mut self, scene: &Scene<'_>, rest: &CornerAtRest) {
        if let Some(back) = rest.spoke_back() {
            let (x, barrel) = (in_mm(back), in_mm(scene.after.barrel_radius()));
            for side in [-1.0, 1.0] {
                self.lines.push((Line::Edge, [[x, side * 0.5 * barrel], [x, side * barrel]]));
            }
            let text = format!("back of spokes {}", figure(back, scene.units));
            self.call(scene, [x, 0.6 * barrel], &text);
        }
        if let Some(spacer) = rest.spacer() {
            let (x, half_hub) = (in_mm(spacer), scene.half_hub());
            self.spacer = Some(Vec::from([
                [0.0, -half_hub],
                [x, -half_hub],
                [x, half_hub],
                [0.0, half_hub],
                [0.0, -half_hub],
            ]));
            let text: String = format!("spacer {}", figure(spacer, scene.units));
            self.call(scene, [0.5 * x, 0.5 * half_hub], &text);
        }
    }

    pub(super) fn draw(&self, frame: &Frame, paper: &mut Paper) {
        for (line, points) in &self.lines {
            frame.line(paper, *line, points);
        }
        if let Some(spacer) = &self.spacer {
            frame.hatch(paper, spacer, Section::Spacer);
            frame.line(paper, Line::Edge, spacer);
        }
        for [from, to] in &self.spans {
            paper.span(frame.at(*from), frame.at(*to));
        }
    }
}
