//! Room for traction devices, guards, brake discs and limits of jurisdictions against worked and published rows.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::fitment::{LimitSet, Limits, TractionClass};
use beadseat::rim::RimDiameter;
use beadseat::tire::TireSize;
use beadseat::uom::si::angle::degree;
use beadseat::uom::si::length::millimeter;
use beadseat::vehicle::GuardZone;
use common::{Tally, numbers, rows};

#[test]
fn worked_rows() {
    let mut tally = Tally::of("room, guards, brakes and limits, worked rows");
    for row in &rows("mechanics_worked.csv") {
        let inputs = &row["inputs"];
        let class = || match inputs.trim_start_matches("SAE class ") {
            "S" => TractionClass::S,
            "U" => TractionClass::U,
            "W" => TractionClass::W,
            _ => panic!("{row}"),
        };
        let computed = match &row["id"] {
            "FT-38" | "FT-40" => class().room().1.get::<millimeter>(),
            "FT-39" | "FT-41" => class().room().0.get::<millimeter>(),
            "FT-43" | "FT-46" | "FT-47" | "FT-48" => {
                let code: RimDiameter = numbers(inputs)[0].to_string().parse().unwrap();
                code.max_usual_disc().unwrap().get::<millimeter>()
            }
            "FT-51" => GuardZone::AHEAD.get::<degree>(),
            "FT-52" => GuardZone::BEHIND.get::<degree>(),
            "FT-53" => GuardZone::REAR_EDGE_ABOVE_AXLE.get::<millimeter>(),
            "FT-55" => GuardZone::COVER_PROTRUSION.get::<millimeter>(),
            "FT-56" => {
                let limits = Limits::of(LimitSet::BritishColumbia);
                assert_eq!(limits.dynamic_allowance().value().get::<millimeter>(), 0.0);
                limits.swept_clearance().value().get::<millimeter>()
            }
            // The row keeps the fractions of a millimetre that UN R30 rounds off.
            "FT-57" => {
                let ends = inputs.trim_start_matches("front ").split_once("; rear ").unwrap();
                let sizes: [TireSize; 2] = [ends.0, ends.1].map(|text| text.parse().unwrap());
                let exact = sizes.map(|size| {
                    let TireSize::Metric(metric) = size else { panic!("{row}") };
                    let height = metric.nominal_width() * f64::from(metric.aspect_ratio()) / 100.0;
                    25.4 * f64::from(size.rim_diameter().tenths()) / 10.0 + 2.0 * height.get::<millimeter>()
                });
                let rounded = sizes.map(|size| size.overall_diameter_nominal().unwrap().get::<millimeter>());
                let [exact, rounded] = [exact, rounded].map(|[front, rear]| 100.0 * (rear / front - 1.0));
                println!("    {inputs}: {:+.3} % by rounding", rounded - exact);
                assert!((rounded - exact).abs() < 0.1, "{row}");
                exact
            }
            _ => continue, // see dimensions.rs, sweep.rs, wheel.rs and wheel_geometry.rs
        };
        row.near("expected", computed, 1e-9);
        tally.checked(row);
    }
    tally.close(14, &[]);
}
