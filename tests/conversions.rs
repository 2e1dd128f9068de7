//! Designations from owned text, and markings in files.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use std::fmt::{Debug, Display};
use std::str::FromStr;

use beadseat::fitment::Day;
use beadseat::rim::{Contour, Hump, RimDiameter, RimWidth};
use beadseat::tire::{
    AlphaNumeric, Flotation, FullProfile, LoadIndex, LoadRange, LoadVersion, Metric, Numeric,
    ServiceDescription, SpeedSymbol, Tire, TireSize,
    grading::{Grade, Grading, TreadwearGrade},
    identification::{DateCode, IdentificationNumber},
    sidewall::{ApprovalMark, MoldedLimit, Plies, SidewallLine, SidewallMark},
};
use beadseat::wheel::{BoltCircle, Bore, Inset, Seat, Thread, Wheel, WheelSize, WheelStamp};
use beadseat::{Marking, ParseError};

fn read<T>(good: &str, wrong: &str)
where
    T: Copy + Debug + Display + PartialEq + FromStr<Err = ParseError>,
    T: for<'a> TryFrom<&'a str, Error = ParseError> + TryFrom<String, Error = ParseError>,
{
    let value: T = good.parse().unwrap();
    assert_eq!(T::try_from(good.to_owned()), Ok(value));
    assert_eq!(T::try_from(good), Ok(value));
    assert_eq!(T::try_from(value.to_string()), Ok(value));
    assert_eq!(T::try_from(wrong.to_owned()), Err(wrong.parse::<T>().unwrap_err()));
}

#[test]
fn owned_text_is_read_as_borrowed_text_is() {
    read::<Tire>("205/55 R16 91V", "205/55R16 91V 94V");
    read::<TireSize>("205/55 R16", "205/56R16");
    read::<Metric>("205/55R16", "206/55R16");
    read::<FullProfile>("165 sr 15", "156R13");
    read::<Numeric>("7,50 r 16 c", "0.50-16");
    read::<Flotation>("33x12.5R15LT", "15x10-15");
    read::<AlphaNumeric>("h78 - 15", "I78-14");
    read::<ServiceDescription>("121/118 s", "91/94V");
    read::<LoadIndex>("091", "280");
    read::<SpeedSymbol>("h", "I");
    read::<LoadVersion>("Reinforced", "XXL");
    read::<LoadRange>("10 ply", "LRI");
    read::<SidewallLine>("205/55R16 91V M+S", "205/55R16 91V and more");
    read::<SidewallMark>("mud & snow", "FRETREAD");
    read::<Plies>("tread 4 plies", "TREAD 2");
    read::<ApprovalMark>("(e4) 0224806-s", "E2 12");
    read::<TreadwearGrade>("0340", "219");
    read::<Grading>("400aaa", "400 AA");
    read::<Grade>("traction aa", "AA");
    read::<IdentificationNumber>("DOT 1AB 2C3D4E 2725", "DOT");
    read::<DateCode>("0118", "5316");
    read::<MoldedLimit>("max. press. 44 psi (300 kPa)", "MAX 44 PSI");
    read::<RimDiameter>("17,5", "18.5");
    read::<RimWidth>("5 1/2", "1.5");
    read::<Contour>("j", "Q");
    read::<Hump>("h2", "H3");
    read::<Wheel>("7 j x 16 h2 et 45", "7Jx16 ET45 5x112 4x100");
    read::<WheelSize>("6 1/2 J × 16 h2", "7Jx16.2");
    read::<WheelStamp>("5x112 690 kg 7jx16 w23/2021", "5x112 690 kg");
    read::<BoltCircle>("5 X 4.75\"", "5x57");
    read::<Inset>("is 38,5", "ET301");
    read::<Bore>("cb57.10", "12");
    read::<Seat>("Ball r13", "cone 75");
    read::<Thread>("m12x1,50", "M14");
    read::<Day>("2026-11-05", "2026-13-01");
    read::<Marking>("6x139,7", "205 55 16");
}

#[cfg(feature = "serde")]
#[test]
fn a_marking_in_a_file_is_its_canonical_text() {
    for (typed, canonical) in [
        ("205/55 r16 91 v", "205/55R16 91V"),
        ("205/55R16 91V m & s", "205/55R16 91V M+S"),
        ("7 j x 16 h2 et 45", "7Jx16 H2 ET45"),
        ("690 kg 7x16 JWL", "7x16 690 kg JWL"),
        ("5x4.5in", "5x114.3"),
        ("m14 x 1,50", "M14x1.5"),
        ("91 v", "91V"),
        ("091", "91"),
        ("v", "V"),
        ("traction aa", "TRACTION AA"),
        ("mud & snow", "M+S"),
    ] {
        let marking: Marking = serde_json::from_value(typed.into()).unwrap();
        assert_eq!(marking, typed.parse().unwrap(), "{typed}");
        assert_eq!(serde_json::to_value(marking).unwrap(), canonical);
        assert_eq!(serde_json::from_value::<Marking>(canonical.into()).unwrap(), marking);
    }
    for wrong in [serde_json::json!("205 55 16"), serde_json::json!(91), serde_json::json!(["91V"])] {
        assert!(serde_json::from_value::<Marking>(wrong.clone()).is_err(), "{wrong}");
    }
}
