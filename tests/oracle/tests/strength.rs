//! Laws of wheel strength, inertia and geometry, and integrals against a quadrature of their own.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::rim::{Contour, RimDiameter, RimWidth};
use beadseat::units::{deg, kg, kg_per_m3, kmh, mm, ratio};
use beadseat::uom::si::f64::{Force, Length, Mass, Ratio, Torque};
use beadseat::uom::si::force::newton;
use beadseat::uom::si::length::{meter, millimeter};
use beadseat::uom::si::mass::kilogram;
use beadseat::uom::si::moment_of_inertia::kilogram_square_meter;
use beadseat::uom::si::ratio::ratio as bare;
use beadseat::uom::si::torque::newton_meter;
use beadseat::wheel::{
    Barrel, Bore, CentringRing, Inset, RingError, Spigot, WheelLoad,
    position::{SteeringGeometry, track_change},
    rotation::{Imbalance, RotatingPart, acceleration_ratio},
    strength::{BendingTest, LateralImpact, RadialTest, WheelMetal},
};
use beadseat::{Count, Toleranced};
use nalgebra::{Point2, Rotation2, Vector2};
use proptest::prelude::*;
use proptest::sample::select;

fn relative(a: f64, b: f64) -> f64 {
    (a / b - 1.0).abs()
}

fn bending_test() -> impl Strategy<Value = BendingTest> {
    prop_oneof![
        select(vec![BendingTest::UN_R124, BendingTest::SAE_J328_EARLIER, BendingTest::JWL]),
        select(WheelMetal::ALL).prop_map(BendingTest::sae_j328_front),
        select(WheelMetal::ALL).prop_map(BendingTest::sae_j328_rear),
        (1.0..=5.0).prop_map(|s| BendingTest::sae_j267(ratio(s)).unwrap()),
        (0.1..=1.5, 1.0..=5.0).prop_map(|(mu, s)| BendingTest::stated(ratio(mu), ratio(s)).unwrap()),
    ]
}

fn moment(test: BendingTest, load: f64, radius: f64, inset: f64) -> f64 {
    let inset = Inset::from_length(mm(inset)).unwrap();
    let greatest: Torque = test.moment(kg(load), mm(radius), inset).unwrap().greatest();
    greatest.get::<newton_meter>()
}

/// Mass and `∫ r² dm` of a body of revolution, `∫∫ ρ·(1, r²)·2π·r dr dx`, by Gauss's rule of three points
/// on each of several cells.
fn integrate(density: f64, inner: f64, outer: f64, length: f64) -> (f64, f64) {
    const CELLS: usize = 8;
    let away = 0.774_596_669_241_483_4; // √0.6
    let rule = [(-away, 5.0 / 9.0), (0.0, 8.0 / 9.0), (away, 5.0 / 9.0)];
    let cell = (outer - inner) / CELLS as f64;
    let mut sums = (0.0, 0.0);
    for n in 0..CELLS {
        let middle = inner + (n as f64 + 0.5) * cell;
        for (place, weight) in rule {
            let r = middle + 0.5 * cell * place;
            let dm = density * 2.0 * std::f64::consts::PI * r * length * 0.5 * cell * weight;
            sums.0 += dm;
            sums.1 += dm * r * r;
        }
    }
    sums
}

/// A ring or annulus: mass, inner and outer radius in mm.
fn part() -> impl Strategy<Value = RotatingPart> {
    (0.01..50.0, 0.0..=1.0, 10.0..=600.0, any::<bool>()).prop_map(|(mass, share, outer, ring)| {
        if ring {
            RotatingPart::ring(kg(mass), mm(outer)).unwrap()
        } else {
            RotatingPart::annulus(kg(mass), mm(share * outer), mm(outer)).unwrap()
        }
    })
}

fn inertia(part: RotatingPart) -> f64 {
    part.inertia().get::<kilogram_square_meter>()
}

