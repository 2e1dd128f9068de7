//! What must be spun up when a vehicle speeds up: the inertia of a wheel, part by part.

use core::f64::consts::PI;
use core::ops::Add;

use crate::units::{
    self, Length, Mass, MassDensity, MomentOfInertia, Ratio, in_kg, in_kg_m2, in_kg_per_m3, in_meters, in_mm,
};
use crate::{Citation, OutOfRange};

/// Largest radius of a part, mm.
const LARGEST: f64 = 1500.0;

/// A part that turns with the wheel, or several together: its mass, and its moment of inertia about the
/// spindle.
///
/// A rim, a tread band or a bead is nearly a [ring](RotatingPart::ring); a sidewall, a disc or a whole tire
/// nearly an [annulus](RotatingPart::annulus). Parts are added with `+`. Every mass is the caller's: from a
/// scale, or from a [density](RotatingPart::shell); none is guessed from a size.
///
/// ```
/// use beadseat::{units::{kg, mm}, wheel::rotation::RotatingPart};
/// let tire = RotatingPart::annulus(kg(9.0), mm(203.0), mm(316.0))?;
/// let rim = RotatingPart::ring(kg(6.0), mm(200.0))?;
/// let disc = RotatingPart::annulus(kg(3.0), mm(30.0), mm(190.0))?;
/// let assembly = tire + rim + disc;
/// assert_eq!(assembly.mass(), kg(18.0));
/// // Rolling on 307 mm, its 18 kg count as 28 when the vehicle speeds up.
/// let felt = assembly.rolling_on(mm(307.0))?.effective_mass();
/// assert!(felt > kg(27.8) && felt < kg(27.9));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RotatingPart {
    mass: Mass,
    inertia: MomentOfInertia,
}

