//! What it takes to come at a fact: tools, and what must be done to the vehicle.

use crate::record::words;

words! {
    /// What a fact is taken with. What needs none is seen, or known.
    ///
    /// ```
    /// use beadseat::fitment::measure::{Input, Tool};
    /// assert_eq!(Input::HubThread.tools(), [Tool::Caliper, Tool::ThreadGauge]);
    /// assert!(Input::SideMarks.tools().is_empty());
    /// ```
    Tool {
        /// A caliper, with a depth rod.
        Caliper = "caliper",
        /// A tape measure or a steel rule.
        Tape = "tape",
        /// A straightedge, or a square where an angle is wanted.
        Straightedge = "straightedge",
        /// A gauge for gaps or depths; for gaps, stiff wire cut to length will do.
        Gauge = "gauge",
        /// Scales that carry a wheel, or an axle.
        Scales = "scales",
        /// A gauge for the pitch of a thread.
        ThreadGauge = "thread_gauge",
        /// What a maker or an authority wrote: registration, plate, placard, manual, table.
        Papers = "papers",
    }
}

impl Tool {
    /// Its name for reading.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::measure::Tool::ThreadGauge.words(), "thread gauge");
    /// ```
    pub const fn words(self) -> &'static str {
        match self {
            Self::ThreadGauge => "thread gauge",
            other => other.name(),
        }
    }
}

words! {
    /// What must be done to a vehicle to come at a fact.
    ///
    /// ```
    /// use beadseat::fitment::measure::{Input, Preparation};
    /// assert_eq!(Input::BrakeEnvelope.access(), Preparation::WheelOff);
    /// assert_eq!(Input::InnerClearance.access(), Preparation::OnGround);
    /// ```
    Preparation {
        /// Nothing: it is read, known, or taken from a part in the hand.
        Anywhere = "anywhere",
        /// The vehicle stands on its wheels at ride height.
        OnGround = "on_ground",
        /// The vehicle is lifted and the wheel is off.
        WheelOff = "wheel_off",
        /// No scenario can hold it: only the makers of tire and vehicle know.
        Elsewhere = "elsewhere",
    }
}

impl Preparation {
    /// What to see to first; nothing where the vehicle is not touched. Common practice, no source.
    ///
    /// ```
    /// use beadseat::fitment::measure::Preparation;
    /// assert!(Preparation::WheelOff.safety().is_some_and(|words| words.contains("stands")));
    /// assert_eq!(Preparation::Anywhere.safety(), None);
    /// ```
    pub const fn safety(self) -> Option<&'static str> {
        match self {
            Self::Anywhere | Self::Elsewhere => None,
            Self::OnGround => Some(
                "The vehicle stands on firm level ground, engine off, wheels chocked; nobody reaches under it while it is on a jack.",
            ),
            Self::WheelOff => Some(
                "The vehicle stands on firm level ground, engine off, the wheels that stay down chocked; it is set on stands before a wheel comes off, never left on the jack alone.",
            ),
        }
    }
}
