//! Does anything touch from lock to lock and from rebound to jounce?

use super::brake::{barrel, seat};
use super::clearance::{Assembly, of_gap, same_body};
use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::case::{Case, both_of, need};
use crate::fitment::check::{Check, CheckId, Input, Missing, Reason, Verdict};
use crate::fitment::facts::SetupFacts;
use crate::fitment::finding::{Finding, Found, no_more};
use crate::fitment::space::{Approach, part_name};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::rim::Contour;
use crate::step::Teller;
use crate::sweep::{
    ContactPatch, Corner, Effort, Obstacle, Obstacles, Profile, RimSection, SteeringAxis, Swept, TireSection,
};
use crate::text::Name;
use crate::tire::condition::VehicleSide;
use crate::units::{Angle, Length, in_deg, in_mm, mm};
use crate::vehicle::{AxleType, BodyKind, GapSide, NearbyBody, Travel};
use crate::{Citation, OutOfRange, Toleranced};

pub(super) const SWEPT_CLEARANCE: Definition =
    Definition::new(CheckId::SweptClearance, Harm::Contact, Run::BothEnds, DependsOn::Movement)
        .of(Rules::Cars)
        .by_dimensions();

/// What the well and the metal of a rim take off its seat where one is drawn whose barrel was not measured: a
/// deep well of 22 mm and 8 mm of metal. Common practice, no source. Nothing is judged by it.
const BARREL_BELOW_SEAT: Length = mm(30.0);

/// The smallest barrel that a setup takes.
const LEAST_BARREL: Length = mm(50.0);

/// At the worst of every tolerance, or as meant.
#[derive(Clone, Copy, PartialEq)]
pub(in crate::fitment) enum Size {
    Worst,
    Nominal,
}

impl Size {
    fn of(self, length: Toleranced<Length>) -> Length {
        match self {
            Self::Worst => length.max(),
            Self::Nominal => length.nominal(),
        }
    }

    fn of_inside(self, length: Toleranced<Length>) -> Length {
        match self {
            Self::Worst => length.min(),
            Self::Nominal => length.nominal(),
        }
    }
}

/// A setup and the inside radius of its rim.
#[derive(Clone, Copy)]
struct Wheel<'a> {
    setup: &'a SetupFacts<'a>,
    barrel: Toleranced<Length>,
}

impl<'a> Wheel<'a> {
    /// With a barrel as small as any.
    fn closed(setup: &'a SetupFacts<'a>) -> Self {
        Self { setup, barrel: Toleranced::exact(LEAST_BARREL) }
    }

    /// With its own barrel, or open to its bead seat.
    fn open(setup: &'a SetupFacts<'a>) -> Self {
        Self::less_open(setup, Length::default())
    }

    /// With its own barrel, or as one is usually drawn.
    fn usual(setup: &'a SetupFacts<'a>) -> Self {
        Self::less_open(setup, BARREL_BELOW_SEAT)
    }

    fn less_open(setup: &'a SetupFacts<'a>, below: Length) -> Self {
        let seat = seat(&setup.wheel().size()).nominal();
        let barrel = barrel(setup).map_or(Toleranced::exact(seat - below), |(barrel, _)| barrel);
        Self { setup, barrel }
    }
}

/// What was found at one end of an axle.
#[cfg_attr(not(feature = "alloc"), allow(dead_code, reason = "for what a stock keeps"))]
#[derive(Clone, Copy)]
pub(in crate::fitment) struct SweptEnd {
    pub(in crate::fitment) found: Found,
    pub(in crate::fitment) nearest: Option<Approach>,
    pub(in crate::fitment) steady: Steady,
}

/// How a finding stands when a wheel is moved sideways, which brings it no nearer to anything than it is moved.
#[cfg_attr(not(feature = "alloc"), allow(dead_code, reason = "for what a stock keeps"))]
#[derive(Clone, Copy)]
pub(in crate::fitment) struct Steady {
    /// By how much it may be moved, but for the last bits of the search, without the finding changing.
    pub(in crate::fitment) by: Length,
    /// Whether that holds only where the original clears everything, so that nothing is excused because of it.
    pub(in crate::fitment) if_original_clears: bool,
}

