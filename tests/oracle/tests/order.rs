//! The orders of designations: total, consistent with equality, and by what the documentation says.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use std::cmp::Ordering;
use std::fmt::Debug;
use std::str::FromStr;

use beadseat::ParseError;
use beadseat::tire::{Tire, TireSize};
use beadseat::wheel::{BoltCircle, Pitch, Thread, Wheel, WheelSize};
use proptest::prelude::*;
use proptest::sample::select;

/// The laws of a total order that agrees with equality, of any three values.
fn holds<T: Copy + Debug + Ord>([a, b, c]: [T; 3]) -> Result<(), TestCaseError> {
    for (x, y) in [(a, b), (b, c), (a, c), (a, a)] {
        prop_assert_eq!(x.cmp(&y), y.cmp(&x).reverse(), "{:?} {:?}", x, y);
        prop_assert_eq!(x.cmp(&y) == Ordering::Equal, x == y, "{:?} {:?}", x, y);
        prop_assert_eq!(x.partial_cmp(&y), Some(x.cmp(&y)));
    }
    let mut sorted = [a, b, c];
    sorted.sort();
    let [least, middle, most] = sorted;
    prop_assert!(least <= middle && middle <= most && least <= most, "{:?}", sorted);
    if a <= b && b <= c {
        prop_assert!(a <= c, "{:?} {:?} {:?}", a, b, c);
    }
    Ok(())
}

/// Three texts of which some are of this kind: parts of a few values, so that what is equal in part is common.
fn values<T: Debug + FromStr<Err = ParseError>>(
    texts: impl Strategy<Value = String>,
) -> impl Strategy<Value = [T; 3]> {
    let value = texts.prop_filter_map("not one that can be", |text| text.parse().ok());
    prop::collection::vec(value, 3).prop_map(|values| values.try_into().unwrap())
}

const RIMS: &[&str] = &["14", "15", "16", "24", "22.5"];

fn sizes() -> impl Strategy<Value = String> {
    let structures = &["R", "-", "B", "ZR", "SR", "RF"][..];
    let metric = (
        select(&["", "P", "LT", "HL", "T", "ST"][..]),
        select(&["155", "205", "267", "265", "330"][..]),
        select(&["55", "60", "80"][..]),
        select(structures),
        select(&["14", "15", "16", "24", "22.5", "390"][..]),
        select(&["", "C", "CP", " M/C"][..]),
    )
        .prop_map(|(prefix, width, aspect, structure, rim, suffix)| {
            format!("{prefix}{width}/{aspect}{structure}{rim}{suffix}")
        });
    let no_aspect = (
        select(&["155", "205"][..]),
        select(structures),
        select(RIMS),
        select(&["", "C", "LT"][..]),
        select(&["", "5.60", "6.15"][..]),
    )
        .prop_map(|(width, structure, rim, suffix, inches)| match inches {
            "" => format!("{width}{structure}{rim}{suffix}"),
            _ => format!("{width}{structure}{rim}/{inches}-{rim}{suffix}"),
        });
    let numeric = (
        select(&["6.00", "6", "6.0", "10.50", "10.5", "11"][..]),
        select(&["", "/70"][..]),
        select(structures),
        select(RIMS),
        select(&["", "C", "LT", "L", " M/C"][..]),
    )
        .prop_map(|(width, aspect, structure, rim, suffix)| {
            format!("{width}{aspect}{structure}{rim}{suffix}")
        });
    let flotation = (
        select(&["31", "31.5", "33"][..]),
        select(&["10.50", "10.5", "11", "6"][..]),
        select(structures),
        select(RIMS),
        select(&["", "LT"][..]),
    )
        .prop_map(|(overall, width, structure, rim, suffix)| {
            format!("{overall}x{width}{structure}{rim}{suffix}")
        });
    let letter = (
        select(&["E", "G", "MT", "MH"][..]),
        select(&["", "R"][..]),
        select(&["60", "78", "90"][..]),
        select(&["-", "B"][..]),
        select(RIMS),
        select(&["", "LT"][..]),
    )
        .prop_map(|(letter, radial, aspect, structure, rim, suffix)| {
            format!("{letter}{radial}{aspect}{structure}{rim}{suffix}")
        });
    let rare = select(
        &[
            "IF600/70R30",
            "VF600/70R30",
            "600/70R30",
            "500/60-22.5",
            "500/60R22.5",
            "400/60-15.5",
            "145/70-6",
            "17.5R25",
            "17.5-25",
            "17.50-25",
            "4.80/4.00-8",
            "4.80/3.50-8",
            "4.80-8",
            "4.10H18",
            "4.10S18",
            "4.10H18 M/C",
            "11L-15",
            "11-15L",
            "11-15",
            "8R17.5HC",
            "8R17.5",
            "AT25x8-12",
            "25x8-12",
        ][..],
    )
    .prop_map(str::to_owned);
    prop_oneof![metric, no_aspect, numeric, flotation, letter, rare]
}

