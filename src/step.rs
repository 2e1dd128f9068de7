//! One line of how a number came about: a fact that was put in, what was worked out of facts, or what is said of them.

use core::fmt;

use crate::Citation;
use crate::decimals::Decimals;

/// A number of a step with its unit, as `mm`, `kg`, `kPa`, `km/h`, `%`, `deg`, or nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure {
    number: f64,
    unit: &'static str,
}

impl Figure {
    pub(crate) const fn new(number: f64, unit: &'static str) -> Self {
        Self { number, unit }
    }

    /// The number in the unit of the figure.
    pub const fn number(&self) -> f64 {
        self.number
    }

    /// The unit of the number; nothing of a plain one.
    pub const fn unit(&self) -> &'static str {
        self.unit
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { number, unit } = *self;
        let space = if unit.is_empty() { "" } else { " " };
        write!(f, "{}{space}{unit}", Digits(number))
    }
}

/// One line of a derivation: a name, and the number that is put in or worked out, with its source.
///
/// `Display` is the line. A number that is worked out stands behind the expression it comes of, in which all numbers
/// stand that it takes: `D = 432 + 2 × 101 = 634 mm, UN R30 / UN R54, §6.1.2, §6.1.5 (from memory)`. Numbers have
/// seven digits, and whoever works the line out again from them gets what it says to what that rounding leaves.
///
/// ```
/// use beadseat::fitment::{Change, CheckId, Conditions, Limits, Position, Setup, derivation::Derivations};
/// use beadseat::vehicle::{Kind, Vehicle};
/// let car = Vehicle::new(Kind::Passenger);
/// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx17")?];
/// let (change, conditions, limits) = (Change::front(old, new), Conditions::default(), Limits::default());
/// let derivations = Derivations::new(&car, &change, &conditions, &limits);
/// let mut last = String::new();
/// derivations.check(CheckId::OverallDiameter, Position::Front, &mut |step| last = step.to_string());
/// assert_eq!(last, "change of overall diameter = (634 − 632) / 632 × 100 = 0.3164557 %");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Step<'a> {
    name: fmt::Arguments<'a>,
    said: Said<'a>,
    citation: Option<Citation>,
}

#[derive(Clone, Copy, Debug)]
enum Said<'a> {
    /// It is put in.
    Given(Figure),
    /// It is worked out; `{0}` in the form stands for the first number.
    Worked { form: &'static str, numbers: &'a [f64], figure: Figure },
    /// It is no number.
    Words(fmt::Arguments<'a>),
}

impl Step<'_> {
    /// What the step tells, in the words of the trade.
    pub const fn name(&self) -> impl fmt::Display + '_ {
        self.name
    }

    /// The number that it comes to; nothing of words.
    pub const fn figure(&self) -> Option<Figure> {
        match self.said {
            Said::Given(figure) | Said::Worked { figure, .. } => Some(figure),
            Said::Words(_) => None,
        }
    }

    /// The expression with `{0}`, `{1}` in the places of the numbers put in; nothing of what is not worked out.
    pub const fn form(&self) -> Option<&'static str> {
        match self.said {
            Said::Worked { form, .. } => Some(form),
            Said::Given(_) | Said::Words(_) => None,
        }
    }

    /// The numbers that are put into the expression, in its order.
    pub const fn numbers(&self) -> &[f64] {
        match self.said {
            Said::Worked { numbers, .. } => numbers,
            Said::Given(_) | Said::Words(_) => &[],
        }
    }

    /// Whose rule or figure it is; nothing of what was measured, or of plain arithmetic.
    pub const fn citation(&self) -> Option<Citation> {
        self.citation
    }

    /// The line without its source.
    pub(crate) fn write(&self, f: &mut impl fmt::Write) -> fmt::Result {
        match self.said {
            Said::Given(figure) => write!(f, "{} = {figure}", self.name),
            Said::Worked { form, numbers, figure } => {
                write!(f, "{} = ", self.name)?;
                write_form(f, form, numbers)?;
                write!(f, " = {figure}")
            }
            Said::Words(words) => write!(f, "{}: {words}", self.name),
        }
    }

    /// The source, behind a comma: what was measured is as given, and what is stamped as designated.
    pub(crate) fn write_source(&self, f: &mut impl fmt::Write) -> fmt::Result {
        match (self.citation, self.said) {
            (Some(Citation::DESIGNATION), _) => f.write_str(", as designated"),
            (Some(citation), _) => write!(f, ", {citation}"),
            (None, Said::Given(_)) => f.write_str(", as given"),
            (None, _) => Ok(()),
        }
    }
}

