//! Reading, writing and refusing a designation allocates nothing.

#![allow(clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use std::fmt::{Display, Write};
use std::hint::black_box;
use std::str::FromStr;

use allocation_counter::measure;
use beadseat::rim::{Contour, Hump, RimDiameter, RimWidth};
use beadseat::tire::{
    LoadIndex, LoadRange, LoadVersion, Metric, ServiceDescription, SpeedSymbol, Tire, TireSize,
};
use beadseat::units::{deg, kg, kmh, kpa, mm, nm, ratio};
use beadseat::wheel::{
    BoltCircle, Bore, Inset, RimEdges, Seat, Thread, Wheel, WheelSize, WheelStamp,
    tightening::{Friction, SeatContact, Tightening, TighteningOrder},
};
use beadseat::{ParseError, Toleranced};

/// Allocations made by `work`.
fn allocations(work: impl FnOnce()) -> u64 {
    measure(work).count_total
}

#[test]
fn allocations_are_counted() {
    assert_eq!(allocations(|| drop(black_box(String::from("counted")))), 1);
    assert_eq!(allocations(|| drop(black_box("205/55R16".parse::<TireSize>().unwrap().to_string()))), 1);
}

fn reads_and_writes<T: FromStr<Err = ParseError> + Display>(valid: &[&str], wrong: &[&str]) {
    assert!(!valid.is_empty() && !wrong.is_empty());
    let mut buffer = String::with_capacity(1024);
    for text in valid {
        let mut value = None;
        assert_eq!(allocations(|| value = black_box(text.parse::<T>()).ok()), 0, "reading {text:?}");
        let value = value.unwrap_or_else(|| panic!("{text:?} is read"));
        buffer.clear();
        assert_eq!(allocations(|| write!(buffer, "{value}|{value:>60}").unwrap()), 0, "writing {text:?}");
        assert!(buffer.contains('|') && buffer.len() >= 62, "{buffer}");
    }
    for text in wrong {
        let mut error = None;
        assert_eq!(allocations(|| error = black_box(text.parse::<T>()).err()), 0, "refusing {text:?}");
        let error = error.unwrap_or_else(|| panic!("{text:?} is refused"));
        buffer.clear();
        let written = allocations(|| write!(buffer, "{error}\n{}", error.show(text)).unwrap());
        assert_eq!(written, 0, "telling what is wrong with {text:?}");
        assert_eq!(buffer.lines().count(), 3, "{buffer}");
        assert!(buffer.capacity() == 1024, "the buffer was never grown");
    }
}

#[test]
fn designations() {
    let long = "9".repeat(300);
    let wrong = ["", "§", long.as_str()];
    reads_and_writes::<RimWidth>(&["6.5", "6 1/2"], &wrong);
    reads_and_writes::<RimDiameter>(&["16", "22,5"], &wrong);
    reads_and_writes::<Contour>(&["JJ", "k"], &wrong);
    reads_and_writes::<Hump>(&["H2", "eh2"], &wrong);
    reads_and_writes::<LoadIndex>(&["0", "279"], &wrong);
    reads_and_writes::<SpeedSymbol>(&["A8", "(Y)"], &wrong);
    reads_and_writes::<ServiceDescription>(&["104/102R", "94 (y)"], &wrong);
    reads_and_writes::<LoadVersion>(&["XL", "extra load"], &wrong);
    reads_and_writes::<LoadRange>(&["LRE", "10 ply"], &wrong);
    reads_and_writes::<Metric>(&["205/55R16", "lt 245 / 75 r 17"], &["205/56R16", "", &long]);
    reads_and_writes::<TireSize>(&["205/55ZR16", "245/75R17 LT"], &["205/55R16 91V", "", &long]);
    reads_and_writes::<Tire>(
        &["205/55R16 91V", "205/55 ZR 16 (94Y) extra load", "LT245/75R17 121/118S 10PR"],
        &["205/55R16 91V 91V", "LT245/75R17 XL", "", &long],
    );
    reads_and_writes::<BoltCircle>(&["5x114.3", "5 × 4,5 in"], &["5x57", "", &long]);
    reads_and_writes::<Bore>(&["57.1", "CB 66,6 mm"], &["12", "", &long]);
    reads_and_writes::<Inset>(&["ET45", "OS 12,5"], &["ET301", "", &long]);
    reads_and_writes::<WheelSize>(&["7Jx16 H2", "16 × 6 1/2 J"], &["7Jx16.2", "", &long]);
    reads_and_writes::<WheelStamp>(
        &["5x112 690 kg 7Jx16 H2 ET45 03/2021 JWL VIA KBA 45678 E13 124R-001234 Made in Utopia 57.1"],
        &["7Jx16 ET45 ET40", "5x112", "", &long],
    );
    reads_and_writes::<Wheel>(
        &["7Jx16 H2 ET45 5x112 57.1", "16x7 5×4,5in cb 57,1 +45"],
        &["7Jx16 ET45 ET40", "", &long],
    );
    reads_and_writes::<Thread>(&["M14x1.5", "1/2\" - 20 UNF"], &["M14", "", &long]);
    reads_and_writes::<Seat>(&["cone 60", "Spherical R13"], &["cone 75", "", &long]);
}

