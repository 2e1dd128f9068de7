//! Invented corners, wheels and bodies in plain numbers, and their clearance in one position, with a general-purpose
//! library's transforms.

use std::ops::Range;

use beadseat::sweep::{
    Carrier, ContactPatch, Corner, Effort, Obstacle, Obstacles, Point, Profile, RimSection, SteeringAxis,
    TireSection,
};
use beadseat::units::{deg, mm};
use beadseat::uom::si::f64::Length;
use beadseat::uom::si::length::millimeter;
use nalgebra::{Isometry3, Point3, Rotation3, Translation3, Unit, UnitQuaternion, Vector3};
use proptest::prelude::*;

use crate::outline::{Amount, Outline, Section};

pub(crate) fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// What a corner is made of, in millimetres and degrees.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Build {
    pub(crate) steering: Option<Steering>,
    pub(crate) jounce: f64,
    pub(crate) rebound: f64,
    pub(crate) camber: f64,
    pub(crate) toe: f64,
    /// Over 100 mm of jounce.
    pub(crate) camber_change: f64,
    pub(crate) toe_change: f64,
    pub(crate) lateral_change: f64,
    pub(crate) track: Option<f64>,
}

#[derive(Clone, Copy, Debug)]
pub(crate) struct Steering {
    pub(crate) inclination: f64,
    pub(crate) caster: f64,
    pub(crate) scrub: f64,
    pub(crate) trail: f64,
    pub(crate) loaded_radius: f64,
    pub(crate) rim_centre: f64,
    pub(crate) inner: f64,
    pub(crate) outer: f64,
}

impl Steering {
    /// Where the axis meets the ground, by the definition of scrub radius and trail, for an upright wheel.
    fn ground(self) -> Point3<f64> {
        Point3::new(self.trail, self.rim_centre - self.scrub, -self.loaded_radius)
    }

    fn direction(self) -> Unit<Vector3<f64>> {
        let lean = |degrees: f64| -degrees.to_radians().tan();
        Unit::new_normalize(Vector3::new(lean(self.caster), lean(self.inclination), 1.0))
    }
}

impl Build {
    pub(crate) fn corner(&self) -> Corner {
        let mut corner = Corner::new()
            .travelling(mm(self.jounce), mm(self.rebound))
            .and_then(|corner| corner.with_camber(deg(self.camber)))
            .and_then(|corner| corner.with_toe(deg(self.toe)))
            .and_then(|corner| corner.with_camber_change(deg(self.camber_change), mm(100.0)))
            .and_then(|corner| corner.with_toe_change(deg(self.toe_change), mm(100.0)))
            .and_then(|corner| corner.with_lateral_change(mm(self.lateral_change), mm(100.0)))
            .unwrap();
        if let Some(s) = self.steering {
            let patch = ContactPatch::under(mm(s.rim_centre), mm(s.loaded_radius), deg(0.0)).unwrap();
            let axis =
                SteeringAxis::from_ground(patch, deg(s.inclination), deg(s.caster), mm(s.scrub), mm(s.trail));
            corner = corner.steered(axis.unwrap(), deg(s.inner), deg(s.outer)).unwrap();
        }
        match self.track {
            Some(track) => corner.on_beam_axle(mm(track)).unwrap(),
            None => corner,
        }
    }

    /// How the knuckle stands in the body: travel, roll.
    fn axle(&self, z: f64, other: f64) -> Isometry3<f64> {
        let lateral = self.lateral_change / 100.0 * z;
        let (roll, inboard) = match self.track {
            Some(track) => {
                let roll = (z - other) / track;
                (roll, track / 4.0 * roll * roll)
            }
            None => (0.0, 0.0),
        };
        let lift = Translation3::new(0.0, lateral - inboard, z);
        lift * UnitQuaternion::from_axis_angle(&Vector3::x_axis(), roll)
    }

    fn steer(&self, radians: f64) -> Isometry3<f64> {
        match self.steering {
            Some(s) => {
                let turn = UnitQuaternion::from_axis_angle(&s.direction(), radians);
                Isometry3::rotation_wrt_point(turn, s.ground())
            }
            None => Isometry3::identity(),
        }
    }

