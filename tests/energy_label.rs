//! Label classes against the rows of `tests/reference/`.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::Citation;
use beadseat::tire::{
    ServiceDescription, SpeedSymbol,
    energy_label::{
        ClassBounds, FormerLabelClass, LabelClass, NoiseClass, NoiseLimit, SnowTest, SoundLevel, TireClass,
    },
    sidewall::ApprovalStage,
};
use beadseat::units::{Ratio, mm, ratio};
use common::{Row, Tally, rows};

fn tire_class(row: &Row) -> TireClass {
    *[TireClass::C1, TireClass::C2, TireClass::C3].iter().find(|c| c.name() == &row["tyre_class"]).unwrap()
}

fn label_class(letter: &str) -> LabelClass {
    *LabelClass::ALL.iter().find(|c| c.name() == letter).unwrap()
}

fn former_class(letter: &str) -> FormerLabelClass {
    *FormerLabelClass::ALL.iter().find(|c| c.name() == letter).unwrap()
}

/// N/kN.
fn resistance(text: &str) -> Ratio {
    ratio(text.parse::<f64>().unwrap() / 1000.0)
}

fn grip(text: &str) -> Ratio {
    ratio(text.parse().unwrap())
}

fn db(text: &str) -> SoundLevel {
    SoundLevel::new(text.parse().unwrap()).unwrap()
}

/// The bounds of a row, as far as it has any.
fn told(row: &Row, read: fn(&str) -> Ratio) -> (Option<Ratio>, Option<Ratio>) {
    let bound = |columns: [&str; 2]| {
        let text = columns.into_iter().find_map(|column| row.get(column)).unwrap();
        (!text.is_empty()).then(|| read(text))
    };
    (bound(["lower", "min"]), bound(["upper", "max"]))
}

#[track_caller]
fn agree(row: &Row, bounds: ClassBounds, read: fn(&str) -> Ratio) {
    let (lower, upper) = told(row, read);
    let same = |a: Option<Ratio>, b: Option<Ratio>| match (a, b) {
        (Some(a), Some(b)) => (a - b).abs() < ratio(1e-12),
        (a, b) => a == b,
    };
    assert!(same(bounds.min(), lower) && same(bounds.max(), upper), "{row} {bounds:?}");
    // All tables have been seen: those of which a row is remembered or derived, in the files of their own.
    assert!(!bounds.citation().is_from_memory(), "{row}");
}

/// Every printed end of a class lies in it.
#[track_caller]
fn at_ends<C: PartialEq + core::fmt::Debug>(
    row: &Row,
    read: fn(&str) -> Ratio,
    class: C,
    of: impl Fn(Ratio) -> C,
) {
    let (lower, upper) = told(row, read);
    for end in [lower, upper].into_iter().flatten() {
        assert_eq!(of(end), class, "{row}");
    }
}

