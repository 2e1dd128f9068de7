//! What a wheel says, and its parts alone.

use crate::Toleranced;
use crate::marking::fact_value::FactValue;
use crate::marking::kind::Marking;
use crate::marking::term::Term;
use crate::rim::SeatTaper;
use crate::units::Length;
use crate::wheel::{Wheel, WheelMark, WheelStamp};

pub(super) const WHEEL: &[Term] = &[
    Term::RimWidth,
    Term::WidthBetweenFlanges,
    Term::RimDiameter,
    Term::Contour,
    Term::Hump,
    Term::MultiPiece,
    Term::Inset,
    Term::Backspacing,
    Term::BackspacingSpan,
    Term::InsetByBackspacing,
    Term::FlangeWidth,
    Term::BoltCircle,
    Term::SecondBoltCircle,
    Term::Bore,
    Term::SpecifiedDiameter,
];
pub(super) const STAMP: &[Term] = &[
    Term::Thread,
    Term::Seat,
    Term::WheelLoad,
    Term::Made,
    Term::WheelApproval,
    Term::Permit,
    Term::Marks,
    Term::Origin,
];

pub(super) fn of_wheel(wheel: &Wheel, term: Term) -> Option<FactValue<'static>> {
    let size = wheel.size();
    let flange = || size.flange_width();
    Some(match term {
        Term::RimWidth if size.width().millimetres().is_some() => return None,
        Term::RimWidth => FactValue::RimWidth(size.width()),
        Term::WidthBetweenFlanges => FactValue::Computed(size.width().length()),
        // One of millimetres is in the canonical text.
        Term::RimDiameter if size.diameter().seat_taper() == SeatTaper::Millimetric => return None,
        Term::RimDiameter => FactValue::RimDiameter(size.diameter()),
        Term::Contour => FactValue::Word(size.contour()?.mark()),
        Term::Hump => FactValue::Word(size.hump()?.mark()),
        Term::MultiPiece => FactValue::Is(size.is_multi_piece()),
        Term::Inset => FactValue::Length(wheel.inset()?.length()),
        Term::Backspacing => match wheel.backspacing() {
            Some(stamped) => FactValue::Length(stamped.length()),
            None => FactValue::Computed(wheel.inset()?.backspacing(size.width(), flange().nominal())),
        },
        Term::BackspacingSpan => {
            let without = wheel.inset()?.backspacing(size.width(), Length::default());
            FactValue::span(Toleranced::exact(without) + flange())
        }
        // The wider the flange, the less the inset.
        Term::InsetByBackspacing => {
            let stamped = wheel.backspacing()?;
            let with = |flange| stamped.inset(size.width(), flange).ok().map(|inset| inset.length());
            let flange = flange();
            FactValue::Range {
                min: with(flange.max()),
                nominal: with(flange.nominal()),
                max: with(flange.min()),
            }
        }
        Term::FlangeWidth => FactValue::span(flange()),
        Term::BoltCircle => FactValue::BoltCircle(wheel.bolt_circle()?),
        Term::SecondBoltCircle => FactValue::BoltCircle(wheel.second_bolt_circle()?),
        Term::Bore => FactValue::Length(wheel.bore()?.length()),
        Term::SpecifiedDiameter => FactValue::Computed(size.diameter().specified()?.nominal()),
        _ => return None,
    })
}

pub(super) fn of_stamp(stamp: &WheelStamp, term: Term, n: usize) -> Option<FactValue<'_>> {
    Some(match term {
        Term::Thread => FactValue::Thread(stamp.thread()?),
        Term::Seat => FactValue::Seat(stamp.seat()?),
        Term::WheelLoad => FactValue::Mass(stamp.load()?.load()),
        Term::Made => FactValue::Made(stamp.date()?),
        Term::WheelApproval => {
            let (country, number) = stamp.approval()?;
            FactValue::Approval { country, number }
        }
        Term::Permit => FactValue::Whole(stamp.permit()?),
        Term::Marks => FactValue::Word(WheelMark::ALL.iter().filter(|mark| stamp.has(**mark)).nth(n)?.mark()),
        Term::Origin => FactValue::Word(stamp.origin()?),
        _ => return of_wheel(&stamp.wheel(), term),
    })
}

/// A part of a wheel by itself.
pub(super) fn of_part(marking: &Marking, term: Term, n: usize) -> Option<FactValue<'_>> {
    Some(match (marking, term) {
        (Marking::Inset(inset), Term::Inset) => FactValue::Length(inset.length()),
        (Marking::Backspacing(stamped), Term::Backspacing) => FactValue::Length(stamped.length()),
        (Marking::Bore(bore), Term::Bore) => FactValue::Length(bore.length()),
        (Marking::Seat(seat), Term::ConeAngle) => FactValue::Angle(seat.cone_angle()?),
        (Marking::Seat(seat), Term::BallRadius) => FactValue::Length(seat.ball_radius()?),
        (Marking::Seat(seat), Term::Centring) => FactValue::Is(seat.is_centring()),
        (Marking::BoltCircle(holes), Term::Count) => FactValue::Whole(u32::from(holes.count())),
        (Marking::BoltCircle(holes), Term::Diameter) => FactValue::Length(holes.diameter()),
        (Marking::BoltCircle(holes), Term::Adjacent) => FactValue::Computed(holes.chord(1)?),
        (Marking::BoltCircle(holes), Term::LongestChord) => FactValue::Computed(holes.longest_chord()),
        (Marking::DualDrilling(both), Term::Count) => FactValue::Whole(u32::from(both.circles()[0].count())),
        (Marking::DualDrilling(both), Term::Diameters) => {
            FactValue::Length(both.circles().get(n)?.diameter())
        }
        (Marking::DualDrilling(both), Term::BetweenNeighbours) => {
            FactValue::Computed(both.between_neighbours())
        }
        (Marking::Thread(thread), Term::Major) => FactValue::Length(thread.major_diameter()),
        (Marking::Thread(thread), Term::Pitch) => FactValue::Length(thread.pitch_length()),
        (Marking::Thread(thread), Term::StressArea) => FactValue::Area(thread.stress_area()),
        _ => return None,
    })
}
