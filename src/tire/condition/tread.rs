//! Condition of a tire that is in use: tread, wear, age, and how it is mounted.

use crate::exact::Exact;
use crate::units::{self, Length, in_mm};
use crate::{Citation, OutOfRange, Toleranced};

/// No tread is deeper, mm.
const DEEPEST_MM: f64 = 60.0;

/// A depth between nothing and 60 mm, at both ends of its uncertainty.
pub(super) fn check_depth(depth: Toleranced<Length>) -> Result<Toleranced<Length>, OutOfRange> {
    for end in [depth.min(), depth.nominal(), depth.max()] {
        // An uncertainty may reach below a bald tire; the tread does not.
        OutOfRange::check("tread depth", in_mm(end), "mm", -1.0, DEEPEST_MM)?;
    }
    Ok(depth.map(|end| if end < units::mm(0.0) { units::mm(0.0) } else { end }))
}

/// Whether `a` is at least `b`, to the nanometre, so that a sum that should be the limit is.
pub(super) fn reaches(a: Length, b: Length) -> bool {
    Exact::nearest(a) >= Exact::nearest(b)
}

/// A measurement held against a limit.
///
/// ```
/// use beadseat::{Toleranced, tire::condition::TreadLimit, units::mm};
/// let finding = TreadLimit::UK_CAR.check(Toleranced::within(mm(1.7), mm(0.2)))?;
/// assert_eq!(finding.is_met(), None); // 1.5 to 1.9 mm against 1.6 mm
/// assert!(finding.margin().min() < mm(0.0) && finding.margin().max() > mm(0.0));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DepthFinding {
    measured: Toleranced<Length>,
    margin: Toleranced<Length>,
    met: Option<bool>,
    citation: Citation,
}

impl DepthFinding {
    /// What was measured, or follows from it.
    pub const fn measured(&self) -> Toleranced<Length> {
        self.measured
    }

    /// The distance from the limit, positive on its good side.
    pub const fn margin(&self) -> Toleranced<Length> {
        self.margin
    }

    /// Whether the limit is met; `None` if that lies within the uncertainty of the measurement.
    pub const fn is_met(&self) -> Option<bool> {
        self.met
    }

    /// Whose limit it is.
    pub const fn citation(&self) -> Citation {
        self.citation
    }
}

/// The answer for the worst and the best case.
const fn decided(at_worst: bool, at_best: bool) -> Option<bool> {
    match (at_worst, at_best) {
        (true, _) => Some(true),
        (false, false) => Some(false),
        (false, true) => None,
    }
}

/// The least depth of tread that a jurisdiction allows, or that someone advises.
///
/// | limit | where | of what | least |
/// |---|---|---|---|
/// | [`US_LIGHT_VEHICLE`](Self::US_LIGHT_VEHICLE) | US | passenger and light vehicles | 2/32 in |
/// | [`US_STEERED_AXLE`](Self::US_STEERED_AXLE) | US | front wheels of buses, trucks and tractors | 4/32 in |
/// | [`US_OTHER_AXLE`](Self::US_OTHER_AXLE) | US | other axles of commercial vehicles | 2/32 in |
/// | [`EU_CAR`](Self::EU_CAR) * | EU | cars | 1.6 mm |
/// | [`WORN_TO_BARS`](Self::WORN_TO_BARS) | everywhere | any tire, worn down to the bars in its own grooves | 1.6 mm |
/// | [`UK_CAR`](Self::UK_CAR) | UK | cars, light vans and light trailers, to 3500 kg and 8 seats | 1.6 mm |
/// | [`UK_HEAVY`](Self::UK_HEAVY) * | UK | goods vehicles over 3500 kg, motorcycles over 50 cc | 1.0 mm |
/// | [`GERMANY`](Self::GERMANY) | Germany | all but mopeds and light motorcycles, winter tires too | 1.6 mm |
/// | [`GERMANY_MOPED`](Self::GERMANY_MOPED) | Germany | mopeds and light motorcycles | 1.0 mm |
/// | [`AUSTRIA_WINTER_RADIAL`](Self::AUSTRIA_WINTER_RADIAL) * | Austria | winter tires, radial | 4 mm |
/// | [`AUSTRIA_WINTER_DIAGONAL`](Self::AUSTRIA_WINTER_DIAGONAL) * | Austria | winter tires, diagonal | 5 mm |
/// | [`ADVICE_WET`](Self::ADVICE_WET) | advice | grip in the wet falls below this | 3 mm |
/// | [`ADVICE_WET_US`](Self::ADVICE_WET_US) * | advice | wet roads, US | 4/32 in |
/// | [`ADVICE_WINTER`](Self::ADVICE_WINTER) * | advice | snow; others say 4.8 mm | 4 mm |
///
/// What is marked * is from memory. In the US the depth counts in any major groove, not at bars, humps or
/// fillets; in the UK it counts in a continuous band over the central three quarters of the breadth, all
/// the way round. 2/32 in is 1.5875 mm, which is printed as 1.6.
///
/// ```
/// use beadseat::{Toleranced, tire::condition::TreadLimit, units::mm};
/// let depth = Toleranced::exact(mm(1.5));
/// let finding = TreadLimit::UK_CAR.check(depth)?;
/// assert_eq!(finding.is_met(), Some(false));
/// assert!(TreadLimit::UK_CAR.is_law() && !TreadLimit::ADVICE_WET.is_law());
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TreadLimit {
    depth: Length,
    jurisdiction: &'static str,
    applies_to: &'static str,
    citation: Citation,
}