#[test]
fn every_class_has_the_bounds_of_its_row() {
    const VEHICLE: &str = "a matter of the vehicle, not of numbers";
    const SAID: &str = "a pictogram or a date, said in the documentation";
    const APPROVAL: &str = "approval marks, in tests/sidewall.rs";
    let mut tally = Tally::of("classes of the label");
    for row in &rows("eu_label.csv") {
        let parameter = &row["parameter"];
        match parameter {
            "fuel_efficiency" => {
                let (tire, class) = (tire_class(row), label_class(&row["class"]));
                agree(row, class.rolling_resistance(tire), resistance);
                at_ends(row, resistance, class, |v| LabelClass::of_rolling_resistance(tire, v).unwrap());
            }
            "wet_grip" => {
                let (tire, class) = (tire_class(row), label_class(&row["class"]));
                agree(row, class.wet_grip(tire), grip);
                at_ends(row, grip, class, |v| LabelClass::of_wet_grip(tire, v).unwrap());
            }
            "fuel_efficiency_old_2012_2021" => {
                let (tire, class) = (tire_class(row), former_class(&row["class"]));
                let bounds = class.rolling_resistance(tire);
                assert_eq!(bounds.is_none(), &row["lower"] == "empty", "{row}");
                if let Some(bounds) = bounds {
                    agree(row, bounds, resistance);
                    let of = |v| FormerLabelClass::of_rolling_resistance(tire, v).unwrap();
                    at_ends(row, resistance, class, of);
                }
            }
            "wet_grip_old_2012_2021" => {
                let class = former_class(&row["class"]);
                assert_eq!(class.wet_grip_c1().is_none(), &row["lower"] == "empty", "{row}");
                if let Some(bounds) = class.wet_grip_c1() {
                    agree(row, bounds, grip);
                    at_ends(row, grip, class, |v| FormerLabelClass::of_wet_grip_c1(v).unwrap());
                }
            }
            // The trade's rule of thumb, which the tables bear out for C1.
            "class_letter_change" => {
                let former = match &row["class"] {
                    "old E" => FormerLabelClass::E,
                    _ => FormerLabelClass::F,
                };
                let today = former.fuel_class_today(TireClass::C1).unwrap();
                assert_eq!(format!("new {}", today.name()), row["lower"]);
            }
            "noise" => {
                let limit = db("71");
                let (class, most) = match &row["class"] {
                    "A" => (NoiseClass::A, SoundLevel::new(71 - 3)),
                    "B" => (NoiseClass::B, Some(limit)),
                    _ => (NoiseClass::C, None),
                };
                assert_eq!((class.name(), class.max(limit)), (&row["class"], most));
            }
            "noise_limit" => {
                let (limit, class) = (db(&row["upper"]), &row["class"]);
                assert_eq!(&row["certainty"], "memory");
                let tires: Vec<NoiseLimit> = match tire_class(row) {
                    TireClass::C1 => {
                        // `<=185`, `>185 to 215`, `>275`: both ends inside, and just above the lower.
                        let width = class.strip_prefix("width ").unwrap();
                        let ends: Vec<f64> = width
                            .split(|c: char| !c.is_ascii_digit())
                            .filter_map(|w| w.parse().ok())
                            .collect();
                        let inside = match (ends[..].first(), ends.get(1), width.starts_with("<=")) {
                            (Some(&most), None, true) => vec![100.0, most],
                            (Some(&above), None, false) => vec![above + 1e-6, 400.0],
                            (Some(&above), Some(&most), _) => vec![above + 1e-6, most],
                            _ => panic!("{row}"),
                        };
                        let of =
                            |w| NoiseLimit::C1 { nominal_width: mm(w), severe_snow_or_extra_load: false };
                        inside.into_iter().map(of).collect()
                    }
                    TireClass::C2 => vec![NoiseLimit::C2 { traction: class == "traction" }],
                    TireClass::C3 => vec![NoiseLimit::C3 { traction: class == "traction" }],
                    other => panic!("{other:?} in {row}"),
                };
                for tire in tires {
                    assert_eq!(tire.limit(), Some(limit), "{row} {tire:?}");
                    assert_eq!(tire.citation(), Citation::NOISE_LIMIT, "seen in ec661_2009.csv");
                }
            }
            "noise_limit_add" => {
                let of =
                    |raised| NoiseLimit::C1 { nominal_width: mm(225.0), severe_snow_or_extra_load: raised };
                let more = of(true).limit().unwrap().decibels() - of(false).limit().unwrap().decibels();
                assert_eq!(more.to_string(), row["lower"]);
                assert_eq!((&row["certainty"], of(true).citation().is_from_memory()), ("memory", true));
            }
            "snow_index_min" => {
                let test =
                    if row["class"].starts_with("braking") { SnowTest::Braking } else { SnowTest::Traction };
                assert_eq!(test.min_index(tire_class(row)), Some(grip(&row["lower"])));
                assert!(test.citation().is_from_memory());
            }
            "ice_index_min" => {
                assert_eq!(tire_class(row).min_ice_grip_index(), Some(grip(&row["lower"])));
            }
            "no_fg_classes" => assert_eq!(LabelClass::ALL.len(), 5),
            "class_choice_if_two" => assert_eq!(TireClass::C1.max(TireClass::C2), TireClass::C2),
            "tyre_class_def" => {
                let of = |text: &str| {
                    let service = ServiceDescription::parse(text).unwrap();
                    TireClass::of_commercial(service.single(), service.speed())
                };
                match tire_class(row) {
                    TireClass::C1 => {
                        tally.left(parameter, VEHICLE);
                        continue;
                    }
                    TireClass::C2 => assert_eq!((of("121N"), of("100T")), (TireClass::C2, TireClass::C2)),
                    TireClass::C3 => assert_eq!((of("122N"), of("121M")), (TireClass::C3, TireClass::C3)),
                    other => panic!("{other:?} in {row}"),
                }
            }
            "snow_icon" | "ice_icon" | "application_date" => {
                tally.left(parameter, SAID);
                continue;
            }
            "r117_mark"
            | "r117_mark_example"
            | "e_mark_prefix"
            | "e_mark_letter"
            | "e_mark_country"
            | "e_mark_required_from" => {
                tally.left(parameter, APPROVAL);
                continue;
            }
            other => panic!("a row without a test: {other}"),
        }
        tally.checked(row);
    }
    tally.close(83, &[(VEHICLE, 1), (SAID, 3), (APPROVAL, 25)]);
}

