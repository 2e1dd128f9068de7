//! What a change moves: from the two setups alone, and without a verdict.
//!
//! Faces are measured from the hub face along the spindle, positive outboard. Of a pair of wheels the outer face is
//! that of the outer wheel, and the inner face that of the inner one.

use core::fmt;

use super::checks::rolling::{is_driven, tell_true_speed_share, true_speed_share};
use super::facts::{AxleFacts, Centres, SetupFacts};
use super::layout::{Cell, Maybe};
use super::position::Position;
use super::told;
use super::value::{In, Rounded, Value};
use super::{Change, Limits};
use crate::Toleranced;
use crate::record::words;
use crate::step::{End, Teller};
use crate::unit_system::UnitSystem;
use crate::units::{self, Length, in_kmh, in_mm};
use crate::vehicle::Vehicle;

words! {
    /// What can move, from the hub outward.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::moves::MoveId::RimOuterFace.name(), "rim_outer_face");
    /// ```
    MoveId {
        /// How far the middle of the rim lies inboard of the wheel's mounting face.
        Inset = "inset",
        /// From the wheel's mounting face to the inner edge of its rim.
        Backspacing = "backspacing",
        /// Outer edge of the rim, from the hub face.
        RimOuterFace = "rim_outer_face",
        /// Inner edge of the rim, from the hub face.
        RimInnerFace = "rim_inner_face",
        /// Outer sidewall, from the hub face.
        TireOuterFace = "tire_outer_face",
        /// Inner sidewall, from the hub face.
        TireInnerFace = "tire_inner_face",
        /// Section width of the tire on its rim.
        SectionWidth = "section_width",
        /// Height of the section, from the rim to the tread.
        SectionHeight = "section_height",
        /// Overall diameter of a new tire.
        OverallDiameter = "overall_diameter",
        /// How high the axle stands: half of the overall diameter, whatever the load presses off it.
        RideHeight = "ride_height",
        /// Way of one turn of the wheel.
        RollingCircumference = "rolling_circumference",
        /// True speed at an unchanged indication.
        TrueSpeed = "true_speed",
    }
}

/// The speeds at which UN R39 judges a speedometer, in km/h; a slower vehicle is looked at at its own.
const SPEEDS: [f64; 3] = [40.0, 80.0, 120.0];

/// Of each axle one of each, and of the true speed as many as there are speeds.
const MOST: usize = 2 * (MoveId::ALL.len() - 1 + SPEEDS.len());

/// What moves on one axle, or stays: before and after the change, where the setups tell.
///
/// `Display` is the name and the change in words.
///
/// ```
/// use beadseat::fitment::{Change, Setup, Value, moves::{MoveId, Moves}};
/// use beadseat::{units::mm, vehicle::Vehicle};
/// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16 ET46")?, Setup::parse("225/45R17", "7.5Jx17 ET42")?];
/// let moves = Moves::of(&Vehicle::unknown(), &Change::front(old, new));
/// let inset = moves.iter().find(|m| m.id() == MoveId::Inset).ok_or("no inset")?;
/// assert_eq!(inset.after(), Some(Value::Length(mm(42.0))));
/// assert_eq!(inset.to_string(), "inset: 4 mm less");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Move {
    id: MoveId,
    place: Position,
    before: Option<Toleranced<f64>>,
    after: Option<Toleranced<f64>>,
    is_from_memory: bool,
}

impl Move {
    /// What it is that moves.
    pub const fn id(&self) -> MoveId {
        self.id
    }

    /// The axle on which it moves.
    pub const fn position(&self) -> Position {
        self.place
    }

    /// With the original setup, at nominal size; nothing where it does not tell.
    pub fn before(&self) -> Option<Value> {
        Some(self.value(self.before?.nominal()))
    }

    /// With the proposed setup, at nominal size; nothing where it does not tell.
    pub fn after(&self) -> Option<Value> {
        Some(self.value(self.after?.nominal()))
    }

    /// The least and the most it may have been, where tolerance widens it.
    pub fn before_span(&self) -> Option<(Value, Value)> {
        self.span(self.before?)
    }

