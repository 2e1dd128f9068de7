//! Load index: the load a tire carries, as a number from a table.

use core::num::NonZeroU16;

use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Mass};

/// A load index, 0 to 279: the load of one tire at its reference pressure and rated speed.
///
/// # Syntax
/// One to three digits. `Ord` is by load.
///
/// ```
/// use beadseat::{tire::LoadIndex, units::kg};
/// let li: LoadIndex = "91".parse()?;
/// assert_eq!(li.load(), kg(615.0));
/// assert_eq!(li.printed_pounds(), 1356);
/// assert!("280".parse::<LoadIndex>().is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LoadIndex {
    /// One more than the index, so that an absent second index takes no room.
    successor: NonZeroU16,
}

impl LoadIndex {
    /// The index with this number, if there is one.
    ///
    /// ```
    /// use beadseat::tire::LoadIndex;
    /// assert_eq!(LoadIndex::new(91).map(LoadIndex::number), Some(91));
    /// assert_eq!(LoadIndex::new(280), None);
    /// ```
    pub const fn new(number: u16) -> Option<Self> {
        if number as usize >= TENTHS_KG.len() {
            return None;
        }
        match NonZeroU16::new(number + 1) {
            Some(successor) => Some(Self { successor }),
            None => None,
        }
    }

    #[inline(always)]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>, field: Field) -> Result<Self, ParseError> {
        let start = scanner.at();
        let number = tri!(scanner.whole(field));
        if scanner.at() - start > 3 {
            return Err(scanner.range(field, start));
        }
        match Self::new(number) {
            Some(index) => Ok(index),
            None => Err(scanner.range(field, start)),
        }
    }

    /// The number as it is molded.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::LoadIndex::parse("104")?.number(), 104);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn number(self) -> u16 {
        self.successor.get() - 1
    }

    const fn tenths_kg(self) -> u32 {
        TENTHS_KG[self.number() as usize]
    }

    /// The load of one tire. Source: the table of ISO 4000-1; see the table for what is from memory.
    ///
    /// ```
    /// use beadseat::{tire::LoadIndex, units::kg};
    /// assert_eq!(LoadIndex::parse("3")?.load(), kg(48.7));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn load(self) -> Mass {
        units::kg(self.tenths_kg() as f64 / 10.0)
    }

    /// The load in pounds as charts print it: rounded, but for 87 (1201) and 107 (2149), which charts
    /// print one lower than the exact conversion rounds to. The yearbooks of US light truck and truck
    /// tires use a grid of their own, so a sidewall may differ. Source: dealer charts for 0 to 9 and
    /// 60 to 119; the others are converted.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::LoadIndex::parse("87")?.printed_pounds(), 1201);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn printed_pounds(self) -> u32 {
        match self.number() {
            87 => 1201,
            107 => 2149,
            _ => libm::round(units::in_lb(self.load())) as u32,
        }
    }

    /// The lowest index that carries a load, if one does. Equality is enough. A load below zero is none, nor is what
    /// is not a number.
    ///
    /// ```
    /// use beadseat::{tire::LoadIndex, units::kg};
    /// assert_eq!(LoadIndex::min_for(kg(530.0)), LoadIndex::new(86));
    /// assert_eq!(LoadIndex::min_for(kg(530.1)), LoadIndex::new(87));
    /// assert_eq!(LoadIndex::min_for(kg(f64::NAN)), None);
    /// assert_eq!(LoadIndex::min_for(kg(-1.0)), None);
    /// ```
    pub fn min_for(load: Mass) -> Option<Self> {
        if load < units::kg(0.0) {
            return None;
        }
        // A load that is not a number is too much for each of them.
        let carries = |tenths| units::kg(f64::from(tenths) / 10.0) >= load;
        Self::new(TENTHS_KG.partition_point(|&tenths| !carries(tenths)) as u16)
    }

    /// All of them, lightest first.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::LoadIndex::all().count(), 280);
    /// ```
    pub fn all() -> impl Iterator<Item = Self> {
        (0..TENTHS_KG.len() as u16).filter_map(Self::new)
    }

    #[inline]
    pub(crate) fn write(self, text: &mut Text) {
        text.whole(u32::from(self.number()));
    }

    #[inline(always)]
    const fn scan_alone(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        Self::scan(scanner, Field::LoadIndex)
    }
}