proptest! {
    #[test]
    fn bending_scales_with_load_and_grows_with_radius_and_inset(
        test in bending_test(), load in 10.0..=5000.0, radius in 50.0..=700.0, inset in -300_000_i32..=300_000,
        scale in 1.0..=4.0, more in 1_u16..=200,
    ) {
        // An inset is exact to the nanometre.
        let (inset, more) = (f64::from(inset) / 1000.0, f64::from(more));
        let m = moment(test, load, radius, inset);
        prop_assert!(m > 0.0);
        prop_assert!(relative(moment(test, load * scale, radius, inset), m * scale) < 1e-12);
        prop_assert_eq!(moment(test, load, radius, -inset), m, "inset and outset alike");
        prop_assert!(moment(test, load, radius + more, inset) > m);
        if inset.abs() + more <= 300.0 {
            prop_assert!(moment(test, load, radius, inset.abs() + more) > m);
        }
        // The moment is a force at the tread and one at the rim's middle, both about the mounting face.
        let force = test.factor().get::<bare>() * load * 9.806_65;
        let at_tread = Vector2::new(test.friction().get::<bare>() * force, force);
        let arm = Vector2::new(radius / 1000.0, inset.abs() / 1000.0);
        prop_assert!(relative(at_tread.dot(&arm), m) < 1e-12);
    }

    #[test]
    fn factors_of_the_tests_scale_them(
        load in 10.0..=20_000.0, radius in 50.0..=1500.0, inset in -300.0..=300.0, s in 1.0..=2.5,
    ) {
        let of = |s: f64| moment(BendingTest::sae_j267(ratio(s)).unwrap(), load, radius, inset);
        prop_assert!(relative(of(2.0 * s), 2.0 * of(s)) < 1e-12);
        let radial = |k: f64| -> f64 {
            let force: Force = RadialTest::new(ratio(k)).unwrap().force(kg(load)).unwrap();
            force.get::<newton>()
        };
        prop_assert!(relative(radial(2.0 * s), 2.0 * radial(s)) < 1e-12);
        prop_assert!(relative(radial(s), s * load * 9.806_65) < 1e-12);
    }

    #[test]
    fn the_striker_loses_its_height_as_speed(load in 10.0..=20_000.0) {
        use beadseat::uom::si::{energy::joule, velocity::meter_per_second};
        let test = LateralImpact::of(kg(load)).unwrap();
        let striker = test.striker().get::<kilogram>();
        prop_assert!(striker > 180.0 && relative((striker - 180.0) / load, 0.6) < 1e-9);
        let v = LateralImpact::speed_at_contact().get::<meter_per_second>();
        prop_assert!(relative(0.5 * striker * v * v, test.energy().get::<joule>()) < 1e-12);
    }

    #[test]
    fn wheels_share_an_axle(axle in 10.0..=60_000.0, wheels in 1_u8..=16, rating in 1.0..=20_000.0) {
        let share = WheelLoad::of_axle(kg(axle), Count::new(wheels).unwrap()).unwrap();
        let load = share.load().get::<kilogram>();
        prop_assert!(relative(load * f64::from(wheels), axle) < 1e-12);
        let margin: Ratio = share.margin(kg(rating));
        prop_assert!(relative(load * (1.0 + margin.get::<bare>()), rating) < 1e-9);
        if wheels < 16 {
            let one_more = WheelLoad::of_axle(kg(axle), Count::new(wheels + 1).unwrap()).unwrap();
            prop_assert!(one_more.margin(kg(rating)) > margin);
        }
    }

    #[test]
    fn a_shell_is_what_the_integral_over_it_says(
        density in 100.0..=25_000.0, thickness in 0.1..=50.0, mean in 50.0..=1500.0, length in 1.0..=1500.0,
    ) {
        let shell =
            RotatingPart::shell(kg_per_m3(density), mm(thickness), mm(mean), mm(length)).unwrap();
        let (inner, outer) = ((mean - thickness) / 2000.0, (mean + thickness) / 2000.0);
        let (mass, i) = integrate(density, inner, outer, length / 1000.0);
        prop_assert!(relative(shell.mass().get::<kilogram>(), mass) < 1e-9, "{mass} kg");
        prop_assert!(relative(inertia(shell), i) < 1e-9, "{i} kg·m²");
        // The annulus of the same mass is the same body.
        let annulus = RotatingPart::annulus(kg(mass.clamp(0.001, 2000.0)), mm(1e3 * inner), mm(1e3 * outer));
        prop_assert!(relative(inertia(annulus.unwrap()) / mass.clamp(0.001, 2000.0), i / mass) < 1e-9);
    }

    #[test]
    fn an_annulus_lies_between_its_rings(mass in 0.001..=2000.0, share in 0.0..=1.0, outer in 1.0..=1500.0) {
        let inner: f64 = share * outer;
        let annulus = inertia(RotatingPart::annulus(kg(mass), mm(inner), mm(outer)).unwrap());
        let ring = |r| inertia(RotatingPart::ring(kg(mass), mm(r)).unwrap());
        prop_assert!(ring(inner) <= annulus * (1.0 + 1e-12) && annulus <= ring(outer) * (1.0 + 1e-12));
        // Cut in two, by mass, it is the same.
        let cut = (inner + outer) / 2.0;
        let part = |a: f64, b: f64| {
            let mass = mass * (b * b - a * a) / (outer * outer - inner * inner);
            RotatingPart::annulus(kg(mass), mm(a), mm(b))
        };
        if let (Ok(inside), Ok(outside)) = (part(inner, cut), part(cut, outer)) {
            prop_assert!(relative(inertia(inside + outside), annulus) < 1e-6);
        }
    }

    #[test]
    fn inertia_adds_and_scales(parts in prop::collection::vec(part(), 1..12), radius in 50.0..=1500.0) {
        let sum = RotatingPart::sum(parts.iter().copied()).unwrap();
        let forward: f64 = parts.iter().copied().map(inertia).sum();
        prop_assert!(relative(inertia(sum), forward) < 1e-12);
        let backward = RotatingPart::sum(parts.iter().rev().copied()).unwrap();
        prop_assert!(relative(inertia(backward), inertia(sum)) < 1e-12);
        let mass: f64 = parts.iter().map(|part| part.mass().get::<kilogram>()).sum();
        prop_assert!(relative(sum.mass().get::<kilogram>(), mass) < 1e-12);

        let rolling = sum.rolling_on(mm(radius)).unwrap();
        let each: Mass = parts.iter().map(|part| part.rolling_on(mm(radius)).unwrap().equivalent_mass()).sum();
        prop_assert!(relative(rolling.equivalent_mass().get::<kilogram>(), each.get::<kilogram>()) < 1e-12);
        prop_assert!(rolling.mass_factor() > ratio(1.0));
        // Energy of rolling, m·v²/2 + I·ω²/2, is that of the effective mass.
        let (v, omega) = (10.0, 10.0 / (radius / 1000.0));
        let energy = 0.5 * mass * v * v + 0.5 * forward * omega * omega;
        prop_assert!(relative(0.5 * rolling.effective_mass().get::<kilogram>() * v * v, energy) < 1e-9);
    }

    #[test]
    fn inertia_is_of_the_fifth_power_of_size(
        density in 100.0..=5000.0, thickness in 0.1..=20.0, mean in 50.0..=500.0, length in 1.0..=500.0,
        scale in 1.0..=3.0,
    ) {
        let of = |k: f64| {
            let [t, d, l] = [thickness, mean, length].map(|x| mm(k * x));
            inertia(RotatingPart::shell(kg_per_m3(density), t, d, l).unwrap())
        };
        let fifth = (0..5).fold(1.0, |power, _| power * scale);
        prop_assert!(relative(of(scale), fifth * of(1.0)) < 1e-9);
    }

    #[test]
    fn heavier_wheels_never_quicken(
        vehicle in 500.0..=3000.0, old in part(), new in part(), added in part(), radius in 250.0..=400.0,
    ) {
        let [old, new, heavier] = [old, new, new + added].map(|part| part.rolling_on(mm(radius)).unwrap());
        let change = |to| acceleration_ratio(kg(vehicle), &[(old, to)]).unwrap().get::<bare>();
        prop_assert!(change(heavier) < change(new));
        prop_assert!(relative(change(old), 1.0) < 1e-12);
        // There and back again, with the vehicle as heavy as it then is.
        let (out, onto) = (old.part().mass(), new.part().mass());
        let back = acceleration_ratio(kg(vehicle) - out + onto, &[(new, old)]).unwrap().get::<bare>();
        prop_assert!(relative(change(new) * back, 1.0) < 1e-12);
    }

    #[test]
    fn imbalance_is_linear_and_its_force_quadratic(
        mass in 0.001..=1000.0, e in 0.0..=700.0, v in 1.0..=250.0, r in 50.0..=700.0, at in 50.0..=1500.0,
    ) {
        let of = |mass: f64, e: f64| Imbalance::of(kg(mass), mm(e)).unwrap();
        let force = |u: Imbalance, v: f64, r: f64| {
            u.force_at(kmh(v), mm(r)).unwrap().get::<newton>()
        };
        let u = of(mass, e);
        prop_assert!((force(u, 2.0 * v, r) - 4.0 * force(u, v, r)).abs() <= 1e-9 * force(u, 2.0 * v, r));
        prop_assert!((force(u, v, 2.0 * r) * 4.0 - force(u, v, r)).abs() <= 1e-9 * force(u, v, r));
        prop_assert!((force(of(2.0 * mass, e), v, r) - 2.0 * force(u, v, r)).abs() <= 1e-9 * force(u, v, r) + 1e-12);
        prop_assert_eq!(of(mass, 0.0).force_at(kmh(v), mm(r)).unwrap().get::<newton>(), 0.0);
        // The weight that cures it has the same imbalance at its radius.
        if let Ok(weight) = Imbalance::of(u.weight_at(mm(at)).unwrap(), mm(at)) {
            prop_assert!((force(weight, v, r) - force(u, v, r)).abs() <= 1e-9 * force(u, v, r));
        }
    }

    #[test]
    fn a_ring_fills_the_gap(
        bore in 200_000_u32..=4_000_000, spigot in 200_000_u32..=4_000_000, outer in 0.0..=1.0, inner in 0.0..=1.0,
    ) {
        let text = |value: u32| format!("{}.{:04}", value / 10_000, value % 10_000);
        let bore: Bore = text(bore).parse().unwrap();
        let spigot_length = mm(f64::from(spigot) / 10_000.0);
        let spigot = Spigot::from_length(spigot_length).unwrap();
        let in_mm = |length: Length| length.get::<millimeter>();
        let play = in_mm(bore.length()) - in_mm(spigot_length);
        let ring = CentringRing::between(bore, spigot, mm(outer), mm(inner));
        if play > outer + inner + 1e-6 {
            let ring = ring.unwrap();
            let metal = in_mm(ring.outer_diameter() - ring.inner_diameter()) / 2.0;
            prop_assert!(metal > 0.0 && metal <= in_mm(ring.wall()) + 1e-9);
            // What the metal leaves is what the wheel can move.
            prop_assert!((in_mm(ring.wall()) - metal - in_mm(ring.eccentricity())).abs() < 1e-9);
            let without = spigot.eccentricity_in(bore).unwrap();
            prop_assert!(ring.eccentricity() < without + mm(1e-9));
            prop_assert_eq!(spigot.run_out_in(bore), Some(without * 2.0));
        } else if play < outer + inner - 1e-6 {
            prop_assert_eq!(ring, Err(RingError::NoRoom));
        }
        prop_assert_eq!(spigot.eccentricity_in(bore).is_some(), play > -5e-7);
    }

    #[test]
    fn the_scrub_radius_is_what_the_lines_of_axis_and_wheel_say(
        inclination in -5.0..=30.0, camber in -15.0..=15.0, hub in -100.0..=300.0, height in 150.0..=600.0,
        moved in -150.0..=150.0, rise in -60.0..=60.0,
    ) {
        let lean = SteeringGeometry::new(deg(inclination), deg(camber)).unwrap();
        // Section seen from the front: y outboard, z up from the ground. The axis through the hub's height
        // leans inboard by the inclination, the wheel outboard by the camber.
        let down_to_ground = |from: Point2<f64>, lean: f64| {
            let up = Rotation2::new(-f64::to_radians(lean)) * Vector2::y();
            from.x - up.x * from.y / up.y
        };
        let on_ground = |axis: Point2<f64>, centre: Point2<f64>| {
            down_to_ground(centre, camber) - down_to_ground(axis, -inclination)
        };
        let (axis, centre) = (Point2::new(0.0, height), Point2::new(hub, height));
        let before = on_ground(axis, centre);
        let computed = lean.scrub_radius(mm(hub), mm(height)).get::<millimeter>();
        prop_assert!((computed - before).abs() < 1e-9, "{computed} computed, {before} mm drawn");

        // The rim moves along the spindle, which a wheel of that camber has sloping; the ground is then
        // where the new tire reaches it, so that the hub stands higher by the rise.
        let spindle = Rotation2::new(-f64::to_radians(camber)) * Vector2::x();
        let moved_centre: Point2<f64> = centre + spindle * moved;
        let lift = height + rise - moved_centre.y;
        let up = Vector2::new(0.0, lift);
        let after = on_ground(axis + up, moved_centre + up);
        let change = lean.scrub_change(mm(moved), mm(rise)).get::<millimeter>();
        prop_assert!((change - (after - before)).abs() < 1e-9, "{change} computed, {} mm drawn", after - before);

        // Across, the rim moves by the track change of one side.
        let across = track_change(mm(moved), mm(0.0), deg(camber)).get::<millimeter>();
        prop_assert!((across - (moved_centre.x - centre.x)).abs() < 1e-9);
    }

    #[test]
    fn more_metal_and_a_deeper_well_leave_less_room(
        code in select(vec!["13", "15", "16", "17", "18", "21", "22"]), metal in 0.5..=15.0, more in 0.01..=15.0,
        depth in 3.0..=30.0, deeper in 0.01..=30.0, height in 3.0..=60.0, within in 0.0..=0.25,
    ) {
        let diameter = RimDiameter::parse(code).unwrap();
        let of = |depth: f64, metal: f64| {
            let span = |value: f64| Toleranced::within(mm(value), mm(within * value.min(1.0)));
            Barrel::of_measured(diameter, Toleranced::exact(mm(height)), span(depth), span(metal))
        };
        let (Ok(barrel), Ok(thicker), Ok(deep)) =
            (of(depth, metal), of(depth, metal + more), of(depth + deeper, metal))
        else {
            // A span may reach below the least.
            return Ok(());
        };
        for less in [thicker, deep] {
            prop_assert!(less.brake_envelope_radius().nominal() < barrel.brake_envelope_radius().nominal());
            prop_assert!(less.brake_envelope_radius().min() < barrel.brake_envelope_radius().min() + mm(0.26));
        }
        prop_assert!(barrel.at_well().nominal() < barrel.under_seat().nominal());
        prop_assert!(barrel.under_seat().nominal() < barrel.seat().nominal());
        prop_assert!(barrel.seat().nominal() < barrel.over_flanges().nominal());
        for d in [barrel.at_well(), barrel.under_seat(), barrel.over_flanges()] {
            prop_assert!(d.min() <= d.nominal() && d.nominal() <= d.max() && d.min() > mm(0.0));
        }
    }

    #[test]
    fn a_standard_barrel_is_the_largest(code in 13_u32..=26, quarters in 14_u16..=40, metal in 0.5..=12.0) {
        let (Ok(diameter), Some(width)) =
            (RimDiameter::parse(&code.to_string()), RimWidth::from_quarters(quarters))
        else {
            return Ok(());
        };
        let (height, depth) = (Contour::J.flange_height().unwrap(), Contour::J.well_depth(diameter, width).unwrap());
        let metal = Toleranced::exact(mm(metal));
        let Ok(size) = format!("{width}Jx{diameter}").parse() else { return Ok(()) };
        let standard = Barrel::of_standard(&size, metal).unwrap();
        for deeper in [0.0, 0.1, 5.0, 20.0] {
            let real = Barrel::of_measured(diameter, height, Toleranced::exact(depth + mm(deeper)), metal).unwrap();
            prop_assert!(real.at_well().max() <= standard.at_well().max());
        }
        prop_assert!(standard.is_largest());
        prop_assert!(standard.brake_envelope_radius().max().get::<meter>() < 0.4);
    }
}

#[test]
fn strength_and_inertia_allocate_nothing() {
    let inset = Inset::parse("ET45").unwrap();
    let size = "7Jx16".parse().unwrap();
    let counted = allocation_counter::measure(|| {
        let ring = RotatingPart::ring(kg(6.0), mm(200.0)).unwrap();
        let tire = RotatingPart::annulus(kg(9.0), mm(203.0), mm(316.0)).unwrap();
        let rolling = RotatingPart::sum([ring, tire]).unwrap().rolling_on(mm(307.0)).unwrap();
        let change = acceleration_ratio(kg(1400.0), &[(rolling, rolling); 4]).unwrap();
        let moment = BendingTest::JWL.moment(kg(600.0), mm(300.0), inset).unwrap();
        let barrel = Barrel::of_standard(&size, Toleranced::exact(mm(5.0))).unwrap();
        let refused = RotatingPart::ring(kg(-1.0), mm(200.0)).unwrap_err();
        let _ = std::hint::black_box((change, moment, barrel, refused));
    });
    assert_eq!(counted.count_total, 0);
}
