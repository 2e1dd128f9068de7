//! Reading and writing of designations: errors and their places, bounds, canonical forms, serde.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use std::collections::BTreeSet;
use std::fmt::{Debug, Display};
use std::hash::Hash;
use std::ops::Range;
use std::str::FromStr;

use beadseat::rim::{Contour, Hump, RimDiameter, RimWidth};
use beadseat::tire::{
    LoadIndex, LoadRange, LoadVersion, Metric, ServiceDescription, SpeedSymbol, Tire, TireSize,
    grading::Grade,
    sidewall::{MoldedLimit, SidewallLine},
};
use beadseat::wheel::{BoltCircle, Bore, Inset, Seat, Thread, Wheel, WheelSize, WheelStamp};
use beadseat::{Field, Marking, ParseError, ParseErrorKind};

/// Calls a generic function for every designation with its canonical form, another spelling of it,
/// and a text that is none, and answers how many there are.
macro_rules! each {
    ($function:ident) => {
        [
            $function::<RimWidth>("6.5", "6 1/2", "6.6"),
            $function::<RimDiameter>("17.5", "17,50", "18.5"),
            $function::<Contour>("JJ", " jj ", "Q"),
            $function::<Hump>("EH2", "eh2", "H3"),
            $function::<LoadIndex>("91", "091", "280"),
            $function::<SpeedSymbol>("H", "h", "I"),
            $function::<SpeedSymbol>("(Y)", "(y)", "(V)"),
            $function::<SpeedSymbol>("(W)", "(w)", "(W"),
            $function::<ServiceDescription>("104/102R", "104/102 r", "91/94V"),
            $function::<MoldedLimit>(
                "MAX LOAD DUAL 900 kg AT 475 kPa",
                "max. load dual 900kg @ 475 kPa cold",
                "MAX",
            ),
            $function::<Grade>("TRACTION AA", "traction: aa", "TRACTION D"),
            $function::<LoadVersion>("XL", "Extra  Load", "XXL"),
            $function::<LoadRange>("LRE", "10 ply", "11PR"),
            $function::<Metric>("LT245/75R17", "245/75 r 17 lt", "206/55R16"),
            $function::<TireSize>("205/55ZR16", "205 / 55 zr 16", "205/55R16 91V"),
            $function::<Tire>("225/45R17 94W XL", "225/45 r17 Reinforced 94 w", "LT245/75R17 XL"),
            $function::<Tire>("HL245/40R19 101Y XL", "hl 245/40 R19 xl 101Y", "205/55R16 HL HL"),
            $function::<BoltCircle>("5x114.3", "5 × 4.5 in", "5x57"),
            $function::<Bore>("57.1", "CB 57,10 mm", "12"),
            $function::<Inset>("ET-12.5", "os 12,5", "ET301"),
            $function::<WheelSize>("6.5Jx16 H2", "16 × 6 1/2 j h2", "7Jx16.2"),
            $function::<Wheel>("7Jx16 H2 ET45 5x112 57.1", "7jX16h2 cb57.1 5×112 +45", "7Jx16 ET45 ET40"),
            $function::<Thread>("M14x1.5", "m14 × 1,50", "M14"),
            $function::<Thread>("9/16-18", "18/32\" - 18 unf", "9/16"),
            $function::<Seat>("cone 60", "Conical 60°", "cone 75"),
        ]
        .len()
    };
}

/// What every designation is.
trait Designation:
    FromStr<Err = ParseError>
    + for<'a> TryFrom<&'a str, Error = ParseError>
    + Display
    + Debug
    + Copy
    + Eq
    + Hash
    + Send
    + Sync
    + Unpin
    + std::panic::UnwindSafe
    + 'static
{
}

macro_rules! designation {
    ($($type:ident)*) => { $(impl Designation for $type {})* };
}

designation! {
    RimWidth RimDiameter Contour Hump LoadIndex SpeedSymbol ServiceDescription LoadVersion LoadRange
    MoldedLimit Grade
    Metric TireSize Tire BoltCircle Bore Inset WheelSize Wheel WheelStamp Thread Seat
}

/// Designations with an order that means something.
const _: () = {
    const fn ordered<T: Ord>() {}
    ordered::<RimWidth>();
    ordered::<RimDiameter>();
    ordered::<LoadIndex>();
    ordered::<SpeedSymbol>();
    ordered::<LoadRange>();
    ordered::<Bore>();
    ordered::<Inset>();
};

#[test]
fn canonical_forms() {
    fn canonical<T: Designation>(canonical: &str, typed: &str, wrong: &str) {
        let value: T = canonical.parse().unwrap_or_else(|error| panic!("{canonical}: {error}"));
        assert_eq!(value.to_string(), canonical);
        assert_eq!(typed.parse(), Ok(value), "{typed}");
        assert_eq!(T::try_from(typed), Ok(value), "{typed}");
        assert!(wrong.parse::<T>().is_err(), "{wrong}");
        assert_ne!(wrong, canonical);
    }
    assert_eq!(each!(canonical), 25);
}

#[test]
fn width_and_alignment() {
    fn padded<T: Designation>(canonical: &str, _: &str, _: &str) {
        let value: T = canonical.parse().unwrap();
        let width = canonical.len() + 5;
        assert_eq!(format!("{value:width$}"), format!("{canonical:width$}"));
        assert_eq!(format!("{value:>width$}"), format!("{canonical:>width$}"));
        assert_eq!(format!("{value:*^width$}"), format!("{canonical:*^width$}"));
        assert_eq!(format!("{value:.1}"), canonical[..1]);
        assert_eq!(format!("{value:1}"), canonical);
    }
    assert_eq!(each!(padded), 25);
    assert_eq!(format!("{:>10}|", "205/55R16".parse::<TireSize>().unwrap()), " 205/55R16|");
}

#[test]
fn sizes_in_memory() {
    fn small<T: Designation>(_: &str, _: &str, _: &str) {
        let size = size_of::<T>();
        println!("{size:>3} bytes {}", std::any::type_name::<T>());
        assert!(size <= 32, "{}", std::any::type_name::<T>());
    }
    assert_eq!(each!(small), 25);
    assert!(size_of::<ParseError>() <= 8);
}