    /// The least and the most it may come to, where tolerance widens it.
    pub fn after_span(&self) -> Option<(Value, Value)> {
        self.span(self.after?)
    }

    /// How far it moves from nominal to nominal, with a sign; a face that moves outboard is positive.
    pub fn change(&self) -> Option<Value> {
        Some(self.value(self.change_number()?))
    }

    /// Whether a dimension of a tire behind it is remembered from a table, not read.
    pub const fn is_from_memory(&self) -> bool {
        self.is_from_memory
    }

    fn change_number(&self) -> Option<f64> {
        Some(self.after?.nominal() - self.before?.nominal())
    }

    fn value(&self, number: f64) -> Value {
        match self.id {
            MoveId::TrueSpeed => Value::Velocity(units::kmh(number)),
            _ => Value::Length(units::mm(number)),
        }
    }

    fn span(&self, of: Toleranced<f64>) -> Option<(Value, Value)> {
        (of.min() != of.max()).then(|| (self.value(of.min()), self.value(of.max())))
    }

    /// The same on another axle.
    pub(super) fn moves_as(&self, other: &Self) -> bool {
        *self == Self { place: self.place, ..*other }
    }

    /// What the change is called: of something that grows or moves outboard, and of the contrary.
    const fn directions(&self) -> [&'static str; 2] {
        match self.id {
            MoveId::Inset | MoveId::Backspacing => ["more", "less"],
            MoveId::RimOuterFace | MoveId::RimInnerFace | MoveId::TireOuterFace | MoveId::TireInnerFace => {
                ["further out", "further in"]
            }
            MoveId::SectionWidth => ["wider", "narrower"],
            MoveId::SectionHeight | MoveId::RideHeight => ["higher", "lower"],
            MoveId::OverallDiameter => ["larger", "smaller"],
            MoveId::RollingCircumference => ["longer", "shorter"],
            MoveId::TrueSpeed => ["faster", "slower"],
        }
    }

    /// What it is called, in the words of the trade.
    pub(super) const fn words(&self) -> &'static str {
        match self.id {
            MoveId::Inset => "inset",
            MoveId::Backspacing => "backspacing",
            MoveId::RimOuterFace => "outer face of rim",
            MoveId::RimInnerFace => "inner face of rim",
            MoveId::TireOuterFace => "outer face of tire",
            MoveId::TireInnerFace => "inner face of tire",
            MoveId::SectionWidth => "section width",
            MoveId::SectionHeight => "section height",
            MoveId::OverallDiameter => "overall diameter",
            MoveId::RideHeight => "hub above the road",
            MoveId::RollingCircumference => "turn of the wheel",
            MoveId::TrueSpeed => "true speed, as shown",
        }
    }
}

/// How far a move goes, in words: `16.7 mm further out`.
pub(super) struct Words<'a>(pub(super) &'a Move, pub(super) UnitSystem);

impl fmt::Display for Words<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Some(change) = self.0.change_number() else {
            return f.write_str(match self.0.before {
                None => "before it is not known",
                Some(_) => "after it is not known",
            });
        };
        let [more, less] = self.0.directions();
        if Rounded(change).is_positive() {
            write!(f, "{} {more}", In(self.0.value(change), self.1))
        } else if Rounded(-change).is_positive() {
            write!(f, "{} {less}", In(self.0.value(-change), self.1))
        } else {
            f.write_str("unchanged")
        }
    }
}

/// A move in the units that are asked for.
pub(super) struct MoveIn<'a>(pub(super) &'a Move, pub(super) UnitSystem);

impl fmt::Display for MoveIn<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.0.words(), Words(self.0, self.1))
    }
}

impl fmt::Display for Move {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", MoveIn(self, UnitSystem::Metric))
    }
}

/// Everything that a change moves, by axle, from the hub outward.
///
/// It needs nothing but the setups. Of the vehicle it reads how many wheels stand on an end of an axle, and of the
/// speeds the drive and the top speed; without them every axle may drive the speedometer.
///
/// ```
/// use beadseat::fitment::{Change, Setup, moves::Moves};
/// use beadseat::vehicle::Vehicle;
/// let setup = Setup::parse("205/55R16", "6.5Jx16 ET46")?;
/// let moves = Moves::of(&Vehicle::unknown(), &Change::all_round(setup, setup));
/// assert!(moves.iter().all(|m| m.to_string().ends_with("unchanged")));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moves {
    list: [Option<Move>; MOST],
}

