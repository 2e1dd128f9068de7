//! Counts instructions under callgrind, which no other load of the machine disturbs, and compares them with
//! `instructions.csv`.
//!
//! `cargo bench -p beadseat-benches --bench instructions`; with `BLESS=1` before it the counts become the baseline.

#[path = "instructions/baseline.rs"]
mod baseline;
#[path = "sweep/invented.rs"]
#[allow(dead_code, reason = "what another bench asks of a scene")]
mod invented;
#[path = "instructions/shapes.rs"]
mod shapes;

use std::env;
use std::error::Error;
use std::fs;
use std::hint::black_box;
use std::io::ErrorKind;
use std::path::Path;
use std::process::{Command, ExitCode};

use baseline::Count;

/// As an argument: this is the process under callgrind.
const COUNTED: &str = "--counted";

fn main() -> Result<ExitCode, Box<dyn Error>> {
    if env::args().any(|argument| argument == COUNTED) {
        shapes::run(|name, pieces, mut work| {
            work();
            collected_by_callgrind(&mut work);
            println!("{pieces},{name}");
        })?;
        return Ok(ExitCode::SUCCESS);
    }
    match counts()? {
        Some(counts) => baseline::compare(&counts),
        None => {
            println!("instructions: skipped, valgrind is not on offer");
            Ok(ExitCode::SUCCESS)
        }
    }
}

/// Callgrind collects while this runs, and writes a file when it returns.
#[inline(never)]
fn collected_by_callgrind(work: &mut dyn FnMut()) {
    work();
    // Else the last thing done were a jump, and this over before the work began.
    black_box(());
}

/// What callgrind counted for each shape; none without valgrind.
fn counts() -> Result<Option<Vec<Count>>, Box<dyn Error>> {
    let files = Path::new(env!("CARGO_TARGET_TMPDIR")).join("instructions");
    match fs::remove_dir_all(&files) {
        Err(error) if error.kind() != ErrorKind::NotFound => return Err(error.into()),
        _ => fs::create_dir_all(&files)?,
    }
    let run = Command::new("valgrind")
        .args(["--tool=callgrind", "--quiet"])
        // Of one and the same pattern twice, callgrind heeds the first alone.
        .args(["--toggle-collect=*collected_by_callgrind*", "--dump-after=*by_callgrind*"])
        .arg(format!("--callgrind-out-file={}", files.join("shape").display()))
        .arg(env::current_exe()?)
        .arg(COUNTED)
        .output();
    let run = match run {
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(None),
        run => run?,
    };
    if !run.status.success() {
        return Err(String::from_utf8_lossy(&run.stderr).into());
    }
    let shapes = String::from_utf8(run.stdout)?;
    let count = |(n, shape): (usize, &str)| -> Result<Count, Box<dyn Error>> {
        let (pieces, name) = shape.split_once(',').ok_or("a shape without a name")?;
        let file = fs::read_to_string(files.join(format!("shape.{}", n + 1)))?;
        let total = file.lines().find_map(|line| line.strip_prefix("totals: ")).ok_or("no total")?;
        let each = total.trim().parse::<f64>()? / pieces.parse::<f64>()?;
        Ok(Count { name: name.into(), each })
    };
    shapes.lines().enumerate().map(count).collect::<Result<_, _>>().map(Some)
}
