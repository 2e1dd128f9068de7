//! What pressures a setup would need.

use core::fmt;

use super::check::Position;
use super::value::Value;
use crate::Citation;
use crate::record::words;
use crate::tire::inflation::Inflation;
use crate::units::Pressure;

words! {
    /// What asks for the highest cold pressure.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::pressures::PressureBasis::FullLoad.name(), "full_load");
    /// ```
    PressureBasis {
        /// The load in ordinary use asks for it.
        NormalLoad = "normal_load",
        /// The greatest load at top speed.
        FullLoad = "full_load",
        /// What the original tire carried at its placard pressure.
        OriginalCapacity = "original_capacity",
        /// The load index: no pressure makes the tire carry one of the loads.
        LoadIndex = "load_index",
        /// One of them is above the permitted maximum: the tire cannot do it.
        PermittedMaximum = "permitted_maximum",
    }
}

words! {
    /// What the load tables take for the pressure at which the tire carries its load index.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::pressures::Assumes::HigherOfTwo.name(), "higher_of_two");
    /// ```
    Assumes {
        /// What is molded on the tire or its maker states.
        Stated = "stated",
        /// What the tire's class and load version fix.
        LoadVersion = "load_version",
        /// What the letter of its load range usually means.
        LoadRange = "load_range",
        /// The higher of the two pressures that the letter of its load range may mean.
        HigherOfTwo = "higher_of_two",
    }
}

impl Assumes {
    pub(super) fn of(law: &Inflation) -> Self {
        if law.lower().is_some() {
            Self::HigherOfTwo
        } else if law.is_by_letter() {
            Self::LoadRange
        } else if law.reference_citation() == Citation::REFERENCE_PRESSURE_GIVEN {
            Self::Stated
        } else {
            Self::LoadVersion
        }
    }
}

/// The least cold pressure for a load.
///
/// `Display` is the pressure, or `none carries it`, or nothing.
///
/// ```
/// use beadseat::{fitment::pressures::Needed, units::kpa};
/// assert_eq!(Needed::AtLeast(kpa(230.0)).to_string(), "230 kPa");
/// assert_eq!(Needed::NoPressure.to_string(), "none carries it");
/// assert_eq!(Needed::NotKnown.pressure(), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Needed {
    /// An input is missing, or the load tables do not reach so low.
    NotKnown,
    /// The load is above what the load index allows at any pressure.
    NoPressure,
    /// It takes this pressure or more.
    AtLeast(Pressure),
}

impl Needed {
    /// The pressure, if there is one.
    pub const fn pressure(self) -> Option<Pressure> {
        match self {
            Self::AtLeast(pressure) => Some(pressure),
            Self::NotKnown | Self::NoPressure => None,
        }
    }
}

impl fmt::Display for Needed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotKnown => Ok(()),
            Self::NoPressure => f.write_str("none carries it"),
            Self::AtLeast(pressure) => Value::Pressure(*pressure).fmt(f),
        }
    }
}

/// The cold pressures that a proposed setup needs on one axle, each where its inputs are known.
///
/// They are answers of load tables. The vehicle maker's placard and the tire maker's data come first.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, Limits, Position, Setup, Setups, assess};
/// use beadseat::fitment::pressures::PressureBasis;
/// use beadseat::units::{kg, kmh, kpa};
/// use beadseat::uom::si::pressure::kilopascal;
/// use beadseat::vehicle::{Axle, Kind, Vehicle};
/// let axle = Axle::new().with_max_load(kg(1060.0))?.with_normal_load(kg(930.0))?.with_placard(kpa(230.0))?;
/// let wagon = Vehicle::new(Kind::Passenger).with_top_speed(kmh(205.0))?.with_front(axle);
/// let setup = |tire: &str| Ok::<_, beadseat::ParseError>(Setups {
///     front: Some(Setup::new(tire.parse()?, "7.5Jx17".parse()?)),
///     rear: None,
/// });
/// let change = Change { original: setup("205/55R16 91V")?, proposed: setup("225/45R17 94W XL")? };
/// let report = assess(&wagon, &change, &Conditions::default(), &Limits::default());
/// let front = report.pressures().find(|p| p.position() == Position::Front).ok_or("no front axle")?;
/// // A higher load index, and yet the XL needs more pressure to carry what the original carried.
/// assert_eq!(front.as_original().pressure().map(|p| p.get::<kilopascal>().round()), Some(240.0));
/// assert_eq!(front.full_load().pressure().map(|p| p.get::<kilopascal>().round()), Some(231.0));
/// assert_eq!(front.governs(), Some(PressureBasis::OriginalCapacity));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressures {
    place: Position,
    normal_load: Needed,
    full_load: Needed,
    as_original: Needed,
    permitted: Option<Pressure>,
    assumes: Option<Assumes>,
}

