//! A shop's own list, each tire on each wheel: `--from LIST.csv`.
//!
//! The first line names the columns: `tire`, `wheel` or both hold designations as people write them; `key` is the shop's own
//! name of a line; `wheel_rating_kg`, `pressure_kpa`, `pressure_full_load_kpa` and `seat` belong to the tire or wheel beside
//! them. Other columns are passed over.

use beadseat::fitment::{Check, CheckId, Position, Report, Setup, Setups, Verdict};
use beadseat::scenario::Scenario;
use beadseat::tire::Tire;
use beadseat::units::{Mass, Pressure, kg, kpa};
use beadseat::wheel::{Seat, Wheel};
use beadseat::{Excerpt, Marking};
use serde_json::{Value, json};

use crate::options::{Form, Options};
use crate::stop::Progress;
use crate::written::Written;

/// Lists of more lines are refused.
const MOST_LINES: usize = 100_000;

const KNOWN: [&str; 7] =
    ["key", "tire", "wheel", "wheel_rating_kg", "pressure_kpa", "pressure_full_load_kpa", "seat"];

/// A tire or a wheel with what its line says of it, as a setup of which the other part does not count.
struct Listed {
    line: u64,
    key: String,
    setup: Setup,
    /// In how many pairs it can be mounted.
    pairs: usize,
}

/// A cell that cannot be read.
struct Unread {
    line: u64,
    column: String,
    why: String,
}

#[derive(Default)]
struct List {
    tires: Vec<Listed>,
    wheels: Vec<Listed>,
    unread: Vec<Unread>,
}

fn tire(text: &str) -> Result<Tire, String> {
    match Marking::parse(text) {
        Ok(Marking::Tire(tire)) => Ok(tire),
        Ok(Marking::SidewallLine(line)) => Ok(line.tire()),
        Ok(other) => Err(format!("this is a {}, not a tire", other.kind())),
        Err(error) => Err(error.to_string()),
    }
}

/// A wheel, and the load that is stamped on it.
fn wheel(text: &str) -> Result<(Wheel, Option<Mass>), String> {
    match Marking::parse(text) {
        Ok(Marking::Wheel(wheel)) => Ok((wheel, None)),
        Ok(Marking::WheelStamp(stamp)) => Ok((stamp.wheel(), stamp.load().map(|load| load.load()))),
        Ok(other) => Err(format!("this is a {}, not a wheel", other.kind())),
        Err(error) => Err(error.to_string()),
    }
}

/// The names of the columns, each once.
fn columns(headers: &csv::StringRecord) -> Result<Vec<String>, String> {
    let columns: Vec<String> = headers.iter().map(|name| name.trim().to_lowercase()).collect();
    if !columns.iter().any(|column| column == "tire" || column == "wheel") {
        return Err("the first line must name a column `tire` or `wheel`".into());
    }
    for name in KNOWN {
        if columns.iter().filter(|column| *column == name).count() > 1 {
            return Err(format!("the first line names two columns `{name}`"));
        }
    }
    Ok(columns)
}

impl List {
    fn read(path: &str) -> Result<Self, String> {
        let wrong =
            |error: &dyn std::fmt::Display| format!("{}: {}", Excerpt(path), Excerpt(&error.to_string()));
        let mut reader = csv::ReaderBuilder::new()
            .flexible(true)
            .trim(csv::Trim::All)
            .from_path(path)
            .map_err(|e| wrong(&e))?;
        let columns = columns(reader.headers().map_err(|e| wrong(&e))?).map_err(|e| wrong(&e))?;
        let mut list = Self::default();
        for (n, record) in reader.into_records().enumerate() {
            if n >= MOST_LINES {
                return Err(format!("{}: more than {MOST_LINES} lines", Excerpt(path)));
            }
            match record {
                Ok(record) => list.take(&columns, &record, n as u64 + 2),
                Err(error) => {
                    let line = error.position().map_or(n as u64 + 2, csv::Position::line);
                    let at = match error.kind() {
                        csv::ErrorKind::Utf8 { err, .. } => err.field(),
                        _ => 0,
                    };
                    let column = columns.get(at).or(columns.first()).cloned().unwrap_or_default();
                    list.unread.push(Unread { line, column, why: Excerpt(&error.to_string()).to_string() });
                }
            }
        }
        Ok(list)
    }

