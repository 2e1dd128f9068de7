//! The report laid out for a terminal of 80 columns: what decides comes first, what is missing last.

use core::fmt::{self, Write};

use super::check::{Check, CheckId, Position, Verdict};
use super::checks::Harm;
use super::document::{Advice, Document, Written};
use super::effect::Effect;
#[cfg(feature = "serde")]
use super::further::line::FurtherLine;
use super::layout::{Cell, Maybe, Wrap, wrapped};
use super::limits::LimitSet;
use super::measure::{Measurement, Preparation};
use super::moves;
use super::pressures::{Assumes, Needed, Pressures};
use super::report::Report;
use super::rule_scope::RuleScope;
use super::spare::line::SpareLine;
use super::value::{Bound, In, Rounded, Value};
use crate::decimals::Decimals;
use crate::text::{Excerpt, Name};
use crate::unit_system::UnitSystem;
use crate::{Citation, OwnSource};

/// A margin with its sign.
struct Signed<'a>(&'a Check, UnitSystem);

impl fmt::Display for Signed<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (Some(margin), Some(measured)) = (self.0.margin_number(), self.0.measured()) else {
            return Ok(());
        };
        let sign = if Rounded(margin).is_positive() { "+" } else { "" };
        match measured.in_us() {
            Some(_) => write!(f, "{sign}{}", In(measured.of_same_kind(margin), self.1)),
            None => write!(f, "{sign}{} {}", Rounded(margin), measured.unit()),
        }
    }
}

/// The sources of a report, numbered as they first appear.
struct Sources {
    list: [Option<Citation>; Report::ROWS],
}

impl Sources {
    fn of(report: &Report) -> Self {
        let mut sources = Self { list: [None; Report::ROWS] };
        for citation in report.findings().filter_map(|c| c.citation()) {
            if sources.number(citation).is_none() {
                if let Some(free) = sources.list.iter_mut().find(|s| s.is_none()) {
                    *free = Some(citation);
                }
            }
        }
        sources
    }

    fn number(&self, citation: Citation) -> Option<usize> {
        self.list.iter().position(|s| *s == Some(citation)).map(|n| n + 1)
    }
}

/// A source as a report names it: of the caller's own limits the document it named.
struct Cited(Citation, Option<OwnSource>);

impl fmt::Display for Cited {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self(citation, Some(document)) => write!(f, "{}: {document}", citation.document()),
            Self(citation, None) => citation.fmt(f),
        }
    }
}

impl Report {
    fn cited(&self, citation: Citation) -> Cited {
        Cited(citation, self.document_of(citation))
    }
}

/// The verdict on the whole in a sentence, with the gravest reason: what a person should read first.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, Limits, Setups, assess};
/// let nothing = Setups { front: None, rear: None };
/// let change = Change { original: nothing, proposed: nothing };
/// let report = assess(&beadseat::vehicle::Vehicle::unknown(), &change, &Conditions::default(), &Limits::default());
/// assert!(report.headline().to_string().starts_with("MARGINAL"));
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Headline<'a> {
    report: &'a Report,
    /// A further axle that is worse off, with its report.
    worse: Option<(&'a str, &'a Report)>,
}

impl fmt::Display for Headline<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let report = self.report;
        let deciding = self.worse.map_or(report, |(_, worse)| worse);
        let overall = deciding.overall();
        let mut wrap = Wrap::new(f, 0);
        match overall {
            Verdict::Beyond => write!(wrap, "BEYOND, do not fit it like this")?,
            Verdict::Within => {
                write!(wrap, "WITHIN: every limit that was assessed is kept, at the worst case too")?
            }
            Verdict::Marginal | Verdict::NotAssessed | Verdict::NotApplicable => {
                write!(wrap, "MARGINAL: no limit is broken outright, but not everything is settled")?;
            }
        }
        if let Some(check) = deciding.by_gravity(overall).next().filter(|_| overall != Verdict::Within) {
            match self.worse {
                Some((axle, _)) => write!(wrap, ": {}", Excerpt(axle))?,
                None => write!(wrap, ": {}", check.position())?,
            }
            write!(wrap, " {}: {}", Name(check.id().name()), check.reason())?;
        }
        write!(wrap, ".")?;
        wrap.flush()?;
        let mut wrap = Wrap::new(f, 0);
        let mut any = false;
        for id in not_judged(report) {
            if any {
                write!(wrap, ",")?;
            } else {
                wrap.new_line()?;
                let title = if report.is_complete() { "Not judged:" } else { "Incomplete, not judged:" };
                write!(wrap, "{title}")?;
            }
            any = true;
            write!(wrap, " {}", Name(id.name()))?;
            if id == CheckId::SweptClearance {
                write!(wrap, " (full lock and jounce)")?;
            }
        }
        if any {
            write!(wrap, ".")?;
        }
        wrap.flush()
    }
}

