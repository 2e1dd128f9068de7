//! Where every number comes from.

use crate::record::words;

words! {
    /// What kind of authority a source has.
    ///
    /// ```
    /// assert_eq!(beadseat::Status::CommonPractice.name(), "common_practice");
    /// ```
    Status {
        /// A standard: ISO, JIS, SAE, ETRTO, TRA.
        Standard = "standard",
        /// A regulation: UN, EU, US, Australian.
        Regulation = "regulation",
        /// A handbook, a paper, a report.
        Handbook = "handbook",
        /// A fact or habit of the trade that no document was found for.
        CommonPractice = "common_practice",
        /// Follows by mathematics from definitions or from other rows.
        Derived = "derived",
        /// What a designation itself means, or what a maker or the caller states.
        Stated = "stated",
    }
}

struct Source {
    document: &'static str,
    clause: &'static str,
    year: Option<u16>,
    status: Status,
    from_memory: bool,
}

/// The source of a number: document, clause, year where known, and whether we have read it.
///
/// One byte long. [`sources`] lists all that the crate uses.
///
/// ```
/// use beadseat::{Citation, Status};
/// let c = Citation::SPEEDOMETER;
/// assert_eq!((c.document(), c.clause()), ("UN R39", "§5.3"));
/// assert_eq!(c.status(), Status::Regulation);
/// assert!(!c.is_from_memory());
/// assert_eq!(c.to_string(), "UN R39, §5.3");
/// assert_eq!(Citation::OVERALL_DIAMETER.to_string(), "UN R30 / UN R54, §6.1.2, §6.1.5 (from memory)");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Citation(u8);

macro_rules! sources {
    ($($name:ident: $status:ident, $memory:literal, $document:literal, $clause:literal, $year:expr;)*) => {
        #[allow(non_camel_case_types, clippy::upper_case_acronyms)]
        #[derive(Clone, Copy)]
        #[repr(u8)]
        enum Index { $($name,)* }

        impl Citation {
            $(#[doc = concat!($document, ", ", $clause, ".")]
            pub const $name: Self = Self(Index::$name as u8);)*
        }

        const SOURCES: &[Source] = &[$(Source {
            document: $document, clause: $clause, year: $year, status: Status::$status, from_memory: $memory,
        },)*];
    };
}

