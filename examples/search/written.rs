//! The lines of a list, written as they are found: as JSON or as CSV.

use std::io::{ErrorKind, Write};

use serde_json::Value;

const COLUMNS: [&str; 15] = [
    "line",
    "column",
    "key",
    "why",
    "pairs",
    "tire_line",
    "tire_key",
    "tire",
    "wheel_line",
    "wheel_key",
    "wheel",
    "verdict",
    "decides",
    "margins",
    "unknown",
];

/// The standard output, a line at a time.
pub(crate) struct Written {
    is_csv: bool,
    has_header: bool,
}

impl Written {
    pub(crate) const fn new(is_csv: bool) -> Self {
        Self { is_csv, has_header: false }
    }

    pub(crate) fn line(&mut self, line: &Value) -> Result<(), String> {
        let text = if self.is_csv {
            let header = if self.has_header { String::new() } else { record(COLUMNS.map(String::from))? };
            self.has_header = true;
            header + &record(COLUMNS.map(|column| cell(&line[column])))?
        } else {
            format!("{line}\n")
        };
        match std::io::stdout().write_all(text.as_bytes()) {
            Ok(()) => Ok(()),
            // A reader that has seen enough, as `head` does, is no failure.
            Err(error) if error.kind() == ErrorKind::BrokenPipe => std::process::exit(0),
            Err(error) => Err(error.to_string()),
        }
    }
}

fn record(cells: [String; 15]) -> Result<String, String> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(&cells).map_err(|error| error.to_string())?;
    let bytes = writer.into_inner().map_err(|error| error.to_string())?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// `inner_clearance front 8.35 mm; …`
fn cell(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => text.clone(),
        Value::Array(values) => values.iter().map(cell).collect::<Vec<_>>().join("; "),
        Value::Object(parts) => {
            let parts = ["id", "where", "value", "unit"].iter().filter_map(|part| parts.get(*part)).map(cell);
            parts.filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
        }
        other => other.to_string(),
    }
}
