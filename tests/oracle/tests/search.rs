//! Laws of the search, over random vehicles of every kind: what it gives is beyond nothing, what it leaves out is beyond
//! something, and its intervals end where they must.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[macro_use]
mod common;

use std::collections::BTreeMap;

use beadseat::Citation;
use beadseat::fitment::{
    Change, Check, CheckId, Conditions, LimitSet, Limits, Position, Setup, Setups, TireInUse, TractionClass,
    Verdict, assess, verdict,
};
use beadseat::rim::{RimWidth, SeatTaper};
use beadseat::search::{
    Best, Candidate, Columns, Expectation, Keep, Pair, Remedy, Score, Screen, Search, Stock, Wishes,
};
use beadseat::sweep::Point;
use beadseat::tire::{Tire, condition::VehicleSide};
use beadseat::units::{deg, in_mm, kg, kmh, kpa, mm, percent};
use beadseat::vehicle::{
    Axle, AxleType, BodyKind, Brake, Drive, EndGaps, Fastening, GapSide, Hub, Kind, MeasuredTire,
    NearbyBodies, NearbyBody, Space, Steering, Travel, Vehicle,
};
use beadseat::wheel::{Inset, Wheel};
use common::maybe;
use proptest::prelude::*;
use proptest::sample::select;
use proptest::test_runner::{TestCaseError, TestRunner};

prop_compose! {
    fn body()(
        at in (-300.0..300.0, -400.0..150.0, -100.0..450.0),
        gap in maybe((select(GapSide::ALL), 0.0..60.0, 0.0..300.0)),
        thick in (0.0..30.0, 0.0..4.0),
        side in prop_oneof![4 => Just(None), 1 => select(VehicleSide::ALL).prop_map(Some)],
    ) -> NearbyBody {
        let (x, y, z) = at;
        let body = match gap {
            Some((side, gap, height)) => NearbyBody::gap(BodyKind::Other, side, mm(gap), mm(height), mm(0.0)),
            None => NearbyBody::outline(BodyKind::Other, &[Point::new(mm(x), mm(y), mm(z)).unwrap()]),
        };
        let body = body.unwrap().with_radius(mm(thick.0)).unwrap().with_uncertainty(mm(thick.1)).unwrap();
        side.map_or(body, |side| body.only_on(side))
    }
}

prop_compose! {
    fn end_gaps()(
        inner in maybe(4.0..60.0),
        outer in maybe(4.0..60.0),
        upper in maybe(5.0..120.0),
        guard in maybe(-10.0..40.0),
    ) -> EndGaps {
        let mut gaps = EndGaps::new();
        try_set!(gaps, with_inner_clearance inner.map(mm), with_outer_clearance outer.map(mm),
            with_upper_clearance upper.map(mm), with_guard_overhang guard.map(mm));
        gaps
    }
}

prop_compose! {
    fn space()(
        gaps in (maybe(4.0..60.0), maybe(4.0..60.0), maybe(5.0..120.0)),
        off in maybe(0.0..3.0),
        guard in maybe(-10.0..40.0),
        measured in maybe((180.0..240.0, 600.0..680.0)),
        ends in prop_oneof![3 => Just((None, None)), 1 => (maybe(end_gaps()), maybe(end_gaps()))],
        bodies in prop_oneof![2 => Just(vec![]), 1 => prop::collection::vec(body(), 1..3)],
    ) -> Space {
        let mut space = Space::new();
        try_set!(space, with_inner_clearance gaps.0.map(mm), with_outer_clearance gaps.1.map(mm),
            with_upper_clearance gaps.2.map(mm), with_uncertainty off.map(mm), with_guard_overhang guard.map(mm));
        let tire = measured.map(|(w, d)| MeasuredTire::new().with_width(mm(w)).unwrap().with_diameter(mm(d)).unwrap());
        let mut around = NearbyBodies::new();
        for body in &bodies {
            around.push(*body).unwrap();
        }
        set!(space, with_left ends.0, with_right ends.1, with_measured_tire tire, with_obstacles (!bodies.is_empty()).then_some(around));
        space
    }
}

prop_compose! {
    fn axle()(
        loads in (maybe(400.0..2500.0), maybe(300.0..1500.0)),
        track in maybe(1300.0..1900.0),
        placards in (maybe(select(&[200.0, 230.0, 350.0][..])), maybe(select(&[230.0, 290.0][..]))),
        camber in maybe(-2.0..1.0),
        wheels in prop_oneof![4 => Just(1_u8), 1 => Just(2_u8)],
        hub in maybe(maybe(select(&[57.1, 66.6][..]))),
        scrub in maybe(-15.0..25.0),
        space in maybe(space()),
        brake in maybe((maybe(150.0..200.0), maybe(20.0..50.0))),
        travel in maybe((20.0..90.0, 20.0..90.0)),
        steering in maybe((20.0..40.0, 20.0..35.0)),
    ) -> Axle {
        let mut axle = Axle::new().with_axle_type(AxleType::Independent);
        try_set!(axle, with_max_load loads.0.map(kg), with_normal_load loads.1.map(kg), with_track track.map(mm),
            with_placard placards.0.map(kpa), with_placard_full_load placards.1.map(kpa), with_camber camber.map(deg));
        let hub = hub.map(|spigot| {
            let mut hub = Hub::new().with_bolt_circle("5x112".parse().unwrap())
                .with_thread("M14x1.5".parse().unwrap()).with_fastening(Fastening::Bolt);
            try_set!(hub, with_spigot spigot.map(mm));
            hub
        });
        let brake = brake.map(|(envelope, face)| {
            let mut brake = Brake::new();
            try_set!(brake, with_envelope_radius envelope.map(mm), with_caliper_face face.map(mm));
            brake
        });
        let travel = travel.map(|(j, r)| Travel::new().with_jounce(mm(j)).unwrap().with_rebound(mm(r)).unwrap());
        let mut lean = Steering::new();
        try_set!(lean, with_scrub_radius scrub.map(mm), with_kingpin_inclination scrub.map(|_| deg(12.0)));
        if let Some((inner, outer)) = steering {
            lean = lean.with_lock_inner(deg(inner)).unwrap().with_lock_outer(deg(outer)).unwrap()
                .with_caster(deg(5.0)).unwrap().with_trail(mm(15.0)).unwrap().with_hub_height(mm(310.0)).unwrap();
        }
        set!(axle, with_hub hub, with_brake brake, with_travel travel,
            with_wheels_per_side beadseat::Count::new(wheels), with_space space,
            with_steering scrub.or(steering.map(|_| 0.0)).map(|_| lean));
        axle
    }
}

