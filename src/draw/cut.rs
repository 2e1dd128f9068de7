//! Obstacles where the plane of a section cuts them.

use alloc::vec::Vec;

use super::flat::{Extent, Flat, along, convex, dot, sub, union};
use super::outline::APART;
use super::paper::{Frame, Line, Paper, Section};
use crate::sweep::Obstacle;
use crate::units::{deg, in_mm};
use crate::vector::{add, scale};

/// A place in the wheel frame: in the plane of the section to the right and down, and ahead of it.
pub(super) type Place = [f64; 3];

/// A tape measures no thinner than this, in millimetres: what is so near the plane is in it.
pub(super) const REACH: f64 = 1.0;

/// Places along an arc: one in four degrees of a full circle.
const PLACES: usize = 91;

/// Steps through the thickness of a body.
const LEVELS: u32 = 24;

/// A convex part of a cut: the hull of circles, each with its middle and radius.
type Part = Vec<(Flat, f64)>;

/// What of an obstacle is in the plane.
pub(super) struct Cut {
    solid: Vec<Part>,
    /// With what it may be off.
    whole: Vec<Part>,
    uncertainty: f64,
    /// What of it is nearest to the wheel's middle.
    pub(super) nearest: Flat,
}

impl Cut {
    /// From a way of seeing where points are; nothing of what the plane does not reach.
    pub(super) fn new(
        obstacle: &Obstacle,
        wheel: Flat,
        see: impl Fn(crate::sweep::Point) -> Place,
    ) -> Option<Self> {
        let (radius, uncertainty) = (in_mm(obstacle.radius()), in_mm(obstacle.uncertainty()));
        let points: Vec<Place> = obstacle.places(PLACES).map(&see).collect();
        let rim = [0.0, 90.0].map(|around| obstacle.edge(deg(around)).map(&see));
        let parts = |radius: f64| -> Vec<Part> {
            let body = Body { radius, reach: radius.max(REACH) };
            let parts: Vec<Part> = match (rim, points.as_slice()) {
                ([Some(one), Some(other)], &[centre, ..]) => {
                    Vec::from([body.plate(centre, [sub(one, centre), sub(other, centre)])])
                }
                (_, &[only]) => Vec::from([body.bar(only, only)]),
                (_, points) => points.windows(2).map(|pair| body.bar(pair[0], pair[1])).collect(),
            };
            parts.into_iter().filter(|part| !part.is_empty()).collect()
        };
        let whole = parts(radius + uncertainty);
        let far = |point: Flat| dot(sub(point, wheel), sub(point, wheel));
        let nearest = whole
            .iter()
            .flatten()
            .map(|&(middle, _)| middle)
            .reduce(|near, point| if far(point) < far(near) { point } else { near })?;
        Some(Self { solid: parts(radius), whole, uncertainty, nearest })
    }

    /// Makes a window hold what is nearest, and all of it that is in the room around the wheel.
    pub(super) fn hold(&self, window: &mut Extent, room: &Extent) {
        window.hold(self.nearest, 15.0);
        for &(middle, radius) in self.whole.iter().flatten() {
            for side in [-radius, radius] {
                window.hold(room.nearest([middle[0] + side, middle[1]]), 0.0);
                window.hold(room.nearest([middle[0], middle[1] + side]), 0.0);
            }
        }
    }

    pub(super) fn draw(&self, frame: &Frame, paper: &mut Paper) {
        let outlines = |parts: &[Part]| -> Vec<Vec<Flat>> { parts.iter().map(outline).collect() };
        let step = frame.size(0.4);
        // What is too little to be drawn apart is drawn as part of the obstacle.
        let apart = self.uncertainty >= frame.size(APART);
        let solid = if apart { &self.solid } else { &self.whole };
        let parts = outlines(solid);
        for part in &parts {
            frame.hatch(paper, part, Section::Obstacle);
        }
        frame.lines(paper, Line::Thin, &union(&parts, step));
        if apart {
            frame.lines(paper, Line::Uncertain, &union(&outlines(&self.whole), step));
        }
        let mut extent = Extent::NOTHING;
        solid.iter().flatten().for_each(|&(middle, radius)| extent.hold(middle, radius));
        let [wide, high] = extent.size();
        if wide.max(high) < frame.size(1.0) {
            paper.cross(frame.at(self.nearest), 1.3);
        }
    }
}

