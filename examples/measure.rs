//! What to measure next on a vehicle: `measure SCENARIO.json`.
//!
//! Reads a scenario, judges it, and lists the facts that would settle what could not be assessed, the one
//! that settles most first: what to take, with what, where to write it down, and what it is for. Exit code 0
//! whatever the verdict, 2 if the scenario cannot be read.

mod common;

use std::process::ExitCode;

use beadseat::Excerpt;
use beadseat::fitment::measure::{Measurement, Preparation};
use beadseat::fitment::{Check, Report};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [file] = arguments.as_slice() else {
        eprintln!("usage: measure SCENARIO.json");
        return ExitCode::from(2);
    };
    common::answer(file, |scenario| {
        let name = Excerpt(scenario.name().unwrap_or("vehicle without a name"));
        Ok(format!("{name}\n\n{}", list(&scenario.assess())))
    })
}

fn list(report: &Report) -> String {
    let wanted: Vec<Measurement<'_>> = report.measurements().collect();
    let mut text = match wanted.len() {
        0 => "Nothing is missing that could be measured, read or said.\n".into(),
        1 => "One thing to find out.\n".into(),
        n => format!("{n} things to find out, the most useful first.\n"),
    };
    for (n, fact) in wanted.iter().enumerate() {
        text += &entry(n + 1, fact);
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

/// One fact: where and how, with what, what comes first, where it goes, and what it is good for.
fn entry(number: usize, fact: &Measurement<'_>) -> String {
    let mut text = format!("\n{number:>2}. {}: {}\n", what(fact), fact.input().how());
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
    line("write at", &fact.path().to_string());
    line("settles", &names(fact.settles_alone()));
    line("helps with", &names(fact.settles_with_others()));
    text
}

/// The path of a fact as people say it: `vehicle front hub spigot, in mm`.
fn what(fact: &Measurement<'_>) -> String {
    let path = fact.path().to_string();
    let (name, unit) = match path.rsplit_once('_') {
        Some((name, "kmh")) => (name, ", in km/h"),
        Some((name, "kpa")) => (name, ", in kPa"),
        Some((name, "kg")) => (name, ", in kg"),
        Some((name, "mm")) => (name, ", in mm"),
        Some((name, "in")) => (name, ", in inches"),
        _ => (path.as_str(), ""),
    };
    common::plain(&name.replace('.', " ").replace(" *", " of each axle")) + unit
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
