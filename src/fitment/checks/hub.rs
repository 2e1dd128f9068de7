//! Does the wheel belong on the hub: its bolt circle and its bore?

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Check, CheckId, Input, Missing, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, Why, at_most, no_more};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::fitment::{Limit, Setup};
use crate::step::Teller;
use crate::units::{Length, in_mm, mm};
use crate::wheel::{BoltCircle, Bore, Seat, Spigot, Thread, drilling::NEAR_MISS};
use crate::{Citation, Toleranced};

pub(super) const BOLT_CIRCLE: Definition =
    Definition::new(CheckId::BoltCircle, Harm::ComesOff, Run::Axle(bolt_circle), DependsOn::Pair)
        .vital()
        .of(Rules::BoltedHub);

fn bolt_circle(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    // What does not go on the hub settles it, whatever is not known of the wheel.
    if let Some((inner, hub)) = setup
        .adaptor()
        .and_then(|adaptor| adaptor.hub_bolt_circle())
        .zip(case.axle.hub().and_then(|h| h.bolt_circle()))
    {
        let on_hub = circles(inner, hub);
        if on_hub.verdict == Verdict::Beyond {
            return Ok(on_hub);
        }
    }
    need!(
        hub = case.axle.hub().and_then(|h| h.bolt_circle()) => HubBoltCircle,
        wheel = setup.wheel().bolt_circle() => WheelBoltCircle,
    );
    // A wheel may be drilled for two.
    let drilled_for = |on| setup.wheel().second_bolt_circle().filter(|second| *second == on).unwrap_or(wheel);
    let Some(adaptor) = setup.adaptor() else { return Ok(circles(drilled_for(hub), hub)) };
    let on_adaptor = adaptor.wheel_bolt_circle().map(|outer| circles(drilled_for(outer), outer));
    match (adaptor.hub_bolt_circle(), on_adaptor) {
        (_, Some(finding)) if finding.verdict == Verdict::Beyond => Ok(finding),
        (inner, on_adaptor) => {
            need!(_inner = inner => AdaptorHubCircle, finding = on_adaptor => AdaptorWheelCircle);
            Ok(finding)
        }
    }
}

/// The holes of a wheel or an adaptor against what they go on.
fn circles(holes: BoltCircle, on: BoltCircle) -> Finding {
    let off = (on.diameter() - holes.diameter()).abs();
    let (verdict, reason) = if on == holes {
        (Verdict::Within, Reason::HolesAgree)
    } else if on.count() != holes.count() {
        (Verdict::Beyond, Reason::HoleCountDiffers)
    } else if no_more(in_mm(off), in_mm(NEAR_MISS)) {
        (Verdict::Beyond, Reason::HolesNearMiss)
    } else {
        (Verdict::Beyond, Reason::HolesDiffer)
    };
    Finding::new(verdict, reason, Citation::DESIGNATION)
        .reading(Value::BoltCircle(holes), Bound::Equals(Value::BoltCircle(on)))
}

/// A bore on a spigot.
struct Fit {
    spigot: Spigot,
    bore: Bore,
    /// The bolt circle around the bore, and the thread of what goes through its holes, as far as they are known.
    holes: (Option<BoltCircle>, Option<Thread>),
    /// Whether a ring fills what is between them.
    ring: bool,
    /// Whether the fasteners centre it where the spigot does not.
    seats_centre: Option<bool>,
}

impl Fit {
    /// Without the spigot, the seats alone centre the wheel, if they do.
    fn by_seats(&self, reason: Reason) -> Result<(Verdict, Reason), Missing> {
        match self.seats_centre {
            Some(true) => Ok((Verdict::Marginal, reason)),
            Some(false) => Ok((Verdict::Beyond, Reason::NoCentring)),
            None => Err(Input::WheelSeat.into()),
        }
    }

    /// Up to where a bore leaves metal between itself and the holes, each a millimetre wider than the thread in it; a
    /// thread that is not known takes nothing.
    fn max_bore(&self) -> Option<Length> {
        let (circle, thread) = self.holes;
        Some(circle?.diameter() - thread.map_or(mm(0.0), |thread| thread.major_diameter()) - mm(1.0))
    }

    fn judge(&self, limit: Limit<Length>) -> Found {
        let play = self.spigot.play_in(self.bore);
        let none = Value::Length(mm(0.0));
        let finding = |verdict, reason, bound| {
            Finding::new(verdict, reason, limit.citation()).reading(Value::Length(play), bound)
        };
        let centring = Bound::Between(none, Value::Length(limit.value()));
        if let Some(most) = self.max_bore().filter(|&most| self.bore.length() >= most) {
            return Ok(Finding::new(Verdict::Beyond, Reason::BoreReachesHoles, Citation::DESIGNATION)
                .reading(Value::Length(self.bore.length()), Bound::AtMost(Value::Length(most))));
        }
        Ok(if self.bore.length() < self.spigot.length() {
            finding(Verdict::Beyond, Reason::BoreTooSmall, Bound::AtLeast(none))
        } else if no_more(in_mm(play), in_mm(limit.value())) {
            finding(Verdict::Within, Reason::HubCentric, centring)
        } else if self.ring {
            let why =
                Why { within: Reason::RingCentres, marginal: Reason::RingThick, beyond: Reason::RingThick };
            let wall = Toleranced::exact(play / 2.0);
            at_most(wall, THICKEST_RING, Value::Length, why, Citation::CENTRING_RING)
                .marginal_if(Verdict::Beyond, Reason::RingThick)
        } else {
            let (verdict, reason) = self.by_seats(Reason::RingNeeded)?;
            finding(verdict, reason, centring)
        })
    }
}

