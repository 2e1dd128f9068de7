//! What a path leads to in a file, and how that is left out.

use alloc::string::String;

use super::key::{Key, bare};
use super::near;
use super::place::{Forgotten, Path};
use super::shape::{Content, Object, Shaped};

/// Why a path leads nowhere.
#[derive(Debug)]
pub(crate) struct Nowhere {
    /// The key that no object has at its place.
    pub(crate) key: String,
    /// The key that may have been meant.
    pub(crate) near: Option<&'static str>,
}

impl Path<'_> {
    /// The same with every key as it is written, whatever unit it was given in.
    pub(crate) fn as_written(self, object: &'static Object) -> Result<String, Nowhere> {
        let mut written = String::new();
        let (mut content, mut left) = (Content::Object(object), Some(self));
        while let Some(path) = left {
            let (key, rest) = path.split();
            content = match content {
                Content::Object(object) | Content::SameOr(object) => {
                    let known = || object.entries.iter().map(|entry| entry.key);
                    let found = Key::among(key, known()).and_then(|found| object.entry(found.name));
                    let Some(entry) = found else {
                        return Err(Nowhere { key: key.into(), near: near::nearest(key, known(), bare) });
                    };
                    if !written.is_empty() {
                        written.push('.');
                    }
                    written += entry.key;
                    entry.content
                }
                Content::List { of, most, .. } if key.parse().is_ok_and(|number: usize| number < most) => {
                    written += &alloc::format!("[{key}]");
                    *of
                }
                _ => return Err(Nowhere { key: key.into(), near: None }),
            };
            left = rest;
        }
        Ok(written)
    }
}

impl Forgotten {
    /// Leaves out a field, or what stands in it.
    pub(crate) fn of<T: Shaped>(field: &mut Option<T>, rest: Option<Path<'_>>) -> Self {
        let Some(value) = field else { return Self::Nothing };
        match rest.map_or(Self::Whole, |rest| value.forget(rest)) {
            Self::Whole => Self::nothing_else(|| field.take().is_some(), None),
            other => other,
        }
    }

    /// Leaves out a field in which nothing else stands, by a way to take it that says whether there was anything.
    pub(crate) fn nothing_else(take: impl FnOnce() -> bool, rest: Option<Path<'_>>) -> Self {
        if rest.is_none() && take() { Self::Done } else { Self::Nothing }
    }

    /// Of a value that what it stands in cannot be without.
    pub(crate) fn needed<T: Shaped>(value: &mut T, rest: Option<Path<'_>>) -> Self {
        rest.map_or(Self::Whole, |rest| value.forget(rest))
    }
}
