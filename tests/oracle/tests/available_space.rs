//! What a room promises, an assessment keeps, and a hundredth of a millimetre beyond it does not.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use std::sync::atomic::{AtomicUsize, Ordering};

use beadseat::fitment::space::AvailableSpace;
use beadseat::fitment::{
    Change, Check, CheckId, Conditions, LimitSet, Limits, Position, Reason, Setup, Setups, Verdict, assess,
};
use beadseat::rim::Contour;
use beadseat::units::{Length, mm};
use beadseat::uom::si::length::millimeter;
use beadseat::vehicle::{Axle, Kind, MeasuredTire, Space, Vehicle};
use beadseat::wheel::Inset;
use beadseat::{Count, units};
use proptest::prelude::*;
use proptest::sample::select;
use proptest::test_runner::{Config, TestCaseResult, TestRunner};

/// Tires of which dimensions are known, narrow ones too, so that a wide rim stands out.
const TIRES: &[&str] = &[
    "205/55R16 91V",
    "195/65R15 91T",
    "225/45R17 94W XL",
    "255/35R19 96Y XL",
    "195/70R15C 104/102R",
    "LT265/70R17 121/118S",
    "165/70R14 81T",
];
const WIDTHS: &[&str] = &["5.5", "6.5", "7.5", "8", "9", "10.5"];
const STEP: f64 = 0.01;

/// An axle as it was measured, and what is to go on it.
#[derive(Clone, Copy, Debug)]
struct Corner {
    rear: bool,
    kind: Kind,
    duals: bool,
    track: f64,
    /// Outer, inner, upper.
    gaps: [f64; 3],
    uncertainty: Option<f64>,
    measured: Option<MeasuredTire>,
    original: (&'static str, &'static str, f64, f64),
    proposed: (&'static str, &'static str, f64, f64),
    snow: bool,
    limits: Limits,
}

/// A tire on a rim this wide, of this inset, behind a spacer; the original has holes, so that no proposed
/// wheel is the same.
fn setup((tire, width, inset, spacer): (&str, &str, f64, f64), holes: &str) -> Setup {
    let wheel = format!("{width}Jx17 ET{inset:.2}{holes}").parse().unwrap();
    Setup::new(tire.parse().unwrap(), wheel).with_spacer(mm(spacer)).unwrap()
}

impl Corner {
    fn vehicle(&self) -> Vehicle {
        let [outer, inner, upper] = self.gaps.map(mm);
        let mut space = Space::new()
            .with_outer_clearance(outer)
            .and_then(|s| s.with_inner_clearance(inner))
            .and_then(|s| s.with_upper_clearance(upper))
            .unwrap();
        if let Some(uncertainty) = self.uncertainty {
            space = space.with_uncertainty(mm(uncertainty)).unwrap();
        }
        if let Some(measured) = self.measured {
            space = space.with_measured_tire(measured);
        }
        let mut axle = Axle::new().with_track(mm(self.track)).unwrap().with_space(space);
        if self.duals {
            axle = axle.with_wheels_per_side(Count::new(2).unwrap());
        }
        let vehicle = Vehicle::unknown().with_kind(self.kind);
        if self.rear { vehicle.with_rear(axle) } else { vehicle.with_front(axle) }
    }

    fn room<T>(&self, ask: impl FnOnce(&AvailableSpace<'_>) -> T) -> T {
        let (vehicle, original) = (self.vehicle(), setup(self.original, " 5x112"));
        let make = if self.rear { AvailableSpace::rear } else { AvailableSpace::front };
        ask(&make(&vehicle, original, &self.limits))
    }

    fn setup(&self) -> Setup {
        setup(self.proposed, "").with_snow(self.snow)
    }

    fn check(&self, id: CheckId) -> Check {
        let setups = |setup| {
            if self.rear {
                Setups { front: None, rear: Some(setup) }
            } else {
                Setups { front: Some(setup), rear: None }
            }
        };
        let change =
            Change { original: setups(setup(self.original, " 5x112")), proposed: setups(self.setup()) };
        let report = assess(&self.vehicle(), &change, &Conditions::default(), &self.limits);
        report.get(id, if self.rear { Position::Rear } else { Position::Front }).unwrap()
    }

    fn passes(&self, id: CheckId) -> bool {
        let check = self.check(id);
        assert_ne!(check.verdict(), Verdict::NotAssessed, "{check}");
        check.verdict() == Verdict::Within || check.reason() == Reason::FlangeAssumed
    }

    fn keeps_all(&self) -> bool {
        BESIDE.iter().all(|&id| self.passes(id)) && self.passes(CheckId::Track)
    }

    fn at_inset(&self, inset: f64) -> Self {
        let (tire, width, _, spacer) = self.proposed;
        Self { proposed: (tire, width, inset, spacer), ..*self }
    }

    /// With one gap smaller.
    fn less(&self, which: usize, by: f64) -> Self {
        let mut less = *self;
        less.gaps[which] -= by;
        less
    }

    /// Whether a gap is what rules, rather than what there was of it.
    fn limit_rules(&self, which: usize) -> bool {
        self.gaps[which] - STEP > in_mm(self.limits.clearance().value())
    }
}

const BESIDE: [CheckId; 2] = [CheckId::OuterClearance, CheckId::InnerClearance];

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn inset_mm(inset: Inset) -> f64 {
    in_mm(inset.length())
}

fn maybe<T: core::fmt::Debug + Clone + 'static>(
    value: impl Strategy<Value = T> + 'static,
) -> BoxedStrategy<Option<T>> {
    prop_oneof![2 => value.prop_map(Some), 1 => Just(None)].boxed()
}

