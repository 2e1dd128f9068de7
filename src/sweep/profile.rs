//! The outline of a tire on its rim, in the wheel frame.

mod dimensions;

use super::section::{RimSection, TireSection};
use crate::OutOfRange;
use crate::units::{self, Length, in_mm};
use crate::vector::{Flat, area, dot, sub};

/// The part of the outline that is nearest to something.
///
/// ```
/// use beadseat::sweep::Part;
/// assert_ne!(Part::Tread, Part::Barrel);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Part {
    /// The surface that runs on the road.
    Tread,
    /// The round edge of the tread.
    Shoulder,
    /// The side of the tire.
    Sidewall,
    /// The edge of the rim.
    Flange,
    /// The inside of the rim.
    Barrel,
}

/// A place on the outline of a wheel.
///
/// ```
/// use beadseat::{sweep::{Part, Profile, RimSection, TireSection}, units::mm};
/// let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
/// let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
/// let (gap, place) = profile.distance(mm(-46.0), mm(350.0));
/// assert_eq!(place.part(), Part::Tread);
/// assert!((gap - mm(34.0)).abs() < mm(1e-9) && (place.radial() - mm(316.0)).abs() < mm(1e-9));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ProfilePoint {
    axial: f64,
    radial: f64,
    part: Part,
}

impl ProfilePoint {
    /// How far outboard of the hub face it is, along the spindle.
    pub const fn axial(&self) -> Length {
        units::mm(self.axial)
    }

    /// How far from the spindle it is.
    pub const fn radial(&self) -> Length {
        units::mm(self.radial)
    }

    /// The part of the outline that lies there.
    pub const fn part(&self) -> Part {
        self.part
    }
}

/// How far a point is from a part, and which way the distance grows.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reach {
    pub(super) distance: f64,
    /// Gradient: a unit vector along `a` and `r`.
    pub(super) along: f64,
    pub(super) out: f64,
    pub(super) part: Part,
    /// No point is deeper in it.
    pub(super) deepest: f64,
}

fn distance(a: Flat, b: Flat) -> f64 {
    libm::hypot(a[0] - b[0], a[1] - b[1])
}

/// The normal to the right of the way from one point to another, which is not the same.
fn normal(from: Flat, to: Flat) -> Flat {
    let d = sub(to, from);
    let length = distance(from, to);
    [d[1] / length, -d[0] / length]
}

/// The half-profile of a tire on its rim: an annulus of revolution about the spindle.
///
/// Outline, on each side of the middle of the rim: the barrel, a straight line at its inside radius over the
/// whole width of the rim; the edge of the rim, up to the flange; straight sidewalls from flange to greatest
/// width and on to the shoulder; the shoulder, an arc; the tread, an arc from shoulder to shoulder.
///
/// It is the union of two convex parts, rim and tire, and the distance to it is the lesser of theirs. Outside that is
/// the exact distance to the outline. Inside it is exact for a tire no wider than its rim. A wider one leaves a notch
/// behind its flange, and the depth is that in one of the parts: never more than that to the outline, less near the
/// notch and where the parts end in each other.
///
/// ```
/// use beadseat::{sweep::{Part, Profile, RimSection, TireSection}, units::mm};
/// let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
/// let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
/// // A tie-rod end inside the barrel, 15 mm from it.
/// let (gap, place) = profile.distance(mm(-80.0), mm(170.0));
/// assert!((gap - mm(15.0)).abs() < mm(1e-9));
/// assert_eq!(place.part(), Part::Barrel);
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Profile {
    centre: f64,
    growth: f64,
    /// Radius of the flanges, and where the tire is widest, without growth.
    flange: f64,
    widest: Flat,
    rim: Rectangle,
    tire: Hull,
    /// The deepest places of both parts.
    deepest: [f64; 2],
}

/// The rim, and what of the tire is behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Rectangle {
    half_width: f64,
    bottom: f64,
    top: f64,
}

/// The tire, and what of the rim is behind it: its side, then shoulder and crown.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Hull {
    side: Chain,
    shoulder: Flat,
    shoulder_radius: f64,
    /// Normal at the edge of the tread.
    tread_edge: Flat,
    /// Radius of the crown's arc; none for a flat tread.
    crown: Option<f64>,
    outside_radius: f64,
}

/// Corners from the barrel up, with the normals of the edges before, between and after them.
///
/// No edge is shorter than [`ONE_CORNER`], and the normals turn one way only, so that the side is convex whatever
/// is rounded.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Chain {
    corners: [(Flat, Part); 3],
    count: usize,
    normals: [(Flat, Part); 4],
}

