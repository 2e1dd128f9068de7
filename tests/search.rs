//! What a search puts first, and what it would have measured next.
#![cfg(all(feature = "jiff", feature = "serde", feature = "svg"))]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common {
    pub(crate) mod scenario;
}

use beadseat::fitment::Position;
use beadseat::rim::{RimWidth, SeatTaper};
use beadseat::scenario::Scenario;
use beadseat::search::{Best, Candidate, Expectation, Keep, Search, Wishes};
use common::scenario::{SHIPPED, read, shipped, spelled_out};

fn scenario(text: &str) -> Scenario {
    serde_json::from_str(text).unwrap()
}

fn example(name: &str) -> Scenario {
    read(&shipped(name))
}

/// The best of a search, and where the fact belongs that would narrow it most.
fn best<const N: usize>(scenario: &Scenario) -> (Best<N>, Option<String>) {
    let (original, wishes) = (scenario.change().original, Wishes::new());
    let search =
        Search::new(scenario.vehicle(), &original, scenario.conditions(), scenario.limits(), &wishes);
    let mut best = Best::new();
    best.extend(search.candidates());
    let narrowing = search.narrowing(best.iter()).map(|narrowing| narrowing.path().to_string());
    (best, narrowing)
}

/// Tires that can be bought come first, those of the original's size among them.
#[test]
fn the_best_ten_can_be_bought() {
    for (name, original) in [("field-survey-wagon", "205/55R16 91"), ("rangers-pickup", "LT245/75R17 121")] {
        let (best, _) = best::<10>(&example(name));
        let candidates: Vec<_> = best.iter().collect();
        assert_eq!(candidates.len(), 10, "{name}");
        for candidate in &candidates {
            assert_eq!(candidate.expectation(), Expectation::Meets, "{candidate}");
            assert!(candidate.is_listed() && candidate.is_on_approved_rims(), "{candidate}");
        }
        assert!(candidates[0].to_string().starts_with(original), "{}", candidates[0]);
    }
}

/// Extra load is asked for where standard load does not suffice, and only there.
#[test]
fn needs_say_the_load_version() {
    let (best, _) = best::<80>(&example("field-survey-wagon"));
    for (size, version) in
        [("225/45R17", None), ("205/55R16", None), ("225/40R18", Some("XL")), ("205/50R17", Some("XL"))]
    {
        let mut choices = best.iter().flat_map(|candidate| candidate.choices());
        let choice = choices.find(|choice| choice.setup().tire().size().to_string() == size).expect(size);
        let told = choice.needs().load_version().map(|version| version.to_string());
        assert_eq!(told.as_deref(), version, "{size}");
        assert!(choice.needs().load_index().is_some_and(|index| index.number() >= 91), "{size}");
    }
}

/// Of the original's size each axle needs the index that the original has as it is fitted there: in a pair the second.
#[test]
fn an_axle_needs_the_index_of_its_formation() {
    let mut axles = 0;
    for name in SHIPPED {
        let document = shipped(name);
        let pairs = ["front", "rear"].map(|place| document["vehicle"][place]["wheels_per_side"] == 2);
        if !pairs.contains(&true) {
            continue;
        }
        let (best, _) = best::<300>(&example(name));
        for choice in best.iter().flat_map(|candidate| candidate.choices()) {
            let place = choice.position();
            let tire = spelled_out(name)["original"][place.name()]["tire"].as_str().unwrap().to_owned();
            let (size, service) = tire.split_once(' ').unwrap();
            if choice.setup().tire().size().to_string() != size {
                continue;
            }
            let indices: Vec<_> = service.split(|c: char| !c.is_ascii_digit()).collect();
            let own = indices[usize::from(pairs[usize::from(place == Position::Rear)])];
            let told = choice.needs().load_index().map(|index| index.to_string());
            assert_eq!(told.as_deref(), Some(own), "{name} {place:?}");
            assert_eq!(choice.expectation(), Expectation::Meets, "{name} {place:?}");
            axles += 1;
        }
    }
    assert!(axles > 2);
}