/// The hull of circles.
fn outline(part: &Part) -> Vec<Flat> {
    convex(|n| {
        let reach = |&(middle, radius): &(Flat, f64)| dot(middle, n) + radius;
        let far = |a: &&(Flat, f64), b: &&(Flat, f64)| reach(a).total_cmp(&reach(b));
        part.iter().max_by(far).map_or([0.0; 2], |&(middle, radius)| along(middle, n, radius))
    })
}

/// How thick a body is all round, and how far from its shape the plane still cuts it.
struct Body {
    radius: f64,
    reach: f64,
}

impl Body {
    /// Distances from the plane to look at, between two, closer together where the body or its shape is thin.
    fn levels(&self, ends: [f64; 2]) -> impl Iterator<Item = f64> + use<> {
        let reach = self.reach;
        let [least, most] = [ends[0].min(ends[1]).max(-reach), ends[0].max(ends[1]).min(reach)];
        let between = |[from, to]: [f64; 2]| {
            (0..=LEVELS).map(move |i| {
                let share = 0.5 - 0.5 * libm::cos(core::f64::consts::PI * f64::from(i) / f64::from(LEVELS));
                from + share * (to - from)
            })
        };
        let inside = move |level: &f64| least <= *level && *level <= most;
        between([least, most]).chain(between([-reach, reach])).filter(inside)
    }

    /// The radius of the circle in which the plane cuts a ball so far from it.
    fn circle(&self, level: f64) -> f64 {
        // Thinner than a tape measures, it is as thick as it is wherever the plane passes.
        if self.radius < self.reach {
            return self.radius;
        }
        libm::sqrt((self.radius * self.radius - level * level).max(0.0))
    }

    fn bar(&self, from: Place, to: Place) -> Part {
        let ahead = to[2] - from[2];
        if ahead.abs() < 1e-9 {
            let is_cut = from[2].abs() <= self.reach;
            let ends = [from, to].map(|end| ([end[0], end[1]], self.circle(from[2])));
            return if is_cut { Part::from(ends) } else { Part::new() };
        }
        let at = |level: f64| {
            let share = (level - from[2]) / ahead;
            ([0, 1].map(|i| from[i] + share * (to[i] - from[i])), self.circle(level))
        };
        self.levels([from[2], to[2]]).map(at).collect()
    }

    /// A round plate from its middle and two directions across it.
    fn plate(&self, centre: Place, across: [Place; 2]) -> Part {
        let [one, other] = across;
        let ahead = libm::hypot(one[2], other[2]);
        let seen = |place: Place| [place[0], place[1]];
        let at = |around: f64| {
            let (sin, cos) = libm::sincos(around);
            seen(add(centre, add(scale(one, cos), scale(other, sin))))
        };
        if ahead < 1e-9 {
            let is_cut = centre[2].abs() <= self.reach;
            let circle = |i: u32| (at(core::f64::consts::TAU * f64::from(i) / 72.0), self.circle(centre[2]));
            return if is_cut { (0..72).map(circle).collect() } else { Part::new() };
        }
        // The plate is at a level along a chord, whose ends are on its edge.
        let turn = libm::atan2(other[2], one[2]);
        self.levels([centre[2] - ahead, centre[2] + ahead])
            .flat_map(|level| {
                let half = libm::acos(((level - centre[2]) / ahead).clamp(-1.0, 1.0));
                [turn - half, turn + half].map(|around| (at(around), self.circle(level)))
            })
            .collect()
    }
}
