//! Classes of the EU tire label, from coefficients and back to bounds.

mod approval_limit;
mod noise;
mod stated;

pub use noise::{NoiseClass, NoiseLimit, SoundLevel};
pub use stated::EnergyLabel;

use crate::tire::{LoadIndex, SpeedSymbol};
use crate::units::{self, Ratio, in_ratio};
use crate::{Citation, OutOfRange};

/// The class a tire is type-approved in, which decides the scale it is held against.
///
/// `Ord` is C1, C2, C3: a tire approved in two classes is held against the scale of the greater (EC
/// 1222/2009, Annex I).
///
/// ```
/// use beadseat::tire::energy_label::TireClass;
/// assert_eq!(TireClass::C1.max(TireClass::C2), TireClass::C2);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum TireClass {
    /// Tires of passenger cars and their trailers (M1, O1, O2). From memory.
    C1,
    /// Tires of commercial vehicles with a single load index up to 121 and speed symbol N or faster.
    /// From memory.
    C2,
    /// All other tires of commercial vehicles. From memory.
    C3,
}

impl TireClass {
    /// Every one, passenger tires first.
    ///
    /// ```
    /// use beadseat::tire::energy_label::TireClass;
    /// assert_eq!(TireClass::ALL.first(), Some(&TireClass::C1));
    /// ```
    pub const ALL: &[Self] = &[Self::C1, Self::C2, Self::C3];

    /// The class of a tire of a commercial vehicle. From memory.
    ///
    /// ```
    /// use beadseat::tire::{ServiceDescription, energy_label::TireClass};
    /// let class = |text| {
    ///     ServiceDescription::parse(text).map(|s| TireClass::of_commercial(s.single(), s.speed()))
    /// };
    /// assert_eq!(class("121/119N")?, TireClass::C2);
    /// assert_eq!(class("121/119M")?, TireClass::C3);
    /// assert_eq!(class("122/120N")?, TireClass::C3);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn of_commercial(single: LoadIndex, speed: SpeedSymbol) -> Self {
        if single.number() <= 121 && speed >= SpeedSymbol::N { Self::C2 } else { Self::C3 }
    }

    /// Where the classes are laid down.
    ///
    /// ```
    /// assert!(beadseat::tire::energy_label::TireClass::C1.citation().is_from_memory());
    /// ```
    pub const fn citation(self) -> Citation {
        Citation::TIRE_CLASS
    }

    /// As it is written.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::energy_label::TireClass::C1.name(), "C1");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Self::C1 => "C1",
            Self::C2 => "C2",
            Self::C3 => "C3",
        }
    }
}

crate::text::worded!(TireClass [C1 C2 C3]);

/// Stands in a table for "no bound".
const OPEN: u16 = u16::MAX;

