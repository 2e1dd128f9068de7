//! A shop's own list, each tire on each wheel: `--from LIST.csv`.
//!
//! The first line names the columns: `tire`, `wheel` or both hold designations as they are printed; `key` is the shop's own
//! name of a line; `wheel_rating_kg`, `pressure_kpa`, `pressure_full_load_kpa` and `seat` belong to the tire or wheel beside
//! them. Other columns are passed over.

use beadseat::fitment::{Change, CheckId, Position, Report, Setup, Setups, Verdict, assess};
use beadseat::scenario::Scenario;
use beadseat::tire::Tire;
use beadseat::units::{Mass, Pressure, kg, kpa};
use beadseat::wheel::{Seat, Wheel};
use beadseat::{Excerpt, Marking};
use serde_json::{Value, json};

/// Lists of more lines are refused.
const MOST_LINES: usize = 100_000;

struct Listed<T> {
    key: String,
    what: T,
    facts: Facts,
}

/// What a line says beside the designations.
#[derive(Clone, Copy, Default)]
struct Facts {
    rating: Option<Mass>,
    pressure: Option<Pressure>,
    full_load: Option<Pressure>,
    seat: Option<Seat>,
}

/// A cell that cannot be read.
struct Unread {
    line: u64,
    column: String,
    why: String,
}

#[derive(Default)]
struct List {
    tires: Vec<Listed<Tire>>,
    wheels: Vec<Listed<Wheel>>,
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

fn wheel(text: &str) -> Result<Wheel, String> {
    match Marking::parse(text) {
        Ok(Marking::Wheel(wheel)) => Ok(wheel),
        Ok(Marking::WheelStamp(stamp)) => Ok(stamp.wheel()),
        Ok(other) => Err(format!("this is a {}, not a wheel", other.kind())),
        Err(error) => Err(error.to_string()),
    }
}

impl List {
    fn read(path: &str) -> Result<Self, String> {
        let wrong = |error: csv::Error| format!("{}: {error}", Excerpt(path));
        let mut reader =
            csv::ReaderBuilder::new().flexible(true).trim(csv::Trim::All).from_path(path).map_err(wrong)?;
        let columns: Vec<String> = reader.headers().map_err(wrong)?.iter().map(str::to_lowercase).collect();
        if !columns.iter().any(|column| column == "tire" || column == "wheel") {
            return Err(format!("{}: the first line must name a column `tire` or `wheel`", Excerpt(path)));
        }
        let mut list = Self::default();
        for (n, record) in reader.into_records().enumerate() {
            if n >= MOST_LINES {
                return Err(format!("{}: more than {MOST_LINES} lines", Excerpt(path)));
            }
            match record {
                Ok(record) => list.take(&columns, &record, n as u64 + 2),
                Err(error) => {
                    let line = error.position().map_or(n as u64 + 2, csv::Position::line);
                    let column = columns.first().cloned().unwrap_or_default();
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
        let mut number = |column: &str, most: f64| {
            let text = cell(column)?;
            let read = text.parse::<f64>().ok().filter(|n| *n > 0.0 && *n <= most);
            if read.is_none() {
                unread(column, format!("{} is not a number from 0 to {most}", Excerpt(text)));
            }
            read
        };
        let mut facts = Facts {
            rating: number("wheel_rating_kg", 20_000.0).map(kg),
            pressure: number("pressure_kpa", 1200.0).map(kpa),
            full_load: number("pressure_full_load_kpa", 1200.0).map(kpa),
            seat: None,
        };
        if let Some(text) = cell("seat") {
            match text.parse() {
                Ok(seat) => facts.seat = Some(seat),
                Err(_) => unread("seat", format!("{} is no seat", Excerpt(text))),
            }
        }
        if cell("tire").is_none() && cell("wheel").is_none() {
            unread("tire", "neither a tire nor a wheel stands here".into());
        }
        let (mut tires, mut wheels) = (Vec::new(), Vec::new());
        if let Some(text) = cell("tire") {
            match tire(text) {
                Ok(what) => tires.push(Listed { key: key.clone(), what, facts }),
                Err(why) => unread("tire", why),
            }
        }
        if let Some(text) = cell("wheel") {
            match wheel(text) {
                Ok(what) => wheels.push(Listed { key, what, facts }),
                Err(why) => unread("wheel", why),
            }
        }
        self.tires.extend(tires);
        self.wheels.extend(wheels);
    }
}

/// A pair on every axle that has an original; what neither line says is not known.
fn setup(tire: &Listed<Tire>, wheel: &Listed<Wheel>) -> Option<Setup> {
    let mut setup = Setup::new(tire.what, wheel.what);
    if let Some(rating) = wheel.facts.rating {
        setup = setup.with_wheel_rating(rating).ok()?;
    }
    if let Some(pressure) = tire.facts.pressure {
        setup = setup.with_pressure(pressure).ok()?;
    }
    if let Some(pressure) = tire.facts.full_load {
        setup = setup.with_pressure_full_load(pressure).ok()?;
    }
    Some(match wheel.facts.seat {
        Some(seat) => setup.with_seat(seat),
        None => setup,
    })
}

/// Whether the tire goes on the wheel at all.
fn can_be_mounted(report: &Report) -> bool {
    let mounting = [CheckId::BeadDiameter, CheckId::RimWidth];
    let places = [Position::Front, Position::Rear];
    !mounting.into_iter().any(|id| {
        places.iter().any(|&place| report.get(id, place).is_some_and(|c| c.verdict() == Verdict::Beyond))
    })
}

fn pair_json(tire: &Listed<Tire>, wheel: &Listed<Wheel>, report: &Report) -> Value {
    let decides =
        report.worst().map(|check| json!({ "id": check.id().name(), "where": check.position().name() }));
    let number = |check: &beadseat::fitment::Check| {
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
        "tire_key": tire.key, "tire": tire.what.to_string(), "wheel_key": wheel.key, "wheel": wheel.what.to_string(),
        "verdict": report.overall().name(), "decides": decides, "margins": margins, "unknown": unknown,
    })
}

/// One JSON line a pair that can be mounted, or one a cell that cannot be read.
pub(crate) fn judge(scenario: &Scenario, path: &str) -> Result<String, String> {
    let list = List::read(path)?;
    let mut lines = String::new();
    for unread in &list.unread {
        let line = json!({ "line": unread.line, "column": unread.column, "why": unread.why });
        lines += &format!("{line}\n");
    }
    let original = scenario.change().original;
    let [mut pairs, mut fitting] = [0_usize; 2];
    for tire in &list.tires {
        for wheel in &list.wheels {
            if tire.what.size().rim_diameter() != wheel.what.size().diameter() {
                continue;
            }
            let Some(setup) = setup(tire, wheel) else { continue };
            let proposed =
                Setups { front: original.front.map(|_| setup), rear: original.rear.map(|_| setup) };
            let change = Change { original, proposed };
            let report = assess(scenario.vehicle(), &change, scenario.conditions(), scenario.limits());
            if can_be_mounted(&report) {
                pairs += 1;
                fitting += usize::from(report.overall() != Verdict::Beyond);
                lines += &format!("{}\n", pair_json(tire, wheel, &report));
            }
        }
    }
    eprintln!(
        "{} tires, {} wheels, {pairs} pairs that can be mounted, {fitting} not beyond, {} cells not read",
        list.tires.len(),
        list.wheels.len(),
        list.unread.len(),
    );
    Ok(lines)
}
