//! Which rules a size follows.

use crate::record::words;

words! {
    /// Which rules a tire size follows.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::SizeClass::LightTruck.name(), "light_truck");
    /// ```
    SizeClass {
        /// Passenger tire after ISO 4000-1 and UN R30.
        Passenger = "passenger",
        /// `HL`: passenger tire for high loads.
        HighLoad = "high_load",
        /// `P`: passenger tire after the TRA yearbook.
        PMetric = "p_metric",
        /// `T`: temporary spare.
        Temporary = "temporary",
        /// `LT`: light truck tire after the TRA yearbook.
        LightTruck = "light_truck",
        /// `C`: light commercial tire after UN R54.
        Commercial = "commercial",
        /// `CP`: tire for campers, after UN R54.
        Camper = "camper",
        /// `ST`: trailer tire after the TRA yearbook.
        Trailer = "trailer",
        /// Truck or bus tire after UN R54.
        Truck = "truck",
        /// `M/C`: motorcycle tire after UN R75.
        Motorcycle = "motorcycle",
        /// Tire of a tractor or implement, by section width.
        Agricultural = "agricultural",
        /// Agricultural, industrial and off-road tire by overall diameter.
        OffRoad = "off_road",
        /// The designation does not say, and no table lists it.
        Unstated = "unstated",
    }
}

impl SizeClass {
    /// Whether tires of this class are passenger car tires, to which the passenger rules apply.
    ///
    /// ```
    /// use beadseat::tire::SizeClass;
    /// assert!(SizeClass::PMetric.is_passenger() && !SizeClass::LightTruck.is_passenger());
    /// ```
    pub const fn is_passenger(self) -> bool {
        matches!(self, Self::Passenger | Self::HighLoad | Self::PMetric | Self::Temporary)
    }
}
