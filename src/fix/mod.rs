//! Fixing files by the fixes that findings carry.
//!
//! A scope comes in, the changed texts go out; nothing is written here. Fixes are byte edits, so that comments, order,
//! quoting and line endings stay as they are. Those that overlap wait for another round. After each round everything is
//! read and judged again: a fix is kept only if no finding appears that was not there, and one that is said to alter no
//! value of the design only if every number that was computed before is still the same.

mod diff;
mod edit;

use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;
use std::sync::Arc;

use crate::finding::{Finding, Fix, Spot};
use crate::network::{Files, Home, Scope};
use crate::verdict::{Evaluation, evaluate};

pub use diff::{diff, patch};
use edit::Bytes;

/// A file that was fixed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mended {
    /// As it was found.
    pub origin: PathBuf,
    /// As it is printed.
    pub path: String,
    /// Its text as it was.
    pub before: String,
    /// Its text as it should be.
    pub after: String,
}

/// What came of it.
#[derive(Debug, Default)]
pub struct Fixed {
    /// The files that change, by path.
    pub files: Vec<Mended>,
    /// How many fixes were made.
    pub made: usize,
    /// Fixes that were not made, in words: the rule, and why.
    pub left: Vec<String>,
}

/// Fixes that depend on one another are made one after the other; no chain is longer.
const MOST_ROUNDS: usize = 20;

/// A file and the text in its place.
type Text = (PathBuf, Arc<str>);

/// Rule, hop and place, or words where there is no place that holds.
type Known = (&'static str, Option<String>, String);

/// The numbers of a hop by key.
type Numbers = BTreeMap<(String, String), u64>;

/// Makes the fixes of everything found in a scope; with `all`, those that a person must agree to as well.
///
/// A fixed key may bring out a fault in its value that a later round fixes in turn. If one is left over in the end, it
/// all starts again and nothing that brings anything out is made.
#[must_use]
pub fn fix(scope: &Scope, all: bool) -> Fixed {
    attempt(scope, all, true).or_else(|| attempt(scope, all, false)).unwrap_or_default()
}

/// Files with texts put in at places: the value that stands there, or the key that does not yet. Also the places where that
/// cannot be done, such as in the midst of an alias.
#[must_use]
pub fn rewritten<'e>(files: &Files, edits: &'e [(Spot, String)]) -> (Vec<Mended>, Vec<&'e Spot>) {
    let (mut bytes, mut left) = (Vec::new(), Vec::new());
    for (spot, text) in edits {
        match edit::resolve(files, spot, text) {
            Some(edit) => bytes.push(edit),
            None => left.push(spot),
        }
    }
    let all: Vec<&Bytes> = bytes.iter().collect();
    let changed = (0_u32..).zip(&files.list).filter_map(|(number, file)| {
        let (before, after) = (file.text.clone(), edit::applied(&file.text, number, &all));
        let (origin, path) = (file.origin.clone(), file.path.clone());
        (after != before).then_some(Mended { origin, path, before, after })
    });
    (changed.collect(), left)
}

/// Whether a value stands in something that has an anchor: what is put in there may be put in elsewhere as well.
#[must_use]
pub fn is_anchored(files: &Files, spot: &Spot) -> bool {
    matches!(spot, Spot::Field(place) if edit::is_anchored(files, place))
}

/// One attempt. `None` if something was brought out in the hope of a later round, and no round fixed it.
fn attempt(scope: &Scope, all: bool, hopeful: bool) -> Option<Fixed> {
    let first = State::of(scope, None);
    let mut state = State::of(scope, None);
    let mends = |finding: &Finding| finding.fix.as_ref().is_some_and(|fix| all || fix.unsafe_because.is_none());
    let may_appear = |finding: &Finding| hopeful && mends(finding);
    let (mut made, mut refused) = (0, BTreeMap::new());
    for _ in 0..MOST_ROUNDS {
        let chosen = state.chosen(all, &refused);
        if chosen.is_empty() {
            break;
        }
        let together = State::of(scope, Some(state.with(chosen.iter().map(|(_, edits)| edits))));
        if state.objection(&together, !all, &may_appear).is_none() {
            made += chosen.len();
            state = together;
            continue;
        }
        // One of them does harm: make the first that does not, and remember those that do.
        let found = chosen.iter().find_map(|(known, edits)| {
            let alone = State::of(scope, Some(state.with(std::iter::once(edits))));
            match state.objection(&alone, !all, &may_appear) {
                None => Some(alone),
                Some(why) => {
                    refused.insert(known.clone(), why);
                    None
                }
            }
        });
        match found {
            Some(alone) => {
                made += 1;
                state = alone;
            }
            None => break,
        }
    }
    if first.objection(&state, !all, &|_| false).is_some() {
        return None;
    }
    let list = state.seen.files.list.iter();
    let after: BTreeMap<&PathBuf, &String> = list.map(|file| (&file.origin, &file.text)).collect();
    let changed = first.seen.files.list.iter().filter_map(|file| {
        let after = (*after.get(&file.origin)?).clone();
        let (origin, path, before) = (file.origin.clone(), file.path.clone(), file.text.clone());
        (after != before).then_some(Mended { origin, path, before, after })
    });
    let left = refused.into_iter().map(|((rule, hop, _), why)| {
        let hop = hop.map(|hop| format!(" ({hop})")).unwrap_or_default();
        format!("{rule}{hop}: {why}")
    });
    let files: Vec<Mended> = changed.collect();
    Some(Fixed { files, made, left: left.collect::<BTreeSet<String>>().into_iter().collect() })
}

