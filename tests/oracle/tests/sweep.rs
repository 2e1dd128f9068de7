//! Swept clearance against dense sampling of an independent outline with a general-purpose library's transforms, and its
//! laws.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]
#![allow(clippy::disallowed_methods, reason = "an oracle has functions of its own")]

#[path = "sweep/outline.rs"]
mod outline;
#[path = "sweep/scene.rs"]
mod scene;

use beadseat::sweep::{Carrier, Corner, Effort, Obstacles, Pose, Profile, RimSection, Swept, TireSection};
use beadseat::units::{deg, mm, rad};
use beadseat::uom::si::angle::radian;
use outline::Section;
use proptest::prelude::*;
use scene::{
    Body, Build, Form, Held, around, body, build, coordinates, in_mm, place, point, profile, section, share,
};

/// As many as the environment asks for, or a number that takes some seconds.
fn cases(usual: u32) -> ProptestConfig {
    let asked = ProptestConfig::default();
    if std::env::var_os("PROPTEST_CASES").is_some() {
        asked
    } else {
        ProptestConfig { cases: usual, ..asked }
    }
}

fn sweep(corner: &Corner, profile: &Profile, around: &Obstacles) -> Swept {
    corner.clearance(profile, around, Effort::new(mm(0.1), 2_000).unwrap()).unwrap().unwrap()
}

proptest! {
    #![proptest_config(cases(150))]

    /// With work that ends early, the bound of boxes of every size is what is held.
    #[test]
    fn no_position_is_nearer_than_certified(
        mut build in build(),
        section in section(),
        bodies in prop::collection::vec(body(), 1..=3),
        boxes in prop::sample::select(vec![1, 2, 5, 20, 100, 1_000, 5_000, 5_000]),
        (steer_share, travel_share) in (share(), share()),
    ) {
        build = build.less(steer_share, travel_share);
        let bodies = build.with_rods(&bodies);
        let swept = certified(&build, &section, &bodies, boxes)?;

        // No position is nearer, of any body.
        let [coarse, fine] = [0.05, CHORDS].map(|off| section.outline(off));
        let lower = in_mm(swept.lower());
        for body in &bodies {
            let (sampled, place) = Held { build: &build, outline: &coarse, body }.sampled([7, 5, 3]);
            let (refined, _) = Held { build: &build, outline: &fine, body }.refined(place, 1e-4);
            let least = refined.min(sampled);
            prop_assert!(lower <= least, "{least} against {swept:?}");
        }
    }

    /// The same in many more corners of one body, with fewer positions of each: for as many certificates as there is
    /// time for. A million of them, each held in some 170 positions, passed in two runs of half as many; each run
    /// took 4.8 minutes of one core:
    /// `PROPTEST_CASES=500000 cargo test --release -p beadseat-oracle --test sweep held_positions`.
    #[test]
    fn held_positions_are_no_nearer_than_certified(
        mut build in build(),
        section in section(),
        body in body(),
        boxes in prop::sample::select(vec![1, 2, 5, 20, 100, 500]),
        (steer_share, travel_share) in (share(), share()),
        places in prop::collection::vec([0.0..=1.0, 0.0..=1.0, 0.0..=1.0, 0.0..=1.0, 0.0..=1.0], 12),
    ) {
        build = build.less(steer_share, travel_share);
        let bodies = build.with_rods(&[body]);
        let swept = certified(&build, &section, &bodies, boxes)?;
        let outline = section.outline(CHORDS);
        let held = Held { build: &build, outline: &outline, body: &bodies[0] };
        let mut nearest = (f64::INFINITY, [0.0; 5]);
        for place in places {
            let at = build.place(place);
            let gap = held.at(at);
            if gap < nearest.0 {
                nearest = (gap, at);
            }
        }
        let (least, at) = held.refined(nearest.1, 0.01);
        prop_assert!(in_mm(swept.lower()) <= least, "{least} at {at:?} against {swept:?}");
        // Inside too, where the outline tells less, the crate agrees with itself.
        let pose = Pose::new(rad(at[0]), mm(at[1])).with_other_travel(mm(at[2]));
        let held = build.corner().held_at(pose).unwrap();
        let effort = Effort::new(mm(0.1), 50).unwrap();
        let held = held.clearance(&section.profile().unwrap(), &around(&bodies), effort).unwrap().unwrap();
        prop_assert!(swept.lower() <= held.upper(), "{held:?} against {swept:?}");
    }
}

/// How far inside the outline the chords of its arcs may be.
const CHORDS: f64 = 1e-3;

