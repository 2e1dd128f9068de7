//! Torque to preload with the friction of thread and seat.

use super::nut_factor::{checked_force, checked_torque};
use super::{SeatContact, Thread};
use crate::units::{
    self, Force, Length, Ratio, Stress, Torque, in_megapascals, in_meters, in_mm, in_mm2, in_newtons,
    in_ratio,
};
use crate::{Citation, OutOfRange, Toleranced};

/// `1/cos 30°`: the flanks of a 60° thread press harder than the preload by this, printed as 1.1547.
const FLANK: f64 = 1.154_700_538_379_251_5;

/// The friction of a fastener while it turns: of its thread, and of its head or nut on the seat.
///
/// Friction scatters more than anything else in tightening, so each is an interval.
///
/// ```
/// use beadseat::{Toleranced, units::ratio, wheel::tightening::Friction};
/// let dry = Toleranced::new(ratio(0.10), ratio(0.14), ratio(0.18)).ok_or("not in order")?;
/// assert!(Friction::new(dry, dry).is_ok());
/// assert!(Friction::new(dry, Toleranced::exact(ratio(0.0))).is_err());
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Friction {
    thread: Toleranced<f64>,
    seat: Toleranced<f64>,
}

impl Friction {
    /// The coefficients of friction of thread and seat.
    ///
    /// # Errors
    /// Outside 0.03 to 0.5.
    pub fn new(thread: Toleranced<Ratio>, seat: Toleranced<Ratio>) -> Result<Self, OutOfRange> {
        Ok(Self {
            thread: thread.checked(|mu| checked_friction("thread friction", mu))?,
            seat: seat.checked(|mu| checked_friction("seat friction", mu))?,
        })
    }

    /// The coefficient of friction of the thread.
    pub fn thread(&self) -> Toleranced<Ratio> {
        self.thread.map(units::ratio)
    }

    /// The coefficient of friction of the seat.
    pub fn seat(&self) -> Toleranced<Ratio> {
        self.seat.map(units::ratio)
    }
}

/// A coefficient of friction between steel surfaces.
pub(super) fn checked_friction(what: &'static str, coefficient: Ratio) -> Result<f64, OutOfRange> {
    OutOfRange::check(what, in_ratio(coefficient), "", 0.03, 0.5)
}

/// A wheel fastener being tightened: its thread, its seat and their friction.
///
/// `T = F·[(d2/2)·tan(λ + ρ) + μb·rb]`: torque `T`, preload `F`, pitch diameter `d2`, lead angle
/// `tan λ = P/(π·d2)`, friction angle of the 60° thread `tan ρ = 1.1547·μt`, friction `μb` of the seat and
/// its [lever](SeatContact::friction_lever) `rb`. The sum of the angles is taken exactly; the common
/// approximation `tan λ + tan ρ` promises too much preload: a quarter of a percent at ordinary friction, up
/// to 3 % at the highest. Derived from ISO 16047 and Shigley, *Mechanical Engineering Design*, from memory.
///
/// Each result is an interval, because friction is one. It describes dry or lubricated parts as the
/// friction does; it is never a torque to use: the vehicle or wheel maker's figure rules.
///
/// ```
/// use beadseat::{Toleranced, units::{kilonewtons, mm, nm, ratio}};
/// use beadseat::wheel::{tightening::{Friction, SeatContact, Tightening}, PropertyClass, Seat, Thread};
///
/// let thread = Thread::parse("M14x1.5")?;
/// let mu = Toleranced::within(ratio(0.14), ratio(0.04));
/// let cone = SeatContact::ring(Seat::Cone60, mm(15.0), mm(24.0))?;
/// let bolt = Tightening::new(thread, cone, Friction::new(mu, mu)?);
///
/// let torque = Toleranced::exact(nm(140.0));
/// let preload = bolt.preload(torque)?;
/// assert!(preload.min() > kilonewtons(27.3) && preload.max() < kilonewtons(47.6));
/// let proof = PropertyClass::C10_9.proof_load(thread).ok_or("no such class")?;
/// assert!(bolt.share_of(proof, torque)?.max() < ratio(0.5));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tightening {
    thread: Thread,
    contact: SeatContact,
    friction: Friction,
}

