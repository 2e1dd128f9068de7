//! The grammar as one compiled regular expression with captures, and checks of the numbers.

use super::{Class, Parts, Service, Structure};
use beadseat::tire::LoadVersion;
use regex::{Captures, Regex};

pub(crate) struct Expression(Regex);

/// `_` in a pattern is any white space that is read, ` _` at least some.
const SPACE: &str = r"(?u:[ \t\n\r\x{a0}\x{2009}\x{202f}])";

/// Five captures: bracket, single index, dual index, symbol, bracket.
const SERVICE: &str = r"(?:_(\()?(\d{1,4})(?:/(\d{1,4}))?_([B-HJ-NP-WY]|A[1-8]|\(Y\))(\))?)?";

// The numbers of the captures.
const PREFIX: usize = 1;
const WIDTH: usize = 2;
const STROKE: usize = 3;
const ASPECT: usize = 4;
const STRUCTURE: usize = 5;
const RIM: usize = 6;
const TENTH: usize = 7;
const SUFFIX: usize = 8;
const FIRST_SERVICE: usize = 9;
const VERSION: usize = 14;
const PLY: usize = 15;
const LETTER: usize = 16;
const SECOND_SERVICE: usize = 17;

impl Expression {
    pub(crate) fn compile() -> Result<Self, regex::Error> {
        let pattern = [
            r"(?i-u)^_(P|LT|HL)?_(\d{1,4})(_(?:/_)?)(\d{1,4})_([SHVZ]?RF?|[DB\-])_",
            r"(\d{1,4})(?:[.,](\d)0*)?(?:_(C|LT)\b)?",
            SERVICE,
            r"(?:_(?:(XL|LL|HL|REINFORCED|EXTRA _LOAD)",
            r"|(\d{1,4})_(?:PR|PLY)\b|(?:LR|LOAD _RANGE _)([A-HJLMN])\b))?",
            SERVICE,
            r"_$",
        ]
        .concat();
        Regex::new(&pattern.replace(" _", &format!("{SPACE}+")).replace('_', &format!("{SPACE}*"))).map(Self)
    }

    pub(crate) fn read(&self, text: &str) -> Option<Parts> {
        let found = self.0.captures(text)?;
        let width_mm = number(&found, WIDTH)?;
        let aspect = number(&found, ASPECT)?;
        let rim_tenths = 10 * number(&found, RIM)? + number(&found, TENTH).unwrap_or(0);
        if letters(&found, STROKE).is_empty()
            || [FIRST_SERVICE + 1, PLY, SECOND_SERVICE + 1].iter().any(|&at| is_split(&found, at, text))
            || !super::is_width(width_mm)
            || !super::is_aspect(aspect)
            || !super::is_rim(rim_tenths)
        {
            return None;
        }
        let prefix = match letters(&found, PREFIX) {
            [] => None,
            [b'P' | b'p'] => Some(Class::PMetric),
            [b'L' | b'l', ..] => Some(Class::LightTruck),
            _ => Some(Class::HighLoad),
        };
        let suffix = match letters(&found, SUFFIX) {
            [] => None,
            [b'C' | b'c'] => Some(Class::Commercial),
            _ => Some(Class::LightTruck),
        };
        let first = service(&found, FIRST_SERVICE)?;
        let second = service(&found, SECOND_SERVICE)?;
        if first.is_some() && second.is_some() {
            return None;
        }
        let version = match letters(&found, VERSION) {
            [] => None,
            [b'L' | b'l', ..] => Some(LoadVersion::Light),
            [b'H' | b'h', ..] => Some(LoadVersion::High),
            _ => Some(LoadVersion::Extra),
        };
        let ply_rating = match (number(&found, PLY), letters(&found, LETTER)) {
            (Some(ply), _) if super::is_ply_rating(ply) => Some(ply as u8),
            (Some(_), _) => return None,
            (None, [letter]) => super::ply_rating_of(letter.to_ascii_uppercase()),
            (None, _) => None,
        };
        Parts {
            class: super::class(prefix, suffix, rim_tenths)?,
            width_mm,
            aspect: aspect as u8,
            structure: structure(letters(&found, STRUCTURE)),
            rim_tenths,
            service: first.or(second),
            version,
            ply_rating,
        }
        .checked()
    }
}

fn number(found: &Captures<'_>, at: usize) -> Option<u16> {
    found.get(at)?.as_str().parse().ok()
}

/// Whether a number begins among the digits of the one before it: `R161V` is not `R16 1V`.
fn is_split(found: &Captures<'_>, at: usize, text: &str) -> bool {
    found.get(at).is_some_and(|part| text.as_bytes()[part.start() - 1].is_ascii_digit())
}

fn letters<'t>(found: &Captures<'t>, at: usize) -> &'t [u8] {
    found.get(at).map_or(&[], |part| part.as_str().as_bytes())
}

fn structure(letters: &[u8]) -> Structure {
    match letters {
        [b'-' | b'D' | b'd'] => Structure::Diagonal,
        [b'B' | b'b'] => Structure::BiasBelted,
        _ => {
            let speed = Some(letters[0].to_ascii_uppercase()).filter(|&letter| letter != b'R');
            Structure::Radial { speed, run_flat: matches!(letters, [.., b'F' | b'f']) }
        }
    }
}

/// `None` if it is wrong, `Some(None)` if it is absent.
fn service(found: &Captures<'_>, at: usize) -> Option<Option<Service>> {
    let Some(single) = number(found, at + 1) else { return Some(None) };
    let dual = number(found, at + 2);
    let outer = !letters(found, at).is_empty();
    let speed = match letters(found, at + 3) {
        [b'(', ..] if outer => return None,
        [b'(', ..] => (b'Y', None, true),
        [letter] => (letter.to_ascii_uppercase(), None, outer),
        [_, digit, ..] => (b'A', Some(*digit), outer),
        [] => return None,
    };
    if outer == letters(found, at + 4).is_empty() || (outer && speed.0 != b'Y') {
        return None;
    }
    super::is_service(single, dual).then_some(Some(Service { single, dual, speed }))
}
