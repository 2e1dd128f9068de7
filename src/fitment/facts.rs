//! Facts that checks hold against limits, each worked out once: of an axle and how its vehicle is used, and of a
//! setup on that axle. Those of the axle hold for any setup.

use core::ops::Deref;

use super::check::{Input, Missing, Position};
use super::finding::no_more;
use super::{Conditions, Limits, Setup};
use crate::tire::inflation::factors::{DUAL_SHARE, ELSEWHERE, TOWING_TOP_KMH};
use crate::tire::{
    Formation, LoadIndex, Tire,
    condition::VehicleSide,
    inflation::{Inflation, InflationError, camber_load_factor},
};
use crate::units::{self, Length, Mass, Pressure, Velocity, in_kmh, in_ratio};
use crate::vehicle::{Axle, EndGap, Kind, Vehicle};
use crate::wheel::{Inset, WheelSize};
use crate::{Citation, Count, Toleranced};

pub(super) const SIDES: [VehicleSide; 2] = [VehicleSide::Left, VehicleSide::Right];

/// The facts of an axle, whatever stands on it.
pub(super) struct AxleFacts<'a> {
    pub(super) place: Position,
    pub(super) axle: &'a Axle,
    pub(super) vehicle: &'a Vehicle,
    pub(super) conditions: &'a Conditions,
    pub(super) limits: &'a Limits,
    /// The speed that the vehicle can reach. A trailer is as fast as what tows it: the faster of its own speed and
    /// that of its use.
    pub(super) own_top_speed: Option<Velocity>,
    /// The fastest the vehicle will be driven.
    pub(super) speed_in_use: Option<Velocity>,
    /// The greatest load of the axle group: the permitted one, or the normal one where somebody loads it with more.
    /// No less than the normal load, where only that is known.
    pub(super) greatest_load: Result<(Mass, Missing), Missing>,
    /// Whether tires stand in pairs.
    pub(super) is_dual: bool,
    /// How many wheels carry the load of the axle group: one on each axle of a motorcycle.
    pub(super) wheels: f64,
}

/// The middles of the outermost and the innermost rim on one end of an axle, outboard of the hub face.
#[derive(Clone, Copy, PartialEq)]
pub(super) struct Centres {
    pub(super) outer: Length,
    pub(super) inner: Length,
}

impl Centres {
    /// The middle of what stands there.
    pub(super) fn middle(self) -> Length {
        (self.outer + self.inner) / 2.0
    }
}

impl<'a> AxleFacts<'a> {
    /// Of the front axle of a vehicle, or the rear one; one that is not described has nothing.
    pub(super) fn new(
        place: Position,
        vehicle: &'a Vehicle,
        conditions: &'a Conditions,
        limits: &'a Limits,
    ) -> Self {
        static NO_AXLE: Axle = Axle::new();
        let axle = if place == Position::Front { vehicle.front() } else { vehicle.rear() };
        let axle = axle.unwrap_or(&NO_AXLE);
        let of_use = conditions.top_speed();
        let of_trailer = of_use.filter(|_| vehicle.kind() == Some(Kind::Trailer));
        let own_top_speed = vehicle.top_speed().into_iter().chain(of_trailer).reduce(Velocity::max);
        let is_motorcycle = vehicle.kind() == Some(Kind::Motorcycle);
        Self {
            place,
            axle,
            vehicle,
            conditions,
            limits,
            own_top_speed,
            speed_in_use: own_top_speed.map(|top| of_use.filter(|&speed| speed < top).unwrap_or(top)),
            greatest_load: greatest_load(axle),
            is_dual: axle.wheels_per_side().map_or(1, Count::get) > 1,
            wheels: if is_motorcycle { 1.0 } else { f64::from(axle.tires()) },
        }
    }

    /// The same where nothing depends on how the vehicle is used.
    pub(super) fn in_any_use(place: Position, vehicle: &'a Vehicle, limits: &'a Limits) -> Self {
        const ANY_USE: &Conditions = &Conditions::new();
        Self::new(place, vehicle, ANY_USE, limits)
    }

    pub(super) fn is_trailer(&self) -> bool {
        self.vehicle.kind() == Some(Kind::Trailer)
    }

    /// Whether an axle of this kind of vehicle steers unless it is said otherwise: the front one, but not the only
    /// axle of a trailer.
    pub(super) fn is_steered(&self) -> bool {
        self.place == Position::Front && !(self.is_trailer() && self.vehicle.rear().is_none())
    }

    pub(super) fn is_motorcycle(&self) -> bool {
        self.vehicle.kind() == Some(Kind::Motorcycle)
    }

    /// Whether a trailer is towed: the use says so, or where it is silent, the vehicle.
    pub(super) fn is_towing(&self) -> bool {
        self.conditions.towing().or(self.vehicle.towing()) == Some(true)
    }

