//! Dimensions that stand in tables: sizes whose designation gives no diameter, and older ones whose
//! diameter is not what the formula gives, which decides nevertheless.
//!
//! All values are from memory of the documents named.

use super::key::{SizeKey, find, sorted};
use super::structure::StructureMark;
use super::{SizeClass, Structure, TireSize};
use crate::rim::RimWidth;

/// What a table says of a size.
#[derive(Clone, Copy)]
pub(crate) struct Listing {
    /// The class of sizes that the table is for.
    pub(crate) class: SizeClass,
    pub(crate) measuring_rim: Option<RimWidth>,
    pub(crate) overall_diameter: u16,
    /// Least and greatest, where the table has limits of its own.
    pub(crate) limits: Option<(u16, u16)>,
    pub(crate) section_width: u16,
}

impl TireSize {
    /// What the annexes of UN R30, R54 and R75 say of the size, if one lists it.
    pub(crate) fn listing(&self) -> Option<Listing> {
        match self {
            // Only old passenger sizes of the 70 and 60 series are listed.
            Self::Metric(size) => {
                let old = matches!((size.class(), size.aspect_ratio()), (SizeClass::Passenger, 60 | 70));
                if old { self.in_r30() } else { None }
            }
            Self::AlphaNumeric(size) if size.class() == SizeClass::Motorcycle => {
                find(R75, self.plain_key(Structure::Diagonal)).copied()
            }
            _ => self.in_r30().or_else(|| self.in_r54()),
        }
    }

    fn in_r30(&self) -> Option<Listing> {
        find(R30, self.plain_key(self.structure())).copied()
    }

    /// Tables print one designation for both structures.
    fn in_r54(&self) -> Option<Listing> {
        let row = find(R54, self.plain_key(Structure::Radial))?;
        if self.structure() == Structure::Radial { Some(row.radial) } else { row.diagonal }
    }

    /// The key of the same size with another structure, and nothing around its letter.
    pub(in crate::tire) const fn plain_key(&self, structure: Structure) -> SizeKey {
        self.with_mark(StructureMark::plain(structure)).key()
    }

    /// The key of the same size as a diagonal, under which tables list both structures.
    pub(in crate::tire) const fn key_as_diagonal(&self) -> SizeKey {
        self.plain_key(Structure::Diagonal)
    }

    /// The same size with another structure mark; of a load letter, the diagonal.
    const fn with_mark(&self, mark: StructureMark) -> Self {
        match *self {
            Self::Metric(size) => Self::Metric(size.with_mark(mark)),
            Self::FullProfile(size) => Self::FullProfile(size.with_mark(mark)),
            Self::Numeric(size) => Self::Numeric(size.with_mark(mark)),
            Self::Flotation(size) => Self::Flotation(size.with_mark(mark)),
            Self::AlphaNumeric(size) => Self::AlphaNumeric(size.as_diagonal()),
        }
    }
}

const fn listed(text: &str, quarters: u16, overall_diameter: u16, section_width: u16) -> (SizeKey, Listing) {
    let listing = Listing {
        class: SizeClass::Passenger,
        measuring_rim: RimWidth::from_quarters(quarters),
        overall_diameter,
        limits: None,
        section_width,
    };
    (TireSize::listed(text).key(), listing)
}

