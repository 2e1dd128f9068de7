//! The loads of the strength tests that a wheel is rated by.
//!
//! They are what a test machine applies to the rated load, not what the road does. Only the loads are here:
//! how many turns a wheel must last at them, its maker's certificate says.

use crate::record::words;
use crate::units::{self, Angle, Energy, FREE_FALL, Force, Length, Mass, Ratio, Torque, Velocity};
use crate::units::{in_kg, in_mm, in_ratio};
use crate::wheel::Inset;
use crate::{Citation, OutOfRange};

words! {
    /// What a wheel is made of, as the bending test of SAE J328 parts wheels.
    ///
    /// ```
    /// assert_eq!(beadseat::wheel::strength::WheelMetal::Ferrous.name(), "ferrous");
    /// ```
    WheelMetal {
        /// A wheel of steel or iron.
        Ferrous = "ferrous",
        /// Aluminium of the 5000 series, formed cold.
        ColdFormedAluminium = "cold_formed_aluminium",
        /// Aluminium, cast or forged.
        CastOrForgedAluminium = "cast_or_forged_aluminium",
    }
}

/// The rotating bending (cornering fatigue) test of a standard: `M = S·F·(μ·r + |d|)`.
///
/// `F` is the weight of the rated load, `r` the loaded or dynamic radius of the largest tire, `d` the inset,
/// `μ` the friction between tire and road, `S` the factor of the test. The inset counts by its size: of a
/// wheel with outset a signed `d` would give less, and which standards sign it was not seen.
///
/// ```
/// use beadseat::{units::{kg, mm, nm}, wheel::{strength::BendingTest, Inset}};
/// let moment = BendingTest::UN_R124.moment(kg(690.0), mm(316.0), Inset::parse("ET45")?)?;
/// assert!((moment.greatest() - nm(4457.83)).abs() < nm(0.01));
/// assert!((moment.long_test() - nm(2228.91)).abs() < nm(0.01));
/// assert!(BendingTest::UN_R124.citation().is_from_memory());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BendingTest {
    friction: f64,
    factor: f64,
    citation: Citation,
}

impl BendingTest {
    /// UN R124, passenger cars: `μ` 0.9, `S` 2.0, from memory.
    pub const UN_R124: Self = Self { friction: 0.9, factor: 2.0, citation: Citation::BENDING_R124 };
    /// SAE J328 in an edition before that of 2021, passenger cars and light trucks: `μ` 0.7, `S` 1.6 for every
    /// wheel, from memory.
    pub const SAE_J328_EARLIER: Self =
        Self { friction: 0.7, factor: 1.6, citation: Citation::BENDING_J328_EARLIER };
    /// JWL, the Japanese standard of light alloy wheels: `μ` 0.7, `S` 1.5, from memory.
    pub const JWL: Self = Self { friction: 0.7, factor: 1.5, citation: Citation::BENDING_JWL };

    /// SAE J328 of 2021, passenger cars and light trucks, of a wheel for the front axle: `μ` 0.7, `S` 1.6 ferrous,
    /// 1.8 of cold-formed aluminium, 2.0 of cast or forged aluminium. As a test laboratory summarizes it.
    ///
    /// ```
    /// use beadseat::{units::ratio, wheel::strength::{BendingTest, WheelMetal}};
    /// let cast = BendingTest::sae_j328_front(WheelMetal::CastOrForgedAluminium);
    /// assert_eq!((cast.friction(), cast.factor()), (ratio(0.7), ratio(2.0)));
    /// ```
    pub const fn sae_j328_front(metal: WheelMetal) -> Self {
        Self::sae_j328(match metal {
            WheelMetal::Ferrous => 1.60,
            WheelMetal::ColdFormedAluminium => 1.80,
            WheelMetal::CastOrForgedAluminium => 2.00,
        })
    }

