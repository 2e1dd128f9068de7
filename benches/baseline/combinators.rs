//! The grammar in a parser combinator library, the fast way: over bytes, and without a word about what is
//! wrong.

use super::{Class, Parts, Service, Structure};
use beadseat::tire::LoadVersion;
use winnow::ascii::{Caseless, digit1};
use winnow::combinator::{alt, delimited, dispatch, empty, fail, not, opt, preceded, repeat, terminated};
use winnow::error::EmptyError;
use winnow::prelude::*;
use winnow::stream::AsChar;
use winnow::token::{any, one_of, take_while};

type Result<T> = core::result::Result<T, EmptyError>;

pub(crate) fn read(text: &str) -> Option<Parts> {
    tire.parse(text.as_bytes()).ok()?.checked()
}

fn tire(input: &mut &[u8]) -> Result<Parts> {
    let prefix = opt(preceded(space, prefix)).parse_next(input)?;
    let width_mm = preceded(space, number.verify(|&mm| super::is_width(mm))).parse_next(input)?;
    alt(((space, b'/', space).void(), space1)).parse_next(input)?;
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

fn space(input: &mut &[u8]) -> Result<()> {
    take_while(0.., is_space).void().parse_next(input)?;
    if input.first().is_none_or(|byte| byte.is_ascii()) {
        return Ok(());
    }
    repeat(0.., alt((one_of(is_space).void(), wide_space))).parse_next(input)
}

fn space1(input: &mut &[u8]) -> Result<()> {
    space.take().verify(|spaces: &[u8]| !spaces.is_empty()).void().parse_next(input)
}

fn is_space(byte: u8) -> bool {
    matches!(byte, b' ' | b'\t' | b'\n' | b'\r')
}

/// No-break, thin and narrow no-break space.
fn wide_space(input: &mut &[u8]) -> Result<()> {
    alt(("\u{a0}", "\u{2009}", "\u{202f}")).void().parse_next(input)
}

/// A whole number of at most four digits.
fn number(input: &mut &[u8]) -> Result<u16> {
    digit1
        .verify(|digits: &[u8]| digits.len() <= 4)
        .map(|digits: &[u8]| digits.iter().fold(0, |number, digit| 10 * number + u16::from(digit - b'0')))
        .parse_next(input)
}

fn letter(input: &mut &[u8]) -> Result<u8> {
    any.map(|letter: u8| letter.to_ascii_uppercase()).parse_next(input)
}

fn prefix(input: &mut &[u8]) -> Result<Class> {
    alt((
        one_of([b'P', b'p']).value(Class::PMetric),
        Caseless("LT").value(Class::LightTruck),
        Caseless("HL").value(Class::HighLoad),
    ))
    .parse_next(input)
}

fn suffix(input: &mut &[u8]) -> Result<Class> {
    terminated(
        alt((one_of([b'C', b'c']).value(Class::Commercial), Caseless("LT").value(Class::LightTruck))),
        not(one_of(AsChar::is_alphanum)),
    )
    .parse_next(input)
}

fn structure(input: &mut &[u8]) -> Result<Structure> {
    dispatch! { letter;
        b'R' => run_flat.map(|run_flat| Structure::Radial { speed: None, run_flat }),
        speed @ (b'S' | b'H' | b'V' | b'Z') => preceded(one_of([b'R', b'r']), run_flat)
            .map(move |run_flat| Structure::Radial { speed: Some(speed), run_flat }),
        b'D' | b'-' => empty.value(Structure::Diagonal),
        b'B' => empty.value(Structure::BiasBelted),
        _ => fail,
    }
    .parse_next(input)
}

fn run_flat(input: &mut &[u8]) -> Result<bool> {
    opt(one_of([b'F', b'f'])).map(|f| f.is_some()).parse_next(input)
}

fn rim(input: &mut &[u8]) -> Result<u16> {
    let whole = number.parse_next(input)?;
    let tenth = opt(delimited(
        one_of([b'.', b',']),
        one_of(AsChar::is_dec_digit).map(|digit: u8| u16::from(digit - b'0')),
        (take_while(0.., b'0'), not(one_of(AsChar::is_dec_digit))),
    ))
    .parse_next(input)?;
    Ok(10 * whole + tenth.unwrap_or(0))
}

fn service(input: &mut &[u8]) -> Result<Service> {
    let outer = opt(b'(').parse_next(input)?.is_some();
    let single = number.parse_next(input)?;
    let dual =
        opt(preceded(b'/', number)).verify(|&dual| super::is_service(single, dual)).parse_next(input)?;
    space.parse_next(input)?;
    let speed = if outer {
        terminated(one_of([b'Y', b'y']), b')').value((b'Y', None, true)).parse_next(input)?
    } else {
        alt((symbol, delimited(b'(', one_of([b'Y', b'y']), b')').value((b'Y', None, true))))
            .parse_next(input)?
    };
    Ok(Service { single, dual, speed })
}

fn symbol(input: &mut &[u8]) -> Result<(u8, Option<u8>, bool)> {
    dispatch! { letter;
        b'A' => one_of(b'1'..=b'8').map(|digit| (b'A', Some(digit), false)),
        // `10 PR` and `10 PLY` are ply ratings.
        b'P' => not(alt((Caseless("R"), Caseless("LY")))).value((b'P', None, false)),
        letter @ (b'B'..=b'H' | b'J'..=b'N' | b'Q'..=b'W' | b'Y') => empty.value((letter, None, false)),
        _ => fail,
    }
    .parse_next(input)
}

#[derive(Clone)]
enum Mark {
    Version(LoadVersion),
    Range(u8),
}

fn mark(input: &mut &[u8]) -> Result<Mark> {
    alt((range.map(Mark::Range), version.map(Mark::Version))).parse_next(input)
}

fn version(input: &mut &[u8]) -> Result<LoadVersion> {
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

fn range(input: &mut &[u8]) -> Result<u8> {
    alt((
        terminated(
            number.verify(|&ply| super::is_ply_rating(ply)).map(|ply| ply as u8),
            (space, alt((Caseless("PR"), Caseless("PLY"))), not(one_of(AsChar::is_alpha))),
        ),
        delimited(
            alt((Caseless("LR").void(), (Caseless("LOAD"), space1, Caseless("RANGE"), space).void())),
            letter.verify_map(super::ply_rating_of),
            not(one_of(AsChar::is_alphanum)),
        ),
    ))
    .parse_next(input)
}
