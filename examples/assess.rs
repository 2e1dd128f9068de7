//! Judges a scenario file: `assess SCENARIO.json [--json|--summary]`.
//!
//! Prints a report for people, with `--summary` the shortest of it, or with `--json` all of it for programs. Exit code
//! 0 whatever the verdict, 2 if the scenario cannot be read.

mod common;

use std::process::ExitCode;

use beadseat::fitment::Document;

fn main() -> ExitCode {
    let (flags, files): (Vec<String>, Vec<String>) =
        std::env::args().skip(1).partition(|a| a.starts_with("--"));
    let say: fn(Document<'_>) -> String = match flags.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        [] => |document| document.to_string(),
        ["--summary"] => |document| document.summary().to_string(),
        ["--json"] => for_programs,
        _ => return misuse(),
    };
    let [file] = files.as_slice() else { return misuse() };
    common::answer(file, |scenario| Ok(say(scenario.document(&scenario.assess()))))
}

fn misuse() -> ExitCode {
    eprintln!("usage: assess SCENARIO.json [--json|--summary]");
    ExitCode::from(2)
}

fn for_programs(document: Document<'_>) -> String {
    match serde_json::to_string_pretty(&document) {
        Ok(json) => json + "\n",
        Err(error) => format!("{{\"error\": \"{error}\"}}\n"),
    }
}