impl Moves {
    /// What a change moves on a vehicle.
    pub fn of(vehicle: &Vehicle, change: &Change) -> Self {
        let (mut list, mut free) = ([None; MOST], 0);
        for place in [Position::Front, Position::Rear] {
            of_axle(place, vehicle, change, |found| {
                if let Some(place) = list.get_mut(free) {
                    *place = Some(found);
                    free += 1;
                }
            });
        }
        Self { list }
    }

    /// Each of them, the front axle first.
    pub fn iter(&self) -> impl Iterator<Item = Move> {
        self.list.iter().flatten().copied()
    }

    /// Those of one axle.
    pub(super) fn on(&self, place: Position) -> impl Iterator<Item = Move> {
        self.iter().filter(move |found| found.place == place)
    }
}

fn of_axle(place: Position, vehicle: &Vehicle, change: &Change, mut hear: impl FnMut(Move)) {
    let limits = Limits::default();
    let axle = AxleFacts::in_any_use(place, vehicle, &limits);
    let [original, proposed] = change.on(place).map(|setup| SetupFacts::of(setup, &axle));
    let is_remembered = [&original, &proposed].into_iter().flatten().any(|setup| setup.is_remembered);
    let mut hear = |id, before: Option<Toleranced<f64>>, after: Option<Toleranced<f64>>| {
        if before.or(after).is_some() {
            let is_of_wheel = matches!(
                id,
                MoveId::Inset | MoveId::Backspacing | MoveId::RimOuterFace | MoveId::RimInnerFace
            );
            hear(Move { id, place, before, after, is_from_memory: is_remembered && !is_of_wheel });
        }
    };
    let of_wheel = MoveId::ALL.iter().filter(|&&id| id != MoveId::TrueSpeed);
    for &id in of_wheel {
        let [before, after] =
            [&original, &proposed].map(|setup| Some(dimension(id, setup.as_ref()?)?.map(in_mm)));
        hear(id, before, after);
    }
    let drives = vehicle.drive().is_none_or(|drive| is_driven(&axle, drive));
    let share = original.as_ref().zip(proposed.as_ref()).filter(|_| drives);
    let Some(share) = share.and_then(|(old, new)| shown_share(old, new)) else { return };
    for speed in speeds(axle.own_top_speed.map(in_kmh)) {
        hear(MoveId::TrueSpeed, Some(Toleranced::exact(speed)), Some(share * speed));
    }
}

/// The true speed at an indication, of the one before: where only nominal diameters are known, as they are to each
/// other, for tires of one structure roll alike.
fn shown_share(old: &SetupFacts<'_>, new: &SetupFacts<'_>) -> Option<Toleranced<f64>> {
    let structures = [old, new].map(|setup| setup.tire().size().structure());
    let diameters = new.nominal_diameter.zip(old.nominal_diameter);
    let nominal =
        diameters.filter(|_| structures[0] == structures[1]).map(|(new, old)| in_mm(new) / in_mm(old));
    true_speed_share(old, new).ok().or(nominal.map(Toleranced::exact))
}

/// The speeds of the rule, up to the top speed of a vehicle that is slower.
fn speeds(top: Option<f64>) -> impl Iterator<Item = f64> {
    let slower = move |speed: f64| top.filter(|&top| top < speed).unwrap_or(speed);
    let mut last = 0.0;
    SPEEDS.into_iter().map(slower).filter(move |&speed| core::mem::replace(&mut last, speed) != speed)
}

