//! What whoever searches wishes for.

use crate::OutOfRange;
use crate::record::words;
use crate::rim::RimDiameter;
use crate::units::{Length, Ratio, in_mm, in_percent};

words! {
    /// What stays on the vehicle.
    ///
    /// ```
    /// assert_eq!(beadseat::search::Keep::Wheels.name(), "wheels");
    /// ```
    Keep {
        /// Nothing: tires and wheels are bought.
        Nothing = "nothing",
        /// The original wheels: tires for them are looked for.
        Wheels = "wheels",
        /// The original tires: wheels for them are looked for.
        Tires = "tires",
    }
}

/// What whoever searches wishes for, besides what the limits ask for.
///
/// ```
/// use beadseat::{search::{Keep, Wishes}, units::{mm, percent}};
/// let wishes = Wishes::new().with_rim_diameter("17".parse()?).with_least_width(mm(215.0))?.with_flush_within(mm(15.0))?;
/// assert_eq!(wishes.keep(), Keep::Nothing);
/// assert!(Wishes::new().with_diameter_within(percent(80.0)).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wishes {
    keep: Keep,
    rim_diameter: Option<RimDiameter>,
    least_width: Option<Length>,
    diameter_within: Option<Ratio>,
    flush_within: Option<Length>,
    keeps_scrub: bool,
    winter: bool,
    spacers: bool,
}

impl Default for Wishes {
    fn default() -> Self {
        Self::new()
    }
}

impl Wishes {
    /// Anything that fits, with new tires on new wheels without spacers, alike on both axles.
    pub const fn new() -> Self {
        Self {
            keep: Keep::Nothing,
            rim_diameter: None,
            least_width: None,
            diameter_within: None,
            flush_within: None,
            keeps_scrub: false,
            winter: false,
            spacers: false,
        }
    }

    /// What stays on the vehicle.
    pub const fn keep(&self) -> Keep {
        self.keep
    }

    /// The same with something that stays.
    pub const fn with_keep(self, keep: Keep) -> Self {
        Self { keep, ..self }
    }

    /// The only rim diameter that is wanted.
    pub const fn rim_diameter(&self) -> Option<RimDiameter> {
        self.rim_diameter
    }

    /// The same with one rim diameter only.
    pub const fn with_rim_diameter(self, diameter: RimDiameter) -> Self {
        Self { rim_diameter: Some(diameter), ..self }
    }

    /// The least nominal width of a tire.
    pub const fn least_width(&self) -> Option<Length> {
        self.least_width
    }

    /// The same with a least nominal width.
    ///
    /// # Errors
    /// Outside 0 to 1000 mm.
    pub fn with_least_width(self, width: Length) -> Result<Self, OutOfRange> {
        OutOfRange::check("width", in_mm(width), "mm", 0.0, 1000.0)?;
        Ok(Self { least_width: Some(width), ..self })
    }

    /// How much the overall diameter may differ from the original's, either way.
    pub const fn diameter_within(&self) -> Option<Ratio> {
        self.diameter_within
    }

    /// The same with a largest difference of the overall diameter.
    ///
    /// # Errors
    /// Outside 0 to 50 %.
    pub fn with_diameter_within(self, share: Ratio) -> Result<Self, OutOfRange> {
        OutOfRange::check("diameter_within", in_percent(share), "%", 0.0, 50.0)?;
        Ok(Self { diameter_within: Some(share), ..self })
    }

    /// How much of the guard that was measured outboard of the tire may be left, or where it was not measured, of the
    /// gap outboard.
    pub const fn flush_within(&self) -> Option<Length> {
        self.flush_within
    }

    /// The same with the outer face so near the guard at least.
    ///
    /// # Errors
    /// Outside 0 to 200 mm.
    pub fn with_flush_within(self, most: Length) -> Result<Self, OutOfRange> {
        OutOfRange::check("flush_within", in_mm(most), "mm", 0.0, 200.0)?;
        Ok(Self { flush_within: Some(most), ..self })
    }

    /// Whether the scrub radius must keep its sign, where it is known.
    pub const fn keeps_scrub(&self) -> bool {
        self.keeps_scrub
    }

    /// The same with the sign of the scrub radius kept.
    pub const fn with_scrub_kept(self, keeps_scrub: bool) -> Self {
        Self { keeps_scrub, ..self }
    }

    /// Whether snow tires are looked for.
    pub const fn winter(&self) -> bool {
        self.winter
    }

    /// The same for snow tires.
    pub const fn with_winter(self, winter: bool) -> Self {
        Self { winter, ..self }
    }

    /// Whether a spacer may stand behind wheels that stay.
    pub const fn spacers(&self) -> bool {
        self.spacers
    }

    /// The same with spacers behind wheels that stay.
    pub const fn with_spacers(self, spacers: bool) -> Self {
        Self { spacers, ..self }
    }
}
