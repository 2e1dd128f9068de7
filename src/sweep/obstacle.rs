//! What a wheel may touch.

use super::span::Span;
use super::vector::{Turn, Vector, add, cross, dot, length, scale, sub};
use crate::OutOfRange;
use crate::units::{self, Angle, Length, in_mm, in_rad};

/// A place in the corner frame at ride height, wheels straight ahead.
///
/// ```
/// use beadseat::{sweep::Point, units::mm};
/// let strut = Point::new(mm(0.0), mm(-160.0), mm(250.0))?;
/// assert_eq!(strut.outboard(), mm(-160.0));
/// assert!(Point::new(mm(f64::NAN), mm(0.0), mm(0.0)).is_err());
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point(pub(super) Vector);

impl Point {
    /// From how far ahead of, outboard of and above the centre of the hub face it is.
    ///
    /// # Errors
    /// Beyond 5 m in any direction.
    pub fn new(forward: Length, outboard: Length, up: Length) -> Result<Self, OutOfRange> {
        let check = |what, value| OutOfRange::check(what, in_mm(value), "mm", -5000.0, 5000.0);
        Ok(Self([check("forward", forward)?, check("outboard", outboard)?, check("up", up)?]))
    }

    /// How far ahead of the hub.
    pub const fn forward(&self) -> Length {
        units::mm(self.0[0])
    }

    /// How far outboard of the hub face.
    pub const fn outboard(&self) -> Length {
        units::mm(self.0[1])
    }

    /// How far above the hub.
    pub const fn up(&self) -> Length {
        units::mm(self.0[2])
    }
}

/// What an obstacle is fixed to.
///
/// ```
/// use beadseat::sweep::Carrier;
/// assert_eq!(Carrier::default(), Carrier::Body);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[non_exhaustive]
pub enum Carrier {
    /// The body: an arch lip, a chassis member, a bump stop.
    #[default]
    Body,
    /// The knuckle, which steers and travels with the wheel: a strut tube and its spring seat, a caliper.
    Knuckle,
    /// What rises and falls with the hub without steering: the tube of a beam axle, the lower end of a
    /// damper. It rolls with a beam axle; beside an independent wheel it keeps upright.
    Unsprung,
    /// An arm that turns about a fore-and-aft line through its inner pivot while its outer end rises and
    /// falls with the hub.
    Arm {
        /// A point of the line the arm turns about.
        pivot: Point,
        /// Where the arm meets the knuckle.
        end: Point,
    },
    /// A tie rod, of which the obstacle is the line through the middle or a part of it. Its outer end steers and
    /// travels with the knuckle; its inner end slides straight across the vehicle with the rack, as far as the
    /// rod's length asks. Of an independent wheel only: the rod of a beam axle joins two knuckles.
    Rod {
        /// The joint on the knuckle.
        outer: Point,
        /// The joint at the rack, wheels straight ahead at ride height.
        inner: Point,
    },
}

/// Why an obstacle was refused.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum ObstacleError {
    /// A dimension is outside what is accepted.
    OutOfRange(OutOfRange),
    /// An outline has from 2 to 8 points.
    Points,
    /// Points that must differ coincide: an axis, an arc or an arm needs a direction.
    Coincident,
    /// What a tie rod carries is the line between its joints or a part of it.
    OffRod,
    /// There are more than [`MAX_OBSTACLES`].
    TooMany,
}

crate::text::messages! {
    ObstacleError {
        Points => "an outline has from 2 to 8 points",
        Coincident => "points that must differ coincide",
        OffRod => "a tie rod carries the line between its joints only",
        TooMany => "a corner has at most 16 obstacles",
    } passes {
        OutOfRange(OutOfRange),
    }
}

/// Points of an outline, at most.
const MAX_POINTS: usize = 8;

/// Less from pivot to end, seen from the front, is no arm, mm.
pub(super) const SHORTEST_ARM: f64 = 20.0;

/// Less from end to end is no rod, mm.
pub(super) const SHORTEST_ROD: f64 = 40.0;

/// What is so near the line of a rod is on it, mm.
const ON_A_ROD: f64 = 1e-6;

/// How many places along an arc are told.
const PLACES_OF_AN_ARC: usize = 25;

/// Straight pieces of an outline, at most.
pub(super) const MAX_PIECES: usize = MAX_POINTS - 1;

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Shape {
    /// One point, or a chain of them.
    Chain { points: [Vector; MAX_POINTS], count: usize },
    /// A flat disc with two directions across it.
    Disc { centre: Vector, across: [Vector; 2], radius: f64 },
    /// A part of the edge of a disc, from the first direction so far towards the second.
    Arc { centre: Vector, across: [Vector; 2], radius: f64, angle: f64 },
}

