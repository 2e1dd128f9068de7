//! Numbers for people, no longer than they are worth.

use core::fmt;

/// A number with so many decimals at most, no trailing zeros, no negative zero.
pub(crate) struct Decimals(pub(crate) f64, pub(crate) u8);

impl fmt::Display for Decimals {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(value, most) = *self;
        let steps = |decimals: u8| libm::exp10(f64::from(decimals));
        let rounded = libm::round(value * steps(most)) / steps(most) + 0.0;
        let whole = |&decimals: &u8| libm::round(rounded * steps(decimals)) / steps(decimals) == rounded;
        let decimals = (0..=most).find(whole).unwrap_or(most);
        write!(f, "{rounded:.0$}", usize::from(decimals))
    }
}