sources! {
    LOAD_INDEX: Standard, false, "ISO 4000-1 and annexes of UN R30, R54, R106", "load index table, seen in trade tables and an open library's list; 169, 203 and 275 by the series", None;
    SPEED_IN_SIZE: Regulation, true, "UN R30", "letters inside the size before service descriptions", None;
    SPEED_SYMBOL: Regulation, false, "UN R30 / UN R54", "speed categories, seen in trade tables", None;
    OVERALL_DIAMETER: Regulation, true, "UN R30 / UN R54", "§6.1.2, §6.1.5", None;
    LISTED_DIMENSIONS: Regulation, true, "UN R30 / UN R54 / UN R75", "Annex 5", None;
    COINED_SIZES: Standard, true, "ETRTO Standards Manual / TRA Year Book", "sizes with their load indices, not all of them", None;
    SECTION_WIDTH: Regulation, false, "UN R30 / UN R54", "§6.1.1.1, K = 0.4; the share of the theoretical rim, which the maker states, from memory", None;
    OVERALL_WIDTH: Regulation, true, "UN R30 / UN R54", "§6.1.4", None;
    OVERALL_WIDTH_US: Regulation, true, "49 CFR 571.139", "+7 %", None;
    LEAST_WIDTH: CommonPractice, false, "common practice, no source", "−4 % of the nominal width", None;
    MEASURING_RIM: Standard, true, "ISO 4000-1 / ETRTO design guide", "measuring rim", None;
    RIM_RANGE_HIGH_SERIES: Derived, false, "fitted to the ETRTO rim table of the 80 and 75 series", "0.65 to 0.85 of the width", None;
    RIM_RANGE_LOW_SERIES: Derived, true, "fitted to remembered ETRTO and TRA rim tables", "aspect ratios 20 to 65, ± 0.5 in", None;
    RIM_RANGE_LIGHT_TRUCK: Derived, false, "fitted to published LT rows", "0.65 to 0.80 of the width, maximum ± 1 in", None;
    RIM_RANGE_AGRICULTURAL: Standard, false, "ETRTO Standards Manual", "corrigendum pp. A.21, A.27: rims for tractor tires for traction wheels", Some(2022);
    RIM_RANGE_TRUCK: Standard, false, "GOST R 52899", "Annex A, truck tires, as a trade article reprints it", Some(2007);
    RIM_RANGE_TRUCK_SHEET: Handbook, false, "a tire maker's published size sheet", "approved rims of truck sizes; 235/80R22.5 and 255/80R22.5 at second hand", None;
    RIM_RANGE_MAKER: Stated, false, "the tire maker's rim range", "as given", None;
    ROLLING_CIRCUMFERENCE: Handbook, false, "ETRTO as a secondary text has it", "3.05·D radial, 2.99·D diagonal at 60 km/h", None;
    ROLLING_GROWTH: Standard, true, "WdK 107", "growth with speed, in the form of Crolla (ed.) 2009 eq. 10.1.1d", None;
    LOAD_AT_PRESSURE: Handbook, false, "Crolla (ed.), Automotive Engineering", "Fig. 10.1-15, p. 290", Some(2009);
    LOAD_AT_PRESSURE_P: Standard, true, "ETRTO exponent 0.8 on TRA reference pressure, the higher of two published laws", "P-metric", None;
    LOAD_AT_PRESSURE_LT: Derived, false, "fitted to a tire maker's chart printed in a motorhome manual", "exponent 0.70, LT235/85R16", Some(1990);
    LOAD_AT_PRESSURE_COMMERCIAL: Standard, true, "ETRTO", "exponent 0.8 for commercial tires", None;
    REFERENCE_PRESSURE: Handbook, false, "dealer guide to tire information", "psi of metric and P-metric, standard and XL; kPa and HL from memory", None;
    REFERENCE_PRESSURE_RANGE: Handbook, false, "dealer guide to load ranges", "psi of LT-metric letters B to F; kPa and G from memory", None;
    REFERENCE_PRESSURE_WIDE: Handbook, false, "a tire maker's sheet of LT sizes", "wide LT sizes: D 345 kPa, E 448 kPa beside the pressure of narrow ones; C, F, G derived", None;
    REFERENCE_PRESSURE_FLOTATION: Handbook, false, "dealer article quoting the TRA yearbook", "two pressures by size for C, D, E; the higher is taken", Some(2010);
    REFERENCE_PRESSURE_TRAILER: Handbook, false, "dealer guide to load ranges", "psi of ST letters B, C, D; kPa from memory", None;
    REFERENCE_PRESSURE_TRAILER_REMEMBERED: Standard, true, "TRA yearbook practice", "ST letters E to H, H with doubt", None;
    REFERENCE_PRESSURE_TRUCK: Standard, true, "TRA and ETRTO practice", "truck sizes with a letter, with doubt in 225/70R19.5 F and 315/80R22.5 J", None;
    REFERENCE_PRESSURE_GIVEN: Stated, false, "the tire's own marking or its maker's data", "as given", None;
    SPEED_LOAD: Handbook, false, "Crolla (ed.), Automotive Engineering", "Fig. 10.1-14, p. 291", Some(2009);
    SPEED_PRESSURE: Handbook, false, "Crolla (ed.), Automotive Engineering", "p. 291", Some(2009);
    SPEED_PRESSURE_W: Standard, true, "ETRTO", "10 kPa for each 10 km/h from 190 to 240 km/h", None;
    CAMBER: Handbook, false, "Crolla (ed.), Automotive Engineering", "p. 296", Some(2009);
    MAXIMUM_PRESSURE: Handbook, false, "Crolla (ed.), Automotive Engineering", "p. 296: 320 kPa Q to T, 350 kPa H and above", Some(2009);
    MAXIMUM_PRESSURE_PRACTICE: CommonPractice, false, "common practice, no source", "10 % above the reference pressure of a tire of no molded maximum", None;
    MAXIMUM_PRESSURE_GIVEN: Stated, false, "the tire's or the wheel's own marking", "maximum pressure as given", None;
    PLACARD: Stated, false, "the vehicle maker's placard", "as given", None;
    PASSENGER_TIRE_ON_TRUCK: Regulation, false, "49 CFR 571.110", "S4.2.2: load ÷ 1.10", None;
    LOAD_RESERVE: Regulation, false, "49 CFR 571.110", "S4.2.2: 94 %", None;
    LOAD_RESERVE_PRACTICE: CommonPractice, false, "good practice after 49 CFR 571.110", "S4.2.2: 94 %", None;
    AXLE_SHARE: Regulation, false, "EU 458/2011", "load index × factors ≥ share of the axle", None;
    DUAL_PASSENGER: Regulation, true, "UN R142 / EU 458/2011", "0.27 of the axle load for each of four passenger tires", None;
    TOWING: Regulation, false, "EU 458/2011", "Annex II: +15 % on the rear tires up to 100 km/h, +20 kPa", None;
    SPEEDOMETER: Regulation, false, "UN R39", "§5.3", None;
    SPEEDOMETER_MOTORCYCLE: Regulation, true, "UN R39", "§5.3: + 8 km/h for motorcycles", None;
    DESIGNATION: Stated, false, "what the designations themselves mean", "nominal values agree or they do not", None;
    ORIGINAL: Stated, false, "the original equipment", "as given", None;
    CALLER: Stated, false, "the caller's own limit", "as given", None;
    WHEEL_RATING: Standard, false, "SAE J2530", "rating ≥ half the static load of the heaviest axle", None;
    DIAMETER_CHANGE: CommonPractice, false, "common practice, no source", "± 3 % of the original diameter", None;
    TRACK_GROWTH: CommonPractice, false, "common practice, no source", "+2 % of the original track", None;
    CLEARANCE: CommonPractice, false, "common practice, no source", "6.35 mm, or what the original had if that was less", None;
    SWEPT_CLEARANCE: CommonPractice, false, "common practice, no source", "6.35 mm over all steer and travel, after 5 mm for movement under load", None;
    SWEPT_CLEARANCE_BC: Handbook, false, "British Columbia inspection manual, as quoted", "25 mm to anything at lock and jounce", None;
    TIRE_SHAPE: CommonPractice, false, "common practice, no source", "shape of a tire in section: shoulder, crown, height of the greatest width", None;
    SWEPT: Derived, false, "geometry of the wheel and its movement", "least distance, by branch and bound with Lipschitz and tangent bounds", None;
    DUAL_SPACING: CommonPractice, false, "common practice, no source", "tires of a pair no nearer than as built; their maker's least spacing rules", None;
    WHEEL_GUARD_EU: Regulation, false, "EU 1009/2010", "Annex II: tread covered from 30° ahead to 50° behind", Some(2010);
    WHEEL_GUARD_AU: Regulation, false, "ADR 42", "wheel guards: 30° ahead to 50° behind", None;
    WHEEL_GUARD: CommonPractice, false, "good practice after EU 1009/2010", "tread covered from 30° ahead to 50° behind", None;
    TRACTION_DEVICE: Standard, false, "SAE classes of traction devices", "S 37 and 15 mm, U 50 and 23 mm, W 63.5 and 38.1 mm over tread and beside sidewall", None;
    BRAKE_DISC: Handbook, false, "Crolla (ed.), Automotive Engineering", "Fig. 10.1-10, p. 289", Some(2009);
    PROJECTION: Regulation, false, "EU 1009/2010, ADR 42", "covers of hub and nuts: 30 mm, edges of 5 mm radius", None;
    BRAKE_CLEARANCE: CommonPractice, false, "common practice, no source", "6.35 mm between wheel and brake", None;
    RIM_HUMP: Standard, true, "ISO 4000-2 / ETRTO", "humps for tubeless radial tires; extended ones for run-flat tires", None;
    CIRCUMFERENCE_RATIO: CommonPractice, false, "common practice, no source", "± 0.5 % all-wheel drive, ± 1 % anti-lock and stability control", None;
    RIM_SANITY: CommonPractice, false, "common practice, no source", "rim 0.55 to 1.05 of the tire's nominal width, of motorcycles 0.40 to 0.95", None;
    CALIPER_AROUND_DISC: CommonPractice, false, "common practice, no source", "12 mm of caliper around a brake disc", None;
    CENTRING_RING: CommonPractice, false, "common practice, no source", "wall of a centring ring at most 12 mm", None;
    PROPERTY_CLASS: CommonPractice, false, "common practice, no source", "fasteners no weaker than the original ones", None;
    MIXED_AXLES: CommonPractice, false, "common practice, no source", "one structure and one season on all axles", None;
    HUB_CENTRIC: CommonPractice, false, "common practice, no source", "bore at most 0.2 mm above the spigot", None;
    SPIGOT_ENGAGEMENT: CommonPractice, false, "common practice, no source", "at least 3 mm of spigot in the bore", None;
    NEW_TREAD: CommonPractice, false, "common practice, no source", "tread of a new tire at most 9 mm on cars, 18 mm on others", None;
    SEAT_MATCH: CommonPractice, false, "common practice, no source", "fastener and wheel seat have one shape", None;
    SCRUB: Derived, false, "geometry of the steering axis", "change of scrub radius", None;
    FLANGE: Standard, false, "JIS D 4218 (modified ISO 4000-2)", "Table 3, least flange width", Some(2021);
    RIM_SPECIFIED: Standard, true, "ISO 4000-2 / ISO 4209-2", "specified rim diameter", None;
    TRACK_GROWTH_SA: Regulation, false, "South Australia Road Traffic (Misc.) Regulations", "reg. 26: +26 mm", Some(1999);
    TRACK_GROWTH_VSB14: Regulation, true, "VSB 14", "section LS: +25 mm", None;
    DIAMETER_VSB14: Regulation, false, "VSB 14 / NSW", "passenger +15 mm", None;
    DIAMETER_VSB14_LOSS: Regulation, true, "VSB 14 / NSW", "passenger −26 mm", None;
    DIAMETER_VSB14_OFF_ROAD: Regulation, false, "VSB 14", "off-road +50 mm", None;
    TRACK_GROWTH_BELGIAN: Handbook, false, "a Belgian vehicle inspection body, questions on tires", "track +2 %, off-road +4 %", None;
    DIAMETER_BELGIAN: Handbook, false, "a Belgian vehicle inspection body, questions on tires", "overall diameter −2 to +1.5 % of the approved", None;
    TRACK_GROWTH_GERMAN: Handbook, false, "German examination practice as quoted by a test house", "+2 % of the widest original track, +4 % frame-built off-road", None;
    BOLT_CIRCLES: CommonPractice, false, "common practice, no source", "bolt circles in use on road vehicles", None;
    THREAD_STRESS_AREA: Standard, false, "ISO 898-1 / ASME B1.1", "tensile stress area", None;
    THREAD_PROFILE: Standard, true, "ISO 724 / ISO 898-1 / ASME B1.1", "pitch, minor and root diameter; unified root as in Shigley", None;
    PROOF_STRESS_ISO: Standard, false, "ISO 898-1", "proof and yield stress of property classes, as a fastener maker reprints the table", Some(2013);
    PROOF_STRESS_SAE: Standard, false, "SAE J429", "proof stress of grades 5 and 8", None;
    YIELD_STRESS_SAE: Standard, true, "SAE J429", "stress at 0.2 % lasting strain of grades 5 and 8", None;
    NUT_FACTOR: Handbook, true, "Shigley, Mechanical Engineering Design", "short form F = T/(K·d)", None;
    TIGHTENING_TORQUE: Derived, true, "ISO 16047 and Shigley, Mechanical Engineering Design", "torque and preload with the friction of thread and seat", None;
    COMBINED_STRESS: Derived, false, "von Mises", "tension and torsion of a rod of the stress diameter", None;
    JOINT_SLIP: Derived, false, "friction of a clamped joint", "n·F·μ·D/2, against load × grip × radius at the tire", None;
    LEAST_ENGAGEMENT: Handbook, true, "Machinery's Handbook", "length of engagement that breaks an equally strong bolt before its threads", None;
    LEAST_TURNS: Handbook, false, "trade chart of wheel fasteners", "least turns engaged, by thread", None;
    TIGHTENING_PRACTICE: CommonPractice, false, "common practice, no source", "star order, stages of 30, 60 and 100 %, re-check after 50 to 100 km", None;
    TORQUE_BAND: CommonPractice, false, "common practice, no source", "torques that wheel fasteners of a thread usually get", None;
    IDENTIFICATION_NUMBER: Regulation, false, "49 CFR 574.5", "(a): 13 symbols of a new tire, 7 of a retread; 80 FR 19553", Some(2015);
    IDENTIFICATION_EARLIER: Regulation, false, "49 CFR 574.5 before 2015", "plant of two symbols, optional group of up to four; 64 FR 36807", Some(1999);
    IDENTIFICATION_REMEMBERED: Regulation, true, "49 CFR 574.5", "allowed letters, older retreads, number without its date", None;
    DATE_CODE: Regulation, true, "49 CFR 574.5", "week 01 is the first full week; that weeks run Sunday to Saturday from memory", None;
    GRADING_SCOPE: Regulation, false, "49 CFR 575.104", "(c): new tires of passenger cars, and which of them are exempt", None;
    TREADWEAR_GRADE: Regulation, false, "49 CFR 575.104", "figure 2: 100 is the control", None;
    TREADWEAR_ROUNDING: Regulation, false, "49 CFR 575.104", "(d)(2)(i), (e)(2)(ix), as an agency letter has it: down to a multiple of 20; 30 000 miles are 100", None;
    TRACTION_GRADE: Regulation, false, "49 CFR 575.104", "(d)(2)(ii), as amended by 61 FR 47437; on concrete at second hand", Some(1996);
    TEMPERATURE_GRADE: Regulation, false, "49 CFR 575.104", "(d)(2)(iii), with a published explanation", None;
    LABEL_RESISTANCE: Regulation, false, "EU 2020/740", "Annex I Part A, in a public reprint", Some(2020);
    LABEL_WET_GRIP: Regulation, false, "EU 2020/740", "Annex I Part B, in a public reprint", Some(2020);
    LABEL_FORMER: Regulation, false, "EC 1222/2009", "Annex I", Some(2009);
    LABEL_NOISE: Regulation, false, "EU 2020/740", "Annex I Part C, as a tire maker explains it", Some(2020);
    NOISE_LIMIT: Regulation, false, "EC 661/2009", "Annex II Part C, in a public reprint", Some(2009);
    NOISE_LIMIT_RAISED: Regulation, true, "EC 661/2009", "Annex II Part C: 1 dB(A) more for severe snow or extra load", Some(2009);
    RESISTANCE_LIMIT: Regulation, false, "EC 661/2009", "Annex II Part B, in a public reprint", Some(2009);
    WET_GRIP_LIMIT: Regulation, false, "EC 661/2009", "Annex II Part A, in a public reprint; that it is of C1 from memory", Some(2009);
    TIRE_CLASS: Regulation, true, "EC 661/2009", "classes C1, C2, C3", Some(2009);
    SNOW_GRIP: Regulation, true, "UN R117", "§6.4.1: least snow grip index", None;
    ICE_GRIP: Regulation, false, "UN R117, proposed amendment", "§6.4.2: ice grip index 1.18", None;
    MUD_AND_SNOW: Regulation, false, "UN R54", "§3.1.5, with a tire industry note on winter tires", None;
    SEVERE_SNOW: Regulation, false, "UN R117 / ASTM F1805", "Annex 7: grip on snow against a reference tire", None;
    DOT_MARK: Regulation, false, "NHTSA interpretation aiam1278", "DOT: the maker's certificate", None;
    DOT_RETREAD: Regulation, false, "NHTSA interpretation nht75-4.16", "DOT-R: certificate under FMVSS 117", Some(1975);
    NATIONAL_APPROVAL: CommonPractice, true, "common practice, no source", "CCC, INMETRO, BIS, SNI, GSO", None;
    RETREAD_MARK: Regulation, false, "NHTSA interpretation 07-000305as", "retreaded tires, with 49 CFR 574.5(a)(2)", None;
    REGROOVABLE: Regulation, false, "UN R54 / 49 CFR 569", "§3.1.9", None;
    TUBELESS: Regulation, false, "UN R54", "§3.1.7", None;
    TUBE_TYPE: Regulation, false, "NHTSA interpretation nht75-4.16", "tube type", Some(1975);
    STRUCTURE_MARK: Regulation, false, "UN R54", "§3.1.3", None;
    BIAS_BELTED: Handbook, false, "trade note on markings", "bias-belted", None;
    STANDARD_LOAD: Handbook, false, "vehicle owner manual", "no load mark means standard load", None;
    SPARE_INFLATION: Regulation, true, "49 CFR 571.139", "S5.5.5", None;
    EXTENDED_MOBILITY: Regulation, false, "UN document GRRF-86-04", "extended mobility tires, as summarized", None;
    RUN_FLAT_WORD: CommonPractice, true, "common practice, no source", "makers' words for self-supporting tires", None;
    FARM_IMPLEMENT: Regulation, false, "49 CFR 571.139", "S2.1", None;
    NOT_FOR_HIGHWAY: Regulation, false, "Maryland COMAR 11.22.04.06", "tires labelled not for highway use", None;
    SPECIAL_USE: Regulation, true, "UN R54", "§3.1: ET, MPT, ML, FRT", None;
    OFF_ROAD: Regulation, false, "UN R30", "amendment that defines professional off-road", None;
    ROTATION_MARK: Handbook, false, "owner manual and a guide to rotation", "rotation arrow", None;
    OUTSIDE_MARK: Regulation, false, "49 CFR 571.139", "S3: intended outboard sidewall", None;
    INSIDE_MARK: CommonPractice, true, "common practice, no source", "inner side of an asymmetric tire", None;
    WEAR_INDICATOR: Regulation, false, "49 CFR 571.139", "S5.4, with a truck tire maker's page", None;
    WINTER_WEAR_INDICATOR: CommonPractice, true, "common practice, no source", "bars at about 4 mm", None;
    FACTORY_SECOND: CommonPractice, true, "common practice, no source", "blemished tires", None;
    ORIGINAL_EQUIPMENT_MARK: CommonPractice, true, "common practice, no source", "symbol of a vehicle maker", None;
    LOAD_VERSION_MARK: Handbook, false, "trade technical pages on load marks", "XL 41 or 42 psi, LL 35 psi, HL above XL", None;
    MOLDED_LIMIT: Handbook, false, "trade page on load and pressure marks, NHTSA letter 004609", "what MAX LOAD and MAX PRESS mean", None;
    LOAD_RANGE_MARK: Regulation, true, "49 CFR 571.139", "S5.5(d)", None;
    PLIES: Regulation, true, "49 CFR 571.139", "S5.5(f) plies, as a US agency letter has it; S5.5(e) cord materials from memory", None;
    APPROVAL_MARK: Handbook, false, "trade notes on approval marks", "E and e, country, series, S, W and R", None;
    APPROVAL_COUNTRY: Regulation, true, "UN 1958 Agreement", "numbers of countries", None;
    TREAD_US: Regulation, false, "49 CFR 570.9", "2/32 in, with the Maryland inspection code", None;
    TREAD_US_COMMERCIAL: Regulation, false, "49 CFR 393.75", "(b) 4/32 in on front wheels, (c) 2/32 in on others, as quoted", None;
    TREAD_EU: Regulation, true, "Directive 89/459/EEC", "1.6 mm", None;
    TREAD_UK: Regulation, false, "UK Construction and Use Regulations", "reg. 27: 1.6 mm, as trade and safety pages give it", None;
    TREAD_UK_HEAVY: Regulation, true, "UK Construction and Use Regulations", "reg. 27: 1.0 mm", None;
    TREAD_GERMANY: Regulation, false, "StVZO", "§36(3): 1.6 mm, 1.0 mm on mopeds and light motorcycles", None;
    TREAD_AUSTRIA: Regulation, true, "Austrian rule on winter tires", "4 mm radial, 5 mm diagonal", None;
    TREAD_ADVICE_WET: Handbook, false, "UK trade pages, RoSPA", "3 mm", None;
    TREAD_ADVICE: CommonPractice, true, "common practice, no source", "4/32 in in the wet, 4 to 4.8 mm in winter", None;
    TREAD_SPREAD: Handbook, false, "trade articles on all-wheel drive and matching", "1/32 to 4/32 in", None;
    DEEPER_TREAD_BEHIND: Handbook, false, "US motoring club advice", "the deeper pair on the rear axle", None;
    USUAL_WEAR: Handbook, false, "UK tire retailer's page", "1600 to 6400 km for 1 mm", None;
    AGE_UK_HEAVY: Regulation, false, "UK enforcement agency notices", "10 years from 1 February 2021", Some(2021);
    AGE_TIRE_MAKERS: Handbook, false, "trade and UK government statement", "tire makers advise 10 years from manufacture", None;
    AGE_UNSOLD: Handbook, false, "tire maker's page on date codes", "5 years of storage", None;
    AGE_PRACTICE: CommonPractice, true, "common practice, no source", "6 years; yearly inspection from 5", None;
    LOAD_AT_PRESSURE_P_FORMULA: Handbook, false, "an engineer's published reconstruction of the TRA P-metric load formula", "general guide only: exponent 0.5, section diameter and rim", None;
    LOAD_AT_PRESSURE_TRAILER: Stated, false, "what a load index means", "carried at the reference pressure; below it no law of ST tires was seen", None;
    SPARE_SPEED: Handbook, false, "vehicle owner manual, tire markings section", "T prefix: 80 km/h customary, one at a time", None;
    SPARE_BESIDE: CommonPractice, false, "common practice, no source", "what runs beside a spare on its axle: one structure, in pairs one size", None;
    LOAD_AT_PRESSURE_TEMPORARY: Standard, true, "UN R30 / TRA practice", "T-type temporary spare: 420 kPa", None;
    SPEED_VARIATION_COMMERCIAL: Regulation, true, "UN R54", "Annex 8, variation of load capacity with speed", None;
    SPEED_VARIATION_MOTORCYCLE: Regulation, true, "UN R75 / Directive 97/24/EC chapter 1", "Annex 8, variation of load capacity with speed, remembered with doubt", None;
    SPEED_VARIATION_MOTORCYCLE_FAST: Regulation, false, "UN R75", "§2.33.2, §2.33.3, read in GOST R 41.75-99", None;
    SPEED_VARIATION_AGRICULTURAL: Regulation, true, "UN R106", "Annex 7 part A, traction tires, remembered with doubt", None;
    SPEED_VARIATION_TRUCK: Standard, true, "TRA speed and load table for radial truck tires", "as makers' data books reprint it; above 65 mph with doubt", None;
    GAS_LAW: Derived, false, "ideal gas", "constant volume, absolute pressure and temperature", None;
    ATMOSPHERE: Standard, false, "international standard atmosphere (ISO 2533)", "troposphere, 101.325 kPa at sea level; the formula derived", None;
    HYDROPLANING: Handbook, false, "NASA TN D-2056", "9 kn for each square root of a psi, rotating tire", None;
    VERTICAL_STIFFNESS: Handbook, true, "Rhyne, Tire Science and Technology 33(3)", "vertical stiffness of belted radial tires, ± 15 %", Some(2005);
    LOADED_RADIUS_SPAN: Derived, false, "published rows of static loaded radius over half the diameter", "radial 0.909 to 0.948, diagonal 0.918 to 0.955", None;
    ROLLING_RADIUS_BY_DEFLECTION: Handbook, false, "vehicle dynamics notes on the effective radius", "radius less a third of the deflection", None;
    ROLLING_BY_LOADED_RADIUS: Handbook, false, "technical note to truck dealers", "π·(diameter − 0.8·deflection), about 1.5 %", None;
    ROLLING_GIVEN: Stated, false, "the tire maker's data, or a measurement", "rolling circumference as given", None;
    SPEEDOMETER_US: Regulation, false, "49 CFR 393.82", "within 8 km/h (5 mph) at 80 km/h (50 mph)", None;
    ENGINE_SPEED: Handbook, false, "Crolla (ed.), Automotive Engineering", "p. 296: v = 0.06·n·C/(ig·ia), with slip", Some(2009);
    FLANGE_CATALOGUE: Handbook, false, "encyclopedia quoting a catalogue; page of rim codes", "flange height of JJ and of JK, 18.0 mm", None;
    FLANGE_ROUGH: Standard, true, "TRA", "flange height of L; of truck contours an order of magnitude", None;
    RIM_TABLE_WIDTH: Standard, true, "ETRTO", "rim width to the nearest half millimetre", None;
    VALVE_HOLE: Standard, false, "TRA valve table, as a truck tire data book prints it", "valve holes of .453 and .625 in; 11.3 and 15.7 mm, +0.4 mm, from memory", None;
    VALVE_PRESSURE: Standard, false, "TRA valve table, as a truck tire data book prints it", "snap-in 65 psi; for high pressure 80 psi in the small hole, 100 psi in the large", None;
    RIM_CONTOUR: Standard, false, "JIS D 4218 (modified ISO 4000-2)", "Table 3 in an excerpt: flange, seats and well of contours B, J and K", Some(2021);
    RIM_MEASURED: Stated, false, "the rim itself", "flange, well and metal as measured", None;
    SEAT_TAPER: Standard, true, "ISO 4000-2 / ISO 4209-2", "angle of the bead seat, ± 1°; flange of rims with seats of 15°", None;
    BENDING_R124: Regulation, true, "UN R124", "rotating bending test: μ 0.9, S 2.0", None;
    BENDING_STAGES: Regulation, true, "UN R124", "rotating bending test at 75 % and 50 % of the greatest moment", None;
    BENDING_J328: Handbook, false, "SAE J328 as a test laboratory summarizes it", "cornering fatigue test: μ 0.7, S by metal and axle", Some(2021);
    BENDING_J328_EARLIER: Standard, true, "SAE J328 in an earlier edition", "cornering fatigue test: μ 0.7, S 1.6", None;
    BENDING_J267: Handbook, false, "SAE J267 as a test laboratory summarizes it", "cornering fatigue test: μ 0.7", Some(2021);
    BENDING_JWL: Standard, true, "JWL", "bending fatigue test: μ 0.7, S 1.5", None;
    BENDING_STATED: Stated, false, "the standard that the caller reads", "friction and factor as given", None;
    RADIAL_TEST: Standard, true, "radial fatigue tests of wheel standards", "F = K·W, K 2.0 to 2.5", None;
    LATERAL_IMPACT: Standard, false, "SAE J175 / ISO 7141", "striker 0.6·W + 180 kg, drop 230 mm, 13°", None;
    ROTATING_INERTIA: Derived, false, "mechanics of rotation", "rings, annuli and shells about their axis; I/r² on a rolling wheel", None;
    IMBALANCE: Derived, false, "mechanics of rotation", "U = m·e, F = m·e·ω²", None;
    CENTRING: Derived, false, "geometry of bore, ring and spigot", "half of the play", None;
}

