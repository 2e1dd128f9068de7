//! Every number can be worked out again from the line that it stands in: by an evaluator of the printed text alone, which
//! knows arithmetic and nothing of tires.

#![allow(clippy::disallowed_methods, reason = "the other way to the same figure")]

use std::collections::BTreeSet;

use beadseat::Citation;
use beadseat::fitment::derivation::{Derivations, Figure, Step, Subject};
use beadseat::fitment::moves::{MoveId, Moves};
use beadseat::fitment::{
    Bound, Change, Check, CheckId, Conditions, Limits, Position, Reason, Setup, Setups, TractionClass, Value,
    Verdict, assess,
};
use beadseat::scenario::Scenario;
use beadseat::units::{in_kg, in_kmh, in_kpa, in_mm, in_nm, in_percent, in_years, kg, kmh, kpa, mm, percent};
use beadseat::vehicle::Vehicle;
use proptest::prelude::*;
use proptest::sample::select;
use proptest::strategy::ValueTree;

use super::common::maybe;

/// Half of the last of seven digits.
fn half_a_digit(number: f64) -> f64 {
    let size = number.abs().max(1e-6).log10().floor();
    0.5 * 10f64.powf((size - 6.0).max(-12.0))
}

/// An expression as it is printed, read up to where it ends.
struct Reader<'a> {
    rest: &'a str,
    /// Which number is moved, and how far.
    moved: Option<(usize, f64)>,
    numbers: Vec<f64>,
}

impl<'a> Reader<'a> {
    fn new(text: &'a str, moved: Option<(usize, f64)>) -> Self {
        Self { rest: text, moved, numbers: vec![] }
    }

    fn eat(&mut self, word: &str) -> bool {
        let rest = self.rest.trim_start_matches(' ').strip_prefix(word);
        self.rest = rest.unwrap_or(self.rest);
        rest.is_some()
    }

    fn sum(&mut self) -> Option<f64> {
        let mut sum = self.product()?;
        loop {
            if self.eat("+ ") {
                sum += self.product()?;
            } else if self.eat("− ") {
                sum -= self.product()?;
            } else {
                return Some(sum);
            }
        }
    }

    fn product(&mut self) -> Option<f64> {
        let mut product = self.power()?;
        loop {
            if self.eat("× ") {
                product *= self.power()?;
            } else if self.eat("/ ") {
                product /= self.power()?;
            } else {
                return Some(product);
            }
        }
    }

    fn power(&mut self) -> Option<f64> {
        let base = self.atom()?;
        if !self.eat("^") {
            return Some(base);
        }
        // An exponent is no figure, and not rounded.
        let (moved, count) = (self.moved.take(), self.numbers.len());
        let exponent = self.atom()?;
        self.numbers.truncate(count);
        self.moved = moved;
        Some(base.powf(exponent))
    }

    fn arguments(&mut self) -> Option<Vec<f64>> {
        let mut list = vec![self.sum()?];
        while self.eat(", ") {
            list.push(self.sum()?);
        }
        self.eat(")").then_some(list)
    }

    fn atom(&mut self) -> Option<f64> {
        type Function = fn(&[f64]) -> f64;
        let functions: [(&str, Function); 8] = [
            ("min(", |x| x.iter().copied().fold(f64::INFINITY, f64::min)),
            ("max(", |x| x.iter().copied().fold(f64::NEG_INFINITY, f64::max)),
            ("round(", |x| (x[0] + 0.5).floor()),
            ("cos(", |x| x[0].to_radians().cos()),
            ("sin(", |x| x[0].to_radians().sin()),
            ("tan(", |x| x[0].to_radians().tan()),
            ("√(", |x| x[0].sqrt()),
            ("(", |x| x[0]),
        ];
        if self.eat("π") {
            return Some(std::f64::consts::PI);
        }
        for (name, function) in functions {
            if self.eat(name) {
                return self.arguments().map(|arguments| function(&arguments));
            }
        }
        let text = self.rest.trim_start_matches(' ');
        let sign = usize::from(text.starts_with('-'));
        let digits =
            text[sign..].find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len() - sign);
        let number = text[..sign + digits].parse().ok()?;
        self.rest = &text[sign + digits..];
        let by = self.moved.filter(|(place, _)| *place == self.numbers.len()).map_or(0.0, |(_, by)| by);
        self.numbers.push(number);
        Some(number + by)
    }
}

