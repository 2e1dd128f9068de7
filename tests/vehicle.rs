//! The vehicle as a value, and the bodies around its wheels.
#![cfg(feature = "serde")]
#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::fitment::space::AvailableSpace;
use beadseat::fitment::{CheckId, Position};
use beadseat::scenario::Scenario;
use beadseat::sweep::{ObstacleError, Point};
use beadseat::tire::condition::VehicleSide;
use beadseat::units::mm;
use beadseat::vehicle::{BodyKind, NearbyBodies, NearbyBody, Vehicle};

fn stud() -> NearbyBody {
    NearbyBody::outline(BodyKind::Other, &[Point::new(mm(0.0), mm(200.0), mm(600.0)).unwrap()]).unwrap()
}

fn list_of(bodies: &[NearbyBody]) -> Result<NearbyBodies, ObstacleError> {
    let mut list = NearbyBodies::new();
    bodies.iter().try_for_each(|body| list.push(*body))?;
    Ok(list)
}

/// Sixteen on the left and sixteen on the right.
fn one_sided() -> Vec<NearbyBody> {
    [VehicleSide::Left, VehicleSide::Right]
        .into_iter()
        .flat_map(|side| vec![stud().only_on(side); 16])
        .collect()
}

#[test]
fn a_vehicle_is_small_and_what_looks_at_it_smaller() {
    assert!(size_of::<Vehicle>() <= 1088, "{}", size_of::<Vehicle>());
    assert!(size_of::<AvailableSpace<'_>>() <= 512, "{}", size_of::<AvailableSpace<'_>>());
}

#[test]
fn sixteen_bodies_stand_around_a_wheel_and_no_more() {
    let left = one_sided()[..16].to_vec();
    for (bodies, fit) in [
        (vec![], true),
        (vec![stud(); 16], true),
        (vec![stud(); 17], false),
        (one_sided(), true),
        ([left.clone(), vec![stud().only_on(VehicleSide::Left)]].concat(), false),
        ([left.clone(), vec![stud().only_on(VehicleSide::Right)]].concat(), true),
        ([vec![stud()], left].concat(), false),
        ([one_sided(), vec![stud()]].concat(), false),
    ] {
        let expected = if fit { Ok(bodies.len()) } else { Err(ObstacleError::TooMany) };
        for list in [list_of(&bodies), NearbyBodies::from_static(bodies.clone().leak())] {
            assert_eq!(list.map(|list| list.iter().count()), expected);
        }
    }
}

#[test]
fn a_list_that_stands_still_is_judged_and_written_as_one_that_grew() {
    let text = std::fs::read_to_string("examples/scenarios/field-survey-wagon.json").unwrap();
    let wagon: Scenario = serde_json::from_str(&text).unwrap();
    let with = |list| {
        let axle = wagon.vehicle().front().unwrap();
        let space = axle.space().unwrap().clone().with_obstacles(list);
        wagon.vehicle().clone().with_front(axle.clone().with_space(space))
    };
    let [grown, standing] = [list_of(&one_sided()), NearbyBodies::from_static(one_sided().leak())]
        .map(|list| with(list.unwrap()));
    assert_eq!(grown, standing);
    assert_eq!(serde_json::to_string(&grown).unwrap(), serde_json::to_string(&standing).unwrap());
    let report = wagon.change().assess(&standing);
    assert_eq!(wagon.change().assess(&grown), report);
    // Sixteen alike on a side are as near as one on both.
    let one = wagon.change().assess(&with(list_of(&[stud()]).unwrap()));
    for place in [Position::FrontLeft, Position::FrontRight] {
        let swept = report.get(CheckId::SweptClearance, place).unwrap();
        assert!(swept.measured().is_some());
        assert_eq!(one.get(CheckId::SweptClearance, place), Some(swept));
    }
    assert_eq!(standing.clone().mirrored().mirrored(), standing);
    assert_ne!(standing.clone().mirrored(), standing);
}
