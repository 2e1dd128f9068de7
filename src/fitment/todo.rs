//! What to do about a finding, in one line.

use core::fmt;

use super::Setup;
use super::check::{Check, CheckId, Position, Reason, Verdict};
use super::measure::Keys;
use super::pressures::Pressures;
use super::space::{Approach, part_name};
use super::value::{Bound, In, Rounded, Value};
use crate::text::Name;
use crate::tire::{Formation, LoadIndex};
use crate::unit_system::UnitSystem;
use crate::units::{Pressure, in_mm};
use crate::vehicle::{BodyKind, Vehicle};
use crate::wheel::{Bore, Spigot};

/// What to do about a finding: one line, with the figures of what is asked for.
///
/// A finding that is inside its limit mostly asks for nothing. Everything else says what would put it right, or who can
/// settle it. The makers of vehicle, wheel and tire know better than any of these lines.
///
/// ```
/// use beadseat::fitment::{Change, CheckId, Document, Position, Setup};
/// use beadseat::vehicle::{Axle, Hub, Kind, Vehicle};
/// let hub = Hub::new().with_bolt_circle("5x112".parse()?);
/// let car = Vehicle::new(Kind::Passenger).with_front(Axle::new().with_hub(hub));
/// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16 5x112")?, Setup::parse("225/45R17", "7.5Jx17 5x114.3")?];
/// let change = Change::front(old, new);
/// let report = change.assess(&car);
/// let holes = report.get(CheckId::BoltCircle, Position::Front).ok_or("no such check")?;
/// let todo = Document::new(&report, &car, &change).todo(&holes);
/// assert_eq!(todo.to_string(), "take a wheel drilled 5x112, as the hub is");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Todo {
    check: Check,
    fit: Option<(Bore, Spigot)>,
    /// The least pressure that everything asked for is carried at.
    needed: Option<Pressure>,
    /// No pressure that is permitted will do.
    is_out_of_reach: bool,
    index: Option<LoadIndex>,
    nearest: Option<(BodyKind, &'static str)>,
    units: UnitSystem,
    keys: Keys,
}

impl Todo {
    pub(super) fn new(
        check: &Check,
        vehicle: &Vehicle,
        proposed: Option<&Setup>,
        pressures: Option<&Pressures>,
        nearest: Option<&Approach>,
    ) -> Self {
        let axle = match check.position() {
            Position::Rear | Position::RearLeft | Position::RearRight | Position::SpareAtRear => {
                vehicle.rear()
            }
            _ => vehicle.front(),
        };
        let spigot = axle.and_then(|axle| axle.hub()).and_then(|hub| hub.spigot());
        let of_adaptor =
            proposed.and_then(|setup| setup.adaptor()).and_then(|adaptor| adaptor.wheel_spigot());
        // What does not bear on the line is left out, so that findings with the same line are the same.
        let id = check.id();
        let by_pressure = matches!(id, CheckId::Inflation | CheckId::TireLoadVsOriginal);
        let by_load = matches!(id, CheckId::TireLoad | CheckId::Inflation | CheckId::LoadReserve);
        let (pressures, service) =
            (pressures.filter(|_| by_pressure), proposed.and_then(|setup| setup.tire().service()));
        let pairs = axle.and_then(|axle| axle.wheels_per_side()).is_some_and(|count| count.get() > 1);
        let index = service.and_then(|service| {
            service.index(Formation::Dual).filter(|_| pairs).or(service.index(Formation::Single))
        });
        let bore = proposed.and_then(|setup| setup.wheel().bore());
        Self {
            check: *check,
            fit: bore.zip(of_adaptor.or(spigot)).filter(|_| id == CheckId::CentreBore),
            needed: pressures.and_then(Pressures::least),
            is_out_of_reach: pressures.is_some_and(Pressures::is_out_of_reach),
            index: index.filter(|_| by_load),
            nearest: nearest.map(|nearest| (nearest.body(), part_name(nearest.part()))),
            units: UnitSystem::Metric,
            keys: Keys::OF_TWO_AXLES,
        }
    }

