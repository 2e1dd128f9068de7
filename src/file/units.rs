//! Units of quantities: `track_mm`, of which a file may also say `track_in`, or `track` with its unit in a text.
//!
//! A quantity is written in the unit of its own key. It may be read in any other unit of this table; a key that means
//! something as it stands (`rim_range_in`) is never taken for another.

use crate::text::Scanner;
use crate::units::{
    bar, in_bar, in_inches, in_kg, in_kmh, in_kpa, in_lb, in_lbf_ft, in_mm, in_mph, in_nm, in_psi, inches,
    kg, kmh, kpa, lb, lbf_ft, mm, mph, nm, psi,
};
use crate::wheel::phrase::eat_inches;
use crate::{MoldedLoad, MoldedPressure, MoldedSpeed};

/// A quantity, by the end of the keys it is written with.
#[derive(Debug)]
pub(crate) struct Quantity {
    /// The end of a key.
    pub(crate) written: &'static str,
    /// Its units, the one it is written in first.
    pub(crate) units: &'static [Unit],
}

/// A unit of a quantity.
#[derive(Debug)]
pub(crate) struct Unit {
    /// What a key may end in instead; nothing where no key ends in this unit.
    pub(crate) suffix: &'static str,
    /// What it is called in a text.
    pub(crate) name: &'static str,
    /// Steps over it in a text.
    pub(super) eat: fn(&mut Scanner<'_>) -> bool,
    pub(super) to_written: fn(f64) -> f64,
    pub(crate) from_written: fn(f64) -> f64,
}

macro_rules! quantities {
    ($($written:literal $make_written:ident $read_written:ident {
        $($suffix:literal $name:literal: |$number:ident| $make:expr, |$quantity:ident| $read:expr, $eat:expr;)*
    })*) => {
        /// Every one.
        pub(crate) const QUANTITIES: &[Quantity] = &[$(Quantity {
            written: $written,
            units: &[$(Unit {
                suffix: $suffix,
                name: $name,
                eat: $eat,
                to_written: |$number| $read_written($make),
                from_written: |number| {
                    let $quantity = $make_written(number);
                    $read
                },
            },)*],
        },)*];
    };
}

quantities! {
    "_mm" mm in_mm {
        "_mm" "mm": |n| mm(n), |q| in_mm(q), |s| s.eat_any(&["MM", "MILLIMETRES", "MILLIMETERS"]);
        "_in" "in": |n| inches(n), |q| in_inches(q), eat_inches;
        "" "cm": |n| mm(10.0 * n), |q| in_mm(q) / 10.0, |s| s.eat_any(&["CM", "CENTIMETRES", "CENTIMETERS"]);
        "" "ft": |n| inches(12.0 * n), |q| in_inches(q) / 12.0, |s| s.eat_any(&["FT", "FEET", "FOOT"]) || s.eat(b'\'');
    }
    "_kpa" kpa in_kpa {
        "_kpa" "kPa": |n| kpa(n), |q| in_kpa(q), |s| is_pressure(s, MoldedPressure::Kilopascals(1));
        "_psi" "psi": |n| psi(n), |q| in_psi(q), |s| is_pressure(s, MoldedPressure::Psi(1));
        "_bar" "bar": |n| bar(n), |q| in_bar(q), |s| is_pressure(s, MoldedPressure::Bar(100));
        "" "kp/cm²": |n| kpa(98.0665 * n), |q| in_kpa(q) / 98.0665,
            |s| is_pressure(s, MoldedPressure::TechnicalAtmospheres(100));
    }
    "_kg" kg in_kg {
        "_kg" "kg": |n| kg(n), |q| in_kg(q), |s| MoldedLoad::scan_unit(s, 1) == Some(MoldedLoad::Kilograms(1));
        "_lb" "lb": |n| lb(n), |q| in_lb(q), |s| MoldedLoad::scan_unit(s, 1) == Some(MoldedLoad::Pounds(1));
    }
    "_kmh" kmh in_kmh {
        "_kmh" "km/h": |n| kmh(n), |q| in_kmh(q),
            |s| MoldedSpeed::scan_unit(s, 1) == Some(MoldedSpeed::KilometresPerHour(1));
        "_mph" "mph": |n| mph(n), |q| in_mph(q), |s| MoldedSpeed::scan_unit(s, 1) == Some(MoldedSpeed::MilesPerHour(1));
    }
    "_nm" nm in_nm {
        "_nm" "N·m": |n| nm(n), |q| in_nm(q), |s| s.eat_any(&["N M", "N\u{b7}M", "N*M", "N.M"]);
        "_ftlb" "ft-lb": |n| lbf_ft(n), |q| in_lbf_ft(q), |s| s.eat_any(&[
            "FT LB", "FT LBS", "FT LBF", "LB FT", "LBS FT", "LBF FT", "FT\u{b7}LB", "FT\u{b7}LBF", "LB\u{b7}FT",
            "LBF\u{b7}FT", "FOOT POUNDS", "POUND FEET",
        ]);
    }
    "_deg" plain plain {
        "_deg" "°": |n| n, |q| q, |s| s.eat_str("\u{b0}") || s.eat_any(&["DEG", "DEGREES", "DEGREE"]);
    }
    "_percent" plain plain {
        "_percent" "%": |n| n, |q| q, |s| s.eat(b'%') || s.eat_any(&["PERCENT", "PER CENT"]);
    }
    "_years" plain plain {
        "_years" "years": |n| n, |q| q, |s| s.eat_any(&["YEARS", "YEAR"]);
    }
    "_turns" plain plain {
        "_turns" "turns": |n| n, |q| q, |s| s.eat_any(&["TURNS", "TURN"]);
    }
    "_in" plain plain {
        "_in" "in": |n| n, |q| q, eat_inches;
    }
}

/// A number whose unit is not converted.
fn plain(number: f64) -> f64 {
    number
}

fn is_pressure(scanner: &mut Scanner<'_>, of: MoldedPressure) -> bool {
    MoldedPressure::scan_unit(scanner, 1, 100) == Some(of)
}

impl Quantity {
    /// The quantity that a key is written for, and the key without its unit.
    pub(crate) fn of(key: &'static str) -> Option<(&'static Self, &'static str)> {
        QUANTITIES.iter().find_map(|quantity| Some((quantity, key.strip_suffix(quantity.written)?)))
    }
}
