//! Documents that are not the network's own: standard parts, and those of libraries that networks share.

use std::collections::HashMap;
use std::path::PathBuf;

use crate::place::DocumentId;
use crate::spec::{Id, Kind, STANDARD};
use crate::standard::{self, Part};
use crate::text::nearest::{did_you_mean, nearest};

/// Where a document comes from that is not the network's own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Origin {
    /// It is a standard part.
    Standard,
    /// It lies in a shared library, by the name that the network gives it.
    Shared(String),
}

/// A library that a network shares with others.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SharedLibrary {
    /// As the network names it.
    pub name: String,
    /// Where it lies.
    pub folder: PathBuf,
    /// How many files it has.
    pub files: usize,
    /// Sixteen digits that change when any of them does.
    pub mark: String,
}

/// A document that is not the network's own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Elsewhere {
    /// Its kind.
    pub kind: Kind,
    /// Its id, as references name it.
    pub id: Id,
    /// Where it comes from.
    pub origin: Origin,
}

/// Those of a network, by document.
pub type Elsewheres = HashMap<DocumentId, Elsewhere>;

/// What to say of the name of a standard part that no part of the kind has, and what would fix it; none for other names.
pub(super) fn no_standard(kind: Kind, id: &str) -> Option<(String, String)> {
    id.strip_prefix(STANDARD)?;
    let list = "`hopwright parts` lists them";
    if let Some(part) = standard::part(id) {
        let message = format!("`{id}` is a {}, not a {kind}", part.kind);
        return Some((message, format!("name a {kind}: {list}")));
    }
    let names: Vec<String> = standard::parts().iter().filter(|part| part.kind == kind.word()).map(Part::name).collect();
    let help = match nearest(id, names.iter().map(String::as_str)) {
        Some(guess) => format!("{} {list}", did_you_mean(guess)),
        None if names.is_empty() => format!("there is no standard {kind}: describe yours in a document of its own"),
        None => list.to_owned(),
    };
    Some((format!("there is no standard part `{id}`"), help))
}
