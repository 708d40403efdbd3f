//! What both sides have alike, word for word: files, documents, and the hops that are made of nothing else.
//!
//! A hop is computed from its documents, from what lies beside them, from what it hears of other hops, and from those that end
//! where it ends: see [`super::together`]. One whose inputs are all alike has the same sheet and the same findings on both
//! sides, so neither is looked at again.

use std::collections::{BTreeMap, HashMap, HashSet};
use std::path::PathBuf;

use super::outline::{Outline, Outlines};
use super::side::Side;
use crate::finding::Spot;
use crate::finding::faults::{DUPLICATE_ID, KIND, NO_NETWORK, TOO_LARGE, TWO_NETWORKS};
use crate::network::Slot;
use crate::place::{DocumentId, FileId, Place};
use crate::verdict::OpenHop;

/// What both sides have alike.
pub(super) struct Alike {
    /// Of each side, the file of the other one in the same place, and whether it reads the same.
    others: [Vec<Option<(FileId, bool)>>; 2],
    /// Of each side, the documents of the files that do not read the same, and of those that name a survey that does not.
    pub(super) outlines: [Outlines; 2],
    /// Networks by an id that another one has too.
    doubled: HashSet<String>,
}

impl Alike {
    pub(super) fn of(sides: [&Side; 2]) -> Self {
        let others = counterparts(sides);
        // Where one name may stand for several documents, which one is meant is seen only when all are known.
        let all = sides.iter().any(|side| is_ambiguous(side));
        let outlines = [0, 1].map(|side| {
            let others: &[Option<(FileId, bool)>] = &others[side];
            let surveyed = surveyed(sides[side], others);
            Outlines::of(sides[side].files(), |file| {
                all || surveyed.contains(&file) || !matches!(others.get(file.0 as usize), Some(Some((_, true))))
            })
        });
        Self { others, outlines, doubled: sides.into_iter().flat_map(doubled).collect() }
    }

    /// Whether a file of the new side is there on the old one too and reads the same.
    fn file(&self, new: FileId) -> Option<(FileId, bool)> {
        self.others[1].get(new.0 as usize).copied().flatten()
    }

    /// A place of the old side in the file of the new one that reads the same, if there is one.
    pub(super) fn carried(&self, old: Place) -> Option<Place> {
        let (file, _) =
            self.others[0].get(old.document.file.0 as usize).copied().flatten().filter(|(_, same)| *same)?;
        let mut place = old;
        place.document.file = file;
        Some(place)
    }

    /// Whether two documents stand in the same file and read the same, with all that is written before them.
    fn document(&self, sides: [&Side; 2], [old, new]: [DocumentId; 2]) -> bool {
        match self.file(new.file) {
            Some((file, true)) => file == old.file && old.number == new.number,
            Some((file, false)) if file == old.file => {
                let outline = |side: usize, id| {
                    let outline: &Outline = self.outlines[side].get(id)?;
                    sides[side].files().get(outline.id.file)?.text.get(outline.whole.clone())
                };
                outline(0, old).is_some_and(|before| outline(1, new) == Some(before))
            }
            _ => false,
        }
    }

    /// Whether a hop is made of the same on both sides, by itself.
    pub(super) fn hop(&self, sides: [&Side; 2], hops: [OpenHop<'_>; 2]) -> bool {
        let documents = hops.map(|hop| hop.documents());
        // A record is held against a mark over whole files.
        let recorded = hops.iter().any(|hop| !hop.hop.records.is_empty());
        let surveys = hops.map(|hop| hop.hop.profile_file.and_then(|profile| profile.as_ref().ok()));
        let whole = |file| self.file(file).is_some_and(|(_, same)| same);
        documents[0].len() == documents[1].len()
            && documents[0].iter().zip(&documents[1]).all(|(old, new)| self.document(sides, [*old, *new]))
            && surveys[1].is_none_or(|survey| whole(survey.file))
            && (!recorded || documents[1].iter().all(|document| whole(document.file)))
            && hops.iter().all(|hop| hop.is_sound() && !hop.is_waived())
            && !self.doubled.contains(&*hops[1].hop.network.id.0)
            && hops[1].has_the_same_beside(hops[0])
            && hops[1].hears_the_same(hops[0])
    }
}

/// The file of the other side in the same place, and whether it reads the same. None where places are not unique.
fn counterparts(sides: [&Side; 2]) -> [Vec<Option<(FileId, bool)>>; 2] {
    let by_place = sides.map(|side| {
        let places = (0_u32..).zip(&side.files().list).map(|(number, file)| (side.below(&file.origin), FileId(number)));
        let found: BTreeMap<PathBuf, FileId> = places.collect();
        found
    });
    let unique = [0, 1].iter().all(|side| by_place[*side].len() == sides[*side].files().list.len());
    [[0, 1], [1, 0]].map(|[own, other]| {
        let files = &sides[own].files().list;
        let pair = |file: &crate::network::SourceFile| {
            let same = *by_place[other].get(&sides[own].below(&file.origin)).filter(|_| unique)?;
            Some((same, sides[other].files().get(same)?.text == file.text))
        };
        files.iter().map(pair).collect()
    })
}

/// Whether two documents may have one name: there is no network or more than one, or documents that are on no shelf.
fn is_ambiguous(side: &Side) -> bool {
    let odd = [&DUPLICATE_ID, &KIND, &NO_NETWORK, &TOO_LARGE, &TWO_NETWORKS];
    side.read.libraries().len() != 1 || side.read.findings().iter().any(|finding| odd.contains(&finding.rule))
}

/// The files with hops that name a survey which does not read the same, and, as nobody knows what those name, with hops
/// that could not be typed.
fn surveyed(side: &Side, others: &[Option<(FileId, bool)>]) -> HashSet<FileId> {
    let differs = |file: FileId| matches!(others.get(file.0 as usize), Some(Some((_, false))));
    let mut found = HashSet::new();
    if !others.iter().any(|other| matches!(other, Some((_, false)))) {
        return found;
    }
    for library in side.read.libraries() {
        let named = library.profiles.iter().filter(|(_, profile)| match profile {
            Ok(profile) => differs(profile.file),
            Err(Spot::Bytes(file, _)) => differs(*file),
            Err(_) => false,
        });
        found.extend(named.map(|(hop, _)| hop.file));
        found.extend(library.hops.index.values().filter_map(|slot| match slot {
            Slot::Broken(document) => Some(document.file),
            Slot::Typed(_) => None,
        }));
    }
    found
}

/// The ids that more than one network of a side has.
fn doubled(side: &Side) -> Vec<String> {
    let mut counts: HashMap<&str, usize> = HashMap::new();
    let networks = side.read.libraries().iter().filter_map(|library| library.networks.documents.first());
    networks.for_each(|network| *counts.entry(&network.id.0).or_default() += 1);
    counts.into_iter().filter(|(_, count)| *count > 1).map(|(id, _)| id.to_owned()).collect()
}