    fn tilt(&self, z: f64) -> Isometry3<f64> {
        let camber = (self.camber + self.camber_change / 100.0 * z).to_radians();
        let toe = (self.toe + self.toe_change / 100.0 * z).to_radians();
        let turn = Rotation3::from_axis_angle(&Vector3::z_axis(), -toe)
            * Rotation3::from_axis_angle(&Vector3::x_axis(), -camber);
        Isometry3::from_parts(Translation3::identity(), turn.into())
    }

    /// From the corner frame to the wheel's, for something of a carrier.
    fn wheel_from(&self, carrier: Carrier, [steer, z, other]: [f64; 3]) -> Isometry3<f64> {
        let placed = match carrier {
            Carrier::Knuckle => self.tilt(0.0),
            Carrier::Unsprung => self.steer(steer) * self.tilt(z),
            _ => self.axle(z, other) * self.steer(steer) * self.tilt(z),
        };
        let arm = match carrier {
            Carrier::Arm { pivot, end } => {
                let (pivot, reach) = (coordinates(pivot), coordinates(end) - coordinates(pivot));
                let long = reach.y.hypot(reach.z);
                let turn = ((reach.z + z) / long).asin() - (reach.z / long).asin();
                let turn = UnitQuaternion::from_axis_angle(&Vector3::x_axis(), turn * reach.y.signum());
                Isometry3::rotation_wrt_point(turn, pivot)
            }
            _ => Isometry3::identity(),
        };
        placed.inverse() * arm
    }

    /// Takes points of something of a carrier to the wheel's frame.
    pub(crate) fn in_wheel(
        &self,
        carrier: Carrier,
        [steer, z, other]: [f64; 3],
    ) -> Box<dyn Fn(Point3<f64>) -> Point3<f64>> {
        let Carrier::Rod { outer, inner } = carrier else {
            let wheel_from = self.wheel_from(carrier, [steer, z, other]);
            return Box::new(move |point| wheel_from * point);
        };
        let (outer, inner) = (coordinates(outer), coordinates(inner));
        let way = inner - outer;
        let [joint, slid] = self.ends_of_rod(outer, inner, steer, z);
        Box::new(move |point| joint + (slid - joint) * ((point - outer).dot(&way) / way.norm_squared()))
    }

    /// The same bodies, those of rods that the corner has no room for fixed to its own body.
    pub(crate) fn with_rods(&self, bodies: &[Body]) -> Vec<Body> {
        let settle = |body: &Body| {
            let alone = around(std::slice::from_ref(body));
            let reaches =
                self.corner().clearance(&any_wheel(), &alone, Effort::new(mm(0.1), 1).unwrap()).is_ok();
            Body { carrier: if reaches { body.carrier } else { Carrier::Body }, ..body.clone() }
        };
        bodies.iter().map(settle).collect()
    }

    /// Where the joints of a rod are in the wheel's frame.
    fn ends_of_rod(&self, outer: Point3<f64>, inner: Point3<f64>, steer: f64, z: f64) -> [Point3<f64>; 2] {
        let wheel = self.axle(z, z) * self.steer(steer) * self.tilt(z);
        let joint = wheel * self.tilt(0.0).inverse() * outer;
        // Where a sphere about the joint meets the line of the rack, on the rod's side.
        let off = joint - inner;
        let across = ((outer - inner).norm_squared() - off.x * off.x - off.z * off.z).sqrt();
        let slid = inner + Vector3::y() * (off.y - (outer.y - inner.y).signum() * across);
        [joint, slid].map(|end| wheel.inverse() * end)
    }

    /// The same with less steer and travel.
    pub(crate) fn less(mut self, steer: f64, travel: f64) -> Self {
        if let Some(steering) = &mut self.steering {
            (steering.inner, steering.outer) = (steering.inner * steer, steering.outer * steer);
        }
        (self.jounce, self.rebound) = (self.jounce * travel, self.rebound * travel);
        self
    }

    /// A position and a place of a body for numbers from 0 to 1.
    pub(crate) fn place(&self, shares: [f64; 5]) -> [f64; 5] {
        let mut place = shares;
        for (value, (least, most)) in place.iter_mut().zip(self.ranges()) {
            *value = (least + (most - least) * *value).clamp(least, most);
        }
        place
    }