impl Steady {
    const NOT: Self = Self { by: mm(0.0), if_original_clears: false };
    const ALWAYS: Self = Self { by: mm(f64::INFINITY), if_original_clears: false };

    fn and(self, other: Self) -> Self {
        Self {
            by: self.by.min(other.by),
            if_original_clears: self.if_original_clears | other.if_original_clears,
        }
    }
}

/// Both ends, the left one first: they differ only where a body stands on one side.
pub(in crate::fitment) fn ends(case: &Case<'_>) -> [SweptEnd; 2] {
    let at = |side| match end(case, side) {
        Ok((found, nearest, steady)) => {
            let by_gap = bodies_on(case, side).any(NearbyBody::is_gap);
            let found = found.map(|finding| if by_gap { of_gap(case, finding) } else { finding });
            SweptEnd { found, nearest, steady }
        }
        Err(missing) => SweptEnd { found: Err(missing), nearest: None, steady: Steady::NOT },
    };
    let left = at(VehicleSide::Left);
    let one_sided = case.axle.surroundings().any(|body| body.side().is_some());
    [left, if one_sided { at(VehicleSide::Right) } else { left }]
}

/// Where another input is wanted first.
pub(in crate::fitment) fn not_swept(missing: Missing) -> [SweptEnd; 2] {
    [SweptEnd { found: Err(missing), nearest: None, steady: Steady::ALWAYS }; 2]
}

type Judged<F> = (F, Option<Approach>, Steady);

fn end(case: &Case<'_>, side: VehicleSide) -> Result<Judged<Found>, Missing> {
    let (original, proposed) = case.both()?;
    let around = case.axle.surroundings().next().ok_or(Missing::from(Input::Obstacles));
    // All that is not known, at once. The outline itself is dear, and made where it is swept.
    let outline = outer_sections(Wheel::closed(proposed), Size::Worst);
    let ((corner, _), _) = both_of(both_of(corner(case, original), outline), around)?;
    let swept = |wheel| judge(case, &corner, original, wheel, side);

    let known = barrel(proposed);
    let (most, nearest_open, steady) = swept(Wheel::open(proposed))?;
    if most.verdict == Verdict::Beyond || known.is_some_and(|(_, is_largest)| !is_largest) {
        return Ok((Ok(most), nearest_open, steady));
    }
    // What is true of the least and of the most open barrel is true of all between.
    let (least, nearest, steady_closed) = swept(Wheel::closed(proposed))?;
    let steady = steady.and(steady_closed);
    if (least.verdict, least.reason) == (most.verdict, most.reason) {
        return Ok((Ok(least), nearest, steady));
    }
    if known.is_none() {
        return Ok((Err(Input::Barrel.into()), None, steady));
    }
    Ok((Ok(most.marginal_if(Verdict::Within, Reason::ClearsStandardBarrel)), nearest_open, steady))
}

