//! A short text on the stack, which `Display` hands to the formatter in one piece so that width and
//! alignment work.

/// Longer than any canonical form; what would not fit is left out, and a test holds that none does.
const CAPACITY: usize = 64;

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
    pub(crate) fn byte(&mut self, byte: u8) -> &mut Self {
        if let Some(place) = self.bytes.get_mut(self.len) {
            *place = byte;
            self.len += 1;
        }
        self
    }

    pub(crate) fn str(&mut self, text: &str) -> &mut Self {
        if let Some(place) = self.bytes.get_mut(self.len..self.len + text.len()) {
            place.copy_from_slice(text.as_bytes());
            self.len += text.len();
        }
        self
    }

    pub(crate) fn whole(&mut self, value: u32) -> &mut Self {
        if value >= 10 {
            self.whole(value / 10);
        }
        self.byte(b'0' + (value % 10) as u8)
    }

    /// A number given in millionths, without trailing zeros.
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
    pub(crate) fn as_str(&self) -> &str {
        core::str::from_utf8(self.bytes.get(..self.len).unwrap_or_default()).unwrap_or_default()
    }
}
