//! Load at a pressure, and pressure for a load.

mod ambient;
mod expected;
pub(crate) mod factors;
pub(crate) mod letter_pressure;
mod limit;
mod model;
mod p_metric;
mod speed_load;
mod speed_variation;
mod truck;

pub use ambient::{Ambient, atmospheric_pressure};
pub use factors::{
    dual_passenger_load, min_load_index, normal_load_limit, passenger_load_on_truck, towing_load,
    towing_pressure_increase,
};
pub use model::{InflationDomain, InflationModel};
pub use p_metric::PMetricFormula;
pub(crate) use speed_load::tell_camber_load_factor;
pub use speed_load::{SpeedRule, camber_load_factor, camber_pressure_factor};
pub use speed_variation::{SpeedVariation, TruckSizes, TruckSpeedBand};

use model::MOST_KPA;

use crate::step::Teller;
use crate::tire::{Formation, LoadIndex, SizeClass, Tire, TireSize};
use crate::units::{self, Angle, Mass, Pressure, Velocity, in_kg, in_kmh, in_kpa};
use crate::{Citation, OutOfRange};

/// Why load and pressure could not be related.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum InflationError {
    /// The tire was given without its service description.
    NoLoadIndex,
    /// The tire has no load index for pairs.
    NoDualLoadIndex,
    /// No law is known for the family of the tire: motorcycle, agricultural and off-road tires, and sizes
    /// that do not say what they are for.
    NoLaw,
    /// Nothing fixes the pressure at which the tire carries its load index.
    NoReferencePressure,
    /// The law is made for sizes of another family.
    OtherFamily,
    /// A pressure or load outside the law.
    OutOfRange(OutOfRange),
}

crate::text::messages! {
    InflationError {
        NoLoadIndex => "the load index is not known",
        NoDualLoadIndex => "the tire has no load index for dual formation",
        NoLaw => "no law of load and pressure is known for this family of tires",
        NoReferencePressure => "the reference pressure is not known: read it on the tire or in its maker's data",
        OtherFamily => "the law of load and pressure is not made for this family of sizes",
    } passes {
        OutOfRange(OutOfRange),
    }
}

/// A load with the law it was computed by.
///
/// ```
/// use beadseat::{tire::{inflation::InflationModel, Tire}, units::kpa, uom::si::mass::kilogram};
/// let q = Tire::parse("205/55R16 91V")?.load_capacity(kpa(220.0))?;
/// assert!((q.load().get::<kilogram>() - 555.215).abs() < 1e-3);
/// assert_eq!(q.model(), InflationModel::MetricPassenger);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadAtPressure {
    load: Mass,
    model: InflationModel,
}

impl LoadAtPressure {
    /// The load one tire carries.
    pub const fn load(&self) -> Mass {
        self.load
    }

    /// The law of load and pressure that was used.
    pub const fn model(&self) -> InflationModel {
        self.model
    }
}

/// The relation of load and cold pressure of one tire: `Q = Qref·(P/Pref)^n`, never more than `Qref`.
///
/// ```
/// use beadseat::{tire::{Formation, Tire}, units::{kg, kpa}, uom::si::pressure::kilopascal};
/// let tire: Tire = "225/45R17 94W XL".parse()?;
/// let law = tire.inflation(Formation::Single, None)?;
/// assert_eq!(law.reference_pressure(), kpa(290.0));
/// // At the same pressure the XL carries less than the 91 it may replace: 557 kg against 575 kg.
/// assert!(law.load_at(kpa(230.0))? < "205/55R16 91V".parse::<Tire>()?.load_capacity(kpa(230.0))?.load());
/// let p = law.pressure_for(kg(557.0))?;
/// assert!((p.get::<kilopascal>() - 230.0).abs() < 0.5);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Inflation {
    model: InflationModel,
    load: Mass,
    reference: Pressure,
    /// The lower of the two pressures that a load range letter may mean.
    lower: Option<Pressure>,
    reference_citation: Citation,
    /// The speed of the tire's symbol, where it has one that ends.
    rated_speed: Option<Velocity>,
}

