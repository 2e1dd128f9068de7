//! Reads markings off tires and wheels: `decode [--json] [--] [TEXT…]`, or one a line from standard input.
//!
//! Exit code 0 if all could be read, 1 if any could not, 2 for misuse.

use std::io::{BufRead, Write};
use std::process::ExitCode;

use beadseat::marking::{Readings, Suggestion, readings, suggestions};
use beadseat::rim::{Contour, RimDiameter, SeatTaper};
use beadseat::tire::{
    Formation, LoadIndex, RimRange, ServiceDescription, SpeedSymbol, Tire, TireSize,
    grading::Grade,
    identification::{DateCode, IdentificationNumber, ManufactureWeek},
    sidewall::{MoldedLimit, SidewallLine},
};
use beadseat::units::{Length, Ratio};
use beadseat::uom::si::{
    area::square_millimeter, length::millimeter, mass::kilogram, pressure::kilopascal, ratio::ratio,
    velocity::kilometer_per_hour,
};
use beadseat::wheel::{BoltCircle, Thread, Wheel, WheelDate, WheelMark, WheelStamp};
use beadseat::{Excerpt, Marking, MoldedLoad, MoldedPressure, ParseError, Toleranced};
use serde_json::{Map, Value, json};

const HELP: &str = "\
decode [--json] [--] [TEXT...]

Reads markings off tires and wheels, from its arguments or one a line from the standard input: what each is, what it
means and where that is defined. Behind -- everything is a text.

  --json     an object a line for programs

Exit code 0 if all could be read, 1 if any could not, 2 for misuse.
";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    // Behind `--` everything is a text.
    let (options, rest) = match arguments.iter().position(|argument| argument == "--") {
        Some(at) => (&arguments[..at], &arguments[at + 1..]),
        None => (&arguments[..], &[][..]),
    };
    if options.iter().any(|option| option == "--help") {
        print!("{HELP}");
        return ExitCode::SUCCESS;
    }
    let json = options.iter().any(|option| option == "--json");
    if let Some(flag) = options.iter().find(|option| option.starts_with("--") && *option != "--json") {
        eprintln!("unknown option {}\nusage: decode [--json] [--] [TEXT...]", Excerpt(flag));
        return ExitCode::from(2);
    }
    let texts: Vec<&String> = options.iter().filter(|option| *option != "--json").chain(rest).collect();

    let mut out = std::io::stdout().lock();
    let mut all_read = true;
    let mut answer = |text: &str| {
        let found = readings(text);
        all_read &= found.is_ok();
        match (json, found) {
            (true, found) => writeln!(out, "{}", for_programs(text, found)),
            (false, Ok(found)) => writeln!(out, "{}\n{}", found.best().marking(), for_people(&found)),
            (false, Err(error)) => writeln!(out, "{}\n{}", error.show(text), near(text)),
        }
    };
    let done = if texts.is_empty() {
        // Bytes that are not UTF-8 are shown as such and refused by the parsers.
        std::io::stdin().lock().split(b'\n').try_for_each(|line| answer(&String::from_utf8_lossy(&line?)))
    } else {
        texts.iter().try_for_each(|text| answer(text))
    };
    match done {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => {
            eprintln!("{error}");
            ExitCode::from(2)
        }
        _ if all_read => ExitCode::SUCCESS,
        _ => ExitCode::from(1),
    }
}

/// The nearest texts that can be read, for people.
fn near(text: &str) -> String {
    let line = |near: Suggestion| match near.presumes() {
        Some(presumed) => format!("  perhaps: {near}   ({presumed})\n"),
        None => format!("  perhaps: {near}\n"),
    };
    suggestions(text).map(line).collect()
}

fn for_programs(text: &str, found: Result<Readings, ParseError>) -> Value {
    match found {
        Ok(found) => {
            let marking = found.best().marking();
            let mut object = Map::new();
            object.insert("input".into(), text.into());
            object.insert("kind".into(), marking.kind().into());
            object.insert("canonical".into(), marking.to_string().into());
            object.insert("when".into(), found.best().when().into());
            let others = found.others().map(|other| {
                let marking = other.marking();
                json!({ "kind": marking.kind(), "canonical": marking.to_string(), "when": other.when() })
            });
            object.insert("also".into(), others.collect());
            object.insert("meaning".into(), marking.meaning().into());
            object.insert("for_choice".into(), marking.for_choice().into());
            object.insert("defined_in".into(), marking.citation().to_string().into());
            object.extend(facts(&marking).into_iter().map(|(key, value)| (key.to_owned(), value)));
            object.into()
        }
        Err(error) => json!({
            "input": text,
            "error": {
                "kind": error.kind().name(),
                "field": error.field().name(),
                "message": error.to_string(),
                "span": [error.span().start, error.span().end],
            },
            "suggestions": suggestions(text).map(|near| near.to_string()).collect::<Vec<_>>(),
        }),
    }
}

