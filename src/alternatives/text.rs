//! Proposals as people read them.

use std::fmt::Write as _;

use super::added::Added;
use super::outcome::{MOST_CHANGES, Nearest, Outcome, Proposal, Then};
use super::verdict::Found;
use crate::text::paragraph::paragraph;

/// Columns of a line.
const WIDTH: usize = 100;

/// An outcome in words.
#[must_use]
pub fn text(outcome: &Outcome) -> String {
    let mut out = String::new();
    let hop = &outcome.hop;
    if outcome.failing.is_empty() && outcome.staying.is_empty() {
        return format!("hop `{hop}` passes: nothing needs to change\n");
    }
    if !outcome.failing.is_empty() {
        let count = outcome.failing.len();
        line(&mut out, 0, &format!("hop `{hop}` fails with {}:", counted(count, "finding")));
        outcome.failing.iter().for_each(|found| line(&mut out, 2, &told(found, hop)));
    }
    if !outcome.staying.is_empty() {
        line(&mut out, 0, "no change of settings, equipment or heights can clear this; fix it by hand:");
        outcome.staying.iter().for_each(|found| line(&mut out, 2, &told(found, hop)));
    }
    if let Some(number) = outcome.licence.as_ref().filter(|_| !outcome.failing.is_empty()) {
        line(&mut out, 0, &format!("channel and bandwidth are kept: they are licensed ({number})"));
    }
    for (number, proposal) in outcome.proposals.iter().enumerate() {
        of_proposal(&mut out, number + 1, proposal, hop);
    }
    if !outcome.failing.is_empty() {
        out.push('\n');
        closing(&mut out, outcome);
    }
    out
}

fn of_proposal(out: &mut String, number: usize, proposal: &Proposal, hop: &str) {
    let changes = counted(proposal.changes.len(), "change");
    let cost = in_words(&proposal.added).map(|cost| format!(", {cost}")).unwrap_or_default();
    let _ = writeln!(out, "\n{number}. {changes}{cost}");
    proposal.changes.iter().for_each(|change| line(out, 3, &change.words()));
    for Then { name, limit, before, after } in &proposal.then {
        let limit = limit.as_ref().map(|limit| format!(" ({limit})")).unwrap_or_default();
        let before = before.as_ref().map(|before| format!(", now {before}")).unwrap_or_default();
        line(out, 3, &format!("then {name}: {after}{limit}{before}"));
    }
    proposal.told.iter().for_each(|found| line(out, 3, &format!("also {}", told(found, hop))));
}

/// How many trials there were, and what to do next.
fn closing(out: &mut String, outcome: &Outcome) {
    let (tried, hop) = (outcome.tried, &outcome.hop);
    match (outcome.proposals.len(), &outcome.nearest) {
        (0, nearest) => {
            let most = format!("up to {MOST_CHANGES} changes at a time");
            line(out, 0, &format!("none of {tried} tried passes ({most})"));
            match nearest {
                Some(nearest) => of_nearest(out, nearest, hop),
                None => line(out, 0, "nothing that was tried comes closer"),
            }
        }
        (count, _) => {
            line(out, 0, &format!("{tried} combinations tried, each checked against every rule; {count} proposed"));
            line(out, 0, &format!("`hopwright alternatives {hop} --write 1` writes the first"));
        }
    }
    if outcome.unwritten > 0 {
        let count = counted(outcome.unwritten, "change");
        let why = "values that YAML shares through an anchor cannot be changed alone; write them out first";
        line(out, 0, &format!("{count} could not be tried: {why}"));
    }
    if outcome.ran_out {
        let (budget, more) = (outcome.budget, outcome.budget.saturating_mul(2));
        line(out, 0, &format!("the search stopped at its limit of {budget} trials: `--trials {more}` allows more"));
    }
}

fn of_nearest(out: &mut String, nearest: &Nearest, hop: &str) {
    line(out, 0, "nearest:");
    nearest.changes.iter().for_each(|change| line(out, 3, &change.words()));
    nearest.left.iter().for_each(|found| line(out, 3, &format!("still {}", told(found, hop))));
}

/// A finding on one line: of another hop with its name.
fn told(found: &Found, hop: &str) -> String {
    let other = found.hop.as_ref().filter(|other| *other != hop);
    let other = other.map(|other| format!("hop `{other}`: ")).unwrap_or_default();
    format!("{}[{}]: {other}{}", found.severity, found.rule.name, found.message)
}

/// What a proposal adds to the cost; nothing where it adds none, or nobody states any.
pub(super) fn in_words(added: &Added) -> Option<String> {
    let Added::Known(sums) = added else { return None };
    let of_one = |(currency, amount): (&String, &f64)| {
        let way = if *amount < 0.0 { "less" } else { "more" };
        let amount = (amount.abs() * 100.0).round() / 100.0;
        format!("{amount} {currency} {way}")
    };
    let words: Vec<String> = sums.iter().map(of_one).collect();
    (!words.is_empty()).then(|| words.join(", "))
}

fn counted(count: usize, what: &str) -> String {
    if count == 1 { format!("1 {what}") } else { format!("{count} {what}s") }
}

/// A paragraph in the columns there are, a number with its unit.
fn line(out: &mut String, indent: usize, text: &str) {
    paragraph(out, WIDTH, indent, text, |word| word.chars().count() <= 6);
}
