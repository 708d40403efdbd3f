//! A comparison as a comment on a change, for a forge to show.
//!
//! It opens with what the change does to the gate, or with the verdict, for that is what mail and chat preview, and ends with a hidden mark by which a script finds
//! the comment again and replaces it. In between stands as much as fits, worst first; what does not fit is counted. Text
//! of a spec is escaped: it can break no table, ping nobody and open no tag.

use std::fmt::Write as _;

use super::cause::Cause;
use super::change::{Change, FindingChange, HopChange};
use super::groups::Group;
use super::{Comparison, gate_words, words};

/// Most characters of a comment: forges refuse longer ones, the largest of them above 65,536.
pub const BUDGET: usize = 60_000;

/// How a comment is made.
#[derive(Debug, Clone)]
pub struct Comment {
    /// Most characters.
    pub budget: usize,
    /// What the mark is made with, so that several networks can have a comment each.
    pub key: String,
    /// Where everything is, if not all fits: a file or a command.
    pub whole: String,
    /// What stands before a path to make a permanent link of it: the commit is part of it.
    pub link_base: Option<String>,
}

/// Characters kept for the last lines: how much was left out, where it is, the mark.
const TAIL: usize = 400;

/// How many changes to the gate are listed.
const GATE: usize = 20;

/// How many of the other lines of a hop are listed.
const LINES: usize = 40;

/// The comment.
#[must_use]
pub fn markdown(comparison: &Comparison, comment: &Comment) -> String {
    let mark = format!("<!-- hopwright:compare:{} -->\n", comment.key);
    let mut out = gate(comparison, comment.budget / 3, &comment.whole);
    let _ = writeln!(out, "**{}**", escaped(&comparison.summary.verdict()));
    for note in &comparison.notes {
        let _ = write!(out, "\n{}.\n", escaped(&sentence(note)));
    }
    if comparison.is_empty() {
        return format!("{out}\n{mark}");
    }
    let [old, new] = &comparison.names;
    let _ = write!(out, "\nFrom {} to {}.", escaped(old), escaped(new));
    if let Some(edited) = words::edited(comparison) {
        let _ = write!(out, " {}.", escaped(&sentence(&edited)));
    }
    out.push('\n');
    let room = comment.budget.saturating_sub(mark.chars().count() + TAIL + comment.whole.chars().count());
    let mut used = out.chars().count();
    let mut fits = |part: &str| {
        let more = part.chars().count();
        let fits = used + more <= room;
        if fits {
            used += more;
        }
        fits
    };
    let mut left_out = 0;
    let findings: String = comparison.findings.iter().map(finding_item).collect();
    let mut parts = vec![(format!("\n{findings}"), comparison.findings.len())];
    if comparison.hops.len() > ALONE {
        parts.push((named(comparison, comment.budget / 3), 0));
    }
    parts.extend(comparison.groups.iter().map(|group| (of_group(comparison, group, comment), group.hops.len())));
    for (part, changes) in parts.iter().filter(|(part, _)| part.len() > 1) {
        if fits(part) {
            out.push_str(part);
        } else {
            left_out += changes;
        }
    }
    let alone: Vec<&HopChange> = comparison.told_alone().collect();
    let mut hops = alone.into_iter();
    let mut shortened = 0;
    for hop in hops.by_ref() {
        let (whole, short) = (section(hop, true, comment), section(hop, false, comment));
        if fits(&whole) {
            out.push_str(&whole);
        } else if fits(&short) {
            // The lines that no limit is set on are the least of it.
            out.push_str(&short);
            shortened += 1;
        } else {
            left_out += 1;
            break;
        }
    }
    left_out += hops.len();
    out.push_str(&lacking(left_out, shortened, &comment.whole));
    format!("{out}\n{mark}")
}

/// What did not fit, and where it is.
fn lacking(left_out: usize, shortened: usize, whole: &str) -> String {
    let mut told = Vec::new();
    if left_out > 0 {
        told.push(format!("{left_out} more {} left out", if left_out == 1 { "change is" } else { "changes are" }));
    }
    if shortened > 0 {
        told.push(format!("{shortened} shortened"));
    }
    if told.is_empty() {
        return String::new();
    }
    format!("\n{}, for want of room: {} has everything.\n", told.join(", "), escaped(whole))
}

/// Up to so many hops are told one by one without a list of names before them.
const ALONE: usize = 10;

