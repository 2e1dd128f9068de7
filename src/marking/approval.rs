//! Approvals and permits of tires and wheels: what an authority granted, and under which number.

use crate::text::{Field, ParseError, Scanner, Text, as_text, tri};
use crate::tire::sidewall::ApprovalMark;

/// An approval or a permit.
///
/// # Syntax
/// ```text
/// approval   = mark | [ "E" country ] regulation [ "-" ] [ number ] [ sound ] | permit
/// mark       = an approval mark of a tire, "E4 0230123 S2WR2"
/// regulation = number "R" | [ "UN" | "ECE" ] "R" number      of tires and wheels: 30, 54, 64, 75, 106, 108, 109, 117, 124
/// permit     = ( "KBA" | "ABE" ) [ "Nr" ] number             German type permit
/// ```
/// The number of a regulation's approval has up to nine digits, the first two of which may stand apart. `R30`, `R54`,
/// `R64` and `R75` without anything beside them are refused.
///
/// Which regulation is of what is from memory.
///
/// ```
/// use beadseat::marking::Approval;
/// assert_eq!(Approval::parse("E13 124R-001234")?.to_string(), "E13 124R-001234");
/// assert_eq!(Approval::parse("kba-nr. 45678")?, Approval::parse("KBA 45678")?);
/// assert_eq!(Approval::parse("ECE R117-02 1234")?.to_string(), "117R-021234");
/// assert!(Approval::parse("R16").is_err());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Approval {
    /// The mark of a tire.
    Mark(ApprovalMark),
    /// To a regulation that is named.
    Regulation(RegulationApproval),
    /// A German type permit, by its number.
    Permit(u32),
}

/// An approval to a regulation that is named.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct RegulationApproval {
    regulation: u8,
    /// 0 where none stands.
    country: u8,
    number: u32,
    /// 0 where no number stands.
    digits: u8,
}

/// Regulations of tires and of wheels, and what each is about. From memory.
const REGULATIONS: [(u8, &str); 9] = [
    (30, "type approval of passenger tires to UN R30"),
    (54, "type approval of commercial tires to UN R54"),
    (64, "approval of temporary spares and run-flat tires to UN R64"),
    (75, "type approval of motorcycle tires to UN R75"),
    (106, "type approval of agricultural tires to UN R106"),
    (108, "approval of retreaded passenger tires to UN R108"),
    (109, "approval of retreaded commercial tires to UN R109"),
    (117, "approval of rolling sound, wet grip and rolling resistance to UN R117"),
    (124, "approval of replacement wheels of passenger cars to UN R124"),
];

impl RegulationApproval {
    /// The number of the regulation.
    pub const fn regulation(&self) -> u8 {
        self.regulation
    }

    /// The number of the country that granted it, if it stands there.
    pub const fn country_number(&self) -> Option<u8> {
        if self.country == 0 { None } else { Some(self.country) }
    }

    /// Its number, if it stands there.
    pub const fn number(&self) -> Option<u32> {
        if self.digits == 0 { None } else { Some(self.number) }
    }