#[test]
fn the_marking_cases_hold() {
    let mut tally = Tally::of("marking cases of labels");
    for row in rows("marking_cases.csv") {
        let (input, expected) = (&row["input"], &row["expected"]);
        let words: Vec<&str> = input.split(' ').collect();
        let answer = match words[..] {
            ["EU", class, "RRC", value] => {
                let tire = if class == "C1" { TireClass::C1 } else { TireClass::C3 };
                LabelClass::of_rolling_resistance(tire, resistance(value)).unwrap().name()
            }
            ["EU", "C1", "wet", "grip", value] => {
                LabelClass::of_wet_grip(TireClass::C1, grip(value)).unwrap().name()
            }
            ["EU", "noise", "limit", limit, "measured", level] => {
                NoiseClass::of(db(level), db(limit.trim_end_matches(','))).name()
            }
            ["old", "label", class, "RRC", value] => {
                let tire = if class == "C1" { TireClass::C1 } else { TireClass::C3 };
                FormerLabelClass::of_rolling_resistance(tire, resistance(value)).unwrap().name()
            }
            _ => continue,
        };
        assert_eq!(answer, expected.split(' ').next().unwrap(), "{input}");
        tally.checked(&row);
    }
    tally.close(9, &[]);
}

/// Every printed value falls in the class whose bounds hold it, and merit never rises with resistance.
#[test]
fn classes_tile_their_scale() {
    for tire in [TireClass::C1, TireClass::C2, TireClass::C3] {
        let mut last = (LabelClass::A, FormerLabelClass::A);
        for tenths in 10..=300 {
            let value = ratio(f64::from(tenths) / 10_000.0);
            let class = LabelClass::of_rolling_resistance(tire, value).unwrap();
            let former = FormerLabelClass::of_rolling_resistance(tire, value).unwrap();
            for bounds in [class.rolling_resistance(tire), former.rolling_resistance(tire).unwrap()] {
                assert!(bounds.min().is_none_or(|least| least <= value));
                assert!(bounds.max().is_none_or(|most| value <= most));
            }
            assert!(class <= last.0 && former <= last.1);
            last = (class, former);
        }
        assert_eq!(last.0, LabelClass::E);
        let mut last = LabelClass::E;
        for hundredths in 0..=300 {
            let value = ratio(f64::from(hundredths) / 100.0);
            let class = LabelClass::of_wet_grip(tire, value).unwrap();
            assert!(class.wet_grip(tire).min().is_none_or(|least| least <= value));
            assert!(class.wet_grip(tire).max().is_none_or(|most| value <= most));
            assert!(class >= last);
            last = class;
        }
        assert_eq!(last, LabelClass::A);
    }
}

