//! The result of an assessment: a fixed-size value.

use super::caution::Caution;
use super::check::{Check, CheckId, Position, Verdict};
use super::checks::ROWS;
use super::effect::Effect;
use super::limits::LimitSet;
use super::measure::Keys;
use super::pressures::Pressures;
use super::rule_scope::RuleScope;
use super::space::Approach;
use crate::{Citation, OwnSource};

/// Two of the driven axle, three of each.
const EFFECTS: usize = 8;

/// The findings of an assessment, with its effects and cautions.
///
/// A plain value of fixed size: it allocates nothing and can be copied and compared.
/// [`assess`](super::assess) makes it; `Display` lays it out for a terminal of 80 columns.
#[derive(Clone, Copy, PartialEq)]
pub struct Report {
    checks: [Option<Check>; ROWS],
    effects: [Option<Effect>; EFFECTS],
    pressures: [Option<Pressures>; 2],
    approaches: [Option<Approach>; 4],
    len: u8,
    cautions: u32,
    own_source: Option<OwnSource>,
    rules: RuleScope,
    keys: Keys,
}

const _: () = assert!(ROWS <= u8::MAX as usize);

/// Puts a value in the first place that is free.
fn put<T>(places: &mut [Option<T>], value: T) {
    if let Some(free) = places.iter_mut().find(|place| place.is_none()) {
        *free = Some(value);
    }
}

impl Report {
    pub(super) const ROWS: usize = ROWS;

    pub(super) const fn new() -> Self {
        Self {
            checks: [None; ROWS],
            effects: [None; EFFECTS],
            pressures: [None; 2],
            approaches: [None; 4],
            len: 0,
            cautions: 0,
            own_source: None,
            rules: RuleScope::new(LimitSet::Default, None, None),
            keys: Keys::OF_TWO_AXLES,
        }
    }

    pub(super) fn push(&mut self, check: Check) {
        if let Some(free) = self.checks.get_mut(usize::from(self.len)) {
            *free = Some(check);
            self.len += 1;
        }
    }

    pub(super) fn push_effect(&mut self, effect: Effect) {
        put(&mut self.effects, effect);
    }

    pub(super) fn push_pressures(&mut self, pressures: Pressures) {
        put(&mut self.pressures, pressures);
    }

    pub(super) fn push_approach(&mut self, approach: Approach) {
        put(&mut self.approaches, approach);
    }

    /// The nearest approach of each wheel to what stands around it, where that was assessed.
    pub fn approaches(&self) -> impl Iterator<Item = Approach> {
        self.approaches.iter().flatten().copied()
    }

    /// The pressures that each axle's proposed setup needs.
    pub fn pressures(&self) -> impl Iterator<Item = Pressures> {
        self.pressures.iter().flatten().copied()
    }

    pub(super) const fn caution(&mut self, caution: Caution) {
        self.cautions |= 1 << caution as u32;
    }

    pub(super) const fn name_own_source(&mut self, own_source: Option<OwnSource>) {
        self.own_source = own_source;
    }

    pub(super) const fn name_rules(&mut self, rules: RuleScope) {
        self.rules = rules;
    }

    /// By which keys what is missing is named.
    pub(super) const fn keys(&self) -> Keys {
        self.keys
    }

    #[cfg(feature = "serde")]
    pub(super) const fn name_keys(&mut self, keys: Keys) {
        self.keys = keys;
    }

    /// Leaves out everything but what was found of the rear axle, and of how it goes with the one ahead.
    #[cfg(feature = "serde")]
    pub(super) fn keep_rear(&mut self) {
        fn keep<T: Copy>(places: &mut [Option<T>], is_kept: impl Fn(&T) -> bool) {
            places.iter_mut().for_each(|place| *place = place.filter(&is_kept));
        }
        let is_rear = |place: Position| place.axle() == Position::Rear;
        keep(&mut self.checks, |check| is_rear(check.place) || check.id == CheckId::AxleMatch);
        keep(&mut self.pressures, |found| is_rear(found.position()));
        keep(&mut self.approaches, |found| is_rear(found.position()));
        keep(&mut self.effects, |found| is_rear(found.position()));
    }

    /// The rules that the change was held against, and what the crate does not hold of them.
    pub const fn rules(&self) -> RuleScope {
        self.rules
    }

    /// The document that the caller named for its own limits, if any.
    pub const fn own_source(&self) -> Option<OwnSource> {
        self.own_source
    }

    /// The document that stands behind a citation: of the caller's own limits the one it named.
    pub(super) fn document_of(&self, citation: Citation) -> Option<OwnSource> {
        self.own_source.filter(|_| citation == Citation::CALLER)
    }

    /// Every finding, front axle first, in the order of [`CheckId`].
    pub fn checks(&self) -> impl Iterator<Item = Check> {
        self.findings().copied()
    }

    pub(super) fn findings_mut(&mut self) -> impl Iterator<Item = &mut Check> {
        self.checks.iter_mut().flatten()
    }

    pub(super) fn findings(&self) -> impl Iterator<Item = &Check> {
        self.checks.iter().flatten()
    }

    /// The finding of one check at one place.
    ///
    /// A gap that is narrower on one end of an axle is judged there: its finding stands at that end, and nothing at the
    /// axle. [`Report::at`] gives both.
    pub fn get(&self, id: CheckId, place: Position) -> Option<Check> {
        self.findings().find(|check| check.id == id && check.place == place).copied()
    }

    /// Effects without a verdict.
    pub fn effects(&self) -> impl Iterator<Item = Effect> {
        self.effects.iter().flatten().copied()
    }

    /// The cautions that apply, the gravest first.
    pub fn cautions(&self) -> impl Iterator<Item = Caution> + use<> {
        let bits = self.cautions;
        Caution::ALL.iter().copied().filter(move |&c| bits & (1 << c as u32) != 0)
    }

    /// Whether every vital check ([`CheckId::is_vital`]) was assessed, or does not apply, on every axle.
    pub fn is_complete(&self) -> bool {
        self.findings().all(|c| !(c.id.is_vital() && c.verdict == Verdict::NotAssessed))
            && CheckId::ALL.iter().filter(|id| id.is_vital()).all(|&id| self.findings().any(|c| c.id == id))
    }

    /// The verdict on the whole: the worst of the findings, and at best [`Verdict::Marginal`] when
    /// incomplete.
    pub fn overall(&self) -> Verdict {
        let incomplete = if self.is_complete() { Verdict::Within } else { Verdict::Marginal };
        self.findings().map(|check| check.verdict).fold(incomplete, Verdict::graver)
    }
}

impl core::fmt::Debug for Report {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_list().entries(self.findings()).finish()
    }
}