/// A part of an obstacle with two variables.
#[derive(Clone, Copy, Debug)]
pub(super) enum Piece {
    /// From the middle `s` times along: `s` from −1 to 1.
    Line { middle: Vector, half: Vector },
    /// Polar: `s` the radius, `t` the angle, in their ranges. An arc has one radius.
    Round { centre: Vector, across: [Vector; 2], radius: Span, angle: Span },
}

impl Piece {
    /// The pieces of an obstacle.
    pub(super) fn of(obstacle: &Obstacle, number: usize) -> Option<Self> {
        match obstacle.shape {
            Shape::Chain { points, count } => (number < count.max(2) - 1).then(|| {
                let (from, to) = (points[number], points[(number + 1).min(count - 1)]);
                Self::Line { middle: scale(add(from, to), 0.5), half: scale(sub(to, from), 0.5) }
            }),
            Shape::Disc { centre, across, radius } => (number == 0).then(|| {
                let turn = if radius > 0.0 { core::f64::consts::TAU } else { 0.0 };
                let (radius, angle) = (Span { least: 0.0, most: radius }, Span { least: 0.0, most: turn });
                Self::Round { centre, across, radius, angle }
            }),
            Shape::Arc { centre, across, radius, angle } => (number == 0).then(|| {
                let angle = Span { least: 0.0, most: angle };
                Self::Round { centre, across, radius: Span::at(radius), angle }
            }),
        }
    }

    pub(super) fn spans(&self) -> [Span; 2] {
        match self {
            Self::Line { half, .. } if dot(*half, *half) == 0.0 => [Span::AT_REST; 2],
            Self::Line { .. } => [Span { least: -1.0, most: 1.0 }, Span::AT_REST],
            Self::Round { radius, angle, .. } => [*radius, *angle],
        }
    }

    /// The point and its derivatives.
    pub(super) fn at(&self, s: f64, t: f64) -> (Vector, Vector, Vector) {
        match *self {
            Self::Line { middle, half } => (add(middle, scale(half, s)), half, [0.0; 3]),
            Self::Round { centre, across, .. } => {
                let turn = Turn::by(t);
                let out = add(scale(across[0], turn.cos), scale(across[1], turn.sin));
                let round = add(scale(across[0], -turn.sin * s), scale(across[1], turn.cos * s));
                (add(centre, scale(out, s)), out, round)
            }
        }
    }
}

/// A body near the wheel: a shape, thickened by a radius of its own and by how far it may be off.
///
/// ```
/// use beadseat::{sweep::{Carrier, Obstacle, Point}, units::mm};
/// let low = Point::new(mm(0.0), mm(-165.0), mm(60.0))?;
/// let high = Point::new(mm(0.0), mm(-205.0), mm(420.0))?;
/// let strut = Obstacle::capped_cylinder(low, high, mm(28.0))?
///     .with_uncertainty(mm(2.0))?
///     .carried_by(Carrier::Knuckle)?;
/// assert_eq!(strut.uncertainty(), mm(2.0));
/// # Ok::<(), beadseat::sweep::ObstacleError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Obstacle {
    pub(super) shape: Shape,
    pub(super) radius: f64,
    pub(super) uncertainty: f64,
    pub(super) carrier: Carrier,
}

impl Obstacle {
    const fn of(shape: Shape) -> Self {
        Self { shape, radius: 0.0, uncertainty: 0.0, carrier: Carrier::Body }
    }

    /// A body that is a single point.
    ///
    /// ```
    /// use beadseat::{sweep::{Obstacle, Point}, units::mm};
    /// let bolt = Obstacle::point(Point::new(mm(280.0), mm(-120.0), mm(190.0))?).with_radius(mm(9.0))?;
    /// assert_eq!(bolt.radius(), mm(9.0));
    /// # Ok::<(), beadseat::sweep::ObstacleError>(())
    /// ```
    pub const fn point(at: Point) -> Self {
        Self::of(Shape::Chain { points: [at.0; MAX_POINTS], count: 1 })
    }

