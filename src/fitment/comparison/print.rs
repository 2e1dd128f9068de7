//! Two proposals laid out for a terminal of 80 columns.

use core::fmt::{self, Write};

use super::{Comparison, Pair};
use crate::fitment::Caution;
#[cfg(feature = "serde")]
use crate::fitment::aside::line::InALine;
use crate::fitment::check::{Check, Verdict};
use crate::fitment::document::Written;
use crate::fitment::layout::{Maybe, Wrap, line, wrapped};
use crate::fitment::moves::{Move, MoveId, Words};
use crate::fitment::position::Position;
use crate::fitment::pressures::{Needed, Pressures};
use crate::fitment::print::shared_place;
use crate::fitment::value::{In, Rounded, Value};
use crate::text::{Excerpt, Name};
use crate::unit_system::UnitSystem;

/// What the two are called.
const CALLED: [&str; 2] = ["A", "B"];

/// Where the columns of a row begin: its place, its name, and a cell of each proposal.
const COLUMNS: [usize; 4] = [0, 12, 34, 57];

/// A row: where, what, and a cell of each proposal.
fn row(
    f: &mut fmt::Formatter<'_>,
    [place, name]: [&'static str; 2],
    [first, second]: [impl fmt::Display; 2],
) -> fmt::Result {
    let [at_place, at_name, at_first, at_second] = COLUMNS;
    line(f, &[(at_place, &place), (at_name, &Name(name)), (at_first, &first), (at_second, &second)])
}

/// What was measured, with its margin and sign behind: `480 kg, -35`.
struct Measured<'a>(Option<&'a Check>, UnitSystem);

impl fmt::Display for Measured<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Some((check, measured)) = self.0.and_then(|check| Some((check, check.measured()?))) else {
            return Ok(());
        };
        write!(f, "{}", In(measured, self.1))?;
        let Some(margin) = check.margin_number() else { return Ok(()) };
        let sign = if Rounded(margin).is_positive() { "+" } else { "" };
        match measured
            .of_same_kind(margin)
            .in_us()
            .filter(|_| self.1 == UnitSystem::Us && measured.in_us().is_some())
        {
            Some((margin, decimals, _)) => {
                write!(f, ", {sign}{}", crate::decimals::Decimals(margin, decimals))
            }
            None => write!(f, ", {sign}{}", Rounded(margin)),
        }
    }
}

impl Pair<Check> {
    /// The same pair at another place.
    fn is_at_too(&self, place: Position, comparison: &Comparison<'_>) -> bool {
        let reports = comparison.documents().map(|document| document.report());
        let mut here = self.each().into_iter().zip(reports);
        here.all(|(check, report)| {
            report.get(self.id(), place).map(|other| Check { place: self.position(), ..other })
                == check.copied()
        })
    }

    fn print(&self, f: &mut fmt::Formatter<'_>, place: &'static str, units: UnitSystem) -> fmt::Result {
        let verdicts = self.each().map(|check| Name(check.map_or("not asked", |check| check.verdict.name())));
        row(f, [place, self.id().name()], verdicts)?;
        let measured = || self.each().into_iter().flatten().filter_map(Check::measured);
        for (n, &units) in units.each().iter().enumerate() {
            let is_again = n > 0 && measured().all(|value| value.in_us().is_none());
            if measured().next().is_some() && !is_again {
                row(f, ["", ""], self.each().map(|check| Measured(check, units)))?;
            }
        }
        Ok(())
    }

    /// Why, of each.
    fn print_reasons(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (called, check) in CALLED.into_iter().zip(self.each()) {
            if let Some(check) = check.filter(|check| check.verdict != Verdict::NotApplicable) {
                write!(f, "{:12}{called}: ", "")?;
                wrapped(f, 15, check.reason())?;
            }
        }
        Ok(())
    }
}

