//! How much of the thread holds the wheel?

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Check, CheckId, Input, Missing, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_best, at_least, least_or_as_built, no_more};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::fitment::{Limit, Setup};
use crate::step::Teller;
use crate::units::{Length, in_mm, in_ratio, ratio};
use crate::vehicle::Fastening;
use crate::wheel::{FastenerKind, Thread};
use crate::{Citation, Toleranced};

pub(super) const THREAD_ENGAGEMENT: Definition =
    Definition::new(CheckId::ThreadEngagement, Harm::ComesOff, Run::Axle(thread_engagement), DependsOn::Pair)
        .vital()
        .of(Rules::BoltedHub);

fn thread_engagement(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    if case.original.map_or(Ok(false), |original| keeps_the_joint(original, setup))? {
        return Ok(Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL));
    }
    let joint = joint(case, setup)?;
    let (engaged, mut missing) = engagement(case, setup, &joint)?;
    if let Some(depth) =
        joint.depth.filter(|depth| missing.is_none() && !no_more(in_mm(engaged), in_mm(*depth)))
    {
        return Ok(Finding::new(Verdict::Beyond, Reason::BoltBottoms, Citation::DESIGNATION)
            .reading(Value::Length(engaged), Bound::AtMost(Value::Length(depth))));
    }
    let none = Length::default();
    let why = Why {
        within: Reason::TurnsEnough,
        beyond: if engaged > none { Reason::TurnsTooFew } else { Reason::BoltDoesNotReach },
        ..PLAIN
    };
    // Without a least there must be some.
    let some = Limit::new(ratio(1.0), Citation::DESIGNATION);
    let turns = missing.or(case.limits.engagement_turns(joint.thread), Input::LeastTurns, some);
    let least = Limit::new(joint.thread.pitch_length() * in_ratio(turns.value()), turns.citation());
    // What the maker built may have less than the chart asks for, as long as it has some; but not of another
    // joint.
    let same_joint = case.original.filter(|original| original.adaptor() == setup.adaptor());
    let built = same_joint.and_then(|original| engagement(case, original, &joint).ok());
    let built = built.filter(|(_, missing)| missing.is_none()).map(|(engaged, _)| Toleranced::exact(engaged));
    let (least, citation) = least_or_as_built(least, built);
    let finding =
        at_best(at_least(Toleranced::exact(engaged), least, Value::Length, why, citation), missing)?;
    if finding.verdict == Verdict::Beyond {
        return Ok(finding);
    }
    // A hole whose end is not known holds what the original bolt had in it, or as much as the thread is wide.
    // Common practice, no source.
    let held = built.map_or(Length::default(), |built| built.nominal()).max(joint.thread.major_diameter());
    let deep =
        joint.kind == FastenerKind::Bolt && joint.depth.is_none() && !no_more(in_mm(engaged), in_mm(held));
    Ok(if studs_stand_out(case, setup)? {
        finding.marginal_if(Verdict::Within, Reason::StudsStandOut)
    } else if setup.adaptor().is_some() {
        finding.marginal_if(Verdict::Within, Reason::InnerJointNotJudged)
    } else if deep {
        finding.marginal_if(Verdict::Within, Reason::DepthNotKnown)
    } else {
        finding
    })
}

/// Whether the hub's studs are longer than an adaptor over them is thick.
fn studs_stand_out(case: &Case<'_>, setup: &Setup) -> Result<bool, Missing> {
    let Some(adaptor) = setup.adaptor() else { return Ok(false) };
    let hub = case.axle.hub();
    need!(fastening = hub.and_then(|h| h.fastening()) => HubFastening);
    if fastening != Fastening::Stud {
        return Ok(false);
    }
    need!(stud = hub.and_then(|h| h.stud_length()) => StudLength);
    Ok(!no_more(in_mm(stud), in_mm(adaptor.thickness().length())))
}

/// Whether the hub's own fasteners hold the original wheel as they did.
fn keeps_the_joint(original: &Setup, proposed: &Setup) -> Result<bool, Missing> {
    let alike = proposed.fasteners().is_none()
        && original.fasteners().is_none()
        && original.wheel() == proposed.wheel()
        && original.spacer().unwrap_or_default() == proposed.spacer().unwrap_or_default()
        && original.adaptor() == proposed.adaptor();
    // Of wheels that are called the same, one may be of steel and one of alloy.
    match original.disc_thickness() {
        Some(original) if alike => {
            need!(thickness = proposed.disc_thickness() => DiscThickness);
            Ok(thickness == original)
        }
        _ => Ok(alike),
    }
}

/// What the wheel is screwed to.
struct Joint {
    thread: Thread,
    kind: FastenerKind,
    /// Of the studs, from the face the wheel lies on.
    stud: Option<Length>,
    /// Of the threaded holes, where they end.
    depth: Option<Length>,
}

