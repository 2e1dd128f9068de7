//! What was found, as text, JSON lines and CSV.

use std::fmt::Write as _;

use beadseat::fitment::{Setup, Setups, Verdict};
use beadseat::scenario::Scenario;
use beadseat::search::{
    Candidate, Candidates, Choice, Expectation, Likely, Margin, Narrowing, NearMiss, Needs, Score, Search,
};
use beadseat::units::{in_kg, in_kpa, in_mm};
use beadseat::wheel::Inset;
use serde_json::{Value, json};

use crate::Found;
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
    found: &Found<'_>,
    top: usize,
) -> String {
    let ranked = found.ranked;
    let name = beadseat::Excerpt(scenario.name().unwrap_or("vehicle without a name"));
    // Pairs of axles are found by walks of their own.
    let looked_at = match candidates.tried() {
        0 => String::new(),
        tried => format!(", {tried} looked at"),
    };
    let mut text = format!(
        "{name}\n{} points of the lattice of sizes and rims{looked_at}; sizes of lists come first, then those \
         that can be written, whether anybody makes them or not.\n",
        search.points(),
    );
    let mut fallen: Vec<_> = candidates.fallen().collect();
    fallen.sort_by_key(|(_, points)| std::cmp::Reverse(*points));
    let fallen: Vec<_> = fallen.iter().map(|(id, points)| format!("{} {points}", plain(id.name()))).collect();
    if !fallen.is_empty() {
        let _ = writeln!(text, "fell at: {}", fallen.join(", "));
    }
    let beside = not_looked_at(scenario);
    if !beside.is_empty() {
        let _ =
            writeln!(text, "Not looked at: {beside}; assess with what you choose whether it fits there too.");
    }
    if ranked.is_empty() {
        text +=
            if found.stopped.is_some() { "Nothing that fits was found yet.\n" } else { "Nothing fits.\n" };
    }
    for (rank, candidate) in firsts(ranked).take(top) {
        let _ = write!(text, "\n{rank:>3}. ");
        text += &entry(scenario, candidate);
        let others = other_rims(ranked, rank, candidate);
        if !others.is_empty() {
            let _ = writeln!(text, "     other rims, by rank: {others}");
        }
    }
    let to_confirm: Vec<_> = assumed(scenario).collect();
    if !to_confirm.is_empty() {
        let _ = writeln!(text, "\nAssumed; confirm it first: {}", to_confirm.join(", "));
    }
    let misses = best_misses(found);
    if found.is_staggered {
        text += "\nNear misses are not looked for where tires differ from axle to axle.\n";
    }
    if !misses.is_empty() {
        text += "\nNear misses, each with the cheapest change that would admit it:\n";
    }
    for miss in &misses {
        let _ = writeln!(text, "     {miss}: {}; would do: {}", plain(miss.fails().name()), miss.remedy());
    }
    if let Some(narrowing) = narrowing(search, ranked) {
        let (path, how) = (narrowing.path(), narrowing.input().how());
        let _ = writeln!(text, "\nMeasure next, it narrows this most: {path}: {how}");
    }
    if let Some(stopped) = &found.stopped {
        let _ = writeln!(text, "\nThis is not all: {stopped}.");
    }
    text
}

/// How many near misses are told.
const MISSES: usize = 5;

/// The near misses that a builder would rather hear of, one of each size.
fn best_misses(found: &Found<'_>) -> Vec<NearMiss> {
    let mut misses = found.misses.clone().unwrap_or_default();
    misses.sort_by(|a, b| b.compare(a));
    let mut told: Vec<NearMiss> = Vec::new();
    let tires = |miss: &NearMiss| miss.choices().map(|choice| choice.setup().tire()).collect::<Vec<_>>();
    for miss in misses {
        if told.len() < MISSES && !told.iter().any(|other| tires(other) == tires(&miss)) {
            told.push(miss);
        }
    }
    told
}

fn miss_json(miss: &NearMiss) -> Value {
    let axles: Vec<_> = miss.choices().map(axle_json).collect();
    json!({ "axles": axles, "fails": miss.fails().name(), "would_do": miss.remedy().to_string() })
}

/// How many of the best candidates are asked which fact would narrow the search most.
const ASKED: usize = 20;

fn narrowing(search: &Search<'_>, ranked: &[Candidate]) -> Option<Narrowing> {
    search.narrowing(ranked.iter().take(ASKED))
}

