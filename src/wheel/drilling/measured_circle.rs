//! A bolt circle from what a caliper or a tape can reach.

use crate::units::{self, Length, in_mm};
use crate::wheel::{BoltCircle, drilling::CircleFit};
use crate::{OutOfRange, Toleranced};

/// The diameter of a bolt circle as it follows from a measurement, with its uncertainty.
///
/// Give every length as a [`Toleranced`]: what the caliper showed, and how far it may be off. The
/// uncertainty is carried through in two ways: [`max_uncertainty`](Self::max_uncertainty) adds every error at its largest,
/// [`typical_uncertainty`](Self::typical_uncertainty) takes the root of the sum of their squares. The formulas are geometry of a
/// regular polygon; `n` holes, `k` steps apart, on a diameter `D`:
///
/// | measured | formula |
/// |---|---|
/// | between centres, `C` | `D = C / sin(kπ/n)` |
/// | over the outer edges, `L`, holes of `h` | `C = L − h` |
/// | between the inner edges | `C = L + h` |
/// | from an edge to the same edge of the other | `C = L` |
/// | bore of `b`, from its edge to the near edge of a hole, `m` | `D = b + 2·m + h` |
/// | the same to the far edge, `q` | `D = b + 2·q − h` |
/// | from the far edge of the bore across it to the near edge of a hole, `v` | `D = 2·v − b + h` |
/// | three centres apart by `a`, `b`, `c`, a triangle of area `K` | `D = abc / (2·K)` |
/// | centres in a drawing | least squares, [`CircleFit`] |
///
/// The shop rule for five holes is an estimate and stands apart: [`FiveHoleRule`](crate::wheel::drilling::FiveHoleRule).
///
/// On a hub, the spigot is the bore and the studs are the holes. The wider apart two holes are, the less a
/// caliper's error is enlarged: measure opposite ones where there are.
///
/// ```
/// use beadseat::{Toleranced, units::mm, wheel::drilling::MeasuredCircle};
/// let read = |value| Toleranced::within(mm(value), mm(0.1));
/// // Five holes of 15 mm: 80.83 mm over the outer edges of neighbours.
/// let circle = MeasuredCircle::over_outer_edges(5, 1, read(80.83), read(15.0))?;
/// assert!((circle.diameter() - mm(111.996685)).abs() < mm(1e-6));
/// assert!((circle.max_uncertainty() - mm(0.340260)).abs() < mm(1e-6)); // 0.2 mm / sin 36°
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredCircle {
    count: u8,
    diameter: Length,
    max_uncertainty: Length,
    typical_uncertainty: Length,
}

/// The diameter of the circle around a triangle, and the square of its area.
///
/// # Errors
/// Flatter than this, and the circle is anything.
fn around_triangle([a, b, c]: [f64; 3]) -> Result<(f64, f64), OutOfRange> {
    let s = (a + b + c) / 2.0;
    OutOfRange::check("longest side of the triangle", a.max(b).max(c), "mm", 0.0, s * (1.0 - 1e-6))?;
    let square = s * (s - a) * (s - b) * (s - c);
    Ok((a * b * c / (2.0 * libm::sqrt(square)), square))
}

/// The least and the greatest circle around a triangle whose sides lie between two ends each.
///
/// With two sides kept, the circle grows to both ends of the third, and is least where one of the two is a diameter:
/// it is greatest at a corner of the box. It is least at one too, if no angle of the triangle is right in the box, and
/// else not less than the longest side can be.
///
/// # Errors
/// If a corner is no triangle.
fn around_box(ends: [[f64; 2]; 3]) -> Result<(f64, f64), OutOfRange> {
    let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
    // Of the angle across from each side, whether it is blunt at a corner, and whether it is not.
    let mut angles = [[false; 2]; 3];
    for corner in 0..8 {
        let sides = [0, 1, 2].map(|i| ends[i][corner >> i & 1]);
        let (around, _) = around_triangle(sides)?;
        (least, most) = (least.min(around), most.max(around));
        let squares = sides.map(|side| side * side);
        for (angle, square) in angles.iter_mut().zip(squares) {
            angle[usize::from(squares.iter().sum::<f64>() > 2.0 * square)] = true;
        }
    }
    if angles.contains(&[true; 2]) {
        let longest = ends.map(|[short, _]| short).into_iter().fold(0.0, f64::max);
        least = least.min(longest);
    }
    Ok((least, most))
}

/// How far a length may be off its nominal value, on the side where that is more, mm.
pub(super) fn off(length: Toleranced<Length>) -> f64 {
    in_mm((length.max() - length.nominal()).max(length.nominal() - length.min()))
}

/// `Σ factor·length`, and what the errors of the lengths make of it.
fn sum(terms: &[(f64, Toleranced<Length>)]) -> [f64; 3] {
    let (mut value, mut max_uncertainty, mut squares) = (0.0, 0.0, 0.0);
    for &(factor, length) in terms {
        let error = factor.abs() * off(length);
        value += factor * in_mm(length.nominal());
        max_uncertainty += error;
        squares += error * error;
    }
    [value, max_uncertainty, libm::sqrt(squares)]
}