pub(super) const CENTRE_BORE: Definition =
    Definition::new(CheckId::CentreBore, Harm::ComesOff, Run::Axle(centre_bore), DependsOn::Pair)
        .vital()
        .of(Rules::BoltedHub);

fn centre_bore(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let hub = case.axle.hub();
    let (own_thread, hub_thread) = (setup.fasteners().and_then(|f| f.thread()), hub.and_then(|h| h.thread()));
    // Of two drillings the inner one is met first; a wheel whose holes are not known has those of the hub.
    let drillings = [setup.wheel().bolt_circle(), setup.wheel().second_bolt_circle()].into_iter().flatten();
    let inner = drillings.min_by(|a, b| a.diameter().value.total_cmp(&b.diameter().value));
    let of_wheel = (inner.or(hub.and_then(|h| h.bolt_circle())), own_thread.or(hub_thread));
    need!(spigot = hub.and_then(|h| h.spigot()) => HubSpigot, bore = setup.wheel().bore() => WheelBore);
    let (ring, seats_centre) = (setup.ring() == Some(true), setup.seat().map(Seat::is_centring));
    let limit = case.limits.centring_play();
    let Some(adaptor) = setup.adaptor() else {
        return on_hub(case, setup, &Fit { spigot, bore, holes: of_wheel, ring, seats_centre });
    };
    // What does not go on the hub settles it.
    let too_small = |hub_bore: &Bore| hub_bore.length() < spigot.length();
    let of_no_use = adaptor.hub_bore().as_ref().is_some_and(too_small).then_some(spigot);
    need!(hub_bore = adaptor.hub_bore() => AdaptorBore, own = adaptor.wheel_spigot().or(of_no_use) => AdaptorSpigot);
    // Its own fasteners have seats of their own.
    let holes = (adaptor.hub_bolt_circle(), hub_thread);
    let inner =
        on_hub(case, setup, &Fit { spigot, bore: hub_bore, holes, ring: false, seats_centre: Some(true) })?;
    if inner.verdict != Verdict::Beyond && bore.length() < spigot.length() {
        // A spigot that comes out of the adaptor must go into the wheel.
        need!(height = hub.and_then(|h| h.spigot_height()) => SpigotHeight);
        if height > setup.hub_spacing() {
            return Ok(Finding::new(Verdict::Beyond, Reason::SpigotThroughAdaptor, limit.citation())
                .reading(Value::Length(height), Bound::AtMost(Value::Length(setup.hub_spacing()))));
        }
    }
    if inner.verdict == Verdict::Within {
        Fit { spigot: own, bore, holes: of_wheel, ring, seats_centre }.judge(limit)
    } else {
        Ok(inner)
    }
}

/// What goes on the hub's spigot, behind a slip-on spacer if there is one, which takes some of it away.
fn on_hub(case: &Case<'_>, setup: &Setup, fit: &Fit) -> Found {
    let mut short = None;
    if let Some(spacer) = setup.spacer().filter(|s| s.value > 0.0) {
        need!(height = case.axle.hub().and_then(|h| h.spigot_height()) => SpigotHeight);
        let limit = case.limits.spigot_engagement();
        let reading = |(verdict, reason)| {
            Finding::new(verdict, reason, limit.citation())
                .reading(Value::Length(height - spacer), Bound::AtLeast(Value::Length(limit.value())))
        };
        if spacer >= height {
            return Ok(reading(fit.by_seats(Reason::SpacerHidesSpigot)?));
        }
        if !no_more(in_mm(limit.value()), in_mm(height - spacer)) {
            short = Some(reading((Verdict::Marginal, Reason::SpigotShort)));
        }
    }
    let found = fit.judge(case.limits.centring_play())?;
    Ok(short.map_or(found, |short| found.graver(short, true)))
}

/// The thickest wall of a centring ring that is usually made. Common practice, no source.
const THICKEST_RING: Length = mm(12.0);

pub(in crate::fitment) fn tell_bolt_circle(check: &Check, tell: &mut Teller<'_>) -> Option<()> {
    told::as_stamped(check, ["bolt circle that they go on", "bolt circle of the holes"], tell)
}