/// Relettering would make 9.1 and 9.2 N/kN of C2 a D; the regulation of 2020 parts it at 9.0.
#[test]
fn c2_is_parted_anew() {
    for tenths in [91, 92] {
        let value = ratio(f64::from(tenths) / 10_000.0);
        assert_eq!(LabelClass::of_rolling_resistance(TireClass::C2, value).unwrap(), LabelClass::E);
        let former = FormerLabelClass::of_rolling_resistance(TireClass::C2, value).unwrap();
        assert_eq!((former, former.fuel_class_today(TireClass::C2)), (FormerLabelClass::E, None));
    }
}

#[test]
fn the_label_of_2020_as_it_was_seen() {
    let mut tally = Tally::of("EU 2020/740, Annex I");
    for row in &rows("eu2020_740.csv") {
        let (tire, class) = (tire_class(row), label_class(&row["label_class"]));
        if &row["parameter"] == "fuel" {
            agree(row, class.rolling_resistance(tire), resistance);
            at_ends(row, resistance, class, |v| LabelClass::of_rolling_resistance(tire, v).unwrap());
        } else {
            agree(row, class.wet_grip(tire), grip);
            at_ends(row, grip, class, |v| LabelClass::of_wet_grip(tire, v).unwrap());
        }
        assert_eq!(&row["certainty"], "seen-as-table");
        tally.checked(row);
    }
    tally.close(30, &[]);
}

/// Of the former label a letter without a row has no values.
#[test]
fn the_label_of_2009_as_it_was_seen() {
    let mut tally = Tally::of("EC 1222/2009, Annex I");
    let mut seen = Vec::new();
    for row in &rows("eu1222_2009.csv") {
        let (tire, class) = (tire_class(row), former_class(&row["label_class"]));
        if &row["parameter"] == "fuel" {
            agree(row, class.rolling_resistance(tire).unwrap(), resistance);
            at_ends(row, resistance, class, |v| FormerLabelClass::of_rolling_resistance(tire, v).unwrap());
            seen.push((Some(tire), class));
        } else {
            agree(row, class.wet_grip_c1().unwrap(), grip);
            at_ends(row, grip, class, |v| FormerLabelClass::of_wet_grip_c1(v).unwrap());
            assert_eq!(tire, TireClass::C1);
            seen.push((None, class));
        }
        assert_eq!(&row["certainty"], "seen-as-table");
        tally.checked(row);
    }
    tally.close(23, &[]);
    for class in FormerLabelClass::ALL {
        for tire in [TireClass::C1, TireClass::C2, TireClass::C3] {
            assert_eq!(class.rolling_resistance(tire).is_some(), seen.contains(&(Some(tire), *class)));
        }
        assert_eq!(class.wet_grip_c1().is_some(), seen.contains(&(None, *class)));
    }
}

