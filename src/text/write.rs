//! A short text on the stack, which `Display` hands to the formatter in one piece so that width and
//! alignment work.

/// Longer than any canonical form; what would not fit is left out, and a test holds that none does.
const CAPACITY: usize = 256;

#[derive(Clone, Copy)]
pub(crate) struct Text {
    bytes: [u8; CAPACITY],
    len: usize,
}

impl Text {
    pub(crate) const fn new() -> Self {
        Self { bytes: [0; CAPACITY], len: 0 }
    }

    /// One ASCII character.
    #[inline]
    pub(crate) fn byte(&mut self, byte: u8) -> &mut Self {
        if let Some(place) = self.bytes.get_mut(self.len) {
            *place = byte;
            self.len += 1;
        }
        self
    }

    /// All of a string, or nothing of it where it does not fit.
    #[inline]
    pub(crate) fn str(&mut self, text: &str) -> &mut Self {
        match text.as_bytes() {
            [] => self,
            &[letter] => self.byte(letter),
            bytes => {
                if let Some(room) =
                    self.bytes.get_mut(self.len..).and_then(|room| room.get_mut(..bytes.len()))
                {
                    room.copy_from_slice(bytes);
                    self.len += bytes.len();
                }
                self
            }
        }
    }

    /// So many ASCII characters, or none of them where they do not fit.
    #[inline]
    fn all<const N: usize>(&mut self, bytes: [u8; N]) -> &mut Self {
        if let Some(room) = self.bytes.get_mut(self.len..).and_then(<[u8]>::first_chunk_mut) {
            *room = bytes;
            self.len += N;
        }
        self
    }

    #[inline]
    pub(crate) fn whole(&mut self, value: u32) -> &mut Self {
        let digit = |of: u32| b'0' + of as u8;
        match value {
            0..10 => self.byte(digit(value)),
            10..100 => self.all([digit(value / 10), digit(value % 10)]),
            100..1000 => self.all([digit(value / 100), digit(value / 10 % 10), digit(value % 10)]),
            _ => self.thousands(value),
        }
    }

    /// A whole number of four digits or more.
    #[inline(never)]
    fn thousands(&mut self, value: u32) -> &mut Self {
        let mut worth = 1_000_000_000;
        while worth > 0 {
            if value >= worth {
                self.byte(b'0' + (value / worth % 10) as u8);
            }
            worth /= 10;
        }
        self
    }

    /// A number given in millionths, without trailing zeros.
    #[inline]
    pub(crate) fn millionths(&mut self, value: i64) -> &mut Self {
        if value < 0 {
            self.byte(b'-');
        }
        let value = value.unsigned_abs();
        self.whole((value / 1_000_000) as u32);
        let mut rest = (value % 1_000_000) as u32;
        if rest > 0 {
            self.byte(b'.');
            let mut worth = 100_000;
            while rest > 0 {
                self.byte(b'0' + (rest / worth) as u8);
                rest %= worth;
                worth /= 10;
            }
        }
        self
    }

    /// Only whole strings and ASCII bytes are ever written, so this is never the empty fallback.
    #[inline]
    pub(crate) fn as_str(&self) -> &str {
        // With some of the zeros behind it: it is blocks of two words that are checked fast.
        const BLOCK: usize = 16;
        const { assert!(CAPACITY % BLOCK == 0) };
        let blocks = self.bytes.get(..self.len.next_multiple_of(BLOCK)).unwrap_or(&self.bytes);
        core::str::from_utf8(blocks).ok().and_then(|all| all.get(..self.len)).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::{CAPACITY, Text};

    #[test]
    fn numbers_are_written_in_full_and_without_leading_zeros() {
        let edges = (0..10).flat_map(|power| {
            let worth = 10_u32.pow(power);
            [worth - 1, worth, worth + 1, worth.saturating_mul(4)]
        });
        for value in (0..=20_000).chain(edges).chain([u32::MAX]) {
            let mut text = Text::new();
            let written = text.whole(value).as_str();
            assert_eq!(written.parse(), Ok(value));
            assert!(value == 0 || !written.starts_with('0'), "{written}");
        }
    }

    #[test]
    fn a_string_that_does_not_fit_is_left_out_whole() {
        let mut text = Text::new();
        for _ in 0..CAPACITY - 1 {
            text.byte(b'x');
        }
        text.str("é");
        assert_eq!(text.as_str().len(), CAPACITY - 1);
        text.str("y").str("z");
        assert_eq!(text.as_str().len(), CAPACITY);
        assert!(text.as_str().ends_with("xy"));
    }
}
