//! A report in fifteen lines.

use core::fmt::{self, Write};

use super::check::{Check, Verdict};
use super::document::{Advice, Document};
#[cfg(feature = "serde")]
use super::further::line::FurtherLine;
use super::layout::{Wrap, reads_alike};
use super::moves::{Move, MoveId, MoveIn, Moves};
use super::position::Position;
use super::print::{Held, not_judged};
use super::spare::line::SpareLine;
use super::value::{Bound, In};
use crate::text::{Excerpt, Name};
use crate::unit_system::UnitSystem;

/// The shortest of a report that a person can act on: the verdict, what decides, what moves, what was not judged and
/// what to do next, in at most 15 lines of 80 columns. What is left out stands in the whole report.
///
/// ```
/// use beadseat::fitment::{Change, Document, Setup};
/// use beadseat::vehicle::{Kind, Vehicle};
/// let car = Vehicle::new(Kind::Passenger);
/// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16 ET46")?, Setup::parse("225/45R17", "7.5Jx16 ET42")?];
/// let change = Change::all_round(old, new);
/// let report = change.assess(&car);
/// let summary = Document::new(&report, &car, &change).summary().to_string();
/// assert!(summary.starts_with("BEYOND: do not fit it like this"));
/// assert!(summary.contains("Do next     front, rear: take a wheel of 17 in"));
/// assert!(summary.lines().count() <= 15);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Summary<'a>(Document<'a>);

impl<'a> Document<'a> {
    /// The same in at most 15 lines.
    pub const fn summary(&self) -> Summary<'a> {
        Summary(*self)
    }
}

/// Where the text of a part begins, behind its title.
const INDENT: usize = 12;

/// A part of the summary: a title, and items on lines of their own, each on two at most.
struct Part<'f, 'b> {
    f: &'f mut fmt::Formatter<'b>,
    title: &'static str,
    lines: usize,
}

impl Part<'_, '_> {
    fn item(&mut self, item: impl fmt::Display) -> fmt::Result {
        if self.lines == 0 {
            return Ok(());
        }
        write!(self.f, "{:<INDENT$}", core::mem::take(&mut self.title))?;
        let lines = self.lines.min(2);
        let mut wrap = Wrap::of_lines(self.f, INDENT, lines);
        write!(wrap, "{item}")?;
        wrap.flush()?;
        self.lines -= lines - wrap.lines_left();
        wrap.new_line()
    }

    /// Says what there is where there was nothing to say.
    fn end(mut self, nothing: &str) -> fmt::Result {
        if self.title.is_empty() { Ok(()) } else { self.item(nothing) }
    }
}

/// A finding in a line: by how it is measured, or why.
struct Line<'a>(&'a str, &'a Check, UnitSystem);

impl fmt::Display for Line<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(place, check, units) = *self;
        write!(f, "{} {}: ", Excerpt(place), Name(check.id().name()))?;
        match check.measured().zip(check.limit()) {
            Some((measured, range @ Bound::Between(..))) => {
                write!(f, "{}, {}", In(measured, units), In(range, units))
            }
            Some((measured, limit)) => write!(f, "{}, {}", In(measured, units), Held(limit, units)),
            None => check.reason().fmt(f),
        }
    }
}

/// What a person sees first of what moves on an axle.
struct Seen<'a>(&'a str, &'a Moves, Position, UnitSystem);

fn seen_on(moves: &Moves, place: Position) -> impl Iterator<Item = Move> {
    let seen = [MoveId::TireOuterFace, MoveId::TireInnerFace, MoveId::OverallDiameter];
    moves.on(place).filter(move |found| seen.contains(&found.id()))
}

impl fmt::Display for Seen<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: ", self.0)?;
        for (n, found) in seen_on(self.1, self.2).enumerate() {
            write!(f, "{}{}", if n == 0 { "" } else { ", " }, MoveIn(&found, self.3))?;
        }
        Ok(())
    }
}

