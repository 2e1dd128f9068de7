//! Tire size designations.

mod alpha_numeric;
pub(super) mod annex;
mod class;
mod flotation;
mod full_profile;
mod inch;
mod key;
mod metric;
mod numeric;
mod structure;

pub(super) use class::{AtSpeed, ClassRules, LetterPressures, RimShares, Rims, by_aspect};
pub(super) use key::{SizeKey, find, sorted};

pub use alpha_numeric::AlphaNumeric;
pub use class::SizeClass;
pub use flotation::Flotation;
pub use full_profile::FullProfile;
pub use metric::Metric;
pub use numeric::Numeric;
pub use structure::{SizeSpeedLetter, Structure};

use core::cmp::Ordering;

use crate::rim::RimDiameter;
use crate::text::{ParseError, Scanner, Text, designation, tri};
use crate::tire::LoadVersion;
use crate::units::Length;

/// A tire size, of any family.
///
/// # Syntax
/// Nothing may follow the size: a text with a service description is a [`Tire`](crate::tire::Tire). The form of
/// the text says its family, and no text has two forms:
///
/// | family | form | examples | dimensions from | status |
/// |---|---|---|---|---|
/// | [`Metric`], passenger | width/aspect structure rim | `205/55R16`, `195/65-15`, `205/55RF16` | `d + 2H`, UN R30; the limits hold the 70 and 60 series of UN R30 Annex 5 too | from memory |
/// | [`Metric`], millimetric rim | the same, rim code of 300 and more | `220/55R390` | `d + 2H` | from memory |
/// | [`Metric`], `P`, `LT`, `HL`, `T`, `ST` | prefix | `P215/65R15`, `LT245/75R17`, `HL245/40R19`, `T125/70D16`, `ST205/75R15` | `d + 2H` | from memory |
/// | [`Metric`], `C`, `CP` | suffix | `195/70R15C`, `225/75R16CP` | `d + 2H`, UN R54 | from memory |
/// | [`Metric`], truck | half-inch rim, `HC` | `295/80R22.5`, `385/65R22.5`, `225/70R17.5HC` | `d + 2H`, UN R54 | from memory |
/// | [`Metric`], motorcycle | `M/C`, or no mark, not radial, width in 0 to 190 | `120/70ZR17 M/C`, `100/90-19` | `d + 2H`; limits not known | from memory |
/// | [`Metric`], agricultural | no mark, whole-inch rim, width in 0 from 240 | `710/55-30`, `340/65R42` | not known | |
/// | [`Metric`], `IF`, `VF` | prefix | `IF710/70R42`, `VF480/80R50` | not known | |
/// | [`Metric`], implement, earthmover, garden | by rim code and width | `400/60-15.5`, `750/65R25`, `145/70-6` | not known | |
/// | [`FullProfile`] | width structure rim | `155R13`, `185R14C`, `155-13/6.15-13` | UN R30 and R54 Annex 5 | from memory |
/// | [`Numeric`] | inches structure rim | `6.00-16`, `7.50R16C`, `11R22.5`, `4.00-18 M/C` | UN R30 and R54 Annex 5 | from memory |
/// | [`Numeric`], agricultural | one decimal, even rim code from 24 | `9.5-24`, `20.8-38` | not known | |
/// | [`Numeric`], implement | one decimal and aspect ratio, `L` behind the width | `10.0/80-12`, `12.5L-15` | not known | |
/// | [`Numeric`], earthmover | rim code 25 or of earthmovers | `26.5R25`, `24.00R35` | not known | |
/// | [`Numeric`], garden | rim code 4 to 7, second width | `5.00-6`, `4.80/4.00-8` | not known | |
/// | [`Flotation`], `LT` | overall × width | `31x10.50R15LT` | UN R54 Annex 5, else the stated diameter | from memory |
/// | [`Flotation`] | the same without `LT` | `18x9.5-8`, `25x8-12`, `13x5.00-6`, `AT25x8-12` | the stated diameter; limits not known | the designation |
/// | [`AlphaNumeric`] | letter aspect rim | `ER78-14`, `G78-15LT`, `MT90B16` | UN R54 and R75 Annex 5 | from memory, R75 with doubt |
///
/// Two rules decide where one could err: a number below 50 in front is inches, one from 50 is millimetres;
/// a size with `x` in it is overall diameter × width.
///
/// # Order
/// `Ord` is by rim diameter code, with those in millimetres last, then by nominal width, whatever unit it is
/// molded in; sizes without one come first. Then by family in the order of the variants, and inside a family by
/// what is left: aspect ratio or overall diameter, structure, and the marks around the size.
///
/// ```
/// use beadseat::tire::{SizeClass, TireSize};
/// let size: TireSize = "lt245/75 r 17".parse()?;
/// assert_eq!(size.to_string(), "LT245/75R17");
/// assert!(matches!(size, TireSize::Metric(_)));
/// assert_eq!(size.class(), SizeClass::LightTruck);
/// assert!("205/55R16 91V".parse::<TireSize>().is_err());
/// // 10.50 in are 266.7 mm.
/// let mut on_15 = ["275/60R15", "31x10.50R15LT", "265/70R15", "ER78-15"].map(TireSize::parse);
/// on_15.sort_by_key(|size| size.ok());
/// assert_eq!(on_15, ["ER78-15", "265/70R15", "31x10.50R15LT", "275/60R15"].map(TireSize::parse));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum TireSize {
    /// Section width and aspect ratio, in millimetres and percent.
    Metric(Metric),
    /// Section width in millimetres alone.
    FullProfile(FullProfile),
    /// Section width in inches.
    Numeric(Numeric),
    /// Overall diameter and section width in inches.
    Flotation(Flotation),
    /// A load letter in place of a width, as in G78-15.
    AlphaNumeric(AlphaNumeric),
}

