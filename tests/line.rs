//! Whole sidewall lines: what is read, in what order, and what cannot all be true.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::tire::sidewall::{LineContradiction, SidewallLine};
use beadseat::{Field, ParseErrorKind};

#[track_caller]
fn reads(typed: &str, canonical: &str) {
    let line = SidewallLine::parse(typed).unwrap_or_else(|error| panic!("{}", error.show(typed)));
    assert_eq!(line.to_string(), canonical, "{typed}");
    assert_eq!(SidewallLine::parse(canonical).unwrap(), line, "{canonical}");
}

#[test]
fn lines_as_people_type_and_molds_print_them() {
    reads("205/55R16 91V", "205/55R16 91V");
    reads("m+s 3pmsf".replace("m+s", "205/55 r 16 91 v m+s").as_str(), "205/55R16 91V M+S 3PMSF");
    reads("195/65R15 Reinforced TL 95T M&S", "195/65R15 95T XL M+S TUBELESS");
    reads("195/70R15C 104/102R 106/104N 8PR", "195/70R15C 104/102R 106/104N LRD");
    reads("8.25R20 TUBE TYPE 14PR", "8.25R20 LRG TUBE TYPE");
    reads(
        "225/50R16 92V MAX LOAD 630 kg (1389 lb) MAX PRESS 300 kPa (44 psi)",
        "225/50R16 92V MAX LOAD 630 kg MAX PRESS 300 kPa",
    );
    reads(
        "LT245/75R17 MAX. LOAD DUAL 1320 kg (2910 LBS) AT 550 kPa (80 PSI) COLD 121/118S MAX LOAD SINGLE 1450 KG LRE",
        "LT245/75R17 121/118S LRE MAX LOAD 1450 kg MAX LOAD DUAL 1320 kg AT 550 kPa",
    );
    // The two loads may stand at two pressures, and in either order.
    reads(
        "LT245/75R17 MAX LOAD DUAL 1320 kg AT 520 kPa MAX LOAD SINGLE 1450 kg AT 550 kPa",
        "LT245/75R17 MAX LOAD 1450 kg AT 550 kPa MAX LOAD DUAL 1320 kg AT 520 kPa",
    );
    reads("205/55R16 91V MAX. LOAD 1356 LBS. @ 44 PSI", "205/55R16 91V MAX LOAD 1356 lb AT 44 psi");
    reads("205/55R16 MAX. PERMISSIBLE INFLATION PRESSURE 350 kPa (51 PSI)", "205/55R16 MAX PRESS 350 kPa");
    reads("205/55R16 MAX COLD PRESS. 51 PSI", "205/55R16 MAX PRESS 51 psi");
    reads("P205/55R16 89H Radial", "P205/55R16 89H RADIAL");
    reads("205/55R16 91V radial tubeless outside M+S", "205/55R16 91V M+S TUBELESS RADIAL OUTSIDE");
    reads("265/75R16 116T Mud and Snow POR", "265/75R16 116T M+S POR");
    reads("18x9.5-8 NHS", "18x9.50-8 NHS");
    reads("P205/55R16 89H STEEL BELTED RADIAL", "P205/55R16 89H RADIAL");
    reads("LT245/75R17 121/118S E", "LT245/75R17 121/118S LRE");
    reads("LT245/75R17/E 121/118S", "LT245/75R17 121/118S LRE");
    reads("35x12.50R20LT E 121Q M+S", "35x12.50R20LT 121Q LRE M+S");
    reads("ST205/75R15 D", "ST205/75R15 LRD");
    reads("11R22.5 G 144/142L", "11R22.5 144/142L LRG");
    reads("LT245/75R17 M S 121/118S", "LT245/75R17 121/118S M+S");
    reads("LT245/75R17 121/118S LOAD RANGE E 10 PLY RATING", "LT245/75R17 121/118S LRE");
    reads("205/55R16 94V XL REINFORCED", "205/55R16 94V XL");
    reads(
        "11R22.5 146/143L MAX. LOAD SINGLE 6610 LBS AT 105 PSI COLD DUAL 6005 LBS AT 105 PSI COLD",
        "11R22.5 146/143L MAX LOAD 6610 lb AT 105 psi MAX LOAD DUAL 6005 lb AT 105 psi",
    );
    reads("205/55R16 Maximum Load 615 KGS", "205/55R16 MAX LOAD 615 kg");
    reads("LT245/75R17 10 ply rating", "LT245/75R17 LRE");
    reads("195/65R15 95T RNF", "195/65R15 95T XL");
    reads("120/70ZR17M/C (58W) TL", "120/70ZR17 M/C (58W) TUBELESS");
    reads("120/70ZR17 M/C 58W (58W)", "120/70ZR17 M/C 58W (58W)");
    reads("205/55R16 91V (91W)", "205/55R16 91V 91W");
    reads("100/90-19 57V TT", "100/90-19 M/C 57V TUBE TYPE");
    reads("195/70R15C 104/102R (97T)", "195/70R15C 104/102R 97T");
    reads("225/75 R 16 C 121/120 R ( 116 T ) M+S", "225/75R16C 121/120R 116T M+S");
    reads("11R22.5 148/145L (150/147K) 16PR", "11R22.5 148/145L 150/147K LRH");
    reads("195/70R15C 104/102R 97T", "195/70R15C 104/102R 97T");
    // The Y in brackets is a speed, not a circle, wherever it stands.
    reads("245/40ZR19 (94Y)", "245/40ZR19 (94Y)");
    reads("245/40ZR19 98W (98Y)", "245/40ZR19 98W (98Y)");
    reads("245/40ZR19 98W 98(Y)", "245/40ZR19 98W (98Y)");
    reads("245/40ZR19 98W 98Y", "245/40ZR19 98W 98Y");
    reads("T125/70D16 96M MAX SPEED 80 KM/H", "T125/70-16 96M MAX SPEED 80 km/h");
    reads("T125/70D16 max. speed 50mph 96M", "T125/70-16 96M MAX SPEED 50 mph");
    reads("T125/70D16 80 km/h max 96M", "T125/70-16 96M MAX SPEED 80 km/h");
    reads("T125/70D16 MAX 80 kph (50 mph) 96M", "T125/70-16 96M MAX SPEED 80 km/h");
    reads("195/70R15C 104/102K MAX LOAD 900 KG", "195/70R15C 104/102K MAX LOAD 900 kg");
    reads("245/40R19 101Y HL XL".replace(" HL XL", " HL").as_str(), "HL245/40R19 101Y");
}