impl RotatingPart {
    /// A mass all at one radius, `I = m·r²`. Of a body of any shape the radius is its radius of gyration.
    ///
    /// # Errors
    /// Outside 0.001 to 2000 kg, and 0 to 1500 mm.
    ///
    /// ```
    /// use beadseat::{units::{kg, kg_m2, mm}, wheel::rotation::RotatingPart};
    /// assert_eq!(RotatingPart::ring(kg(1.0), mm(250.0))?.inertia(), kg_m2(0.0625));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn ring(mass: Mass, radius: Length) -> Result<Self, OutOfRange> {
        let mass = check_mass(mass)?;
        let r = check_radius("radius", radius, 0.0)?;
        Ok(Self { mass: units::kg(mass), inertia: units::kg_m2(mass * r * r) })
    }

    /// A mass spread evenly between two radii, `I = ½·m·(r1² + r2²)`; a full disc with an inner radius of 0.
    ///
    /// A tire taken so is a little too light to turn, since its tread is heavier than its sidewalls, and a
    /// rim with its spokes a little too heavy.
    ///
    /// # Errors
    /// Outside 0.001 to 2000 kg, for an inner radius below 0 or above the outer one, and an outer one above
    /// 1500 mm.
    ///
    /// ```
    /// use beadseat::{units::{kg, kg_m2, mm}, wheel::rotation::RotatingPart};
    /// assert_eq!(RotatingPart::annulus(kg(10.0), mm(0.0), mm(250.0))?.inertia(), kg_m2(0.3125));
    /// assert!(RotatingPart::annulus(kg(10.0), mm(260.0), mm(250.0)).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn annulus(mass: Mass, inner: Length, outer: Length) -> Result<Self, OutOfRange> {
        let mass = check_mass(mass)?;
        let r1 = check_radius("inner radius", inner, 0.0)?;
        let r2 = check_radius("outer radius", outer, in_mm(inner))?;
        Ok(Self { mass: units::kg(mass), inertia: units::kg_m2(0.5 * mass * (r1 * r1 + r2 * r2)) })
    }

    /// A cylindrical shell, as the barrel of a rim is one: `m = ρ·t·π·Dm·L`, `I = m·(Dm² + t²)/4`, with the
    /// mean diameter `Dm` and the length `L` along the spindle.
    ///
    /// # Errors
    /// Outside 100 to 25 000 kg/m³, for a thickness outside 0.1 to 100 mm or above the mean diameter, a
    /// mean diameter outside 50 to 1500 mm and a length outside 1 to 1500 mm.
    ///
    /// ```
    /// use beadseat::{units::{kg, kg_per_m3, mm}, wheel::rotation::RotatingPart};
    /// let rim = RotatingPart::shell(kg_per_m3(2680.0), mm(5.0), mm(440.0), mm(260.0))?;
    /// assert!((rim.mass() - kg(4.815_936)).abs() < kg(1e-6));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn shell(
        density: MassDensity,
        thickness: Length,
        mean_diameter: Length,
        length: Length,
    ) -> Result<Self, OutOfRange> {
        let density = OutOfRange::check("density", in_kg_per_m3(density), "kg/m³", 100.0, 25_000.0)?;
        let d = OutOfRange::check("mean diameter", in_mm(mean_diameter), "mm", 50.0, LARGEST)? / 1000.0;
        let thickest = in_mm(mean_diameter).min(100.0);
        let t = OutOfRange::check("thickness", in_mm(thickness), "mm", 0.1, thickest)? / 1000.0;
        let l = OutOfRange::check("length", in_mm(length), "mm", 1.0, LARGEST)? / 1000.0;
        let mass = density * t * PI * d * l;
        Ok(Self { mass: units::kg(mass), inertia: units::kg_m2(mass * (d * d + t * t) / 4.0) })
    }

    /// A part whose inertia was measured, or is stated by its maker.
    ///
    /// # Errors
    /// Outside 0.001 to 2000 kg, and for an inertia below 0 or more than the mass has at 1500 mm.
    ///
    /// ```
    /// use beadseat::{units::{kg, kg_m2}, wheel::rotation::RotatingPart};
    /// assert!(RotatingPart::stated(kg(9.0), kg_m2(0.22)).is_ok());
    /// assert!(RotatingPart::stated(kg(9.0), kg_m2(22.0)).is_err());
    /// ```
    pub fn stated(mass: Mass, inertia: MomentOfInertia) -> Result<Self, OutOfRange> {
        let mass = check_mass(mass)?;
        let most = mass * LARGEST * LARGEST / 1e6;
        let inertia = OutOfRange::check("moment of inertia", in_kg_m2(inertia), "kg·m²", 0.0, most)?;
        Ok(Self { mass: units::kg(mass), inertia: units::kg_m2(inertia) })
    }

    /// The sum of parts; `None` without any.
    ///
    /// ```
    /// use beadseat::{units::{kg, mm}, wheel::rotation::RotatingPart};
    /// let parts = [RotatingPart::ring(kg(2.0), mm(300.0))?, RotatingPart::ring(kg(1.0), mm(200.0))?];
    /// assert_eq!(RotatingPart::sum(parts), Some(parts[0] + parts[1]));
    /// assert_eq!(RotatingPart::sum([]), None);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn sum(parts: impl IntoIterator<Item = Self>) -> Option<Self> {
        parts.into_iter().reduce(Add::add)
    }

    /// The mass of the part.
    pub const fn mass(&self) -> Mass {
        self.mass
    }

    /// The moment of inertia about the spindle.
    pub const fn inertia(&self) -> MomentOfInertia {
        self.inertia
    }

    /// The part on a wheel that rolls on an effective radius, such as
    /// [`Rolling::effective_radius`](crate::tire::rolling::Rolling::effective_radius).
    ///
    /// # Errors
    /// Outside 50 to 1500 mm.
    pub fn rolling_on(self, radius: Length) -> Result<RollingPart, OutOfRange> {
        let radius = check_radius("rolling radius", radius, 50.0)?;
        Ok(RollingPart { part: self, radius })
    }

    /// The source of the formulas.
    pub const fn citation(&self) -> Citation {
        Citation::ROTATING_INERTIA
    }
}

impl Add for RotatingPart {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { mass: self.mass + other.mass, inertia: self.inertia + other.inertia }
    }
}

