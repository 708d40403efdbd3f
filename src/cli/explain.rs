//! `explain`: the manuals, from the same doc comments the developers read.

use std::fmt::Write as _;

use super::args::Explain;
use super::explain_key::key;
use super::{Exit, Stop, say};
use crate::finding::rule::{Bound, Rule};
use crate::rules;
use crate::text::nearest::{did_you_mean, nearest};

pub(super) fn run(args: &Explain) -> Result<Exit, Stop> {
    let Some(name) = &args.rule else {
        say::out(&list(None))?;
        return Ok(Exit::Clean);
    };
    let name = &plain(name);
    if let Some(rule) = rules::every().find(|rule| rule.name == name) {
        return say::out(&manual(rule)).map(|()| Exit::Clean);
    }
    if rules::every().any(|rule| rule.family == name) {
        return say::out(&list(Some(name))).map(|()| Exit::Clean);
    }
    match key(name) {
        Some(Ok(text)) => return say::out(&text).map(|()| Exit::Clean),
        Some(Err(said)) => return Err(Stop::Unknown(said)),
        None => {}
    }
    let guess = nearest(name, rules::every().map(|rule| rule.name));
    let hint = guess.map_or("`explain` without a name lists them".into(), did_you_mean);
    Err(Stop::Unknown(format!("there is no rule `{name}`; {hint}")))
}

/// The name in what `check` prints: `error[path-obstructed]`.
fn plain(name: &str) -> String {
    let inside = name.split_once('[').and_then(|(_, rest)| rest.split_once(']'));
    inside.map_or(name, |(inside, _)| inside).trim().to_owned()
}

/// The rules, all of them or those of a family.
fn list(of: Option<&str>) -> String {
    let mut out = String::new();
    let mut family = "";
    let wanted = || rules::every().filter(|rule| of.is_none_or(|family| rule.family == family));
    let width = wanted().map(|rule| rule.name.len()).max().unwrap_or_default();
    for rule in wanted() {
        if rule.family != family {
            family = rule.family;
            let gap = if out.is_empty() { "" } else { "\n" };
            let _ = writeln!(out, "{gap}{family}");
        }
        let _ = writeln!(out, "  {:width$}  {:7}  {}", rule.name, rule.severity.word(), rule.summary());
    }
    out
}

fn manual(rule: &Rule) -> String {
    let text: Vec<&str> = rule.manual.lines().map(|line| line.strip_prefix(' ').unwrap_or(line)).collect();
    let waived = match rule.bound {
        Bound::Waivable(why) => format!("A waiver may accept it, and a network may lower it or switch it off: {why}."),
        Bound::NeverOff(why) => format!("A waiver may accept it; it cannot be lowered or switched off: {why}."),
        Bound::NeverWaived(why) => {
            format!("Cannot be waived, lowered or switched off, and no baseline takes it in: {why}.")
        }
    };
    format!(
        "{} ({}, {})\n\n{}\n\n{waived}\n\nSince version {}.\n",
        rule.name,
        rule.family,
        rule.severity,
        text.join("\n").trim(),
        rule.since
    )
}
