//! One axle with all that its checks may look at.

use core::ops::Deref;

use super::Setup;
use super::check::{Input, Missing, Reason, Verdict};
use super::checks::{DependsOn, Rules};
use super::facts::{AxleFacts, SetupFacts};
use super::finding::{Finding, Found, no_more};
use super::value::Value;
use crate::units::{Length, in_mm, mm};

/// By how much a remembered row may be off: the old 60 and 70 series differ from the formula by up to 8 mm.
const ROW_DOUBT: Length = mm(8.0);

/// An axle with what was on it and what is to go on: what its checks see.
#[derive(Clone, Copy)]
pub(super) struct Case<'a> {
    on: &'a AxleFacts<'a>,
    pub(super) original: Option<&'a SetupFacts<'a>>,
    pub(super) proposed: Option<&'a SetupFacts<'a>>,
    /// Whether the dimensions of either tire rest on a table that is remembered, not read: it makes no change
    /// beyond.
    pub(super) is_remembered: bool,
    /// Whether the inset of either wheel follows from its backspacing.
    pub(super) is_inset_assumed: bool,
}

impl<'a> Deref for Case<'a> {
    type Target = AxleFacts<'a>;

    fn deref(&self) -> &AxleFacts<'a> {
        self.on
    }
}

/// Binds inputs that must all be there, or returns all that are not.
macro_rules! need {
    ($($name:ident = $value:expr => $input:ident),+ $(,)?) => {
        $(let $name = $value;)+
        let mut missing = crate::fitment::check::Missing::default();
        $(if $name.is_none() {
            missing.add(crate::fitment::measure::Input::$input);
        })+
        let ($(Some($name),)+) = ($($name,)+) else { return Err(missing) };
    };
}
pub(super) use need;

/// Both of two results, or all that either lacks.
pub(super) fn both_of<A, B>(a: Result<A, Missing>, b: Result<B, Missing>) -> Result<(A, B), Missing> {
    match (a, b) {
        (Ok(a), Ok(b)) => Ok((a, b)),
        (Err(a), Err(b)) => Err(a.and(b)),
        (Err(missing), _) | (_, Err(missing)) => Err(missing),
    }
}

impl<'a> Case<'a> {
    pub(super) fn new(on: &'a AxleFacts<'a>, [original, proposed]: [Option<&'a SetupFacts<'a>>; 2]) -> Self {
        let setups = || [original, proposed].into_iter().flatten();
        let is_remembered = setups().any(|setup| setup.is_remembered);
        let is_inset_assumed = setups().any(|setup| setup.is_inset_assumed);
        Self { on, original, proposed, is_remembered, is_inset_assumed }
    }

    pub(super) fn proposed(&self) -> Result<&'a SetupFacts<'a>, Missing> {
        self.proposed.ok_or(Input::ProposedSetup.into())
    }

    /// Original and proposed.
    pub(super) fn both(&self) -> Result<(&'a SetupFacts<'a>, &'a SetupFacts<'a>), Missing> {
        need!(original = self.original => OriginalSetup, proposed = self.proposed => ProposedSetup);
        Ok((original, proposed))
    }

    /// Nominal overall diameters of the original tire and of the proposed one.
    pub(super) fn diameters(&self) -> Result<(Length, Length), Missing> {
        let (original, proposed) = self.both()?;
        need!(
            original = original.nominal_diameter => OriginalDimensions,
            proposed = proposed.nominal_diameter => TireDimensions,
        );
        Ok((original, proposed))
    }

    /// Whether the wheel turns on a spindle without a bolted hub: a motorcycle's, unless a bolt circle is stated of the
    /// hub or of a wheel.
    pub(super) fn has_spindle_hub(&self) -> bool {
        let drilled = |setup: &SetupFacts<'_>| setup.wheel().bolt_circle().is_some();
        self.is_motorcycle()
            && self.axle.hub().and_then(|hub| hub.bolt_circle()).is_none()
            && ![self.original, self.proposed].into_iter().flatten().any(drilled)
    }

