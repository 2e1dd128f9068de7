//! Judges a scenario file: `assess SCENARIO.json [--json]`.
//!
//! Prints a report for people, or with `--json` for programs. Exit code 0 whatever the verdict, 2 if the
//! scenario cannot be read.

mod common;

use std::process::ExitCode;

use beadseat::Excerpt;
use beadseat::fitment::Setup;
use beadseat::scenario::Scenario;

fn main() -> ExitCode {
    let (flags, files): (Vec<String>, Vec<String>) =
        std::env::args().skip(1).partition(|a| a.starts_with("--"));
    let [file] = files.as_slice() else { return misuse() };
    if flags.iter().any(|flag| flag != "--json") {
        return misuse();
    }
    common::answer(file, |scenario| {
        Ok(if flags.is_empty() { for_people(scenario) } else { for_programs(scenario) })
    })
}

fn misuse() -> ExitCode {
    eprintln!("usage: assess SCENARIO.json [--json]");
    ExitCode::from(2)
}

fn for_people(scenario: &Scenario) -> String {
    let report = scenario.assess();
    let mut text = format!("{}\n\n", report.headline());
    let name: String = Excerpt(scenario.name().unwrap_or("vehicle without a name")).to_string();
    // The report is made for a terminal of 100 columns.
    text.extend(name.chars().take(100));
    text.push('\n');
    let change = scenario.change();
    for (place, from, to) in [
        ("front", change.original.front, change.proposed.front),
        ("rear", change.original.rear, change.proposed.rear),
    ] {
        if from.is_some() || to.is_some() {
            text += &format!("  {place:<6}from {}\n{:>10} {}\n", on_hub(from), "to", on_hub(to));
        }
    }
    format!("{text}{}", report.body())
}

fn on_hub(setup: Option<Setup>) -> String {
    match setup {
        Some(setup) => format!("{} on {}", setup.tire(), setup.wheel()),
        None => "not given".into(),
    }
}

fn for_programs(scenario: &Scenario) -> String {
    match serde_json::to_string_pretty(&scenario.assess()) {
        Ok(json) => json + "\n",
        Err(error) => format!("{{\"error\": \"{error}\"}}\n"),
    }
}
