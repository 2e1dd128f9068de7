//! Judging the invented field-survey wagon, and printing the report.

use core::fmt::Write;
use core::hint::black_box;
use core::time::Duration;

use beadseat::scenario::Scenario;
use criterion::Criterion;

fn main() -> Result<(), serde_json::Error> {
    let scenario: Scenario =
        serde_json::from_str(include_str!("../examples/scenarios/field-survey-wagon.json"))?;
    let mut criterion = Criterion::default()
        .sample_size(50)
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(1))
        .configure_from_args();

    criterion.bench_function("assess", |bencher| bencher.iter(|| black_box(&scenario).assess()));
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