    /// The finding of a check, if its rules hold for the kind of vehicle.
    pub(super) fn by_rules(&self, rules: Rules, check: impl FnOnce() -> Found) -> Found {
        match rules {
            Rules::Any => {}
            Rules::Kind => {
                need!(_kind = self.vehicle.kind() => Kind);
            }
            Rules::BoltedHub => {
                self.proposed()?;
                if self.has_spindle_hub() {
                    return Ok(Finding::not_applicable(Reason::NoSpindleHub));
                }
            }
            Rules::Cars => self.car_rules()?,
        }
        check()
    }

    /// Whether a finding would be inside if the row of a table were off by as much as rows are. One size on both
    /// setups cancels out, and its row decides nothing.
    fn is_in_doubt_of_a_row(&self, finding: &Finding) -> bool {
        let setups = [self.original, self.proposed];
        let [original, proposed] = setups.map(|setup| setup.map(|setup| setup.tire().size()));
        if original == proposed {
            return false;
        }
        let smallest = setups.into_iter().flatten().filter_map(|setup| setup.nominal_diameter);
        let share = smallest.reduce(Length::min).map_or(0.0, |diameter| in_mm(ROW_DOUBT) / in_mm(diameter));
        let (Some(limit), Some(value)) = (finding.limit, finding.nominal.or(finding.measured)) else {
            return false;
        };
        let doubt = if matches!(value, Value::Ratio(_)) { 100.0 * share } else { in_mm(ROW_DOUBT) };
        limit.margin(value).is_some_and(|margin| no_more(0.0, margin + doubt))
    }

    /// Whether an inset that follows from a backspacing decides a check: for what is asked of the change alone, one wheel
    /// on both setups is off by the same.
    fn rests_on_backspacing(&self, depends_on: DependsOn) -> bool {
        let setups = [self.original, self.proposed];
        let [original, proposed] = setups.map(|setup| setup.filter(|setup| setup.is_inset_assumed));
        let place = |setup: &SetupFacts<'_>| (setup.wheel().size(), setup.wheel().backspacing());
        match depends_on {
            DependsOn::Movement => original.or(proposed).is_some(),
            DependsOn::Inset => {
                original.map(place) != proposed.map(place) || self.is_dual && proposed.is_some()
            }
            _ => false,
        }
    }

    /// A finding as it stands: what rests on dimensions known from a remembered table alone makes no change beyond, and
    /// what rests on an inset that follows from a backspacing makes none within.
    #[inline(always)]
    pub(super) fn settled<'f>(
        &self,
        depends_on: DependsOn,
        is_by_dimensions: bool,
        found: &'f mut Found,
    ) -> &'f Found {
        if self.is_inset_assumed || self.is_remembered {
            if let Ok(finding) = found {
                self.settle(depends_on, is_by_dimensions, finding);
            }
        }
        found
    }

    #[cold]
    #[inline(never)]
    fn settle(&self, depends_on: DependsOn, is_by_dimensions: bool, finding: &mut Finding) {
        let may_not_pass = self.is_inset_assumed && self.rests_on_backspacing(depends_on);
        if may_not_pass && finding.verdict == Verdict::Within {
            (finding.verdict, finding.reason) = (Verdict::Marginal, Reason::InsetAssumed);
        }
        let may_not_fail = self.is_remembered && is_by_dimensions;
        if may_not_fail && finding.verdict == Verdict::Beyond && self.is_in_doubt_of_a_row(finding) {
            (finding.verdict, finding.reason) = (Verdict::Marginal, Reason::FromMemoryOnly);
        }
    }
}

/// Whether two tires carry the same at the same pressure: size, service description, version and range are equal,
/// and the reference pressures, where both are stated.
pub(super) fn same_tire(a: &Setup, b: &Setup) -> bool {
    let same = |(a, b)| a == b;
    a.tire() == b.tire() && a.reference_pressure().zip(b.reference_pressure()).is_none_or(same)
}
