//! Dimensions of a section: level ones in rows below it, upright ones in columns beside it.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::callout::Callout;
use super::flat::{Extent, Flat};
use super::lettering::{self, SIZE, figure};
use super::paper::{Frame, Line, Paper};
use super::scene::Scene;
use super::sheet::SIDES;
use crate::fitment::Value;
use crate::fitment::moves::MoveId;
use crate::fitment::space::CornerAtRest;
use crate::sweep::Profile;
use crate::units::{Length, in_mm};

/// From row to row, and below the last.
const ROW: f64 = 6.0;

/// How far beside the view the columns stand: heights, and the overall diameter.
const COLUMNS: [f64; 2] = [4.0, 9.0];

/// Room beside the view for the columns.
pub(super) const BESIDE: f64 = 11.0;

/// Texts so wide, two of them, stand beside each other.
const SHARED: f64 = 0.5 * (SIDES[1] - SIDES[0]) - 4.0;

/// A level dimension: where it ends, from where its extension lines come, and its figure.
struct Level {
    ends: [Flat; 2],
    text: String,
}

/// An upright one, its extension lines from so far to the right; its figure is called out.
struct Upright {
    ends: [f64; 2],
    from: f64,
    column: f64,
}

/// The dimensions of a section.
pub(super) struct Dimensions {
    /// In a row one, or two on either side.
    rows: Vec<Vec<Level>>,
    uprights: Vec<Upright>,
}

impl Dimensions {
    /// All that are known, and the call-outs of the upright ones.
    pub(super) fn new(scene: &Scene<'_>) -> (Self, Vec<Callout>) {
        let (after, before, half_hub) = (scene.after, scene.before, scene.half_hub());
        // The figures of a report where there is one; of profiles alone their own.
        let was = |now: Length, before: Option<Length>| match before {
            Some(before) => format!("{} (was {})", figure(now, scene.units), figure(before, scene.units)),
            None => figure(now, scene.units),
        };
        let told = |id: MoveId, own: &dyn Fn(&Profile) -> Option<Length>| -> Option<String> {
            let Some(rest) = scene.rest else { return Some(was(own(after)?, before.and_then(own))) };
            let found = rest.moves().find(|found| found.id() == id)?;
            let length = |value: Option<Value>| match value {
                Some(Value::Length(length)) => Some(length),
                _ => None,
            };
            Some(was(length(found.after())?, length(found.before())))
        };
        let none = |_: &Profile| None;
        let wheels = scene.wheels();
        let inner = wheels.last().map_or(after, |wheel| wheel.after);
        let [outer_centre, inner_centre] = [after, inner].map(|profile| in_mm(profile.rim_centre()));
        let [half_tire, half_rim, radius, widest, flange] = [
            after.section_width() * 0.5,
            after.rim_width() * 0.5,
            after.overall_diameter() * 0.5,
            after.widest_radius(),
            after.flange_radius(),
        ]
        .map(in_mm);
        let mut rows: Vec<Vec<Level>> = Vec::new();
        let mut level = |ends: [Flat; 2], text: String| {
            let one = Level { ends, text };
            // Texts that are short enough share a row with the one before them.
            match rows.last_mut() {
                Some(row) if row.len() == 1 && one.is_of_a_face() && row[0].is_of_a_face() => row.push(one),
                _ => rows.push(Vec::from([one])),
            }
        };
        if scene.is_placed() {
            let own = |profile: &Profile| Some(-profile.rim_centre());
            let is_outset = scene.rest.is_none() && outer_centre > 0.0;
            let outset = |profile: &Profile| Some(profile.rim_centre());
            let text = if is_outset { told(MoveId::Inset, &outset) } else { told(MoveId::Inset, &own) };
            let face = scene.rest.and_then(CornerAtRest::spacer).map_or(0.0, in_mm);
            if let Some(text) = text {
                let name = if is_outset { "outset" } else { "inset" };
                level([[inner_centre, radius], [face, half_hub]], format!("{name} {text}"));
            }
            let hub = [0.0, half_hub];
            for (id, name, at) in [
                (MoveId::TireInnerFace, "tire inner face", [inner_centre - half_tire, widest]),
                (MoveId::TireOuterFace, "tire outer face", [outer_centre + half_tire, widest]),
                (MoveId::RimInnerFace, "rim inner face", [inner_centre - half_rim, flange]),
                (MoveId::RimOuterFace, "rim outer face", [outer_centre + half_rim, flange]),
            ] {
                if let Some(text) = told(id, &none) {
                    level([hub, at], format!("{name} {text}"));
                }
            }
            if let Some(text) = told(MoveId::Backspacing, &none) {
                level([[face, half_hub], [inner_centre - half_rim, flange]], format!("backspacing {text}"));
            }
        }
        let ends = [outer_centre - half_tire, outer_centre + half_tire].map(|x| [x, widest]);
        let text = match told(MoveId::SectionWidth, &|profile| Some(profile.section_width())) {
            Some(text) => format!("width {text}"),
            // As it is called, where no rule tells how wide it is on its rim.
            None => {
                let by_rule =
                    |rest: &CornerAtRest| rest.moves().any(|found| found.id() == MoveId::SectionWidth);
                let called = before.filter(|_| !scene.rest.is_some_and(by_rule));
                format!("nominal width {}", was(after.section_width(), called.map(Profile::section_width)))
            }
        };
        level(ends, text);

        let (mut uprights, mut callouts) = (Vec::new(), Vec::new());
        let from = outer_centre;
        let mut upright = |ends: [f64; 2], column: f64, at: f64, text: String| {
            uprights.push(Upright { ends, from, column });
            callouts.push(Callout::new([0.0, at], scene.in_column(&text)).beside(column));
        };
        if let Some(text) = told(MoveId::OverallDiameter, &|profile| Some(profile.overall_diameter())) {
            upright([-radius, radius], COLUMNS[1], -0.45 * radius, format!("Ø{text}"));
        }
        let height = |id: MoveId| {
            let found = scene.rest?.moves().find(|found| found.id() == id)?;
            match found.after()? {
                Value::Length(length) => Some(in_mm(length)),
                _ => None,
            }
        };
        if let (Some(high), Some(text)) = (height(MoveId::SectionHeight), told(MoveId::SectionHeight, &none))
        {
            let ends = [-radius, high - radius];
            upright(ends, COLUMNS[0], 0.5 * (ends[0] + ends[1]), format!("section height {text}"));
        }
        if let (Some(high), Some(text)) = (height(MoveId::RideHeight), told(MoveId::RideHeight, &none)) {
            upright([0.0, high], COLUMNS[0], 0.5 * high, format!("hub above the road {text}"));
        }
        (Self { rows, uprights }, callouts)
    }