    pub(crate) fn ranges(&self) -> [(f64, f64); 3] {
        let (inner, outer) = self.steering.map_or((0.0, 0.0), |s| (s.inner, s.outer));
        let travel = (-self.rebound, self.jounce);
        [
            (-outer.to_radians(), inner.to_radians()),
            travel,
            if self.track.is_some() { travel } else { (0.0, 0.0) },
        ]
    }
}

/// An obstacle in plain numbers.
#[derive(Clone, Debug)]
pub(crate) struct Body {
    pub(crate) form: Form,
    pub(crate) radius: f64,
    pub(crate) uncertainty: f64,
    pub(crate) carrier: Carrier,
}

#[derive(Clone, Debug)]
pub(crate) enum Form {
    Chain(Vec<[f64; 3]>),
    Disc {
        centre: [f64; 3],
        on_axis: [f64; 3],
        radius: f64,
    },
    /// From the first direction so far towards the second, both of length 1 and across each other.
    Arc {
        centre: [f64; 3],
        across: [[f64; 3]; 2],
        radius: f64,
        angle: f64,
    },
}

/// The point of an arc at an angle.
fn on_arc(centre: [f64; 3], across: [[f64; 3]; 2], radius: f64, angle: f64) -> Point3<f64> {
    let [one, other] = across.map(Vector3::from);
    Point3::from(centre) + (one * angle.cos() + other * angle.sin()) * radius
}

fn any_wheel() -> Profile {
    let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0)).unwrap();
    Profile::new(rim, TireSection::new(mm(107.0), mm(316.0)).unwrap()).unwrap()
}

pub(crate) fn coordinates(p: Point) -> Point3<f64> {
    Point3::new(in_mm(p.forward()), in_mm(p.outboard()), in_mm(p.up()))
}

pub(crate) fn point([x, y, z]: [f64; 3]) -> Point {
    Point::new(mm(x), mm(y), mm(z)).unwrap()
}

impl Body {
    pub(crate) fn obstacle(&self) -> Obstacle {
        let obstacle = match &self.form {
            Form::Chain(points) if points.len() == 1 => Obstacle::point(point(points[0])),
            Form::Chain(points) => {
                Obstacle::polyline(&points.iter().copied().map(point).collect::<Vec<_>>()).unwrap()
            }
            Form::Disc { centre, on_axis, radius } => {
                Obstacle::disc(point(*centre), point(*on_axis), mm(*radius)).unwrap()
            }
            &Form::Arc { centre, across, radius, angle } => {
                let at = |share: f64| point(on_arc(centre, across, radius, share * angle).into());
                Obstacle::arch_lip(at(0.0), at(0.4), at(1.0)).unwrap()
            }
        };
        obstacle
            .with_radius(mm(self.radius))
            .and_then(|obstacle| obstacle.with_uncertainty(mm(self.uncertainty)))
            .unwrap()
            .carried_by(self.carrier)
            .unwrap()
    }

    /// A point of it for two numbers from 0 to 1.
    fn at(&self, s: f64, t: f64) -> Point3<f64> {
        match &self.form {
            Form::Chain(points) if points.len() == 1 => Point3::from(points[0]),
            Form::Chain(points) => {
                let along = s * (points.len() - 1) as f64;
                let piece = (along.floor() as usize).min(points.len() - 2);
                let [from, to] = [points[piece], points[piece + 1]].map(Point3::from);
                from + (to - from) * (along - piece as f64)
            }
            Form::Disc { centre, on_axis, radius } => {
                let (centre, on_axis) = (Point3::from(*centre), Point3::from(*on_axis));
                let turn = UnitQuaternion::rotation_between(&Vector3::z(), &(on_axis - centre))
                    .unwrap_or_else(|| {
                        UnitQuaternion::from_axis_angle(&Vector3::x_axis(), std::f64::consts::PI)
                    });
                let (sin, cos) = (t * std::f64::consts::TAU).sin_cos();
                centre + turn * Vector3::new(cos, sin, 0.0) * (radius * s)
            }
            &Form::Arc { centre, across, radius, angle } => on_arc(centre, across, radius, s * angle),
        }
    }

