//! Which rules a size follows: one row for each class.

use crate::Citation;
use crate::record::words;
use crate::tire::{LoadVersion, inflation::InflationModel};

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
        /// `T`: a temporary spare tire.
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
        /// `HC`: truck tire for the heavier of the rims of its code, after the TRA yearbook, from memory.
        HeavyCommercial = "heavy_commercial",
        /// `M/C`: motorcycle tire after UN R75.
        Motorcycle = "motorcycle",
        /// Tire of a tractor, by section width.
        Agricultural = "agricultural",
        /// `IF`: tractor tire that carries more at the same pressure.
        ImprovedFlexion = "improved_flexion",
        /// `VF`: tractor tire that carries more still.
        VeryHighFlexion = "very_high_flexion",
        /// Tire of a farm implement or trailer, by section width.
        Implement = "implement",
        /// Tire of an earthmover, loader or crane.
        Earthmover = "earthmover",
        /// Agricultural, industrial and off-road tire by overall diameter, and small ones of lawn and garden.
        OffRoad = "off_road",
        /// `AT`: tire of an all-terrain vehicle.
        AllTerrain = "all_terrain",
        /// The designation does not say, and no table lists it.
        Unstated = "unstated",
    }
}

/// What the rules say of one class of sizes. Where they say nothing, or nothing is known, the field says so.
#[derive(Debug)]
pub(crate) struct ClassRules {
    /// What stands in front of a metric size and behind it.
    pub(crate) prefix: &'static str,
    pub(crate) suffix: &'static str,
    /// The family that a designation of each form is of.
    pub(crate) metric_family: &'static str,
    pub(crate) numeric_family: &'static str,
    pub(crate) flotation_family: &'static str,
    pub(crate) alpha_numeric_family: &'static str,

    /// Whether they are tires of vehicles of the road.
    pub(crate) is_of_the_road: bool,
    /// Whether they may stand on rims of motorcycles.
    pub(crate) may_be_of_motorcycles: bool,
    /// Whether they are tires of passenger cars.
    pub(crate) is_passenger: bool,
    /// The load version that the designation has in it.
    pub(crate) version: Option<LoadVersion>,
    /// The class that `HL` makes of it, where it may stand beside the size.
    pub(crate) with_high_load: Option<SizeClass>,
    /// Whether XL and the like may stand beside the size.
    pub(crate) has_load_version: bool,
    /// Whether the symbol `(W)`, above 270 km/h, may stand beside the size.
    pub(crate) has_open_w: bool,
    /// Whether a load range or ply rating may stand beside a metric size. Beside another it may in every class:
    /// sizes of cars from the time of the cross-ply have them. Common practice, no source.
    pub(crate) has_metric_load_range: bool,
    /// Whether a single letter beside the size is its load range.
    pub(crate) has_range_letter: bool,
    /// Whether stars and codes of earthmovers may stand beside the size.
    pub(crate) has_earthmover_marks: bool,

    /// The laws of load and pressure that are made for it, the one it is judged by first.
    pub(crate) laws: &'static [InflationModel],
    /// How much its sizes bear by their dimensions.
    pub(crate) bears: Option<Bears>,
    /// Whose pressures a load range letter stands for.
    pub(crate) letter_pressures: Option<LetterPressures>,
    /// Whether the speed symbol limits the cold pressure. Crolla (ed.) 2009, p. 296.
    pub(crate) has_pressure_limit_by_symbol: bool,
    pub(crate) at_speed: AtSpeed,
    /// Whether UN R54 Annex 8 says how the load varies with speed.
    pub(crate) has_commercial_speed_variation: bool,
    /// Whether molded loads are those of the TRA yearbook, which lie beside those of the load index.
    pub(crate) has_yearbook_loads: bool,
    /// Whether a lower speed than that of the symbol may be molded.
    pub(crate) may_mold_lower_speed: bool,
    /// The speed it is used at whatever its symbol, km/h. [`Citation::SPARE_SPEED`].
    pub(crate) speed_of_use_kmh: Option<f64>,

