//! One state of a network, as it was read, and a hop of it as it is compared, free of the library it came from.

use std::path::{Path, PathBuf};

use super::judged::{self, Judged, Named};
use super::known::KnownSide;
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::network::{Brought, Files, Scope, mark};
use crate::place::{DocumentId, Place};
use crate::sheet::{HopSheet, Missing, Sources, Told};
use crate::spec::STANDARD;
use crate::verdict::Read;

/// One state of a network, read and not yet judged.
#[derive(Debug)]
pub struct Side {
    /// What it is called: a folder or a revision.
    pub name: String,
    /// Data that was named on the command line.
    pub brought: Brought,
    /// What patterns say to pass over, below the folder of the network.
    pub passed_over: Vec<String>,
    /// What is known to be wrong, by the baseline of this state.
    pub baseline: Option<KnownSide>,
    pub(super) read: Read,
    roots: Vec<PathBuf>,
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
    /// Reads everything in a scope.
    #[must_use]
    pub fn of(scope: &Scope, name: String) -> Self {
        let read = Read::of(scope);
        let roots = scope.folders();
        let passed_over =
            read.passed_over().iter().map(|path| below(&roots, Path::new(path)).display().to_string()).collect();
        let brought = scope.brought.clone();
        Self { name, brought, passed_over, baseline: None, read, roots }
    }

    /// The texts, to point into.
    #[must_use]
    pub fn files(&self) -> &Files {
        self.read.files()
    }

    /// The same with the baseline of that state.
    #[must_use]
    pub fn with_baseline(self, baseline: Option<KnownSide>) -> Self {
        Self { baseline, ..self }
    }

    /// Whether there is nothing to compare with.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.files().list.is_empty() && self.read.findings().is_empty()
    }

    /// Why it cannot be judged as a whole.
    #[must_use]
    pub fn failure(&self) -> Option<String> {
        self.read.scope().failure()
    }

    /// All its hops that have a sheet, in order of file.
    #[must_use]
    pub fn hops(&self) -> Vec<HopSide> {
        self.read.open().open_hops().map(|hop| hop.judge(HopSide::of)).collect()
    }

    /// A path below the folder of the network.
    pub(super) fn below(&self, path: &Path) -> PathBuf {
        below(&self.roots, path)
    }
}

/// A path without the folder of its network; from there where it lies outside, as a shared library does.
fn below(roots: &[PathBuf], path: &Path) -> PathBuf {
    let inside = roots.iter().find_map(|root| path.strip_prefix(root).ok());
    if inside.is_some() || path.to_string_lossy().starts_with(STANDARD) {
        return inside.unwrap_or(path).to_path_buf();
    }
    let from = roots.first().and_then(|root| mark::from_folder(root, path));
    from.map_or_else(|| path.to_path_buf(), PathBuf::from)
}

impl HopSide {
    /// Takes out of a sheet what is compared.
    pub(super) fn of(sheet: &HopSheet<'_>, findings: &[Finding]) -> Self {
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
