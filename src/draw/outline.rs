//! Outlines of wheels and obstacles, in millimetres of the vehicle.

use alloc::vec::Vec;

use super::flat::{Extent, Flat, along, convex, dot, nearest_on, sub, thickened};
use super::paper::{Frame, Line, Paper};
use crate::sweep::{Obstacle, Point, Profile, WheelPose};
use crate::units::{deg, in_mm, mm};

/// A wheel, and the one that was there before.
#[derive(Clone, Copy)]
pub(super) struct Wheel<'a> {
    pub(super) after: &'a Profile,
    pub(super) before: Option<&'a Profile>,
}

/// The same with half of each outline.
pub(super) struct Drawn<'a> {
    pub(super) after: (&'a Profile, Vec<Flat>),
    pub(super) before: Option<(&'a Profile, Vec<Flat>)>,
}

impl<'a> Drawn<'a> {
    pub(super) fn new(wheel: &Wheel<'a>) -> Self {
        let outlined = |profile: &'a Profile| (profile, half(profile));
        Self { after: outlined(wheel.after), before: wheel.before.map(outlined) }
    }
}

/// Half the width of a profile from the barrel to the top of the tread: `[half width, radius]`.
fn half(profile: &Profile) -> Vec<Flat> {
    let [bottom, flange, widest] =
        [profile.barrel_radius(), profile.flange_radius(), profile.widest_radius()].map(in_mm);
    let top = 0.5 * in_mm(profile.overall_diameter());
    let even = |from: f64, to: f64| (0..12).map(move |i| from + (to - from) * f64::from(i) / 12.0);
    // Closer together where the tread is nearly level.
    let closing = (0..=60).map(|i| {
        let left = 1.0 - f64::from(i) / 60.0;
        top - (top - widest) * left * left
    });
    even(bottom, flange)
        .chain(even(flange, widest))
        .chain(closing)
        .filter_map(|r| profile.half_width_at(mm(r)).map(|half| [in_mm(half), r]))
        .collect()
}

/// The section of a part of a profile between two radii, above the spindle or below it, closed.
pub(super) fn section(profile: &Profile, half: &[Flat], radii: [f64; 2], above: bool) -> Vec<Flat> {
    let centre = in_mm(profile.rim_centre());
    let up = if above { -1.0 } else { 1.0 };
    let within = half.iter().filter(|[_, r]| radii[0] - 1e-9 <= *r && *r <= radii[1] + 1e-9);
    let side = |way: f64| move |&[x, r]: &Flat| [centre + way * x, up * r];
    let mut outline: Vec<Flat> = within.clone().map(side(1.0)).collect();
    outline.extend(within.rev().map(side(-1.0)));
    outline.extend(outline.first().copied());
    outline
}

/// A wheel seen from above.
pub(super) fn from_above(profile: &Profile, half: &[Flat], stance: &WheelPose) -> Vec<Flat> {
    let seen =
        |axial: f64, radial: f64, around: f64| plan(stance.of_wheel(mm(axial), mm(radial), deg(around)));
    let hub = seen(0.0, 0.0, 0.0);
    // Directions of the spindle and across it, shortened as they are seen.
    let [spindle, up, forward] =
        [seen(1.0, 0.0, 0.0), seen(0.0, 1.0, 0.0), seen(0.0, 1.0, 90.0)].map(|end| sub(end, hub));
    let centre = in_mm(profile.rim_centre());
    convex(|n| {
        let (slope, [lift, reach]) = (dot(spindle, n), [dot(up, n), dot(forward, n)]);
        let across = libm::hypot(lift, reach);
        let mut best = (f64::NEG_INFINITY, 0.0, 0.0);
        for &[x, r] in half {
            let a = centre + if slope < 0.0 { -x } else { x };
            let far = a * slope + r * across;
            if far > best.0 {
                best = (far, a, r);
            }
        }
        let (_, a, r) = best;
        let share = if across > 0.0 { r / across } else { 0.0 };
        let out = along(along(hub, up, share * lift), forward, share * reach);
        along(out, spindle, a)
    })
}

/// A point as it is seen from above: outboard to the right, forward down.
pub(super) fn plan(point: Point) -> Flat {
    [in_mm(point.outboard()), in_mm(point.forward())]
}

/// How far apart two lines have to be on paper to be told apart.
pub(super) const APART: f64 = 0.6;

/// An obstacle as it is seen in a view.
pub(super) struct Seen {
    points: Vec<Flat>,
    /// The edge of a disc.
    edge: Vec<Flat>,
    radius: f64,
    uncertainty: f64,
    /// What of it is nearest to the wheel's middle in this view.
    pub(super) nearest: Flat,
}

impl Seen {
    /// From a view's way of seeing a point that was measured at ride height.
    pub(super) fn new(obstacle: &Obstacle, wheel: Flat, see: impl Fn(Point) -> Flat) -> Self {
        let points: Vec<Flat> = obstacle.points().map(&see).collect();
        let edge = (0..90).filter_map(|i| obstacle.edge(deg(4.0 * f64::from(i)))).map(see).collect();
        let mut nearest = points[0];
        for pair in points.windows(2) {
            let point = nearest_on(pair[0], pair[1], wheel);
            let far = |point| dot(sub(point, wheel), sub(point, wheel));
            if far(point) < far(nearest) {
                nearest = point;
            }
        }
        Self {
            points,
            edge,
            radius: in_mm(obstacle.radius()),
            uncertainty: in_mm(obstacle.uncertainty()),
            nearest,
        }
    }

    /// Makes a window hold what is nearest, and all of it that is in the room around the wheel.
    pub(super) fn hold(&self, window: &mut Extent, room: &Extent) {
        let around = self.radius + self.uncertainty;
        window.hold(self.nearest, around.min(40.0));
        for points in [&self.points, &self.edge] {
            points.iter().for_each(|&point| window.hold(room.nearest(point), 0.0));
        }
    }

    pub(super) fn draw(&self, frame: &Frame, paper: &mut Paper) {
        let step = frame.size(0.4);
        let outline = |around: f64| match self.edge[..] {
            [] => thickened(&self.points, around, step),
            _ => Vec::from([convex(|n| {
                let far = |a: &&Flat, b: &&Flat| dot(**a, n).total_cmp(&dot(**b, n));
                along(self.edge.iter().max_by(far).copied().unwrap_or(self.points[0]), n, around)
            })]),
        };
        // What is too little to be drawn apart is drawn as part of the obstacle.
        let apart = self.uncertainty >= frame.size(APART);
        let solid = if apart { self.radius } else { self.radius + self.uncertainty };
        let flat = self.edge.is_empty() && solid <= 0.0;
        if flat {
            frame.line(paper, Line::Thin, &self.points);
        } else {
            frame.lines(paper, Line::Thin, &outline(solid));
        }
        if apart {
            frame.lines(paper, Line::Uncertain, &outline(self.radius + self.uncertainty));
        }
        let mut extent = Extent::NOTHING;
        extent.hold_all(&self.points);
        let [wide, high] = extent.size();
        if wide.max(high) < frame.size(1.0) {
            paper.cross(frame.at(self.nearest), 1.3);
        } else if !flat && self.points.len() == 2 {
            frame.line(paper, Line::Centre, &self.points);
        }
    }
}
