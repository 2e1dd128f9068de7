//! How far a tire sinks under its load.

use crate::tire::{Structure, TireSize};
use crate::units::{
    self, FREE_FALL, Force, Length, Mass, Pressure, Ratio, Stiffness, in_kg, in_kpa, in_mm, in_n_per_mm,
};
use crate::{Citation, OutOfRange, Toleranced};

/// How far the formula may be off either way.
const SPREAD: f64 = 0.15;

/// Static loaded radius over half the diameter in published rows: least and greatest.
const RADIAL_SPAN: (f64, f64) = (0.909, 0.948);
const DIAGONAL_SPAN: (f64, f64) = (0.918, 0.955);

/// Why no vertical stiffness is known.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum StiffnessError {
    /// The formula is made for belted radial tires of cars and light trucks.
    OtherTire,
    /// A dimension, pressure or load outside the formula.
    OutOfRange(OutOfRange),
}

crate::text::messages! {
    StiffnessError {
        OtherTire => "vertical stiffness is only known for radial tires of cars and light trucks",
    } passes {
        OutOfRange(OutOfRange),
    }
}

/// The vertical stiffness of a belted radial tire at a pressure, and what follows from it.
///
/// `Kz = 0.00028·P·√(W·OD) + 3.45` kgf/mm with `W = (1.03 − 0.004·Ra)·S1`, `P` in kPa and lengths in mm.
/// Source: Rhyne 2005, from memory, ± 15 %: the bounds of every result are those of the spread.
///
/// ```
/// use beadseat::{tire::TireSize, units::{kg, kpa, mm}};
/// let stiffness = TireSize::parse("205/55R16")?.vertical_stiffness(kpa(250.0))?;
/// let radius = stiffness.loaded_radius(kg(615.0))?;
/// assert!(radius.nominal() > mm(292.0) && radius.nominal() < mm(293.0));
/// // The maker's figure lies between the bounds.
/// assert!(radius.min() < mm(291.0) && radius.max() > mm(293.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VerticalStiffness {
    stiffness: Toleranced<Stiffness>,
    diameter: Toleranced<Length>,
    section_height_mm: f64,
}

impl VerticalStiffness {
    /// From dimensions that were measured or are given in a table: nominal section width, aspect ratio in
    /// percent, overall diameter, cold pressure.
    ///
    /// # Errors
    /// Outside 95 to 495 mm, 20 to 95 %, 300 to 1500 mm and 100 to 1200 kPa.
    ///
    /// ```
    /// use beadseat::{Toleranced, tire::rolling::VerticalStiffness, units::{kpa, mm, percent}};
    /// let measured = Toleranced::within(mm(631.9), mm(1.0));
    /// let k = VerticalStiffness::from_dimensions(mm(205.0), percent(55.0), measured, kpa(250.0))?;
    /// assert!((k.stiffness().nominal() * mm(1.0)).value > 256.1);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn from_dimensions(
        width: Length,
        aspect_ratio: Ratio,
        diameter: Toleranced<Length>,
        pressure: Pressure,
    ) -> Result<Self, OutOfRange> {
        let s1 = OutOfRange::check("section width", in_mm(width), "mm", 95.0, 495.0)?;
        let ra = OutOfRange::check("aspect ratio", units::in_percent(aspect_ratio), "%", 20.0, 95.0)?;
        let od = OutOfRange::check("overall diameter", in_mm(diameter.nominal()), "mm", 300.0, 1500.0)?;
        let kpa = OutOfRange::check("inflation pressure", in_kpa(pressure), "kPa", 100.0, 1200.0)?;
        let w = (1.03 - 0.004 * ra) * s1;
        let kgf_per_mm = 0.000_28 * kpa * libm::sqrt(w * od) + 3.45;
        let stiffness = Toleranced::ordered(1.0 - SPREAD, 1.0, 1.0 + SPREAD)
            .map(|k| units::n_per_mm(k * kgf_per_mm * FREE_FALL));
        Ok(Self { stiffness, diameter, section_height_mm: s1 * ra / 100.0 })
    }

    /// The vertical stiffness, with its spread.
    pub const fn stiffness(&self) -> Toleranced<Stiffness> {
        self.stiffness
    }

    /// How far the tire sinks under a load at rest.
    ///
    /// # Errors
    /// For a load not above zero, or one that presses the tire flat.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::{kg, kpa}, uom::si::length::millimeter};
    /// let stiffness = TireSize::parse("205/55R16")?.vertical_stiffness(kpa(250.0))?;
    /// assert!((stiffness.deflection(kg(615.0))?.nominal().get::<millimeter>() - 23.5).abs() < 0.1);
    /// assert!(stiffness.deflection(kg(9000.0)).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn deflection(&self, load: Mass) -> Result<Toleranced<Length>, OutOfRange> {
        let flat = in_n_per_mm(self.stiffness.min()) * self.section_height_mm / FREE_FALL;
        let kg = OutOfRange::check("load", in_kg(load), "kg", f64::MIN_POSITIVE, flat)?;
        let force: Force = units::base(kg * FREE_FALL);
        // The softest sinks furthest.
        let k = self.stiffness;
        Ok(Toleranced::ordered(force / k.max(), force / k.nominal(), force / k.min()))
    }

    /// The static loaded radius `OD/2 − F/Kz`, with the tolerance of the diameter as well.
    ///
    /// # Errors
    /// As [`VerticalStiffness::deflection`].
    pub fn loaded_radius(&self, load: Mass) -> Result<Toleranced<Length>, OutOfRange> {
        Ok(self.diameter * 0.5 - self.deflection(load)?)
    }

    /// The effective rolling radius under a load: the free radius less a third of the deflection. Source:
    /// notes on vehicle dynamics. The [rolling circumference](TireSize::rolling) of the standards is the
    /// first choice; this shows what load and pressure do to it.
    ///
    /// # Errors
    /// As [`VerticalStiffness::deflection`].
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::{kg, kpa}};
    /// let stiffness = TireSize::parse("205/55R16")?.vertical_stiffness(kpa(250.0))?;
    /// let light = stiffness.rolling_radius(kg(300.0))?;
    /// assert!(stiffness.rolling_radius(kg(600.0))?.nominal() < light.nominal());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn rolling_radius(&self, load: Mass) -> Result<Toleranced<Length>, OutOfRange> {
        Ok(self.diameter * 0.5 - self.deflection(load)? * (1.0 / 3.0))
    }

    /// The source of the stiffness; that of [`VerticalStiffness::rolling_radius`] is
    /// [`Citation::ROLLING_RADIUS_BY_DEFLECTION`].
    pub const fn citation(&self) -> Citation {
        Citation::VERTICAL_STIFFNESS
    }
}