#[inline(always)]
fn joint(case: &Case<'_>, setup: &Setup) -> Result<Joint, Missing> {
    if let Some(adaptor) = setup.adaptor() {
        need!(thread = adaptor.thread() => AdaptorThread, kind = adaptor.fastener_kind() => AdaptorFastenerKind);
        let length = adaptor.thread_length();
        // No threaded hole is deeper than the adaptor is thick.
        let thickness = adaptor.thickness().length();
        let depth =
            (kind == FastenerKind::Bolt).then(|| length.map_or(thickness, |length| length.min(thickness)));
        return Ok(Joint { thread, kind, stud: length, depth });
    }
    let hub = case.axle.hub();
    need!(thread = hub.and_then(|h| h.thread()) => HubThread, fastening = hub.and_then(|h| h.fastening()) => HubFastening);
    Ok(match fastening {
        Fastening::Bolt => {
            Joint { thread, kind: FastenerKind::Bolt, stud: None, depth: hub.and_then(|h| h.thread_depth()) }
        }
        Fastening::Stud => {
            Joint { thread, kind: FastenerKind::Nut, stud: hub.and_then(|h| h.stud_length()), depth: None }
        }
    })
}

/// The length of thread that holds, negative if the fastener does not reach; what is not known takes nothing of it,
/// and is missing.
fn engagement(case: &Case<'_>, setup: &Setup, joint: &Joint) -> Result<(Length, Missing), Missing> {
    let mut missing = Missing::default();
    let usable = setup.fasteners().and_then(|f| f.usable_length());
    let disc = missing.or(setup.disc_thickness(), Input::DiscThickness, Length::default());
    // The studs of a pair go through both discs.
    let disc = if case.is_dual { disc * 2.0 } else { disc };
    // A slip-on spacer lies between wheel and hub; an adaptor is what the wheel lies on.
    let spacer = setup.spacer().filter(|_| setup.adaptor().is_none()).unwrap_or_default();
    let beyond = |length: Length| length - (disc + spacer);
    if joint.kind == FastenerKind::Bolt {
        let Some(usable) = usable else { return Err(missing.and(Input::UsableLength.into())) };
        return Ok((beyond(usable), missing));
    }
    // What of the stud stands beyond the seat, and no more than the nut has thread.
    let stud_input = if setup.adaptor().is_some() { Input::AdaptorThreadLength } else { Input::StudLength };
    let engaged = match (joint.stud.map(beyond), usable) {
        (Some(beyond), Some(usable)) => beyond.min(usable),
        (Some(beyond), None) => {
            missing.add(Input::UsableLength);
            beyond
        }
        (None, Some(usable)) => {
            missing.add(stud_input);
            usable
        }
        (None, None) => return Err(missing.and(stud_input.into()).and(Input::UsableLength.into())),
    };
    Ok((engaged, missing))
}

pub(in crate::fitment) fn tell_thread_engagement(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let setup = case.proposed?;
    let joint = joint(case, setup).ok()?;
    let thread = joint.thread;
    check.measured()?;
    if check.reason() == Reason::BoltBottoms {
        told::measured(tell, "depth of the threaded hole", joint.depth?);
    } else if check.citation() == Some(Citation::ORIGINAL) {
        tell_engaged(case, case.original?, &joint, told::ORIGINAL, tell)?;
    } else {
        let some = Limit::new(ratio(1.0), Citation::DESIGNATION);
        let turns = case.limits.engagement_turns(thread).unwrap_or(some);
        let (count, pitch) = (in_ratio(turns.value()), in_mm(thread.pitch_length()));
        tell.given(format_args!("least turns of {thread}"), count, "", turns.citation());
        tell.given(format_args!("pitch of {thread}"), pitch, "mm", Citation::DESIGNATION);
        let form = ("{0} × {1}", &[count, pitch][..]);
        tell.worked(format_args!("least thread that must hold"), form, count * pitch, "mm", turns.citation());
    }
    tell_engaged(case, setup, &joint, told::PROPOSED, tell)
}

/// Tells how much thread holds a setup.
fn tell_engaged(
    case: &Case<'_>,
    setup: &Setup,
    joint: &Joint,
    whose: &str,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let (engaged, _) = engagement(case, setup, joint).ok()?;
    let length = |name: &str, length: Length, tell: &mut Teller<'_>| told::measured(tell, name, length);
    let disc = length(
        "thickness of the disc, none where it is not known",
        setup.disc_thickness().unwrap_or_default(),
        tell,
    );
    let discs = if case.is_dual { 2.0 } else { 1.0 };
    tell.given(format_args!("discs that the thread goes through"), discs, "", None);
    let spacer = setup.spacer().filter(|_| setup.adaptor().is_none()).unwrap_or_default();
    let spacer = length("spacer that it goes through", spacer, tell);
    let usable = setup.fasteners().and_then(|f| f.usable_length());
    let name = format_args!("thread that holds the {whose} wheel");
    let stud = joint.stud.filter(|_| joint.kind == FastenerKind::Nut);
    let engaged = in_mm(engaged);
    match (stud, usable) {
        (Some(stud), Some(usable)) => {
            let stud = length("length of the studs", stud, tell);
            let usable = length("thread of the nuts", usable, tell);
            let form = "min({0} − ({1} × {2} + {3}), {4})";
            tell.worked(name, (form, &[stud, disc, discs, spacer, usable]), engaged, "mm", None);
        }
        (Some(whole), None) | (None, Some(whole)) if stud.is_some() || joint.kind == FastenerKind::Bolt => {
            let whole = length("thread of bolt or stud from where the wheel lies", whole, tell);
            let form = ("{0} − ({1} × {2} + {3})", &[whole, disc, discs, spacer][..]);
            tell.worked(name, form, engaged, "mm", None);
        }
        (_, Some(usable)) => {
            length("thread of the nuts", usable, tell);
        }
        (_, None) => return None,
    }
    Some(())
}