impl InflationModel {
    /// Whether the law is made for a class of sizes.
    ///
    /// ```
    /// use beadseat::tire::{inflation::InflationModel, SizeClass};
    /// assert!(InflationModel::MetricPassenger.holds_for(SizeClass::HighLoad));
    /// assert!(!InflationModel::MetricPassenger.holds_for(SizeClass::LightTruck));
    /// ```
    pub fn holds_for(self, class: SizeClass) -> bool {
        class.rules().laws.contains(&self)
    }

    /// The law for a load index at a stated reference pressure, where no size is at hand or its
    /// designation cannot be read. For a [`Tire`](crate::tire::Tire) see
    /// [`Tire::inflation`](crate::tire::Tire::inflation).
    ///
    /// # Errors
    /// Without a reference pressure where the law has no default, or outside its domain.
    ///
    /// ```
    /// use beadseat::{tire::{inflation::InflationModel, LoadIndex}, units::{kg, kpa}};
    /// let spare = InflationModel::Temporary.law(LoadIndex::parse("99")?, None)?;
    /// assert_eq!(spare.reference_pressure(), kpa(420.0));
    /// assert_eq!(spare.pressure_for(kg(400.0))?, kpa(420.0));
    /// assert!(spare.load_at(kpa(350.0)).is_err());
    /// assert!(InflationModel::Commercial.law(LoadIndex::parse("104")?, None).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn law(
        self,
        index: LoadIndex,
        stated_reference: Option<Pressure>,
    ) -> Result<Inflation, InflationError> {
        let (reference, reference_citation) = match stated_reference {
            Some(stated) => (stated, Citation::REFERENCE_PRESSURE_GIVEN),
            None => (
                self.reference_pressure(None).ok_or(InflationError::NoReferencePressure)?,
                self.reference_citation(),
            ),
        };
        Inflation::checked(self, index, reference, reference_citation)
    }
}

impl Tire {
    /// The law for this tire. `stated_reference` is the pressure molded beside the maximum load or given
    /// by the maker for the load index; it overrides the default of the tire's class.
    ///
    /// Defaults: metric 250 kPa, XL and HL 290; P-metric 240, XL 280; LT and ST by load range letter, where
    /// an LT size by overall diameter and a wide one have the higher of
    /// [two](Tire::reference_pressures_by_letter), and [`Inflation::lower`] the other.
    /// On truck tires the pressure of one letter varies with the size: seven sizes with a letter have theirs from
    /// memory, other commercial and truck tires and `LL` of a metric size have none.
    /// [`Inflation::reference_citation`] says which it is.
    ///
    /// # Errors
    /// Without a load index, a dual index for [`Formation::Dual`], or a reference pressure.
    pub fn inflation(
        &self,
        formation: Formation,
        stated_reference: Option<Pressure>,
    ) -> Result<Inflation, InflationError> {
        let law = *self.size().rules().laws.first().ok_or(InflationError::NoLaw)?;
        self.inflation_by(law, formation, stated_reference)
    }

