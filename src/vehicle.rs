//! The vehicle as its maker built it, and what was measured on it.
//!
//! Everything is optional: what is not known stays unknown, and the checks that need it say so. A fact of
//! the vehicle is never inferred from the wheel or tire that happens to be on it.
//!
//! ```
//! use beadseat::{units::{kg, kmh, kpa, mm}, vehicle::{Axle, Drive, Hub, Kind, Vehicle}, wheel::Spigot};
//! let hub = Hub::new().with_bolt_circle("5x112".parse()?).with_spigot(mm(57.1))?;
//! let front = Axle::new().with_max_load(kg(1060.0))?.with_track(mm(1538.0))?.with_placard(kpa(230.0))?.with_hub(hub);
//! let wagon = Vehicle::new(Kind::Passenger).with_drive(Drive::Front).with_top_speed(kmh(205.0))?.with_front(front);
//! assert_eq!(wagon.front().and_then(|a| a.max_load()), Some(kg(1060.0)));
//! assert!(Axle::new().with_max_load(kg(-5.0)).is_err());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod end_gaps;
mod guard_zone;
mod nearby_body;

pub use end_gaps::EndGaps;
pub(crate) use end_gaps::{EndGap, Narrower};
pub use guard_zone::GuardZone;
pub use nearby_body::{BodyKind, GapSide, NearbyBodies, NearbyBody};

use crate::Count;
use crate::record::{record, words};
use crate::sweep::Point;
use crate::tire::condition::VehicleSide;
use crate::units::{Angle, Length, Mass, Pressure, Ratio, Velocity};
use crate::wheel::{BoltCircle, Seat, Spigot, Thread};

words! {
    /// What the vehicle is, in the classes that tire rules know.
    ///
    /// ```
    /// assert_eq!(beadseat::vehicle::Kind::Multipurpose.name(), "multipurpose");
    /// ```
    Kind {
        /// A passenger car, made to carry people.
        Passenger = "passenger",
        /// Car-like vehicle on a truck chassis or for off-road use.
        Multipurpose = "multipurpose",
        /// Goods vehicle, van or pickup.
        Truck = "truck",
        /// A bus or a coach.
        Bus = "bus",
        /// A vehicle that is towed by another.
        Trailer = "trailer",
        /// A motor vehicle of two or three wheels.
        Motorcycle = "motorcycle",
    }
}

words! {
    /// Which axles are driven.
    ///
    /// ```
    /// assert_eq!(beadseat::vehicle::Drive::All.name(), "all");
    /// ```
    Drive {
        /// Only the front axle is driven.
        Front = "front",
        /// Only the rear axle is driven.
        Rear = "rear",
        /// Both axles are driven.
        All = "all",
        /// No axle is driven, as of a trailer.
        None = "none",
    }
}

words! {
    /// How the wheels of an axle are carried.
    ///
    /// ```
    /// assert_eq!(beadseat::vehicle::AxleType::Beam.name(), "beam");
    /// ```
    AxleType {
        /// Each wheel on its own.
        Independent = "independent",
        /// Both wheels on one rigid axle.
        Beam = "beam",
    }
}

words! {
    /// How wheels are held to the hub.
    ///
    /// ```
    /// assert_eq!(beadseat::vehicle::Fastening::Bolt.name(), "bolt");
    /// ```
    Fastening {
        /// Bolts into threaded holes.
        Bolt = "bolt",
        /// Nuts are screwed onto studs that stand in the hub.
        Stud = "stud",
    }
}

