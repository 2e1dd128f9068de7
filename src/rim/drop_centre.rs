//! Seats and well of a drop-centre rim with seats of 5°.

use super::{Contour, RimDiameter, RimWidth, SeatTaper};
use crate::Citation;
use crate::units::{self, Length};

/// How wide the bead seats and the well of a rim are at least, and where the well may lie at most.
///
/// A tire is mounted by dropping one side of its bead into the well, so the well must be near enough to a
/// flange and wide enough for a bead. The lengths carry the letters of JIS D 4218; the drawing that shows
/// what they run from was not seen.
///
/// ```
/// use beadseat::{rim::{Contour, DropCentre, RimDiameter, RimWidth}, units::mm};
/// let (width, diameter) = (RimWidth::parse("6.5")?, RimDiameter::parse("16")?);
/// let rim = DropCentre::of(Contour::J, width, diameter).ok_or("not in the table")?;
/// assert_eq!((rim.seat_width(), rim.well_width()), (mm(19.5), mm(22.0)));
/// assert_eq!(DropCentre::of(Contour::L, width, diameter), None);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DropCentre(&'static Row);

/// Widths in quarter inches and rim codes × 10, both with their ends; lengths in mm.
#[derive(Debug, PartialEq)]
struct Row {
    contour: Contour,
    widths: (u16, u16),
    codes: (u16, u16),
    p: f64,
    p1: f64,
    l: f64,
    m: f64,
}

const fn row(contour: Contour, widths: (u16, u16), codes: (u16, u16), lengths: [f64; 4]) -> Row {
    let [p, p1, l, m] = lengths;
    Row { contour, widths, codes, p, p1, l, m }
}

const WIDER: u16 = u16::MAX;
/// Rows that do not name the rim codes they are for.
const ANY: (u16, u16) = (0, u16::MAX);

/// Source: JIS D 4218:2021 (modified ISO 4000-2:2013), Table 3, seen in an excerpt.
static ROWS: [Row; 9] = [
    row(Contour::B, (12, 12), (100, 130), [13.0, 15.0, 16.0, 28.0]),
    row(Contour::B, (14, 14), ANY, [15.0, 17.0, 19.0, 34.0]),
    row(Contour::B, (16, 16), ANY, [15.0, 17.0, 19.0, 45.0]),
    row(Contour::B, (18, WIDER), ANY, [19.5, 19.5, 22.0, 45.0]),
    row(Contour::J, (12, 12), (140, 210), [13.0, 13.0, 16.0, 28.0]),
    row(Contour::J, (14, 14), ANY, [15.0, 17.0, 19.0, 34.0]),
    row(Contour::J, (16, 16), ANY, [15.0, 17.0, 19.0, 45.0]),
    row(Contour::J, (18, WIDER), ANY, [19.5, 19.5, 22.0, 45.0]),
    row(Contour::K, (24, WIDER), (160, 160), [19.5, 19.5, 22.0, 47.0]),
];

impl DropCentre {
    /// The row of the table for a rim; `None` if there is none.
    pub fn of(contour: Contour, width: RimWidth, diameter: RimDiameter) -> Option<Self> {
        if diameter.seat_taper() != SeatTaper::FiveDegree {
            return None;
        }
        let within = |(least, most): (u16, u16), value| least <= value && value <= most;
        let found = ROWS.iter().find(|row| {
            row.contour == contour
                && within(row.widths, width.quarters())
                && within(row.codes, diameter.tenths())
        });
        found.map(Self)
    }

    /// Least width of a bead seat, `P`.
    pub const fn seat_width(&self) -> Length {
        units::mm(self.0.p)
    }

    /// Least width of a bead seat, `P1`; of which of the two seats was not seen.
    ///
    /// ```
    /// use beadseat::{rim::{Contour, DropCentre, RimDiameter, RimWidth}, units::mm};
    /// let rim = DropCentre::of(Contour::J, RimWidth::parse("4")?, RimDiameter::parse("15")?);
    /// assert_eq!(rim.ok_or("not in the table")?.seat_width_p1(), mm(17.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn seat_width_p1(&self) -> Length {
        units::mm(self.0.p1)
    }

    /// Least width of the well, `L`.
    pub const fn well_width(&self) -> Length {
        units::mm(self.0.l)
    }

    /// The most that the well may lie from its flange, `M`.
    ///
    /// ```
    /// use beadseat::{rim::{Contour, DropCentre, RimDiameter, RimWidth}, units::mm};
    /// let rim = DropCentre::of(Contour::K, RimWidth::parse("6")?, RimDiameter::parse("16")?);
    /// assert_eq!(rim.ok_or("not in the table")?.well_position(), mm(47.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn well_position(&self) -> Length {
        units::mm(self.0.m)
    }

    /// The source of the table.
    pub const fn citation(&self) -> Citation {
        Citation::RIM_CONTOUR
    }
}
