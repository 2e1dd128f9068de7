//! Numeric sizes: section width in inches.

use super::inch::Inches;
use super::key::SizeKey;
use super::structure::{StructureMark, marked};
use super::{SizeClass, Structure};
use crate::order::ordered;
use crate::rim::{CodeOf, RimDiameter, SeatTaper};
use crate::text::ParseErrorKind::{self, Contradiction};
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};

/// A size by section width in inches: cross-ply cars, light trucks, trucks, motorcycles. `Ord` is by rim diameter,
/// width, aspect ratio, structure and suffix.
///
/// # Syntax
/// ```text
/// size   = inches [ "/" ( aspect | inches ) ] [ "L" ] structure rim [ "C" | "LT" | "HC" | "L" | "M/C" ]
/// ```
/// White space may stand between any two parts. 1.5 to 30 in with up to two decimals, which are part of the
/// designation: `9.5-16` is agricultural and `9.50-16` is not, `11R20` is not `11.00R20`. Before `C`, `LT`, `HC` and
/// `M/C` one decimal is read as two, `7.5R16C` as `7.50R16C`. Common practice, no source. Dimensions stand in tables; of
/// a size that is not listed they are not known. On a half-inch rim of the road it is a truck size; without suffix on
/// another, the class is that of the table that lists it.
///
/// A width with one decimal on a rim of an even code from 24 to 54, without aspect ratio and suffix, is
/// agricultural: truck widths have two decimals or none, and earthmover sizes have code 25. On code 25 from 10 in on, and
/// on the rim codes of earthmovers, to 60 in, it is theirs. Of implements are sizes on their rim codes, those with one
/// decimal and an aspect ratio, and those with an `L`, which is a low section, behind the width: `11L-15`. Common
/// practice, no source.
///
/// Small tires of lawn and garden have two decimals on rim codes of 4 to 7, and are not radial. They and those of small
/// trailers, and some of old cars, may have a second width behind a stroke, that of another series, in twentieths of an
/// inch: `4.80/4.00-8`, `6.40/7.00-13`.
///
/// A speed letter without `R` is of old cross-ply tires: of motorcycles to 5.10 in from rim code 16, `4.10H18`, and of
/// cars from 5.20 to 8 in to rim code 15, `5.60S15`. Common practice, no source.
///
/// Accepted: `6.00-16`, `7.50R16C`, `8.25R20`, `11R22.5`, `5.60-15`, `10/70R22.5`, `8.00-16.5LT`,
/// `4.00-18 M/C`, `6.00-15L`, `20.8-38`, `26.5R25`, `10.0/80-12`, `12.5L-15`, `4.80/4.00-8`, `4.10H18`, `8R17.5HC`.
/// Refused: `6.005-16`, `6.00-38`, `6.00-390`, `4.00R4`, `4.0-4`, `4.80/4.80-8`, `8R16HC`, `7.50V20`.
///
/// ```
/// use beadseat::{tire::TireSize, units::mm};
/// let size: TireSize = "11 r 22,5".parse()?;
/// assert_eq!(size.to_string(), "11R22.5");
/// assert_eq!(size.overall_diameter().map(|d| d.nominal()), Some(mm(1050.0))); // UN R54 Annex 5, from memory
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Numeric {
    width: Inches,
    rim: RimDiameter,
    mark: StructureMark,
    profile: Profile,
    suffix: Suffix,
}

/// What stands behind the stroke.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
enum Profile {
    None,
    Aspect(u8),
    /// The width of another series, in twentieths of an inch.
    OrWidth(u8),
}

/// What stands behind the rim, or behind the width.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
enum Suffix {
    None,
    Commercial,
    LightTruck,
    L,
    Motorcycle,
    HeavyCommercial,
    /// `L` behind the width.
    LowSection,
}