/// One scale: the bound of each class, best class first, in the last digit that is printed. A class with
/// the bound of the one before it is empty.
#[derive(Clone, Copy)]
enum Scale {
    /// Rolling resistance in tenths of a N/kN: at most.
    AtMost(&'static [u16]),
    /// Wet grip in hundredths: at least.
    AtLeast(&'static [u16]),
}

impl Scale {
    /// The class a value falls in, counted from the best. The printed bounds leave no room between the
    /// classes for a value of their own precision; a finer one is rounded to it first, half up.
    fn class_of(self, value: u16) -> usize {
        match self {
            Self::AtMost(bounds) => bounds.iter().position(|&most| value <= most),
            Self::AtLeast(bounds) => bounds.iter().position(|&least| value >= least),
        }
        .unwrap_or_default() // never: the worst class is open
    }

    /// The lowest and the highest value of a class; `None` if it is empty.
    fn bounds(self, class: usize) -> Option<(Option<u16>, Option<u16>)> {
        let (Self::AtMost(bounds) | Self::AtLeast(bounds)) = self;
        let bound = *bounds.get(class)?;
        let better = class.checked_sub(1).and_then(|better| bounds.get(better).copied());
        if better == Some(bound) {
            return None;
        }
        Some(match self {
            Self::AtMost(_) => (better.map(|most| most + 1), (bound != OPEN).then_some(bound)),
            Self::AtLeast(_) => ((bound != 0).then_some(bound), better.map(|least| least - 1)),
        })
    }
}

/// Classes A to E of Regulation (EU) 2020/740, Annex I, Part A.
const RESISTANCE: [[u16; 5]; 3] = [[65, 77, 90, 105, OPEN], [55, 67, 80, 90, OPEN], [40, 50, 60, 70, OPEN]];
/// The same, Part B.
const WET_GRIP: [[u16; 5]; 3] = [[155, 140, 125, 110, 0], [140, 125, 110, 95, 0], [125, 110, 95, 80, 0]];

/// Classes A to G of Regulation (EC) No 1222/2009, Annex I, Part A.
const FORMER_RESISTANCE: [[u16; 7]; 3] =
    [[65, 77, 90, 90, 105, 120, OPEN], [55, 67, 80, 80, 92, 105, OPEN], [40, 50, 60, 70, 80, OPEN, OPEN]];
/// The same, Part B, of C1.
const FORMER_WET_GRIP_C1: [u16; 7] = [155, 140, 125, 125, 110, 0, 0];

/// N/kN are thousandths, and the tables have tenths of them.
const TENTHS_OF_N_PER_KN: f64 = 10_000.0;
const HUNDREDTHS: f64 = 100.0;

fn resistance_steps(coefficient: Ratio) -> Result<u16, OutOfRange> {
    let tenths = in_ratio(coefficient) * TENTHS_OF_N_PER_KN;
    OutOfRange::check("rolling resistance coefficient", tenths / 10.0, "N/kN", 1.0, 50.0)?;
    Ok(libm::floor(tenths + 0.5 + 1e-9) as u16)
}

fn wet_grip_steps(index: Ratio) -> Result<u16, OutOfRange> {
    let index = OutOfRange::check("wet grip index", in_ratio(index), "", 0.0, 5.0)?;
    Ok(libm::floor(index * HUNDREDTHS + 0.5 + 1e-9) as u16)
}

/// What a class spans.
///
/// ```
/// use beadseat::{tire::energy_label::{LabelClass, TireClass}, units::ratio};
/// let b = LabelClass::B.wet_grip(TireClass::C1);
/// assert_eq!((b.min(), b.max()), (Some(ratio(1.40)), Some(ratio(1.54))));
/// assert!(!b.citation().is_from_memory());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClassBounds {
    least: Option<Ratio>,
    most: Option<Ratio>,
    citation: Citation,
}

impl ClassBounds {
    fn of((least, most): (Option<u16>, Option<u16>), steps: f64, citation: Citation) -> Self {
        let value = |bound: u16| units::ratio(f64::from(bound) / steps);
        Self { least: least.map(value), most: most.map(value), citation }
    }

    /// The lowest value of the class; `None` if it is open.
    pub const fn min(&self) -> Option<Ratio> {
        self.least
    }

    /// The highest value of the class; `None` if it is open.
    pub const fn max(&self) -> Option<Ratio> {
        self.most
    }

