//! The outline of a wheel, worked rows of the sweep of a steered wheel, and what is refused.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::sweep::{
    Carrier, ContactPatch, Corner, Effort, Obstacle, ObstacleError, Obstacles, Part, Point, Pose, Profile,
    RimSection, SteeringAxis, Swept, TireSection,
};
use beadseat::units::{deg, mm, ratio};
use beadseat::uom::si::{f64::Length, length::millimeter};
use common::{Row, Tally, number_of, rows};

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn point(x: f64, y: f64, z: f64) -> Point {
    Point::new(mm(x), mm(y), mm(z)).unwrap()
}

fn only(obstacle: Obstacle) -> Obstacles {
    let mut around = Obstacles::new();
    around.push(obstacle).unwrap();
    around
}

fn swept(corner: &Corner, profile: &Profile, obstacle: Obstacle) -> Swept {
    corner.clearance(profile, &only(obstacle), Effort::new(mm(0.01), 1_000_000).unwrap()).unwrap().unwrap()
}

/// A wheel that is a rectangle in plan, `e` outboard of an upright steering axis, with its corners rounded.
fn rectangle(radius: f64, width: f64, e: f64, rounding: f64) -> (Profile, Corner) {
    let rim = RimSection::new(mm(0.0), mm(width / 2.0 - 5.0), mm(200.0), mm(180.0)).unwrap();
    let tread = (width / 2.0 - rounding) / (width / 2.0);
    let tire = TireSection::new(mm(width / 2.0), mm(radius))
        .and_then(|tire| tire.with_tread_share(ratio(tread)))
        .and_then(|tire| tire.with_crown_drop(mm(0.0)))
        .and_then(|tire| tire.with_shoulder_radius(mm(rounding)))
        .unwrap();
    let patch = ContactPatch::under(mm(0.0), mm(radius), deg(0.0)).unwrap();
    let axis = SteeringAxis::from_ground(patch, deg(0.0), deg(0.0), mm(e), mm(0.0)).unwrap();
    let corner = Corner::new().steered(axis, deg(75.0), deg(75.0)).unwrap();
    (Profile::new(rim, tire).unwrap(), corner)
}

/// A wall through a point of the plan at hub height, along the direction `along`.
fn wall(at: [f64; 2], along: [f64; 2]) -> Obstacle {
    let end = |by: f64| point(at[0] + by * along[0], at[1] + by * along[1], 0.0);
    Obstacle::segment(end(-900.0), end(900.0))
}

const ELSEWHERE: &str = "clearance and limits that are not of a sweep";

#[test]
fn worked_rows() {
    let mut tally = Tally::of("swept clearance, worked rows");
    // The rows of a group state the wheel once.
    let mut radius_width_e = [0.0; 3];
    for row in &rows("mechanics_worked.csv") {
        let id = &row["id"];
        if !id.starts_with("FT-") {
            continue;
        }
        let inputs = &row["inputs"];
        if inputs.starts_with("R=") {
            radius_width_e = ["R", "w", "e"].map(|key| number_of(inputs, key));
        }
        let [r, w, e] = radius_width_e;
        match id {
            // The circle an outboard corner describes about the kingpin, felt from 500 mm off it; that of an
            // inboard one is felt straight ahead, as from lock to lock the outboard one reaches farther.
            "FT-21" | "FT-22" => {
                let (profile, corner) = rectangle(r, w, e, 0.0);
                let kingpin = -e;
                // Ahead and to the side where the corner passes.
                let side = if id == "FT-21" { 1.0 } else { -1.0 };
                let reach = row.number("expected");
                let across = e + side * w / 2.0;
                let at = point(500.0 * r / reach, kingpin + 500.0 * across / reach, 0.0);
                let ahead = corner.held_at(Pose::new(deg(0.0), mm(0.0))).unwrap();
                let corner = if id == "FT-21" { corner } else { ahead };
                within(row, 500.0, &swept(&corner, &profile, Obstacle::point(at)));
            }
            "FT-23" | "FT-26" => held(row, [r, w, e], 0.0, 1.0, |e| ([0.0, -700.0 - e], [1.0, 0.0])),
            "FT-24" | "FT-27" | "FT-30" => {
                held(row, [r, w, e], 0.0, 1.0, |e| ([0.0, 700.0 - e], [1.0, 0.0]));
            }
            // The outboard corner, the larger lever, comes forward as the outer wheel of the turn.
            "FT-25" | "FT-28" | "FT-31" => {
                held(row, [r, w, e], 0.0, -1.0, |_| ([700.0, 0.0], [0.0, 1.0]));
            }
            "FT-32" | "FT-33" => {
                let rounding = number_of(inputs, "rc");
                held(row, [r, w, e], rounding, 1.0, |e| ([0.0, -700.0 - e], [1.0, 0.0]));
            }
            // A wall beside the narrower tire, then beside the wider one.
            "FT-36" => {
                let numbers = common::numbers(inputs);
                let [gap, narrow, wide] = numbers[..] else { panic!("{row}") };
                let at = |width: f64| {
                    let (profile, _) = rectangle(316.0, width, 0.0, 0.0);
                    let wall = wall([0.0, -narrow / 2.0 - gap], [1.0, 0.0]);
                    in_mm(swept(&Corner::new(), &profile, wall).upper())
                };
                assert!((at(narrow) - gap).abs() < 1e-9, "{row}");
                row.near("expected", at(wide), 1e-9);
            }
            _ => {
                tally.left(id, ELSEWHERE);
                continue;
            }
        }
        tally.checked(row);
    }
    tally.close(13, &[(ELSEWHERE, 28)]);
}

