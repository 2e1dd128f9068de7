//! The examples as a shell sees them: what they print and how they exit.
#![cfg(all(feature = "jiff", feature = "serde", feature = "svg"))]
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

#[path = "common/program.rs"]
mod program;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use program::{built, lines, run};
use serde_json::Value;

#[test]
fn decode_answers_each_kind_with_its_keys() {
    let texts = [
        "205/55R16 91V",
        "LT245/75R17 121/118S LRE",
        "7Jx16 H2 ET45 5x112 57.1",
        "5x4.5in",
        "M14x1.5",
        "91",
        "H",
    ];
    let output = run("decode", &[&["--json"], &texts[..]].concat(), "");
    assert_eq!(output.status.code(), Some(0));
    let answers = lines(&output);
    let expected = [
        (
            "tire",
            r#"{"family":"metric","section_width_mm":205,"aspect_ratio":55,"construction":"radial",
            "rim_diameter_in":16,"load_index_single":91,"load_index_dual":null,"load_kg_single":615,
            "speed_symbol":"V","speed_kmh":240,"load_version":null,"section_height_mm":113,
            "overall_diameter_mm":{"min":625.22,"nominal":632,"max":641.04},"measuring_rim_in":6.5,
            "section_width_on_measuring_rim_mm":214,"rolling_circumference_mm":1927.6,
            "rim_width_range_in":{"min":5.5,"max":7.5,"basis":"estimate"}}"#,
        ),
        ("tire", r#"{"family":"lt_metric","load_index_dual":118,"load_kg_dual":1320,"load_kg_single":1450}"#),
        (
            "wheel",
            r#"{"rim_width_in":7,"rim_diameter_in":16,"contour":"J","inset_mm":45,"bolt_circle":"5x112",
            "bore_mm":57.1,"specified_diameter_mm":405.6,"backspacing_mm":146.6}"#,
        ),
        (
            "bolt_circle",
            r#"{"count":5,"diameter_mm":114.3,"adjacent_mm":67.183854,"longest_chord_mm":108.70576}"#,
        ),
        ("thread", r#"{"major_mm":14,"pitch_mm":1.5,"stress_area_mm2":124.545545}"#),
        ("load_index", r#"{"kg":615,"lb":1356}"#),
        ("speed_symbol", r#"{"kmh":210,"mph":130}"#),
    ];
    assert_eq!(answers.len(), expected.len());
    for ((answer, text), (kind, facts)) in answers.iter().zip(texts).zip(expected) {
        assert_eq!(answer["input"], text);
        assert_eq!(answer["kind"], kind);
        let facts: Value = serde_json::from_str(facts).unwrap();
        for (key, value) in facts.as_object().unwrap() {
            assert_eq!(&answer[key], value, "{text}: {key}");
        }
    }
}

#[test]
fn decode_reads_lines_and_points_at_what_is_wrong() {
    let output = run("decode", &["--json"], "5x112\n5x57\n\n");
    assert_eq!(output.status.code(), Some(1));
    let answers = lines(&output);
    assert_eq!(answers.len(), 3);
    assert_eq!(answers[0]["canonical"], "5x112");
    assert_eq!(answers[1]["error"]["kind"], "out_of_range");
    assert_eq!(answers[1]["error"]["span"], serde_json::json!([2, 4]));
    assert_eq!(answers[2]["error"]["kind"], "empty");

    let output = run("decode", &["5x57"], "");
    assert!(String::from_utf8_lossy(&output.stdout).contains("\n  ^^ bolt circle"));
}

#[test]
fn decode_tells_alternatives_suggestions_and_the_units_asked_for() {
    let texts =
        ["7-16", "2725", "BS 4.5", "4x98 4x108", "C/B/71 dB", "KBA 45678", "ET 35", "cone 60", "CB 57,1"];
    let output = run("decode", &[&["--json"], &texts[..]].concat(), "");
    assert_eq!(output.status.code(), Some(0));
    let answers = lines(&output);
    let kinds: Vec<_> = answers.iter().map(|answer| answer["kind"].as_str().unwrap()).collect();
    let expected =
        ["tire", "date_code", "backspacing", "dual_drilling", "label", "approval", "inset", "seat", "bore"];
    assert_eq!(kinds, expected);
    assert_eq!(answers[0]["also"][0]["kind"], "wheel");
    assert!(answers[0]["also"][0]["when"].as_str().unwrap().starts_with("a rim if"));
    assert!(answers[1]["when"].is_string() && answers[1]["also"].as_array().unwrap().is_empty());
    assert_eq!(answers[2]["backspacing_mm"], 114.3);
    assert_eq!(answers[3]["diameters_mm"], serde_json::json!([98, 108]));

    let output = run("decode", &["--json", "205 55 16"], "");
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(lines(&output)[0]["suggestions"], serde_json::json!(["205/55R16"]));

    let people = |units: &str| {
        let output = run("decode", &["--units", units, "ET 35"], "");
        String::from_utf8_lossy(&output.stdout).into_owned()
    };
    assert!(people("metric").contains("35 mm\n"), "{}", people("metric"));
    assert!(people("us").contains("1.38 in\n"), "{}", people("us"));
    assert!(people("both").contains("35 mm = 1.38 in\n"), "{}", people("both"));
    assert_eq!(run("decode", &["--units", "furlongs"], "").status.code(), Some(2));
    let help = run("decode", &["--help"], "");
    assert!(help.status.success() && String::from_utf8_lossy(&help.stdout).starts_with("decode [--json]"));
}

#[test]
fn misuse_exits_with_two() {
    assert_eq!(run("decode", &["--xml"], "").status.code(), Some(2));
    assert_eq!(run("draw", &["front", "left"], "").status.code(), Some(2));
    assert_eq!(run("assess", &[], "").status.code(), Some(2));
    assert_eq!(run("assess", &["a.json", "b.json"], "").status.code(), Some(2));
    assert_eq!(run("assess", &["a.json", "--loud"], "").status.code(), Some(2));
}

#[test]
fn assess_exits_with_zero_whatever_the_verdict_and_two_for_a_bad_file() {
    let van = "examples/scenarios/one-tonne-panel-van.json";
    let output = run("assess", &[van, "--json"], "");
    assert_eq!(output.status.code(), Some(0));
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(report["overall"], "beyond");

    let output = run("assess", &[van, "--summary"], "");
    assert_eq!(output.status.code(), Some(0));
    let summary = String::from_utf8_lossy(&output.stdout);
    assert!(summary.starts_with("BEYOND: ") && summary.lines().count() <= 15, "{summary}");
    assert_eq!(run("assess", &[van, "--summary", "--json"], "").status.code(), Some(2));

    let text = std::fs::read_to_string(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/examples/scenarios/one-tonne-panel-van.json"
    ));
    let path = std::env::temp_dir().join(format!("beadseat-bad-{}.json", std::process::id()));
    std::fs::write(&path, text.unwrap().replacen("\"max_load_kg\": 1650", "\"max_load_kg\": -1650", 1))
        .unwrap();
    let output = run("assess", &[path.to_str().unwrap()], "");
    std::fs::remove_file(&path).unwrap();
    assert_eq!(output.status.code(), Some(2));
    let message = String::from_utf8_lossy(&output.stderr);
    assert!(
        message.contains("at vehicle.front.max_load_kg, line 10, column 26: max_load_kg -1650 kg"),
        "{message}"
    );
    assert!(output.stdout.is_empty());
}

#[test]
fn assess_explains_how_a_number_came_about() {
    let wagon = "examples/scenarios/field-survey-wagon.json";
    let said = |arguments: &[&str]| {
        let output = run("assess", arguments, "");
        assert_eq!(output.status.code(), Some(0), "{arguments:?}");
        String::from_utf8(output.stdout).unwrap()
    };
    let diameter = said(&["--explain", "overall_diameter", wagon]);
    assert_eq!(diameter, said(&[wagon, "--explain", "overall_diameter"]));
    let words = diameter.split_whitespace().collect::<Vec<_>>().join(" ");
    for line in [
        "front overall diameter (move) ",
        "rear overall diameter (finding) ",
        "section height H of the proposed 225/45R17 = round(225 × 45 / 100) = 101 mm",
        "overall diameter D of the proposed 225/45R17 = 432 + 2 × 101 = 634 mm, source as in 3 ",
        "= 113 mm, UN R30 / UN R54, §6.1.2, §6.1.5 (from memory)",
        "change of overall diameter = (634 − 632) / 632 × 100 = 0.3164557 %",
        "Result: 0.3164557 %, at least -3 and at most 3 %, margin = ",
    ] {
        assert!(words.contains(line), "no {line:?} in\n{diameter}");
    }
    let load = said(&["--explain", "tire_load@rear", "--units", "us", wagon]);
    assert!(load.starts_with("rear tire load (finding)\n") && load.contains(" kg (1477.1 lb)"), "{load}");
    assert_eq!(load.matches("(finding)").count(), 1, "{load}");
    let page = said(&["--explain", "odometer", "--markdown", wagon]);
    assert!(
        page.starts_with("## front odometer (effect)\n\n1. nominal section width of 205/55R16 = "),
        "{page}"
    );
    let all = said(&["--explain", "all", wagon]);
    assert!(all.lines().all(|line| line.chars().count() <= 80), "{all}");
    let titles = |kind: &str| all.lines().filter(|line| line.ends_with(kind)).count();
    let json: Value = serde_json::from_str(&said(&["--json", wagon])).unwrap();
    let rows =
        |list: &str, kind: &str| assert_eq!(titles(kind), json[list].as_array().unwrap().len(), "{list}");
    rows("checks", " (finding)");
    rows("moves", " (move)");
    rows("effects", " (effect)");
    assert_eq!(said(&["--explain", "odometer@rear", wagon]), "nothing of this was found there\n");

    for wrong in [
        &["--explain", "speed", wagon][..],
        &["--explain", wagon],
        &["--explain", "tire_load", "--json", wagon],
    ] {
        let output = run("assess", wrong, "");
        assert_eq!(output.status.code(), Some(2), "{wrong:?}");
        assert!(output.stdout.is_empty() && !output.stderr.is_empty(), "{wrong:?}");
    }
}

#[test]
fn draw_puts_the_verdict_of_a_corner_above_its_drawing() {
    let van = "examples/scenarios/one-tonne-panel-van.json";
    let output = run("draw", &[van, "front", "right"], "");
    assert_eq!(output.status.code(), Some(0));
    let sheet = String::from_utf8_lossy(&output.stdout);
    assert!(sheet.starts_with("<svg ") && sheet.trim_end().ends_with("</svg>"), "{sheet}");
    // The words are those of the report, the figures those of the two sizes on their rims.
    for text in [
        "<title>front right, beyond by tire load: the tire is overloaded",
        ". At worst the shoulder 17.77 mm into the frame rail at 38° inner lock",
        ">−17.77 mm at worst,<",
        ">1 strut tube<",
        ">2 frame rail<",
        ">3 sway bar<",
        ">inset 55 (was 68)<",
    ] {
        assert!(sheet.contains(text), "no {text:?}");
    }

    let bare = r#"{"vehicle":{"kind":"truck","front":{}},"original":{},"proposed":{"front":{"tire":"205/55R16","wheel":"7Jx16"}}}"#;
    let path = std::env::temp_dir().join(format!("beadseat-bare-{}.json", std::process::id()));
    std::fs::write(&path, bare).unwrap();
    let output = run("draw", &[path.to_str().unwrap()], "");
    std::fs::remove_file(&path).unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
    let message = String::from_utf8_lossy(&output.stderr);
    assert!(message.starts_with("the front left corner cannot be drawn: not known: "), "{message}");
}

/// What is said at the head of a drawing, and whose vehicle it is, is said to its end.
#[test]
fn a_drawing_cuts_no_text_of_a_scenario() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut drawn = 0;
    for entry in fs::read_dir(root.join("examples/scenarios")).unwrap() {
        let path = entry.unwrap().path();
        for corner in [["front", "left"], ["front", "right"], ["rear", "left"], ["rear", "right"]] {
            let output = run("draw", &[path.to_str().unwrap(), corner[0], corner[1], "--units", "both"], "");
            assert_eq!(output.status.code(), Some(0), "{path:?}");
            let sheet = String::from_utf8(output.stdout).unwrap();
            assert!(!sheet.contains('…'), "{path:?} {corner:?}");
            drawn += 1;
        }
    }
    assert!(drawn >= 28);
}

