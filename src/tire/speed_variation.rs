//! How the load a tire may carry varies with speed, by the annexes of the UN regulations.
//!
//! Beside them stands the US practice for truck tires, [`TruckSpeedBand`].
//!
//! They allow more than the load index below the rated speed, and less a little above it. Nothing here is
//! applied unless the caller asks.

mod bands;

pub use bands::{TruckSizes, TruckSpeedBand};

use super::{LoadIndex, SizeSpeedLetter, SpeedSymbol, Tire};
use crate::rim::RimDiameter;
use crate::units::{self, Ratio, Velocity, in_kmh};
use crate::{Citation, OutOfRange};

/// One column of a table: the change of load in percent at evenly spaced speeds.
#[derive(Debug, PartialEq)]
struct Column {
    from_kmh: f64,
    step_kmh: f64,
    /// What it shares with its neighbours.
    head: &'static [f64],
    /// The rest, at the speeds that follow.
    tail: &'static [f64],
    citation: Citation,
}

impl Column {
    fn rows(&self) -> usize {
        self.head.len() + self.tail.len()
    }

    /// Speed and change of a row.
    fn row(&self, at: usize) -> Option<(f64, f64)> {
        let change = self.head.iter().chain(self.tail).nth(at)?;
        Some((self.from_kmh + self.step_kmh * at as f64, *change))
    }

    fn last_kmh(&self) -> f64 {
        self.from_kmh + self.step_kmh * (self.rows() - 1) as f64
    }
}

const fn commercial(head: &'static [f64], tail: &'static [f64]) -> Column {
    Column { from_kmh: 0.0, step_kmh: 5.0, head, tail, citation: Citation::SPEED_VARIATION_COMMERCIAL }
}

// UN R54 Annex 8, all from memory.

/// 0, 5, 10 … 60 km/h, symbols F to K of all load indices, L and M from load index 122.
#[rustfmt::skip]
const HEAVY: &[f64] = &[
    150.0, 110.0, 80.0, 65.0, 50.0, 35.0, 25.0, 19.0, 15.0, 13.0, 12.0, 11.0, 10.0,
];
// From 65 km/h.
static F: Column = commercial(HEAVY, &[7.5, 5.0, 2.5, 0.0, -3.0, -6.0, -10.0, -15.0]);
static G: Column = commercial(HEAVY, &[8.5, 7.0, 5.5, 4.0, 2.0, 0.0, -2.5, -5.0, -8.0, -13.0]);
static J: Column = commercial(HEAVY, &[8.5, 7.0, 5.5, 4.0, 3.0, 2.0, 1.0, 0.0, -2.0, -4.0, -7.0, -12.0]);
static K: Column = commercial(HEAVY, &[8.5, 7.0, 5.5, 4.0, 3.0, 2.0, 1.0, 0.0, 0.0, 0.0, -3.0, -7.0]);
static L_HEAVY: Column = commercial(HEAVY, &[8.5, 7.0, 5.5, 4.0, 3.0, 2.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0]);
/// The last two rows, 125 and 130 km/h, are remembered with doubt.
static M_HEAVY: Column =
    commercial(HEAVY, &[8.5, 7.0, 5.5, 4.0, 3.0, 2.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0]);

/// 0, 5, 10 … 120 km/h, symbols from L up to load index 121.
#[rustfmt::skip]
const LIGHT: &[f64] = &[
    110.0, 90.0, 75.0, 60.0, 50.0, 42.0, 35.0, 29.0, 25.0, 22.0, 20.0, 17.5, 15.0,
    13.5, 12.5, 11.0, 10.0, 8.5, 7.5, 6.5, 5.0, 3.75, 2.5, 1.25, 0.0,
];
// From 125 km/h.
static L_LIGHT: Column = commercial(LIGHT, &[-2.5, -5.0, -7.5, -10.0]);
static M_LIGHT: Column = commercial(LIGHT, &[0.0, 0.0, -2.5, -5.0, -7.5, -10.0]);
static N_LIGHT: Column = commercial(LIGHT, &[0.0, 0.0, 0.0, 0.0, -2.5, -5.0, -7.5, -10.0]);
static P_LIGHT: Column = commercial(LIGHT, &[0.0, 0.0, 0.0, 0.0, 0.0, 0.0, -2.5, -5.0]);
/// The table has one column for P and all above; its rows beyond 150 km/h, the speed of P, would take load
/// from faster tires below their own speed, and are read for P alone.
static ABOVE_P_LIGHT: Column = commercial(LIGHT, &[0.0, 0.0, 0.0, 0.0, 0.0, 0.0]);