impl Comparison<'_> {
    fn units(&self) -> UnitSystem {
        self.proposals[0].document.units()
    }

    fn print_heads(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "Two proposals side by side")?;
        for (called, document) in CALLED.into_iter().zip(self.documents()) {
            write!(f, "{called:<3}")?;
            let mut wrap = Wrap::new(f, 3);
            write!(wrap, "{}: ", Excerpt(document.name().unwrap_or("vehicle without a name")))?;
            write!(wrap, "{}", document.overall_on_axles())?;
            write!(wrap, "{}", if document.is_complete_on_axles() { "" } else { ", not complete" })?;
            wrap.end()?;
        }
        let mut keys = self.differing_keys().peekable();
        if keys.peek().is_some() {
            writeln!(f)?;
            let mut wrap = Wrap::new(f, 0);
            write!(wrap, "Caution: these are not two proposals for one vehicle. ")?;
            write!(wrap, "Besides what is proposed they differ in:")?;
            for (n, key) in keys.enumerate() {
                write!(wrap, "{} {}", if n == 0 { "" } else { "," }, Excerpt(key))?;
            }
            write!(wrap, ". A verdict may differ for that alone.")?;
            wrap.end()?;
        }
        writeln!(f)?;
        for place in [Position::Front, Position::Rear] {
            let setups = self.documents().map(|document| document.change().on(place)[1]);
            if setups.iter().all(Option::is_none) {
                continue;
            }
            for (n, (called, setup)) in CALLED.into_iter().zip(setups).enumerate() {
                write!(f, "  {:<6}{called:<3}", if n == 0 { place.name() } else { "" })?;
                match setup {
                    Some(setup) => wrapped(f, 11, Written(setup))?,
                    None => writeln!(f, "not given")?,
                }
            }
        }
        Ok(())
    }

    /// The findings that are asked for, with places of which the same is true together.
    fn print_checks(
        &self,
        f: &mut fmt::Formatter<'_>,
        title: &str,
        asked: impl Fn(&Pair<Check>) -> bool,
        each: impl Fn(&mut fmt::Formatter<'_>, &'static str, &Pair<Check>) -> fmt::Result,
    ) -> fmt::Result {
        for (n, pair) in self.checks().filter(|pair| asked(pair)).enumerate() {
            if n == 0 {
                writeln!(f, "\n{title}")?;
            }
            if let Some(place) = shared_place(pair.position(), |place| pair.is_at_too(place, self)) {
                each(f, place, &pair)?;
            }
        }
        Ok(())
    }

    fn print_moves(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut any = false;
        for pair in self.moves().filter(Pair::differs) {
            let is_twin = |other: &Pair<Move>, place| {
                let mut each = pair.each().into_iter().zip(other.each());
                other.position() == place
                    && each.all(|(a, b)| a.zip(b).map_or(a.is_none() && b.is_none(), |(a, b)| a.moves_as(b)))
            };
            let is_at_too = |place| self.moves().any(|other| is_twin(&other, place));
            let Some(place) = shared_place(pair.position(), is_at_too) else { continue };
            if !core::mem::replace(&mut any, true) {
                writeln!(f, "\nWhat moves otherwise, from the original, at nominal size")?;
            }
            for (n, &units) in self.units().each().iter().enumerate() {
                let words = pair.each().map(|found| Maybe(found.map(|found| Words(found, units))));
                row(f, if n == 0 { [place, pair.either().words()] } else { ["", ""] }, words)?;
            }
            if let Some(shown) = pair.either().before().filter(|_| pair.id() == MoveId::TrueSpeed) {
                writeln!(f, "{:12}where {} were shown and true", "", In(shown, self.units()))?;
            }
        }
        Ok(())
    }

    /// Where the wheels come nearest to what stands around them, where that is not the same.
    fn print_approaches(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, pair) in self.approaches().filter(Pair::differs).enumerate() {
            if n == 0 {
                writeln!(f, "\nAnother nearest approach over all steer and travel: what is left at worst")?;
            }
            for (called, approach) in CALLED.into_iter().zip(pair.each()) {
                let Some(approach) = approach else { continue };
                let place = if called == CALLED[0] || pair.first().is_none() {
                    approach.position().name()
                } else {
                    ""
                };
                write!(f, "{:<12}{called}: ", Name(place))?;
                wrapped(f, 15, In(*approach, self.units()))?;
            }
        }
        Ok(())
    }

    fn print_pressures(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        type Of = fn(&Pressures) -> Needed;
        let needs: [(&str, Of); 4] = [
            ("normal load", Pressures::normal_load),
            ("full load", Pressures::full_load),
            ("as the original", Pressures::as_original),
            ("permitted", |p| p.permitted().map_or(Needed::NotKnown, Needed::AtLeast)),
        ];
        let mut any = false;
        for pair in self.pressures() {
            for (name, of) in needs.iter().filter(|(_, of)| pair.differs_by(of)) {
                if !core::mem::replace(&mut any, true) {
                    writeln!(f, "\nOther least cold pressures of the proposed tires, by load tables")?;
                }
                for (n, &units) in self.units().each().iter().enumerate() {
                    let cells = pair.each().map(|found| Cold(found.map_or(Needed::NotKnown, of), units));
                    row(f, if n == 0 { [pair.position().name(), name] } else { ["", ""] }, cells)?;
                }
            }
        }
        Ok(())
    }

    /// The cautions of either report, each once, and of which proposal alone one is.
    fn print_cautions(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "\nCautions")?;
        let documents = self.documents();
        for &caution in Caution::ALL {
            let of = match documents.map(|document| document.has_caution(caution)) {
                [false, false] => continue,
                [true, true] => "",
                [true, false] => "(A) ",
                [false, true] => "(B) ",
            };
            f.write_str("  * ")?;
            wrapped(f, 4, format_args!("{of}{}", caution.text()))?;
        }
        Ok(())
    }
}