    /// The source of the class and its range.
    pub const fn citation(&self) -> Citation {
        self.citation
    }
}

macro_rules! letters {
    ($(#[$doc:meta])* $type:ident $($worst_first:ident)* / $($best_first:ident)*) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[non_exhaustive]
        pub enum $type { $(#[doc = concat!("Class ", stringify!($worst_first), ".")] $worst_first,)* }

        impl $type {
            /// Every class, best first.
            ///
            /// ```
            #[doc = concat!("use beadseat::tire::energy_label::", stringify!($type), ";")]
            #[doc = concat!("assert_eq!(", stringify!($type), "::ALL[0], ", stringify!($type), "::A);")]
            /// ```
            pub const ALL: &[Self] = &[$(Self::$best_first,)*];

            /// The letter that stands on the label.
            ///
            /// ```
            #[doc = concat!("assert_eq!(beadseat::tire::energy_label::", stringify!($type), "::B.name(), \"B\");")]
            /// ```
            pub const fn name(self) -> &'static str {
                match self { $(Self::$best_first => stringify!($best_first),)* }
            }

            /// The place in [`Self::ALL`].
            const fn place(self) -> usize {
                Self::ALL.len() - 1 - self as usize
            }

            /// The class in a place that a scale of as many classes gave.
            fn at(place: usize) -> Self {
                Self::ALL.get(place).copied().unwrap_or(Self::A)
            }
        }

        crate::text::worded!($type [$($best_first)*]);
    };
}

letters! {
    /// A class of fuel efficiency or wet grip on the label in use since 1 May 2021, Regulation (EU)
    /// 2020/740. `Ord` is by merit: A is the greatest.
    ///
    /// | rolling resistance, N/kN | A | B | C | D | E |
    /// |---|---|---|---|---|---|
    /// | C1 | ≤ 6.5 | 6.6–7.7 | 7.8–9.0 | 9.1–10.5 | ≥ 10.6 |
    /// | C2 | ≤ 5.5 | 5.6–6.7 | 6.8–8.0 | 8.1–9.0 | ≥ 9.1 |
    /// | C3 | ≤ 4.0 | 4.1–5.0 | 5.1–6.0 | 6.1–7.0 | ≥ 7.1 |
    ///
    /// | wet grip index | A | B | C | D | E |
    /// |---|---|---|---|---|---|
    /// | C1 | ≥ 1.55 | 1.40–1.54 | 1.25–1.39 | 1.10–1.24 | ≤ 1.09 |
    /// | C2 | ≥ 1.40 | 1.25–1.39 | 1.10–1.24 | 0.95–1.09 | ≤ 0.94 |
    /// | C3 | ≥ 1.25 | 1.10–1.24 | 0.95–1.09 | 0.80–0.94 | ≤ 0.79 |
    ///
    /// Source: Annex I, Parts A and B, in a public reprint. D of C2 ends at 9.0 N/kN, where the former label
    /// had 9.2. The table is printed to one digit of resistance and two of grip; a finer value is rounded to
    /// it first, which is our own rule.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::{LabelClass, TireClass}, units::ratio};
    /// // 6.5 N/kN is 0.0065
    /// assert_eq!(LabelClass::of_rolling_resistance(TireClass::C1, ratio(0.0065))?, LabelClass::A);
    /// assert_eq!(LabelClass::of_wet_grip(TireClass::C1, ratio(1.54))?, LabelClass::B);
    /// assert!(LabelClass::A > LabelClass::B);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    LabelClass E D C B A / A B C D E
}

impl LabelClass {
    const fn resistance_scale(class: TireClass) -> Scale {
        Scale::AtMost(&RESISTANCE[class as usize])
    }

    const fn wet_grip_scale(class: TireClass) -> Scale {
        Scale::AtLeast(&WET_GRIP[class as usize])
    }

    /// The class of fuel efficiency of a rolling resistance coefficient.
    ///
    /// # Errors
    /// Outside 1 to 50 N/kN.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::{LabelClass, TireClass}, units::ratio};
    /// assert_eq!(LabelClass::of_rolling_resistance(TireClass::C3, ratio(0.0070))?, LabelClass::D);
    /// assert!(LabelClass::of_rolling_resistance(TireClass::C3, ratio(7.0)).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn of_rolling_resistance(class: TireClass, coefficient: Ratio) -> Result<Self, OutOfRange> {
        Ok(Self::at(Self::resistance_scale(class).class_of(resistance_steps(coefficient)?)))
    }

    /// The rolling resistance coefficients of the class.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::{LabelClass, TireClass}, units::ratio};
    /// let d = LabelClass::D.rolling_resistance(TireClass::C1);
    /// assert_eq!((d.min(), d.max()), (Some(ratio(0.0091)), Some(ratio(0.0105))));
    /// ```
    pub fn rolling_resistance(self, class: TireClass) -> ClassBounds {
        let bounds = Self::resistance_scale(class).bounds(self.place()).unwrap_or_default();
        ClassBounds::of(bounds, TENTHS_OF_N_PER_KN, Citation::LABEL_RESISTANCE)
    }

    /// The class of a wet grip index.
    ///
    /// # Errors
    /// Outside 0 to 5.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::{LabelClass, TireClass}, units::ratio};
    /// assert_eq!(LabelClass::of_wet_grip(TireClass::C1, ratio(1.55))?, LabelClass::A);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn of_wet_grip(class: TireClass, index: Ratio) -> Result<Self, OutOfRange> {
        Ok(Self::at(Self::wet_grip_scale(class).class_of(wet_grip_steps(index)?)))
    }

    /// The wet grip indices of the class.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::{LabelClass, TireClass}, units::ratio};
    /// assert_eq!(LabelClass::E.wet_grip(TireClass::C3).max(), Some(ratio(0.79)));
    /// assert_eq!(LabelClass::E.wet_grip(TireClass::C3).min(), None);
    /// ```
    pub fn wet_grip(self, class: TireClass) -> ClassBounds {
        let bounds = Self::wet_grip_scale(class).bounds(self.place()).unwrap_or_default();
        ClassBounds::of(bounds, HUNDREDTHS, Citation::LABEL_WET_GRIP)
    }
}

letters! {
    /// A class of the label used from 2012 to 2021, Regulation (EC) No 1222/2009, Annex I. `Ord` is by
    /// merit.
    ///
    /// | rolling resistance, kg/t | A | B | C | D | E | F | G |
    /// |---|---|---|---|---|---|---|---|
    /// | C1 | ≤ 6.5 | 6.6–7.7 | 7.8–9.0 | empty | 9.1–10.5 | 10.6–12.0 | ≥ 12.1 |
    /// | C2 | ≤ 5.5 | 5.6–6.7 | 6.8–8.0 | empty | 8.1–9.2 | 9.3–10.5 | ≥ 10.6 |
    /// | C3 | ≤ 4.0 | 4.1–5.0 | 5.1–6.0 | 6.1–7.0 | 7.1–8.0 | ≥ 8.1 | empty |
    ///
    /// Wet grip of C1: A ≥ 1.55, B 1.40–1.54, C 1.25–1.39, E 1.10–1.24, F ≤ 1.09; D and G empty. A kg/t is
    /// a N/kN.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::{FormerLabelClass, TireClass}, units::ratio};
    /// let class = FormerLabelClass::of_rolling_resistance(TireClass::C1, ratio(0.0095))?;
    /// assert_eq!(class, FormerLabelClass::E);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    FormerLabelClass G F E D C B A / A B C D E F G
}

impl FormerLabelClass {
    const fn resistance_scale(class: TireClass) -> Scale {
        Scale::AtMost(&FORMER_RESISTANCE[class as usize])
    }