impl fmt::Display for Summary<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (document, report) = (self.0, self.0.report());
        let body = document.body();
        let verdict = match document.overall_on_axles() {
            Verdict::Beyond => "BEYOND: do not fit it like this",
            Verdict::Within => "WITHIN: every limit that was assessed is kept",
            Verdict::Marginal | Verdict::NotAssessed | Verdict::NotApplicable => {
                "MARGINAL: no limit is broken outright, not everything is settled"
            }
        };
        let mut wrap = Wrap::of_lines(f, 0, 1);
        write!(wrap, "{verdict}. {}", Excerpt(document.name().unwrap_or("Vehicle without a name")))?;
        wrap.end()?;

        let mut decides = Part { f: &mut *f, title: "Decides", lines: 3 };
        for verdict in [Verdict::Beyond, Verdict::Marginal] {
            for (place, check) in body.findings(verdict) {
                decides.item(Line(place, check, document.units()))?;
            }
            for (axle, report) in document.reports() {
                let Some(axle) = axle else { continue };
                for check in report.by_gravity(verdict) {
                    decides.item(Line(axle, check, document.units()))?;
                }
            }
        }
        decides.end("nothing: what was assessed is inside its limits")?;

        let moves = document.moves();
        let [front, rear] = [Position::Front, Position::Rear];
        let mut moving = Part { f: &mut *f, title: "Moves", lines: 4 };
        let seen = |place| seen_on(&moves, place);
        let alike = seen(front).count() == seen(rear).count()
            && seen(front).zip(seen(rear)).all(|(a, b)| a.moves_as(&b));
        for (title, place) in [(if alike { "front and rear" } else { "front" }, front), ("rear", rear)] {
            if seen(place).next().is_some() && !(alike && place == rear) {
                moving.item(Seen(title, &moves, place, document.units()))?;
            }
        }
        moving.end("not told by the setups")?;

        write!(f, "{:<INDENT$}", "Not judged")?;
        let mut wrap = Wrap::of_lines(f, INDENT, 2);
        let mut any = false;
        for id in not_judged(report) {
            write!(wrap, "{}{}", if any { ", " } else { "" }, Name(id.name()))?;
            any = true;
        }
        for (axle, report) in document.reports() {
            for id in not_judged(report).filter(|_| axle.is_some()) {
                write!(
                    wrap,
                    "{}{} {}",
                    if any { ", " } else { "" },
                    Excerpt(axle.unwrap_or_default()),
                    Name(id.name())
                )?;
                any = true;
            }
        }
        if !any {
            write!(wrap, "nothing that applies")?;
        }
        wrap.end()?;

        let spare = document.spare();
        if let Some(spare) = spare {
            write!(f, "{:<INDENT$}", "Spare wheel")?;
            let mut wrap = Wrap::of_lines(f, INDENT, 1);
            write!(wrap, "{}", SpareLine(spare))?;
            if document.is_spare_open() {
                write!(wrap, "; not judged on further axles")?;
            }
            wrap.end()?;
        }

        let beside = usize::from(spare.is_some()) + usize::from(document.reports().count() > 1);
        #[cfg(feature = "serde")]
        if !document.further().is_empty() {
            write!(f, "{:<INDENT$}", "More axles")?;
            let mut wrap = Wrap::of_lines(f, INDENT, 1);
            write!(wrap, "{}", FurtherLine(document.further()))?;
            wrap.end()?;
        }

        let mut next = Part { f: &mut *f, title: "Do next", lines: 5 - beside };
        let asked = || {
            let verdicts = [Verdict::Beyond, Verdict::Marginal, Verdict::Within].into_iter();
            verdicts
                .flat_map(|verdict| body.findings(verdict))
                .filter(|(_, check)| !document.todo(check).is_nothing())
                .map(|(place, check)| (place, document.advice(check)))
        };
        for (n, (place, advice)) in asked().enumerate() {
            // One thing to do may mend several findings.
            let is_told = |(before, of): (&str, Advice<'_>)| place == before && reads_alike(&advice, of);
            if !asked().take(n).any(is_told) {
                next.item(format_args!("{place}: {advice}"))?;
            }
        }
        #[cfg(feature = "serde")]
        for axle in document.further() {
            let of_axle = axle.document().in_units(document.units());
            for verdict in [Verdict::Beyond, Verdict::Marginal] {
                for check in
                    axle.report().by_gravity(verdict).filter(|check| !of_axle.todo(check).is_nothing())
                {
                    next.item(format_args!("{}: {}", Excerpt(axle.name()), of_axle.advice(check)))?;
                }
            }
        }
        for (_, report) in document.reports() {
            for wanted in report.measurements() {
                next.item(format_args!("find out {wanted}"))?;
            }
        }
        next.end("nothing but what the cautions of the report say")
    }
}
