//! The speed symbol against published tables.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::tire::{ServiceDescription, SizeSpeedLetter, SpeedSymbol, TireSize};
use beadseat::uom::si::velocity::kilometer_per_hour;
use common::{Tally, rows};

#[test]
fn table() {
    let mut tally = Tally::of("speed symbol");
    let mut symbols = Vec::new();
    for row in &rows("speed_symbol.csv") {
        let text = &row["symbol"];
        let in_size = match text {
            "ZR" => Some(SizeSpeedLetter::Z),
            "VR" => Some(SizeSpeedLetter::V),
            "HR" => Some(SizeSpeedLetter::H),
            "SR" => Some(SizeSpeedLetter::S),
            _ => None,
        };
        if in_size.is_some() {
            let size: TireSize = format!("205/55{text}16").parse().unwrap();
            assert_eq!(size.size_speed_letter(), in_size, "{row}");
            assert_eq!(size.to_string(), format!("205/55{text}16"), "{row}");
            assert!(text.parse::<SpeedSymbol>().is_err(), "{row}");
        } else {
            let symbol: SpeedSymbol = text.parse().unwrap();
            row.near("km_h", symbol.speed().get::<kilometer_per_hour>(), 1e-9);
            row.near("mph_printed", f64::from(symbol.printed_mph()), 0.0);
            assert_eq!(symbol.is_open_ended().to_string(), row["open_ended"], "{row}");
            assert_eq!(symbol.to_string(), text, "{row}");
            symbols.push(symbol);
        }
        tally.checked(row);
    }
    tally.close(35, &[]);
    // The table lists the bracketed symbols last.
    symbols.sort();
    assert_eq!(symbols, SpeedSymbol::ALL, "the table leaves none out");
    assert!(symbols.windows(2).all(|pair| pair[0] < pair[1]));
}

#[test]
fn open_ended_symbol_stands_in_brackets() {
    for text in ["(94Y)", "94(Y)", "94 (Y)", "(94 y)"] {
        let service: ServiceDescription = text.parse().unwrap();
        assert_eq!(service.speed(), SpeedSymbol::AboveY, "{text}");
        assert_eq!(service.to_string(), "(94Y)", "{text}");
    }
    for text in ["(58W)", "58(W)", "58 (W)", "(58 w)"] {
        let service: ServiceDescription = text.parse().unwrap();
        assert_eq!(service.speed(), SpeedSymbol::AboveW, "{text}");
        assert_eq!(service.to_string(), "(58W)", "{text}");
    }
    assert_ne!("94Y".parse::<ServiceDescription>().unwrap().speed(), SpeedSymbol::AboveY);
}
