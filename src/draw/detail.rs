//! The least clearance, enlarged: at the scale of a sheet a gap of a millimetre is not to be seen.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::callout::COLUMN;
use super::flat::{Extent, Flat, along, circle, direction};
use super::lettering::{self, LEADING, SIZE};
use super::outline::{Drawn, section};
use super::paper::{Frame, Line, Paper, Section, Set};
use crate::units::in_mm;

/// The least clearance, turned about the spindle into the section.
pub(super) struct Nearest {
    pub(super) place: Flat,
    /// Of the obstacle, towards the wheel.
    pub(super) surface: Flat,
    pub(super) point: Flat,
    pub(super) thickness: f64,
    pub(super) gap: f64,
    /// What it is called.
    pub(super) figure: String,
}

const BOX: Flat = [COLUMN, 30.0];

/// Enlarged, then reduced: the first at which the gap is not longer than a third of the box.
const SCALES: [f64; 11] = [0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0];

impl Nearest {
    pub(super) fn middle(&self) -> Flat {
        [0.5 * (self.place[0] + self.surface[0]), 0.5 * (self.place[1] + self.surface[1])]
    }

    /// Draws it below and to the right of a corner, with the wheels.
    pub(super) fn detail(&self, paper: &mut Paper, corner: Flat, flipped: [bool; 2], wheels: &[Drawn<'_>]) {
        let fits = |scale: &f64| self.gap.abs() / scale <= BOX[1] / 3.0;
        let scale = SCALES.into_iter().find(fits).unwrap_or(SCALES[SCALES.len() - 1]);
        let middle = self.middle();
        let mut window = Extent::NOTHING;
        for side in [-0.5, 0.5] {
            window.hold(along(middle, BOX, side * scale), 0.0);
        }
        let corner = along(corner, [0.0, 1.0], 1.5 * LEADING);
        let frame = Frame { scale, window, corner, flipped };
        let ratio = if scale < 1.0 { format!("{}:1", (1.0 / scale).round()) } else { format!("1:{scale}") };
        let title = along(corner, [0.0, -1.0], 1.5);
        paper.text(title, Set::Start, SIZE, &format!("clearance, {ratio}"));

        let above = self.place[1] < 0.0;
        for wheel in wheels {
            if let Some((before, half)) = &wheel.before {
                let top = in_mm(before.overall_diameter());
                frame.line(paper, Line::Before, &section(before, half, [0.0, top], above));
            }
            let (after, half) = &wheel.after;
            let [flange, top] = [after.flange_radius(), after.overall_diameter()].map(in_mm);
            let parts = [(Section::Tire, [flange, top]), (Section::Rim, [0.0, flange])];
            for (of, radii) in parts {
                let part = section(after, half, radii, above);
                frame.hatch(paper, &part, of);
                frame.line(paper, Line::Edge, &part);
            }
        }
        frame.line(paper, Line::Other, &circle(self.point, self.thickness));
        let arm = frame.size(1.3);
        let cross = [[arm, arm], [arm, -arm]]
            .map(|way| Vec::from([-1.0, 1.0].map(|side| along(self.point, way, side))));
        frame.lines(paper, Line::Thin, &cross);

        let ends = [self.place, self.surface].map(|end| frame.at(end));
        paper.span(ends[0], ends[1]);
        let way = direction(ends[0], ends[1]);
        let text = &self.figure;
        let (wide, high) = (lettering::width(text, SIZE), SIZE);
        // Beside the dimension line, to the right of a line that is upright, below one that is level.
        let across = if way[1] < 0.0 { [-way[1], way[0]] } else { [way[1], -way[0]] };
        let off = 1.2 + 0.5 * (wide * across[0].abs() + high * across[1].abs());
        let mut room = frame.on_paper();
        let half = [0.5 * wide + 1.0, 0.5 * high + 1.0];
        (room.least, room.most) = (along(room.least, half, 1.0), along(room.most, half, -1.0));
        paper.figure(room.nearest(along(frame.at(middle), across, off)), text);
        let [least, most] = [window.least, window.most].map(|point| frame.at(point));
        let frame: Vec<Flat> = Vec::from([least, [most[0], least[1]], most, [least[0], most[1]], least]);
        paper.line(Line::Thin, &frame);
    }
}
