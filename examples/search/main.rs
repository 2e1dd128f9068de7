//! Every setup that fits a vehicle: `search SCENARIO.json [options]`; `--help` says more.
//!
//! Exit code 0 whether anything fits or not, 2 if the scenario, the options or the list cannot be read.

#[path = "../common/mod.rs"]
mod common;
mod list;
mod options;
mod show;

use std::io::{IsTerminal, Write};
use std::process::ExitCode;

use beadseat::fitment::{Setups, Verdict};
use beadseat::scenario::Scenario;
use beadseat::search::{Candidate, Candidates, Likely, Score, Search};
use options::{Form, Options};

fn main() -> ExitCode {
    let options = match Options::read(std::env::args().skip(1)) {
        Ok(Some(options)) => options,
        Ok(None) => {
            println!("{}", options::HELP);
            return ExitCode::SUCCESS;
        }
        Err(message) => {
            eprintln!("{message}\n{}", options::USAGE);
            return ExitCode::from(2);
        }
    };
    common::answer(&options.file, |scenario| answer(scenario, &options))
}

fn answer(scenario: &Scenario, options: &Options) -> Result<String, String> {
    let change = scenario.change();
    let original = original(&change.original)?;
    let search =
        Search::new(scenario.vehicle(), &original, scenario.conditions(), scenario.limits(), &options.wishes);
    if let Some(list) = &options.from {
        return list::judge(scenario, list);
    }
    if let Some(wanted) = &options.why {
        return why(scenario, &search, &original, wanted, options);
    }
    let mut candidates = search.candidates();
    // The text has as many sizes, each with the ranks of its other rims.
    let most = if options.form == Form::Text { options.top.saturating_mul(12) } else { options.top };
    let ranked = rank(&mut candidates, most);
    Ok(match options.form {
        Form::Text => show::text(scenario, &search, &candidates, &ranked, options.top),
        Form::Json => show::json(&search, &ranked),
        Form::Csv => show::csv(&ranked)?,
    })
}

/// The original setups, which a search begins with.
fn original(original: &Setups) -> Result<Setups, String> {
    if original.front.is_none() && original.rear.is_none() {
        return Err(
            "`original` has neither `front` nor `rear`: a search begins with what the maker built".into()
        );
    }
    Ok(*original)
}

/// The best, the best first.
fn rank(candidates: &mut Candidates<'_>, top: usize) -> Vec<Candidate> {
    let all = candidates.sizes_left();
    let shows_progress = std::io::stderr().is_terminal();
    let begun = std::time::Instant::now();
    let better = |a: &Candidate, b: &Candidate| Likely.compare(b, a);
    let (mut ranked, mut told) = (Vec::new(), 0);
    while let Some(candidate) = candidates.next() {
        ranked.push(candidate);
        if ranked.len() >= 4 * top.max(64) {
            ranked.sort_by(better);
            ranked.truncate(top);
        }
        let seconds = begun.elapsed().as_secs();
        if shows_progress && seconds > told {
            told = seconds;
            let done = all - candidates.sizes_left();
            let _ = write!(std::io::stderr(), "\r{done} of {all} sizes");
        }
    }
    if told > 0 {
        let _ = write!(std::io::stderr(), "\r{:30}\r", "");
    }
    ranked.sort_by(better);
    ranked.truncate(top);
    ranked
}

/// The report of one setup, by its rank or by its designations.
fn why(
    scenario: &Scenario,
    search: &Search<'_>,
    original: &Setups,
    wanted: &options::Wanted,
    options: &Options,
) -> Result<String, String> {
    let setups = match wanted {
        options::Wanted::Rank(rank) => {
            let ranked = rank_of(search, *rank);
            ranked.ok_or_else(|| format!("there is no candidate of rank {rank}"))?.setups()
        }
        options::Wanted::Pair(tire, wheel) => search.completed(*tire, *wheel),
    };
    let change = beadseat::fitment::Change { original: *original, proposed: setups };
    let report =
        beadseat::fitment::assess(scenario.vehicle(), &change, scenario.conditions(), scenario.limits());
    if options.form == Form::Json {
        let mut lines = String::new();
        for check in report.checks() {
            lines += &serde_json::to_string(&check).map_err(|error| error.to_string())?;
            lines.push('\n');
        }
        return Ok(lines);
    }
    let mut text = show::setups(&setups);
    text += &match report.overall() {
        Verdict::Beyond => "It does not fit:\n".into(),
        _ => format!("It fits as far as it could be judged: {}\n", report.headline()),
    };
    for check in report.by_severity().filter(|check| check.verdict() == Verdict::Beyond) {
        text += &format!("  {check}\n");
    }
    match search.what_would(&setups) {
        Some(remedy) => text += &format!("What would do: {remedy}.\n"),
        None if report.overall() == Verdict::Beyond => text += "No single change would do.\n",
        None => {}
    }
    if report.overall() != Verdict::Beyond {
        text += &format!("{}", report.body());
    }
    Ok(text)
}

fn rank_of(search: &Search<'_>, rank: usize) -> Option<Candidate> {
    rank_all(search, rank).into_iter().nth(rank.checked_sub(1)?)
}

fn rank_all(search: &Search<'_>, top: usize) -> Vec<Candidate> {
    rank(&mut search.candidates(), top)
}