/// A pressure that is needed, in the units that are asked for.
struct Cold(Needed, UnitSystem);

impl fmt::Display for Cold {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Needed::AtLeast(pressure) => In(Value::Pressure(pressure), self.1).fmt(f),
            Needed::NotKnown => f.write_str("not known"),
            Needed::NoPressure => self.0.fmt(f),
        }
    }
}

impl fmt::Display for Comparison<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.print_heads(f)?;
        writeln!(f)?;
        row(f, ["Verdict; measured, margin", ""], CALLED)?;
        self.print_found(f)?;
        #[cfg(feature = "serde")]
        self.print_further(f)?;
        self.print_cautions(f)
    }
}

#[cfg(feature = "serde")]
impl Comparison<'_> {
    /// What was found on the further axles, each under its name.
    fn print_further(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for pair in self.further() {
            f.write_str("\n")?;
            let name = Excerpt(pair.either().name());
            wrapped(f, 0, format_args!("Further axle: {name}"))?;
            for (called, axle) in CALLED.into_iter().zip(pair.each()) {
                write!(f, "{called:<3}")?;
                let Some(axle) = axle else {
                    writeln!(f, "no axle of this name")?;
                    continue;
                };
                wrapped(f, 3, InALine(axle.report()))?;
                let proposed = axle.document().change().on(Position::Rear)[1];
                f.write_str("   ")?;
                match proposed {
                    Some(setup) => wrapped(f, 3, Written(setup))?,
                    None => writeln!(f, "no setup is given")?,
                }
            }
            if let Pair::Both(first, second) = pair {
                self.on_further([first, second]).print_found(f)?;
            }
        }
        Ok(())
    }
}

impl Comparison<'_> {
    /// What differs of what was found, and what is the same.
    fn print_found(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let units = self.units();
        if !self.checks().any(|pair| pair.differs()) {
            writeln!(f, "\nNothing that was found differs.")?;
        }
        let spell_out = |f: &mut fmt::Formatter<'_>, place, pair: &Pair<Check>| {
            pair.print(f, place, units)?;
            if pair.differs_by(Check::reason) { pair.print_reasons(f) } else { Ok(()) }
        };
        self.print_checks(f, "Another verdict", Pair::verdict_differs, spell_out)?;
        let only_figures = |pair: &Pair<Check>| !pair.verdict_differs() && pair.differs();
        self.print_checks(f, "The same verdict, other figures or another reason", only_figures, spell_out)?;
        self.print_approaches(f)?;
        self.print_moves(f)?;
        self.print_pressures(f)?;
        let same = |pair: &Pair<Check>| !pair.differs();
        self.print_checks(f, "The same in both", same, |f, place, pair| {
            let check = pair.either();
            let (verdict, measured) = (Name(check.verdict.name()), Measured(Some(check), units.first()));
            row(f, [place, check.id.name()], [&verdict as &dyn fmt::Display, &measured])
        })
    }
}