/// Every source the crate cites.
///
/// ```
/// let from_memory = beadseat::sources().filter(|c| c.is_from_memory()).count();
/// assert!(from_memory > 0 && from_memory < beadseat::sources().count());
/// ```
pub fn sources() -> impl ExactSizeIterator<Item = Citation> {
    (0..SOURCES.len() as u8).map(Citation)
}

impl Citation {
    const fn source(self) -> &'static Source {
        &SOURCES[self.0 as usize]
    }

    /// The name of the document, as it is cited.
    pub const fn document(self) -> &'static str {
        self.source().document
    }

    /// The clause, page or row, with what was taken from it.
    pub const fn clause(self) -> &'static str {
        self.source().clause
    }

    /// The year of the document, where known.
    pub const fn year(self) -> Option<u16> {
        self.source().year
    }

    /// What kind of authority it has.
    pub const fn status(self) -> Status {
        self.source().status
    }

    /// Whether the value is remembered from the document rather than read in it.
    pub const fn is_from_memory(self) -> bool {
        self.source().from_memory
    }
}

impl core::fmt::Display for Citation {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.document())?;
        if let Some(year) = self.year() {
            write!(f, " {year}")?;
        }
        write!(f, ", {}", self.clause())?;
        if self.is_from_memory() {
            f.write_str(" (from memory)")?;
        }
        Ok(())
    }
}