    /// Where rims of an inset stand, that far off the hub. A single rim is the outermost and the innermost.
    /// Of a pair the outer wheel is turned round, so that its inset is outboard; a spacer stands between the
    /// two.
    pub(super) fn centres(&self, inset: Inset, hub_spacing: Length) -> Centres {
        let inset = inset.length();
        let inner = if self.is_dual { -inset } else { hub_spacing - inset };
        Centres { outer: if self.is_dual { hub_spacing + inset } else { inner }, inner }
    }

    /// Which load index of a tire holds here: passenger tires in pairs have none of their own.
    pub(super) fn formation(&self, is_passenger: bool) -> Formation {
        if self.is_dual && !is_passenger { Formation::Dual } else { Formation::Single }
    }

    /// Whether the rules and dimensions of car and truck tires hold here: motorcycles have others, and of a
    /// vehicle whose kind is not known nobody can say.
    pub(super) fn car_rules(&self) -> Result<(), Missing> {
        match self.vehicle.kind() {
            Some(Kind::Motorcycle) => Err(Input::MotorcycleRules.into()),
            None => Err(Input::Kind.into()),
            Some(_) => Ok(()),
        }
    }

    /// By how much a measured gap may be off; nothing where that was not said.
    pub(super) fn gap_uncertainty(&self) -> Length {
        self.axle.space().and_then(|space| space.uncertainty()).unwrap_or_default()
    }

    /// The end of the axle that has less of a gap; the axle where both have as much, and of a motorcycle.
    pub(super) fn narrower_end(&self, gap: EndGap) -> Position {
        let end = self.axle.space().and_then(|space| space.narrower(gap)?.end);
        end.filter(|_| !self.is_motorcycle()).map_or(self.place, |end| self.place.end(end))
    }

    /// The ends of the axle, the left one first; a motorcycle's has none.
    pub(super) fn ends(&self) -> impl Iterator<Item = (Position, VehicleSide)> {
        let ends = SIDES.map(|side| (self.place.end(side), side));
        let middle = self.is_motorcycle().then_some((self.place, VehicleSide::Left));
        middle.into_iter().chain(ends.into_iter().filter(move |_| middle.is_none()))
    }
}

fn greatest_load(axle: &Axle) -> Result<(Mass, Missing), Missing> {
    let (permitted, normal) = (axle.max_load(), axle.normal_load());
    let greatest = permitted.into_iter().chain(normal).reduce(Mass::max).ok_or(Input::MaxLoad)?;
    let missing = if permitted.is_none() { Input::MaxLoad.into() } else { Missing::default() };
    Ok((greatest, missing))
}

/// A setup, and what follows from it on an axle.
pub(super) struct SetupFacts<'a> {
    setup: &'a Setup,
    pub(super) is_passenger: bool,
    /// Whether the dimensions rest on a table that is remembered, not read.
    pub(super) is_remembered: bool,
    pub(super) nominal_diameter: Option<Length>,
    /// Overall diameter of a new tire.
    pub(super) diameter: Option<Toleranced<Length>>,
    /// The same, a snow tire's at its largest.
    pub(super) largest_diameter: Option<Toleranced<Length>>,
    /// Half the width of the tire on its rim.
    pub(super) half_tire: Option<Toleranced<Length>>,
    /// Half the width of the rim over its flanges.
    pub(super) half_rim: Toleranced<Length>,
    /// Where the rims stand.
    pub(super) centres: Option<Centres>,
    /// Whether that follows from a backspacing, with the width of a flange that is assumed.
    pub(super) is_inset_assumed: bool,
    /// The load index that applies. Passenger tires have none for pairs: a larger share of the load stands for it
    /// ([`SetupFacts::share`]).
    pub(super) index: Option<LoadIndex>,
    /// The law of load and pressure, or the input that would settle why there is none for a proposed tire.
    pub(super) law: Result<Law, Input>,
    /// What divides the capacity because of the vehicle the tire is on: 1.10, or 1.
    pub(super) elsewhere: Option<f64>,
    /// The share of an axle group's load that one tire carries.
    share: f64,
    pub(super) factors: Factors,
    pub(super) at_speed: AtSpeed,
    /// EU 458/2011: rear passenger tires of cars and light goods vehicles, towing, never above 100 km/h.
    pub(super) allows_towing_allowance: bool,
}

impl Deref for SetupFacts<'_> {
    type Target = Setup;

    fn deref(&self) -> &Setup {
        self.setup
    }
}

impl<'a> SetupFacts<'a> {
    /// Of a setup that may not be known; written where they stay, as they are large.
    #[inline(never)]
    pub(super) fn of(setup: Option<&'a Setup>, on: &AxleFacts<'_>) -> Option<Self> {
        Some(Self::new(setup?, on))
    }

