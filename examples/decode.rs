//! Reads markings off tires and wheels: `decode [--json] [--units metric|us|both] [--] [TEXT…]`, or one a line from
//! standard input; `decode --help` has examples.
//!
//! Exit code 0 if all could be read, 1 if any could not, 2 for misuse.

use std::io::{BufRead, Write};
use std::process::ExitCode;

use beadseat::marking::{Readings, Suggestion, readings, suggestions};
use beadseat::{Excerpt, ParseError, UnitSystem};
use serde_json::{Map, Value, json};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    // Behind `--` everything is a text.
    let (options, rest) = match arguments.iter().position(|argument| argument == "--") {
        Some(at) => (&arguments[..at], &arguments[at + 1..]),
        None => (&arguments[..], &[][..]),
    };
    let (mut json, mut units, mut texts) = (false, UnitSystem::Both, Vec::new());
    let mut given = options.iter();
    while let Some(option) = given.next() {
        let misused = match option.as_str() {
            "--help" => {
                println!("{HELP}");
                return ExitCode::SUCCESS;
            }
            "--json" => {
                json = true;
                None
            }
            "--units" => match given.next().map(|word| word.parse()) {
                Some(Ok(named)) => {
                    units = named;
                    None
                }
                _ => Some("--units takes metric, us or both".to_owned()),
            },
            flag if flag.starts_with("--") => Some(format!("unknown option {}", Excerpt(flag))),
            _ => {
                texts.push(option);
                None
            }
        };
        if let Some(misused) = misused {
            eprintln!("{misused}\nusage: decode [--json] [--units metric|us|both] [--] [TEXT...]");
            return ExitCode::from(2);
        }
    }
    texts.extend(rest);

    let mut out = std::io::stdout().lock();
    let mut all_read = true;
    let mut answer = |text: &str| {
        let found = readings(text);
        all_read &= found.is_ok();
        match (json, found) {
            (true, found) => writeln!(out, "{}", for_programs(text, found)),
            (false, Ok(found)) => writeln!(out, "{}\n{}", found.best().marking(), for_people(&found, units)),
            (false, Err(error)) => writeln!(out, "{}\n{}", error.show(text), near(text)),
        }
    };
    let done = if texts.is_empty() {
        // Bytes that are not UTF-8 are shown as such and refused by the parsers.
        std::io::stdin().lock().split(b'\n').try_for_each(|line| answer(&String::from_utf8_lossy(&line?)))
    } else {
        texts.iter().try_for_each(|text| answer(text))
    };
    match done {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => {
            eprintln!("{error}");
            ExitCode::from(2)
        }
        _ if all_read => ExitCode::SUCCESS,
        _ => ExitCode::from(1),
    }
}

/// The nearest texts that can be read, for people.
fn near(text: &str) -> String {
    let line = |near: Suggestion| match near.presumes() {
        Some(presumed) => format!("  perhaps: {near}   ({presumed})\n"),
        None => format!("  perhaps: {near}\n"),
    };
    suggestions(text).map(line).collect()
}

fn for_programs(text: &str, found: Result<Readings, ParseError>) -> Value {
    match found {
        Ok(found) => {
            let marking = found.best().marking();
            let mut object = Map::new();
            object.insert("input".into(), text.into());
            object.insert("kind".into(), marking.kind().into());
            object.insert("canonical".into(), marking.to_string().into());
            object.insert("when".into(), found.best().when().into());
            let others = found.others().map(|other| {
                let marking = other.marking();
                json!({ "kind": marking.kind(), "canonical": marking.to_string(), "when": other.when() })
            });
            object.insert("also".into(), others.collect());
            object.insert("meaning".into(), marking.meaning().into());
            object.insert("for_choice".into(), marking.for_choice().into());
            object.insert("defined_in".into(), marking.citation().to_string().into());
            object.extend(marking.facts().map(|fact| (fact.term().key().to_owned(), json!(fact))));
            object.into()
        }
        Err(error) => json!({
            "input": text,
            "error": {
                "kind": error.kind().name(),
                "field": error.field().name(),
                "message": error.to_string(),
                "span": [error.span().start, error.span().end],
            },
            "suggestions": suggestions(text).map(|near| near.to_string()).collect::<Vec<_>>(),
        }),
    }
}

const HELP: &str = "\
decode [--json] [--units metric|us|both] [--] [TEXT...]

Reads what stands on a tire or a wheel, or what people write of it; without a TEXT, one a line from standard input.

  decode \"205/55R16 91V\"               a tire, its load and speed
  decode \"17x8 +35 5 on 4 1/2 CB 72.6\" a wheel in the words of the trade
  decode --units us \"BS 4.5\"            inches, pounds and psi alone
  decode --json 7-16                     all readings, for programs
  decode \"205 55 16\"                   what cannot be read, and what is near it

exit code 0 if all could be read, 1 if any could not, 2 for misuse";

fn for_people(found: &Readings, units: UnitSystem) -> String {
    let marking = found.best().marking();
    let mut text = format!(
        "  {}\n  choice: {}\n  source: {}\n",
        marking.meaning(),
        marking.for_choice(),
        marking.citation()
    );
    for fact in marking.facts().filter(|fact| fact.value().is_some()) {
        text += &format!("  {:<34}{}\n", fact.term().name(), fact.told_in(units));
    }
    if let Some(when) = found.best().when() {
        text += &format!("  if:   {when}\n");
    }
    for other in found.others() {
        text += &format!("  or:   {}, {}\n", other.marking(), other.when().unwrap_or_default());
    }
    text
}