/// The value of the expression that a text begins with, what rounding its numbers may make of it, and what is behind.
fn evaluate(text: &str) -> Option<(f64, f64, &str)> {
    let mut reader = Reader::new(text, None);
    let value = reader.sum()?;
    // Of both ways that a number may be rounded the one that goes further.
    let slack = reader.numbers.iter().enumerate().map(|(place, number)| {
        let by = half_a_digit(*number);
        let off = |by| (Reader::new(text, Some((place, by))).sum().unwrap() - value).abs();
        off(by).max(off(-by))
    });
    Some((value, slack.sum(), reader.rest))
}

/// What a printed line says: the number at its end, after the expression is worked out again if it has one.
fn worked_again(line: &str) -> Option<f64> {
    let (_, said) = line.split_once(" = ")?;
    let (value, slack, rest) = evaluate(said).unwrap_or_else(|| panic!("no expression: {line}"));
    let Some(result) = rest.strip_prefix(" = ") else { return Some(value) };
    let (result, _, _) = evaluate(result).unwrap_or_else(|| panic!("no result: {line}"));
    let off = (value - result).abs();
    assert!(
        off <= 1.01 * (slack + half_a_digit(result)) + 1e-11,
        "{line}\nis {value}, off by {off}, may be by {slack}"
    );
    Some(result)
}

/// What was told, one step after the other.
#[derive(Default)]
struct Heard {
    lines: Vec<String>,
    figures: Vec<Figure>,
}

impl Heard {
    fn hear(&mut self, step: &Step<'_>) {
        let line = step.to_string();
        let again = worked_again(&line);
        assert_eq!(again.is_some(), step.figure().is_some(), "{line}");
        for number in step.numbers() {
            assert!(self.has(*number), "nothing says where {number} comes from: {line}\n{:#?}", self.lines);
        }
        if let (Some(again), Some(figure)) = (again, step.figure()) {
            assert!(is_near(again, figure.number()), "{line}");
            self.figures.push(figure);
        }
        self.lines.push(line);
    }

    /// Whether a number was told before.
    fn has(&self, number: f64) -> bool {
        self.figures.iter().any(|figure| is_near(figure.number(), number))
    }
}

fn is_near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 2.0 * half_a_digit(b) + 1e-9
}

/// The number of a reading in its unit; nothing of a designation.
fn number(value: Value) -> Option<f64> {
    Some(match value {
        Value::Length(length) => in_mm(length),
        Value::Mass(mass) => in_kg(mass),
        Value::Pressure(pressure) => in_kpa(pressure),
        Value::Velocity(speed) => in_kmh(speed),
        Value::Ratio(share) => in_percent(share),
        Value::Time(time) => in_years(time),
        Value::Torque(torque) => in_nm(torque),
        Value::RimWidth(_) | Value::RimDiameter(_) => value.to_string().split(' ').next()?.parse().ok()?,
        _ => return None,
    })
}

fn ends(bound: Bound) -> Vec<Value> {
    match bound {
        Bound::AtMost(end) | Bound::AtLeast(end) | Bound::Equals(end) => vec![end],
        Bound::Between(least, most) => vec![least, most],
        other => panic!("another bound: {other}"),
    }
}

/// Findings without a number that have nothing to compare but what their reason says.
fn needs_no_step(check: &Check) -> bool {
    check.measured().is_none()
        && match check.id() {
            CheckId::SweptClearance => check.reason() == Reason::NothingOnThisSide,
            CheckId::TireAge => matches!(check.reason(), Reason::DateCodeAhead | Reason::DateCodeFalse),
            CheckId::Track => check.reason() == Reason::Inside,
            CheckId::BrakeClearance | CheckId::ThreadEngagement | CheckId::TireLoadVsOriginal => {
                check.reason() == Reason::Unchanged
            }
            _ => false,
        }
}

