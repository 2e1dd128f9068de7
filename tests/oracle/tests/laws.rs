//! Laws that every assessment obeys, over random vehicles and changes.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[macro_use]
mod common;
#[path = "laws/explain.rs"]
mod explain;
#[path = "laws/more_axles.rs"]
mod more_axles;

use beadseat::Count;
use beadseat::fitment::measure::{Input, Preparation};
use beadseat::fitment::moves::{Move, MoveId, Moves};
use beadseat::fitment::pressures::Needed;
use beadseat::fitment::{
    Change, Check, CheckId, Conditions, Day, Fasteners, LimitSet, Limits, Position, Reason, Report, Setup,
    Setups, TireInUse, TractionClass, Value, Verdict, assess, verdict,
};
use beadseat::rim::RimWidth;
use beadseat::sweep::{Carrier, Point};
use beadseat::tire::{
    RimRange, SizeClass,
    condition::{AgeLimit, ArrowTurn, SideFacingOut, VehicleSide},
    identification::DateCode,
};
use beadseat::units::{Length, deg, in_kmh, in_mm, in_ratio, kg, kmh, kpa, mm, nm, percent};
use beadseat::vehicle::{
    Axle, Brake, Drive, EndGaps, Fastening, Hub, Kind, MeasuredTire, Space, Steering, Vehicle,
};
use beadseat::vehicle::{AxleType, BodyKind, GapSide, NearbyBodies, NearbyBody, Travel};
use beadseat::wheel::{Adaptor, FastenerKind, PropertyClass, Seat, Spigot, Thickness, Valve};
use common::maybe;
use proptest::prelude::*;
use proptest::sample::select;
use proptest::strategy::ValueTree;

const TIRES: &[&str] = &[
    "205/55R16 91V",
    "205/55R16 94W XL",
    "225/45R17 94W XL",
    "225/45R17 91Y",
    "225/50R17 98V XL",
    "215/60R16 99H XL",
    "195/65-15 91S",
    "P215/65R16 98T",
    "HL245/40R19 101Y XL",
    "195/70R15C 104/102R",
    "LT245/75R17 121/118S LRE",
    "LT265/70R17 121/118S",
    "295/80R22.5 152/148M",
    "205/55ZR16",
    "205/55R16",
];
const WHEELS: &[&str] = &[
    "6.5Jx16 H2 ET46 5x112 57.1",
    "7.5Jx17 H2 ET42 5x112 66.6",
    "7.5Jx17 ET42 5x114.3 66.6",
    "8Jx17 ET25 6x139.7 106.1",
    "6Jx15 ET68 5x118 71.1",
    "8.5Jx19 ET30 5x112",
    "8.25x22.5 ET168 10x335 281",
    "7Jx16.5",
    "9Jx16 ET-12 5x112 57.1",
];

fn seat() -> impl Strategy<Value = Seat> {
    select(Seat::ALL)
}

prop_compose! {
    fn hub()(
        circle in maybe(select(&["5x112", "5x114.3", "6x139.7", "10x335"][..])),
        spigot in maybe(select(&[57.1, 66.6, 100.0][..])),
        height in maybe(select(&[0.0, 5.0, 9.0][..])),
        thread in maybe(select(&["M14x1.5", "M12x1.5", "1/2-20"][..])),
        seat in maybe(seat()),
        fastening in maybe(select(Fastening::ALL)),
        stud in maybe(20.0..60.0),
        depth in maybe(15.0..40.0),
    ) -> Hub {
        let mut hub = Hub::new();
        set!(hub, with_bolt_circle circle.map(|t| t.parse().unwrap()),
            with_thread thread.map(|t| t.parse().unwrap()), with_seat seat, with_fastening fastening);
        try_set!(hub, with_spigot spigot.map(mm), with_spigot_height height.map(mm), with_stud_length stud.map(mm), with_thread_depth depth.map(mm));
        hub
    }
}

prop_compose! {
    fn measured_tire()(width in maybe(180.0..240.0), diameter in maybe(600.0..680.0), tread in maybe(1.0..12.0)) -> MeasuredTire {
        let mut tire = MeasuredTire::new();
        try_set!(tire, with_width width.map(mm), with_diameter diameter.map(mm), with_tread_depth tread.map(mm));
        tire
    }
}

prop_compose! {
    fn body()(
        kind in select(BodyKind::ALL),
        at in (-300.0..300.0, -400.0..150.0, -100.0..450.0),
        to in maybe((-300.0..300.0, -400.0..150.0, -100.0..450.0)),
        gap in maybe((select(GapSide::ALL), 0.0..60.0, 0.0..300.0)),
        thick in (0.0..30.0, 0.0..4.0),
        knuckle in any::<bool>(),
        side in maybe(select(VehicleSide::ALL)),
    ) -> NearbyBody {
        let point = |(x, y, z): (f64, f64, f64)| Point::new(mm(x), mm(y), mm(z)).unwrap();
        let body = match (gap, to) {
            (Some((side, gap, height)), _) => NearbyBody::gap(kind, side, mm(gap), mm(height), mm(0.0)),
            (None, Some(to)) => NearbyBody::outline(kind, &[point(at), point(to)]),
            (None, None) => NearbyBody::outline(kind, &[point(at)]),
        };
        let carrier = if knuckle { Carrier::Knuckle } else { Carrier::Body };
        let body = body.unwrap().with_radius(mm(thick.0)).unwrap().with_uncertainty(mm(thick.1)).unwrap();
        let body = body.carried_by(carrier).unwrap();
        side.map_or(body, |side| body.only_on(side))
    }
}

prop_compose! {
    fn end_gaps()(
        inner in maybe(0.0..60.0),
        outer in maybe(-5.0..60.0),
        upper in maybe(0.0..120.0),
        guard in maybe(-20.0..40.0),
    ) -> EndGaps {
        let mut gaps = EndGaps::new();
        try_set!(gaps, with_inner_clearance inner.map(mm), with_outer_clearance outer.map(mm),
            with_upper_clearance upper.map(mm), with_guard_overhang guard.map(mm));
        gaps
    }
}

prop_compose! {
    fn space()(
        inner in maybe(0.0..60.0),
        outer in maybe(-5.0..60.0),
        upper in maybe(0.0..120.0),
        off in maybe(0.0..4.0),
        guard in maybe(-20.0..40.0),
        measured in maybe(measured_tire()),
        ends in prop_oneof![3 => Just((None, None)), 1 => (maybe(end_gaps()), maybe(end_gaps()))],
        bodies in prop_oneof![3 => Just(vec![]), 1 => prop::collection::vec(body(), 1..3)],
    ) -> Space {
        let mut space = Space::new();
        try_set!(space, with_inner_clearance inner.map(mm), with_outer_clearance outer.map(mm),
            with_upper_clearance upper.map(mm), with_uncertainty off.map(mm),
            with_guard_overhang guard.map(mm));
        let mut around = NearbyBodies::new();
        for body in &bodies {
            around.push(*body).unwrap();
        }
        set!(space, with_left ends.0, with_right ends.1, with_measured_tire measured, with_obstacles (!bodies.is_empty()).then_some(around));
        space
    }
}

