//! What pressures a setup would need.

use super::check::Place;
use crate::record::words;
use crate::units::{self, Pressure};

words! {
    /// What asks for the highest cold pressure.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::Governs::FullLoad.name(), "full_load");
    /// ```
    Governs {
        /// The normal load.
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

/// The cold pressures that a proposed setup needs on one axle, each where its inputs are known.
///
/// They are answers of load tables. The vehicle maker's placard and the tire maker's data come first.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, Governs, Limits, Place, Setup, Setups, assess};
/// use beadseat::units::{kg, kmh, kpa};
/// use beadseat::uom::si::pressure::kilopascal;
/// use beadseat::vehicle::{Axle, Kind, Vehicle};
/// let axle = Axle::new().with_max_load(kg(1060.0))?.with_normal_load(kg(930.0))?.with_placard(kpa(230.0))?;
/// let wagon = Vehicle::new().with_kind(Kind::Passenger).with_top_speed(kmh(205.0))?.with_front(axle);
/// let setup = |tire: &str| Ok::<_, beadseat::ParseError>(Setups {
///     front: Some(Setup::new(tire.parse()?, "7.5Jx17".parse()?)),
///     rear: None,
/// });
/// let change = Change { original: setup("205/55R16 91V")?, proposed: setup("225/45R17 94W XL")? };
/// let report = assess(&wagon, &change, &Conditions::default(), &Limits::default());
/// let front = report.pressures().find(|p| p.place() == Place::Front).ok_or("no front axle")?;
/// // A higher load index, and yet the XL needs more pressure to carry what the original carried.
/// assert_eq!(front.as_original().map(|p| p.get::<kilopascal>().round()), Some(240.0));
/// assert_eq!(front.full_load().map(|p| p.get::<kilopascal>().round()), Some(231.0));
/// assert_eq!(front.governs(), Some(Governs::OriginalCapacity));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Pressures {
    place: Place,
    /// Bits of the value in pascal; 0 for what is not known, infinity for a load no pressure carries.
    normal_load: u64,
    full_load: u64,
    as_original: u64,
    permitted: u64,
}

impl Pressures {
    pub(super) fn new(
        place: Place,
        normal_load: Option<Pressure>,
        full_load: Option<Pressure>,
        as_original: Option<Pressure>,
        permitted: Option<Pressure>,
    ) -> Self {
        let bits = |pressure: Option<Pressure>| pressure.map_or(0, |p| p.value.to_bits());
        Self {
            place,
            normal_load: bits(normal_load),
            full_load: bits(full_load),
            as_original: bits(as_original),
            permitted: bits(permitted),
        }
    }

    fn pressure(bits: u64) -> Option<Pressure> {
        (bits != 0).then(|| units::base(f64::from_bits(bits))).filter(|p: &Pressure| p.value.is_finite())
    }

    /// Which axle.
    pub const fn place(&self) -> Place {
        self.place
    }

    /// The least that carries the normal load; nothing if that is not known, or none does.
    pub fn normal_load(&self) -> Option<Pressure> {
        Self::pressure(self.normal_load)
    }

    /// The least that carries the greatest load at top speed, camber and use.
    pub fn full_load(&self) -> Option<Pressure> {
        Self::pressure(self.full_load)
    }

    /// The one at which the tire carries what the original does at its placard pressure.
    pub fn as_original(&self) -> Option<Pressure> {
        Self::pressure(self.as_original)
    }

    /// The most that tire and wheel permit: molded or stated, else that of the speed symbol.
    pub fn permitted(&self) -> Option<Pressure> {
        Self::pressure(self.permitted)
    }

    /// What asks for the most, or that the permitted maximum is too little for it. Nothing if no need is
    /// known.
    pub fn governs(&self) -> Option<Governs> {
        if [self.normal_load, self.full_load, self.as_original].contains(&f64::INFINITY.to_bits()) {
            return Some(Governs::LoadIndex);
        }
        let needs = [
            (self.normal_load(), Governs::NormalLoad),
            (self.full_load(), Governs::FullLoad),
            (self.as_original(), Governs::OriginalCapacity),
        ];
        let (highest, governs) = needs
            .into_iter()
            .filter_map(|(pressure, governs)| Some((pressure?, governs)))
            .max_by(|a, b| a.0.value.total_cmp(&b.0.value))?;
        match self.permitted() {
            Some(most) if highest > most => Some(Governs::PermittedMaximum),
            _ => Some(governs),
        }
    }
}