    /// How far a point is from its shape.
    pub(crate) fn distance(&self, from: Point3<f64>) -> f64 {
        match &self.form {
            Form::Chain(points) => {
                let points: Vec<Point3<f64>> = points.iter().copied().map(Point3::from).collect();
                let pairs = points.iter().zip(points.iter().skip(1).chain(points.last()));
                let to = |(a, b): (&Point3<f64>, &Point3<f64>)| {
                    let way = b - a;
                    let along = (from - a).dot(&way) / way.norm_squared().max(1e-300);
                    (from - (a + way * along.clamp(0.0, 1.0))).norm()
                };
                pairs.map(to).fold(f64::INFINITY, f64::min)
            }
            Form::Disc { centre, on_axis, radius } => {
                let (centre, on_axis) = (Point3::from(*centre), Point3::from(*on_axis));
                let off = (from - centre).dot(&(on_axis - centre).normalize());
                off.abs().max((from - centre).norm() - radius)
            }
            &Form::Arc { centre, across, radius, angle } => {
                let [x, y] = across.map(|way| (from - Point3::from(centre)).dot(&Vector3::from(way)));
                let at = y.atan2(x).rem_euclid(std::f64::consts::TAU);
                let ends = [0.0, angle].into_iter().chain((at <= angle).then_some(at));
                ends.map(|at| (from - on_arc(centre, across, radius, at)).norm())
                    .fold(f64::INFINITY, f64::min)
            }
        }
    }

    fn pieces(&self) -> usize {
        match &self.form {
            Form::Chain(points) => points.len().max(2) - 1,
            Form::Disc { .. } | Form::Arc { .. } => 1,
        }
    }

    fn steps(&self) -> [usize; 2] {
        match &self.form {
            Form::Chain(_) => [3 * self.pieces() + 1, 1],
            Form::Disc { .. } => [3, 9],
            Form::Arc { .. } => [19, 1],
        }
    }
}

/// A body, and how it and the outline of a wheel move past each other.
#[derive(Clone, Copy)]
pub(crate) struct Held<'a> {
    pub(crate) build: &'a Build,
    pub(crate) outline: &'a Outline,
    pub(crate) body: &'a Body,
}

impl Held<'_> {
    /// The least and the greatest clearance that may be told of one pose and a point of the body.
    pub(crate) fn clearances(&self, pose: [f64; 3], point: Point3<f64>) -> (f64, f64) {
        let p = self.build.in_wheel(self.body.carrier, pose)(point);
        self.of_place(p)
    }

    fn of_place(&self, p: Point3<f64>) -> (f64, f64) {
        let (least, most) = self.outline.distances(p.y, p.x.hypot(p.z));
        let thickness = self.body.radius + self.body.uncertainty;
        (least - thickness, most - thickness)
    }

    /// The greatest clearance that may be told of a pose and a place of the body.
    pub(crate) fn at(&self, [steer, z, other, s, t]: [f64; 5]) -> f64 {
        self.clearances([steer, z, other], self.body.at(s, t)).1
    }

    /// The least clearance on a grid, and where.
    pub(crate) fn sampled(&self, poses: [usize; 3]) -> (f64, [f64; 5]) {
        let [steers, travels, others] = self.build.ranges();
        let [along, round] = self.body.steps();
        let mut best = (f64::INFINITY, [0.0; 5]);
        for steer in steps(steers, poses[0]) {
            for z in steps(travels, poses[1]) {
                for other in steps(others, poses[2]) {
                    let in_wheel = self.build.in_wheel(self.body.carrier, [steer, z, other]);
                    for s in steps((0.0, 1.0), along) {
                        for t in steps((0.0, 1.0), round) {
                            let gap = self.of_place(in_wheel(self.body.at(s, t))).1;
                            if gap < best.0 {
                                best = (gap, [steer, z, other, s, t]);
                            }
                        }
                    }
                }
            }
        }
        best
    }

    /// Goes downhill from a place by ever smaller steps in many directions, staying in the ranges, until the steps
    /// are a `last` share of them.
    pub(crate) fn refined(&self, from: [f64; 5], last: f64) -> (f64, [f64; 5]) {
        let [steer, travel, other] = self.build.ranges();
        let ranges = [steer, travel, other, (0.0, 1.0), (0.0, 1.0)];
        let free: Vec<usize> = (0..5).filter(|&i| ranges[i].0 < ranges[i].1).collect();
        let mut at = from;
        let mut best = self.at(at);
        let mut share = 0.05;
        let mut chance = 1_u64;
        while share > last {
            let mut better = false;
            // Each variable alone, both ways, then some mixtures: a valley may lie aslant.
            for trial in 0..2 * free.len() + 8 {
                let mut next = at;
                for (j, &i) in free.iter().enumerate() {
                    chance = chance
                        .wrapping_mul(6_364_136_223_846_793_005)
                        .wrapping_add(1_442_695_040_888_963_407);
                    let step = match trial.checked_sub(2 * free.len()) {
                        None if trial / 2 != j => 0.0,
                        None => [-1.0, 1.0][trial % 2],
                        Some(_) => (chance >> 11) as f64 / (1_u64 << 52) as f64 - 1.0,
                    };
                    let (least, most) = ranges[i];
                    next[i] = (at[i] + step * share * (most - least)).clamp(least, most);
                }
                let gap = self.at(next);
                if gap < best {
                    (best, at, better) = (gap, next, true);
                }
            }
            if !better {
                share *= 0.5;
            }
        }
        (best, at)
    }
}

