//! What pressures a load range letter leaves, and what a sidewall may then print.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::tire::{
    Tire,
    sidewall::{LineContradiction, SidewallLine},
};
use beadseat::uom::si::pressure::{kilopascal, pound_force_per_square_inch as psi};
use common::{Row, Tally, rows};

fn tire(row: &Row) -> Tire {
    format!("{} LR{}", &row["size"], &row["letter"]).parse().unwrap_or_else(|error| panic!("{error}: {row}"))
}

#[test]
fn letters_leave_one_pressure_or_two() {
    let mut tally = Tally::of("pressures of load range letters by size");
    for row in &rows("wide_lt_pressures.csv") {
        match tire(row).reference_pressures_by_letter() {
            Some((lower, higher)) => {
                row.near("lower_kpa", lower.get::<kilopascal>(), 1e-9);
                row.near("higher_kpa", higher.get::<kilopascal>(), 1e-9);
            }
            None => assert_eq!((&row["lower_kpa"], &row["higher_kpa"]), ("", ""), "{row}"),
        }
        tally.checked(row);
    }
    tally.close(20, &[]);
}

/// Either pressure may stand, in either unit and rounded to whole pounds; what is past both by more may not.
#[test]
fn a_sidewall_may_print_either() {
    let mut tally = Tally::of("sidewalls that print a pressure of their letter");
    for row in &rows("wide_lt_pressures.csv") {
        let tire = tire(row);
        let Some((lower, higher)) = tire.reference_pressures_by_letter() else {
            tally.left(&row["size"], "no pressure");
            continue;
        };
        let metric = tire.size().to_string().contains('/');
        let contradicts = |printed: &str| {
            let line = SidewallLine::parse(&format!("{tire} MAX LOAD 1400 kg AT {printed}")).unwrap();
            line.contradictions().any(|c| c == LineContradiction::RangeAgainstPressure)
        };
        for of_letter in [lower, higher] {
            assert!(!contradicts(&format!("{:.0} kPa", of_letter.get::<kilopascal>())), "{row}");
            assert!(!contradicts(&format!("{:.0} psi", of_letter.get::<psi>())), "{row}");
            assert!(!contradicts(&format!("{:.0} kPa", of_letter.get::<kilopascal>() - 6.0)), "{row}");
            assert!(!contradicts(&format!("{:.0} kPa", of_letter.get::<kilopascal>() + 6.0)), "{row}");
        }
        assert_eq!(contradicts(&format!("{:.0} kPa", lower.get::<kilopascal>() - 8.0)), metric, "{row}");
        assert_eq!(contradicts(&format!("{:.0} kPa", higher.get::<kilopascal>() + 8.0)), metric, "{row}");
        tally.checked(row);
    }
    tally.close(16, &[("no pressure", 4)]);
}