impl Numeric {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        // Three digits are millimetres, whatever they begin with.
        let start = scanner.at();
        let mut digits = *scanner;
        digits.skip_digits();
        if digits.at() - start > 2 {
            return Err(digits.range(Field::SectionWidth, start));
        }
        let width = tri!(Inches::scan(scanner, Field::SectionWidth, 150, 6000));
        let width_end = scanner.at();
        scanner.skip_space();
        let mut profile = Profile::None;
        if scanner.eat(b'/') {
            scanner.skip_space();
            profile = tri!(Profile::scan(scanner, width));
            // From 50 on a whole width before an aspect ratio is millimetres.
            let is_millimetres = width.hundredths() >= 5000 && width.decimals() == 0;
            if is_millimetres && matches!(profile, Profile::Aspect(_)) {
                return Err(ParseError::new(
                    ParseErrorKind::OutOfRange,
                    Field::SectionWidth,
                    start,
                    width_end,
                ));
            }
        }
        scanner.skip_space();
        let low = scanner.eat(b'L');
        scanner.skip_space();
        let mark = tri!(StructureMark::scan_any(scanner));
        let mark_end = scanner.at();
        scanner.skip_space();
        let rim_at = scanner.at();
        let rim = tri!(RimDiameter::scan_any(scanner));
        let rim_error = scanner.range(Field::RimDiameter, rim_at);
        scanner.skip_space();
        let behind = scanner.at();
        // `C-1` and `L-3` are codes of earthmovers.
        let code = matches!(scanner.peek(0), b'C' | b'L') && scanner.peek(1) == b'-';
        let suffix = if scanner.at_digit() || scanner.at_end() || code {
            Suffix::None
        } else if scanner.eat_alone("C") {
            Suffix::Commercial
        } else if scanner.eat_alone("LT") {
            Suffix::LightTruck
        } else if scanner.eat_alone("L") {
            Suffix::L
        } else if scanner.eat_alone("M/C") {
            Suffix::Motorcycle
        } else if scanner.eat_alone("HC") {
            Suffix::HeavyCommercial
        } else {
            Suffix::None
        };
        let suffix = match suffix {
            Suffix::None if low => Suffix::LowSection,
            _ if low => return Err(scanner.error(Contradiction, Field::Family, behind)),
            suffix => suffix,
        };
        // Only agricultural tires have one decimal, and what stands behind the rim says that it is none.
        let width = match suffix {
            Suffix::Commercial | Suffix::LightTruck | Suffix::Motorcycle | Suffix::HeavyCommercial => {
                width.two_for_one()
            }
            Suffix::None | Suffix::L | Suffix::LowSection => width,
        };
        let size = Self { width, rim, mark, profile, suffix };
        let usual = !matches!(suffix, Suffix::HeavyCommercial)
            && rim.is_of_the_road()
            && !rim.is_in_millimetres()
            && !mark.is_lettered_cross()
            && width.hundredths() <= 3000;
        match if usual { None } else { size.misfit() } {
            None => Ok(size),
            Some(Field::SectionWidth) => {
                Err(ParseError::new(ParseErrorKind::OutOfRange, Field::SectionWidth, start, width_end))
            }
            Some(Field::Structure) => {
                Err(ParseError::new(ParseErrorKind::Missing, Field::Structure, mark_end, mark_end + 1))
            }
            Some(_) => Err(rim_error),
        }
    }

    /// The part that such a size does not have so.
    #[cold]
    const fn misfit(&self) -> Option<Field> {
        let class = self.class();
        if self.width.hundredths() > 3000 && !matches!(class, SizeClass::Earthmover) {
            return Some(Field::SectionWidth);
        }
        if self.mark.is_lettered_cross() && !self.is_lettered_car() && !self.is_lettered_motorcycle() {
            return Some(Field::Structure);
        }
        let of_its_class = match self.rim.of() {
            CodeOf::Road => true,
            CodeOf::Small => matches!(class, SizeClass::OffRoad),
            CodeOf::Implement => matches!(class, SizeClass::Implement),
            CodeOf::Agricultural => matches!(class, SizeClass::Agricultural),
            CodeOf::Earthmover => matches!(class, SizeClass::Earthmover),
        };
        let steep = matches!(self.rim.seat_taper(), SeatTaper::FifteenDegree);
        let has_suffix = steep || !matches!(self.suffix, Suffix::HeavyCommercial);
        if of_its_class && has_suffix && !self.rim.is_in_millimetres() {
            None
        } else {
            Some(Field::RimDiameter)
        }
    }

    pub(super) const fn key(&self, family: SizeKey) -> SizeKey {
        let key = self.width.key(family).and(self.profile.number() as u64, 9);
        self.mark.key(key.and(self.rim.tenths() as u64, 13).and(self.suffix as u64, 3))
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.width.write(text);
        self.profile.write(text);
        if matches!(self.suffix, Suffix::LowSection) {
            text.byte(b'L');
        }
        self.mark.write(text);
        self.rim.write(text);
        text.str(match self.suffix {
            Suffix::None | Suffix::LowSection => "",
            Suffix::HeavyCommercial => "HC",
            Suffix::Commercial => "C",
            Suffix::LightTruck => "LT",
            Suffix::L => "L",
            Suffix::Motorcycle => " M/C",
        });
    }

    pub(super) const fn is_told_from_rim(&self) -> bool {
        self.width.decimals() == 2
            || matches!(self.rim.seat_taper(), SeatTaper::FifteenDegree)
            || self.is_agricultural()
            // Widths of their rims have two decimals.
            || self.is_earthmover() && self.width.decimals() == 1
    }

    const fn is_agricultural(&self) -> bool {
        matches!((self.profile, self.suffix), (Profile::None, Suffix::None))
            && self.width.decimals() == 1
            && self.mark.is_plain()
            && matches!(self.rim.of(), CodeOf::Road | CodeOf::Agricultural)
            && self.rim.tenths() >= 240
            && self.rim.tenths() % 20 == 0
    }

    const fn is_earthmover(&self) -> bool {
        let on_25 = self.rim.tenths() == RimDiameter::CODE_25.tenths();
        matches!((self.profile, self.suffix), (Profile::None | Profile::Aspect(_), Suffix::None))
            && self.width.hundredths() >= 1000
            && self.mark.is_plain()
            && (on_25 || matches!(self.rim.of(), CodeOf::Earthmover))
    }

    const fn is_implement(&self) -> bool {
        let low = matches!(self.suffix, Suffix::LowSection);
        let by_aspect = matches!(self.profile, Profile::Aspect(_)) && self.width.decimals() == 1;
        let on_its_rim =
            matches!(self.rim.of(), CodeOf::Implement) && !matches!(self.profile, Profile::OrWidth(_));
        self.mark.is_plain()
            && (low && matches!(self.profile, Profile::None)
                || matches!(self.suffix, Suffix::None) && (by_aspect || on_its_rim))
    }

    /// Of lawn and garden.
    const fn is_small(&self) -> bool {
        matches!(self.rim.of(), CodeOf::Small)
            && matches!((self.profile, self.suffix), (Profile::None | Profile::OrWidth(_), Suffix::None))
            && matches!(self.mark.structure(), Structure::Diagonal)
            && self.mark.is_plain()
            && self.width.decimals() == 2
            && self.width.hundredths() <= 700
    }

    /// A cross-ply with a speed letter, as narrow as motorcycles have them.
    const fn is_lettered_motorcycle(&self) -> bool {
        self.mark.is_lettered_cross()
            && matches!((self.profile, self.suffix), (Profile::None, Suffix::None | Suffix::Motorcycle))
            && self.width.hundredths() <= 510
            && self.rim.tenths() >= 160
    }

    /// A cross-ply with a speed letter, as old cars have them.
    const fn is_lettered_car(&self) -> bool {
        self.mark.is_lettered_cross()
            && matches!((self.profile, self.suffix), (Profile::None | Profile::OrWidth(_), Suffix::None))
            && self.width.hundredths() >= 520
            && self.width.hundredths() <= 800
            && self.rim.tenths() <= 150
    }

    /// The same with a suffix, if it has no other and nothing else tells what it is.
    const fn with_suffix(self, suffix: Suffix) -> Option<Self> {
        let open = matches!(self.suffix, Suffix::None)
            && (matches!(self.class(), SizeClass::Unstated) || self.is_lettered_motorcycle());
        let size = Self { suffix, width: self.width.two_for_one(), ..self };
        if open && size.misfit().is_none() { Some(size) } else { None }
    }

    /// The same as a motorcycle's.
    pub(super) const fn with_motorcycle(self) -> Option<Self> {
        self.with_suffix(Suffix::Motorcycle)
    }

    /// The same as a light truck's.
    pub(super) const fn with_light_truck(self) -> Option<Self> {
        self.with_suffix(Suffix::LightTruck)
    }

    /// Whether marks of earthmovers may stand beside it: graders share their codes with trucks.
    pub(super) const fn can_be_earthmover(&self) -> bool {
        let shared = matches!((self.profile, self.suffix), (Profile::None, Suffix::None))
            && matches!(self.class(), SizeClass::Unstated)
            && self.rim.tenths() >= 200
            && self.width.hundredths() >= 1000;
        shared || self.is_earthmover()
    }

    /// Which rules the size follows, as far as its marks say.
    pub const fn class(&self) -> SizeClass {
        match self.suffix {
            Suffix::Commercial => SizeClass::Commercial,
            Suffix::LightTruck => SizeClass::LightTruck,
            Suffix::Motorcycle => SizeClass::Motorcycle,
            Suffix::HeavyCommercial => SizeClass::HeavyCommercial,
            Suffix::None | Suffix::L | Suffix::LowSection => self.unmarked_class(),
        }
    }

    #[inline(never)]
    const fn unmarked_class(&self) -> SizeClass {
        let steep = matches!(self.rim.seat_taper(), SeatTaper::FifteenDegree);
        if steep && self.rim.is_of_the_road() {
            SizeClass::Truck
        } else if self.is_agricultural() {
            SizeClass::Agricultural
        } else if self.is_earthmover() {
            SizeClass::Earthmover
        } else if self.is_implement() {
            SizeClass::Implement
        } else if self.is_small() {
            SizeClass::OffRoad
        } else if self.is_lettered_motorcycle() {
            SizeClass::Motorcycle
        } else {
            SizeClass::Unstated
        }
    }

    pub(super) const fn width_hundredths(&self) -> u16 {
        self.width.hundredths()
    }

    /// The section width that is molded.
    pub const fn nominal_width(&self) -> Length {
        units::inches(self.width.hundredths() as f64 / 100.0)
    }
}