/// Holds the reach `far − clearance` against a row: bracketed to a hundredth.
#[track_caller]
fn within(row: &Row, far: f64, clearance: &Swept) {
    let expected = far - row.number("expected").abs();
    let (lower, upper) = (in_mm(clearance.lower()), in_mm(clearance.upper()));
    assert!(lower - 1e-6 <= expected && expected <= upper + 1e-6, "{lower} to {upper}, {expected} in {row}");
    assert!(clearance.is_within_tolerance());
}

/// A wall 700 mm from the kingpin beside a wheel held at the steer of a row.
#[track_caller]
fn held(
    row: &Row,
    [r, w, e]: [f64; 3],
    rounding: f64,
    sign: f64,
    wall_for: impl Fn(f64) -> ([f64; 2], [f64; 2]),
) {
    let steer = number_of(&row["inputs"], "steer");
    let (profile, corner) = rectangle(r, w, e, rounding);
    let corner = corner.held_at(Pose::new(deg(sign * steer), mm(0.0))).unwrap();
    let (at, along) = wall_for(e);
    within(row, 700.0, &swept(&corner, &profile, wall(at, along)));
}

fn common_wheel() -> Profile {
    let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0)).unwrap();
    let tire = TireSection::new(mm(107.0), mm(316.0))
        .and_then(|tire| tire.with_widest(ratio(0.5)))
        .and_then(|tire| tire.with_tread_share(ratio(0.8)))
        .and_then(|tire| tire.with_crown_drop(mm(6.0)))
        .and_then(|tire| tire.with_shoulder_radius(mm(15.0)));
    Profile::new(rim, tire.unwrap()).unwrap()
}

#[test]
fn the_outline_is_where_it_was_put() {
    let profile = common_wheel();
    let tread = 0.8 * 107.0;
    let crown = (tread * tread + 36.0) / 12.0;
    // Along the spindle from the middle, radius, what is there.
    let on_it = [
        (0.0, 185.0, Part::Barrel),
        (93.9, 185.0, Part::Barrel),
        (94.0, 200.0, Part::Flange),
        (94.0, 219.0, Part::Flange),
        (94.0 + 6.5, 220.0 + 24.0, Part::Sidewall),
        (107.0, 268.0, Part::Sidewall),
        (0.0, 316.0, Part::Tread),
        (40.0, 316.0 - crown + libm::sqrt(crown * crown - 1600.0), Part::Tread),
    ];
    for (x, r, part) in on_it {
        for side in [-1.0, 1.0] {
            let (gap, _) = profile.distance(mm(-46.0 + side * x), mm(r));
            assert!(gap.abs() < mm(1e-9), "{gap:?} at {x}, {r}");
            // A little way out it is that part that is nearest.
            let out = match part {
                Part::Barrel => (x, r - 2.0),
                Part::Tread => (x, r + 2.0),
                _ => (x + 2.0, r),
            };
            let (gap, place) = profile.distance(mm(-46.0 + side * out.0), mm(out.1));
            assert_eq!(place.part(), part, "at {x}, {r}");
            assert!(gap > mm(1.0) && gap <= mm(2.0) + mm(1e-9), "{gap:?} at {x}, {r}");
        }
    }
    let (gap, place) = profile.distance(mm(-46.0 + 130.0), mm(340.0));
    assert_eq!(place.part(), Part::Shoulder);
    assert!(gap > mm(40.0) && gap < mm(60.0));
    // A negative radius is the other side of the spindle.
    assert_eq!(profile.distance(mm(0.0), mm(-150.0)), profile.distance(mm(0.0), mm(150.0)));
}