    fn take(&mut self, columns: &[String], record: &csv::StringRecord, line: u64) {
        let line = record.position().map_or(line, csv::Position::line);
        let cell = |name: &str| {
            let at = columns.iter().position(|column| column == name)?;
            record.get(at).filter(|text| !text.is_empty())
        };
        let mut unread = |column: &str, why: String| {
            self.unread.push(Unread { line, column: column.into(), why });
        };
        let key = cell("key").map_or_else(|| line.to_string(), |key| Excerpt(key).to_string());
        let mut number = |column: &str, least: f64, most: f64| {
            let text = cell(column)?;
            let read = text.parse::<f64>().ok().filter(|n| (least..=most).contains(n));
            if read.is_none() {
                unread(column, format!("{} is not a number from {least} to {most}", Excerpt(text)));
            }
            read
        };
        let rating = number("wheel_rating_kg", 10.0, 20_000.0).map(kg);
        let pressure = number("pressure_kpa", 50.0, 1200.0).map(kpa);
        let full_load = number("pressure_full_load_kpa", 50.0, 1200.0).map(kpa);
        let mut seat = None;
        if let Some(text) = cell("seat") {
            match text.parse::<Seat>() {
                Ok(read) => seat = Some(read),
                Err(_) => unread("seat", format!("{} is no seat", Excerpt(text))),
            }
        }
        if cell("tire").is_none() && cell("wheel").is_none() {
            unread("tire", "neither a tire nor a wheel stands here".into());
        }
        if let Some(text) = cell("tire") {
            match tire(text).and_then(|tire| inflated(tire, [pressure, full_load])) {
                Ok(setup) => self.tires.push(Listed { line, key: key.clone(), setup, pairs: 0 }),
                Err(why) => unread("tire", why),
            }
        }
        if let Some(text) = cell("wheel") {
            match wheel(text).and_then(|(wheel, stamped)| rated(wheel, rating.or(stamped), seat)) {
                Ok(setup) => self.wheels.push(Listed { line, key, setup, pairs: 0 }),
                Err(why) => unread("wheel", why),
            }
        }
    }
}

/// A tire at its pressures, normal and for full load, as far as they are known, on whatever wheel.
fn inflated(tire: Tire, [normal, full_load]: [Option<Pressure>; 2]) -> Result<Setup, String> {
    let mut setup = Setup::new(tire, "6.5Jx16".parse().map_err(told)?);
    if let Some(pressure) = normal {
        setup = setup.with_pressure(pressure).map_err(told)?;
    }
    if let Some(pressure) = full_load {
        setup = setup.with_pressure_full_load(pressure).map_err(told)?;
    }
    Ok(setup)
}

/// A wheel with its rating and seat, as far as they are known, under whatever tire.
fn rated(wheel: Wheel, rating: Option<Mass>, seat: Option<Seat>) -> Result<Setup, String> {
    let mut setup = Setup::new("205/55R16".parse().map_err(told)?, wheel);
    if let Some(rating) = rating {
        setup = setup.with_wheel_rating(rating).map_err(told)?;
    }
    Ok(seat.map_or(setup, |seat| setup.with_seat(seat)))
}

fn told(error: impl std::fmt::Display) -> String {
    error.to_string()
}

/// Whether the tire goes on the wheel at all.
fn can_be_mounted(report: &Report) -> bool {
    let mounting = [CheckId::BeadDiameter, CheckId::RimWidth];
    let places = [Position::Front, Position::Rear];
    !mounting.into_iter().any(|id| {
        places.iter().any(|&place| report.get(id, place).is_some_and(|c| c.verdict() == Verdict::Beyond))
    })
}

fn pair_json(tire: &Listed, wheel: &Listed, report: &Report) -> Value {
    let overall = report.overall();
    let decides = report
        .by_severity()
        .find(|check| check.verdict() == overall || overall == Verdict::Marginal && is_open(check));
    let decides = decides.map(|check| json!({ "id": check.id().name(), "where": check.position().name() }));
    let number = |check: &Check| {
        let line = serde_json::to_value(check).unwrap_or(Value::Null);
        Some(json!({ "id": line["id"], "where": line["where"], "value": line["margin"], "unit": line["unit"] }))
            .filter(|_| !line["margin"].is_null())
    };
    let margins: Vec<_> = report.checks().filter_map(|check| number(&check)).collect();
    let mut unknown: Vec<&str> = Vec::new();
    for check in report.checks().filter(|check| check.verdict() == Verdict::NotAssessed) {
        if !unknown.contains(&check.id().name()) {
            unknown.push(check.id().name());
        }
    }
    json!({
        "tire_line": tire.line, "tire_key": tire.key, "tire": tire.setup.tire().to_string(),
        "wheel_line": wheel.line, "wheel_key": wheel.key, "wheel": wheel.setup.wheel().to_string(),
        "verdict": report.overall().name(), "decides": decides, "margins": margins, "unknown": unknown,
    })
}

