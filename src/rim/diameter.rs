//! Nominal rim diameter.

use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Angle, Length};
use crate::{Citation, Toleranced};

/// A nominal rim diameter code, in inches, or in millimetres from 300 on.
///
/// # Syntax
/// ```text
/// road         = "8" … "26" | "28" | "30" | "14.5" | "16.5" | "17.5" | "19.5" | "20.5" | "22.5" | "24.5"
///              | "300" … "500" in steps of 5, which are millimetres
/// small        = "4" … "7"                                    lawn and garden
/// implement    = "15.3" | "15.5" | "16.1" | "26.5" | "30.5"
/// agricultural = "32" … "54" in steps of 2
/// earthmover   = "29" | "33" | "35" | "39" | "45" | "49" | "51" | "57" | "63"
/// ```
/// Codes that are not of the road stand only in sizes of what has them. Which those are: from memory. `Ord` is by
/// code.
///
/// ```
/// use beadseat::rim::{RimDiameter, SeatTaper};
/// let d: RimDiameter = "16".parse()?;
/// assert_eq!(d.seat_taper(), SeatTaper::FiveDegree);
/// assert_eq!("22,5".parse::<RimDiameter>()?.to_string(), "22.5");
/// assert!("27".parse::<RimDiameter>().is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RimDiameter {
    /// Code × 10.
    tenths: u16,
}

/// The taper of the bead seat, which must be the same on tire and rim.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum SeatTaper {
    /// Whole inch codes: drop-centre rims with a seat of 5°.
    FiveDegree,
    /// Half inch codes: drop-centre rims with a seat of 15°, as on trucks, and 16.5 on light trucks.
    FifteenDegree,
    /// Codes in millimetres: rims with a seat of their own, for tires of the same code only.
    Millimetric,
}

impl SeatTaper {
    /// The angle of the seat to the spindle; `None` of millimetric rims. Source: ISO 4000-2 and ISO 4209-2;
    /// 15° and the tolerance of ± 1° from memory.
    ///
    /// ```
    /// use beadseat::{rim::SeatTaper, units::deg};
    /// assert_eq!(SeatTaper::FifteenDegree.angle().map(|a| a.nominal()), Some(deg(15.0)));
    /// assert_eq!(SeatTaper::Millimetric.angle(), None);
    /// ```
    pub fn angle(self) -> Option<Toleranced<Angle>> {
        let nominal = match self {
            Self::FiveDegree => 5.0,
            Self::FifteenDegree => 15.0,
            Self::Millimetric => return None,
        };
        Some(Toleranced::within(units::deg(nominal), units::deg(1.0)))
    }

    /// The height of the flange over the seat, of rims that carry no [`Contour`](super::Contour) letter
    /// because there is only one: 12.7 mm of seats of 15°. `None` of the others. Source: ISO 4209-2 and TRA,
    /// from memory.
    ///
    /// ```
    /// use beadseat::{rim::SeatTaper, units::mm};
    /// assert_eq!(SeatTaper::FifteenDegree.flange_height(), Some(mm(12.7)));
    /// assert_eq!(SeatTaper::FiveDegree.flange_height(), None);
    /// ```
    pub const fn flange_height(self) -> Option<Length> {
        match self {
            Self::FifteenDegree => Some(units::mm(12.7)),
            Self::FiveDegree | Self::Millimetric => None,
        }
    }

    /// The source of the angle and the flange.
    ///
    /// ```
    /// assert!(beadseat::rim::SeatTaper::FifteenDegree.citation().is_from_memory());
    /// ```
    pub const fn citation(self) -> Citation {
        Citation::SEAT_TAPER
    }
}