fn for_people(found: &Readings) -> String {
    let marking = &found.best().marking();
    let mut text = format!(
        "  {}\n  choice: {}\n  source: {}\n",
        marking.meaning(),
        marking.for_choice(),
        marking.citation()
    );
    for (key, value) in facts(marking) {
        let value = match value {
            Value::Null => continue,
            Value::String(value) => value,
            Value::Object(parts) => {
                parts.iter().map(|(key, value)| format!("{key} {value}")).collect::<Vec<_>>().join(", ")
            }
            other => other.to_string(),
        };
        text += &format!("  {key:<34}{}\n", value.replace('"', ""));
    }
    if let Some(when) = found.best().when() {
        text += &format!("  if:   {when}\n");
    }
    for other in found.others() {
        text += &format!("  or:   {}, {}\n", other.marking(), other.when().unwrap_or_default());
    }
    text
}

type Facts = Vec<(&'static str, Value)>;

fn facts(marking: &Marking) -> Facts {
    match marking {
        Marking::Tire(tire) => with_contradictions(tire_facts(tire), marking),
        Marking::SidewallLine(line) => with_contradictions(line_facts(line), marking),
        Marking::Wheel(wheel) => wheel_facts(wheel),
        Marking::WheelStamp(stamp) => stamp_facts(stamp),
        Marking::BoltCircle(holes) => bolt_circle_facts(holes),
        Marking::Thread(thread) => thread_facts(thread),
        Marking::ServiceDescription(service) => service_facts(Some(*service)),
        Marking::LoadIndex(index) => {
            vec![("kg", kg(*index)), ("lb", index.printed_pounds().into())]
        }
        Marking::IdentificationNumber(number) => identification_facts(number),
        Marking::DateCode(date) => date_facts(Some(*date)),
        Marking::Grading(grading) => vec![
            ("treadwear", grading.treadwear().number().into()),
            ("traction", grading.traction().name().into()),
            ("temperature", grading.temperature().name().into()),
        ],
        Marking::Grade(Grade::Treadwear(grade)) => {
            vec![("life_of_control", number(grade.life_of_control().get::<ratio>()))]
        }
        Marking::Grade(Grade::Traction(grade)) => {
            let (asphalt, concrete) = grade.exceeds().unzip();
            let least = |friction: Option<Ratio>| friction.map(|f| number(f.get::<ratio>())).into();
            vec![
                ("friction_above_on_asphalt", least(asphalt)),
                ("friction_above_on_concrete", least(concrete)),
            ]
        }
        Marking::Grade(Grade::Temperature(grade)) => {
            vec![("endured_kmh", number(grade.endured_speed().get::<kilometer_per_hour>()))]
        }
        Marking::MoldedLimit(limit) => limit_facts(limit),
        Marking::SidewallMark(mark) => vec![("topic", mark.topic().name().into())],
        Marking::SpeedSymbol(symbol) => {
            vec![("kmh", kmh(*symbol)), ("mph", symbol.printed_mph().into())]
        }
        _ => Vec::new(),
    }
}

fn with_contradictions(mut facts: Facts, marking: &Marking) -> Facts {
    facts.push(("contradictions", marking.contradictions().map(|c| c.text()).collect::<Vec<_>>().into()));
    facts
}

/// A number without the dust of unit conversion, whole if it is.
fn number(value: f64) -> Value {
    let value = (value * 1e6).round() / 1e6;
    if value.fract() == 0.0 { json!(value as i64) } else { json!(value) }
}

fn mm(length: Length) -> Value {
    number(length.get::<millimeter>())
}

fn span(length: Toleranced<Length>) -> Value {
    json!({ "min": mm(length.min()), "nominal": mm(length.nominal()), "max": mm(length.max()) })
}

/// With its limits where they are known.
fn overall_diameter(size: &TireSize) -> Value {
    match (size.overall_diameter(), size.overall_diameter_nominal()) {
        (Some(diameter), _) => span(diameter),
        (None, Some(nominal)) => json!({ "min": null, "nominal": mm(nominal), "max": null }),
        (None, None) => Value::Null,
    }
}

fn kg(index: LoadIndex) -> Value {
    number(index.load().get::<kilogram>())
}

fn kmh(symbol: SpeedSymbol) -> Value {
    number(symbol.speed().get::<kilometer_per_hour>())
}

fn inches(quarters: u16) -> Value {
    number(f64::from(quarters) / 4.0)
}

fn rim_range(range: RimRange) -> Value {
    json!({
        "min": inches(range.min().quarters()),
        "max": inches(range.max().quarters()),
        "basis": range.basis().name(),
    })
}

fn tire_facts(tire: &Tire) -> Facts {
    let size = tire.size();
    let rolling = size.rolling();
    let on_measuring_rim = size.measuring_rim().and_then(|w| size.section_width_on(w));
    let mut facts = vec![("family", size.family().into())];
    facts.push(("class", size.class().name().into()));
    match size {
        TireSize::Metric(metric) => {
            facts.push(("section_width_mm", mm(metric.nominal_width())));
            facts.push(("aspect_ratio", metric.aspect_ratio().into()));
        }
        TireSize::FullProfile(size) => facts.push(("section_width_mm", mm(size.nominal_width()))),
        TireSize::Numeric(size) => facts.push(("section_width_mm", mm(size.nominal_width()))),
        TireSize::Flotation(size) => facts.push(("section_width_mm", mm(size.nominal_width()))),
        _ => {}
    }
    facts.extend([
        ("construction", size.structure().name().into()),
        ("rim_diameter_in", rim_diameter_in(size.rim_diameter())),
    ]);
    facts.extend(service_facts(tire.service()));
    facts.extend([
        ("load_version", tire.load_version().map(|v| v.to_string()).into()),
        ("load_range", tire.load_range().map(|r| r.letter().to_string()).into()),
        ("overall_diameter_mm", overall_diameter(&size)),
        ("section_height_mm", size.section_height().map(mm).into()),
        ("measuring_rim_in", size.measuring_rim().map(|w| inches(w.quarters())).into()),
        ("section_width_on_measuring_rim_mm", on_measuring_rim.map(|w| mm(w.nominal())).into()),
        (
            "rim_width_range_in",
            size.permitted_rim_range().or_else(|| size.estimated_rim_range()).map(rim_range).into(),
        ),
        ("rolling_circumference_mm", rolling.map(|r| mm(r.circumference().nominal())).into()),
        ("revolutions_per_km", rolling.map(|r| number(r.revolutions_per_km())).into()),
    ]);
    facts
}

fn service_facts(service: Option<ServiceDescription>) -> Facts {
    let dual = service.and_then(|s| s.dual());
    vec![
        ("load_index_single", service.map(|s| s.single().number()).into()),
        ("load_index_dual", dual.map(|li| li.number()).into()),
        ("load_kg_single", service.map(|s| kg(s.single())).into()),
        ("load_kg_dual", dual.map(kg).into()),
        ("speed_symbol", service.map(|s| s.speed().to_string()).into()),
        ("speed_kmh", service.map(|s| kmh(s.speed())).into()),
    ]
}

fn limit_facts(limit: &MoldedLimit) -> Facts {
    match *limit {
        MoldedLimit::Load { formation, load, at } => {
            let key = match formation {
                Formation::Single => "max_load_kg",
                Formation::Dual => "max_load_dual_kg",
                _ => return Vec::new(),
            };
            let load = number(load.load().get::<kilogram>());
            vec![(key, load), ("load_pressure_kpa", at.map(kpa).into())]
        }
        MoldedLimit::Pressure(pressure) => vec![("max_pressure_kpa", kpa(pressure))],
        MoldedLimit::Speed(speed) => {
            vec![("max_speed_kmh", number(speed.speed().get::<kilometer_per_hour>()))]
        }
        _ => Vec::new(),
    }
}

fn kpa(pressure: MoldedPressure) -> Value {
    number(pressure.pressure().get::<kilopascal>())
}

/// The code, where it is inches; one of millimetres is in the canonical text.
fn rim_diameter_in(diameter: RimDiameter) -> Value {
    match diameter.seat_taper() {
        SeatTaper::Millimetric => Value::Null,
        _ => number(f64::from(diameter.tenths()) / 10.0),
    }
}

fn wheel_facts(wheel: &Wheel) -> Facts {
    let size = wheel.size();
    let flange = size.contour().unwrap_or(Contour::J).flange_width();
    let inch_code = size.width().millimetres().is_none();
    let backspacing = wheel.inset().map(|inset| {
        json!({
            "min": mm(inset.backspacing(size.width(), flange.min())),
            "nominal": mm(inset.backspacing(size.width(), flange.nominal())),
            "max": mm(inset.backspacing(size.width(), flange.max())),
        })
    });
    vec![
        ("rim_width_in", inch_code.then(|| inches(size.width().quarters())).into()),
        ("rim_width_mm", mm(size.width().length())),
        ("rim_diameter_in", rim_diameter_in(size.diameter())),
        ("contour", size.contour().map(|c| c.mark()).into()),
        ("hump", size.hump().map(|h| h.mark()).into()),
        ("multi_piece", size.is_multi_piece().into()),
        ("inset_mm", wheel.inset().map(|i| mm(i.length())).into()),
        ("backspacing_mm", wheel.inset().map(|i| mm(i.backspacing(size.width(), flange.nominal()))).into()),
        ("backspacing_span_mm", backspacing.into()),
        ("flange_width_mm", span(flange)),
        ("bolt_circle", wheel.bolt_circle().map(|b| b.to_string()).into()),
        ("second_bolt_circle", wheel.second_bolt_circle().map(|b| b.to_string()).into()),
        ("bore_mm", wheel.bore().map(|b| mm(b.length())).into()),
        ("specified_diameter_mm", size.diameter().specified().map(|d| mm(d.nominal())).into()),
    ]
}

fn stamp_facts(stamp: &WheelStamp) -> Facts {
    let made = stamp.date().and_then(|date| match date {
        WheelDate::Month { month, year } => Some(json!({ "month": month, "year": year })),
        WheelDate::Week { week, year } => Some(json!({ "week": week, "year": year })),
        _ => None,
    });
    let marks: Vec<_> =
        WheelMark::ALL.iter().filter(|mark| stamp.has(**mark)).map(|mark| json!(mark.mark())).collect();
    let mut facts = wheel_facts(&stamp.wheel());
    facts.extend([
        ("load_kg", stamp.load().map(|load| number(load.load().get::<kilogram>())).into()),
        ("made", made.into()),
        ("approval", stamp.approval().map(|(country, number)| json!([country, number])).into()),
        ("permit", stamp.permit().into()),
        ("marks", marks.into()),
        ("origin", stamp.origin().into()),
    ]);
    facts
}

fn bolt_circle_facts(holes: &BoltCircle) -> Facts {
    vec![
        ("count", holes.count().into()),
        ("diameter_mm", mm(holes.diameter())),
        ("adjacent_mm", holes.chord(1).map(mm).into()),
        ("longest_chord_mm", mm(holes.longest_chord())),
    ]
}

fn thread_facts(thread: &Thread) -> Facts {
    vec![
        ("major_mm", mm(thread.major_diameter())),
        ("pitch_mm", mm(thread.pitch_length())),
        ("stress_area_mm2", number(thread.stress_area().get::<square_millimeter>())),
    ]
}

fn identification_facts(number: &IdentificationNumber) -> Facts {
    let mut facts = vec![("form", number.form().name().into()), ("plant", number.plant().into())];
    facts.extend(date_facts(number.date()));
    facts.push(("retread", number.form().is_retread().into()));
    facts.push(("ambiguous", number.is_ambiguous().into()));
    facts
}

fn date_facts(date: Option<DateCode>) -> Facts {
    let weeks: Vec<ManufactureWeek> = date.map(|date| date.candidates().collect()).unwrap_or_default();
    // Days are known only where the year is.
    let only = match weeks.as_slice() {
        [week] => Some(*week),
        _ => None,
    };
    vec![
        ("manufacture_week", date.map(|date| date.manufacture_week()).into()),
        ("manufacture_year", only.map(|week| week.year()).into()),
        ("first_day", only.map(|week| week.first_day().to_string()).into()),
        ("last_day", only.map(|week| week.last_day().to_string()).into()),
        ("decade_ambiguous", date.is_some_and(|date| date.is_decade_ambiguous()).into()),
        ("possible_years", weeks.iter().map(|week| week.year()).collect::<Vec<_>>().into()),
    ]
}

fn line_facts(line: &SidewallLine) -> Facts {
    let load = |load: Option<MoldedLoad>| load.map(|l| number(l.load().get::<kilogram>())).into();
    let marks: Vec<_> = line.marks().map(|mark| json!(mark.to_string())).collect();
    let mut facts = tire_facts(&line.tire());
    facts.extend([
        ("second_service", line.second_service().map(|s| s.to_string()).into()),
        ("max_load_kg", load(line.max_load())),
        ("max_load_dual_kg", load(line.max_load_dual())),
        ("load_pressure_kpa", line.load_pressure().map(kpa).into()),
        ("load_pressure_dual_kpa", line.load_pressure_dual().map(kpa).into()),
        ("max_pressure_kpa", line.max_pressure().map(kpa).into()),
        ("max_speed_kmh", line.max_speed().map(|v| number(v.speed().get::<kilometer_per_hour>())).into()),
        ("marks", marks.into()),
        ("mud_and_snow", line.is_mud_and_snow().into()),
        ("severe_snow", line.is_for_severe_snow().into()),
        ("tubeless", line.is_tubeless().into()),
    ]);
    facts
}