/// Holds a finding against its derivation.
fn hold_finding(of: &Derivations<'_>, check: &Check) {
    let mut heard = Heard::default();
    let told = of.check(check.id(), check.position(), &mut |step| heard.hear(step));
    assert_eq!(told, Some(*check));
    let said = || format!("{check}\n{:#?}", heard.lines);
    if matches!(check.verdict(), Verdict::NotAssessed | Verdict::NotApplicable) {
        assert!(heard.lines.is_empty(), "{}", said());
        return;
    }
    assert!(!heard.lines.is_empty() || needs_no_step(check), "no step: {}", said());
    let Some(value) = check.measured() else { return };
    for end in ends(check.limit().unwrap()).into_iter().filter_map(number) {
        assert!(heard.has(end), "nothing says where the limit comes from: {}", said());
    }
    let Some(value) = number(value) else {
        assert!(heard.lines.len() >= 2, "a designation is held against another: {}", said());
        return;
    };
    let last = heard.figures.last().unwrap_or_else(|| panic!("no number: {}", said()));
    assert_eq!(last.unit(), check.measured().unwrap().unit(), "{}", said());
    assert!(is_near(last.number(), value), "the last step is another number: {}", said());
}

/// Holds what is printed of a finding against it: the result with its margin, and every step in a line of its own.
fn hold_print(of: &Derivations<'_>, check: &Check) {
    let mut lines = vec![];
    let source =
        |step: &Step<'_>| step.citation().filter(|c| *c != Citation::DESIGNATION).map(|c| c.to_string());
    of.check(check.id(), check.position(), &mut |step| {
        lines.push((step.to_string(), source(step).unwrap_or_default()));
    });
    let explanation = of.explain(Subject::Check(check.id())).at(check.position());
    let text = explanation.to_string();
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    let words = text.split_whitespace().collect::<Vec<_>>().join(" ");
    // A source stands in full where it is first told.
    let mut told: Vec<(&str, usize)> = vec![];
    let printed: Vec<String> = lines
        .iter()
        .enumerate()
        .map(|(n, (line, source))| {
            let known = told.iter().find(|(known, _)| known == source).map(|(_, line)| *line);
            told.push((source, n + 1));
            match known.filter(|_| source.len() > 2) {
                Some(known) => format!(
                    " {}. {}, source as in {known}",
                    n + 1,
                    line.strip_suffix(source.as_str()).unwrap().trim_end_matches(", ")
                ),
                None => format!(" {}. {line}", n + 1),
            }
        })
        .collect();
    for line in &printed {
        assert!(words.contains(line), "{line}\nis not in\n{text}");
    }
    let (_, result) = words.split_once("Result: ").unwrap();
    let page = explanation.in_markdown().to_string().replace('\\', "");
    assert!(
        printed.iter().all(|line| page.contains(line.trim_start())) && page.contains(result.trim_end()),
        "{page}"
    );
    if let Some(value) = check.measured().and_then(number) {
        let (printed, _, _) = evaluate(result).unwrap();
        assert!(is_near(printed, value), "{result}");
        if check.margin().is_some() {
            let (_, margin) = result.split_once(", margin").unwrap();
            let printed = worked_again(&format!("margin{margin}")).unwrap();
            let in_inches = check.measured().unwrap().unit() == "in";
            let margin = number(check.margin().unwrap()).unwrap() / if in_inches { 25.4 } else { 1.0 };
            assert!(is_near(printed, margin), "{result}");
        }
    }
}

fn hold_moves(of: &Derivations<'_>, vehicle: &Vehicle, change: &Change) {
    for found in Moves::of(vehicle, change).iter().filter(|found| found.id() != MoveId::TrueSpeed) {
        let mut heard = Heard::default();
        assert_eq!(of.moved(found.id(), found.position(), &mut |step| heard.hear(step)), Some(found));
        assert!(!heard.lines.is_empty(), "{found}");
        for value in [found.before(), found.after()].into_iter().flatten().filter_map(number) {
            assert!(heard.has(value), "{found}\n{:#?}", heard.lines);
        }
        if let Some(change) = found.change().and_then(number) {
            assert!(is_near(heard.figures.last().unwrap().number(), change), "{found}\n{:#?}", heard.lines);
        }
    }
    for place in [Position::Front, Position::Rear] {
        let mut heard = Heard::default();
        of.moved(MoveId::TrueSpeed, place, &mut |step| heard.hear(step));
        let speeds = Moves::of(vehicle, change);
        for found in
            speeds.iter().filter(|found| (found.id(), found.position()) == (MoveId::TrueSpeed, place))
        {
            assert!(heard.has(number(found.after().unwrap()).unwrap()), "{found}\n{:#?}", heard.lines);
            assert!(heard.has(number(found.change().unwrap()).unwrap()), "{found}\n{:#?}", heard.lines);
        }
    }
}

