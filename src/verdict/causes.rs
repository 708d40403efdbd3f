//! What is told first: causes before what follows from them, and one fault of a shared document once.
//!
//! It comes last, after severities, waivers and the baseline, and takes nothing away: every finding is still there, under
//! another one. What a gate counts does not change, for nothing follows from a cause of a lower severity.

mod alike;

use std::collections::HashMap;
use std::ops::Range;

use crate::finding::faults::{self, DANGLING, NOT_EVALUATED, TOO_LARGE, UNREADABLE};
use crate::finding::rule::{IS_ABOUT_FILES, Rule};
use crate::finding::{Finding, Spot};
use crate::network::Files;
use crate::place::{DocumentId, FileId};
use crate::rules::causes::CAUSES;

/// Families whose findings are about one end: they follow from what is wrong at that end, not at the other one.
const OF_ONE_END: &[&str] = &["run", "mount", "record", "grounding", "people"];

/// Puts what follows from a cause under it, and what is alike under the worst of it.
#[must_use]
pub fn gathered(findings: Vec<Finding>, files: &Files) -> Vec<Finding> {
    let located = Located::of(&findings, files);
    let causes = Causes::of(&findings, &located, files);
    let roots = causes.roots(&findings);
    let mut places: HashMap<usize, usize> = HashMap::new();
    let mut heads: Vec<Finding> = Vec::new();
    let mut follow: Vec<(usize, Finding)> = Vec::new();
    for (number, finding) in findings.into_iter().enumerate() {
        if roots[number] == number {
            places.insert(number, heads.len());
            heads.push(finding);
        } else {
            follow.push((roots[number], finding));
        }
    }
    for (root, finding) in follow {
        heads[places[&root]].gathered.get_or_insert_default().follow.push(finding);
    }
    alike::merged(heads)
}

/// Where the labels of each finding lie.
struct Located(Vec<Vec<(FileId, Range<usize>)>>);

impl Located {
    /// Only faults of files and what waits for them are looked up: spans take a look at the text.
    fn of(findings: &[Finding], files: &Files) -> Self {
        let spans = |finding: &Finding| -> Vec<(FileId, Range<usize>)> {
            if !is_fault(finding.rule) && !waits(finding.rule) {
                return Vec::new();
            }
            let found = finding.labels.iter().filter_map(|label| files.locate(&label.spot));
            found.map(|found| (found.file, found.span)).collect()
        };
        Self(findings.iter().map(spans).collect())
    }
}

/// Whether a rule says that a file is wrong in itself.
fn is_fault(rule: &Rule) -> bool {
    rule.never_waived() == Some(IS_ABOUT_FILES) && faults::ALL.contains(&rule)
}

/// Whether a rule says that something waits for another thing to be right.
fn waits(rule: &Rule) -> bool {
    *rule == NOT_EVALUATED || rule.name == "service-not-judged" || *rule == DANGLING
}

/// The causes among some findings.
struct Causes<'l> {
    located: &'l Located,
    /// Of each finding its rank; none for one that is no cause.
    ranks: Vec<Option<usize>>,
    by_file: HashMap<FileId, Vec<usize>>,
    by_hop: HashMap<String, Vec<usize>>,
    by_document: HashMap<DocumentId, Vec<usize>>,
    /// The ids of documents whose kind is not known: what refers to them leads nowhere for that reason.
    by_id: HashMap<String, usize>,
}

impl<'l> Causes<'l> {
    fn of(findings: &[Finding], located: &'l Located, files: &Files) -> Self {
        let ranks: Vec<Option<usize>> = findings.iter().map(rank_of).collect();
        let mut causes = Self {
            located,
            ranks,
            by_file: HashMap::new(),
            by_hop: HashMap::new(),
            by_document: HashMap::new(),
            by_id: HashMap::new(),
        };
        for (number, finding) in findings.iter().enumerate().filter(|(number, _)| causes.ranks[*number].is_some()) {
            for hop in finding.hops() {
                causes.by_hop.entry(hop.clone()).or_default().push(number);
            }
            if *finding.rule == faults::KIND {
                for (file, _) in &located.0[number] {
                    let text = files.get(*file).map_or("", |file| &file.text);
                    let ids = text.lines().filter_map(|line| line.strip_prefix("id:"));
                    causes.by_id.extend(ids.map(|id| (id.trim().to_owned(), number)));
                }
            }
            if is_fault(finding.rule) {
                for (file, _) in &located.0[number] {
                    causes.by_file.entry(*file).or_default().push(number);
                }
            } else if let Some(Spot::Field(place)) = finding.labels.first().map(|label| &label.spot) {
                causes.by_document.entry(place.document).or_default().push(number);
            }
        }
        causes
    }

