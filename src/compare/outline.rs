//! What the documents of some files are called and where each begins and ends, without the trees they were found in.

use std::collections::{BTreeMap, HashMap};
use std::ops::Range;

use rayon::prelude::*;

use crate::network::Files;
use crate::place::{DocumentId, FileId, Step};
use crate::source::{Document, Span, parse};

/// Kind and id.
pub(super) type Name = (String, String);

/// The route of the field in which a hop names its survey file.
pub(super) const SURVEY: [Step<'static>; 2] = [Step::Key("path"), Step::Key("csv")];

/// A document that says what it is.
pub(super) struct Outline {
    pub id: DocumentId,
    pub name: Name,
    /// Its bytes.
    pub own: Span,
    /// The same with what stands before it, from the end of the document before.
    pub whole: Range<usize>,
    /// The survey file it names, as written.
    pub survey: Option<Box<str>>,
}

/// The documents of some files of a side.
pub(super) struct Outlines {
    list: Vec<Outline>,
    by_id: HashMap<DocumentId, usize>,
    /// Of several with one name, the first.
    by_name: BTreeMap<Name, usize>,
    /// The files that were looked at.
    files: Vec<bool>,
}

impl Outlines {
    pub(super) fn of(files: &Files, wanted: impl Fn(FileId) -> bool + Sync) -> Self {
        let numbered: Vec<(FileId, &str)> =
            (0_u32..).map(FileId).zip(files.list.iter().map(|file| file.text.as_str())).collect();
        let looked_at: Vec<bool> = numbered.iter().map(|(file, _)| wanted(*file)).collect();
        let some = numbered.par_iter().filter(|(file, _)| looked_at[file.0 as usize]);
        let list: Vec<Outline> = some.flat_map_iter(|(file, text)| outlined(*file, text)).collect();
        let by_id = list.iter().enumerate().map(|(number, outline)| (outline.id, number)).collect();
        let mut by_name = BTreeMap::new();
        for (number, outline) in list.iter().enumerate() {
            by_name.entry(outline.name.clone()).or_insert(number);
        }
        Self { list, by_id, by_name, files: looked_at }
    }

    pub(super) fn get(&self, id: DocumentId) -> Option<&Outline> {
        self.by_id.get(&id).map(|number| &self.list[*number])
    }

    /// The first document of each name.
    pub(super) fn named(&self) -> impl Iterator<Item = &Outline> {
        self.by_name.values().map(|number| &self.list[*number])
    }

    /// The first document of a name.
    pub(super) fn first(&self, name: &Name) -> Option<&Outline> {
        self.by_name.get(name).map(|number| &self.list[*number])
    }

    /// Whether a file was looked at.
    pub(super) fn has(&self, file: FileId) -> bool {
        self.files.get(file.0 as usize).copied().unwrap_or_default()
    }
}

/// What a document calls itself.
pub(super) fn name_of(document: &Document) -> Option<Name> {
    let word = |key| document.get(document.root(), key).and_then(|(_, value)| document.text(value));
    Some((word("kind")?.to_owned(), word("id")?.to_owned()))
}

fn outlined(file: FileId, text: &str) -> Vec<Outline> {
    let (parsed, mut start) = (parse(text), 0);
    let mut found = Vec::new();
    for (number, document) in (0..=u16::MAX).zip(&parsed.documents) {
        let own = document.node(document.root()).span.clone();
        let whole = start..own.end;
        start = own.end;
        let Some(name) = name_of(document) else { continue };
        let survey = survey_of(document).filter(|_| name.0 == "hop").map(Into::into);
        found.push(Outline { id: DocumentId { file, number }, name, own, whole, survey });
    }
    found
}

fn survey_of(document: &Document) -> Option<&str> {
    let mut steps = SURVEY.iter().copied();
    let node = steps.try_fold(document.root(), |node, step| match step {
        Step::Key(key) => Some(document.get(node, key)?.1),
        Step::Index(_) | Step::Named(_) => None,
    });
    document.text(node?)
}
