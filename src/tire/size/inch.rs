//! Numbers of inches as they are molded, with their decimals.

use super::key::SizeKey;
use crate::text::{Field, ParseError, Scanner, Text, tri};

/// A number of inches in hundredths, and how many decimals are printed: `9.5` and `9.50` are different
/// designations, but where the family says how many there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) struct Inches {
    hundredths: u16,
    decimals: u8,
}

impl Inches {
    /// Reads a number between two bounds, in hundredths.
    pub(super) const fn scan(
        scanner: &mut Scanner<'_>,
        field: Field,
        least: i64,
        most: i64,
    ) -> Result<Self, ParseError> {
        let start = scanner.at();
        let hundredths = tri!(scanner.decimal(field, 2));
        let mut decimals = 0;
        // As many digits as stand behind the point, two at most.
        let mut at = start;
        while at < scanner.at() && !scanner.is_point(at) {
            at += 1;
        }
        if at < scanner.at() {
            decimals = scanner.at() - at - 1;
        }
        if hundredths < least || hundredths > most || decimals > 2 {
            return Err(scanner.range(field, start));
        }
        Ok(Self { hundredths: hundredths as u16, decimals: decimals as u8 })
    }

    /// A whole number of hundredths.
    pub(super) const fn of_hundredths(hundredths: u16) -> Self {
        Self { hundredths, decimals: 2 }
    }

    /// With as few decimals as it takes.
    pub(super) const fn shortest(self) -> Self {
        let decimals = match self.hundredths {
            whole if whole % 100 == 0 => 0,
            tenths if tenths % 10 == 0 => 1,
            _ => 2,
        };
        Self { decimals, ..self }
    }

    /// With two decimals, but without any if it is whole.
    pub(super) const fn two_or_none(self) -> Self {
        Self { decimals: if self.hundredths % 100 == 0 { 0 } else { 2 }, ..self }
    }

    /// With two decimals where it was read with one.
    pub(super) const fn two_for_one(self) -> Self {
        Self { decimals: if self.decimals == 1 { 2 } else { self.decimals }, ..self }
    }

    /// With two decimals.
    pub(super) const fn two(self) -> Self {
        Self { decimals: 2, ..self }
    }

    pub(super) const fn hundredths(self) -> u16 {
        self.hundredths
    }

    pub(super) const fn decimals(self) -> u8 {
        self.decimals
    }

    /// Appended to the key of what comes before it.
    #[inline(always)]
    pub(super) const fn key(self, before: SizeKey) -> SizeKey {
        before.and(self.hundredths as u64, 13).and(self.decimals as u64, 2)
    }

    pub(super) fn write(self, text: &mut Text) {
        text.whole(u32::from(self.hundredths / 100));
        let rest = (self.hundredths % 100) as u8;
        if self.decimals > 0 {
            text.byte(b'.').byte(b'0' + rest / 10);
        }
        if self.decimals > 1 {
            text.byte(b'0' + rest % 10);
        }
    }
}