fn judge(
    case: &Case<'_>,
    corner: &Corner,
    original: &SetupFacts<'_>,
    proposed: Wheel<'_>,
    side: VehicleSide,
) -> Result<Judged<Finding>, Missing> {
    let limit = case.limits.swept_clearance();
    let allowance = case.limits.dynamic_allowance();
    let worst = swept(case, corner, original, proposed, side, Size::Worst)?;
    let Some((worst, body)) = worst else {
        // Everything stands on the other side.
        let nothing = Finding::new(Verdict::Within, Reason::NothingOnThisSide, limit.citation());
        return Ok((nothing, None, Steady::ALWAYS));
    };
    let least = worst.lower() - allowance.value();
    let finding = |verdict, reason, nominal: Option<Length>| {
        let finding = Finding::new(verdict, reason, limit.citation())
            .reading(Value::Length(least), Bound::AtLeast(Value::Length(limit.value())));
        match nominal.filter(|&nominal| nominal > least) {
            Some(nominal) => finding.nominal(Value::Length(nominal)),
            None => finding,
        }
    };
    let approach = Some(Approach::new(case.place, body, &worst, allowance.value()));
    if no_more(in_mm(limit.value()), in_mm(least)) {
        let steady = Steady { by: least - limit.value(), ..Steady::NOT };
        return Ok((finding(Verdict::Within, Reason::ClearsThroughout, None), approach, steady));
    }
    let nominal = swept(case, corner, original, proposed, side, Size::Nominal)?;
    let nominal = nominal.map_or(least, |(swept, _)| swept.upper() - allowance.value());
    let contact_threshold = is_too_near(case, in_mm(nominal));
    let (mut verdict, mut reason) = if no_more(in_mm(nominal), 0.0) {
        (Verdict::Beyond, Reason::TouchesMoving)
    } else if contact_threshold {
        (Verdict::Beyond, Reason::NearerThanRules)
    } else if no_more(in_mm(least), 0.0) {
        (Verdict::Marginal, Reason::TouchesAtWorst)
    } else {
        (Verdict::Marginal, Reason::NearMoving)
    };
    if contact_threshold && !comes_nearer(case, corner, original, proposed, side)? {
        (verdict, reason) = (Verdict::Marginal, Reason::TouchedBefore);
    }
    let none = Length::default();
    let by = [
        limit.value() - least,
        (least - none).abs(),
        (nominal - none).abs(),
        (nominal - case.limits.contact_threshold()).abs(),
    ];
    // A row of a table that is remembered may be off.
    let by = if case.is_remembered { none } else { by.into_iter().fold(mm(f64::INFINITY), Length::min) };
    let steady = Steady { by, if_original_clears: contact_threshold };
    Ok((finding(verdict, reason, Some(nominal)), approach, steady))
}

/// Whether what is left, in millimetres, is nothing, or less than a rule forbids even at nominal size.
fn is_too_near(case: &Case<'_>, left: f64) -> bool {
    no_more(left, 0.0) || !no_more(in_mm(case.limits.contact_threshold()), left)
}

/// Whether the proposed wheel comes nearer than the limit to any body to which the original did not come as
/// near. So deep inside that only the figures can be wrong, nothing is excused but what does not change.
// On its own: the bodies in the corner's frame are large, and those of the judgement before it are done with.
#[inline(never)]
fn comes_nearer(
    case: &Case<'_>,
    corner: &Corner,
    original: &SetupFacts<'_>,
    proposed: Wheel<'_>,
    side: VehicleSide,
) -> Result<bool, Missing> {
    const DEEP: f64 = -30.0;
    if same_body(original, proposed.setup) {
        return Ok(false);
    }
    let allowance = in_mm(case.limits.dynamic_allowance().value());
    let mut around = Obstacles::new();
    place(&mut around, case, original, side, Size::Nominal)?;
    // A barrel that is not known excuses nothing.
    let before = Wheel::open(original);
    for obstacle in around.iter() {
        let left = |wheel| -> Result<f64, Missing> {
            let found = nearest(corner, wheel, core::slice::from_ref(obstacle), Size::Nominal)?;
            Ok(found.map_or(f64::INFINITY, |swept| in_mm(swept.upper())) - allowance)
        };
        let after = left(proposed)?;
        if is_too_near(case, after) && (after < DEEP || !no_more(left(before)?, after)) {
            return Ok(true);
        }
    }
    Ok(false)
}

/// How near the wheels of an axle come at nominal size.
pub(in crate::fitment) struct Slack {
    /// What is left above what is too near. A wheel that is moved sideways changes it by no more than it is moved.
    pub(in crate::fitment) left: Length,
    /// Whether that is nothing.
    pub(in crate::fitment) is_near: bool,
    /// Whether a finding is beyond because of it.
    pub(in crate::fitment) is_beyond: bool,
    /// Whether the dimensions rest on a remembered row.
    pub(in crate::fitment) is_in_doubt: bool,
}

