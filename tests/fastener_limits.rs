//! Where fasteners are refused, and what the rows of `fastener.rs` do not reach: bounds, uncertainties, orders.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::units::{Ratio, kg, kilonewtons, megapascals, meters, mm, newtons, nm, percent, ratio};
use beadseat::uom::si::f64::Length;
use beadseat::uom::si::{angle::degree, length::millimeter, ratio::ratio as ratios, torque::newton_meter};
use beadseat::wheel::{
    BoltCircle, Seat, Thread,
    tightening::{
        Engagement, Friction, FrictionJoint, NutFactor, SeatContact, Tightening, TighteningOrder,
        recheck_distance, tire_torque, torque_stages,
    },
};
use beadseat::{OutOfRange, Status, Toleranced};

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn m14(contact: SeatContact, mu: Toleranced<Ratio>) -> Tightening {
    Tightening::new("M14x1.5".parse().unwrap(), contact, Friction::new(mu, mu).unwrap())
}

/// Each bound of a domain: accepted at it, refused one step past it, and what is not a number always.
#[test]
fn domains() {
    let flat = SeatContact::ring(Seat::Flat, mm(15.0), mm(24.0)).unwrap();
    let of = |mu| Friction::new(Toleranced::exact(ratio(mu)), Toleranced::exact(ratio(0.1)));
    let on_seat = |mu| Friction::new(Toleranced::exact(ratio(0.1)), Toleranced::exact(ratio(mu)));
    for friction in [of, on_seat] as [fn(f64) -> Result<Friction, OutOfRange>; 2] {
        assert!(friction(0.03).is_ok() && friction(0.5).is_ok());
        for mu in [0.0299, 0.5001, 0.0, -0.1, f64::NAN, f64::INFINITY] {
            assert!(friction(mu).is_err(), "{mu}");
        }
    }
    let tilted = Toleranced::within(ratio(0.1), ratio(0.08));
    assert_eq!(Friction::new(tilted, tilted).unwrap_err().what(), "thread friction");

    let bolt = m14(flat, Toleranced::exact(ratio(0.12)));
    let k = NutFactor::new(Toleranced::exact(ratio(0.2))).unwrap();
    let thread: Thread = "M14x1.5".parse().unwrap();
    for torque in [0.1, 5000.0] {
        let torque = Toleranced::exact(nm(torque));
        assert!(bolt.preload(torque).is_ok() && bolt.combined_stress(torque).is_ok());
        assert!(k.preload(thread, torque).is_ok());
    }
    for torque in [0.0, 0.0999, 5000.1, -140.0, f64::NAN, f64::INFINITY] {
        let torque = Toleranced::exact(nm(torque));
        assert!(bolt.preload(torque).is_err() && bolt.combined_stress(torque).is_err());
        assert!(k.preload(thread, torque).is_err());
    }
    for force in [0.0, 0.999, 1e6 + 1.0, -1e4, f64::NAN] {
        assert!(bolt.torque_for(newtons(force)).is_err(), "{force}");
        assert!(k.torque_for(thread, newtons(force)).is_err(), "{force}");
        assert!(bolt.share_of(newtons(force), Toleranced::exact(nm(140.0))).is_err(), "{force}");
    }
    for stress in [99.9, 2000.1, f64::NAN] {
        assert!(bolt.clamp_at_yield(megapascals(stress)).is_err(), "{stress}");
    }
    for factor in [0.0299, 1.001, f64::NAN] {
        assert!(NutFactor::new(Toleranced::exact(ratio(factor))).is_err(), "{factor}");
    }
}

