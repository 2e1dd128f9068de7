//! What a tire must keep to be approved: rolling resistance and wet grip.

use super::TireClass;
use crate::tire::{SpeedSymbol, sidewall::ApprovalStage};
use crate::units::{self, Ratio};

impl TireClass {
    /// The greatest rolling resistance coefficient that a tire is approved with, by the stage molded behind the
    /// `R` of its approval mark. `None` where no stage is told.
    ///
    /// | N/kN | C1 | C2 | C3 |
    /// |---|---|---|---|
    /// | first stage | 12.0 | 10.5 | 8.0 |
    /// | second stage | 10.5 | 9.0 | 6.5 |
    ///
    /// Source: [`crate::Citation::RESISTANCE_LIMIT`].
    ///
    /// ```
    /// use beadseat::{tire::{sidewall::ApprovalStage, energy_label::TireClass}, units::ratio};
    /// assert_eq!(TireClass::C1.max_rolling_resistance(ApprovalStage::Second), Some(ratio(0.0105)));
    /// assert_eq!(TireClass::C1.max_rolling_resistance(ApprovalStage::NotTold), None);
    /// ```
    pub const fn max_rolling_resistance(self, stage: ApprovalStage) -> Option<Ratio> {
        Some(units::ratio(match (stage, self) {
            (ApprovalStage::First, Self::C1) => 0.0120,
            (ApprovalStage::First, Self::C2) | (ApprovalStage::Second, Self::C1) => 0.0105,
            (ApprovalStage::First, Self::C3) => 0.0080,
            (ApprovalStage::Second, Self::C2) => 0.0090,
            (ApprovalStage::Second, Self::C3) => 0.0065,
            (ApprovalStage::NotTold, _) => return None,
        }))
    }

    /// The least wet grip index that a tire is approved with: 1.1, for mud and snow 1.0, for mud and snow up to
    /// 160 km/h 0.9. `None` for C2 and C3, of which no limit is known.
    ///
    /// Source: [`crate::Citation::WET_GRIP_LIMIT`].
    ///
    /// ```
    /// use beadseat::{tire::{SpeedSymbol, energy_label::TireClass}, units::ratio};
    /// assert_eq!(TireClass::C1.min_wet_grip(true, SpeedSymbol::Q), Some(ratio(0.9)));
    /// assert_eq!(TireClass::C1.min_wet_grip(true, SpeedSymbol::H), Some(ratio(1.0)));
    /// assert_eq!(TireClass::C1.min_wet_grip(false, SpeedSymbol::Q), Some(ratio(1.1)));
    /// assert_eq!(TireClass::C3.min_wet_grip(false, SpeedSymbol::J), None);
    /// ```
    pub fn min_wet_grip(self, mud_and_snow: bool, speed: SpeedSymbol) -> Option<Ratio> {
        (self == Self::C1).then(|| {
            units::ratio(match mud_and_snow {
                true if speed <= SpeedSymbol::Q => 0.9,
                true => 1.0,
                false => 1.1,
            })
        })
    }
}
