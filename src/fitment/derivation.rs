//! How a number came about: every finding, move and effect, line by line, with the numbers put in and their sources.
//!
//! A derivation is worked out anew when it is asked for, from the same facts as the finding, and told one [`Step`] after
//! the other. What a step works out can be worked out again from the numbers in its line alone.

use core::fmt::{self, Write};
use core::ops::ControlFlow;

use super::case::Case;
use super::check::{Check, CheckId, Position, Verdict};
use super::checks::{
    self, Run, axles, brake, chains, clearance, condition, duals, effects, engagement, fasteners, geometry,
    guard, hub, load, pressure, ride, rim, rolling, seats, swept,
};
use super::effect::{Effect, EffectId};
use super::facts::SIDES;
use super::finding::finish;
use super::judge::{judge, with_axles};
use super::layout::wrapped;
use super::measure::Keys;
use super::moves::{self, Move, MoveId, MoveIn, Moves};
#[cfg(feature = "serde")]
use super::report::Report;
use super::value::{Bound, Value};
use super::{Change, Conditions, Limits};
use crate::Citation;
use crate::decimals::Decimals;
use crate::step::{Digits, Teller, write_form};
pub use crate::step::{Figure, Step};
use crate::text::Name;
use crate::unit_system::UnitSystem;
use crate::units;
use crate::vehicle::Vehicle;

/// How the numbers of an assessment came about.
///
/// ```
/// use beadseat::fitment::derivation::{Derivations, Subject};
/// use beadseat::fitment::{Change, CheckId, Conditions, Limits, Setup};
/// use beadseat::vehicle::{Kind, Vehicle};
/// let car = Vehicle::new(Kind::Passenger);
/// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx17")?];
/// let (change, conditions, limits) = (Change::front(old, new), Conditions::default(), Limits::default());
/// let derivations = Derivations::new(&car, &change, &conditions, &limits);
/// let text = derivations.explain(Subject::Check(CheckId::OverallDiameter)).to_string();
/// assert!(text.contains("overall diameter D of the proposed 225/45R17 = 432 + 2 × 101 = 634 mm"));
/// assert!(text.contains("Result: 0.3164557 %, at least -3 and at most 3 %"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Derivations<'a> {
    vehicle: &'a Vehicle,
    change: &'a Change,
    conditions: &'a Conditions,
    limits: &'a Limits,
    keys: Keys,
}

impl<'a> Derivations<'a> {
    /// Of the same that [`assess`](super::assess) is given.
    pub const fn new(
        vehicle: &'a Vehicle,
        change: &'a Change,
        conditions: &'a Conditions,
        limits: &'a Limits,
    ) -> Self {
        Self { vehicle, change, conditions, limits, keys: Keys::OF_TWO_AXLES }
    }

    /// The same of a further axle, by the keys of its report.
    #[cfg(feature = "serde")]
    pub(super) const fn of_further(self, report: &Report) -> Self {
        Self { keys: report.keys(), ..self }
    }

    /// Whether it is about a place: of a further axle, which stands behind another here, nothing is told of that.
    fn tells(&self, subject: Subject, place: Position) -> bool {
        !self.keys.is_of_further()
            || place.axle() == Position::Rear
            || place == Position::Vehicle && subject == Subject::Check(CheckId::AxleMatch)
    }

