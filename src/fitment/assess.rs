//! The judgement of a whole change, kept in a report.

use core::ops::ControlFlow;

use super::case::Case;
use super::caution::{self, Caution};
use super::conditions::Conditions;
use super::judge::{judge, with_axles};
use super::limits::Limits;
use super::report::Report;
use super::rule_scope::RuleScope;
use super::setup::Change;
use super::space::Approach;
use super::{checks, finding};
use crate::vehicle::{Kind, Vehicle};

/// Judges a change. Allocates nothing and cannot fail: what cannot be judged is said in the report.
///
/// It needs at most 32 KiB of stack (31.8 measured on x86-64) in a release build, whatever is swept, with the
/// [`Report`] it returns.
///
/// Every vehicle has two axles, whether they are described or not, but for a trailer, which has those that
/// are; where nothing is known of the kind, an axle counts that is described or has a setup.
///
/// ```
/// use beadseat::fitment::{Change, Conditions, Limits, Setups, Verdict, assess};
/// use beadseat::vehicle::Vehicle;
/// let nothing = Setups { front: None, rear: None };
/// let change = Change { original: nothing, proposed: nothing };
/// let report = assess(&Vehicle::unknown(), &change, &Conditions::default(), &Limits::default());
/// assert!(report.checks().all(|c| c.verdict() == Verdict::NotAssessed));
/// assert_eq!(report.overall(), Verdict::Marginal);
/// ```
pub fn assess(vehicle: &Vehicle, change: &Change, conditions: &Conditions, limits: &Limits) -> Report {
    // Made when compiled: made here, its rows would stand on the stack twice.
    const NOTHING_YET: Report = Report::new();
    let mut report = NOTHING_YET;
    report.name_own_source(limits.own_source());
    report.name_rules(RuleScope::new(limits.set(), conditions.date(), vehicle.kind()));
    with_axles(vehicle, change, conditions, limits, |axles| {
        let _: ControlFlow<()> = judge(
            axles,
            |_| true,
            |definition, place, found, nearest| {
                report.push(finding::finish(definition.id, place, found));
                if let Some(nearest) = nearest {
                    report.push_approach(nearest.at(place));
                }
                ControlFlow::Continue(())
            },
        );
        let cases = || axles.iter().flatten();
        for case in cases() {
            let is_here = |approach: &Approach| approach.position().axle() == case.place;
            let swept = report.approaches().filter(is_here).count();
            caution::cautions(case, swept, |caution| report.caution(caution));
            let has_tables = vehicle.kind().is_some_and(|kind| kind != Kind::Motorcycle);
            if let Some(pressures) = has_tables.then(|| checks::pressures(case)).flatten() {
                report.push_pressures(pressures);
            }
        }
        checks::effects(axles, |effect| report.push_effect(effect));
        if checks::treads_are_uneven(axles) {
            report.caution(Caution::UnevenTread);
        }
        if !cases().all(Case::has_spindle_hub) {
            report.caution(Caution::Retorque);
        }
        if vehicle.kind() != Some(Kind::Trailer) && cases().any(|case| case.is_towing()) {
            report.caution(Caution::Towing);
        }
    });
    for caution in [Caution::Placard, Caution::LocalLaw, Caution::Seating, Caution::ColdPressure] {
        report.caution(caution);
    }
    report
}

impl Change {
    /// Judges the change on a vehicle, in ordinary use and by the default limits; [`assess`] takes
    /// others.
    ///
    /// ```
    /// use beadseat::fitment::{Change, Setup, Verdict};
    /// use beadseat::vehicle::{Kind, Vehicle};
    /// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx16")?];
    /// let report = Change::front(old, new).assess(&Vehicle::new(Kind::Passenger));
    /// assert_eq!(report.overall(), Verdict::Beyond); // a tire of 17 in on a wheel of 16
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn assess(&self, vehicle: &Vehicle) -> Report {
        assess(vehicle, self, &Conditions::default(), &Limits::default())
    }
}
