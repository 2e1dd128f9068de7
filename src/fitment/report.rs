//! The result of an assessment: a fixed-size value.

use super::approach::Approach;
use super::check::{Check, CheckId, Missing, Position, Reason, Verdict};
use super::pressures::Pressures;
use super::value::{Bound, Tag, Value};
use crate::Citation;
use crate::record::words;

/// Room for every check on both axles and the vehicle, with more to come.
const ROWS: usize = 128;

/// A finding in 32 bytes. Measured value and bounds share one kind of reading; of a finding that was not
/// assessed, `measured` and `first` hold the missing inputs, and of one with a single bound, `second` the
/// nominal.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
struct Row {
    measured: u64,
    first: u64,
    second: u64,
    tag: Tag,
    bound: BoundTag,
    id: CheckId,
    place: Position,
    verdict: Verdict,
    reason: Reason,
    citation: Citation,
}

#[derive(Clone, Copy, PartialEq, Eq, Hash)]
#[repr(u8)]
enum BoundTag {
    None,
    AtMost,
    AtLeast,
    /// One bound, with the nominal value beside it.
    AtMostNominal,
    AtLeastNominal,
    Between,
    Equals,
}

const _: () = assert!(size_of::<Row>() <= 32);

impl Row {
    const EMPTY: Self = Self {
        measured: 0,
        first: 0,
        second: 0,
        tag: Tag::None,
        bound: BoundTag::None,
        id: CheckId::BeadDiameter,
        place: Position::Vehicle,
        verdict: Verdict::NotAssessed,
        reason: Reason::InputMissing,
        citation: Citation::DESIGNATION,
    };

    fn pack(check: &Check) -> Self {
        let bits = |reading: Value| reading.pack().1;
        let (bound, first, second) = match (check.limit, check.nominal) {
            (None, _) => (BoundTag::None, 0, 0),
            (Some(Bound::AtMost(r)), None) => (BoundTag::AtMost, bits(r), 0),
            (Some(Bound::AtMost(r)), Some(n)) => (BoundTag::AtMostNominal, bits(r), bits(n)),
            (Some(Bound::AtLeast(r)), None) => (BoundTag::AtLeast, bits(r), 0),
            (Some(Bound::AtLeast(r)), Some(n)) => (BoundTag::AtLeastNominal, bits(r), bits(n)),
            (Some(Bound::Between(a, b)), _) => (BoundTag::Between, bits(a), bits(b)),
            (Some(Bound::Equals(r)), _) => (BoundTag::Equals, bits(r), 0),
        };
        let (tag, measured, first) = match check.measured {
            Some(reading) => {
                let (tag, measured) = reading.pack();
                (tag, measured, first)
            }
            // What does not apply misses nothing.
            None => (Tag::None, check.missing.0 as u64, (check.missing.0 >> 64) as u64),
        };
        Self {
            measured,
            first,
            second,
            tag,
            bound,
            id: check.id,
            place: check.place,
            verdict: check.verdict,
            reason: check.reason,
            citation: check.citation,
        }
    }

    fn unpack(&self) -> Check {
        let read = |bits| Value::unpack(self.tag, bits);
        let limit = match self.bound {
            BoundTag::None => None,
            BoundTag::AtMost | BoundTag::AtMostNominal => read(self.first).map(Bound::AtMost),
            BoundTag::AtLeast | BoundTag::AtLeastNominal => read(self.first).map(Bound::AtLeast),
            BoundTag::Between => read(self.first).zip(read(self.second)).map(|(a, b)| Bound::Between(a, b)),
            BoundTag::Equals => read(self.first).map(Bound::Equals),
        };
        let nominal = match self.bound {
            BoundTag::AtMostNominal | BoundTag::AtLeastNominal => read(self.second),
            _ => None,
        };
        let not_assessed = self.verdict == Verdict::NotAssessed;
        Check {
            id: self.id,
            place: self.place,
            verdict: self.verdict,
            reason: self.reason,
            citation: self.citation,
            measured: read(self.measured),
            nominal,
            limit,
            missing: if not_assessed {
                Missing(u128::from(self.first) << 64 | u128::from(self.measured))
            } else {
                Missing::default()
            },
        }
    }
}

words! {
    /// A consequence of a change that has no limit.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::EffectId::Odometer.name(), "odometer");
    /// ```
    EffectId {
        /// Distance rolled in a turn of the driven wheels: engine speed changes the other way.
        Gearing = "gearing",
        /// True distance in percent of the distance the odometer counts.
        Odometer = "odometer",
        /// What one wheel with its tire adds to the vehicle's mass by turning.
        RotatingInertia = "rotating_inertia",
        /// The speed at which water begins to lift the tires.
        Hydroplaning = "hydroplaning",
        /// The pressure at which a monitor warns at the latest: by the placard, and as it should be with the
        /// intended pressure.
        PressureMonitoring = "pressure_monitoring",
    }
}