/// Calls a method that every family has.
macro_rules! of_family {
    ($self:ident, $size:ident => $value:expr) => {
        match $self {
            TireSize::Metric($size) => $value,
            TireSize::FullProfile($size) => $value,
            TireSize::Numeric($size) => $value,
            TireSize::Flotation($size) => $value,
            TireSize::AlphaNumeric($size) => $value,
        }
    };
}

/// Which family a text has the form of.
enum Form {
    Metric,
    FullProfile,
    Numeric,
    Flotation,
    AlphaNumeric,
}

impl TireSize {
    #[inline(always)]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let form = Self::form(*scanner);
        if matches!(form, Form::Metric) {
            return Ok(Self::Metric(tri!(Metric::scan(scanner))));
        }
        // A copy goes there by reference, so that the scanner itself need not be in memory.
        let mut rest = *scanner;
        let size = Self::scan_unlike_metric(form, &mut rest);
        *scanner = rest;
        size
    }

    #[inline(never)]
    const fn scan_unlike_metric(form: Form, scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        Ok(match form {
            Form::Metric => Self::Metric(tri!(Metric::scan(scanner))),
            Form::FullProfile => Self::FullProfile(tri!(FullProfile::scan(scanner))),
            Form::Numeric => Self::Numeric(tri!(Numeric::scan(scanner))),
            Form::Flotation => Self::Flotation(tri!(Flotation::scan(scanner))),
            Form::AlphaNumeric => Self::AlphaNumeric(tri!(AlphaNumeric::scan(scanner))),
        })
    }

    #[inline(always)]
    const fn form(mut ahead: Scanner<'_>) -> Form {
        if !ahead.at_digit() {
            let prefix = match ahead.peek(0) {
                b'L' => ahead.eat_str("LT"),
                b'H' => ahead.eat_str("HL"),
                b'S' => ahead.eat_str("ST"),
                b'I' => ahead.eat_str("IF"),
                b'V' => ahead.eat_str("VF"),
                b'A' => ahead.eat_str("AT"),
                _ => false,
            };
            if !prefix && matches!(ahead.peek(0), b'A'..=b'H' | b'J' | b'L'..=b'N') {
                return Form::AlphaNumeric;
            }
            if !prefix && !ahead.eat(b'P') {
                ahead.eat(b'T');
            }
            ahead.skip_space();
        }
        let start = ahead.at();
        // Widths from 50 on are millimetres.
        let two_digits_mm = ahead.peek(0) >= b'5';
        ahead.skip_digits();
        let digits = ahead.at() - start;
        if digits > 2 && ahead.is_at(b'/') {
            return Form::Metric;
        }
        let decimal = ahead.is_at(b'.') || ahead.is_at(b',');
        if decimal {
            ahead.step(1);
            ahead.skip_digits();
        }
        let spaced = ahead.skip_space();
        if digits > 0 && ahead.eat_times() {
            return Form::Flotation;
        }
        match digits {
            0 => Form::Metric,
            _ if decimal => Form::Numeric,
            2 if two_digits_mm && (ahead.is_at(b'/') || (spaced && ahead.at_digit())) => Form::Metric,
            1 | 2 => Form::Numeric,
            _ if ahead.is_at(b'/') || (spaced && ahead.at_digit()) => Form::Metric,
            _ if ahead.at_end() => Form::Metric,
            _ => Form::FullProfile,
        }
    }

    pub(crate) fn write(&self, text: &mut Text) {
        of_family!(self, size => size.write(text));
    }

    /// The same size for high loads, if it is one that can be.
    pub(crate) const fn with_high_load(self) -> Option<Self> {
        match self {
            Self::Metric(size) => match size.with_high_load() {
                Some(size) => Some(Self::Metric(size)),
                None => None,
            },
            _ => None,
        }
    }

    /// The same size as the mark `M/C` or `LT` behind a service description says, if it can be so and the mark is here.
    pub(crate) const fn with_class_behind(self, scanner: &mut Scanner<'_>) -> Option<Self> {
        if scanner.eat_alone("M/C") {
            return match self {
                _ if matches!(self.marked_class(), SizeClass::Motorcycle) => Some(self),
                Self::Numeric(size) => match size.with_motorcycle() {
                    Some(size) => Some(Self::Numeric(size)),
                    None => None,
                },
                _ => None,
            };
        }
        if !scanner.eat_alone("LT") {
            return None;
        }
        match self {
            Self::FullProfile(size) => match size.with_light_truck() {
                Some(size) => Some(Self::FullProfile(size)),
                None => None,
            },
            Self::Numeric(size) => match size.with_light_truck() {
                Some(size) => Some(Self::Numeric(size)),
                None => None,
            },
            Self::Flotation(size) => match size.with_light_truck() {
                Some(size) => Some(Self::Flotation(size)),
                None => None,
            },
            Self::Metric(_) | Self::AlphaNumeric(_) => None,
        }
    }

    /// Whether stars and codes of earthmovers may stand beside the size.
    pub(crate) const fn has_earthmover_marks(&self) -> bool {
        match self {
            Self::Numeric(size) => size.can_be_earthmover(),
            _ => self.marked_class().rules().has_earthmover_marks,
        }
    }

    /// The family the designation is written in: the class of a metric size, else the form and the class.
    ///
    /// ```
    /// use beadseat::tire::TireSize;
    /// assert_eq!(TireSize::parse("195/70R15C")?.family(), "commercial");
    /// assert_eq!(TireSize::parse("31x10.50R15LT")?.family(), "flotation");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn family(&self) -> &'static str {
        match self {
            Self::Metric(size) => size.family(),
            Self::FullProfile(_) => "no_aspect",
            Self::Numeric(size) => size.class().rules().numeric_family,
            Self::Flotation(size) => size.class().rules().flotation_family,
            Self::AlphaNumeric(size) => size.class().rules().alpha_numeric_family,
        }
    }

    /// Which rules the size follows. A numeric size that does not say it itself has the class of the table
    /// that lists it, UN R30 for cars or UN R54 for commercial vehicles.
    ///
    /// ```
    /// use beadseat::tire::{SizeClass, TireSize};
    /// assert_eq!(TireSize::parse("5.60-15")?.class(), SizeClass::Passenger);
    /// assert_eq!(TireSize::parse("8.25R20")?.class(), SizeClass::Truck);
    /// assert_eq!(TireSize::parse("9.99-20")?.class(), SizeClass::Unstated);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn class(&self) -> SizeClass {
        match self.marked_class() {
            SizeClass::Unstated => self.listing().map_or(SizeClass::Unstated, |listing| listing.class),
            class => class,
        }
    }

    /// The rules of its class.
    pub(crate) fn rules(&self) -> &'static ClassRules {
        self.class().rules()
    }

    /// The class as far as the marks of the size say.
    const fn marked_class(&self) -> SizeClass {
        of_family!(self, size => size.class())
    }

    /// The nominal section width that the designation states; `None` of sizes by load letter, which state none.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::{inches, mm}};
    /// assert_eq!(TireSize::parse("205/55R16")?.nominal_width(), Some(mm(205.0)));
    /// assert_eq!(TireSize::parse("31x10.50R15LT")?.nominal_width(), Some(inches(10.5)));
    /// assert_eq!(TireSize::parse("ER78-14")?.nominal_width(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn nominal_width(&self) -> Option<Length> {
        match self {
            Self::Metric(size) => Some(size.nominal_width()),
            Self::FullProfile(size) => Some(size.nominal_width()),
            Self::Flotation(size) => Some(size.nominal_width()),
            Self::Numeric(size) => Some(size.nominal_width()),
            Self::AlphaNumeric(_) => None,
        }
    }

    /// The nominal width in thousandths of a millimetre, of which a hundredth of an inch has 254.
    const fn width_microns(&self) -> Option<u32> {
        match self {
            Self::Metric(size) => Some(size.width_mm() as u32 * 1000),
            Self::FullProfile(size) => Some(size.width_mm() as u32 * 1000),
            Self::Numeric(size) => Some(size.width_hundredths() as u32 * 254),
            Self::Flotation(size) => Some(size.width_hundredths() as u32 * 254),
            Self::AlphaNumeric(_) => None,
        }
    }

    /// The place of the family among the variants.
    const fn place(&self) -> u8 {
        match self {
            Self::Metric(_) => 0,
            Self::FullProfile(_) => 1,
            Self::Numeric(_) => 2,
            Self::Flotation(_) => 3,
            Self::AlphaNumeric(_) => 4,
        }
    }

    /// Whether what could be a rim of several pieces without a contour is a tire.
    pub(crate) const fn is_told_from_rim(&self) -> bool {
        match self {
            Self::Numeric(size) => size.is_told_from_rim(),
            _ => false,
        }
    }

    /// Whether XL and the like can stand beside the size.
    pub(crate) const fn has_load_version(&self) -> bool {
        self.marked_class().rules().has_load_version
    }

    /// The load version that the size itself says.
    pub(crate) const fn version(&self) -> Option<LoadVersion> {
        self.marked_class().rules().version
    }

    /// Whether a load range or ply rating can stand beside it.
    pub(crate) const fn has_load_range(&self) -> bool {
        self.marked_class().rules().has_metric_load_range || !matches!(self, Self::Metric(_))
    }

    /// Whether a single letter beside the size is its load range.
    pub(crate) const fn has_range_letter(&self) -> bool {
        self.marked_class().rules().has_range_letter
    }

    /// Whether the symbol `(W)` can stand beside the size.
    pub(crate) const fn has_open_w(&self) -> bool {
        self.marked_class().rules().has_open_w
    }

    /// The nominal rim diameter, which the wheel's must equal.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::TireSize::parse("205/55R16")?.rim_diameter().to_string(), "16");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn rim_diameter(&self) -> RimDiameter {
        of_family!(self, size => size.rim_diameter())
    }

    /// The structure of the tire: radial, diagonal or bias-belted.
    ///
    /// ```
    /// use beadseat::tire::{Structure, TireSize};
    /// assert_eq!(TireSize::parse("195/65-15")?.structure(), Structure::Diagonal);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn structure(&self) -> Structure {
        of_family!(self, size => size.structure())
    }

    /// The speed letter inside the size, if it has one.
    ///
    /// ```
    /// use beadseat::tire::{SizeSpeedLetter, TireSize};
    /// assert_eq!(TireSize::parse("205/55ZR16")?.size_speed_letter(), Some(SizeSpeedLetter::Z));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn size_speed_letter(&self) -> Option<SizeSpeedLetter> {
        match self {
            Self::Metric(size) => size.size_speed_letter(),
            Self::FullProfile(size) => size.size_speed_letter(),
            Self::Numeric(size) => size.size_speed_letter(),
            Self::Flotation(size) => size.size_speed_letter(),
            Self::AlphaNumeric(_) => None,
        }
    }
}

