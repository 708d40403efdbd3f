//! Proposals for machines.

use serde_json::{Value, json as value};

use super::added::Added;
use super::change::Change;
use super::outcome::{Outcome, Proposal};
use super::verdict::Found;
use crate::fix::patch;

/// An outcome, form version 1. What there is nothing of is left out.
#[must_use]
pub fn json(outcome: &Outcome) -> String {
    let mut whole = value!({
        "format_version": 1,
        "hop": outcome.hop,
        "failing": list(&outcome.failing),
        "staying": list(&outcome.staying),
        "tried": outcome.tried,
        "unwritten": outcome.unwritten,
        "trials": outcome.budget,
        "ran_out": outcome.ran_out,
        "proposals": outcome.proposals.iter().map(proposal).collect::<Vec<_>>(),
    });
    if let Some(number) = &outcome.licence {
        whole["licence"] = number.as_str().into();
    }
    if let Some(nearest) = &outcome.nearest {
        whole["nearest"] = value!({ "changes": changes(&nearest.changes), "left": list(&nearest.left) });
    }
    let mut text = serde_json::to_string_pretty(&whole).unwrap_or_default();
    text.push('\n');
    text
}

fn proposal(proposal: &Proposal) -> Value {
    let then = proposal.then.iter().map(|then| {
        let mut one = value!({ "quantity": then.name, "then": then.after });
        if let Some(limit) = &then.limit {
            one["limit"] = limit.as_str().into();
        }
        if let Some(before) = &then.before {
            one["now"] = before.as_str().into();
        }
        one
    });
    let mut all = value!({
        "changes": changes(&proposal.changes),
        "then": then.collect::<Vec<_>>(),
        "also": list(&proposal.told),
        "patch": proposal.files.iter().map(patch).collect::<String>(),
    });
    if let Added::Known(sums) = &proposal.added {
        let costs = sums.iter().map(|(currency, amount)| value!({ "amount": amount, "currency": currency }));
        all["added_cost"] = costs.collect();
    }
    all
}

fn changes(changes: &[Change]) -> Value {
    let one = |change: &Change| {
        let pieces = change.pieces.iter().map(|piece| {
            let mut one = value!({ "what": bare(&piece.what), "from": bare(&piece.from), "to": bare(&piece.to) });
            if let Some(end) = piece.end {
                one["end"] = end.letter().into();
            }
            one
        });
        value!({ "kind": change.lever.word(), "words": change.words(), "parts": pieces.collect::<Vec<_>>() })
    };
    changes.iter().map(one).collect()
}

/// Without the marks that set names apart in a sentence.
fn bare(words: &str) -> String {
    words.replace('`', "")
}

fn list(found: &[Found]) -> Value {
    let one = |found: &Found| {
        let mut one = value!({
            "rule": found.rule.name,
            "severity": found.severity.word(),
            "message": found.message,
        });
        if let Some(hop) = &found.hop {
            one["hop"] = hop.as_str().into();
        }
        if let Some(end) = found.end {
            one["end"] = end.letter().into();
        }
        one
    };
    found.iter().map(one).collect()
}