/// What is nearer than this is one corner, in millimetres: a tenth of what the sweep allows for rounding. An edge of no
/// length has no normal. The edge of the rim, which alone can be short, is upright, so that its normal is exact at any
/// other length; between all other corners are at least 0.06 mm.
const ONE_CORNER: f64 = 1e-10;

impl Chain {
    /// A first corner over the barrel.
    fn from(corner: Flat, part: Part) -> Self {
        Self { corners: [(corner, part); 3], count: 1, normals: [([0.0, -1.0], Part::Barrel); 4] }
    }

    /// The edge to a corner further up, and that corner; instead of the last one if that is the same.
    fn up_to(mut self, corner: Flat, part: Part) -> Self {
        let last = self.corners[self.count - 1].0;
        if distance(last, corner) < ONE_CORNER {
            self.corners[self.count - 1] = (corner, part);
            return self;
        }
        self.corners[self.count] = (corner, part);
        let edge = turned_from(self.normals[self.count - 1].0, normal(last, corner));
        self.normals[self.count] = (edge, part);
        self.count += 1;
        self
    }

    /// The edge to a circle.
    fn up_to_circle(mut self, centre: Flat, radius: f64) -> Self {
        let edge = tangent(self.corners[self.count - 1].0, centre, radius);
        let edge = turned_from(self.normals[self.count - 1].0, edge);
        self.normals[self.count] = (edge, Part::Sidewall);
        self
    }
}

/// The normal of an edge after another one: rounding does not turn it back.
fn turned_from(before: Flat, edge: Flat) -> Flat {
    if area(before, edge) < 0.0 { before } else { edge }
}

impl Profile {
    /// A tire on a rim.
    ///
    /// # Errors
    /// A tire not at least 5 mm taller than the flanges, half its width outside half to three times the
    /// rim's; a crown drop or shoulder radius for which there is no room.
    pub fn new(rim: RimSection, tire: TireSection) -> Result<Self, OutOfRange> {
        let (w, flange) = (rim.half_width, rim.flange_radius);
        let top = OutOfRange::check("outside radius", tire.outside_radius, "mm", flange + 5.0, 1500.0)?;
        let s = OutOfRange::check("half section width", tire.half_width, "mm", 0.5 * w, 3.0 * w)?;
        let height = top - flange;
        let aspect = height / (2.0 * s);
        let widest = flange + height * tire.widest.unwrap_or(0.45);
        let tread = s * tire.tread_share.unwrap_or((0.95 - 0.25 * aspect).clamp(0.7, 0.9));

        // Neither the greatest width of the tire nor a flange that stands out may be above the edge's tangent.
        let most = drop_room(tread, top - widest, s - tread).min(drop_room(tread, height, w - tread));
        let drop = match tire.crown_drop {
            Some(drop) => OutOfRange::check("crown drop", drop, "mm", 0.0, most)?,
            None => (0.05 * tread).min(most),
        };
        // An arc that is flatter than a micrometre is flat.
        let crown = (drop > 1e-3).then(|| (tread * tread + drop * drop) / (2.0 * drop));
        let edge_radius = if crown.is_some() { top - drop } else { top };
        let tread_edge = match crown {
            Some(radius) => [tread / radius, (radius - drop) / radius],
            None => [0.0, 1.0],
        };

        let across = if s > tread { (s - tread) / (1.0 - tread_edge[0]) } else { 0.0 };
        let room = across.min((edge_radius - widest) / tread_edge[1]);
        let shoulder_radius = match tire.shoulder_radius {
            Some(radius) => OutOfRange::check("shoulder radius", radius, "mm", 0.0, room)?,
            None => (0.2 * height).min(room),
        };
        let shoulder =
            [tread - shoulder_radius * tread_edge[0], edge_radius - shoulder_radius * tread_edge[1]];

        let barrel = rim.barrel_radius;
        let (edge, side) = ([w, flange], [s, widest]);
        let (chain, rim_top) = if s > w {
            // The sidewall, drawn on behind the edge of the rim: to the barrel, or to the middle before that.
            let slope = (s - w) / (widest - flange);
            let inward = slope * (flange - barrel);
            let foot = if inward < w { [w - inward, barrel] } else { [0.0, flange - w / slope] };
            let chain = Chain::from(foot, Part::Barrel)
                .up_to(side, Part::Sidewall)
                .up_to_circle(shoulder, shoulder_radius);
            let up = tangent(side, shoulder, shoulder_radius);
            let joint = [shoulder[0] + shoulder_radius * up[0], shoulder[1] + shoulder_radius * up[1]];
            // Where the tire, above its greatest width, is as wide as the rim.
            let level = if w >= joint[0] {
                widest + (joint[1] - widest) * (s - w) / (s - joint[0])
            } else if w >= tread {
                let across = w - shoulder[0];
                shoulder[1] + libm::sqrt((shoulder_radius * shoulder_radius - across * across).max(0.0))
            } else {
                edge_radius
            };
            (chain, level)
        } else {
            let chain = Chain::from([w, barrel], Part::Flange).up_to(edge, Part::Flange);
            let bulges = dot(tangent(edge, shoulder, shoulder_radius), sub(side, edge)) > 0.0;
            let chain = if bulges { chain.up_to(side, Part::Sidewall) } else { chain };
            (chain.up_to_circle(shoulder, shoulder_radius), flange)
        };

        let rim_part = Rectangle { half_width: w, bottom: barrel, top: rim_top };
        let tire_part =
            Hull { side: chain, shoulder, shoulder_radius, tread_edge, crown, outside_radius: top };
        let deepest = [
            deepest(barrel, rim_top, |r| rim_part.reach([0.0, r]).0),
            deepest(barrel, top, |r| tire_part.reach([0.0, r]).0),
        ];
        Ok(Self {
            centre: rim.centre,
            growth: 0.0,
            flange,
            widest: side,
            rim: rim_part,
            tire: tire_part,
            deepest,
        })
    }

