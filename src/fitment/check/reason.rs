//! Why a check came out as it did.

use core::fmt;

/// The name of a variant with words in lower case.
struct SnakeCase {
    bytes: [u8; 40],
    len: usize,
}

impl SnakeCase {
    const fn of(name: &str) -> Self {
        let (name, mut bytes, mut len, mut at) = (name.as_bytes(), [0; 40], 0, 0);
        while at < name.len() {
            if at > 0 && name[at].is_ascii_uppercase() {
                bytes[len] = b'_';
                len += 1;
            }
            bytes[len] = name[at].to_ascii_lowercase();
            len += 1;
            at += 1;
        }
        Self { bytes, len }
    }

    const fn as_str(&self) -> &str {
        match core::str::from_utf8(self.bytes.split_at(self.len).0) {
            Ok(text) => text,
            Err(_) => "",
        }
    }
}

macro_rules! reasons {
    ($($variant:ident = $text:literal,)*) => {
        /// Why a check came out as it did, in one line.
        ///
        /// ```
        /// use beadseat::fitment::Reason;
        /// assert_eq!(Reason::HolesDiffer.to_string(), "the holes do not lie on the bolt circle of what they are held to");
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum Reason { $(#[doc = concat!($text, ".")] $variant,)* }

        impl Reason {
            /// Every reason there is, in the order they are declared.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// The reason as a line of text.
            pub const fn text(self) -> &'static str {
                match self { $(Self::$variant => $text,)* }
            }

            /// Its stable name in files, as `holes_differ`.
            ///
            /// ```
            /// assert_eq!(beadseat::fitment::Reason::HolesNearMiss.id(), "holes_near_miss");
            /// ```
            pub const fn id(self) -> &'static str {
                match self { $(Self::$variant => {
                    const ID: &SnakeCase = &SnakeCase::of(stringify!($variant));
                    ID.as_str()
                })* }
            }
        }
    };
}

