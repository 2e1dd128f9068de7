//! A report as a spreadsheet, and as a page to hand on: both from what is written for programs.

use serde_json::Value;

/// A value as a cell: a text as it is, a limit in words.
pub(crate) fn cell(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => text.clone(),
        Value::Array(ends) => {
            let between = if ends.iter().all(Value::is_string) { "; " } else { " to " };
            ends.iter().map(cell).collect::<Vec<_>>().join(between)
        }
        Value::Object(limit) => {
            let words = |(key, value): (&String, &Value)| match key.as_str() {
                "between" => cell(value),
                key => format!("{} {}", key.replace('_', " "), cell(value)),
            };
            limit.iter().map(words).collect()
        }
        other => other.to_string(),
    }
}

pub(crate) fn rows<'a>(report: &'a Value, list: &str) -> impl Iterator<Item = &'a Value> {
    report[list].as_array().into_iter().flatten()
}

/// The columns of the spreadsheet, of which every row has its part.
const COLUMNS: [&str; 17] = [
    "table", "id", "where", "verdict", "before", "after", "change", "measured", "nominal", "limit", "margin",
    "unit", "reason", "todo", "citation", "status", "assumed",
];

/// Moves, findings, effects and what is said of the spare wheel as rows of one spreadsheet, with commas between.
pub(crate) fn csv(report: &Value) -> Result<String, Box<dyn std::error::Error>> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(COLUMNS)?;
    for (table, list) in [("move", "moves"), ("check", "checks"), ("effect", "effects")] {
        for row in rows(report, list) {
            let cells =
                COLUMNS.map(|column| if column == "table" { table.into() } else { cell(&row[column]) });
            writer.write_record(&cells)?;
        }
    }
    for row in rows(&report["spare"], "axles").flat_map(|axle| rows(axle, "checks")) {
        writer.write_record(
            COLUMNS.map(|column| if column == "table" { "spare".into() } else { cell(&row[column]) }),
        )?;
    }
    for axle in rows(report, "more_axles") {
        for (table, list) in [("move", "moves"), ("check", "checks"), ("effect", "effects")] {
            let table = format!("{table} of {}", cell(&axle["name"]));
            for row in rows(axle, list) {
                writer.write_record(
                    COLUMNS.map(|column| if column == "table" { table.clone() } else { cell(&row[column]) }),
                )?;
            }
        }
    }
    Ok(String::from_utf8(writer.into_inner()?)?)
}

/// A value on a page: a name in words, a number as the report rounds it.
fn on_page(key: &str, value: &Value) -> String {
    let rounded =
        |number: &Value| number.as_f64().map(|number| Value::from((number * 100.0).round() / 100.0));
    let told = match value {
        Value::Number(_) => cell(&rounded(value).unwrap_or_default()),
        Value::Array(ends) => ends.iter().map(|end| on_page(key, end)).collect::<Vec<_>>().join(" to "),
        Value::Object(limit) => {
            let of = |(kind, value): (&String, &Value)| match kind.as_str() {
                "between" => on_page(key, value),
                kind => format!("{} {}", kind.replace('_', " "), on_page(key, value)),
            };
            return limit.iter().map(of).collect();
        }
        other => cell(other),
    };
    let told = told.strip_suffix(".0").map(str::to_owned).unwrap_or(told);
    if matches!(key, "id" | "where" | "body" | "governs" | "a_verdict" | "b_verdict") {
        super::plain(&told)
    } else {
        told
    }
}

/// A text that a page shows as it is.
pub(crate) fn plain(text: &str) -> String {
    let shown: String = beadseat::Excerpt(text).to_string();
    shown
        .chars()
        .flat_map(|c| (if r"\`*_{}[]<>#|&".contains(c) { Some('\\') } else { None }).into_iter().chain([c]))
        .collect()
}

pub(crate) fn table(page: &mut String, title: &str, columns: &[(&str, &str)], rows: Vec<&Value>) {
    if rows.is_empty() {
        return;
    }
    let line = |cells: Vec<String>| format!("| {} |\n", cells.join(" | "));
    *page += &format!("\n## {title}\n\n");
    *page += &line(columns.iter().map(|(name, _)| (*name).to_owned()).collect());
    *page += &line(vec!["---".into(); columns.len()]);
    for row in rows {
        *page += &line(columns.iter().map(|(_, key)| plain(&on_page(key, &row[key]))).collect());
    }
}

/// Titles of findings, the gravest first.
const VERDICTS: [(&str, &str); 5] = [
    ("Beyond", "beyond"),
    ("Marginal", "marginal"),
    ("Not assessed", "not_assessed"),
    ("Within", "within"),
    ("Does not apply", "not_applicable"),
];

/// The cautions of a further axle, as rows.
fn of_texts(axle: &Value) -> Vec<Value> {
    rows(axle, "cautions").map(|caution| serde_json::json!({ "text": caution })).collect()
}

