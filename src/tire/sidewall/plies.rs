//! Plies: how many there are, and what their cords are made of.

use crate::record::words;
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text, designation, tri};

words! {
    /// What the cords of a ply are made of, by its generic name.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::sidewall::Cord::Aramid.name(), "aramid");
    /// ```
    Cord {
        /// Plies of polyester cords.
        Polyester = "polyester",
        /// Plies of steel wire cords.
        Steel = "steel",
        /// Nylon, also molded POLYAMIDE.
        Nylon = "nylon",
        /// Rayon, also molded VISCOSE.
        Rayon = "rayon",
        /// Plies of aramid fibre cords.
        Aramid = "aramid",
        /// Glass fibre, in belts of the 1970s.
        Fiberglass = "fiberglass",
        /// The mark does not say.
        Unstated = "unstated",
    }
}

/// Every spelling of a cord; the first of each is the canonical one.
const CORDS: [(&str, Cord); 9] = [
    ("POLYESTER", Cord::Polyester),
    ("STEEL", Cord::Steel),
    ("NYLON", Cord::Nylon),
    ("POLYAMIDE", Cord::Nylon),
    ("RAYON", Cord::Rayon),
    ("VISCOSE", Cord::Rayon),
    ("ARAMID", Cord::Aramid),
    ("FIBERGLASS", Cord::Fiberglass),
    ("FIBREGLASS", Cord::Fiberglass),
];

/// Plies of one cord in one part of the tire.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Layer {
    plies: u8,
    cord: Cord,
}

impl Layer {
    /// How many plies the layer has.
    pub const fn plies(self) -> u8 {
        self.plies
    }

    /// What they are made of.
    pub const fn cord(self) -> Cord {
        self.cord
    }
}

/// Most layers of one part.
const MOST_LAYERS: usize = 4;

/// The layers of a part: those that are there stand first.
type Part = [Option<Layer>; MOST_LAYERS];

/// The actual plies of the tread area and of the sidewall, as US rules have them molded: not a ply rating.
///
/// # Syntax
/// ```text
/// plies = [ "PLIES" [ ":" ] ] part [ [ "," ] part ]           tread and sidewall, each at most once
/// part  = ( "TREAD" | "SIDEWALL" ) [ "AREA" ] [ "PLIES" ] [ ":" ] layer { ( "+" | "," ) layer }
/// layer = count [ "PLIES" | "PLY" ] [ cord ]
/// cord  = "POLYESTER" | "STEEL" | "NYLON" | "POLYAMIDE" | "RAYON" | "VISCOSE" | "ARAMID" | "FIBERGLASS"
/// ```
/// Up to four layers a part, 1 to 20 plies a layer. A bare count is read only where `PLIES` stands before
/// it. The canonical form is tread, then sidewall.
///
/// Accepted: `TREAD 2 POLYESTER + 2 STEEL`, `sidewall 2 plies polyester`, `PLIES: SIDEWALL 2, TREAD 4`.
/// Refused: `TREAD 2`, `TREAD 0 STEEL`, `TREAD 2 COTTON`, `TREAD 1 STEEL TREAD 1 NYLON`.
///
/// Source: 49 CFR 571.139 S5.5(f), number of plies, as a US agency letter has it for retreads; S5.5(e),
/// materials, from memory; the list of materials is common practice, no source.
///
/// ```
/// use beadseat::tire::sidewall::{Cord, Plies};
/// let plies: Plies = "Tread: 2 polyester + 2 steel + 1 nylon, sidewall: 2 polyester".parse()?;
/// assert_eq!(plies.to_string(), "TREAD 2 POLYESTER + 2 STEEL + 1 NYLON SIDEWALL 2 POLYESTER");
/// assert_eq!((plies.tread_plies(), plies.sidewall_plies()), (Some(5), Some(2)));
/// assert!(plies.tread().any(|layer| layer.cord() == Cord::Steel));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Plies {
    tread: Part,
    sidewall: Part,
}

const NONE: Part = [None; MOST_LAYERS];