/// Whether a finding of [`ends`] is beyond, without the findings: at nominal size, with the most open barrel.
pub(in crate::fitment) fn slack(case: &Case<'_>) -> Result<Slack, Missing> {
    let (original, proposed) = case.both()?;
    case.axle.surroundings().next().ok_or(Missing::from(Input::Obstacles))?;
    let corner = corner(case, original)?;
    let limit = case.limits.swept_clearance();
    let (allowance, threshold) = (case.limits.dynamic_allowance(), case.limits.contact_threshold());
    let wheel = Wheel::open(proposed);
    let mut slack =
        Slack { left: mm(f64::INFINITY), is_near: false, is_beyond: false, is_in_doubt: case.is_remembered };
    let one_sided = case.axle.surroundings().any(|body| body.side().is_some());
    let sides = [Some(VehicleSide::Left), one_sided.then_some(VehicleSide::Right)];
    for side in sides.into_iter().flatten() {
        let Some((swept, _)) = swept(case, &corner, original, wheel, side, Size::Nominal)? else { continue };
        let left = swept.upper() - allowance.value();
        slack.left = slack.left.min(left - threshold);
        if is_too_near(case, in_mm(left)) {
            slack.is_near = true;
            if comes_nearer(case, &corner, original, wheel, side)? {
                let found = Finding::new(Verdict::Beyond, Reason::TouchesMoving, limit.citation());
                let bound = Bound::AtLeast(Value::Length(limit.value()));
                let mut found = Ok(found.reading(Value::Length(left), bound));
                let found = SWEPT_CLEARANCE.settled(case, &mut found);
                slack.is_beyond |= matches!(found, Ok(finding) if finding.verdict == Verdict::Beyond);
            }
        }
    }
    Ok(slack)
}

/// How the wheels of an axle move. The steering axis is where the original wheel and tire put it.
pub(in crate::fitment) fn corner(case: &Case<'_>, original: &SetupFacts<'_>) -> Result<Corner, Missing> {
    let (travel, (steering, beam)) =
        both_of(travel(case), both_of(steering(case, original), beam_track(case)))?;
    let mut corner = travelling(at_rest(case)?, travel).map_err(|_| Missing::from(Input::Travel))?;
    if let Some((axis, (inner, outer))) = steering {
        corner = corner.steered(axis, inner, outer).map_err(|_| Missing::from(Input::Locks))?;
    }
    match beam {
        Some(track) => corner.on_beam_axle(track).map_err(|_| Missing::from(Input::Track)),
        None => Ok(corner),
    }
}

/// Straight ahead at ride height; camber and toe are none if not said.
pub(in crate::fitment) fn at_rest(case: &Case<'_>) -> Result<Corner, Missing> {
    let (camber, toe) = (case.axle.camber().unwrap_or_default(), case.axle.toe().unwrap_or_default());
    let corner = Corner::new().with_camber(camber).and_then(|corner| corner.with_toe(toe));
    corner.map_err(|_| Missing::from(Input::Travel))
}

fn travel(case: &Case<'_>) -> Result<(Travel, Length, Length), Missing> {
    need!(travel = case.axle.travel().and_then(|t| Some((t, t.jounce()?, t.rebound()?))) => Travel);
    Ok(travel)
}

/// # Errors
/// What is gained in no travel to speak of, below 10 mm, says nothing.
fn travelling(
    corner: Corner,
    (travel, jounce, rebound): (Travel, Length, Length),
) -> Result<Corner, OutOfRange> {
    let mut corner = corner.travelling(jounce, rebound)?;
    if let Some(change) = travel.camber_change() {
        corner = corner.with_camber_change(change, jounce)?;
    }
    if let Some(change) = travel.toe_change() {
        corner = corner.with_toe_change(change, jounce)?;
    }
    if let Some(change) = travel.lateral_change() {
        corner = corner.with_lateral_change(change, jounce)?;
    }
    Ok(corner)
}

type Steered = (SteeringAxis, (Angle, Angle));

fn steering(case: &Case<'_>, original: &SetupFacts<'_>) -> Result<Option<Steered>, Missing> {
    if !case.is_steered() && case.axle.steering().is_none() {
        return Ok(None);
    }
    let camber = case.axle.camber().unwrap_or_default();
    both_of(steering_axis(case, original, camber), locks(case)).map(Some)
}

