//! A wheel and tire with everything that goes on the hub with them.

use super::check::Position;
use crate::record::{Optional, record};
use crate::text::{ParseError, tri};
use crate::tire::{
    RimRange, Tire,
    condition::{ArrowTurn, SideFacingOut, VehicleSide},
    identification::DateCode,
};
use crate::units::{Length, Mass, Pressure, Torque};
use crate::wheel::{
    Adaptor, Backspacing, BackspacingError, FastenerKind, Inset, PropertyClass, Seat, Thread, Valve, Wheel,
};

record! {
    /// Bolts or nuts that come with a wheel.
    ///
    /// ```
    /// use beadseat::fitment::Fasteners;
    /// let bolts = Fasteners::new().with_thread("M14x1.5".parse()?).with_seat("cone 60".parse()?);
    /// assert!(bolts.thread().is_some());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    #[derive(Copy)]
    Fasteners {
        /// The thread of the fasteners.
        thread / with_thread: Thread = "thread";
        /// The shape of the seat that presses on the wheel.
        seat / with_seat: Seat = "seat";
        /// Whether they are bolts or nuts.
        kind / with_kind: FastenerKind = "kind";
        /// Length of thread that can engage, from the seat.
        usable_length / with_usable_length: Length = "usable_length_mm" [mm in_mm "mm" 1 to 200];
        /// The strength class on their heads, as 10.9.
        class / with_class: PropertyClass = "class";
    }
}

record! {
    /// One tire as it is, on one end of an axle; of several there, the oldest, the most worn, the one that
    /// is mounted wrong.
    ///
    /// ```
    /// use beadseat::{fitment::TireInUse, tire::condition::ArrowTurn, units::mm};
    /// let tire = TireInUse::new().with_date_code("2725".parse()?).with_tread_depth(mm(6.5))?.with_arrow(ArrowTurn::Clockwise);
    /// assert_eq!(tire.tread_depth(), Some(mm(6.5)));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[derive(Copy)]
    TireInUse {
        /// The date group of its identification number.
        date_code / with_date_code: DateCode = "date_code";
        /// Depth of its shallowest major groove.
        tread_depth / with_tread_depth: Length = "tread_mm" [mm in_mm "mm" 0 to 40];
        /// The way its rotation arrow runs, for someone who looks at the wheel from beside the vehicle.
        arrow / with_arrow: ArrowTurn = "arrow";
        /// What its outward side says.
        facing_out / with_facing_out: SideFacingOut = "facing_out";
        /// Whether it has neither an arrow nor a marked side.
        unmarked / with_unmarked: bool = "unmarked";
    }
}