fn check_mass(mass: Mass) -> Result<f64, OutOfRange> {
    OutOfRange::check("mass", in_kg(mass), "kg", 0.001, 2000.0)
}

/// A radius in metres, held in millimetres.
fn check_radius(what: &'static str, radius: Length, least: f64) -> Result<f64, OutOfRange> {
    Ok(in_meters(units::mm(OutOfRange::check(what, in_mm(radius), "mm", least, LARGEST)?)))
}

/// A rotating part on a wheel that rolls: it is pushed along and spun up at once.
///
/// ```
/// use beadseat::{units::{kg, mm, ratio}, wheel::rotation::RotatingPart};
/// // Mass at the very tread counts twice.
/// let tread = RotatingPart::ring(kg(1.0), mm(300.0))?.rolling_on(mm(300.0))?;
/// assert!((tread.mass_factor() - ratio(2.0)).abs() < ratio(1e-12));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RollingPart {
    part: RotatingPart,
    /// Metres.
    radius: f64,
}

impl RollingPart {
    /// The part whose inertia this is.
    pub const fn part(&self) -> RotatingPart {
        self.part
    }

    /// The mass that its turning alone is worth, `I/r²`.
    ///
    /// ```
    /// use beadseat::{units::{kg, mm}, wheel::rotation::RotatingPart};
    /// let turning = RotatingPart::annulus(kg(10.0), mm(0.0), mm(250.0))?.rolling_on(mm(300.0))?;
    /// assert!((turning.equivalent_mass() - kg(3.472_222)).abs() < kg(1e-6));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn equivalent_mass(&self) -> Mass {
        units::kg(in_kg_m2(self.part.inertia) / (self.radius * self.radius))
    }

    /// The mass that the vehicle feels when it speeds up or brakes, `m + I/r²`.
    pub fn effective_mass(&self) -> Mass {
        self.part.mass + self.equivalent_mass()
    }

    /// How many times its own mass the vehicle feels, `1 + I/(m·r²)`.
    pub fn mass_factor(&self) -> Ratio {
        self.effective_mass() / self.part.mass
    }
}

/// What becomes of a vehicle's acceleration, on the same pull at the tread, when parts are exchanged:
/// effective mass before over effective mass after. Each pair is what comes off and what goes on; `vehicle`
/// is the mass with the parts that come off.
///
/// Larger tires also lower the pull that the engine makes at the tread, which is a matter of
/// [gearing](crate::tire::rolling::effective_axle_ratio).
///
/// # Errors
/// For a vehicle lighter than the parts that come off, or outside 1 to 100 000 kg.
///
/// ```
/// use beadseat::{units::{kg, mm, percent, ratio}, wheel::rotation::{RotatingPart, acceleration_ratio}};
/// let old = RotatingPart::annulus(kg(17.0), mm(150.0), mm(316.0))?.rolling_on(mm(307.0))?;
/// let new = RotatingPart::annulus(kg(20.0), mm(150.0), mm(316.0))?.rolling_on(mm(307.0))?;
/// // Four wheels, each 3 kg heavier, on a car of 1400 kg.
/// let change = acceleration_ratio(kg(1400.0), &[(old, new); 4])? - ratio(1.0);
/// assert!(change < percent(-1.3) && change > percent(-1.4));
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
pub fn acceleration_ratio(
    vehicle: Mass,
    exchanged: &[(RollingPart, RollingPart)],
) -> Result<Ratio, OutOfRange> {
    let sum =
        |of: fn(&(RollingPart, RollingPart)) -> Mass| exchanged.iter().map(of).fold(0.0, |s, m| s + in_kg(m));
    let least = sum(|(old, _)| old.part.mass).max(1.0);
    let vehicle = OutOfRange::check("vehicle mass", in_kg(vehicle), "kg", least, 100_000.0)?;
    let before = vehicle + sum(|(old, _)| old.equivalent_mass());
    let after = vehicle - sum(|(old, _)| old.part.mass) + sum(|(_, new)| new.effective_mass());
    Ok(units::ratio(before / after))
}