    /// The same, of a wheel for the rear axle: `S` 1.45, 1.55 and 1.75. A wheel that may stand on either axle is
    /// one for the front.
    ///
    /// ```
    /// use beadseat::{units::ratio, wheel::strength::{BendingTest, WheelMetal}};
    /// assert_eq!(BendingTest::sae_j328_rear(WheelMetal::Ferrous).factor(), ratio(1.45));
    /// ```
    pub const fn sae_j328_rear(metal: WheelMetal) -> Self {
        Self::sae_j328(match metal {
            WheelMetal::Ferrous => 1.45,
            WheelMetal::ColdFormedAluminium => 1.55,
            WheelMetal::CastOrForgedAluminium => 1.75,
        })
    }

    const fn sae_j328(factor: f64) -> Self {
        Self { friction: 0.7, factor, citation: Citation::BENDING_J328 }
    }

    /// SAE J267, trucks and buses: `μ` 0.7, as a test laboratory summarizes it. Its factor depends on the wheel
    /// and is the caller's.
    ///
    /// # Errors
    /// For a factor outside 1 to 5.
    ///
    /// ```
    /// use beadseat::{units::ratio, wheel::strength::BendingTest};
    /// assert_eq!(BendingTest::sae_j267(ratio(1.45))?.friction(), ratio(0.7));
    /// assert!(BendingTest::sae_j267(ratio(0.5)).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn sae_j267(factor: Ratio) -> Result<Self, OutOfRange> {
        Ok(Self { friction: 0.7, factor: check_factor(factor)?, citation: Citation::BENDING_J267 })
    }

    /// The test of another standard, from the caller's copy of it.
    ///
    /// # Errors
    /// For a friction outside 0.1 to 1.5, or a factor outside 1 to 5.
    ///
    /// ```
    /// use beadseat::{Status, units::ratio, wheel::strength::BendingTest};
    /// let test = BendingTest::stated(ratio(0.7), ratio(2.0))?;
    /// assert_eq!(test.citation().status(), Status::Stated);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn stated(friction: Ratio, factor: Ratio) -> Result<Self, OutOfRange> {
        let friction = OutOfRange::check("friction", in_ratio(friction), "", 0.1, 1.5)?;
        Ok(Self { friction, factor: check_factor(factor)?, citation: Citation::BENDING_STATED })
    }

    /// The friction between tire and road, `μ`.
    pub const fn friction(&self) -> Ratio {
        units::ratio(self.friction)
    }

    /// The factor of the test, `S`.
    pub const fn factor(&self) -> Ratio {
        units::ratio(self.factor)
    }

    /// The bending moment for a rated load, a loaded or dynamic tire radius and an inset.
    ///
    /// # Errors
    /// Outside 10 to 20 000 kg, and 50 to 1500 mm.
    pub fn moment(&self, load: Mass, radius: Length, inset: Inset) -> Result<BendingMoment, OutOfRange> {
        let force = FREE_FALL * check_load(load)?;
        let radius = OutOfRange::check("tire radius", in_mm(radius), "mm", 50.0, 1500.0)?;
        let arm = (self.friction * radius + in_mm(inset.length()).abs()) / 1000.0;
        Ok(BendingMoment(units::nm(self.factor * force * arm)))
    }

    /// The source of the constants.
    pub const fn citation(&self) -> Citation {
        self.citation
    }
}

/// The moment of a rotating bending test, and the two levels of it that a wheel is run at.
///
/// ```
/// use beadseat::{units::{kg, mm}, wheel::{strength::BendingTest, Inset}};
/// let moment = BendingTest::JWL.moment(kg(600.0), mm(300.0), Inset::parse("ET-20")?)?;
/// assert!(moment.long_test() < moment.short_test() && moment.short_test() < moment.greatest());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct BendingMoment(Torque);

impl BendingMoment {
    /// The whole moment, `S·F·(μ·r + |d|)`.
    pub const fn greatest(&self) -> Torque {
        self.0
    }

    /// Three quarters of it, at which one wheel is run for the shorter number of turns. Source of the level:
    /// [`Citation::BENDING_STAGES`], from memory; of UN R124 only.
    pub fn short_test(&self) -> Torque {
        self.0 * 0.75
    }