impl MeasuredCircle {
    /// `[diameter, max_uncertainty, typical_uncertainty]` in mm.
    pub(super) fn new(
        count: u8,
        [diameter, max_uncertainty, typical_uncertainty]: [f64; 3],
    ) -> Result<Self, OutOfRange> {
        OutOfRange::check("number of holes", f64::from(count), "", 3.0, 12.0)?;
        OutOfRange::check("bolt circle", diameter, "mm", 60.0, 600.0)?;
        OutOfRange::check("uncertainty of the bolt circle", max_uncertainty, "mm", 0.0, 100.0)?;
        let [diameter, max_uncertainty, typical_uncertainty] =
            [diameter, max_uncertainty, typical_uncertainty].map(units::mm);
        Ok(Self { count, diameter, max_uncertainty, typical_uncertainty })
    }

    /// A circle that is known.
    pub(super) const fn exactly(circle: BoltCircle) -> Self {
        let none = units::mm(0.0);
        Self {
            count: circle.count(),
            diameter: circle.diameter(),
            max_uncertainty: none,
            typical_uncertainty: none,
        }
    }

    /// From a chord that is itself a sum of lengths.
    fn of_chord(count: u8, apart: u8, terms: &[(f64, Toleranced<Length>)]) -> Result<Self, OutOfRange> {
        OutOfRange::check("number of holes", f64::from(count), "", 3.0, 12.0)?;
        let most = f64::from(count - 1);
        OutOfRange::check("steps between the holes", f64::from(apart), "", 1.0, most)?;
        let sine = libm::sin(core::f64::consts::PI * f64::from(apart) / f64::from(count));
        Self::new(count, sum(terms).map(|of_chord| of_chord / sine))
    }