/// The checks that apply and were not judged somewhere: full lock and jounce first, then by what is at stake.
pub(super) fn not_judged(report: &Report) -> impl Iterator<Item = CheckId> {
    let lacks = |id| report.findings().any(|c| c.id() == id && c.verdict() == Verdict::NotAssessed);
    let swept = CheckId::SweptClearance;
    let by_harm = [Harm::ComesOff, Harm::Overload, Harm::Contact, Harm::Law, Harm::Practice]
        .into_iter()
        .flat_map(|harm| CheckId::ALL.iter().copied().filter(move |id| id.definition().harm == harm));
    core::iter::once(swept).chain(by_harm.filter(move |&id| id != swept)).filter(move |&id| lacks(id))
}

/// A place together with others of which the same is true; nothing of those that another stands for.
pub(super) fn shared_place(place: Position, same: impl Fn(Position) -> bool) -> Option<&'static str> {
    use Position::{
        Front, FrontLeft, FrontRight, Rear, RearLeft, RearRight, SpareAtFront, SpareAtRear, Vehicle,
    };
    let all = || [FrontLeft, FrontRight, RearLeft, RearRight].into_iter().all(&same);
    match place {
        Vehicle => Some("vehicle"),
        Front if same(Rear) => Some("front, rear"),
        Front => Some("front"),
        Rear if same(Front) => None,
        Rear => Some("rear"),
        FrontLeft if all() => Some("all four"),
        FrontRight | RearLeft | RearRight if all() => None,
        FrontLeft if same(FrontRight) => Some("front both"),
        FrontLeft => Some("front left"),
        FrontRight if same(FrontLeft) => None,
        FrontRight => Some("front right"),
        RearLeft if same(RearRight) => Some("rear both"),
        RearLeft => Some("rear left"),
        RearRight if same(RearLeft) => None,
        RearRight => Some("rear right"),
        SpareAtFront => Some("spare at front"),
        SpareAtRear => Some("spare at rear"),
    }
}

/// Everything behind the headline.
#[derive(Clone, Copy, Debug)]
pub struct Body<'a> {
    pub(super) report: &'a Report,
    /// What the report is about, where there is more to say for it.
    pub(super) document: Option<Document<'a>>,
}

impl Body<'_> {
    /// Where a finding was made, together with others that are the same but for their place; nothing of those that
    /// another stands for.
    pub(super) fn place(&self, check: &Check) -> Option<&'static str> {
        shared_place(check.position(), |place| {
            let other = self.report.get(check.id(), place);
            other.is_some_and(|other| match &self.document {
                Some(document) => document.is_alike(check, &other),
                None => *check == Check { place: check.place, ..other },
            })
        })
    }

    /// The findings of one verdict, the gravest first, each with its place.
    pub(super) fn findings(&self, verdict: Verdict) -> impl Iterator<Item = (&'static str, &Check)> {
        self.report.by_gravity(verdict).filter_map(|check| Some((self.place(check)?, check)))
    }

    fn units(&self) -> UnitSystem {
        self.document.map_or(UnitSystem::Metric, |document| document.units())
    }

    fn advice<'b>(&'b self, check: &'b Check) -> Option<Advice<'b>> {
        let document = self.document.as_ref()?;
        (!document.todo(check).is_nothing()).then(|| document.advice(check))
    }

    /// One finding in full: where, what, how much, why, by whose word, and what to do.
    pub(super) fn spell_out(
        &self,
        f: &mut fmt::Formatter<'_>,
        n: usize,
        (place, check): (&str, &Check),
    ) -> fmt::Result {
        write!(f, "{n:>3}. ")?;
        let units = self.units();
        let mut wrap = Wrap::new(f, 5);
        write!(wrap, "{} {}", Excerpt(place), Name(check.id().name()))?;
        if let (Some(measured), Some(limit)) = (check.measured(), check.limit()) {
            let asked = if check.is_designation() { "must be" } else { "limit" };
            write!(wrap, ": {}, {asked} {}", In(measured, units), In(limit, units))?;
            if check.margin_number().is_some() {
                write!(wrap, ", margin {}", Signed(check, units))?;
            }
            if let Some(nominal) = check.nominal() {
                write!(wrap, " (nominal {})", In(nominal, units))?;
            }
        }
        wrap.end()?;
        write!(f, "     ")?;
        let mut wrap = Wrap::new(f, 5);
        write!(wrap, "{}", check.reason())?;
        if let Some(citation) = check.citation() {
            write!(wrap, " — {}", self.report.cited(citation))?;
        }
        wrap.end()?;
        if let Some(todo) = self.advice(check) {
            write!(f, "     To do: ")?;
            wrapped(f, 12, todo)?;
        }
        Ok(())
    }
}

