//! The list of what a change does to the gate, in the words that text and Markdown share.

use super::gate::{Effect, GateChange};

/// Hops that a line names before it counts the rest.
const NAMED: usize = 4;

/// The longest text that a line repeats in full, in characters.
const LONGEST: usize = 80;

/// `this change weakens the gate: 2 weaker, 1 stricter`.
pub(super) fn head(list: &[GateChange]) -> String {
    let count = |effect| list.iter().filter(|change| change.effect == effect).count();
    let parts = [(Effect::Weaker, "weaker"), (Effect::Other, "changed"), (Effect::Stricter, "stricter")];
    let told: Vec<String> = parts
        .iter()
        .map(|(effect, word)| (count(*effect), word))
        .filter(|(count, _)| *count > 0)
        .map(|(count, word)| format!("{count} {word}"))
        .collect();
    let verb = match list {
        list if count(Effect::Weaker) > 0 && !list.is_empty() => "weakens",
        _ if count(Effect::Other) > 0 => "may weaken",
        _ => "tightens",
    };
    format!("this change {verb} the gate: {}", told.join(", "))
}

/// `weaker: network ridge, rules.tilt-out-of-reach: not written → off (network.yaml:20); hops: east, west`.
pub(super) fn line(change: &GateChange) -> String {
    let GateChange { document, field, before, after, place, gone, hops, .. } = change;
    let effect = match change.effect {
        Effect::Weaker => "weaker",
        Effect::Other => "changed",
        Effect::Stricter => "stricter",
    };
    let text = |side: &Option<String>| side.as_deref().map_or_else(|| "nothing".into(), short);
    let was = if *gone { ", before" } else { "" };
    let place = place.as_ref().map(|(path, line)| format!(" ({path}:{line}{was})")).unwrap_or_default();
    let named = hops.iter().take(NAMED).cloned().collect::<Vec<_>>().join(", ");
    let more = hops.len().saturating_sub(NAMED);
    let hops = match (hops.len(), more) {
        (0, _) => String::new(),
        (1, _) => format!("; hop {named}"),
        (_, 0) => format!("; hops {named}"),
        _ => format!("; hops {named} and {more} more"),
    };
    let (document, field) = (short(document), short(field));
    format!("{effect}: {document}, {field}: {} → {}{place}{hops}", text(before), text(after))
}

/// No text of a spec fills a page.
fn short(text: &str) -> String {
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}
