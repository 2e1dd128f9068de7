//! Reads markings off tires and wheels: `decode [--json] [--units metric|us|both] [--] [TEXT…]`, or one a line from
//! standard input; `decode --help` has examples.
//!
//! Exit code 0 if all could be read, 1 if any could not, 2 for misuse.

use std::io::{BufRead, Write};
use std::process::ExitCode;

use beadseat::marking::{Approval, Readings, Suggestion, readings, suggestions};
use beadseat::rim::{Contour, RimDiameter, SeatTaper};
use beadseat::tire::{
    Formation, LoadIndex, RimRange, ServiceDescription, SpeedSymbol, Tire, TireSize,
    grading::Grade,
    identification::{DateCode, IdentificationNumber, ManufactureWeek},
    sidewall::{MoldedLimit, SidewallLine},
};
use beadseat::units::{Length, Ratio};
use beadseat::uom::si::{
    angle::degree, area::square_millimeter, length::millimeter, mass::kilogram, pressure::kilopascal,
    ratio::ratio, velocity::kilometer_per_hour,
};
use beadseat::wheel::{BoltCircle, Thread, Wheel, WheelDate, WheelMark, WheelStamp};
use beadseat::{Excerpt, Marking, MoldedLoad, MoldedPressure, ParseError, Toleranced};
use serde_json::{Map, Value, json};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    // Behind `--` everything is a text.
    let (options, rest) = match arguments.iter().position(|argument| argument == "--") {
        Some(at) => (&arguments[..at], &arguments[at + 1..]),
        None => (&arguments[..], &[][..]),
    };
    let (mut json, mut units, mut texts) = (false, Units::Both, Vec::new());
    let mut given = options.iter();
    while let Some(option) = given.next() {
        let misused = match option.as_str() {
            "--help" => {
                println!("{HELP}");
                return ExitCode::SUCCESS;
            }
            "--json" => {
                json = true;
                None
            }
            "--units" => match given.next().and_then(|word| Units::of(word)) {
                Some(named) => {
                    units = named;
                    None
                }
                None => Some("--units takes metric, us or both".to_owned()),
            },
            flag if flag.starts_with("--") => Some(format!("unknown option {}", Excerpt(flag))),
            _ => {
                texts.push(option);
                None
            }
        };
        if let Some(misused) = misused {
            eprintln!("{misused}\nusage: decode [--json] [--units metric|us|both] [--] [TEXT...]");
            return ExitCode::from(2);
        }
    }
    texts.extend(rest);

    let mut out = std::io::stdout().lock();
    let mut all_read = true;
    let mut answer = |text: &str| {
        let found = readings(text);
        all_read &= found.is_ok();
        match (json, found) {
            (true, found) => writeln!(out, "{}", for_programs(text, found)),
            (false, Ok(found)) => writeln!(out, "{}\n{}", found.best().marking(), for_people(&found, units)),
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

const HELP: &str = "\
decode [--json] [--units metric|us|both] [--] [TEXT...]

Reads what stands on a tire or a wheel, or what people write of it; without a TEXT, one a line from standard input.

  decode \"205/55R16 91V\"               a tire, its load and speed
  decode \"17x8 +35 5 on 4 1/2 CB 72.6\" a wheel in the words of the trade
  decode --units us \"BS 4.5\"            inches, pounds and psi alone
  decode --json 7-16                     all readings, for programs
  decode \"205 55 16\"                   what cannot be read, and what is near it

exit code 0 if all could be read, 1 if any could not, 2 for misuse";

/// Which units people see.
#[derive(Clone, Copy, PartialEq)]
enum Units {
    Metric,
    Us,
    Both,
}

impl Units {
    fn of(word: &str) -> Option<Self> {
        match word {
            "metric" => Some(Self::Metric),
            "us" => Some(Self::Us),
            "both" => Some(Self::Both),
            _ => None,
        }
    }
}

/// Units that a key may end in, and in what else each is told: sign, decimals; sign, decimals, factor.
type Told = (&'static str, [&'static str; 2], [usize; 2], f64);
const TOLD: [Told; 5] = [
    ("_mm", ["mm", "in"], [1, 2], 1.0 / 25.4),
    ("_kg", ["kg", "lb"], [0, 0], 1.0 / 0.453_592_37),
    ("_kpa", ["kPa", "psi"], [0, 0], 1.0 / 6.894_757),
    ("_kmh", ["km/h", "mph"], [0, 0], 1.0 / 1.609_344),
    ("_in", ["in", "mm"], [2, 1], 25.4),
];

/// The name of a fact for people, and what its numbers are told in.
fn name_and_unit(key: &str) -> (String, Option<Told>) {
    let told = TOLD.iter().find(|told| key.contains(told.0));
    let name = told.map_or(key.to_owned(), |told| key.replacen(told.0, "", 1)).replace('_', " ");
    (name, told.copied())
}

/// A number in the units that were asked for, rounded to what it is worth.
fn told(number: f64, told: Option<Told>, units: Units) -> String {
    let Some((suffix, signs, decimals, factor)) = told else { return format!("{number}") };
    let short = |value: f64, decimals: usize| {
        let text = format!("{value:.decimals$}");
        match text.contains('.') {
            true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
            false => text,
        }
    };
    let mut first = format!("{} {}", short(number, decimals[0]), signs[0]);
    if suffix == "_kpa" {
        first += &format!(" ({} bar)", short(number / 100.0, 2));
    }
    let second = format!("{} {}", short(number * factor, decimals[1]), signs[1]);
    // The codes of rims are inches in every country.
    match units {
        Units::Metric if suffix != "_in" => first,
        Units::Us if suffix != "_in" => second,
        Units::Us => first,
        _ => format!("{first} = {second}"),
    }
}

fn for_people(found: &Readings, units: Units) -> String {
    let marking = &found.best().marking();
    let mut text = format!(
        "  {}\n  choice: {}\n  source: {}\n",
        marking.meaning(),
        marking.for_choice(),
        marking.citation()
    );
    for (key, value) in facts(marking) {
        let (name, unit) = name_and_unit(key);
        let one = |value: &Value| match value {
            Value::Number(number) => told(number.as_f64().unwrap_or(0.0), unit, units),
            Value::String(word) => word.clone(),
            other => other.to_string(),
        };
        let value = match &value {
            Value::Null => continue,
            Value::Bool(is) => (if *is { "yes" } else { "no" }).to_owned(),
            Value::Array(all) if all.is_empty() => continue,
            Value::Array(all) => all.iter().map(one).collect::<Vec<_>>().join("; "),
            Value::Object(parts) => {
                // From the least to the greatest.
                let order = |key: &str| ["min", "nominal", "max"].iter().position(|known| *known == key);
                let mut parts: Vec<_> = parts.iter().filter(|(_, value)| !value.is_null()).collect();
                parts.sort_by_key(|(key, _)| order(key).unwrap_or(3));
                parts
                    .iter()
                    .map(|(key, value)| format!("{key} {}", one(value)))
                    .collect::<Vec<_>>()
                    .join(", ")
            }
            other => one(other),
        };
        text += &format!("  {name:<34}{value}\n");
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
        Marking::Inset(inset) => vec![("inset_mm", mm(inset.length()))],
        Marking::Backspacing(backspacing) => vec![("backspacing_mm", mm(backspacing.length()))],
        Marking::Bore(bore) => vec![("bore_mm", mm(bore.length()))],
        Marking::Seat(seat) => vec![
            ("cone_angle_deg", seat.cone_angle().map(|angle| number(angle.get::<degree>())).into()),
            ("ball_radius_mm", seat.ball_radius().map(mm).into()),
            ("centring", seat.is_centring().into()),
        ],
        Marking::DualDrilling(drilling) => vec![
            ("count", drilling.circles()[0].count().into()),
            ("diameters_mm", drilling.circles().map(|circle| mm(circle.diameter())).to_vec().into()),
            ("between_neighbours_mm", mm(drilling.between_neighbours())),
        ],
        Marking::Label(label) => vec![
            ("fuel_efficiency", label.fuel_efficiency().to_string().into()),
            ("wet_grip", label.wet_grip().to_string().into()),
            ("sound_db", label.sound().decibels().into()),
            ("noise_class", label.noise().map(|class| class.name()).into()),
        ],
        Marking::Approval(Approval::Mark(mark)) => vec![
            ("country_number", mark.country_number().into()),
            ("country", mark.country().into()),
            ("regulation", mark.regulation().into()),
        ],
        Marking::Approval(Approval::Regulation(approval)) => vec![
            ("country_number", approval.country_number().into()),
            ("regulation", format!("UN R{}", approval.regulation()).into()),
            ("number", approval.number().into()),
        ],
        Marking::Approval(Approval::Permit(number)) => vec![("number", (*number).into())],
        Marking::SidewallMarks(marks) => {
            let words: Vec<_> = marks.words().map(|mark| json!(mark.to_string())).collect();
            let mut facts = service_facts(marks.service());
            facts.push(("load_version", marks.version().map(|version| version.to_string()).into()));
            facts.push(("load_range", marks.range().map(|range| range.letter().to_string()).into()));
            facts.push(("marks", words.into()));
            facts.extend(marks.limits().flat_map(|limit| limit_facts(&limit)));
            facts
        }
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
    // The wider the flange, the less the inset.
    let by_backspacing = wheel.backspacing().map(|stamped| {
        let inset = |flange| stamped.inset(size.width(), flange).ok().map(|inset| mm(inset.length()));
        json!({
            "min": inset(flange.max()),
            "nominal": inset(flange.nominal()),
            "max": inset(flange.min()),
        })
    });
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
        (
            "backspacing_mm",
            match wheel.backspacing() {
                Some(stamped) => mm(stamped.length()),
                None => wheel.inset().map(|i| mm(i.backspacing(size.width(), flange.nominal()))).into(),
            },
        ),
        ("backspacing_span_mm", backspacing.into()),
        ("inset_by_backspacing_mm", by_backspacing.into()),
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
