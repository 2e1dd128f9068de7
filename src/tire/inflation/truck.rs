//! Reference pressures of truck tires, which vary with the size for one letter.

use crate::literal;
use crate::tire::{LoadRange, TireSize};
use crate::units::{self, Pressure};

/// Sizes, their letters and kilopascals: TRA and ETRTO practice, from memory, with doubt about 225/70R19.5 F and
/// 315/80R22.5 J.
#[rustfmt::skip]
const LISTED: [(TireSize, LoadRange, f64); 10] = [
    (literal!(TireSize, "225/70R19.5"), literal!(LoadRange, "LRF"), 650.0),
    (literal!(TireSize, "225/70R19.5"), literal!(LoadRange, "LRG"), 760.0),
    (literal!(TireSize, "255/70R22.5"), literal!(LoadRange, "LRH"), 830.0),
    (literal!(TireSize, "295/75R22.5"), literal!(LoadRange, "LRG"), 760.0),
    (literal!(TireSize, "11R22.5"),     literal!(LoadRange, "LRG"), 720.0),
    (literal!(TireSize, "11R22.5"),     literal!(LoadRange, "LRH"), 830.0),
    (literal!(TireSize, "315/80R22.5"), literal!(LoadRange, "LRJ"), 830.0),
    (literal!(TireSize, "315/80R22.5"), literal!(LoadRange, "LRL"), 900.0),
    (literal!(TireSize, "425/65R22.5"), literal!(LoadRange, "LRL"), 830.0),
    (literal!(TireSize, "445/50R22.5"), literal!(LoadRange, "LRL"), 830.0),
];

pub(super) fn reference_pressure(size: &TireSize, range: LoadRange) -> Option<Pressure> {
    let listed = LISTED.iter().find(|(listed, letter, _)| listed == size && *letter == range);
    listed.map(|(_, _, kpa)| units::kpa(*kpa))
}
