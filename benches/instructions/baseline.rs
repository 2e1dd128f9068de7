//! The committed counts: one compiler's, since another compiles to other instructions.

use std::env;
use std::error::Error;
use std::fs;
use std::process::{Command, ExitCode};

/// Instructions for one piece of a shape.
pub(crate) struct Count {
    pub(crate) name: String,
    pub(crate) each: f64,
}

const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/instructions.csv");
/// What stands first, and what all is measured by.
const RULER: &str = "parse Ipv4Addr";
/// How far a count may be over the baseline's.
const TOLERANCE: f64 = 0.03;

/// The compiler and what it compiles for, in a line.
fn compiler() -> Result<String, Box<dyn Error>> {
    let rustc = env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let version = String::from_utf8(Command::new(rustc).arg("-vV").output()?.stdout)?;
    let value = |key| version.lines().find_map(|line| line.strip_prefix(key)).ok_or("no version of rustc");
    Ok(format!("rustc {} for {}", value("release: ")?, value("host: ")?))
}

/// Prints each count beside the baseline's, and fails for one that is over it, or that has none. `BLESS` in the
/// environment makes the counts the baseline.
pub(crate) fn compare(counts: &[Count]) -> Result<ExitCode, Box<dyn Error>> {
    let compiler = compiler()?;
    let bless = env::var_os("BLESS").is_some();
    let text = if bless { written(counts, &compiler) } else { fs::read_to_string(FILE)? };
    if bless {
        fs::write(FILE, &text)?;
    }
    let mut lines = text.lines();
    let of = lines.next().and_then(|line| line.strip_prefix("# ")).ok_or("a baseline names its compiler")?;
    let is_same = of == compiler;
    let rows = lines.skip(1).map(|line| {
        let (each, name) = line.split_once(',').ok_or("a row is a count and a name")?;
        Ok((name, each.parse()?))
    });
    let rows: Vec<(&str, f64)> = rows.collect::<Result<_, Box<dyn Error>>>()?;
    let known = |name: &str| rows.iter().find(|row| row.0 == name).map(|row| row.1);

    let ruler = counts.iter().find(|count| count.name == RULER).ok_or("no ruler")?.each;
    println!("{:>12} {:>12} {:>8} {:>8}  instructions", "now", "baseline", "change", "rulers");
    let (mut wrong, mut fewer) = (0, 0);
    for Count { name, each } in counts {
        let (before, change) =
            known(name).map_or((f64::NAN, f64::NAN), |before| (before, each / before - 1.0));
        let is_wrong = change.is_nan() || (is_same && change > TOLERANCE);
        wrong += usize::from(is_wrong);
        fewer += usize::from(is_same && change < -TOLERANCE);
        let mark = if is_wrong { "  <- wrong" } else { "" };
        println!("{each:12.1} {before:12.1} {:+7.1}% {:8.2}  {name}{mark}", change * 100.0, each / ruler);
    }
    for (name, _) in rows.iter().filter(|row| !counts.iter().any(|count| count.name == row.0)) {
        wrong += 1;
        println!("{name}: in the baseline, and no longer counted  <- wrong");
    }
    if is_same {
        println!(
            "instructions: {wrong} wrong, {fewer} fewer by more than the tolerance (BLESS=1 for a new baseline)"
        );
    } else {
        println!("instructions: not compared, the baseline is of {of}, these are of {compiler}");
    }
    Ok(if wrong == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

fn written(counts: &[Count], compiler: &str) -> String {
    let rows: String = counts.iter().map(|count| format!("{:.1},{}\n", count.each, count.name)).collect();
    format!("# {compiler}\ninstructions,shape\n{rows}")
}