/// What is expected of a size is of a tire fitted singly: in a pair no more than the original has is known to be borne, and
/// more than a single tire bears is not.
#[test]
fn what_is_expected_singly_says_little_of_pairs() {
    let rows = [
        // Wheels a side in the rear, what it was built with, the size looked for, what is expected in front and in the rear.
        (2, "295/80R22.5 152/148M", "295/80R22.5", [Expectation::Meets; 2]),
        (2, "295/80R22.5 152/148M", "315/70R22.5", [Expectation::Meets, Expectation::NotKnown]),
        (1, "295/80R22.5 152/148M", "315/70R22.5", [Expectation::Meets; 2]),
        // Pairs that ask for more than one such tire bears by itself.
        (2, "295/80R22.5 172/170M", "295/75R22.5", [Expectation::Exceeds; 2]),
    ];
    for (wheels, original, size, expected) in rows {
        let truck = scenario(&format!(
            r#"{{ "vehicle": {{ "kind": "truck", "top_speed_kmh": 90, "front": {{ "max_load_kg": 6300 }},
                "rear": {{ "max_load_kg": 6000, "wheels_per_side": {wheels} }} }}, "proposed": {{}},
                "original": {{ "front": {{ "tire": "{original}", "wheel": "9.00x22.5 ET165" }}, "rear": "same" }} }}"#
        ));
        let (conditions, limits, change) = (truck.conditions(), truck.limits(), truck.change());
        let wishes = Wishes::new().with_rim_diameter("22.5".parse().unwrap());
        let search = Search::new(truck.vehicle(), &change.original, conditions, limits, &wishes);
        let is_of = |candidate: &Candidate| {
            candidate.choices().all(|choice| choice.setup().tire().size().to_string() == size)
        };
        let found = search.candidates().find(is_of).unwrap_or_else(|| panic!("{original} {size}"));
        let told: Vec<_> = found.choices().map(|choice| choice.expectation()).collect();
        assert_eq!(told, expected, "{original} {size}: {found}");
    }
}

/// A vehicle of which nothing is known but its designations, and one of which three gaps are known too.
#[test]
fn a_search_from_designations_says_what_to_measure_next() {
    let with = |vehicle: &str| {
        scenario(&format!(
            r#"{{ "vehicle": {{ "kind": "passenger" {vehicle} }}, "proposed": {{}}, "original": {{
                "front": {{ "tire": "205/55R16 91V", "wheel": "6.5Jx16 ET46 5x112 57.1" }}, "rear": "same" }} }}"#
        ))
    };
    let gaps = r#""space": { "inner_clearance_mm": 18, "outer_clearance_mm": 30, "upper_clearance_mm": 55 }"#;
    let without_inner = r#""space": { "outer_clearance_mm": 30, "upper_clearance_mm": 55 }"#;
    for (vehicle, next) in [
        (String::new(), "vehicle.front.space.inner_clearance_mm"),
        (format!(r#", "front": {{ {gaps} }}"#), "vehicle.rear.space.inner_clearance_mm"),
        (
            format!(r#", "front": {{ {gaps} }}, "rear": {{ {without_inner} }}"#),
            "vehicle.rear.space.inner_clearance_mm",
        ),
    ] {
        let (best, narrowing) = best::<10>(&with(&vehicle));
        assert_eq!(best.iter().count(), 10, "{vehicle}");
        assert_eq!(narrowing.as_deref(), Some(next), "{vehicle}");
    }
}

/// Where nothing is known to be left of anything, sizes as large as the original's come first.
#[test]
fn with_nothing_known_the_original_comes_first() {
    let saloon = scenario(
        r#"{ "vehicle": {}, "proposed": {}, "original": {
            "front": { "tire": "185/70R14 88T", "wheel": "5.5Jx14 ET40" }, "rear": "same" } }"#,
    );
    let (best, _) = best::<5>(&saloon);
    let original = saloon.change().original.front.unwrap().tire().size();
    let sizes: Vec<_> = best.iter().map(|c| c.choices().next().unwrap().setup().tire().size()).collect();
    assert_eq!(sizes.first(), Some(&original), "{sizes:?}");
    // All are on their measuring rims, so that only how far they are from the original orders them.
    let apart = |size: &beadseat::tire::TireSize| {
        let mm =
            |length: beadseat::uom::si::f64::Length| length.get::<beadseat::uom::si::length::millimeter>();
        let widths = mm(size.nominal_width().unwrap()) - mm(original.nominal_width().unwrap());
        let diameters =
            size.overall_diameter_nominal().unwrap() - original.overall_diameter_nominal().unwrap();
        let rims = f64::from(size.rim_diameter().tenths()) - f64::from(original.rim_diameter().tenths());
        widths.abs() + mm(diameters).abs() + rims.abs()
    };
    assert!(sizes.is_sorted_by(|a, b| apart(a) <= apart(b) + 1.0), "{sizes:?}");
}

