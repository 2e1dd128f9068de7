//! Tire identification number: who made the tire, where and when.

#[cfg(feature = "jiff")]
mod age;
mod date_code;

#[cfg(feature = "jiff")]
pub use age::{Age, FutureDate};
pub use date_code::{DateCode, ManufactureWeek};

use crate::Citation;
use crate::text::ParseErrorKind::OutOfRange;
use crate::text::{Field, ParseError, Scanner, Text, designation};

macro_rules! forms {
    ($($(#[$doc:meta])* $variant:ident $name:literal: plant $plant:literal, size $size:literal, maker $least:literal to $most:literal, date $date:literal, $citation:ident;)*) => {
        /// How the symbols of an identification number are grouped.
        ///
        /// Symbols of each group:
        ///
        /// | form | plant | size | maker's own | date |
        /// |---|---|---|---|---|
        $(#[doc = concat!("| `", $name, "` | ", $plant, " | ", $size, " | ", $least, " to ", $most, " | ", $date, " |")])*
        ///
        /// ```
        /// use beadseat::tire::identification::{IdentificationForm, IdentificationNumber};
        /// assert_eq!(IdentificationNumber::parse("1AB2C3D4E1615")?.form(), IdentificationForm::Current);
        /// # Ok::<(), beadseat::ParseError>(())
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum IdentificationForm { $($(#[$doc])* $variant,)* }

        impl IdentificationForm {
            /// Every form there is, in the order they are declared.
            ///
            /// ```
            /// use beadseat::tire::identification::IdentificationForm;
            /// assert!(IdentificationForm::ALL.contains(&IdentificationForm::Current));
            /// ```
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            const fn layout(self) -> Layout {
                match self { $(Self::$variant => Layout { plant: $plant, size: $size, least: $least, most: $most, date: $date },)* }
            }

            /// A stable name, as in files.
            ///
            /// ```
            /// assert_eq!(beadseat::tire::identification::IdentificationForm::Earlier.name(), "earlier");
            /// ```
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name,)* }
            }

            /// Where the form is laid down.
            ///
            /// ```
            /// use beadseat::tire::identification::IdentificationForm;
            /// assert!(!IdentificationForm::Current.citation().is_from_memory());
            /// ```
            pub const fn citation(self) -> Citation {
                match self { $(Self::$variant => Citation::$citation,)* }
            }
        }

        crate::text::worded!(IdentificationForm [$($variant)*]);
    };
}

/// Lengths of the groups of a form.
struct Layout {
    plant: usize,
    size: usize,
    least: usize,
    most: usize,
    date: usize,
}

forms! {
    /// A new tire: three symbols of plant, six of the maker's own code, date. From 13 April 2015;
    /// plants that had two symbols might change over until 2025 (from memory), and put a 1 in front
    /// (from memory).
    Current "current": plant 3, size 0, maker 6 to 6, date 4, IDENTIFICATION_NUMBER;
    /// A retreaded tire since 13 April 2015; the date is that of retreading.
    Retread "retread": plant 3, size 0, maker 0 to 0, date 4, IDENTIFICATION_NUMBER;
    /// A new tire before the change: two symbols of plant, two of size, up to four of the maker's own,
    /// date. From mid 2000.
    Earlier "earlier": plant 2, size 2, maker 0 to 4, date 4, IDENTIFICATION_EARLIER;
    /// The same with a date of three digits, May 1971 to mid 2000.
    EarlierThreeDigit "earlier_three_digit": plant 2, size 2, maker 0 to 4, date 3, IDENTIFICATION_EARLIER;
    /// A retreaded tire before the change, with the retreader's mark in the place of the plant. From
    /// memory; two owner manuals give the mark four symbols instead of three.
    EarlierRetread "earlier_retread": plant 3, size 2, maker 0 to 4, date 4, IDENTIFICATION_REMEMBERED;
    /// The same with a date of three digits. From memory.
    EarlierRetreadThreeDigit "earlier_retread_three_digit": plant 3, size 2, maker 0 to 4, date 3, IDENTIFICATION_REMEMBERED;
    /// A new tire's number as it may stand on the inner sidewall: without the date, which is on the
    /// other side. From memory.
    CurrentUndated "current_undated": plant 3, size 0, maker 6 to 6, date 0, IDENTIFICATION_REMEMBERED;
    /// The same with two symbols of plant. From memory.
    EarlierUndated "earlier_undated": plant 2, size 2, maker 0 to 4, date 0, IDENTIFICATION_REMEMBERED;
    /// The date group alone, as people read it off: it gives the age, but is not a whole number.
    DateAlone "date_alone": plant 0, size 0, maker 0 to 0, date 4, DATE_CODE;
}

use IdentificationForm::{
    Current, CurrentUndated, DateAlone, Earlier, EarlierRetread, EarlierRetreadThreeDigit, EarlierThreeDigit,
    EarlierUndated, Retread,
};

impl IdentificationForm {
    /// Whether part of the number is missing: the rest is on the other sidewall.
    ///
    /// ```
    /// use beadseat::tire::identification::IdentificationForm;
    /// assert!(IdentificationForm::CurrentUndated.is_partial());
    /// assert!(!IdentificationForm::Retread.is_partial());
    /// ```
    pub const fn is_partial(self) -> bool {
        matches!(self, CurrentUndated | EarlierUndated | DateAlone)
    }

    /// Whether it is the number of a retreaded tire, whose date is that of retreading.
    ///
    /// ```
    /// use beadseat::tire::identification::IdentificationForm;
    /// assert!(IdentificationForm::Retread.is_retread() && !IdentificationForm::Current.is_retread());
    /// ```
    pub const fn is_retread(self) -> bool {
        matches!(self, Retread | EarlierRetread | EarlierRetreadThreeDigit)
    }
}

/// The most symbols a number has.
const LONGEST: usize = 13;

/// A symbol that 49 CFR 574.5 allows; the list of letters is from memory.
const fn is_symbol(byte: u8) -> bool {
    byte.is_ascii_uppercase() && !matches!(byte, b'G' | b'I' | b'O' | b'Q' | b'S' | b'Z')
        || byte.is_ascii_digit()
}

/// A tire identification number after 49 CFR 574.5.
///
/// # Syntax
/// ```text
/// number = [ "DOT" | "DOT-R" ] symbol { [ separator ] symbol }      4 to 13 symbols
/// symbol = digit | letter but G I O Q S Z                          separator = spaces or hyphens
/// ```
/// Spaces and hyphens are layout and mean nothing: they are not molded alike. How the symbols are
/// grouped follows from how many there are, whether the last are digits that can be a date, and `DOT-R`
/// (which counts when no letter or digit touches the `R`):
///
/// | symbols | read as |
/// |---|---|
/// | 13 | [`IdentificationForm::Current`]; with `DOT-R` the earlier retread |
/// | 8 to 12 | [`IdentificationForm::Earlier`] if the last four are digits, else a date of three digits |
/// | 9 | if it does not end in a date, the current form without one |
/// | 7 | with `DOT-R` or a leading 1 a retread; else a date of three digits, and a retread second |
/// | 4 to 8, behind `DOT`, the last three not all digits | an earlier number without a date |
/// | 4 digits | a date alone |
///
/// A text may have several readings: [`readings`](Self::readings) answers them all, likeliest first,
/// and the other methods answer the first. `DOT` is the maker's certificate, not part of the number,
/// and is not kept.
///
/// The canonical form separates plant, size, maker's code and date by spaces; `DOT-R`, and `DOT` where
/// only that made it a number, stand in front. Seven symbols that can be either form are not separated.
///
/// Accepted: `DOT 1AB 2C3D4E 1615`, `dot-r 1ab0117`, `ABCD 3208`, `ABCD317`, `1AB2C3D4E`, `0118`.
/// Refused: `1AB2C3D4G0118` (a letter that is not used), `1AB2C3D4E5316` (no such week), `1AB018`,
/// `1AB2C3D4E01/18`.
///
/// ```
/// use beadseat::tire::identification::IdentificationNumber;
/// let number: IdentificationNumber = "DOT 1ab 2c3d4e 1615".parse()?;
/// assert_eq!(number.to_string(), "1AB 2C3D4E 1615");
/// assert_eq!((number.plant(), number.maker_code()), (Some("1AB"), Some("2C3D4E")));
/// assert_eq!(number.date().and_then(|date| date.manufacture_year()), Some(2015));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
///
/// Source: 49 CFR 574.5; see [`IdentificationForm::citation`] and [`DateCode`].
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct IdentificationNumber {
    symbols: [u8; LONGEST],
    count: u8,
    /// `DOT-R` stands in front.
    retread: bool,
    /// How it is read first.
    form: IdentificationForm,
}

/// The forms of new tires, and of what people read off them, likeliest first.
const NEW: &[IdentificationForm] =
    &[Current, Earlier, EarlierThreeDigit, Retread, CurrentUndated, EarlierUndated, DateAlone];
/// The forms behind `DOT-R`.
const RETREADED: &[IdentificationForm] = &[Retread, EarlierRetread, EarlierRetreadThreeDigit];

/// Symbols on the way to a number.
#[derive(Clone, Copy)]
struct Symbols {
    symbols: [u8; LONGEST],
    count: usize,
    retread: bool,
}

impl Symbols {
    /// The last `n` symbols.
    const fn tail(&self, n: usize) -> &[u8] {
        self.symbols.split_at(self.count).0.split_at(self.count - n).1
    }

    const fn ends_in_digits(&self, n: usize) -> bool {
        let tail = self.tail(n);
        let mut i = 0;
        while i < n {
            if !tail[i].is_ascii_digit() {
                return false;
            }
            i += 1;
        }
        true
    }

    const fn has_length_of(&self, form: IdentificationForm) -> bool {
        let layout = form.layout();
        let shortest = layout.plant + layout.size + layout.least + layout.date;
        shortest <= self.count && self.count <= shortest + layout.most - layout.least
    }

    const fn end_in_date(&self, digits: usize) -> bool {
        DateCode::of_digits(self.tail(digits)).is_some()
    }

    /// Whether the symbols can be grouped so.
    const fn fit(&self, form: IdentificationForm) -> bool {
        if !self.has_length_of(form) {
            return false;
        }
        // Where there is room for a date of four digits, four digits that are none are a mistake.
        let mistaken = self.ends_in_digits(4) && !self.end_in_date(4);
        match form {
            CurrentUndated => !mistaken,
            EarlierUndated => !self.ends_in_digits(3),
            EarlierThreeDigit if self.count == 7 => {
                self.end_in_date(3) && !(self.symbols[0] == b'1' && self.end_in_date(4))
            }
            EarlierRetreadThreeDigit if self.count == 8 => self.end_in_date(3),
            EarlierThreeDigit | EarlierRetreadThreeDigit => self.end_in_date(3) && !mistaken,
            _ => self.end_in_date(form.layout().date),
        }
    }

    const fn forms(&self) -> &'static [IdentificationForm] {
        if self.retread { RETREADED } else { NEW }
    }

    /// The likeliest form.
    const fn form(&self) -> Option<IdentificationForm> {
        let forms = self.forms();
        let mut i = 0;
        while i < forms.len() {
            if self.fit(forms[i]) {
                return Some(forms[i]);
            }
            i += 1;
        }
        None
    }

    /// The length of the date group that was due, if one was; what is wrong is in it.
    const fn date_due(&self) -> Option<usize> {
        let forms = self.forms();
        let mut i = 0;
        while i < forms.len() {
            let date = forms[i].layout().date;
            // Four digits are tried before three, and three are only meant where there are no four.
            if date > 0 && self.has_length_of(forms[i]) && (date == 4 || self.ends_in_digits(3)) {
                return Some(date);
            }
            i += 1;
        }
        None
    }
}

impl IdentificationNumber {
    const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        const FIELD: Field = Field::IdentificationNumber;
        let certified = scanner.eat_str("DOT");
        let retread = certified
            && scanner.peek(0) == b'-'
            && scanner.peek(1) == b'R'
            && !scanner.peek(2).is_ascii_alphanumeric()
            && scanner.eat_str("-R");

        let mut all = Symbols { symbols: [0; LONGEST], count: 0, retread };
        let mut places = [0; LONGEST];
        loop {
            while scanner.skip_space() || scanner.eat(b'-') {}
            let at = scanner.at();
            if scanner.at_end() {
                break;
            }
            if !is_symbol(scanner.peek(0)) {
                let place = scanner.missing(FIELD).span();
                return Err(ParseError::new(OutOfRange, FIELD, place.start, place.end));
            }
            if all.count < LONGEST {
                all.symbols[all.count] = scanner.peek(0);
                places[all.count] = at;
            } else if all.count > LONGEST + 1 {
                return Err(scanner.range(FIELD, places[0]));
            }
            all.count += 1;
            scanner.eat(scanner.peek(0));
        }
        if all.count == 0 {
            return Err(scanner.missing(FIELD));
        }
        if all.count > LONGEST {
            return Err(scanner.range(FIELD, places[0]));
        }
        match all.form() {
            Some(EarlierUndated) if !certified => Err(scanner.range(FIELD, places[0])),
            Some(form) => Ok(Self { symbols: all.symbols, count: all.count as u8, retread, form }),
            None => Err(match all.date_due() {
                Some(date) => scanner.range(Field::DateCode, places[all.count - date]),
                None => scanner.range(FIELD, places[0]),
            }),
        }
    }

    const fn all(&self) -> Symbols {
        Symbols { symbols: self.symbols, count: self.count as usize, retread: self.retread }
    }

    /// The symbols without any separator.
    ///
    /// ```
    /// use beadseat::tire::identification::IdentificationNumber;
    /// assert_eq!(IdentificationNumber::parse("DOT AB-CD 3208")?.symbols(), "ABCD3208");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn symbols(&self) -> &str {
        self.group(0, usize::from(self.count))
    }

    /// `count` symbols from `start` on; only ASCII is ever kept.
    fn group(&self, start: usize, count: usize) -> &str {
        let symbols = self.symbols.get(start..start + count).unwrap_or_default();
        core::str::from_utf8(symbols).unwrap_or_default()
    }

    /// How it is read first.
    ///
    /// ```
    /// use beadseat::tire::identification::{IdentificationForm, IdentificationNumber};
    /// assert_eq!(IdentificationNumber::parse("1AB0117")?.form(), IdentificationForm::Retread);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn form(&self) -> IdentificationForm {
        self.form
    }

    /// Whether `DOT-R` stands in front: the retreader certifies the tire.
    ///
    /// ```
    /// use beadseat::tire::identification::IdentificationNumber;
    /// assert!(IdentificationNumber::parse("DOT-R AB1 0117")?.is_marked_retread());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_marked_retread(&self) -> bool {
        self.retread
    }

    /// Every way to read it, likeliest first.
    ///
    /// A date of four digits is likelier than one of three behind a symbol more of the maker's own.
    ///
    /// ```
    /// use beadseat::tire::identification::{IdentificationForm, IdentificationNumber};
    /// let number = IdentificationNumber::parse("ABCD1208")?;
    /// let second = number.readings().nth(1).ok_or("one reading")?;
    /// assert_eq!(number.date().and_then(|date| date.manufacture_year()), Some(2008));
    /// assert_eq!(second.form(), IdentificationForm::EarlierThreeDigit);
    /// assert_eq!(second.date().map(|date| date.manufacture_week()), Some(20));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn readings(&self) -> impl Iterator<Item = IdentificationReading> + Clone + use<> {
        let number = *self;
        let all = self.all();
        all.forms()
            .iter()
            .filter(move |&&form| all.fit(form))
            .map(move |&form| IdentificationReading { number, form })
    }

    /// Whether nothing makes the first reading likelier than the second: seven symbols that end in four
    /// digits are an old number of three date digits, or a retread's. `RETREAD` on the sidewall settles
    /// it; write `DOT-R` in front then.
    ///
    /// ```
    /// use beadseat::tire::identification::IdentificationNumber;
    /// assert!(IdentificationNumber::parse("AB10117")?.is_ambiguous());
    /// assert!(!IdentificationNumber::parse("DOT-R AB10117")?.is_ambiguous());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_ambiguous(&self) -> bool {
        self.count == 7 && !self.retread && self.all().fit(EarlierThreeDigit) && self.all().fit(Retread)
    }

    const fn first(&self) -> IdentificationReading {
        IdentificationReading { number: *self, form: self.form }
    }

    /// The plant, or the retreader's mark; `None` for a date alone.
    ///
    /// ```
    /// use beadseat::tire::identification::IdentificationNumber;
    /// assert_eq!(IdentificationNumber::parse("ABCD3208")?.plant(), Some("AB"));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn plant(&self) -> Option<&str> {
        self.plant_of(self.form)
    }

    /// The symbols that stood for the size, before 2015.
    ///
    /// ```
    /// use beadseat::tire::identification::IdentificationNumber;
    /// assert_eq!(IdentificationNumber::parse("ABCD3208")?.size_code(), Some("CD"));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn size_code(&self) -> Option<&str> {
        self.size_of(self.form)
    }

    /// The maker's own symbols: six of a current number, up to four of an earlier one.
    ///
    /// ```
    /// use beadseat::tire::identification::IdentificationNumber;
    /// assert_eq!(IdentificationNumber::parse("ABCDEF5312")?.maker_code(), Some("EF"));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn maker_code(&self) -> Option<&str> {
        self.maker_of(self.form)
    }

    /// The date; `None` on the sidewall without it. Then look at the other: the one with the whitewall,
    /// white letters or deepest brand molding, or the one that must face outward.
    ///
    /// ```
    /// use beadseat::tire::identification::IdentificationNumber;
    /// assert_eq!(IdentificationNumber::parse("1AB2C3D4E")?.date(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn date(&self) -> Option<DateCode> {
        self.first().date()
    }

    fn plant_of(&self, form: IdentificationForm) -> Option<&str> {
        some(self.group(0, form.layout().plant))
    }

    fn size_of(&self, form: IdentificationForm) -> Option<&str> {
        some(self.group(form.layout().plant, form.layout().size))
    }

    fn maker_of(&self, form: IdentificationForm) -> Option<&str> {
        let Layout { plant, size, date, .. } = form.layout();
        some(self.group(plant + size, usize::from(self.count) - plant - size - date))
    }

    /// Whether its canonical text begins with `DOT`.
    pub(crate) const fn writes_dot(&self) -> bool {
        self.retread || matches!(self.form, EarlierUndated)
    }

    pub(crate) fn write(&self, text: &mut Text) {
        if self.retread {
            text.str("DOT-R ");
        } else if let EarlierUndated = self.form {
            text.str("DOT ");
        }
        if self.is_ambiguous() {
            text.str(self.symbols());
            return;
        }
        let mut separator = "";
        for group in [self.plant(), self.size_code(), self.maker_code()].into_iter().flatten() {
            text.str(separator).str(group);
            separator = " ";
        }
        if let Some(date) = self.date() {
            date.write(text.str(separator));
        }
    }
}