#[test]
fn a_stretched_tire_shows_its_rim() {
    let rim = RimSection::new(mm(0.0), mm(120.0), mm(220.0), mm(185.0)).unwrap();
    for widest in [0.1, 0.45, 0.9] {
        let tire = TireSection::new(mm(105.0), mm(310.0)).unwrap().with_widest(ratio(widest)).unwrap();
        let profile = Profile::new(rim, tire).unwrap();
        let (gap, place) = profile.distance(mm(130.0), mm(210.0));
        assert_eq!(place.part(), Part::Flange);
        assert!((gap - mm(10.0)).abs() < mm(1e-9));
        let (gap, _) = profile.distance(mm(0.0), mm(310.0));
        assert!(gap.abs() < mm(1e-9));
        // Its greatest width is on it, or covered by the line from flange to shoulder.
        let (gap, _) = profile.distance(mm(105.0), mm(220.0 + 90.0 * widest));
        assert!(gap < mm(1e-9), "{gap:?}");
    }
}

/// A rim whose barrel goes up to its flanges has no edge there. A point beside and below it is as far away as from
/// the end of the flange, wherever it is seen from.
#[test]
fn a_rim_without_an_edge_has_its_distance() {
    // Half widths of rim and tire, radii of flange and tread, camber and toe gained in 100 mm, the point.
    let rows = [
        (131.0, 79.0, 231.0, 242.0, 4.0, -5.0, [-326.0, -4523.0, -327.0]),
        (111.0, 63.0, 255.0, 265.0, 8.0, -3.0, [227.0, 4133.0, 359.0]),
        (138.0, 84.0, 194.0, 214.0, -4.0, 5.0, [336.0, 2492.0, 179.0]),
        (133.0, 74.0, 185.0, 204.0, 7.0, -4.0, [270.0, 4583.0, 393.0]),
    ];
    for row @ (half_rim, half_tire, flange, tread, camber, toe, [x, y, z]) in rows {
        let tire = TireSection::new(mm(half_tire), mm(tread)).unwrap();
        let corner = Corner::new()
            .travelling(mm(120.0), mm(120.0))
            .and_then(|corner| corner.with_camber_change(deg(camber), mm(100.0)))
            .and_then(|corner| corner.with_toe_change(deg(toe), mm(100.0)))
            .unwrap();
        // Of no width at all, and of less than counts.
        for barrel in [flange, flange - 1e-13, flange - 1e-9, flange - 1e-7, flange - 1e-5] {
            let rim = RimSection::new(mm(-40.0), mm(half_rim), mm(flange), mm(barrel)).unwrap();
            let profile = Profile::new(rim, tire).unwrap();
            let (gap, _) = profile.distance(mm(-40.0 + half_rim + 300.0), mm(barrel - 40.0));
            assert!((in_mm(gap) - libm::hypot(300.0, 40.0)).abs() < 1e-5, "{gap:?} in {row:?}");
            let around = only(Obstacle::point(point(x, y, z)));
            let swept =
                |corner: Corner| corner.clearance(&profile, &around, Effort::default()).unwrap().unwrap();
            let certified = swept(corner).lower();
            for step in 0..=20 {
                let pose = Pose::new(deg(0.0), mm(-120.0 + 12.0 * f64::from(step)));
                let held = swept(corner.held_at(pose).unwrap()).upper();
                assert!(
                    certified <= held,
                    "{certified:?} is certified, held {held:?} in {row:?} at {pose:?}"
                );
            }
        }
    }
}

