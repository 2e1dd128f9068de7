//! One finding of an assessment, and the words it is made of.

use core::fmt;

use super::measure::{Access, Tool};
use super::reading::{Bound, Reading};
use crate::Citation;
use crate::record::words;
use crate::tire::VehicleSide;

words! {
    /// The question a check answers.
    ///
    /// ```
    /// use beadseat::fitment::CheckId;
    /// assert_eq!(CheckId::BoltCircle.name(), "bolt_circle");
    /// ```
    CheckId {
        /// Same nominal rim diameter and seat family on tire and wheel.
        BeadDiameter = "bead_diameter",
        /// Rim width inside the range the tire is approved for.
        RimWidth = "rim_width",
        /// The tires carry the greatest axle load at top speed.
        TireLoad = "tire_load",
        /// They carry no less than the original ones at their pressures.
        TireLoadVsOriginal = "tire_load_vs_original",
        /// The intended pressures are enough and not too much.
        Inflation = "inflation",
        /// The normal load leaves a reserve.
        LoadReserve = "load_reserve",
        /// The tires are made for the vehicle's top speed.
        SpeedSymbol = "speed_symbol",
        /// The wheels carry their share of the axle load.
        WheelLoad = "wheel_load",
        /// Change of overall diameter.
        OverallDiameter = "overall_diameter",
        /// The speedometer stays inside its law.
        Speedometer = "speedometer",
        /// Front and rear still belong together.
        AxleMatch = "axle_match",
        /// The rim holds the beads of such a tire.
        RimContour = "rim_contour",
        /// The wheel's holes are the hub's.
        BoltCircle = "bolt_circle",
        /// The wheel goes on the spigot and is centred by it.
        CentreBore = "centre_bore",
        /// The fasteners screw into the hub or onto its studs.
        FastenerThread = "fastener_thread",
        /// The fasteners sit in the wheel's seats.
        FastenerSeat = "fastener_seat",
        /// Enough turns of thread hold, and the fastener does not bottom.
        ThreadEngagement = "thread_engagement",
        /// The rim's barrel and the spokes clear the brake.
        BrakeClearance = "brake_clearance",
        /// Change of track.
        Track = "track",
        /// Change of scrub radius.
        ScrubRadius = "scrub_radius",
        /// Gap left outboard.
        OuterClearance = "outer_clearance",
        /// Gap left inboard.
        InnerClearance = "inner_clearance",
        /// Gap left above.
        UpperClearance = "upper_clearance",
        /// Change of the height the vehicle stands at.
        RideHeight = "ride_height",
        /// What is left under the vehicle.
        GroundClearance = "ground_clearance",
        /// Tires of a pair keep apart.
        DualSpacing = "dual_spacing",
        /// The wheel guard covers the tire.
        WheelGuard = "wheel_guard",
        /// Room for a traction device.
        ChainClearance = "chain_clearance",
        /// Nothing touches from lock to lock and from rebound to jounce.
        SweptClearance = "swept_clearance",
        /// Age of a tire.
        TireAge = "tire_age",
        /// Depth of its tread.
        Tread = "tread",
        /// Rotation arrow and marked side against the side of the vehicle.
        Mounting = "mounting",
    }
}

impl CheckId {
    /// Whether a report is complete only when this check is assessed on every axle.
    ///
    /// ```
    /// use beadseat::fitment::CheckId;
    /// assert!(CheckId::TireLoad.is_vital() && !CheckId::Track.is_vital());
    /// ```
    pub const fn is_vital(self) -> bool {
        matches!(
            self,
            Self::BeadDiameter
                | Self::TireLoad
                | Self::Inflation
                | Self::WheelLoad
                | Self::BoltCircle
                | Self::CentreBore
                | Self::FastenerThread
                | Self::FastenerSeat
                | Self::ThreadEngagement
                | Self::OuterClearance
                | Self::InnerClearance
                | Self::UpperClearance
        )
    }
}