prop_compose! {
    fn brake()(envelope in maybe(150.0..220.0), face in maybe(20.0..50.0), disc in maybe(220.0..400.0)) -> Brake {
        let mut brake = Brake::new();
        try_set!(brake, with_envelope_radius envelope.map(mm), with_caliper_face face.map(mm), with_disc disc.map(mm));
        brake
    }
}

prop_compose! {
    fn adaptor()(
        thickness in 15.0..40.0,
        circles in (maybe(select(&["5x112", "5x114.3"][..])), maybe(select(&["5x112", "5x114.3"][..]))),
        fits in (maybe(select(&["57.1", "66.6"][..])), maybe(select(&[57.1, 66.6][..]))),
        thread in maybe(select(&["M14x1.5", "M12x1.5"][..])),
        kind in maybe(select(FastenerKind::ALL)),
        length in maybe(20.0..40.0),
        rating in maybe(400.0..900.0),
    ) -> Adaptor {
        let mut adaptor = Adaptor::new(Thickness::from_length(mm(thickness)).unwrap());
        set!(adaptor, with_hub_bolt_circle circles.0.map(|t| t.parse().unwrap()),
            with_wheel_bolt_circle circles.1.map(|t| t.parse().unwrap()),
            with_hub_bore fits.0.map(|t| t.parse().unwrap()),
            with_wheel_spigot fits.1.map(|d| Spigot::from_length(mm(d)).unwrap()),
            with_thread thread.map(|t| t.parse().unwrap()), with_fastener_kind kind);
        try_set!(adaptor, with_thread_length length.map(mm), with_rating rating.map(kg));
        adaptor
    }
}

prop_compose! {
    fn axle()(
        loads in (maybe(500.0..4000.0), maybe(300.0..1500.0)),
        track in maybe(1300.0..1900.0),
        placards in (maybe(select(&[180.0, 230.0, 350.0][..])), maybe(select(&[230.0, 270.0][..]))),
        camber in maybe(-4.5..1.0),
        wheels in maybe(1u8..=2),
        axles in maybe(1u8..=2),
        hub in maybe(hub()),
        scrub in maybe(-15.0..25.0),
        space in maybe(space()),
        brake in maybe(brake()),
        travel in maybe((20.0..90.0, 20.0..90.0)),
        steering in (maybe((20.0..40.0, 20.0..35.0)), maybe((0.0..8.0, 0.0..30.0)), maybe(280.0..400.0)),
        beam in any::<bool>(),
        ground in maybe(120.0..220.0),
        unbraked in prop_oneof![4 => Just(None), 1 => Just(Some(true))],
    ) -> Axle {
        let mut axle = Axle::new();
        try_set!(axle, with_max_load loads.0.map(kg), with_normal_load loads.1.map(kg), with_track track.map(mm),
            with_placard placards.0.map(kpa), with_ground_clearance ground.map(mm), with_placard_full_load placards.1.map(kpa), with_camber camber.map(deg));
        set!(axle, with_wheels_per_side wheels.and_then(Count::new), with_axles axles.and_then(Count::new),
            with_hub hub, with_space space, with_brake brake,
            with_travel travel.map(|(up, down)| Travel::new().with_jounce(mm(up)).unwrap().with_rebound(mm(down)).unwrap()),
            with_axle_type beam.then_some(AxleType::Beam), with_unbraked unbraked,
            with_steering scrub.map(|r| {
                let mut steered = Steering::new().with_scrub_radius(mm(r)).unwrap()
                    .with_kingpin_inclination(deg(12.0)).unwrap();
                try_set!(steered, with_lock_inner steering.0.map(|l| deg(l.0)), with_lock_outer steering.0.map(|l| deg(l.1)),
                    with_caster steering.1.map(|c| deg(c.0)), with_trail steering.1.map(|c| mm(c.1)),
                    with_hub_height steering.2.map(mm));
                steered
            }));
        axle
    }
}

prop_compose! {
    fn vehicle()(
        kind in maybe(select(Kind::ALL)),
        drive in maybe(select(Drive::ALL)),
        top in maybe(80.0..310.0),
        over in maybe(-3.0..5.0),
        stability in maybe(any::<bool>()),
        front in maybe(axle()),
        rear in maybe(axle()),
    ) -> Vehicle {
        let mut vehicle = Vehicle::unknown();
        set!(vehicle, with_kind kind, with_drive drive, with_stability_control stability,
            with_front front, with_rear rear);
        try_set!(vehicle, with_top_speed top.map(kmh), with_over_read over.map(percent));
        vehicle
    }
}

prop_compose! {
    fn fasteners()(
        thread in maybe(select(&["M14x1.5", "M12x1.5"][..])),
        seat in maybe(seat()),
        kind in maybe(select(FastenerKind::ALL)),
        usable in maybe(15.0..50.0),
        class in maybe(select(PropertyClass::ALL)),
    ) -> Fasteners {
        let mut fasteners = Fasteners::new();
        set!(fasteners, with_class class, with_thread thread.map(|t| t.parse().unwrap()), with_seat seat, with_kind kind);
        try_set!(fasteners, with_usable_length usable.map(mm));
        fasteners
    }
}

prop_compose! {
    fn tire_in_use()(
        made in maybe((1u8..=52, 2010u16..=2028)),
        tread in maybe(1.0..12.0),
        arrow in maybe(select(ArrowTurn::ALL)),
        facing_out in maybe(select(SideFacingOut::ALL)),
        unmarked in maybe(any::<bool>()),
    ) -> TireInUse {
        let mut tire = TireInUse::new();
        try_set!(tire, with_tread_depth tread.map(mm));
        set!(tire, with_date_code made.and_then(|(week, year)| DateCode::new(week, year)),
            with_arrow arrow, with_facing_out facing_out, with_unmarked unmarked);
        tire
    }
}

prop_compose! {
    fn setup()(
        tire in select(TIRES),
        wheel in select(WHEELS),
        spacer in maybe(select(&[0.0, 5.0, 20.0][..])),
        ring in maybe(any::<bool>()),
        snow in maybe(any::<bool>()),
        seat in maybe(seat()),
        fasteners in maybe(fasteners()),
        rating in maybe(400.0..4000.0),
        pressures in (maybe(140.0..500.0), maybe(140.0..500.0)),
        reference in maybe(select(&[250.0, 450.0, 550.0][..])),
        maximum in maybe(select(&[340.0, 550.0, 900.0][..])),
        range in maybe((20u16..32, 0u16..8)),
        ends in (maybe(tire_in_use()), maybe(tire_in_use())),
        disc in maybe(8.0..20.0),
        barrel in (maybe(150.0..230.0), maybe(3.0..8.0)),
        back in maybe(25.0..60.0),
        more in (maybe(80.0..400.0), maybe(600.0..700.0), maybe(select(Valve::ALL)), maybe(300.0..600.0)),
        adaptor in prop_oneof![4 => Just(None), 1 => adaptor().prop_map(Some)],
    ) -> Setup {
        let mut setup = Setup::new(tire.parse().unwrap(), wheel.parse().unwrap());
        try_set!(setup, with_spacer spacer.map(mm), with_wheel_rating rating.map(kg),
            with_pressure pressures.0.map(kpa), with_pressure_full_load pressures.1.map(kpa),
            with_reference_pressure reference.map(kpa), with_max_pressure maximum.map(kpa));
        set!(setup, with_rim_range range.and_then(|(least, span)| RimRange::from_maker(
            RimWidth::from_quarters(least).unwrap(), RimWidth::from_quarters(least + span).unwrap())));
        set!(setup, with_left ends.0, with_right ends.1, with_adaptor adaptor);
        try_set!(setup, with_disc_thickness disc.map(mm), with_barrel_radius barrel.0.map(mm),
            with_barrel_thickness barrel.1.map(mm), with_spoke_back back.map(mm));
        try_set!(setup, with_torque more.0.map(nm), with_wheel_rating_diameter more.1.map(mm),
            with_wheel_max_pressure more.3.map(kpa));
        set!(setup, with_valve more.2);
        set!(setup, with_ring ring, with_snow snow, with_seat seat, with_fasteners fasteners);
        setup
    }
}