record! {
    /// A hub: what a wheel must match.
    ///
    /// ```
    /// use beadseat::{units::mm, vehicle::{Fastening, Hub}};
    /// let hub = Hub::new().with_bolt_circle("5x112".parse()?).with_fastening(Fastening::Bolt).with_spigot_height(mm(9.0))?;
    /// assert_eq!(hub.spigot(), None); // not known, and not guessed
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[derive(Copy)]
    Hub {
        /// Bolt circle of the hub.
        bolt_circle / with_bolt_circle: BoltCircle = "bolt_circle";
        /// Diameter of the spigot that centres the wheel.
        spigot / with_spigot: Spigot as Length = "spigot_mm";
        /// How far the spigot stands out of the mounting face.
        spigot_height / with_spigot_height: Length = "spigot_height_mm" [mm in_mm "mm" 0 to 100];
        /// Thread of the hub's studs or holes.
        thread / with_thread: Thread = "thread";
        /// Seat of the hub's own fasteners.
        seat / with_seat: Seat = "seat";
        /// Whether the hub has studs for nuts or threaded holes for bolts.
        fastening / with_fastening: Fastening = "fastening";
        /// Depth of thread in the hub for a bolt, where it is not open at the back.
        thread_depth / with_thread_depth: Length = "thread_depth_mm" [mm in_mm "mm" 5 to 200];
        /// Length of a stud from the mounting face.
        stud_length / with_stud_length: Length = "stud_length_mm" [mm in_mm "mm" 5 to 200];
    }
}

record! {
    /// The steering axis of a steered axle, and how far it turns.
    ///
    /// ```
    /// use beadseat::{units::{deg, mm}, vehicle::Steering};
    /// let s = Steering::new().with_kingpin_inclination(deg(13.5))?.with_scrub_radius(mm(-8.0))?;
    /// assert_eq!(s.scrub_radius(), Some(mm(-8.0)));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    #[derive(Copy)]
    Steering {
        /// Inclination of the steering axis seen from the front, top inboard.
        kingpin_inclination / with_kingpin_inclination: Angle = "kingpin_inclination_deg" [deg in_deg "deg" -5 to 30];
        /// Inclination of the steering axis seen from the side, top rearward.
        caster / with_caster: Angle = "caster_deg" [deg in_deg "deg" -10 to 25];
        /// From the steering axis to the middle of the contact patch, at the ground, positive outboard.
        scrub_radius / with_scrub_radius: Length = "scrub_radius_mm" [mm in_mm "mm" -200 to 300];
        /// From the contact patch forward to the steering axis, at the ground.
        trail / with_trail: Length = "trail_mm" [mm in_mm "mm" -100 to 150];
        /// Two measured points of the steering axis, the lower one first, as of the ball joints or of the lower one
        /// and the strut's top: they stand for inclination, caster, scrub radius and trail where it is to be placed.
        axis / with_axis: [Point; 2] = "axis_mm";
        /// Height of the hub's centre above the ground, on the original tires.
        hub_height / with_hub_height: Length = "hub_height_mm" [mm in_mm "mm" 100 to 1000];
        /// Largest steer angle of the inner wheel.
        lock_inner / with_lock_inner: Angle = "lock_inner_deg" [deg in_deg "deg" 0 to 75];
        /// Largest steer angle of the outer wheel.
        lock_outer / with_lock_outer: Angle = "lock_outer_deg" [deg in_deg "deg" 0 to 75];
    }
}

record! {
    /// Suspension travel from ride height.
    ///
    /// ```
    /// use beadseat::{units::mm, vehicle::Travel};
    /// assert!(Travel::new().with_jounce(mm(80.0))?.jounce().is_some());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    #[derive(Copy)]
    Travel {
        /// Upward, to the bump stop.
        jounce / with_jounce: Length = "jounce_mm" [mm in_mm "mm" 0 to 500];
        /// Downward, from ride height to where the suspension hangs.
        rebound / with_rebound: Length = "rebound_mm" [mm in_mm "mm" 0 to 500];
        /// Camber gained from ride height to full jounce, in proportion elsewhere; none if not said.
        camber_change / with_camber_change: Angle = "camber_change_deg" [deg in_deg "deg" -15 to 15];
        /// Toe gained from ride height to full jounce, positive with the front inboard.
        toe_change / with_toe_change: Angle = "toe_change_deg" [deg in_deg "deg" -5 to 5];
        /// How far the hub moves outboard from ride height to full jounce.
        lateral_change / with_lateral_change: Length = "lateral_change_mm" [mm in_mm "mm" -200 to 200];
    }
}

