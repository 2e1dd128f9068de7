//! Many scenarios, one a line: a report a line, and an error where a line is none. It reads on as long as there are
//! lines and holds one at a time.

use std::io::{self, BufRead, BufReader, Read, Write};
use std::process::ExitCode;

use beadseat::Excerpt;
use serde_json::{Value, json};

use crate::common::{self, LARGEST, Unreadable};

/// Judges the scenarios of a file, or of the standard input: exit code 2 where one could not be read.
pub(crate) fn judge(file: Option<&str>) -> ExitCode {
    let judged = match file {
        None => judge_all(io::stdin().lock(), io::stdout().lock()),
        Some(path) => std::fs::File::open(path).and_then(|file| judge_all(file, io::stdout().lock())),
    };
    match judged {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::from(2),
        // A reader that has seen enough, as `head` does, is no failure.
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!(
                "{}: {error}",
                file.map_or("standard input".to_owned(), |path| Excerpt(path).to_string())
            );
            ExitCode::from(2)
        }
    }
}

/// Whether every line was a scenario.
fn judge_all(input: impl Read, output: impl Write) -> io::Result<bool> {
    let (mut input, mut output) = (BufReader::new(input), io::BufWriter::new(output));
    let (mut bytes, mut number, mut all_read) = (Vec::new(), 0_u64, true);
    while read_line(&mut input, &mut bytes)? {
        number += 1;
        match answer(&bytes) {
            None => continue,
            Some(Ok(report)) => output.write_all(report.as_bytes())?,
            Some(Err(error)) => {
                all_read = false;
                write!(output, "{}", json!({ "line": number, "error": error }))?;
            }
        }
        output.write_all(b"\n")?;
        // Whoever writes a line and waits for its answer has it before the next is waited for.
        if !input.buffer().contains(&b'\n') {
            output.flush()?;
        }
    }
    output.flush()?;
    Ok(all_read)
}

/// Reads a line without what ends it, of one that is too long no more than shows it; whether there was one.
fn read_line(input: &mut impl BufRead, line: &mut Vec<u8>) -> io::Result<bool> {
    line.clear();
    // What may be in it, with what ends it.
    let most = LARGEST + 2;
    if input.by_ref().take(most).read_until(b'\n', line)? == 0 {
        return Ok(false);
    }
    if line.last() == Some(&b'\n') {
        line.pop();
        line.truncate(line.len() - usize::from(line.last() == Some(&b'\r')));
    } else if line.len() as u64 == most {
        input.skip_until(b'\n')?;
    }
    Ok(true)
}

/// The report on a line, or what is wrong with it; nothing of a blank one.
fn answer(bytes: &[u8]) -> Option<Result<String, Value>> {
    let wrong = |column: Option<usize>, message: &str| {
        Some(Err(json!({ "path": null, "column": column, "message": message })))
    };
    if bytes.len() as u64 > LARGEST {
        return wrong(None, "larger than 1 MiB");
    }
    let text = match std::str::from_utf8(bytes) {
        Ok(text) => text,
        Err(error) => return wrong(Some(error.valid_up_to() + 1), "not UTF-8"),
    };
    if text.trim_start_matches('\u{feff}').trim_ascii().is_empty() {
        return None;
    }
    let scenario = match common::parse_scenario(text) {
        Ok(scenario) => scenario,
        Err(Unreadable { path, column, message, .. }) => {
            return Some(Err(json!({ "path": path, "column": column, "message": message })));
        }
    };
    let report = scenario.assess();
    Some(
        serde_json::to_string(&scenario.document(&report))
            .map_err(|error| json!({ "path": null, "column": null, "message": error.to_string() })),
    )
}