macro_rules! tread_limits {
    ($($name:ident: $jurisdiction:literal, $applies_to:literal, $depth:expr, $citation:ident;)*) => {
        impl TreadLimit {
            $(#[doc = concat!($jurisdiction, ": ", $applies_to, ".")]
            pub const $name: Self = Self {
                depth: $depth,
                jurisdiction: $jurisdiction,
                applies_to: $applies_to,
                citation: Citation::$citation,
            };)*

            /// Every limit of the table.
            ///
            /// ```
            /// use beadseat::tire::condition::TreadLimit;
            /// let uk = TreadLimit::ALL.iter().filter(|limit| limit.jurisdiction() == "UK");
            /// assert_eq!(uk.count(), 2);
            /// ```
            pub const ALL: &[Self] = &[$(Self::$name,)*];
        }
    };
}

/// Thirty-seconds of an inch, in which tread is measured in the US.
const fn thirty_seconds(n: u8) -> Length {
    units::inches(n as f64 / 32.0)
}

tread_limits! {
    US_LIGHT_VEHICLE: "US", "passenger and light vehicles", thirty_seconds(2), TREAD_US;
    US_STEERED_AXLE: "US", "front wheels of buses, trucks and tractors", thirty_seconds(4), TREAD_US_COMMERCIAL;
    US_OTHER_AXLE: "US", "other axles of commercial vehicles", thirty_seconds(2), TREAD_US_COMMERCIAL;
    EU_CAR: "EU", "cars", units::mm(1.6), TREAD_EU;
    WORN_TO_BARS: "molded", "any tire, worn down to its own bars", units::mm(1.6), WEAR_INDICATOR;
    UK_CAR: "UK", "cars, light vans and light trailers, to 3500 kg and 8 seats", units::mm(1.6), TREAD_UK;
    UK_HEAVY: "UK", "goods vehicles over 3500 kg, motorcycles over 50 cc", units::mm(1.0), TREAD_UK_HEAVY;
    GERMANY: "Germany", "all but mopeds and light motorcycles, winter tires too", units::mm(1.6), TREAD_GERMANY;
    GERMANY_MOPED: "Germany", "mopeds and light motorcycles", units::mm(1.0), TREAD_GERMANY;
    AUSTRIA_WINTER_RADIAL: "Austria", "winter tires, radial", units::mm(4.0), TREAD_AUSTRIA;
    AUSTRIA_WINTER_DIAGONAL: "Austria", "winter tires, diagonal", units::mm(5.0), TREAD_AUSTRIA;
    ADVICE_WET: "advice", "wet roads", units::mm(3.0), TREAD_ADVICE_WET;
    ADVICE_WET_US: "advice", "wet roads, US", thirty_seconds(4), TREAD_ADVICE;
    ADVICE_WINTER: "advice", "snow", units::mm(4.0), TREAD_ADVICE;
}