    /// The same, larger on every side, the barrel included: the allowance for tolerance, snow tread, chain,
    /// centrifugal growth or the bulge above the contact patch. What makes only the tire larger is better
    /// given by its own width and radius.
    ///
    /// # Errors
    /// Outside 0 to 200 mm, or more than closes the barrel; growths add.
    ///
    /// ```
    /// use beadseat::{sweep::{Profile, RimSection, TireSection}, units::mm};
    /// let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
    /// let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
    /// let (gap, _) = profile.grown(mm(5.0))?.distance(mm(-46.0), mm(350.0));
    /// assert!((gap - mm(29.0)).abs() < mm(1e-9));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn grown(mut self, by: Length) -> Result<Self, OutOfRange> {
        let most = f64::min(200.0, self.rim.bottom - self.growth);
        self.growth += OutOfRange::check("growth", in_mm(by), "mm", 0.0, most)?;
        Ok(self)
    }

    /// The distance of a point of the wheel frame from the outline, negative inside, and the nearest place.
    /// It never changes by more than the point moves. A negative `radial` is taken as its size.
    pub fn distance(&self, axial: Length, radial: Length) -> (Length, ProfilePoint) {
        let (a, r) = (in_mm(axial), in_mm(radial).abs());
        let [rim, tire] = self.reaches(a, r);
        let reach = if rim.distance < tire.distance { rim } else { tire };
        (units::mm(reach.distance), place(&reach, a, r))
    }

    /// The distances of both parts; each is convex in `(a, r)`.
    pub(super) fn reaches(&self, a: f64, r: f64) -> [Reach; 2] {
        let x = a - self.centre;
        let at = [x.abs(), r];
        let reach = |(distance, gradient, part): Term, deepest: f64| Reach {
            distance: distance - self.growth,
            along: if x < 0.0 { -gradient[0] } else { gradient[0] },
            out: gradient[1],
            part,
            deepest: deepest - self.growth,
        };
        [reach(self.rim.reach(at), self.deepest[0]), reach(self.tire.reach(at), self.deepest[1])]
    }

    /// A radius about the hub that holds all of it.
    pub(super) fn farthest(&self) -> f64 {
        let half = self.rim.half_width.max(self.widest[0]);
        libm::hypot(self.centre.abs() + half, self.tire.outside_radius) + self.growth
    }
}

pub(super) fn place(reach: &Reach, a: f64, r: f64) -> ProfilePoint {
    ProfilePoint {
        axial: a - reach.distance * reach.along,
        radial: r - reach.distance * reach.out,
        part: reach.part,
    }
}