/// A limit in few words, as a table has room for; what is measured has the unit of a range.
pub(super) struct Held(pub(super) Bound, pub(super) UnitSystem);

impl fmt::Display for Held {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Bound::AtMost(most) => write!(f, "max {}", In(most, self.1)),
            Bound::AtLeast(least) => write!(f, "min {}", In(least, self.1)),
            Bound::Equals(same) => write!(f, "must be {}", In(same, self.1)),
            Bound::Between(least, most) if self.1 == UnitSystem::Us && least.in_us().is_some() => {
                match least.in_us().zip(most.in_us()) {
                    Some(((least, decimals, _), (most, ..))) => {
                        write!(f, "{} to {}", Decimals(least, decimals), Decimals(most, decimals))
                    }
                    None => self.0.fmt(f),
                }
            }
            Bound::Between(least, most) => match least.number().zip(most.number()) {
                Some((least, most)) => write!(f, "{} to {}", Rounded(least), Rounded(most)),
                None => self.0.fmt(f),
            },
        }
    }
}

impl Report {
    /// The verdict in a sentence, with the gravest reason.
    pub const fn headline(&self) -> Headline<'_> {
        Headline { report: self, worse: None }
    }

    /// The report without its headline: what decides, every finding, effects, cautions, sources, and what
    /// was not assessed.
    pub const fn body(&self) -> Body<'_> {
        Body { report: self, document: None }
    }
}

impl<'a> Document<'a> {
    /// The verdict on all axles in a sentence.
    fn headline(&self) -> Headline<'a> {
        let own = self.report().overall();
        let worst = self.reports().fold((None, own), |(name, worst), (other, report)| {
            if report.overall().gravity() > worst.gravity() {
                (other.zip(Some(report)), report.overall())
            } else {
                (name, worst)
            }
        });
        Headline { report: self.report(), worse: worst.0 }
    }

    /// The findings of its report, with what to do about them.
    pub(super) const fn body(&self) -> Body<'a> {
        Body { report: self.report(), document: Some(*self) }
    }
}

impl fmt::Display for Document<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}", self.headline())?;
        if let Some(spare) = self.spare() {
            let open = if self.is_spare_open() { "; not judged on further axles" } else { "" };
            wrapped(f, 0, format_args!("Spare wheel: {}{open}.", SpareLine(spare)))?;
        }
        #[cfg(feature = "serde")]
        if !self.further().is_empty() {
            wrapped(f, 0, format_args!("Further axles: {}.", FurtherLine(self.further())))?;
        }
        writeln!(f)?;
        wrapped(f, 0, Excerpt(self.name().unwrap_or("vehicle without a name")))?;
        for (place, setups) in self.setups() {
            for (title, which, setup) in [(place.name(), "from", setups[0]), ("", "to", setups[1])] {
                write!(f, "  {title:<6}{which:<5}")?;
                match setup {
                    Some(setup) => wrapped(f, 13, Written(setup))?,
                    None => writeln!(f, "not given")?,
                }
            }
        }
        moves::print(f, &self.moves(), self.units())?;
        write!(f, "{}", self.body())?;
        #[cfg(feature = "serde")]
        self.print_further(f)?;
        self.print_spare(f)
    }
}

impl fmt::Display for Report {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}\n{}", self.headline(), self.body())
    }
}