impl core::fmt::Debug for LoadIndex {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "LoadIndex({})", self.number())
    }
}

/// Load in tenths of a kilogram by load index.
///
/// Source: ISO 4000-1 and the annexes of UN R30, R54 and R106 that print the same series. 0 to 119 and
/// eleven above (120, 121, 126, 142, 148, 150, 152, 157, 164, 165, 168) were seen in trade tables; the
/// rest, but for 169, 203 and 275, in an open library's list. Those three follow from the series.
#[rustfmt::skip]
const TENTHS_KG: [u32; 280] = [
    /*   0 */ 450, 462, 475, 487, 500, 515, 530, 545, 560, 580,
    /*  10 */ 600, 615, 630, 650, 670, 690, 710, 730, 750, 775,
    /*  20 */ 800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030,
    /*  30 */ 1060, 1090, 1120, 1150, 1180, 1210, 1250, 1280, 1320, 1360,
    /*  40 */ 1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850,
    /*  50 */ 1900, 1950, 2000, 2060, 2120, 2180, 2240, 2300, 2360, 2430,
    /*  60 */ 2500, 2570, 2650, 2720, 2800, 2900, 3000, 3070, 3150, 3250,
    /*  70 */ 3350, 3450, 3550, 3650, 3750, 3870, 4000, 4120, 4250, 4370,
    /*  80 */ 4500, 4620, 4750, 4870, 5000, 5150, 5300, 5450, 5600, 5800,
    /*  90 */ 6000, 6150, 6300, 6500, 6700, 6900, 7100, 7300, 7500, 7750,
    /* 100 */ 8000, 8250, 8500, 8750, 9000, 9250, 9500, 9750, 10000, 10300,
    /* 110 */ 10600, 10900, 11200, 11500, 11800, 12150, 12500, 12850, 13200, 13600,
    /* 120 */ 14000, 14500, 15000, 15500, 16000, 16500, 17000, 17500, 18000, 18500,
    /* 130 */ 19000, 19500, 20000, 20600, 21200, 21800, 22400, 23000, 23600, 24300,
    /* 140 */ 25000, 25750, 26500, 27250, 28000, 29000, 30000, 30750, 31500, 32500,
    /* 150 */ 33500, 34500, 35500, 36500, 37500, 38750, 40000, 41250, 42500, 43750,
    /* 160 */ 45000, 46250, 47500, 48750, 50000, 51500, 53000, 54500, 56000, 58000,
    /* 170 */ 60000, 61500, 63000, 65000, 67000, 69000, 71000, 73000, 75000, 77500,
    /* 180 */ 80000, 82500, 85000, 87500, 90000, 92500, 95000, 97500, 100000, 103000,
    /* 190 */ 106000, 109000, 112000, 115000, 118000, 121500, 125000, 128500, 132000, 136000,
    /* 200 */ 140000, 145000, 150000, 155000, 160000, 165000, 170000, 175000, 180000, 185000,
    /* 210 */ 190000, 195000, 200000, 206000, 212000, 218000, 224000, 230000, 236000, 243000,
    /* 220 */ 250000, 257500, 265000, 272500, 280000, 290000, 300000, 307500, 315000, 325000,
    /* 230 */ 335000, 345000, 355000, 365000, 375000, 387500, 400000, 412500, 425000, 437500,
    /* 240 */ 450000, 462500, 475000, 487500, 500000, 515000, 530000, 545000, 560000, 580000,
    /* 250 */ 600000, 615000, 630000, 650000, 670000, 690000, 710000, 730000, 750000, 775000,
    /* 260 */ 800000, 825000, 850000, 875000, 900000, 925000, 950000, 975000, 1000000, 1030000,
    /* 270 */ 1060000, 1090000, 1120000, 1150000, 1180000, 1215000, 1250000, 1285000, 1320000, 1360000,
];

designation!(LoadIndex in "beadseat::tire", "091" => "91", wrong "280", by scan_alone);