    /// A straight edge. One whose ends coincide is a point.
    ///
    /// ```
    /// use beadseat::{sweep::{Obstacle, Point}, units::mm};
    /// let (a, b) = (Point::new(mm(300.0), mm(-200.0), mm(0.0))?, Point::new(mm(-300.0), mm(-200.0), mm(0.0))?);
    /// assert_eq!(Obstacle::polyline(&[a, b]), Ok(Obstacle::segment(a, b)));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub const fn segment(from: Point, to: Point) -> Self {
        let mut points = [from.0; MAX_POINTS];
        points[1] = to.0;
        Self::of(Shape::Chain { points, count: 2 })
    }

    /// An edge of up to eight points.
    ///
    /// # Errors
    /// Fewer than 2 points or more than 8.
    ///
    /// ```
    /// use beadseat::{sweep::{Obstacle, ObstacleError, Point}, units::mm};
    /// let p = Point::new(mm(0.0), mm(0.0), mm(400.0))?;
    /// assert_eq!(Obstacle::polyline(&[p; 9]), Err(ObstacleError::Points));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn polyline(points: &[Point]) -> Result<Self, ObstacleError> {
        if !(2..=MAX_POINTS).contains(&points.len()) {
            return Err(ObstacleError::Points);
        }
        let mut chain = [points[0].0; MAX_POINTS];
        for (at, point) in chain.iter_mut().zip(points) {
            *at = point.0;
        }
        Ok(Self::of(Shape::Chain { points: chain, count: points.len() }))
    }

    /// An outline as a tape measure gives it: at one distance ahead of the hub, pairs of height above the
    /// hub's centre and lateral position outboard of the hub face.
    ///
    /// # Errors
    /// Fewer than 2 pairs or more than 8; a coordinate beyond 5 m.
    ///
    /// ```
    /// use beadseat::{sweep::Obstacle, units::mm};
    /// let inner_wing = [(mm(250.0), mm(-190.0)), (mm(330.0), mm(-170.0)), (mm(390.0), mm(-90.0))];
    /// assert!(Obstacle::measured(mm(0.0), &inner_wing).is_ok());
    /// ```
    pub fn measured(forward: Length, pairs: &[(Length, Length)]) -> Result<Self, ObstacleError> {
        if !(2..=MAX_POINTS).contains(&pairs.len()) {
            return Err(ObstacleError::Points);
        }
        let mut points = [Point([0.0; 3]); MAX_POINTS];
        for (point, &(height, lateral)) in points.iter_mut().zip(pairs) {
            *point = Point::new(forward, lateral, height)?;
        }
        Self::polyline(&points[..pairs.len()])
    }

    /// An arch lip: the arc through three points, in order.
    ///
    /// # Errors
    /// Points of which two coincide; an arc of more than 5 m radius that is not straight.
    ///
    /// ```
    /// use beadseat::{sweep::{Obstacle, Point}, units::mm};
    /// let front = Point::new(mm(360.0), mm(35.0), mm(60.0))?;
    /// let top = Point::new(mm(0.0), mm(30.0), mm(390.0))?;
    /// let rear = Point::new(mm(-350.0), mm(35.0), mm(80.0))?;
    /// let lip = Obstacle::arch_lip(front, top, rear)?;
    /// assert!(lip.points().next().is_some_and(|first| (first.up() - front.up()).abs() < mm(1e-9)));
    /// assert!(Obstacle::arch_lip(front, front, rear).is_err());
    /// # Ok::<(), beadseat::sweep::ObstacleError>(())
    /// ```
    pub fn arch_lip(from: Point, over: Point, to: Point) -> Result<Self, ObstacleError> {
        let (u, v) = (sub(over.0, from.0), sub(to.0, from.0));
        let (uu, vv) = (dot(u, u), dot(v, v));
        let chord = sub(to.0, over.0);
        if uu < 1.0 || vv < 1.0 || dot(chord, chord) < 1.0 {
            return Err(ObstacleError::Coincident);
        }
        let axis = cross(u, v);
        let area2 = dot(axis, axis);
        // Straight when the middle point is within a micrometre of the chord.
        if area2 < 1e-6 * vv {
            return Self::polyline(&[from, over, to]);
        }
        // The centre of the circle through three points, from the first of them.
        let to_centre = scale(add(scale(cross(v, axis), uu), scale(cross(axis, u), vv)), 0.5 / area2);
        let radius = OutOfRange::check("arch radius", length(to_centre), "mm", 1.0, 5000.0)?;
        let centre = add(from.0, to_centre);
        let across = scale(to_centre, -1.0 / radius);
        let ahead = cross(scale(axis, 1.0 / libm::sqrt(area2)), across);
        let last = sub(to.0, centre);
        let angle = libm::atan2(dot(last, ahead), dot(last, across));
        let angle = if angle < 0.0 { angle + core::f64::consts::TAU } else { angle };
        Ok(Self::of(Shape::Arc { centre, across: [across, ahead], radius, angle }))
    }

    /// A flat round plate, such as a spring seat or a backing plate: its centre, another point of its axis,
    /// and its radius.
    ///
    /// # Errors
    /// Points that coincide, a radius outside 0 to 1000 mm.
    ///
    /// ```
    /// use beadseat::{sweep::{Obstacle, Point}, units::mm};
    /// let seat = Point::new(mm(0.0), mm(-190.0), mm(330.0))?;
    /// let up = Point::new(mm(0.0), mm(-195.0), mm(380.0))?;
    /// assert!(Obstacle::disc(seat, up, mm(70.0)).is_ok());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn disc(centre: Point, on_axis: Point, radius: Length) -> Result<Self, ObstacleError> {
        let radius = OutOfRange::check("radius", in_mm(radius), "mm", 0.0, 1000.0)?;
        let axis = sub(on_axis.0, centre.0);
        let size = length(axis);
        if size < 1.0 {
            return Err(ObstacleError::Coincident);
        }
        let axis = scale(axis, 1.0 / size);
        // Across the axis and the coordinate direction it leans to least.
        let least = (0..3).fold(0, |least, i| if axis[i].abs() < axis[least].abs() { i } else { least });
        let mut other = [0.0; 3];
        other[least] = 1.0;
        let first = cross(axis, other);
        let first = scale(first, 1.0 / length(first));
        Ok(Self::of(Shape::Disc { centre: centre.0, across: [first, cross(axis, first)], radius }))
    }

    /// A round bar or tube with round ends: the line through its middle, and its radius.
    ///
    /// # Errors
    /// A radius outside 0 to 1000 mm.
    ///
    /// ```
    /// use beadseat::{sweep::{Obstacle, Point}, units::mm};
    /// let (a, b) = (Point::new(mm(90.0), mm(-140.0), mm(-70.0))?, Point::new(mm(110.0), mm(-480.0), mm(-60.0))?);
    /// assert_eq!(Obstacle::capped_cylinder(a, b, mm(12.0))?.radius(), mm(12.0)); // a tie rod
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn capped_cylinder(from: Point, to: Point, radius: Length) -> Result<Self, OutOfRange> {
        Self::segment(from, to).with_radius(radius)
    }

    /// Thickens it by a radius; radii add.
    ///
    /// # Errors
    /// A sum outside 0 to 1000 mm.
    pub fn with_radius(mut self, radius: Length) -> Result<Self, OutOfRange> {
        let most = 1000.0 - self.radius;
        self.radius += OutOfRange::check("radius", in_mm(radius), "mm", 0.0, most)?;
        Ok(self)
    }

    /// Sets how far its place and size may be off.
    ///
    /// # Errors
    /// Outside 0 to 100 mm.
    pub fn with_uncertainty(mut self, uncertainty: Length) -> Result<Self, OutOfRange> {
        self.uncertainty = OutOfRange::check("uncertainty", in_mm(uncertainty), "mm", 0.0, 100.0)?;
        Ok(self)
    }

    /// As measured, without its uncertainty.
    pub(crate) const fn at_nominal(mut self) -> Self {
        self.uncertainty = 0.0;
        self
    }

    /// Sets what it is fixed to; the body if not said.
    ///
    /// # Errors
    /// An arm less than 20 mm long from pivot to end, seen from the front; a rod that is not twice as long; a shape
    /// beside the line of its rod.
    pub fn carried_by(mut self, carrier: Carrier) -> Result<Self, ObstacleError> {
        if let Carrier::Arm { pivot, end } = carrier {
            let [_, y, z] = sub(end.0, pivot.0);
            if libm::hypot(y, z) < SHORTEST_ARM {
                return Err(ObstacleError::Coincident);
            }
        }
        if let Carrier::Rod { outer, inner } = carrier {
            let way = sub(inner.0, outer.0);
            let size = length(way);
            if size < SHORTEST_ROD {
                return Err(ObstacleError::Coincident);
            }
            let on_rod =
                |point: Vector| length(cross(scale(way, 1.0 / size), sub(point, outer.0))) < ON_A_ROD;
            match self.shape {
                Shape::Chain { points, count: 1 | 2 } if points[..2].iter().all(|&point| on_rod(point)) => {}
                _ => return Err(ObstacleError::OffRod),
            }
        }
        self.carrier = carrier;
        Ok(self)
    }

    /// The points of its shape in order, before it is thickened: a point, the corners of an edge or the ends
    /// of the line through the middle of a bar. Of a disc, its centre; of an arc, places along it.
    ///
    /// ```
    /// use beadseat::{sweep::{Obstacle, Point}, units::mm};
    /// let (a, b) = (Point::new(mm(300.0), mm(-200.0), mm(0.0))?, Point::new(mm(-300.0), mm(-200.0), mm(0.0))?);
    /// assert!(Obstacle::segment(a, b).points().eq([a, b]));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn points(&self) -> impl Iterator<Item = Point> {
        self.places(PLACES_OF_AN_ARC)
    }

    /// The same, of an arc so many places, two or more.
    pub(crate) fn places(&self, along_an_arc: usize) -> impl Iterator<Item = Point> + use<> {
        let shape = self.shape;
        let count = match shape {
            Shape::Chain { count, .. } => count,
            Shape::Disc { .. } => 1,
            Shape::Arc { .. } => along_an_arc,
        };
        (0..count).map(move |i| {
            Point(match shape {
                Shape::Chain { points, .. } => points[i],
                Shape::Disc { centre, .. } => centre,
                Shape::Arc { centre, across, radius, angle } => {
                    let (sin, cos) = libm::sincos(angle * i as f64 / (count - 1) as f64);
                    add(centre, add(scale(across[0], radius * cos), scale(across[1], radius * sin)))
                }
            })
        })
    }

    /// A point of the edge of a disc, at an angle around its axis; none of another shape.
    ///
    /// ```
    /// use beadseat::{sweep::{Obstacle, Point}, units::{deg, mm}};
    /// let (seat, up) = (Point::new(mm(0.0), mm(0.0), mm(300.0))?, Point::new(mm(0.0), mm(0.0), mm(310.0))?);
    /// let edge = Obstacle::disc(seat, up, mm(70.0))?.edge(deg(25.0)).ok_or("no disc")?;
    /// assert_eq!(edge.up(), mm(300.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn edge(&self, around: Angle) -> Option<Point> {
        let Shape::Disc { centre, across, radius } = self.shape else { return None };
        let (sin, cos) = libm::sincos(in_rad(around));
        let out = add(scale(across[0], radius * cos), scale(across[1], radius * sin));
        Some(Point(add(centre, out)))
    }

    /// How far it reaches from its shape.
    pub const fn radius(&self) -> Length {
        units::mm(self.radius)
    }

    /// How far it may be off.
    pub const fn uncertainty(&self) -> Length {
        units::mm(self.uncertainty)
    }

    /// What it is fixed to.
    pub const fn carrier(&self) -> Carrier {
        self.carrier
    }
}