/// A vehicle with an original of its kind.
#[derive(Clone, Debug)]
struct Scene {
    vehicle: Vehicle,
    original: Setups,
    conditions: Conditions,
    limits: Limits,
}

prop_compose! {
    fn scene()(
        kind in maybe(select(Kind::ALL)),
        drive in maybe(select(Drive::ALL)),
        axles in (maybe(axle()), maybe(axle())),
        top_speed in maybe(100.0..230.0),
        original in select(&[
            ("205/55R16 91V", "6.5Jx16 H2", 46), ("225/45R17 94W XL", "7.5Jx17 H2", 42), ("195/65R15 91H", "6Jx15 H2", 38),
            ("195/70R15C 104/102R", "6Jx15 H2", 60), ("LT245/75R17 121/118S LRE", "7.5Jx17 H2", 25),
            ("315/80R22.5 156/150L", "9.00x22.5", 165), ("120/70R17 M/C 58W", "3.5Jx17", 0), ("205/60R15", "6Jx15 H2", 35),
        ][..]),
        places in (any::<bool>(), any::<bool>(), any::<bool>()),
        over_read in maybe(0.0..6.0),
        device in maybe(select(TractionClass::ALL)),
        set in select(LimitSet::ALL),
        dual_gap in maybe(0.0..40.0),
    ) -> Scene {
        let mut vehicle = Vehicle::unknown();
        set!(vehicle, with_kind kind, with_drive drive, with_front axles.0, with_rear axles.1);
        try_set!(vehicle, with_top_speed top_speed.map(kmh), with_over_read over_read.map(percent));
        let (tire, size, inset) = original;
        let (has_inset, has_front, has_rear) = places;
        let wheel = if has_inset || inset > 0 { format!("{size} ET{inset} 5x112 57.1") } else { size.to_owned() };
        let setup = Setup::parse(tire, &wheel).unwrap().with_pressure(kpa(230.0)).unwrap();
        let original = Setups {
            front: (has_front || !has_rear).then_some(setup),
            rear: has_rear.then_some(setup),
        };
        let mut conditions = Conditions::default();
        set!(conditions, with_traction_device device.filter(|_| dual_gap.is_none()));
        let mut limits = Limits::of(set);
        try_set!(limits, with_own_dual_gap dual_gap.map(mm));
        Scene { vehicle, original, conditions, limits }
    }
}

impl Scene {
    fn search<'a>(&'a self, wishes: &'a Wishes) -> Search<'a> {
        Search::new(&self.vehicle, &self.original, &self.conditions, &self.limits, wishes)
    }

    fn verdict(&self, proposed: Setups) -> Verdict {
        let change = Change { original: self.original, proposed };
        verdict(&self.vehicle, &change, &self.conditions, &self.limits)
    }
}

/// The setups of a candidate with all wheels at another inset.
fn at(candidate: &Candidate, hundredths: i32) -> Setups {
    let inset = Inset::from_length(mm(f64::from(hundredths) / 100.0)).unwrap();
    let moved = |setup: Setup| {
        let wheel = setup.wheel();
        let text = match wheel.to_string().split_once(" ET") {
            Some((before, behind)) => {
                let rest = behind.split_once(' ').map_or("", |(_, rest)| rest);
                format!("{before} {inset} {rest}")
            }
            None => format!("{wheel} {inset}"),
        };
        replaced(&setup, Wheel::parse(text.trim()).unwrap())
    };
    let setups = candidate.setups();
    Setups { front: setups.front.map(moved), rear: setups.rear.map(moved) }
}

/// A setup on another wheel, and all else as it was.
fn replaced(setup: &Setup, wheel: Wheel) -> Setup {
    let mut new = Setup::new(setup.tire(), wheel);
    set!(new, with_seat setup.seat(), with_snow setup.snow());
    try_set!(new, with_wheel_rating setup.wheel_rating(), with_pressure setup.pressure(),
        with_pressure_full_load setup.pressure_full_load(), with_barrel_radius setup.barrel_radius(),
        with_spoke_back setup.spoke_back());
    new
}

fn hundredths(inset: Inset) -> i32 {
    (in_mm(inset.length()) * 100.0).round() as i32
}

/// A few of the sizes, so that a case is quick: those near the original's rim.
fn nearby(scene: &Scene) -> Wishes {
    let any = scene.original.front.or(scene.original.rear).unwrap();
    Wishes::new().with_rim_diameter(any.tire().size().rim_diameter())
}

