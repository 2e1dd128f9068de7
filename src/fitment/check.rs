//! One finding of an assessment, and the words it is made of.

mod reason;

use core::fmt;

use super::value::{Bound, Value};
use crate::Citation;
use crate::record::words;

pub use reason::Reason;

pub(super) use super::measure::{Input, Missing};
pub(super) use super::position::Position;

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
        /// How much the change widens or narrows the track.
        Track = "track",
        /// Change of scrub radius.
        ScrubRadius = "scrub_radius",
        /// The gap that is left outboard of the wheel.
        OuterClearance = "outer_clearance",
        /// The gap that is left inboard of the wheel.
        InnerClearance = "inner_clearance",
        /// The gap that is left above the tire.
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

words! {
    /// The answer of a check, or of a whole report.
    ///
    /// It has no order: what was not assessed is neither better nor worse than what was.
    ///
    /// ```
    /// use beadseat::fitment::Verdict;
    /// assert_eq!(Verdict::NotAssessed.name(), "not_assessed");
    /// assert_eq!("beyond".parse(), Ok(Verdict::Beyond));
    /// ```
    Verdict closed {
        /// Inside the limit at the worst case.
        Within = "within",
        /// Inside at nominal but not at the worst case, or decided by an estimate within its error.
        Marginal = "marginal",
        /// It is outside the limit, at nominal size too.
        Beyond = "beyond",
        /// An input is missing.
        NotAssessed = "not_assessed",
        /// A stated fact says that the question does not arise, as the spacing of pairs on single wheels.
        NotApplicable = "not_applicable",
    }
}

impl Verdict {
    /// How grave an answer is among those that were given: one that was not given has no gravity.
    pub(super) const fn gravity(self) -> u8 {
        match self {
            Self::NotAssessed | Self::NotApplicable => 0,
            Self::Within => 1,
            Self::Marginal => 2,
            Self::Beyond => 3,
        }
    }

    /// The graver of two answers.
    pub(crate) const fn graver(self, other: Self) -> Self {
        if other.gravity() > self.gravity() { other } else { self }
    }
}

/// One finding: a check, where it was made, what was measured, what it was held against, and why.
///
/// `Display` is one line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Check {
    pub(crate) id: CheckId,
    pub(crate) place: Position,
    pub(crate) verdict: Verdict,
    pub(crate) reason: Reason,
    pub(crate) citation: Citation,
    pub(crate) outcome: Outcome,
}

/// What a finding rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Outcome {
    /// A value held against a bound.
    Measured { worst: Value, nominal: Option<Value>, limit: Bound },
    /// Facts that no figure stands for.
    Stated,
    /// Nothing, for want of these.
    Missing(Missing),
}

impl Check {
    /// Which question the check answers.
    pub const fn id(&self) -> CheckId {
        self.id
    }

    /// What was checked: an axle, its end, or the whole vehicle.
    pub const fn position(&self) -> Position {
        self.place
    }

    /// The verdict: the answer of the check.
    pub const fn verdict(&self) -> Verdict {
        self.verdict
    }

    /// The reason for the verdict.
    pub const fn reason(&self) -> Reason {
        self.reason
    }

    /// Whose limit, or whose rule; nothing of a check that was not assessed or does not apply.
    pub const fn citation(&self) -> Option<Citation> {
        match self.verdict {
            Verdict::NotAssessed | Verdict::NotApplicable => None,
            _ => Some(self.citation),
        }
    }

    /// What was measured, at its worst case; nothing if an input is missing.
    pub const fn measured(&self) -> Option<Value> {
        match self.outcome {
            Outcome::Measured { worst, .. } => Some(worst),
            Outcome::Stated | Outcome::Missing(_) => None,
        }
    }

    /// The same at nominal size, where tolerance or measurement widens it.
    pub const fn nominal(&self) -> Option<Value> {
        match self.outcome {
            Outcome::Measured { nominal, .. } => nominal,
            Outcome::Stated | Outcome::Missing(_) => None,
        }
    }

    /// What it was held against.
    pub const fn limit(&self) -> Option<Bound> {
        match self.outcome {
            Outcome::Measured { limit, .. } => Some(limit),
            Outcome::Stated | Outcome::Missing(_) => None,
        }
    }

    /// How far inside the limit the measured value is, to the nearer bound; negative outside. Nothing
    /// for designations, which agree or do not.
    pub fn margin(&self) -> Option<Value> {
        Some(self.measured()?.of_same_kind(self.margin_number()?))
    }

    /// The margin in the unit of the measured value.
    pub(crate) fn margin_number(&self) -> Option<f64> {
        self.limit()?.margin(self.measured()?)
    }

    /// The inputs that were missing.
    pub fn missing(&self) -> impl Iterator<Item = Input> + use<> {
        self.lacks().inputs()
    }

    pub(crate) const fn lacks(&self) -> Missing {
        match self.outcome {
            Outcome::Missing(missing) => missing,
            Outcome::Measured { .. } | Outcome::Stated => Missing(0),
        }
    }
}

impl fmt::Display for Check {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}: {}", self.place, self.id, self.verdict)?;
        if let (Some(measured), Some(limit)) = (self.measured(), self.limit()) {
            write!(f, ", {measured} ({limit})")?;
        }
        write!(f, ": {}", self.reason)?;
        for (n, input) in self.missing().enumerate() {
            write!(f, "{}{}", if n == 0 { " (" } else { ", " }, input.at(self.place))?;
        }
        if !self.lacks().is_none() {
            f.write_str(")")?;
        }
        Ok(())
    }
}