const _: () = {
    const fn error<T: std::error::Error + Copy + Eq + Hash + Send + Sync + 'static>() {}
    error::<ParseError>();
};

#[test]
fn in_const() {
    use beadseat::literal;
    macro_rules! constant {
        ($($type:ident $text:literal)*) => { $({
            const VALUE: $type = literal!($type, $text);
            assert_eq!(Ok(VALUE), $text.parse());
        })* };
    }
    constant! {
        RimWidth "6.5" RimDiameter "17.5" Contour "JJ" Hump "EH2" LoadIndex "91" SpeedSymbol "(Y)"
        ServiceDescription "104/102R" LoadVersion "XL" LoadRange "LRE" Metric "LT245/75R17"
        TireSize "205/55ZR16" Tire "225/45R17 94W XL" BoltCircle "5x4.5in" Bore "57.1" Inset "ET-12.5"
        WheelSize "6.5Jx16 H2" Wheel "7Jx16 H2 ET45 5x112 57.1" Thread "M14x1.5" Seat "cone 60"
    }
}

/// The longest texts that each part can have, to see that the buffer takes them.
#[test]
fn longest_canonical_forms() {
    let tire = "LT495/95ZRF24.5 279/279A8 LRN";
    assert_eq!(tire.parse::<Tire>().unwrap().to_string(), tire);
    let passenger = "HL495/95VRF24.5 (279/279Y) XL";
    assert_eq!(passenger.parse::<Tire>().unwrap().to_string(), passenger);
    let words = "ICE GRIP RETREAD REGROOVABLE TUBELESS TUBE TYPE DIAGONAL BIAS BELTED INFLATE TO 60 PSI \
                 ROTATION BLEMISHED";
    let limits = "MAX LOAD 9999 kg AT 1500 kPa MAX LOAD DUAL 9999 kg AT 1500 kPa MAX PRESS 1500 kPa \
                  MAX SPEED 500 km/h";
    let line = format!("HL495/95VRF24.5 (279/279Y) (279/279Y) XL LRN {words} {limits}");
    assert_eq!(line.parse::<SidewallLine>().unwrap().to_string(), line);
    assert_eq!(line.len(), 251);
    let wheel = "10.75JJ-24.5 FH2 ET-123.456789 12x123.456789/223.456789 113.456789";
    assert_eq!(wheel.parse::<Wheel>().unwrap().to_string(), wheel);
}

/// The errors that were seen, to hold that no field and no kind is left out.
#[derive(Default)]
struct Refusals {
    count: usize,
    fields: BTreeSet<&'static str>,
    kinds: BTreeSet<String>,
}

impl Refusals {
    #[track_caller]
    fn of<T: Designation>(&mut self, text: &str, kind: ParseErrorKind, field: Field, span: Range<usize>) {
        let error = text.parse::<T>().expect_err(text);
        assert_eq!((error.kind(), error.field(), error.span()), (kind, field, span.clone()), "{text:?}");
        assert!(text.get(span).is_some(), "the span lies in {text:?}");
        let message = error.to_string();
        // Of what is too much, nothing is allowed.
        let told = kind == ParseErrorKind::Trailing || message.contains(field.allowed());
        assert!(message.starts_with(field.name()) && told, "{message}");
        self.count += 1;
        self.fields.insert(field.name());
        self.kinds.insert(format!("{kind:?}"));
    }
}

