//! The limits a change is held against.

mod rows;

pub use rows::LimitSet;
use rows::Of;
pub(super) use rows::has_own_row;

use super::check::Position;
use crate::record::record;
use crate::tire::condition::{AgeLimit, TreadLimit};
use crate::units::{self, Length, Ratio, Velocity};
use crate::vehicle::Kind;
use crate::wheel::Thread;
use crate::{Citation, Count, OwnSource};

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
    pub(super) const fn new(value: Q, citation: Citation) -> Self {
        Self { value, citation }
    }

    /// The value of the limit.
    pub const fn value(&self) -> Q {
        self.value
    }

    /// Whose limit it is.
    pub const fn citation(&self) -> Citation {
        self.citation
    }
}

record! {
    /// The limits of an assessment: those of a named set, and whatever the caller knows better.
    ///
    /// ```
    /// use beadseat::{Citation, fitment::{LimitSet, Limits}, units::{mm, percent}};
    /// let limits = Limits::of(LimitSet::SouthAustralia).with_own_diameter_share(percent(2.0))?;
    /// assert_eq!(limits.track_growth().map(|l| l.value()), Some(mm(26.0)));
    /// assert_eq!(limits.diameter_growth_share().citation(), Citation::CALLER);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    #[derive(Copy)]
    Limits {
        /// The set; without one, the default.
        named_set / with_named_set: LimitSet = "set";
        /// The document that the caller's own limits below stand in; a report names it beside them.
        own_source / with_own_source: OwnSource = "source";
        /// The caller's largest growth of track, as a share of the original.
        own_track_growth_share / with_own_track_growth_share: Ratio = "track_change_percent" [percent in_percent "%" 0 to 50];
        /// The caller's largest growth of track, as a length.
        own_track_growth / with_own_track_growth: Length = "track_change_mm" [mm in_mm "mm" 0 to 500];
        /// The caller's largest change of overall diameter either way, as a share of the original.
        own_diameter_share / with_own_diameter_share: Ratio = "diameter_change_percent" [percent in_percent "%" 0 to 50];
        /// The caller's largest growth of overall diameter.
        own_diameter_growth / with_own_diameter_growth: Length = "diameter_growth_mm" [mm in_mm "mm" 0 to 500];
        /// The caller's largest loss of overall diameter.
        own_diameter_loss / with_own_diameter_loss: Length = "diameter_loss_mm" [mm in_mm "mm" 0 to 500];
        /// The caller's least static clearance.
        own_clearance / with_own_clearance: Length = "clearance_mm" [mm in_mm "mm" 0 to 100];
        /// The caller's largest share of capacity for the normal load.
        own_load_reserve / with_own_load_reserve: Ratio = "load_reserve_percent" [percent in_percent "%" 10 to 100];
        /// The caller's largest change of the circumference ratio with all-wheel drive.
        own_circumference_all_wheel_drive / with_own_circumference_all_wheel_drive: Ratio = "circumference_all_wheel_drive_percent" [percent in_percent "%" 0 to 10];
        /// The caller's largest change of the circumference ratio with anti-lock or stability control.
        own_circumference_stability / with_own_circumference_stability: Ratio = "circumference_stability_percent" [percent in_percent "%" 0 to 10];
        /// The caller's largest play between bore and spigot.
        own_centring_play / with_own_centring_play: Length = "centring_play_mm" [mm in_mm "mm" 0 to 2];
        /// The caller's least height of spigot in the bore.
        own_spigot_engagement / with_own_spigot_engagement: Length = "spigot_engagement_mm" [mm in_mm "mm" 0 to 50];
        /// The caller's least clearance over all steer and travel.
        own_swept_clearance / with_own_swept_clearance: Length = "swept_clearance_mm" [mm in_mm "mm" 0 to 200];
        /// The caller's allowance for movement of rubber and bushes.
        own_dynamic_allowance / with_own_dynamic_allowance: Length = "dynamic_allowance_mm" [mm in_mm "mm" 0 to 50];
        /// The caller's largest change of ride height either way.
        own_ride_height_change / with_own_ride_height_change: Length = "ride_height_change_mm" [mm in_mm "mm" 0 to 300];
        /// What must be left under the vehicle.
        own_ground_clearance / with_own_ground_clearance: Length = "ground_clearance_mm" [mm in_mm "mm" 0 to 600];
        /// The least distance between the tires of a pair, as their maker states it.
        own_dual_gap / with_own_dual_gap: Length = "dual_gap_mm" [mm in_mm "mm" 0 to 200];
        /// The caller's least turns of thread.
        own_engagement_turns / with_own_engagement_turns: Ratio = "engagement_turns" [ratio in_ratio "turns" 1 to 30];
        /// The caller's least clearance between wheel and brake.
        own_brake_clearance / with_own_brake_clearance: Length = "brake_clearance_mm" [mm in_mm "mm" 0 to 50];
        /// The caller's greatest age of a tire, in years.
        own_tire_age / with_own_tire_age: Count<50> = "tire_age_years";
        /// The caller's least depth of tread.
        own_tread / with_own_tread: Length = "tread_mm" [mm in_mm "mm" 0 to 40];
        /// Where the caller's jurisdiction lets snow tires be slower than the vehicle, the least speed
        /// they must still be made for.
        own_snow_speed_floor / with_own_snow_speed_floor: Velocity = "snow_speed_floor_kmh" [kmh in_kmh "km/h" 50 to 300];
        /// Whether a load index below the original's is accepted as long as the loads are carried.
        lower_load_index / with_lower_load_index: bool = "lower_load_index";
        /// Whether the rear tires of a towing vehicle may carry 15 % more up to 100 km/h.
        towing_allowance / with_towing_allowance: bool = "towing_allowance";
    }
}