record! {
    /// What is on one axle: a tire on a wheel, at a pressure, held by fasteners.
    ///
    /// ```
    /// use beadseat::{fitment::Setup, units::{kg, kpa}};
    /// let setup = Setup::new("205/55R16 91V".parse()?, "6.5Jx16 H2 ET46 5x112 57.1".parse()?)
    ///     .with_wheel_rating(kg(615.0))?
    ///     .with_pressure(kpa(230.0))?;
    /// assert_eq!(setup.spacer(), None);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[derive(Copy)]
    Setup needs {
        /// The tire of this setup.
        tire: Tire = "tire";
        /// The wheel of this setup.
        wheel: Wheel = "wheel";
    } also {
        /// Backspacing of the wheel, from its mounting face to a straightedge over the inner edge of the rim, in place of the inset.
        backspacing = "backspacing_mm" [mm "mm" 25 to 400] by with_backspacing but forget_backspacing; } {
        /// Thickness of a spacer between hub and wheel.
        spacer / with_spacer: Length = "spacer_mm" [mm in_mm "mm" 0 to 200];
        /// An adaptor that is bolted to the hub and carries the wheel.
        adaptor / with_adaptor: Adaptor = "adaptor";
        /// Whether a centring ring fills the gap between bore and spigot.
        ring / with_ring: bool = "ring";
        /// Seat in the wheel for the fasteners.
        seat / with_seat: Seat = "seat";
        /// Fasteners that come with the wheel; without them, the hub's own are used.
        fasteners / with_fasteners: Fasteners = "fasteners";
        /// Torque that the fasteners are tightened to.
        torque / with_torque: Torque = "torque_nm" [nm in_nm "N·m" 10 to 1000];
        /// Load the wheel is rated for.
        wheel_rating / with_wheel_rating: Mass = "wheel_rating_kg" [kg in_kg "kg" 10 to 20000];
        /// Largest overall diameter of tire that the wheel's rating holds for.
        wheel_rating_diameter / with_wheel_rating_diameter: Length = "wheel_rating_diameter_mm" [mm in_mm "mm" 200 to 2000];
        /// Intended cold pressure for normal load.
        pressure / with_pressure: Pressure = "pressure_kpa" [kpa in_kpa "kPa" 50 to 1200];
        /// Intended cold pressure for full load and high speed.
        pressure_full_load / with_pressure_full_load: Pressure = "pressure_full_load_kpa" [kpa in_kpa "kPa" 50 to 1200];
        /// Pressure at which the tire carries its load index, as molded or from its maker.
        reference_pressure / with_reference_pressure: Pressure = "reference_kpa" [kpa in_kpa "kPa" 100 to 1200];
        /// Largest cold pressure molded on the tire.
        max_pressure / with_max_pressure: Pressure = "max_kpa" [kpa in_kpa "kPa" 100 to 1200];
        /// Largest pressure the wheel may hold.
        wheel_max_pressure / with_wheel_max_pressure: Pressure = "wheel_max_kpa" [kpa in_kpa "kPa" 100 to 1500];
        /// The valve in the wheel.
        valve / with_valve: Valve = "valve";
        /// Rim widths that the tire's maker approves.
        rim_range / with_rim_range: RimRange = "rim_range_in";
        /// Thickness of the wheel disc where it is clamped.
        disc_thickness / with_disc_thickness: Length = "disc_thickness_mm" [mm in_mm "mm" 1 to 100];
        /// Least inner radius of the rim's barrel over the brake.
        barrel_radius / with_barrel_radius: Length = "barrel_radius_mm" [mm in_mm "mm" 50 to 400];
        /// Thickness of the rim's metal at the well, from which the barrel of a standard rim follows.
        barrel_thickness / with_barrel_thickness: Length = "barrel_thickness_mm" [mm in_mm "mm" 1 to 30];
        /// How far the back of the spokes stands outboard of the wheel's mounting face, over the caliper.
        spoke_back / with_spoke_back: Length = "spoke_back_mm" [mm in_mm "mm" -200 to 300];
        /// Mass of one tire.
        tire_mass / with_tire_mass: Mass = "tire_mass_kg" [kg in_kg "kg" 1 to 500];
        /// Mass of one wheel.
        wheel_mass / with_wheel_mass: Mass = "wheel_mass_kg" [kg in_kg "kg" 1 to 500];
        /// Whether it is a snow tire.
        snow / with_snow: bool = "snow";
        /// The tire on the left end.
        left / with_left: TireInUse = "left";
        /// The tire on the right end.
        right / with_right: TireInUse = "right";
    }
}

