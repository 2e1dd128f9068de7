//! What is counted, in the order of the baseline.

use core::fmt::{Display, Write};
use core::hint::black_box;
use core::net::Ipv4Addr;
use core::str::FromStr;
use std::error::Error;

use beadseat::fitment::{Verdict, verdict};
use beadseat::marking::readings;
use beadseat::scenario::Scenario;
use beadseat::sweep::Effort;
use beadseat::tire::{Tire, sidewall::SidewallLine};
use beadseat::wheel::{BoltCircle, WheelStamp};
use serde_json::Value;

use crate::invented;

/// One of every shape of tire.
const TIRES: [&str; 10] = [
    "LT245/75R17 121/118S",
    "225/45R17 94W XL",
    "31x10.50R15LT",
    "295/80R22.5 152/148M",
    "120/70ZR17 M/C (58W)",
    "195/70R15C 104/102R",
    "7.50R16C 116/114N",
    "H78-15",
    "P215/65R15 95S",
    "20.8-38",
];
/// Of families that are seldom read.
const RARE_TIRES: [&str; 6] =
    ["480/80R42 151A8/148B", "26.5R25 **", "13x5.00-6", "4.10H18", "T125/70D15 95M", "11R22.5 148/145L"];

const WAGON: &str = include_str!("../../examples/scenarios/field-survey-wagon.json");
const MOTORCYCLE: &str = r#"{"vehicle": {"kind": "motorcycle", "top_speed_kmh": 180,
    "front": {"max_load_kg": 200, "placard_kpa": 250}, "rear": {"max_load_kg": 300, "placard_kpa": 290}},
    "original": {"front": {"tire": "120/70R17 M/C 58W", "wheel": "3.5Jx17", "pressure_kpa": 250},
        "rear": {"tire": "180/55R17 M/C 73W", "wheel": "5.5Jx17", "pressure_kpa": 290}},
    "proposed": {"front": {"tire": "120/70R17 M/C 58W", "wheel": "3.5Jx17", "pressure_kpa": 250},
        "rear": {"tire": "190/50R17 M/C 73W", "wheel": "6Jx17", "pressure_kpa": 290}}}"#;
const TRAILER: &str = r#"{"vehicle": {"kind": "trailer", "drive": "none", "rear": {"max_load_kg": 1300, "track_mm": 1500}},
    "original": {"rear": {"tire": "195/70R14 91T", "wheel": "5.5Jx14 ET30 5x112 66.6", "pressure_kpa": 270}},
    "proposed": {"rear": {"tire": "185R14C 102/100R", "wheel": "5.5Jx14 ET30 5x112 66.6", "pressure_kpa": 450}},
    "use": {"top_speed_kmh": 100}}"#;
const TRUCK: &str = r#"{"vehicle": {"kind": "truck", "top_speed_kmh": 90,
    "front": {"max_load_kg": 7100}, "rear": {"max_load_kg": 11500, "wheels_per_side": 2, "placard_kpa": 800}},
    "original": {"front": {"tire": "295/80R22.5 152/148M", "wheel": "9.00x22.5 ET175 10x335 281", "pressure_kpa": 850}, "rear": "same"},
    "proposed": {"front": {"tire": "315/80R22.5 156/150L", "wheel": "9.00x22.5 ET175 10x335 281", "pressure_kpa": 850}, "rear": "same"}}"#;
const UNKNOWN: &str = r#"{"vehicle": {},
    "original": {"front": {"tire": "205/55R16", "wheel": "6.5Jx16"}, "rear": "same"},
    "proposed": {"front": {"tire": "225/45R17", "wheel": "7.5Jx17"}, "rear": "same"}}"#;
const PICKUP: &str = include_str!("../../examples/scenarios/rangers-pickup.json");

