//! Judges a scenario file: `assess SCENARIO.json [--json]`.
//!
//! Prints a report for people, or with `--json` for programs. Exit code 0 whatever the verdict, 2 if the
//! scenario cannot be read.

mod common;

use std::process::ExitCode;

use beadseat::scenario::Scenario;

fn main() -> ExitCode {
    let (flags, files): (Vec<String>, Vec<String>) =
        std::env::args().skip(1).partition(|a| a.starts_with("--"));
    let [file] = files.as_slice() else { return misuse() };
    if flags.iter().any(|flag| flag != "--json") {
        return misuse();
    }
    common::answer(file, |scenario| {
        Ok(if flags.is_empty() {
            scenario.document(&scenario.assess()).to_string()
        } else {
            for_programs(scenario)
        })
    })
}

fn misuse() -> ExitCode {
    eprintln!("usage: assess SCENARIO.json [--json]");
    ExitCode::from(2)
}

fn for_programs(scenario: &Scenario) -> String {
    match serde_json::to_string_pretty(&scenario.document(&scenario.assess())) {
        Ok(json) => json + "\n",
        Err(error) => format!("{{\"error\": \"{error}\"}}\n"),
    }
}