fn setups() -> impl Strategy<Value = Setups> {
    (maybe(setup()), maybe(setup())).prop_map(|(front, rear)| Setups { front, rear })
}

fn change() -> impl Strategy<Value = Change> {
    (setups(), setups()).prop_map(|(original, proposed)| Change { original, proposed })
}

fn limits() -> impl Strategy<Value = Limits> {
    select(LimitSet::ALL).prop_map(Limits::of)
}

fn judge(vehicle: &Vehicle, change: &Change, limits: &Limits) -> Report {
    let day =
        Conditions::new().with_date("2026-11-25".parse().unwrap()).with_traction_device(TractionClass::S);
    assess(vehicle, change, &day, limits)
}

/// How bad an answer is; what has none is worse than what is inside.
fn gravity(check: &Check) -> u8 {
    match check.verdict() {
        Verdict::NotApplicable | Verdict::Within => 0,
        Verdict::Marginal => 1,
        Verdict::Beyond => 2,
        Verdict::NotAssessed => 3,
    }
}

/// What must have been judged on every axle before a report may call itself complete, as DEVELOPERS.md lists it.
const VITAL: [CheckId; 16] = [
    CheckId::BeadDiameter,
    CheckId::RimWidth,
    CheckId::TireLoad,
    CheckId::Inflation,
    CheckId::SpeedSymbol,
    CheckId::WheelLoad,
    CheckId::BoltCircle,
    CheckId::CentreBore,
    CheckId::FastenerThread,
    CheckId::FastenerSeat,
    CheckId::ThreadEngagement,
    CheckId::InnerClearance,
    CheckId::OuterClearance,
    CheckId::UpperClearance,
    CheckId::DualSpacing,
    CheckId::BrakeClearance,
];

/// The checks of gaps that may differ from one end of an axle to the other.
const OF_GAPS: [CheckId; 4] =
    [CheckId::OuterClearance, CheckId::InnerClearance, CheckId::UpperClearance, CheckId::WheelGuard];

/// The gap that a check looks at, on the left and on the right.
fn gaps(space: &Space, id: CheckId) -> [Option<Length>; 2] {
    [space.left(), space.right()].map(|end| {
        let own = |of: fn(EndGaps) -> Option<Length>| end.and_then(of);
        match id {
            CheckId::OuterClearance => own(|end| end.outer_clearance()).or(space.outer_clearance()),
            CheckId::InnerClearance => own(|end| end.inner_clearance()).or(space.inner_clearance()),
            CheckId::UpperClearance => own(|end| end.upper_clearance()).or(space.upper_clearance()),
            _ => own(|end| end.guard_overhang()).or(space.guard_overhang()),
        }
    })
}

/// The less of those that are known.
fn least(gaps: &[Option<Length>; 2]) -> Option<Length> {
    gaps.iter().flatten().copied().reduce(|a, b| if b < a { b } else { a })
}

/// A space whose gaps are on both ends as they are on one.
fn as_on(space: &Space, end: usize) -> Space {
    let mut both = drop_keys(
        space,
        &[
            "inner_clearance_mm",
            "outer_clearance_mm",
            "upper_clearance_mm",
            "guard_overhang_mm",
            "left",
            "right",
        ],
    );
    let gap = |id| gaps(space, id)[end];
    try_set!(both, with_outer_clearance gap(CheckId::OuterClearance), with_inner_clearance gap(CheckId::InnerClearance),
        with_upper_clearance gap(CheckId::UpperClearance), with_guard_overhang gap(CheckId::WheelGuard));
    both
}

/// The finding of a check of gaps on an axle, on whichever end it stands.
fn of_gap(report: &Report, id: CheckId, axle: Position) -> Option<Check> {
    report.checks().find(|check| check.id() == id && check.position().axle() == axle)
}

/// The findings of two reports side by side, by check and place; those of gaps by axle.
fn pairs(a: &Report, b: &Report) -> Vec<(Option<Check>, Option<Check>)> {
    CheckId::ALL
        .iter()
        .flat_map(|&id| {
            let of = move |report: &Report, place| {
                if OF_GAPS.contains(&id) { of_gap(report, id, place) } else { report.get(id, place) }
            };
            Position::ALL.iter().map(move |&place| (of(a, place), of(b, place)))
        })
        .filter(|pair| *pair != (None, None))
        .collect()
}

/// What looks at the change rather than at what is proposed.
const OF_CHANGE: &[CheckId] = &[
    CheckId::RimWidth,
    CheckId::TireLoadVsOriginal,
    CheckId::OverallDiameter,
    CheckId::Speedometer,
    CheckId::AxleMatch,
    CheckId::Track,
    CheckId::ScrubRadius,
    CheckId::OuterClearance,
    CheckId::InnerClearance,
    CheckId::UpperClearance,
    CheckId::BrakeClearance,
    CheckId::RimContour,
    CheckId::SweptClearance,
    CheckId::RideHeight,
    CheckId::GroundClearance,
    CheckId::DualSpacing,
    CheckId::WheelGuard,
];

/// A length in mm, a speed in km/h, a share as such.
fn number(value: Value) -> f64 {
    match value {
        Value::Length(length) => in_mm(length),
        Value::Velocity(speed) => in_kmh(speed),
        Value::Ratio(share) => in_ratio(share),
        other => panic!("{other}"),
    }
}

/// Nominal values of a move before and after, where both setups tell.
fn both(moves: &Moves, id: MoveId, place: Position) -> Option<[f64; 2]> {
    let found: Option<Move> = moves.iter().find(|m| m.id() == id && m.position() == place);
    let (before, after) = found.and_then(|m| m.before().zip(m.after()))?;
    Some([before, after].map(number))
}

/// How far it moves.
fn moved(moves: &Moves, id: MoveId, place: Position) -> Option<f64> {
    both(moves, id, place).map(|[before, after]| after - before)
}