/// The track of a beam axle; none beside independent wheels.
fn beam_track(case: &Case<'_>) -> Result<Option<Length>, Missing> {
    need!(kind = case.axle.axle_type() => AxleType);
    if kind != AxleType::Beam {
        return Ok(None);
    }
    need!(track = case.axle.track() => Track);
    Ok(Some(track))
}

fn locks(case: &Case<'_>) -> Result<(Angle, Angle), Missing> {
    need!(locks = case.axle.steering().and_then(|s| s.lock_inner().zip(s.lock_outer())) => Locks);
    Ok(locks)
}

/// Through its measured points, or where alignment data put it with the original wheel and tire.
fn steering_axis(case: &Case<'_>, original: &SetupFacts<'_>, camber: Angle) -> Result<SteeringAxis, Missing> {
    let steering = case.axle.steering();
    if let Some([lower, upper]) = steering.and_then(|s| s.axis()) {
        return SteeringAxis::through(lower, upper).map_err(|_| Input::SteeringAxis.into());
    }
    need!(
        lean = steering.and_then(|s| s.kingpin_inclination().zip(s.scrub_radius())) => SteeringAxis,
        along = steering.and_then(|s| s.caster().zip(s.trail())) => CasterAndTrail,
        height = steering.and_then(|s| s.hub_height()) => HubHeight,
        centres = original.centres => OriginalInset,
    );
    let ((inclination, scrub), (caster, trail)) = (lean, along);
    ContactPatch::under(centres.outer, height, camber)
        .and_then(|patch| SteeringAxis::from_ground(patch, inclination, caster, scrub, trail))
        .map_err(|_| Input::SteeringAxis.into())
}

/// The nearest approach of a setup's wheel, of a pair the nearer of both; none without a body on that side.
fn swept(
    case: &Case<'_>,
    corner: &Corner,
    original: &SetupFacts<'_>,
    wheel: Wheel<'_>,
    side: VehicleSide,
    size: Size,
) -> Result<Option<(Swept, BodyKind)>, Missing> {
    let mut around = Obstacles::new();
    place(&mut around, case, original, side, size)?;
    Ok(nearest(corner, wheel, around.as_slice(), size)?.map(|swept| {
        let body = bodies_on(case, side).nth(swept.obstacle());
        (swept, body.map_or(BodyKind::Other, NearbyBody::kind))
    }))
}

fn nearest(
    corner: &Corner,
    wheel: Wheel<'_>,
    around: &[Obstacle],
    size: Size,
) -> Result<Option<Swept>, Missing> {
    need!(centres = wheel.setup.centres => WheelInset);
    let mut nearest: Option<Swept> = None;
    let inner = (centres.inner != centres.outer).then_some(centres.inner);
    for centre in core::iter::once(centres.outer).chain(inner) {
        let profile = sections(wheel, centre, size).and_then(outline)?;
        let found = corner.clearance_of(&profile, around, Effort::default());
        let found = found.map_err(|_| Missing::from(Input::Obstacles))?;
        nearest = match (nearest, found) {
            (Some(a), Some(b)) => Some(if b.lower() < a.lower() { b } else { a }),
            (a, b) => a.or(b),
        };
    }
    Ok(nearest)
}

pub(in crate::fitment) fn bodies_on<'a>(
    case: &Case<'a>,
    side: VehicleSide,
) -> impl Iterator<Item = &'a NearbyBody> {
    let axle = case.axle;
    axle.surroundings().filter(move |body| body.side().is_none_or(|only| only == side))
}

/// Puts the bodies on a side into the corner's frame.
pub(in crate::fitment) fn place(
    around: &mut Obstacles,
    case: &Case<'_>,
    original: &SetupFacts<'_>,
    side: VehicleSide,
    size: Size,
) -> Result<(), Missing> {
    let gaps = case.gap_uncertainty();
    for body in bodies_on(case, side) {
        let face = match body.gap_place() {
            Some((side, forward, height)) => {
                let face = present_face(case, original, side)?;
                let at_rest = at_rest(case)?;
                face.map(|axial| at_rest.outboard_across_spindle(axial, forward, height))
            }
            None => Toleranced::exact(mm(0.0)),
        };
        let obstacle = body.obstacle(face, gaps).map_err(|_| Missing::from(Input::Obstacles))?;
        let obstacle = if size == Size::Nominal { obstacle.at_nominal() } else { obstacle };
        around.push(obstacle).map_err(|_| Missing::from(Input::Obstacles))?;
    }
    Ok(())
}