pub(in crate::fitment) fn tell_centre_bore(
    case: &Case<'_>,
    check: &Check,
    tell: &mut Teller<'_>,
) -> Option<()> {
    let setup = case.proposed?;
    let hub = case.axle.hub()?;
    let spigot = hub.spigot()?;
    let adaptor = setup.adaptor();
    let height =
        |tell: &mut Teller<'_>| Some(told::measured(tell, "height of the spigot", hub.spigot_height()?));
    match check.reason() {
        Reason::SpigotThroughAdaptor => {
            told::spacing(setup, told::PROPOSED, tell);
            return height(tell).map(|_| ());
        }
        Reason::BoreReachesHoles => return tell_holes(case, check, tell),
        _ => {}
    }
    let fits = [
        (Some(spigot), adaptor.map_or(setup.wheel().bore(), |adaptor| adaptor.hub_bore())),
        (adaptor.and_then(|adaptor| adaptor.wheel_spigot()), setup.wheel().bore()),
    ];
    let is_ring = matches!(check.reason(), Reason::RingCentres | Reason::RingThick);
    let walls = if is_ring { 2.0 } else { 1.0 };
    let fits = fits.into_iter().filter_map(|(spigot, bore)| spigot.zip(bore));
    let shown = fits
        .into_iter()
        .find(|(spigot, bore)| told::is_measured(check, in_mm(spigot.play_in(*bore)) / walls));
    let is_of_height = matches!(check.limit()?, Bound::AtLeast(_)) && check.reason() != Reason::BoreTooSmall;
    if let Some((spigot, bore)) = shown.filter(|_| !is_of_height) {
        match check.limit()? {
            Bound::AtMost(most) => {
                told::value(tell, format_args!("thickest wall of a ring"), most, check.citation())
            }
            Bound::Between(_, most) => {
                told::nothing(tell, Citation::DESIGNATION);
                told::value(tell, format_args!("most play that still centres"), most, check.citation())
            }
            _ => Some(told::nothing(tell, Citation::DESIGNATION)),
        };
        let [bore, spigot] = [bore.length(), spigot.length()].map(in_mm);
        tell.given(format_args!("bore"), bore, "mm", Citation::DESIGNATION);
        tell.given(format_args!("spigot that it goes on"), spigot, "mm", None);
        let play =
            tell.worked(format_args!("play"), ("{0} − {1}", &[bore, spigot]), bore - spigot, "mm", None);
        if is_ring {
            tell.worked(
                format_args!("wall of the ring"),
                ("{0} / 2", &[play]),
                play / 2.0,
                "mm",
                Citation::CENTRING,
            );
        }
        return Some(());
    }
    told::limit(tell, "least height of spigot in the bore", case.limits.spigot_engagement());
    let height = height(tell)?;
    let spacer = told::measured(tell, "spacer", setup.spacer()?);
    let name = format_args!("height of spigot in the bore");
    tell.worked(name, ("{0} − {1}", &[height, spacer]), height - spacer, "mm", None);
    Some(())
}

/// Up to where a bore leaves metal before the holes.
fn tell_holes(case: &Case<'_>, check: &Check, tell: &mut Teller<'_>) -> Option<()> {
    let setup = case.proposed?;
    let (hub, wheel) = (case.axle.hub(), setup.wheel());
    let drillings = [wheel.bolt_circle(), wheel.second_bolt_circle()].into_iter().flatten();
    let inner = drillings.min_by(|a, b| a.diameter().value.total_cmp(&b.diameter().value));
    let of_wheel = inner.or(hub.and_then(|h| h.bolt_circle()));
    let hub_thread = hub.and_then(|h| h.thread());
    let own_thread = setup.fasteners().and_then(|f| f.thread()).or(hub_thread);
    let of_adaptor = setup.adaptor().and_then(|adaptor| adaptor.hub_bolt_circle());
    let Bound::AtMost(Value::Length(most)) = check.limit()? else { return None };
    let all = [(of_adaptor, hub_thread), (of_wheel, own_thread)].into_iter();
    let known = all.filter_map(|(circle, thread)| Some((circle?, thread)));
    let room = |circle: BoltCircle, thread: Option<Thread>| {
        circle.diameter() - thread.map_or(mm(0.0), |thread| thread.major_diameter()) - mm(1.0)
    };
    let mut known = known.filter(|&(circle, thread)| told::is_same(in_mm(room(circle, thread)), in_mm(most)));
    let (circle, thread) = known.next()?;
    let across = in_mm(circle.diameter());
    let wide = thread.map_or(0.0, |thread| in_mm(thread.major_diameter()));
    tell.given(format_args!("diameter of the bolt circle {circle}"), across, "mm", Citation::DESIGNATION);
    tell.given(format_args!("width of the thread in its holes"), wide, "mm", Citation::DESIGNATION);
    let name = format_args!("greatest bore that leaves metal before holes a millimetre wider");
    tell.worked(name, ("{0} − {1} − 1", &[across, wide]), in_mm(most), "mm", Citation::DESIGNATION);
    told::value(tell, format_args!("bore"), check.measured()?, Citation::DESIGNATION);
    Some(())
}
