//! Judges a scenario file: `assess SCENARIO.json [--json|--summary|--csv|--markdown] [--units metric|us|both]`.
//!
//! Prints a report for people, with `--summary` the shortest of it, with `--json` all of it for programs, with `--csv` a
//! spreadsheet, with `--markdown` a page. Exit code 0 whatever the verdict, 2 if the scenario cannot be read.

mod common;

use std::process::ExitCode;

use beadseat::fitment::Document;
use common::{Arguments, tables};

const HELP: &str = "\
assess SCENARIO.json [--json|--summary|--csv|--markdown] [--units metric|us|both]

Judges a change of wheels and tires and prints the report: the verdict, what moves, what decides and what to do
about it, every finding with its limit, margin and source, cautions, and what was not assessed.

  --summary  verdict, what decides, what moves, what was not judged and what to do next, in 15 lines
  --json     all of it for programs, in metric units
  --csv      moves, findings and effects as a spreadsheet, in metric units
  --markdown all of it as a page to hand on, in metric units
  --units    what the text is printed in: metric, us, or both

Exit code 0 whatever the verdict, 2 where the scenario cannot be read: then it says where and why.
";

fn main() -> ExitCode {
    let Arguments { flags, words, units } = match Arguments::read(HELP) {
        Ok(arguments) => arguments,
        Err(code) => return code,
    };
    let say: fn(Document<'_>) -> Result<String, String> =
        match flags.iter().map(String::as_str).collect::<Vec<_>>()[..] {
            [] => |document| Ok(document.to_string()),
            ["--summary"] => |document| Ok(document.summary().to_string()),
            ["--json"] => for_programs,
            ["--csv"] => |document| from_json(document, tables::csv),
            ["--markdown"] => |document| from_json(document, |report| Ok(tables::markdown(report))),
            _ => return common::misuse(HELP),
        };
    let [file] = words.as_slice() else { return common::misuse(HELP) };
    common::answer(file, |scenario| say(scenario.document(&scenario.assess()).in_units(units)))
}

/// A text made of what is written for programs.
fn from_json(
    document: Document<'_>,
    say: fn(&serde_json::Value) -> Result<String, Box<dyn std::error::Error>>,
) -> Result<String, String> {
    let json = serde_json::to_value(document).map_err(|error| error.to_string())?;
    say(&json).map_err(|error| error.to_string())
}

fn for_programs(document: Document<'_>) -> Result<String, String> {
    serde_json::to_string_pretty(&document).map(|json| json + "\n").map_err(|error| error.to_string())
}
