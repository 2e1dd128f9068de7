//! The one error of every parser.

use core::fmt;
use core::ops::Range;

/// What a designation is made of: the part that an error is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Field {
    /// The text as a whole.
    Text,
    /// Nominal section width of a tire.
    SectionWidth,
    /// Aspect ratio of a tire.
    AspectRatio,
    /// Structure of a tire: radial, diagonal, bias-belted.
    Structure,
    /// Nominal rim diameter code.
    RimDiameter,
    /// Load index for a single tire.
    LoadIndex,
    /// Load index for tires fitted in pairs.
    DualLoadIndex,
    /// Speed symbol: the letter of the top speed.
    SpeedSymbol,
    /// Load version: XL, LL, HL.
    LoadVersion,
    /// Load range letter or ply rating.
    LoadRange,
    /// Rim width code, in inches.
    RimWidth,
    /// Letters of the rim contour.
    Contour,
    /// Mark of a rim's humps.
    Hump,
    /// Inset of a wheel.
    Inset,
    /// Number of fastener holes.
    HoleCount,
    /// Diameter of the bolt circle.
    BoltCircle,
    /// Diameter of the centre bore.
    Bore,
    /// Major diameter of a thread.
    ThreadDiameter,
    /// Pitch of a thread.
    ThreadPitch,
    /// Seat of a wheel fastener.
    Seat,
    /// A day of the calendar.
    Day,
    /// Tire identification number as a whole.
    IdentificationNumber,
    /// Date group of a tire identification number.
    DateCode,
    /// Treadwear grade of a tire.
    Treadwear,
    /// Traction grade of a tire.
    Traction,
    /// Temperature grade of a tire.
    Temperature,
    /// Single mark of a sidewall.
    SidewallMark,
    /// Mark of type approval.
    ApprovalMark,
    /// Load letter of an alpha-numeric size.
    LoadLetter,
    /// Overall diameter of a tire, in inches.
    OverallDiameter,
    /// Prefix and suffix that say the family of a size.
    Family,
    /// Maximum load molded on a tire.
    MaximumLoad,
    /// Maximum pressure molded on a tire.
    MaximumPressure,
    /// Date of manufacture of a wheel.
    WheelDate,
    /// Country of origin of a wheel.
    Origin,
    /// Maximum speed molded on a tire.
    MaximumSpeed,
    /// Plies and their cords.
    Plies,
    /// Name of a document, given by a caller.
    OwnSource,
    /// Stars and codes beside a size of earthmovers.
    EarthmoverMark,
    /// Series in front of a rim width.
    RimSeries,
    /// Flange height of a rim of earthmovers.
    FlangeHeight,
    /// Backspacing of a wheel.
    Backspacing,
    /// The EU label of a tire.
    Label,
}