/// A trailer, a truck on duals, a motorcycle and a vehicle of which nothing is known but four designations are drawn from
/// what there is: no position is told that was not judged.
#[test]
fn draw_needs_neither_steering_nor_travel() {
    let bare = r#"{ "vehicle": {},
        "original": { "front": { "tire": "205/55R16", "wheel": "6.5Jx16 ET46" }, "rear": "same" },
        "proposed": { "front": { "tire": "225/45R17", "wheel": "7.5Jx17 ET42" }, "rear": "same" } }"#;
    let path = written("designations.json", bare);
    let bare = path.to_str().unwrap();
    for (file, corner, said) in [
        ("examples/scenarios/tandem-boat-trailer.json", "front", ">inner gap "),
        ("examples/scenarios/regional-truck-on-duals.json", "front", ">outer gap "),
        ("examples/scenarios/regional-truck-on-duals.json", "rear", ">tire outer face 331 (was 310)<"),
        ("examples/scenarios/parish-courier-motorcycle.json", "rear", ">nominal width 160 (was 150)<"),
        ("examples/scenarios/parish-courier-motorcycle.json", "front", "<title>front, "),
        (bare, "front", ">tire outer face 70.5 (was 61)<"),
        (bare, "rear", ">inset 42 (was 46)<"),
    ] {
        let output = run("draw", &[file, corner], "");
        assert_eq!(output.status.code(), Some(0), "{file} {corner}");
        let sheet = String::from_utf8(output.stdout).unwrap();
        assert!(sheet.contains(said), "no {said} of {file}");
        assert!(!sheet.contains("least clearance") && sheet.contains("straight ahead, at ride height"));
    }
    fs::remove_file(path).unwrap();
}

