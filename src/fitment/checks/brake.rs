//! Does the wheel clear the brake?

use super::definition::{Definition, DependsOn, Harm, Run};
use crate::fitment::Setup;
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{Check, CheckId, Input, Missing, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_best, at_least, least_or_as_built, no_more};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::rim::Contour;
use crate::step::{End, Teller};
use crate::units::{Length, in_mm, inches, mm};
use crate::wheel::{Barrel, WheelSize};
use crate::{Citation, Toleranced};

pub(super) const BRAKE_CLEARANCE: Definition =
    Definition::new(CheckId::BrakeClearance, Harm::Contact, Run::Axle(brake_clearance), DependsOn::Pair)
        .vital();

fn brake_clearance(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    // A brake that is described is there, whatever else is said.
    if case.axle.unbraked() == Some(true) && case.axle.brake().is_none() {
        return Ok(Finding::not_applicable(Reason::Unbraked));
    }
    let unchanged = case.original.is_some_and(|original| is_same_wheel(original, setup));
    if let Some(contradiction) = contradiction(setup) {
        return Ok(if unchanged {
            contradiction.marginal_if(Verdict::Beyond, Reason::BarrelContradicts)
        } else {
            contradiction
        });
    }
    if unchanged && case.limits.brake_clearance().citation() != Citation::CALLER {
        return Ok(Finding::new(Verdict::Within, Reason::Unchanged, Citation::ORIGINAL));
    }
    // What touches on one side settles it, whatever is not known of the other.
    match (radial(case, setup), axial(case, setup)) {
        (Ok(only), Err(_)) | (Err(_), Ok(only)) if only.verdict == Verdict::Beyond => Ok(only),
        (Err(missing), of_spokes) => match by_disc(case, setup) {
            Some(estimate) => Ok(estimate),
            None => Err(of_spokes.map_or_else(|more| missing.and(more), |_| missing)),
        },
        (radial, axial) => {
            both_of(radial, axial).map(|(radial, axial)| radial.graver(axial, is_tighter(&axial, &radial)))
        }
    }
}

/// Whether nothing changes that stands around the brake.
fn is_same_wheel(original: &Setup, proposed: &Setup) -> bool {
    let around = |setup: &Setup| (setup.barrel_radius(), setup.barrel_thickness(), setup.spoke_back());
    original.wheel() == proposed.wheel()
        && original.hub_spacing() == proposed.hub_spacing()
        && around(original) == around(proposed)
}

/// A barrel that was measured outside its bead seat is not the barrel.
fn contradiction(setup: &Setup) -> Option<Finding> {
    let (barrel, seat) = (setup.barrel_radius()?, seat(&setup.wheel().size()).nominal());
    (barrel >= seat).then(|| {
        Finding::new(Verdict::Beyond, Reason::BarrelContradicts, Citation::DESIGNATION)
            .reading(Value::Length(barrel), Bound::AtMost(Value::Length(seat)))
    })
}

fn is_tighter(a: &Finding, b: &Finding) -> bool {
    let number = |finding: &Finding| finding.measured.and_then(Value::number);
    number(a) < number(b)
}

/// Holds a gap against the limit, or against what the original wheel left if that is less and yet something.
fn gap(
    case: &Case<'_>,
    gap: Toleranced<Length>,
    original: Option<Toleranced<Length>>,
    touches: Reason,
) -> Finding {
    let limit = case.limits.brake_clearance();
    let why = Why { within: Reason::BrakeClears, beyond: touches, ..PLAIN };
    let (least, citation) = least_or_as_built(limit, original);
    let finding = at_least(gap, least, Value::Length, why, citation);
    // Figures by which the original touched cannot call another wheel clear, nor worse for being no nearer.
    let touched = original
        .is_some_and(|o| o.min() <= Length::default() && no_more(in_mm(o.nominal()), in_mm(gap.nominal())));
    if touched { finding.marginal_if(Verdict::Beyond, Reason::TouchedByTheFigures) } else { finding }
}