    /// The class of a rolling resistance coefficient.
    ///
    /// # Errors
    /// Outside 1 to 50 N/kN.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::{FormerLabelClass, TireClass}, units::ratio};
    /// let class = FormerLabelClass::of_rolling_resistance(TireClass::C3, ratio(0.0081))?;
    /// assert_eq!(class, FormerLabelClass::F);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn of_rolling_resistance(class: TireClass, coefficient: Ratio) -> Result<Self, OutOfRange> {
        Ok(Self::at(Self::resistance_scale(class).class_of(resistance_steps(coefficient)?)))
    }

    /// The rolling resistance coefficients of the class; `None` if it is empty.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::{FormerLabelClass, TireClass}, units::ratio};
    /// let g = FormerLabelClass::G.rolling_resistance(TireClass::C1);
    /// assert_eq!(g.and_then(|bounds| bounds.min()), Some(ratio(0.0121)));
    /// assert_eq!(FormerLabelClass::D.rolling_resistance(TireClass::C1), None);
    /// ```
    pub fn rolling_resistance(self, class: TireClass) -> Option<ClassBounds> {
        let bounds = Self::resistance_scale(class).bounds(self.place())?;
        Some(ClassBounds::of(bounds, TENTHS_OF_N_PER_KN, Citation::LABEL_FORMER))
    }