#[track_caller]
fn refused(text: &str, kind: ParseErrorKind, field: Field, part: &str) {
    let error = SidewallLine::parse(text).unwrap_err();
    assert_eq!((error.kind(), error.field(), &text[error.span()]), (kind, field, part), "{text}");
}

#[test]
fn lines_that_are_refused_say_where() {
    use ParseErrorKind::{Contradiction, Missing, OutOfRange, Trailing};
    refused("205/55R16 91V WIDE", Trailing, Field::Text, "WIDE");
    refused("205/55R16 91V RF", ParseErrorKind::Ambiguous, Field::SidewallMark, "RF");
    refused("LT245/75R17 121/118S E D", Contradiction, Field::LoadRange, "D");
    refused("205/55R16 91V E", Trailing, Field::Text, "E");
    refused("195/70R15C 104/102R D", Trailing, Field::Text, "D");
    let eleven = "205/55R16 M+S 3PMSF TL TT DOT CCC BIS SNI GSO SL ET";
    refused(eleven, OutOfRange, Field::SidewallMark, "ET");
    refused("205/55R16 91V 91(W)", OutOfRange, Field::SpeedSymbol, "91(W)");
    refused(
        "205/55R16 MAX LOAD 600 kg MAX LOAD 615 kg",
        Contradiction,
        Field::MaximumLoad,
        "MAX LOAD 615 kg",
    );
    refused("205/55R16 M+S M+S", Contradiction, Field::SidewallMark, "M+S");
    refused("205/55R16 91V 90T 89S", Contradiction, Field::LoadIndex, "");
    refused("205/55R16 MAX LOAD 615", Missing, Field::MaximumLoad, "");
    refused("205/55R16 MAX LOAD 12 kg", OutOfRange, Field::MaximumLoad, "12");
    refused("205/55R16 MAX PRESS 9 kPa", OutOfRange, Field::MaximumPressure, "9");
    refused("205/55R16 MAX FORCE 190", Missing, Field::MaximumLoad, "F");
    refused("205/55R16 MAX SPEED 190", Missing, Field::MaximumSpeed, "");
    refused("205/55R16 MAX SPEED 2 km/h", OutOfRange, Field::MaximumSpeed, "2");
    refused("205/55R16 MAX SPEED 501 km/h", OutOfRange, Field::MaximumSpeed, "501");
    refused("205/55R16 80 km/h", Missing, Field::MaximumSpeed, "");
    refused("205/55R16 80 km/h max 50 mph max", Contradiction, Field::MaximumSpeed, "50 mph max");
    refused("205/55R16 MAX SPEED 80 km/h (60 mph)", Contradiction, Field::MaximumSpeed, "80 km/h (60 mph)");
    refused("205/55R16 MAX SPEED 80 km/h (50 mph", Missing, Field::MaximumSpeed, "");
    refused("195/70R15C (97T)", OutOfRange, Field::SpeedSymbol, "T");
    refused("195/70R15C 104/102R (97T", Missing, Field::SpeedSymbol, "");
    refused("195/70R15C 104/102R (97T) (96T)", Contradiction, Field::LoadIndex, "");
    refused("195/70R15C 104/102R (97)", Missing, Field::SpeedSymbol, ")");
    refused("195/70R15C 104/102R (97/99T)", OutOfRange, Field::DualLoadIndex, "99");
    refused("205/55R16 MAX LOAD 615 kg (1500 lb)", Contradiction, Field::MaximumLoad, "615 kg (1500 lb)");
    refused(
        "205/55R16 MAX PRESS 300 kPa (51 psi)",
        Contradiction,
        Field::MaximumPressure,
        "300 kPa (51 psi)",
    );
}