/// Sizes judged, each on both axles: scenario, and tires and wheels before and after where they are not its own.
type Pair = [&'static str; 2];
const ASSESSED: [(&str, &str, Option<[Pair; 2]>); 8] = [
    ("45 series for 55", WAGON, None),
    ("60 series", WAGON, Some([["205/60R16 92V", "6.5Jx16 ET46"], ["215/60R16 95V", "7Jx16 ET42"]])),
    (
        "old commercial",
        WAGON,
        Some([["185R14C 102/100R", "5.5Jx14 ET40"], ["195R14C 106/104R", "6Jx14 ET38"]]),
    ),
    ("LT", PICKUP, None),
    ("motorcycle", MOTORCYCLE, None),
    ("trailer", TRAILER, None),
    ("duals", TRUCK, None),
    ("nothing known", UNKNOWN, None),
];

/// Calls back with a name, how many pieces are done, and what does them.
pub(crate) fn run(mut count: impl FnMut(&str, usize, &mut dyn FnMut())) -> Result<(), Box<dyn Error>> {
    let mut one = |name: &str, work: &mut dyn FnMut()| count(name, 1, work);
    one("parse Ipv4Addr", &mut parse::<Ipv4Addr>("192.168.10.25"));
    one("parse 205/55R16 91V", &mut parse::<Tire>("205/55R16 91V"));
    for &tire in TIRES.iter().chain(&RARE_TIRES) {
        tire.parse::<Tire>()?;
        one(&format!("parse {tire}"), &mut parse::<Tire>(tire));
    }
    for wrong in ["192.168.10.2x", "205/55R16 91I"] {
        assert!(wrong.parse::<Ipv4Addr>().is_err() && wrong.parse::<Tire>().is_err());
    }
    one("reject Ipv4Addr", &mut parse::<Ipv4Addr>("192.168.10.2x"));
    one("reject 205/55R16 91I", &mut parse::<Tire>("205/55R16 91I"));

    let wheel = "7Jx16 H2 ET45 5x112 57.1 MAX LOAD 690 kg (1521 lb)";
    let line = "295/80R22.5 152/148M TUBELESS M+S 3PMSF";
    wheel.parse::<WheelStamp>()?;
    line.parse::<SidewallLine>()?;
    one("parse wheel stamp", &mut parse::<WheelStamp>(wheel));
    one("parse sidewall line", &mut parse::<SidewallLine>(line));
    one("readings of the sidewall line", &mut || _ = black_box(readings(black_box(line))));
    one("parse 5x114.3", &mut parse::<BoltCircle>("5x114.3"));

    one("display Ipv4Addr", &mut display("192.168.10.25".parse::<Ipv4Addr>()?));
    one("display 205/55R16 91V", &mut display("205/55R16 91V".parse::<Tire>()?));

    for (name, document, sizes) in ASSESSED {
        let mut document = serde_json::from_str(document)?;
        leave_out_obstacles(&mut document);
        if let Some([original, proposed]) = sizes {
            put(&mut document, "original", original);
            put(&mut document, "proposed", proposed);
        }
        let scenario: Scenario = serde_json::from_value(document)?;
        one(&format!("assess {name}"), &mut || _ = black_box(black_box(&scenario).assess()));
        one(&format!("verdict {name}"), &mut || _ = black_box(judged(black_box(&scenario))));
    }
    let swept: Scenario = serde_json::from_str(WAGON)?;
    one("assess with sweep", &mut || _ = black_box(black_box(&swept).assess()));

    let report = swept.assess();
    let mut json = serde_json::to_vec(&report)?;
    let bytes = json.len();
    count("report to JSON, a byte", bytes, &mut || {
        json.clear();
        let written = serde_json::to_writer(&mut json, black_box(&report));
        assert!(written.is_ok());
        black_box(&json);
    });
    // What of that is serde_json's own: the same bytes from a value in which every text and number is ready.
    let ready: Value = serde_json::from_slice(&json)?;
    count("the same JSON from a ready value, a byte", bytes, &mut || {
        json.clear();
        let written = serde_json::to_writer(&mut json, black_box(&ready));
        assert!(written.is_ok() && json.len() == bytes);
        black_box(&json);
    });

    let scenes = invented::scenes(40)?;
    let effort = Effort::default();
    count("swept clearance, a corner", scenes.len(), &mut || {
        for scene in &scenes {
            let _ = black_box(black_box(scene).corner.clearance(&scene.profile, &scene.around, effort));
        }
    });
    Ok(())
}

fn judged(scenario: &Scenario) -> Verdict {
    verdict(scenario.vehicle(), scenario.change(), scenario.conditions(), scenario.limits())
}

fn parse<T: FromStr>(text: &str) -> impl FnMut() {
    move || drop(black_box(T::from_str(black_box(text))))
}

fn display<T: Display>(value: T) -> impl FnMut() {
    let mut text = String::with_capacity(64);
    move || {
        text.clear();
        let written = write!(text, "{}", black_box(&value));
        assert!(written.is_ok());
        black_box(&text);
    }
}

fn leave_out_obstacles(document: &mut Value) {
    for axle in ["front", "rear"] {
        if let Some(space) = document.pointer_mut(&format!("/vehicle/{axle}/space")) {
            _ = space.as_object_mut().and_then(|space| space.remove("obstacles"));
        }
    }
}

/// A tire and a wheel on the front axle; the rear of a passenger car's scenario is the same.
fn put(document: &mut Value, setup: &str, [tire, wheel]: Pair) {
    document[setup]["front"]["tire"] = tire.into();
    document[setup]["front"]["wheel"] = wheel.into();
}