    /// The same by a law of the caller's choice, with the default reference pressures of that law.
    ///
    /// # Errors
    /// As [`Tire::inflation`], and for a law that is not made for the family of the tire.
    ///
    /// ```
    /// use beadseat::{tire::{Formation, inflation::{InflationError, InflationModel}, Tire}, units::kg};
    /// let tire = Tire::parse("P225/60R16 97S")?;
    /// let judged = tire.inflation(Formation::Single, None)?;
    /// let published = tire.inflation_by(InflationModel::PMetricFormula, Formation::Single, None)?;
    /// assert!(published.pressure_for(kg(650.0))? < judged.pressure_for(kg(650.0))?);
    /// assert_eq!(
    ///     Tire::parse("225/60R16 98V")?.inflation_by(InflationModel::PMetricFormula, Formation::Single, None),
    ///     Err(InflationError::OtherFamily),
    /// );
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn inflation_by(
        &self,
        model: InflationModel,
        formation: Formation,
        stated_reference: Option<Pressure>,
    ) -> Result<Inflation, InflationError> {
        let service = self.service().ok_or(InflationError::NoLoadIndex)?;
        let index = service.index(formation).ok_or(InflationError::NoDualLoadIndex)?;
        if !model.holds_for(self.size().class()) {
            return Err(InflationError::OtherFamily);
        }
        let (reference, lower, citation) = match stated_reference {
            Some(stated) => (stated, None, Citation::REFERENCE_PRESSURE_GIVEN),
            None => self.default_reference_pressure(model).ok_or(InflationError::NoReferencePressure)?,
        };
        let symbol = service.speed();
        let rated_speed = (!symbol.is_open_ended()).then_some(symbol.speed());
        Ok(Inflation { rated_speed, lower, ..Inflation::checked(model, index, reference, citation)? })
    }

    /// The reference pressure of the class or of the load range letter, the lower one where the letter leaves two,
    /// and the source.
    fn default_reference_pressure(
        &self,
        model: InflationModel,
    ) -> Option<(Pressure, Option<Pressure>, Citation)> {
        let by_letter = |citation| {
            let (lower, higher) = self.reference_pressures_by_letter()?;
            Some((higher, (lower < higher).then_some(lower), citation))
        };
        let by_range = match (model, self.size()) {
            (InflationModel::LightTruck, TireSize::Flotation(_)) => {
                by_letter(Citation::REFERENCE_PRESSURE_FLOTATION)
            }
            (InflationModel::LightTruck, _) => by_letter(match self.reference_pressures_by_letter()? {
                (lower, higher) if lower < higher => Citation::REFERENCE_PRESSURE_WIDE,
                _ => Citation::REFERENCE_PRESSURE_RANGE,
            }),
            (InflationModel::Trailer, _) => by_letter(match self.load_range()?.letter() {
                'B'..='D' => Citation::REFERENCE_PRESSURE_TRAILER,
                _ => Citation::REFERENCE_PRESSURE_TRAILER_REMEMBERED,
            }),
            (InflationModel::Commercial, size) => {
                let pressure = truck::reference_pressure(&size, self.load_range()?)?;
                Some((pressure, None, Citation::REFERENCE_PRESSURE_TRUCK))
            }
            _ => None,
        };
        if by_range.is_some() {
            return by_range;
        }
        Some((model.reference_pressure(self.load_version())?, None, model.reference_citation()))
    }

    /// The load this tire carries alone at a cold pressure, with the default reference pressure of its
    /// class; for other cases see [`Tire::inflation`].
    ///
    /// # Errors
    /// As [`Tire::inflation`], and for a pressure outside the law.
    pub fn load_capacity(&self, pressure: Pressure) -> Result<LoadAtPressure, InflationError> {
        let law = self.inflation(Formation::Single, None)?;
        Ok(LoadAtPressure { load: law.load_at(pressure)?, model: law.model })
    }
}

impl Inflation {
    /// The law, if its reference pressure lies in its domain.
    fn checked(
        model: InflationModel,
        index: LoadIndex,
        reference: Pressure,
        reference_citation: Citation,
    ) -> Result<Self, InflationError> {
        OutOfRange::check("reference pressure", in_kpa(reference), "kPa", model.floor_kpa(), MOST_KPA)?;
        Ok(Self { model, load: index.load(), reference, lower: None, reference_citation, rated_speed: None })
    }

    /// The law of load and pressure that holds.
    pub const fn model(&self) -> InflationModel {
        self.model
    }

    /// The load at the reference pressure: that of the load index.
    pub const fn reference_load(&self) -> Mass {
        self.load
    }

    /// The pressure at which the tire carries its load index.
    pub const fn reference_pressure(&self) -> Pressure {
        self.reference
    }

