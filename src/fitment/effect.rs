//! What a change brings that no limit judges.

use super::position::Position;
use super::value::Value;
use crate::record::words;

words! {
    /// A consequence of a change that has no limit.
    ///
    /// ```
    /// assert_eq!(beadseat::fitment::EffectId::Odometer.name(), "odometer");
    /// ```
    EffectId {
        /// Distance rolled in a turn of the driven wheels: engine speed changes the other way.
        Gearing = "gearing",
        /// True distance in percent of the distance the odometer counts.
        Odometer = "odometer",
        /// What one wheel with its tire adds to the vehicle's mass by turning.
        RotatingInertia = "rotating_inertia",
        /// The speed at which water begins to lift the tires.
        Hydroplaning = "hydroplaning",
        /// The pressure at which a monitor warns at the latest: by the placard, and as it should be with the
        /// intended pressure.
        PressureMonitoring = "pressure_monitoring",
    }
}

impl EffectId {
    /// What to make of it.
    ///
    /// ```
    /// use beadseat::fitment::EffectId;
    /// assert!(EffectId::Odometer.caution().contains("service"));
    /// ```
    pub const fn caution(self) -> &'static str {
        match self {
            Self::Gearing => {
                "a longer turn lowers engine speed and pull in every gear, a shorter one raises them"
            }
            Self::Odometer => {
                "distances counted, and service intervals and consumption computed from them, change by this"
            }
            Self::RotatingInertia => {
                "felt in every start and stop, on top of the mass itself; an estimate that spreads tire and wheel evenly"
            }
            Self::Hydroplaning => {
                "an estimate of onset in water deeper than the tread drains, at placard and intended pressure; never a safe speed"
            }
            Self::PressureMonitoring => {
                "the warning stays tied to the placard: with another intended pressure it comes late or for nothing"
            }
        }
    }
}

/// What a change brings that is neither good nor bad by a limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effect {
    pub(crate) id: EffectId,
    pub(crate) place: Position,
    pub(crate) before: Value,
    pub(crate) after: Value,
}

impl Effect {
    /// Which effect of the change it is.
    pub const fn id(&self) -> EffectId {
        self.id
    }

    /// The axle that the effect is on, or the whole vehicle.
    pub const fn position(&self) -> Position {
        self.place
    }

    /// With the original setup.
    pub const fn before(&self) -> Value {
        self.before
    }

    /// With the proposed one.
    pub const fn after(&self) -> Value {
        self.after
    }
}
