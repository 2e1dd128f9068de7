//! Service description: load index and speed symbol.

use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::tire::{Formation, LoadIndex, SpeedSymbol};

/// What a tire may carry and how fast: `91V`, `104/102R`, `(94Y)`, `(58W)`.
///
/// # Syntax
/// ```text
/// service = index [ "/" index ] symbol | "(" index [ "/" index ] ( "Y" | "W" ) ")"
/// ```
/// The second index is the load of each tire of a dual pair and is never above the first. `94(Y)` is
/// read too; the canonical form brackets the whole. `Ord` is by load alone, by load in a pair (without one first),
/// and by speed.
///
/// ```
/// use beadseat::tire::{ServiceDescription, SpeedSymbol};
/// let s: ServiceDescription = "104/102 r".parse()?;
/// assert_eq!(s.dual().map(|li| li.number()), Some(102));
/// assert_eq!(s.to_string(), "104/102R");
/// assert_eq!("94(Y)".parse::<ServiceDescription>()?.to_string(), "(94Y)");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ServiceDescription {
    single: LoadIndex,
    dual: Option<LoadIndex>,
    speed: SpeedSymbol,
}

impl ServiceDescription {
    /// `None` if the dual index is above the single one.
    ///
    /// ```
    /// use beadseat::tire::{LoadIndex, ServiceDescription, SpeedSymbol};
    /// let (li91, li94) = (LoadIndex::parse("91")?, LoadIndex::parse("94")?);
    /// assert!(ServiceDescription::new(li91, None, SpeedSymbol::V).is_some());
    /// assert!(ServiceDescription::new(li91, Some(li94), SpeedSymbol::V).is_none());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn new(single: LoadIndex, dual: Option<LoadIndex>, speed: SpeedSymbol) -> Option<Self> {
        match dual {
            Some(dual) if dual.number() > single.number() => None,
            _ => Some(Self { single, dual, speed }),
        }
    }

    #[inline(always)]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let bracket = scanner.eat(b'(');
        let single = tri!(LoadIndex::scan(scanner, Field::LoadIndex));
        let mut dual = None;
        if scanner.eat(b'/') {
            let start = scanner.at();
            let second = tri!(LoadIndex::scan(scanner, Field::DualLoadIndex));
            if second.number() > single.number() {
                return Err(scanner.range(Field::DualLoadIndex, start));
            }
            dual = Some(second);
        }
        scanner.skip_space();
        let start = scanner.at();
        if !bracket {
            if let Some(speed) = SpeedSymbol::scan_bare(scanner) {
                return Ok(Self { single, dual, speed });
            }
            if !scanner.eat(b'(') {
                return Err(scanner.missing(Field::SpeedSymbol));
            }
        }
        match SpeedSymbol::scan_bare(scanner) {
            Some(symbol) => match symbol.bracketed() {
                Some(speed) if scanner.eat(b')') => Ok(Self { single, dual, speed }),
                Some(_) => Err(scanner.missing(Field::SpeedSymbol)),
                None => Err(scanner.range(Field::SpeedSymbol, start)),
            },
            None => Err(scanner.missing(Field::SpeedSymbol)),
        }
    }

    #[inline]
    pub(crate) fn write(self, text: &mut Text) {
        let bracket = self.speed.is_open_ended();
        if bracket {
            text.byte(b'(');
        }
        self.single.write(text);
        if let Some(dual) = self.dual {
            text.byte(b'/');
            dual.write(text);
        }
        text.str(self.speed.letter());
        if bracket {
            text.byte(b')');
        }
    }

    /// Load index of a tire fitted alone.
    pub const fn single(self) -> LoadIndex {
        self.single
    }

    /// Load index of each tire of a pair fitted side by side, where the tire is made for it.
    pub const fn dual(self) -> Option<LoadIndex> {
        self.dual
    }

    /// The load index that applies to a tire fitted so.
    pub(crate) const fn index(self, formation: Formation) -> Option<LoadIndex> {
        match formation {
            Formation::Single => Some(self.single),
            Formation::Dual => self.dual,
        }
    }

    /// The speed symbol of the description.
    pub const fn speed(self) -> SpeedSymbol {
        self.speed
    }
}

designation!(ServiceDescription in "beadseat::tire", "121/118 s" => "121/118S", wrong "91/94V");