impl Setup {
    /// From what is written on the tire and on the wheel, with nothing else known.
    ///
    /// # Errors
    /// A tire or a wheel that cannot be read: `225/45R31`, `7.5Kx17 ET42`.
    ///
    /// ```
    /// use beadseat::fitment::Setup;
    /// let setup = Setup::parse("225/45R17 94W XL", "7.5Jx17 ET42 5x112 66.6")?;
    /// assert_eq!(setup.wheel().to_string(), "7.5Jx17 ET42 5x112 66.6");
    /// assert!(Setup::parse("225/45R31", "7.5Jx17").is_err());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn parse(tire: &str, wheel: &str) -> Result<Self, ParseError> {
        Ok(Self::new(tri!(Tire::parse(tire)), tri!(Wheel::parse(wheel))))
    }

    /// The same with the backspacing of its wheel, where that is not stamped with its inset: in files `backspacing_mm`.
    ///
    /// The inset that follows takes half the width of the rim and a flange of 12.7 mm off it. The flange is assumed, so
    /// that nothing which rests on it is better than marginal.
    ///
    /// # Errors
    /// Outside 25 to 400 mm, or if it contradicts what the wheel is stamped with
    /// ([`Wheel::with_backspacing`]).
    ///
    /// ```
    /// use beadseat::{fitment::Setup, units::inches};
    /// let setup = Setup::parse("225/45R17", "7.5Jx17")?.with_backspacing(inches(5.5))?;
    /// assert_eq!(setup.wheel().to_string(), "7.5Jx17 BS 139.7");
    /// assert!(Setup::parse("225/45R17", "7.5Jx17 ET10")?.with_backspacing(inches(5.5)).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn with_backspacing(self, backspacing: Length) -> Result<Self, BackspacingError> {
        let wheel = self.wheel.with_backspacing(Backspacing::from_length(backspacing)?)?;
        Ok(Self { wheel, ..self })
    }

    /// The same as if no backspacing had been told; one that agrees with a stamped inset is not kept.
    #[cfg(feature = "serde")]
    fn forget_backspacing(&mut self) -> crate::file::Forgotten {
        use crate::file::Forgotten;
        match (self.wheel.backspacing(), self.wheel.inset()) {
            (Some(_), _) => self.wheel = self.wheel.without_place(),
            (None, Some(_)) => {}
            (None, None) => return Forgotten::Nothing,
        }
        Forgotten::Done
    }

    /// The tire on one end, as far as it is described.
    ///
    /// ```
    /// use beadseat::{fitment::{Setup, TireInUse}, tire::condition::VehicleSide};
    /// let worn = TireInUse::new().with_unmarked(true);
    /// let setup = Setup::new("205/55R16 91V".parse()?, "6.5Jx16".parse()?).with_right(worn);
    /// assert_eq!(setup.tire_on(VehicleSide::Right), Some(worn));
    /// assert_eq!(setup.tire_on(VehicleSide::Left), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn tire_on(&self, side: VehicleSide) -> Option<TireInUse> {
        match side {
            VehicleSide::Left => self.left,
            VehicleSide::Right => self.right,
        }
    }

    /// The same with its tire called otherwise.
    pub(crate) const fn called(self, tire: Tire) -> Self {
        Self { tire, ..self }
    }

    /// The same with its wheel at another inset.
    pub(crate) const fn at(self, inset: Inset) -> Self {
        Self { wheel: self.wheel.with_inset(inset), ..self }
    }

    /// The wheel with all that belongs to it, and another tire of which no more is known.
    pub(crate) const fn with_another_tire(self, tire: Tire) -> Self {
        Self::new(tire, self.wheel).on_wheel_of(&self)
    }

    /// The tire with all that belongs to it but its pressures, on another wheel of which no more is known.
    pub(crate) const fn with_another_wheel(self, wheel: Wheel) -> Self {
        let without = Self { pressure: Optional::NONE, pressure_full_load: Optional::NONE, ..self };
        without.on_wheel_of(&Self::new(self.tire, wheel))
    }

    /// The same with what is told of the tire on one end told of it on both: a spare wheel goes on either.
    pub(super) fn on_either_end(self) -> Self {
        Self { left: self.left.or(self.right), right: self.right.or(self.left), ..self }
    }

    /// How far spacer and adaptor hold the wheel off the hub.
    ///
    /// ```
    /// use beadseat::{fitment::Setup, units::mm, wheel::{Adaptor, Thickness}};
    /// let setup = Setup::new("205/55R16".parse()?, "7Jx16".parse()?)
    ///     .with_spacer(mm(3.0))?
    ///     .with_adaptor(Adaptor::new(Thickness::from_length(mm(25.0))?));
    /// assert_eq!(setup.hub_spacing(), mm(28.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn hub_spacing(&self) -> Length {
        let adaptor = self.adaptor.map(|adaptor| adaptor.thickness().length());
        self.spacer().unwrap_or_default() + adaptor.unwrap_or_default()
    }

    /// The tire with all that belongs to it, its pressures too, on the wheel of another setup with all that belongs to
    /// that.
    ///
    /// ```
    /// use beadseat::{fitment::Setup, units::{kg, kpa}};
    /// let tire = Setup::parse("225/45R17 94W XL", "7.5Jx17")?.with_pressure(kpa(250.0))?;
    /// let wheel = Setup::parse("225/40R18 92W XL", "8Jx18 ET44")?.with_wheel_rating(kg(690.0))?;
    /// let both = tire.on_wheel_of(&wheel);
    /// assert_eq!((both.tire(), both.wheel()), (tire.tire(), wheel.wheel()));
    /// assert_eq!((both.pressure(), both.wheel_rating()), (Some(kpa(250.0)), Some(kg(690.0))));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn on_wheel_of(self, other: &Self) -> Self {
        let Self { tire, pressure, pressure_full_load, reference_pressure, max_pressure, .. } = self;
        let Self { rim_range, tire_mass, snow, left, right, .. } = self;
        Self {
            tire,
            pressure,
            pressure_full_load,
            reference_pressure,
            max_pressure,
            rim_range,
            tire_mass,
            snow,
            left,
            right,
            ..*other
        }
    }

    /// What a tire meets of the wheel: the rim, where it stands, how far off the hub it is held, and what lies inside it
    /// where `with_barrel`; of the rest only what limits a tire, so that wheels which are alike to tires are equal. The
    /// wheel stands at an inset that does not count, unless its own follows from its backspacing.
    #[cfg(feature = "alloc")]
    pub(crate) fn bare(self, at: Inset, with_barrel: bool) -> Self {
        const ANY: Tire = crate::literal!(Tire, "205/55R16");
        let wheel = match (self.wheel.backspacing(), self.wheel.inset()) {
            (Some(_), _) => self.wheel,
            (None, Some(_)) => Wheel::of_size(self.wheel.size()).with_inset(at),
            (None, None) => Wheel::of_size(self.wheel.size()),
        };
        let Self { spacer, adaptor, wheel_max_pressure, valve, wheel_rating_diameter, .. } = self;
        Self {
            spacer,
            adaptor,
            wheel_max_pressure,
            valve,
            wheel_rating_diameter,
            wheel_rating: self.wheel_rating().filter(|_| wheel_rating_diameter.get().is_some()).into(),
            barrel_radius: self.barrel_radius().filter(|_| with_barrel).into(),
            barrel_thickness: self.barrel_thickness().filter(|_| with_barrel).into(),
            ..Self::new(ANY, wheel)
        }
    }

    pub(crate) fn is_snow(&self) -> bool {
        self.snow == Some(true)
    }
}

