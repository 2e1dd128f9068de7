//! The pressures that a load range letter may stand for.

use crate::tire::size::LetterPressures;
use crate::tire::{Tire, TireSize};
use crate::units::{self, Pressure, at_most, in_mm, in_psi};

/// The widest nominal section of LT sizes known to keep the pressures of narrow ones. At 305 mm they are known to
/// have lower ones, and where between the change lies is not known.
const WIDEST_NARROW_MM: f64 = 285.0;

/// Letters, and the lower pressure that each has on wide LT sizes, kPa. D and E: a maker's sheet with LT305/70R16,
/// LT315/75R16 and LT385/70R16. There it is that of one letter less in pounds a square inch, and so it is taken to
/// be of C, F and G: derived.
const WIDE_LIGHT_TRUCK: [(char, f64); 5] =
    [('C', 240.0), ('D', 345.0), ('E', 448.0), ('F', 550.0), ('G', 650.0)];

impl Tire {
    /// The cold pressures at which the tire may carry its load index by its load range letter alone, the lower
    /// first; the same twice where the letter leaves only one. `None` without a letter, or where it fixes none:
    /// on truck and commercial sizes, and for letters whose pressure is not known.
    ///
    /// Two are left of LT sizes by overall diameter, and of other LT sizes that are wider than 285 mm: wide ones
    /// have the lower pressure, from some width between 285 and 305 mm. What rests on the letter is then settled
    /// only if it is so at both. The figure molded on the tire decides.
    ///
    /// Source: as of [LT](crate::tire::LoadRange::lt_reference_pressure),
    /// [by overall diameter](crate::tire::LoadRange::flotation_reference_pressures) and
    /// [ST](crate::tire::LoadRange::st_reference_pressure); the lower one of wide sizes a maker's sheet for D and E,
    /// derived for C, F and G.
    ///
    /// ```
    /// use beadseat::{tire::Tire, units::kpa};
    /// let of = |text: &str| Tire::parse(text).map(|tire| tire.reference_pressures_by_letter());
    /// assert_eq!(of("LT245/75R17 121/118S LRE")?, Some((kpa(550.0), kpa(550.0))));
    /// assert_eq!(of("LT305/70R16 124/121Q LRE")?, Some((kpa(448.0), kpa(550.0))));
    /// assert_eq!(of("35x12.50R17LT 121Q LRD")?, Some((kpa(340.0), kpa(450.0))));
    /// assert_eq!(of("LT245/75R17 121/118S")?, None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn reference_pressures_by_letter(&self) -> Option<(Pressure, Pressure)> {
        let range = self.load_range()?;
        let alone = |pressure: Pressure| (pressure, pressure);
        match self.size.rules().letter_pressures? {
            LetterPressures::LightTruck if matches!(self.size, TireSize::Flotation(_)) => {
                range.flotation_reference_pressures()
            }
            LetterPressures::LightTruck if is_wide(self.size) => {
                let lower = WIDE_LIGHT_TRUCK.iter().find(|(letter, _)| *letter == range.letter());
                lower.map(|(_, kpa)| units::kpa(*kpa)).zip(range.lt_reference_pressure())
            }
            LetterPressures::LightTruck => range.lt_reference_pressure().map(alone),
            LetterPressures::Trailer => range.st_reference_pressure().map(alone),
        }
    }
}

/// Sizes by load letter state no width; none of them is known to be so wide.
fn is_wide(size: TireSize) -> bool {
    size.nominal_width().is_some_and(|width| in_mm(width) > WIDEST_NARROW_MM)
}

/// Whether a printed pressure is the one of a designation: tires and wheels print whole pounds a square inch or
/// kilopascals made of them, so that 345 and 350 kPa are both 50 psi.
pub(crate) fn is_as_printed(printed: Pressure, designated: Pressure) -> bool {
    at_most((in_psi(printed) - in_psi(designated)).abs(), ROUNDING_PSI)
}

/// Whether a printed pressure is below that of a designation by more than its rounding.
pub(crate) fn is_printed_below(printed: Pressure, designated: Pressure) -> bool {
    printed < designated && !is_as_printed(printed, designated)
}

/// Common practice, no source.
const ROUNDING_PSI: f64 = 1.0;
