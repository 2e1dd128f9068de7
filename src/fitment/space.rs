//! The space around a wheel: how large a wheel and tire it allows, and where a moving wheel comes nearest to a body.
//!
//! [`AvailableSpace`] asks the checks of space the other way round: not whether a size fits, but which would.
//! [`SweptCorner`] is one end of an axle with all that moves and stands there, to look at more closely or to draw, and
//! [`Approach`] is the nearest approach of a report. [`CornerAtRest`] is the same end of an axle as far as it is known
//! without knowing how it moves.

mod approach;
mod available_space;
mod corner;
mod corner_at_rest;
mod swept_corner;

pub use approach::Approach;
pub(super) use approach::part_name;
pub use available_space::{AvailableSpace, InsetRange, MissingFacts, RangeEnd};
pub use corner_at_rest::{CornerAtRest, GapKind, MeasuredGap};
pub use swept_corner::SweptCorner;