/// What stands between two pieces of a text.
fn between<'a>(text: &'a str, from: &str, to: &str) -> Option<&'a str> {
    text.split_once(from)?.1.split_once(to).map(|(found, _)| found)
}

/// The plan of every corner is drawn in the position that is told at its head.
#[test]
fn a_drawing_has_one_position() {
    let mut told = 0;
    for name in ["field-survey-wagon", "field-survey-wagon-at-lock", "one-tonne-panel-van", "rangers-pickup"]
    {
        let file = format!("examples/scenarios/{name}.json");
        for corner in [["front", "left"], ["front", "right"], ["rear", "left"], ["rear", "right"]] {
            let output = run("draw", &[&file, corner[0], corner[1]], "");
            let sheet = String::from_utf8(output.stdout).unwrap();
            let head = between(&sheet, "<title>", "</title>").unwrap();
            let Some((_, head)) = head.split_once(". At worst ") else { continue };
            let steer = between(head, " at ", "° ").unwrap_or_default();
            let plan = between(&sheet, ">Plan from above, ", "<").unwrap();
            assert!(
                plan.starts_with(&format!("steered {steer}° as"))
                    || plan.starts_with("straight ahead") && steer.is_empty(),
                "{head}: {plan}"
            );
            let travel = head.rsplit(", ").next().unwrap();
            let travel = travel.replace(" jounce", " in jounce").replace(" rebound", " in rebound");
            assert!(plan.ends_with(&travel), "{head}: {plan}");
            told += 1;
        }
    }
    assert_eq!(told, 12);
}

#[test]
fn inertia_prints_what_the_wheels_are_felt_as() {
    let output = run("inertia", &[], "");
    assert_eq!(output.status.code(), Some(0));
    let text = String::from_utf8_lossy(&output.stdout);
    assert!(text.starts_with("Invented wheels"), "{text}");
    assert!(text.contains("% acceleration on the same pull"), "{text}");
}

#[test]
fn clamp_load_follows_a_torque_to_its_end() {
    let output = run("clamp_load", &[], "");
    assert_eq!(output.status.code(), Some(0));
    let text = String::from_utf8_lossy(&output.stdout);
    // 140 N·m over the lever of a 60° cone at a friction of 0.14 is 34.75 kN; 12 mm of thread is 8 turns.
    for line in ["preload         34.75 ", "turns without    8.00 ", "order          1 3 5 2 4"] {
        assert!(text.contains(line), "no {line:?} in\n{text}");
    }
}

/// Every example says how it is called and what for, and stands in the table of README.md.
#[test]
fn every_example_has_help() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let readme = fs::read_to_string(root.join("README.md")).unwrap();
    let mut seen = 0;
    for entry in fs::read_dir(root.join("examples")).unwrap() {
        let path = entry.unwrap().path();
        let is_example =
            path.extension().is_some_and(|extension| extension == "rs") || path.join("main.rs").exists();
        if !is_example {
            continue;
        }
        let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
        let output = run(&name, &["--help"], "");
        assert_eq!(output.status.code(), Some(0), "{name}");
        let help = String::from_utf8_lossy(&output.stdout);
        assert!(help.starts_with(&name) && help.lines().count() >= 3, "{help}");
        let usage = help.lines().next().unwrap();
        // In a table a bar stands behind a stroke.
        let row = format!("| `{}` |", usage.replace('|', "\\|"));
        assert!(readme.contains(&row), "no {row} in README.md");
        seen += 1;
    }
    assert!(seen >= 8);
}