    #[inline]
    pub(super) fn new(setup: &'a Setup, on: &AxleFacts<'_>) -> Self {
        let (tire, rim) = (setup.tire(), setup.wheel().size());
        let size = tire.size();
        let is_passenger = is_passenger(&tire);
        let diameter = size.overall_diameter();
        let formation = on.formation(is_passenger);
        let law = tire.inflation(formation, setup.reference_pressure());
        let elsewhere = factor_elsewhere(is_passenger, on.vehicle.kind());
        Self {
            setup,
            is_passenger,
            is_remembered: size.rests_on_remembered_row(),
            nominal_diameter: size.overall_diameter_nominal(),
            diameter,
            largest_diameter: if setup.is_snow() { size.overall_diameter_snow() } else { diameter },
            half_tire: half_tire(setup),
            half_rim: half_rim(&rim),
            centres: setup.wheel().inset_or_assumed().map(|inset| on.centres(inset, setup.hub_spacing())),
            is_inset_assumed: setup.wheel().backspacing().is_some(),
            index: tire.service().and_then(|service| service.index(formation)),
            law: law.map(|law| Law::new(law, elsewhere, on.axle.placard())).map_err(missing_for_law),
            elsewhere,
            // Of passenger tires in pairs 0.27 of each axle rather than a quarter.
            share: if on.is_dual && is_passenger { 4.0 * DUAL_SHARE } else { 1.0 },
            factors: factors(on, is_passenger, elsewhere),
            at_speed: at_speed(load_speed(on, setup), &tire),
            allows_towing_allowance: is_passenger && allows_towing_allowance(on),
        }
    }

    /// Rolling circumference of a new tire.
    pub(super) fn circumference(&self) -> Option<Toleranced<Length>> {
        Some(crate::tire::rolling::Rolling::of(&self.tire().size(), self.diameter?).circumference())
    }

    /// How far outboard of its assumed place the middle of a single rim may stand.
    pub(super) fn doubt_of_place(&self) -> Toleranced<Length> {
        let span = self.wheel().inset_span().filter(|_| self.is_inset_assumed);
        span.map_or(Toleranced::exact(Length::default()), |span| Toleranced::exact(span.nominal()) - span)
    }

    /// What one tire carries of an axle group's load.
    pub(super) fn share(&self, on: &AxleFacts<'_>, load: Mass) -> Mass {
        load / on.wheels * self.share
    }
}

/// A law of load and pressure, with what it says of a tire on its vehicle.
#[derive(Clone, Copy)]
pub(super) struct Law {
    law: Inflation,
    elsewhere: Option<f64>,
    placard: Option<Pressure>,
    /// What the tire carries at the pressure of the placard, and what keeps it from being known.
    pub(super) at_placard: Option<(Mass, Missing)>,
}

impl Deref for Law {
    type Target = Inflation;

    fn deref(&self) -> &Inflation {
        &self.law
    }
}

impl Law {
    fn new(law: Inflation, elsewhere: Option<f64>, placard: Option<Pressure>) -> Self {
        let mut result = Self { law, elsewhere, placard, at_placard: None };
        result.at_placard = placard.map(|placard| result.capacity(placard));
        result
    }

    /// The law by the lower pressure of a load range letter, where it leaves two.
    pub(super) fn lower(&self) -> Option<Self> {
        Some(Self::new(self.law.lower()?, self.elsewhere, self.placard))
    }

    /// The most that the tire carries at a pressure on this vehicle, and what keeps it from being known.
    pub(super) fn capacity(&self, pressure: Pressure) -> (Mass, Missing) {
        let mut missing = Missing::default();
        let factor = missing.or(self.elsewhere, Input::Kind, 1.0);
        // Below the least pressure of the law a tire carries less than there.
        let load = self.law.load_at(pressure).unwrap_or_else(|_| {
            missing.add(Input::LoadAtPressure);
            self.law.load_at(self.law.min_pressure()).unwrap_or(self.law.reference_load())
        });
        (load / factor, missing)
    }
}

/// Whether a tire is a passenger car tire.
pub(super) fn is_passenger(tire: &Tire) -> bool {
    tire.size().class().is_passenger()
}

/// Half the width of a setup's tire on its rim.
pub(super) fn half_tire(setup: &Setup) -> Option<Toleranced<Length>> {
    Some(setup.tire().size().section_width_on(setup.wheel().size().width())? * 0.5)
}

/// Half the width of a rim over its flanges; a contour that is not known is taken as J.
pub(super) fn half_rim(size: &WheelSize) -> Toleranced<Length> {
    Toleranced::exact(size.width().length() / 2.0) + size.flange_width()
}

/// The input that would settle why there is no law for the proposed tire.
fn missing_for_law(error: InflationError) -> Input {
    match error {
        InflationError::NoLoadIndex => Input::LoadIndex,
        InflationError::NoDualLoadIndex => Input::DualLoadIndex,
        InflationError::NoLaw | InflationError::OtherFamily => Input::LoadAtPressure,
        InflationError::NoReferencePressure | InflationError::OutOfRange(_) => Input::ReferencePressure,
    }
}

