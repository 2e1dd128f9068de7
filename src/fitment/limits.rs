//! The limits a change is held against.

use crate::record::words;
use crate::units::{self, Length, Ratio, Velocity};
use crate::{Citation, OutOfRange};

/// A limit with its owner.
///
/// ```
/// use beadseat::{Citation, fitment::Limits, units::percent};
/// let limit = Limits::default().track_growth_share().ok_or("no limit")?;
/// assert_eq!((limit.value(), limit.citation()), (percent(2.0), Citation::TRACK_GROWTH));
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit<Q> {
    value: Q,
    citation: Citation,
}

impl<Q: Copy> Limit<Q> {
    const fn new(value: Q, citation: Citation) -> Self {
        Self { value, citation }
    }

    /// The value.
    pub const fn value(&self) -> Q {
        self.value
    }

    /// Whose limit it is.
    pub const fn citation(&self) -> Citation {
        self.citation
    }
}

words! {
    /// A named set of limits.
    ///
    /// The default set holds physics, what the designations mean, the makers' data and common practice;
    /// the others add the rules of one jurisdiction to it. No set mixes the law of two.
    ///
    /// ```
    /// assert!(beadseat::fitment::LimitSet::ALL.iter().any(|s| s.name() == "south_australia"));
    /// ```
    LimitSet {
        /// No jurisdiction.
        Default = "default",
        /// 49 CFR 571.110: the load reserve is law.
        UnitedStates = "united_states",
        /// EU 458/2011: the towing rule for rear tires.
        EuropeanUnion = "european_union",
        /// Examination practice in Germany, as quoted by a test house: track +2 %. (Off-road vehicles
        /// built on a frame are quoted with +4 %: set it as your own limit.)
        GermanExamination = "german_examination",
        /// South Australia: track +26 mm.
        SouthAustralia = "south_australia",
        /// VSB 14 of Australia: track +25 mm; diameter of passenger cars +15 and −26 mm.
        Vsb14 = "vsb_14",
        /// VSB 14 for off-road vehicles: track +25 mm, diameter +50 mm.
        Vsb14OffRoad = "vsb_14_off_road",
    }
}

/// The limits of an assessment. Start from a set, and replace what you know better.
///
/// ```
/// use beadseat::{Citation, fitment::{LimitSet, Limits}, units::{mm, percent}};
/// let limits = Limits::of(LimitSet::SouthAustralia).with_diameter_share(percent(2.0))?;
/// assert_eq!(limits.track_growth().map(|l| l.value()), Some(mm(26.0)));
/// assert_eq!(limits.diameter_share().map(|l| l.citation()), Some(Citation::CALLER));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    set: LimitSet,
    track_growth_share: Option<Limit<Ratio>>,
    track_growth: Option<Limit<Length>>,
    diameter_share: Option<Limit<Ratio>>,
    diameter_growth: Option<Limit<Length>>,
    diameter_loss: Option<Limit<Length>>,
    clearance: Limit<Length>,
    load_reserve: Limit<Ratio>,
    circumference_all_wheel_drive: Limit<Ratio>,
    circumference_stability: Limit<Ratio>,
    snow_speed_floor: Option<Limit<Velocity>>,
    lower_load_index: bool,
    towing_allowance: bool,
}

impl Default for Limits {
    fn default() -> Self {
        Self::of(LimitSet::Default)
    }
}

