//! A comparison for a terminal, in the columns it has.

use std::fmt::Write as _;

use super::change::{Change, FindingChange, HopChange};
use super::groups::Group;
use super::{Comparison, gate_words, words};
use crate::text::paragraph::paragraph;

/// How many of the other lines of a hop are listed unless all are asked for.
const FEW: usize = 6;

/// How many changes to the gate are listed unless all are asked for.
const GATE: usize = 20;

/// What is done to the gate first, then the verdict and every hop that changes, worst first. With `all`, every line that changes.
#[must_use]
pub fn text(comparison: &Comparison, width: usize, all: bool) -> String {
    let mut out = String::new();
    let mut put = |indent: usize, text: &str| wrapped(&mut out, width, indent, text);
    if !comparison.gate.is_empty() {
        put(0, &gate_words::head(&comparison.gate));
        let shown = if all { comparison.gate.len() } else { comparison.gate.len().min(GATE) };
        comparison.gate[..shown].iter().for_each(|change| put(2, &gate_words::line(change)));
        if comparison.gate.len() > shown {
            put(2, &format!("and {} more (`--all` lists them)", comparison.gate.len() - shown));
        }
    }
    put(0, &comparison.summary.verdict());
    comparison.notes.iter().for_each(|note| put(0, note));
    if comparison.is_empty() {
        return out;
    }
    let [old, new] = &comparison.names;
    put(0, &format!("from {old} to {new}"));
    if let Some(edited) = words::edited(comparison) {
        put(0, &edited);
    }
    for finding in &comparison.findings {
        put(0, &finding_line(finding));
    }
    if all {
        for hop in &comparison.hops {
            out.push('\n');
            of_hop(&mut out, width, hop, all);
        }
        return out;
    }
    if comparison.hops.len() > ALONE {
        named(&mut out, width, comparison);
    }
    for group in &comparison.groups {
        out.push('\n');
        of_group(&mut out, width, comparison, group);
    }
    let mut left = 0;
    let mut rows = String::new();
    for hop in comparison.told_alone() {
        let mut one = String::from("\n");
        of_hop(&mut one, width, hop, all);
        let used = out.lines().count();
        if used + one.lines().count() + rows.lines().count() <= DETAILED {
            out.push_str(&one);
        } else if used + rows.lines().count() < MOST {
            wrapped(&mut rows, width, 0, &words::row(hop));
        } else {
            left += 1;
        }
    }
    if !rows.is_empty() {
        let _ = write!(out, "\n{rows}");
    }
    if left > 0 {
        let _ = writeln!(out, "and {left} more hops change (`--all` tells each)");
    }
    out
}

/// Up to so many hops are told one by one without a list of names before them.
const ALONE: usize = 10;

/// Lines with details, and with a line a hop after them, unless all are asked for: plans that scroll are grepped, not read.
const DETAILED: usize = 80;
const MOST: usize = 110;

/// Every hop that fails, by name.
fn named(out: &mut String, width: usize, comparison: &Comparison) {
    let mut names: Vec<&str> = comparison.failing().map(|hop| hop.hop.as_str()).collect();
    if names.is_empty() {
        return;
    }
    // Names of ten lines: a reader who wants more of them asks for all.
    let room = width * 10;
    let mut used = 0;
    let fitting = names.iter().take_while(|name| {
        used += name.chars().count() + 2;
        used <= room
    });
    let fitting = fitting.count();
    let more = names.len() - fitting;
    names.truncate(fitting);
    let more = if more > 0 { format!(" and {more} more (`--all` names them)") } else { String::new() };
    wrapped(out, width, 0, &format!("failing or not judged now: {}{more}", names.join(", ")));
}

