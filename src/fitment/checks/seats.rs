//! Do the seats of the fasteners and of the wheel have one shape?

use super::definition::{Definition, DependsOn, Harm, Rules, Run};
use super::fasteners::on_adaptor;
use crate::Citation;
use crate::fitment::case::{Case, need};
use crate::fitment::check::{Check, CheckId, Input, Reason, Verdict};
use crate::fitment::finding::{Finding, Found};
use crate::fitment::told;
use crate::fitment::value::{Bound, Value};
use crate::step::Teller;
use crate::wheel::Seat;

pub(super) const FASTENER_SEAT: Definition =
    Definition::new(CheckId::FastenerSeat, Harm::ComesOff, Run::Axle(fastener_seat), DependsOn::Pair)
        .vital()
        .of(Rules::BoltedHub);

fn fastener_seat(case: &Case<'_>) -> Found {
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

fn seats(seat: Seat, wheel: Seat) -> Finding {
    let (verdict, reason) = if seat == wheel {
        (Verdict::Within, Reason::SeatShapesAgree)
    } else {
        (Verdict::Beyond, Reason::SeatShapesDiffer)
    };
    Finding::new(verdict, reason, Citation::SEAT_MATCH)
        .reading(Value::Seat(seat), Bound::Equals(Value::Seat(wheel)))
}

pub(in crate::fitment) fn tell_fastener_seat(check: &Check, tell: &mut Teller<'_>) -> Option<()> {
    told::as_given(check, [("seat in the wheel", None), ("seat of the fasteners", None)], tell)
}
