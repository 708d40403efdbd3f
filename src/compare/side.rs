//! One state of a network: its hops with their lines, findings and places, free of the library they came from.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::Arc;

use super::judged::{self, Judged, Named};
use super::known::KnownSide;
use crate::finding::rule::Severity;
use crate::finding::{Finding, Spot};
use crate::network::{Brought, Files, Scope};
use crate::place::{DocumentId, Place};
use crate::sheet::{HopSheet, Missing, Sources, Told};
use crate::verdict::evaluate;

/// One state of a network, evaluated.
#[derive(Debug)]
pub struct Side {
    /// What it is called: a folder or a revision.
    pub name: String,
    /// The texts, to point into.
    pub files: Arc<Files>,
    /// Hops with a sheet.
    pub hops: Vec<HopSide>,
    /// Hops that are there and have none.
    pub waiting: Vec<Waiting>,
    /// What is found and is about no hop.
    pub findings: Vec<Finding>,
    /// Data that was named on the command line.
    pub brought: Brought,
    /// What patterns say to pass over, below the folder of the network.
    pub passed_over: Vec<String>,
    /// What is known to be wrong, by the baseline of this state.
    pub baseline: Option<KnownSide>,
    /// Where it came from, to judge another state by its gate.
    pub(super) scope: Option<Scope>,
    roots: Vec<PathBuf>,
}

/// A hop that cannot be computed.
#[derive(Debug)]
pub struct Waiting {
    /// Network it belongs to.
    pub network: String,
    /// Its id.
    pub hop: String,
    /// Why not.
    pub why: String,
}

/// One hop of a state.
#[derive(Debug)]
pub struct HopSide {
    /// Network it belongs to.
    pub network: String,
    /// Its id.
    pub hop: String,
    /// Its title, or its id.
    pub title: String,
    /// Ends, frequencies and bandwidth, so that a reader knows which hop this is.
    pub context: String,
    /// Its own document.
    pub document: DocumentId,
    /// Its lines, in the order of the sheet.
    pub lines: Vec<Measure>,
    /// The quantities it is decided by.
    pub judged: Vec<Judged>,
    /// What is found about it.
    pub findings: Vec<Finding>,
}

/// A line of the sheet.
#[derive(Debug)]
pub struct Measure {
    /// Its key, with names instead of numbers where parts have names.
    pub key: String,
    /// What it is, with the section it stands in.
    pub name: String,
    /// As printed, or why there is nothing.
    pub text: Result<Told, Missing>,
    /// The number in its base unit.
    pub number: Option<(f64, &'static str)>,
    /// What a person would change to change it.
    pub from: Sources,
    /// Where the part of the hop it speaks of has its name: without it there would be no such line.
    pub(super) named_at: Option<Place>,
}

impl Side {
    /// Evaluates everything in a scope.
    #[must_use]
    pub fn of(scope: &Scope, name: String) -> Self {
        let evaluation = evaluate(scope, HopSide::of);
        let hops = evaluation.hops;
        let computed: BTreeSet<[&str; 2]> = hops.iter().map(|hop| [hop.network.as_str(), hop.hop.as_str()]).collect();
        let why = |id: &str| {
            let about = |finding: &&Finding| finding.hop.as_deref() == Some(id) && finding.severity == Severity::Error;
            evaluation
                .findings
                .iter()
                .find(about)
                .map_or("its files have errors".to_owned(), |found| found.message.clone())
        };
        let waiting = evaluation
            .hop_ids
            .iter()
            // Of a document that broke off, what looks like its id may be no id.
            .filter(|[_, hop]| hop.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-'))
            .filter(|[network, hop]| !computed.contains(&[network.as_str(), hop.as_str()]))
            .map(|[network, hop]| Waiting { network: network.clone(), hop: hop.clone(), why: why(hop) })
            .collect();
        let findings = evaluation.findings.into_iter().filter(|finding| finding.hop.is_none()).collect();
        let roots = scope.folders();
        let passed_over = evaluation.passed_over.iter().map(|path| below(&roots, path)).collect();
        let brought = scope.brought.clone();
        let (baseline, scope) = (None, Some(scope.clone()));
        Self { name, files: evaluation.files, hops, waiting, findings, brought, passed_over, baseline, scope, roots }
    }

    /// The same with the baseline of that state.
    #[must_use]
    pub fn with_baseline(self, baseline: Option<KnownSide>) -> Self {
        Self { baseline, ..self }
    }

    /// Whether there is nothing to compare with.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.files.list.is_empty() && self.findings.is_empty()
    }

