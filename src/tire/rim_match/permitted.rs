//! Rim widths that tables print, where no rule gives them: those of standards, and those of one maker.

use super::{RimRange, RimRangeBasis};
use crate::Citation;
use crate::rim::RimWidth;
use crate::tire::TireSize;
use crate::tire::size::{Rims, SizeKey, find, sorted};

/// A size, and its narrowest and widest rim.
type Permitted = (SizeKey, (RimWidth, RimWidth));

/// Widths as they are printed, in inches.
const fn permitted(size: &str, min: &str, max: &str) -> Permitted {
    match (RimWidth::parse(min), RimWidth::parse(max)) {
        (Ok(min), Ok(max)) => (TireSize::listed(size).key(), (min, max)),
        (Err(error), _) | (_, Err(error)) => error.fail(),
    }
}

/// ETRTO Standards Manual, 2022 corrigendum, pp. A.21 and A.27, rims for tractor tires for traction wheels.
/// Of sizes in inches the narrowest and widest of the approved contours, of the others the printed range.
static AGRICULTURAL: &[Permitted] = &sorted([
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
    permitted("800/50-34", "24", "28"),
    permitted("850/50-38", "27", "30"),
    permitted("1050/50-32", "36", "40"),
    permitted("710/55-28", "21", "25"),
    permitted("850/55-42", "27", "30"),
    permitted("620/60-30", "18", "21"),
    permitted("620/60-34", "18", "21"),
    permitted("650/60-34", "20", "23"),
    permitted("650/60-38", "20", "23"),
    permitted("300/65-16", "9", "11"),
    permitted("300/65-18", "9", "11"),
    permitted("320/65-16", "9", "11"),
    permitted("320/65-18", "9", "11"),
    permitted("420/65-20", "12", "15"),
    permitted("420/65-24", "12", "15"),
    permitted("420/65-28", "12", "15"),
    permitted("420/65-30", "12", "15"),
    permitted("500/65-24", "15", "18"),
    permitted("500/65-28", "15", "18"),
    permitted("540/65-24", "16", "20"),
    permitted("540/65-26", "16", "20"),
    permitted("540/65-28", "16", "20"),
    permitted("540/65-30", "16", "20"),
    permitted("540/65-34", "16", "20"),
    permitted("540/65-38", "16", "20"),
    permitted("650/65-34", "20", "23"),
    permitted("650/65-38", "20", "23"),
    permitted("650/65-42", "20", "23"),
    permitted("650/65-46", "20", "23"),
    permitted("12.4-24", "9", "11"),
    permitted("12.4-28", "9", "11"),
    permitted("12.4-32", "9", "11"),
    permitted("12.4-36", "9", "11"),
    permitted("12.4-38", "9", "11"),
    permitted("13.6-24", "10", "12"),
    permitted("13.6-28", "10", "12"),
    permitted("13.6-36", "10", "12"),
    permitted("13.6-38", "10", "12"),
    permitted("14.9-24", "11", "13"),
    permitted("14.9-28", "11", "13"),
    permitted("14.9-30", "11", "13"),
    permitted("16.9-24", "14", "15"),
    permitted("16.9-28", "14", "15"),
    permitted("16.9-30", "14", "15"),
    permitted("16.9-34", "14", "15"),
    permitted("16.9-38", "14", "15"),
]);

/// GOST R 52899-2007, Annex A, truck tires, as a trade article reprints it: recommended and permitted rims.
static TRUCK: &[Permitted] = &sorted([
    permitted("7.50-20", "6.0", "6.5"),
    permitted("8.25-20", "6.0", "6.5"),
    permitted("11.00-20", "8.0", "8.5"),
    permitted("7.50R20", "6.0", "6.5"),
    permitted("10.00R20", "7.0", "8.0"),
    permitted("11.00R20", "8.0", "8.5"),
    permitted("12.00R20", "8.5", "9.0"),
    permitted("9.00-20", "6.5", "7.0"),
    permitted("10.00-20", "7.5", "8.0"),
    permitted("12.00-20", "8.5", "9.0"),
    permitted("12.00-24", "8.5", "9.0"),
    permitted("8.25R20", "6.0", "6.5"),
    permitted("9.00R20", "6.5", "7.0"),
]);

/// Approved rims of truck sizes, as a tire maker's sheet prints them; 235/80R22.5 and 255/80R22.5 at second hand.
static TRUCK_SHEET: &[Permitted] = &sorted([
    permitted("11.00R24", "7.5", "8.5"),
    permitted("215/75R17.5", "6.0", "6.75"),
    permitted("9R17.5HC", "6.75", "6.75"),
    permitted("245/70R17.5", "6.75", "7.5"),
    permitted("8R19.5", "5.25", "6.75"),
    permitted("9R22.5", "6.0", "7.5"),
    permitted("10R22.5", "6.75", "8.25"),
    permitted("11R22.5", "7.5", "8.25"),
    permitted("12R22.5", "8.25", "9.0"),
    permitted("225/70R19.5", "6.0", "6.75"),
    permitted("245/70R19.5", "6.75", "7.5"),
    permitted("265/70R19.5", "7.5", "8.25"),
    permitted("285/70R19.5", "7.5", "9.0"),
    permitted("305/70R19.5", "8.25", "9.0"),
    permitted("445/65R19.5", "13.0", "14.0"),
    permitted("245/75R22.5", "6.75", "7.5"),
    permitted("255/70R22.5", "7.5", "8.25"),
    permitted("265/75R22.5", "7.5", "8.25"),
    permitted("275/70R22.5", "7.5", "9.0"),
    permitted("295/80R22.5", "8.25", "9.0"),
    permitted("295/75R22.5", "8.25", "9.0"),
    permitted("315/80R22.5", "8.25", "9.75"),
    permitted("385/65R22.5", "11.75", "12.25"),
    permitted("425/65R22.5", "11.75", "13.0"),
    permitted("445/50R22.5", "14.0", "14.0"),
    permitted("235/80R22.5", "6.75", "7.5"),
    permitted("255/80R22.5", "7.5", "8.25"),
    permitted("12.00R24", "8.0", "9.0"),
]);

fn found(
    table: &'static [Permitted],
    size: SizeKey,
    basis: RimRangeBasis,
    citation: Citation,
) -> Option<RimRange> {
    let &(min, max) = find(table, size)?;
    Some(RimRange { min, max, basis, citation })
}

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
        let (table, size, citation) = match self.rules().rims {
            Rims::TractorTable => (AGRICULTURAL, self.key_as_diagonal(), Citation::RIM_RANGE_AGRICULTURAL),
            Rims::TruckTables => (TRUCK, self.key(), Citation::RIM_RANGE_TRUCK),
            Rims::ByAspect { .. } | Rims::Unknown => return None,
        };
        found(table, size, RimRangeBasis::Standard, citation)
    }

    /// What one maker's sheet has for a truck size. Another maker's tire may be approved for other rims, so it
    /// is no more than an estimate of them.
    pub(in crate::tire) fn rim_range_of_sheet(&self) -> Option<RimRange> {
        found(TRUCK_SHEET, self.key(), RimRangeBasis::Estimate, Citation::RIM_RANGE_TRUCK_SHEET)
    }
}
