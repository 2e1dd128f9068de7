//! Centre bore of the wheel, spigot of the hub.

use crate::OutOfRange;
use crate::exact::Exact;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{self, Length, in_mm};

/// The diameter of the centre bore.
///
/// # Syntax
/// `57.1`, `57,1 mm`, `CB57.1`; 20 to 400 mm. Canonical `57.1`. `Ord` is by diameter.
///
/// ```
/// use beadseat::{units::mm, wheel::Bore};
/// assert_eq!(Bore::parse("CB 66,6")?.length(), mm(66.6));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Bore(Exact);

impl Bore {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if scanner.eat_str("CB") {
            scanner.skip_space();
        }
        let bore = tri!(Exact::scan_mm(scanner, Field::Bore, 20, 400));
        let mut ahead = *scanner;
        ahead.skip_space();
        if ahead.eat_word("MM") {
            *scanner = ahead;
        }
        Ok(Self(bore))
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.0.write_mm(text);
    }

    /// The diameter as a length.
    pub const fn length(&self) -> Length {
        self.0.length()
    }
}

designation!(Bore in "beadseat::wheel", "cb57.10" => "57.1", wrong "12");

/// The diameter of the spigot, the collar of the hub that a wheel is centred on; to the nanometre, so
/// that it can equal a [`Bore`].
///
/// `Ord` is by diameter. In files it is a number of millimetres.
///
/// ```
/// use beadseat::{units::mm, wheel::{Bore, Spigot}};
/// let spigot = Spigot::from_length(mm(57.1))?;
/// assert_eq!(spigot.play_in("57.1".parse()?), mm(0.0));
/// assert_eq!(spigot.play_in("66.6".parse()?), mm(9.5));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Spigot(Exact);

impl Spigot {
    /// The nearest one to a measured diameter.
    ///
    /// # Errors
    /// Outside 20 to 400 mm.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Spigot};
    /// assert!(Spigot::from_length(mm(5.0)).is_err());
    /// ```
    pub fn from_length(diameter: Length) -> Result<Self, OutOfRange> {
        let mm = OutOfRange::check("spigot_mm", in_mm(diameter), "mm", 20.0, 400.0)?;
        Ok(Self(Exact::nearest(units::mm(mm)).unwrap_or(Exact::from_nm(0))))
    }

    /// The diameter as a length.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Spigot};
    /// assert_eq!(Spigot::from_length(mm(57.1))?.length(), mm(57.1));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub const fn length(self) -> Length {
        self.0.length()
    }

    /// What a bore is larger than the spigot; negative if it cannot go on.
    pub const fn play_in(self, bore: Bore) -> Length {
        Exact::from_nm(bore.0.nm() - self.0.nm()).length()
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for Spigot {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.0.mm())
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for Spigot {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::from_length(units::mm(f64::deserialize(deserializer)?)).map_err(serde::de::Error::custom)
    }
}
