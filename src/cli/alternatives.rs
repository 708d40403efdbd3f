//! `alternatives`: what would make a hop pass, and writing it.

use super::args::{Alternatives, AlternativesFormat};
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::alternatives::{Asked, Outcome, json, seek, text};
use crate::door::write::mend;
use crate::finding::rule::Severity;
use crate::network::{Library, Scope};
use crate::text::nearest::{did_you_mean, nearest};
use crate::text::plain::Form;
use crate::verdict::Read;

pub(super) fn run(args: &Alternatives) -> Result<Exit, Stop> {
    present(&args.network)?;
    let scope = scope(std::slice::from_ref(&args.network), &args.brought)?.on(args.today);
    let read = Read::of(&scope);
    let write = args.write.map(usize::from);
    let asked = Asked {
        hop: args.hop.clone(),
        most: usize::from(args.most).max(write.unwrap_or_default()),
        budget: usize::try_from(args.trials).unwrap_or(usize::MAX),
        fail_on: Severity::from(args.fail_on),
    };
    one_network(args, &read)?;
    let Some(outcome) = seek(&read, &asked) else { return Err(unknown(args, &read)) };
    match args.format {
        AlternativesFormat::Text => say::out(&text(&outcome))?,
        AlternativesFormat::Json => say::out_as(&json(&outcome), Form::Json)?,
    }
    if let Some(number) = write {
        write_down(&scope, &outcome, number)?;
    }
    let nothing = outcome.failing.is_empty() && outcome.staying.is_empty();
    let found = !outcome.proposals.is_empty() && outcome.staying.is_empty();
    Ok(if nothing || found { Exit::Clean } else { Exit::Findings })
}

/// Stops where several networks have a hop of this id: which one is meant is not ours to guess.
fn one_network(args: &Alternatives, read: &Read) -> Result<(), Stop> {
    let has = |library: &&Library| library.hops.ids().contains(&args.hop);
    let folders: Vec<String> = read.libraries().iter().filter(has).map(|library| say::shown(&library.folder)).collect();
    match folders.len() {
        0 | 1 => Ok(()),
        count => {
            let (hop, folders) = (&args.hop, folders.join(", "));
            Err(Stop::Unknown(format!("{count} networks have a hop `{hop}`: name one with `--network` ({folders})")))
        }
    }
}

/// Why there is nothing to look at: no such hop, or one that cannot be judged.
fn unknown(args: &Alternatives, read: &Read) -> Stop {
    let (open, hop, folder) = (read.open(), &args.hop, args.network.display());
    let ids = open.hop_ids();
    let known = || ids.iter().map(|[_, hop]| hop.as_str());
    if known().any(|id| id == hop) {
        return Stop::Unknown(format!("hop `{hop}` cannot be evaluated in {folder} (`check` says why)"));
    }
    let guess = nearest(hop, known());
    let hint = guess.map(|guess| format!("; {}", did_you_mean(guess))).unwrap_or_default();
    Stop::Unknown(format!("there is no hop `{hop}` in {folder}{hint}"))
}

/// Writes a proposal where its files lie.
fn write_down(scope: &Scope, outcome: &Outcome, number: usize) -> Result<(), Stop> {
    let Some(proposal) = outcome.proposals.get(number - 1) else {
        let count = outcome.proposals.len();
        let there = match count {
            0 => "there is none".to_owned(),
            1 => "there is only one".to_owned(),
            _ => format!("there are only {count}"),
        };
        return Err(Stop::Unknown(format!("no proposal {number} to write: {there}")));
    };
    for file in &proposal.files {
        let root = scope.folders().into_iter().find(|root| file.origin.starts_with(root)).unwrap_or_default();
        let written = mend(&root, &file.origin, &file.before, &file.after);
        written.map_err(|error| Stop::Write { path: file.path.clone(), error })?;
        say::aside(&format!("proposal {number} written to {}", say::shown(file.path.as_ref())));
    }
    Ok(())
}