record! {
    /// The tire that was on the vehicle when a gap was measured.
    ///
    /// ```
    /// use beadseat::{units::mm, vehicle::MeasuredTire};
    /// let t = MeasuredTire::new().with_width(mm(211.0))?.with_diameter(mm(629.0))?;
    /// assert_eq!(t.width(), Some(mm(211.0)));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    #[derive(Copy)]
    MeasuredTire {
        /// Its real width over the sidewalls.
        width / with_width: Length = "width_mm" [mm in_mm "mm" 50 to 800];
        /// Its real overall diameter.
        diameter / with_diameter: Length = "diameter_mm" [mm in_mm "mm" 200 to 2000];
        /// Its tread depth then.
        tread_depth / with_tread_depth: Length = "tread_depth_mm" [mm in_mm "mm" 0 to 40];
        /// Its pressure then. A quarter below the placard or more, the gaps beside it are not those of the tire as it
        /// runs: what passes by them is marginal.
        pressure / with_pressure: Pressure = "pressure_kpa" [kpa in_kpa "kPa" 50 to 1200];
    }
}

record! {
    /// Gaps measured beside the present wheel, the vehicle on its wheels at ride height.
    ///
    /// ```
    /// use beadseat::{units::mm, vehicle::Space};
    /// let s = Space::new().with_inner_clearance(mm(18.0))?.with_uncertainty(mm(1.5))?;
    /// assert_eq!(s.outer_clearance(), None);
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    Space {
        /// Least gap inboard of tire and rim: strut, spring, arm, frame.
        inner_clearance / with_inner_clearance: Length = "inner_clearance_mm" [mm in_mm "mm" 0 to 500];
        /// Least gap outboard, to the arch lip, straight out.
        outer_clearance / with_outer_clearance: Length = "outer_clearance_mm" [mm in_mm "mm" -100 to 500];
        /// How far the wheel guard stands outboard of the sidewall, at least, from 30° ahead of the hub to 50°
        /// behind.
        guard_overhang / with_guard_overhang: Length = "guard_overhang_mm" [mm in_mm "mm" -100 to 300];
        /// Least gap above the tread.
        upper_clearance / with_upper_clearance: Length = "upper_clearance_mm" [mm in_mm "mm" 0 to 800];
        /// How far each gap may be off.
        uncertainty / with_uncertainty: Length = "uncertainty_mm" [mm in_mm "mm" 0 to 50];
        /// Bodies around the wheels.
        obstacles / with_obstacles: NearbyBodies [lent] = "obstacles";
        /// The tire they were measured with, if it was measured too.
        measured_tire / with_measured_tire: MeasuredTire = "measured_tire";
        /// The gaps of the left end that differ from the others.
        left / with_left: EndGaps = "left";
        /// The gaps of the right end that differ from the others.
        right / with_right: EndGaps = "right";
    }
}

impl Space {
    /// The gap of a kind on one end: its own, or that of the axle.
    pub(crate) fn gap_on(&self, side: VehicleSide, kind: EndGap) -> Option<Length> {
        let own = match side {
            VehicleSide::Left => self.left,
            VehicleSide::Right => self.right,
        };
        own.and_then(|own| own.gap(kind)).or_else(|| self.of_both_ends(kind))
    }

    const fn of_both_ends(&self, kind: EndGap) -> Option<Length> {
        match kind {
            EndGap::Inner => self.inner_clearance(),
            EndGap::Outer => self.outer_clearance(),
            EndGap::Guard => self.guard_overhang(),
            EndGap::Upper => self.upper_clearance(),
        }
    }

    /// The same with as much more outboard on both ends; nothing where no gap is known there.
    pub(crate) fn wider_outboard(&self, more: Length) -> Option<Self> {
        self.narrower(EndGap::Outer)?;
        let mut wider = self.clone();
        if let Some(gap) = self.outer_clearance() {
            wider = wider.with_outer_clearance(gap + more).ok()?;
        }
        for end in [&mut wider.left, &mut wider.right].into_iter().flatten() {
            if let Some(gap) = end.outer_clearance() {
                *end = end.with_outer_clearance(gap + more).ok()?;
            }
        }
        Some(wider)
    }