/// One dimension of a setup on its axle.
fn dimension(id: MoveId, setup: &SetupFacts<'_>) -> Option<Toleranced<Length>> {
    let diameter = || setup.diameter.or(setup.nominal_diameter.map(Toleranced::exact));
    let [rim, tire] = [Some(setup.half_rim), setup.half_tire];
    let doubt = setup.doubt_of_place();
    let outer = |half: Option<Toleranced<Length>>| {
        let Centres { outer, inner } = setup.centres?;
        let doubt = if outer == inner { doubt } else { Toleranced::exact(Length::default()) - doubt };
        Some(Toleranced::exact(outer) + doubt + half?)
    };
    let inner =
        |half: Option<Toleranced<Length>>| Some(Toleranced::exact(setup.centres?.inner) + doubt - half?);
    let inset = || setup.wheel().inset_span();
    let backspacing = || match setup.wheel().backspacing() {
        Some(told) => Some(Toleranced::exact(told.length())),
        None => Some(inset()? + rim?),
    };
    match id {
        MoveId::Inset => inset(),
        MoveId::Backspacing => backspacing(),
        MoveId::RimOuterFace => outer(rim),
        MoveId::RimInnerFace => inner(rim),
        MoveId::TireOuterFace => outer(tire),
        MoveId::TireInnerFace => inner(tire),
        MoveId::SectionWidth => Some(tire? * 2.0),
        MoveId::SectionHeight => setup.tire().size().section_height().map(Toleranced::exact),
        MoveId::OverallDiameter => diameter(),
        MoveId::RideHeight => Some(diameter()? * 0.5),
        MoveId::RollingCircumference => setup.circumference(),
        MoveId::TrueSpeed => None,
    }
}

/// The moves of a change, before and after and in words; where the setups of the axles move alike, they stand once.
pub(super) fn print(f: &mut fmt::Formatter<'_>, moves: &Moves, units: UnitSystem) -> fmt::Result {
    let [front, rear] = [Position::Front, Position::Rear];
    let is_shared =
        |found: &Move| [front, rear].iter().all(|&place| moves.on(place).any(|other| found.moves_as(&other)));
    // The speeds stand under the axle that drives the speedometer.
    let alike = moves.iter().all(|found| found.id == MoveId::TrueSpeed || is_shared(&found));
    if moves.iter().next().is_some() {
        writeln!(f, "\nWhat moves, at nominal size; faces from the hub face, outboard positive")?;
    }
    let shared = moves.on(front).filter(|found| alike && is_shared(found));
    print_axle(f, "front and rear", shared, units)?;
    for place in [front, rear] {
        print_axle(f, place.name(), moves.on(place).filter(|found| !(alike && is_shared(found))), units)?;
    }
    Ok(())
}

fn print_axle(
    f: &mut fmt::Formatter<'_>,
    title: &str,
    moves: impl Iterator<Item = Move>,
    units: UnitSystem,
) -> fmt::Result {
    for (n, found) in moves.enumerate() {
        if n == 0 {
            writeln!(f, "{title:<22}{:>12}{:>12}", "before", "after")?;
        }
        for (line, &units) in units.each().iter().enumerate() {
            row(f, if line == 0 { found.words() } else { "" }, found.before(), found.after(), units)?;
            writeln!(f, "  {}", Words(&found, units))?;
        }
        let spans = [found.before_span(), found.after_span()];
        if found.id == MoveId::OverallDiameter && spans.iter().any(Option::is_some) {
            let [before, after] = spans.map(Option::unzip);
            for (name, before, after) in
                [("  as made, least", before.0, after.0), ("  as made, most", before.1, after.1)]
            {
                for (line, &units) in units.each().iter().enumerate() {
                    row(f, if line == 0 { name } else { "" }, before, after, units)?;
                    writeln!(f)?;
                }
            }
        }
    }
    Ok(())
}

fn row(
    f: &mut fmt::Formatter<'_>,
    name: &str,
    before: Option<Value>,
    after: Option<Value>,
    units: UnitSystem,
) -> fmt::Result {
    let [before, after] = [before, after].map(|value| Cell(Maybe(value.map(|value| In(value, units)))));
    write!(f, "  {name:<20}{before:>12}{after:>12}")
}