impl TreadLimit {
    /// A limit of the caller's own.
    ///
    /// # Errors
    /// Outside 0 to 60 mm.
    ///
    /// ```
    /// use beadseat::{Citation, tire::condition::TreadLimit, units::mm};
    /// let limit = TreadLimit::stated(mm(2.5))?;
    /// assert_eq!((limit.depth(), limit.citation()), (mm(2.5), Citation::CALLER));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn stated(depth: Length) -> Result<Self, OutOfRange> {
        OutOfRange::check("tread depth", in_mm(depth), "mm", 0.0, DEEPEST_MM)?;
        let applies_to = "as the caller states";
        Ok(Self { depth, jurisdiction: "caller", applies_to, citation: Citation::CALLER })
    }

    /// The least depth of tread that is allowed.
    pub const fn depth(&self) -> Length {
        self.depth
    }

    /// Whose law it is, or `molded`, `advice`, `caller`.
    pub const fn jurisdiction(&self) -> &'static str {
        self.jurisdiction
    }

    /// The vehicles or tires it is meant for.
    pub const fn applies_to(&self) -> &'static str {
        self.applies_to
    }

    /// The source of the limit.
    pub const fn citation(&self) -> Citation {
        self.citation
    }

    /// Whether it is a legal minimum rather than advice.
    pub fn is_law(&self) -> bool {
        self.citation.status() == crate::Status::Regulation
    }

    /// Holds a measured depth against the limit; the least depth that counts is the caller's to find.
    ///
    /// # Errors
    /// For a depth outside 0 to 60 mm (an uncertainty may reach 1 mm below 0).
    pub fn check(&self, depth: Toleranced<Length>) -> Result<DepthFinding, OutOfRange> {
        let depth = check_depth(depth)?;
        Ok(DepthFinding {
            measured: depth,
            margin: depth - Toleranced::exact(self.depth),
            met: decided(reaches(depth.min(), self.depth), reaches(depth.max(), self.depth)),
            citation: self.citation,
        })
    }
}

/// How far the deepest and the shallowest of several treads may be apart.
///
/// The vehicle's manual decides; these are rules that trade articles print.
///
/// | limit | of what | at most |
/// |---|---|---|
/// | [`ALL_WHEEL_DRIVE_STRICT`](Self::ALL_WHEEL_DRIVE_STRICT) | all-wheel drive, all four | 1/32 in |
/// | [`ALL_WHEEL_DRIVE`](Self::ALL_WHEEL_DRIVE) | all-wheel drive, all four | 2/32 in |
/// | [`ALL_WHEEL_DRIVE_LOOSE`](Self::ALL_WHEEL_DRIVE_LOOSE) | all-wheel drive, all four | 3/32 in |
/// | [`ONE_AXLE`](Self::ONE_AXLE) | left and right of one axle, any vehicle | 2/32 in |
/// | [`LOOSEST`](Self::LOOSEST) | any vehicle, the loosest figure printed | 4/32 in |
///
/// ```
/// use beadseat::{Toleranced, tire::condition::SpreadLimit, units::mm};
/// let depths = [6.0, 6.2, 7.4, 7.5].map(|depth| Toleranced::within(mm(depth), mm(0.1)));
/// let finding = SpreadLimit::ALL_WHEEL_DRIVE.check(&depths)?.ok_or("one tread has no spread")?;
/// assert_eq!(finding.is_met(), None); // 1.3 to 1.7 mm against 1.5875 mm
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpreadLimit {
    spread: Length,
    applies_to: &'static str,
    citation: Citation,
}

impl SpreadLimit {
    /// All-wheel drive, all four: the strictest figure.
    pub const ALL_WHEEL_DRIVE_STRICT: Self = Self::printed(1, "all-wheel drive, all four");
    /// All-wheel drive, all four: the usual shop rule.
    pub const ALL_WHEEL_DRIVE: Self = Self::printed(2, "all-wheel drive, all four");
    /// All-wheel drive, all four: a looser rule of thumb.
    pub const ALL_WHEEL_DRIVE_LOOSE: Self = Self::printed(3, "all-wheel drive, all four");
    /// Left and right of one axle, on any vehicle.
    pub const ONE_AXLE: Self = Self::printed(2, "left and right of one axle");
    /// The loosest figure printed.
    pub const LOOSEST: Self = Self::printed(4, "any vehicle");

    const fn printed(thirty_seconds_of_an_inch: u8, applies_to: &'static str) -> Self {
        let spread = thirty_seconds(thirty_seconds_of_an_inch);
        Self { spread, applies_to, citation: Citation::TREAD_SPREAD }
    }