#[test]
fn units_are_those_that_are_asked_for() {
    let wagon = "examples/scenarios/field-survey-wagon.json";
    let said = |example: &str, arguments: &[&str]| {
        let output = run(example, &[&[wagon], arguments].concat(), "");
        assert_eq!(output.status.code(), Some(0), "{example} {arguments:?}");
        String::from_utf8(output.stdout).unwrap()
    };
    let metric = said("assess", &["--units", "metric"]);
    assert_eq!(metric, said("assess", &[]));
    let us = said("assess", &["--units", "us"]);
    for line in [
        "  overall diameter       24.882 in   24.961 in  0.079 in larger",
        "min 0.25 in",
        "0.641 in from the rim",
    ] {
        assert!(us.contains(line), "no {line:?} in\n{us}");
    }
    // What a source says stays as it says it.
    let (own, _) = us.split_once("\nCautions").unwrap();
    for unit in [" mm", " kg", " km/h"] {
        assert!(!own.contains(unit), "{unit} in\n{own}");
    }
    let both = said("assess", &["--units", "both"]);
    let (table, _) = both.split_once("\nCautions").unwrap();
    assert!(table.contains("632 mm") && table.contains("24.882 in") && table.contains("16.28 mm (0.641 in)"));
    assert!(both.lines().all(|line| line.chars().count() <= 80), "{both}");
    // For programs there is one.
    assert_eq!(said("assess", &["--json"]), said("assess", &["--json", "--units", "us"]));
    assert!(said("draw", &["--units", "us"]).contains("Lengths in inches."));
    let pickup = run("measure", &["examples/scenarios/rangers-pickup.json", "--units", "us"], "");
    let list = String::from_utf8_lossy(&pickup.stdout);
    assert!(list.contains("write at    vehicle.rear.space.upper_clearance_in\n"), "{list}");
    for arguments in [&[wagon, "--units"][..], &[wagon, "--units", "furlongs"]] {
        assert_eq!(run("assess", arguments, "").status.code(), Some(2));
    }
}

/// What is written for programs, as a spreadsheet and as a page.
#[test]
fn a_spreadsheet_and_a_page_hold_what_the_report_does() {
    for name in ["field-survey-wagon", "one-tonne-panel-van", "rangers-pickup"] {
        let file = format!("examples/scenarios/{name}.json");
        let said = |flag: &str| String::from_utf8(run("assess", &[&file, flag], "").stdout).unwrap();
        let json: Value = serde_json::from_str(&said("--json")).unwrap();
        let list = |key: &str| json[key].as_array().unwrap();

        let sheet = said("--csv");
        let mut reader = csv::Reader::from_reader(sheet.as_bytes());
        let columns = reader.headers().unwrap().clone();
        let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
        let expected = ["moves", "checks", "effects"].map(|key| list(key).len());
        assert_eq!(rows.len(), expected.iter().sum::<usize>(), "{name}");
        let cell = |row: &csv::StringRecord, column: &str| {
            row[columns.iter().position(|name| name == column).unwrap()].to_owned()
        };
        let all = ["moves", "checks", "effects"].map(|key| list(key).clone()).concat();
        for (row, entry) in rows.iter().zip(&all) {
            for key in ["id", "where", "verdict", "reason", "todo"] {
                assert_eq!(cell(row, key), entry[key].as_str().unwrap_or_default(), "{name}");
            }
            for key in ["measured", "nominal", "margin", "before", "after", "change"] {
                let told = entry[key].as_str().map_or(entry[key].to_string(), str::to_owned);
                assert_eq!(cell(row, key), if entry[key].is_null() { "" } else { &told }, "{name} {key}");
            }
        }

        let page = said("--markdown");
        let in_words = |text: &str| text.replace('_', " ");
        assert!(page.starts_with("# "), "{page}");
        let of = |kind: &str| page.lines().filter(|line| line.starts_with(kind)).count();
        let tables = page.lines().filter(|line| line.starts_with("| ---")).count();
        let listed = ["setups", "moves", "checks", "approaches", "pressures", "effects", "measurements"];
        let listed: usize = listed.iter().map(|key| list(key).len()).sum();
        assert_eq!(of("| "), listed + 2 * tables, "{name}");
        assert_eq!(of("* "), list("cautions").len(), "{name}");
        for check in list("checks") {
            let row = format!(
                "| {} | {} |",
                in_words(check["where"].as_str().unwrap()),
                in_words(check["id"].as_str().unwrap())
            );
            assert!(page.contains(&row), "no {row}");
        }
    }
}

#[test]
fn what_is_assumed_is_to_be_confirmed() {
    let scenario = r#"{ "vehicle": { "kind": "passenger", "top_speed_kmh": 180 }, "original": {}, "proposed": { "front": {
        "tire": "205/55R16 91V", "wheel": "6.5Jx16" } }, "sources": [{ "of": "vehicle.top_speed_mph", "from": "assumed" }] }"#;
    let file = std::env::temp_dir().join(format!("beadseat-{}-assumed.json", std::process::id()));
    std::fs::write(&file, scenario).unwrap();
    let told = |name: &str, options: &[&str]| {
        let arguments: Vec<&str> =
            [file.to_str().unwrap()].into_iter().chain(options.iter().copied()).collect();
        String::from_utf8(run(name, &arguments, "").stdout).unwrap()
    };
    let words = "confirm what is assumed: vehicle.top_speed_kmh";
    assert!(told("measure", &[]).contains("  vehicle.top_speed_kmh: assumed; on it rest: speed symbol\n"));
    for options in [&[][..], &["--summary"], &["--csv"], &["--json"]] {
        assert!(told("assess", options).contains(words), "{options:?}: {}", told("assess", options));
    }
    assert!(told("assess", &["--markdown"]).contains("Where values come from"));
    let search = scenario.replace(
        r#""original": {}"#,
        r#""original": { "front": { "tire": "205/55R16 91V", "wheel": "6.5Jx16 ET46" } }"#,
    );
    std::fs::write(&file, search).unwrap();
    assert!(told("search", &["--top", "1"]).contains("Assumed; confirm it first: vehicle.top_speed_kmh\n"));
    let first: Value =
        serde_json::from_str(told("search", &["--top", "1", "--json"]).lines().next().unwrap()).unwrap();
    assert_eq!(
        (&first["assumed"][0], &first["verdict"]),
        (&"vehicle.top_speed_kmh".into(), &"marginal".into())
    );
    std::fs::remove_file(&file).unwrap();
}