/// Tires of which more comes from tables than of those in [`super::TIRES`].
const RARE: &[&str] = &[
    "155R13 78S",
    "175/70R13 82T",
    "33x12.50R17LT 114Q LRD",
    "130/80-18 66H",
    "8.25R20 128/126K",
    "T125/70D15 95M",
    "ST205/75R15 LRC",
];

prop_compose! {
    /// Setups with what the other laws have no use for.
    fn more(whole: Setup)(
        tire in maybe(select(RARE)),
        masses in maybe((8.0..14.0, 7.0..15.0)),
        pressure in maybe(150.0..420.0),
    ) -> Setup {
        let mut setup = match tire {
            Some(tire) if masses.is_some() => Setup::new(tire.parse().unwrap(), whole.wheel()),
            _ => whole,
        };
        try_set!(setup, with_tire_mass masses.map(|(tire, _)| kg(tire)), with_wheel_mass masses.map(|(_, wheel)| kg(wheel)));
        if setup.pressure().is_none() {
            try_set!(setup, with_pressure pressure.map(kpa));
        }
        setup
    }
}

fn setups() -> impl Strategy<Value = Setups> {
    (maybe(super::setup().prop_flat_map(more)), maybe(super::setup().prop_flat_map(more)))
        .prop_map(|(front, rear)| Setups { front, rear })
}

prop_compose! {
    fn change()(original in setups(), other in setups(), stays in prop_oneof![4 => Just(false), 1 => Just(true)]) -> Change {
        Change { original, proposed: if stays { original } else { other } }
    }
}

prop_compose! {
    fn limits()(
        mut limits in super::limits(),
        height in maybe(0.0..20.0),
        ground in maybe(100.0..200.0),
        gap in maybe(0.0..40.0),
        own in prop_oneof![3 => Just(None), 1 => (0.0..20.0, 0.0..4.0).prop_map(Some)],
        floor in maybe(140.0..200.0),
        towing in any::<bool>(),
    ) -> Limits {
        try_set!(limits, with_own_ride_height_change height.map(mm), with_own_ground_clearance ground.map(mm),
            with_own_dual_gap gap.filter(|gap| *gap > 20.0).map(mm), with_own_clearance own.map(|own| mm(own.0)),
            with_own_track_growth_share own.map(|own| percent(own.1)), with_own_diameter_growth own.map(|own| mm(own.0)),
            with_own_snow_speed_floor floor.map(kmh));
        limits.with_towing_allowance(towing).with_lower_load_index(towing)
    }
}

prop_compose! {
    fn conditions()(
        class in select(TractionClass::ALL),
        top in maybe(80.0..200.0),
        towing in any::<bool>(),
    ) -> Conditions {
        let mut conditions = Conditions::new()
            .with_date("2026-11-25".parse().unwrap())
            .with_traction_device(class)
            .with_towing(towing);
        try_set!(conditions, with_top_speed top.map(kmh));
        conditions
    }
}

proptest! {
    /// The last step of a finding comes to what it measured, its limit is told, every step can be worked out again from
    /// what is printed, and every number in it was told before.
    #[test]
    fn every_number_of_a_finding_can_be_worked_out_again(
        vehicle in super::vehicle(), change in change(), conditions in conditions(), limits in limits(),
    ) {
        let of = Derivations::new(&vehicle, &change, &conditions, &limits);
        for check in assess(&vehicle, &change, &conditions, &limits).checks() {
            hold_finding(&of, &check);
            hold_print(&of, &check);
        }
    }

    /// The same of what moves and of what else changes.
    #[test]
    fn every_number_of_a_move_or_an_effect_can_be_worked_out_again(
        vehicle in super::vehicle(), change in change(), conditions in conditions(), limits in limits(),
    ) {
        let of = Derivations::new(&vehicle, &change, &conditions, &limits);
        hold_moves(&of, &vehicle, &change);
        for effect in assess(&vehicle, &change, &conditions, &limits).effects() {
            let mut heard = Heard::default();
            assert_eq!(of.effect(effect.id(), effect.position(), &mut |step| heard.hear(step)), Some(effect));
            let [before, after] = [effect.before(), effect.after()].map(|value| number(value).unwrap());
            assert!(heard.has(before), "{effect:?}\n{:#?}", heard.lines);
            assert!(heard.figures.last().is_some_and(|last| is_near(last.number(), after)), "{effect:?}\n{:#?}", heard.lines);
        }
    }
}

