//! The letters beside a rim width: flange contour and humps.

use super::{RimDiameter, RimWidth, SeatTaper};
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length};
use crate::{Citation, Toleranced};

/// Makes an enum of fixed marks with its scanner (`$longest` first) and writer.
macro_rules! marks {
    ($(#[$doc:meta])* $name:ident is $field:ident { $($(#[$vdoc:meta])* $variant:ident = $mark:literal,)* }
     in $path:literal, $typed:literal => $canonical:literal, wrong $wrong:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum $name { $($(#[$vdoc])* $variant,)* }

        impl $name {
            /// Every one, a longer mark before those it begins with.
            ///
            /// ```
            #[doc = concat!("use ", $path, "::", stringify!($name), ";")]
            #[doc = concat!("assert!(", stringify!($name), "::ALL.iter().all(|m| ", stringify!($name), "::parse(m.mark()) == Ok(*m)));")]
            /// ```
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// Reads a mark that no letter follows, but for the `X` of a multiplication sign.
            pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
                $(
                    if scanner.eat_mark($mark) {
                        return Ok(Self::$variant);
                    }
                )*
                Err(scanner.missing(Field::$field))
            }

            pub(crate) fn write(self, text: &mut Text) {
                text.str(self.mark());
            }

            /// The letters as they are stamped.
            ///
            /// ```
            #[doc = concat!("use ", $path, "::", stringify!($name), ";")]
            #[doc = concat!("assert_eq!(", stringify!($name), "::parse(\"", $typed, "\")?.mark(), \"", $canonical, "\");")]
            /// # Ok::<(), beadseat::ParseError>(())
            /// ```
            pub const fn mark(self) -> &'static str {
                match self { $(Self::$variant => $mark,)* }
            }
        }

        designation!($name in $path, $typed => $canonical, wrong $wrong);
    };
}

marks! {
    /// The contour of a rim: flange height and width, and the well between the seats.
    ///
    /// A road wheel of today is `J` nearly always. Source of the list: ISO 4000-2 and ETRTO, from
    /// memory.
    Contour is Contour {
        /// Low flange, small cars and trailers.
        B = "B",
        /// As J with a slightly higher flange.
        Jj = "JJ",
        /// Between J and K.
        Jk = "JK",
        /// The common passenger and light truck contour.
        J = "J",
        /// A flange higher than that of J.
        K = "K",
        /// A rim with a high flange.
        L = "L",
        /// Low flange of small rims.
        A = "A",
        /// Light commercial, flat base.
        C = "C",
        /// Commercial contour with the letter D.
        D = "D",
        /// Commercial contour with the letter E.
        E = "E",
        /// Commercial contour with the letter F.
        F = "F",
        /// Commercial contour with the letter G.
        G = "G",
        /// Of trucks on seats of 15°, for more load. From memory; of its flange nothing was seen.
        Hc = "HC",
        /// Commercial contour with the letter H.
        H = "H",
        /// Commercial contour with the letter P.
        P = "P",
        /// Of several pieces, trucks.
        S = "S",
        /// Of several pieces, trucks.
        T = "T",
        /// Of several pieces, trucks.
        V = "V",
    }
    in "beadseat::rim", "j" => "J", wrong "Q"
}

marks! {
    /// What stands in front of a rim width: a series of rims that are not of cars.
    ///
    /// Source of the list: ETRTO and TRA, of `WM` British practice, from memory. What their flanges, wells and seats
    /// measure was not seen.
    RimSeries is RimSeries {
        /// Of tractors, with a deeper and wider well.
        DoubleWell = "DW",
        /// Of motorcycles, for tubes; named by a number that stands for the width.
        MotorcycleTube = "WM",
        /// A rim that tractors have.
        Wide = "W",
        /// Of motorcycles, for tubeless tires.
        MotorcycleTubeless = "MT",
    }
    in "beadseat::rim", "mt" => "MT", wrong "TM"
}

/// The widths that the numbers behind `WM` stand for, in hundredths of an inch: `WM1` to `WM6`. From memory.
const WM_WIDTHS: [&str; 6] = ["1.60", "1.85", "2.15", "2.50", "2.75", "3.00"];

impl RimSeries {
    /// Reads a series in front of a width: a digit must follow.
    pub(crate) const fn scan_before_width(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut i = 0;
        while i < Self::ALL.len() {
            if scanner.eat_before_digit(Self::ALL[i].mark()) {
                return Some(Self::ALL[i]);
            }
            i += 1;
        }
        None
    }

    /// The width behind the series.
    pub(crate) const fn scan_width(self, scanner: &mut Scanner<'_>) -> Result<RimWidth, ParseError> {
        let mut ahead = *scanner;
        ahead.skip_digits();
        if !matches!(self, Self::MotorcycleTube) || scanner.is_point(ahead.at()) {
            return RimWidth::scan(scanner);
        }
        let at = scanner.at();
        let number = tri!(scanner.whole(Field::RimWidth));
        if number < 1 || number as usize > WM_WIDTHS.len() {
            return Err(scanner.range(Field::RimWidth, at));
        }
        RimWidth::parse(WM_WIDTHS[number as usize - 1])
    }

    /// The number that stands for a width behind `WM`.
    pub(crate) fn number_of(width: RimWidth) -> Option<u8> {
        let at = WM_WIDTHS.iter().position(|known| RimWidth::parse(known) == Ok(width))?;
        Some(at as u8 + 1)
    }

    /// Whether it is of motorcycles.
    pub(crate) const fn is_of_motorcycles(self) -> bool {
        matches!(self, Self::MotorcycleTube | Self::MotorcycleTubeless)
    }
}

impl Contour {
    /// Reads `J` or `JJ` in front of a diameter without a sign between them: a digit must follow.
    #[cold]
    pub(crate) const fn scan_before_diameter(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut ahead = *scanner;
        ahead.skip_space();
        let contour = if ahead.eat_str("JJ") {
            Self::Jj
        } else if ahead.eat(b'J') {
            Self::J
        } else {
            return None;
        };
        ahead.skip_space();
        if !ahead.at_digit() {
            return None;
        }
        *scanner = ahead;
        Some(contour)
    }

    /// Reads a contour in front of a width: a digit must follow.
    #[inline]
    pub(crate) const fn scan_before_width(scanner: &mut Scanner<'_>) -> Option<Self> {
        if scanner.at_digit() { None } else { Self::scan_letters_before_width(scanner) }
    }

    const fn scan_letters_before_width(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut i = 0;
        while i < Self::ALL.len() {
            if scanner.eat_before_digit(Self::ALL[i].mark()) {
                return Some(Self::ALL[i]);
            }
            i += 1;
        }
        None
    }

    /// Whether only rims of trucks have it: from code 16 and 5 in on, from memory. H, S and V before a dash are
    /// letters of speed on narrower or smaller tires.
    pub(crate) const fn is_of_trucks(self) -> bool {
        matches!(self, Self::Hc | Self::H | Self::P | Self::S | Self::T | Self::V)
    }

    /// What the flange adds to the rim width on each side: the least flange width of the contour, 13 mm
    /// as the most, and the shop's half inch between them.
    ///
    /// Source: JIS D 4218:2021 (modified ISO 4000-2) for B, J and K, whose least widths are 10.0, 11.0
    /// and 11.5 mm; the other contours are taken as J; 12.7 and 13 mm are common practice, no source.
    ///
    /// ```
    /// use beadseat::{rim::Contour, units::mm};
    /// assert_eq!(Contour::J.flange_width().min(), mm(11.0));
    /// ```
    pub fn flange_width(self) -> Toleranced<Length> {
        let least = match self {
            Self::B => 10.0,
            Self::K => 11.5,
            _ => 11.0,
        };
        Toleranced::ordered(units::mm(least), units::mm(12.7), units::mm(13.0))
    }

    /// The height of the flange over the bead seat, `G`; `None` where no standard was seen.
    ///
    /// Source: JIS D 4218:2021 (modified ISO 4000-2:2013), Table 3, for B, J and K.
    ///
    /// ```
    /// use beadseat::{rim::Contour, units::mm};
    /// let height = Contour::J.flange_height().ok_or("not known")?;
    /// assert_eq!(height.nominal(), mm(17.5));
    /// assert!((height.max() - mm(18.5)).abs() < mm(1e-9));
    /// assert_eq!(Contour::L.flange_height(), None);
    /// # Ok::<(), &str>(())
    /// ```
    pub fn flange_height(self) -> Option<Toleranced<Length>> {
        let nominal = match self {
            Self::B => 14.5,
            Self::J => 17.5,
            Self::K => 20.0,
            _ => return None,
        };
        Some(Toleranced::within(units::mm(nominal), units::mm(1.0)))
    }

    /// About how high the flange is where [`Contour::flange_height`] is not known, and by whose word. Nothing in
    /// this crate is judged by it.
    ///
    /// JJ is from an encyclopedia that quotes a catalogue, JK from a page of rim codes (18.2 mm from memory); L is from
    /// memory, and one page prints 25.4 mm; the contours of trucks are orders of magnitude from memory.
    ///
    /// ```
    /// use beadseat::{rim::Contour, units::mm};
    /// let (height, citation) = Contour::L.rough_flange_height().ok_or("not known")?;
    /// assert_eq!(height, mm(21.6));
    /// assert!(citation.is_from_memory());
    /// assert_eq!(Contour::J.rough_flange_height(), None);
    /// # Ok::<(), &str>(())
    /// ```
    pub const fn rough_flange_height(self) -> Option<(Length, Citation)> {
        let (height, citation) = match self {
            Self::Jj | Self::Jk => (18.0, Citation::FLANGE_CATALOGUE),
            Self::L => (21.6, Citation::FLANGE_ROUGH),
            Self::D => (17.5, Citation::FLANGE_ROUGH),
            Self::E | Self::P => (20.0, Citation::FLANGE_ROUGH),
            Self::F => (22.5, Citation::FLANGE_ROUGH),
            Self::G => (28.0, Citation::FLANGE_ROUGH),
            Self::H | Self::S => (33.5, Citation::FLANGE_ROUGH),
            Self::T => (38.0, Citation::FLANGE_ROUGH),
            Self::V => (44.5, Citation::FLANGE_ROUGH),
            Self::A | Self::B | Self::C | Self::Hc | Self::J | Self::K => return None,
        };
        Some((units::mm(height), citation))
    }

    /// The least radius of the flange, `R2`, where the sidewall bends over it. Source as
    /// [`Contour::flange_height`].
    ///
    /// ```
    /// use beadseat::{rim::Contour, units::mm};
    /// assert_eq!(Contour::K.flange_radius(), Some(mm(10.5)));
    /// ```
    pub const fn flange_radius(self) -> Option<Length> {
        match self {
            Self::B => Some(units::mm(7.5)),
            Self::J => Some(units::mm(9.5)),
            Self::K => Some(units::mm(10.5)),
            _ => None,
        }
    }

    /// The **least** depth of the well below the bead seat, `H`, of a rim with seats of 5°; `None` where no
    /// standard was seen. There is no greatest: most wells are deeper, and the room for the brake smaller.
    ///
    /// Source as [`Contour::flange_height`]. J from rim code 22 and width 4.5 on needs 22.0 mm; a J whose
    /// well begins within 43 mm of its flange may do with 17.0 mm, which is not counted on here.
    ///
    /// ```
    /// use beadseat::{rim::{Contour, RimDiameter, RimWidth}, units::mm};
    /// let depth = |code| Some(Contour::J.well_depth(RimDiameter::parse(code).ok()?, RimWidth::parse("8").ok()?));
    /// assert_eq!(depth("21"), Some(Some(mm(17.3))));
    /// assert_eq!(depth("22"), Some(Some(mm(22.0))));
    /// assert_eq!(depth("22.5"), Some(None));
    /// ```
    pub fn well_depth(self, diameter: RimDiameter, width: RimWidth) -> Option<Length> {
        if diameter.seat_taper() != SeatTaper::FiveDegree {
            return None;
        }
        let least = match self {
            Self::B => 15.0,
            Self::J if diameter.tenths() >= 220 && width.quarters() >= 18 => 22.0,
            Self::J => 17.3,
            Self::K => 20.0,
            _ => return None,
        };
        Some(units::mm(least))
    }

    /// The source of height, radius and depth.
    ///
    /// ```
    /// assert!(!beadseat::rim::Contour::J.citation().is_from_memory());
    /// ```
    pub const fn citation(self) -> Citation {
        Citation::RIM_CONTOUR
    }
}

marks! {
    /// The humps beside the seats, which keep a bead from leaving its seat.
    ///
    /// Source of the list: ISO 4000-2 and ETRTO, from memory.
    Hump is Hump {
        /// Round hump on the outer side, and on the inner.
        H2 = "H2",
        /// Round hump on the outer side.
        H = "H",
        /// Flat hump on the outer side, and on the inner.
        Fh2 = "FH2",
        /// Flat hump on the outer side.
        Fh = "FH",
        /// Flat hump outside, round hump inside.
        Ch2 = "CH2",
        /// Combination hump on the outer side.
        Ch = "CH",
        /// Extended humps that are higher still, for run-flat tires.
        Eh2Plus = "EH2+",
        /// Extended humps, for run-flat tires.
        Eh2 = "EH2",
        /// Extended hump on the outer side.
        Eh = "EH",
        /// Special ledge in place of a hump.
        Sl = "SL",
    }
    in "beadseat::rim", "h2" => "H2", wrong "H3"
}