    /// The class of the wet grip index of a C1 tire.
    ///
    /// # Errors
    /// Outside 0 to 5.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::FormerLabelClass, units::ratio};
    /// assert_eq!(FormerLabelClass::of_wet_grip_c1(ratio(1.24))?, FormerLabelClass::E);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn of_wet_grip_c1(index: Ratio) -> Result<Self, OutOfRange> {
        Ok(Self::at(Scale::AtLeast(&FORMER_WET_GRIP_C1).class_of(wet_grip_steps(index)?)))
    }

    /// The wet grip indices of the class, of C1 tires; `None` if it is empty.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::FormerLabelClass, units::ratio};
    /// let f = FormerLabelClass::F.wet_grip_c1();
    /// assert_eq!(f.and_then(|bounds| bounds.max()), Some(ratio(1.09)));
    /// assert_eq!(FormerLabelClass::G.wet_grip_c1(), None);
    /// ```
    pub fn wet_grip_c1(self) -> Option<ClassBounds> {
        let bounds = Scale::AtLeast(&FORMER_WET_GRIP_C1).bounds(self.place())?;
        Some(ClassBounds::of(bounds, HUNDREDTHS, Citation::LABEL_FORMER))
    }

    /// The fuel efficiency class of today that holds the whole of this one; `None` if it is empty or if
    /// two share it (E of C2: 8.1 to 9.2 N/kN, which is parted at 9.0 today).
    ///
    /// ```
    /// use beadseat::tire::energy_label::{FormerLabelClass, LabelClass, TireClass};
    /// assert_eq!(FormerLabelClass::E.fuel_class_today(TireClass::C1), Some(LabelClass::D));
    /// assert_eq!(FormerLabelClass::F.fuel_class_today(TireClass::C1), Some(LabelClass::E));
    /// assert_eq!(FormerLabelClass::E.fuel_class_today(TireClass::C2), None);
    /// ```
    pub fn fuel_class_today(self, class: TireClass) -> Option<LabelClass> {
        let (least, most) = Self::resistance_scale(class).bounds(self.place())?;
        let today = LabelClass::resistance_scale(class);
        let best = today.class_of(least.unwrap_or(0));
        (best == today.class_of(most.unwrap_or(OPEN))).then_some(LabelClass::at(best))
    }
}

/// How grip on snow is measured for the mark of the three-peak mountain with snowflake.
///
/// ```
/// use beadseat::{tire::energy_label::{SnowTest, TireClass}, units::ratio};
/// assert_eq!(SnowTest::Braking.min_index(TireClass::C1), Some(ratio(1.07)));
/// assert_eq!(SnowTest::Braking.min_index(TireClass::C3), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum SnowTest {
    /// Braking on snow, against the reference tire of the class.
    Braking,
    /// Traction: spinning up of C1 and C2, acceleration of C3.
    Traction,
}

impl SnowTest {
    /// The least snow grip index; `None` where the class is not tested so. Source: UN R117, §6.4.1, from
    /// memory.
    pub const fn min_index(self, class: TireClass) -> Option<Ratio> {
        let index = match (self, class) {
            (Self::Braking, TireClass::C1) => 1.07,
            (Self::Braking, TireClass::C2) => 1.02,
            (Self::Braking, TireClass::C3) => return None,
            (Self::Traction, TireClass::C1 | TireClass::C2) => 1.10,
            (Self::Traction, TireClass::C3) => 1.25,
        };
        Some(units::ratio(index))
    }

    /// The source of the index.
    ///
    /// ```
    /// assert!(beadseat::tire::energy_label::SnowTest::Braking.citation().is_from_memory());
    /// ```
    pub const fn citation(self) -> Citation {
        Citation::SNOW_GRIP
    }
}

impl TireClass {
    /// The least ice grip index for the ice mark, which only C1 tires that also bear the snow mark may
    /// have. Source: [`Citation::ICE_GRIP`], an amendment proposed to UN R117; ISO 19447.
    ///
    /// ```
    /// use beadseat::{tire::energy_label::TireClass, units::ratio};
    /// assert_eq!(TireClass::C1.min_ice_grip_index(), Some(ratio(1.18)));
    /// assert_eq!(TireClass::C2.min_ice_grip_index(), None);
    /// ```
    pub const fn min_ice_grip_index(self) -> Option<Ratio> {
        match self {
            Self::C1 => Some(units::ratio(1.18)),
            Self::C2 | Self::C3 => None,
        }
    }
}
