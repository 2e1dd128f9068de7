//! Reading whole sidewall lines: a generated mix of every family, as lines a second.

use core::hint::black_box;
use core::time::Duration;

use beadseat::marking::readings;
use beadseat::tire::sidewall::SidewallLine;
use criterion::{Criterion, Throughput};

/// Sizes of every family, and what may stand behind each.
const SIZES: [&str; 24] = [
    "205/55R16",
    "225/45ZR17",
    "195/65-15",
    "P215/65R15",
    "HL245/40R19",
    "T125/70D16",
    "220/55R390",
    "155R13",
    "LT245/75R17",
    "195/70R15C",
    "225/75R16CP",
    "ST205/75R15",
    "295/80R22.5",
    "31x10.50R15LT",
    "7.50R16C",
    "H78-15",
    "385/65R22.5",
    "11R22.5",
    "120/70ZR17 M/C",
    "4.00-18 M/C",
    "MT90B16 M/C",
    "710/55-30",
    "20.8-38",
    "18x9.5-8",
];
const SERVICES: [&str; 4] = [" 91V", " 104/102R", " (94Y)", " 121/118 s"];
const MARKS: [&str; 4] =
    ["", " M+S", " TUBELESS M+S 3PMSF", " MAX LOAD 1450 kg (3195 lb) AT 550 kPa (80 psi) TUBELESS"];

fn main() {
    let lines: Vec<String> = SIZES
        .iter()
        .flat_map(|size| SERVICES.iter().map(move |service| format!("{size}{service}")))
        .flat_map(|line| MARKS.iter().map(move |marks| format!("{line}{marks}")))
        .collect();
    for line in &lines {
        let wrong = line.parse::<SidewallLine>().err().map(|error| error.show(line).to_string());
        assert_eq!(wrong, None);
    }
    let mut criterion = Criterion::default()
        .sample_size(50)
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(2))
        .configure_from_args();
    let mut group = criterion.benchmark_group("sidewall");
    group.throughput(Throughput::Elements(lines.len() as u64));
    group.bench_function("lines", |bencher| {
        bencher.iter(|| lines.iter().filter(|line| black_box(line).parse::<SidewallLine>().is_ok()).count());
    });
    group.bench_function("readings", |bencher| {
        bencher.iter(|| lines.iter().filter(|line| readings(black_box(line)).is_ok()).count());
    });
    group.finish();
    criterion.final_summary();
}
