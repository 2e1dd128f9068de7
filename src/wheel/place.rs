//! Where a wheel stands by what is told of it: an inset, or a backspacing that must agree with it.

use crate::OutOfRange;
use crate::units::{Length, at_most, in_mm, mm};
use crate::wheel::{Backspacing, Inset, Wheel};

/// Why a wheel cannot have a backspacing: what else is told of it contradicts it.
///
/// ```
/// use beadseat::wheel::{Backspacing, Wheel};
/// let wheel = Wheel::parse("7Jx17 ET45")?;
/// let error = wheel.with_backspacing(Backspacing::parse("BS 4.5in")?).unwrap_err();
/// assert_eq!(
///     error.to_string(),
///     "inset ET45 and backspacing BS 114.3 contradict each other: with flanges of 11 to 13 mm it makes an inset of 12.4 to 14.4 mm",
/// );
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum BackspacingError {
    /// The inset of the wheel is none that follows from it with any usual flange.
    Inset {
        /// The wheel, with its inset.
        wheel: Wheel,
        /// What does not agree with it.
        backspacing: Backspacing,
    },
    /// The wheel is stamped with another.
    Stamped {
        /// The wheel, with the backspacing it is stamped with.
        wheel: Wheel,
        /// What does not agree with it.
        backspacing: Backspacing,
    },
    /// The inset that follows is beyond ± 300 mm, or the backspacing itself is none.
    OutOfRange(OutOfRange),
}

impl core::fmt::Display for BackspacingError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Inset { wheel, backspacing } => {
                let Some(inset) = wheel.inset() else {
                    return write!(f, "{backspacing} contradicts the inset");
                };
                let (flange, made) = (wheel.size().flange_width(), wheel.size().inset_by(*backspacing));
                let tenths = |length: Length| libm::round(in_mm(length) * 10.0) / 10.0;
                write!(
                    f,
                    "inset {inset} and backspacing {backspacing} contradict each other: with flanges of {} to {} mm it \
                     makes an inset of {} to {} mm",
                    tenths(flange.min()),
                    tenths(flange.max()),
                    tenths(made.min()),
                    tenths(made.max()),
                )
            }
            Self::Stamped { wheel, backspacing } => {
                write!(f, "backspacing {backspacing} contradicts that of the wheel, {wheel}")
            }
            Self::OutOfRange(error) => error.fmt(f),
        }
    }
}

impl core::error::Error for BackspacingError {}

impl From<OutOfRange> for BackspacingError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}

/// To what backspacing is told: an eighth of an inch. Common practice, no source.
const TOLD_TO: Length = mm(3.175);

impl Wheel {
    /// The same with its backspacing, as of a wheel on which no inset is stamped. Of a wheel that has an inset it stays:
    /// the two must agree within the span of flange widths and an eighth of an inch, to which backspacing is told
    /// (common practice, no source).
    ///
    /// # Errors
    /// If it contradicts the inset or the backspacing of the wheel, or makes an inset beyond ± 300 mm.
    ///
    /// ```
    /// use beadseat::wheel::{Backspacing, Wheel};
    /// let backspacing = Backspacing::parse("BS 4.5in")?;
    /// assert_eq!(Wheel::parse("7Jx17")?.with_backspacing(backspacing)?.to_string(), "7Jx17 BS 114.3");
    /// assert_eq!(Wheel::parse("7Jx17 ET13")?.with_backspacing(backspacing)?.to_string(), "7Jx17 ET13");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn with_backspacing(self, backspacing: Backspacing) -> Result<Self, BackspacingError> {
        if let Some(inset) = self.inset() {
            let made = self.size().inset_by(backspacing);
            let agrees = at_most(in_mm(made.min() - TOLD_TO), in_mm(inset.length()))
                && at_most(in_mm(inset.length()), in_mm(made.max() + TOLD_TO));
            return if agrees { Ok(self) } else { Err(BackspacingError::Inset { wheel: self, backspacing }) };
        }
        if let Some(stamped) = self.backspacing() {
            let apart = in_mm((stamped.length() - backspacing.length()).abs());
            let agrees = at_most(apart, in_mm(TOLD_TO));
            return if agrees {
                Ok(self)
            } else {
                Err(BackspacingError::Stamped { wheel: self, backspacing })
            };
        }
        Inset::from_length(self.size().inset_by(backspacing).nominal())?;
        Ok(self.standing_at(backspacing))
    }
}
