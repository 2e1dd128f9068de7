//! Reading what is stamped on wheels, and identifying measured bolt circles, as pieces a second.

use core::hint::black_box;
use core::time::Duration;

use beadseat::Toleranced;
use beadseat::units::mm;
use beadseat::wheel::{
    BoltCircle, WheelStamp,
    drilling::{Identified, MeasuredCircle},
};
use criterion::{Criterion, Throughput};

const SIZES: [&str; 8] =
    ["7Jx16 H2", "6 1/2Jx15", "8.25x22.5", "7.50-20", "150TR390 FH", "5.50Bx13", "8JJ × 17", "16x7"];
const HUBS: [&str; 4] =
    [" ET45 5x112 57.1", " 5x4.5in +38 CB 67.1", " ET-12.5 4x100/114.3", " ET168 8x170 124.9"];
const MARKS: [&str; 4] = [
    "",
    " MAX LOAD 690 kg (1521 lb)",
    " JWL VIA 03/2021 MADE IN UTOPIA",
    " E13 124R-001234 KBA 45678 W23/2019 DOT",
];

fn main() {
    let stamps: Vec<String> = SIZES
        .iter()
        .flat_map(|size| HUBS.iter().map(move |hub| format!("{size}{hub}")))
        .flat_map(|wheel| MARKS.iter().map(move |marks| format!("{wheel}{marks}")))
        .collect();
    for stamp in &stamps {
        let wrong = stamp.parse::<WheelStamp>().err().map(|error| error.show(stamp).to_string());
        assert_eq!(wrong, None);
    }
    // Every standard circle, measured between neighbours, next but one and so on, with an error.
    let chords: Vec<_> = BoltCircle::STANDARD
        .iter()
        .flat_map(|circle| (1..circle.count()).map(move |apart| (circle, apart)))
        .filter_map(|(circle, apart)| Some((circle.count(), apart, circle.chord(apart)? + mm(0.13))))
        .collect();

    let mut criterion = Criterion::default()
        .sample_size(50)
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(2))
        .configure_from_args();
    let mut group = criterion.benchmark_group("wheel");
    group.throughput(Throughput::Elements(stamps.len() as u64));
    group.bench_function("stamps", |bencher| {
        bencher.iter(|| stamps.iter().filter(|stamp| black_box(stamp).parse::<WheelStamp>().is_ok()).count());
    });
    group.throughput(Throughput::Elements(chords.len() as u64));
    group.bench_function("bolt circles identified", |bencher| {
        bencher.iter(|| {
            let identify = |&(count, apart, chord)| {
                let chord = Toleranced::within(chord, mm(0.2));
                let measured = MeasuredCircle::between_centres(count, apart, chord).ok()?;
                Some(Identified::from(measured).compatible().count())
            };
            black_box(&chords).iter().filter_map(identify).sum::<usize>()
        });
    });
    group.finish();
    criterion.final_summary();
}
