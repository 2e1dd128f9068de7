//! The speed at which water begins to carry a tire.

use crate::OutOfRange;
use crate::units::{self, Pressure, Velocity, in_psi};

/// A knot in km/h, exact by definition.
const KNOT_KMH: f64 = 1.852;

/// The speed at which a rotating tire begins to float on water deeper than its tread can drain:
/// `9·√p` knots with `p` in psi, about `6.35·√p` km/h with `p` in kPa. Source:
/// [NASA TN D-2056](crate::Citation::HYDROPLANING).
///
/// **An estimate of onset, never a safe speed.** Worn tread, a wide or lightly loaded tire, standing
/// braking and smooth surfaces bring it lower, and grip is long lost before it. Nor is more pressure than
/// the load needs a remedy.
///
/// # Errors
/// Outside 50 to 1200 kPa.
///
/// ```
/// use beadseat::{tire::rolling::hydroplaning_onset, units::{kpa, psi}, uom::si::velocity::kilometer_per_hour};
/// assert!((hydroplaning_onset(kpa(220.0))?.get::<kilometer_per_hour>() - 94.15).abs() < 0.01);
/// assert!(hydroplaning_onset(psi(24.0))? < hydroplaning_onset(psi(32.0))?);
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
pub fn hydroplaning_onset(pressure: Pressure) -> Result<Velocity, OutOfRange> {
    OutOfRange::check("inflation pressure", units::in_kpa(pressure), "kPa", 50.0, 1200.0)?;
    Ok(units::kmh(9.0 * KNOT_KMH * libm::sqrt(in_psi(pressure))))
}
