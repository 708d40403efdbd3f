//! What an import would do to a network: what is new, what changes field by field, what stays.
//!
//! Changes are byte edits, so that comments, order and line endings stay. All of it is tried before it is handed out: the
//! network is read with the new texts in it, every value must be read back as it was meant, and what reading finds fault
//! with there is a fault of the row it came from.

use std::collections::hash_map::Entry;
use std::collections::{HashMap, HashSet};
use std::path::PathBuf;
use std::sync::Arc;

use super::columns::{Column, Holds, What};
use super::document::{self, written};
use super::fault::Fault;
use super::figures::as_written;
use super::item::{Item, Value};
use super::swap::swapped;
use crate::door;
use crate::door::path::shown;
use crate::door::write::Change;
use crate::finding::Spot;
use crate::finding::faults::{DANGLING, MISSING_KEY};
use crate::fix::rewritten;
use crate::network::{Files, Library, Scope, Slot};
use crate::physics::geodesy::Position;
use crate::place::{DocumentId, Place, Step};
use crate::spec::{Id, Kind};
use crate::text::nearest::did_you_mean;
use crate::units;
use crate::verdict::Read;

/// What an import would do.
#[derive(Debug, Default)]
pub struct Plan {
    /// New documents.
    pub new: Vec<New>,
    /// Documents in which something changes.
    pub changed: Vec<Changed>,
    /// Ids of documents that say the same already.
    pub unchanged: Vec<String>,
    /// Ids of documents that were not spoken of.
    pub not_mentioned: Vec<String>,
    /// Names that lead nowhere yet, and where they were written.
    pub dangling: Vec<String>,
    /// The files to write.
    pub changes: Vec<Change>,
}

/// A new document.
#[derive(Debug)]
pub struct New {
    /// Its id.
    pub id: String,
    /// Its file, as it is printed.
    pub path: String,
    /// The keys that are still to be written.
    pub missing: Vec<String>,
    /// What could not be taken.
    pub remarks: Vec<String>,
}

/// A document in which something changes.
#[derive(Debug)]
pub struct Changed {
    /// Its id.
    pub id: String,
    /// Its file and line.
    pub place: String,
    /// Key, old value, new value.
    pub fields: Vec<[String; 3]>,
    /// What could not be taken.
    pub remarks: Vec<String>,
}

/// What one value comes to in a document that is there.
struct Edit<'i> {
    item: &'i Item,
    value: &'i Value,
    old: Option<String>,
    spot: Spot,
    text: String,
}

/// Plans the import of items into a network that was read from a scope.
///
/// # Errors
/// All there is to be fixed first.
pub fn plan(scope: &Scope, read: &Read, what: What, items: &[Item]) -> Result<Plan, Vec<Fault>> {
    let Some(library) = read.libraries().first() else { return Err(Vec::new()) };
    let mut faults = Vec::new();
    if what == What::Sites {
        faults.append(&mut swapped(items, &positions(library, items)));
    }
    let mut plan = Plan::default();
    let (mut edits, mut texts) = (Vec::new(), Vec::new());
    for item in items {
        match document_of(library, what, &item.id) {
            Some(at) => match differences(read.files(), at, what, item) {
                Ok(differing) if differing.is_empty() => plan.unchanged.push(item.id.clone()),
                Ok(mut differing) => {
                    plan.changed.push(changed(read.files(), at, item, &differing));
                    edits.append(&mut differing);
                }
                Err(mut wrong) => faults.append(&mut wrong),
            },
            None => match new(read, library, what, item) {
                Ok((new, path, text)) => {
                    plan.new.push(new);
                    texts.push((path, text));
                }
                Err(fault) => faults.push(fault),
            },
        }
    }
    let (mended, mut unmade) = mended(read.files(), &edits);
    faults.append(&mut unmade);
    if !faults.is_empty() {
        return Err(faults);
    }
    let new = texts.into_iter().map(|(path, text)| Change::New { path, text });
    plan.changes = new.chain(mended).collect();
    plan.not_mentioned = not_mentioned(library, what, items);
    tried(scope, read, what, items, &mut plan)?;
    Ok(plan)
}

