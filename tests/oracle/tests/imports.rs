//! No file of `src` imports another in a circle.
//!
//! A file imports the file in which a name *stands* that it reads by `crate`, `super`, `self`, a module declared in it or
//! something it has by `use`, in code and in macros alike. A re-export is followed to where the name stands, so that a
//! module may pass on its children's names and these may use each other's through it; but a child that reads what its
//! parent itself defines, while the parent reads the child, is a circle. What stands in a module of its own inside a file
//! (the tests) does not count.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use proc_macro2::{Delimiter, TokenStream, TokenTree};

type Names = Vec<String>;

/// What a file says of others: the names it has by `use`, and every path it reads, both as they are written.
#[derive(Default)]
struct File {
    uses: BTreeMap<String, Names>,
    paths: Vec<Names>,
    /// Its macros, which stand at the root as well if they are exported.
    macros: Names,
}

/// Files by their module: `tire::size` for `src/tire/size.rs`, nothing for `src/lib.rs`.
struct Tree(BTreeMap<Names, File>);

impl File {
    fn read(source: &str) -> Self {
        let mut file = Self::default();
        file.walk(&source.parse::<TokenStream>().unwrap().into_iter().collect::<Vec<_>>());
        file
    }

    fn walk(&mut self, tokens: &[TokenTree]) {
        let mut at = 0;
        while let Some(token) = tokens.get(at) {
            at += 1;
            match token {
                TokenTree::Ident(word) if word == "use" => {
                    let end = tokens[at..].iter().position(|t| is(t, ';')).map_or(tokens.len(), |n| at + n);
                    self.tree(&[], &tokens[at..end]);
                    at = end;
                }
                TokenTree::Ident(word) if word == "macro_rules" => {
                    self.macros.extend(tokens.get(at + 1).map(ToString::to_string));
                }
                TokenTree::Ident(word)
                    if word == "mod" && matches!(tokens.get(at + 1), Some(TokenTree::Group(_))) =>
                {
                    at += 2;
                }
                TokenTree::Ident(word) => {
                    let mut path = vec![word.to_string()];
                    while let [a, b, TokenTree::Ident(next), ..] = &tokens[at..] {
                        if !is(a, ':') || !is(b, ':') {
                            break;
                        }
                        path.push(next.to_string());
                        at += 3;
                    }
                    self.paths.push(path);
                }
                TokenTree::Group(group) => self.walk(&group.stream().into_iter().collect::<Vec<_>>()),
                TokenTree::Punct(_) | TokenTree::Literal(_) => {}
            }
        }
    }

    /// The branches of a `use`, behind what stands before them.
    fn tree(&mut self, before: &[String], tokens: &[TokenTree]) {
        for branch in tokens.split(|t| is(t, ',')) {
            let (mut path, mut alias, mut is_alias) = (before.to_vec(), None, false);
            for token in branch {
                match token {
                    TokenTree::Ident(word) if word == "as" => is_alias = true,
                    TokenTree::Ident(word) if is_alias => alias = Some(word.to_string()),
                    TokenTree::Ident(word) if word == "self" && !path.is_empty() => {}
                    TokenTree::Ident(word) => path.push(word.to_string()),
                    TokenTree::Group(group) if group.delimiter() == Delimiter::Brace => {
                        self.tree(&path, &group.stream().into_iter().collect::<Vec<_>>());
                        path.clear();
                    }
                    _ => {}
                }
            }
            if let Some(last) = path.last().cloned() {
                self.uses.insert(alias.unwrap_or(last), path.clone());
                self.paths.push(path);
            }
        }
    }
}

fn is(token: &TokenTree, mark: char) -> bool {
    matches!(token, TokenTree::Punct(punct) if punct.as_char() == mark)
}

impl Tree {
    /// The module in whose file a path ends that is written in a module; nothing for what is not of this crate, for a
    /// module by itself, and for what is not a path to a name.
    fn resolve(&self, module: &[String], path: &[String], depth: usize) -> Option<Names> {
        let (first, mut rest) = path.split_first()?;
        let mut at = match first.as_str() {
            "crate" => Vec::new(),
            "self" => module.to_vec(),
            "super" => module[..module.len().checked_sub(1)?].to_vec(),
            name => return self.name(module, name, rest, depth),
        };
        while let Some("super") = rest.first().map(String::as_str) {
            at.pop()?;
            rest = &rest[1..];
        }
        let (name, rest) = rest.split_first()?;
        self.name(&at, name, rest, depth).or_else(|| (!self.is_outside(&at, name)).then_some(at))
    }

    /// The same of a name looked up in a module: a child, or what the module has by `use`.
    fn name(&self, module: &[String], name: &str, rest: &[String], depth: usize) -> Option<Names> {
        let child = [module, &[name.into()]].concat();
        if self.0.contains_key(&child) {
            let (name, rest) = rest.split_first()?;
            return self
                .name(&child, name, rest, depth)
                .or_else(|| (!self.is_outside(&child, name)).then_some(child));
        }
        if module.is_empty() && rest.is_empty() {
            if let Some(made_in) = self.0.iter().find(|(_, file)| file.macros.iter().any(|made| made == name))
            {
                return Some(made_in.0.clone());
            }
        }
        let used = self.0.get(module)?.uses.get(name).filter(|_| depth < 16)?;
        // A `use` of the very name, as of a macro, says nothing of where it stands.
        let path = [used, rest].concat();
        if used.len() == 1 { None } else { self.resolve(module, &path, depth + 1) }
    }

