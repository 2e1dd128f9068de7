//! What can be told of a marking, in the words of the trade.

use crate::Citation;

macro_rules! terms {
    ($($variant:ident = $key:literal, $name:literal, $source:expr, $meaning:literal;)*) => {
        /// What a fact of a marking is about. Its key ends in the unit that its number is in for programs.
        ///
        /// ```
        /// use beadseat::marking::Term;
        /// assert_eq!(Term::SectionWidth.key(), "section_width_mm");
        /// assert_eq!(Term::SectionWidth.name(), "section width");
        /// assert!(Term::MaxPressure.meaning().contains("not the pressure to inflate to"));
        /// assert!(Term::Marks.is_many() && !Term::Speed.is_many());
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum Term { $(#[doc = concat!("`", $key, "`: ", $meaning, ".")] $variant,)* }

        impl Term {
            /// Every term there is, those of tires first.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// Its stable key, as programs know it.
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key,)* }
            }

            /// Its name for people, in words.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name,)* }
            }

            /// What it means, and what to do with it.
            pub const fn meaning(self) -> &'static str {
                match self { $(Self::$variant => $meaning,)* }
            }

            /// Where it comes from, if that is the same for every marking.
            pub(super) const fn source(self) -> Option<Citation> {
                match self { $(Self::$variant => $source,)* }
            }
        }
    };
}

/// What stands in the marking itself.
const STATED: Option<Citation> = Some(Citation::DESIGNATION);
const MOLDED: Option<Citation> = Some(Citation::MOLDED_LIMIT);
const LOAD: Option<Citation> = Some(Citation::LOAD_INDEX);
const SPEED: Option<Citation> = Some(Citation::SPEED_SYMBOL);
const DATE: Option<Citation> = Some(Citation::DATE_CODE);
const NUMBER: Option<Citation> = Some(Citation::IDENTIFICATION_NUMBER);
const GEOMETRY: Option<Citation> = Some(Citation::FLANGE);
const APPROVAL: Option<Citation> = Some(Citation::APPROVAL_MARK);