impl fmt::Display for Step<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.write(f)?;
        self.write_source(f)
    }
}

/// An expression with its numbers put in, negative ones in brackets.
pub(crate) fn write_form(f: &mut impl fmt::Write, form: &str, numbers: &[f64]) -> fmt::Result {
    let mut parts = form.split('{');
    f.write_str(parts.next().unwrap_or_default())?;
    for part in parts {
        let (place, rest) = part.split_once('}').unwrap_or_default();
        let number = place.parse().ok().and_then(|place: usize| numbers.get(place));
        match number.copied().unwrap_or(f64::NAN) {
            number if number < 0.0 => write!(f, "({}){rest}", Digits(number))?,
            number => write!(f, "{}{rest}", Digits(number))?,
        }
    }
    Ok(())
}

/// A number to seven digits, without trailing zeros or a negative zero.
pub(crate) struct Digits(pub(crate) f64);

impl fmt::Display for Digits {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = self.0.abs();
        if !size.is_finite() {
            return write!(f, "{}", self.0);
        }
        let before = if size > 0.0 { libm::floor(libm::log10(size)) } else { 0.0 };
        Decimals(self.0, (6.0 - before).clamp(0.0, 12.0) as u8).fmt(f)
    }
}

/// Tells one step after the other to whoever listens.
pub(crate) struct Teller<'t>(&'t mut dyn FnMut(&Step<'_>));

impl<'t> Teller<'t> {
    pub(crate) fn new(hear: &'t mut dyn FnMut(&Step<'_>)) -> Self {
        Self(hear)
    }

    /// A number that is put in: measured or stated without a source, or read where the source says.
    pub(crate) fn given(
        &mut self,
        name: fmt::Arguments<'_>,
        number: f64,
        unit: &'static str,
        source: impl Into<Option<Citation>>,
    ) -> f64 {
        (self.0)(&Step { name, said: Said::Given(Figure::new(number, unit)), citation: source.into() });
        number
    }

    /// A number that is worked out by a form.
    pub(crate) fn worked(
        &mut self,
        name: fmt::Arguments<'_>,
        (form, numbers): (&'static str, &[f64]),
        number: f64,
        unit: &'static str,
        source: impl Into<Option<Citation>>,
    ) -> f64 {
        let said = Said::Worked { form, numbers, figure: Figure::new(number, unit) };
        (self.0)(&Step { name, said, citation: source.into() });
        number
    }

    /// What is no number.
    pub(crate) fn words(
        &mut self,
        name: fmt::Arguments<'_>,
        words: fmt::Arguments<'_>,
        source: impl Into<Option<Citation>>,
    ) {
        (self.0)(&Step { name, said: Said::Words(words), citation: source.into() });
    }
}

/// Which end of a span is told.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum End {
    Least,
    Nominal,
    Most,
}

impl End {
    pub(crate) fn of<Q: Copy + PartialOrd>(self, span: crate::Toleranced<Q>) -> Q {
        match self {
            Self::Least => span.min(),
            Self::Nominal => span.nominal(),
            Self::Most => span.max(),
        }
    }

    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Least => "least ",
            Self::Nominal => "",
            Self::Most => "largest ",
        }
    }
}
