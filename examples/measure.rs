//! What to measure next on a vehicle: `measure SCENARIO.json [--units metric|us|both]`; or a scenario to fill in:
//! `measure --new KIND`.
//!
//! Reads a scenario, judges it, and lists the facts that would settle what could not be assessed, the one
//! that settles most first: what to take, with what, where to write it down, and what it is for. Exit code 0
//! whatever the verdict, 2 if the scenario cannot be read.

mod common;

use std::process::ExitCode;

use beadseat::Excerpt;
use beadseat::fitment::measure::{Measurement, Preparation};
use beadseat::fitment::{Check, Document, Report, UnitSystem};
use beadseat::scenario::Template;
use beadseat::vehicle::Kind;
use common::Arguments;

const HELP: &str = "\
measure SCENARIO.json [--units metric|us|both]
measure --new KIND

Lists the facts that would settle what an assessment left open, the one that settles most first: what to take, with
what, what comes first, where to write it down, and what it is for. Then come the values that are only assumed.

  --units    the keys to write at: metric, us, or both
  --new      writes a scenario to fill in: every key with its question beside it. KIND is car, multipurpose, van,
             pickup, truck, bus, trailer or motorcycle. Four designations, of tires and wheels, are enough to begin with:
             what is left null is not known

Exit code 0 whatever the verdict, 2 where the scenario cannot be read: then it says where and why.
";

fn main() -> ExitCode {
    let Arguments { flags, words, units } = match Arguments::read(HELP) {
        Ok(arguments) => arguments,
        Err(code) => return code,
    };
    let flags: Vec<&str> = flags.iter().map(String::as_str).collect();
    let ([file], true) = (words.as_slice(), flags.is_empty()) else {
        return match (words.as_slice(), flags.as_slice()) {
            ([kind], ["--new"]) => template(kind),
            _ => common::misuse(HELP),
        };
    };
    common::answer(file, |scenario| {
        let name = Excerpt(scenario.name().unwrap_or("vehicle without a name"));
        let report = scenario.assess();
        let to_confirm = confirm(&report, &scenario.document(&report));
        Ok(format!("{name}\n\n{}{to_confirm}", list(&report, units)))
    })
}

/// A scenario to fill in, or what is wrong with the kind.
fn template(kind: &str) -> ExitCode {
    let kind: Result<Kind, serde_json::Error> = serde_json::from_value(kind.into());
    let text = kind.and_then(|kind| serde_json::to_string_pretty(&Template::new(kind)));
    common::say(text.map(|text| text + "\n").map_err(|error| format!("kind of vehicle: {error}")))
}

fn list(report: &Report, units: UnitSystem) -> String {
    let wanted: Vec<Measurement<'_>> = report.measurements().collect();
    let mut text = match wanted.len() {
        0 => "Nothing is missing that could be measured, read or said.\n".into(),
        1 => "One thing to find out.\n".into(),
        n => format!("{n} things to find out, the most useful first.\n"),
    };
    for (n, fact) in wanted.iter().enumerate() {
        text += &entry(n + 1, fact, units);
    }
    for (before, access) in [
        ("Before a wheel comes off", Preparation::WheelOff),
        ("What is taken with the wheels on", Preparation::OnGround),
    ] {
        if let Some(safety) = access.safety().filter(|_| wanted.iter().any(|fact| fact.access() == access)) {
            text += &format!("\n{before}: {safety}\n");
        }
    }
    let makers = names(report.checks().filter(|c| c.missing().any(|m| m.access() == Preparation::Elsewhere)));
    if !makers.is_empty() {
        text += &format!("\nOnly the makers of tire and vehicle can settle: {makers}.\n");
    }
    text
}

/// What was only assumed, and what rests on it.
fn confirm(report: &Report, document: &Document<'_>) -> String {
    let assumed = document.provenance().iter().filter(|value| value.is_assumed());
    let lines = assumed.map(|value| {
        let rests = report.checks().filter(|check| document.assumed(check).any(|under| under == value));
        let rests = names(rests);
        format!("  {value}{}{rests}\n", if rests.is_empty() { "" } else { "; on it rest: " })
    });
    let lines: String = lines.collect();
    if lines.is_empty() { lines } else { format!("\nTo confirm, since it is only assumed:\n{lines}") }
}

/// One fact: where and how, with what, what comes first, where it goes, and what it is good for.
fn entry(number: usize, fact: &Measurement<'_>, units: UnitSystem) -> String {
    let mut text = format!("\n{number:>2}. {}: {}\n", what(fact, units), fact.input().how());
    let mut line = |title: &str, words: &str| {
        if !words.is_empty() {
            text += &format!("      {title:<12}{words}\n");
        }
    };
    let tools: Vec<&str> = fact.tools().iter().map(|tool| tool.words()).collect();
    line("with", &tools.join(", "));
    line(
        "first",
        match fact.access() {
            Preparation::WheelOff => "lift the vehicle and take the wheel off",
            Preparation::OnGround => "stand it on level ground, on its wheels",
            _ => "",
        },
    );
    let paths: Vec<String> = paths(fact, units).into_iter().map(|(path, _)| path).collect();
    line("write at", &paths.join(" or "));
    line("settles", &names(fact.settles_alone()));
    line("helps with", &names(fact.settles_with_others()));
    text
}

/// Ends of keys, and what they say: as they are written, and in the other units.
const UNITS: [[(&str, &str); 2]; 5] = [
    [("_kmh", "km/h"), ("_mph", "mph")],
    [("_kpa", "kPa"), ("_psi", "psi")],
    [("_kg", "kg"), ("_lb", "lb")],
    [("_nm", "N·m"), ("_ftlb", "lbf·ft")],
    [("_mm", "mm"), ("_in", "inches")],
];

/// The keys that a fact may stand at, each with its unit.
fn paths(fact: &Measurement<'_>, units: UnitSystem) -> Vec<(String, &'static str)> {
    let path = fact.path().to_string();
    let found = UNITS.iter().find_map(|pair| Some((path.strip_suffix(pair[0].0)?, pair)));
    let Some((name, [metric, us])) = found else {
        let unit = if path.ends_with("_in") { "inches" } else { "" };
        return vec![(path, unit)];
    };
    let in_unit = |(end, unit): &(&str, &'static str)| (format!("{name}{end}"), *unit);
    match units {
        UnitSystem::Metric => vec![in_unit(metric)],
        UnitSystem::Us => vec![in_unit(us)],
        UnitSystem::Both => vec![in_unit(metric), in_unit(us)],
    }
}

/// The path of a fact as people say it: `vehicle front hub spigot, in mm`.
fn what(fact: &Measurement<'_>, units: UnitSystem) -> String {
    let paths = paths(fact, units);
    let units: Vec<&str> = paths.iter().map(|(_, unit)| *unit).filter(|unit| !unit.is_empty()).collect();
    let path = &paths[0].0;
    let name =
        if units.is_empty() { path.as_str() } else { path.rsplit_once('_').map_or("", |(name, _)| name) };
    let name = common::plain(&name.replace('.', " ").replace(" *", " of each axle"));
    if units.is_empty() { name } else { format!("{name}, in {}", units.join(" or ")) }
}

/// The names of checks, each once.
fn names(checks: impl Iterator<Item = Check>) -> String {
    let mut names: Vec<String> = Vec::new();
    for name in checks.map(|check| common::plain(check.id().name())) {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names.join(", ")
}
