//! What stands around a wheel, as a tape measure on the floor describes it.

#[cfg(feature = "serde")]
mod serial;

use crate::record::words;
use crate::sweep::{Carrier, MAX_OBSTACLES, Obstacle, ObstacleError, Point};
use crate::tire::condition::VehicleSide;
use crate::units::{self, Length, in_mm};
use crate::{OutOfRange, Toleranced};

words! {
    /// What a body around the wheel is.
    ///
    /// ```
    /// assert_eq!(beadseat::vehicle::BodyKind::FrameRail.name(), "frame_rail");
    /// ```
    BodyKind {
        /// The lip of the wheel arch.
        ArchLip = "arch_lip",
        /// The liner of the wheel arch.
        Liner = "liner",
        /// The tube of a strut.
        StrutTube = "strut_tube",
        /// The seat of a spring.
        SpringSeat = "spring_seat",
        /// A control arm of the suspension.
        ControlArm = "control_arm",
        /// A rail of the frame.
        FrameRail = "frame_rail",
        /// The sway bar or its link.
        SwayBar = "sway_bar",
        /// A tie rod of the steering.
        TieRod = "tie_rod",
        /// The caliper of the brake.
        Caliper = "caliper",
        /// The brake disc or its plate.
        BrakeDisc = "brake_disc",
        /// Anything else around the wheel.
        Other = "other",
    }
}

impl BodyKind {
    /// What usually carries it: the knuckle for what belongs to strut, brake and steering, else the body. A tie rod
    /// of two points is a [`Carrier::Rod`] between them. Common practice, no source.
    ///
    /// ```
    /// use beadseat::{sweep::Carrier, vehicle::BodyKind};
    /// assert_eq!(BodyKind::Caliper.usual_carrier(), Carrier::Knuckle);
    /// assert_eq!(BodyKind::ArchLip.usual_carrier(), Carrier::Body);
    /// ```
    pub const fn usual_carrier(self) -> Carrier {
        match self {
            Self::StrutTube | Self::SpringSeat | Self::TieRod | Self::Caliper | Self::BrakeDisc => {
                Carrier::Knuckle
            }
            _ => Carrier::Body,
        }
    }
}

words! {
    /// The face of the tire that a gap was measured from.
    ///
    /// ```
    /// assert_eq!(beadseat::vehicle::GapSide::Inner.name(), "inner");
    /// ```
    GapSide {
        /// The sidewall that faces inboard.
        Inner = "inner",
        /// The sidewall that faces outboard.
        Outer = "outer",
    }
}

/// Points of an outline, at most.
const MAX_POINTS: usize = 8;

#[derive(Clone, Copy, Debug, PartialEq)]
enum Form {
    Points([Point; MAX_POINTS], u8),
    Arc([Point; 3]),
    Disc { centre: Point, on_axis: Point, radius: Length },
    Gap { side: GapSide, gap: Length, height: Length, forward: Length },
}

/// A body near the wheel: what it is, where it was measured, what carries it.
///
/// Coordinates are those of the corner frame ([`sweep`](crate::sweep)): forward, outboard and up from the
/// centre of the hub face, at ride height with the wheels straight ahead; so a body on both sides is
/// described once. A gap is measured to the body from the face of the tire that is on: the plane across the
/// spindle through its widest place, which leans with camber and toe. It becomes a point of the same frame once
/// that tire's dimensions are known.
///
/// In files an object with `what`, one of `points_mm` (1 to 8 points of three numbers), `arc_mm` (three
/// points), `disc_mm` (centre and another point of its axis, with `disc_radius_mm`) or `gap_mm` (with
/// `gap_side`, `height_mm` above the hub, `forward_mm`), and `radius_mm`, `uncertainty_mm`, `carrier` (with
/// `pivot_mm` and `end_mm`, its inner and its outer end, for an `arm` or a `rod`) and `side`.
///
/// ```
/// use beadseat::{sweep::Point, units::mm, vehicle::{BodyKind, GapSide, NearbyBody}};
/// let (front, rear) = (Point::new(mm(330.0), mm(-215.0), mm(60.0))?, Point::new(mm(-330.0), mm(-215.0), mm(60.0))?);
/// let rail = NearbyBody::outline(BodyKind::FrameRail, &[front, rear])?.with_radius(mm(25.0))?;
/// assert_eq!(rail.kind(), BodyKind::FrameRail);
/// let strut = NearbyBody::gap(BodyKind::StrutTube, GapSide::Inner, mm(18.0), mm(290.0), mm(0.0))?;
/// assert!(strut.is_gap());
/// # Ok::<(), beadseat::sweep::ObstacleError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NearbyBody {
    kind: BodyKind,
    form: Form,
    radius: Length,
    uncertainty: Length,
    carrier: Carrier,
    side: Option<VehicleSide>,
}