/// The line on from the sidewall meets the middle of this wheel before it meets the barrel: nothing of it is nearer than
/// the flange is. And a tread that falls by little more than a micrometre in 340 mm is an arc of 14 kilometres.
#[test]
fn extreme_sections_keep_to_their_numbers() {
    let rim = RimSection::new(mm(0.0), mm(60.0), mm(250.0), mm(190.0)).unwrap();
    let tire = TireSection::new(mm(120.0), mm(265.0)).and_then(|tire| tire.with_widest(ratio(0.2))).unwrap();
    let balloon = Profile::new(rim, tire).unwrap();
    for (a, r) in [(75.0, 235.0), (90.0, 200.0), (61.0, 249.0)] {
        let (from_flange, along) =
            ([a - 60.0, r - 250.0], [60.0 / libm::hypot(60.0, 3.0), 3.0 / libm::hypot(60.0, 3.0)]);
        let beside_flange = if r < 250.0 { a - 60.0 } else { f64::INFINITY };
        let off = (from_flange[0] * along[1] - from_flange[1] * along[0]).abs();
        let (gap, _) = balloon.distance(mm(a), mm(r));
        assert!((in_mm(gap) - off.min(beside_flange)).abs() < 1e-9, "{gap:?} at {a}, {r}");
    }

    let rim = RimSection::new(mm(0.0), mm(200.0), mm(250.0), mm(190.0)).unwrap();
    let wide = TireSection::new(mm(250.0), mm(465.0)).and_then(|tire| tire.with_tread_share(ratio(0.68)));
    let wide = wide.and_then(|tire| tire.with_crown_drop(mm(0.001_01))).unwrap();
    let (gap, _) = Profile::new(rim, wide).unwrap().distance(mm(0.0), mm(499.0));
    assert!((in_mm(gap) - 34.0).abs() < 1e-11, "{gap:?}");
}

/// What has no place is not clear of anything.
#[test]
fn what_is_nowhere_certifies_nothing() {
    let profile = common_wheel();
    let moving = Corner::new().travelling(mm(80.0), mm(90.0)).unwrap();
    let somewhere = point(0.0, -46.0, 600.0);
    let nowhere = [f64::NAN, f64::INFINITY].map(|wrong| {
        moving.wheel_pose(Pose::new(deg(0.0), mm(wrong))).carried(Carrier::Knuckle, somewhere).unwrap()
    });
    for nowhere in nowhere {
        for corner in [Corner::new(), moving, moving.with_camber_change(deg(2.0), mm(100.0)).unwrap()] {
            for lost in [Obstacle::point(nowhere), Obstacle::segment(somewhere, nowhere)] {
                let mut around = only(Obstacle::point(somewhere));
                around.push(lost).unwrap();
                for around in [only(lost), around] {
                    for boxes in [0, 1, 100] {
                        let effort = Effort::new(mm(0.1), boxes).unwrap();
                        let swept = corner.clearance(&profile, &around, effort).unwrap().unwrap();
                        assert!(swept.lower() == mm(f64::NEG_INFINITY), "{swept:?}");
                        assert!(!swept.is_within_tolerance());
                    }
                }
            }
        }
    }
    // An arm or a rod of no length takes nothing anywhere, nor does one beyond where it ends.
    let still = Corner::new();
    let rest = still.wheel_pose(Pose::new(deg(0.0), mm(0.0)));
    assert!(rest.carried(Carrier::Arm { pivot: somewhere, end: somewhere }, somewhere).is_err());
    assert!(rest.carried(Carrier::Rod { outer: somewhere, inner: somewhere }, somewhere).is_err());
    let (outer, inner) = (point(0.0, -100.0, 0.0), point(0.0, -350.0, 0.0));
    let risen =
        |by: f64| still.wheel_pose(Pose::new(deg(0.0), mm(by))).carried(Carrier::Rod { outer, inner }, outer);
    assert!(risen(237.0).is_ok());
    assert!(risen(251.0).is_err());
}

/// However far camber goes, the axes of a wheel are across each other: here where it lies flat.
#[test]
fn a_wheel_that_lies_flat_has_its_axes() {
    let tipping = Corner::new().with_camber_change(deg(-15.0), mm(100.0)).unwrap();
    for travel in [500.0, 599.999_999_9, 600.0, 600.000_000_1, 700.0] {
        let stance = tipping.wheel_pose(Pose::new(deg(0.0), mm(travel)));
        let here = stance.carried(Carrier::Knuckle, point(30.0, 40.0, 50.0)).unwrap();
        let told = stance.along_and_across(here).map(in_mm);
        for (told, known) in told.iter().zip([40.0, 50.0, 30.0]) {
            assert!((told - known).abs() < 1e-9, "{told} for {known} at {travel}");
        }
    }
}

