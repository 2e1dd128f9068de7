//! Judges a scenario file: `assess SCENARIO.json [--json|--summary] [--units metric|us|both]`.
//!
//! Prints a report for people, with `--summary` the shortest of it, or with `--json` all of it for programs. Exit code
//! 0 whatever the verdict, 2 if the scenario cannot be read.

mod common;

use std::process::ExitCode;

use beadseat::fitment::Document;
use common::Arguments;

const HELP: &str = "\
assess SCENARIO.json [--json|--summary] [--units metric|us|both]

Judges a change of wheels and tires and prints the report: the verdict, what moves, what decides and what to do
about it, every finding with its limit, margin and source, cautions, and what was not assessed.

  --summary  verdict, what decides, what moves, what was not judged and what to do next, in 15 lines
  --json     all of it for programs, in metric units
  --units    what the text is printed in: metric, us, or both

Exit code 0 whatever the verdict, 2 where the scenario cannot be read: then it says where and why.
";

fn main() -> ExitCode {
    let Arguments { flags, words, units } = match Arguments::read(HELP) {
        Ok(arguments) => arguments,
        Err(code) => return code,
    };
    let say: fn(Document<'_>) -> String = match flags.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        [] => |document| document.to_string(),
        ["--summary"] => |document| document.summary().to_string(),
        ["--json"] => for_programs,
        _ => return common::misuse(HELP),
    };
    let [file] = words.as_slice() else { return common::misuse(HELP) };
    common::answer(file, |scenario| Ok(say(scenario.document(&scenario.assess()).in_units(units))))
}

fn for_programs(document: Document<'_>) -> String {
    match serde_json::to_string_pretty(&document) {
        Ok(json) => json + "\n",
        Err(error) => format!("{{\"error\": \"{error}\"}}\n"),
    }
}
