//! Is each tire young enough, deep enough, and the right way round?

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Check, CheckId, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, no_more};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::Teller;
use crate::text::Name;
use crate::tire::condition::{AgeLimit, Mounting, Remedy, SpreadLimit, TreadLimit, VehicleSide};
use crate::units::{Length, in_mm, years};
use crate::vehicle::Drive;
use crate::{Citation, Toleranced};

pub(super) const TIRE_AGE: Definition =
    Definition::new(CheckId::TireAge, Harm::Practice, Run::End(tire_age), DependsOn::Wear).of(Rules::Kind);

fn tire_age(case: &Case<'_>, side: VehicleSide) -> Found {
    let setup = case.proposed()?;
    need!(code = setup.tire_on(side).and_then(|t| t.date_code()) => DateCode, day = case.conditions.date() => Date);
    let Some((least, most)) = code.years_on(day.parts()) else {
        let near = code.is_at_most_a_week_after(day.parts());
        let reason = if near { Reason::DateCodeAhead } else { Reason::DateCodeFalse };
        return Ok(Finding::new(Verdict::Marginal, reason, Citation::DATE_CODE));
    };
    let limit = case.limits.tire_age();
    let allowed = f64::from(limit.years());
    let (verdict, reason) = if !no_more(least, allowed) {
        (Verdict::Beyond, Reason::TooOld)
    } else if !no_more(most, allowed) {
        (Verdict::Marginal, Reason::AgeUnsure)
    } else {
        (Verdict::Within, Reason::YoungEnough)
    };
    let finding = Finding::new(verdict, reason, limit.citation())
        .reading(Value::Time(years(most)), Bound::AtMost(Value::Time(years(allowed))));
    // The caller's limit is the caller's; beside the usual one there is earlier advice.
    let advised = f64::from(AgeLimit::VEHICLE_MAKERS.years());
    let past_advice = limit.citation() != Citation::CALLER && !no_more(most, advised);
    let finding =
        if past_advice { finding.marginal_if(Verdict::Within, Reason::AgeAdvised) } else { finding };
    Ok(if code.is_iso_only() { finding.marginal_if(Verdict::Within, Reason::WeekOfIsoOnly) } else { finding })
}

pub(super) const TREAD: Definition =
    Definition::new(CheckId::Tread, Harm::Law, Run::End(tread), DependsOn::Wear).of(Rules::Kind);

fn tread(case: &Case<'_>, side: VehicleSide) -> Found {
    let setup = case.proposed()?;
    need!(depth = setup.tire_on(side).and_then(|t| t.tread_depth()) => TreadDepth, kind = case.vehicle.kind() => Kind);
    let limit = case.limits.tread(kind, case.place);
    let enough = |least: TreadLimit| no_more(in_mm(least.depth()), in_mm(depth));
    let advice = if setup.is_snow() { TreadLimit::ADVICE_WINTER } else { TreadLimit::ADVICE_WET };
    let (verdict, reason) = if !enough(limit) {
        (Verdict::Beyond, Reason::TreadWorn)
    } else if limit.citation() != Citation::CALLER && !enough(advice) {
        (Verdict::Marginal, Reason::TreadAdvised)
    } else {
        (Verdict::Within, Reason::TreadDeep)
    };
    Ok(Finding::new(verdict, reason, limit.citation())
        .reading(Value::Length(depth), Bound::AtLeast(Value::Length(limit.depth()))))
}

pub(super) const MOUNTING: Definition =
    Definition::new(CheckId::Mounting, Harm::Practice, Run::End(mounting), DependsOn::Wear).of(Rules::Kind);

fn mounting(case: &Case<'_>, side: VehicleSide) -> Found {
    let setup = case.proposed()?;
    need!(tire = setup.tire_on(side) => SideMarks);
    let finding = |verdict, reason| Finding::new(verdict, reason, Citation::ROTATION_MARK);
    let marks = Mounting::new(tire.arrow(), tire.facing_out()).on(side);
    if marks.is_right().is_none() {
        need!(_unmarked = tire.unmarked().filter(|&unmarked| unmarked) => SideMarks);
        return Ok(finding(Verdict::Within, Reason::NoSideMarks));
    }
    Ok(match marks.remedy() {
        None => finding(Verdict::Within, Reason::MountedRight),
        Some(Remedy::ChangeSide) => finding(Verdict::Beyond, Reason::ArrowBackward),
        Some(Remedy::TurnOnRim) => finding(Verdict::Beyond, Reason::InsideOut),
        Some(Remedy::TurnOnRimAndChangeSide) => finding(Verdict::Beyond, Reason::InsideOutArrowRight),
    })
}

/// Whether treads differ by more than the trade's rules bear: of one axle, or with all-wheel drive of both.
pub(in crate::fitment) fn treads_are_uneven(axles: &[Option<Case<'_>>; 2]) -> bool {
    let depths = axles.each_ref().map(|axle| {
        [VehicleSide::Left, VehicleSide::Right]
            .map(|side| axle.as_ref()?.proposed?.tire_on(side)?.tread_depth())
    });
    let is_beyond = |limit: SpreadLimit, of: [Option<Length>; 2]| {
        let [Some(a), Some(b)] = of else { return false };
        let depths = [a, b].map(Toleranced::exact);
        matches!(limit.check(&depths), Ok(Some(finding)) if finding.is_met() == Some(false))
    };
    let all_driven = axles.iter().flatten().any(|axle| axle.vehicle.drive() == Some(Drive::All));
    let [front, rear] = depths;
    let all = || front.into_iter().chain(rear).flatten();
    let extremes = [all().reduce(Length::min), all().reduce(Length::max)];
    is_beyond(SpreadLimit::ONE_AXLE, front)
        || is_beyond(SpreadLimit::ONE_AXLE, rear)
        || all_driven && is_beyond(SpreadLimit::ALL_WHEEL_DRIVE, extremes)
}

pub(in crate::fitment) fn tell_tire_age(
    case: &Case<'_>,
    side: VehicleSide,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let code = case.proposed?.tire_on(side)?.date_code()?;
    check.measured()?;
    let limit = case.limits.tire_age();
    let years = f64::from(limit.years());
    tell.given(format_args!("greatest age of a tire"), years, "years", limit.citation());
    code.tell_age(case.conditions.date()?.parts(), tell)?;
    Some(())
}

pub(in crate::fitment) fn tell_tread(check: &Check, tell: &mut Teller<'_>) -> Option<()> {
    told::as_given(check, [("least depth of tread", check.citation()), ("depth of the tread", None)], tell)
}

pub(in crate::fitment) fn tell_mounting(
    case: &Case<'_>,
    side: VehicleSide,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let tire = case.proposed?.tire_on(side)?;
    let arrow = tire.arrow().map_or("not said", |arrow| arrow.name());
    let facing = tire.facing_out().map_or("not said", |side| side.name());
    tell.words(format_args!("side of the vehicle"), format_args!("{}", Name(side.name())), None);
    tell.words(format_args!("turn of the arrow"), format_args!("{}", Name(arrow)), Citation::ROTATION_MARK);
    tell.words(format_args!("side that faces out"), format_args!("{}", Name(facing)), Citation::OUTSIDE_MARK);
    Some(())
}