#[test]
fn impossible_wheels_are_refused() {
    let rim = |a: f64, w: f64, f: f64, b: f64| RimSection::new(mm(a), mm(w), mm(f), mm(b));
    assert!(rim(0.0, 94.0, 220.0, 220.0).is_ok());
    for wrong in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0, 1e9] {
        assert!(rim(wrong * 1000.0, 94.0, 220.0, 185.0).is_err());
        assert!(rim(0.0, wrong, 220.0, 185.0).is_err());
        assert!(rim(0.0, 94.0, wrong, 185.0).is_err());
        assert!(rim(0.0, 94.0, 220.0, wrong).is_err());
        assert!(TireSection::new(mm(wrong), mm(316.0)).is_err());
        assert!(TireSection::new(mm(107.0), mm(wrong)).is_err());
        assert!(common_wheel().grown(mm(wrong)).is_err());
        assert!(Point::new(mm(0.0), mm(wrong * 6000.0), mm(0.0)).is_err());
        assert!(Effort::new(mm(wrong), 10).is_err());
        assert!(Corner::new().travelling(mm(wrong), mm(0.0)).is_err());
        assert!(Corner::new().with_camber(deg(wrong * 20.0)).is_err());
        assert!(Corner::new().with_camber_change(deg(0.0), mm(wrong)).is_err());
        assert!(Corner::new().held_at(Pose::new(deg(wrong * 80.0), mm(0.0))).is_err());
        assert!(Corner::new().on_beam_axle(mm(wrong)).is_err());
    }
    let wide = rim(0.0, 94.0, 220.0, 185.0).unwrap();
    let tire = |s: f64, r: f64| TireSection::new(mm(s), mm(r)).unwrap();
    assert!(Profile::new(wide, tire(107.0, 224.9)).is_err()); // not above the flange
    assert!(Profile::new(wide, tire(46.0, 316.0)).is_err()); // far narrower than the rim
    assert!(Profile::new(wide, tire(283.0, 316.0)).is_err()); // far wider
    let shaped = tire(107.0, 316.0).with_tread_share(ratio(1.0)).unwrap();
    let error = Profile::new(wide, shaped.with_shoulder_radius(mm(10.0)).unwrap()).unwrap_err();
    assert_eq!(error.to_string(), "shoulder radius 10 mm is not in 0 to 0 mm");
    assert!(Profile::new(wide, shaped.with_crown_drop(mm(60.0)).unwrap()).is_err());
    // Growth that would close the barrel.
    let small = RimSection::new(mm(0.0), mm(94.0), mm(220.0), mm(50.0)).unwrap();
    let small = Profile::new(small, tire(107.0, 316.0)).unwrap();
    assert!(small.grown(mm(30.0)).and_then(|grown| grown.grown(mm(21.0))).is_err());
}

#[test]
fn impossible_obstacles_are_refused() {
    let (a, b) = (point(0.0, 0.0, 400.0), point(100.0, 0.0, 400.0));
    assert_eq!(Obstacle::polyline(&[a]), Err(ObstacleError::Points));
    assert_eq!(Obstacle::polyline(&[]), Err(ObstacleError::Points));
    assert_eq!(Obstacle::measured(mm(0.0), &[(mm(0.0), mm(0.0)); 9]), Err(ObstacleError::Points));
    assert_eq!(Obstacle::disc(a, a, mm(10.0)), Err(ObstacleError::Coincident));
    assert_eq!(Obstacle::arch_lip(a, b, a), Err(ObstacleError::Coincident));
    assert!(Obstacle::disc(a, b, mm(-1.0)).is_err());
    assert!(Obstacle::point(a).with_radius(mm(1001.0)).is_err());
    assert!(Obstacle::point(a).with_uncertainty(mm(f64::NAN)).is_err());
    let arm = Carrier::Arm { pivot: a, end: point(300.0, 0.0, 410.0) };
    assert_eq!(Obstacle::point(a).carried_by(arm), Err(ObstacleError::Coincident));
    let mut around = Obstacles::new();
    for _ in 0..16 {
        around.push(Obstacle::point(a)).unwrap();
    }
    assert_eq!(around.push(Obstacle::point(a)), Err(ObstacleError::TooMany));
    assert_eq!(around.iter().count(), 16);
    assert_eq!(ObstacleError::TooMany.to_string(), "a corner has at most 16 obstacles");
}

#[test]
fn an_arm_must_reach_as_far_as_the_wheel_travels() {
    let arm = Carrier::Arm { pivot: point(0.0, -200.0, 0.0), end: point(0.0, -100.0, 0.0) };
    let around = only(Obstacle::point(point(0.0, -120.0, 0.0)).carried_by(arm).unwrap());
    let corner = |jounce: f64| Corner::new().travelling(mm(jounce), mm(50.0)).unwrap();
    let sweep = |jounce| corner(jounce).clearance(&common_wheel(), &around, Effort::default());
    assert!(sweep(95.0).is_ok());
    assert!(sweep(96.0).unwrap_err().to_string().starts_with("height of an arm's end over its pivot 96"));
}