/// The rule for passenger tires on other vehicles; none if it is not known whether it applies.
fn factor_elsewhere(is_passenger: bool, kind: Option<Kind>) -> Option<f64> {
    if !is_passenger {
        return Some(1.0);
    }
    Some(match kind? {
        Kind::Multipurpose | Kind::Truck | Kind::Bus | Kind::Trailer => ELSEWHERE,
        _ => 1.0,
    })
}

/// The factors on the load index that do not depend on speed: camber, and whether the tire is out of its
/// class. One that is not known counts at its best, and its input is missing.
#[derive(Clone, Copy)]
pub(super) struct Factors {
    /// On the load that counts against the tire's capacity.
    pub(super) capacity: f64,
    /// The most particular rule that was applied.
    pub(super) citation: Citation,
    pub(super) missing: Missing,
}

fn factors(on: &AxleFacts<'_>, is_passenger: bool, elsewhere: Option<f64>) -> Factors {
    let mut result = Factors { capacity: 1.0, citation: Citation::AXLE_SHARE, missing: Missing::default() };
    if on.is_dual && is_passenger {
        result.citation = Citation::DUAL_PASSENGER;
    }
    // The rule beyond 2° is for passenger tires, and ends at 4°.
    let greatest = units::deg(4.0);
    let camber = on.axle.camber().unwrap_or_default().abs();
    let share = camber_load_factor(camber.min(greatest)).map_or(1.0, in_ratio);
    if share < 1.0 && (!is_passenger || camber > greatest) {
        result.missing.add(Input::LoadAtCamber);
    }
    if share < 1.0 && is_passenger {
        result.capacity *= share;
        result.citation = Citation::CAMBER;
    }
    let elsewhere = result.missing.or(elsewhere, Input::Kind, 1.0);
    if elsewhere > 1.0 {
        result.capacity /= elsewhere;
        result.citation = Citation::PASSENGER_TIRE_ON_TRUCK;
    }
    result
}

fn allows_towing_allowance(on: &AxleFacts<'_>) -> bool {
    on.place == Position::Rear
        && on.is_towing()
        && on.limits.allows_towing_allowance()
        && matches!(on.vehicle.kind(), Some(Kind::Passenger | Kind::Multipurpose | Kind::Truck))
        && on.speed_in_use.is_some_and(|v| no_more(in_kmh(v), TOWING_TOP_KMH))
}

/// The speed at which the load is asked of the tire: the top speed in use, or that of a snow tire which
/// the caller's jurisdiction lets be slower.
#[inline(always)]
pub(super) fn load_speed(on: &AxleFacts<'_>, setup: &Setup) -> Option<Velocity> {
    let speed = on.speed_in_use?;
    let floor = on.limits.snow_speed_floor().filter(|_| setup.is_snow());
    Some(match (floor, setup.tire().service().map(|s| s.speed().speed())) {
        (Some(floor), Some(symbol)) if floor.value() <= symbol && symbol < speed => symbol,
        _ => speed,
    })
}

/// What the top speed asks of a tire. What is not known of it counts at its best, and is missing.
#[derive(Clone, Copy)]
pub(super) struct AtSpeed {
    pub(super) load_share: f64,
    pub(super) load_citation: Citation,
    pub(super) extra: Pressure,
    pub(super) pressure_citation: Citation,
    /// Of the share of load.
    pub(super) load_missing: Missing,
    /// Of the pressure.
    pub(super) pressure_missing: Missing,
}

fn at_speed(speed: Option<Velocity>, tire: &Tire) -> AtSpeed {
    let rule = speed.map(|speed| tire.at_speed(speed));
    let (of_load, of_pressure) = match rule {
        None => (Input::TopSpeed, Input::TopSpeed),
        Some(None) => (Input::LoadIndex, Input::LoadIndex),
        Some(Some(_)) => (Input::LoadAtSpeed, Input::PressureAtSpeed),
    };
    let rule = rule.flatten();
    let (mut load_missing, mut pressure_missing) = (Missing::default(), Missing::default());
    let share = load_missing.or(rule.and_then(|r| r.load_share()), of_load, units::percent(100.0));
    let extra =
        pressure_missing.or(rule.and_then(|r| r.pressure_increase()), of_pressure, Pressure::default());
    AtSpeed {
        load_share: in_ratio(share),
        load_citation: rule.map_or(Citation::SPEED_LOAD, |rule| rule.load_citation()),
        extra,
        pressure_citation: rule.map_or(Citation::SPEED_PRESSURE, |rule| rule.pressure_citation()),
        load_missing,
        pressure_missing,
    }
}
