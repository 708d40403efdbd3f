//! `parts`: the standard parts that the program ships.

use std::fmt::Write as _;

use super::args::PartsArgs;
use super::{Exit, Stop, say};
use crate::standard::{Part, part, parts};
use crate::text::nearest::{did_you_mean, nearest};

pub(super) fn run(args: &PartsArgs) -> Result<Exit, Stop> {
    if let [word] = args.words.as_slice()
        && let Some(part) = part(word)
    {
        return say::out(&in_full(part)).map(|()| Exit::Clean);
    }
    let words: Vec<String> = args.words.iter().map(|word| word.to_lowercase()).collect();
    let holds = |part: &&Part| {
        let text = format!("{} {} {}", part.name(), part.kind, part.title).to_lowercase();
        words.iter().all(|word| text.contains(word))
    };
    let found: Vec<&Part> = parts().iter().filter(holds).collect();
    if found.is_empty() {
        let asked = args.words.join(" ");
        let guess = nearest(&asked, parts().iter().map(|part| part.id));
        let hint = guess.map_or_else(|| "`parts` without a word lists them".to_owned(), did_you_mean);
        return Err(Stop::Unknown(format!("no standard part has `{asked}` in its name or title; {hint}")));
    }
    say::out(&list(&found)).map(|()| Exit::Clean)
}

/// A line a part, by kind.
fn list(found: &[&Part]) -> String {
    let width = found.iter().map(|part| part.name().len()).max().unwrap_or_default();
    let (mut out, mut kind) = (String::new(), "");
    for part in found {
        if part.kind != kind {
            let gap = if out.is_empty() { "" } else { "\n" };
            kind = part.kind;
            // Writing to a string cannot fail.
            let _ = writeln!(out, "{gap}{kind}");
        }
        let _ = writeln!(out, "  {:width$}  {}", part.name(), part.title);
    }
    out
}

/// A part as a document of its own would read, under the name it goes by.
fn in_full(part: &Part) -> String {
    format!("# {}: write this name where a {} is asked for.\n{}", part.name(), part.kind, part.text)
}
