//! How much torque the clamped wheel passes to the hub before it slips.

use super::BoltCircle;
use super::nut_factor::checked_force;
use super::tightening::checked_friction;
use crate::units::{
    self, FREE_FALL, Force, Length, Mass, Ratio, Torque, in_kg, in_meters, in_mm, in_nm, in_ratio,
};
use crate::{Citation, OutOfRange, Toleranced};

/// A wheel pressed on its hub by its fasteners: friction alone carries the torque, the fasteners are not
/// meant to bear on the holes.
///
/// `T = n·F·μ·D/2`: `n` fasteners with a clamp load of `F` each, friction `μ` between wheel and hub, bolt
/// circle `D`. The friction is taken on the bolt circle, where the pressure is. It is the capacity for
/// torque alone: the part of the wheel's vertical load that the spigot does not carry uses some of it.
///
/// ```
/// use beadseat::{Toleranced, literal, units::{kg, kilonewtons, mm, nm, ratio}};
/// use beadseat::wheel::{BoltCircle, tightening::{FrictionJoint, tire_torque}};
///
/// let clamp = Toleranced::within(kilonewtons(40.0), kilonewtons(12.0));
/// let joint = FrictionJoint::new(literal!(BoltCircle, "5x112"), clamp, Toleranced::exact(ratio(0.12)))?;
/// assert!((joint.slip_torque().nominal() - nm(1344.0)).abs() < nm(1e-9));
///
/// // A wheel that carries 530 kg on dry asphalt cannot ask for more than this.
/// let wheel = tire_torque(kg(530.0), ratio(1.0), mm(300.0))?;
/// let safety = joint.safety_against(wheel)?;
/// assert!(safety.nominal() < ratio(0.87) && safety.max() < ratio(1.13));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrictionJoint {
    slip: Toleranced<Torque>,
}

impl FrictionJoint {
    /// A wheel on its bolt circle, with the clamp load of each fastener, the
    /// [preload](super::Tightening::preload), and the friction between wheel and hub face.
    ///
    /// # Errors
    /// A clamp load outside 1 N to 1000 kN, a friction outside 0.03 to 0.5.
    ///
    /// ```
    /// use beadseat::{Toleranced, literal, units::{newtons, ratio}, wheel::{BoltCircle, tightening::FrictionJoint}};
    /// let loose = Toleranced::exact(newtons(0.0));
    /// let mu = Toleranced::exact(ratio(0.12));
    /// assert!(FrictionJoint::new(literal!(BoltCircle, "4x100"), loose, mu).is_err());
    /// ```
    pub fn new(
        holes: BoltCircle,
        clamp_load: Toleranced<Force>,
        friction: Toleranced<Ratio>,
    ) -> Result<Self, OutOfRange> {
        let clamp = clamp_load.checked(|force| checked_force("clamp load", force))?;
        let friction = friction.checked(|mu| checked_friction("hub face friction", mu))?;
        let lever = f64::from(holes.count()) * in_meters(holes.diameter()) / 2.0;
        let slip = |clamp: f64, friction: f64| units::nm(lever * clamp * friction);
        Ok(Self {
            slip: Toleranced::ordered(
                slip(clamp.min(), friction.min()),
                slip(clamp.nominal(), friction.nominal()),
                slip(clamp.max(), friction.max()),
            ),
        })
    }

    /// The torque about the spindle at which the wheel slips on the hub.
    pub const fn slip_torque(&self) -> Toleranced<Torque> {
        self.slip
    }

    /// The slip torque over a torque that the wheel gets, such as the most its
    /// [tire can pass](tire_torque): above 1 it holds.
    ///
    /// # Errors
    /// If the torque is not in 1 to 200 000 N·m.
    pub fn safety_against(&self, wheel_torque: Torque) -> Result<Toleranced<Ratio>, OutOfRange> {
        let torque = OutOfRange::check("wheel torque", in_nm(wheel_torque), "N·m", 1.0, 200_000.0)?;
        Ok(self.slip.map(|slip| units::ratio(in_nm(slip) / torque)))
    }

    /// The source of the capacity.
    pub const fn citation(&self) -> Citation {
        Citation::JOINT_SLIP
    }
}

/// The most torque that a tire can pass between road and wheel, braking or driving: the load on the wheel
/// times its grip on the road times its loaded radius.
///
/// # Errors
/// A load outside 1 to 20 000 kg, a grip outside 0.05 to 3, a radius outside 100 to 1500 mm.
///
/// ```
/// use beadseat::{units::{kg, mm, nm, ratio}, wheel::tightening::tire_torque};
/// let torque = tire_torque(kg(500.0), ratio(1.0), mm(300.0))?;
/// assert!((torque - nm(1470.9975)).abs() < nm(1e-9));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
pub fn tire_torque(wheel_load: Mass, grip: Ratio, loaded_radius: Length) -> Result<Torque, OutOfRange> {
    let load = OutOfRange::check("wheel load", in_kg(wheel_load), "kg", 1.0, 20_000.0)?;
    let grip = OutOfRange::check("grip", in_ratio(grip), "", 0.05, 3.0)?;
    let radius = OutOfRange::check("loaded radius", in_mm(loaded_radius), "mm", 100.0, 1500.0)?;
    Ok(units::nm(load * FREE_FALL * grip * radius / 1000.0))
}
