//! Swept clearance against dense sampling with a general-purpose library's transforms, and its laws.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]
#![allow(clippy::disallowed_methods, reason = "an oracle has functions of its own")]

use beadseat::sweep::{
    Carrier, ContactPatch, Corner, Effort, Obstacle, Obstacles, Point, Pose, Profile, RimSection,
    SteeringAxis, Swept, TireSection,
};
use beadseat::units::{deg, mm, ratio};
use beadseat::uom::si::f64::Length;
use beadseat::uom::si::{angle::radian, length::millimeter};
use nalgebra::{Isometry3, Point3, Rotation3, Translation3, Unit, UnitQuaternion, Vector3};
use proptest::prelude::*;

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// What a corner is made of, in millimetres and degrees.
#[derive(Clone, Copy, Debug)]
struct Build {
    steering: Option<Steering>,
    jounce: f64,
    rebound: f64,
    camber: f64,
    toe: f64,
    /// Over 100 mm of jounce.
    camber_change: f64,
    toe_change: f64,
    lateral_change: f64,
    track: Option<f64>,
}

#[derive(Clone, Copy, Debug)]
struct Steering {
    inclination: f64,
    caster: f64,
    scrub: f64,
    trail: f64,
    loaded_radius: f64,
    rim_centre: f64,
    inner: f64,
    outer: f64,
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
    fn corner(&self) -> Corner {
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
            Carrier::Travels => self.steer(steer) * self.tilt(z),
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
    fn in_wheel(
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
    fn with_rods(&self, bodies: &[Body]) -> Vec<Body> {
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

    fn ranges(&self) -> [(f64, f64); 3] {
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
struct Body {
    form: Form,
    radius: f64,
    uncertainty: f64,
    carrier: Carrier,
}

#[derive(Clone, Debug)]
enum Form {
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

fn coordinates(p: Point) -> Point3<f64> {
    Point3::new(in_mm(p.forward()), in_mm(p.outboard()), in_mm(p.up()))
}

fn point([x, y, z]: [f64; 3]) -> Point {
    Point::new(mm(x), mm(y), mm(z)).unwrap()
}

impl Body {
    fn obstacle(&self) -> Obstacle {
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
    fn distance(&self, from: Point3<f64>) -> f64 {
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

/// Clearance of one body at a pose and a place of the body.
fn clearance(build: &Build, profile: &Profile, body: &Body, at: [f64; 5]) -> f64 {
    let [steer, z, other, s, t] = at;
    let p = build.in_wheel(body.carrier, [steer, z, other])(body.at(s, t));
    in_mm(profile.distance(mm(p.y), mm(p.x.hypot(p.z))).0) - body.radius - body.uncertainty
}

fn steps(range: (f64, f64), count: usize) -> impl Iterator<Item = f64> + Clone {
    let last = if range.0 == range.1 || count == 1 { 0 } else { count - 1 };
    (0..=last).map(move |i| range.0 + (range.1 - range.0) * i as f64 / last.max(1) as f64)
}

/// The least clearance on a grid, and where.
fn sampled(build: &Build, profile: &Profile, body: &Body, poses: [usize; 3]) -> (f64, [f64; 5]) {
    let [steers, travels, others] = build.ranges();
    let [along, round] = body.steps();
    let mut best = (f64::INFINITY, [0.0; 5]);
    for steer in steps(steers, poses[0]) {
        for z in steps(travels, poses[1]) {
            for other in steps(others, poses[2]) {
                let in_wheel = build.in_wheel(body.carrier, [steer, z, other]);
                for s in steps((0.0, 1.0), along) {
                    for t in steps((0.0, 1.0), round) {
                        let p = in_wheel(body.at(s, t));
                        let gap = in_mm(profile.distance(mm(p.y), mm(p.x.hypot(p.z))).0);
                        if gap < best.0 {
                            best = (gap, [steer, z, other, s, t]);
                        }
                    }
                }
            }
        }
    }
    (best.0 - body.radius - body.uncertainty, best.1)
}

/// Goes downhill from a place by ever smaller steps in many directions, staying in the ranges.
fn refined(build: &Build, profile: &Profile, body: &Body, from: [f64; 5]) -> f64 {
    let [steer, travel, other] = build.ranges();
    let ranges = [steer, travel, other, (0.0, 1.0), (0.0, 1.0)];
    let free: Vec<usize> = (0..5).filter(|&i| ranges[i].0 < ranges[i].1).collect();
    let mut at = from;
    let mut best = clearance(build, profile, body, at);
    let mut share = 0.05;
    let mut chance = 1_u64;
    while share > 1e-4 {
        let mut better = false;
        // Each variable alone, both ways, then some mixtures: a valley may lie aslant.
        for trial in 0..2 * free.len() + 8 {
            let mut next = at;
            for (j, &i) in free.iter().enumerate() {
                chance =
                    chance.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                let step = match trial.checked_sub(2 * free.len()) {
                    None if trial / 2 != j => 0.0,
                    None => [-1.0, 1.0][trial % 2],
                    Some(_) => (chance >> 11) as f64 / (1_u64 << 52) as f64 - 1.0,
                };
                let (least, most) = ranges[i];
                next[i] = (at[i] + step * share * (most - least)).clamp(least, most);
            }
            let gap = clearance(build, profile, body, next);
            if gap < best {
                (best, at, better) = (gap, next, true);
            }
        }
        if !better {
            share *= 0.5;
        }
    }
    best
}

fn build() -> impl Strategy<Value = Build> {
    let steering = (
        (-2.0..18.0, -3.0..14.0, -60.0..90.0, -20.0..60.0),
        (240.0..420.0, -70.0..40.0, 0.0..45.0, 0.0..40.0),
    )
        .prop_map(|((inclination, caster, scrub, trail), (loaded_radius, rim_centre, inner, outer))| {
            Steering { inclination, caster, scrub, trail, loaded_radius, rim_centre, inner, outer }
        });
    (
        prop::option::weighted(0.75, steering),
        (0.0..120.0, 0.0..120.0),
        (-4.0..2.0, -1.0..1.0),
        prop_oneof![1 => Just((0.0, 0.0, 0.0)), 1 => (-3.0..3.0, -1.0..1.0, -20.0..20.0)],
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

fn profile() -> impl Strategy<Value = Profile> {
    let shape = (
        prop::option::of(0.05..0.95),
        prop::option::of(0.3..=1.0),
        prop::option::of(prop_oneof![1 => Just(0.0), 3 => 0.0..40.0]),
        prop::option::of(prop_oneof![1 => Just(0.0), 3 => 0.0..60.0]),
    );
    let size = (-70.0..40.0, 60.0..150.0, 180.0..300.0, 20.0..60.0, 0.5..2.0, 6.0..160.0, 0.0..8.0);
    (size, shape).prop_map(|((centre, half_rim, flange, lip, bulge, height, growth), shape)| {
        let rim = RimSection::new(mm(centre), mm(half_rim), mm(flange), mm(flange - lip)).unwrap();
        let plain = TireSection::new(mm(half_rim * bulge), mm(flange + height)).unwrap();
        let mut shaped = plain;
        if let Some(share) = shape.0 {
            shaped = shaped.with_widest(ratio(share)).unwrap();
        }
        if let Some(share) = shape.1 {
            shaped = shaped.with_tread_share(ratio(share)).unwrap();
        }
        if let Some(drop) = shape.2 {
            shaped = shaped.with_crown_drop(mm(drop)).unwrap();
        }
        if let Some(radius) = shape.3 {
            shaped = shaped.with_shoulder_radius(mm(radius)).unwrap();
        }
        // A shape for which there is no room is refused; the defaults always have room.
        let profile = Profile::new(rim, shaped).unwrap_or_else(|_| Profile::new(rim, plain).unwrap());
        profile.grown(mm(growth)).unwrap()
    })
}

/// Around the wheel, and in it.
fn place() -> impl Strategy<Value = [f64; 3]> {
    prop_oneof![
        3 => (-500.0..500.0, -350.0..150.0, -150.0..550.0),
        1 => (-150.0..150.0, -200.0..50.0, -150.0..150.0),
    ]
    .prop_map(|(x, y, z)| [x, y, z])
}

fn near(from: [f64; 3], by: [f64; 3]) -> [f64; 3] {
    [from[0] + by[0], from[1] + by[1], from[2] + by[2]]
}

fn body() -> impl Strategy<Value = Body> {
    let step = || (-150.0..150.0, -60.0..60.0, -150.0..150.0).prop_map(|(x, y, z)| [x, y, z]);
    let form = prop_oneof![
        2 => place().prop_map(|p| Form::Chain(vec![p])),
        3 => (place(), prop::collection::vec(step(), 1..=7)).prop_map(|(first, steps)| {
            let mut points = vec![first];
            for step in steps {
                points.push(near(points[points.len() - 1], step));
            }
            Form::Chain(points)
        }),
        1 => (place(), (1.0..50.0, 1.0..50.0, -50.0..50.0), 5.0..90.0).prop_map(|(centre, (x, y, z), radius)| {
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
        1 => Just(Carrier::Travels),
        1 => arm,
    ];
    let carried = (form, carrier).boxed();
    // Of a rod, from its joint on the knuckle inward.
    let joint = (-160.0..160.0, -180.0..20.0, -150.0..150.0);
    let rod = (joint, (-60.0..60.0, -450.0..-250.0, -60.0..60.0), 0.0..0.5, 0.5..1.0).prop_map(
        |((x, y, z), (a, b, c), from, to): (_, _, f64, f64)| {
            let (outer, inner) = ([x, y, z], near([x, y, z], [a, b, c]));
            let at = |share: f64| near(outer, [a * share, b * share, c * share]);
            let carrier = Carrier::Rod { outer: point(outer), inner: point(inner) };
            (Form::Chain(vec![at(from), at(to)]), carrier)
        },
    );
    (prop_oneof![5 => carried, 1 => rod], 0.0..40.0, 0.0..4.0)
        .prop_map(|((form, carrier), radius, uncertainty)| Body { form, radius, uncertainty, carrier })
}

/// Of a range: all of it, or less down to a thousandth.
fn share() -> impl Strategy<Value = f64> {
    prop::sample::select(vec![1.0, 1.0, 1.0, 0.3, 0.1, 0.03, 0.001])
}

fn around(bodies: &[Body]) -> Obstacles {
    let mut around = Obstacles::new();
    for body in bodies {
        around.push(body.obstacle()).unwrap();
    }
    around
}

fn sweep(corner: &Corner, profile: &Profile, around: &Obstacles) -> Swept {
    corner.clearance(profile, around, Effort::new(mm(0.1), 2_000).unwrap()).unwrap().unwrap()
}

proptest! {
    /// With work that ends early, the bound of boxes of every size is what is held.
    #[test]
    fn no_position_is_nearer_than_certified(
        mut build in build(),
        profile in profile(),
        bodies in prop::collection::vec(body(), 1..=3),
        boxes in prop::sample::select(vec![1, 2, 5, 20, 100, 1_000, 5_000, 5_000]),
        (steer_share, travel_share) in (share(), share()),
    ) {
        if let Some(steering) = &mut build.steering {
            (steering.inner, steering.outer) = (steering.inner * steer_share, steering.outer * steer_share);
        }
        (build.jounce, build.rebound) = (build.jounce * travel_share, build.rebound * travel_share);
        let bodies = build.with_rods(&bodies);
        let effort = Effort::new(mm(0.1), boxes).unwrap();
        let swept = build.corner().clearance(&profile, &around(&bodies), effort).unwrap().unwrap();
        let (lower, upper) = (in_mm(swept.lower()), in_mm(swept.upper()));
        prop_assert!(lower <= upper);
        prop_assert_eq!(swept.is_within_tolerance(), upper - lower <= 0.1 + 1e-12);

        // The position it names is as near as it says, at a point of the obstacle.
        let body = &bodies[swept.obstacle()];
        let pose = swept.pose();
        let at = [pose.steer().get::<radian>(), in_mm(pose.travel()), in_mm(pose.other_travel())];
        let touched = coordinates(swept.point());
        prop_assert!(body.distance(touched) < 1e-6);
        let p = build.in_wheel(body.carrier, at)(touched);
        let gap = in_mm(profile.distance(mm(p.y), mm(p.x.hypot(p.z))).0) - body.radius - body.uncertainty;
        prop_assert!((gap - upper).abs() < 1e-8, "{gap} at {swept:?}");
        let place = swept.place();
        let (axial, radial) = (in_mm(place.axial()) - p.y, in_mm(place.radial()) - p.x.hypot(p.z));
        prop_assert!((axial.hypot(radial) - (gap + body.radius + body.uncertainty).abs()).abs() < 1e-8);
        for (value, (least, most)) in at.iter().zip(build.ranges()) {
            prop_assert!(least - 1e-9 <= *value && *value <= most + 1e-9);
        }

        // And no other is nearer, of any body.
        for body in &bodies {
            let (sampled, place) = sampled(&build, &profile, body, [9, 7, 3]);
            let least = refined(&build, &profile, body, place).min(sampled);
            prop_assert!(lower <= least, "{least} against {swept:?}");
        }
    }
}

/// The same corner and bodies with front and rear exchanged.
fn reversed(build: &Build, bodies: &[Body]) -> (Build, Vec<Body>) {
    let mut build = *build;
    build.toe = -build.toe;
    build.toe_change = -build.toe_change;
    if let Some(steering) = &mut build.steering {
        steering.caster = -steering.caster;
        steering.trail = -steering.trail;
        std::mem::swap(&mut steering.inner, &mut steering.outer);
    }
    let over = |[x, y, z]: [f64; 3]| [-x, y, z];
    let bodies = bodies.iter().cloned().map(|mut body| {
        body.form = match body.form {
            Form::Chain(points) => Form::Chain(points.into_iter().map(over).collect()),
            Form::Disc { centre, on_axis, radius } => {
                Form::Disc { centre: over(centre), on_axis: over(on_axis), radius }
            }
            Form::Arc { centre, across, radius, angle } => {
                Form::Arc { centre: over(centre), across: across.map(over), radius, angle }
            }
        };
        if let Carrier::Rod { outer, inner } = &mut body.carrier {
            for joint in [outer, inner] {
                *joint = point(over(coordinates(*joint).into()));
            }
        }
        body
    });
    (build, bodies.collect())
}

/// Brackets of two things of which the first is not nearer than the second can both hold.
fn may_be_as_far(more: &Swept, less: &Swept) -> bool {
    more.lower() <= less.upper() && (!more.is_within_tolerance() || more.upper() <= less.upper() + mm(0.1))
}

proptest! {
    #[test]
    fn more_obstacles_never_clear_better(
        build in build(),
        profile in profile(),
        bodies in prop::collection::vec(body(), 2..=3),
    ) {
        let bodies = build.with_rods(&bodies);
        let corner = build.corner();
        let all = sweep(&corner, &profile, &around(&bodies));
        let fewer = sweep(&corner, &profile, &around(&bodies[1..]));
        prop_assert!(may_be_as_far(&all, &fewer), "{all:?}, {fewer:?}");
        let nominal = sweep(&corner, &profile, &around(&bodies).at_nominal());
        prop_assert!(may_be_as_far(&all, &nominal));
    }

    #[test]
    fn growth_takes_itself_off(
        build in build(),
        profile in profile(),
        body in body(),
        growth in 0.0..30.0,
    ) {
        let corner = build.corner();
        let around = around(&build.with_rods(&[body]));
        let small = sweep(&corner, &profile, &around);
        let large = sweep(&corner, &profile.grown(mm(growth)).unwrap(), &around);
        prop_assert!(in_mm(large.lower()) <= in_mm(small.upper()) - growth + 1e-8);
        prop_assert!(in_mm(large.upper()) >= in_mm(small.lower()) - growth - 1e-8);
    }

    #[test]
    fn a_wheel_at_rest_has_its_static_clearance(
        mut build in build(),
        profile in profile(),
        at in place(),
    ) {
        (build.camber, build.toe) = (0.0, 0.0);
        let one = around(&[Body {
            form: Form::Chain(vec![at]), radius: 3.0, uncertainty: 1.0, carrier: Carrier::Body,
        }]);
        let rest = build.corner().held_at(Pose::new(deg(0.0), mm(0.0))).unwrap();
        let (gap, place) = profile.distance(mm(at[1]), mm(at[0].hypot(at[2])));
        for corner in [rest, Corner::new()] {
            let swept = sweep(&corner, &profile, &one);
            prop_assert!((in_mm(swept.upper() - gap) + 4.0).abs() < 1e-9);
            prop_assert!(in_mm(swept.upper() - swept.lower()) < 1e-8);
            prop_assert_eq!(swept.place().part(), place.part());
        }
    }

    #[test]
    fn front_and_rear_may_be_exchanged(
        mut build in build(),
        profile in profile(),
        bodies in prop::collection::vec(body(), 1..=2),
    ) {
        if let Some(steering) = &mut build.steering {
            steering.caster = steering.caster.clamp(-9.0, 9.0);
        }
        let bodies = build.with_rods(&bodies);
        let swept = sweep(&build.corner(), &profile, &around(&bodies));
        let (build, bodies) = reversed(&build, &bodies);
        let other = sweep(&build.corner(), &profile, &around(&bodies));
        prop_assert!(may_be_as_far(&swept, &other) && may_be_as_far(&other, &swept), "{swept:?}, {other:?}");
    }

    #[test]
    fn inset_moves_axial_gaps_by_itself(
        centre in -70.0..40.0,
        outset in -30.0..30.0,
        half_rim in 60.0..150.0,
        bulge in 1.0..1.5,
        gap in 1.0..60.0,
        turn in -3.0..3.0,
    ) {
        let (flange, height) = (220.0, 90.0);
        let profile = |centre: f64| {
            let rim = RimSection::new(mm(centre), mm(half_rim), mm(flange), mm(185.0)).unwrap();
            Profile::new(rim, TireSection::new(mm(half_rim * bulge), mm(flange + height)).unwrap()).unwrap()
        };
        // Beside the greatest width, whose height is a default of the crate's.
        let radius = flange + 0.45 * height;
        for side in [-1.0, 1.0] {
            let at = [radius * f64::cos(turn), centre + side * (half_rim * bulge + gap), radius * f64::sin(turn)];
            let one = around(&[Body {
                form: Form::Chain(vec![at]), radius: 0.0, uncertainty: 0.0, carrier: Carrier::Body,
            }]);
            let before: f64 = in_mm(sweep(&Corner::new(), &profile(centre), &one).upper());
            prop_assert!(f64::abs(before - gap) < 1e-9);
            if gap - side * outset > 0.0 {
                let after: f64 = in_mm(sweep(&Corner::new(), &profile(centre + outset), &one).upper());
                prop_assert!(f64::abs(after - before + side * outset) < 1e-9);
            }
        }
    }

    #[test]
    fn what_the_knuckle_carries_keeps_its_distance(
        build in build(),
        profile in profile(),
        mut body in body(),
        (steer, travel) in (-30.0..30.0, -90.0..90.0),
    ) {
        body.carrier = Carrier::Knuckle;
        let obstacle = body.obstacle();
        let around = around(&[body]);
        let corner = build.corner();
        let rest = sweep(&corner.held_at(Pose::new(deg(0.0), mm(0.0))).unwrap(), &profile, &around);
        let there = sweep(&corner.held_at(Pose::new(deg(steer), mm(travel))).unwrap(), &profile, &around);
        let swept = sweep(&corner, &profile, &around);
        for other in [there, swept] {
            prop_assert_eq!((other.lower(), other.upper()), (rest.lower(), rest.upper()));
        }
        let (at_rest, stance) =
            (corner.stance(Pose::new(deg(0.0), mm(0.0))), corner.stance(Pose::new(deg(steer), mm(travel))));
        for point in obstacle.points() {
            let carried = stance.carried(Carrier::Knuckle, point).unwrap();
            let (before, after) = (at_rest.along_and_across(point), stance.along_and_across(carried));
            prop_assert!(before.iter().zip(&after).all(|(a, b)| in_mm(*a - *b).abs() < 1e-9));
        }
    }

    /// With these two laws the distance is that to the outline and no other: it is nowhere more than to any
    /// place of the outline, and there is a place of the outline at just that distance.
    #[test]
    fn the_profile_has_a_true_distance(profile in profile(), from in (-300.0..300.0, 0.0..500.0), to in (-300.0..300.0, 0.0..500.0)) {
        let distance = |(a, r): (f64, f64)| profile.distance(mm(a), mm(r));
        let ((gap, place), (other, _)) = (distance(from), distance(to));
        let apart = (from.0 - to.0).hypot(from.1 - to.1);
        prop_assert!((in_mm(gap) - in_mm(other)).abs() <= apart + 1e-9);

        let at = (in_mm(place.axial()), in_mm(place.radial()));
        prop_assert!(((from.0 - at.0).hypot(from.1 - at.1) - in_mm(gap).abs()).abs() < 1e-9);
        let off = in_mm(distance(at).0);
        prop_assert!(off < 1e-7, "{place:?} is {off} off the outline");
        // Inside, the notch behind the flange of a bulging tire is not seen to its tip.
        prop_assert!(gap < mm(0.0) || off > -1e-7, "{place:?} is {off} off the outline");
    }
}
