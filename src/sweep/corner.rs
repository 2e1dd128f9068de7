//! How a wheel moves.

use super::obstacle::Point;
use super::span::Span;
use super::vector::{Vector, length, scale, sub};
use crate::OutOfRange;
use crate::units::{self, Angle, Length, in_deg, in_mm};

/// The middle of the contact patch, below the middle of the rim.
///
/// ```
/// use beadseat::{sweep::ContactPatch, units::{deg, mm}};
/// let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(0.0))?;
/// assert_eq!(patch.point().up(), mm(-292.0));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ContactPatch(Vector);

impl ContactPatch {
    /// From how far the middle of the rim is outboard of the hub face (spacer less inset), its height above
    /// the ground (the loaded radius), and camber: of the wheel and tire that the scrub radius was stated
    /// with, not of another.
    ///
    /// # Errors
    /// A middle beyond 500 mm, a radius outside 50 to 1500 mm, a camber beyond 15°.
    pub fn under(rim_centre: Length, loaded_radius: Length, camber: Angle) -> Result<Self, OutOfRange> {
        let a = OutOfRange::check("rim centre", in_mm(rim_centre), "mm", -500.0, 500.0)?;
        let radius = OutOfRange::check("loaded radius", in_mm(loaded_radius), "mm", 50.0, 1500.0)?;
        let (sin, cos) = libm::sincos(checked_camber(camber)?.to_radians());
        Ok(Self([0.0, a * cos - radius * sin / cos, -a * sin - radius]))
    }

    /// The point where the tire stands on the ground.
    pub const fn point(&self) -> Point {
        Point(self.0)
    }
}

fn checked_camber(camber: Angle) -> Result<f64, OutOfRange> {
    OutOfRange::check("camber", in_deg(camber), "deg", -15.0, 15.0)
}

/// The line a steered wheel turns about, where it is at ride height.
///
/// ```
/// use beadseat::{sweep::{Point, SteeringAxis}, units::mm};
/// let upright = SteeringAxis::through(
///     Point::new(mm(0.0), mm(-80.0), mm(-100.0))?,
///     Point::new(mm(0.0), mm(-80.0), mm(300.0))?,
/// )?;
/// assert!((upright.distance(Point::new(mm(60.0), mm(-160.0), mm(0.0))?) - mm(100.0)).abs() < mm(1e-9));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteeringAxis {
    pub(super) through: Vector,
    /// Upward, of length one.
    pub(super) direction: Vector,
}

impl SteeringAxis {
    /// From where it meets the ground, scrub radius inboard of the contact patch and trail ahead of it, and
    /// how it leans: inclination with its top inboard, caster with its top rearward.
    ///
    /// # Errors
    /// Inclination outside −5 to 30°, caster −10 to 25°, scrub radius −200 to 300 mm, trail −100 to 150 mm.
    ///
    /// ```
    /// use beadseat::{sweep::{ContactPatch, Point, SteeringAxis}, units::{deg, mm}};
    /// let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(0.0))?;
    /// let axis = SteeringAxis::from_ground(patch, deg(0.0), deg(0.0), mm(20.0), mm(0.0))?;
    /// let hub = Point::new(mm(0.0), mm(0.0), mm(0.0))?;
    /// assert!((axis.distance(hub) - mm(66.0)).abs() < mm(1e-9)); // inset and scrub radius
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn from_ground(
        patch: ContactPatch,
        inclination: Angle,
        caster: Angle,
        scrub_radius: Length,
        trail: Length,
    ) -> Result<Self, OutOfRange> {
        let inclination = OutOfRange::check("kingpin inclination", in_deg(inclination), "deg", -5.0, 30.0)?;
        let caster = OutOfRange::check("caster", in_deg(caster), "deg", -10.0, 25.0)?;
        let scrub = OutOfRange::check("scrub radius", in_mm(scrub_radius), "mm", -200.0, 300.0)?;
        let trail = OutOfRange::check("trail", in_mm(trail), "mm", -100.0, 150.0)?;
        let lean = [-libm::tan(caster.to_radians()), -libm::tan(inclination.to_radians()), 1.0];
        Ok(Self {
            through: [patch.0[0] + trail, patch.0[1] - scrub, patch.0[2]],
            direction: scale(lean, 1.0 / length(lean)),
        })
    }