/// The most a tread of this half width can drop to its edge beside a place `below` its middle and `beyond` its
/// edge: three quarters of the height, or until the line to that place would be flatter than the edge of the
/// crown, which falls by `2·d·t/(t² − d²)`.
fn drop_room(tread: f64, below: f64, beyond: f64) -> f64 {
    let fits = |drop: f64| 2.0 * drop * tread * beyond <= (below - drop) * (tread * tread - drop * drop);
    let (mut low, mut high) = (0.0, f64::min(0.75 * below, 0.99 * tread));
    if fits(high) {
        return high;
    }
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if fits(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// The normal of the line from a point, upward, along a circle that it keeps to its left.
fn tangent(from: Flat, centre: Flat, radius: f64) -> Flat {
    let d = sub(from, centre);
    let length = distance(from, centre);
    let along = (length - radius) * (length + radius);
    if along <= 0.0 {
        // On the circle: the greatest width is where the shoulder begins.
        return if length > 0.0 { [d[0] / length, d[1] / length] } else { [1.0, 0.0] };
    }
    let (cos, sin) = (radius / length, libm::sqrt(along) / length);
    [(d[0] * cos - d[1] * sin) / length, (d[0] * sin + d[1] * cos) / length]
}

/// The least distance in a part: by symmetry in its middle plane, where it is convex in `r`. Each step keeps the
/// two thirds that hold it.
fn deepest(mut low: f64, mut high: f64, distance: impl Fn(f64) -> f64) -> f64 {
    let (bottom, top) = (low, high);
    for _ in 0..60 {
        let third = (high - low) / 3.0;
        if distance(low + third) < distance(high - third) {
            high -= third;
        } else {
            low += third;
        }
    }
    distance(0.5 * (low + high)) - (top - bottom) * 1e-9
}

type Term = (f64, Flat, Part);

fn larger(best: &mut Term, distance: f64, gradient: Flat, part: Part) {
    if distance > best.0 {
        *best = (distance, gradient, part);
    }
}

/// The distance from a corner or the arc about a centre, if the point lies between two directions from it.
fn fan(best: &mut Term, at: Flat, centre: Flat, radius: f64, between: [Flat; 2], part: Part) {
    let d = sub(at, centre);
    let ahead = dot(between[0], d) + dot(between[1], d) >= 0.0;
    if ahead && area(between[0], d) >= 0.0 && area(d, between[1]) >= 0.0 {
        let length = libm::sqrt(dot(d, d));
        let gradient = if length > 0.0 { [d[0] / length, d[1] / length] } else { between[0] };
        larger(best, length - radius, gradient, part);
    }
}

// The distance from a convex set, inside and out, is the greatest of `n·y − h(n)` over all directions `n`, `h`
// being how far the set reaches that way. Every edge gives one direction; every corner and arc a fan of them,
// of which that towards the point is the greatest if the fan holds it. As the greatest of linear functions
// it is convex. Sets that are the same left and right may be folded in half.

impl Rectangle {
    fn reach(&self, at: Flat) -> Term {
        let mut best = (at[0] - self.half_width, [1.0, 0.0], Part::Flange);
        larger(&mut best, self.bottom - at[1], [0.0, -1.0], Part::Barrel);
        larger(&mut best, at[1] - self.top, [0.0, 1.0], Part::Sidewall);
        let ends = [(self.bottom, [[0.0, -1.0], [1.0, 0.0]]), (self.top, [[1.0, 0.0], [0.0, 1.0]])];
        for (end, between) in ends {
            fan(&mut best, at, [self.half_width, end], 0.0, between, Part::Flange);
        }
        best
    }
}

impl Hull {
    fn reach(&self, at: Flat) -> Term {
        let mut best = (f64::NEG_INFINITY, [0.0, 1.0], Part::Tread);
        let Chain { corners, count, normals } = &self.side;
        for (&(corner, part), edges) in corners.iter().zip(normals.windows(2)).take(*count) {
            let (before, edge) = edges[0];
            larger(&mut best, dot(before, sub(at, corner)), before, edge);
            fan(&mut best, at, corner, 0.0, [before, edges[1].0], part);
        }
        let (last, edge) = normals[*count];
        larger(&mut best, dot(last, sub(at, corners[*count - 1].0)), last, edge);
        fan(&mut best, at, self.shoulder, self.shoulder_radius, [last, self.tread_edge], Part::Shoulder);
        let over = at[1] - self.outside_radius;
        match self.crown {
            Some(radius) => {
                // From the centre; its arc may be of kilometres, so that what is over it is not a difference of two.
                let d = [at[0], over + radius];
                if d[1] > 0.0 && area(self.tread_edge, d) >= 0.0 {
                    let length = libm::sqrt(dot(d, d));
                    let above = (at[0] * at[0] + over * (over + 2.0 * radius)) / (length + radius);
                    larger(&mut best, above, [d[0] / length, d[1] / length], Part::Tread);
                }
            }
            None => larger(&mut best, over, [0.0, 1.0], Part::Tread),
        }
        best
    }
}