    /// Whether the diameter of a metric size is `d + 2H`.
    pub(crate) has_height_by_aspect: bool,
    pub(crate) overall_diameter: Option<DiameterLimits>,
    pub(crate) overall_width: Option<WidthLimits>,
    /// The theoretical rim as a share of the nominal width of a metric size, by least aspect ratio.
    pub(crate) theoretical_rim: Option<ByAspect<f64>>,
    pub(crate) rims: Rims,
    /// The least and greatest share of the nominal width that any rim has. [`Citation::RIM_SANITY`].
    pub(crate) possible_rim: (f64, f64),
    /// Whether the estimate of the vertical stiffness is made for its radials.
    pub(crate) has_stiffness: bool,
    /// The deepest tread of a new tire, mm. [`Citation::NEW_TREAD`].
    pub(crate) new_tread_mm: f64,
}

/// Values by the least aspect ratio that they hold from, the highest first; the last holds from 0.
pub(crate) type ByAspect<T> = &'static [(u8, T)];

/// The value for an aspect ratio.
pub(crate) fn by_aspect<T: Copy>(table: ByAspect<T>, aspect: u8) -> Option<T> {
    table.iter().find(|(least, _)| aspect >= *least).map(|&(_, value)| value)
}

/// How much sizes bear at most, as shares of the published load formula of P-metric sizes that no size remembered
/// exceeds: `tests/reference/size_loads.csv`.
#[derive(Debug)]
pub(crate) struct Bears {
    /// By aspect ratio.
    pub(crate) shares: ByAspect<f64>,
    /// At which pressure, kPa; none where it is that of the load range.
    pub(crate) kpa: Option<f64>,
}

/// How far a new tire's diameter may lie from the design one, as shares of `2H`.
#[derive(Debug)]
pub(crate) struct DiameterLimits {
    pub(crate) least: f64,
    pub(crate) most_radial: f64,
    /// Of diagonal and bias-belted tires.
    pub(crate) most_crossed: f64,
}

/// How far the overall width may exceed the section width, as a share of it.
#[derive(Debug)]
pub(crate) struct WidthLimits {
    pub(crate) over_radial: f64,
    /// Of diagonal and bias-belted tires.
    pub(crate) over_crossed: f64,
    pub(crate) citation: Citation,
}

/// Which pressures a load range letter stands for.
#[derive(Clone, Copy, Debug)]
pub(crate) enum LetterPressures {
    LightTruck,
    Trailer,
}

/// What a vehicle's top speed does to the load and the pressure.
#[derive(Clone, Copy, Debug)]
pub(crate) enum AtSpeed {
    /// Fast symbols lose load near their speed, and need pressure.
    Passenger,
    /// The load index holds up to the symbol's speed, without more pressure.
    Indexed,
    /// V and W lose load by UN R75; no rule of their pressure is known.
    Motorcycle,
    /// No rule is known here.
    Unknown,
}

/// How the measuring rim and the approved rims of sizes are known that no list of dimensions has.
#[derive(Debug)]
pub(crate) enum Rims {
    /// By shares of the nominal width of a metric size on an inch rim.
    ByAspect { measuring: ByAspect<f64>, range: ByAspect<RimShares> },
    /// By the tables of a standard, and of a maker's sheet.
    TruckTables,
    /// By the table of a standard, of any structure.
    TractorTable,
    /// No rule and no table is known.
    Unknown,
}

/// The narrowest and widest approved rim, as shares of the nominal width.
#[derive(Clone, Copy, Debug)]
pub(crate) struct RimShares {
    pub(crate) least: f64,
    pub(crate) most: f64,
    pub(crate) citation: Citation,
}

/// UN R30 §6.1.2 and §6.1.5, from memory.
const R30_DIAMETER: DiameterLimits = DiameterLimits { least: 0.97, most_radial: 1.04, most_crossed: 1.08 };
/// UN R54 §6.1.2 and §6.1.5, from memory.
const R54_DIAMETER: DiameterLimits = DiameterLimits { least: 0.97, most_radial: 1.04, most_crossed: 1.07 };