    const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        const FIELD: Field = Field::ApprovalMark;
        let start = scanner.at();
        let mut country = 0;
        if scanner.peek(0) == b'E' && scanner.peek(1).is_ascii_digit() {
            scanner.step(1);
            let at = scanner.at();
            country = tri!(scanner.whole(FIELD));
            if country < 1 || country > 99 {
                return Err(scanner.range(FIELD, at));
            }
            skip_separator(scanner);
        }
        let named = scanner.eat_any(&["UNECE", "UN ECE", "UN/ECE", "ECE", "UN"]);
        skip_separator(scanner);
        let at = scanner.at();
        let before = scanner.eat(b'R');
        scanner.skip_space();
        let regulation = tri!(scanner.whole(FIELD));
        if !before && !scanner.eat(b'R') {
            return Err(scanner.missing(FIELD));
        }
        if meaning_of(regulation).is_none() {
            return Err(scanner.range(FIELD, at));
        }
        skip_separator(scanner);
        let (mut number, mut digits) = (0, 0);
        let at = scanner.at();
        loop {
            while scanner.at_digit() {
                if digits == 9 {
                    scanner.skip_digits();
                    return Err(scanner.range(FIELD, at));
                }
                number = number * 10 + (scanner.byte() - b'0') as u32;
                digits += 1;
                scanner.step(1);
            }
            // The series of amendments may stand apart.
            let mut ahead = *scanner;
            skip_separator(&mut ahead);
            if digits != 2 || !ahead.at_digit() {
                break;
            }
            *scanner = ahead;
        }
        // Without anything beside it, `R30` is the end of a size.
        if digits == 0 && country == 0 && !named && regulation < 100 {
            return Err(scanner.range(FIELD, start));
        }
        Ok(Self { regulation: regulation as u8, country: country as u8, number, digits })
    }

    fn write(self, text: &mut Text) {
        if self.country > 0 {
            text.byte(b'E').whole(u32::from(self.country)).byte(b' ');
        }
        if self.digits == 0 {
            text.str("UN R").whole(u32::from(self.regulation));
            return;
        }
        text.whole(u32::from(self.regulation)).str("R-");
        let mut worth = 10_u32.pow(u32::from(self.digits) - 1);
        while worth > 0 {
            text.byte(b'0' + (self.number / worth % 10) as u8);
            worth /= 10;
        }
    }
}

const fn meaning_of(regulation: u16) -> Option<&'static str> {
    let mut i = 0;
    while i < REGULATIONS.len() {
        if REGULATIONS[i].0 as u16 == regulation {
            return Some(REGULATIONS[i].1);
        }
        i += 1;
    }
    None
}

const fn skip_separator(scanner: &mut Scanner<'_>) {
    scanner.skip_space();
    let _ = scanner.eat(b'-') || scanner.eat(b'.');
    scanner.skip_space();
}

const fn scan_permit(scanner: &mut Scanner<'_>) -> Result<u32, ParseError> {
    const MOST_DIGITS: usize = 6;
    skip_separator(scanner);
    if scanner.eat_word("NR") || scanner.eat_word("NO") || scanner.eat_word("NUMBER") {
        scanner.skip_colon();
    }
    scanner.skip_colon();
    Ok(tri!(scanner.number(Field::ApprovalMark, MOST_DIGITS)).get())
}

impl Approval {
    /// Reads a whole text, as `FromStr` does.
    ///
    /// # Errors
    /// A [`ParseError`] with the place of the first thing that does not fit.
    pub const fn parse(text: &str) -> Result<Self, ParseError> {
        let mut scanner = Scanner::new(text);
        tri!(scanner.begin());
        if scanner.eat_str("KBA") || scanner.eat_str("ABE") {
            let number = tri!(scan_permit(&mut scanner));
            tri!(scanner.finish());
            return Ok(Self::Permit(number));
        }
        let regulation = match RegulationApproval::scan(&mut scanner) {
            Ok(approval) => match scanner.finish() {
                Ok(()) => return Ok(Self::Regulation(approval)),
                Err(error) => error,
            },
            Err(error) => error,
        };
        match ApprovalMark::parse(text) {
            Ok(mark) => Ok(Self::Mark(mark)),
            Err(error) if error.span().start >= regulation.span().start => Err(error),
            Err(_) => Err(regulation),
        }
    }

    /// What the approval is for.
    pub const fn meaning(&self) -> &'static str {
        match self {
            Self::Mark(_) => "type approval of a tire by the country of the number",
            Self::Regulation(approval) => match meaning_of(approval.regulation as u16) {
                Some(meaning) => meaning,
                None => "type approval to a UN regulation",
            },
            Self::Permit(_) => "a German type permit of a wheel, by its number",
        }
    }

    /// What it means when tires or wheels are chosen.
    pub const fn for_choice(&self) -> &'static str {
        match self {
            Self::Permit(_) => {
                "the document of that number says for which vehicles, tires and conditions it holds"
            }
            _ => "says that a type was tested, not that it suits a vehicle",
        }
    }

    pub(crate) fn write(&self, text: &mut Text) {
        match self {
            Self::Mark(mark) => mark.write(text),
            Self::Regulation(approval) => approval.write(text),
            Self::Permit(number) => {
                text.str("KBA ").whole(*number);
            }
        }
    }
}

as_text!(Approval);
