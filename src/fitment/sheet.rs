//! A sheet to print and fill in while wheels are fitted and while their fasteners are checked again.

mod print;

use core::fmt;

use super::Setup;
use super::document::Document;
use super::value::{In, Value};
use crate::unit_system::UnitSystem;
use crate::units::Torque;
use crate::vehicle::{Axle, Fastening};
use crate::wheel::tightening::{TighteningOrder, torque_stages};
use crate::wheel::{BoltCircle, FastenerKind, Seat, Thread};

/// A torque and recheck sheet, to print and to fill in: for every wheel what holds it, in which order and in which
/// stages it is tightened, its cold pressure, and room for what was done, by whom and when.
///
/// It tells what is given and computes no torque: where the setup holds none, its place is blank and the maker is to be
/// asked. Order, stages and the distance to the first check are common practice, no source ([`TighteningOrder`],
/// [`torque_stages`], [`recheck_distance`](crate::wheel::tightening::recheck_distance)); what the makers say goes before them. `Display` has 80 columns.
///
/// ```
/// use beadseat::fitment::{Change, Document, Setup};
/// use beadseat::units::nm;
/// use beadseat::vehicle::{Kind, Vehicle};
/// let car = Vehicle::new(Kind::Passenger);
/// let old = Setup::parse("205/55R16", "6.5Jx16 ET46 5x112")?;
/// let new = Setup::parse("225/45R17", "7.5Jx17 ET42 5x112")?;
/// let (blank, told) = (Change::front(old, new), Change::front(old, new.with_torque(nm(120.0))?));
/// let sheet = |change: &Change| Document::new(&change.assess(&car), &car, change).sheet().to_string();
/// assert!(sheet(&blank).contains("Torque        the maker's torque: ask, and write it here ________ N·m"));
/// assert!(sheet(&told).contains("Stages        30 %: 36 N·m; 60 %: 72 N·m; 100 %: 120 N·m"));
/// assert!(sheet(&told).contains("Order         1 3 5 2 4"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Sheet<'a> {
    document: Document<'a>,
    is_markdown: bool,
}

impl<'a> Document<'a> {
    /// A sheet to fit its proposal by, and to check it again.
    pub const fn sheet(&self) -> Sheet<'a> {
        Sheet { document: *self, is_markdown: false }
    }
}

impl Sheet<'_> {
    /// Laid out as Markdown.
    pub const fn in_markdown(self) -> Self {
        Self { is_markdown: true, ..self }
    }
}

/// Room to write.
const BLANK: &str = "________";

/// The shares of a torque at which its stages stand, as [`torque_stages`] has them.
const SHARES: [&str; 3] = ["30 %", "60 %", "100 %"];

/// How many holes are told of what is bolted together.
#[derive(Clone, Copy)]
enum Holes {
    NotGiven,
    Of(BoltCircle),
    /// Of what goes on, and of what it goes on: it does not.
    Differ(u8, u8),
}

impl Holes {
    fn of(goes_on: Option<BoltCircle>, on: Option<BoltCircle>) -> Self {
        match (goes_on, on) {
            (Some(a), Some(b)) if a.count() != b.count() => Self::Differ(a.count(), b.count()),
            (a, b) => a.or(b).map_or(Self::NotGiven, Self::Of),
        }
    }
}

/// Fasteners that hold a wheel, or an adaptor under it, as far as they are told.
#[derive(Clone, Copy)]
struct Joint {
    /// What is held, where it is not the wheel on the hub.
    what: &'static str,
    holes: Holes,
    kind: Option<FastenerKind>,
    thread: Option<Thread>,
    seat: Option<Seat>,
    torque: Option<Torque>,
}

impl Joint {
    /// What holds a setup on an axle, in the order in which it is tightened.
    fn of(axle: Option<&Axle>, setup: &Setup) -> [Option<Self>; 2] {
        let hub = axle.and_then(Axle::hub);
        let of_hub = hub.and_then(|hub| hub.fastening()).map(|fastening| match fastening {
            Fastening::Bolt => FastenerKind::Bolt,
            Fastening::Stud => FastenerKind::Nut,
        });
        let own = setup.fasteners();
        let (hub_circle, hub_thread) =
            (hub.and_then(|hub| hub.bolt_circle()), hub.and_then(|hub| hub.thread()));
        let own_seat = match own {
            Some(fasteners) => fasteners.seat(),
            None => hub.and_then(|hub| hub.seat()).filter(|_| setup.adaptor().is_none()),
        };
        let wheel = setup.wheel();
        // A wheel may be drilled for two.
        let drilled = |on: Option<BoltCircle>| {
            wheel.second_bolt_circle().filter(|second| Some(*second) == on).or(wheel.bolt_circle())
        };
        let held = Self {
            what: "",
            holes: Holes::of(drilled(hub_circle), hub_circle),
            kind: own.and_then(|fasteners| fasteners.kind()).or(of_hub),
            thread: own.and_then(|fasteners| fasteners.thread()).or(hub_thread),
            seat: setup.seat().or(own_seat),
            torque: setup.torque(),
        };
        let Some(adaptor) = setup.adaptor() else { return [Some(held), None] };
        let (inner, outer) = (adaptor.hub_bolt_circle(), adaptor.wheel_bolt_circle());
        let (what, holes) = ("adaptor on hub", Holes::of(inner, hub_circle));
        let under = Self { what, holes, kind: of_hub, thread: hub_thread, seat: None, torque: None };
        let held = Self {
            what: "wheel on adaptor",
            holes: Holes::of(drilled(outer), outer),
            kind: own.and_then(|fasteners| fasteners.kind()).or(adaptor.fastener_kind()),
            thread: own.and_then(|fasteners| fasteners.thread()).or(adaptor.thread()),
            ..held
        };
        [Some(under), Some(held)]
    }
}

