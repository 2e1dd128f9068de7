//! Writing a designation into a `String` that is there already.

use core::fmt::{Display, Write};
use core::hint::black_box;
use core::net::Ipv4Addr;
use core::time::Duration;
use std::error::Error;

use beadseat::tire::Tire;
use beadseat::wheel::{BoltCircle, Wheel};
use criterion::{BenchmarkGroup, Criterion, measurement::WallTime};
use semver::Version;

fn main() -> Result<(), Box<dyn Error>> {
    let mut criterion = Criterion::default()
        .sample_size(50)
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(1))
        .configure_from_args();
    let mut group = criterion.benchmark_group("display");
    display(&mut group, "Ipv4Addr", &"192.168.10.25".parse::<Ipv4Addr>()?);
    display(&mut group, "Tire", &"205/55R16 91V".parse::<Tire>()?);
    display(&mut group, "BoltCircle", &"5x114.3".parse::<BoltCircle>()?);
    display(&mut group, "Wheel", &"7Jx16 H2 ET45".parse::<Wheel>()?);
    display(&mut group, "semver", &"1.12.3".parse::<Version>()?);
    group.bench_function("write! of three numbers", |bencher| {
        let mut text = String::with_capacity(64);
        bencher.iter(|| {
            let (width, aspect, rim) = black_box((205_u16, 55_u8, 16_u8));
            text.clear();
            let written = write!(text, "{width}/{aspect}R{rim}");
            black_box(&text);
            written
        });
    });
    group.finish();
    criterion.final_summary();
    Ok(())
}

fn display(group: &mut BenchmarkGroup<'_, WallTime>, name: &str, value: &impl Display) {
    group.bench_function(name, |bencher| {
        let mut text = String::with_capacity(64);
        bencher.iter(|| {
            text.clear();
            let written = write!(text, "{}", black_box(value));
            black_box(&text);
            written
        });
    });
}