/// UN R30 Annex 5, from memory. Measuring rim in quarter inches, overall diameter and section width in mm.
#[rustfmt::skip]
static R30: &[(SizeKey, Listing)] = &sorted([
    // Super Ballon
    listed("4.80-10", 14, 490, 128),
    listed("5.20-10", 14, 508, 132),
    listed("5.20-12", 14, 558, 132),
    listed("5.60-13", 16, 600, 145),
    listed("5.90-13", 16, 616, 150),
    listed("6.40-13", 18, 642, 163),
    listed("5.20-14", 14, 612, 132),
    listed("5.60-14", 16, 626, 145),
    listed("5.90-14", 16, 642, 150),
    listed("6.40-14", 18, 666, 163),
    listed("5.60-15", 16, 650, 145),
    listed("5.90-15", 16, 668, 150),
    listed("6.40-15", 18, 692, 163),
    listed("6.70-15", 18, 710, 170),
    listed("7.10-15", 20, 724, 180),
    listed("7.60-15", 22, 742, 193),
    listed("8.20-15", 24, 760, 213),
    // Low Section
    listed("5.50-12", 16, 552, 142),
    listed("6.00-12", 18, 574, 156),
    listed("7.00-13", 20, 644, 178),
    listed("7.00-14", 20, 668, 178),
    listed("7.50-14", 22, 688, 190),
    listed("8.00-14", 24, 702, 203),
    listed("6.00-15L", 18, 650, 156),
    // Super Low Section
    listed("155-13/6.15-13", 18, 582, 157),
    listed("165-13/6.45-13", 18, 600, 167),
    listed("175-13/6.95-13", 20, 610, 178),
    listed("155-14/6.15-14", 18, 608, 157),
    listed("165-14/6.45-14", 18, 626, 167),
    listed("175-14/6.95-14", 20, 638, 178),
    listed("185-14/7.35-14", 22, 654, 188),
    listed("195-14/7.75-14", 22, 670, 198),
    // Ultra Low Section
    listed("5.9-10", 16, 483, 148),
    listed("6.5-13", 18, 586, 166),
    listed("6.9-13", 18, 600, 172),
    listed("7.3-13", 20, 614, 184),
    // code designated
    listed("5.60R13", 16, 606, 145),
    listed("5.90R13", 18, 626, 155),
    listed("6.40R13", 18, 640, 170),
    listed("7.00R13", 20, 644, 178),
    listed("7.25R13", 20, 654, 184),
    listed("5.90R14", 18, 654, 155),
    listed("5.60R15", 16, 656, 145),
    listed("6.40R15", 18, 690, 170),
    listed("6.70R15", 20, 710, 180),
    listed("140R12", 16, 538, 138),
    listed("150R12", 16, 554, 150),
    listed("150R13", 16, 580, 149),
    listed("160R13", 18, 596, 158),
    listed("170R13", 20, 608, 173),
    listed("150R14", 16, 606, 149),
    listed("180R15", 20, 676, 174),
    // metric without aspect ratio (82)
    listed("125R10", 14, 459, 127),
    listed("145R10", 16, 492, 147),
    listed("125R12", 14, 510, 127),
    listed("135R12", 16, 522, 137),
    listed("145R12", 16, 542, 147),
    listed("155R12", 18, 550, 157),
    listed("125R13", 14, 536, 127),
    listed("135R13", 16, 548, 137),
    listed("145R13", 16, 566, 147),
    listed("155R13", 18, 578, 157),
    listed("165R13", 18, 596, 167),
    listed("175R13", 20, 608, 178),
    listed("185R13", 22, 624, 188),
    listed("125R14", 14, 562, 127),
    listed("135R14", 16, 574, 137),
    listed("145R14", 16, 590, 147),
    listed("155R14", 18, 604, 157),
    listed("165R14", 18, 622, 167),
    listed("175R14", 20, 634, 178),
    listed("185R14", 22, 650, 188),
    listed("195R14", 22, 666, 198),
    listed("205R14", 24, 686, 208),
    listed("215R14", 24, 700, 218),
    listed("225R14", 26, 714, 228),
    listed("125R15", 14, 588, 127),
    listed("135R15", 16, 600, 137),
    listed("145R15", 16, 616, 147),
    listed("155R15", 18, 630, 157),
    listed("165R15", 18, 646, 167),
    listed("175R15", 20, 660, 178),
    listed("185R15", 22, 674, 188),
    listed("195R15", 22, 690, 198),
    listed("205R15", 24, 710, 208),
    listed("215R15", 24, 724, 218),
    listed("225R15", 26, 738, 228),
    listed("235R15", 26, 752, 238),
    listed("175R16", 20, 686, 178),
    listed("185R16", 22, 698, 188),
    listed("205R16", 24, 736, 208),
    // 70 series (old table, not the formula)
    listed("145/70R10", 14, 462, 139),
    listed("155/70R10", 14, 474, 146),
    listed("165/70R10", 18, 494, 165),
    listed("145/70R12", 16, 512, 144),
    listed("155/70R12", 16, 524, 151),
    listed("165/70R12", 18, 544, 165),
    listed("175/70R12", 20, 552, 176),
    listed("145/70R13", 16, 538, 144),
    listed("155/70R13", 16, 550, 151),
    listed("165/70R13", 18, 568, 165),
    listed("175/70R13", 20, 580, 176),
    listed("185/70R13", 20, 598, 186),
    listed("195/70R13", 22, 608, 197),
    listed("145/70R14", 16, 564, 144),
    listed("155/70R14", 16, 576, 151),
    listed("165/70R14", 18, 592, 165),
    listed("175/70R14", 20, 606, 176),
    listed("185/70R14", 20, 624, 186),
    listed("195/70R14", 22, 636, 197),
    listed("205/70R14", 22, 652, 206),
    listed("215/70R14", 24, 665, 217),
    listed("225/70R14", 24, 677, 225),
    listed("235/70R14", 26, 694, 239),
    listed("245/70R14", 26, 705, 243),
    listed("155/70R15", 16, 602, 151),
    listed("175/70R15", 20, 632, 176),
    listed("185/70R15", 20, 648, 186),
    listed("195/70R15", 22, 656, 197),
    listed("205/70R15", 22, 669, 202),
    listed("215/70R15", 24, 682, 213),
    listed("225/70R15", 24, 696, 220),
    listed("235/70R15", 26, 712, 234),
    listed("245/70R15", 26, 720, 239),
    // 60 series (old table, not the formula)
    listed("165/60R12", 20, 504, 167),
    listed("165/60R13", 20, 530, 167),
    listed("175/60R13", 22, 536, 178),
    listed("185/60R13", 22, 548, 188),
    listed("205/60R13", 24, 574, 208),
    listed("215/60R13", 24, 586, 218),
    listed("225/60R13", 26, 594, 230),
    listed("235/60R13", 26, 608, 235),
    listed("165/60R14", 20, 554, 167),
    listed("175/60R14", 22, 562, 178),
    listed("185/60R14", 22, 574, 188),
    listed("215/60R14", 24, 610, 215),
    listed("225/60R14", 24, 620, 220),
    listed("235/60R14", 26, 630, 231),
    listed("245/60R14", 26, 642, 237),
    listed("265/60R14", 28, 670, 260),
    listed("185/60R15", 22, 600, 188),
    listed("225/60R15", 26, 652, 230),
    listed("255/60R15", 28, 688, 255),
    listed("205/60R16", 24, 654, 208),
    listed("215/60R16", 24, 662, 215),
]);