impl NearbyBody {
    fn of(kind: BodyKind, form: Form) -> Result<Self, ObstacleError> {
        let none = units::mm(0.0);
        let carrier = kind.usual_carrier();
        let body = Self { kind, form, radius: none, uncertainty: none, carrier, side: None };
        if let (BodyKind::TieRod, Form::Points([one, other, ..], 2)) = (kind, form) {
            let (outer, inner) = if one.outboard() < other.outboard() { (other, one) } else { (one, other) };
            // What is too short for a rod is its end.
            if let Ok(rod) = body.carried_by(Carrier::Rod { outer, inner }) {
                return Ok(rod);
            }
        }
        body.checked()
    }

    /// The same, if an obstacle can be made of it.
    fn checked(self) -> Result<Self, ObstacleError> {
        self.obstacle(Toleranced::exact(units::mm(0.0)), units::mm(0.0))?;
        Ok(self)
    }

    /// A point, an edge or a chain of edges.
    ///
    /// # Errors
    /// No point, or more than 8.
    ///
    /// ```
    /// use beadseat::{sweep::Point, units::mm, vehicle::{BodyKind, NearbyBody}};
    /// let p = Point::new(mm(0.0), mm(0.0), mm(400.0))?;
    /// assert!(NearbyBody::outline(BodyKind::Other, &[p]).is_ok());
    /// assert!(NearbyBody::outline(BodyKind::Other, &[p; 9]).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn outline(kind: BodyKind, points: &[Point]) -> Result<Self, ObstacleError> {
        let (Some(&first), true) = (points.first(), points.len() <= MAX_POINTS) else {
            return Err(ObstacleError::Points);
        };
        let mut list = [first; MAX_POINTS];
        for (place, point) in list.iter_mut().zip(points) {
            *place = *point;
        }
        Self::of(kind, Form::Points(list, points.len() as u8))
    }

    /// An arc through three points, as of an arch lip.
    ///
    /// # Errors
    /// Those of [`Obstacle::arch_lip`].
    ///
    /// ```
    /// use beadseat::{sweep::Point, units::mm, vehicle::{BodyKind, NearbyBody}};
    /// let at = |forward, up| Point::new(mm(forward), mm(35.0), mm(up));
    /// assert!(NearbyBody::arc(BodyKind::ArchLip, [at(360.0, 60.0)?, at(0.0, 390.0)?, at(-350.0, 80.0)?]).is_ok());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn arc(kind: BodyKind, points: [Point; 3]) -> Result<Self, ObstacleError> {
        Self::of(kind, Form::Arc(points))
    }

    /// A flat round plate: its centre, another point of its axis, its radius.
    ///
    /// # Errors
    /// Those of [`Obstacle::disc`].
    ///
    /// ```
    /// use beadseat::{sweep::Point, units::mm, vehicle::{BodyKind, NearbyBody}};
    /// let (centre, above) = (Point::new(mm(0.0), mm(-190.0), mm(330.0))?, Point::new(mm(0.0), mm(-195.0), mm(380.0))?);
    /// assert!(NearbyBody::disc(BodyKind::SpringSeat, centre, above, mm(70.0)).is_ok());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn disc(
        kind: BodyKind,
        centre: Point,
        on_axis: Point,
        radius: Length,
    ) -> Result<Self, ObstacleError> {
        Self::of(kind, Form::Disc { centre, on_axis, radius })
    }

    /// A gap from a face of the tire that is on, straight in or out, at a height above the hub's centre and
    /// so far ahead of it.
    ///
    /// # Errors
    /// A gap outside −100 to 500 mm; a place beyond 5 m.
    pub fn gap(
        kind: BodyKind,
        side: GapSide,
        gap: Length,
        height: Length,
        forward: Length,
    ) -> Result<Self, ObstacleError> {
        OutOfRange::check("gap_mm", in_mm(gap), "mm", -100.0, 500.0)?;
        Self::of(kind, Form::Gap { side, gap, height, forward })
    }

    /// The same body, this much thicker all round.
    ///
    /// # Errors
    /// Outside 0 to 1000 mm.
    pub fn with_radius(mut self, radius: Length) -> Result<Self, ObstacleError> {
        self.radius = radius;
        self.checked()
    }

    /// Sets how far its place and size may be off.
    ///
    /// # Errors
    /// Outside 0 to 100 mm.
    pub fn with_uncertainty(mut self, uncertainty: Length) -> Result<Self, ObstacleError> {
        self.uncertainty = uncertainty;
        self.checked()
    }

    /// Sets what carries it; if not said, what usually carries its kind ([`BodyKind::usual_carrier`]).
    ///
    /// # Errors
    /// An arm or rod too short to turn, a body beside the line of its rod.
    pub fn carried_by(mut self, carrier: Carrier) -> Result<Self, ObstacleError> {
        self.carrier = carrier;
        self.checked()
    }

    /// Sets the only side of the vehicle it is on.
    ///
    /// ```
    /// use beadseat::{sweep::Point, tire::condition::VehicleSide, units::mm, vehicle::{BodyKind, NearbyBody}};
    /// let pipe = NearbyBody::outline(BodyKind::Other, &[Point::new(mm(200.0), mm(-230.0), mm(-40.0))?])?;
    /// assert_eq!(pipe.side(), None);
    /// assert_eq!(pipe.only_on(VehicleSide::Left).side(), Some(VehicleSide::Left));
    /// # Ok::<(), beadseat::sweep::ObstacleError>(())
    /// ```
    pub const fn only_on(mut self, side: VehicleSide) -> Self {
        self.side = Some(side);
        self
    }

    /// What kind of body it is.
    pub const fn kind(&self) -> BodyKind {
        self.kind
    }

    /// The only side it is on, if it is on one only.
    pub const fn side(&self) -> Option<VehicleSide> {
        self.side
    }

    /// Whether it was measured as a gap from the tire.
    pub const fn is_gap(&self) -> bool {
        matches!(self.form, Form::Gap { .. })
    }

    /// The face of the tire it was measured from, how far ahead of and above the hub, if it was.
    pub(crate) const fn gap_place(&self) -> Option<(GapSide, Length, Length)> {
        match self.form {
            Form::Gap { side, forward, height, .. } => Some((side, forward, height)),
            _ => None,
        }
    }

    /// Where it is, `face` being how far outboard of the hub face the face of the tire is, there where a gap was
    /// measured from it; what is not known of that is added to the uncertainty, which of a gap is no less than
    /// that of the other `gaps` of the axle.
    pub(crate) fn obstacle(&self, face: Toleranced<Length>, gaps: Length) -> Result<Obstacle, ObstacleError> {
        let mut uncertainty = self.uncertainty;
        let shape = match self.form {
            Form::Points(points, 1) => Obstacle::point(points[0]),
            Form::Points(points, count) => {
                Obstacle::polyline(points.get(..usize::from(count)).unwrap_or_default())?
            }
            Form::Arc([from, over, to]) => Obstacle::arch_lip(from, over, to)?,
            Form::Disc { centre, on_axis, radius } => Obstacle::disc(centre, on_axis, radius)?,
            Form::Gap { side, gap, height, forward } => {
                uncertainty =
                    uncertainty.max(gaps) + (face.max() - face.nominal()).max(face.nominal() - face.min());
                let outboard = match side {
                    GapSide::Outer => face.nominal() + gap,
                    GapSide::Inner => face.nominal() - gap,
                };
                Obstacle::point(Point::new(forward, outboard, height)?)
            }
        };
        shape.with_radius(self.radius)?.with_uncertainty(uncertainty)?.carried_by(self.carrier)
    }
}