/// A rod of 250 mm straight across, raised by 70 mm at its outer end: it lies 3-4-5 with 70, 240 and 250, so that its
/// middle is 120 mm inboard and 35 mm from the spindle in the wheel's frame.
#[test]
fn a_tie_rod_keeps_its_length() {
    let (outer, inner) = (point(0.0, 0.0, 0.0), point(0.0, -250.0, 0.0));
    let rod = Carrier::Rod { outer, inner };
    for (travel, lower_end) in [(70.0, -1.0), (-70.0, 1.0)] {
        let stance = Corner::new().wheel_pose(Pose::new(deg(0.0), mm(travel)));
        let middle = stance.carried(rod, point(0.0, -125.0, 0.0)).unwrap();
        assert!((in_mm(middle.outboard()) + 120.0).abs() < 1e-9);
        assert!((in_mm(middle.up()) - travel / 2.0).abs() < 1e-9);
        let [along, up, _] = stance.along_and_across(middle);
        assert!((in_mm(along) + 120.0).abs() < 1e-9 && (in_mm(up) - lower_end * 35.0).abs() < 1e-9);
        // And the sweep says the same of the middle alone.
        let there = Corner::new().held_at(Pose::new(deg(0.0), mm(travel))).unwrap();
        let alone = Obstacle::point(point(0.0, -125.0, 0.0)).carried_by(rod).unwrap();
        let gap = common_wheel().distance(mm(-120.0), mm(35.0)).0;
        assert!((in_mm(swept(&there, &common_wheel(), alone).upper() - gap)).abs() < 1e-9);
    }
    // Its outer end stays where it is on the knuckle, through steer too.
    let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(0.0)).unwrap();
    let axis = SteeringAxis::from_ground(patch, deg(13.5), deg(7.0), mm(-8.0), mm(22.0)).unwrap();
    let corner = Corner::new()
        .steered(axis, deg(39.0), deg(33.0))
        .and_then(|corner| corner.travelling(mm(80.0), mm(90.0)))
        .and_then(|corner| corner.with_camber_change(deg(-1.0), mm(80.0)))
        .unwrap();
    let (outer, inner) = (point(-100.0, -120.0, -40.0), point(-120.0, -430.0, -30.0));
    let rod = Carrier::Rod { outer, inner };
    let length = |a: Point, b: Point| {
        let [x, y, z] = [a.forward() - b.forward(), a.outboard() - b.outboard(), a.up() - b.up()].map(in_mm);
        libm::sqrt(x * x + y * y + z * z)
    };
    for (steer, travel) in [(39.0, 80.0), (-33.0, -90.0), (20.0, -40.0)] {
        let stance = corner.wheel_pose(Pose::new(deg(steer), mm(travel)));
        let [joint, rack] = [outer, inner].map(|end| stance.carried(rod, end).unwrap());
        assert_eq!(joint, stance.carried(Carrier::Knuckle, outer).unwrap());
        assert!((length(joint, rack) - length(outer, inner)).abs() < 1e-9);
        assert_eq!((rack.forward(), rack.up()), (inner.forward(), inner.up()));
    }
}

/// What is no part of a rod, cannot be reached, or belongs to a beam axle is refused.
#[test]
fn a_tie_rod_has_its_limits() {
    let (outer, inner) = (point(0.0, 0.0, 0.0), point(0.0, -250.0, 0.0));
    let rod = Carrier::Rod { outer, inner };
    let beside = Obstacle::segment(outer, point(0.0, -250.0, 1.0)).carried_by(rod);
    assert_eq!(beside, Err(ObstacleError::OffRod));
    let chain = Obstacle::polyline(&[outer, point(0.0, -100.0, 0.0), inner]).unwrap().carried_by(rod);
    assert_eq!(chain, Err(ObstacleError::OffRod));
    let short = Carrier::Rod { outer, inner: point(0.0, -39.0, 0.0) };
    assert_eq!(Obstacle::point(outer).carried_by(short), Err(ObstacleError::Coincident));
    let around = only(Obstacle::segment(outer, inner).carried_by(rod).unwrap());
    let sweep = |corner: Corner| corner.clearance(&common_wheel(), &around, Effort::default());
    // 0.95 of 250 mm.
    assert!(sweep(Corner::new().travelling(mm(237.0), mm(0.0)).unwrap()).is_ok());
    let far = sweep(Corner::new().travelling(mm(238.0), mm(0.0)).unwrap()).unwrap_err();
    assert!(far.to_string().starts_with("a tie rod's outer end off the line of its rack 238"), "{far}");
    let beam = Corner::new().travelling(mm(50.0), mm(50.0)).and_then(|c| c.on_beam_axle(mm(1500.0))).unwrap();
    assert!(sweep(beam).is_err());
}

