//! Sizes as whole numbers, by which sorted tables are searched, in `const` too.

/// A size as a number: different sizes have different ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::tire) struct SizeKey(u64);

impl SizeKey {
    /// The key that begins with the family.
    pub(super) const fn new(family: u64) -> Self {
        Self(family)
    }

    /// The key with a value of so many bits behind it.
    #[inline(always)]
    pub(super) const fn and(self, value: u64, bits: u32) -> Self {
        Self(self.0 << bits | value)
    }
}

/// Rows by size, as a document has them, in the order of their keys. Only for `const`: a size that is listed twice
/// does not compile.
pub(in crate::tire) const fn sorted<R: Copy, const N: usize>(
    mut rows: [(SizeKey, R); N],
) -> [(SizeKey, R); N] {
    let mut end = 1;
    while end < N {
        let row = rows[end];
        let mut at = end;
        while at > 0 && rows[at - 1].0.0 > row.0.0 {
            rows[at] = rows[at - 1];
            at -= 1;
        }
        assert!(at == 0 || rows[at - 1].0.0 < row.0.0, "a size is listed twice");
        rows[at] = row;
        end += 1;
    }
    rows
}

/// The row of a size in a [sorted] table.
pub(in crate::tire) fn find<R>(rows: &'static [(SizeKey, R)], key: SizeKey) -> Option<&'static R> {
    let at = rows.binary_search_by_key(&key, |row| row.0).ok()?;
    rows.get(at).map(|row| &row.1)
}