impl Pressures {
    pub(super) const fn at(self, place: Position) -> Self {
        Self { place, ..self }
    }

    pub(super) const fn new(
        place: Position,
        [normal_load, full_load, as_original]: [Needed; 3],
        permitted: Option<Pressure>,
        assumes: Option<Assumes>,
    ) -> Self {
        Self { place, normal_load, full_load, as_original, permitted, assumes }
    }

    /// The axle that the pressures are for.
    pub const fn position(&self) -> Position {
        self.place
    }

    /// The least that carries the normal load.
    pub const fn normal_load(&self) -> Needed {
        self.normal_load
    }

    /// The least that carries the greatest load at top speed, camber and use.
    pub const fn full_load(&self) -> Needed {
        self.full_load
    }

    /// The one at which the tire carries what the original does at its placard pressure. Not known where the
    /// original's load range leaves two pressures.
    pub const fn as_original(&self) -> Needed {
        self.as_original
    }

    /// The most that tire, wheel and valve permit: molded or stated, else that of the speed symbol.
    pub const fn permitted(&self) -> Option<Pressure> {
        self.permitted
    }

    /// On what the pressures rest; nothing where no law of load and pressure is known.
    pub const fn assumes(&self) -> Option<Assumes> {
        self.assumes
    }

    /// Whether there is anything to tell.
    pub(super) fn tells(&self) -> bool {
        let needs = [self.normal_load, self.full_load, self.as_original];
        self.permitted.is_some() || needs.iter().any(|needed| *needed != Needed::NotKnown)
    }

    /// What asks for the most, or that the permitted maximum is too little for it. Nothing if no need is
    /// known.
    pub fn governs(&self) -> Option<PressureBasis> {
        let needs = [
            (self.normal_load, PressureBasis::NormalLoad),
            (self.full_load, PressureBasis::FullLoad),
            (self.as_original, PressureBasis::OriginalCapacity),
        ];
        if needs.iter().any(|(needed, _)| *needed == Needed::NoPressure) {
            return Some(PressureBasis::LoadIndex);
        }
        let (highest, governs) = needs
            .into_iter()
            .filter_map(|(needed, governs)| Some((needed.pressure()?, governs)))
            .max_by(|a, b| a.0.value.total_cmp(&b.0.value))?;
        match self.permitted {
            Some(most) if highest > most => Some(PressureBasis::PermittedMaximum),
            _ => Some(governs),
        }
    }

    /// The least at which everything is carried that is known to be asked for; nothing where the tire cannot.
    pub(super) fn least(&self) -> Option<Pressure> {
        match self.governs()? {
            PressureBasis::LoadIndex | PressureBasis::PermittedMaximum => None,
            PressureBasis::NormalLoad | PressureBasis::FullLoad | PressureBasis::OriginalCapacity => {
                let needs = [self.normal_load, self.full_load, self.as_original];
                needs.into_iter().filter_map(Needed::pressure).reduce(Pressure::max)
            }
        }
    }

    /// Whether the most that is permitted, or the load index, is too little for something that is asked for.
    pub(super) fn is_out_of_reach(&self) -> bool {
        matches!(self.governs(), Some(PressureBasis::LoadIndex | PressureBasis::PermittedMaximum))
    }
}
