//! The judgement of a spare wheel.

use core::ops::ControlFlow;

use super::SpareWheel;
use crate::fitment::case::Case;
use crate::fitment::caution::{Caution, cautions};
use crate::fitment::check::{CheckId, Position, Reason, Verdict};
use crate::fitment::checks::{self, Definition, Run};
use crate::fitment::facts::{AxleFacts, SetupFacts};
use crate::fitment::finding::{self, Found};
use crate::fitment::judge::{has_axles, judge, on_axle};
use crate::fitment::report::Report;
use crate::fitment::rule_scope::RuleScope;
use crate::fitment::space::Approach;
use crate::units::{Velocity, kmh};

impl<'a> SpareWheel<'a> {
    /// The axles that it may be put on.
    pub fn axles(&self) -> impl Iterator<Item = Position> + use<> {
        let [front, rear] = has_axles(self.vehicle, self.change);
        [front.then_some(Position::Front), rear.then_some(Position::Rear)].into_iter().flatten()
    }

    /// The report on the spare wheel on an axle, `front` or `rear`; nothing where the vehicle has no such axle.
    ///
    /// Its findings stand at [`Position::SpareAtFront`] or [`Position::SpareAtRear`]: of both ends the graver one.
    pub fn on(&self, axle: Position) -> Option<Report> {
        let place = axle.spare().filter(|_| self.axles().any(|has| has == axle))?;
        let facts = self.axle_facts(axle);
        let [original, proposed] = self.change.on(axle);
        let beside = SetupFacts::of(proposed.or(original), &facts);
        let mounted = self.change_on(axle);
        let mut report = Report::new();
        report.name_own_source(self.limits.own_source());
        report.name_rules(RuleScope::new(self.limits.set(), self.conditions.date(), self.vehicle.kind()));
        on_axle(&facts, mounted.on(axle), |case| {
            judge_on(&case, place, &mut report);
            let found = case.by_rules(checks::Rules::Any, || checks::beside(&case, beside.as_ref()));
            report.push(finding::finish(CheckId::AxleMatch, place, &found));
            self.add_cautions(&case, &mut report);
            if let Some(pressures) = case.car_rules().is_ok().then(|| checks::pressures(&case)).flatten() {
                report.push_pressures(pressures.at(place));
            }
        });
        let [front, rear] = self.assumed;
        let rows = if axle.is_at_front() { front } else { rear };
        for (row, check) in report.findings_mut().enumerate() {
            let is_better = matches!(check.verdict(), Verdict::Within | Verdict::NotApplicable);
            if rows & 1 << row != 0 && is_better {
                (check.verdict, check.reason) = (Verdict::Marginal, Reason::Assumed);
            }
        }
        Some(report)
    }

    /// The report of each axle.
    pub fn reports(&self) -> impl Iterator<Item = (Position, Report)> {
        self.axles().filter_map(|axle| Some((axle, self.on(axle)?)))
    }

    /// The verdict on the spare wheel, the worst of all axles.
    pub fn overall(&self) -> Verdict {
        self.reports().map(|(_, report)| report.overall()).fold(Verdict::Within, Verdict::graver)
    }

    /// Whether every vital check was assessed, or does not apply, on every axle.
    pub fn is_complete(&self) -> bool {
        self.reports().all(|(_, report)| report.is_complete())
    }

    /// The axle, as fast as the spare is used at.
    fn axle_facts(&self, axle: Position) -> AxleFacts<'a> {
        let mut facts = AxleFacts::new(axle, self.vehicle, self.conditions, self.limits);
        if let Some(most) = self.setup.tire().size().rules().speed_of_use_kmh.map(kmh) {
            let slower = |speed: Option<Velocity>| Some(speed.map_or(most, |speed| speed.min(most)));
            facts.own_top_speed = slower(facts.own_top_speed);
            facts.speed_in_use = slower(facts.speed_in_use);
        }
        facts
    }

    fn add_cautions(&self, case: &Case<'_>, report: &mut Report) {
        let is_swept = report
            .findings()
            .any(|check| check.id() == CheckId::SweptClearance && check.verdict() != Verdict::NotAssessed);
        cautions(case, if is_swept { 2 } else { 0 }, |caution| report.caution(caution));
        if self.setup.tire().size().rules().speed_of_use_kmh.is_some() {
            report.caution(Caution::TemporarySpare);
        }
        if !case.has_spindle_hub() {
            report.caution(Caution::Retorque);
        }
        for caution in [Caution::Placard, Caution::LocalLaw, Caution::ColdPressure] {
            report.caution(caution);
        }
    }
}

/// Whether a check matters until the wheel that the spare stands for is repaired.
fn is_asked(definition: &Definition) -> bool {
    let also =
        [CheckId::RimContour, CheckId::SweptClearance, CheckId::TireAge, CheckId::Tread, CheckId::Mounting];
    definition.is_vital || also.contains(&definition.id)
}

/// Makes the findings of an axle, those of its two ends as one.
fn judge_on(case: &Case<'_>, place: Position, report: &mut Report) {
    let mut of_left = None;
    let axles = if case.place == Position::Front { [Some(*case), None] } else { [None, Some(*case)] };
    let _: ControlFlow<()> = judge(&axles, is_asked, |definition, at, found, nearest| {
        let heard = (*found, nearest.copied());
        let is_of_ends = matches!(definition.run, Run::End(_) | Run::BothEnds);
        if is_of_ends && matches!(at, Position::FrontLeft | Position::RearLeft) {
            of_left = Some(heard);
            return ControlFlow::Continue(());
        }
        let (mut found, nearest) = of_left.take().map_or(heard, |left| of_both_ends(left, heard));
        if let Ok(finding) = &mut found {
            if finding.reason == Reason::ArrowBackward {
                (finding.verdict, finding.reason) = (Verdict::Marginal, Reason::SpareArrow);
            }
        }
        report.push(finding::finish(definition.id, place, &found));
        if let Some(nearest) = nearest {
            report.push_approach(nearest.at(place));
        }
        ControlFlow::Continue(())
    });
}

/// The graver of what was found on either end. What is not known of one end is not known of both, unless the other is
/// beyond.
fn of_both_ends(
    left: (Found, Option<Approach>),
    right: (Found, Option<Approach>),
) -> (Found, Option<Approach>) {
    let nearest =
        [left.1, right.1].into_iter().flatten().reduce(|a, b| if b.lower() < a.lower() { b } else { a });
    let found = match (left.0, right.0) {
        (Err(a), Err(b)) => Err(a.and(b)),
        (Ok(only), Err(missing)) | (Err(missing), Ok(only)) => finding::at_best(only, missing),
        both => finding::of_either_side(both.0, both.1),
    };
    (found, nearest)
}