/// How far outboard along the spindle a face of the tire is that was on when gaps were measured.
fn present_face(
    case: &Case<'_>,
    original: &SetupFacts<'_>,
    side: GapSide,
) -> Result<Toleranced<Length>, Missing> {
    let present = Assembly::original(case, original)?;
    Ok(match side {
        GapSide::Outer => Toleranced::exact(present.centres.outer) + present.half_tire,
        GapSide::Inner => Toleranced::exact(present.centres.inner) - present.half_tire,
    })
}

/// The outline of a setup's tire on its rim at nominal size, of a pair the outer one.
pub(in crate::fitment) fn outer_profile(setup: &SetupFacts<'_>) -> Result<Profile, Missing> {
    outer_sections(Wheel::usual(setup), Size::Nominal).and_then(outline)
}

/// The same at nominal size, where the middle of a rim stands. A tire whose width on its rim is not known is as wide as
/// it is called.
pub(in crate::fitment) fn profile_at(setup: &SetupFacts<'_>, centre: Length) -> Result<Profile, Missing> {
    let called = setup.tire().size().nominal_width().map(|width| Toleranced::exact(width) * 0.5);
    need!(
        half_tire = setup.half_tire.or(called) => TireDimensions,
        diameter = setup.largest_diameter.or(setup.nominal_diameter.map(Toleranced::exact)) => TireDimensions,
    );
    sections_of(Wheel::usual(setup), centre, Size::Nominal, (half_tire, diameter)).and_then(outline)
}

fn outer_sections(wheel: Wheel<'_>, size: Size) -> Result<(RimSection, TireSection), Missing> {
    need!(centres = wheel.setup.centres => WheelInset);
    sections(wheel, centres.outer, size)
}

fn outline((rim, tire): (RimSection, TireSection)) -> Result<Profile, Missing> {
    Profile::new(rim, tire).map_err(|_| Input::TireDimensions.into())
}

/// The rim of a setup and its tire in section.
fn sections(
    Wheel { setup, barrel }: Wheel<'_>,
    centre: Length,
    size: Size,
) -> Result<(RimSection, TireSection), Missing> {
    need!(half_tire = setup.half_tire => TireDimensions, diameter = setup.largest_diameter => TireDimensions);
    sections_of(Wheel { setup, barrel }, centre, size, (half_tire, diameter))
}

/// The same of a tire of half a width and a diameter.
fn sections_of(
    Wheel { setup, barrel }: Wheel<'_>,
    centre: Length,
    size: Size,
    (half_tire, diameter): (Toleranced<Length>, Toleranced<Length>),
) -> Result<(RimSection, TireSection), Missing> {
    let rim = setup.wheel().size();
    // A contour that is not known, or whose flange is not, is taken as J.
    let contour = rim.contour().unwrap_or(Contour::J);
    let seat = seat(&rim);
    let height = contour.flange_height().or_else(|| Contour::J.flange_height());
    let flange = height.map_or(seat, |height| seat + height);
    RimSection::new(centre, size.of(setup.half_rim), size.of(flange), size.of_inside(barrel))
        .and_then(|rim| Ok((rim, TireSection::new(size.of(half_tire), size.of(diameter * 0.5))?)))
        .map_err(|_| Input::TireDimensions.into())
}

pub(in crate::fitment) fn tell_swept_clearance(
    case: &Case<'_>,
    side: VehicleSide,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let (original, proposed) = case.both().ok()?;
    let Value::Length(left) = check.measured()? else { return None };
    let corner = corner(case, original).ok()?;
    let mut around = Obstacles::new();
    place(&mut around, case, original, side, Size::Worst).ok()?;
    let centres = proposed.centres?;
    let allowance = case.limits.dynamic_allowance().value();
    for wheel in [Wheel::closed(proposed), Wheel::open(proposed)] {
        for centre in [centres.outer, centres.inner] {
            let profile = sections(wheel, centre, Size::Worst).and_then(outline).ok()?;
            let swept = corner.clearance_of(&profile, around.as_slice(), Effort::default()).ok()??;
            if told::is_same(in_mm(swept.lower() - allowance), in_mm(left)) {
                let obstacle = around.as_slice().get(swept.obstacle())?;
                let body = bodies_on(case, side).nth(swept.obstacle())?.kind();
                return tell_nearest(case, &corner, &profile, (&swept, obstacle, body), tell);
            }
        }
    }
    None
}