/// Whether a check is vital and was not made, which makes the whole marginal.
fn is_open(check: &Check) -> bool {
    check.verdict() == Verdict::NotAssessed && check.id().is_vital()
}

/// How a pair ranks: by its verdict, then by how many findings are beyond, how many marginal or vital and not made, and
/// how many not made.
type Rank = [usize; 4];

fn rank(report: &Report) -> Rank {
    let count = |is: &dyn Fn(&Check) -> bool| report.checks().filter(|check| is(check)).count();
    let are = |of: Verdict| count(&|check| check.verdict() == of);
    [
        are(Verdict::Beyond),
        usize::from(report.overall() != Verdict::Within),
        are(Verdict::Marginal) + count(&is_open),
        are(Verdict::NotAssessed),
    ]
}

/// What goes with nothing else of the list.
fn alone(column: &str, listed: &Listed, what: &dyn std::fmt::Display) -> Value {
    json!({ "line": listed.line, "column": column, "key": listed.key, column: what.to_string(), "pairs": 0 })
}

/// Writes a line a pair that can be mounted, a cell that cannot be read, and what goes with nothing.
pub(crate) fn judge(scenario: &Scenario, path: &str, options: &Options) -> Result<(), String> {
    let mut list = List::read(path)?;
    let mut written = Written::new(options.form == Form::Csv);
    for unread in &list.unread {
        written.line(&json!({ "line": unread.line, "column": unread.column, "why": unread.why }))?;
    }
    let original = scenario.change().original;
    let wheels = list.wheels.len();
    let mut progress = Progress::of((list.tires.len() * wheels) as u64, "pairs");
    let [mut pairs, mut fitting] = [0_usize; 2];
    let mut best: Vec<(Rank, Value)> = Vec::new();
    let keep_best = |best: &mut Vec<(Rank, Value)>, most| {
        best.sort_by_key(|(rank, _)| *rank);
        best.truncate(most);
    };
    'all: for (n, tire) in list.tires.iter_mut().enumerate() {
        for (m, wheel) in list.wheels.iter_mut().enumerate() {
            if tire.setup.tire().size().rim_diameter() != wheel.setup.wheel().size().diameter() {
                continue;
            }
            if !progress.goes_on((n * wheels + m) as u64) {
                break 'all;
            }
            let setup = tire.setup.on_wheel_of(&wheel.setup);
            let proposed =
                Setups { front: original.front.map(|_| setup), rear: original.rear.map(|_| setup) };
            let report = scenario.assess_proposed(proposed);
            if !can_be_mounted(&report) {
                continue;
            }
            pairs += 1;
            tire.pairs += 1;
            wheel.pairs += 1;
            fitting += usize::from(report.overall() != Verdict::Beyond);
            let line = pair_json(tire, wheel, &report);
            match options.most {
                None => written.line(&line)?,
                Some(most) => {
                    best.push((rank(&report), line));
                    if best.len() >= 4 * most.max(64) {
                        keep_best(&mut best, most);
                    }
                }
            }
        }
    }
    if let Some(most) = options.most {
        keep_best(&mut best, most);
    }
    for (_, line) in &best {
        written.line(line)?;
    }
    let stopped = progress.ended();
    if stopped.is_none() {
        for tire in list.tires.iter().filter(|tire| tire.pairs == 0) {
            written.line(&alone("tire", tire, &tire.setup.tire()))?;
        }
        for wheel in list.wheels.iter().filter(|wheel| wheel.pairs == 0) {
            written.line(&alone("wheel", wheel, &wheel.setup.wheel()))?;
        }
    }
    eprintln!(
        "{} tires, {} wheels, {pairs} pairs that can be mounted, {fitting} not beyond, {} cells not read",
        list.tires.len(),
        list.wheels.len(),
        list.unread.len(),
    );
    if let Some(stopped) = stopped {
        eprintln!("{stopped}");
    }
    Ok(())
}
