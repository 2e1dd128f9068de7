//! What every reader of a report must know, and when.

use super::case::Case;
use crate::record::words;
use crate::units::Pressure;
use crate::vehicle::Fastening;
use crate::wheel::Valve;

words! {
    /// Something every reader of a report must know, where it applies.
    ///
    /// ```
    /// use beadseat::fitment::Caution;
    /// assert!(Caution::Seating.text().contains("275 kPa"));
    /// ```
    Caution {
        /// A tire must never be mounted on a rim with other bead seats.
        NeverMount = "never_mount",
        /// What the makers state overrides every estimate here.
        Placard = "placard",
        /// Local law and inspection decide what may be driven.
        LocalLaw = "local_law",
        /// What to heed when a tire is mounted and seated.
        Seating = "seating",
        /// Fasteners lose clamp load and are tightened again.
        Retorque = "retorque",
        /// All pressures are cold.
        ColdPressure = "cold_pressure",
        /// Spacers and changed inset.
        Bearings = "bearings",
        /// An inset follows from a backspacing, with a flange that is assumed.
        InsetFromBackspacing = "inset_from_backspacing",
        /// What a spacer takes from the thread.
        SpacerThread = "spacer_thread",
        /// Bolts that may be too long.
        Bottoming = "bottoming",
        /// Two joints instead of one.
        Adaptor = "adaptor",
        /// Rims of several pieces are dangerous to work on.
        MultiPiece = "multi_piece",
        /// Static clearances do not show lock and jounce.
        StaticOnly = "static_only",
        /// Clearance at lock and jounce is that of a description.
        AsDescribed = "as_described",
        /// No camber was given: loads and pressures hold for a small one.
        CamberAssumed = "camber_assumed",
        /// A trailer's nose weight belongs in the axle load.
        Towing = "towing",
        /// The treads differ too much in depth, on one axle or over all-wheel drive.
        UnevenTread = "uneven_tread",
        /// How a temporary spare may be used.
        TemporarySpare = "temporary_spare",
        /// A pressure that not every valve bears.
        Valve = "valve",
    }
}

impl Caution {
    /// The whole sentence, as a report prints it.
    pub const fn text(self) -> &'static str {
        match self {
            Self::NeverMount => {
                "Nominal rim diameters and bead seats must match exactly. Forcing a tire onto another rim can kill."
            }
            Self::Placard => {
                "The vehicle maker's placard, the tire maker's data and the wheel maker's certificate override every estimate here."
            }
            Self::LocalLaw => "Local law and inspection decide what may be driven on the road.",
            Self::Seating => {
                "Mounting is work for trained people: stand clear while beads seat, and never exceed the seating pressure \
                 stated for the tire (common practice 275 kPa)."
            }
            Self::Retorque => {
                "Tighten in star order to the maker's torque, the wheel unloaded for the first stages, and check again \
                 after 50 to 100 km."
            }
            Self::ColdPressure => "All pressures are cold; never let air out of a hot tire.",
            Self::Bearings => {
                "Spacers and a changed inset load bearings, studs and steering differently from what was built."
            }
            Self::InsetFromBackspacing => {
                "An inset here follows from a backspacing: less half the width of the rim, and less a flange of 12.7 mm (half an \
                 inch), which is assumed (common practice; by its contour 10 to 13 mm). What rests on it is marginal at best: \
                 read the inset behind the spokes, or measure the rim over its edges."
            }
            Self::SpacerThread => {
                "A spacer takes thread engagement away: count the turns by hand, on every fastener, before tightening."
            }
            Self::Bottoming => {
                "A bolt that is too long bottoms in the hub, or touches what turns behind it: screw it in by hand without the wheel and measure."
            }
            Self::Adaptor => {
                "An adaptor has two joints: its own fasteners must lie below its face, and both are tightened and checked again."
            }
            Self::MultiPiece => {
                "Rims of several pieces are for trained people with a restraint only (29 CFR 1910.177)."
            }
            Self::StaticOnly => {
                "Where no nearest approach is given, clearances are static, at ride height and straight ahead: turn to full lock and \
                 compress before driving."
            }
            Self::AsDescribed => {
                "The nearest approach is to what was described, and the tire's shape is assumed: turn to full lock and compress \
                 before driving, and look."
            }
            Self::CamberAssumed => "No camber was given: load and pressure hold for camber up to 2 degrees.",
            Self::UnevenTread => {
                "Treads differ by more than 2/32 in, on one axle or with all-wheel drive on all four: the vehicle's manual says \
                 how much it bears, and the deeper pair belongs on the rear axle."
            }
            Self::TemporarySpare => {
                "A temporary spare (T) is for one wheel at a time, at most 80 km/h unless it says less, and no further than \
                 to a repair: the vehicle's manual and the marks on the tire rule."
            }
            Self::Valve => {
                "A pressure above 450 kPa (65 psi) is more than a snap-in valve bears: see what valves are in the wheels."
            }
            Self::Towing => "Towing: the trailer's nose weight belongs in the axle load.",
        }
    }
}

/// What an axle's setup calls for, of which so many ends were swept.
pub(super) fn cautions(case: &Case<'_>, swept: usize, mut give: impl FnMut(Caution)) {
    let Some(proposed) = case.proposed else { return };
    if proposed.tire().size().rim_diameter() != proposed.wheel().size().diameter() {
        give(Caution::NeverMount);
    }
    if proposed.wheel().size().is_multi_piece() {
        give(Caution::MultiPiece);
    }
    if case.is_inset_assumed {
        give(Caution::InsetFromBackspacing);
    }
    let moved = case.original.is_some_and(|original| original.centres != proposed.centres);
    let spaced = proposed.hub_spacing().value > 0.0;
    if moved || spaced {
        give(Caution::Bearings);
    }
    if spaced {
        give(Caution::SpacerThread);
    }
    let bolted = case.axle.hub().and_then(|hub| hub.fastening()) == Some(Fastening::Bolt);
    if bolted && (spaced || proposed.fasteners().is_some()) {
        give(Caution::Bottoming);
    }
    if proposed.adaptor().is_some() {
        give(Caution::Adaptor);
    }
    if case.axle.camber().is_none() && proposed.is_passenger {
        give(Caution::CamberAssumed);
    }
    let highest = proposed.pressure().into_iter().chain(proposed.pressure_full_load()).reduce(Pressure::max);
    let of_snap_in = Valve::SnapIn.max_pressure();
    if proposed.valve().is_none() && highest.zip(of_snap_in).is_some_and(|(highest, most)| highest > most) {
        give(Caution::Valve);
    }
    if swept > 0 {
        give(Caution::AsDescribed);
    }
    if swept < 2 && case.axle.space().is_some() {
        give(Caution::StaticOnly);
    }
}
