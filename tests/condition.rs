//! Tread, wear, age and mounting against the rows of `tests/reference/`.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::tire::{
    condition::{
        AgeLimit, ArrowTurn, Mounting, Remedy, SideFacingOut, SpreadLimit, TreadLimit, VehicleSide,
        WearError, WearRate, rear_deeper_by, tread_spread,
    },
    identification::DateCode,
};
use beadseat::units::{Length, inches, mm};
use beadseat::uom::si::length::{kilometer, millimeter};
use beadseat::{Citation, Status, Toleranced, sources};
use common::{Row, Tally, numbers, rows};

fn km(distance: f64) -> Length {
    Length::new::<kilometer>(distance)
}

fn exact(depth: f64) -> Toleranced<Length> {
    Toleranced::exact(mm(depth))
}

/// The first figure of `2/32 inch`, `1/32 to 2/32 inch`, `1.6 mm`, `4 to 4.8 mm`.
fn depth(row: &Row) -> Length {
    let first = |column: &str| row[column].split(' ').next().unwrap().to_owned();
    match first("imperial").split_once('/') {
        Some((n, "32")) => inches(n.parse::<f64>().unwrap() / 32.0),
        _ => mm(first("metric").parse().unwrap()),
    }
}

/// The citation remembers what the row remembers.
#[track_caller]
fn as_certain_as(row: &Row, citation: Citation) {
    assert_eq!(citation.is_from_memory(), row["certainty"].starts_with("memory"), "{row}");
    assert!(sources().any(|source| source == citation));
}