#[test]
fn errors_and_their_places() {
    use Field as F;
    use ParseErrorKind::{Contradiction, Empty, Missing, OutOfRange, TooLong, TooPrecise, Trailing};
    let mut refused = Refusals::default();

    refused.of::<Tire>("", Empty, F::Text, 0..0);
    refused.of::<Wheel>(" \t\u{a0}\u{202f}", Empty, F::Text, 0..7);
    refused.of::<LoadIndex>(&"9".repeat(256), TooLong, F::Text, 0..255);
    refused.of::<Seat>(&"é".repeat(128), TooLong, F::Text, 0..254);
    refused.of::<Seat>(&format!("cone{}", "°".repeat(200)), TooLong, F::Text, 0..254);

    refused.of::<TireSize>("R16", Missing, F::SectionWidth, 0..1);
    refused.of::<TireSize>("LT", Missing, F::SectionWidth, 2..2);
    refused.of::<TireSize>("206/55R16", OutOfRange, F::SectionWidth, 0..3);
    refused.of::<TireSize>("P 90/55R16", OutOfRange, F::SectionWidth, 2..4);
    refused.of::<TireSize>("500/55R16", OutOfRange, F::SectionWidth, 0..3);
    refused.of::<TireSize>("20512/55R16", OutOfRange, F::SectionWidth, 0..5);
    refused.of::<Metric>("205R16", Missing, F::AspectRatio, 3..4);
    refused.of::<TireSize>("240/40R18", OutOfRange, F::SectionWidth, 0..3); // a motorcycle's without M/C
    refused.of::<TireSize>("240/65ZR16", OutOfRange, F::SectionWidth, 0..3);
    refused.of::<TireSize>("600/60R22", OutOfRange, F::SectionWidth, 0..3);
    refused.of::<TireSize>("600/45-24", OutOfRange, F::SectionWidth, 0..3);
    refused.of::<TireSize>("230/65-16", OutOfRange, F::SectionWidth, 0..3);
    refused.of::<TireSize>("1260/50-32", OutOfRange, F::SectionWidth, 0..4);
    refused.of::<TireSize>("P240/65R16", OutOfRange, F::SectionWidth, 1..4);
    refused.of::<TireSize>("505/55R16", OutOfRange, F::SectionWidth, 0..3);
    refused.of::<TireSize>("205/55R32", OutOfRange, F::RimDiameter, 7..9);
    refused.of::<TireSize>("9.50-38", OutOfRange, F::RimDiameter, 5..7);
    refused.of::<TireSize>("6.00-390", OutOfRange, F::RimDiameter, 5..8);
    refused.of::<TireSize>("E78-390", OutOfRange, F::RimDiameter, 4..7);
    refused.of::<TireSize>("31x10.50R390LT", OutOfRange, F::RimDiameter, 9..12);
    refused.of::<TireSize>("155R38", OutOfRange, F::RimDiameter, 4..6);
    refused.of::<TireSize>("340/65-56", OutOfRange, F::RimDiameter, 7..9);
    refused.of::<TireSize>("205/R16", Missing, F::AspectRatio, 4..5);
    refused.of::<TireSize>("205/", Missing, F::AspectRatio, 4..4);
    refused.of::<TireSize>("205/56R16", OutOfRange, F::AspectRatio, 4..6);
    refused.of::<TireSize>("205/100R16", OutOfRange, F::AspectRatio, 4..7);
    refused.of::<TireSize>("205/55 16", Missing, F::Structure, 7..8);
    refused.of::<TireSize>("205/55/16", Missing, F::Structure, 6..7);
    refused.of::<TireSize>("205/55Z16", Missing, F::Structure, 7..8);
    refused.of::<TireSize>("205/55×16", Missing, F::Structure, 6..8);
    refused.of::<TireSize>("205/55R", Missing, F::RimDiameter, 7..7);
    refused.of::<TireSize>("205/55R27", OutOfRange, F::RimDiameter, 7..9);
    refused.of::<TireSize>("205/55R18.5", OutOfRange, F::RimDiameter, 7..11);
    refused.of::<TireSize>("205/55R16.25", TooPrecise, F::RimDiameter, 7..12);
    refused.of::<TireSize>("P195/70R15C", Contradiction, F::Family, 0..11);
    refused.of::<TireSize>(" LT245/75R17 LT", Contradiction, F::Family, 1..15);
    refused.of::<TireSize>("205/55R16 91V", Trailing, F::Text, 10..13);
    refused.of::<TireSize>("205/55R16é", Trailing, F::Text, 9..11);

    refused.of::<LoadIndex>("V", Missing, F::LoadIndex, 0..1);
    refused.of::<LoadIndex>("280", OutOfRange, F::LoadIndex, 0..3);
    refused.of::<LoadIndex>("-1", Missing, F::LoadIndex, 0..1);
    refused.of::<ServiceDescription>("(V)", Missing, F::LoadIndex, 1..2);
    refused.of::<ServiceDescription>("104/R", Missing, F::DualLoadIndex, 4..5);
    refused.of::<ServiceDescription>("104/105R", OutOfRange, F::DualLoadIndex, 4..7);
    refused.of::<ServiceDescription>("104/280R", OutOfRange, F::DualLoadIndex, 4..7);
    refused.of::<ServiceDescription>("91", Missing, F::SpeedSymbol, 2..2);
    refused.of::<ServiceDescription>("91I", Missing, F::SpeedSymbol, 2..3);
    refused.of::<ServiceDescription>("91A9", Missing, F::SpeedSymbol, 2..3);
    refused.of::<ServiceDescription>("(91V)", OutOfRange, F::SpeedSymbol, 3..4);
    refused.of::<ServiceDescription>("91(V)", OutOfRange, F::SpeedSymbol, 2..4);
    refused.of::<Tire>("205/55ZR16 (91W)", OutOfRange, F::SpeedSymbol, 11..16);
    refused.of::<Tire>("205/55ZR16 91(W)", OutOfRange, F::SpeedSymbol, 11..16);
    refused.of::<ServiceDescription>("(91Y", Missing, F::SpeedSymbol, 4..4);
    refused.of::<SpeedSymbol>("(V)", Missing, F::SpeedSymbol, 0..1);
    refused.of::<SpeedSymbol>("VV", Trailing, F::Text, 1..2);

    refused.of::<LoadVersion>("XXL", Missing, F::LoadVersion, 0..1);
    refused.of::<LoadVersion>("EXTRA", Missing, F::LoadVersion, 0..1);
    refused.of::<LoadVersion>("XLT", Missing, F::LoadVersion, 0..1);
    refused.of::<LoadRange>("LRI", Missing, F::LoadRange, 2..3);
    refused.of::<LoadRange>("LOAD RANGE", Missing, F::LoadRange, 10..10);
    refused.of::<LoadRange>("E", Missing, F::LoadRange, 0..1);
    refused.of::<LoadRange>("10", Missing, F::LoadRange, 2..2);
    refused.of::<LoadRange>("10 PRX", Missing, F::LoadRange, 3..4);
    refused.of::<LoadRange>("11PR", OutOfRange, F::LoadRange, 0..4);
    refused.of::<Tire>("LT245/75R17 26PR", OutOfRange, F::LoadRange, 12..16);
    refused.of::<Tire>("LT245/75R17 121/118S LRI", Missing, F::LoadRange, 23..24);
    refused.of::<Tire>("205/55R16 91V LRE", Contradiction, F::LoadRange, 14..17);
    refused.of::<Tire>("LT245/75R17 LRE 8PR", Contradiction, F::LoadRange, 16..19);
    refused.of::<Tire>("LT245/75R17 XL", Contradiction, F::LoadVersion, 12..14);
    refused.of::<Tire>("205/55R16 XL LL", Contradiction, F::LoadVersion, 13..15);
    refused.of::<Tire>("245/40R19 HL HL", Contradiction, F::LoadVersion, 13..15);
    refused.of::<Tire>("245/40R19 HL XL", Contradiction, F::LoadVersion, 13..15);
    refused.of::<Tire>("P225/60R16 HL", Contradiction, F::LoadVersion, 11..13);
    refused.of::<Tire>("205/55R16 91V 94V", Trailing, F::Text, 14..17);
    refused.of::<Tire>("205/55R16 91V,", Trailing, F::Text, 13..14);

    refused.of::<RimWidth>("J", Missing, F::RimWidth, 0..1);
    refused.of::<RimWidth>("6.6", OutOfRange, F::RimWidth, 0..3);
    refused.of::<RimWidth>("48 1/4", OutOfRange, F::RimWidth, 0..6);
    refused.of::<RimWidth>("6.5001", TooPrecise, F::RimWidth, 0..6);
    refused.of::<RimWidth>("6J", Trailing, F::Text, 1..2);
    refused.of::<RimDiameter>("x", Missing, F::RimDiameter, 0..1);
    refused.of::<Contour>("Q", Missing, F::Contour, 0..1);
    refused.of::<Contour>("JB", Missing, F::Contour, 0..1);
    refused.of::<Hump>("H3", Missing, F::Hump, 0..1);
    refused.of::<WheelSize>("7J", Missing, F::RimDiameter, 2..2);
    refused.of::<WheelSize>("7Qx16", Missing, F::RimDiameter, 1..2);
    refused.of::<WheelSize>("7Jx16.2", OutOfRange, F::RimDiameter, 3..7);
    refused.of::<WheelSize>("7x7", OutOfRange, F::RimDiameter, 2..3);
    refused.of::<WheelSize>("8x8", Contradiction, F::RimWidth, 0..3);
    refused.of::<WheelSize>("20Jx16", Contradiction, F::RimWidth, 0..6);
    refused.of::<WheelSize>("16x", Missing, F::RimDiameter, 3..3);

    refused.of::<Inset>("ET", Missing, F::Inset, 2..2);
    refused.of::<Inset>("ET301", OutOfRange, F::Inset, 2..5);
    refused.of::<Inset>("ET1.0000001", TooPrecise, F::Inset, 2..11);
    refused.of::<BoltCircle>("x112", Missing, F::HoleCount, 0..1);
    refused.of::<BoltCircle>("2x112", OutOfRange, F::HoleCount, 0..1);
    refused.of::<BoltCircle>("13 x 112", OutOfRange, F::HoleCount, 0..2);
    refused.of::<BoltCircle>("5 112", Missing, F::BoltCircle, 2..3);
    refused.of::<BoltCircle>("5x", Missing, F::BoltCircle, 2..2);
    refused.of::<BoltCircle>("5×57", OutOfRange, F::BoltCircle, 3..5);
    refused.of::<BoltCircle>("5x19.5mm", OutOfRange, F::BoltCircle, 2..6);
    refused.of::<BoltCircle>("5x112.0000001", TooPrecise, F::BoltCircle, 2..13);
    refused.of::<BoltCircle>("5x4.50001in", TooPrecise, F::BoltCircle, 2..9);
    refused.of::<Bore>("mm", Missing, F::Bore, 0..1);
    refused.of::<Bore>("CB 12", OutOfRange, F::Bore, 3..5);
    refused.of::<Bore>("57.1000001", TooPrecise, F::Bore, 0..10);
    refused.of::<Wheel>("7Jx16 CB", Missing, F::Bore, 8..8);
    refused.of::<Wheel>("7Jx16 ET45 ET40", Trailing, F::Text, 11..15);
    refused.of::<Wheel>("7Jx16 5x112 4x100", Contradiction, F::BoltCircle, 12..17);
    refused.of::<Wheel>("7Jx16 5x112/112", Contradiction, F::BoltCircle, 12..15);
    refused.of::<Wheel>("7Jx16 5x112/", Missing, F::BoltCircle, 12..12);
    refused.of::<Wheel>("7Jx16 5x112 5x100 5x108", Trailing, F::Text, 18..23);
    refused.of::<RimWidth>("151", OutOfRange, F::RimWidth, 0..3);
    refused.of::<RimWidth>("305", OutOfRange, F::RimWidth, 0..3);
    refused.of::<WheelSize>("150x16", OutOfRange, F::RimDiameter, 0..3);
    refused.of::<WheelSize>("150-390", Missing, F::RimDiameter, 3..4);
    refused.of::<WheelSize>("150TR16", OutOfRange, F::RimDiameter, 5..7);
    refused.of::<WheelSize>("6Jx390", OutOfRange, F::RimDiameter, 0..6);
    refused.of::<Wheel>("7Jx16 57.1 66.6", Trailing, F::Text, 11..15);
    refused.of::<Wheel>("7Jx16 5x406 66.6", Contradiction, F::BoltCircle, 0..16);
    refused.of::<Wheel>("7Jx16 5x100/406", Contradiction, F::BoltCircle, 0..15);
    refused.of::<Wheel>("7Jx16 5x112 112", Contradiction, F::Bore, 0..15);
    refused.of::<Wheel>("7Jx16 5x114.3/5x100 100", Contradiction, F::Bore, 0..23);
    refused.of::<Wheel>("4x8 204", Contradiction, F::Bore, 0..7);
    refused.of::<WheelSize>("300 TR 300", Contradiction, F::RimWidth, 0..10);

    refused.of::<Thread>("Mx1.5", Missing, F::ThreadDiameter, 1..2);
    refused.of::<Thread>("M5x0.8", OutOfRange, F::ThreadDiameter, 1..2);
    refused.of::<Thread>("M14", Missing, F::ThreadPitch, 3..3);
    refused.of::<Thread>("M14x5", OutOfRange, F::ThreadPitch, 4..5);
    refused.of::<Thread>("M14x1.5000001", TooPrecise, F::ThreadPitch, 4..13);
    refused.of::<Thread>("14x1.5", OutOfRange, F::ThreadDiameter, 0..2);
    refused.of::<Thread>("5/12-20", OutOfRange, F::ThreadDiameter, 0..4);
    refused.of::<Thread>("1 1-20", Missing, F::ThreadDiameter, 3..4);
    refused.of::<Thread>("1/2", Missing, F::ThreadPitch, 3..3);
    refused.of::<Thread>("1/2-6", OutOfRange, F::ThreadPitch, 4..5);
    refused.of::<Thread>("1/2-20 UNJ", Trailing, F::Text, 7..10);
    refused.of::<Seat>("", Empty, F::Text, 0..0);
    refused.of::<Seat>("hex", Missing, F::Seat, 0..1);
    refused.of::<Seat>("cone", Missing, F::Seat, 4..4);
    refused.of::<Seat>("ball R15", OutOfRange, F::Seat, 0..8);
    refused.of::<Seat>("cone 75°", OutOfRange, F::Seat, 0..9);

    assert_eq!(refused.count, 146);
    assert_eq!(refused.fields.len(), FIELDS.len(), "{:?}", refused.fields);
    // No text is ambiguous yet.
    assert_eq!(refused.kinds.len(), 7, "{:?}", refused.kinds);
}