prop_compose! {
    fn measured_tire()(width in maybe(160.0..270.0), diameter in maybe(560.0..820.0), tread in maybe(1.0..12.0)) -> MeasuredTire {
        let mut tire = MeasuredTire::new();
        if let Some(width) = width { tire = tire.with_width(mm(width)).unwrap(); }
        if let Some(diameter) = diameter { tire = tire.with_diameter(mm(diameter)).unwrap(); }
        if let Some(tread) = tread { tire = tire.with_tread_depth(mm(tread)).unwrap(); }
        tire
    }
}

prop_compose! {
    fn limits()(set in select(LimitSet::ALL), clearance in maybe(0.0..20.0), share in maybe(0.0..5.0), growth in maybe(0.0..60.0)) -> Limits {
        let mut limits = Limits::of(set);
        if let Some(clearance) = clearance { limits = limits.with_own_clearance(mm(clearance)).unwrap(); }
        if let Some(share) = share { limits = limits.with_own_track_growth_share(units::percent(share)).unwrap(); }
        if let Some(growth) = growth { limits = limits.with_own_track_growth(mm(growth)).unwrap(); }
        limits
    }
}

prop_compose! {
    fn corner()(
        (rear, duals, snow) in (any::<bool>(), prop::bool::weighted(0.2), any::<bool>()),
        kind in select(&[Kind::Passenger, Kind::Multipurpose, Kind::Truck, Kind::Bus, Kind::Trailer][..]),
        track in 1300.0..1900.0,
        gaps in [-5.0..70.0, 0.0..70.0, 0.0..150.0],
        uncertainty in maybe(0.0..4.0),
        measured in maybe(measured_tire()),
        tires in [select(TIRES), select(TIRES)],
        widths in [select(WIDTHS), select(WIDTHS)],
        insets in [-30.0..60.0, -30.0..60.0],
        spacers in [select(&[0.0, 5.0, 25.0][..]), select(&[0.0, 3.0, 20.0][..])],
        limits in limits(),
    ) -> Corner {
        Corner {
            rear, kind, duals, track, gaps, uncertainty, measured, snow, limits,
            original: (tires[0], widths[0], insets[0], spacers[0]),
            proposed: (tires[1], widths[1], insets[1], spacers[1]),
        }
    }
}

/// Runs 2000 cases, each of which says whether it held what it is about, and returns how many did. The number
/// is fixed, since the tests say how many must have.
fn held(test: impl Fn(Corner, &AtomicUsize) -> TestCaseResult) -> usize {
    let count = AtomicUsize::new(0);
    let mut runner = TestRunner::new(Config { cases: 2000, failure_persistence: None, ..Config::default() });
    runner.run(&corner(), |corner| test(corner, &count)).unwrap();
    count.into_inner()
}

