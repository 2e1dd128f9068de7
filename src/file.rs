//! What a file may hold where: units in keys, and the tables that reading and the schema share.

mod amount;
mod near;
mod shape;
mod units;
mod words;

pub(crate) use shape::{Content, Entry, Object, Shaped};
pub(crate) use units::{Given, Quantity, Unit, without_unit};
pub(crate) use words::{designation, others, word};