#[test]
fn every_limit_is_that_of_its_row() {
    const OTHERS: &str = "damage, heights of bars, hydroplaning, rotation patterns, pressure monitoring";
    let mut tally = Tally::of("limits of tread and age");
    for row in &rows("wear_age.csv") {
        let (region, item, kind) = (&row["region"], &row["item"], &row["kind"]);
        let tread = match (region, item, kind) {
            ("US", "passenger and light vehicle", "min tread") => Some(TreadLimit::US_LIGHT_VEHICLE),
            ("US", "truck or bus steer axle", "min tread") => Some(TreadLimit::US_STEERED_AXLE),
            ("US", "truck other axles", "min tread") => Some(TreadLimit::US_OTHER_AXLE),
            ("EU", "car", "min tread") => Some(TreadLimit::EU_CAR),
            ("UK", _, "min tread") if item.starts_with("car") => Some(TreadLimit::UK_CAR),
            ("UK", _, "min tread") => Some(TreadLimit::UK_HEAVY),
            ("Germany", _, "min tread") => Some(TreadLimit::GERMANY),
            ("Austria", _, "min tread") => Some(TreadLimit::AUSTRIA_WINTER_RADIAL),
            ("advice", "all", "replace") if row["imperial"].is_empty() => Some(TreadLimit::ADVICE_WET),
            ("advice", "all", "replace") => Some(TreadLimit::ADVICE_WET_US),
            ("advice", "winter tires", "replace") => Some(TreadLimit::ADVICE_WINTER),
            _ => None,
        };
        let spread = match (region, item, &row["imperial"]) {
            ("AWD", "tread spread", "2/32 inch") => Some(SpreadLimit::ALL_WHEEL_DRIVE),
            ("AWD", "tread spread", "3/32 inch") => Some(SpreadLimit::ALL_WHEEL_DRIVE_LOOSE),
            ("AWD", "tread spread", "1/32 to 2/32 inch") => Some(SpreadLimit::ALL_WHEEL_DRIVE_STRICT),
            ("non-AWD", "tread spread", _) => Some(SpreadLimit::ONE_AXLE),
            _ => None,
        };
        let age = match (region, item, kind) {
            ("age", "all", "replace by") if &row["imperial"] == "6 years" => Some(AgeLimit::VEHICLE_MAKERS),
            ("age", "all", "replace by") => Some(AgeLimit::TIRE_MAKERS),
            ("age", "all", "inspect yearly") => Some(AgeLimit::INSPECT_YEARLY),
            ("age", "storage", _) => Some(AgeLimit::UNSOLD),
            ("age", "UK heavy vehicles", "banned") => Some(AgeLimit::UK_HEAVY),
            _ => None,
        };
        match (tread, spread, age) {
            (Some(limit), ..) => {
                let told = if region == "advice" && item == "winter tires" { mm(4.0) } else { depth(row) };
                assert_eq!(limit.depth(), told, "{row}");
                assert_eq!(limit.jurisdiction(), region);
                assert_eq!(limit.is_law(), kind == "min tread");
                if region == "Austria" {
                    assert!(row["note"].contains("5 mm bias"));
                    assert_eq!(TreadLimit::AUSTRIA_WINTER_DIAGONAL.depth(), mm(5.0));
                }
                if region == "Germany" {
                    // Seen since, in the rule of all tires.
                    assert!(!limit.citation().is_from_memory(), "{row}");
                } else {
                    as_certain_as(row, limit.citation());
                }
            }
            (_, Some(limit), _) => {
                assert_eq!(limit.spread(), depth(row), "{row}");
                as_certain_as(row, limit.citation());
            }
            (.., Some(limit)) => {
                assert!(row["imperial"].split(' ').any(|word| word == limit.years().to_string()));
                assert_eq!(limit.is_law(), kind == "banned");
                as_certain_as(row, limit.citation());
            }
            _ if (region, item) == ("all", "spread") => {
                assert!(row["imperial"].ends_with("to 4/32 inch"));
                assert_eq!(SpreadLimit::LOOSEST.spread(), inches(4.0 / 32.0));
                as_certain_as(row, SpreadLimit::LOOSEST.citation());
            }
            _ if item == "1 mm of tread" => {
                let (least, most) = WearRate::USUAL_DISTANCE_PER_MM;
                assert_eq!((least, most), (km(1600.0), km(6400.0)));
                assert_eq!(&row["metric"], "1 600 to 6 400 km");
                as_certain_as(row, WearRate::USUAL_CITATION);
            }
            _ if item == "less than four date figures" => {
                assert!(DateCode::parse("317").unwrap().has_three_digits());
            }
            _ if (region, item) == ("hydroplaning", "new pair") => {
                let deeper = rear_deeper_by(&[exact(5.0); 2], &[exact(8.0); 2]).unwrap().unwrap();
                assert_eq!((deeper, &row["imperial"]), (exact(3.0), "rear axle"));
                as_certain_as(row, Citation::DEEPER_TREAD_BEHIND);
            }
            _ if (region, item) == ("rotation", "directional") => {
                // Front to rear on one side keeps the arrow: a side has no front and rear here.
                let tire = Mounting::new(Some(ArrowTurn::Clockwise), None);
                assert_eq!(tire.on(VehicleSide::Right).is_right(), Some(true));
                assert_eq!(tire.on(VehicleSide::Left).is_right(), Some(false));
            }
            _ => {
                tally.left(&format!("{region}: {item}, {kind}"), OTHERS);
                continue;
            }
        }
        tally.checked(row);
    }
    tally.close(25, &[(OTHERS, 30)]);
}

#[test]
fn rules_that_were_seen() {
    const OF_A_CHANGE: &str = "a limit of a change of wheels, which is not one of tread";
    let mut tally = Tally::of("rules of jurisdictions, seen");
    for row in &rows("jurisdictions_seen.csv") {
        if &row["item"] != "tread" {
            tally.left(&format!("{}: {}", &row["jurisdiction"], &row["item"]), OF_A_CHANGE);
            continue;
        }
        let [general, moped] = numbers(&row["value"])[..] else { panic!("{row}") };
        assert_eq!(TreadLimit::GERMANY.depth(), mm(general), "{row}");
        assert_eq!(TreadLimit::GERMANY_MOPED.depth(), mm(moped), "{row}");
        for limit in [TreadLimit::GERMANY, TreadLimit::GERMANY_MOPED] {
            assert_eq!(limit.jurisdiction(), &row["jurisdiction"], "{row}");
            assert!(limit.is_law());
            as_certain_as(row, limit.citation());
        }
        tally.checked(row);
    }
    tally.close(1, &[(OF_A_CHANGE, 3)]);
}