#[test]
fn contacts() {
    for (seat, radius, accepted) in [
        (Seat::BallR14, 13.86, true),
        (Seat::BallR14, 13.87, false),
        (Seat::BallR12, 11.8, true),
        (Seat::BallR12, 12.0, false),
        (Seat::Cone60, 100.0, true),
        (Seat::Cone60, 100.1, false),
        (Seat::Flat, 1.0, true),
        (Seat::Flat, 0.99, false),
        (Seat::Flat, -8.0, false),
        (Seat::Flat, f64::NAN, false),
    ] {
        assert_eq!(SeatContact::circle(seat, mm(radius)).is_ok(), accepted, "{seat} at {radius} mm");
        let ring = SeatContact::ring(seat, mm(2.0 * radius), mm(2.0 * radius));
        assert_eq!(ring.is_ok(), accepted, "{seat} at {radius} mm");
    }
    assert!(SeatContact::ring(Seat::BallR14, mm(20.0), mm(27.8)).is_err(), "outside the ball");
    assert!(SeatContact::ring(Seat::Flat, mm(23.0), mm(13.0)).is_err(), "inside out");
    // A shank's washer bears flat; a narrower cone wedges harder.
    let lever = |seat| SeatContact::ring(seat, mm(13.0), mm(23.0)).unwrap().friction_lever();
    assert_eq!(lever(Seat::Shank), mm(9.0));
    assert_eq!(lever(Seat::Shank), lever(Seat::Flat));
    assert!((lever(Seat::Cone60) - mm(18.0)).abs() < mm(1e-9));
    assert!(lever(Seat::Cone60) > lever(Seat::Cone80) && lever(Seat::Cone80) > lever(Seat::Cone90));
    for seat in Seat::ALL {
        assert_eq!(seat.to_string().starts_with("cone"), seat.cone_angle().is_some(), "{seat}");
        assert_eq!(seat.to_string().starts_with("ball"), seat.ball_radius().is_some(), "{seat}");
        let text = seat.to_string();
        let number = text.split([' ', 'R']).filter_map(|word| word.parse().ok()).collect::<Vec<f64>>();
        let given = [seat.cone_angle().map(|a| a.get::<degree>()), seat.ball_radius().map(in_mm)];
        let given: Vec<f64> = given.into_iter().flatten().map(f64::round).collect();
        assert_eq!(given, number, "{seat}");
    }
}

/// A torque's share of the proof load, and a joint held against what its tire can ask for.
#[test]
fn shares_and_safety() {
    let ball = SeatContact::circle(Seat::BallR14, mm(9.5)).unwrap();
    let bolt = m14(ball, Toleranced::exact(ratio(0.10)));
    let share = bolt.share_of(kilonewtons(100.0), Toleranced::exact(nm(140.0))).unwrap();
    assert!((share.nominal().get::<ratios>() - 0.611_802_428_43).abs() < 1e-9);

    let holes: BoltCircle = "5x112".parse().unwrap();
    let mu = Toleranced::exact(ratio(0.12));
    let joint = FrictionJoint::new(holes, Toleranced::exact(kilonewtons(40.0)), mu).unwrap();
    let wheel = tire_torque(kg(600.0), percent(90.0), mm(310.0)).unwrap();
    assert!((wheel.get::<newton_meter>() - 600.0 * 9.806_65 * 0.9 * 0.31).abs() < 1e-9);
    let safety = joint.safety_against(wheel).unwrap().nominal().get::<ratios>();
    assert!((safety - 1344.0 / wheel.get::<newton_meter>()).abs() < 1e-12);
    assert!(tire_torque(kg(20_000.0), ratio(3.0), mm(1500.0)).is_ok());
    for (load, grip, radius) in [
        (0.0, 1.0, 300.0),
        (20_001.0, 1.0, 300.0),
        (500.0, 0.0, 300.0),
        (500.0, 3.1, 300.0),
        (500.0, 1.0, 99.0),
        (500.0, 1.0, 1501.0),
        (f64::NAN, 1.0, 300.0),
        (500.0, f64::NAN, 300.0),
        (500.0, 1.0, f64::NAN),
    ] {
        assert!(tire_torque(kg(load), ratio(grip), mm(radius)).is_err(), "{load} {grip} {radius}");
    }
    for torque in [0.0, 0.9, -10.0, 200_001.0, f64::NAN] {
        assert!(joint.safety_against(nm(torque)).is_err(), "{torque}");
    }
    let force = |kilo| FrictionJoint::new(holes, Toleranced::exact(kilonewtons(kilo)), mu);
    assert!(force(0.0).is_err() && force(1000.1).is_err() && force(f64::NAN).is_err());
    let slippery = Toleranced::exact(ratio(0.02));
    assert!(FrictionJoint::new(holes, Toleranced::exact(kilonewtons(40.0)), slippery).is_err());
}