    /// Through two measured points, such as the lower and the upper ball joint, or the lower one and the
    /// middle of the strut's top mount.
    ///
    /// # Errors
    /// An upper point less than 10 mm above the lower one.
    ///
    /// ```
    /// use beadseat::{sweep::{Point, SteeringAxis}, units::mm};
    /// let lower = Point::new(mm(12.0), mm(-90.0), mm(-120.0))?;
    /// let upper = Point::new(mm(-40.0), mm(-240.0), mm(520.0))?;
    /// assert!(SteeringAxis::through(lower, upper).is_ok());
    /// assert!(SteeringAxis::through(upper, lower).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn through(lower: Point, upper: Point) -> Result<Self, OutOfRange> {
        let way = sub(upper.0, lower.0);
        OutOfRange::check("height of the upper point over the lower", way[2], "mm", 10.0, 10_000.0)?;
        Ok(Self { through: lower.0, direction: scale(way, 1.0 / length(way)) })
    }

    /// Where it passes a height above the hub's centre, at ride height.
    ///
    /// ```
    /// use beadseat::{sweep::{Point, SteeringAxis}, units::mm};
    /// let lower = Point::new(mm(0.0), mm(-90.0), mm(-100.0))?;
    /// let axis = SteeringAxis::through(lower, Point::new(mm(0.0), mm(-210.0), mm(500.0))?)?;
    /// assert!((axis.at_height(mm(0.0)).outboard() - mm(-110.0)).abs() < mm(1e-9));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn at_height(&self, up: Length) -> Point {
        let rise = (in_mm(up) - self.through[2]) / self.direction[2];
        Point(super::vector::add(self.through, scale(self.direction, rise)))
    }

    /// How far a point is from it.
    pub fn distance(&self, point: Point) -> Length {
        units::mm(length(super::vector::cross(self.direction, sub(point.0, self.through))))
    }
}

/// Where a wheel is in its range of movement.
///
/// ```
/// use beadseat::{sweep::Pose, units::{deg, mm}};
/// let pose = Pose::new(deg(20.0), mm(-40.0));
/// assert_eq!(pose.travel(), mm(-40.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    steer: Angle,
    travel: Length,
    other_travel: Length,
}

impl Pose {
    /// A steer angle and a travel; on a beam axle the other wheel has the same travel.
    pub const fn new(steer: Angle, travel: Length) -> Self {
        Self { steer, travel, other_travel: travel }
    }

    /// Sets the travel of the other wheel of a beam axle.
    pub const fn with_other_travel(mut self, travel: Length) -> Self {
        self.other_travel = travel;
        self
    }

    /// Turn about the steering axis, positive when this wheel is the inner one.
    pub const fn steer(&self) -> Angle {
        self.steer
    }

    /// Travel of this wheel, positive in jounce.
    pub const fn travel(&self) -> Length {
        self.travel
    }

    /// Travel of the other wheel of a beam axle.
    pub const fn other_travel(&self) -> Length {
        self.other_travel
    }
}

/// A corner of a vehicle: how its wheel stands and moves.
///
/// Movement is put together in this order. *Travel* carries the knuckle straight up, with the steering axis,
/// and outboard as far as [`with_lateral_change`](Self::with_lateral_change) says. On a *beam axle* the axle
/// and the knuckle also roll about the fore-and-aft line through the hub, by the difference of travel of its
/// two wheels over the track, and the hub moves inboard as the half axle foreshortens. *Steer* turns the
/// knuckle about the axis; the angle is that about the axis, which for a leaning one is not quite the angle
/// seen from above. A wheel without a steering axis does not steer. *Camber* and *toe* tilt the spindle in the knuckle, with what they gain in travel.
///
/// ```
/// use beadseat::{sweep::Corner, units::{deg, mm}};
/// let rear = Corner::new().with_camber(deg(-1.0))?.travelling(mm(90.0), mm(100.0))?;
/// assert!(rear.on_beam_axle(mm(1500.0)).is_ok());
/// assert!(rear.travelling(mm(-1.0), mm(100.0)).is_err());
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    pub(super) axis: Option<SteeringAxis>,
    pub(super) steer: Span,
    pub(super) travel: Span,
    pub(super) other: Span,
    /// Radians.
    pub(super) camber: f64,
    pub(super) toe: f64,
    /// Radians and millimetres for each millimetre of travel.
    pub(super) camber_gain: f64,
    pub(super) toe_gain: f64,
    pub(super) lateral_gain: f64,
    /// Track of a beam axle.
    pub(super) beam: Option<f64>,
}

