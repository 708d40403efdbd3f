//! Parts that public standards describe, shipped in the program: documents of our own kinds, read by the same reader.
//!
//! A part is named `std:` and its id. It says what its standard says, which is a limit and hardly ever what is found; where no
//! standard sets a figure it gives the range of the trade. There is nothing of any maker in it.

mod sizes;

use std::sync::LazyLock;

use crate::spec::STANDARD;

pub use sizes::{Size, sizes};

/// The texts as they are written, many documents each.
const TEXTS: [&str; 4] = [
    include_str!("standard/cables.yaml"),
    include_str!("standard/dc-cables.yaml"),
    include_str!("standard/fibres.yaml"),
    include_str!("standard/supplies.yaml"),
];

/// A standard part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    /// The word of its kind.
    pub kind: &'static str,
    /// Its id, without `std:`.
    pub id: &'static str,
    /// What it is.
    pub title: &'static str,
    /// Its document.
    pub text: &'static str,
}

impl Part {
    /// As references name it.
    #[must_use]
    pub fn name(&self) -> String {
        format!("{STANDARD}{}", self.id)
    }

    fn of(text: &'static str) -> Option<Self> {
        let text = &text[text.find("kind:")?..];
        let value = |key: &str| text.lines().find_map(|line| line.strip_prefix(key)).map(str::trim);
        Some(Self { kind: value("kind:")?, id: value("id:")?, title: value("title:")?, text })
    }
}

/// All parts, in the order they are listed.
#[must_use]
pub fn parts() -> &'static [Part] {
    static PARTS: LazyLock<Vec<Part>> =
        LazyLock::new(|| TEXTS.iter().flat_map(|text| text.split("---\n")).filter_map(Part::of).collect());
    &PARTS
}

/// The part of a name, with or without `std:`.
#[must_use]
pub fn part(name: &str) -> Option<&'static Part> {
    let id = name.strip_prefix(STANDARD).unwrap_or(name);
    parts().iter().find(|part| part.id == id)
}

/// The parts that a text may name, in order, some more than once: every word in it that starts with `std:` and is one.
pub fn named_in(text: &str) -> impl Iterator<Item = &'static Part> + '_ {
    text.match_indices(STANDARD).filter_map(|(at, prefix)| {
        let rest = &text[at + prefix.len()..];
        let word = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        part(&rest[..rest.find(|c| !word(c)).unwrap_or(rest.len())])
    })
}

#[cfg(test)]
mod tests {
    use super::{named_in, part, parts};

    #[test]
    fn every_document_is_a_part_and_every_id_is_there_once() {
        let documents: usize = super::TEXTS.iter().map(|text| text.matches("kind: ").count()).sum();
        assert_eq!(parts().len(), documents);
        for one in parts() {
            assert_eq!(parts().iter().filter(|other| other.id == one.id).count(), 1, "{}", one.id);
        }
    }

    #[test]
    fn parts_are_found_in_a_text() {
        let text = "cable: std:cat-6a-f-utp-23awg-pe # std:\nsupply: \"std:802-3bt-class6\"\nx: std:no-such-thing\n";
        let found: Vec<&str> = named_in(text).map(|part| part.id).collect();
        assert_eq!(found, ["cat-6a-f-utp-23awg-pe", "802-3bt-class6"]);
        assert_eq!(part("std:802-3bt-class6"), part("802-3bt-class6"));
    }
}
