//! Judges scenario files: `assess SCENARIO.json [options]`; `--help` says more.
//!
//! Prints a report for people, with `--summary` the shortest of it, with `--json` all of it for programs, with `--csv` a
//! spreadsheet, with `--markdown` a page, with `--sheet` a sheet to fill in, with `--explain` how a number came about; with `--lines` a report a line for
//! many; of two scenarios what differs between them. Exit code 0 whatever the verdict, 2 if a scenario cannot be read.

#[path = "../common/mod.rs"]
mod common;
mod compare;
mod lines;

use std::process::ExitCode;

use beadseat::Excerpt;
use beadseat::fitment::derivation::{Derivations, Subject};
use beadseat::fitment::{Document, Position, UnitSystem};
use beadseat::scenario::Scenario;
use common::{Arguments, tables};

const HELP: &str = r#"assess SCENARIO.json [SECOND.json] [--json|--summary|--csv|--markdown|--sheet] [--explain ID] [--units metric|us|both] [--lines]

Judges a change of wheels and tires and prints the report: the verdict, what moves, what decides and what to do
about it, every finding with its limit, margin and source, cautions, and what was not assessed.

With SECOND.json it holds two proposals for one vehicle side by side, A and B: what differs between them, verdict by
verdict, with the figures of the report on each; and first, if the vehicles are not the same, by which keys. As text,
--json, --csv or --markdown.

  --summary  verdict, what decides, what moves, what was not judged and what to do next, in 15 lines
  --json     all of it for programs, in metric units
  --csv      moves, findings, effects, spare wheel and further axles as a spreadsheet, in metric units
  --markdown all of it as a page to hand on, in metric units
  --sheet    a sheet to fit the proposal by and to check it again: what holds each wheel, in which order, stages of the
             torque as it is given, pressures, and room for what was done; with --markdown as a page
  --explain  how a number came about, line by line, with what was put in and whose rule it is: of the finding, move
             or effect of this id, as tire_load, at one place only as tire_load@front, on a further axle by its name
             as "tire_load@tag axle", or of all; with --markdown
             as a page; the rules are metric, with other units each number has them behind it
  --units    what the text is printed in: metric, us, or both
  --lines    a scenario a line, of SCENARIO.json or without it of the standard input; out comes a line for each, in
             their order, as --json but in one line, or {"line": 7, "error": {"path", "column", "message"}}, which
             stops nothing; blank lines are passed over and counted

Exit code 0 whatever the verdict, 2 where a scenario cannot be read: then it says where and why.
"#;

fn main() -> ExitCode {
    let Arguments { flags, words, units } = match Arguments::read(HELP) {
        Ok(arguments) => arguments,
        Err(code) => return code,
    };
    let flags: Vec<_> = flags.iter().map(String::as_str).collect();
    if flags.contains(&"--lines") {
        return match (&flags[..], words.as_slice()) {
            (["--lines"] | ["--lines", "--json"] | ["--json", "--lines"], []) => lines::judge(None),
            (["--lines"] | ["--lines", "--json"] | ["--json", "--lines"], [file]) => lines::judge(Some(file)),
            _ => common::misuse(HELP),
        };
    }
    if flags.contains(&"--explain") {
        let is_markdown = match flags[..] {
            ["--explain"] => false,
            ["--explain", "--markdown"] | ["--markdown", "--explain"] => true,
            _ => return common::misuse(HELP),
        };
        let (asked, file) = match words.as_slice() {
            [first, second] if Asked::read(first).is_none() => (second, first),
            [first, second] => (first, second),
            _ => return common::misuse(HELP),
        };
        return match Asked::read(asked) {
            Some(asked) => common::answer(file, |scenario| asked.explain(scenario, units, is_markdown)),
            None => {
                eprintln!("{}: no finding, move or effect has this id; --json tells all", Excerpt(asked));
                ExitCode::from(2)
            }
        };
    }
    if let [first, second] = words.as_slice() {
        return compare::compare([first, second], &flags, units, HELP);
    }
    let say: fn(Document<'_>) -> Result<String, String> = match flags[..] {
        [] => |document| Ok(document.to_string()),
        ["--summary"] => |document| Ok(document.summary().to_string()),
        ["--json"] => for_programs,
        ["--csv"] => |document| from_json(document, tables::csv),
        ["--sheet"] => |document| Ok(document.sheet().to_string()),
        ["--sheet", "--markdown"] | ["--markdown", "--sheet"] => {
            |document| Ok(document.sheet().in_markdown().to_string())
        }
        ["--markdown"] => |document| from_json(document, |report| Ok(tables::markdown(report))),
        _ => return common::misuse(HELP),
    };
    let [file] = words.as_slice() else { return common::misuse(HELP) };
    common::answer(file, |scenario| say(scenario.document(&scenario.assess()).in_units(units)))
}

/// What is to be explained: everything of a name, or all, everywhere or at one place.
struct Asked {
    subjects: Vec<Subject>,
    at: At,
}

/// Where it is to be explained.
enum At {
    Everywhere,
    Place(Position),
    /// On a further axle, by its name.
    Axle(String),
}

impl Asked {
    fn read(text: &str) -> Option<Self> {
        let (name, at) = match text.split_once('@') {
            Some((name, place)) => (name, place.parse().map_or_else(|_| At::Axle(place.into()), At::Place)),
            None => (text, At::Everywhere),
        };
        let subjects: Vec<_> = match name {
            "all" => Subject::all().collect(),
            name => Subject::named(name).collect(),
        };
        (!subjects.is_empty()).then_some(Self { subjects, at })
    }

    fn explain(&self, scenario: &Scenario, units: UnitSystem, is_markdown: bool) -> Result<String, String> {
        let explain = |of: Derivations<'_>, place: Option<Position>| -> String {
            let explain = |&subject: &Subject| {
                let mut explanation = of.explain(subject).in_units(units);
                explanation = place.map_or(explanation, |place| explanation.at(place));
                if is_markdown { explanation.in_markdown() } else { explanation }.to_string()
            };
            self.subjects.iter().map(explain).collect()
        };
        let mut text = match self.at {
            At::Everywhere => explain(scenario.derivations(), None),
            At::Place(place) => explain(scenario.derivations(), Some(place)),
            At::Axle(_) => String::new(),
        };
        let is_asked = |name: &str| match &self.at {
            At::Everywhere => true,
            At::Place(_) => false,
            At::Axle(asked) => asked == name,
        };
        let further: Vec<_> = scenario.more_axles().filter(|axle| is_asked(axle.name())).collect();
        if let (At::Axle(asked), []) = (&self.at, &further[..]) {
            return Err(format!(
                "{}: there is no such place, and no further axle of this name",
                Excerpt(asked)
            ));
        }
        for axle in further {
            let of_axle = explain(axle.derivations(), None);
            if !of_axle.is_empty() {
                let name = Excerpt(axle.name()).to_string();
                let name = if is_markdown { common::tables::plain(&name) } else { name };
                let beside = axle.beside().map(|beside| Excerpt(beside).to_string()).unwrap_or_default();
                let beside = if is_markdown { common::tables::plain(&beside) } else { beside };
                text += if is_markdown { "# " } else { "" };
                text += &format!(
                    "Further axle: {name}, told as rear; the axle told as front is {beside}\n\n{of_axle}"
                );
            }
        }
        Ok(if text.is_empty() { "nothing of this was found there\n".to_owned() } else { text })
    }
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
