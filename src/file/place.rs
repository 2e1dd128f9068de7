//! A place in a file, and what comes of leaving out what stands there.

/// A place by the names of the keys that lead to it, as `vehicle.front.space.obstacles[0]`.
#[derive(Clone, Copy)]
pub(crate) struct Path<'a>(&'a str);

impl<'a> Path<'a> {
    pub(crate) const fn new(path: &'a str) -> Self {
        Self(path)
    }

    /// Its first key, and what is left behind it.
    pub(crate) fn split(self) -> (&'a str, Option<Self>) {
        let (first, rest) = match self.0.split_once(['.', '[']) {
            Some((first, rest)) => (first, Some(Self(rest))),
            None => (self.0, None),
        };
        (first.strip_suffix(']').unwrap_or(first), rest)
    }
}

/// What came of leaving a value out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Forgotten {
    /// There is no such value.
    Nothing,
    /// It is left out.
    Done,
    /// What it stands in cannot be without it, and must be left out as a whole.
    Whole,
}
