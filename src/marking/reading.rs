//! One reading of a text, and all that it can have.

use super::kind::Marking;

/// One way to read a text.
///
/// ```
/// let readings = beadseat::marking::readings("7-16")?;
/// let best = readings.best();
/// assert_eq!(best.marking().kind(), "tire");
/// assert_eq!(best.when(), Some("a tire if the first number is the width of its section"));
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reading {
    marking: Marking,
    when: Option<&'static str>,
    /// Whether the condition stands even where nothing else is read.
    doubtful: bool,
}

impl Reading {
    /// What the text is read as.
    pub const fn marking(&self) -> Marking {
        self.marking
    }

    /// What must hold for it, in the trade's words, where the text alone does not decide.
    pub const fn when(&self) -> Option<&'static str> {
        self.when
    }
}

/// The most readings that are kept.
const MOST: usize = 4;

/// Every reading of a text, best first; at least one.
///
/// ```
/// let readings = beadseat::marking::readings("7-16")?;
/// assert!(readings.are_several());
/// let kinds: Vec<_> = readings.iter().map(|reading| reading.marking().kind()).collect();
/// assert_eq!(kinds, ["tire", "wheel"]);
/// assert!(!beadseat::marking::readings("205/55R16 91V")?.are_several());
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Readings {
    best: Reading,
    others: [Option<Reading>; MOST - 1],
}

impl Readings {
    /// The best of the readings.
    pub const fn best(&self) -> Reading {
        self.best
    }

    /// Whether there is more than one.
    pub const fn are_several(&self) -> bool {
        self.others[0].is_some()
    }

    /// All readings, the best first.
    pub fn iter(&self) -> impl Iterator<Item = Reading> + Clone + use<> {
        core::iter::once(self.best).chain(self.others.into_iter().flatten())
    }

    /// All but the best.
    ///
    /// ```
    /// assert_eq!(beadseat::marking::readings("5x112")?.others().count(), 0);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn others(&self) -> impl Iterator<Item = Reading> + Clone + use<> {
        self.others.into_iter().flatten()
    }
}

/// Readings on the way, best first.
#[derive(Clone, Copy, Default)]
pub(super) struct List([Option<Reading>; MOST]);

impl List {
    /// Appends a reading, with what must hold for it if there are others.
    pub(super) fn push(&mut self, marking: Marking, when: &'static str) {
        self.append(Reading { marking, when: Some(when), doubtful: false });
    }

    /// Appends a reading that holds only if something is so.
    pub(super) fn push_doubtful(&mut self, marking: Marking, when: &'static str) {
        self.append(Reading { marking, when: Some(when), doubtful: true });
    }

    fn append(&mut self, reading: Reading) {
        let is_there = self.0.iter().flatten().any(|other| other.marking == reading.marking);
        if let (Some(place), false) = (self.0.iter_mut().find(|place| place.is_none()), is_there) {
            *place = Some(reading);
        }
    }

    pub(super) fn is_empty(&self) -> bool {
        self.0[0].is_none()
    }

    /// The readings, if there is any. What only others would call in question needs no condition.
    pub(super) fn done(self) -> Option<Readings> {
        let [Some(mut best), a, b, c] = self.0 else { return None };
        if a.is_none() && !best.doubtful {
            best.when = None;
        }
        Some(Readings { best, others: [a, b, c] })
    }
}
