//! An example as a shell sees it: what it is told, what it answers.

#![allow(dead_code, reason = "each test file uses its part")]

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use serde_json::Value;

/// An example as cargo built it, beside the tests. It is built with all the tests, but not with some by name,
/// which must not judge an older one: cargo lists beside it what it was built from.
pub(crate) fn built(example: &str) -> PathBuf {
    let tests = std::env::current_exe().unwrap();
    let program = tests.ancestors().nth(2).unwrap().join("examples").join(example);
    let program = program.with_extension(std::env::consts::EXE_EXTENSION);
    let modified = |path: &Path| fs::metadata(path).and_then(|file| file.modified()).ok();
    // `program: source source`, a space within a path behind a backslash.
    let list = fs::read_to_string(program.with_extension("d")).unwrap_or_default().replace("\\ ", "\0");
    let sources: Vec<_> = list.split_whitespace().skip(1).map(|path| path.replace('\0', " ")).collect();
    let is_older =
        |source: &String| modified(source.as_ref()).is_some_and(|at| Some(at) <= modified(&program));
    assert!(
        !sources.is_empty() && sources.iter().all(is_older),
        "{example} is not built from what is there: cargo test -p beadseat --all-features --no-run"
    );
    program
}

/// What an example answers to what it is told.
pub(crate) fn run(example: &str, arguments: &[&str], input: impl AsRef<[u8]> + Send) -> Output {
    let mut child = Command::new(built(example))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut stdin = child.stdin.take().unwrap();
    std::thread::scope(|scope| {
        // What is told may be longer than what lies between; an example that refuses its arguments does not wait for it.
        scope.spawn(move || stdin.write_all(input.as_ref()));
        child.wait_with_output().unwrap()
    })
}

/// Every line that was printed, as JSON.
pub(crate) fn lines(output: &Output) -> Vec<Value> {
    String::from_utf8_lossy(&output.stdout).lines().map(|line| serde_json::from_str(line).unwrap()).collect()
}
