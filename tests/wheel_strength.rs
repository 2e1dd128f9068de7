//! Loads of the strength tests, rating and inertia of a wheel against worked rows.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::units::{deg, kg, kg_m2, kg_per_m3, lb, mm, percent, ratio};
use beadseat::uom::si::energy::joule;
use beadseat::uom::si::f64::{Length, Mass, Ratio};
use beadseat::uom::si::force::newton;
use beadseat::uom::si::mass::{kilogram, pound};
use beadseat::uom::si::moment_of_inertia::kilogram_square_meter;
use beadseat::uom::si::ratio::{percent as in_percent, ratio as bare};
use beadseat::uom::si::torque::newton_meter;
use beadseat::uom::si::velocity::meter_per_second;
use beadseat::wheel::{
    Inset, WheelLoad,
    rotation::{RollingPart, RotatingPart, acceleration_ratio},
    strength::{BendingTest, LateralImpact, RadialTest, WheelMetal},
};
use beadseat::{Count, OutOfRange, Status};
use common::{Row, Tally, check_wheel_rows, number_of, numbers, rows};

fn meters(value: f64) -> Length {
    mm(1000.0 * value)
}

#[test]
fn worked_rows() {
    check_wheel_rows(
        "wheel strength and inertia, worked rows",
        &[
            ("C1", 6, shell),
            ("C2", 6, load),
            ("C3", 15, bending),
            ("C4", 9, impact),
            ("C4r", 2, radial),
            ("C5", 9, inertia),
        ],
        627,
    );
}

fn shell(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let shell = RotatingPart::shell(kg_per_m3(of("rho")), mm(of("t")), mm(of("Dm")), mm(of("L"))).unwrap();
    row.rounds_to("value", shell.mass().get::<kilogram>());
}

fn load(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let share = WheelLoad::of_axle(kg(of("axle")), Count::new(of("n") as u8).unwrap()).unwrap();
    match &row["quantity"] {
        "per wheel" => row.rounds_to("value", share.load().get::<kilogram>()),
        "margin" => row.rounds_to("value", share.margin(kg(of("rating"))).get::<in_percent>()),
        _ => panic!("{row}"),
    }
}

/// The test that a row turns on, by its friction and factor.
fn bending_test(row: &Row) -> BendingTest {
    let of = |key| number_of(&row["inputs"], key);
    let (friction, factor) = (ratio(of("mu")), ratio(of("S")));
    let given = BendingTest::stated(friction, factor).unwrap();
    let named = match &row["id"] {
        "C3.1" | "C3.2" => BendingTest::UN_R124,
        "C3.5" => BendingTest::SAE_J328_EARLIER,
        // A truck wheel, whose factor the row gives.
        "C3.7" => BendingTest::sae_j267(factor).unwrap(),
        // The constants of no standard that is known.
        "C3.8" => given,
        _ => panic!("{row}"),
    };
    assert_eq!((named.friction(), named.factor()), (friction, factor), "{row}");
    named
}

fn bending(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let test = bending_test(row);
    let moment = |inset: f64| {
        let inset = Inset::from_length(meters(inset)).unwrap();
        test.moment(kg(of("m")), meters(of("r")), inset).unwrap()
    };
    let of_outset = moment(-of("d"));
    let moment = moment(of("d"));
    assert_eq!(moment, of_outset, "the inset counts by its size");
    let level = match &row["quantity"] {
        "M" => moment.greatest(),
        "0.75M" => moment.short_test(),
        "0.50M" => moment.long_test(),
        _ => panic!("{row}"),
    };
    row.rounds_to("value", level.get::<newton_meter>());
}

fn impact(row: &Row) {
    match &row["quantity"] {
        "v" => row.rounds_to("value", LateralImpact::speed_at_contact().get::<meter_per_second>()),
        quantity => {
            let test = LateralImpact::of(kg(number_of(&row["inputs"], "W"))).unwrap();
            match quantity {
                "D" => row.rounds_to("value", test.striker().get::<kilogram>()),
                "E" => row.rounds_to("value", test.energy().get::<joule>()),
                _ => panic!("{row}"),
            }
        }
    }
    if row["inputs"].contains("h=") {
        assert_eq!(LateralImpact::DROP, meters(number_of(&row["inputs"], "h")), "{row}");
    }
}

fn radial(row: &Row) {
    let of = |key| number_of(&row["inputs"], key);
    let force = RadialTest::new(ratio(of("S"))).unwrap().force(kg(of("m"))).unwrap();
    row.rounds_to("value", force.get::<newton>());
}