#[test]
fn readings_and_suggestions() {
    use beadseat::marking::{readings, suggestions};
    for text in [
        "205/55R16 91V TUBELESS M+S 3PMSF",
        "7-16",
        "17x8 +35 5 on 4 1/2 CB 72.6",
        "DOT 1AB 2C3D4E 2725",
        "2725",
        "205 55 16",
        "2O5/SSR16 91V",
        "nothing that can be read, at whatever length it may stand here",
    ] {
        let counted = allocations(|| {
            let shown = black_box(readings(text)).map(|all| all.iter().count());
            let near = suggestions(text).map(|near| black_box(near.as_str().len())).sum::<usize>();
            let facts = readings(text).map(|all| {
                let marking = all.best().marking();
                let told = |fact: beadseat::marking::Fact<'_>| (fact.values().count(), fact.source());
                marking.facts().map(|fact| black_box(told(fact)).0).sum::<usize>()
            });
            black_box((shown.is_ok(), near, facts.is_ok()));
        });
        assert_eq!(counted, 0, "{text}");
    }
}

#[test]
fn computations() {
    let tire: Tire = "225/45R17 94W XL".parse().unwrap();
    let wheel: Wheel = "7.5Jx17 H2 ET42 5x112 66.6".parse().unwrap();
    let counted = allocations(|| {
        let size = tire.size();
        let width = wheel.size().width();
        black_box((
            size.overall_diameter().unwrap(),
            size.overall_diameter_snow().unwrap(),
            size.section_width_on(width).unwrap(),
        ));
        black_box((
            size.measuring_rim(),
            size.estimated_rim_range(),
            size.rolling().unwrap().revolutions_per_km(),
        ));
        black_box(size.rolling().unwrap().circumference_at(kmh(130.0)).unwrap());
        black_box((tire.load_capacity(kpa(230.0)).unwrap(), tire.load_capacity(kpa(90.0)).unwrap_err()));
        black_box((
            tire.at_speed(kmh(250.0)),
            beadseat::tire::inflation::camber_load_factor(deg(3.0)).unwrap(),
        ));
        black_box(LoadIndex::min_for(kg(530.0)));
        let contour = wheel.size().contour().unwrap();
        black_box(RimEdges::of(width, wheel.inset().unwrap(), mm(5.0), contour.flange_width()).outer());
        black_box(wheel.bolt_circle().unwrap().longest_chord());
        let thread = "M14x1.5".parse::<Thread>().unwrap();
        let cone = SeatContact::ring(Seat::Cone60, mm(15.0), mm(24.0)).unwrap();
        let mu = Toleranced::within(ratio(0.14), ratio(0.04));
        let bolt = Tightening::new(thread, cone, Friction::new(mu, mu).unwrap());
        black_box(bolt.preload(Toleranced::exact(nm(140.0))).unwrap());
        black_box(bolt.combined_stress(Toleranced::exact(nm(-1.0))).unwrap_err());
        black_box(TighteningOrder::of(wheel.bolt_circle().unwrap()).holes().count());
    });
    assert_eq!(counted, 0);
}