macro_rules! limit {
    ($(#[$doc:meta])* $field:ident: $quantity:ident, $with:ident, $key:literal in $read:ident $unit:literal $least:literal to $most:literal, $($wrap:tt)*) => {
        $(#[$doc])*
        pub const fn $field(&self) -> limit!(@type $quantity $($wrap)*) { self.$field }

        #[doc = concat!("Replaces [`Limits::", stringify!($field), "`] by the caller's own.")]
        ///
        /// # Errors
        #[doc = concat!("Outside ", $least, " to ", $most, " ", $unit, ".")]
        pub fn $with(mut self, value: $quantity) -> Result<Self, OutOfRange> {
            OutOfRange::check($key, units::$read(value), $unit, $least as f64, $most as f64)?;
            let limit = Limit::new(value, Citation::CALLER);
            self.$field = limit!(@wrap limit $($wrap)*);
            Ok(self)
        }
    };
    (@type $quantity:ident optional) => { Option<Limit<$quantity>> };
    (@type $quantity:ident always) => { Limit<$quantity> };
    (@wrap $limit:ident optional) => { Some($limit) };
    (@wrap $limit:ident always) => { $limit };
}

impl Limits {
    /// The limits of a named set.
    pub const fn of(set: LimitSet) -> Self {
        let base = Self {
            set,
            track_growth_share: Some(Limit::new(units::percent(2.0), Citation::TRACK_GROWTH)),
            track_growth: None,
            diameter_share: Some(Limit::new(units::percent(3.0), Citation::DIAMETER_CHANGE)),
            diameter_growth: None,
            diameter_loss: None,
            clearance: Limit::new(units::mm(6.35), Citation::CLEARANCE),
            load_reserve: Limit::new(units::percent(94.0), Citation::LOAD_RESERVE_PRACTICE),
            circumference_all_wheel_drive: Limit::new(units::percent(0.5), Citation::CIRCUMFERENCE_RATIO),
            circumference_stability: Limit::new(units::percent(1.0), Citation::CIRCUMFERENCE_RATIO),
            snow_speed_floor: None,
            lower_load_index: false,
            towing_allowance: false,
        };
        const fn mm(value: f64, citation: Citation) -> Option<Limit<Length>> {
            Some(Limit::new(units::mm(value), citation))
        }
        match set {
            LimitSet::Default => base,
            LimitSet::UnitedStates => {
                Self { load_reserve: Limit::new(units::percent(94.0), Citation::LOAD_RESERVE), ..base }
            }
            LimitSet::EuropeanUnion => Self { towing_allowance: true, ..base },
            LimitSet::GermanExamination => Self {
                track_growth_share: Some(Limit::new(units::percent(2.0), Citation::TRACK_GROWTH_GERMAN)),
                ..base
            },
            LimitSet::SouthAustralia => Self { track_growth: mm(26.0, Citation::TRACK_GROWTH_SA), ..base },
            LimitSet::Vsb14 => Self {
                track_growth: mm(25.0, Citation::TRACK_GROWTH_VSB14),
                diameter_growth: mm(15.0, Citation::DIAMETER_VSB14),
                diameter_loss: mm(26.0, Citation::DIAMETER_VSB14),
                ..base
            },
            LimitSet::Vsb14OffRoad => Self {
                track_growth: mm(25.0, Citation::TRACK_GROWTH_VSB14),
                diameter_share: None,
                diameter_growth: mm(50.0, Citation::DIAMETER_VSB14_OFF_ROAD),
                ..base
            },
        }
    }

    /// The set these began with.
    pub const fn set(&self) -> LimitSet {
        self.set
    }

    limit! {
        /// Largest growth of track, as a share of the original.
        track_growth_share: Ratio, with_track_growth_share, "track_change_percent" in in_percent "%" 0 to 50, optional
    }
    limit! {
        /// Largest growth of track, as a length.
        track_growth: Length, with_track_growth, "track_change_mm" in in_mm "mm" 0 to 500, optional
    }
    limit! {
        /// Largest change of overall diameter either way, as a share of the original.
        diameter_share: Ratio, with_diameter_share, "diameter_change_percent" in in_percent "%" 0 to 50, optional
    }
    limit! {
        /// Largest growth of overall diameter.
        diameter_growth: Length, with_diameter_growth, "diameter_growth_mm" in in_mm "mm" 0 to 500, optional
    }
    limit! {
        /// Largest loss of overall diameter.
        diameter_loss: Length, with_diameter_loss, "diameter_loss_mm" in in_mm "mm" 0 to 500, optional
    }
    limit! {
        /// Least static clearance to be left, unless the original had less.
        clearance: Length, with_clearance, "clearance_mm" in in_mm "mm" 0 to 100, always
    }
    limit! {
        /// Largest share of the capacity at the intended pressure that the normal load may take.
        load_reserve: Ratio, with_load_reserve, "load_reserve_percent" in in_percent "%" 10 to 100, always
    }
    limit! {
        /// Largest change of the ratio of front and rear rolling circumference with all-wheel drive.
        circumference_all_wheel_drive: Ratio, with_circumference_all_wheel_drive,
        "circumference_all_wheel_drive_percent" in in_percent "%" 0 to 10, always
    }
    limit! {
        /// The same with anti-lock brakes or stability control.
        circumference_stability: Ratio, with_circumference_stability,
        "circumference_stability_percent" in in_percent "%" 0 to 10, always
    }
    limit! {
        /// Where the caller's jurisdiction lets snow tires be slower than the vehicle, the least speed
        /// they must still be made for.
        snow_speed_floor: Velocity, with_snow_speed_floor, "snow_speed_floor_kmh" in in_kmh "km/h" 50 to 300, optional
    }

    /// Whether a load index below the original's is accepted as long as the loads are carried.
    pub const fn allows_lower_load_index(&self) -> bool {
        self.lower_load_index
    }

    /// Accepts or refuses a load index below the original's.
    ///
    /// ```
    /// assert!(beadseat::fitment::Limits::default().with_lower_load_index(true).allows_lower_load_index());
    /// ```
    pub const fn with_lower_load_index(mut self, allowed: bool) -> Self {
        self.lower_load_index = allowed;
        self
    }

    /// Whether the rear tires of a towing vehicle may carry 15 % more up to 100 km/h.
    pub const fn allows_towing_allowance(&self) -> bool {
        self.towing_allowance
    }

    /// Grants or refuses the towing allowance.
    ///
    /// ```
    /// use beadseat::fitment::{LimitSet, Limits};
    /// assert!(Limits::of(LimitSet::EuropeanUnion).allows_towing_allowance());
    /// assert!(!Limits::default().with_towing_allowance(false).allows_towing_allowance());
    /// ```
    pub const fn with_towing_allowance(mut self, allowed: bool) -> Self {
        self.towing_allowance = allowed;
        self
    }
}