/// The barrel around disc and caliper.
fn radial(case: &Case<'_>, setup: &Setup) -> Found {
    let known = barrel(setup);
    let size = setup.wheel().size();
    let mut missing = Missing::default();
    if known.is_none() {
        missing.add(Input::Barrel);
    }
    // No barrel is larger than the largest of the standard.
    let largest = || Some((Toleranced::exact(max_barrel(&size)), true));
    need!(
        envelope = case.axle.brake().and_then(|b| b.envelope_radius()) => BrakeEnvelope,
        inside = known.or_else(largest) => Barrel,
    );
    let around = |inside: Toleranced<Length>| inside - Toleranced::exact(envelope);
    let (inside, of_standard) = inside;
    let original = case.original.and_then(|original| Some(around(self::barrel(original)?.0)));
    let finding = gap(case, around(inside), original, Reason::BarrelTouchesBrake);
    let finding = at_best(finding, missing)?;
    Ok(if of_standard { finding.marginal_if(Verdict::Within, Reason::BrakeClearsStandard) } else { finding })
}

/// The radius inside the shallowest well of the standard, with no metal at all; a contour that is not stamped is
/// taken as J. Where no well is known, no barrel is larger than its bead seat.
pub(in crate::fitment) fn max_barrel(size: &WheelSize) -> Length {
    let contour = size.contour().unwrap_or(Contour::J);
    let well = contour.well_depth(size.diameter(), size.width());
    seat(size).max() - well.unwrap_or_default()
}

/// What stands around a disc at least, where the caliper was not measured: common practice, no source.
const CALIPER_AROUND_DISC: Length = mm(12.0);

/// Beyond the codes of the published table, how much smaller than the rim the largest usual disc is: derived from
/// its rows of codes 15 to 17.
const RIM_OVER_DISC: Length = mm(75.0);

/// An estimate from the disc alone: whether it and a caliper go inside the barrel, and whether a disc so large is
/// usual under such a rim. It never says that the brake clears.
fn by_disc(case: &Case<'_>, setup: &Setup) -> Option<Finding> {
    let disc = case.axle.brake()?.disc()?;
    if case.axle.brake()?.envelope_radius().is_some() {
        return None;
    }
    let around = disc / 2.0 + CALIPER_AROUND_DISC;
    let inside =
        |setup: &Setup| barrel(setup).map_or_else(|| max_barrel(&setup.wheel().size()), |(b, _)| b.max());
    let most = inside(setup);
    if !no_more(in_mm(around), in_mm(most)) {
        let finding = Finding::new(Verdict::Beyond, Reason::DiscDoesNotFit, Citation::CALIPER_AROUND_DISC)
            .reading(Value::Length(around), Bound::AtMost(Value::Length(most)));
        // Figures by which the original touched cannot call another wheel worse for being no nearer.
        let touched = case
            .original
            .map(|original| inside(original))
            .is_some_and(|built| built < around && built <= most);
        return Some(if touched {
            finding.marginal_if(Verdict::Beyond, Reason::TouchedByTheFigures)
        } else {
            finding
        });
    }
    let rim = setup.wheel().size().diameter();
    let usual = rim.max_usual_disc().or_else(|| {
        let beyond_table = rim.nominal() > inches(17.0);
        beyond_table.then(|| rim.specified().map(|d| d.nominal() - RIM_OVER_DISC)).flatten()
    })?;
    let is_usual = barrel(setup).is_some() || no_more(in_mm(disc), in_mm(usual));
    // What the maker built on a rim no larger is usual enough.
    let built = case.original.is_some_and(|original| original.wheel().size().diameter() <= rim);
    (!is_usual && !built).then(|| {
        Finding::new(Verdict::Marginal, Reason::DiscUnusual, Citation::BRAKE_DISC)
            .reading(Value::Length(disc), Bound::AtMost(Value::Length(usual)))
    })
}

