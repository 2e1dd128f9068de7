//! Whose rules a check has.

/// Which vehicles a check has rules for.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(in crate::fitment) enum Rules {
    /// All, even if their kind is not known.
    Any,
    /// Those whose kind is known.
    Kind,
    /// Those whose wheels are bolted to a hub: it does not apply to a wheel on a spindle.
    BoltedHub,
    /// Those with the rules and dimensions of car and truck tires, which motorcycles do not have.
    Cars,
}
