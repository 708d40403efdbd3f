//! From the text of one file to typed documents: tree, shape check, serde.

use std::sync::Arc;

use serde::Deserialize;

use super::files::Files;
use super::filled::Filled;
use super::inherit::Givers;
use super::inherits::Inherits;
use crate::finding::faults::{BAD_VALUE, DUPLICATE_KEY, KIND, MALFORMED, MISSING_KEY, REFUSED, TOO_LARGE};
use crate::finding::rule::Rule;
use crate::finding::{Finding, Spot};
use crate::place::route::spelled;
use crate::place::{DocumentId, FileId};
use crate::shape::{self, Hole, Mention};
use crate::source::{self, Mends, Parsed, TreeFault, TreeFaultKind, Untyped};
use crate::spec::{
    Antenna, Arrester, Bracket, Cable, Feeder, Fibre, Hop, Id, Kind, LONGEST_ID, Neighbour, Network, Radio, Record,
    Service, Site, Spec as _, Supply, Template, Waiver,
};
use crate::text::nearest::{did_you_mean, nearest};

/// What came of one file.
pub(super) struct TypedFile {
    pub(super) entries: Vec<Entry>,
    pub(super) findings: Vec<Finding>,
}

impl TypedFile {
    /// Notes where values of its documents are written that they take in.
    pub(super) fn note_in(&self, files: &mut Files) {
        for entry in &self.entries {
            if let Some(inherits) = &entry.inherits {
                files.inherits.insert(entry.document, Arc::clone(inherits));
            }
        }
    }
}

/// One document that at least said what it is.
pub(super) struct Entry {
    pub(super) document: DocumentId,
    pub(super) kind: Kind,
    pub(super) id: Id,
    pub(super) spec: Option<AnySpec>,
    /// Whether it says that it counts in place of one in a shared library.
    pub(super) replaces: bool,
    /// The references of a document that could not be typed.
    pub(super) mentions: Vec<Mention>,
    /// The values in it that nothing may be concluded from.
    pub(super) holes: Vec<Hole>,
    /// What it takes in from elsewhere.
    pub(super) inherits: Option<Arc<Inherits>>,
}

impl Entry {
    /// Calls the document something else than it does itself.
    pub(super) fn rename(&mut self, id: Id) {
        if let Some(spec) = &mut self.spec {
            spec.rename(id.clone());
        }
        self.id = id;
    }
}

impl AnySpec {
    fn rename(&mut self, id: Id) {
        match self {
            Self::Network(spec) => spec.rename(id),
            Self::Site(spec) => spec.rename(id),
            Self::Hop(spec) => spec.rename(id),
            Self::Radio(spec) => spec.rename(id),
            Self::Antenna(spec) => spec.rename(id),
            Self::Bracket(spec) => spec.rename(id),
            Self::Cable(spec) => spec.rename(id),
            Self::Fibre(spec) => spec.rename(id),
            Self::Supply(spec) => spec.rename(id),
            Self::Arrester(spec) => spec.rename(id),
            Self::Waiver(spec) => spec.rename(id),
            Self::Record(spec) => spec.rename(id),
            Self::Neighbour(spec) => spec.rename(id),
            Self::Service(spec) => spec.rename(id),
            Self::Template(spec) => spec.rename(id),
            Self::Feeder(spec) => spec.rename(id),
        }
    }
}

pub(super) enum AnySpec {
    Network(Box<Network>),
    Site(Box<Site>),
    Hop(Box<Hop>),
    Radio(Box<Radio>),
    Antenna(Box<Antenna>),
    Bracket(Box<Bracket>),
    Cable(Box<Cable>),
    Fibre(Box<Fibre>),
    Supply(Box<Supply>),
    Arrester(Box<Arrester>),
    Waiver(Box<Waiver>),
    Record(Box<Record>),
    Neighbour(Box<Neighbour>),
    Service(Box<Service>),
    Template(Box<Template>),
    Feeder(Box<Feeder>),
}

