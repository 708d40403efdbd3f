//! No circle between the files of `src`.
//!
//! A file uses another when its code names something that is written there: by a `use`, or by a path in passing. A name is
//! followed through re-exports to the file that writes it, so it is all the same whether `super::Thing` or
//! `super::thing::Thing` is said. A parent does not use its children by `mod` or by `pub use`: that is only a table of
//! contents. It does use what it calls or holds of them; then the children may not use what the parent itself writes, and
//! what both need has a file of its own, below both.
//!
//! Methods are called by no path, and code for tests inside a file may look where it likes; neither is seen here.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use super::{read, root, with_extension};

/// A path of modules from the root of the crate, and the name in the last of them.
type Route = Vec<String>;

/// What one file declares and names.
struct File {
    route: Route,
    /// What a name in this file stands for: its children and all it imports.
    names: BTreeMap<String, Route>,
    /// The routes it uses, re-exports not counted.
    used: Vec<Route>,
}

/// The words and signs of a source text, without comments, strings and characters.
fn tokens(text: &str) -> Vec<String> {
    let chars: Vec<char> = text.chars().collect();
    let at = |index: usize| chars.get(index).copied().unwrap_or('\0');
    let until = |from: usize, end: &str| {
        let end: Vec<char> = end.chars().collect();
        (from..chars.len())
            .find(|index| chars[*index..].starts_with(&end))
            .map_or(chars.len(), |index| index + end.len())
    };
    let (mut found, mut index) = (Vec::new(), 0);
    while index < chars.len() {
        index = match (at(index), at(index + 1)) {
            ('/', '/') => until(index, "\n"),
            ('/', '*') => until(index, "*/"),
            ('r', '"') => until(index + 2, "\""),
            ('r', '#') if at(index + 2) == '"' => until(index + 3, "\"#"),
            ('"', _) => {
                let mut end = index + 1;
                while end < chars.len() && at(end) != '"' {
                    end += if at(end) == '\\' { 2 } else { 1 };
                }
                end + 1
            }
            ('\'', '\\') => until(index + 3, "'"),
            ('\'', _) if at(index + 2) == '\'' => index + 3,
            (':', ':') => {
                found.push("::".to_owned());
                index + 2
            }
            (c, _) if c.is_alphanumeric() || c == '_' => {
                let end = (index..=chars.len()).find(|end| !(at(*end).is_alphanumeric() || at(*end) == '_'));
                let end = end.unwrap_or(chars.len());
                found.push(chars[index..end].iter().collect());
                end
            }
            (c, _) => {
                if !c.is_whitespace() {
                    found.push(c.to_string());
                }
                index + 1
            }
        };
    }
    found
}

/// The paths of a `use` tree, each with the name it is known by afterwards.
fn tree(tokens: &[String], at: &mut usize, before: &[String], found: &mut Vec<(Route, String)>) {
    let mut path = before.to_vec();
    while let Some(token) = tokens.get(*at) {
        match token.as_str() {
            "::" => *at += 1,
            "{" => {
                *at += 1;
                while tokens[*at] != "}" {
                    let from = *at;
                    tree(tokens, at, &path, found);
                    *at += usize::from(tokens[*at] == ",");
                    assert!(*at > from, "a `use` that is not understood: {}", tokens[from - 6..from + 2].join(" "));
                }
                *at += 1;
                return;
            }
            "as" => {
                found.push((path, tokens[*at + 1].clone()));
                *at += 2;
                return;
            }
            "," | "}" | ";" => break,
            "self" if !path.is_empty() => *at += 1,
            word => {
                path.push(word.to_owned());
                *at += 1;
            }
        }
    }
    let name = path.last().cloned().unwrap_or_default();
    found.push((path, name));
}

