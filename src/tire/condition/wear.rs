//! Wear rate, and the distance that is left.

use super::{TreadLimit, check_depth, reaches};
use crate::units::{self, Length, Ratio, in_mm};
use crate::{Citation, OutOfRange, Toleranced};

const MM_PER_KM: f64 = 1e6;

/// Why a wear rate could not be told.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum WearError {
    /// The tread that was lost is less than what the measurements may be wrong by.
    #[error("the wear is not more than the uncertainty of the two depths")]
    NotSeen,
    /// A depth or distance that cannot be.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
}

/// Tread lost for the distance driven, from two measurements. The tread is taken to wear evenly with
/// distance.
///
/// ```
/// use beadseat::{Toleranced, tire::condition::{TreadLimit, WearRate}, units::mm};
/// use beadseat::uom::si::{f64::Length, length::kilometer};
/// let gauge = |depth| Toleranced::within(mm(depth), mm(0.1));
/// let rate = WearRate::measured(gauge(7.0), gauge(5.0), Length::new::<kilometer>(10_000.0))?;
/// let left = rate.distance_to(gauge(5.0), TreadLimit::UK_CAR)?;
/// assert!((left.nominal().get::<kilometer>() - 17_000.0).abs() < 1e-6);
/// assert!((left.min().get::<kilometer>() - 15_000.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WearRate {
    /// Depth lost over distance driven, above zero at its least.
    rate: Toleranced<Ratio>,
}

impl WearRate {
    /// The distance that wears 1 mm away, at least and at most: 1600 to 6400 km, as pressure, style and
    /// road decide. Source: a tire retailer's page.
    ///
    /// ```
    /// use beadseat::{tire::condition::WearRate, uom::si::length::kilometer};
    /// let (least, most) = WearRate::USUAL_DISTANCE_PER_MM;
    /// assert_eq!((least.get::<kilometer>(), most.get::<kilometer>()), (1600.0, 6400.0));
    /// ```
    pub const USUAL_DISTANCE_PER_MM: (Length, Length) =
        (units::mm(1600.0 * MM_PER_KM), units::mm(6400.0 * MM_PER_KM));

    /// The source of [`WearRate::USUAL_DISTANCE_PER_MM`].
    pub const USUAL_CITATION: Citation = Citation::USUAL_WEAR;

    /// From the depth before and after a distance.
    ///
    /// # Errors
    /// For a depth outside 0 to 60 mm, a distance outside 1 to 1 000 000 km, and if the tread lost is not
    /// more than the two uncertainties together.
    ///
    /// ```
    /// use beadseat::{Toleranced, tire::condition::{WearError, WearRate}, units::mm};
    /// use beadseat::uom::si::{f64::Length, length::kilometer};
    /// let gauge = |depth| Toleranced::within(mm(depth), mm(0.3));
    /// let rate = WearRate::measured(gauge(7.0), gauge(6.5), Length::new::<kilometer>(2000.0));
    /// assert_eq!(rate, Err(WearError::NotSeen));
    /// ```
    pub fn measured(
        before: Toleranced<Length>,
        after: Toleranced<Length>,
        distance: Length,
    ) -> Result<Self, WearError> {
        OutOfRange::check("distance", in_mm(distance) / MM_PER_KM, "km", 1.0, 1e6)?;
        let lost = check_depth(before)? - check_depth(after)?;
        if reaches(units::mm(0.0), lost.min()) {
            return Err(WearError::NotSeen);
        }
        Ok(Self { rate: lost.map(|depth| depth / distance) })
    }

    /// The tread lost over a distance.
    ///
    /// # Errors
    /// For a distance outside 0 to 1 000 000 km.
    ///
    /// ```
    /// use beadseat::{Toleranced, tire::condition::WearRate, units::mm};
    /// use beadseat::uom::si::{f64::Length, length::{kilometer, millimeter}};
    /// let km = Length::new::<kilometer>;
    /// let exact = |depth| Toleranced::exact(mm(depth));
    /// let rate = WearRate::measured(exact(7.0), exact(5.0), km(10_000.0))?;
    /// assert!((rate.over(km(1000.0))?.nominal().get::<millimeter>() - 0.2).abs() < 1e-12);
    /// # Ok::<(), beadseat::tire::condition::WearError>(())
    /// ```
    pub fn over(&self, distance: Length) -> Result<Toleranced<Length>, OutOfRange> {
        OutOfRange::check("distance", in_mm(distance) / MM_PER_KM, "km", 0.0, 1e6)?;
        Ok(self.rate.map(|rate| rate * distance))
    }

    /// The distance from a depth to a limit; nothing where the limit is already reached.
    ///
    /// # Errors
    /// For a depth outside 0 to 60 mm.
    pub fn distance_to(
        &self,
        depth: Toleranced<Length>,
        limit: TreadLimit,
    ) -> Result<Toleranced<Length>, OutOfRange> {
        let left = check_depth(depth)? - Toleranced::exact(limit.depth());
        let left = left.map(|end| end.max(units::mm(0.0)));
        Ok(Toleranced::ordered(
            left.min() / self.rate.max(),
            left.nominal() / self.rate.nominal(),
            left.max() / self.rate.min(),
        ))
    }

    /// Whether the rate can be a usual one; where it cannot, look at pressure, alignment and the
    /// measurements.
    ///
    /// ```
    /// use beadseat::{Toleranced, tire::condition::WearRate, units::mm};
    /// use beadseat::uom::si::{f64::Length, length::kilometer};
    /// let exact = |depth| Toleranced::exact(mm(depth));
    /// let rate = |km| WearRate::measured(exact(7.0), exact(6.0), Length::new::<kilometer>(km));
    /// assert!(rate(5000.0)?.is_usual() && !rate(1000.0)?.is_usual() && !rate(9000.0)?.is_usual());
    /// # Ok::<(), beadseat::tire::condition::WearError>(())
    /// ```
    pub fn is_usual(&self) -> bool {
        let (least, most) = Self::USUAL_DISTANCE_PER_MM;
        let (fastest, slowest) = (units::mm(1.0) / least, units::mm(1.0) / most);
        self.rate.min() <= fastest && slowest <= self.rate.max()
    }
}