terms! {
    Family = "family", "family", STATED, "the family of designations that the size belongs to";
    Class = "class", "class", STATED, "what kind of vehicle the size is made for";
    SectionWidth = "section_width_mm", "section width", STATED, "the nominal width of the section; the tire may be a few percent wider";
    AspectRatio = "aspect_ratio", "aspect ratio", STATED, "height of the section as a share of its width, in percent";
    Construction = "construction", "construction", STATED, "how the plies run; one axle must not mix them";
    RimDiameter = "rim_diameter_in", "rim diameter", STATED, "the code of the rim diameter, which tire and wheel must share exactly";
    LoadIndexSingle = "load_index_single", "load index single", STATED, "the load index of a tire that stands alone";
    LoadIndexDual = "load_index_dual", "load index dual", STATED, "the load index of each tire of a pair";
    LoadSingle = "load_kg_single", "load single", LOAD, "what a tire that stands alone carries at its reference pressure";
    LoadDual = "load_kg_dual", "load dual", LOAD, "what each tire of a pair carries at its reference pressure";
    SpeedSymbol = "speed_symbol", "speed symbol", STATED, "the letter of the speed at which the load holds";
    Speed = "speed_kmh", "speed", SPEED, "the speed at which the load holds, not to be exceeded";
    LoadVersion = "load_version", "load version", STATED, "whether the tire carries more or less than the standard load of its size";
    LoadRange = "load_range", "load range", STATED, "the letter of the load and pressure that the plies are built for";
    OverallDiameter = "overall_diameter_mm", "overall diameter", None, "the diameter of the new tire, inflated and not loaded";
    SectionHeight = "section_height_mm", "section height", Some(Citation::OVERALL_DIAMETER), "from the bead seat to the tread";
    MeasuringRim = "measuring_rim_in", "measuring rim", None, "the rim width on which the tire is measured";
    SectionWidthOnMeasuringRim = "section_width_on_measuring_rim_mm", "section width on measuring rim", None, "the width of the section, without lettering, on the measuring rim";
    RimWidthRange = "rim_width_range_in", "rim width range", None, "the rims the tire may stand on; its maker's range overrides an estimate";
    RollingCircumference = "rolling_circumference_mm", "rolling circumference", None, "how far the tire rolls in a turn";
    RevolutionsPerKm = "revolutions_per_km", "revolutions per km", None, "turns in a kilometre, as speedometers count them";
    SecondService = "second_service", "second service", STATED, "another load at another speed, from the circle beside the first";
    MaxLoad = "max_load_kg", "max load", MOLDED, "the most that a tire which stands alone may carry";
    MaxLoadDual = "max_load_dual_kg", "max load dual", MOLDED, "the most that each tire of a pair may carry";
    LoadPressure = "load_pressure_kpa", "load pressure", MOLDED, "the cold pressure at which the maximum load holds";
    LoadPressureDual = "load_pressure_dual_kpa", "load pressure dual", MOLDED, "the cold pressure at which the maximum load of a pair holds";
    MaxPressure = "max_pressure_kpa", "max pressure", MOLDED, "the greatest cold pressure; not the pressure to inflate to, which is on the vehicle's placard";
    MaxSpeed = "max_speed_kmh", "max speed", MOLDED, "the greatest speed, as of a temporary spare";
    Marks = "marks", "marks", STATED, "words and symbols beside the size";
    MudAndSnow = "mud_and_snow", "mud and snow", Some(Citation::MUD_AND_SNOW), "marked M+S by its maker's word alone";
    SevereSnow = "severe_snow", "severe snow", Some(Citation::SEVERE_SNOW), "tested on snow: the mountain with the snowflake";
    Tubeless = "tubeless", "tubeless", Some(Citation::TUBELESS), "whether it is used without a tube";
    Contradictions = "contradictions", "contradictions", STATED, "what cannot all be true; look at the tire again";
    Topic = "topic", "topic", None, "what the mark is about";
    RimWidth = "rim_width_in", "rim width", STATED, "the width between the flanges, as the code has it";
    WidthBetweenFlanges = "rim_width_mm", "width between flanges", STATED, "the width between the flanges as a length";
    Contour = "contour", "contour", STATED, "the letter of the flange";
    Hump = "hump", "hump", STATED, "what keeps the bead on its seat at low pressure";
    MultiPiece = "multi_piece", "multi piece", STATED, "whether the rim is of several pieces; let a trained person take it apart";
    Inset = "inset_mm", "inset", STATED, "how far the middle of the rim lies inboard of the mounting face";
    Backspacing = "backspacing_mm", "backspacing", GEOMETRY, "from the mounting face to the inner edge of the rim, flange and all";
    BackspacingSpan = "backspacing_span_mm", "backspacing span", GEOMETRY, "the same with the narrowest and the widest flange";
    InsetByBackspacing = "inset_by_backspacing_mm", "inset by backspacing", GEOMETRY, "the inset that follows from the backspacing with a presumed flange";
    FlangeWidth = "flange_width_mm", "flange width", GEOMETRY, "how much each flange adds to the width of the rim; of J where no contour is told";
    BoltCircle = "bolt_circle", "bolt circle", STATED, "how many holes, on what diameter; exactly the hub's";
    SecondBoltCircle = "second_bolt_circle", "second bolt circle", STATED, "the other bolt circle of the same wheel";
    Bore = "bore_mm", "bore", STATED, "the hole that the wheel is centred by; not below the hub's spigot";
    SpecifiedDiameter = "specified_diameter_mm", "specified diameter", Some(Citation::RIM_SPECIFIED), "the diameter of the rim at the bead seat";
    WheelLoad = "load_kg", "load", STATED, "what one wheel may carry, half of an axle's load";
    Made = "made", "made", STATED, "when the wheel was made";
    WheelApproval = "approval", "approval", APPROVAL, "country and number of the wheel's approval to UN R124";
    Permit = "permit", "permit", STATED, "the number of a national type permit";
    Origin = "origin", "origin", STATED, "the country where the wheel was made";
    Thread = "thread", "thread", STATED, "the thread of the fasteners, which hub and fastener must share";
    Seat = "seat", "seat", STATED, "the shape under the fastener's head, which wheel and fastener must share";
    Count = "count", "count", STATED, "how many holes there are on a circle";
    Diameter = "diameter_mm", "diameter", STATED, "the diameter of the circle through the holes";
    Diameters = "diameters_mm", "diameters", STATED, "the diameters of both circles";
    Adjacent = "adjacent_mm", "adjacent", STATED, "between the centres of neighbouring holes";
    LongestChord = "longest_chord_mm", "longest chord", STATED, "between the centres of the two holes that lie furthest apart";
    BetweenNeighbours = "between_neighbours_mm", "between neighbours", STATED, "between a hole of one circle and the next of the other";
    Major = "major_mm", "major", STATED, "the outer diameter of the thread";
    Pitch = "pitch_mm", "pitch", STATED, "from one turn of the thread to the next";
    StressArea = "stress_area_mm2", "stress area", Some(Citation::THREAD_STRESS_AREA), "the area that the tension is borne by";
    ConeAngle = "cone_angle_deg", "cone angle", STATED, "the angle of the whole cone";
    BallRadius = "ball_radius_mm", "ball radius", STATED, "the radius of the ball";
    Centring = "centring", "centring", STATED, "whether the seat can centre the wheel";
    IndexLoad = "kg", "load", LOAD, "what the load index stands for";
    PrintedPounds = "lb", "load as printed", LOAD, "the pounds that are molded beside the kilograms";
    SymbolSpeed = "kmh", "speed", SPEED, "what the speed symbol stands for";
    PrintedMph = "mph", "speed as printed", SPEED, "the miles an hour that tables print beside";
    Form = "form", "form", NUMBER, "which rule the number was made by";
    Plant = "plant", "plant", NUMBER, "the code of the plant that made the tire";
    ManufactureWeek = "manufacture_week", "manufacture week", DATE, "the week of the year in which the tire was made";
    ManufactureYear = "manufacture_year", "manufacture year", DATE, "the year, where only one is possible";
    FirstDay = "first_day", "first day", DATE, "the first day of that week";
    LastDay = "last_day", "last day", DATE, "the last day of that week";
    DecadeAmbiguous = "decade_ambiguous", "decade ambiguous", DATE, "whether the year may be of several decades";
    PossibleYears = "possible_years", "possible years", DATE, "every year that is possible, newest first; take the oldest";
    Retread = "retread", "retread", NUMBER, "whether it is the number of a retread";
    Ambiguous = "ambiguous", "ambiguous", NUMBER, "whether the number can be parted in another way";
    Treadwear = "treadwear", "treadwear", Some(Citation::TREADWEAR_GRADE), "wear in a test against a control tire of 100; the more, the longer";
    Traction = "traction", "traction", Some(Citation::TRACTION_GRADE), "braking straight ahead on wet pavement; AA is the best";
    Temperature = "temperature", "temperature", Some(Citation::TEMPERATURE_GRADE), "heat endured at speed; A is the best";
    LifeOfControl = "life_of_control", "life of control", Some(Citation::TREADWEAR_GRADE), "how many times as long as the control tire it lasted in the test";
    FrictionOnAsphalt = "friction_above_on_asphalt", "friction above on asphalt", Some(Citation::TRACTION_GRADE), "the sliding friction on wet asphalt that the grade exceeds";
    FrictionOnConcrete = "friction_above_on_concrete", "friction above on concrete", Some(Citation::TRACTION_GRADE), "the sliding friction on wet concrete that the grade exceeds";
    Endured = "endured_kmh", "endured", Some(Citation::TEMPERATURE_GRADE), "the speed that the tire endured on a drum";
    FuelEfficiency = "fuel_efficiency", "fuel efficiency", Some(Citation::LABEL_RESISTANCE), "class of rolling resistance; A is the best";
    WetGrip = "wet_grip", "wet grip", Some(Citation::LABEL_WET_GRIP), "class of braking on a wet road; A is the best";
    Sound = "sound_db", "sound", Some(Citation::LABEL_NOISE), "noise of rolling as heard beside the road";
    NoiseClass = "noise_class", "noise class", Some(Citation::LABEL_NOISE), "class of the noise; A is the quietest";
    CountryNumber = "country_number", "country number", APPROVAL, "the number of the country that granted it";
    Country = "country", "country", Some(Citation::APPROVAL_COUNTRY), "the country that granted it";
    Regulation = "regulation", "regulation", APPROVAL, "what was tested";
    Number = "number", "number", APPROVAL, "its number, by which the authority finds it";
}

impl Term {
    /// Whether it may have several values, of which none is a fact too.
    pub const fn is_many(self) -> bool {
        matches!(self, Self::Marks | Self::Contradictions | Self::Diameters | Self::PossibleYears)
    }
}