/// `[('ann', mass, inner radius, outer radius)] r=rolling radius`
fn inertia(row: &Row) {
    let inputs = &row["inputs"];
    let [mass, inner, outer, rolling] = numbers(inputs)[..] else { panic!("{row}") };
    let part = if inputs.contains("'ring'") {
        RotatingPart::ring(kg(mass), meters(outer))
    } else {
        RotatingPart::annulus(kg(mass), meters(inner), meters(outer))
    };
    rolling_part(row, part.unwrap(), meters(rolling));
}

fn rolling_part(row: &Row, part: RotatingPart, radius: Length) {
    let rolling = part.rolling_on(radius).unwrap();
    match &row["quantity"] {
        "I" => row.rounds_to("value", part.inertia().get::<kilogram_square_meter>()),
        "m_eq" => row.rounds_to("value", rolling.equivalent_mass().get::<kilogram>()),
        "1+m_eq/m" => row.rounds_to("value", rolling.mass_factor().get::<bare>()),
        _ => panic!("{row}"),
    }
}

#[test]
fn rotating_mass() {
    let mut tally = Tally::of("rotating mass, worked rows");
    let tire = RotatingPart::annulus(kg(9.0), mm(203.0), mm(316.0)).unwrap();
    // 0.6 of the mass at the seat of the rim.
    let lumped = RotatingPart::ring(kg(0.6 * 9.0), mm(203.0)).unwrap();
    let factor = |row: &Row| {
        let [inertia, _, mass, radius] = numbers(&row["inputs"])[..] else { panic!("{row}") };
        let part = RotatingPart::stated(kg(mass), kg_m2(inertia)).unwrap();
        part.rolling_on(meters(radius)).unwrap().mass_factor().get::<bare>()
    };
    for row in &rows("mechanics_worked.csv") {
        let in_kg_m2 = |part: RotatingPart| part.inertia().get::<kilogram_square_meter>();
        match &row["id"] {
            "WI-16" => row.rounds_to("expected", in_kg_m2(tire)),
            "WI-18" => {
                let wheel = RotatingPart::annulus(kg(9.0), mm(180.0), mm(203.0)).unwrap();
                row.rounds_to("expected", in_kg_m2(wheel));
            }
            "WI-19" => row.rounds_to("expected", in_kg_m2(lumped)),
            "WI-20" => {
                let rolling = (tire + lumped).rolling_on(mm(307.0)).unwrap();
                row.rounds_to("expected", rolling.equivalent_mass().get::<kilogram>());
            }
            "WI-21" | "WI-23" => row.rounds_to("expected", factor(row)),
            "WI-22" => {
                let tread = RotatingPart::ring(kg(1.0), mm(307.0)).unwrap().rolling_on(mm(307.0)).unwrap();
                row.rounds_to("expected", tread.effective_mass().get::<kilogram>());
            }
            // The row says "around 6", ± 1, and not where on the wheel the pound is: spread over all of it.
            "WI-25" => {
                let pound_on_each = RotatingPart::annulus(lb(1.0), mm(0.0), mm(307.0)).unwrap();
                let rolling = pound_on_each.rolling_on(mm(307.0)).unwrap();
                row.near("expected", 4.0 * rolling.effective_mass().get::<pound>(), 1.0);
            }
            _ => continue, // see dimensions.rs
        }
        tally.checked(row);
    }
    tally.close(8, &[]);
}