impl TireSize {
    /// Every part of the designation, packed.
    pub(super) const fn key(&self) -> SizeKey {
        match self {
            Self::Metric(size) => size.key(SizeKey::new(0)),
            Self::FullProfile(size) => size.key(SizeKey::new(1)),
            Self::Numeric(size) => size.key(SizeKey::new(2)),
            Self::Flotation(size) => size.key(SizeKey::new(3)),
            Self::AlphaNumeric(size) => size.key(SizeKey::new(4)),
        }
    }

    /// A size of a table. Only for `const`: what is not a size does not compile.
    pub(super) const fn listed(text: &str) -> Self {
        match Self::parse(text) {
            Ok(size) => size,
            Err(error) => error.fail(),
        }
    }
}

impl Ord for TireSize {
    fn cmp(&self, other: &Self) -> Ordering {
        let key = |size: &Self| (size.rim_diameter(), size.width_microns());
        key(self).cmp(&key(other)).then_with(|| match (self, other) {
            (Self::Metric(a), Self::Metric(b)) => a.cmp(b),
            (Self::FullProfile(a), Self::FullProfile(b)) => a.cmp(b),
            (Self::Numeric(a), Self::Numeric(b)) => a.cmp(b),
            (Self::Flotation(a), Self::Flotation(b)) => a.cmp(b),
            (Self::AlphaNumeric(a), Self::AlphaNumeric(b)) => a.cmp(b),
            _ => self.place().cmp(&other.place()),
        })
    }
}

impl PartialOrd for TireSize {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

macro_rules! conversions {
    ($($family:ident)*) => {
        $(impl From<$family> for TireSize {
            fn from(size: $family) -> Self {
                Self::$family(size)
            }
        }

        impl TryFrom<TireSize> for $family {
            type Error = TireSize;

            /// The size as one of this family; itself back if it is of another.
            fn try_from(size: TireSize) -> Result<Self, TireSize> {
                match size {
                    TireSize::$family(size) => Ok(size),
                    other => Err(other),
                }
            }
        })*
    };
}

conversions! { Metric FullProfile Numeric Flotation AlphaNumeric }

designation!(TireSize in "beadseat::tire", "205 / 55 zr 16" => "205/55ZR16", wrong "205/56R16");