    /// Told in other units; pressures are told in both, whatever they are.
    pub const fn in_units(self, units: UnitSystem) -> Self {
        Self { units, ..self }
    }

    /// With what is missing named by the keys of its report.
    pub(super) const fn by_keys(self, keys: Keys) -> Self {
        Self { keys, ..self }
    }

    /// Whether there is nothing to do.
    pub fn is_nothing(&self) -> bool {
        let is_inside = matches!(self.check.verdict(), Verdict::Within | Verdict::NotApplicable);
        is_inside && !matches!(self.check.reason(), Reason::RingCentres | Reason::SnowFloor)
    }

    /// The same about a finding at another place.
    pub(super) fn is_that_of(&self, other: &Self) -> bool {
        *self == Self { check: Check { place: self.check.place, ..other.check }, ..*other }
    }

    /// By how much the worst case is outside, in the unit of what was measured.
    fn short_by(&self) -> Option<Value> {
        let margin = self.check.margin_number().filter(|&margin| Rounded(-margin).is_positive())?;
        Some(self.check.measured()?.of_same_kind(-margin))
    }

    /// The bound it is held to: of two the nearer one.
    fn bound(&self) -> Option<Value> {
        match self.check.limit()? {
            Bound::AtMost(bound) | Bound::AtLeast(bound) | Bound::Equals(bound) => Some(bound),
            Bound::Between(..) => None,
        }
    }
}

/// A pressure as gauges show it, in either unit.
struct Gauge(Pressure);

impl fmt::Display for Gauge {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        In(Value::Pressure(self.0), UnitSystem::Both).fmt(f)
    }
}

/// A value; a pressure in both units.
struct Told(Value, UnitSystem);

impl fmt::Display for Told {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Value::Pressure(pressure) => Gauge(pressure).fmt(f),
            other => In(other, self.1).fmt(f),
        }
    }
}

/// A value between words, or `enough` where there is none.
struct With<'a>(&'a str, Option<Told>, &'a str);

impl fmt::Display for With<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.1 {
            Some(value) => write!(f, "{}{value}{}", self.0, self.2),
            None => write!(f, "{}enough{}", self.0, self.2),
        }
    }
}

