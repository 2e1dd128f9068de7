//! The list of what to measure next: what a fact that is gone puts into it, and what giving all of it settles.
#![cfg(feature = "serde")]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/scenario.rs"]
mod scenario;

use std::collections::BTreeSet;

use beadseat::fitment::measure::{Input, Measurement, Preparation, Tool};
use beadseat::fitment::{Check, Position, Report, Verdict};
use beadseat::scenario::Scenario;
use scenario::spelled_out;
use serde_json::{Map, Value, json};

const SCENARIOS: [&str; 3] = ["field-survey-wagon", "one-tonne-panel-van", "rangers-pickup"];

fn root(path: &str) -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// Sets the value at a JSON pointer, with the objects above it, or with `null` removes it.
fn patch(document: &mut Value, pointer: &str, value: &Value) {
    let (above, key) = pointer.rsplit_once('/').unwrap();
    let mut parent = document;
    for part in above.split('/').skip(1) {
        parent = parent.as_object_mut().unwrap().entry(part).or_insert_with(|| json!({}));
    }
    let parent = parent.as_object_mut().unwrap();
    if value.is_null() {
        parent.remove(key).unwrap_or_else(|| panic!("nothing to remove at {pointer}"));
    } else {
        parent.insert(key.into(), value.clone());
    }
}

fn report(document: &Value) -> Report {
    serde_json::from_value::<Scenario>(document.clone()).unwrap().assess()
}

fn paths(report: &Report) -> Vec<String> {
    report.measurements().map(|m| m.path().to_string()).collect()
}

fn named(checks: impl Iterator<Item = Check>) -> BTreeSet<String> {
    checks.map(|c| format!("{}:{}", c.position(), c.id())).collect()
}

fn words(text: &str) -> BTreeSet<String> {
    text.split_whitespace().map(String::from).collect()
}

#[test]
fn a_fact_that_is_gone_puts_its_measurement_in_the_list() {
    let mut rows = csv::Reader::from_path(root("tests/cases/measure.csv")).unwrap();
    let (mut checked, mut wrong) = (0, Vec::new());
    for row in rows.records() {
        let row = row.unwrap();
        let [case, scenario, patches, measurement, settles] =
            row.iter().collect::<Vec<_>>().try_into().unwrap();
        let before = spelled_out(scenario);
        let mut after = before.clone();
        for (pointer, value) in &serde_json::from_str::<Map<String, Value>>(patches).unwrap() {
            patch(&mut after, pointer, value);
        }
        let (before, after) = (report(&before), report(&after));
        let (old, new): (BTreeSet<_>, BTreeSet<_>) =
            (paths(&before).into_iter().collect(), paths(&after).into_iter().collect());
        let added: Vec<_> = new.difference(&old).collect();
        let gone: Vec<_> = old.difference(&new).collect();
        if added != [measurement] || !gone.is_empty() {
            wrong.push(format!("{case}: adds {added:?}, takes away {gone:?}"));
            continue;
        }
        let taken = after.measurements().find(|m| m.path().to_string() == measurement).unwrap();
        let alone = named(taken.settles_alone());
        if alone != words(settles) || taken.settles_with_others().count() != 0 {
            wrong.push(format!("{case}: settles {alone:?}"));
        }
        checked += 1;
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert_eq!(checked, 52);
}

#[test]
fn facts_that_settle_only_together_say_so() {
    let mut wagon = spelled_out("field-survey-wagon");
    patch(&mut wagon, "/original/front/wheel", &json!("6.5Jx16 H2 5x112 57.1"));
    patch(&mut wagon, "/proposed/front/wheel", &json!("7.5Jx17 H2 5x112"));
    let report = report(&wagon);
    let listed: Vec<_> = report.measurements().collect();
    assert_eq!(
        paths(&report),
        ["proposed.front.wheel (bore)", "proposed.front.wheel (inset)", "original.front.wheel (inset)"]
    );
    let together = words(
        "front:track front:scrub_radius front:outer_clearance front:inner_clearance front:wheel_guard \
         front_left:swept_clearance front_right:swept_clearance",
    );
    for inset in &listed[1..] {
        assert_eq!(
            (named(inset.settles_alone()), named(inset.settles_with_others())),
            (words(""), together.clone())
        );
    }
    let text = report.to_string();
    let (_, end) = text.split_once("\nNot assessed").unwrap();
    let end = end.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        end.contains("Settles centre bore front") && end.contains("Settles, with others, track,"),
        "{end}"
    );
    assert!(end.ends_with("never left on the jack alone."), "{end}");
}

