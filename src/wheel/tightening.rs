//! The bolted joint of wheel and hub: from torque to clamp load, and whether that holds the wheel.

mod engagement;
mod friction_joint;
mod nut_factor;
mod preload;
mod seat_contact;
mod tightening_order;
mod torque_band;

pub use engagement::Engagement;
pub use friction_joint::{FrictionJoint, tire_torque};
pub use nut_factor::NutFactor;
pub use preload::{Friction, Tightening};
pub use seat_contact::SeatContact;
pub use tightening_order::{TighteningOrder, recheck_distance, torque_stages};
pub use torque_band::TorqueBand;
