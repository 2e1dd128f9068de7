//! One axle with all that its checks may look at.

use super::check::{Check, CheckId, Input, Missing, Position, Reason, Verdict};
use super::checks::{Definition, Rules};
use super::finding::{self, Finding, Found, no_more};
use super::value::Value;
use super::{Conditions, Limits, Setup};
use crate::Count;
use crate::tire::inflation::factors::DUAL_SHARE;
use crate::tire::{Formation, Tire, condition::VehicleSide};
use crate::units::{Length, Mass, Velocity, in_mm, mm};
use crate::vehicle::{Axle, Kind, Vehicle};
use crate::wheel::Inset;

/// By how much a remembered row may be off: the old 60 and 70 series differ from the formula by up to 8 mm.
const ROW_DOUBT: Length = mm(8.0);

/// What an axle's checks see.
pub(super) struct Case<'a> {
    pub(super) place: Position,
    pub(super) axle: &'a Axle,
    pub(super) original: Option<&'a Setup>,
    pub(super) proposed: Option<&'a Setup>,
    pub(super) vehicle: &'a Vehicle,
    pub(super) conditions: &'a Conditions,
    pub(super) limits: &'a Limits,
}

/// Binds inputs that must all be there, or returns all that are not.
macro_rules! need {
    ($($name:ident = $value:expr => $input:ident),+ $(,)?) => {
        $(let $name = $value;)+
        let mut missing = crate::fitment::check::Missing::default();
        $(if $name.is_none() {
            missing.add(crate::fitment::Input::$input);
        })+
        let ($(Some($name),)+) = ($($name,)+) else { return Err(missing) };
    };
}
pub(super) use need;

