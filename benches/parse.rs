//! Reading a designation, beside what the standard library and general-purpose crates take for texts
//! of the same length, and for the same grammar.

mod baseline;

use core::hint::black_box;
use core::net::Ipv4Addr;
use core::str::FromStr;
use core::time::Duration;

use beadseat::tire::Tire;
use beadseat::wheel::{BoltCircle, Wheel};
use criterion::{BenchmarkGroup, Criterion, measurement::WallTime};
use semver::Version;

fn main() -> Result<(), regex::Error> {
    let expression = baseline::expression::Expression::compile()?;
    baseline::assert_agreement(&expression);
    let mut criterion = Criterion::default()
        .sample_size(50)
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(1))
        .configure_from_args();

    let mut group = criterion.benchmark_group("parse");
    parse::<Ipv4Addr>(&mut group, "Ipv4Addr", "192.168.10.25");
    parse::<Tire>(&mut group, "Tire", "205/55R16 91V");
    parse::<BoltCircle>(&mut group, "BoltCircle", "5x114.3");
    parse::<Wheel>(&mut group, "Wheel", "7Jx16 H2 ET45");
    parse::<Version>(&mut group, "semver", "1.12.3");
    read(&mut group, "winnow", "205/55R16 91V", baseline::combinators::read);
    read(&mut group, "regex", "205/55R16 91V", |text| expression.read(text));
    group.finish();

    let mut group = criterion.benchmark_group("parse lenient");
    parse::<Ipv4Addr>(&mut group, "Ipv4Addr", "192.168.10.25");
    parse::<Tire>(&mut group, "Tire spaced", "205/55 zr 16  91 v");
    parse::<Tire>(&mut group, "Tire in words", "205/55R16 91V extra load");
    group.finish();

    let mut group = criterion.benchmark_group("parse rejected");
    parse::<Ipv4Addr>(&mut group, "Ipv4Addr", "192.168.10.2x");
    parse::<Tire>(&mut group, "Tire", "205/55R16 91I");
    read(&mut group, "winnow", "205/55R16 91I", baseline::combinators::read);
    read(&mut group, "regex", "205/55R16 91I", |text| expression.read(text));
    group.finish();

    criterion.final_summary();
    Ok(())
}

fn parse<T: FromStr>(group: &mut BenchmarkGroup<'_, WallTime>, name: &str, text: &str) {
    read(group, name, text, T::from_str);
}

fn read<T>(group: &mut BenchmarkGroup<'_, WallTime>, name: &str, text: &str, read: impl Fn(&str) -> T) {
    group.bench_function(name, |bencher| bencher.iter(|| read(black_box(text))));
}