/// Where a body that opens at `from` has been closed.
fn past_the_body(tokens: &[String], from: usize) -> usize {
    let mut depth = 0_usize;
    for (index, token) in tokens.iter().enumerate().skip(from) {
        match token.as_str() {
            "{" => depth += 1,
            "}" if depth == 1 => return index + 1,
            "}" => depth -= 1,
            _ => {}
        }
    }
    tokens.len()
}

/// A path as written in the module `here`, from the root of the crate. One that leads out of the crate is none.
fn absolute(path: &[String], here: &Route, names: &BTreeMap<String, Route>) -> Option<Route> {
    let (first, rest) = path.split_first()?;
    let mut route = match first.as_str() {
        "crate" => Vec::new(),
        "self" => here.clone(),
        "super" => here[..here.len().checked_sub(1)?].to_vec(),
        name => names.get(name)?.clone(),
    };
    for word in rest {
        if word == "super" {
            route.pop();
        } else {
            route.push(word.clone());
        }
    }
    Some(route)
}

impl File {
    fn of(route: Route, text: &str) -> Self {
        let tokens = tokens(text);
        let (mut names, mut imports, mut paths): (BTreeMap<_, _>, Vec<_>, Vec<Route>) = Default::default();
        let mut at = 0;
        while at < tokens.len() {
            let before = if at == 0 { "" } else { &tokens[at - 1] };
            let after = tokens.get(at + 1).map_or("", String::as_str);
            match tokens[at].as_str() {
                "mod" if tokens.get(at + 2).is_some_and(|token| token == "{") => {
                    at = past_the_body(&tokens, at);
                    continue;
                }
                "mod" => {
                    names.insert(after.to_owned(), [route.clone(), vec![after.to_owned()]].concat());
                    at += 2;
                    continue;
                }
                "pub" if after == "(" => {
                    while tokens[at] != ")" {
                        at += 1;
                    }
                }
                // `use<…>` says what a type captures and brings in nothing.
                "use" if after != "<" => {
                    let mut found = Vec::new();
                    at += 1;
                    tree(&tokens, &mut at, &[], &mut found);
                    let shown = before == "pub" || before == ")";
                    imports.extend(found.into_iter().map(|(path, name)| (path, name, shown)));
                    continue;
                }
                _ if after == "::" && !["::", ".", "$"].contains(&before) => {
                    let mut path = vec![tokens[at].clone()];
                    while tokens.get(at + 1).is_some_and(|token| token == "::") {
                        path.extend(tokens.get(at + 2).cloned());
                        at += 2;
                    }
                    paths.push(path);
                }
                _ => {}
            }
            at += 1;
        }
        let mut used = Vec::new();
        for (path, name, shown) in imports {
            let Some(target) = absolute(&path, &route, &names) else { continue };
            if !shown {
                used.push(target.clone());
            }
            names.insert(name, target);
        }
        used.extend(paths.iter().filter_map(|path| absolute(path, &route, &names)));
        Self { route, names, used }
    }
}

/// The route of the module that a file below `src` holds.
fn module(path: &Path) -> Route {
    let inside = path.strip_prefix(root().join("src")).expect("below src").with_extension("");
    let mut route: Route = inside.iter().map(|part| part.to_string_lossy().into_owned()).collect();
    if route.last().is_some_and(|last| ["mod", "lib", "main"].contains(&last.as_str())) {
        route.pop();
    }
    route
}

/// The module that writes what a route names: as far as modules lead, and on through what the last of them re-exports.
fn written_in(route: &[String], files: &BTreeMap<Route, File>) -> Route {
    let mut route = route.to_vec();
    // A macro is re-exported under its own name and stands at no route: the way to it leads back to where it has been.
    let mut been = BTreeSet::new();
    loop {
        let length = (0..=route.len()).rev().find(|length| files.contains_key(&route[..*length])).expect("the root");
        let (module, rest) = route.split_at(length);
        let onward = rest.first().and_then(|name| Some((name, files[module].names.get(name)?)));
        match onward {
            Some((name, target)) if target.as_slice() != module && been.insert((module.to_vec(), name.clone())) => {
                route = [target, &rest[1..]].concat();
            }
            _ => return module.to_vec(),
        }
    }
}