/// A size listed for both structures.
#[derive(Clone, Copy)]
struct ListedBoth {
    radial: Listing,
    diagonal: Option<Listing>,
}

/// Diameter and width radial and diagonal, 0 where only radials are listed. The text is the radial one, or where
/// tables print no R, the diagonal one.
const fn both(
    text: &str,
    quarters: u16,
    overall_diameter: (u16, u16),
    section_width: (u16, u16),
) -> (SizeKey, ListedBoth) {
    let radial = Listing {
        class: SizeClass::Truck,
        measuring_rim: RimWidth::from_quarters(quarters),
        overall_diameter: overall_diameter.0,
        limits: None,
        section_width: section_width.0,
    };
    let diagonal = if overall_diameter.1 > 0 {
        Some(Listing { overall_diameter: overall_diameter.1, section_width: section_width.1, ..radial })
    } else {
        None
    };
    (TireSize::listed(text).plain_key(Structure::Radial), ListedBoth { radial, diagonal })
}

/// UN R54 Annex 5, from memory. Measuring rim in quarter inches, then overall diameter and section width
/// in mm, each radial and diagonal.
#[rustfmt::skip]
static R54: &[(SizeKey, ListedBoth)] = &sorted([
    // I-A code, 5deg/flat base
    both("4.00R8", 10, (414, 414), (107, 107)),
    both("4.00R10", 12, (466, 466), (108, 108)),
    both("4.00R12", 12, (517, 517), (108, 108)),
    both("4.50R8", 14, (439, 439), (125, 125)),
    both("4.50R10", 14, (490, 490), (125, 125)),
    both("5.00R8", 12, (467, 467), (132, 132)),
    both("5.00R10", 14, (516, 516), (134, 134)),
    both("6.00R9", 16, (540, 540), (160, 160)),
    both("6.00R16C", 18, (728, 730), (170, 170)),
    both("6.50R16C", 18, (742, 748), (176, 176)),
    both("7.00R12", 20, (672, 672), (192, 192)),
    both("7.00R14C", 20, (650, 668), (180, 182)),
    both("7.00R15", 22, (746, 752), (197, 198)),
    both("7.00R16C", 22, (778, 778), (198, 198)),
    both("7.00R20", 22, (892, 898), (198, 198)),
    both("7.50R15", 24, (772, 772), (212, 212)),
    both("7.50R16C", 24, (802, 806), (210, 210)),
    both("7.50R17", 24, (852, 852), (210, 210)),
    both("7.50R20", 24, (928, 928), (210, 213)),
    both("8.25R15", 26, (836, 836), (230, 234)),
    both("8.25R16", 26, (860, 860), (230, 234)),
    both("8.25R17", 26, (886, 895), (230, 234)),
    both("8.25R20", 26, (962, 970), (230, 234)),
    both("9.00R20", 28, (1018, 1012), (258, 256)),
    both("10.00R15", 30, (918, 918), (275, 275)),
    both("10.00R20", 30, (1052, 1050), (275, 275)),
    both("10.00R22", 30, (1102, 1102), (275, 275)),
    both("11.00R20", 32, (1082, 1080), (286, 291)),
    both("11.00R22", 32, (1132, 1130), (286, 291)),
    both("11.00R24", 32, (1182, 1180), (286, 291)),
    both("12.00R20", 34, (1122, 1120), (313, 312)),
    both("12.00R24", 34, (1226, 1220), (313, 312)),
    both("13.00R20", 36, (1176, 1170), (336, 342)),
    both("14.00R20", 40, (1238, 1238), (370, 375)),
    both("14.00R24", 40, (1340, 1340), (370, 375)),
    // I-B code, 15deg
    both("7R17.5", 21, (752, 0), (185, 0)),
    both("8R17.5", 24, (784, 0), (208, 0)),
    both("8.5R17.5", 24, (802, 0), (215, 0)),
    both("9R17.5", 27, (820, 0), (230, 0)),
    both("9.5R17.5", 27, (842, 0), (240, 0)),
    both("10R17.5", 30, (858, 0), (254, 0)),
    both("9R22.5", 27, (974, 0), (230, 0)),
    both("10R22.5", 30, (1020, 0), (254, 0)),
    both("11R22.5", 33, (1050, 0), (279, 0)),
    both("11R24.5", 33, (1100, 0), (279, 0)),
    both("12R22.5", 36, (1084, 0), (300, 0)),
    both("13R22.5", 39, (1124, 0), (320, 0)),
    both("15R19.5", 47, (998, 0), (387, 0)),
    both("15R22.5", 47, (1074, 0), (387, 0)),
    both("16.5R22.5", 52, (1122, 0), (425, 0)),
    both("18R19.5", 56, (1080, 0), (457, 0)),
    both("18R22.5", 56, (1158, 0), (457, 0)),
    both("10/70R22.5", 30, (928, 0), (254, 0)),
    both("11/70R22.5", 33, (962, 0), (279, 0)),
    both("12/70R22.5", 36, (999, 0), (305, 0)),
    both("13/70R22.5", 39, (1033, 0), (330, 0)),
    // I-C light commercial metric w/o aspect ratio
    both("145R10C", 16, (492, 0), (147, 0)),
    both("145R12C", 16, (542, 0), (147, 0)),
    both("145R13C", 16, (566, 0), (147, 0)),
    both("155R12C", 18, (550, 0), (157, 0)),
    both("155R13C", 18, (578, 0), (157, 0)),
    both("165R13C", 18, (596, 0), (167, 0)),
    both("165R14C", 18, (622, 0), (167, 0)),
    both("165R15C", 18, (646, 0), (167, 0)),
    both("175R13C", 20, (608, 0), (178, 0)),
    both("175R14C", 20, (634, 0), (178, 0)),
    both("175R16C", 20, (684, 0), (178, 0)),
    both("185R14C", 22, (650, 0), (188, 0)),
    both("185R15C", 22, (674, 0), (188, 0)),
    both("195R14C", 22, (666, 0), (198, 0)),
    both("195R15C", 22, (690, 0), (198, 0)),
    both("205R14C", 24, (686, 0), (208, 0)),
    both("205R16C", 24, (736, 0), (208, 0)),
    both("215R14C", 24, (700, 0), (218, 0)),
    both("215R15C", 24, (724, 0), (218, 0)),
    both("215R16C", 24, (750, 0), (218, 0)),
    both("245R16C", 28, (798, 0), (248, 0)),
    // II-C high flotation (radial)
    both("24x7.50R13LT", 24, (597, 0), (191, 0)),
    both("27x8.50R14LT", 28, (674, 0), (218, 0)),
    both("28x8.50R15LT", 28, (699, 0), (218, 0)),
    both("29x9.50R15LT", 30, (724, 0), (240, 0)),
    both("30x9.50R15LT", 30, (750, 0), (240, 0)),
    both("31x10.50R15LT", 34, (775, 0), (268, 0)),
    both("31x11.50R15LT", 36, (775, 0), (290, 0)),
    both("32x11.50R15LT", 36, (801, 0), (290, 0)),
    both("33x12.50R15LT", 40, (826, 0), (318, 0)),
    both("35x12.50R15LT", 40, (877, 0), (318, 0)),
    both("37x12.50R15LT", 40, (928, 0), (318, 0)),
    both("37x14.50R15LT", 48, (928, 0), (372, 0)),
    both("31x10.50R16.5LT", 33, (775, 0), (266, 0)),
    both("33x12.50R16.5LT", 39, (826, 0), (315, 0)),
    both("37x12.50R16.5LT", 39, (928, 0), (315, 0)),
    both("37x14.50R16.5LT", 45, (928, 0), (365, 0)),
    // II-A/B US light truck code
    both("6.00-16LT", 18, (732, 743), (173, 173)),
    both("6.50-16LT", 18, (755, 764), (182, 182)),
    both("6.70-15LT", 20, (722, 733), (191, 191)),
    both("7.00-15LT", 22, (752, 763), (202, 202)),
    both("7.00-16LT", 22, (778, 788), (202, 202)),
    both("7.50-16LT", 24, (808, 819), (220, 220)),
    both("8.25-16LT", 26, (859, 869), (241, 241)),
    both("9.00-16LT", 26, (890, 903), (257, 257)),
    both("G78-15LT", 24, (711, 720), (212, 212)),
    both("H78-15LT", 24, (727, 737), (222, 222)),
    both("L78-15LT", 26, (749, 760), (236, 236)),
    both("8.00-16.5LT", 24, (720, 730), (203, 203)),
    both("8.75-16.5LT", 27, (748, 759), (222, 222)),
    both("9.50-16.5LT", 27, (776, 787), (241, 241)),
    both("10-16.5LT", 33, (762, 773), (264, 264)),
    both("12-16.5LT", 39, (818, 831), (307, 307)),
]);

