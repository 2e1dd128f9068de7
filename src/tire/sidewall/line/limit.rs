//! What is molded as the most a tire may bear.

use crate::molded::{MoldedLoad, MoldedPressure, MoldedSpeed};
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::tire::Formation;

/// A maximum as it is molded: of the load, of the pressure or of the speed.
///
/// # Syntax
/// ```text
/// limit    = load | pressure | speed
/// load     = ( "MAX" "LOAD" [ "SINGLE" | "DUAL" ] | "SINGLE" | "DUAL" )
///            number ( "kg" | "lb" ) [ "(" number unit ")" ] [ "AT" number … ]
/// pressure = "MAX" [ "PERMISSIBLE" ] [ "COLD" ] [ "INFLATION" | "INFL" ] ( "PRESS" | "PRESSURE" )
///            number ( "kPa" | "psi" ) [ "(" number unit ")" ]
/// speed    = "MAX" [ "SPEED" ] number ( "km/h" | "mph" ) [ "(" number unit ")" ], or "MAX" behind the number
/// ```
/// `MAXIMUM` is `MAX`; a point may stand behind a short form, `:` behind `LOAD`, `@` for `AT`,
/// and `COLD` behind a pressure. In both units the first is kept, and the second must say the same within what rounding and the yearbooks' grids explain.
///
/// Accepted: `MAX LOAD 615 kg (1356 LBS)`, `MAX. LOAD DUAL 2910 lb @ 80 psi cold`, `MAX. PRESS. 44 PSI`,
/// `Max permissible inflation pressure 350 kPa`, `80 km/h max`. Refused: `MAX LOAD 615`, `MAX 44 PSI`,
/// `MAX LOAD 615 kg (1500 lb)`.
///
/// ```
/// use beadseat::{MoldedLoad, MoldedPressure, tire::{Formation, sidewall::MoldedLimit}};
/// let limit: MoldedLimit = "MAX. LOAD SINGLE 1450 KG (3195 LBS.) AT 550 kPa (80 PSI) COLD".parse()?;
/// let (load, at) = (MoldedLoad::Kilograms(1450), Some(MoldedPressure::Kilopascals(550)));
/// assert_eq!(limit, MoldedLimit::Load { formation: Formation::Single, load, at });
/// assert_eq!(limit.to_string(), "MAX LOAD 1450 kg AT 550 kPa");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum MoldedLimit {
    /// The most load of a tire fitted so, and the pressure that stands beside it.
    Load {
        /// Alone or one of a pair.
        formation: Formation,
        /// The load that is molded on the tire.
        load: MoldedLoad,
        /// The pressure beside it: the reference pressure.
        at: Option<MoldedPressure>,
    },
    /// The most pressure, by itself.
    Pressure(MoldedPressure),
    /// The most speed, as on temporary spares.
    Speed(MoldedSpeed),
}

impl MoldedLimit {
    /// Whether one begins here.
    pub(super) const fn is_next(scanner: &Scanner<'_>) -> bool {
        let mut ahead = *scanner;
        if ahead.at_digit() {
            MoldedSpeed::is_next(scanner)
        } else {
            eat_max(&mut ahead) || ahead.eat_word("SINGLE") || ahead.eat_word("DUAL")
        }
    }

    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if scanner.at_digit() {
            let speed = tri!(MoldedSpeed::scan(scanner));
            scanner.skip_space();
            return if scanner.eat_word("MAX") {
                scanner.eat(b'.');
                Ok(Self::Speed(speed))
            } else {
                Err(scanner.missing(Field::MaximumSpeed))
            };
        }
        let mut ahead = *scanner;
        if ahead.eat_word("SINGLE") || ahead.eat_word("DUAL") {
            return Self::scan_load(scanner);
        }
        if !eat_max(scanner) {
            return Err(scanner.missing(Field::MaximumLoad));
        }
        scanner.skip_space();
        if scanner.eat_word("LOAD") {
            scanner.eat(b':');
            return Self::scan_load(scanner);
        }
        if scanner.at_digit() || scanner.eat_word("SPEED") {
            scanner.skip_space();
            return Ok(Self::Speed(tri!(MoldedSpeed::scan(scanner))));
        }
        scan_words(scanner, &["PERMISSIBLE", "COLD", "INFLATION", "INFL"]);
        if !(scanner.eat_word("PRESSURE") || scanner.eat_word("PRESS")) {
            return Err(scanner.missing(Field::MaximumLoad));
        }
        scanner.eat(b'.');
        scanner.skip_space();
        Ok(Self::Pressure(tri!(MoldedPressure::scan(scanner))))
    }

    /// What stands behind `MAX LOAD`.
    const fn scan_load(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        scanner.skip_space();
        let dual = scanner.eat_word("DUAL");
        let formation = if dual { Formation::Dual } else { Formation::Single };
        if !dual {
            scanner.eat_word("SINGLE");
        }
        scanner.skip_space();
        let load = tri!(MoldedLoad::scan(scanner));
        let behind = scanner.at();
        scanner.skip_space();
        if !(scanner.eat_word("AT") || scanner.eat(b'@')) {
            scanner.back_to(behind);
            return Ok(Self::Load { formation, load, at: None });
        }
        scanner.skip_space();
        let at = Some(tri!(MoldedPressure::scan(scanner)));
        Ok(Self::Load { formation, load, at })
    }

    pub(crate) fn write(self, text: &mut Text) {
        match self {
            Self::Load { formation, load, at } => {
                text.str(match formation {
                    Formation::Single => "MAX LOAD ",
                    Formation::Dual => "MAX LOAD DUAL ",
                });
                load.write(text);
                if let Some(pressure) = at {
                    text.str(" AT ");
                    pressure.write(text);
                }
            }
            Self::Pressure(pressure) => {
                text.str("MAX PRESS ");
                pressure.write(text);
            }
            Self::Speed(speed) => {
                text.str("MAX SPEED ");
                speed.write(text);
            }
        }
    }
}

/// Steps over the word that every limit has.
const fn eat_max(scanner: &mut Scanner<'_>) -> bool {
    let here = scanner.eat_word("MAX") || scanner.eat_word("MAXIMUM");
    if here {
        scanner.eat(b'.');
    }
    here
}

/// Steps over words that may stand here, in this order, and the space behind each.
const fn scan_words(scanner: &mut Scanner<'_>, words: &[&str]) {
    let mut i = 0;
    while i < words.len() {
        if scanner.eat_word(words[i]) {
            scanner.skip_space();
        }
        i += 1;
    }
}

designation!(MoldedLimit in "beadseat::tire::sidewall", "max. press. 44 psi (300 kPa)" => "MAX PRESS 44 psi", wrong "MAX 44 PSI");
