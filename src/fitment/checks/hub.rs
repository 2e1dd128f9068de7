//! Does the wheel belong on the hub, and what holds it there?

use crate::Citation;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Input, Missing, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, no_more};
use crate::fitment::reading::{Bound, Reading};
use crate::fitment::{Limit, Setup};
use crate::units::{Length, in_mm, mm};
use crate::vehicle::Fastening;
use crate::wheel::{BoltCircle, Bore, FastenerKind, NEAR_MISS, Seat, Spigot};

pub(super) fn bolt_circle(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    need!(
        hub = case.axle.hub().and_then(|h| h.bolt_circle()) => HubBoltCircle,
        wheel = setup.wheel().bolt_circle() => WheelBoltCircle,
    );
    // A wheel may be drilled for two.
    let drilled_for = |on| setup.wheel().second_bolt_circle().filter(|second| *second == on).unwrap_or(wheel);
    let Some(adaptor) = setup.adaptor() else { return Ok(circles(drilled_for(hub), hub)) };
    need!(inner = adaptor.hub_bolt_circle() => AdaptorHubCircle, outer = adaptor.wheel_bolt_circle() => AdaptorWheelCircle);
    let on_hub = circles(inner, hub);
    Ok(if on_hub.verdict == Verdict::Within { circles(drilled_for(outer), outer) } else { on_hub })
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
        .reading(Reading::BoltCircle(holes), Bound::Equals(Reading::BoltCircle(on)))
}

/// A bore on a spigot.
struct Fit {
    spigot: Spigot,
    bore: Bore,
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

    fn judge(&self, limit: Limit<Length>) -> Found {
        let play = self.spigot.play_in(self.bore);
        let none = Reading::Length(mm(0.0));
        let finding = |verdict, reason, bound| {
            Finding::new(verdict, reason, limit.citation()).reading(Reading::Length(play), bound)
        };
        let centring = Bound::Between(none, Reading::Length(limit.value()));
        Ok(if self.bore.length() < self.spigot.length() {
            finding(Verdict::Beyond, Reason::BoreTooSmall, Bound::AtLeast(none))
        } else if no_more(in_mm(play), in_mm(limit.value())) {
            finding(Verdict::Within, Reason::HubCentric, centring)
        } else if self.ring {
            Finding::new(Verdict::Within, Reason::RingCentres, limit.citation())
        } else {
            let (verdict, reason) = self.by_seats(Reason::RingNeeded)?;
            finding(verdict, reason, centring)
        })
    }
}

pub(super) fn centre_bore(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let hub = case.axle.hub();
    need!(spigot = hub.and_then(|h| h.spigot()) => HubSpigot, bore = setup.wheel().bore() => WheelBore);
    let (ring, seats_centre) = (setup.ring() == Some(true), setup.seat().map(Seat::is_centring));
    let limit = case.limits.centring_play();
    let Some(adaptor) = setup.adaptor() else {
        return on_hub(case, setup, &Fit { spigot, bore, ring, seats_centre });
    };
    need!(hub_bore = adaptor.hub_bore() => AdaptorBore, own = adaptor.wheel_spigot() => AdaptorSpigot);
    // Its own fasteners have seats of their own.
    let inner = on_hub(case, setup, &Fit { spigot, bore: hub_bore, ring: false, seats_centre: Some(true) })?;
    if inner.verdict != Verdict::Beyond && bore.length() < spigot.length() {
        // A spigot that comes out of the adaptor must go into the wheel.
        need!(height = hub.and_then(|h| h.spigot_height()) => SpigotHeight);
        if height > setup.standoff() {
            return Ok(Finding::new(Verdict::Beyond, Reason::SpigotThroughAdaptor, limit.citation())
                .reading(Reading::Length(height), Bound::AtMost(Reading::Length(setup.standoff()))));
        }
    }
    if inner.verdict == Verdict::Within {
        Fit { spigot: own, bore, ring, seats_centre }.judge(limit)
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
                .reading(Reading::Length(height - spacer), Bound::AtLeast(Reading::Length(limit.value())))
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

pub(super) fn fastener_thread(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
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
    let expected = Bound::Equals(Reading::Thread(own));
    let Some(fasteners) = setup.fasteners() else {
        return Ok(Finding::new(Verdict::Within, Reason::HubsOwnFasteners, Citation::DESIGNATION)
            .reading(Reading::Thread(own), expected));
    };
    need!(thread = fasteners.thread() => FastenerThread);
    let (mut verdict, mut reason) = if thread == own {
        (Verdict::Within, Reason::ThreadsAgree)
    } else {
        (Verdict::Beyond, Reason::ThreadsDiffer)
    };
    if let (Some(kind), Verdict::Within) = (fasteners.kind(), verdict) {
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
        Finding::new(verdict, reason, Citation::DESIGNATION).reading(Reading::Thread(thread), expected);
    Ok(on_adaptor(setup, finding))
}

pub(super) fn fastener_seat(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let seat = match setup.fasteners() {
        Some(fasteners) => {
            need!(seat = fasteners.seat() => FastenerSeat, _wheel = setup.seat() => WheelSeat);
            seat
        }
        // The hub's own fasteners hold the adaptor.
        None if setup.adaptor().is_some() => return Err(Input::FastenerSeat.into()),
        None => {
            need!(seat = case.axle.hub().and_then(|h| h.seat()) => HubSeat, _wheel = setup.seat() => WheelSeat);
            seat
        }
    };
    need!(wheel = setup.seat() => WheelSeat);
    Ok(on_adaptor(setup, seats(seat, wheel)))
}

/// The joint between adaptor and hub has fasteners of its own, of which nothing is known here.
fn on_adaptor(setup: &Setup, finding: Finding) -> Finding {
    if setup.adaptor().is_some() {
        finding.marginal_if(Verdict::Within, Reason::InnerJointNotJudged)
    } else {
        finding
    }
}

fn seats(seat: Seat, wheel: Seat) -> Finding {
    let (verdict, reason) = if seat == wheel {
        (Verdict::Within, Reason::SeatShapesAgree)
    } else {
        (Verdict::Beyond, Reason::SeatShapesDiffer)
    };
    Finding::new(verdict, reason, Citation::SEAT_MATCH)
        .reading(Reading::Seat(seat), Bound::Equals(Reading::Seat(wheel)))
}
