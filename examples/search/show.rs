//! What was found, as text, JSON lines and CSV.

use std::fmt::Write as _;

use beadseat::fitment::{Setup, Setups};
use beadseat::scenario::Scenario;
use beadseat::search::{Candidate, Candidates, Choice, LeastMargin, Margin, Needs, Score, Search};
use beadseat::units::{in_kg, in_kpa, in_mm};
use beadseat::wheel::Inset;
use serde_json::{Value, json};

use crate::common::plain;

fn tidy(number: f64) -> f64 {
    (number * 1000.0).round() / 1000.0
}

fn millimetres(inset: Inset) -> f64 {
    tidy(in_mm(inset.length()))
}

pub(crate) fn text(
    scenario: &Scenario,
    search: &Search<'_>,
    candidates: &Candidates<'_>,
    ranked: &[Candidate],
) -> String {
    let name = beadseat::Excerpt(scenario.name().unwrap_or("vehicle without a name"));
    let mut text = format!(
        "{name}\n{} points of the lattice of sizes and rims, {} looked at; the grammar's sizes, whether made or not.\n",
        search.points(),
        candidates.tried(),
    );
    let mut fallen: Vec<_> = candidates.fallen().collect();
    fallen.sort_by_key(|(_, points)| std::cmp::Reverse(*points));
    let fallen: Vec<_> = fallen.iter().map(|(id, points)| format!("{} {points}", plain(id.name()))).collect();
    let _ = writeln!(text, "fell at: {}", fallen.join(", "));
    if ranked.is_empty() {
        text += "Nothing fits.\n";
    }
    for (n, candidate) in ranked.iter().enumerate() {
        let _ = write!(text, "\n{:>3}. ", n + 1);
        text += &entry(candidate);
    }
    if let Some(first) = ranked.first() {
        if let Some((path, how)) = search.narrowing(&first.setups()) {
            let _ = writeln!(text, "\nMeasure next, it narrows this most: {path}: {how}");
        }
    }
    text
}

fn entry(candidate: &Candidate) -> String {
    let mut text = String::new();
    for (n, choice) in candidate.choices().enumerate() {
        let setup = choice.setup();
        let (min, max) = (choice.insets().min(), choice.insets().max());
        let end = |check: Option<beadseat::fitment::CheckId>| {
            check.map_or("nothing known".into(), |c| plain(c.name()))
        };
        let _ = writeln!(
            text,
            "{}{:<5} {} on {}{}",
            if n == 0 { "" } else { "     " },
            choice.position().name(),
            setup.tire(),
            setup.wheel(),
            match setup.spacer() {
                Some(spacer) if in_mm(spacer) > 0.0 => format!(" with {} mm of spacer", in_mm(spacer)),
                _ => String::new(),
            },
        );
        let _ = writeln!(
            text,
            "           {} to {}, ended by {} and {}",
            min.value(),
            max.value(),
            end(min.check()),
            end(max.check()),
        );
        let needs = needs_text(choice.needs());
        if !needs.is_empty() {
            let _ = writeln!(text, "           needs {needs}");
        }
    }
    if let Some(least) = candidate.margins().next() {
        let _ = writeln!(
            text,
            "     {}: least margin {} at {} {}",
            candidate.verdict().name(),
            least.value(),
            least.position().name(),
            plain(least.check().name())
        );
    }
    let unjudged: Vec<_> = candidate.not_judged().iter().map(|id| plain(id.name())).collect();
    if !unjudged.is_empty() {
        let _ = writeln!(text, "     not judged: {}", unjudged.join(", "));
    }
    text
}

fn needs_text(needs: &Needs) -> String {
    let mut all = Vec::new();
    let service = (needs.load_index(), needs.speed_symbol());
    match service {
        (Some(index), Some(speed)) => all.push(format!("at least {index}{speed}")),
        (Some(index), None) => all.push(format!("load index {index} at least")),
        (None, Some(speed)) => all.push(format!("speed symbol {speed} at least")),
        (None, None) => {}
    }
    if let Some(pressure) = needs.pressure() {
        all.push(match needs.pressure_full_load().filter(|full| *full != pressure) {
            Some(full) => {
                format!("{} kPa, {} kPa at full load", in_kpa(pressure).round(), in_kpa(full).round())
            }
            None => format!("{} kPa", in_kpa(pressure).round()),
        });
    }
    if let Some(rating) = needs.wheel_rating() {
        all.push(format!("a wheel rated {} kg", in_kg(rating).round()));
    }
    if let Some(radius) = needs.barrel_radius() {
        all.push(format!("barrel radius {} mm", in_mm(radius).round()));
    }
    if let Some(back) = needs.spoke_back() {
        all.push(format!("spokes {} mm out", in_mm(back).round()));
    }
    if let Some(seat) = needs.seat() {
        all.push(format!("seats {seat}"));
    }
    if let Some(bore) = needs.bore() {
        all.push(format!("bore {} mm or a ring", tidy(in_mm(bore.length()))));
    }
    all.join(", ")
}

