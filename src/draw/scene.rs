//! What is drawn, and what a view of it is.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::callout::{COLUMN, Callout};
use super::flat::{Extent, Flat};
use super::lettering::{SIZE, clean, lines, measure};
use super::outline::Wheel;
use super::paper::{Frame, Paper};
use crate::fitment::space::CornerAtRest;
use crate::fitment::{Position, UnitSystem};
use crate::sweep::{Corner, Obstacles, Point, Pose, Profile, Swept};
use crate::units::{Length, deg, in_deg, in_mm, mm};

/// How far around the wheel, in millimetres of the vehicle, obstacles are shown in full. What is farther is cut
/// off, but for the nearest of it.
pub(super) const ROOM: f64 = 60.0;

/// How far beyond all that is shown a view goes, in millimetres of the vehicle.
pub(super) const MARGIN: f64 = 15.0;

pub(super) const AT_REST: Pose = Pose::new(deg(0.0), mm(0.0));

/// A wheel in its corner, and what is to be said of it.
///
/// The profiles are drawn, and measured, as they are given: nominal ones give nominal dimensions.
#[derive(Clone, Copy, Debug)]
pub struct Scene<'a> {
    pub(super) corner: &'a Corner,
    pub(super) after: &'a Profile,
    pub(super) obstacles: &'a Obstacles,
    pub(super) before: Option<&'a Profile>,
    pub(super) labels: &'a [&'a str],
    pub(super) swept: Option<&'a Swept>,
    pub(super) least: Option<Length>,
    pub(super) name: &'a str,
    pub(super) heading: &'a str,
    pub(super) units: UnitSystem,
    pub(super) rest: Option<&'a CornerAtRest>,
}

impl<'a> Scene<'a> {
    /// A wheel among its obstacles.
    pub const fn new(corner: &'a Corner, after: &'a Profile, obstacles: &'a Obstacles) -> Self {
        Self {
            corner,
            after,
            obstacles,
            before: None,
            labels: &[],
            swept: None,
            least: None,
            name: "",
            heading: "",
            units: UnitSystem::Metric,
            rest: None,
        }
    }