    /// The path of a document's file below the folder of the network.
    pub(super) fn inside(&self, document: DocumentId) -> Option<PathBuf> {
        let origin = &self.files.get(document.file)?.origin;
        let below = self.roots.iter().find_map(|root| origin.strip_prefix(root).ok());
        Some(below.unwrap_or(origin).to_path_buf())
    }

    /// What is wrong with the reading of a file, by its path below the folder of the network.
    pub(super) fn unread(&self, inside: &std::path::Path) -> Option<&Finding> {
        self.findings.iter().filter(|finding| finding.rule.family == "spec").find(|finding| {
            finding.severity == Severity::Error
                && finding.labels.first().is_some_and(|label| match &label.spot {
                    Spot::Path(path) => std::path::Path::new(path).ends_with(inside),
                    spot => spot.file().is_some_and(|file| {
                        self.inside(DocumentId { file, number: 0 }).is_some_and(|path| path == inside)
                    }),
                })
        })
    }
}

/// A path without the folder of its network.
fn below(roots: &[PathBuf], path: &str) -> String {
    let below = roots.iter().find_map(|root| std::path::Path::new(path).strip_prefix(root).ok());
    below.map_or_else(|| path.to_owned(), |below| below.display().to_string())
}

impl HopSide {
    /// Takes out of a sheet what is compared.
    fn of(sheet: &HopSheet<'_>, findings: &[Finding]) -> Self {
        let (resolved, hop) = (sheet.resolved, sheet.resolved.hop);
        let (a, b) = (&resolved.ends.a.site.id, &resolved.ends.b.site.id);
        let channel = &hop.channel;
        // What a crew found is no part of the design.
        let sections = sheet.design_sections();
        let judged = judged::of(sheet, &sections);
        let lines = sections.into_iter().flat_map(|section| {
            section.rows.into_iter().map(move |row| Measure {
                key: Named(sheet).key(&row.key),
                name: format!("{}: {}", section.title, row.words),
                text: row.text,
                number: row.number.filter(|(number, _)| number.is_finite()),
                from: row.from,
                named_at: Named(sheet).written_at(&row.key.section),
            })
        });
        Self {
            network: resolved.network.id.to_string(),
            hop: hop.id.to_string(),
            title: hop.title.as_ref().map_or_else(|| hop.id.to_string(), ToString::to_string),
            context: format!("{a} to {b}, {} and {}, {} wide", channel.a_to_b, channel.b_to_a, channel.bandwidth),
            document: hop.at,
            lines: lines.collect(),
            judged,
            findings: Self::weighed(findings),
        }
    }

    /// The findings of a hop as they count.
    pub(super) fn weighed(findings: &[Finding]) -> Vec<Finding> {
        findings.iter().filter(|finding| finding.rule.family != "record").map(weighed).collect()
    }

    /// Whether it may not be built.
    #[must_use]
    pub fn fails(&self) -> bool {
        self.findings.iter().any(|finding| finding.severity == Severity::Error)
    }

    pub(super) fn line(&self, key: &str) -> Option<&Measure> {
        self.lines.iter().find(|line| line.key == key)
    }
}

/// A finding as it counts: one that somebody has accepted weighs no more than advice, and says so.
fn weighed(finding: &Finding) -> Finding {
    let mut finding = finding.clone();
    if let Some(by) = &finding.waived {
        finding.message = format!("{} (accepted by {} until {})", finding.message, by.approver, by.expires);
        finding.severity = Severity::Advice;
    }
    finding
}
