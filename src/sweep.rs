//! Swept clearance: how near a wheel comes to what surrounds it, from lock to lock and from rebound to
//! jounce.
//!
//! Two frames. The *corner frame* belongs to the body: X forward, Y outboard (so a right corner is a
//! mirrored left one), Z up, origin at the centre of the hub face at ride height, wheels straight ahead. The
//! *wheel frame* turns with the wheel: `a` outboard along the spindle, `r` the distance from the spindle.
//! Steer is positive when this wheel is the inner one of the turn, travel in jounce, camber with the top
//! outboard, toe with the front inboard.
//!
//! A tire on its rim is a body of revolution, so that a [`Profile`] in `(a, r)` is all of it. Around it are
//! [`Obstacles`], each fixed to the body or carried along; a [`Corner`] says how the wheel moves.
//! [`Corner::clearance`] finds the least distance of them all over all positions, with a proof: the answer is
//! a bracket, and no position is nearer than its lower end.
//!
//! ```
//! use beadseat::sweep::{ContactPatch, Corner, Effort, Obstacle, Obstacles, Point, Profile};
//! use beadseat::sweep::{RimSection, SteeringAxis, TireSection};
//! use beadseat::units::{deg, mm};
//!
//! // An invented 205/55R16 on a 6.5J rim of inset 46.
//! let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
//! let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
//!
//! let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(-0.5))?;
//! let axis = SteeringAxis::from_ground(patch, deg(13.5), deg(7.0), mm(-8.0), mm(22.0))?;
//! let corner = Corner::new()
//!     .with_camber(deg(-0.5))?
//!     .steered(axis, deg(39.0), deg(33.0))?
//!     .travelling(mm(80.0), mm(90.0))?;
//!
//! let mut around = Obstacles::new();
//! let front = Point::new(mm(330.0), mm(-215.0), mm(60.0))?;
//! let rear = Point::new(mm(-330.0), mm(-215.0), mm(60.0))?;
//! around.push(Obstacle::segment(front, rear).with_radius(mm(25.0))?)?; // a chassis member
//!
//! let swept = corner.clearance(&profile, &around, Effort::default())?.ok_or("no obstacle")?;
//! assert!(swept.upper() - swept.lower() <= mm(0.1));
//! assert!(swept.steer().value.abs() > deg(30.0).value); // nearest close to full lock
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod arm;
mod bound;
mod cell;
mod corner;
mod knuckle;
mod minimum;
mod motion;
mod obstacle;
mod profile;
mod rod;
mod section;
mod span;
mod tangent;
mod vector;
mod wheel_pose;

pub use corner::{ContactPatch, Corner, Pose, SteeringAxis};
pub use minimum::{Effort, Swept};
pub use obstacle::{Carrier, MAX_OBSTACLES, Obstacle, ObstacleError, Obstacles, Point};
pub use profile::{Part, Profile, ProfilePoint};
pub use section::{RimSection, TireSection};
pub use wheel_pose::WheelPose;
