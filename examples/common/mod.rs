//! What the examples share: reading a scenario file, saying where it is wrong, and printing what was found.

#![allow(dead_code, reason = "each example uses a part")]

#[cfg(feature = "serde")]
pub(crate) mod tables;

use std::fmt;
use std::io::{Read, Write as _};
use std::process::ExitCode;

use beadseat::Excerpt;
use beadseat::fitment::UnitSystem;
use beadseat::scenario::Scenario;

/// Larger files are refused, and larger lines where each is a scenario.
pub(crate) const LARGEST: u64 = 1 << 20;

/// What an example was asked for.
pub(crate) struct Arguments {
    /// Those that begin with two dashes, but for `--units`.
    pub(crate) flags: Vec<String>,
    /// The others.
    pub(crate) words: Vec<String>,
    pub(crate) units: UnitSystem,
}

impl Arguments {
    /// Reads them; or asked for help, prints it, and where they cannot be read, says so.
    pub(crate) fn read(help: &str) -> Result<Self, ExitCode> {
        let mut read = Self { flags: Vec::new(), words: Vec::new(), units: UnitSystem::Metric };
        let mut arguments = std::env::args().skip(1);
        while let Some(argument) = arguments.next() {
            match argument.as_str() {
                "--help" => return Err(print(help)),
                "--units" => {
                    let units = arguments.next().and_then(|units| units.parse().ok());
                    read.units = units.ok_or_else(|| misuse(help))?;
                }
                flag if flag.starts_with("--") => read.flags.push(argument),
                _ => read.words.push(argument),
            }
        }
        Ok(read)
    }
}

/// Says how an example is called.
pub(crate) fn misuse(help: &str) -> ExitCode {
    eprintln!("usage: {}\n--help says more", help.lines().next().unwrap_or_default());
    ExitCode::from(2)
}

/// Prints what is said of the scenario in a file, or what is wrong with it: then the exit code is 2.
pub(crate) fn answer(path: &str, say: impl FnOnce(&Scenario) -> Result<String, String>) -> ExitCode {
    self::say(read_scenario(path).and_then(|scenario| say(&scenario)))
}

/// Prints a text, or what is wrong: then the exit code is 2.
pub(crate) fn say(text: Result<String, String>) -> ExitCode {
    match text {
        Ok(text) => print(&text),
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

/// Reads a scenario, or says what is wrong with the file and where.
pub(crate) fn read_scenario(path: &str) -> Result<Scenario, String> {
    let mut text = String::new();
    std::fs::File::open(path)
        .and_then(|file| file.take(LARGEST + 1).read_to_string(&mut text))
        .map_err(|error| format!("{}: {error}", Excerpt(path)))?;
    if text.len() as u64 > LARGEST {
        return Err(format!("{}: larger than 1 MiB", Excerpt(path)));
    }
    parse_scenario(&text).map_err(|error| format!("{}: {error}", Excerpt(path)))
}

/// Why a text is no scenario, and where it is not.
#[derive(Debug)]
pub(crate) struct Unreadable {
    /// The key at which it is wrong, cut and escaped; nothing where it is wrong at no key.
    pub(crate) path: Option<String>,
    pub(crate) line: usize,
    /// In bytes, from one.
    pub(crate) column: usize,
    /// What is wrong, cut and escaped.
    pub(crate) message: String,
}

impl Unreadable {
    fn new(path: Option<&str>, error: &serde_json::Error) -> Self {
        let message = error.to_string();
        // serde_json says the place again behind its message.
        let message = message.rsplit_once(" at line ").map_or(message.as_str(), |(message, _)| message);
        Self {
            path: path.map(|path| Excerpt(path).to_string()),
            line: error.line(),
            column: error.column(),
            message: Excerpt(message).to_string(),
        }
    }
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { path, line, column, message } = self;
        write!(f, "at {}, line {line}, column {column}: {message}", path.as_deref().unwrap_or("end of file"))
    }
}

/// Reads a scenario from JSON text, to its end. A byte order mark before it is passed over, which RFC 8259 (from memory) lets a
/// reader do.
pub(crate) fn parse_scenario(text: &str) -> Result<Scenario, Unreadable> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut deserializer = serde_json::Deserializer::from_str(text);
    let scenario = serde_path_to_error::deserialize(&mut deserializer)
        .map_err(|error| Unreadable::new(Some(&error.path().to_string()), error.inner()))?;
    deserializer.end().map_err(|error| Unreadable::new(None, &error))?;
    Ok(scenario)
}

/// `front_left` as people write it.
pub(crate) fn plain(word: &str) -> String {
    word.replace('_', " ")
}

/// Prints a text to the standard output.
fn print(text: &str) -> ExitCode {
    match std::io::stdout().write_all(text.as_bytes()) {
        Ok(()) => ExitCode::SUCCESS,
        // A reader that has seen enough, as `head` does, is no failure.
        Err(error) if error.kind() == std::io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(_) => ExitCode::FAILURE,
    }
}
