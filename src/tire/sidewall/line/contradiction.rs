//! What cannot all be true on one sidewall.

use super::SidewallLine;
use crate::molded::{MoldedLoad, MoldedSpeed};
use crate::tire::inflation::letter_pressure::{is_as_printed, is_printed_below};
use crate::tire::{
    LoadIndex, LoadVersion, ServiceDescription, SizeSpeedLetter, SpeedSymbol, Structure, TireSize,
    sidewall::SidewallMark,
};
use crate::units::{in_kg, in_kmh, in_lb, lb};

macro_rules! contradictions {
    ($($variant:ident = $text:literal,)*) => {
        /// Two things on one sidewall that cannot both be true.
        ///
        /// A molded maximum load must be that of an index. Of P, LT, ST and T sizes, whose yearbook has loads of its
        /// own and takes the nearest index, it must only lie between those of the two beside it.
        ///
        /// A maximum load for pairs must have that of a single tire beside it, and its pressure too: 49 CFR 571.119
        /// S6.5(d), as an NHTSA interpretation letter (004609) quotes it.
        ///
        /// A molded maximum speed is held against the symbols of both service descriptions, miles within
        /// what charts differ. On a temporary spare (`T`) it may be below the symbol: the 80 km/h that is
        /// customary there limits the use, not the tire (owner manual). Not looked for: a load range
        /// against a load index, since no rule that we have seen ties a letter to an index; and a load
        /// range against the pressure on truck, `C` and flotation sizes, where the letter does not fix it. Of wide
        /// LT sizes [either pressure](crate::tire::Tire::reference_pressures_by_letter) will do. Pressures agree
        /// within 1 psi, since pounds are printed whole.
        ///
        /// ```
        /// use beadseat::tire::sidewall::LineContradiction;
        /// assert!(LineContradiction::SpeedBelowSize.text().contains("ZR"));
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum LineContradiction { $(#[doc = concat!($text, ".")] $variant,)* }

        impl LineContradiction {
            /// Every contradiction there is, in the order they are declared.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// What is wrong, in a sentence.
            pub const fn text(self) -> &'static str {
                match self { $(Self::$variant => $text,)* }
            }
        }
    };
}

contradictions! {
    SpeedBelowSize = "the letter inside the size (ZR, VR, HR, SR) promises more speed than the speed symbol",
    VersionOfOtherFamily = "XL, LL and HL belong to sizes of cars and motorcycles, not to this family",
    RangeOfOtherFamily = "a load range or ply rating belongs to LT, C, truck and old sizes, not to metric ones of cars",
    LoadAgainstIndex = "the molded maximum load is not the load of the load index",
    DualLoadWithoutSingle = "a maximum load for pairs is molded and none for a single tire, which must stand beside it",
    DualPressureWithoutSingle = "a pressure is molded beside the maximum load for pairs and none beside that of a single tire",
    DualLoadWithoutIndex = "a maximum load for pairs is molded, and the service description has no load index for pairs",
    DualLoadAgainstIndex = "the molded maximum load for pairs is not the load of the second load index",
    DualLoadAboveSingle = "the maximum load of a tire in a pair is above that of a single one",
    RangeAgainstPressure = "the pressure beside the maximum load is none that the load range stands for on this size",
    PressureBelowReference = "the maximum pressure is below the pressure of the maximum load",
    TubelessAndTubeType = "TUBELESS and TUBE TYPE exclude each other",
    SpeedAgainstSymbol = "the molded maximum speed is not the speed of the speed symbol",
    StructureAgainstSize = "RADIAL, DIAGONAL or BIAS BELTED is not the structure of the size",
    StandardLoadAndAnother = "SL excludes XL, LL and HL",
    InsideAndOutside = "INSIDE and OUTSIDE exclude each other on one side of a tire",
    LightAndReinforced = "LL and HL exclude each other",
}

impl SidewallLine {
    /// What cannot all be true in the line.
    ///
    /// ```
    /// use beadseat::tire::sidewall::{LineContradiction, SidewallLine};
    /// let line: SidewallLine = "205/55ZR16 91V MAX LOAD 670 kg".parse()?;
    /// let found: Vec<_> = line.contradictions().collect();
    /// assert_eq!(found, [LineContradiction::SpeedBelowSize, LineContradiction::LoadAgainstIndex]);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn contradictions(&self) -> impl Iterator<Item = LineContradiction> + use<> {
        let line = *self;
        LineContradiction::ALL.iter().copied().filter(move |&c| line.has(c))
    }

    fn has(&self, contradiction: LineContradiction) -> bool {
        let service = self.tire.service;
        let rules = self.tire.size.rules();
        let is_of = |molded: MoldedLoad, index: LoadIndex| match molded {
            _ if rules.has_yearbook_loads => is_nearer_than_neighbours(molded, index),
            MoldedLoad::Kilograms(kg) => (f64::from(kg) - in_kg(index.load())).abs() <= 1.0,
            // The yearbooks' pounds lie on a grid of 5 or 10.
            MoldedLoad::Pounds(lb) => (f64::from(lb) - in_lb(index.load())).abs() <= 10.0,
        };
        // Of two service descriptions, either may be what molded figures belong to.
        let services = || [service, self.second].into_iter().flatten();
        let single_goes =
            |s: &ServiceDescription| self.max_load.is_none_or(|molded| is_of(molded, s.single()));
        let both = |one, other| self.marks.contains(one) && self.marks.contains(other);
        match contradiction {
            LineContradiction::SpeedBelowSize => {
                match (self.tire.size.size_speed_letter(), service.map(|s| s.speed())) {
                    (Some(SizeSpeedLetter::Z), Some(speed)) => speed <= SpeedSymbol::V,
                    (Some(SizeSpeedLetter::V), Some(speed)) => speed <= SpeedSymbol::H,
                    (Some(SizeSpeedLetter::H), Some(speed)) => speed < SpeedSymbol::H,
                    (Some(SizeSpeedLetter::S), Some(speed)) => speed < SpeedSymbol::S,
                    _ => false,
                }
            }
            LineContradiction::VersionOfOtherFamily => self.stray_version.is_some(),
            LineContradiction::RangeOfOtherFamily => self.stray_range.is_some(),
            LineContradiction::LoadAgainstIndex => goes_with_none(services().map(|s| single_goes(&s))),
            LineContradiction::DualLoadWithoutSingle => {
                self.max_load_dual.is_some() && self.max_load.is_none()
            }
            LineContradiction::DualPressureWithoutSingle => {
                self.max_load.is_some() && self.load_pressure.is_none() && self.load_pressure_dual.is_some()
            }
            LineContradiction::DualLoadWithoutIndex => {
                self.max_load_dual.is_some() && goes_with_none(services().map(|s| s.dual().is_some()))
            }
            LineContradiction::DualLoadAgainstIndex => self.max_load_dual.is_some_and(|molded| {
                // Single and dual go with the same description, if the single goes with any.
                let any = services().any(|s| single_goes(&s));
                let of = services().filter(|s| !any || single_goes(s));
                goes_with_none(of.filter_map(|s| s.dual()).map(|dual| is_of(molded, dual)))
            }),
            LineContradiction::DualLoadAboveSingle => {
                self.max_load.zip(self.max_load_dual).is_some_and(|(single, dual)| is_above(dual, single))
            }
            LineContradiction::RangeAgainstPressure => {
                let by_letter = match self.tire.size {
                    TireSize::Metric(_) => self.tire.reference_pressures_by_letter(),
                    _ => None,
                };
                by_letter.zip(self.load_pressure()).is_some_and(|((lower, higher), molded)| {
                    ![lower, higher].iter().any(|&of_letter| is_as_printed(molded.pressure(), of_letter))
                })
            }
            LineContradiction::PressureBelowReference => self.max_pressure.is_some_and(|most| {
                let mut of_loads = [self.load_pressure, self.load_pressure_dual].into_iter().flatten();
                of_loads.any(|at| is_printed_below(most.pressure(), at.pressure()))
            }),
            LineContradiction::TubelessAndTubeType => both(SidewallMark::Tubeless, SidewallMark::TubeType),
            LineContradiction::StructureAgainstSize => [
                (SidewallMark::Radial, Structure::Radial),
                (SidewallMark::Diagonal, Structure::Diagonal),
                (SidewallMark::BiasBelted, Structure::BiasBelted),
            ]
            .into_iter()
            .any(|(mark, structure)| self.marks.contains(mark) && self.tire.size.structure() != structure),
            LineContradiction::StandardLoadAndAnother => {
                self.marks.contains(SidewallMark::StandardLoad)
                    && (self.tire.load_version().is_some() || self.stray_version.is_some())
            }
            LineContradiction::InsideAndOutside => both(SidewallMark::Inside, SidewallMark::Outside),
            LineContradiction::SpeedAgainstSymbol => self.max_speed.is_some_and(|molded| {
                goes_with_none(services().map(|s| agrees(molded, s.speed(), rules.may_mold_lower_speed)))
            }),
            LineContradiction::LightAndReinforced => {
                self.tire.version == Some(LoadVersion::Light)
                    && self.tire.load_version() == Some(LoadVersion::High)
            }
        }
    }
}