/// Both of two results, or all that either lacks.
pub(super) fn both_of<A, B>(a: Result<A, Missing>, b: Result<B, Missing>) -> Result<(A, B), Missing> {
    match (a, b) {
        (Ok(a), Ok(b)) => Ok((a, b)),
        (Err(a), Err(b)) => Err(a.and(b)),
        (Err(missing), _) | (_, Err(missing)) => Err(missing),
    }
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

impl<'a> Case<'a> {
    /// The front axle of a vehicle, or the rear one; one that is not described has nothing.
    pub(super) fn new(
        place: Position,
        vehicle: &'a Vehicle,
        [original, proposed]: [Option<&'a Setup>; 2],
        conditions: &'a Conditions,
        limits: &'a Limits,
    ) -> Self {
        static NO_AXLE: Axle = Axle::new();
        let axle = if place == Position::Front { vehicle.front_axle() } else { vehicle.rear_axle() };
        Self { place, axle: axle.unwrap_or(&NO_AXLE), original, proposed, vehicle, conditions, limits }
    }

    /// The same where nothing depends on how the vehicle is used.
    pub(super) fn in_any_use(
        place: Position,
        vehicle: &'a Vehicle,
        setups: [Option<&'a Setup>; 2],
        limits: &'a Limits,
    ) -> Self {
        const ANY_USE: &Conditions = &Conditions::new();
        Self::new(place, vehicle, setups, ANY_USE, limits)
    }

    pub(super) fn proposed(&self) -> Result<&'a Setup, Missing> {
        self.proposed.ok_or(Input::ProposedSetup.into())
    }

    /// Original and proposed.
    pub(super) fn both(&self) -> Result<(&'a Setup, &'a Setup), Missing> {
        need!(original = self.original => OriginalSetup, proposed = self.proposed => ProposedSetup);
        Ok((original, proposed))
    }

    /// Whether the dimensions of either tire rest on a table that is remembered, not read: it makes no change
    /// beyond.
    pub(super) fn dimensions_are_remembered(&self) -> bool {
        let by_row = |setup: &Setup| setup.tire().size().rests_on_remembered_row();
        [self.original, self.proposed].into_iter().flatten().any(by_row)
    }

    /// Nominal overall diameters of the original tire and of the proposed one.
    pub(super) fn diameters(&self) -> Result<(Length, Length), Missing> {
        let (original, proposed) = self.both()?;
        need!(
            original = original.tire().size().overall_diameter_nominal() => OriginalDimensions,
            proposed = proposed.tire().size().overall_diameter_nominal() => TireDimensions,
        );
        Ok((original, proposed))
    }

    /// Whether tires stand in pairs.
    pub(super) fn is_dual(&self) -> bool {
        self.axle.wheels_per_side().map_or(1, Count::get) > 1
    }

    pub(super) fn is_trailer(&self) -> bool {
        self.vehicle.kind() == Some(Kind::Trailer)
    }

    /// Whether an axle of this kind of vehicle steers unless it is said otherwise: the front one, but not the only
    /// axle of a trailer.
    pub(super) fn is_steered(&self) -> bool {
        self.place == Position::Front && !(self.is_trailer() && self.vehicle.rear_axle().is_none())
    }

    pub(super) fn is_motorcycle(&self) -> bool {
        self.vehicle.kind() == Some(Kind::Motorcycle)
    }

    /// Whether the wheel turns on a spindle without a bolted hub: a motorcycle's, unless a bolt circle is stated of the
    /// hub or of a wheel.
    pub(super) fn has_spindle_hub(&self) -> bool {
        let drilled = |setup: &Setup| setup.wheel().bolt_circle().is_some();
        self.is_motorcycle()
            && self.axle.hub().and_then(|hub| hub.bolt_circle()).is_none()
            && ![self.original, self.proposed].into_iter().flatten().any(drilled)
    }

    /// How many wheels carry the load of the axle group: one on each axle of a motorcycle.
    pub(super) fn wheels(&self) -> f64 {
        if self.is_motorcycle() { 1.0 } else { f64::from(self.axle.tires()) }
    }

    /// Which load index applies. Passenger tires have none for pairs: a larger share of the load stands
    /// for it ([`Case::share`]).
    pub(super) fn formation(&self, tire: &Tire) -> Formation {
        if self.is_dual() && !is_passenger(tire) { Formation::Dual } else { Formation::Single }
    }

    /// What one tire carries of an axle group's load: an equal share, and of passenger tires in pairs
    /// 0.27 of each axle rather than a quarter.
    pub(super) fn share(&self, load: Mass, tire: &Tire) -> Mass {
        let equal = load / self.wheels();
        if self.is_dual() && is_passenger(tire) { equal * (4.0 * DUAL_SHARE) } else { equal }
    }

    /// The greatest load of the axle group: the permitted one, or the normal one where somebody loads it with more.
    /// No less than the normal load, where only that is known.
    pub(super) fn greatest_load(&self) -> Result<(Mass, Missing), Missing> {
        let (permitted, normal) = (self.axle.max_load(), self.axle.normal_load());
        let greatest = permitted.into_iter().chain(normal).reduce(Mass::max).ok_or(Input::MaxLoad)?;
        let missing = if permitted.is_none() { Input::MaxLoad.into() } else { Missing::default() };
        Ok((greatest, missing))
    }

    /// Whether a trailer is towed: the use says so, or where it is silent, the vehicle.
    pub(super) fn is_towing(&self) -> bool {
        self.conditions.towing().or(self.vehicle.towing()) == Some(true)
    }

    /// Where the rims of a setup stand ([`Case::centres`]).
    pub(super) fn rim_centres(&self, setup: &Setup) -> Option<Centres> {
        Some(self.centres(setup.wheel().inset()?, setup.hub_spacing()))
    }

    /// Where rims of an inset stand, that far off the hub. A single rim is the outermost and the innermost.
    /// Of a pair the outer wheel is turned round, so that its inset is outboard; a spacer stands between the
    /// two.
    pub(super) fn centres(&self, inset: Inset, hub_spacing: Length) -> Centres {
        let inset = inset.length();
        let inner = if self.is_dual() { -inset } else { hub_spacing - inset };
        Centres { outer: if self.is_dual() { hub_spacing + inset } else { inner }, inner }
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

    /// The finding of a check, if its rules hold for the kind of vehicle.
    pub(super) fn by_rules(&self, definition: &Definition, check: impl FnOnce() -> Found) -> Found {
        match definition.rules {
            Rules::Any => {}
            Rules::Kind => {
                need!(_kind = self.vehicle.kind() => Kind);
            }
            Rules::BoltedHub => {
                self.proposed()?;
                if self.has_spindle_hub() {
                    return Ok(Finding::not_applicable(Reason::NoSpindleHub));
                }
            }
            Rules::Cars => self.car_rules()?,
        }
        check()
    }

    /// The ends of the axle, the left one first; a motorcycle's has none.
    pub(super) fn ends(&self) -> impl Iterator<Item = Position> {
        let ends = [VehicleSide::Left, VehicleSide::Right].map(|side| self.place.end(side));
        let middle = self.is_motorcycle().then_some(self.place);
        middle.into_iter().chain(ends.into_iter().filter(move |_| middle.is_none()))
    }

    /// Whether a finding would be inside if the row of a table were off by as much as rows are. One size on both
    /// setups cancels out, and its row decides nothing.
    fn is_in_doubt_of_a_row(&self, finding: &Finding) -> bool {
        let sizes = [self.original, self.proposed].map(|setup| setup.map(|setup| setup.tire().size()));
        if sizes[0] == sizes[1] {
            return false;
        }
        let smallest = sizes.into_iter().flatten().filter_map(|size| size.overall_diameter_nominal());
        let share = smallest.reduce(Length::min).map_or(0.0, |diameter| in_mm(ROW_DOUBT) / in_mm(diameter));
        let (Some(limit), Some(value)) = (finding.limit, finding.nominal.or(finding.measured)) else {
            return false;
        };
        let doubt = if matches!(value, Value::Ratio(_)) { 100.0 * share } else { in_mm(ROW_DOUBT) };
        limit.margin(value).is_some_and(|margin| no_more(0.0, margin + doubt))
    }

    /// The finding of a check by name and place. What rests on dimensions known from a remembered table alone makes
    /// no change beyond.
    pub(super) fn finish(&self, id: CheckId, place: Position, found: Found) -> Check {
        let of_memory = id.definition().is_by_dimensions && self.dimensions_are_remembered();
        let in_doubt = |finding: &Finding| of_memory && self.is_in_doubt_of_a_row(finding);
        let found = found.map(|finding| {
            if in_doubt(&finding) {
                finding.marginal_if(Verdict::Beyond, Reason::FromMemoryOnly)
            } else {
                finding
            }
        });
        finding::finish(id, place, found)
    }

    /// The speed that the vehicle can reach. A trailer is as fast as what tows it: the faster of its
    /// own speed and that of its use.
    pub(super) fn own_top_speed(&self) -> Option<Velocity> {
        let of_use = self.conditions.top_speed().filter(|_| self.is_trailer());
        self.vehicle.top_speed().into_iter().chain(of_use).reduce(Velocity::max)
    }

    /// The fastest the vehicle will be driven.
    pub(super) fn speed_in_use(&self) -> Option<Velocity> {
        let top = self.own_top_speed()?;
        Some(match self.conditions.top_speed() {
            Some(speed) if speed < top => speed,
            _ => top,
        })
    }

    /// Whether the rule for passenger tires on other vehicles applies; `None` if that is not known.
    pub(super) fn is_passenger_tire_elsewhere(&self, tire: &Tire) -> Option<bool> {
        if !is_passenger(tire) {
            return Some(false);
        }
        let kind = self.vehicle.kind()?;
        Some(matches!(kind, Kind::Multipurpose | Kind::Truck | Kind::Bus | Kind::Trailer))
    }
}

/// Whether a tire is a passenger car tire.
pub(super) fn is_passenger(tire: &Tire) -> bool {
    tire.size().class().is_passenger()
}

/// Whether two tires carry the same at the same pressure: size, service description, version and range are equal,
/// and the reference pressures, where both are stated.
pub(super) fn same_tire(a: &Setup, b: &Setup) -> bool {
    let same = |(a, b)| a == b;
    a.tire() == b.tire() && a.reference_pressure().zip(b.reference_pressure()).is_none_or(same)
}