impl Default for Limits {
    fn default() -> Self {
        Self::of(LimitSet::Default)
    }
}

/// The caller's limit, if there is one, else that of the set.
fn own_or<Q: Copy>(own: Option<Q>, set: Option<Limit<Q>>) -> Option<Limit<Q>> {
    own.map(|value| Limit::new(value, Citation::CALLER)).or(set)
}

impl Limits {
    /// The limits of a named set.
    pub const fn of(set: LimitSet) -> Self {
        Self::new().with_named_set(set)
    }

    /// The set these began with.
    pub fn set(&self) -> LimitSet {
        self.named_set().unwrap_or(LimitSet::Default)
    }

    fn of_set<Q: Copy>(&self, of: Of, unit: fn(f64) -> Q) -> Option<Limit<Q>> {
        let row = rows::row(of, self.set())?;
        Some(Limit::new(unit(row.value?), row.citation))
    }

    /// The caller's limit, else that of the set, of what every set has.
    fn own_or_else<Q: Copy + Default>(&self, own: Option<Q>, of: Of, unit: fn(f64) -> Q) -> Limit<Q> {
        own_or(own, self.of_set(of, unit)).unwrap_or(Limit::new(Q::default(), Citation::CALLER))
    }

    /// Largest growth of track, as a share of the original; none where a jurisdiction gives a length.
    pub fn track_growth_share(&self) -> Option<Limit<Ratio>> {
        own_or(self.own_track_growth_share(), self.of_set(Of::TrackShare, units::percent))
    }

    /// Largest growth of track, as a length.
    pub fn track_growth(&self) -> Option<Limit<Length>> {
        own_or(self.own_track_growth(), self.of_set(Of::Track, units::mm))
    }

    /// Largest growth of overall diameter, as a share of the original; common practice does not count where
    /// [`Limits::diameter_growth`] gives a jurisdiction's length.
    pub fn diameter_growth_share(&self) -> Limit<Ratio> {
        self.own_or_else(self.own_diameter_share(), Of::DiameterGrowthShare, units::percent)
    }

    /// Largest loss of overall diameter, as a share of the original; common practice does not count where
    /// [`Limits::diameter_loss`] gives a jurisdiction's length.
    ///
    /// ```
    /// use beadseat::{fitment::{LimitSet, Limits}, units::percent};
    /// let belgian = Limits::of(LimitSet::BelgianInspection);
    /// assert_eq!(belgian.diameter_loss_share().value(), percent(2.0));
    /// assert_eq!(belgian.diameter_growth_share().value(), percent(1.5));
    /// ```
    pub fn diameter_loss_share(&self) -> Limit<Ratio> {
        self.own_or_else(self.own_diameter_share(), Of::DiameterLossShare, units::percent)
    }

    /// Largest growth of overall diameter, as a length.
    pub fn diameter_growth(&self) -> Option<Limit<Length>> {
        own_or(self.own_diameter_growth(), self.of_set(Of::DiameterGrowth, units::mm))
    }

    /// Largest loss of overall diameter, as a length.
    pub fn diameter_loss(&self) -> Option<Limit<Length>> {
        own_or(self.own_diameter_loss(), self.of_set(Of::DiameterLoss, units::mm))
    }

    /// Least static clearance to be left; where it is not the caller's, no more than the original had, if it had any.
    pub fn clearance(&self) -> Limit<Length> {
        self.own_or_else(self.own_clearance(), Of::Clearance, units::mm)
    }

    /// Largest share of the capacity at the placard pressure that the normal load may take.
    pub fn load_reserve(&self) -> Limit<Ratio> {
        self.own_or_else(self.own_load_reserve(), Of::LoadReserve, units::percent)
    }