impl fmt::Display for Body<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let report = self.report;
        for (title, verdict) in [("What decides", Verdict::Beyond), ("Look closer at", Verdict::Marginal)] {
            for (n, finding) in self.findings(verdict).enumerate() {
                if n == 0 {
                    writeln!(f, "\n{title}")?;
                }
                self.spell_out(f, n + 1, finding)?;
            }
        }

        let sources = Sources::of(report);
        writeln!(
            f,
            "\n{:<12}{:<22}{:<12}{:<18}{:>11} by",
            "Findings", "check", "measured", "limit", "margin"
        )?;
        for verdict in [Verdict::Beyond, Verdict::Marginal, Verdict::Within] {
            for (n, (place, check)) in self.findings(verdict).enumerate() {
                if n == 0 {
                    writeln!(f, "- {verdict}")?;
                }
                for (line, &units) in self.units().each().iter().enumerate() {
                    let is_again = line > 0;
                    if is_again && check.measured().and_then(Value::in_us).is_none() {
                        continue;
                    }
                    let [place, name] = if is_again { ["", ""] } else { [place, check.id().name()] };
                    write!(
                        f,
                        "{place:<12}{:<22}{:<11} {:<17} {:>11}",
                        Name(name),
                        Cell(Maybe(check.measured().map(|value| In(value, units)))),
                        Cell(Maybe(check.limit().map(|limit| Held(limit, units)))),
                        Cell(Signed(check, units)),
                    )?;
                    match check.citation().and_then(|c| sources.number(c)).filter(|_| !is_again) {
                        Some(number) => writeln!(f, " [{number}]")?,
                        None => writeln!(f)?,
                    }
                }
            }
        }

        print_approaches(f, report, self.units())?;
        print_pressures(f, report, self.units())?;
        print_effects(f, report, self.units())?;

        #[cfg(feature = "serde")]
        print_provenance(f, self.document.as_ref())?;
        print_rules(f, report.rules())?;

        writeln!(f, "\nCautions")?;
        for caution in report.cautions() {
            f.write_str("  * ")?;
            wrapped(f, 4, caution.text())?;
        }

        writeln!(f, "\nSources")?;
        for (n, &citation) in sources.list.iter().flatten().enumerate() {
            write!(f, "{:>4}  ", Cell(format_args!("[{}]", n + 1)))?;
            wrapped(f, 6, report.cited(citation))?;
        }

        report.print_missing(f)
    }
}

/// Where each wheel comes nearest to what stands around it, with ends of which the same is true together.
fn print_approaches(f: &mut fmt::Formatter<'_>, report: &Report, units: UnitSystem) -> fmt::Result {
    for (n, approach) in report.approaches().enumerate() {
        let same = |place| {
            let other = report.approaches().find(|other| other.position() == place);
            other.is_some_and(|other| approach == other.at(approach.position()))
        };
        let place = match approach.position() {
            Position::FrontRight if same(Position::FrontLeft) => continue,
            Position::RearRight if same(Position::RearLeft) => continue,
            Position::FrontLeft if same(Position::FrontRight) => "front both",
            Position::RearLeft if same(Position::RearRight) => "rear both",
            other => other.name(),
        };
        if n == 0 {
            writeln!(
                f,
                "\nNearest approach over all steer and travel: what is left at worst, with the\nlargest tire of its size, errors of measurement and movement under load"
            )?;
        }
        write!(f, "{:<12}", Name(place))?;
        wrapped(f, 12, In(approach, units))?;
    }
    Ok(())
}

/// Where the values come from, as far as that is told.
#[cfg(feature = "serde")]
fn print_provenance(f: &mut fmt::Formatter<'_>, document: Option<&Document<'_>>) -> fmt::Result {
    let values = document.map_or(&[] as &[_], |document| document.provenance());
    if !values.is_empty() {
        writeln!(f, "\nWhere values come from; of the others it is not told")?;
    }
    for value in values {
        write!(f, "  * ")?;
        wrapped(f, 4, value)?;
    }
    Ok(())
}

/// By which rules it was judged, as of which day, and what is not held of them.
fn print_rules(f: &mut fmt::Formatter<'_>, rules: RuleScope) -> fmt::Result {
    write!(f, "\n{:<12}", "Rules")?;
    let mut wrap = Wrap::new(f, 12);
    match rules.set() {
        LimitSet::Default => write!(wrap, "default, of no jurisdiction; ")?,
        set => write!(wrap, "{}; ", Name(set.name()))?,
    }
    match rules.as_of() {
        Some(day) => write!(wrap, "as of {day}, the day given, of which nothing was looked up. ")?,
        None => write!(wrap, "no date given. ")?,
    }
    write!(wrap, "Law not held here, which may ask for more:")?;
    for (n, field) in rules.not_held().enumerate() {
        write!(wrap, "{} {}", if n == 0 { "" } else { "," }, Name(field.name()))?;
    }
    wrap.end()
}

/// What changes beside, with axles of which the same is true together.
fn print_effects(f: &mut fmt::Formatter<'_>, report: &Report, units: UnitSystem) -> fmt::Result {
    let twin = |effect: &Effect, axle| {
        report
            .effects()
            .find(|other| other.place == axle && *effect == Effect { place: effect.place, ..*other })
    };
    for (n, effect) in report.effects().enumerate() {
        if n == 0 {
            writeln!(f, "\nAlso changes")?;
        }
        let place = match effect.position() {
            Position::Rear if twin(&effect, Position::Front).is_some() => continue,
            Position::Front if twin(&effect, Position::Rear).is_some() => "front, rear",
            other => other.name(),
        };
        write!(f, "{place:<12}{:<22}", Name(effect.id().name()))?;
        let (before, after) = (In(effect.before(), units), In(effect.after(), units));
        wrapped(f, 34, format_args!("{before} to {after}"))?;
        write!(f, "{:12}", "")?;
        wrapped(f, 12, effect.id().caution())?;
    }
    Ok(())
}