#[test]
fn measure_prints_what_to_take_and_exits_as_assess_does() {
    let output = run("measure", &["examples/scenarios/rangers-pickup.json"], "");
    assert_eq!(output.status.code(), Some(0));
    let text = String::from_utf8_lossy(&output.stdout);
    let first = "\n 1. proposed rear seat: look at the seats in the wheel, or in its maker's papers\n";
    assert!(text.contains(first), "{text}");
    for line in [
        "      write at    proposed.rear.seat\n      settles     centre bore, fastener seat\n",
        "      with        straightedge, tape\n      first       lift the vehicle and take the wheel off\n",
        ". vehicle rear brake caliper face, in mm: wheel off, straightedge",
        "      helps with  brake clearance\n",
        "\nBefore a wheel comes off: The vehicle stands on firm level ground",
    ] {
        assert!(text.contains(line), "no {line:?} in\n{text}");
    }
    let places = text.lines().filter(|line| line.starts_with("      write at")).count();
    assert_eq!(places, 25);

    let output = run("measure", &["examples/scenarios/field-survey-wagon.json"], "");
    assert_eq!(output.status.code(), Some(0));
    assert!(String::from_utf8_lossy(&output.stdout).contains("Nothing is missing"));

    assert_eq!(run("measure", &[], "").status.code(), Some(2));
    assert_eq!(run("measure", &["a.json", "--loud"], "").status.code(), Some(2));
    let output = run("measure", &["examples/no-such-file.json"], "");
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty() && !output.stderr.is_empty());
}

#[test]
fn bolt_circle_tells_what_a_tape_and_a_caliper_can_tell() {
    let output = run("bolt_circle", &[], "");
    assert_eq!(output.status.code(), Some(0));
    let text = String::from_utf8_lossy(&output.stdout);
    // 66.5 ± 1.1 mm and 65.85 ± 0.2 mm between centres, over sin 36°.
    for line in [
        "113.14 ± 1.87 mm, so 5x112 or 5x114.3 or 5x115",
        "112.03 ± 0.34 mm, so 5x112\n",
        "5x114.3   every hole off by 1.150 mm, the worst by 2.187 mm",
        "2  x  -53.2592  y   17.3050",
    ] {
        assert!(text.contains(line), "no {line:?} in\n{text}");
    }
}

/// A vehicle of which four designations and three gaps are known.
const FOUR_AND_THREE: &str = r#"{
    "vehicle": { "kind": "passenger", "front": { "space":
        { "inner_clearance_mm": 18, "outer_clearance_mm": 30, "upper_clearance_mm": 55 } } },
    "original": { "front": { "tire": "205/55R16 91V", "wheel": "6.5Jx16 H2 ET46 5x112 57.1" } },
    "proposed": { "front": { "tire": "225/45R17 94W XL", "wheel": "7.5Jx17 H2 ET42 5x112 66.6" } } }"#;

fn written(name: &str, text: &str) -> PathBuf {
    let path = std::env::temp_dir().join(format!("beadseat-{}-{name}", std::process::id()));
    fs::write(&path, text).unwrap();
    path
}

const WAGON: &str = "examples/scenarios/field-survey-wagon.json";

#[test]
fn search_ranks_what_fits_with_the_stated_keys() {
    let wanted = [WAGON, "--rim", "17", "--width", "215", "--top", "3", "--json"];
    let output = run("search", &wanted, "");
    assert_eq!(output.status.code(), Some(0));
    let lines = lines(&output);
    assert_eq!(lines.len(), 3);
    for (n, line) in lines.iter().enumerate() {
        assert_eq!(line["rank"], n + 1);
        assert!(line["score"].is_number() && line["not_judged"].is_array());
        assert_eq!((&line["listed"], &line["expectation"]), (&true.into(), &"meets".into()), "{line}");
        assert_eq!(line["measure_next"].is_null(), n > 0 || line["measure_next"]["path"].is_null(), "{line}");
        for key in ["id", "where", "value", "unit"] {
            assert!(!line["least_margin"][key].is_null(), "{key} of {line}");
        }
        for axle in line["axles"].as_array().unwrap() {
            let [least, best, most] =
                ["min", "best", "max"].map(|key| axle["inset_mm"][key].as_f64().unwrap());
            assert!(least <= best && best <= most && best.fract() == 0.0, "{axle}");
            assert!(axle["binding"]["min"].is_string() && axle["binding"]["max"].is_string());
            assert!(axle["needs"]["load_index"].as_u64() >= Some(91));
        }
    }
    let scores: Vec<_> = lines.iter().map(|line| line["score"].as_f64().unwrap()).collect();
    assert!(scores.windows(2).all(|pair| pair[0] >= pair[1]), "{scores:?}");
    let csv = run("search", &[WAGON, "--rim", "17", "--width", "215", "--top", "3", "--csv"], "");
    assert_eq!(String::from_utf8_lossy(&csv.stdout).lines().count(), 1 + 2 * 3);
}

#[test]
fn search_pairs_axles_whose_tires_differ() {
    let lines = lines(&run("search", &["examples/scenarios/parish-courier-motorcycle.json", "--json"], ""));
    assert_eq!(lines.len(), 10);
    for line in &lines {
        assert_ne!(line["axles"][0]["tire"], line["axles"][1]["tire"], "{line}");
    }
    // Those of tires that are alike are none of theirs.
    assert!(lines[0].as_object().unwrap().contains_key("near_misses") && lines[0]["near_misses"].is_null());
    let text = run("search", &["examples/scenarios/parish-courier-motorcycle.json", "--top", "1"], "");
    let text = String::from_utf8_lossy(&text.stdout).into_owned();
    assert!(text.contains("\nNear misses are not looked for where tires differ"), "{text}");
}

#[test]
fn search_says_what_it_does_not_look_at() {
    let file = "examples/scenarios/timber-truck-with-tag-axle.json";
    let text = String::from_utf8(run("search", &[file, "--top", "1"], "").stdout).unwrap();
    assert!(text.contains("\nNot looked at: tag axle; assess with what you choose"), "{text}");
    let output = run("search", &[file, "--top", "1", "--json"], "");
    assert_eq!(lines(&output)[0]["not_looked_at"], "tag axle");
    assert!(String::from_utf8_lossy(&output.stderr).contains("not looked at: tag axle"));
    let output = run("search", &["examples/scenarios/one-tonne-panel-van.json", "--top", "1", "--json"], "");
    assert_eq!(lines(&output)[0]["not_looked_at"], "");
}