/// The first load index of the heavier half of the table; that of single formation counts.
const HEAVY_FROM: u16 = 122;

const fn motorcycle(from_kmh: f64, citation: Citation, head: &'static [f64], tail: &'static [f64]) -> Column {
    Column { from_kmh, step_kmh: 10.0, head, tail, citation }
}

/// UN R75 Annex 8, remembered with doubt.
const MOTORCYCLE: Citation = Citation::SPEED_VARIATION_MOTORCYCLE;

/// 50, 60, 70 and 80 km/h, rims up to code 12.
const SMALL_RIM: &[f64] = &[30.0, 23.0, 16.0, 10.0];
// From 90 km/h.
static J_SMALL: Column = motorcycle(50.0, MOTORCYCLE, SMALL_RIM, &[5.0, 0.0, -7.0, -15.0, -25.0]);
static K_SMALL: Column = motorcycle(50.0, MOTORCYCLE, SMALL_RIM, &[7.5, 5.0, 0.0, -6.0, -12.0]);
static L_SMALL: Column = motorcycle(50.0, MOTORCYCLE, SMALL_RIM, &[7.5, 5.0, 2.5, 0.0, -5.0]);
/// Rims from code 13, symbols from P: 50 to 140 km/h.
static P_LARGE: Column =
    motorcycle(50.0, MOTORCYCLE, &[30.0, 23.0, 16.0, 14.0, 12.0, 10.0, 8.0, 6.0, 4.0, 0.0], &[]);

/// Codes up to this are small rims.
const SMALL_RIM_TENTHS: u16 = 120;

/// UN R75 §2.33.2 and §2.33.3, read in GOST R 41.75-99.
const FAST: Citation = Citation::SPEED_VARIATION_MOTORCYCLE_FAST;

/// 130, 140 … 210 km/h.
const UP_TO_210: &[f64] = &[0.0; 9];
static V_FAST: Column = motorcycle(130.0, FAST, UP_TO_210, &[-5.0, -10.0, -15.0]);
static V_IN_SIZE: Column = motorcycle(130.0, FAST, UP_TO_210, &[-5.0, -10.0, -15.0, -20.0, -25.0, -30.0]);
static W_FAST: Column = motorcycle(130.0, FAST, UP_TO_210, &[0.0, 0.0, 0.0, -5.0, -15.0, -25.0]);

const fn agricultural(changes: &'static [f64]) -> Column {
    Column {
        from_kmh: 10.0,
        step_kmh: 5.0,
        head: changes,
        tail: &[],
        citation: Citation::SPEED_VARIATION_AGRICULTURAL,
    }
}

// UN R106 Annex 7 part A, traction tires, remembered with doubt. From 10 km/h.
static A6: Column = agricultural(&[40.0, 30.0, 20.0, 7.0, 0.0, -10.0, -20.0]);
static A8: Column = agricultural(&[50.0, 34.0, 23.0, 11.0, 7.0, 3.0, 0.0, -4.0, -9.0]);
static D: Column = agricultural(&[50.0, 34.0, 23.0, 18.5, 15.0, 12.0, 9.5, 7.0, 5.0, 3.0, 1.5, 0.0, -9.0]);

/// How load varies with speed for one kind of tire: a column of an annex.
///
/// ```
/// use beadseat::{tire::Tire, units::{kmh, percent}};
/// let variation = Tire::parse("295/80R22.5 154/149M")?.speed_variation().ok_or("no such column")?;
/// assert_eq!(variation.load_share(kmh(60.0))?, percent(110.0));
/// assert!(variation.citation().is_from_memory());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedVariation {
    column: &'static Column,
}

