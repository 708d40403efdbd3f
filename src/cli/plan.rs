//! `plan`: the frequency plan of a network, and a proposal for a better one.

use std::collections::BTreeMap;

use super::args::{Plan, PlanFormat};
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::finding::Spot;
use crate::fix::{Mended, patch, rewritten};
use crate::network::Scope;
use crate::plan::{self, Line, Proposal, Standing, drawn, json, lines, propose, standing_in_words, table};
use crate::text::nearest::{did_you_mean, nearest};
use crate::text::plain::{Form, inert};
use crate::verdict::{Open, Read, evaluate};

pub(super) fn run(args: &Plan) -> Result<Exit, Stop> {
    present(&args.network)?;
    let scope = scope(std::slice::from_ref(&args.network), &args.brought)?;
    let read = Read::of(&scope);
    let open = read.open();
    if open.hops().next().is_none() {
        say::aside(&format!("no hop to plan in {} (`check` says why)", say::shown(&args.network)));
        return Ok(Exit::Nothing);
    }
    if args.assign {
        all_known(args, &open)?;
        return assign(args, &scope, &read, &open);
    }
    let networks = listed(&open);
    if let Some(path) = &args.figure {
        let [one] = networks.as_slice() else {
            return Err(Stop::Unknown("a figure shows one network: name its folder with `--network`".into()));
        };
        let drawing = drawn(one).unwrap_or_default();
        say::save(path, &drawing, Form::Xml)?;
    }
    match args.format {
        PlanFormat::Table => say::out(&networks.iter().map(|lines| table(lines)).collect::<Vec<_>>().join("\n"))?,
        PlanFormat::Json => say::out_as(&json(&networks), Form::Json)?,
    }
    Ok(Exit::Clean)
}

/// The plan of each network that has hops.
fn listed(open: &Open<'_>) -> Vec<Vec<Line>> {
    open.airs().map(|(hops, air)| lines(air, hops)).filter(|lines| !lines.is_empty()).collect()
}

/// Stops at a hop on the command line that there is none of.
fn all_known(args: &Plan, open: &Open<'_>) -> Result<(), Stop> {
    let known = || open.hops().map(|hop| &*hop.hop.id.0);
    let Some(unknown) = args.hops.iter().find(|id| !known().any(|hop| hop == **id)) else { return Ok(()) };
    let guess = nearest(unknown, known());
    let hint = guess.map(|guess| format!("; {}", did_you_mean(guess))).unwrap_or_default();
    let known = format!("there is no hop `{unknown}` that can be planned in {}", args.network.display());
    Err(Stop::Unknown(format!("{known}{hint} (`check` says why)")))
}

/// Looks for a better plan and prints it as a patch, with what it would come to.
fn assign(args: &Plan, scope: &Scope, read: &Read, open: &Open<'_>) -> Result<Exit, Stop> {
    let mut all = Proposal::default();
    for (hops, air) in open.airs() {
        let proposal = propose(air, hops, &args.hops).map_err(|refusal| Stop::Unknown(refusal.0))?;
        all.add(proposal);
    }
    say_kept(&all);
    let before = Standing::of(&listed(open).concat());
    say::aside(&format!("before: {}", standing_in_words(&before)));
    let edits: Vec<(Spot, String)> = all.moves.iter().flat_map(|hop| hop.edits.iter().cloned()).collect();
    let (files, left) = rewritten(read.files(), &edits);
    if !left.is_empty() {
        say::aside(&format!(
            "{} values stand where they cannot be replaced by themselves, such as in an alias: write them out first",
            left.len()
        ));
        return Ok(Exit::Failed);
    }
    let patched = with(scope, &files);
    let after = Standing::of(&listed(&Read::of(&patched).open()).concat());
    if !after.is_better_than(&before) {
        let shown = if all.proven { "shown: there is nothing better" } else { "nothing better was found" };
        say::aside(&format!("{shown} for the {} hops that were looked at", all.looked_at));
        return Ok(Exit::Clean);
    }
    say::aside(&format!("after:  {}", standing_in_words(&after)));
    say_moves(&all);
    say_new(scope, &patched);
    print(&files)?;
    Ok(Exit::Clean)
}

fn with(scope: &Scope, files: &[Mended]) -> Scope {
    let texts: Vec<_> = files.iter().map(|file| (file.origin.clone(), file.after.as_str().into())).collect();
    scope.clone().with_texts(&texts)
}

fn say_kept(proposal: &Proposal) {
    let count = proposal.licensed.len();
    if count > 0 {
        let first = proposal.licensed.first().map(String::as_str).unwrap_or_default();
        let others = if count == 1 { String::new() } else { format!(" and {} more", count - 1) };
        say::aside(&format!(
            "`{first}`{others} keep what they have, for they are licensed or registered: name them to change it"
        ));
    }
    for hop in &proposal.stuck {
        say::aside(&format!("`{hop}` cannot be set to anything else that is known"));
    }
}

fn say_moves(proposal: &Proposal) {
    let (count, of) = (proposal.moves.len(), proposal.looked_at);
    let certain = if proposal.proven { "nothing is better, shown" } else { "the best that was found" };
    say::aside(&format!("{count} of {of} hops change; {certain}"));
    for hop in &proposal.moves {
        say::aside(&format!("  {}", plan::in_words(hop)));
    }
}

/// Says what `check` would find that it does not find today.
fn say_new(scope: &Scope, patched: &Scope) {
    let found = |scope: &Scope| {
        let mut found: BTreeMap<(String, String), i64> = BTreeMap::new();
        for finding in evaluate(scope, |_, _| ()).findings {
            *found.entry((finding.rule.name.to_owned(), finding.hop.clone().unwrap_or_default())).or_default() += 1;
        }
        found
    };
    let before = found(scope);
    for ((rule, hop), count) in found(patched) {
        if count > before.get(&(rule.clone(), hop.clone())).copied().unwrap_or_default() {
            say::aside(&format!("with it `check` finds {rule} at `{hop}`, which it does not today"));
        }
    }
}

fn print(files: &[Mended]) -> Result<(), Stop> {
    let patch: String = files.iter().map(patch).collect();
    say::out(&patch)?;
    if inert(&patch, Form::People) != patch {
        say::aside("the patch holds characters or commands that are spelled out above: it is to be read, not applied");
    }
    Ok(())
}
