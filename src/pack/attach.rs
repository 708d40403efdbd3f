//! What travels inside a pack: the YAML it was made from and its sheet as JSON, so that the design can be run again.
//!
//! Names are relative to the folder of the network: neither a working directory nor a home folder is printed.

use std::collections::HashSet;
use std::path::Path;

use serde::Serialize;

use crate::listing::{self, HopListing};
use crate::network::{Files, SourceFile, mark};
use crate::place::{DocumentId, FileId};

/// A file within the PDF.
#[derive(Debug, Serialize)]
pub(super) struct Attachment {
    name: String,
    text: String,
    mime: &'static str,
    relationship: &'static str,
    description: String,
}

/// The files under names relative to the folder of the network; those the hop does not use are left empty.
pub(super) fn relative(files: &Files, network: FileId, used: &[DocumentId]) -> Files {
    let used: HashSet<FileId> = used.iter().map(|document| document.file).collect();
    let list = files.list.iter().zip(0..).map(|(file, number)| {
        let path = mark::inside(files, network, FileId(number), file);
        let text = if used.contains(&FileId(number)) { file.text.clone() } else { String::new() };
        SourceFile::new(path, file.origin.clone(), text)
    });
    Files { list: list.collect() }
}

/// The source files.
pub(super) fn sources(files: &Files, documents: &[DocumentId]) -> Vec<Attachment> {
    let mut seen = HashSet::new();
    let sources = documents.iter().filter(|document| seen.insert(document.file));
    sources
        .filter_map(|document| files.get(document.file))
        .map(|file| Attachment {
            name: mark::portable(&file.path),
            text: file.text.clone(),
            mime: kind_of(&file.path),
            relationship: "source",
            description: format!("Source of this pack: {}", file.path),
        })
        .collect()
}

/// The file of a record. It is no source of the design, so the mark does not follow it.
pub(super) fn record(files: &Files, record: DocumentId) -> Option<Attachment> {
    let file = files.get(record.file)?;
    Some(Attachment {
        name: format!("record-{}", mark::portable(&file.path)),
        text: file.text.clone(),
        mime: "application/yaml",
        relationship: "supplement",
        description: format!("The record as it was written: {}", file.path),
    })
}

/// The sheet.
pub(super) fn sheet(files: &Files, listing: &HopListing) -> Attachment {
    Attachment {
        name: format!("{}-sheet.json", listing.hop),
        text: listing::json(&[listing], files),
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