fn steps(range: (f64, f64), count: usize) -> impl Iterator<Item = f64> + Clone {
    let last = if range.0 == range.1 || count == 1 { 0 } else { count - 1 };
    (0..=last).map(move |i| range.0 + (range.1 - range.0) * i as f64 / last.max(1) as f64)
}

/// So little more or less that it is next to nothing; exactly nothing, too.
fn next_to_nothing() -> impl Strategy<Value = f64> {
    let sizes = prop::sample::select(vec![0.0, 0.0, f64::EPSILON, 1e-12, 1e-9, 1e-6, 1e-3]);
    (sizes, prop::sample::select(vec![-1.0, 1.0])).prop_map(|(size, sign): (f64, f64)| sign * size)
}

/// The number, or one that differs by next to nothing; of nothing, the next floating-point numbers are not looked for.
fn equal_or_nearly(to: f64) -> impl Strategy<Value = f64> {
    next_to_nothing().prop_map(move |off| if off.abs() == f64::EPSILON { to * (1.0 + off) } else { to + off })
}

/// A number of a range; sometimes nothing, or next to it.
fn or_nothing(range: Range<f64>) -> impl Strategy<Value = f64> {
    let within = range.clone();
    let nothing = next_to_nothing().prop_map(move |x| if within.start < 0.0 { x } else { x.abs() });
    prop_oneof![6 => range, 1 => nothing]
}

pub(crate) fn build() -> impl Strategy<Value = Build> {
    let steering = (
        (or_nothing(-2.0..18.0), or_nothing(-3.0..14.0), or_nothing(-60.0..90.0), or_nothing(-20.0..60.0)),
        (
            240.0..420.0,
            or_nothing(-70.0..40.0),
            or_nothing(0.0..45.0),
            or_nothing(0.0..40.0),
            prop::bool::weighted(0.1),
        ),
    )
        .prop_map(
            |(
                (inclination, caster, scrub, trail),
                (loaded_radius, rim_centre, inner, outer, through_hub),
            )| {
                // An upright axis through the hub: where it is met, what is steered goes round nothing.
                let scrub = if through_hub { rim_centre } else { scrub };
                Steering { inclination, caster, scrub, trail, loaded_radius, rim_centre, inner, outer }
            },
        );
    (
        prop::option::weighted(0.75, steering),
        (or_nothing(0.0..120.0), or_nothing(0.0..120.0)),
        (or_nothing(-4.0..2.0), or_nothing(-1.0..1.0)),
        prop_oneof![
            1 => Just((0.0, 0.0, 0.0)),
            1 => (or_nothing(-3.0..3.0), or_nothing(-1.0..1.0), or_nothing(-20.0..20.0)),
            1 => (-15.0..15.0, -5.0..5.0, -20.0..20.0),
        ],
        prop::option::weighted(0.25, 1200.0..1900.0),
    )
        .prop_map(|(steering, (jounce, rebound), (camber, toe), changes, track)| Build {
            steering,
            jounce,
            rebound,
            camber,
            toe,
            camber_change: changes.0,
            toe_change: changes.1,
            lateral_change: changes.2,
            track,
        })
}