#[test]
fn errors_of_stamps_and_their_places() {
    use Field as F;
    use ParseErrorKind::{Contradiction, Missing, OutOfRange, Trailing};
    let mut refused = Refusals::default();
    refused.of::<WheelStamp>("ET45 5x112", Missing, F::RimWidth, 10..10);
    refused.of::<WheelStamp>("7Jx16 8Jx17", OutOfRange, F::Bore, 6..7);
    refused.of::<WheelStamp>("7Jx16 JWL JWL", Trailing, F::Text, 10..13);
    refused.of::<WheelStamp>("7Jx16 690 kg 700 kg", Trailing, F::Text, 13..19);
    refused.of::<WheelStamp>("7Jx16 MAX LOAD", Missing, F::MaximumLoad, 14..14);
    refused.of::<WheelStamp>("7Jx16 690 kg (1600 lb)", Contradiction, F::MaximumLoad, 6..22);
    refused.of::<WheelStamp>("7Jx16 13/2021", OutOfRange, F::WheelDate, 6..13);
    refused.of::<WheelStamp>("7Jx16 W54/2021", OutOfRange, F::WheelDate, 6..14);
    refused.of::<WheelStamp>("7Jx16 03/1949", OutOfRange, F::WheelDate, 6..13);
    refused.of::<WheelStamp>("7Jx16 E0 124R-1", OutOfRange, F::ApprovalMark, 7..8);
    refused.of::<WheelStamp>("7Jx16 124R-", Missing, F::ApprovalMark, 11..11);
    refused.of::<WheelStamp>("7Jx16 KBA 1234567", OutOfRange, F::ApprovalMark, 10..17);
    refused.of::<WheelStamp>("7Jx16 MADE 5", Missing, F::Origin, 11..12);
    refused.of::<WheelStamp>("7Jx16 MADE IN", Missing, F::Origin, 13..13);
    refused.of::<WheelStamp>("7Jx16 MADE IN ET45", Missing, F::Origin, 14..15);
    refused.of::<WheelStamp>("5x500 7Jx16 JWL", Contradiction, F::BoltCircle, 0..15);
    refused.of::<WheelStamp>("7Jx16 112 690 kg 5x112", Contradiction, F::Bore, 0..22);
    refused.of::<WheelStamp>("7Jx16 MADE IN ABCDEFGHIJKLMNO", OutOfRange, F::Origin, 14..28);
    assert_eq!(refused.count, 18);
}