/// Every hop that fails, by name, as far as there is room.
fn named(comparison: &Comparison, room: usize) -> String {
    let names: Vec<String> = comparison.failing().map(|hop| escaped(&hop.hop)).collect();
    let mut used = 0;
    let fitting = names.iter().take_while(|name| {
        used += name.chars().count() + 2;
        used <= room
    });
    let fitting = fitting.count();
    if names.is_empty() {
        return String::new();
    }
    let more = names.len() - fitting;
    let more = if more > 0 { format!(" and {more} more") } else { String::new() };
    format!("\nFailing or not judged now: {}{more}\n", names[..fitting].join(", "))
}

/// How many hops of a group are named.
const NAMED: usize = 100;

/// Hops that change for one reason.
fn of_group(comparison: &Comparison, group: &Group, comment: &Comment) -> String {
    let mut out = format!("\n### {}\n\n", escaped(&words::of_group(group)));
    for cause in &group.causes {
        let _ = writeln!(out, "- {} {}", linked(&words::place(cause), cause, comment), escaped(&words::edit(cause)));
    }
    if !group.ranges.is_empty() {
        out.push_str("\n| quantity | hops | change | least in hand |\n| --- | --- | --- | --- |\n");
    }
    for range in &group.ranges {
        let least = words::least_of(range).map_or_else(|| "—".into(), |least| escaped(&least));
        let (name, change) = (escaped(&range.name), escaped(&words::change_of(range)));
        let _ = writeln!(out, "| {name} | {} | {change} | {least} |", range.hops);
    }
    let names: Vec<String> =
        group.hops.iter().take(NAMED).map(|number| escaped(&comparison.hops[*number].hop)).collect();
    let more = group.hops.len() - names.len();
    let more = if more > 0 { format!(" and {more} more") } else { String::new() };
    let _ =
        write!(out, "\n<details><summary>which, worst first</summary>\n\n{}{more}\n\n</details>\n", names.join(", "));
    out
}

/// A place as a permanent link, where there is something to link to: never a place of the old side.
fn linked(text: &str, cause: &Cause, comment: &Comment) -> String {
    match &comment.link_base {
        Some(base) if !cause.gone => link(text, base, &cause.path, cause.line),
        _ => escaped(text),
    }
}

fn link(text: &str, base: &str, path: &str, line: usize) -> String {
    let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '/' | '.' | '-' | '_');
    let path = path.trim_start_matches("./");
    // What lies elsewhere on this machine is not where the address leads.
    if path.starts_with(['/', '.']) || !path.chars().all(plain) {
        return escaped(text);
    }
    format!("[{}]({}/{path}#L{line})", escaped(text), base.trim_end_matches('/'))
}

