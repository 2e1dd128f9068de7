//! Reference pressures of truck tires, which vary with the size for one letter.

use crate::literal;
use crate::tire::size::{SizeKey, find, sorted};
use crate::tire::{LoadRange, TireSize};
use crate::units::{self, Pressure};

/// A size, and letters with their kilopascals.
type Letters = (SizeKey, &'static [(LoadRange, f64)]);

const fn by_letter(size: &str, letters: &'static [(LoadRange, f64)]) -> Letters {
    (TireSize::listed(size).key(), letters)
}

const F: LoadRange = literal!(LoadRange, "LRF");
const G: LoadRange = literal!(LoadRange, "LRG");
const H: LoadRange = literal!(LoadRange, "LRH");
const J: LoadRange = literal!(LoadRange, "LRJ");
const L: LoadRange = literal!(LoadRange, "LRL");

/// TRA and ETRTO practice, from memory, with doubt about 225/70R19.5 F and 315/80R22.5 J.
#[rustfmt::skip]
static LISTED: &[Letters] = &sorted([
    by_letter("225/70R19.5", &[(F, 650.0), (G, 760.0)]),
    by_letter("255/70R22.5", &[(H, 830.0)]),
    by_letter("295/75R22.5", &[(G, 760.0)]),
    by_letter("11R22.5", &[(G, 720.0), (H, 830.0)]),
    by_letter("315/80R22.5", &[(J, 830.0), (L, 900.0)]),
    by_letter("425/65R22.5", &[(L, 830.0)]),
    by_letter("445/50R22.5", &[(L, 830.0)]),
]);

pub(super) fn reference_pressure(size: &TireSize, range: LoadRange) -> Option<Pressure> {
    let letters = find(LISTED, size.key())?;
    letters.iter().find(|(letter, _)| *letter == range).map(|(_, kpa)| units::kpa(*kpa))
}