/// Of a check the value that a move tells too; nothing where the check says nothing, or the move nothing.
fn told_twice(vehicle: &Vehicle, moves: &Moves, check: &Check) -> Option<[Vec<f64>; 2]> {
    let place = check.position();
    let axle = if place == Position::Rear { vehicle.rear() } else { vehicle.front() };
    let moved = |id| moved(moves, id, place);
    let by_moves = match check.id() {
        CheckId::Track => vec![moved(MoveId::RimOuterFace)? + moved(MoveId::RimInnerFace)?],
        CheckId::OverallDiameter => {
            let [before, after] = both(moves, MoveId::OverallDiameter, place)?;
            vec![(after - before) / before]
        }
        CheckId::RideHeight => vec![moved(MoveId::RideHeight)?],
        CheckId::OuterClearance | CheckId::InnerClearance => {
            let space = axle?.space()?;
            if space.measured_tire().is_some() {
                return None;
            }
            let gap = least(&gaps(space, check.id()))?;
            let (ids, outward) = if check.id() == CheckId::OuterClearance {
                ([MoveId::RimOuterFace, MoveId::TireOuterFace], 1.0)
            } else {
                ([MoveId::RimInnerFace, MoveId::TireInnerFace], -1.0)
            };
            let [rim, tire] = ids.map(|id| both(moves, id, place));
            let ([rim_before, rim_after], [tire_before, tire_after]) = (rim?, tire?);
            let reach = |rim: f64, tire: f64| (outward * rim).max(outward * tire);
            vec![in_mm(gap) - (reach(rim_after, tire_after) - reach(rim_before, tire_before))]
        }
        CheckId::Speedometer => {
            let over_read = in_ratio(vehicle.over_read()?);
            let speeds = moves.iter().filter(|m| m.id() == MoveId::TrueSpeed);
            speeds
                .flat_map(|m| {
                    let before = number(m.before().unwrap());
                    let nominal = m.after().unwrap();
                    let (least, most) = m.after_span().unwrap_or((nominal, nominal));
                    [least, most].map(|after| (1.0 + over_read) / (number(after) / before) - 1.0)
                })
                .collect()
        }
        _ => return None,
    };
    Some([vec![number(check.nominal().or(check.measured())?)], by_moves])
}

/// The law below compares something of every check that it names.
#[test]
fn every_check_of_a_difference_is_told_by_moves() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let limits = Limits::default().with_own_ride_height_change(mm(20.0)).unwrap();
    let mut told = std::collections::BTreeSet::new();
    for _ in 0..1000 {
        let (vehicle, change) = (vehicle(), change()).new_tree(&mut runner).unwrap().current();
        let moves = Moves::of(&vehicle, &change);
        for check in judge(&vehicle, &change, &limits).checks() {
            if check.measured().is_some() && told_twice(&vehicle, &moves, &check).is_some() {
                told.insert(check.id().name());
            }
        }
    }
    let expected =
        ["inner_clearance", "outer_clearance", "overall_diameter", "ride_height", "speedometer", "track"];
    assert_eq!(told.into_iter().collect::<Vec<_>>(), expected);
}