fn tires() -> impl Strategy<Value = String> {
    let size = select(&["205/55ZR16", "205/55R16", "LT245/75R17", "31x10.50R15LT", "120/70ZR17 M/C"][..]);
    let service = select(&["", " 91V", " 91H", " 91/89V", " 94V", " (94Y)", " (58W)"][..]);
    let mark = select(&["", " XL", " LL", " HL", " LRE", " LRC"][..]);
    let road = (size, service, mark).prop_map(|(size, service, mark)| format!("{size}{service}{mark}"));
    let service = select(&["", " 145A8", " 145A8/145B", " 145A8/142B", " 145A8/142D", " 145/142A8"][..]);
    let mark = select(&["", " *", " **", " L-3", " * L-3", " * L-3/E-3", " L-3S", " LRE L-3"][..]);
    let earthmover = (service, mark).prop_map(|(service, mark)| format!("26.5R25{service}{mark}"));
    prop_oneof![road, earthmover]
}

fn wheel_sizes() -> impl Strategy<Value = String> {
    let width = select(&["5", "6", "6.5", "7"][..]);
    let contour = select(&["", "J", "JJ", "K", "S"][..]);
    let inches = (width, contour, select(&["x", "-"][..]), select(&["15", "16", "22.5"][..]))
        .prop_map(|(width, contour, separator, rim)| format!("{width}{contour}{separator}{rim}"));
    let rare = select(
        &[
            "150TR390",
            "160TR390",
            "MT2.50x17",
            "MT2.50x18",
            "2.5x17",
            "WM2x18",
            "1.85x18",
            "W10x24",
            "W10Lx24",
            "DW10x24",
            "10x24",
            "17.00-25/1.7",
            "17.00-25/2",
            "17-25",
        ][..],
    );
    let rim = prop_oneof![3 => inches, 1 => rare.prop_map(str::to_owned)];
    (rim, select(&["", " H", " H2", " FH"][..])).prop_map(|(rim, hump)| format!("{rim}{hump}"))
}

fn wheels() -> impl Strategy<Value = String> {
    (
        select(&["6Jx15", "7Jx15", "6Jx16"][..]),
        select(&["", " ET-5", " ET40", " ET45"][..]),
        select(&["", " 4x100", " 5x100", " 5x100/114.3", " 5x114.3/5x100", " 5x112"][..]),
        select(&["", " 57.1", " 66.6"][..]),
    )
        .prop_map(|(size, inset, holes, bore)| format!("{size}{inset}{holes}{bore}"))
}

fn bolt_circles() -> impl Strategy<Value = String> {
    (3_u8..=12, select(&["98", "100", "114.3", "4.5in", "112"][..]))
        .prop_map(|(count, diameter)| format!("{count}x{diameter}"))
}

fn threads() -> impl Strategy<Value = String> {
    // 3.175 mm are eight threads to the inch, and 12.7 mm half an inch.
    let metric = (select(&["12", "12.7", "14"][..]), select(&["1.25", "1.27", "1.5", "3.175"][..]))
        .prop_map(|(major, pitch)| format!("M{major}x{pitch}"));
    let unified = (select(&["1/2", "9/16"][..]), select(&["8", "13", "18", "20"][..]))
        .prop_map(|(major, threads)| format!("{major}-{threads}"));
    prop_oneof![metric, unified]
}

