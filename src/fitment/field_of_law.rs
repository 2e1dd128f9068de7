//! The fields of law that a change of wheels and tires may touch.

use crate::record::words;

words! {
    /// A field of law that a change of wheels and tires may touch.
    ///
    /// ```
    /// use beadseat::fitment::FieldOfLaw;
    /// assert_eq!(FieldOfLaw::TireCover.name(), "tire_cover");
    /// ```
    FieldOfLaw {
        /// How far apart the wheels of an axle may come to stand.
        Track = "track",
        /// How much larger or smaller the tires may be.
        OverallDiameter = "overall_diameter",
        /// How much of the tire the bodywork must cover.
        TireCover = "tire_cover",
        /// What must be left around the wheel at lock and jounce.
        SweptClearance = "swept_clearance",
        /// How much load a tire must be able to carry beyond the vehicle's.
        LoadReserve = "load_reserve",
        /// How much tread must be left.
        TreadDepth = "tread_depth",
        /// How far the body may be raised or lowered, by the tires or by the suspension.
        RideHeight = "ride_height",
        /// At which height lamps must stand, and where they must point.
        Lighting = "lighting",
        /// How loud tires and vehicle may be.
        Noise = "noise",
        /// Which tires and wheels must be approved, for which vehicles, and by which papers.
        TypeApproval = "type_approval",
        /// Who must inspect the change, and where it must be entered.
        Inspection = "inspection",
        /// Which tires a season or a road asks for.
        SeasonalTires = "seasonal_tires",
    }
}