#[test]
fn search_answers_from_four_designations_and_three_gaps() {
    let path = written("four.json", FOUR_AND_THREE);
    let output = run("search", &[path.to_str().unwrap(), "--top", "2"], "");
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    assert_eq!(output.status.code(), Some(0));
    assert!(text.contains("\n  1. ") && text.contains("not judged: "), "{text}");
    assert!(text.contains("Measure next, it narrows this most: "), "{text}");
    fs::remove_file(path).unwrap();
}

/// The verdict stands beside every candidate, also where no margin is known.
#[test]
fn search_tells_the_verdict_of_each() {
    let unknown = r#"{ "vehicle": {}, "original": { "front": { "tire": "185/70R14 88T", "wheel": "5.5Jx14 ET40" } },
        "proposed": {} }"#;
    for (name, text, margin) in
        [("gaps.json", FOUR_AND_THREE, "least margin "), ("unknown.json", unknown, "no margin is known\n")]
    {
        let path = written(name, text);
        let output = run("search", &[path.to_str().unwrap(), "--rim", "14", "--top", "2"], "");
        let text = String::from_utf8_lossy(&output.stdout).into_owned();
        assert_eq!(text.matches(&format!("\n     marginal: {margin}")).count(), 2, "{text}");
        fs::remove_file(path).unwrap();
    }
}

#[test]
fn search_explains_one_setup_and_what_would_admit_it() {
    let why = |wanted: &str, json: &[&str]| run("search", &[&[WAGON, "--why", wanted], json].concat(), "");
    let text = String::from_utf8_lossy(&why("255/45R17 on 9Jx17 ET20", &[]).stdout).into_owned();
    assert!(text.contains("outer_clearance: beyond") && text.contains("overall_diameter: beyond"), "{text}");
    let near = String::from_utf8_lossy(&why("225/45R17 94W XL on 7.5Jx17 H2 ET54", &[]).stdout).into_owned();
    assert!(near.contains("What would do: a spacer of "), "{near}");
    let checks = lines(&why("225/45R17 94W XL on 7.5Jx17 H2 ET42", &["--json"]));
    assert!(checks.iter().any(|check| check["id"] == "inner_clearance" && check["verdict"] == "within"));
}

#[test]
fn search_judges_a_list_and_loses_no_line_of_it() {
    let list = "key,tire,wheel,wheel_rating_kg\n\
                A,225/45R17 94W XL,,\nB,,7.5Jx17 H2 ET42 5x112 66.6,690\n\
                C,225/45R31,,\nD,,banana,\nE,195/65R15 91H,,\nF,,7Jx17 ET40,heavy\n";
    let path = written("list.csv", list);
    let output = run("search", &[WAGON, "--from", path.to_str().unwrap()], "");
    let lines = lines(&output);
    let unread: Vec<_> = lines.iter().filter(|line| line["why"].is_string()).collect();
    let places: Vec<_> = unread.iter().map(|line| (line["line"].as_u64(), line["column"].as_str())).collect();
    assert_eq!(
        places,
        [(Some(4), Some("tire")), (Some(5), Some("wheel")), (Some(7), Some("wheel_rating_kg"))]
    );
    let pairs: Vec<_> = lines.iter().filter(|line| line["verdict"].is_string()).collect();
    let keys: Vec<_> =
        pairs.iter().map(|pair| (pair["tire_key"].as_str(), pair["wheel_key"].as_str())).collect();
    assert_eq!(keys, [(Some("A"), Some("B")), (Some("A"), Some("F"))]);
    assert!(pairs.iter().all(|pair| pair["margins"].is_array() && pair["unknown"].is_array()));
    fs::remove_file(path).unwrap();
}

/// Of two pairs of which neither is beyond, the one that was judged comes before the one of which much is not known.
#[test]
fn search_ranks_what_was_judged_before_what_was_not() {
    let judged = ",7.5Jx17 H2 ET50 5x112 57.1,690\n";
    let unjudged = ",7.5Jx17 H2,\n";
    for wheels in [[judged, unjudged], [unjudged, judged]] {
        let text = format!("tire,wheel,wheel_rating_kg\n225/45R17 94W XL,,\n{}", wheels.concat());
        let path = written("ranked.csv", &text);
        let output = run("search", &[WAGON, "--top", "2", "--from", path.to_str().unwrap()], "");
        let pairs: Vec<_> = lines(&output).into_iter().filter(|line| line["verdict"].is_string()).collect();
        assert_eq!(pairs.len(), 2, "{text}");
        assert!(pairs.iter().all(|pair| pair["verdict"] == "marginal"), "{pairs:?}");
        let unknown: Vec<_> = pairs.iter().map(|pair| pair["unknown"].as_array().unwrap().len()).collect();
        assert!(unknown[0] < unknown[1], "{pairs:?}");
        fs::remove_file(path).unwrap();
    }
}