impl RimDiameter {
    /// The code of `tenths` tenths of an inch, if there is one.
    ///
    /// ```
    /// use beadseat::rim::RimDiameter;
    /// assert_eq!(RimDiameter::from_tenths(225), Some(RimDiameter::parse("22.5")?));
    /// assert_eq!(RimDiameter::from_tenths(270), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    #[inline]
    pub const fn from_tenths(tenths: u16) -> Option<Self> {
        if Self::exists(tenths as i64) { Some(Self { tenths }) } else { None }
    }

    /// A code of the road.
    #[inline(always)]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let code = tri!(Self::scan_any(scanner));
        if code.is_of_the_road() { Ok(code) } else { Err(scanner.range(Field::RimDiameter, start)) }
    }

    /// A code in inches, for tires that are named by a letter.
    pub(crate) const fn scan_inches(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let code = tri!(Self::scan(scanner));
        if code.is_in_millimetres() { Err(scanner.range(Field::RimDiameter, start)) } else { Ok(code) }
    }

    pub(crate) const fn is_in_millimetres(self) -> bool {
        matches!(self.seat_taper(), SeatTaper::Millimetric)
    }

    #[inline(always)]
    pub(crate) const fn scan_any(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let tenths = tri!(scanner.decimal(Field::RimDiameter, 1));
        if Self::exists(tenths) {
            Ok(Self { tenths: tenths as u16 })
        } else {
            Err(scanner.range(Field::RimDiameter, start))
        }
    }

    /// The row of the code; that of nothing, if it is in millimetres.
    #[inline(always)]
    const fn row(self) -> Row {
        if self.tenths as usize > MOST { Row(0) } else { ROWS[self.tenths as usize] }
    }

    /// What has rims of the code.
    pub(crate) const fn of(self) -> CodeOf {
        self.row().of()
    }

    /// Whether road vehicles have rims of the code.
    #[inline(always)]
    pub(crate) const fn is_of_the_road(self) -> bool {
        self.row().0 < 1 << Row::OF
    }

    /// Whether road vehicles have rims of the code, with a seat of 15°.
    #[inline(always)]
    pub(crate) const fn is_steep_of_the_road(self) -> bool {
        self.row().0 >> Row::STEEP == 1
    }

    /// Whether it is a whole number of inches that cars have, and nearly nothing else.
    #[inline(always)]
    pub(crate) const fn is_usual(self) -> bool {
        self.tenths as usize <= MOST && self.row().0 < 1 << Row::STEEP && self.tenths != Self::CODE_25.tenths
    }

    /// The code that earthmovers have most.
    pub(crate) const CODE_25: Self = Self { tenths: 250 };

    #[inline(always)]
    const fn exists(tenths: i64) -> bool {
        if tenths <= MOST as i64 { ROWS[tenths as usize].0 != 0 } else { is_millimetric(tenths) }
    }

    #[inline]
    pub(crate) fn write(self, text: &mut Text) {
        text.whole(u32::from(self.tenths / 10));
        if self.tenths % 10 != 0 {
            text.byte(b'.').whole(u32::from(self.tenths % 10));
        }
    }

    /// The code in tenths: 165 for 16.5 in, 3900 for 390 mm.
    ///
    /// ```
    /// use beadseat::rim::RimDiameter;
    /// assert_eq!(RimDiameter::parse("16.5")?.tenths(), 165);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn tenths(self) -> u16 {
        self.tenths
    }

    /// The nominal rim diameter `d` from which the overall diameter of a tire is computed.
    ///
    /// It is not the diameter of the seat ([`RimDiameter::specified`]). Source: UN R30 and R54,
    /// definitions, from memory. All those are the inches of the code in whole millimetres, and so are
    /// those that are not of the road, which are derived from the code.
    ///
    /// ```
    /// use beadseat::{rim::RimDiameter, units::mm};
    /// assert_eq!(RimDiameter::parse("16")?.nominal(), mm(406.0));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn nominal(self) -> Length {
        units::mm(self.whole_mm() as f64)
    }

    pub(crate) const fn whole_mm(self) -> u16 {
        if self.tenths as usize > MOST { self.tenths / 10 } else { self.row().whole_mm() }
    }

    /// The taper of the seat that the code stands for.
    ///
    /// Code 15 is made with both tapers; it is read as 5° here. Source: common practice, no source; that codes 15.3
    /// and 16.1 of implements are of 5°, from memory.
    ///
    /// ```
    /// use beadseat::rim::{RimDiameter, SeatTaper};
    /// assert_eq!(RimDiameter::parse("16.5")?.seat_taper(), SeatTaper::FifteenDegree);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn seat_taper(self) -> SeatTaper {
        if self.tenths as usize > MOST {
            SeatTaper::Millimetric
        } else if self.row().is_steep() {
            SeatTaper::FifteenDegree
        } else {
            SeatTaper::FiveDegree
        }
    }

    /// The specified diameter of the bead seat.
    ///
    /// 5° drop centre: `25.4·code − 0.8` mm up to code 16 and `+ 4.8` mm from code 17 (a 17 in rim is
    /// not one inch larger than a 16 in rim), ± 0.4 mm. 15° drop centre: `25.4·code`, no tolerance
    /// known. Of millimetric rims and of codes that are not of the road it is not known. Source: ISO 4000-2 and ISO
    /// 4209-2, from memory; code 14 seen in a trade article quoting TRA.
    ///
    /// ```
    /// use beadseat::{rim::RimDiameter, units::mm, uom::si::length::millimeter};
    /// let d = RimDiameter::parse("17")?.specified().ok_or("not known")?;
    /// assert!((d.nominal().get::<millimeter>() - 436.6).abs() < 1e-9);
    /// assert!((d.max().get::<millimeter>() - 437.0).abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn specified(self) -> Option<Toleranced<Length>> {
        self.specified_on(self.seat_taper())
    }

    /// The specified diameter of the bead seat on a rim of a stated taper: code 15 is made with both. Nothing if
    /// no rim of the code has that taper, or its diameter is not known. Source as [`RimDiameter::specified`].
    ///
    /// ```
    /// use beadseat::{rim::{RimDiameter, SeatTaper}, units::mm};
    /// let code = RimDiameter::parse("15")?;
    /// assert_eq!(code.specified_on(SeatTaper::FifteenDegree).map(|d| d.nominal()), Some(mm(381.0)));
    /// assert_eq!(code.specified_on(SeatTaper::FiveDegree), code.specified());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn specified_on(self, taper: SeatTaper) -> Option<Toleranced<Length>> {
        const BOTH: u16 = 150;
        if taper != self.seat_taper() && self.tenths != BOTH {
            return None;
        }
        let inch_mm = 2.54 * f64::from(self.tenths);
        let (mm, tolerance) = match taper {
            _ if !self.is_of_the_road() => return None,
            SeatTaper::FiveDegree if self.tenths <= 160 => (inch_mm - 0.8, 0.4),
            SeatTaper::FiveDegree => (inch_mm + 4.8, 0.4),
            SeatTaper::FifteenDegree => (inch_mm, 0.0),
            SeatTaper::Millimetric => return None,
        };
        Some(Toleranced::within(units::mm(mm), units::mm(tolerance)))
    }

    /// The largest brake disc that usually goes under a rim of the code, 12 to 17. For judging whether a figure is
    /// plausible, not whether a disc clears: that is measured. Source: Crolla (ed.) 2009
    /// ([`Citation::BRAKE_DISC`]).
    ///
    /// ```
    /// use beadseat::{rim::RimDiameter, units::mm};
    /// assert_eq!(RimDiameter::parse("16")?.max_usual_disc(), Some(mm(330.0)));
    /// assert_eq!(RimDiameter::parse("18")?.max_usual_disc(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn max_usual_disc(self) -> Option<Length> {
        Some(units::mm(match self.tenths {
            120 => 221.0,
            130 => 256.0,
            140 => 278.0,
            150 => 308.0,
            160 => 330.0,
            170 => 360.0,
            _ => return None,
        }))
    }
}