/// Any, be it one that a thread can have or not.
fn pitches() -> impl Strategy<Value = Pitch> {
    prop_oneof![
        prop_oneof![any::<i32>(), select(&[0, -1, 3_175_000, 1_270_000, i32::MIN, i32::MAX][..])]
            .prop_map(|nanometres| Pitch::Metric { nanometres }),
        prop_oneof![any::<u8>(), select(&[0, 8, 20][..])]
            .prop_map(|threads_per_inch| Pitch::Unified { threads_per_inch }),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 4000, max_global_rejects: 100_000, max_local_rejects: 1_000_000, ..ProptestConfig::default() })]

    #[test]
    fn of_tire_sizes(values in values::<TireSize>(sizes())) {
        holds(values)?;
        let [a, b, _] = values;
        if a.rim_diameter() != b.rim_diameter() {
            prop_assert_eq!(a.cmp(&b), a.rim_diameter().cmp(&b.rim_diameter()));
        } else if let (Some(wide), Some(other)) = (a.nominal_width(), b.nominal_width()) {
            // Some widths in inches are whole millimetres but for the last digit of a float.
            if (wide - other).abs() > beadseat::units::mm(0.001) {
                prop_assert_eq!(Some(a.cmp(&b)), wide.partial_cmp(&other));
            }
        }
    }

    #[test]
    fn of_tires(values in values::<Tire>(tires())) {
        holds(values)?;
        let [a, b, _] = values;
        prop_assert!(a.size() == b.size() || a.cmp(&b) == a.size().cmp(&b.size()));
    }

    #[test]
    fn of_wheel_sizes(values in values::<WheelSize>(wheel_sizes())) {
        holds(values)?;
    }

    #[test]
    fn of_wheels(values in values::<Wheel>(wheels())) {
        holds(values)?;
        let [a, b, _] = values;
        prop_assert!(a.size() == b.size() || a.cmp(&b) == a.size().cmp(&b.size()));
    }

    #[test]
    fn of_bolt_circles(values in values::<BoltCircle>(bolt_circles())) {
        holds(values)?;
        let [a, b, _] = values;
        prop_assert!(a.count() == b.count() || a.cmp(&b) == a.count().cmp(&b.count()));
    }

    #[test]
    fn of_threads(values in values::<Thread>(threads())) {
        holds(values)?;
    }

    #[test]
    fn of_pitches(a in pitches(), b in pitches(), c in pitches()) {
        holds([a, b, c])?;
    }
}

/// Each list in its order.
fn in_order<T: Copy + Debug + Ord + FromStr<Err = ParseError>>(texts: &[&str]) {
    let values: Vec<T> = texts.iter().map(|text| text.parse().unwrap()).collect();
    for (n, a) in values.iter().enumerate() {
        for b in &values[n + 1..] {
            assert!(a < b, "{a:?} {b:?}");
        }
    }
}

#[test]
fn what_comes_first() {
    in_order::<TireSize>(&[
        "205/55R15",
        "ER78-16",
        "6.00-16",
        "155R16",
        "205/50R16",
        "205/55R16",
        "P205/55R16",
        "205/55SR16",
        "205/55ZR16",
        "205/55-16",
        "205R16",
        "10.50R16",
        "31x10.50R16LT",
        "33x10.50R16LT",
        "275/55R16",
        "205/55R17",
        "11R22.5",
        "220/55R390",
    ]);
    in_order::<Tire>(&[
        "205/55R16",
        "205/55R16 XL",
        "205/55R16 91H",
        "205/55R16 91V",
        "205/55R16 91V LL",
        "205/55R16 91V XL",
        "205/55R16 91/89V",
        "205/55R16 94H",
        "225/45R17 91V",
    ]);
    in_order::<WheelSize>(&[
        "7x15", "6.5Jx16", "7x16", "7Jx16", "7Jx16 H", "7Jx16 H2", "7J-16 H2", "7JJx16", "150TR390",
    ]);
    in_order::<Wheel>(&[
        "7Jx16",
        "7Jx16 5x112",
        "7Jx16 ET-5",
        "7Jx16 ET45",
        "7Jx16 ET45 57.1",
        "7Jx16 ET45 4x108",
        "7Jx16 ET45 5x100",
        "7Jx16 ET45 5x100/112",
        "7Jx16 ET45 5x100 57.1",
        "7Jx16 ET45 5x112",
        "7.5Jx16",
    ]);
    in_order::<BoltCircle>(&["4x100", "4x108", "5x98", "5x4.5in", "5x115", "6x100"]);
    in_order::<Thread>(&["M12x1.25", "M12x1.5", "1/2-20", "M12.7x1.5", "1/2-13", "M14x1.5", "9/16-18"]);
}