#[test]
fn the_marking_cases_hold() {
    let mut tally = Tally::of("marking cases of condition");
    for row in rows("marking_cases.csv") {
        let (input, expected) = (&row["input"], &row["expected"]);
        if let Some(depth) = input.strip_suffix(" mm UK car") {
            let depth = depth.strip_prefix("tread ").unwrap().parse().unwrap();
            let met = TreadLimit::UK_CAR.check(exact(depth)).unwrap().is_met().unwrap();
            assert_eq!(met, expected == "legal limit met", "{input}");
            tally.checked(&row);
        } else if input == "tread 2/32 in mm" {
            let depth = TreadLimit::US_LIGHT_VEHICLE.depth().get::<millimeter>();
            assert!((depth - 1.5875).abs() < 1e-12 && expected.starts_with("1.5875"));
            tally.checked(&row);
        }
    }
    tally.close(3, &[]);
}

#[cfg(feature = "jiff")]
#[test]
fn a_coach_is_barred_by_the_age_of_its_front_tires() {
    let row = rows("marking_cases.csv").into_iter().find(|row| row["input"].starts_with("UK coach")).unwrap();
    let words: Vec<&str> = row["input"].split(' ').collect();
    let (code, day) = (words[5], words[7].parse().unwrap());
    let age = DateCode::parse(code).unwrap().age_on(day).unwrap();
    assert_eq!(AgeLimit::UK_HEAVY.allows(&age), Some(false));
    assert!(row["expected"].contains(&age.made_first().to_string()));
    assert_eq!(AgeLimit::stated(11).allows(&age), Some(true));
    assert_eq!(
        AgeLimit::UK_HEAVY
            .allows(&DateCode::parse("0516").unwrap().age_on("2026-02-03".parse().unwrap()).unwrap()),
        None
    );
}

#[test]
fn a_limit_is_met_at_the_limit_and_missed_a_step_below() {
    const STEP: f64 = 0.001;
    for limit in TreadLimit::ALL {
        let depth = limit.depth().get::<millimeter>();
        let met = |depth: f64| limit.check(exact(depth)).unwrap().is_met();
        assert_eq!((met(depth - STEP), met(depth), met(depth + STEP)), (Some(false), Some(true), Some(true)));
        // The worst of a measurement may be exactly the limit.
        let worst_at_limit = limit.check(Toleranced::within(mm(depth + 0.3), mm(0.3))).unwrap();
        assert_eq!(worst_at_limit.is_met(), Some(true), "{limit:?}");
        assert_eq!(limit.check(Toleranced::within(mm(depth), mm(STEP))).unwrap().is_met(), None);
    }
    for limit in [SpreadLimit::ALL_WHEEL_DRIVE, SpreadLimit::LOOSEST, SpreadLimit::stated(mm(1.0)).unwrap()] {
        let spread = limit.spread().get::<millimeter>();
        let met = |apart: f64| limit.check(&[exact(6.0), exact(6.0 + apart)]).unwrap().unwrap().is_met();
        assert_eq!(
            (met(spread - STEP), met(spread), met(spread + STEP)),
            (Some(true), Some(true), Some(false))
        );
        assert_eq!(limit.check(&[exact(6.0)]), Ok(None));
        assert!(!limit.applies_to().is_empty());
    }
    assert_eq!(TreadLimit::stated(mm(2.0)).unwrap().jurisdiction(), "caller");
    assert_eq!(TreadLimit::ADVICE_WET.applies_to(), "wet roads");
    assert_eq!(TreadLimit::UK_HEAVY.citation().status(), Status::Regulation);
}