words! {
    /// What a finding is about.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::Place::Front.name(), "front");
    /// ```
    Place {
        /// The vehicle as a whole.
        Vehicle = "vehicle",
        /// The front axle.
        Front = "front",
        /// The rear axle.
        Rear = "rear",
        /// The left end of the front axle.
        FrontLeft = "front_left",
        /// Its right end.
        FrontRight = "front_right",
        /// The left end of the rear axle.
        RearLeft = "rear_left",
        /// Its right end.
        RearRight = "rear_right",
    }
}

impl Place {
    /// One end of an axle; the vehicle as a whole has none.
    pub(crate) const fn end(self, side: VehicleSide) -> Self {
        match (self, side) {
            (Self::Front, VehicleSide::Left) => Self::FrontLeft,
            (Self::Front, VehicleSide::Right) => Self::FrontRight,
            (Self::Rear, VehicleSide::Left) => Self::RearLeft,
            (Self::Rear, VehicleSide::Right) => Self::RearRight,
            (other, _) => other,
        }
    }

    /// The axle of an end; an axle and the vehicle as they are.
    pub(crate) const fn axle(self) -> Self {
        match self {
            Self::FrontLeft | Self::FrontRight => Self::Front,
            Self::RearLeft | Self::RearRight => Self::Rear,
            other => other,
        }
    }

    /// The axle, and which end of it; nothing for the vehicle.
    const fn axle_and_end(self) -> Option<(&'static str, Option<&'static str>)> {
        Some(match self {
            Self::Vehicle => return None,
            Self::Front => ("front", None),
            Self::Rear => ("rear", None),
            Self::FrontLeft => ("front", Some("left")),
            Self::FrontRight => ("front", Some("right")),
            Self::RearLeft => ("rear", Some("left")),
            Self::RearRight => ("rear", Some("right")),
        })
    }
}

/// The answer of a check, or of a whole report.
///
/// `Ord` is from good to bad, with [`Verdict::NotAssessed`] last.
///
/// ```
/// use beadseat::fitment::Verdict;
/// assert!(Verdict::Within < Verdict::Beyond);
/// assert_eq!(Verdict::NotAssessed.name(), "not_assessed");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// Inside the limit at the worst case.
    Within,
    /// Inside at nominal but not at the worst case, or decided by an estimate within its error.
    Marginal,
    /// Outside the limit.
    Beyond,
    /// An input is missing.
    NotAssessed,
}

impl Verdict {
    /// `within`, `marginal`, `beyond`, `not_assessed`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Within => "within",
            Self::Marginal => "marginal",
            Self::Beyond => "beyond",
            Self::NotAssessed => "not_assessed",
        }
    }
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