/// Tells how a move comes about: before the change, after it, and the change.
pub(super) fn tell(vehicle: &Vehicle, change: &Change, found: &Move, tell: &mut Teller<'_>) -> Option<()> {
    let limits = Limits::default();
    let axle = AxleFacts::in_any_use(found.place, vehicle, &limits);
    let [original, proposed] = change.on(found.place).map(|setup| SetupFacts::of(setup, &axle));
    let (before, after) = if found.id == MoveId::TrueSpeed {
        let name = format_args!("true speed before, as shown");
        let before = tell.given(name, found.before?.nominal(), "km/h", None);
        let share = tell_shown_share(original.as_ref()?, proposed.as_ref()?, tell)?;
        let form = ("{0} × {1}", &[before, share][..]);
        (
            Some(before),
            Some(tell.worked(format_args!("true speed after"), form, before * share, "km/h", None)),
        )
    } else {
        let mut of = |setup: &Option<SetupFacts<'_>>, whose| {
            tell_dimension(found.id, &axle, setup.as_ref()?, whose, tell)
        };
        (of(&original, told::ORIGINAL), of(&proposed, told::PROPOSED))
    };
    let (before, after) = before.zip(after)?;
    let unit = if found.id == MoveId::TrueSpeed { "km/h" } else { "mm" };
    tell.worked(format_args!("change"), ("{0} − {1}", &[after, before]), after - before, unit, None);
    Some(())
}

/// Tells how the nominal of [`shown_share`] comes about.
fn tell_shown_share(old: &SetupFacts<'_>, new: &SetupFacts<'_>, tell: &mut Teller<'_>) -> Option<f64> {
    if true_speed_share(old, new).is_ok() {
        return tell_true_speed_share(old, new, End::Nominal, tell);
    }
    let before = told::diameter(old, told::ORIGINAL, End::Nominal, false, tell)?;
    let after = told::diameter(new, told::PROPOSED, End::Nominal, false, tell)?;
    let name =
        format_args!("true speed behind an indication, of that before, as the diameters of like tires");
    Some(tell.worked(name, ("{0} / {1}", &[after, before]), after / before, "", None))
}

/// Tells how one nominal dimension of a setup comes about.
fn tell_dimension(
    id: MoveId,
    on: &AxleFacts<'_>,
    setup: &SetupFacts<'_>,
    whose: &str,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    dimension(id, setup)?;
    let nominal = End::Nominal;
    let face = |is_tire: bool, is_outer: bool, tell: &mut Teller<'_>| {
        let half = if is_tire {
            told::half_tire(setup, whose, nominal, tell)?
        } else {
            told::half_rim(setup, whose, nominal, tell)
        };
        let centre = told::centre(on, setup, whose, is_outer, tell)?;
        let (form, face) =
            if is_outer { ("{0} + {1}", centre + half) } else { ("{0} − {1}", centre - half) };
        let side = if is_outer { "outer" } else { "inner" };
        let what = if is_tire { "tire" } else { "rim" };
        let name = format_args!("{side} face of the {whose} {what}, outboard of the hub face");
        Some(tell.worked(name, (form, &[centre, half]), face, "mm", None))
    };
    match id {
        MoveId::Inset => told::inset(setup, whose, tell),
        MoveId::Backspacing => match setup.wheel().backspacing() {
            Some(backspacing) => Some(told::backspacing(backspacing, whose, tell)),
            None => {
                let half = told::half_rim(setup, whose, nominal, tell);
                let inset = told::inset(setup, whose, tell)?;
                let name = format_args!("backspacing of the {whose} wheel");
                Some(tell.worked(name, ("{0} + {1}", &[inset, half]), inset + half, "mm", None))
            }
        },
        MoveId::RimOuterFace => face(false, true, tell),
        MoveId::RimInnerFace => face(false, false, tell),
        MoveId::TireOuterFace => face(true, true, tell),
        MoveId::TireInnerFace => face(true, false, tell),
        MoveId::SectionWidth => {
            setup.tire().size().tell_section_width_on(setup.wheel().size().width(), nominal, tell)
        }
        MoveId::SectionHeight => setup.tire().size().tell_section_height(whose, tell),
        MoveId::OverallDiameter => told::diameter(setup, whose, nominal, false, tell),
        MoveId::RideHeight => told::radius(setup, whose, nominal, false, tell),
        MoveId::RollingCircumference => told::circumference(setup, whose, nominal, tell),
        MoveId::TrueSpeed => None,
    }
}
