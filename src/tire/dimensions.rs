//! Overall diameter and section width.

use super::{MetricClass, Structure, TireSize};
use crate::rim::RimWidth;
use crate::units::{self, Length};
use crate::{Citation, Toleranced};

/// Share of the nominal width that its minimum may lie below it: common practice, no source.
const WIDTH_BELOW: f64 = 0.04;

/// `K` of UN R30 §6.1.1.1: change of section width for a change of rim width.
const WIDTH_PER_RIM: f64 = 0.4;

impl TireSize {
    /// The overall diameter `d + 2H` of a new tire, with the limits of the UN regulations.
    ///
    /// `Dmin = d + 2H·0.97`, `Dmax = d + 2H·b`; `b` is 1.04 for radial tires, and 1.08 (UN R30) or 1.07
    /// (UN R54) for diagonal and bias-belted ones. Source: UN R30 §6.1.2 and §6.1.5, UN R54 §6.1.2 and
    /// §6.1.5, from memory.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::mm, uom::si::length::millimeter};
    /// let d = TireSize::parse("205/55R16")?.overall_diameter();
    /// assert_eq!(d.nominal(), mm(632.0));
    /// assert!((d.min().get::<millimeter>() - 625.22).abs() < 1e-9);
    /// assert!((d.max().get::<millimeter>() - 641.04).abs() < 1e-9);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn overall_diameter(&self) -> Toleranced<Length> {
        let Self::Metric(size) = self;
        let d = f64::from(size.rim_diameter().whole_mm());
        let both_heights = 2.0 * f64::from(size.height_mm());
        let b = match size.structure() {
            Structure::Radial => 1.04,
            Structure::Diagonal | Structure::BiasBelted if size.class().is_passenger() => 1.08,
            Structure::Diagonal | Structure::BiasBelted => 1.07,
        };
        Toleranced::ordered(0.97, 1.0, b).map(|share| units::mm(d + both_heights * share))
    }

    /// The same for a snow tire, whose largest diameter may be 1 % larger. Source: UN R30 §6.1.5, from
    /// memory.
    ///
    /// ```
    /// let size = beadseat::tire::TireSize::parse("205/55R16")?;
    /// assert_eq!(size.overall_diameter_snow().max(), size.overall_diameter().max() * 1.01);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn overall_diameter_snow(&self) -> Toleranced<Length> {
        let d = self.overall_diameter();
        Toleranced::ordered(d.min(), d.nominal(), d.max() * 1.01)
    }

    /// The section height, rounded to the millimetre as the regulations do.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::mm};
    /// assert_eq!(TireSize::parse("225/45R17")?.section_height(), mm(101.0));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn section_height(&self) -> Length {
        match self {
            Self::Metric(size) => size.section_height(),
        }
    }

    /// The *theoretical* rim width, on which the section width is the nominal one: 0.70 of it for
    /// aspect ratios of 50 and more, 0.85 below, 0.75 for truck sizes.
    ///
    /// Not the [measuring rim](TireSize::measuring_rim). Source: ETRTO, from memory.
    fn theoretical_rim_mm(&self) -> f64 {
        let Self::Metric(size) = self;
        let x = match (size.class(), size.aspect_ratio()) {
            (MetricClass::Truck, _) => 0.75,
            (_, 50..) => 0.70,
            _ => 0.85,
        };
        x * f64::from(size.width_mm())
    }

    /// The section width on a rim: `S = S1 + 0.4·(A − A1)`, rounded to the millimetre.
    ///
    /// The maximum is the overall width that the regulations allow ([`TireSize::overall_width_citation`]), without
    /// a rim protector, which may add 8 mm. The minimum is 4 % below nominal (common practice, no
    /// source). Source: UN R30 and R54 §6.1.1.1; the theoretical rim `A1` from memory.
    ///
    /// ```
    /// use beadseat::{rim::RimWidth, tire::TireSize, units::mm};
    /// let size = TireSize::parse("205/55R16")?;
    /// let on_its_measuring_rim = size.section_width_on(RimWidth::parse("6.5")?);
    /// assert_eq!(on_its_measuring_rim.nominal(), mm(214.0));
    /// assert_eq!(on_its_measuring_rim.max(), mm(214.0 * 1.04));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn section_width_on(&self, rim: RimWidth) -> Toleranced<Length> {
        let Self::Metric(size) = self;
        let rim_mm = f64::from(rim.quarters()) * 6.35;
        let width = f64::from(size.width_mm()) + WIDTH_PER_RIM * (rim_mm - self.theoretical_rim_mm());
        let nominal = libm::floor(width + 0.5);
        Toleranced::ordered(1.0 - WIDTH_BELOW, 1.0, 1.0 + self.overall_width().0)
            .map(|share| units::mm(nominal * share))
    }

    /// How far the overall width may exceed the section width, as a share of it, and by which rule:
    /// radial +4 %, diagonal and bias-belted +6 % (UN R30 and R54 §6.1.4, from memory); P-metric and LT
    /// +7 % (49 CFR 571.139, from memory).
    fn overall_width(&self) -> (f64, Citation) {
        let Self::Metric(size) = self;
        match (size.class(), size.structure()) {
            (MetricClass::PMetric | MetricClass::LightTruck, _) => (0.07, Citation::OVERALL_WIDTH_US),
            (_, Structure::Radial) => (0.04, Citation::OVERALL_WIDTH),
            (_, Structure::Diagonal | Structure::BiasBelted) => (0.06, Citation::OVERALL_WIDTH),
        }
    }

    /// The source of the maximum of [`TireSize::section_width_on`].
    ///
    /// ```
    /// use beadseat::{Citation, tire::TireSize};
    /// let size = TireSize::parse("LT245/75R17")?;
    /// assert_eq!(size.overall_width_citation(), Citation::OVERALL_WIDTH_US);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn overall_width_citation(&self) -> Citation {
        self.overall_width().1
    }

    /// The source of [`TireSize::overall_diameter`].
    ///
    /// ```
    /// use beadseat::tire::TireSize;
    /// assert!(TireSize::parse("205/55R16")?.overall_diameter_citation().is_from_memory());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn overall_diameter_citation(&self) -> Citation {
        Citation::OVERALL_DIAMETER
    }
}
