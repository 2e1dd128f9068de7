//! The outline of a tire on its rim, in the wheel frame.

mod dimensions;

use super::section::{RimSection, TireSection};
use crate::OutOfRange;
use crate::units::{self, Length, in_mm};

/// The part of the outline that is nearest to something.
///
/// ```
/// use beadseat::sweep::Part;
/// assert_ne!(Part::Tread, Part::Barrel);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Part {
    /// The running surface.
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
pub struct Place {
    axial: f64,
    radial: f64,
    part: Part,
}

impl Place {
    /// How far outboard of the hub face it is, along the spindle.
    pub const fn axial(&self) -> Length {
        units::mm(self.axial)
    }

    /// How far from the spindle it is.
    pub const fn radial(&self) -> Length {
        units::mm(self.radial)
    }

    /// What is there.
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

type Flat = [f64; 2];

fn minus(a: Flat, b: Flat) -> Flat {
    [a[0] - b[0], a[1] - b[1]]
}

fn dot(a: Flat, b: Flat) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

fn cross(a: Flat, b: Flat) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

/// The normal to the right of the way from one point to another.
fn normal(from: Flat, to: Flat) -> Flat {
    let d = minus(to, from);
    let length = libm::hypot(d[0], d[1]);
    [d[1] / length, -d[0] / length]
}

/// The half-profile of a tire on its rim: an annulus of revolution about the spindle.
///
/// Outline, on each side of the middle of the rim: the barrel, a straight line at its inside radius over the
/// whole width of the rim; the edge of the rim, up to the flange; straight sidewalls from flange to greatest
/// width and on to the shoulder; the shoulder, an arc; the tread, an arc from shoulder to shoulder.
///
/// It is the union of two convex parts, rim and tire, and the distance to it is the lesser of theirs. That is
/// the exact distance to the outline outside. Inside it is exact too, but for the notch behind the flange of a
/// tire that bulges over its rim: there the depth is that to a side of the notch and not to its tip, less than
/// 1 % short where the sidewall leaves the flange by up to a quarter of its rise.
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

/// The tire, and what of the rim is behind it: corners from the barrel up, with the normals of the edges
/// before, between and after them; then shoulder and crown.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Hull {
    corners: [(Flat, Part); 3],
    count: usize,
    normals: [(Flat, Part); 4],
    shoulder: Flat,
    shoulder_radius: f64,
    /// Normal at the edge of the tread.
    tread_edge: Flat,
    /// Height of the centre of the crown's arc, and its radius; none for a flat tread.
    crown: Option<(f64, f64)>,
    outside_radius: f64,
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
        let crown = (drop > 1e-3).then(|| {
            let radius = (tread * tread + drop * drop) / (2.0 * drop);
            (top - radius, radius)
        });
        let edge_radius = if crown.is_some() { top - drop } else { top };
        let tread_edge = match crown {
            Some((height, radius)) => [tread / radius, (edge_radius - height) / radius],
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
        let (corners, count, rim_top) = if s > w {
            // The sidewall, drawn on behind the edge of the rim to the barrel.
            let foot = w - (s - w) * (flange - barrel) / (widest - flange);
            let foot = [foot.max(0.0), barrel];
            let up = tangent(side, shoulder, shoulder_radius);
            let joint = [shoulder[0] + shoulder_radius * up[0], shoulder[1] + shoulder_radius * up[1]];
            // Where the tire, above its greatest width, is as wide as the rim.
            let level = if w >= joint[0] {
                widest + (joint[1] - widest) * (s - w) / (s - joint[0])
            } else if w >= tread {
                shoulder[1]
                    + libm::sqrt(shoulder_radius * shoulder_radius - (w - shoulder[0]) * (w - shoulder[0]))
            } else {
                edge_radius
            };
            ([(foot, Part::Barrel), (side, Part::Sidewall), (side, Part::Sidewall)], 2, level)
        } else {
            let foot = [w, barrel];
            let bulges = dot(tangent(edge, shoulder, shoulder_radius), minus(side, edge)) > 0.0;
            let count = if bulges { 3 } else { 2 };
            ([(foot, Part::Flange), (edge, Part::Flange), (side, Part::Sidewall)], count, flange)
        };
        let mut normals = [([0.0, -1.0], Part::Barrel); 4];
        for i in 1..count {
            let part = if s <= w && i == 1 { Part::Flange } else { Part::Sidewall };
            normals[i] = (normal(corners[i - 1].0, corners[i].0), part);
        }
        normals[count] = (tangent(corners[count - 1].0, shoulder, shoulder_radius), Part::Sidewall);

        let rim_part = Rectangle { half_width: w, bottom: barrel, top: rim_top };
        let tire_part = Hull {
            corners,
            count,
            normals,
            shoulder,
            shoulder_radius,
            tread_edge,
            crown,
            outside_radius: top,
        };
        let deepest = [
            deepest(barrel, rim_top, |r| rim_part.reach([0.0, r]).0),
            deepest(barrel, top, |r| tire_part.reach([0.0, r]).0),
        ];
        Ok(Self { centre: rim.centre, growth: 0.0, rim: rim_part, tire: tire_part, deepest })
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
    pub fn distance(&self, axial: Length, radial: Length) -> (Length, Place) {
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
        let half = self.tire.corners.iter().fold(self.rim.half_width, |most, corner| most.max(corner.0[0]));
        libm::hypot(self.centre.abs() + half, self.tire.outside_radius) + self.growth
    }
}

pub(super) fn place(reach: &Reach, a: f64, r: f64) -> Place {
    Place {
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
    let d = minus(from, centre);
    let length = libm::hypot(d[0], d[1]);
    if length <= radius {
        // On the circle: the greatest width is where the shoulder begins.
        return if length > 0.0 { [d[0] / length, d[1] / length] } else { [1.0, 0.0] };
    }
    let (cos, sin) = (radius / length, libm::sqrt(1.0 - radius / length * (radius / length)));
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
    let d = minus(at, centre);
    let ahead = dot(between[0], d) + dot(between[1], d) >= 0.0;
    if ahead && cross(between[0], d) >= 0.0 && cross(d, between[1]) >= 0.0 {
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
        for i in 0..self.count {
            let (corner, part) = self.corners[i];
            let (before, edge) = self.normals[i];
            larger(&mut best, dot(before, minus(at, corner)), before, edge);
            fan(&mut best, at, corner, 0.0, [before, self.normals[i + 1].0], part);
        }
        let (last, edge) = self.normals[self.count];
        larger(&mut best, dot(last, minus(at, self.corners[self.count - 1].0)), last, edge);
        fan(&mut best, at, self.shoulder, self.shoulder_radius, [last, self.tread_edge], Part::Shoulder);
        match self.crown {
            Some((height, radius)) => {
                fan(&mut best, at, [0.0, height], radius, [self.tread_edge, [0.0, 1.0]], Part::Tread);
            }
            None => larger(&mut best, at[1] - self.outside_radius, [0.0, 1.0], Part::Tread),
        }
        best
    }
}