/// A tire wider by so many millimetres, of another aspect ratio, on the same rim.
fn neighbour(tire: &Tire, wider: u32, aspect: u32) -> Option<Tire> {
    let size = tire.size().to_string();
    let (before, behind) = size.split_once('/')?;
    let (_, behind) = behind.split_once('R')?;
    let number: u32 = before.trim_start_matches(|c: char| c.is_alphabetic()).parse().ok()?;
    let (prefix, _) = before.split_at(before.len() - number.to_string().len());
    format!("{prefix}{}/{aspect}R{behind}", number + wider).parse().ok()
}

/// How far above the index of a size what is expected of it may lie: `tests/size_loads.rs` holds it.
const FURTHEST_ABOVE: u16 = 18;

/// The load index that is stamped on a tire, alone or in a pair, as its designation reads.
fn index_as_fitted(tire: &Tire, is_in_pair: bool) -> Option<u16> {
    let text = tire.service()?.to_string();
    let mut indices = text.trim_matches(|c: char| !c.is_ascii_digit()).split('/');
    let single = indices.next()?;
    if is_in_pair { indices.next()? } else { single }.parse().ok()
}

/// A size with its load version and load range, as the reference names them.
fn strength(tire: &Tire) -> [String; 3] {
    let text = |some: Option<&dyn ToString>| some.map_or(String::new(), |some| some.to_string());
    let (version, range) = (tire.load_version(), tire.load_range());
    [tire.size().to_string(), text(version.as_ref().map(|v| v as _)), text(range.as_ref().map(|r| r as _))]
}

/// The load indices of sizes in the reference, but for high load, which is by estimate.
fn indices_of_sizes() -> BTreeMap<[String; 3], u16> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../reference/size_loads.csv");
    let rows = csv::Reader::from_path(path).unwrap().into_records().map(Result::unwrap);
    rows.filter(|row| !row[0].starts_with("HL"))
        .map(|row| ([0, 1, 2].map(|n| row[n].to_owned()), row[3].parse().unwrap()))
        .collect()
}

/// An axle with a length that was measured on it.
type Measured<'a> = &'a dyn Fn(&Axle, f64) -> Axle;

/// A law of which a case is a whole search is tried on fewer. `proptest!` would set the usual number again.
fn holds<S: Strategy>(over: &S, law: impl Fn(S::Value) -> Result<(), TestCaseError>) {
    let usual = ProptestConfig::default();
    let fewer = ProptestConfig { cases: usual.cases / 16, source_file: Some(file!()), ..usual };
    TestRunner::new(fewer).run(over, law).unwrap_or_else(|failed| panic!("{failed}"));
}