/// UN R30 and R54 §6.1.4, from memory.
const UN_WIDTH: WidthLimits =
    WidthLimits { over_radial: 0.04, over_crossed: 0.06, citation: Citation::OVERALL_WIDTH };
/// 49 CFR 571.139, from memory.
const US_WIDTH: WidthLimits =
    WidthLimits { over_radial: 0.07, over_crossed: 0.07, citation: Citation::OVERALL_WIDTH_US };

/// ETRTO, from memory; a secondary text has 0.85 at 50 already.
const THEORETICAL_RIM: ByAspect<f64> = &[(50, 0.70), (0, 0.85)];
/// The same for truck sizes.
const THEORETICAL_RIM_TRUCK: ByAspect<f64> = &[(0, 0.75)];

/// ISO 4000-1 and ETRTO design guide, from memory.
const MEASURING_RIM: ByAspect<f64> = &[(75, 0.70), (60, 0.75), (50, 0.80), (45, 0.85), (30, 0.90), (0, 0.92)];

const fn shares(least: f64, most: f64, citation: Citation) -> RimShares {
    RimShares { least, most, citation }
}

/// From 70 it reproduces the ETRTO table of the 80 and 75 series; below it is fitted to remembered rows.
const RIM_RANGE: ByAspect<RimShares> = &[
    (70, shares(0.65, 0.85, Citation::RIM_RANGE_HIGH_SERIES)),
    (50, shares(0.70, 0.90, Citation::RIM_RANGE_LOW_SERIES)),
    (45, shares(0.80, 0.95, Citation::RIM_RANGE_LOW_SERIES)),
    (0, shares(0.85, 1.00, Citation::RIM_RANGE_LOW_SERIES)),
];
/// Published LT rows: minima exact, maxima within 1 in.
const RIM_RANGE_LIGHT_TRUCK: ByAspect<RimShares> =
    &[(0, shares(0.65, 0.80, Citation::RIM_RANGE_LIGHT_TRUCK))];

/// The row of a class whose rules are not known: every other row begins with it and states what it knows. The least
/// and greatest rim and the tread are common practice for all classes.
const UNKNOWN: ClassRules = ClassRules {
    prefix: "",
    suffix: "",
    metric_family: "metric",
    numeric_family: "numeric",
    flotation_family: "flotation",
    alpha_numeric_family: "alpha_numeric",
    is_of_the_road: true,
    may_be_of_motorcycles: false,
    is_passenger: false,
    version: None,
    with_high_load: None,
    has_load_version: false,
    has_open_w: false,
    has_metric_load_range: true,
    has_range_letter: false,
    has_earthmover_marks: false,
    laws: &[],
    bears: None,
    letter_pressures: None,
    has_pressure_limit_by_symbol: false,
    at_speed: AtSpeed::Unknown,
    has_commercial_speed_variation: false,
    has_yearbook_loads: false,
    may_mold_lower_speed: false,
    speed_of_use_kmh: None,
    has_height_by_aspect: false,
    overall_diameter: None,
    overall_width: None,
    theoretical_rim: None,
    rims: Rims::Unknown,
    possible_rim: (0.55, 1.05),
    has_stiffness: false,
    new_tread_mm: 18.0,
};

/// It may be anything.
const UNSTATED: ClassRules = ClassRules { may_be_of_motorcycles: true, ..UNKNOWN };

const PASSENGER: ClassRules = ClassRules {
    is_passenger: true,
    with_high_load: Some(SizeClass::HighLoad),
    has_load_version: true,
    has_metric_load_range: false,
    laws: &[InflationModel::MetricPassenger],
    bears: Some(Bears {
        shares: &[(55, 1.07), (45, 1.03), (40, 0.99), (35, 0.95), (0, 0.915)],
        kpa: Some(250.0),
    }),
    has_pressure_limit_by_symbol: true,
    at_speed: AtSpeed::Passenger,
    has_height_by_aspect: true,
    overall_diameter: Some(R30_DIAMETER),
    overall_width: Some(UN_WIDTH),
    theoretical_rim: Some(THEORETICAL_RIM),
    rims: Rims::ByAspect { measuring: MEASURING_RIM, range: RIM_RANGE },
    has_stiffness: true,
    new_tread_mm: 9.0,
    ..UNKNOWN
};