    /// Of each finding the one that it follows from in the end; itself if from none.
    fn roots(&self, all: &[Finding]) -> Vec<usize> {
        let mut roots: Vec<usize> = (0..all.len()).collect();
        // A cause is deeper than what follows from it, so its own root is known when it is asked for.
        let mut order = roots.clone();
        order.sort_by_key(|number| (self.ranks[*number].unwrap_or(usize::MAX), *number));
        for number in order {
            if let Some(cause) = self.of_finding(number, &all[number], all, &roots) {
                roots[number] = roots[cause];
            }
        }
        roots
    }

    /// The cause that a finding follows from: the deepest, of those the first.
    fn of_finding(&self, number: usize, finding: &Finding, all: &[Finding], roots: &[usize]) -> Option<usize> {
        let own = self.ranks[number].unwrap_or(usize::MAX);
        let same_hop = finding.hops().filter_map(|hop| self.by_hop.get(hop)).flatten();
        let documents = finding.labels.iter().filter_map(|label| match &label.spot {
            Spot::Field(place) | Spot::Entry(place, _) => self.by_document.get(&place.document),
            Spot::Bytes(..) | Spot::Path(_) => None,
        });
        let files = self.located.0[number].iter().filter_map(|(file, _)| self.by_file.get(file)).flatten();
        let of_hop = same_hop.filter(|cause| spoils(&all[**cause], finding));
        let of_documents = documents.flatten().filter(|cause| reaches(&all[**cause], finding));
        let of_files = files.filter(|cause| waits(finding.rule) && self.lies_in(number, **cause, &all[**cause]));
        let named = (*finding.rule == DANGLING).then(|| finding.message.rsplit('`').nth(1)).flatten();
        let of_ids = named.and_then(|id| self.by_id.get(id));
        let candidates = of_hop.chain(of_documents).chain(of_files).chain(of_ids).copied();
        let deeper = candidates.filter(|cause| {
            *cause != number && self.ranks[*cause] < Some(own) && all[roots[*cause]].severity >= finding.severity
        });
        deeper.min_by_key(|cause| (self.ranks[*cause], *cause))
    }

    /// Whether a finding points at what a fault of a file is about.
    fn lies_in(&self, number: usize, cause: usize, fault: &Finding) -> bool {
        let whole = [&faults::MALFORMED, &UNREADABLE, &TOO_LARGE].contains(&fault.rule);
        let touches = |(other, span): &(FileId, Range<usize>)| {
            let wrong = self.located.0[cause].iter().filter(|(file, _)| file == other);
            wrong.into_iter().any(|(_, wrong)| whole || (span.start <= wrong.end && wrong.start <= span.end))
        };
        self.located.0[number].iter().any(touches)
    }
}

/// How deep a cause is: faults of files first, then the table; none for what is no cause.
fn rank(rule: &Rule) -> Option<usize> {
    if is_fault(rule) {
        // What leads nowhere may do so because what it leads to cannot be read.
        return Some(usize::from(*rule == DANGLING));
    }
    CAUSES.iter().position(|cause| cause.rule == rule).map(|place| place + 2)
}

/// That of a finding: a hop that is not judged is a cause too, after all others, for what waits for it.
fn rank_of(finding: &Finding) -> Option<usize> {
    if *finding.rule == NOT_EVALUATED && finding.hop.is_some() { Some(CAUSES.len() + 2) } else { rank(finding.rule) }
}

/// Whether a finding on the same hop follows from a cause.
fn spoils(cause: &Finding, finding: &Finding) -> bool {
    if is_fault(cause.rule) || *cause.rule == NOT_EVALUATED {
        return waits(finding.rule);
    }
    let ends_differ = cause.end.is_some() && finding.end.is_some() && cause.end != finding.end;
    if ends_differ && OF_ONE_END.contains(&finding.rule.family) && OF_ONE_END.contains(&cause.rule.family) {
        return false;
    }
    names(cause).is_some_and(|names| names.contains(&finding.rule.name) || names.contains(&finding.rule.family))
}

/// Whether a finding about another hop follows from a cause in a document that it names: what others hear.
fn reaches(cause: &Finding, finding: &Finding) -> bool {
    finding.rule.family == "interference" && cause.hop != finding.hop && spoils(cause, finding)
}

fn names(cause: &Finding) -> Option<&'static [&'static str]> {
    CAUSES.iter().find(|one| one.rule == cause.rule).map(|one| one.spoils)
}
