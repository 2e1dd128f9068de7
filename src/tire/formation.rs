//! Single or in a pair.

/// Whether a tire stands alone on its side of the axle or beside another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Formation {
    /// The tire stands alone on its side of the axle.
    #[default]
    Single,
    /// One of a pair.
    Dual,
}
