//! What a file may hold where: units in keys, and the tables that reading and the schema share.

mod amount;
mod key;
mod near;
mod path;
mod place;
mod shape;
mod units;
mod words;

pub(crate) use key::{Given, without_unit};
pub(crate) use path::Nowhere;
pub(crate) use place::{Forgotten, Path};
pub(crate) use shape::{Content, Entry, Object, Shaped};
pub(crate) use units::{Quantity, Unit};
pub(crate) use words::{designation, others, word};