/// The texts at some moment and what is found in them.
struct State {
    seen: Evaluation<Numbers>,
}

impl State {
    fn of(scope: &Scope, texts: Option<Vec<Text>>) -> Self {
        let scope = texts.map_or_else(|| scope.clone(), |texts| scope.clone().with_texts(&texts));
        let seen = evaluate(&scope, |sheet, _| {
            let rows = sheet.sections().into_iter().flat_map(|section| section.rows);
            let numbers =
                rows.filter_map(|row| Some(((sheet.id().to_owned(), row.key.to_string()), row.number?.0.to_bits())));
            numbers.collect()
        });
        Self { seen }
    }

    /// Fixes that do not get in each other's way, in order of place.
    fn chosen(&self, all: bool, refused: &BTreeMap<Known, String>) -> Vec<(Known, Vec<Bytes>)> {
        let mut taken: Vec<Bytes> = Vec::new();
        let mut chosen = Vec::new();
        for finding in &self.seen.findings {
            let Some(fix) = finding.fix.as_ref().filter(|fix| all || fix.unsafe_because.is_none()) else { continue };
            let known = known(finding);
            if refused.contains_key(&known) {
                continue;
            }
            let Some(edits) = self.resolved(fix) else { continue };
            if edits.iter().any(|edit| taken.iter().any(|other| edit.touches(other))) {
                continue;
            }
            taken.extend(edits.iter().cloned());
            chosen.push((known, edits));
        }
        chosen
    }

    fn resolved(&self, fix: &Fix) -> Option<Vec<Bytes>> {
        fix.edits.iter().map(|(spot, text)| edit::resolve(&self.seen.files, spot, text)).collect()
    }

    /// The texts with edits made.
    fn with<'e>(&self, edits: impl Iterator<Item = &'e Vec<Bytes>>) -> Vec<Text> {
        let edits: Vec<&Bytes> = edits.flatten().collect();
        let each = (0_u32..)
            .zip(&self.seen.files.list)
            .filter(|(_, file)| file.home == Home::Own)
            .map(|(number, file)| (file.origin.clone(), edit::applied(&file.text, number, &edits).into()));
        each.collect()
    }

    /// Why the next state is no better than this one.
    fn objection(&self, next: &Self, keep_numbers: bool, may_appear: &dyn Fn(&Finding) -> bool) -> Option<String> {
        let before: BTreeSet<Known> = self.seen.findings.iter().map(known).collect();
        if let Some(new) =
            next.seen.findings.iter().find(|finding| !before.contains(&known(finding)) && !may_appear(finding))
        {
            return Some(format!("mending it would bring out {}: {}", new.rule.name, new.message));
        }
        let after: BTreeMap<_, _> = next.seen.hops.iter().flatten().collect();
        let moved = self.seen.hops.iter().flatten().find(|(key, number)| after.get(key) != Some(number));
        moved.filter(|_| keep_numbers).map(|((hop, key), _)| format!("mending it would alter {key} of {hop}"))
    }
}

/// What a finding is known by while the bytes around it move.
fn known(finding: &Finding) -> Known {
    let place = match finding.labels.first().map(|label| &label.spot) {
        Some(Spot::Field(place)) => place.route(),
        Some(Spot::Entry(place, key)) => format!("{} {key}", place.route()),
        Some(Spot::Bytes(..) | Spot::Path(_)) | None => finding.message.clone(),
    };
    (finding.rule.name, finding.hop.clone(), place)
}