    /// One end of an axle as far as it is known at rest, seen from the side of the vehicle that it is on: a front wheel
    /// from the front, a rear wheel from the rear. What moves and the gaps that were measured are its dimensions; brake,
    /// spokes, spacer and guard are in the section.
    ///
    /// ```
    /// use beadseat::draw::Scene;
    /// use beadseat::fitment::{Change, Setup, space::CornerAtRest};
    /// use beadseat::{tire::condition::VehicleSide, vehicle::Vehicle};
    /// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16 ET46")?, Setup::parse("225/45R17", "7.5Jx17 ET42")?];
    /// let (nothing, change) = (Vehicle::unknown(), Change::all_round(old, new));
    /// let report = change.assess(&nothing);
    /// let corner = CornerAtRest::rear(&nothing, &change, &report, VehicleSide::Left)?;
    /// let drawing = Scene::at_rest(&corner).sheet().to_string();
    /// assert!(drawing.contains("from the rear") && drawing.contains("inset 42 (was 46)"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn at_rest(corner: &'a CornerAtRest) -> Self {
        let mut scene =
            Self::new(corner.corner(), corner.after(), corner.around()).with_before(corner.before());
        scene.rest = Some(corner);
        scene
    }

    /// Lets the wheel move as a corner does.
    ///
    /// ```
    /// # use beadseat::draw::Scene;
    /// # use beadseat::sweep::{Corner, Obstacles, Profile, RimSection, TireSection};
    /// # use beadseat::units::mm;
    /// # let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
    /// # let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
    /// let (still, around) = (Corner::new(), Obstacles::new());
    /// let moving = still.travelling(mm(80.0), mm(90.0))?;
    /// let scene = Scene::new(&still, &profile, &around).moving(&moving);
    /// assert!(scene.plan_view_at_lock().to_string().contains("at ride height"));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub const fn moving(mut self, corner: &'a Corner) -> Self {
        self.corner = corner;
        self
    }

    /// Adds the wheel that was there before, in dashed outline.
    pub const fn with_before(mut self, before: &'a Profile) -> Self {
        self.before = Some(before);
        self
    }

    /// Names the obstacles, in their order; one without a name is called by its number. A name may be any
    /// text. Two lines of it are shown, one where many stand close together, and its number alone where many are not in the
    /// plane.
    pub const fn with_labels(mut self, labels: &'a [&'a str]) -> Self {
        self.labels = labels;
        self
    }

    /// Adds the least clearance that [`Corner::clearance`] found for the wheel and these obstacles. The plan is
    /// drawn in its position.
    pub const fn with_swept(mut self, swept: &'a Swept) -> Self {
        self.swept = Some(swept);
        self
    }

    /// The least clearance at worst, to be told in place of the drawn distance: a report holds the worst case against its
    /// limit, and one gap has one figure.
    pub const fn with_least_clearance(mut self, least: Length) -> Self {
        self.least = Some(least);
        self
    }

    /// What the figures are told in.
    pub const fn in_units(mut self, units: UnitSystem) -> Self {
        self.units = units;
        self
    }

    /// Sets the line at the head of a sheet: what is drawn, as the name of a vehicle. It may be any text. Two lines of it
    /// are shown.
    pub const fn with_name(mut self, name: &'a str) -> Self {
        self.name = name;
        self
    }

    /// Sets the lines below: what was decided. It may be any text. Four lines of it are shown.
    pub const fn with_heading(mut self, heading: &'a str) -> Self {
        self.heading = heading;
        self
    }

    /// The end of an axle that it is: without one that is known, the left of the front.
    fn position(&self) -> Position {
        self.rest.map_or(Position::FrontLeft, CornerAtRest::position)
    }

    /// Whether it is seen from the rear: a wheel of the rear axle is.
    pub(super) fn is_from_rear(&self) -> bool {
        self.position().axle() == Position::Rear
    }

    /// Whether outboard is to the left: of the right end seen from the front, of the left one from the rear.
    pub(super) fn is_outboard_left(&self) -> bool {
        matches!(self.position(), Position::FrontRight | Position::RearLeft)
    }

    /// Whether it is known where the wheels stand against the hub.
    pub(super) fn is_placed(&self) -> bool {
        self.rest.is_none_or(CornerAtRest::is_placed)
    }

    /// Half the length that the hub face is drawn with.
    pub(super) fn half_hub(&self) -> f64 {
        0.5 * in_mm(self.after.barrel_radius())
    }

    /// The wheels, the outer one of a pair first.
    pub(super) fn wheels(&self) -> Vec<Wheel<'a>> {
        let inner = self.rest.and_then(CornerAtRest::inner);
        let inner = inner.map(|[before, after]| Wheel { after, before: Some(before) });
        core::iter::once(Wheel { after: self.after, before: self.before }).chain(inner).collect()
    }

    /// The position of the plan.
    pub(super) fn pose(&self) -> Pose {
        self.swept.map_or_else(|| Pose::new(self.corner.full_lock(), mm(0.0)), Swept::pose)
    }

    /// Where on its body the least clearance is in its position, and how far that body reaches around there.
    pub(super) fn nearest(&self) -> Option<(&'a Swept, Point, f64)> {
        let swept = self.swept?;
        let obstacle = self.obstacles.iter().nth(swept.obstacle())?;
        let now = self.corner.wheel_pose(swept.pose()).carried(obstacle.carrier(), swept.point()).ok()?;
        Some((swept, now, in_mm(obstacle.radius()) + in_mm(obstacle.uncertainty())))
    }

    /// The number of an obstacle, from 1, and its name.
    pub(super) fn label(&self, number: usize) -> String {
        let name = self.labels.get(number).map(|label| clean(label)).unwrap_or_default();
        let name = if name.is_empty() { String::from("obstacle") } else { name };
        format!("{} {name}", number + 1)
    }

    pub(super) fn in_column(&self, text: &str) -> Vec<String> {
        lines(text, SIZE, COLUMN, 3)
    }

    /// The least clearance, in lines: the figure, and what it is proved not to be less than.
    pub(super) fn clearance(&self, swept: &Swept) -> Vec<String> {
        let mut told = Vec::from([String::from("least clearance")]);
        match self.least {
            Some(least) => {
                told.extend(self.in_column(&format!("{} at worst,", measure(least, self.units))));
                told.push(String::from("drawn at nominal size"));
            }
            None => {
                let [lower, upper] = [swept.lower(), swept.upper()].map(|length| measure(length, self.units));
                told.extend(
                    self.in_column(&upper).into_iter().chain(self.in_column(&format!("(≥ {lower})"))),
                );
            }
        }
        told
    }
}

/// A view: what of the vehicle it shows, and how.
pub(super) trait Figure {
    fn title(&self) -> String;

    /// What is to be seen, in millimetres of the vehicle.
    fn window(&self) -> Extent;

    fn callouts(&self) -> &[Callout];

    /// Room on paper to the right of the window and below it.
    fn margin(&self) -> Flat;

    fn draw(&self, frame: &Frame, paper: &mut Paper);

    /// Whether it is seen in a mirror: left and right, up and down.
    fn flipped(&self) -> [bool; 2];

    /// What is said below it, in lines.
    fn notes(&self) -> &[String] {
        &[]
    }

    /// Draws an enlarged detail below and to the right of a corner.
    fn draw_detail(&self, _corner: Flat, _paper: &mut Paper) {}
}

/// Steer and travel in words.
pub(super) fn in_words(pose: &Pose, units: UnitSystem) -> String {
    let steer = in_deg(pose.steer());
    let steer = if steer.abs() < 0.5 {
        String::from("straight ahead")
    } else {
        let wheel = if steer > 0.0 { "inner" } else { "outer" };
        format!("steered {}° as the {wheel} wheel", steer.abs().round())
    };
    let travel = in_mm(pose.travel());
    if travel.abs() < 0.5 {
        format!("{steer}, at ride height")
    } else {
        let way = if travel > 0.0 { "jounce" } else { "rebound" };
        format!("{steer}, {} in {way}", measure(mm(travel.abs().round()), units))
    }
}
