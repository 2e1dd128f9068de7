//! Wheels that are drilled for two bolt circles.

use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};
use crate::units::{self, Length, mm};
use crate::wheel::BoltCircle;

/// Two bolt circles in one wheel, the holes of one midway between those of the other.
///
/// Each circle is a pattern of its own: a wheel that is drilled for two fits the hubs of both, and of
/// nothing between.
///
/// # Syntax
/// `5x100/114.3`, `5x100/5x114.3`, `4x98 4x108`, with as many holes and another diameter. Canonical `5x100/5x114.3`.
///
/// ```
/// use beadseat::{literal, units::mm, wheel::{BoltCircle, drilling::DualDrilling}};
/// let wheel = DualDrilling::new(literal!(BoltCircle, "4x100"), literal!(BoltCircle, "4x114.3")).ok_or("other count")?;
/// assert!((wheel.between_neighbours() - mm(41.533207)).abs() < mm(1e-6));
/// assert!((wheel.wall(mm(14.0), mm(14.0)) - mm(27.533207)).abs() < mm(1e-6));
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct DualDrilling {
    first: BoltCircle,
    second: BoltCircle,
}

impl DualDrilling {
    /// `None` unless both have as many holes: others do not fall midway.
    pub const fn new(first: BoltCircle, second: BoltCircle) -> Option<Self> {
        if first.count() == second.count() { Some(Self { first, second }) } else { None }
    }

    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let first = tri!(BoltCircle::scan(scanner));
        scanner.skip_space();
        scanner.eat(b'/');
        let second = tri!(first.scan_second(scanner));
        match Self::new(first, second) {
            Some(drilling) => Ok(drilling),
            None => Err(scanner.error(ParseErrorKind::Contradiction, Field::BoltCircle, start)),
        }
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.first.write(text);
        self.second.write(text.byte(b'/'));
    }

    /// Both circles that are drilled in the wheel.
    pub const fn circles(&self) -> [BoltCircle; 2] {
        [self.first, self.second]
    }

    /// From the centre of a hole to that of its neighbour of the other circle: two radii and half a step.
    pub fn between_neighbours(&self) -> Length {
        let [a, b] = self.circles().map(|circle| units::in_mm(circle.diameter()) / 2.0);
        let half_step = core::f64::consts::PI / f64::from(self.first.count());
        mm(libm::sqrt(a * a + b * b - 2.0 * a * b * libm::cos(half_step)))
    }

    /// What is left between the two holes, of these diameters; nothing or less, and they run into each
    /// other.
    pub fn wall(&self, first_hole: Length, second_hole: Length) -> Length {
        self.between_neighbours() - (first_hole + second_hole) / 2.0
    }
}

designation!(DualDrilling in "beadseat::wheel::drilling", "4x98 4x108" => "4x98/4x108", wrong "4x98 5x108");