impl Profile {
    /// An aspect ratio, or behind a point a second width, which is another than the first.
    const fn scan(scanner: &mut Scanner<'_>, width: Inches) -> Result<Self, ParseError> {
        let at = scanner.at();
        let mut ahead = *scanner;
        ahead.skip_digits();
        if scanner.is_point(ahead.at()) {
            let second = tri!(Inches::scan(scanner, Field::SectionWidth, 150, 1275)).hundredths();
            return if second % 5 == 0 && second != width.hundredths() && width.decimals() == 2 {
                Ok(Self::OrWidth((second / 5) as u8))
            } else {
                Err(scanner.range(Field::SectionWidth, at))
            };
        }
        let aspect = tri!(scanner.whole(Field::AspectRatio));
        if aspect < 40 || aspect > 95 || aspect % 5 != 0 {
            return Err(scanner.range(Field::AspectRatio, at));
        }
        Ok(Self::Aspect(aspect as u8))
    }

    /// Of nine bits.
    const fn number(self) -> u16 {
        match self {
            Self::None => 0,
            Self::Aspect(aspect) => aspect as u16,
            Self::OrWidth(twentieths) => 256 + twentieths as u16,
        }
    }

    fn write(self, text: &mut Text) {
        match self {
            Self::None => {}
            Self::Aspect(aspect) => {
                text.byte(b'/').whole(u32::from(aspect));
            }
            Self::OrWidth(twentieths) => {
                text.byte(b'/');
                Inches::of_hundredths(5 * u16::from(twentieths)).two().write(text);
            }
        }
    }
}

marked!(Numeric);
ordered!(Numeric, |size| (size.rim, size.width, size.profile, size.mark, size.suffix));
designation!(Numeric in "beadseat::tire", "7,50 r 16 c" => "7.50R16C", wrong "0.50-16");