/// What a laboratory's summaries say of the tests. They are no more than that, and the citations are not of the
/// standards themselves.
#[test]
fn summaries_of_the_tests() {
    const TURNS: &str = "how many turns a wheel must last, which its maker's certificate says";
    const MACHINE: &str = "the test's mounting, striker face and inflation, which no load depends on";
    let mut tally = Tally::of("wheel tests, summaries");
    for row in &rows("wheel_tests.csv") {
        let (item, key) = (&row["item"], &row["key"]);
        let j267 = || BendingTest::sae_j267(ratio(1.45)).unwrap();
        let metal = || match key {
            "ferrous" => WheelMetal::Ferrous,
            "cold formed Al 5000" => WheelMetal::ColdFormedAluminium,
            "cast/forged Al" => WheelMetal::CastOrForgedAluminium,
            _ => panic!("{row}"),
        };
        let tests: Vec<BendingTest> = match (&row["standard"], item) {
            ("SAE J328-2021", "bending S front") => vec![BendingTest::sae_j328_front(metal())],
            ("SAE J328-2021", "bending S rear") => vec![BendingTest::sae_j328_rear(metal())],
            ("SAE J328-2021", "mu") => {
                let fronts = WheelMetal::ALL.iter().map(|&metal| BendingTest::sae_j328_front(metal));
                fronts.chain(WheelMetal::ALL.iter().map(|&metal| BendingTest::sae_j328_rear(metal))).collect()
            }
            ("SAE J267-2021", "mu") => vec![j267()],
            (_, item) if item.contains("cycles") => {
                tally.left(&format!("{item} {key}"), TURNS);
                continue;
            }
            ("SAE J175-2023", "axis angle deg") => {
                assert_eq!(LateralImpact::LEAN, deg(numbers(&row["value"])[0]), "{row}");
                vec![]
            }
            ("SAE J175-2023", "striker mass kg") => {
                let [share, base] = numbers(&row["value"])[..] else { panic!("{row}") };
                for load in [100.0, 690.0, 1500.0] {
                    let striker = LateralImpact::of(kg(load)).unwrap().striker();
                    assert!((striker - kg(share * load + base)).abs() < kg(1e-9), "{row}");
                }
                vec![]
            }
            ("SAE J175-2023", "drop height mm") => {
                assert_eq!(LateralImpact::DROP, mm(row.number("value")), "{row}");
                vec![]
            }
            _ => {
                tally.left(item, MACHINE);
                continue;
            }
        };
        for test in tests {
            let computed = if item == "mu" { test.friction() } else { test.factor() };
            row.near("value", computed.get::<bare>(), 1e-12);
            let citation = test.citation();
            assert_eq!((citation.status(), citation.is_from_memory()), (Status::Handbook, false), "{row}");
            assert!(citation.document().contains("summarizes"), "{row}");
        }
        assert_eq!(&row["certainty"], "secondary");
        tally.checked(row);
    }
    tally.close(11, &[(TURNS, 7), (MACHINE, 5)]);
    for &metal in WheelMetal::ALL {
        let [front, rear] = [BendingTest::sae_j328_front(metal), BendingTest::sae_j328_rear(metal)];
        assert!(front.factor() > rear.factor(), "a front wheel is bent harder: {metal}");
    }
}

#[test]
fn constants_of_the_tests_are_remembered_and_say_so() {
    for test in [BendingTest::UN_R124, BendingTest::SAE_J328_EARLIER, BendingTest::JWL] {
        assert!(test.citation().is_from_memory(), "{}", test.citation());
    }
    assert_eq!(BendingTest::UN_R124.citation().status(), Status::Regulation);
    assert_eq!(BendingTest::JWL.factor(), ratio(1.5));
    assert_eq!(BendingTest::stated(ratio(0.7), ratio(2.0)).unwrap().citation().status(), Status::Stated);
    assert!(RadialTest::new(ratio(2.0)).unwrap().citation().is_from_memory());
    assert!(!LateralImpact::of(kg(550.0)).unwrap().citation().is_from_memory());
}

#[test]
fn an_exchange_counts_mass_and_turning() {
    let rolling = |mass, outer| -> RollingPart {
        RotatingPart::ring(kg(mass), mm(outer)).unwrap().rolling_on(mm(300.0)).unwrap()
    };
    let same = acceleration_ratio(kg(1000.0), &[(rolling(10.0, 300.0), rolling(10.0, 300.0))]).unwrap();
    assert!((same - ratio(1.0)).abs() < ratio(1e-15));
    assert_eq!(acceleration_ratio(kg(1000.0), &[]), Ok(ratio(1.0)));
    // 1000 + 10 kg before; 5 kg less and 5 kg less of turning after.
    let lighter = acceleration_ratio(kg(1000.0), &[(rolling(10.0, 300.0), rolling(5.0, 300.0))]).unwrap();
    assert!((lighter - ratio(1010.0 / 1000.0)).abs() < percent(1e-9));
    let vehicle_of_wheels_alone = acceleration_ratio(kg(10.0), &[(rolling(10.0, 0.0), rolling(5.0, 0.0))]);
    assert!((vehicle_of_wheels_alone.unwrap() - ratio(2.0)).abs() < percent(1e-9));
    assert!(acceleration_ratio(kg(9.9), &[(rolling(10.0, 0.0), rolling(5.0, 0.0))]).is_err());
}