/// Reads the network with the changes in it and holds every value against what it was meant to be.
fn tried(scope: &Scope, before: &Read, what: What, items: &[Item], plan: &mut Plan) -> Result<(), Vec<Fault>> {
    let texts: Vec<(PathBuf, Arc<str>)> = plan
        .changes
        .iter()
        .map(|change| match change {
            Change::New { path, text } => (path.clone(), text.as_str().into()),
            Change::Mended { path, after, .. } => (path.clone(), after.as_str().into()),
        })
        .collect();
    let after = Read::of(&scope.clone().with_texts(&texts));
    let Some(library) = after.libraries().first() else { return Ok(()) };
    let (mut faults, mut meant) = (Vec::new(), Vec::new());
    for item in items {
        let lost = |value: &Value| {
            let why = "cannot be written so that it is read back as it is: write it by hand";
            Fault::of(&item.file, item.line, &value.header, &value.cell, why)
        };
        let Some(at) = document_of(library, what, &item.id) else {
            faults.extend(item.values.first().map(lost));
            continue;
        };
        match differences(after.files(), at, what, item) {
            Ok(differing) => faults.extend(differing.iter().map(|edit| lost(edit.value))),
            Err(mut wrong) => faults.append(&mut wrong),
        }
        meant.extend(item.values.iter().map(|value| (at, item, value)));
    }
    let known: HashSet<(&str, &str)> =
        before.findings().iter().map(|finding| (finding.rule.name, finding.message.as_str())).collect();
    let fresh =
        after.findings().iter().filter(|finding| !known.contains(&(finding.rule.name, finding.message.as_str())));
    let spans: Vec<_> = meant
        .iter()
        .filter_map(|(at, item, value)| {
            let place = place(after.files(), *at, value.column, item).ok()?;
            Some((after.files().locate(&Spot::Field(place))?, *item, *value))
        })
        .collect();
    // What leads nowhere yet is told in the plan, for equipment may be written later.
    for finding in fresh.filter(|finding| *finding.rule != MISSING_KEY && *finding.rule != DANGLING) {
        let Some(at) = finding.labels.first().and_then(|label| after.files().locate(&label.spot)) else { continue };
        let under = spans.iter().find(|(own, ..)| {
            own.file == at.file
                && own.span.start <= at.span.start
                && at.span.start < own.span.end.max(own.span.start + 1)
        });
        let Some((_, item, value)) = under else { continue };
        let help = finding.help.as_ref().map(|help| format!("; {help}")).unwrap_or_default();
        let why = format!("cannot be: {}{help}", finding.message);
        faults.push(Fault::of(&item.file, item.line, &value.header, &value.cell, why));
    }
    plan.dangling = items.iter().flat_map(|item| dangling(library, item)).collect();
    faults.sort_by(|one, other| (&one.file, one.line).cmp(&(&other.file, other.line)));
    if faults.is_empty() { Ok(()) } else { Err(faults) }
}

/// The names of an item that lead nowhere yet.
fn dangling(library: &Library, item: &Item) -> Vec<String> {
    let lost = |value: &Value| {
        let kind = match value.column.name.strip_suffix("_a").or(value.column.name.strip_suffix("_b"))? {
            "site" => Kind::Site,
            "radio" => Kind::Radio,
            "antenna" => Kind::Antenna,
            "bracket" => Kind::Bracket,
            _ => return None,
        };
        let known = library.lacks(kind, &Id(value.words.clone()))?;
        let guess = known.nearest(&value.words).map(|guess| format!("; {}", did_you_mean(guess))).unwrap_or_default();
        Some(format!("{}:{}: the network has no {kind} `{}`{guess}", item.file, item.line, value.words))
    };
    item.values.iter().filter_map(lost).collect()
}

/// The document of an id, be it sound or not.
fn document_of(library: &Library, what: What, id: &str) -> Option<DocumentId> {
    let id = Id(id.to_owned());
    let (slot, typed): (_, fn(&Library, usize) -> DocumentId) = match what {
        What::Sites => (library.sites.index.get(&id), |library, number| library.sites.documents[number].at),
        What::Hops => (library.hops.index.get(&id), |library, number| library.hops.documents[number].at),
    };
    Some(match slot? {
        Slot::Typed(number) => typed(library, *number),
        Slot::Broken(at) => *at,
    })
}