/// An arch lip about the spindle is everywhere as far away as its arc.
#[test]
fn an_arch_lip_holds_its_arc() {
    let profile = common_wheel();
    let (radius, lateral) = (380.0, 20.0);
    let at = |degrees: f64| {
        let (sin, cos) = libm::sincos(degrees.to_radians());
        point(radius * cos, lateral, radius * sin)
    };
    let lip = Obstacle::arch_lip(at(10.0), at(80.0), at(170.0)).unwrap();
    let arc = in_mm(profile.distance(mm(lateral), mm(radius)).0);
    let lip = swept(&Corner::new(), &profile, lip);
    assert!((in_mm(lip.upper()) - arc).abs() < 1e-9 && lip.is_within_tolerance());
}

#[test]
fn work_that_ends_early_says_so() {
    let profile = common_wheel();
    let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(0.0)).unwrap();
    let axis = SteeringAxis::from_ground(patch, deg(13.5), deg(7.0), mm(-8.0), mm(22.0)).unwrap();
    let corner = Corner::new()
        .steered(axis, deg(39.0), deg(33.0))
        .and_then(|corner| corner.travelling(mm(80.0), mm(90.0)))
        .unwrap();
    let around = only(Obstacle::segment(point(380.0, -120.0, -50.0), point(340.0, -250.0, 150.0)));
    let with = |boxes| corner.clearance(&profile, &around, Effort::new(mm(0.1), boxes).unwrap());
    let closed = with(100_000).unwrap().unwrap();
    assert!(closed.is_within_tolerance());
    let mut width = f64::INFINITY;
    for boxes in [0, 1, 10, 100] {
        let open = with(boxes).unwrap().unwrap();
        assert!(open.lower() <= closed.upper() && closed.lower() <= open.upper());
        let next = in_mm(open.upper() - open.lower());
        assert!(next <= width + 1e-9);
        width = next;
        if boxes <= 1 {
            assert!(!open.is_within_tolerance());
        }
    }
    assert_eq!(corner.clearance(&profile, &Obstacles::new(), Effort::default()), Ok(None));
}

/// Where a point of the wheel is in the corner frame: found by the obstacle that touches it there.
#[track_caller]
fn touches(corner: &Corner, pose: Pose, [x, y, z]: [f64; 3]) {
    let held = corner.held_at(pose).unwrap();
    let swept = swept(&held, &common_wheel(), Obstacle::point(point(x, y, z)));
    assert!(swept.upper().abs() < mm(1e-9), "{swept:?}");
}

/// The top of the tread is `46` mm inboard of the hub face and `316` above it.
#[test]
fn signs_of_movement() {
    let rest = Pose::new(deg(0.0), mm(0.0));
    let (sin, cos) = libm::sincos(3.0_f64.to_radians());
    let corner = Corner::new();
    touches(&corner, rest, [0.0, -46.0, 316.0]);
    // Jounce is upward, and a lateral change outboard.
    touches(&corner, Pose::new(deg(0.0), mm(50.0)), [0.0, -46.0, 366.0]);
    let scrubbing = corner.with_lateral_change(mm(10.0), mm(100.0)).unwrap();
    touches(&scrubbing, Pose::new(deg(0.0), mm(50.0)), [0.0, -41.0, 366.0]);
    // Positive camber: top outboard. Gained 3° in 50 mm of jounce.
    let top = |z: f64| [0.0, -46.0 * cos + 316.0 * sin, z + 46.0 * sin + 316.0 * cos];
    touches(&corner.with_camber(deg(3.0)).unwrap(), rest, top(0.0));
    let gaining = corner.with_camber_change(deg(6.0), mm(100.0)).unwrap();
    touches(&gaining, Pose::new(deg(0.0), mm(50.0)), top(50.0));
    // Positive toe: front inboard.
    let front = [316.0 * cos - 46.0 * sin, -46.0 * cos - 316.0 * sin, 0.0];
    touches(&corner.with_toe(deg(3.0)).unwrap(), rest, front);
    let toeing = corner.with_toe_change(deg(3.0), mm(100.0)).unwrap();
    touches(&toeing, Pose::new(deg(0.0), mm(100.0)), [front[0], front[1], 100.0]);
    // Positive steer: front outboard, about an upright axis through the hub.
    let axis = SteeringAxis::through(point(0.0, 0.0, -100.0), point(0.0, 0.0, 100.0)).unwrap();
    let steered = corner.steered(axis, deg(40.0), deg(30.0)).unwrap();
    touches(
        &steered,
        Pose::new(deg(3.0), mm(0.0)),
        [316.0 * cos + 46.0 * sin, -46.0 * cos + 316.0 * sin, 0.0],
    );
    // A wheel that is not steered does not steer.
    touches(&corner, Pose::new(deg(3.0), mm(0.0)), [0.0, -46.0, 316.0]);
}