impl EffectId {
    /// What to make of it.
    ///
    /// ```
    /// use beadseat::fitment::EffectId;
    /// assert!(EffectId::Odometer.caution().contains("service"));
    /// ```
    pub const fn caution(self) -> &'static str {
        match self {
            Self::Gearing => {
                "a longer turn lowers engine speed and pull in every gear, a shorter one raises them"
            }
            Self::Odometer => {
                "distances counted, and service intervals and consumption computed from them, change by this"
            }
            Self::RotatingInertia => {
                "felt in every start and stop, on top of the mass itself; an estimate that spreads tire and wheel evenly"
            }
            Self::Hydroplaning => {
                "an estimate of onset in water deeper than the tread drains, at placard and intended pressure; never a safe speed"
            }
            Self::PressureMonitoring => {
                "the warning stays tied to the placard: with another intended pressure it comes late or for nothing"
            }
        }
    }
}

/// What a change brings that is neither good nor bad by a limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effect {
    pub(crate) id: EffectId,
    pub(crate) place: Position,
    pub(crate) before: Value,
    pub(crate) after: Value,
}

impl Effect {
    /// Which.
    pub const fn id(&self) -> EffectId {
        self.id
    }

    /// Where.
    pub const fn position(&self) -> Position {
        self.place
    }

    /// With the original setup.
    pub const fn before(&self) -> Value {
        self.before
    }

    /// With the proposed one.
    pub const fn after(&self) -> Value {
        self.after
    }
}

#[derive(Clone, Copy, PartialEq, Eq, Hash)]
struct EffectRow {
    id: EffectId,
    place: Position,
    tag: Tag,
    before: u64,
    after: u64,
}

const EFFECTS: usize = 8;

words! {
    /// Something every reader of a report must know, where it applies.
    ///
    /// ```
    /// use beadseat::fitment::Caution;
    /// assert!(Caution::Seating.text().contains("275 kPa"));
    /// ```
    Caution {
        /// Different bead seats.
        NeverMount = "never_mount",
        /// Whose word counts.
        Placard = "placard",
        /// Local law.
        LocalLaw = "local_law",
        /// Mounting.
        Seating = "seating",
        /// Clamp load.
        Retorque = "retorque",
        /// All pressures are cold.
        ColdPressure = "cold_pressure",
        /// Spacers and changed inset.
        Bearings = "bearings",
        /// What a spacer takes from the thread.
        SpacerThread = "spacer_thread",
        /// Bolts that may be too long.
        Bottoming = "bottoming",
        /// Two joints instead of one.
        Adaptor = "adaptor",
        /// Multi-piece rims.
        MultiPiece = "multi_piece",
        /// Static clearances do not show lock and jounce.
        StaticOnly = "static_only",
        /// Clearance at lock and jounce is that of a description.
        AsDescribed = "as_described",
        /// No camber given.
        CamberAssumed = "camber_assumed",
        /// Towing.
        Towing = "towing",
        /// Treads that differ.
        UnevenTread = "uneven_tread",
        /// A pressure that not every valve bears.
        Valve = "valve",
    }
}

impl Caution {
    /// The sentence.
    pub const fn text(self) -> &'static str {
        match self {
            Self::NeverMount => {
                "Nominal rim diameters and bead seats must match exactly. Forcing a tire onto another rim can kill."
            }
            Self::Placard => {
                "The vehicle maker's placard, the tire maker's data and the wheel maker's certificate override every estimate here."
            }
            Self::LocalLaw => "Local law and inspection decide what may be driven on the road.",
            Self::Seating => {
                "Mounting is work for trained people: stand clear while beads seat, and never exceed the seating pressure \
                 stated for the tire (common practice 275 kPa)."
            }
            Self::Retorque => {
                "Tighten in star order to the maker's torque, the wheel unloaded for the first stages, and check again \
                 after 50 to 100 km."
            }
            Self::ColdPressure => "All pressures are cold; never let air out of a hot tire.",
            Self::Bearings => {
                "Spacers and a changed inset load bearings, studs and steering differently from what was built."
            }
            Self::SpacerThread => {
                "A spacer takes thread engagement away: count the turns by hand, on every fastener, before tightening."
            }
            Self::Bottoming => {
                "A bolt that is too long bottoms in the hub, or touches what turns behind it: screw it in by hand without the wheel and measure."
            }
            Self::Adaptor => {
                "An adaptor has two joints: its own fasteners must lie below its face, and both are tightened and checked again."
            }
            Self::MultiPiece => {
                "Rims of several pieces are for trained people with a restraint only (29 CFR 1910.177)."
            }
            Self::StaticOnly => {
                "Where no nearest approach is given, clearances are static, at ride height and straight ahead: turn to full lock and \
                 compress before driving."
            }
            Self::AsDescribed => {
                "The nearest approach is to what was described, and the tire's shape is assumed: turn to full lock and compress \
                 before driving, and look."
            }
            Self::CamberAssumed => "No camber was given: load and pressure hold for camber up to 2 degrees.",
            Self::UnevenTread => {
                "Treads differ by more than 2/32 in, on one axle or with all-wheel drive on all four: the vehicle's manual says \
                 how much it bears, and the deeper pair belongs on the rear axle."
            }
            Self::Valve => {
                "A pressure above 450 kPa (65 psi) is more than a snap-in valve bears: see what valves are in the wheels."
            }
            Self::Towing => "Towing: the trailer's nose weight belongs in the axle load.",
        }
    }
}