fn needs_json(needs: &Needs) -> Value {
    let text = |value: Option<String>| value.map_or(Value::Null, Value::String);
    let bore = needs.bore().map(|bore| tidy(in_mm(bore.length())));
    json!({
        "load_index": needs.load_index().map(|index| index.number()),
        "speed_symbol": text(needs.speed_symbol().map(|speed| speed.to_string())),
        "load_version": text(needs.load_version().map(|version| version.to_string())),
        "pressure_kpa": needs.pressure().map(|p| tidy(in_kpa(p))),
        "pressure_full_load_kpa": needs.pressure_full_load().map(|p| tidy(in_kpa(p))),
        "wheel_rating_kg": needs.wheel_rating().map(|m| tidy(in_kg(m))),
        "barrel_radius_mm": needs.barrel_radius().map(|r| tidy(in_mm(r))),
        "spoke_back_mm": needs.spoke_back().map(|r| tidy(in_mm(r))),
        "bolt_circle": text(needs.bolt_circle().map(|circle| circle.to_string())),
        "bore_mm": bore,
        "ring": bore.map(|bore| format!("to {bore} mm, if the bore is larger")),
        "seat": text(needs.seat().map(|seat| seat.to_string())),
        "fasteners": { "thread": text(needs.thread().map(|thread| thread.to_string())),
                       "fastening": needs.fastening().map(|fastening| fastening.name()) },
    })
}

fn axle_json(choice: &Choice) -> Value {
    let (setup, insets) = (choice.setup(), choice.insets());
    let id = |check: Option<beadseat::fitment::CheckId>| check.map(|check| check.name());
    let spacer = setup.spacer().map(in_mm).filter(|spacer| *spacer > 0.0);
    let mut axle = json!({
        "where": choice.position().name(),
        "tire": setup.tire().to_string(),
        "wheel": setup.wheel().to_string(),
        "inset_mm": { "min": millimetres(insets.min().value()), "best": setup.wheel().inset().map(millimetres),
                      "max": millimetres(insets.max().value()) },
        "binding": { "min": id(insets.min().check()), "max": id(insets.max().check()) },
        "needs": needs_json(choice.needs()),
    });
    if let (Some(spacer), Some(axle)) = (spacer, axle.as_object_mut()) {
        axle.insert("spacer_mm".into(), json!(spacer));
    }
    axle
}

fn margin_json(margin: &Margin) -> Value {
    serde_json::to_value(margin).unwrap_or(Value::Null)
}

fn score(candidate: &Candidate) -> Option<f64> {
    Some(LeastMargin.score(candidate)).filter(|score| score.is_finite()).map(tidy)
}

pub(crate) fn json(ranked: &[Candidate]) -> String {
    let mut lines = String::new();
    for (n, candidate) in ranked.iter().enumerate() {
        let line = json!({
            "rank": n + 1,
            "score": score(candidate),
            "axles": candidate.choices().map(axle_json).collect::<Vec<_>>(),
            "least_margin": candidate.margins().next().as_ref().map(margin_json),
            "not_judged": candidate.not_judged().iter().map(|id| id.name()).collect::<Vec<_>>(),
            "verdict": candidate.verdict().name(),
        });
        lines += &format!("{line}\n");
    }
    lines
}

pub(crate) fn csv(ranked: &[Candidate]) -> Result<String, String> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let header = [
        "rank",
        "score",
        "where",
        "tire",
        "wheel",
        "spacer_mm",
        "inset_min_mm",
        "inset_best_mm",
        "inset_max_mm",
        "binding_min",
        "binding_max",
        "load_index",
        "speed_symbol",
        "pressure_kpa",
        "pressure_full_load_kpa",
        "wheel_rating_kg",
        "verdict",
        "least_margin",
        "least_margin_where",
        "least_margin_value",
        "least_margin_unit",
        "not_judged",
    ];
    let show = |number: Option<f64>| number.map_or(String::new(), |number| tidy(number).to_string());
    let write = |writer: &mut csv::Writer<Vec<u8>>| -> Result<(), csv::Error> {
        writer.write_record(header)?;
        for (n, candidate) in ranked.iter().enumerate() {
            let least = candidate.margins().next();
            let unjudged: Vec<_> = candidate.not_judged().iter().map(|id| id.name()).collect();
            for choice in candidate.choices() {
                let (setup, insets, needs) = (choice.setup(), choice.insets(), choice.needs());
                let id = |check: Option<beadseat::fitment::CheckId>| {
                    check.map_or("", |check| check.name()).to_owned()
                };
                writer.write_record([
                    (n + 1).to_string(),
                    show(score(candidate)),
                    choice.position().name().into(),
                    setup.tire().to_string(),
                    setup.wheel().to_string(),
                    show(setup.spacer().map(in_mm)),
                    show(Some(millimetres(insets.min().value()))),
                    show(setup.wheel().inset().map(millimetres)),
                    show(Some(millimetres(insets.max().value()))),
                    id(insets.min().check()),
                    id(insets.max().check()),
                    needs.load_index().map_or(String::new(), |index| index.to_string()),
                    needs.speed_symbol().map_or(String::new(), |speed| speed.to_string()),
                    show(needs.pressure().map(in_kpa)),
                    show(needs.pressure_full_load().map(in_kpa)),
                    show(needs.wheel_rating().map(in_kg)),
                    candidate.verdict().name().into(),
                    least.map_or(String::new(), |m| m.check().name().into()),
                    least.map_or(String::new(), |m| m.position().name().into()),
                    show(least.and_then(|m| margin_json(&m)["value"].as_f64())),
                    least.map_or(String::new(), |m| m.value().unit().into()),
                    unjudged.join(" "),
                ])?;
            }
        }
        Ok(())
    };
    write(&mut writer).map_err(|error| error.to_string())?;
    let bytes = writer.into_inner().map_err(|error| error.to_string())?;
    String::from_utf8(bytes).map_err(|error| error.to_string())
}

pub(crate) fn setups(setups: &Setups) -> String {
    let mut text = String::new();
    for (place, setup) in [("front", setups.front), ("rear", setups.rear)] {
        if let Some(setup) = setup {
            let _ = writeln!(text, "{place:<6}{}", pair(&setup));
        }
    }
    text
}

fn pair(setup: &Setup) -> String {
    format!("{} on {}", setup.tire(), setup.wheel())
}
