//! Do the fasteners go into the hub or onto its studs, and do they bear what they are tightened to?

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::Setup;
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{Check, CheckId, Input, Missing, Reason, Verdict};
use crate::fitment::facts::SetupFacts;
use crate::fitment::finding::{Finding, Found, Why, at_best, no_more};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::Teller;
use crate::units::{Ratio, in_megapascals, in_mm, in_newtons, in_nm, in_ratio, ratio};
use crate::vehicle::Fastening;
use crate::wheel::{FastenerKind, PropertyClass, Seat, Thread, tightening::NutFactor};
use crate::{Citation, Toleranced};

pub(super) const FASTENER_THREAD: Definition =
    Definition::new(CheckId::FastenerThread, Harm::ComesOff, Run::Axle(fastener_thread), DependsOn::Pair)
        .vital()
        .of(Rules::BoltedHub);

/// The thread that the fasteners in use have, what they screw into, and their strength.
fn fastener_thread(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let finding = threads(case, setup)?;
    // What does not hold at all is worse than what may stretch.
    let (Verdict::Within | Verdict::Marginal, Some(Value::Thread(thread))) =
        (finding.verdict, finding.measured)
    else {
        return Ok(finding);
    };
    let (class, torque) = both_of(class_kept(case, setup), torque_borne(case, setup, thread))?;
    let strength = [class, torque];
    Ok(strength.into_iter().flatten().fold(finding, |finding, other| {
        if other.verdict == Verdict::Within { finding } else { finding.graver(other, false) }
    }))
}

/// The fasteners whose strength is known: the proposed ones, or the original ones that stay.
fn strength_of(setup: &Setup, original: Option<&SetupFacts<'_>>) -> Option<(PropertyClass, Option<Thread>)> {
    let of = |setup: &Setup| setup.fasteners().and_then(|f| Some((f.class()?, f.thread())));
    match setup.fasteners() {
        Some(_) => of(setup),
        None => of(original?),
    }
}

/// Fasteners of a class below the original's are weaker than what the maker chose.
fn class_kept(case: &Case<'_>, setup: &Setup) -> Result<Option<Finding>, Missing> {
    let hub_thread = case.axle.hub().and_then(|h| h.thread());
    let stress =
        |(class, thread): (PropertyClass, Option<Thread>)| class.proof_stress(thread.or(hub_thread)?);
    let Some(original) = case.original.and_then(|original| strength_of(original, None)) else {
        return Ok(None);
    };
    need!(proposed = strength_of(setup, case.original) => FastenerClass);
    if original.0 == proposed.0 {
        return Ok(None);
    }
    // A class that is not made for its thread is not known to be as strong.
    let kept =
        stress(original).zip(stress(proposed)).is_some_and(|(original, proposed)| original <= proposed);
    Ok((!kept).then(|| Finding::new(Verdict::Marginal, Reason::ClassLower, Citation::PROPERTY_CLASS)))
}

/// The nut factor of a seat: a cone doubles the lever of its friction. Shigley, from memory; how far it scatters is
/// common practice, no source.
fn nut_factor_span(seat: Seat) -> Toleranced<Ratio> {
    match seat.cone_angle() {
        Some(_) => Toleranced::within(ratio(0.28), ratio(0.03)),
        None => Toleranced::within(ratio(0.20), ratio(0.05)),
    }
}

/// The stated torque against that at which a fastener may reach its proof load; nothing to say of a torque that none
/// can reach, or of a class that is not made in the thread.
fn torque_borne(case: &Case<'_>, setup: &Setup, thread: Thread) -> Result<Option<Finding>, Missing> {
    let Some(torque) = setup.torque() else { return Ok(None) };
    let class_input =
        if setup.fasteners().is_some() { Input::FastenerClass } else { Input::OriginalFastenerClass };
    // The strongest class in the seat of most friction bears the most.
    let mut missing = Missing::default();
    let class = strength_of(setup, case.original).map(|(class, _)| class);
    let class = missing.or(class, class_input, PropertyClass::C12_9);
    let seat = missing.or(setup.seat(), Input::WheelSeat, Seat::Cone60);
    let at_proof = NutFactor::new(nut_factor_span(seat)).ok().zip(class.proof_load(thread));
    let Some(at_proof) = at_proof.and_then(|(k, proof)| k.torque_for(thread, proof).ok()) else {
        return if missing.is_none() { Ok(None) } else { Err(missing) };
    };
    // The least torque that may reach it is that of the best lubricated thread.
    let [least, usual] = [at_proof.min(), at_proof.nominal()].map(|most| no_more(in_nm(torque), in_nm(most)));
    let why = Why {
        within: Reason::ThreadsAgree,
        marginal: Reason::TorqueNearProof,
        beyond: Reason::TorqueAboveProof,
    };
    let (verdict, reason) = why.judge(usual, least);
    let finding = Finding::new(verdict, reason, class.citation())
        .reading(Value::Torque(torque), Bound::AtMost(Value::Torque(at_proof.min())));
    at_best(finding, missing).map(Some)
}