impl Plies {
    /// Whether a count of plies begins here, and not another mark with `TREAD` in it.
    pub(crate) const fn is_next(scanner: &Scanner<'_>) -> bool {
        let mut ahead = *scanner;
        if ahead.eat_word("PLIES") {
            return true;
        }
        if !(ahead.eat_word("TREAD") || ahead.eat_word("SIDEWALL")) {
            return false;
        }
        Self::scan_heading(&mut ahead);
        ahead.at_digit()
    }

    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let named = scanner.eat_word("PLIES");
        scanner.skip_space();
        if named {
            scanner.eat(b':');
            scanner.skip_space();
        }
        let mut plies = Self { tread: NONE, sidewall: NONE };
        tri!(plies.scan_part(scanner, named));
        let behind = scanner.at();
        scanner.skip_space();
        scanner.eat(b',');
        scanner.skip_space();
        if Self::is_next(scanner) && !matches!(scanner.peek(0), b'P') {
            tri!(plies.scan_part(scanner, named));
        } else {
            scanner.back_to(behind);
        }
        Ok(plies)
    }

    /// `AREA`, `PLIES` and a colon behind the name of a part; whether `PLIES` stands there.
    const fn scan_heading(scanner: &mut Scanner<'_>) -> bool {
        scanner.skip_space();
        scanner.eat_word("AREA");
        scanner.skip_space();
        let named = scanner.eat_word("PLIES");
        scanner.skip_space();
        scanner.eat(b':');
        scanner.skip_space();
        named
    }

    const fn scan_part(&mut self, scanner: &mut Scanner<'_>, named: bool) -> Result<(), ParseError> {
        let at = scanner.at();
        let part = if scanner.eat_word("TREAD") {
            &mut self.tread
        } else if scanner.eat_word("SIDEWALL") {
            &mut self.sidewall
        } else {
            return Err(scanner.missing(Field::Plies));
        };
        if part[0].is_some() {
            return Err(scanner.error(ParseErrorKind::Contradiction, Field::Plies, at));
        }
        let named = Self::scan_heading(scanner) || named;
        let mut layers = 0;
        loop {
            let at = scanner.at();
            let layer = tri!(Self::scan_layer(scanner, named));
            if layers == MOST_LAYERS {
                return Err(scanner.range(Field::Plies, at));
            }
            part[layers] = Some(layer);
            layers += 1;
            let behind = scanner.at();
            scanner.skip_space();
            let plus = scanner.eat(b'+');
            let comma = !plus && scanner.eat(b',');
            scanner.skip_space();
            if !(plus || (comma && scanner.at_digit())) {
                scanner.back_to(behind);
                return Ok(());
            }
        }
    }

    const fn scan_layer(scanner: &mut Scanner<'_>, named: bool) -> Result<Layer, ParseError> {
        let at = scanner.at();
        let plies = tri!(scanner.whole(Field::Plies));
        if plies < 1 || plies > 20 {
            return Err(scanner.range(Field::Plies, at));
        }
        let mut behind = scanner.at();
        scanner.skip_space();
        let counted = scanner.eat_word("PLIES") || scanner.eat_word("PLY");
        if counted {
            behind = scanner.at();
            scanner.skip_space();
        }
        let mut i = 0;
        while i < CORDS.len() {
            if scanner.eat_word(CORDS[i].0) {
                return Ok(Layer { plies: plies as u8, cord: CORDS[i].1 });
            }
            i += 1;
        }
        if !counted && !named {
            return Err(scanner.missing(Field::Plies));
        }
        scanner.back_to(behind);
        Ok(Layer { plies: plies as u8, cord: Cord::Unstated })
    }

    pub(crate) fn write(&self, text: &mut Text) {
        write_part(text, "TREAD ", &self.tread);
        if self.tread[0].is_some() && self.sidewall[0].is_some() {
            text.byte(b' ');
        }
        write_part(text, "SIDEWALL ", &self.sidewall);
    }

    /// The layers of the tread area.
    pub fn tread(&self) -> impl Iterator<Item = Layer> + use<> {
        self.tread.into_iter().flatten()
    }

    /// The layers of the sidewall.
    pub fn sidewall(&self) -> impl Iterator<Item = Layer> + use<> {
        self.sidewall.into_iter().flatten()
    }

    /// How many plies the tread area has, if that is molded.
    pub fn tread_plies(&self) -> Option<u8> {
        count(&self.tread)
    }

    /// How many plies the sidewall has, if that is molded.
    pub fn sidewall_plies(&self) -> Option<u8> {
        count(&self.sidewall)
    }
}

fn write_part(text: &mut Text, name: &str, part: &Part) {
    for (n, layer) in part.iter().flatten().enumerate() {
        let cord = CORDS.iter().find(|(_, cord)| *cord == layer.cord);
        text.str(if n == 0 { name } else { " + " }).whole(u32::from(layer.plies)).byte(b' ');
        text.str(cord.map_or("PLIES", |(word, _)| word));
    }
}

fn count(part: &Part) -> Option<u8> {
    part[0]?;
    Some(part.iter().flatten().map(|layer| layer.plies).sum())
}

designation!(Plies in "beadseat::tire::sidewall", "tread 4 plies" => "TREAD 4 PLIES", wrong "TREAD 2");
