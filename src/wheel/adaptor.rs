//! An adaptor: a spacer that is bolted to the hub and has a pattern of its own for the wheel.

use crate::exact::{Exact, exact_length};
use crate::record::record;
use crate::units::{Length, Mass};
use crate::wheel::{BoltCircle, Bore, FastenerKind, Spigot, Thread};

exact_length! {
    /// How far an adaptor moves the wheel outboard: its thickness between hub and wheel.
    ///
    /// `Ord` is by thickness. In files it is a number of millimetres.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Thickness};
    /// assert_eq!(Thickness::from_length(mm(25.0))?.length(), mm(25.0));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    Thickness = "thickness_mm", 3 to 200, in "beadseat::wheel"
}

record! {
    /// An adaptor between hub and wheel. It has two bolt circles and two fits: one that must be the hub's,
    /// and one that must be the wheel's.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::{Adaptor, Thickness}};
    /// let adaptor = Adaptor::new(Thickness::from_length(mm(25.0))?)
    ///     .with_hub_bolt_circle("5x112".parse()?)
    ///     .with_wheel_bolt_circle("5x114.3".parse()?);
    /// assert_ne!(adaptor.hub_bolt_circle(), adaptor.wheel_bolt_circle());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[derive(Copy)]
    Adaptor needs {
        /// How far it moves the wheel outboard.
        thickness: Thickness = "thickness_mm";
    } {
        /// The circle of the holes by which it is held to the hub.
        hub_bolt_circle / with_hub_bolt_circle: BoltCircle = "hub_bolt_circle";
        /// Its bore on the hub's side.
        hub_bore / with_hub_bore: Bore = "hub_bore";
        /// The circle of its studs or threaded holes for the wheel.
        wheel_bolt_circle / with_wheel_bolt_circle: BoltCircle = "wheel_bolt_circle";
        /// Diameter of its own spigot for the wheel.
        wheel_spigot / with_wheel_spigot: Spigot = "wheel_spigot_mm";
        /// Thread of its studs or threaded holes.
        thread / with_thread: Thread = "thread";
        /// What holds the wheel to it.
        fastener_kind / with_fastener_kind: FastenerKind = "fastener_kind";
        /// Length of its studs from its face, or depth of its threaded holes.
        thread_length / with_thread_length: Length = "thread_length_mm" [mm in_mm "mm" 5 to 200];
        /// Load it is rated for.
        rating / with_rating: Mass = "rating_kg" [kg in_kg "kg" 10 to 20000];
    }
}
