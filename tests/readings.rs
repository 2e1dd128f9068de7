//! Whatever people write, row by row: what it is read as, what else it can be, what is doubted and what is refused.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::Marking;
use beadseat::marking::{readings, suggestions};

struct Row {
    line: u64,
    text: String,
    outcome: String,
    why: String,
}

fn rows() -> Vec<Row> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases/readings.csv");
    let mut reader = csv::Reader::from_path(path).expect("the file can be opened");
    assert_eq!(reader.headers().unwrap(), vec!["text", "outcome", "why"]);
    reader
        .records()
        .map(|record| {
            let record = record.expect("three cells");
            let [text, outcome, why] = [0, 1, 2].map(|n| record[n].to_owned());
            Row { line: record.position().unwrap().line(), text, outcome, why }
        })
        .collect()
}

/// What a text comes to, in the words of the file: `kind canonical`, with `?` in front where the only reading is
/// doubted, and readings that are not the best behind `|`; or `refused field kind`, and suggestions behind `->`.
fn outcome(text: &str) -> String {
    match readings(text) {
        Ok(all) => all
            .iter()
            .map(|reading| {
                let doubt = if reading.when().is_some() && !all.are_several() { "?" } else { "" };
                format!("{doubt}{} {}", reading.marking().kind(), reading.marking())
            })
            .collect::<Vec<_>>()
            .join(" | "),
        Err(error) => {
            let near: Vec<String> = suggestions(text).map(|near| near.to_string()).collect();
            let near = if near.is_empty() { String::new() } else { format!(" -> {}", near.join(" | ")) };
            format!("refused {} {}{near}", error.field().name(), error.kind().name())
        }
    }
}

#[test]
fn every_row_comes_to_what_it_says() {
    let (mut read, mut doubted_or_refused, mut wrong) = (0, 0, Vec::new());
    for row in rows() {
        assert!(!row.why.is_empty(), "line {} says no why", row.line);
        let came_to = outcome(&row.text);
        if came_to != row.outcome {
            wrong.push(format!("line {}: {:?} is {came_to:?}, not {:?}", row.line, row.text, row.outcome));
        }
        if came_to.starts_with(['?', 'r']) && (came_to.starts_with('?') || came_to.starts_with("refused")) {
            doubted_or_refused += 1;
        } else {
            read += 1;
        }
    }
    assert!(wrong.is_empty(), "{} rows:\n{}", wrong.len(), wrong.join("\n"));
    println!("{read} rows read, {doubted_or_refused} doubted or refused");
    assert!(read >= 400 && doubted_or_refused >= 100, "{read} {doubted_or_refused}");
}

/// What is shown reads back, of every reading of every row.
#[test]
fn what_is_shown_reads_back() {
    for row in rows() {
        let Ok(all) = readings(&row.text) else { continue };
        for reading in all.iter() {
            let shown = reading.marking().to_string();
            assert_eq!(shown.parse::<Marking>(), Ok(reading.marking()), "{:?} shown as {shown:?}", row.text);
        }
    }
}

/// A suggestion always reads, and there are no more than three.
#[test]
fn suggestions_read() {
    for row in rows().iter().filter(|row| readings(&row.text).is_err()) {
        let near: Vec<_> = suggestions(&row.text).collect();
        assert!(near.len() <= 3);
        for text in near {
            assert!(readings(text.as_str()).is_ok(), "{text} for {:?}", row.text);
        }
    }
}