/// An axis is the same from the figures of an alignment and from two points on it.
#[test]
fn steering_axes() {
    for camber in [-4.0, 0.0, 3.0] {
        let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(camber)).unwrap();
        let (inclination, caster, scrub, trail) = (13.5_f64, 7.0_f64, -8.0, 22.0);
        let axis =
            SteeringAxis::from_ground(patch, deg(inclination), deg(caster), mm(scrub), mm(trail)).unwrap();
        // Below the middle of the rim, in the plane of the wheel.
        let (sin, cos) = libm::sincos(camber.to_radians());
        let ground = -292.0 + 46.0 * sin;
        let lateral = -46.0 * cos - 292.0 * sin / cos;
        assert!((patch.point().up() - mm(ground)).abs() < mm(1e-9));
        assert!((patch.point().outboard() - mm(lateral)).abs() < mm(1e-9));
        // Top inboard by the inclination, rearward by the caster.
        let on_axis = |up: f64| {
            let back = libm::tan(caster.to_radians()) * up;
            let inboard = libm::tan(inclination.to_radians()) * up;
            point(trail - back, lateral - scrub - inboard, ground + up)
        };
        let (lower, upper) = (on_axis(150.0), on_axis(700.0));
        assert!(axis.distance(lower) < mm(1e-9) && axis.distance(upper) < mm(1e-9));
        let measured = SteeringAxis::through(lower, upper).unwrap();
        for p in [point(300.0, -200.0, 50.0), point(-250.0, 80.0, 400.0)] {
            assert!((axis.distance(p) - measured.distance(p)).abs() < mm(1e-9));
        }
        assert!(SteeringAxis::through(upper, lower).is_err());
        for wrong in [f64::NAN, 31.0, -6.0] {
            let refused = SteeringAxis::from_ground(patch, deg(wrong), deg(caster), mm(scrub), mm(trail));
            assert!(refused.is_err());
        }
    }
    assert!(ContactPatch::under(mm(0.0), mm(0.0), deg(0.0)).is_err());
    assert!(ContactPatch::under(mm(0.0), mm(300.0), deg(16.0)).is_err());
}

/// What is carried along moves as its carrier does.
#[test]
fn carriers() {
    let profile = common_wheel();
    let corner = Corner::new().travelling(mm(80.0), mm(90.0)).unwrap();
    // 60 mm above the tread: travel closes the gap to the body alone.
    let above = Obstacle::point(point(0.0, -46.0, 376.0));
    let gap = |obstacle: Obstacle| in_mm(swept(&corner, &profile, obstacle).upper());
    assert!((gap(above) + 20.0).abs() < 0.01);
    for carrier in [Carrier::Knuckle, Carrier::Unsprung] {
        assert!((gap(above.carried_by(carrier).unwrap()) - 60.0).abs() < 1e-9);
    }
    // A level arm half way out rises half as much, to a second order.
    let arm = Carrier::Arm { pivot: point(0.0, -846.0, 376.0), end: point(0.0, 754.0, 376.0) };
    let half = gap(above.carried_by(arm).unwrap());
    assert!((half - 20.0).abs() < 1.5, "{half}");

    // A beam axle leans the wheel when the other one stays: its top goes inboard as it rises.
    let beam = corner.on_beam_axle(mm(1500.0)).unwrap();
    let pose = Pose::new(deg(0.0), mm(80.0)).with_other_travel(mm(-90.0));
    let roll = 170.0 / 1500.0;
    let axle_end = [-0.25 * 1500.0 * roll * roll, 80.0];
    // The outer side of the tread's middle, 316 mm up the wheel and 46 mm inboard of the hub.
    let (sin, cos) = libm::sincos(roll);
    let (y, z) = (axle_end[0] - 46.0 * cos - 316.0 * sin, axle_end[1] - 46.0 * sin + 316.0 * cos);
    let contact_threshold = swept(&beam.held_at(pose).unwrap(), &profile, Obstacle::point(point(0.0, y, z)));
    assert!(contact_threshold.upper().abs() < mm(1e-9), "{contact_threshold:?}");
}
