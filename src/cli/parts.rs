//! `parts`: the standard parts that the program ships, and the sizes that standards name.

use std::fmt::Write as _;

use super::args::PartsArgs;
use super::{Exit, Stop, say};
use crate::standard::{Part, Size, part, parts, sizes};
use crate::text::nearest::{did_you_mean, nearest};

pub(super) fn run(args: &PartsArgs) -> Result<Exit, Stop> {
    if let [word] = args.words.as_slice()
        && let Some(part) = part(word)
    {
        return say::out(&in_full(part)).map(|()| Exit::Clean);
    }
    let words: Vec<String> = args.words.iter().map(|word| word.to_lowercase()).collect();
    let holds = |text: String| {
        let text = text.to_lowercase();
        words.iter().all(|word| text.contains(word))
    };
    let of_part = |part: &&Part| holds(format!("{} {} {}", part.name(), part.kind, part.title));
    let of_size = |size: &&Size| holds(format!("{} {} {} {}", size.group, size.name, size.says, size.source));
    let found: Vec<&Part> = parts().iter().filter(of_part).collect();
    let sized: Vec<&Size> = sizes().iter().filter(of_size).collect();
    if found.is_empty() && sized.is_empty() {
        let asked = args.words.join(" ");
        let guess = nearest(&asked, parts().iter().map(|part| part.id));
        let hint = guess.map_or_else(|| "`parts` without a word lists them".to_owned(), did_you_mean);
        return Err(Stop::Unknown(format!("no standard part or size has `{asked}` in its name or title; {hint}")));
    }
    let gap = if found.is_empty() || sized.is_empty() { "" } else { "\n" };
    say::out(&format!("{}{gap}{}", list(&found), list_sizes(&sized))).map(|()| Exit::Clean)
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

/// Where a size of a group is written.
fn written(group: &str) -> &'static str {
    match group {
        "tube" => "write the name where the outside diameter of a tube is asked for",
        "conductor" => "write it where a conductor is asked for",
        "thread" => "write it where a thread is asked for",
        _ => "to choose by: the window of diameters to write is that on the sheet of the gland",
    }
}

/// A line a size, by group.
fn list_sizes(found: &[&Size]) -> String {
    let width = found.iter().map(|size| size.name.len()).max().unwrap_or_default();
    let (mut out, mut group) = (String::new(), "");
    for size in found {
        if size.group != group {
            let gap = if out.is_empty() { "" } else { "\n" };
            group = size.group;
            let _ = writeln!(out, "{gap}{group}: {}", written(group));
        }
        let _ = writeln!(out, "  {:width$}  {} [{}]", size.name, size.says, size.source);
    }
    out
}

/// A part as a document of its own would read, under the name it goes by.
fn in_full(part: &Part) -> String {
    format!("# {}: write this name where a {} is asked for.\n{}", part.name(), part.kind, part.text)
}