#[test]
fn impossible_depths_are_refused_and_never_panic() {
    for wrong in [f64::NAN, f64::INFINITY, -1.001, 60.001] {
        assert!(TreadLimit::UK_CAR.check(exact(wrong)).is_err(), "{wrong}");
        assert!(TreadLimit::UK_CAR.check(Toleranced::within(mm(5.0), mm(wrong * 100.0))).is_err(), "{wrong}");
        assert!(tread_spread(&[exact(5.0), exact(wrong)]).is_err(), "{wrong}");
        assert!(tread_spread(&[exact(wrong), exact(5.0)]).is_err(), "{wrong}");
        assert!(rear_deeper_by(&[exact(wrong)], &[exact(5.0)]).is_err(), "{wrong}");
        assert!(WearRate::measured(exact(wrong), exact(5.0), km(1e4)).is_err(), "{wrong}");
        assert!(WearRate::measured(exact(5.0), exact(wrong), km(1e4)).is_err(), "{wrong}");
    }
    for wrong in [f64::NAN, -0.001, 60.001] {
        assert!(TreadLimit::stated(mm(wrong)).is_err() && SpreadLimit::stated(mm(wrong)).is_err(), "{wrong}");
    }
    for wrong in [f64::NAN, 0.9, 1e6 + 1.0] {
        assert!(WearRate::measured(exact(7.0), exact(5.0), km(wrong)).is_err(), "{wrong}");
    }
    assert!(WearRate::measured(exact(7.0), exact(5.0), km(1e4)).unwrap().over(km(f64::NAN)).is_err());
}

#[test]
fn a_measurement_may_reach_below_a_bald_tire() {
    let bald = TreadLimit::UK_CAR.check(Toleranced::within(mm(0.1), mm(0.2))).unwrap();
    assert_eq!(bald.measured().min(), mm(0.0));
    assert_eq!((bald.is_met(), bald.citation()), (Some(false), Citation::TREAD_UK));
}

#[test]
fn wear_is_a_span_that_holds_its_nominal() {
    let gauge = |depth: f64| Toleranced::within(mm(depth), mm(0.1));
    let rate = WearRate::measured(gauge(7.0), gauge(5.0), km(10_000.0)).unwrap();
    let left = rate.distance_to(gauge(5.0), TreadLimit::UK_CAR).unwrap();
    let near = |a: Length, b: f64| (a.get::<kilometer>() - b).abs() < 1e-6;
    assert!(near(left.min(), 3.3 / 2.2 * 10_000.0), "{left:?}");
    assert!(near(left.nominal(), 3.4 / 2.0 * 10_000.0), "{left:?}");
    assert!(near(left.max(), 3.5 / 1.8 * 10_000.0), "{left:?}");
    // Driving what is left wears the tread down to the limit.
    let exactly = WearRate::measured(exact(7.0), exact(5.0), km(10_000.0)).unwrap();
    let left = exactly.distance_to(exact(5.0), TreadLimit::EU_CAR).unwrap().nominal();
    assert!((exactly.over(left).unwrap().nominal() - mm(3.4)).abs() < mm(1e-9));
    // At or below the limit nothing is left.
    assert_eq!(rate.distance_to(exact(1.0), TreadLimit::UK_CAR).unwrap(), Toleranced::exact(km(0.0)));

    let hidden = |before: f64, after: f64| WearRate::measured(gauge(before), gauge(after), km(1000.0));
    assert_eq!(hidden(6.2, 6.0), Err(WearError::NotSeen)); // exactly the two uncertainties
    assert_eq!(hidden(6.0, 6.2), Err(WearError::NotSeen));
    assert!(hidden(6.201, 6.0).is_ok());
    assert!(WearError::NotSeen.to_string().contains("uncertainty"));
}