/// The inner radius of the barrel, and whether it is only the largest that the standard allows. What was measured
/// outside the bead seat is not the barrel.
pub(super) fn barrel(setup: &Setup) -> Option<(Toleranced<Length>, bool)> {
    let rim = setup.wheel().size();
    if let Some(measured) = setup.barrel_radius() {
        return (measured < seat(&rim).nominal()).then_some((Toleranced::exact(measured), false));
    }
    let thickness = Toleranced::exact(setup.barrel_thickness()?);
    let barrel = Barrel::of_standard(&rim, thickness).ok()?;
    Some((barrel.brake_envelope_radius(), barrel.is_largest()))
}

/// The radius of the bead seat, or half the nominal diameter where none is specified.
pub(super) fn seat(rim: &WheelSize) -> Toleranced<Length> {
    let diameter = rim.diameter();
    diameter.specified().unwrap_or(Toleranced::exact(diameter.nominal())) * 0.5
}

/// The spokes in front of the caliper.
fn axial(case: &Case<'_>, setup: &Setup) -> Found {
    need!(face = case.axle.brake().and_then(|b| b.caliper_face()) => CaliperFace, back = setup.spoke_back() => SpokeBack);
    // A spacer between the wheels of a pair moves the outer one only.
    let hub_spacing = |setup: &Setup| if case.is_dual { Length::default() } else { setup.hub_spacing() };
    let before = |setup: &Setup, back| Toleranced::exact(back + hub_spacing(setup) - face);
    let original = case.original.and_then(|original| Some(before(original, original.spoke_back()?)));
    Ok(gap(case, before(setup, back), original, Reason::SpokesTouchBrake))
}

pub(in crate::fitment) fn tell_brake_clearance(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let setup = case.proposed?;
    let brake = case.axle.brake();
    let size = setup.wheel().size();
    check.measured()?;
    match check.reason() {
        Reason::BarrelContradicts => {
            told::seat(&size, End::Nominal, tell);
            told::measured(tell, "radius of the barrel", setup.barrel_radius()?);
            return Some(());
        }
        Reason::DiscUnusual => {
            let Bound::AtMost(usual) = check.limit()? else { return None };
            match size.diameter().max_usual_disc() {
                Some(_) => {
                    let name = format_args!("largest usual disc under a rim of code {}", size.diameter());
                    told::value(tell, name, usual, Citation::BRAKE_DISC);
                }
                None => {
                    let seat = in_mm(size.diameter().specified()?.nominal());
                    tell.given(
                        format_args!("diameter of the bead seat"),
                        seat,
                        "mm",
                        Citation::RIM_SPECIFIED,
                    );
                    let less = in_mm(RIM_OVER_DISC);
                    tell.given(
                        format_args!("what the largest usual disc is smaller"),
                        less,
                        "mm",
                        Citation::BRAKE_DISC,
                    );
                    let form = ("{0} − {1}", &[seat, less][..]);
                    tell.worked(
                        format_args!("largest usual disc"),
                        form,
                        seat - less,
                        "mm",
                        Citation::BRAKE_DISC,
                    );
                }
            }
            told::measured(tell, "diameter of the disc", brake?.disc()?);
            return Some(());
        }
        _ => {}
    }
    if let Bound::AtMost(_) = check.limit()? {
        tell_inside(setup, End::Most, tell)?;
        let disc = told::measured(tell, "diameter of the disc", brake?.disc()?);
        let more = in_mm(CALIPER_AROUND_DISC);
        tell.given(format_args!("caliper around it"), more, "mm", Citation::CALIPER_AROUND_DISC);
        let form = ("{0} / 2 + {1}", &[disc, more][..]);
        tell.worked(
            format_args!("radius of disc and caliper"),
            form,
            disc / 2.0 + more,
            "mm",
            Citation::CALIPER_AROUND_DISC,
        );
        return Some(());
    }
    let axial = || {
        let (back, face) = (setup.spoke_back()?, brake?.caliper_face()?);
        let spacing = if case.is_dual { Length::default() } else { setup.hub_spacing() };
        Some(in_mm(back + spacing - face))
    };
    let is_axial = axial().is_some_and(|axial| told::is_measured(check, axial));
    let gap = |setup, whose: &str, tell: &mut Teller<'_>| {
        if is_axial { tell_before(case, setup, whose, tell) } else { tell_around(case, setup, whose, tell) }
    };
    if check.citation() == Some(Citation::ORIGINAL) {
        gap(case.original?, told::ORIGINAL, tell)?;
    } else {
        told::limit(tell, "least gap", case.limits.brake_clearance());
    }
    gap(setup, told::PROPOSED, tell)?;
    Some(())
}