const HIGH_LOAD: ClassRules =
    ClassRules { prefix: "HL", metric_family: "high_load", version: Some(LoadVersion::High), ..PASSENGER };

const P_METRIC: ClassRules = ClassRules {
    prefix: "P",
    metric_family: "p_metric",
    with_high_load: None,
    laws: &[InflationModel::PMetric, InflationModel::PMetricFormula],
    bears: Some(Bears { shares: &[(0, 1.03)], kpa: Some(240.0) }),
    has_yearbook_loads: true,
    overall_width: Some(US_WIDTH),
    ..PASSENGER
};

/// A passenger tire with a pressure and rims of its own.
const TEMPORARY: ClassRules = ClassRules {
    prefix: "T",
    metric_family: "temporary",
    with_high_load: None,
    laws: &[InflationModel::Temporary],
    bears: None,
    has_pressure_limit_by_symbol: false,
    has_yearbook_loads: true,
    may_mold_lower_speed: true,
    speed_of_use_kmh: Some(80.0),
    overall_width: Some(US_WIDTH),
    rims: Rims::Unknown,
    ..PASSENGER
};

const COMMERCIAL: ClassRules = ClassRules {
    suffix: "C",
    metric_family: "commercial",
    laws: &[InflationModel::Commercial],
    bears: Some(Bears { shares: &[(0, 1.16)], kpa: Some(550.0) }),
    at_speed: AtSpeed::Indexed,
    has_commercial_speed_variation: true,
    has_height_by_aspect: true,
    overall_diameter: Some(R54_DIAMETER),
    overall_width: Some(UN_WIDTH),
    theoretical_rim: Some(THEORETICAL_RIM),
    rims: Rims::ByAspect { measuring: MEASURING_RIM, range: RIM_RANGE },
    has_stiffness: true,
    ..UNKNOWN
};

const CAMPER: ClassRules = ClassRules { suffix: "CP", metric_family: "camper", ..COMMERCIAL };

const TRUCK: ClassRules = ClassRules {
    suffix: "",
    metric_family: "truck_metric",
    bears: Some(Bears { shares: &[(0, 1.39)], kpa: Some(900.0) }),
    has_range_letter: true,
    theoretical_rim: Some(THEORETICAL_RIM_TRUCK),
    rims: Rims::TruckTables,
    has_stiffness: false,
    ..COMMERCIAL
};

/// The designation of a rim does not say whether it is the heavier one.
const HEAVY_COMMERCIAL: ClassRules = ClassRules { suffix: "HC", ..TRUCK };

const LIGHT_TRUCK: ClassRules = ClassRules {
    prefix: "LT",
    metric_family: "lt_metric",
    has_range_letter: true,
    laws: &[InflationModel::LightTruck],
    bears: Some(Bears { shares: &[(0, 0.91)], kpa: None }),
    letter_pressures: Some(LetterPressures::LightTruck),
    at_speed: AtSpeed::Indexed,
    has_yearbook_loads: true,
    has_height_by_aspect: true,
    overall_diameter: Some(R54_DIAMETER),
    overall_width: Some(US_WIDTH),
    theoretical_rim: Some(THEORETICAL_RIM),
    rims: Rims::ByAspect { measuring: MEASURING_RIM, range: RIM_RANGE_LIGHT_TRUCK },
    has_stiffness: true,
    ..UNKNOWN
};

const TRAILER: ClassRules = ClassRules {
    prefix: "ST",
    metric_family: "trailer",
    laws: &[InflationModel::Trailer],
    bears: Some(Bears { shares: &[(0, 1.035)], kpa: None }),
    letter_pressures: Some(LetterPressures::Trailer),
    rims: Rims::Unknown,
    ..LIGHT_TRUCK
};