    /// Half of it, at which another wheel is run for the longer number of turns. Source as
    /// [`BendingMoment::short_test`].
    pub fn long_test(&self) -> Torque {
        self.0 * 0.5
    }
}

/// The radial fatigue test, in which the wheel with its tire rolls on a drum under `F = K·W`, `W` the weight
/// of the rated load.
///
/// `K` is 2.0 to 2.5, by standard and wheel, from memory; the caller says which.
///
/// ```
/// use beadseat::{units::{kg, ratio}, uom::si::force::newton, wheel::strength::RadialTest};
/// let force = RadialTest::new(ratio(2.5))?.force(kg(690.0))?;
/// assert!((force.get::<newton>() - 16_916.47).abs() < 0.01);
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RadialTest(f64);

impl RadialTest {
    /// With the factor `K` of a standard.
    ///
    /// # Errors
    /// Outside 1 to 5.
    pub fn new(factor: Ratio) -> Result<Self, OutOfRange> {
        Ok(Self(check_factor(factor)?))
    }

    /// The force on the drum for a rated load.
    ///
    /// # Errors
    /// Outside 10 to 20 000 kg.
    pub fn force(&self, load: Mass) -> Result<Force, OutOfRange> {
        Ok(units::base(self.0 * FREE_FALL * check_load(load)?))
    }

    /// The source of the form and of the span of `K`.
    pub const fn citation(&self) -> Citation {
        Citation::RADIAL_TEST
    }
}

/// The lateral impact test: a striker falls on the rim flange of a wheel with its tire, leaning by 13°, as
/// the wheel meets a curb.
///
/// ```
/// use beadseat::{units::kg, uom::si::energy::joule, wheel::strength::LateralImpact};
/// let test = LateralImpact::of(kg(550.0))?;
/// assert!((test.striker() - kg(510.0)).abs() < kg(1e-9));
/// assert!((test.energy().get::<joule>() - 1150.32).abs() < 0.01);
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LateralImpact {
    striker: Mass,
}

impl LateralImpact {
    /// How far the striker falls.
    pub const DROP: Length = units::mm(230.0);
    /// How far the wheel leans from the fall of the striker.
    pub const LEAN: Angle = units::deg(13.0);

    /// The test for a rated load `W`, with a striker of `0.6·W + 180 kg`.
    ///
    /// # Errors
    /// Outside 10 to 20 000 kg.
    pub fn of(load: Mass) -> Result<Self, OutOfRange> {
        Ok(Self { striker: units::kg(0.6 * check_load(load)? + 180.0) })
    }

    /// The mass of the striker.
    pub const fn striker(&self) -> Mass {
        self.striker
    }

    /// The energy of the striker when it meets the flange, `m·g·h`.
    pub fn energy(&self) -> Energy {
        units::base(in_kg(self.striker) * FREE_FALL * units::in_meters(Self::DROP))
    }

    /// The speed of the striker when it meets the flange, `√(2·g·h)`: the same for every wheel.
    ///
    /// ```
    /// use beadseat::{uom::si::velocity::meter_per_second, wheel::strength::LateralImpact};
    /// assert!((LateralImpact::speed_at_contact().get::<meter_per_second>() - 2.124).abs() < 0.001);
    /// ```
    pub fn speed_at_contact() -> Velocity {
        units::base(libm::sqrt(2.0 * FREE_FALL * units::in_meters(Self::DROP)))
    }

    /// The source of the test.
    pub const fn citation(&self) -> Citation {
        Citation::LATERAL_IMPACT
    }
}

fn check_load(load: Mass) -> Result<f64, OutOfRange> {
    OutOfRange::check("rated load", in_kg(load), "kg", 10.0, 20_000.0)
}

fn check_factor(factor: Ratio) -> Result<f64, OutOfRange> {
    OutOfRange::check("test factor", in_ratio(factor), "", 1.0, 5.0)
}