    /// Tells the steps behind a finding, the last of which comes to what was measured, and returns the finding; nothing
    /// where it is not made there. One that has no number may have no step, and one that was not assessed has none.
    pub fn check(&self, id: CheckId, place: Position, hear: &mut dyn FnMut(&Step<'_>)) -> Option<Check> {
        let mut made = None;
        self.each(id, |axles, check| {
            if check.position() == place {
                tell(axles, check, &mut Teller::new(hear));
                made = Some(*check);
            }
        });
        made
    }

    /// Tells the steps behind what moves on an axle, the last of which is the change, and returns it; the speed is told
    /// behind every indication.
    pub fn moved(&self, id: MoveId, place: Position, hear: &mut dyn FnMut(&Step<'_>)) -> Option<Move> {
        let mut last = None;
        self.each_move(id, |found| {
            if found.position() == place {
                self.tell_move(&found, hear);
                last = Some(found);
            }
        });
        last
    }

    /// Tells the steps behind an effect, the last of which comes to what it is after the change, and returns the effect.
    pub fn effect(&self, id: EffectId, place: Position, hear: &mut dyn FnMut(&Step<'_>)) -> Option<Effect> {
        let mut made = None;
        self.each_effect(|axles, effect| {
            if (effect.id(), effect.position()) == (id, place) {
                let _: Option<()> = effects::tell_effect(axles, &effect, &mut Teller::new(hear));
                made = Some(effect);
            }
        });
        made
    }

    fn tell_move(&self, found: &Move, hear: &mut dyn FnMut(&Step<'_>)) {
        let _: Option<()> = moves::tell(self.vehicle, self.change, found, &mut Teller::new(hear));
    }

    /// Every finding of a check, with the axles that it looked at.
    fn each(&self, id: CheckId, mut hear: impl FnMut(&[Option<Case<'_>>; 2], &Check)) {
        with_axles(self.vehicle, self.change, self.conditions, self.limits, |axles| {
            let _: ControlFlow<()> = judge(
                axles,
                |definition| definition.id == id,
                |_, place, found, _| {
                    if self.tells(Subject::Check(id), place) {
                        hear(axles, &finish(id, place, found));
                    }
                    ControlFlow::Continue(())
                },
            );
        });
    }

    /// Every move of an id.
    fn each_move(&self, id: MoveId, hear: impl FnMut(Move)) {
        let is_told = |found: &Move| found.id() == id && self.tells(Subject::Move(id), found.position());
        Moves::of(self.vehicle, self.change).iter().filter(is_told).for_each(hear);
    }

    fn each_effect(&self, mut hear: impl FnMut(&[Option<Case<'_>>; 2], Effect)) {
        with_axles(self.vehicle, self.change, self.conditions, self.limits, |axles| {
            let tells = |effect: &Effect| self.tells(Subject::Effect(effect.id()), effect.position());
            checks::effects(axles, |effect| {
                if tells(&effect) {
                    hear(axles, effect);
                }
            });
        });
    }

    /// Everything about a subject to print, wherever it was found.
    pub const fn explain(self, subject: Subject) -> Explanation<'a> {
        Explanation { of: self, subject, place: None, units: UnitSystem::Metric, is_markdown: false }
    }
}

/// Tells the steps behind one finding.
fn tell(axles: &[Option<Case<'_>>; 2], check: &Check, tell: &mut Teller<'_>) {
    if matches!(check.verdict(), Verdict::NotAssessed | Verdict::NotApplicable) {
        return;
    }
    let _: Option<()> = tell_finding(axles, check, tell);
}

fn tell_finding(axles: &[Option<Case<'_>>; 2], check: &Check, tell: &mut Teller<'_>) -> Option<()> {
    match check.id() {
        CheckId::Speedometer => return rolling::tell_speedometer(axles, check, tell),
        CheckId::AxleMatch => return axles::tell_axle_match(axles, check, tell),
        _ => {}
    }
    let case = axles.iter().flatten().find(|case| case.place == check.position().axle())?;
    let side = || {
        let ends = case.ends().find(|(place, _)| *place == check.position());
        // Of a motorcycle's one end, whichever was described.
        let Run::End(run) = check.id().definition().run else { return Some(ends?.1) };
        let is_its = |side: &_| {
            run(case, *side).is_ok_and(|f| (f.measured, f.reason) == (check.measured(), check.reason()))
        };
        SIDES
            .into_iter()
            .filter(|side| case.is_motorcycle() || ends.is_some_and(|(_, end)| end == *side))
            .find(is_its)
    };
    match check.id() {
        CheckId::BeadDiameter => rim::tell_bead_diameter(check, tell),
        CheckId::RimWidth => rim::tell_rim_width(case, check, tell),
        CheckId::TireLoad => load::tell_tire_load(case, check, tell),
        CheckId::TireLoadVsOriginal => load::tell_tire_load_vs_original(case, check, tell),
        CheckId::Inflation => pressure::tell_inflation(case, check, tell),
        CheckId::LoadReserve => load::tell_load_reserve(case, check, tell),
        CheckId::SpeedSymbol => load::tell_speed_symbol(case, check, tell),
        CheckId::WheelLoad => load::tell_wheel_load(case, check, tell),
        CheckId::OverallDiameter => geometry::tell_overall_diameter(case, tell),
        CheckId::Speedometer | CheckId::AxleMatch => None,
        CheckId::RimContour => rim::tell_rim_contour(case, tell),
        CheckId::BoltCircle => hub::tell_bolt_circle(check, tell),
        CheckId::CentreBore => hub::tell_centre_bore(case, check, tell),
        CheckId::FastenerThread => fasteners::tell_fastener_thread(case, check, tell),
        CheckId::FastenerSeat => seats::tell_fastener_seat(check, tell),
        CheckId::ThreadEngagement => engagement::tell_thread_engagement(case, check, tell),
        CheckId::BrakeClearance => brake::tell_brake_clearance(case, check, tell),
        CheckId::Track => geometry::tell_track(case, check, tell),
        CheckId::ScrubRadius => geometry::tell_scrub_radius(case, check, tell),
        CheckId::OuterClearance => clearance::tell_outer_clearance(case, check, tell),
        CheckId::InnerClearance => clearance::tell_inner_clearance(case, check, tell),
        CheckId::UpperClearance => clearance::tell_upper_clearance(case, check, tell),
        CheckId::RideHeight => geometry::tell_ride_height(case, tell),
        CheckId::GroundClearance => ride::tell_ground_clearance(case, check, tell),
        CheckId::DualSpacing => duals::tell_dual_spacing(case, check, tell),
        CheckId::WheelGuard => guard::tell_wheel_guard(case, check, tell),
        CheckId::ChainClearance => chains::tell_chain_clearance(case, check, tell),
        CheckId::SweptClearance => swept::tell_swept_clearance(case, side()?, check, tell),
        CheckId::TireAge => condition::tell_tire_age(case, side()?, check, tell),
        CheckId::Tread => condition::tell_tread(check, tell),
        CheckId::Mounting => condition::tell_mounting(case, side()?, tell),
    }
}

/// What may be explained: a finding, a move or an effect, by its name in files.
///
/// ```
/// use beadseat::fitment::derivation::Subject;
/// let named: Vec<_> = Subject::named("overall_diameter").collect();
/// assert_eq!(named.len(), 2); // how far it changes is a finding and a move
/// assert_eq!(Subject::named("no_such_thing").count(), 0);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Subject {
    /// How a finding came about.
    Check(CheckId),
    /// How what moves came about.
    Move(MoveId),
    /// How an effect came about.
    Effect(EffectId),
}

impl Subject {
    /// Everything that can be explained, in the order of a report.
    pub fn all() -> impl Iterator<Item = Self> {
        let moves = MoveId::ALL.iter().map(|&id| Self::Move(id));
        let checks = CheckId::ALL.iter().map(|&id| Self::Check(id));
        moves.chain(checks).chain(EffectId::ALL.iter().map(|&id| Self::Effect(id)))
    }

    /// All that has a name.
    pub fn named(name: &str) -> impl Iterator<Item = Self> {
        Self::all().filter(move |subject| subject.name() == name)
    }

    /// Its name, as it stands in files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Check(id) => id.name(),
            Self::Move(id) => id.name(),
            Self::Effect(id) => id.name(),
        }
    }
}

/// The derivation of a finding, a move or an effect as text: of each place a title, the steps and the result.
///
/// `Display` lays it out for a terminal of 80 columns, or as Markdown.
///
/// ```
/// use beadseat::fitment::derivation::{Derivations, Subject};
/// use beadseat::fitment::{Change, Conditions, Limits, Position, Setup, UnitSystem, moves::MoveId};
/// use beadseat::vehicle::Vehicle;
/// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16 ET46")?, Setup::parse("205/55R16", "6.5Jx16 ET40")?];
/// let (vehicle, change) = (Vehicle::unknown(), Change::all_round(old, new));
/// let (conditions, limits) = (Conditions::default(), Limits::default());
/// let explanation = Derivations::new(&vehicle, &change, &conditions, &limits).explain(Subject::Move(MoveId::Inset));
/// let page = explanation.at(Position::Rear).in_units(UnitSystem::Both).in_markdown().to_string();
/// assert!(page.starts_with("## rear inset (move)\n\n1. inset of the original wheel = 46 mm (1.811 in)"));
/// assert!(page.contains("3. change = 40 − 46 = -6 mm (-0.236 in)\n"));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Explanation<'a> {
    of: Derivations<'a>,
    subject: Subject,
    place: Option<Position>,
    units: UnitSystem,
    is_markdown: bool,
}

impl Explanation<'_> {
    /// Only at one place, or at either end of an axle.
    pub const fn at(self, place: Position) -> Self {
        Self { place: Some(place), ..self }
    }

    /// With each number in other units behind it, unless they are metric: the rules are written in metric ones.
    pub const fn in_units(self, units: UnitSystem) -> Self {
        Self { units, ..self }
    }

    /// Laid out as Markdown.
    pub const fn in_markdown(self) -> Self {
        Self { is_markdown: true, ..self }
    }

    fn is_asked(&self, place: Position) -> bool {
        self.place.is_none_or(|asked| asked == place || asked == place.axle())
    }
}

/// A step with its number in other units, and with the line in which its source stands if that was told before.
struct Line<'a> {
    step: &'a Step<'a>,
    units: UnitSystem,
    source_in: Option<usize>,
}

impl fmt::Display for Line<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.step.write(f)?;
        let other = self.step.figure().filter(|_| self.units != UnitSystem::Metric).and_then(in_us);
        if let Some((number, decimals, unit)) = other {
            write!(f, " ({} {unit})", Decimals(number, decimals))?;
        }
        match self.source_in {
            Some(line) => write!(f, ", source as in {line}"),
            None => self.step.write_source(f),
        }
    }
}

fn in_us(figure: Figure) -> Option<(f64, u8, &'static str)> {
    let number = figure.number();
    let value = match figure.unit() {
        "mm" => Value::Length(units::mm(number)),
        "kg" => Value::Mass(units::kg(number)),
        "kPa" => Value::Pressure(units::kpa(number)),
        "km/h" => Value::Velocity(units::kmh(number)),
        "N·m" => Value::Torque(units::nm(number)),
        _ => return None,
    };
    value.in_us()
}

/// A reading to seven digits, with other units behind it unless they are metric; or a designation.
struct Exactly(Value, UnitSystem);

impl fmt::Display for Exactly {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0.number() {
            Some(number) => write!(f, "{} {}", Digits(number), self.0.unit())?,
            None => self.0.fmt(f)?,
        }
        match self.0.in_us().filter(|_| self.1 != UnitSystem::Metric) {
            Some((number, decimals, unit)) => write!(f, " ({} {unit})", Decimals(number, decimals)),
            None => Ok(()),
        }
    }
}