/// Codes in millimetres, × 10: 300 to 500 in steps of 5.
const fn is_millimetric(tenths: i64) -> bool {
    tenths >= 3000 && tenths <= 5000 && tenths % 50 == 0
}

/// The codes of road vehicles, × 10, and `d` of the UN tire regulations in whole mm. Source: UN R30 and
/// R54, definition of the nominal rim diameter, from memory.
#[rustfmt::skip]
const CODES: [(u16, u16); 28] = [
    (80, 203), (90, 229), (100, 254), (110, 279), (120, 305), (130, 330), (140, 356),
    (145, 368), (150, 381), (160, 406), (165, 419), (170, 432), (175, 445), (180, 457),
    (190, 483), (195, 495), (200, 508), (205, 521), (210, 533), (220, 559), (225, 572),
    (230, 584), (240, 610), (245, 622), (250, 635), (260, 660), (280, 711), (300, 762),
];

/// What has rims of a code.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum CodeOf {
    /// Road vehicles, and perhaps others too.
    Road,
    /// Lawn and garden machines.
    Small,
    Implement,
    Agricultural,
    Earthmover,
}

/// The codes of nothing on the road, × 10, from memory. Those of tractors from 32 on are the even ones: common
/// practice, no source.
const OTHER_CODES: [(CodeOf, &[u16]); 4] = [
    (CodeOf::Small, &[40, 50, 60, 70]),
    (CodeOf::Implement, &[153, 155, 161, 265, 305]),
    (CodeOf::Agricultural, &[320, 340, 360, 380, 400, 420, 440, 460, 480, 500, 520, 540]),
    (CodeOf::Earthmover, &[290, 330, 350, 390, 450, 490, 510, 570, 630]),
];

