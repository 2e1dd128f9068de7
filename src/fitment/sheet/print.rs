//! The sheet laid out, as text of 80 columns or as Markdown.

use core::fmt::{self, Write};

use super::{BLANK, Cold, Joint, Order, SHARES, Sheet, Stages, Told, WheelAt, unit};
use crate::Citation;
use crate::decimals::Decimals;
use crate::fitment::check::{CheckId, Position, Reason, Verdict};
use crate::fitment::document::Written;
use crate::fitment::layout::{line, wrapped};
use crate::fitment::value::{In, Value};
use crate::fitment::{Caution, Setup};
use crate::text::Excerpt;
use crate::units::in_meters;
use crate::vehicle::Axle;
use crate::wheel::Seat;
use crate::wheel::tightening::recheck_distance;

/// A wheel with what of it is held, where that is told apart.
struct Held<T>(WheelAt<T>, &'static str);

impl<T: fmt::Display> fmt::Display for Held<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}{}", self.0, if self.1.is_empty() { "" } else { ": " }, self.1)
    }
}

/// Where the sheet goes: as text or as Markdown.
struct Page<'f, 'b> {
    f: &'f mut fmt::Formatter<'b>,
    is_markdown: bool,
}

impl Page<'_, '_> {
    fn heading(&mut self, text: impl fmt::Display) -> fmt::Result {
        if self.is_markdown { writeln!(self.f, "\n## {text}\n") } else { writeln!(self.f, "\n{text}") }
    }

    fn field(&mut self, name: &str, value: impl fmt::Display) -> fmt::Result {
        if self.is_markdown {
            return writeln!(self.f, "* {name}: {value}");
        }
        write!(self.f, "  {name:<14}")?;
        wrapped(self.f, 16, value)
    }

    fn head(&mut self, cells: &[(usize, &dyn fmt::Display)]) -> fmt::Result {
        self.f.write_char('\n')?;
        self.row(cells)?;
        if self.is_markdown {
            self.f.write_char('|')?;
            cells.iter().try_for_each(|_| self.f.write_str(" --- |"))?;
            self.f.write_char('\n')?;
        }
        Ok(())
    }

    fn row(&mut self, cells: &[(usize, &dyn fmt::Display)]) -> fmt::Result {
        if !self.is_markdown {
            return line(self.f, cells);
        }
        self.f.write_char('|')?;
        cells.iter().try_for_each(|(_, cell)| write!(self.f, " {cell} |"))?;
        self.f.write_char('\n')
    }

    fn item(&mut self, text: impl fmt::Display) -> fmt::Result {
        if self.is_markdown {
            return writeln!(self.f, "* {text}");
        }
        self.f.write_str("  * ")?;
        wrapped(self.f, 4, text)
    }
}

/// A text from outside, in Markdown with what would be read as its marks told not to be.
#[derive(Clone, Copy)]
struct Outside<'a>(&'a str, bool);

impl fmt::Display for Outside<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        struct Told<'f, 'b>(&'f mut fmt::Formatter<'b>);
        impl Write for Told<'_, '_> {
            fn write_str(&mut self, text: &str) -> fmt::Result {
                text.chars().try_for_each(|c| {
                    if r"\`*_{}[]<>#|&".contains(c) {
                        self.0.write_char('\\')?;
                    }
                    self.0.write_char(c)
                })
            }
        }
        if self.1 { write!(Told(f), "{}", Excerpt(self.0)) } else { Excerpt(self.0).fmt(f) }
    }
}