impl fmt::Display for Todo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.is_nothing() {
            return f.write_str("nothing to do");
        }
        let told = |value: Option<Value>| value.map(|value| Told(value, self.units));
        let (short, bound) = (told(self.short_by()), self.bound());
        match self.check.reason() {
            Reason::InputMissing => self.find_out(f),
            Reason::Inside | Reason::Outside | Reason::InsideAtNominalOnly | Reason::Unchanged => {
                self.by_limit(f)
            }
            Reason::FromMemoryOnly => {
                f.write_str("ask the tire's maker for the figure that a table only remembers")
            }
            Reason::Assumed => f.write_str("confirm what is assumed"),
            Reason::FlangeAssumed => f.write_str("measure the wheel over the edges of its rim"),
            Reason::InsetAssumed => {
                f.write_str("read the inset behind the spokes, or measure the rim over its edges")
            }
            Reason::MeasuredSoft => f.write_str("inflate to the placard pressure and measure the gap again"),
            Reason::LargerOfSameSize => f.write_str("measure the gap again beside the new tire"),

            Reason::DiametersDiffer => {
                write!(f, "{}", With("take a wheel of ", told(bound), ", or a tire of the wheel's diameter"))
            }
            Reason::SeatsDiffer => {
                f.write_str("take a tire and a wheel that are made for the same bead seat")
            }

            Reason::RimOutsideMakersRange
            | Reason::RimOutsideStandardsRange
            | Reason::RimImpossible
            | Reason::RimOutsideEstimate => match self.check.limit() {
                Some(range @ Bound::Between(..)) => {
                    let range = In(range, self.units);
                    write!(f, "take a rim of {range}, or ask the tire's maker for its rim range")
                }
                _ => f.write_str("ask the tire's maker for its rim range"),
            },
            Reason::RimNearEndOfEstimate => f.write_str("ask the tire's maker for its rim range"),

            Reason::LoadNotCarried | Reason::LoadAboveIndex => self.index_for(f),
            Reason::LoadIndexLower => write!(f, "{}", With("take a tire of ", told(bound), " or more")),
            Reason::CapacityLost | Reason::UnchangedBelowPlacard => match (bound, self.needed) {
                (Some(Value::Pressure(placard)), _) => {
                    write!(f, "inflate to {}, as the placard says", Gauge(placard))
                }
                (_, Some(needed)) if !self.is_out_of_reach => {
                    write!(f, "inflate to at least {}, or take a higher load index", Gauge(needed))
                }
                (..) => f.write_str("take a tire of a higher load index"),
            },
            Reason::CapacityKeptLowerIndex => f.write_str("see that local law allows the lower load index"),

            Reason::PressureTooLowNormal | Reason::PressureTooLowFull | Reason::PressureBelowFloor => {
                self.inflate(f)
            }
            Reason::PressureTooHigh => write!(f, "{}", With("inflate to no more than ", told(bound), "")),
            Reason::PressureAboveReference | Reason::PressureAbovePlacard => {
                write!(
                    f,
                    "{}",
                    With("read the greatest pressure on the tire; until then no more than ", told(bound), "")
                )
            }
            Reason::PressureOfTwo | Reason::PressureWrongByBoth | Reason::PressureByLetter => {
                f.write_str("read on the tire at what pressure it carries its load index")
            }
            Reason::ReserveThin | Reason::ReserveMissing => {
                write!(
                    f,
                    "{}",
                    With(
                        "inflate to more, or take a higher load index, until the normal load takes at most ",
                        told(bound),
                        ""
                    )
                )
            }

            Reason::TooSlow => write!(f, "{}", With("take a tire made for ", told(bound), " or more")),
            Reason::SnowFloor => {
                write!(f, "{}", With("keep below ", told(self.check.measured()), " while these tires are on"))
            }
            Reason::WheelOverloaded => {
                write!(f, "{}", With("take a wheel rated for ", told(bound), " or more"))
            }
            Reason::AdaptorOverloaded => {
                write!(f, "{}", With("take an adaptor rated for ", told(bound), " or more"))
            }

            Reason::SpeedometerUncertain => f.write_str("measure a turn of the new tire on the road"),
            Reason::SpeedometerUnknownOverRead => f.write_str(
                "measure at a steady speed what the speedometer shows too much on the original tires",
            ),
            Reason::SpeedometerUnder => write!(
                f,
                "{}",
                With("take a smaller tire, or have the speedometer set to show ", short, " more")
            ),
            Reason::SpeedometerOver => write!(
                f,
                "{}",
                With("take a larger tire, or have the speedometer set to show ", short, " less")
            ),

            Reason::StructuresMixed => f.write_str("put tires of one structure on both axles"),
            Reason::SeasonsMixed => f.write_str("put snow tires on both axles, or on none"),
            Reason::RatioChanged => write!(
                f,
                "{}",
                With("bring the circumferences of front and rear nearer to each other by ", short, "")
            ),

            Reason::SpareTurnsOtherwise | Reason::SpareOtherSize => {
                f.write_str("carry a spare of the size that is on the axle")
            }
            Reason::SpareInPair => f.write_str("carry a spare of the size of the pair"),
            Reason::SpareStructure => f.write_str("carry a spare of the structure that is on the axle"),
            Reason::SpareOnDrivenAxle => {
                f.write_str("put the spare on an axle that is not driven, and a wheel from there here")
            }
            Reason::SpareArrow => f.write_str("put it on the side that its arrow is for, where that is free"),
            Reason::SpareTemporary => {
                f.write_str("keep to its speed, and have the wheel it stands for repaired")
            }

            Reason::HolesDiffer | Reason::HolesNearMiss | Reason::HoleCountDiffers => {
                write!(f, "{}", With("take a wheel drilled ", told(bound), ", as the hub is"))
            }
            Reason::RingCentres | Reason::RingThick | Reason::RingNeeded | Reason::NoCentring => self.ring(f),
            Reason::BoreReachesHoles => f.write_str("measure bore, bolt circle and thread again"),
            Reason::BoreTooSmall => match self.fit {
                Some((_, spigot)) => {
                    write!(f, "take a wheel with a bore of {} mm", Rounded(in_mm(spigot.length())))
                }
                None => f.write_str("take a wheel with a larger bore"),
            },
            Reason::SpacerHidesSpigot | Reason::SpigotShort => {
                write!(f, "{}", With("take a spacer with a spigot of its own, or one thinner by ", short, ""))
            }
            Reason::SpigotThroughAdaptor => write!(
                f,
                "{}",
                With("take an adaptor of at least ", told(self.check.measured()), ", or a larger bore")
            ),

            Reason::ThreadsDiffer => write!(f, "{}", With("take fasteners of ", told(bound), "")),
            Reason::FastenerKindDiffers => f.write_str("take bolts for threaded holes, and nuts for studs"),
            Reason::ClassLower => {
                f.write_str("take fasteners of the original's property class, or a stronger one")
            }
            Reason::TorqueAboveProof | Reason::TorqueNearProof => {
                write!(
                    f,
                    "{}",
                    With(
                        "ask the vehicle's maker for the torque; these bear ",
                        told(bound),
                        " in a greased thread"
                    )
                )
            }
            Reason::SeatShapesDiffer => {
                write!(f, "{}", With("take fasteners of ", told(bound), ", as the wheel's seats are"))
            }
            Reason::StudsStandOut => {
                f.write_str("look whether the wheel has room for the studs, or take a thicker adaptor")
            }
            Reason::TurnsTooFew | Reason::BoltDoesNotReach => {
                write!(f, "{}", With("take fasteners longer by ", short, ""))
            }
            Reason::BoltBottoms => write!(f, "{}", With("take bolts shorter by ", short, "")),
            Reason::InnerJointNotJudged => {
                f.write_str("check thread, seats and turns between adaptor and hub by themselves")
            }
            Reason::DepthNotKnown => f.write_str("measure how deep the threaded hole is"),

            Reason::TouchedByTheFigures => f.write_str("measure wheel and brake again"),
            Reason::BrakeClearsStandard => {
                f.write_str("measure the inside of the rim's barrel over the brake")
            }
            Reason::ClearsStandardBarrel => f.write_str("measure the inside of the rim's barrel"),
            Reason::BarrelContradicts => f.write_str("measure the rim's barrel again"),
            Reason::DiscUnusual => f.write_str("measure the caliper and the rim's barrel"),
            Reason::DiscDoesNotFit => f.write_str("take a wheel of a larger diameter"),
            Reason::BarrelTouchesBrake => {
                write!(f, "{}", With("take a wheel with ", short, " more room around the brake"))
            }
            Reason::SpokesTouchBrake => {
                write!(f, "{}", With("take a wheel whose spokes stand ", short, " further out"))
            }

            Reason::NoHump => {
                f.write_str("look for humps beside the bead seats; without them take another wheel")
            }
            Reason::TubeTypeRim | Reason::ExtendedHumpAdvised => {
                f.write_str("ask the tire's maker whether it may go on this rim")
            }

            Reason::GroundClearanceGone => {
                write!(f, "{}", With("raise the vehicle, or the radius of the tire, by ", short, ""))
            }
            Reason::DualsTooNear | Reason::DualsTouch => {
                write!(f, "{}", With("take narrower tires, or bring the pair apart by ", short, ""))
            }
            Reason::DualsNearer => f.write_str("ask the tire's maker for the least spacing of a pair"),
            Reason::GuardTooNarrow => {
                write!(f, "{}", With("widen the guard, or bring the wheel in, by ", short, ""))
            }
            Reason::DeviceDoesNotFit => {
                write!(f, "{}", With("take a lower device, or find ", short, " more room"))
            }
            Reason::TouchesMoving
            | Reason::NearerThanRules
            | Reason::TouchesAtWorst
            | Reason::NearMoving
            | Reason::TouchedBefore => self.keep_apart(f, short),
            Reason::ScrubReversed => {
                write!(f, "{}", With("bring the middle of the wheel back by about ", short, ""))
            }

            Reason::AgeAdvised => f.write_str("have the tire inspected every year"),
            Reason::AgeUnsure => f.write_str("read the whole identification number for the year of the tire"),
            Reason::DateCodeFalse | Reason::DateCodeAhead | Reason::WeekOfIsoOnly => {
                f.write_str("read the date code again, and the day")
            }
            Reason::TooOld => f.write_str("take a younger tire"),
            Reason::TreadAdvised => f.write_str("plan for new tires before rain and snow"),
            Reason::TreadWorn => {
                write!(f, "{}", With("take a tire with at least ", told(bound), " of tread"))
            }
            Reason::ArrowBackward => f.write_str("put the wheel on the other side of the vehicle"),
            Reason::InsideOut => f.write_str("have the tire turned on its rim"),
            Reason::InsideOutArrowRight => f.write_str("have the tire turned on its rim, and change sides"),

            // Of these only what is inside or does not apply is found.
            Reason::DiametersAgree
            | Reason::RimInMakersRange
            | Reason::RimInStandardsRange
            | Reason::RimWellInEstimate
            | Reason::LoadCarried
            | Reason::CapacityKept
            | Reason::PressureEnough
            | Reason::PressureOnPlacard
            | Reason::ReservePresent
            | Reason::FastEnough
            | Reason::WheelCarries
            | Reason::SpeedometerLegal
            | Reason::NoSpeedometer
            | Reason::AxlesMatch
            | Reason::OneAxle
            | Reason::RatioFree
            | Reason::SpareOfOneSize
            | Reason::SpareTurnsAlike
            | Reason::HolesAgree
            | Reason::HubCentric
            | Reason::HubsOwnFasteners
            | Reason::ThreadsAgree
            | Reason::SeatShapesAgree
            | Reason::TurnsEnough
            | Reason::BrakeClears
            | Reason::Unbraked
            | Reason::HumpsHold
            | Reason::SteepSeatHolds
            | Reason::DiagonalNeedsNoHump
            | Reason::GroundClearanceKept
            | Reason::GroundClearanceLeft
            | Reason::HeightFree
            | Reason::NoSpindleHub
            | Reason::NotSteered
            | Reason::NoTrack
            | Reason::SingleWheels
            | Reason::DualsApart
            | Reason::DualsAsBuilt
            | Reason::GuardCovers
            | Reason::NoDevice
            | Reason::NotDriven
            | Reason::DeviceFits
            | Reason::ClearsThroughout
            | Reason::NothingOnThisSide
            | Reason::ScrubKept
            | Reason::YoungEnough
            | Reason::TreadDeep
            | Reason::MountedRight
            | Reason::NoSideMarks => self.by_limit(f),
        }
    }
}

