//! What a network says to pass over, read before the documents are typed.

use std::path::Path;

use crate::source::{self, Document, PassedOver, SourceText, passes_over, patterns};
use crate::spec::Kind;

/// The documents of kind `network` in a text. Most texts do not even have the word in them and need not be parsed.
pub(super) fn networks<R>(text: &str, take: impl Fn(&Document) -> R) -> Vec<R> {
    let word = Kind::Network.word();
    if !text.contains(word) {
        return Vec::new();
    }
    let is_network = |document: &&Document| {
        let kind = document.get(document.root(), "kind").map(|(_, value)| document.resolve(value));
        kind.and_then(|value| document.text(value)) == Some(word)
    };
    source::parse(text).documents.iter().filter(is_network).map(take).collect()
}

/// Whether a text holds a network document, or the start of one that cannot be read to its end.
pub(super) fn opens_network(text: &str) -> bool {
    text.lines().any(says_network) || !networks(text, |_| ()).is_empty()
}

/// `kind: network` at the start of a line, as nearly everybody writes it.
pub(super) fn says_network(line: &str) -> bool {
    let value = line
        .trim_start_matches('\u{feff}')
        .strip_prefix("kind:")
        .map(|value| value.split(" #").next().unwrap_or(value));
    value.is_some_and(|value| value.trim().trim_matches(['"', '\'']) == Kind::Network.word())
}

/// The patterns under `exclude` of the network documents in a text.
fn excluded(text: &str) -> Vec<String> {
    if !text.contains("exclude") {
        return Vec::new();
    }
    let listed = |document: &Document| -> Vec<String> {
        let Some((_, list)) = document.get(document.root(), "exclude") else { return Vec::new() };
        let items = document.items(document.resolve(list));
        items.filter_map(|item| document.text(document.resolve(item)).map(str::to_owned)).collect()
    };
    networks(text, listed).concat()
}

/// What the network right in a folder passes over, by the texts there.
pub(super) fn of_texts(folder: &Path, texts: impl Iterator<Item = String>) -> PassedOver {
    let lines: Vec<String> = texts.flat_map(|text| excluded(&text)).collect();
    if lines.is_empty() {
        return PassedOver::default();
    }
    PassedOver::default().with(patterns(folder, lines.iter().map(String::as_str)).0)
}

/// Tells which of the files are passed over by the network in whose folder they lie.
pub(super) fn by_networks(texts: &[SourceText]) -> impl Fn(&Path) -> bool + use<> {
    let lists: Vec<_> = texts
        .iter()
        .filter_map(|source| {
            let lines = excluded(&source.text);
            let folder = source.path.parent()?.to_path_buf();
            (!lines.is_empty()).then(|| (patterns(&folder, lines.iter().map(String::as_str)).0, folder))
        })
        .collect();
    move |file| lists.iter().any(|(patterns, folder)| passes_over(patterns, folder, file))
}