/// Tires with seats of 15° are tried on every rim that tables print for them, many of which are quarter inches; those with
/// seats of 5° on half inches only.
#[test]
fn trucks_are_tried_on_the_rims_that_tables_print() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/rim_ranges_confirmed.csv");
    let mut tried_on = 0;
    for row in csv::Reader::from_path(path).unwrap().records().map(Result::unwrap) {
        let [size, printed] = [&row[0], &row[6]];
        let Ok(tire) = size.parse::<beadseat::tire::Tire>() else { continue };
        let code = tire.size().rim_diameter();
        if code.seat_taper() != SeatTaper::FifteenDegree {
            continue;
        }
        let truck = scenario(&format!(
            r#"{{ "vehicle": {{ "kind": "truck" }}, "proposed": {{}},
                "original": {{ "front": {{ "tire": "{size}", "wheel": "{}x{code} ET100" }} }} }}"#,
            &row[2]
        ));
        let (original, wishes) = (truck.change().original, Wishes::new().with_keep(Keep::Tires));
        let search = Search::new(truck.vehicle(), &original, truck.conditions(), truck.limits(), &wishes);
        let width =
            |candidate: &Candidate| candidate.choices().next().unwrap().setup().wheel().size().width();
        let widths: Vec<_> = search.candidates().map(|candidate| width(&candidate)).collect();
        let rims = printed.split([' ', 'H', 'R']).filter_map(|word| word.parse::<RimWidth>().ok());
        for rim in rims {
            assert!(widths.contains(&rim), "{size} on {rim}: {widths:?}");
            tried_on += 1;
        }
    }
    assert!(tried_on > 50, "{tried_on}");
    // A search for new wheels has them too, and first of all.
    let (best, _) = best::<1>(&example("regional-truck-on-duals"));
    assert_eq!(
        best.iter().next().unwrap().setups().front.unwrap().wheel().size().width().to_string(),
        "8.25"
    );
    // An old truck on tires in inches may have either kind of rim.
    let old = scenario(
        r#"{ "vehicle": { "kind": "truck" }, "proposed": {},
            "original": { "front": { "tire": "11R22.5", "wheel": "8.25x22.5 ET100" } } }"#,
    );
    let original = old.change().original;
    for (code, by) in [("22.5", 1), ("16", 2)] {
        let wishes = Wishes::new().with_rim_diameter(code.parse().unwrap());
        let search = Search::new(old.vehicle(), &original, old.conditions(), old.limits(), &wishes);
        let mut candidates = search.candidates();
        let quarters: std::collections::BTreeSet<_> = candidates
            .by_ref()
            .map(|found| found.setups().front.unwrap().wheel().size().width().quarters())
            .collect();
        assert!(
            quarters.iter().zip(quarters.iter().skip(1)).all(|(a, b)| b - a == by),
            "{code}: {quarters:?}"
        );
        assert_eq!(quarters.iter().any(|quarters| quarters % 2 == 1), by == 1, "{code}");
        assert!(candidates.tried() > 0 && candidates.tried() < search.points(), "{code}");
    }
}

/// Every point of a size that is wished for counts as looked at, whether it fits or falls.
#[test]
fn all_that_is_looked_at_counts() {
    let wagon = example("field-survey-wagon");
    let original = wagon.change().original;
    let seventeen: beadseat::rim::RimDiameter = "17".parse().unwrap();
    let flush =
        Wishes::new().with_rim_diameter(seventeen).with_flush_within(beadseat::units::mm(12.0)).unwrap();
    // The lattice has thirteen rim diameters, each with as many points.
    for (wishes, diameters) in
        [(Wishes::new(), 13), (Wishes::new().with_rim_diameter(seventeen), 1), (flush, 1)]
    {
        let search = Search::new(wagon.vehicle(), &original, wagon.conditions(), wagon.limits(), &wishes);
        let mut candidates = search.candidates();
        let found = candidates.by_ref().count() as u64;
        let fallen: u64 = candidates.fallen().map(|(_, points)| u64::from(points)).sum();
        assert_eq!(candidates.tried(), search.points() * diameters / 13, "{wishes:?}");
        assert!(found > 0 && candidates.tried() > fallen, "{wishes:?}");
    }
}