/// The lists of UN R75 have diameters; its rules for others were not seen.
const MOTORCYCLE: ClassRules = ClassRules {
    may_be_of_motorcycles: true,
    suffix: " M/C",
    metric_family: "motorcycle_metric",
    numeric_family: "motorcycle_numeric",
    alpha_numeric_family: "motorcycle_alpha_numeric",
    has_load_version: true,
    bears: Some(Bears { shares: &[(0, 0.88)], kpa: Some(290.0) }),
    has_open_w: true,
    at_speed: AtSpeed::Motorcycle,
    has_height_by_aspect: true,
    possible_rim: (0.40, 0.95),
    ..UNKNOWN
};

const AGRICULTURAL: ClassRules = ClassRules {
    is_of_the_road: false,
    metric_family: "agricultural_metric",
    numeric_family: "agricultural_numeric",
    rims: Rims::TractorTable,
    ..UNKNOWN
};

/// How much more they carry, and on which rims, was not seen.
const IMPROVED_FLEXION: ClassRules =
    ClassRules { prefix: "IF", metric_family: "agricultural_metric", is_of_the_road: false, ..UNKNOWN };
const VERY_HIGH_FLEXION: ClassRules = ClassRules { prefix: "VF", ..IMPROVED_FLEXION };

/// No rules of theirs were seen.
const IMPLEMENT: ClassRules = ClassRules {
    is_of_the_road: false,
    metric_family: "implement_metric",
    numeric_family: "implement_numeric",
    ..UNKNOWN
};
const EARTHMOVER: ClassRules = ClassRules {
    is_of_the_road: false,
    metric_family: "earthmover_metric",
    numeric_family: "earthmover_numeric",
    has_earthmover_marks: true,
    ..UNKNOWN
};

/// Its designation has the diameter, and no limits of it are known.
const OFF_ROAD: ClassRules = ClassRules {
    is_of_the_road: false,
    metric_family: "off_road_metric",
    numeric_family: "off_road_numeric",
    flotation_family: "outer_by_width",
    ..UNKNOWN
};
const ALL_TERRAIN: ClassRules = ClassRules { prefix: "AT", ..OFF_ROAD };

impl SizeClass {
    /// As many bits as its number takes in a key.
    pub(super) const BITS: u32 = 5;

    /// What its rules say.
    pub(crate) const fn rules(self) -> &'static ClassRules {
        match self {
            Self::Passenger => &PASSENGER,
            Self::HighLoad => &HIGH_LOAD,
            Self::PMetric => &P_METRIC,
            Self::Temporary => &TEMPORARY,
            Self::LightTruck => &LIGHT_TRUCK,
            Self::Commercial => &COMMERCIAL,
            Self::Camper => &CAMPER,
            Self::Trailer => &TRAILER,
            Self::Truck => &TRUCK,
            Self::HeavyCommercial => &HEAVY_COMMERCIAL,
            Self::Motorcycle => &MOTORCYCLE,
            Self::Agricultural => &AGRICULTURAL,
            Self::ImprovedFlexion => &IMPROVED_FLEXION,
            Self::VeryHighFlexion => &VERY_HIGH_FLEXION,
            Self::Implement => &IMPLEMENT,
            Self::Earthmover => &EARTHMOVER,
            Self::OffRoad => &OFF_ROAD,
            Self::AllTerrain => &ALL_TERRAIN,
            Self::Unstated => &UNSTATED,
        }
    }

    /// Whether tires of this class are passenger car tires, to which the passenger rules apply.
    ///
    /// ```
    /// use beadseat::tire::SizeClass;
    /// assert!(SizeClass::PMetric.is_passenger() && !SizeClass::LightTruck.is_passenger());
    /// ```
    pub const fn is_passenger(self) -> bool {
        self.rules().is_passenger
    }
}