    /// From the distance between the centres of two holes that are `apart` steps from each other.
    ///
    /// # Errors
    /// A count outside 3 to 12, steps outside 1 to `count` − 1, a circle outside 60 to 600 mm.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::MeasuredCircle};
    /// let circle = MeasuredCircle::between_centres(8, 4, Toleranced::within(mm(165.1), mm(0.1)))?;
    /// assert_eq!(circle.diameter(), mm(165.1));
    /// assert!(MeasuredCircle::between_centres(5, 5, Toleranced::exact(mm(67.2))).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn between_centres(count: u8, apart: u8, chord: Toleranced<Length>) -> Result<Self, OutOfRange> {
        Self::of_chord(count, apart, &[(1.0, chord)])
    }

    /// From the distance over the outer edges of two holes, and the diameter of a hole.
    ///
    /// # Errors
    /// As [`MeasuredCircle::between_centres`].
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::MeasuredCircle};
    /// let exact = |value| Toleranced::exact(mm(value));
    /// assert_eq!(MeasuredCircle::over_outer_edges(4, 2, exact(114.0), exact(14.0))?.diameter(), mm(100.0));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn over_outer_edges(
        count: u8,
        apart: u8,
        over: Toleranced<Length>,
        hole: Toleranced<Length>,
    ) -> Result<Self, OutOfRange> {
        Self::of_chord(count, apart, &[(1.0, over), (-1.0, hole)])
    }

    /// From the distance between the inner edges of two holes, and the diameter of a hole.
    ///
    /// # Errors
    /// As [`MeasuredCircle::between_centres`].
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::MeasuredCircle};
    /// let exact = |value| Toleranced::exact(mm(value));
    /// let circle = MeasuredCircle::between_inner_edges(6, 1, exact(53.85), exact(16.0))?;
    /// assert!((circle.diameter() - mm(139.7)).abs() < mm(1e-9));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn between_inner_edges(
        count: u8,
        apart: u8,
        between: Toleranced<Length>,
        hole: Toleranced<Length>,
    ) -> Result<Self, OutOfRange> {
        Self::of_chord(count, apart, &[(1.0, between), (1.0, hole)])
    }

    /// From the bore's edge to the near edge of a hole, with the diameters of both; on a hub from the
    /// spigot to the near side of a stud.
    ///
    /// # Errors
    /// A count outside 3 to 12, a circle outside 60 to 600 mm.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::MeasuredCircle};
    /// let read = |value| Toleranced::within(mm(value), mm(0.1));
    /// let circle = MeasuredCircle::from_bore(5, read(66.6), read(15.45), read(14.5))?;
    /// assert!((circle.diameter() - mm(112.0)).abs() < mm(1e-9));
    /// assert!((circle.max_uncertainty() - mm(0.4)).abs() < mm(1e-9));
    /// assert!((circle.typical_uncertainty() - mm(0.244949)).abs() < mm(1e-6));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn from_bore(
        count: u8,
        bore: Toleranced<Length>,
        gap: Toleranced<Length>,
        hole: Toleranced<Length>,
    ) -> Result<Self, OutOfRange> {
        Self::new(count, sum(&[(1.0, bore), (2.0, gap), (1.0, hole)]))
    }

    /// From the bore's edge to the far edge of a hole, with the diameters of both.
    ///
    /// # Errors
    /// As [`MeasuredCircle::from_bore`].
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::MeasuredCircle};
    /// let exact = |value| Toleranced::exact(mm(value));
    /// let circle = MeasuredCircle::from_bore_to_far_edge(5, exact(67.1), exact(30.35), exact(13.5))?;
    /// assert!((circle.diameter() - mm(114.3)).abs() < mm(1e-9));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn from_bore_to_far_edge(
        count: u8,
        bore: Toleranced<Length>,
        reach: Toleranced<Length>,
        hole: Toleranced<Length>,
    ) -> Result<Self, OutOfRange> {
        Self::new(count, sum(&[(1.0, bore), (2.0, reach), (-1.0, hole)]))
    }

    /// From the far edge of the bore, across it, to the near edge of a hole, with the diameters of both.
    ///
    /// # Errors
    /// As [`MeasuredCircle::from_bore`].
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::MeasuredCircle};
    /// let exact = |value| Toleranced::exact(mm(value));
    /// let circle = MeasuredCircle::across_bore(4, exact(73.1), exact(87.2), exact(13.0))?;
    /// assert!((circle.diameter() - mm(114.3)).abs() < mm(1e-9));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn across_bore(
        count: u8,
        bore: Toleranced<Length>,
        across: Toleranced<Length>,
        hole: Toleranced<Length>,
    ) -> Result<Self, OutOfRange> {
        Self::new(count, sum(&[(2.0, across), (-1.0, bore), (1.0, hole)]))
    }

    /// From the three distances between the centres of any three holes.
    ///
    /// # Errors
    /// As [`MeasuredCircle::from_bore`]; also if no triangle has such sides, at the worst of their errors.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::MeasuredCircle};
    /// let sides = [60.0, 80.0, 100.0].map(|side| Toleranced::exact(mm(side)));
    /// assert_eq!(MeasuredCircle::from_three_sides(4, sides)?.diameter(), mm(100.0));
    /// assert!(MeasuredCircle::from_three_sides(4, [10.0, 20.0, 100.0].map(|s| Toleranced::exact(mm(s)))).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn from_three_sides(count: u8, sides: [Toleranced<Length>; 3]) -> Result<Self, OutOfRange> {
        let [a, b, c] = sides.map(|side| in_mm(side.nominal()));
        let (diameter, square) = around_triangle([a, b, c])?;
        // ∂D/∂a = D·(1/a − a·(b² + c² − a²) / (8·K²)), and so for each side.
        let slope =
            |a: f64, b: f64, c: f64| diameter * (1.0 / a - a * (b * b + c * c - a * a) / (8.0 * square));
        let slopes = [slope(a, b, c), slope(b, c, a), slope(c, a, b)];
        let [x, y, z] = sides;
        let [_, _, typical_uncertainty] = sum(&[(slopes[0], x), (slopes[1], y), (slopes[2], z)]);
        let (least, most) = around_box(sides.map(|side| [side.min(), side.max()].map(in_mm)))?;
        Self::new(count, [diameter, (most - diameter).max(diameter - least), typical_uncertainty])
    }

    /// From a circle fitted through hole centres.
    ///
    /// # Errors
    /// As [`MeasuredCircle::from_bore`].
    ///
    /// ```
    /// use beadseat::{literal, units::{deg, mm}, wheel::{BoltCircle, drilling::{CircleFit, MeasuredCircle}}};
    /// let holes = literal!(BoltCircle, "5x112");
    /// let centres: Vec<_> = holes.centres(deg(90.0)).collect();
    /// let fit = CircleFit::through(&centres, mm(0.1))?;
    /// assert!((MeasuredCircle::from_fit(5, &fit)?.diameter() - mm(112.0)).abs() < mm(1e-9));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_fit(count: u8, fit: &CircleFit) -> Result<Self, OutOfRange> {
        Self::new(count, [fit.diameter(), fit.max_uncertainty(), fit.typical_uncertainty()].map(in_mm))
    }

    /// How many holes were counted.
    pub const fn count(&self) -> u8 {
        self.count
    }

    /// The diameter that the nominal measurement gives.
    pub const fn diameter(&self) -> Length {
        self.diameter
    }

    /// How far the diameter may be off if every error is at its largest and points the same way.
    pub const fn max_uncertainty(&self) -> Length {
        self.max_uncertainty
    }

    /// How far it is likely off: the root of the sum of the squares of the errors.
    pub const fn typical_uncertainty(&self) -> Length {
        self.typical_uncertainty
    }

    /// Whether a diameter lies within the worst uncertainty.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::MeasuredCircle};
    /// let circle = MeasuredCircle::between_centres(4, 2, Toleranced::within(mm(99.4), mm(0.6)))?;
    /// assert!(circle.includes(mm(100.0)) && !circle.includes(mm(98.0)));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn includes(&self, diameter: Length) -> bool {
        // The last bits of a sine and its inverse.
        const ROUND_OFF: Length = units::mm(1e-9);
        (diameter - self.diameter).abs() <= self.max_uncertainty + ROUND_OFF
    }
}
