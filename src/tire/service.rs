//! Service description: load index and speed symbol.

use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::tire::load_version::are_plies;
use crate::tire::{Formation, LoadIndex, SpeedSymbol};

/// What a tire may carry and how fast: `91V`, `104/102R`, `(94Y)`, `(58W)`.
///
/// # Syntax
/// ```text
/// service = index [ "/" index ] symbol | "(" index [ "/" index ] ( "Y" | "W" ) ")"
///         | index symbol "/" [ index ] symbol
/// ```
/// The second index is the load of each tire of a dual pair and is never above the first. `94(Y)` is
/// read too; the canonical form brackets the whole.
///
/// A tire of tractors may have two loads at two speeds, `142A8/139B`, with symbols to `G`; the faster goes with no more
/// load, and where the load is the same, its index may be left away: `162A8/B`. What asks for load and speed gets those
/// that stand first. Which symbols: common practice, no source.
///
/// `Ord` is by load alone, by the second load (without one first), by speed and by the second speed.
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
    /// In a pair, or where there is a second speed, at that.
    second: Option<LoadIndex>,
    speed: SpeedSymbol,
    second_speed: Option<SpeedSymbol>,
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
            _ => Some(Self { single, second: dual, speed, second_speed: None }),
        }
    }

    #[inline(always)]
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let bracket = scanner.eat(b'(');
        let single = tri!(LoadIndex::scan(scanner, Field::LoadIndex));
        Self::scan_behind(single, bracket, scanner)
    }

    /// The same; none where the number is one of plies.
    #[inline(always)]
    pub(super) const fn scan_but_plies(scanner: &mut Scanner<'_>) -> Result<Option<Self>, ParseError> {
        let at = scanner.at();
        let bracket = scanner.eat(b'(');
        let single = LoadIndex::scan(scanner, Field::LoadIndex);
        if !bracket && are_plies(scanner) {
            scanner.back_to(at);
            return Ok(None);
        }
        Ok(Some(tri!(Self::scan_behind(tri!(single), bracket, scanner))))
    }

    /// What stands behind the first index.
    #[inline(always)]
    const fn scan_behind(
        single: LoadIndex,
        bracket: bool,
        scanner: &mut Scanner<'_>,
    ) -> Result<Self, ParseError> {
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
                let service = Self { single, second: dual, speed, second_speed: None };
                if scanner.byte() == b'/' && service.can_have_second_speed() {
                    // A copy goes there by reference, so that the scanner itself need not be in memory.
                    let mut behind = *scanner;
                    let service = service.scan_second(&mut behind);
                    *scanner = behind;
                    return service;
                }
                return Ok(service);
            }
            if !scanner.eat(b'(') {
                return Err(scanner.missing(Field::SpeedSymbol));
            }
        }
        match SpeedSymbol::scan_bare(scanner) {
            Some(symbol) => match symbol.bracketed() {
                Some(speed) if scanner.eat(b')') => {
                    Ok(Self { single, second: dual, speed, second_speed: None })
                }
                Some(_) => Err(scanner.missing(Field::SpeedSymbol)),
                None => Err(scanner.range(Field::SpeedSymbol, start)),
            },
            None => Err(scanner.missing(Field::SpeedSymbol)),
        }
    }

    const fn can_have_second_speed(self) -> bool {
        self.second.is_none() && self.speed as u8 <= SpeedSymbol::G as u8
    }

    /// The other load and speed behind a stroke, if it is one.
    #[cold]
    #[inline(never)]
    const fn scan_second(self, scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let mut ahead = *scanner;
        ahead.step(1);
        ahead.skip_space();
        let at = ahead.at();
        let index = if ahead.at_digit() {
            tri!(LoadIndex::scan(&mut ahead, Field::DualLoadIndex))
        } else {
            self.single
        };
        let index_error = ahead.range(Field::DualLoadIndex, at);
        ahead.skip_space();
        let at = ahead.at();
        let speed = match SpeedSymbol::scan_bare(&mut ahead) {
            Some(speed) if speed as u8 <= SpeedSymbol::G as u8 && speed as u8 != self.speed as u8 => speed,
            Some(_) => return Err(ahead.range(Field::SpeedSymbol, at)),
            None => return Err(ahead.missing(Field::SpeedSymbol)),
        };
        let (slow, fast) =
            if (self.speed as u8) < speed as u8 { (self.single, index) } else { (index, self.single) };
        if fast.number() > slow.number() {
            return Err(index_error);
        }
        *scanner = ahead;
        Ok(Self { second: Some(index), second_speed: Some(speed), ..self })
    }

    #[inline]
    pub(crate) fn write(self, text: &mut Text) {
        let bracket = self.speed.is_open_ended();
        if bracket {
            text.byte(b'(');
        }
        self.single.write(text);
        let Some(second) = self.second else {
            text.str(self.speed.letter());
            if bracket {
                text.byte(b')');
            }
            return;
        };
        if self.second_speed.is_some() {
            text.str(self.speed.letter());
        }
        text.byte(b'/');
        second.write(text);
        text.str(self.second_speed.unwrap_or(self.speed).letter());
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
        if self.second_speed.is_none() { self.second } else { None }
    }

    /// The other load of a tire of tractors, and the speed at which it holds.
    ///
    /// ```
    /// use beadseat::{tire::ServiceDescription, units::kmh};
    /// let service: ServiceDescription = "162A8/B".parse()?;
    /// assert_eq!(service.to_string(), "162A8/162B");
    /// assert_eq!(service.second().map(|(index, speed)| (index.number(), speed.speed())), Some((162, kmh(50.0))));
    /// assert_eq!(service.dual(), None);
    /// assert!("139A8/142B".parse::<ServiceDescription>().is_err());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn second(self) -> Option<(LoadIndex, SpeedSymbol)> {
        match (self.second, self.second_speed) {
            (Some(index), Some(speed)) => Some((index, speed)),
            _ => None,
        }
    }

    /// The load index that applies to a tire fitted so.
    pub(crate) const fn index(self, formation: Formation) -> Option<LoadIndex> {
        match formation {
            Formation::Single => Some(self.single),
            Formation::Dual => self.dual(),
        }
    }

    /// The speed symbol of the description.
    pub const fn speed(self) -> SpeedSymbol {
        self.speed
    }
}

designation!(ServiceDescription in "beadseat::tire", "121/118 s" => "121/118S", wrong "91/94V");
