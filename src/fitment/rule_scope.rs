//! Which rules a report holds a change against, and which it does not.

use super::check::Position;
use super::conditions::Day;
use super::field_of_law::FieldOfLaw;
use super::limits::{LimitSet, Limits, has_own_row};
use crate::tire::condition::TreadLimit;
use crate::vehicle::Kind;

/// The rules that a change was held against: their set, the day asked about, and what the crate does not hold.
///
/// A report names them, so that nobody takes the silence of the crate for the silence of the law.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, FieldOfLaw, Limits, LimitSet, Setups, assess};
/// let nothing = Setups { front: None, rear: None };
/// let change = Change { original: nothing, proposed: nothing };
/// let belgian = Limits::of(LimitSet::BelgianInspection);
/// let report = assess(&beadseat::vehicle::Vehicle::unknown(), &change, &Conditions::new(), &belgian);
/// let rules = report.rules();
/// assert_eq!((rules.set(), rules.as_of()), (LimitSet::BelgianInspection, None));
/// assert!(rules.not_held().any(|field| field == FieldOfLaw::Lighting));
/// assert!(!rules.not_held().any(|field| field == FieldOfLaw::Track));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RuleScope {
    set: LimitSet,
    as_of: Option<Day>,
    kind: Option<Kind>,
}

impl RuleScope {
    pub(super) const fn new(set: LimitSet, as_of: Option<Day>, kind: Option<Kind>) -> Self {
        Self { set, as_of, kind }
    }

    /// The set of limits that the change was held against.
    pub const fn set(&self) -> LimitSet {
        self.set
    }

    /// The day for which the assessment was made, as the caller gave it. The crate does not know which rules stand on a
    /// day: each source says its own edition.
    pub const fn as_of(&self) -> Option<Day> {
        self.as_of
    }

    /// The fields of law of which the crate holds no rule of that jurisdiction for such a vehicle: of the default set,
    /// which is of no jurisdiction, all. A field that is not among them is not thereby held whole.
    pub fn not_held(&self) -> impl Iterator<Item = FieldOfLaw> + use<> {
        let scope = *self;
        FieldOfLaw::ALL.iter().copied().filter(move |&field| !scope.holds(field))
    }

    fn holds(&self, field: FieldOfLaw) -> bool {
        match field {
            FieldOfLaw::TireCover => self.set.cover_law().is_some() && !self.is_motorcycle(),
            FieldOfLaw::TreadDepth => {
                let limit = |kind| Limits::of(self.set).tread(kind, Position::Rear);
                self.kind.is_some_and(|kind| limit(kind) != TreadLimit::WORN_TO_BARS)
            }
            field => has_own_row(self.set, field) && !self.is_motorcycle(),
        }
    }

    /// The limits of the sets are for cars and what is judged as they are.
    fn is_motorcycle(&self) -> bool {
        self.kind == Some(Kind::Motorcycle)
    }
}
