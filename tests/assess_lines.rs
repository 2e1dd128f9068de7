//! Many scenarios, one a line: an error belongs to its line and stops nothing.
#![cfg(all(feature = "jiff", feature = "serde", feature = "svg"))]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/program.rs"]
mod program;
#[path = "common/scenario.rs"]
mod scenario;

use std::io::{BufRead, BufReader, Write};
use std::process::Stdio;

use program::{built, lines, run};
use serde_json::{Value, json};

/// A shipped scenario in one line.
fn in_a_line(name: &str) -> String {
    scenario::shipped(name).to_string()
}

const SHIPPED: [&str; 3] = ["field-survey-wagon", "one-tonne-panel-van", "rangers-pickup"];

/// What `--json` prints of a shipped scenario.
fn alone(name: &str) -> Value {
    let output = run("assess", &[&format!("examples/scenarios/{name}.json"), "--json"], "");
    serde_json::from_slice(&output.stdout).unwrap()
}

#[test]
fn each_line_has_the_report_of_its_scenario() {
    let input = SHIPPED.map(in_a_line).join("\n");
    for (arguments, input) in [
        (&["--lines"][..], input.clone()),
        (&["--lines", "--json"], input.replace('\n', "\r\n") + "\r\n"),
        (&["--lines"], format!("\u{feff}{}\n", input.replace('\n', "\n\n \t\r\n"))),
    ] {
        let output = run("assess", arguments, &input);
        assert_eq!(output.status.code(), Some(0));
        assert_eq!(lines(&output), SHIPPED.map(alone));
        assert!(output.stderr.is_empty());
    }
    let path = std::env::temp_dir().join(format!("beadseat-lines-{}.jsonl", std::process::id()));
    std::fs::write(&path, &input).unwrap();
    let output = run("assess", &[path.to_str().unwrap(), "--lines"], "");
    std::fs::remove_file(&path).unwrap();
    assert_eq!(lines(&output), SHIPPED.map(alone));
}

/// Lines that are no scenario between two that are: where each says it is wrong, and what.
#[test]
fn an_error_belongs_to_its_line_and_stops_nothing() {
    let good = in_a_line("field-survey-wagon");
    let heavy = good.replacen("\"max_load_kg\":1060", "\"max_load_kg\":-1060", 1);
    let tire = good.replacen("225/45R17 94W XL", "225/45R31", 1);
    let unknown = good.replacen("\"drive\"", "\"drives\"", 1);
    let long = format!("{{\"vehicle\":{{\"name\":\"{}\"}}}}", "x".repeat(10_000_000));
    let spaces = format!("{good}{}!", " ".repeat(2_000_000));
    let rows: [(Vec<u8>, Option<&str>, &str); 13] = [
        (heavy.into(), Some("vehicle.front.max_load_kg"), "max_load_kg -1060 kg"),
        (tire.into(), Some("proposed.front.tire"), "rim diameter"),
        (unknown.into(), Some("vehicle"), "unknown field"),
        (good[..good.len() / 2].into(), Some(""), "EOF"),
        (format!("{good} {{}}").into(), None, "trailing characters"),
        ([b"{\"vehicle\": \"".as_slice(), &[0xff, 0xfe], b"\"}"].concat(), None, "not UTF-8"),
        (long.into(), None, "larger than 1 MiB"),
        (spaces.into(), None, "larger than 1 MiB"),
        ("{}".into(), Some("."), "missing field `vehicle`"),
        ("[1,2]".into(), Some("."), "invalid type: sequence"),
        ("null".into(), Some("."), "invalid type: null"),
        ("[".repeat(100_000).into(), Some("."), "invalid type"),
        ("\0\u{2028}\u{feff}".into(), Some("."), "expected value"),
    ];
    let mut input: Vec<u8> = format!("{good}\n").into();
    for (line, ..) in &rows {
        input.extend_from_slice(line);
        input.push(b'\n');
    }
    // The last has nothing behind it.
    input.extend_from_slice(good.as_bytes());
    let output = run("assess", &["--lines"], input);
    assert_eq!(output.status.code(), Some(2));
    let answers = lines(&output);
    assert_eq!(answers.len(), rows.len() + 2);
    assert_eq!(answers[0], alone("field-survey-wagon"));
    assert_eq!(answers[rows.len() + 1], answers[0]);
    for (n, ((_, path, message), answer)) in rows.iter().zip(&answers[1..]).enumerate() {
        assert_eq!(answer["line"], n + 2);
        let error = &answer["error"];
        let told = error["message"].as_str().unwrap();
        assert!(told.contains(message), "{answer}");
        assert!(told.chars().count() < 200 && !told.chars().any(char::is_control), "{answer}");
        match path {
            // Where a text ends within it, a key of it.
            Some("") => assert!(error["path"].is_string(), "{answer}"),
            path => assert_eq!(error["path"], json!(path), "{answer}"),
        }
        assert_eq!(error["column"].is_null(), *message == "larger than 1 MiB", "{answer}");
    }
    assert_eq!(answers[6]["error"]["column"], 14);
}

/// The place of an error is that of the single file.
#[test]
fn an_error_says_what_it_says_of_a_file() {
    let wrong = in_a_line("rangers-pickup").replacen("\"max_load_kg\"", "\"max_load_stone\"", 1);
    let path = std::env::temp_dir().join(format!("beadseat-line-{}.json", std::process::id()));
    std::fs::write(&path, &wrong).unwrap();
    let of_file = run("assess", &[path.to_str().unwrap()], "");
    let of_line = run("assess", &[path.to_str().unwrap(), "--lines"], "");
    std::fs::remove_file(&path).unwrap();
    let error = &lines(&of_line)[0]["error"];
    let told = format!(
        "at {}, line 1, column {}: {}\n",
        error["path"].as_str().unwrap(),
        error["column"],
        error["message"].as_str().unwrap()
    );
    let said = String::from_utf8(of_file.stderr).unwrap();
    assert!(said.ends_with(&told), "{said:?} {told:?}");
    assert_eq!((of_file.status.code(), of_line.status.code()), (Some(2), Some(2)));
}

/// Whoever writes a line and waits for its answer has it before the next is written.
#[test]
fn an_answer_does_not_wait_for_the_next_line() {
    let mut child = std::process::Command::new(built("assess"))
        .arg("--lines")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let (mut told, mut answers) = (child.stdin.take().unwrap(), BufReader::new(child.stdout.take().unwrap()));
    for line in [in_a_line("field-survey-wagon"), "{}".to_owned(), in_a_line("rangers-pickup")] {
        writeln!(told, "{line}").unwrap();
        let mut answer = String::new();
        answers.read_line(&mut answer).unwrap();
        assert!(serde_json::from_str::<Value>(&answer).unwrap().is_object());
    }
    drop(told);
    assert_eq!(child.wait().unwrap().code(), Some(2));
}

#[test]
fn nothing_answers_nothing_and_what_does_not_go_together_is_refused() {
    for input in ["", "\n\n", " \r\n\t", "\u{feff}"] {
        let output = run("assess", &["--lines"], input);
        assert_eq!((output.status.code(), output.stdout.len()), (Some(0), 0), "{input:?}");
    }
    for arguments in [
        &["--lines", "--summary"][..],
        &["--lines", "--csv"],
        &["--lines", "--explain", "tire_load"],
        &["--lines", "a.jsonl", "b.jsonl"],
        &["--lines", "no such file.jsonl"],
        &["--lines", "examples"],
    ] {
        let output = run("assess", arguments, "");
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        assert!(!output.stderr.is_empty() && output.stdout.is_empty(), "{arguments:?}");
    }
}