#[track_caller]
fn contradicts(text: &str, expected: &[LineContradiction]) {
    let line = SidewallLine::parse(text).unwrap_or_else(|error| panic!("{}", error.show(text)));
    assert_eq!(line.contradictions().collect::<Vec<_>>(), expected, "{text}");
}

#[test]
fn contradictions_are_found_and_nothing_else() {
    use LineContradiction as C;
    contradicts("205/55R16 91V", &[]);
    contradicts("205/55ZR16 91W", &[]);
    contradicts("205/55ZR16 (91Y)", &[]);
    contradicts("205/55ZR16 91V", &[C::SpeedBelowSize]);
    contradicts("165SR15 86Q", &[C::SpeedBelowSize]);
    contradicts("165HR15 86H", &[]);
    contradicts("LT245/75R17 121/118S XL", &[C::VersionOfOtherFamily]);
    contradicts("HL245/40R19 101Y XL", &[]);
    contradicts("205/55R16 91V LRE", &[C::RangeOfOtherFamily]);
    contradicts("205/55R16 91V MAX LOAD 615 kg", &[]);
    contradicts("205/55R16 91V MAX LOAD 1356 lb", &[]);
    contradicts("205/55R16 91V MAX LOAD 670 kg", &[C::LoadAgainstIndex]);
    contradicts("205/55R16 91V MAX LOAD 1400 lb", &[C::LoadAgainstIndex]);
    // 154 is 3750 kg, 156 is 4000 kg and 150 is 3350 kg, by the load index table.
    contradicts("315/80R22.5 156/150L 154/150M MAX LOAD 3750 kg", &[]);
    contradicts("315/80R22.5 156/150L 154/150M MAX LOAD 3350 kg", &[C::LoadAgainstIndex]);
    contradicts("315/80R22.5 156/150L 154/148M MAX LOAD 4000 kg MAX LOAD DUAL 3350 kg", &[]);
    contradicts("315/80R22.5 156/150L 154/148M MAX LOAD DUAL 3150 kg", &[C::DualLoadWithoutSingle]);
    let mixed = "315/80R22.5 156/150L 154/148M MAX LOAD 4000 kg MAX LOAD DUAL 3150 kg";
    contradicts(mixed, &[C::DualLoadAgainstIndex]);
    let neither = "315/80R22.5 156/150L 154/148M MAX LOAD 3000 kg MAX LOAD DUAL 2900 kg";
    contradicts(neither, &[C::LoadAgainstIndex, C::DualLoadAgainstIndex]);
    contradicts(
        "LT245/75R17 121/118S MAX LOAD DUAL 1450 kg",
        &[C::DualLoadWithoutSingle, C::DualLoadAgainstIndex],
    );
    contradicts("LT245/75R17 MAX LOAD 1320 kg MAX LOAD DUAL 1450 kg", &[C::DualLoadAboveSingle]);
    // Both forms of 49 CFR 571.119 S6.5(d): single and dual, or single alone.
    contradicts(
        "LT245/75R17 121/118S MAX LOAD SINGLE 1450 kg AT 550 kPa MAX LOAD DUAL 1320 kg AT 550 kPa",
        &[],
    );
    contradicts("LT245/75R17 121/118S MAX LOAD SINGLE 1450 kg AT 550 kPa", &[]);
    contradicts("LT245/75R17 MAX LOAD DUAL 1320 kg", &[C::DualLoadWithoutSingle]);
    contradicts("LT245/75R17 MAX LOAD DUAL 1320 kg AT 550 kPa", &[C::DualLoadWithoutSingle]);
    contradicts("LT245/75R17 MAX LOAD DUAL 1320 kg MAX LOAD 1450 kg", &[]);
    contradicts(
        "LT245/75R17 121/118S MAX LOAD 1450 kg MAX LOAD DUAL 1320 kg AT 550 kPa",
        &[C::DualPressureWithoutSingle],
    );
    // A pair, of a tire whose index is for a single one.
    contradicts("35x12.50R17LT 121Q MAX LOAD 1450 kg MAX LOAD DUAL 1320 kg", &[C::DualLoadWithoutIndex]);
    contradicts("205/55R16 91V MAX LOAD 615 kg MAX LOAD DUAL 560 kg", &[C::DualLoadWithoutIndex]);
    contradicts("205/55R16 91V MAX LOAD DUAL 560 kg", &[C::DualLoadWithoutSingle, C::DualLoadWithoutIndex]);
    contradicts("195/70R15C 104R 106/104N MAX LOAD 950 kg MAX LOAD DUAL 900 kg", &[]);
    // The same load in two units is not more, but for rounding.
    contradicts("11R22.5 MAX LOAD 3000 kg MAX LOAD DUAL 6615 lb", &[]);
    contradicts("11R22.5 MAX LOAD 3000 kg MAX LOAD DUAL 6640 lb", &[C::DualLoadAboveSingle]);
    contradicts("11R22.5 MAX LOAD 3000 kg MAX LOAD DUAL 3001 kg", &[C::DualLoadAboveSingle]);
    contradicts("11R22.5 MAX LOAD 3000 kg MAX LOAD DUAL 3000 kg", &[]);
    contradicts(
        "11R22.5 MAX LOAD 3000 kg AT 720 kPa MAX LOAD DUAL 2725 kg AT 830 kPa MAX PRESS 720 kPa",
        &[C::PressureBelowReference],
    );
    contradicts("LT245/75R17 121/118S LRE MAX LOAD 1450 kg AT 80 psi", &[]);
    contradicts("LT245/75R17 121/118S LRE MAX LOAD 1450 kg AT 450 kPa", &[C::RangeAgainstPressure]);
    contradicts("LT305/70R16 124/121Q LRE MAX LOAD SINGLE 1600 kg AT 448 kPa (65 PSI)", &[]);
    contradicts("LT305/70R16 124/121Q LRE MAX LOAD SINGLE 1600 kg AT 80 PSI", &[]);
    contradicts("LT305/70R16 124/121Q LRE MAX LOAD SINGLE 1600 kg AT 72 PSI", &[C::RangeAgainstPressure]);
    contradicts("LT285/75R16 126/123Q LRE MAX LOAD SINGLE 1700 kg AT 65 PSI", &[C::RangeAgainstPressure]);
    contradicts("LT245/75R16 LRC MAX LOAD 1045 kg AT 50 psi", &[]);
    contradicts("LT245/75R16 LRC MAX LOAD 1045 kg AT 345 kPa", &[]);
    contradicts("LT245/75R16 LRC MAX LOAD 1045 kg AT 48 psi", &[C::RangeAgainstPressure]);
    contradicts("LT245/75R17 MAX LOAD 1450 kg AT 350 kPa MAX PRESS 50 psi", &[]);
    contradicts("LT245/75R17 MAX LOAD 1450 kg AT 350 kPa MAX PRESS 49 psi", &[C::PressureBelowReference]);
    contradicts(
        "LT245/75R17 121/118S MAX LOAD 1450 kg AT 550 kPa MAX PRESS 450 kPa",
        &[C::PressureBelowReference],
    );
    contradicts("8.25R20 TUBELESS TUBE TYPE", &[C::TubelessAndTubeType]);
    contradicts("205/55R16 91V RADIAL", &[]);
    contradicts("195/65-15 91S RADIAL", &[C::StructureAgainstSize]);
    contradicts("195/65R15 91S BIAS PLY", &[C::StructureAgainstSize]);
    contradicts("195/65B15 91S BIAS BELTED", &[]);
    contradicts("195/65B15 91S DIAGONAL", &[C::StructureAgainstSize]);
    contradicts("205/55R16 91V SL", &[]);
    // 1380 kg is the published load of this LT size at 80 psi (load_pressure.csv); index 120 is 1400 kg, 119 1360 kg.
    contradicts("LT235/85R16 120/116Q LRE MAX LOAD SINGLE 3042 LBS AT 80 PSI", &[]);
    contradicts("LT235/85R16 120/116Q MAX LOAD 1361 kg", &[]);
    contradicts("LT235/85R16 120/116Q MAX LOAD 1360 kg", &[C::LoadAgainstIndex]);
    contradicts("LT235/85R16 120/116Q MAX LOAD 1449 kg", &[]);
    contradicts("LT235/85R16 120/116Q MAX LOAD 1450 kg", &[C::LoadAgainstIndex]);
    contradicts("225/75R16 104T MAX LOAD 901 kg", &[]);
    contradicts("225/75R16 104T MAX LOAD 905 kg", &[C::LoadAgainstIndex]);
    contradicts("HR78-15 LRB", &[]);
    contradicts("165-13 4PR", &[]);
    contradicts("195/65R15 91S 4PR", &[C::RangeOfOtherFamily]);
    contradicts("130/90-16 M/C 73H REINFORCED", &[]);
    contradicts("205/55R16 94V XL STANDARD LOAD", &[C::StandardLoadAndAnother]);
    contradicts("HL245/40R19 101Y SL", &[C::StandardLoadAndAnother]);
    contradicts("205/55R16 91V INSIDE OUTSIDE", &[C::InsideAndOutside]);
    contradicts("ST205/75R15 107M LRD MAX LOAD 975 kg AT 450 kPa", &[]);
    contradicts("ST205/75R15 107M LRD MAX LOAD 975 kg AT 550 kPa", &[C::RangeAgainstPressure]);
    // On truck and van sizes the pressure of a letter varies with the size.
    contradicts("275/80R22.5 144/142L LRG MAX LOAD 2800 kg AT 720 kPa", &[]);
    contradicts("215/65R16C 109/107T 8PR MAX LOAD 1030 kg AT 475 kPa", &[]);
}