impl Field {
    /// The trade's word for it.
    ///
    /// ```
    /// assert_eq!(beadseat::Field::Bore.name(), "centre bore");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Self::Text => "text",
            Self::SectionWidth => "section width",
            Self::AspectRatio => "aspect ratio",
            Self::Structure => "structure",
            Self::RimDiameter => "rim diameter code",
            Self::LoadIndex => "load index",
            Self::DualLoadIndex => "dual load index",
            Self::SpeedSymbol => "speed symbol",
            Self::LoadVersion => "load version",
            Self::LoadRange => "load range",
            Self::RimWidth => "rim width code",
            Self::Contour => "rim contour",
            Self::Hump => "hump mark",
            Self::Inset => "inset",
            Self::HoleCount => "number of holes",
            Self::BoltCircle => "bolt circle",
            Self::Bore => "centre bore",
            Self::ThreadDiameter => "thread diameter",
            Self::ThreadPitch => "thread pitch",
            Self::Seat => "fastener seat",
            Self::Day => "day",
            Self::IdentificationNumber => "identification number",
            Self::DateCode => "date code",
            Self::Treadwear => "treadwear grade",
            Self::Traction => "traction grade",
            Self::Temperature => "temperature grade",
            Self::SidewallMark => "sidewall mark",
            Self::ApprovalMark => "approval mark",
            Self::LoadLetter => "load letter",
            Self::OverallDiameter => "overall diameter",
            Self::Family => "family mark",
            Self::MaximumLoad => "maximum load",
            Self::MaximumPressure => "maximum pressure",
            Self::WheelDate => "date of a wheel",
            Self::Origin => "country of origin",
            Self::MaximumSpeed => "maximum speed",
            Self::Plies => "plies",
            Self::OwnSource => "name of a document",
            Self::EarthmoverMark => "earthmover mark",
            Self::RimSeries => "rim series",
            Self::FlangeHeight => "flange height",
            Self::Backspacing => "backspacing",
            Self::Label => "tire label",
        }
    }

    /// The values it may take, in words.
    ///
    /// ```
    /// assert_eq!(beadseat::Field::HoleCount.allowed(), "3 to 12");
    /// ```
    pub const fn allowed(self) -> &'static str {
        match self {
            Self::RimSeries => "DW, W, MT or WM",
            Self::FlangeHeight => "1 to 6 in, in tenths",
            Self::EarthmoverMark => {
                "*, ** or ***, and C-1 to C-2, E-1 to E-7, G-1 to G-4 or L-1 to L-5, each once"
            }
            Self::Text => "1 to 255 bytes",
            Self::SectionWidth => {
                "95 to 495 mm ending in 5, in 0 too on half-inch and millimetric rims and for M/C, or 240 to 1250 mm ending in 0 on agricultural sizes, or 1.5 to 30 in, to 60 in on rims of earthmovers"
            }
            Self::AspectRatio => {
                "20 to 95 in steps of 5, 100 for M/C, 110 for IF and VF, 78 behind a load letter"
            }
            Self::Structure => {
                "R, D, B or -, with S, H, V or Z before and F behind an R, or of old cross-ply tires S, H or V alone"
            }
            Self::RimDiameter => {
                "8 to 26, 28 or 30 in, or 14.5, 16.5, 17.5, 19.5, 20.5, 22.5, 24.5 in, or 300 to 500 mm in steps of 5, or 32 to 54 in in steps of 2 on agricultural sizes, or others of implements, earthmovers and garden machines"
            }
            Self::LoadIndex => "0 to 279",
            Self::DualLoadIndex => {
                "0 to 279 and not above the single load index, nor the load of a faster speed above that of a slower one"
            }
            Self::SpeedSymbol => {
                "A1 to A8, B to W without I, O and X, Y, or (Y), and of motorcycles (W), around the service description"
            }
            Self::LoadVersion => "XL, EXTRA LOAD, REINFORCED, LL or HL, on a passenger size",
            Self::LoadRange => {
                "LRA to LRN or LOAD RANGE A to N without I and K, or 2PR to 24PR in even steps, not on a passenger size"
            }
            Self::RimWidth => {
                "2 to 48 in, in quarters, or 100 to 300 mm in steps of 5, and below the rim diameter code, or 1.60, 1.85 or 2.15 in of motorcycles"
            }
            Self::Contour => "A, B, C, D, E, F, G, H, J, JJ, JK, K, L, P, S, T or V",
            Self::Hump => "H, H2, FH, FH2, CH, CH2, EH, EH2, EH2+ or SL",
            Self::Inset => "-300 to 300 mm",
            Self::HoleCount => "3 to 12",
            Self::BoltCircle => "60 to 600 mm, or below 20 as inches",
            Self::Bore => "20 to 400 mm",
            Self::ThreadDiameter => "M6 to M30, or 1/4 to 1 1/4 in",
            Self::ThreadPitch => "0.5 to 4 mm, or 7 to 32 threads per inch",
            Self::Seat => "cone 60, cone 80, cone 90, ball R12, ball R13, ball R14, ball R16, flat or shank",
            Self::Day => "a day since 1900 as 2026-11-25",
            Self::IdentificationNumber => {
                "13 symbols, 8 to 12 before 2015, 7 of a retread, 9 without the date: digits and letters without G, I, O, Q, S, Z"
            }
            Self::DateCode => {
                "two digits of week, 01 to 52 or 53 as the year has, and two of year, or one before mid 2000"
            }
            Self::Treadwear => "20 to 9980 in steps of 20",
            Self::Traction => "AA, A, B or C, with a temperature grade behind it",
            Self::Temperature => "A, B or C",
            Self::SidewallMark => "a mark such as M+S, 3PMSF, TUBELESS, XL, ROTATION, OUTSIDE or E4",
            Self::ApprovalMark => {
                "E or e, country 1 to 99, number of 4 to 8 digits, then S, W, R with stage 1 or 2"
            }
            Self::LoadLetter => "A to H, J, L, M, N, and behind the M of a motorcycle up to V",
            Self::OverallDiameter => "7 to 75 in, and more than the rim diameter",
            Self::Family => "one of P, LT, HL, T, ST, IF, VF, AT in front, or C, CP, LT, HC, M/C behind",
            Self::MaximumLoad => "45 to 9999 with kg or lb, in both units the same",
            Self::MaximumPressure => {
                "10 to 1500 with kPa or psi, or 0.1 to 15 with bar or kp/cm2, in both units the same"
            }
            Self::WheelDate => "month 1 to 12 or week 1 to 53, of a year from 1950 to 2099",
            Self::Origin => "a name of up to 14 letters behind MADE IN",
            Self::Plies => {
                "TREAD or SIDEWALL with up to four layers of 1 to 20 plies of polyester, steel, nylon, rayon, aramid or fiberglass"
            }
            Self::OwnSource => "1 to 64 bytes of plain text in one line, without a space at either end",
            Self::Backspacing => "BS with 25 to 400 mm, or below 20 as inches",
            Self::Label => "a class of rolling resistance and one of wet grip, A to G, with 40 to 120 dB",
            Self::MaximumSpeed => "3 to 500 with km/h or mph, in both units the same",
        }
    }
}