    /// The narrower gap of a kind of both ends; nothing where it is known of neither.
    pub(crate) fn narrower(&self, kind: EndGap) -> Option<Narrower> {
        if self.left.is_none() && self.right.is_none() {
            let gap = self.of_both_ends(kind)?;
            return Some(Narrower { gap, end: None, is_other_known: true });
        }
        Narrower::of(self.gap_on(VehicleSide::Left, kind), self.gap_on(VehicleSide::Right, kind))
    }
}

record! {
    /// The brake that the wheel must clear.
    ///
    /// ```
    /// use beadseat::{units::mm, vehicle::Brake};
    /// assert!(Brake::new().with_disc(mm(312.0))?.with_envelope_radius(mm(178.0)).is_ok());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    #[derive(Copy)]
    Brake {
        /// Diameter of the disc.
        disc / with_disc: Length = "disc_mm" [mm in_mm "mm" 100 to 600];
        /// Largest radius of disc and caliper about the spindle.
        envelope_radius / with_envelope_radius: Length = "envelope_radius_mm" [mm in_mm "mm" 50 to 400];
        /// How far the caliper stands outboard of the hub face.
        caliper_face / with_caliper_face: Length = "caliper_face_mm" [mm in_mm "mm" -200 to 200];
    }
}

record! {
    /// An axle, or a group of axles that share one load.
    ///
    /// ```
    /// use beadseat::{Count, units::kg, vehicle::Axle};
    /// let tandem = Axle::new().with_max_load(kg(2600.0))?.with_axles(Count::new(2).ok_or("count")?);
    /// assert_eq!(tandem.tires(), 4);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    Axle {
        /// Greatest load of the group, all its axles together.
        max_load / with_max_load: Mass = "max_load_kg" [kg in_kg "kg" 10 to 60000];
        /// Load in normal use, all its axles together.
        normal_load / with_normal_load: Mass = "normal_load_kg" [kg in_kg "kg" 10 to 60000];
        /// Distance between the middles of the contact patches.
        track / with_track: Length = "track_mm" [mm in_mm "mm" 500 to 3000];
        /// From the ground to the lowest thing beside the wheels, on the original tires.
        ground_clearance / with_ground_clearance: Length = "ground_clearance_mm" [mm in_mm "mm" 20 to 800];
        /// Cold pressure on the maker's placard for normal load.
        placard / with_placard: Pressure = "placard_kpa" [kpa in_kpa "kPa" 50 to 1200];
        /// Cold pressure on the maker's placard for full load and high speed.
        placard_full_load / with_placard_full_load: Pressure = "placard_full_load_kpa" [kpa in_kpa "kPa" 50 to 1200];
        /// Camber, positive with the top outboard. Without it, the 2° either way that load tables allow.
        camber / with_camber: Angle = "camber_deg" [deg in_deg "deg" -15 to 15];
        /// Toe of one wheel, positive with its front inboard; none if not said.
        toe / with_toe: Angle = "toe_deg" [deg in_deg "deg" -5 to 5];
        /// Whether its wheels move independently or a beam joins them.
        axle_type / with_axle_type: AxleType = "axle_type";
        /// Wheels on each side of each axle; one if not said.
        wheels_per_side / with_wheels_per_side: Count<2> = "wheels_per_side";
        /// Axles in the group; one if not said.
        axles / with_axles: Count<4> = "axles";
        /// The hub that a wheel of this axle is mounted on.
        hub / with_hub: Hub = "hub";
        /// The steering axis of each wheel, and how far it steers.
        steering / with_steering: Steering = "steering";
        /// How far each wheel travels up and down.
        travel / with_travel: Travel = "travel";
        /// The gaps that were measured around the original wheel.
        space / with_space: Space [lent] = "space";
        /// The brake that must fit inside the wheel.
        brake / with_brake: Brake = "brake";
        /// Whether it has no brakes.
        unbraked / with_unbraked: bool = "unbraked";
    }
}

