//! Centre bore of the wheel, spigot of the hub.

use core::num::NonZeroU32;

use super::phrase;
use crate::exact::{Exact, exact_length};
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::Length;
use crate::wheel::BoltCircle;

/// The diameter of the centre bore.
///
/// # Syntax
/// `57.1`, `57,1 mm`, `CB57.1`, `Ø57.1`; 20 to 400 mm. Canonical `57.1`. `Ord` is by diameter.
///
/// ```
/// use beadseat::{units::mm, wheel::Bore};
/// assert_eq!(Bore::parse("CB 66,6")?.length(), mm(66.6));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Bore(
    /// Nanometres; never zero, so that an absent bore takes no room in a wheel.
    NonZeroU32,
);

impl Bore {
    /// Whether a bore, or a number that could be one, begins here.
    pub(crate) const fn is_next(scanner: &Scanner<'_>) -> bool {
        let mut ahead = *scanner;
        scanner.at_digit() || ahead.eat_str("CB") || eat_sign(&mut ahead)
    }

    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if scanner.eat_str("CB") || eat_sign(scanner) {
            scanner.skip_space();
        }
        let at = scanner.at();
        let nanometres = tri!(Exact::scan_mm(scanner, Field::Bore, 20, 400)).nm();
        let mut ahead = *scanner;
        ahead.skip_space();
        if ahead.eat_word("MM") {
            *scanner = ahead;
        }
        match NonZeroU32::new(nanometres as u32) {
            Some(nanometres) => Ok(Self(nanometres)),
            None => Err(scanner.range(Field::Bore, at)),
        }
    }

    /// With its word before or behind: `bore 57.1`, `57.1 mm centre bore`.
    pub(super) const fn scan_phrase(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut ahead = *scanner;
        let named = phrase::eat_bore_word(&mut ahead);
        let (true, Ok(bore)) = (ahead.at_digit(), Self::scan(&mut ahead)) else { return None };
        if !named && !phrase::eat_bore_word_behind(&mut ahead) {
            return None;
        }
        *scanner = ahead;
        Some(bore)
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.exact().write_mm(text);
    }

    const fn exact(self) -> Exact {
        Exact::from_nm(self.nanometres() as i32)
    }

    /// Whether it is so far inside a bolt circle that it can be no second one: up to 0.86 of it. Common practice, no
    /// source: trucks have the most, 281 mm in 335.
    pub(crate) const fn is_inside(self, circle: BoltCircle) -> bool {
        self.nanometres() as u64 * 100 <= circle.nanometres() as u64 * 86
    }

    /// The diameter in nanometres.
    pub(crate) const fn nanometres(self) -> u32 {
        self.0.get()
    }

    /// The diameter as a length.
    pub const fn length(&self) -> Length {
        self.exact().length()
    }
}

/// Steps over the sign of a diameter, or the letter that stands for it.
const fn eat_sign(scanner: &mut Scanner<'_>) -> bool {
    scanner.eat_str("\u{d8}") || scanner.eat_str("\u{2300}")
}

designation!(Bore in "beadseat::wheel", "cb57.10" => "57.1", wrong "12");

exact_length! {
    /// The diameter of the spigot, the collar of the hub that a wheel is centred on; to the nanometre, so
    /// that it can equal a [`Bore`].
    ///
    /// `Ord` is by diameter. In files it is a number of millimetres.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Spigot};
    /// let spigot = Spigot::from_length(mm(57.1))?;
    /// assert_eq!(spigot.play_in("57.1".parse()?), mm(0.0));
    /// assert_eq!(spigot.play_in("66.6".parse()?), mm(9.5));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    Spigot = "spigot_mm", 20 to 400, in "beadseat::wheel"
}

impl Spigot {
    pub(crate) const fn nanometres(self) -> i32 {
        self.0.nm()
    }

    /// The bore that it fills; none where no wheel has such a one.
    pub(crate) fn bore(self) -> Option<Bore> {
        let mut text = Text::new();
        Bore::parse(text.millionths(i64::from(self.nanometres())).as_str()).ok()
    }

    /// What a bore is larger than the spigot; negative if it cannot go on.
    pub const fn play_in(self, bore: Bore) -> Length {
        Exact::from_nm(bore.exact().nm() - self.0.nm()).length()
    }
}
