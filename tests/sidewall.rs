//! Single marks against the rows of `tests/reference/`.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use std::collections::BTreeSet;

use beadseat::tire::{
    LoadIndex, LoadRange, LoadVersion, SpeedSymbol, TireSize,
    grading::Grading,
    identification::{DateCode, IdentificationNumber},
    sidewall::{ApprovalAuthority, ApprovalMark, ApprovalStage, MarkTopic, Plies, SidewallMark},
};
use beadseat::{Field, ParseErrorKind, literal, sources};
use common::{Tally, rows};

fn read(text: &str) -> SidewallMark {
    SidewallMark::parse(text).unwrap_or_else(|error| panic!("{}", error.show(text)))
}

/// The texts of the rows that are single marks, and the mark they are read as.
fn texts() -> Vec<(&'static str, &'static [&'static str], SidewallMark)> {
    use SidewallMark as M;
    const E2: SidewallMark = M::Approval(literal!(ApprovalMark, "E2 024567"));
    const E_OF_DIRECTIVE: SidewallMark = M::Approval(literal!(ApprovalMark, "e2 024567"));
    const MATERIALS: SidewallMark =
        M::Plies(literal!(Plies, "TREAD 2 POLYESTER + 2 STEEL SIDEWALL 2 POLYESTER"));
    const COUNTS: SidewallMark = M::Plies(literal!(Plies, "TREAD 4 PLIES SIDEWALL 2 PLIES"));
    const RANGE: SidewallMark = M::LoadRange(literal!(LoadRange, "8PR"));
    vec![
        ("M+S", &["M+S", "M.S", "M&S", "M/S", "MS", "M-S", "m + s", "M.S.", "mud and snow"], M::MudAndSnow),
        ("3PMSF", &["3PMSF", "3pmsf", "three-peak mountain with snowflake"], M::SevereSnow),
        ("ice grip", &["ice grip", "ICE-GRIP"], M::IceGrip),
        ("E in a circle + number", &["E2 024567", "(E2) 024567"], E2),
        ("e in a rectangle + number", &["e2 024567", "(e2)-024567"], E_OF_DIRECTIVE),
        ("DOT", &["DOT", "dot"], M::Dot),
        ("DOT-R", &["DOT-R", "dot-r"], M::DotRetread),
        ("RETREAD", &["RETREAD"], M::Retread),
        ("REGROOVABLE", &["REGROOVABLE"], M::Regroovable),
        ("TUBELESS", &["TUBELESS", "TL"], M::Tubeless),
        ("TUBE TYPE", &["TUBE TYPE", "tube-type", "TUBETYPE", "TUBE\u{a0}TYPE", "TT"], M::TubeType),
        ("RADIAL / R", &["RADIAL"], M::Radial),
        ("D or nothing", &["DIAGONAL", "bias"], M::Diagonal),
        ("B", &["BIAS-BELTED", "bias belted"], M::BiasBelted),
        (
            "TREAD n POLYESTER + n STEEL / SIDEWALL n POLYESTER",
            &[
                "TREAD 2 POLYESTER + 2 STEEL SIDEWALL 2 POLYESTER",
                "PLIES: Tread Area: 2 plies Polyester+2 Steel, Sidewall: 2 Polyester",
                "sidewall 2 ply polyester tread plies 2 polyester, 2 steel",
            ],
            MATERIALS,
        ),
        (
            "PLIES count",
            &["PLIES: SIDEWALL 2, TREAD 4", "TREAD 4 PLIES SIDEWALL 2 PLIES", "plies tread 4 sidewall 2"],
            COUNTS,
        ),
        ("LOAD RANGE letter", &["LOAD RANGE D", "LRD"], RANGE),
        ("PR (8PR)", &["8PR", "8 PR"], RANGE),
        ("INFLATE TO 60 PSI", &["INFLATE TO 60 PSI", "inflate to 420 kPa (60 psi)"], M::SpareInflation),
        (
            "XL / EXTRA LOAD / REINFORCED / RF (old) / RNF",
            &["XL", "EXTRA LOAD", "REINFORCED", "RNF"],
            M::LoadVersion(LoadVersion::Extra),
        ),
        ("LL", &["LL"], M::LoadVersion(LoadVersion::Light)),
        ("SL", &["SL", "standard load"], M::StandardLoad),
        ("HL (prefix)", &["HL"], M::LoadVersion(LoadVersion::High)),
        ("EMT", &["EMT"], M::ExtendedMobility),
        ("maker abbreviations for run-flat (RFT and the like)", &["RFT", "run-flat"], M::RunFlat),
        ("FI", &["FI"], M::FarmImplement),
        ("NHS", &["NHS", "not for highway service"], M::NotForHighway),
        ("ET", &["ET"], M::ExtraTread),
        ("POR", &["POR", "professional off-road"], M::ProfessionalOffRoad),
        ("MPT", &["MPT"], M::MultiPurposeTruck),
        ("ML", &["ML"], M::MiningAndLogging),
        ("FRT", &["FRT", "Free Rolling Tyre"], M::FreeRolling),
        ("ROTATION + arrow", &["ROTATION", "ROTATION →", "rotation<-", "→", "->"], M::Rotation),
        ("DIRECTIONAL", &["DIRECTIONAL"], M::Rotation),
        (
            "OUTSIDE / SIDE FACING OUTWARDS / EXTERN",
            &["OUTSIDE", "SIDE FACING OUTWARDS", "EXTERN"],
            M::Outside,
        ),
        ("INSIDE / SIDE FACING INWARDS", &["INSIDE", "SIDE FACING INWARDS"], M::Inside),
        ("TWI / triangle", &["TWI", "▲", "△"], M::TreadWearIndicator),
        ("winter TWI", &["WI", "winter TWI"], M::WinterWearIndicator),
        ("DA, NA, blemished", &["DA", "NA", "blemished"], M::FactorySecond),
        ("OE homologation mark", &["★"], M::OriginalEquipment),
    ]
}

/// Rows about the artwork, the test or the height of a mark that another row names, and kinds of tire
/// without a text of their own.
const NOT_A_TEXT: &[&str] = &[
    "M+S void rule",
    "3PMSF with 16 inch reference",
    "3PMSF artwork",
    "3PMSF test in EU",
    "HL UN rules",
    "run-flat pictogram",
    "special use tyre",
    "snow tyre (UN)",
    "intended outboard sidewall",
    "TWI height US retread",
    "TWI height US new",
    "safety warning text",
    "(no load symbol)",
    "(no prefix)",
    "PSI index on R54 tyres",
];

/// Rows whose text belongs to a size, a service description, a grading, an identification number …
const ELSEWHERE: &[&str] = &[
    "RF between section and rim (225/45RF17)",
    "ZRF",
    "P (prefix)",
    "LT (prefix or suffix)",
    "T or S (prefix)",
    "ST",
    "C (suffix)",
    "CP",
    "UTQG line",
    "WWYY",
    "additional service description in a circle",
    "154/150",
    "plant code",
    "MAX LOAD ... MAX PRESS ...",
    "MAX LOAD SINGLE kg (lb) AT kPa (psi) COLD / MAX LOAD DUAL",
    "kPa (psi)",
    "allowed MAX PRESS values",
];

/// Rows whose text is not read at all.
const UNREAD: &[&str] = &["COUNTRY / MADE IN"];
const FREE_TEXT: &str = "the name of a country in any language, which says nothing of the tire";

#[test]
fn every_row_is_a_mark_or_has_its_reason() {
    let texts = texts();
    let mut tally = Tally::of("sidewall marks");
    for row in &rows("sidewall_marks.csv") {
        let name = &row["mark"];
        let memory = row["certainty"].starts_with("memory");
        if let Some((_, texts, mark)) = texts.iter().find(|t| t.0 == name) {
            for text in *texts {
                assert_eq!(read(text), *mark, "{text}");
            }
            // One row of a mark that has two may be from memory; never the other way round.
            assert!(!memory || mark.citation().is_from_memory() || name == "DIRECTIONAL", "{name}");
            tally.checked(row);
        } else if name == "CCC, INMETRO, BIS(ISI), SNI, GSO" {
            for text in ["CCC", "INMETRO", "BIS", "ISI", "SNI", "GSO"] {
                assert_eq!(read(text).topic(), MarkTopic::Approval);
                assert!(read(text).citation().is_from_memory());
            }
            tally.checked(row);
        } else if name == "S-suffix noise" {
            let SidewallMark::Approval(mark) = read("e4 0224806-S") else { panic!() };
            assert_eq!(mark.rolling_sound(), Some(ApprovalStage::NotTold));
            tally.checked(row);
        } else if name == "FRETREAD" {
            assert!(SidewallMark::parse(name).is_err()); // a near miss is not the mark
            tally.checked(row);
        } else if NOT_A_TEXT.contains(&name) {
            tally.left(name, "no text of its own");
        } else if ELSEWHERE.contains(&name) {
            tally.left(name, "part of another designation");
        } else {
            assert!(UNREAD.contains(&name), "a row without a test: {name}");
            tally.left(name, FREE_TEXT);
        }
    }
    tally.close(43, &[("no text of its own", 15), ("part of another designation", 17), (FREE_TEXT, 1)]);
}

#[test]
fn approvals_say_what_their_rows_say() {
    let approval = |text: &str| ApprovalMark::parse(text).unwrap();
    let mut tally = Tally::of("approvals");
    for row in &rows("eu_label.csv") {
        let (class, lower, source) = (&row["class"], &row["lower"], &row["source"]);
        match &row["parameter"] {
            "r117_mark" => {
                let mark = approval(&format!("E4 024567 {class}"));
                let told = (
                    mark.rolling_sound().is_some(),
                    mark.is_approved_for_wet_grip(),
                    mark.rolling_resistance().is_some(),
                );
                assert_eq!(told, (class == "S", class == "W", class == "R"));
                for stage in ["1", "2"] {
                    let text = format!("E4 024567 {class}{stage}");
                    assert_eq!(ApprovalMark::parse(&text).is_ok(), class != "W", "{text}");
                }
            }
            "r117_mark_example" if class.starts_with("E2") => {
                let mark = approval(class);
                assert_eq!(mark.authority(), ApprovalAuthority::UnitedNations);
                assert_eq!(mark.rolling_sound(), Some(ApprovalStage::First));
                assert!(mark.is_approved_for_wet_grip());
                assert_eq!(mark.rolling_resistance(), Some(ApprovalStage::First));
                assert_eq!(mark.to_string(), class);
            }
            "r117_mark_example" => {
                let mark = approval(class);
                assert_eq!((mark.authority(), mark.country_number()), (ApprovalAuthority::EuropeanUnion, 4));
                assert_eq!(
                    (mark.rolling_sound(), mark.rolling_resistance()),
                    (Some(ApprovalStage::NotTold), None)
                );
                assert!(!mark.is_approved_for_wet_grip());
                assert_eq!(mark.to_string(), "e4 0224806 S");
            }
            "e_mark_prefix" => {
                let regulation = approval(&format!("E4 {class}1234")).regulation().unwrap();
                assert!(source.contains(regulation), "{source}");
            }
            "e_mark_letter" => {
                let authority = if class == "E" {
                    ApprovalAuthority::UnitedNations
                } else {
                    ApprovalAuthority::EuropeanUnion
                };
                assert_eq!(approval(&format!("{class}4")).authority(), authority);
                assert!(source.contains(if class == "E" { "UN approval" } else { "EU directive" }));
            }
            "e_mark_country" => {
                let mark = approval(&format!("E{class}"));
                assert_eq!(mark.country(), Some(source));
                assert_eq!(
                    mark.country_citation().is_from_memory(),
                    &row["certainty"] == "memory",
                    "{class}"
                );
            }
            _ => continue,
        }
        assert!(lower.is_empty());
        tally.checked(row);
    }
    tally.close(3 + 2 + 2 + 2 + 15, &[]);
}

#[test]
fn the_marking_cases_hold() {
    let mut tally = Tally::of("marking cases of marks");
    for row in rows("marking_cases.csv") {
        let input = &row["input"];
        if let Some(text) = input.strip_prefix("E mark ") {
            let SidewallMark::Approval(mark) = read(text.trim_matches('"')) else { panic!("{text}") };
            assert_eq!((mark.country(), mark.country_number()), (Some("France"), 2));
            assert_eq!((mark.regulation(), mark.series()), (Some("UN R30"), Some(2)));
            assert!(row["expected"].contains("France") && row["expected"].contains("UN R30 series 02"));
            tally.checked(&row);
        } else if input.starts_with("M+S only") {
            assert_eq!(&row["expected"], "not enough");
            assert!(!read("M+S").meets_severe_snow_rule() && read("3PMSF").meets_severe_snow_rule());
            tally.checked(&row);
        }
    }
    tally.close(2, &[]);
}

#[test]
fn no_mark_is_read_as_anything_else() {
    let mut seen = BTreeSet::new();
    for mark in SidewallMark::WORDS {
        let text = mark.to_string();
        assert!(seen.insert(text.clone()), "{text} twice");
        assert_eq!(read(&text), *mark);
        assert_eq!(read(&text.to_lowercase()), *mark);
        assert!(IdentificationNumber::parse(&text).is_err(), "{text}");
        assert!(DateCode::parse(&text).is_err() && Grading::parse(&text).is_err(), "{text}");
        assert!(LoadIndex::parse(&text).is_err() && SpeedSymbol::parse(&text).is_err(), "{text}");
        assert!(TireSize::parse(&text).is_err(), "{text}");
        assert!(
            !mark.meaning().is_empty() && !mark.for_choice().is_empty() && !mark.topic().name().is_empty()
        );
        assert!(sources().any(|source| source == mark.citation()), "{text}");
    }
    assert_eq!(seen.len(), 35);
    for other in ["91", "91V", "V", "R", "205/55R16", "1AB2C3D4E1615", "400 A A", "317", "M14x1.5", "5x112"] {
        assert!(SidewallMark::parse(other).is_err(), "{other}");
    }
}

#[track_caller]
fn refuses(text: &str, kind: ParseErrorKind, field: Field, part: &str) {
    let error = SidewallMark::parse(text).unwrap_err();
    assert_eq!((error.kind(), error.field(), &text[error.span()]), (kind, field, part), "{text}");
}

#[test]
fn an_error_names_the_place() {
    use ParseErrorKind::{Ambiguous, Missing, OutOfRange, Trailing};
    refuses("RF", Ambiguous, Field::SidewallMark, "RF");
    refuses("FRETREAD", Missing, Field::SidewallMark, "F");
    refuses("RETREADED", Missing, Field::SidewallMark, "R");
    refuses("é", Missing, Field::SidewallMark, "é");
    refuses("M+S 3PMSF", Trailing, Field::Text, "3PMSF");
    refuses("E0", OutOfRange, Field::ApprovalMark, "0");
    refuses("E100", OutOfRange, Field::ApprovalMark, "100");
    refuses("(E4", Missing, Field::ApprovalMark, "");
    refuses("E4 123", OutOfRange, Field::ApprovalMark, "123");
    refuses("E4 123456789", OutOfRange, Field::ApprovalMark, "123456789");
    refuses("E4 024567 S3", OutOfRange, Field::ApprovalMark, "S3");
    refuses("E4 024567 S1X", OutOfRange, Field::ApprovalMark, "S1X");
    refuses("E4 024567 X", Trailing, Field::Text, "X");
    assert!(ApprovalMark::parse("4 024567").is_err());
    refuses("TREAD 2", Missing, Field::Plies, "");
    refuses("TREAD 0 STEEL", OutOfRange, Field::Plies, "0");
    refuses("TREAD 21 STEEL", OutOfRange, Field::Plies, "21");
    refuses("TREAD 2 COTTON", Missing, Field::Plies, "C");
    refuses("TREAD 1 STEEL TREAD 1 NYLON", ParseErrorKind::Contradiction, Field::Plies, "TREAD");
    refuses("TREAD 1 STEEL + 1 NYLON + 1 RAYON + 1 ARAMID + 1 STEEL", OutOfRange, Field::Plies, "1 STEEL");
    refuses("PLIES 4", Missing, Field::Plies, "4");
    refuses("TREADS 4 PLIES", Missing, Field::SidewallMark, "T");
    refuses("TREAD 4 PLIES SIDEWALL 2 PLIES M+S", Trailing, Field::Text, "M+S");
    assert_eq!(read("TREAD WEAR INDICATOR"), SidewallMark::TreadWearIndicator);
}

#[test]
fn an_approval_round_trips_with_its_zeros() {
    for text in ["E4", "e99", "E4 0000", "E4 00000001 W", "E11 99999999 S2WR2", "e1 0245 R", "E43 0245 SR1"] {
        let mark = ApprovalMark::parse(text).unwrap();
        assert_eq!(mark.to_string(), text);
        assert_eq!(read(text), SidewallMark::Approval(mark));
    }
    let series = |text: &str| ApprovalMark::parse(text).unwrap().series();
    assert_eq!((series("E4"), series("E4 0000"), series("E4 99999999")), (None, Some(0), Some(99)));
    assert_eq!(ApprovalMark::parse("E4 1012345").unwrap().regulation(), None);
}

#[test]
fn marks_are_small() {
    assert!(size_of::<SidewallMark>() <= 32);
}