/// What kind of mistake a text has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum ParseErrorKind {
    /// Nothing but white space.
    Empty,
    /// More than 255 bytes, or than the field takes.
    TooLong,
    /// The field was due here, and something else or nothing stands here.
    Missing,
    /// The field is there, with a value it cannot have.
    OutOfRange,
    /// More decimals than a stamped size has.
    TooPrecise,
    /// Two parts of the text cannot both be true.
    Contradiction,
    /// The text could be read in more than one way.
    Ambiguous,
    /// The designation is complete, and more text follows.
    Trailing,
    /// Nothing in the text tells what it is.
    Unrecognised,
}

impl ParseErrorKind {
    /// A stable name: `empty`, `too_long`, `missing`, `out_of_range`, `too_precise`, `contradiction`,
    /// `ambiguous`, `trailing`, `unrecognised`.
    ///
    /// ```
    /// assert_eq!(beadseat::ParseErrorKind::OutOfRange.name(), "out_of_range");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Self::Empty => "empty",
            Self::TooLong => "too_long",
            Self::Missing => "missing",
            Self::OutOfRange => "out_of_range",
            Self::TooPrecise => "too_precise",
            Self::Contradiction => "contradiction",
            Self::Ambiguous => "ambiguous",
            Self::Trailing => "trailing",
            Self::Unrecognised => "unrecognised",
        }
    }

    const fn phrase(self) -> &'static str {
        match self {
            Self::Empty => "is empty",
            Self::TooLong => "is too long",
            Self::Missing => "is missing",
            Self::OutOfRange => "is out of range",
            Self::TooPrecise => "has too many decimals",
            Self::Contradiction => "contradicts another part",
            Self::Ambiguous => "can be read in more than one way",
            Self::Trailing => "goes on after the designation",
            Self::Unrecognised => "is not recognised",
        }
    }
}

/// Why a text is not a designation: what is wrong, with which part, and where.
///
/// It is `Copy`, four bytes long, and never allocates.
///
/// ```
/// use beadseat::{Field, ParseErrorKind, tire::TireSize};
/// let text = "205/55R31";
/// let error = TireSize::parse(text).unwrap_err();
/// assert_eq!(error.kind(), ParseErrorKind::OutOfRange);
/// assert_eq!(error.field(), Field::RimDiameter);
/// assert_eq!(&text[error.span()], "31");
/// assert!(error.to_string().starts_with("rim diameter code is out of range (allowed: 8 to 26"));
/// assert_eq!(error.show(text).to_string().lines().nth(1).map(|l| &l[..9]), Some("       ^^"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(align(4))] // Moved in one piece.
pub struct ParseError {
    kind: ParseErrorKind,
    field: Field,
    start: u8,
    end: u8,
}

impl fmt::Display for ParseError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let (field, kind) = (self.field, self.kind);
        write!(f, "{} {} ", field.name(), kind.phrase())?;
        match kind {
            ParseErrorKind::Trailing => f.write_str("with what is no part of it"),
            ParseErrorKind::Unrecognised => f.write_str(WHAT_TELLS),
            _ => write!(f, "(allowed: {})", field.allowed()),
        }
    }
}