#[test]
fn a_molded_speed_is_held_against_the_symbols() {
    const DIFFERS: &[LineContradiction] = &[LineContradiction::SpeedAgainstSymbol];
    contradicts("205/55R16 MAX SPEED 80 km/h", &[]);
    contradicts("205/55R16 91V MAX SPEED 240 km/h", &[]);
    contradicts("205/55R16 91V MAX SPEED 241 km/h", &[]);
    contradicts("205/55R16 91V MAX SPEED 242 km/h", DIFFERS);
    contradicts("205/55R16 91V MAX SPEED 239 km/h", &[]);
    contradicts("205/55R16 91V MAX SPEED 238 km/h", DIFFERS);
    contradicts("205/55R16 91V MAX SPEED 149 mph", &[]);
    contradicts("205/55R16 91V MAX SPEED 150 mph", &[]);
    contradicts("205/55R16 91V MAX SPEED 151 mph", DIFFERS);
    contradicts("205/55R16 91W MAX SPEED 170 mph", &[]);
    contradicts("205/55R16 91Y MAX SPEED 190 mph", &[]);
    contradicts("205/55R16 91Y MAX SPEED 191 mph", DIFFERS);
    contradicts("205/55ZR16 (91Y) MAX SPEED 330 km/h", &[]);
    contradicts("205/55ZR16 (91Y) MAX SPEED 280 km/h", DIFFERS);
    // Either of two service descriptions will do.
    contradicts("195/70R15C 104/102R (97T) MAX SPEED 170 km/h", &[]);
    contradicts("195/70R15C 104/102R (97T) MAX SPEED 190 km/h", &[]);
    contradicts("195/70R15C 104/102R (97T) MAX SPEED 180 km/h", DIFFERS);
    // A spare may say less than its symbol, never more.
    contradicts("T125/70D16 96M MAX SPEED 80 km/h", &[]);
    contradicts("T125/70D16 96M MAX SPEED 50 mph", &[]);
    contradicts("T125/70D16 96M MAX SPEED 140 km/h", DIFFERS);
    contradicts("125/70D16 96M MAX SPEED 80 km/h", DIFFERS);
    contradicts("340/65R28 130A8 MAX SPEED 40 km/h", &[]);
    contradicts("340/65R28 130A8 MAX SPEED 50 km/h", DIFFERS);
}

#[test]
fn a_line_is_small() {
    assert!(size_of::<SidewallLine>() <= 64, "{}", size_of::<SidewallLine>());
}
