//! The summary of a public item is a sentence: what it is in four words or more, never "Which." or "The name."
//!
//! Read from the source, in tables of macros too: whatever stands behind a doc comment counts as public unless it begins
//! with a keyword, or with `pub(…)`, or stands in an enum that is not public.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use std::fs;
use std::path::Path;

use proc_macro2::{Delimiter, Group, TokenStream, TokenTree};

/// The fewest words of a summary.
const LEAST: usize = 4;

/// What begins an item that is public only with `pub` before it.
const KEYWORDS: [&str; 12] =
    ["fn", "struct", "enum", "impl", "const", "type", "mod", "static", "use", "macro_rules", "trait", "let"];

fn is(token: Option<&TokenTree>, mark: char) -> bool {
    matches!(token, Some(TokenTree::Punct(punct)) if punct.as_char() == mark)
}

fn word(token: Option<&TokenTree>) -> String {
    match token {
        Some(TokenTree::Ident(word)) => word.to_string(),
        _ => String::new(),
    }
}

fn group(token: Option<&TokenTree>, delimiter: Delimiter) -> Option<&Group> {
    match token {
        Some(TokenTree::Group(group)) if group.delimiter() == delimiter => Some(group),
        _ => None,
    }
}

fn tokens(stream: TokenStream) -> Vec<TokenTree> {
    stream.into_iter().collect()
}

/// A line of a doc comment; nothing for another attribute.
fn line(attribute: &Group) -> Option<String> {
    let all = tokens(attribute.stream());
    if word(all.first()) != "doc" || !is(all.get(1), '=') {
        return None;
    }
    let text = |token: &TokenTree| {
        let literal = token.to_string();
        let text = literal.trim_start_matches('r').trim_matches('#');
        text.strip_prefix('"').and_then(|text| text.strip_suffix('"')).map(String::from)
    };
    if let Some(text) = all.get(2).and_then(text) {
        return Some(text);
    }
    // `concat!(…)`: a name is one word, a text that the macro is given is a sentence of its own.
    let parts = tokens(group(all.get(4), Delimiter::Parenthesis)?.stream());
    let word_of = |part: &TokenTree| match part {
        TokenTree::Ident(name) if name == "stringify" => "x".into(),
        TokenTree::Punct(mark) if mark.as_char() == '$' => "x ".repeat(LEAST),
        part => text(part).unwrap_or_default(),
    };
    Some(parts.iter().map(word_of).collect())
}

/// Where a summary stands: in what is public by itself, or in a place that others see only through `pub`.
#[derive(Clone, Copy, PartialEq)]
enum Place {
    Rows,
    Items,
}

/// The summaries that are too short.
fn short(tokens_here: &[TokenTree], place: Place, found: &mut Vec<String>) {
    let (mut at, mut doc, mut is_public_enum) = (0, Vec::new(), None);
    while at < tokens_here.len() {
        let here = tokens_here.get(at);
        if is(here, '#') {
            if let Some(attribute) = group(tokens_here.get(at + 1), Delimiter::Bracket) {
                doc.extend(line(attribute));
                at += 2;
                continue;
            }
        }
        // Lines of a macro's own, between others.
        if !doc.is_empty() && is(here, '$') && is(tokens_here.get(at + 2), '*') {
            at += 3;
            continue;
        }
        if !doc.is_empty() {
            let is_pub = word(here) == "pub";
            let is_restricted = is_pub && group(tokens_here.get(at + 1), Delimiter::Parenthesis).is_some();
            let is_row = place == Place::Rows
                && matches!(here, Some(TokenTree::Ident(word)) if !KEYWORDS.contains(&word.to_string().as_str()));
            if !is_restricted && (is_pub || is_row) {
                let summary: Vec<String> =
                    doc.iter().take_while(|line| !line.trim().is_empty()).cloned().collect();
                let summary = summary.join(" ");
                if summary.split_whitespace().count() < LEAST {
                    found.push(summary.trim().into());
                }
            }
            doc.clear();
        }
        match here {
            Some(TokenTree::Ident(name))
                if name == "mod" && group(tokens_here.get(at + 2), Delimiter::Brace).is_some() =>
            {
                at += 2;
            }
            Some(TokenTree::Ident(name)) if name == "enum" => {
                is_public_enum = Some(at > 0 && word(tokens_here.get(at - 1)) == "pub");
            }
            Some(TokenTree::Group(inner)) => {
                let of_macro =
                    at > 1 && (is(tokens_here.get(at - 1), '!') && !is(tokens_here.get(at - 2), '#'));
                let braces = inner.delimiter() == Delimiter::Brace;
                let place = match is_public_enum.take_if(|_| braces) {
                    Some(true) => Place::Rows,
                    Some(false) => Place::Items,
                    None if of_macro => Place::Rows,
                    None => place,
                };
                short(&tokens(inner.stream()), place, found);
            }
            _ => {}
        }
        at += 1;
    }
}

fn short_in(source: &str) -> Vec<String> {
    let mut found = Vec::new();
    short(&tokens(source.parse().unwrap()), Place::Items, &mut found);
    found
}

fn files(folder: &Path, found: &mut Vec<String>) -> usize {
    let mut read = 0;
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            read += files(&path, found);
        } else {
            let summaries = short_in(&fs::read_to_string(&path).unwrap());
            found.extend(summaries.iter().map(|summary| format!("{}: {summary:?}", path.display())));
            read += 1;
        }
    }
    read
}

#[test]
fn a_summary_of_a_public_item_is_a_sentence() {
    let mut found = Vec::new();
    let read = files(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../src"), &mut found);
    assert!(read > 100, "{read}");
    assert!(found.is_empty(), "{} of fewer than {LEAST} words\n{}", found.len(), found.join("\n"));
}

#[test]
fn a_made_up_short_summary_is_found() {
    // Whatever kind of item it stands on.
    for source in [
        "/// Which.\npub fn f() {}",
        "/// The name.\n///\n/// A long paragraph that says much.\n#[inline]\npub const fn f() {}",
        "impl A { /// Which one.\n pub fn f() {} }",
        "pub struct A { /// Front axle.\n pub front: u8 }",
        "/// A long summary of this.\npub enum A { /// Left.\n Left, }",
        "/// A long summary of this.\npub enum A { /// A long one of these.\n B { /// Width.\n width: u8 }, }",
        "words! { /// A long summary of this.\n A { /// Left.\n Left = \"left\", } }",
        "record! { /// A long summary of this.\n A { /// Track.\n track / with_track: Length = \"track\"; } }",
        "macro_rules! m { ($a:ident) => { #[doc = concat!(\"Sets \", stringify!($a), \".\")] pub fn f() {} } }",
        "macro_rules! m { ($a:ident) => { impl A { /// Every one.\n pub const ALL: u8 = 0; } } }",
    ] {
        assert_eq!(short_in(source).len(), 1, "{source}");
    }
    for source in [
        "/// Which of the axles.\npub fn f() {}",
        "/// Which.\nfn f() {}",
        "/// Which.\npub(crate) fn f() {}",
        "/// Which.\nenum A { /// Left.\n Left }",
        "struct A { /// Metres.\n radius: f64 }",
        "mod tests { /// Which.\n pub fn f() {} }",
        "//! Which.\npub fn f() {}",
    ] {
        assert!(short_in(source).is_empty(), "{source}");
    }
}
