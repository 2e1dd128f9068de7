//! Reference rows, each with its source and certainty, and the count of those that were checked.

#![allow(dead_code, reason = "each test file uses its part")]

use std::collections::BTreeMap;
use std::fmt;
use std::ops::Index;
use std::path::Path;
use std::rc::Rc;

/// One row of a file in `tests/reference/`. MarkedText, it names its place, certainty and source.
pub(crate) struct Row {
    file: &'static str,
    line: u64,
    columns: Rc<csv::StringRecord>,
    cells: csv::StringRecord,
}

/// All rows of a file.
pub(crate) fn rows(file: &'static str) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference").join(file);
    let mut reader = csv::Reader::from_path(path).expect("the file can be opened");
    let columns = Rc::new(reader.headers().expect("the first line names the columns").clone());
    let rows: Vec<Row> = reader
        .records()
        .map(|cells| {
            let cells = cells.expect("every row has as many cells as there are columns");
            let line = cells.position().map_or(0, csv::Position::line);
            Row { file, line, columns: Rc::clone(&columns), cells }
        })
        .collect();
    assert!(!rows.is_empty(), "{file} has no rows");
    rows
}

impl Row {
    /// The cell of a column, if the file has the column.
    pub(crate) fn get(&self, column: &str) -> Option<&str> {
        let at = self.columns.iter().position(|name| name == column)?;
        self.cells.get(at)
    }

    /// How sure the reference is of the row, in its own words. A file without such a column holds
    /// values computed from definitions.
    pub(crate) fn certainty(&self) -> &str {
        if let Some(certainty) = ["certainty", "status", "source_certainty"].iter().find_map(|c| self.get(c))
        {
            return certainty;
        }
        match self.get("source") {
            // `[pub] title of the source`
            Some(tagged) => tagged.split_inclusive(']').next().unwrap_or(tagged),
            None => "derived",
        }
    }

    #[track_caller]
    pub(crate) fn number(&self, column: &str) -> f64 {
        self[column].parse().unwrap_or_else(|_| panic!("{column} of {self} is not a number"))
    }

    /// Holds a computed value against a column.
    #[track_caller]
    pub(crate) fn near(&self, column: &str, computed: f64, tolerance: f64) {
        let expected = self.number(column);
        assert!(
            (computed - expected).abs() <= tolerance,
            "{computed} computed, {expected} ± {tolerance} expected in {column} of {self}"
        );
    }

    /// The same, where the column has been rounded to the digits it is printed with.
    #[track_caller]
    pub(crate) fn rounds_to(&self, column: &str, computed: f64) {
        let decimals = self[column].split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let step = (0..decimals).fold(1.0, |step, _| step / 10.0);
        self.near(column, computed, 0.5 * step + 1e-12 * computed.abs());
    }
}

impl Index<&str> for Row {
    type Output = str;
    #[track_caller]
    fn index(&self, column: &str) -> &str {
        self.get(column).unwrap_or_else(|| panic!("{} has no column {column}", self.file))
    }
}

impl fmt::Display for Row {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let source = self.get("source").unwrap_or("computed from the definition");
        let cells: Vec<&str> = self.cells.iter().collect();
        write!(f, "{}:{} [{}; {source}] {cells:?}", self.file, self.line, self.certainty())
    }
}

/// The numbers in a text, in order.
pub(crate) fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .filter_map(|word| word.trim_matches('.').parse().ok())
        .collect()
}

/// What follows `key=` in a text, up to a space or semicolon.
#[track_caller]
pub(crate) fn value_of<'a>(text: &'a str, key: &str) -> &'a str {
    let mut words = text.split([' ', ';']);
    words
        .find_map(|word| word.strip_prefix(key)?.strip_prefix('='))
        .unwrap_or_else(|| panic!("no {key}= in {text}"))
}

/// The same as a number; a unit may be glued to it.
#[track_caller]
pub(crate) fn number_of(text: &str, key: &str) -> f64 {
    *numbers(value_of(text, key)).first().unwrap_or_else(|| panic!("no number behind {key}= in {text}"))
}

/// Counts rows checked, by certainty, and rows left out, by reason; [`Tally::close`] holds both
/// against what is known to be in the files, so that no row is left out unseen.
pub(crate) struct Tally {
    topic: &'static str,
    checked: BTreeMap<String, usize>,
    left: BTreeMap<&'static str, Vec<String>>,
}

impl Tally {
    pub(crate) fn of(topic: &'static str) -> Self {
        Self { topic, checked: BTreeMap::new(), left: BTreeMap::new() }
    }

    pub(crate) fn checked(&mut self, row: &Row) {
        *self.checked.entry(row.certainty().to_owned()).or_default() += 1;
    }

    /// Leaves a row out; `name` is what the row calls itself.
    pub(crate) fn left(&mut self, name: &str, reason: &'static str) {
        self.left.entry(reason).or_default().push(name.to_owned());
    }

    /// Prints the counts and holds them against those expected.
    #[track_caller]
    pub(crate) fn close(self, checked: usize, left: &[(&str, usize)]) {
        let total: usize = self.checked.values().sum();
        println!("{}: {total} rows checked", self.topic);
        for (certainty, count) in &self.checked {
            println!("    {count} {certainty}");
        }
        for (reason, names) in &self.left {
            let (shown, more) = if names.len() > 40 { (&names[..40], " | …") } else { (&names[..], "") };
            println!("    left out, {reason}: {} ({}{more})", names.len(), shown.join(" | "));
        }
        let counted: BTreeMap<&str, usize> =
            self.left.iter().map(|(reason, names)| (*reason, names.len())).collect();
        assert_eq!(total, checked, "rows checked for {}", self.topic);
        assert_eq!(counted, left.iter().copied().collect(), "rows left out for {}", self.topic);
    }
}

/// A group of worked rows, which begins their names; how many it has, and what checks one.
pub(crate) type Group = (&'static str, usize, fn(&Row));

/// Checks the worked rows about wheels that are of these groups. The others are another file's.
#[track_caller]
pub(crate) fn check_wheel_rows(topic: &'static str, groups: &[Group], elsewhere: usize) {
    const ELSEWHERE: &str = "of a group that another test takes";
    let mut tally = Tally::of(topic);
    let mut counts = BTreeMap::new();
    for row in &rows("wheel_worked.csv") {
        let (name, _) = row["id"].split_once('.').unwrap_or_else(|| panic!("{row}"));
        match groups.iter().find(|(group, ..)| *group == name) {
            Some((group, _, check)) => {
                check(row);
                tally.checked(row);
                *counts.entry(*group).or_default() += 1;
            }
            None => tally.left(name, ELSEWHERE),
        }
    }
    println!("{counts:?}");
    let expected: BTreeMap<&str, usize> = groups.iter().map(|&(group, count, _)| (group, count)).collect();
    assert_eq!(counts, expected);
    tally.close(expected.values().sum(), &[(ELSEWHERE, elsewhere)]);
}