/// What no quantity of a wheel is.
const HOSTILE: [f64; 6] = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0, 1e300, f64::MIN];

#[test]
fn every_quantity_has_its_bounds() {
    let (mass, length, metal) = (kg(10.0), mm(300.0), kg_per_m3(2700.0));
    let inset = Inset::parse("ET45").unwrap();
    let part = RotatingPart::ring(mass, length).unwrap();
    let rolling = part.rolling_on(length).unwrap();
    /// What refuses the quantity, and the least and the most that is taken.
    type Attempt<'a> = (&'a dyn Fn(f64) -> Option<OutOfRange>, f64, f64);
    let attempts: [Attempt<'_>; 22] = [
        (&|x| RotatingPart::ring(kg(x), length).err(), 0.001, 2000.0),
        (&|x| RotatingPart::ring(mass, mm(x)).err(), 0.0, 1500.0),
        (&|x| RotatingPart::annulus(kg(x), mm(1.0), length).err(), 0.001, 2000.0),
        (&|x| RotatingPart::annulus(mass, mm(x), length).err(), 0.0, 300.0),
        (&|x| RotatingPart::annulus(mass, length, mm(x)).err(), 300.0, 1500.0),
        (&|x| RotatingPart::shell(kg_per_m3(x), mm(5.0), length, length).err(), 100.0, 25_000.0),
        (&|x| RotatingPart::shell(metal, mm(x), length, length).err(), 0.1, 100.0),
        (&|x| RotatingPart::shell(metal, mm(5.0), mm(x), length).err(), 50.0, 1500.0),
        (&|x| RotatingPart::shell(metal, mm(5.0), length, mm(x)).err(), 1.0, 1500.0),
        (&|x| RotatingPart::stated(kg(x), kg_m2(0.0)).err(), 0.001, 2000.0),
        (&|x| RotatingPart::stated(mass, kg_m2(x)).err(), 0.0, 22.5),
        (&|x| part.rolling_on(mm(x)).err(), 50.0, 1500.0),
        (&|x| acceleration_ratio(kg(x), &[(rolling, rolling)]).err(), 10.0, 100_000.0),
        (&|x| acceleration_ratio(kg(x), &[]).err(), 1.0, 100_000.0),
        (&|x| BendingTest::sae_j267(ratio(x)).err(), 1.0, 5.0),
        (&|x| BendingTest::stated(ratio(x), ratio(2.0)).err(), 0.1, 1.5),
        (&|x| BendingTest::stated(ratio(0.7), ratio(x)).err(), 1.0, 5.0),
        (&|x| BendingTest::JWL.moment(kg(x), length, inset).err(), 10.0, 20_000.0),
        (&|x| BendingTest::JWL.moment(mass, mm(x), inset).err(), 50.0, 1500.0),
        (&|x| RadialTest::new(ratio(x)).err(), 1.0, 5.0),
        (&|x| RadialTest::new(ratio(2.0)).unwrap().force(kg(x)).err(), 10.0, 20_000.0),
        (&|x| LateralImpact::of(kg(x)).err(), 10.0, 20_000.0),
    ];
    for (number, (attempt, least, most)) in attempts.into_iter().enumerate() {
        for taken in [least, most] {
            assert_eq!(attempt(taken), None, "attempt {number}");
        }
        let step = 1e-6 * most;
        for refused in [least - step, most + step].into_iter().chain(HOSTILE) {
            assert!(attempt(refused).is_some(), "{refused} taken by attempt {number}");
        }
    }
    let thick = RotatingPart::shell(metal, mm(61.0), mm(60.0), length).unwrap_err();
    assert_eq!(thick.to_string(), "thickness 61 mm is not in 0.1 to 60 mm");
}

#[test]
fn loads_and_ratings_at_the_bound() {
    let share = WheelLoad::of_axle(kg(1100.0), Count::new(2).unwrap()).unwrap();
    let margin = |rating: f64| -> Ratio { share.margin(kg(rating)) };
    assert!(margin(549.999) < ratio(0.0) && margin(550.001) > ratio(0.0));
    let load: Mass = share.load();
    assert_eq!(share.margin(load), ratio(0.0));
    let of = |axle| WheelLoad::of_axle(kg(axle), Count::new(1).unwrap());
    assert!(of(10.0).is_ok() && of(60_000.0).is_ok());
    assert!(of(9.999).is_err() && of(60_000.001).is_err());
}
