//! Does the wheel belong on the hub, and what holds it there?

use crate::Citation;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Input, Missing, Reason, Verdict};
use crate::fitment::finding::{Finding, Found, no_more};
use crate::fitment::reading::{Bound, Reading};
use crate::units::{in_mm, mm};
use crate::vehicle::Fastening;
use crate::wheel::{FastenerKind, NEAR_MISS, Seat};

pub(super) fn bolt_circle(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    need!(
        hub = case.axle.hub().and_then(|h| h.bolt_circle()) => HubBoltCircle,
        wheel = setup.wheel().bolt_circle() => WheelBoltCircle,
    );
    let off = (hub.diameter() - wheel.diameter()).abs();
    let (verdict, reason) = if hub == wheel {
        (Verdict::Within, Reason::HolesAgree)
    } else if hub.count() != wheel.count() {
        (Verdict::Beyond, Reason::HoleCountDiffers)
    } else if no_more(in_mm(off), in_mm(NEAR_MISS)) {
        (Verdict::Beyond, Reason::HolesNearMiss)
    } else {
        (Verdict::Beyond, Reason::HolesDiffer)
    };
    Ok(Finding::new(verdict, reason, Citation::DESIGNATION)
        .reading(Reading::BoltCircle(wheel), Bound::Equals(Reading::BoltCircle(hub))))
}

pub(super) fn centre_bore(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let hub = case.axle.hub();
    need!(spigot = hub.and_then(|h| h.spigot()) => HubSpigot, bore = setup.wheel().bore() => WheelBore);
    // Without the spigot, the seats alone centre the wheel, if they do.
    let uncentred = |reason| match setup.seat() {
        Some(seat) if seat.is_centring() => Ok((Verdict::Marginal, reason)),
        Some(_) => Ok((Verdict::Beyond, Reason::NoCentring)),
        None => Err(Missing::from(Input::WheelSeat)),
    };

    // How much of the spigot a spacer leaves.
    let mut short = None;
    if let Some(spacer) = setup.spacer().filter(|s| s.value > 0.0) {
        need!(height = hub.and_then(|h| h.spigot_height()) => SpigotHeight);
        let limit = case.limits.spigot_engagement();
        let engaged = Reading::Length(height - spacer);
        let reading = |(verdict, reason)| {
            Finding::new(verdict, reason, limit.citation())
                .reading(engaged, Bound::AtLeast(Reading::Length(limit.value())))
        };
        if spacer >= height {
            return Ok(reading(uncentred(Reason::SpacerHidesSpigot)?));
        }
        if !no_more(in_mm(limit.value()), in_mm(height - spacer)) {
            short = Some(reading((Verdict::Marginal, Reason::SpigotShort)));
        }
    }

    let play = Reading::Length(spigot.play_in(bore));
    let none = Reading::Length(mm(0.0));
    let limit = case.limits.centring_play();
    let finding =
        |verdict, reason, bound| Finding::new(verdict, reason, limit.citation()).reading(play, bound);
    if bore.length() < spigot.length() {
        return Ok(finding(Verdict::Beyond, Reason::BoreTooSmall, Bound::AtLeast(none)));
    }
    if let Some(short) = short {
        return Ok(short);
    }
    let centring = Bound::Between(none, Reading::Length(limit.value()));
    Ok(if no_more(in_mm(spigot.play_in(bore)), in_mm(limit.value())) {
        finding(Verdict::Within, Reason::HubCentric, centring)
    } else if setup.ring() == Some(true) {
        Finding::new(Verdict::Within, Reason::RingCentres, limit.citation())
    } else {
        let (verdict, reason) = uncentred(Reason::RingNeeded)?;
        finding(verdict, reason, centring)
    })
}

pub(super) fn fastener_thread(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    let hub = case.axle.hub();
    need!(hub_thread = hub.and_then(|h| h.thread()) => HubThread);
    let expected = Bound::Equals(Reading::Thread(hub_thread));
    let Some(fasteners) = setup.fasteners() else {
        return Ok(Finding::new(Verdict::Within, Reason::HubsOwnFasteners, Citation::DESIGNATION)
            .reading(Reading::Thread(hub_thread), expected));
    };
    need!(thread = fasteners.thread() => FastenerThread);
    let (mut verdict, mut reason) = if thread == hub_thread {
        (Verdict::Within, Reason::ThreadsAgree)
    } else {
        (Verdict::Beyond, Reason::ThreadsDiffer)
    };
    if let (Some(kind), Verdict::Within) = (fasteners.kind(), verdict) {
        need!(fastening = hub.and_then(|h| h.fastening()) => HubFastening);
        if (fastening == Fastening::Bolt) != (kind == FastenerKind::Bolt) {
            (verdict, reason) = (Verdict::Beyond, Reason::FastenerKindDiffers);
        }
    }
    Ok(Finding::new(verdict, reason, Citation::DESIGNATION).reading(Reading::Thread(thread), expected))
}

pub(super) fn fastener_seat(case: &Case<'_>) -> Found {
    let setup = case.proposed()?;
    if let Some(fasteners) = setup.fasteners() {
        need!(seat = fasteners.seat() => FastenerSeat, wheel = setup.seat() => WheelSeat);
        return Ok(seats(seat, wheel));
    }
    need!(seat = case.axle.hub().and_then(|h| h.seat()) => HubSeat, wheel = setup.seat() => WheelSeat);
    Ok(seats(seat, wheel))
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