/// Every check, move and effect that has a number has a derivation, over some thousand vehicles.
#[test]
fn everything_is_explained_somewhere() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut told = BTreeSet::new();
    for _ in 0..3000 {
        let drawn =
            (super::vehicle(), change(), conditions(), limits()).new_tree(&mut runner).unwrap().current();
        let (vehicle, change, conditions, limits) = &drawn;
        let of = Derivations::new(vehicle, change, conditions, limits);
        for place in Position::ALL {
            // What is swept is told of fewer vehicles, and slowly.
            for subject in Subject::all().filter(|s| *s != Subject::Check(CheckId::SweptClearance)) {
                let mut steps = 0;
                let mut hear = |_: &Step<'_>| steps += 1;
                let is_found = match subject {
                    Subject::Check(id) => of.check(id, *place, &mut hear).is_some(),
                    Subject::Move(id) => of.moved(id, *place, &mut hear).is_some(),
                    Subject::Effect(id) => of.effect(id, *place, &mut hear).is_some(),
                    other => panic!("nobody explains {other:?}"),
                };
                if is_found && steps > 0 {
                    told.insert(format!("{subject:?}"));
                }
            }
        }
        if told.len() == Subject::all().count() - 1 {
            return;
        }
    }
    panic!("not all is explained: {told:#?}");
}

/// A scenario of the examples with some values set, or with `null` removed, as the rows of cases have them.
fn patched(name: &str, patches: &str) -> Scenario {
    let path = format!("{}/../../examples/scenarios/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let mut document: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let patches: serde_json::Map<String, serde_json::Value> = serde_json::from_str(patches).unwrap();
    for (pointer, value) in patches {
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        let parent = document.pointer_mut(parent).unwrap().as_object_mut().unwrap();
        if value.is_null() { drop(parent.remove(key)) } else { drop(parent.insert(key.into(), value)) }
    }
    serde_json::from_value(document).unwrap()
}

/// What random vehicles seldom meet: the cases of every check, at its limit and one step either side.
#[test]
fn every_case_of_a_check_can_be_worked_out_again() {
    let path = format!("{}/../../tests/cases/assess.csv", env!("CARGO_MANIFEST_DIR"));
    let mut checked = 0;
    for row in csv::Reader::from_path(path).unwrap().records() {
        let row = row.unwrap();
        let scenario = patched(&row[1], &row[2]);
        let (id, place) = (row[3].parse().unwrap(), row[4].parse().unwrap());
        let check = scenario.assess().get(id, place).unwrap();
        eprintln!("{}: {check}", &row[0]);
        hold_finding(&scenario.derivations(), &check);
        hold_print(&scenario.derivations(), &check);
        checked += usize::from(check.measured().is_some());
    }
    assert!(checked > 200, "{checked}");
}

/// The evaluator is no yes-man: a wrong figure in any place of a line is found.
#[test]
fn a_wrong_line_is_found() {
    let right = "D = 432 + 2 × 101 = 634 mm, a source with 2 = 3";
    assert_eq!(worked_again(right), Some(634.0));
    assert_eq!(worked_again("x = min(3, (-2)) × √(16) / 2^3 − 0.5 = -1.5"), Some(-1.5));
    assert_eq!(worked_again("given = 12.5 mm, as given"), Some(12.5));
    for wrong in
        ["D = 433 + 2 × 101 = 634 mm", "D = 432 + 3 × 101 = 634 mm", "D = 432 + 2 × 101 = 634.001 mm"]
    {
        assert!(std::panic::catch_unwind(|| worked_again(wrong)).is_err(), "{wrong}");
    }
}
