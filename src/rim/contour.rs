//! The letters beside a rim width: flange contour and humps.

use crate::Toleranced;
use crate::text::{Field, ParseError, Scanner, Text, designation};
use crate::units::{self, Length};

/// Makes an enum of fixed marks with its scanner (`$longest` first) and writer.
macro_rules! marks {
    ($(#[$doc:meta])* $name:ident is $field:ident { $($(#[$vdoc:meta])* $variant:ident = $mark:literal,)* }
     in $path:literal, $typed:literal => $canonical:literal, wrong $wrong:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum $name { $($(#[$vdoc])* $variant,)* }

        impl $name {
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
        /// Higher flange.
        K = "K",
        /// High flange.
        L = "L",
        /// Low flange of small rims.
        A = "A",
        /// Light commercial, flat base.
        C = "C",
        /// Commercial.
        D = "D",
        /// Commercial.
        E = "E",
        /// Commercial.
        F = "F",
        /// Commercial.
        G = "G",
    }
    in "beadseat::rim", "j" => "J", wrong "Q"
}

impl Contour {
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
        /// Combination hump.
        Ch = "CH",
        /// Extended humps, for run-flat tires.
        Eh2 = "EH2",
        /// Extended hump on the outer side.
        Eh = "EH",
        /// Special ledge.
        Sl = "SL",
    }
    in "beadseat::rim", "h2" => "H2", wrong "H3"
}