/// What someone would find who took a measurement, by the end of its path.
fn finding(path: &str) -> Vec<(String, Value)> {
    let front = path.contains("front");
    let setup = path.split('.').take(2).collect::<Vec<_>>().join("/");
    let pointer = |path: &str| format!("/{}", path.replace('.', "/"));
    if path.contains("wheel (") {
        return vec![(format!("/{setup}/wheel"), json!("7Jx16 H2 ET46 5x112 57.1"))];
    }
    if path.contains("tire (") {
        return vec![(format!("/{setup}/tire"), json!("205/55R16 91V"))];
    }
    let value = match path.rsplit_once('.').unwrap().1 {
        "kind" if path.contains("fasteners") => json!("bolt"),
        "kind" => json!("passenger"),
        "drive" => json!("front"),
        "top_speed_kmh" => json!(180),
        "stability_control" => json!(true),
        "max_load_kg" => json!(1000),
        "normal_load_kg" => json!(850),
        "track_mm" => json!(1500),
        "placard_kpa" => json!(230),
        "bolt_circle" | "hub_bolt_circle" | "wheel_bolt_circle" => json!("5x112"),
        "spigot_mm" | "wheel_spigot_mm" => json!(57.1),
        "spigot_height_mm" => json!(9),
        "thread" => json!("M14x1.5"),
        "seat" => json!("cone 60"),
        "fastening" => json!("stud"),
        "steering" => json!({ "kingpin_inclination_deg": 12, "scrub_radius_mm": 5 }),
        "lock_inner_deg (and lock_outer_deg)" => {
            let steering = pointer(path.rsplit_once('.').unwrap().0);
            return vec![
                (steering.clone() + "/lock_inner_deg", json!(35)),
                (steering + "/lock_outer_deg", json!(31)),
            ];
        }
        "caster_deg (and trail_mm)" => {
            let steering = pointer(path.rsplit_once('.').unwrap().0);
            return vec![(steering.clone() + "/caster_deg", json!(5)), (steering + "/trail_mm", json!(20))];
        }
        "hub_height_mm" => json!(310),
        "axle_type" => json!("independent"),
        "travel" => json!({ "jounce_mm": 60, "rebound_mm": 70 }),
        "obstacles" => json!([{ "what": "frame_rail", "points_mm": [[400, -480, 60], [-400, -480, 60]] }]),
        "guard_overhang_mm" => json!(20),
        "ground_clearance_mm" => json!(if path.starts_with("limits") { 100 } else { 160 }),
        "inner_clearance_mm" => json!(25),
        "outer_clearance_mm" => json!(30),
        "upper_clearance_mm" => json!(60),
        "pressure_kpa" => json!(240),
        "reference_kpa" => json!(450),
        "rim_range_in" => json!({ "min": 5.5, "max": 8 }),
        "wheel_rating_kg" | "rating_kg" => json!(1100),
        "usable_length_mm" | "thread_length_mm" => json!(27),
        "disc_thickness_mm" => json!(12),
        "stud_length_mm" => json!(44),
        "engagement_turns" => json!(7),
        "envelope_radius_mm" => json!(160),
        "caliper_face_mm" => json!(30),
        "barrel_radius_mm" => json!(185),
        "spoke_back_mm" => json!(46),
        "hub_bore" => json!("57.1"),
        "fastener_kind" => json!("nut"),
        "date" => json!("2026-11-25"),
        "date_code" => json!("1726"),
        "tread_mm" => json!(7.5),
        "left" | "right" => return vec![(pointer(path) + "/unmarked", json!(true))],
        "front" | "rear" => json!({
            "tire": "205/55R16 91V",
            "wheel": if front { "7Jx16 H2 ET44 5x112 57.1" } else { "6.5Jx16 ET46" },
        }),
        other => panic!("nobody has taken {other}"),
    };
    vec![(pointer(path), value)]
}