#[test]
fn limits_of_approval_as_they_were_seen() {
    let mut tally = Tally::of("EC 661/2009, Annex II");
    for row in &rows("ec661_2009.csv") {
        let key = &row["key"];
        let class = || match &key[..2] {
            "C1" => TireClass::C1,
            "C2" => TireClass::C2,
            "C3" => TireClass::C3,
            _ => panic!("{row}"),
        };
        let resistance_limit = |stage| {
            assert_eq!(class().max_rolling_resistance(stage), Some(resistance(&row["value"])), "{row}");
            assert!(!Citation::RESISTANCE_LIMIT.is_from_memory());
        };
        let wet_grip = |mud_and_snow, symbols: &[SpeedSymbol]| {
            for &symbol in symbols {
                let least = TireClass::C1.min_wet_grip(mud_and_snow, symbol);
                assert_eq!(least, Some(grip(&row["value"])), "{row} {symbol}");
            }
            assert!(!Citation::WET_GRIP_LIMIT.is_from_memory());
        };
        match &row["parameter"] {
            "noise" => {
                let tires: Vec<NoiseLimit> = match class() {
                    TireClass::C1 => {
                        let bound = |column: &str| row[column].parse::<f64>();
                        let above = bound("low_mm_excl").map_or(100.0, |above| above + 1e-6);
                        let most = bound("high_mm_incl").unwrap_or(400.0);
                        [above, most]
                            .map(|w| NoiseLimit::C1 {
                                nominal_width: mm(w),
                                severe_snow_or_extra_load: false,
                            })
                            .into()
                    }
                    TireClass::C2 => vec![NoiseLimit::C2 { traction: key.ends_with("traction") }],
                    TireClass::C3 => vec![NoiseLimit::C3 { traction: key.ends_with("traction") }],
                    other => panic!("{other:?} in {row}"),
                };
                for tire in tires {
                    assert_eq!(tire.limit(), Some(db(&row["value"])), "{row} {tire:?}");
                    assert!(!tire.citation().is_from_memory(), "{row}");
                }
            }
            "rolling_stage1" => resistance_limit(ApprovalStage::First),
            "rolling_stage2" => resistance_limit(ApprovalStage::Second),
            "wet_min" if key.starts_with("M+S <=160") => {
                wet_grip(true, &[SpeedSymbol::L, SpeedSymbol::N, SpeedSymbol::Q]);
            }
            "wet_min" if key.starts_with("M+S >160") => {
                wet_grip(true, &[SpeedSymbol::R, SpeedSymbol::H, SpeedSymbol::V, SpeedSymbol::Y]);
            }
            "wet_min" if key == "normal" => wet_grip(false, SpeedSymbol::ALL),
            _ => panic!("{row}"),
        }
        assert_eq!(&row["certainty"], "seen-as-table");
        tally.checked(row);
    }
    tally.close(18, &[]);
    for class in [TireClass::C1, TireClass::C2, TireClass::C3] {
        assert_eq!(class.max_rolling_resistance(ApprovalStage::NotTold), None);
        assert_eq!(class.min_wet_grip(false, SpeedSymbol::T).is_some(), class == TireClass::C1);
    }
}

#[test]
fn former_classes_become_todays() {
    use LabelClass::{A, B, C, D, E};
    let today = |tire| FormerLabelClass::ALL.iter().map(|c| c.fuel_class_today(tire)).collect::<Vec<_>>();
    assert_eq!(today(TireClass::C1), [Some(A), Some(B), Some(C), None, Some(D), Some(E), Some(E)]);
    assert_eq!(today(TireClass::C2), [Some(A), Some(B), Some(C), None, None, Some(E), Some(E)]);
    assert_eq!(today(TireClass::C3), [Some(A), Some(B), Some(C), Some(D), Some(E), Some(E), None]);
}

#[test]
fn finer_values_are_rounded_and_wrong_ones_refused() {
    let class = |n_per_kn: f64| LabelClass::of_rolling_resistance(TireClass::C1, ratio(n_per_kn / 1000.0));
    assert_eq!((class(6.549).unwrap(), class(6.55).unwrap()), (LabelClass::A, LabelClass::B));
    let grip = |index: f64| LabelClass::of_wet_grip(TireClass::C1, ratio(index));
    assert_eq!((grip(1.545).unwrap(), grip(1.544).unwrap()), (LabelClass::A, LabelClass::B));
    for wrong in [f64::NAN, 0.9, 50.1, -1.0] {
        assert!(class(wrong).is_err(), "{wrong}");
    }
    for wrong in [f64::NAN, -0.1, 5.1] {
        assert!(grip(wrong).is_err(), "{wrong}");
    }
    for wrong in [f64::NAN, 0.0, -205.0] {
        let tire = NoiseLimit::C1 { nominal_width: mm(wrong), severe_snow_or_extra_load: false };
        assert_eq!(tire.limit(), None, "{wrong}");
    }
    assert_eq!(
        class(0.5).unwrap_err().to_string(),
        "rolling resistance coefficient 0.5 N/kN is not in 1 to 50 N/kN"
    );
}