macro_rules! reasons {
    ($($variant:ident = $text:literal,)*) => {
        /// Why a check came out as it did, in one line.
        ///
        /// ```
        /// use beadseat::fitment::Reason;
        /// assert_eq!(Reason::HolesDiffer.to_string(), "the wheel's holes do not lie on the hub's bolt circle");
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum Reason { $(#[doc = concat!($text, ".")] $variant,)* }

        impl Reason {
            /// The line.
            pub const fn text(self) -> &'static str {
                match self { $(Self::$variant => $text,)* }
            }
        }
    };
}

reasons! {
    InputMissing = "not assessed: an input is missing",
    Inside = "inside the limit, worst case included",
    FlangeAssumed = "inside the limit, but the rim edge decides it and its flange width is assumed: measure it",
    LargerOfSameSize = "nothing changes in size, but a new tire may be larger than the one that was measured",
    InsideAtNominalOnly = "inside the limit at nominal size, not at the worst case of tolerance and measurement",
    Outside = "outside the limit even at nominal size",
    Unchanged = "the same as the original",

    DiametersAgree = "tire and wheel have the same nominal rim diameter",
    DiametersDiffer = "tire and wheel have different nominal rim diameters: never try to mount them, it can kill",
    SeatsDiffer = "tire and wheel have different bead seats: never try to mount them, it can kill",

    RimInMakersRange = "inside the tire maker's rim range",
    RimOutsideMakersRange = "outside the tire maker's rim range",
    RimInStandardsRange = "inside the rim widths that a standard permits; the maker's range rules",
    RimOutsideStandardsRange = "outside the rim widths that a standard permits; the maker's range rules",
    RimWellInEstimate = "inside the estimated rim range by half an inch or on the measuring rim; the maker's range rules",
    RimNearEndOfEstimate = "within half an inch of an end of the estimated rim range; the maker's range is required",
    RimOutsideEstimate = "outside the estimate; the maker's range is required",

    LoadCarried = "the load index carries the greatest load, with the factors of speed, camber and use",
    LoadNotCarried = "the tire is overloaded at the greatest axle load, with the factors of speed, camber and use",
    SpigotShort = "the spacer leaves less of the spigot in the bore than it takes to centre the wheel",
    CapacityKept = "carries no less than the original tire at its placard pressure",
    CapacityLost = "carries less than the original tire at its placard pressure",
    LoadIndexLower = "the load index is below the original's",
    CapacityKeptLowerIndex = "the load index is below the original's, which the caller allows, and the capacity is kept",

    PressureEnough = "the intended pressures carry the loads and stay below the permitted maximum",
    PressureOnPlacard = "tire, load index and version are the original's at the vehicle maker's placard pressure",
    PressureTooLowNormal = "the pressure for normal use does not carry the normal load",
    PressureTooLowFull = "the pressure for full load does not carry the greatest load at top speed",
    PressureTooHigh = "a pressure is above the permitted maximum of tire or wheel",
    PressureAboveReference = "a pressure is above the reference pressure, and the maximum molded on the tire is not known",
    PressureByLetter = "enough by the default reference pressure of the load range letter; the figure on the tire rules",
    LoadAboveIndex = "no permitted pressure makes this tire carry the load",
    ReservePresent = "the normal load leaves the reserve",
    ReserveThin = "the normal load takes more of the capacity than good practice leaves",
    ReserveMissing = "the normal load takes more of the capacity than the limit allows",

    FastEnough = "the speed symbol covers the vehicle's top speed",
    TooSlow = "the vehicle is faster than the tire is made for",
    SnowFloor = "a snow tire slower than the vehicle, as the caller's jurisdiction allows; keep below its speed",

    WheelCarries = "the wheel's rating covers its share of the axle load",
    AdaptorOverloaded = "the adaptor's rating is below its share of the axle load",
    WheelOverloaded = "the wheel's rating is below its share of the axle load",

    SpeedometerLegal = "the speedometer never reads below true speed nor above the permitted excess",
    SpeedometerUncertain = "legal at nominal size, not over the whole tolerance of the tire's diameter",
    SpeedometerUnknownOverRead = "legal only for a part of the over-reads the original may have: measure it",
    SpeedometerUnder = "the speedometer would read below true speed",
    SpeedometerOver = "the speedometer would read above the permitted excess",
    NoSpeedometer = "a towed vehicle drives no speedometer",

    AxlesMatch = "front and rear keep their structure, season and ratio of circumference",
    OneAxle = "one axle only: nothing to match",
    StructuresMixed = "front and rear tires have different structures",
    SeasonsMixed = "snow tires on one axle only",
    RatioChanged = "the ratio of front and rear circumference changes more than the drive or the control systems bear",
    RatioFree = "the ratio of front and rear changes, and nothing on the vehicle compares the axles",

    HolesAgree = "the wheel's holes lie on the hub's bolt circle",
    HolesDiffer = "the wheel's holes do not lie on the hub's bolt circle",
    HolesNearMiss = "a near miss: every hole is off by half the difference; it seems to go on and does not seat",
    HoleCountDiffers = "wheel and hub have different numbers of holes",

    HubCentric = "the spigot centres the wheel",
    RingCentres = "the bore is larger than the spigot and a ring fills it",
    RingNeeded = "the bore is larger than the spigot: a ring is needed, or the seats alone centre the wheel",
    BoreTooSmall = "the bore is smaller than the spigot: the wheel cannot go on",
    NoCentring = "neither spigot nor seats centre the wheel",
    SpacerHidesSpigot = "the spacer is as thick as the spigot is high: the spigot no longer centres the wheel",

    HubsOwnFasteners = "the hub's own fasteners are kept",
    ThreadsAgree = "the fasteners have the hub's thread",
    ThreadsDiffer = "the fasteners do not have the hub's thread: they strip or come loose",
    FastenerKindDiffers = "bolts for a hub with studs, or nuts for a hub without",
    SeatShapesAgree = "fasteners and wheel have the same seat",
    SeatShapesDiffer = "fasteners and wheel have different seats: they cannot hold their clamp load",

    TurnsEnough = "enough of the thread holds",
    TurnsTooFew = "too little of the thread holds: it can strip or work loose",
    BoltDoesNotReach = "the fastener does not reach the thread",
    BoltBottoms = "the bolt is longer than the hole is deep: it bottoms and clamps nothing",

    TouchedByTheFigures = "no nearer than the original wheel, which touches by these figures: measure again",
    InnerJointNotJudged = "the wheel's joint is right; the one between adaptor and hub is not judged here: its thread, seats and turns must be right too",
    SpigotThroughAdaptor = "the hub's spigot comes out of the adaptor, and the wheel's bore is too small for it",
    DepthNotKnown = "far more thread than is needed, and the depth of the hole is not known: the bolt may bottom",
    BrakeClears = "the brake clears the barrel and the spokes",
    BrakeClearsStandard = "the brake clears the largest barrel the rim standard allows; the wheel's own may be smaller: measure it",
    BarrelTouchesBrake = "the rim's barrel comes too close to the brake",
    SpokesTouchBrake = "the spokes come too close to the caliper",

    HumpsHold = "humps keep the beads on their seats",
    SteepSeatHolds = "the steep seat keeps the beads in place; such rims have no humps",
    DiagonalNeedsNoHump = "a diagonal tire does not ask for humps",
    NoHump = "no hump is stamped: a tubeless radial tire may leave its seat in a turn; look for the humps",
    TubeTypeRim = "a rim of several pieces does not hold air: such a tire needs a tube and its maker's consent",
    ExtendedHumpAdvised = "a run-flat tire is meant for extended humps (EH, EH2): its maker's word is needed",

    GroundClearanceKept = "the ground clearance does not fall",
    GroundClearanceLeft = "enough is left under the vehicle",
    GroundClearanceGone = "too little is left under the vehicle",
    SingleWheels = "single wheels: there is no pair to keep apart",
    DualsApart = "the tires of a pair keep the distance asked for",
    DualsTooNear = "the tires of a pair are nearer than asked for: they chafe under load",
    DualsTouch = "the tires of a pair touch",
    DualsAsBuilt = "the tires of a pair are no nearer than the original ones",
    DualsNearer = "the tires of a pair are nearer than the original ones: their maker's least spacing is required",
    GuardCovers = "the guard covers the tire from 30° ahead of the hub to 50° behind",
    GuardTooNarrow = "the tire stands out of its guard between 30° ahead of the hub and 50° behind",
    NoDevice = "no traction device is intended",
    NotDriven = "traction devices belong on driven wheels",
    DeviceFits = "room for the stated class of traction device, standing and straight",
    DeviceDoesNotFit = "no room for the stated class of traction device",

    ClearsThroughout = "clear of everything described, over all steer and travel; spokes are not looked at here",
    BarrelAssumed = "clear, but the barrel decides it and its radius is assumed: measure it",
    NearerThanRules = "nearer than the limit that rules here, even at nominal size: see the nearest approach below",
    NothingOnThisSide = "nothing is described on this side",
    TouchesMoving = "it touches, even at nominal size: see the nearest approach below",
    TouchesAtWorst = "clear at nominal size, but the largest tire of its size or an error of measurement makes it touch",
    NearMoving = "it does not touch, but comes nearer than the limit: see the nearest approach below",
    TouchedBefore = "it comes too near, but no nearer than the original did",

    ScrubKept = "the scrub radius keeps its sign",
    ScrubReversed = "the scrub radius changes sign: steering pulls the other way under braking",

    YoungEnough = "younger than any advice against it",
    AgeAdvised = "older than many vehicle makers advise, though younger than the limit: have it inspected every year",
    AgeUnsure = "whether it is past the limit depends on the day of its week, or on the decade its code leaves open",
    TooOld = "older than the limit, whatever its tread",
    TreadDeep = "the tread is deep enough",
    TreadAdvised = "deep enough by the limit, but shallower than advised for water or snow",
    TreadWorn = "worn below the least depth",
    MountedRight = "the tire's marks are on the side they belong to",
    NoSideMarks = "the tire has neither an arrow nor a marked side: it may turn either way",
    ArrowBackward = "the rotation arrow points backward: the wheel belongs on the other side",
    InsideOut = "the tire is inside out: turn it on its rim",
    InsideOutArrowRight = "the tire is inside out and its arrow right only for that: turn it on its rim, and change sides",
}

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.text())
    }
}