macro_rules! laws {
    ($($(#[$meta:meta])* fn $name:ident($($arg:pat in $strategy:expr),+ $(,)?) $body:block)+) => {
        $($(#[$meta])* fn $name() {
            holds(&($($strategy,)+), |($($arg,)+)| { $body Ok(()) });
        })+
    };
}

laws! {
    #[test]
    fn nothing_that_is_given_is_beyond(scene in scene()) {
        let wishes = nearby(&scene);
        for candidate in scene.search(&wishes).candidates().step_by(7).take(40) {
            prop_assert_ne!(scene.verdict(candidate.setups()), Verdict::Beyond, "{}", candidate);
            let change = Change { original: scene.original, proposed: candidate.setups() };
            let report = assess(&scene.vehicle, &change, &scene.conditions, &scene.limits);
            prop_assert_eq!(report.overall(), candidate.verdict());
            for check in report.checks() {
                let is_open = check.verdict() == Verdict::NotAssessed;
                prop_assert!(!is_open || candidate.not_judged().has(check.id()));
            }
            for choice in candidate.choices() {
                let inset = choice.setup().wheel().inset().unwrap();
                prop_assert!(choice.insets().contains(inset));
                prop_assert_eq!(hundredths(inset) % 100, 0);
            }
        }
    }

    #[test]
    fn intervals_end_where_a_check_does(scene in scene()) {
        let wishes = nearby(&scene);
        for candidate in scene.search(&wishes).candidates().step_by(11).take(12) {
            let choice = candidate.choices().next().unwrap();
            let (min, max) = (choice.insets().min(), choice.insets().max());
            if min.value() == max.value() {
                continue;
            }
            for (end, out) in [(min, -1), (max, 1)] {
                let step = hundredths(end.value());
                prop_assert_ne!(scene.verdict(at(&candidate, step)), Verdict::Beyond, "{} {:?}", candidate, end);
                if end.check().is_some() && step.abs() < 30_000 {
                    prop_assert_eq!(scene.verdict(at(&candidate, step + out)), Verdict::Beyond, "{} {:?}", candidate, end);
                }
            }
        }
    }

    #[test]
    fn what_brute_force_accepts_lies_in_an_interval(scene in scene(), seed in 0_usize..1000) {
        let wishes = nearby(&scene);
        let search = scene.search(&wishes);
        let mut given: BTreeMap<String, Vec<(i32, i32)>> = BTreeMap::new();
        let key = |tire: &Tire, wheel: &Wheel| format!("{} {}", tire.size(), wheel.size().width());
        for candidate in search.candidates() {
            let choice = candidate.choices().next().unwrap();
            let ends = (hundredths(choice.insets().min().value()), hundredths(choice.insets().max().value()));
            given.entry(key(&choice.setup().tire(), &choice.setup().wheel())).or_default().push(ends);
        }
        let any = scene.original.front.or(scene.original.rear).unwrap();
        // Neighbours of the original, at every half millimetre around where it stood.
        let pick = |of: usize, n: usize| (seed / of) % n;
        let wider = 10 * pick(1, 3) as u32;
        let Some(tire) = neighbour(&any.tire(), wider, [50, 55, 60, 65, 70, 80][pick(3, 6)]) else { return Ok(()) };
        // Rims with seats of 15° are in quarter inches, others in half inches.
        let has_steep_seats = any.wheel().size().diameter().seat_taper() == SeatTaper::FifteenDegree;
        let step = if has_steep_seats { 1 } else { 2 };
        let width = any.wheel().size().width().quarters() + step * pick(18, 3) as u16;
        let width = RimWidth::from_quarters(width).unwrap();
        let around = any.wheel().inset().map_or(0, hundredths) / 100;
        let contour = if has_steep_seats { ("x", "") } else { ("Jx", " H2") };
        for half in (2 * (around - 30))..(2 * (around + 30)) {
            let text = format!("{width}{}{}{} ET{}", contour.0, any.wheel().size().diameter(), contour.1, f64::from(half) / 2.0);
            let Ok(wheel) = text.parse::<Wheel>() else { return Ok(()) };
            let setups = search.completed(tire, wheel);
            if scene.verdict(setups) == Verdict::Beyond {
                continue;
            }
            let intervals = given.get(&key(&tire, &wheel));
            // An interval without a whole millimetre is no candidate.
            let whole = [half - half.rem_euclid(2), half + half.rem_euclid(2)];
            let has_whole = whole.into_iter().any(|half| {
                let text = format!("{width}{}{}{} ET{}", contour.0, any.wheel().size().diameter(), contour.1, half / 2);
                scene.verdict(search.completed(tire, text.parse().unwrap())) != Verdict::Beyond
            });
            let lies = intervals.is_some_and(|of| of.iter().any(|&(a, b)| a <= half * 50 && half * 50 <= b));
            prop_assert!(lies || !has_whole, "{} on {} is given nowhere: {:?}", tire, wheel, intervals);
        }
    }

    /// Extra load and load ranges are looked for where standard load does not suffice; what is told of the load index is
    /// that of the tire as it is fitted, and is held against what the reference has for the size, which is of tires
    /// fitted singly.
    #[test]
    fn a_candidate_says_whether_its_tires_will_be_found(scene in scene()) {
        let wishes = nearby(&scene);
        let reference = indices_of_sizes();
        let originals = [scene.original.front, scene.original.rear];
        let axles = [scene.vehicle.front(), scene.vehicle.rear()];
        for candidate in scene.search(&wishes).candidates().step_by(5).take(60) {
            for choice in candidate.choices() {
                let n = usize::from(choice.position() == Position::Rear);
                let (tire, original) = (choice.setup().tire(), originals[n].unwrap().tire());
                let same = original.size() == tire.size();
                let listed = tire.size().listed_in().or(same.then_some(Citation::ORIGINAL));
                prop_assert_eq!(choice.listed_in(), listed, "{}", tire);
                let wheels = axles[n].and_then(|axle| axle.wheels_per_side()).map_or(1, |count| count.get());
                let is_passenger = tire.size().class().is_passenger();
                let is_in_pair = wheels > 1 && !is_passenger;
                let needs = choice.needs();
                let asked = index_as_fitted(&tire, is_in_pair);
                if let Some(told) = needs.load_index() {
                    prop_assert_eq!(Some(told.number()), asked, "{} {:?}", tire, choice.position());
                }
                let of_original = index_as_fitted(&original, is_in_pair).filter(|_| same);
                let found = choice.expectation();
                match (asked, reference.get(&strength(&tire)).copied()) {
                    (None, _) => prop_assert_eq!(found, Expectation::NotKnown, "{}", tire),
                    (Some(asked), _) if of_original.is_some_and(|own| asked <= own) => {
                        prop_assert_eq!(found, Expectation::Meets, "{}", tire);
                    }
                    (Some(_), _) if is_in_pair => prop_assert_ne!(found, Expectation::Meets, "{}", tire),
                    (Some(asked), Some(row)) if is_passenger => {
                        let right = if asked <= row { Expectation::Meets } else { Expectation::Exceeds };
                        prop_assert_eq!(found, right, "{}", tire);
                    }
                    // A weaker strength follows from a stronger one, to within a step.
                    (Some(asked), Some(row)) if asked < row => prop_assert_eq!(found, Expectation::Meets, "{}", tire),
                    (Some(asked), Some(row)) if asked > row + FURTHEST_ABOVE => {
                        prop_assert_eq!(found, Expectation::Exceeds, "{}", tire);
                    }
                    _ => {}
                }
                prop_assert_eq!(needs.load_version(), tire.load_version().filter(|_| needs.load_index().is_some()));
                prop_assert_eq!(needs.load_range(), tire.load_range().filter(|_| needs.load_index().is_some()));
            }
            let worst = candidate.choices().map(|choice| choice.expectation()).min();
            prop_assert_eq!(Some(candidate.expectation()), worst);
        }
    }

    /// A near miss is beyond the check that it names, and beyond none with the change; no cheaper one does.
    #[test]
    fn a_near_miss_is_one_change_away(scene in scene(), keeps in any::<bool>()) {
        let wishes = if keeps { Wishes::new().with_keep(Keep::Wheels) } else { nearby(&scene) };
        let search = scene.search(&wishes);
        for miss in search.near_misses().step_by(3).take(8) {
            let setups = miss.setups();
            let change = Change { original: scene.original, proposed: setups };
            let report = assess(&scene.vehicle, &change, &scene.conditions, &scene.limits);
            let is_beyond = |check: &Check| check.verdict() == Verdict::Beyond;
            prop_assert!(report.checks().any(|check| is_beyond(&check) && check.id() == miss.fails()), "{}", miss);
            prop_assert_eq!(search.what_would(&setups), Some(miss.remedy()), "{}", miss);
            // The change, made again from without, where something is beyond.
            let on = [Position::Front, Position::Rear]
                .map(|axle| report.checks().any(|check| is_beyond(&check) && check.position().name().starts_with(axle.name())));
            let (mut vehicle, mut proposed) = (scene.vehicle.clone(), setups);
            let mut places = [&mut proposed.front, &mut proposed.rear];
            for (n, place) in places.iter_mut().enumerate().filter(|(n, _)| on[*n]) {
                let axle = if n == 0 { scene.vehicle.front() } else { scene.vehicle.rear() };
                match miss.remedy() {
                    Remedy::Spacer(more) => {
                        let own = place.and_then(|setup| setup.spacer()).unwrap_or_default();
                        **place = place.map(|setup| setup.with_spacer(own + more).unwrap());
                    }
                    Remedy::Ring => **place = place.map(|setup| setup.with_ring(true)),
                    Remedy::Lip(less) => {
                        let mut space = serde_json::to_value(axle.unwrap().space().unwrap()).unwrap();
                        for pointer in ["", "/left", "/right"] {
                            let gap = format!("{pointer}/outer_clearance_mm");
                            if let Some(gap) = space.pointer_mut(&gap) {
                                *gap = (gap.as_f64().unwrap() + in_mm(less)).into();
                            }
                        }
                        let axle = axle.unwrap().clone().with_space(serde_json::from_value(space).unwrap());
                        vehicle = if n == 0 { vehicle.with_front(axle) } else { vehicle.with_rear(axle) };
                    }
                    _ => return Ok(()),
                }
            }
            let change = Change { original: scene.original, proposed };
            let with = verdict(&vehicle, &change, &scene.conditions, &scene.limits);
            prop_assert_ne!(with, Verdict::Beyond, "{}: {}", miss, miss.remedy());
        }
    }

    /// Of all pairs of what fits either axle by itself, those are given which differ in size, the wider tire in the rear,
    /// and which an assessment accepts.
    #[test]
    fn axles_that_differ_are_paired(scene in scene(), wider in 20.0..140.0) {
        const EACH: usize = 60;
        const PAIRS: usize = 150;
        // Both axles, on sizes like those that were drawn.
        let drawn = scene.original.front.or(scene.original.rear).unwrap();
        let kind = scene.vehicle.kind().filter(|kind| *kind != Kind::Trailer).unwrap_or(Kind::Passenger);
        let scene = Scene { vehicle: scene.vehicle.with_kind(kind), original: Setups::both(drawn), ..scene };
        let least = drawn.tire().size().nominal_width().unwrap() + mm(wider);
        let wishes = nearby(&scene).with_least_width(least).unwrap().with_diameter_within(percent(1.5)).unwrap();
        let pairs = scene.search(&wishes).staggered::<EACH, PAIRS>();
        let given: Vec<_> = pairs.iter().map(|pair| pair.setups()).collect();
        for pair in pairs.iter() {
            prop_assert_eq!(scene.verdict(pair.setups()), pair.verdict(), "{}", pair);
            prop_assert_ne!(pair.verdict(), Verdict::Beyond, "{}", pair);
        }
        let of_axle = |original: Setups| -> Vec<Setup> {
            let search = Search::new(&scene.vehicle, &original, &scene.conditions, &scene.limits, &wishes);
            search.candidates().map(|candidate| *candidate.choices().next().unwrap().setup()).collect()
        };
        let fronts = of_axle(Setups { front: Some(drawn), rear: None });
        let rears = of_axle(Setups { front: None, rear: Some(drawn) });
        if fronts.len() > EACH || rears.len() > EACH {
            return Ok(());
        }
        let mut accepted = Vec::new();
        for front in &fronts {
            for rear in &rears {
                let (a, b) = (front.tire().size(), rear.tire().size());
                let proposed = Setups { front: Some(*front), rear: Some(*rear) };
                if a != b && a.nominal_width() <= b.nominal_width() && scene.verdict(proposed) != Verdict::Beyond {
                    accepted.push(proposed);
                }
            }
        }
        prop_assert_eq!(given.len(), accepted.len().min(PAIRS));
        prop_assert!(given.iter().all(|pair| accepted.contains(pair)));
    }

    /// No gap or length that may be measured settles more checks of what was found than the fact that is named.
    #[test]
    fn no_measurement_narrows_more_than_the_one_that_is_named(scene in scene(), at in 3.0..40.0) {
        let wishes = nearby(&scene);
        let found: Vec<_> = scene.search(&wishes).candidates().step_by(9).take(6).collect();
        let most = scene.search(&wishes).narrowing(&found).map_or(0, |narrowing| narrowing.settles());
        let unjudged = |vehicle: &Vehicle| -> Vec<(usize, CheckId, Position)> {
            let open = |(n, candidate): (usize, &Candidate)| {
                let change = Change { original: scene.original, proposed: candidate.setups() };
                let report = assess(vehicle, &change, &scene.conditions, &scene.limits);
                let open = report.checks().filter(|check| check.verdict() == Verdict::NotAssessed);
                open.map(|check| (n, check.id(), check.position())).collect::<Vec<_>>()
            };
            found.iter().enumerate().flat_map(open).collect()
        };
        let before = unjudged(&scene.vehicle);
        let gap = |with: fn(Space, f64) -> Space| move |axle: &Axle, at| axle.clone().with_space(with(axle.space().cloned().unwrap_or(Space::new()), at));
        let measured: [Measured<'_>; 4] = [
            &gap(|space, at| space.with_inner_clearance(mm(at)).unwrap()),
            &gap(|space, at| space.with_outer_clearance(mm(at)).unwrap()),
            &gap(|space, at| space.with_upper_clearance(mm(at)).unwrap()),
            &gap(|space, at| space.with_guard_overhang(mm(at)).unwrap()),
        ];
        for with in measured {
            for is_front in [true, false] {
                let axle = if is_front { scene.vehicle.front() } else { scene.vehicle.rear() };
                let Some(axle) = axle else { continue };
                let new = with(axle, at);
                let vehicle = scene.vehicle.clone();
                let vehicle = if is_front { vehicle.with_front(new) } else { vehicle.with_rear(new) };
                let after = unjudged(&vehicle);
                let narrows = |id: CheckId| id.is_vital() && matches!(id, CheckId::InnerClearance | CheckId::OuterClearance | CheckId::UpperClearance);
                let settled = before.iter().filter(|check| narrows(check.1) && !after.contains(check)).count();
                prop_assert!(settled as u32 <= most, "{} of {}", settled, most);
            }
        }
    }

    #[test]
    fn parts_make_the_whole(scene in scene(), at in 0.0..1.0) {
        let wishes = nearby(&scene);
        let search = scene.search(&wishes);
        let middle = (f64::from(search.sizes()) * at) as u32;
        let whole: Vec<_> = search.candidates().map(|c| (c.number(), c.to_string())).collect();
        let parts = search.part(0..middle).chain(search.part(middle..search.sizes()));
        prop_assert!(whole.windows(2).all(|pair| pair[0].0 <= pair[1].0));
        prop_assert_eq!(whole, parts.map(|c| (c.number(), c.to_string())).collect::<Vec<_>>());
        let misses = search.near_misses().map(|miss| miss.number());
        let in_parts = search.near_misses_of(0..middle).chain(search.near_misses_of(middle..search.sizes()));
        prop_assert_eq!(misses.collect::<Vec<_>>(), in_parts.map(|miss| miss.number()).collect::<Vec<_>>());
    }

    #[test]
    fn the_best_are_those_that_sorting_gives(scene in scene()) {
        let wishes = nearby(&scene);
        let mut all: Vec<_> = scene.search(&wishes).candidates().collect();
        let mut best = Best::<5>::new();
        best.extend(all.iter().copied());
        all.sort_by(|a, b| best.score().compare(b, a));
        let scores: Vec<_> = all.iter().map(|candidate| best.score().score(candidate)).collect();
        prop_assert!(scores.windows(2).all(|pair| pair[0] >= pair[1]));
        let bought = |c: &Candidate| (c.expectation(), c.is_listed(), c.is_on_approved_rims());
        prop_assert!(all.windows(2).all(|pair| bought(&pair[0]) >= bought(&pair[1])));
        let best: Vec<_> = best.iter().map(Candidate::number).collect();
        prop_assert_eq!(best, all.iter().take(5).map(Candidate::number).collect::<Vec<_>>());
    }

    #[test]
    fn wheels_and_tires_that_stay_stay(scene in scene(), spacers in any::<bool>()) {
        for keep in [Keep::Wheels, Keep::Tires] {
            let wishes = Wishes::new().with_keep(keep).with_spacers(spacers);
            for candidate in scene.search(&wishes).candidates().take(20) {
                prop_assert_ne!(scene.verdict(candidate.setups()), Verdict::Beyond, "{}", candidate);
                let setups = candidate.setups();
                for (new, old) in [(setups.front, scene.original.front), (setups.rear, scene.original.rear)] {
                    let Some((new, old)) = new.zip(old) else { continue };
                    match keep {
                        Keep::Wheels => prop_assert_eq!(new.wheel(), old.wheel()),
                        _ => prop_assert_eq!(new.tire(), old.tire()),
                    }
                }
            }
        }
    }
}

prop_compose! {
    /// A tire with what belongs to it.
    fn tire_of_stock()(
        size in prop_oneof![
            4 => (145_u32..=285, 7_u32..=16, 13_u32..=20).prop_map(|(width, aspect, rim)| {
                format!("{}/{}R{rim} 95V", width / 10 * 10 + 5, aspect * 5)
            }),
            1 => select(&["205/60R15 91H", "205/55R16", "195/70R15C 104/102R", "LT245/75R17 121/118S LRE", "120/70R17 M/C 58W",
                "315/80R22.5 156/150L", "7.50R16C 116/114N", "31x10.50R15LT 109Q", "225/45ZR17 94W XL"][..]).prop_map(str::to_owned),
        ],
        pressures in (maybe(select(&[200.0, 230.0, 260.0][..])), maybe(select(&[230.0, 290.0][..]))),
        most in maybe(select(&[220.0, 350.0][..])),
        snow in maybe(any::<bool>()),
        tread in maybe(0.0..9.0),
    ) -> Option<Setup> {
        let mut setup = Setup::new(size.parse().ok()?, "6.5Jx16 ET46".parse().unwrap());
        try_set!(setup, with_pressure pressures.0.map(kpa), with_pressure_full_load pressures.1.map(kpa),
            with_max_pressure most.map(kpa));
        set!(setup, with_snow snow, with_left tread.map(|depth| TireInUse::new().with_tread_depth(mm(depth)).unwrap()));
        Some(setup)
    }
}

prop_compose! {
    /// A wheel with what belongs to it.
    fn wheel_of_stock()(
        size in prop_oneof![
            4 => (7_u16..=22, 13_u32..=20).prop_map(|(width, rim)| {
                format!("{}Jx{rim} H2", RimWidth::from_quarters(width * 2).unwrap())
            }),
            1 => select(&["9.00x22.5", "3.5Jx17", "6.00GS-16", "7Jx16", "6.5x16"][..]).prop_map(str::to_owned),
        ],
        place in prop_oneof![
            5 => (-60..90_i32).prop_map(|inset| format!(" ET{inset}")),
            1 => (-30.0..70.0).prop_map(|inset: f64| format!(" ET{inset:.3}")),
            1 => (110_u32..170).prop_map(|back| format!(" BS {back}")),
            1 => Just(String::new()),
        ],
        drilling in select(&[" 5x112 57.1", " 5x112 66.6", " 5x114.3 57.1", " 5x112", ""][..]),
        rating in maybe((select(&[350.0, 690.0, 1200.0][..]), maybe(select(&[600.0, 700.0][..])))),
        spacer in maybe(select(&[3.0, 10.0, 25.0][..])),
        barrel in maybe(150.0..200.0),
        most in maybe(select(&[210.0, 450.0][..])),
    ) -> Option<Setup> {
        let mut setup = Setup::new("205/55R16".parse().unwrap(), format!("{size}{place}{drilling}").parse().ok()?);
        try_set!(setup, with_wheel_rating rating.map(|(rating, _)| kg(rating)),
            with_wheel_rating_diameter rating.and_then(|(_, diameter)| diameter).map(mm),
            with_spacer spacer.map(mm), with_barrel_radius barrel.map(mm), with_wheel_max_pressure most.map(kpa));
        Some(setup)
    }
}

/// Tires and wheels that are put together, among them the originals.
fn parts_of_stock() -> impl Strategy<Value = [Vec<Option<Setup>>; 2]> {
    let tires = prop::collection::vec(tire_of_stock(), 1..6);
    let wheels = prop::collection::vec(wheel_of_stock(), 1..10);
    (tires, wheels).prop_map(|(tires, wheels)| [tires, wheels])
}

proptest! {
    /// What a stock says of many is what an assessment says of each, however often a tire meets a rim, alike on both
    /// axles and staggered, on one core and on all.
    #[test]
    fn a_stock_is_judged_as_assessments_do(
        scene in scene(),
        parts in parts_of_stock(),
        rows in prop::collection::vec(any::<[prop::sample::Index; 4]>(), 1..60),
    ) {
        let wishes = Wishes::new();
        let originals = || scene.original.front.into_iter().chain(scene.original.rear);
        let [tires, wheels] = parts.map(|some| some.into_iter().flatten().chain(originals()).collect::<Vec<_>>());
        // Neighbours of the original, of which more fit than of any.
        let near = originals().flat_map(|setup| {
            let at = setup.wheel().inset().map_or(30, |inset| hundredths(inset) / 100);
            [-12, -4, 0, 3, 11].map(|more| replaced(&setup, moved_to(&setup.wheel(), at + more)))
        });
        let wheels: Vec<_> = wheels.into_iter().chain(near).collect();
        let mut stock = Stock::new(scene.search(&wishes), &tires, &wheels);
        let rows: Vec<[Pair; 2]> = rows.iter().map(|[a, b, c, d]| {
            let pair = |tire: &prop::sample::Index, wheel: &prop::sample::Index| Pair {
                tire: tire.index(tires.len()) as u32, wheel: wheel.index(wheels.len()) as u32,
            };
            if d.index(3) == 0 { [pair(a, b), pair(c, d)] } else { [pair(a, b); 2] }
        }).collect();
        // The second time from what was kept.
        let mut verdicts = vec![Verdict::NotApplicable; rows.len()];
        let mut again = verdicts.clone();
        let mut on_all_cores = verdicts.clone();
        stock.judge(&rows, &mut verdicts);
        stock.judge(&rows, &mut again);
        stock.judge_in_parallel(&rows, &mut on_all_cores);
        prop_assert_eq!(&verdicts, &again);
        prop_assert_eq!(&verdicts, &on_all_cores);
        for (row, judged) in rows.iter().zip(verdicts) {
            let setup = |pair: Pair| tires[pair.tire as usize].on_wheel_of(&wheels[pair.wheel as usize]);
            let proposed = Setups {
                front: scene.original.front.map(|_| setup(row[0])),
                rear: scene.original.rear.map(|_| setup(row[1])),
            };
            let change = Change { original: scene.original, proposed };
            let report = assess(&scene.vehicle, &change, &scene.conditions, &scene.limits);
            prop_assert_eq!(report.overall(), judged, "{:?} {:?}", proposed, report);
        }
    }

    /// The columns refuse only what is beyond.
    #[test]
    fn a_screen_refuses_only_what_is_beyond(scene in scene(), parts in parts_of_stock()) {
        let wishes = Wishes::new();
        let screen = Screen::of(scene.search(&wishes));
        let [tires, wheels] = parts.map(|some| some.into_iter().flatten().collect::<Vec<_>>());
        for (tire, wheel) in tires.iter().flat_map(|tire| wheels.iter().map(move |wheel| (tire, wheel))) {
            let setup = tire.on_wheel_of(wheel);
            let originals = [(Position::Front, scene.original.front), (Position::Rear, scene.original.rear)];
            for (place, _) in originals.into_iter().filter(|(_, original)| original.is_some()) {
                let Some([half_width, middle, diameter]) = screen.measures(place, &setup) else { continue };
                let columns = Columns { half_width: &[half_width], middle: &[middle], diameter: &[diameter] };
                let mut answer = [true];
                screen.admits(place, &columns, &mut answer);
                if !answer[0] {
                    let only = |at| (at == place).then_some(setup);
                    let proposed = Setups { front: only(Position::Front), rear: only(Position::Rear) };
                    prop_assert_eq!(scene.verdict(proposed), Verdict::Beyond, "{:?}", setup);
                }
            }
        }
    }
}

/// The same wheel at another inset, in millimetres.
fn moved_to(wheel: &Wheel, inset: i32) -> Wheel {
    let text = wheel.to_string();
    let parts = text.split(' ').filter(|part| !part.starts_with("ET"));
    let (mut before, mut behind) = (Vec::new(), Vec::new());
    for part in parts {
        if part.contains('x') && !before.is_empty() || part.parse::<f64>().is_ok() {
            behind.push(part)
        } else {
            before.push(part)
        }
    }
    format!("{} ET{inset} {}", before.join(" "), behind.join(" ")).trim().parse().unwrap()
}

/// No row of a stock allocates.
#[test]
fn a_row_of_a_stock_allocates_nothing() {
    let vehicle = Vehicle::new(Kind::Passenger).with_front(Axle::new());
    let original = Setups { front: Some(Setup::parse("205/55R16 91V", "6.5Jx16 ET46").unwrap()), rear: None };
    let (conditions, limits, wishes) = (Conditions::default(), Limits::default(), Wishes::new());
    let tires =
        ["205/55R16 91V", "225/45R17 94W", "205/50R17 93W"].map(|tire| Setup::parse(tire, "7Jx17").unwrap());
    let wheels = ["7Jx17 ET40", "7.5Jx17 ET42", "7.5Jx17 BS 140", "7Jx16"]
        .map(|wheel| Setup::parse("205/55R16", wheel).unwrap());
    let search = Search::new(&vehicle, &original, &conditions, &limits, &wishes);
    let mut stock = Stock::new(search, &tires, &wheels);
    let rows: Vec<_> = (0..600).map(|n| Pair { tire: n % 3, wheel: n / 3 % 4 }).collect();
    let mut verdicts = vec![Verdict::NotApplicable; rows.len()];
    let info = allocation_counter::measure(|| stock.judge(&rows, &mut verdicts));
    assert_eq!(info.count_total, 0);
    assert!(verdicts.contains(&Verdict::Beyond) && verdicts.contains(&Verdict::Marginal));
    // What is none of the stock is not assessed.
    let mut verdicts = [Verdict::Within; 2];
    stock.judge(&[Pair { tire: 3, wheel: 0 }, Pair { tire: 0, wheel: 4 }], &mut verdicts);
    assert_eq!(verdicts, [Verdict::NotAssessed; 2]);
}

/// What nearly fits allocates nothing where bodies stand around the wheels either, but for copies of the vehicle with less
/// of the lip.
#[test]
fn near_misses_allocate_for_the_lip_alone() {
    let body = NearbyBody::gap(BodyKind::Other, GapSide::Inner, mm(40.0), mm(0.0), mm(0.0)).unwrap();
    let mut around = NearbyBodies::new();
    around.push(body).unwrap();
    let original = Setups { front: Some(Setup::parse("205/55R16 91V", "6.5Jx16 ET46").unwrap()), rear: None };
    let (conditions, limits) = (Conditions::default(), Limits::default());
    let wishes = Wishes::new().with_keep(Keep::Wheels);
    for (inner, outer, has_spacers, has_lips) in
        [(7.0, None, true, false), (25.0, Some(12.0), false, true), (12.0, Some(25.0), true, false)]
    {
        let mut space = Space::new().with_inner_clearance(mm(inner)).unwrap().with_obstacles(around.clone());
        try_set!(space, with_outer_clearance outer.map(mm));
        let vehicle = Vehicle::new(Kind::Passenger).with_front(Axle::new().with_space(space));
        let search = Search::new(&vehicle, &original, &conditions, &limits, &wishes);
        let (mut spacer, mut lip) = (None, None);
        let walked = allocation_counter::measure(|| {
            for miss in search.near_misses() {
                match miss.remedy() {
                    Remedy::Spacer(_) => spacer = Some(miss),
                    Remedy::Lip(_) => lip = Some(miss),
                    _ => {}
                }
            }
        });
        assert_eq!([spacer.is_some(), lip.is_some()], [has_spacers, has_lips], "{inner}");
        assert_eq!(walked.count_total > 0, has_lips, "{inner}");
        // Where a spacer would do, the lip is not looked at.
        if let Some(miss) = spacer {
            let told = allocation_counter::measure(|| {
                assert_eq!(search.what_would(&miss.setups()), Some(miss.remedy()));
            });
            assert_eq!(told.count_total, 0, "{inner}");
        }
    }
}

/// A search allocates nothing.
#[test]
fn a_search_allocates_nothing() {
    let vehicle = Vehicle::new(Kind::Passenger).with_front(Axle::new());
    let original = Setups { front: Some(Setup::parse("205/55R16 91V", "6.5Jx16 ET46").unwrap()), rear: None };
    let (conditions, limits, wishes) = (Conditions::default(), Limits::default(), Wishes::new());
    let mut best = Best::<3>::new();
    let near = Search::new(&vehicle, &original, &conditions, &limits, &wishes);
    let info = allocation_counter::measure(|| assert!(near.near_misses().count() < 1_000_000));
    assert_eq!(info.count_total, 0);
    let both = Setups::both(original.front.unwrap());
    let wishes_of_few =
        Wishes::new().with_rim_diameter("16".parse().unwrap()).with_diameter_within(percent(1.0)).unwrap();
    let staggered = Search::new(&vehicle, &both, &conditions, &limits, &wishes_of_few);
    let info = allocation_counter::measure(|| assert_eq!(staggered.staggered::<8, 3>().iter().count(), 3));
    assert_eq!(info.count_total, 0);
    let info = allocation_counter::measure(|| {
        best.extend(Search::new(&vehicle, &original, &conditions, &limits, &wishes).candidates());
    });
    assert_eq!(info.count_total, 0);
    assert_eq!(best.iter().count(), 3);
    assert!(best.iter().all(|candidate| candidate.not_judged().has(CheckId::InnerClearance)));
}
