//! What is counted, in the order of the baseline.

use core::fmt::{Display, Write};
use core::hint::black_box;
use core::net::Ipv4Addr;
use core::str::FromStr;
use std::error::Error;

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

const WAGON: &str = include_str!("../../examples/scenarios/field-survey-wagon.json");
const PICKUP: &str = include_str!("../../examples/scenarios/rangers-pickup.json");

/// Sizes judged, each on both axles: scenario, and tires and wheels before and after where they are not its own.
type Pair = [&'static str; 2];
const ASSESSED: [(&str, &str, Option<[Pair; 2]>); 4] = [
    ("45 series for 55", WAGON, None),
    ("60 series", WAGON, Some([["205/60R16 92V", "6.5Jx16 ET46"], ["215/60R16 95V", "7Jx16 ET42"]])),
    (
        "old commercial",
        WAGON,
        Some([["185R14C 102/100R", "5.5Jx14 ET40"], ["195R14C 106/104R", "6Jx14 ET38"]]),
    ),
    ("LT", PICKUP, None),
];

/// Calls back with a name, how many pieces are done, and what does them.
pub(crate) fn run(mut count: impl FnMut(&str, usize, &mut dyn FnMut())) -> Result<(), Box<dyn Error>> {
    let mut one = |name: &str, work: &mut dyn FnMut()| count(name, 1, work);
    one("parse Ipv4Addr", &mut parse::<Ipv4Addr>("192.168.10.25"));
    one("parse 205/55R16 91V", &mut parse::<Tire>("205/55R16 91V"));
    for tire in TIRES {
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

    let scenes = invented::scenes(40)?;
    let effort = Effort::default();
    count("swept clearance, a corner", scenes.len(), &mut || {
        for scene in &scenes {
            let _ = black_box(black_box(scene).corner.clearance(&scene.profile, &scene.around, effort));
        }
    });
    Ok(())
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
        if let Some(space) = document["vehicle"][axle]["space"].as_object_mut() {
            space.remove("obstacles");
        }
    }
}

/// A tire and a wheel on the front axle; the rear of a passenger car's scenario is the same.
fn put(document: &mut Value, setup: &str, [tire, wheel]: Pair) {
    document[setup]["front"]["tire"] = tire.into();
    document[setup]["front"]["wheel"] = wheel.into();
}
