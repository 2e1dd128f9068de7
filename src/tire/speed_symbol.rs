//! Speed symbol: the speed a tire is made for, as a letter.

use crate::text::{Field, ParseError, Scanner, Text, designation};
use crate::units::{self, Velocity};

macro_rules! symbols {
    ($($variant:ident $mark:literal $kmh:literal $mph:literal,)*) => {
        /// A speed symbol: the letter that names the greatest speed of a tire.
        ///
        /// `Ord` is by speed, not by letter: H (210 km/h) stands between U and V, and each of the bracketed
        /// [`SpeedSymbol::AboveW`] and [`SpeedSymbol::AboveY`] directly above its letter.
        ///
        /// # Syntax
        /// `A1` to `A8`, one of the letters `B` to `W` without `I`, `O` and `X`, `Y`, `(W)` or `(Y)`.
        ///
        /// Source: UN R30 and R54, tables of speed categories, seen in trade tables; km/h for all, mph
        /// as printed for most; `(Y)`, and `(W)` of UN R75, from memory.
        ///
        /// ```
        /// use beadseat::{tire::SpeedSymbol, units::kmh};
        /// assert_eq!(SpeedSymbol::parse("V")?.speed(), kmh(240.0));
        /// assert!(SpeedSymbol::U < SpeedSymbol::H && SpeedSymbol::H < SpeedSymbol::V);
        /// # Ok::<(), beadseat::ParseError>(())
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[non_exhaustive]
        pub enum SpeedSymbol {
            $(#[doc = concat!($kmh, " km/h, printed as ", $mph, " mph.")] $variant,)*
            /// Above 270 km/h: `W` with the whole service description in brackets, of motorcycles; how far
            /// above, only the maker can say.
            AboveW,
            /// 300 km/h, printed as 186 mph.
            Y,
            /// Above 300 km/h: `Y` with the whole service description in brackets and `ZR` in the size;
            /// how far above, only the maker can say.
            AboveY,
        }

        impl SpeedSymbol {
            /// All of them, slowest first.
            ///
            /// ```
            /// use beadseat::tire::SpeedSymbol;
            /// assert!(SpeedSymbol::ALL.windows(2).all(|pair| pair[0].speed() <= pair[1].speed()));
            /// ```
            pub const ALL: &[Self] = &[$(Self::$variant,)* Self::AboveW, Self::Y, Self::AboveY];

            const fn row(self) -> (&'static str, u16, u16) {
                match self {
                    $(Self::$variant => ($mark, $kmh, $mph),)*
                    Self::AboveW => ("(W)", 270, 168),
                    Self::Y => ("Y", 300, 186),
                    Self::AboveY => ("(Y)", 300, 186),
                }
            }
        }
    };
}

symbols! {
    A1 "A1" 5 3,
    A2 "A2" 10 6,
    A3 "A3" 15 9,
    A4 "A4" 20 12,
    A5 "A5" 25 16,
    A6 "A6" 30 19,
    A7 "A7" 35 22,
    A8 "A8" 40 25,
    B "B" 50 31,
    C "C" 60 37,
    D "D" 65 40,
    E "E" 70 43,
    F "F" 80 50,
    G "G" 90 56,
    J "J" 100 62,
    K "K" 110 68,
    L "L" 120 75,
    M "M" 130 81,
    N "N" 140 87,
    P "P" 150 93,
    Q "Q" 160 99,
    R "R" 170 106,
    S "S" 180 112,
    T "T" 190 118,
    U "U" 200 124,
    H "H" 210 130,
    V "V" 240 149,
    W "W" 270 168,
}

impl SpeedSymbol {
    /// Reads a symbol without brackets, if one is here.
    #[inline(always)]
    pub(crate) const fn scan_bare(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut symbol = BY_LETTER[scanner.byte() as usize];
        if symbol.is_none() && scanner.is_at(b'A') {
            if let digit @ b'1'..=b'8' = scanner.peek(1) {
                scanner.step(1);
                symbol = Some(Self::ALL[(digit - b'1') as usize]);
            }
        }
        if symbol.is_some() {
            scanner.step(1);
        }
        symbol
    }

    /// What brackets around it make of it, if they make anything.
    pub(super) const fn bracketed(self) -> Option<Self> {
        match self {
            Self::W => Some(Self::AboveW),
            Self::Y => Some(Self::AboveY),
            _ => None,
        }
    }

    const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if scanner.eat_str("(Y)") {
            return Ok(Self::AboveY);
        }
        if scanner.eat_str("(W)") {
            return Ok(Self::AboveW);
        }
        match Self::scan_bare(scanner) {
            Some(symbol) => Ok(symbol),
            None => Err(scanner.missing(Field::SpeedSymbol)),
        }
    }

    #[inline]
    pub(crate) fn write(self, text: &mut Text) {
        text.str(self.row().0);
    }

    /// The letter, without brackets.
    pub(crate) const fn letter(self) -> &'static str {
        match self {
            Self::AboveW => "W",
            Self::AboveY => "Y",
            _ => self.row().0,
        }
    }

    /// The speed it stands for; of a bracketed symbol, the speed it is above.
    ///
    /// ```
    /// use beadseat::{tire::SpeedSymbol, units::kmh};
    /// assert_eq!(SpeedSymbol::H.speed(), kmh(210.0));
    /// ```
    pub const fn speed(self) -> Velocity {
        units::kmh(self.row().1 as f64)
    }

    /// The speed in miles an hour as charts print it.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::SpeedSymbol::H.printed_mph(), 130);
    /// ```
    pub const fn printed_mph(self) -> u16 {
        self.row().2
    }

    /// Whether the limit is above [`SpeedSymbol::speed`] and only the maker knows it.
    ///
    /// ```
    /// use beadseat::tire::SpeedSymbol;
    /// assert!(SpeedSymbol::AboveY.is_open_ended() && SpeedSymbol::AboveW.is_open_ended());
    /// assert!(!SpeedSymbol::Y.is_open_ended());
    /// ```
    pub const fn is_open_ended(self) -> bool {
        matches!(self, Self::AboveW | Self::AboveY)
    }
}

/// The symbols of one letter by that letter, upper or lower case.
static BY_LETTER: [Option<SpeedSymbol>; 256] = {
    let mut by_letter = [None; 256];
    let mut i = 0;
    while i < SpeedSymbol::ALL.len() {
        if let [letter] = SpeedSymbol::ALL[i].row().0.as_bytes() {
            by_letter[*letter as usize] = Some(SpeedSymbol::ALL[i]);
            by_letter[letter.to_ascii_lowercase() as usize] = Some(SpeedSymbol::ALL[i]);
        }
        i += 1;
    }
    by_letter
};

designation!(SpeedSymbol in "beadseat::tire", "h" => "H", wrong "I");