/// The setups of both axles; an axle the vehicle does not have, has none.
///
/// In files an object with `front` and `rear`; `"rear": "same"` is the front one again.
///
/// ```
/// use beadseat::fitment::{Setup, Setups};
/// let setup = Setup::new("205/55R16 91V".parse()?, "6.5Jx16".parse()?);
/// assert_eq!(Setups::both(setup).rear, Some(setup));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Setups {
    /// The setup of the front axle, if known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub front: Option<Setup>,
    /// Rear axle, or the only one of a trailer.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub rear: Option<Setup>,
}

impl Setups {
    /// The same on both axles.
    pub const fn both(setup: Setup) -> Self {
        Self { front: Some(setup), rear: Some(setup) }
    }

    /// With nothing on either axle.
    #[cfg(feature = "serde")]
    pub(crate) const fn none() -> Self {
        Self { front: None, rear: None }
    }

    const fn of_front(setup: Setup) -> Self {
        Self { front: Some(setup), rear: None }
    }

    const fn of_rear(setup: Setup) -> Self {
        Self { front: None, rear: Some(setup) }
    }

    /// Left and right exchanged, as in a mirror: arrows turn the other way round too.
    ///
    /// ```
    /// use beadseat::{fitment::{Setup, Setups, TireInUse}, tire::condition::ArrowTurn};
    /// let tire = TireInUse::new().with_arrow(ArrowTurn::Clockwise);
    /// let setups = Setups::both(Setup::new("205/55R16".parse()?, "7Jx16".parse()?).with_left(tire));
    /// let mirrored = setups.mirrored().front.ok_or("no front")?;
    /// assert_eq!(mirrored.right().and_then(|t| t.arrow()), Some(ArrowTurn::CounterClockwise));
    /// assert_eq!(setups.mirrored().mirrored(), setups);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn mirrored(self) -> Self {
        let tire = |tire: TireInUse| TireInUse { arrow: tire.arrow.map(ArrowTurn::mirrored), ..tire };
        let setup =
            |setup: Setup| Setup { left: setup.right.map(tire), right: setup.left.map(tire), ..setup };
        Self { front: self.front.map(setup), rear: self.rear.map(setup) }
    }

    /// Front and rear exchanged.
    ///
    /// ```
    /// use beadseat::fitment::{Setup, Setups};
    /// let front = Some(Setup::new("205/55R16 91V".parse()?, "6.5Jx16".parse()?));
    /// assert_eq!(Setups { front, rear: None }.reversed(), Setups { front: None, rear: front });
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn reversed(self) -> Self {
        Self { front: self.rear, rear: self.front }
    }
}

