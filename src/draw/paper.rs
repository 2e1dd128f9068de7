//! What is drawn with: lines, arrows and letters, in millimetres on paper.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt;

use svg::Document;
use svg::node::element::Element;
use svg::node::{Node, Text};

use super::flat::{Extent, Flat, along, direction, hatching, plain, sub};
use super::lettering::{self, SIZE};

/// A finished drawing. `Display` is its SVG document.
///
/// ```
/// # use beadseat::draw::{Drawing, Scene};
/// # use beadseat::sweep::{Corner, Obstacles, Profile, RimSection, TireSection};
/// # use beadseat::units::mm;
/// # let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
/// # let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
/// let (corner, around) = (Corner::new(), Obstacles::new());
/// let drawing: Drawing = Scene::new(&corner, &profile, &around).sheet();
/// assert!(drawing.to_string().starts_with("<svg"));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Debug)]
pub struct Drawing(Document);

impl fmt::Display for Drawing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// Types of line, after ISO 128-2 (from memory): two widths in the ratio of 2 to 1, dashes and gaps in
/// multiples of the width.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Line {
    /// Continuous, wide: visible edges of what is proposed.
    Edge,
    /// Dashed, narrow: what was there before.
    Before,
    /// Long-dashed dotted, narrow: centre lines, the steering axis.
    Centre,
    /// Long-dashed double-dotted, narrow: another position of what moves, and the brake.
    Other,
    /// Continuous, narrow: dimensions, leaders, obstacles.
    Thin,
    /// Dotted, narrow: how far an obstacle may be off.
    Uncertain,
    /// Continuous, narrow, grey: hatching.
    Hatch,
}

/// What is cut, told apart by its hatching.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Section {
    Tire,
    Rim,
    Obstacle,
    Spacer,
}

impl Section {
    /// How far apart the lines of its hatching are, and whether they rise to the right.
    const fn lines(self) -> (f64, bool) {
        match self {
            Self::Tire => (2.4, true),
            Self::Rim => (1.2, false),
            Self::Obstacle => (0.9, true),
            Self::Spacer => (1.2, true),
        }
    }
}

const WIDE: f64 = 0.5;
const NARROW: f64 = 0.25;

impl Line {
    fn width(self) -> f64 {
        if self == Self::Edge { WIDE } else { NARROW }
    }

    fn dashes(self) -> Option<&'static str> {
        match self {
            Self::Before => Some("2.5 1"),
            Self::Centre => Some("6 0.9 0.5 0.9"),
            Self::Other => Some("6 0.9 0.5 0.9 0.5 0.9"),
            Self::Uncertain => Some("0.5 0.7"),
            Self::Edge | Self::Thin | Self::Hatch => None,
        }
    }

    fn shade(self) -> &'static str {
        if self == Self::Hatch { "#777" } else { "#000" }
    }
}

/// Where a text stands against its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Set {
    Start,
    Middle,
    End,
}

/// Size of an arrowhead.
const ARROW: f64 = 2.2;

/// A sheet that is being drawn.
pub(super) struct Paper {
    nodes: Vec<Element>,
}

/// A coordinate to a hundredth. What is not a number cannot be built from checked quantities; it would stand
/// in the corner.
fn hundredths(value: f64) -> f64 {
    let rounded = (value * 100.0).round() / 100.0;
    if rounded.is_finite() { rounded + 0.0 } else { 0.0 }
}

fn element(name: &str, attributes: &[(&str, String)]) -> Element {
    let mut element = Element::new(name);
    for (name, value) in attributes {
        element.assign(*name, value.as_str());
    }
    element
}

impl Paper {
    pub(super) fn new() -> Self {
        Self { nodes: Vec::new() }
    }

    pub(super) fn line(&mut self, line: Line, points: &[Flat]) {
        self.path(line, &[plain(points)]);
    }

    /// Several lines as one element.
    pub(super) fn path(&mut self, line: Line, lines: &[Vec<Flat>]) {
        let mut data = String::new();
        for points in lines.iter().filter(|points| points.len() > 1) {
            for (i, point) in points.iter().enumerate() {
                let command = if i == 0 { "M" } else { "L" };
                let [x, y] = point.map(hundredths);
                data.push_str(&format!("{command}{x} {y}"));
            }
        }
        if data.is_empty() {
            return;
        }
        let mut path = element(
            "path",
            &[
                ("d", data),
                ("fill", "none".to_string()),
                ("stroke", line.shade().to_string()),
                ("stroke-width", line.width().to_string()),
                ("stroke-linejoin", "round".to_string()),
            ],
        );
        if let Some(dashes) = line.dashes() {
            path.assign("stroke-dasharray", dashes);
        }
        self.nodes.push(path);
    }

    pub(super) fn hatch(&mut self, outline: &[Flat], of: Section) {
        let (spacing, rising) = of.lines();
        let lines: Vec<Vec<Flat>> =
            hatching(outline, spacing, rising).iter().map(|line| line.to_vec()).collect();
        self.path(Line::Hatch, &lines);
    }

    pub(super) fn cross(&mut self, at: Flat, size: f64) {
        let arm = |x: f64, y: f64| Vec::from([[at[0] - x, at[1] - y], [at[0] + x, at[1] + y]]);
        self.path(Line::Thin, &[arm(size, size), arm(size, -size)]);
    }

    pub(super) fn dot(&mut self, at: Flat) {
        let [x, y] = at.map(hundredths);
        self.nodes.push(element(
            "circle",
            &[("cx", x.to_string()), ("cy", y.to_string()), ("r", "0.55".to_string())],
        ));
    }