impl TireSize {
    /// The vertical stiffness at a cold pressure.
    ///
    /// # Errors
    /// For diagonal and bias-belted tires, truck sizes, and pressures outside 100 to 1200 kPa.
    ///
    /// ```
    /// use beadseat::{tire::{rolling::StiffnessError, TireSize}, units::kpa};
    /// let diagonal = TireSize::parse("195/65-15")?.vertical_stiffness(kpa(250.0));
    /// assert_eq!(diagonal, Err(StiffnessError::OtherTire));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn vertical_stiffness(&self, pressure: Pressure) -> Result<VerticalStiffness, StiffnessError> {
        let (Self::Metric(size), Some(diameter)) = (self, self.overall_diameter()) else {
            return Err(StiffnessError::OtherTire);
        };
        if self.structure() != Structure::Radial || !size.class().rules().has_stiffness {
            return Err(StiffnessError::OtherTire);
        }
        let aspect = units::percent(f64::from(size.aspect_ratio()));
        Ok(VerticalStiffness::from_dimensions(size.nominal_width(), aspect, diameter, pressure)?)
    }

    /// An estimate of the static loaded radius without load and pressure: the share of half the diameter
    /// that published tables span, 0.909 to 0.948 radial and 0.918 to 0.955 otherwise, on the tolerance
    /// of the diameter. Nominal is the middle of the span.
    ///
    /// For clearance and ride height only: a radial rolls about 5 % further than this radius says.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::mm};
    /// let radius = TireSize::parse("205/55R16")?.loaded_radius_estimate().ok_or("not known")?;
    /// assert!(radius.min() < mm(287.3) && radius.max() > mm(299.5));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn loaded_radius_estimate(&self) -> Option<Toleranced<Length>> {
        let (least, greatest) = match self.structure() {
            Structure::Radial => RADIAL_SPAN,
            Structure::Diagonal | Structure::BiasBelted => DIAGONAL_SPAN,
        };
        let radius = self.overall_diameter()? * 0.5;
        Some(Toleranced::ordered(
            radius.min() * least,
            radius.nominal() * ((least + greatest) / 2.0),
            radius.max() * greatest,
        ))
    }
}