/// Sections, equal and nearly equal widths and radii among them. A shape for which there is no room is left out; the
/// defaults always have room.
pub(crate) fn section() -> impl Strategy<Value = Section> {
    let amount = |range: Range<f64>| {
        prop_oneof![
            2 => Just(Amount::Default),
            1 => Just(Amount::Most),
            1 => Just(Amount::Told(0.001_01)),
            3 => or_nothing(range).prop_map(Amount::Told),
        ]
    };
    let shape = (
        prop::option::of(prop_oneof![4 => 0.05..0.95, 1 => Just(0.05), 1 => Just(0.95)]),
        amount(0.0..40.0),
        amount(0.0..60.0),
    );
    let half_rim = 60.0..150.0;
    let rim = (or_nothing(-70.0..40.0), half_rim, 180.0..300.0, or_nothing(20.0..60.0)).boxed();
    let tire = rim.prop_flat_map(|(centre, half_rim, flange, lip): (f64, f64, f64, f64)| {
        let half_tire = prop_oneof![
            3 => (0.5..2.0).prop_map(move |bulge: f64| half_rim * bulge),
            1 => equal_or_nearly(half_rim),
            1 => equal_or_nearly(0.5 * half_rim).prop_map(move |half: f64| half.max(0.5 * half_rim)),
        ];
        // The least height is 5 mm.
        let height = prop_oneof![6 => 6.0..160.0, 1 => next_to_nothing().prop_map(|off| 5.0 + off.abs())];
        (Just((centre, half_rim, flange, flange - lip)), half_tire, height, or_nothing(0.0..8.0))
    });
    let tread =
        tire.prop_flat_map(|(rim, half_tire, height, growth): ((f64, f64, f64, f64), f64, f64, f64)| {
            let as_wide_as_the_rim =
                equal_or_nearly(rim.1).prop_map(move |tread| (tread / half_tire).clamp(0.3, 1.0));
            let tread = prop_oneof![
                3 => Just(None),
                3 => (0.3..1.0).prop_map(Some),
                1 => as_wide_as_the_rim.prop_map(Some),
                1 => equal_or_nearly(1.0).prop_map(|share: f64| Some(share.min(1.0))),
            ];
            (Just((rim, half_tire, height, growth)), tread)
        });
    (tread, shape).prop_map(|(((rim, half_tire, height, growth), tread), (widest, drop, shoulder))| {
        let (centre, half_rim, flange, barrel) = rim;
        let top = flange + height;
        let plain = Section {
            centre,
            half_rim,
            flange,
            barrel,
            half_tire,
            top,
            widest: None,
            tread: None,
            drop: Amount::Default,
            shoulder: Amount::Default,
            growth,
        };
        let shaped = Section { widest, tread, drop, shoulder, ..plain };
        let shouldered = Section { widest, tread, shoulder, ..plain };
        [shaped, shouldered].into_iter().find(|section| section.profile().is_some()).unwrap_or(plain)
    })
}

/// The crate's own.
pub(crate) fn profile() -> impl Strategy<Value = Profile> {
    section().prop_map(|section| section.profile().unwrap())
}

/// Around the wheel, and in it.
pub(crate) fn place() -> impl Strategy<Value = [f64; 3]> {
    prop_oneof![
        6 => (-500.0..500.0, -350.0..150.0, -150.0..550.0),
        2 => (or_nothing(-150.0..150.0), -200.0..50.0, or_nothing(-150.0..150.0)),
        // Far off, where little turning moves much.
        1 => (-500.0..500.0, -4500.0..4500.0, -500.0..500.0),
        1 => (next_to_nothing(), or_nothing(-150.0..150.0), next_to_nothing()),
    ]
    .prop_map(|(x, y, z)| [x, y, z])
}