/// Where sites stand that no item speaks of.
fn positions(library: &Library, items: &[Item]) -> Vec<Position> {
    let spoken: HashSet<&str> = items.iter().map(|item| item.id.as_str()).collect();
    let others = library.sites.documents.iter().filter(|site| !spoken.contains(&*site.id.0));
    let place = |site: &crate::network::Document<crate::spec::Site>| Position {
        latitude: site.position.latitude.value,
        longitude: site.position.longitude.value,
    };
    others.map(place).collect()
}

fn not_mentioned(library: &Library, what: What, items: &[Item]) -> Vec<String> {
    let spoken: HashSet<&str> = items.iter().map(|item| item.id.as_str()).collect();
    let known = match what {
        What::Sites => library.sites.ids(),
        What::Hops => library.hops.ids(),
    };
    known.iter().filter(|id| !spoken.contains(id.as_str())).cloned().collect()
}

/// A document that is to be made.
fn new(read: &Read, library: &Library, what: What, item: &Item) -> Result<(New, PathBuf, String), Fault> {
    let path = library.folder.join(what.folder()).join(format!("{}.yaml", item.id));
    let here = std::env::current_dir().ok();
    let told = shown(&path, here.as_deref());
    if door::exists(&path) {
        let why =
            format!("would go into {told}, which is there and holds no such {}: nothing is overwritten", what.kind());
        return Err(Fault::of(&item.file, item.line, "id", &item.id, why));
    }
    let network = library.networks.documents.first().and_then(|network| read.files().get(network.at.file));
    let schema = network.and_then(|network| document::schema(what, &network.text));
    let (text, missing) = document::text(what, item, schema.as_deref());
    let new = New { id: item.id.clone(), path: told, missing, remarks: item.remarks.clone() };
    Ok((new, path, text))
}

fn changed(files: &Files, at: DocumentId, item: &Item, differing: &[Edit<'_>]) -> Changed {
    let spot = Spot::Field(Place::document(at));
    let place = files.locate(&spot).and_then(|found| {
        let file = files.get(found.file)?;
        Some(format!("{}:{}", file.path, file.position(found.span.start).line))
    });
    let field = |edit: &Edit<'_>| {
        let route = match &edit.spot {
            Spot::Field(place) => place.route(),
            _ => edit.value.column.route.to_owned(),
        };
        [route, edit.old.clone().unwrap_or_default(), edit.value.words.clone()]
    };
    let fields = differing.iter().map(field).collect();
    Changed { id: item.id.clone(), place: place.unwrap_or_default(), fields, remarks: item.remarks.clone() }
}

/// What of an item a document does not say yet.
fn differences<'i>(files: &Files, at: DocumentId, what: What, item: &'i Item) -> Result<Vec<Edit<'i>>, Vec<Fault>> {
    let (mut edits, mut faults) = (Vec::new(), Vec::new());
    for value in item.values.iter().filter(|value| value.column.name != "id") {
        let place = match place(files, at, value.column, item) {
            Ok(place) => place,
            Err(id) => {
                if value.column.name == "support" {
                    let why = format!("is not a support of {} `{}`: write it there first", what.kind(), item.id);
                    faults.push(Fault::of(&item.file, item.line, &value.header, &id, why));
                }
                continue;
            }
        };
        let old = text_at(files, &place);
        if old.as_deref().is_some_and(|old| same(value.column, old, &value.words)) {
            continue;
        }
        let (spot, text) = put(files, place, written(value));
        edits.push(Edit { item, value, old, spot, text });
    }
    if faults.is_empty() { Ok(edits) } else { Err(faults) }
}

/// Whether a document says a value already: the same quantity however it is written, or one that export would write so.
fn same(column: &Column, old: &str, new: &str) -> bool {
    match column.holds {
        Holds::Text => old.trim_end() == new.trim_end(),
        Holds::Word => old == new,
        Holds::Quantity(kind) => {
            let read = |text: &str| units::read(kind, text).ok();
            let exported = || as_written(kind, old).is_some_and(|text| as_written(kind, new).as_ref() == Some(&text));
            read(old).is_some_and(|value| read(new) == Some(value)) || exported()
        }
    }
}