#[test]
fn spreads_keep_their_order_and_never_fall_below_zero() {
    let treads = [Toleranced::within(mm(6.0), mm(1.0)), Toleranced::within(mm(6.5), mm(1.0))];
    let spread = tread_spread(&treads).unwrap().unwrap();
    assert_eq!(spread.min(), mm(0.0));
    assert!((spread.max() - mm(2.5)).abs() < mm(1e-9));
    assert_eq!(tread_spread(&[]).unwrap(), None);
    let four = tread_spread(&[exact(8.0), exact(5.0), exact(7.0), exact(6.0)]).unwrap().unwrap();
    assert!((four.nominal() - mm(3.0)).abs() < mm(1e-9));
    assert_eq!(rear_deeper_by(&[], &[exact(5.0)]).unwrap(), None);
}

#[test]
fn every_remedy_sets_the_tire_right() {
    use ArrowTurn::{Clockwise, CounterClockwise};
    use SideFacingOut::{Inside, Outside};
    use VehicleSide::{Left, Right};
    let other = |side| if side == Left { Right } else { Left };
    let turned = |tire: Mounting| {
        let arrow = tire.arrow().map(|turn| if turn == Clockwise { CounterClockwise } else { Clockwise });
        let facing_out = tire.facing_out().map(|side| if side == Inside { Outside } else { Inside });
        Mounting::new(arrow, facing_out)
    };
    let mut wrong = 0;
    for arrow in [None, Some(Clockwise), Some(CounterClockwise)] {
        for facing_out in [None, Some(Outside), Some(Inside)] {
            for side in [Left, Right] {
                let tire = Mounting::new(arrow, facing_out);
                let found = tire.on(side);
                assert_eq!(
                    found.is_right(),
                    found.remedy().map(|_| false).or((arrow, facing_out).ne(&(None, None)).then_some(true))
                );
                let (tire, side) = match found.remedy() {
                    None => continue,
                    Some(Remedy::ChangeSide) => (tire, other(side)),
                    Some(Remedy::TurnOnRim) => (turned(tire), side),
                    Some(Remedy::TurnOnRimAndChangeSide) => (turned(tire), other(side)),
                    Some(remedy) => panic!("{remedy:?}"),
                };
                assert_eq!(tire.on(side).is_right(), Some(true), "{arrow:?} {facing_out:?} {side:?}");
                wrong += 1;
            }
        }
    }
    assert_eq!(wrong, 10);
}

#[cfg(feature = "serde")]
mod judged {
    use beadseat::scenario::Scenario;
    use serde_json::{Value, json};

    fn tire_age(code: &str, day: &str) -> Value {
        let setup = json!({ "tire": "205/55R16 91V", "wheel": "7Jx16", "left": { "date_code": code } });
        let scenario = json!({
            "vehicle": { "kind": "passenger" },
            "original": { "front": setup },
            "proposed": { "front": setup },
            "use": { "date": day },
        });
        let scenario: Scenario = serde_json::from_value(scenario).unwrap_or_else(|e| panic!("{code}: {e}"));
        let report = serde_json::to_value(scenario.assess()).unwrap();
        let is_it = |c: &&Value| c["id"] == "tire_age" && c["where"] == "front_left";
        report["checks"].as_array().unwrap().iter().find(is_it).unwrap().clone()
    }

    #[test]
    fn a_date_code_is_judged_on_its_day() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases/tire_age.csv");
        let (mut checked, mut wrong) = (0, Vec::new());
        for row in csv::Reader::from_path(path).unwrap().records() {
            let row = row.unwrap();
            let [case, code, day, verdict, years, reason, source] =
                row.iter().collect::<Vec<_>>().try_into().unwrap();
            let check = tire_age(code, day);
            let same_age = match years.parse::<f64>() {
                Ok(years) => (check["measured"].as_f64().unwrap_or(f64::NAN) - years).abs() < 1e-6,
                Err(_) => check["measured"].is_null(),
            };
            if check["verdict"] != verdict || !same_age || !check["reason"].as_str().unwrap().contains(reason)
            {
                wrong.push(format!("{case}: {verdict}, {years}, {reason} by {source}, is {check:#}"));
            }
            checked += 1;
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n"));
        assert_eq!(checked, 21);
    }
}