/// The bodies around the wheels of an axle, up to 16 around each.
///
/// With the feature `alloc` a list that grows; without it, one that stands still:
/// [`from_static`](Self::from_static).
///
/// ```
/// use beadseat::{sweep::{ObstacleError, Point}, units::mm, vehicle::{BodyKind, NearbyBody, NearbyBodies}};
/// let stud = NearbyBody::outline(BodyKind::Other, &[Point::new(mm(0.0), mm(40.0), mm(390.0))?])?;
/// let mut around = NearbyBodies::new();
/// for _ in 0..16 {
///     around.push(stud)?;
/// }
/// assert_eq!(around.push(stud), Err(ObstacleError::TooMany));
/// assert_eq!(around.iter().count(), 16);
/// # Ok::<(), ObstacleError>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct NearbyBodies(List);

#[cfg(feature = "alloc")]
type List = alloc::borrow::Cow<'static, [NearbyBody]>;
#[cfg(not(feature = "alloc"))]
type List = &'static [NearbyBody];

impl NearbyBodies {
    /// A list without bodies.
    pub const fn new() -> Self {
        Self::borrowed(&[])
    }

    /// Those of a list that is there for good, as of a program without a heap.
    ///
    /// # Errors
    /// More than 16 around a wheel.
    ///
    /// ```
    /// use beadseat::{sweep::ObstacleError, units::mm, vehicle::{BodyKind, GapSide, NearbyBodies, NearbyBody}};
    /// use std::sync::LazyLock;
    /// static AROUND: LazyLock<Result<[NearbyBody; 1], ObstacleError>> = LazyLock::new(|| {
    ///     Ok([NearbyBody::gap(BodyKind::StrutTube, GapSide::Inner, mm(18.0), mm(290.0), mm(0.0))?])
    /// });
    /// assert_eq!(NearbyBodies::from_static(AROUND.as_ref()?)?.iter().count(), 1);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn from_static(bodies: &'static [NearbyBody]) -> Result<Self, ObstacleError> {
        if bodies.len() > 2 * MAX_OBSTACLES || is_crowded(bodies) {
            return Err(ObstacleError::TooMany);
        }
        Ok(Self::borrowed(bodies))
    }

    #[cfg(feature = "alloc")]
    const fn borrowed(bodies: &'static [NearbyBody]) -> Self {
        Self(alloc::borrow::Cow::Borrowed(bodies))
    }

    #[cfg(not(feature = "alloc"))]
    const fn borrowed(bodies: &'static [NearbyBody]) -> Self {
        Self(bodies)
    }

    /// Adds one at the end.
    ///
    /// # Errors
    /// A seventeenth around a wheel: one that is on both sides counts on either.
    #[cfg(feature = "alloc")]
    pub fn push(&mut self, body: NearbyBody) -> Result<(), ObstacleError> {
        let bodies = self.0.to_mut();
        bodies.push(body);
        if is_crowded(bodies) {
            bodies.pop();
            return Err(ObstacleError::TooMany);
        }
        Ok(())
    }

    /// All of them, in order.
    pub fn iter(&self) -> impl Iterator<Item = &NearbyBody> {
        self.0.iter()
    }

    /// As in a mirror: what was on the left is on the right.
    #[cfg(feature = "alloc")]
    pub(crate) fn mirrored(mut self) -> Self {
        for body in self.0.to_mut() {
            body.side = body.side.map(VehicleSide::opposite);
        }
        self
    }
}

/// Whether more bodies are around a wheel than a corner can have.
const fn is_crowded(bodies: &[NearbyBody]) -> bool {
    let [mut left, mut right] = [0; 2];
    let mut number = 0;
    while number < bodies.len() {
        match bodies[number].side {
            Some(VehicleSide::Left) => left += 1,
            Some(VehicleSide::Right) => right += 1,
            None => {
                left += 1;
                right += 1;
            }
        }
        number += 1;
    }
    left > MAX_OBSTACLES || right > MAX_OBSTACLES
}