    /// A filled arrowhead with its tip at a point.
    pub(super) fn arrow(&mut self, tip: Flat, way: Flat) {
        let back = along(tip, way, -ARROW);
        let across = [-way[1] * ARROW * 0.17, way[0] * ARROW * 0.17];
        let points = [tip, along(back, across, 1.0), along(back, across, -1.0)]
            .map(|point| point.map(hundredths))
            .map(|[x, y]| format!("{x},{y}"));
        self.nodes.push(element("polygon", &[("points", points.join(" "))]));
    }

    /// A dimension line with arrows at its ends, outside it if it is short.
    pub(super) fn span(&mut self, from: Flat, to: Flat) {
        let d = sub(to, from);
        let way = direction(from, to);
        let back = [-way[0], -way[1]];
        if libm::hypot(d[0], d[1]) >= 3.0 * ARROW {
            self.line(Line::Thin, &[from, to]);
            self.arrow(from, back);
            self.arrow(to, way);
        } else {
            self.line(Line::Thin, &[along(from, way, -2.5 * ARROW), along(to, way, 2.5 * ARROW)]);
            self.arrow(from, way);
            self.arrow(to, back);
        }
    }

    /// A text on a ground of white.
    pub(super) fn figure(&mut self, middle: Flat, text: &str) {
        let half = [0.5 * lettering::width(text, SIZE) + 0.4, 0.55 * SIZE];
        let corner = sub(middle, half).map(hundredths);
        let size = half.map(|x| hundredths(2.0 * x));
        self.nodes.push(element(
            "rect",
            &[
                ("x", corner[0].to_string()),
                ("y", corner[1].to_string()),
                ("width", size[0].to_string()),
                ("height", size[1].to_string()),
                ("fill", "#fff".to_string()),
            ],
        ));
        self.text([middle[0], middle[1] + 0.35 * SIZE], Set::Middle, SIZE, text);
    }

    /// A text with its base line at a point.
    pub(super) fn text(&mut self, at: Flat, set: Set, size: f64, text: &str) {
        if text.is_empty() {
            return;
        }
        let [x, y] = at.map(hundredths);
        let anchor = match set {
            Set::Start => "start",
            Set::Middle => "middle",
            Set::End => "end",
        };
        let mut letters = element(
            "text",
            &[
                ("x", x.to_string()),
                ("y", y.to_string()),
                ("font-size", size.to_string()),
                ("text-anchor", anchor.to_string()),
            ],
        );
        letters.append(Text::new(text));
        self.nodes.push(letters);
    }

    pub(super) fn into_drawing(self, size: Flat, title: &str) -> Drawing {
        let [width, height] = size;
        let mut name = Element::new("title");
        name.append(Text::new(title));
        let ground = element(
            "rect",
            &[("width", width.to_string()), ("height", height.to_string()), ("fill", "#fff".to_string())],
        );
        let document = Document::new()
            .set("viewBox", format!("0 0 {width} {height}"))
            .set("width", format!("{width}mm"))
            .set("height", format!("{height}mm"))
            .set("font-family", "sans-serif")
            .add(name)
            .add(ground);
        Drawing(self.nodes.into_iter().fold(document, |document, node| document.add(node)))
    }
}

/// Where a view stands on paper: millimetres of the vehicle to millimetres on paper.
#[derive(Clone, Copy, Debug)]
pub(super) struct Frame {
    pub(super) scale: f64,
    pub(super) window: Extent,
    /// Where the window's upper left corner is.
    pub(super) corner: Flat,
    /// Whether it is seen in a mirror: left and right, up and down.
    pub(super) flipped: [bool; 2],
}

impl Frame {
    pub(super) fn at(&self, point: Flat) -> Flat {
        let Extent { least, most } = self.window;
        let off = |i: usize| if self.flipped[i] { most[i] - point[i] } else { point[i] - least[i] };
        along(self.corner, [off(0), off(1)], 1.0 / self.scale)
    }

    /// The window on paper.
    pub(super) fn on_paper(&self) -> Extent {
        Extent { least: self.corner, most: along(self.corner, self.window.size(), 1.0 / self.scale) }
    }

    /// A point of paper in millimetres of the vehicle.
    pub(super) fn size(&self, on_paper: f64) -> f64 {
        on_paper * self.scale
    }

    /// Draws a line of the vehicle, as far as it is in the window.
    pub(super) fn line(&self, paper: &mut Paper, line: Line, points: &[Flat]) {
        self.lines(paper, line, core::slice::from_ref(&points.to_vec()));
    }

    pub(super) fn lines(&self, paper: &mut Paper, line: Line, lines: &[Vec<Flat>]) {
        let pieces: Vec<Vec<Flat>> = lines
            .iter()
            .flat_map(|points| self.window.clip(points))
            .map(|piece| plain(&piece.iter().map(|&point| self.at(point)).collect::<Vec<_>>()))
            .collect();
        paper.path(line, &pieces);
    }

    /// Hatches an outline of the vehicle, as far as it is in the window.
    pub(super) fn hatch(&self, paper: &mut Paper, outline: &[Flat], of: Section) {
        let (spacing, rising) = of.lines();
        let outline: Vec<Flat> = outline.iter().map(|&point| self.at(point)).collect();
        let window = self.on_paper();
        let lines: Vec<Vec<Flat>> =
            hatching(&outline, spacing, rising).iter().flat_map(|line| window.clip(line)).collect();
        paper.path(Line::Hatch, &lines);
    }
}
