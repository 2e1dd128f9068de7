//! The circle through the centres of holes, however many were measured.

use core::fmt;

use crate::units::{self, Length, in_mm};
use crate::wheel::HoleCentre;

/// Why no circle goes through the points.
///
/// ```
/// use beadseat::{units::mm, wheel::{drilling::{CircleFit, FitError}, HoleCentre}};
/// let line = [0.0, 50.0, 100.0].map(|x| HoleCentre::new(mm(x), mm(0.0)));
/// assert_eq!(CircleFit::through(&line, mm(0.1)), Err(FitError::OnALine));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum FitError {
    /// Fewer than three points, more than twelve, or a coordinate that is not a number up to 2 m.
    Points,
    /// The points lie on a line, or so nearly that any circle would do.
    OnALine,
}

impl fmt::Display for FitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Points => "a circle needs 3 to 12 points with coordinates up to 2 m",
            Self::OnALine => "the points lie on a line: no circle goes through them",
        })
    }
}

impl core::error::Error for FitError {}

/// A circle through three hole centres, or the best one through more: the least sum of squares of the
/// radial distances (Gauss–Newton from the algebraic fit).
///
/// The uncertainty of the diameter follows from that of each coordinate: to first order only the radial
/// part of an error counts, so that with `δ = dR + dx·cos θ + dy·sin θ` for every hole, the diameter's is
/// twice the first row of the pseudo-inverse times the errors. Holes that stand close together make it
/// large. Source: geometry and linear least squares.
///
/// ```
/// use beadseat::{units::mm, wheel::{drilling::CircleFit, HoleCentre}};
/// let at = |x, y| HoleCentre::new(mm(x), mm(y));
/// let fit = CircleFit::through(&[at(3.0, 4.0), at(66.0, -12.0), at(90.5, 60.2)], mm(0.1))?;
/// assert!((fit.diameter() - mm(104.314390)).abs() < mm(1e-6));
/// assert!((fit.centre().x() - mm(44.541517)).abs() < mm(1e-6));
/// # Ok::<(), beadseat::wheel::drilling::FitError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CircleFit {
    centre: HoleCentre,
    diameter: Length,
    max_uncertainty: Length,
    typical_uncertainty: Length,
    off: Length,
}

/// Errors count by their first derivatives; what their squares add over and above is at most 5 % of that and
/// `8u²/D` on circles of which more than half of the holes are measured. No proof: random circles hold it.
const SECOND_ORDER: f64 = 1.05;

type Matrix = [[f64; 3]; 3];

/// The inverse of a symmetric matrix, unless it is singular to within the rounding of its entries.
fn inverse(m: Matrix) -> Option<Matrix> {
    let [[a, b, c], [_, d, e], [_, _, f]] = m;
    let minors = [d * f - e * e, c * e - b * f, b * e - c * d];
    let determinant = a * minors[0] + b * minors[1] + c * minors[2];
    if determinant.is_nan() || determinant <= 1e-10 * a * d * f {
        return None;
    }
    let (p, q, r) = (a * f - c * c, b * c - a * e, a * d - b * b);
    let rows = [[minors[0], minors[1], minors[2]], [minors[1], p, q], [minors[2], q, r]];
    Some(rows.map(|row| row.map(|x| x / determinant)))
}

fn times(m: Matrix, v: [f64; 3]) -> [f64; 3] {
    m.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
}

/// `Σ vᵀv` and `Σ v·w` over rows `v` with right sides `w`.
fn normal(rows: impl Iterator<Item = ([f64; 3], f64)>) -> (Matrix, [f64; 3]) {
    let (mut matrix, mut right) = ([[0.0; 3]; 3], [0.0; 3]);
    for (row, side) in rows {
        for (i, &x) in row.iter().enumerate() {
            for (j, &y) in row.iter().enumerate() {
                matrix[i][j] += x * y;
            }
            right[i] += x * side;
        }
    }
    (matrix, right)
}

