//! Words that people use where a file has others, and words that may mean several of them.

use alloc::format;
use alloc::string::String;
use core::fmt;
use core::str::FromStr;

use serde::de::{Deserialize, Deserializer, Error, Visitor};

use super::near;
use crate::text::{Excerpt, Listed, unknown_variant};

/// What people say, and the one thing it means of those that may stand at a place. Common usage, no source; a cone
/// whose angle is not told is one of 60°.
const MEANT: &[(&str, &str)] = &[
    ("rwd", "rear"),
    ("rear wheel drive", "rear"),
    ("fwd", "front"),
    ("front wheel drive", "front"),
    ("awd", "all"),
    ("4wd", "all"),
    ("4x4", "all"),
    ("car", "passenger"),
    ("suv", "multipurpose"),
    ("van", "truck"),
    ("pickup", "truck"),
    ("lorry", "truck"),
    ("coach", "bus"),
    ("caravan", "trailer"),
    ("motorbike", "motorcycle"),
    ("bolts", "bolt"),
    ("studs", "stud"),
    ("nuts", "nut"),
    ("nuts", "stud"),
    ("nut", "stud"),
    ("live axle", "beam"),
    ("solid axle", "beam"),
    ("inboard", "inner"),
    ("outboard", "outer"),
    ("conical", "cone 60"),
    ("tapered", "cone 60"),
    ("taper", "cone 60"),
    ("cone", "cone 60"),
    ("acorn", "cone 60"),
];

const BALLS: &[&str] = &["ball R12", "ball R13", "ball R14", "ball R16"];

/// What people say, and what it may mean.
const ASKED: &[(&str, &[&str])] = &[
    ("2wd", &["front", "rear"]),
    ("mag", &["flat", "shank"]),
    ("ball", BALLS),
    ("radius", BALLS),
    ("spherical", BALLS),
];

fn is_said(text: &str, word: &str) -> bool {
    let same = |(a, b): (char, char)| a.eq_ignore_ascii_case(&b) || b == ' ' && matches!(a, '-' | '_');
    text.len() == word.len() && text.chars().zip(word.chars()).all(same)
}

/// Everything that means one of some words.
pub(crate) fn others(words: &'static [&'static str]) -> impl Iterator<Item = &'static str> {
    let means = |word: &str| words.contains(&word);
    MEANT.iter().filter(move |(said, meant)| means(meant) && !words.contains(said)).map(|(said, _)| *said)
}

/// The words that a text may mean, of those that hold at a place.
fn asked(text: &str, holds: impl Fn(&str) -> bool) -> Option<String> {
    let (_, may) =
        ASKED.iter().find(|(said, may)| is_said(text, said) && may.iter().all(|may| holds(may)))?;
    Some(format!("`{}` may mean one of {}: say which", Excerpt(text), Listed(may)))
}

/// One of some words, from what people say.
///
/// # Errors
/// What means none of them, or more than one.
pub(crate) fn word<T: FromStr, E: Error>(text: &str, words: &'static [&'static str]) -> Result<T, E> {
    let meant = MEANT.iter().find(|(said, meant)| words.contains(meant) && is_said(text, said));
    let itself = words.iter().find(|word| is_said(text, word)).copied();
    if let Some(found) = itself.or(meant.map(|(_, meant)| *meant)).and_then(|word| word.parse().ok()) {
        return Ok(found);
    }
    if let Some(question) = asked(text, |may| words.contains(&may)) {
        return Err(E::custom(question));
    }
    match near::nearest(text, words.iter().copied(), |word| word) {
        Some(near) => Err(E::custom(format_args!(
            "unknown variant `{}`, is `{near}` meant? expected one of {}",
            Excerpt(text),
            Listed(words),
        ))),
        None => Err(unknown_variant(text, words)),
    }
}

/// A designation that people say otherwise than it is written, or the words that it may mean.
pub(crate) fn designation<T: FromStr>(text: &str) -> Option<Result<T, String>> {
    let meant = MEANT.iter().find_map(|(said, meant)| is_said(text, said).then(|| meant.parse().ok())?);
    let date = || {
        let text = text.trim();
        let digits =
            text.get(..3).filter(|word| word.eq_ignore_ascii_case("DOT")).and_then(|_| text.get(3..))?;
        let digits = digits.trim_start_matches([' ', ':']);
        let is_date = matches!(digits.len(), 3 | 4) && digits.bytes().all(|byte| byte.is_ascii_digit());
        digits.parse().ok().filter(|_| is_date)
    };
    let found = meant.or_else(date).map(Ok);
    found.or_else(|| asked(text, |may| may.parse::<T>().is_ok()).map(Err))
}

/// `true` or `false`, also as `yes` or `no`.
pub(crate) fn flag<'de, D: Deserializer<'de>>(deserializer: D) -> Result<bool, D::Error> {
    struct YesOrNo;
    impl Visitor<'_> for YesOrNo {
        type Value = bool;

        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("`true` or `false`, `yes` or `no`")
        }

        fn visit_bool<E: Error>(self, flag: bool) -> Result<bool, E> {
            Ok(flag)
        }

        fn visit_str<E: Error>(self, text: &str) -> Result<bool, E> {
            if ["yes", "true"].iter().any(|word| is_said(text, word)) {
                Ok(true)
            } else if ["no", "false"].iter().any(|word| is_said(text, word)) {
                Ok(false)
            } else {
                Err(E::invalid_type(serde::de::Unexpected::Str(&format!("{}", Excerpt(text))), &self))
            }
        }
    }
    deserializer.deserialize_any(YesOrNo)
}

/// A question of a template: a text that is passed over.
pub(crate) struct Question;

impl<'de> Deserialize<'de> for Question {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Passed;
        impl Visitor<'_> for Passed {
            type Value = Question;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a question as text: the answer goes at the key without `?`")
            }

            fn visit_str<E: Error>(self, _: &str) -> Result<Question, E> {
                Ok(Question)
            }
        }
        deserializer.deserialize_any(Passed).map_err(crate::text::bounded)
    }
}