/// Least, design and greatest diameter, and width. Motorcycle rims have widths of their own, which are not kept.
const fn motorcycle(
    text: &str,
    (least, overall_diameter, most): (u16, u16, u16),
    section_width: u16,
) -> (SizeKey, Listing) {
    let listing = Listing {
        class: SizeClass::Motorcycle,
        measuring_rim: None,
        overall_diameter,
        limits: Some((least, most)),
        section_width,
    };
    (TireSize::listed(text).key(), listing)
}

/// UN R75 Annex 5, load-letter sizes, from memory and with doubt.
#[rustfmt::skip]
static R75: &[(SizeKey, Listing)] = &sorted([
    motorcycle("MH90-21", (682, 686, 700), 80),
    motorcycle("MJ90-18", (620, 625, 640), 89),
    motorcycle("ML90-18", (629, 634, 650), 93),
    motorcycle("ML90-19", (654, 659, 675), 93),
    motorcycle("MM90-19", (663, 669, 685), 95),
    motorcycle("MN90-18", (656, 662, 681), 104),
    motorcycle("MP90-18", (667, 673, 692), 108),
    motorcycle("MR90-18", (680, 687, 708), 114),
    motorcycle("MT90-16", (642, 650, 672), 130),
    motorcycle("MT90-17", (668, 675, 697), 130),
    motorcycle("MU90-16", (654, 663, 687), 142),
    motorcycle("MP85-18", (654, 660, 679), 108),
    motorcycle("MR85-16", (617, 623, 643), 114),
    motorcycle("MS85-18", (675, 682, 702), 121),
    motorcycle("MT85-18", (681, 688, 709), 130),
    motorcycle("MU85-16", (650, 658, 681), 142),
]);
