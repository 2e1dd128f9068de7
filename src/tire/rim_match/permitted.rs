//! Permitted rim widths that standards print, where no rule gives them.

use super::{RimRange, RimRangeBasis};
use crate::Citation;
use crate::rim::RimWidth;
use crate::tire::{SizeClass, TireSize};

/// A size with its narrowest and widest rim.
struct Permitted {
    size: TireSize,
    min: RimWidth,
    max: RimWidth,
}

/// Widths as they are printed, in inches.
const fn permitted(size: &str, min: &str, max: &str) -> Permitted {
    match (TireSize::parse(size), RimWidth::parse(min), RimWidth::parse(max)) {
        (Ok(size), Ok(min), Ok(max)) => Permitted { size, min, max },
        (Err(error), ..) | (_, Err(error), _) | (.., Err(error)) => error.fail(),
    }
}

/// ETRTO Standards Manual, 2022 corrigendum, pp. A.21 and A.27, rims for tractor tires for traction wheels.
/// Of sizes in inches the narrowest and widest of the approved contours, of the others the printed range.
static AGRICULTURAL: &[Permitted] = &[
    permitted("750/50-26", "23", "27"),
    permitted("900/50-42", "27", "31"),
    permitted("1000/50-25", "33", "36"),
    permitted("1050/50-25", "36", "40"),
    permitted("1250/50-32", "44", "48"),
    permitted("710/55-30", "21", "25"),
    permitted("710/55-34", "21", "25"),
    permitted("750/55-26", "23", "27"),
    permitted("750/55-30", "23", "27"),
    permitted("900/55-32", "27", "31"),
    permitted("600/60-28", "18", "21"),
    permitted("600/60-38", "18", "21"),
    permitted("710/60-30", "21", "25"),
    permitted("710/60-34", "21", "25"),
    permitted("750/60-42", "23", "27"),
    permitted("850/60-32", "27", "30"),
    permitted("850/60-38", "27", "30"),
    permitted("900/60-32", "27", "31"),
    permitted("900/60-38", "27", "31"),
    permitted("900/60-42", "27", "31"),
    permitted("240/65-16", "7", "9"),
    permitted("260/65-16", "8", "9"),
    permitted("280/65-16", "8", "10"),
    permitted("340/65-18", "10", "12"),
    permitted("340/65-20", "10", "12"),
    permitted("340/65-28", "10", "12"),
    permitted("340/65-38", "10", "12"),
    permitted("340/65-42", "10", "12"),
    permitted("440/65-20", "13", "16"),
    permitted("440/65-24", "13", "16"),
    permitted("440/65-28", "13", "16"),
    permitted("480/65-24", "14", "17"),
    permitted("480/65-28", "14", "17"),
    permitted("600/65-28", "18", "21"),
    permitted("600/65-30", "18", "21"),
    permitted("600/65-32", "18", "21"),
    permitted("600/65-34", "18", "21"),
    permitted("600/65-38", "18", "21"),
    permitted("600/65-42", "18", "21"),
    permitted("9.5-24", "7", "8"),
    permitted("11.2-24", "9", "10"),
    permitted("11.2-28", "9", "10"),
    permitted("20.8-38", "16", "18"),
    permitted("20.8-42", "16", "18"),
];

/// GOST R 52899-2007, Annex A, truck tires, as a trade article reprints it: recommended and permitted rims.
static TRUCK: &[Permitted] = &[
    permitted("7.50-20", "6.0", "6.5"),
    permitted("8.25-20", "6.0", "6.5"),
    permitted("11.00-20", "8.0", "8.5"),
    permitted("7.50R20", "6.0", "6.5"),
    permitted("10.00R20", "7.0", "8.0"),
    permitted("11.00R20", "8.0", "8.5"),
    permitted("12.00R20", "8.5", "9.0"),
];

impl TireSize {
    /// The rim widths that a standard permits for the size, where a table that we have seen lists it:
    /// agricultural sizes (ETRTO) and some truck sizes by inches (GOST R 52899). For others see
    /// [`TireSize::estimated_rim_range`].
    ///
    /// The table of agricultural sizes prints a hyphen, and is read for both structures.
    ///
    /// ```
    /// use beadseat::{Citation, tire::{RimRangeBasis, TireSize}};
    /// let range = TireSize::parse("710/55R30")?.permitted_rim_range().ok_or("not listed")?;
    /// assert_eq!((range.min().to_string(), range.max().to_string()), ("21".into(), "25".into()));
    /// assert_eq!(range.basis(), RimRangeBasis::Standard);
    /// assert_eq!(range.citation(), Citation::RIM_RANGE_AGRICULTURAL);
    /// assert!(TireSize::parse("205/55R16")?.permitted_rim_range().is_none());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn permitted_rim_range(&self) -> Option<RimRange> {
        let agricultural = match self {
            Self::Metric(size) => size.class() == SizeClass::Agricultural,
            Self::Numeric(size) => size.class() == SizeClass::Agricultural,
            _ => false,
        };
        let (table, size, citation) = match self {
            _ if agricultural => (AGRICULTURAL, self.as_diagonal(), Citation::RIM_RANGE_AGRICULTURAL),
            Self::Numeric(_) => (TRUCK, *self, Citation::RIM_RANGE_TRUCK),
            _ => return None,
        };
        let &Permitted { min, max, .. } = table.iter().find(|row| row.size == size)?;
        Some(RimRange { min, max, basis: RimRangeBasis::Standard, citation })
    }
}