/// A clause with a capital.
fn sentence(clause: &str) -> String {
    let mut letters = clause.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// What is done to the gate, for the first lines; never left out, so it is bounded.
fn gate(comparison: &Comparison, room: usize, whole: &str) -> String {
    let list = &comparison.gate;
    if list.is_empty() {
        return String::new();
    }
    let mut out = format!("**{}**\n\n", escaped(&gate_words::head(list)));
    let mut shown = 0;
    for change in list.iter().take(GATE) {
        let line = format!("- {}\n", escaped(&gate_words::line(change)));
        if out.chars().count() + line.chars().count() > room {
            break;
        }
        out.push_str(&line);
        shown += 1;
    }
    if list.len() > shown {
        let _ = writeln!(out, "- and {} more: {} has everything", list.len() - shown, escaped(whole));
    }
    out.push('\n');
    out
}

/// One hop.
fn section(hop: &HopChange, lines: bool, comment: &Comment) -> String {
    let mut out = format!("\n### {}: {}\n", escaped(&hop.hop), escaped(&words::outcome(hop)));
    if !hop.context.is_empty() {
        let _ = write!(out, "\n{}\n", escaped(&hop.context));
    }
    let told: String = hop.findings.iter().filter(|finding| finding.is_told()).map(finding_item).collect();
    if !told.is_empty() {
        let _ = write!(out, "\n{told}");
    }
    if let Some(same) = words::as_before(hop) {
        let _ = write!(out, "\n{same}\n");
    }
    if !hop.quantities.is_empty() {
        out.push_str("\n| quantity | before → after | change | limit | in hand, before → after | cause |\n");
        out.push_str("| --- | --- | --- | --- | --- | --- |\n");
        hop.quantities.iter().for_each(|change| out.push_str(&row(change)));
    }
    if lines && !hop.others.is_empty() {
        let shown = hop.others.len().min(LINES);
        let noun = if hop.others.len() == 1 { "line" } else { "lines" };
        let _ = write!(out, "\n<details><summary>{} other {noun}</summary>\n\n", hop.others.len());
        out.push_str("| line | before → after | cause |\n| --- | --- | --- |\n");
        for change in &hop.others[..shown] {
            let _ = writeln!(out, "| {} | {} | {} |", escaped(&change.name), values(change), marks(change));
        }
        if hop.others.len() > shown {
            let _ = writeln!(out, "| and {} more | | |", hop.others.len() - shown);
        }
        out.push_str("\n</details>\n");
    }
    if words::lacks_cause(hop) {
        let _ = write!(out, "\n?: {}\n", words::NO_FIELD);
    }
    if !hop.causes.is_empty() {
        out.push('\n');
        for (number, cause) in hop.causes.iter().enumerate() {
            let (place, edit) = (linked(&words::place(cause), cause, comment), escaped(&words::edit(cause)));
            let _ = writeln!(out, "{}. {place} {edit}", number + 1);
        }
    }
    out
}

fn row(change: &Change) -> String {
    let or_dash = |text: Option<String>| text.map_or_else(|| "—".to_owned(), |text| escaped(&text));
    let mut left = match &change.margins {
        Some(margins) => {
            let [before, after] = words::both(margins, change.unit).map(|text| escaped(&text));
            if before == after { after } else { format!("{before} → {after}") }
        }
        None => String::new(),
    };
    if let Some(verdict) = words::verdict(change) {
        let gap = if left.is_empty() { "" } else { " " };
        let _ = write!(left, "{gap}**{verdict}**");
    }
    format!(
        "| {} | {} | {} | {} | {} | {} |\n",
        escaped(&change.name),
        values(change),
        or_dash(words::difference(change)),
        or_dash(words::limit(change)),
        if left.is_empty() { "—" } else { &left },
        marks(change),
    )
}

fn values(change: &Change) -> String {
    let [before, after] = words::both(&change.values, change.unit).map(|text| escaped(&text));
    if before == after { after } else { format!("{before} → {after}") }
}

/// Numbers into the list of causes under the hop.
fn marks(change: &Change) -> String {
    if change.causes.is_empty() {
        return "?".into();
    }
    change.causes.iter().map(|number| (number + 1).to_string()).collect::<Vec<_>>().join(", ")
}

fn finding_item(finding: &FindingChange) -> String {
    let FindingChange { status, rule, severity, message, place, .. } = finding;
    let place = place.as_ref().map(|(path, line)| format!(" ({path}:{line})")).unwrap_or_default();
    let (status, aside) = (words::status(*status), words::aside(finding));
    format!("- {status} {severity} **{rule}**: {}{}{aside}\n", escaped(message), escaped(&place))
}

/// Text that Markdown takes as it stands: on one line, without markup, mentions or references to other changes.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text.chars().peekable();
    while let Some(c) = rest.next() {
        match c {
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '&' => out.push_str("&amp;"),
            // A joiner of no width keeps the sign and takes away what it would call.
            '@' => out.push_str("@&#8203;"),
            '#' if rest.peek().is_some_and(char::is_ascii_digit) => out.push_str("\\#&#8203;"),
            ':' if rest.peek() == Some(&'/') => out.push_str(":&#8203;"),
            '\\' | '`' | '*' | '_' | '[' | ']' | '|' | '~' | '#' | '!' => out.extend(['\\', c]),
            c if c.is_control() => out.push(' '),
            '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}' => out.push('?'),
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{escaped, link};

    #[test]
    fn a_place_is_linked_where_the_address_leads() {
        let linked = |path: &str| link(&format!("{path}:5"), "https://forge.example/net/blob/1a2b/", path, 5);
        assert_eq!(linked("dish.yaml"), "[dish.yaml:5](https://forge.example/net/blob/1a2b/dish.yaml#L5)");
        for elsewhere in ["/srv/dish.yaml", "../dish.yaml", "a b.yaml", "x](y).yaml"] {
            assert_eq!(linked(elsewhere), escaped(&format!("{elsewhere}:5")));
        }
    }

    #[test]
    fn text_of_a_spec_is_only_text() {
        assert_eq!(
            escaped("a|b `c` <img> @crew #7\n*x*"),
            "a\\|b \\`c\\` &lt;img&gt; @&#8203;crew \\#&#8203;7 \\*x\\*"
        );
        assert_eq!(escaped("[x](https://y)"), "\\[x\\](https:&#8203;//y)");
    }
}