macro_rules! inputs {
    ($($variant:ident = $key:literal, $how:literal, [$($tool:ident),*] $access:ident;)*) => {
        /// A fact that a check could not do without.
        ///
        /// ```
        /// use beadseat::fitment::{Input, Place};
        /// assert_eq!(Input::HubSpigot.at(Place::Front).to_string(), "vehicle.front.hub.spigot_mm");
        /// assert!(Input::HubSpigot.how().contains("caliper"));
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[non_exhaustive]
        pub enum Input { $(#[doc = concat!("`", $key, "`: ", $how, ".")] $variant,)* }

        impl Input {
            /// Every one.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// Where it goes in a scenario, `*` standing for the axle and `#` for its end; what stands in
            /// brackets is not a key but what is wanted of its value.
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key,)* }
            }

            /// How to come by it.
            pub const fn how(self) -> &'static str {
                match self { $(Self::$variant => $how,)* }
            }

            /// What it is taken with, if more than eyes and knowledge.
            pub const fn tools(self) -> &'static [Tool] {
                match self { $(Self::$variant => &[$(Tool::$tool),*],)* }
            }

            /// What must be done to the vehicle to come at it.
            pub const fn access(self) -> Access {
                match self { $(Self::$variant => Access::$access,)* }
            }

            /// Where it goes in a scenario, for an axle. `Display` is the path.
            pub const fn at(self, place: Place) -> InputPath {
                InputPath { input: self, place }
            }
        }
    };
}