fn some(group: &str) -> Option<&str> {
    (!group.is_empty()).then_some(group)
}

impl core::fmt::Debug for IdentificationNumber {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "IdentificationNumber({self})")
    }
}

/// One way to group the symbols of an identification number.
///
/// ```
/// use beadseat::tire::identification::IdentificationNumber;
/// let number = IdentificationNumber::parse("AB10117")?;
/// let plants: Vec<_> = number.readings().map(|r| r.plant().map(String::from)).collect();
/// assert_eq!(plants, [Some("AB".into()), Some("AB1".into())]);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct IdentificationReading {
    number: IdentificationNumber,
    form: IdentificationForm,
}

impl IdentificationReading {
    /// The form that the number is read in.
    pub const fn form(&self) -> IdentificationForm {
        self.form
    }

    /// The maker's plant, as [`IdentificationNumber::plant`] gives it.
    pub fn plant(&self) -> Option<&str> {
        self.number.plant_of(self.form)
    }

    /// The size code, as [`IdentificationNumber::size_code`] gives it.
    pub fn size_code(&self) -> Option<&str> {
        self.number.size_of(self.form)
    }

    /// The maker's own code, as [`IdentificationNumber::maker_code`] gives it.
    pub fn maker_code(&self) -> Option<&str> {
        self.number.maker_of(self.form)
    }

    /// The date of manufacture, as [`IdentificationNumber::date`] gives it.
    pub const fn date(&self) -> Option<DateCode> {
        DateCode::of_digits(self.number.all().tail(self.form.layout().date))
    }
}

designation!(IdentificationNumber in "beadseat::tire::identification", "dot abcd-3208" => "AB CD 3208", wrong "1AB2C3D4E0017");