/// The tires of a candidate: it is the same choice on another rim where they are the same.
fn tires(candidate: &Candidate) -> Vec<beadseat::tire::Tire> {
    candidate.choices().map(|choice| choice.setup().tire()).collect()
}

/// The best rim of each choice of tires, with its rank.
fn firsts(ranked: &[Candidate]) -> impl Iterator<Item = (usize, &Candidate)> {
    let mut seen = Vec::new();
    ranked.iter().enumerate().filter_map(move |(n, candidate)| {
        let tires = tires(candidate);
        let is_new = !seen.contains(&tires);
        seen.push(tires);
        is_new.then_some((n + 1, candidate))
    })
}

/// The other rims of the same tires: `2 6J ET46, 3 7J ET43`.
fn other_rims(ranked: &[Candidate], rank: usize, first: &Candidate) -> String {
    let tires_of_first = tires(first);
    let others = ranked.iter().enumerate().skip(rank).filter(|(_, other)| tires(other) == tires_of_first);
    let rims = |candidate: &Candidate| {
        let mut rims: Vec<_> = candidate.choices().map(|choice| rim(choice.setup())).collect();
        rims.dedup();
        rims.join(" and ")
    };
    others.map(|(n, other)| format!("{} {}", n + 1, rims(other))).collect::<Vec<_>>().join(", ")
}

/// `6.5Jx16 ET46`.
fn rim(setup: &Setup) -> String {
    let (wheel, size) = (setup.wheel(), setup.wheel().size());
    let inset = wheel.inset().map_or(String::new(), |inset| format!(" {inset}"));
    format!("{}x{}{inset}", size.width(), size.diameter())
}

fn entry(scenario: &Scenario, candidate: &Candidate) -> String {
    let choices: Vec<_> = candidate.choices().collect();
    let mut text = String::new();
    match choices.as_slice() {
        [front, rear] if are_alike(front, rear) => {
            text += &lines("both", front);
            text += &needs_line(in_common(needs_of(front.needs()), needs_of(rear.needs())));
        }
        _ => {
            for (n, choice) in choices.iter().enumerate() {
                let part = lines(choice.position().name(), choice);
                text += &format!("{}{part}", if n == 0 { "" } else { "     " });
                text += &needs_line(needs_of(choice.needs()));
            }
        }
    }
    let least = candidate.margins().next().map_or("no margin is known".into(), |least| {
        let (place, check) = (least.position().name(), plain(least.check().name()));
        format!("least margin {} at {place} {check}", least.value())
    });
    let _ = writeln!(text, "     {}: {least}", verdict(scenario, candidate).name());
    let unjudged: Vec<_> = candidate.not_judged().iter().map(|id| plain(id.name())).collect();
    if !unjudged.is_empty() {
        let _ = writeln!(text, "     not judged: {}", unjudged.join(", "));
    }
    text
}

/// Whether the same is bought for both axles.
fn are_alike(front: &Choice, rear: &Choice) -> bool {
    let bought = |choice: &Choice| {
        let setup = choice.setup();
        (setup.tire(), setup.wheel(), setup.spacer(), choice.insets(), choice.listed_in())
    };
    bought(front) == bought(rear)
}

fn lines(place: &str, choice: &Choice) -> String {
    let setup = choice.setup();
    let (min, max) = (choice.insets().min(), choice.insets().max());
    let end =
        |check: Option<beadseat::fitment::CheckId>| check.map_or("nothing known".into(), |c| plain(c.name()));
    let spacer = match setup.spacer() {
        Some(spacer) if in_mm(spacer) > 0.0 => format!(" with {} mm of spacer", in_mm(spacer)),
        _ => String::new(),
    };
    let mut text = format!("{place:<5} {} on {}{spacer}\n", setup.tire(), setup.wheel());
    let _ = writeln!(
        text,
        "           {} to {}, ended by {} and {}",
        min.value(),
        max.value(),
        end(min.check()),
        end(max.check()),
    );
    let _ = writeln!(text, "           {}", coined(choice));
    text
}

/// Whether the size is listed, and what is expected of it where that matters.
fn coined(choice: &Choice) -> String {
    let listed = match choice.listed_in() {
        Some(list) if list.is_from_memory() => format!("listed, from memory: {}", list.document()),
        Some(list) => format!("listed: {}", list.document()),
        None => "in no list held here: may never have been made".into(),
    };
    match (choice.expectation(), choice.expected_load_index()) {
        (Expectation::Exceeds, Some(most)) => {
            format!("{listed}; hardly to be found: more than {most} is not expected of such a tire")
        }
        _ => listed,
    }
}