/// Tells where a wheel comes nearest to a body, how near, and what is left of that.
fn tell_nearest(
    case: &Case<'_>,
    corner: &Corner,
    profile: &Profile,
    (swept, obstacle, body): (&Swept, &Obstacle, BodyKind),
    tell: &mut Teller<'_>,
) -> Option<()> {
    let (found, limits) = (Citation::SWEPT, case.limits);
    told::limit(tell, "least that must be left over all steer and travel", limits.swept_clearance());
    let part = part_name(swept.profile_point().part());
    tell.words(format_args!("nearest"), format_args!("{part} to {}", Name(body.name())), found);
    tell.given(format_args!("steer there, positive as the inner wheel"), in_deg(swept.steer()), "deg", found);
    tell.given(format_args!("travel there, positive in jounce"), in_mm(swept.travel()), "mm", found);
    let pose = corner.wheel_pose(swept.pose());
    let point = pose.carried(obstacle.carrier(), swept.point()).ok()?;
    for (way, length) in
        [("ahead of", point.forward()), ("outboard of", point.outboard()), ("above", point.up())]
    {
        tell.given(
            format_args!("point of the body there, {way} the hub at rest"),
            in_mm(length),
            "mm",
            found,
        );
    }
    let [along, up, forward] = pose.along_and_across(point).map(in_mm);
    tell.given(format_args!("the same in the wheel, outboard along its spindle"), along, "mm", found);
    tell.given(format_args!("across the spindle, up"), up, "mm", found);
    tell.given(format_args!("across the spindle, forward"), forward, "mm", found);
    let from_spindle = libm::hypot(up, forward);
    let form = ("√({0}^2 + {1}^2)", &[up, forward][..]);
    tell.worked(format_args!("its distance from the spindle"), form, from_spindle, "mm", None);
    let (distance, place) = profile.distance(mm(along), mm(from_spindle));
    let shape = Citation::TIRE_SHAPE;
    let [axial, radial] = [place.axial(), place.radial()].map(in_mm);
    tell.given(
        format_args!("nearest place of the outline of the largest tire and its rim, along"),
        axial,
        "mm",
        shape,
    );
    tell.given(format_args!("that place from the spindle"), radial, "mm", shape);
    let distance = in_mm(distance);
    let form = if distance < 0.0 {
        "0 − √(({0} − {1})^2 + ({2} − {3})^2)"
    } else {
        "√(({0} − {1})^2 + ({2} − {3})^2)"
    };
    let numbers = [along, axial, from_spindle, radial];
    tell.worked(format_args!("distance, negative inside"), (form, &numbers), distance, "mm", None);
    let radius = told::measured(tell, "radius of the body about that point", obstacle.radius());
    let off = told::measured(
        tell,
        "what the point may be off, with the span of the tire it was measured from",
        obstacle.uncertainty(),
    );
    let (upper, lower) = (in_mm(swept.upper()), in_mm(swept.lower()));
    let form = ("{0} − {1} − {2}", &[distance, radius, off][..]);
    tell.worked(format_args!("nearest that was found"), form, upper, "mm", None);
    let open = tell.given(format_args!("what the search leaves open below it"), upper - lower, "mm", found);
    let name = format_args!("certified: no position is nearer");
    tell.worked(name, ("{0} − {1}", &[upper, open]), lower, "mm", found);
    let allowance = told::limit(tell, "movement of rubber and bushes under load", limits.dynamic_allowance());
    let name = format_args!("left at worst");
    tell.worked(name, ("{0} − {1}", &[lower, allowance]), lower - allowance, "mm", None);
    Some(())
}