/// Gives everything that is listed until nothing is, and returns how often that took.
fn give_all(case: &str, document: &mut Value) -> usize {
    for round in 0.. {
        assert!(round < 8, "{case}: asks for more and more");
        let now = report(document);
        let listed: Vec<_> =
            now.measurements().map(|m| (m.input(), m.position(), m.path().to_string())).collect();
        if listed.is_empty() {
            assert!(now.checks().all(|c| c.verdict() != Verdict::NotAssessed), "{case}: {now:?}");
            return round;
        }
        // Objects first, so that what goes into them stays.
        let mut facts: Vec<_> = listed.iter().flat_map(|(_, _, path)| finding(path)).collect();
        facts.sort_by_key(|(pointer, _)| pointer.matches('/').count());
        for (pointer, value) in &facts {
            patch(document, pointer, value);
        }
        for check in report(document).checks() {
            for (input, place, path) in &listed {
                let asks = check.missing().any(|m| m == *input && m.at(check.position()) == input.at(*place));
                assert!(!asks, "{case}: {path} was given, and yet: {check}");
            }
        }
    }
    unreachable!()
}

#[test]
fn what_is_listed_and_given_is_not_asked_for_again() {
    for name in SCENARIOS {
        let complete = report(&spelled_out(name)).checks().all(|c| c.verdict() != Verdict::NotAssessed);
        let rounds = give_all(name, &mut spelled_out(name));
        assert_eq!(rounds == 0, complete, "{name}");
    }
    // All but the sizes of one axle is to be found out, round by round.
    let setup = json!({ "tire": "205/55R16", "wheel": "6.5x16" });
    let other = json!({ "tire": "225/45R17 94W XL", "wheel": "7.5Jx17", "spacer_mm": 3, "fasteners": {} });
    let adaptor =
        json!({ "tire": "225/45R17 94W XL", "wheel": "7.5Jx17", "adaptor": { "thickness_mm": 25 } });
    let bare = [
        ("nothing", json!({ "vehicle": {}, "original": {}, "proposed": {} })),
        (
            "one axle",
            json!({ "vehicle": {}, "original": { "front": setup }, "proposed": { "front": setup } }),
        ),
        (
            "a spacer",
            json!({ "vehicle": {}, "original": { "front": setup }, "proposed": { "front": other } }),
        ),
        (
            "an adaptor",
            json!({ "vehicle": {}, "original": { "rear": setup }, "proposed": { "rear": adaptor } }),
        ),
    ];
    for (case, mut document) in bare {
        assert!(give_all(case, &mut document) > 1, "{case}");
    }
}

/// What a finding lacks, as paths; nothing for what the vehicle lacks on axles that it does not name.
fn lacks(check: &Check) -> Option<BTreeSet<String>> {
    let paths: BTreeSet<_> = check.missing().map(|m| m.at(check.position()).to_string()).collect();
    (!paths.is_empty() && !paths.iter().any(|path| path.contains('*'))).then_some(paths)
}

#[test]
fn each_measurement_settles_no_less_than_any_after_it_would() {
    let strip =
        |document: &mut Value, keys: &[&str]| keys.iter().for_each(|key| patch(document, key, &Value::Null));
    let mut documents: Vec<Value> = SCENARIOS.map(spelled_out).into();
    strip(
        &mut documents[0],
        &["/vehicle/front/hub", "/vehicle/rear/space", "/use/date", "/vehicle/front/max_load_kg"],
    );
    strip(&mut documents[2], &["/vehicle/rear", "/proposed/rear/pressure_kpa", "/vehicle/top_speed_kmh"]);
    let mut compared = 0;
    for document in &documents {
        let report = report(document);
        let needs: Vec<_> = report.checks().filter_map(|c| lacks(&c)).collect();
        let listed: Vec<Measurement<'_>> = report.measurements().collect();
        let mut taken = BTreeSet::new();
        for (n, next) in listed.iter().enumerate() {
            let gain = |m: &Measurement<'_>| {
                let mut with: BTreeSet<_> = taken.clone();
                with.insert(m.path().to_string());
                needs.iter().filter(|need| need.is_subset(&with) && !need.is_subset(&taken)).count()
            };
            for later in &listed[n + 1..] {
                let (a, b) = (gain(next), gain(later));
                let in_order =
                    (next.input(), next.position() as u8) < (later.input(), later.position() as u8);
                assert!(a > b || a == b && in_order, "{next} ({a}) before {later} ({b})");
                compared += 1;
            }
            taken.insert(next.path().to_string());
        }
        assert!(needs.iter().all(|need| need.is_subset(&taken)), "all is settled in the end");
    }
    assert!(compared > 500, "{compared}");
}