impl Todo {
    /// The first fact that is missing, and how many more.
    fn find_out(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut missing = self.check.missing();
        if let Some(input) = missing.next() {
            write!(f, "find out {}", input.at(self.check.position()).by(self.keys))?;
        }
        match missing.count() {
            0 => Ok(()),
            1 => f.write_str(" and one fact more"),
            more => write!(f, " and {more} facts more"),
        }
    }

    /// What a finding asks for whose reason is only that it is outside its limit.
    fn by_limit(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Some(short) = self.short_by() else {
            return f.write_str("measure again, or ask the makers of tire and wheel");
        };
        let outside_by = self.check.measured().and_then(Value::number).unwrap_or_default();
        let is_above = outside_by > 0.0;
        let told = Told(short, self.units);
        match self.check.id() {
            CheckId::OuterClearance => write!(f, "{told} less outward"),
            CheckId::InnerClearance => write!(f, "{told} less inward"),
            CheckId::UpperClearance => write!(f, "{told} less at the top: a lower tire"),
            CheckId::OverallDiameter if is_above => {
                write!(f, "take a tire smaller by {told} of the original")
            }
            CheckId::OverallDiameter => write!(f, "take a tire larger by {told} of the original"),
            CheckId::RideHeight if is_above => write!(f, "take a tire whose radius is smaller by {told}"),
            CheckId::RideHeight => write!(f, "take a tire whose radius is larger by {told}"),
            CheckId::Track => write!(f, "move the wheels in, so that the track is less by {told}"),
            CheckId::ChainClearance
            | CheckId::SweptClearance
            | CheckId::BrakeClearance
            | CheckId::WheelGuard
            | CheckId::GroundClearance
            | CheckId::DualSpacing => write!(f, "find {told} more room"),
            CheckId::BeadDiameter
            | CheckId::RimWidth
            | CheckId::TireLoad
            | CheckId::TireLoadVsOriginal
            | CheckId::Inflation
            | CheckId::LoadReserve
            | CheckId::SpeedSymbol
            | CheckId::WheelLoad
            | CheckId::Speedometer
            | CheckId::AxleMatch
            | CheckId::RimContour
            | CheckId::BoltCircle
            | CheckId::CentreBore
            | CheckId::FastenerThread
            | CheckId::FastenerSeat
            | CheckId::ThreadEngagement
            | CheckId::ScrubRadius
            | CheckId::TireAge
            | CheckId::Tread
            | CheckId::Mounting => write!(f, "mend it by {told}"),
        }
    }

