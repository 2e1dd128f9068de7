//! What use does to the load a tire may carry, apart from pressure, speed and camber.

use crate::OutOfRange;
use crate::tire::LoadIndex;
use crate::units::{self, Mass, Pressure, Ratio, Velocity, in_kmh, in_ratio};

/// What divides the load of a passenger tire that is not on a passenger car: 49 CFR 571.110 S4.2.2.
pub(crate) const ELSEWHERE: f64 = 1.10;

/// The share of the load at the placard pressure that the normal load may take: 49 CFR 571.110 S4.2.2.
const NORMAL_SHARE: f64 = 0.94;

/// EU 458/2011 Annex II: what rear tires carry more while towing, up to which speed, at how much more
/// pressure.
pub(crate) const TOWING_SHARE: f64 = 1.15;
pub(crate) const TOWING_TOP_KMH: f64 = 100.0;
pub(crate) const TOWING_KPA: f64 = 20.0;

/// The share of an axle that each of four passenger tires must carry: EU 458/2011 and UN R142, from
/// memory.
pub(crate) const DUAL_SHARE: f64 = 0.27;

/// The load of a passenger tire on a truck, bus, trailer or multipurpose vehicle: divided by 1.10.
/// Source: 49 CFR 571.110 S4.2.2.
///
/// ```
/// use beadseat::{tire::inflation::passenger_load_on_truck, units::lb, uom::si::mass::pound};
/// assert!((passenger_load_on_truck(lb(1433.0)).get::<pound>() - 1302.7).abs() < 0.05);
/// ```
pub fn passenger_load_on_truck(load: Mass) -> Mass {
    load / ELSEWHERE
}

/// The most that the vehicle's normal load may put on a tire: 94 % of what it carries at the placard
/// pressure. Source: 49 CFR 571.110 S4.2.2.
///
/// ```
/// use beadseat::{tire::inflation::normal_load_limit, units::kg};
/// assert_eq!(normal_load_limit(kg(650.0)), kg(611.0));
/// ```
pub fn normal_load_limit(load_at_placard: Mass) -> Mass {
    load_at_placard * NORMAL_SHARE
}

/// The load of a rear passenger tire while towing, in the EU: 15 % more, up to 100 km/h, at no less than
/// [`towing_pressure_increase`] above the pressure without a trailer. Source: EU 458/2011 Annex II.
///
/// # Errors
/// Above 100 km/h.
///
/// ```
/// use beadseat::{tire::inflation::towing_load, units::{kg, kmh}, uom::si::mass::kilogram};
/// assert!((towing_load(kg(615.0), kmh(100.0))?.get::<kilogram>() - 707.25).abs() < 1e-9);
/// assert!(towing_load(kg(615.0), kmh(110.0)).is_err());
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
pub fn towing_load(load: Mass, speed: Velocity) -> Result<Mass, OutOfRange> {
    OutOfRange::check("speed", in_kmh(speed), "km/h", 0.0, TOWING_TOP_KMH)?;
    Ok(load * TOWING_SHARE)
}

/// The extra pressure that goes with [`towing_load`]. Source: EU 458/2011 Annex II.
///
/// ```
/// assert_eq!(beadseat::tire::inflation::towing_pressure_increase(), beadseat::units::kpa(20.0));
/// ```
pub const fn towing_pressure_increase() -> Pressure {
    units::kpa(TOWING_KPA)
}

/// The load that each of four passenger tires on one axle counts for: it must be 0.27 of the axle, so a
/// tire counts for `1/(4·0.27)` of its load. Commercial tires have a load index for pairs instead.
/// Source: EU 458/2011 and UN R142, from memory.
///
/// ```
/// use beadseat::{tire::inflation::dual_passenger_load, units::kg, uom::si::mass::kilogram};
/// let axle = dual_passenger_load(kg(615.0)) * 4.0;
/// assert!((axle.get::<kilogram>() - 615.0 / 0.27).abs() < 1e-9);
/// ```
pub fn dual_passenger_load(load: Mass) -> Mass {
    load / (4.0 * DUAL_SHARE)
}

/// The lowest load index for an axle on a number of tires, when only a share of each tire's load counts:
/// `load · share ≥ axle / tires`. Source: EU 458/2011.
///
/// `None` when there is none, no tire, or no share.
///
/// ```
/// use beadseat::{tire::{LoadIndex, inflation::min_load_index}, units::{kg, percent}};
/// assert_eq!(min_load_index(kg(1060.0), 2, percent(100.0)), LoadIndex::new(86));
/// // A V tire at 240 km/h keeps 91 % of its load.
/// assert_eq!(min_load_index(kg(1100.0), 2, percent(91.0)), LoadIndex::new(91));
/// ```
pub fn min_load_index(axle: Mass, tires: u8, share: Ratio) -> Option<LoadIndex> {
    let share = in_ratio(share);
    if tires > 0 && share > 0.0 && share.is_finite() {
        LoadIndex::min_for(axle / f64::from(tires) / share)
    } else {
        None
    }
}