impl CircleFit {
    /// The circle through 3 to 12 centres, each coordinate known to within `uncertainty`.
    ///
    /// # Errors
    /// [`FitError`] for too few or too many points, and for points on a line.
    pub fn through(centres: &[HoleCentre], uncertainty: Length) -> Result<Self, FitError> {
        const MOST_MM: f64 = 2000.0;
        if !(3..=12).contains(&centres.len())
            || centres.iter().any(|c| !(in_mm(c.x()).abs() <= MOST_MM && in_mm(c.y()).abs() <= MOST_MM))
        {
            return Err(FitError::Points);
        }
        let count = centres.len() as f64;
        let mean = |of: fn(&HoleCentre) -> Length| centres.iter().map(|c| in_mm(of(c))).sum::<f64>() / count;
        // About their middle, in units of their spread, so that the normal equations are well scaled.
        let (x0, y0) = (mean(HoleCentre::x), mean(HoleCentre::y));
        let about = || centres.iter().map(|c| (in_mm(c.x()) - x0, in_mm(c.y()) - y0));
        let spread = libm::sqrt(about().map(|(x, y)| x * x + y * y).sum::<f64>() / count);
        if spread == 0.0 {
            return Err(FitError::OnALine);
        }
        let points = || about().map(|(x, y)| (x / spread, y / spread));

        // Algebraic: x² + y² = 2·cx·x + 2·cy·y + (R² − cx² − cy²).
        let (matrix, right) = normal(points().map(|(x, y)| ([1.0, x, y], x * x + y * y)));
        let [c, b, a] = times(inverse(matrix).ok_or(FitError::OnALine)?, right);
        let (mut cx, mut cy) = (b / 2.0, a / 2.0);
        let mut radius = libm::sqrt(c + cx * cx + cy * cy);
        let row = |(x, y): (f64, f64), cx: f64, cy: f64| {
            let (dx, dy) = (x - cx, y - cy);
            let r = libm::hypot(dx, dy);
            ([1.0, dx / r, dy / r], r)
        };
        const STEPS: usize = 50;
        for _ in 0..STEPS {
            let (matrix, right) = normal(points().map(|point| {
                let (row, r) = row(point, cx, cy);
                (row, r - radius)
            }));
            let [dr, dx, dy] = times(inverse(matrix).ok_or(FitError::OnALine)?, right);
            (radius, cx, cy) = (radius + dr, cx + dx, cy + dy);
            if dr.abs() + dx.abs() + dy.abs() < 1e-14 {
                break;
            }
        }

        let rows = || points().map(|point| row(point, cx, cy));
        let covariance = inverse(normal(rows().map(|(row, _)| (row, 0.0))).0).ok_or(FitError::OnALine)?;
        let [first, _, _] = covariance;
        let weights = || rows().map(|(row, _)| first[0] * row[0] + first[1] * row[1] + first[2] * row[2]);
        // A radial error is at most both coordinates' together, as seen in its direction.
        let max_uncertainty = rows()
            .zip(weights())
            .map(|((row, _), weight)| weight.abs() * (row[1].abs() + row[2].abs()))
            .sum::<f64>();
        let off = rows().map(|(_, r)| (r - radius).abs()).fold(0.0, f64::max);
        let (u, diameter) = (in_mm(uncertainty.abs()), 2.0 * radius * spread);
        Ok(Self {
            centre: HoleCentre::new(units::mm(x0 + cx * spread), units::mm(y0 + cy * spread)),
            diameter: units::mm(diameter),
            max_uncertainty: units::mm(u * 2.0 * max_uncertainty * SECOND_ORDER + 8.0 * u * u / diameter),
            typical_uncertainty: units::mm(u * 2.0 * libm::sqrt(first[0])),
            off: units::mm(off * spread),
        })
    }

    /// The centre of the circle.
    pub const fn centre(&self) -> HoleCentre {
        self.centre
    }

    /// The diameter of the fitted circle.
    pub const fn diameter(&self) -> Length {
        self.diameter
    }

    /// How far the diameter may be off if every coordinate is off by its uncertainty, each in the worse
    /// direction, with an allowance for what is not in proportion to the errors.
    pub const fn max_uncertainty(&self) -> Length {
        self.max_uncertainty
    }

    /// How far the diameter is likely off, the errors of the coordinates being independent.
    pub const fn typical_uncertainty(&self) -> Length {
        self.typical_uncertainty
    }

    /// How far the worst hole lies off the circle, radially; of three, nothing but rounding. Far more than
    /// the uncertainty means holes of two circles, or a slip.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::{drilling::CircleFit, HoleCentre}};
    /// let at = |x, y| HoleCentre::new(mm(x), mm(y));
    /// let square = [at(50.0, 0.0), at(0.0, 50.0), at(-50.0, 0.0), at(0.0, -54.0)];
    /// assert!(CircleFit::through(&square, mm(0.1))?.worst_hole_off() > mm(0.9));
    /// # Ok::<(), beadseat::wheel::drilling::FitError>(())
    /// ```
    pub const fn worst_hole_off(&self) -> Length {
        self.off
    }
}