/// The things that are needed, as they are told.
const NEEDS: [&str; 8] =
    ["at least", "", "", "wheels rated", "barrel radius", "spokes out", "seats", "bore, or a ring to,"];

/// What a tire and a wheel need, each thing where [`NEEDS`] has it.
fn needs_of(needs: &Needs) -> [Option<String>; 8] {
    let service = match (needs.load_index(), needs.speed_symbol()) {
        (Some(index), Some(speed)) => Some(format!("{index}{speed}")),
        (Some(index), None) => Some(format!("load index {index}")),
        (None, Some(speed)) => Some(format!("speed symbol {speed}")),
        (None, None) => None,
    };
    let version = needs.load_version().map(|version| version.to_string());
    let pressure =
        needs.pressure().map(|pressure| match needs.pressure_full_load().filter(|full| *full != pressure) {
            Some(full) => {
                format!("{} kPa, {} at full load", in_kpa(pressure).round(), in_kpa(full).round())
            }
            None => format!("{} kPa", in_kpa(pressure).round()),
        });
    [
        service,
        version.or(needs.load_range().map(|range| range.to_string())),
        pressure,
        needs.wheel_rating().map(|rating| format!("{} kg", in_kg(rating).round())),
        needs.barrel_radius().map(|radius| format!("{} mm", in_mm(radius).round())),
        needs.spoke_back().map(|back| format!("{} mm", in_mm(back).round())),
        needs.seat().map(|seat| seat.to_string()),
        needs.bore().map(|bore| format!("{} mm", tidy(in_mm(bore.length())))),
    ]
}

/// The needs of two axles that have the same tires and wheels.
fn in_common(front: [Option<String>; 8], rear: [Option<String>; 8]) -> [Option<String>; 8] {
    let mut rears = rear.into_iter();
    front.map(|front| match (front, rears.next().flatten()) {
        (Some(front), Some(rear)) if front != rear => Some(format!("{front} (rear {rear})")),
        (Some(front), Some(_)) => Some(front),
        (Some(front), None) => Some(format!("{front} (front)")),
        (None, rear) => rear.map(|rear| format!("{rear} (rear)")),
    })
}

fn needs_line(needs: [Option<String>; 8]) -> String {
    let told = NEEDS.iter().zip(needs).filter_map(|(name, text)| Some(format!("{name} {}", text?)));
    let all: Vec<_> = told.map(|text| text.trim_start().to_owned()).collect();
    if all.is_empty() { String::new() } else { format!("           needs {}\n", all.join(", ")) }
}

fn needs_json(needs: &Needs) -> Value {
    let text = |value: Option<String>| value.map_or(Value::Null, Value::String);
    let bore = needs.bore().map(|bore| tidy(in_mm(bore.length())));
    json!({
        "load_index": needs.load_index().map(|index| index.number()),
        "speed_symbol": text(needs.speed_symbol().map(|speed| speed.to_string())),
        "load_version": text(needs.load_version().map(|version| version.to_string())),
        "load_range": text(needs.load_range().map(|range| range.to_string())),
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
        "listed": choice.listed_in().map(|list| list.to_string()),
        "expected_load_index": choice.expected_load_index().map(|index| index.number()),
        "expectation": choice.expectation().name(),
    });
    if let (Some(spacer), Some(axle)) = (spacer, axle.as_object_mut()) {
        axle.insert("spacer_mm".into(), json!(spacer));
    }
    axle
}

fn margin_json(margin: &Margin) -> Value {
    serde_json::to_value(margin).unwrap_or(Value::Null)
}

fn score(candidate: &Candidate) -> f64 {
    tidy(Likely.score(candidate))
}

