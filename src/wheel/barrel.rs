//! The inside of a rim: the room for the brake.

use crate::rim::RimDiameter;
use crate::units::{Length, in_mm};
use crate::wheel::WheelSize;
use crate::{Citation, OutOfRange, Toleranced};

/// Why the barrel of a rim is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum BarrelError {
    /// No standard dimensions are known for the rim; they can be measured.
    NotKnown,
    /// A dimension that no rim has.
    OutOfRange(OutOfRange),
}

crate::text::messages! {
    BarrelError {
        NotKnown => "the dimensions of this rim are not known",
    } passes {
        OutOfRange(OutOfRange),
    }
}

/// The barrel of a rim: its diameters outside over the flanges, and inside under the bead seat and at the
/// well, which is the narrowest.
///
/// A standard gives the *least* depth of the well only, so it gives the **largest** barrel that the rim can
/// have, but for the shallower well that [`Contour::well_depth`](crate::rim::Contour::well_depth) names. Most
/// wells are deeper. A clearance that rests on the standard alone is optimistic: see [`Barrel::is_largest`],
/// and measure the wheel.
///
/// ```
/// use beadseat::{Toleranced, units::mm, wheel::{Barrel, WheelSize}};
/// let size = WheelSize::parse("6Jx15")?;
/// let barrel = Barrel::of_standard(&size, Toleranced::exact(mm(4.0)))?;
/// assert!((barrel.under_seat().nominal() - mm(372.2)).abs() < mm(1e-9));
/// assert!((barrel.at_well().nominal() - mm(337.6)).abs() < mm(1e-9));
/// assert!((barrel.brake_envelope_radius().nominal() - mm(168.8)).abs() < mm(1e-9));
/// assert!(barrel.is_largest());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Barrel {
    seat: Toleranced<Length>,
    flange_height: Toleranced<Length>,
    well_depth: Toleranced<Length>,
    thickness: Toleranced<Length>,
    largest: bool,
}

impl Barrel {
    /// Of a rim as the standard has it, with metal of a thickness, which no standard fixes.
    ///
    /// # Errors
    /// If the contour is not stamped, or its flange or well is not known ([`Contour::flange_height`],
    /// [`Contour::well_depth`]); for a thickness outside 0.5 to 30 mm.
    ///
    /// [`Contour::flange_height`]: crate::rim::Contour::flange_height
    /// [`Contour::well_depth`]: crate::rim::Contour::well_depth
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::{Barrel, BarrelError, WheelSize}};
    /// let truck = WheelSize::parse("8.25x22.5")?;
    /// let barrel = Barrel::of_standard(&truck, Toleranced::exact(mm(6.0)));
    /// assert_eq!(barrel, Err(BarrelError::NotKnown));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn of_standard(size: &WheelSize, thickness: Toleranced<Length>) -> Result<Self, BarrelError> {
        let contour = size.contour().ok_or(BarrelError::NotKnown)?;
        let height = contour.flange_height().ok_or(BarrelError::NotKnown)?;
        let depth = contour.well_depth(size.diameter(), size.width()).ok_or(BarrelError::NotKnown)?;
        let barrel = Self::of_measured(size.diameter(), height, Toleranced::exact(depth), thickness)?;
        Ok(Self { largest: true, ..barrel })
    }

    /// Of a rim that was measured, each dimension to within what it was measured to: height of the flange
    /// over the seat, depth of the well below it, thickness of the metal.
    ///
    /// # Errors
    /// Where the specified diameter of the seat is not known; for a height or depth outside 3 to 60 mm, or a
    /// thickness outside 0.5 to 30 mm.
    ///
    /// ```
    /// use beadseat::{Toleranced, rim::RimDiameter, units::mm, wheel::Barrel};
    /// let measured = |value| Toleranced::within(mm(value), mm(0.5));
    /// let (diameter, [height, depth, metal]) = (RimDiameter::parse("16")?, [17.5, 24.0, 5.0].map(measured));
    /// let barrel = Barrel::of_measured(diameter, height, depth, metal)?;
    /// // 405.6 − 48 − 10 mm, and the worst of all four tolerances.
    /// assert!((barrel.at_well().nominal() - mm(347.6)).abs() < mm(1e-9));
    /// assert!((barrel.at_well().min() - mm(345.2)).abs() < mm(1e-9));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn of_measured(
        diameter: RimDiameter,
        flange_height: Toleranced<Length>,
        well_depth: Toleranced<Length>,
        thickness: Toleranced<Length>,
    ) -> Result<Self, BarrelError> {
        let seat = diameter.specified().ok_or(BarrelError::NotKnown)?;
        Ok(Self {
            seat,
            flange_height: check("flange height", flange_height, 3.0, 60.0)?,
            well_depth: check("well depth", well_depth, 3.0, 60.0)?,
            thickness: check("thickness", thickness, 0.5, 30.0)?,
            largest: false,
        })
    }

    /// The specified diameter of the bead seat.
    pub const fn seat(&self) -> Toleranced<Length> {
        self.seat
    }

    /// The diameter over the flanges, `D + 2·G`.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::{Barrel, WheelSize}};
    /// let barrel = Barrel::of_standard(&WheelSize::parse("6Jx15")?, Toleranced::exact(mm(4.0)))?;
    /// assert!((barrel.over_flanges().nominal() - mm(415.2)).abs() < mm(1e-9));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn over_flanges(&self) -> Toleranced<Length> {
        self.seat + self.flange_height * 2.0
    }

    /// The diameter inside the metal under the bead seat, `D − 2·t`.
    pub fn under_seat(&self) -> Toleranced<Length> {
        self.seat - self.thickness * 2.0
    }

    /// The diameter inside the metal at the well, `D − 2·H − 2·t`.
    pub fn at_well(&self) -> Toleranced<Length> {
        self.under_seat() - self.well_depth * 2.0
    }

    /// The radius about the spindle that a brake must stay inside to pass the well, without any clearance.
    /// Balance weights stuck inside take some of it.
    pub fn brake_envelope_radius(&self) -> Toleranced<Length> {
        self.at_well() * 0.5
    }

    /// Whether the well is the least of the standard, so that what is said of it is the most there can be,
    /// not what there is.
    pub const fn is_largest(&self) -> bool {
        self.largest
    }

    /// The source of the flange and the well.
    pub const fn citation(&self) -> Citation {
        if self.largest { Citation::RIM_CONTOUR } else { Citation::RIM_MEASURED }
    }
}

fn check(
    what: &'static str,
    value: Toleranced<Length>,
    least: f64,
    most: f64,
) -> Result<Toleranced<Length>, OutOfRange> {
    for length in [value.min(), value.nominal(), value.max()] {
        OutOfRange::check(what, in_mm(length), "mm", least, most)?;
    }
    Ok(value)
}