proptest! {
    #[test]
    fn moves_are_the_differences_that_checks_use(vehicle in vehicle(), change in change()) {
        let limits = Limits::default().with_own_ride_height_change(mm(20.0)).unwrap();
        let moves = Moves::of(&vehicle, &change);
        for check in judge(&vehicle, &change, &limits).checks() {
            if check.verdict() == Verdict::NotAssessed || check.measured().is_none() {
                continue;
            }
            if let Some([checked, moved]) = told_twice(&vehicle, &moves, &check) {
                let agrees = moved.iter().any(|by_move| (by_move - checked[0]).abs() < 1e-9);
                prop_assert!(agrees, "{}: {:?} by moves {:?}", check, checked, moved);
            }
        }
    }

    #[test]
    fn no_change_moves_nothing(vehicle in vehicle(), setups in setups()) {
        for found in Moves::of(&vehicle, &Change { original: setups, proposed: setups }).iter() {
            prop_assert_eq!(found.before(), found.after());
            prop_assert_eq!(found.change().map(number), Some(0.0));
        }
    }

    #[test]
    fn no_change_is_beyond_in_no_check_of_change(vehicle in vehicle(), setups in setups(), limits in limits()) {
        let report = judge(&vehicle, &Change { original: setups, proposed: setups }, &limits);
        for check in report.checks().filter(|c| OF_CHANGE.contains(&c.id())) {
            prop_assert_ne!(check.verdict(), Verdict::Beyond, "{}", check);
        }
    }

    #[test]
    fn loosening_a_limit_worsens_nothing(vehicle in vehicle(), change in change(), limits in limits(), which in 0usize..10) {
        // The caller's own limits first, so that the source of a limit is the same before and after.
        let tight = limits
            .with_own_swept_clearance(mm(20.0)).unwrap()
            .with_own_ground_clearance(mm(150.0)).unwrap()
            .with_own_dual_gap(mm(20.0)).unwrap()
            .with_own_track_growth_share(percent(1.0)).unwrap()
            .with_own_diameter_share(percent(1.0)).unwrap()
            .with_own_clearance(mm(6.0)).unwrap()
            .with_own_circumference_all_wheel_drive(percent(0.5)).unwrap()
            .with_own_circumference_stability(percent(0.5)).unwrap();
        let loose = match which {
            0 => tight.with_own_track_growth_share(percent(3.0)).unwrap(),
            1 => tight.with_own_diameter_share(percent(4.0)).unwrap(),
            2 => tight.with_own_clearance(mm(2.0)).unwrap(),
            3 => tight.with_own_load_reserve(percent(97.0)).unwrap(),
            4 => tight.with_own_circumference_all_wheel_drive(percent(2.0)).unwrap(),
            5 => tight.with_own_circumference_stability(percent(2.0)).unwrap(),
            6 => tight.with_lower_load_index(true),
            7 => tight.with_towing_allowance(true),
            8 => tight.with_own_swept_clearance(mm(2.0)).unwrap(),
            _ => tight.with_own_snow_speed_floor(kmh(160.0)).unwrap(),
        };
        let (before, after) = (judge(&vehicle, &change, &tight), judge(&vehicle, &change, &loose));
        for (a, b) in pairs(&before, &after) {
            let (a, b) = (a.unwrap(), b.unwrap());
            // An exception that lets a check look further may find a missing input there.
            let looked_further = a.verdict() == Verdict::Beyond && b.verdict() == Verdict::NotAssessed;
            // Of a limit that one barrel keeps and another does not, the barrel must be known; a tighter one
            // neither kept.
            let barrel_decides = a.verdict() == Verdict::Marginal && b.missing().eq([Input::Barrel]);
            prop_assert!(gravity(&b) <= gravity(&a) || looked_further || barrel_decides, "{} -> {}", a, b);
        }
    }

    #[test]
    fn front_and_rear_exchanged_exchange_their_findings(vehicle in vehicle(), change in change(), limits in limits()) {
        // The towing allowance is for rear tires, and a front axle counts as steered.
        let limits = limits.with_towing_allowance(false);
        let reversed = Change { original: change.original.reversed(), proposed: change.proposed.reversed() };
        let (a, b) = (judge(&vehicle, &change, &limits), judge(&vehicle.clone().reversed(), &reversed, &limits));
        for (id, place, mirrored) in CheckId::ALL.iter().flat_map(|&id| [
            (id, Position::Front, Position::Rear), (id, Position::Rear, Position::Front), (id, Position::Vehicle, Position::Vehicle),
            (id, Position::FrontLeft, Position::RearLeft), (id, Position::RearRight, Position::FrontRight),
        ]) {
            let (Some(x), Some(y)) = (a.get(id, place), b.get(id, mirrored)) else { continue };
            let both_steered = [vehicle.front(), vehicle.rear()].iter().all(|a| a.is_some_and(|a| a.steering().is_some()));
            if id == CheckId::SweptClearance && !both_steered {
                continue;
            }
            // The law of the US asks for deeper treads on the steered axle of a truck.
            if id == CheckId::Tread && limits.set() == LimitSet::UnitedStates {
                continue;
            }
            prop_assert_eq!((x.verdict(), x.reason()), (y.verdict(), y.reason()));
            if place != Position::Vehicle {
                prop_assert_eq!((x.measured(), x.limit()), (y.measured(), y.limit()));
            }
        }
        prop_assert_eq!(a.is_complete(), b.is_complete());
    }

    #[test]
    fn left_and_right_exchanged_exchange_their_findings(vehicle in vehicle(), change in change(), limits in limits()) {
        let mirrored = Change { original: change.original.mirrored(), proposed: change.proposed.mirrored() };
        let (a, b) = (judge(&vehicle, &change, &limits), judge(&vehicle.clone().mirrored(), &mirrored, &limits));
        let opposite = |place| match place {
            Position::FrontLeft => Position::FrontRight,
            Position::FrontRight => Position::FrontLeft,
            Position::RearLeft => Position::RearRight,
            Position::RearRight => Position::RearLeft,
            other => other,
        };
        for check in a.checks() {
            let other = b.get(check.id(), opposite(check.position())).unwrap();
            prop_assert_eq!((check.verdict(), check.reason(), check.measured(), check.limit()),
                (other.verdict(), other.reason(), other.measured(), other.limit()));
        }
        prop_assert_eq!(a.cautions().collect::<Vec<_>>(), b.cautions().collect::<Vec<_>>());
    }

    /// An axle whose gaps differ is judged as the worse of two axles, each with the gaps of one end.
    #[test]
    fn gaps_that_differ_are_judged_as_the_worse_of_both_ends(vehicle in vehicle(), change in change(), limits in limits()) {
        let on = |end| {
            let mut vehicle = vehicle.clone();
            if let Some((axle, space)) = vehicle.front().and_then(|axle| Some((axle.clone(), axle.space()?.clone()))) {
                vehicle = vehicle.with_front(axle.with_space(as_on(&space, end)));
            }
            if let Some((axle, space)) = vehicle.rear().and_then(|axle| Some((axle.clone(), axle.space()?.clone()))) {
                vehicle = vehicle.with_rear(axle.with_space(as_on(&space, end)));
            }
            judge(&vehicle, &change, &limits)
        };
        let (report, ends) = (judge(&vehicle, &change, &limits), [on(0), on(1)]);
        for axle in [Position::Front, Position::Rear] {
            for id in OF_GAPS {
                let Some(found) = of_gap(&report, id, axle) else { continue };
                let [left, right] = ends.each_ref().map(|end| end.get(id, axle).unwrap());
                let either = [left, right];
                let beyond = either.iter().any(|end| end.verdict() == Verdict::Beyond);
                let unknown = either.iter().any(|end| end.verdict() == Verdict::NotAssessed);
                let wanted = if beyond {
                    Verdict::Beyond
                } else if unknown && id == CheckId::WheelGuard && either.iter().any(|end| end.verdict() == Verdict::Marginal) {
                    // It is not vital, so that it would weigh nothing.
                    Verdict::Marginal
                } else if unknown {
                    Verdict::NotAssessed
                } else {
                    either.iter().max_by_key(|end| gravity(end)).unwrap().verdict()
                };
                prop_assert_eq!(found.verdict(), wanted, "{} of {} and {}", found, left, right);
                let known = either.iter().filter_map(Check::measured).map(number).reduce(f64::min);
                if let (Some(found), Some(known)) = (found.measured().map(number), known) {
                    prop_assert!((found - known).abs() < 1e-9, "{found} of {known}");
                }
                // It names the end that decides, if one does.
                let space = if axle == Position::Front { vehicle.front() } else { vehicle.rear() }.and_then(Axle::space);
                let [left, right] = space.map_or([None; 2], |space| gaps(space, id));
                let is_front = axle == Position::Front;
                let ends = [Position::FrontLeft, Position::FrontRight, Position::RearLeft, Position::RearRight];
                let [on_left, on_right] = if is_front { [ends[0], ends[1]] } else { [ends[2], ends[3]] };
                let place = match (left, right) {
                    _ if vehicle.kind() == Some(Kind::Motorcycle) => axle,
                    (Some(left), Some(right)) if left == right => axle,
                    (None, None) => axle,
                    (Some(left), right) if right.is_none_or(|right| left < right) => on_left,
                    _ => on_right,
                };
                prop_assert_eq!(found.position(), place);
            }
        }
        // The rest has nothing to do with it.
        for check in report.checks().filter(|check| !OF_GAPS.contains(&check.id()) && check.id() != CheckId::ChainClearance) {
            prop_assert_eq!(ends[0].get(check.id(), check.position()), Some(check));
        }
    }

    /// Against civil dates of the `jiff` crate.
    #[test]
    fn ages_are_those_of_the_calendar(week in 1u8..=53, year in 2000u16..=2026, days in 0i32..15_000) {
        let Some(code) = DateCode::new(week, year) else { return Ok(()) };
        let day = jiff::civil::date(2000, 1, 1).saturating_add(jiff::Span::new().days(days));
        let setup = Setup::new("205/55R16 91V".parse().unwrap(), "7Jx16".parse().unwrap())
            .with_left(TireInUse::new().with_date_code(code));
        let setups = Setups { front: Some(setup), rear: None };
        let conditions = Conditions::new().with_date(day.to_string().parse::<Day>().unwrap());
        let change = Change { original: setups, proposed: setups };
        let vehicle = Vehicle::new(Kind::Passenger);
        let report = assess(&vehicle, &change, &conditions, &Limits::default());
        let check = report.get(CheckId::TireAge, Position::FrontLeft).unwrap();
        let Ok(age) = code.age_on(day) else {
            // What is yet to come is judged by its own law, in marks.rs.
            prop_assert!(matches!(check.verdict(), Verdict::Within | Verdict::Marginal));
            return Ok(());
        };
        let expected = match AgeLimit::TIRE_MAKERS.allows(&age) {
            Some(false) => Verdict::Beyond,
            None => Verdict::Marginal,
            Some(true) if age.is_over(6) != Some(false) || code.is_iso_only() => Verdict::Marginal,
            Some(true) => Verdict::Within,
        };
        prop_assert_eq!(check.verdict(), expected, "{} on {}", code, day);
        let whole = check.measured().unwrap().to_string().split(['.', ' ']).next().unwrap().parse::<i16>().unwrap();
        // Two decimals may round up to the anniversary.
        prop_assert!((0..=1).contains(&(whole - age.max().get_years())), "{} on {}: {}", code, day, check);
    }

    #[test]
    fn margins_agree_with_verdicts(vehicle in vehicle(), change in change(), limits in limits()) {
        let report = judge(&vehicle, &change, &limits);
        for check in report.checks() {
            if let Some(margin) = check.margin() {
                let text = margin.to_string();
                let negative = text.starts_with('-');
                match check.verdict() {
                    Verdict::Within => prop_assert!(!negative, "{} {}", check, text),
                    Verdict::Beyond => prop_assert!(negative || text.starts_with("0 "), "{} {}", check, text),
                    _ => {}
                }
            }
            prop_assert_eq!(check.missing().count() > 0, check.verdict() == Verdict::NotAssessed);
            let unanswered = [Verdict::NotAssessed, Verdict::NotApplicable].contains(&check.verdict());
            prop_assert_eq!(check.citation().is_none(), unanswered);
        }
    }

    #[test]
    fn the_verdict_alone_is_that_of_the_report(vehicle in vehicle(), change in change(), set in select(LimitSet::ALL), day in any::<bool>(), unchanged in any::<bool>()) {
        // Much that is proposed at random is beyond; less of what stays as it is.
        let conditions = Conditions::new().with_date("2026-11-25".parse().unwrap());
        let conditions = if day { conditions } else { Conditions::default() };
        let proposed = if unchanged { change.original } else { change.proposed };
        let change = Change { proposed, ..change };
        let limits = Limits::of(set);
        let report = assess(&vehicle, &change, &conditions, &limits);
        prop_assert_eq!(verdict(&vehicle, &change, &conditions, &limits), report.overall());
    }

    #[test]
    fn the_whole_is_as_bad_as_its_worst_part(vehicle in vehicle(), change in change(), limits in limits()) {
        let report = judge(&vehicle, &change, &limits);
        let beyond = report.checks().any(|c| c.verdict() == Verdict::Beyond);
        prop_assert_eq!(report.overall() == Verdict::Beyond, beyond);
        let vital = |c: &Check| c.id().is_vital() && c.verdict() == Verdict::NotAssessed;
        prop_assert_eq!(report.is_complete(), !report.checks().any(|c| vital(&c)));
        prop_assert!(report.is_complete() || report.overall() != Verdict::Within);
        // An unknown hub, load or clearance never reads within.
        let on_adaptor = |place| match place {
            Position::Front => change.proposed.front,
            _ => change.proposed.rear,
        }.is_some_and(|setup| setup.adaptor().is_some());
        let axles = [(Position::Front, vehicle.front()), (Position::Rear, vehicle.rear())];
        for (place, axle) in axles {
            let reads_well = |c: &Check| [Verdict::Within, Verdict::Marginal].contains(&c.verdict());
            for check in report.checks().filter(|c| c.position().axle() == place && reads_well(c)) {
                let hub = axle.and_then(|a| a.hub());
                let space = axle.and_then(|a| a.space());
                let known = match check.id() {
                    CheckId::BoltCircle => hub.and_then(|h| h.bolt_circle()).is_some(),
                    CheckId::CentreBore => hub.and_then(|h| h.spigot()).is_some(),
                    // An adaptor has a thread of its own.
                    CheckId::FastenerThread => hub.and_then(|h| h.thread()).is_some() || on_adaptor(place),
                    CheckId::TireLoad | CheckId::WheelLoad => axle.and_then(|a| a.max_load()).is_some(),
                    CheckId::OuterClearance | CheckId::InnerClearance | CheckId::UpperClearance => {
                        space.is_some_and(|space| gaps(space, check.id()).iter().all(Option::is_some))
                    }
                    _ => true,
                };
                prop_assert!(known, "{}", check);
            }
        }
    }

    #[test]
    fn nothing_is_within_and_complete_while_a_vital_check_is_unassessed(vehicle in vehicle(), change in change(), limits in limits()) {
        let report = judge(&vehicle, &change, &limits);
        let unjudged: Vec<_> = report
            .checks()
            .filter(|c| VITAL.contains(&c.id()) && c.verdict() == Verdict::NotAssessed)
            .collect();
        prop_assert_eq!(report.is_complete(), unjudged.is_empty(), "{:?}", unjudged);
        prop_assert!(unjudged.is_empty() || report.overall() != Verdict::Within);
        // Each has a row on every axle that has any.
        for place in [Position::Front, Position::Rear] {
            let is_judged = |id: CheckId| report.checks().any(|c| c.id() == id && c.position().axle() == place);
            let rows = VITAL.iter().filter(|id| is_judged(**id)).count();
            prop_assert!(rows == 0 || rows == VITAL.len(), "{place}: {rows}");
        }
        // Whoever does not describe the brake and changes the wheel is not told that all is well.
        for (place, axle, new, old) in [
            (Position::Front, vehicle.front(), change.proposed.front, change.original.front),
            (Position::Rear, vehicle.rear(), change.proposed.rear, change.original.rear),
        ] {
            let changed = new.map(|s| s.wheel()) != old.map(|s| s.wheel());
            let braked = axle.is_none_or(|a| a.brake().is_none() && a.unbraked() != Some(true));
            if changed && braked && report.get(CheckId::BrakeClearance, place).is_some() {
                prop_assert!(!report.is_complete() || report.overall() != Verdict::Within);
            }
        }
        // And the headline names what was not judged.
        let headline = report.headline().to_string().replace('\n', " ");
        for check in report.checks().filter(|c| c.verdict() == Verdict::NotAssessed) {
            prop_assert!(headline.contains(&check.id().name().replace('_', " ")), "{}: {}", check, headline);
        }
    }

    #[test]
    fn towing_asks_for_no_less_pressure(vehicle in vehicle(), change in change(), speed in 60.0..100.0) {
        let limits = Limits::of(LimitSet::EuropeanUnion);
        let at = |towing| {
            let conditions = Conditions::new().with_top_speed(kmh(speed)).unwrap().with_towing(towing);
            assess(&vehicle, &change, &conditions, &limits)
        };
        let (without, with) = (at(false), at(true));
        for (without, with) in without.pressures().zip(with.pressures()) {
            match (without.full_load(), with.full_load()) {
                (Needed::AtLeast(without), Needed::AtLeast(with)) => prop_assert!(with >= without),
                // Towing allows a load that nothing else does, at more than the reference pressure.
                (Needed::NoPressure, Needed::AtLeast(with)) => prop_assert!(with >= kpa(260.0), "{:?}", with),
                // Without the placard that cannot be said.
                (Needed::NoPressure, Needed::NotKnown) => {}
                (without, with) => prop_assert_eq!(without, with),
            }
        }
    }

    #[test]
    fn a_slow_use_asks_for_no_slower_tire(vehicle in vehicle(), change in change(), speed in 5.0..300.0) {
        let at = |conditions: Conditions| assess(&vehicle, &change, &conditions, &Limits::default());
        let (fast, slow) = (at(Conditions::new()), at(Conditions::new().with_top_speed(kmh(speed)).unwrap()));
        // A trailer is as fast as what tows it.
        let has_engine = vehicle.kind() != Some(Kind::Trailer);
        for (a, b) in pairs(&fast, &slow).into_iter().filter(|_| has_engine) {
            let (a, b) = (a.unwrap(), b.unwrap());
            if a.id() == CheckId::SpeedSymbol {
                prop_assert_eq!((a.verdict(), a.limit()), (b.verdict(), b.limit()));
            }
        }
    }

    /// The same tire above every ceiling of practice is within only at the maker's own pressures.
    #[test]
    fn no_tire_is_within_at_any_pressure(vehicle in vehicle(), setups in setups(), pressure in 400.0..1200.0) {
        let pumped = |setup: Option<Setup>| setup.map(|s| {
            drop_keys(&s, &["max_kpa", "pressure_full_load_kpa", "reference_kpa"]).with_pressure(kpa(pressure)).unwrap()
        });
        let proposed = Setups { front: pumped(setups.front), rear: pumped(setups.rear) };
        let report = judge(&vehicle, &Change { original: setups, proposed }, &Limits::default());
        for (place, axle, setup) in [
            (Position::Front, vehicle.front(), proposed.front),
            (Position::Rear, vehicle.rear(), proposed.rear),
        ] {
            let (Some(check), Some(setup)) = (report.get(CheckId::Inflation, place), setup) else { continue };
            let placards = axle.map(|a| [a.placard(), a.placard_full_load()]).into_iter().flatten().flatten();
            if placards.fold(kpa(0.0), |a, b| a.max(b)) >= kpa(pressure) {
                continue;
            }
            let class = setup.tire().size().class();
            if matches!(class, SizeClass::Passenger | SizeClass::HighLoad | SizeClass::PMetric) {
                prop_assert!(!matches!(check.verdict(), Verdict::Within | Verdict::Marginal), "{}", check);
            }
            if pressure > 1.1 * 550.0 {
                prop_assert_ne!(check.verdict(), Verdict::Within, "{}", check);
            }
        }
    }

    #[test]
    fn every_missing_fact_is_listed_once_and_the_one_that_settles_most_first(vehicle in vehicle(), change in change(), limits in limits()) {
        let report = judge(&vehicle, &change, &limits);
        let listed: Vec<_> = report.measurements().map(|m| (m.input(), m.position())).collect();
        for (n, fact) in listed.iter().enumerate() {
            prop_assert!(!listed[..n].contains(fact), "{:?} twice", fact);
        }
        let lacking: Vec<Check> = report.checks().filter(|c| c.verdict() == Verdict::NotAssessed).collect();
        for check in &lacking {
            for input in check.missing() {
                let path = input.at(check.position()).to_string();
                // On which axle the vehicle lacks a fact, it does not say itself.
                let is_listed = listed.iter().any(|&(other, place)| {
                    other == input && (path.contains('*') || other.at(place).to_string() == path)
                });
                prop_assert_eq!(is_listed, input.access() != Preparation::Elsewhere, "{}", check);
            }
        }
        // What is settled by itself is settled at once: such counts never grow down the list.
        let alone: Vec<usize> = report.measurements().map(|m| m.settles_alone().count()).collect();
        if let Some(&first) = alone.first() {
            prop_assert_eq!(first, alone.iter().copied().max().unwrap());
        }
        for measurement in report.measurements() {
            for check in measurement.settles_alone() {
                prop_assert_eq!(check.missing().count(), 1);
                prop_assert!(lacking.contains(&check) && check.missing().next() == Some(measurement.input()));
            }
            for check in measurement.settles_with_others() {
                prop_assert!(lacking.contains(&check) && check.missing().any(|m| m == measurement.input()));
            }
        }
    }

    #[test]
    fn removing_an_input_only_leaves_checks_unassessed(vehicle in vehicle(), change in change(), which in 0usize..REMOVALS.len()) {
        let (remove, touched) = REMOVALS[which];
        let (mut less_vehicle, mut less_change) = (vehicle.clone(), change);
        remove(&mut less_vehicle, &mut less_change);
        let limits = Limits::default();
        let (before, after) = (judge(&vehicle, &change, &limits), judge(&less_vehicle, &less_change, &limits));
        for (a, b) in pairs(&before, &after) {
            // The kind of vehicle tells of axles that nothing else does; nothing is assessed of them.
            let (Some(a), Some(b)) = (a, b) else {
                let only = a.or(b).unwrap();
                // A motorcycle has no ends.
                let without_ends = vehicle.kind() == Some(Kind::Motorcycle) && OF_AN_END.contains(&only.id());
                prop_assert!(which == 0 && (without_ends || only.verdict() == Verdict::NotAssessed), "{}", only);
                continue;
            };
            // What a stated fact had put out of question is asked again without it.
            if a.verdict() == Verdict::NotApplicable {
                continue;
            }
            // Of a motorcycle's tire, what is described from the other side is left.
            if vehicle.kind() == Some(Kind::Motorcycle) && OF_AN_END.contains(&a.id()) {
                continue;
            }
            // A normal load above the permitted one stands for it while it is known.
            let loads = vehicle.front().and_then(|axle| axle.normal_load().zip(axle.max_load()));
            if matches!(a.id(), CheckId::TireLoad | CheckId::WheelLoad | CheckId::Inflation)
                && touched.contains(&CheckId::LoadReserve)
                && loads.is_some_and(|(normal, permitted)| normal > permitted)
            {
                continue;
            }
            // What the placard settled, the law of load may settle too, if not as well.
            let is_settled = matches!(b.verdict(), Verdict::Within | Verdict::Marginal);
            if a.reason() == Reason::PressureOnPlacard && is_settled {
                continue;
            }
            // Without what sets it apart, a setup is the original.
            if b.reason() == Reason::Unchanged {
                continue;
            }
            // What is known may still decide: a limit broken with whatever is not known at its best.
            let still_beyond = a.verdict() == Verdict::Beyond && b.verdict() == Verdict::Beyond;
            if (a.verdict(), a.reason()) != (b.verdict(), b.reason()) && !still_beyond {
                // By its stated kind: a motorcycle whose hub is not said to have a bolt circle has none, and a trailer
                // whose steering is not described does not steer.
                let by_kind = matches!(vehicle.kind(), Some(Kind::Motorcycle | Kind::Trailer));
                // Without the brake that contradicted it, what is said of the axle stands.
                let unbraked = vehicle.front().is_some_and(|a| a.unbraked() == Some(true));
                if (by_kind || unbraked && a.id() == CheckId::BrakeClearance) && b.verdict() == Verdict::NotApplicable {
                    continue;
                }
                // The only axle of a trailer steers if that is described, and not otherwise.
                if vehicle.kind() == Some(Kind::Trailer) && a.id() == CheckId::SweptClearance {
                    continue;
                }
                // The barrel that was measured may be larger than the largest of the standard, which then decides.
                if a.id() == CheckId::BrakeClearance && b.verdict() == Verdict::Beyond {
                    prop_assert!(matches!(b.reason(), Reason::BarrelTouchesBrake | Reason::DiscDoesNotFit));
                    continue;
                }
                // The disc alone makes an estimate, which never says that the brake clears.
                if a.id() == CheckId::BrakeClearance && b.verdict() == Verdict::Marginal {
                    prop_assert!(matches!(b.reason(), Reason::DiscUnusual | Reason::TouchedByTheFigures));
                    continue;
                }
                // Of a guard, what is marginal on the end that is left stands.
                if a.id() == CheckId::WheelGuard && b.verdict() == Verdict::Marginal {
                    prop_assert!(touched.contains(&a.id()) && a.verdict() == Verdict::Beyond, "{} -> {}", a, b);
                    continue;
                }
                prop_assert_eq!(b.verdict(), Verdict::NotAssessed, "removal {}: {} -> {}", which, a, b);
                prop_assert!(touched.contains(&a.id()), "removal {}: {} -> {}", which, a, b);
            }
        }
    }
}