/// A certificate, what is said of it, and the position it names held against the outline.
fn certified(build: &Build, section: &Section, bodies: &[Body], boxes: u32) -> Result<Swept, TestCaseError> {
    let profile = section.profile().unwrap();
    let effort = Effort::new(mm(0.1), boxes).unwrap();
    let swept = build.corner().clearance(&profile, &around(bodies), effort).unwrap().unwrap();
    let (lower, upper) = (in_mm(swept.lower()), in_mm(swept.upper()));
    prop_assert!(lower <= upper && lower.is_finite() && upper.is_finite(), "{swept:?}");
    prop_assert_eq!(swept.is_within_tolerance(), upper - lower <= 0.1 + 1e-12);

    // The position it names is as near as it says, at a point of the obstacle and a place of the outline.
    let body = &bodies[swept.obstacle()];
    let pose = swept.pose();
    let at = [pose.steer().get::<radian>(), in_mm(pose.travel()), in_mm(pose.other_travel())];
    let touched = coordinates(swept.point());
    prop_assert!(body.distance(touched) < 1e-6);
    let outline = section.outline(CHORDS);
    let (least, most) = Held { build, outline: &outline, body }.clearances(at, touched);
    prop_assert!(least - 1e-8 <= upper && upper <= most + 1e-8, "{least} to {most} at {swept:?}");
    let p = build.in_wheel(body.carrier, at)(touched);
    let (axial, radial) = (in_mm(swept.profile_point().axial()), in_mm(swept.profile_point().radial()));
    let apart = (axial - p.y).hypot(radial - p.x.hypot(p.z));
    prop_assert!((apart - (upper + body.radius + body.uncertainty).abs()).abs() < 1e-8);
    for (value, (least, most)) in at.iter().zip(build.ranges()) {
        prop_assert!(least - 1e-9 <= *value && *value <= most + 1e-9);
    }
    Ok(swept)
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
    #![proptest_config(cases(250))]

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
        section in section(),
        at in place(),
    ) {
        (build.camber, build.toe) = (0.0, 0.0);
        let profile = section.profile().unwrap();
        let one = around(&[Body {
            form: Form::Chain(vec![at]), radius: 3.0, uncertainty: 1.0, carrier: Carrier::Body,
        }]);
        let rest = build.corner().held_at(Pose::new(deg(0.0), mm(0.0))).unwrap();
        let told = |a: f64, r: f64| profile.distance(mm(at[1] + a), mm(at[0].hypot(at[2]) + r));
        let (gap, place) = told(0.0, 0.0);
        // Two parts may be equally near, as all along the side of a tire as wide as its rim.
        let surely = (section.half_tire - section.half_rim).abs() > 0.01 && [(1e-6, 0.0), (-1e-6, 0.0), (0.0, 1e-6), (0.0, -1e-6)]
            .iter()
            .all(|&(a, r)| told(a, r).1.part() == place.part());
        for corner in [rest, Corner::new()] {
            let swept = sweep(&corner, &profile, &one);
            prop_assert!((in_mm(swept.upper() - gap) + 4.0).abs() < 1e-9);
            prop_assert!(in_mm(swept.upper() - swept.lower()) < 1e-8);
            prop_assert!(!surely || swept.profile_point().part() == place.part());
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
            (corner.wheel_pose(Pose::new(deg(0.0), mm(0.0))), corner.wheel_pose(Pose::new(deg(steer), mm(travel))));
        for point in obstacle.points() {
            let carried = stance.carried(Carrier::Knuckle, point).unwrap();
            let (before, after) = (at_rest.along_and_across(point), stance.along_and_across(carried));
            prop_assert!(before.iter().zip(&after).all(|(a, b)| in_mm(*a - *b).abs() < 1e-9));
        }
    }

    /// The distance is that to the polygon. It changes by no more than the place moves, and there is a place of the
    /// outline at just that distance.
    #[test]
    fn the_profile_has_a_true_distance(section in section(), from in (-300.0..300.0, 0.0..500.0), to in (-300.0..300.0, 0.0..500.0)) {
        let profile = section.profile().unwrap();
        let distance = |(a, r): (f64, f64)| profile.distance(mm(a), mm(r));
        let ((gap, place), (other, _)) = (distance(from), distance(to));
        let apart = (from.0 - to.0).hypot(from.1 - to.1);
        prop_assert!((in_mm(gap) - in_mm(other)).abs() <= apart + 1e-9);

        let (least, most) = section.outline(CHORDS).distances(from.0, from.1);
        prop_assert!(least - 1e-9 <= in_mm(gap) && in_mm(gap) <= most + 1e-9, "{gap:?}, {least} to {most}");

        let at = (in_mm(place.axial()), in_mm(place.radial()));
        prop_assert!(((from.0 - at.0).hypot(from.1 - at.1) - in_mm(gap).abs()).abs() < 1e-9);
        let off = in_mm(distance(at).0);
        prop_assert!(off < 1e-7, "{place:?} is {off} off the outline");
        // Inside, the notch behind the flange of a bulging tire is not seen to its tip.
        prop_assert!(gap < mm(0.0) || off > -1e-7, "{place:?} is {off} off the outline");
    }
}