#[test]
fn an_assessment_and_its_printing_allocate_nothing() {
    for text in [
        include_str!("../../../examples/scenarios/field-survey-wagon.json"),
        include_str!("../../../examples/scenarios/one-tonne-panel-van.json"),
        include_str!("../../../examples/scenarios/rangers-pickup.json"),
    ] {
        let scenario: beadseat::scenario::Scenario = serde_json::from_str(text).expect("a scenario");
        let mut printed = String::with_capacity(64 * 1024);
        let counted = allocation_counter::measure(|| {
            let report = scenario.assess();
            write!(printed, "{report}").expect("room for the report");
        });
        assert_eq!(counted.count_total, 0);
        assert!(printed.len() > 1000);
    }
}

#[test]
fn holding_two_proposals_side_by_side_and_a_sheet_allocate_nothing() {
    use beadseat::fitment::comparison::Comparison;

    let scenarios = [
        include_str!("../../../examples/scenarios/field-survey-wagon.json"),
        include_str!("../../../examples/scenarios/regional-truck-on-duals.json"),
    ]
    .map(|text| serde_json::from_str::<beadseat::scenario::Scenario>(text).expect("a scenario"));
    let mut printed = String::with_capacity(256 * 1024);
    let counted = allocations(|| {
        let reports = scenarios.each_ref().map(|scenario| scenario.assess());
        let proposals = [0, 1].map(|n| {
            let document = scenarios[n].document(&reports[n]);
            write!(printed, "{}{}", document.sheet(), document.sheet().in_markdown())
                .expect("room for the sheets");
            document.under(scenarios[n].conditions(), scenarios[n].limits())
        });
        let comparison = Comparison::new(proposals).naming(&["vehicle.kind"]);
        write!(printed, "{comparison}").expect("room for all");
        assert!(black_box(comparison.checks().count()) > 60);
    });
    assert_eq!(counted, 0);
    assert!(printed.len() > 10_000);
}

#[test]
fn telling_how_a_number_came_about_allocates_nothing() {
    use beadseat::fitment::derivation::Subject;

    let text = include_str!("../../../examples/scenarios/one-tonne-panel-van.json");
    let scenario: beadseat::scenario::Scenario = serde_json::from_str(text).expect("a scenario");
    let mut printed = String::with_capacity(512 * 1024);
    let counted = allocations(|| {
        for subject in Subject::all() {
            let explanation = scenario.derivations().explain(subject);
            write!(printed, "{explanation}{}", explanation.in_markdown()).expect("room for all");
        }
    });
    assert_eq!(counted, 0);
    assert!(printed.len() > 10_000);
}

#[test]
fn what_to_measure_and_the_room_there_is_allocate_nothing() {
    use beadseat::fitment::space::AvailableSpace;

    let text = include_str!("../../../examples/scenarios/rangers-pickup.json");
    let scenario: beadseat::scenario::Scenario = serde_json::from_str(text).expect("a scenario");
    let change = scenario.change();
    let (original, proposed) = (change.original.front.unwrap(), change.proposed.front.unwrap());
    let counted = allocations(|| {
        let report = scenario.assess();
        assert!(black_box(report.measurements().filter(|m| m.settles_alone().count() > 0).count()) > 5);
        let room = AvailableSpace::front(scenario.vehicle(), original, scenario.limits());
        black_box(room.insets(&proposed).unwrap().unwrap());
        black_box(room.max_width(&proposed.wheel(), mm(0.0)).unwrap().unwrap());
        black_box(room.max_diameter().unwrap());
    });
    assert_eq!(counted, 0);
}