    /// The load index that stands for the load, as its own stands for what the tire carries here.
    fn index_for(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let asked = match (self.index, self.check.measured(), self.bound()) {
            (Some(own), Some(Value::Mass(carried)), Some(Value::Mass(load))) => {
                Some(own.load() * (load / carried))
            }
            _ => None,
        };
        match asked.map(LoadIndex::min_for) {
            Some(Some(index)) => {
                write!(f, "take a tire of load index {index} or more, or load the axle less")
            }
            Some(None) => f.write_str("load the axle less: no load index stands for so much"),
            None => f.write_str("take a tire of a higher load index, or load the axle less"),
        }
    }

    /// To the least that everything needs, or to the bound of the finding where that is more.
    fn inflate(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.is_out_of_reach {
            return f.write_str(
                "take a tire of a higher load index: this one may not have the pressure it needs",
            );
        }
        let bound = match self.bound() {
            Some(Value::Pressure(pressure)) => Some(pressure),
            _ => None,
        };
        match bound.into_iter().chain(self.needed).reduce(Pressure::max) {
            Some(least) => write!(f, "inflate to at least {}", Gauge(least)),
            None => f.write_str("inflate to more"),
        }
    }

    fn ring(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self
            .fit
            .map(|(bore, spigot)| [bore.length(), spigot.length()].map(|length| Rounded(in_mm(length))))
        {
            Some([bore, spigot]) if self.check.reason() == Reason::RingThick => {
                write!(f, "have a ring made of {bore} to {spigot} mm")
            }
            Some([bore, spigot]) => write!(f, "fit a ring of {bore} to {spigot} mm"),
            None => f.write_str("fit a ring from bore to spigot"),
        }
    }

    fn keep_apart(&self, f: &mut fmt::Formatter<'_>, short: Option<Told>) -> fmt::Result {
        let room = With("find ", short, " more room");
        match self.nearest {
            Some((BodyKind::Other, part)) => write!(f, "{room} between the {part} and what it comes near"),
            Some((body, part)) => write!(f, "{room} between the {part} and the {}", Name(body.name())),
            None => write!(f, "{room} for the wheel"),
        }
    }
}
