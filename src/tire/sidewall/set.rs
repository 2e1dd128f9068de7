//! Which words stand on a sidewall.

use super::mark::SidewallMark;

/// A set of the marks of [`SidewallMark::WORDS`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub(in crate::tire) struct MarkSet([u16; 3]);

const _: () = assert!(SidewallMark::WORDS.len() <= 48);

impl MarkSet {
    pub(in crate::tire) const fn new() -> Self {
        Self([0; 3])
    }

    /// Puts a mark in, if it is one of the words.
    pub(in crate::tire) const fn insert(&mut self, mark: SidewallMark) {
        if let Some(word) = mark.word() {
            self.0[word as usize / 16] |= 1 << (word % 16);
        }
    }

    pub(in crate::tire) const fn len(self) -> u32 {
        let [a, b, c] = self.0;
        a.count_ones() + b.count_ones() + c.count_ones()
    }

    pub(in crate::tire) const fn contains(self, mark: SidewallMark) -> bool {
        match mark.word() {
            Some(word) => self.0[word as usize / 16] & 1 << (word % 16) != 0,
            None => false,
        }
    }

    /// Those that are in, in the order of the table.
    pub(in crate::tire) fn iter(self) -> impl Iterator<Item = SidewallMark> {
        SidewallMark::WORDS.iter().copied().filter(move |&mark| self.contains(mark))
    }
}
