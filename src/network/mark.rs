//! The source mark: sixteen digits that change when any source of a hop changes.
//!
//! It stands at the foot of every page, and a record names the one its crew had in hand. Names are relative to the folder
//! of the network, so the mark is the same on every machine.

use std::collections::HashSet;
use std::path::Path;

use super::files::{Files, Home, SourceFile};
use super::resolved::{ResolvedEnd, ResolvedHop};
use crate::door::path::full;
use crate::place::{DocumentId, FileId};
use crate::spec::STANDARD;
use crate::text::hash::hash;

/// The documents a hop is made from: its network first, then the hop, then what it takes values from, then what it names. Records are not among them.
#[must_use]
pub fn sources(hop: &ResolvedHop<'_>) -> Vec<DocumentId> {
    let mut documents = vec![hop.network.at, hop.hop.at];
    documents.extend(hop.hop.inherits.iter().flat_map(|inherits| inherits.documents()));
    if let Some(Ok(profile)) = hop.profile_file {
        documents.push(DocumentId { file: profile.file, number: 0 });
    }
    for end in hop.ends.iter() {
        documents.extend(of_end(end));
    }
    let mut seen = HashSet::new();
    documents.retain(|document| seen.insert(*document));
    documents
}

fn of_end(end: &ResolvedEnd<'_>) -> Vec<DocumentId> {
    let mut documents = vec![end.site.at, end.radio.at, end.antenna.at, end.bracket.at];
    documents.extend(end.feeder.map(|feeder| feeder.at));
    for run in &end.runs {
        documents.push(run.cable.at);
        documents.extend(run.supply.map(|supply| supply.at));
        documents.extend(run.feeds.map(|radio| radio.at));
        documents.extend(run.arresters.iter().map(|arrester| arrester.at));
    }
    documents.extend(end.fibre_runs.iter().map(|run| run.fibre.at));
    documents
}

/// The path of a file from the folder of the network.
#[must_use]
pub fn inside(files: &Files, network: FileId, number: FileId, file: &SourceFile) -> String {
    if file.home == Home::Standard {
        return format!("standard/{}.yaml", file.path.trim_start_matches(STANDARD));
    }
    let root = files.get(network).and_then(|file| file.origin.parent()).unwrap_or(Path::new(""));
    let name = file.origin.file_name().unwrap_or_default().to_string_lossy();
    from_folder(root, &file.origin).unwrap_or_else(|| format!("elsewhere-{}/{name}", number.0))
}

/// The path of a file from a folder, which it may lie outside of: `hops/ridge.yaml`, `up-2/equipment/radios.yaml`. It is the
/// same wherever the repository lies.
#[must_use]
pub fn from_folder(folder: &Path, file: &Path) -> Option<String> {
    let (folder, file) = (full(folder), full(file));
    let (up, above) = folder.ancestors().enumerate().find(|(_, above)| file.starts_with(above))?;
    let below = file.strip_prefix(above).ok()?.to_string_lossy().replace('\\', "/");
    Some(if up == 0 { below } else { format!("up-{up}/{below}") })
}

/// A name that is a path on any system.
#[must_use]
pub fn portable(path: &str) -> String {
    path.chars().map(|c| if c.is_ascii_alphanumeric() || "._-/".contains(c) { c } else { '_' }).collect()
}

/// The mark of names and texts.
#[must_use]
pub fn mark<'t>(sources: impl Iterator<Item = (&'t str, &'t str)>) -> String {
    format!("{:016x}", hash(sources.flat_map(|(name, text)| [name, text])))
}

/// Gives every hop that has records the mark they are held against; to others it costs nothing.
pub fn mark_recorded(hops: &mut [ResolvedHop<'_>], files: &Files) {
    for hop in hops.iter_mut().filter(|hop| !hop.records.is_empty()) {
        hop.mark = Some(of_hop(hop, files));
    }
}

/// The mark of a hop as it stands.
#[must_use]
pub fn of_hop(hop: &ResolvedHop<'_>, files: &Files) -> String {
    of_sources(&sources(hop), files)
}

/// The mark of the [`sources`] of a hop.
#[must_use]
pub fn of_sources(sources: &[DocumentId], files: &Files) -> String {
    let network = sources.first().map_or(FileId(0), |network| network.file);
    let mut seen = HashSet::new();
    let numbers = sources.iter().map(|document| document.file).filter(|file| seen.insert(*file));
    let named: Vec<(String, &str)> = numbers
        .filter_map(|number| files.get(number).map(|file| (number, file)))
        .map(|(number, file)| (portable(&inside(files, network, number, file)), file.text.as_str()))
        .collect();
    mark(named.iter().map(|(name, text)| (name.as_str(), *text)))
}

#[cfg(test)]
mod tests {
    use super::mark;

    #[test]
    fn a_mark_follows_the_sources() {
        assert_eq!(mark([].into_iter()), "cbf29ce484222325", "the offset basis of FNV-1a, 64 bits");
        assert_ne!(mark([("a.yaml", "x: 1")].into_iter()), mark([("a.yaml", "x: 2")].into_iter()));
        assert_ne!(mark([("a.yaml", "x: 1")].into_iter()), mark([("b.yaml", "x: 1")].into_iter()));
    }
}
