//! What a program that judges a change imports: `use beadseat::prelude::*`.
//!
//! ```
//! use beadseat::prelude::*;
//! let hub = Hub::new().with_bolt_circle("5x112".parse()?).with_spigot(mm(57.1))?;
//! let front = Axle::new().with_hub(hub).with_max_load(kg(1060.0))?;
//! let car = Vehicle::new(Kind::Passenger).with_front(front);
//! let old = Setup::parse("205/55R16 91V", "6.5Jx16 ET46 5x112 57.1")?;
//! let new = Setup::parse("225/45R17 94W XL", "7.5Jx17 ET42 5x112 66.6")?.with_pressure(kpa(250.0))?;
//! let report = Change::front(old, new).assess(&car);
//! for finding in report.by_severity() { println!("{finding}"); }
//! # assert!(report.checks().any(|c| c.verdict() == Verdict::Within));
//! # Ok::<(), beadseat::Error>(())
//! ```

pub use crate::fitment::{
    Change, Check, CheckId, Conditions, LimitSet, Limits, Position, Report, Setup, Setups, Verdict, assess,
};
pub use crate::tire::{Tire, TireSize};
pub use crate::units::{
    bar, deg, in_bar, in_deg, in_inches, in_kg, in_kmh, in_kpa, in_lb, in_mm, in_mph, in_nm, in_psi, inches,
    kg, kmh, kpa, lb, mm, mph, nm, percent, psi,
};
pub use crate::vehicle::{Axle, Drive, Hub, Kind, Vehicle};
pub use crate::wheel::{BoltCircle, Wheel};
pub use crate::{Citation, Toleranced, literal};
