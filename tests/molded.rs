//! Pressures as they are molded, against the printed pairs of two units.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::MoldedPressure;
use beadseat::tire::sidewall::MoldedLimit;
use beadseat::uom::si::pressure::{bar, kilopascal};
use common::{Tally, rows};

/// The pressure index of UN R54 is a number of psi. Its metric figures are the exact ones rounded to ten
/// kilopascals, and a tire that is molded with both is read as saying one thing.
#[test]
fn pressure_index() {
    let mut tally = Tally::of("UN R54, pressure index");
    for row in &rows("r54_pressure_index.csv") {
        let index: u16 = row["pressure_index_psi"].parse().unwrap();
        let pressure = MoldedPressure::Psi(index).pressure();
        row.near("kPa", pressure.get::<kilopascal>(), 5.0);
        row.rounds_to("bar", pressure.get::<bar>());
        row.near("kPa", 100.0 * row.number("bar"), 1e-9);
        let (kpa, psi) = (&row["kPa"], &row["pressure_index_psi"]);
        let molded: MoldedLimit = format!("MAX PRESS {kpa} KPA ({psi} PSI)").parse().unwrap();
        let expected = MoldedPressure::Kilopascals(kpa.parse().unwrap());
        assert_eq!(molded, MoldedLimit::Pressure(expected), "{row}");
        let other: u16 = index + 5;
        assert!(format!("MAX PRESS {kpa} KPA ({other} PSI)").parse::<MoldedLimit>().is_err(), "{row}");
        tally.checked(row);
    }
    tally.close(27, &[]);
}
