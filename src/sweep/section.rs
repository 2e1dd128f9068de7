//! Rim and tire in section: what a profile is made from.

use crate::units::{Length, Ratio, in_mm, in_ratio};
use crate::{Citation, OutOfRange};

/// The rim: where it stands along the spindle, how wide it is over the flanges, and its radii.
///
/// ```
/// use beadseat::{sweep::RimSection, units::mm};
/// assert!(RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0)).is_ok());
/// // A barrel outside its own flanges.
/// assert!(RimSection::new(mm(-46.0), mm(94.0), mm(180.0), mm(185.0)).is_err());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RimSection {
    pub(super) centre: f64,
    pub(super) half_width: f64,
    pub(super) flange_radius: f64,
    pub(super) barrel_radius: f64,
}

impl RimSection {
    /// From the middle of the rim outboard of the hub face (spacer less inset), half its width over the
    /// flanges, the radius to the top of the flanges, and the inside radius of the barrel.
    ///
    /// # Errors
    /// A middle beyond 500 mm, a half width outside 10 to 400 mm, a flange outside 50 to 1000 mm, a barrel
    /// outside 10 mm to the flange.
    pub fn new(
        centre: Length,
        half_width: Length,
        flange_radius: Length,
        barrel_radius: Length,
    ) -> Result<Self, OutOfRange> {
        let flange = OutOfRange::check("flange radius", in_mm(flange_radius), "mm", 50.0, 1000.0)?;
        Ok(Self {
            centre: OutOfRange::check("rim centre", in_mm(centre), "mm", -500.0, 500.0)?,
            half_width: OutOfRange::check("half rim width", in_mm(half_width), "mm", 10.0, 400.0)?,
            flange_radius: flange,
            barrel_radius: OutOfRange::check("barrel radius", in_mm(barrel_radius), "mm", 10.0, flange)?,
        })
    }
}

/// The tire on that rim: how wide, how tall, and of what shape.
///
/// Shape that is not given follows from the aspect ratio `A` of what stands above the flanges, height over
/// width; all of it common practice, no source:
///
/// | what | default |
/// |---|---|
/// | height of the greatest width, as a share of the height above the flange | 0.45 |
/// | tread width, as a share of the section width | 0.95 − 0.25·A, at least 0.70, at most 0.90 |
/// | crown drop, from the middle of the tread to its edge | 0.05 of half the tread width |
/// | shoulder radius | 0.2 of the height above the flange, or as much as fits |
///
/// ```
/// use beadseat::{sweep::TireSection, units::{mm, ratio}};
/// let tire = TireSection::new(mm(107.0), mm(316.0))?.with_tread_share(ratio(0.8))?;
/// assert!(tire.with_tread_share(ratio(1.2)).is_err());
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TireSection {
    pub(super) half_width: f64,
    pub(super) outside_radius: f64,
    pub(super) widest: Option<f64>,
    pub(super) tread_share: Option<f64>,
    pub(super) crown_drop: Option<f64>,
    pub(super) shoulder_radius: Option<f64>,
}

impl TireSection {
    /// From half the section width on this rim, and the outside radius.
    ///
    /// # Errors
    /// A half width outside 10 to 500 mm, a radius outside 60 to 1500 mm.
    pub fn new(half_width: Length, outside_radius: Length) -> Result<Self, OutOfRange> {
        Ok(Self {
            half_width: OutOfRange::check("half section width", in_mm(half_width), "mm", 10.0, 500.0)?,
            outside_radius: OutOfRange::check("outside radius", in_mm(outside_radius), "mm", 60.0, 1500.0)?,
            widest: None,
            tread_share: None,
            crown_drop: None,
            shoulder_radius: None,
        })
    }

    /// Sets how high above the flange the tire is widest, as a share of the height from flange to tread.
    ///
    /// # Errors
    /// Outside 0.05 to 0.95.
    pub fn with_widest(mut self, share: Ratio) -> Result<Self, OutOfRange> {
        self.widest = Some(OutOfRange::check("height of greatest width", in_ratio(share), "", 0.05, 0.95)?);
        Ok(self)
    }

    /// Sets the width of the tread, up to where the shoulders begin, as a share of the section width.
    ///
    /// # Errors
    /// Outside 0.3 to 1.
    pub fn with_tread_share(mut self, share: Ratio) -> Result<Self, OutOfRange> {
        self.tread_share = Some(OutOfRange::check("tread share", in_ratio(share), "", 0.3, 1.0)?);
        Ok(self)
    }

    /// Sets how much smaller the radius is at the edge of the tread than in its middle. Zero is a flat tread, and so
    /// is up to a micrometre.
    ///
    /// # Errors
    /// Outside 0 to 100 mm.
    pub fn with_crown_drop(mut self, drop: Length) -> Result<Self, OutOfRange> {
        self.crown_drop = Some(OutOfRange::check("crown drop", in_mm(drop), "mm", 0.0, 100.0)?);
        Ok(self)
    }

    /// Sets the radius between tread and sidewall. Zero is a sharp corner.
    ///
    /// # Errors
    /// Outside 0 to 300 mm.
    pub fn with_shoulder_radius(mut self, radius: Length) -> Result<Self, OutOfRange> {
        self.shoulder_radius = Some(OutOfRange::check("shoulder radius", in_mm(radius), "mm", 0.0, 300.0)?);
        Ok(self)
    }

    /// The source of the shape that was not given.
    ///
    /// ```
    /// use beadseat::{Status, sweep::TireSection, units::mm};
    /// let tire = TireSection::new(mm(107.0), mm(316.0))?;
    /// assert_eq!(tire.citation().status(), Status::CommonPractice);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub const fn citation(&self) -> Citation {
        Citation::TIRE_SHAPE
    }
}
