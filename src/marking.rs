//! Whatever was read off a tire or a wheel.

use crate::text::{ParseError, Text};
use crate::tire::{LoadIndex, SpeedSymbol, Tire};
use crate::wheel::{BoltCircle, Thread, Wheel};

/// A marking of any kind, recognised by its form.
///
/// # Recognition
/// A text is read in every way there is. Where two ways succeed, a rule decides:
///
/// * `7x16` could be seven holes on a 16 in circle. A text that is a wheel size and a bolt circle is a
///   wheel if it names a rim diameter of 10 in or more, else a bolt circle: `7x16` and `5x10` are
///   wheels, `8x6.5` is a bolt circle.
///
/// Where none succeeds, the error is that of the reading that came furthest.
///
/// ```
/// use beadseat::Marking;
/// for (text, kind) in [
///     ("205/55R16 91V", "tire"),
///     ("7Jx16 H2 ET45", "wheel"),
///     ("7x16", "wheel"),
///     ("8x6.5", "bolt_circle"),
///     ("5x114.3", "bolt_circle"),
///     ("M14x1.5", "thread"),
///     ("91", "load_index"),
///     ("V", "speed_symbol"),
/// ] {
///     assert_eq!(text.parse::<Marking>()?.kind(), kind, "{text}");
/// }
/// let error = "205/55R31".parse::<Marking>().unwrap_err();
/// assert_eq!(error.span(), 7..9);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Marking {
    /// A tire size, with what stands beside it.
    Tire(Tire),
    /// A wheel size, with what stands beside it.
    Wheel(Wheel),
    /// A bolt circle alone.
    BoltCircle(BoltCircle),
    /// A thread.
    Thread(Thread),
    /// A load index alone.
    LoadIndex(LoadIndex),
    /// A speed symbol alone.
    SpeedSymbol(SpeedSymbol),
}

/// From this code on, what could be a rim diameter is one; in tenths of an inch.
const SURELY_A_RIM: u16 = 100;

impl Marking {
    /// Reads a marking.
    ///
    /// # Errors
    /// That of the reading which came furthest.
    ///
    /// ```
    /// use beadseat::Marking;
    /// assert_eq!(Marking::parse("6x139,7")?.to_string(), "6x139.7");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn parse(text: &str) -> Result<Self, ParseError> {
        let wheel = Wheel::parse(text);
        let holes = BoltCircle::parse(text);
        let mut furthest = match (wheel, holes) {
            (Ok(wheel), Ok(holes)) => {
                return Ok(if wheel.size().diameter().tenths() >= SURELY_A_RIM {
                    Self::Wheel(wheel)
                } else {
                    Self::BoltCircle(holes)
                });
            }
            (Ok(wheel), Err(_)) => return Ok(Self::Wheel(wheel)),
            (Err(_), Ok(holes)) => return Ok(Self::BoltCircle(holes)),
            (Err(a), Err(b)) => further(a, b),
        };
        match LoadIndex::parse(text) {
            Ok(index) => return Ok(Self::LoadIndex(index)),
            Err(error) => furthest = further(furthest, error),
        }
        match SpeedSymbol::parse(text) {
            Ok(symbol) => return Ok(Self::SpeedSymbol(symbol)),
            Err(error) => furthest = further(furthest, error),
        }
        match Thread::parse(text) {
            Ok(thread) => return Ok(Self::Thread(thread)),
            Err(error) => furthest = further(furthest, error),
        }
        match Tire::parse(text) {
            Ok(tire) => Ok(Self::Tire(tire)),
            Err(error) => Err(further(furthest, error)),
        }
    }

    /// A stable name of the kind: `tire`, `wheel`, `bolt_circle`, `thread`, `load_index`,
    /// `speed_symbol`.
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::Tire(_) => "tire",
            Self::Wheel(_) => "wheel",
            Self::BoltCircle(_) => "bolt_circle",
            Self::Thread(_) => "thread",
            Self::LoadIndex(_) => "load_index",
            Self::SpeedSymbol(_) => "speed_symbol",
        }
    }

    fn write(&self, text: &mut Text) {
        match self {
            Self::Tire(x) => x.write(text),
            Self::Wheel(x) => x.write(text),
            Self::BoltCircle(x) => x.write(text),
            Self::Thread(x) => x.write(text),
            Self::LoadIndex(x) => x.write(text),
            Self::SpeedSymbol(x) => x.write(text),
        }
    }
}

/// The error that begins later; the second if they begin together.
const fn further(a: ParseError, b: ParseError) -> ParseError {
    if a.span().start > b.span().start { a } else { b }
}

impl core::str::FromStr for Marking {
    type Err = ParseError;
    fn from_str(text: &str) -> Result<Self, ParseError> {
        Self::parse(text)
    }
}

impl core::fmt::Display for Marking {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let mut text = Text::new();
        self.write(&mut text);
        f.pad(text.as_str())
    }
}