/// The path of an [`Input`] in a scenario.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct InputPath {
    input: Input,
    place: Place,
}

impl fmt::Display for InputPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.input.key().split_once('*'), self.place.axle_and_end()) {
            (Some((before, after)), Some((axle, end))) => {
                write!(f, "{before}{axle}")?;
                match (after.split_once('#'), end) {
                    (Some((between, behind)), Some(end)) => write!(f, "{between}{end}{behind}"),
                    _ => f.write_str(after),
                }
            }
            _ => f.write_str(self.input.key()),
        }
    }
}

inputs! {
    Kind = "vehicle.kind", "say what class the vehicle is registered in", [Papers] Anywhere;
    Drive = "vehicle.drive", "say which axles are driven", [Papers] Anywhere;
    TopSpeed = "vehicle.top_speed_kmh", "read it in the registration papers", [Papers] Anywhere;
    StabilityControl = "vehicle.stability_control", "say whether it has anti-lock brakes or stability control", [Papers] Anywhere;
    MaxLoad = "vehicle.*.max_load_kg", "read the permitted axle load on the maker's plate", [Papers] Anywhere;
    NormalLoad = "vehicle.*.normal_load_kg", "weigh the axle with its usual occupants and load", [Scales] OnGround;
    Track = "vehicle.*.track_mm", "read it in the papers, or measure between the tread middles", [Papers, Tape] OnGround;
    Placard = "vehicle.*.placard_kpa", "read the maker's placard on the door pillar", [Papers] Anywhere;
    HubBoltCircle = "vehicle.*.hub.bolt_circle", "wheel off, count the holes or studs and measure between centres with a caliper", [Caliper] WheelOff;
    HubSpigot = "vehicle.*.hub.spigot_mm", "wheel off, measure the hub's collar with a caliper", [Caliper] WheelOff;
    SpigotHeight = "vehicle.*.hub.spigot_height_mm", "wheel off, measure how far the collar stands out of the face", [Caliper] WheelOff;
    HubThread = "vehicle.*.hub.thread", "measure a stud or bolt with a caliper and a thread gauge", [Caliper, ThreadGauge] OnGround;
    HubSeat = "vehicle.*.hub.seat", "look at the seat of an original fastener, or in the maker's data", [] OnGround;
    HubFastening = "vehicle.*.hub.fastening", "bolts into the hub or nuts on studs", [] Anywhere;
    SteeringAxis = "vehicle.*.steering", "take scrub radius and kingpin inclination from the maker's alignment data", [Papers] Anywhere;
    InnerClearance = "vehicle.*.space.inner_clearance_mm", "on the floor, least gap inboard of tire and rim, with a gauge or stiff wire", [Gauge] OnGround;
    OuterClearance = "vehicle.*.space.outer_clearance_mm", "on the floor, straightedge down from the arch lip, to the sidewall", [Straightedge, Tape] OnGround;
    UpperClearance = "vehicle.*.space.upper_clearance_mm", "on the floor, least gap between tread and what is above it", [Tape] OnGround;
    TireDimensions = "proposed.*.tire (dimensions)", "its maker's data: no table or rule here knows this size", [Papers] Elsewhere;
    OriginalDimensions = "original.*.tire (dimensions)", "its maker's data, or measure it: no table or rule here knows this size", [Papers] Elsewhere;
    ProposedSetup = "proposed.*", "say which tire and wheel go on", [] Anywhere;
    OriginalSetup = "original.*", "read the original tire and wheel in the papers or on the placard", [Papers] Anywhere;
    LoadIndex = "proposed.*.tire (load index)", "read load index and speed symbol behind the size", [] Anywhere;
    DualLoadIndex = "proposed.*.tire (second load index)", "read it behind the stroke: only such a tire may run in pairs", [] Anywhere;
    OriginalLoadIndex = "original.*.tire (load index)", "read load index and speed symbol behind the size", [] Anywhere;
    LoadAtSpeed = "proposed.*.tire (load at top speed)", "ask the tire's maker for its load at this top speed", [Papers] Elsewhere;
    PressureAtSpeed = "proposed.*.tire (pressure at top speed)", "ask the tire's maker for the pressure at this top speed", [Papers] Elsewhere;
    LoadAtPressure = "proposed.*.tire (load at this pressure)", "load tables do not reach this pressure: ask the tire's maker", [Papers] Elsewhere;
    LoadAtCamber = "proposed.*.tire (load at this camber)", "no load rule holds at this camber: ask the tire's maker", [Papers] Elsewhere;
    MotorcycleRules = "proposed.*.tire (motorcycle rules)", "motorcycle tires have rules of their own, not judged here: use the makers' data", [Papers] Elsewhere;
    Pressure = "proposed.*.pressure_kpa", "say which cold pressure is intended", [] Anywhere;
    ReferencePressure = "proposed.*.reference_kpa", "read the pressure beside the maximum load on the tire, or its maker's table", [] Anywhere;
    OriginalReferencePressure = "original.*.reference_kpa", "read it on the original tire, or in its maker's table", [] Anywhere;
    RimRange = "proposed.*.rim_range_in", "look up the approved rim widths in the tire maker's table", [Papers] Anywhere;
    WheelRating = "proposed.*.wheel_rating_kg", "read it on the back of the wheel, or in its maker's certificate", [] Anywhere;
    WheelBoltCircle = "proposed.*.wheel (bolt circle)", "count the holes and measure between centres with a caliper", [Caliper] Anywhere;
    WheelBore = "proposed.*.wheel (bore)", "measure the bore from behind with a caliper", [Caliper] Anywhere;
    WheelSeat = "proposed.*.seat", "look at the seats in the wheel, or in its maker's papers", [] Anywhere;
    WheelInset = "proposed.*.wheel (inset)", "read ET behind the spokes, or measure the backspacing", [Straightedge, Tape] Anywhere;
    OriginalInset = "original.*.wheel (inset)", "wheel off, read ET behind the spokes, or measure the backspacing", [Straightedge, Tape] WheelOff;
    FastenerThread = "proposed.*.fasteners.thread", "measure a fastener with a caliper and a thread gauge", [Caliper, ThreadGauge] Anywhere;
    FastenerSeat = "proposed.*.fasteners.seat", "look at the seat of the fasteners that come with the wheel", [] Anywhere;
    Obstacles = "vehicle.*.space.obstacles", "wheels straight, on the floor: tape, for each body near the wheel, how far ahead, outboard and above the hub it is", [Tape, Straightedge] OnGround;
    Travel = "vehicle.*.travel", "wheel off, measure from ride height to the bump stop and to full droop with a tape, or take the maker's data", [Tape] WheelOff;
    Locks = "vehicle.*.steering.lock_inner_deg (and lock_outer_deg)", "turn plates, or chalk lines along the wheel straight and at full lock, and a protractor", [Straightedge] OnGround;
    CasterAndTrail = "vehicle.*.steering.caster_deg (and trail_mm)", "take them from the maker's alignment data", [Papers] Anywhere;
    HubHeight = "vehicle.*.steering.hub_height_mm", "tape from the floor to the middle of the hub, original tires, at ride height", [Tape] OnGround;
    GroundClearance = "vehicle.*.ground_clearance_mm", "tape from the floor to the lowest thing beside the wheels, original tires, at ride height", [Tape] OnGround;
    LeastGroundClearance = "limits.ground_clearance_mm", "say how much must be left under the vehicle, by local rules or by use", [] Anywhere;
    GuardOverhang = "vehicle.*.space.guard_overhang_mm", "straightedge down from the wheel guard, from 30° ahead of the hub to 50° behind: how far it stands outboard of the sidewall, at least", [Straightedge, Tape] OnGround;
    WheelContour = "proposed.*.wheel (contour and hump)", "read the letters behind the rim width and diameter, as J and H2", [] Anywhere;
    UsableLength = "proposed.*.fasteners.usable_length_mm", "measure the thread from the seat to the end that can engage", [Caliper] Anywhere;
    DiscThickness = "proposed.*.disc_thickness_mm", "measure the wheel from its mounting face to where the fastener seats", [Caliper] Anywhere;
    StudLength = "vehicle.*.hub.stud_length_mm", "wheel off, measure a stud from the mounting face to the end of its thread", [Caliper] WheelOff;
    AdaptorThreadLength = "proposed.*.adaptor.thread_length_mm", "measure the adaptor's studs from its face, or the depth of its threaded holes", [Caliper] Anywhere;
    LeastTurns = "limits.engagement_turns", "no table here has this thread: take the least turns from the fastener's maker", [Papers] Anywhere;
    BrakeEnvelope = "vehicle.*.brake.envelope_radius_mm", "wheel off, from the middle of the spindle to the outermost point of the caliper, with a square and a rule", [Straightedge, Tape] WheelOff;
    CaliperFace = "vehicle.*.brake.caliper_face_mm", "wheel off, straightedge over the mounting face, how far the caliper stands out of it", [Straightedge, Caliper] WheelOff;
    Barrel = "proposed.*.barrel_radius_mm", "least inner radius of the rim over the brake: half the inside diameter at the well", [Caliper, Tape] Anywhere;
    SpokeBack = "proposed.*.spoke_back_mm", "wheel face down, straightedge over the rim, depth to the back of the spokes less depth to the mounting face", [Straightedge, Caliper] Anywhere;
    AdaptorHubCircle = "proposed.*.adaptor.hub_bolt_circle", "measure the holes by which the adaptor is held to the hub", [Caliper] Anywhere;
    AdaptorWheelCircle = "proposed.*.adaptor.wheel_bolt_circle", "measure the studs or threaded holes of the adaptor", [Caliper] Anywhere;
    AdaptorBore = "proposed.*.adaptor.hub_bore", "measure the adaptor's bore on the hub's side with a caliper", [Caliper] Anywhere;
    AdaptorSpigot = "proposed.*.adaptor.wheel_spigot_mm", "measure the adaptor's own collar with a caliper", [Caliper] Anywhere;
    AdaptorThread = "proposed.*.adaptor.thread", "measure a stud or threaded hole of the adaptor with a thread gauge", [ThreadGauge] Anywhere;
    AdaptorFastenerKind = "proposed.*.adaptor.fastener_kind", "say whether the adaptor takes bolts, or has studs for nuts", [] Anywhere;
    AdaptorRating = "proposed.*.adaptor.rating_kg", "read it on the adaptor, or in its maker's certificate", [] Anywhere;
    Date = "use.date", "say for which day", [] Anywhere;
    DateCode = "proposed.*.#.date_code", "read the last digits of the tire's identification number, week and year; one that lies after the day is misread", [] Anywhere;
    TreadDepth = "proposed.*.#.tread_mm", "measure the shallowest major groove with a depth gauge", [Gauge] Anywhere;
    SideMarks = "proposed.*.#", "look for a rotation arrow and for OUTSIDE or INSIDE on the sidewall that faces out", [] Anywhere;
}

