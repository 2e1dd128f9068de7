//! Stamped lengths, held exactly.

use crate::text::{Field, ParseError, Scanner, Text, tri};
use crate::units::{self, Length};

/// A length in whole nanometres, up to 2.1 m either way. A decimal of a millimetre down to the sixth
/// and of an inch down to the fourth is a whole number of them, so `4.5 in == 114.3 mm` holds.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) struct Exact(i32);

/// 1 in in nanometres (exact by definition).
const INCH: i64 = 25_400_000;

impl Exact {
    pub(crate) const fn from_nm(nm: i32) -> Self {
        Self(nm)
    }

    pub(crate) const fn nm(self) -> i32 {
        self.0
    }

    /// The nearest whole nanometre to a quantity, if it is one this type can hold.
    pub(crate) fn nearest(length: Length) -> Option<Self> {
        let nm = libm::round(units::in_mm(length) * 1e6);
        (nm.abs() < f64::from(i32::MAX)).then_some(Self(nm as i32))
    }

    /// The nearest `f64` to the exact value, in millimetres.
    pub(crate) const fn mm(self) -> f64 {
        self.0 as f64 / 1e6
    }

    pub(crate) const fn length(self) -> Length {
        units::mm(self.mm())
    }

    /// Reads a decimal number of millimetres between two bounds.
    pub(crate) const fn scan_mm(
        scanner: &mut Scanner<'_>,
        field: Field,
        least: i64,
        most: i64,
    ) -> Result<Self, ParseError> {
        let start = scanner.at();
        let nm = tri!(scanner.decimal(field, 6));
        if nm < least * 1_000_000 || nm > most * 1_000_000 {
            return Err(scanner.range(field, start));
        }
        Ok(Self(nm as i32))
    }

    /// A decimal number of inches given in millionths (whole ten-thousandths), if it is at most 80 in.
    pub(crate) const fn from_inch_millionths(inches: i64) -> Option<Self> {
        if inches < 0 || inches > 80_000_000 || inches % 100 != 0 {
            return None;
        }
        Some(Self((inches / 100 * (INCH / 10_000)) as i32))
    }

    pub(crate) fn write_mm(self, text: &mut Text) {
        text.millionths(self.0 as i64);
    }
}

impl core::fmt::Debug for Exact {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let mut text = Text::new();
        self.write_mm(&mut text);
        write!(f, "{} mm", text.as_str())
    }
}

/// Makes a measured length that is held exactly, so that it can equal a stamped one; in files a number of
/// millimetres.
macro_rules! exact_length {
    ($(#[$doc:meta])* $name:ident = $key:literal, $least:literal to $most:literal, in $path:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(Exact);

        impl $name {
            /// The nearest one to a measured length.
            ///
            /// # Errors
            #[doc = concat!("Outside ", $least, " to ", $most, " mm.")]
            ///
            /// ```
            #[doc = concat!("use ", $path, "::", stringify!($name), ";")]
            /// use beadseat::units::mm;
            #[doc = concat!("assert!(", stringify!($name), "::from_length(mm(", $most, ".0)).is_ok());")]
            #[doc = concat!("assert!(", stringify!($name), "::from_length(mm(", $most, ".1)).is_err());")]
            /// ```
            pub fn from_length(length: Length) -> Result<Self, crate::OutOfRange> {
                let mm = crate::units::in_mm(length);
                let mm = crate::OutOfRange::check($key, mm, "mm", f64::from($least), f64::from($most))?;
                Ok(Self(Exact::nearest(crate::units::mm(mm)).unwrap_or(Exact::from_nm(0))))
            }

            /// The same length as a quantity, which carries its unit.
            ///
            /// ```
            #[doc = concat!("use ", $path, "::", stringify!($name), ";")]
            /// use beadseat::units::mm;
            #[doc = concat!("assert_eq!(", stringify!($name), "::from_length(mm(", $most, ".0))?.length(), mm(", $most, ".0));")]
            /// # Ok::<(), beadseat::OutOfRange>(())
            /// ```
            pub const fn length(self) -> Length {
                self.0.length()
            }
        }

        #[cfg(feature = "serde")]
        impl crate::file::Shaped for $name {
            const CONTENT: crate::file::Content =
                crate::file::Content::Number { least: $least as f64, most: $most as f64 };
        }

        #[cfg(feature = "serde")]
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_f64(self.0.mm())
            }
        }

        #[cfg(feature = "serde")]
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let mm = f64::deserialize(deserializer).map_err(crate::text::bounded)?;
                Self::from_length(crate::units::mm(mm)).map_err(serde::de::Error::custom)
            }
        }
    };
}
pub(crate) use exact_length;