impl Axle {
    /// The bodies around its wheels.
    pub(crate) fn surroundings(&self) -> impl Iterator<Item = &NearbyBody> {
        self.space
            .as_ref()
            .and_then(|space| space.obstacles.as_ref())
            .into_iter()
            .flat_map(NearbyBodies::iter)
    }

    /// How many tires carry the load.
    pub fn tires(&self) -> u8 {
        2 * self.axles.map_or(1, Count::get) * self.wheels_per_side.map_or(1, Count::get)
    }
}

record! {
    /// A vehicle with its axles, as far as it is known.
    Vehicle blank unknown {
        /// The class of the vehicle, which decides whose rules hold.
        kind / with_kind: Kind = "kind";
        /// The axles that the engine drives.
        drive / with_drive: Drive = "drive";
        /// The top speed of the vehicle.
        top_speed / with_top_speed: Velocity = "top_speed_kmh" [kmh in_kmh "km/h" 5 to 500];
        /// How much its speedometer reads over the true speed on the original tires.
        over_read / with_over_read: Ratio = "speedometer_over_read_percent" [percent in_percent "%" -10 to 20];
        /// Whether it compares wheel speeds: anti-lock or stability control.
        stability_control / with_stability_control: bool = "stability_control";
        /// Whether the vehicle is one that tows.
        towing / with_towing: bool = "towing";
        /// The front axle of the vehicle.
        front / with_front: Axle [lent] = "front";
        /// Rear axle, or the only one of a trailer.
        rear / with_rear: Axle [lent] = "rear";
    }
}

impl Vehicle {
    /// Of a kind, with nothing else known.
    ///
    /// ```
    /// use beadseat::vehicle::{Kind, Vehicle};
    /// assert_eq!(Vehicle::new(Kind::Truck).kind(), Some(Kind::Truck));
    /// assert_eq!(Vehicle::unknown().kind(), None);
    /// ```
    pub const fn new(kind: Kind) -> Self {
        Self::unknown().with_kind(kind)
    }

    /// The same vehicle in a mirror: what stood on its left stands on its right.
    ///
    /// ```
    /// use beadseat::{sweep::Point, tire::condition::VehicleSide, units::mm};
    /// use beadseat::vehicle::{Axle, BodyKind, Space, NearbyBody, NearbyBodies, Vehicle};
    /// let pipe = NearbyBody::outline(BodyKind::Other, &[Point::new(mm(200.0), mm(-230.0), mm(-40.0))?])?;
    /// let mut around = NearbyBodies::new();
    /// around.push(pipe.only_on(VehicleSide::Left))?;
    /// let vehicle = Vehicle::unknown().with_front(Axle::new().with_space(Space::new().with_obstacles(around)));
    /// assert_ne!(vehicle.clone().mirrored(), vehicle);
    /// assert_eq!(vehicle.clone().mirrored().mirrored(), vehicle);
    /// # Ok::<(), beadseat::sweep::ObstacleError>(())
    /// ```
    #[cfg(feature = "alloc")]
    pub fn mirrored(mut self) -> Self {
        for axle in [&mut self.front, &mut self.rear].into_iter().flatten() {
            if let Some(space) = &mut axle.space {
                space.obstacles = space.obstacles.take().map(NearbyBodies::mirrored);
                core::mem::swap(&mut space.left, &mut space.right);
            }
        }
        self
    }

    /// The same vehicle with front and rear exchanged, driven axle and all.
    ///
    /// ```
    /// use beadseat::vehicle::{Drive, Vehicle};
    /// let v = Vehicle::unknown().with_drive(Drive::Front);
    /// assert_eq!(v.clone().reversed().drive(), Some(Drive::Rear));
    /// assert_eq!(v.clone().reversed().reversed(), v);
    /// ```
    pub const fn reversed(mut self) -> Self {
        core::mem::swap(&mut self.front, &mut self.rear);
        self.drive = match self.drive {
            Some(Drive::Front) => Some(Drive::Rear),
            Some(Drive::Rear) => Some(Drive::Front),
            other => other,
        };
        self
    }
}