/// What is on the vehicle as its maker built it, and what is to go on.
///
/// ```
/// use beadseat::fitment::{Change, Setup, Setups};
/// let setup = Setup::new("205/55R16 91V".parse()?, "6.5Jx16".parse()?);
/// let nothing_changes = Change { original: Setups::both(setup), proposed: Setups::both(setup) };
/// assert_eq!(nothing_changes.original, nothing_changes.proposed);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// As the maker built it.
    pub original: Setups,
    /// What is to be mounted.
    pub proposed: Setups,
}

impl Change {
    /// On the front axle alone.
    ///
    /// ```
    /// use beadseat::fitment::{Change, Setup};
    /// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx17")?];
    /// assert_eq!(Change::front(old, new).proposed.front, Some(new));
    /// assert_eq!(Change::rear(old, new).proposed.front, None);
    /// assert_eq!(Change::all_round(old, new).original.rear, Some(old));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn front(original: Setup, proposed: Setup) -> Self {
        let [original, proposed] = [Setups::of_front(original), Setups::of_front(proposed)];
        Self { original, proposed }
    }

    /// On the rear axle alone, or the only one of a trailer.
    pub const fn rear(original: Setup, proposed: Setup) -> Self {
        let [original, proposed] = [Setups::of_rear(original), Setups::of_rear(proposed)];
        Self { original, proposed }
    }

    /// The same on both axles.
    pub const fn all_round(original: Setup, proposed: Setup) -> Self {
        Self { original: Setups::both(original), proposed: Setups::both(proposed) }
    }

    /// What is and what goes on the front axle, or on the rear one.
    pub(super) const fn on(&self, place: Position) -> [Option<&Setup>; 2] {
        let Self { original, proposed } = self;
        if place.is_at_front() {
            [original.front.as_ref(), proposed.front.as_ref()]
        } else {
            [original.rear.as_ref(), proposed.rear.as_ref()]
        }
    }
}
