//! A dimension with the span that manufacture leaves it.

use core::ops::{Add, Mul, Neg, Sub};

/// A value whose real size lies between two bounds.
///
/// `min() <= nominal() <= max()` holds as long as only numbers go in, and every operation keeps it: sums and differences take
/// the worst combination of both, so a chain of dimensions ends at its worst case.
///
/// ```
/// use beadseat::{Toleranced, units::mm};
/// let width = Toleranced::new(mm(197.0), mm(205.0), mm(213.2)).ok_or("not in order")?;
/// let gap = Toleranced::exact(mm(300.0)) - width;
/// assert_eq!(gap.min(), mm(300.0) - mm(213.2));
/// assert_eq!(gap.max(), mm(300.0) - mm(197.0));
/// assert!(Toleranced::new(mm(2.0), mm(1.0), mm(3.0)).is_none());
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Toleranced<Q> {
    min: Q,
    nominal: Q,
    max: Q,
}

impl<Q: Copy + PartialOrd> Toleranced<Q> {
    /// `None` unless the three are in order (a value that is not a number never is).
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm};
    /// assert!(Toleranced::new(mm(1.0), mm(1.0), mm(1.0)).is_some());
    /// assert!(Toleranced::new(mm(f64::NAN), mm(1.0), mm(1.0)).is_none());
    /// ```
    pub fn new(min: Q, nominal: Q, max: Q) -> Option<Self> {
        (min <= nominal && nominal <= max).then_some(Self { min, nominal, max })
    }

    /// The same, where the caller's formula already proves the order.
    pub(crate) fn ordered(min: Q, nominal: Q, max: Q) -> Self {
        debug_assert!(min <= nominal && nominal <= max);
        Self { min, nominal, max }
    }

    /// A value without a tolerance.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm};
    /// assert_eq!(Toleranced::exact(mm(5.0)).max(), mm(5.0));
    /// ```
    pub fn exact(value: Q) -> Self {
        Self { min: value, nominal: value, max: value }
    }

    /// The smallest it can be.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm};
    /// assert_eq!(Toleranced::exact(mm(5.0)).min(), mm(5.0));
    /// ```
    pub fn min(self) -> Q {
        self.min
    }

    /// What it is meant to be.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm};
    /// assert_eq!(Toleranced::exact(mm(5.0)).nominal(), mm(5.0));
    /// ```
    pub fn nominal(self) -> Q {
        self.nominal
    }

    /// The largest it can be.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm};
    /// assert_eq!(Toleranced::exact(mm(5.0)).max(), mm(5.0));
    /// ```
    pub fn max(self) -> Q {
        self.max
    }

    /// Holds each of the three against the same limits.
    pub(crate) fn checked<R: Copy + PartialOrd, E>(
        self,
        check: impl Fn(Q) -> Result<R, E>,
    ) -> Result<Toleranced<R>, E> {
        Ok(Toleranced::ordered(check(self.min)?, check(self.nominal)?, check(self.max)?))
    }

    /// Applies a function that never decreases to all three.
    pub(crate) fn map<R: Copy + PartialOrd>(self, increasing: impl Fn(Q) -> R) -> Toleranced<R> {
        Toleranced::ordered(increasing(self.min), increasing(self.nominal), increasing(self.max))
    }
}

impl<Q: Copy + Sub<Output = Q> + Add<Output = Q>> Toleranced<Q> {
    /// A value known to within `uncertainty` either way.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm};
    /// let gap = Toleranced::within(mm(18.0), mm(1.5));
    /// assert_eq!((gap.min(), gap.max()), (mm(18.0) - mm(1.5), mm(18.0) + mm(1.5)));
    /// ```
    ///
    /// A negative uncertainty is taken as its size.
    pub fn within(value: Q, uncertainty: Q) -> Self
    where
        Q: PartialOrd,
    {
        let (a, b) = (value - uncertainty, value + uncertainty);
        if a <= b { Self { min: a, nominal: value, max: b } } else { Self { min: b, nominal: value, max: a } }
    }
}

impl<Q: Add<Output = Q>> Add for Toleranced<Q> {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { min: self.min + other.min, nominal: self.nominal + other.nominal, max: self.max + other.max }
    }
}

impl<Q: Sub<Output = Q>> Sub for Toleranced<Q> {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self { min: self.min - other.max, nominal: self.nominal - other.nominal, max: self.max - other.min }
    }
}

impl<Q: Neg<Output = Q>> Neg for Toleranced<Q> {
    type Output = Self;
    fn neg(self) -> Self {
        Self { min: -self.max, nominal: -self.nominal, max: -self.min }
    }
}

impl<Q: Mul<f64, Output = Q>> Mul<f64> for Toleranced<Q> {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        let (a, b) = (self.min * factor, self.max * factor);
        let nominal = self.nominal * factor;
        if factor < 0.0 { Self { min: b, nominal, max: a } } else { Self { min: a, nominal, max: b } }
    }
}