const FIELDS: [Field; 21] = [
    Field::Family,
    Field::Text,
    Field::SectionWidth,
    Field::AspectRatio,
    Field::Structure,
    Field::RimDiameter,
    Field::LoadIndex,
    Field::DualLoadIndex,
    Field::SpeedSymbol,
    Field::LoadVersion,
    Field::LoadRange,
    Field::RimWidth,
    Field::Contour,
    Field::Hump,
    Field::Inset,
    Field::HoleCount,
    Field::BoltCircle,
    Field::Bore,
    Field::ThreadDiameter,
    Field::ThreadPitch,
    Field::Seat,
];

/// What a field is said to allow, and texts just inside and just outside of it.
#[derive(Default)]
struct Bounds(BTreeSet<&'static str>);

impl Bounds {
    #[track_caller]
    fn of<T: Designation>(&mut self, field: Field, allowed: &str, inside: &[&str], outside: &[&str]) {
        assert_eq!(field.allowed(), allowed);
        assert!(!inside.is_empty() && !outside.is_empty());
        self.0.insert(field.name());
        for text in inside {
            assert!(text.parse::<T>().is_ok(), "{text:?} should be read: {:?}", text.parse::<T>());
        }
        for text in outside {
            let error = text.parse::<T>().expect_err(text);
            assert_eq!(error.field(), field, "{text:?}: {error}");
        }
    }
}

#[test]
fn what_is_allowed_is_true_at_its_bounds() {
    let mut bounds = Bounds::default();
    let padded = |length: usize| format!("{:length$}", "V");
    bounds.of::<SpeedSymbol>(
        Field::Text,
        "1 to 255 bytes",
        &[&padded(1), &padded(2), &padded(254), &padded(255)],
        &["", &padded(256)],
    );
    bounds.of::<Metric>(
        Field::SectionWidth,
        "95 to 495 mm ending in 5, in 0 too on half-inch and millimetric rims and for M/C, or 240 to 1250 mm ending in 0 on agricultural sizes, or 1.5 to 30 in, to 60 in on rims of earthmovers",
        &[
            "95/55R16",
            "105/55R16",
            "485/55R16",
            "495/55R16",
            "240/75R22.5",
            "220/55R390",
            "180/55R17 M/C",
            "50/100-17 M/C",
            "240/65-16",
            "1250/50-32",
        ],
        &["230/65-16", "1260/50-32", "85/55R16", "94/55R16", "100/55R16", "490/55R16", "496/55R16", "505/55R16", "45/90-17 M/C"],
    );
    bounds.of::<Metric>(
        Field::AspectRatio,
        "20 to 95 in steps of 5, 100 for M/C, 110 for IF and VF, 78 behind a load letter",
        &["205/20R16", "205/25R16", "205/90R16", "205/95R16"],
        &["205/15R16", "205/19R16", "205/21R16", "205/94R16", "205/96R16", "205/100R16"],
    );
    bounds.of::<Metric>(
        Field::Structure,
        "R, D, B or -, with S, H, V or Z before and F behind an R, or of old cross-ply tires S, H or V alone",
        &[
            "205/55R16",
            "205/55ZR16",
            "205/55SR16",
            "205/55HR16",
            "205/55VR16",
            "205/55RF16",
            "205/55ZRF16",
            "205/55D16",
            "205/55B16",
            "205/55-16",
        ],
        &["205/55 16", "205/55WR16", "205/55F16", "205/55YR16", "205/55Z16"],
    );
    bounds.of::<Metric>(
        Field::Family,
        "one of P, LT, HL, T, ST, IF, VF, AT in front, or C, CP, LT, HC, M/C behind",
        &["P205/55R16", "T125/70D16", "ST205/75R15", "195/70R15C", "225/75R16CP", "180/55R17 M/C"],
        &["P195/70R15C", "LT245/75R17 LT", "ST205/75R15 M/C"],
    );
    let codes = "8 to 26, 28 or 30 in, or 14.5, 16.5, 17.5, 19.5, 20.5, 22.5, 24.5 in, or 300 to 500 mm in steps of 5, or 32 to 54 in in steps of 2 on agricultural sizes, or others of implements, earthmovers and garden machines";
    bounds.of::<RimDiameter>(
        Field::RimDiameter,
        codes,
        &[
            "8", "9", "25", "26", "28", "30", "14.5", "16.5", "17.5", "19.5", "20.5", "22.5", "24.5", "300",
            "305", "495", "500", "32", "42", "54", "4", "7", "15.3", "15.5", "16.1", "26.5", "30.5", "29",
            "33", "63",
        ],
        &[
            "295", "299", "301", "499", "501", "505", "3", "7.5", "8.5", "13.5", "15.4", "18.5", "21.5",
            "23.5", "25.5", "27.5", "27", "31", "41", "43", "53", "56", "64", "14.4", "14.6", "24.55", "100",
        ],
    );
    for whole in 8..=26 {
        assert!(whole.to_string().parse::<RimDiameter>().is_ok(), "{whole}");
    }
    bounds.of::<LoadIndex>(Field::LoadIndex, "0 to 279", &["0", "1", "278", "279"], &["-1", "280"]);
    bounds.of::<ServiceDescription>(
        Field::DualLoadIndex,
        "0 to 279 and not above the single load index, nor the load of a faster speed above that of a slower one",
        &["0/0R", "104/103R", "104/104R", "279/279R", "279/0R"],
        &["0/1R", "104/105R", "279/280R"],
    );
    let symbols = "A1 to A8, B to W without I, O and X, Y, or (Y), and of motorcycles (W), around the service description";
    let letters: Vec<String> =
        ('B'..='W').filter(|letter| !"IOX".contains(*letter)).map(|letter| format!("91{letter}")).collect();
    let mut inside: Vec<&str> = letters.iter().map(String::as_str).collect();
    inside.extend(["91A1", "91A2", "91A7", "91A8", "91Y", "(91Y)"]);
    let outside = ["91A", "91A0", "91A9", "91I", "91O", "91X", "91Z", "(91V)"];
    bounds.of::<ServiceDescription>(Field::SpeedSymbol, symbols, &inside, &outside);
    bounds.of::<Tire>(
        Field::LoadVersion,
        "XL, EXTRA LOAD, REINFORCED, LL or HL, on a passenger size",
        &[
            "205/55R16 XL",
            "205/55R16 EXTRA LOAD",
            "205/55R16 REINFORCED",
            "205/55R16 LL",
            "205/55R16 HL",
            "P205/55R16 XL",
        ],
        &["LT245/75R17 XL", "195/70R15C XL", "295/80R22.5 XL", "195/70R15C HL"],
    );
    let ranges = "LRA to LRN or LOAD RANGE A to N without I and K, or 2PR to 24PR in even steps, \
        not on a passenger size";
    let lettered: Vec<String> = ('A'..='N')
        .filter(|letter| !"IK".contains(*letter))
        .flat_map(|letter| [format!("LR{letter}"), format!("LOAD RANGE {letter}")])
        .collect();
    let mut inside: Vec<&str> = lettered.iter().map(String::as_str).collect();
    inside.extend(["2PR", "4PR", "22PR", "24PR"]);
    let outside = ["LRI", "LRK", "LRO", "LOAD RANGE I", "0PR", "1PR", "3PR", "23PR", "25PR", "26PR"];
    bounds.of::<LoadRange>(Field::LoadRange, ranges, &inside, &outside);
    bounds.of::<Tire>(
        Field::LoadRange,
        ranges,
        &["LT245/75R17 LRA", "195/70R15C 8PR", "295/80R22.5 LRN"],
        &["205/55R16 LRE", "P205/55R16 10PR", "HL245/40R19 LRE"],
    );
    let widths = "2 to 48 in, in quarters, or 100 to 300 mm in steps of 5, and below the rim diameter code, or 1.60, 1.85 or 2.15 in of motorcycles";
    bounds.of::<RimWidth>(
        Field::RimWidth,
        widths,
        &[
            "2", "2.25", "2.5", "2.75", "20", "47.75", "48", "6 1/4", "6 1/2", "6 3/4", "100", "105", "300",
            "1.60", "1.85", "2.15",
        ],
        &["1.75", "1.5", "1.61", "1.999", "2.1", "2.251", "47.9", "48.25", "48 1/4", "99", "101", "305"],
    );
    bounds.of::<WheelSize>(
        Field::RimWidth,
        widths,
        &["7.75x8", "8x9", "15.75x16"],
        &["8x8", "16x16", "16.25Jx16"],
    );
    bounds.of::<Contour>(
        Field::Contour,
        "A, B, C, D, E, F, G, H, J, JJ, JK, K, L, P, S, T or V",
        &["A", "B", "C", "D", "E", "F", "G", "H", "J", "JJ", "JK", "K", "L", "P", "S", "T", "V"],
        &["SL", "I", "M", "X", "KJ", "JJJ", "1"],
    );
    bounds.of::<Hump>(
        Field::Hump,
        "H, H2, FH, FH2, CH, CH2, EH, EH2, EH2+ or SL",
        &["H", "H2", "FH", "FH2", "CH", "CH2", "EH", "EH2", "EH2+", "SL"],
        &["H1", "H3", "FH3", "SL2", "F", "J"],
    );
    bounds.of::<Inset>(
        Field::Inset,
        "-300 to 300 mm",
        &["ET-300", "ET-299.999999", "ET299.999999", "ET300", "OS300", "OS-300", "ET0"],
        &["ET-300.000001", "ET300.000001", "OS300.000001", "ET-301", "ET301"],
    );
    bounds.of::<BoltCircle>(
        Field::HoleCount,
        "3 to 12",
        &["3x112", "4x112", "11x112", "12x112"],
        &["2x112", "13x112", "0x112"],
    );
    bounds.of::<BoltCircle>(
        Field::BoltCircle,
        "60 to 600 mm, or below 20 as inches",
        &["5x60", "5x60.000001", "5x599.999999", "5x600", "5x2.3623", "5x19.9999", "5x23.6220in"],
        &[
            "5x59.999999",
            "5x600.000001",
            "5x2.3622",
            "5x20",
            "5x20.0001",
            "5x59.9",
            "5x23.6221in",
            "5x59.999999mm",
        ],
    );
    bounds.of::<Bore>(
        Field::Bore,
        "20 to 400 mm",
        &["20", "20.000001", "399.999999", "400"],
        &["19.999999", "400.000001"],
    );
    let diameters = "M6 to M30, or 1/4 to 1 1/4 in";
    bounds.of::<Thread>(
        Field::ThreadDiameter,
        diameters,
        &[
            "M6x1",
            "M6.000001x1",
            "M29.999999x1",
            "M30x1",
            "1/4-20",
            "17/64-20",
            "1-14",
            "1 15/64-12",
            "1 1/4-12",
        ],
        &["M5.999999x1", "M30.000001x1", "15/64-20", "1 17/64-12", "2-12", "1 4/4-12", "0-20"],
    );
    bounds.of::<Thread>(
        Field::ThreadPitch,
        "0.5 to 4 mm, or 7 to 32 threads per inch",
        &["M14x0.5", "M14x0.500001", "M14x3.999999", "M14x4", "1/2-7", "1/2-8", "1/2-31", "1/2-32"],
        &["M14x0.499999", "M14x4.000001", "1/2-6", "1/2-33"],
    );
    bounds.of::<Seat>(
        Field::Seat,
        "cone 60, cone 80, cone 90, ball R12, ball R13, ball R14, ball R16, flat or shank",
        &["cone 60", "cone 80", "cone 90", "ball R12", "ball R13", "ball R14", "ball R16", "flat", "shank"],
        &["cone 59", "cone 61", "cone 75", "cone 91", "ball R11", "ball R15", "ball R17", "cone", "hex"],
    );
    assert_eq!(bounds.0.len(), FIELDS.len(), "{:?}", bounds.0);
}

#[track_caller]
fn shown<T: Designation>(text: &str) -> (String, String) {
    let shown = text.parse::<T>().expect_err(text).show(text).to_string();
    let mut lines = shown.lines();
    let (echo, under) = (lines.next().unwrap().to_owned(), lines.next().unwrap().to_owned());
    assert_eq!(lines.next(), None, "two lines only: {shown:?}");
    (echo, under)
}

#[test]
fn shown_with_carets() {
    let (echo, under) = shown::<BoltCircle>("5x57");
    assert_eq!(echo, "5x57");
    assert_eq!(under, "  ^^ bolt circle is out of range (allowed: 60 to 600 mm, or below 20 as inches)");

    // Carets count characters, not bytes.
    let (echo, under) = shown::<BoltCircle>("5\u{a0}×\u{a0}57");
    assert_eq!(echo, "5\u{a0}×\u{a0}57");
    assert!(under.starts_with("    ^^ bolt circle"), "{under}");

    // An empty place is shown by one caret behind the text.
    let (echo, under) = shown::<BoltCircle>("5x");
    assert_eq!(echo, "5x");
    assert!(under.starts_with("  ^ bolt circle is missing"), "{under}");

    let (echo, under) = shown::<Tire>("");
    assert_eq!(echo, "");
    assert!(under.starts_with("^ text is empty"), "{under}");
}

#[test]
fn shown_hostile_text() {
    let (echo, under) = shown::<Tire>("205\u{7}\u{1b}[31m\r\n\0");
    assert_eq!(echo, "205\u{fffd}\u{fffd}[31m\u{fffd}\u{fffd}\u{fffd}");
    assert!(under.starts_with("   ^ structure is missing"), "{under}");

    for hidden in [
        '\u{85}',
        '\u{ad}',
        '\u{61c}',
        '\u{200b}',
        '\u{200e}',
        '\u{200f}',
        '\u{2028}',
        '\u{2029}',
        '\u{202a}',
        '\u{202e}',
        '\u{2060}',
        '\u{2066}',
        '\u{2069}',
        '\u{feff}',
        '\u{fff9}',
        '\u{e0041}',
        '\u{7f}',
        '\n',
    ] {
        let (echo, _) = shown::<Tire>(&format!("2{hidden}05/55R16"));
        assert_eq!(echo, "2\u{fffd}05/55R16", "{hidden:?}");
    }

    let (echo, under) = shown::<Tire>(&"x".repeat(300));
    assert_eq!(echo, format!("{}…", "x".repeat(120)));
    assert!(under.starts_with(&format!("{} text is too long", "^".repeat(120))), "{under}");

    let far = format!("{}x", " ".repeat(200));
    let (echo, under) = shown::<Tire>(&far);
    assert_eq!(echo, format!("{}…", " ".repeat(120)));
    assert!(under.starts_with(&format!("{}^ section width", " ".repeat(120))), "{under}");

    let (echo, under) = shown::<Tire>("é🛞漢字");
    assert_eq!(echo, "é🛞漢字");
    assert!(under.starts_with("^ section width"), "{under}");
    let (_, under) = shown::<Tire>("205/55R16 🛞🛞");
    assert!(under.starts_with("          ^^ text goes on"), "{under}");
    let (echo, _) = shown::<Tire>(&"🛞".repeat(300));
    assert_eq!(echo.chars().count(), 121);
}

#[test]
fn shown_beside_another_text() {
    let error = "205/55R16 91V 94V".parse::<Tire>().unwrap_err();
    for other in ["", "é", "205/55R16 91V é", &"漢".repeat(200)] {
        assert_eq!(error.show(other).to_string().lines().count(), 2, "{other}");
    }
}

#[cfg(feature = "serde")]
mod serde {
    use super::*;
    use ::serde::Serialize;
    use ::serde::de::DeserializeOwned;

    #[test]
    fn as_canonical_strings() {
        fn round<T: Designation + Serialize + DeserializeOwned>(canonical: &str, typed: &str, wrong: &str) {
            let value: T = canonical.parse().unwrap();
            let json = serde_json::to_string(&value).unwrap();
            assert_eq!(json, serde_json::to_string(canonical).unwrap());
            assert_eq!(serde_json::from_str::<T>(&json).unwrap(), value);
            let typed = serde_json::to_value(typed).unwrap();
            assert_eq!(serde_json::from_str::<T>(&typed.to_string()).unwrap(), value, "{typed}");
            assert_eq!(serde_json::from_slice::<T>(typed.to_string().as_bytes()).unwrap(), value, "{typed}");
            assert_eq!(serde_json::from_value::<T>(typed).unwrap(), value);

            let error = wrong.parse::<T>().unwrap_err();
            let refused = serde_json::from_value::<T>(wrong.into()).unwrap_err().to_string();
            assert_eq!(refused, error.to_string());
            for json in ["91", "null", "[\"91\"]", "{\"text\":\"91\"}", "true"] {
                let refused = serde_json::from_str::<T>(json).unwrap_err().to_string();
                assert!(refused.contains("expected a designation as text"), "{refused}");
            }
        }
        assert_eq!(each!(round), 25);
    }

    #[test]
    fn with_escapes() {
        let holes: BoltCircle = serde_json::from_str(r#""5\u00d7114,3""#).unwrap();
        assert_eq!(Ok(holes), "5x114.3".parse());
        let error = serde_json::from_str::<BoltCircle>(r#""5x57""#).unwrap_err();
        assert_eq!((error.line(), error.column()), (1, 6));
    }
}

/// What is told apart by rule, and what is no identification number though it is letters and digits.
#[test]
fn lookalikes_are_told_apart() {
    for (text, kind) in [
        ("8.25-20", "tire"),
        ("8.25E-20", "wheel"),
        ("11-22.5", "tire"),
        ("9.5-24", "tire"),
        ("7.0-20", "wheel"),
        ("7.0-20 ET140", "wheel"),
        ("5-8", "bolt_circle"),
        ("10-16.5", "tire"),
        ("8-14.5", "tire"),
        ("9-19.5", "tire"),
        ("8-6.5", "bolt_circle"),
        ("6 1/4-16", "wheel"),
        ("9 1/2-24", "wheel"),
        ("6.00S-20", "wheel"),
        ("7Jx16 MADE IN W GERMANY", "wheel"),
        ("1JX 4C3D4E 2725", "tin"),
        ("DOT 7JX16 AB12 2725", "tin"),
        ("7Jx16 MAX LOAD 690 kg", "wheel"),
        ("7Jx16 690 kg", "wheel"),
        ("DOT 10X5 AB12 2725", "tin"),
        ("104/102R", "service_description"),
        ("(58W)", "service_description"),
        ("TREADWEAR 400", "grading"),
        ("Temperature: B", "grading"),
        ("MAX. PRESS. 44 PSI", "molded_limit"),
        ("80 km/h max", "molded_limit"),
        ("100/90-19 57V", "tire"),
        ("DOT 2055 5219", "tin"),
    ] {
        let marking: Marking = text.parse().unwrap();
        assert_eq!(marking.kind(), kind, "{text}");
        assert_eq!(marking.to_string().parse(), Ok(marking), "{text}");
    }
    for text in [
        "205 55 16",
        "205-55-16",
        "2055 5516",
        "1234567 3219",
        "20560VR17",
        "TREADWEAR",
        "AA",
        "MAX LOAD 615",
        "190/65R15",
    ] {
        assert!(text.parse::<Marking>().is_err(), "{text}");
    }
    for text in ["7Jx16 AB12", "7JX16AB12", "7HX16AB12", "10X5 AB12 2725"] {
        assert!(text.parse::<Marking>().is_err(), "{text}");
    }
    // A month with a year of two digits could be holes on inches, and is neither.
    for text in ["7Jx16 ET45 03/12", "7Jx18 06/15", "10/12", "04/98"] {
        assert!(text.parse::<Marking>().is_err(), "{text}");
    }
    let error = WheelStamp::parse("7Jx16 ET45 03/12").unwrap_err();
    assert_eq!(
        (error.kind(), error.field(), error.span()),
        (ParseErrorKind::Ambiguous, Field::BoltCircle, 11..16)
    );
    for (typed, canonical) in [
        ("5/4.5", "5x114.3"),
        ("5/5in", "5x127"),
        ("4/98", "4x98"),
        ("7Jx16 ET45 5x112/66.6", "7Jx16 ET45 5x112 66.6"),
        ("8.25x22.5 10x335/281", "8.25x22.5 10x335 281"),
        ("7Jx16 5x120/5x112", "7Jx16 5x120/5x112"),
        ("7Jx16 5x112/120", "7Jx16 5x112/120"),
        ("7½Jx17 +45mm Ø57.1", "7.5Jx17 ET45 57.1"),
        ("7Jx16 ET 45 mm 5/112 MAX LOAD: 690 kg", "7Jx16 ET45 5x112 690 kg"),
    ] {
        assert_eq!(typed.parse::<Marking>().unwrap().to_string(), canonical);
    }
    let error = WheelStamp::parse("7Jx16 5x120/112").unwrap_err();
    assert_eq!(
        (error.kind(), error.field(), error.span()),
        (ParseErrorKind::Ambiguous, Field::BoltCircle, 6..15)
    );
    // A wheel that contradicts itself is nothing else.
    for (text, field) in [
        ("J7X16 5X112 112", Field::Bore),
        ("J7x16 5x500", Field::BoltCircle),
        ("DOT 7Jx16 5x500", Field::BoltCircle),
        ("7.5-20 8x275 281", Field::Bore),
        ("4x8 204", Field::Bore),
        ("300TR300", Field::RimWidth),
        ("3.25S-18", Field::Contour),
        ("6.00H-13", Field::Contour),
    ] {
        let error = text.parse::<Marking>().unwrap_err();
        assert_eq!((error.kind(), error.field()), (ParseErrorKind::Contradiction, field), "{text}");
    }
}