/// What a finding comes to: the value, the limit, the margin, and what that means.
struct Outcome<'a>(&'a Check, &'a Derivations<'a>, UnitSystem);

impl fmt::Display for Outcome<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(check, of, units) = *self;
        f.write_str("Result: ")?;
        if let (Some(value), Some(limit)) = (check.measured(), check.limit()) {
            write!(f, "{}, ", Exactly(value, units))?;
            match limit {
                Bound::AtMost(most) => write!(f, "at most {}", Exactly(most, units))?,
                Bound::AtLeast(least) => write!(f, "at least {}", Exactly(least, units))?,
                Bound::Equals(same) => write!(f, "to be equal to {}", Exactly(same, units))?,
                Bound::Between(least, most) => {
                    let least = least.number().unwrap_or(f64::NAN);
                    write!(f, "at least {} and at most {}", Digits(least), Exactly(most, units))?;
                }
            }
            if let Some((margin, number)) = check.margin_number().zip(value.number()) {
                f.write_str(", margin = ")?;
                match limit {
                    Bound::AtMost(most) => {
                        write_form(f, "{0} − {1}", &[most.number().unwrap_or(f64::NAN), number])?
                    }
                    Bound::AtLeast(least) => {
                        write_form(f, "{1} − {0}", &[least.number().unwrap_or(f64::NAN), number])?
                    }
                    Bound::Between(least, most) => {
                        let [least, most] = [least, most].map(|end| end.number().unwrap_or(f64::NAN));
                        write_form(f, "min({2} − {0}, {1} − {2})", &[least, most, number])?;
                    }
                    Bound::Equals(_) => {}
                }
                write!(f, " = {} {}", Digits(margin), value.unit())?;
            }
            f.write_str(": ")?;
        }
        write!(f, "{}: {}", Name(check.verdict().name()), check.reason())?;
        for (n, input) in check.missing().enumerate() {
            write!(f, "{} {}", if n == 0 { ":" } else { "," }, input.at(check.position()).by(of.keys))?;
        }
        match check.citation() {
            Some(Citation::CALLER) => match of.limits.own_source() {
                Some(document) => write!(f, ", {}: {document}", Citation::CALLER.document()),
                None => write!(f, ", {}", Citation::CALLER),
            },
            Some(citation) => write!(f, ", {citation}"),
            None => Ok(()),
        }
    }
}

