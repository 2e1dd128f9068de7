//! The tire: its designation, and what it implies.
//!
//! A tire is described by its **size** (`205/55R16`), its **service description** (`91V`: how much it
//! carries and how fast) and marks of how it is built (`XL`, `LRE`). Everything else follows from these
//! by the formulas and tables of the standards, each named where it stands.

mod ambient;
mod condition;
mod designation;
mod dimensions;
mod energy_label;
mod formation;
mod gearing;
mod grading;
mod hydroplaning;
mod identification;
mod inflation;
mod letter_pressure;
mod line;
mod load_index;
mod load_version;
mod rim_match;
mod rolling;
mod service;
mod sidewall;
mod size;
mod speed_load;
mod speed_symbol;
mod speed_variation;
mod speedometer;
mod stiffness;

pub use ambient::{Ambient, atmospheric_pressure};
pub use condition::wear::{WearError, WearRate};
pub use condition::{
    AgeLimit, ArrowTurn, DepthFinding, Mounting, MountingFinding, Remedy, SideFacingOut, SpreadLimit,
    TreadLimit, VehicleSide, rear_deeper_by, tread_spread,
};
pub use designation::Tire;
pub use energy_label::{
    ClassBounds, FormerLabelClass, LabelClass, NoiseClass, NoiseLimit, SnowTest, SoundLevel, TireClass,
};
pub use formation::Formation;
pub use gearing::{Gearing, axle_ratio_to_restore, effective_axle_ratio};
pub use grading::single::Grade;
pub use grading::{Grading, GradingExemption, TemperatureGrade, TractionGrade, TreadwearGrade};
pub use hydroplaning::hydroplaning_onset;
#[cfg(feature = "jiff")]
pub use identification::{Age, FutureDate};
pub use identification::{
    DateCode, IdentificationForm, IdentificationNumber, IdentificationReading, ManufactureWeek,
};
pub(crate) use inflation::factors as use_factors;
pub use inflation::factors::{
    dual_passenger_load, min_load_index, normal_load_limit, passenger_load_on_truck, towing_load,
    towing_pressure_increase,
};
pub use inflation::{
    Inflation, InflationDomain, InflationError, InflationModel, LoadAtPressure, PMetricFormula,
};
pub use line::contradiction::LineContradiction;
pub use line::{MoldedLimit, SidewallLine};
pub use load_index::LoadIndex;
pub use load_version::{LoadRange, LoadVersion};
pub use rim_match::{RimRange, RimRangeBasis};
pub use rolling::Rolling;
pub use service::ServiceDescription;
pub use sidewall::{
    ApprovalAuthority, ApprovalMark, ApprovalStage, Cord, Layer, MarkTopic, Plies, SidewallMark,
};
pub use size::{
    AlphaNumeric, Flotation, FullProfile, Metric, Numeric, SizeClass, SizeSpeedLetter, Structure, TireSize,
};
pub use speed_load::{SpeedRule, camber_load_factor, camber_pressure_factor};
pub use speed_symbol::SpeedSymbol;
pub use speed_variation::{SpeedVariation, TruckSizes, TruckSpeedBand};
pub use speedometer::{Speedometer, SpeedometerLaw, true_distance};
pub use stiffness::{StiffnessError, VerticalStiffness};