impl SpeedVariation {
    const fn of(column: &'static Column) -> Option<Self> {
        Some(Self { column })
    }

    /// Commercial tires: UN R54 Annex 8, from memory. `index` is that of single formation. `None` for
    /// symbols the table has no column for.
    ///
    /// For symbols above P the table is read up to 150 km/h only.
    ///
    /// ```
    /// use beadseat::{tire::{LoadIndex, SpeedSymbol, inflation::SpeedVariation}, units::{kmh, percent}};
    /// let van = SpeedVariation::commercial(LoadIndex::parse("112")?, SpeedSymbol::R).ok_or("no column")?;
    /// assert_eq!(van.load_share(kmh(60.0))?, percent(115.0));
    /// assert_eq!(SpeedVariation::commercial(LoadIndex::parse("154")?, SpeedSymbol::R), None);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn commercial(index: LoadIndex, symbol: SpeedSymbol) -> Option<Self> {
        let heavy = index.number() >= HEAVY_FROM;
        Self::of(match symbol {
            SpeedSymbol::F => &F,
            SpeedSymbol::G => &G,
            SpeedSymbol::J => &J,
            SpeedSymbol::K => &K,
            SpeedSymbol::L if heavy => &L_HEAVY,
            SpeedSymbol::M if heavy => &M_HEAVY,
            _ if heavy => return None,
            SpeedSymbol::L => &L_LIGHT,
            SpeedSymbol::M => &M_LIGHT,
            SpeedSymbol::N => &N_LIGHT,
            SpeedSymbol::P => &P_LIGHT,
            above if above > SpeedSymbol::P => &ABOVE_P_LIGHT,
            _ => return None,
        })
    }

    /// Motorcycle tires at lower speeds: UN R75 Annex 8, remembered with doubt. `None` for symbols the
    /// table has no column for.
    ///
    /// ```
    /// use beadseat::{rim::RimDiameter, tire::{SpeedSymbol, inflation::SpeedVariation}, units::{kmh, percent}};
    /// let rim = RimDiameter::parse("12")?;
    /// let scooter = SpeedVariation::motorcycle(rim, SpeedSymbol::J).ok_or("no column")?;
    /// assert_eq!(scooter.load_share(kmh(80.0))?, percent(110.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn motorcycle(rim: RimDiameter, symbol: SpeedSymbol) -> Option<Self> {
        Self::of(match symbol {
            _ if rim.tenths() > SMALL_RIM_TENTHS => {
                if symbol < SpeedSymbol::P {
                    return None;
                }
                &P_LARGE
            }
            SpeedSymbol::J => &J_SMALL,
            SpeedSymbol::K => &K_SMALL,
            SpeedSymbol::L => &L_SMALL,
            _ => return None,
        })
    }

    /// Motorcycle tires of symbol V or W from 130 km/h: UN R75 §2.33.2 and §2.33.3. `None` for others.
    ///
    /// With V inside the size they go on to 270 km/h, within the limit their maker states.
    ///
    /// ```
    /// use beadseat::{tire::{SizeSpeedLetter, SpeedSymbol, inflation::SpeedVariation}, units::{kmh, percent}};
    /// let v = SpeedVariation::motorcycle_fast(SpeedSymbol::V, None).ok_or("no column")?;
    /// assert_eq!(v.load_share(kmh(240.0))?, percent(85.0));
    /// assert!(v.load_share(kmh(250.0)).is_err());
    /// let v = SpeedVariation::motorcycle_fast(SpeedSymbol::V, Some(SizeSpeedLetter::V)).ok_or("no column")?;
    /// assert_eq!(v.load_share(kmh(250.0))?, percent(80.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn motorcycle_fast(symbol: SpeedSymbol, in_size: Option<SizeSpeedLetter>) -> Option<Self> {
        Self::of(match (symbol, in_size) {
            (SpeedSymbol::V, Some(SizeSpeedLetter::V)) => &V_IN_SIZE,
            (SpeedSymbol::V, _) => &V_FAST,
            (SpeedSymbol::W, _) => &W_FAST,
            _ => return None,
        })
    }

    /// Agricultural traction tires: UN R106 Annex 7 part A, remembered with doubt. `None` but for A6, A8
    /// and D.
    ///
    /// ```
    /// use beadseat::{tire::{SpeedSymbol, inflation::SpeedVariation}, units::{kmh, percent}};
    /// let tractor = SpeedVariation::agricultural(SpeedSymbol::A8).ok_or("no column")?;
    /// assert_eq!(tractor.load_share(kmh(30.0))?, percent(107.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn agricultural(symbol: SpeedSymbol) -> Option<Self> {
        Self::of(match symbol {
            SpeedSymbol::A6 => &A6,
            SpeedSymbol::A8 => &A8,
            SpeedSymbol::D => &D,
            _ => return None,
        })
    }

    /// The share of the load index at a speed, linear between the rows.
    ///
    /// # Errors
    /// Outside the rows of the column.
    ///
    /// ```
    /// use beadseat::{tire::{SpeedSymbol, inflation::SpeedVariation}, units::{kmh, percent}};
    /// let tractor = SpeedVariation::agricultural(SpeedSymbol::A8).ok_or("no column")?;
    /// assert_eq!(tractor.load_share(kmh(42.5))?, percent(98.0));
    /// assert!(tractor.load_share(kmh(55.0)).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn load_share(&self, speed: Velocity) -> Result<Ratio, OutOfRange> {
        let Column { from_kmh, step_kmh, .. } = *self.column;
        let v = OutOfRange::check("speed", in_kmh(speed), "km/h", from_kmh, self.column.last_kmh())?;
        let steps = (v - from_kmh) / step_kmh;
        let at = steps as usize;
        let (v0, change) = self.column.row(at).unwrap_or_default();
        let (_, next) = self.column.row(at + 1).unwrap_or((0.0, change));
        Ok(units::percent(100.0 + change + (next - change) * (v - v0) / step_kmh))
    }

    /// The rows: speed, and share of the load index.
    ///
    /// ```
    /// use beadseat::tire::{SpeedSymbol, inflation::SpeedVariation};
    /// let tractor = SpeedVariation::agricultural(SpeedSymbol::A6).ok_or("no column")?;
    /// assert_eq!(tractor.rows().len(), 7);
    /// # Ok::<(), &str>(())
    /// ```
    pub fn rows(&self) -> impl ExactSizeIterator<Item = (Velocity, Ratio)> + use<> {
        let column = self.column;
        (0..column.rows()).map(move |at| {
            let (v, change) = column.row(at).unwrap_or_default();
            (units::kmh(v), units::percent(100.0 + change))
        })
    }

    /// The source of the column.
    pub const fn citation(&self) -> Citation {
        self.column.citation
    }
}

impl Tire {
    /// How the load of this commercial or truck tire varies with speed; `None` for other tires, without a
    /// service description, and for symbols that UN R54 Annex 8 (from memory) has no column for.
    ///
    /// Ask for it only where the law and the tire's maker allow: [`Tire::at_speed`] never does.
    ///
    /// ```
    /// use beadseat::{tire::Tire, units::{kmh, percent}};
    /// let van = Tire::parse("195/70R15C 104/102R")?;
    /// let variation = van.speed_variation().ok_or("no column")?;
    /// assert_eq!(variation.load_share(kmh(40.0))?, percent(125.0));
    /// assert_eq!(van.at_speed(kmh(40.0)).and_then(|rule| rule.load_share()), Some(percent(100.0)));
    /// assert!(Tire::parse("205/55R16 91V")?.speed_variation().is_none());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn speed_variation(&self) -> Option<SpeedVariation> {
        let service = self.service().filter(|_| self.size().rules().has_commercial_speed_variation)?;
        SpeedVariation::commercial(service.single(), service.speed())
    }
}