/// Pairs are looked for no longer than it is wished, and it is asked before each candidate and each pair.
#[test]
fn pairs_are_found_no_longer_than_wished() {
    let motorcycle = example("parish-courier-motorcycle");
    let (original, wishes) = (motorcycle.change().original, Wishes::new());
    let (conditions, limits) = (motorcycle.conditions(), motorcycle.limits());
    let search = Search::new(motorcycle.vehicle(), &original, conditions, limits, &wishes);
    let asked_until = |last: usize| {
        let (mut asked, mut walked_last) = (0, 0);
        let pairs = search.staggered_while::<20, 10>(|walked| {
            assert!(walked >= walked_last && walked <= 2 * search.sizes());
            (asked, walked_last) = (asked + 1, walked);
            asked < last
        });
        (pairs.iter().count(), asked)
    };
    let (all, asked) = asked_until(usize::MAX);
    assert_eq!(all, search.staggered::<20, 10>().iter().count());
    // The twenty of each axle, each with each, come last.
    assert!(all > 0 && asked > 400);
    assert_eq!(asked_until(1), (0, 1));
    assert_eq!(asked_until(asked - 400), (0, asked - 400));
    let (some, until) = asked_until(asked - 200);
    assert!(until == asked - 200 && some <= all);
}

/// The near misses of the wagon lack room outboard, or with its own wheels, inboard.
#[test]
fn near_misses_tell_the_one_change() {
    let scenario = example("field-survey-wagon");
    let original = scenario.change().original;
    let near = |scenario: &Scenario, wishes: &Wishes| {
        let search =
            Search::new(scenario.vehicle(), &original, scenario.conditions(), scenario.limits(), wishes);
        let near = search.near_misses().max_by(|a, b| a.compare(b));
        near.map(|near| format!("{near}: {}: {}", near.fails().name(), near.remedy()))
    };
    let best = near(&scenario, &Wishes::new());
    assert_eq!(
        best.as_deref(),
        Some("245/40R17 91H on 8.5Jx17 H2 ET40 5x112 57.1: outer_clearance: 4 mm of the lip away"),
    );
    // Where the strut is nearer, a spacer is what lets a wider tire on.
    let axle = scenario.vehicle().front().unwrap();
    let space = beadseat::vehicle::Space::new().with_inner_clearance(beadseat::units::mm(7.0)).unwrap();
    let tight = scenario.vehicle().clone().with_front(axle.clone().with_space(space));
    let wishes = Wishes::new().with_keep(Keep::Wheels);
    let search = Search::new(&tight, &original, scenario.conditions(), scenario.limits(), &wishes);
    let best = search.near_misses().max_by(|a, b| a.compare(b)).expect("a spacer would do");
    assert_eq!(
        (best.fails().name(), best.remedy().to_string().as_str()),
        ("inner_clearance", "a spacer of 3 mm")
    );
}

/// A motorcycle's tires differ, and keep the step of its rims; on the wagon with all wheels driven only sizes as large as
/// each other are paired.
#[test]
fn tires_that_differ_from_axle_to_axle() {
    use beadseat::vehicle::Drive;
    let rows = [
        ("parish-courier-motorcycle", None, "110/80R19", "150/70R17"),
        ("field-survey-wagon", Some(Drive::All), "205/55R16", "225/50R16"),
    ];
    for (name, drive, in_front, in_rear) in rows {
        let scenario = example(name);
        let vehicle = scenario.vehicle().clone();
        let vehicle = if let Some(drive) = drive { vehicle.with_drive(drive) } else { vehicle };
        let (original, wishes) = (scenario.change().original, Wishes::new());
        let search = Search::new(&vehicle, &original, scenario.conditions(), scenario.limits(), &wishes);
        let pairs = search.staggered::<20, 10>();
        let sizes = |candidate: &beadseat::search::Candidate| {
            candidate.choices().map(|choice| choice.setup().tire().size()).collect::<Vec<_>>()
        };
        let first = sizes(pairs.iter().next().expect("a pair fits"));
        assert_eq!(
            first.iter().map(ToString::to_string).collect::<Vec<_>>(),
            [in_front, in_rear]
                .map(|size| { if drive.is_none() { format!("{size} M/C") } else { size.to_owned() } })
        );
        if drive.is_some() {
            for pair in pairs.iter() {
                let of: Vec<_> =
                    sizes(pair).iter().map(|size| size.overall_diameter_nominal().unwrap()).collect();
                let ratio = (of[1] / of[0]).get::<beadseat::uom::si::ratio::ratio>();
                assert!((ratio - 1.0).abs() <= 0.005, "{pair}: {ratio}");
            }
        }
    }
}
