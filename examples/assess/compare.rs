//! Two proposals for one vehicle side by side.

use std::process::ExitCode;

use beadseat::fitment::UnitSystem;
use beadseat::fitment::comparison::Comparison;
use beadseat::scenario::Scenario;
use serde_json::{Map, Value, json};

use crate::common::tables::{cell, plain, rows, table};
use crate::common::{misuse, read_scenario, say};

/// Compares the proposals of two files, and prints it as it is asked for.
pub(crate) fn compare(files: [&str; 2], flags: &[&str], units: UnitSystem, help: &str) -> ExitCode {
    let form: fn(&Comparison<'_>) -> Result<String, String> = match flags {
        [] => |compared| Ok(compared.to_string()),
        ["--json"] => |compared| written(compared).map(|json| format!("{json:#}\n")),
        ["--csv"] => {
            |compared| written(compared).and_then(|json| csv(&json).map_err(|error| error.to_string()))
        }
        ["--markdown"] => |compared| written(compared).map(|json| markdown(&json)),
        ["--summary"] => {
            eprintln!("--summary is of one scenario: of two, what differs is as short as it gets");
            return ExitCode::from(2);
        }
        _ => return misuse(help),
    };
    say(judge(files, units, form))
}

fn judge(
    files: [&str; 2],
    units: UnitSystem,
    form: fn(&Comparison<'_>) -> Result<String, String>,
) -> Result<String, String> {
    let [a, b] = files.map(read_scenario);
    let scenarios = [a?, b?];
    let keys = differing_keys(&scenarios)?;
    let keys: Vec<&str> = keys.iter().map(String::as_str).collect();
    let reports = scenarios.each_ref().map(Scenario::assess);
    let names = names(files, &scenarios);
    let [a, b] = [0, 1].map(|n| {
        let document = scenarios[n].document(&reports[n]).with_name(&names[n]).in_units(units);
        document.under(scenarios[n].conditions(), scenarios[n].limits())
    });
    form(&Comparison::new([a, b]).naming(&keys))
}

/// What the proposals are called: as in their files, with the files behind where that tells them apart.
fn names(files: [&str; 2], scenarios: &[Scenario; 2]) -> [String; 2] {
    let named = scenarios.each_ref().map(|scenario| scenario.name().unwrap_or("vehicle without a name"));
    let is_told = named[0] != named[1];
    [0, 1].map(|n| {
        let file = std::path::Path::new(files[n]).file_name().unwrap_or_default().to_string_lossy();
        if is_told { named[n].to_owned() } else { format!("{file}: {}", named[n]) }
    })
}

fn written(compared: &Comparison<'_>) -> Result<Value, String> {
    serde_json::to_value(compared).map_err(|error| error.to_string())
}

/// The keys of all that differs between two scenarios but for what is proposed and what they are called.
fn differing_keys(scenarios: &[Scenario; 2]) -> Result<Vec<String>, String> {
    let mut keys = Vec::new();
    let [a, b] = scenarios.each_ref().map(serde_json::to_value);
    let (a, b) = (a.map_err(|error| error.to_string())?, b.map_err(|error| error.to_string())?);
    walk("", &a, &b, &mut keys);
    keys.retain(|key| key != "vehicle.name" && !is_proposed(key));
    Ok(keys)
}

/// Whether a key is of what is proposed, for front and rear or for a further axle.
fn is_proposed(key: &str) -> bool {
    key.split('.').find(|part| !part.starts_with("more_axles")) == Some("proposed")
}

fn walk(path: &str, a: &Value, b: &Value, keys: &mut Vec<String>) {
    match (a, b) {
        _ if a == b => {}
        (Value::Object(of_a), Value::Object(of_b)) => {
            let names = of_a.keys().chain(of_b.keys().filter(|key| !of_a.contains_key(*key)));
            for name in names {
                let path = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
                walk(&path, &a[name], &b[name], keys);
            }
        }
        (Value::Array(of_a), Value::Array(of_b)) if path == "more_axles" && of_a.len() == of_b.len() => {
            for (n, (a, b)) in of_a.iter().zip(of_b).enumerate() {
                walk(&format!("{path}[{n}]"), a, b, keys);
            }
        }
        _ => keys.push(path.to_owned()),
    }
}

/// The columns of the spreadsheet that both proposals have.
const OF_EACH: [&str; 10] =
    ["verdict", "before", "after", "change", "measured", "nominal", "limit", "margin", "reason", "todo"];

/// A row of each pair, with what each proposal has in columns of its own: `a_verdict`.
fn flat(table: &str, pair: &Value) -> Map<String, Value> {
    let mut row: Map<String, Value> =
        ["id", "where", "differs"].iter().map(|&key| (key.to_owned(), pair[key].clone())).collect();
    row.insert("table".into(), json!(table));
    let unit = [&pair["a"]["unit"], &pair["b"]["unit"]].into_iter().find(|unit| unit.is_string());
    row.insert("unit".into(), unit.cloned().unwrap_or_default());
    for whose in ["a", "b"] {
        for key in OF_EACH {
            row.insert(format!("{whose}_{key}"), pair[whose][key].clone());
        }
    }
    row
}

fn csv(compared: &Value) -> Result<String, Box<dyn std::error::Error>> {
    let columns: Vec<String> = ["table", "id", "where", "differs", "unit"]
        .map(str::to_owned)
        .into_iter()
        .chain(["a", "b"].into_iter().flat_map(|whose| OF_EACH.map(|key| format!("{whose}_{key}"))))
        .collect();
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(&columns)?;
    let differing = rows(compared, "differs_in").map(|key| flat("differs_in", &json!({ "id": key })));
    let moves = rows(compared, "moves").map(|pair| flat("move", pair));
    let checks = rows(compared, "checks").map(|pair| flat("check", pair));
    let further = rows(compared, "more_axles").flat_map(|axle| {
        let name = cell(&axle["name"]);
        let overall = ["a", "b"]
            .map(|whose| json!({ "verdict": axle["overall"][whose], "after": axle["after"][whose] }));
        let [a, b] = overall;
        let differs = axle["overall"]["a"] != axle["overall"]["b"];
        let verdict = json!({ "id": "overall", "differs": differs, "a": a, "b": b });
        let of = |table: &'static str, list: &'static str| {
            let table = format!("{table} of {name}");
            rows(axle, list).map(move |pair| flat(&table, pair))
        };
        let whole = core::iter::once(flat(&format!("axle {name}"), &verdict));
        whole.chain(of("move", "moves")).chain(of("check", "checks")).collect::<Vec<_>>()
    });
    for row in differing.chain(moves).chain(checks).chain(further) {
        writer.write_record(columns.iter().map(|column| row.get(column).map(cell).unwrap_or_default()))?;
    }
    Ok(String::from_utf8(writer.into_inner()?)?)
}

fn markdown(compared: &Value) -> String {
    let name = |whose: &str| match &compared["names"][whose] {
        Value::String(name) => plain(name),
        _ => "vehicle without a name".to_owned(),
    };
    let mut page = String::from("# Two proposals side by side\n\n");
    for (title, whose) in [("A", "a"), ("B", "b")] {
        let complete = if compared["complete"][whose] == true { "complete" } else { "not complete" };
        page +=
            &format!("* {title}: {}: **{}**, {complete}\n", name(whose), cell(&compared["overall"][whose]));
    }
    let keys: Vec<_> = rows(compared, "differs_in").map(|key| plain(&cell(key))).collect();
    if !keys.is_empty() {
        page += &format!(
            "\n**Caution: these are not two proposals for one vehicle.** Besides what is proposed they differ in: {}. \
             A verdict may differ for that alone.\n",
            keys.join(", ")
        );
    }
    let setups: Vec<Value> = [("A", "a"), ("B", "b")]
        .into_iter()
        .flat_map(|(title, whose)| {
            rows(&compared["setups"], whose)
                .map(move |setup| json!({ "whose": title, "where": setup["where"], "after": setup["after"] }))
        })
        .collect();
    let columns = [("proposal", "whose"), ("where", "where"), ("to", "after")];
    table(&mut page, "Setups", &columns, setups.iter().collect());
    let found = [
        ("where", "where"),
        ("check", "id"),
        ("A", "a_verdict"),
        ("measured", "a_measured"),
        ("margin", "a_margin"),
        ("B", "b_verdict"),
        ("measured", "b_measured"),
        ("margin", "b_margin"),
        ("unit", "unit"),
        ("why A", "a_reason"),
        ("why B", "b_reason"),
    ];
    let is_other = |row: &Map<String, Value>| row["a_verdict"] != row["b_verdict"];
    type Asked = fn(&Map<String, Value>) -> bool;
    let parts: [(&str, Asked); 3] = [
        ("Another verdict", is_other),
        ("The same verdict, other figures or another reason", |row| {
            row["differs"] == true && row["a_verdict"] == row["b_verdict"]
        }),
        ("The same in both", |row| row["differs"] == false),
    ];
    for (title, asked) in parts {
        let pairs = rows(compared, "checks").map(|pair| flat("check", pair)).filter(asked);
        let pairs: Vec<Value> = pairs.map(Value::from).collect();
        table(&mut page, title, &found, pairs.iter().collect());
    }
    let moved = [
        ("where", "where"),
        ("what", "id"),
        ("before A", "a_before"),
        ("after A", "a_after"),
        ("before B", "b_before"),
        ("after B", "b_after"),
        ("unit", "unit"),
    ];
    let moves = rows(compared, "moves").map(|pair| Value::from(flat("move", pair)));
    let moves: Vec<Value> = moves.filter(|pair| pair["differs"] == true).collect();
    table(&mut page, "What moves otherwise", &moved, moves.iter().collect());
    for axle in rows(compared, "more_axles") {
        let whose =
            |what: &str, whose: &str| axle[what][whose].as_str().map_or("no such axle".into(), str::to_owned);
        page += &format!(
            "\n## Further axle: {}\n\n* A: **{}**, {}\n* B: **{}**, {}\n",
            plain(&cell(&axle["name"])),
            whose("overall", "a"),
            plain(&whose("after", "a")),
            whose("overall", "b"),
            plain(&whose("after", "b")),
        );
        for (title, asked) in parts {
            let pairs = rows(axle, "checks").map(|pair| flat("check", pair)).filter(asked);
            let pairs: Vec<Value> = pairs.map(Value::from).collect();
            table(
                &mut page,
                &format!("{}: {title}", plain(&cell(&axle["name"]))),
                &found,
                pairs.iter().collect(),
            );
        }
        let moves = rows(axle, "moves").map(|pair| Value::from(flat("move", pair)));
        let moves: Vec<Value> = moves.filter(|pair| pair["differs"] == true).collect();
        table(
            &mut page,
            &format!("{}: what moves otherwise", plain(&cell(&axle["name"]))),
            &moved,
            moves.iter().collect(),
        );
    }
    page += "\n## Cautions\n\n";
    for caution in rows(compared, "cautions") {
        let of = match (&caution["a"], &caution["b"]) {
            (Value::Bool(true), Value::Bool(false)) => "(A) ",
            (Value::Bool(false), Value::Bool(true)) => "(B) ",
            _ => "",
        };
        page += &format!("* {of}{}\n", plain(&cell(&caution["caution"])));
    }
    page
}
