//! The units that people are told in.

use crate::record::words;

words! {
    /// The units that a report or a fact is printed in. What is stamped keeps its own, and what is written for programs is metric.
    ///
    /// ```
    /// use beadseat::UnitSystem;
    /// assert_eq!("us".parse(), Ok(UnitSystem::Us));
    /// ```
    UnitSystem closed {
        /// Millimetres, kilograms, kilopascals, kilometres an hour, newton metres.
        Metric = "metric",
        /// Inches, pounds, pounds a square inch, miles an hour, pound feet.
        Us = "us",
        /// Metric first, with the others behind.
        Both = "both",
    }
}

impl UnitSystem {
    /// The one that stands alone where there is room for one.
    pub(crate) const fn first(self) -> Self {
        match self {
            Self::Metric | Self::Both => Self::Metric,
            Self::Us => Self::Us,
        }
    }

    /// One at a time, as rows of a table have them.
    pub(crate) const fn each(self) -> &'static [Self] {
        match self {
            Self::Metric => &[Self::Metric],
            Self::Us => &[Self::Us],
            Self::Both => &[Self::Metric, Self::Us],
        }
    }
}
