//! What a finding is known by from one run to the next.
//!
//! A hash of the version of this recipe, the rule, the hop and end, the document and the field the primary label stands in,
//! and what tells two findings there apart. Path, line, words and the program's version are not in it, so that a file may
//! be moved and edited and a message reworded without a finding looking new.

use std::collections::HashMap;

use crate::finding::{Finding, Fingerprint, Identity};
use crate::network::{Files, Target};
use crate::spec::EndName;
use crate::text::hash::hash;

/// Version of the recipe: a change to it makes every finding look new.
pub const VERSION: &str = "1";

/// Gives every finding its fingerprint. They come in the order of the report; equal ones are numbered in it.
pub fn give(findings: &mut [Finding], files: &Files) {
    let mut seen: HashMap<u64, u32> = HashMap::new();
    for finding in findings {
        let key = key(finding, files);
        let next = seen.entry(key).or_default();
        finding.fingerprint = Fingerprint { key, ordinal: *next };
        *next += 1;
    }
}

/// What a finding is known by: the field of its primary label, another one that it names, or the whole hop.
#[must_use]
pub fn target(finding: &Finding, files: &Files) -> Target {
    match (&finding.identity, &finding.hop) {
        (Identity::Hop, Some(hop)) => Target { kind: "hop".into(), id: hop.clone(), route: String::new() },
        (Identity::Spot(spot), _) => files.target(spot),
        _ => finding.labels.first().map(|label| files.target(&label.spot)).unwrap_or_default(),
    }
}

fn key(finding: &Finding, files: &Files) -> u64 {
    let target = target(finding, files);
    // What is wrong with a part that several hops share is said once, of whichever hop comes first: the hop is no part of it.
    let hop = finding.hop.as_deref().filter(|hop| {
        let of_hop = |target: Target| target.kind == "hop" && target.id == *hop;
        finding.identity == Identity::Hop || finding.labels.iter().any(|label| of_hop(files.target(&label.spot)))
    });
    let end = hop.and(finding.end).map_or("", EndName::letter);
    let about = finding.about.as_deref().unwrap_or_default();
    hash([VERSION, finding.rule.name, hop.unwrap_or_default(), end, &target.kind, &target.id, &target.route, about])
}

impl std::fmt::Display for Fingerprint {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let whole = match self.ordinal {
            0 => self.key,
            // Numbered ones are hashed once more, so that neighbours do not look alike.
            number => hash([format!("{:016x}", self.key).as_str(), number.to_string().as_str()]),
        };
        write!(f, "{whole:016x}")
    }
}
