//! Laws of bolt circles, and circle fits against `nalgebra`.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]
#![allow(clippy::disallowed_methods, reason = "another library than the one that is tested")]

use beadseat::Toleranced;
use beadseat::units::{deg, mm};
use beadseat::uom::si::f64::Length;
use beadseat::uom::si::length::millimeter;
use beadseat::wheel::{
    BoltCircle, HoleCentre,
    drilling::{CircleFit, Identified, MeasuredCircle, NearMiss},
};
use nalgebra::{DMatrix, DVector};
use proptest::prelude::*;
use proptest::sample::select;

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn exact(value: f64) -> Toleranced<Length> {
    Toleranced::exact(mm(value))
}

fn standard() -> impl Strategy<Value = BoltCircle> {
    select(BoltCircle::STANDARD)
}

/// Any circle that a bolt circle can be, to the hundredth of a millimetre.
fn any_circle() -> impl Strategy<Value = BoltCircle> {
    (3u8..=12, 6_000u32..=60_000).prop_map(|(count, hundredths)| {
        format!("{count}x{}.{:02}", hundredths / 100, hundredths % 100).parse().unwrap()
    })
}

/// The centres of a circle, moved and turned.
fn placed(circle: &BoltCircle, turn: f64, x: f64, y: f64) -> Vec<HoleCentre> {
    circle.centres(deg(turn)).map(|c| HoleCentre::new(c.x() + mm(x), c.y() + mm(y))).collect()
}

/// Least squares of the radial distances by Gauss–Newton on singular values, from the mean of the points.
fn fit_by_nalgebra(points: &[(f64, f64)]) -> [f64; 3] {
    let n = points.len();
    let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / n as f64;
    let (mut x, mut y) = (mean(|p| p.0), mean(|p| p.1));
    let mut r = points.iter().map(|p| (p.0 - x).hypot(p.1 - y)).sum::<f64>() / n as f64;
    for _ in 0..200 {
        let jacobian = DMatrix::from_fn(n, 3, |i, j| {
            let (dx, dy) = (points[i].0 - x, points[i].1 - y);
            [1.0, dx / dx.hypot(dy), dy / dx.hypot(dy)][j]
        });
        let residual = DVector::from_fn(n, |i, _| (points[i].0 - x).hypot(points[i].1 - y) - r);
        let step = jacobian.svd(true, true).solve(&residual, 1e-14).unwrap();
        (r, x, y) = (r + step[0], x + step[1], y + step[2]);
        if step.norm() < 1e-13 * r {
            break;
        }
    }
    [r, x, y]
}