    /// Whether a name in a module is a child by itself, or something of another crate.
    fn is_outside(&self, module: &[String], name: &str) -> bool {
        let child = [module, &[name.into()]].concat();
        self.0.contains_key(&child)
            || self.0.get(module).is_some_and(|file| file.uses.get(name).is_some_and(|p| p.len() > 1))
    }

    fn imports(&self) -> BTreeMap<&Names, BTreeMap<Names, BTreeSet<String>>> {
        let mut all = BTreeMap::new();
        for (module, file) in &self.0 {
            let mut of: BTreeMap<Names, BTreeSet<String>> = BTreeMap::new();
            for path in &file.paths {
                if let Some(to) = self.resolve(module, path, 0).filter(|to| to != module) {
                    of.entry(to).or_default().insert(path.join("::"));
                }
            }
            all.insert(module, of);
        }
        all
    }

    /// The circles: of each the imports between its files.
    fn circles(&self) -> Vec<String> {
        let imports = self.imports();
        let reached = |from: &Names| {
            let (mut all, mut next) = (BTreeSet::new(), vec![from.clone()]);
            while let Some(module) = next.pop() {
                for to in imports[&module].keys() {
                    if all.insert(to.clone()) {
                        next.push(to.clone());
                    }
                }
            }
            all
        };
        let reached: BTreeMap<&Names, _> = imports.keys().map(|&module| (module, reached(module))).collect();
        let mut circles = Vec::new();
        let mut done = BTreeSet::new();
        for (&module, others) in &reached {
            if !others.contains(module) || !done.insert(module) {
                continue;
            }
            let circle: Vec<&Names> = imports
                .keys()
                .copied()
                .filter(|m| others.contains(*m) && reached[m].contains(module))
                .collect();
            done.extend(circle.iter().copied());
            let mut text = String::new();
            for from in &circle {
                for (to, names) in imports[*from].iter().filter(|(to, _)| circle.contains(to)) {
                    text += &format!("{} -> {}: {names:?}\n", from.join("::"), to.join("::"));
                }
            }
            circles.push(text);
        }
        circles
    }
}

fn files(folder: &Path, module: &[String], into: &mut BTreeMap<Names, File>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_stem().unwrap().to_str().unwrap();
        let module = if name == "lib" { Vec::new() } else { [module, &[name.into()]].concat() };
        if path.is_dir() {
            files(&path, &module, into);
        } else {
            into.insert(module, File::read(&fs::read_to_string(&path).unwrap()));
        }
    }
}

fn source() -> BTreeMap<Names, File> {
    let mut tree = BTreeMap::new();
    files(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../src"), &[], &mut tree);
    assert!(tree.len() > 100);
    tree
}

#[test]
fn no_file_imports_in_a_circle() {
    let circles = Tree(source()).circles();
    assert!(circles.is_empty(), "{} circles\n{}", circles.len(), circles.join("\n"));
}

/// A crate that writes drawings is named where they are made, and no signature can tell of it.
#[test]
fn svg_stays_inside() {
    let tree = source();
    let names_svg = |file: &File| file.paths.iter().any(|path| path.len() > 1 && path[0] == "svg");
    let who: Vec<String> =
        tree.iter().filter(|(_, file)| names_svg(file)).map(|(module, _)| module.join("::")).collect();
    assert_eq!(who, ["draw::paper"]);
}

#[test]
fn a_made_up_circle_is_found() {
    let circles = |sources: &[(&str, &str)]| {
        let module = |name: &str| name.split("::").filter(|n| !n.is_empty()).map(String::from).collect();
        Tree(sources.iter().map(|(name, source)| (module(name), File::read(source))).collect())
            .circles()
            .len()
    };
    let root = ("", "mod a; mod b; pub use a::A;");
    // Whatever way the name is read.
    for back in [
        "use super::a::A;",
        "use crate::A;",
        "use crate::{a::{A as Z}};",
        "use crate::a; fn f(_: a::A) {}",
        "f!(crate::a::A)",
    ] {
        assert_eq!(circles(&[root, ("a", "use super::b::B; struct A;"), ("b", back)]), 1, "{back}");
        assert_eq!(circles(&[root, ("a", "struct A;"), ("b", back)]), 0, "{back}");
    }
    // Of three, and through a re-export.
    let three = [root, ("a", "use crate::b::C;"), ("b", "mod c; pub use c::C;"), ("b::c", "use crate::A;")];
    assert_eq!(circles(&three), 1);
    // A child that reads what its parent defines; not one that reads its sibling through it.
    let parent = "mod c; mod d; pub use c::C; pub use d::D; pub struct P;";
    for (child, found) in [("use super::P;", 1), ("use super::D;", 0)] {
        assert_eq!(
            circles(&[("", "mod p;"), ("p", parent), ("p::c", child), ("p::d", "")]),
            found,
            "{child}"
        );
    }
}