impl Sheet<'_> {
    /// The wheels of an axle are on a spindle, not on a hub with holes: as the report says.
    fn is_on_spindle(&self, place: Position) -> bool {
        let holes = self.document.report().get(CheckId::BoltCircle, place);
        holes.is_some_and(|holes| holes.reason() == Reason::NoSpindleHub)
    }

    fn axle(&self, place: Position) -> Option<&Axle> {
        match place {
            Position::Front => self.document.vehicle().front(),
            _ => self.document.vehicle().rear(),
        }
    }

    fn print_head(&self, page: &mut Page<'_, '_>) -> fmt::Result {
        let name = self.document.name().unwrap_or("vehicle without a name");
        let verdict = match self.document.overall_on_axles() {
            Verdict::Beyond => "The report on it says BEYOND: do not fit it like this.",
            Verdict::Within => "The report on it says within: every limit that was assessed is kept.",
            Verdict::Marginal | Verdict::NotAssessed | Verdict::NotApplicable => {
                "The report on it says marginal: read it first, not everything is settled."
            }
        };
        if page.is_markdown {
            return writeln!(page.f, "# Torque and recheck sheet\n\n{}\n\n{verdict}", Outside(name, true));
        }
        writeln!(page.f, "TORQUE AND RECHECK SHEET")?;
        wrapped(page.f, 0, Outside(name, false))?;
        wrapped(page.f, 0, verdict)
    }

    /// Prints an axle, as it is called, with what is to go on it.
    fn print_axle(
        &self,
        page: &mut Page<'_, '_>,
        (place, called): (Position, Outside<'_>),
        setup: &Setup,
    ) -> fmt::Result {
        let (units, axle) = (self.document.units(), self.axle(place));
        let is_on_spindle = self.is_on_spindle(place);
        page.heading(format_args!("Axle: {called}"))?;
        page.field("Setup", Written(setup))?;
        if setup.hub_spacing().value > 0.0 {
            page.field(
                "Spacing",
                format_args!("{} between hub and wheel", In(Value::Length(setup.hub_spacing()), units)),
            )?;
        }
        let joints = Joint::of(axle, setup);
        let joints = || joints.iter().flatten().filter(|_| !is_on_spindle);
        let is_assumed = self.document.is_assumed(place, "torque_nm");
        let told = |torque| Told { torque, is_assumed, units };
        for joint in joints() {
            if !joint.what.is_empty() {
                page.field("Joint", joint.what)?;
            }
            page.field("Held by", joint)?;
            page.field("Order", Order(joint.holes))?;
            page.field("Torque", told(joint.torque))?;
            page.field("Stages", Stages(joint.torque, units))?;
        }
        if is_on_spindle {
            page.field(
                "Held by",
                "a spindle: no star and no stages, the maker says what is tightened in which order",
            )?;
            page.field("Torque", told(setup.torque()))?;
        }
        let is_pair = axle.and_then(Axle::wheels_per_side).is_some_and(|wheels| wheels.get() > 1);
        let seat = joints().next_back().and_then(|joint| joint.seat);
        if is_pair {
            page.field("Pair", match seat {
                Some(Seat::Flat) => "flat seats: the hub centres the pair, and one set of nuts holds both wheels",
                Some(_) => {
                    "seats that centre: where the inner wheel has nuts of its own, they come first, and at every check too"
                }
                None => "whether the hub centres the pair or the seats do is not given: ask",
            })?;
        }
        let is_assumed =
            ["pressure_kpa", "pressure_full_load_kpa"].map(|key| self.document.is_assumed(place, key));
        page.field("Cold pressure", Cold { setup, is_assumed, units })?;
        let has_sides = !is_on_spindle;
        let blank = if self.is_markdown { "" } else { BLANK };
        let tick = if self.is_markdown { "" } else { "[ ]" };
        let set: &dyn fmt::Display = &format_args!("set, {}", unit(units, ["kPa", "psi"]));
        let [first, second, third] = SHARES;
        if is_on_spindle {
            page.head(&[(2, &"wheel"), (36, &"tight"), (57, &set), (69, &"initials")])?;
        } else {
            page.head(&[
                (2, &"wheel"),
                (36, &first),
                (43, &second),
                (50, &third),
                (57, &set),
                (69, &"initials"),
            ])?;
        }
        for wheel in WheelAt::all(called, axle, has_sides) {
            if is_on_spindle {
                page.row(&[(2, &wheel), (36, &tick), (57, &blank), (69, &blank)])?;
            }
            // What holds the pair is tightened once, at its outer wheel.
            let is_held_by_outer = wheel.of_pair == Some("inner") && seat == Some(Seat::Flat);
            for joint in joints() {
                let (held, tick) = (Held(wheel, joint.what), if is_held_by_outer { "-" } else { tick });
                page.row(&[(2, &held), (36, &tick), (43, &tick), (50, &tick), (57, &blank), (69, &blank)])?;
            }
        }
        Ok(())
    }

    /// Prints an axle, by its place unless it has a name, if something is to go on it.
    fn print_on(
        &self,
        page: &mut Page<'_, '_>,
        place: Position,
        name: Option<&str>,
    ) -> Result<bool, fmt::Error> {
        let Some(setup) = self.document.change().on(place)[1] else { return Ok(false) };
        let called = Outside(name.unwrap_or(place.name()), self.is_markdown);
        self.print_axle(page, (place, called), setup)?;
        Ok(true)
    }

    fn print_rechecks(&self, page: &mut Page<'_, '_>) -> fmt::Result {
        page.heading("Fitted and checked again")?;
        let blank = if self.is_markdown { "" } else { BLANK };
        page.head(&[(2, &"when"), (30, &"date"), (42, &"odometer"), (54, &"torque"), (66, &"initials")])?;
        let (least, most) = recheck_distance().into_inner();
        let km = |distance| Decimals(in_meters(distance) / 1000.0, 0);
        let after = format_args!("after {} to {} km", km(least), km(most));
        let rows: [&dyn fmt::Display; 4] = [&"fitted", &after, &"checked again", &"checked again"];
        for row in rows {
            page.row(&[(2, row), (30, &blank), (42, &blank), (54, &blank), (66, &blank)])?;
        }
        Ok(())
    }

    fn print_cautions(&self, page: &mut Page<'_, '_>) -> fmt::Result {
        page.heading("Cautions")?;
        page.item("What the makers of vehicle, wheel and fasteners say goes before everything here.")?;
        page.item("Threads and seats are clean and dry unless the maker says otherwise: oil clamps harder at the same torque.")?;
        page.item(
            "A fastener that turns at every check, or a seat that is worn: stop, and have it looked at.",
        )?;
        page.item("Where such work is for licensed practice, a licensed person does it and signs.")?;
        let applies = |caution: &Caution| is_of_fitting(*caution) && self.document.has_caution(*caution);
        for caution in Caution::ALL.iter().filter(|caution| applies(caution)) {
            page.item(caution.text())?;
        }
        page.item(format_args!("Order, stages and distance: {}.", Citation::TIGHTENING_PRACTICE.document()))
    }
}

