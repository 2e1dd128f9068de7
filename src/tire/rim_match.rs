//! Which rims a tire may be mounted on.

mod permitted;

use crate::Citation;
use crate::record::words;
use crate::rim::{RimWidth, SeatTaper};
use crate::tire::size::{RimShares, Rims, by_aspect};
use crate::tire::{Metric, TireSize};

words! {
    /// Where a rim range comes from.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::RimRangeBasis::Estimate.name(), "estimate");
    /// ```
    RimRangeBasis {
        /// The tire maker's table.
        Maker = "maker",
        /// A standard's table; the maker's range overrides it.
        Standard = "standard",
        /// A rule fitted to published tables, or the table of one maker; the range of the tire's own maker
        /// overrides it.
        Estimate = "estimate",
    }
}

/// The rim widths a tire is approved for.
///
/// ```
/// use beadseat::{rim::RimWidth, tire::{RimRange, RimRangeBasis, TireSize}};
/// let range = TireSize::parse("205/55R16")?.estimated_rim_range().ok_or("no rule")?;
/// assert_eq!((range.min(), range.max()), (RimWidth::parse("5.5")?, RimWidth::parse("7.5")?));
/// assert_eq!(range.basis(), RimRangeBasis::Estimate);
/// assert!(RimRange::from_maker(range.max(), range.min()).is_none());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct RimRange {
    min: RimWidth,
    max: RimWidth,
    basis: RimRangeBasis,
    citation: Citation,
}

impl RimRange {
    /// The range the tire maker publishes; `None` if it is the wrong way round.
    ///
    /// ```
    /// use beadseat::{rim::RimWidth, tire::RimRange};
    /// let range = RimRange::from_maker(RimWidth::parse("7")?, RimWidth::parse("8.5")?);
    /// assert!(range.is_some_and(|r| r.contains(RimWidth::from_quarters(32).unwrap_or(r.min()))));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn from_maker(min: RimWidth, max: RimWidth) -> Option<Self> {
        (min <= max).then_some(Self {
            min,
            max,
            basis: RimRangeBasis::Maker,
            citation: Citation::RIM_RANGE_MAKER,
        })
    }

    /// The narrowest rim of the range.
    pub const fn min(&self) -> RimWidth {
        self.min
    }

    /// The widest rim of the range.
    pub const fn max(&self) -> RimWidth {
        self.max
    }

    /// Maker's range, a standard's, or an estimate.
    pub const fn basis(&self) -> RimRangeBasis {
        self.basis
    }

    /// The source of the range.
    pub const fn citation(&self) -> Citation {
        self.citation
    }

    /// Whether a width lies in the closed range.
    pub fn contains(&self, width: RimWidth) -> bool {
        self.min <= width && width <= self.max
    }
}

impl TireSize {
    /// The size if shares of the nominal width can hold for it: metric, on an inch rim.
    fn metric_on_inch_rim(&self) -> Option<&Metric> {
        match self {
            Self::Metric(size) => {
                (size.rim_diameter().seat_taper() != SeatTaper::Millimetric).then_some(size)
            }
            _ => None,
        }
    }

    /// The measuring rim: that of the table for a listed size, else `K1·S1`, rounded to half an inch.
    /// `None` where neither holds (truck, motorcycle, agricultural, trailer and temporary sizes, sizes by
    /// inches or letter that are not listed).
    ///
    /// `K1` is 0.70 for aspect ratios 75 to 95, 0.75 for 60 to 70, 0.80 for 50 and 55, 0.85 for 45,
    /// 0.90 for 30 to 40, 0.92 below. Source: ISO 4000-1 and ETRTO design guide, from memory.
    ///
    /// ```
    /// let size = beadseat::tire::TireSize::parse("205/55R16")?;
    /// assert_eq!(size.measuring_rim().map(|w| w.to_string()).as_deref(), Some("6.5"));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn measuring_rim(&self) -> Option<RimWidth> {
        if let Some(listing) = self.listing() {
            return listing.measuring_rim;
        }
        let size = self.metric_on_inch_rim()?;
        let Rims::ByAspect { measuring, .. } = size.class().rules().rims else { return None };
        let k1 = by_aspect(measuring, size.aspect_ratio())?;
        Some(RimWidth::nearest_half(k1 * f64::from(size.width_mm())))
    }

    /// The approved rim widths by estimate: the half inches nearest to two shares of the nominal width.
    /// For truck sizes there is no rule, but a tire maker's sheet lists some of them. `None` where neither
    /// holds.
    ///
    /// | aspect ratio | shares | source |
    /// |---|---|---|
    /// | 70 to 95 | 0.65, 0.85 | reproduces the ETRTO table of the 80 and 75 series |
    /// | 50 to 65 | 0.70, 0.90 | fitted to remembered rows, at most 0.5 in off |
    /// | 45 | 0.80, 0.95 | the same |
    /// | 20 to 40 | 0.85, 1.00 | the same |
    /// | LT, any | 0.65, 0.80 | published LT rows: minima exact, maxima within 1 in |
    /// | truck | as listed | a tire maker's published sheet |
    ///
    /// ```
    /// use beadseat::{Citation, tire::TireSize};
    /// let range = TireSize::parse("155/80R13")?.estimated_rim_range().ok_or("no rule")?;
    /// assert_eq!((range.min().to_string(), range.max().to_string()), ("4".into(), "5".into()));
    /// assert_eq!(range.citation(), Citation::RIM_RANGE_HIGH_SERIES);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn estimated_rim_range(&self) -> Option<RimRange> {
        let range = match self.rules().rims {
            Rims::ByAspect { range, .. } => range,
            Rims::TruckTables => return self.rim_range_of_sheet(),
            Rims::TractorTable | Rims::Unknown => return None,
        };
        let size = self.metric_on_inch_rim()?;
        let RimShares { least, most, citation } = by_aspect(range, size.aspect_ratio())?;
        let width = f64::from(size.width_mm());
        Some(RimRange {
            min: RimWidth::nearest_half(least * width),
            max: RimWidth::nearest_half(most * width),
            basis: RimRangeBasis::Estimate,
            citation,
        })
    }
}

#[cfg(feature = "serde")]
impl crate::file::Shaped for RimRange {
    const CONTENT: crate::file::Content = {
        use crate::file::Content;
        Content::List { of: &Content::Number { least: 2.0, most: 48.0 }, least: 2, most: 2 }
    };
}

/// In files, a maker's range is `[least, most]` in inches.
#[cfg(feature = "serde")]
impl serde::Serialize for RimRange {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let inches = |width: RimWidth| width.inches();
        [inches(self.min), inches(self.max)].serialize(serializer)
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for RimRange {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        use serde::de::Error;
        let [min, max] = <[f64; 2]>::deserialize(deserializer).map_err(crate::text::bounded)?.map(|inches| {
            let quarters = inches * 4.0;
            (libm::floor(quarters) == quarters && (0.0..=255.0).contains(&quarters))
                .then(|| RimWidth::from_quarters(quarters as u16))
                .flatten()
        });
        min.zip(max).and_then(|(min, max)| Self::from_maker(min, max)).ok_or_else(|| {
            D::Error::custom("two rim widths from 2 to 48 in, in quarters, the least first, are wanted")
        })
    }
}