#[test]
fn the_ends_of_the_insets_pass_and_one_step_outside_does_not() {
    let ends = held(|corner, ends| {
        let Some(range) = corner.room(|room| room.insets(&corner.setup())).unwrap() else {
            // None at all: neither here nor anywhere else.
            for n in 0..=60 {
                prop_assert!(!corner.at_inset(f64::from(n * 10 - 300)).keeps_all());
            }
            return Ok(());
        };
        for (end, outward) in [(range.min(), -STEP), (range.max(), STEP)] {
            let inset = inset_mm(end.value());
            prop_assert!(corner.at_inset(inset).keeps_all(), "at {}", inset);
            match end.check() {
                Some(check) => {
                    let outside = corner.at_inset(inset + outward);
                    prop_assert!(!outside.passes(check), "beyond {} by {}", inset, outside.check(check));
                    ends.fetch_add(1, Ordering::Relaxed);
                }
                None => prop_assert_eq!(inset.abs(), 300.0),
            }
        }
        // And anywhere else it holds as well.
        let own = corner.setup().wheel().inset().unwrap();
        prop_assert_eq!(range.contains(own), corner.keeps_all());
        Ok(())
    });
    assert!(ends > 1000, "{ends}");
}

#[test]
fn a_tire_of_the_largest_width_passes_and_a_wider_one_does_not() {
    let set = held(|corner, set| {
        let setup = corner.setup();
        let tire = setup.tire().size().section_width_on(setup.wheel().size().width()).unwrap().max();
        let widest = corner.room(|room| room.max_width(&setup.wheel(), setup.hub_spacing())).unwrap();
        let both = |corner: &Corner| BESIDE.iter().all(|&id| corner.passes(id));
        let Some(widest) = widest else {
            prop_assert!(!both(&corner), "the rim does not fit");
            return Ok(());
        };
        let spare = in_mm(widest.value() - tire);
        prop_assert_eq!(spare >= 0.0, both(&corner), "{} to spare", spare);
        // Take the spare away from the gap that binds, and the tire is as wide as may be.
        let check = widest.check().unwrap();
        let which = usize::from(check == CheckId::InnerClearance);
        let exact = corner.less(which, spare / 2.0);
        if spare > 0.0 && exact.limit_rules(which) {
            let left = exact.room(|room| room.max_width(&setup.wheel(), setup.hub_spacing())).unwrap();
            let rim = setup.wheel().size().width().length() + Contour::J.flange_width().max() * 2.0;
            if rim > tire {
                prop_assert!(left.is_none() && !exact.passes(check), "the rim stands out further");
                return Ok(());
            }
            prop_assert!((left.unwrap().value() - tire).abs() < mm(1e-9));
            prop_assert!(exact.passes(check));
            prop_assert!(!exact.less(which, STEP).passes(check));
            set.fetch_add(1, Ordering::Relaxed);
        }
        Ok(())
    });
    assert!(set > 200, "{set}");
}

#[test]
fn a_tire_of_the_largest_diameter_passes_and_a_larger_one_does_not() {
    let set = held(|corner, set| {
        let size = corner.setup().tire().size();
        let tire = if corner.snow { size.overall_diameter_snow() } else { size.overall_diameter() };
        let tire = tire.unwrap().max();
        let spare = in_mm(corner.room(|room| room.max_diameter()).unwrap() - tire);
        prop_assert_eq!(spare >= 0.0, corner.passes(CheckId::UpperClearance), "{} to spare", spare);
        let exact = corner.less(2, spare / 2.0);
        if spare > 0.0 && exact.limit_rules(2) {
            prop_assert!((exact.room(|room| room.max_diameter()).unwrap() - tire).abs() < mm(1e-9));
            prop_assert!(exact.passes(CheckId::UpperClearance));
            prop_assert!(!exact.less(2, STEP).passes(CheckId::UpperClearance));
            set.fetch_add(1, Ordering::Relaxed);
        }
        Ok(())
    });
    assert!(set > 400, "{set}");
}

#[test]
fn a_larger_gap_leaves_no_less_room() {
    let seen = held(|corner, seen| {
        let setup = corner.setup();
        let width = |room: &AvailableSpace<'_>| {
            let widest = room.max_width(&setup.wheel(), setup.hub_spacing()).unwrap();
            widest.map_or(mm(0.0), |end| end.value())
        };
        for which in 0..3 {
            let larger = corner.less(which, -7.5);
            let diameter = |corner: &Corner| corner.room(|room| room.max_diameter()).unwrap();
            prop_assert!(diameter(&larger) >= diameter(&corner));
            prop_assert!(larger.room(width) >= corner.room(width));
            let [before, after] = [corner, larger].map(|c| c.room(|room| room.insets(&setup)).unwrap());
            if let Some(before) = before {
                let after = after.unwrap();
                prop_assert!(after.contains(before.min().value()) && after.contains(before.max().value()));
                seen.fetch_add(1, Ordering::Relaxed);
            }
        }
        Ok(())
    });
    assert!(seen > 1000, "{seen}");
}