fn near(from: [f64; 3], by: [f64; 3]) -> [f64; 3] {
    [from[0] + by[0], from[1] + by[1], from[2] + by[2]]
}

pub(crate) fn body() -> impl Strategy<Value = Body> {
    // Sometimes of no length, or of next to none.
    let step = || {
        let whole = (-150.0..150.0, -60.0..60.0, -150.0..150.0);
        prop_oneof![
            6 => whole,
            1 => (or_nothing(-150.0..150.0), or_nothing(-60.0..60.0), or_nothing(-150.0..150.0)),
            1 => (next_to_nothing(), next_to_nothing(), next_to_nothing()),
        ]
        .prop_map(|(x, y, z)| [x, y, z])
    };
    let form = prop_oneof![
        2 => place().prop_map(|p| Form::Chain(vec![p])),
        3 => (place(), prop::collection::vec(step(), 1..=7)).prop_map(|(first, steps)| {
            let mut points = vec![first];
            for step in steps {
                points.push(near(points[points.len() - 1], step));
            }
            Form::Chain(points)
        }),
        1 => (place(), (1.0..50.0, or_nothing(1.0..50.0), or_nothing(-50.0..50.0)), or_nothing(5.0..90.0)).prop_map(|(centre, (x, y, z), radius)| {
            Form::Disc { centre, on_axis: near(centre, [x, y, z]), radius }
        }),
        1 => (place(), [-3.0..3.0, -1.5..1.5, -3.0..3.0], 60.0..500.0, 0.1..6.0).prop_map(
            |(centre, turns, radius, angle)| {
                let turn = Rotation3::from_euler_angles(turns[0], turns[1], turns[2]);
                let across = [Vector3::x(), Vector3::y()].map(|way| (turn * way).into());
                Form::Arc { centre, across, radius, angle }
            }
        ),
    ];
    let arm = (-450.0..-350.0, -60.0..60.0, -90.0..-40.0, -80.0..20.0).prop_map(|(y, z, end_y, end_z)| {
        Carrier::Arm { pivot: point([0.0, y, z]), end: point([0.0, end_y, end_z]) }
    });
    let carrier = prop_oneof![
        4 => Just(Carrier::Body),
        1 => Just(Carrier::Knuckle),
        1 => Just(Carrier::Unsprung),
        1 => arm,
    ];
    let carried = (form, carrier).boxed();
    // Of a rod, from its joint on the knuckle inward.
    let joint = (or_nothing(-160.0..160.0), or_nothing(-180.0..20.0), or_nothing(-150.0..150.0));
    let rod = (
        joint,
        (or_nothing(-60.0..60.0), -450.0..-250.0, or_nothing(-60.0..60.0)),
        or_nothing(0.0..0.5),
        0.5..1.0,
        prop::bool::weighted(0.1),
    )
        .prop_map(|((x, y, z), (a, b, c), from, to, a_point): (_, _, f64, f64, _)| {
            let to = if a_point { from } else { to };
            let (outer, inner) = ([x, y, z], near([x, y, z], [a, b, c]));
            let at = |share: f64| near(outer, [a * share, b * share, c * share]);
            let carrier = Carrier::Rod { outer: point(outer), inner: point(inner) };
            (Form::Chain(vec![at(from), at(to)]), carrier)
        });
    (prop_oneof![5 => carried, 1 => rod], or_nothing(0.0..40.0), or_nothing(0.0..4.0))
        .prop_map(|((form, carrier), radius, uncertainty)| Body { form, radius, uncertainty, carrier })
}

/// Of a range: all of it, or less down to a thousandth.
pub(crate) fn share() -> impl Strategy<Value = f64> {
    prop::sample::select(vec![1.0, 1.0, 1.0, 0.3, 0.1, 0.03, 0.001])
}

pub(crate) fn around(bodies: &[Body]) -> Obstacles {
    let mut around = Obstacles::new();
    for body in bodies {
        around.push(body.obstacle()).unwrap();
    }
    around
}