/// A set of missing inputs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub(crate) struct Missing(pub(crate) u128);

impl Missing {
    pub(crate) const fn add(&mut self, input: Input) {
        self.0 |= 1 << input as u32;
    }

    pub(crate) fn inputs(self) -> impl Iterator<Item = Input> + use<> {
        Input::ALL.iter().copied().filter(move |&input| self.0 & (1 << input as u32) != 0)
    }
}

impl From<Input> for Missing {
    fn from(input: Input) -> Self {
        Self(1 << input as u32)
    }
}

const _: () = assert!(Input::ALL.len() <= 128);

/// One finding: a check, where it was made, what was measured, what it was held against, and why.
///
/// `Display` is one line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Check {
    pub(crate) id: CheckId,
    pub(crate) place: Place,
    pub(crate) verdict: Verdict,
    pub(crate) reason: Reason,
    pub(crate) citation: Citation,
    pub(crate) measured: Option<Reading>,
    pub(crate) nominal: Option<Reading>,
    pub(crate) limit: Option<Bound>,
    pub(crate) missing: Missing,
}

impl Check {
    /// Which question.
    pub const fn id(&self) -> CheckId {
        self.id
    }

    /// Where.
    pub const fn place(&self) -> Place {
        self.place
    }

    /// The answer.
    pub const fn verdict(&self) -> Verdict {
        self.verdict
    }