/// `5 bolts, thread M14x1.5, seat cone 60`.
impl fmt::Display for Joint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Holes::Of(circle) = self.holes {
            write!(f, "{} ", circle.count())?;
        }
        f.write_str(match self.kind {
            Some(FastenerKind::Bolt) => "bolts",
            Some(FastenerKind::Nut) => "nuts",
            _ => "fasteners",
        })?;
        if matches!(self.holes, Holes::NotGiven) {
            f.write_str(", how many is not given")?;
        }
        match self.thread {
            Some(thread) => write!(f, ", thread {thread}")?,
            None => f.write_str(", thread not given")?,
        }
        match self.seat {
            Some(seat) => write!(f, ", seat {seat}"),
            None => f.write_str(", seat not given"),
        }
    }
}

/// In which order a joint is tightened.
struct Order(Holes);

impl fmt::Display for Order {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Holes::Of(circle) => {
                for hole in TighteningOrder::of(circle).holes() {
                    write!(f, "{hole} ")?;
                }
                f.write_str("of the holes, counted round the circle from any of them")
            }
            Holes::NotGiven => f.write_str("the star: from each to the one most nearly opposite"),
            Holes::Differ(goes_on, on) => {
                write!(f, "none: {goes_on} holes do not go on {on}, do not fit it")
            }
        }
    }
}

/// A torque as it is given, or room for it.
struct Told {
    torque: Option<Torque>,
    is_assumed: bool,
    units: UnitSystem,
}

impl fmt::Display for Told {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Some(torque) = self.torque else {
            let unit = unit(self.units, ["N·m", "lbf·ft"]);
            return write!(f, "the maker's torque: ask, and write it here {BLANK} {unit}");
        };
        let told = if self.is_assumed { "assumed, confirm it" } else { "as given" };
        write!(f, "{}, {told}; what the maker says goes before it", In(Value::Torque(torque), self.units))
    }
}

/// The torques of the stages, or room for them.
struct Stages(Option<Torque>, UnitSystem);

impl fmt::Display for Stages {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let stages = self.0.map(torque_stages);
        for (n, share) in SHARES.into_iter().enumerate() {
            write!(f, "{}{share}: ", if n == 0 { "" } else { "; " })?;
            match stages.and_then(|stages| stages.get(n).copied()) {
                Some(torque) => write!(f, "{}", In(Value::Torque(torque), self.1))?,
                None => f.write_str(BLANK)?,
            }
        }
        Ok(())
    }
}

/// The unit to write in.
const fn unit(units: UnitSystem, [metric, us]: [&'static str; 2]) -> &'static str {
    match units.first() {
        UnitSystem::Us => us,
        UnitSystem::Metric | UnitSystem::Both => metric,
    }
}

/// The pressures that are proposed.
struct Cold<'a> {
    setup: &'a Setup,
    /// Of normal load, and of full load.
    is_assumed: [bool; 2],
    units: UnitSystem,
}

impl fmt::Display for Cold<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let loads = [("normal load", self.setup.pressure()), ("full load", self.setup.pressure_full_load())];
        let told = loads.into_iter().zip(self.is_assumed);
        let told = told.filter_map(|((load, pressure), is_assumed)| Some((load, pressure?, is_assumed)));
        for (n, (load, pressure, is_assumed)) in told.enumerate() {
            write!(
                f,
                "{}{load} {}",
                if n == 0 { "" } else { ", " },
                In(Value::Pressure(pressure), self.units)
            )?;
            f.write_str(if is_assumed { " (assumed, confirm it)" } else { "" })?;
        }
        f.write_str(match loads {
            [(_, None), (_, None)] => "not given: ask, the vehicle maker's placard goes before",
            _ => ", as proposed",
        })
    }
}

/// One wheel: on which side, of which axle of a group, and which of a pair.
#[derive(Clone, Copy)]
struct WheelAt<T> {
    /// What the axle is called.
    of: T,
    side: Option<&'static str>,
    axle: Option<u8>,
    of_pair: Option<&'static str>,
}

impl<T: Copy> WheelAt<T> {
    /// Every wheel of an axle, the inner one of a pair first, for it is fitted first.
    fn all(of: T, axle: Option<&Axle>, has_sides: bool) -> impl Iterator<Item = Self> {
        let axles = axle.and_then(Axle::axles).map_or(1, |axles| axles.get());
        let is_pair = axle.and_then(Axle::wheels_per_side).is_some_and(|wheels| wheels.get() > 1);
        let sides: &[_] = if has_sides { &[Some("left"), Some("right")] } else { &[None] };
        let pairs: &[_] = if is_pair { &[Some("inner"), Some("outer")] } else { &[None] };
        (1..=axles).flat_map(move |number| {
            let axle = (axles > 1).then_some(number);
            sides
                .iter()
                .flat_map(move |&side| pairs.iter().map(move |&of_pair| Self { of, side, axle, of_pair }))
        })
    }
}

impl<T: fmt::Display> fmt::Display for WheelAt<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.of)?;
        self.side.map_or(Ok(()), |side| write!(f, " {side}"))?;
        self.axle.map_or(Ok(()), |axle| write!(f, ", axle {axle}"))?;
        self.of_pair.map_or(Ok(()), |of_pair| write!(f, ", {of_pair}"))
    }
}
