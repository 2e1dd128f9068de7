//! The load index that a tire of a size can be expected to have.

use super::p_metric::at_one_kpa;
use crate::tire::size::by_aspect;
use crate::tire::{LoadIndex, LoadVersion, Tire, TireSize};
use crate::units::{self, in_kg, in_kpa, in_mm};

/// How many load indices extra load and high load bear more than standard load. 245/40R19 is coined with 94, 98 and 101:
/// trade article and tire maker's page on HL.
const EXTRA: u16 = 4;
const HIGH: u16 = 7;

/// The share of the formula that sizes by overall diameter reach at the pressure of their letter.
const FLOTATION: f64 = 0.71;

/// The letter of a tire that states none: its strongest in wide use. Common practice, no source.
const USUAL_LETTER_KPA: f64 = 550.0;

impl Tire {
    /// The highest load index to be expected of a tire of this size, load version and load range; of commercial, truck and
    /// motorcycle sizes that of the strongest.
    ///
    /// It is the remembered one where a list of [coined sizes](TireSize::listed_in) has it, else
    /// [by estimate](Tire::estimated_load_index). A tire that is described with more is not likely to be found; what is
    /// molded on one that is found decides.
    ///
    /// ```
    /// use beadseat::tire::{LoadIndex, Tire};
    /// let expected = |tire: &str| Tire::parse(tire).map(|tire| tire.expected_load_index());
    /// assert_eq!(expected("205/55R16")?, LoadIndex::new(91));
    /// assert_eq!(expected("205/55R16 XL")?, LoadIndex::new(94));
    /// assert!(expected("165/30R21 XL")? < LoadIndex::new(80));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn expected_load_index(&self) -> Option<LoadIndex> {
        let estimate = self.estimated_load_index();
        let Some(coined) = self.size().coined() else { return estimate };
        if !self.size().rules().is_passenger {
            let Some((range, strongest)) = coined.range.zip(coined.strongest) else {
                return coined.strongest;
            };
            // A weaker load range bears less by as much as the estimate does.
            let of_strongest = self.with_load_range(range).estimated_load_index()?.number();
            let less = of_strongest.saturating_sub(estimate?.number());
            return LoadIndex::new(strongest.number().checked_sub(less)?);
        }
        let more = |index: LoadIndex, steps| LoadIndex::new(index.number() + steps);
        match self.load_version() {
            None | Some(LoadVersion::Light) => {
                coined.standard.or_else(|| LoadIndex::new(coined.strongest?.number().checked_sub(EXTRA)?))
            }
            Some(LoadVersion::Extra) => coined.strongest.or_else(|| more(coined.standard?, EXTRA)),
            Some(LoadVersion::High) => estimate,
        }
    }

    /// The highest load index to be expected by the size alone: a general guide only.
    ///
    /// The published [load formula](super::PMetricFormula) of P-metric sizes, taken for all aspect ratios and classes, at the
    /// reference pressure of each and by a share that no size remembered exceeds: 1.03 of P-metric, 1.07 of metric
    /// passenger sizes of 55 and more, less below down to 0.915 at 30, 0.91 of LT, 1.035 of ST, 0.71 of sizes by overall
    /// diameter, each at the pressure of the load range (550 kPa where none is stated, the higher of two); of the strongest
    /// ply ratings of commercial, truck and motorcycle tires 1.16 at 550, 1.39 at 900 and 0.88 at 290 kPa. Extra load bears
    /// four indices more, high load seven.
    ///
    /// Against 526 rows, of which all but six are from memory, it is never too low, and too high by at most so many
    /// indices: P-metric 1, high load 1, ST 3, metric passenger 5, commercial and sizes by overall diameter 10, motorcycle
    /// 11, LT 13 (wide sizes at their lower pressure), truck 18; the six others by at most 3.
    ///
    /// ```
    /// use beadseat::tire::{LoadIndex, Tire};
    /// assert_eq!(Tire::parse("P225/60R16")?.estimated_load_index(), LoadIndex::new(97));
    /// assert_eq!(Tire::parse("7.50R16C")?.estimated_load_index(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn estimated_load_index(&self) -> Option<LoadIndex> {
        let bears = self.size().rules().bears.as_ref()?;
        let rim = f64::from(self.size().rim_diameter().whole_mm());
        let (factor, share) = match self.size() {
            TireSize::Metric(size) => {
                let (aspect, width) = (size.aspect_ratio(), f64::from(size.width_mm()));
                (at_one_kpa(f64::from(aspect) / 100.0, width, rim), by_aspect(bears.shares, aspect)?)
            }
            TireSize::Flotation(size) => {
                let width = in_mm(size.nominal_width());
                let height = (in_mm(size.stated_diameter()) - rim) / 2.0;
                (at_one_kpa(height / width, width, rim), FLOTATION)
            }
            _ => return None,
        };
        let by_letter = self.reference_pressures_by_letter().map(|(_, higher)| in_kpa(higher));
        let kpa = bears.kpa.or(by_letter).unwrap_or(USUAL_LETTER_KPA);
        let load = units::kg(factor * share * libm::sqrt(kpa));
        let least = LoadIndex::min_for(load)?;
        let number =
            if in_kg(least.load()) > in_kg(load) { least.number().checked_sub(1)? } else { least.number() };
        LoadIndex::new(
            number
                + match self.load_version() {
                    None | Some(LoadVersion::Light) => 0,
                    Some(LoadVersion::Extra) => EXTRA,
                    Some(LoadVersion::High) => HIGH,
                },
        )
    }
}