/// How many obstacles a corner can have.
pub const MAX_OBSTACLES: usize = 16;

/// The obstacles of a corner, in order.
///
/// ```
/// use beadseat::{sweep::{MAX_OBSTACLES, Obstacle, ObstacleError, Obstacles, Point}, units::mm};
/// let mut around = Obstacles::new();
/// let stud = Obstacle::point(Point::new(mm(0.0), mm(40.0), mm(390.0))?);
/// for _ in 0..MAX_OBSTACLES {
///     around.push(stud)?;
/// }
/// assert_eq!(around.push(stud), Err(ObstacleError::TooMany));
/// # Ok::<(), beadseat::sweep::ObstacleError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Obstacles {
    /// Beyond the count, points that nothing reads.
    list: [Obstacle; MAX_OBSTACLES],
    count: usize,
}

impl Default for Obstacles {
    fn default() -> Self {
        Self::new()
    }
}

impl Obstacles {
    /// A list without obstacles.
    pub const fn new() -> Self {
        Self { list: [Obstacle::point(Point([0.0; 3])); MAX_OBSTACLES], count: 0 }
    }

    /// Adds one at the end.
    ///
    /// # Errors
    /// A seventeenth.
    pub fn push(&mut self, obstacle: Obstacle) -> Result<(), ObstacleError> {
        *self.list.get_mut(self.count).ok_or(ObstacleError::TooMany)? = obstacle;
        self.count += 1;
        Ok(())
    }

    /// All of them, in order.
    pub fn iter(&self) -> impl Iterator<Item = &Obstacle> {
        self.as_slice().iter()
    }

    pub(crate) fn as_slice(&self) -> &[Obstacle] {
        self.list.get(..self.count).unwrap_or_default()
    }

    /// The same as measured, without their uncertainties.
    ///
    /// ```
    /// use beadseat::{sweep::{Obstacle, Obstacles, Point}, units::mm};
    /// let mut around = Obstacles::new();
    /// around.push(Obstacle::point(Point::new(mm(0.0), mm(40.0), mm(390.0))?).with_uncertainty(mm(2.0))?)?;
    /// assert!(around.at_nominal().iter().all(|o| o.uncertainty() == mm(0.0)));
    /// # Ok::<(), beadseat::sweep::ObstacleError>(())
    /// ```
    pub fn at_nominal(mut self) -> Self {
        for obstacle in &mut self.list {
            *obstacle = obstacle.at_nominal();
        }
        self
    }
}
