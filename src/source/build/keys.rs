//! Which keys and tags are sound.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

use granit_parser::Span as Mark;

use super::Builder;
use crate::source::tree::{Node, NodeId, NodeKind, Span, Style, Tag};
use crate::source::{marks, wording};

/// Keys of a mapping that are compared with one another faster than they are put in order.
const FEW_KEYS: usize = 32;

impl Builder<'_> {
    /// Keeps the entries whose keys are scalars, new and not `<<`; complains about the others.
    pub(super) fn sound_entries(&mut self, entries: Vec<(NodeId, NodeId)>) -> Vec<(NodeId, NodeId)> {
        if self.are_plain(&entries) {
            return entries;
        }
        let mut seen: BTreeMap<&str, Span> = BTreeMap::new();
        let mut sound = Vec::with_capacity(entries.len());
        for (key, value) in entries {
            let span = self.nodes[key.0].span.clone();
            let fault = match key_text(&self.nodes, key) {
                None => wording::complex_key(span),
                Some(("<<", Style::Plain)) => wording::merge_key(span),
                Some((text, _)) => match seen.entry(text) {
                    Entry::Occupied(first) => wording::duplicate_key(span, text, first.get().clone()),
                    Entry::Vacant(place) => {
                        place.insert(span);
                        sound.push((key, value));
                        continue;
                    }
                },
            };
            self.faults.push(fault);
        }
        sound
    }

    /// Whether there are only a few keys, all of them sound: so it is with nearly every mapping, and quickly seen.
    fn are_plain(&self, entries: &[(NodeId, NodeId)]) -> bool {
        let word = |key: NodeId| match &self.nodes[key.0].kind {
            NodeKind::Scalar { text, .. } if **text != *"<<" => Some(&**text),
            _ => None,
        };
        let new = |(number, (key, _)): (usize, &(NodeId, NodeId))| {
            word(*key).is_some_and(|text| entries[..number].iter().all(|(other, _)| word(*other) != Some(text)))
        };
        entries.len() <= FEW_KEYS && entries.iter().enumerate().all(new)
    }

    pub(super) fn scalar_tag(&mut self, tag: Option<&granit_parser::Tag>, mark: &Mark) -> Option<Tag> {
        match tag?.core_suffix() {
            Some("str") => return Some(Tag::Str),
            Some("int") => return Some(Tag::Int),
            Some("float") => return Some(Tag::Float),
            Some("bool") => return Some(Tag::Bool),
            Some("null") => return Some(Tag::Null),
            Some(_) => self.foreign_tag(mark, "does not fit a scalar"),
            None => self.foreign_tag(mark, "is not known here"),
        }
        None
    }

    pub(super) fn check_collection_tag(&mut self, tag: Option<&granit_parser::Tag>, own: &str, mark: &Mark) {
        match tag.map(granit_parser::Tag::core_suffix) {
            Some(Some(suffix)) if suffix != own => self.foreign_tag(mark, "does not fit its value"),
            Some(None) => self.foreign_tag(mark, "is not known here"),
            _ => {}
        }
    }

    fn foreign_tag(&mut self, mark: &Mark, complaint: &str) {
        let span = marks::span(self.text, &mark.tag_span().unwrap_or(*mark));
        self.faults.push(wording::foreign_tag(self.text, span, complaint));
    }
}

fn key_text(nodes: &[Node], key: NodeId) -> Option<(&str, Style)> {
    match &nodes[key.0].kind {
        NodeKind::Scalar { text, style, .. } => Some((text, *style)),
        NodeKind::Alias { target } => match &nodes[target.0].kind {
            NodeKind::Scalar { text, style, .. } => Some((text, *style)),
            _ => None,
        },
        _ => None,
    }
}