/// The findings of an assessment, with its effects and cautions.
///
/// A plain value of fixed size: it allocates nothing and can be copied and compared.
/// [`assess`](super::assess) makes it; `Display` lays it out for a terminal of 100 columns.
#[derive(Clone, Copy, PartialEq)]
pub struct Report {
    rows: [Row; ROWS],
    effects: [Option<EffectRow>; EFFECTS],
    pressures: [Option<Pressures>; 2],
    approaches: [Option<Approach>; 4],
    len: u8,
    cautions: u32,
}

impl Report {
    pub(super) const ROWS: usize = ROWS;

    pub(super) const fn new() -> Self {
        Self {
            rows: [Row::EMPTY; ROWS],
            effects: [None; EFFECTS],
            pressures: [None; 2],
            approaches: [None; 4],
            len: 0,
            cautions: 0,
        }
    }

    pub(super) fn push(&mut self, check: &Check) {
        if let Some(row) = self.rows.get_mut(usize::from(self.len)) {
            *row = Row::pack(check);
            self.len += 1;
        }
    }

    pub(super) fn push_effect(&mut self, effect: &Effect) {
        if let Some(free) = self.effects.iter_mut().find(|e| e.is_none()) {
            let (tag, before) = effect.before.pack();
            *free = Some(EffectRow {
                id: effect.id,
                place: effect.place,
                tag,
                before,
                after: effect.after.pack().1,
            });
        }
    }

    pub(super) fn push_pressures(&mut self, pressures: Option<Pressures>) {
        if let Some(free) = self.pressures.iter_mut().find(|p| p.is_none()) {
            *free = pressures;
        }
    }

    pub(super) fn push_approach(&mut self, approach: Option<Approach>) {
        if let Some(free) = self.approaches.iter_mut().find(|a| a.is_none()) {
            *free = approach;
        }
    }

    /// The nearest approach of each wheel to what stands around it, where that was assessed.
    pub fn approaches(&self) -> impl Iterator<Item = Approach> {
        self.approaches.iter().flatten().copied()
    }

    /// The pressures that each axle's proposed setup needs.
    pub fn pressures(&self) -> impl Iterator<Item = Pressures> {
        self.pressures.iter().flatten().copied()
    }

    pub(super) const fn caution(&mut self, caution: Caution) {
        self.cautions |= 1 << caution as u32;
    }

    /// Every finding, front axle first, in the order of [`CheckId`].
    pub fn checks(&self) -> impl Iterator<Item = Check> {
        self.rows.iter().take(usize::from(self.len)).map(Row::unpack)
    }

    /// The finding of one check at one place.
    pub fn get(&self, id: CheckId, place: Position) -> Option<Check> {
        self.rows.iter().take(usize::from(self.len)).find(|r| r.id == id && r.place == place).map(Row::unpack)
    }

    /// Effects without a verdict.
    pub fn effects(&self) -> impl Iterator<Item = Effect> {
        self.effects.iter().flatten().filter_map(|row| {
            Some(Effect {
                id: row.id,
                place: row.place,
                before: Value::unpack(row.tag, row.before)?,
                after: Value::unpack(row.tag, row.after)?,
            })
        })
    }

    /// The cautions that apply, the gravest first.
    pub fn cautions(&self) -> impl Iterator<Item = Caution> + use<> {
        let bits = self.cautions;
        Caution::ALL.iter().copied().filter(move |&c| bits & (1 << c as u32) != 0)
    }

    /// Whether every vital check ([`CheckId::is_vital`]) was assessed, or does not apply, on every axle.
    pub fn is_complete(&self) -> bool {
        self.checks().all(|c| !(c.id.is_vital() && c.verdict == Verdict::NotAssessed))
            && CheckId::ALL.iter().filter(|id| id.is_vital()).all(|&id| self.checks().any(|c| c.id == id))
    }

    /// The verdict on the whole: the worst of the findings, and at best [`Verdict::Marginal`] when
    /// incomplete.
    pub fn overall(&self) -> Verdict {
        let incomplete = if self.is_complete() { Verdict::Within } else { Verdict::Marginal };
        let graver = |a: Verdict, b: Verdict| if b.gravity() > a.gravity() { b } else { a };
        self.rows.iter().take(usize::from(self.len)).map(|row| row.verdict).fold(incomplete, graver)
    }
}

impl core::fmt::Debug for Report {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_list().entries(self.checks()).finish()
    }
}