    /// A limit of the caller's own, as the vehicle's manual gives it.
    ///
    /// # Errors
    /// Outside 0 to 60 mm.
    ///
    /// ```
    /// use beadseat::{Citation, tire::condition::SpreadLimit, units::mm};
    /// assert_eq!(SpreadLimit::stated(mm(1.0))?.citation(), Citation::CALLER);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn stated(spread: Length) -> Result<Self, OutOfRange> {
        OutOfRange::check("spread of tread depths", in_mm(spread), "mm", 0.0, DEEPEST_MM)?;
        Ok(Self { spread, applies_to: "as the caller states", citation: Citation::CALLER })
    }

    /// The greatest difference of depth that is allowed.
    pub const fn spread(&self) -> Length {
        self.spread
    }

    /// The tires it is meant for.
    pub const fn applies_to(&self) -> &'static str {
        self.applies_to
    }

    /// The source of the limit.
    pub const fn citation(&self) -> Citation {
        self.citation
    }

    /// Holds the treads against each other: the two of an axle, or all four. `None` for fewer than two.
    ///
    /// # Errors
    /// For a depth outside 0 to 60 mm (an uncertainty may reach 1 mm below 0).
    pub fn check(&self, depths: &[Toleranced<Length>]) -> Result<Option<DepthFinding>, OutOfRange> {
        let Some(spread) = tread_spread(depths)? else { return Ok(None) };
        Ok(Some(DepthFinding {
            measured: spread,
            margin: Toleranced::exact(self.spread) - spread,
            met: decided(reaches(self.spread, spread.max()), reaches(self.spread, spread.min())),
            citation: self.citation,
        }))
    }
}

/// The deepest less the shallowest of several treads; `None` for fewer than two.
///
/// # Errors
/// For a depth outside 0 to 60 mm (an uncertainty may reach 1 mm below 0).
///
/// ```
/// use beadseat::{Toleranced, tire::condition::tread_spread, units::mm};
/// let treads = [Toleranced::within(mm(6.0), mm(0.5)), Toleranced::within(mm(8.0), mm(0.5))];
/// let spread = tread_spread(&treads)?.ok_or("one tread has no spread")?;
/// assert_eq!(spread.nominal(), mm(2.0));
/// assert!((spread.min() - mm(1.0)).abs() < mm(1e-9) && (spread.max() - mm(3.0)).abs() < mm(1e-9));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn tread_spread(depths: &[Toleranced<Length>]) -> Result<Option<Toleranced<Length>>, OutOfRange> {
    let [first, others @ ..] = depths else { return Ok(None) };
    let first = check_depth(*first)?;
    let (mut shallowest, mut deepest) = (first, first);
    for depth in others {
        let depth = check_depth(*depth)?;
        let each = |pick: fn(Length, Length) -> Length, so_far: Toleranced<Length>| {
            Toleranced::ordered(
                pick(so_far.min(), depth.min()),
                pick(so_far.nominal(), depth.nominal()),
                pick(so_far.max(), depth.max()),
            )
        };
        shallowest = each(Length::min, shallowest);
        deepest = each(Length::max, deepest);
    }
    let spread = (deepest - shallowest).map(|end| end.max(units::mm(0.0)));
    Ok((!others.is_empty()).then_some(spread))
}

/// How much deeper the rear treads are than the front ones, on the mean of each axle; negative where the
/// front is deeper. `None` if an axle has none.
///
/// The deeper pair belongs on the rear axle, whatever is driven: it keeps control in the wet. Source:
/// [`Citation::DEEPER_TREAD_BEHIND`].
///
/// # Errors
/// For a depth outside 0 to 60 mm (an uncertainty may reach 1 mm below 0).
///
/// ```
/// use beadseat::{Toleranced, tire::condition::rear_deeper_by, units::mm};
/// let axle = |depth| [Toleranced::exact(mm(depth)); 2];
/// assert_eq!(rear_deeper_by(&axle(8.0), &axle(5.0))?, Some(Toleranced::exact(mm(-3.0))));
/// assert_eq!(rear_deeper_by(&axle(8.0), &[])?, None);
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
pub fn rear_deeper_by(
    front: &[Toleranced<Length>],
    rear: &[Toleranced<Length>],
) -> Result<Option<Toleranced<Length>>, OutOfRange> {
    fn mean(depths: &[Toleranced<Length>]) -> Result<Option<Toleranced<Length>>, OutOfRange> {
        let mut sum = Toleranced::exact(units::mm(0.0));
        for depth in depths {
            sum = sum + check_depth(*depth)?;
        }
        Ok((!depths.is_empty()).then(|| sum * (1.0 / depths.len() as f64)))
    }
    Ok(mean(rear)?.zip(mean(front)?).map(|(rear, front)| rear - front))
}