/// The threads of the fasteners in use and of what they screw into.
fn threads(case: &Case<'_>, setup: &Setup) -> Found {
    let hub = case.axle.hub();
    let by_hub = || {
        hub.and_then(|h| h.fastening()).map(|fastening| match fastening {
            Fastening::Bolt => FastenerKind::Bolt,
            Fastening::Stud => FastenerKind::Nut,
        })
    };
    let mut on = None;
    if let Some(adaptor) = setup.adaptor() {
        need!(thread = adaptor.thread() => AdaptorThread, _fasteners = setup.fasteners() => FastenerThread);
        on = Some(thread);
    }
    need!(own = on.or(hub.and_then(|h| h.thread())) => HubThread);
    let expected = Bound::Equals(Value::Thread(own));
    let Some(fasteners) = setup.fasteners() else {
        return Ok(Finding::new(Verdict::Within, Reason::HubsOwnFasteners, Citation::DESIGNATION)
            .reading(Value::Thread(own), expected));
    };
    need!(thread = fasteners.thread() => FastenerThread);
    let (mut verdict, mut reason) = if thread == own {
        (Verdict::Within, Reason::ThreadsAgree)
    } else {
        (Verdict::Beyond, Reason::ThreadsDiffer)
    };
    if verdict == Verdict::Within {
        need!(kind = fasteners.kind() => FastenerKind);
        let takes = match setup.adaptor() {
            Some(adaptor) => {
                need!(takes = adaptor.fastener_kind() => AdaptorFastenerKind);
                takes
            }
            None => {
                need!(takes = by_hub() => HubFastening);
                takes
            }
        };
        if takes != kind {
            (verdict, reason) = (Verdict::Beyond, Reason::FastenerKindDiffers);
        }
    }
    let finding =
        Finding::new(verdict, reason, Citation::DESIGNATION).reading(Value::Thread(thread), expected);
    Ok(on_adaptor(setup, finding))
}

/// The joint between adaptor and hub has fasteners of its own, of which nothing is known here.
pub(super) fn on_adaptor(setup: &Setup, finding: Finding) -> Finding {
    if setup.adaptor().is_some() {
        finding.marginal_if(Verdict::Within, Reason::InnerJointNotJudged)
    } else {
        finding
    }
}

pub(in crate::fitment) fn tell_fastener_thread(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let setup = case.proposed?;
    let Some(Value::Torque(_)) = check.measured() else {
        let known = strength_of(setup, case.original).zip(case.original.and_then(|o| strength_of(o, None)));
        if let (Reason::ClassLower, Some(((own, _), (its, _)))) = (check.reason(), known) {
            let source = Citation::PROPERTY_CLASS;
            tell.words(format_args!("class of the original fasteners"), format_args!("{its}"), source);
            tell.words(format_args!("class of the fasteners"), format_args!("{own}"), source);
        }
        return told::as_given(
            check,
            [("thread that they go into", None), ("thread of the fasteners", None)],
            tell,
        );
    };
    let thread = setup.fasteners().and_then(|f| f.thread());
    let hub = case.axle.hub().and_then(|h| h.thread());
    let on = setup.adaptor().and_then(|adaptor| adaptor.thread());
    let thread = thread.or(on).or(hub)?;
    let class = strength_of(setup, case.original).map_or(PropertyClass::C12_9, |(class, _)| class);
    let seat = setup.seat().unwrap_or(Seat::Cone60);
    let factor = in_ratio(nut_factor_span(seat).min());
    tell.given(
        format_args!("least nut factor of a seat {seat}, how far it scatters by common practice"),
        factor,
        "",
        Citation::NUT_FACTOR,
    );
    let (across, ds) = (in_mm(thread.major_diameter()), in_mm(thread.stress_diameter()));
    tell.given(format_args!("diameter of {thread}"), across, "mm", Citation::DESIGNATION);
    tell.given(format_args!("stress diameter of {thread}"), ds, "mm", Citation::THREAD_STRESS_AREA);
    let stress = in_megapascals(class.proof_stress(thread)?);
    tell.given(format_args!("proof stress of class {class}"), stress, "MPa", class.citation());
    let proof = in_newtons(class.proof_load(thread)?);
    let form = ("{0} × π / 4 × {1}^2", &[stress, ds][..]);
    tell.worked(format_args!("proof load"), form, proof, "N", class.citation());
    let most = factor * proof * across / 1000.0;
    let name = format_args!("least torque that may reach the proof load");
    tell.worked(
        name,
        ("{0} × {1} × {2} / 1000", &[factor, proof, across]),
        most,
        "N·m",
        Citation::NUT_FACTOR,
    );
    tell.given(format_args!("torque"), in_nm(setup.torque()?), "N·m", None);
    Some(())
}
