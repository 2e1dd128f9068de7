//! The limits of the named sets, a row a limit.

use crate::Citation;
use crate::fitment::field_of_law::FieldOfLaw;
use crate::record::words;

words! {
    /// A named set of limits.
    ///
    /// The default set holds physics, what the designations mean, the makers' data and common practice;
    /// the others add the rules of one jurisdiction, which replace common practice where they speak of
    /// the same thing. No set mixes the law of two.
    ///
    /// ```
    /// assert!(beadseat::fitment::LimitSet::ALL.iter().any(|s| s.name() == "south_australia"));
    /// ```
    LimitSet {
        /// The default set, without the rules of a jurisdiction.
        Default = "default",
        /// The load reserve of 49 CFR 571.110 is law, and the depths of tread of 49 CFR 570.9 and 393.75 are.
        UnitedStates = "united_states",
        /// The towing rule of EU 458/2011 for rear tires, the depth of tread of passenger cars, and a guard
        /// that covers the tire.
        EuropeanUnion = "european_union",
        /// What a Belgian inspection body asks, as it answers questions on tires: track +2 %, diameter −2 to +1.5 %.
        BelgianInspection = "belgian_inspection",
        /// Examination practice in Germany, as quoted by a test house: track +2 %. (Off-road vehicles
        /// built on a frame are quoted with +4 %: set it as your own limit.)
        GermanExamination = "german_examination",
        /// South Australia: track +26 mm; a guard must cover the tire.
        SouthAustralia = "south_australia",
        /// VSB 14 of Australia: track +25 mm; diameter of passenger cars +15 and −26 mm; a guard must cover
        /// the tire.
        Vsb14 = "vsb_14",
        /// Inspection manual of British Columbia, as quoted: 25 mm to anything at lock and jounce.
        BritishColumbia = "british_columbia",
        /// VSB 14 for off-road vehicles: track +25 mm, diameter +50 mm; a guard must cover the tire.
        Vsb14OffRoad = "vsb_14_off_road",
    }
}

/// What a limit is of.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Of {
    /// Largest growth of track, % of the original.
    TrackShare,
    /// Largest growth of track, mm.
    Track,
    /// Largest growth of overall diameter, % of the original.
    DiameterGrowthShare,
    /// Largest loss of overall diameter, % of the original.
    DiameterLossShare,
    /// Largest growth of overall diameter, mm.
    DiameterGrowth,
    /// Largest loss of overall diameter, mm.
    DiameterLoss,
    /// Least static clearance, mm.
    Clearance,
    /// Largest share of the capacity at the placard pressure for the normal load, %.
    LoadReserve,
    /// Largest change of the ratio of front and rear circumference with all-wheel drive, %.
    RatioAllWheelDrive,
    /// The same with anti-lock brakes or stability control, %.
    RatioStability,
    /// Most play between bore and spigot, mm.
    CentringPlay,
    /// Least height of spigot in the bore, mm.
    SpigotEngagement,
    /// Least clearance over all steer and travel, mm.
    SweptClearance,
    /// What is taken off that clearance for movement under load, mm.
    DynamicAllowance,
    /// Least clearance between wheel and brake, mm.
    BrakeClearance,
}

impl Of {
    /// The field of law that a limit of it is in, if it is in one.
    const fn field(self) -> Option<FieldOfLaw> {
        match self {
            Self::TrackShare | Self::Track => Some(FieldOfLaw::Track),
            Self::DiameterGrowthShare
            | Self::DiameterLossShare
            | Self::DiameterGrowth
            | Self::DiameterLoss => Some(FieldOfLaw::OverallDiameter),
            Self::LoadReserve => Some(FieldOfLaw::LoadReserve),
            Self::Clearance | Self::SweptClearance | Self::DynamicAllowance => {
                Some(FieldOfLaw::SweptClearance)
            }
            Self::RatioAllWheelDrive
            | Self::RatioStability
            | Self::CentringPlay
            | Self::SpigotEngagement
            | Self::BrakeClearance => None,
        }
    }
}

/// A limit of one set: its value and owner, and whether it is law there.
#[derive(Clone, Copy)]
pub(super) struct Row {
    of: Of,
    set: LimitSet,
    /// In the unit of what it is of; nothing where the set takes back what the default set has.
    pub(super) value: Option<f64>,
    pub(super) citation: Citation,
    pub(super) is_law: bool,
}

const fn practice(of: Of, value: f64, citation: Citation) -> Row {
    Row { of, set: LimitSet::Default, value: Some(value), citation, is_law: false }
}

const fn rule(of: Of, set: LimitSet, value: f64, citation: Citation) -> Row {
    Row { of, set, value: Some(value), citation, is_law: false }
}

const fn law(of: Of, set: LimitSet, value: f64, citation: Citation) -> Row {
    Row { is_law: true, ..rule(of, set, value, citation) }
}

/// A length stands for the share of the default set.
const fn no_share(of: Of, set: LimitSet, citation: Citation) -> Row {
    Row { of, set, value: None, citation, is_law: true }
}

use Citation as C;
use LimitSet as S;