/// What makes a text one that can be read.
const WHAT_TELLS: &str =
    "(what tells: a whole size, or a word in front such as ET, PCD, CB, BS, DOT, DATE, MAX LOAD)";

impl core::error::Error for ParseError {}

impl ParseError {
    #[inline(always)]
    pub(crate) const fn new(kind: ParseErrorKind, field: Field, start: usize, end: usize) -> Self {
        // No text of more than 255 bytes is read, so every place in one fits.
        Self { kind, field, start: start as u8, end: end as u8 }
    }

    /// The same in a text that begins so many bytes before the one that was parsed.
    pub(crate) const fn behind(self, bytes: usize) -> Self {
        Self::new(self.kind, self.field, self.start as usize + bytes, self.end as usize + bytes)
    }

    /// What kind of mistake it is.
    pub const fn kind(self) -> ParseErrorKind {
        self.kind
    }

    /// Which part of the designation it is about.
    pub const fn field(self) -> Field {
        self.field
    }

    /// Where, in bytes of the text that was parsed; empty at the end of the text.
    pub const fn span(self) -> Range<usize> {
        self.start as usize..self.end as usize
    }

    /// Two lines for a person: the text, cut and with its control characters replaced, and carets
    /// under the place with the message.
    ///
    /// ```
    /// use beadseat::wheel::BoltCircle;
    /// let error = BoltCircle::parse("5x57").unwrap_err();
    /// assert_eq!(
    ///     error.show("5x57").to_string(),
    ///     "5x57\n  ^^ bolt circle is out of range (allowed: 60 to 600 mm, or below 20 as inches)"
    /// );
    /// ```
    pub const fn show<'a>(self, input: &'a str) -> MarkedText<'a> {
        MarkedText { error: self, input }
    }

    /// Ends the compilation of a wrong [`literal!`](crate::literal).
    ///
    /// # Panics
    /// Always.
    #[doc(hidden)]
    #[allow(clippy::panic)]
    pub const fn fail(self) -> ! {
        // Only whole texts can be given to a panic in const, so the part that is wrong is named.
        panic!("{}", self.field.name())
    }
}

/// The two-line message of [`ParseError::show`].
#[derive(Clone, Copy, Debug)]
pub struct MarkedText<'a> {
    error: ParseError,
    input: &'a str,
}

/// How much of a text is echoed, in characters.
const ECHOED: usize = 120;

/// A text from outside made fit to show: cut at 120 characters, with control characters and the
/// invisible ones that turn or join text replaced.
///
/// ```
/// use beadseat::Excerpt;
/// assert_eq!(Excerpt("van\u{202e}\u{1b}[31m").to_string(), "van\u{fffd}\u{fffd}[31m");
/// assert_eq!(Excerpt(&"x".repeat(500)).to_string().chars().count(), 121);
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Excerpt<'a>(pub &'a str);

impl fmt::Display for Excerpt<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use fmt::Write;
        for (n, c) in self.0.chars().enumerate() {
            if n == ECHOED {
                return f.write_char('…');
            }
            f.write_char(if is_plain(c) { c } else { '\u{fffd}' })?;
        }
        Ok(())
    }
}

/// Whether a character of a text from outside may be shown as it is. Controls, the invisible characters that turn or
/// join text, and what XML 1.0 cannot hold may not.
pub(crate) const fn is_plain(c: char) -> bool {
    !matches!(c, '\0'..='\x1f' | '\x7f'..='\u{9f}' | '\u{ad}' | '\u{61c}' | '\u{200b}'..='\u{200f}'
        | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}'
        | '\u{fffe}' | '\u{ffff}' | '\u{e0000}'..='\u{e007f}')
}

impl fmt::Display for MarkedText<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use fmt::Write;
        write!(f, "{}", Excerpt(self.input))?;
        let (mut before, mut under) = (0, 0);
        for (at, _) in self.input.char_indices().take(ECHOED) {
            before += usize::from(at < self.error.span().start);
            under += usize::from(self.error.span().contains(&at));
        }
        f.write_char('\n')?;
        for _ in 0..before {
            f.write_char(' ')?;
        }
        for _ in 0..under.max(1) {
            f.write_char('^')?;
        }
        write!(f, " {}", self.error)
    }
}
