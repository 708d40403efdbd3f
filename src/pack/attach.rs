//! What travels inside a pack: the YAML it was made from and its sheet as JSON, so that the design can be run again.
//!
//! Names are relative to the folder of the network: neither a working directory nor a home folder is printed.

use std::collections::HashSet;
use std::path::Path;

use serde::Serialize;

use crate::finding::Finding;
use crate::hash::hash;
use crate::listing::{self, HopListing};
use crate::network::{Files, ResolvedEnd, ResolvedHop, SourceFile};
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

/// The documents of a hop: its network first, then the hop, what it names, and the waivers that hold for it.
pub(super) fn documents(hop: &ResolvedHop<'_>, findings: &[Finding]) -> Vec<DocumentId> {
    let mut documents = vec![hop.network.at, hop.hop.at];
    for end in [&hop.a, &hop.b] {
        documents.extend(of_end(end));
    }
    documents.extend(findings.iter().filter_map(|finding| Some(finding.waived.as_ref()?.place.document)));
    let mut seen = HashSet::new();
    documents.retain(|document| seen.insert(*document));
    documents
}

fn of_end(end: &ResolvedEnd<'_>) -> Vec<DocumentId> {
    let mut documents = vec![end.site.at, end.radio.at, end.antenna.at, end.bracket.at];
    for run in &end.runs {
        documents.push(run.cable.at);
        documents.extend(run.supply.map(|supply| supply.at));
        documents.extend(run.arresters.iter().map(|arrester| arrester.at));
    }
    documents
}

/// The files under names relative to the folder of the network; those the hop does not use are left empty.
pub(super) fn relative(files: &Files, network: FileId, used: &[DocumentId]) -> Files {
    let root = files.get(network).and_then(|file| file.origin.parent()).unwrap_or(Path::new(""));
    let used: HashSet<FileId> = used.iter().map(|document| document.file).collect();
    let list = files.list.iter().zip(0..).map(|(file, number)| {
        let inside = file.origin.strip_prefix(root).ok().map(|path| path.to_string_lossy().replace('\\', "/"));
        let name = file.origin.file_name().unwrap_or_default().to_string_lossy();
        let path = inside.unwrap_or_else(|| format!("elsewhere-{number}/{name}"));
        let text = if used.contains(&FileId(number)) { file.text.clone() } else { String::new() };
        SourceFile::new(path, file.origin.clone(), text)
    });
    Files { list: list.collect() }
}

/// The source files and the sheet.
pub(super) fn attachments(files: &Files, documents: &[DocumentId], listing: &HopListing) -> Vec<Attachment> {
    let mut seen = HashSet::new();
    let sources = documents.iter().filter(|document| seen.insert(document.file));
    let mut attached: Vec<Attachment> = sources
        .filter_map(|document| files.get(document.file))
        .map(|file| Attachment {
            name: plain(&file.path),
            text: file.text.clone(),
            mime: "application/yaml",
            relationship: "source",
            description: format!("Source of this pack: {}", file.path),
        })
        .collect();
    attached.push(Attachment {
        name: format!("{}-sheet.json", listing.hop),
        text: listing::json(&[listing], files),
        mime: "application/json",
        relationship: "data",
        description: "Every computed line of this hop with its method and inputs".into(),
    });
    attached
}

/// A name that is a path on any system.
fn plain(path: &str) -> String {
    path.chars().map(|c| if c.is_ascii_alphanumeric() || "._-/".contains(c) { c } else { '_' }).collect()
}

/// Sixteen digits that change when any source changes, over names and texts.
pub(super) fn mark(attached: &[Attachment]) -> String {
    let sources = attached.iter().filter(|file| file.relationship == "source");
    format!("{:016x}", hash(sources.flat_map(|file| [file.name.as_str(), file.text.as_str()])))
}

#[cfg(test)]
mod tests {
    use super::{Attachment, mark};

    #[test]
    fn a_mark_follows_the_sources() {
        let file = |text: &str| Attachment {
            name: "a.yaml".into(),
            text: text.into(),
            mime: "application/yaml",
            relationship: "source",
            description: String::new(),
        };
        assert_eq!(mark(&[]), "cbf29ce484222325");
        assert_ne!(mark(&[file("x: 1")]), mark(&[file("x: 2")]));
    }
}
