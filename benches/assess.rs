//! Judging the invented field-survey wagon, and printing the report.

use core::fmt::Write;
use core::hint::black_box;
use core::time::Duration;

use beadseat::scenario::Scenario;
use criterion::Criterion;
use serde::Deserialize;

fn main() -> Result<(), serde_json::Error> {
    let mut document: serde_json::Value =
        serde_json::from_str(include_str!("../examples/scenarios/field-survey-wagon.json"))?;
    let swept = Scenario::deserialize(&document)?;
    for axle in ["front", "rear"] {
        if let Some(space) = document["vehicle"][axle]["space"].as_object_mut() {
            space.remove("obstacles");
        }
    }
    let scenario = Scenario::deserialize(&document)?;
    let mut criterion = Criterion::default()
        .sample_size(50)
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(1))
        .configure_from_args();

    criterion.bench_function("assess", |bencher| bencher.iter(|| black_box(&scenario).assess()));
    criterion.bench_function("assess with sweep", |bencher| bencher.iter(|| black_box(&swept).assess()));
    let report = scenario.assess();
    let mut text = String::with_capacity(64 * 1024);
    criterion.bench_function("print a report", |bencher| {
        bencher.iter(|| {
            text.clear();
            write!(text, "{}", black_box(&report))
        });
    });
    criterion.final_summary();
    Ok(())
}
