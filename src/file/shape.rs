//! Which keys an object has and what each may hold, as tables.

/// An object of a file.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Object {
    pub(crate) name: &'static str,
    pub(crate) entries: &'static [Entry],
    /// Keys of which exactly one must be there, if there are any.
    pub(crate) one_of: &'static [&'static str],
}

/// A key.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Entry {
    pub(crate) key: &'static str,
    pub(crate) is_needed: bool,
    pub(crate) content: Content,
}

impl Entry {
    pub(crate) const fn needed(key: &'static str, content: Content) -> Self {
        Self { key, is_needed: true, content }
    }

    pub(crate) const fn optional(key: &'static str, content: Content) -> Self {
        Self { key, is_needed: false, content }
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
pub(crate) trait Shaped {
    /// What must stand there.
    const CONTENT: Content;
}

impl Shaped for bool {
    const CONTENT: Content = Content::Flag;
}

impl<T: Shaped, const N: usize> Shaped for [T; N] {
    const CONTENT: Content = Content::List { of: &T::CONTENT, least: N, most: N };
}
