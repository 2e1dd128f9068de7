//! Does the wheel clear the brake?

use crate::Toleranced;
use crate::fitment::Setup;
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{Reason, Verdict};
use crate::fitment::finding::{Finding, Found, PLAIN, Why, at_least, least_or_as_built, no_more};
use crate::fitment::reading::Reading;
use crate::units::{Length, in_mm};
use crate::wheel::{Barrel, WheelSize};

pub(super) fn brake_clearance(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    // What touches on one side settles it, whatever is not known of the other.
    match (radial(case, setup), axial(case, setup)) {
        (Ok(only), Err(_)) | (Err(_), Ok(only)) if only.verdict == Verdict::Beyond => Ok(only),
        (radial, axial) => {
            both_of(radial, axial).map(|(radial, axial)| radial.graver(axial, is_tighter(&axial, &radial)))
        }
    }
}

fn is_tighter(a: &Finding, b: &Finding) -> bool {
    let number = |finding: &Finding| finding.measured.and_then(Reading::number);
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
    let finding = at_least(gap, least, Reading::Length, why, citation);
    // Figures by which the original touched cannot call another wheel clear, nor worse for being no nearer.
    let touched = original
        .is_some_and(|o| o.min() <= Length::default() && no_more(in_mm(o.nominal()), in_mm(gap.nominal())));
    if touched { finding.marginal_if(Verdict::Beyond, Reason::TouchedByTheFigures) } else { finding }
}

/// The barrel around disc and caliper.
fn radial(case: &Case<'_>, setup: &Setup) -> Found {
    need!(envelope = case.axle.brake().and_then(|b| b.envelope_radius()) => BrakeEnvelope, barrel = barrel(setup) => Barrel);
    let around = |inside: Toleranced<Length>| inside - Toleranced::exact(envelope);
    let (inside, of_standard) = barrel;
    let original = case.original.and_then(|original| Some(around(self::barrel(original)?.0)));
    let finding = gap(case, around(inside), original, Reason::BarrelTouchesBrake);
    Ok(if of_standard { finding.marginal_if(Verdict::Within, Reason::BrakeClearsStandard) } else { finding })
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
    let standoff = |setup: &Setup| if case.is_dual() { Length::default() } else { setup.standoff() };
    let before = |setup: &Setup, back| Toleranced::exact(back + standoff(setup) - face);
    let original = case.original.and_then(|original| Some(before(original, original.spoke_back()?)));
    Ok(gap(case, before(setup, back), original, Reason::SpokesTouchBrake))
}