/// Text in which a page of Markdown shows every sign as it is.
struct Escaped<'a, 'b>(&'a mut fmt::Formatter<'b>);

impl fmt::Write for Escaped<'_, '_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for c in text.chars() {
            if r"\`*_{}[]<>#|&".contains(c) {
                self.0.write_char('\\')?;
            }
            self.0.write_char(c)?;
        }
        Ok(())
    }
}

/// The lines of one derivation, as they are told.
struct Page<'f, 'b> {
    f: &'f mut fmt::Formatter<'b>,
    units: UnitSystem,
    is_markdown: bool,
    lines: usize,
    /// The sources that were told, with the line of each; of more than there is room for the last stand in full.
    sources: [Option<(usize, Citation)>; 32],
    so_far: fmt::Result,
}

impl Page<'_, '_> {
    fn try_write(&mut self, write: impl FnOnce(&mut Self) -> fmt::Result) {
        if self.so_far.is_ok() {
            self.so_far = write(self);
        }
    }

    fn title(&mut self, place: Position, subject: Subject) {
        self.lines = 0;
        self.sources = [None; 32];
        self.try_write(|page| {
            let kind = match subject {
                Subject::Check(_) => "finding",
                Subject::Move(_) => "move",
                Subject::Effect(_) => "effect",
            };
            let (place, name) = (Name(place.name()), Name(subject.name()));
            let mark = if page.is_markdown { "## " } else { "" };
            writeln!(page.f, "{mark}{place} {name} ({kind})")?;
            if page.is_markdown { writeln!(page.f) } else { Ok(()) }
        });
    }

