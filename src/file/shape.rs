//! Which keys an object has and what each may hold, as tables.

use alloc::string::String;

use serde::de::{Deserialize, Deserializer};

use super::place::{Forgotten, Path};

/// An object of a file.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Object {
    pub(crate) name: &'static str,
    pub(crate) entries: &'static [Entry],
    /// Keys of which exactly one must be there, if there are any.
    pub(crate) one_of: &'static [&'static str],
}

impl Object {
    /// One of its keys.
    pub(crate) fn entry(&self, key: &str) -> Option<&'static Entry> {
        self.entries.iter().find(|entry| entry.key == key)
    }
}

/// A key.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Entry {
    pub(crate) key: &'static str,
    pub(crate) is_needed: bool,
    pub(crate) content: Content,
    /// What it is, for people.
    pub(crate) about: &'static str,
}

impl Entry {
    pub(crate) const fn needed(key: &'static str, content: Content, about: &'static str) -> Self {
        Self { key, is_needed: true, content, about }
    }

    pub(crate) const fn optional(key: &'static str, content: Content, about: &'static str) -> Self {
        Self { key, is_needed: false, content, about }
    }
}

/// What may stand behind a key.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Content {
    /// `true` or `false`.
    Flag,
    /// A text: a designation, or a name.
    Text,
    Words(&'static [&'static str]),
    Number {
        least: f64,
        most: f64,
    },
    Whole {
        least: u8,
        most: u8,
    },
    List {
        of: &'static Content,
        least: usize,
        most: usize,
    },
    Object(&'static Object),
    /// `"same"`, or the object.
    SameOr(&'static Object),
}

/// What can be read from a file.
pub(crate) trait Shaped: Sized {
    /// What must stand there.
    const CONTENT: Content;

    /// What stands there; nothing in an object that has keys and nothing but `null` and questions behind them.
    fn read<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Self>, D::Error>
    where
        Self: Deserialize<'de>,
    {
        Self::deserialize(deserializer).map(Some)
    }

    /// Leaves out what stands at a place inside it.
    fn forget(&mut self, _: Path<'_>) -> Forgotten {
        Forgotten::Nothing
    }
}

impl Shaped for String {
    const CONTENT: Content = Content::Text;
}

impl Shaped for bool {
    const CONTENT: Content = Content::Flag;

    fn read<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Self>, D::Error> {
        super::words::flag(deserializer).map(Some)
    }
}

impl<T: Shaped, const N: usize> Shaped for [T; N] {
    const CONTENT: Content = Content::List { of: &T::CONTENT, least: N, most: N };
}
