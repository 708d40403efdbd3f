//! What is open, grouped by rule: one mistake made a hundred times is read once.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use serde::Serialize;

use crate::finding::Finding;
use crate::listing::Places;
use crate::pack::design;
use crate::pack::words::Table;
use crate::voice::{Voice, shown};

/// The findings of one rule.
#[derive(Debug, Serialize)]
pub(super) struct Group {
    severity: String,
    rule: &'static str,
    count: String,
    /// Its first sentence.
    summary: &'static str,
    table: Table,
}

/// The groups, the gravest first.
pub(super) fn groups(findings: &[Finding], places: &Places<'_>, voice: Voice) -> Vec<Group> {
    let mut groups: BTreeMap<(Reverse<crate::finding::rule::Severity>, &str), Vec<&Finding>> = BTreeMap::new();
    for finding in findings {
        groups.entry((Reverse(finding.severity), finding.rule.name)).or_default().push(finding);
    }
    let group = |((severity, rule), list): ((Reverse<_>, &'static str), Vec<&Finding>)| {
        let mut table = Table::new(voice, ["hop", "finding", "written-at"]);
        for finding in &list {
            let about = finding.hop.clone().unwrap_or_else(|| voice.say("nothing"));
            let place = finding.labels.first().and_then(|label| places.line(&label.spot));
            let place = place.map(|(file, line)| format!("{file}:{line}")).unwrap_or_default();
            table.row([about, shown(&finding.message), place]);
        }
        Group {
            severity: voice.say(design::severity(severity.0)),
            rule,
            count: voice.count("findings-count", list.len()),
            summary: list.first().map_or("", |finding| finding.rule.summary()),
            table,
        }
    };
    groups.into_iter().map(group).collect()
}