/// Hops that change for one reason.
fn of_group(out: &mut String, width: usize, comparison: &Comparison, group: &Group) {
    let mut put = |indent: usize, text: &str| wrapped(out, width, indent, text);
    put(0, &words::reason(group));
    put(2, &words::of_group(group));
    for range in &group.ranges {
        let of = if range.hops == group.hops.len() { String::new() } else { format!(" ({} hops)", range.hops) };
        let least = words::least_of(range).map(|least| format!("; least in hand {least}")).unwrap_or_default();
        put(2, &format!("{}: {}{least}{of}", range.name, words::change_of(range)));
    }
    let worst: Vec<&str> = group.hops.iter().take(3).map(|number| comparison.hops[*number].hop.as_str()).collect();
    put(2, &format!("worst: {}; the first is told below", worst.join(", ")));
}

fn of_hop(out: &mut String, width: usize, hop: &HopChange, all: bool) {
    let mut put = |indent: usize, text: &str| wrapped(out, width, indent, text);
    put(0, &format!("{}: {}", hop.hop, words::outcome(hop)));
    if !hop.context.is_empty() {
        put(2, &hop.context);
    }
    for finding in hop.findings.iter().filter(|finding| finding.is_told()) {
        put(2, &finding_line(finding));
    }
    if let Some(same) = words::as_before(hop) {
        put(2, &same);
    }
    for change in &hop.quantities {
        put(2, &format!("{}{}", change.name, marks(change)));
        let [before, after] = words::both(&change.values, change.unit);
        let difference = words::difference(change).map(|by| format!(" ({by})")).unwrap_or_default();
        let limit = words::limit(change).map(|limit| format!(", limit {limit}")).unwrap_or_default();
        let values = if before == after { after } else { format!("{before} → {after}{difference}") };
        put(6, &format!("{values}{limit}"));
        if let Some(left) = left(change) {
            put(6, &left);
        }
    }
    let shown = if all { hop.others.len() } else { hop.others.len().min(FEW) };
    for change in &hop.others[..shown] {
        let [before, after] = words::both(&change.values, change.unit);
        put(2, &format!("{}: {before} → {after}{}", change.name, marks(change)));
    }
    match hop.others.len() - shown {
        0 => {}
        1 => put(2, "and 1 line more (`--all` lists it)"),
        more => put(2, &format!("and {more} lines more (`--all` lists them)")),
    }
    if words::lacks_cause(hop) {
        put(2, &format!("[?] {}", words::NO_FIELD));
    }
    for (number, cause) in hop.causes.iter().enumerate() {
        put(2, &format!("[{}] {} {}", number + 1, words::place(cause), words::edit(cause)));
    }
}

/// `in hand 9.8 dB → -5.2 dB, NOW NOT MET`.
fn left(change: &Change) -> Option<String> {
    let verdict = words::verdict(change);
    let Some(margins) = &change.margins else { return verdict.map(str::to_owned) };
    let [before, after] = words::both(margins, change.unit);
    let verdict = verdict.map(|verdict| format!(", {verdict}")).unwrap_or_default();
    Some(if before == after {
        format!("in hand {after}{verdict}")
    } else {
        format!("in hand {before} → {after}{verdict}")
    })
}

fn finding_line(finding: &FindingChange) -> String {
    let FindingChange { status, rule, severity, message, place, .. } = finding;
    let place = place.as_ref().map(|(path, line)| format!(" ({path}:{line})")).unwrap_or_default();
    format!("{} {severity}[{rule}] {message}{place}{}", words::status(*status), words::aside(finding))
}

/// ` [1] [2]`.
fn marks(change: &Change) -> String {
    if change.causes.is_empty() {
        return " [?]".into();
    }
    change.causes.iter().fold(String::new(), |mut marks, number| {
        let _ = write!(marks, " [{}]", number + 1);
        marks
    })
}

/// A paragraph in the columns there are, a number with its unit.
fn wrapped(out: &mut String, width: usize, indent: usize, text: &str) {
    paragraph(out, width, indent, text, |word| !word.starts_with(['→', '[']));
}