reasons! {
    InputMissing = "not assessed: an input is missing",
    Inside = "inside the limit, worst case included",
    FlangeAssumed = "inside the limit, but the rim edge decides it and its flange width is assumed: measure it",
    InsetAssumed = "inside the limit, but an inset follows from a backspacing with an assumed width of flange: read the inset, or measure the rim over its edges",
    MeasuredSoft = "inside the limit, but the gap was measured beside an under-inflated tire: measure it again at placard pressure",
    LargerOfSameSize = "nothing changes in size, but a new tire may be larger than the one that was measured",
    InsideAtNominalOnly = "inside the limit at nominal size, not at the worst case of tolerance and measurement",
    Outside = "outside the limit even at nominal size",
    Assumed = "inside the limit, but it rests on what is only assumed: confirm that",
    Unchanged = "the same as the original",

    DiametersAgree = "tire and wheel have the same nominal rim diameter",
    DiametersDiffer = "tire and wheel have different nominal rim diameters: never try to mount them, it can kill",
    SeatsDiffer = "tire and wheel have different bead seats: never try to mount them, it can kill",

    RimInMakersRange = "inside the tire maker's rim range",
    RimOutsideMakersRange = "outside the tire maker's rim range",
    RimInStandardsRange = "inside the rim widths that a standard permits; the maker's range rules",
    RimOutsideStandardsRange = "outside the rim widths that a standard permits; the maker's range rules",
    RimImpossible = "no tire of this width is made for a rim so narrow or so wide: its maker's range is required",
    RimWellInEstimate = "inside the estimated rim range by half an inch or on the measuring rim; the maker's range rules",
    RimNearEndOfEstimate = "within half an inch of an end of the estimated rim range; the maker's range is required",
    RimOutsideEstimate = "outside the estimate; the maker's range is required",

    LoadCarried = "the load index carries the greatest load, with the factors of speed, camber and use",
    LoadNotCarried = "the tire is overloaded at the greatest axle load, with the factors of speed, camber and use",
    SpigotShort = "the spacer leaves less of the spigot in the bore than it takes to centre the wheel",
    CapacityKept = "carries no less than the original tire at its placard pressure",
    CapacityLost = "carries less than the original tire at its placard pressure",
    UnchangedBelowPlacard = "the same tire at the same pressure, which is below the maker's placard",
    LoadIndexLower = "the load index is below the original's",
    CapacityKeptLowerIndex = "the load index is below the original's, which the caller allows, and the capacity is kept",

    PressureEnough = "the intended pressures carry the loads and stay below the permitted maximum",
    PressureOnPlacard = "tire, load index and version are the original's at the vehicle maker's placard pressure",
    PressureTooLowNormal = "the pressure for normal use does not carry the normal load",
    PressureTooLowFull = "the pressure for full load does not carry the greatest load at top speed",
    PressureTooHigh = "a pressure is above the permitted maximum of tire or wheel",
    PressureAboveReference = "a pressure is above the reference pressure, and the maximum molded on the tire is not known",
    PressureAbovePlacard = "above the maker's placard, and nothing here says what pressure this tire bears: read it on the tire",
    PressureOfTwo = "the letter of the load range leaves two reference pressures, and they disagree: the figure on the tire rules",
    FromMemoryOnly = "outside the limit by a remembered table alone, which condemns nothing: take the figure from the tire's maker",
    PressureByLetter = "enough by the default reference pressure of the load range letter; the figure on the tire rules",
    PressureBelowFloor = "below the least pressure that a passenger tire may run at, whatever its load",
    PressureWrongByBoth = "too much by one of the two reference pressures that the load range letter leaves, too little by the other",
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
    SpareOfOneSize = "the spare is of the size of the tire it runs beside",
    SpareTurnsAlike = "spare and the tire it runs beside turn nearly alike",
    SpareTurnsOtherwise = "spare and the tire it runs beside turn differently, more than the drive or the control systems bear",
    SpareOnDrivenAxle = "spare and the tire it runs beside turn differently: the differential of the driven axle works all the way",
    SpareTemporary = "a temporary spare differs by design: one at a time, slowly, and no further than to a repair",
    SpareOtherSize = "spare and the tire it runs beside turn differently: no further than to a repair",
    SpareStructure = "spare and the tire it runs beside have different structures",
    SpareArrow = "the rotation arrow of the spare is right on one side only: no further than to a repair on the other",
    SpareInPair = "tires of a pair must be of one size: the larger bears the load of both",

    HolesAgree = "the holes lie on the bolt circle of what they are held to",
    HolesDiffer = "the holes do not lie on the bolt circle of what they are held to",
    HolesNearMiss = "a near miss: every hole is off by half the difference; it seems to go on and does not seat",
    HoleCountDiffers = "wheel and hub have different numbers of holes",

    HubCentric = "the spigot centres the wheel",
    RingCentres = "the bore is larger than the spigot and a ring fills it",
    RingThick = "the bore is larger than the spigot by more than a ring usually fills: its wall must be made to measure",
    BoreReachesHoles = "the bore reaches into the bolt holes: bore, bolt circle or thread is misread",
    RingNeeded = "the bore is larger than the spigot: a ring is needed, or the seats alone centre the wheel",
    BoreTooSmall = "the bore is smaller than the spigot: it cannot go on",
    NoCentring = "neither spigot nor seats centre the wheel",
    SpacerHidesSpigot = "the spacer is as thick as the spigot is high: the spigot no longer centres the wheel",

    HubsOwnFasteners = "the hub's own fasteners are kept",
    ThreadsAgree = "the fasteners have the thread that they meet",
    ThreadsDiffer = "the fasteners do not have the thread that they meet: they strip or come loose",
    ClassLower = "the fasteners have a lower property class than the original ones",
    TorqueAboveProof = "the torque may load the fastener above the proof load of its class, even at usual friction",
    TorqueNearProof = "the torque may load a well lubricated fastener above the proof load of its class",
    FastenerKindDiffers = "bolts for a hub with studs, or nuts for a hub without",
    SeatShapesAgree = "fasteners and wheel have the same seat",
    SeatShapesDiffer = "fasteners and wheel have different seats: they cannot hold their clamp load",

    StudsStandOut = "the hub's studs stand out of the adaptor: the wheel lies flat only if it has room for them",
    TurnsEnough = "enough of the thread holds",
    TurnsTooFew = "too little of the thread holds: it can strip or work loose",
    BoltDoesNotReach = "the fastener does not reach the thread",
    BoltBottoms = "the bolt is longer than the hole is deep: it bottoms and clamps nothing",

    TouchedByTheFigures = "no nearer than the original wheel, which touches by these figures: measure again",
    InnerJointNotJudged = "the wheel's joint is right; the one between adaptor and hub is not judged here: its thread, seats and turns must be right too",
    SpigotThroughAdaptor = "the hub's spigot comes out of the adaptor, and the wheel's bore is too small for it",
    DepthNotKnown = "deeper than the thread is wide, and the depth of the hole is not known: the bolt may bottom",
    BrakeClears = "the brake clears the barrel and the spokes",
    BrakeClearsStandard = "the brake clears the largest barrel the rim standard allows; the wheel's own may be smaller: measure it",
    Unbraked = "the axle has no brakes",
    BarrelContradicts = "the barrel is said to be larger than the bead seat of its rim: one of the two is misread",
    DiscUnusual = "the disc is larger than is usual under a rim of this size: measure the caliper and the barrel",
    DiscDoesNotFit = "the disc with its caliper does not go inside the barrel",
    BarrelTouchesBrake = "the rim's barrel comes too close to the brake",
    SpokesTouchBrake = "the spokes come too close to the caliper",

    HumpsHold = "humps keep the beads on their seats",
    SteepSeatHolds = "the steep seat keeps the beads in place; such rims have no humps",
    DiagonalNeedsNoHump = "a diagonal tire does not ask for humps",
    NoHump = "no hump is stamped: a tubeless radial tire may leave its seat in a turn; look for the humps",
    TubeTypeRim = "a rim of several pieces does not hold air: such a tire needs a tube and its maker's consent",
    ExtendedHumpAdvised = "a run-flat tire is meant for extended humps (EH, EH2): its maker's word is needed",

    GroundClearanceKept = "the ground clearance does not fall, even with the smallest tire of its size",
    GroundClearanceLeft = "enough is left under the vehicle",
    GroundClearanceGone = "too little is left under the vehicle",
    HeightFree = "no limit of ride height is stated",
    NoSpindleHub = "a motorcycle's wheel turns on a spindle: it has no bolted hub",
    NotSteered = "a trailer's axle follows: nothing steers its wheels",
    NoTrack = "a motorcycle runs in one track: it has neither width of track nor scrub radius",
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
    ClearsStandardBarrel = "clear, if the barrel is the largest that the standard allows: measure it",
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
    DateCodeFalse = "the date code names a week more than seven days after the day: it is misread or false, and the age is not known",
    DateCodeAhead = "the date code names a week that is yet to come, by whatever rule its maker counts: look at the code and the day again",
    WeekOfIsoOnly = "young enough if its maker counts ISO weeks, for only they have that week 53; else the date code is misread or false",
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
