//! The grammar of a metric tire as general-purpose libraries read it: canonical and lenient spellings,
//! the same ranges, but only accepted or refused: no kind, field or place of an error.

pub(crate) mod combinators;
pub(crate) mod expression;

use beadseat::tire::{LoadVersion, Tire};

/// What both baselines read.
#[derive(Debug, PartialEq)]
pub(crate) struct Parts {
    pub(crate) class: Class,
    pub(crate) width_mm: u16,
    pub(crate) aspect: u8,
    pub(crate) structure: Structure,
    pub(crate) rim_tenths: u16,
    pub(crate) service: Option<Service>,
    pub(crate) version: Option<LoadVersion>,
    pub(crate) ply_rating: Option<u8>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Class {
    Passenger,
    PMetric,
    HighLoad,
    LightTruck,
    Commercial,
    Truck,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Structure {
    Radial { speed: Option<u8>, run_flat: bool },
    Diagonal,
    BiasBelted,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Service {
    pub(crate) single: u16,
    pub(crate) dual: Option<u16>,
    /// The letter, its digit where it has one, and whether it stood in brackets.
    pub(crate) speed: (u8, Option<u8>, bool),
}

impl Class {
    fn is_passenger(self) -> bool {
        matches!(self, Self::Passenger | Self::PMetric | Self::HighLoad)
    }
}

/// The class a prefix, a suffix and the rim stand for.
fn class(prefix: Option<Class>, suffix: Option<Class>, rim_tenths: u16) -> Option<Class> {
    match (prefix, suffix) {
        (None, None) if rim_tenths % 10 == 0 => Some(Class::Passenger),
        (None, None) => Some(Class::Truck),
        (Some(class), None) | (None, Some(class)) => Some(class),
        (Some(_), Some(_)) => None,
    }
}

fn is_width(mm: u16) -> bool {
    (95..=495).contains(&mm) && mm % 5 == 0
}

fn is_aspect(percent: u16) -> bool {
    (20..=95).contains(&percent) && percent % 5 == 0
}

fn is_rim(tenths: u16) -> bool {
    matches!(tenths, 80..=260 | 280 | 300) && tenths % 10 == 0
        || matches!(tenths, 145 | 165 | 175 | 195 | 205 | 225 | 245)
}

fn is_service(single: u16, dual: Option<u16>) -> bool {
    single <= 279 && dual.is_none_or(|dual| dual <= single)
}

/// The ply rating a load range letter stands for.
fn ply_rating_of(letter: u8) -> Option<u8> {
    b"ABCDEFGHJLMN".iter().zip((2..).step_by(2)).find_map(|(&l, ply)| (l == letter).then_some(ply))
}

fn is_ply_rating(ply: u16) -> bool {
    (2..=24).contains(&ply) && ply % 2 == 0
}

impl Parts {
    /// Marks of load belong to one kind of size or the other.
    fn checked(mut self) -> Option<Self> {
        if self.class.is_passenger() && self.ply_rating.is_some()
            || !self.class.is_passenger() && self.version.is_some()
        {
            return None;
        }
        if self.version == Some(LoadVersion::High) {
            if self.class == Class::PMetric {
                return None;
            }
            self.class = Class::HighLoad;
        }
        Some(self)
    }
}

/// Texts over which all three must agree.
const TEXTS: &[&str] = &[
    "205/55R16 91V",
    "205/55R16",
    " 205/55r16 91v\n",
    "205/55 zr 16  91 v",
    "205 / 55 R 16 91 V",
    "205 55R16 91V",
    "205\u{a0}/\u{a0}55R16\u{202f}91V",
    "205/55R16 91V extra load",
    "205/55R16 Reinforced 91V",
    "205/55R16 91VXL",
    "225/45ZR17 (94Y) XL",
    "225/45R17 94(Y)",
    "P205/55HR16 91H",
    "p 205/55 R16 LL",
    "LT245/75R17 121/118S LRE",
    "245/75R17 LT 10 ply 121/118 s",
    "lt245/75r17 load range e",
    "195/70R15C 104/102R 8PR",
    "295/80R22.5 152/148M",
    "295/80R22,50 152/148 m",
    "195/65-15 91S",
    "195/65B15 91A8",
    "HL245/40R19 101Y XL",
    "245/40RF19 98Y HL",
    "",
    "   ",
    "205/55R16 91I",
    "205/55R16 91V 91V",
    "205/55R16 91V?",
    "205/55R16 280V",
    "206/55R16 91V",
    "90/55R16 91V",
    "500/55R16",
    "205/57R16 91V",
    "205/100R16",
    "205/55X16 91V",
    "205/55R27 91V",
    "205/55R16.25",
    "205/55R 91V",
    "205/55R1691V",
    "20555R16 91V",
    "205/55R16 (94Y",
    "205/55R16 (94V)",
    "205/55R16 91/94V",
    "LT245/75R17 XL",
    "205/55R16 LRE",
    "LT245/75R17 LRI",
    "P195/70R15C",
    "205/55R16 91V X",
];

/// What beadseat read, in the same shape; the service description and the like are compared by being
/// there at all and by the load, which the types of the crate give as numbers.
fn agrees(parts: Option<&Parts>, tire: Option<&Tire>) -> bool {
    match (parts, tire) {
        (None, None) => true,
        (Some(parts), Some(tire)) => {
            parts.rim_tenths == tire.size().rim_diameter().tenths()
                && parts.service.map(|s| (s.single, s.dual))
                    == tire.service().map(|s| (s.single().number(), s.dual().map(|dual| dual.number())))
                && parts.ply_rating == tire.load_range().map(|range| range.ply_rating())
        }
        _ => false,
    }
}

/// # Panics
/// Where a baseline accepts what beadseat refuses, refuses what it accepts, or reads something else.
pub(crate) fn assert_agreement(expression: &expression::Expression) {
    for text in TEXTS {
        let tire = Tire::parse(text).ok();
        let by_expression = expression.read(text);
        let by_combinators = combinators::read(text);
        assert!(agrees(by_expression.as_ref(), tire.as_ref()), "{text:?}: {tire:?}, {by_expression:?}");
        assert!(agrees(by_combinators.as_ref(), tire.as_ref()), "{text:?}: {tire:?}, {by_combinators:?}");
        assert_eq!(by_expression, by_combinators, "{text:?}");
    }
}