    /// Why.
    pub const fn reason(&self) -> Reason {
        self.reason
    }

    /// Whose limit, or whose rule; nothing of a check that was not assessed.
    pub const fn citation(&self) -> Option<Citation> {
        match self.verdict {
            Verdict::NotAssessed => None,
            _ => Some(self.citation),
        }
    }

    /// What was measured, at its worst case; nothing if an input is missing.
    pub const fn measured(&self) -> Option<Reading> {
        self.measured
    }

    /// The same at nominal size, where tolerance or measurement widens it.
    pub const fn nominal(&self) -> Option<Reading> {
        self.nominal
    }

    /// What it was held against.
    pub const fn limit(&self) -> Option<Bound> {
        self.limit
    }

    /// How far inside the limit the measured value is, to the nearer bound; negative outside. Nothing
    /// for designations, which agree or do not.
    pub fn margin(&self) -> Option<Reading> {
        Some(self.measured?.of_same_kind(self.margin_number()?))
    }

    /// The margin in the unit of the measured value.
    pub(crate) fn margin_number(&self) -> Option<f64> {
        let value = self.measured?.number()?;
        match self.limit? {
            Bound::AtMost(most) => Some(most.number()? - value),
            Bound::AtLeast(least) => Some(value - least.number()?),
            Bound::Between(least, most) => Some((value - least.number()?).min(most.number()? - value)),
            Bound::Equals(_) => None,
        }
    }

    /// The inputs that were missing.
    pub fn missing(&self) -> impl Iterator<Item = Input> + use<> {
        self.missing.inputs()
    }
}

impl fmt::Display for Check {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}: {}", self.place, self.id, self.verdict)?;
        if let (Some(measured), Some(limit)) = (self.measured, self.limit) {
            write!(f, ", {measured} ({limit})")?;
        }
        write!(f, ": {}", self.reason)?;
        for (n, input) in self.missing().enumerate() {
            write!(f, "{}{}", if n == 0 { " (" } else { ", " }, input.at(self.place))?;
        }
        if self.missing.0 != 0 {
            f.write_str(")")?;
        }
        Ok(())
    }
}