    /// The line that has told a source; nothing where this is the first.
    fn told_in(&mut self, source: Citation) -> Option<usize> {
        let line = self.lines;
        let told = self.sources.iter_mut().find(|told| told.is_none_or(|(_, told)| told == source))?;
        let (first, _) = *told.get_or_insert((line, source));
        (first != line).then_some(first)
    }

    fn step(&mut self, step: &Step<'_>) {
        self.lines += 1;
        let source_in = step.citation().filter(|&c| c != Citation::DESIGNATION).and_then(|c| self.told_in(c));
        self.try_write(|page| {
            let line = Line { step, units: page.units, source_in };
            if page.is_markdown {
                write!(page.f, "{}. ", page.lines)?;
                write!(Escaped(page.f), "{line}")?;
                return writeln!(page.f);
            }
            write!(page.f, "{:>3}. ", page.lines)?;
            wrapped(page.f, 5, line)
        });
    }

    fn end(&mut self, result: impl fmt::Display) {
        self.try_write(|page| {
            if page.is_markdown {
                writeln!(page.f)?;
                write!(Escaped(page.f), "{result}")?;
                return writeln!(page.f, "\n");
            }
            write!(page.f, "     ")?;
            wrapped(page.f, 5, result)?;
            writeln!(page.f)
        });
    }
}

impl fmt::Display for Explanation<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (of, subject) = (&self.of, self.subject);
        let mut page = Page {
            f,
            units: self.units,
            is_markdown: self.is_markdown,
            lines: 0,
            sources: [None; 32],
            so_far: Ok(()),
        };
        match subject {
            Subject::Check(id) => of.each(id, |axles, check| {
                if self.is_asked(check.position()) {
                    page.title(check.position(), subject);
                    tell(axles, check, &mut Teller::new(&mut |step| page.step(step)));
                    page.end(Outcome(check, of, self.units));
                }
            }),
            Subject::Move(id) => of.each_move(id, |found| {
                if self.is_asked(found.position()) {
                    page.title(found.position(), subject);
                    of.tell_move(&found, &mut |step| page.step(step));
                    page.end(format_args!("Result: {}", MoveIn(&found, self.units)));
                }
            }),
            Subject::Effect(id) => of.each_effect(|axles, effect| {
                if effect.id() == id && self.is_asked(effect.position()) {
                    page.title(effect.position(), subject);
                    let mut hear = |step: &Step<'_>| page.step(step);
                    let _: Option<()> = effects::tell_effect(axles, &effect, &mut Teller::new(&mut hear));
                    let [before, after] =
                        [effect.before(), effect.after()].map(|value| Exactly(value, self.units));
                    page.end(format_args!("Result: {before} to {after}"));
                }
            }),
        }
        page.so_far
    }
}