    /// Height of the rows.
    pub(super) fn height(&self) -> f64 {
        ROW * self.rows.len() as f64 + 3.0
    }

    pub(super) fn draw(&self, frame: &Frame, paper: &mut Paper) {
        let view = frame.on_paper();
        let mut drawn = Extent::NOTHING;
        for end in self.rows.iter().flatten().flat_map(|level| level.ends) {
            drawn.hold(frame.at(end), 0.0);
        }
        let clear = [drawn.least[0] - 4.0, drawn.most[0] + 4.0];
        let down = |number: usize| view.most[1] + 5.0 + ROW * number as f64;
        // One extension line for all that ends in line with it.
        let mut extensions: Vec<[Flat; 2]> = Vec::new();
        for (number, row) in self.rows.iter().enumerate() {
            for end in row.iter().flat_map(|level| level.ends) {
                let from = frame.at(end);
                let to = [from[0], down(number) + 1.2];
                match extensions.iter_mut().find(|line| (line[0][0] - from[0]).abs() < 0.05) {
                    Some([above, below]) => (above[1], below[1]) = (above[1].min(from[1] + 1.0), to[1]),
                    None => extensions.push([[from[0], from[1] + 1.0], to]),
                }
            }
        }
        extensions.iter().for_each(|line| paper.line(Line::Thin, line));
        for (number, row) in self.rows.iter().enumerate() {
            draw_row(row, frame, paper, down(number), clear);
        }
        for upright in &self.uprights {
            let column = view.most[0] + upright.column;
            let ends = upright.ends.map(|down| frame.at([upright.from, down]));
            for [right, down] in ends {
                paper.line(Line::Thin, &[[right + 1.0, down], [column + 1.2, down]]);
            }
            paper.span([column, ends[0][1]], [column, ends[1][1]]);
        }
    }
}

impl Level {
    fn wide(&self) -> f64 {
        lettering::width(&self.text, SIZE)
    }

    /// Whether it is one of two that go in and out from the hub face.
    fn is_of_a_face(&self) -> bool {
        self.text.contains(" face ") && self.wide() <= SHARED
    }
}

/// Where a text stands beside a dimension line that is too short for it: on a shelf to the left or right of all that is
/// drawn, and within the paper.
fn draw_row(row: &[Level], frame: &Frame, paper: &mut Paper, down: f64, clear: [f64; 2]) {
    let mut levels: Vec<([f64; 2], &Level)> = row
        .iter()
        .map(|level| {
            let [a, b] = level.ends.map(|end| frame.at(end)[0]);
            ([a.min(b), a.max(b)], level)
        })
        .collect();
    levels.sort_by(|(a, _), (b, _)| (a[0] + a[1]).total_cmp(&(b[0] + b[1])));
    for (ends, _) in &levels {
        paper.span([ends[0], down], [ends[1], down]);
    }
    let mut free = SIDES[0];
    for (number, (ends, level)) in levels.iter().enumerate() {
        let wide = level.wide();
        let right = clear[1].max(free + 2.0);
        let is_left = levels.len() == 2 && number == 0 || levels.len() == 1 && right + wide + 1.0 > SIDES[1];
        let (from, start) = if levels.len() == 1 && ends[1] - ends[0] > wide + 7.0 {
            paper.figure([0.5 * (ends[0] + ends[1]), down], &level.text);
            continue;
        } else if is_left {
            (ends[0], (clear[0] - 0.6 - wide).max(SIDES[0] + 0.5))
        } else {
            (ends[1], (right + 0.6).min(SIDES[1] - 0.5 - wide))
        };
        let shelf = if is_left { start + wide } else { start };
        paper.line(Line::Thin, &[[from, down], [shelf, down]]);
        paper.figure([start + 0.5 * wide, down], &level.text);
        free = start + wide;
    }
}