/// The least gap around the brake.
fn tell_around(case: &Case<'_>, setup: &Setup, whose: &str, tell: &mut Teller<'_>) -> Option<f64> {
    let envelope = told::measured(tell, "radius that the brake needs", case.axle.brake()?.envelope_radius()?);
    let inside = tell_inside(setup, End::Least, tell)?;
    let name = format_args!("gap between the barrel of the {whose} wheel and the brake");
    Some(tell.worked(name, ("{0} − {1}", &[inside, envelope]), inside - envelope, "mm", None))
}

/// The least gap between spokes and brake.
fn tell_before(case: &Case<'_>, setup: &Setup, whose: &str, tell: &mut Teller<'_>) -> Option<f64> {
    let face = told::measured(
        tell,
        "face of the caliper, outboard of the hub face",
        case.axle.brake()?.caliper_face()?,
    );
    let back = told::measured(tell, "back of the spokes, outboard of the mounting face", setup.spoke_back()?);
    let spacing = if case.is_dual {
        tell.given(format_args!("spacing under the inner wheel of a pair"), 0.0, "mm", None)
    } else {
        told::spacing(setup, whose, tell)
    };
    let name = format_args!("gap between the spokes of the {whose} wheel and the brake");
    Some(tell.worked(name, ("{0} + {1} − {2}", &[back, spacing, face]), back + spacing - face, "mm", None))
}

/// The inside radius of a barrel: measured, of the standard, or no larger than the largest of it.
fn tell_inside(setup: &Setup, end: End, tell: &mut Teller<'_>) -> Option<f64> {
    let size = setup.wheel().size();
    let Some((inside, _)) = barrel(setup) else {
        let well = size.contour().unwrap_or(Contour::J).well_depth(size.diameter(), size.width());
        let seat = told::seat(&size, End::Most, tell);
        let name = format_args!("least depth of the well, none where no standard has it");
        let well = tell.given(name, in_mm(well.unwrap_or_default()), "mm", Citation::RIM_CONTOUR);
        let name = format_args!("radius inside the largest barrel of the standard, without metal");
        return Some(tell.worked(
            name,
            ("{0} − {1}", &[seat, well]),
            seat - well,
            "mm",
            Citation::RIM_CONTOUR,
        ));
    };
    if let Some(measured) = setup.barrel_radius() {
        return Some(told::measured(tell, "radius inside the barrel", measured));
    }
    let seat = told::seat(&size, end, tell);
    let metal = told::measured(tell, "thickness of its metal", setup.barrel_thickness()?);
    let well = in_mm(size.contour()?.well_depth(size.diameter(), size.width())?);
    tell.given(format_args!("least depth of the well"), well, "mm", Citation::RIM_CONTOUR);
    let form = ("{0} − {1} − {2}", &[seat, metal, well][..]);
    Some(tell.worked(
        format_args!("radius inside the barrel"),
        form,
        in_mm(end.of(inside)),
        "mm",
        Citation::RIM_CONTOUR,
    ))
}
