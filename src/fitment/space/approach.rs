//! Where a moving wheel comes nearest to what stands around it.

use core::fmt;

use crate::fitment::check::Position;
use crate::fitment::value::{In, Value};
use crate::sweep::{Part, Pose, Swept};
use crate::text::Name;
use crate::unit_system::UnitSystem;
use crate::units::{Angle, Length, in_deg, in_mm, mm};
use crate::vehicle::BodyKind;

/// The nearest approach of a wheel to a body around it, over all steer and travel, and what is left there at worst.
///
/// `Display` is one line: `12.4 mm from the tread to the frame rail at 31° inner lock, 40 mm jounce`, or where it
/// touches `the tread 3.1 mm into the frame rail at 31° inner lock, 40 mm jounce`.
///
/// ```
/// use beadseat::{fitment::space::Approach, scenario::Scenario};
/// let text = std::fs::read_to_string("examples/scenarios/field-survey-wagon.json")?;
/// let scenario: Scenario = serde_json::from_str(&text)?;
/// let report = scenario.assess();
/// let nearest: Approach = report.approaches().next().ok_or("no obstacle was described")?;
/// assert!(nearest.to_string().contains("mm from the"));
/// assert!(nearest.lower() <= nearest.upper());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Approach {
    place: Position,
    body: BodyKind,
    part: Part,
    lower: Length,
    upper: Length,
    pose: Pose,
    obstacle: u8,
}

impl Approach {
    /// Of what is left when the wheel moves further than the figures by an allowance.
    pub(in crate::fitment) fn new(place: Position, body: BodyKind, swept: &Swept, allowance: Length) -> Self {
        Self {
            place,
            body,
            part: swept.profile_point().part(),
            lower: swept.lower() - allowance,
            upper: swept.upper() - allowance,
            pose: swept.pose(),
            obstacle: swept.obstacle() as u8,
        }
    }

    pub(in crate::fitment) const fn at(self, place: Position) -> Self {
        Self { place, ..self }
    }

    /// The end of an axle whose wheel it is.
    pub const fn position(&self) -> Position {
        self.place
    }

    /// The body it comes nearest to.
    pub const fn body(&self) -> BodyKind {
        self.body
    }

    /// The part of the wheel that does.
    pub const fn part(&self) -> Part {
        self.part
    }

    /// What is left at worst, the figure of the swept clearance: no position is nearer, with the largest tire of its
    /// size, the uncertainty of the body, and the movement that the limits allow rubber and bushes; negative inside it. That holds for the outline of a [`Profile`](crate::sweep::Profile) whose shoulder and
    /// tread are shaped by default; the wheel's spokes are not in it.
    pub const fn lower(&self) -> Length {
        self.lower
    }

    /// The same at the position below, a tenth of a millimetre above the lower bound at most, unless the
    /// work ended before.
    pub const fn upper(&self) -> Length {
        self.upper
    }

    /// Steer there, positive when this wheel is the inner one.
    pub const fn steer(&self) -> Angle {
        self.pose.steer()
    }

    /// Travel there, positive in jounce.
    pub const fn travel(&self) -> Length {
        self.pose.travel()
    }

    /// The position of the wheel there; on a beam axle with the travel of the other wheel.
    pub const fn pose(&self) -> Pose {
        self.pose
    }

    /// Which of the bodies around that wheel it is, from 0, in the order of the vehicle: the number of
    /// [`SweptCorner::around`](super::SweptCorner::around).
    pub const fn obstacle(&self) -> usize {
        self.obstacle as usize
    }
}

/// The part in a word.
pub(in crate::fitment) const fn part_name(part: Part) -> &'static str {
    match part {
        Part::Tread => "tread",
        Part::Shoulder => "shoulder",
        Part::Sidewall => "sidewall",
        Part::Flange => "rim flange",
        Part::Barrel => "rim barrel",
    }
}

/// In the units that are asked for.
impl fmt::Display for In<Approach> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(approach, units) = self;
        let (left, part) = (approach.lower, part_name(approach.part));
        let told = |length| In(Value::Length(length), *units);
        if in_mm(left) < 0.0 {
            write!(f, "the {part} {} into the ", told(-left))?;
        } else {
            write!(f, "{} from the {part} to the ", told(left))?;
        }
        approach.write_place(f, *units)
    }
}

impl fmt::Display for Approach {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        In(*self, UnitSystem::Metric).fmt(f)
    }
}

impl Approach {
    /// The line in other units.
    ///
    /// ```
    /// use beadseat::{fitment::UnitSystem, scenario::Scenario};
    /// let text = std::fs::read_to_string("examples/scenarios/field-survey-wagon.json")?;
    /// let scenario: Scenario = serde_json::from_str(&text)?;
    /// let nearest = scenario.assess().approaches().next().ok_or("no obstacle was described")?;
    /// assert!(nearest.told_in(UnitSystem::Us).to_string().contains(" in from the"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn told_in(&self, units: UnitSystem) -> impl fmt::Display + use<> {
        In(*self, units)
    }

    /// To what it comes near, and where the wheel is then.
    fn write_place(&self, f: &mut fmt::Formatter<'_>, units: UnitSystem) -> fmt::Result {
        match self.body {
            BodyKind::Other => f.write_str("other body")?,
            body => write!(f, "{}", Name(body.name()))?,
        }
        let steer = libm::round(in_deg(self.steer()));
        match steer {
            0.0 => f.write_str(" straight ahead")?,
            steer if steer > 0.0 => write!(f, " at {steer}° inner lock")?,
            steer => write!(f, " at {}° outer lock", -steer)?,
        }
        // A position in whole millimetres.
        let travel = libm::round(in_mm(self.travel()));
        let told = In(Value::Length(mm(travel.abs())), units);
        match travel {
            0.0 => f.write_str(", at ride height"),
            travel if travel > 0.0 => write!(f, ", {told} jounce"),
            _ => write!(f, ", {told} rebound"),
        }
    }
}
