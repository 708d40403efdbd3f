//! Bringing records home: each to the hop it speaks of.

use super::library::Library;
use super::resolved::ResolvedHop;
use super::shelf::{Document, Look};
use crate::at;
use crate::finding::faults::{DANGLING, NOT_EVALUATED};
use crate::finding::{Findings, Spot};
use crate::place::Place;
use crate::spec::Record;
use crate::text::few::few;
use crate::text::nearest::{did_you_mean, nearest};

/// Gives every record to its hop. One that leads nowhere is reported; one whose hop is not judged waits with it.
pub(super) fn bring_home<'n>(library: &'n Library, hops: &mut [ResolvedHop<'n>], findings: &mut Findings) {
    for record in &library.records.documents {
        let broken = library.holes.at(&at!(record.hop)).or_else(|| library.holes.at(&at!(record.end)));
        if let Some((cause, spot)) = broken {
            wait(record, &format!("because of {cause}"), spot, findings);
            continue;
        }
        match library.look(&record.hop) {
            Look::Missing(guess) => dangling(record, library, guess, findings),
            Look::Broken(document) => {
                let cause = format!("because of errors in hop `{}`", record.hop);
                wait(record, &cause, Place::document(document).below(&"id", &[]), findings);
            }
            Look::Found(document) => {
                if let Some(hop) = hops.iter_mut().find(|hop| hop.hop.at == document.at) {
                    unknown_ports(record, hop, library, findings);
                    hop.records.push(record);
                } else {
                    let cause = format!("because hop `{}` cannot be evaluated", record.hop);
                    wait(record, &cause, at!(document.id), findings);
                }
            }
        }
    }
    for hop in hops {
        hop.records.sort_by_key(|record| (record.end, record.date));
    }
}

fn wait(record: &Document<Record>, cause: &str, spot: impl Into<Spot>, findings: &mut Findings) {
    let message = format!("record `{}` cannot be judged {cause}", record.id);
    let finding = findings.report(&NOT_EVALUATED, at!(record.id), message, "not judged");
    finding.other_hops.push(record.hop.to_string());
    finding.because(spot, "waits for this");
    finding.help("fix this first; the record will then be checked");
}

fn dangling(record: &Document<Record>, library: &Library, guess: Option<&str>, findings: &mut Findings) {
    let message = format!("the network has no hop `{}`", record.hop);
    let finding = findings.report(&DANGLING, at!(record.hop), message, "unresolved reference");
    finding.help(match guess {
        Some(guess) => format!("{} The record will be checked once this is resolved", did_you_mean(guess)),
        None => format!("there are: {}", few(library.hops.ids())),
    });
}

/// A run of a record must be a run of the hop.
fn unknown_ports(record: &Document<Record>, hop: &ResolvedHop<'_>, library: &Library, findings: &mut Findings) {
    let known: Vec<&str> = hop.ends[record.end].runs.iter().map(|run| &*run.port.id).collect();
    for (i, run) in record.runs.iter().enumerate() {
        let place = at!(record.runs[i].port);
        if known.contains(&&*run.port) || library.holes.at(&place).is_some() {
            continue;
        }
        let message = format!("end {} of hop `{}` has no run to port `{}`", record.end.letter(), record.hop, run.port);
        let finding = findings.report(&DANGLING, place, message, "unresolved reference");
        finding.hop = Some(record.hop.to_string());
        finding.help(match nearest(&run.port, known.iter().copied()) {
            Some(guess) => did_you_mean(guess),
            None => format!("there are: {}", few(&known)),
        });
    }
}