/// One line a candidate; the first line also has what belongs to the whole search, and where nothing fits, nothing else.
pub(crate) fn json(scenario: &Scenario, search: &Search<'_>, found: &Found<'_>) -> String {
    let ranked = found.ranked;
    let mut lines: Vec<_> =
        ranked.iter().enumerate().map(|(n, candidate)| line(scenario, n + 1, candidate)).collect();
    if lines.is_empty() {
        lines.push(json!({ "rank": null }));
    }
    if let Some(first) = lines.first_mut() {
        let next = narrowing(search, ranked)
            .map(|narrowing| json!({ "path": narrowing.path().to_string(), "how": narrowing.input().how() }));
        first["measure_next"] = next.unwrap_or(Value::Null);
        first["assumed"] = assumed(scenario).map(Value::from).collect();
        first["not_looked_at"] = not_looked_at(scenario).into();
        let misses = best_misses(found).iter().map(miss_json).collect();
        first["near_misses"] = if found.misses.is_some() { misses } else { Value::Null };
    }
    lines.iter().map(|line| format!("{line}\n")).collect()
}

/// What a vehicle has beside its front and rear wheels, on which a search tries nothing.
pub(crate) fn not_looked_at(scenario: &Scenario) -> String {
    let spare = scenario.spare().map(|_| "the spare wheel".to_owned());
    let axles = scenario.more_axles().map(|axle| beadseat::Excerpt(axle.name()).to_string());
    spare.into_iter().chain(axles).collect::<Vec<_>>().join(", ")
}

/// The values of the vehicle and its original that are assumed.
fn assumed(scenario: &Scenario) -> impl Iterator<Item = &str> {
    let assumed = scenario.provenance().iter().filter(|value| value.is_assumed());
    assumed.map(|value| value.of()).filter(|of| !of.starts_with("proposed"))
}

/// The verdict on a candidate; what rests on what is assumed is at best marginal.
fn verdict(scenario: &Scenario, candidate: &Candidate) -> Verdict {
    match assumed(scenario).next() {
        Some(_) => scenario.assess_proposed(candidate.setups()).overall(),
        None => candidate.verdict(),
    }
}

fn line(scenario: &Scenario, rank: usize, candidate: &Candidate) -> Value {
    json!({
        "rank": rank,
        "score": score(candidate),
        "axles": candidate.choices().map(axle_json).collect::<Vec<_>>(),
        "least_margin": candidate.margins().next().as_ref().map(margin_json),
        "not_judged": candidate.not_judged().iter().map(|id| id.name()).collect::<Vec<_>>(),
        "verdict": verdict(scenario, candidate).name(),
        "listed": candidate.is_listed(),
        "expectation": candidate.expectation().name(),
    })
}

pub(crate) fn csv(scenario: &Scenario, ranked: &[Candidate]) -> Result<String, String> {
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
        "load_version",
        "load_range",
        "pressure_kpa",
        "pressure_full_load_kpa",
        "wheel_rating_kg",
        "verdict",
        "least_margin",
        "least_margin_where",
        "least_margin_value",
        "least_margin_unit",
        "not_judged",
        "listed",
        "expected_load_index",
        "expectation",
    ];
    let show = |number: Option<f64>| number.map_or(String::new(), |number| tidy(number).to_string());
    let write = |writer: &mut csv::Writer<Vec<u8>>| -> Result<(), csv::Error> {
        writer.write_record(header)?;
        for (n, candidate) in ranked.iter().enumerate() {
            let least = candidate.margins().next();
            let unjudged: Vec<_> = candidate.not_judged().iter().map(|id| id.name()).collect();
            let (score, verdict) = (score(candidate), verdict(scenario, candidate));
            for choice in candidate.choices() {
                let (setup, insets, needs) = (choice.setup(), choice.insets(), choice.needs());
                let id = |check: Option<beadseat::fitment::CheckId>| {
                    check.map_or("", |check| check.name()).to_owned()
                };
                writer.write_record([
                    (n + 1).to_string(),
                    show(Some(score)),
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
                    needs.load_version().map_or(String::new(), |version| version.to_string()),
                    needs.load_range().map_or(String::new(), |range| range.to_string()),
                    show(needs.pressure().map(in_kpa)),
                    show(needs.pressure_full_load().map(in_kpa)),
                    show(needs.wheel_rating().map(in_kg)),
                    verdict.name().into(),
                    least.map_or(String::new(), |m| m.check().name().into()),
                    least.map_or(String::new(), |m| m.position().name().into()),
                    show(least.and_then(|m| margin_json(&m)["value"].as_f64())),
                    least.map_or(String::new(), |m| m.value().unit().into()),
                    unjudged.join(" "),
                    choice.listed_in().map_or(String::new(), |list| list.to_string()),
                    choice.expected_load_index().map_or(String::new(), |index| index.to_string()),
                    choice.expectation().name().into(),
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
