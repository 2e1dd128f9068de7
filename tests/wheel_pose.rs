//! Where a corner stands in one position, held against the sweep that found it, and the main dimensions of a
//! profile against its own distance.
#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::sweep::{
    Carrier, ContactPatch, Corner, Effort, Obstacle, Obstacles, Point, Pose, Profile, RimSection,
    SteeringAxis, TireSection,
};
use beadseat::units::{Length, deg, mm};
use beadseat::uom::si::length::millimeter;

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn point(x: f64, y: f64, z: f64) -> Point {
    Point::new(mm(x), mm(y), mm(z)).unwrap()
}

fn profile(half_width: f64, half_rim: f64) -> Profile {
    let rim = RimSection::new(mm(-46.0), mm(half_rim), mm(220.0), mm(185.0)).unwrap();
    Profile::new(rim, TireSection::new(mm(half_width), mm(316.0)).unwrap()).unwrap()
}

fn corner() -> Corner {
    let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(-0.5)).unwrap();
    let axis = SteeringAxis::from_ground(patch, deg(13.5), deg(7.0), mm(-8.0), mm(22.0)).unwrap();
    Corner::new()
        .with_camber(deg(-0.5))
        .and_then(|corner| corner.with_toe(deg(0.2)))
        .and_then(|corner| corner.with_camber_change(deg(-1.2), mm(80.0)))
        .and_then(|corner| corner.with_toe_change(deg(0.3), mm(80.0)))
        .and_then(|corner| corner.with_lateral_change(mm(6.0), mm(80.0)))
        .and_then(|corner| corner.steered(axis, deg(39.0), deg(33.0)))
        .and_then(|corner| corner.travelling(mm(80.0), mm(90.0)))
        .unwrap()
}

#[test]
fn the_nearest_place_of_a_sweep_is_where_the_stance_says() {
    let (pivot, end) = (point(0.0, -430.0, -90.0), point(0.0, -80.0, -120.0));
    let carriers = [Carrier::Body, Carrier::Knuckle, Carrier::Unsprung, Carrier::Arm { pivot, end }];
    let wheel = profile(107.0, 94.0);
    let mut checked = 0;
    for corner in [corner(), corner().on_beam_axle(mm(1500.0)).unwrap()] {
        for carrier in carriers {
            let edge = Obstacle::segment(point(330.0, -215.0, 60.0), point(-330.0, -190.0, 90.0));
            let edge = edge.with_radius(mm(20.0)).unwrap().carried_by(carrier).unwrap();
            let mut around = Obstacles::new();
            around.push(edge).unwrap();
            let swept = corner.clearance(&wheel, &around, Effort::default()).unwrap().unwrap();
            let stance = corner.wheel_pose(swept.pose());
            let now = stance.carried(carrier, swept.point()).unwrap();
            let (axial, radial) = stance.in_wheel(now);
            let (gap, place) = wheel.distance(axial, radial);
            assert!((in_mm(gap) - 20.0 - in_mm(swept.upper())).abs() < 1e-9, "{carrier:?}");
            assert!(
                (in_mm(place.axial()) - in_mm(swept.profile_point().axial())).abs() < 1e-9,
                "{carrier:?}"
            );
            // And from the wheel back to the body.
            let [along, up, forward] = stance.along_and_across(now);
            let around = forward.atan2(up);
            let back = stance.of_wheel(along, radial, around);
            for (a, b) in
                [(back.forward(), now.forward()), (back.outboard(), now.outboard()), (back.up(), now.up())]
            {
                assert!((in_mm(a) - in_mm(b)).abs() < 1e-9, "{carrier:?}");
            }
            checked += 1;
        }
    }
    assert_eq!(checked, 8);
}

#[test]
fn at_rest_everything_is_where_it_was_measured() {
    let stance = corner().wheel_pose(Pose::new(deg(0.0), mm(0.0)));
    let at = point(120.0, -300.0, 45.0);
    let arm = Carrier::Arm { pivot: point(0.0, -430.0, -90.0), end: point(0.0, -80.0, -120.0) };
    for carrier in [Carrier::Body, Carrier::Knuckle, Carrier::Unsprung, arm] {
        let now = stance.carried(carrier, at).unwrap();
        for (a, b) in [(now.forward(), 120.0), (now.outboard(), -300.0), (now.up(), 45.0)] {
            assert!((in_mm(a) - b).abs() < 1e-9, "{carrier:?}");
        }
    }
}

#[test]
fn an_arm_that_cannot_reach_is_refused() {
    let arm = Carrier::Arm { pivot: point(0.0, -100.0, 0.0), end: point(0.0, -70.0, 0.0) };
    let low = Corner::new().wheel_pose(Pose::new(deg(0.0), mm(-40.0)));
    assert!(low.carried(arm, point(0.0, -80.0, 0.0)).is_err());
}

/// Width at a radius is the zero of the distance, for tires wider and narrower than their rims, and grown.
#[test]
fn width_at_a_radius_is_on_the_outline() {
    let mut checked = 0;
    for (half_width, half_rim) in [(107.0, 94.0), (130.0, 70.0), (92.0, 100.0), (100.0, 100.0)] {
        for growth in [0.0, 6.0] {
            let wheel = profile(half_width, half_rim).grown(mm(growth)).unwrap();
            assert!((in_mm(wheel.section_width()) - 2.0 * (half_width + growth)).abs() < 1e-9);
            assert!((in_mm(wheel.rim_width()) - 2.0 * (half_rim + growth)).abs() < 1e-9);
            assert!((in_mm(wheel.overall_diameter()) - 632.0 - 2.0 * growth).abs() < 1e-9);
            assert!((in_mm(wheel.flange_radius()) - 220.0).abs() < 1e-9);
            let widest = 220.0 + 0.45 * 96.0;
            assert!((in_mm(wheel.widest_radius()) - widest).abs() < 1e-9);
            let (bottom, top) = (185.0 - growth, 316.0 + growth);
            for step in 1..60 {
                let r = mm(bottom + (top - bottom) * f64::from(step) / 60.0);
                let half = wheel.half_width_at(r).unwrap();
                for side in [half, -half] {
                    let (gap, _) = wheel.distance(wheel.rim_centre() + side, r);
                    assert!(in_mm(gap).abs() < 1e-6, "{half_width} on {half_rim} at {r:?}: {gap:?}");
                }
                checked += 1;
            }
            assert_eq!(wheel.half_width_at(mm(bottom - 0.01)), None);
            assert_eq!(wheel.half_width_at(mm(top + 0.01)), None);
            assert!(wheel.half_width_at(mm(f64::NAN)).is_none());
        }
    }
    assert_eq!(checked, 472);
}