/// Whether a molded load is above another, by more than rounding where they are in different units: yearbooks print
/// pounds in steps of 5 and 10.
fn is_above(molded: MoldedLoad, other: MoldedLoad) -> bool {
    let rounding = match (molded, other) {
        (MoldedLoad::Kilograms(_), MoldedLoad::Kilograms(_))
        | (MoldedLoad::Pounds(_), MoldedLoad::Pounds(_)) => lb(0.0),
        _ => lb(10.0),
    };
    molded.load() > other.load() + rounding
}

/// Whether a molded load lies between those of the next lower and the next higher index.
fn is_nearer_than_neighbours(molded: MoldedLoad, index: LoadIndex) -> bool {
    let load = in_kg(molded.load());
    let of = |number: u16| LoadIndex::new(number).map(|index| in_kg(index.load()));
    let below = index.number().checked_sub(1).and_then(of).unwrap_or(0.0);
    let above = of(index.number() + 1).unwrap_or(f64::INFINITY);
    below < load && load < above
}

/// Whether there are any to go with, and a molded figure goes with none.
fn goes_with_none(of: impl Iterator<Item = bool>) -> bool {
    let mut of = of.peekable();
    of.peek().is_some() && !of.any(|goes| goes)
}

/// Whether a molded maximum speed goes with a speed symbol. All speeds are whole; the half keeps the
/// conversion of units from deciding.
fn agrees(molded: MoldedSpeed, symbol: SpeedSymbol, may_be_lower: bool) -> bool {
    let (above, tolerance) = match molded {
        MoldedSpeed::KilometresPerHour(kmh) => (f64::from(kmh) - in_kmh(symbol.speed()), 1.5),
        // Charts print up to 4 mph apart for the fastest symbols, and 1 for the others.
        MoldedSpeed::MilesPerHour(mph) => {
            let most = if symbol >= SpeedSymbol::W { 4.5 } else { 1.5 };
            (f64::from(mph) - f64::from(symbol.printed_mph()), most)
        }
    };
    (above <= tolerance || symbol.is_open_ended()) && (above >= -tolerance || may_be_lower)
}
