//! The facts that checks cannot do without, and how to come by them.

use core::fmt;

use super::preparation::{Preparation, Tool};
use crate::fitment::position::Position;

macro_rules! inputs {
    ($($variant:ident = $key:literal, $how:literal, [$($tool:ident),*] $access:ident;)*) => {
        /// A fact that a check could not do without.
        ///
        /// ```
        /// use beadseat::fitment::Position;
        /// use beadseat::fitment::measure::Input;
        /// assert_eq!(Input::HubSpigot.at(Position::Front).to_string(), "vehicle.front.hub.spigot_mm");
        /// assert!(Input::HubSpigot.how().contains("caliper"));
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[non_exhaustive]
        pub enum Input { $(#[doc = concat!("`", $key, "`: ", $how, ".")] $variant,)* }

        impl Input {
            /// Every input there is, in the order of the list of measurements.
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
            pub const fn access(self) -> Preparation {
                match self { $(Self::$variant => Preparation::$access,)* }
            }

            /// Where it goes in a scenario, for an axle. `Display` is the path.
            pub const fn at(self, place: Position) -> InputPath {
                InputPath { input: self, place, keys: Keys::OF_TWO_AXLES }
            }
        }
    };
}

/// By which keys a scenario names the axle behind: as its rear axle, or as one of the further ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) struct Keys {
    further: Option<u8>,
    /// What drives the vehicle is told, and not whether this axle is driven.
    asks_whether_driven: bool,
}

impl Keys {
    /// Of a report on the front and the rear axle.
    pub(crate) const OF_TWO_AXLES: Self = Self { further: None, asks_whether_driven: false };

    /// Of a report on one of the further axles, counted from nothing.
    #[cfg(feature = "serde")]
    pub(crate) fn of_further(number: usize, asks_whether_driven: bool) -> Self {
        Self { further: u8::try_from(number).ok(), asks_whether_driven }
    }

    pub(crate) const fn is_of_further(self) -> bool {
        self.further.is_some()
    }

    /// The number of the further axle that a place is on.
    pub(crate) fn further_at(self, place: Position) -> Option<u8> {
        self.further.filter(|_| place.axle() == Position::Rear)
    }
}

/// The path of an [`Input`] in a scenario.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct InputPath {
    input: Input,
    place: Position,
    keys: Keys,
}

impl InputPath {
    pub(crate) const fn by(self, keys: Keys) -> Self {
        Self { keys, ..self }
    }
}

impl fmt::Display for InputPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.input.key().split_once('*'), self.place.axle_and_end()) {
            (Some((before, after)), Some((axle, end))) => {
                // What is asked of the proposed setup is asked of the spare, which stands for it.
                match (before, self.keys.further_at(self.place)) {
                    ("vehicle.", Some(number)) => write!(f, "more_axles[{number}].axle")?,
                    (before, Some(number)) => {
                        write!(f, "more_axles[{number}].{}", before.trim_end_matches('.'))?;
                    }
                    ("proposed.", _) if self.place.is_spare() => f.write_str("spare")?,
                    (before, None) => write!(f, "{before}{axle}")?,
                }
                match (after.split_once('#'), end) {
                    (Some((between, behind)), Some(end)) => write!(f, "{between}{end}{behind}"),
                    // A motorcycle's tire is described from either side.
                    (Some((between, behind)), None) => write!(f, "{between}left{behind}"),
                    _ => f.write_str(after),
                }
            }
            _ => match self
                .keys
                .further
                .filter(|_| self.input == Input::Drive && self.keys.asks_whether_driven)
            {
                Some(number) => write!(f, "more_axles[{number}].driven"),
                None => f.write_str(self.input.key()),
            },
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
    SteeringAxis = "vehicle.*.steering", "take scrub radius and kingpin inclination from the maker's alignment data, or tape where two points of the axis are from the middle of the hub's face, such as both ball joints (axis_mm)", [Papers, Tape] Anywhere;
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
    WheelRatingAtDiameter = "proposed.*.wheel_rating_kg (for this tire diameter)", "the rating given holds up to wheel_rating_diameter_mm, and the tire is larger: ask the wheel's maker", [Papers] Elsewhere;
    WheelRating = "proposed.*.wheel_rating_kg", "read it on the back of the wheel, or in its maker's certificate", [] Anywhere;
    WheelBoltCircle = "proposed.*.wheel (bolt circle)", "count the holes and measure between centres with a caliper", [Caliper] Anywhere;
    WheelBore = "proposed.*.wheel (bore)", "measure the bore from behind with a caliper", [Caliper] Anywhere;
    WheelSeat = "proposed.*.seat", "look at the seats in the wheel, or in its maker's papers", [] Anywhere;
    WheelInset = "proposed.*.wheel (inset)", "read ET behind the spokes, or measure the backspacing", [Straightedge, Tape] Anywhere;
    OriginalInset = "original.*.wheel (inset)", "wheel off, read ET behind the spokes, or measure the backspacing", [Straightedge, Tape] WheelOff;
    FastenerThread = "proposed.*.fasteners.thread", "measure a fastener with a caliper and a thread gauge", [Caliper, ThreadGauge] Anywhere;
    FastenerKind = "proposed.*.fasteners.kind", "say whether they are bolts, or nuts for studs", [] Anywhere;
    FastenerClass = "proposed.*.fasteners.class", "read the property class on the head of a bolt or the end of a stud, as 10.9", [] Anywhere;
    OriginalFastenerClass = "original.*.fasteners.class", "read the property class on the head of a bolt or the end of a stud, as 10.9", [] OnGround;
    FastenerSeat = "proposed.*.fasteners.seat", "look at the seat of the fasteners that come with the wheel", [] Anywhere;
    Obstacles = "vehicle.*.space.obstacles", "wheels straight, on the floor: tape, for each body near the wheel, how far ahead of, outboard of and above the middle of the hub's mounting face it is, or the gap from the tire to it (gap_mm); an arm or a rod that carries one is longer than it travels, and only independent wheels have a rod", [Tape, Straightedge] OnGround;
    Travel = "vehicle.*.travel", "wheel off, body on stands: tape how far the hub hangs below its ride height, noted before on the floor, and how far it rises above that to the bump stop, or take the maker's data; what is gained in camber, toe or track needs 10 mm of jounce", [Tape] WheelOff;
    AxleType = "vehicle.*.axle_type", "look under the vehicle: a beam joins both wheels, or each moves by itself", [] OnGround;
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
    Barrel = "proposed.*.barrel_radius_mm", "least inner radius of the rim, inside its bead seat: half the inside diameter at the well", [Caliper, Tape] Anywhere;
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

    pub(crate) const fn is_none(self) -> bool {
        self.0 == 0
    }

    /// Notes an input that is not there; gives what is, or what stands for it.
    pub(crate) fn or<T>(&mut self, known: Option<T>, input: Input, stand_in: T) -> T {
        known.unwrap_or_else(|| {
            self.add(input);
            stand_in
        })
    }

    pub(crate) const fn and(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    pub(crate) fn inputs(self) -> impl Iterator<Item = Input> + use<> {
        let mut left = self.0;
        core::iter::from_fn(move || {
            let next = Input::ALL.get(left.trailing_zeros() as usize)?;
            left &= left - 1;
            Some(*next)
        })
    }
}

impl From<Input> for Missing {
    fn from(input: Input) -> Self {
        Self(1 << input as u32)
    }
}

const _: () = assert!(Input::ALL.len() <= 128);