const OF_AN_END: [CheckId; 4] =
    [CheckId::TireAge, CheckId::Tread, CheckId::Mounting, CheckId::SweptClearance];

type Removal = (fn(&mut Vehicle, &mut Change), &'static [CheckId]);

/// A record without some of its facts: written out, the keys dropped, and read again.
fn drop_keys<T: serde::Serialize + serde::de::DeserializeOwned>(record: &T, keys: &[&str]) -> T {
    let mut value = serde_json::to_value(record).unwrap();
    for key in keys {
        value.as_object_mut().unwrap().remove(*key);
    }
    serde_json::from_value(value).unwrap()
}

/// The front axle without some facts.
fn less_axle(vehicle: &mut Vehicle, keys: &[&str]) {
    if let Some(axle) = vehicle.front() {
        *vehicle = vehicle.clone().with_front(drop_keys(axle, keys));
    }
}

fn less_hub(vehicle: &mut Vehicle, keys: &[&str]) {
    if let Some((axle, hub)) = vehicle.front().and_then(|a| a.hub().map(|h| (a, h))) {
        *vehicle = vehicle.clone().with_front(axle.clone().with_hub(drop_keys(&hub, keys)));
    }
}

fn less_space(vehicle: &mut Vehicle, keys: &[&str]) {
    if let Some((axle, space)) = vehicle.front().and_then(|a| a.space().map(|s| (a, s))) {
        *vehicle = vehicle.clone().with_front(axle.clone().with_space(drop_keys(space, keys)));
    }
}

fn less_setup(change: &mut Change, keys: &[&str]) {
    if let Some(setup) = change.proposed.front {
        change.proposed.front = Some(drop_keys(&setup, keys));
    }
}

fn less_tire(change: &mut Change, keys: &[&str]) {
    if let Some((setup, tire)) = change.proposed.front.and_then(|s| s.left().map(|t| (s, t))) {
        change.proposed.front = Some(setup.with_left(drop_keys(&tire, keys)));
    }
}

const REMOVALS: &[Removal] = &[
    (
        |v, _| *v = drop_keys(v, &["kind"]),
        &[
            CheckId::RimWidth,
            CheckId::RimContour,
            CheckId::TireLoad,
            CheckId::TireLoadVsOriginal,
            CheckId::Inflation,
            CheckId::LoadReserve,
            CheckId::WheelLoad,
            CheckId::BoltCircle,
            CheckId::CentreBore,
            CheckId::FastenerThread,
            CheckId::FastenerSeat,
            CheckId::ThreadEngagement,
            CheckId::OverallDiameter,
            CheckId::Speedometer,
            CheckId::AxleMatch,
            CheckId::Track,
            CheckId::ScrubRadius,
            CheckId::OuterClearance,
            CheckId::InnerClearance,
            CheckId::UpperClearance,
            CheckId::RideHeight,
            CheckId::GroundClearance,
            CheckId::DualSpacing,
            CheckId::WheelGuard,
            CheckId::ChainClearance,
            CheckId::SweptClearance,
            CheckId::TireAge,
            CheckId::Tread,
            CheckId::Mounting,
        ],
    ),
    (
        |v, _| *v = drop_keys(v, &["drive"]),
        &[CheckId::Speedometer, CheckId::AxleMatch, CheckId::ChainClearance],
    ),
    (
        |v, _| *v = drop_keys(v, &["top_speed_kmh"]),
        &[CheckId::TireLoad, CheckId::Inflation, CheckId::SpeedSymbol, CheckId::Speedometer],
    ),
    (|v, _| *v = drop_keys(v, &["stability_control"]), &[CheckId::AxleMatch]),
    (|v, _| less_axle(v, &["max_load_kg"]), &[CheckId::TireLoad, CheckId::Inflation, CheckId::WheelLoad]),
    (
        |v, _| less_axle(v, &["normal_load_kg"]),
        &[CheckId::TireLoad, CheckId::WheelLoad, CheckId::Inflation, CheckId::LoadReserve],
    ),
    (|v, _| less_axle(v, &["track_mm"]), &[CheckId::Track, CheckId::SweptClearance]),
    (|v, _| less_axle(v, &["travel"]), &[CheckId::SweptClearance]),
    (|v, _| less_space(v, &["obstacles"]), &[CheckId::SweptClearance]),
    (
        |v, _| less_axle(v, &["placard_kpa", "placard_full_load_kpa"]),
        &[CheckId::TireLoadVsOriginal, CheckId::Inflation, CheckId::LoadReserve],
    ),
    (|v, _| less_axle(v, &["steering"]), &[CheckId::ScrubRadius, CheckId::SweptClearance]),
    (|v, _| less_hub(v, &["bolt_circle"]), &[CheckId::BoltCircle]),
    (|v, _| less_hub(v, &["spigot_mm"]), &[CheckId::CentreBore]),
    (|v, _| less_hub(v, &["spigot_height_mm"]), &[CheckId::CentreBore]),
    (|v, _| less_hub(v, &["thread"]), &[CheckId::FastenerThread, CheckId::ThreadEngagement]),
    (|v, _| less_hub(v, &["fastening"]), &[CheckId::FastenerThread, CheckId::ThreadEngagement]),
    (|v, _| less_hub(v, &["stud_length_mm"]), &[CheckId::ThreadEngagement]),
    (|v, _| less_axle(v, &["brake"]), &[CheckId::BrakeClearance]),
    (|_, c| less_setup(c, &["disc_thickness_mm"]), &[CheckId::ThreadEngagement]),
    (
        |_, c| less_setup(c, &["barrel_radius_mm", "barrel_thickness_mm"]),
        &[CheckId::BrakeClearance, CheckId::SweptClearance],
    ),
    (|_, c| less_setup(c, &["spoke_back_mm"]), &[CheckId::BrakeClearance]),
    (|v, _| less_hub(v, &["seat"]), &[CheckId::FastenerSeat]),
    (|v, _| less_space(v, &["guard_overhang_mm"]), &[CheckId::WheelGuard]),
    (|v, _| less_axle(v, &["ground_clearance_mm"]), &[CheckId::GroundClearance]),
    (|v, _| less_space(v, &["inner_clearance_mm"]), &[CheckId::InnerClearance, CheckId::ChainClearance]),
    (|v, _| less_space(v, &["outer_clearance_mm"]), &[CheckId::OuterClearance]),
    (|v, _| less_space(v, &["upper_clearance_mm"]), &[CheckId::UpperClearance, CheckId::ChainClearance]),
    (|_, c| less_setup(c, &["wheel_rating_kg"]), &[CheckId::WheelLoad]),
    (|_, c| less_setup(c, &["seat"]), &[CheckId::FastenerSeat, CheckId::FastenerThread, CheckId::CentreBore]),
    (|_, c| less_setup(c, &["pressure_kpa"]), &[CheckId::TireLoadVsOriginal, CheckId::Inflation]),
    (|_, c| less_setup(c, &["left"]), &[CheckId::TireAge, CheckId::Tread, CheckId::Mounting]),
    (|_, c| less_tire(c, &["date_code"]), &[CheckId::TireAge]),
    (|_, c| less_tire(c, &["tread_mm"]), &[CheckId::Tread]),
];