/// What a set does not have, it has from the default set.
#[rustfmt::skip]
const ROWS: &[Row] = &[
    practice(Of::TrackShare,          2.0,  C::TRACK_GROWTH),
    practice(Of::DiameterGrowthShare, 3.0,  C::DIAMETER_CHANGE),
    practice(Of::DiameterLossShare,   3.0,  C::DIAMETER_CHANGE),
    practice(Of::Clearance,           6.35, C::CLEARANCE),
    practice(Of::LoadReserve,        94.0,  C::LOAD_RESERVE_PRACTICE),
    practice(Of::RatioAllWheelDrive,  0.5,  C::CIRCUMFERENCE_RATIO),
    practice(Of::RatioStability,      1.0,  C::CIRCUMFERENCE_RATIO),
    practice(Of::CentringPlay,        0.2,  C::HUB_CENTRIC),
    practice(Of::SpigotEngagement,    3.0,  C::SPIGOT_ENGAGEMENT),
    practice(Of::SweptClearance,      6.35, C::SWEPT_CLEARANCE),
    practice(Of::DynamicAllowance,    5.0,  C::SWEPT_CLEARANCE),
    practice(Of::BrakeClearance,      6.35, C::BRAKE_CLEARANCE),

    law     (Of::LoadReserve,         S::UnitedStates,      94.0, C::LOAD_RESERVE),

    rule    (Of::TrackShare,          S::GermanExamination,  2.0, C::TRACK_GROWTH_GERMAN),

    rule    (Of::TrackShare,          S::BelgianInspection,  2.0, C::TRACK_GROWTH_BELGIAN),
    rule    (Of::DiameterGrowthShare, S::BelgianInspection,  1.5, C::DIAMETER_BELGIAN),
    rule    (Of::DiameterLossShare,   S::BelgianInspection,  2.0, C::DIAMETER_BELGIAN),

    no_share(Of::TrackShare,          S::SouthAustralia,          C::TRACK_GROWTH_SA),
    law     (Of::Track,               S::SouthAustralia,    26.0, C::TRACK_GROWTH_SA),

    no_share(Of::TrackShare,          S::Vsb14,                   C::TRACK_GROWTH_VSB14),
    law     (Of::Track,               S::Vsb14,             25.0, C::TRACK_GROWTH_VSB14),
    law     (Of::DiameterGrowth,      S::Vsb14,             15.0, C::DIAMETER_VSB14),
    law     (Of::DiameterLoss,        S::Vsb14,             26.0, C::DIAMETER_VSB14_LOSS),

    no_share(Of::TrackShare,          S::Vsb14OffRoad,            C::TRACK_GROWTH_VSB14),
    law     (Of::Track,               S::Vsb14OffRoad,      25.0, C::TRACK_GROWTH_VSB14),
    law     (Of::DiameterGrowth,      S::Vsb14OffRoad,      50.0, C::DIAMETER_VSB14_OFF_ROAD),

    // Measured on the vehicle as it stands, so that nothing is taken off it.
    rule    (Of::SweptClearance,      S::BritishColumbia,   25.0, C::SWEPT_CLEARANCE_BC),
    rule    (Of::DynamicAllowance,    S::BritishColumbia,    0.0, C::SWEPT_CLEARANCE_BC),
];

/// The limit of a set, its own or that of the default set.
pub(super) fn row(of: Of, set: LimitSet) -> Option<Row> {
    let in_set = |set| ROWS.iter().find(move |row| row.of == of && row.set == set).copied();
    in_set(set).or_else(|| in_set(LimitSet::Default)).filter(|row| row.value.is_some())
}

/// Whether a set has a limit of its own in a field of law, not one of the default set.
pub(in crate::fitment) fn has_own_row(set: LimitSet, field: FieldOfLaw) -> bool {
    let is_own = |row: &Row| row.set == set && row.value.is_some() && row.of.field() == Some(field);
    set != LimitSet::Default && ROWS.iter().any(is_own)
}

impl LimitSet {
    /// Whose law it is that a guard must cover the tire, if it is one.
    pub(in crate::fitment) const fn cover_law(self) -> Option<Citation> {
        match self {
            Self::EuropeanUnion => Some(Citation::WHEEL_GUARD_EU),
            Self::Vsb14 | Self::Vsb14OffRoad | Self::SouthAustralia => Some(Citation::WHEEL_GUARD_AU),
            _ => None,
        }
    }
}

/// What every set has, because the default set does.
const OF_EVERY_SET: [Of; 10] = [
    Of::DiameterGrowthShare,
    Of::DiameterLossShare,
    Of::Clearance,
    Of::LoadReserve,
    Of::RatioAllWheelDrive,
    Of::RatioStability,
    Of::CentringPlay,
    Of::SpigotEngagement,
    Of::SweptClearance,
    Of::BrakeClearance,
];

const _: () = {
    let mut n = 0;
    while n < OF_EVERY_SET.len() {
        let (mut at, mut found) = (0, false);
        while at < ROWS.len() {
            let row = &ROWS[at];
            found |= row.of as u8 == OF_EVERY_SET[n] as u8 && matches!(row.set, LimitSet::Default);
            at += 1;
        }
        assert!(found, "the default set lacks a limit that every set has");
        n += 1;
    }
};
