//! Limits of age.

use crate::Citation;

/// The greatest age of a tire that a rule allows, or that someone advises, in years from the week of its
/// date code. A retread counts from its retreading.
///
/// | limit | of what | years |
/// |---|---|---|
/// | [`UK_HEAVY`](Self::UK_HEAVY) | UK law since 1 February 2021: front axles of goods vehicles over 3500 kg, buses and coaches; all single wheels of minibuses | 10 |
/// | [`TIRE_MAKERS`](Self::TIRE_MAKERS) | what tire makers advise, whatever the tread | 10 |
/// | [`VEHICLE_MAKERS`](Self::VEHICLE_MAKERS) * | what many vehicle makers advise | 6 |
/// | [`INSPECT_YEARLY`](Self::INSPECT_YEARLY) * | from then on, inspection every year | 5 |
/// | [`UNSOLD`](Self::UNSOLD) | properly stored and not yet sold, as a tire maker puts it | 5 |
///
/// A trade page gives 21 February for the first; the agency's date is taken. What is marked * is common practice from memory. A date code of three digits is too old for any of
/// them.
///
/// ```
/// use beadseat::tire::condition::AgeLimit;
/// assert!(AgeLimit::UK_HEAVY.is_law() && !AgeLimit::TIRE_MAKERS.is_law());
/// assert_eq!(AgeLimit::VEHICLE_MAKERS.years(), 6);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct AgeLimit {
    years: u8,
    citation: Citation,
}

impl AgeLimit {
    /// UK law, on the axles named above.
    pub const UK_HEAVY: Self = Self { years: 10, citation: Citation::AGE_UK_HEAVY };
    /// Advice of tire makers.
    pub const TIRE_MAKERS: Self = Self { years: 10, citation: Citation::AGE_TIRE_MAKERS };
    /// Advice of many vehicle makers. From memory.
    pub const VEHICLE_MAKERS: Self = Self { years: 6, citation: Citation::AGE_PRACTICE };
    /// Inspection every year from this age. From memory.
    pub const INSPECT_YEARLY: Self = Self { years: 5, citation: Citation::AGE_PRACTICE };
    /// The longest proper storage of a tire that is not yet sold.
    pub const UNSOLD: Self = Self { years: 5, citation: Citation::AGE_UNSOLD };

    /// A limit of the caller's own.
    ///
    /// ```
    /// use beadseat::{Citation, tire::condition::AgeLimit};
    /// assert_eq!(AgeLimit::stated(7).citation(), Citation::CALLER);
    /// ```
    pub const fn stated(years: u8) -> Self {
        Self { years, citation: Citation::CALLER }
    }

    /// The greatest age, in years.
    pub const fn years(self) -> u8 {
        self.years
    }

    /// The source of the limit.
    pub const fn citation(self) -> Citation {
        self.citation
    }

    /// Whether it is law rather than advice.
    pub fn is_law(self) -> bool {
        self.citation.status() == crate::Status::Regulation
    }

    /// Whether a tire of this age is within the limit, the day of the limit included; `None` if that
    /// depends on the day of the week it was made, or on the decade. With feature `jiff`.
    ///
    /// ```
    /// use beadseat::tire::{condition::AgeLimit, identification::DateCode};
    /// let age = DateCode::parse("0516")?.age_on(jiff::civil::date(2026, 6, 1))?;
    /// assert_eq!(AgeLimit::UK_HEAVY.allows(&age), Some(false));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[cfg(feature = "jiff")]
    pub fn allows(self, age: &crate::tire::identification::Age) -> Option<bool> {
        age.is_over(self.years).map(|over| !over)
    }
}