#[test]
fn what_the_vehicle_lacks_on_an_axle_is_taken_there() {
    let mut wagon = spelled_out("field-survey-wagon");
    patch(&mut wagon, "/original/rear", &Value::Null);
    // The speedometer looks at the driven axle in front, and the axles are compared.
    let report = report(&wagon);
    let listed: Vec<_> = report.measurements().map(|m| (m.input(), m.position())).collect();
    assert_eq!(listed, [(Input::OriginalSetup, Position::Rear)]);
    let settles = named(report.measurements().next().unwrap().settles_alone());
    assert!(
        settles.contains("vehicle:axle_match") && !settles.contains("vehicle:speedometer"),
        "{settles:?}"
    );
}

#[test]
fn what_only_makers_know_is_not_listed_but_said() {
    let mut pickup = spelled_out("rangers-pickup");
    patch(&mut pickup, "/vehicle/kind", &json!("motorcycle"));
    let report = report(&pickup);
    let asks = report.checks().filter(|c| c.missing().any(|m| m == Input::MotorcycleRules)).count();
    // Of each axle: contour, both gaps beside the tire, guard, swept clearance.
    assert_eq!(asks, 10);
    assert!(report.measurements().all(|m| m.access() != Preparation::Elsewhere));
    let text = report.to_string();
    let (_, end) = text.split_once("\nNot assessed").unwrap();
    let end = end.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(end.contains("use the makers' data. Not settled here: rim contour, outer clearance,"), "{end}");
}

#[test]
fn every_input_says_how_it_is_come_by() {
    let mut off = 0;
    for &input in Input::ALL {
        assert_eq!(
            input.access() == Preparation::WheelOff,
            input.how().starts_with("wheel off, "),
            "{input:?}"
        );
        assert_eq!(
            input.access().safety().is_some(),
            matches!(input.access(), Preparation::OnGround | Preparation::WheelOff)
        );
        assert!(!input.tools().is_empty() || input.access() != Preparation::WheelOff, "{input:?}");
        off += usize::from(input.access() == Preparation::WheelOff);
        for (tool, word) in [
            (Tool::ThreadGauge, "thread gauge"),
            (Tool::Gauge, "depth gauge"),
            (Tool::Caliper, "with a caliper"),
            (Tool::Straightedge, "straightedge"),
            (Tool::Scales, "weigh"),
            (Tool::Papers, "papers,"),
        ] {
            assert!(!input.how().contains(word) || input.tools().contains(&tool), "{input:?}: {word}");
        }
    }
    assert!(off >= 7, "{off}");
}

#[test]
fn the_list_is_part_of_the_output() {
    let mut wagon = spelled_out("field-survey-wagon");
    patch(&mut wagon, "/vehicle/front/hub/spigot_mm", &Value::Null);
    let output = serde_json::to_value(report(&wagon)).unwrap();
    assert_eq!(
        output["measurements"],
        json!([{
            "input": "vehicle.front.hub.spigot_mm",
            "where": "front",
            "how": "wheel off, measure the hub's collar with a caliper",
            "tools": ["caliper"],
            "wheel_off": true,
            "safety": Preparation::WheelOff.safety(),
            "settles": [{ "id": "centre_bore", "where": "front" }],
            "settles_with_others": [],
        }])
    );
}
