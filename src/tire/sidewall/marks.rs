//! What stands on a sidewall, without its size.

use super::line::SidewallLine;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::tire::{
    LoadRange, LoadVersion, ServiceDescription, TireSize, sidewall::MoldedLimit, sidewall::SidewallMark,
};

/// Marks and maxima of a sidewall without its size, as they stand in lines of their own.
///
/// # Syntax
/// One part or more that may stand behind the size of a [`SidewallLine`], in any order.
///
/// ```
/// use beadseat::tire::sidewall::{SidewallMark, SidewallMarks};
/// let marks: SidewallMarks = "3PMSF M+S max load 615 kg max press 44 psi".parse()?;
/// assert_eq!(marks.to_string(), "M+S 3PMSF MAX LOAD 615 kg MAX PRESS 44 psi");
/// assert!(marks.words().eq([SidewallMark::MudAndSnow, SidewallMark::SevereSnow]));
/// assert_eq!(marks.limits().count(), 2);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct SidewallMarks {
    /// With some size that refuses no part.
    line: SidewallLine,
}

/// A size beside which every part may stand.
const SOME: TireSize = crate::literal!(TireSize, "120/70-17 M/C");

impl SidewallMarks {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let line = tri!(SidewallLine::scan_behind(SOME, scanner));
        if scanner.at() == start || line.is_bare() && line.tire().is_bare() {
            return Err(scanner.missing(Field::SidewallMark));
        }
        Ok(Self { line })
    }

    pub(crate) fn write(&self, text: &mut Text) {
        self.line.write_behind(text);
    }

    /// The service description, if one stands there.
    pub const fn service(&self) -> Option<ServiceDescription> {
        self.line.tire().service()
    }

    /// The second service description, of another load at another speed, if one stands there.
    ///
    /// ```
    /// let marks: beadseat::tire::sidewall::SidewallMarks = "104/102R (97T)".parse()?;
    /// assert_eq!(marks.second_service().map(|s| s.to_string()).as_deref(), Some("97T"));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn second_service(&self) -> Option<ServiceDescription> {
        self.line.second_service()
    }

    /// The load version, if one stands there.
    pub const fn version(&self) -> Option<LoadVersion> {
        self.line.given_version()
    }

    /// The load range, if one stands there.
    pub const fn range(&self) -> Option<LoadRange> {
        self.line.given_range()
    }

    /// Whether nothing but maxima stands there.
    pub(crate) const fn has_only_limits(&self) -> bool {
        self.line.has_only_limits()
    }

    /// The marks of [`SidewallMark::WORDS`], in the order of their table.
    pub fn words(&self) -> impl Iterator<Item = SidewallMark> + use<> {
        self.line.marks()
    }

    /// The maxima, of load first.
    pub fn limits(&self) -> impl Iterator<Item = MoldedLimit> + use<> {
        self.line.limits()
    }
}

designation!(SidewallMarks in "beadseat::tire::sidewall", "snowflake m+s" => "M+S 3PMSF", wrong "205/55R16 M+S");