/// A list with the designations as people write them, and everything that a spreadsheet does to a file.
#[test]
fn search_reads_lists_as_people_write_them() {
    let rows = [
        // columns, cells, how many pairs, the cells that are not read, and what goes with nothing
        ("\u{feff}Tire,WHEEL,key", "225/45 R17 94W XL,7.5 J x 17 H2 ET 42 5x112 66.6,A", 1, "", ""),
        ("tire,wheel\r", "225/45ZR17 94W XL,17x7.5 +42 5x112\r", 1, "", ""),
        ("tire,wheel", "\"225/45R17\n94W XL\",7.5Jx17 ET42", 1, "", ""),
        ("key,tire,wheel", "A,225/45R17 94W XL,7.5Jx17 ET42\nA,225/45R17 94W XL,7.5Jx17 ET45", 4, "", ""),
        ("price,wheel", "90,7.5Jx17 ET42", 0, "", "2 wheel"),
        ("tire,wheel", "225/45R17\n,7.5Jx17 ET42\n195/65R15", 1, "", "4 tire"),
        ("tire,wheel", "7.5Jx17,225/45R17", 0, "2 tire,2 wheel", ""),
        (
            "tire,wheel,pressure_kpa",
            "225/45R17,7.5Jx17,30\n225/45R17,,1e9",
            2,
            "2 pressure_kpa,3 pressure_kpa",
            "",
        ),
        (
            "tire,wheel,wheel_rating_kg",
            "225/45R17,7.5Jx17,NaN\n,,5",
            1,
            "2 wheel_rating_kg,3 wheel_rating_kg,3 tire",
            "",
        ),
        ("tire", "", 0, "", ""),
        ("tire,wheel", "335/25R17,5Jx17", 0, "", "2 tire,2 wheel"),
    ];
    for (columns, cells, pairs, unread, alone) in rows {
        let path = written("hostile.csv", &format!("{columns}\n{cells}\n"));
        let output = run("search", &[WAGON, "--from", path.to_str().unwrap()], "");
        assert_eq!(output.status.code(), Some(0), "{cells}: {}", String::from_utf8_lossy(&output.stderr));
        let lines = lines(&output);
        let of = |is: &dyn Fn(&Value) -> bool| {
            let told = lines.iter().filter(|line| is(line));
            let told = told.map(|line| format!("{} {}", line["line"], line["column"].as_str().unwrap()));
            told.collect::<Vec<_>>().join(",")
        };
        assert_eq!(
            lines.iter().filter(|line| line["verdict"].is_string()).count(),
            pairs,
            "{cells}: {lines:?}"
        );
        assert_eq!(of(&|line| line["why"].is_string()), unread, "{cells}");
        assert_eq!(of(&|line| line["pairs"] == 0), alone, "{cells}");
        // The same in a table.
        let output = run("search", &[WAGON, "--csv", "--from", path.to_str().unwrap()], "");
        let mut table = csv::Reader::from_reader(output.stdout.as_slice());
        let records: Vec<csv::StringRecord> = table.records().map(Result::unwrap).collect();
        assert_eq!(records.len(), lines.len(), "{cells}");
        // The best of them.
        let output = run("search", &[WAGON, "--top", "1", "--from", path.to_str().unwrap()], "");
        let best = self::lines(&output).iter().filter(|line| line["verdict"].is_string()).count();
        assert_eq!(best, pairs.min(1), "{cells}");
        fs::remove_file(path).unwrap();
    }
    for (list, message) in [
        ("", "must name a column"),
        ("size,wheels\n1,2\n", "must name a column"),
        ("tire,wheel,Tire\n1,2,3\n", "two columns `tire`"),
    ] {
        let path = written("refused.csv", list);
        let output = run("search", &[WAGON, "--from", path.to_str().unwrap()], "");
        assert_eq!(output.status.code(), Some(2), "{list}");
        assert!(String::from_utf8_lossy(&output.stderr).contains(message), "{list}");
        fs::remove_file(path).unwrap();
    }
}

/// A list that is stopped leaves whole lines and says where it was stopped.
#[cfg(unix)]
#[test]
fn search_stops_where_it_is_told_to() {
    use std::io::{BufRead, BufReader, Read};
    // Millions of pairs, which take minutes.
    let many = |cells: &str| format!("{cells}\n").repeat(2000);
    let list = format!("tire,wheel\n{}{}", many("225/45R17 94W XL,"), many(",7.5Jx17 H2 ET42 5x112 57.1"));
    let path = written("endless.csv", &list);
    let mut child = Command::new(built("search"))
        .args([WAGON, "--from", path.to_str().unwrap()])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut output = BufReader::new(child.stdout.take().unwrap());
    let mut first = String::new();
    output.read_line(&mut first).unwrap();
    let told = Command::new("kill").args(["-INT", &child.id().to_string()]).status().unwrap();
    assert!(told.success());
    let mut rest = String::new();
    output.read_to_string(&mut rest).unwrap();
    let mut message = String::new();
    child.stderr.take().unwrap().read_to_string(&mut message).unwrap();
    assert_eq!(child.wait().unwrap().code(), Some(130), "{message}");
    assert!(message.contains("\nstopped at ") && message.contains(" of 4000000 pairs\n"), "{message}");
    assert!(!message.contains('\r'), "{message}");
    for line in first.lines().chain(rest.lines()) {
        let pair: Value = serde_json::from_str(line).unwrap();
        assert!(pair["verdict"].is_string(), "{line}");
    }
    fs::remove_file(path).unwrap();
}

/// A stop is heard in every walk: one that comes before the scenario is read ends each at once, and nothing that was not
/// walked is told.
#[cfg(unix)]
#[test]
fn search_hears_a_stop_in_every_walk() {
    use std::io::Write;
    use std::os::unix::fs::FileTypeExt;
    let scenario = fs::read(WAGON).unwrap();
    for arguments in [&[][..], &["--json"], &["--staggered"], &["--staggered", "--json"], &["--why", "3"]] {
        let path = std::env::temp_dir().join(format!("beadseat-{}-pipe.json", std::process::id()));
        assert!(Command::new("mkfifo").arg(&path).status().unwrap().success());
        assert!(fs::metadata(&path).unwrap().file_type().is_fifo());
        let child = Command::new(built("search"))
            .arg(&path)
            .args(arguments)
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        // Whoever opens it waits for whoever reads: from then on Ctrl-C is heard.
        let mut pipe = fs::OpenOptions::new().write(true).open(&path).unwrap();
        let told = Command::new("kill").args(["-INT", &child.id().to_string()]).status().unwrap();
        assert!(told.success());
        std::thread::sleep(std::time::Duration::from_millis(200));
        pipe.write_all(&scenario).unwrap();
        drop(pipe);
        let output = child.wait_with_output().unwrap();
        fs::remove_file(&path).unwrap();
        let [text, message] =
            [&output.stdout, &output.stderr].map(|bytes| String::from_utf8_lossy(bytes).into_owned());
        assert_eq!(output.status.code(), Some(130), "{arguments:?}: {message}");
        assert!(message.contains("stopped at 0 of "), "{arguments:?}: {message}");
        assert!(!text.contains("Near misses, ") && !text.contains("would_do"), "{arguments:?}: {text}");
        assert!(!text.contains("Nothing fits"), "{arguments:?}: {text}");
        let is_text = arguments.is_empty() || arguments == ["--staggered"];
        assert_eq!(text.contains("This is not all: stopped at 0 of "), is_text, "{arguments:?}: {text}");
    }
}