/// Groups of keys that a document may lack.
static GROUPS: [&str; 8] =
    ["position", "channel", "licence", "ends", "ends.a", "ends.b", "ends.a.bracket", "ends.b.bracket"];

/// Where a value is put and as what: where the group it belongs to is not there, that comes with it.
fn put(files: &Files, place: Place, text: String) -> (Spot, String) {
    let route = place.route();
    for group in GROUPS.iter().filter(|group| route.starts_with(&format!("{group}."))) {
        let outer = Place::document(place.document).below(group, &[]);
        if node_at(files, &outer).is_none() {
            let inner: Vec<&str> = route[group.len() + 1..].split('.').collect();
            let text = inner.iter().rev().fold(text, |text, key| format!("{{ {key}: {text} }}"));
            return (Spot::Field(outer), text);
        }
    }
    (Spot::Field(place), text)
}

/// Where a column stands in a document; the id of the support if it has none of that name.
fn place(files: &Files, at: DocumentId, column: &'static Column, item: &Item) -> Result<Place, String> {
    let document = Place::document(at);
    if !column.route.contains("[i]") {
        return Ok(document.below(&column.route, &[]));
    }
    let id = item.value("support").map(|value| value.words.clone()).unwrap_or_default();
    let number = files.get(at.file).and_then(|file| {
        let document = file.parsed().documents.get(usize::from(at.number))?;
        let (_, list) = document.get(document.root(), "supports")?;
        document.items(list).position(|item| document.name(item) == Some(id.as_str()))
    });
    number.map(|number| document.below(&column.route, &[number])).ok_or(id)
}

/// The file, the document and the node at a place.
fn node_at<'f>(files: &'f Files, place: &Place) -> Option<(&'f crate::source::Document, crate::source::NodeId)> {
    let file = files.get(place.document.file)?;
    let document = file.parsed().documents.get(usize::from(place.document.number))?;
    let node = place.steps().try_fold(document.root(), |node, step| match step {
        Step::Key(key) => document.get(node, key).map(|(_, value)| value),
        Step::Index(number) => document.item(node, number),
        Step::Named(_) => None,
    })?;
    Some((document, node))
}

pub(super) fn text_at(files: &Files, place: &Place) -> Option<String> {
    let (document, node) = node_at(files, place)?;
    document.text(node).map(str::to_owned)
}

/// The files with the edits in them, and faults for those that cannot be made.
fn mended(files: &Files, edits: &[Edit<'_>]) -> (Vec<Change>, Vec<Fault>) {
    let mut faults = Vec::new();
    let cannot = |edit: &Edit<'_>, why: &str| {
        Fault::of(&edit.item.file, edit.item.line, &edit.value.header, &edit.value.cell, why)
    };
    let mut pairs: Vec<(Spot, String)> = Vec::new();
    let mut seen: HashMap<(String, DocumentId), usize> = HashMap::new();
    // Those that are put in at one place come out in the order of the columns; a group that is new holds all of its own.
    for edit in edits.iter().rev() {
        let Spot::Field(place) = &edit.spot else { continue };
        match seen.entry((place.route(), place.document)) {
            Entry::Occupied(first) => {
                let whole = &mut pairs[*first.get()].1;
                if let Some(rest) = whole.strip_prefix("{ ") {
                    *whole = format!("{}, {rest}", edit.text.trim_end_matches(" }"));
                }
            }
            Entry::Vacant(new) => {
                new.insert(pairs.len());
                pairs.push((edit.spot.clone(), edit.text.clone()));
            }
        }
    }
    let (mended, left) = rewritten(files, &pairs);
    for spot in left {
        let edit = edits.iter().find(|edit| edit.spot == *spot);
        let why = "belongs where nothing can be replaced by itself, such as in an alias: write that out first";
        faults.extend(edit.map(|edit| cannot(edit, why)));
    }
    let changes =
        mended.into_iter().map(|file| Change::Mended { path: file.origin, before: file.before, after: file.after });
    (changes.collect(), faults)
}
