//! Where wheels stand on the vehicle: the track and the scrub radius, and what other wheels make of them.

mod scrub;
mod track;

pub use scrub::SteeringGeometry;
pub use track::{max_inset_change, track_change};