    /// Where the reference pressure comes from.
    pub const fn reference_citation(&self) -> Citation {
        self.reference_citation
    }

    /// The same with the lower of two reference pressures, where the letter of a load range leaves two: flotation
    /// sizes and wide LT-metric sizes, whose maker did not state one. What both laws say holds; what they disagree
    /// on is not known.
    ///
    /// ```
    /// use beadseat::{tire::{Formation, Tire}, units::kpa};
    /// let law = Tire::parse("33x12.50R17LT 114Q LRD")?.inflation(Formation::Single, None)?;
    /// assert!(law.lower().is_some_and(|lower| lower.reference_pressure() < law.reference_pressure()));
    /// let stated = Tire::parse("33x12.50R17LT 114Q LRD")?.inflation(Formation::Single, Some(kpa(450.0)))?;
    /// assert_eq!(stated.lower(), None);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn lower(&self) -> Option<Self> {
        Some(Self { reference: self.lower?, lower: None, ..*self })
    }

    /// Whether the least pressure of the law is a rule of the tire's class, below which it must not run, rather
    /// than the place where the load tables end. Source: 150 kPa of passenger tires, Crolla (ed.) 2009,
    /// Fig. 10.1-15.
    pub(crate) const fn floor_is_rule(&self) -> bool {
        matches!(
            self.model,
            InflationModel::MetricPassenger | InflationModel::PMetric | InflationModel::PMetricFormula
        )
    }

    /// Whether the reference pressure is the default of a load range letter.
    pub(crate) const fn is_by_letter(&self) -> bool {
        matches!(
            self.reference_citation,
            Citation::REFERENCE_PRESSURE_RANGE
                | Citation::REFERENCE_PRESSURE_WIDE
                | Citation::REFERENCE_PRESSURE_FLOTATION
                | Citation::REFERENCE_PRESSURE_TRUCK
                | Citation::REFERENCE_PRESSURE_TRAILER
                | Citation::REFERENCE_PRESSURE_TRAILER_REMEMBERED
        )
    }

    /// The lowest pressure the law holds for.
    pub const fn min_pressure(&self) -> Pressure {
        match self.model {
            InflationModel::Temporary | InflationModel::Trailer => self.reference,
            model => units::kpa(model.floor_kpa()),
        }
    }

    /// The load at a cold pressure; above the reference pressure, no more than at it.
    ///
    /// # Errors
    /// Below the least pressure of the law, or above 1200 kPa.
    pub fn load_at(&self, pressure: Pressure) -> Result<Mass, OutOfRange> {
        let kpa = in_kpa(pressure);
        OutOfRange::check("inflation pressure", kpa, "kPa", in_kpa(self.min_pressure()), MOST_KPA)?;
        let share = (kpa / in_kpa(self.reference)).min(1.0);
        Ok(self.load * self.model.load_share(share))
    }

    /// The least cold pressure for a load; never below that of the law.
    ///
    /// # Errors
    /// For a load above that of the load index, or not above zero.
    pub fn pressure_for(&self, load: Mass) -> Result<Pressure, OutOfRange> {
        let most = in_kg(self.load);
        let share = OutOfRange::check("load", in_kg(load), "kg", f64::MIN_POSITIVE, most)? / most;
        let kpa = in_kpa(self.reference) * self.model.pressure_share(share);
        Ok(units::kpa(kpa.max(in_kpa(self.min_pressure()))))
    }

    /// The load at a cold pressure, if the law holds as it stands at this speed and camber, and the
    /// tire's speed symbol allows the speed.
    ///
    /// # Errors
    /// Outside the [domain](InflationModel::domain) of the law or above the speed symbol; what then to
    /// take off is said by [`Tire::at_speed`] and [`camber_load_factor`].
    ///
    /// ```
    /// use beadseat::{tire::{Formation, Tire}, units::{deg, kmh, kpa}};
    /// let law = Tire::parse("205/55R16 91V")?.inflation(Formation::Single, None)?;
    /// assert_eq!(law.load_in_use(kpa(220.0), kmh(130.0), deg(-1.0)), law.load_at(kpa(220.0)));
    /// assert!(law.load_in_use(kpa(220.0), kmh(200.0), deg(-1.0)).is_err());
    /// let law = Tire::parse("LT245/75R17 121/118S LRE")?.inflation(Formation::Single, None)?;
    /// assert!(law.load_in_use(kpa(450.0), kmh(190.0), deg(0.0)).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn load_in_use(
        &self,
        pressure: Pressure,
        speed: Velocity,
        camber: Angle,
    ) -> Result<Mass, OutOfRange> {
        self.model.domain().starting_at(self.min_pressure()).admits(pressure, speed, camber)?;
        let rated = self.rated_speed.map_or(f64::MAX, in_kmh);
        OutOfRange::check("speed", in_kmh(speed), "km/h", 0.0, rated)?;
        self.load_at(pressure)
    }

    /// The least cold pressure at which this tire carries what another carries at its own pressure.
    ///
    /// A tire of a higher load index may still need more: its index holds at a higher pressure.
    ///
    /// # Errors
    /// For a pressure outside the other's law, or a load above this one's index.
    ///
    /// ```
    /// use beadseat::{tire::{Formation, Tire}, units::bar, uom::si::pressure::bar as bars};
    /// let original = Tire::parse("205/55R16 91V")?.inflation(Formation::Single, None)?;
    /// let extra_load = Tire::parse("205/55R16 94V XL")?.inflation(Formation::Single, None)?;
    /// let pressure = extra_load.pressure_carrying_same_load(&original, bar(2.2))?;
    /// assert!((pressure.get::<bars>() - 2.2929).abs() < 1e-4);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn pressure_carrying_same_load(
        &self,
        original: &Self,
        original_pressure: Pressure,
    ) -> Result<Pressure, OutOfRange> {
        self.pressure_for(original.load_at(original_pressure)?)
    }

    /// Tells the load and the pressure that the law refers to.
    pub(crate) fn tell_reference(&self, whose: &str, tell: &mut Teller<'_>) {
        tell.given(
            format_args!("load Q of the {whose} load index"),
            in_kg(self.load),
            "kg",
            Citation::LOAD_INDEX,
        );
        let name = format_args!("pressure P that the {whose} tire carries Q at");
        tell.given(name, in_kpa(self.reference), "kPa", self.reference_citation);
    }

    /// Tells how the load at a pressure comes about; below the least pressure of the law, that of the least.
    pub(crate) fn tell_load_at(&self, pressure: Pressure, whose: &str, tell: &mut Teller<'_>) -> Option<f64> {
        self.tell_reference(whose, tell);
        let held = pressure.max(self.min_pressure());
        tell.given(format_args!("pressure of the {whose} tire"), in_kpa(held), "kPa", None);
        let numbers = [in_kg(self.load), in_kpa(self.reference), in_kpa(held)];
        let load = in_kg(self.load_at(held).ok()?);
        let name = format_args!("load that the {whose} tire carries there");
        Some(tell.worked(name, (self.model.forms()[0], &numbers), load, "kg", self.model.citation()))
    }

    /// Tells how the least pressure for a load comes about.
    pub(crate) fn tell_pressure_for(&self, load: Mass, tell: &mut Teller<'_>) -> Option<f64> {
        let pressure = in_kpa(self.pressure_for(load).ok()?);
        self.tell_reference("proposed", tell);
        let least = in_kpa(self.min_pressure());
        tell.given(format_args!("least pressure of the law"), least, "kPa", self.model.citation());
        let numbers = [in_kg(self.load), in_kpa(self.reference), in_kg(load), least];
        let form = (self.model.forms()[1], &numbers[..]);
        Some(tell.worked(
            format_args!("least pressure for the load"),
            form,
            pressure,
            "kPa",
            self.model.citation(),
        ))
    }
}
