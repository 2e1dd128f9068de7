//! The grammar in a parser combinator library.

use super::{Class, Parts, Service, Structure};
use beadseat::tire::LoadVersion;
use winnow::Result;
use winnow::ascii::{Caseless, digit1};
use winnow::combinator::{alt, delimited, dispatch, empty, fail, not, opt, preceded, terminated};
use winnow::prelude::*;
use winnow::stream::AsChar;
use winnow::token::{any, one_of, take_while};

pub(crate) fn read(text: &str) -> Option<Parts> {
    tire.parse(text).ok()?.checked()
}

fn tire(input: &mut &str) -> Result<Parts> {
    let prefix = opt(preceded(space, prefix)).parse_next(input)?;
    let width_mm = preceded(space, number.verify(|&mm| super::is_width(mm))).parse_next(input)?;
    alt(((space, '/', space).void(), space1)).parse_next(input)?;
    let aspect = number.verify(|&percent| super::is_aspect(percent)).parse_next(input)?;
    let structure = preceded(space, structure).parse_next(input)?;
    let rim_tenths = preceded(space, rim.verify(|&tenths| super::is_rim(tenths))).parse_next(input)?;
    let suffix = opt(preceded(space, suffix)).parse_next(input)?;
    let class = super::class(prefix, suffix, rim_tenths);
    let before = opt(preceded(space, service)).parse_next(input)?;
    let mark = opt(preceded(space, mark)).parse_next(input)?;
    let behind =
        opt(preceded(space, service)).verify(|s| before.is_none() || s.is_none()).parse_next(input)?;
    space.parse_next(input)?;
    let (version, ply_rating) = match mark {
        Some(Mark::Version(version)) => (Some(version), None),
        Some(Mark::Range(ply_rating)) => (None, Some(ply_rating)),
        None => (None, None),
    };
    match class {
        Some(class) => Ok(Parts {
            class,
            width_mm,
            aspect: aspect as u8,
            structure,
            rim_tenths,
            service: before.or(behind),
            version,
            ply_rating,
        }),
        None => fail.parse_next(input),
    }
}

fn space(input: &mut &str) -> Result<()> {
    take_while(0.., [' ', '\t', '\n', '\r', '\u{a0}', '\u{2009}', '\u{202f}']).void().parse_next(input)
}

fn space1(input: &mut &str) -> Result<()> {
    take_while(1.., [' ', '\t', '\n', '\r', '\u{a0}', '\u{2009}', '\u{202f}']).void().parse_next(input)
}

/// A whole number of at most four digits.
fn number(input: &mut &str) -> Result<u16> {
    digit1.verify(|digits: &str| digits.len() <= 4).parse_to().parse_next(input)
}

fn letter(input: &mut &str) -> Result<char> {
    any.map(|letter: char| letter.to_ascii_uppercase()).parse_next(input)
}

fn prefix(input: &mut &str) -> Result<Class> {
    alt((
        one_of(['P', 'p']).value(Class::PMetric),
        Caseless("LT").value(Class::LightTruck),
        Caseless("HL").value(Class::HighLoad),
    ))
    .parse_next(input)
}

fn suffix(input: &mut &str) -> Result<Class> {
    terminated(
        alt((one_of(['C', 'c']).value(Class::Commercial), Caseless("LT").value(Class::LightTruck))),
        not(one_of(AsChar::is_alphanum)),
    )
    .parse_next(input)
}

fn structure(input: &mut &str) -> Result<Structure> {
    dispatch! { letter;
        'R' => run_flat.map(|run_flat| Structure::Radial { speed: None, run_flat }),
        speed @ ('S' | 'H' | 'V' | 'Z') => preceded(one_of(['R', 'r']), run_flat)
            .map(move |run_flat| Structure::Radial { speed: Some(speed as u8), run_flat }),
        'D' | '-' => empty.value(Structure::Diagonal),
        'B' => empty.value(Structure::BiasBelted),
        _ => fail,
    }
    .parse_next(input)
}

fn run_flat(input: &mut &str) -> Result<bool> {
    opt(one_of(['F', 'f'])).map(|f| f.is_some()).parse_next(input)
}

fn rim(input: &mut &str) -> Result<u16> {
    let whole = number.parse_next(input)?;
    let tenth = opt(delimited(
        one_of(['.', ',']),
        one_of(AsChar::is_dec_digit).map(|digit: char| digit as u16 - u16::from(b'0')),
        (take_while(0.., '0'), not(one_of(AsChar::is_dec_digit))),
    ))
    .parse_next(input)?;
    Ok(10 * whole + tenth.unwrap_or(0))
}

fn service(input: &mut &str) -> Result<Service> {
    let outer = opt('(').parse_next(input)?.is_some();
    let single = number.parse_next(input)?;
    let dual =
        opt(preceded('/', number)).verify(|&dual| super::is_service(single, dual)).parse_next(input)?;
    space.parse_next(input)?;
    let speed = if outer {
        terminated(one_of(['Y', 'y']), ')').value((b'Y', None, true)).parse_next(input)?
    } else {
        alt((symbol, delimited('(', one_of(['Y', 'y']), ')').value((b'Y', None, true)))).parse_next(input)?
    };
    Ok(Service { single, dual, speed })
}

fn symbol(input: &mut &str) -> Result<(u8, Option<u8>, bool)> {
    dispatch! { letter;
        'A' => one_of('1'..='8').map(|digit| (b'A', Some(digit as u8), false)),
        // `10 PR` and `10 PLY` are ply ratings.
        'P' => not(alt((Caseless("R"), Caseless("LY")))).value((b'P', None, false)),
        letter @ ('B'..='H' | 'J'..='N' | 'Q'..='W' | 'Y') => empty.value((letter as u8, None, false)),
        _ => fail,
    }
    .parse_next(input)
}

#[derive(Clone)]
enum Mark {
    Version(LoadVersion),
    Range(u8),
}

fn mark(input: &mut &str) -> Result<Mark> {
    alt((range.map(Mark::Range), version.map(Mark::Version))).parse_next(input)
}

fn version(input: &mut &str) -> Result<LoadVersion> {
    terminated(
        alt((
            Caseless("XL").value(LoadVersion::Extra),
            Caseless("LL").value(LoadVersion::Light),
            Caseless("HL").value(LoadVersion::High),
            (Caseless("EXTRA"), space1, Caseless("LOAD")).value(LoadVersion::Extra),
            Caseless("REINFORCED").value(LoadVersion::Extra),
        )),
        not(one_of(AsChar::is_alpha)),
    )
    .parse_next(input)
}

fn range(input: &mut &str) -> Result<u8> {
    alt((
        terminated(
            number.verify(|&ply| super::is_ply_rating(ply)).map(|ply| ply as u8),
            (space, alt((Caseless("PR"), Caseless("PLY"))), not(one_of(AsChar::is_alpha))),
        ),
        delimited(
            alt((Caseless("LR").void(), (Caseless("LOAD"), space1, Caseless("RANGE"), space).void())),
            letter.verify_map(|letter| super::ply_rating_of(letter as u8)),
            not(one_of(AsChar::is_alphanum)),
        ),
    ))
    .parse_next(input)
}