/// The greatest code in inches, × 10.
const MOST: usize = 630;

/// `d`, whether the seat is of 15°, and what has the code; 0 where there is no such code.
#[derive(Clone, Copy)]
struct Row(u16);

impl Row {
    const STEEP: u32 = 11;
    const OF: u32 = 12;

    /// Of a code × 10: a half inch is a seat of 15°.
    const fn new(tenths: u16, mm: u16, of: CodeOf) -> Self {
        let steep = if tenths % 10 == 5 { 1 } else { 0 };
        Self(mm | steep << Self::STEEP | (of as u16) << Self::OF)
    }

    const fn whole_mm(self) -> u16 {
        self.0 & ((1 << Self::STEEP) - 1)
    }

    #[inline(always)]
    const fn is_steep(self) -> bool {
        self.0 & 1 << Self::STEEP != 0
    }

    const fn of(self) -> CodeOf {
        match self.0 >> Self::OF {
            1 => CodeOf::Small,
            2 => CodeOf::Implement,
            3 => CodeOf::Agricultural,
            4 => CodeOf::Earthmover,
            _ => CodeOf::Road,
        }
    }
}

/// By code × 10.
static ROWS: [Row; MOST + 1] = {
    let mut rows = [Row(0); MOST + 1];
    let mut i = 0;
    while i < CODES.len() {
        let (tenths, mm) = CODES[i];
        rows[tenths as usize] = Row::new(tenths, mm, CodeOf::Road);
        i += 1;
    }
    let mut i = 0;
    while i < OTHER_CODES.len() {
        let (of, codes) = OTHER_CODES[i];
        let mut k = 0;
        while k < codes.len() {
            let mm = ((codes[k] as u32 * 254 + 50) / 100) as u16;
            assert!(rows[codes[k] as usize].0 == 0, "a code is listed twice");
            rows[codes[k] as usize] = Row::new(codes[k], mm, of);
            k += 1;
        }
        i += 1;
    }
    rows
};

designation!(RimDiameter in "beadseat::rim", "17,5" => "17.5", wrong "18.5", by scan_any);
