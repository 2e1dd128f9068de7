//! Torque to preload with one factor for all the friction.

use super::Thread;
use crate::units::{self, Force, Ratio, Torque, in_meters, in_newtons, in_nm, in_ratio};
use crate::{Citation, OutOfRange, Toleranced};

/// The nut factor `K` of the short form `F = T/(K·d)`: `F` the preload, `T` the torque, `d` the major
/// diameter of the thread.
///
/// K stands for thread, seat and lubricant together, so it must be stated: about 0.2 for a dry flat seat,
/// but 0.25 to 0.31 for a 60° cone, which doubles the lever of its friction. [`Tightening`] derives it from
/// the parts. Source: Shigley, *Mechanical Engineering Design*, from memory.
///
/// ```
/// use beadseat::{Toleranced, units::{kilonewtons, nm, ratio}, wheel::{tightening::NutFactor, Thread}};
/// let k = NutFactor::new(Toleranced::within(ratio(0.28), ratio(0.03)))?;
/// let preload = k.preload(Thread::parse("M14x1.5")?, Toleranced::exact(nm(140.0)))?;
/// assert!(preload.min() > kilonewtons(32.2) && preload.max() < kilonewtons(40.1));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// [`Tightening`]: super::Tightening
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NutFactor(Toleranced<f64>);

impl NutFactor {
    /// A nut factor and how far it may be off.
    ///
    /// # Errors
    /// Outside 0.03 to 1.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::ratio, wheel::tightening::NutFactor};
    /// assert!(NutFactor::new(Toleranced::exact(ratio(0.0))).is_err());
    /// ```
    pub fn new(k: Toleranced<Ratio>) -> Result<Self, OutOfRange> {
        Ok(Self(k.checked(|k| OutOfRange::check("nut factor", in_ratio(k), "", 0.03, 1.0))?))
    }

    /// The preload of a torque: the least with the largest factor.
    ///
    /// # Errors
    /// If the torque is not in 0.1 to 5000 N·m.
    pub fn preload(
        &self,
        thread: Thread,
        torque: Toleranced<Torque>,
    ) -> Result<Toleranced<Force>, OutOfRange> {
        let torque = torque.checked(checked_torque)?;
        let of = |torque, k| units::newtons(torque / (k * in_meters(thread.major_diameter())));
        let k = self.0;
        Ok(Toleranced::ordered(
            of(torque.min(), k.max()),
            of(torque.nominal(), k.nominal()),
            of(torque.max(), k.min()),
        ))
    }

    /// The torque `T = K·d·F` that may give a preload: from its maximum on, every factor gives it.
    ///
    /// # Errors
    /// If the preload is not in 1 N to 1000 kN.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::{kilonewtons, nm, ratio}, wheel::{tightening::NutFactor, Thread}};
    /// let k = NutFactor::new(Toleranced::exact(ratio(0.2)))?;
    /// let torque = k.torque_for(Thread::parse("M12x1.5")?, kilonewtons(45.0))?;
    /// assert!((torque.nominal() - nm(108.0)).abs() < nm(1e-9));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn torque_for(&self, thread: Thread, preload: Force) -> Result<Toleranced<Torque>, OutOfRange> {
        let moment = checked_force("preload", preload)? * in_meters(thread.major_diameter());
        Ok(self.0.map(|k| units::nm(k * moment)))
    }

    /// The source of the short form.
    pub const fn citation(&self) -> Citation {
        Citation::NUT_FACTOR
    }
}

/// A tightening torque in newton metres.
pub(super) fn checked_torque(torque: Torque) -> Result<f64, OutOfRange> {
    OutOfRange::check("torque", in_nm(torque), "N·m", 0.1, 5000.0)
}

/// The force of one fastener in newtons.
pub(super) fn checked_force(what: &'static str, force: Force) -> Result<f64, OutOfRange> {
    OutOfRange::check(what, in_newtons(force), "N", 1.0, 1e6)
}