/// Whether whoever fits a wheel must know of it.
const fn is_of_fitting(caution: Caution) -> bool {
    match caution {
        Caution::NeverMount
        | Caution::Placard
        | Caution::LocalLaw
        | Caution::Seating
        | Caution::Retorque
        | Caution::ColdPressure
        | Caution::SpacerThread
        | Caution::Bottoming
        | Caution::Adaptor
        | Caution::MultiPiece
        | Caution::StaticOnly
        | Caution::TemporarySpare
        | Caution::AsDescribed
        | Caution::Valve => true,
        Caution::Bearings
        | Caution::InsetFromBackspacing
        | Caution::CamberAssumed
        | Caution::Towing
        | Caution::UnevenTread => false,
    }
}

impl fmt::Display for Sheet<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut page = Page { f, is_markdown: self.is_markdown };
        self.print_head(&mut page)?;
        let mut is_any = self.print_on(&mut page, Position::Front, None)?;
        is_any |= self.print_on(&mut page, Position::Rear, None)?;
        #[cfg(feature = "serde")]
        for axle in self.document.further() {
            let sheet = Self { document: axle.document().in_units(self.document.units()), ..*self };
            is_any |= sheet.print_on(&mut page, Position::Rear, Some(axle.name()))?;
        }
        if !is_any {
            page.heading("No setup is proposed.")?;
        }
        self.print_rechecks(&mut page)?;
        self.print_cautions(&mut page)
    }
}