impl Corner {
    /// A wheel that stands upright and straight and does not move.
    #[allow(
        clippy::new_without_default,
        reason = "a wheel that does not move is not what one means by default"
    )]
    pub const fn new() -> Self {
        Self {
            axis: None,
            steer: Span::AT_REST,
            travel: Span::AT_REST,
            other: Span::AT_REST,
            camber: 0.0,
            toe: 0.0,
            camber_gain: 0.0,
            toe_gain: 0.0,
            lateral_gain: 0.0,
            beam: None,
        }
    }

    /// Sets the steering axis and how far the wheel turns about it as the inner and as the outer one.
    ///
    /// # Errors
    /// Locks outside 0 to 75°.
    pub fn steered(mut self, axis: SteeringAxis, inner: Angle, outer: Angle) -> Result<Self, OutOfRange> {
        let lock = |what, angle| OutOfRange::check(what, in_deg(angle), "deg", 0.0, 75.0);
        self.steer = Span {
            least: -lock("outer lock", outer)?.to_radians(),
            most: lock("inner lock", inner)?.to_radians(),
        };
        self.axis = Some(axis);
        Ok(self)
    }

    /// Sets how far the wheel rises and falls from ride height.
    ///
    /// # Errors
    /// Outside 0 to 500 mm.
    pub fn travelling(mut self, jounce: Length, rebound: Length) -> Result<Self, OutOfRange> {
        let up = OutOfRange::check("jounce", in_mm(jounce), "mm", 0.0, 500.0)?;
        let down = OutOfRange::check("rebound", in_mm(rebound), "mm", 0.0, 500.0)?;
        self.travel = Span { least: -down, most: up };
        self.other = self.travel;
        Ok(self)
    }

    /// Sets the camber at ride height, positive with the top outboard.
    ///
    /// # Errors
    /// Beyond 15°.
    pub fn with_camber(mut self, camber: Angle) -> Result<Self, OutOfRange> {
        self.camber = checked_camber(camber)?.to_radians();
        Ok(self)
    }

    /// Sets the toe of this wheel at ride height, positive with its front inboard.
    ///
    /// # Errors
    /// Beyond 5°.
    pub fn with_toe(mut self, toe: Angle) -> Result<Self, OutOfRange> {
        self.toe = OutOfRange::check("toe", in_deg(toe), "deg", -5.0, 5.0)?.to_radians();
        Ok(self)
    }

    /// Sets how much camber is gained in so much jounce; in proportion elsewhere.
    ///
    /// # Errors
    /// A change beyond 15°, a jounce outside 10 to 500 mm.
    ///
    /// ```
    /// use beadseat::{sweep::Corner, units::{deg, mm}};
    /// // A wheel that leans in by 1.2° as it rises by 80 mm.
    /// assert!(Corner::new().with_camber_change(deg(-1.2), mm(80.0)).is_ok());
    /// ```
    pub fn with_camber_change(mut self, change: Angle, jounce: Length) -> Result<Self, OutOfRange> {
        self.camber_gain = checked_camber(change)?.to_radians() / checked_jounce(jounce)?;
        Ok(self)
    }

    /// Sets how much toe is gained in so much jounce; in proportion elsewhere.
    ///
    /// # Errors
    /// A change beyond 5°, a jounce outside 10 to 500 mm.
    pub fn with_toe_change(mut self, change: Angle, jounce: Length) -> Result<Self, OutOfRange> {
        let change = OutOfRange::check("toe change", in_deg(change), "deg", -5.0, 5.0)?;
        self.toe_gain = change.to_radians() / checked_jounce(jounce)?;
        Ok(self)
    }

    /// Sets how far the hub moves outboard in so much jounce (tire scrub); in proportion elsewhere.
    ///
    /// # Errors
    /// A change beyond 200 mm, a jounce outside 10 to 500 mm.
    pub fn with_lateral_change(mut self, change: Length, jounce: Length) -> Result<Self, OutOfRange> {
        let change = OutOfRange::check("lateral change", in_mm(change), "mm", -200.0, 200.0)?;
        self.lateral_gain = change / checked_jounce(jounce)?;
        Ok(self)
    }

    /// Puts the wheel on a beam axle of a track. Every combination of the travel of both wheels is swept, from
    /// rebound to jounce: the widest cross-articulation there can be, so that stops that allow less only make
    /// the answer more cautious.
    ///
    /// # Errors
    /// Outside 500 to 3000 mm.
    pub fn on_beam_axle(mut self, track: Length) -> Result<Self, OutOfRange> {
        self.beam = Some(OutOfRange::check("track", in_mm(track), "mm", 500.0, 3000.0)?);
        Ok(self)
    }

    /// What it turns about, if it is steered.
    pub const fn steering_axis(&self) -> Option<SteeringAxis> {
        self.axis
    }

    /// The greater lock, signed as steer is; none of a wheel that is not steered.
    ///
    /// ```
    /// use beadseat::{sweep::Corner, units::deg};
    /// assert_eq!(Corner::new().full_lock(), deg(0.0));
    /// ```
    pub fn full_lock(&self) -> Angle {
        let Span { least, most } = self.steer;
        units::rad(if -least > most { least } else { most })
    }

    /// The same corner held in one position, so that its clearance is that of this position alone.
    ///
    /// # Errors
    /// A steer angle beyond 75°, a travel beyond 500 mm.
    ///
    /// ```
    /// use beadseat::{sweep::{Corner, Pose}, units::{deg, mm}};
    /// let corner = Corner::new().travelling(mm(80.0), mm(90.0))?;
    /// assert!(corner.held_at(Pose::new(deg(0.0), mm(80.0))).is_ok());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn held_at(mut self, pose: Pose) -> Result<Self, OutOfRange> {
        let steer = OutOfRange::check("steer", in_deg(pose.steer), "deg", -75.0, 75.0)?;
        let travel = |length| OutOfRange::check("travel", in_mm(length), "mm", -500.0, 500.0);
        self.steer = Span::at(steer.to_radians());
        self.travel = Span::at(travel(pose.travel)?);
        self.other = Span::at(travel(pose.other_travel)?);
        Ok(self)
    }
}

fn checked_jounce(jounce: Length) -> Result<f64, OutOfRange> {
    OutOfRange::check("jounce", in_mm(jounce), "mm", 10.0, 500.0)
}