impl Tightening {
    /// A thread that is screwed in until its head or nut bears on the seat.
    pub const fn new(thread: Thread, contact: SeatContact, friction: Friction) -> Self {
        Self { thread, contact, friction }
    }

    /// `tan(λ + ρ)` at a friction of the thread. Its denominator stays above 0.7 in all threads and
    /// frictions that can be described.
    fn climb(&self, mu: f64) -> f64 {
        let (lead, friction) = (self.thread.lead_slope(), FLANK * mu);
        (lead + friction) / (1.0 - lead * friction)
    }

    /// Torque for each unit of preload, in millimetres, at a `tan(λ + ρ)` and a friction of the seat.
    fn lever_mm(&self, climb: f64, seat: f64) -> f64 {
        in_mm(self.thread.pitch_diameter()) / 2.0 * climb + seat * in_mm(self.contact.friction_lever())
    }

    fn climbs(&self) -> Toleranced<f64> {
        self.friction.thread.map(|mu| self.climb(mu))
    }

    /// The lever between preload and torque, `T/F`.
    ///
    /// ```
    /// # use beadseat::{Toleranced, units::{mm, ratio}};
    /// # use beadseat::wheel::{tightening::{Friction, SeatContact, Tightening}, Seat, Thread};
    /// let mu = Toleranced::exact(ratio(0.12));
    /// let flat = SeatContact::ring(Seat::Flat, mm(13.0), mm(23.0))?;
    /// let nut = Tightening::new(Thread::parse("M12x1.5")?, flat, Friction::new(mu, mu)?);
    /// assert!((nut.torque_per_preload().nominal() - mm(2.088669)).abs() < mm(1e-6));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn torque_per_preload(&self) -> Toleranced<Length> {
        let (climb, seat) = (self.climbs(), self.friction.seat);
        Toleranced::ordered(
            units::mm(self.lever_mm(climb.min(), seat.min())),
            units::mm(self.lever_mm(climb.nominal(), seat.nominal())),
            units::mm(self.lever_mm(climb.max(), seat.max())),
        )
    }

    /// The nut factor that these parts amount to, `K = T/(F·d)`.
    ///
    /// ```
    /// # use beadseat::{Toleranced, units::{mm, ratio}};
    /// # use beadseat::wheel::{tightening::{Friction, SeatContact, Tightening}, Seat, Thread};
    /// let mu = Toleranced::exact(ratio(0.15));
    /// let cone = SeatContact::ring(Seat::Cone60, mm(13.0), mm(20.0))?;
    /// let nut = Tightening::new(Thread::parse("M12x1.5")?, cone, Friction::new(mu, mu)?);
    /// assert!((nut.nut_factor().nominal() - ratio(0.306467)).abs() < ratio(1e-6));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn nut_factor(&self) -> Toleranced<Ratio> {
        self.torque_per_preload().map(|lever| lever / self.thread.major_diameter())
    }

    /// The preload of a torque: the least with the highest friction.
    ///
    /// # Errors
    /// If the torque is not in 0.1 to 5000 N·m.
    pub fn preload(&self, torque: Toleranced<Torque>) -> Result<Toleranced<Force>, OutOfRange> {
        let torque = torque.checked(checked_torque)?;
        let lever = self.torque_per_preload().map(in_meters);
        Ok(Toleranced::ordered(
            units::newtons(torque.min() / lever.max()),
            units::newtons(torque.nominal() / lever.nominal()),
            units::newtons(torque.max() / lever.min()),
        ))
    }

    /// The torque that may give a preload: below its minimum no friction gives it, from its maximum on
    /// every friction does.
    ///
    /// # Errors
    /// If the preload is not in 1 N to 1000 kN.
    ///
    /// ```
    /// # use beadseat::{Toleranced, units::{kilonewtons, mm, nm, ratio}};
    /// # use beadseat::wheel::{tightening::{Friction, SeatContact, Tightening}, Seat, Thread};
    /// let mu = Toleranced::within(ratio(0.12), ratio(0.03));
    /// let ball = SeatContact::circle(Seat::BallR13, mm(9.0))?;
    /// let bolt = Tightening::new(Thread::parse("M14x1.5")?, ball, Friction::new(mu, mu)?);
    /// let torque = bolt.torque_for(kilonewtons(45.0))?;
    /// let preload = bolt.preload(Toleranced::exact(torque.max()))?;
    /// assert!((preload.min() - kilonewtons(45.0)).abs() < kilonewtons(1e-9));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn torque_for(&self, preload: Force) -> Result<Toleranced<Torque>, OutOfRange> {
        let preload = checked_force("preload", preload)?;
        Ok(self.torque_per_preload().map(|lever| units::nm(preload * in_meters(lever))))
    }

    /// The preload of a torque as a share of a force, such as the proof load of the
    /// [class](super::PropertyClass::proof_load) or the [clamp at yield](Tightening::clamp_at_yield).
    ///
    /// # Errors
    /// If the force is not in 1 N to 1000 kN, or the torque not in 0.1 to 5000 N·m.
    pub fn share_of(
        &self,
        force: Force,
        torque: Toleranced<Torque>,
    ) -> Result<Toleranced<Ratio>, OutOfRange> {
        let force = checked_force("force", force)?;
        Ok(self.preload(torque)?.map(|preload| units::ratio(in_newtons(preload) / force)))
    }

    /// Shear over tension, `τ/σ`, in each unit of `tan(λ + ρ)`: the torque of the thread is
    /// `F·(d2/2)·tan(λ + ρ)`, and a rod of diameter `ds` has the section moduli that give `2·d2/ds`.
    fn shear_per_climb(&self) -> f64 {
        in_ratio(self.thread.pitch_diameter() / self.thread.stress_diameter()) * 2.0
    }

    /// The shear of the thread's torque over the tension of the preload, `τ/σ = 2·(d2/ds)·tan(λ + ρ)` on
    /// the [stress diameter](Thread::stress_diameter) `ds`.
    ///
    /// ```
    /// # use beadseat::{Toleranced, units::{mm, ratio}};
    /// # use beadseat::wheel::{tightening::{Friction, SeatContact, Tightening}, Seat, Thread};
    /// let mu = Toleranced::exact(ratio(0.12));
    /// let ball = SeatContact::circle(Seat::BallR12, mm(8.5))?;
    /// let bolt = Tightening::new(Thread::parse("M12x1.5")?, ball, Friction::new(mu, mu)?);
    /// assert!((bolt.shear_to_tension().nominal() - ratio(0.380892)).abs() < ratio(1e-6));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn shear_to_tension(&self) -> Toleranced<Ratio> {
        self.climbs().map(|climb| units::ratio(self.shear_per_climb() * climb))
    }

    /// Tension and torsion together, for each unit of tension, after von Mises: `√(1 + 3·(τ/σ)²)`.
    fn combined(&self, climb: f64) -> f64 {
        let shear = self.shear_per_climb() * climb;
        libm::sqrt(1.0 + 3.0 * shear * shear)
    }

    /// The stress in the thread while it is being tightened, tension and torsion together:
    /// `√(σ² + 3·τ²)` (von Mises). Once the wrench is off, part of the torsion goes.
    ///
    /// The bounds are those of all frictions between the given ones, not of their ends alone: more friction
    /// in the thread means less tension but more torsion.
    ///
    /// # Errors
    /// If the torque is not in 0.1 to 5000 N·m.
    ///
    /// ```
    /// # use beadseat::{Toleranced, units::{megapascals, mm, nm, ratio}};
    /// # use beadseat::wheel::{tightening::{Friction, SeatContact, Tightening}, Seat, Thread};
    /// let mu = Toleranced::exact(ratio(0.10));
    /// let ball = SeatContact::circle(Seat::BallR14, mm(9.5))?;
    /// let bolt = Tightening::new(Thread::parse("M14x1.5")?, ball, Friction::new(mu, mu)?);
    /// let stress = bolt.combined_stress(Toleranced::exact(nm(140.0)))?;
    /// assert!(stress.nominal() > megapascals(560.0) && stress.nominal() < megapascals(561.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn combined_stress(&self, torque: Toleranced<Torque>) -> Result<Toleranced<Stress>, OutOfRange> {
        let torque = torque.checked(checked_torque)?;
        let area = in_mm2(self.thread.stress_area());
        let stress = |torque: f64, climb: f64, seat: f64| {
            torque * 1000.0 / self.lever_mm(climb, seat) / area * self.combined(climb)
        };
        let (climb, seat) = (self.climbs(), self.friction.seat);
        let highest = |climb| stress(torque.max(), climb, seat.min());
        // Over `tan(λ + ρ)` the stress falls to where its derivative is zero, and rises from there.
        let shear = self.shear_per_climb();
        let (half, rest) = (in_mm(self.thread.pitch_diameter()) / 2.0, self.lever_mm(0.0, seat.max()));
        let turning = (half / (3.0 * shear * shear * rest)).max(climb.min()).min(climb.max());
        let nominal = stress(torque.nominal(), climb.nominal(), seat.nominal());
        let least = stress(torque.min(), turning, seat.max());
        let most = highest(climb.min()).max(highest(climb.max()));
        // At the bottom of the curve rounding may put the nominal value below the least.
        let stress = Toleranced::ordered(least.min(nominal), nominal, most.max(nominal));
        Ok(stress.map(units::megapascals))
    }

    /// The preload at which the thread begins to yield while it is being tightened,
    /// `F = σy·As/√(1 + 3·(τ/σ)²)`: the least with the highest friction of the thread. The yield stress is
    /// that of the [class](super::PropertyClass::yield_stress) or the maker's.
    ///
    /// # Errors
    /// If the stress is not in 100 to 2000 MPa.
    ///
    /// ```
    /// # use beadseat::{Toleranced, units::{kilonewtons, mm, ratio}};
    /// # use beadseat::wheel::{tightening::{Friction, SeatContact, Tightening}, PropertyClass, Seat, Thread};
    /// let thread = Thread::parse("M14x1.5")?;
    /// let mu = Toleranced::within(ratio(0.12), ratio(0.02));
    /// let ball = SeatContact::circle(Seat::BallR14, mm(9.5))?;
    /// let bolt = Tightening::new(thread, ball, Friction::new(mu, mu)?);
    /// let stress = PropertyClass::C10_9.yield_stress(thread).ok_or("no such class")?;
    /// let clamp = bolt.clamp_at_yield(stress)?;
    /// assert!(clamp.min() > kilonewtons(95.2) && clamp.max() < kilonewtons(102.7));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn clamp_at_yield(&self, yield_stress: Stress) -> Result<Toleranced<Force>, OutOfRange> {
        let stress = OutOfRange::check("yield stress", in_megapascals(yield_stress), "MPa", 100.0, 2000.0)?;
        let clamp = |climb| units::newtons(stress * in_mm2(self.thread.stress_area()) / self.combined(climb));
        let climb = self.climbs();
        Ok(Toleranced::ordered(clamp(climb.max()), clamp(climb.nominal()), clamp(climb.min())))
    }

    /// The source of torque and preload; that of the stresses is [`Citation::COMBINED_STRESS`].
    pub const fn citation(&self) -> Citation {
        Citation::TIGHTENING_TORQUE
    }
}