/// What a map shows as feasible is beyond nothing, and half a millimetre outside of an end something is.
#[test]
fn search_draws_where_a_tire_may_stand() {
    let van = "examples/scenarios/one-tonne-panel-van.json";
    let pickup = "examples/scenarios/rangers-pickup.json";
    for (file, rim, least) in [(WAGON, "17", "225"), (van, "16", "205"), (pickup, "17", "265")] {
        let path = written("map.svg", "");
        let narrowed =
            ["--rim", rim, "--width", least, "--top", "1", "--json", "--map", path.to_str().unwrap()];
        let output = run("search", &[&[file], &narrowed[..]].concat(), "");
        assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
        let best = &lines(&output)[0]["axles"][0];
        let drawing = fs::read_to_string(&path).unwrap();
        fs::remove_file(path).unwrap();
        assert!(drawing.contains(r#"height="210mm""#) && drawing.contains(r#"width="297mm""#));
        let tire: beadseat::tire::Tire = best["tire"].as_str().unwrap().parse().unwrap();
        assert!(
            drawing.contains(&tire.size().to_string())
                && drawing.contains("best: ")
                && drawing.contains("original: ")
        );

        let scenario: beadseat::scenario::Scenario =
            serde_json::from_str(&fs::read_to_string(file).unwrap()).unwrap();
        let (original, wishes) = (scenario.change().original, beadseat::search::Wishes::new());
        let (vehicle, conditions, limits) = (scenario.vehicle(), scenario.conditions(), scenario.limits());
        let search = beadseat::search::Search::new(vehicle, &original, conditions, limits, &wishes);
        let is_beyond = |width: &str, inset: f64| {
            let like = best["wheel"].as_str().unwrap();
            let size: String = like
                .split(" ET")
                .next()
                .unwrap()
                .chars()
                .skip_while(|c| c.is_ascii_digit() || *c == '.')
                .collect();
            let wheel = format!("{width}{size} ET{inset:.2}").parse().unwrap();
            let proposed = search.completed(tire, wheel);
            let change = beadseat::fitment::Change { original, proposed };
            beadseat::fitment::verdict(vehicle, &change, conditions, limits)
                == beadseat::fitment::Verdict::Beyond
        };
        let mut bars = 0;
        for bar in drawing.lines().filter(|line| line.contains(r#"class="feasible""#)) {
            let of = |key: &str| {
                bar.split(&format!("{key}=\"")).nth(1).unwrap().split('"').next().unwrap().to_owned()
            };
            let [least, most] = ["data-min-mm", "data-max-mm"].map(|key| of(key).parse::<f64>().unwrap());
            let width = of("data-width-in");
            bars += 1;
            for share in [0.0, 0.1, 0.35, 0.5, 0.8, 1.0] {
                assert!(!is_beyond(&width, least + share * (most - least)), "{file} {bar} {share}");
            }
            for (end, by, out) in [(least, of("data-min-by"), -0.5), (most, of("data-max-by"), 0.5)] {
                assert!(by.is_empty() || is_beyond(&width, end + out), "{file} {bar} {by}");
                assert!(by.is_empty() || drawing.contains(&by.replace('_', " ")), "{by}");
            }
        }
        assert!(bars > 0, "{file}");
    }
    let refused = run("search", &[WAGON, "--map", "no such directory/map.svg"], "");
    assert_eq!(refused.status.code(), Some(2));
}

#[test]
fn search_refuses_what_it_cannot_read() {
    for arguments in [
        &[][..],
        &["no such file.json"],
        &[WAGON, WAGON],
        &[WAGON, "--top", "0"],
        &[WAGON, "--top", "many"],
        &[WAGON, "--why", "225/45R17"],
        &[WAGON, "--why", "225/45R17 on banana"],
        &[WAGON, "--keep", "all"],
        &[WAGON, "--width"],
        &[WAGON, "--width", "NaN"],
        &[WAGON, "--from", "no such list.csv"],
        &[WAGON, "--staggered", "--map", "no such directory/map.svg"],
        &["examples/scenarios/parish-courier-motorcycle.json", "--map", "no such directory/map.svg"],
        &[WAGON, "--why", "1", "--map", "no such directory/map.svg"],
        &[WAGON, "--unheard-of"],
    ] {
        let output = run("search", arguments, "");
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        assert!(output.stdout.is_empty() && !output.stderr.is_empty(), "{arguments:?}");
    }
    let help = run("search", &["--help"], "");
    assert_eq!(help.status.code(), Some(0));
    assert!(String::from_utf8_lossy(&help.stdout).contains("examples\n"));
}

#[test]
fn measure_writes_a_scenario_to_fill_in() {
    for kind in ["car", "van", "pickup", "truck", "trailer", "motorcycle"] {
        let output = run("measure", &["--new", kind], "");
        assert_eq!(output.status.code(), Some(0), "{kind}");
        let path = std::env::temp_dir().join(format!("beadseat-new-{kind}-{}.json", std::process::id()));
        fs::write(&path, &output.stdout).unwrap();
        let output = run("measure", &[path.to_str().unwrap()], "");
        fs::remove_file(&path).unwrap();
        assert_eq!(output.status.code(), Some(0), "{kind}: {}", String::from_utf8_lossy(&output.stderr));
        assert!(String::from_utf8_lossy(&output.stdout).contains("proposed"), "{kind}");
    }
    let output = run("measure", &["--new", "tank"], "");
    assert_eq!(output.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&output.stderr).contains("`tank`"));
    assert_eq!(run("measure", &["--new"], "").status.code(), Some(2));
}