/// Types the documents of a file; hops with what they take in from these givers.
pub(super) fn type_file(file: FileId, text: &str, givers: &Givers) -> TypedFile {
    let parsed = source::parse(text);
    let mut findings: Vec<Finding> = parsed.faults.iter().map(|fault| tree_fault(file, fault)).collect();
    let mut entries = Vec::new();
    for (number, tree) in parsed.documents.iter().enumerate() {
        let document = DocumentId { file, number: u16::try_from(number).unwrap_or(u16::MAX) };
        let span = tree.node(tree.root()).span.clone();
        if findings.len() >= shape::MOST_FAULTS {
            break;
        }
        let Some(kind) = kind_of(tree, file, &mut findings) else { continue };
        let inside = parsed.faults.iter().filter(|fault| span.contains(&fault.span.start));
        let whole = inside.clone().next().is_none();
        let (doubled, broken): (Vec<_>, Vec<_>) = inside.partition(|fault| fault.kind == TreeFaultKind::DuplicateKey);
        let doubtful: Vec<_> = doubled.into_iter().filter_map(|fault| fault.other.clone()).collect();
        let filled = Filled::of((tree, text), document, kind, &doubtful, givers);
        let checked = filled.check();
        findings.extend(filled.taken.findings.iter().cloned());
        let id = tree.get(tree.root(), "id").and_then(|(_, value)| tree.text(tree.resolve(value)));
        let inherits = filled.inherits(&checked, id);
        // Nobody approved a stand-in: a waiver with a fault is none.
        let void = kind == Kind::Waiver && !(whole && checked.findings.is_empty());
        // What a merge key would have brought is not missing as well.
        let merged = broken.iter().any(|fault| fault.kind == TreeFaultKind::MergeKey);
        findings.extend(checked.findings.into_iter().filter(|finding| !merged || *finding.rule != MISSING_KEY));
        let typable = broken.is_empty() && !void;
        let spec =
            typable.then(|| type_value([tree, filled.tree()], &checked.mends, document, kind, &mut findings)).flatten();
        let mut mentions = checked.mentions;
        mentions.retain(|mention| spec.is_none() || mention.is_part);
        if let Some(id) = id {
            let value = tree.get(tree.root(), "replaces").and_then(|(_, value)| tree.text(tree.resolve(value)));
            let (replaces, holes) = (value == Some("true"), checked.holes);
            entries.push(Entry { document, kind, id: shelved(id), spec, replaces, mentions, holes, inherits });
        }
    }
    flooded(&mut findings, file);
    entries.extend(unreadable(file, text, &parsed));
    TypedFile { entries, findings }
}

/// The id of a document on its shelf: one that is too long is reported, and named everywhere by its beginning.
fn shelved(id: &str) -> Id {
    Id(id[..id.floor_char_boundary(LONGEST_ID)].to_owned())
}

/// Cuts the faults of a file off where nobody reads on, and says so.
fn flooded(findings: &mut Vec<Finding>, file: FileId) {
    if findings.len() < shape::MOST_FAULTS {
        return;
    }
    findings.truncate(shape::MOST_FAULTS);
    let last = match findings.last().map(|finding| &finding.labels[0].spot) {
        Some(Spot::Bytes(_, span)) => span.start,
        _ => 0,
    };
    let message = format!("this file has {} faults or more; what comes after is not looked at", shape::MOST_FAULTS);
    let mut finding = Finding::new(&TOO_LARGE, Spot::Bytes(file, last..last), message, "the last one listed");
    finding.help("fix these first; the others will then be shown");
    findings.push(finding);
}

/// The documents that broke off, by what they say of themselves: references to them wait for them and do not dangle.
fn unreadable(file: FileId, text: &str, parsed: &Parsed) -> Vec<Entry> {
    let whole = |fault: &&TreeFault| {
        parsed.documents.iter().any(|tree| tree.node(tree.root()).span.contains(&fault.span.start))
    };
    let cut = parsed.faults.iter().filter(|fault| fault.kind.ends_document() && !whole(fault));
    let mut entries = Vec::new();
    for (number, fault) in (0..=u16::MAX).zip(cut) {
        let start = text[..fault.span.start].rfind("\n---").unwrap_or_default();
        let end = text[fault.span.start..].find("\n---").map_or(text.len(), |length| fault.span.start + length);
        let word = |key: &str| {
            let value = text[start..end].lines().find_map(|line| line.strip_prefix(key))?;
            value.split_whitespace().next().map(|word| word.trim_matches(['"', '\'']))
        };
        if let (Some(kind), Some(id)) = (word("kind:").and_then(Kind::from_word), word("id:")) {
            // No document of the file has this number; a place in it is shown where reading stopped.
            let document = DocumentId { file, number: u16::MAX - number };
            let (mentions, holes) = (Vec::new(), Vec::new());
            let (replaces, inherits) = (false, None);
            entries.push(Entry { document, kind, id: shelved(id), spec: None, replaces, mentions, holes, inherits });
        }
    }
    entries
}

