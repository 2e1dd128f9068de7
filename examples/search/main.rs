//! Every setup that fits a vehicle: `search SCENARIO.json [options]`; `--help` says more.
//!
//! Exit code 0 whether anything fits or not, 2 if the scenario, the options or the list cannot be read, 130 where Ctrl-C ended
//! it: what is written until then stands.

#[path = "../common/mod.rs"]
mod common;
mod list;
#[cfg(feature = "svg")]
mod map;
mod options;
mod show;
mod stop;
mod written;

use std::process::ExitCode;

use beadseat::fitment::{Setups, Verdict};
use beadseat::scenario::Scenario;
use beadseat::search::{Candidate, Candidates, Likely, NearMiss, Score, Search};
use options::{Form, Options};
use stop::Progress;

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
    stop::listen();
    stop::code_or(common::answer(&options.file, |scenario| answer(scenario, &options)))
}

fn answer(scenario: &Scenario, options: &Options) -> Result<String, String> {
    let change = scenario.change();
    let original = original(&change.original)?;
    let search =
        Search::new(scenario.vehicle(), &original, scenario.conditions(), scenario.limits(), &options.wishes);
    let beside = show::not_looked_at(scenario);
    if !beside.is_empty() && (options.form != Form::Text || options.from.is_some() || options.why.is_some()) {
        eprintln!("not looked at: {beside}");
    }
    if let Some(list) = &options.from {
        return list::judge(scenario, list, options).map(|()| String::new());
    }
    let is_staggered = options.staggered || differs(&original);
    if let Some(wanted) = &options.why {
        return why(scenario, &search, is_staggered, wanted, options);
    }
    if is_staggered && options.map.is_some() {
        return Err("--map draws one tire for both axles, and here tires differ from axle to axle".into());
    }
    let mut candidates = search.candidates();
    // The text has as many sizes, each with the ranks of its other rims.
    let top = options.top();
    let most = if options.form == Form::Text { top.saturating_mul(12) } else { top };
    let (ranked, stopped) = if is_staggered { staggered(&search, most) } else { rank(&mut candidates, most) };
    let looks_for_misses = !is_staggered && options.form != Form::Csv;
    let (misses, stopped) = if looks_for_misses && stopped.is_none() {
        let (misses, stopped) = near_misses(&search);
        (Some(misses), stopped)
    } else {
        (None, stopped)
    };
    if let Some(stopped) = &stopped {
        eprintln!("{stopped}");
    }
    if let Some(file) = &options.map {
        draw_map(scenario, &search, ranked.first(), file)?;
    }
    let found = Found { ranked: &ranked, misses, is_staggered, stopped };
    Ok(match options.form {
        Form::Text => show::text(scenario, &search, &candidates, &found, top),
        Form::Json => show::json(scenario, &search, &found),
        Form::Csv => show::csv(scenario, &ranked)?,
    })
}

/// What was found.
pub(crate) struct Found<'a> {
    /// The best, the best first.
    pub(crate) ranked: &'a [Candidate],
    /// What is nearly found; nothing where it was not looked for.
    pub(crate) misses: Option<Vec<NearMiss>>,
    /// Whether tires differ from axle to axle.
    pub(crate) is_staggered: bool,
    /// Where the search was stopped, if it was.
    pub(crate) stopped: Option<String>,
}

/// Draws where the tire of the best candidate may stand.
#[cfg(feature = "svg")]
fn draw_map(
    scenario: &Scenario,
    search: &Search<'_>,
    best: Option<&Candidate>,
    file: &str,
) -> Result<(), String> {
    let original = scenario.change().original;
    let name = scenario.name().unwrap_or("vehicle without a name");
    let best = best.ok_or("--map: nothing fits, and there is nothing to draw")?;
    let map = map::Map::of(search, best, original.front.or(original.rear), name);
    let drawing = map.ok_or("--map: wheels that stay have no inset to draw")?.drawing();
    std::fs::write(file, drawing).map_err(|error| format!("--map {}: {error}", beadseat::Excerpt(file)))
}

#[cfg(not(feature = "svg"))]
fn draw_map(_: &Scenario, _: &Search<'_>, _: Option<&Candidate>, _: &str) -> Result<(), String> {
    Err("--map draws with feature `svg`, which this was built without".into())
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

/// Whether the original's tires differ from axle to axle.
fn differs(original: &Setups) -> bool {
    original.front.zip(original.rear).is_some_and(|(front, rear)| front.tire().size() != rear.tire().size())
}

/// The best pairs of the best of each axle, and where the search was stopped.
fn staggered(search: &Search<'_>, top: usize) -> (Vec<Candidate>, Option<String>) {
    let mut progress = Progress::of(2 * u64::from(search.sizes()), "sizes of either axle");
    let pairs = search.staggered_while::<EACH, PAIRS>(|walked| progress.goes_on(u64::from(walked)));
    (pairs.iter().take(top).copied().collect(), progress.ended())
}

/// How many of each axle are paired, and how many pairs are ranked at most.
const EACH: usize = 40;
const PAIRS: usize = 200;

/// The best, the best first, and where the search was stopped.
fn rank(candidates: &mut Candidates<'_>, top: usize) -> (Vec<Candidate>, Option<String>) {
    let all = candidates.sizes_left();
    let mut progress = Progress::of(u64::from(all), "sizes");
    let better = |a: &Candidate, b: &Candidate| Likely.compare(b, a);
    let mut ranked = Vec::new();
    while progress.goes_on(u64::from(all - candidates.sizes_left())) {
        let Some(candidate) = candidates.next() else { break };
        ranked.push(candidate);
        if ranked.len() >= 4 * top.max(64) {
            ranked.sort_by(better);
            ranked.truncate(top);
        }
    }
    ranked.sort_by(better);
    ranked.truncate(top);
    (ranked, progress.ended())
}

/// How many sizes are walked for near misses before it is asked whether to go on.
const SLICE: u32 = 64;

/// What does not fit but for one change, and where the walk was stopped.
fn near_misses(search: &Search<'_>) -> (Vec<NearMiss>, Option<String>) {
    let all = search.sizes();
    let mut progress = Progress::of(u64::from(all), "sizes, looking for near misses");
    let mut misses = Vec::new();
    for first in (0..all).step_by(SLICE as usize) {
        if !progress.goes_on(u64::from(first)) {
            break;
        }
        misses.extend(search.near_misses_of(first..all.min(first + SLICE)));
    }
    (misses, progress.ended())
}

/// The report of one setup, by its rank or by its designations.
fn why(
    scenario: &Scenario,
    search: &Search<'_>,
    is_staggered: bool,
    wanted: &options::Wanted,
    options: &Options,
) -> Result<String, String> {
    let setups = match wanted {
        options::Wanted::Rank(rank) => {
            let (ranked, stopped) = if is_staggered {
                staggered(search, *rank)
            } else {
                self::rank(&mut search.candidates(), *rank)
            };
            if let Some(stopped) = stopped {
                return Err(stopped);
            }
            let ranked = rank.checked_sub(1).and_then(|n| ranked.get(n));
            ranked.ok_or_else(|| format!("there is no candidate of rank {rank}"))?.setups()
        }
        options::Wanted::Pair(tire, wheel) => search.completed(*tire, *wheel),
    };
    let report = scenario.assess_proposed(setups);
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
