//! Where a wheel may stand beside what moves, and where it stands best.

use crate::fitment::space::{InsetRange, RangeEnd};
use crate::fitment::{CheckId, Tried};
use crate::units::in_mm;
use crate::wheel::Inset;

/// The setups that are tried on both axles, at one inset.
pub(super) type Both<'t> = [Option<Tried<'t>>; 2];

/// In hundredths of a millimetre: what moves is looked at in steps of half a millimetre.
const GRID: i32 = 50;

/// What the bracket of a certified clearance may be wide, in millimetres.
const BRACKET: f64 = 0.1;

/// Whether a wheel touches something that moves at an inset in hundredths of a millimetre, and how many of those it
/// may be moved at least before that changes.
fn look(both: &mut Both<'_>, at: i32) -> (bool, i32) {
    let inset = Inset::from_hundredths(at);
    let (mut clears, mut touches): (f64, Option<f64>) = (f64::INFINITY, None);
    for movement in both.iter_mut().flatten().filter_map(|tried| tried.movement_at(inset)) {
        let stays = in_mm(movement.stays);
        if movement.is_beyond {
            touches = Some(touches.map_or(stays, |other| other.max(stays)));
        } else {
            clears = clears.min(stays);
        }
    }
    let stays = touches.unwrap_or(clears) - BRACKET;
    (touches.is_some(), (stays.clamp(0.0, 600.0) * 100.0) as i32)
}

/// The next place to look at: on the grid, no nearer than the next point of it, and no further than nothing changes.
fn beyond(at: i32, stays: i32, last: i32) -> i32 {
    let next = (at.div_euclid(GRID) + 1) * GRID;
    let far = (at + stays).div_euclid(GRID) * GRID;
    next.max(far).min(last)
}

/// The last place from one that does, toward one that does not.
fn edge(both: &mut Both<'_>, mut clears: i32, mut touches: i32) -> i32 {
    while (clears - touches).abs() > 1 {
        let middle = touches + (clears - touches) / 2;
        if look(both, middle).0 { touches = middle } else { clears = middle }
    }
    clears
}

/// The first interval of a range in which the wheels clear what moves.
pub(super) fn first_run(both: &mut Both<'_>, range: InsetRange) -> Option<InsetRange> {
    if !both.iter().flatten().any(Tried::has_surroundings) {
        return Some(range);
    }
    let swept = |at| RangeEnd::new(Inset::from_hundredths(at), Some(CheckId::SweptClearance));
    let last = range.max().value().hundredths();
    let (mut at, mut touched) = (range.min().value().hundredths(), None);
    let mut stays = loop {
        let (touches, stays) = look(both, at);
        if !touches {
            break stays;
        }
        if at >= last {
            return None;
        }
        touched = Some(at);
        at = beyond(at, stays, last);
    };
    let least = match touched {
        Some(touches) => swept(edge(both, at, touches)),
        None => range.min(),
    };
    loop {
        if at >= last {
            return Some(InsetRange::between(least, range.max()));
        }
        let next = beyond(at, stays, last);
        let (touches, more) = look(both, next);
        if touches {
            return Some(InsetRange::between(least, swept(edge(both, at, next))));
        }
        (at, stays) = (next, more);
    }
}

/// The whole millimetre of a range at which the checks of a wheel at rest leave most where they leave least, which has
/// one top; where they say nothing, the one nearest to another. Nothing where the range holds none.
pub(super) fn best(both: &mut Both<'_>, range: InsetRange, near: Inset) -> Option<Inset> {
    let mut low = (range.min().value().hundredths() + 99).div_euclid(100);
    let mut high = range.max().value().hundredths().div_euclid(100);
    if low > high {
        return None;
    }
    let whole = |millimetres: i32| Inset::from_hundredths(millimetres * 100);
    let mut left = |millimetres| {
        let of_axle = |tried: &mut Tried<'_>| tried.least_share_at(whole(millimetres));
        both.iter_mut().flatten().filter_map(of_axle).reduce(f64::min)
    };
    if left(low).is_none() {
        return Some(whole((near.hundredths() / 100).clamp(low, high)));
    }
    while low < high {
        let middle = low + (high - low) / 2;
        if left(middle + 1) > left(middle) { low = middle + 1 } else { high = middle }
    }
    Some(whole(low))
}