type Graph = BTreeMap<Route, BTreeSet<Route>>;

/// Which file uses which.
fn graph(files: impl IntoIterator<Item = File>) -> Graph {
    let files: BTreeMap<Route, File> = files.into_iter().map(|file| (file.route.clone(), file)).collect();
    let targets = |file: &File| {
        let all = file.used.iter().map(|route| written_in(route, &files));
        all.filter(|target| *target != file.route).collect()
    };
    files.values().map(|file| (file.route.clone(), targets(file))).collect()
}

/// All that a file uses, and what that uses, and so on.
fn reach(graph: &Graph, from: &Route) -> BTreeSet<Route> {
    let (mut seen, mut open) = (BTreeSet::new(), vec![from]);
    while let Some(route) = open.pop() {
        for next in &graph[route] {
            if seen.insert(next.clone()) {
                open.push(next);
            }
        }
    }
    seen
}

/// The circles: each arrow that leads back to where it came from.
fn circles(graph: &Graph) -> Vec<String> {
    let reached: BTreeMap<&Route, BTreeSet<Route>> = graph.keys().map(|route| (route, reach(graph, route))).collect();
    let arrows = graph.iter().flat_map(|(from, targets)| targets.iter().map(move |to| (from, to)));
    let back = arrows.filter(|(from, to)| reached[to].contains(*from));
    back.map(|(from, to)| format!("{} uses {}", from.join("::"), to.join("::"))).collect()
}

#[test]
fn no_files_of_src_use_each_other_in_a_circle() {
    let sources = with_extension("src", "rs").into_iter().filter(|path| !path.ends_with("src/main.rs"));
    let graph = graph(sources.map(|path| File::of(module(&path), &read(&path))));
    assert!(
        graph.values().map(BTreeSet::len).sum::<usize>() > 1000,
        "hardly a file uses another: are they still read?"
    );
    assert_eq!(circles(&graph), [""; 0], "these lead round in circles");
}

/// What `circles` says of a crate of these files.
fn said(files: &[(&str, &str)]) -> Vec<String> {
    let route = |name: &str| name.split("::").filter(|part| !part.is_empty()).map(str::to_owned).collect();
    circles(&graph(files.iter().map(|(name, text)| File::of(route(name), text))))
}

#[test]
fn a_circle_is_seen_however_it_is_written() {
    let parent = ("", "mod a; mod b; pub use a::A; pub use b::make;");
    let apart =
        [parent, ("a", "pub struct A;"), ("b", "use super::A; // crate::b\npub fn make() -> A { \"super::b\"; A }")];
    assert_eq!(said(&apart), [""; 0]);
    let by_use = [parent, ("a", "use crate::{b::make}; pub struct A;"), ("b", "use super::A;")];
    assert_eq!(said(&by_use), ["a uses b", "b uses a"]);
    let in_passing = [parent, ("a", "pub struct A; fn f() { super::make(); }"), ("b", "fn make() -> super::A {}")];
    assert_eq!(said(&in_passing), ["a uses b", "b uses a"]);
}

#[test]
fn a_parent_and_its_child_may_not_use_each_other() {
    let child = ("a", "use super::Shared; pub struct A(Shared);");
    assert_eq!(said(&[("", "mod a; pub use a::A; pub struct Shared;"), child]), [""; 0]);
    assert_eq!(said(&[("", "mod a; pub struct Shared; fn f() { a::A; }"), child]), [" uses a", "a uses "]);
    assert_eq!(said(&[("", "mod a; use a::A; pub struct Shared;"), child]), [" uses a", "a uses "]);
    let below = ("shared", "pub struct Shared;");
    assert_eq!(said(&[("", "mod a; mod shared; use a::A; use shared::Shared;"), child, below]), [""; 0]);
}
