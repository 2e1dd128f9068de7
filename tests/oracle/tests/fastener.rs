//! Laws of tightening, and its mechanics against forces and stresses as vectors and tensors.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]
#![allow(clippy::disallowed_methods, reason = "functions that are not those of the crate")]

use beadseat::Toleranced;
use beadseat::units::{
    Force, Length, Ratio, Stress, Torque, kg, kilonewtons, megapascals, mm, newtons, nm, ratio,
};
use beadseat::uom::si::{
    area::square_millimeter, force::newton, length::millimeter, pressure::megapascal, ratio::ratio as ratios,
    torque::newton_meter,
};
use beadseat::wheel::{
    BoltCircle, PropertyClass, Seat, Thread,
    tightening::{
        Engagement, Friction, FrictionJoint, NutFactor, SeatContact, Tightening, TighteningOrder, TorqueBand,
        tire_torque,
    },
};
use nalgebra::{Matrix3, Rotation3, Vector3};
use proptest::prelude::*;
use proptest::sample::select;

const THREADS: &[&str] = &[
    "M10x1.25", "M10x1.5", "M12x1.25", "M12x1.5", "M12x1.75", "M14x1.25", "M14x1.5", "M14x2", "M16x1.5",
    "M18x1.5", "M20x1.5", "M22x1.5", "M30x3.5", "3/8-24", "7/16-20", "1/2-13", "1/2-20", "9/16-18", "5/8-18",
    "3/4-16", "7/8-14", "1-14", "1 1/8-12",
];

fn thread() -> impl Strategy<Value = Thread> {
    select(THREADS).prop_map(|text| text.parse().unwrap())
}

fn contact() -> impl Strategy<Value = SeatContact> {
    (select(Seat::ALL), 6.0..11.8).prop_map(|(seat, radius)| SeatContact::circle(seat, mm(radius)).unwrap())
}

/// Three numbers of a range in order: least, one between, greatest.
fn ordered(least: f64, most: f64) -> impl Strategy<Value = [f64; 3]> {
    prop_oneof![
        1 => (least..=most).prop_map(|x| [x; 3]),
        9 => [least..=most, least..=most, least..=most].prop_map(|mut three| {
            three.sort_by(f64::total_cmp);
            three
        }),
    ]
}

fn toleranced<Q: Copy + PartialOrd>([min, nominal, max]: [f64; 3], unit: fn(f64) -> Q) -> Toleranced<Q> {
    Toleranced::new(unit(min), unit(nominal), unit(max)).unwrap()
}

fn friction(thread: [f64; 3], seat: [f64; 3]) -> Friction {
    Friction::new(toleranced(thread, ratio), toleranced(seat, ratio)).unwrap()
}

/// What a careless or hostile caller may send: any number, the odd ones, and some that are accepted.
fn hostile() -> impl Strategy<Value = f64> {
    let odd = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, f64::MIN_POSITIVE, f64::MAX, 5e-324];
    prop_oneof![3 => any::<f64>(), 2 => select(odd.to_vec()), 3 => -10.0..1000.0, 2 => 0.0..0.6]
}

fn between([min, _, max]: [f64; 3], share: f64) -> f64 {
    (min + (max - min) * share).clamp(min, max)
}

fn exact(torque: f64) -> Toleranced<Torque> {
    Toleranced::exact(nm(torque))
}

fn in_n(force: Force) -> f64 {
    force.get::<newton>()
}

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn relative(a: f64, b: f64) -> f64 {
    (a / b - 1.0).abs()
}

/// Whether a value lies between bounds that were reached by another way of rounding.
fn holds(bounds: Toleranced<f64>, value: f64) -> bool {
    bounds.min() * (1.0 - 1e-12) <= value && value <= bounds.max() * (1.0 + 1e-12)
}

fn numbers<Q: Copy + PartialOrd>(bounds: Toleranced<Q>, read: fn(Q) -> f64) -> Toleranced<f64> {
    Toleranced::new(read(bounds.min()), read(bounds.nominal()), read(bounds.max())).unwrap()
}

