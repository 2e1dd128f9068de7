//! The ring that fills the gap between a spigot and a larger bore.

use crate::units::{self, Length, in_mm};
use crate::wheel::{Bore, Spigot};
use crate::{Citation, OutOfRange};

/// Why a centring ring cannot be made.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum RingError {
    /// The bore is not larger than the spigot by more than the fits.
    NoRoom,
    /// A fit outside what is called one.
    OutOfRange(OutOfRange),
}

crate::text::messages! {
    RingError {
        NoRoom => "the bore leaves no room for a ring on the spigot",
    } passes {
        OutOfRange(OutOfRange),
    }
}

/// A centring ring between the bore of a wheel and the spigot of a hub, with the fits it is made with.
///
/// A fit is what a bore is larger than what sits in it, on the diameter. Which fits are good is the maker's
/// to say; about 0.1 mm is common practice, no source. The ring holds the wheel in the middle until the
/// fasteners clamp it; the clamp, not the ring, carries the load.
///
/// ```
/// use beadseat::{units::mm, wheel::{Bore, CentringRing, Spigot}};
/// let (bore, spigot) = (Bore::parse("73.1")?, Spigot::from_length(mm(57.1))?);
/// let ring = CentringRing::between(bore, spigot, mm(0.1), mm(0.1))?;
/// assert!((ring.outer_diameter() - mm(73.0)).abs() < mm(1e-9));
/// assert!((ring.inner_diameter() - mm(57.2)).abs() < mm(1e-9));
/// assert!((ring.eccentricity() - mm(0.1)).abs() < mm(1e-9));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[doc(alias = "hub ring")]
#[doc(alias = "spigot ring")]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CentringRing {
    bore: Bore,
    spigot: Spigot,
    outer_fit: Length,
    inner_fit: Length,
}

impl CentringRing {
    /// The ring for a bore and a spigot, with its fit in the bore and on the spigot.
    ///
    /// # Errors
    /// For a fit outside 0 to 1 mm, and where the fits leave no metal between bore and spigot.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::{Bore, CentringRing, RingError, Spigot}};
    /// let spigot = Spigot::from_length(mm(57.1))?;
    /// let none = CentringRing::between(Bore::parse("57.1")?, spigot, mm(0.0), mm(0.0));
    /// assert_eq!(none, Err(RingError::NoRoom));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn between(
        bore: Bore,
        spigot: Spigot,
        outer_fit: Length,
        inner_fit: Length,
    ) -> Result<Self, RingError> {
        let fit = |what, fit| OutOfRange::check(what, in_mm(fit), "mm", 0.0, 1.0).map(units::mm);
        let ring = Self {
            bore,
            spigot,
            outer_fit: fit("fit in the bore", outer_fit)?,
            inner_fit: fit("fit on the spigot", inner_fit)?,
        };
        if ring.outer_diameter() > ring.inner_diameter() { Ok(ring) } else { Err(RingError::NoRoom) }
    }

    /// Half of what the bore is larger than the spigot: what the ring fills, fits and all.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::{Bore, CentringRing, Spigot}};
    /// let (bore, spigot) = (Bore::parse("74.1")?, Spigot::from_length(mm(72.6))?);
    /// let ring = CentringRing::between(bore, spigot, mm(0.05), mm(0.05))?;
    /// assert_eq!(ring.wall(), mm(0.75));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn wall(&self) -> Length {
        self.spigot.play_in(self.bore) / 2.0
    }

    /// The outer diameter, the bore less its fit.
    pub fn outer_diameter(&self) -> Length {
        self.bore.length() - self.outer_fit
    }

    /// The inner diameter, the spigot and its fit.
    pub fn inner_diameter(&self) -> Length {
        self.spigot.length() + self.inner_fit
    }

    /// How far off the middle the wheel can sit with the ring: half of both fits.
    pub fn eccentricity(&self) -> Length {
        (self.outer_fit + self.inner_fit) / 2.0
    }

    /// The source of the formulas.
    pub const fn citation(&self) -> Citation {
        Citation::CENTRING
    }
}

impl Spigot {
    /// How far off the middle a wheel with a bore can sit with nothing between, and no fastener to centre it:
    /// half of the play. `None` if the bore does not go on.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Spigot};
    /// let spigot = Spigot::from_length(mm(57.1))?;
    /// assert_eq!(spigot.eccentricity_in("73.1".parse()?), Some(mm(8.0)));
    /// assert_eq!(spigot.eccentricity_in("54.1".parse()?), None);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn eccentricity_in(self, bore: Bore) -> Option<Length> {
        let play = self.play_in(bore);
        (play >= units::mm(0.0)).then(|| play / 2.0)
    }

    /// The run-out that a dial gauge on the rim shows of it over a turn (total indicated run-out): twice the
    /// eccentricity. `None` if the bore does not go on.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Spigot};
    /// let spigot = Spigot::from_length(mm(57.1))?;
    /// assert_eq!(spigot.run_out_in("73.1".parse()?), Some(mm(16.0)));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[doc(alias = "TIR")]
    pub fn run_out_in(self, bore: Bore) -> Option<Length> {
        Some(self.eccentricity_in(bore)? * 2.0)
    }
}