#[test]
fn engagement_at_its_ends() {
    let thread: Thread = "M14x1.5".parse().unwrap();
    let exact = |length| Toleranced::exact(mm(length));
    let of = |usable, disc, spacer| Engagement::new(thread, exact(usable), exact(disc), exact(spacer));
    let short = of(12.0, 15.0, 5.0).unwrap();
    assert!((short.length().nominal() + mm(8.0)).abs() < mm(1e-9), "it does not reach");
    for (usable, disc, spacer) in [
        (0.9, 15.0, 0.0),
        (400.1, 15.0, 0.0),
        (27.0, 0.9, 0.0),
        (27.0, 200.1, 0.0),
        (27.0, 15.0, -0.1),
        (27.0, 15.0, 200.1),
        (f64::NAN, 15.0, 0.0),
        (27.0, f64::NAN, 0.0),
        (27.0, 15.0, f64::NAN),
    ] {
        assert!(of(usable, disc, spacer).is_err(), "{usable} {disc} {spacer}");
    }
    assert!(short.usable_length_to_keep(exact(0.5), exact(0.0)).is_err());
    assert!(short.usable_length_to_keep(exact(15.0), exact(201.0)).is_err());

    // Uncertainties of all three add up at the worst.
    let within = |length| Toleranced::within(mm(length), mm(0.5));
    let measured = Engagement::new(thread, within(30.0), within(15.0), within(5.0)).unwrap();
    assert!((measured.length().min() - mm(8.5)).abs() < mm(1e-9));
    assert!((measured.length().max() - mm(11.5)).abs() < mm(1e-9));
    // A hole 11 mm deep holds it at nominal, but not at the worst.
    let room = measured.room_in(exact(11.0));
    assert!(room.nominal() > mm(0.99) && room.min() < mm(-0.49) && room.max() < mm(2.51));

    let limits = |pitch, minor| thread.min_engagement(mm(pitch), mm(minor));
    assert!(limits(13.025, 12.377).is_ok());
    assert!(limits(12.16, 12.16).is_err(), "below the basic minor diameter");
    for (pitch, minor) in
        [(13.03, 12.5), (12.15, 12.1), (12.9, 12.37), (12.6, 12.7), (f64::NAN, 12.5), (12.9, f64::NAN)]
    {
        assert!(limits(pitch, minor).is_err(), "{pitch} {minor}");
    }
    assert_eq!(limits(12.3, 12.2).unwrap_err().what(), "least pitch diameter");
    // Thinner threads need more of them.
    assert!(limits(12.8, 12.7).unwrap() > limits(13.0, 12.4).unwrap());
}

#[test]
fn orders_and_stages() {
    let orders: [(u8, &[u8]); 10] = [
        (3, &[1, 2, 3]),
        (4, &[1, 3, 2, 4]),
        (5, &[1, 3, 5, 2, 4]),
        (6, &[1, 4, 2, 5, 3, 6]),
        (7, &[1, 4, 7, 3, 6, 2, 5]),
        (8, &[1, 5, 3, 7, 2, 6, 4, 8]),
        (9, &[1, 5, 9, 4, 8, 3, 7, 2, 6]),
        (10, &[1, 6, 3, 8, 5, 10, 7, 2, 9, 4]),
        (11, &[1, 6, 11, 5, 10, 4, 9, 3, 8, 2, 7]),
        (12, &[1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12]),
    ];
    for (count, holes) in orders {
        let order = TighteningOrder::new(count).unwrap();
        assert!(order.holes().eq(holes.iter().copied()), "{count}");
        assert_eq!(TighteningOrder::of(format!("{count}x120").parse().unwrap()), order);
        assert_eq!(order.citation().status(), Status::CommonPractice);
    }
    for count in [0, 1, 2, 13, 255] {
        assert!(TighteningOrder::new(count).is_err(), "{count}");
    }
    let stages = torque_stages(nm(200.0)).map(|torque| torque.get::<newton_meter>());
    for (stage, expected) in stages.iter().zip([60.0, 120.0, 200.0]) {
        assert!((stage - expected).abs() < 1e-9);
    }
    let again = recheck_distance();
    assert_eq!((*again.start(), *again.end()), (meters(50_000.0), meters(100_000.0)));
}
