//! Rolling noise: its limits and the classes against them.

use crate::Citation;
use crate::units::{Length, in_mm};

/// A sound level in whole dB(A), as rolling noise is stated.
///
/// ```
/// use beadseat::tire::energy_label::SoundLevel;
/// assert_eq!(SoundLevel::new(71).map(|level| level.decibels()), Some(71));
/// assert_eq!(SoundLevel::new(20), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SoundLevel {
    decibels: u8,
}

impl SoundLevel {
    /// A level of 40 to 120 dB(A).
    pub const fn new(decibels: u8) -> Option<Self> {
        if decibels < 40 || decibels > 120 { None } else { Some(Self { decibels }) }
    }

    /// The level in dB(A).
    pub const fn decibels(self) -> u8 {
        self.decibels
    }
}

/// A class of external rolling noise: at least 3 dB below the limit, within it, or above it. `Ord` is by
/// merit.
///
/// Source: Regulation (EU) 2020/740, Annex I, Part C, as a tire maker explains it.
///
/// ```
/// use beadseat::tire::energy_label::{NoiseClass, SoundLevel};
/// let db = |level| SoundLevel::new(level).ok_or("out of range");
/// assert_eq!(NoiseClass::of(db(68)?, db(71)?), NoiseClass::A);
/// assert_eq!(NoiseClass::of(db(69)?, db(71)?), NoiseClass::B);
/// assert_eq!(NoiseClass::of(db(72)?, db(71)?), NoiseClass::C);
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum NoiseClass {
    /// C: louder than the limit.
    C,
    /// Up to the limit.
    B,
    /// At least 3 dB below the limit.
    A,
}

impl NoiseClass {
    /// Every one, quietest first.
    ///
    /// ```
    /// use beadseat::tire::energy_label::NoiseClass;
    /// assert_eq!(NoiseClass::ALL.first(), Some(&NoiseClass::A));
    /// ```
    pub const ALL: &[Self] = &[Self::A, Self::B, Self::C];

    /// The class of a measured level against the limit for the tire.
    pub const fn of(measured: SoundLevel, limit: SoundLevel) -> Self {
        if measured.decibels + 3 <= limit.decibels {
            Self::A
        } else if measured.decibels <= limit.decibels {
            Self::B
        } else {
            Self::C
        }
    }

    /// The highest level of the class; `None` for C.
    ///
    /// ```
    /// use beadseat::tire::energy_label::{NoiseClass, SoundLevel};
    /// let limit = SoundLevel::new(71).ok_or("out of range")?;
    /// assert_eq!(NoiseClass::A.max(limit), SoundLevel::new(68));
    /// assert_eq!(NoiseClass::B.max(limit), Some(limit));
    /// assert_eq!(NoiseClass::C.max(limit), None);
    /// # Ok::<(), &str>(())
    /// ```
    pub const fn max(self, limit: SoundLevel) -> Option<SoundLevel> {
        match self {
            Self::A => SoundLevel::new(limit.decibels - 3),
            Self::B => Some(limit),
            Self::C => None,
        }
    }

    /// Where the classes are laid down.
    ///
    /// ```
    /// use beadseat::{Citation, tire::energy_label::NoiseClass};
    /// assert_eq!(NoiseClass::A.citation(), Citation::LABEL_NOISE);
    /// ```
    pub const fn citation(self) -> Citation {
        Citation::LABEL_NOISE
    }

    /// The letter that stands on the label.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::energy_label::NoiseClass::A.name(), "A");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::B => "B",
            Self::C => "C",
        }
    }
}

crate::text::worded!(NoiseClass [A B C]);

/// What the limit of rolling noise depends on.
///
/// | class | | dB(A) |
/// |---|---|---|
/// | C1 | nominal width to 185, 215, 245, 275 mm, wider | 70, 71, 71, 72, 74 |
/// | C1 | severe snow, extra load or both | 1 more |
/// | C2 | normal, traction | 72, 73 |
/// | C3 | normal, traction | 73, 75 |
///
/// Source: Regulation (EC) No 661/2009, Annex II, Part C, in a public reprint; the 1 dB(A) more from memory.
///
/// ```
/// use beadseat::{tire::energy_label::{NoiseLimit, SoundLevel}, units::mm};
/// let tire = NoiseLimit::C1 { nominal_width: mm(225.0), severe_snow_or_extra_load: true };
/// assert_eq!(tire.limit(), SoundLevel::new(72));
/// assert!(tire.citation().is_from_memory());
/// assert!(!NoiseLimit::C2 { traction: false }.citation().is_from_memory());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoiseLimit {
    /// A tire of a passenger car.
    C1 {
        /// The nominal section width of the tire.
        nominal_width: Length,
        /// It is a severe-snow tire or of the extra-load version, or both.
        severe_snow_or_extra_load: bool,
    },
    /// A light commercial tire.
    C2 {
        /// It has a traction tread.
        traction: bool,
    },
    /// A tire of trucks and buses.
    C3 {
        /// It has a traction tread.
        traction: bool,
    },
}

impl NoiseLimit {
    /// The limit; `None` for a width that is not a number or not above zero.
    pub fn limit(self) -> Option<SoundLevel> {
        SoundLevel::new(match self {
            Self::C1 { nominal_width, severe_snow_or_extra_load } => {
                let base = match in_mm(nominal_width) {
                    width if width.is_nan() || width <= 0.0 => return None,
                    ..=185.0 => 70,
                    ..=245.0 => 71,
                    ..=275.0 => 72,
                    _ => 74,
                };
                base + u8::from(severe_snow_or_extra_load)
            }
            Self::C2 { traction } => 72 + u8::from(traction),
            Self::C3 { traction } => 73 + 2 * u8::from(traction),
        })
    }

    /// The source of the limit.
    pub const fn citation(self) -> Citation {
        match self {
            Self::C1 { severe_snow_or_extra_load: true, .. } => Citation::NOISE_LIMIT_RAISED,
            _ => Citation::NOISE_LIMIT,
        }
    }
}
