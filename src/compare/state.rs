//! A side whose networks are open: its hops, those that wait, and what is found and is about no hop.

use std::collections::BTreeSet;
use std::path::Path;

use super::side::Side;
use crate::finding::rule::Severity;
use crate::finding::{Finding, Spot};
use crate::verdict::{Open, OpenHop};

/// A side whose networks are open.
pub(super) struct State<'s> {
    pub side: &'s Side,
    /// Hops with a sheet, in order of file.
    pub hops: Vec<OpenHop<'s>>,
    /// Hops that are there and have none.
    pub waiting: Vec<Waiting>,
    /// What is found and is about no hop.
    pub findings: Vec<Finding>,
}

/// A hop that cannot be computed.
pub(super) struct Waiting {
    /// The network it belongs to and its id.
    pub name: [String; 2],
    /// Why not.
    pub why: String,
}

/// The network a hop belongs to and its id.
pub(super) fn name_of(hop: OpenHop<'_>) -> [String; 2] {
    [hop.hop.network.id.to_string(), hop.hop.hop.id.to_string()]
}

impl<'s> State<'s> {
    pub(super) fn of(side: &'s Side, open: &'s Open<'s>) -> Self {
        let hops: Vec<OpenHop<'s>> = open.open_hops().collect();
        let computed: BTreeSet<[String; 2]> = hops.iter().map(|hop| name_of(*hop)).collect();
        let mut waiting = open.hop_ids();
        // Of a document that broke off, what looks like its id may be no id.
        waiting.retain(|name| {
            let is_id = name[1].bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-');
            is_id && !computed.contains(name)
        });
        let ids: BTreeSet<&str> = waiting.iter().map(|[_, hop]| hop.as_str()).collect();
        // Why a hop waits goes by what is found about its id.
        let namesakes = hops.iter().enumerate().filter(|(_, hop)| ids.contains(&*hop.hop.hop.id.0));
        let numbers: Vec<usize> = namesakes.map(|(number, _)| number).collect();
        let mut about_them = Vec::new();
        let mut findings =
            open.judge_only(&numbers, |_, found| found.to_vec(), |mut found| about_them.append(&mut found));
        findings.append(&mut open.of_services());
        let about_them = if waiting.is_empty() { Vec::new() } else { open.of_hops_that_wait(about_them) };
        let why = |id: &str| {
            let about = |finding: &&Finding| finding.hop.as_deref() == Some(id) && finding.severity == Severity::Error;
            let found = about_them.iter().find(about);
            found.map_or("its files have errors".to_owned(), |found| found.message.clone())
        };
        let waiting = waiting.iter().map(|name| Waiting { name: name.clone(), why: why(&name[1]) }).collect();
        Self { side, hops, waiting, findings }
    }

    /// What is wrong with the reading of the file a hop of another state is in, by its path below the folder of the network.
    pub(super) fn unread(&self, hop: OpenHop<'_>, other: &Side) -> Option<&Finding> {
        let inside = |side: &Side, file| Some(side.below(&side.files().get(file)?.origin));
        let wanted = inside(other, hop.hop.hop.at.file)?;
        self.findings.iter().filter(|finding| finding.rule.family == "spec").find(|finding| {
            finding.severity == Severity::Error
                && finding.labels.first().is_some_and(|label| match &label.spot {
                    Spot::Path(path) => Path::new(path).ends_with(&wanted),
                    spot => spot.file().and_then(|file| inside(self.side, file)).is_some_and(|path| path == wanted),
                })
        })
    }
}
