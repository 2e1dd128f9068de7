//! Uniform tire quality grading: treadwear, traction, temperature.

mod single;
mod whole;

pub use single::Grade;
pub use whole::{Grading, GradingExemption, TemperatureGrade, TractionGrade, TreadwearGrade};