proptest! {
    #[test]
    fn chord_and_diameter_are_inverse(circle in any_circle(), apart in 1u8..12, hole in 8.0..40.0) {
        let Some(chord) = circle.chord(apart) else { return Ok(()) };
        let n = circle.count();
        let hole = exact(hole);
        let chord = Toleranced::exact(chord);
        for measured in [
            MeasuredCircle::between_centres(n, apart, chord),
            MeasuredCircle::over_outer_edges(n, apart, chord + hole, hole),
            MeasuredCircle::between_inner_edges(n, apart, chord - hole, hole),
        ] {
            let Ok(measured) = measured else {
                // The last bits may put a circle of 60 or 600 mm outside.
                prop_assert!(in_mm(circle.diameter()) == 60.0 || in_mm(circle.diameter()) == 600.0);
                continue;
            };
            prop_assert!((in_mm(measured.diameter() - circle.diameter())).abs() < 1e-9 * in_mm(circle.diameter()));
            prop_assert!(measured.includes(circle.diameter()));
        }
    }

    #[test]
    fn three_holes_of_any_pattern_wherever_it_lies_recover_it(
        circle in any_circle(), turn in 0.0..360.0, x in -800.0..800.0, y in -800.0..800.0,
        order in Just((0usize..12).collect::<Vec<_>>()).prop_shuffle(),
    ) {
        let holes = placed(&circle, turn, x, y);
        let three: Vec<_> = order.iter().filter_map(|&i| holes.get(i).copied()).take(3).collect();
        let fit = CircleFit::through(&three, mm(0.1)).unwrap();
        // Neighbours of many holes on a small circle are ill-conditioned.
        let scale = 1e-9 * in_mm(fit.typical_uncertainty()) / 0.1 * 100.0;
        prop_assert!((in_mm(fit.diameter() - circle.diameter())).abs() < scale.max(1e-9), "{:?}", fit);
        prop_assert!((in_mm(fit.centre().x()) - x).abs() < scale && (in_mm(fit.centre().y()) - y).abs() < scale);
        prop_assert!(in_mm(fit.worst_hole_off()) < 1e-9);

        let side = |a: usize, b: usize| {
            let (a, b) = (three[a], three[b]);
            exact(in_mm(a.x() - b.x()).hypot(in_mm(a.y() - b.y())))
        };
        let measured = MeasuredCircle::from_three_sides(circle.count(), [side(0, 1), side(1, 2), side(2, 0)]);
        if let Ok(measured) = measured {
            prop_assert!((in_mm(measured.diameter() - circle.diameter())).abs() < 1e-6);
        }
    }

    #[test]
    fn fits_are_those_of_nalgebra(
        circle in any_circle(), turn in 0.0..360.0, x in -300.0..300.0, y in -300.0..300.0,
        errors in prop::collection::vec((-0.5..0.5, -0.5..0.5), 12), keep in 3usize..=12,
    ) {
        let holes = placed(&circle, turn, x, y);
        let points: Vec<(f64, f64)> = holes.iter().zip(&errors).take(keep)
            .map(|(hole, off)| (in_mm(hole.x()) + off.0, in_mm(hole.y()) + off.1)).collect();
        // A few neighbours of many holes are an arc too short for either to find a minimum surely.
        prop_assume!(2 * points.len() > usize::from(circle.count()));
        let centres: Vec<_> = points.iter().map(|&(x, y)| HoleCentre::new(mm(x), mm(y))).collect();
        let fit = CircleFit::through(&centres, mm(0.1)).unwrap();
        let [r, cx, cy] = fit_by_nalgebra(&points);
        prop_assert!((in_mm(fit.diameter()) - 2.0 * r).abs() < 1e-7, "{} {}", in_mm(fit.diameter()), 2.0 * r);
        prop_assert!((in_mm(fit.centre().x()) - cx).abs() < 1e-7 && (in_mm(fit.centre().y()) - cy).abs() < 1e-7);
        let off = points.iter().map(|p| ((p.0 - cx).hypot(p.1 - cy) - r).abs()).fold(0.0, f64::max);
        prop_assert!((in_mm(fit.worst_hole_off()) - off).abs() < 1e-7);
    }

    #[test]
    fn errors_inside_their_bounds_stay_inside_the_worst(
        circle in any_circle(), apart in 1u8..12, u in 0.0..1.0, hole in 8.0..20.0, bore in 40.0..58.0,
        s in prop::array::uniform3(-1.0..1.0),
    ) {
        let n = circle.count();
        let read = |value: f64, share: f64| Toleranced::within(mm(value + share * u), mm(u));
        let (true_hole, true_bore) = (hole, bore);
        let d = in_mm(circle.diameter());
        let gap = (d - true_bore - true_hole) / 2.0;
        let mut all = vec![
            MeasuredCircle::from_bore(n, read(true_bore, s[0]), read(gap, s[1]), read(true_hole, s[2])),
            MeasuredCircle::from_bore_to_far_edge(n, read(true_bore, s[0]), read(gap + true_hole, s[1]), read(true_hole, s[2])),
            MeasuredCircle::across_bore(n, read(true_bore, s[0]), read(gap + true_bore, s[1]), read(true_hole, s[2])),
        ];
        if let Some(chord) = circle.chord(apart).map(in_mm) {
            all.push(MeasuredCircle::between_centres(n, apart, read(chord, s[0])));
            all.push(MeasuredCircle::over_outer_edges(n, apart, read(chord + true_hole, s[0]), read(true_hole, s[1])));
            all.push(MeasuredCircle::between_inner_edges(n, apart, read(chord - true_hole, s[0]), read(true_hole, s[1])));
        }
        for measured in all.into_iter().flatten() {
            prop_assert!(measured.includes(circle.diameter()), "{:?} of {}", measured, circle);
            prop_assert!(measured.typical_uncertainty() <= measured.max_uncertainty() * (1.0 + 1e-12));
        }
    }

    /// Three sides of any three holes, every error inside its bound or, which is worse, at it.
    #[test]
    fn sides_inside_their_bounds_stay_inside_the_worst(
        circle in standard(),
        holes in prop::sample::subsequence((0usize..12).collect::<Vec<_>>(), 3),
        u in prop_oneof![Just(0.05), Just(0.5), 0.0..1.0],
        s in prop::array::uniform3(prop_oneof![Just(-1.0), Just(1.0), -1.0..1.0]),
    ) {
        let centres: Vec<_> = circle.centres(deg(0.0)).collect();
        let [Some(a), Some(b), Some(c)] = [0, 1, 2].map(|i| centres.get(holes[i])) else { return Ok(()) };
        let side = |a: &HoleCentre, b: &HoleCentre, share: f64| {
            let true_side = in_mm(a.x() - b.x()).hypot(in_mm(a.y() - b.y()));
            Toleranced::within(mm(true_side + share * u), mm(u * (1.0 + 1e-9)))
        };
        let sides = [side(a, b, s[0]), side(b, c, s[1]), side(c, a, s[2])];
        let Ok(measured) = MeasuredCircle::from_three_sides(circle.count(), sides) else { return Ok(()) };
        prop_assert!(measured.includes(circle.diameter()), "{:?} of {}", measured, circle);
        prop_assert!(Identified::from(measured).compatible().any(|c| c.circle() == circle));
    }

    /// A reading with more room on one side than on the other.
    #[test]
    fn lopsided_readings_contain_the_true_pattern(
        circle in standard(), apart in 1u8..12, below in 0.0..2.0, above in 0.0..2.0, share in 0.0..=1.0,
    ) {
        let Some(chord) = circle.chord(apart).map(in_mm) else { return Ok(()) };
        let nominal = chord + below - share * (below + above);
        let read = Toleranced::new(mm(nominal - below - 1e-9), mm(nominal), mm(nominal + above + 1e-9)).unwrap();
        let Ok(measured) = MeasuredCircle::between_centres(circle.count(), apart, read) else { return Ok(()) };
        prop_assert!(Identified::from(measured).compatible().any(|c| c.circle() == circle));
    }

    /// What the bound of a fit allows beyond its first order is enough.
    #[test]
    fn coordinates_inside_their_bounds_stay_inside_the_worst(
        circle in any_circle(), turn in 0.0..360.0, u in 0.0..0.5,
        errors in prop::collection::vec((prop_oneof![Just(-1.0), Just(1.0), -1.0..1.0], -1.0..1.0), 12),
        keep in 3usize..=12,
    ) {
        let keep = keep.max(usize::from(circle.count()) / 2 + 1);
        let holes: Vec<_> = placed(&circle, turn, 5.0, -7.0).iter().zip(&errors).take(keep)
            .map(|(hole, off)| HoleCentre::new(hole.x() + mm(off.0 * u), hole.y() + mm(off.1 * u))).collect();
        let fit = CircleFit::through(&holes, mm(u)).unwrap();
        prop_assert!((in_mm(fit.diameter() - circle.diameter())).abs() <= in_mm(fit.max_uncertainty()) + 1e-9);
    }

    #[test]
    fn identification_contains_the_true_pattern(circle in standard(), apart in 1u8..12, u in 0.0..3.0, share in -1.0..1.0) {
        let Some(chord) = circle.chord(apart).map(in_mm) else { return Ok(()) };
        let read = Toleranced::within(mm(chord + share * u), mm(u));
        let Ok(measured) = MeasuredCircle::between_centres(circle.count(), apart, read) else { return Ok(()) };
        let found = Identified::from(measured);
        prop_assert!(found.compatible().any(|c| c.circle() == circle), "{} from {:?}", circle, measured);
        // All of the count are ranked, each once, the nearest first, and compatible ones before others.
        let ranked: Vec<_> = found.nearest_first().collect();
        let of_count = BoltCircle::STANDARD.iter().filter(|c| c.count() == circle.count());
        prop_assert_eq!(ranked.len(), of_count.count());
        for pair in ranked.windows(2) {
            prop_assert!(pair[0].off().abs() <= pair[1].off().abs());
            prop_assert!(pair[0].is_compatible() || !pair[1].is_compatible());
        }
        for candidate in ranked {
            let inside = in_mm(candidate.off()).abs() <= in_mm(measured.max_uncertainty()) + 1e-9;
            prop_assert_eq!(candidate.is_compatible(), inside);
        }
    }

    #[test]
    fn a_near_miss_is_the_same_from_both_sides(a in any_circle(), b in any_circle()) {
        let (ab, ba) = (NearMiss::of(a, b), NearMiss::of(b, a));
        prop_assert_eq!(ab, ba);
        prop_assert_eq!(ab.is_some(), a.count() == b.count());
        if let Some(miss) = ab {
            prop_assert!(miss.worst_hole() <= miss.run_out() * (1.0 + 1e-12));
            prop_assert!(miss.centred() <= miss.worst_hole() && miss.between_neighbours() <= miss.worst_hole());
        }
    }

    #[test]
    fn centres_lie_on_the_circle_at_equal_steps(circle in any_circle(), turn in -720.0..720.0) {
        let centres: Vec<_> = circle.centres(deg(turn)).collect();
        prop_assert_eq!(centres.len(), usize::from(circle.count()));
        let apart = in_mm(circle.chord(1).unwrap());
        for (n, hole) in centres.iter().enumerate() {
            let next = centres[(n + 1) % centres.len()];
            prop_assert!((in_mm(hole.x()).hypot(in_mm(hole.y())) * 2.0 - in_mm(circle.diameter())).abs() < 1e-9);
            prop_assert!((in_mm(hole.x() - next.x()).hypot(in_mm(hole.y() - next.y())) - apart).abs() < 1e-9);
            // Counter-clockwise.
            prop_assert!(in_mm(hole.x()) * in_mm(next.y()) > in_mm(hole.y()) * in_mm(next.x()));
        }
    }
}