#[test]
fn sidewall_lines_of_every_family_allocate_nothing() {
    let texts = [
        "205/55ZR16 (94Y) XL M+S 3PMSF",
        "LT245/75R17 TUBELESS LRE 121/118S MAX LOAD 1450 kg (3195 LBS) AT 550 kPa (80 PSI)",
        "155-13/6.15-13 78S",
        "31x10.50R15LT 109Q 6PR",
        "11R22.5 148/145L 16PR",
        "ER78-14 M+S",
        "120/70ZR17 M/C 58W",
        "18x9.5-8 TUBE TYPE",
        "205/55R16 MAX LOAD 12",
    ];
    let mut printed = String::with_capacity(1024);
    let counted = allocations(|| {
        for text in texts {
            if let Ok(line) = black_box(text).parse::<beadseat::tire::sidewall::SidewallLine>() {
                printed.clear();
                write!(printed, "{line}").expect("room for a line");
                black_box(line.contradictions().count());
            }
        }
    });
    assert_eq!(counted, 0);
}

#[test]
fn bolt_circles_are_measured_and_identified_without_allocation() {
    use beadseat::wheel::{
        HoleCentre,
        drilling::{CircleFit, Identified, MeasuredCircle, NearMiss},
    };
    let circle: BoltCircle = "5x112".parse().unwrap();
    let counted = allocations(|| {
        let chord = Toleranced::within(circle.chord(2).unwrap(), mm(0.2));
        let measured = MeasuredCircle::between_centres(5, 2, chord).unwrap();
        black_box(Identified::from(measured).compatible().count());
        black_box(circle.near_misses().filter_map(|near| NearMiss::of(circle, near)).count());
        let mut holes = [HoleCentre::new(mm(0.0), mm(0.0)); 5];
        for (place, hole) in holes.iter_mut().zip(circle.centres(deg(90.0))) {
            *place = hole;
        }
        black_box(CircleFit::through(&holes, mm(0.1)).unwrap());
    });
    assert_eq!(counted, 0);
}

#[test]
fn a_sweep_allocates_nothing() {
    use beadseat::sweep::{Carrier, ContactPatch, Corner, Effort, Obstacle, Obstacles, Point};
    use beadseat::sweep::{Profile, RimSection, SteeringAxis, TireSection};

    let at = |x, y, z| Point::new(mm(x), mm(y), mm(z)).unwrap();
    let counted = allocations(|| {
        let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0)).unwrap();
        let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0)).unwrap()).unwrap();
        let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(-0.5)).unwrap();
        let axis = SteeringAxis::from_ground(patch, deg(13.5), deg(7.0), mm(-8.0), mm(22.0)).unwrap();
        let corner = Corner::new()
            .steered(axis, deg(39.0), deg(33.0))
            .and_then(|corner| corner.travelling(mm(80.0), mm(90.0)))
            .and_then(|corner| corner.with_camber_change(deg(-1.2), mm(80.0)))
            .unwrap();
        let arm = Carrier::Arm { pivot: at(0.0, -430.0, -60.0), end: at(0.0, -90.0, -100.0) };
        let lip = Obstacle::arch_lip(at(370.0, 40.0, 60.0), at(0.0, 30.0, 420.0), at(-360.0, 40.0, 80.0));
        let seat = Obstacle::disc(at(0.0, -230.0, 340.0), at(0.0, -240.0, 400.0), mm(70.0)).unwrap();
        let mut around = Obstacles::new();
        around.push(lip.unwrap()).unwrap();
        around.push(seat.carried_by(Carrier::Knuckle).unwrap()).unwrap();
        around.push(Obstacle::point(at(0.0, -120.0, -95.0)).carried_by(arm).unwrap()).unwrap();
        black_box(corner.clearance(&profile, &around, Effort::default()).unwrap().unwrap());
    });
    assert_eq!(counted, 0);
}