/// What pressures each axle needs, and which need governs.
fn print_pressures(f: &mut fmt::Formatter<'_>, report: &Report, units: UnitSystem) -> fmt::Result {
    for (n, p) in report.pressures().filter(Pressures::tells).enumerate() {
        if n == 0 {
            writeln!(f, "\nLeast cold pressures of the proposed tires, by load tables")?;
        }
        write!(f, "{:<12}", p.position())?;
        let mut wrap = Wrap::new(f, 12);
        let needs = [
            ("normal load", p.normal_load()),
            ("full load", p.full_load()),
            ("to carry as the original", p.as_original()),
        ];
        for (name, needed) in needs.into_iter().filter(|(_, needed)| *needed != Needed::NotKnown) {
            match needed.pressure() {
                Some(least) => write!(wrap, "{name} {}; ", In(Value::Pressure(least), units))?,
                None => write!(wrap, "{name} {needed}; ")?,
            }
        }
        if let Some(most) = p.permitted() {
            write!(wrap, "permitted {}; ", In(Value::Pressure(most), units))?;
        }
        write!(wrap, "governed by {}", Maybe(p.governs().map(|g| Name(g.name()))))?;
        wrap.end()?;
        let by_letter = p.assumes().and_then(|assumes| match assumes {
            Assumes::LoadRange => Some("by what the letter of the load range usually means; the figure on the tire rules"),
            Assumes::HigherOfTwo => {
                Some("by the higher of two pressures that the letter of the load range may mean; the figure on the tire rules")
            }
            Assumes::Stated | Assumes::LoadVersion => None,
        });
        if let Some(by_letter) = by_letter {
            write!(f, "{:12}", "")?;
            wrapped(f, 12, by_letter)?;
        }
    }
    Ok(())
}

impl Report {
    fn print_missing(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.findings().all(|c| c.verdict() != Verdict::NotAssessed) {
            return Ok(());
        }
        writeln!(f, "\nNot assessed, and what would settle it, the most useful first")?;
        for measurement in self.measurements() {
            print_measurement(f, &measurement)?;
        }
        // What a lifted vehicle asks for holds for one that is not.
        let asked = |access| self.measurements().any(|m| m.access() == access);
        let gravest =
            [Preparation::WheelOff, Preparation::OnGround].into_iter().find(|&access| asked(access));
        if let Some(safety) = gravest.and_then(Preparation::safety) {
            write!(f, "{:<12}", "safety")?;
            wrapped(f, 12, safety)?;
        }
        for unknown in self.known_to_makers() {
            print_measurement(f, &unknown)?;
        }
        Ok(())
    }
}

/// Where, what, how, and what it is for.
fn print_measurement(f: &mut fmt::Formatter<'_>, measurement: &Measurement<'_>) -> fmt::Result {
    write!(f, "{:<12}", measurement.position())?;
    let mut wrap = Wrap::new(f, 12);
    write!(wrap, "{measurement}. ")?;
    let (alone, with_others) = (measurement.settles_alone(), measurement.settles_with_others());
    if measurement.access() == Preparation::Elsewhere {
        names(&mut wrap, "Not settled here:", alone.chain(with_others))?;
        return wrap.end();
    }
    let settles = names(&mut wrap, "Settles", alone)?;
    names(&mut wrap, if settles { "; with others," } else { "Settles, with others," }, with_others)?;
    wrap.end()
}

/// The names of checks, each once, behind a title; whether there are any.
fn names(
    wrap: &mut Wrap<'_, '_>,
    title: &str,
    checks: impl Iterator<Item = Check>,
) -> Result<bool, fmt::Error> {
    let mut given = [false; CheckId::ALL.len()];
    let mut any = false;
    for id in checks.map(|check| check.id()) {
        if !core::mem::replace(&mut given[id as usize], true) {
            write!(wrap, "{} {}", if any { "," } else { title }, Name(id.name()))?;
            any = true;
        }
    }
    Ok(any)
}

impl Check {
    /// Whether the measured value is a designation, which agrees with another or does not.
    fn is_designation(&self) -> bool {
        matches!(
            self.measured(),
            Some(Value::BoltCircle(_) | Value::Thread(_) | Value::Seat(_) | Value::RimDiameter(_))
        )
    }
}