fn tree_fault(file: FileId, fault: &TreeFault) -> Finding {
    let (rule, label): (&'static Rule, _) = match fault.kind {
        TreeFaultKind::Malformed => (&MALFORMED, "reading stopped here"),
        TreeFaultKind::DuplicateKey => (&DUPLICATE_KEY, "again here"),
        TreeFaultKind::TooDeep | TreeFaultKind::TooManyNodes => (&TOO_LARGE, "beyond the limit here"),
        TreeFaultKind::UnknownAlias => (&REFUSED, "no anchor of this name before it"),
        TreeFaultKind::RecursiveAlias => (&REFUSED, "inside the value it repeats"),
        TreeFaultKind::MergeKey | TreeFaultKind::ComplexKey | TreeFaultKind::ForeignTag => (&REFUSED, "not read"),
    };
    let mut finding = Finding::new(rule, Spot::Bytes(file, fault.span.clone()), fault.message.clone(), label);
    if let Some(other) = &fault.other {
        let text = if fault.kind == TreeFaultKind::DuplicateKey { "first here" } else { "because of this" };
        finding.because(Spot::Bytes(file, other.clone()), text);
    }
    finding.help.clone_from(&fault.help);
    finding
}

/// The kind a document says it is; a finding if it says none we know.
fn kind_of(tree: &source::Document, file: FileId, findings: &mut Vec<Finding>) -> Option<Kind> {
    let kinds = || Kind::ALL.map(Kind::word).join(", ");
    let Some((_, value)) = tree.get(tree.root(), "kind") else {
        let place = tree.find(&[]).span;
        let mut finding = Finding::new(
            &KIND,
            Spot::Bytes(file, place),
            "this document does not say what it describes",
            "has no `kind`",
        );
        finding.help(format!("start it with `kind:` and one of: {}", kinds()));
        findings.push(finding);
        return None;
    };
    let word = tree.text(tree.resolve(value)).unwrap_or_default();
    let kind = Kind::from_word(word);
    if kind.is_none() {
        let span = tree.node(value).span.clone();
        let mut finding =
            Finding::new(&KIND, Spot::Bytes(file, span), format!("there is no kind `{word}`"), "not a kind we know");
        finding.help(match nearest(word, Kind::ALL.map(Kind::word)) {
            Some(guess) => did_you_mean(guess),
            None => format!("one of: {}", kinds()),
        });
        findings.push(finding);
    }
    kind
}

/// Types the values of a document. serde has the last word, and says where.
fn type_value(
    [written, tree]: [&source::Document; 2],
    mends: &Mends<'_>,
    document: DocumentId,
    kind: Kind,
    findings: &mut Vec<Finding>,
) -> Option<AnySpec> {
    fn typed<'d, T: Deserialize<'d>>(tree: &'d source::Document, mends: &'d Mends<'d>) -> Result<Box<T>, Untyped<'d>> {
        source::typed(tree, mends).map(Box::new)
    }
    let spec = match kind {
        Kind::Network => typed(tree, mends).map(AnySpec::Network),
        Kind::Site => typed(tree, mends).map(AnySpec::Site),
        Kind::Hop => typed(tree, mends).map(AnySpec::Hop),
        Kind::Radio => typed(tree, mends).map(AnySpec::Radio),
        Kind::Antenna => typed(tree, mends).map(AnySpec::Antenna),
        Kind::Bracket => typed(tree, mends).map(AnySpec::Bracket),
        Kind::Cable => typed(tree, mends).map(AnySpec::Cable),
        Kind::Fibre => typed(tree, mends).map(AnySpec::Fibre),
        Kind::Supply => typed(tree, mends).map(AnySpec::Supply),
        Kind::Arrester => typed(tree, mends).map(AnySpec::Arrester),
        Kind::Waiver => typed(tree, mends).map(AnySpec::Waiver),
        Kind::Record => typed(tree, mends).map(AnySpec::Record),
        Kind::Neighbour => typed(tree, mends).map(AnySpec::Neighbour),
        Kind::Service => typed(tree, mends).map(AnySpec::Service),
        Kind::Template => typed(tree, mends).map(AnySpec::Template),
        Kind::Feeder => typed(tree, mends).map(AnySpec::Feeder),
    };
    let said = |untyped: Untyped<'_>| {
        let route = untyped.route();
        let spot = Spot::Bytes(document.file, written.find(&route).span);
        let message = format!("`{}`: {}", spelled(route), untyped.message);
        findings.push(Finding::new(&BAD_VALUE, spot, message, "cannot be read as what it should be"));
    };
    spec.map_err(said).ok()
}
