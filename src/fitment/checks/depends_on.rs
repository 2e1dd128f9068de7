//! What a check depends on.

/// What a check depends on, of what a search chooses.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum DependsOn {
    /// The size of the tire.
    Size,
    /// The tire, its rim and the hub.
    Pair,
    /// What is asked for when they are bought: load index, speed symbol, pressure, rating.
    Purchase,
    /// Where the wheel stands; it begins or ceases to be beyond once over all insets, if ever.
    Inset,
    /// Where the wheel stands, with all that moves.
    Movement,
    /// The very tires.
    Wear,
}

impl DependsOn {
    /// Whether it tells one candidate from another: the others ask what is bought to be just enough.
    pub(crate) const fn tells_apart(self) -> bool {
        match self {
            Self::Size | Self::Inset | Self::Movement => true,
            Self::Pair | Self::Purchase | Self::Wear => false,
        }
    }
}