/// The whole report as a page of Markdown.
pub(crate) fn markdown(report: &Value) -> String {
    let name = cell(&report["name"]);
    let name = if name.is_empty() { "Vehicle without a name" } else { name.as_str() };
    let complete = if report["complete"] == true { "complete" } else { "not complete" };
    let mut page = format!("# {}\n\n**{}**, {complete}\n", plain(name), plain(&cell(&report["overall"])));
    let of = |list: &str| rows(report, list).collect::<Vec<_>>();
    table(&mut page, "Setups", &[("where", "where"), ("from", "before"), ("to", "after")], of("setups"));
    let moved = [
        ("where", "where"),
        ("what", "id"),
        ("before", "before"),
        ("after", "after"),
        ("change", "change"),
        ("unit", "unit"),
    ];
    table(&mut page, "What moves", &moved, of("moves"));
    let columns = [
        ("where", "where"),
        ("check", "id"),
        ("measured", "measured"),
        ("nominal", "nominal"),
        ("limit", "limit"),
        ("margin", "margin"),
        ("unit", "unit"),
        ("why", "reason"),
        ("to do", "todo"),
        ("source", "citation"),
    ];
    for (title, verdict) in VERDICTS {
        table(
            &mut page,
            title,
            &columns,
            of("checks").into_iter().filter(|row| row["verdict"] == verdict).collect(),
        );
    }
    let near = [
        ("where", "where"),
        ("body", "body"),
        ("part", "part"),
        ("left at worst, mm", "lower_mm"),
        ("steer, degrees", "steer_deg"),
        ("travel, mm", "travel_mm"),
    ];
    table(&mut page, "Nearest approach", &near, of("approaches"));
    let pressures = [
        ("where", "where"),
        ("normal load, kPa", "normal_load_kpa"),
        ("full load, kPa", "full_load_kpa"),
        ("as original, kPa", "as_original_kpa"),
        ("permitted, kPa", "permitted_kpa"),
        ("governed by", "governs"),
    ];
    table(&mut page, "Least cold pressures", &pressures, of("pressures"));
    let effects = [
        ("where", "where"),
        ("what", "id"),
        ("before", "before"),
        ("after", "after"),
        ("unit", "unit"),
        ("note", "caution"),
    ];
    table(&mut page, "Also changes", &effects, of("effects"));
    let sources = [("value", "of"), ("known by", "from"), ("day", "on"), ("who", "by")];
    table(&mut page, "Where values come from; of the others it is not told", &sources, of("sources"));
    for axle in rows(&report["spare"], "axles") {
        let (place, overall) = (on_page("where", &axle["where"]), cell(&axle["overall"]));
        let title = format!("{place}: {overall}, {}", cell(&report["spare"]["setup"]));
        let of = |verdict: &'static str| rows(axle, "checks").filter(move |row| row["verdict"] == verdict);
        let mut columns = columns;
        columns[0] = ("verdict", "verdict");
        table(
            &mut page,
            &plain(&title),
            &columns,
            VERDICTS.iter().flat_map(|(_, verdict)| of(verdict)).collect(),
        );
    }
    for axle in rows(report, "more_axles") {
        let complete = if axle["complete"] == true { "complete" } else { "not complete" };
        let title = format!("{}: {}, {complete}", cell(&axle["name"]), cell(&axle["overall"]));
        let of = |list: &str| rows(axle, list).collect::<Vec<_>>();
        let all = VERDICTS
            .iter()
            .flat_map(|(_, verdict)| rows(axle, "checks").filter(|row| row["verdict"] == *verdict));
        let mut columns = columns;
        columns[0] = ("verdict", "verdict");
        let named = |what: &str| format!("{}: {what}", plain(&cell(&axle["name"])));
        table(&mut page, &named("setups"), &[("from", "before"), ("to", "after")], of("setups"));
        table(&mut page, &plain(&title), &columns, all.collect());
        table(&mut page, &named("what moves"), &moved[1..], of("moves"));
        table(&mut page, &named("nearest approach"), &near, of("approaches"));
        table(&mut page, &named("least cold pressures"), &pressures[1..], of("pressures"));
        table(&mut page, &named("cautions"), &[("caution", "text")], of_texts(axle).iter().collect());
        table(
            &mut page,
            &named("what would settle the rest"),
            &[("fact", "input"), ("how to come by it", "how")],
            of("measurements"),
        );
    }
    let rules = &report["rules"];
    let named = |key: &str| cell(&rules[key]).replace('_', " ");
    let as_of = if rules["as_of"].is_null() { "no date given".into() } else { named("as_of") };
    let not_held = rows(rules, "not_held").map(|field| on_page("id", field)).collect::<Vec<_>>().join(", ");
    page += &format!("\n## Rules\n\nSet: {}. As of: {}. ", plain(&named("set")), plain(&as_of));
    page += &format!("Law not held here, which may ask for more: {}.\n", plain(&not_held));
    page += "\n## Cautions\n\n";
    rows(report, "cautions").for_each(|caution| page += &format!("* {}\n", plain(&cell(caution))));
    let wanted = [("fact", "input"), ("how to come by it", "how")];
    table(&mut page, "What would settle the rest", &wanted, of("measurements"));
    page
}