    /// Whether a normal load above [`Limits::load_reserve`] breaks a law rather than good practice.
    pub fn load_reserve_is_law(&self) -> bool {
        rows::row(Of::LoadReserve, self.set()).is_some_and(|row| row.is_law)
    }

    /// Largest change of the ratio of front and rear rolling circumference with all-wheel drive.
    pub fn circumference_all_wheel_drive(&self) -> Limit<Ratio> {
        self.own_or_else(self.own_circumference_all_wheel_drive(), Of::RatioAllWheelDrive, units::percent)
    }

    /// The same with anti-lock brakes or stability control.
    pub fn circumference_stability(&self) -> Limit<Ratio> {
        self.own_or_else(self.own_circumference_stability(), Of::RatioStability, units::percent)
    }

    /// Most play between bore and spigot of a wheel that the spigot centres.
    pub fn centring_play(&self) -> Limit<Length> {
        self.own_or_else(self.own_centring_play(), Of::CentringPlay, units::mm)
    }

    /// Least height of spigot that must reach into the bore, behind a spacer.
    pub fn spigot_engagement(&self) -> Limit<Length> {
        self.own_or_else(self.own_spigot_engagement(), Of::SpigotEngagement, units::mm)
    }

    /// Least clearance to anything over all steer and travel, after the dynamic allowance.
    pub fn swept_clearance(&self) -> Limit<Length> {
        self.own_or_else(self.own_swept_clearance(), Of::SweptClearance, units::mm)
    }

    /// What is taken off that clearance for the movement of rubber and bushes under load.
    pub fn dynamic_allowance(&self) -> Limit<Length> {
        self.own_or_else(self.own_dynamic_allowance(), Of::DynamicAllowance, units::mm)
    }

    /// The clearance below which a wheel is taken to touch: nothing by common practice, the whole of what a
    /// jurisdiction or the caller asks for.
    pub(super) fn contact_threshold(&self) -> Length {
        let limit = self.swept_clearance();
        if limit.citation() == Citation::SWEPT_CLEARANCE { units::mm(0.0) } else { limit.value() }
    }

    /// Least turns of a thread that must hold; none where neither the caller nor the table has it.
    pub fn engagement_turns(&self, thread: Thread) -> Option<Limit<Ratio>> {
        let chart = thread.min_turns().map(|turns| Limit::new(turns, Citation::LEAST_TURNS));
        own_or(self.own_engagement_turns(), chart)
    }

    /// Least clearance between the wheel and the brake.
    pub fn brake_clearance(&self) -> Limit<Length> {
        self.own_or_else(self.own_brake_clearance(), Of::BrakeClearance, units::mm)
    }

    /// Greatest age of a tire; what tire makers advise, unless the caller says otherwise.
    pub fn tire_age(&self) -> AgeLimit {
        self.own_tire_age().map_or(AgeLimit::TIRE_MAKERS, |years| AgeLimit::stated(years.get()))
    }

    /// Least depth of tread of a kind of vehicle at a place: the caller's, the legal one of a jurisdiction's
    /// set, or the depth at which a tire is worn down to its own bars. Trucks and buses count as commercial
    /// vehicles in the US.
    pub fn tread(&self, kind: Kind, place: Position) -> TreadLimit {
        if let Some(stated) = self.own_tread().and_then(|depth| TreadLimit::stated(depth).ok()) {
            return stated;
        }
        match (self.set(), kind) {
            (LimitSet::UnitedStates, Kind::Truck | Kind::Bus) => match place {
                Position::Front | Position::FrontLeft | Position::FrontRight => TreadLimit::US_STEERED_AXLE,
                _ => TreadLimit::US_OTHER_AXLE,
            },
            (LimitSet::UnitedStates, _) => TreadLimit::US_LIGHT_VEHICLE,
            (LimitSet::EuropeanUnion, Kind::Passenger | Kind::Multipurpose) => TreadLimit::EU_CAR,
            _ => TreadLimit::WORN_TO_BARS,
        }
    }

    /// The least speed of a snow tire that the caller's jurisdiction lets be slower than the vehicle.
    pub fn snow_speed_floor(&self) -> Option<Limit<Velocity>> {
        own_or(self.own_snow_speed_floor(), None)
    }

    /// Whether a load index below the original's is accepted as long as the loads are carried.
    pub fn allows_lower_load_index(&self) -> bool {
        self.lower_load_index().unwrap_or(false)
    }

    /// Whether the rear tires of a towing vehicle may carry 15 % more up to 100 km/h.
    pub fn allows_towing_allowance(&self) -> bool {
        self.towing_allowance().unwrap_or(self.set() == LimitSet::EuropeanUnion)
    }
}