/// Torque for each unit of preload, in millimetres, from the forces on a ring of points that rub on a seat
/// whose surface points along `normal` (outward, tangential, axial), at a radius.
fn seat_torque(normal: Vector3<f64>, radius: f64, mu: f64) -> f64 {
    const POINTS: u32 = 12;
    let (mut preload, mut torque) = (0.0, 0.0);
    for point in 0..POINTS {
        let turn = std::f64::consts::TAU * f64::from(point) / f64::from(POINTS);
        let turned = Rotation3::from_axis_angle(&Vector3::z_axis(), turn);
        let place = turned * Vector3::new(radius, 0.0, 0.0);
        let press = turned * normal;
        let drag = turned * Vector3::new(0.0, mu * normal.norm(), 0.0);
        preload += press.z;
        torque += place.cross(&drag).z;
    }
    torque / preload
}

proptest! {
    #[test]
    fn more_torque_gives_more_preload_and_more_friction_less(
        thread in thread(), contact in contact(), torque in 1.0..1000.0, more in 1.001..3.0,
        mu in 0.03..0.4, nu in 0.03..0.4, rougher in 1.001..1.25,
    ) {
        let of = |mu: f64, nu: f64| Tightening::new(thread, contact, friction([mu; 3], [nu; 3]));
        let preload = |bolt: Tightening, torque| in_n(bolt.preload(exact(torque)).unwrap().nominal());
        let plain = preload(of(mu, nu), torque);
        prop_assert!(preload(of(mu, nu), torque * more) > plain);
        prop_assert!(preload(of(mu * rougher, nu), torque) < plain);
        prop_assert!(preload(of(mu, nu * rougher), torque) < plain);
        prop_assert!(relative(preload(of(mu, nu), torque * more), plain * more) < 1e-9, "in proportion");
        let stress = megapascals(940.0);
        let clamp = |mu| in_n(of(mu, nu).clamp_at_yield(stress).unwrap().nominal());
        prop_assert!(clamp(mu * rougher) < clamp(mu));
        prop_assert!(clamp(mu) < in_n(stress * thread.stress_area()), "torsion takes its part");
    }

    #[test]
    fn torque_and_preload_are_inverse(
        thread in thread(), contact in contact(), mu in ordered(0.03, 0.5), nu in ordered(0.03, 0.5),
        preload in 1e3..1e5,
    ) {
        let bolt = Tightening::new(thread, contact, friction(mu, nu));
        let torque = numbers(bolt.torque_for(newtons(preload)).unwrap(), |t| t.get::<newton_meter>());
        let back = |torque| numbers(bolt.preload(exact(torque)).unwrap(), in_n);
        prop_assert!(relative(back(torque.nominal()).nominal(), preload) < 1e-9);
        // Below the least no friction gives it, from the greatest on every friction does.
        prop_assert!(relative(back(torque.min()).max(), preload) < 1e-9);
        prop_assert!(relative(back(torque.max()).min(), preload) < 1e-9);
    }

    /// One factor for all the friction is the same thing, once it is the factor of these parts.
    #[test]
    fn the_nut_factor_says_the_same(
        thread in thread(), contact in contact(), mu in ordered(0.03, 0.3), nu in ordered(0.03, 0.3),
        torque in ordered(10.0, 700.0), preload in 1e3..1e5,
    ) {
        let bolt = Tightening::new(thread, contact, friction(mu, nu));
        let Ok(short) = NutFactor::new(bolt.nut_factor()) else {
            prop_assert!(bolt.nut_factor().max() > ratio(1.0), "a small bolt in a seat that jams");
            return Ok(());
        };
        let torque = toleranced(torque, nm);
        let [long, short_form] = [bolt.preload(torque), short.preload(thread, torque)].map(Result::unwrap);
        prop_assert!(relative(in_n(long.min()), in_n(short_form.min())) < 1e-9);
        prop_assert!(relative(in_n(long.nominal()), in_n(short_form.nominal())) < 1e-9);
        prop_assert!(relative(in_n(long.max()), in_n(short_form.max())) < 1e-9);
        let preload = newtons(preload);
        let [long, short] = [bolt.torque_for(preload), short.torque_for(thread, preload)].map(Result::unwrap);
        prop_assert!((long.min() - short.min()).abs() < nm(1e-9));
        prop_assert!((long.max() - short.max()).abs() < nm(1e-9));
    }

    /// Whatever friction and torque turn out to be within their bounds, the results are within theirs.
    #[test]
    fn bounds_hold_all_that_lies_between(
        thread in thread(), contact in contact(), mu in ordered(0.03, 0.5), nu in ordered(0.03, 0.5),
        torque in ordered(10.0, 700.0), shares in [0.0..=1.0, 0.0..=1.0, 0.0..=1.0], proof in 1e4..1e6,
    ) {
        let [at_thread, at_seat, at_wrench] = shares;
        let bolt = Tightening::new(thread, contact, friction(mu, nu));
        let real_friction = friction([between(mu, at_thread); 3], [between(nu, at_seat); 3]);
        let real = Tightening::new(thread, contact, real_friction);
        let (torque, real_torque) = (toleranced(torque, nm), exact(between(torque, at_wrench)));

        let preload = |bolt: Tightening, torque| numbers(bolt.preload(torque).unwrap(), in_n);
        prop_assert!(holds(preload(bolt, torque), preload(real, real_torque).nominal()));
        let stress = |bolt: Tightening, torque| {
            numbers(bolt.combined_stress(torque).unwrap(), |s: Stress| s.get::<megapascal>())
        };
        prop_assert!(holds(stress(bolt, torque), stress(real, real_torque).nominal()));
        let lever = |bolt: Tightening| numbers(bolt.torque_per_preload(), in_mm);
        prop_assert!(holds(lever(bolt), lever(real).nominal()));
        let clamp = |bolt: Tightening| numbers(bolt.clamp_at_yield(megapascals(940.0)).unwrap(), in_n);
        prop_assert!(holds(clamp(bolt), clamp(real).nominal()));
        let share = |bolt: Tightening, torque| {
            numbers(bolt.share_of(newtons(proof), torque).unwrap(), |s: Ratio| s.get::<ratios>())
        };
        prop_assert!(holds(share(bolt, torque), share(real, real_torque).nominal()));
        prop_assert!(relative(share(bolt, torque).max() * proof, preload(bolt, torque).max()) < 1e-9);
    }

    /// The bounds of the stress are reached by a friction inside, not merely safe.
    #[test]
    fn stress_bounds_are_no_wider_than_needed(
        thread in thread(), contact in contact(), mu in ordered(0.03, 0.5), nu in ordered(0.03, 0.5),
    ) {
        let stress = |mu, nu| {
            let bolt = Tightening::new(thread, contact, friction(mu, nu));
            numbers(bolt.combined_stress(exact(100.0)).unwrap(), |s: Stress| s.get::<megapascal>())
        };
        let bounds = stress(mu, nu);
        let at = |share: f64, nu: f64| stress([between(mu, share); 3], [nu; 3]).nominal();
        let scan = |nu: f64| (0..=400).map(move |step| at(f64::from(step) / 400.0, nu));
        let least = scan(nu[2]).fold(f64::INFINITY, f64::min);
        let most = scan(nu[0]).fold(0.0, f64::max);
        prop_assert!(relative(bounds.min(), least) < 1e-4, "{} against {least} MPa", bounds.min());
        prop_assert!(relative(bounds.max(), most) < 1e-9, "{} against {most} MPa", bounds.max());
    }

    #[test]
    fn the_lever_of_a_seat_is_that_of_the_forces_on_it(contact in contact(), mu in 0.03..0.5) {
        let (seat, radius) = (contact.seat(), in_mm(contact.mean_radius()));
        let normal = if let Some(angle) = seat.cone_angle() {
            let half = angle.value / 2.0;
            Vector3::new(half.cos(), 0.0, half.sin())
        } else if let Some(ball) = seat.ball_radius() {
            // From the centre of the ball to the point.
            Vector3::new(radius, 0.0, (in_mm(ball).powi(2) - radius.powi(2)).sqrt())
        } else {
            Vector3::z()
        };
        let expected = seat_torque(normal, radius, mu);
        prop_assert!(relative(in_mm(contact.friction_lever()) * mu, expected) < 1e-9, "{seat}");
    }

    /// Forces on a flank of the thread in space: it rises along the helix and leans 30° outward. The
    /// textbook form leans it in the axial plane and not across the helix, which differs by less than the
    /// square of the lead.
    #[test]
    fn the_thread_climbs_as_its_flank_pushes(thread in thread(), mu in 0.03..0.5) {
        let radius = in_mm(thread.pitch_diameter()) / 2.0;
        let lead = thread.lead_angle().value;
        let along = Vector3::new(0.0, lead.cos(), lead.sin());
        let lean = std::f64::consts::FRAC_PI_6;
        let across = Vector3::new(lean.cos(), 0.0, -lean.sin());
        let normal = across.cross(&along).normalize();
        // The bolt is turned upward: the flank holds it back along the helix.
        let force: Vector3<f64> = normal - along * mu;
        let expected = radius * -force.y / force.z;

        let seat = SeatContact::circle(Seat::Flat, mm(10.0)).unwrap();
        let bolt = Tightening::new(thread, seat, friction([mu; 3], [0.1; 3]));
        let computed = in_mm(bolt.torque_per_preload().nominal()) - 10.0 * 0.1;
        prop_assert!(relative(computed, expected) < lead * lead, "{computed} against {expected} mm");
    }

    /// Von Mises from the whole stress tensor: tension of the preload, shear of the thread's part of the
    /// torque on a rod of the stress diameter.
    #[test]
    fn combined_stress_is_that_of_the_tensor(
        thread in thread(), contact in contact(), mu in 0.03..0.5, nu in 0.03..0.5, torque in 10.0..700.0,
    ) {
        let bolt = Tightening::new(thread, contact, friction([mu; 3], [nu; 3]));
        let preload = in_n(bolt.preload(exact(torque)).unwrap().nominal());
        let rod = in_mm(thread.stress_diameter());
        let tension = preload / thread.stress_area().get::<square_millimeter>();
        let thread_torque = torque * 1000.0 - preload * nu * in_mm(contact.friction_lever());
        let polar_moment = std::f64::consts::PI * rod.powi(4) / 32.0;
        let shear = thread_torque * (rod / 2.0) / polar_moment;
        let tensor = Matrix3::new(tension, shear, 0.0, shear, 0.0, 0.0, 0.0, 0.0, 0.0);
        let deviator = tensor - Matrix3::identity() * (tensor.trace() / 3.0);
        let expected = (1.5 * deviator.norm_squared()).sqrt();

        let stress = bolt.combined_stress(exact(torque)).unwrap().nominal();
        prop_assert!(relative(stress.get::<megapascal>(), expected) < 1e-9, "{stress:?}, {expected} MPa");
        prop_assert!(relative(bolt.shear_to_tension().nominal().get::<ratios>(), shear / tension) < 1e-9);
        // At the clamp of a yield stress that stress is the combined one.
        let yielding = stress.max(megapascals(100.0)).min(megapascals(2000.0));
        let clamp = in_n(bolt.clamp_at_yield(yielding).unwrap().nominal());
        prop_assert!(relative(clamp * expected, preload * yielding.get::<megapascal>()) < 1e-9);
    }

    #[test]
    fn a_joint_slips_where_its_fasteners_together_do(
        count in 3_u8..=12, diameter in 60_u32..=400, clamp in ordered(1e3, 2e5), mu in ordered(0.03, 0.5),
        wheel in (50.0..3000.0, 0.1..1.5, 200.0..600.0),
    ) {
        let holes: BoltCircle = format!("{count}x{diameter}").parse().unwrap();
        let joint = FrictionJoint::new(holes, toleranced(clamp, newtons), toleranced(mu, ratio)).unwrap();
        let slip = numbers(joint.slip_torque(), |t: Torque| t.get::<newton_meter>());
        let together = |clamp: f64, mu: f64| {
            let pull = Vector3::new(0.0, clamp * mu, 0.0);
            let hole = Vector3::new(f64::from(diameter) / 2000.0, 0.0, 0.0);
            (0..count).map(|_| hole.cross(&pull).z).sum::<f64>()
        };
        for (computed, at) in [(slip.min(), 0), (slip.nominal(), 1), (slip.max(), 2)] {
            prop_assert!(relative(computed, together(clamp[at], mu[at])) < 1e-9);
        }
        let (load, grip, radius) = wheel;
        let torque = tire_torque(kg(load), ratio(grip), mm(radius)).unwrap();
        let safety = joint.safety_against(torque).unwrap();
        let asked = load * 9.806_65 * grip * radius / 1000.0;
        prop_assert!(relative(safety.min().get::<ratios>() * asked, slip.min()) < 1e-9);
        prop_assert!(relative(safety.max().get::<ratios>() * asked, slip.max()) < 1e-9);
    }

    #[test]
    fn engagement_is_linear(
        thread in thread(), usable in ordered(20.0, 60.0), disc in ordered(5.0, 25.0),
        spacer in ordered(0.0, 30.0), step in 0.0..20.0,
    ) {
        let plus = |three: [f64; 3], step: f64| three.map(|x| x + step);
        let of = |usable, disc, spacer| {
            let [usable, disc, spacer] = [usable, disc, spacer].map(|three| toleranced(three, mm));
            Engagement::new(thread, usable, disc, spacer).unwrap()
        };
        let three = |length: Toleranced<Length>| [length.min(), length.nominal(), length.max()].map(in_mm);
        let near = |a: [f64; 3], b: [f64; 3]| a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-9);

        let plain = of(usable, disc, spacer);
        let length = three(plain.length());
        prop_assert!(near(length, [0, 1, 2].map(|i| usable[i] - disc[2 - i] - spacer[2 - i])));
        prop_assert!(near(three(of(plus(usable, step), disc, spacer).length()), plus(length, step)));
        prop_assert!(near(three(of(usable, plus(disc, step), spacer).length()), plus(length, -step)));
        prop_assert!(near(three(of(usable, disc, plus(spacer, step)).length()), plus(length, -step)));

        let turns = plain.turns().nominal().get::<ratios>();
        prop_assert!((turns * in_mm(thread.pitch_length()) - length[1]).abs() < 1e-9);
        let depth = Toleranced::exact(mm(step));
        prop_assert!((in_mm(plain.room_in(depth).min()) - (step - length[2])).abs() < 1e-9);

        // As much thread holds behind a spacer that takes away what the fastener gains.
        let exact = |length: f64| Toleranced::exact(mm(length));
        let needed = in_mm(plain.usable_length_to_keep(exact(disc[1]), exact(step)).unwrap().nominal());
        prop_assume!(needed >= 1.0);
        let longer = Engagement::new(thread, exact(needed), exact(disc[1]), exact(step)).unwrap();
        prop_assert!((in_mm(longer.length().nominal()) - length[1]).abs() < 1e-9);
    }

    /// At the least engagement the sheared area of the threads is twice the stress area, the strength in
    /// shear being half that in tension.
    #[test]
    fn the_least_engagement_shears_as_it_breaks(
        thread in thread(), thinner in 0.0..0.5, wider in 0.01..0.99,
    ) {
        let [basic, minor] = [thread.pitch_diameter(), thread.minor_diameter()].map(in_mm);
        let es = basic - (basic - minor) * thinner;
        let kn = minor + (es - minor) * wider;
        let least = |es, kn| in_mm(thread.min_engagement(mm(es), mm(kn)).unwrap());
        let (length, pitch) = (least(es, kn), in_mm(thread.pitch_length()));
        // Width of one thread of the bolt where the nut's tips cut it, once in each pitch.
        let width = pitch / 2.0 + (es - kn) * 0.577_35;
        let sheared = std::f64::consts::PI * kn * width * (length / pitch);
        let stress_area = thread.stress_area().get::<square_millimeter>();
        prop_assert!(relative(sheared, 2.0 * stress_area) < 1e-9);
        prop_assert!(least(es - (es - kn) * 0.1, kn) > length, "a thinner bolt needs more");
        prop_assert!(least(es, kn + (es - kn) * 0.1) > length, "a wider hole needs more");
    }

    /// Any number at all is accepted or refused, and what was accepted computes without a panic.
    #[test]
    fn any_number_is_answered(
        thread in thread(), seat in select(Seat::ALL), numbers in [hostile(), hostile(), hostile()],
        scale in select(&[1.0, 1e-3, 1e3, -1.0, 0.0, f64::NAN, f64::INFINITY][..]), count in any::<u8>(),
    ) {
        let [a, b, c] = numbers;
        let any_ratio = [Toleranced::within(ratio(a), ratio(b)), Toleranced::exact(ratio(c)) * scale];
        let any_length = [Toleranced::within(mm(a), mm(b)), Toleranced::exact(mm(c)) * scale];
        let any_torque = Toleranced::within(nm(b), nm(c));
        let any_force = Toleranced::within(newtons(c), newtons(a));
        let fine = Toleranced::exact(ratio(0.12));
        let flat = SeatContact::circle(Seat::Flat, mm(10.0)).unwrap();
        let contacts = [SeatContact::ring(seat, mm(a), mm(b)), SeatContact::circle(seat, mm(c)), Ok(flat)];
        let frictions = [
            Friction::new(any_ratio[0], any_ratio[1]),
            Friction::new(any_ratio[1], fine),
            Friction::new(fine, fine),
        ];
        for contact in contacts.into_iter().flatten() {
            prop_assert!(contact.friction_lever() >= contact.mean_radius() && contact.mean_radius() > mm(0.0));
            for friction in frictions.into_iter().flatten() {
                let bolt = Tightening::new(thread, contact, friction);
                prop_assert!(bolt.nut_factor().min() > ratio(0.0));
                if let Ok(preload) = bolt.preload(any_torque) {
                    prop_assert!(preload.min() > newtons(0.0));
                }
                if let Ok(stress) = bolt.combined_stress(any_torque) {
                    prop_assert!(stress.min() > megapascals(0.0));
                }
                if let Ok(clamp) = bolt.clamp_at_yield(megapascals(a)) {
                    prop_assert!(clamp.min() > newtons(0.0));
                }
                prop_assert_eq!(bolt.torque_for(newtons(c)).is_ok(), (1.0..=1e6).contains(&c));
            }
        }
        for factor in any_ratio {
            if let Ok(factor) = NutFactor::new(factor) {
                let _ = (factor.preload(thread, any_torque), factor.torque_for(thread, newtons(a)));
            }
            let holes: BoltCircle = "5x112".parse().unwrap();
            for clamp in [any_force, Toleranced::exact(kilonewtons(40.0))] {
                if let Ok(joint) = FrictionJoint::new(holes, clamp, factor) {
                    prop_assert!(joint.slip_torque().min() > nm(0.0));
                    let _ = joint.safety_against(nm(a));
                }
            }
        }
        let _ = (tire_torque(kg(a), ratio(b), mm(c)), thread.min_engagement(mm(a), mm(b)));
        let fit = Toleranced::exact(mm(15.0));
        for usable in [any_length[0], fit] {
            if let Ok(engagement) = Engagement::new(thread, usable, fit, any_length[1]) {
                let _ = (engagement.turns(), engagement.usable_length_to_keep(fit, any_length[0]));
            }
        }
        if let Some(band) = TorqueBand::of(thread) {
            let _ = band.holds(nm(a));
        }
        for class in PropertyClass::ALL {
            prop_assert_eq!(class.proof_load(thread).is_some(), class.yield_stress(thread).is_some());
        }
        prop_assert_eq!(TighteningOrder::new(count).is_ok(), (3..=12).contains(&count));
    }
}

/// There are only ten counts, so all are tried.
#[test]
fn an_order_takes_each_hole_once_and_goes_across() {
    for count in 3..=12_u8 {
        let order: Vec<u8> = TighteningOrder::new(count).unwrap().holes().collect();
        let mut sorted = order.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, (1..=count).collect::<Vec<u8>>(), "each hole once");
        assert_eq!(order[0], 1);
        let apart = |a: u8, b: u8| a.abs_diff(b).min(count - a.abs_diff(b));
        if count >= 5 {
            assert!(order.windows(2).all(|two| apart(two[0], two[1]) >= 2), "no neighbours: {order:?}");
        }
        if count % 2 == 0 {
            let pairs: Vec<&[u8]> = order.chunks(2).collect();
            assert!(pairs.iter().all(|pair| apart(pair[0], pair[1]) == count / 2), "opposite: {order:?}");
            if count % 4 == 0 {
                for two in pairs.chunks(2) {
                    assert_eq!(apart(two[0][0], two[1][0]), count / 4, "at right angles: {order:?}");
                }
            }
        } else {
            let star = order.windows(2).all(|two| apart(two[0], two[1]) == (count - 1) / 2);
            assert!(star, "most nearly opposite: {order:?}");
        }
    }
}
