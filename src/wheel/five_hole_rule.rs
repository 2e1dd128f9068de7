//! The shop rule for a circle of five holes, and how far it errs.

use super::measured_circle::off;
use super::{BoltCircle, MeasuredCircle};
use crate::units::{Length, in_mm};
use crate::{OutOfRange, Toleranced};

/// "From the middle of a hole to the far edge of the next but one": a shop's rule for the diameter of a
/// circle of five holes.
///
/// It reads `0.9511·D + h/2` and so errs by `h/2 − 0.0489·D`: it is exact only for holes of `0.0979·D`, and
/// on real wheels reads one to two millimetres too much, as far as the next pattern. An estimate with an
/// error, never the value. Source: the rule is common practice, no source; its error is geometry.
///
/// ```
/// use beadseat::{literal, units::mm, wheel::{BoltCircle, drilling::FiveHoleRule}};
/// let rule = FiveHoleRule::on(&literal!(BoltCircle, "5x112"), mm(14.5)).ok_or("not five holes")?;
/// assert!((rule.reading() - mm(113.768330)).abs() < mm(1e-6)); // which would be 5x114.3
/// assert!((rule.error() - mm(1.768330)).abs() < mm(1e-6));
/// assert!(rule.estimate()?.includes(mm(112.0)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FiveHoleRule {
    reading: Toleranced<Length>,
    hole: Toleranced<Length>,
}

/// `sin 72°`: from hole to next hole but one, on a circle of diameter 1.
fn sine() -> f64 {
    libm::sin(2.0 * core::f64::consts::PI / 5.0)
}

impl FiveHoleRule {
    /// What was measured, and the diameter of a hole.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::FiveHoleRule};
    /// let rule = FiveHoleRule::read(Toleranced::within(mm(113.8), mm(0.3)), Toleranced::within(mm(14.5), mm(0.1)));
    /// let estimate = rule.estimate()?;
    /// assert!(estimate.includes(mm(112.0)) && estimate.includes(mm(114.3)));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn read(far_edge: Toleranced<Length>, hole: Toleranced<Length>) -> Self {
        Self { reading: far_edge, hole }
    }

    /// What the rule would read on a pattern with holes of a diameter; `None` unless it has five.
    pub fn on(holes: &BoltCircle, hole: Length) -> Option<Self> {
        let chord = holes.chord(2).filter(|_| holes.count() == 5)?;
        Some(Self { reading: Toleranced::exact(chord + hole / 2.0), hole: Toleranced::exact(hole) })
    }

    /// What the rule takes for the diameter.
    pub fn reading(&self) -> Length {
        self.reading.nominal()
    }

    /// What it reads too much, `h/2 − 0.0489·D`; negative if too little.
    pub fn error(&self) -> Length {
        self.reading.nominal() - self.diameter()
    }

    /// The diameter, if the middle of the hole was met.
    fn diameter(&self) -> Length {
        (self.reading.nominal() - self.hole.nominal() / 2.0) / sine()
    }

    /// The diameter of hole for which the rule would be exact.
    ///
    /// ```
    /// use beadseat::{literal, units::mm, wheel::{BoltCircle, drilling::FiveHoleRule}};
    /// let rule = FiveHoleRule::on(&literal!(BoltCircle, "5x100"), mm(12.5)).ok_or("not five holes")?;
    /// assert!((rule.exact_for_hole() - mm(9.788697)).abs() < mm(1e-6));
    /// # Ok::<(), &str>(())
    /// ```
    pub fn exact_for_hole(&self) -> Length {
        self.diameter() * (2.0 * (1.0 - sine()))
    }

    /// The reading as an estimate: its uncertainty is the rule's own error on top of the measurement's.
    ///
    /// # Errors
    /// A circle outside 60 to 600 mm.
    pub fn estimate(&self) -> Result<MeasuredCircle, OutOfRange> {
        let worst = in_mm(self.error()).abs() + (off(self.reading) + off(self.hole) / 2.0) / sine();
        MeasuredCircle::new(5, [in_mm(self.reading()), worst, worst])
    }
}
