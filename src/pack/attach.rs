//! What travels inside a pack: the YAML it was made from and its sheet as JSON, so that the design can be run again.
//!
//! Names are relative to the folder of the network: neither a working directory nor a home folder is printed.

use std::collections::HashSet;
use std::path::Path;

use serde::Serialize;

use crate::listing::{self, HopListing, Places};
use crate::network::{Files, mark};
use crate::place::DocumentId;

/// A file within the PDF.
#[derive(Debug, Serialize)]
pub(super) struct Attachment {
    name: String,
    text: String,
    mime: &'static str,
    relationship: &'static str,
    description: String,
}

/// The source files.
pub(super) fn sources(files: &Files, places: &Places<'_>, documents: &[DocumentId]) -> Vec<Attachment> {
    let mut seen = HashSet::new();
    let sources = documents.iter().filter(|document| seen.insert(document.file));
    sources
        .filter_map(|document| Some((files.get(document.file)?, places.file(document.file)?)))
        .map(|(file, path)| Attachment {
            name: mark::portable(&path),
            text: file.text.clone(),
            mime: kind_of(&path),
            relationship: "source",
            description: format!("Source of this pack: {path}"),
        })
        .collect()
}

/// The file of a record. It is no source of the design, so the mark does not follow it.
pub(super) fn record(files: &Files, places: &Places<'_>, record: DocumentId) -> Option<Attachment> {
    let path = places.file(record.file)?;
    Some(Attachment {
        name: format!("record-{}", mark::portable(&path)),
        text: files.get(record.file)?.text.clone(),
        mime: "application/yaml",
        relationship: "supplement",
        description: format!("The record as it was written: {path}"),
    })
}

/// The sheet.
pub(super) fn sheet(places: &Places<'_>, listing: &HopListing) -> Attachment {
    Attachment {
        name: format!("{}-sheet.json", listing.hop),
        text: listing::json(&[listing], Some(places)),
        mime: "application/json",
        relationship: "data",
        description: "Every computed line of this hop with its method and inputs".into(),
    }
}

/// The profile as a table.
pub(super) fn profile(hop: &str, table: &str) -> Attachment {
    Attachment {
        name: format!("{hop}-profile.csv"),
        text: table.to_owned(),
        mime: "text/csv",
        relationship: "data",
        description: "Ground, obstacles and clearance at every point of the path".into(),
    }
}

/// What a source file is, by its name.
fn kind_of(path: &str) -> &'static str {
    let csv = Path::new(path).extension().is_some_and(|ending| ending.eq_ignore_ascii_case("csv"));
    if csv { "text/csv" } else { "application/yaml" }
}

/// The source mark of what is attached.
pub(super) fn mark(attached: &[Attachment]) -> String {
    let sources = attached.iter().filter(|file| file.relationship == "source");
    mark::mark(sources.map(|file| (file.name.as_str(), file.text.as_str())))
}
